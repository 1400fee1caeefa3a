"""Stated figures: symbols of the working, with printed digits and their units."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any, Union

from . import _native
from ._convert import mapping, number, text
from ._errors import ErrorKind, SeamwrightError
from ._quantities import Quantity
from ._records import Record

Said = Union[str, tuple[Any, Any]]
"""What is stated of a quantity: a text as it is printed, or a value and how far it may be off either way."""

Native = tuple[str, int, str | None, tuple[float, float] | None, float]


@dataclass(frozen=True, kw_only=True)
class SymbolInfo(Record):
    """A quantity of the working: its symbol, as LaTeX, its unit (empty for pure numbers) and what it is."""

    symbol: str
    latex: str
    unit: str
    what: str


def _symbols() -> dict[str, SymbolInfo]:
    found: dict[str, SymbolInfo] = {}
    for symbol, latex, unit, what in _native.symbols():
        found.setdefault(symbol, SymbolInfo(symbol=symbol, latex=latex, unit=unit, what=what))
    return found


SYMBOLS: Mapping[str, SymbolInfo] = _symbols()
"""Every quantity of the working by its symbol, as in ``SYMBOLS["Ps"].what``. ``g.1`` is the symbol ``g`` of row 1."""

_SCALES = {
    symbol: dict(dict(_native.units())[kind]) for symbol, kind in (("mm", "Length"), ("N", "Force"), ("MPa", "Stress"))
}
# As units stand in print.
_ALIASES = {
    "in": "inch", "ft": "foot", "lb": "lbf", "lbs": "lbf", "kg": "kgf", "ton": "long_ton", "tons": "long_ton",
    "N/mm2": "MPa", "N/mm²": "MPa", "lb/in2": "psi", "kgf/cm2": "kgf_cm2", "kg/cm2": "kgf_cm2", "kgf/cm²": "kgf_cm2",
    "kgf/mm2": "kgf_mm2", "tons/in2": "long_ton_in2", "tons/in²": "long_ton_in2",
}  # fmt: skip
_PRINTED = re.compile(r"\s*([-+]?[0-9.,][0-9.,/ ]*(?:[eE][-+]?[0-9]+)?)\s*(\S.*?)?\s*")
# Thousands set apart by spaces; and a comma that may set thousands apart or decimals.
_GROUPED = re.compile(r"[-+]?[0-9]{1,3}(?: [0-9]{3})+(?:[.,][0-9]+)?")
_EITHER = re.compile(r"[-+]?[1-9][0-9]{0,2},[0-9]{3}")


def symbol_and_row(name: str) -> tuple[str, int]:
    """``gmin.1`` as symbol and row."""
    stem, mark, row = name.rpartition(".")
    if name not in SYMBOLS and mark and stem in SYMBOLS and row.isascii() and row.isdigit() and int(row) < 256:
        return stem, int(row)
    if name in SYMBOLS:
        return name, 0
    raise SeamwrightError(
        f"{name!r} names no quantity of the working; take a symbol such as F0, Pt, Ps, Pc, P, J, d, p, gmin.1, and see "
        "seamwright.SYMBOLS",
        kind=ErrorKind.UNKNOWN_KEY,
        field="figure",
    )


def _scale(name: str, unit: str, of: str) -> float:
    known = {"": {"": 1.0, "%": 0.01}}.get(of) or _SCALES.get(of) or {"": 1.0, of: 1.0}
    scale = known.get(_ALIASES.get(unit, unit))
    if scale is None:
        words = ", ".join(repr(word) for word in known if word)
        raise SeamwrightError(
            f"{name} = .. {unit!r}: this unit does not go with {SYMBOLS[symbol_and_row(name)[0]].what}; take one of "
            f"{words}",
            kind=ErrorKind.WRONG_CHOICE,
            field="figure",
        )
    return scale


def figure(name: str, said: Any) -> tuple[Native, str]:
    """A stated figure as the native module takes it, and the unit in which it was stated."""
    symbol, row = symbol_and_row(text("figure", name))
    of = SYMBOLS[symbol].unit
    if isinstance(said, tuple):
        bounds: tuple[Any, ...] = said
        if len(bounds) != 2:
            raise SeamwrightError(f"{name} takes a value and how far it may be off, as in (N(31897), N(5))", field=name)
        base = [x.to(of) if isinstance(x, Quantity) and of in _SCALES else number(name, x) for x in bounds]
        return (symbol, row, None, (base[0], base[1]), 1.0), of
    if not isinstance(said, str):
        raise SeamwrightError(
            f"{name} = {said!r} is no printed figure; give it as a text, for its digits count: {name}='31897 N', or as "
            "a value and how far it may be off: (N(31897), N(5))",
            field="figure",
        )
    found = _PRINTED.fullmatch(said)
    if found is None:
        raise SeamwrightError(
            f"{name} = {said!r} cannot be read; write a number and its unit, as in '31897 N' or '66.5 %'",
            field="figure",
        )
    digits, unit = found[1].strip(), found[2] or ""
    if _GROUPED.fullmatch(digits):
        digits = digits.replace(" ", "")
    if _EITHER.fullmatch(digits):
        whole, part = digits.split(",")
        raise SeamwrightError(
            f"{name} = {said!r} may mean {whole}{part} or {whole}.{part}; write the one that is meant", field="figure"
        )
    return (symbol, row, digits, None, _scale(name, unit, of)), unit


def figures(stated: Any, what: str) -> dict[str, tuple[Native, str]]:
    """Stated figures as the native module takes them."""
    table = mapping(what, stated, "{'Ps': '31897 N'}")
    return {name: figure(name, said) for name, said in table.items()}


@dataclass(frozen=True, kw_only=True)
class Convention(Record):
    """A habit or a slip of the catalogue, in words; a slip is what nobody would defend."""

    number: int
    words: str
    slip: bool

    def __str__(self) -> str:
        return f"{self.words} (a slip)" if self.slip else self.words


CONVENTIONS: tuple[Convention, ...] = tuple(
    Convention(number=number, words=words, slip=slip) for number, (words, slip) in enumerate(_native.conventions())
)
"""The catalogue of habits and slips, in the order in which they are tried: the commonest first."""

"""Single formulas: the bodies that all routines of the library are made of.

They take and give bare numbers, because each serves any coherent set of units (mm, N and MPa; inch, lbf and psi).

Example:
    >>> from seamwright import formula
    >>> formula.evaluate("net_section", p=71, n=1, d=23, t=13, st=80)  # Khurmi & Gupta, Example 9.4: 49 920 N
    49920.0
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from . import _native
from ._convert import number, text
from ._errors import ErrorKind, SeamwrightError
from ._records import Record

__all__ = ["FORMULAS", "SIGNATURES", "FormulaInfo", "evaluate"]


@dataclass(frozen=True, kw_only=True)
class FormulaInfo(Record):
    """A formula as a working shows it: its equation in the trade's symbols, and where it stands."""

    name: str
    equation: str
    source: str


FORMULAS: Mapping[str, FormulaInfo] = {
    name: FormulaInfo(name=name, equation=equation, source=source) for name, equation, source in _native.formula_table()
}
"""All formulas, by the name that steps carry."""

SIGNATURES: Mapping[str, tuple[str, ...]] = {name: tuple(args) for name, args in _native.formula_signatures()}
"""The names and arguments that :func:`evaluate` takes."""


def evaluate(name: str, /, **arguments: float) -> float:
    """The value of a formula.

    Args:
        name: one of ``SIGNATURES``.
        **arguments: its symbols, all of them, as bare numbers of one coherent set of units.

    Raises:
        SeamwrightError: an unknown formula, or a symbol that is missing or not its own (``WRONG_CHOICE``).

    Example:
        >>> round(evaluate("hole_by_root", a=6, t=13, b=0), 4)  # Unwin: 6 times the root of 13
        21.6333
    """
    wanted = SIGNATURES.get(text("name", name))
    if wanted is None:
        raise SeamwrightError(
            f"{name!r} is no formula; take one of {', '.join(SIGNATURES)}", kind=ErrorKind.WRONG_CHOICE, field="name"
        )
    if set(arguments) != set(wanted):
        raise SeamwrightError(
            f"{name} takes {', '.join(wanted)}, not {', '.join(arguments) or 'nothing'}",
            kind=ErrorKind.WRONG_CHOICE,
            field=name,
        )
    return _native.formula_value(name, [number(symbol, arguments[symbol]) for symbol in wanted])

"""Arguments as the native module takes them, or an error that shows the fix."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from enum import Enum
from typing import Any, TypeVar, Union, cast

from . import _native
from ._enums import Units
from ._errors import ErrorKind, SeamwrightError
from ._quantities import Density, Force, Length, Moment, PintLike, Quantity, Stress, convert, example, is_pint

E = TypeVar("E", bound=Enum)

LengthLike = Union[Length[float], PintLike]
StressLike = Union[Stress[float], PintLike]
ForceLike = Union[Force[float], PintLike]
MomentLike = Union[Moment[float], PintLike]
DensityLike = Union[Density[float], PintLike]


def measured(cls: type[Quantity[Any]], name: str, x: Any) -> Any:
    """A quantity in the base unit of its class: one number, or an array."""
    if not isinstance(x, Quantity) and not is_pint(x):
        if isinstance(x, bool) or not isinstance(x, (int, float)):
            said = repr(x) if isinstance(x, (str, type(None))) else f"of type {type(x).__name__}"
            raise SeamwrightError(
                f"{name} is {said}, and a {cls.__name__.lower()} is needed: {name}={example(cls)}",
                kind=ErrorKind.MISSING if x is None else ErrorKind.UNREADABLE,
                field=name,
            )
        raise SeamwrightError(
            f"{name} = {x!r} is a bare number; say its unit: {name}={example(cls, x)}", field=name, value=_finite(x)
        )
    return convert(cls, x, name)


def _scalar(cls: type[Quantity[Any]], name: str, x: Any) -> float:
    value = measured(cls, name, x)
    if not isinstance(value, float):
        raise SeamwrightError(f"{name} is an array; this takes one value, so index it or loop over it", field=name)
    return value


def _finite(x: float) -> float:
    try:
        return float(x)
    except OverflowError:
        return float("inf")


def unit_of(x: Any) -> str:
    """The unit in which a reader gave a quantity, in which results are shown; empty for pint's."""
    return x.unit if isinstance(x, Quantity) else ""


def length_unit(x: Any) -> str:
    """The unit in which lengths are shown that follow from one that was given."""
    return "inch" if unit_of(x) in ("inch", "foot") else "mm"


FORCES = {
    "psi": "lbf", "ksi": "lbf", "long_ton_in2": "long_ton", "kgf_cm2": "kgf", "kgf_mm2": "kgf"
}  # fmt: skip
"""The unit in which forces are shown that follow from stresses."""


def reader_units(units: Units | str | None, as_given: str) -> Units:
    """The units of a text or a plot: those asked for, else those that go with the unit in which a length was given."""
    if units is None:
        return Units.INCH if as_given in ("inch", "foot") else Units.METRIC
    return choice(Units, "units", units)


_IN_INCHES: dict[str, tuple[type[Quantity[Any]], str]] = {
    "mm": (Length, "inch"), "N": (Force, "lbf"), "N mm": (Moment, "lbf_inch"), "MPa": (Stress, "psi")
}  # fmt: skip


def figure(value: float, unit: str, units: Units, digits: int) -> str:
    """A figure in a unit of the core, as text in the reader's units."""
    if units is Units.INCH and unit in _IN_INCHES:
        cls, inch = _IN_INCHES[unit]
        return format(cls._make(value, inch), f".{digits}g")
    return f"{value:.{digits}g} {unit}".rstrip()


def length(name: str, x: Any) -> float:
    """A length in mm."""
    return _scalar(Length, name, x)


def optional_length(name: str, x: Any) -> float | None:
    """A length in mm, or nothing."""
    return None if x is None else length(name, x)


def stress(name: str, x: Any) -> float:
    """A stress in MPa."""
    return _scalar(Stress, name, x)


def optional_stress(name: str, x: Any) -> float | None:
    """A stress in MPa, or nothing."""
    return None if x is None else stress(name, x)


def force(name: str, x: Any) -> float:
    """A force in N."""
    return _scalar(Force, name, x)


def moment(name: str, x: Any) -> float:
    """A moment in N mm."""
    return _scalar(Moment, name, x)


def density(name: str, x: Any) -> float:
    """A density in kg/m3."""
    return _scalar(Density, name, x)


def lengths(name: str, x: Any) -> list[float | None]:
    """One length or several, in mm; None where one is not known."""
    if isinstance(x, (list, tuple)):
        return [optional_length(name, i) for i in cast("Sequence[Any]", x)]
    if isinstance(x, Length) and x.shape:
        return [cast("float", i) for i in cast("Any", x.mm).ravel().tolist()]
    return [length(name, x)]


def all_lengths(name: str, x: Any) -> list[float]:
    """One length or several, in mm, all of them known."""
    found = lengths(name, x)
    if any(i is None for i in found):
        raise SeamwrightError(f"{name} has a row without a value; give all of them", kind=ErrorKind.MISSING, field=name)
    return [i for i in found if i is not None]


def gaps(name: str, x: Any, count: int) -> list[float | None]:
    """Row distances in mm: one for all gaps, or one each."""
    if x is None:
        return []
    found = lengths(name, x)
    return found * count if not isinstance(x, (list, tuple)) and len(found) == 1 else found


def number(name: str, x: Any) -> float:
    """A pure number."""
    if isinstance(x, (bool, str, bytes, Quantity)) or x is None:
        raise SeamwrightError(f"{name} = {x!r} is not a pure number; give one, as in {name}=5", field=name)
    try:
        return float(x)
    except OverflowError:
        return float("inf") if x > 0 else float("-inf")
    except (TypeError, ValueError):
        raise SeamwrightError(f"{name} = {x!r} is not a pure number; give one, as in {name}=5", field=name) from None


def count(name: str, x: Any) -> int:
    """A small whole number inside the range of a field of the core."""
    value = number(name, x)
    checked = _native.check_bound(name, value)
    if checked != int(checked):
        raise SeamwrightError(f"{name} = {x!r} is not a whole number; give one", field=name, value=value)
    return int(checked)


def natural(name: str, x: Any, *, least: int = 0) -> int:
    """A whole number of 32 bits."""
    value = number(name, x)
    if not least <= value < 2**32 or value != int(value):
        raise SeamwrightError(
            f"{name} = {x!r} is not a whole number from {least} on; give one",
            kind=ErrorKind.TOO_SMALL if value < least else ErrorKind.UNREADABLE,
            field=name,
            value=value,
        )
    return int(value)


def flag(name: str, x: Any) -> bool:
    """Yes or no. A text is neither: ``"no"`` would count as yes."""
    if isinstance(x, bool) or (type(x).__module__ == "numpy" and type(x).__name__ in ("bool", "bool_")):
        return bool(x)
    raise SeamwrightError(
        f"{name} = {x!r} is neither yes nor no; give {name}=True or {name}=False",
        kind=ErrorKind.WRONG_CHOICE,
        field=name,
    )


def optional_flag(name: str, x: Any) -> bool | None:
    """Yes, no, or nothing said."""
    return None if x is None else flag(name, x)


def choice(cls: type[E], name: str, x: Any) -> E:
    """A choice, given as an enum or as its word."""
    if isinstance(x, cls):
        return x
    for member in cls:
        if member.value == x:
            return member
    words = ", ".join(repr(member.value) for member in cls)
    raise SeamwrightError(
        f"{name} = {x!r} is not a {cls.__name__}; take one of {words}", kind=ErrorKind.WRONG_CHOICE, field=name
    )


def instance(cls: type[Any] | tuple[type[Any], ...], name: str, x: Any, how: str) -> Any:
    """An object of a class, or of one of several."""
    if not isinstance(x, cls):
        wanted = " or ".join(one.__name__ for one in (cls if isinstance(cls, tuple) else (cls,)))
        raise SeamwrightError(
            f"{name} is of type {type(x).__name__}, and a {wanted} is needed: {name}={how}", field=name
        )
    return x


def items(one: type[Any] | tuple[type[Any], ...], name: str, x: Any, how: str) -> list[Any]:
    """Several things as a list; one alone is one of them."""
    if isinstance(x, one):
        return [x]
    try:
        return list(x)
    except TypeError:
        raise SeamwrightError(
            f"{name} is of type {type(x).__name__}; give a list, as in {name}={how}", field=name
        ) from None


def mapping(name: str, x: Any, how: str) -> Mapping[Any, Any]:
    """A mapping."""
    if not isinstance(x, Mapping):
        raise SeamwrightError(f"{name} is of type {type(x).__name__}; give a mapping, as in {name}={how}", field=name)
    return cast("Mapping[Any, Any]", x)


def text(name: str, x: Any) -> str:
    """A text."""
    if not isinstance(x, str):
        raise SeamwrightError(f"{name} = {x!r} is not a text; give one", field=name)
    try:
        x.encode()
    except UnicodeEncodeError:
        raise SeamwrightError(
            f"{name} = {x!r} holds half a character (a lone surrogate); take it out", field=name
        ) from None
    return x

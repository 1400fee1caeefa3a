"""Quantities with their units: the door through which every dimensioned number enters and leaves.

Inside, lengths are millimetres, forces newtons, stresses and pressures megapascals; the factors are the core's, so a
value has the same bits here and there. A quantity holds one number or a NumPy array, and does not change.
"""

from __future__ import annotations

import operator
from collections.abc import Callable, Iterator
from typing import Any, ClassVar, Generic, Protocol, TypeVar, cast, overload

from . import _native
from ._errors import ErrorKind, SeamwrightError

V = TypeVar("V")
S = TypeVar("S", bound="Quantity[Any]")

# Masses and densities are the shop sheet's. The pound is 0.453 592 37 kg (international agreement of 1959).
_FACTORS: dict[str, dict[str, float]] = {name: dict(rows) for name, rows in _native.units()}
_FACTORS["Stress"].update(_FACTORS.pop("Pressure"))
_FACTORS["Mass"] = {"kg": 1.0, "lb": 0.45359237}
_FACTORS["Density"] = {"kg_m3": 1.0}


class PintLike(Protocol):
    """A quantity of the package ``pint``, as far as it is used here."""

    @property
    def magnitude(self) -> Any: ...
    def to(self, other: Any, /) -> Any: ...


def is_pint(x: object) -> bool:
    """Whether something is a quantity of pint, found without importing it."""
    return hasattr(x, "magnitude") and hasattr(x, "dimensionality") and hasattr(x, "to")


def _number(x: Any, what: str) -> Any:
    """A float, or a read-only array of float64 made of a copy."""
    if isinstance(x, (bool, str, bytes)) or x is None:
        raise SeamwrightError(f"{what} = {x!r} is not a number; give a number, or read text by Length.parse('1/2 in')")
    if not hasattr(x, "__array__") and not isinstance(x, (list, tuple)):
        try:
            return float(x)
        except OverflowError:
            return float("inf") if x > 0 else float("-inf")
        except (TypeError, ValueError):
            raise SeamwrightError(f"{what} = {x!r} is not a number; give a number or an array") from None
    try:
        import numpy as np
    except ImportError:
        raise SeamwrightError(f"{what}: arrays need NumPy, which is not installed; give one number") from None
    try:
        # What is masked is not known, so it is no number; `asarray` would bring to light what lies under the mask.
        array = x if np.ma.isMaskedArray(x) else np.asarray(x)
        if array.dtype.kind not in "iuf":
            raise TypeError
        if np.ma.isMaskedArray(array):
            array = np.ma.filled(array.astype(np.float64), np.nan)
        array = np.array(array, dtype=np.float64)
    except (TypeError, ValueError):
        raise SeamwrightError(f"{what} = {x!r} is not an array of numbers; give real numbers") from None
    if array.ndim == 0:
        return float(array)
    array.flags.writeable = False
    return array


def as_written(x: object) -> str:
    """A text as UTF-8 can hold it; what it cannot is no number either."""
    if not isinstance(x, str):
        raise SeamwrightError(f"{x!r} is not a text; give one, as in '12 mm'")
    return x.encode(errors="replace").decode()


def _same(a: Any, b: Any) -> bool:
    if isinstance(a, float) and isinstance(b, float):
        return a == b
    import numpy as np

    return bool(np.array_equal(a, b))


class Quantity(Generic[V]):
    """A number or an array with its unit. Use the subclasses, made by ``mm(12)``, ``psi(11000)`` and their like."""

    __slots__ = ("_unit", "_value")
    __array_ufunc__ = None
    _base: ClassVar[str]
    _pint: ClassVar[str]
    _value: V
    _unit: str

    @classmethod
    def of(cls: type[S], value: Any, unit: str) -> S:
        """A quantity of a number, an array or a pint quantity, in a named unit.

        Args:
            value: a number, an array, or a quantity (of this package or of pint) of the same dimension.
            unit: one of the units of the class, as in ``"inch"``.

        Raises:
            SeamwrightError: an unknown unit, no number, or a quantity of another dimension.

        Example:
            >>> Length.of(0.5, "inch")
            inch(0.5)
        """
        factors = _FACTORS[cls.__name__]
        if unit not in factors:
            raise SeamwrightError(
                f"{unit!r} is not a unit of a {cls.__name__}; take one of {', '.join(factors)}",
                kind=ErrorKind.WRONG_CHOICE,
            )
        if isinstance(value, Quantity) or is_pint(value):
            return cls._make(convert(cls, value, unit), unit)
        number = _number(value, unit)
        return cls._make(number * factors[unit], unit)

    @classmethod
    def _make(cls: type[S], base: Any, unit: str | None = None) -> S:
        """From a value in the base unit."""
        made = object.__new__(cls)
        if not isinstance(base, float) and hasattr(base, "flags"):
            base.flags.writeable = False
        object.__setattr__(made, "_value", base)
        object.__setattr__(made, "_unit", unit or cls._base)
        return made

    def to(self, unit: str) -> V:
        """The bare number or array in a unit of this quantity, as in ``pitch.to("inch")``."""
        factors = _FACTORS[type(self).__name__]
        if unit not in factors:
            raise SeamwrightError(
                f"{unit!r} is not a unit of a {type(self).__name__}; take one of {', '.join(factors)}",
                kind=ErrorKind.WRONG_CHOICE,
            )
        value: Any = self._value
        return cast("V", value / factors[unit])

    @property
    def unit(self) -> str:
        """The unit that it was given in, and is shown in."""
        return self._unit

    @property
    def shape(self) -> tuple[int, ...]:
        """Shape of the array, ``()`` for one number."""
        return tuple(getattr(self._value, "shape", ()))

    def __setattr__(self, name: str, value: object) -> None:
        raise AttributeError(f"a {type(self).__name__} does not change; make a new one")

    def __delattr__(self, name: str) -> None:
        raise AttributeError(f"a {type(self).__name__} does not change; make a new one")

    def __reduce__(self) -> tuple[Any, ...]:
        return (_rebuild, (type(self), self._value, self._unit))

    def __copy__(self: S) -> S:
        return self

    def __deepcopy__(self: S, memo: object) -> S:
        return self

    def __repr__(self) -> str:
        shown = self.to(self._unit)
        if not isinstance(shown, float):
            return f"{self._unit}({_listed(shown)})"
        # As it was typed, where that gives the same bits.
        for text in (f"{shown:.15g}", repr(shown)):
            if text != "-0" and float(text) * _FACTORS[type(self).__name__][self._unit] == self._value:
                return f"{self._unit}({text})"
        return f"{self._base}({self._value!r})"

    def __str__(self) -> str:
        return format(self, "")

    def __format__(self, spec: str) -> str:
        shown: Any = self.to(self._unit)
        text = format(shown, spec or ".6g") if isinstance(shown, float) else str(shown)
        return f"{text} {SYMBOLS.get(self._unit, self._unit)}"

    def __eq__(self, other: object) -> bool:
        if type(other) is not type(self):
            return NotImplemented
        return _same(self._value, other._value)

    def __hash__(self) -> int:
        if not isinstance(self._value, float):
            raise TypeError(f"a {type(self).__name__} of an array has no hash")
        return hash((type(self).__name__, self._value))

    def _compare(self, other: object, how: Callable[[Any, Any], Any]) -> Any:
        if type(other) is not type(self):
            return NotImplemented
        return how(self._value, other._value)

    def __lt__(self, other: object) -> Any:
        return self._compare(other, operator.lt)

    def __le__(self, other: object) -> Any:
        return self._compare(other, operator.le)

    def __gt__(self, other: object) -> Any:
        return self._compare(other, operator.gt)

    def __ge__(self, other: object) -> Any:
        return self._compare(other, operator.ge)

    def __add__(self: S, other: S) -> S:
        if type(other) is not type(self):
            return NotImplemented
        return self._make(self._value + other._value, self._unit)

    def __sub__(self: S, other: S) -> S:
        if type(other) is not type(self):
            return NotImplemented
        return self._make(self._value - other._value, self._unit)

    def __neg__(self: S) -> S:
        return self._make(-self._value, self._unit)

    def __mul__(self: S, other: Any) -> S:
        if isinstance(other, Quantity) or is_pint(other):
            return NotImplemented
        return self._make(self._value * _number(other, "factor"), self._unit)

    def __rmul__(self: S, other: Any) -> S:
        return self.__mul__(other)

    @overload
    def __truediv__(self: S, other: float) -> S: ...
    @overload
    def __truediv__(self, other: Quantity[Any]) -> V: ...
    def __truediv__(self, other: Any) -> Any:
        value: Any = self._value
        if type(other) is type(self):
            divisor = other._value
        elif isinstance(other, Quantity) or is_pint(other):
            return NotImplemented
        else:
            divisor = _number(other, "divisor")
        try:
            quotient = value / divisor
        except ZeroDivisionError:
            raise SeamwrightError("division by nothing; give a divisor other than 0") from None
        return quotient if type(other) is type(self) else self._make(quotient, self._unit)

    def __bool__(self) -> bool:
        if self.shape:
            raise ValueError(f"a {type(self).__name__} of an array is neither true nor false; compare it")
        return bool(self._value)

    def __len__(self) -> int:
        if not self.shape:
            raise TypeError(f"a {type(self).__name__} of one number has no length")
        return self.shape[0]

    def __getitem__(self, at: Any) -> Any:
        if not self.shape:
            raise TypeError(f"a {type(self).__name__} of one number cannot be indexed")
        picked = cast("Any", self._value)[at]
        return self._make(picked if getattr(picked, "shape", ()) else float(picked), self._unit)

    def __iter__(self) -> Iterator[Any]:
        return (self[i] for i in range(len(self)))


def _listed(array: Any) -> str:
    if array.size > 12:
        return f"<array of shape {array.shape}>"
    return repr(array.tolist())


def _rebuild(cls: type[S], value: Any, unit: str) -> S:
    return cls._make(value, unit)


SYMBOLS = {
    "inch": "in", "foot": "ft", "long_ton": "tons", "kgf_cm2": "kgf/cm2", "kgf_mm2": "kgf/mm2",
    "long_ton_in2": "tons/in2", "inch2": "in2", "kg_m3": "kg/m3", "N_mm": "N mm", "N_m": "N m", "kN_m": "kN m",
    "lbf_inch": "lbf in",
}  # fmt: skip


def convert(cls: type[Quantity[Any]], x: Any, what: str) -> Any:
    """A quantity, of this package or of pint, as a bare value in the base unit of a class."""
    if type(x) is cls:
        return x._value
    if isinstance(x, Quantity):
        raise SeamwrightError(
            f"{what} = {x!r} is a {type(x).__name__}; a {cls.__name__} is needed, as in {example(cls)}", field=what
        )
    # Before any np.asarray, which would silently drop the unit.
    try:
        magnitude = x.to(cls._pint).magnitude
    except Exception as error:
        raise SeamwrightError(f"{what} = {x!r} is not a {cls.__name__}: {error}", field=what) from None
    return _number(magnitude, what)


def example(cls: type[Quantity[Any]], value: object = 12) -> str:
    """How a value of a class is written, in the first two of its units."""
    return " or ".join(f"{unit}({value})" for unit in list(_FACTORS[cls.__name__])[:2])

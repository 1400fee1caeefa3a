"""Quantities with their units: the door through which every dimensioned number enters and leaves.

Inside, lengths are millimetres, forces newtons, stresses and pressures megapascals; the factors are the core's, so a
value has the same bits here and there. A quantity holds one number or a NumPy array, and does not change.
"""

from __future__ import annotations

import operator
from collections.abc import Callable, Iterator
from typing import TYPE_CHECKING, Any, ClassVar, Generic, Protocol, TypeVar, cast, overload

from . import _native
from ._errors import ErrorKind, SeamwrightError

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import ArrayLike, NDArray

    Array = NDArray[np.float64]

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
        array = np.asarray(x)
        if array.dtype.kind not in "iuf":
            raise TypeError
        array = np.array(array, dtype=np.float64)
    except (TypeError, ValueError):
        raise SeamwrightError(f"{what} = {x!r} is not an array of numbers; give real numbers") from None
    if array.ndim == 0:
        return float(array)
    array.flags.writeable = False
    return array


def _written(x: object) -> str:
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
    "long_ton_in2": "tons/in2", "inch2": "in2", "kg_m3": "kg/m3",
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
    except Exception as error:  # noqa: BLE001  pint has several classes of its own for this
        raise SeamwrightError(f"{what} = {x!r} is not a {cls.__name__}: {error}", field=what) from None
    return _number(magnitude, what)


def example(cls: type[Quantity[Any]], value: object = 12) -> str:
    """How a value of a class is written, in the first two of its units."""
    return " or ".join(f"{unit}({value})" for unit in list(_FACTORS[cls.__name__])[:2])


class Length(Quantity[V]):
    """A length; kept in mm. Units: ``mm``, ``inch`` (25.4 mm), ``m``, ``foot`` (12 inches).

    Example:
        >>> inch(0.5).mm
        12.7
        >>> mm(12) + inch(0.5)
        mm(24.7)
    """

    __slots__ = ()
    _base, _pint = "mm", "millimeter"

    @staticmethod
    def parse(text: str) -> Length[float]:
        """Reads a length with its unit: ``12 mm``, ``13/16 in``, ``1 5/8"``, ``1.2 m``, ``6 ft``.

        Args:
            text: number and unit; a bare number is refused, it could be either.

        Returns:
            The length, shown in mm.

        Raises:
            SeamwrightError: no number, no unit, or an unknown one (``UNREADABLE``).

        Example:
            >>> Length.parse("1 5/8 in").inch
            1.625
        """
        return Length[float]._make(_native.parse_length(_written(text)))

    @property
    def mm(self) -> V:
        """In millimetres."""
        return self.to("mm")

    @property
    def inch(self) -> V:
        """In inches of 25.4 mm."""
        return self.to("inch")

    @property
    def m(self) -> V:
        """In metres."""
        return self.to("m")

    @property
    def foot(self) -> V:
        """In feet of twelve inches."""
        return self.to("foot")

    def inch_fraction(self, *, denominator: int = 64) -> str:
        """In inches as a fraction, as a shop reads it; only lengths that are one exactly.

        Args:
            denominator: the finest division, a power of two.

        Raises:
            SeamwrightError: a length that is no such fraction, or an array.

        Example:
            >>> inch(0.8125).inch_fraction()
            '13/16'
        """
        value = self.inch
        if not isinstance(value, float):
            raise SeamwrightError("a fraction is written of one length; index the array")
        return _native.write_inch_fraction(value, max(0, min(int(denominator), 2**32 - 1)))


class Area(Quantity[V]):
    """An area; kept in mm2. Units: ``mm2``, ``inch2``, ``m2``."""

    __slots__ = ()
    _base, _pint = "mm2", "millimeter**2"

    @property
    def mm2(self) -> V:
        """In square millimetres."""
        return self.to("mm2")

    @property
    def inch2(self) -> V:
        """In square inches."""
        return self.to("inch2")

    @property
    def m2(self) -> V:
        """In square metres."""
        return self.to("m2")


class Force(Quantity[V]):
    """A force; kept in N. Units: ``N``, ``kN``, ``lbf``, ``kgf``, ``long_ton`` (2240 lbf).

    Example:
        >>> round(kN(10).lbf, 3)
        2248.089
    """

    __slots__ = ()
    _base, _pint = "N", "newton"

    @property
    def N(self) -> V:
        """In newtons."""
        return self.to("N")

    @property
    def kN(self) -> V:
        """In kilonewtons."""
        return self.to("kN")

    @property
    def lbf(self) -> V:
        """In pounds-force."""
        return self.to("lbf")

    @property
    def kgf(self) -> V:
        """In kilograms-force."""
        return self.to("kgf")

    @property
    def long_ton(self) -> V:
        """In long tons-force of 2240 lbf."""
        return self.to("long_ton")


class Stress(Quantity[V]):
    """A stress or a gauge pressure; kept in MPa (N/mm2).

    Units: ``MPa``, ``psi``, ``ksi``, ``bar``, ``kgf_cm2``, ``kgf_mm2``, ``long_ton_in2``.

    Example:
        >>> round(psi(11000).MPa, 4)
        75.8423
    """

    __slots__ = ()
    _base, _pint = "MPa", "megapascal"

    @staticmethod
    def parse(text: str) -> Stress[float]:
        """Reads a stress with its unit: ``80 MPa``, ``80 N/mm2``, ``11000 psi``, ``11 ksi``, ``28 tons/in2``.

        Args:
            text: number and unit; a bare number is refused. Tons are long tons.

        Returns:
            The stress, shown in MPa.

        Raises:
            SeamwrightError: no number, no unit, or an unknown one (``UNREADABLE``).

        Example:
            >>> round(Stress.parse("11 ksi").psi, 6)
            11000.0
        """
        return Stress[float]._make(_native.parse_stress(_written(text)))

    @property
    def MPa(self) -> V:
        """In megapascals, or newtons per square millimetre."""
        return self.to("MPa")

    @property
    def psi(self) -> V:
        """In pounds-force per square inch."""
        return self.to("psi")

    @property
    def ksi(self) -> V:
        """In thousands of psi."""
        return self.to("ksi")

    @property
    def bar(self) -> V:
        """In bars of 0.1 MPa."""
        return self.to("bar")

    @property
    def kgf_cm2(self) -> V:
        """In kilograms-force per square centimetre."""
        return self.to("kgf_cm2")

    @property
    def kgf_mm2(self) -> V:
        """In kilograms-force per square millimetre."""
        return self.to("kgf_mm2")

    @property
    def long_ton_in2(self) -> V:
        """In long tons-force per square inch."""
        return self.to("long_ton_in2")


# One class: the same dimension, and the name of an argument says which of the two is meant.
Pressure = Stress


class Mass(Quantity[V]):
    """A mass; kept in kg. Units: ``kg``, ``lb``."""

    __slots__ = ()
    _base, _pint = "kg", "kilogram"

    @property
    def kg(self) -> V:
        """In kilograms."""
        return self.to("kg")

    @property
    def lb(self) -> V:
        """In pounds."""
        return self.to("lb")


class Density(Quantity[V]):
    """A density, in kg/m3 (``kg_m3``)."""

    __slots__ = ()
    _base, _pint = "kg_m3", "kilogram/meter**3"

    @property
    def kg_m3(self) -> V:
        """In kilograms per cubic metre."""
        return self.to("kg_m3")


@overload
def mm(value: float | PintLike | Length[float], /) -> Length[float]: ...
@overload
def mm(value: ArrayLike, /) -> Length[Array]: ...
def mm(value: Any, /) -> Any:
    """A length in millimetres: of a number, an array, or a quantity to be shown so."""
    return Length.of(value, "mm")


@overload
def inch(value: float | PintLike | Length[float], /) -> Length[float]: ...
@overload
def inch(value: ArrayLike, /) -> Length[Array]: ...
def inch(value: Any, /) -> Any:
    """A length in inches of 25.4 mm: of a number, an array, or a quantity to be shown so."""
    return Length.of(value, "inch")


@overload
def m(value: float | PintLike | Length[float], /) -> Length[float]: ...
@overload
def m(value: ArrayLike, /) -> Length[Array]: ...
def m(value: Any, /) -> Any:
    """A length in metres: of a number, an array, or a quantity to be shown so."""
    return Length.of(value, "m")


@overload
def foot(value: float | PintLike | Length[float], /) -> Length[float]: ...
@overload
def foot(value: ArrayLike, /) -> Length[Array]: ...
def foot(value: Any, /) -> Any:
    """A length in feet of twelve inches: of a number, an array, or a quantity to be shown so."""
    return Length.of(value, "foot")


@overload
def mm2(value: float | PintLike | Area[float], /) -> Area[float]: ...
@overload
def mm2(value: ArrayLike, /) -> Area[Array]: ...
def mm2(value: Any, /) -> Any:
    """An area in square millimetres: of a number, an array, or a quantity to be shown so."""
    return Area.of(value, "mm2")


@overload
def inch2(value: float | PintLike | Area[float], /) -> Area[float]: ...
@overload
def inch2(value: ArrayLike, /) -> Area[Array]: ...
def inch2(value: Any, /) -> Any:
    """An area in square inches: of a number, an array, or a quantity to be shown so."""
    return Area.of(value, "inch2")


@overload
def m2(value: float | PintLike | Area[float], /) -> Area[float]: ...
@overload
def m2(value: ArrayLike, /) -> Area[Array]: ...
def m2(value: Any, /) -> Any:
    """An area in square metres: of a number, an array, or a quantity to be shown so."""
    return Area.of(value, "m2")


@overload
def N(value: float | PintLike | Force[float], /) -> Force[float]: ...
@overload
def N(value: ArrayLike, /) -> Force[Array]: ...
def N(value: Any, /) -> Any:
    """A force in newtons: of a number, an array, or a quantity to be shown so."""
    return Force.of(value, "N")


@overload
def kN(value: float | PintLike | Force[float], /) -> Force[float]: ...
@overload
def kN(value: ArrayLike, /) -> Force[Array]: ...
def kN(value: Any, /) -> Any:
    """A force in kilonewtons: of a number, an array, or a quantity to be shown so."""
    return Force.of(value, "kN")


@overload
def lbf(value: float | PintLike | Force[float], /) -> Force[float]: ...
@overload
def lbf(value: ArrayLike, /) -> Force[Array]: ...
def lbf(value: Any, /) -> Any:
    """A force in pounds-force: of a number, an array, or a quantity to be shown so."""
    return Force.of(value, "lbf")


@overload
def kgf(value: float | PintLike | Force[float], /) -> Force[float]: ...
@overload
def kgf(value: ArrayLike, /) -> Force[Array]: ...
def kgf(value: Any, /) -> Any:
    """A force in kilograms-force: of a number, an array, or a quantity to be shown so."""
    return Force.of(value, "kgf")


@overload
def long_ton(value: float | PintLike | Force[float], /) -> Force[float]: ...
@overload
def long_ton(value: ArrayLike, /) -> Force[Array]: ...
def long_ton(value: Any, /) -> Any:
    """A force in long tons-force of 2240 lbf: of a number, an array, or a quantity to be shown so."""
    return Force.of(value, "long_ton")


@overload
def MPa(value: float | PintLike | Stress[float], /) -> Stress[float]: ...
@overload
def MPa(value: ArrayLike, /) -> Stress[Array]: ...
def MPa(value: Any, /) -> Any:
    """A stress or pressure in megapascals: of a number, an array, or a quantity to be shown so."""
    return Stress.of(value, "MPa")


@overload
def psi(value: float | PintLike | Stress[float], /) -> Stress[float]: ...
@overload
def psi(value: ArrayLike, /) -> Stress[Array]: ...
def psi(value: Any, /) -> Any:
    """A stress or pressure in pounds-force per square inch: of a number, an array, or a quantity to be shown so."""
    return Stress.of(value, "psi")


@overload
def ksi(value: float | PintLike | Stress[float], /) -> Stress[float]: ...
@overload
def ksi(value: ArrayLike, /) -> Stress[Array]: ...
def ksi(value: Any, /) -> Any:
    """A stress or pressure in thousands of psi: of a number, an array, or a quantity to be shown so."""
    return Stress.of(value, "ksi")


@overload
def bar(value: float | PintLike | Stress[float], /) -> Stress[float]: ...
@overload
def bar(value: ArrayLike, /) -> Stress[Array]: ...
def bar(value: Any, /) -> Any:
    """A stress or pressure in bars of 0.1 MPa: of a number, an array, or a quantity to be shown so."""
    return Stress.of(value, "bar")


@overload
def kgf_cm2(value: float | PintLike | Stress[float], /) -> Stress[float]: ...
@overload
def kgf_cm2(value: ArrayLike, /) -> Stress[Array]: ...
def kgf_cm2(value: Any, /) -> Any:
    """A stress or pressure in kilograms-force per square centimetre: of a number, an array, or a quantity to be shown so."""
    return Stress.of(value, "kgf_cm2")


@overload
def kgf_mm2(value: float | PintLike | Stress[float], /) -> Stress[float]: ...
@overload
def kgf_mm2(value: ArrayLike, /) -> Stress[Array]: ...
def kgf_mm2(value: Any, /) -> Any:
    """A stress or pressure in kilograms-force per square millimetre: of a number, an array, or a quantity to be shown so."""
    return Stress.of(value, "kgf_mm2")


@overload
def long_ton_in2(value: float | PintLike | Stress[float], /) -> Stress[float]: ...
@overload
def long_ton_in2(value: ArrayLike, /) -> Stress[Array]: ...
def long_ton_in2(value: Any, /) -> Any:
    """A stress or pressure in long tons-force per square inch: of a number, an array, or a quantity to be shown so."""
    return Stress.of(value, "long_ton_in2")


@overload
def kg(value: float | PintLike | Mass[float], /) -> Mass[float]: ...
@overload
def kg(value: ArrayLike, /) -> Mass[Array]: ...
def kg(value: Any, /) -> Any:
    """A mass in kilograms: of a number, an array, or a quantity to be shown so."""
    return Mass.of(value, "kg")


@overload
def lb(value: float | PintLike | Mass[float], /) -> Mass[float]: ...
@overload
def lb(value: ArrayLike, /) -> Mass[Array]: ...
def lb(value: Any, /) -> Any:
    """A mass in pounds: of a number, an array, or a quantity to be shown so."""
    return Mass.of(value, "lb")


@overload
def kg_m3(value: float | PintLike | Density[float], /) -> Density[float]: ...
@overload
def kg_m3(value: ArrayLike, /) -> Density[Array]: ...
def kg_m3(value: Any, /) -> Any:
    """A density in kilograms per cubic metre: of a number, an array, or a quantity to be shown so."""
    return Density.of(value, "kg_m3")


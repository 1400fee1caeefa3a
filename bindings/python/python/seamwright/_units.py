"""Quantities made in their units: `mm(12)`, `psi(11000)`."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any, overload

from ._quantities import Area, Density, Force, Length, Mass, Moment, PintLike, Stress

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import ArrayLike, NDArray

    Array = NDArray[np.float64]


@overload
def mm(value: float | PintLike | Length[float], /) -> Length[float]: ...
@overload
def mm(value: ArrayLike, /) -> Length[Array]: ...
def mm(value: Any, /) -> Any:
    """A length in millimetres: of a number, an array, or a quantity."""
    return Length.of(value, "mm")


@overload
def inch(value: float | PintLike | Length[float], /) -> Length[float]: ...
@overload
def inch(value: ArrayLike, /) -> Length[Array]: ...
def inch(value: Any, /) -> Any:
    """A length in inches of 25.4 mm: of a number, an array, or a quantity."""
    return Length.of(value, "inch")


@overload
def m(value: float | PintLike | Length[float], /) -> Length[float]: ...
@overload
def m(value: ArrayLike, /) -> Length[Array]: ...
def m(value: Any, /) -> Any:
    """A length in metres: of a number, an array, or a quantity."""
    return Length.of(value, "m")


@overload
def foot(value: float | PintLike | Length[float], /) -> Length[float]: ...
@overload
def foot(value: ArrayLike, /) -> Length[Array]: ...
def foot(value: Any, /) -> Any:
    """A length in feet of twelve inches: of a number, an array, or a quantity."""
    return Length.of(value, "foot")


@overload
def mm2(value: float | PintLike | Area[float], /) -> Area[float]: ...
@overload
def mm2(value: ArrayLike, /) -> Area[Array]: ...
def mm2(value: Any, /) -> Any:
    """An area in square millimetres: of a number, an array, or a quantity."""
    return Area.of(value, "mm2")


@overload
def inch2(value: float | PintLike | Area[float], /) -> Area[float]: ...
@overload
def inch2(value: ArrayLike, /) -> Area[Array]: ...
def inch2(value: Any, /) -> Any:
    """An area in square inches: of a number, an array, or a quantity."""
    return Area.of(value, "inch2")


@overload
def m2(value: float | PintLike | Area[float], /) -> Area[float]: ...
@overload
def m2(value: ArrayLike, /) -> Area[Array]: ...
def m2(value: Any, /) -> Any:
    """An area in square metres: of a number, an array, or a quantity."""
    return Area.of(value, "m2")


@overload
def N(value: float | PintLike | Force[float], /) -> Force[float]: ...
@overload
def N(value: ArrayLike, /) -> Force[Array]: ...
def N(value: Any, /) -> Any:
    """A force in newtons: of a number, an array, or a quantity."""
    return Force.of(value, "N")


@overload
def kN(value: float | PintLike | Force[float], /) -> Force[float]: ...
@overload
def kN(value: ArrayLike, /) -> Force[Array]: ...
def kN(value: Any, /) -> Any:
    """A force in kilonewtons: of a number, an array, or a quantity."""
    return Force.of(value, "kN")


@overload
def lbf(value: float | PintLike | Force[float], /) -> Force[float]: ...
@overload
def lbf(value: ArrayLike, /) -> Force[Array]: ...
def lbf(value: Any, /) -> Any:
    """A force in pounds-force: of a number, an array, or a quantity."""
    return Force.of(value, "lbf")


@overload
def kgf(value: float | PintLike | Force[float], /) -> Force[float]: ...
@overload
def kgf(value: ArrayLike, /) -> Force[Array]: ...
def kgf(value: Any, /) -> Any:
    """A force in kilograms-force: of a number, an array, or a quantity."""
    return Force.of(value, "kgf")


@overload
def long_ton(value: float | PintLike | Force[float], /) -> Force[float]: ...
@overload
def long_ton(value: ArrayLike, /) -> Force[Array]: ...
def long_ton(value: Any, /) -> Any:
    """A force in long tons-force of 2240 lbf: of a number, an array, or a quantity."""
    return Force.of(value, "long_ton")


@overload
def N_mm(value: float | PintLike | Moment[float], /) -> Moment[float]: ...
@overload
def N_mm(value: ArrayLike, /) -> Moment[Array]: ...
def N_mm(value: Any, /) -> Any:
    """A moment in newton-millimetres: of a number, an array, or a quantity."""
    return Moment.of(value, "N_mm")


@overload
def N_m(value: float | PintLike | Moment[float], /) -> Moment[float]: ...
@overload
def N_m(value: ArrayLike, /) -> Moment[Array]: ...
def N_m(value: Any, /) -> Any:
    """A moment in newton-metres: of a number, an array, or a quantity."""
    return Moment.of(value, "N_m")


@overload
def kN_m(value: float | PintLike | Moment[float], /) -> Moment[float]: ...
@overload
def kN_m(value: ArrayLike, /) -> Moment[Array]: ...
def kN_m(value: Any, /) -> Any:
    """A moment in kilonewton-metres: of a number, an array, or a quantity."""
    return Moment.of(value, "kN_m")


@overload
def lbf_inch(value: float | PintLike | Moment[float], /) -> Moment[float]: ...
@overload
def lbf_inch(value: ArrayLike, /) -> Moment[Array]: ...
def lbf_inch(value: Any, /) -> Any:
    """A moment in pound-force-inches: of a number, an array, or a quantity."""
    return Moment.of(value, "lbf_inch")


@overload
def MPa(value: float | PintLike | Stress[float], /) -> Stress[float]: ...
@overload
def MPa(value: ArrayLike, /) -> Stress[Array]: ...
def MPa(value: Any, /) -> Any:
    """A stress or pressure in megapascals: of a number, an array, or a quantity."""
    return Stress.of(value, "MPa")


@overload
def psi(value: float | PintLike | Stress[float], /) -> Stress[float]: ...
@overload
def psi(value: ArrayLike, /) -> Stress[Array]: ...
def psi(value: Any, /) -> Any:
    """A stress or pressure in pounds-force per square inch: of a number, an array, or a quantity."""
    return Stress.of(value, "psi")


@overload
def ksi(value: float | PintLike | Stress[float], /) -> Stress[float]: ...
@overload
def ksi(value: ArrayLike, /) -> Stress[Array]: ...
def ksi(value: Any, /) -> Any:
    """A stress or pressure in thousands of psi: of a number, an array, or a quantity."""
    return Stress.of(value, "ksi")


@overload
def bar(value: float | PintLike | Stress[float], /) -> Stress[float]: ...
@overload
def bar(value: ArrayLike, /) -> Stress[Array]: ...
def bar(value: Any, /) -> Any:
    """A stress or pressure in bars of 0.1 MPa: of a number, an array, or a quantity."""
    return Stress.of(value, "bar")


@overload
def kgf_cm2(value: float | PintLike | Stress[float], /) -> Stress[float]: ...
@overload
def kgf_cm2(value: ArrayLike, /) -> Stress[Array]: ...
def kgf_cm2(value: Any, /) -> Any:
    """A stress or pressure in kilograms-force per square centimetre: of a number, an array, or a quantity."""
    return Stress.of(value, "kgf_cm2")


@overload
def kgf_mm2(value: float | PintLike | Stress[float], /) -> Stress[float]: ...
@overload
def kgf_mm2(value: ArrayLike, /) -> Stress[Array]: ...
def kgf_mm2(value: Any, /) -> Any:
    """A stress or pressure in kilograms-force per square millimetre: of a number, an array, or a quantity."""
    return Stress.of(value, "kgf_mm2")


@overload
def long_ton_in2(value: float | PintLike | Stress[float], /) -> Stress[float]: ...
@overload
def long_ton_in2(value: ArrayLike, /) -> Stress[Array]: ...
def long_ton_in2(value: Any, /) -> Any:
    """A stress or pressure in long tons-force per square inch: of a number, an array, or a quantity."""
    return Stress.of(value, "long_ton_in2")


@overload
def kg(value: float | PintLike | Mass[float], /) -> Mass[float]: ...
@overload
def kg(value: ArrayLike, /) -> Mass[Array]: ...
def kg(value: Any, /) -> Any:
    """A mass in kilograms: of a number, an array, or a quantity."""
    return Mass.of(value, "kg")


@overload
def lb(value: float | PintLike | Mass[float], /) -> Mass[float]: ...
@overload
def lb(value: ArrayLike, /) -> Mass[Array]: ...
def lb(value: Any, /) -> Any:
    """A mass in pounds: of a number, an array, or a quantity."""
    return Mass.of(value, "lb")


@overload
def kg_m3(value: float | PintLike | Density[float], /) -> Density[float]: ...
@overload
def kg_m3(value: ArrayLike, /) -> Density[Array]: ...
def kg_m3(value: Any, /) -> Any:
    """A density in kilograms per cubic metre: of a number, an array, or a quantity."""
    return Density.of(value, "kg_m3")

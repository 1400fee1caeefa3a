"""The quantities: lengths, areas, forces, moments, stresses and pressures, masses, densities."""

from __future__ import annotations

from . import _native
from ._errors import SeamwrightError
from ._quantity import PintLike, Quantity, V, as_written, convert, example, is_pint

__all__ = [
    "Area", "Density", "Force", "Length", "Mass", "Moment", "PintLike", "Pressure", "Quantity", "Stress", "convert",
    "example", "is_pint",
]  # fmt: skip


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
        return Length[float]._make(_native.parse_length(as_written(text)))

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


class Moment(Quantity[V]):
    """A moment; kept in N mm. Units: ``N_mm``, ``N_m``, ``kN_m``, ``lbf_inch``.

    Example:
        >>> kN_m(20).N_mm
        20000000.0
    """

    __slots__ = ()
    _base, _pint = "N_mm", "newton*millimeter"

    @property
    def N_mm(self) -> V:
        """In newton-millimetres."""
        return self.to("N_mm")

    @property
    def N_m(self) -> V:
        """In newton-metres."""
        return self.to("N_m")

    @property
    def kN_m(self) -> V:
        """In kilonewton-metres."""
        return self.to("kN_m")

    @property
    def lbf_inch(self) -> V:
        """In pound-force-inches."""
        return self.to("lbf_inch")


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
        return Stress[float]._make(_native.parse_stress(as_written(text)))

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

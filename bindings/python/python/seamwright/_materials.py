"""Stresses of plates, straps and rivets."""

from __future__ import annotations

from dataclasses import dataclass

from . import _native
from ._convert import StressLike, instance, number, optional_stress, stress, unit_of
from ._quantities import Stress
from ._records import Record


def _optional(x: float | None, unit: str) -> Stress[float] | None:
    return None if x is None else Stress[float]._make(x, unit)


@dataclass(frozen=True, init=False)
class PlateStress(Record):
    """Stresses of one plate, or of the straps.

    Args:
        tension: stress on the net section.
        bearing: crushing stress on the projected area of a rivet; None where the source gives none.
        shear_out: shear stress of the plate, so that shear-out at the margin is a failure mode.

    Raises:
        SeamwrightError: a bare number or no stress. Ranges are checked with the materials.

    Example:
        >>> PlateStress(tension=MPa(80), bearing=MPa(120)).bearing
        MPa(120)
    """

    tension: Stress[float]
    bearing: Stress[float] | None
    shear_out: Stress[float] | None

    def __init__(
        self, *, tension: StressLike, bearing: StressLike | None = None, shear_out: StressLike | None = None
    ) -> None:
        unit = unit_of(tension) or "MPa"
        self._cached("tension", Stress[float]._make(stress("tension", tension), unit))
        self._cached("bearing", _optional(optional_stress("bearing", bearing), unit))
        self._cached("shear_out", _optional(optional_stress("shear_out", shear_out), unit))

    def _plain(self) -> tuple[float, float | None, float | None]:
        return (
            self.tension.MPa,
            None if self.bearing is None else self.bearing.MPa,
            None if self.shear_out is None else self.shear_out.MPa,
        )


@dataclass(frozen=True, init=False)
class Materials(Record):
    """Stresses of a joint: all permissible or all ultimate, never mixed. Strengths come out on the same footing.

    Args:
        tension: tensile stress of the plates and straps, 0.01 to 5000 MPa.
        rivet_shear: shear stress of the rivets in single shear, 0.01 to 5000 MPa.
        bearing: bearing stress of plates and straps, up to 10000 MPa; None where none is known.
        shear_out: shear stress of the plates for shear-out at the margin; None leaves the margin to its rule.
        other: stresses of plate B of a lap or of the straps, where they differ.

    Raises:
        SeamwrightError: a stress that is no stress, not finite or outside its range.

    Example:
        >>> steel = Materials(tension=MPa(80), rivet_shear=MPa(60), bearing=MPa(120))
        >>> Materials(tension=MPa(400), rivet_shear=MPa(320)).divided_by(5).plate.tension
        MPa(80)
    """

    plate: PlateStress
    other: PlateStress
    rivet_shear: Stress[float]

    def __init__(
        self,
        *,
        tension: StressLike,
        rivet_shear: StressLike,
        bearing: StressLike | None = None,
        shear_out: StressLike | None = None,
        other: PlateStress | None = None,
    ) -> None:
        plate = PlateStress(tension=tension, bearing=bearing, shear_out=shear_out)
        if other is not None:
            instance(PlateStress, "other", other, "PlateStress(tension=MPa(80))")
        second = plate if other is None else other
        self._fill(
            _native.Materials(plate._plain(), second._plain(), stress("rivet_shear", rivet_shear)), plate.tension.unit
        )

    @classmethod
    def _of(cls, core: _native.Materials, unit: str = "MPa") -> Materials:
        made = object.__new__(cls)
        made._fill(core, unit)
        return made

    def _fill(self, core: _native.Materials, unit: str) -> None:
        plate, other, shear = core.facts()

        def stresses(of: tuple[float, float | None, float | None]) -> PlateStress:
            made = object.__new__(PlateStress)
            made._cached("tension", Stress[float]._make(of[0], unit))
            made._cached("bearing", _optional(of[1], unit))
            made._cached("shear_out", _optional(of[2], unit))
            return made

        self._cached("plate", stresses(plate))
        self._cached("other", stresses(other))
        self._cached("rivet_shear", Stress[float]._make(shear, unit))
        self._cached("_core", core)

    def _native(self) -> _native.Materials:
        core = self.__dict__.get("_core")
        if core is None:
            made = _native.Materials(self.plate._plain(), self.other._plain(), self.rivet_shear.MPa)
            core = self._cached("_core", made)
        return core

    def divided_by(self, factor: float) -> Materials:
        """All stresses divided by a factor of safety: from ultimate to permissible.

        Args:
            factor: factor of safety, 1 to 20.

        Raises:
            SeamwrightError: a factor outside 1 to 20.
        """
        return Materials._of(self._native().divided_by(number("factor", factor)), self.plate.tension.unit)

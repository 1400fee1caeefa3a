"""A joint with some of its dimensions or stresses changed."""

from __future__ import annotations

from typing import Any

from .._enums import JointKind
from .._joint import Joint
from .._materials import Materials, PlateStress
from .._quantities import Length, Stress


def mm(x: float) -> Length[float]:
    """A length of millimetres."""
    return Length[float]._make(x)


def joint_with(
    joint: Joint,
    *,
    strip: float | None = None,
    plate: float = 1.0,
    other: float = 1.0,
    straps: float = 1.0,
    hole: float = 1.0,
) -> Joint:
    """The joint at another pitch (of mm), or with a plate, straps or holes multiplied by a factor.

    Raises:
        SeamwrightError: dimensions that do not go together.
    """

    def times(x: Length[float] | None, factor: float) -> Length[float] | None:
        return None if x is None else mm(x.mm * factor)

    wide, narrow = times(joint.wide_strap, straps), times(joint.narrow_strap, straps)
    single = joint.form.kind is JointKind.SINGLE_STRAP
    # Clearances stay: the hole and its rivet grow by the same length.
    grown = [row.hole.mm * (hole - 1.0) for row in joint.rows]
    stated: dict[str, Any] = {
        "form": joint.form,
        "pitch": joint.strip if strip is None else mm(strip),
        "plate": times(joint.plate, plate),
        "hole": [mm(row.hole.mm + more) for row, more in zip(joint.rows, grown, strict=True)],
        "rivet": [mm(row.rivet.mm + more) for row, more in zip(joint.rows, grown, strict=True)],
        "other_plate": times(joint.other_plate, other),
        "strap": wide if single else None,
        "wide_strap": None if single else wide,
        "narrow_strap": narrow,
        "back_pitch": list(joint.back_pitches) or None,
        "margin": joint.margin,
    }
    return Joint(**stated)


def materials_with(
    materials: Materials, *, tension: float = 1.0, rivet_shear: float = 1.0, bearing: float = 1.0
) -> Materials:
    """The materials with some stresses of plates, straps and rivets multiplied by a factor.

    Raises:
        SeamwrightError: a stress outside its range.
    """

    def times(x: Stress[float] | None, factor: float) -> Stress[float] | None:
        return None if x is None else Stress[float]._make(x.MPa * factor, x.unit)

    def of(plate: PlateStress) -> dict[str, Any]:
        return {
            "tension": times(plate.tension, tension),
            "bearing": times(plate.bearing, bearing),
            "shear_out": plate.shear_out,
        }

    return Materials(
        **of(materials.plate),
        rivet_shear=times(materials.rivet_shear, rivet_shear),  # type: ignore[arg-type]
        other=PlateStress(**of(materials.other)),
    )

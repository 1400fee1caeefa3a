"""Groups of rivets under eccentric load: brackets, gussets."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

from . import _native
from ._check import findings
from ._convert import (
    ForceLike,
    LengthLike,
    MomentLike,
    StressLike,
    all_lengths,
    count,
    force,
    instance,
    length,
    length_unit,
    moment,
    optional_length,
    optional_stress,
    stress,
    unit_of,
)
from ._enums import GroupMode
from ._errors import ErrorKind, SeamwrightError
from ._group_result import GroupCheck, GroupDesign, Point, RivetLoad, Stressed, Vector
from ._quantities import Area, Force, Length, Moment, Stress
from ._records import Record
from ._rules import RuleBook, book_argument

_ORIGIN = (Length[float]._make(0.0), Length[float]._make(0.0))


@dataclass(frozen=True, init=False)
class GroupLoad(Record):
    """A load in the plane of a group: a force by its components and a point of its line, a couple, or both.

    Args:
        x, y: the force along x and y; a load that hangs down has a negative ``y``.
        at: a point of its line, as ``(mm(500), mm(0))``, in the same axes as the places of the rivets.
        couple: a couple, positive from x to y (anticlockwise).
        row_rivets: takes the effective eccentricity of an old AISC Manual, (1 + n)/2 inches less than the true one,
            for n rivets in one vertical row and a vertical load. It makes forces smaller than the elastic method by
            itself does: not for new work.

    Raises:
        SeamwrightError: a bare number. Ranges are checked where the load is used.

    Source:
        Effective eccentricity: Hicks, Handbook of Civil Engineering Calculations, p. 1.83.

    Example:
        >>> GroupLoad(y=kN(-50), at=(mm(500), mm(0))).y
        kN(-50)
    """

    x: Force[float]
    y: Force[float]
    at: Point
    couple: Moment[float] | None
    row_rivets: int | None

    def __init__(
        self,
        *,
        x: ForceLike | None = None,
        y: ForceLike | None = None,
        at: tuple[LengthLike, LengthLike] | None = None,
        couple: MomentLike | None = None,
        row_rivets: int | None = None,
    ) -> None:
        if at is None and not (x is None and y is None):
            raise SeamwrightError(
                "at is missing: a force needs a point of its line, as in at=(mm(500), mm(0))",
                kind=ErrorKind.MISSING,
                field="at",
            )
        unit = unit_of(x) or unit_of(y) or "N"
        for name, component in [("x", x), ("y", y)]:
            newtons = 0.0 if component is None else force(name, component)
            self._cached(name, Force[float]._make(newtons, unit))
        self._cached("at", _ORIGIN if at is None else _point("at", at))
        taken = None if couple is None else Moment[float]._make(moment("couple", couple), unit_of(couple) or None)
        self._cached("couple", taken)
        self._cached("row_rivets", None if row_rivets is None else count("row_rivets", row_rivets))


def _point(name: str, x: Any) -> Point:
    try:
        along, up = x
    except (TypeError, ValueError):
        raise SeamwrightError(
            f"{name} = {x!r} is not a point; give two lengths: {name}=(mm(0), mm(0))", field=name
        ) from None
    unit = length_unit(along)
    return Length[float]._make(length(name, along), unit), Length[float]._make(length(name, up), unit)


def _sizes(name: str, x: Any, rivets: int) -> list[float]:
    """One diameter for all rivets, or one for each."""
    if x is None:
        return []
    found = all_lengths(name, x)
    if isinstance(x, (list, tuple)) and len(found) != rivets:
        raise SeamwrightError(
            f"{name} has {len(found)} diameters for {rivets} rivets; give one for all, or one for each",
            kind=ErrorKind.INCONSISTENT,
            field=name,
            value=float(len(found)),
            limit=float(rivets),
        )
    return found


def _stated(
    places: Sequence[tuple[LengthLike, LengthLike]],
    load: GroupLoad,
    hole: Any,
    rivet: Any,
    shear_planes: int,
    plate: LengthLike | None,
    shear: StressLike,
    bearing: StressLike | None,
) -> tuple[dict[str, Any], tuple[str, str]]:
    """What the native module takes, and the units in which lengths and stresses are shown."""
    try:
        listed = list(places)
    except TypeError:
        listed = [_point("places", places)]
    points = [_point("places", place) for place in listed]
    taken: GroupLoad = instance(GroupLoad, "load", load, "GroupLoad(y=kN(-50), at=(mm(500), mm(0)))")
    holes, rivets = _sizes("hole", hole, len(points)), _sizes("rivet", rivet, len(points))
    if rivets and not holes:
        raise SeamwrightError(
            "hole is missing: a rivet is given, and its hole is not; give hole=mm(21) too",
            kind=ErrorKind.MISSING,
            field="hole",
        )
    # One of several goes with each of the others.
    if len(rivets) > 1 and len(holes) == 1:
        holes = holes * len(points)
    couple = taken.couple
    given = {
        "places": [(x.mm, y.mm) for x, y in points],
        "holes": holes,
        "rivets": rivets,
        "shear_planes": count("shear_planes", shear_planes),
        "plate": optional_length("plate", plate),
        "load": (taken.x.N, taken.y.N),
        "at": (taken.at[0].mm, taken.at[1].mm),
        "couple": 0.0 if couple is None else couple.N_mm,
        "in_row": taken.row_rivets,
        "shear": stress("shear", shear),
        "bearing": optional_stress("bearing", bearing),
    }
    return given, (points[0][0].unit if points else "mm", unit_of(shear) or "MPa")


def _kept(given: dict[str, Any]) -> tuple[tuple[str, Any], ...]:
    return tuple((name, tuple(x) if isinstance(x, list) else x) for name, x in given.items())


def _check(
    found: dict[str, Any], load: GroupLoad, book: RuleBook, given: dict[str, Any], units: tuple[str, str]
) -> GroupCheck:
    unit, shown = units
    forces = load.x.unit
    couples = load.couple.unit if load.couple is not None else "lbf_inch" if forces == "lbf" else "N_m"

    def mm(x: float) -> Length[float]:
        return Length[float]._make(x, unit)

    def point(xy: tuple[float, float]) -> Point:
        return mm(xy[0]), mm(xy[1])

    def vector(xy: tuple[float, float]) -> Vector:
        return Force[float]._make(xy[0], forces), Force[float]._make(xy[1], forces)

    def mpa(x: float) -> Stress[float]:
        return Stress[float]._make(x, shown)

    def stressed(x: tuple[int, float, float | None]) -> Stressed:
        return Stressed(rivet=x[0], stress=mpa(x[1]), used=x[2])

    def rivet(x: dict[str, Any]) -> RivetLoad:
        return RivetLoad(
            place=point(x["place"]),
            hole=mm(x["hole"]),
            rivet=mm(x["rivet"]),
            direct=vector(x["direct"]),
            turning=vector(x["turning"]),
            force=vector(x["force"]),
            resultant=Force[float]._make(x["resultant"], forces),
            direction=x["direction"],
            shear=mpa(x["shear"]),
            bearing=None if x["bearing"] is None else mpa(x["bearing"]),
        )

    safe, couple = found["safe_load"], found["safe_couple"]
    return GroupCheck(
        load=load,
        book=book,
        centroid=point(found["centroid"]),
        areas=found["areas"],
        polar=Area[float]._make(found["polar"], "inch2" if unit == "inch" else "mm2"),
        arm=point(found["arm"]),
        moment=Moment[float]._make(found["moment"], couples),
        centre=None if found["centre"] is None else point(found["centre"]),
        rivets=tuple(rivet(x) for x in found["rivets"]),
        shear=stressed(found["shear"]),
        bearing=None if found["bearing"] is None else stressed(found["bearing"]),
        governs=GroupMode(found["governs"]),
        critical=found["critical"],
        used=found["used"],
        safe_load=None if safe is None else Force[float]._make(safe, forces),
        safe_couple=None if couple is None else Moment[float]._make(couple, couples),
        findings=findings(found["findings"], unit),
        given=_kept(given),
    )


def check_group(
    *,
    places: Sequence[tuple[LengthLike, LengthLike]],
    load: GroupLoad,
    hole: LengthLike | Sequence[LengthLike],
    shear: StressLike,
    book: RuleBook | str,
    rivet: LengthLike | Sequence[LengthLike] | None = None,
    bearing: StressLike | None = None,
    plate: LengthLike | None = None,
    shear_planes: int = 1,
) -> GroupCheck:
    """Checks a group of rivets (a bracket, a gusset) under a load that does not pass through their centroid.

    The elastic method: the plate is rigid, each rivet gives way in proportion to its force and its area. Prying,
    bending and edges of the plate, friction and fatigue are not looked at.

    Args:
        places: where the rivets are, 1 to 32 of them, as ``(mm(0), mm(100))``.
        load: force, couple or both.
        hole: one diameter for all, or one for each rivet; a driven rivet fills its hole.
        shear: shear stress that is permitted in the rivets, in single shear.
        book: a rule book, or the short name of a built-in one: it says which diameter counts, what a rivet in double
            shear is worth, and how close rivets may stand.
        rivet: cold rivets, where they are known; else as large as their holes.
        bearing: bearing stress that is permitted.
        plate: the plate that the rivets bear on: of two the thinner, of one between two others that or both of them
            together, whichever is thinner.
        shear_planes: 1 or 2.

    Returns:
        The group under its load; ``working()`` shows every step.

    Raises:
        SeamwrightError: no rivet or more than 32 (``TOO_SMALL``, ``TOO_LARGE``), holes that overlap
            (``HOLES_OVERLAP``), a load that turns the plate about its only rivet (``RIVET_TURNS``), no load, a figure
            outside its range; ``index`` is the number of the rivet.

    Source:
        Khurmi and Gupta, A Textbook of Machine Design, Example 9.14; Bhandari, Design of Machine Elements, Example
        8.24 (below).

    Example:
        Four rivets in a line, 100 mm apart, and 25 kN hanging 100 mm beside it: sqrt(6250^2 + 7500^2) N at the first.

        >>> found = check_group(places=[(mm(0), mm(100 * i)) for i in range(4)], hole=mm(15), shear=MPa(60),
        ...     load=GroupLoad(y=kN(-25), at=(mm(100), mm(0))), book="structural")
        >>> found.critical, round(found.rivets[0].resultant.N), f"{found.used:.1%}"
        (1, 9763, '92.1%')
    """
    given, units = _stated(places, load, hole, rivet, shear_planes, plate, shear, bearing)
    rules = book_argument(book)
    return _check(_native.check_group(given, rules._core), load, rules, given, units)


def size_group(
    *,
    places: Sequence[tuple[LengthLike, LengthLike]],
    load: GroupLoad,
    shear: StressLike,
    book: RuleBook | str,
    bearing: StressLike | None = None,
    plate: LengthLike | None = None,
    shear_planes: int = 1,
) -> GroupDesign:
    """Finds the standard size that a group of equal rivets needs for a load, and checks the group with it.

    Args:
        places, load, shear, book, bearing, plate, shear_planes: as for :func:`check_group`. Without a plate or a
            bearing stress shear alone decides.

    Returns:
        The size with its reasons; ``working()`` shows every step.

    Raises:
        SeamwrightError: those of :func:`check_group`; a diameter above the book's series (``NO_STANDARD_SIZE``), holes
            of that size that overlap (``HOLES_OVERLAP``).

    Source:
        Sadhu Singh, Machine Design-I, Example 5.3 (below).

    Example:
        Two columns of three rivets, 100 mm by 100 mm, and 54 kN at 200 mm from their middle.

        >>> made = size_group(places=[(mm(x), mm(y)) for y in (-100, 0, 100) for x in (-50, 50)], shear=MPa(120),
        ...     load=GroupLoad(y=kN(-54), at=(mm(200), mm(0))), book="structural")
        >>> round(made.needed.mm, 2), made.hole, made.rivet
        (16.99, mm(17.5), mm(16))
    """
    given, units = _stated(places, load, None, None, shear_planes, plate, shear, bearing)
    rules = book_argument(book)
    made = _native.size_group(given, rules._core)
    unit = units[0]

    def mm(x: float) -> Length[float]:
        return Length[float]._make(x, unit)

    bears = made["by_bearing"]
    sized = {**given, "holes": [made["hole"]], "rivets": [made["rivet"]]}
    return GroupDesign(
        by_shear=mm(made["by_shear"]),
        by_bearing=None if bears is None else mm(bears),
        needed=mm(made["needed"]),
        hole=mm(made["hole"]),
        rivet=mm(made["rivet"]),
        check=_check(made["check"], load, rules, sized, units),
        given=_kept(given),
    )

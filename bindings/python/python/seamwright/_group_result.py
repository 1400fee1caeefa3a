"""What a group of rivets under its load gives: the rivets, the check, the design, the drawing."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING, Any

from . import _html, _native
from ._check import Finding
from ._drawing import Shown, title_block
from ._enums import GroupMode, Verdict
from ._files import PathLike, by_suffix
from ._quantities import Area, Force, Length, Moment, Stress
from ._records import Record
from ._rules import RuleBook
from ._working import Wishes, Worked

if TYPE_CHECKING:
    from ._group import GroupLoad

Point = tuple[Length[float], Length[float]]
Vector = tuple[Force[float], Force[float]]


@dataclass(frozen=True, kw_only=True)
class RivetLoad(Record):
    """What one rivet of a group takes; forces are what the loaded plate puts on it.

    Attributes:
        place: where it is, x and y.
        hole, rivet: its diameters.
        direct: its share of the load at the centroid, along x and y.
        turning: its share of the moment.
        force: both together, along x and y.
        resultant: both together.
        direction: of the force, in degrees from x towards y, above -180 and up to 180.
        shear: shear stress.
        bearing: bearing stress, None without a plate.
    """

    place: Point
    hole: Length[float]
    rivet: Length[float]
    direct: Vector
    turning: Vector
    force: Vector
    resultant: Force[float]
    direction: float
    shear: Stress[float]
    bearing: Stress[float] | None


@dataclass(frozen=True, kw_only=True)
class Stressed(Record):
    """The greatest stress of a kind: at which rivet (from 1, of equal ones the first), and over the one permitted.

    ``used`` is None where no stress was permitted.
    """

    rivet: int
    stress: Stress[float]
    used: float | None


@dataclass(frozen=True, kw_only=True, repr=False)
class GroupCheck(Worked):
    """A group of rivets under its load.

    Attributes:
        load: the load.
        book: the rule book.
        centroid: of the rivets' areas.
        areas: together, over that of the largest rivet: the number of rivets where all are alike.
        polar: polar moment about the centroid: squares of distances, each times its area over that of the largest.
        arm: the load from the centroid; along x the effective eccentricity where that was asked for.
        moment: of the load about the centroid, positive from x to y.
        centre: the instantaneous centre, about which the group turns; None where it does not turn.
        rivets: what each takes, in the order given.
        shear: the greatest shear stress.
        bearing: the greatest bearing stress, None without a plate.
        governs: shear or bearing, whichever is used more.
        critical: the critical rivet, from 1: by stress, not by force; of equal ones the first.
        used: how much of the permitted stress is used at most; 1 is all.
        safe_load: the force that is allowed along the same line; a couple grows with it. None without a force.
        safe_couple: the couple that is allowed; None without a couple.
        findings: stresses and distances against what is permitted, open ones first.
    """

    load: GroupLoad
    book: RuleBook
    centroid: Point
    areas: float
    polar: Area[float]
    arm: Point
    moment: Moment[float]
    centre: Point | None
    rivets: tuple[RivetLoad, ...]
    shear: Stressed
    bearing: Stressed | None
    governs: GroupMode
    critical: int
    used: float
    safe_load: Force[float] | None
    safe_couple: Moment[float] | None
    findings: tuple[Finding, ...]
    given: tuple[tuple[str, Any], ...]

    def __repr__(self) -> str:
        return (
            f"<GroupCheck: {len(self.rivets)} rivets, critical no. {self.critical} by {self.governs.value}, "
            f"{self.used:.1%} used; book {self.book.id!r}>"
        )

    @property
    def open_findings(self) -> tuple[Finding, ...]:
        """What is not met."""
        return tuple(f for f in self.findings if f.verdict is Verdict.OPEN)

    def _given_in(self) -> str:
        return self.centroid[0].unit

    def _steps(self, wanted: Wishes) -> str:
        return _native.working_of_group(_listed(self.given), self.book._core, wanted)

    def drawing(self, **title: Any) -> GroupDrawing:
        """The group under its load: rivets to scale, the force on each, the load, both centres.

        Args:
            **title: texts of the title block, as for :func:`seamwright.drawing`; the rule book stands there already,
                and the extent means nothing.

        Raises:
            SeamwrightError: a text too long for its field.

        Example:
            >>> found = check_group(places=[(mm(0), mm(100 * i)) for i in range(4)], hole=mm(15), shear=MPa(60),
            ...     load=GroupLoad(y=kN(-25), at=(mm(100), mm(0))), book="structural")
            >>> "P = 25 kN, down" in found.drawing(object="Pump bracket (invented)").svg
            True
        """
        block = title_block(**{"rule_book": self.book.title, **title})
        svg = _native.svg_group(_listed(self.given), self.book._core, block)
        return GroupDrawing(check=self, title=tuple(block.items()), svg=svg)

    def _kinds(self) -> Mapping[str, Callable[[], str]]:
        return {**super()._kinds(), ".svg": lambda: self.drawing().svg}

    def _repr_html_(self) -> str:
        return _html.group(self)


@dataclass(frozen=True, kw_only=True, repr=False)
class GroupDrawing(Shown):
    """A drawing of a group of rivets under its load, on an A4 sheet; a notebook shows it.

    Attributes:
        check: the group.
        title: what stands in the title block.
        svg: the sheet.
    """

    check: GroupCheck
    title: tuple[tuple[str, str], ...]
    svg: str

    def _what(self) -> str:
        return f"group of {len(self.check.rivets)} rivets"

    def save(self, path: PathLike) -> Path:
        """Saves as ``.svg``, whole or not at all.

        Raises:
            SeamwrightError: another end of the name.
            OSError: a file that cannot be written.
        """
        return by_suffix(path, {".svg": lambda: self.svg})


@dataclass(frozen=True, kw_only=True, repr=False)
class GroupDesign(Worked):
    """A group of rivets of the standard size that its load needs.

    Attributes:
        by_shear: the diameter that shear needs: of the hole or of the rivet, as the rule book counts it.
        by_bearing: the diameter that bearing needs; None without a plate or a bearing stress.
        needed: the greater of both.
        hole, rivet: the standard size taken.
        check: the group with it.
    """

    by_shear: Length[float]
    by_bearing: Length[float] | None
    needed: Length[float]
    hole: Length[float]
    rivet: Length[float]
    check: GroupCheck
    given: tuple[tuple[str, Any], ...]

    def __repr__(self) -> str:
        return f"<GroupDesign: hole {self.hole} for {self.needed} needed; {len(self.check.rivets)} rivets>"

    def _given_in(self) -> str:
        return self.needed.unit

    def _steps(self, wanted: Wishes) -> str:
        return _native.working_of_group(_listed(self.given), self.check.book._core, wanted)

    def drawing(self, **title: Any) -> GroupDrawing:
        """The drawing of the group with the size taken; see :meth:`GroupCheck.drawing`."""
        return self.check.drawing(**title)

    def _kinds(self) -> Mapping[str, Callable[[], str]]:
        return {**super()._kinds(), ".svg": lambda: self.drawing().svg}

    def _repr_html_(self) -> str:
        return _html.group_design(self)


def _listed(given: tuple[tuple[str, Any], ...]) -> dict[str, Any]:
    return {name: list(x) if name in ("places", "holes", "rivets") else x for name, x in given}

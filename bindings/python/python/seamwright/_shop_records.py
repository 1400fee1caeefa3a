"""What stands on a shop sheet, and what a shop is asked for."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from ._convert import LengthLike, choice
from ._convert import length as _length
from ._enums import Face, Fitted, HeadForm, LengthRule, Measured, Rounding, ShopNote, Side
from ._quantities import Density, Length, Mass
from ._records import Record
from ._size import Limit


@dataclass(frozen=True, kw_only=True)
class Run(Record):
    """The run of a seam: what its pitches have to divide. Made by :meth:`straight`, :meth:`girth` or :meth:`tie`."""

    kind: str
    length: Length[float] | None = None
    first_end: Length[float] | None = None
    last_end: Length[float] | None = None
    diameter: Length[float] | None = None
    measured: Measured | None = None
    other: Face | None = None

    @staticmethod
    def straight(*, length: LengthLike, first_end: LengthLike, last_end: LengthLike) -> Run:
        """A straight seam.

        Args:
            length: the plate along the seam, 2 mm to 500 m.
            first_end, last_end: end of the plate to the first hole, last hole to the other end; 1 mm to 1 m.
        """
        made = Length[float]._make
        return Run(
            kind="straight",
            length=made(_length("length", length)),
            first_end=made(_length("first_end", first_end)),
            last_end=made(_length("last_end", last_end)),
        )

    @staticmethod
    def girth(*, diameter: LengthLike, measured: Measured | str, other: Face | str) -> Run:
        """A closed seam round a shell.

        Args:
            diameter: of the ring, 20 mm to 100 m.
            measured: what that diameter is: the circle of holes, the inside of the plate, or of plate B of a lap.
            other: where plate B of a lap, the single or the wide strap lies, inside or outside.
        """
        return Run(
            kind="girth",
            diameter=Length[float]._make(_length("diameter", diameter)),
            measured=choice(Measured, "measured", measured),
            other=choice(Face, "other", other),
        )

    @staticmethod
    def tie() -> Run:
        """A tie: one strip, as wide as the joint says."""
        return Run(kind="tie")


@dataclass(frozen=True, kw_only=True)
class Order(Record):
    """What a shop was asked for."""

    run: Run
    head: HeadForm
    set_head: HeadForm
    length_rule: LengthRule
    stock_step: Length[float] | None
    rounding: Rounding | None
    density: Density[float] | None

    def _native(self) -> dict[str, Any]:
        def mm(x: Length[float] | None) -> float:
            return 0.0 if x is None else x.mm

        run = self.run
        return {
            "run": run.kind,
            "length": mm(run.length),
            "first_end": mm(run.first_end),
            "last_end": mm(run.last_end),
            "diameter": mm(run.diameter),
            "measured": "" if run.measured is None else run.measured.value,
            "other": "" if run.other is None else run.other.value,
            "head": self.head.value,
            "set_head": self.set_head.value,
            "length_rule": self.length_rule.value,
            "stock_step": None if self.stock_step is None else self.stock_step.mm,
            "rounding": "" if self.rounding is None else self.rounding.value,
            "density": None if self.density is None else self.density.kg_m3,
        }


@dataclass(frozen=True, kw_only=True)
class Neighbour(Record):
    """A whole number of strips, what it makes of strip and pitch, and whether the book admits that pitch."""

    strips: int
    strip: Length[float]
    pitch: Length[float]
    admissible: bool


@dataclass(frozen=True, kw_only=True)
class PitchFit(Record):
    """How the pitch was fitted to the run; ``exact`` is the number of strips before it is made whole."""

    asked: Length[float]
    exact: float
    fewer: Neighbour | None
    more: Neighbour
    taken: Neighbour
    least: Length[float]
    greatest: Limit
    fitted: Fitted


@dataclass(frozen=True, kw_only=True)
class HeadSize(Record):
    """Width and height (or depth) of a head."""

    form: HeadForm
    width: Length[float]
    height: Length[float]


@dataclass(frozen=True, kw_only=True)
class RivetLine(Record):
    """The rivets of one row: how many in the seam, grip, allowance, length by the rule and from the stock, masses.

    ``mass`` is one rivet as bought, ``drilled`` what is drilled out for it.
    """

    row: int
    planes: int
    count: int
    rivet: Length[float]
    hole: Length[float]
    grip: Length[float]
    allowance: Length[float]
    length: Length[float]
    stock: Length[float]
    set_head: HeadSize
    closing_head: HeadSize
    mass: Mass[float]
    drilled: Mass[float]


@dataclass(frozen=True, kw_only=True)
class PlateCut(Record):
    """A plate to cut, and its mass before drilling."""

    thickness: Length[float]
    width: Length[float]
    length: Length[float]
    mass: Mass[float]


@dataclass(frozen=True, kw_only=True)
class Along(Record):
    """Lengths along a seam: the seam, what the pitches divide (None: a tie), the circle of holes of a girth, and the
    lengths of the second ring or wide strap and of the narrow strap."""

    seam: Length[float]
    run: Length[float] | None
    circle: Length[float] | None
    other: Length[float]
    narrow: Length[float]


@dataclass(frozen=True, kw_only=True)
class Masses(Record):
    """Masses of a seam: rivets as bought, straps, overlap, what is drilled out, what the seam adds, and per metre."""

    rivets: Mass[float]
    straps: Mass[float]
    overlap: Mass[float]
    holes: Mass[float]
    total: Mass[float]
    per_metre: Mass[float]


@dataclass(frozen=True, kw_only=True)
class StockLine(Record):
    """What to take from the stock: cold rivet, length and number."""

    rivet: Length[float]
    length: Length[float]
    count: int


@dataclass(frozen=True, kw_only=True)
class Note(Record):
    """Something to know about a shop sheet."""

    note: ShopNote
    text: str


@dataclass(frozen=True, kw_only=True)
class Hole(Record):
    """One hole: ``x`` along the seam from its datum, ``y`` across, ``angle`` in degrees round a shell (None: straight).

    The datum of ``x`` is the end of the plate, the edge of a tie, or a mark on the girth; of ``y`` the butt line, in a
    lap the edge of plate B.
    """

    number: int
    side: Side
    row: int
    in_row: int
    x: Length[float]
    y: Length[float]
    angle: float | None

"""Sizing: from a plate and its stresses to a complete joint."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from . import _native
from ._check import Analysis, analysis, materials_argument
from ._convert import LengthLike, gaps, length, length_unit, optional_length
from ._drawing import Drawing
from ._enums import Balance, Decided, HoleBasis, LimitState
from ._joint import Form, Joint, form_argument, missing, mm_or_none
from ._materials import Materials
from ._quantities import Length
from ._records import Record
from ._rules import RuleBook, book_argument
from ._working import Wishes, Worked, Working


@dataclass(frozen=True, kw_only=True)
class Limit(Record):
    """A limit that a book may set: its state, the figure where there is one, and the entry and clause behind it."""

    state: LimitState
    value: Length[float] | None
    entry: str
    clause: str


@dataclass(frozen=True, kw_only=True)
class HoleChoice(Record):
    """The hole: as computed and by what rule (None where it was given), as taken, and its cold rivet."""

    computed: Length[float] | None
    basis: HoleBasis | None
    hole: Length[float]
    rivet: Length[float]


@dataclass(frozen=True, kw_only=True)
class PitchChoice(Record):
    """The pitch of the outer row: three balances, the one the book takes, floor and cap, and what decided.

    ``by_shear`` balances the outer row against all rivets in shear, ``by_weaker`` against the weaker of shear and
    bearing; from ``by_all_modes`` on no plate mode is weaker than the rivets.
    """

    by_shear: Length[float]
    by_weaker: Length[float]
    by_all_modes: Length[float]
    balance: Balance
    least: Length[float]
    greatest: Limit
    taken: Length[float]
    decided: Decided


@dataclass(frozen=True, kw_only=True)
class HeadRoom(Record):
    """What snap heads, 1.6 cold rivets wide, ask of the distance from a row to the next (PRACTICE), before rounding.

    ``at_strap`` keeps them beside the edge of the narrow strap where it lies between the two rows, ``of_rows`` clear of
    the heads of the next row (0 where those lie far enough across). None where there is nothing to ask, or the distance
    was given.
    """

    at_strap: Length[float] | None
    of_rows: Length[float] | None


@dataclass(frozen=True, kw_only=True)
class Brief(Record):
    """What a joint was sized for, lengths that were given; what is None was found."""

    form: Form
    plate: Length[float]
    other_plate: Length[float] | None = None
    hole: Length[float] | None = None
    rivet: Length[float] | None = None
    pitch: Length[float] | None = None
    strap: Length[float] | None = None
    wide_strap: Length[float] | None = None
    narrow_strap: Length[float] | None = None
    back_pitches: tuple[Length[float] | None, ...] = ()
    margin: Length[float] | None = None

    @staticmethod
    def _of(*, form: Form, plate: LengthLike, back_pitch: Any = None, **others: LengthLike | None) -> Brief:
        """A brief of arguments: lengths are shown in the unit of the plate.

        Raises:
            SeamwrightError: no length; a rivet without its hole.
        """
        if others.get("rivet") is not None and others.get("hole") is None:
            raise missing("hole", "a rivet is given, and its hole is not; give hole=mm(23) too")
        unit = length_unit(plate)
        return Brief(
            form=form,
            plate=Length[float]._make(length("plate", plate), unit),
            back_pitches=tuple(mm_or_none(gap, unit) for gap in gaps("back_pitch", back_pitch, form.row_count - 1)),
            **{name: mm_or_none(optional_length(name, x), unit) for name, x in others.items()},
        )

    def _native(self) -> dict[str, Any]:
        def bare(x: Length[float] | None) -> float | None:
            return None if x is None else x.mm

        names = ("plate", "other_plate", "hole", "rivet", "pitch", "strap", "wide_strap", "narrow_strap", "margin")
        given: dict[str, Any] = {name: bare(getattr(self, name)) for name in names}
        given["back_pitches"] = [bare(gap) for gap in self.back_pitches]
        return given


@dataclass(frozen=True, kw_only=True, repr=False)
class Design(Worked):
    """A sized joint: the joint, how each dimension was found, and its analysis.

    ``gaps`` are the row distances that the book prescribes (before rounding) with the keys of their entries, ``heads``
    what the rivet heads need of them: the joint's rows stand as far apart as the greater of the two, rounded up.
    ``margin_least`` and ``straps_least`` (single, wide or first; narrow or second) the least it asks for.
    """

    brief: Brief
    joint: Joint
    hole: HoleChoice
    pitch: PitchChoice
    gaps: tuple[tuple[Length[float], str], ...]
    heads: tuple[HeadRoom, ...]
    margin_least: Length[float]
    straps_least: tuple[Limit, Limit]
    analysis: Analysis

    def __repr__(self) -> str:
        joint = self.joint
        return (
            f"<Design: {joint.form.name}; pitch {joint.pitch}, hole {joint.rows[0].hole}, "
            f"efficiency {100 * self.analysis.efficiency:.2f} %; book {self.analysis.book.id!r}>"
        )

    def _given_in(self) -> str:
        return self.brief.plate.unit

    def _steps(self, wanted: Wishes) -> str:
        form, stresses, book = self.brief.form._native(), self.analysis.materials._native(), self.analysis.book._core
        return _native.working_of_size(form, stresses, self.brief._native(), book, wanted)

    def sheet(self, **particulars: Any) -> Working:
        """The sheet that someone signs; see :func:`seamwright.sheet` for the keywords."""
        from ._sheet import sheet

        return sheet(of=self, **particulars)

    def drawing(self, **title: Any) -> Drawing:
        """The drawing of the joint; see :func:`seamwright.drawing` for the keywords."""
        return self.analysis.drawing(**title)

    def _kinds(self) -> Mapping[str, Callable[[], str]]:
        return {**super()._kinds(), ".svg": lambda: self.drawing().svg, ".dxf": lambda: self.drawing().dxf}

    def _repr_html_(self) -> str:
        from ._html import design

        return design(self)


def limit(x: dict[str, Any], unit: str) -> Limit:
    """A limit of the native module, shown in a unit."""
    return Limit(state=LimitState(x["state"]), value=mm_or_none(x["value"], unit), entry=x["entry"], clause=x["clause"])


def design(found: dict[str, Any], brief: Brief, stresses: Materials, rules: RuleBook) -> Design:
    """A design of the native module."""
    unit = brief.plate.unit
    joint = Joint._of(found["joint"], unit)

    def mm(x: float) -> Length[float]:
        return Length[float]._make(x, unit)

    hole_found, pitch_found = found["hole"], found["pitch"]
    wide, narrow = found["straps_least"]
    return Design(
        brief=brief,
        joint=joint,
        hole=HoleChoice(
            computed=mm_or_none(hole_found["computed"], unit),
            basis=None if hole_found["basis"] is None else HoleBasis(hole_found["basis"]),
            hole=mm(hole_found["hole"]),
            rivet=mm(hole_found["rivet"]),
        ),
        pitch=PitchChoice(
            by_shear=mm(pitch_found["by_shear"]),
            by_weaker=mm(pitch_found["by_weaker"]),
            by_all_modes=mm(pitch_found["by_all_modes"]),
            balance=Balance(pitch_found["balance"]),
            least=mm(pitch_found["least"]),
            greatest=limit(pitch_found["greatest"], unit),
            taken=mm(pitch_found["taken"]),
            decided=Decided(pitch_found["decided"]),
        ),
        gaps=tuple((mm(gap), key) for gap, key in found["gaps"]),
        heads=tuple(
            HeadRoom(at_strap=mm_or_none(at_strap, unit), of_rows=mm_or_none(of_rows, unit))
            for at_strap, of_rows in found["heads"]
        ),
        margin_least=mm(found["margin_least"]),
        straps_least=(limit(wide, unit), limit(narrow, unit)),
        analysis=analysis(found["analysis"], joint, stresses, rules),
    )


def size(
    *,
    form: Form,
    plate: LengthLike,
    materials: Materials,
    book: RuleBook | str,
    other_plate: LengthLike | None = None,
    hole: LengthLike | None = None,
    rivet: LengthLike | None = None,
    pitch: LengthLike | None = None,
    strap: LengthLike | None = None,
    wide_strap: LengthLike | None = None,
    narrow_strap: LengthLike | None = None,
    back_pitch: LengthLike | Sequence[LengthLike | None] | None = None,
    margin: LengthLike | None = None,
) -> Design:
    """Sizes a joint: what is given is kept, everything else is found by the rule book.

    Args:
        form: the form wanted.
        plate: thickness of the plate, 0.5 to 200 mm.
        materials: stresses, all permissible or all ultimate.
        book: a rule book, or the short name of a built-in one.
        other_plate, hole, rivet, pitch, strap, wide_strap, narrow_strap, back_pitch, margin: as for :class:`Joint`,
            where they are settled already.

    Returns:
        The design; a notebook shows it as tables.

    Raises:
        SeamwrightError: inputs outside their range or against the form; a hole that no size or table line reaches
            (``NO_STANDARD_SIZE``, ``BEYOND_TABLE``); no admissible pitch or margin; a strap that the book is silent
            on; a bearing stress that is needed and missing.

    Source:
        Khurmi & Gupta, A Textbook of Machine Design, Example 9.7 (hole 21 mm), for the example below.

    Example:
        >>> steel = Materials(tension=MPa(90), rivet_shear=MPa(56), bearing=MPa(140))
        >>> size(form=Form.double_strap(2), plate=mm(12), materials=steel, book="indian").joint.rows[0].hole
        mm(21)
    """
    wanted, stresses, rules = form_argument(form), materials_argument(materials), book_argument(book)
    brief = Brief._of(
        form=wanted, plate=plate, other_plate=other_plate, hole=hole, rivet=rivet, pitch=pitch, strap=strap,
        wide_strap=wide_strap, narrow_strap=narrow_strap, back_pitch=back_pitch, margin=margin,
    )  # fmt: skip
    found = _native.size(wanted._native(), stresses._native(), brief._native(), rules._core)
    return design(found, brief, stresses, rules)

"""Forms and joints."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

from . import _native
from ._convert import (
    LengthLike,
    all_lengths,
    choice,
    count,
    gaps,
    instance,
    length,
    length_unit,
    optional_length,
)
from ._enums import Arrangement, JointKind
from ._errors import ErrorKind, SeamwrightError
from ._quantities import Length
from ._records import Record


def mm_or_none(x: float | None, unit: str = "mm") -> Length[float] | None:
    """A length of mm, shown in a unit, or None."""
    return None if x is None else Length[float]._make(x, unit)


def form_argument(form: Any) -> Form:
    """A form, as an argument."""
    made: Form = instance(Form, "form", form, "Form.lap(2)")
    return made


@dataclass(frozen=True, init=False)
class Form(Record):
    """The form of a joint: kind, arrangement and rows, outside first.

    Args:
        kind: lap, single strap or double strap.
        rows: rivets in the strip (1 to 60) and shear planes (1 or 2) of each of up to 8 rows, outside first.
        arrangement: rows in the gaps of each other, or behind each other.

    Raises:
        SeamwrightError: no rows or too many, or shear planes that contradict the kind (``INCONSISTENT``).

    Example:
        >>> Form.lap(2).name
        'double-riveted lap joint, zig-zag'
        >>> Form(kind="double strap", rows=[(1, 2), (2, 2), (3, 2)]).rivets
        6
    """

    kind: JointKind
    arrangement: Arrangement
    rows: tuple[tuple[int, int], ...]

    def __init__(
        self,
        *,
        kind: JointKind | str,
        rows: Sequence[tuple[int, int]],
        arrangement: Arrangement | str = Arrangement.ZIGZAG,
    ) -> None:
        stated = choice(JointKind, "kind", kind)
        laid = choice(Arrangement, "arrangement", arrangement)
        try:
            pairs = [(rivets, planes) for rivets, planes in rows]
        except (TypeError, ValueError):
            raise SeamwrightError(
                f"rows = {rows!r} is not a list of rivets and planes; give rows=[(1, 2), (2, 2)]", field="rows"
            ) from None
        numbers = [(count("row_rivets", rivets), count("shear_planes", planes)) for rivets, planes in pairs]
        self._fill(_native.Form.from_rows(stated.value, laid.value, numbers))

    @classmethod
    def _of(cls, core: _native.Form) -> Form:
        made = object.__new__(cls)
        made._fill(core)
        return made

    def _fill(self, core: _native.Form) -> None:
        facts = core.facts()
        self._cached("kind", JointKind(facts["kind"]))
        self._cached("arrangement", Arrangement(facts["arrangement"]))
        self._cached("rows", tuple(facts["rows"]))
        self._cached("_core", core)
        self._cached("_facts", facts)

    def _native(self) -> _native.Form:
        core = self.__dict__.get("_core")
        if core is None:
            core = _native.Form.from_rows(self.kind.value, self.arrangement.value, list(self.rows))
            self._cached("_core", core)
        return core

    def _fact(self, name: str) -> Any:
        facts = self.__dict__.get("_facts")
        if facts is None:
            facts = self._cached("_facts", self._native().facts())
        return facts[name]

    @staticmethod
    def lap(rows: int) -> Form:
        """A lap of 1 to 4 equal rows, one rivet of each in the pitch.

        Raises:
            SeamwrightError: rows outside 1 to 4.

        Example:
            >>> Form.lap(2).rivets
            2
        """
        return Form._of(_native.Form.make("lap", count("rows", rows)))

    @staticmethod
    def single_strap(rows: int) -> Form:
        """A butt joint with a single strap, 1 to 3 equal rows on each side.

        Raises:
            SeamwrightError: rows outside 1 to 3.
        """
        return Form._of(_native.Form.make("single_strap", count("rows", rows)))

    @staticmethod
    def double_strap(rows: int) -> Form:
        """A butt joint with two straps of equal width, 1 to 5 equal rows on each side, all in double shear.

        Raises:
            SeamwrightError: rows outside 1 to 5.

        Example:
            >>> Form.double_strap(2).shear_areas
            4
        """
        return Form._of(_native.Form.make("double_strap", count("rows", rows)))

    @staticmethod
    def unequal_straps(rows: int) -> Form:
        """A butt joint with a wide and a narrow strap, 2 to 5 rows on each side.

        Rivets in the pitch, outside first: 1-2; 1-2-2; 1-2-4-4; 1-2-4-4-4. Outer rows are in single shear.

        Raises:
            SeamwrightError: rows outside 2 to 5.

        Example:
            >>> Form.unequal_straps(4).rivets
            11
        """
        return Form._of(_native.Form.make("unequal_straps", count("rows", rows)))

    def chain(self) -> Form:
        """The same form with its rows behind each other."""
        return Form._of(self._native().chain())

    def zigzag(self) -> Form:
        """The same form with its rows in the gaps of each other."""
        return Form._of(self._native().zigzag())

    def omit_alternate(self) -> Form:
        """The same form with every other rivet of the outer row left out.

        Raises:
            SeamwrightError: a form without inner rows, or with rows that are not equal (``INCONSISTENT``).

        Example:
            >>> Form.double_strap(3).omit_alternate().rows
            ((1, 2), (2, 2), (2, 2))
        """
        return Form._of(self._native().omit_alternate())

    @property
    def name(self) -> str:
        """The form in the trade's words."""
        return self._fact("name")

    @property
    def row_count(self) -> int:
        """Number of rows on one side."""
        return len(self.rows)

    @property
    def rivets(self) -> int:
        """Rivets in the strip, on one side."""
        return self._fact("rivets")

    @property
    def shear_areas(self) -> int:
        """Shear areas in the strip, on one side: rivets times planes."""
        return self._fact("shear_areas")

    @property
    def outer_rivets(self) -> int:
        """Rivets of the outer row in the strip."""
        return self._fact("outer_rivets")

    @property
    def densest_rivets(self) -> int:
        """Rivets of the densest row in the strip."""
        return self._fact("densest_rivets")

    @property
    def first_double_row(self) -> int:
        """The first row (from 1) in double shear; one past the last where there is none."""
        return self._fact("first_double_row")

    @property
    def unequal(self) -> bool:
        """Whether the two straps differ in width."""
        return self._fact("unequal")

    @property
    def inner_doubled(self) -> bool:
        """Whether all inner rows have twice the rivets of the outer row."""
        return self._fact("inner_doubled")

    @property
    def rivets_omitted(self) -> bool:
        """Whether the densest row has more rivets than the outer row."""
        return self._fact("rivets_omitted")


@dataclass(frozen=True, kw_only=True)
class Row(Record):
    """One row of a joint: rivets in the strip, shear planes, hole and cold rivet."""

    rivets: int
    planes: int
    hole: Length[float]
    rivet: Length[float]


@dataclass(frozen=True, init=False)
class Joint(Record):
    """A joint whose dimensions agree with its form.

    Args:
        form: its form.
        pitch: pitch of the outer row; the width of the strip where the outer row has several rivets in it. 2 mm to
            20 m.
        plate: thickness of the plate (of plate A of a lap), 0.5 to 200 mm.
        hole: diameter of the hole, which the driven rivet fills, 1 to 150 mm; a list gives each row its own.
        rivet: diameter of the cold rivet, or a list by row; as large as the hole where it is not given.
        other_plate: thickness of plate B of a lap, where it differs.
        strap: thickness of the single strap, or of two alike.
        wide_strap, narrow_strap: thicknesses of two straps that differ (wide or first, narrow or second).
        back_pitch: distance from each row to the next, one for all or a list, 1 mm to 2 m.
        margin: centre of the edge row to the plate edge, 1 mm to 1 m.

    Raises:
        SeamwrightError: a bare number; a value outside its range; parts that the form does not have; a rivet greater
            than its hole; holes that fill the pitch; rows that overlap; a margin inside the hole.

    Example:
        >>> joint = Joint(form=Form.lap(2), pitch=mm(71), plate=mm(13), hole=mm(23), rivet=mm(22), margin=mm(35))
        >>> joint.pitch, joint.rows[0].rivet
        (mm(71), mm(22))
        >>> try:
        ...     Joint(form=Form.lap(1), pitch=20, plate=mm(13), hole=mm(23))
        ... except SeamwrightError as error:
        ...     print(error)
        pitch = 20 is a bare number; say its unit: pitch=mm(20) or inch(20)
    """

    form: Form
    pitch: Length[float]
    strip: Length[float]
    plate: Length[float]
    other_plate: Length[float] | None
    wide_strap: Length[float] | None
    narrow_strap: Length[float] | None
    rows: tuple[Row, ...]
    back_pitches: tuple[Length[float] | None, ...]
    margin: Length[float] | None
    width: Length[float] | None
    narrow_width: Length[float] | None

    def __init__(
        self,
        *,
        form: Form,
        pitch: LengthLike,
        plate: LengthLike,
        hole: LengthLike | Sequence[LengthLike],
        rivet: LengthLike | Sequence[LengthLike] | None = None,
        other_plate: LengthLike | None = None,
        strap: LengthLike | None = None,
        wide_strap: LengthLike | None = None,
        narrow_strap: LengthLike | None = None,
        back_pitch: LengthLike | Sequence[LengthLike | None] | None = None,
        margin: LengthLike | None = None,
    ) -> None:
        core = _native.Joint(
            form_argument(form)._native(),
            length("pitch", pitch),
            length("plate", plate),
            all_lengths("hole", hole),
            [] if rivet is None else all_lengths("rivet", rivet),
            optional_length("other_plate", other_plate),
            optional_length("strap", strap),
            optional_length("wide_strap", wide_strap),
            optional_length("narrow_strap", narrow_strap),
            gaps("back_pitch", back_pitch, form.row_count - 1),
            optional_length("margin", margin),
        )
        self._fill(core, length_unit(pitch))

    @classmethod
    def _of(cls, core: _native.Joint, unit: str = "mm") -> Joint:
        made = object.__new__(cls)
        made._fill(core, unit)
        return made

    def _fill(self, core: _native.Joint, unit: str) -> None:
        facts = core.facts()
        form = Form._of(core.form())
        self._cached("form", form)
        for name in ("pitch", "strip", "plate", "other_plate", "wide_strap", "narrow_strap", "margin", "width",
                     "narrow_width"):  # fmt: skip
            self._cached(name, mm_or_none(facts[name], unit))
        rows = zip(form.rows, facts["holes"], facts["rivets"], strict=True)
        made = [
            Row(rivets=n, planes=k, hole=Length[float]._make(d, unit), rivet=Length[float]._make(r, unit))
            for (n, k), d, r in rows
        ]
        self._cached("rows", tuple(made))
        self._cached("back_pitches", tuple(mm_or_none(gap, unit) for gap in facts["back_pitches"]))
        self._cached("_core", core)

    def _native(self) -> _native.Joint:
        core = self.__dict__.get("_core")
        if core is None:
            single = self.form.kind is JointKind.SINGLE_STRAP
            mm = [
                None if x is None else x.mm for x in (self.other_plate, self.wide_strap, self.narrow_strap, self.margin)
            ]
            other, wide, narrow, margin = mm
            core = _native.Joint(
                self.form._native(),
                self.strip.mm,
                self.plate.mm,
                [row.hole.mm for row in self.rows],
                [row.rivet.mm for row in self.rows],
                other,
                wide if single else None,
                None if single else wide,
                narrow,
                [None if gap is None else gap.mm for gap in self.back_pitches],
                margin,
            )
            self._cached("_core", core)
        return core

    def drawing(self, **title: Any) -> Any:
        """The drawing of the joint; see :func:`seamwright.drawing` for the keywords."""
        from ._drawing import drawing

        return drawing(joint=self, **title)


def missing(name: str, why: str) -> SeamwrightError:
    """The error of an argument that is needed and was not given."""
    return SeamwrightError(f"{name} is needed: {why}", kind=ErrorKind.MISSING, field=name)

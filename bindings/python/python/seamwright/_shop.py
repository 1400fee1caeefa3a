"""The shop sheet: rivets, holes, lengths, cut sizes and masses of a seam."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from functools import partial
from pathlib import Path
from typing import Any

from . import _native
from ._check import Analysis, analysis, joint_argument, materials_argument
from ._convert import DensityLike, LengthLike, choice, instance, natural, reader_units
from ._convert import density as _density
from ._convert import length as _length
from ._drawing import Drawing, title_block
from ._enums import DecimalMark, Fitted, HeadForm, Label, LengthRule, Rounding, ShopNote, Side, Units
from ._files import PathLike, by_suffix
from ._joint import Joint, missing, mm_or_none
from ._materials import Materials
from ._quantities import Density, Length, Mass
from ._records import Record
from ._rules import RuleBook, book_argument
from ._shop_records import (
    Along,
    HeadSize,
    Hole,
    Masses,
    Neighbour,
    Note,
    Order,
    PitchFit,
    PlateCut,
    RivetLine,
    Run,
    StockLine,
)
from ._size import limit
from ._working import Wishes, Worked


@dataclass(frozen=True, kw_only=True)
class HeadInfo(Record):
    """The proportions of a form of head, in diameters of the rivet, and where they come from."""

    form: HeadForm
    name: str
    width: float
    height: float
    sunk: bool
    label: Label
    source: str


HEADS: Mapping[HeadForm, HeadInfo] = {
    HeadForm(key): HeadInfo(
        form=HeadForm(key), name=name, width=width, height=height, sunk=sunk, label=Label(label), source=source
    )
    for key, name, width, height, sunk, label, source in _native.heads()
}
"""The forms of rivet heads."""


@dataclass(frozen=True, kw_only=True)
class LengthRuleInfo(Record):
    """A length rule in words and as a formula; ``greatest_grip`` is in diameters, None where none is stated."""

    rule: LengthRule
    name: str
    equation: str
    source: str
    label: Label
    greatest_grip: float | None
    sunk: bool


LENGTH_RULES: Mapping[LengthRule, LengthRuleInfo] = {
    LengthRule(key): LengthRuleInfo(
        rule=LengthRule(key),
        name=name,
        equation=equation,
        source=source,
        label=Label(label),
        greatest_grip=grip,
        sunk=sunk,
    )
    for key, name, equation, source, label, grip, sunk in _native.length_rules()
}
"""The rules by which a rivet's length follows from its grip; they differ by up to 9 mm, so one is chosen by name."""


def allowance(*, rule: LengthRule | str, rivet: LengthLike, grip: LengthLike) -> Length[float]:
    """What a rivet needs beyond its grip, by a length rule.

    Args:
        rule: the length rule.
        rivet: cold rivet.
        grip: thickness of all plies.

    Raises:
        SeamwrightError: the bridge table has no column for the diameter (``BEYOND_TABLE``).

    Example:
        >>> allowance(rule="bridge-table", rivet=mm(20), grip=mm(0))
        mm(21)
    """
    chosen = choice(LengthRule, "rule", rule)
    return Length[float]._make(_native.allowance(chosen.value, _length("rivet", rivet), _length("grip", grip)))


@dataclass(frozen=True, kw_only=True, repr=False)
class ShopSheet(Worked):
    """All that a shop needs to make a seam. ``joint`` has the fitted pitch, ``asked`` the pitch as it was."""

    order: Order
    asked: Joint
    materials: Materials
    book: RuleBook
    joint: Joint
    pitch: PitchFit
    analysis: Analysis
    along: Along
    overlap: PlateCut | None
    wide_strap: PlateCut | None
    narrow_strap: PlateCut | None
    masses: Masses
    density: Density[float]
    rivets: tuple[RivetLine, ...]
    rivet_count: int
    to_order: tuple[StockLine, ...]
    notes: tuple[Note, ...]

    def __repr__(self) -> str:
        return f"<ShopSheet: {self.joint.form.name}; {self.rivet_count} rivets, pitch {self.joint.pitch}>"

    def _native(self) -> _native.Sheet:
        sheet = self.__dict__.get("_sheet")
        if sheet is None:
            stresses, order = self.materials._native(), self.order._native()
            sheet = _native.shop_sheet(self.asked._native(), stresses, self.book._core, order)
            self._cached("_sheet", sheet)
        return sheet

    @property
    def hole_count(self) -> int:
        """How many holes there are."""
        return self._native().hole_count()

    def holes(self, *, first: int = 1, count: int | None = None) -> tuple[Hole, ...]:
        """The holes, by side, row and along the seam.

        Args:
            first: number of the first hole wanted, from 1.
            count: how many at most; all without it.

        Raises:
            SeamwrightError: no whole number, or a first below 1.
        """
        many = 2**32 - 1 if count is None else natural("count", count)
        made = partial(Length[float]._make, unit=self.joint.pitch.unit)
        return tuple(
            Hole(number=n, side=Side(side), row=row, in_row=in_row, x=made(x), y=made(y), angle=angle)
            for n, side, row, in_row, x, y, angle in self._native().holes(natural("first", first, least=1), many)
        )

    def text(
        self,
        *,
        units: Units | str | None = None,
        mark: DecimalMark | str = DecimalMark.POINT,
        first: int = 1,
        count: int | None = None,
    ) -> str:
        """The sheet as plain text of 80 columns.

        Args:
            units: metric (mm, kg) or inch (in, lb); without them, those that went in.
            mark: decimal point or comma.
            first, count: the holes that its table lists, all without them.

        Raises:
            SeamwrightError: an unknown unit or mark.
        """
        return self._written(False, units, mark, first, count)

    def markdown(
        self,
        *,
        units: Units | str | None = None,
        mark: DecimalMark | str = DecimalMark.POINT,
        first: int = 1,
        count: int | None = None,
    ) -> str:
        """The sheet as Markdown; arguments as :meth:`text`."""
        return self._written(True, units, mark, first, count)

    def _written(
        self, markdown: bool, units: Units | str | None, mark: DecimalMark | str, first: int, count: int | None
    ) -> str:
        many = 2**32 - 1 if count is None else natural("count", count)
        chosen, shown = reader_units(units, self._given_in()), choice(DecimalMark, "mark", mark)
        return self._native().text(markdown, chosen.value, shown.value, natural("first", first, least=1), many)

    def dxf(self, **title: Any) -> str:
        """The whole seam at full size as DXF, every hole where the table has it.

        Args:
            **title: texts of the title block, as for :func:`seamwright.drawing`.

        Raises:
            SeamwrightError: a tie (its joint's drawing has it whole), or a text too long for its field.
        """
        return _native.dxf_seam(self._native(), title_block(**title))

    def drawing(self, **title: Any) -> SeamDrawing:
        """The drawing of the joint with the fitted pitch; its notes have length, number of pitches and ends.

        Args:
            **title: texts of the title block, as for :func:`seamwright.drawing`; the rule book stands there already,
                and the run says whether it is a seam or a tie.

        Raises:
            SeamwrightError: as :func:`seamwright.drawing`.
        """
        block = title_block(**{"rule_book": self.book.title, **title})
        svg = _native.svg_seam(self._native(), block)
        return SeamDrawing(joint=self.joint, title=tuple(block.items()), svg=svg, sheet=self)

    def _given_in(self) -> str:
        return self.asked.pitch.unit

    def _steps(self, wanted: Wishes) -> str:
        stresses, order = self.materials._native(), self.order._native()
        return _native.working_of_shop(self.asked._native(), stresses, self.book._core, order, wanted)

    def _kinds(self) -> Mapping[str, Callable[[], str]]:
        return {
            **super()._kinds(),
            ".txt": self.text,
            ".md": self.markdown,
            ".svg": lambda: self.drawing().svg,
            ".dxf": self.dxf,
        }

    def save(self, path: PathLike) -> Path:
        """Saves, whole or not at all, what the end of the name says.

        ``.txt``, ``.md``: the sheet; ``.html``, ``.tex``: its working; ``.svg``: the drawing; ``.dxf``: the seam;
        ``.json``: the data.

        Raises:
            SeamwrightError: another end of the name.
            OSError: a file that cannot be written.
        """
        return by_suffix(path, self._kinds())

    def _repr_markdown_(self) -> str:
        return self.markdown()


@dataclass(frozen=True, kw_only=True, repr=False)
class SeamDrawing(Drawing):
    """The drawing of a shop sheet; its DXF is the whole seam, every hole where the table has it."""

    sheet: ShopSheet

    @property
    def dxf(self) -> str:
        """The whole seam at full size as DXF (R12, ASCII)."""
        if self.sheet.order.run.kind == "tie":
            return _native.dxf(self.joint._native(), {**dict(self.title), "extent": "tie"})
        return _native.dxf_seam(self.sheet._native(), dict(self.title))


def _cut(x: tuple[float, float, float, float] | None, unit: str) -> PlateCut | None:
    if x is None:
        return None
    made = partial(Length[float]._make, unit=unit)
    return PlateCut(thickness=made(x[0]), width=made(x[1]), length=made(x[2]), mass=Mass[float]._make(x[3]))


def _neighbour(x: dict[str, Any], unit: str) -> Neighbour:
    made = partial(Length[float]._make, unit=unit)
    return Neighbour(strips=x["strips"], strip=made(x["strip"]), pitch=made(x["pitch"]), admissible=x["admissible"])


def _head(x: tuple[str, float, float], unit: str) -> HeadSize:
    made = partial(Length[float]._make, unit=unit)
    return HeadSize(form=HeadForm(x[0]), width=made(x[1]), height=made(x[2]))


def _rivets(x: dict[str, Any], unit: str) -> RivetLine:
    mm, kg = partial(Length[float]._make, unit=unit), Mass[float]._make
    return RivetLine(
        row=x["row"],
        planes=x["planes"],
        count=x["count"],
        rivet=mm(x["rivet"]),
        hole=mm(x["hole"]),
        grip=mm(x["grip"]),
        allowance=mm(x["allowance"]),
        length=mm(x["length"]),
        stock=mm(x["stock"]),
        set_head=_head(x["set_head"], unit),
        closing_head=_head(x["closing_head"], unit),
        mass=kg(x["mass"]),
        drilled=kg(x["drilled"]),
    )


def _order(
    *,
    run: Run,
    head: HeadForm | str,
    set_head: HeadForm | str | None,
    length_rule: LengthRule | str,
    stock_step: LengthLike | None,
    rounding: Rounding | str | None,
    density: DensityLike | None,
) -> Order:
    """An order of its arguments."""
    closing = choice(HeadForm, "head", head)
    if stock_step is not None and rounding is None:
        raise missing("rounding", "with a step of the stock, lengths go up, down or to the nearest; give rounding='up'")
    return Order(
        run=run,
        head=closing,
        set_head=closing if set_head is None else choice(HeadForm, "set_head", set_head),
        length_rule=choice(LengthRule, "length_rule", length_rule),
        stock_step=None if stock_step is None else Length[float]._make(_length("stock_step", stock_step)),
        rounding=None if rounding is None else choice(Rounding, "rounding", rounding),
        density=None if density is None else Density[float]._make(_density("density", density)),
    )


def _masses(x: dict[str, float]) -> Masses:
    return Masses(**{name: Mass[float]._make(value) for name, value in x.items()})


def strip_masses(
    *,
    joint: Joint,
    materials: Materials,
    head: HeadForm | str,
    length_rule: LengthRule | str,
    set_head: HeadForm | str | None = None,
    stock_step: LengthLike | None = None,
    rounding: Rounding | str | None = None,
    density: DensityLike | None = None,
) -> Masses:
    """The masses of one strip of a seam that goes on and on, without ends, by the rules of the shop sheet.

    ``per_metre`` is what a metre of seam adds to plates that meet edge to edge.

    Args:
        joint: a joint with straps, row distances and margin.
        materials: its stresses.
        head, length_rule, set_head, stock_step, rounding, density: as for :func:`shop_sheet`.

    Raises:
        SeamwrightError: as :func:`shop_sheet`.

    Example:
        Plate over the lap: 60 mm wide, 50 mm of pitch, 10 mm thick, 7850 kg/m3.

        >>> joint = Joint(form=Form.lap(1), pitch=mm(50), plate=mm(10), hole=mm(20), margin=mm(30))
        >>> steel = Materials(tension=MPa(80), rivet_shear=MPa(60))
        >>> found = strip_masses(joint=joint, materials=steel, head="button", length_rule="hand")
        >>> abs(found.overlap.kg - 60 * 50 * 10 * 7850e-9) < 1e-12
        True
    """
    one, stresses = joint_argument(joint), materials_argument(materials)
    order = _order(
        run=Run.tie(),
        head=head,
        set_head=set_head,
        length_rule=length_rule,
        stock_step=stock_step,
        rounding=rounding,
        density=density,
    )
    return _masses(_native.strip_masses(one._native(), stresses._native(), order._native()))


def shop_sheet(
    *,
    joint: Joint,
    materials: Materials,
    book: RuleBook | str,
    run: Run,
    head: HeadForm | str,
    length_rule: LengthRule | str,
    set_head: HeadForm | str | None = None,
    stock_step: LengthLike | None = None,
    rounding: Rounding | str | None = None,
    density: DensityLike | None = None,
) -> ShopSheet:
    """The shop sheet of a joint along a run.

    The joint's own pitch decides between the two whole numbers of pitches next to it: the nearer one that keeps the
    least and the greatest pitch of the book.

    Args:
        joint: a joint with straps, row distances and margin.
        materials: its stresses. book: a rule book, or the short name of a built-in one.
        run: what the pitches have to divide.
        head: form of the heads; set_head: of the set head, where it differs.
        length_rule: by which rule the length follows from the grip (see ``LENGTH_RULES``).
        stock_step: step of rivet lengths in stock, 0.1 to 100 mm; cut to length without it.
        rounding: how a length becomes one of the stock; needed with a step.
        density: of plate and rivets, 500 to 25000 kg/m3; steel of 7850 without it.

    Raises:
        SeamwrightError: an order outside its range; a joint without straps, row distances or margin; no admissible
            pitch; a hole that cuts the end of the plate; a diameter that the length table does not have.

    Example:
        >>> joint = Joint(form=Form.lap(2), pitch=mm(71), plate=mm(13), hole=mm(23), rivet=mm(22),
        ...               back_pitch=mm(40), margin=mm(35))
        >>> steel = Materials(tension=MPa(80), rivet_shear=MPa(60), bearing=MPa(120))
        >>> sheet = shop_sheet(joint=joint, materials=steel, book="metric", head="button", length_rule="boiler-button",
        ...                    run=Run.straight(length=m(3), first_end=mm(40), last_end=mm(40)))
        >>> sheet.pitch.taken.strips, sheet.rivet_count
        (41, 83)
    """
    one, stresses, rules = joint_argument(joint), materials_argument(materials), book_argument(book)
    straight = "Run.straight(length=m(3), first_end=mm(40), last_end=mm(40))"
    order = _order(
        run=instance(Run, "run", run, straight),
        head=head,
        set_head=set_head,
        length_rule=length_rule,
        stock_step=stock_step,
        rounding=rounding,
        density=density,
    )
    native = _native.shop_sheet(one._native(), stresses._native(), rules._core, order._native())
    x, unit = native.facts(), one.pitch.unit
    fit, fitted = x["fit"], Joint._of(x["joint"], unit)

    def made(mm: float) -> Length[float]:
        return Length[float]._make(mm, unit)

    sheet = ShopSheet(
        order=order,
        asked=one,
        materials=stresses,
        book=rules,
        joint=fitted,
        pitch=PitchFit(
            asked=made(fit["asked"]),
            exact=fit["exact"],
            fewer=None if fit["fewer"] is None else _neighbour(fit["fewer"], unit),
            more=_neighbour(fit["more"], unit),
            taken=_neighbour(fit["taken"], unit),
            least=made(fit["least"]),
            greatest=limit(fit["greatest"], unit),
            fitted=Fitted(fit["fitted"]),
        ),
        analysis=analysis(x["analysis"], fitted, stresses, rules),
        along=Along(
            seam=made(x["seam"]),
            run=mm_or_none(x["run"], unit),
            circle=mm_or_none(x["circle"], unit),
            other=made(x["other_length"]),
            narrow=made(x["narrow_length"]),
        ),
        overlap=_cut(x["overlap"], unit),
        wide_strap=_cut(x["wide"], unit),
        narrow_strap=_cut(x["narrow"], unit),
        masses=_masses(x["masses"]),
        density=Density[float]._make(x["density"]),
        rivets=tuple(_rivets(line, unit) for line in x["rivets"]),
        rivet_count=x["rivet_count"],
        to_order=tuple(StockLine(rivet=made(d), length=made(b), count=n) for d, b, n in x["to_order"]),
        notes=tuple(Note(note=ShopNote(note), text=said) for note, said in x["notes"]),
    )
    sheet._cached("_sheet", native)
    return sheet

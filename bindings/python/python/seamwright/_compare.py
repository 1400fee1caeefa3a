"""Books and forms side by side, and where they part."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

from . import _native
from ._check import Mode, materials_argument, mode
from ._convert import FORCES, LengthLike, choice, items
from ._enums import Dialect, SortBy
from ._errors import ErrorKind, SeamwrightError
from ._joint import Form, Joint, form_argument
from ._materials import Materials
from ._quantities import Pressure, Stress
from ._records import Record
from ._rules import RuleBook, book_argument
from ._shell import Shell, pressure_unit, shell_argument
from ._size import Brief
from ._working import Wishes, Worked

LETTERS = "ABCDEFGHIJKLMNOP"


@dataclass(frozen=True, kw_only=True)
class Stage(Record):
    """One step of a sizing: symbol, what it is, value in ``unit``, and the entry and clause behind it."""

    name: str
    what: str
    value: float
    unit: str
    entry: str
    clause: str

    def __str__(self) -> str:
        clause = f" ({self.clause})" if self.clause else ""
        return f"{self.name} = {self.value:.6g} {self.unit}".rstrip() + clause


@dataclass(frozen=True, kw_only=True)
class Parting(Record):
    """Where a column parts from the first one in a section of the working.

    ``first`` and ``other`` are the steps, None where there is no such step. ``by_rule``: the books say different things
    here; otherwise it only follows from what differs before, or was given differently.
    """

    section: str
    by_rule: bool
    first: Stage | None
    other: Stage | None


@dataclass(frozen=True, kw_only=True, repr=False)
class Column(Record):
    """One alternative, with what it comes to.

    Attributes:
        letter: A for the first, in the order given; it stays with the column whatever the order.
        brief, book: what was sized, by which book.
        joint: the joint, None where it cannot be sized; ``refused`` then says why.
        book_efficiency, efficiency, credited: as in an analysis.
        governing: the governing mode.
        open_rules: how many rules are not met.
        pressure: the working pressure of the shell, None where none was given; ``no_pressure`` says why there is none
            although one was.
        partings: where it parts from column A, section by section.
    """

    letter: str
    brief: Brief
    book: RuleBook
    joint: Joint | None
    refused: str | None
    book_efficiency: float | None
    efficiency: float | None
    credited: float | None
    governing: Mode | None
    open_rules: int | None
    pressure: Stress[float] | None
    no_pressure: str | None
    partings: tuple[Parting, ...]

    def __repr__(self) -> str:
        if self.credited is None:
            return f"<Column {self.letter}: {self.book.id}, {self.brief.form.name}: cannot be sized: {self.refused}>"
        return f"<Column {self.letter}: {self.book.id}, {self.brief.form.name}: {100 * self.credited:.2f} % credited>"


@dataclass(frozen=True, kw_only=True, repr=False)
class Comparison(Worked):
    """Columns side by side, in the order asked for; a column that cannot be sized is one of them."""

    columns: tuple[Column, ...]
    sort_by: SortBy
    materials: Materials
    shell: Shell | None

    def __repr__(self) -> str:
        said = ", ".join(f"{c.letter} {'-' if c.credited is None else format(c.credited, '.2%')}" for c in self.columns)
        return f"<Comparison by {self.sort_by.value}: {said}>"

    def __getitem__(self, letter: str) -> Column:
        """The column of a letter.

        Raises:
            SeamwrightError: no such column.
        """
        for column in self.columns:
            if column.letter == letter:
                return column
        raise SeamwrightError(f"there is no column {letter!r}", kind=ErrorKind.UNKNOWN_KEY, field="column")

    def _given(self) -> list[Any]:
        ordered = sorted(self.columns, key=lambda c: c.letter)
        return [_native_column(c.brief, self.materials, c.book, self.shell) for c in ordered]

    def _given_in(self) -> str:
        return self.columns[0].brief.plate.unit

    def _steps(self, wanted: Wishes) -> str:
        return _native.working_of_comparison(self._given(), self.sort_by.value, wanted)

    def _repr_html_(self) -> str:
        return self.working(Dialect.HTML)._repr_html_() or ""

    def _repr_markdown_(self) -> str:
        return self.working(Dialect.MARKDOWN).text


def _native_column(brief: Brief, materials: Materials, book: RuleBook, shell: Shell | None) -> Any:
    given = None if shell is None else shell._native()
    return (brief.form._native(), materials._native(), brief._native(), book._core, given)


def _stage(x: dict[str, Any] | None) -> Stage | None:
    if x is None:
        return None
    symbol, row = x.pop("symbol"), x.pop("row")
    return Stage(name=f"{symbol}.{row}" if row else symbol, **x)


def _column(letter: str, brief: Brief, book: RuleBook, x: dict[str, Any], units: tuple[str, str]) -> Column:
    found: dict[str, Any] = x["figures"] or {}
    unit, force = units
    pressure = found.get("pressure")
    return Column(
        letter=letter,
        brief=brief,
        book=book,
        joint=Joint._of(found["joint"], brief.plate.unit) if found else None,
        refused=x["refused"],
        book_efficiency=found.get("book_efficiency"),
        efficiency=found.get("efficiency"),
        credited=found.get("credited"),
        governing=mode(found["governing"], force) if found else None,
        open_rules=found.get("open_rules"),
        pressure=None if pressure is None else Pressure[float]._make(pressure, unit),
        no_pressure=found.get("no_pressure"),
        partings=tuple(
            Parting(section=p["section"], by_rule=p["by_rule"], first=_stage(p["first"]), other=_stage(p["other"]))
            for p in x["partings"]
        ),
    )


def compare(
    *,
    books: Sequence[RuleBook | str] | RuleBook | str,
    forms: Sequence[Form] | Form,
    plate: LengthLike,
    materials: Materials,
    shell: Shell | None = None,
    sort_by: SortBy | str = SortBy.GIVEN,
    other_plate: LengthLike | None = None,
    hole: LengthLike | None = None,
    rivet: LengthLike | None = None,
    pitch: LengthLike | None = None,
    back_pitch: LengthLike | Sequence[LengthLike | None] | None = None,
    margin: LengthLike | None = None,
) -> Comparison:
    """Sizes the same plate under several books, for several forms, and compares: the figures, and where they part.

    Args:
        books: rule books, or short names of built-in ones.
        forms: forms; every form under every book is a column, form by form, at most 16 together.
        plate, materials, other_plate, hole, rivet, pitch, back_pitch, margin: as for :func:`size`.
        shell: the shell whose working pressure is a result too.
        sort_by: given, credited, efficiency, pressure, pitch, hole, open rules; columns without that figure come last.

    Returns:
        The comparison; ``working()`` has the table and, in words, by which clause each column parts from A.

    Raises:
        SeamwrightError: no column, or more than 16; a figure that is no length.

    Source:
        Indian Boiler Regulations, Reg. 177 Eq. (3): 1.875 for double shear, where metric practice takes 2.

    Example:
        >>> steel = Materials(tension=MPa(80), rivet_shear=MPa(60), bearing=MPa(120))
        >>> both = compare(books=["metric", "indian"], forms=Form.double_strap(2), plate=mm(12), materials=steel)
        >>> parting = next(p for p in both["B"].partings if p.section == "Pitch")
        >>> parting.by_rule, parting.first.value, parting.other.value
        (True, 2.0, 1.875)
    """
    listed = items((str, RuleBook), "books", books, "['metric', 'indian']")
    wanted = items(Form, "forms", forms, "[Form.lap(2)]")
    for name, some in (("books", listed), ("forms", wanted)):
        if not some:
            raise SeamwrightError(f"{name} is empty; give some", kind=ErrorKind.MISSING, field=name)
    rules, stresses = [book_argument(book) for book in listed], materials_argument(materials)
    drum = None if shell is None else shell_argument(shell)
    by = choice(SortBy, "sort_by", sort_by)
    sized = [
        Brief._of(
            form=form_argument(form), plate=plate, other_plate=other_plate, hole=hole, rivet=rivet, pitch=pitch,
            back_pitch=back_pitch, margin=margin,
        )
        for form in wanted
    ]  # fmt: skip
    briefs = [(brief, book) for brief in sized for book in rules]
    found = _native.compare([_native_column(brief, stresses, book, drum) for brief, book in briefs], by.value)
    shown = pressure_unit(None, plate)
    force = FORCES.get(stresses.plate.tension.unit, "N")
    columns = [
        _column(LETTERS[at], brief, book, x, (shown, force))
        for at, ((brief, book), x) in enumerate(zip(briefs, found["columns"], strict=True))
    ]
    return Comparison(columns=tuple(columns[at] for at in found["order"]), sort_by=by, materials=stresses, shell=drum)

"""The certified search: the best joint of a whole grid."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

from . import _native
from ._check import Analysis, Cut, check, cut, materials_argument
from ._convert import (
    LengthLike,
    StressLike,
    all_lengths,
    choice,
    count,
    flag,
    instance,
    items,
    length_unit,
    number,
    optional_length,
    optional_stress,
)
from ._enums import HeadForm, LengthRule, Objective
from ._errors import ErrorKind, SeamwrightError
from ._joint import Form, Joint, mm_or_none
from ._materials import Materials
from ._quantities import Length, Pressure, Stress
from ._records import Record
from ._rules import RuleBook, book_argument
from ._shell import Shell, pressure_unit, shell_argument


@dataclass(frozen=True, kw_only=True)
class Candidate(Record):
    """A joint of the grid. ``mass_per_metre`` is in kg/m, None where nothing was said of heads and rivet lengths.

    ``behind`` says why it is not the best; ``a_step_less`` and ``a_step_more`` say what lies one step of the pitch
    beside it. They are None in a front. ``pressure`` is what it allows, None where none was asked for; ``governing``
    says which members tear in the mode that governs.
    """

    form: Form
    plate: Length[float]
    hole: Length[float]
    rivet: Length[float]
    pitch: Length[float]
    efficiency: float
    rivets_per_metre: float
    mass_per_metre: float | None
    pressure: Stress[float] | None
    governing: Cut
    behind: str | None
    a_step_less: str | None
    a_step_more: str | None


@dataclass(frozen=True, kw_only=True)
class Tally(Record):
    """The certificate: ``grid`` = ``fitting`` + ``by_bound`` + all ``excluded``."""

    grid: int
    examined: int
    fitting: int
    by_bound: int
    excluded: tuple[tuple[str, int], ...]

    @property
    def most(self) -> tuple[str, int] | None:
        """The constraint that excluded most, None where nothing was excluded; of equals the one asked first."""
        return max(self.excluded, key=lambda x: x[1], default=None)


@dataclass(frozen=True, kw_only=True, repr=False)
class Search(Record):
    """How a search ended. ``best`` has the best few, one of each form; it is empty where nothing fits."""

    materials: Materials
    book: RuleBook
    joint: Joint | None
    best: tuple[Candidate, ...]
    tally: Tally

    def __repr__(self) -> str:
        if not self.best:
            return f"<Search: nothing of {self.tally.grid} candidates fits; book {self.book.id!r}>"
        won = self.best[0]
        return (
            f"<Search: {won.form.name}, {100 * won.efficiency:.2f} %, the best of {self.tally.grid} candidates; "
            f"book {self.book.id!r}>"
        )

    @property
    def analysis(self) -> Analysis:
        """The check of the best joint.

        Raises:
            SeamwrightError: nothing fits (``MISSING``).
        """
        if self.joint is None:
            raise SeamwrightError("nothing fits, so there is no joint to check", kind=ErrorKind.MISSING, field="joint")
        return check(joint=self.joint, materials=self.materials, book=self.book)

    def _repr_html_(self) -> str:
        from ._html import search as shown

        return shown(self)


def _given(materials: Materials, x: dict[str, Any]) -> dict[str, Any]:
    heads, rule = x.pop("head"), x.pop("length_rule")
    if (heads is None) != (rule is None):
        raise SeamwrightError("head and length_rule go together; give both, or neither", field="head")
    if (x["pressure"] is None) != (x["shell"] is None):
        raise SeamwrightError("pressure and shell go together; give both, or neither", field="pressure")
    least = x["efficiency_least"]
    forms = x["forms"]
    return {
        "objective": choice(Objective, "objective", x["objective"]).value,
        "plates": all_lengths("plates", x["plates"]),
        "forms": None
        if forms is None
        else [
            instance(Form, "forms", one, "[Form.lap(2)]")._native()
            for one in items(Form, "forms", forms, "[Form.lap(2)]")
        ],
        "holes": None if x["holes"] is None else all_lengths("holes", x["holes"]),
        "rows_most": None if x["rows_most"] is None else count("rows", x["rows_most"]),
        "rivet_least": optional_length("rivet_least", x["rivet_least"]),
        "rivet_most": optional_length("rivet_most", x["rivet_most"]),
        "pitch_most": optional_length("pitch_most", x["pitch_most"]),
        "efficiency_least": None if least is None else number("efficiency_least", least),
        "pressure": optional_stress("pressure", x["pressure"]),
        "shell": None if x["shell"] is None else shell_argument(x["shell"])._native(),
        "weighed": None
        if heads is None
        else (choice(HeadForm, "head", heads).value, choice(LengthRule, "length_rule", rule).value),
        "any_finding": flag("any_finding", x["any_finding"]),
    }


def _candidate(x: dict[str, Any], unit: str, shown: str) -> Candidate:
    held = None if x["pressure"] is None else Pressure[float]._make(x["pressure"], shown)
    sized = {key: mm_or_none(x[key], unit) for key in ("plate", "hole", "rivet", "pitch")}
    return Candidate(**{**x, **sized, "form": Form._of(x["form"]), "pressure": held, "governing": cut(x["governing"])})


def all_forms() -> tuple[Form, ...]:
    """Every form that :func:`search` looks at where none is named, in the order in which equals are decided.

    Example:
        >>> all_forms()[0].name
        'single-riveted lap joint'
    """
    return tuple(Form._of(form) for form in _native.all_forms())


def search(
    *,
    plates: LengthLike | Sequence[LengthLike],
    materials: Materials,
    book: RuleBook | str,
    objective: Objective | str = Objective.EFFICIENCY,
    forms: Sequence[Form] | None = None,
    holes: Sequence[LengthLike] | None = None,
    rows_most: int | None = None,
    rivet_least: LengthLike | None = None,
    rivet_most: LengthLike | None = None,
    pitch_most: LengthLike | None = None,
    efficiency_least: float | None = None,
    pressure: StressLike | None = None,
    shell: Shell | None = None,
    head: HeadForm | str | None = None,
    length_rule: LengthRule | str | None = None,
    any_finding: bool = False,
) -> Search:
    """Finds the best joint of all forms, plates, sizes and pitches of the grid; the answer is proved to be the best.

    Other threads run meanwhile, and Ctrl-C ends it.

    Args:
        plates: the plate, or those to choose from.
        materials: stresses, all permissible or all ultimate.
        book: a rule book, or the short name of a built-in one; its series and its pitch step make the grid.
        objective: efficiency, mass, rivets or thickness.
        forms: forms to choose from; without them, all common ones.
        holes: holes to choose from; without them, the book's series.
        rows_most: most rows on one side.
        rivet_least, rivet_most: smallest and largest cold rivet.
        pitch_most: greatest pitch of the outer row.
        efficiency_least: least efficiency credited, 0 to 1.
        pressure, shell: least working pressure, and the shell that has to carry it.
        head, length_rule: heads and rivet lengths by which a metre of seam is weighed (steel, cut to length).
        any_finding: joints of open findings as well.

    Raises:
        SeamwrightError: no plate, or the objective is mass and nothing is said of heads (``MISSING``); a figure outside
            its range.

    Example:
        >>> steel = Materials(tension=MPa(80), rivet_shear=MPa(60), bearing=MPa(120))
        >>> found = search(plates=mm(12), materials=steel, book="metric", forms=[Form.lap(1), Form.lap(2)])
        >>> found.best[0].form.name, found.tally.grid >= found.tally.examined
        ('double-riveted lap joint, zig-zag', True)
    """
    stresses, rules = materials_argument(materials), book_argument(book)
    limits = {key: value for key, value in locals().items() if key in _LIMITS}
    x = _native.search(stresses._native(), _given(stresses, limits), rules._core)
    unit, shown = _unit(plates), pressure_unit(pressure, _first(plates))
    tally = x["tally"]
    return Search(
        materials=stresses,
        book=rules,
        joint=None if x["joint"] is None else Joint._of(x["joint"], unit),
        best=tuple(_candidate(c, unit, shown) for c in x["best"]),
        tally=Tally(**{**tally, "excluded": tuple(tally["excluded"])}),
    )


def front(
    *,
    plates: LengthLike | Sequence[LengthLike],
    materials: Materials,
    book: RuleBook | str,
    head: HeadForm | str,
    length_rule: LengthRule | str,
    forms: Sequence[Form] | None = None,
    holes: Sequence[LengthLike] | None = None,
    rows_most: int | None = None,
    rivet_least: LengthLike | None = None,
    rivet_most: LengthLike | None = None,
    pitch_most: LengthLike | None = None,
    efficiency_least: float | None = None,
    pressure: StressLike | None = None,
    shell: Shell | None = None,
    any_finding: bool = False,
) -> tuple[Candidate, ...]:
    """The joints of which no other has more efficiency without more mass, the lightest first.

    Args:
        plates: the plate, or those to choose from.
        materials: stresses, all permissible or all ultimate.
        book: a rule book, or the short name of a built-in one.
        head, length_rule: heads and rivet lengths by which a metre of seam is weighed (steel, cut to length).
        forms, holes, rows_most, rivet_least, rivet_most, pitch_most: as in ``search``.
        efficiency_least, pressure, shell, any_finding: likewise.

    Raises:
        SeamwrightError: as ``search``.

    Example:
        >>> steel = Materials(tension=MPa(80), rivet_shear=MPa(60), bearing=MPa(120))
        >>> laps = front(plates=mm(12), materials=steel, book="metric", forms=[Form.lap(1), Form.lap(2)],
        ...     head="button", length_rule="boiler-button")
        >>> all(a.efficiency < b.efficiency for a, b in zip(laps, laps[1:]))
        True
    """
    stresses, rules = materials_argument(materials), book_argument(book)
    objective = Objective.MASS
    limits = {key: value for key, value in locals().items() if key in _LIMITS}
    found = _native.front(stresses._native(), _given(stresses, limits), rules._core)
    unit, shown = _unit(plates), pressure_unit(pressure, _first(plates))
    return tuple(_candidate(c, unit, shown) for c in found)


_LIMITS = frozenset({
    "objective", "plates", "forms", "holes", "rows_most", "rivet_least", "rivet_most", "pitch_most",
    "efficiency_least", "pressure", "shell", "head", "length_rule", "any_finding",
})  # fmt: skip


def _first(plates: Any) -> Any:
    return plates[0] if isinstance(plates, (list, tuple)) and plates else plates


def _unit(plates: Any) -> str:
    return length_unit(_first(plates))

"""Problems for a class: drawn from a number, with their keys, and marked."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from . import _native
from ._check import Analysis, analysis
from ._convert import choice, instance, items, number
from ._enums import Audience, DecimalMark, Dialect, Effect, MarkKind, Setting, Task, Units
from ._errors import ErrorKind, SeamwrightError
from ._figures import CONVENTIONS, Convention, Said, figures
from ._html import page, table
from ._joint import Form, Joint, form_argument, mm_or_none
from ._materials import Materials
from ._quantities import Length
from ._records import Record
from ._rules import RuleBook, book_argument
from ._size import Brief, Design, design
from ._working import Wishes, Worked, Working, wishes


@dataclass(frozen=True, kw_only=True)
class KeyLine(Record):
    """One answer of a key: its symbol (``gmin.1`` for row 1), the value in ``unit``, and what it is."""

    name: str
    value: float
    unit: str
    what: str

    def __str__(self) -> str:
        return f"{self.name} = {self.value:.6g} {self.unit}".rstrip()


@dataclass(frozen=True, kw_only=True)
class Mark(Record):
    """The mark of one answer.

    ``convention`` is the habit or slip behind a wrong one where it is known; ``sure`` where the digits rule out chance.
    """

    name: str
    kind: MarkKind
    convention: Convention | None
    sure: bool

    @property
    def credited(self) -> bool:
        """Whether the answer counts: right, or right after an earlier slip of the student's own."""
        return self.kind in (MarkKind.RIGHT, MarkKind.CARRIED_OVER)

    def __str__(self) -> str:
        if self.convention is None:
            return f"{self.name}: {self.kind.value}"
        perhaps = "" if self.sure else "perhaps "
        return f"{self.name}: wrong, {perhaps}{self.convention.words}"


@dataclass(frozen=True, kw_only=True, repr=False)
class Marks(Record):
    """The marks of a student's answers, in the order of the key."""

    marks: tuple[Mark, ...]
    credited: int
    asked: int
    text: str

    def __str__(self) -> str:
        return self.text

    def __repr__(self) -> str:
        return f"<Marks: {self.credited} of {self.asked} answers credited>"

    def __getitem__(self, name: str) -> Mark:
        """The mark of an answer by its symbol.

        Raises:
            SeamwrightError: nothing of that name was asked for (``UNKNOWN_KEY``).
        """
        for mark in self.marks:
            if mark.name == name:
                return mark
        raise SeamwrightError(f"{name!r} was not asked for", kind=ErrorKind.UNKNOWN_KEY, field="figure")

    def _repr_html_(self) -> str:
        rows = [
            (mark.name, mark.kind.value, "" if mark.convention is None else str(mark).partition("wrong, ")[2])
            for mark in self.marks
        ]
        said = f"{self.credited} of {self.asked} answers credited"
        return page(table(said, ("answer", "mark", "how it came about"), rows))


@dataclass(frozen=True, kw_only=True, repr=False)
class Problem(Worked):
    """A problem for a class. The joint is made up; ``working()`` is its full solution.

    Attributes:
        seed: the number that it was drawn from; with family and book it gives the same problem on every machine.
        form, setting, task, effect, book: its family.
        joint: the joint that is given, or the one that is to be found.
        materials: its stresses.
        design: how the joint is found, None where it is given.
        analysis: its check; no rule of the book is left open.
        key: what is asked, with the answers.
    """

    seed: int
    form: Form
    setting: Setting
    task: Task
    effect: Effect
    book: RuleBook
    joint: Joint
    materials: Materials
    design: Design | None
    analysis: Analysis
    key: tuple[KeyLine, ...]

    def __repr__(self) -> str:
        return (
            f"<Problem {self.seed}: {self.task.value} a {self.form.name}, {self.setting.value}, "
            f"{self.effect.value} decides; book {self.book.id!r}>"
        )

    def _native(self) -> _native.Problem:
        drawn = self.__dict__.get("_drawn")
        if drawn is None:
            drawn = self._cached("_drawn", _draw(self.seed, self.form, self.setting, self.task, self.effect, self.book))
        return drawn

    def _given_in(self) -> str:
        return "mm"

    def _steps(self, wanted: Wishes) -> str:
        return self._native().solution(wanted)

    def sheet(self, audience: Audience | str = Audience.CLASS, dialect: Dialect | str = Dialect.MARKDOWN) -> Working:
        """The problem as a sheet of its own, see :func:`problem_sheet`."""
        return problem_sheet(problems=[self], audience=audience, dialect=dialect)

    def mark(self, answers: Mapping[str, Said]) -> Marks:
        """Marks a student's answers: right within their digits, right by carry-over, a slip that is known, or wrong.

        Args:
            answers: figures by the symbol of the key, as the student wrote them, as for :func:`reconcile`. What was
                not asked for is left out of account.

        Raises:
            SeamwrightError: a figure that names no quantity or cannot be read.

        Example:
            >>> drawn = problem(seed=7, form=Form.lap(2), setting="boiler", task="check", effect="shearing",
            ...     book="metric")
            >>> drawn.mark({line.name: f"{line.value:.6g} {line.unit}" for line in drawn.key})
            <Marks: 8 of 8 answers credited>
        """
        given = [native for native, _ in figures(answers, "answers").values()]
        _, wanted = wishes(Dialect.PLAIN, Units.METRIC, DecimalMark.POINT, 0)
        found, credited, asked, text = self._native().mark(given, wanted)
        return Marks(
            marks=tuple(
                Mark(
                    name=_name(symbol, row),
                    kind=MarkKind(kind),
                    convention=None if convention is None else CONVENTIONS[convention],
                    sure=sure,
                )
                for symbol, row, kind, convention, sure in found
            ),
            credited=credited,
            asked=asked,
            text=text,
        )

    def _repr_html_(self) -> str:
        return self.sheet(Audience.TEACHER, Dialect.HTML)._repr_html_() or ""

    def _repr_markdown_(self) -> str:
        return self.sheet(Audience.TEACHER).text


def _name(symbol: str, row: int) -> str:
    return f"{symbol}.{row}" if row else symbol


def _draw(seed: int, form: Form, setting: Setting, task: Task, effect: Effect, book: RuleBook) -> _native.Problem:
    return _native.problem(seed, form._native(), setting.value, task.value, effect.value, book._core)


def problem(
    *,
    seed: int,
    form: Form,
    setting: Setting | str,
    task: Task | str,
    effect: Effect | str,
    book: RuleBook | str,
) -> Problem:
    """Draws a problem: stock plates, round stresses, and the wanted effect decides by at least 3 per cent.

    Args:
        seed: a whole number from 0 to 2^64 - 1; the same number, family and book give the same problem everywhere.
        form: form of the joint.
        setting: boiler or structure, for the stresses.
        task: check (the joint is given) or size (it is to be found).
        effect: what decides: tearing, shearing, bearing, combined, cap, thin plate.
        book: a rule book, or the short name of a built-in one.

    Raises:
        SeamwrightError: the family has no problem under this book (``NO_PROBLEM``): tearing at an inner row in a form
            without one, a cap in a book without caps.

    Example:
        >>> drawn = problem(seed=7, form=Form.lap(2), setting="boiler", task="check", effect="shearing", book="metric")
        >>> drawn.analysis.governing.name, drawn.analysis.runner_up_ratio >= 1.03
        ('all rivets fail: rows 1-2 shear', True)
    """
    wanted, rules = form_argument(form), book_argument(book)
    chosen = (choice(Setting, "setting", setting), choice(Task, "task", task), choice(Effect, "effect", effect))
    drawn_from = number("seed", seed)
    if not isinstance(seed, int) or not 0 <= seed < 2**64:
        raise SeamwrightError(
            f"seed = {seed!r} is not a whole number from 0 to 2^64 - 1; give one", field="seed", value=drawn_from
        )
    native = _draw(seed, wanted, *chosen, rules)
    x = native.facts()
    steel = Materials._of(x["materials"])
    joint = Joint._of(x["joint"])
    found: Design | None = None
    if x["design"] is not None:
        given = tuple(mm_or_none(gap) for gap in x["back_pitches"])
        brief = Brief(form=wanted, plate=Length[float]._make(x["plate"]), back_pitches=given)
        found = design(x["design"], brief, steel, rules)
    made = Problem(
        seed=seed,
        form=wanted,
        setting=chosen[0],
        task=chosen[1],
        effect=chosen[2],
        book=rules,
        joint=joint,
        materials=steel,
        design=found,
        analysis=analysis(x["analysis"], joint, steel, rules),
        key=tuple(
            KeyLine(name=_name(symbol, row), value=value, unit=unit, what=what)
            for symbol, row, value, unit, what in x["key"]
        ),
    )
    made._cached("_drawn", native)
    return made


def problem_sheet(
    *,
    problems: Sequence[Problem],
    audience: Audience | str = Audience.CLASS,
    dialect: Dialect | str = Dialect.MARKDOWN,
    units: Units | str = Units.METRIC,
    mark: DecimalMark | str = DecimalMark.POINT,
) -> Working:
    """A sheet of problems, numbered, with the caution.

    Args:
        problems: the problems, all under one book.
        audience: class for the problems alone, teacher for problems and answers.
        dialect, units, mark: as for :meth:`Analysis.working`.

    Raises:
        SeamwrightError: no problem, problems under several books, an unknown choice.

    Example:
        >>> drawn = [problem(seed=seed, form=Form.lap(2), setting="boiler", task="size", effect="shearing",
        ...     book="metric") for seed in (1, 2)]
        >>> sheet = problem_sheet(problems=drawn, audience="class", dialect="latex")
        >>> sheet.dialect.value, "Problem 2" in sheet.text, "Drawn from number" in sheet.text
        ('latex', True, False)
    """
    how = "[problem(seed=1, ..)]"
    listed: list[Problem] = [instance(Problem, "problems", p, how) for p in items(Problem, "problems", problems, how)]
    if not listed:
        raise SeamwrightError("problems is empty; give some", kind=ErrorKind.MISSING, field="problems")
    first = listed[0].book
    if any(p.book != first for p in listed):
        raise SeamwrightError("the problems are of several rule books; write a sheet for each", field="problems")
    chosen, wanted = wishes(dialect, units, mark, 0)
    of = choice(Audience, "audience", audience)
    text = _native.problem_sheet([p._native() for p in listed], of.value, first._core, wanted)
    return Working(dialect=chosen, text=text)

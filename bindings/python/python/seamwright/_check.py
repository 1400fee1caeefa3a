"""Checking a joint: every failure mode, the efficiencies, and the rules that are met or not."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from typing import Any

from . import _native
from ._convert import FORCES, figure, instance, reader_units
from ._drawing import Drawing, drawing
from ._enums import Fate, Label, ModeClass, Required, Subject, Units, Verdict
from ._joint import Joint
from ._materials import Materials
from ._quantities import Force, Length
from ._records import Record
from ._rules import RuleBook, book_argument
from ._working import Wishes, Worked, Working


@dataclass(frozen=True, kw_only=True)
class Cut(Record):
    """Which members tear, and at which row (from 1, outside first); 0: the member stays whole.

    ``other`` is plate B of a lap, the single or the wide strap; ``narrow`` the narrow or second strap.
    """

    plate: int
    other: int
    narrow: int


@dataclass(frozen=True, kw_only=True)
class Mode(Record):
    """One way to fail: its name, strength of the strip, and efficiency (strength over the solid strip).

    ``fates`` tells how the rivets of each row fail; ``counted`` whether the rule book counts the mode; ``zigzag``
    whether the plate tears along the zig-zag.
    """

    name: str
    cut: Cut
    kind: ModeClass
    counted: bool
    fates: tuple[Fate, ...]
    strength: Force[float]
    efficiency: float
    zigzag: bool


@dataclass(frozen=True, kw_only=True)
class Letter(Record):
    """A mode that the early US boiler code letters; the solid strip (A) has no cut."""

    letter: str
    name: str
    cut: Cut | None
    single: Fate
    double: Fate
    strength: Force[float]


@dataclass(frozen=True, kw_only=True)
class Finding(Record):
    """One rule compared with the joint.

    ``required`` and ``provided`` are in ``unit`` (mm, MPa), None where there is no figure; its text has them in the
    units that went in, which ``shown_in`` says. ``row`` is the row or gap, or the rivet of a group (``place`` says
    which of them it counts), 0 for the joint; ``entry`` and ``clause`` say where the rule stands, ``label`` how far it
    can be trusted (None: no entry).
    """

    subject: Subject
    row: int
    place: str
    verdict: Verdict
    sense: Required
    required: float | None
    provided: float | None
    unit: str
    what: str
    advice: str
    entry: str
    clause: str
    label: Label | None
    shown_in: Units = field(compare=False)

    def figure(self, x: float | None) -> str:
        """``required`` or ``provided`` as text, in the units that went in; empty where there is no figure."""
        return "" if x is None else figure(x, self.unit, self.shown_in, 5)

    def __str__(self) -> str:
        at = f" ({self.place} {self.row})" if self.row else ""
        figures = f" {self.figure(self.provided)}".rstrip()
        if self.required is not None:
            figures += f", {self.sense.value} {self.figure(self.required)}"
        advice = f": {self.advice}" if self.verdict is not Verdict.MET else ""
        return f"{self.verdict.value}: {self.what}{at}{figures}{advice}"


@dataclass(frozen=True, kw_only=True)
class Percentages(Record):
    """Plate, rivet and combined percentages, as the British and Indian rules state them (100 is whole)."""

    plate: float
    rivet: float
    combined: float | None


@dataclass(frozen=True, kw_only=True)
class ClassicEfficiencies(Record):
    """Tearing, shearing and bearing over the solid strip: what the trade always quotes, even above 1."""

    tearing: float
    shearing: float
    bearing: float | None


@dataclass(frozen=True, kw_only=True, repr=False)
class Analysis(Worked):
    """What a check finds. Strengths are for the strip, on the footing of the stresses that went in.

    Attributes:
        joint: the joint that was checked.
        materials: its stresses.
        book: the rule book.
        solid: the solid strip.
        tear_outer: tearing at the outer row.
        shear_all: all rivets in shear.
        bearing_all: all rivets in bearing, None without a bearing stress.
        governing: the weakest of all modes.
        runner_up: the next.
        by_book: the weakest that the book counts.
        efficiency: over all modes, as a fraction of one, as the next two.
        book_efficiency: by the modes that the book counts.
        credited: the lesser of the two, under the book's cap.
        classic_efficiencies: tearing, shearing and bearing over the solid strip.
        percentages: plate, rivet and combined percentages.
        runner_up_ratio: runner-up over governing mode.
        findings: the rules, those not met first.
    """

    joint: Joint
    materials: Materials
    book: RuleBook
    solid: Force[float]
    tear_outer: Force[float]
    shear_all: Force[float]
    bearing_all: Force[float] | None
    governing: Mode
    runner_up: Mode
    by_book: Mode
    efficiency: float
    book_efficiency: float
    credited: float
    runner_up_ratio: float
    classic_efficiencies: ClassicEfficiencies
    percentages: Percentages
    findings: tuple[Finding, ...]

    def __repr__(self) -> str:
        open_rules = sum(f.verdict is Verdict.OPEN for f in self.findings)
        return (
            f"<Analysis: efficiency {100 * self.efficiency:.2f} %, {self.governing.name} at "
            f"{self.governing.strength}; {open_rules} of {len(self.findings)} findings open; book {self.book.id!r}>"
        )

    def _natives(self) -> tuple[_native.Joint, _native.Materials, _native.Book]:
        return self.joint._native(), self.materials._native(), self.book._core

    @property
    def modes(self) -> tuple[Mode, ...]:
        """All failure modes, in the documented order: of equal ones the first governs."""
        found = self.__dict__.get("_modes")
        if found is None:
            found = self._cached("_modes", tuple(mode(m, self.solid.unit) for m in _native.modes(*self._natives())))
        return found

    @property
    def letters(self) -> tuple[Letter, ...]:
        """The modes as the early US boiler code letters them (ASME 1914/1918, Appendix)."""
        return tuple(
            Letter(
                letter=x["letter"],
                name=x["name"],
                cut=None if x["cut"] is None else cut(x["cut"]),
                single=Fate(x["single"]),
                double=Fate(x["double"]),
                strength=Force[float]._make(x["strength"], self.solid.unit),
            )
            for x in _native.letters(*self._natives())
        )

    @property
    def prescribed_gaps(self) -> tuple[tuple[Length[float], str], ...]:
        """The row distances that the book prescribes, by gap, with the keys of their entries."""
        return tuple(
            (Length[float]._make(gap, self.joint.pitch.unit), key)
            for gap, key in _native.prescribed_gaps(*self._natives())
        )

    @property
    def open_findings(self) -> tuple[Finding, ...]:
        """The rules that are not met."""
        return tuple(f for f in self.findings if f.verdict is Verdict.OPEN)

    def finding(self, subject: Subject, *, row: int = 0) -> Finding | None:
        """The finding on a subject at a row, None where there is none."""
        return next((f for f in self.findings if f.subject is subject and f.row == row), None)

    def _given_in(self) -> str:
        return self.joint.pitch.unit

    def _steps(self, wanted: Wishes) -> str:
        return _native.working_of_check(*self._natives(), wanted)

    def sheet(self, **particulars: Any) -> Working:
        """The sheet that someone signs; see :func:`seamwright.sheet` for the keywords."""
        from ._sheet import sheet

        return sheet(of=self, **particulars)

    def drawing(self, **title: Any) -> Drawing:
        """The drawing of the joint, see :func:`seamwright.drawing`; the rule book stands in its title block."""
        return drawing(joint=self.joint, **{"rule_book": self.book.title, **title})

    def _kinds(self) -> Mapping[str, Callable[[], str]]:
        return {**super()._kinds(), ".svg": lambda: self.drawing().svg, ".dxf": lambda: self.drawing().dxf}

    def _repr_html_(self) -> str:
        from ._html import analysis

        return analysis(self)


# The members of enums by their words: an index is several times as fast as a call of the class.
_CLASSES = {member.value: member for member in ModeClass}
_FATES = {member.value: member for member in Fate}
_SUBJECTS = {member.value: member for member in Subject}
_VERDICTS = {member.value: member for member in Verdict}
_SENSES = {member.value: member for member in Required}
_LABELS: dict[str, Label | None] = {"": None, **{member.value: member for member in Label}}


def cut(x: tuple[int, int, int]) -> Cut:
    """A cut of the native module."""
    plate, other, narrow = x
    return Cut._built({"plate": plate, "other": other, "narrow": narrow})


def mode(x: dict[str, Any], unit: str) -> Mode:
    """A mode of the native module, its strength shown in a unit."""
    x["kind"] = _CLASSES[x.pop("class")]
    x["cut"] = cut(x["cut"])
    x["fates"] = tuple([_FATES[fate] for fate in x["fates"]])
    x["strength"] = Force[float]._make(x["strength"], unit)
    return Mode._built(x)


def findings(found: list[dict[str, Any]], given_in: str) -> tuple[Finding, ...]:
    """Findings of the native module, for lengths that were given in a unit."""
    units = reader_units(None, given_in)
    return tuple([_finding(x, units) for x in found])


def _finding(x: dict[str, Any], units: Units) -> Finding:
    x["shown_in"] = units
    x["subject"] = _SUBJECTS[x["subject"]]
    x["verdict"] = _VERDICTS[x["verdict"]]
    x["sense"] = _SENSES[x["sense"]]
    x["label"] = _LABELS[x["label"]]
    return Finding._built(x)


def analysis(x: dict[str, Any], joint: Joint, materials: Materials, book: RuleBook) -> Analysis:
    """An analysis of the native module."""
    unit = FORCES.get(materials.plate.tension.unit, "N")

    def force(newtons: float) -> Force[float]:
        return Force[float]._make(newtons, unit)

    plate, rivet, combined = x["percentages"]
    tearing, shearing, bearing = x["classic_efficiencies"]
    return Analysis(
        joint=joint,
        materials=materials,
        book=book,
        solid=force(x["solid"]),
        tear_outer=force(x["tear_outer"]),
        shear_all=force(x["shear_all"]),
        bearing_all=None if x["bearing_all"] is None else force(x["bearing_all"]),
        governing=mode(x["governing"], unit),
        runner_up=mode(x["runner_up"], unit),
        by_book=mode(x["by_book"], unit),
        efficiency=x["efficiency"],
        book_efficiency=x["book_efficiency"],
        credited=x["credited"],
        runner_up_ratio=x["runner_up_ratio"],
        classic_efficiencies=ClassicEfficiencies(tearing=tearing, shearing=shearing, bearing=bearing),
        percentages=Percentages(plate=plate, rivet=rivet, combined=combined),
        findings=findings(x["findings"], joint.pitch.unit),
    )


def materials_argument(x: Any) -> Materials:
    """Stresses, as an argument."""
    made: Materials = instance(Materials, "materials", x, "Materials(tension=MPa(80), rivet_shear=MPa(60))")
    return made


def joint_argument(x: Any) -> Joint:
    """A joint, as an argument."""
    made: Joint = instance(Joint, "joint", x, "Joint(..)")
    return made


def check(*, joint: Joint, materials: Materials, book: RuleBook | str) -> Analysis:
    """Checks a joint: all modes, efficiencies and rules.

    Args:
        joint: the joint.
        materials: its stresses, all permissible or all ultimate.
        book: a rule book, or the short name of a built-in one.

    Returns:
        The analysis; a notebook shows it as tables.

    Raises:
        SeamwrightError: the book checks bearing and no bearing stress is given (``MISSING``), or no such book.

    Source:
        Khurmi & Gupta, A Textbook of Machine Design, Example 9.4 (efficiency 67.5 %), for the example below.

    Example:
        >>> joint = Joint(form=Form.lap(2), pitch=mm(71), plate=mm(13), hole=mm(23))
        >>> steel = Materials(tension=MPa(80), rivet_shear=MPa(60), bearing=MPa(120))
        >>> found = check(joint=joint, materials=steel, book="metric")
        >>> f"{found.efficiency:.1%}", found.governing.name
        ('67.5%', 'all rivets fail: rows 1-2 shear')
    """
    one, stresses, rules = joint_argument(joint), materials_argument(materials), book_argument(book)
    return analysis(_native.check(one._native(), stresses._native(), rules._core), one, stresses, rules)

"""What a change of each input does to a joint, and what tolerances can do at worst."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from . import _native
from ._check import Cut, cut, joint_argument, materials_argument
from ._convert import LengthLike, choice, length_unit, optional_length
from ._enums import Target
from ._errors import ErrorKind, SeamwrightError
from ._html import page, table
from ._joint import Joint
from ._materials import Materials
from ._quantities import Length
from ._records import Record
from ._rules import RuleBook, book_argument


@dataclass(frozen=True, kw_only=True)
class Sided(Record):
    """The derivatives of a figure for less of an input (``left``) and for more of it (``right``).

    They differ at a kink: the least of many modes has one wherever two of them are equal.
    """

    left: float
    right: float

    @property
    def has_kink(self) -> bool:
        """Whether the two sides differ by more than their rounding."""
        return abs(self.left - self.right) > 1e-7 * max(abs(self.left), abs(self.right))

    def times(self, factor: float) -> Sided:
        """Both sides times a factor."""
        return Sided(left=self.left * factor, right=self.right * factor)

    def __str__(self) -> str:
        return f"{self.left:.4g} / {self.right:.4g}" if self.has_kink else f"{self.right:.4g}"


@dataclass(frozen=True, kw_only=True)
class Slope(Record):
    """What one input does, each for one unit more of it: mm, MPa, or one.

    Attributes:
        name: symbol of the working (``d.1``), or the key of an entry of the rule book where ``rule`` says so.
        what: in words.
        value, unit: its value.
        efficiency, book_efficiency, credited: slopes of the efficiencies.
        strength: slope of the strength of the weakest mode, N/mm of seam; the pressure of a thin shell moves like it.
        relative: per cent of the efficiency over all modes for one per cent more of the input.
        governs: which members tear in the mode that governs on the left, and on the right.
    """

    name: str
    what: str
    rule: bool
    value: float
    unit: str
    efficiency: Sided
    book_efficiency: Sided
    credited: Sided
    strength: Sided
    relative: Sided
    governs: tuple[Cut, Cut]

    @property
    def mode_changes(self) -> bool:
        """Whether the governing mode changes here."""
        return self.governs[0] != self.governs[1]


@dataclass(frozen=True, kw_only=True, repr=False)
class Slopes(Record):
    """The slopes of a joint, by input: dimensions, stresses, the book's figures.

    ``efficiency``, ``book_efficiency``, ``credited`` are those of the joint; ``strength`` is that of its weakest mode,
    N for a millimetre of seam. ``table`` is a Markdown table of what does something.
    """

    efficiency: float
    book_efficiency: float
    credited: float
    strength: float
    lines: tuple[Slope, ...]
    table: str

    def __repr__(self) -> str:
        most = max(self.lines, key=lambda line: abs(line.relative.right), default=None)
        said = "" if most is None else f"; most by {most.what}: {most.relative} % for 1 %"
        return f"<Slopes: efficiency {100 * self.efficiency:.2f} %{said}>"

    def __getitem__(self, name: str) -> Slope:
        """The slope of an input by its symbol (``d.1``, ``p``, ``ss``) or the key of its entry.

        Raises:
            SeamwrightError: no such input (``UNKNOWN_KEY``).
        """
        for line in self.lines:
            if line.name == name:
                return line
        known = ", ".join(line.name for line in self.lines)
        raise SeamwrightError(
            f"{name!r} is no input of this joint; take one of {known}", kind=ErrorKind.UNKNOWN_KEY, field="input"
        )

    def _repr_markdown_(self) -> str:
        return f"{self.table}\n> {_native.caution()}\n"

    def _repr_html_(self) -> str:
        rows = [
            (line.what, f"{line.value:.6g} {line.unit}".rstrip(), str(line.relative),
             str(line.book_efficiency.times(line.value / self.book_efficiency)),
             str(line.strength.times(line.value / self.strength)))
            for line in self.lines
            if any(x for s in (line.efficiency, line.book_efficiency, line.strength) for x in (s.left, s.right))
        ]  # fmt: skip
        head = ("input", "value", "efficiency, % for 1 %", "by the book, % for 1 %", "strength, % for 1 %")
        return page(table("Sensitivity (less / more where they differ)", head, rows))


def slopes(*, joint: Joint, materials: Materials, book: RuleBook | str) -> Slopes:
    """The exact derivatives of a joint's efficiencies and strength to each of its inputs, one to each side.

    Args:
        joint: the joint.
        materials: its stresses.
        book: a rule book, or the short name of a built-in one.

    Raises:
        SeamwrightError: as :func:`check`.

    Example:
        Shear governs, pi/4 d^2 ss over p t st: one per cent more of the hole is two per cent more of the joint.

        >>> joint = Joint(form=Form.lap(1), pitch=mm(50), plate=mm(6), hole=mm(18))
        >>> steel = Materials(tension=MPa(120), rivet_shear=MPa(90), bearing=MPa(300))
        >>> found = slopes(joint=joint, materials=steel, book="metric")
        >>> round(found["d.1"].relative.right, 9), round(found["p"].relative.left, 9)
        (2.0, -1.0)
    """
    one, stresses, rules = joint_argument(joint), materials_argument(materials), book_argument(book)
    x = _native.slopes(one._native(), stresses._native(), rules._core)
    efficiency, by_book, credited = x["efficiencies"]

    def sided(pair: tuple[float, float]) -> Sided:
        return Sided(left=pair[0], right=pair[1])

    def line(s: dict[str, Any]) -> Slope:
        slope = sided(s["efficiency"])
        return Slope(
            name=s["name"],
            what=s["what"],
            rule=s["rule"],
            value=s["value"],
            unit=s["unit"],
            efficiency=slope,
            book_efficiency=sided(s["book_efficiency"]),
            credited=sided(s["credited"]),
            strength=sided(s["strength"]),
            relative=slope.times(s["value"] / efficiency),
            governs=(cut(s["governs"][0]), cut(s["governs"][1])),
        )

    return Slopes(
        efficiency=efficiency,
        book_efficiency=by_book,
        credited=credited,
        strength=x["strength"],
        lines=tuple(line(s) for s in x["lines"]),
        table=x["table"],
    )


@dataclass(frozen=True, kw_only=True)
class Deviation(Record):
    """One dimension in a worst case: where it stands, and the worst that its tolerance alone does."""

    name: str
    tolerance: Length[float]
    deviation: Length[float]
    alone: float


@dataclass(frozen=True, kw_only=True, repr=False)
class WorstCase(Record):
    """The worst case of a figure over tolerances.

    Attributes:
        target: what is at its worst: efficiency, book efficiency, or strength in N for a millimetre of seam.
        stated: the figure of the joint as stated.
        value: the worst over all tolerances together; ``ratio`` is the worst over the stated.
        deviations: plate, other plate or wide strap, narrow strap, hole, pitch; the dimension with the lowest
            ``alone`` matters most.
        cut: which members tear in the mode that governs there.
        exact: whether it is proved; otherwise it is the worst that a grid found.
        hole_inside: whether the worst hole lies inside its tolerance and not at an end of it.
    """

    target: Target
    stated: float
    value: float
    ratio: float
    deviations: tuple[Deviation, ...]
    cut: Cut
    exact: bool
    hole_inside: bool

    def _figure(self, x: float) -> str:
        return f"{x:.6g} N/mm" if self.target is Target.STRENGTH else f"{100 * x:.2f} %"

    def __repr__(self) -> str:
        stated, worst = self._figure(self.stated), self._figure(self.value)
        return f"<WorstCase: {self.target.value} {stated} as stated, {worst} at worst>"

    def _repr_html_(self) -> str:
        rows = [
            (d.name, str(d.tolerance), str(d.deviation), self._figure(d.alone))
            for d in self.deviations
            if d.tolerance.mm > 0.0
        ]
        stated, worst = self._figure(self.stated), self._figure(self.value)
        said = f"{self.target.value}: {stated} as stated, {worst} at worst"
        proof = "" if self.exact else "<p>Not proved: the worst that a grid found.</p>"
        return page(table(said, ("dimension", "tolerance", "at worst", "alone"), rows), proof)


def worst_case(
    *,
    joint: Joint,
    materials: Materials,
    book: RuleBook | str,
    target: Target | str = Target.EFFICIENCY,
    plate: LengthLike | None = None,
    straps: LengthLike | None = None,
    hole: LengthLike | None = None,
    pitch: LengthLike | None = None,
) -> WorstCase:
    """The worst case of a joint over tolerances, each to either side.

    Args:
        joint: the joint.
        materials: its stresses.
        book: a rule book, or the short name of a built-in one.
        target: efficiency, book efficiency, or strength of a length of seam.
        plate: tolerance of the plate, in a lap of each plate for itself.
        straps: of each strap for itself.
        hole: of the holes, which move together.
        pitch: of the pitch, or of the width of the strip where the outer row has several rivets in it.

    Raises:
        SeamwrightError: a tolerance that is negative or not below its dimension; holes that can fill the pitch, a
            rivet that a hole can be too small for; as :func:`check`.

    Example:
        The rivets shear, so holes drilled 0.5 mm small cost (17.5/18)^2.

        >>> joint = Joint(form=Form.lap(1), pitch=mm(50), plate=mm(6), hole=mm(18))
        >>> steel = Materials(tension=MPa(120), rivet_shear=MPa(90), bearing=MPa(300))
        >>> worst = worst_case(joint=joint, materials=steel, book="metric", hole=mm(0.5))
        >>> abs(worst.ratio - (17.5 / 18) ** 2) < 1e-12, worst.exact
        (True, True)
    """
    one, stresses, rules = joint_argument(joint), materials_argument(materials), book_argument(book)
    of = choice(Target, "target", target)
    said = {"plate": plate, "straps": straps, "hole": hole, "pitch": pitch}
    spans = [optional_length(name, x) or 0.0 for name, x in said.items()]
    x = _native.worst_case(one._native(), stresses._native(), rules._core, spans, of.value)
    unit = one.pitch.unit
    lap = one.form.kind.value == "lap"
    names = (
        "plate",
        "second plate" if lap else "single, wide or first strap",
        "narrow or second strap",
        "hole",
        "pitch",
    )
    each = (spans[0], spans[0] if lap else spans[1], 0.0 if lap else spans[1], spans[2], spans[3])
    shown = [length_unit(plate), length_unit(plate if lap else straps), length_unit(straps), length_unit(hole),
             length_unit(pitch)]  # fmt: skip

    return WorstCase(
        target=of,
        stated=x["stated"],
        value=x["value"],
        ratio=x["ratio"],
        deviations=tuple(
            Deviation(
                name=name,
                tolerance=Length[float]._make(span, of_span if span else unit),
                deviation=Length[float]._make(moved, of_span if span else unit),
                alone=alone,
            )
            for name, span, moved, alone, of_span in zip(names, each, x["deviation"], x["alone"], shown, strict=True)
        ),
        cut=cut(x["cut"]),
        exact=x["exact"],
        hole_inside=x["hole_inside"],
    )

"""Vessels: a shell plate and its seams from a working pressure."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

from . import _native
from ._check import Finding, findings, materials_argument
from ._convert import LengthLike, StressLike, all_lengths, choice, length, length_unit, optional_length, stress
from ._enums import Dialect, GirthPlace, Verdict
from ._errors import ErrorKind, SeamwrightError
from ._joint import Form, form_argument, missing
from ._materials import Materials
from ._quantities import Length, Pressure, Stress
from ._records import Record
from ._rules import RuleBook, book_argument
from ._shell import (
    Allowed,
    Assumption,
    Girth,
    Shell,
    allowed,
    assumptions,
    girth,
    pressure_unit,
    shell_argument,
)
from ._size import Brief, Design, design
from ._working import Wishes, Worked


@dataclass(frozen=True, init=False)
class PlateStock(Record):
    """Plates that the shop can get: multiples of a step, between two thicknesses.

    Args:
        step: 0.1 to 100 mm.
        thinnest, thickest: of the stock, 0.5 to 200 mm.

    Raises:
        SeamwrightError: a bare number. Ranges are checked where the stock is used.

    Example:
        >>> PlateStock(step=mm(1), thinnest=mm(5), thickest=mm(40)).step
        mm(1)
    """

    step: Length[float]
    thinnest: Length[float]
    thickest: Length[float]

    def __init__(self, *, step: LengthLike, thinnest: LengthLike, thickest: LengthLike) -> None:
        for name, x in [("step", step), ("thinnest", thinnest), ("thickest", thickest)]:
            self._cached(name, Length[float]._make(length(name, x), length_unit(x)))


@dataclass(frozen=True, kw_only=True, repr=False)
class Vessel(Worked):
    """A shell with its seams.

    Attributes:
        pressure: the working pressure asked for.
        plate: shell plate, the first of the stock that carries it.
        seam: the seam along the shell, sized and checked.
        allowed: the pressure that it allows, with the efficiency that it really has.
        girth: the girth seam, None where none was asked for or none does.
        no_girth: why there is none although one was asked for.
        tried: thicknesses that were tried, the one taken included.
        assumptions: what all this rests on.
        findings: the book's rules on the shell, open ones first; those on the joints are in their analyses.
    """

    form: Form
    pressure: Stress[float]
    shell: Shell
    materials: Materials
    book: RuleBook
    plate: Length[float]
    seam: Design
    allowed: Allowed
    girth: Girth | None
    no_girth: str | None
    tried: int
    assumptions: tuple[Assumption, ...]
    findings: tuple[Finding, ...]
    asked: tuple[tuple[str, Any], ...]

    def __repr__(self) -> str:
        seam = self.seam.joint.form.name
        return (
            f"<Vessel: plate {self.plate}, {seam}, {self.allowed.pressure} allowed for {self.pressure}; "
            f"book {self.book.id!r}>"
        )

    @property
    def open_findings(self) -> tuple[Finding, ...]:
        """The rules that are not met: on the shell, on the seam along it, on the girth seam."""
        round_it = () if self.girth is None else self.girth.open_findings
        here = tuple(f for f in self.findings if f.verdict is Verdict.OPEN)
        return here + self.seam.analysis.open_findings + round_it

    def _given_in(self) -> str:
        return self.plate.unit

    def _steps(self, wanted: Wishes) -> str:
        given = _given(self.pressure, self.shell, dict(self.asked))
        return _native.working_of_vessel(self.form._native(), self.materials._native(), given, self.book._core, wanted)

    def _repr_html_(self) -> str:
        return self.working(Dialect.HTML)._repr_html_() or ""


def _given(pressure: Stress[float], shell: Shell, asked: dict[str, Any]) -> dict[str, Any]:
    wanted = asked["girth"]
    return {
        **asked,
        "pressure": pressure.MPa,
        "shell": shell._native(),
        "plates": list(asked["plates"]),
        "girth": None if wanted is None else (wanted[0]._native(), wanted[1]),
    }


def _nothing(why: dict[str, Any], pressure: Stress[float], lengths: str) -> SeamwrightError:
    """No plate of the stock will do: which carries most, and why others were refused."""
    said = [f"none of {why['tried']} plates of the stock carries {pressure}"]
    best = why["best"]
    if best is not None:
        carries = Pressure[float]._make(best[1], pressure.unit)
        said.append(f"the best, {Length[float]._make(best[0], lengths)}, carries {carries}")
    if why["too_thin"]:
        said.append(f"{why['too_thin']} are below the least plate of the book")
    if why["refused"]:
        said.append(f"of {why['refused']} no joint can be made, the last because: {why['refusal']}")
    return SeamwrightError(
        "; ".join(said) + "; take thicker plates, or a stronger form",
        kind=ErrorKind.NO_STANDARD_SIZE,
        field="pressure",
        value=pressure.MPa,
        limit=None if best is None else best[1],
        unit="MPa",
    )


def vessel(
    *,
    form: Form,
    pressure: StressLike,
    shell: Shell,
    materials: Materials,
    plates: PlateStock | Sequence[LengthLike],
    book: RuleBook | str,
    hole: LengthLike | None = None,
    rivet: LengthLike | None = None,
    girth_form: Form | None = None,
    girth_place: GirthPlace | str = GirthPlace.MIDDLE,
) -> Vessel:
    """Designs a shell from a working pressure: the first plate of the stock whose seam carries it.

    For each plate the joint along the shell is sized, and its pressure worked out with the efficiency that it really
    has; no efficiency is guessed and then kept.

    Args:
        form: form of the seam along the shell.
        pressure: working pressure.
        shell: diameter, footing of the stresses, circumstances.
        materials: stresses on the footing of the shell.
        plates: the stock, or a rising list of thicknesses.
        book: a rule book, or the short name of a built-in one.
        hole, rivet: of the seam along the shell, where they are settled already.
        girth_form: form of a girth seam that is wanted; more rows are taken where those of the form do not do.
        girth_place: where it lies: middle, end or stayed.

    Returns:
        The vessel; ``working()`` shows the pressure, both seams and the rules, and a notebook shows it as a page.

    Raises:
        SeamwrightError: no plate of the stock carries the pressure (``NO_STANDARD_SIZE``; ``limit`` is what the best
            carries); a book without a formula of the pressure, no factor of safety (``MISSING``); a figure outside its
            range.

    Example:
        An invented receiver of 1 m.

        >>> steel = Materials(tension=MPa(90), rivet_shear=MPa(75), bearing=MPa(150))
        >>> made = vessel(form=Form.double_strap(2), pressure=MPa(1.5), materials=steel, book="metric",
        ...     shell=Shell(inside_diameter=m(1), footing="permissible"),
        ...     plates=PlateStock(step=mm(1), thinnest=mm(5), thickest=mm(40)), girth_form=Form.lap(1))
        >>> made.allowed.pressure >= made.pressure, made.girth.pressure >= made.pressure
        (True, True)
    """
    wanted, rules, stresses, one = (
        form_argument(form), book_argument(book), materials_argument(materials), shell_argument(shell),
    )  # fmt: skip
    if rivet is not None and hole is None:
        raise missing("hole", "a rivet is given, and its hole is not; give hole=mm(23) too")
    unit = pressure_unit(pressure, shell.inside_diameter)
    asked_for = Pressure[float]._make(stress("pressure", pressure), unit)
    lengths: str
    step: tuple[float, float, float] | None
    if isinstance(plates, PlateStock):
        lengths, listed = plates.step.unit, []
        step = (plates.step.mm, plates.thinnest.mm, plates.thickest.mm)
    else:
        if isinstance(plates, (list, tuple)):
            lengths = length_unit(plates[0]) if plates else "mm"
        else:
            lengths = length_unit(plates)
        listed, step = all_lengths("plates", plates), None
        if not listed:
            raise SeamwrightError("plates is empty; give some", kind=ErrorKind.MISSING, field="plates")
    asked: dict[str, Any] = {
        "plates": tuple(listed),
        "step": step,
        "hole": optional_length("hole", hole),
        "rivet": optional_length("rivet", rivet),
        "girth": None
        if girth_form is None
        else (form_argument(girth_form), choice(GirthPlace, "girth_place", girth_place).value),
    }
    native = _given(asked_for, one, asked)
    found, why = _native.vessel(wanted._native(), stresses._native(), native, rules._core)
    if found is None:
        raise _nothing(why or {}, asked_for, lengths)
    plate = Length[float]._make(found["plate"], lengths)
    brief = Brief._of(form=wanted, plate=plate, hole=hole, rivet=rivet)
    round_it = found["girth"]
    return Vessel(
        form=wanted,
        pressure=asked_for,
        shell=one,
        materials=stresses,
        book=rules,
        plate=plate,
        seam=design(found["seam"], brief, stresses, rules),
        allowed=allowed(found["allowed"], unit, lengths),
        girth=None if round_it is None else girth(round_it, stresses, rules, lengths, unit),
        no_girth=found["no_girth"],
        tried=found["tried"],
        assumptions=assumptions(found["assumptions"], lengths),
        findings=findings(found["findings"], lengths),
        asked=tuple(asked.items()),
    )

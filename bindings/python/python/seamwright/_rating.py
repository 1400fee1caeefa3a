"""Rating an existing joint of a shell."""

from __future__ import annotations

from collections.abc import Collection
from dataclasses import dataclass
from typing import Any

from . import _native
from ._check import Analysis, Finding, analysis, findings
from ._convert import (
    LengthLike,
    StressLike,
    flag,
    gaps,
    instance,
    items,
    length,
    length_unit,
    number,
    optional_length,
    optional_stress,
)
from ._enums import Basis, Dialect, HoleMaking, Metal, Riveting, Verdict
from ._errors import ErrorKind, SeamwrightError
from ._joint import Form, Joint
from ._materials import Materials
from ._quantities import Pressure, Stress
from ._rules import RuleBook, book_argument
from ._shell import Assumption, assumptions, circumstances, pressure_unit, word
from ._working import Wishes, Worked, Working

FROM_DRAWING = ("pitch", "plate", "other_plate", "wide_strap", "narrow_strap", "hole", "shell_plate")
"""Figures that are measured unless they are said to be from a drawing."""


@dataclass(frozen=True, kw_only=True, repr=False)
class Rating(Worked):
    """A rated joint.

    Attributes:
        allowed: working pressure allowed: the least of seam, solid plate and the book's limits on laps.
        seam: what the seam allows.
        plate: what the solid plate away from the seam allows, None where its thickness is not known.
        governs: ``"seam"``, ``"solid plate"``, or the key of the book's limit.
        margin: allowed over present pressure, None where that is not stated.
        test: hydrostatic test pressure by the book, None where it has none.
        years: years until only the present pressure is allowed, None where wastage or pressure is not stated.
        assumptions: everything that the rating rests on, and how it is known.
        findings: the book's rules on the shell; those on the joint are in ``analysis``.
    """

    form: Form
    book: RuleBook
    joint: Joint
    materials: Materials
    analysis: Analysis
    allowed: Stress[float]
    seam: Stress[float]
    plate: Stress[float] | None
    governs: str
    margin: float | None
    test: Stress[float] | None
    years: float | None
    assumptions: tuple[Assumption, ...]
    findings: tuple[Finding, ...]
    as_found: tuple[tuple[str, Any], ...]

    def __repr__(self) -> str:
        years = "" if self.years is None else f", {self.years:.1f} years left"
        return f"<Rating: {self.allowed} allowed by the {self.governs}{years}; book {self.book.id!r}>"

    @property
    def open_findings(self) -> tuple[Finding, ...]:
        """The rules that are not met: those on the shell, then those on the joint."""
        return tuple(f for f in self.findings + self.analysis.findings if f.verdict is Verdict.OPEN)

    def assumed(self) -> tuple[Assumption, ...]:
        """What was not stated and is assumed."""
        return tuple(a for a in self.assumptions if a.basis is Basis.ASSUMED)

    def _given_in(self) -> str:
        return self.joint.pitch.unit

    def _steps(self, wanted: Wishes) -> str:
        return _native.working_of_rating(self.form._native(), thawed(self.as_found), self.book._core, wanted)

    def sheet(self, **particulars: Any) -> Working:
        """The sheet that someone signs; see :func:`seamwright.sheet` for the keywords."""
        from ._sheet import sheet

        return sheet(of=self, **particulars)

    def _repr_html_(self) -> str:
        return self.working(Dialect.HTML)._repr_html_() or ""


def _frozen(given: dict[str, Any]) -> tuple[tuple[str, Any], ...]:
    """What was given, so that it can be hashed."""
    return tuple((key, _frozen(x) if isinstance(x, dict) else x) for key, x in given.items())


def thawed(given: tuple[tuple[str, Any], ...]) -> dict[str, Any]:
    """What was given, as the native module takes it."""
    return {key: dict(x) if key == "service" else x for key, x in given}


def rate(
    *,
    form: Form,
    pitch: LengthLike,
    plate: LengthLike,
    inside_diameter: LengthLike,
    book: RuleBook | str,
    other_plate: LengthLike | None = None,
    wide_strap: LengthLike | None = None,
    narrow_strap: LengthLike | None = None,
    hole: LengthLike | None = None,
    shell_plate: LengthLike | None = None,
    plate_when_new: LengthLike | None = None,
    from_drawing: Collection[str] = (),
    back_pitch: Any = None,
    margin: LengthLike | None = None,
    plates: Metal | str | None = None,
    rivets: Metal | str | None = None,
    tension: StressLike | None = None,
    rivet_shear: StressLike | None = None,
    bearing: StressLike | None = None,
    permissible: bool = False,
    safety_factor: float | None = None,
    corrosion: LengthLike | None = None,
    present: StressLike | None = None,
    wastage_rate: LengthLike | None = None,
    earlier_plate: LengthLike | None = None,
    years_ago: float | None = None,
    second_hand: bool | None = None,
    past_age_limit: bool | None = None,
    tested: bool = False,
    tubular: bool | None = None,
    lap_length: LengthLike | None = None,
    lap_in_fire: bool | None = None,
    weight_on_seam: bool | None = None,
    riveting: Riveting | str | None = None,
    holes_made: HoleMaking | str | None = None,
    stripped: bool = False,
) -> Rating:
    """Rates an existing joint along a shell, from what was measured. Old shells need inspection before any rating.

    Args:
        form: the form of the joint.
        pitch: pitch of the outer row.
        plate: least plate at the seam.
        inside_diameter: greatest inside diameter of the shell.
        book: the rule book of the jurisdiction, or the short name of a built-in one.
        other_plate: the second plate of a lap; without it, as thick as the first (assumed).
        wide_strap: the single, wide or first strap.
        narrow_strap: the narrow or second strap.
        hole: driven rivet, which is the hole; without it, the book's table (tabulated).
        shell_plate: least plate away from the seam, held against the pressure as a solid plate.
        plate_when_new: plate when new, by which driven rivets are tabulated.
        from_drawing: names of the figures above that were not measured.
        back_pitch: distance between rows, one for all or one each.
        margin: centre of the edge row to the plate's edge.
        plates: metal of the plates, where the book's strengths are to be taken.
        rivets: metal of the rivets, where it is another one.
        tension: tensile strength of the plates.
        rivet_shear: shear strength of the rivets.
        bearing: crushing strength of the plates.
        permissible: the stresses given are permissible ones, not strengths at failure.
        safety_factor: factor of safety that the authority sets, in the place of the book's.
        corrosion: corrosion allowance besides the wastage that is measured.
        present: present working pressure.
        wastage_rate: loss of thickness in a year.
        earlier_plate: plate at an earlier inspection, with ``years_ago``.
        years_ago: years since that inspection.
        second_hand, past_age_limit, tested, tubular, stripped: circumstances; those not stated are taken on the safe
            side where the book distinguishes them.
        lap_length, lap_in_fire, weight_on_seam, riveting, holes_made: likewise.

    Raises:
        SeamwrightError: a strength, a factor of safety or a driven rivet that neither you nor the book gives
            (``MISSING``); a figure outside its range or against the form.

    Example:
        An invented drum of 48 in, thinned to 0.45 in; 55 000 psi and 44 000 psi are the book's. By hand: two rivets
        hold 60 746 lb of a strip of 3.5 in, and over 3.5 x 24 x 5 that is 144.6 psi; the net plate holds 125 psi down
        to 0.3725 in, after 0.0775/0.005 years.

        >>> rated = rate(
        ...     form=Form.lap(2), pitch=inch(3.5), plate=inch(0.45), inside_diameter=inch(48), hole=inch(15 / 16),
        ...     plates="steel", safety_factor=5, present=psi(125), wastage_rate=inch(0.005), book="us-existing",
        ... )
        >>> f"{rated.allowed.psi:.1f} psi, {rated.years:.1f} years, by the {rated.governs}"
        '144.6 psi, 15.5 years, by the seam'
    """
    made: Form = instance(Form, "form", form, "Form.lap(2)")
    rules = book_argument(book)
    from_drawing = items(str, "from_drawing", from_drawing, "['pitch']")
    for name in from_drawing:
        if name not in FROM_DRAWING:
            raise SeamwrightError(
                f"from_drawing names {name!r}; take some of {', '.join(FROM_DRAWING)}",
                kind=ErrorKind.WRONG_CHOICE,
                field="from_drawing",
            )

    def found(name: str, x: Any) -> tuple[float, bool] | None:
        mm = optional_length(name, x)
        return None if mm is None else (mm, name not in from_drawing)

    if (earlier_plate is None) != (years_ago is None):
        raise SeamwrightError("earlier_plate and years_ago go together; give both", field="earlier_plate")
    earlier = None if years_ago is None else (length("earlier_plate", earlier_plate), number("years_ago", years_ago))
    as_found = {
        "pitch": (length("pitch", pitch), "pitch" not in from_drawing),
        "plate": (length("plate", plate), "plate" not in from_drawing),
        "inside": length("inside_diameter", inside_diameter),
        "other_plate": found("other_plate", other_plate),
        "wide_strap": found("wide_strap", wide_strap),
        "narrow_strap": found("narrow_strap", narrow_strap),
        "hole": found("hole", hole),
        "shell_plate": found("shell_plate", shell_plate),
        "plate_when_new": optional_length("plate_when_new", plate_when_new),
        "back_pitches": tuple(gaps("back_pitch", back_pitch, made.row_count - 1)),
        "margin": optional_length("margin", margin),
        "plates": word(Metal, "plates", plates),
        "rivets": word(Metal, "rivets", rivets),
        "tension": optional_stress("tension", tension),
        "shear": optional_stress("rivet_shear", rivet_shear),
        "bearing": optional_stress("bearing", bearing),
        "permissible": flag("permissible", permissible),
        "safety_factor": None if safety_factor is None else number("safety_factor", safety_factor),
        "corrosion": optional_length("corrosion", corrosion),
        "present": optional_stress("present", present),
        "wastage_rate": optional_length("wastage_rate", wastage_rate),
        "earlier": earlier,
        "service": circumstances(
            existing=True,
            second_hand=second_hand,
            past_age_limit=past_age_limit,
            tested=tested,
            tubular=tubular,
            lap_length=lap_length,
            lap_in_fire=lap_in_fire,
            weight_on_seam=weight_on_seam,
            riveting=riveting,
            holes_made=holes_made,
            stripped=stripped,
        ),
    }
    x = _native.rate(made._native(), as_found, rules._core)
    shown = pressure_unit(present, plate)

    def pressure(mpa: float | None) -> Any:
        return None if mpa is None else Pressure[float]._make(mpa, shown)

    stressed = "psi" if length_unit(plate) == "inch" else "MPa"

    def stress(mpa: float | None) -> Any:
        return None if mpa is None else Stress[float]._make(mpa, stressed)

    steel = Materials(tension=stress(x["tension"]), rivet_shear=stress(x["shear"]), bearing=stress(x["bearing"]))
    joint = Joint._of(x["joint"], length_unit(plate))
    return Rating(
        form=made,
        book=rules,
        joint=joint,
        materials=steel,
        analysis=analysis(x["analysis"], joint, steel, rules),
        allowed=pressure(x["allowed"]),
        seam=pressure(x["seam"]),
        plate=pressure(x["plate"]),
        governs=x["governs"],
        margin=x["margin"],
        test=pressure(x["test"]),
        years=x["years"],
        assumptions=assumptions(x["assumptions"], joint.pitch.unit),
        findings=findings(x["findings"], joint.pitch.unit),
        as_found=_frozen(as_found),
    )

"""Shells: what a seam of one allows, girth seams, the least plate."""

from __future__ import annotations

from dataclasses import dataclass, field
from enum import Enum
from typing import Any

from . import _native
from ._check import Analysis, Finding, analysis, findings, joint_argument
from ._convert import (
    LengthLike,
    StressLike,
    choice,
    figure,
    flag,
    instance,
    length,
    length_unit,
    number,
    optional_flag,
    optional_length,
    reader_units,
    stress,
    unit_of,
)
from ._enums import Basis, FactorBasis, Footing, GirthPlace, HoleMaking, Riveting, Units, Verdict
from ._joint import Form, Joint, form_argument, mm_or_none
from ._materials import Materials
from ._quantities import Length, Pressure, Stress
from ._records import Record
from ._rules import RuleBook, book_argument


def word(cls: type[Enum], name: str, x: Any) -> Any:
    """The word of a choice that may be left open."""
    return None if x is None else choice(cls, name, x).value


def circumstances(**said: Any) -> dict[str, Any]:
    """Circumstances as the native module takes them; None stays open."""
    made = {name: optional_flag(name, x) for name, x in said.items() if name not in _NO_FLAGS}
    return {
        **made,
        "lap_length": optional_length("lap_length", said["lap_length"]),
        "riveting": word(Riveting, "riveting", said["riveting"]),
        "holes_made": word(HoleMaking, "holes_made", said["holes_made"]),
        **{name: flag(name, said[name]) for name in ("existing", "tested", "stripped")},
    }


_NO_FLAGS = {"lap_length", "riveting", "holes_made"}


def pressure_unit(x: Any, shown_with: Any) -> str:
    """The unit of pressures: that of the pressure given, else the one that goes with a length."""
    return unit_of(x) or ("psi" if length_unit(shown_with) == "inch" else "MPa")


@dataclass(frozen=True, kw_only=True)
class Assumption(Record):
    """One thing that a result rests on: a figure, or a circumstance (``value`` 1 for yes, 0 for no).

    ``value`` is in ``unit`` (mm, MPa); its text has it in the units that went in, which ``shown_in`` says.
    """

    about: str
    row: int
    value: float
    unit: str
    circumstance: bool
    basis: Basis
    entry: str
    clause: str
    shown_in: Units = field(compare=False)

    def __str__(self) -> str:
        said = "yes" if self.value else "no"
        if not self.circumstance:
            said = figure(self.value, self.unit, self.shown_in, 6)
        row = f", row {self.row}" if self.row else ""
        return f"{self.about}{row}: {said} ({self.basis.value})"


def assumptions(found: list[dict[str, Any]], given_in: str) -> tuple[Assumption, ...]:
    """Assumptions of the native module, for lengths that were given in a unit."""
    units = reader_units(None, given_in)
    return tuple(Assumption(**{**a, "basis": Basis(a["basis"]), "shown_in": units}) for a in found)


@dataclass(frozen=True, init=False)
class Shell(Record):
    """A cylindrical shell under internal pressure, and the circumstances that rule books ask about.

    Args:
        inside_diameter: greatest inside diameter.
        footing: what the stresses of its joints are: ``"permissible"`` or ``"ultimate"``.
        corrosion: corrosion allowance; by the book on top of what its formula takes off, or in its place.
        safety_factor: factor of safety given, in the place of the book's.
        existing: in service, not new. A circumstance that is not stated is then taken on the safe side where the book
            distinguishes it, and listed; in a new shell it is the usual one: drilled holes, nothing second-hand.
        second_hand, past_age_limit, tested, tubular, stripped: circumstances, as for :func:`seamwright.rate`.
        lap_length, lap_in_fire, weight_on_seam, riveting, holes_made: likewise.

    Raises:
        SeamwrightError: a bare number, an unknown choice. Ranges are checked where the shell is used.

    Example:
        >>> Shell(inside_diameter=m(1.2), footing="ultimate", safety_factor=5).inside_diameter
        m(1.2)
    """

    inside_diameter: Length[float]
    footing: Footing
    corrosion: Length[float] | None
    safety_factor: float | None
    service: tuple[tuple[str, Any], ...]

    def __init__(
        self,
        *,
        inside_diameter: LengthLike,
        footing: Footing | str,
        corrosion: LengthLike | None = None,
        safety_factor: float | None = None,
        existing: bool = False,
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
    ) -> None:
        unit = unit_of(inside_diameter) or "mm"
        self._cached("inside_diameter", Length[float]._make(length("inside_diameter", inside_diameter), unit))
        self._cached("footing", choice(Footing, "footing", footing))
        self._cached("corrosion", mm_or_none(optional_length("corrosion", corrosion), length_unit(corrosion)))
        self._cached("safety_factor", None if safety_factor is None else number("safety_factor", safety_factor))
        service = circumstances(
            existing=existing, second_hand=second_hand, past_age_limit=past_age_limit, tested=tested, tubular=tubular,
            lap_length=lap_length, lap_in_fire=lap_in_fire, weight_on_seam=weight_on_seam, riveting=riveting,
            holes_made=holes_made, stripped=stripped,
        )  # fmt: skip
        self._cached("service", tuple(service.items()))

    def _native(self) -> dict[str, Any]:
        return {
            "inside": self.inside_diameter.mm,
            "footing": self.footing.value,
            "corrosion": None if self.corrosion is None else self.corrosion.mm,
            "safety_factor": self.safety_factor,
            "service": dict(self.service),
        }


def shell_argument(x: Any) -> Shell:
    """A shell, as an argument."""
    made: Shell = instance(Shell, "shell", x, "Shell(inside_diameter=m(1.2), footing='permissible')")
    return made


@dataclass(frozen=True, kw_only=True)
class Allowed(Record):
    """The working pressure that a seam allows, and what it rests on.

    Attributes:
        pressure: the working pressure; none is left (0) where the allowance uses the plate up.
        efficiency: the efficiency that was credited.
        safety_factor: the factor of safety, or the constant C of the book's formula where ``factor_basis`` says so.
        entry, clause: where the book states the factor; empty where it is given or in the stresses.
        allowance: taken off the plate.
        outside: whether the outside radius counted.
        test: hydrostatic test pressure of the book, None where it has none.
        assumptions: circumstances and figures it rests on, and how they are known.
    """

    pressure: Stress[float]
    efficiency: float
    safety_factor: float
    factor_basis: FactorBasis
    entry: str
    clause: str
    allowance: Length[float]
    outside: bool
    test: Stress[float] | None
    assumptions: tuple[Assumption, ...]

    def __str__(self) -> str:
        return f"{self.pressure} allowed, efficiency {100 * self.efficiency:.2f} %"


def allowed(x: dict[str, Any], unit: str, lengths: str) -> Allowed:
    """An allowed pressure of the native module."""
    return Allowed(
        pressure=Pressure[float]._make(x["pressure"], unit),
        efficiency=x["efficiency"],
        safety_factor=x["safety_factor"],
        factor_basis=FactorBasis(x["factor_basis"]),
        entry=x["entry"],
        clause=x["clause"],
        allowance=Length[float]._make(x["allowance"], lengths),
        outside=x["outside"],
        test=None if x["test"] is None else Pressure[float]._make(x["test"], unit),
        assumptions=assumptions(x["assumptions"], lengths),
    )


def joint_pressure(*, seam: Analysis, shell: Shell) -> Allowed:
    """The working pressure that a checked joint along a shell allows, by the formula of the book it was checked by.

    Args:
        seam: the check of the joint; its credited efficiency counts, on the main plate, of a lap on the weaker one.
        shell: the shell.

    Raises:
        SeamwrightError: a book without a formula of the pressure; no factor of safety (``MISSING``); a figure outside
            its range.

    Source:
        Unwin's formula with the trade's allowance of 1 mm, ``2 st J (t - 1)/D``, for the example below.

    Example:
        >>> joint = Joint(form=Form.lap(2), pitch=mm(71), plate=mm(13), hole=mm(23))
        >>> steel = Materials(tension=MPa(80), rivet_shear=MPa(60), bearing=MPa(120))
        >>> found = check(joint=joint, materials=steel, book="metric")
        >>> drum = Shell(inside_diameter=m(1.5), footing="permissible")
        >>> allowed = joint_pressure(seam=found, shell=drum)
        >>> abs(allowed.pressure.MPa - 2 * 80 * found.credited * (13 - 1) / 1500) < 1e-12
        True
    """
    found: Analysis = instance(Analysis, "seam", seam, "check(joint=.., materials=.., book=..)")
    x = _native.joint_pressure(*found._natives()[:2], shell_argument(shell)._native(), found.book._core)
    joint = found.joint
    return allowed(x, pressure_unit(None, joint.plate), joint.plate.unit)


def seam_pressure(
    *,
    form: Form,
    plate: LengthLike,
    tension: StressLike,
    efficiency: float,
    shell: Shell,
    book: RuleBook | str,
    round_the_shell: bool = False,
) -> Allowed:
    """The working pressure that a seam of a stated efficiency allows; with an efficiency of 1 the solid plate.

    Args:
        form: form of the joint, which decides on constants and factors of safety.
        plate: thickness of the plate, of the weaker one in a lap.
        tension: its tensile stress, on the footing of the shell.
        efficiency: efficiency credited, 0 to 1.
        shell: the shell.
        book: a rule book, or the short name of a built-in one.
        round_the_shell: a girth seam, which allows twice as much, for the end pulls half as hard as the hoop.

    Raises:
        SeamwrightError: as :func:`joint_pressure`.

    Source:
        Applied Science for Metal Workers, s. 348: 125 psi, for the example below.

    Example:
        >>> shell = Shell(inside_diameter=inch(40), footing="ultimate", safety_factor=6)
        >>> found = seam_pressure(form=Form.lap(2), plate=inch(0.5), tension=psi(60000), efficiency=0.5, shell=shell,
        ...     book="us-existing")
        >>> f"{found.pressure.psi:.6f} psi, factor {found.factor_basis.value}"
        '125.000000 psi, factor given'
    """
    rules = book_argument(book)
    x = _native.seam_pressure(
        form=form_argument(form)._native(),
        plate=length("plate", plate),
        tension=stress("tension", tension),
        efficiency=number("efficiency", efficiency),
        shell=shell_argument(shell)._native(),
        girth=flag("round_the_shell", round_the_shell),
        book=rules._core,
    )
    return allowed(x, pressure_unit(tension, plate), length_unit(plate))


@dataclass(frozen=True, kw_only=True, repr=False)
class Girth(Record):
    """A girth seam against what is asked of it.

    Attributes:
        joint, analysis: the joint, and its check.
        pressure: the working pressure that it allows.
        needed: the efficiency that it needs, by the load on the end and by the book, the greater.
        entry, clause: where the book asks for it; empty where the load does.
        strips, rivets: strips and rivets in the girth.
        end_rivets: rivets that the load on the end needs by shear alone; not a whole number.
        findings: the book's rules on the girth seam, open ones first.
    """

    joint: Joint
    analysis: Analysis
    pressure: Stress[float]
    needed: float
    entry: str
    clause: str
    strips: int
    rivets: int
    end_rivets: float
    findings: tuple[Finding, ...]

    def __repr__(self) -> str:
        return (
            f"<Girth: {self.joint.form.name}, {self.rivets} rivets; efficiency {100 * self.analysis.credited:.2f} %, "
            f"{100 * self.needed:.2f} % needed; {self.pressure} allowed>"
        )

    @property
    def open_findings(self) -> tuple[Finding, ...]:
        """The rules that are not met: those on the girth seam, then those on its joint."""
        return tuple(f for f in self.findings + self.analysis.findings if f.verdict is Verdict.OPEN)


def girth(x: dict[str, Any], materials: Materials, book: RuleBook, lengths: str, unit: str) -> Girth:
    """A girth seam of the native module."""
    joint = Joint._of(x["joint"], lengths)
    if joint.form.kind.value == "lap":
        # Both plates of a lap round a shell are the shell's.
        plate = materials.plate
        materials = Materials(
            tension=plate.tension, bearing=plate.bearing, shear_out=plate.shear_out, rivet_shear=materials.rivet_shear
        )
    return Girth(
        joint=joint,
        analysis=analysis(x["analysis"], joint, materials, book),
        pressure=Pressure[float]._make(x["pressure"], unit),
        needed=x["needed"],
        entry=x["entry"],
        clause=x["clause"],
        strips=x["strips"],
        rivets=x["rivets"],
        end_rivets=x["end_rivets"],
        findings=findings(x["findings"], lengths),
    )


def girth_check(
    *, seam: Analysis, girth_joint: Joint, shell: Shell, pressure: StressLike, place: GirthPlace | str = "middle"
) -> Girth:
    """Checks a girth seam: the load on the end, the book's least efficiency and rows, whether its pitch closes.

    Args:
        seam: the check of the joint along the shell; plate, stresses and book are taken from it.
        girth_joint: the joint round the shell.
        shell: the shell.
        pressure: working pressure.
        place: where the girth seam lies: middle, end or stayed.

    Raises:
        SeamwrightError: as :func:`joint_pressure`; a figure outside its range.

    Example:
        >>> steel = Materials(tension=MPa(80), rivet_shear=MPa(60), bearing=MPa(120))
        >>> seam = size(form=Form.double_strap(2), plate=mm(12), materials=steel, book="metric").analysis
        >>> lap = size(form=Form.lap(1), plate=mm(12), materials=steel, book="metric").joint
        >>> drum = Shell(inside_diameter=m(1.2), footing="permissible")
        >>> round_it = girth_check(seam=seam, girth_joint=lap, shell=drum, pressure=MPa(1))
        >>> round_it.rivets == round(3.14159265 * (1200 + 12) / lap.pitch.mm)
        True
    """
    found: Analysis = instance(Analysis, "seam", seam, "check(joint=.., materials=.., book=..)")
    joint, stresses, book = found._natives()
    x = _native.girth_check(
        seam=joint,
        materials=stresses,
        girth=joint_argument(girth_joint)._native(),
        place=choice(GirthPlace, "place", place).value,
        pressure=stress("pressure", pressure),
        shell=shell_argument(shell)._native(),
        book=book,
    )
    unit = pressure_unit(pressure, found.joint.plate)
    return girth(x, found.materials, found.book, girth_joint.pitch.unit, unit)


def least_plate(*, inside_diameter: LengthLike, book: RuleBook | str) -> tuple[Length[float], str] | None:
    """The least shell plate of a book for a diameter, and its clause; None where the book has none.

    Args:
        inside_diameter: inside diameter of the shell.
        book: a rule book, or the short name of a built-in one.

    Raises:
        SeamwrightError: a bare number; no such book.

    Source:
        Early US boiler code, Par. 18 (from memory): 5/16 in from 36 to 54 in, for the example below.

    Example:
        >>> least_plate(inside_diameter=inch(48), book="us-code")[0]
        inch(0.3125)
        >>> least_plate(inside_diameter=m(1), book="metric") is None
        True
    """
    found = _native.least_plate(length("inside_diameter", inside_diameter), book_argument(book)._core)
    return None if found is None else (Length[float]._make(found[0], length_unit(inside_diameter)), found[2])

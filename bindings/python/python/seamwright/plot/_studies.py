"""The front of efficiency against mass, rule books side by side, and what an input does to a joint."""

from __future__ import annotations

import textwrap
from collections.abc import Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

from .._check import Analysis, check
from .._compare import Comparison
from .._convert import instance, items, number, reader_units
from .._enums import JointKind, Units
from .._errors import ErrorKind, SeamwrightError
from .._joint import Joint
from .._quantities import Length, Mass
from .._rules import RuleBook, book_argument
from .._rules import books as built_in
from .._search import Candidate
from .._sensitivity import Slopes
from .._size import size
from ._look import FAINT, INK, INKS, MARKERS, axes, beside, in_unit, percent, symbol
from ._vary import joint_with, materials_with

if TYPE_CHECKING:
    from matplotlib.axes import Axes


def front(candidates: Sequence[Candidate], /, *, ax: Axes | None = None, units: Units | str | None = None) -> Axes:
    """Efficiency against mass: the joints of which no other has more efficiency without more mass.

    Args:
        candidates: what :func:`seamwright.front` gives, or candidates of a search that were weighed.
        ax: axes to draw on; without them, a figure is made.
        units: kg/m (metric) or lb/ft (inch); without them, those that went in.

    Returns:
        The axes; the step line has the gid ``"front"``.

    Raises:
        SeamwrightError: matplotlib is not installed, no candidates, or one without its mass (``MISSING``).

    Example:
        >>> from seamwright import plot
        >>> steel = Materials(tension=MPa(80), rivet_shear=MPa(60), bearing=MPa(120))
        >>> laps = front(plates=mm(12), materials=steel, book="metric", forms=[Form.lap(1), Form.lap(2)],
        ...     head="button", length_rule="boiler-button")
        >>> plot.front(laps).get_xlabel()
        'mass that the seam adds [kg/m]'
    """
    given = items(Candidate, "candidates", candidates, "front(..)")
    for c in given:
        instance(Candidate, "candidates", c, "front(..)")
    weighed = [(c, c.mass_per_metre) for c in given if c.mass_per_metre is not None]
    if not weighed or len(weighed) != len(given):
        raise SeamwrightError(
            "a front needs candidates with their mass; give head= and length_rule= to front(..)",
            kind=ErrorKind.MISSING,
            field="candidates",
        )
    weighed.sort(key=lambda pair: pair[1])
    shown = reader_units(units, given[0].plate.unit)
    factor = 1.0 if shown is Units.METRIC else Mass[float]._make(1.0).lb / Length[float]._make(1000.0).foot
    xs = [mass * factor for _, mass in weighed]
    ys = [percent(c.efficiency) for c, _ in weighed]
    drawn = axes(ax, width=9.5)
    drawn.plot(xs, ys, color=FAINT, lw=1.2, drawstyle="steps-post", gid="front")
    forms = list(dict.fromkeys(c.form.name for c, _ in weighed))
    kinds = [JointKind.LAP, JointKind.SINGLE_STRAP, JointKind.DOUBLE_STRAP]
    labels = []
    for name in forms:
        of = [i for i, (c, _) in enumerate(weighed) if c.form.name == name]
        n = kinds.index(weighed[of[0]][0].form.kind)
        drawn.plot([xs[i] for i in of], [ys[i] for i in of], color=INKS[n + 1], marker=MARKERS[n], ms=7, ls="none",
                   mec="white", gid="form", label=name)  # fmt: skip
        best = weighed[of[-1]][0]
        pitch = in_unit(best.pitch.mm, shown)
        labels.append(
            (xs[of[-1]], ys[of[-1]], f"{name}: {ys[of[-1]]:.1f} %, pitch {pitch:.4g} {symbol(shown)}", INKS[n + 1])
        )
    drawn.margins(0.06, 0.08)
    drawn.set_xlabel(f"mass that the seam adds [{'kg/m' if shown is Units.METRIC else 'lb/ft'}]")
    drawn.set_ylabel("efficiency [%]")
    drawn.set_title("no joint has more efficiency without more mass", fontsize=9.5, loc="left")
    beside(drawn, labels, size=7.5, wrap=44, lw=0.6)
    return drawn


@dataclass(frozen=True)
class _Bar:
    """One alternative: what it is called, and its joint with its figures or why there is none."""

    name: str
    joint: Joint | None
    credited: float
    efficiency: float
    said: str


def _of_comparison(comparison: Comparison) -> tuple[list[_Bar], str]:
    """The columns of a comparison, in words that tell them apart, and what they have in common."""
    forms = list(dict.fromkeys(c.brief.form.name for c in comparison.columns))
    bars = []
    for c in comparison.columns:
        name = c.book.title if len(forms) == 1 else f"{c.letter}: {c.book.title}, {c.brief.form.name}"
        bars.append(_Bar(name, c.joint, c.credited or 0.0, c.efficiency or 0.0, c.refused or ""))
    return bars, forms[0] if len(forms) == 1 else "forms and rule books side by side"


def _of_brief(listed: Sequence[RuleBook | str] | None, brief: dict[str, Any]) -> tuple[list[_Bar], str]:
    """A brief sized under each book."""
    how = "['metric', 'indian']"
    rules = [book_argument(x) for x in (built_in() if listed is None else items((str, RuleBook), "books", listed, how))]
    bars = []
    refused: list[SeamwrightError] = []
    title = ""
    for rule_book in rules:
        try:
            design = size(book=rule_book, **brief)
        except SeamwrightError as error:
            refused.append(error)
            bars.append(_Bar(rule_book.title, None, 0.0, 0.0, str(error)))
        else:
            found, title = design.analysis, design.joint.form.name
            said = f", decided by {design.pitch.decided.value}"
            bars.append(_Bar(rule_book.title, design.joint, found.credited, found.efficiency, said))
    if len(refused) == len(bars):
        raise refused[0] if refused else SeamwrightError("no books; give one", field="books")
    return bars, title


def books(
    comparison: Comparison | None = None,
    /,
    *,
    books: Sequence[RuleBook | str] | None = None,
    ax: Axes | None = None,
    units: Units | str | None = None,
    **brief: Any,
) -> Axes:
    """One brief sized under several rule books: the efficiency credited by each, with pitch and hole.

    A book that cannot size the brief stands there with its reason. Books differ in what they count and allow, not in
    the strength of steel: the highest bar is not the strongest joint.

    Args:
        comparison: what :func:`seamwright.compare` gives; its columns are the bars, and nothing else is to be sized.
        books: rule books, or their short names; without them, all built-in ones.
        ax: axes to draw on; without them, a figure is made.
        units: metric or inch; without them, those that went in.
        **brief: what :func:`seamwright.size` takes: ``form``, ``plate``, ``materials`` and what is settled already.

    Returns:
        The axes; bars have the gid ``"credited"``, marks of the efficiency over all modes ``"all modes"``.

    Raises:
        SeamwrightError: matplotlib is not installed (``MISSING``); no such book; a brief that no book can size; a
            comparison of which no column could be sized, or one together with books or a brief.

    Example:
        >>> from seamwright import plot
        >>> steel = Materials(tension=MPa(80), rivet_shear=MPa(60), bearing=MPa(120))
        >>> ax = plot.books(form=Form.lap(2), plate=mm(13), materials=steel, books=["metric", "indian"])
        >>> len(ax.get_yticklabels())
        2
        >>> both = compare(books=["metric", "indian"], forms=Form.lap(2), plate=mm(13), materials=steel)
        >>> len(plot.books(both).get_yticklabels())
        2
    """
    if comparison is None:
        bars, title = _of_brief(books, brief)
    else:
        bars, title = _of_comparison(instance(Comparison, "comparison", comparison, "compare(..)"))
        stray = next(iter([*(["books"] if books is not None else []), *brief]), None)
        if stray is not None:
            raise SeamwrightError(
                f"{stray} stands in the comparison already; give the comparison alone, or no comparison",
                kind=ErrorKind.INCONSISTENT,
                field=stray,
            )
    sized = sorted((bar for bar in bars if bar.joint is not None), key=lambda bar: bar.credited)
    refused = [bar for bar in bars if bar.joint is None]
    if not sized or sized[0].joint is None:
        raise SeamwrightError(
            f"no column of the comparison could be sized: {refused[0].said}",
            kind=ErrorKind.INCONSISTENT,
            field="comparison",
        )
    rows = len(bars)
    drawn = axes(ax, width=9.0, height=1.5 + 0.5 * rows)
    shown = reader_units(units, sized[0].joint.pitch.unit)
    # Refused ones at the bottom, the highest credit at the top.
    for y, bar in enumerate([*refused, *sized]):
        if bar.joint is None:
            said = textwrap.shorten(bar.said, 95, placeholder=" ..")
            drawn.text(1.0, y, f"no joint: {said}", va="center", fontsize=7.5, color="#444444")
            continue
        credited = percent(bar.credited)
        drawn.barh(y, credited, height=0.62, color="#c9d6e2", edgecolor=INK, lw=1.0, gid="credited")
        drawn.plot([percent(bar.efficiency)], [y], marker="D", ms=6, mfc=INKS[3], mec="white", ls="none",
                   gid="all modes")  # fmt: skip
        pitch, hole = (f"{in_unit(x.mm, shown):.4g} {symbol(shown)}" for x in (bar.joint.pitch, bar.joint.rows[0].hole))
        drawn.text(1.5, y, f"{credited:.1f} %, pitch {pitch}, hole {hole}{bar.said}",
                   va="center", fontsize=8, color=INK)  # fmt: skip
    drawn.set_yticks(range(rows), [textwrap.fill(bar.name, 34) for bar in [*refused, *sized]], fontsize=8)
    drawn.set_xlim(0.0, 100.0)
    drawn.set_ylim(-0.6, rows - 0.4)
    drawn.set_xlabel("efficiency [%]; bar: credited by the book, diamond: over all modes")
    drawn.set_title(title, fontsize=9.5, loc="left")
    return drawn


# What is changed, and how: the words of the label, and the keywords of the joint or of the materials.
INPUTS: tuple[tuple[str, tuple[str, ...]], ...] = (
    ("plate thickness", ("plate", "other")),
    ("straps", ("straps",)),
    ("hole and rivet", ("hole",)),
    ("pitch", ("strip",)),
    ("tensile stress", ("tension",)),
    ("shear stress of rivets", ("rivet_shear",)),
    ("bearing stress", ("bearing",)),
)
STRESSES = {"tension", "rivet_shear", "bearing"}


def _changed(found: Analysis, names: tuple[str, ...], factor: float) -> Analysis:
    joint, materials = found.joint, found.materials
    if names[0] in STRESSES:
        materials = materials_with(materials, **dict.fromkeys(names, factor))
    elif names == ("strip",):
        joint = joint_with(joint, strip=joint.strip.mm * factor)
    else:
        joint = joint_with(joint, **dict.fromkeys(names, factor))  # type: ignore[arg-type]
    return check(joint=joint, materials=materials, book=found.book)


def sensitivity(
    found: Analysis | Slopes, /, *, change: float = 0.05, of: str = "strength", ax: Axes | None = None
) -> Axes:
    """What a small change of each input does to a joint: the longest bars first.

    Of an analysis by checks of the changed joint, so that the bars are true for a change of that size; of
    :func:`seamwright.slopes` by the exact derivatives, for every input and figure of the rule book that does something.
    The two sides of a bar differ where another mode takes over; an input without a bar does not matter here.

    Args:
        found: the analysis of the joint, or its slopes.
        change: the change of each input, as a fraction of it, 0.001 to 0.5; of slopes the bars are in proportion.
        of: ``"strength"`` of a length of the seam, or ``"efficiency"`` over all modes.
        ax: axes to draw on; without them, a figure is made.

    Returns:
        The axes; bars have the gids ``"more"`` and ``"less"``.

    Raises:
        SeamwrightError: matplotlib is not installed (``MISSING``); a change outside its range (``TOO_SMALL``,
            ``TOO_LARGE``), another word for ``of`` (``WRONG_CHOICE``).

    Example:
        >>> from seamwright import plot
        >>> steel = Materials(tension=MPa(80), rivet_shear=MPa(60), bearing=MPa(120))
        >>> joint = Joint(form=Form.lap(2), pitch=mm(71), plate=mm(13), hole=mm(23))
        >>> plot.sensitivity(check(joint=joint, materials=steel, book="metric")).get_xlabel()
        'change of the strength of a length of seam [%]'
    """
    instance((Analysis, Slopes), "found", found, "check(..)")
    step = number("change", change)
    if not 0.001 <= step <= 0.5:
        low = not step >= 0.001
        raise SeamwrightError(
            f"change = {step:g} is outside 0.001 to 0.5; give one inside",
            kind=ErrorKind.TOO_SMALL if low else ErrorKind.TOO_LARGE,
            field="change",
            value=step,
            limit=0.001 if low else 0.5,
        )
    if of not in ("strength", "efficiency"):
        raise SeamwrightError(f"of = {of!r}; take 'strength' or 'efficiency'", kind=ErrorKind.WRONG_CHOICE, field="of")

    bars = _by_slopes(found, step, of) if isinstance(found, Slopes) else _by_checks(found, step, of)
    bars.sort(key=lambda bar: max(abs(x) if x == x else 0.0 for x in bar[1:]))
    return _bars(bars, step, of, ax)


def _by_slopes(found: Slopes, step: float, of: str) -> list[tuple[str, float, float]]:
    """For each input that does something: its words, and what more and less of it do, in per cent."""
    bars = []
    for line in found.lines:
        sides = line.relative if of == "efficiency" else line.strength.times(line.value / found.strength)
        more, less = percent(sides.right * step), percent(-sides.left * step)
        if more or less:
            bars.append((f"{line.what} ({line.name})", more, less))
    return bars


def _by_checks(found: Analysis, step: float, of: str) -> list[tuple[str, float, float]]:
    """For each input: its words, and what more and less of it do, in per cent; not a number where there is no joint."""

    def figure(x: Analysis) -> float:
        return x.efficiency if of == "efficiency" else x.governing.strength.N / x.joint.strip.mm

    base = figure(found)
    bars: list[tuple[str, float, float]] = []
    for name, names in INPUTS:
        if names == ("straps",) and found.joint.wide_strap is None:
            continue
        if names == ("bearing",) and found.materials.plate.bearing is None:
            continue
        ends = []
        for factor in (1.0 + step, 1.0 - step):
            try:
                ends.append(percent(figure(_changed(found, names, factor)) / base - 1.0))
            except SeamwrightError:
                # No such joint: the bar is left out on this side, and its label says so.
                ends.append(float("nan"))
        bars.append((name, ends[0], ends[1]))
    return bars


def _bars(bars: Sequence[tuple[str, float, float]], step: float, of: str, ax: Axes | None) -> Axes:
    drawn = axes(ax, height=1.4 + 0.5 * len(bars))
    for y, (_, more, less) in enumerate(bars):
        for value, gid, fill, hatch, at in (
            (more, "more", INKS[2], "", y + 0.19),
            (less, "less", "#e9c9a5", "///", y - 0.19),
        ):
            if value != value:
                drawn.text(0.0, at, " no such joint", fontsize=7.5, va="center")
                continue
            drawn.barh(at, value, height=0.36, color=fill, edgecolor=INK, lw=0.8, hatch=hatch, gid=gid)
            side = "left" if value >= 0 else "right"
            drawn.annotate(f"{value:+.2f}", xy=(value, at), xytext=(3 if value >= 0 else -3, 0), fontsize=7.5,
                           textcoords="offset points", ha=side, va="center")  # fmt: skip
    drawn.axvline(0.0, color=INK, lw=1.0)
    drawn.set_yticks(range(len(bars)), [textwrap.fill(name, 40) for name, _, _ in bars], fontsize=9)
    drawn.margins(x=0.14)
    what = "efficiency over all modes" if of == "efficiency" else "strength of a length of seam"
    drawn.set_xlabel(f"change of the {what} [%]")
    drawn.set_title(f"each input {percent(step):g} % more (plain) and less (hatched)", fontsize=9.5, loc="left")
    return drawn

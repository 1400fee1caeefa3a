"""Efficiency against pitch."""

from __future__ import annotations

import textwrap
from typing import TYPE_CHECKING

from .._check import Analysis, Mode, check
from .._convert import instance, reader_units
from .._enums import LimitState, Subject, Units
from .._errors import SeamwrightError
from .._size import Design
from ._look import DASHES, FAINT, INK, INKS, axes, beside, in_unit, percent, spread, symbol
from ._vary import joint_with

if TYPE_CHECKING:
    from matplotlib.axes import Axes

MOST_LINES = 5
STEPS = 181
# A mode is shown where it is less than this times as strong as the governing one.
NEAR = 1.25
_Key = tuple[int, int, int, bool]


def _key(mode: Mode) -> _Key:
    return mode.cut.plate, mode.cut.other, mode.cut.narrow, mode.zigzag


def _limits(result: Design | Analysis) -> tuple[tuple[float, str] | None, tuple[float, str] | None]:
    """Floor and cap of the pitch in mm, each with the clause behind it."""
    if isinstance(result, Design):
        cap = result.pitch.greatest
        above = (cap.value.mm, cap.clause) if cap.state is LimitState.AT and cap.value is not None else None
        floor = result.analysis.finding(Subject.PITCH_LEAST)
        return (result.pitch.least.mm, "" if floor is None else floor.clause), above
    found = []
    for subject in (Subject.PITCH_LEAST, Subject.PITCH_GREATEST):
        finding = result.finding(subject)
        found.append(None if finding is None or finding.required is None else (finding.required, finding.clause))
    return found[0], found[1]


def pitch(result: Design | Analysis, /, *, ax: Axes | None = None, units: Units | str | None = None) -> Axes:
    """Efficiency against pitch: the modes, the least of them, the rule book's floor and cap, the pitch chosen.

    Each point is a check of the joint at that pitch, all else unchanged. The modes shown are those that govern
    somewhere in the range and those nearest to govern at the pitch chosen, at most five.

    Args:
        result: a design, or the analysis of a stated joint.
        ax: axes to draw on; without them, a figure is made.
        units: units of the axis, metric or inch; without them, those that went in.

    Returns:
        The axes; ``"efficiency"``, ``"mode"``, ``"cap"``, ``"floor"`` and ``"chosen"`` are the gids of its artists.

    Raises:
        SeamwrightError: matplotlib is not installed (``MISSING``).

    Example:
        >>> from seamwright import plot
        >>> steel = Materials(tension=MPa(80), rivet_shear=MPa(60), bearing=MPa(120))
        >>> design = size(form=Form.lap(2), plate=mm(13), materials=steel, book="metric")
        >>> ax = plot.pitch(design)
        >>> [float(line.get_xdata()[0]) for line in ax.lines if line.get_gid() == "chosen"]
        [70.0]
    """
    found = result.analysis if isinstance(result, Design) else instance(Analysis, "result", result, "size(..)")
    joint, chosen = found.joint, found.joint.strip.mm
    shown = reader_units(units, joint.pitch.unit)
    floor, cap = _limits(result)
    # Floor and cap are those of the outer row's pitch; the axis has the strip.
    rivets = joint.form.outer_rivets
    ends = [limit[0] * rivets for limit in (floor, cap) if limit is not None]
    least, greatest = min([chosen, *ends]) * 0.85, max([chosen * 1.25, *ends]) * 1.08
    pitches: list[float] = []
    total: list[float] = []
    lines: dict[_Key, list[float]] = {}
    for p in spread(least, greatest, STEPS, [chosen, *ends]):
        try:
            at = check(joint=joint_with(joint, strip=p), materials=found.materials, book=found.book)
        except SeamwrightError:
            # The holes fill the strip, or the rows overlap: no such joint.
            continue
        pitches.append(in_unit(p, shown))
        total.append(percent(at.efficiency))
        for mode in at.modes:
            lines.setdefault(_key(mode), []).append(percent(mode.efficiency))
    drawn = axes(ax)
    names = {_key(mode): mode.name for mode in found.modes}
    picked, alike = _picked(found, lines, total)
    said = {key: f"{names[key]}; likewise {names[alike[key]]}" if key in alike else names[key] for key in picked}
    for n, key in enumerate(picked):
        drawn.plot(pitches, lines[key], color=INKS[n], ls=DASHES[n], lw=1.4, gid="mode", label=names[key])
    drawn.plot(pitches, total, color=INK, lw=4.0, alpha=0.25, solid_capstyle="round", gid="efficiency")
    low = max(0.0, min(total) - 12.0)
    drawn.set_ylim(low, min(125.0, max(max(total) * 1.25, percent(found.efficiency) * 1.15)))
    drawn.set_xlim(pitches[0], pitches[-1])
    for limit, gid, name in ((floor, "floor", "least pitch"), (cap, "cap", "greatest pitch")):
        if limit is not None:
            x = in_unit(limit[0] * rivets, shown)
            drawn.axvline(x, color=FAINT, lw=1.2, ls=(0, (4, 2)), gid=gid)
            clause = f", {textwrap.shorten(limit[1], 44, placeholder=' ..')}" if limit[1] else ""
            drawn.annotate(
                f"{name} {x:.4g} {symbol(shown)}{clause}",
                xy=(x, 0.02),
                xycoords=("data", "axes fraction"),
                xytext=(-3 if gid == "cap" else 3, 0),
                textcoords="offset points",
                rotation=90,
                fontsize=7.5,
                color="#444444",
                bbox={"boxstyle": "square,pad=0.1", "fc": "white", "ec": "none", "alpha": 0.7},
                ha="right" if gid == "cap" else "left",
                va="bottom",
            )
            outside = (x, pitches[-1]) if gid == "cap" else (pitches[0], x)
            drawn.axvspan(*outside, facecolor=FAINT, alpha=0.12, lw=0)
    at_x, at_y = in_unit(chosen, shown), percent(found.efficiency)
    drawn.plot([at_x], [at_y], marker="o", ms=9, mfc="white", mec=INK, mew=2, ls="none", gid="chosen", zorder=5)
    drawn.annotate(
        f"{at_x:.4g} {symbol(shown)}: {at_y:.2f} %",
        xy=(at_x, at_y),
        xytext=(0, 12),
        textcoords="offset points",
        ha="center",
        fontsize=9,
        fontweight="bold",
        color=INK,
        bbox={"boxstyle": "round,pad=0.2", "fc": "white", "ec": "none", "alpha": 0.8},
    )
    what = "pitch of the outer row" if rivets == 1 else "width of the strip"
    drawn.set_xlabel(f"{what} [{symbol(shown)}]")
    drawn.set_ylabel("efficiency [%]")
    drawn.set_title(f"{joint.form.name}\nrule book: {found.book.title}", fontsize=9.5, loc="left")
    beside(drawn, [(pitches[-1], lines[key][-1], said[key], INKS[n]) for n, key in enumerate(picked)])
    return drawn


def _picked(found: Analysis, lines: dict[_Key, list[float]], total: list[float]) -> tuple[list[_Key], dict[_Key, _Key]]:
    """The governing mode first, then those that govern elsewhere, then those nearest to govern.

    Of modes that are equal all along, as those of two plates alike, one is drawn; the second part says which other one
    it stands for.
    """
    whole = {key: line for key, line in lines.items() if len(line) == len(total)}
    first = _key(found.governing)
    here = {_key(mode): mode.efficiency / found.efficiency for mode in found.modes}
    somewhere = {
        key: sum(y <= least * (1.0 + 1e-9) for y, least in zip(line, total, strict=True)) for key, line in whole.items()
    }
    order = sorted(
        (key for key in whole if key != first), key=lambda key: (-somewhere[key], here.get(key, float("inf")))
    )
    picked, alike = [first], dict[_Key, _Key]()
    for key in order:
        twin = next((k for k in picked if _equal(whole[k], whole[key])), None)
        if twin is not None:
            alike.setdefault(twin, key)
        elif len(picked) < MOST_LINES and (somewhere[key] or here.get(key, NEAR) < NEAR):
            picked.append(key)
    return picked, alike


def _equal(a: list[float], b: list[float]) -> bool:
    return all(abs(x - y) <= 1e-9 * y for x, y in zip(a, b, strict=True))

"""Which mode governs, over thickness and diameter."""

from __future__ import annotations

import textwrap
from collections.abc import Sequence
from typing import TYPE_CHECKING, Any

from .._check import Analysis, check
from .._convert import LengthLike, instance, length, natural, reader_units
from .._enums import Units
from .._errors import ErrorKind, SeamwrightError
from ._look import INK, INKS, axes, in_unit, percent, spread, symbol
from ._vary import joint_with

if TYPE_CHECKING:
    from matplotlib.axes import Axes

# Fills in order of lightness, light to dark, each with its own hatch.
FILLS = ("#f4f1e6", "#d9e3ea", "#e3c9a8", "#9fc0b8", "#a99ab8", "#7d8ba8", "#a2685c", "#5b6472")
HATCHES = ("", "...", "//", "\\\\", "x", "|", "-", "o")
NOTHING = float("nan")


def mode_map(
    found: Analysis,
    /,
    *,
    plates: tuple[LengthLike, LengthLike] | None = None,
    holes: tuple[LengthLike, LengthLike] | None = None,
    steps: int = 51,
    ax: Axes | None = None,
    units: Units | str | None = None,
) -> Axes:
    """Which mode governs over plate thickness and hole, with lines of equal efficiency; the joint itself is marked.

    Each point is a check of the joint with that plate and that hole at the same pitch; a second plate and straps change
    in proportion to the plate, rivets keep their clearance.

    Args:
        found: the analysis of the joint.
        plates: from the thinnest to the thickest plate; without them, half to twice the joint's.
        holes: from the smallest to the greatest hole; without them, half to one and three quarters of the joint's.
        steps: points along each axis, 2 to 400.
        ax: axes to draw on; without them, a figure is made.
        units: units of the axes, metric or inch; without them, those that went in.

    Returns:
        The axes; the marked joint has the gid ``"joint"``, the border of a mode's region ``"border"`` with its name.

    Raises:
        SeamwrightError: matplotlib is not installed (``MISSING``); an empty range, or one without a joint.

    Example:
        >>> from seamwright import plot
        >>> steel = Materials(tension=MPa(80), rivet_shear=MPa(60), bearing=MPa(120))
        >>> joint = Joint(form=Form.lap(2), pitch=mm(71), plate=mm(13), hole=mm(23))
        >>> plot.mode_map(check(joint=joint, materials=steel, book="metric"), steps=9).get_xlabel()
        'plate thickness [mm]'
    """
    joint = instance(Analysis, "found", found, "check(..)").joint
    shown = reader_units(units, joint.pitch.unit)
    count = natural("steps", steps, least=2)
    if count > 400:
        raise SeamwrightError(
            f"steps = {count} is more than 400; give fewer", kind=ErrorKind.TOO_LARGE, field="steps", limit=400.0
        )
    t, d = joint.plate.mm, joint.rows[0].hole.mm
    thick = _ends("plates", plates, 0.5 * t, 2.0 * t)
    wide = _ends("holes", holes, 0.5 * d, 1.75 * d)
    xs, ys = spread(*thick, count), spread(*wide, count)
    drawn = axes(ax, width=8.0, height=6.0)
    names: list[str] = []
    strengths: list[list[dict[str, float]]] = []
    efficiencies: list[list[float]] = []
    for y in ys:
        modes: list[dict[str, float]] = []
        row: list[float] = []
        for x in xs:
            try:
                made = joint_with(joint, plate=x / t, other=x / t, straps=x / t, hole=y / d)
                at = check(joint=made, materials=found.materials, book=found.book)
            except SeamwrightError:
                modes.append({})
                row.append(NOTHING)
                continue
            if at.governing.name not in names:
                names.append(at.governing.name)
            # The governing one first: of equal modes it is the first, and stays so below.
            modes.append({m.name: m.efficiency for m in (at.governing, *at.modes)})
            row.append(percent(at.efficiency))
        strengths.append(modes)
        efficiencies.append(row)
    if not names:
        raise SeamwrightError("no joint can be made in this range; widen plates or holes", field="holes")
    across, up = [in_unit(x, shown) for x in xs], [in_unit(y, shown) for y in ys]
    _fill(drawn, across, up, strengths, names)
    lines = drawn.contour(across, up, efficiencies, levels=8, colors=INK, linewidths=0.8)
    drawn.clabel(lines, fmt="%.0f %%", fontsize=7.5)
    drawn.plot([in_unit(t, shown)], [in_unit(d, shown)], marker="o", ms=10, mfc="white", mec=INK, mew=2, ls="none",
               gid="joint", zorder=6)  # fmt: skip
    drawn.set_xlim(across[0], across[-1])
    drawn.set_ylim(up[0], up[-1])
    drawn.set_xlabel(f"plate thickness [{symbol(shown)}]")
    drawn.set_ylabel(f"hole [{symbol(shown)}]")
    drawn.set_title(
        f"what governs a {joint.form.name}\nat a pitch of {in_unit(joint.pitch.mm, shown):.4g} {symbol(shown)}; "
        "lines: efficiency",
        fontsize=9.5,
        loc="left",
    )
    return drawn


def _ends(name: str, given: tuple[LengthLike, LengthLike] | None, least: float, greatest: float) -> tuple[float, float]:
    if given is None:
        return least, greatest
    try:
        low, high = given
    except (TypeError, ValueError):
        raise SeamwrightError(f"{name} = {given!r} is not a pair; give {name}=(mm(6), mm(20))", field=name) from None
    ends = length(name, low), length(name, high)
    if not 0.0 < ends[0] < ends[1]:
        raise SeamwrightError(
            f"{name} runs from {ends[0]:g} to {ends[1]:g} mm; give the smaller one first", field=name, value=ends[0]
        )
    return ends


def _fill(
    ax: Any, xs: list[float], ys: list[float], strengths: list[list[dict[str, float]]], names: Sequence[str]
) -> None:
    """One fill and hatch for each mode, its name at the middle of the largest part of it."""
    from matplotlib.patches import Patch

    handles = []
    for n, name in enumerate(names):
        style = n % len(FILLS)
        # How much weaker the mode is than all others that govern somewhere: above 0 where it governs, so that the
        # border of its region is found between the points of the grid.
        ahead = [[_ahead(name, at, names) for at in row] for row in strengths]
        filled = ax.contourf(xs, ys, ahead, levels=[0.0, 1e9], colors=[FILLS[style]], hatches=[HATCHES[style]])
        filled.set_edgecolor("#6b7180")
        filled.set_linewidth(0.0)
        if len(names) > 1:
            ax.contour(xs, ys, ahead, levels=[0.0], colors=INKS[1], linewidths=1.8).set_gid(f"border: {name}")
        area, (i, j) = _middle([[value > 0.0 for value in row] for row in ahead])
        # A name is written where there is room for it; a sliver stands in the legend only.
        if area > 0.05:
            ax.text(xs[j], ys[i], textwrap.fill(name, 22), ha="center", va="center", fontsize=8.5, color=INK,
                    zorder=5,
                    bbox={"boxstyle": "round,pad=0.25", "fc": "white", "ec": "none", "alpha": 0.85})  # fmt: skip
        else:
            handles.append(Patch(fc=FILLS[style], ec=INK, hatch=HATCHES[style], label=name))
    if handles:
        ax.legend(handles=handles, loc="upper center", bbox_to_anchor=(0.5, -0.12), fontsize=8, frameon=False)


def _ahead(name: str, at: dict[str, float], names: Sequence[str]) -> float:
    if not at:
        return NOTHING
    governing = next(iter(at))
    others = [at[other] for other in names if other != name and other in at]
    if name in at and others:
        weaker = min(others) - at[name]
        return weaker if governing == name else min(weaker, -1e-12)
    # Its rivets fail otherwise here, so that the mode has another name; or nothing else is near.
    return 0.02 if governing == name else -0.02


def _middle(inside: list[list[bool]]) -> tuple[float, tuple[int, int]]:
    """The share of a region, and a point well inside it: the one farthest from its edge in steps of the grid."""
    height, width = len(inside), len(inside[0])
    # Steps to the nearest point outside, by two sweeps over the grid; the border counts as outside.
    far = [[0 if not value else height + width for value in row] for row in inside]
    for rows, columns, back in ((range(height), range(width), -1),
                                (range(height - 1, -1, -1), range(width - 1, -1, -1), 1)):  # fmt: skip
        for i in rows:
            for j in columns:
                if far[i][j]:
                    above = far[i + back][j] if 0 <= i + back < height else 0
                    left = far[i][j + back] if 0 <= j + back < width else 0
                    far[i][j] = min(far[i][j], above + 1, left + 1)
    best = max((far[i][j], -i, -j) for i in range(height) for j in range(width))
    share = sum(map(sum, inside)) / (height * width)
    return share, (-best[1], -best[2])

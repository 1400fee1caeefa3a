"""The pressure allowed over the years."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from .. import _native
from .._convert import instance, number, reader_units
from .._enums import Units
from .._errors import ErrorKind, SeamwrightError
from .._quantities import Length, Pressure
from .._rating import Rating, thawed
from ._look import FAINT, INK, INKS, axes, in_unit, spread, symbol

if TYPE_CHECKING:
    from matplotlib.axes import Axes

# Parts that thin, as the years left take it: plates and straps, not rivets.
THINNING = ("plate", "other_plate", "wide_strap", "narrow_strap", "shell_plate")


def _rate(as_found: dict[str, Any]) -> float:
    """Loss of thickness in a year, mm."""
    stated = as_found["wastage_rate"]
    if stated is not None:
        return float(stated)
    if as_found["earlier"] is None:
        raise SeamwrightError(
            "the rating knows no wastage; give rate(.., wastage_rate=mm(0.1)) or an earlier plate",
            kind=ErrorKind.MISSING,
            field="wastage_rate",
        )
    before, years_ago = as_found["earlier"]
    return max(0.0, before - as_found["plate"][0]) / years_ago


def _thinned(rating: Rating, loss: float) -> dict[str, Any]:
    """What will be found when so much is lost; rivets stay as they are."""
    found = thawed(rating.as_found)
    for name in THINNING:
        if found[name] is not None:
            found[name] = (found[name][0] - loss, found[name][1])
    if found["hole"] is None:
        found["hole"] = (rating.joint.rows[0].hole.mm, False)
    return {**found, "wastage_rate": None, "earlier": None, "present": None}


def years(
    rating: Rating, /, *, until: float | None = None, ax: Axes | None = None, units: Units | str | None = None
) -> Axes:
    """The pressure that a shell's joint is allowed as its plates thin, year by year.

    Each point is a rating of its own, with plates and straps thinned at the rate of the rating and rivets as they are;
    where the present pressure is stated, the year is marked from which it is no longer allowed.

    Args:
        rating: a rating with a rate of wastage, stated or from an earlier inspection.
        until: the last year shown; without it, half as long again as the years left (10 to 60).
        ax: axes to draw on; without them, a figure is made.
        units: metric or inch; without them, those that went in.

    Returns:
        The axes; ``"allowed"``, ``"present"`` and ``"last year"`` are the gids of its artists.

    Raises:
        SeamwrightError: matplotlib is not installed or nothing is known of wastage (``MISSING``); a number of years
            that is not above 0.

    Example:
        >>> from seamwright import plot
        >>> rated = rate(
        ...     form=Form.lap(2), pitch=inch(3.5), plate=inch(0.45), inside_diameter=inch(48), hole=inch(15 / 16),
        ...     plates="steel", safety_factor=5, present=psi(125), wastage_rate=inch(0.005), book="us-existing",
        ... )
        >>> plot.years(rated).get_ylabel()
        'pressure allowed [psi]'
    """
    as_found = thawed(instance(Rating, "rating", rating, "rate(..)").as_found)
    loss = _rate(as_found)
    shown = reader_units(units, rating.joint.pitch.unit)
    unit = rating.allowed.unit if units is None else ("MPa" if shown is Units.METRIC else "psi")
    left = rating.years
    if until is None:
        until = 30.0 if left is None or left > 40.0 else max(10.0, 1.5 * left)
    until = number("until", until)
    if not 0.0 < until < 1e4:
        raise SeamwrightError(f"until = {until!r} is no number of years; give one above 0", field="until", value=until)

    def value(mpa: float) -> float:
        return float(Pressure[float]._make(mpa).to(unit))

    form, book = rating.form._native(), rating.book._core
    ages: list[float] = []
    allowed: list[float] = []
    marks = [left] if left is not None else []
    for age in spread(0.0, until, 121, marks):
        try:
            at = _native.rate(form, _thinned(rating, loss * age), book)
        except SeamwrightError:
            # Thinner than any plate that the library takes.
            break
        ages.append(age)
        allowed.append(value(at["allowed"]))
    drawn = axes(ax)
    drawn.plot(ages, allowed, color=INK, lw=2.2, gid="allowed", label="allowed")
    present = as_found["present"]
    if present is not None:
        drawn.axhline(value(present), color=INKS[3], lw=1.6, ls=(0, (6, 2)), gid="present")
        drawn.annotate(f"present pressure {value(present):.4g} {unit}", xy=(0.01, value(present)), fontsize=8.5,
                       xycoords=("axes fraction", "data"), xytext=(0, -11), textcoords="offset points")  # fmt: skip
    if left is not None and 0.0 < left <= ages[-1]:
        drawn.plot([left], [value(present)], marker="o", ms=9, mfc="white", mec=INK, mew=2, ls="none", gid="last year",
                   zorder=5)  # fmt: skip
        thin = in_unit(as_found["plate"][0] - loss * left, shown)
        drawn.annotate(f"{left:.1f} years: plate {thin:.4g} {symbol(shown)}", xy=(left, value(present)), fontsize=9,
                       fontweight="bold", xytext=(8, 10), textcoords="offset points")  # fmt: skip
        drawn.axvspan(left, ages[-1], facecolor=FAINT, alpha=0.15, lw=0)
    drawn.set_xlim(0.0, ages[-1])
    drawn.set_ylim(0.0, max([*allowed, value(present or 0.0)]) * 1.12)
    drawn.set_xlabel("years from now, wastage going on as it is")
    drawn.set_ylabel(f"pressure allowed [{unit}]")
    each = Length[float]._make(loss).to("mm" if shown is Units.METRIC else "inch")
    drawn.set_title(
        f"{rating.form.name}, plates and straps thinning by {each:.3g} {symbol(shown)} a year\n"
        f"rule book: {rating.book.title}",
        fontsize=9.5,
        loc="left",
    )
    return drawn

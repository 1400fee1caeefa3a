"""What the plots have in common: colours, labels, units, the caution."""

from __future__ import annotations

import textwrap
from collections.abc import Iterable, Sequence
from typing import TYPE_CHECKING, Any, cast

from .. import _native
from .._enums import Units
from .._errors import ErrorKind, SeamwrightError
from .._quantities import Length

if TYPE_CHECKING:
    from matplotlib.axes import Axes
    from matplotlib.figure import Figure

# Each at least 12 steps of lightness (CIE L*) from the next, dark to light: they stay apart in grey print.
INKS = ("#0d1730", "#74123c", "#1f5fa0", "#c9661c", "#6fae9a")
"""The colours of lines and marks, dark to light."""
DASHES: tuple[Any, ...] = ("solid", (0, (7, 2)), (0, (2, 1.5)), (0, (8, 2, 2, 2)), (0, (5, 2, 1, 2, 1, 2)))
"""The dashes that go with them."""
MARKERS = ("o", "s", "^", "D", "v")
"""The markers that go with them."""
INK = INKS[0]
FAINT = "#8a8f9c"
CAUTION = "seamwright caution"


def axes(ax: Axes | None, *, width: float = 8.0, height: float = 5.0) -> Axes:
    """The axes to draw on, with the caution on their figure.

    Raises:
        SeamwrightError: matplotlib is not installed (``MISSING``).
    """
    try:
        from matplotlib import pyplot
    except ImportError:
        raise SeamwrightError(
            'plots need matplotlib, which is not installed; install it: pip install "seamwright[plot]"',
            kind=ErrorKind.MISSING,
            field="matplotlib",
        ) from None
    if ax is None:
        figure, made = pyplot.subplots(figsize=(width, height), layout="constrained")
        engine: Any = figure.get_layout_engine()
        engine.set(rect=(0.0, 0.04, 1.0, 0.96))
    else:
        made = ax
        figure = cast("Figure", ax.get_figure(root=True))
    if not any(text.get_gid() == CAUTION for text in figure.texts):
        figure.text(0.01, 0.008, f"Caution. {_native.caution()}", fontsize=6.5, color="#444444", gid=CAUTION)
    made.spines[["top", "right"]].set_visible(False)
    return made


def in_unit(mm: float, units: Units) -> float:
    """A length in the reader's unit."""
    return mm if units is Units.METRIC else Length[float]._make(mm).inch


def symbol(units: Units) -> str:
    """The symbol of the reader's unit of lengths."""
    return "mm" if units is Units.METRIC else "in"


def spread(least: float, greatest: float, count: int, extra: Iterable[float] = ()) -> list[float]:
    """Even steps from end to end, and further values, in order."""
    steps = [least + (greatest - least) * i / (count - 1) for i in range(count)]
    return sorted({*steps, *(x for x in extra if least <= x <= greatest)})


def percent(x: float) -> float:
    """A fraction as a percentage."""
    return 100.0 * x


def beside(
    ax: Axes, labels: Sequence[tuple[float, float, str, str]], *, size: float = 8.0, wrap: int = 30, lw: float = 1.0
) -> None:
    """Labels at the right of the axes, at the heights of points in data, moved apart where they would overlap.

    Each label is its point, its text and the colour of its leader. The limits of the axes are settled before.
    """
    low, high = ax.get_ylim()
    tall = ax.get_position().height * ax.figure.get_figheight() * 72.0  # type: ignore[union-attr]
    line = 1.3 * size / tall
    wrapped = [textwrap.fill(text, wrap) for _, _, text, _ in labels]
    heights = [line * (1 + text.count("\n")) + 0.25 * line for text in wrapped]
    at = [min(max((y - low) / (high - low), 0.0), 1.0) for _, y, _, _ in labels]
    order = sorted(range(len(labels)), key=lambda i: at[i])
    places = _apart([at[i] for i in order], [heights[i] for i in order])
    for i, place in zip(order, places, strict=True):
        ax.annotate(
            wrapped[i],
            xy=(labels[i][0], min(max(labels[i][1], low), high)),
            xytext=(1.035, place),
            xycoords="data",
            textcoords="axes fraction",
            fontsize=size,
            color=INK,
            va="center",
            ha="left",
            annotation_clip=False,
            arrowprops={
                "arrowstyle": "-",
                "color": labels[i][3],
                "lw": lw,
                "shrinkA": 2,
                "shrinkB": 2,
                "relpos": (0.0, 0.5),
            },
        )


def _apart(at: Sequence[float], tall: Sequence[float]) -> list[float]:
    """Places as near to the wanted ones as labels of these heights allow, bottom to top, inside 0 to 1."""
    places: list[float] = []
    for i, y in enumerate(at):
        floor = places[-1] + 0.5 * (tall[i - 1] + tall[i]) if places else 0.5 * tall[i]
        places.append(max(y, floor))
    top = 1.0
    for i in reversed(range(len(places))):
        places[i] = min(places[i], top - 0.5 * tall[i])
        top = places[i] - 0.5 * tall[i]
    return places

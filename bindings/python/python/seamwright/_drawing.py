"""Drawings of a joint: section and plan, dimensioned, as SVG and DXF."""

from __future__ import annotations

import base64
import html
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from . import _native
from ._convert import choice, instance, text
from ._enums import Extent, Units
from ._files import PathLike, by_suffix
from ._joint import Joint
from ._records import Record


class Shown(Record):
    """A drawing; a notebook shows it."""

    svg: str

    def _what(self) -> str:
        raise NotImplementedError

    def __repr__(self) -> str:
        return f"<Drawing: {self._what()}>"

    def _repr_svg_(self) -> str:
        return self.svg

    def _repr_html_(self) -> str:
        # As an image: it fits the page, and its styles cannot reach other pictures there.
        coded = base64.b64encode(self.svg.encode()).decode()
        said = html.escape(f"Drawing: {self._what()}", quote=True)
        return f'<img alt="{said}" src="data:image/svg+xml;base64,{coded}" style="max-width:100%;background:#fff">'


@dataclass(frozen=True, kw_only=True, repr=False)
class Drawing(Shown):
    """A drawing of a joint; a notebook shows it.

    ``svg`` is an A4 sheet, landscape. ``dxf`` has plan and section at full size (1 unit is 1 mm); three pitches of a
    seam, or the whole of a tie.
    """

    joint: Joint
    title: tuple[tuple[str, str], ...]
    svg: str

    def _what(self) -> str:
        return self.joint.form.name

    @property
    def dxf(self) -> str:
        """Plan and section at full size as DXF (R12, ASCII)."""
        return _native.dxf(self.joint._native(), dict(self.title))

    def save(self, path: PathLike) -> Path:
        """Saves as ``.svg`` or ``.dxf``, by the end of the name, whole or not at all.

        Raises:
            SeamwrightError: another end of the name.
            OSError: a file that cannot be written.
        """
        return by_suffix(path, {".svg": lambda: self.svg, ".dxf": lambda: self.dxf})


def title_block(
    *,
    object: str = "",
    drawing_no: str = "",
    rule_book: str = "",
    date: str = "",
    prepared: str = "",
    checked: str = "",
    units: Units | str = Units.METRIC,
    extent: Extent | str = Extent.SEAM,
) -> dict[str, str]:
    """The title block as the native module takes it."""
    return {
        "object": text("object", object),
        "drawing_no": text("drawing_no", drawing_no),
        "rule_book": text("rule_book", rule_book),
        "date": text("date", date),
        "prepared": text("prepared", prepared),
        "checked": text("checked", checked),
        "units": choice(Units, "units", units).value,
        "extent": choice(Extent, "extent", extent).value,
    }


def drawing(*, joint: Joint, **title: Any) -> Drawing:
    """Draws a joint.

    Args:
        joint: a joint with row distances, margin and straps.
        **title: texts of the title block: ``object``, ``drawing_no``, ``rule_book``, ``date``, ``prepared``,
            ``checked``; ``units`` of the dimensions (metric or inch); ``extent`` (seam or tie).

    Raises:
        SeamwrightError: a dimension that is not given (``MISSING``), rows whose holes overlap as drawn, a text too
            long for its field.

    Example:
        >>> joint = Joint(form=Form.lap(1), pitch=mm(56), plate=mm(12), hole=mm(23), margin=mm(35))
        >>> drawing(joint=joint, object="Feed tank", drawing_no="T-7").svg.startswith("<svg")
        True
    """
    drawn: Joint = instance(Joint, "joint", joint, "Joint(..)")
    block = title_block(**title)
    return Drawing(joint=drawn, title=tuple(block.items()), svg=_native.svg(drawn._native(), block))

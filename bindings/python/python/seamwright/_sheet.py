"""The sheet that someone signs: inputs, figures, rules, caution, and lines for names."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from . import _native
from ._check import Analysis
from ._convert import choice, count, flag, instance, mapping, number, reader_units, text
from ._enums import Basis, DecimalMark, Dialect, Footing, Forces, Units
from ._errors import ErrorKind, SeamwrightError
from ._materials import Materials
from ._rating import Rating, thawed
from ._size import Design
from ._tables import BOUNDS
from ._working import Working, wishes


def _task(of: Any) -> tuple[Any, _native.Book]:
    """What the sheet is of, and its book."""
    if isinstance(of, Analysis):
        joint, materials, book = of._natives()
        return (joint, materials), book
    if isinstance(of, Design):
        _, materials, book = of.analysis._natives()
        return (of.brief.form._native(), materials, of.brief._native()), book
    if isinstance(of, Rating):
        return (of.form._native(), thawed(of.as_found)), of.book._core
    raise SeamwrightError(f"of is of type {type(of).__name__}; give a check, a sizing or a rating", field="of")


def _known(known: Mapping[str, tuple[Basis | str, str]]) -> list[tuple[str, int, str, str]]:
    listed: list[tuple[str, int, str, str]] = []
    how = "{'pitch': ('measured', 'least of five')}"
    for name, said in mapping("known", known, how).items():
        stem, dot, row = text("known", name).partition(".")
        if stem not in BOUNDS or (dot and not (row.isascii() and row.isdigit() and int(row) < 256)):
            raise SeamwrightError(
                f"known names {name!r}, which is no input; take a key of BOUNDS, as in 'pitch' or 'hole.2'",
                kind=ErrorKind.UNKNOWN_KEY,
                field="known",
            )
        if not isinstance(said, tuple) or len(said) != 2:  # pyright: ignore[reportUnknownArgumentType]
            raise SeamwrightError(f"known of {name!r} is a basis and a source: known={how}", field="known")
        basis, source = said
        listed.append((stem, int(row or 0), choice(Basis, "basis", basis).value, text("source", source)))
    return listed


def sheet(
    *,
    of: Analysis | Design | Rating,
    title: str = "",
    object: str = "",
    drawing_no: str = "",
    jurisdiction: str = "",
    prepared: str = "",
    checked: str = "",
    date: str = "",
    invented: bool = False,
    footing: Footing | str | None = None,
    ultimate: Materials | None = None,
    factor: float | None = None,
    known: Mapping[str, tuple[Basis | str, str]] | None = None,
    lines_per_page: int | None = None,
    dialect: Dialect | str = Dialect.PLAIN,
    units: Units | str | None = None,
    mark: DecimalMark | str = DecimalMark.POINT,
    extra_digits: int = 0,
    forces: Forces | str = Forces.KILONEWTON,
    decimals: Mapping[str, int] | None = None,
) -> Working:
    """The sheet that someone signs. An empty text is a line to be filled in by hand.

    Args:
        of: a check, a sizing or a rating.
        title, object, drawing_no, jurisdiction, prepared, checked, date: what stands in its head.
        invented: the object and the data are made up; the sheet says so.
        footing: whether the stresses are permissible or ultimate; not said without it. A rating knows.
        ultimate, factor: the stresses at failure and the factor of safety of which those of the task were made.
        known: how inputs are known and from where, ``{"pitch": ("measured", "least of five")}``; a row as ``hole.2``.
            What is not listed was given; what has no line among the inputs is left out. A rating keeps its own list.
        lines_per_page: a plain sheet on pages of 30 to 300 lines, caution and page number at each foot, a form feed
            between pages; 60 print well on A4. One text without it; the other dialects have pages of their own or none.
        dialect, units, mark, extra_digits, decimals: as for :meth:`Analysis.working`.
        forces: kN or N on a metric sheet.

    Raises:
        SeamwrightError: an unknown choice or input; stresses at failure that over the factor are not those of the task
            (``INCONSISTENT``); pages of too few or too many lines (``TOO_SMALL``, ``TOO_LARGE``).

    Example:
        >>> joint = Joint(form=Form.lap(2), pitch=mm(71), plate=mm(13), hole=mm(23))
        >>> steel = Materials(tension=MPa(80), rivet_shear=MPa(60), bearing=MPa(120))
        >>> found = check(joint=joint, materials=steel, book="metric")
        >>> "67.52 %" in sheet(of=found, object="Drum of an invented boiler", invented=True).text.replace(chr(160), " ")
        True
    """
    task, book = _task(of)
    if (ultimate is None) != (factor is None):
        raise SeamwrightError("ultimate and factor go together; give both, or neither", field="factor")
    strengths = None if ultimate is None else instance(Materials, "ultimate", ultimate, "Materials(..)")._native()
    said = {
        "title": text("title", title),
        "object": text("object", object),
        "drawing_no": text("drawing_no", drawing_no),
        "jurisdiction": text("jurisdiction", jurisdiction),
        "prepared": text("prepared", prepared),
        "checked": text("checked", checked),
        "date": text("date", date),
        "invented": flag("invented", invented),
        "footing": None if footing is None else choice(Footing, "footing", footing).value,
        "divided": None if strengths is None else (strengths, number("factor", factor)),
        "known": _known(known or {}),
        "lines_per_page": None if lines_per_page is None else count("lines_per_page", lines_per_page),
    }
    shown = reader_units(units, of._given_in())
    chosen, wanted = wishes(dialect, shown, mark, extra_digits, forces, decimals)
    return Working(dialect=chosen, text=_native.sheet(task, said, book, wanted))


def sheet_inputs(*, of: Analysis | Design | Rating) -> tuple[str, int]:
    """The inputs of a sheet as its hash reads them, and the hash: the same inputs have the same one everywhere.

    Args:
        of: a check, a sizing or a rating.

    Raises:
        SeamwrightError: something else.

    Example:
        >>> joint = Joint(form=Form.lap(2), pitch=mm(71), plate=mm(13), hole=mm(23))
        >>> steel = Materials(tension=MPa(80), rivet_shear=MPa(60), bearing=MPa(120))
        >>> first, second = (check(joint=joint, materials=steel, book="metric") for _ in range(2))
        >>> sheet_inputs(of=first) == sheet_inputs(of=second)
        True
    """
    task, book = _task(of)
    return _native.sheet_inputs(task, book)

"""Which conventions reproduce figures that someone states?"""

from __future__ import annotations

import json
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from html import escape
from pathlib import Path
from typing import Any

from . import _native
from ._check import joint_argument, materials_argument
from ._convert import instance, items, text
from ._errors import ErrorKind, SeamwrightError
from ._figures import CONVENTIONS, SYMBOLS, Convention, Said, figures, symbol_and_row
from ._files import PathLike, by_suffix
from ._html import page, table
from ._joint import Joint
from ._materials import Materials
from ._records import Record
from ._rules import RuleBook, book_argument
from ._size import Design


@dataclass(frozen=True, kw_only=True)
class ComesOut(Record):
    """A stated figure and what it comes out as, in the unit in which it was stated; None where there is no such figure.

    ``met`` says whether it is the figure that was stated, within its digits (or after the slip that is named).
    """

    name: str
    what: str
    stated: str
    value: float | None
    unit: str
    met: bool


@dataclass(frozen=True, kw_only=True)
class Explanation(Record):
    """Conventions that together give the stated figures, or come near them; none for the book as it stands.

    ``miss`` is the worst miss in widths of what a figure's digits leave open, at most 1 where all are met.
    """

    conventions: tuple[Convention, ...]
    figures: tuple[ComesOut, ...]
    miss: float

    def __str__(self) -> str:
        if not self.conventions:
            return "the rule book as it stands"
        return " and ".join(str(c) for c in self.conventions)

    @property
    def value(self) -> Mapping[str, float | None]:
        """What each figure comes out as, by its symbol."""
        return {figure.name: figure.value for figure in self.figures}


@dataclass(frozen=True, kw_only=True, repr=False)
class Reconciliation(Record):
    """What reproduces stated figures.

    Attributes:
        stated: the figures as they were stated.
        explanations: what reproduces them, fewest edits first; empty: not reproduced.
        by_chance: what would reproduce them too, but may do so by chance.
        as_it_stands: the rule book as it stands.
        nearest: the nearest of the single edits, or the book as it stands.
        tried: edits and pairs of edits that were worked.
        text: the answer in words, with the caution.
    """

    stated: tuple[tuple[str, str], ...]
    explanations: tuple[Explanation, ...]
    by_chance: tuple[Explanation, ...]
    as_it_stands: Explanation
    nearest: Explanation
    tried: int
    text: str

    def __str__(self) -> str:
        return self.text

    def __repr__(self) -> str:
        if self.best is None:
            return f"<Reconciliation: not reproduced by {self.tried} edits and pairs; nearest {self.nearest}>"
        return f"<Reconciliation: reproduced with {self.best}>"

    @property
    def reproduced(self) -> bool:
        """Whether the figures are reproduced."""
        return bool(self.explanations)

    @property
    def best(self) -> Explanation | None:
        """The best explanation, None where nothing reproduces the figures."""
        return self.explanations[0] if self.explanations else None

    def _lines(self) -> list[str]:
        """The sentences above the table."""
        if self.best is None:
            said = [f"Not reproduced: none of {self.tried} single edits and pairs of edits gives all figures."]
            said += [f"May be chance: {other}." for other in self.by_chance]
            return [*said, f"Nearest: {self.nearest}."]
        return [f"Reproduced with {self.best}."] + [f"As well with {other}." for other in self.explanations[1:]]

    def _rows(self) -> list[tuple[str, ...]]:
        shown = self.best or self.nearest

        def plain(x: ComesOut) -> str:
            return "nothing" if x.value is None else f"{x.value:.5g} {x.unit}".rstrip()

        return [
            (a.name, a.what, a.stated, plain(a), plain(b), "yes" if a.met else "NO")
            for a, b in zip(shown.figures, self.as_it_stands.figures, strict=True)
        ]

    def _repr_html_(self) -> str:
        said = "".join(f"<p>{escape(line)}</p>" for line in self._lines())
        return page(said, table("Figures", _HEAD, self._rows()))

    def _repr_markdown_(self) -> str:
        rows = ["| " + " | ".join(x.replace("|", "\\|") for x in row) + " |" for row in [_HEAD, *self._rows()]]
        rows.insert(1, "| --- " * len(_HEAD) + "|")
        return "\n\n".join([*self._lines(), "\n".join(rows), f"> {_native.caution()}"]) + "\n"

    def save(self, path: PathLike) -> Path:
        """Saves, whole or not at all: ``.txt`` the words, ``.md``, ``.html`` the table, ``.json`` the data.

        Raises:
            SeamwrightError: another end of the name.
            OSError: a file that cannot be written.
        """
        return by_suffix(
            path,
            {
                ".txt": lambda: self.text,
                ".md": self._repr_markdown_,
                ".html": self._repr_html_,
                ".json": lambda: json.dumps(self.to_dict(), indent=1, ensure_ascii=False) + "\n",
            },
        )


_HEAD = ("symbol", "what", "stated", "comes out as", "as the book stands", "met")


def _work(
    joint: Joint | None, materials: Materials | None, design: Design | None, book: RuleBook | str | None
) -> tuple[Any, RuleBook]:
    """What was worked, and under which book."""
    if design is not None:
        if joint is not None or materials is not None:
            raise SeamwrightError("give a joint and its materials, or a design, not both", field="design")
        made: Design = instance(Design, "design", design, "size(form=.., plate=.., materials=.., book=..)")
        rules = made.analysis.book if book is None else book_argument(book)
        return (made.brief.form._native(), made.analysis.materials._native(), made.brief._native()), rules
    if joint is None or materials is None or book is None:
        name = "joint" if joint is None else "materials" if materials is None else "book"
        raise SeamwrightError(
            f"{name} is needed: joint=.., materials=.., book=.. of a check, or design=.. of a sizing",
            kind=ErrorKind.MISSING,
            field=name,
        )
    return (joint_argument(joint)._native(), materials_argument(materials)._native()), book_argument(book)


def reconcile(
    *,
    stated: Mapping[str, Said],
    joint: Joint | None = None,
    materials: Materials | None = None,
    design: Design | None = None,
    book: RuleBook | str | None = None,
) -> Reconciliation:
    """Finds the conventions that reproduce stated figures: single edits of the catalogue and all pairs, ranked.

    Args:
        stated: figures by the symbol of the working (see ``SYMBOLS``), as they are printed: ``{"Ps": "31897 N"}``, for
            their digits say how closely they are meant; or value and slack: ``{"Ps": (N(31897), N(5))}``.
        joint, materials: of a check.
        design: of a sizing, in their place.
        book: the rule book that is taken as the starting point, or the short name of a built-in one; of a design its
            own, where none is given.

    Raises:
        SeamwrightError: no figure, more than 24, one that names no quantity or of which the routine says nothing.

    Example:
        An old sheet (invented) says 31 897 N for the rivets of a single-riveted butt joint with two straps; by hand,
        1.875 times pi/4 19^2 60 N.

        >>> joint = Joint(form=Form.double_strap(1), pitch=mm(60), plate=mm(10), hole=mm(19))
        >>> steel = Materials(tension=MPa(80), rivet_shear=MPa(60), bearing=MPa(120))
        >>> found = reconcile(joint=joint, materials=steel, book="metric", stated={"Ps": "31897 N"})
        >>> str(found.best)
        '1.875 for double shear'
    """
    work, rules = _work(joint, materials, design, book)
    given = figures(stated, "stated")
    x = _native.reconcile(work, [native for native, _ in given.values()], rules._core)
    said = {
        name: as_said if isinstance(as_said, str) else f"{as_said[0]} ± {as_said[1]}"
        for name, as_said in stated.items()
    }

    def explanation(e: dict[str, Any]) -> Explanation:
        rows = zip(given.items(), e["values"], e["met"], strict=True)
        return Explanation(
            conventions=tuple(CONVENTIONS[n] for n in e["conventions"]),
            figures=tuple(
                ComesOut(
                    name=name,
                    what=SYMBOLS[native[0]].what,
                    stated=said[name],
                    value=None if value is None else value / native[4],
                    unit=unit,
                    met=met,
                )
                for (name, (native, unit)), value, met in rows
            ),
            miss=e["miss"],
        )

    return Reconciliation(
        stated=tuple(said.items()),
        explanations=tuple(explanation(e) for e in x["explanations"]),
        by_chance=tuple(explanation(e) for e in x["by_chance"]),
        as_it_stands=explanation(x["as_it_stands"]),
        nearest=explanation(x["nearest"]),
        tried=x["tried"],
        text=x["words"],
    )


def worked(
    *,
    names: Sequence[str],
    joint: Joint | None = None,
    materials: Materials | None = None,
    design: Design | None = None,
    book: RuleBook | str | None = None,
    conventions: Sequence[Convention] = (),
) -> dict[str, float | None]:
    """Quantities of the working by their symbols, in mm, N and MPa; None where the routine has none.

    Args:
        names: symbols of the working, at most 24.
        joint, materials, design, book: as for :func:`reconcile`.
        conventions: one or two of ``CONVENTIONS`` with which they are worked.

    Raises:
        SeamwrightError: an unknown symbol; more than two conventions; what :func:`check` or :func:`size` refuse.

    Source:
        Khurmi & Gupta, A Textbook of Machine Design, Example 9.2 (tearing 21 600 N), for the example below.

    Example:
        >>> joint = Joint(form=Form.lap(1), pitch=mm(50), plate=mm(6), hole=mm(20))
        >>> steel = Materials(tension=MPa(120), rivet_shear=MPa(90), bearing=MPa(180))
        >>> worked(joint=joint, materials=steel, book="metric", names=["Pt", "gmin.1"])
        {'Pt': 21600.0, 'gmin.1': None}
    """
    work, rules = _work(joint, materials, design, book)
    if isinstance(names, str):
        raise SeamwrightError("names is one text; give a list, as in names=['Pt']", field="names")
    wanted = [text("names", name) for name in items((), "names", names, "['Pt']")]
    parts = [symbol_and_row(name) for name in wanted]
    given = items(Convention, "conventions", conventions, "[CONVENTIONS[0]]")
    edits = [instance(Convention, "conventions", c, "[CONVENTIONS[0]]").number for c in given]
    if len(edits) > 2:
        raise SeamwrightError(
            f"conventions has {len(edits)}; at most two are worked together",
            kind=ErrorKind.TOO_LARGE,
            field="conventions",
        )
    if not edits:
        return dict(zip(wanted, _native.worked(work, parts, rules._core), strict=True))
    return {
        name: _native.edited(work, symbol, row, edits, rules._core)
        for name, (symbol, row) in zip(wanted, parts, strict=True)
    }

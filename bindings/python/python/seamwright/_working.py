"""The working: every step as it was computed, in symbols, in numbers, with its clause."""

from __future__ import annotations

import html
import json
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from pathlib import Path

from ._convert import choice, mapping, natural, number, reader_units
from ._enums import DecimalMark, Dialect, Forces, Units
from ._errors import ErrorKind, SeamwrightError
from ._files import PathLike, by_suffix, write
from ._records import Record


@dataclass(frozen=True, kw_only=True, repr=False)
class Working(Record):
    """A working in one dialect; ``str(working)`` is its text. A notebook shows it as what it is.

    Example:
        >>> joint = Joint(form=Form.lap(1), pitch=mm(50), plate=mm(6), hole=mm(20))
        >>> steel = Materials(tension=MPa(120), rivet_shear=MPa(90), bearing=MPa(180))
        >>> working = check(joint=joint, materials=steel, book="metric").working("plain")
        >>> "Fs.1 = pi/4 d.1 d.1 ss" in str(working)
        True
    """

    dialect: Dialect
    text: str

    def __str__(self) -> str:
        return self.text

    def __repr__(self) -> str:
        return f"<Working, {self.dialect.value}, {len(self.text.splitlines())} lines>"

    def _repr_html_(self) -> str | None:
        if self.dialect is Dialect.HTML:
            # A page with its own styles: in a frame, so that they stay there.
            page = html.escape(self.text, quote=True)
            return f'<iframe srcdoc="{page}" style="width:100%;height:36em;border:1px solid #999"></iframe>'
        if self.dialect in (Dialect.PLAIN, Dialect.NARROW):
            return f"<pre>{html.escape(self.text)}</pre>"
        return None

    def _repr_markdown_(self) -> str | None:
        return self.text if self.dialect is Dialect.MARKDOWN else None

    def _repr_latex_(self) -> str | None:
        """The document's body, as a notebook (and its LaTeX export) takes it."""
        if self.dialect is not Dialect.LATEX:
            return None
        body = self.text.partition("\\begin{document}")[2]
        return body.rpartition("\\end{document}")[0].strip()

    def save(self, path: PathLike) -> Path:
        """Saves the text in UTF-8, whole or not at all.

        Raises:
            OSError: a file that cannot be written.
        """
        return write(path, self.text)


Decimals = tuple["int | None", "int | None", "int | None", "int | None"]
Wishes = tuple[str, str, str, int, str, Decimals]

_KINDS = ("length", "stress", "force", "ratio")


def _decimals(asked: Mapping[str, int] | None) -> Decimals:
    found = {} if asked is None else dict(mapping("decimals", asked, "{'length': 2}"))
    for kind in found:
        if kind not in _KINDS:
            raise SeamwrightError(
                f"decimals of {kind!r}: not a kind of quantity; it is one of {', '.join(_KINDS)}",
                kind=ErrorKind.WRONG_CHOICE,
                field="decimals",
            )
    # The core takes more than nine as nine.
    taken = {kind: min(9, natural(f"decimals of {kind}", n)) for kind, n in found.items()}
    return taken.get("length"), taken.get("stress"), taken.get("force"), taken.get("ratio")


def wishes(
    dialect: Dialect | str,
    units: Units | str,
    mark: DecimalMark | str,
    extra_digits: int,
    forces: Forces | str = Forces.NEWTON,
    decimals: Mapping[str, int] | None = None,
) -> tuple[Dialect, Wishes]:
    """A reader's wishes as the native module takes them."""
    chosen = choice(Dialect, "dialect", dialect)
    # The core keeps decimals between 0 and 9, whatever is asked for.
    digits = int(max(-9.0, min(9.0, number("extra_digits", extra_digits))))
    return chosen, (
        chosen.value,
        choice(Units, "units", units).value,
        choice(DecimalMark, "mark", mark).value,
        digits,
        choice(Forces, "forces", forces).value,
        _decimals(decimals),
    )


class Worked(Record):
    """A result whose steps can be read."""

    def _steps(self, wanted: Wishes) -> str:
        """The text of the steps, from the native module."""
        raise NotImplementedError

    def _given_in(self) -> str:
        """The unit of length that went in."""
        raise NotImplementedError

    def working(
        self,
        dialect: Dialect | str = Dialect.PLAIN,
        *,
        units: Units | str | None = None,
        mark: DecimalMark | str = DecimalMark.POINT,
        extra_digits: int = 0,
        forces: Forces | str = Forces.NEWTON,
        decimals: Mapping[str, int] | None = None,
    ) -> Working:
        """Every step of the calculation, in symbols and numbers, with clauses.

        A design shows its sizing and its check; a rating also the rules on the shell and all assumptions.

        Args:
            dialect: plain (80 columns), narrow (20), markdown, latex or html.
            units: metric, or inch (in, psi, lbf); without them, those that went in.
            mark: decimal point or comma.
            extra_digits: decimals more than usual (or fewer), -9 to 9.
            forces: N or kN on a metric sheet; in kN the lines carry the thousand between kN and mm with MPa.
            decimals: by the kind of quantity (length, stress, force, ratio), 0 to 9, as in ``{"length": 2}``.

        Raises:
            SeamwrightError: an unknown dialect, unit or mark (``WRONG_CHOICE``).
        """
        shown = reader_units(units, self._given_in())
        chosen, wanted = wishes(dialect, shown, mark, extra_digits, forces, decimals)
        return Working(dialect=chosen, text=self._steps(wanted))

    def _kinds(self) -> Mapping[str, Callable[[], str]]:
        """What can be saved, by the end of the file's name."""
        return {
            ".txt": lambda: self.working(Dialect.PLAIN).text,
            ".md": lambda: self.working(Dialect.MARKDOWN).text,
            ".tex": lambda: self.working(Dialect.LATEX).text,
            ".html": lambda: self.working(Dialect.HTML).text,
            ".json": lambda: json.dumps(self.to_dict(), indent=1, ensure_ascii=False) + "\n",
        }

    def save(self, path: PathLike) -> Path:
        """Saves, whole or not at all, what the end of the name says.

        ``.txt``, ``.md``, ``.tex``, ``.html``: the working; ``.json``: everything as data; ``.svg``, ``.dxf``: the
        drawing of a check or a design; of a group ``.svg``.

        Raises:
            SeamwrightError: another end of the name, or a drawing of a joint without all its dimensions.
            OSError: a file that cannot be written.
        """
        return by_suffix(path, self._kinds())

"""The table of a boiler: every part that limits its pressure."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from . import _native
from ._convert import StressLike, choice, instance, items, stress, text, unit_of
from ._enums import BoilerPart
from ._html import page, table
from ._quantities import Pressure, Stress
from ._rating import Rating
from ._records import Record
from ._rules import RuleBook, book_argument


@dataclass(frozen=True, kw_only=True)
class BoilerLine(Record):
    """One line of a boiler's table: what it is, what it is called, and the pressure that it allows."""

    part: BoilerPart
    name: str
    pressure: Stress[float]

    @staticmethod
    def of(*, part: BoilerPart | str, name: str, pressure: StressLike) -> BoilerLine:
        """A line.

        Args:
            part: what it is; heads, tubes, stays and furnaces are computed elsewhere.
            name: what it is called.
            pressure: what it allows; 0 where it allows none.

        Raises:
            SeamwrightError: an unknown part, a bare number.

        Example:
            >>> BoilerLine.of(part="head", name="front head", pressure=psi(160)).part.computed_here
            False
        """
        made = Pressure[float]._make(stress("pressure", pressure), unit_of(pressure) or "MPa")
        return BoilerLine(part=choice(BoilerPart, "part", part), name=text("name", name), pressure=made)

    @staticmethod
    def course(*, name: str, rating: Rating) -> BoilerLine:
        """A rated course of the shell.

        Args:
            name: what it is called.
            rating: its rating.
        """
        return BoilerLine.of(part=BoilerPart.COURSE, name=name, pressure=rating.allowed)


@dataclass(frozen=True, kw_only=True)
class Boiler(Record):
    """The table of a boiler: every part that limits its pressure. The least governs, the first of equals.

    At most 32 lines. ``governing`` is None in an empty table; ``test`` is the hydrostatic test pressure by the book,
    None where it has none.

    Example:
        >>> boiler = Boiler.of(lines=[
        ...     BoilerLine.of(part="head", name="front head", pressure=psi(160)),
        ...     BoilerLine.of(part="stays", name="crown stays", pressure=psi(140)),
        ... ], book="us-california")
        >>> boiler.governing.name, f"{boiler.test.psi:.1f}"  # half as much again: 1.5 x 140
        ('crown stays', '210.0')
    """

    lines: tuple[BoilerLine, ...]
    governing: BoilerLine | None
    test: Stress[float] | None

    @staticmethod
    def of(*, lines: Sequence[BoilerLine], book: RuleBook | str | None = None) -> Boiler:
        """A table of lines.

        Args:
            lines: the lines.
            book: the rule book that says the test pressure.

        Raises:
            SeamwrightError: a pressure that is negative, not finite or too large; more than 32 lines (``NO_SPACE``).
        """
        how = "[BoilerLine.of(part='head', ..)]"
        made = tuple(instance(BoilerLine, "lines", x, how) for x in items(BoilerLine, "lines", lines, how))
        plain = [(line.part.value, line.name, line.pressure.MPa) for line in made]
        at, test = _native.boiler(plain, None if book is None else book_argument(book)._core)
        governs = None if at is None else made[at]
        shown = "MPa" if governs is None else governs.pressure.unit
        return Boiler(lines=made, governing=governs, test=None if test is None else Pressure[float]._make(test, shown))

    def _repr_markdown_(self) -> str:
        rows = ["| " + " | ".join(cell.replace("|", "\\|") for cell in row) + " |" for row in self._rows()]
        return "\n".join([
            "| part | name | allowed | |", "| --- | --- | ---: | --- |", *rows, "", *self._tested(), "",
            f"> {_native.caution()}", "",
        ])  # fmt: skip

    def _repr_html_(self) -> str:
        said = "".join(f"<p>{line}</p>" for line in self._tested())
        return page(table("What limits the boiler", ("part", "name", "allowed", ""), self._rows()), said)

    def _rows(self) -> list[tuple[str, ...]]:
        first = None if self.governing is None else self.lines.index(self.governing)
        return [
            (line.part.value, line.name, str(line.pressure), "governs" if at == first else "")
            for at, line in enumerate(self.lines)
        ]

    def _tested(self) -> list[str]:
        return [] if self.test is None else [f"Hydrostatic test pressure: {self.test}."]

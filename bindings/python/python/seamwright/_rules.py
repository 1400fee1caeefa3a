"""Rule books: what they say, on what clause, and books of one's own."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any, cast

from . import _native
from ._convert import choice, number, text
from ._enums import EntryKind, Label, Metal
from ._errors import ErrorKind, SeamwrightError
from ._files import PathLike, write
from ._materials import Materials
from ._quantities import Length, Quantity, Stress
from ._records import Record


@dataclass(frozen=True, kw_only=True)
class EntryInfo(Record):
    """One entry of the table: what a rule book can say under a key.

    ``least`` and ``greatest`` bound the value, ``default`` is what a silent book means, all in ``unit``; a choice is
    numbered from 0 in ``choices``.
    """

    key: str
    kind: EntryKind
    unit: str
    choices: tuple[str, ...]
    least: float
    greatest: float
    default: float
    what: str


ENTRIES: Mapping[str, EntryInfo] = {
    row["key"]: EntryInfo(**{**row, "kind": EntryKind(row["kind"]), "choices": tuple(row["choices"])})
    for row in _native.entry_table()
}
"""Everything that a rule book can say, by key; lists have a key for each line, as in ``series.hole.3``."""


@dataclass(frozen=True, kw_only=True)
class Statement(Record):
    """One statement of a book: the value of an entry, and where it stands.

    ``source`` is the number of the source in the book's list, from 1; 0 for practice and own choices.
    """

    key: str
    value: float
    clause: str
    source: int
    label: Label

    @property
    def meaning(self) -> str:
        """The value in words: the choice it stands for, or the number with its unit."""
        info = ENTRIES[self.key]
        if info.choices:
            return info.choices[int(self.value)]
        return f"{self.value:.6g} {info.unit}".rstrip()


@dataclass(frozen=True, kw_only=True)
class Size(Record):
    """One size of a book's series: the cold rivet and its hole."""

    rivet: Length[float]
    hole: Length[float]


_KEYS = {"value", "values", "clause", "source", "label"}
_OWN = "set by the user"


def _value(key: str, x: Any) -> float:
    """A number of an entry: bare in the entry's unit, a quantity, a switch, or the words of a choice."""
    info = ENTRIES.get(key) or ENTRIES.get(f"{key}.1")
    if isinstance(x, bool) and info is not None and info.kind is EntryKind.SWITCH:
        return float(x)
    if isinstance(x, str) and info is not None and x in info.choices:
        return float(info.choices.index(x))
    if isinstance(x, Quantity) and info is not None:
        wanted = {"mm": Length, "MPa": Stress}.get(info.unit)
        if wanted is None or not isinstance(x, wanted) or x.shape:
            raise SeamwrightError(f"{key} = {x!r}: a number in {info.unit or 'no unit'} is needed", field="rule")
        return cast("float", x.to(info.unit))
    if isinstance(x, str) and info is not None and info.choices:
        words = ", ".join(map(repr, info.choices))
        raise SeamwrightError(
            f"{key} = {x!r}; take one of {words}", kind=ErrorKind.WRONG_CHOICE, field="rule", entry=key
        )
    return number(key, x)


def _statement(key: Any, said: Any, label: Label) -> tuple[str, list[float], str, int, str]:
    """A statement as the native module takes it: from a value, a list of values, or a dict."""
    key = text("key of an entry", key)
    if not isinstance(said, Mapping):
        said = {"values" if isinstance(said, (list, tuple)) else "value": said}
    found = cast("Mapping[str, Any]", said)
    if unknown := set(found) - _KEYS:
        raise SeamwrightError(
            f"{key}: {', '.join(map(repr, unknown))} is not known here; a statement has {', '.join(sorted(_KEYS))}",
            kind=ErrorKind.UNKNOWN_KEY,
            field="rule",
        )
    if ("value" in found) == ("values" in found):
        raise SeamwrightError(f"{key}: give either value or values", kind=ErrorKind.MISSING, field="rule")
    values: Any = found["values"] if "values" in found else [found["value"]]
    if not isinstance(values, (list, tuple)):
        raise SeamwrightError(f"{key}: values = {values!r} is not a list; give one", field="rule")
    source = number(f"{key}: source", found.get("source", 0))
    if not 0 <= source <= 254 or source != int(source):
        raise SeamwrightError(
            f"{key}: source = {source:g} is not a number of the list of sources, from 1", field="rule"
        )
    numbers = [_value(key, x) for x in cast("Sequence[Any]", values)]
    said_label = choice(Label, f"{key}: label", found.get("label", label)).value
    return key, numbers, text(f"{key}: clause", found.get("clause", _OWN)), int(source), said_label


class RuleBook(Mapping[str, float]):
    """A rule book: a mapping of the keys of all entries to their values, with the clauses behind them.

    Values are numbers in the unit of their entry (``ENTRIES[key].unit``); switches are 0 or 1, choices are numbered.
    Made by :func:`book`, :meth:`derive`, :meth:`from_dict`, :meth:`from_toml` or :meth:`load`.

    Example:
        >>> metric = book("metric")
        >>> metric["shear.double"]
        2.0
        >>> metric.statement("shear.double").label
        <Label.READ: 'READ'>
        >>> mine = metric.derive(id="mine", changes={"shear.double": 1.75})
        >>> mine["shear.double"], mine.statement("shear.double").label.name
        (1.75, 'OWN')
    """

    __slots__ = ("_core", "_head", "_statements", "_values")
    _core: _native.Book
    _head: tuple[str, str, tuple[str, ...]]
    _values: dict[str, float]
    _statements: dict[str, Statement]

    def __init__(self) -> None:
        raise SeamwrightError(
            "a rule book is made by book('metric'), RuleBook.from_dict(..), RuleBook.load(..) or derive(..)",
            kind=ErrorKind.MISSING,
            field="book",
        )

    @classmethod
    def _of(cls, core: _native.Book) -> RuleBook:
        made = object.__new__(cls)
        ident, title, sources = core.head()
        statements = {
            key: Statement(key=key, value=value, clause=clause, source=source, label=Label(label))
            for key, value, clause, source, label in core.statements()
        }
        object.__setattr__(made, "_core", core)
        object.__setattr__(made, "_head", (ident, title, tuple(sources)))
        object.__setattr__(made, "_values", dict(zip(ENTRIES, core.values(), strict=True)))
        object.__setattr__(made, "_statements", statements)
        return made

    def __setattr__(self, name: str, value: object) -> None:
        raise AttributeError("a rule book does not change; derive a new one")

    @property
    def id(self) -> str:
        """Short name."""
        return self._head[0]

    @property
    def title(self) -> str:
        """Title and edition."""
        return self._head[1]

    @property
    def sources(self) -> tuple[str, ...]:
        """The sources that statements point to, numbered from 1."""
        return self._head[2]

    @property
    def statements(self) -> tuple[Statement, ...]:
        """What the book says, in the order of the table; entries not listed are silent."""
        return tuple(self._statements.values())

    def statement(self, key: str) -> Statement | None:
        """The statement on a key, None where the book is silent.

        Raises:
            SeamwrightError: a key that is not in the table (``UNKNOWN_KEY``).
        """
        if key not in self._values:
            self._core.get(str(key))
        return self._statements.get(key)

    def __getitem__(self, key: str) -> float:
        try:
            return self._values[key]
        except KeyError:
            return self._core.get(text("key", key))

    def __iter__(self) -> Iterator[str]:
        return iter(self._values)

    def __len__(self) -> int:
        return len(self._values)

    def __contains__(self, key: object) -> bool:
        return key in self._values

    def __eq__(self, other: object) -> bool:
        if not isinstance(other, RuleBook):
            return NotImplemented
        return self._head == other._head and self._values == other._values and self._statements == other._statements

    def __hash__(self) -> int:
        return hash((self._head, tuple(self._values.values())))

    def __repr__(self) -> str:
        return f"<RuleBook {self.id!r}: {self.title}, {len(self._statements)} statements>"

    def __reduce__(self) -> tuple[Any, ...]:
        return (RuleBook.from_dict, (self.to_dict(),))

    @property
    def series(self) -> tuple[Size, ...]:
        """The book's series of rivets and holes."""
        made = Length[float]._make
        return tuple(Size(rivet=made(rivet), hole=made(hole)) for rivet, hole in self._core.series())

    def assumed_shear(self, *, rivets: Metal | str) -> Stress[float]:
        """The ultimate shear strength that the book gives for rivets of a metal of unknown make.

        Raises:
            SeamwrightError: the book gives none (``MISSING``).

        Example:
            >>> round(book("indian").assumed_shear(rivets="iron").long_ton_in2, 9)
            18.0
        """
        return Stress[float]._make(self._core.assumed_shear(choice(Metal, "rivets", rivets).value))

    def assumed_materials(self, *, plate: Metal | str, rivets: Metal | str) -> Materials:
        """The ultimate strengths that the book lets one assume; to be divided by a factor of safety.

        Raises:
            SeamwrightError: the book gives no tensile or shear strength for that metal (``MISSING``).

        Example:
            >>> old = book("us-existing").assumed_materials(plate="steel", rivets="iron")
            >>> round(old.plate.tension.psi, 6)
            55000.0
        """
        of_plate, of_rivets = choice(Metal, "plate", plate), choice(Metal, "rivets", rivets)
        return Materials._of(self._core.assumed_materials(of_plate.value, of_rivets.value))

    def derive(
        self,
        *,
        id: str,
        changes: Mapping[str, Any],
        title: str | None = None,
        sources: Sequence[str] | None = None,
    ) -> RuleBook:
        """A book of one's own: this one with entries changed.

        Args:
            id: short name of the new book.
            changes: new values by key: a number in the entry's unit, a quantity, True or False, the words of a choice,
                a list of values for a whole list, or ``{"value": .., "clause": .., "source": .., "label": ..}``.
            title: its title; otherwise this one's, "changed".
            sources: further sources, numbered on from this book's.

        Raises:
            SeamwrightError: an unknown key, a value outside its range, or a book that contradicts itself.

        Example:
            >>> book("metric").derive(id="mine", changes={"pitch.step": mm(5), "pitch.round": "nearest"})["pitch.step"]
            5.0
        """
        said = [_statement(key, x, Label.OWN) for key, x in _mapping("changes", changes).items()]
        listed = [*self.sources, *(text("source", s) for s in sources or ())]
        new_title = f"{self.title}, changed" if title is None else text("title", title)
        return RuleBook._of(_native.Book(text("id", id), new_title, listed, said, self._core))

    def to_dict(self) -> dict[str, Any]:
        """The book as a dict, from which :meth:`from_dict` makes it again."""
        return {
            "id": self.id,
            "title": self.title,
            "sources": list(self.sources),
            "rules": {
                s.key: {"value": s.value, "clause": s.clause, "source": s.source, "label": s.label.value}
                for s in self.statements
            },
        }

    @staticmethod
    def from_dict(said: Mapping[str, Any], /) -> RuleBook:
        """A book from a dict with ``id``, ``title``, ``sources``, ``rules`` and, for a changed book, ``base``.

        Args:
            said: ``rules`` has values by key, written as in :meth:`derive`; ``base`` is the id of a built-in book to
                start from; without it all other entries are silent.

        Raises:
            SeamwrightError: a part that is missing or unknown, an unknown key, a value outside its range, a book that
                contradicts itself.

        Example:
            >>> mine = RuleBook.from_dict({"id": "mine", "title": "Shop practice", "base": "metric",
            ...                            "rules": {"shear.double": {"value": 1.75, "clause": "shop tests"}}})
            >>> RuleBook.from_dict(mine.to_dict()) == mine
            True
        """
        found = _mapping("the rule book", said)
        if unknown := set(found) - {"id", "title", "sources", "rules", "base"}:
            raise SeamwrightError(
                f"{', '.join(map(repr, sorted(map(str, unknown))))} is no part of a rule book; it has id, title, "
                "sources, rules and base",
                kind=ErrorKind.UNKNOWN_KEY,
                field="rule",
            )
        for part in ("id", "title", "rules"):
            if part not in found:
                raise SeamwrightError(f"the rule book has no {part}; give it", kind=ErrorKind.MISSING, field="rule")
        listed = found.get("sources", [])
        if not isinstance(listed, (list, tuple)):
            raise SeamwrightError(f"sources = {listed!r} is not a list of texts; give one", field="rule")
        sources = [text("source", s) for s in cast("Sequence[Any]", listed)]
        statements = [_statement(key, x, Label.OWN) for key, x in _mapping("rules", found["rules"]).items()]
        base = found.get("base")
        ident, title = text("id", found["id"]), text("title", found["title"])
        if base is not None:
            start = book(text("base", base))
            return RuleBook._of(_native.Book(ident, title, [*start.sources, *sources], statements, start._core))
        return RuleBook._of(_native.Book(ident, title, sources, statements, None))

    def to_toml(self) -> str:
        """The book as TOML, from which :meth:`from_toml` makes it again; one line for each statement."""
        lines = [
            f"id = {_native.toml_value(self.id)}",
            f"title = {_native.toml_value(self.title)}",
            "sources = [",
            *(f"    {_native.toml_value(source)}," for source in self.sources),
            "]",
            "",
            "# Values in mm, MPa or one; `source` is the number in the list above, from 1 (0: none).",
            "[rules]",
        ]
        for s in self.statements:
            parts = [("value", s.value), ("label", s.label.value), ("source", s.source), ("clause", s.clause)]
            lines.append(f"{_native.toml_value(s.key)} = {_native.toml_inline(parts)}")
        return "\n".join(lines) + "\n"

    @staticmethod
    def from_toml(said: str, /) -> RuleBook:
        """A book from TOML with the parts of :meth:`from_dict`.

        Raises:
            SeamwrightError: a text that is not TOML, and what :meth:`from_dict` refuses.

        Example:
            >>> mine = RuleBook.from_toml('id = "mine"\\ntitle = "Shop"\\nbase = "indian"\\n[rules]\\n"pitch.step" = 5')
            >>> mine["pitch.step"]
            5.0
        """
        return RuleBook.from_dict(_native.toml_read(text("TOML", said)))

    @staticmethod
    def load(path: PathLike) -> RuleBook:
        """A book from a TOML file in UTF-8.

        Raises:
            SeamwrightError: as :meth:`from_toml`.
            OSError: a file that cannot be read.
        """
        try:
            return RuleBook.from_toml(Path(path).read_text(encoding="utf-8"))
        except UnicodeDecodeError as error:
            raise SeamwrightError(f"{path}: not UTF-8: {error.reason}; save it as UTF-8", field="rule") from None

    def save(self, path: PathLike) -> Path:
        """Saves the book as a TOML file, whole or not at all.

        Raises:
            OSError: a file that cannot be written.
        """
        return write(path, self.to_toml())

    def _repr_html_(self) -> str:
        from ._html import rule_book

        return rule_book(self)


def _mapping(name: str, x: Any) -> Mapping[Any, Any]:
    if not isinstance(x, Mapping):
        raise SeamwrightError(f"{name} is of type {type(x).__name__}; give a dict", field="rule")
    return cast("Mapping[Any, Any]", x)


_BOOKS = {core.head()[0]: RuleBook._of(core) for core in _native.built_in_books()}


def books() -> tuple[RuleBook, ...]:
    """The built-in rule books.

    Example:
        >>> [b.id for b in books()][:3]
        ['metric', 'indian', 'us-code']
    """
    return tuple(_BOOKS.values())


def book(id: str, /) -> RuleBook:
    """A built-in rule book by its short name.

    Raises:
        SeamwrightError: no such book (``WRONG_CHOICE``).

    Example:
        >>> book("german-1908").title
        'German boiler law of 17 December 1908'
    """
    try:
        return _BOOKS[id]
    except (KeyError, TypeError):
        raise SeamwrightError(
            f"book = {id!r} is not built in; take one of {', '.join(map(repr, _BOOKS))}, or make one by RuleBook.load",
            kind=ErrorKind.WRONG_CHOICE,
            field="book",
        ) from None


def book_argument(x: Any) -> RuleBook:
    """A rule book, as an argument: itself or the short name of a built-in one."""
    return x if isinstance(x, RuleBook) else book(x)

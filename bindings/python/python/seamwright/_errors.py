"""The one exception of the package."""

from __future__ import annotations

from enum import Enum


class ErrorKind(Enum):
    """Why nothing was computed. The numbers are the core's and are the same in Rust, Python and C."""

    NOT_FINITE = 1
    TOO_SMALL = 2
    TOO_LARGE = 3
    MISSING = 4
    NOT_FOR_THIS_FORM = 5
    INCONSISTENT = 6
    HOLES_FILL_PITCH = 7
    ROWS_OVERLAP = 8
    HOLE_CUTS_EDGE = 9
    RIVET_EXCEEDS_HOLE = 10
    BEYOND_TABLE = 11
    NO_STANDARD_SIZE = 12
    NO_ADMISSIBLE_PITCH = 13
    NO_ADMISSIBLE_MARGIN = 14
    UNKNOWN_KEY = 15
    WRONG_CHOICE = 16
    UNREADABLE = 17
    NO_SPACE = 18
    BOOK_UNSOUND = 19
    NO_PROBLEM = 20
    HOLES_OVERLAP = 21
    RIVET_TURNS = 22


class SeamwrightError(ValueError):
    """Nothing was computed, and why. A rule that is not met is no error: it is a finding of the analysis.

    Attributes:
        kind: what is wrong.
        field: name of the input at fault, as in ``pitch``.
        index: number of the row or line (from 1), 0 where there is none.
        value: the value at fault in ``unit``, None where there is none.
        limit: the limit that was passed in ``unit``, None where there is none.
        unit: symbol of the unit of value and limit, empty for pure numbers.
        entry: key of the rule-book entry behind the limit, empty where there is none.
        clause: the clause of that entry and how far it can be trusted, empty where there is none.
        hint: a value of ``hint_field`` that would do, None where none is known.
        hint_field: what the hint is about.

    Example:
        >>> import seamwright as sw
        >>> try:
        ...     sw.Form.lap(9)
        ... except sw.SeamwrightError as error:
        ...     print(error.kind.name, error.field, error.limit)
        TOO_LARGE rows 8.0
    """

    kind: ErrorKind
    field: str
    index: int
    value: float | None
    limit: float | None
    unit: str
    entry: str
    clause: str
    hint: float | None
    hint_field: str

    def __init__(
        self,
        message: str,
        *,
        kind: ErrorKind | int = ErrorKind.UNREADABLE,
        field: str = "",
        index: int = 0,
        value: float | None = None,
        limit: float | None = None,
        unit: str = "",
        entry: str = "",
        clause: str = "",
        hint: float | None = None,
        hint_field: str = "",
    ) -> None:
        super().__init__(message)
        self.kind = ErrorKind(kind)
        self.field = field
        self.index = index
        self.value = value
        self.limit = limit
        self.unit = unit
        self.entry = entry
        self.clause = clause
        self.hint = hint
        self.hint_field = hint_field

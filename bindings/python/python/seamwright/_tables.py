"""Tables of the core: bounded inputs, kinds of errors."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from . import _native
from ._errors import ErrorKind
from ._records import Record


@dataclass(frozen=True, kw_only=True)
class Bound(Record):
    """The range of one input, in its unit."""

    key: str
    unit: str
    least: float
    greatest: float
    what: str


BOUNDS: Mapping[str, Bound] = {
    row["key"]: Bound(key=row["key"], unit=row["unit"], least=row["lo"], greatest=row["hi"], what=row["what"])
    for row in _native.bounds()
}
"""Every bounded input, by the name that errors carry."""

ERROR_KINDS: Mapping[ErrorKind, tuple[str, str]] = {
    ErrorKind(number): (text, remedy) for number, text, remedy in _native.error_kinds()
}
"""What is wrong and what to do about it, by kind of error."""

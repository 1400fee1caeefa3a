"""Files written whole or not at all."""

from __future__ import annotations

import os
import tempfile
from collections.abc import Callable, Mapping
from pathlib import Path

from ._errors import ErrorKind, SeamwrightError

PathLike = str | os.PathLike[str]


def write(path: PathLike, text: str) -> Path:
    """Writes a text as UTF-8 beside its place and moves it there: a reader never meets half of it.

    Raises:
        OSError: a folder that is not there, no room, no permission; an old file then stays as it was.
    """
    target = Path(path)
    descriptor, name = tempfile.mkstemp(dir=target.parent, prefix=f".{target.name}.")
    try:
        with os.fdopen(descriptor, "w", encoding="utf-8", newline="") as file:
            file.write(text)
            file.flush()
            os.fsync(file.fileno())
        # mkstemp is for the owner alone; a sheet is like any other new file.
        mask = os.umask(0)
        os.umask(mask)
        os.chmod(name, 0o666 & ~mask)
        os.replace(name, target)
    except BaseException:
        os.unlink(name)
        raise
    return target


def by_suffix(path: PathLike, kinds: Mapping[str, Callable[[], str]]) -> Path:
    """Writes what the end of a file's name asks for."""
    suffix = Path(path).suffix.lower()
    if suffix not in kinds:
        known = ", ".join(kinds)
        raise SeamwrightError(
            f"a file ending in {suffix!r} is not known here; take one of {known}",
            kind=ErrorKind.WRONG_CHOICE,
            field="path",
        )
    return write(path, kinds[suffix]())

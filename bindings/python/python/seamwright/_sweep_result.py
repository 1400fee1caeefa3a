"""What a sweep gives, and its ways into other libraries."""

from __future__ import annotations

from dataclasses import dataclass
from importlib.util import find_spec
from typing import TYPE_CHECKING, Any

from . import _native
from ._check import Analysis, Cut, check
from ._errors import ErrorKind, SeamwrightError
from ._html import page, table
from ._joint import Form, Joint
from ._materials import Materials
from ._quantities import Force, Quantity
from ._records import Record
from ._rules import RuleBook

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

NO_MODE = 65535
"""In the place of a mode's number: this row has none, because it could not be computed."""


@dataclass(frozen=True, kw_only=True)
class SweepMode(Record):
    """A way to fail, by its number in a sweep: what tears; how each row of rivets fails depends on the joint."""

    number: int
    name: str
    cut: Cut


def library(name: str, what: str) -> Any:
    """A module of an optional package, or an error that says how to get it."""
    from importlib import import_module

    try:
        return import_module(name)
    except ImportError:
        package = name.partition(".")[0]
        raise SeamwrightError(
            f"{what} needs {package}, which is not installed: pip install {package}", kind=ErrorKind.MISSING
        ) from None


def at_row(error: SeamwrightError, row: int | tuple[int, ...]) -> SeamwrightError:
    """The same error with the place of its row before the message."""
    e = error
    return SeamwrightError(
        f"row {row}: {e}", kind=e.kind, field=e.field, index=e.index, value=e.value, limit=e.limit, unit=e.unit,
        entry=e.entry, clause=e.clause, hint=e.hint, hint_field=e.hint_field,
    )  # fmt: skip


@dataclass(frozen=True, kw_only=True, eq=False, repr=False)
class Sweep(Record):
    """Joints by the array: each row is, bit for bit, what :func:`seamwright.check` finds for that joint.

    Attributes:
        form, book: the form of all joints, and the rule book.
        inputs: what was given, by name, as quantities.
        shape: shape of all results.
        axes: names of the inputs along the axes of a grid; empty where rows were given.
        efficiency: over all modes; not a number where the row could not be computed.
        book_efficiency: ``J``, over the modes that the book counts.
        credited: the lesser of both, under the book's cap.
        mode: number of the governing mode, as in ``modes``; 65535 where the row could not be computed.
        status: 0 for a row that was computed, else the number of the :class:`seamwright.ErrorKind`.
        modes: the table of modes, in the documented order; of equal modes the first governs.
        strengths: strengths of the modes asked for, by number, for the whole strip.
    """

    form: Form
    book: RuleBook
    inputs: dict[str, Quantity[Any]]
    shape: tuple[int, ...]
    axes: tuple[str, ...]
    efficiency: NDArray[np.float64]
    book_efficiency: NDArray[np.float64]
    credited: NDArray[np.float64]
    mode: NDArray[np.uint16]
    status: NDArray[np.uint8]
    modes: tuple[SweepMode, ...]
    strengths: dict[int, Force[Any]]

    def __repr__(self) -> str:
        said = f"{self.size} joints"
        if self.failed:
            said += f", {self.failed} not computed"
        if self.size > self.failed:
            import numpy as np

            least, most = np.nanmin(self.efficiency), np.nanmax(self.efficiency)
            said += f", efficiency {100 * least:.2f} to {100 * most:.2f} %"
        return f"<Sweep: {self.form.name}; {said}; book {self.book.id!r}>"

    def __len__(self) -> int:
        return self.shape[0] if self.shape else 1

    def __eq__(self, other: object) -> bool:
        if not isinstance(other, Sweep):
            return NotImplemented
        import numpy as np

        def same(a: Any, b: Any) -> bool:
            return bool(np.array_equal(a, b, equal_nan=a.dtype.kind == "f"))

        mine = (self.form, self.book, self.inputs.keys(), self.axes, self.strengths.keys())
        theirs = (other.form, other.book, other.inputs.keys(), other.axes, other.strengths.keys())
        return (
            mine == theirs
            and all(np.array_equal(x._value, other.inputs[k]._value, equal_nan=True) for k, x in self.inputs.items())
            and all(same(getattr(self, name), getattr(other, name)) for name in _RESULTS)
            and all(same(x.N, other.strengths[k].N) for k, x in self.strengths.items())
        )

    __hash__ = None  # type: ignore[assignment]

    def __setstate__(self, state: dict[str, Any]) -> None:
        self.__dict__.update(state)
        for name in _RESULTS:
            state[name].flags.writeable = False

    @property
    def size(self) -> int:
        """Number of joints."""
        return int(self.efficiency.size)

    @property
    def failed(self) -> int:
        """Number of rows that could not be computed."""
        import numpy as np

        return int(np.count_nonzero(self.status))

    def _place(self, row: int | tuple[int, ...]) -> int:
        import numpy as np

        try:
            if isinstance(row, tuple):
                at = tuple(i + n if i < 0 else i for i, n in zip(row, self.shape, strict=True))
                return int(np.ravel_multi_index(at, self.shape))
            return range(self.size)[row]
        except (IndexError, TypeError, ValueError):
            raise SeamwrightError(
                f"row {row!r} is not in a sweep of shape {self.shape}; count from 0", kind=ErrorKind.TOO_LARGE
            ) from None

    def _row(self, row: int | tuple[int, ...]) -> dict[str, float | None]:
        import numpy as np

        from ._sweep import native_columns

        at = self._place(row)
        values = {
            name: x._value if isinstance(x._value, float) else float(np.broadcast_to(x._value, self.shape).flat[at])
            for name, x in self._placed().items()
        }
        return native_columns(self.form, values)

    def _placed(self) -> dict[str, Any]:
        """Inputs as they broadcast: an axis of a grid along its own dimension."""
        if not self.axes:
            return dict(self.inputs)
        placed = dict(self.inputs)
        for at, name in enumerate(self.axes):
            x = self.inputs[name]
            along = [1] * len(self.axes)
            along[at] = -1
            placed[name] = type(x)._make(x._value.reshape(along), x.unit)
        return placed

    def joint(self, row: int | tuple[int, ...]) -> tuple[Joint, Materials]:
        """The joint of a row and its stresses, to look closer at it.

        Args:
            row: its number from 0 in the order of the elements, or its indices.

        Raises:
            SeamwrightError: what its status stands for; a row that there is not.

        Example:
            >>> steel = Materials(tension=MPa(80), rivet_shear=MPa(60), bearing=MPa(120))
            >>> found = sweep(form=Form.lap(2), book="metric", materials=steel, pitch=mm([60, 71]), plate=mm(13),
            ...     hole=mm(23))
            >>> found.joint(1)[0].pitch
            mm(71)
        """
        try:
            joint, materials = _native.sweep_joint(self.form._native(), self.book._core, self._row(row), 1, 0)
        except SeamwrightError as error:
            raise at_row(error, row) from None
        return Joint._of(joint), Materials._of(materials)

    def analysis(self, row: int | tuple[int, ...]) -> Analysis:
        """The check of one row, with all its modes and findings.

        Args:
            row: its number from 0 in the order of the elements, or its indices.

        Raises:
            SeamwrightError: as ``joint``.
        """
        joint, materials = self.joint(row)
        return check(joint=joint, materials=materials, book=self.book)

    def error(self, row: int | tuple[int, ...]) -> SeamwrightError | None:
        """Why a row could not be computed, naming the field; None where it was.

        Args:
            row: its number from 0 in the order of the elements, or its indices.

        Raises:
            SeamwrightError: a row that there is not.

        Example:
            >>> steel = Materials(tension=MPa(80), rivet_shear=MPa(60), bearing=MPa(120))
            >>> found = sweep(form=Form.lap(2), book="metric", materials=steel, pitch=mm([71, 20]), plate=mm(13),
            ...     hole=mm(23))
            >>> found.error(0), found.error(1).field
            (None, 'pitch')
        """
        if self.status.flat[self._place(row)] == 0:
            return None
        try:
            self.joint(row)
        except SeamwrightError as error:
            return error
        return None

    def to_dict(self) -> dict[str, Any]:
        """A dict of arrays of the sweep's shape: the inputs that vary, in the units given (``pitch_mm``), the
        efficiencies, ``mode`` and ``status`` as small integers, and ``strength_<mode>_N`` of the modes asked for.
        """
        import numpy as np

        found: dict[str, Any] = {
            f"{name}_{x.unit}": np.broadcast_to(x.to(x.unit), self.shape)
            for name, x in self._placed().items()
            if x.shape
        }
        found.update((name, getattr(self, name)) for name in _RESULTS)
        found.update((f"strength_{number}_N", force.N) for number, force in self.strengths.items())
        return found

    def _columns(self) -> dict[str, Any]:
        return {name: x.reshape(-1) for name, x in self.to_dict().items()}

    def _words(self) -> tuple[list[str], list[str]]:
        """Names of the modes, and of the states by their number."""
        return [mode.name for mode in self.modes], ["computed", *(kind.name.lower() for kind in ErrorKind)]

    def to_pandas(self) -> Any:
        """A pandas DataFrame, one line for each joint; mode and status as categories with their names.

        Raises:
            SeamwrightError: pandas is not installed.
        """
        import numpy as np

        pandas: Any = library("pandas", "a DataFrame")
        columns, (modes, states) = self._columns(), self._words()
        codes = np.where(columns["mode"] == NO_MODE, -1, columns["mode"].astype(np.int32))
        columns["mode"] = pandas.Categorical.from_codes(codes, categories=modes)
        columns["status"] = pandas.Categorical.from_codes(columns["status"], categories=states)
        frame = pandas.DataFrame(columns)
        frame.attrs["caution"] = _native.caution()
        return frame

    def to_polars(self) -> Any:
        """A polars DataFrame, one line for each joint; mode and status as enumerations with their names.

        Raises:
            SeamwrightError: polars is not installed.
        """
        polars: Any = library("polars", "a DataFrame")
        columns, (modes, states) = self._columns(), self._words()
        for name, words in (("mode", modes), ("status", states)):
            numbers = polars.Series(columns[name]).cast(polars.UInt32)
            known = numbers.set(numbers == NO_MODE, None) if name == "mode" else numbers
            columns[name] = polars.Series(words, dtype=polars.Enum(words)).gather(known)
        return polars.DataFrame(columns)

    def to_arrow(self) -> Any:
        """A pyarrow Table, one line for each joint; mode and status as dictionaries with their names.

        Raises:
            SeamwrightError: pyarrow is not installed.
        """
        arrow: Any = library("pyarrow", "a Table")
        columns, (modes, states) = self._columns(), self._words()
        for name, words in (("mode", modes), ("status", states)):
            numbers = columns[name]
            unknown = numbers == NO_MODE if name == "mode" else None
            indices = arrow.array(numbers, mask=unknown, type=arrow.uint32())
            columns[name] = arrow.DictionaryArray.from_arrays(indices, arrow.array(words, arrow.string()))
        return arrow.table(columns, metadata={"caution": _native.caution()})

    def __arrow_c_stream__(self, requested_schema: object = None) -> object:
        """The table for any library that reads Arrow streams (the PyCapsule interface), made by pyarrow or polars.

        Raises:
            SeamwrightError: neither of them is installed.
        """
        for name, made in (("pyarrow", self.to_arrow), ("polars", self.to_polars)):
            if find_spec(name) is not None:
                return made().__arrow_c_stream__(requested_schema)
        raise SeamwrightError(
            "an Arrow stream needs pyarrow or polars, and neither is installed: pip install pyarrow",
            kind=ErrorKind.MISSING,
        )

    def to_xarray(self) -> Any:
        """An xarray Dataset of a grid: the axes as coordinates with their units, modes and states as CF flags.

        Raises:
            SeamwrightError: the sweep is no grid, or xarray is not installed.
        """
        xarray: Any = library("xarray", "a Dataset")
        if not self.axes:
            raise SeamwrightError(
                "a Dataset has axes; sweep a grid of them, as in sweep(..., outer=True)", kind=ErrorKind.INCONSISTENT
            )
        axes = {name: (name, (x := self.inputs[name]).to(x.unit), {"units": x.unit}) for name in self.axes}
        data: dict[str, Any] = {name: (self.axes, getattr(self, name)) for name in _RESULTS}
        modes, states = self._words()
        for name, words in (("mode", modes), ("status", states)):
            flags = {
                "flag_values": list(range(len(words))),
                "flag_meanings": " ".join(w.replace(" ", "_") for w in words),
            }
            data[name] = (*data[name], flags)
        for number, force in self.strengths.items():
            data[f"strength_{number}"] = (self.axes, force.N, {"units": "N", "long_name": modes[number]})
        attributes = {"form": self.form.name, "book": self.book.id, "caution": _native.caution()}
        return xarray.Dataset(data, coords=axes, attrs=attributes)

    def _repr_html_(self) -> str:
        import numpy as np

        numbers, counts = np.unique(self.mode[self.status == 0], return_counts=True)
        rows = [(self.modes[int(n)].name, str(int(c))) for n, c in zip(numbers, counts, strict=True)]
        return page(table(repr(self)[1:-1], ("governing mode", "joints"), rows))


_RESULTS = ("efficiency", "book_efficiency", "credited", "mode", "status")

"""Sweeps: one form, one rule book, and arrays of dimensions and stresses."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING, Any, Literal, Union

from . import _native
from ._check import Cut
from ._convert import flag, instance, items, measured
from ._enums import JointKind
from ._errors import ErrorKind, SeamwrightError
from ._joint import Form, form_argument
from ._materials import Materials
from ._quantities import Force, Length, PintLike, Quantity, Stress
from ._rules import RuleBook, book_argument
from ._sweep_result import Sweep, SweepMode, library

if TYPE_CHECKING:
    from collections.abc import Iterator

LengthsLike = Union[Length[Any], PintLike]
StressesLike = Union[Stress[Any], PintLike]

_LENGTHS = (
    "pitch", "plate", "hole", "rivet", "other_plate", "strap", "wide_strap", "narrow_strap", "margin", "back_pitch",
)  # fmt: skip
_STRESSES = ("tension", "rivet_shear", "bearing", "shear_out", "other_tension", "other_bearing")
_ARGUMENTS = (*_LENGTHS, *_STRESSES)

PIECE = 1 << 16
"""Rows that are worked out between two looks at Ctrl-C and the progress bar; their columns fit a common cache."""


def native_columns(form: Form, given: dict[str, Any]) -> dict[str, Any]:
    """Columns by the names of the core, from those of the arguments; what does not fit the form is refused."""

    def refuse(name: str, kind: ErrorKind, why: str) -> SeamwrightError:
        return SeamwrightError(f"{name} {why}", kind=kind, field=name)

    wrong = ("strap", "wide_strap", "narrow_strap") if form.kind is JointKind.LAP else ("other_plate",)
    for name in wrong:
        if name in given:
            raise refuse(name, ErrorKind.NOT_FOR_THIS_FORM, f"does not belong to a {form.name}: leave it out")
    if "strap" in given and ("wide_strap" in given or "narrow_strap" in given):
        raise refuse("strap", ErrorKind.INCONSISTENT, "is for both straps: give it, or wide_strap and narrow_strap")
    for name, other in (("wide_strap", "narrow_strap"), ("narrow_strap", "wide_strap")):
        if name in given and other not in given:
            raise refuse(other, ErrorKind.MISSING, f"is needed where {name} is given: give it, or strap for both")
    columns = {name: given.get(name) for name in (*_LENGTHS, *_STRESSES) if name not in _STRAPS}
    columns["other"] = next((given[name] for name in ("other_plate", "strap", "wide_strap") if name in given), None)
    columns["narrow"] = given.get("narrow_strap")
    return columns


_STRAPS = ("other_plate", "strap", "wide_strap", "narrow_strap")


def _stated(materials: Materials | None, given: dict[str, Any]) -> dict[str, Quantity[Any]]:
    """All inputs as quantities, in the order of the arguments; those of the materials where nothing else is said."""
    if materials is not None:
        instance(Materials, "materials", materials, "Materials(tension=MPa(80), rivet_shear=MPa(60))")
        plate, other = materials.plate, materials.other
        # A sweep takes what is not said of the other plate or strap from the plate; a single check need not.
        if plate.shear_out != other.shear_out or (plate.bearing is not None and other.bearing is None):
            raise SeamwrightError(
                "materials.other: a sweep takes one shear_out for all members, and a bearing stress for both or none; "
                "give other=PlateStress(...) both",
                kind=ErrorKind.INCONSISTENT,
                field="materials",
            )
        said = {
            "tension": plate.tension,
            "rivet_shear": materials.rivet_shear,
            "bearing": plate.bearing,
            "shear_out": plate.shear_out,
            "other_tension": None if other.tension == plate.tension else other.tension,
            "other_bearing": None if other.bearing == plate.bearing else other.bearing,
        }
        given = {**given, **{name: x for name, x in said.items() if given[name] is None}}
    found: dict[str, Quantity[Any]] = {}
    for name in _ARGUMENTS:
        x = given[name]
        if x is None and name in ("pitch", "plate", "hole", "tension", "rivet_shear"):
            hint = ": give materials=Materials(...), or the stresses" if name in _STRESSES else ""
            raise SeamwrightError(f"{name} is needed here and was not given{hint}", kind=ErrorKind.MISSING, field=name)
        if x is not None:
            cls: type[Quantity[Any]] = Length if name in _LENGTHS else Stress
            found[name] = cls._make(measured(cls, name, x), x.unit if isinstance(x, Quantity) else None)
    return found


def _shape(inputs: dict[str, Quantity[Any]], outer: bool) -> tuple[tuple[int, ...], tuple[str, ...]]:
    """Shape of the results, and the names of the axes of a grid."""
    import numpy as np

    arrays = {name: x.shape for name, x in inputs.items() if x.shape}
    if not outer:
        try:
            return np.broadcast_shapes(*arrays.values()), ()
        except ValueError:
            shapes = ", ".join(f"{name} {shape}" for name, shape in arrays.items())
            raise SeamwrightError(
                f"arrays of these shapes do not go together: {shapes}; make them alike, or sweep a grid by outer=True",
                kind=ErrorKind.INCONSISTENT,
                field=next(iter(arrays)),
            ) from None
    for name, shape in arrays.items():
        if len(shape) != 1:
            raise SeamwrightError(
                f"{name} has the shape {shape}, and an axis of a grid is a list of values; give one dimension",
                kind=ErrorKind.INCONSISTENT,
                field=name,
            )
    return tuple(shape[0] for shape in arrays.values()), tuple(arrays)


class _Columns:
    """The inputs, piece by piece, without ever writing out more than a piece of what is broadcast."""

    def __init__(self, inputs: dict[str, Any], shape: tuple[int, ...]) -> None:
        import numpy as np

        self.rows = int(np.prod(shape, dtype=np.int64)) if shape else 1
        self.constant: dict[str, float] = {}
        self.views: dict[str, Any] = {}
        self.axes: dict[str, tuple[bytes, int]] | None = {}
        for name, x in inputs.items():
            if isinstance(x, float):
                self.constant[name] = x
                continue
            padded = (1,) * (len(shape) - x.ndim) + x.shape
            self.views[name] = x.reshape(-1) if padded == shape else np.broadcast_to(x, shape).flat
            # A short array along neighbouring dimensions, and along them only, is an axis of the core.
            along = [at for at, n in enumerate(padded) if n != 1] or [0]
            whole = all(padded[at] == shape[at] for at in range(along[0], along[-1] + 1)) or x.size == 1
            if self.axes is None or not whole or x.size > PIECE:
                self.axes = None
            else:
                each = int(np.prod(shape[along[-1] + 1 :], dtype=np.int64))
                self.axes[name] = (x.tobytes(), 1 if x.size == 1 else each)

    def pieces(self, form: Form) -> Iterator[tuple[dict[str, Any], int, int, int]]:
        """Native columns, rows of the native sweep, first row in it, and count."""
        # Nothing to do is still to be looked at.
        for begin in range(0, max(self.rows, 1), PIECE):
            count = min(PIECE, self.rows - begin)
            if self.axes and len(self.axes) > 1:
                yield native_columns(form, {**self.constant, **self.axes}), self.rows, begin, count
            else:
                values = {name: view[begin : begin + count].tobytes() for name, view in self.views.items()}
                yield native_columns(form, {**self.constant, **values}), count, 0, count


def _bar(progress: bool, rows: int) -> Any:
    if not progress:
        from contextlib import nullcontext

        return nullcontext()
    tqdm = library("tqdm.auto", "progress").tqdm
    return tqdm(total=rows, unit="joint", unit_scale=True)


def _wanted(strengths: Any, modes: tuple[SweepMode, ...]) -> list[int]:
    if isinstance(strengths, str):
        if strengths != "all":
            raise SeamwrightError(
                f"strengths = {strengths!r} is neither 'all' nor a list of numbers of modes",
                kind=ErrorKind.WRONG_CHOICE,
                field="strengths",
            )
        return [mode.number for mode in modes]
    wanted = list(dict.fromkeys(items((), "strengths", strengths, "[0, 1]")))
    for number in wanted:
        if isinstance(number, bool) or not isinstance(number, int) or not 0 <= number < len(modes):
            raise SeamwrightError(
                f"strengths holds {number!r}, and the modes have the numbers 0 to {len(modes) - 1}",
                kind=ErrorKind.NOT_FOR_THIS_FORM,
                field="strengths",
            )
    return wanted


def sweep(
    *,
    form: Form,
    book: RuleBook | str,
    pitch: LengthsLike,
    plate: LengthsLike,
    hole: LengthsLike,
    rivet: LengthsLike | None = None,
    other_plate: LengthsLike | None = None,
    strap: LengthsLike | None = None,
    wide_strap: LengthsLike | None = None,
    narrow_strap: LengthsLike | None = None,
    margin: LengthsLike | None = None,
    back_pitch: LengthsLike | None = None,
    materials: Materials | None = None,
    tension: StressesLike | None = None,
    rivet_shear: StressesLike | None = None,
    bearing: StressesLike | None = None,
    shear_out: StressesLike | None = None,
    other_tension: StressesLike | None = None,
    other_bearing: StressesLike | None = None,
    outer: bool = False,
    strengths: Literal["all"] | Sequence[int] = (),
    strict: bool = False,
    progress: bool = False,
) -> Sweep:
    """Checks joints by the array: all of one form under one book, each as :func:`seamwright.check` would, bit for bit.

    Arrays of any strides, float64 or float32, go together by the rules of NumPy; one number stands for all rows. What
    is masked is no number. A row that cannot be computed has its status and never loses the others. Other threads run
    meanwhile, and Ctrl-C is answered after each piece of 65536 joints.

    Args:
        form: the form of all joints.
        book: a rule book, or the short name of a built-in one.
        pitch: pitch of the outer row, or the width of the strip where that row has several rivets in it.
        plate: thickness of the plate (plate A of a lap).
        hole, rivet: hole and cold rivet of every row; the rivet as large as the hole where not given.
        other_plate: plate B of a lap.
        strap: the single strap, or both straps; or ``wide_strap`` and ``narrow_strap``.
        margin, back_pitch: centre of the edge row to the plate's edge; distance from each row to the next.
        materials: the stresses, the same for all rows.
        tension, rivet_shear, bearing, shear_out, other_tension, other_bearing: stresses by the array, in the place of
            those of ``materials``; ``other`` is plate B or the straps.
        outer: every array is an axis of a grid, in the order of the arguments here; the grid is nowhere written out.
        strengths: numbers of modes whose strengths are wanted as well, or ``"all"``.
        strict: raise at the first row that cannot be computed.
        progress: show a bar (needs tqdm).

    Raises:
        SeamwrightError: a bare number; shapes that do not go together; a number for all rows outside its range; what
            does not belong to the form; with ``strict`` also a row that cannot be computed, named with its field.

    Example:
        >>> steel = Materials(tension=MPa(80), rivet_shear=MPa(60), bearing=MPa(120))
        >>> found = sweep(form=Form.lap(2), book="metric", materials=steel, pitch=mm([60, 71, 20]), plate=mm(13),
        ...     hole=mm(23))
        >>> found.efficiency.round(4).tolist()  # (60 - 23)/60; Khurmi and Gupta, Example 9.4
        [0.6167, 0.6752, nan]
        >>> found.modes[found.mode[0]].name, found.failed
        ('plate A tears at row 1', 1)
        >>> sweep(form=Form.lap(2), book="metric", materials=steel, pitch=mm([60, 71]), plate=mm([10, 12, 14]),
        ...     hole=mm(23), outer=True).shape
        (2, 3)
    """
    given = {name: x for name, x in locals().items() if name in _ARGUMENTS}
    stated, rules, core = form_argument(form), book_argument(book), form._native()
    inputs = _stated(materials, given)
    try:
        import numpy as np
    except ImportError:
        raise SeamwrightError("a sweep needs NumPy, which is not installed: pip install numpy") from None
    shape, axes = _shape(inputs, flag("outer", outer))
    strict, progress = flag("strict", strict), flag("progress", progress)
    table = _native.sweep_modes(core, any(name in inputs for name in _STRAPS))
    modes = tuple(
        SweepMode(number=n, name=name, cut=Cut(plate=cut[0], other=cut[1], narrow=cut[2]))
        for n, (cut, name) in enumerate(table)
    )
    wanted = _wanted(strengths, modes)
    along = {name: n for n, name in enumerate(axes)}

    def placed(name: str, x: Any) -> Any:
        return x.reshape([-1 if n == along[name] else 1 for n in range(len(axes))]) if name in along else x

    columns = _Columns({name: placed(name, x._value) for name, x in inputs.items()}, shape)
    results: dict[str, Any] = {
        name: np.empty(columns.rows, dtype)
        for name, dtype in (
            ("efficiency", np.float64), ("book_efficiency", np.float64), ("credited", np.float64), ("mode", np.uint16),
            ("status", np.uint8),
        )
    }  # fmt: skip
    forces = np.empty((len(wanted), columns.rows))
    made = Sweep(
        form=stated, book=rules, inputs=inputs, shape=shape, axes=axes, modes=modes, strengths={},
        **{name: x.reshape(shape) for name, x in results.items()},
    )  # fmt: skip
    begin = 0
    with _bar(progress, columns.rows) as bar:
        for piece, rows, first, count in columns.pieces(stated):
            found: dict[str, Any] = dict(_native.sweep(core, rules._core, piece, rows, first, count, wanted))
            here = slice(begin, begin + count)
            for name, x in results.items():
                x[here] = np.frombuffer(found[name], x.dtype)
            forces[:, here] = np.frombuffer(found["strengths"]).reshape(len(wanted), count)
            if strict and results["status"][here].any():
                _refuse(made, begin + int(np.flatnonzero(results["status"][here])[0]))
            begin += count
            if bar is not None:
                bar.update(count)
    for x in results.values():
        x.flags.writeable = False
    for name in results:
        getattr(made, name).flags.writeable = False
    for number, force in zip(wanted, forces, strict=True):
        made.strengths[number] = Force[Any]._make(force.reshape(shape))
    return made


def _refuse(made: Sweep, row: int) -> None:
    """Raises the error of a row, named by its indices where there are several."""
    import numpy as np

    made.joint(row if len(made.shape) < 2 else tuple(int(i) for i in np.unravel_index(row, made.shape)))

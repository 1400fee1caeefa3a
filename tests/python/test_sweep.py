"""Sweeps against single checks, bit for bit; shapes, strides, masks and errors."""

import copy
import itertools
import math
import pickle
import signal
import struct
import subprocess
import sys
import threading

import numpy as np
import pytest
import seamwright as sw
from hypothesis import given
from hypothesis import strategies as st
from seamwright import MPa, _native, _sweep, inch, mm

FORMS = [
    sw.Form.lap(1),
    sw.Form.lap(3),
    sw.Form.single_strap(2),
    sw.Form.double_strap(3),
    sw.Form.double_strap(3).omit_alternate(),
    sw.Form.unequal_straps(4),
    sw.Form(kind="double strap", rows=[(1, 2), (2, 2), (3, 2)]),
]
BOOKS = [book.id for book in sw.books()]


def bits(x):
    return struct.pack("d", x)


def same_as_single(found, row, make):
    """A row of a sweep and the check of its joint: the same bits, or the same error."""
    try:
        joint, materials = make()
        single = sw.check(joint=joint, materials=materials, book=found.book)
    except sw.SeamwrightError as error:
        assert found.status.flat[row] == error.kind.value
        assert math.isnan(found.efficiency.flat[row]) and found.mode.flat[row] == sw.NO_MODE
        said = found.error(row)
        assert (said.kind, said.field, said.value, said.limit) == (error.kind, error.field, error.value, error.limit)
        assert str(said).startswith(f"row {row}: ")
        return
    assert found.status.flat[row] == 0 and found.error(row) is None
    for mine, its in (
        (found.efficiency, single.efficiency),
        (found.book_efficiency, single.book_efficiency),
        (found.credited, single.credited),
    ):
        assert bits(mine.flat[row]) == bits(its)
    assert found.modes[found.mode.flat[row]].cut == single.governing.cut
    for number, force in found.strengths.items():
        assert bits(force.N.flat[row]) == bits(single.modes[number].strength.N)


LENGTHS = st.one_of(
    st.floats(1, 60), st.integers(6, 30).map(float), st.sampled_from([math.nan, math.inf, -1.0, 0.0, 1e300])
)


@given(
    form=st.sampled_from(FORMS),
    book=st.sampled_from(BOOKS),
    rows=st.lists(st.tuples(st.floats(1.1, 9), LENGTHS, LENGTHS, LENGTHS, st.floats(40, 400)), min_size=1, max_size=5),
    straps=st.booleans(),
    margin=st.booleans(),
)
def test_rows_are_single_checks(form, book, rows, straps, margin):
    share, plate, hole, strap, tension = (np.array(x) for x in zip(*rows, strict=True))
    pitch = share * hole * form.densest_rivets
    name = "other_plate" if form.kind is sw.JointKind.LAP else "strap"
    others = {name: strap} if straps else {}
    if margin:
        others["margin"] = hole * 1.5
    found = sw.sweep(
        form=form, book=book, pitch=mm(pitch), plate=mm(plate), hole=mm(hole), tension=MPa(tension),
        rivet_shear=MPa(60), bearing=MPa(120), strengths="all", **{key: mm(x) for key, x in others.items()},
    )  # fmt: skip
    for row in range(len(rows)):

        def make(row=row):
            given = {key: mm(float(x[row])) for key, x in others.items()}
            joint = sw.Joint(
                form=form, pitch=mm(float(pitch[row])), plate=mm(float(plate[row])), hole=mm(float(hole[row])), **given
            )
            return joint, sw.Materials(tension=MPa(float(tension[row])), rivet_shear=MPa(60), bearing=MPa(120))

        same_as_single(found, row, make)


@pytest.fixture
def seam(steel):
    """A sweep of a double-strap seam of three rows, as keywords."""
    form = sw.Form.double_strap(3)
    return {"form": form, "book": "metric", "materials": steel, "plate": mm(12), "hole": mm(21), "strap": mm(9)}


PITCH = np.linspace(60.0, 140.0, 24)


def test_a_published_joint():
    """Khurmi & Gupta, Example 9.4: 71 mm pitch, 23 mm holes, 13 mm plates; printed efficiency 67.5 %."""
    steel = sw.Materials(tension=MPa(80), rivet_shear=MPa(60), bearing=MPa(120))
    found = sw.sweep(
        form=sw.Form.lap(2), book="metric", materials=steel, pitch=mm([71]), plate=mm(13), hole=mm(23), strengths=[0]
    )
    assert round(100 * found.efficiency[0], 1) == 67.5
    # By hand: tearing at the outer row, (71 - 23) 13 x 80 N.
    assert found.strengths[0].N.tolist() == [(71 - 23) * 13 * 80]


def test_strides_and_kinds_of_numbers(seam):
    wide = np.zeros((24, 3))
    wide[:, 1] = PITCH
    whole = sw.sweep(pitch=mm(PITCH), **seam)
    read_only = PITCH.copy()
    read_only.flags.writeable = False
    for pitch in (wide[:, 1], np.flip(np.flip(PITCH).copy()), read_only, PITCH.astype(">f8"), PITCH.tolist()):
        assert sw.sweep(pitch=mm(pitch), **seam).efficiency.tobytes() == whole.efficiency.tobytes()
    # float32 and integers are taken at their value.
    for kind in (np.float32, np.int64):
        coarse = PITCH.astype(kind)
        assert np.array_equal(
            sw.sweep(pitch=mm(coarse), **seam).efficiency, sw.sweep(pitch=mm(coarse.astype(float)), **seam).efficiency
        )
    square = PITCH.reshape(4, 6)
    found = sw.sweep(pitch=mm(np.asfortranarray(square)), **seam)
    assert found.shape == (4, 6) and np.array_equal(found.efficiency, whole.efficiency.reshape(4, 6))
    assert sw.sweep(pitch=mm(square.T), **seam).efficiency.tobytes() == whole.efficiency.reshape(4, 6).T.tobytes()


def test_inches_give_what_millimetres_give(seam):
    found = sw.sweep(pitch=inch(PITCH / 25.4), **seam)
    assert next(iter(found.to_dict())) == "pitch_inch"
    exact = sw.sweep(pitch=mm(PITCH / 25.4 * 25.4), **seam)
    assert np.array_equal(found.efficiency, exact.efficiency)


@pytest.mark.parametrize("shapes", [[(4, 1), (6,)], [(4, 1, 2), (3, 1)], [(1,), (5, 2)], [(2, 1, 3), (1, 4, 1)], [()]])
def test_broadcasting_is_that_of_numpy(seam, shapes):
    rng = np.random.default_rng(8)
    names = ["pitch", "plate"][: len(shapes)]
    values = [rng.uniform(*span, shape) for span, shape in zip([(70, 140), (8, 20)], shapes, strict=False)]
    given = {**seam, "pitch": mm(80)}
    given.update(zip(names, map(mm, values), strict=True))
    found = sw.sweep(**given)
    assert found.shape == np.broadcast_shapes(*shapes)
    full = {name: mm(np.broadcast_to(x, found.shape).copy()) for name, x in zip(names, values, strict=True)}
    assert np.array_equal(found.efficiency, sw.sweep(**{**given, **full}).efficiency)
    assert np.array_equal(found.to_dict().get("pitch_mm", 0), full["pitch"].mm if shapes != [()] else 0)


def test_pieces_join(seam, monkeypatch):
    """Every border of a piece, whether columns or axes."""
    plates = np.linspace(8, 20, 7)
    grid = {**seam, "pitch": mm(PITCH), "plate": mm(plates), "outer": True, "strengths": [0, 3]}
    whole, by_axes = sw.sweep(pitch=mm(PITCH), **seam), sw.sweep(**grid)
    rows = [mm(x.reshape(-1).copy()) for x in np.meshgrid(PITCH, plates, indexing="ij")]
    written_out = sw.sweep(**{**grid, "pitch": rows[0], "plate": rows[1], "outer": False})
    for piece in (1, 2, 23, 24, 25, 32, 100):
        monkeypatch.setattr(_sweep, "PIECE", piece)
        assert sw.sweep(pitch=mm(PITCH), **seam) == whole
        again = sw.sweep(**grid)
        assert again == by_axes and again.shape == (24, 7)
        for name in ("efficiency", "book_efficiency", "credited", "mode", "status"):
            assert getattr(again, name).tobytes() == getattr(written_out, name).tobytes()
        assert np.array_equal(again.strengths[3].N.reshape(-1), written_out.strengths[3].N)


def test_a_grid_is_not_written_out(seam):
    """The inputs of a grid of a million joints take no more room than its axes."""
    pitches, plates, holes = np.linspace(90, 140, 100), np.linspace(8, 20, 100), np.linspace(16, 24, 100)
    seen = []
    native = _native.sweep

    def spy(form, book, columns, *rest):
        seen.append(sum(len(x[0]) if isinstance(x, tuple) else 0 for x in columns.values()))
        assert not any(isinstance(x, bytes) for x in columns.values())
        return native(form, book, columns, *rest)

    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(_native, "sweep", spy)
        found = sw.sweep(**{**seam, "pitch": mm(pitches), "plate": mm(plates), "hole": mm(holes), "outer": True})
    assert found.shape == (100, 100, 100) and max(seen) == 3 * 100 * 8
    for at in itertools.product((0, 41, 99), repeat=3):
        joint = found.joint(at)[0]
        assert (joint.pitch.mm, joint.plate.mm, joint.rows[0].hole.mm) == (pitches[at[0]], plates[at[1]], holes[at[2]])
        assert found.analysis(at).efficiency == found.efficiency[at]


@pytest.mark.parametrize("outer", [False, True])
def test_nothing_to_sweep(seam, outer):
    found = sw.sweep(pitch=mm(np.zeros(0)), outer=outer, strengths="all", **seam)
    assert found.shape == (0,) and found.failed == 0 and len(found) == 0
    assert found.to_dict()["mode"].dtype == np.uint16
    assert "0 joints" in repr(found) and found._repr_html_()
    with pytest.raises(sw.SeamwrightError, match="row 0"):
        found.joint(0)
    # What is the same in all rows is looked at all the same.
    with pytest.raises(sw.SeamwrightError, match="plate"):
        sw.sweep(**{**seam, "pitch": mm(np.zeros(0)), "plate": mm(-1)})


def test_masked_is_no_number(seam):
    pitch = np.ma.masked_array(PITCH, mask=np.arange(24) % 5 == 0)
    found = sw.sweep(pitch=mm(pitch), **seam)
    assert np.array_equal(found.status != 0, np.ma.getmaskarray(pitch))
    assert set(found.status[pitch.mask]) == {sw.ErrorKind.NOT_FINITE.value}
    whole = sw.sweep(pitch=mm(PITCH), **seam)
    assert np.array_equal(found.efficiency[~pitch.mask], whole.efficiency[~pitch.mask])


def test_errors_name_row_and_field(seam):
    pitch = PITCH.copy()
    pitch[[3, 17]] = np.nan, 12.0
    found = sw.sweep(pitch=mm(pitch), **seam)
    assert found.failed == 2 and np.flatnonzero(found.status).tolist() == [3, 17]
    assert (found.error(17).kind, found.error(17).field) == (sw.ErrorKind.HOLES_FILL_PITCH, "pitch")
    with pytest.raises(sw.SeamwrightError, match=r"^row 3: pitch") as said:
        sw.sweep(pitch=mm(pitch), strict=True, **seam)
    assert (said.value.kind, said.value.field) == (sw.ErrorKind.NOT_FINITE, "pitch")
    with pytest.raises(sw.SeamwrightError, match=r"^row \(2, 5\): pitch"):
        sw.sweep(pitch=mm(np.where(np.arange(18) == 17, 1e9, PITCH[:18]).reshape(3, 6)), strict=True, **seam)
    for row in (24, -25, (1, 1), "3"):
        with pytest.raises(sw.SeamwrightError, match="is not in a sweep"):
            found.error(row)
    assert found.joint(-1)[0] == found.joint(23)[0]


@pytest.mark.parametrize(
    ("changed", "kind", "field"),
    [
        ({"pitch": 71}, "UNREADABLE", "pitch"),
        ({"pitch": PITCH}, "UNREADABLE", "pitch"),
        ({"pitch": MPa(PITCH)}, "UNREADABLE", "pitch"),
        ({"plate": mm(0.1)}, "TOO_SMALL", "plate"),
        ({"plate": mm(np.ones(5))}, "INCONSISTENT", "pitch"),
        ({"plate": mm(np.ones((2, 2))), "outer": True}, "INCONSISTENT", "plate"),
        ({"other_plate": mm(9)}, "NOT_FOR_THIS_FORM", "other_plate"),
        ({"form": sw.Form.lap(2)}, "NOT_FOR_THIS_FORM", "strap"),
        ({"wide_strap": mm(9)}, "INCONSISTENT", "strap"),
        ({"strap": None, "wide_strap": mm(9)}, "MISSING", "narrow_strap"),
        ({"strap": None, "narrow_strap": mm(9)}, "MISSING", "wide_strap"),
        ({"form": sw.Form.single_strap(2), "strap": None, "wide_strap": mm(9), "narrow_strap": mm(9)},
         "NOT_FOR_THIS_FORM", "narrow_strap"),
        ({"materials": None}, "MISSING", "tension"),
        ({"materials": sw.Materials(tension=MPa(80), rivet_shear=MPa(60))}, "MISSING", "bearing"),
        ({"materials": sw.Materials(tension=MPa(80), rivet_shear=MPa(60), bearing=MPa(120),
                                    other=sw.PlateStress(tension=MPa(70)))}, "INCONSISTENT", "materials"),
        ({"hole": None}, "MISSING", "hole"),
        ({"strengths": [99]}, "NOT_FOR_THIS_FORM", "strengths"),
        ({"strengths": "some"}, "WRONG_CHOICE", "strengths"),
    ],
)  # fmt: skip
def test_refused_as_a_whole(seam, changed, kind, field):
    with pytest.raises(sw.SeamwrightError) as said:
        sw.sweep(**{**seam, "pitch": mm(PITCH), **changed})
    assert (said.value.kind.name, said.value.field) == (kind, field)


def test_stresses_of_the_other_plate(seam):
    """Materials with straps of their own stresses, or the same by keywords."""
    own = sw.PlateStress(tension=MPa(70), bearing=MPa(110))
    steel = sw.Materials(tension=MPa(80), rivet_shear=MPa(60), bearing=MPa(120), other=own)
    by_materials = sw.sweep(pitch=mm(PITCH), **{**seam, "materials": steel})
    by_name = sw.sweep(pitch=mm(PITCH), other_tension=MPa(70), other_bearing=MPa(110), **seam)
    assert np.array_equal(by_materials.efficiency, by_name.efficiency)
    joint = by_name.joint(4)[0]
    assert sw.check(joint=joint, materials=steel, book="metric").efficiency == by_name.efficiency[4]


def test_results_do_not_change(seam):
    found = sw.sweep(pitch=mm(PITCH), strengths=[0], **seam)
    for again in (pickle.loads(pickle.dumps(found)), copy.copy(found), copy.deepcopy(found)):
        assert again == found
        for array in (again.efficiency, again.mode):
            with pytest.raises(ValueError, match="read-only"):
                array[0] = 1
    assert found != sw.sweep(pitch=mm(PITCH + 1), strengths=[0], **seam)
    with pytest.raises(AttributeError):
        found.mode = 3
    with pytest.raises(TypeError, match="unhashable"):
        hash(found)
    said = found.to_dict()
    assert list(said) == [
        "pitch_mm", "efficiency", "book_efficiency", "credited", "mode", "status", "strength_0_N",
    ]  # fmt: skip
    assert "Sweep: treble-riveted" in repr(found) and sw.CAUTION.split()[0] in found._repr_html_()


def test_levels_are_told():
    levels = _native.sweep_levels()
    print("levels of this processor:", levels)
    assert levels[-1] == "baseline" and len(set(levels)) == len(levels)


def test_other_threads_run_meanwhile(seam):
    """While one thread sweeps, another counts."""
    done, counted = threading.Event(), [0]

    def work():
        for _ in range(20):
            sw.sweep(pitch=mm(np.resize(PITCH, 200_000)), strengths=[0], **seam)
        done.set()

    thread = threading.Thread(target=work)
    thread.start()
    while not done.wait(0.001):
        counted[0] += 1
    thread.join()
    assert counted[0] > 3


def test_ctrl_c_is_answered_between_pieces():
    """A sweep that would take minutes ends with the signal."""
    source = """
import numpy as np, os, signal, threading, seamwright as sw
from seamwright import mm, MPa
steel = sw.Materials(tension=MPa(80), rivet_shear=MPa(60), bearing=MPa(120))
axes = {"pitch": mm(np.linspace(80, 140, 200)), "plate": mm(np.linspace(8, 20, 200)),
        "hole": mm(np.linspace(16, 24, 100))}
# What runs in the background of a shell ignores the signal from birth.
signal.signal(signal.SIGINT, signal.default_int_handler)
threading.Timer(0.5, lambda: os.kill(os.getpid(), signal.SIGINT)).start()
# A form without a kernel, and all modes: slow enough.
form = sw.Form(kind="double strap", rows=[(1, 2), (2, 2), (3, 2), (4, 2)])
try:
    sw.sweep(form=form, book="metric", materials=steel, strap=mm(9), outer=True, strengths=[0], **axes)
    print("finished")
except KeyboardInterrupt:
    print("stopped")
"""
    said = subprocess.run([sys.executable, "-c", source], capture_output=True, text=True, timeout=120, check=False)
    assert said.stdout == "stopped\n", said
    assert said.returncode in (0, -signal.SIGINT)


def test_without_numpy():
    """The package itself needs no NumPy; a sweep says that it does."""
    source = """
import sys
sys.modules["numpy"] = None
import seamwright as sw
from seamwright import mm, MPa
steel = sw.Materials(tension=MPa(80), rivet_shear=MPa(60), bearing=MPa(120))
try:
    sw.sweep(form=sw.Form.lap(1), book="metric", materials=steel, pitch=mm(60), plate=mm(10), hole=mm(20))
except sw.SeamwrightError as error:
    print(error)
"""
    said = subprocess.run([sys.executable, "-c", source], capture_output=True, text=True, check=True)
    assert said.stdout == "a sweep needs NumPy, which is not installed: pip install numpy\n"

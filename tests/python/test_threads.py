"""Many threads at once give what one thread gives.

Run by pytest, and by a Python without the global lock as a program by itself, without pytest and NumPy (the gate, where
such a Python is on the machine): there nothing but the package keeps the threads apart.
"""

import pickle
import sys
import sysconfig
import threading

import seamwright as sw
from seamwright import MPa, kN, mm

THREADS = 8
STEEL = sw.Materials(tension=MPa(80), rivet_shear=MPa(60), bearing=MPa(120))
# One of each that all threads use: read by all, changed by none.
SHARED = sw.size(form=sw.Form.double_strap(2), plate=mm(12), materials=STEEL, book="metric")


def one(n):
    """All kinds of work on figures of its own."""
    design = sw.size(form=sw.Form.lap(1 + n % 3), plate=mm(8 + n), materials=STEEL, book="metric")
    wider = sw.Joint(form=sw.Form.lap(2), pitch=mm(60 + n), plate=mm(13), hole=mm(23))
    found = sw.search(plates=mm(10 + n % 4), materials=STEEL, book="metric", forms=[sw.Form.lap(2)])
    hanging = sw.GroupLoad(y=kN(-20 - n), at=(mm(300), mm(0)))
    corners = [(mm(0), mm(0)), (mm(0), mm(80)), (mm(80), mm(0)), (mm(80), mm(80))]
    group = sw.check_group(places=corners, load=hanging, hole=mm(21), shear=MPa(60), book="structural")
    try:
        sw.Joint(form=sw.Form.lap(1), pitch=mm(10 + n), plate=mm(6), hole=mm(40))
        refused = "not refused"
    except sw.SeamwrightError as error:
        refused = f"{error.kind} {error.field} {error}"
    return (
        design.to_dict(),
        pickle.loads(pickle.dumps(design)) == design,
        sw.check(joint=wider, materials=STEEL, book="metric").efficiency,
        found.best[0].efficiency,
        group.to_dict(),
        design.working("plain"),
        str(SHARED.drawing()),
        SHARED.analysis.efficiency,
        refused,
    )


def test_many_threads_at_once():
    numbers = range(24)
    alone = [one(n) for n in numbers]
    # Neither empty nor all alike, or the comparison below would say nothing.
    assert len({done[2] for done in alone}) == len(alone)
    assert all("pitch" in done[-1] for done in alone)
    # Khurmi and Gupta, Example 9.4: the lap with a pitch of 71 mm.
    assert abs(alone[11][2] - 0.6752) < 1e-4
    together, start = {}, threading.Barrier(THREADS)

    def work(thread):
        start.wait()
        together[thread] = [one(n) for n in numbers]

    threads = [threading.Thread(target=work, args=(n,)) for n in range(THREADS)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    assert sorted(together) == list(range(THREADS))
    for done in together.values():
        assert done == alone


def test_the_global_lock_stays_off_where_it_is_off():
    """The package does not ask a Python without the lock to take it again."""
    if sysconfig.get_config_var("Py_GIL_DISABLED"):
        assert not sys._is_gil_enabled()


if __name__ == "__main__":
    test_many_threads_at_once()
    test_the_global_lock_stays_off_where_it_is_off()

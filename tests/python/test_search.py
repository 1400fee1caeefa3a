"""The search through Python: against every joint of a small grid, one by one."""

import os
import signal
import threading
from itertools import pairwise

import pytest
import seamwright as sw

FORMS = [sw.Form.lap(1), sw.Form.lap(2), sw.Form.double_strap(1)]


@pytest.fixture
def steel():
    return sw.Materials(tension=sw.MPa(80), rivet_shear=sw.MPa(60), bearing=sw.MPa(120))


def every_joint(steel):
    """Efficiency, form, pitch and size of all joints that meet the book, sized one by one."""
    book = sw.book("metric")
    for form in FORMS:
        for size in book.series:
            for pitch in range(26, 130):
                try:
                    made = sw.size(
                        form=form, plate=sw.mm(12), materials=steel, book=book, hole=size.hole, rivet=size.rivet,
                        pitch=sw.mm(pitch),
                    )  # fmt: skip
                except sw.SeamwrightError:
                    continue
                if not made.analysis.open_findings:
                    yield made.analysis.credited, form, pitch, size


def test_it_is_the_best_of_all(steel):
    found = sw.search(plates=sw.mm(12), materials=steel, book="metric", forms=FORMS)
    credited, form, *_ = max(every_joint(steel), key=lambda joint: joint[0])
    assert found.best[0].efficiency == pytest.approx(credited, abs=1e-9)
    assert found.best[0].form == form
    assert found.analysis.credited == found.best[0].efficiency
    t = found.tally
    assert t.grid == t.fitting + t.by_bound + sum(n for _, n in t.excluded)
    assert [c.behind is None for c in found.best] == [True] + [False] * (len(found.best) - 1)
    assert "the best" in found._repr_html_()


def test_each_limit_limits(steel):
    """The best of what the limit leaves, the limit itself inside, and of a different joint each time."""
    joints = list(every_joint(steel))
    limits = {
        "rows_most": (1, lambda form, pitch, size: form.row_count <= 1),
        "rivet_least": (sw.mm(24), lambda form, pitch, size: size.rivet.mm >= 24),
        "rivet_most": (sw.mm(14), lambda form, pitch, size: size.rivet.mm <= 14),
        "pitch_most": (sw.mm(50), lambda form, pitch, size: pitch <= 50),
        "holes": ([sw.mm(21)], lambda form, pitch, size: size.hole.mm == 21),
        "forms": ([sw.Form.lap(1)], lambda form, pitch, size: form == sw.Form.lap(1)),
    }
    won = []
    for name, (limit, inside) in limits.items():
        found = sw.search(**{"plates": sw.mm(12), "materials": steel, "book": "metric", "forms": FORMS, name: limit})
        won.append(max(credited for credited, *joint in joints if inside(*joint)))
        assert found.best[0].efficiency == pytest.approx(won[-1], abs=1e-9), name
    assert len(set(won)) == len(won)
    assert {size.rivet.mm for *_, size in joints} >= {14.0, 24.0}


def test_nothing_fits_and_says_why(steel):
    found = sw.search(plates=sw.mm(12), materials=steel, book="metric", forms=FORMS, efficiency_least=0.99)
    assert found.best == ()
    assert found.joint is None
    assert "efficiency" in max(found.tally.excluded, key=lambda x: x[1])[0]
    with pytest.raises(sw.SeamwrightError):
        found.analysis


def test_the_front_rises(steel):
    joints = sw.front(
        plates=[sw.mm(12)], materials=steel, book="metric", forms=FORMS, head="button", length_rule="boiler-button"
    )
    assert len(joints) > 3
    for a, b in pairwise(joints):
        assert a.mass_per_metre < b.mass_per_metre
        assert a.efficiency < b.efficiency


def test_wrong_limits_are_refused(steel):
    for wrong in (
        {"plates": 12},
        {"plates": []},
        {"objective": "beauty"},
        {"objective": "mass"},
        {"forms": ["lap"]},
        {"rows_most": 99},
        {"efficiency_least": 2.0},
        {"head": "button"},
    ):
        with pytest.raises(sw.SeamwrightError):
            sw.search(**{"plates": sw.mm(12), "materials": steel, "book": "metric", **wrong})


def long_search(steel, search=sw.search, **other):
    """A grid of a hundredth of a millimetre over many plates: many seconds of search."""
    fine = sw.book("structural").derive(id="fine", title="Fine steps (invented)", changes={"pitch.step": sw.mm(0.01)})
    plates = [sw.mm(5 + n / 50) for n in range(1500)]
    return search(
        plates=plates, materials=steel, book=fine, head="button", length_rule="boiler-button", any_finding=True, **other
    )


@pytest.mark.parametrize("search", [sw.search, sw.front])
def test_a_signal_ends_a_long_search(steel, search):
    """An interrupt from outside, as Ctrl-C sends it; the thread that sends it runs meanwhile."""
    other = {"objective": "mass"} if search is sw.search else {}
    kept = signal.signal(signal.SIGINT, signal.default_int_handler)
    sender = threading.Timer(0.3, os.kill, (os.getpid(), signal.SIGINT))
    sender.start()
    try:
        with pytest.raises(KeyboardInterrupt):
            long_search(steel, search, **other)
    finally:
        sender.cancel()
        sender.join()
        signal.signal(signal.SIGINT, kept)
    # Nothing is left behind: the next search runs to its end.
    assert sw.search(plates=sw.mm(12), materials=steel, book="metric", forms=FORMS).best


def test_what_a_handler_raises_comes_out(steel):
    class Enough(Exception):
        pass

    def handler(number, frame):
        raise Enough

    kept = signal.signal(signal.SIGALRM, handler)
    try:
        signal.setitimer(signal.ITIMER_REAL, 0.2)
        with pytest.raises(Enough):
            long_search(steel, objective="mass")
    finally:
        signal.setitimer(signal.ITIMER_REAL, 0)
        signal.signal(signal.SIGALRM, kept)

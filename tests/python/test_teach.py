"""Problems for a class: keys by hand, sheets, marks."""

import math
import pickle

import pytest
import seamwright as sw

LAP = {"form": sw.Form.lap(2), "setting": "boiler", "task": "check", "effect": "shearing", "book": "metric"}


def answers(drawn, **changed):
    """The key, as a student would write it down."""
    right = {line.name: f"{line.value:.6g} {line.unit}" for line in drawn.key}
    return right | changed


@pytest.mark.parametrize("seed", range(12))
def test_a_key_by_hand(seed):
    """A lap of two rows: (p - d) t st, 2 pi/4 d^2 ss, 2 d t sc over p t st."""
    drawn = sw.problem(seed=seed, **LAP)
    joint, steel = drawn.joint, drawn.materials
    p, t, d = joint.pitch.mm, joint.plate.mm, joint.rows[0].hole.mm
    tear = (p - d) * t * steel.plate.tension.MPa
    shear = 2 * math.pi / 4 * d**2 * steel.rivet_shear.MPa
    bearing = 2 * d * t * steel.plate.bearing.MPa
    solid = p * t * steel.plate.tension.MPa
    key = {line.name: line.value for line in drawn.key}
    assert key["F0"] == pytest.approx(solid, rel=1e-12)
    assert key["Pt"] == pytest.approx(tear, rel=1e-12)
    assert key["Ps"] == pytest.approx(shear, rel=1e-12)
    assert key["Pc"] == pytest.approx(bearing, rel=1e-12)
    assert key["J"] == pytest.approx(min(tear, shear, bearing) / solid, rel=1e-12)
    # The wanted effect decides by three per cent, and nothing is left open.
    assert 1.03 * shear <= min(tear, bearing) * (1 + 1e-9)
    assert not drawn.analysis.open_findings


def test_the_same_number_gives_the_same_problem():
    drawn = sw.problem(seed=99, **LAP)
    assert sw.problem(seed=99, **LAP) == drawn
    assert sw.problem(seed=100, **LAP) != drawn
    again = pickle.loads(pickle.dumps(drawn))
    assert again == drawn
    assert again.sheet().text == drawn.sheet().text
    assert again.mark(answers(drawn)).credited == len(drawn.key)
    assert len({sw.problem(seed=n, **LAP).joint for n in range(40)}) > 20


def test_a_sizing_has_a_design_behind_it():
    drawn = sw.problem(seed=3, **{**LAP, "task": "size", "effect": "cap", "book": "indian"})
    assert drawn.design.pitch.decided is sw.Decided.CAP
    assert drawn.design.joint == drawn.joint
    assert drawn.design.working().text == drawn.working().text
    key = {line.name: line.value for line in drawn.key}
    # Indian Boiler Regulations, Reg. 177: greatest pitch C t + 41.28 mm, 2.62 for a lap of two rivets.
    assert key["pmax"] == pytest.approx(2.62 * drawn.joint.plate.mm + 41.28, rel=1e-9)
    assert key["p"] == math.floor(key["pmax"])


def test_sheets_in_every_dialect():
    drawn = [sw.problem(seed=seed, **{**LAP, "task": task}) for seed in (1, 2) for task in ("check", "size")]
    for dialect in ("markdown", "latex", "html", "plain"):
        plain = sw.problem_sheet(problems=drawn, audience="class", dialect=dialect).text
        full = sw.problem_sheet(problems=drawn, audience="teacher", dialect=dialect).text
        for text in (plain, full):
            assert "Design aid only" in text
            assert "Problem 4" in text
            assert "made up" in text
        assert "Drawn from number" in full
        assert "Drawn from number" not in plain
        assert len(full) > len(plain)
    inch = sw.problem_sheet(problems=drawn, units="inch")
    assert " in" in inch.text
    assert "psi" in inch.text
    assert inch._repr_markdown_() == inch.text
    assert "<iframe" in drawn[0]._repr_html_()


def test_a_problem_is_saved_with_its_working(tmp_path):
    drawn = sw.problem(seed=5, **LAP)
    assert "Working" in drawn.save(tmp_path / "p.md").read_text(encoding="utf-8")
    assert '"seed": 5' in drawn.save(tmp_path / "p.json").read_text(encoding="utf-8")
    assert "shearing decides" in repr(drawn)


def test_right_answers_are_not_accused():
    for seed in range(8):
        for task in ("check", "size"):
            drawn = sw.problem(seed=seed, **{**LAP, "task": task})
            marks = drawn.mark(answers(drawn))
            assert {mark.kind for mark in marks.marks} == {sw.MarkKind.RIGHT}, (seed, task)
            assert (marks.credited, marks.asked) == (len(drawn.key),) * 2


def test_a_slip_is_named_and_carried_over():
    """1.75 for double shear instead of 2; the strength and efficiency that follow from it are credited."""
    drawn = sw.problem(seed=4, **{**LAP, "form": sw.Form.double_strap(2)})
    key = {line.name: line.value for line in drawn.key}
    shear = key["Ps"] * 1.75 / 2
    follows = {"Ps": f"{shear:.6g} N", "P": f"{shear:.6g} N", "J": f"{shear / key['F0']:.5g}"}
    marks = drawn.mark(answers(drawn, **follows))
    assert marks["Ps"].kind is sw.MarkKind.SLIP
    assert marks["Ps"].convention.words == "1.75 for double shear"
    assert marks["Ps"].sure
    assert (marks["P"].kind, marks["J"].kind) == (sw.MarkKind.CARRIED_OVER,) * 2
    assert marks.credited == marks.asked - 1
    assert str(marks["Ps"]) == "Ps: wrong, 1.75 for double shear"
    assert "1.75 for double shear" in marks.text
    assert "1.75 for double shear" in marks._repr_html_()
    assert pickle.loads(pickle.dumps(marks)) == marks


def test_wrong_and_missing():
    drawn = sw.problem(seed=4, **LAP)
    some = answers(drawn, Ps="123.457 N")
    del some["Pc"]
    marks = drawn.mark(some)
    assert marks["Ps"].kind is sw.MarkKind.WRONG
    assert marks["Pc"].kind is sw.MarkKind.MISSING
    assert not marks["Pc"].credited
    with pytest.raises(sw.SeamwrightError, match="not asked"):
        marks["Zz"]


@pytest.mark.parametrize(
    ("wrong", "field"),
    [
        ({"seed": -1}, "seed"),
        ({"seed": 1.5}, "seed"),
        ({"seed": 2**64}, "seed"),
        ({"seed": "x"}, "seed"),
        ({"effect": "beauty"}, "effect"),
        ({"setting": "bridge"}, "setting"),
        ({"task": "guess"}, "task"),
        ({"form": 2}, "form"),
        ({"effect": "combined"}, "form"),
        ({"effect": "cap", "book": "us-code"}, "form"),
    ],
)
def test_what_is_wrong_is_said(wrong, field):
    with pytest.raises(sw.SeamwrightError) as caught:
        sw.problem(**{"seed": 1, **LAP, **wrong})
    assert caught.value.field == field, str(caught.value)


def test_sheets_are_of_one_book():
    one, other = sw.problem(seed=1, **LAP), sw.problem(seed=1, **{**LAP, "book": "indian"})
    for wrong in ([], [one, other], ["one"]):
        with pytest.raises(sw.SeamwrightError):
            sw.problem_sheet(problems=wrong)
    with pytest.raises(sw.SeamwrightError):
        one.mark({"Ps": 3})
    with pytest.raises(sw.SeamwrightError):
        sw.problem_sheet(problems=[one], audience="parents")

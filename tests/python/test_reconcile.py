"""Conventions behind stated figures, by hand and by refusal."""

import math
import pickle
import random

import pytest
import seamwright as sw

STEEL = sw.Materials(tension=sw.MPa(80), rivet_shear=sw.MPa(60), bearing=sw.MPa(120))
BUTT = sw.Joint(form=sw.Form.double_strap(1), pitch=sw.mm(60), plate=sw.mm(10), hole=sw.mm(19), rivet=sw.mm(18))
ONE = math.pi / 4 * 19**2 * 60
"""One plane of a rivet of 19 mm at 60 MPa."""


def asked(**stated):
    return sw.reconcile(joint=BUTT, materials=STEEL, book="metric", stated=stated)


@pytest.mark.parametrize(
    ("strength", "words"),
    [
        (1.875 * ONE, "1.875 for double shear"),
        (1.75 * ONE, "1.75 for double shear"),
        (2 * math.pi / 4 * 18**2 * 60, "the rivet's diameter in shear"),
        (2 * 3.14 / 4 * 19**2 * 60, "3.14 for pi"),
    ],
)
def test_a_habit_is_named(strength, words):
    found = asked(Ps=f"{strength:.1f} N")
    assert found.reproduced
    assert any(str(e) == words for e in found.explanations), [str(e) for e in found.explanations]
    assert found.best.value["Ps"] == pytest.approx(strength, rel=1e-5)
    assert found.as_it_stands.value["Ps"] == pytest.approx(2 * ONE, rel=1e-12)
    assert all(figure.met for figure in found.best.figures)
    assert not found.as_it_stands.figures[0].met


def test_the_book_as_it_stands():
    found = asked(Ps=f"{2 * ONE:.0f} N", Pt="32800 N")  # (60 - 19) 10 80
    assert (found.best.conventions, str(found.best)) == ((), "the rule book as it stands")
    assert "as it stands" in found.text


def test_units_as_they_stand_in_print():
    strength = 1.875 * ONE
    for said, scale in [("kN", 1000), ("lbf", 4.4482216152605), ("kgf", 9.80665), ("tons", 2240 * 4.4482216152605)]:
        found = asked(Ps=f"{strength / scale:.6g} {said}")
        assert str(found.best) == "1.875 for double shear", said
        assert found.best.figures[0].unit == said
        assert found.best.value["Ps"] == pytest.approx(strength / scale, rel=1e-9)
    percent = asked(J="47.5 %")  # bearing, 19 10 120, over the solid strip of 60 10 80
    assert str(percent.best) == "the rule book as it stands"
    assert percent.as_it_stands.value["J"] == pytest.approx(47.5, rel=1e-12)


def test_thousands_and_decimals_in_print():
    """1.875 ONE is 31 897.0 N. A space sets thousands apart; a comma before three digits may do so or not."""
    for said in ("31 897 N", "31 897.0 N", "31 897,0 N", "31897,0 N", "31.90 kN", "31,90 kN", "0,0319e6 N"):
        assert str(asked(Ps=said).best) == "1.875 for double shear", said
    with pytest.raises(sw.SeamwrightError, match=r"may mean 31897 or 31\.897") as caught:
        asked(Ps="31,897 N")
    assert caught.value.field == "figure"


def test_not_reproduced_says_what_is_nearest():
    found = asked(Ps="29123.4 N", Pt="32800 N")
    assert not found.reproduced
    assert found.best is None
    assert found.tried > 1000
    assert found.nearest.conventions
    assert found.text.startswith("Not reproduced: none of")
    assert "Design aid only" in found.text
    page = found._repr_html_()
    assert "NO</td>" in page
    assert "Not reproduced" in page


def test_random_figures_are_not_explained():
    """A slack of 0.1 mN in 34 kN leaves some thousand edits and pairs no chance to hit a figure at random."""
    draw = random.Random(1907)
    for _ in range(25):
        found = asked(Ps=(sw.N(draw.uniform(0.5, 1.5) * 2 * ONE), sw.N(1e-4)))
        assert not found.reproduced, str(found.best)


def test_of_a_design():
    """Khurmi & Gupta's a = 6 in the square-root rule: with 6.05 the hole of 12 mm is 20.958 mm."""
    design = sw.size(form=sw.Form.double_strap(2), plate=sw.mm(12), materials=STEEL, book="metric")
    found = sw.reconcile(design=design, stated={"d": f"{6.05 * math.sqrt(12):.3f} mm"})
    assert "6.05" in str(found.best)
    assert found.as_it_stands.value["d"] == pytest.approx(6 * math.sqrt(12), rel=1e-12)
    other = sw.reconcile(design=design, book="indian", stated={"d": f"{6 * math.sqrt(12):.3f} mm"})
    assert other.as_it_stands.value["d"] is not None


def test_shown_saved_and_kept(tmp_path):
    found = asked(Ps=f"{1.875 * ONE:.0f} N", Pt="32800 N")
    again = pickle.loads(pickle.dumps(found))
    assert again == found
    assert hash(again) == hash(found)
    assert found.to_dict()["explanations"][0]["conventions"][0]["words"] == "1.875 for double shear"
    assert "| Ps | all rivets in shear |" in found._repr_markdown_()
    for suffix, mark in [(".txt", "Reproduced"), (".md", "| symbol |"), (".html", "<table>"), (".json", '"tried"')]:
        assert mark in found.save(tmp_path / f"r{suffix}").read_text(encoding="utf-8")
    assert repr(found) == "<Reconciliation: reproduced with 1.875 for double shear>"


def test_the_catalogue_and_the_symbols():
    assert len(sw.CONVENTIONS) == len({c.words for c in sw.CONVENTIONS})
    assert {c.slip for c in sw.CONVENTIONS} == {True, False}
    assert sw.SYMBOLS["Ps"].what == "all rivets in shear"
    assert sw.SYMBOLS["eta"].latex == r"\eta"
    assert sw.SYMBOLS["Ps"].unit == "N"


def test_worked_with_conventions():
    said = {"joint": BUTT, "materials": STEEL, "book": "metric"}
    assert sw.worked(**said, names=["Ps", "F0"]) == {"Ps": pytest.approx(2 * ONE), "F0": pytest.approx(48000)}
    habit = next(c for c in sw.CONVENTIONS if c.words == "1.875 for double shear")
    assert sw.worked(**said, names=["Ps"], conventions=[habit])["Ps"] == pytest.approx(1.875 * ONE, rel=1e-12)
    design = sw.size(form=sw.Form.lap(1), plate=sw.mm(12), materials=STEEL, book="metric")
    assert sw.worked(design=design, names=["d"])["d"] == pytest.approx(6 * math.sqrt(12), rel=1e-12)
    # A strap convention means nothing for what has no double shear.
    assert sw.worked(design=design, names=["d"], conventions=[habit, habit])["d"] is None


@pytest.mark.parametrize(
    ("wrong", "field"),
    [
        ({"stated": {}}, "figure"),
        ({"stated": {"Q7": "3 N"}}, "figure"),
        ({"stated": {"Ps": "about 3 N"}}, "figure"),
        ({"stated": {"Ps": "3 mm"}}, "figure"),
        ({"stated": {"Ps": "3"}}, "figure"),
        ({"stated": {"Ps": 31897}}, "figure"),
        ({"stated": {"Ps": (sw.N(3), sw.N(0))}}, "figure"),
        ({"stated": {"Ps": (sw.N(3),)}}, "Ps"),
        ({"stated": {"WP": "3 MPa"}}, "figure"),
        ({"stated": [("Ps", "3 N")]}, "stated"),
        ({"stated": {"Ps": "3 N"}, "book": None}, "book"),
        ({"stated": {"Ps": "3 N"}, "joint": None}, "joint"),
        ({"stated": {"Ps": "3 N"}, "design": "d"}, "design"),
        ({"stated": {f"Fs.{n}": "3 N" for n in range(1, 26)}}, "figure"),
    ],
)
def test_what_is_wrong_is_said(wrong, field):
    with pytest.raises(sw.SeamwrightError) as caught:
        sw.reconcile(**{"joint": BUTT, "materials": STEEL, "book": "metric", **wrong})
    assert caught.value.field == field, str(caught.value)


def test_four_and_twenty_figures_at_most():
    said = {"joint": BUTT, "materials": STEEL, "book": "metric"}
    assert len(sw.worked(**said, names=[f"Fs.{n}" for n in range(1, 25)])) == 24
    with pytest.raises(sw.SeamwrightError, match="limit 24"):
        sw.worked(**said, names=[f"Fs.{n}" for n in range(1, 26)])


def test_three_conventions_are_too_many():
    with pytest.raises(sw.SeamwrightError, match="at most two"):
        sw.worked(joint=BUTT, materials=STEEL, book="metric", names=["Ps"], conventions=sw.CONVENTIONS[:3])

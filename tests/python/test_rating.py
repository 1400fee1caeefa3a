"""Ratings, by hand and by refusal."""

import pickle

import pytest
import seamwright as sw

LAP = {
    "form": sw.Form.lap(2),
    "pitch": sw.inch(3.5),
    "plate": sw.inch(0.45),
    "inside_diameter": sw.inch(48),
    "hole": sw.inch(15 / 16),
    "plates": "steel",
    "book": "us-existing",
}


@pytest.fixture
def rated():
    return sw.rate(**LAP, safety_factor=5, present=sw.psi(125), wastage_rate=sw.inch(0.005), from_drawing=["pitch"])


def test_by_hand(rated):
    """Two rivets of 15/16 in at 44 000 psi against a strip of 3.5 0.45 55 000; TS t E/(R FS)."""
    area = 3.141592653589793 / 4 * (15 / 16) ** 2
    efficiency = 2 * area * 44000 / (3.5 * 0.45 * 55000)
    pressure = 55000 * 0.45 * efficiency / (24 * 5)
    assert rated.analysis.efficiency == pytest.approx(efficiency, rel=1e-12)
    assert rated.allowed.psi == pytest.approx(pressure, rel=1e-9)
    assert rated.margin == pytest.approx(pressure / 125, rel=1e-9)
    assert (rated.governs, round(rated.years, 1)) == ("seam", 15.5)
    assert rated.allowed.unit == "psi"


def test_every_assumption_is_there(rated):
    said = {str(a) for a in rated.assumptions}
    assert "factor of safety: 5 (given)" in said
    assert any(a.about.startswith("thickness of the second plate") for a in rated.assumed())
    strengths = [a for a in rated.assumptions if a.basis is sw.Basis.TABULATED]
    assert len(strengths) == 3
    assert all(a.clause for a in strengths)


def test_a_rating_survives_a_pickle_and_shows_itself(rated):
    again = pickle.loads(pickle.dumps(rated))
    assert again == rated
    assert hash(again) == hash(rated)
    assert "What this rests on" in again.working(units="inch").text
    assert "<iframe" in rated._repr_html_()
    assert rated.to_dict()["allowed"]["unit"] == "psi"
    assert not rated.open_findings


def test_it_is_shown_in_the_units_that_went_in(rated, tmp_path):
    """An owner who measured in inches reads inches and psi, whatever the core counts in; words are as before."""
    page = rated.save(tmp_path / "r.html").read_text(encoding="utf-8")
    for text in (page, rated._repr_html_(), rated.working().text, rated.sheet().text, *map(str, rated.assumptions)):
        assert " mm" not in text and "MPa" not in text
    assert rated.working() == rated.working(units="inch")
    assert "144.6 psi" in rated.sheet().text
    metric = rated.working(units="metric").text
    assert "11.43 mm" in metric and "MPa" in metric  # 0.45 in
    said = [str(a) for a in rated.assumptions]
    assert "thickness of the plate at the seam: 0.45 in (measured)" in said
    assert "tensile strength of the plates: 55000 psi (tabulated)" in said
    assert any("at least 125 psi" in str(f) for f in rated.findings)
    # The data stay in the units of the core.
    second = rated.assumed()[0]
    assert (second.value, second.unit) == (pytest.approx(0.45 * 25.4), "mm")


@pytest.mark.parametrize("name", ["second_hand", "past_age_limit", "tested", "tubular", "stripped", "permissible"])
def test_a_word_is_neither_yes_nor_no(name):
    """The text "no" is not empty, and would count as yes."""
    with pytest.raises(sw.SeamwrightError) as caught:
        sw.rate(**LAP, safety_factor=5, **{name: "no"})
    assert (caught.value.field, caught.value.kind) == (name, sw.ErrorKind.WRONG_CHOICE)


def test_a_rating_is_saved_by_the_end_of_the_name(rated, tmp_path):
    for suffix, mark in [(".txt", "What this rests on"), (".html", "</html>"), (".json", '"present"')]:
        text = rated.save(tmp_path / f"r{suffix}").read_text(encoding="utf-8")
        assert mark in text, suffix
    with pytest.raises(sw.SeamwrightError, match=r"\.svg"):
        rated.save(tmp_path / "r.svg")
    assert not (tmp_path / "r.svg").exists()


def test_what_is_missing_or_wrong_is_said():
    with pytest.raises(sw.SeamwrightError) as caught:
        sw.rate(**LAP)
    assert caught.value.field == "safety_factor"
    for wrong, field in [
        ({"from_drawing": ["margin"]}, "from_drawing"),
        ({"plate": 11.4}, "plate"),
        ({"years_ago": 3.0}, "earlier_plate"),
        ({"riveting": "glue"}, "riveting"),
        ({"narrow_strap": sw.inch(0.3)}, "wide_strap"),
        ({"inside_diameter": sw.mm(-1)}, "ring_diameter"),
    ]:
        with pytest.raises(sw.SeamwrightError) as caught:
            sw.rate(**{**LAP, "safety_factor": 5, **wrong})
        assert field in (caught.value.field, str(caught.value).split(" ")[0]), str(caught.value)


def test_no_rounding_between_the_languages(rated):
    """X8 of the tricky joints: 144.6 psi thinned, and the plate governs later."""
    thinner = sw.rate(**{**LAP, "plate": sw.inch(0.35)}, safety_factor=5)
    assert thinner.allowed < rated.allowed
    assert "plate" in thinner.analysis.governing.name

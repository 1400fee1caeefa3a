"""The sheet that someone signs, of a check, a sizing and a rating."""

import pytest
import seamwright as sw


@pytest.fixture
def rated():
    return sw.rate(
        form=sw.Form.lap(2), pitch=sw.inch(3.5), plate=sw.inch(0.45), inside_diameter=sw.inch(48),
        hole=sw.inch(15 / 16), plates="steel", safety_factor=5, book="us-existing",
    )  # fmt: skip


def plain(text):
    return " ".join(text.replace("\xa0", " ").split())


def test_of_a_check_a_sizing_and_a_rating(found, design, rated):
    for of in (found, design, rated):
        for dialect in sw.Dialect:
            text = sw.sheet(of=of, object="Drum of an invented boiler", invented=True, dialect=dialect).text
            assert "invented" in plain(text), dialect
        assert "Design aid only" in plain(sw.sheet(of=of).text)
    # Khurmi & Gupta, Example 9.4: 49 857 over 73 840 N.
    assert "67.52 %" in plain(sw.sheet(of=found).text)
    assert "psi" in plain(sw.sheet(of=rated, units="inch").text)


def test_what_stands_in_its_head(found):
    said = {"title": "Seam A", "drawing_no": "T-7", "prepared": "A. Person", "date": "1911-04-03"}
    text = plain(sw.sheet(of=found, **said, known={"pitch": ("measured", "least of five readings")}).text)
    assert all(word in text for word in said.values())
    assert "least of five readings" in text
    strong = sw.Materials(tension=sw.MPa(400), rivet_shear=sw.MPa(300), bearing=sw.MPa(600))
    assert "400" in plain(sw.sheet(of=found, ultimate=strong, factor=5, footing="permissible").text)


def test_the_hash_follows_the_inputs(found, joint, steel, design, rated):
    same = sw.check(joint=joint, materials=steel, book="metric")
    assert sw.sheet_inputs(of=found) == sw.sheet_inputs(of=same)
    others = [sw.sheet_inputs(of=x)[1] for x in (found, design, rated)]
    others.append(sw.sheet_inputs(of=sw.check(joint=joint, materials=steel, book="indian"))[1])
    assert len(set(others)) == 4


@pytest.mark.parametrize(
    "wrong",
    [
        {"of": 3},
        {"dialect": "verse"},
        {"title": 3},
        {"footing": "soft"},
        {"factor": 5},
        {"known": {"beauty": ("given", "")}},
        {"known": {"pitch": ("guessed", "")}},
        {"ultimate": sw.Materials(tension=sw.MPa(400), rivet_shear=sw.MPa(300)), "factor": 4},
    ],
)
def test_what_is_wrong(found, wrong):
    with pytest.raises(sw.SeamwrightError):
        sw.sheet(**{"of": found, **wrong})

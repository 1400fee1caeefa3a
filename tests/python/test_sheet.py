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


def test_a_published_example_stands_on_its_sheet(found):
    # Printed by Khurmi & Gupta, Example 9.4: 49 920 N tearing, 71 760 N crushing.
    text = plain(found.sheet().text)
    assert "tearing at the outer row 49.92 67.61 %" in text
    assert "crushing of all rivets 71.76 97.18 %" in text
    assert "tearing at the outer row 49920 " in plain(found.sheet(forces="N").text)
    assert "tearing at the outer row 49,9200 " in plain(found.sheet(mark=",", decimals={"force": 4}).text)


def test_methods_of_results_are_the_function(found, design, rated):
    for of in (found, design, rated):
        assert of.sheet(title="T", units="inch") == sw.sheet(of=of, title="T", units="inch")


def fnv_1a(text):
    value = 0xCBF29CE484222325
    for byte in text.encode():
        value = (value ^ byte) * 0x100000001B3 % 2**64
    return value


def test_the_hash_is_what_the_documentation_says(found):
    # Test vectors of the authors of the hash.
    assert (fnv_1a(""), fnv_1a("foobar")) == (0xCBF29CE484222325, 0x85944171F73967E8)
    lines = ["seamwright inputs 1", "task=check", "book=metric", "kind=lap", "arrangement=zigzag", "row=1,1", "row=1,1"]
    numbers = {"strip": 71, "plate": 13, "other_plate": 13, "hole.1": 23, "rivet.1": 22, "hole.2": 23, "rivet.2": 22}
    numbers |= {"back_pitch.1": 40, "margin": 35}
    numbers |= {"tension": 80, "bearing": 120, "other_tension": 80, "other_bearing": 120, "shear": 60}
    lines += [f"{name}={value:.9f}" for name, value in numbers.items()]
    text, value = sw.sheet_inputs(of=found)
    inputs, rules = text.split("rule.", 1)
    assert inputs == "\n".join(lines) + "\n"
    for line in ("rule." + rules).splitlines():
        key, printed = line.removeprefix("rule.").split("=")
        assert printed == f"{found.book[key]:.9f}"
    assert value == fnv_1a(text) and f"{value:016x}" in found.sheet().text


def test_kilonewtons_and_decimals_in_the_working(found):
    text = found.working(forces="kN", decimals={"force": 2, "length": 1}).text
    assert "Ft.1 = (p - n.1 d.1) t st/1000" in text
    assert "Ft.1 = (71 - 1 x 23) x 13 x 80/1000" in text
    assert "Ft.1 = 49.92 kN" in text
    for wrong in ({"forces": "lbf"}, {"decimals": {"colour": 2}}, {"decimals": {"force": -1}}):
        with pytest.raises(sw.SeamwrightError):
            found.working(**wrong)

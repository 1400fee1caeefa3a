"""Comparison, sensitivity and tolerances: by hand, by finite differences, by refusal."""

import itertools
import pickle

import pytest
import seamwright as sw

STEEL = sw.Materials(tension=sw.MPa(80), rivet_shear=sw.MPa(60), bearing=sw.MPa(120))
LAP = sw.Joint(form=sw.Form.lap(2), pitch=sw.mm(60), plate=sw.mm(13), hole=sw.mm(23), rivet=sw.mm(22))
SAID = {"joint": LAP, "materials": STEEL, "book": "metric"}


def compared(**other):
    said = {"books": ["metric", "indian"], "forms": sw.Form.double_strap(2), "plate": sw.mm(12), "materials": STEEL}
    return sw.compare(**said | other)


def test_each_column_is_the_sizing_itself():
    forms = [sw.Form.lap(2), sw.Form.double_strap(2)]
    found = compared(forms=forms, books=["metric", sw.book("indian"), "us-code"])
    assert [c.letter for c in found.columns] == list("ABCDEF")
    for column, (form, book) in zip(
        found.columns, itertools.product(forms, ["metric", "indian", "us-code"]), strict=True
    ):
        sized = sw.size(form=form, plate=sw.mm(12), materials=STEEL, book=book)
        a = sized.analysis
        assert column.joint == sized.joint
        assert (column.efficiency, column.book_efficiency, column.credited) == (
            a.efficiency, a.book_efficiency, a.credited,
        )  # fmt: skip
        assert column.governing == a.governing
        assert column.open_rules == len(a.open_findings)
        assert column.pressure is column.no_pressure is None


def test_inches_stay_inches():
    text = compared(plate=sw.inch(0.5)).working().text
    assert "pitch, in " in text and " mm" not in text
    assert "pitch, mm " in compared(plate=sw.inch(0.5)).working(units="metric").text


def test_sixteen_columns_at_most():
    assert len(compared(books=["metric"] * 16).columns) == 16
    with pytest.raises(sw.SeamwrightError):
        compared(books=["metric"] * 17)


def test_where_they_part():
    """Reg. 177 takes 1.875 for double shear where textbooks take 2; nothing parts from itself."""
    found = compared()
    assert found["A"].partings == ()
    pitch = next(p for p in found["B"].partings if p.section == "Pitch")
    assert pitch.by_rule
    assert (pitch.first.name, pitch.first.value, pitch.other.value) == ("z", 2.0, 1.875)
    assert pitch.other.entry == "shear.double"
    assert "Reg. 177" in pitch.other.clause
    assert "Reg. 177" in str(pitch.other)
    same = compared(books=["metric", "metric"])
    assert same["B"].partings == ()


def test_with_a_shell_and_in_order():
    shell = sw.Shell(inside_diameter=sw.m(1), footing="permissible")
    found = compared(books=["metric", "structural"], shell=shell, sort_by="pressure")
    held, silent = found["A"], found["B"]
    # 2 st J (t - 1)/D.
    assert held.pressure.MPa == pytest.approx(2 * 80 * held.credited * 11 / 1000, rel=1e-12)
    assert silent.pressure is None
    assert "pressure" in silent.no_pressure
    assert [c.letter for c in found.columns] == ["A", "B"]
    by = {
        "credited": lambda c: -c.credited,
        "efficiency": lambda c: -c.efficiency,
        "pitch": lambda c: -c.joint.pitch.mm,
        "hole": lambda c: c.joint.rows[0].hole.mm,
        "open rules": lambda c: c.open_rules,
    }
    for word, key in by.items():
        columns = compared(books=["metric", "indian", "us-code", "german-1908"], sort_by=word).columns
        assert [key(c) for c in columns] == sorted(key(c) for c in columns), word


def test_a_column_that_cannot_be_sized_is_one_of_them():
    found = compared(forms=[sw.Form.lap(1)], books=["metric", "indian"], plate=sw.mm(200), sort_by="credited")
    refused = [c for c in found.columns if c.refused]
    assert refused
    assert refused[0].joint is refused[0].credited is refused[0].governing is None
    assert "cannot be sized" in repr(refused[0])
    assert "cannot be sized" in found.working().text


def test_a_comparison_shows_and_keeps_itself(tmp_path):
    found = compared(sort_by=sw.SortBy.CREDITED)
    text = found.working().text
    assert "Where they part" in text
    assert "Reg. 177" in text
    assert all(len(line) <= 80 for line in text.splitlines())
    again = pickle.loads(pickle.dumps(found))
    assert again == found
    assert again.working("latex").text == found.working("latex").text
    assert "<iframe" in found._repr_html_()
    assert "Where they part" in found._repr_markdown_()
    assert found.save(tmp_path / "c.md").read_text(encoding="utf-8") == found._repr_markdown_()
    assert found.to_dict()["columns"][0]["letter"] in "AB"


@pytest.mark.parametrize(
    "wrong",
    [
        {"books": []},
        {"forms": []},
        {"books": ["no such"]},
        {"forms": "lap"},
        {"plate": 12},
        {"sort_by": "beauty"},
        {"shell": 3},
        {"rivet": sw.mm(22)},
    ],
)
def test_what_cannot_be_compared(wrong):
    with pytest.raises(sw.SeamwrightError):
        compared(**wrong)
    with pytest.raises(sw.SeamwrightError, match="no column"):
        compared()["Z"]


def test_slopes_by_hand():
    """Tearing governs: eta = 1 - d/p."""
    found = sw.slopes(**SAID)
    assert found.efficiency == pytest.approx(1 - 23 / 60, rel=1e-12)
    assert found.strength == pytest.approx((60 - 23) * 13 * 80 / 60, rel=1e-12)
    for side in ("left", "right"):
        assert getattr(found["d.1"].efficiency, side) == pytest.approx(-1 / 60, rel=1e-12)
        assert getattr(found["p"].efficiency, side) == pytest.approx(23 / 60**2, rel=1e-12)
        assert getattr(found["p"].relative, side) == pytest.approx(23 / (60 - 23), rel=1e-12)
        assert getattr(found["t"].strength, side) == pytest.approx((60 - 23) * 80 / 60, rel=1e-12)
        assert getattr(found["ss"].efficiency, side) == 0.0
    assert (found["d.1"].what, found["d.1"].unit, found["d.1"].rule) == ("hole diameter, row 1", "mm", False)
    assert not found["d.1"].mode_changes
    with pytest.raises(sw.SeamwrightError, match="no input"):
        found["Q"]


def test_a_kink_has_two_slopes():
    """A single-riveted lap whose net section is just as strong as its rivet in shear: (p - d) t st = pi/4 d^2 ss."""
    import math

    d, t = 20.0, 10.0
    p = d + math.pi / 4 * d**2 * 60 / (t * 80)
    joint = sw.Joint(form=sw.Form.lap(1), pitch=sw.mm(p), plate=sw.mm(t), hole=sw.mm(d))
    found = sw.slopes(joint=joint, materials=STEEL.divided_by(1), book="metric")
    pitch = found["p"].efficiency
    assert pitch.has_kink
    assert pitch.left == pytest.approx(d / p**2, rel=1e-9)  # below, the plate governs: 1 - d/p
    assert pitch.right == pytest.approx(-(1 - d / p) / p, rel=1e-9)  # above, the rivet: pi/4 d^2 ss/(p t st)
    assert found["p"].mode_changes
    assert " / " in str(pitch)
    assert pitch.times(2).left == 2 * pitch.left


@pytest.mark.parametrize("form", [sw.Form.lap(2), sw.Form.double_strap(2), sw.Form.unequal_straps(3)])
def test_slopes_against_finite_differences(form):
    sized = sw.size(form=form, plate=sw.mm(12), materials=STEEL, book="metric")
    found = sw.slopes(joint=sized.joint, materials=STEEL, book="metric")
    step = 1e-6
    for name, key in [("ss", "rivet_shear"), ("st", "tension")]:
        given = {"tension": 80.0, "rivet_shear": 60.0, "bearing": 120.0}
        sides = []
        for sign in (-1, 1):
            moved = {k: sw.MPa(v + (sign * step if k == key else 0)) for k, v in given.items()}
            other = sw.check(joint=sized.joint, materials=sw.Materials(**moved), book="metric")
            sides.append(sign * (other.efficiency - found.efficiency) / step)
        assert found[name].efficiency.left == pytest.approx(sides[0], rel=1e-5, abs=1e-8)
        assert found[name].efficiency.right == pytest.approx(sides[1], rel=1e-5, abs=1e-8)


def test_slopes_are_shown_and_kept():
    found = sw.slopes(**SAID)
    assert pickle.loads(pickle.dumps(found)) == found
    assert "hole diameter, row 1" in found._repr_html_()
    assert found._repr_markdown_().startswith("| input |")
    assert "Design aid only" in found._repr_markdown_()
    assert "shear stress" not in found._repr_html_()  # does nothing here
    assert found.to_dict()["lines"][0]["name"] == "t"


def test_worst_case_by_hand():
    """Tearing governs all over the box: 1 - (d + 0.3)/(p - 0.5)."""
    found = sw.worst_case(**SAID, hole=sw.mm(0.3), pitch=sw.mm(0.5), plate=sw.mm(0.4))
    assert found.stated == pytest.approx(37 / 60, rel=1e-12)
    assert found.value == pytest.approx(1 - 23.3 / 59.5, rel=1e-12)
    assert found.ratio == pytest.approx((1 - 23.3 / 59.5) / (37 / 60), rel=1e-12)
    assert found.exact
    assert not found.hole_inside
    plate, second, narrow, hole, pitch = found.deviations
    assert (hole.deviation.mm, pitch.deviation.mm) == (0.3, -0.5)
    assert hole.alone == pytest.approx(1 - 23.3 / 60, rel=1e-12)
    assert pitch.alone == pytest.approx(1 - 23 / 59.5, rel=1e-12)
    assert (plate.tolerance, second.name, narrow.tolerance.mm) == (sw.mm(0.4), "second plate", 0.0)
    assert second.tolerance == sw.mm(0.4)  # each plate of a lap for itself
    strength = sw.worst_case(**SAID, plate=sw.mm(0.4), target="strength")
    assert strength.value == pytest.approx(37 * 12.6 * 80 / 60, rel=1e-12)
    assert "621.6 N/mm at worst" in repr(strength)  # 37 12.6 80/60
    assert "60.84 % at worst" in found._repr_html_()  # 1 - 23.3/59.5
    assert pickle.loads(pickle.dumps(found)) == found
    assert "0.3 mm" in found._repr_html_()


def test_the_corners_of_the_box_are_no_worse():
    joint = sw.size(form=sw.Form.double_strap(2), plate=sw.mm(12), materials=STEEL, book="metric").joint
    found = sw.worst_case(joint=joint, materials=STEEL, book="metric", hole=sw.mm(0.4), pitch=sw.mm(1))
    for hole, pitch in itertools.product((-0.4, 0.0, 0.4), (-1.0, 0.0, 1.0)):
        other = sw.Joint(
            form=joint.form, pitch=joint.pitch + sw.mm(pitch), plate=joint.plate, hole=joint.rows[0].hole + sw.mm(hole),
            rivet=joint.rows[0].rivet, wide_strap=joint.wide_strap, narrow_strap=joint.narrow_strap,
            back_pitch=list(joint.back_pitches), margin=joint.margin,
        )  # fmt: skip
        assert sw.check(joint=other, materials=STEEL, book="metric").efficiency >= found.value - 1e-12


@pytest.mark.parametrize(
    ("wrong", "field"),
    [
        ({"hole": sw.mm(-1)}, "tolerance"),
        ({"plate": sw.mm(13)}, "tolerance"),
        ({"hole": sw.mm(1.5)}, "rivet"),
        ({"pitch": sw.mm(50)}, "pitch"),
        ({"hole": 0.5}, "hole"),
        ({"target": "beauty"}, "target"),
        ({"joint": 3}, "joint"),
    ],
)
def test_tolerances_that_cannot_be(wrong, field):
    with pytest.raises(sw.SeamwrightError) as caught:
        sw.worst_case(**{**SAID, **wrong})
    assert caught.value.field == field, str(caught.value)

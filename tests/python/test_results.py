"""Results: frozen, compared by value, pickled, copied, open as dicts, shown in a notebook."""

import base64
import copy
import dataclasses
import json
import pickle
import pickletools
import re
from html.parser import HTMLParser
from xml.etree import ElementTree

import pytest
import seamwright as sw

RESULTS = ["found", "design", "sheet", "joint", "steel"]


@pytest.mark.parametrize("name", RESULTS)
def test_frozen_equal_hashed_pickled_copied(name, request):
    x = request.getfixturevalue(name)
    field = dataclasses.fields(x)[0].name
    with pytest.raises(dataclasses.FrozenInstanceError):
        setattr(x, field, 1)
    with pytest.raises(dataclasses.FrozenInstanceError):
        delattr(x, field)
    for again in (pickle.loads(pickle.dumps(x)), copy.copy(x), copy.deepcopy(x)):
        assert again == x
        assert hash(again) == hash(x)
        assert repr(again) == repr(x)
        assert type(again) is type(x)
    assert x != 1
    json.dumps(x.to_dict(), allow_nan=False)
    assert len(repr(x)) < 1200


def test_a_pickled_result_still_works(found, design, sheet):
    for x in (found, design):
        again = pickle.loads(pickle.dumps(x))
        assert again.working().text == x.working().text
    again = pickle.loads(pickle.dumps(found))
    assert again.modes == found.modes
    assert again.letters == found.letters
    again = pickle.loads(pickle.dumps(design))
    assert again.drawing().svg == design.drawing().svg
    again = pickle.loads(pickle.dumps(sheet))
    assert again.text() == sheet.text()
    assert again.holes() == sheet.holes()
    assert again.dxf() == sheet.dxf()


def test_changing_a_result_makes_a_new_one(joint, steel):
    wider = dataclasses.replace(sw.check(joint=joint, materials=steel, book="metric"), efficiency=0.5)
    assert wider.efficiency == 0.5


def test_single_strap_and_rows_that_differ_survive_a_pickle(steel):
    single = sw.Joint(form=sw.Form.single_strap(2), pitch=sw.mm(71), plate=sw.mm(13), hole=sw.mm(23), strap=sw.mm(16))
    rows = sw.Joint(
        form=sw.Form.unequal_straps(3),
        pitch=sw.mm(180),
        plate=sw.mm(16),
        hole=[sw.mm(23), sw.mm(25), sw.mm(25)],
        wide_strap=sw.mm(14),
        narrow_strap=sw.mm(11),
        back_pitch=[sw.mm(60), None],
    )
    assert rows.back_pitches == (sw.mm(60), None)
    for joint in (single, rows):
        again = pickle.loads(pickle.dumps(joint))
        assert again == joint
        a, b = (sw.check(joint=j, materials=steel, book="metric") for j in (joint, again))
        assert a == b
    assert single.wide_strap == sw.mm(16)
    assert single.narrow_strap is None


def test_khurmi_example_9_4(found):
    """Khurmi & Gupta, Textbook of Machine Design, Example 9.4 (open transcription): 49 920 N, 67.5 %."""
    assert found.tear_outer == sw.N(49920)
    assert round(100 * found.efficiency, 1) == 67.5
    assert found.classic_efficiencies.tearing == found.tear_outer / found.solid
    assert found.modes[0].name.startswith("plate A tears")
    assert found.governing in found.modes


def test_indian_example_9_7(steel):
    """Khurmi & Gupta, Example 9.7 (open transcription): hole 21 mm for a plate of 12 mm; 6 sqrt 12 = 20.78."""
    design = sw.size(
        form=sw.Form.double_strap(2),
        plate=sw.mm(12),
        materials=sw.Materials(tension=sw.MPa(90), rivet_shear=sw.MPa(56), bearing=sw.MPa(140)),
        book="indian",
    )
    assert design.joint.rows[0].hole == sw.mm(21)
    assert design.hole.basis is sw.HoleBasis.ROOT
    assert abs(design.hole.computed.mm - 20.785) < 0.001
    assert design.joint.wide_strap is not None


def test_all_modes_sorted_have_the_governing_one_first(found, design):
    for a in (found, design.analysis):
        weakest = min(m.strength for m in a.modes)
        assert abs(a.governing.strength / weakest - 1) < 1e-9
        assert a.efficiency == a.governing.efficiency
        assert a.runner_up_ratio == a.runner_up.strength / a.governing.strength


class Balanced(HTMLParser):
    """Every tag that is opened is closed, in order."""

    def __init__(self):
        super().__init__()
        self.open, self.text = [], []

    def handle_starttag(self, tag, attrs):
        self.open.append(tag)

    def handle_endtag(self, tag):
        assert self.open.pop() == tag

    def handle_data(self, data):
        self.text.append(data)


def read(html):
    parser = Balanced()
    parser.feed(html)
    parser.close()
    assert not parser.open
    return " ".join(parser.text)


def test_html(found, design):
    for x, a in ((found, found), (design, design.analysis)):
        html = x._repr_html_()
        said = read(html)
        assert html.count('class="governs"') == 1
        assert a.governing.name in said
        assert f"{100 * a.efficiency:.2f} %" in said
        assert sw.CAUTION in said
        for finding in a.findings:
            assert finding.what in said
    assert "How it was sized" in read(design._repr_html_())


def test_open_findings_are_marked(steel):
    tight = sw.Joint(form=sw.Form.lap(2), pitch=sw.mm(120), plate=sw.mm(13), hole=sw.mm(23), margin=sw.mm(20))
    a = sw.check(joint=tight, materials=steel, book="metric")
    assert {f.subject for f in a.open_findings} >= {sw.Subject.PITCH_GREATEST, sw.Subject.MARGIN_LEAST}
    assert "NOT MET" in read(a._repr_html_())
    margin = a.finding(sw.Subject.MARGIN_LEAST)
    assert (margin.required, margin.provided, margin.unit) == (34.5, 20.0, "mm")  # 1.5 holes of 23 mm
    assert margin.entry == "margin.least.factor"
    assert margin.label is not None
    assert margin.clause
    assert "enlarge the margin" in str(margin)


def test_names_are_escaped_in_html():
    nasty = sw.book("metric").derive(id="<b>", title="a & b <script>", changes={})
    html = nasty._repr_html_()
    assert "<script>" not in html
    assert "a & b <script>" in read(html)


def test_workings_in_every_dialect(found, design):
    for x in (found, design):
        for dialect in sw.Dialect:
            w = x.working(dialect)
            assert str(w) == w.text
            assert len(w.text) > 1000
            shown = [w._repr_html_(), w._repr_markdown_(), w._repr_latex_()]
            assert sum(s is not None for s in shown) == 1
            assert x.working(dialect.value) == w
            assert pickle.loads(pickle.dumps(w)) == w
        assert " in\n" in x.working("plain", units="inch").text
    # 71 mm in inches, and one rivet in shear with a comma and with a digit more.
    assert "2.795276 in" in found.working("plain", units="inch").text
    assert "24928,5 N" in found.working("plain", mark=",").text  # pi/4 23^2 60 = 24 928.54 N
    assert "24928.54 N" in found.working("plain", extra_digits=1).text
    latex = found.working("latex")
    assert "\\begin{document}" in latex.text
    assert "\\documentclass" not in latex._repr_latex_()
    assert latex._repr_latex_().startswith("\\section")
    assert read(found.working("html").text.split("<body>")[1].split("</body>")[0])
    assert found.working("html")._repr_html_().startswith("<iframe")


def test_drawings(found, design, tmp_path):
    drawing = design.drawing(object="Drum <7>", drawing_no="D & 1")
    root = ElementTree.fromstring(drawing._repr_svg_())
    assert root.tag.endswith("svg")
    assert "Drum <7>" in "".join(root.itertext())
    # A notebook gets it as an image of its own, so that the drawing's styles stay inside.
    coded = drawing._repr_html_().partition("base64,")[2].partition('"')[0]
    assert base64.b64decode(coded).decode() == drawing.svg
    assert drawing.dxf.startswith("0\nSECTION")
    svg, dxf = drawing.save(tmp_path / "a.svg"), drawing.save(tmp_path / "a.DXF")
    assert svg.read_text(encoding="utf-8") == drawing.svg
    assert dxf.read_text(encoding="utf-8") == drawing.dxf
    with pytest.raises(sw.SeamwrightError, match=r"\.png"):
        drawing.save(tmp_path / "a.png")
    with pytest.raises(sw.SeamwrightError):
        sw.drawing(joint=found.joint, object="x" * 500)


def test_the_drawing_of_a_group(tmp_path):
    made = sw.size_group(
        places=[(sw.mm(x), sw.mm(80 * i)) for i in range(3) for x in (0, 90)],
        load=sw.GroupLoad(y=sw.kN(-32), at=(sw.mm(345), sw.mm(80))),
        shear=sw.MPa(90),
        book="structural",
    )
    drawing = made.drawing(object="Hoist <3> (invented)", drawing_no="QM & 3")
    assert drawing == made.check.drawing(object="Hoist <3> (invented)", drawing_no="QM & 3")
    root = ElementTree.fromstring(drawing._repr_svg_())
    words = "".join(root.itertext())
    # The load hangs 345 - 45 mm beside the centroid, clockwise: 32 kN on the right.
    assert "Hoist <3> (invented)" in words and "e = 300" in words and "P = 32 kN, down" in words
    assert "Structural practice" in words and sw.CAUTION.split(".")[0] in words
    coded = drawing._repr_html_().partition("base64,")[2].partition('"')[0]
    assert base64.b64decode(coded).decode() == drawing.svg
    assert repr(drawing) == "<Drawing: group of 6 rivets>"
    assert drawing.save(tmp_path / "g.svg").read_text(encoding="utf-8") == drawing.svg
    assert made.save(tmp_path / "h.svg").read_text(encoding="utf-8") == made.check.drawing().svg
    assert "kN" not in made.drawing(units="inch").svg
    with pytest.raises(sw.SeamwrightError, match=r"\.dxf"):
        drawing.save(tmp_path / "g.dxf")
    with pytest.raises(sw.SeamwrightError, match="text"):
        made.drawing(object="x" * 500)
    with pytest.raises(sw.SeamwrightError, match="units"):
        made.drawing(units="cubit")


def test_saving_is_whole_or_not_at_all(found, design, sheet, tmp_path, monkeypatch):
    for suffix in (".txt", ".md", ".tex", ".html", ".svg", ".dxf", ".json"):
        for n, x in enumerate((found, design)):
            path = x.save(tmp_path / f"r{n}{suffix}")
            assert path.stat().st_size > 500
    assert json.loads((tmp_path / "r0.json").read_text(encoding="utf-8"))["tear_outer"] == {
        "value": 49920.0,
        "unit": "N",
    }
    for suffix in (".txt", ".md", ".dxf", ".json"):
        assert sheet.save(tmp_path / f"s{suffix}").stat().st_size > 500
    target = tmp_path / "r0.txt"
    before = target.read_bytes()

    def broken(*_):
        raise OSError("no room")

    monkeypatch.setattr("os.replace", broken)
    with pytest.raises(OSError, match="no room"):
        design.save(target)
    assert target.read_bytes() == before
    assert not [p for p in tmp_path.iterdir() if p.name.startswith(".")]
    with pytest.raises(OSError):
        found.save(tmp_path / "nowhere" / "a.txt")


def test_shop_sheet(sheet):
    # 2920 mm in pitches of 71 mm: 41.1, so 41 of 71.22 mm; 42 holes in the outer row and 41 between them.
    assert sheet.pitch.taken.strips == 41
    assert abs(sheet.pitch.taken.pitch.mm - 2920 / 41) < 1e-9
    assert sheet.rivet_count == 83 == sheet.hole_count == len(sheet.holes())
    first = sheet.holes(first=1, count=1)[0]
    assert first.x == sw.mm(40)
    assert sheet.holes(first=80) == sheet.holes()[79:]
    assert sheet.holes(first=84) == ()
    assert sheet.density == sw.kg_m3(7850)
    assert sum(line.count for line in sheet.to_order) == 83
    assert sheet.to_order[0].length.mm % 2 == 0
    assert "Shop sheet" in sheet.text()
    assert sheet.markdown() == sheet._repr_markdown_()
    assert "in" in sheet.text(units="inch")
    assert sheet.text(first=1, count=3) != sheet.text()
    # Mass by hand: rivets, overlap and holes add up.
    assert abs((sheet.masses.rivets + sheet.masses.overlap - sheet.masses.holes) / sheet.masses.total - 1) < 1e-12


def test_girth_and_tie(joint, steel):
    ring = sw.Run.girth(diameter=sw.m(1.2), measured="circle", other=sw.Face.OUTSIDE)
    order = {"materials": steel, "book": "metric", "head": "button", "length_rule": sw.LengthRule.HAND}
    sheet = sw.shop_sheet(joint=joint, run=ring, set_head="small-round", density=sw.kg_m3(7700), **order)
    assert abs(sheet.along.seam.mm - 3769.911) < 0.001  # pi 1200
    assert sheet.holes()[1].angle is not None
    assert sheet.rivets[0].set_head.form is sw.HeadForm.SMALL_ROUND
    tie = sw.Joint(
        form=sw.Form(kind="lap", rows=[(2, 1), (2, 1)]), pitch=sw.mm(140), plate=sw.mm(13), hole=sw.mm(23),
        back_pitch=sw.mm(70), margin=sw.mm(40),
    )  # fmt: skip
    assert tie.pitch == sw.mm(70)
    assert tie.strip == sw.mm(140)
    sheet = sw.shop_sheet(joint=tie, run=sw.Run.tie(), **order)
    assert sheet.pitch.fitted is sw.Fitted.TIE
    assert sheet.dxf().startswith("0\nSECTION")


def test_letters_of_the_us_code():
    """ASME 1914/1918, Appendix: a quadruple butt joint has A to H with I, J; here only that A is the solid strip."""
    joint = sw.Joint(
        form=sw.Form.unequal_straps(4), pitch=sw.inch(15.5), plate=sw.inch(0.5), hole=sw.inch(15 / 16),
        wide_strap=sw.inch(7 / 16), narrow_strap=sw.inch(7 / 16),
    )  # fmt: skip
    steel = sw.Materials(tension=sw.psi(55000), rivet_shear=sw.psi(44000), bearing=sw.psi(95000))
    a = sw.check(joint=joint, materials=steel, book="us-code")
    letters = {x.letter: x for x in a.letters}
    assert letters["A"].cut is None
    assert abs(letters["A"].strength.lbf - 15.5 * 0.5 * 55000) < 1e-6
    assert abs(letters["B"].strength.lbf - (15.5 - 15 / 16) * 0.5 * 55000) < 1e-6


def test_results_are_shown_in_the_units_that_went_in(found):
    steel = sw.Materials(tension=sw.psi(55000), rivet_shear=sw.ksi(42), bearing=sw.psi(95000))
    d = sw.size(form=sw.Form.lap(2), plate=sw.inch(0.5), materials=steel, book="us-code")
    assert {d.joint.pitch.unit, d.joint.margin.unit, d.pitch.by_shear.unit, d.hole.hole.unit} == {"inch"}
    assert {d.analysis.solid.unit, d.analysis.modes[0].strength.unit, d.analysis.letters[0].strength.unit} == {"lbf"}
    assert repr(d.joint.plate) == "inch(0.5)"
    assert " mm" not in read(d._repr_html_())
    for text in (d.working().text, d.sheet().text, d.analysis.working().text, *map(str, d.analysis.findings)):
        assert not re.search(r"\d mm\b|MPa", text)
    assert d.working(units="metric") == d.working("plain", units=sw.Units.METRIC) != d.working()
    assert "NOT MET" not in read(d._repr_html_())
    # What is shown is no part of what is compared.
    same = sw.Materials(tension=sw.MPa(steel.plate.tension.MPa), rivet_shear=sw.ksi(42), bearing=sw.psi(95000))
    again = sw.size(form=sw.Form.lap(2), plate=sw.mm(12.7), materials=same, book="us-code")
    assert again == d
    assert again.joint.pitch.unit == "mm"
    assert found.solid.unit == "N"


def test_pickles_name_the_package_and_not_its_files(found):
    assert sw.Length.__module__ == sw.check.__module__ == sw.mm.__module__ == "seamwright"
    named = {module for module in pickletools_globals(pickle.dumps(found)) if module.startswith("seamwright")}
    assert named == {"seamwright", "seamwright._quantity", "seamwright._rules"}


def pickletools_globals(data):
    """The modules that a pickle imports from."""
    texts = [argument for _, argument, _ in pickletools.genops(data) if isinstance(argument, str)]
    return {
        text for text in texts if text.replace("_", "").replace(".", "").isalpha() and text.startswith("seamwright")
    }

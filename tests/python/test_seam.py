"""The drawing of a seam, its working, and the masses of an endless one."""

import pickle
import xml.etree.ElementTree as ET

import pytest
import seamwright as sw


def test_the_drawing_has_the_run(sheet, tmp_path):
    """3 m with 40 mm at each end: 2920 mm in 41 pitches."""
    drawn = sheet.drawing(object="Feed tank (invented)", drawing_no="T-7")
    text = "".join(ET.fromstring(drawn.svg).itertext())
    assert "41 pitches of 71.22" in text
    assert "3000" in text
    assert "Feed tank" in text
    assert "General metric" in text  # the rule book stands in the title block
    assert "41 pitches" not in sheet.joint.drawing().svg
    assert drawn.dxf == sheet.dxf(object="Feed tank (invented)", drawing_no="T-7", rule_book=sheet.book.title)
    assert drawn.save(tmp_path / "seam.dxf").read_text(encoding="ascii") == drawn.dxf
    assert sheet.save(tmp_path / "seam.svg").read_text(encoding="utf-8") == sheet.drawing().svg
    again = pickle.loads(pickle.dumps(drawn))
    assert again == drawn
    assert again.dxf == drawn.dxf
    with pytest.raises(sw.SeamwrightError):
        sheet.drawing(
            object="A name that is far too long for the three lines that an object has in the block of a sheet"
        )


def test_the_drawing_of_a_tie(joint, steel):
    made = sw.shop_sheet(
        joint=joint, materials=steel, book="metric", run=sw.Run.tie(), head="button", length_rule="boiler-button"
    )
    drawn = made.drawing()
    assert drawn.svg.startswith("<svg")
    assert drawn.dxf == sw.drawing(joint=made.joint, rule_book=made.book.title, extent="tie").dxf


def test_its_working(sheet, tmp_path):
    """The steps that lead to 41 pitches: 3000 - 40 - 40 = 2920 mm; 2920/71 = 41.13."""
    text = sheet.working().text
    assert "2920 mm" in text
    assert "41.126" in text
    assert "Design aid only" in text
    for dialect in sw.Dialect:
        assert sheet.working(dialect).text
    assert "</html>" in sheet.save(tmp_path / "s.html").read_text(encoding="utf-8")
    assert "\\end{document}" in sheet.save(tmp_path / "s.tex").read_text(encoding="utf-8")
    assert sheet.save(tmp_path / "s.txt").read_text(encoding="utf-8") == sheet.text()


def test_masses_of_a_strip(joint, steel):
    """A lap of (35 + 40 + 35) mm by 13 mm, 71 mm of pitch; two holes of 23 mm through 26 mm, 7850 kg/m3."""
    found = sw.strip_masses(joint=joint, materials=steel, head="button", length_rule="boiler-button")
    assert found.overlap.kg == pytest.approx(110 * 13 * 71 * 7850e-9, rel=1e-12)
    assert found.holes.kg == pytest.approx(2 * 3.141592653589793 / 4 * 23**2 * 26 * 7850e-9, rel=1e-12)
    assert found.straps.kg == 0.0
    assert found.total.kg == pytest.approx(found.overlap.kg + found.rivets.kg - found.holes.kg, rel=1e-12)
    assert found.per_metre.kg == pytest.approx(found.total.kg * 1000 / 71, rel=1e-12)
    half = sw.strip_masses(
        joint=joint, materials=steel, head="button", length_rule="boiler-button", density=sw.kg_m3(3925)
    )
    assert half.total.kg == pytest.approx(found.total.kg / 2, rel=1e-12)


def test_a_strip_needs_its_dimensions(steel):
    bare = sw.Joint(form=sw.Form.lap(1), pitch=sw.mm(50), plate=sw.mm(10), hole=sw.mm(20))
    said = {"materials": steel, "head": "button", "length_rule": "hand"}
    with pytest.raises(sw.SeamwrightError) as caught:
        sw.strip_masses(joint=bare, **said)
    assert caught.value.field == "margin"
    whole = sw.Joint(form=sw.Form.lap(1), pitch=sw.mm(50), plate=sw.mm(10), hole=sw.mm(20), margin=sw.mm(30))
    for wrong in ({"head": "flat"}, {"stock_step": sw.mm(2)}, {"density": 7850}, {"length_rule": "guess"}):
        with pytest.raises(sw.SeamwrightError):
            sw.strip_masses(joint=whole, **{**said, **wrong})

"""Shells and vessels through Python: by hand, by refusal, and the table of a boiler."""

import math
import pickle
import re

import pytest
import seamwright as sw


@pytest.fixture
def strong():
    return sw.Materials(tension=sw.MPa(90), rivet_shear=sw.MPa(75), bearing=sw.MPa(150))


DRUM = sw.Shell(inside_diameter=sw.m(1), footing="permissible")
STOCK = sw.PlateStock(step=sw.mm(1), thinnest=sw.mm(5), thickest=sw.mm(40))


def made(strong, **other):
    """An invented receiver."""
    said = {
        "form": sw.Form.double_strap(2), "pressure": sw.MPa(1.5), "shell": DRUM, "materials": strong, "plates": STOCK,
        "book": "metric", **other,
    }  # fmt: skip
    return sw.vessel(**said)


def by_hand(strong, plate, **settled):
    """2 st J (t - 1)/D: the trade's formula with 1 mm for corrosion, on the joint that is sized for the plate."""
    sized = sw.size(form=sw.Form.double_strap(2), plate=sw.mm(plate), materials=strong, book="metric", **settled)
    return 2 * 90 * sized.analysis.credited * (plate - 1) / 1000


def test_the_first_plate_that_carries(strong):
    v = made(strong)
    assert v.allowed.pressure.MPa == pytest.approx(by_hand(strong, v.plate.mm), rel=1e-12)
    assert by_hand(strong, v.plate.mm) >= 1.5 > by_hand(strong, v.plate.mm - 1)
    assert v.tried == v.plate.mm - 4
    assert v.allowed.factor_basis is sw.FactorBasis.IN_STRESSES
    assert (v.girth, v.no_girth, v.open_findings) == (None, None, ())
    assert sw.joint_pressure(seam=v.seam.analysis, shell=DRUM).pressure == v.allowed.pressure


def test_a_list_of_plates_and_a_hole_that_is_settled(strong):
    settled = {"hole": sw.mm(23), "rivet": sw.mm(22)}
    v = made(strong, plates=[sw.mm(8), sw.mm(12), sw.mm(16)], **settled)
    assert v.plate == sw.mm(16)
    assert by_hand(strong, 12, **settled) < 1.5 <= by_hand(strong, 16, **settled)
    assert (v.seam.joint.rows[0].hole, v.seam.joint.rows[0].rivet) == (sw.mm(23), sw.mm(22))
    tight = made(strong, hole=sw.mm(23), rivet=sw.mm(21)).seam
    assert tight.joint.rows[0].rivet == tight.brief.rivet == sw.mm(21)  # not the book's 22
    assert v.seam.working().text  # the seam by itself can be worked again


def test_a_girth_seam_closes_round_the_shell(strong):
    v = made(strong, girth_form=sw.Form.lap(1))
    g = v.girth
    # The circle of holes lies in the middle of the plate: pi (1000 + t); lap of one rivet to the pitch.
    assert g.strips * g.joint.pitch.mm == pytest.approx(math.pi * (1000 + v.plate.mm), rel=1e-9)
    assert g.rivets == g.strips
    # The end pulls half as hard as the hoop: p = 4 st J (t - 1)/D.
    assert g.pressure.MPa == pytest.approx(4 * 90 * g.analysis.credited * (v.plate.mm - 1) / 1000, rel=1e-12)
    # p pi/4 D^2 over one rivet in single shear.
    one = math.pi / 4 * g.joint.rows[0].hole.mm ** 2 * 75
    assert g.end_rivets == pytest.approx(1.5 * math.pi / 4 * 1000**2 / one, rel=1e-12)
    assert not v.open_findings
    again = sw.girth_check(seam=v.seam.analysis, girth_joint=g.joint, shell=DRUM, pressure=sw.MPa(1.5))
    assert again == g


def test_a_girth_seam_that_does_not_do_says_why(strong):
    wide = sw.Joint(form=sw.Form.lap(1), pitch=sw.mm(200), plate=sw.mm(12), hole=sw.mm(20), margin=sw.mm(30))
    seam = made(strong).seam.analysis
    found = sw.girth_check(seam=seam, girth_joint=wide, shell=DRUM, pressure=sw.MPa(3))
    about = {f.subject for f in found.open_findings}
    assert {sw.Subject.GIRTH_EFFICIENCY, sw.Subject.GIRTH_RIVETS} <= about
    assert found.analysis.credited < found.needed


def test_its_working_in_every_dialect(strong, tmp_path):
    v = made(strong, girth_form=sw.Form.lap(1))
    for dialect in sw.Dialect:
        assert "local codes" in v.working(dialect).text.lower().replace("\n", " ") or dialect is sw.Dialect.NARROW
    assert "1.5 MPa" in v.working().text
    assert "<iframe" in v._repr_html_()
    assert "</html>" in v.save(tmp_path / "v.html").read_text(encoding="utf-8")
    assert v.to_dict()["girth"]["joint"]["pitch"]["unit"] == "mm"
    again = pickle.loads(pickle.dumps(v))
    assert again == v
    assert hash(again) == hash(v)
    assert again.working().text == v.working().text


def test_inches_stay_inches():
    steel = sw.Materials(tension=sw.psi(11000), rivet_shear=sw.psi(8800), bearing=sw.psi(19000))
    v = sw.vessel(
        form=sw.Form.double_strap(2), pressure=sw.psi(150), shell=sw.Shell(inside_diameter=sw.inch(48),
        footing="permissible"), materials=steel, book="us-code", plates=[sw.inch(n / 16) for n in range(4, 17)],
    )  # fmt: skip
    assert v.plate.unit == "inch"
    for text in (v.working().text, *map(str, v.assumptions), *map(str, v.findings)):
        assert not re.search(r"\d mm\b|MPa", text), text


def test_no_plate_carries(strong):
    with pytest.raises(sw.SeamwrightError) as caught:
        made(strong, pressure=sw.MPa(30))
    said = caught.value
    assert (said.kind, said.field, said.value, said.unit) == (sw.ErrorKind.NO_STANDARD_SIZE, "pressure", 30.0, "MPa")
    assert said.limit == pytest.approx(by_hand(strong, 40), rel=1e-12)
    assert str(said).startswith("none of 36 plates of the stock carries 30 MPa; the best, 40 mm, carries")


@pytest.mark.parametrize(
    ("wrong", "field"),
    [
        ({"pressure": 1.5}, "pressure"),
        ({"pressure": sw.MPa(-1)}, "pressure"),
        ({"plates": []}, "plates"),
        ({"plates": [sw.mm(12), sw.mm(8)]}, "plate"),
        ({"plates": sw.PlateStock(step=sw.mm(0), thinnest=sw.mm(5), thickest=sw.mm(9))}, "stock_step"),
        ({"shell": sw.Shell(inside_diameter=sw.mm(0), footing="permissible")}, "ring_diameter"),
        ({"shell": sw.Shell(inside_diameter=sw.m(1), footing="ultimate")}, "safety_factor"),
        ({"shell": "a drum"}, "shell"),
        ({"girth_form": sw.Form.lap(1), "girth_place": "top"}, "girth_place"),
        ({"rivet": sw.mm(22)}, "hole"),
        ({"book": "structural"}, "pressure"),
    ],
)
def test_what_is_wrong_is_said(strong, wrong, field):
    with pytest.raises(sw.SeamwrightError) as caught:
        made(strong, **wrong)
    assert caught.value.field == field, str(caught.value)


def test_a_shell_keeps_what_was_said():
    shell = sw.Shell(
        inside_diameter=sw.inch(48), footing=sw.Footing.ULTIMATE, corrosion=sw.inch(1 / 16), safety_factor=5,
        existing=True, second_hand=True, lap_length=sw.foot(12), riveting="hand", holes_made="punched",
    )  # fmt: skip
    assert pickle.loads(pickle.dumps(shell)) == shell
    assert (shell.corrosion.unit, dict(shell.service)["riveting"]) == ("inch", "hand")
    for wrong in ({"footing": "soft"}, {"inside_diameter": 48}, {"safety_factor": "five"}, {"riveting": "glue"}):
        with pytest.raises(sw.SeamwrightError):
            sw.Shell(**{"inside_diameter": sw.inch(48), "footing": "ultimate", **wrong})


def test_circumstances_of_an_existing_shell_are_assumed(strong):
    """A rule book that distinguishes second-hand boilers takes one of which nothing is said as such."""
    joint = sw.Joint(form=sw.Form.lap(2), pitch=sw.inch(3), plate=sw.inch(0.5), hole=sw.inch(15 / 16))
    steel = sw.Materials(tension=sw.psi(55000), rivet_shear=sw.psi(44000), bearing=sw.psi(95000))
    seam = sw.check(joint=joint, materials=steel, book="us-michigan")
    said = {"inside_diameter": sw.inch(60), "footing": "ultimate", "existing": True}
    unsaid = sw.joint_pressure(seam=seam, shell=sw.Shell(**said))
    known = sw.joint_pressure(seam=seam, shell=sw.Shell(**said, second_hand=False))
    assert any("second-hand" in a.about and a.basis is sw.Basis.ASSUMED for a in unsaid.assumptions)
    assert unsaid.safety_factor >= known.safety_factor
    assert unsaid.pressure.psi == pytest.approx(55000 * 0.5 * seam.credited / (30 * unsaid.safety_factor), rel=1e-9)
    assert unsaid.factor_basis is sw.FactorBasis.BOOK
    assert unsaid.clause


def test_solid_plate_and_girth_by_the_same_formula():
    said = {"form": sw.Form.lap(1), "plate": sw.mm(11), "tension": sw.MPa(80), "shell": DRUM, "book": "metric"}
    along = sw.seam_pressure(**said, efficiency=0.5)
    round_it = sw.seam_pressure(**said, efficiency=0.5, round_the_shell=True)
    assert along.pressure.MPa == pytest.approx(2 * 80 * 0.5 * (11 - 1) / 1000, rel=1e-12)
    assert round_it.pressure.MPa == pytest.approx(4 * 80 * 0.5 * (11 - 1) / 1000, rel=1e-12)
    with pytest.raises(sw.SeamwrightError, match="efficiency"):
        sw.seam_pressure(**said, efficiency=1.5)


def test_a_boiler_and_its_parts():
    part = sw.BoilerLine.of
    lines = [
        part(part="head", name="front | head", pressure=sw.psi(160)),
        part(part="stays", name="crown stays", pressure=sw.psi(140)),
        part(part="tubes", name="tubes", pressure=sw.psi(140)),
    ]
    boiler = sw.Boiler.of(lines=lines, book="us-california")
    assert boiler.governing is lines[1]  # of equals the first
    assert boiler.test.psi == pytest.approx(1.5 * 140, rel=1e-12)
    assert sw.Boiler.of(lines=[]).governing is None
    assert sw.Boiler.of(lines=lines).test is None
    assert "front \\| head" in boiler._repr_markdown_()
    assert boiler._repr_html_().count("governs</td>") == 1
    assert pickle.loads(pickle.dumps(boiler)) == boiler
    assert [p.value for p in sw.BoilerPart if p.computed_here] == ["course", "girth seam"]
    for wrong in ([part(part="head", name="x", pressure=sw.psi(-1))], lines * 11, ["head"]):
        with pytest.raises(sw.SeamwrightError):
            sw.Boiler.of(lines=wrong)
    assert len(sw.Boiler.of(lines=(lines * 11)[:32]).lines) == 32
    # Of lines alike in all, one governs.
    assert sw.Boiler.of(lines=lines * 2)._repr_html_().count("governs</td>") == 1
    assert sw.CAUTION in boiler._repr_html_()


def test_a_rated_course_in_the_table():
    rated = sw.rate(
        form=sw.Form.lap(2), pitch=sw.inch(3.5), plate=sw.inch(0.45), inside_diameter=sw.inch(48),
        hole=sw.inch(15 / 16), plates="steel", safety_factor=5, book="us-existing",
    )  # fmt: skip
    table = sw.Boiler.of(lines=[sw.BoilerLine.course(name="ring 1", rating=rated)])
    assert table.governing.pressure == rated.allowed


def test_a_search_for_a_pressure(strong):
    """The thinnest plate that carries: as the vessel finds it among the same forms, and lighter stock does not do."""
    plates = [sw.mm(t) for t in range(8, 15)]
    found = sw.search(
        plates=plates, materials=strong, book="metric", objective="thickness", forms=[sw.Form.double_strap(2)],
        pressure=sw.MPa(1.5), shell=DRUM,
    )  # fmt: skip
    best = found.best[0]
    assert best.pressure.MPa == pytest.approx(2 * 90 * best.efficiency * (best.plate.mm - 1) / 1000, rel=1e-9)
    assert best.pressure.MPa >= 1.5
    assert best.plate <= made(strong).plate
    thinner = sw.search(
        plates=[t for t in plates if t < best.plate], materials=strong, book="metric", pressure=sw.MPa(1.5),
        forms=[sw.Form.double_strap(2)], shell=DRUM,
    )  # fmt: skip
    assert thinner.best == ()
    assert "pressure" in thinner.tally.most[0]
    with pytest.raises(sw.SeamwrightError, match="go together"):
        sw.search(plates=plates, materials=strong, book="metric", pressure=sw.MPa(1.5))


def test_all_forms_are_searched_where_none_is_named(strong):
    forms = sw.all_forms()
    assert len(forms) == len(set(forms)) > 10
    said = {"plates": sw.mm(12), "materials": strong, "book": "metric", "rows_most": 2}
    assert sw.search(**said) == sw.search(**said, forms=forms)

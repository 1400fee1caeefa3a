"""The package against the independent model of tests/reference/python: written from the rules of the trade alone, by
brute force, in numbers of 30 digits. It shares no line and no number with the library."""

import sys

import pytest
import seamwright as sw
from conftest import ROOT
from hypothesis import given
from hypothesis import strategies as st

sys.path.insert(0, str(ROOT / "tests" / "reference" / "python"))
from seamwright_reference import vessel
from seamwright_reference.cases import joint as reference_joint
from seamwright_reference.sizing import size as reference_size


def near(x):
    return pytest.approx(float(x), rel=1e-11)


@st.composite
def joints(draw):
    """Any lap, single strap or double strap, with rows of one to three rivets and members of their own thickness."""
    kind = draw(st.sampled_from(["lap", "single strap", "double strap"]))
    count = draw(st.integers(1, 4))
    number = st.integers(1, 3)
    rows = [(draw(number), 1) for _ in range(count)]
    if kind == "double strap":
        # From the outside: rows through the wide strap alone, then those through both.
        first = draw(st.integers(0, count - 1))
        rows = [(n, 1 if at < first else 2) for at, (n, _) in enumerate(rows)]
    hole = draw(st.floats(12, 30))
    most = max(n for n, _ in rows)
    strip = draw(st.floats(1.3, 6)) * most * hole
    thickness = st.floats(5, 30)
    plate, first, second = draw(thickness), draw(thickness), draw(thickness)
    stress = st.floats(50, 200)
    return {
        "kind": kind, "rows": rows, "hole": hole, "strip": strip, "plate": plate, "first": first, "second": second,
        "tension": draw(stress), "other": draw(stress), "bearing": draw(stress), "other_bearing": draw(stress),
        "shear": draw(stress),
    }  # fmt: skip


def ours(case):
    """The joint and its stresses in the package."""
    mm, MPa, kind = sw.mm, sw.MPa, case["kind"]
    members = {"lap": {"other_plate": mm(case["first"])}, "single strap": {"strap": mm(case["first"])}}
    both = {"wide_strap": mm(case["first"]), "narrow_strap": mm(case["second"])}
    form = sw.Form(kind=kind, rows=case["rows"], arrangement="zigzag")
    one = sw.Joint(
        form=form, pitch=mm(case["strip"]), plate=mm(case["plate"]), hole=mm(case["hole"]),
        **members.get(kind, both),
    )  # fmt: skip
    steel = sw.Materials(
        tension=MPa(case["tension"]), bearing=MPa(case["bearing"]), rivet_shear=MPa(case["shear"]),
        other=sw.PlateStress(tension=MPa(case["other"]), bearing=MPa(case["other_bearing"])),
    )  # fmt: skip
    return one, steel


def theirs(case, strip, factor):
    """The same in the reference model."""

    def part(thickness):
        return {"thickness": thickness, "tension": case["other"], "bearing": case["other_bearing"]}

    others = [part(case["first"])] + ([part(case["second"])] if case["kind"] == "double strap" else [])
    return reference_joint({
        "form": "lap" if case["kind"] == "lap" else "butt", "pitch": strip, "others": others, "shear": case["shear"],
        "plate": {"thickness": case["plate"], "tension": case["tension"], "bearing": case["bearing"]},
        "rows": [{"rivets": n, "hole": case["hole"], "shear_planes": planes} for n, planes in case["rows"]],
        "double_shear_factor": factor,
    })  # fmt: skip


def name_of(cut, kind):
    """The reference model's name of a cut."""
    members = ("A", "B") if kind == "lap" else ("plate", "wide strap", "narrow strap")
    torn = [f"{m} tears row {r}" for m, r in zip(members, (cut.plate, cut.other, cut.narrow), strict=False) if r]
    return " + ".join(torn) or "all rivets"


@given(joints(), st.sampled_from([("metric", 2), ("indian", "1.875")]))
def test_every_mode_of_every_joint(case, book):
    one, steel = ours(case)
    rules, factor = book
    found = sw.check(joint=one, materials=steel, book=rules)
    model = theirs(case, one.strip.mm, factor)
    cuts = dict(model.cuts())
    for mode in found.modes:
        assert near(cuts[name_of(mode.cut, case["kind"])]) == mode.strength.N, mode.name
    assert near(min(cuts.values())) == found.governing.strength.N
    assert found.efficiency == near(min(cuts.values()) / model.solid())


SIZINGS = [("lap", n, [(1, 1)] * n) for n in (1, 2, 3)] + [("double strap", n, [(1, 2)] * n) for n in (1, 2, 3)]


@given(st.sampled_from(SIZINGS), st.integers(5, 40), st.integers(70, 110), st.integers(50, 80), st.integers(100, 180))
def test_sizing_by_the_indian_regulations(form, t, tension, shear, bearing):
    """Hole, three pitches, floor, cap, pitch taken, or the refusal."""
    kind, count, rows = form
    steel = sw.Materials(tension=sw.MPa(tension), rivet_shear=sw.MPa(shear), bearing=sw.MPa(bearing))
    wanted = sw.Form.lap(count) if kind == "lap" else sw.Form.double_strap(count)
    try:
        model = reference_size(
            "ibr", kind, t, rows, tension, shear, bearing, "1.875" if kind != "lap" else 1, by_weaker=t < 8
        )
    except ValueError:
        model = None
    if model is None or model["pitch"] is None:
        with pytest.raises(sw.SeamwrightError):
            sw.size(form=wanted, plate=sw.mm(t), materials=steel, book="indian")
        return
    made = sw.size(form=wanted, plate=sw.mm(t), materials=steel, book="indian")
    hole, pitch = made.hole, made.pitch
    assert hole.computed.mm == near(model["hole_calculated"])
    assert (hole.hole.mm, hole.rivet.mm) == (float(model["hole"]), float(model["rivet"]))
    assert pitch.by_shear.mm == near(model["pitch_by_shear"])
    assert pitch.by_weaker.mm == near(model["pitch_by_weaker_fate"])
    assert pitch.greatest.value.mm == near(model["cap"])
    assert pitch.least.mm == near(model["floor"])
    assert pitch.taken.mm == near(model["pitch"])
    if count > 1:
        assert made.gaps[0][0].mm == near(model["row_distance"])
    assert made.joint.margin.mm >= float(model["margin"]) - 1e-9


def balanced(made, model, unit):
    """The balances of a pitch, the floor and the taken pitch, in a unit; the hole was given."""
    pitch = made.pitch
    assert pitch.by_shear.to(unit) == near(model["pitch_by_shear"])
    assert pitch.by_weaker.to(unit) == near(model["pitch_by_weaker_fate"])
    if pitch.decided is sw.Decided.BALANCE:
        assert pitch.balance is sw.Balance.WEAKER
        assert pitch.taken.to(unit) == near(model["pitch"])


@given(st.sampled_from(SIZINGS), st.integers(8, 25), st.integers(70, 110), st.integers(50, 80), st.integers(100, 180))
def test_balances_of_general_practice(form, t, tension, shear, bearing):
    """Holes of the general series, double shear of 2; textbooks weigh shear or the weaker of shear and bearing."""
    kind, count, rows = form
    steel = sw.Materials(tension=sw.MPa(tension), rivet_shear=sw.MPa(shear), bearing=sw.MPa(bearing))
    wanted = sw.Form.lap(count) if kind == "lap" else sw.Form.double_strap(count)
    model = reference_size("metric", kind, t, rows, tension, shear, bearing, 2, by_weaker=True)
    made = sw.size(
        form=wanted, plate=sw.mm(t), materials=steel, book="metric", hole=sw.mm(float(model["hole"])),
        rivet=sw.mm(float(model["rivet"])),
    )  # fmt: skip
    balanced(made, model, "mm")


@given(st.sampled_from(SIZINGS), st.sampled_from([8, 10, 12, 14, 16]), st.integers(40, 48), st.integers(80, 100))
def test_balances_of_the_american_code(form, thirty_seconds, shear, bearing):
    """Driven sizes by thickness (read in state rules); 55 000 psi, the rest about it; double shear of 2."""
    kind, count, rows = form
    t = thirty_seconds / 32
    steel = sw.Materials(tension=sw.psi(55000), rivet_shear=sw.psi(1000 * shear), bearing=sw.psi(1000 * bearing))
    wanted = sw.Form.lap(count) if kind == "lap" else sw.Form.double_strap(count)
    model = reference_size("us", kind, t, rows, 55000, 1000 * shear, 1000 * bearing, 2, step="0.0625", by_weaker=True)
    made = sw.size(
        form=wanted, plate=sw.inch(t), materials=steel, book="us-code", hole=sw.inch(float(model["hole"])),
        rivet=sw.inch(float(model["rivet"])),
    )  # fmt: skip
    balanced(made, model, "inch")


@given(st.floats(8, 30), st.floats(600, 2500), st.floats(0.4, 1.0), st.floats(200, 500), st.floats(3, 8))
def test_pressures_by_three_formulas(t, inside, efficiency, tension, factor):
    """2 st J (t - 1)/D; TS t E/(R FS); and Reg. 176 in thirty-seconds, tons and per cent, C = 2.75 (from memory)."""
    form = sw.Form.double_strap(2)
    said = {"form": form, "plate": sw.mm(t), "tension": sw.MPa(tension), "efficiency": efficiency}
    ultimate = {"inside_diameter": sw.mm(inside), "footing": "ultimate"}
    plain = sw.Shell(inside_diameter=sw.mm(inside), footing="permissible")
    metric = sw.seam_pressure(**said, shell=plain, book="metric")
    assert metric.pressure.MPa == near(vessel.pressure_metric(t, inside, tension, efficiency, 1))
    american = sw.seam_pressure(**said, shell=sw.Shell(**ultimate, safety_factor=factor), book="us-existing")
    assert american.pressure.MPa == near(vessel.pressure_us(tension, t, efficiency, inside / 2, factor))
    british = sw.seam_pressure(**said, shell=sw.Shell(**ultimate), book="indian")
    psi = 6.894757293168361e-3
    by_hand = vessel.pressure_british(
        32 * t / 25.4, tension / (2240 * psi), 100 * efficiency, british.safety_factor, inside / 25.4
    )
    assert british.pressure.psi == pytest.approx(float(by_hand), rel=1e-9)


@given(st.floats(6, 16), st.floats(2.2, 5), st.floats(18, 26), st.floats(900, 1800), st.floats(4, 6))
def test_a_rating_recomputes_every_mode(t, share, hole, inside, factor):
    """The least cut for a length of seam over R FS, every mode worked again on the plate there is."""
    case = {
        "kind": "lap", "rows": [(1, 1), (1, 1)], "hole": hole, "strip": share * hole, "plate": t, "first": t,
        "second": t,
        "tension": 380.0, "other": 380.0, "bearing": 650.0, "other_bearing": 650.0, "shear": 300.0,
    }  # fmt: skip
    rated = sw.rate(
        form=sw.Form.lap(2), pitch=sw.mm(case["strip"]), plate=sw.mm(t), inside_diameter=sw.mm(inside),
        hole=sw.mm(hole), tension=sw.MPa(380), rivet_shear=sw.MPa(300), bearing=sw.MPa(650), safety_factor=factor,
        book="us-existing",
    )  # fmt: skip
    least = theirs(case, case["strip"], 2).cuts()[0][1]
    assert rated.seam.MPa == near(vessel.pressure_of_joint(least, case["strip"], inside / 2, factor))

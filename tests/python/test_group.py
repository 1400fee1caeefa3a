"""Groups of rivets: by hand, in units, refused, shown."""

import copy
import math
import pickle

import pytest
import seamwright as sw
from hypothesis import given
from hypothesis import strategies as st

LINE = [(sw.mm(0), sw.mm(100 * i)) for i in range(4)]
HANG = sw.GroupLoad(y=sw.kN(-25), at=(sw.mm(100), sw.mm(0)))


def checked(**changes):
    said = {"places": LINE, "hole": sw.mm(15), "shear": sw.MPa(60), "load": HANG, "book": "structural"}
    return sw.check_group(**{**said, **changes})


def test_unequal_areas_by_hand():
    """Two rivets 80 mm apart, holes of 20 and 10 mm: areas 1 and 1/4, centroid at 80/5 = 16 mm, Ip = 256 + 64^2/4."""
    found = sw.check_group(
        places=[(sw.mm(0), sw.mm(0)), (sw.mm(80), sw.mm(0))], hole=[sw.mm(20), sw.mm(10)], shear=sw.MPa(60),
        load=sw.GroupLoad(couple=sw.N_m(60)), book="metric",
    )  # fmt: skip
    assert math.isclose(found.areas, 1.25)
    assert math.isclose(found.centroid[0].mm, 16)
    assert math.isclose(found.polar.mm2, 1280)
    # 60 000 x 16/1280 = 750 N at each; the small one has the greater stress.
    assert [round(r.force[1].N, 9) for r in found.rivets] == [-750, 750]
    assert found.critical == 2
    assert math.isclose(found.shear.stress.MPa, 750 / (math.pi * 25))
    assert found.safe_load is None
    assert math.isclose(found.safe_couple.N_m, 60 / found.used)
    assert found.centre == found.centroid
    assert found.governs is sw.GroupMode.SHEAR
    assert found.bearing is None


def test_bearing_and_findings():
    """9762.8 N on 15 x 4 mm are 162.7 MPa of 120."""
    found = checked(plate=sw.mm(4), bearing=sw.MPa(120))
    assert found.governs is sw.GroupMode.BEARING
    assert math.isclose(found.bearing.stress.MPa, math.hypot(6250, 7500) / 60)
    (worst,) = found.open_findings
    assert worst.subject is sw.Subject.GROUP_BEARING
    assert (worst.row, worst.place) == (1, "rivet")
    assert "(rivet 1)" in str(worst)
    assert checked().findings[0].subject is sw.Subject.GROUP_BEARING_UNKNOWN


def test_inches_go_in_and_come_out():
    """Hicks, Handbook of Civil Engineering Calculations, p. 1.83: 5680 lb and 3.28 in, effective eccentricity."""
    places = [(sw.inch(x), sw.inch(y)) for x in (3, -3) for y in (4, 0, -4)]
    load = sw.GroupLoad(y=sw.lbf(-15000), at=(sw.inch(8), sw.inch(0)), row_rivets=3)
    found = sw.check_group(places=places, hole=sw.inch(0.875), shear=sw.psi(15000), load=load, book="structural")
    assert f"{found.rivets[0].resultant.lbf:.3g}" == "5.68e+03"
    assert math.isclose(found.polar.inch2, 118)
    assert math.isclose(found.moment.lbf_inch, -90000)
    assert math.isclose(found.centroid[0].inch - found.centre[0].inch, 118 / 36)
    assert (found.arm[0].unit, found.polar.unit, found.moment.unit) == ("inch", "inch2", "lbf_inch")
    assert "lbf in" in found.working().text


def test_results_are_frozen_equal_and_open():
    found = checked(rivet=sw.mm(14))
    assert pickle.loads(pickle.dumps(found)) == found == copy.deepcopy(found)
    assert pickle.loads(pickle.dumps(found)).working().text == found.working().text
    assert found.rivets[0].rivet == sw.mm(14)
    with pytest.raises(AttributeError):
        found.used = 1.0
    assert found.to_dict()["critical"] == 1
    shown = checked()._repr_html_()
    assert "Caution" in shown
    # sqrt(6250^2 + 7500^2) = 9762.81 N; on 15 mm that is 55.2462 MPa.
    assert '<th scope="col">F, kN</th>' in shown and "9.76281" in shown
    assert "shear, MPa" in shown and "55.2462" in shown
    made = sw.size_group(places=LINE, shear=sw.MPa(60), load=HANG, book="structural")
    assert made.hole == sw.mm(15.5)
    assert made.working().text.startswith("Working: size of the rivets of a group")
    assert "How it was sized" in made._repr_html_()


@pytest.mark.parametrize(
    ("changes", "kind", "part"),
    [
        ({"places": []}, "TOO_SMALL", "group_rivets = 0"),
        ({"places": LINE * 9}, "TOO_LARGE", "limit 32"),
        ({"places": [1]}, "UNREADABLE", "is not a point"),
        ({"hole": sw.mm(120)}, "HOLES_OVERLAP", "rivet_distance (no. 2) = 100 mm"),
        ({"hole": [sw.mm(15)] * 3}, "INCONSISTENT", "3 diameters for 4 rivets"),
        ({"hole": 15}, "UNREADABLE", "bare number"),
        ({"hole": None, "rivet": sw.mm(14)}, "MISSING", "hole is missing"),
        ({"load": 25}, "UNREADABLE", "a GroupLoad is needed"),
        ({"load": sw.GroupLoad()}, "TOO_SMALL", "load = 0 N"),
        ({"shear_planes": 3}, "TOO_LARGE", "shear_planes"),
        ({"places": LINE[:1]}, "RIVET_TURNS", "couple = -2500000 N mm"),
        ({"shear": sw.MPa(math.nan)}, "NOT_FINITE", "shear"),
    ],
)
def test_refused(changes, kind, part):
    with pytest.raises(sw.SeamwrightError) as caught:
        checked(**changes)
    assert caught.value.kind.name == kind
    assert part in str(caught.value)


def test_loads_are_refused_where_they_are_made():
    for said, part in [
        ({"y": sw.kN(1)}, "at is missing"),
        ({"y": 5, "at": (sw.mm(0), sw.mm(0))}, "bare number"),
        ({"couple": sw.kN(3)}, "a Moment is needed"),
        ({"y": sw.kN(1), "at": sw.mm(3)}, "is not a point"),
        ({"y": sw.kN(1), "at": (sw.mm(0), sw.mm(0)), "row_rivets": 61}, "row_rivets"),
    ]:
        with pytest.raises(sw.SeamwrightError, match=part):
            sw.GroupLoad(**said)


@given(st.lists(st.integers(0, 24), min_size=2, max_size=20, unique=True), st.floats(-500, 500), st.floats(-90, 90))
def test_equilibrium(cells, at, along):
    """Sums of forces and their moment about the origin, in plain Python."""
    places = [(sw.mm(80 * (i % 5)), sw.mm(80 * (i // 5))) for i in cells]
    load = sw.GroupLoad(x=sw.kN(along), y=sw.kN(-20), at=(sw.mm(at), sw.mm(30)))
    found = sw.check_group(places=places, hole=sw.mm(17), shear=sw.MPa(60), load=load, book="metric")
    forces = [(r.force[0].N, r.force[1].N, r.place[0].mm, r.place[1].mm) for r in found.rivets]
    assert math.isclose(sum(f[0] for f in forces), 1000 * along, abs_tol=1e-5)
    assert math.isclose(sum(f[1] for f in forces), -20_000, abs_tol=1e-5)
    turning = sum(x * fy - y * fx for fx, fy, x, y in forces)
    assert math.isclose(turning, at * -20_000 - 30 * 1000 * along, abs_tol=1e-2)

"""Published worked examples: printed digits as tolerance. Sources: their ids name book and example.

KG Khurmi & Gupta ch. 9, SS Sadhu Singh ch. 5, BH Bhandari ch. 8, JN, SK, JD, LV further textbooks (all as transcribed
in open notes; printed pages not seen); LO "laying out" handbook p. 33 (read); US letters: boiler code 1914/1918 (A, B of
the quadruple joint read, the rest from memory); MA Applied Science for Metal Workers sec. 348 (read); CAL California
Title 8 s.796 (read); a Hartford table (read). German and British shells: derived from the formulas, not published.
"""

from fractions import Fraction

import pytest

from seamwright_reference import books, vessel
from seamwright_reference.cases import joint


def near(printed, slack=0.5):
    """Half a unit of the last printed digit; `printed` is text."""
    digits = len(printed.partition(".")[2])
    return pytest.approx(float(printed), abs=slack * 10.0**-digits * (1 + 1e-9))


def lap(p, t, d, n, tension, shear, bearing, rows=None):
    part = {"thickness": t, "tension": tension, "bearing": bearing}
    rows = [{"rivets": k, "hole": d} for k in (rows or [1] * n)]
    return joint({"form": "lap", "pitch": p, "plate": part, "others": [part], "rows": rows, "shear": shear})


def butt(p, t, d, rows, tension, shear, bearing, factor, straps=None):
    """`rows` of (rivets, planes); where no strap is printed, straps as thick as the plate."""
    parts = [{"thickness": s, "tension": tension, "bearing": bearing} for s in (t, *(straps or (t, t)))]
    rows = [{"rivets": n, "hole": d, "shear_planes": k} for n, k in rows]
    return joint({"form": "butt", "pitch": p, "plate": parts[0], "others": parts[1:], "rows": rows, "shear": shear,
                  "double_shear_factor": factor})


# id, joint, printed tearing / shear / bearing, percent of the least classic figure; slack of the shear in newtons
# (KG prints with pi/4 = 0.7855 or rounds the rivet first: a habit of the source, kept apart from a misprint).
CHECKED = [
    ("KG-9.1", lap(75, 15, 25, 2, 400, 320, 640), 300000, 314160, 480000, None, 1),
    ("KG-9.2a", lap(50, 6, 20, 1, 120, 90, 180), 21600, 28274, 21600, "60", 1),
    ("KG-9.2b", lap(65, 6, 20, 2, 120, 90, 180), 32400, 56548, 43200, "69.2", 1),
    ("KG-9.3", butt(100, 20, 25, [(1, 2)] * 2, 120, 100, 150, 2), 180000, 196375, 150000, "62.5", 30),
    ("KG-9.4", lap(71, 13, 23, 2, 80, 60, 120), 49920, 49864, 71760, "67.5", 10),
    ("KG-9.5", lap(66, 7, 19, 3, 90, 60, 120), 29610, 51045, 47880, None, 15),
    ("KG-9.6", butt(60, 10, 19, [(1, 2)], 80, 60, 120, "1.875"), 32800, 31900, None, "66.5", 5),
    ("KG-9.7", butt(84, 12, 21, [(1, 2)] * 2, 90, 56, 140, "1.875"), 68040, 72745, 70560, "75", 15),
    ("KG-9.9", butt(196, 25, "31.5", [(1, 1), (2, 2), (2, 2)], 84, 60, 130, "1.875"), 345450, 397500, 511875, None, 60),
    ("KG-9.10", butt(220, 28, "34.5", [(1, 1), (2, 2), (2, 2)], 75, 60, 125, "1.875"), 389550, 476820, 603750, None, 70),
    ("KG-9.11", butt(200, "12.5", "21.5", [(1, 2), (2, 2), (2, 2)], 80, 65, 160, "1.75"), 178500, 206500, 215000, "89.25", 20),
    ("KG-9.13", lap(200, 10, "25.5", 5, 112, 84, 200, [1, 3, 1]), 195440, 214525, 255000, None, 40),
]


@pytest.mark.parametrize("name,of,tearing,shear,bearing,percent,slack", CHECKED, ids=lambda x: x if isinstance(x, str) else "")
def test_classic_figures(name, of, tearing, shear, bearing, percent, slack):
    got = of.classic()
    assert float(got["tearing"]) == pytest.approx(tearing, abs=0.5)
    assert float(got["shear"]) == pytest.approx(shear, abs=slack)
    if bearing is not None:
        assert float(got["bearing"]) == pytest.approx(bearing, abs=0.5)
        if percent is not None:
            assert float(min(got.values()) / of.solid() * 100) == near(percent)


@pytest.mark.parametrize("at,percent,force", [(8, "79.2", 326065), (9, "80.8", 373196), (11, "80.9", 181225)])
def test_inner_row_with_outer_rivet_governs(at, percent, force):
    """KG-9.9, 9.10, 9.13: tear at the second row with the outer rivet sheared."""
    of = CHECKED[at][1]
    cuts = dict(of.cuts())
    name = "A tears row 2" if of.form == "lap" else "plate tears row 2"
    assert float(cuts[name]) == pytest.approx(force, abs=10)
    assert float(of.efficiency({name}) * 100) == near(percent)


@pytest.mark.parametrize("t,unwin,hole", [(13, "21.6", 23), (10, "18.97", 19), (12, "20.8", 21), (25, "30", 31.5), (28, "31.75", 34.5)])
def test_khurmi_holes(t, unwin, hole):
    calculated, standard, _ = books.hole("ibr", t, 60, 120)
    assert float(calculated) == near(unwin)
    assert standard == hole


def test_khurmi_pitches():
    assert float(books.hole_of_thin_plate(7, 60, 120)) == near("17.8")
    balanced = books.balanced_pitches
    assert float(balanced(23, 13, 2, 0, 1, 80, 60, 120)[0]) == near("71")
    assert float(balanced(19, 7, 3, 0, 1, 90, 60, 120)[0]) == near("100")
    assert float(balanced(19, 10, 0, 1, "1.875", 80, 60, 120)[0]) == near("58.87")
    assert float(balanced(21, 12, 0, 2, "1.875", 90, 56, 140)[0]) == near("88.35")
    assert float(balanced("31.5", 25, 1, 4, "1.875", 84, 60, 130)[0]) == near("220.8")
    assert float(balanced("34.5", 28, 1, 4, "1.875", 75, 60, 125)[0]) == near("261.5")
    caps = [("lap", 3, 7, "65.57"), ("double strap", 1, 10, "58.78"), ("double strap", 2, 12, "83.28"),
            ("double strap", 5, 25, "191.28"), ("double strap", 5, 28, "209.28")]
    for form, rivets, t, printed in caps:
        assert float(books.greatest_pitch(form, rivets, t)) == near(printed)


def test_misprint_of_khurmi_9_4():
    """Printed 75.28 for 2.62 x 13 + 41.28 = 75.34: a misprint of the source."""
    assert float(books.greatest_pitch("lap", 2, 13)) == near("75.34")
    assert float(books.greatest_pitch("lap", 2, 13)) != near("75.28")


def test_rows_margins_straps():
    assert float(books.row_distance("zig-zag", 71, 23)) == near("38.8")
    assert float(books.row_distance("outer to zig-zag", 196, "31.5")) == near("75.425")
    assert float(books.row_distance("full zig-zag", 196, "31.5")) == near("53.445")
    assert float(books.margin("31.5")) == near("47.25")
    assert [float(s) for s in books.strap("double unequal", 25)] == [18.75, 15.625]
    assert float(books.strap("double", 12)) == 7.5
    # BH-8.22: alternate outer rivets omitted.
    assert float(books.strap("double omitted", 25, 150, 30)) == near("20.833")


def letters(*args, **kw):
    return {k: float(v) for k, v in books.us_letters(*args, **kw).items()}


@pytest.mark.parametrize("args,kw,printed,efficiency", [
    (("1.625", "0.25", "0.6875", "0.3712", 1, 0), {}, (22343, 12890, 16332, 16328), 0.576),
    (("2.875", "0.3125", "0.75", "0.4418", 2, 0), {}, (49414, 36523, 38878, 44531), 0.739),
    (("4.875", "0.375", "0.875", "0.6013", 1, 2), {"b": "0.3125"}, (100547, 82500, 132286, 90910, 90429, 88320, 88800), 0.82),
    (("6.5", "0.375", "0.8125", "0.5185", 1, 4), {"b": "0.3125"}, (134062, 117304, 205326, 123360, 124667, 139902, 138595), 0.875),
    (("15", "0.5", "0.9375", "0.6903", 3, 8), {"b": "0.4375"},
     (412500, 386718, 577091, 391310, 400494, 399902, 426269, 473145, 447369), 0.937),
])
def test_us_letters(args, kw, printed, efficiency):
    got = letters(*args, ts=55000, s=44000, c=95000, s2=88000, **kw)
    # The code drops fractions: one pound.
    assert list(got.values()) == pytest.approx(list(printed), abs=1.0)
    assert min(v for k, v in got.items() if k != "A") / got["A"] == pytest.approx(efficiency, abs=1e-3)


@pytest.mark.parametrize("p,d,printed", [("2", "0.6875", "0.66"), ("3", "0.6875", "0.77"), ("2.0625", "0.75", "0.64"),
                                         ("3.25", "0.8125", "0.75"), ("3.5", "0.9375", "0.73")])
def test_hartford(p, d, printed):
    assert float(1 - Fraction(d) / Fraction(p)) == near(printed, slack=1)
    of = lap(p, "0.25", d, 1, 1, 100, 100)
    assert float(of.efficiency()) == pytest.approx(float(1 - Fraction(d) / Fraction(p)), abs=1e-15)


def test_laying_out():
    """LO-p33 both methods: 76 % of the plate, 104 % of the rivets."""
    assert float(lap("3.9375", "0.4375", "0.9375", 3, 60000, 42000, 95000).efficiency() * 100) == near("76")
    assert float(books.british_rivets("0.69029", 3, 1, 23, "4.2", 28, "0.4375", "3.9375") * 100) == near("104")


def test_vessel():
    assert float(vessel.thickness_metric("0.95", 1500, 90, "0.75", 1)) == near("11.55", slack=1)
    assert float(vessel.thickness_metric("2.5", 1600, 75, 1, 1)) == near("27.6", slack=1)
    assert float(vessel.pressure_us(60000, "0.5", "0.5", 20, 6)) == pytest.approx(125)
    assert float(vessel.pressure_british(16, 28, 75, "2.75", 60)) == near("178.18")
    assert float(vessel.thickness_german(2000, 12, 36, 4, "0.85")) == near("16.6863")
    assert float(vessel.pressure_german(vessel.thickness_german(2000, 12, 36, 4, "0.85"), 2000, 36, 4, "0.85")) == pytest.approx(12)


def test_x4_x6_x8_of_tricky():
    assert float(books.plate_by_reg_184d(63, 21, 30, books.row_distance("zig-zag", 63, 21))) == near("0.6202")
    d, hole, _ = books.hole("ibr", 7, 56, 160)
    assert (float(d), float(hole)) == (near("25.46"), 28.5)
    cap = books.greatest_pitch("lap", 1, 7)
    assert float(cap) == near("50.45")
    assert books.admissible_pitch(60, 2 * hole, cap) is None

    def pressure(t):
        return vessel.pressure_of_joint(lap("3.5", t, "0.9375", 2, 55000, 44000, 95000).cuts()[0][1], "3.5", 24, 5)

    assert [float(pressure(t)) for t in ("0.50", "0.45", "0.40")] == [near("144.6"), near("144.6"), near("134.2")]
    assert float(vessel.years_to(pressure, "0.45", "0.005", 125)) == near("15.5")


MORE = [
    ("KG-X4", butt(80, 12, 18, [(1, 2)] * 2, 115, 80, 160, 2), "62.6"),
    ("JN-11.1", butt(4, "0.625", 1, [(1, 2)] * 2, 28, 20, 40, 2), "71.4"),
    ("JN-11.2a", lap("2.5", "0.5", "0.875", 1, 8, 6, 10), "36.1"),
    ("JN-11.2b", lap("3.5", "0.5", "1.125", 1, 8, 6, 10), "40.2"),
    ("SK-16.5", butt(64, 12, 24, [(1, 2)], 120, 100, 200, 2), "62.5"),
    ("JD-11.4", butt(200, 16, 24, [(1, 2), (2, 2), (3, 2)], 80, 60, 100, "1.875"), "88"),
    ("LV-15.3", lap(1, "0.125", "0.375", 1, 18000, 15000, 32000), "62.5"),
    # California drops or keeps the second digit as it likes: one unit of the first decimal.
    ("CAL-3", lap("1.875", "0.3125", "0.75", 1, 55000, 44000, 95000), "60.0"),
    ("CAL-4", lap("1.9375", "0.34375", "0.8125", 1, 55000, 44000, 95000), "58.0"),
    ("CAL-5", lap("1.9375", "0.375", "0.8125", 1, 55000, 44000, 95000), "57.0"),
    ("CAL-7", lap("2.25", "0.4375", "0.9375", 1, 55000, 44000, 95000), "56.0"),
    ("CAL-8", lap("2.125", "0.46875", "0.9375", 1, 55000, 44000, 95000), "55.5"),
    ("CAL-10", lap("2.375", "0.5625", "1.0625", 1, 55000, 44000, 95000), "53.0"),
    ("CAL-11", lap("2.25", "0.59375", "1.0625", 1, 55000, 44000, 95000), "52.8"),
    ("CAL-13", lap("2.3125", "0.65625", "1.125", 1, 55000, 44000, 95000), "51.4"),
]


@pytest.mark.parametrize("name,of,percent", MORE, ids=[m[0] for m in MORE])
def test_printed_efficiency(name, of, percent):
    assert float(of.efficiency() * 100) == near(percent, slack=1 if name.startswith("CAL") else 0.5)


@pytest.mark.parametrize("name,of,printed", [
    ("KG-X3", butt(60, 10, 20, [(1, 2)], 100, 80, 160, 2), "53.8"),
    ("CAL-1", lap("1.875", "0.25", "0.6875", 1, 55000, 44000, 95000), "63.6"),
    ("CAL-2", lap("1.875", "0.28125", "0.75", 1, 55000, 44000, 95000), "60.3"),
    ("CAL-14", lap("2.3125", "0.6875", "1.125", 1, 55000, 44000, 95000), "51.4"),
])
def test_misprints_stay_flagged(name, of, printed):
    """Printed figures above what their own inputs give: 53.33, 63.33, 60.00 and 50.02 percent."""
    right = {"KG-X3": "53.33", "CAL-1": "63.33", "CAL-2": "60.00", "CAL-14": "50.02"}[name]
    assert float(of.efficiency() * 100) == near(right)
    assert float(right) < float(printed) - 0.2


def test_strengths_and_pitches():
    """KG-X1 (pi/4 rounded), SK-16.6, JN-11.4, SK-16.1, SS-5.7."""
    assert float(lap(60, 15, 20, 1, 120, 90, 160).cuts()[0][1]) == pytest.approx(28280, abs=6)
    assert float(butt(80, 12, 18, [(1, 2)] * 2, 460, 320, 640, 2).cuts()[0][1]) == 276480
    assert float(books.balanced_pitches("0.875", "0.5", 0, 2, 2, 6, 5, 10)[1]) == near("3.792")
    d = books.hole_of_thin_plate(10, "94.5", "212.5")
    for rivets, printed in ((1, "58.62"), (2, "73.91")):
        p = books.balanced_pitches(d, 10, rivets, 0, 1, 150, "94.5", "212.5")[0]
        assert float((p - d) / p * 100) == near(printed)
    assert float(books.hole_of_thin_plate(6, 100, 150)) == near("11.46")

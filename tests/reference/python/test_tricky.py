"""The invented joints of tricky.json: their answers were computed by another engine, outside this code base."""

import json
from pathlib import Path

import pytest

from seamwright_reference.cases import evaluate

DATA = json.loads((Path(__file__).parent / "tricky.json").read_text())


def shaped(given):
    """The case of the command line for one of tricky.json."""
    if given["form"] == "lap":
        parts = [{"thickness": given[f"plate_{x}_mm"], "tension": given[f"tension_{x}_MPa"],
                  "bearing": given["bearing_MPa"]} for x in "ab"]
        rows = given["rows_outside_of_a_first"]
    else:
        parts = [{"thickness": given[k], "tension": given["tension_MPa"], "bearing": given["bearing_MPa"]}
                 for k in ("plate_mm", "wide_strap_mm", "narrow_strap_mm") if given[k] is not None]
        rows = given["rows_outside_first"]
    rows = [{"rivets": r["rivets"], "hole": r["hole_mm"], "shear_planes": r.get("shear_planes", 1)} for r in rows]
    return {"form": given["form"], "pitch": given["pitch_mm"], "plate": parts[0], "others": parts[1:], "rows": rows,
            "shear": given["shear_MPa"], "double_shear_factor": given.get("double_shear_factor", 2),
            "one_plane_of_double": given.get("one_plane_of_double")}


@pytest.mark.parametrize("case", DATA["cases"], ids=lambda case: case["id"])
def test_tricky(case):
    answer = evaluate(shaped(case["inputs"]))
    modes = answer["modes"]
    if case["inputs"]["form"] == "lap":
        # tricky.json lists no cuts in which both plates of a lap tear: never below either tear alone.
        modes = [mode for mode in modes if " + " not in mode["name"]]
    strengths = {mode["name"]: mode["strength"] for mode in modes}
    assert {name: strengths[name] for name in case["modes_N"]} == pytest.approx(case["modes_N"], abs=6e-4)
    assert sorted(m["strength"] for m in modes)[:len(case["modes_N"])] == pytest.approx(
        sorted(case["modes_N"].values()), abs=6e-4)
    assert answer["solid"] == pytest.approx(case["solid_N"], rel=1e-12)
    assert answer["efficiency"] == pytest.approx(case["efficiency"], abs=6e-10)
    assert answer["modes"][1]["strength"] / answer["modes"][0]["strength"] == pytest.approx(
        case["runner_up_ratio"], abs=6e-7)
    assert strengths[case["governs"]] == pytest.approx(answer["modes"][0]["strength"], rel=1e-12)


def test_one_plane_is_half_if_left_out():
    """X1 gives 0.9375, half of its 1.875: leaving it out changes nothing."""
    case = next(case for case in DATA["cases"] if case["id"] == "X1")
    given = shaped(case["inputs"])
    del given["one_plane_of_double"]
    assert evaluate(given)["efficiency"] == pytest.approx(case["efficiency"], abs=6e-10)


def test_diameters_by_use():
    """By hand, pi = 3.14159265: hole 21 tears, 20 shears (18 849.556 N), 19 bears (27 360 N)."""
    part = {"thickness": 12, "tension": 80, "bearing": 120}
    row = {"rivets": 1, "hole": 21, "shear_diameter": 20, "bearing_diameter": 19}
    given = {"form": "lap", "pitch": 60, "plate": part, "others": [part], "rows": [row], "shear": 60}
    classic = evaluate(given)["classic"]
    assert classic == pytest.approx({"tearing": 37440, "shear": 18849.5559, "bearing": 27360}, abs=1e-3)


def test_pitch_where_all_modes_balance():
    """X3a, X3b: all rivets 181 812.803 N, the outer one 38 276.379 N (from the file): 57 + 143 536.424/1800 mm."""
    from seamwright_reference.sizing import size

    got = size("ibr", "double strap", 20, [(1, 1), (2, 2)], 90, 60, 150, "1.875")
    assert got["hole"] == 28.5
    assert float(got["pitch_by_shear"]) == pytest.approx(28.5 + 181812.803 / 1800, abs=1e-5)
    assert float(got["pitch_of_all_modes"]) == pytest.approx(57 + 143536.424 / 1800, abs=1e-5)

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

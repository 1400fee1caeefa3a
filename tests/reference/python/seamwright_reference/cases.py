"""Joints from plain dictionaries; the shape is in README.md."""

from .model import Joint, Part, Row


def joint(case):
    """A lap or butt joint of the JSON shape (RULES.md section 6)."""
    form = case["form"]
    if form not in ("lap", "butt"):
        raise ValueError(f"form: {form!r} is not known; use 'lap' or 'butt'")
    names = ("A", "B") if form == "lap" else ("plate", "wide strap", "narrow strap")

    def part(name, of):
        return Part(name, of["thickness"], of["tension"], of["bearing"])

    plate = part(names[0], case["plate"])
    others = [part(name, of) for name, of in zip(names[1:], case["others"])]
    rows = []
    for row in case["rows"]:
        reach = row.get("shear_planes", len(others))
        if not 1 <= reach <= len(others):
            raise ValueError(f"shear_planes: {reach} where there are {len(others)} other plates")
        # A row in single shear goes through the wide strap only (RULES.md section 6).
        rows.append(Row(row["rivets"], row["hole"], [s.name for s in others[:reach]],
                        row.get("shear_diameter"), row.get("bearing_diameter")))
    return Joint(form, case["pitch"], plate, others, rows, case["shear"], case.get("double_shear_factor", 2),
                 case.get("one_plane_of_double"))


def evaluate(case):
    """The answer of the command line to one joint."""
    of = joint(case)
    cuts = of.cuts()
    answer = {"id": case.get("id"), "solid": float(of.solid()), "governs": cuts[0][0],
              "efficiency": float(of.efficiency()), "modes": [{"name": n, "strength": float(f)} for n, f in cuts],
              "classic": {name: float(force) for name, force in of.classic().items()}}
    if "counted" in case:
        answer["efficiency_counted"] = float(of.efficiency(set(case["counted"])))
    return answer

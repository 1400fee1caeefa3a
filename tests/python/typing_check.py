"""Read by pyright in strict mode, never run: the types that a user meets."""

from typing import assert_type

import numpy as np
import seamwright as sw
from numpy.typing import NDArray
from seamwright import formula

assert_type(sw.mm(12), sw.Length[float])
assert_type(sw.inch(0.5).mm, float)
assert_type(sw.inch([0.5, 1.0]).mm, NDArray[np.float64])
assert_type(sw.psi(11000), sw.Stress[float])
assert_type(sw.kN(3).lbf, float)
assert_type(sw.mm(3) + sw.inch(1), sw.Length[float])
assert_type(2 * sw.mm(3), sw.Length[float])
assert_type(sw.mm(3) / sw.mm(2), float)
assert_type(sw.mm(3) / 2, sw.Length[float])

steel = sw.Materials(tension=sw.MPa(80), rivet_shear=sw.MPa(60), bearing=sw.MPa(120))
design = sw.size(form=sw.Form.lap(2), plate=sw.mm(13), materials=steel, book="metric")
assert_type(design, sw.Design)
assert_type(design.joint.pitch, sw.Length[float])
assert_type(design.joint.margin, sw.Length[float] | None)
assert_type(design.analysis.governing.strength, sw.Force[float])
assert_type(design.analysis.governing.strength.N, float)
assert_type(design.analysis.findings, tuple[sw.Finding, ...])
assert_type(design.pitch.decided, sw.Decided)
assert_type(design.working(sw.Dialect.LATEX), sw.Working)
assert_type(design.drawing(object="Drum"), sw.Drawing)
assert_type([mode.name for mode in design.analysis.modes], list[str])

rules = sw.book("indian").derive(id="mine", changes={"shear.double": 1.75})
assert_type(rules["shear.double"], float)
assert_type(rules.series[0].hole.mm, float)
found = sw.check(joint=design.joint, materials=steel.divided_by(4), book=rules)
assert_type(found, sw.Analysis)

sheet = sw.shop_sheet(
    joint=design.joint,
    materials=steel,
    book=rules,
    run=sw.Run.straight(length=sw.m(3), first_end=sw.mm(40), last_end=sw.mm(40)),
    head=sw.HeadForm.BUTTON,
    length_rule="hand",
)
assert_type(sheet.holes()[0].x.mm, float)
assert_type(sheet.masses.total.kg, float)
assert_type(formula.evaluate("half", fs=3.0), float)

drum = sw.Shell(inside_diameter=sw.m(1), footing="permissible")
made = sw.vessel(
    form=sw.Form.lap(2),
    pressure=sw.MPa(1),
    shell=drum,
    materials=steel,
    plates=[sw.mm(10), sw.mm(12)],
    book="metric",
    girth_form=sw.Form.lap(1),
)
assert_type(made, sw.Vessel)
assert_type(made.seam, sw.Design)
assert_type(made.allowed.pressure, sw.Stress[float])
assert_type(made.girth, sw.Girth | None)
assert_type(sw.joint_pressure(seam=found, shell=drum), sw.Allowed)
assert_type(sw.all_forms(), tuple[sw.Form, ...])

answer = sw.reconcile(joint=design.joint, materials=steel, book="metric", stated={"Ps": "31897 N"})
assert_type(answer.best, sw.Explanation | None)
assert_type(answer.nearest.conventions, tuple[sw.Convention, ...])
drawn = sw.problem(seed=1, form=sw.Form.lap(2), setting="boiler", task=sw.Task.CHECK, effect="cap", book="indian")
assert_type(drawn.mark({"Ps": "31897 N"})["Ps"].kind, sw.MarkKind)
assert_type(sw.problem_sheet(problems=[drawn], dialect="latex"), sw.Working)

both = sw.compare(books=["metric", rules], forms=sw.Form.lap(2), plate=sw.mm(12), materials=steel)
assert_type(both["A"].partings, tuple[sw.Parting, ...])
assert_type(sw.slopes(joint=design.joint, materials=steel, book="metric")["p"].efficiency, sw.Sided)
assert_type(sw.worst_case(joint=design.joint, materials=steel, book="metric", hole=sw.mm(0.3)), sw.WorstCase)

try:
    sw.Form.lap(9)
except sw.SeamwrightError as error:
    assert_type(error.kind, sw.ErrorKind)
    assert_type(error.limit, float | None)

# Refused by the types as by the library: pyright reports an ignore that is not needed.
sw.Joint(form=sw.Form.lap(1), pitch=50, plate=sw.mm(6), hole=sw.mm(20))  # pyright: ignore[reportArgumentType]
sw.Joint(form=sw.Form.lap(1), pitch=sw.MPa(50), plate=sw.mm(6), hole=sw.mm(20))  # pyright: ignore[reportArgumentType]
sw.check(design.joint, steel, "metric")  # pyright: ignore[reportCallIssue]

# ---
# jupyter:
#   jupytext:
#     text_representation:
#       extension: .py
#       format_name: percent
#   kernelspec:
#     display_name: Python 3
#     language: python
#     name: python3
# ---

# %% [markdown]
# # Set and mark a class
#
# > **Caution.** Design aid only. Local codes, the inspecting authority and licensed practice govern; old shells need
# > inspection before any rating.
#
# *The class, the students and all joints of this notebook are invented.*
#
# A teacher needs problems with sensible numbers, in which the point of the lesson really decides; a key; the full
# working for those who got lost; and an evening in which the marking does not take until midnight.

# %%
import math
import tempfile
from pathlib import Path

import seamwright as sw
from seamwright import plot

# %% [markdown]
# ## Draw the problems
#
# Each problem is drawn from a number. The same number gives the same problem on every machine, so that a colleague can
# be sent "number 12" and not a file. The *effect* is what decides, by at least 3 %: here shearing of the rivets,
# tearing of the plate, and the code's cap on the pitch.

# %%
lap = sw.Form.lap(2)
family = {"form": lap, "setting": "boiler", "book": "metric"}
problems = [
    sw.problem(seed=12, task="check", effect="shearing", **family),
    sw.problem(seed=12, task="check", effect="tearing", **family),
    sw.problem(seed=12, task="size", effect="cap", **family),
]
for drawn in problems:
    print(drawn)
assert problems[0].analysis.tear_outer.N >= 1.03 * problems[0].analysis.shear_all.N
assert problems[1].analysis.shear_all.N >= 1.03 * problems[1].analysis.tear_outer.N
assert problems[2].design.pitch.decided is sw.Decided.CAP

# %% [markdown]
# ## The sheet for the class

# %%
sw.problem_sheet(problems=problems, audience="class")

# %% [markdown]
# ## The key, and the first answer by hand
#
# The teacher's sheet has the answers too.

# %%
sw.problem_sheet(problems=problems[:1], audience="teacher")

# %% [markdown]
# Problem 1 by hand: holes of 17 mm, plates of 20 mm, a pitch of 54 mm; 84, 64 and 140 MPa.
#
# | | | |
# |---|---|---:|
# | solid strip | $54 \cdot 20 \cdot 84$ | 90 720 N |
# | tearing | $(54 - 17) \cdot 20 \cdot 84$ | 62 160 N |
# | one rivet in shear | $\frac{\pi}{4} 17^2 \cdot 64$ | 14 527 N |
# | two rivets in shear | $2 \cdot \frac{\pi}{4} 17^2 \cdot 64$ | 29 053 N |
# | one rivet crushed | $17 \cdot 20 \cdot 140$ | 47 600 N |
# | two rivets crushed | $2 \cdot 17 \cdot 20 \cdot 140$ | 95 200 N |
# | efficiency | $29\,053/90\,720$ | 0.320 |

# %%
key = {line.name: line.value for line in problems[0].key}
rivet = math.pi / 4 * 17**2 * 64
shear = 2 * rivet
assert key["F0"] == 54 * 20 * 84 == 90720
assert key["Pt"] == (54 - 17) * 20 * 84 == 62160
assert key["Fb.1"] == 17 * 20 * 140 == 47600
assert key["Pc"] == 2 * 17 * 20 * 140 == 95200
assert math.isclose(key["Fs.1"], rivet, rel_tol=1e-12) and round(rivet) == 14527
assert math.isclose(key["Ps"], shear, rel_tol=1e-12) and round(shear) == 29053
assert math.isclose(key["J"], shear / 90720, rel_tol=1e-12)

# %% [markdown]
# For the blackboard: why shearing decides. The ring is the problem's joint; a rivet in such a thick plate is far too
# small, and a good designer would take a greater one.

# %%
ax = plot.mode_map(problems[0].analysis)

# %% [markdown]
# ## Mark the answers
#
# Three students hand in. Ada has it right. Ben took the diameter of the cold rivet, 16 mm, and not the hole that the
# driven rivet fills: $\frac{\pi}{4} 16^2 \cdot 64 = 12\,868$ N for one. Cleo had it right and copied it wrong: 29 503
# for 29 053. What Ben and Cleo then computed from their wrong figure is right in itself.

# %%
right = {"F0": "90720 N", "Pt": "62160 N", "Fb.1": "47600 N", "Pc": "95200 N"}
handed_in = {
    "Ada": {**right, "Fs.1": "14527 N", "Ps": "29053 N", "P": "29053 N", "J": "0.320"},
    "Ben": {**right, "Fs.1": "12868 N", "Ps": "25736 N", "P": "25736 N", "J": "0.2837"},
    "Cleo": {**right, "Fs.1": "14527 N", "Ps": "29503 N", "P": "29503 N", "J": "0.3252"},
}
marks = {name: problems[0].mark(answers) for name, answers in handed_in.items()}
for name, marked in marks.items():
    print(f"{name}: {marked.credited} of {marked.asked};", *(str(m) for m in marked.marks if m.kind.value != "right"))

# %%
marks["Ben"]

# %% [markdown]
# A slip costs once. The mark names it where it is known, and says *perhaps* where the digits do not rule out chance; a
# wrong figure that nothing explains is just wrong.

# %%
assert round(math.pi / 4 * 16**2 * 64) == 12868 == 25736 / 2
assert marks["Ada"].credited == marks["Ada"].asked == 8
assert marks["Ben"].credited == marks["Cleo"].credited == 7
assert "rivet's diameter" in marks["Ben"]["Fs.1"].convention.words
assert marks["Ben"]["Ps"].kind is sw.MarkKind.CARRIED_OVER
assert "changed over" in marks["Cleo"]["Ps"].convention.words
assert marks["Ben"]["J"].kind is sw.MarkKind.CARRIED_OVER

# %% [markdown]
# ## From sheet to LaTeX
#
# The same sheets, and the full working of each problem, as LaTeX for the department's own style; `save` writes them
# whole or not at all.

# %%
with tempfile.TemporaryDirectory() as folder:
    sheet = sw.problem_sheet(problems=problems, audience="class", dialect="latex")
    path = sheet.save(Path(folder) / "class.tex")
    solution = problems[0].save(Path(folder) / "solution-1.tex")
    print(path.name, "and", solution.name, "written")
    assert "Drawn from number" not in path.read_text()  # The class does not see the numbers.
print(sheet.text[:600])

# %% [markdown]
# And this is the solution of problem 1 for who got lost, step by step:

# %%
problems[0].working("html")

# %% [markdown]
# > **Caution.** Design aid only. Local codes, the inspecting authority and licensed practice govern; old shells need
# > inspection before any rating.

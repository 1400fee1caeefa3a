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
# # Which rule book?
#
# > **Caution.** Design aid only. Local codes, the inspecting authority and licensed practice govern; old shells need
# > inspection before any rating.
#
# *The brewery boiler and all figures of this notebook are invented.*
#
# One brief, several books: an 18 mm shell, closed by a butt joint with two straps and two rows of rivets on each side.
# Each book has its own hole, its own strength of a rivet with two shear planes, its own limits of the pitch. This
# notebook shows what that does, and on which clause it rests. **It does not choose**: the book is chosen by the place
# where the boiler stands and by who inspects it.

# %%
import math

import seamwright as sw
from seamwright import MPa, mm, plot

steel = sw.Materials(tension=MPa(95), rivet_shear=MPa(50), bearing=MPa(160))
brief = {"form": sw.Form.double_strap(2), "plate": mm(18), "materials": steel}

# %% [markdown]
# ## All books at once
#
# A bar is what the book credits, the diamond the least of all ways to fail. Books for existing boilers state no sizes,
# or a table of driven rivets that ends below 18 mm, as that of the early US code does: they say what they lack.

# %%
ax = plot.books(**brief)

# %% [markdown]
# The highest bar is not the strongest steel. The plates, the rivets and the stresses are the same everywhere; what
# differs is where each book puts the rivets, and how much of them it counts.

# %%
designs = {id: sw.size(book=id, **brief) for id in ("metric", "indian", "british-marine", "german-1908")}
for id, design in designs.items():
    hole, pitch = design.joint.rows[0].hole, design.pitch
    print(f"{id:15} hole {hole.mm:7.4f} mm, pitch {design.joint.pitch.mm:6.2f} mm (decided by {pitch.decided.value}), "
          f"credited {design.analysis.credited:.2%}")  # fmt: skip

# %% [markdown]
# ## Where two of them part
#
# The metric and the Indian book take the same hole, $6\sqrt{18} = 25.5$, and from their series 28.5 mm. Then they
# part: how much stronger is a rivet in double shear than in single shear?

# %%
for id in ("metric", "indian"):
    said = sw.book(id).statement("shear.double")
    print(f"{id}: {said.meaning}, by {said.clause} ({said.label.value})")

# %% [markdown]
# By hand: one rivet of 28.5 mm carries $\frac{\pi}{4} 28.5^2 \cdot 50 = 31\,897$ N in single shear. The strip has two
# of them, each cut twice.
#
# | | both rivets of the strip | balanced pitch $p = d + F/(t\,\sigma_t)$ | taken |
# |---|---|---|---|
# | metric, factor 2 | $2 \cdot 2 \cdot 31\,897 = 127\,588$ N | $28.5 + 127\,588/(18 \cdot 95) = 103.1$ mm | 103 mm |
# | Indian, factor 1.875 | $2 \cdot 1.875 \cdot 31\,897 = 119\,614$ N | $28.5 + 119\,614/1710 = 98.4$ mm | 98 mm |
#
# A closer pitch leaves less plate: $(98 - 28.5)/98 = 70.9$ % against $(103 - 28.5)/103 = 72.3$ %.

# %%
single = math.pi / 4 * 28.5**2 * 50
assert round(single) == 31897
for id, factor, taken in (("metric", 2.0, 103), ("indian", 1.875, 98)):
    design = designs[id]
    assert math.isclose(design.pitch.by_shear.mm, 28.5 + 2 * factor * single / (18 * 95), rel_tol=1e-12)
    assert design.joint.pitch == mm(taken)
    assert math.isclose(design.analysis.efficiency, (taken - 28.5) / taken, rel_tol=1e-12)

# %% [markdown]
# `compare` finds that by itself: it follows the working of each book step by step, and says where it parts from the
# first one, section by section, and whether the books themselves differ there.

# %%
both = sw.compare(books=["metric", "indian"], forms=brief["form"], plate=brief["plate"], materials=steel)
for parting in both["B"].partings:
    if parting.by_rule:
        print(f"{parting.section}\n    metric: {parting.first or 'silent'}\n    indian: {parting.other or 'silent'}")
at_the_pitch = next(parting for parting in both["B"].partings if parting.section == "Pitch")
assert (at_the_pitch.first.value, at_the_pitch.other.value) == (2.0, 1.875)

# %% [markdown]
# Was it really that one entry? A book is data, and can be changed in one place. With 1.875 the metric book gives the
# Indian pitch:

# %%
changed = sw.book("metric").derive(id="metric-1875", changes={"shear.double": 1.875})
assert sw.size(book=changed, **brief).joint.pitch == designs["indian"].joint.pitch
print(changed.title, "-", changed.statement("shear.double").meaning)

# %% [markdown]
# ## How far can a figure be trusted?
#
# Each statement of a book has a label. **READ**: seen in a text of the source. **MEM**: from memory, to be compared
# with the source before anyone relies on it. **PRACTICE**: custom of the trade. **OWN**: chosen by this library where
# the source is silent. What the Indian book says of the pitch and the straps:

# %%
for statement in sw.book("indian").statements:
    if statement.key.startswith(("pitch.greatest", "pitch.least", "strap", "efficiency")):
        print(f"{statement.label.value:9} {statement.key:28} {statement.meaning:14} {statement.clause}")

# %% [markdown]
# How many statements of each label the books have:

# %%
for rules in sw.books():
    counts = {label: sum(s.label is label for s in rules.statements) for label in sw.Label}
    print(f"{rules.id:18}", "  ".join(f"{label.value} {n:3}" for label, n in counts.items()))
assert not any(s.label is sw.Label.MEMORY for s in sw.book("us-existing").statements)

# %% [markdown]
# ## A book of one's own
#
# A shop that rounds its pitches to 5 mm and counts 1.75 for double shear writes that down once, with its reasons,
# keeps it as a TOML file, and sizes by it. Entries that it does not change stay the base book's.

# %%
ours = sw.book("metric").derive(
    id="ours",
    title="Shop practice of the brewery's boilermaker (invented)",
    changes={
        "shear.double": {"value": 1.75, "clause": "shear tests of our rivets (invented)"},
        "pitch.step": {"value": mm(5), "clause": "our drilling jig (invented)"},
    },
)
design = sw.size(book=ours, **brief)
# 28.5 + 2 1.75 31 897/1710 = 93.8 mm, down to the step of 5 mm.
assert design.joint.pitch == mm(90)
print(ours.to_toml()[:430], "..")

# %% [markdown]
# > **Caution.** Design aid only. Local codes, the inspecting authority and licensed practice govern; old shells need
# > inspection before any rating.

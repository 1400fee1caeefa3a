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
# # Size a seam, and see why it is so
#
# > **Caution.** Design aid only. Local codes, the inspecting authority and licensed practice govern; old shells need
# > inspection before any rating.
#
# *The air receiver and all figures of this notebook are invented.*
#
# A shell is to be closed by a **double-riveted lap joint**: two plates lie over each other, and two rows of rivets
# hold them. What has to be found is the hole, the rivet, the **pitch** (the distance of one rivet to the next along
# the row), the distance between the rows, and the margin to the edge. What one then wants to know is how much of the
# plate's strength is left: the **efficiency**.

# %%
import math

import seamwright as sw
from seamwright import MPa, mm, plot

# %% [markdown]
# ## What we start from
#
# The plate is 12 mm thick. The stresses are *permissible* ones: what one lets the steel carry, with the margin of
# safety inside. Every number has its unit; the library refuses a bare 12.

# %%
steel = sw.Materials(tension=MPa(100), rivet_shear=MPa(75), bearing=MPa(150))
design = sw.size(form=sw.Form.lap(2), plate=mm(12), materials=steel, book="metric")
design

# %% [markdown]
# That is the whole result: what was found and why, each way to fail from the weakest on, and each rule of the book
# that was looked at, with the clause behind it. This is the joint to scale:

# %%
design.drawing(object="Air receiver (invented)", drawing_no="AR-1")

# %% [markdown]
# ## The same by hand
#
# **Hole.** Unwin's rule: $d = 6\sqrt{t} = 6\sqrt{12} = 20.8$ mm; the next boiler hole is **21 mm**, for a rivet of 20
# mm, which fills the hole when it is driven.
#
# **What one pitch of the seam can carry.** Look at a strip of the seam as wide as the pitch $p$. It has two rivets,
# one of each row.
#
# | it fails if | strength of the strip |
# |---|---|
# | the plate tears between the holes | $(p - d)\,t\,\sigma_t = (p - 21) \cdot 12 \cdot 100$ |
# | both rivets are sheared | $2 \cdot \frac{\pi}{4} d^2 \tau = 2 \cdot 346.4 \cdot 75 = 51\,954$ N |
# | both rivets are crushed | $2\, d\, t\, \sigma_c = 2 \cdot 21 \cdot 12 \cdot 150 = 75\,600$ N |
#
# **Pitch.** A wide pitch leaves much plate, but few rivets to a metre. The best is where tearing and shearing are
# equally strong: $(p - 21) \cdot 1200 = 51\,954$, so $p = 64.3$ mm, rounded down to **64 mm**.
#
# **Efficiency.** The solid strip carries $p\,t\,\sigma_t = 64 \cdot 12 \cdot 100 = 76\,800$ N, the torn one $(64 - 21)
# \cdot 1200 = 51\,600$ N: $\eta = 51\,600/76\,800 = 67.2$ %.
#
# The next cell asserts that the library found the same.

# %%
d, t = 21.0, 12.0
shear = 2 * math.pi / 4 * d**2 * 75
assert 6 * math.sqrt(t) < design.joint.rows[0].hole.mm == d
assert round(shear) == 51954
assert math.isclose(design.pitch.by_shear.mm, d + shear / (t * 100), rel_tol=1e-12)
assert design.joint.pitch == mm(64)
assert math.isclose(design.analysis.efficiency, 51600 / 76800, rel_tol=1e-12)
assert math.isclose(design.analysis.bearing_all.N, 75600, rel_tol=1e-12)
print(f"efficiency {design.analysis.efficiency:.2%}; {design.analysis.governing.name}")

# %% [markdown]
# ## The same as a picture
#
# Each line is one way to fail, the broad one is the weakest at each pitch. Left of the ring the plate tears, right of
# it the rivets shear. The grey parts are closed by the rule book: below two diameters there is no room for the heads,
# and above $2.62\,t + 41.28 = 72.7$ mm a seam is not thought to stay tight.

# %%
ax = plot.pitch(design)
assert "greatest pitch 72.72 mm" in " ".join(text.get_text() for text in ax.texts)

# %% [markdown]
# ## What governs elsewhere
#
# Would another plate or another hole fail in another way? The ring is our joint. On the red line plate and rivets are
# equally strong; above it (large holes) the plate tears, below it the rivets shear; thin plates would be crushed by
# their rivets.

# %%
ax = plot.mode_map(design.analysis)

# %% [markdown]
# ## What matters, and what does not
#
# Five per cent more or less of each input, and what it does to the strength of a metre of the seam. The joint sits on
# its balance, so that a better rivet alone helps nothing, and a worse one hurts at once. The hole matters most: a
# smaller one makes a smaller rivet, whose area falls with the square. Crushing is far away.

# %%
ax = plot.sensitivity(design.analysis)

# %% [markdown]
# A rivet that is 5 % weaker in shear: $0.95 \cdot 51\,954 = 49\,356$ N, which is 4.3 % less than the 51 600 N of the
# plate.

# %%
weaker = sw.Materials(tension=MPa(100), rivet_shear=MPa(0.95 * 75), bearing=MPa(150))
found = sw.check(joint=design.joint, materials=weaker, book="metric")
assert found.governing.name == "all rivets fail: rows 1-2 shear"
assert round(100 * (1 - found.governing.strength.N / 51600), 1) == 4.3

# %% [markdown]
# ## Every step, for whoever checks it
#
# The working shows each formula in symbols, then in numbers, then the result, with the clause. `save` writes it as
# text, Markdown, LaTeX or HTML, and the drawing as SVG or DXF: `design.save("receiver.tex")`.

# %%
design.working("html")

# %% [markdown]
# The rules that were looked at once more, in short. A rule that is not met would say *open*, with advice.

# %%
for finding in design.analysis.findings:
    print(finding)
assert not design.analysis.open_findings

# %% [markdown]
# > **Caution.** Design aid only. Local codes, the inspecting authority and licensed practice govern; old shells need
# > inspection before any rating.

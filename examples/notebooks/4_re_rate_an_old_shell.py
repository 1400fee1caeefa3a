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
# # Re-rate an old shell
#
# > **Caution.** Design aid only. Local codes, the inspecting authority and licensed practice govern; old shells need
# > inspection before any rating.
#
# *The portable engine "Grey Wagtail" and all figures of this notebook are invented.*
#
# An old boiler was inspected: the drum is 42 in inside, closed by a double-riveted lap seam. The plate was 7/16 in
# when new; the thinnest place at the seam is 0.40 in now. What pressure may the seam still carry, on what assumptions,
# and for how long?

# %%
import math

import seamwright as sw
from seamwright import inch, plot, psi

found_on_site = {
    "form": sw.Form.lap(2),
    "pitch": inch(3),
    "plate": inch(0.40),
    "shell_plate": inch(0.42),
    "hole": inch(13 / 16),
    "inside_diameter": inch(42),
    "plates": "steel",
    "rivets": "iron",
}
rated = sw.rate(
    **found_on_site, safety_factor=5, present=psi(120), wastage_rate=inch(0.004), from_drawing=["pitch"],
    book="us-existing",
)  # fmt: skip
print(rated)

# %% [markdown]
# ## What the figure rests on
#
# The strengths of steel and iron of unknown make are the book's. Everything that was not stated is assumed, and
# listed: whoever signs the rating signs these lines too.

# %%
for assumption in rated.assumptions:
    print(assumption, f"- {assumption.clause}" if assumption.clause else "")
assert any("second plate" in assumption.about for assumption in rated.assumed())

# %% [markdown]
# ## By hand
#
# Look at one pitch of the seam, 3 in wide.
#
# | | |
# |---|---:|
# | one driven rivet, $\frac{\pi}{4} (13/16)^2$ | 0.5185 sq in |
# | two iron rivets in single shear, $2 \cdot 0.5185 \cdot 38\,000$ | 39 405 lb |
# | net plate, $(3 - 0.8125) \cdot 0.40 \cdot 55\,000$ | 48 125 lb |
# | solid plate, $3 \cdot 0.40 \cdot 55\,000$ | 66 000 lb |
#
# The rivets are the weaker ones: $39\,405/66\,000 = 59.7$ %. The pressure by the rule $TS\,t\,E/(R\,FS)$: $55\,000
# \cdot 0.40 \cdot 0.597/(21 \cdot 5) = 125.1$ psi.

# %%
area = math.pi / 4 * (13 / 16) ** 2
shear, tear, solid = 2 * area * 38000, (3 - 13 / 16) * 0.40 * 55000, 3 * 0.40 * 55000
assert (round(shear), round(tear), round(solid)) == (39405, 48125, 66000)
assert math.isclose(rated.analysis.efficiency, shear / solid, rel_tol=1e-9)
assert math.isclose(rated.allowed.psi, 55000 * 0.40 * (shear / solid) / (21 * 5), rel_tol=1e-9)
assert rated.governs == "seam"
print(f"{rated.allowed.psi:.1f} psi, {rated.margin:.3f} times the present pressure")

# %% [markdown]
# ## How long?
#
# The plate loses 0.004 in a year, the rivets are taken to stay as they are. So for a long time nothing happens: the
# rivets govern, and they do not thin. Then the plate becomes the weaker part, and the pressure falls.

# %%
ax = plot.years(rated)

# %% [markdown]
# By hand: to hold 120 psi the strip must carry $120 \cdot 3 \cdot 21 \cdot 5 = 37\,800$ lb. The net plate does so down
# to $t = 37\,800/(2.1875 \cdot 55\,000) = 0.3142$ in, that is after $(0.40 - 0.3142)/0.004 = 21.5$ years.

# %%
thinnest = 120 * 3 * 21 * 5 / ((3 - 13 / 16) * 55000)
assert round(thinnest, 4) == 0.3142
assert math.isclose(rated.years, (0.40 - thinnest) / 0.004, rel_tol=1e-6)

# %% [markdown]
# A straight line from today's pressure, as if the plate governed from the start, would have given $(0.40 - 0.40 \cdot
# 120/125.1)/0.004 = 4$ years. Both are extrapolations: the next inspection measures again.
#
# ## What if the drawing is wrong?
#
# The pitch is from the drawing. A rivet more or less to the yard changes it; the rating follows at once.

# %%
for pitch in (2.75, 2.875, 3.0, 3.125, 3.25):
    other = sw.rate(**{**found_on_site, "pitch": inch(pitch)}, safety_factor=5, present=psi(120), book="us-existing")
    print(f"pitch {pitch:5.3f} in: {other.allowed.psi:6.1f} psi, {other.analysis.governing.name}")
    # Two rivets hold the seam, whatever the pitch: the pressure goes as 1 over the pitch.
    assert math.isclose(other.allowed.psi * pitch, rated.allowed.psi * 3, rel_tol=1e-9)

# %% [markdown]
# A wider pitch than drawn lowers the pressure, because each rivet then holds more plate. At 3.125 in, 120 psi is just
# still allowed; at 3.25 in it is not. So the pitch is worth a ruler before anyone signs.
#
# ## The old sheet says something else
#
# In the boiler's file lies a calculation of its last owner (invented too): "rivets hold 33 576 lb, efficiency 0.5087".
# That is not 39 405 lb. Who is right? `reconcile` looks for the convention behind the old figures.

# %%
joint = sw.Joint(form=sw.Form.lap(2), pitch=inch(3), plate=inch(0.40), hole=inch(13 / 16), rivet=inch(3 / 4))
strengths = sw.Materials(tension=psi(55000), rivet_shear=psi(38000), bearing=psi(95000))
old_sheet = sw.reconcile(
    joint=joint, materials=strengths, book="us-existing", stated={"Ps": "33576 lbf", "J": "0.5087"}
)  # fmt: skip
print(old_sheet.best)
old_sheet

# %% [markdown]
# By hand: the cold rivet of 3/4 in has $\frac{\pi}{4} 0.75^2 = 0.4418$ sq in, and $2 \cdot 0.4418 \cdot 38\,000 =
# 33\,576$ lb. The old sheet took the rivet as it came from the keg; the rule takes the driven rivet, which fills its
# hole. Both sheets are free of slips, and the difference is a convention: 15 % of the pressure.

# %%
assert round(2 * math.pi / 4 * 0.75**2 * 38000) == 33576
assert old_sheet.reproduced and "rivet's diameter" in str(old_sheet.best)

# %% [markdown]
# ## The rules that were looked at
#
# What is *unknown* was not given, and therefore not checked.

# %%
for finding in (*rated.findings, *rated.analysis.findings):
    print(finding)

# %% [markdown]
# The whole working, in inches as the data, with every assumption at its end; `rated.save("wagtail.html")` writes the
# same as a page to print. The sheet that someone signs is `rated.sheet(object="Grey Wagtail (invented)", ..)`.

# %%
rated.working("html")

# %% [markdown]
# > **Caution.** Design aid only. Local codes, the inspecting authority and licensed practice govern; old shells need
# > inspection before any rating.

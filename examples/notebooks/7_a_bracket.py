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
# # A bracket: which rivet bears most?
#
# > **Caution.** Design aid only. Local codes, the inspecting authority and licensed practice govern; old shells need
# > inspection before any rating.
#
# *The gantry, its bracket and all figures of this notebook are invented.*
#
# A bracket is riveted to a column and carries a hoist beside it. The load would like to turn the bracket about its
# rivets: each of them takes its share of the load, and beyond that a share of the turning, and the two add up where
# they point the same way. One rivet bears most, and it sets the size of all.

# %%
import math

import seamwright as sw
from seamwright import MPa, kN, mm

# %% [markdown]
# ## What we start from
#
# Six rivets in two columns 90 mm apart, three rows 80 mm apart. The hoist of 32 kN hangs 300 mm beside their middle.
# The rivets may be sheared with 90 MPa, the plate of 12 mm may be crushed with 180 MPa. The rule book says which
# diameter counts, and which sizes there are.

# %%
places = [(mm(x), mm(y)) for y in (0, 80, 160) for x in (0, 90)]
load = sw.GroupLoad(y=kN(-32), at=(mm(345), mm(80)))
task = {"places": places, "load": load, "shear": MPa(90), "plate": mm(12), "bearing": MPa(180), "book": "structural"}
made = sw.size_group(**task)
made

# %% [markdown]
# This is the group to scale, with what each rivet takes. Each force closes a triangle: its share of the load, straight
# down, and its share of the turning, at right angles to the line from the centroid G.

# %%
made.drawing(object="Hoist bracket (invented)", drawing_no="HB-1")

# %% [markdown]
# ## The same by hand
#
# The centroid is the middle, 45 mm and 80 mm from the first rivet. The squares of the distances from it: four corners
# at $45^2 + 80^2 = 8425$, two at $45^2 = 2025$, together $I_p = 37\,750$ mm².
#
# | | |
# |---|---:|
# | share of the load, $32\,000/6$ | 5333 N down |
# | moment, $32\,000 \cdot 300$ | 9 600 000 N mm |
# | turning share at the lower right corner, along x, $9\,600\,000 \cdot 80/37\,750$ | 20 344 N |
# | and downwards, $9\,600\,000 \cdot 45/37\,750$ | 11 444 N |
# | both together, $\sqrt{20\,344^2 + (5333 + 11\,444)^2}$ | 26 370 N |
# | diameter for 90 MPa, $\sqrt{4 \cdot 26\,370/(\pi \cdot 90)}$ | 19.31 mm |
#
# The next hole of the series is 19.5 mm, for a rivet of 18 mm. Both right corners bear alike, because the load hangs at
# half height; the first one is named.

# %%
polar = 4 * (45**2 + 80**2) + 2 * 45**2
turning = 32_000 * 300 / polar
force = math.hypot(turning * 80, 32_000 / 6 + turning * 45)
assert (polar, round(force)) == (37_750, 26_370)
found = made.check
assert math.isclose(found.polar.mm2, polar)
assert math.isclose(found.rivets[found.critical - 1].resultant.N, force)
assert found.critical == 2
needed = math.sqrt(4 * force / (math.pi * 90))
assert round(needed, 2) == 19.31
assert (made.hole, made.rivet) == (mm(19.5), mm(18))
print(f"the critical rivet uses {found.used:.1%} of what is permitted; {found.safe_load.kN:.1f} kN are allowed")

# %% [markdown]
# ## What the distance of the load does
#
# Straight through the centroid each rivet has 5.3 kN. Every millimetre further out adds to the turning.

# %%
sized = {**task, "hole": mm(19.5)}
for distance in (0, 100, 200, 300, 400):
    moved = sw.GroupLoad(y=kN(-32), at=(mm(45 + distance), mm(80)))
    shifted = sw.check_group(**{**sized, "load": moved})
    most = max(rivet.resultant.N for rivet in shifted.rivets)
    by_hand = math.hypot(32_000 * distance * 80 / polar, 32_000 / 6 + 32_000 * distance * 45 / polar)
    assert math.isclose(most, by_hand)
    print(f"{distance:4d} mm: {most / 1000:5.2f} kN on the worst rivet, {shifted.used:6.1%} used")

# %% [markdown]
# At 400 mm the group is no longer enough. Larger rivets are one way out; setting them further apart is another, and
# costs no more than a larger plate.

# %%
far = sw.GroupLoad(y=kN(-32), at=(mm(445), mm(120)))
wide = [(mm(x), mm(y)) for y in (0, 120, 240) for x in (0, 90)]
spread = sw.check_group(**{**sized, "places": wide, "load": far})
polar_wide = 4 * (45**2 + 120**2) + 2 * 45**2
most = math.hypot(32_000 * 400 * 120 / polar_wide, 32_000 / 6 + 32_000 * 400 * 45 / polar_wide)
assert math.isclose(max(rivet.resultant.N for rivet in spread.rivets), most)
print(f"rows 120 mm apart: {most / 1000:.2f} kN, {spread.used:.1%} used")

# %% [markdown]
# ## An old calculation has less
#
# In the file of the gantry (invented too) stands 22.5 kN for the worst rivet, and not 26.4. The old office took the
# *effective eccentricity* of an old manual: with $n$ rivets in a vertical row it counts $(1 + n)/2$ inches less
# (T.G. Hicks, Handbook of Civil Engineering Calculations, p. 1.83, shows it). With three in a row that is 2 inches:
# $300 - 50.8 = 249.2$ mm.

# %%
shorter = 300 - 2 * 25.4
old = math.hypot(32_000 * shorter * 80 / polar, 32_000 / 6 + 32_000 * shorter * 45 / polar)
as_then = sw.GroupLoad(y=kN(-32), at=(mm(345), mm(80)), row_rivets=3)
then = sw.check_group(**{**sized, "load": as_then})
assert math.isclose(then.rivets[1].resultant.N, old)
print(f"{old / 1000:.2f} kN: the old figure is a convention, not a slip; it is not for new work")

# %% [markdown]
# ## What was looked at, and what was not
#
# Edges and net section of the plate, its bending, and the prying of rivets in tension are not in the model: they need
# the shape of the bracket. The distances between rivets are held to the rule book.

# %%
for finding in made.check.findings:
    print(finding)

# %% [markdown]
# The whole working, to be followed line by line:

# %%
made.working()

# %% [markdown]
# > **Caution.** Design aid only. Local codes, the inspecting authority and licensed practice govern; old shells need
# > inspection before any rating.

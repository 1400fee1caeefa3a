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
# # A million joints
#
# > **Caution.** Design aid only. Local codes, the inspecting authority and licensed practice govern; old shells need
# > inspection before any rating.
#
# *The works and all figures of this notebook are invented.*
#
# One joint answers one question. A designer's chart, a tolerance study or a table for the drawing office asks the same
# question a million times. `sweep` takes arrays for dimensions and stresses and checks each joint exactly as `check`
# would; a grid is spanned by its axes and nowhere written out.

# %%
import matplotlib.pyplot as plt
import numpy as np
import seamwright as sw
from seamwright import MPa, mm

steel = sw.Materials(tension=MPa(100), rivet_shear=MPa(75), bearing=MPa(150))
pitch = np.arange(30, 110.25, 0.5)
plate = np.arange(6, 24.1, 0.25)
hole = np.arange(13, 34.3, 0.25)
grid = sw.sweep(
    form=sw.Form.lap(2), book="metric", materials=steel, pitch=mm(pitch), plate=mm(plate), hole=mm(hole), outer=True
)
print(f"{grid.size:,} joints; axes {grid.axes}, shape {grid.shape}; {grid.failed:,} of them are no joints")
assert grid.shape == (161, 73, 86)

# %% [markdown]
# Where the hole leaves no plate beside it there is no joint: the row has a status and no figure, and the others are
# not lost.
#
# ## By hand, a million times
#
# A double-riveted lap fails by tearing, by shear of two rivets or by crushing of two rivets, so that its efficiency is
#
# $$
# \eta = \min\left( \frac{p - d}{p}, \frac{2 \frac{\pi}{4} d^2 \tau}{p\,t\,\sigma_t}, \frac{2 d\,\sigma_c}{p\,\sigma_t}
# \right)
# $$
#
# In NumPy that is three lines. They must agree with the library in each of the joints.

# %%
p, t, d = pitch[:, None, None], plate[None, :, None], hole[None, None, :]
by_hand = np.minimum.reduce(
    np.broadcast_arrays((p - d) / p, 2 * np.pi / 4 * d**2 * 75 / (p * t * 100), 2 * d * 150 / (p * 100))
)
computed = grid.status == 0
assert computed.mean() > 0.9
np.testing.assert_allclose(grid.efficiency[computed], by_hand[computed], rtol=1e-12)
print(f"{computed.sum():,} joints agree with the three formulas")

# %% [markdown]
# ## What governs?
#
# The number of the governing mode comes with each joint; the table of modes gives it a name.

# %%
numbers, counts = np.unique(grid.mode[computed], return_counts=True)
for number, count in sorted(zip(numbers, counts, strict=True), key=lambda pair: -pair[1]):
    print(f"{count / computed.sum():7.2%}  {grid.modes[number].name}")
assert counts.sum() == computed.sum()

# %% [markdown]
# ## A chart for the drawing office
#
# For each plate and each hole: the best efficiency that any pitch of the grid gives, under the cap of the metric book,
# $p \le 2.62\,t + 41.28$ mm. Unwin's rule $d = 6\sqrt{t}$ is the broken line: in thin plates it runs along the ridge;
# in thick ones a greater rivet would be better than the rule's, if anyone could close it.

# %%
allowed = np.where((p <= 2.62 * t + 41.28) & computed, grid.efficiency, np.nan)
best = np.nanmax(np.where(np.isnan(allowed), 0.0, allowed), axis=0)
figure, ax = plt.subplots(figsize=(8, 5), layout="constrained")
filled = ax.contourf(plate, hole, 100 * best.T, levels=12, cmap="cividis")
lines = ax.contour(plate, hole, 100 * best.T, levels=filled.levels, colors="white", linewidths=0.6)
ax.clabel(lines, fmt="%.0f %%", fontsize=8, colors="black")
ax.plot(plate, 6 * np.sqrt(plate), color="white", lw=3)
ax.plot(plate, 6 * np.sqrt(plate), color="black", lw=1.5, ls="--")
ax.annotate("6 root t", (20, 6 * np.sqrt(20)), xytext=(4, -14), textcoords="offset points", color="black",
            bbox={"fc": "white", "ec": "none", "alpha": 0.8, "pad": 1})  # fmt: skip
ax.set(xlabel="plate thickness [mm]", ylabel="hole [mm]", ylim=(hole[0], hole[-1]))
ax.set_title("double-riveted lap: best efficiency under the cap, stresses 100, 75 and 150 MPa", fontsize=10, loc="left")
figure.supxlabel(f"Caution. {sw.CAUTION}", fontsize=6.5, x=0.01, ha="left")
plt.show()

# %% [markdown]
# By hand, for 12 mm: a hole of 21 mm balances at $p = 21 + 2 \cdot 346.4 \cdot 75/1200 = 64.3$ mm, where $\eta =
# 43.3/64.3 = 67.3$ %. On the grid of half millimetres the nearest pitch is 64.5 mm, at which the rivets govern:
# $51\,954/(64.5 \cdot 1200) = 67.1$ %; at 64.0 mm the plate governs with $43/64 = 67.2$ %, which is the better one.

# %%
at_12 = np.searchsorted(plate, 12.0), np.searchsorted(hole, 21.0)
assert np.isclose(best[at_12], 43 / 64, rtol=1e-12)

# %% [markdown]
# ## What the workshop makes of it
#
# Nobody drills 21 mm. Take the joint of the first notebook (12 mm, 21 mm, 64 mm) and let the workshop scatter: plates
# thinner by the mill's tolerance, holes reamed a little wide, pitches a millimetre off, rivets of uneven steel. The
# scatter is invented; the numbers come from a fixed seed, so that they are the same tomorrow.

# %%
rng = np.random.default_rng(1907)
n = 1_000_000
made = sw.sweep(
    form=sw.Form.lap(2), book="metric",
    plate=mm(rng.uniform(11.7, 12.3, n)), hole=mm(rng.uniform(20.8, 21.6, n)), pitch=mm(rng.normal(64, 0.5, n)),
    tension=MPa(100), rivet_shear=MPa(rng.normal(75, 3, n)), bearing=MPa(150),
)  # fmt: skip
low, middle, high = np.percentile(made.efficiency, [1, 50, 99])
shear = np.array(["rivets" in mode.name for mode in made.modes])
share = shear[made.mode].mean()
print(f"efficiency {low:.2%} to {high:.2%} (1 % to 99 %), middle {middle:.2%}; rivets govern in {share:.1%}")
assert made.failed == 0

# %% [markdown]
# The designed joint has 67.2 %, governed by the plate. As it is made, the rivets govern in part of the cases, and the
# middle lies below the design: a joint on its balance can only lose by scatter, whichever way it goes.

# %%
assert middle < 43 / 64
assert 0.05 < share < 0.95
row = int(np.argmin(made.efficiency))
worst = made.analysis(row)
print(f"the worst of all: {worst.efficiency:.2%}, {worst.governing.name}")
assert worst.efficiency == made.efficiency[row]

# %% [markdown]
# `made.analysis(row)` is the full check of any row, with findings and working; `made.to_pandas()`, `to_polars()`,
# `to_xarray()` hand the whole table on.
#
# > **Caution.** Design aid only. Local codes, the inspecting authority and licensed practice govern; old shells need
# > inspection before any rating.

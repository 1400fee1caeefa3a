"""Plots, by what their artists hold: no pixels. Expected figures are worked out by hand beside each test."""

import itertools
import sys
from math import pi

import numpy as np
import pytest
import seamwright as sw
from matplotlib import colors, pyplot
from seamwright import plot

# Khurmi & Gupta, Example 9.4: a double-riveted lap of 13 mm plate, hole 23 mm, 80, 60 and 120 MPa.
AREA = pi / 4 * 23**2


def by_hand(p):
    """Efficiency of that joint at a pitch: tearing, two rivets in shear, two in crushing."""
    return min((p - 23) / p, 2 * AREA * 60 / (p * 13 * 80), 2 * 23 * 13 * 120 / (p * 13 * 80))


@pytest.fixture(autouse=True)
def closed():
    yield
    pyplot.close("all")


@pytest.fixture
def sized(steel):
    return sw.size(form=sw.Form.lap(2), plate=sw.mm(13), materials=steel, book="metric")


@pytest.fixture
def rated():
    return sw.rate(
        form=sw.Form.lap(2), pitch=sw.inch(3.5), plate=sw.inch(0.45), inside_diameter=sw.inch(48), plates="steel",
        hole=sw.inch(15 / 16), safety_factor=5, present=sw.psi(125), wastage_rate=sw.inch(0.005), book="us-existing",
    )  # fmt: skip


def artist(ax, gid):
    found = [x for x in ax.get_children() if x.get_gid() == gid]
    assert len(found) == 1, f"{len(found)} artists are {gid}"
    return found[0]


def said(ax):
    return " | ".join(text.get_text().replace("\n", " ") for text in ax.texts)


def test_pitch_shows_the_joint_at_every_pitch(sized):
    ax = plot.pitch(sized)
    curve = artist(ax, "efficiency")
    points = list(zip(curve.get_xdata(), curve.get_ydata()))
    assert len(points) > 150
    for p, eta in points:
        assert eta == pytest.approx(100 * by_hand(p), rel=1e-12)
    # The chosen point lies on the curve, and is the design's.
    chosen = artist(ax, "chosen")
    assert (chosen.get_xdata()[0], chosen.get_ydata()[0]) == (70.0, pytest.approx(100 * 47 / 70))
    assert (70.0, 100 * sized.analysis.efficiency) in points
    # 2.62 13 + 41.28 = 75.34 mm, and two holes are the least.
    assert artist(ax, "cap").get_xdata()[0] == pytest.approx(75.34)
    assert artist(ax, "floor").get_xdata()[0] == pytest.approx(2 * 23)
    assert "all rivets fail: rows 1-2 shear" in said(ax)
    assert "likewise plate B tears at row 2" in said(ax)
    # No line drawn lies below the least of all.
    lines = [line for line in ax.lines if line.get_gid() == "mode"]
    assert len(lines) >= 2
    least = np.min([line.get_ydata() for line in lines], axis=0)
    np.testing.assert_allclose(least, curve.get_ydata(), rtol=1e-12)


def test_pitch_in_inches_and_of_a_stated_joint(found):
    ax = plot.pitch(found, units="inch")
    assert ax.get_xlabel().endswith("[in]")
    assert artist(ax, "chosen").get_xdata()[0] == pytest.approx(71 / 25.4)
    assert artist(ax, "cap").get_xdata()[0] == pytest.approx(75.34 / 25.4)


def test_the_map_draws_the_border_where_tearing_equals_shear(found):
    """On it (p - d) t st = 2 (pi/4 d^2) ss."""
    ax = plot.mode_map(found, plates=(sw.mm(10), sw.mm(20)), holes=(sw.mm(18), sw.mm(30)), steps=41)
    border = artist(ax, "border: all rivets fail: rows 1-2 shear")
    vertices = np.concatenate([path.vertices for path in border.get_paths()])
    assert len(vertices) > 20
    for t, d in vertices:
        assert (71 - d) * t * 80 == pytest.approx(2 * pi / 4 * d**2 * 60, rel=2e-3)
    assert artist(ax, "joint").get_xydata().tolist() == [[13, 23]]
    assert "plate A tears at row 1" in said(ax)
    assert (ax.get_xlim(), ax.get_ylim()) == ((10, 20), (18, 30))


def test_the_map_refuses_empty_ranges(found):
    plot.mode_map(found, steps=2)
    for wrong in ({"plates": (sw.mm(9), sw.mm(4))}, {"holes": (sw.mm(80), sw.mm(90))}, {"plates": sw.mm(3)},
                  {"steps": 1}, {"steps": 401}, {"holes": (1, 2)}):  # fmt: skip
        with pytest.raises(sw.SeamwrightError):
            plot.mode_map(found, **wrong)
        pyplot.close("all")


def test_the_front_rises(steel):
    found = sw.front(plates=sw.mm(12), materials=steel, book="metric", rows_most=2, efficiency_least=0.4,
                     head="button", length_rule="boiler-button")  # fmt: skip
    step = artist(plot.front(found), "front")
    assert step.get_xdata().tolist() == [c.mass_per_metre for c in found]
    assert step.get_ydata().tolist() == [100 * c.efficiency for c in found]
    assert all(np.diff(step.get_ydata()) > 0) and all(np.diff(step.get_xdata()) > 0)
    # 1 kg/m is 0.3048/0.45359237 lb/ft.
    ax = plot.front(found, units="inch")
    assert artist(ax, "front").get_xdata()[0] == pytest.approx(found[0].mass_per_metre * 0.671969, rel=1e-6)
    assert "[lb/ft]" in ax.get_xlabel()
    bare = sw.search(plates=sw.mm(12), materials=steel, book="metric", forms=[sw.Form.lap(1)]).best
    for wrong in ((), bare):
        with pytest.raises(sw.SeamwrightError, match="head="):
            plot.front(wrong)


def test_books_side_by_side(steel):
    ax = plot.books(form=sw.Form.lap(2), plate=sw.mm(13), materials=steel, books=["metric", "indian", "us-montana"])
    bars = sorted(bar.get_width() for bar in ax.patches)
    # The metric book: (70 - 23)/70 by hand; the list for existing boilers has no sizes and is refused with its reason.
    assert len(bars) == 2
    assert bars == sorted(
        100 * sw.size(form=sw.Form.lap(2), plate=sw.mm(13), materials=steel, book=b).analysis.credited
        for b in ("metric", "indian")
    )
    assert any(bar == pytest.approx(100 * 47 / 70) for bar in bars)
    assert "no joint: " in said(ax)
    assert len(ax.get_yticks()) == 3
    with pytest.raises(sw.SeamwrightError):
        plot.books(form=sw.Form.lap(2), plate=sw.mm(13), materials=steel, books=["us-montana"])
    with pytest.raises(sw.SeamwrightError):
        plot.books(form=sw.Form.lap(2), plate=sw.mm(13), materials=steel, books=[])


def test_a_comparison_as_bars(steel):
    given = {"plate": sw.mm(13), "materials": steel}
    both = sw.compare(books=["metric", "us-montana"], forms=sw.Form.lap(2), **given)
    ax = plot.books(both)
    # By hand: (70 - 23)/70 under the metric book; the list for existing boilers has no sizes.
    assert [bar.get_width() for bar in ax.patches] == [pytest.approx(100 * 47 / 70)]
    assert f"no joint: {both['B'].refused[:20]}" in said(ax)
    assert ax.get_title(loc="left") == sw.Form.lap(2).name
    # Two forms: the columns are told apart by their letters, in whatever order they stand.
    forms = sw.compare(books=["metric"], forms=[sw.Form.lap(1), sw.Form.lap(2)], sort_by="credited", **given)
    names = [label.get_text().replace("-\n", "-").replace("\n", " ") for label in plot.books(forms).get_yticklabels()]
    assert len(names) == 2
    assert names[-1].startswith("B: ") and sw.Form.lap(2).name in names[-1]
    widths = sorted(bar.get_width() for bar in plot.books(forms).patches)
    assert widths == sorted(100 * column.credited for column in forms.columns)
    for wrong in ({"books": ["metric"]}, {"plate": sw.mm(13)}):
        with pytest.raises(sw.SeamwrightError, match="stands in the comparison"):
            plot.books(both, **wrong)
    with pytest.raises(sw.SeamwrightError, match="no column"):
        plot.books(sw.compare(books=["us-montana"], forms=sw.Form.lap(2), **given))
    with pytest.raises(sw.SeamwrightError, match="compare"):
        plot.books("metric")


def test_sensitivity_by_hand(found):
    """At 71 mm shear governs: 2 A 60 over a pitch of 71; tearing is (71 - 23) 13 80."""
    ax = plot.sensitivity(found)
    names = [label.get_text() for label in ax.get_yticklabels()]
    bars = {}
    for bar in ax.patches:
        bars[names[round(bar.get_y() + bar.get_height() / 2)], bar.get_gid()] = bar.get_width()
    shear = 2 * AREA * 60

    def line(p, t=13.0, d=23.0, st=80.0, ss=60.0):
        return min((p - d) * t * st, 2 * pi / 4 * d**2 * ss) / p

    wanted = {
        ("pitch", "more"): line(71 * 1.05),
        ("pitch", "less"): line(71 * 0.95),
        ("plate thickness", "less"): line(71, t=13 * 0.95),
        ("hole and rivet", "more"): line(71, d=23 * 1.05),
        ("tensile stress", "less"): line(71, st=76.0),
        ("shear stress of rivets", "less"): line(71, ss=57.0),
        ("bearing stress", "more"): line(71),
    }
    for key, value in wanted.items():
        assert bars[key] == pytest.approx(100 * (value / (shear / 71) - 1), abs=1e-9), key
    # The longest first, which is at the top.
    longest = [max(abs(bars[name, "more"]), abs(bars[name, "less"])) for name in names]
    assert longest == sorted(longest)
    ax = plot.sensitivity(found, of="efficiency", change=0.01)
    assert "efficiency" in ax.get_xlabel()
    for ends in (0.001, 0.5):
        plot.sensitivity(found, change=ends)
    for wrong in ({"change": 0.000999}, {"change": 0.501}, {"change": float("nan")}, {"of": "beauty"}):
        with pytest.raises(sw.SeamwrightError):
            plot.sensitivity(found, **wrong)


def test_sensitivity_by_slopes(joint, steel):
    """Shear governs at 71 mm: strength pi/4 d^2 ss over the pitch, so 2 % for 1 % of the hole, -1 % for the pitch."""
    found = sw.slopes(joint=joint, materials=steel, book="metric")
    ax = plot.sensitivity(found, change=0.01)
    names = [label.get_text().replace("-\n", "-").replace("\n", " ") for label in ax.get_yticklabels()]
    bars = {}
    for bar in ax.patches:
        bars[names[round(bar.get_y() + bar.get_height() / 2)], bar.get_gid()] = bar.get_width()
    holes = sum(width for (name, gid), width in bars.items() if "hole" in name and gid == "more")
    pitch = next(width for (name, gid), width in bars.items() if name.startswith("pitch") and gid == "more")
    shear = next(width for (name, gid), width in bars.items() if name.startswith("shear stress") and gid == "less")
    assert holes == pytest.approx(2.0, rel=1e-9)
    assert pitch == pytest.approx(-1.0, rel=1e-9)
    assert shear == pytest.approx(-1.0, rel=1e-9)
    # Over the solid strip the plate and its stress count too.
    plates = plot.sensitivity(found, of="efficiency", change=0.01)
    assert len(plates.get_yticklabels()) > len(names)


def test_years_by_hand(rated):
    """TS t E/(R FS) with E the lesser of tearing and two rivets, the plate thinner by 0.005 in a year."""
    ax = plot.years(rated)
    area = pi / 4 * (15 / 16) ** 2
    line = artist(ax, "allowed")
    points = list(zip(line.get_xdata(), line.get_ydata()))
    assert len(points) > 100
    for age, psi in points:
        t = 0.45 - 0.005 * age
        strength = min((3.5 - 15 / 16) * t * 55000, 2 * area * 44000)
        assert psi == pytest.approx(strength / 3.5 / (24 * 5), rel=1e-9)
    last = artist(ax, "last year")
    assert (last.get_xdata()[0], last.get_ydata()[0]) == (rated.years, pytest.approx(125))
    assert dict(points)[rated.years] == pytest.approx(125, rel=1e-6)
    assert artist(ax, "present").get_ydata()[0] == pytest.approx(125)
    metric = plot.years(rated, units="metric", until=5)
    assert metric.get_ylabel() == "pressure allowed [MPa]"
    assert artist(metric, "allowed").get_ydata()[0] == pytest.approx(rated.allowed.MPa)


@pytest.mark.parametrize("thin", ["plate", "wide_strap", "narrow_strap", "shell_plate"])
def test_every_plate_thins(thin):
    """Net plate, net straps together, or the solid shell, whichever was thin to begin with; rivets in double shear."""
    inches = {"plate": 0.5, "wide_strap": 0.45, "narrow_strap": 0.45, "shell_plate": 0.5}
    inches |= {"plate": {"plate": 0.2}, "shell_plate": {"shell_plate": 0.12}}.get(thin, {thin: 0.05})
    if thin.endswith("strap"):
        inches |= dict.fromkeys({"wide_strap", "narrow_strap"} - {thin}, 0.2)
    rated = sw.rate(
        form=sw.Form.double_strap(1), pitch=sw.inch(2.5), inside_diameter=sw.inch(36), hole=sw.inch(13 / 16),
        plates="steel", safety_factor=5, wastage_rate=sw.inch(0.004), book="us-existing",
        **{name: sw.inch(x) for name, x in inches.items()},
    )  # fmt: skip
    line = artist(plot.years(rated, until=5), "allowed")
    net, rivets = 2.5 - 13 / 16, 2 * pi / 4 * (13 / 16) ** 2 * 44000
    for age, psi in zip(line.get_xdata(), line.get_ydata()):
        plate, wide, narrow, shell = (x - 0.004 * age for x in inches.values())
        strip = min(net * plate * 55000, net * (wide + narrow) * 55000, rivets, 13 / 16 * plate * 95000)
        strip = min(strip, 13 / 16 * (wide + narrow) * 95000)
        assert psi == pytest.approx(min(strip / 2.5, shell * 55000) / (18 * 5), rel=1e-9), age


def test_years_need_a_rate_of_wastage():
    common = {"form": sw.Form.lap(1), "pitch": sw.inch(2), "plate": sw.inch(0.3), "inside_diameter": sw.inch(36),
              "hole": sw.inch(0.75), "plates": "steel", "safety_factor": 5, "book": "us-existing"}  # fmt: skip
    with pytest.raises(sw.SeamwrightError) as caught:
        plot.years(sw.rate(**common))
    assert caught.value.field == "wastage_rate"
    # 0.05 in lost in ten years: after ten more 0.25 in is left, and the plate tears.
    earlier = sw.rate(**common, earlier_plate=sw.inch(0.35), years_ago=10)
    line = artist(plot.years(earlier, until=10), "allowed")
    area = pi / 4 * 0.75**2
    assert line.get_ydata()[-1] == pytest.approx(min((2 - 0.75) * 0.25 * 55000, area * 44000) / 2 / (18 * 5))
    with pytest.raises(sw.SeamwrightError):
        plot.years(earlier, until=0)


def drawings(found, rated, steel):
    laps = [sw.Form.lap(1), sw.Form.lap(2)]
    weighed = sw.front(plates=sw.mm(12), materials=steel, book="metric", forms=laps, head="button",
                       length_rule="boiler-button")  # fmt: skip
    brief = {"form": sw.Form.lap(2), "plate": sw.mm(13), "materials": steel, "books": ["metric"]}
    return {
        plot.pitch: lambda ax: plot.pitch(found, ax=ax),
        plot.mode_map: lambda ax: plot.mode_map(found, ax=ax, steps=9),
        plot.front: lambda ax: plot.front(weighed, ax=ax),
        plot.books: lambda ax: plot.books(ax=ax, **brief),
        plot.sensitivity: lambda ax: plot.sensitivity(found, ax=ax),
        plot.years: lambda ax: plot.years(rated, ax=ax),
    }


def test_each_draws_on_the_axes_given_with_one_caution(found, rated, steel):
    figure, places = pyplot.subplots(2, 3)
    for draw, ax in zip(drawings(found, rated, steel).values(), places.flat, strict=True):
        assert draw(ax) is ax
    figure.canvas.draw()
    assert [text.get_text() for text in figure.texts] == [f"Caution. {sw.CAUTION}"]
    # And on a figure of its own.
    for draw in drawings(found, rated, steel).values():
        assert sw.CAUTION in draw(None).figure.texts[0].get_text()


def test_all_plots_are_tested(found, rated, steel):
    functions = {getattr(plot, name) for name in plot.__all__ if callable(getattr(plot, name))}
    assert set(drawings(found, rated, steel)) == functions


def test_without_matplotlib_the_remedy_is_said(found, monkeypatch):
    monkeypatch.setitem(sys.modules, "matplotlib", None)
    monkeypatch.setitem(sys.modules, "matplotlib.pyplot", None)
    with pytest.raises(sw.SeamwrightError, match=r"pip install .seamwright\[plot\]") as caught:
        plot.pitch(found)
    assert caught.value.kind is sw.ErrorKind.MISSING


def linear(colour):
    c = np.array(colors.to_rgb(colour))
    return np.where(c <= 0.04045, c / 12.92, ((c + 0.055) / 1.055) ** 2.4)


def lab(rgb):
    """CIE L*a*b* of linear sRGB (D65), CIE 15."""
    xyz = np.array(
        [[0.4124564, 0.3575761, 0.1804375], [0.2126729, 0.7151522, 0.0721750], [0.0193339, 0.119192, 0.9503041]]
    )
    x = xyz @ rgb / np.array([0.95047, 1.0, 1.08883])
    f = np.where(x > 216 / 24389, np.cbrt(np.maximum(x, 0)), (24389 / 27 * x + 16) / 116)
    return np.array([116 * f[1] - 16, 500 * (f[0] - f[1]), 200 * (f[1] - f[2])])


# Machado, Oliveira and Fernandes, A Physiologically-based Model for Simulation of Color Vision Deficiency (2009),
# severity 1.0, on linear RGB.
SEEN = {
    "protan": [[0.152286, 1.052583, -0.204868], [0.114503, 0.786281, 0.099216], [-0.003882, -0.048116, 1.051998]],
    "deutan": [[0.367322, 0.860646, -0.227968], [0.280085, 0.672501, 0.047413], [-0.01182, 0.04294, 0.968881]],
    "tritan": [[1.255528, -0.076749, -0.178779], [-0.078411, 0.930809, 0.147602], [0.004733, 0.691367, 0.3039]],
}


def test_colours_stay_apart_in_grey_and_for_the_colour_blind():
    lightness = [lab(linear(ink))[0] for ink in plot.INKS]
    assert all(b - a >= 12 for a, b in itertools.pairwise(lightness)), lightness
    for name, matrix in SEEN.items():
        seen = [lab(np.clip(np.array(matrix) @ linear(ink), 0, 1)) for ink in plot.INKS]
        nearest = min(np.linalg.norm(a - b) for a, b in itertools.combinations(seen, 2))
        assert nearest >= 12, (name, nearest)
    assert len(set(map(str, plot.DASHES))) == len(set(plot.MARKERS)) == len(plot.INKS)


def test_fills_differ_in_lightness_or_hatch():
    from seamwright.plot._map import FILLS, HATCHES

    assert len(set(HATCHES)) == len(FILLS) == len(HATCHES)
    lightness = [lab(linear(fill))[0] for fill in FILLS]
    assert all(abs(a - b) >= 4 for a, b in itertools.pairwise(lightness)), lightness


def test_lines_differ_by_more_than_colour(steel):
    design = sw.size(form=sw.Form.unequal_straps(3), plate=sw.mm(16), materials=steel, book="indian")
    lines = [line for line in plot.pitch(design).lines if line.get_gid() == "mode"]
    assert len({(str(line.get_linestyle()), str(line._dash_pattern)) for line in lines}) == len(lines) > 2

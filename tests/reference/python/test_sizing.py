"""Whole sizings against worked examples of Khurmi & Gupta ch. 9 (transcriptions; printed pages not seen)."""

import pytest

from seamwright_reference.sizing import head_room, size


def test_double_lap():
    """Example 9.4: 13 mm, hole 23, rivet 22, 70.94 mm balanced (author rounds up to 71, here down), margin 34.5."""
    got = size("ibr", "lap", 13, [(1, 1), (1, 1)], 80, 60, 120, 1)
    assert (got["hole"], got["rivet"], got["pitch"], got["margin"]) == (23, 22, 70, 35)
    assert float(got["pitch_by_shear"]) == pytest.approx(70.9395, abs=5e-5)
    assert got["floor"] == 46


def test_unequal_straps():
    """Example 9.9: 25 mm, hole 31.5, 220.8 mm balanced, cap 191.28 (the author took 196, above it)."""
    got = size("ibr", "double strap", 25, [(1, 1), (2, 2), (2, 2)], 84, 60, 130, "1.875", back="outer to zig-zag")
    assert (got["hole"], got["rivet"], got["pitch"]) == (31.5, 30, 191)
    assert float(got["cap"]) == pytest.approx(191.28, abs=1e-9)
    assert float(got["row_distance"]) == pytest.approx(0.2 * 191 + 1.15 * 31.5, abs=1e-9)
    # 0.2 x 191 + 1.15 x 31.5 = 74.425, up to 75; heads of 1.6 x 30 beside the strap need 48 + 24 = 72.
    assert (float(got["heads"]), got["row_distance_taken"]) == (72, 75)


def test_room_for_heads():
    """By hand. 16 mm, hole 25, rivet 24; the cap 6 x 16 + 41.28 = 137.28 gives 137, for which the book asks for
    0.2 x 137 + 1.15 x 25 = 56.15, heads beside the strap for 38 + 1.6 x 24/2 = 57.2."""
    got = size("ibr", "double strap", 16, [(1, 1), (2, 2), (2, 2)], 92, 71, 136, "1.875", back="outer to zig-zag")
    assert (got["hole"], got["rivet"], got["pitch"], got["margin"]) == (25, 24, 137, 38)
    assert float(got["heads"]) == pytest.approx(57.2, abs=1e-12)
    assert got["row_distance_taken"] == 58
    # Rows alike, 24 across, heads 32 wide: 32^2 - 24^2 = 448. In line they need their width. 2 beside 3: no rule.
    assert float(head_room(20, 33, 48, (1, 1), (1, 1))) == pytest.approx(448**0.5, abs=1e-12)
    assert head_room(20, 33, 48, (1, 1), (1, 1), zig_zag=False) == 32
    assert head_room(20, 33, 68, (1, 2), (1, 2)) == 0
    assert head_room(20, 33, 48, (2, 2), (3, 2)) == 0


def test_no_admissible_pitch():
    """tricky.json X6, computed outside this code base: floor 57 above cap 50.45."""
    got = size("ibr", "lap", 7, [(1, 1)], 80, 56, 160, 1)
    assert (got["hole"], got["floor"], got["pitch"]) == (28.5, 57, None)


def test_tie_of_general_practice():
    """Example 9.11: 12.5 mm takes holes of 21.5 of the general series."""
    got = size("metric", "double strap", "12.5", [(1, 2), (2, 2), (2, 2)], 80, 65, 160, "1.75")
    assert (got["hole"], got["rivet"]) == (21.5, 20)


def test_us():
    """Driven size 13/16 for 3/8 in (read in state rules); pitch by (p - d) t TS = n s a with the code's a = 0.5185."""
    got = size("us", "lap", "0.375", [(1, 1), (1, 1)], 55000, 44000, 95000, 2, step="0.125")
    assert got["hole"] == 0.8125
    assert float(got["pitch_by_shear"]) == pytest.approx(0.8125 + 2 * 44000 * 0.5185 / (0.375 * 55000), abs=1e-4)
    assert got["pitch"] == 3

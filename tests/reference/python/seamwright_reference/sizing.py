"""A whole sizing by a book, in the order of the trade (DESIGN.md section 3; RULES.md 1 to 2 and 7)."""

from mpmath import ceil, sqrt

from . import books
from .model import number


SAME = number("1e-9")


def up(x, step):
    """The least multiple of a step not below a length, up to 1e-9 of it."""
    return ceil(x / step * (1 - SAME)) * step


def head_room(rivet, margin, strip, row, following, zig_zag=True):
    """What snap heads 1.6 rivets wide (custom of the trade) need from a row to the following one.

    Rows are (rivets, shear planes). From one plane to two the edge of the narrow strap lies between them, a margin
    outside the second; heads of the two rows touch at the hypotenuse of 1.6 rivets, one side being the distance across
    (none in chain). No rule where one row has neither as many rivets as the other nor twice as many.
    """
    rivet, margin, strip = number(rivet), number(margin), number(strip)
    width = rivet * 8 / 5
    room = margin + width / 2 if (row[1], following[1]) == (1, 2) else number(0)
    few, many = sorted((row[0], following[0]))
    if many in (few, 2 * few):
        across = strip / (2 * many) if zig_zag else number(0)
        room = max(room, sqrt(width**2 - across**2) if across < width else number(0))
    return room


def size(book, form, t, rows, tension, shear, bearing, factor, step=1, floor_factor=2, by_weaker=False, back="zig-zag"):
    """Hole, rivet, pitch, row distance and margin (RULES.md 1.1, 1.3, 1.5, 2; section 11 items 5, 6, 8).

    `rows`: (rivets, shear planes) from the outside. The floor belongs to the fullest row, the cap ("ibr" only) to the
    outer pitch; a cap below the floor gives the pitch None. "us" is in inches, its back pitch that of section 7.
    `row_distance` is the book's for the first two rows, `heads` what their heads need (not of the RULES), and
    `row_distance_taken` the greater, both on the step.
    """
    single = sum(n for n, planes in rows if planes == 1)
    double = sum(n for n, planes in rows if planes == 2)
    calculated, hole, rivet = books.hole(book, t, shear, bearing, factor if double and not single else 1)
    outer, fullest = rows[0][0], max(n for n, _ in rows)
    second = rows[1][0] if len(rows) > 1 and rows[1][0] != outer else None
    by_shear, by_fate, all_modes = books.balanced_pitches(hole, t, single, double, factor, tension, shear, bearing,
                                                          outer, second)
    least = number(floor_factor) * hole * fullest
    balanced = by_fate if by_weaker else by_shear
    cap = books.greatest_pitch(form, single + double, t) if book == "ibr" else max(balanced, least) + number(step)
    pitch = books.admissible_pitch(balanced, least, cap, step)
    distance = None if pitch is None or len(rows) == 1 else books.row_distance("us" if book == "us" else back, pitch, hole)
    step = number(step)
    margin = up(books.margin(hole), step)
    heads = taken = None
    if distance is not None:
        heads = head_room(rivet, margin, pitch * outer, rows[0], rows[1], back not in ("chain", "outer to chain"))
        by_book = up(distance, step)
        taken = up(heads, step) if heads > by_book * (1 + SAME) else by_book
    return {"hole_calculated": calculated, "hole": hole, "rivet": rivet, "pitch_by_shear": by_shear,
            "pitch_by_weaker_fate": by_fate, "pitch_of_all_modes": all_modes, "floor": least,
            "cap": cap if book == "ibr" else None, "pitch": pitch, "row_distance": distance,
            "heads": heads, "row_distance_taken": taken, "margin": margin}

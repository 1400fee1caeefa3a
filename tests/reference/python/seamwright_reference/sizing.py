"""A whole sizing by a book, in the order of the trade (DESIGN.md section 3; RULES.md 1 to 2 and 7)."""

from mpmath import ceil

from . import books
from .model import number


def size(book, form, t, rows, tension, shear, bearing, factor, step=1, floor_factor=2, by_weaker=False, back="zig-zag"):
    """Hole, rivet, pitch, row distance and margin (RULES.md 1.1, 1.3, 1.5, 2; section 11 items 5, 6, 8).

    `rows`: (rivets, shear planes) from the outside. The floor belongs to the fullest row, the cap ("ibr" only) to the
    outer pitch; a cap below the floor gives the pitch None. "us" is in inches, its back pitch that of section 7.
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
    return {"hole_calculated": calculated, "hole": hole, "rivet": rivet, "pitch_by_shear": by_shear,
            "pitch_by_weaker_fate": by_fate, "pitch_of_all_modes": all_modes, "floor": least,
            "cap": cap if book == "ibr" else None, "pitch": pitch, "row_distance": distance,
            "margin": ceil(books.margin(hole) / step * (1 - number("1e-9"))) * step}

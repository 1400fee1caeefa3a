"""Sizing by three books: "ibr" (Indian Boiler Regulations), "metric" (textbook practice), "us" (early US code).

Lengths in mm for "ibr" and "metric", in inches for "us". Constants with their labels are in RULES.md 1, 2, 5 to 7.
"""

from mpmath import ceil, floor, mpf, pi, sqrt

from .model import number

# RULES.md 1.5: nominal rivet and its hole, boiler series and general series, mm.
RIVETS = (12, 14, 16, 18, 20, 22, 24, 27, 30, 33, 36, 39, 42, 48)
BOILER_HOLES = tuple(map(mpf, "13 15 17 19 21 23 25 28.5 31.5 34.5 37.5 41 44 50".split()))
GENERAL_HOLES = tuple(map(mpf, "13.5 15.5 17.5 19.5 21.5 23.5 25.5 29 32 35 38 41 44 50".split()))
# RULES.md 1.3: the coefficient of the greatest pitch by rivets per pitch; the lap of four is doubtful there.
CAP = {"lap": {1: "1.31", 2: "2.62", 3: "3.47", 4: "4.17"}, "single strap": {1: "1.53", 2: "3.06", 3: "4.05"},
       "double strap": {1: "1.75", 2: "3.50", 3: "4.63", 4: "5.52", 5: "6.00"}}
# RULES.md section 8: size of the driven rivet where the hole is unknown, in sixteenths by thickness in 32nds.
US_DRIVEN = {8: 11, 9: 11, 10: 12, 11: 12, 12: 13, 13: 13, 14: 15, 15: 15, 16: 15, 18: 17, 20: 17}
# RULES.md section 7, Par. 19 Table 1 (from memory there): least strap by plate, both in 32nds of an inch.
US_STRAP = {8: 8, 9: 8, 10: 8, 11: 8, 12: 10, 13: 10, 14: 12, 15: 12, 16: 14, 17: 14, 18: 14, 20: 16, 24: 16, 28: 20,
            32: 22, 36: 24, 40: 28}


def hole_by_unwin(t, coefficient=6):
    """d = 6 sqrt t, mm (RULES.md section 2); 1.2 or 1.3 sqrt t in inches."""
    return number(coefficient) * sqrt(number(t))


def hole_of_thin_plate(t, shear, bearing, factor=1):
    """Shear = crushing: d = 4 t sigma_c/(pi tau), over phi in double shear (RULES.md section 2, 11 item 7)."""
    return 4 * number(t) * number(bearing) / (pi * number(shear) * number(factor))


def standard_hole(book, d):
    """Up to the next hole of the series (RULES.md section 2 "Author habits", 1.5): hole and rivet."""
    if book == "us":
        # RULES.md section 7, Par. 253: the hole is at most the rivet + 1/16; here up to the next 1/16.
        hole = ceil(number(d) * 16) / 16
        return hole, hole - mpf(1) / 16
    for hole, rivet in zip({"ibr": BOILER_HOLES, "metric": GENERAL_HOLES}[book], RIVETS):
        if hole >= number(d) * (1 - mpf("1e-9")):
            return hole, mpf(rivet)
    raise ValueError(f"hole: {d} mm is above the largest of the series, 50 mm")


def hole(book, t, shear, bearing, factor=1):
    """Calculated hole, standard hole and rivet (RULES.md section 2; for "us" the table of section 8)."""
    if book == "us":
        driven = US_DRIVEN.get(int(number(t) * 32)) if number(t) * 32 == int(number(t) * 32) else None
        if driven is None:
            raise ValueError(f"plate: no rivet for {t} in in the table of section 8")
        return mpf(driven) / 16, mpf(driven) / 16, mpf(driven - 1) / 16
    thin = number(t) < 8
    calculated = hole_of_thin_plate(t, shear, bearing, factor) if thin else hole_by_unwin(t)
    return (calculated, *standard_hole(book, calculated))


def rivets_per_pitch(d, t, single, double, factor, shear, bearing, weaker):
    """All rivets of one pitch in shear, or each by the weaker of shear and bearing (RULES.md section 11 item 5)."""
    d, t = number(d), number(t)
    one, crush = pi / 4 * d**2 * number(shear), d * t * number(bearing)
    two = one * number(factor)
    return single * (min(one, crush) if weaker else one) + double * (min(two, crush) if weaker else two)


def balanced_pitches(d, t, single, double, factor, tension, shear, bearing, outer=1, second=None):
    """The three balances of RULES.md section 11 item 5: by shear, by the weaker fate, and where all modes meet.

    The last is the pitch at which (p - k d) t sigma through the second row and the outer rivets equals all rivets.
    """
    d, net = number(d), number(t) * number(tension)
    found = [outer * d + rivets_per_pitch(d, t, single, double, factor, shear, bearing, w) / net for w in (False, True)]
    if second is None:
        return found + [None]
    every = rivets_per_pitch(d, t, single, double, factor, shear, bearing, True)
    # The outer row is in single shear where the joint has rivets in single shear.
    first = rivets_per_pitch(d, t, *((outer, 0) if single else (0, outer)), factor, shear, bearing, True)
    return found + [second * d + (every - first) / net]


def greatest_pitch(form, rivets, t, constant="41.28"):
    """C t + 41.28 mm (RULES.md 1.3); more rivets than the table holds: unknown (section 11 item 6)."""
    if rivets not in CAP[form]:
        raise ValueError(f"rivets: no coefficient for {rivets} per pitch in a {form} joint")
    return number(CAP[form][rivets]) * number(t) + number(constant)


def admissible_pitch(balanced, floor_, cap, step=1):
    """The balanced pitch in whole steps, between floor and cap, or None (RULES.md section 11 item 6; 1.3 for 2 d)."""
    near = mpf("1e-9")
    step = number(step)
    high = floor(min(number(balanced), number(cap)) / step * (1 + near)) * step
    low = ceil(number(floor_) / step * (1 - near)) * step
    if low > number(cap) * (1 + near):
        return None
    return max(high, low)


def row_distance(case, p, d):
    """Reg. 184, Eq. 12 to 15 (RULES.md 1.1); "us" back pitch of Par. 182 (section 7, from memory there)."""
    p, d = number(p), number(d)
    zig_zag, chain = (33 * p + 67 * d) / 100, 2 * d
    return {"zig-zag": zig_zag, "chain": chain, "outer to chain": max(zig_zag, chain),
            "outer to zig-zag": p / 5 + d * 115 / 100, "full zig-zag": (165 * p + 670 * d) / 1000,
            "us": d * 175 / 100 + (max(p - 4 * d, mpf(0)) / 10)}[case]


def margin(d):
    """1.5 d (Reg. 184(e), RULES.md 1.1; section 7 Par. 183)."""
    return number(d) * 3 / 2


def strap(kind, t, p=None, d=None):
    """Strap thickness (RULES.md 1.4; "us": the table of section 7): one value, or (wide, narrow)."""
    t = number(t)
    if kind == "us":
        if t * 32 != int(t * 32) or int(t * 32) not in US_STRAP:
            raise ValueError(f"plate: no strap for {t} in in the table")
        return mpf(US_STRAP[int(t * 32)]) / 32
    omitted = (number(p) - number(d)) / (number(p) - 2 * number(d)) if kind.endswith("omitted") else 1
    if kind.startswith("single"):
        return t * 9 / 8 * omitted
    return (t * 3 / 4, t * 5 / 8) if kind == "double unequal" else t * 5 / 8 * omitted


def plate_by_reg_184d(p, d, actual, prescribed):
    """Eq. 16: [P - (2 - actual/prescribed) D]/P where rows are closer than prescribed (RULES.md 1.1, Reg. 184(d))."""
    p, d = number(p), number(d)
    return (p - (2 - min(number(actual) / number(prescribed), 1)) * d) / p


def british_rivets(area, rivets, c, y, f, s, t, p):
    """Rivet fraction a N Y C F/(4 S T P) of British Columbia (RULES.md section 5)."""
    return number(area) * rivets * number(y) * number(c) * number(f) / (4 * number(s) * number(t) * number(p))


def us_letters(p, t, d, a, n, rivets, ts, s, c, s2=None, b=None):
    """The letters of RULES.md section 6: `n` single-shear rivets per pitch, `rivets` (N) in double shear, strap b."""
    p, t, d, a, ts, s, c = map(number, (p, t, d, a, ts, s, c))
    of = {"A": p * t * ts, "B": (p - d) * t * ts}
    if not rivets:
        return of | {"C": n * s * a, "D": n * d * t * c}
    s2, b = number(s2), number(b)
    second, fourth = (p - 2 * d) * t * ts, (p - 4 * d) * t * ts
    of |= {"C": rivets * s2 * a + n * s * a, "D": second + s * a}
    plate = rivets * d * t * c
    if n == 1:
        return of | {"E": second + d * b * c, "F": plate + d * b * c, "G": plate + s * a}
    return of | {"E": fourth + 3 * s * a, "F": second + d * b * c, "G": fourth + 3 * d * b * c,
                 "H": plate + n * d * b * c, "I": plate + n * s * a}

"""The strip of a riveted joint: every cut, by brute force (RULES.md section 6, DESIGN.md section 1).

Lengths, stresses and forces in any one consistent system; all numbers become mpmath numbers of 30 digits.
"""

from itertools import product

from mpmath import mp, mpf, pi

mp.dps = 30


def number(value):
    """A float stays the double that it is; a string is read as a decimal."""
    return mpf(value)


class Part:
    """A plate or a strap: thickness and allowable (or ultimate) tension and bearing (RULES.md section 6)."""

    def __init__(self, name, thickness, tension, bearing):
        self.name, self.t = name, number(thickness)
        self.tension, self.bearing = number(tension), number(bearing)


class Row:
    """A row: rivets per strip, diameters for tearing, shear and bearing, and the straps that it reaches.

    RULES.md section 11 item 14: which diameter counts in which mode is the book's.
    """

    def __init__(self, rivets, hole, straps, shear_diameter=None, bearing_diameter=None):
        self.n, self.hole = int(rivets), number(hole)
        self.d_shear = number(hole if shear_diameter is None else shear_diameter)
        self.d_bearing = number(hole if bearing_diameter is None else bearing_diameter)
        self.straps = frozenset(straps)


class Joint:
    """One plate joined by its rows, counted from its outside, to one or two others (RULES.md section 6, "Rows").

    `straps` are the plates that take the load over: the other plate of a lap, or the straps of a butt joint.
    """

    def __init__(self, form, pitch, plate, straps, rows, shear, double_shear_factor, one_plane_of_double=None):
        self.form, self.p, self.plate, self.straps, self.rows = form, number(pitch), plate, straps, rows
        self.shear, self.factor = number(shear), number(double_shear_factor)
        # RULES.md section 11 item 1: half of double shear unless the book says otherwise.
        self.one_plane = self.factor / 2 if one_plane_of_double is None else number(one_plane_of_double)

    def solid(self):
        """Strength of the solid strip: p t sigma (RULES.md section 6 letter A); of a lap the weaker plate's."""
        of = [self.plate] + (self.straps if self.form == "lap" else [])
        return min(self.p * part.t * part.tension for part in of)

    def tear(self, part, row):
        """(p - n d) t sigma through one row (RULES.md section 6 letter B, and Reg. 177 Eq. 2)."""
        return (self.p - row.n * row.hole) * part.t * part.tension

    def fate(self, row, failing):
        """One rivet that parts the plate from the straps in `failing`, by the weaker of its fates.

        RULES.md section 6 letters C to I and section 11 items 1 and 14. A rivet hangs on the plate by its bearing
        and on each strap by the lesser of its plane's shear and its bearing in that strap.
        """
        failing = [strap for strap in failing if strap.name in row.straps]
        if len(row.straps) == 1:
            plane = mpf(1)
        else:
            plane = self.one_plane if len(failing) == 1 else self.factor / len(row.straps)
        planes = sum(
            (min(plane * self.area(row) * self.shear, row.d_bearing * strap.t * strap.bearing) for strap in failing),
            mpf(0),
        )
        return min(planes, row.d_bearing * self.plate.t * self.plate.bearing)

    def area(self, row):
        """pi d^2/4 of the diameter that counts in shear (RULES.md section 1.1, Eq. 3)."""
        return pi * row.d_shear**2 / 4

    def cuts(self):
        """All cuts as (name, strength), weakest first (DESIGN.md section 1; RULES.md section 6, section 11 item 2).

        The plate tears at row i or nowhere and every strap at a row that it holds or nowhere. Outside i the plate goes
        with the load; a strap stays with its anchor inside its own tear. A rivet counts where it joins the two.
        """
        places = [[None] + list(range(len(self.rows)))]
        for strap in self.straps:
            places.append([None] + [at for at, row in enumerate(self.rows) if strap.name in row.straps])
        found = []
        for plate_at, *strap_at in product(*places):
            names, total = [], mpf(0)
            for part, at in zip([self.plate] + self.straps, [plate_at] + strap_at):
                if at is not None:
                    names.append(f"{part.name} tears row {at + 1}")
                    total += self.tear(part, self.rows[at])
            for at, row in enumerate(self.rows):
                if plate_at is None or at < plate_at:
                    failing = [s for s, torn in zip(self.straps, strap_at) if torn is None or at > torn]
                    total += row.n * self.fate(row, failing)
            found.append((" + ".join(names) or "all rivets", total))
        return sorted(found, key=lambda cut: (cut[1], cut[0]))

    def efficiency(self, counted=None):
        """Least cut over the solid strip; `counted`, a set of names, is the mask of a book (RULES.md 1.1, Reg. 177)."""
        cuts = [cut for cut in self.cuts() if counted is None or cut[0] in counted]
        if not cuts:
            raise ValueError("counted: no such mode; name modes as in `cuts`")
        return cuts[0][1] / self.solid()

    def classic(self):
        """Tearing at the outer row, all rivets in shear, all in bearing on the plate (RULES.md 1.1 and 6 B, C)."""
        shear = sum(r.n * (self.factor if len(r.straps) == 2 else 1) * self.area(r) * self.shear for r in self.rows)
        bearing = mpf(0)
        for row in self.rows:
            reached = [strap for strap in self.straps if strap.name in row.straps]
            through = min(self.plate.t * self.plate.bearing, sum(s.t * s.bearing for s in reached))
            bearing += row.n * row.d_bearing * through
        return {"tearing": self.tear(self.plate, self.rows[0]), "shear": shear, "bearing": bearing}

"""What a letter means in one equation, where the working's table of quantities does not say it.

The working gives each quantity a name of its own (`kp` for a share of the pitch); an equation is written in the trade's
letters, where `a` is whatever the rule at hand calls `a`. Each entry is the words and the unit.
"""

SHARE = ("constant of the rule book", "")
IN_BETWEEN = ("length of the rule book", "mm")
ROW = {
    "n1": ("rivets of the outer row in the strip", ""),
    "d1": ("hole of the outer row", "mm"),
}
HEAD = {"w": ("width of the head", "mm"), "h": ("height of the head", "mm")}
VOLUME = {"V": ("volume", "mm3")}

TWO_HEADS = {"w1": ("width of a head of the row", "mm"), "w2": ("width of a head of the next row", "mm")}

ACROSS = {
    "T": ("share of a rivet, along x or y", "N"),
    "x": ("its distance from the centroid across that", "mm"),
}
ON_RIVET = {"F": ("force on the rivet", "N"), "d": ("diameter that counts", "mm")}

LOCAL: dict[str, dict[str, tuple[str, str]]] = {
    "HoleByRoot": {"b": IN_BETWEEN},
    "HeadsInLine": TWO_HEADS,
    "HeadsApart": TWO_HEADS,
    "SafetyRatio": {
        "x": ("ratio of the two", ""),
        "F": ("factor of safety of the seam", ""),
        "F1": ("divisor of the rule book", ""),
    },
    "RowHold": {"F": ("one rivet, as it fails", "N")},
    "ZigzagGain": {"j": ("diagonals on the zig-zag", "")},
    "ZigzagNetSection": {
        "n1": ("holes of one row on the zig-zag", ""),
        "d1": ("their diameter", "mm"),
        "n2": ("holes of its neighbour on the zig-zag", ""),
        "d2": ("their diameter", "mm"),
    },
    "GapRatio": {"x": ("distance over the least one", ""), "min": ("(with g) least distance between rows", "mm")},
    "CrowdedHoles": {"min": ("(with g) least distance between rows", "mm")},
    "CutStrength": {},
    "EvenShare": {"n": ("rivets outside the section", "")},
    "RivetPercentage": {
        "A": ("area of one rivet", "mm2"),
        "C": ("shear areas that count for one rivet", ""),
        "F": ("factor of safety of the seam", ""),
        "F1": ("divisor of the rule book", ""),
    },
    "CombinedPercentage": {"n2": ("holes of the inner row in the strip", "")},
    "BalancedPitch": {"F": ("all rivets", "N"), "Fo": ("rivets outside the row", "N")},
    "LeastPitch": {
        "a": SHARE,
        "b": IN_BETWEEN,
        "n": ("rivets of the outer row in the strip", ""),
        "n1": ("rivets of the densest row in the strip", ""),
        "min": ("(with p) least pitch", "mm"),
    },
    "GreatestPitch": {"C": SHARE, "K": IN_BETWEEN, "max": ("(with p) greatest pitch", "mm")},
    "RowDistance": {
        "a": ("share of the pitch", ""),
        "k": ("holes taken off the pitch", ""),
        "b": ("share of the diameter", ""),
        "c": IN_BETWEEN,
    },
    "RowDistanceDiagonal": {"a": ("share of the pitch", ""), "b": ("share of the diameter", "")},
    "Margin": {"a": SHARE, "b": IN_BETWEEN},
    "Times": {
        "x": ("limit", "mm"),
        "a": SHARE,
        "y": ("the diameter or thickness that it is a multiple of", "mm"),
    },
    "StrapShare": {"b": ("thickness of the strap", "mm"), "a": SHARE, "c": IN_BETWEEN},
    "StrapThickened": {
        **ROW,
        "b": ("thickness of the strap", "mm"),
        "a": SHARE,
        "c": IN_BETWEEN,
        "nb": ("rivets of the inner row in the strip", ""),
        "db": ("hole of the inner row", "mm"),
    },
    "RowPitch": {"pr": ("pitch of the row", "mm")},
    "Mean": {"d1": ("hole of one row", "mm"), "d2": ("hole of the next", "mm")},
    "Ratio": {"x": ("ratio of the two", "")},
    "AllowanceSum": {"c0": ("allowance of the book", "mm"), "c1": ("corrosion allowance given", "mm")},
    "HalfDiameter": {"R": ("inside radius of the shell", "mm")},
    "RadiusShare": {"x": ("plate over inside radius", ""), "R": ("inside radius of the shell", "mm")},
    "OutsideRadius": {"R": ("inside radius of the shell", "mm")},
    "SafetySum": {"f": ("factor of safety of the class", "")},
    "PressureRadius": {"R": ("radius of the shell", "mm")},
    "StraightRun": {
        "e1": ("end of the plate to the first hole", "mm"),
        "e2": ("last hole to the end of the plate", "mm"),
    },
    "Difference": {"u": ("how far apart", "mm"), "a": ("the wider pitch", "mm"), "b": ("the narrower pitch", "mm")},
    "RivetsInRun": {"e": ("1 where a last hole closes the row, else 0", "")},
    "HolePlace": {"x": ("place of the hole along the seam", "mm"), "k": ("pitches from the first hole", "")},
    "HoleAngle": {"a": ("angle of the hole", "degrees"), "x": ("place of the hole along the girth", "mm")},
    "AllowanceSteelButton": {"k": ("factor of the rule", ""), "d": ("cold rivet", "mm")},
    "AllowanceBoilerButton": {"k": ("factor of the rule", ""), "d": ("cold rivet", "mm")},
    "AllowanceCountersunk": {"d": ("cold rivet", "mm")},
    "AllowanceHand": {"d": ("cold rivet", "mm")},
    "AllowanceSmallMachine": {"d": ("cold rivet", "mm")},
    "RowSpan": {"s": ("first row to last row", "mm")},
    "Overlap": {"s": ("first row to last row", "mm")},
    "StrapWidth": {"s": ("first row to last row", "mm"), "w": ("width of the strap", "mm")},
    "Cylinder": {**VOLUME, "d": ("diameter", "mm"), "l": ("length", "mm")},
    "RoundHead": {**VOLUME, **HEAD},
    "SunkHead": {**VOLUME, **HEAD, "d": ("cold rivet", "mm")},
    "Mass": {**VOLUME, "M": ("mass", "kg"), "rho": ("density", "kg/m3")},
    "PlateVolume": {
        **VOLUME,
        "w": ("width", "mm"),
        "l": ("length", "mm"),
        "b": ("thickness", "mm"),
    },
    "VolumeSum": {**VOLUME, "V1": ("one volume", "mm3"), "V2": ("the other", "mm3")},
    "MassOfMany": {"M": ("mass of all", "kg"), "n": ("number of them", ""), "m": ("mass of one", "kg")},
    "MassPerMetre": {"L": ("length of the seam", "mm")},
    "AreaTimes": {"a": ("weighted figure", ""), "x": ("place along x or y, or square of a distance", "mm, mm2")},
    "GroupSum": {"S": ("sum over the rivets", ""), "x": ("figure of one rivet", "")},
    "Distance": {
        "h": ("distance of the two", "mm"),
        "X1": ("one point, along x", "mm"),
        "Y1": ("the same, along y", "mm"),
        "X2": ("the other point, along x", "mm"),
        "Y2": ("the same, along y", "mm"),
    },
    "DirectShare": {"D": ("share of a rivet, along x or y", "N"), "P": ("load along x or y", "N")},
    "DirectShareByArea": {"D": ("share of a rivet, along x or y", "N"), "P": ("load along x or y", "N")},
    "TurningShare": ACROSS,
    "TurningShareByArea": ACROSS,
    "ShareSum": {
        "F": ("force on the rivet, along x or y", "N"),
        "D": ("direct share", "N"),
        "T": ("share of the moment", "N"),
    },
    "Resultant": {
        "F": ("both together", "N"),
        "Fx": ("force along x", "N"),
        "Fy": ("force along y", "N"),
    },
    "RivetShearStress": {"s": ("shear stress in the rivet", "MPa"), **ON_RIVET},
    "RivetShearStressDouble": {"s": ("shear stress in the rivet", "MPa"), **ON_RIVET},
    "RivetBearingStress": {"s": ("bearing stress of the plate", "MPa"), **ON_RIVET},
    "Use": {"s": ("shear or bearing stress", "MPa")},
    "DiameterByShear": {"F": ("force on the rivet that bears most", "N")},
    "DiameterByShearDouble": {"F": ("force on the rivet that bears most", "N")},
    "DiameterByBearing": {"F": ("force on the rivet that bears most", "N")},
}

# Parts of an equation that are words, not symbols.
WORDS = {
    "sqrt",
    "pi",
    "sum",
    "of",
    "net",
    "sections",
    "rows",
    "rivet",
    "the",
    "outer",
    "row",
    "up",
    "to",
    "mm",
    "above",
    "greatest",
    "inches",
    "permitted",
}

#!/usr/bin/env python3
"""Reads a DXF with ezdxf, audits it, and compares its holes with numbers given as arguments.

    check_dxf.py FILE COUNT RADIUS[,RADIUS...] [X,Y ...]

COUNT circles must stand on the layer HOLES, their radii must be exactly the given ones, and a hole must lie at each
X,Y (millimetres, 1e-5 apart at most). Prints the number of holes; ends with 1 on any difference.
Needs ezdxf: python3 -m venv target/venv && target/venv/bin/pip install ezdxf
"""

import sys

import ezdxf

NEAR = 1e-5
LAYERS = {"OUTLINE", "HOLES", "CENTRE", "DIMENSIONS", "TEXT"}


def main(path, count, radii, *places):
    document = ezdxf.readfile(path)
    problems = []
    auditor = document.audit()
    problems += [str(e.message) for e in auditor.errors + auditor.fixes]
    if document.dxfversion != "AC1009":
        problems.append(f"version {document.dxfversion}, not AC1009")
    space = document.modelspace()
    used = {e.dxf.layer for e in space}
    if used != LAYERS:
        problems.append(f"layers used: {sorted(used)}")
    if not all(document.layers.has_entry(name) for name in LAYERS):
        problems.append("a layer is used and not defined")

    holes = list(space.query('CIRCLE[layer=="HOLES"]'))
    if len(holes) != int(count):
        problems.append(f"{len(holes)} holes, not {count}")
    expected = sorted(float(r) for r in radii.split(","))
    found = sorted({round(h.dxf.radius, 6) for h in holes})
    if len(found) != len(expected) or any(abs(a - b) > NEAR for a, b in zip(found, expected)):
        problems.append(f"radii {found}, not {expected}")
    for place in places:
        x, y = (float(v) for v in place.split(","))
        if not any(abs(h.dxf.center.x - x) < NEAR and abs(h.dxf.center.y - y) < NEAR for h in holes):
            problems.append(f"no hole at {place}")
    if any(t.dxf.height <= 0 or not t.dxf.text for t in space.query("TEXT")):
        problems.append("a text without height or letters")

    for problem in problems:
        print(f"check_dxf: {path}: {problem}")
    print(f"check_dxf: {len(holes)} holes, {len(problems)} problems")
    return 1 if problems else 0


if __name__ == "__main__":
    sys.exit(main(*sys.argv[1:]))

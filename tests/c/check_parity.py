#!/usr/bin/env python3
"""Every public item of the core is reached from C, or stands in tests/c/parity.py with the reason why not."""

import re
import sys
from fnmatch import fnmatchcase
from pathlib import Path

HERE = Path(__file__).resolve().parent
sys.path[:0] = [str(HERE.parent), str(HERE)]

import parity  # noqa: E402
from public_items import public_items  # noqa: E402
from rust_source import report, sources  # noqa: E402

CORE = HERE.parent.parent / "core" / "src"
HEADER = (HERE.parent.parent / "bindings" / "c" / "include" / "seamwright.h").read_text(encoding="utf-8")


def there(name):
    """Whether the header has a function, or a struct with such a member."""
    struct, _, member = name.partition(".")
    if not member:
        return re.search(rf"\b{name}\(", HEADER) is not None
    body = re.search(rf"typedef struct {struct} {{(.*?)^}} {struct};", HEADER, re.S | re.M)
    return body is not None and re.search(rf"\b{member}(\[\w+\])*;", body.group(1)) is not None


def homes():
    """The top modules in which each type stands."""
    found = {}
    for path, (_, text) in sources(CORE).items():
        for name in re.findall(r"\bpub (?:struct|enum|trait) (\w+)", text):
            found.setdefault(name, set()).add(path[0] if path else "")
    return found


def main():
    items, where, failures = sorted(public_items(CORE)), homes(), []
    counts = {"reached": 0, "without": 0, "not yet": 0}
    for item in items:
        owner = item.removeprefix("show::<").removesuffix(">").split("::")[0]
        if where.get(owner, {owner}) <= set(parity.NOT_YET):
            counts["not yet"] += 1
        elif any(fnmatchcase(item, pattern) for pattern in parity.REACHED):
            counts["reached"] += 1
        elif any(fnmatchcase(item, pattern) for pattern in parity.WITHOUT):
            counts["without"] += 1
        else:
            failures.append(f"{item} is reached by nothing in C: tests/c/parity.py names what does, or why not")
    for table in (parity.REACHED, parity.WITHOUT):
        for pattern in table:
            if not any(fnmatchcase(item, pattern) for item in items):
                failures.append(f"tests/c/parity.py: {pattern} matches no public item of the core")
    failures += [f"the header has no {name}" for name in sorted(set(parity.REACHED.values())) if not there(name)]
    # The check bites.
    if there("sw_joint_chuck") or there("sw_joint.no_such") or there("sw_no_such.pitch_mm") or not there("sw_joint_check"):
        failures.append("self-test: names that are not in the header were found there")
    if len(items) < 500 or "check::check" not in items:
        failures.append("self-test: the list of public items is not whole")
    print(f"parity of C: {counts}")
    return report("parity of C", 0 if failures else len(items), failures)


if __name__ == "__main__":
    sys.exit(main())

#!/usr/bin/env python3
"""No source file is longer than 500 lines; the library has no unsafe code and no standard library."""

import os
import re
import sys
from pathlib import Path

from rust_source import bare, report

ROOT = Path(__file__).resolve().parent.parent
MOST = 500
ENDINGS = (".rs", ".sh", ".py")
APART = {"target", ".git", "node_modules", "__pycache__"}


def files():
    """All sources of the project, not what is built from them."""
    for folder, folders, names in os.walk(ROOT):
        folders[:] = [f for f in folders if f not in APART and not f.startswith((".venv", "venv"))]
        yield from (Path(folder) / n for n in names if n.endswith(ENDINGS) or Path(folder).name == ".ci")


def unsafe_words(text):
    """Lines of Rust that hold the word outside comments, strings and the attribute that forbids it."""
    text = re.sub(r"#!\[forbid\(unsafe_code\)\]", "", bare(text))
    return [n for n, line in enumerate(text.splitlines(), 1) if re.search(r"\bunsafe\b|\bunsafe_code\b", line)]


def main():
    failures, passed = [], 0
    for file in files():
        lines = len(file.read_text(encoding="utf-8").splitlines())
        if lines > MOST:
            failures.append(f"{file.relative_to(ROOT)} has {lines} lines, {MOST} at most: split it by subject")
    passed += not failures

    core = ROOT / "core" / "src"
    sources = sorted(core.rglob("*.rs"))
    found = [f"{f.relative_to(ROOT)}:{n}: unsafe" for f in sources for n in unsafe_words(f.read_text(encoding="utf-8"))]
    passed += bool(sources) and not found
    failures += found

    lib = bare((core / "lib.rs").read_text(encoding="utf-8"))
    for attribute in ("#![no_std]", "#![forbid(unsafe_code)]", "#![deny(missing_docs)]"):
        if re.search("^" + re.escape(attribute), lib, re.M):
            passed += 1
        else:
            failures.append(f"core/src/lib.rs does not say {attribute}")

    bites = unsafe_words("fn f() {\n unsafe { g() } }\n") == [2] and not unsafe_words("// unsafe\n#![forbid(unsafe_code)]")
    passed += bites
    if not bites:
        failures.append("self-test: the search for unsafe does not bite")
    return report("sources", passed, failures)


if __name__ == "__main__":
    sys.exit(main())

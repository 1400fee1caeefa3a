#!/usr/bin/env python3
"""Each module of the library uses only modules that stand above it in the order of layers, or beside it."""

import re
import sys
import tempfile
from pathlib import Path

from rust_source import report, sources

HERE = Path(__file__).resolve().parent

# From the ground up. Modules of one line may use each other.
ORDER = [
    ["math", "text", "bounds", "error", "step"],
    ["quantities"],
    ["materials"],
    ["rules"],
    ["joint"],
    ["formula"],
    ["given"],
    ["proportion"],
    ["modes"],
    ["check"],
    ["sizing", "batch"],
    ["rating", "group", "sensitivity", "shop", "vessel"],
    ["search"],
    ["reconcile"],
    ["working"],
    ["drawing", "teach", "comparison"],
    ["sheet"],
]
LEVEL = {module: level for level, line in enumerate(ORDER) for module in line}


def heads(group):
    """First names of the members of a `{...}`: `a::b, {c, d}` gives a, c, d."""
    depth, part, parts = 0, "", []
    for char in group + ",":
        if char == "," and depth == 0:
            parts.append(part.strip())
            part = ""
            continue
        depth += {"{": 1, "}": -1}.get(char, 0)
        part += char
    for part in filter(None, parts):
        if part.startswith("{"):
            yield from heads(part[1:-1])
        else:
            yield re.match(r"\*|[\w]+", part).group()


def used(path, text):
    """Line and name of everything that a file takes from the crate root, by `crate::` or by climbing with `super::`."""
    roots = r"\bcrate\s*::\s*"
    if path:
        # As many `super` as the module is deep reach the root; more would not compile.
        roots += r"|(?<![\w:])(?:self\s*::\s*)?(?:super\s*::\s*){%d}(?!super)" % len(path)
    for found in re.finditer(rf"(?:{roots})(?P<rest>\{{|\*|\w+)", text):
        line = text.count("\n", 0, found.start()) + 1
        if found.group("rest") != "{":
            yield line, found.group("rest")
            continue
        depth, start = 0, found.start("rest")
        for end in range(start, len(text)):
            depth += {"{": 1, "}": -1}.get(text[end], 0)
            if depth == 0:
                break
        for name in heads(text[start + 1 : end]):
            yield line, name


def root_names(lib):
    """What lib.rs itself offers: re-exports by their module, its own constants by an empty one; and its modules."""
    names = {}
    for module, group in re.findall(r"\bpub use (?:self::|crate::)?(\w+)::(\{[^}]*\}|\w+)\s*;", lib):
        for name in re.findall(r"\w+", group):
            names[name] = module
    for name in re.findall(r"\b(?:const|static|fn|struct|enum|trait|type|macro_rules!) +(\w+)", lib):
        names[name] = ""
    return names, re.findall(r"^\s*(?:pub(?:\([^)]*\))? )?mod (\w+)", lib, re.M)


def violations(root):
    """Every use that goes down the order, as text; and the number of uses looked at."""
    tree = sources(root)
    names, modules = root_names(tree[()][1])
    bad = [f"module {m} has no place in the order: give it one in tests/layers.py" for m in modules if m not in LEVEL]
    looked = 0
    for path, (file, text) in tree.items():
        if not path or path[0] not in LEVEL:
            continue
        for line, name in used(path, text):
            looked += 1
            module = names.get(name, name)
            where = f"{file.relative_to(root)}:{line}"
            if module == "":
                continue
            if module == "*":
                bad.append(f"{where}: takes everything from the crate root")
            elif module not in LEVEL:
                bad.append(f"{where}: `{name}` of the crate root is not in the order")
            elif LEVEL[module] > LEVEL[path[0]]:
                bad.append(f"{where}: {path[0]} may not use {module}, which stands below it")
    return bad, looked


LIB = "pub mod math;\npub mod error;\npub mod rules;\npub mod joint;\npub mod check;\npub use error::{Error, ErrorKind};\npub const VERSION: &str = \"\";\n"
# Name, file, text, number of violations.
CASES = [
    ("upwards", "check/mod.rs", "use crate::rules::Rules;\nuse crate::{math, joint::{Form, Row}};\n", 0),
    ("downwards", "rules/mod.rs", "use crate::check::check;\n", 1),
    ("downwards in a group", "rules/mod.rs", "use crate::{math, joint::{Form, Row}, check};\n", 2),
    ("downwards over lines", "math.rs", "use crate::{\n    error::Error,\n    rules::Rules,\n};\n", 1),
    ("downwards in an expression", "rules/mod.rs", "fn f() { crate::check::check() }\n", 1),
    ("downwards as a public re-export", "rules/mod.rs", "pub use crate::joint::Form;\n", 1),
    ("downwards by super", "rules/book.rs", "use super::super::check::check;\n", 1),
    ("sideways by super", "rules/book.rs", "use super::entries::Entry;\n", 0),
    ("downwards by super from a file", "math.rs", "use super::rules::Rules;\n", 1),
    ("beside", "math.rs", "use crate::error::Error;\n", 0),
    ("a name of the root", "rules/mod.rs", "use crate::{Error, VERSION};\n", 0),
    ("everything", "rules/mod.rs", "use crate::*;\n", 1),
    ("in a comment", "rules/mod.rs", "//! [`check`](crate::check)\n/* crate::check */ // crate::check\n", 0),
    ("in a string", "rules/mod.rs", 'const A: &str = "crate::check";\n', 0),
    ("in a test module", "rules/mod.rs", "#[cfg(test)]\n#[allow(x)]\nmod tests {\n    use crate::check::{check};\n}\n", 0),
    ("after a test module", "rules/mod.rs", "#[cfg(test)]\nmod tests {\n    fn f() {}\n}\nuse crate::check::check;\n", 1),
    ("after a brace in a character", "rules/mod.rs", "#[cfg(test)]\nmod tests {\n    const A: char = '{';\n}\nuse crate::check;\n", 1),
    ("unknown", "rules/mod.rs", "use crate::cellar::Wine;\n", 1),
]


def self_test():
    """Each case in a tree of its own; also a test module in a file of its own, and a module without a place."""
    wrong = []
    for name, file, text, expected in CASES:
        with tempfile.TemporaryDirectory() as place:
            root = Path(place)
            (root / "lib.rs").write_text(LIB, encoding="utf-8")
            target = root / file
            target.parent.mkdir(parents=True, exist_ok=True)
            target.write_text(text, encoding="utf-8")
            found, _ = violations(root)
            if len(found) != expected:
                wrong.append(f"self-test `{name}`: {len(found)} violations instead of {expected}: {found}")
    with tempfile.TemporaryDirectory() as place:
        root = Path(place)
        (root / "rules").mkdir()
        (root / "lib.rs").write_text(LIB + "pub mod cellar;\n", encoding="utf-8")
        (root / "rules" / "mod.rs").write_text("#[cfg(test)]\nmod tests;\n", encoding="utf-8")
        (root / "rules" / "tests.rs").write_text("use crate::check::check;\n", encoding="utf-8")
        found, _ = violations(root)
        if len(found) != 1 or "cellar" not in found[0]:
            wrong.append(f"self-test of test files and unknown modules: {found}")
    return wrong, len(CASES) + 1


def main():
    bad, looked = violations(HERE.parent / "core" / "src")
    wrong, cases = self_test()
    if looked < 20:
        wrong.append(f"only {looked} uses of the crate root were found: is the tree there?")
    print(f"layers: {looked} uses of other modules looked at")
    return report("layers", cases - len(wrong) + (0 if bad else 1), bad + wrong)


if __name__ == "__main__":
    sys.exit(main())

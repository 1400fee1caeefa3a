"""Just enough reading of rustfmt-formatted Rust for the source checks of the gate: no comments, no strings, no tests."""

import re
from pathlib import Path

# Character literals that could upset the reading of quotes and braces.
CHARS = r"b?'(?:\\.[^']*|[^'\\])'"
TOKENS = re.compile(r'//[^\n]*|/\*.*?\*/|b?r(#*)".*?"\1|b?"(?:\\.|[^"\\])*"|' + CHARS, re.S)


def bare(text):
    """The text with comments, strings and character literals blanked; lines stay where they are."""

    def blank(found):
        return re.sub(r"[^\n]", " ", found.group())

    return TOKENS.sub(blank, text)


def block_end(text, start):
    """Position after the brace that closes the first one opened at or after `start`."""
    depth = 0
    for at in range(text.index("{", start), len(text)):
        depth += {"{": 1, "}": -1}.get(text[at], 0)
        if depth == 0:
            return at + 1
    raise ValueError("a brace is never closed")


def without_tests(text):
    """Blanks every `#[cfg(test)]` item; also gives the names of the test modules that lie in files of their own."""
    apart = []
    while found := re.search(r"#\[cfg\(test\)\]", text):
        rest = text[found.end() :]
        end = re.search(r"[;{]", rest)
        if end is None:
            raise ValueError("#[cfg(test)] without an item")
        if end.group() == ";":
            stop = found.end() + end.end()
            if name := re.search(r"\bmod\s+(\w+)\s*;", rest[: end.end()]):
                apart.append(name.group(1))
        else:
            stop = block_end(text, found.end())
        blank = re.sub(r"[^\n]", " ", text[found.start() : stop])
        text = text[: found.start()] + blank + text[stop:]
    return text, apart


def module_path(root, file):
    """`joint/form.rs` is `("joint", "form")`, `joint/mod.rs` is `("joint",)`, `lib.rs` is `()`."""
    parts = list(file.relative_to(root).with_suffix("").parts)
    if parts[-1] in ("mod", "lib"):
        parts.pop()
    return tuple(parts)


def sources(root):
    """The sources under `root` that are not tests, as `{module path: (file, bare text)}`."""
    root = Path(root)
    found, tests = {}, set()
    for file in sorted(root.rglob("*.rs")):
        path = module_path(root, file)
        text, apart = without_tests(bare(file.read_text(encoding="utf-8")))
        found[path] = (file, text)
        tests.update(path + (name,) for name in apart)
    return {p: s for p, s in found.items() if not any(p[: len(t)] == t for t in tests)}


def report(name, passed, failures):
    """Prints the outcome in the words of `cargo test`, which the gate adds up; gives the exit code."""
    for failure in failures:
        print(f"{name}: {failure}")
    print(f"{name}: test result: {'FAILED' if failures else 'ok'}. {passed} passed; {len(failures)} failed; 0 ignored")
    return 1 if failures else 0

"""A copy of the core whose routines tell no context anything: `python strip.py <root> <place>`.

In the copy a call such as `c.formula(name, formula, e)` is `e`, `c.given(name, x)` is the bare number `x`,
`c.lesser(name, why, a, b)` the lesser of two: the formula bodies and the choices as one would call them by hand. Names,
reasons, entries and sections reach no context any more. Compared with the library as it is, the copy shows what the
hooks for the recorder cost where nothing records.
"""

import re
import shutil
import sys
from pathlib import Path

# What takes the place of a call; arguments by number, from 0. `closed` are helpers below.
INSTEAD = {
    "given": "closed::number({c}, {1})",
    "table": "closed::number({c}, {2})",
    "leaf": "closed::number({c}, {2})",
    "formula": "({2})",
    "close": "({2})",
    "choice": "({2})",
    "lesser": "closed::lesser({2}, {3})",
    "greater": "closed::greater({2}, {3})",
    "down": "closed::number({c}, crate::math::round_down(crate::step::Num::value({2}), {1}))",
    "up": "closed::number({c}, crate::math::round_up(crate::step::Num::value({2}), {1}))",
    "nearest": "closed::number({c}, crate::math::round_nearest(crate::step::Num::value({2}), {1}))",
    "rounded": "closed::number({c}, {2})",
    "section": "()",
}
CLOSED = """
/// What is left of the contexts' methods.
pub(crate) mod closed {
    use super::{Ctx, Num};
    #[inline(always)]
    pub(crate) fn number<C: Ctx>(_: C, x: f64) -> C::N { C::N::lit(x) }
    #[inline(always)]
    pub(crate) fn lesser<N: Num>(a: N, b: N) -> N { if b.value() < a.value() { b } else { a } }
    #[inline(always)]
    pub(crate) fn greater<N: Num>(a: N, b: N) -> N { if b.value() > a.value() { b } else { a } }
}
"""
# Names that routines give their contexts.
CONTEXT = r"\b((?:self\.)?(?:c|for_strip|strip_seen))(?:\s*\.quiet\(\))?"
CALL = re.compile(CONTEXT + r"\s*\.(" + "|".join(INSTEAD) + r")\(")


def arguments(text, at):
    """The arguments of a call whose opening bracket stands before `at`, and where it ends."""
    found, depth, start = [], 0, at
    in_text = False
    while True:
        sign = text[at]
        if in_text:
            at += sign == "\\"
            in_text = sign != '"'
        elif sign == '"':
            in_text = True
        elif sign in "([{":
            depth += 1
        elif sign in ")]}" and depth == 0:
            last = text[start:at].strip()
            return found + ([last] if last else []), at + 1
        elif sign in ")]}":
            depth -= 1
        elif sign == "," and depth == 0:
            found.append(text[start:at].strip())
            start = at + 1
        at += 1


def stripped(text):
    """A source text without its calls of contexts, and how many there were."""
    text = re.sub(r"^\s*//.*$", "", text, flags=re.MULTILINE)
    text = re.sub(r"\s//\s.*$", "", text, flags=re.MULTILINE)
    count = 0
    # The last call first: arguments of an earlier one are then free of calls.
    while found := list(CALL.finditer(text)):
        call = found[-1]
        given, end = arguments(text, call.end())
        instead = INSTEAD[call.group(2)].replace("closed::", "crate::step::closed::")
        text = text[: call.start()] + instead.format(*given, c=call.group(1)) + text[end:]
        count += 1
    return text, count


def main(root, place):
    root, place = Path(root), Path(place)
    for name in ("core", "tests/instructions"):
        shutil.rmtree(place / name, ignore_errors=True)
        shutil.copytree(root / name, place / name, ignore=shutil.ignore_patterns("target", "*.py"))
    shutil.copy(root / "README.md", place)
    workspace = (root / "Cargo.toml").read_text()
    workspace = re.sub(r"^members = \[.*?^\]$", 'members = ["core"]', workspace, flags=re.MULTILINE | re.DOTALL)
    workspace = re.sub(r"^exclude = .*$", 'exclude = ["tests/instructions"]', workspace, flags=re.MULTILINE)
    workspace = re.sub(r"^(default-members|seamwright-reference) = .*$", "", workspace, flags=re.MULTILINE)
    (place / "Cargo.toml").write_text(re.sub(r"^\[profile\.dev\.[^[]*", "", workspace, flags=re.MULTILINE))
    total = 0
    for path in sorted((place / "core/src").rglob("*.rs")):
        text = path.read_text()
        if path.relative_to(place / "core/src").parts[0] == "working":
            continue
        if path.name == "step.rs":
            text += CLOSED
        else:
            text, count = stripped(text.replace("deny(missing_docs)", "allow(warnings)"))
            total += count
        path.write_text(text)
    # Fewer, and the routines have come to name their contexts otherwise.
    if total < 250:
        sys.exit(f"strip: only {total} calls of contexts were found")
    print(f"strip: {total} calls of contexts taken out")


if __name__ == "__main__":
    main(*sys.argv[1:])

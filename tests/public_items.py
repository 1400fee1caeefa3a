#!/usr/bin/env python3
"""Every public function of the library is called in the link proof (tests/no_panic), under its qualified name.

A method counts as called by `Type::name`, a free function by `module::name` (its top module), a `Display` by
`show::<Type>`. The proof therefore writes every call out in full.
"""

import re
import sys
from pathlib import Path

from rust_source import bare, block_end, report, sources

HERE = Path(__file__).resolve().parent
IMPL = re.compile(r"^[ \t]*(?:unsafe )?impl\b(?:<[^{]*?>)?\s*(?P<head>[^{]*)\{", re.M)
FUNCTION = re.compile(r"\bpub (?:const )?(?:unsafe )?(?:extern )?fn (\$?\w+)")


def type_name(head):
    """`Strengths<N>` is `Strengths`; `fmt::Display for ModeName<'_>` is `ModeName`."""
    head = head.split(" where ")[0].split(" for ")[-1].strip()
    return re.match(r"&?(?:\w+::)*(\$?\w+)", head).group(1)


def quantities(text):
    """The types and units that the macro `quantity!` makes: the rows of its calls."""
    for call in re.finditer(r"^quantity! \{", text, re.M):
        body = text[call.end() : block_end(text, call.start())]
        name = re.search(r"(\w+)\s*\{", body).group(1)
        for row in re.finditer(r"^\s+(\w+) (to_\w+) [^;]+;", body, re.M):
            yield name, row.group(1)
            yield name, row.group(2)


def visible_names(tree):
    """Names that a user of the crate can write: defined in a public module, or re-exported by one."""
    names = set()
    for path, (_, text) in tree.items():
        # Every module on the way down from lib.rs is declared `pub mod`.
        steps = [(path[:n], path[n]) for n in range(len(path))]
        if all(re.search(rf"^\s*pub mod {name}\b", tree[parent][1], re.M) for parent, name in steps):
            names.update(re.findall(r"\bpub (?:const )?(?:struct|enum|trait|type|fn) (\w+)", text))
            for used in re.findall(r"^pub use ([^;]+);", text, re.M):
                names.update(re.findall(r"\w+", used))
    return names


def public_items(root):
    """All names that the proof must hold."""
    items, tree = set(), sources(root)
    visible = visible_names(tree)
    for path, (_, text) in tree.items():
        module = path[0] if path else "seamwright"
        impls = [(m.start(), block_end(text, m.start("head")), m.group("head")) for m in IMPL.finditer(text)]
        for start, end, head in impls:
            if re.search(r"\bDisplay for ", head) and type_name(head) in visible:
                items.add(f"show::<{type_name(head)}>")
        for found in FUNCTION.finditer(text):
            around = [head for start, end, head in impls if start <= found.start() < end]
            owner = type_name(around[-1]) if around else module
            if found.group(1).startswith("$"):
                continue
            if (owner if around else found.group(1)) in visible:
                items.add(f"{owner}::{found.group(1)}")
        items.update(f"{owner}::{name}" for owner, name in quantities(text))
    return items


def called(item, proof):
    """Whether the proof's text holds the item."""
    if shown := re.fullmatch(r"show::<(\w+)>", item):
        return re.search(rf"\bshow::<(?:\w+::)*{shown.group(1)}\b", proof) is not None
    owner, name = item.split("::")
    return re.search(rf"\b{owner}(?:::<[^;()]*>)?::{name}\b", proof) is not None


def main():
    items = public_items(HERE.parent / "core" / "src")
    proof = "\n".join(bare(f.read_text(encoding="utf-8")) for f in sorted((HERE / "no_panic" / "src").rglob("*.rs")))
    missing = sorted(i for i in items if not called(i, proof))
    failures = [f"{i} is public and not called in tests/no_panic/src" for i in missing]
    # The check bites: a few names that must be in the list, and the list less one call.
    for known in ("Form::lap", "Length::to_inch", "check::check_with", "text::write_fixed", "show::<Error>"):
        if known not in items:
            failures.append(f"self-test: {known} was not found among the public items")
    if called("Form::lap", proof.replace("Form::lap", "Form::flap")):
        failures.append("self-test: a call taken out was not missed")
    if len(sys.argv) > 1 and sys.argv[1] == "list":
        print("\n".join(sorted(items)))
    print(f"public items: {len(items) - len(missing)} of {len(items)} are called in the link proof")
    return report("public items", 0 if failures else 3, failures)


if __name__ == "__main__":
    sys.exit(main())

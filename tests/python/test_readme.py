"""The Python of the READMEs is executed, block after block, and prints what they show."""

import contextlib
import io
import re

import pytest
from conftest import ROOT

BLOCK = re.compile(r"^```(\w+)\n(.*?)^```$", re.M | re.S)
READMES = [
    "README.md",
    "bindings/python/README.md",
    "bindings/python/docs/start.md",
    *(
        str(page.relative_to(ROOT))
        for page in sorted((ROOT / "bindings/python/docs/guide").glob("*.md"))
        if page.stem != "index"
    ),
]


def pairs(text):
    """Each block of Python, and what the block of text after it shows."""
    found = [(language, body) for language, body in BLOCK.findall(text)]
    for n, (language, body) in enumerate(found):
        if language == "python":
            after = found[n + 1 : n + 2]
            yield body, after[0][1] if after and after[0][0] == "text" else ""


@pytest.mark.parametrize("name", READMES)
def test_readme(name):
    names = {}
    blocks = list(pairs((ROOT / name).read_text(encoding="utf-8")))
    assert blocks
    for source, shown in blocks:
        out = io.StringIO()
        with contextlib.redirect_stdout(out):
            exec(compile(source, name, "exec"), names)
        assert shown, f"{name}: nothing is shown of\n{source}"
        assert out.getvalue() == shown

"""What the Python tests share."""

import os
import subprocess
import sys
from pathlib import Path

import pytest
import seamwright as sw
from hypothesis import settings

# Plots are made without a screen.
os.environ.setdefault("MPLBACKEND", "Agg")
# Random cases: the same ones in every run, or others and more of them where the gate asks (its full level).
MANY = int(os.environ.get("SEAMWRIGHT_CASES", "0"))
settings.register_profile("here", database=None, deadline=None, derandomize=not MANY, max_examples=MANY or 200)
settings.load_profile("here")

ROOT = Path(__file__).resolve().parents[2]
VECTORS = ROOT / "tests" / "vectors"
sys.path.insert(0, str(ROOT / "tests"))


@pytest.fixture(scope="session")
def dump():
    """What Rust makes of every vector: figures by place, bits as the text that Rust wrote; and what it refused."""
    ready = os.environ.get("SEAMWRIGHT_DUMP")
    if ready:
        said = Path(ready).read_text(encoding="utf-8")
    else:
        command = ["cargo", "run", "-q", "--locked", "-p", "seamwright-tests", "--example", "dump"]
        said = subprocess.run(command, cwd=ROOT, check=True, capture_output=True, text=True).stdout
    figures, refused = {}, {}
    for line in said.splitlines():
        place, name, bits = line.split("\t")
        if place.startswith("refused "):
            refused[place.removeprefix("refused ")] = name
        else:
            figures.setdefault(place, {})[name] = bits
    return figures, refused


@pytest.fixture
def steel():
    return sw.Materials(tension=sw.MPa(80), rivet_shear=sw.MPa(60), bearing=sw.MPa(120))


@pytest.fixture
def joint():
    """Khurmi & Gupta, Example 9.4, with the dimensions that the author takes."""
    return sw.Joint(
        form=sw.Form.lap(2),
        pitch=sw.mm(71),
        plate=sw.mm(13),
        hole=sw.mm(23),
        rivet=sw.mm(22),
        back_pitch=sw.mm(40),
        margin=sw.mm(35),
    )


@pytest.fixture
def found(joint, steel):
    return sw.check(joint=joint, materials=steel, book="metric")


@pytest.fixture
def design(steel):
    return sw.size(form=sw.Form.double_strap(2), plate=sw.mm(12), materials=steel, book="indian")


@pytest.fixture
def sheet(joint, steel):
    return sw.shop_sheet(
        joint=joint,
        materials=steel,
        book="metric",
        run=sw.Run.straight(length=sw.m(3), first_end=sw.mm(40), last_end=sw.mm(40)),
        head="button",
        length_rule="boiler-button",
        stock_step=sw.mm(2),
        rounding="up",
    )


def pytest_terminal_summary(terminalreporter):
    """The outcome in the words of `cargo test`, which the gate adds up."""

    def count(*names):
        return sum(len(terminalreporter.stats.get(name, [])) for name in names)

    failed = count("failed", "error")
    left_out = count("skipped", "xfailed", "xpassed", "deselected")
    word = "FAILED" if failed else "ok"
    said = f"test result: {word}. {count('passed')} passed; {failed} failed; {left_out} ignored (pytest)"
    terminalreporter.write_line(said)

"""Every public item of the core is reached from Python, or stands in the table with the reason why not."""

import re
from fnmatch import fnmatchcase

import parity
import pytest
import seamwright as sw
from conftest import ROOT
from public_items import public_items, quantities
from rust_source import sources
from seamwright import formula

CORE = ROOT / "core" / "src"
TREE = sources(CORE)
UNITS = {f"{owner}::{name}" for _, text in TREE.values() for owner, name in quantities(text)}
NAMES = {"n": "N", "kn": "kN", "mpa": "MPa", "n_mm": "N_mm", "n_m": "N_m", "kn_m": "kN_m"}


def modules():
    """The top module of every type."""
    found = {}
    for path, (_, text) in TREE.items():
        for name in re.findall(r"\bpub (?:struct|enum|trait) (\w+)", text):
            found.setdefault(name, set()).add(path[0] if path else "")
    return found


MODULES = modules()


def not_yet(item):
    owner = item.removeprefix("show::<").removesuffix(">").split("::")[0]
    homes = MODULES.get(owner, {owner})
    return homes <= set(parity.NOT_YET)


def resolve(name):
    """An attribute of the package; annotations and fields of records count."""
    at = sw
    for part in name.split("."):
        if hasattr(at, part):
            at = getattr(at, part)
        else:
            assert part in getattr(at, "__annotations__", {}), f"{name}: no {part} in {at}"
            at = None
    return True


def reached(item):
    """How an item is reached, None where it is not."""
    owner, _, name = item.partition("::")
    if item in UNITS and owner != "Ratio":
        unit = name.removeprefix("to_")
        unit = NAMES.get(unit, unit)
        kind = {"Pressure": "Stress"}.get(owner, owner)
        assert hasattr(getattr(sw, kind), unit)
        return hasattr(sw, unit)
    if owner in ("Length", "Stress") and name == "parse":
        return resolve(f"{owner}.parse")
    if owner == "formula":
        return name in formula.SIGNATURES
    for pattern, where in parity.REACHED.items():
        if fnmatchcase(item, pattern):
            return resolve(where.replace("*", name))
    return None


ITEMS = sorted(public_items(CORE))


def test_the_list_is_that_of_the_link_proof():
    assert len(ITEMS) > 350
    assert {"check::check", "Form::lap", "Length::to_inch"} <= set(ITEMS)


@pytest.mark.parametrize("item", ITEMS)
def test_reached(item):
    if not_yet(item):
        return
    if not reached(item):
        assert any(fnmatchcase(item, pattern) for pattern in parity.WITHOUT), f"{item} is not reached from Python"


def test_the_table_holds_nothing_that_is_gone():
    for table in (parity.REACHED, parity.WITHOUT):
        for pattern in table:
            assert any(fnmatchcase(item, pattern) for item in ITEMS), f"{pattern} matches no public item"


def test_the_test_bites():
    assert reached("check::cheque") is None
    assert not reached("formula::no_such")
    with pytest.raises(AssertionError):
        resolve("Form.no_such")


def test_formulas_have_the_arguments_of_the_core():
    """Names and order, read from the sources."""
    text = "\n".join(text for path, (_, text) in TREE.items() if path[:1] == ("formula",))
    signatures = {
        name: tuple(re.findall(r"(\w+): N\b", arguments))
        for name, arguments in re.findall(r"pub fn (\w+)<N: Num>\(([^)]*)\)", text)
    }
    assert signatures == formula.SIGNATURES
    # Every one is a function of its own arguments only, and can be called.
    for name, symbols in signatures.items():
        assert isinstance(formula.evaluate(name, **dict.fromkeys(symbols, 2.0)), float)


def test_working_formulas_are_listed():
    assert formula.FORMULAS["NetSection"].equation == "Ft = (p - n d) t st"
    assert all(info.equation and info.source for info in formula.FORMULAS.values())

"""The enums of the package are the choices of the core, one for one."""

import copy
import pickle
import re
from enum import Enum

import pytest
import seamwright as sw
from seamwright import _native

NAMES = {"Class": "ModeClass"}
# Enums that stand for states of types with a value in them; test_results.py meets each of these.
OWN = {"HoleBasis", "LimitState", "EntryKind", "MarkKind"}


def upper(name):
    return re.sub(r"(?<!^)(?=[A-Z])", "_", name).upper()


@pytest.mark.parametrize("name,listed", _native.words(), ids=lambda x: x if isinstance(x, str) else "")
def test_enum(name, listed):
    cls = getattr(sw, NAMES.get(name, name))
    assert [member.name for member in cls] == [upper(variant) for variant, _ in listed]
    if cls is not sw.ErrorKind:
        assert [member.value for member in cls] == [word for _, word in listed]
    for member in cls:
        assert pickle.loads(pickle.dumps(member)) is member
        assert copy.deepcopy(member) is member


def test_no_enum_is_left_out():
    here = {name for name in sw.__all__ if isinstance(getattr(sw, name), type) and issubclass(getattr(sw, name), Enum)}
    assert here == {NAMES.get(name, name) for name, _ in _native.words()} | OWN


def test_tables():
    assert set(sw.HEADS) == set(sw.HeadForm)
    assert set(sw.LENGTH_RULES) == set(sw.LengthRule)
    assert all(info.source and info.equation for info in sw.LENGTH_RULES.values())
    assert sw.ENTRIES["pitch.round"].choices == ("down", "nearest", "up")
    kinds = {info.kind for info in sw.ENTRIES.values()}
    assert kinds == set(sw.EntryKind)


def test_everything_public_is_documented_and_named():
    for name in sw.__all__:
        x = getattr(sw, name)
        if callable(x) and not isinstance(x, type):
            assert x.__doc__, name
        if isinstance(x, type):
            assert x.__doc__, name
            for attribute, member in vars(x).items():
                if not attribute.startswith("_") and (callable(member) or isinstance(member, (property, staticmethod))):
                    assert getattr(x, attribute).__doc__ or member.__doc__, f"{name}.{attribute}"

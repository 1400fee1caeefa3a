"""Quantities: exact factors, arrays, pint, refusals."""

import copy
import math
import pickle
import struct

import numpy as np
import pint
import pytest
import seamwright as sw

# From the definitions, typed here a second time: inch 25.4 mm (1959), pound 0.453 592 37 kg, standard gravity
# 9.806 65 m/s2 (3rd CGPM), long ton 2240 lb, bar 0.1 MPa.
POUND = 0.45359237 * 9.80665
ONE = {
    "mm": 1.0, "inch": 25.4, "m": 1000.0, "foot": 304.8, "mm2": 1.0, "inch2": 645.16, "m2": 1e6, "N": 1.0, "kN": 1000.0,
    "lbf": POUND, "kgf": 9.80665, "long_ton": 2240 * POUND, "MPa": 1.0, "psi": POUND / 645.16,
    "ksi": 1000 * POUND / 645.16, "bar": 0.1, "kgf_cm2": 0.0980665, "kgf_mm2": 9.80665,
    "long_ton_in2": 2240 * POUND / 645.16, "kg": 1.0, "lb": 0.45359237, "kg_m3": 1.0,
    "N_mm": 1.0, "N_m": 1000.0, "kN_m": 1e6, "lbf_inch": POUND * 25.4,
}  # fmt: skip
BASE = {
    "Length": "mm", "Area": "mm2", "Force": "N", "Moment": "N_mm", "Stress": "MPa", "Mass": "kg", "Density": "kg_m3"
}  # fmt: skip
# The same units in pint, an independent table.
PINT = {
    "mm": "mm", "inch": "inch", "m": "m", "foot": "foot", "mm2": "mm**2", "inch2": "inch**2", "m2": "m**2", "N": "N",
    "kN": "kN", "lbf": "lbf", "kgf": "kgf", "long_ton": "long_ton * standard_gravity", "MPa": "MPa", "psi": "psi",
    "ksi": "ksi", "bar": "bar", "kgf_cm2": "kgf/cm**2", "kgf_mm2": "kgf/mm**2",
    "long_ton_in2": "long_ton * standard_gravity / inch**2", "kg": "kg", "lb": "lb", "kg_m3": "kg/m**3",
    "N_mm": "N * mm", "N_m": "N * m", "kN_m": "kN * m", "lbf_inch": "lbf * inch",
}  # fmt: skip


def test_every_unit_is_here():
    made = {name for name in sw.__all__ if name in ONE}
    assert made == set(ONE) == set(PINT)


@pytest.mark.parametrize("unit", ONE)
def test_factors_are_the_definitions(unit):
    x = getattr(sw, unit)(3.0)
    base = x.to(BASE[type(x).__name__])
    assert math.isclose(base, 3 * ONE[unit], rel_tol=1e-15)
    assert math.isclose(getattr(x, unit), 3.0, rel_tol=1e-15)
    assert x.unit == unit


@pytest.mark.parametrize("unit", ONE)
def test_pint_agrees(unit):
    registry = pint.UnitRegistry()
    theirs = registry.Quantity(7.25, PINT[unit])
    mine = getattr(sw, unit)(7.25)
    assert math.isclose(getattr(type(mine).of(theirs, unit), unit), 7.25, rel_tol=1e-12)
    assert math.isclose(mine.to(BASE[type(mine).__name__]), 7.25 * ONE[unit], rel_tol=1e-15)


def test_pint_is_taken_for_arguments():
    registry = pint.UnitRegistry()
    Q = registry.Quantity
    joint = sw.Joint(form=sw.Form.lap(1), pitch=Q(2, "inch"), plate=Q(6, "mm"), hole=Q(2, "cm"))
    assert joint.pitch == sw.inch(2)
    assert joint.rows[0].hole.mm == 20.0
    with pytest.raises(sw.SeamwrightError, match="pitch"):
        sw.Joint(form=sw.Form.lap(1), pitch=Q(2, "kg"), plate=sw.mm(6), hole=sw.mm(20))
    # Units are kept on the way through NumPy, which would drop them.
    lengths = sw.mm(Q(np.array([1.0, 2.0]), "inch"))
    assert lengths.mm.tolist() == [25.4, 50.8]


@pytest.mark.parametrize(
    "x",
    [np.arange(6, dtype=np.float32), np.arange(6)[::2], np.asfortranarray(np.eye(3)), np.zeros((0, 4)), [1, 2], (3,)],
)
def test_arrays_of_any_layout(x):
    q = sw.inch(x)
    assert q.mm.dtype == np.float64
    assert np.array_equal(q.mm, np.asarray(x, dtype=np.float64) * 25.4)
    assert q.shape == np.shape(x)
    again = pickle.loads(pickle.dumps(q))
    assert again == q
    assert not again._value.flags.writeable
    with pytest.raises(TypeError):
        hash(q)


def test_an_array_is_a_copy_and_does_not_change():
    source = np.array([1.0, 2.0])
    q = sw.mm(source)
    source[0] = 99
    assert q.mm.tolist() == [1.0, 2.0]
    with pytest.raises(ValueError):
        q._value[0] = 3
    assert (q * 2).mm.tolist() == [2.0, 4.0]
    assert (np.array([1.0, 10.0]) * sw.mm(2)).mm.tolist() == [2.0, 20.0]
    assert [x.mm for x in q] == [1.0, 2.0]
    assert q[1] == sw.mm(2)
    assert len(q) == 2


def test_arithmetic_and_comparison():
    assert sw.inch(1) == sw.mm(25.4)
    assert hash(sw.inch(1)) == hash(sw.mm(25.4))
    assert sw.inch(1) / sw.mm(25.4) == 1.0
    assert (sw.mm(3) + sw.mm(4)) / 2 == sw.mm(3.5)
    assert -sw.mm(3) == sw.mm(0) - sw.mm(3)
    assert 2 * sw.mm(3) == sw.mm(3) * 2 == sw.mm(6)
    assert sw.mm(3) < sw.inch(1) <= sw.mm(25.4)
    assert sw.mm(3) != sw.N(3)
    assert sw.mm(3) != 3
    with pytest.raises(TypeError):
        sw.mm(3) + sw.N(3)
    with pytest.raises(TypeError):
        sw.mm(3) < 4  # noqa: B015
    with pytest.raises(TypeError):
        sw.mm(3) * sw.mm(3)
    with pytest.raises(sw.SeamwrightError):
        sw.mm(3) / 0


def test_a_quantity_does_not_change():
    q = sw.mm(3)
    with pytest.raises(AttributeError):
        q.mm = 4
    with pytest.raises(AttributeError):
        q._value = 4.0
    with pytest.raises(AttributeError):
        del q._unit
    assert copy.copy(q) is q
    assert copy.deepcopy(q) == q
    assert pickle.loads(pickle.dumps(q)) == q


@pytest.mark.parametrize("x", [0.1, 0.3, 1 / 3, 13 / 16, 1e-300, 1e300, 12, -0.0])
@pytest.mark.parametrize("unit", ["mm", "inch", "foot", "psi", "long_ton", "bar"])
def test_repr_gives_the_same_bits_again(x, unit):
    q = getattr(sw, unit)(x)
    again = eval(repr(q), {name: getattr(sw, name) for name in ONE} | {"inf": math.inf})
    assert struct.pack("d", again._value) == struct.pack("d", q._value)


@pytest.mark.parametrize("x", ["12", b"12", None, True, object(), 1j, [1, "a"], np.array(["1"]), np.array([True])])
def test_what_is_no_number_is_refused(x):
    with pytest.raises(sw.SeamwrightError):
        sw.mm(x)


def test_numbers_beyond_the_range_of_floats():
    assert sw.mm(10**400).mm == math.inf
    assert sw.mm(-(10**400)).mm == -math.inf
    assert math.isnan(sw.mm(math.nan).mm)


def test_text_and_fractions():
    assert sw.Length.parse('1 5/8"') == sw.inch(1.625)
    assert sw.Stress.parse("28 tons/in2") == sw.long_ton_in2(28)
    for text in ("12", "", "mm", "12 stone", "1/0 in"):
        with pytest.raises(sw.SeamwrightError) as caught:
            sw.Length.parse(text)
        assert caught.value.kind is sw.ErrorKind.UNREADABLE
    assert sw.inch(1.625).inch_fraction() == "1 5/8"
    with pytest.raises(sw.SeamwrightError):
        sw.inch(0.5).inch_fraction(denominator=10)


def test_a_unit_of_another_quantity_is_refused():
    with pytest.raises(sw.SeamwrightError, match="unit of a Length"):
        sw.mm(3).to("psi")
    with pytest.raises(sw.SeamwrightError, match="is a Stress"):
        sw.mm(sw.MPa(3))
    assert f"{sw.inch(0.5)}" == "0.5 in"
    assert f"{sw.mm(12.3456):.1f}" == "12.3 mm"

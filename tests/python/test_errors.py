"""Errors: what they carry, and that nothing else escapes."""

import math
import pickle

import numpy as np
import pytest
import seamwright as sw
from hypothesis import given
from hypothesis import strategies as st
from seamwright import _native, formula


def test_a_bare_number_is_refused_with_the_fix():
    with pytest.raises(sw.SeamwrightError) as caught:
        sw.Joint(form=sw.Form.lap(1), pitch=50, plate=sw.mm(6), hole=sw.mm(20))
    error = caught.value
    assert str(error) == "pitch = 50 is a bare number; say its unit: pitch=mm(50) or inch(50)"
    assert (error.kind, error.field, error.value) == (sw.ErrorKind.UNREADABLE, "pitch", 50.0)
    with pytest.raises(sw.SeamwrightError, match=r"tension=MPa\(80\)"):
        sw.Materials(tension=80, rivet_shear=sw.MPa(60))
    with pytest.raises(sw.SeamwrightError, match="a Length is needed"):
        sw.Joint(form=sw.Form.lap(1), pitch=sw.MPa(50), plate=sw.mm(6), hole=sw.mm(20))


def test_an_error_carries_everything():
    steel = sw.Materials(tension=sw.MPa(80), rivet_shear=sw.MPa(60))
    joint = sw.Joint(form=sw.Form.lap(2), pitch=sw.mm(71), plate=sw.mm(13), hole=sw.mm(23))
    with pytest.raises(ValueError) as caught:
        sw.check(joint=joint, materials=steel, book="metric")
    error = caught.value
    assert type(error) is sw.SeamwrightError
    assert error.kind is sw.ErrorKind.MISSING
    assert error.field == "bearing"
    assert error.entry == "bearing.checked"
    assert "Khurmi" in sw.book("metric").sources[sw.book("metric").statement(error.entry).source - 1]
    assert error.clause.endswith("READ")
    assert error.value is None
    again = pickle.loads(pickle.dumps(error))
    assert str(again) == str(error)
    assert vars(again) == vars(error)
    with pytest.raises(sw.SeamwrightError) as caught:
        sw.Joint(form=sw.Form.lap(1), pitch=sw.mm(50), plate=sw.mm(0.1), hole=sw.mm(20))
    error = caught.value
    assert (error.kind, error.field, error.value, error.limit, error.unit) == (
        sw.ErrorKind.TOO_SMALL, "plate", 0.1, 0.5, "mm",
    )  # fmt: skip


def test_rows_are_named():
    with pytest.raises(sw.SeamwrightError) as caught:
        sw.Joint(
            form=sw.Form.lap(2),
            pitch=sw.mm(71),
            plate=sw.mm(13),
            hole=[sw.mm(23), sw.mm(23)],
            rivet=[sw.mm(22), sw.mm(24)],
        )
    assert (caught.value.kind, caught.value.index) == (sw.ErrorKind.RIVET_EXCEEDS_HOLE, 2)
    for holes in ([sw.mm(23)] * 2, [sw.mm(23)] * 4, []):
        with pytest.raises(sw.SeamwrightError):
            sw.Joint(form=sw.Form.lap(3), pitch=sw.mm(71), plate=sw.mm(13), hole=holes)
    with pytest.raises(sw.SeamwrightError):
        sw.Joint(form=sw.Form.lap(2), pitch=sw.mm(71), plate=sw.mm(13), hole=sw.mm(23), back_pitch=[sw.mm(40)] * 2)


STRAPS = [
    {"strap": sw.mm(10), "wide_strap": sw.mm(10)},
    {"wide_strap": sw.mm(10)},
    {"narrow_strap": sw.mm(10)},
    {"other_plate": sw.mm(10)},
]


@pytest.mark.parametrize("straps", STRAPS, ids=lambda s: " ".join(s))
def test_straps_that_contradict_each_other(straps, steel):
    form = sw.Form.double_strap(1)
    with pytest.raises(sw.SeamwrightError):
        sw.Joint(form=form, pitch=sw.mm(71), plate=sw.mm(13), hole=sw.mm(23), **straps)
    with pytest.raises(sw.SeamwrightError):
        sw.size(form=form, plate=sw.mm(13), materials=steel, book="metric", **straps)


def test_wrong_words_list_the_right_ones(found, joint, steel):
    for call in (
        lambda: found.working("rtf"),
        lambda: found.working(units="furlong"),
        lambda: found.working(mark=";"),
        lambda: sw.Form(kind="weld", rows=[(1, 1)]),
        lambda: sw.Run.girth(diameter=sw.m(1), measured="middle", other="inside"),
        lambda: sw.book("unheard of"),
        lambda: sw.check(joint=joint, materials=steel, book=None),
    ):
        with pytest.raises(sw.SeamwrightError, match="take one of") as caught:
            call()
        assert caught.value.kind is sw.ErrorKind.WRONG_CHOICE


def test_objects_of_another_class(joint, steel):
    for call in (
        lambda: sw.check(joint=steel, materials=steel, book="metric"),
        lambda: sw.check(joint=joint, materials=joint, book="metric"),
        lambda: sw.size(form="lap", plate=sw.mm(6), materials=steel, book="metric"),
        lambda: sw.drawing(joint=None),
        lambda: sw.Joint(form=2, pitch=sw.mm(50), plate=sw.mm(6), hole=sw.mm(20)),
        lambda: sw.Materials(tension=sw.MPa(1), rivet_shear=sw.MPa(1), other=sw.MPa(3)),
        lambda: sw.drawing(joint=joint, object=3),
        lambda: formula.evaluate("net_section", p=1),
        lambda: formula.evaluate("net_sections"),
        lambda: formula.evaluate("half", fs="x"),
        lambda: sw.size(form=sw.Form.lap(1), plate=sw.mm(6), materials=steel, book="metric", rivet=sw.mm(19)),
        lambda: sw.mm([1, 2])[0]
        and sw.Joint(form=sw.Form.lap(1), pitch=sw.mm([50, 60]), plate=sw.mm(6), hole=sw.mm(20)),
        lambda: sw.Form(kind="lap", rows=3),
        lambda: sw.Form(kind="lap", rows=[(1, 2, 3)]),
        lambda: sw.Form(kind="lap", rows=[(1.5, 1)]),
        lambda: sw.Form.lap(10**400),
        lambda: sw.Form.lap("2"),
        lambda: sw.RuleBook(),
    ):
        with pytest.raises(sw.SeamwrightError):
            call()


def test_no_list_where_one_is_needed(found, joint, steel):
    """One thing where a list is wanted is a list of one, or refused with its fix; never Python's own error."""
    said = {"joint": joint, "materials": steel, "book": "metric"}
    rows = {"form": sw.Form.lap(2), "book": "metric", "materials": steel, "pitch": sw.mm([71]), "plate": sw.mm(13)}
    rated = {
        "form": sw.Form.lap(2), "pitch": sw.inch(3.5), "plate": sw.inch(0.45), "inside_diameter": sw.inch(48),
        "hole": sw.inch(15 / 16), "plates": "steel", "safety_factor": 5, "book": "us-existing",
    }  # fmt: skip
    brief = {"plate": sw.mm(13), "materials": steel}
    for call, field in (
        (lambda: found.sheet(known=5), "known"),
        (lambda: found.sheet(known={"hole": 5}), "known"),
        (lambda: found.sheet(known={"hole.300": ("given", "x")}), "known"),
        (lambda: found.sheet(known={5: ("given", "x")}), "known"),
        (lambda: found.sheet(invented="no"), "invented"),
        (lambda: found.working(decimals=5), "decimals"),
        (lambda: sw.sweep(**rows, hole=sw.mm(23), strengths=5), "strengths"),
        (lambda: sw.sweep(**rows, hole=sw.mm(23), strict="no"), "strict"),
        (lambda: sw.compare(books=5, forms=sw.Form.lap(2), **brief), "books"),
        (lambda: sw.compare(books="metric", forms=5, **brief), "forms"),
        (lambda: sw.compare(books=[], forms=sw.Form.lap(2), **brief), "books"),
        (lambda: sw.search(plates=sw.mm(12), materials=steel, book="metric", forms=5), "forms"),
        (lambda: sw.Boiler.of(lines=5), "lines"),
        (lambda: sw.problem_sheet(problems=5), "problems"),
        (lambda: sw.worked(**said, names=5), "names"),
        (lambda: sw.worked(**said, names=["Pt"], conventions=5), "conventions"),
        (lambda: sw.rate(**rated, from_drawing=5), "from_drawing"),
        (lambda: sw.plot.front(5), "candidates"),
        (lambda: sw.plot.pitch(5), "result"),
        (lambda: sw.plot.mode_map(5), "found"),
        (lambda: sw.plot.sensitivity(5), "found"),
        (lambda: sw.plot.years(5), "rating"),
        (lambda: sw.plot.years(sw.rate(**rated, wastage_rate=sw.inch(0.01)), until="x"), "until"),
        (lambda: sw.plot.books(books=5, form=sw.Form.lap(2), **brief), "books"),
    ):
        with pytest.raises(sw.SeamwrightError) as caught:
            call()
        assert caught.value.field == field, str(caught.value)
    one = sw.Form.lap(1)
    lone = sw.search(plates=sw.mm(12), materials=steel, book="metric", forms=one)
    assert lone == sw.search(plates=sw.mm(12), materials=steel, book="metric", forms=[one])
    assert sw.rate(**rated, from_drawing="pitch") == sw.rate(**rated, from_drawing=["pitch"])


def test_shop_orders_that_cannot_be(joint, steel):
    order = {
        "joint": joint, "materials": steel, "book": "metric", "head": "button", "length_rule": "boiler-button",
        "run": sw.Run.straight(length=sw.m(3), first_end=sw.mm(40), last_end=sw.mm(40)),
    }  # fmt: skip
    bare = sw.Joint(form=sw.Form.lap(2), pitch=sw.mm(71), plate=sw.mm(13), hole=sw.mm(23))
    for change in (
        {"stock_step": sw.mm(2)},
        {"stock_step": sw.mm(0), "rounding": "up"},
        {"stock_step": sw.mm(-2), "rounding": "up"},
        {"density": sw.kg_m3(1)},
        {"density": 7850},
        {"head": "square"},
        {"run": "straight"},
        {"run": sw.Run.straight(length=sw.mm(70), first_end=sw.mm(40), last_end=sw.mm(40))},
        {"run": sw.Run(kind="spiral")},
        {"joint": bare},
    ):
        with pytest.raises(sw.SeamwrightError):
            sw.shop_sheet(**(order | change))


def test_kinds_are_those_of_the_core():
    listed = _native.error_kinds()
    assert [kind.value for kind in sw.ErrorKind] == [number for number, _, _ in listed]
    assert set(sw.ERROR_KINDS) == set(sw.ErrorKind)
    for kind, (text, remedy) in sw.ERROR_KINDS.items():
        with pytest.raises(sw.SeamwrightError, match=remedy.split()[0]) as caught:
            _native.refuse(kind.value, "plate", "")
        assert caught.value.kind is kind
        assert text in str(caught.value)


def test_every_bound_is_kept_from_below_at_and_above():
    for key, bound in sw.BOUNDS.items():
        if bound.least == bound.greatest:
            continue
        for inside in (bound.least, bound.greatest):
            assert _native.check_bound(key, inside) == inside
        for outside in (math.nextafter(bound.least, -math.inf), math.nextafter(bound.greatest, math.inf), math.nan):
            with pytest.raises(sw.SeamwrightError) as caught:
                _native.check_bound(key, outside)
            assert caught.value.field == key


# Whatever is put in, only SeamwrightError comes out: no panic, no conversion error of the native module.
numbers = st.one_of(
    st.floats(allow_nan=True, allow_infinity=True), st.integers(), st.sampled_from([0, -0.0, 5e-324, 1.7e308, 10**400])
)
near = st.one_of(st.floats(0.4, 250), numbers)
lengths = st.one_of(near.map(sw.mm), near.map(sw.inch), st.none(), near, st.just("12 mm"))
stresses = st.one_of(st.floats(0.01, 1000).map(sw.MPa), numbers.map(sw.psi), st.none(), st.text(max_size=3))
counts = st.one_of(st.integers(-1, 9), numbers, st.none(), st.text(max_size=2))
books = st.sampled_from([b.id for b in sw.books()])


def attempt(call):
    try:
        return call()
    except sw.SeamwrightError as error:
        assert str(error)
        return None


@st.composite
def any_form(draw):
    kind = draw(st.sampled_from(list(sw.JointKind)))
    rows = draw(st.lists(st.tuples(counts, counts), max_size=10))
    good = draw(st.sampled_from([sw.Form.lap, sw.Form.single_strap, sw.Form.double_strap, sw.Form.unequal_straps]))
    number = draw(counts)
    return draw(st.sampled_from([lambda: sw.Form(kind=kind, rows=rows), lambda: good(number), lambda: good(2)]))


@given(st.data())
def test_nothing_else_escapes(data):
    draw = data.draw
    form = attempt(draw(any_form()))
    keys = ["other_plate", "strap", "wide_strap", "narrow_strap", "margin", "back_pitch", "rivet"]
    extra = {key: draw(lengths) for key in draw(st.sets(st.sampled_from(keys), max_size=4))}
    steel = attempt(
        lambda: sw.Materials(tension=draw(stresses), rivet_shear=draw(stresses), bearing=draw(stresses))
    ) or sw.Materials(tension=sw.MPa(80), rivet_shear=sw.MPa(60), bearing=sw.MPa(120))
    rules = draw(books)
    joint = attempt(lambda: sw.Joint(form=form, pitch=draw(lengths), plate=draw(lengths), hole=draw(lengths), **extra))
    design = attempt(lambda: sw.size(form=form, plate=draw(lengths), materials=steel, book=rules, **extra))
    for one in (joint, design and design.joint):
        if one is None:
            continue
        a = attempt(lambda one=one: sw.check(joint=one, materials=steel, book=rules))
        attempt(lambda one=one: sw.drawing(joint=one))
        if a is not None:
            assert repr(a)
            assert a._repr_html_()
            assert a.modes
            assert a.working(draw(st.sampled_from(list(sw.Dialect)))).text
        run = attempt(lambda: sw.Run.straight(length=draw(lengths), first_end=draw(lengths), last_end=draw(lengths)))
        run = run or sw.Run.tie()
        order = {"head": "button", "length_rule": draw(st.sampled_from(list(sw.LengthRule)))}
        sheet = attempt(
            lambda one=one, run=run, order=order: sw.shop_sheet(
                joint=one, materials=steel, book=rules, run=run, **order
            )
        )
        if sheet is not None:
            attempt(lambda sheet=sheet: sheet.text(count=10))
            attempt(lambda sheet=sheet: sheet.holes(first=draw(counts), count=draw(counts)))


@given(st.dictionaries(st.text(max_size=5) | st.sampled_from(list(sw.ENTRIES)), st.recursive(
    st.one_of(numbers, st.none(), st.booleans(), st.text(max_size=5), st.just(sw.mm(3))),
    lambda x: st.lists(x, max_size=3) | st.dictionaries(st.sampled_from(
        ["value", "values", "clause", "source", "label", "other"]), x, max_size=4)), max_size=4))  # fmt: skip
def test_nothing_else_escapes_from_rule_books(said):
    attempt(lambda: sw.book("metric").derive(id="x", changes=said))
    attempt(lambda: sw.RuleBook.from_dict(said))
    attempt(lambda: sw.RuleBook.from_dict({"id": "x", "title": "y", "rules": said}))


@given(st.text(st.characters(codec=None), max_size=40))
def test_nothing_else_escapes_from_texts(text):
    attempt(lambda: sw.Length.parse(text))
    attempt(lambda: sw.Stress.parse(text))
    attempt(lambda: sw.RuleBook.from_toml(text))
    attempt(lambda: sw.book("metric").derive(id=text, changes={text: 1}))
    attempt(lambda: sw.book(text))
    joint = sw.Joint(form=sw.Form.lap(1), pitch=sw.mm(56), plate=sw.mm(12), hole=sw.mm(23), margin=sw.mm(35))
    attempt(lambda: sw.drawing(joint=joint, object=text))


def test_numpy_scalars_are_numbers():
    assert sw.mm(np.float32(0.5)) == sw.mm(0.5)
    assert sw.mm(np.int64(3)) == sw.mm(3)
    with pytest.raises(sw.SeamwrightError):
        sw.Joint(form=sw.Form.lap(1), pitch=np.float64(50), plate=sw.mm(6), hole=sw.mm(20))

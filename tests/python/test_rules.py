"""Rule books: listed, inspected, derived, loaded and saved."""

import pickle

import pytest
import seamwright as sw
import tomllib


@pytest.mark.parametrize("rules", sw.books(), ids=lambda b: b.id)
def test_a_book_survives_every_road(rules, tmp_path):
    assert sw.book(rules.id) is rules
    said = rules.to_dict()
    assert sw.RuleBook.from_dict(said) == rules
    assert sw.RuleBook.from_toml(rules.to_toml()) == rules
    assert pickle.loads(pickle.dumps(rules)) == rules
    assert hash(pickle.loads(pickle.dumps(rules))) == hash(rules)
    path = rules.save(tmp_path / "book.toml")
    assert sw.RuleBook.load(path) == rules
    # Read by an independent reader too.
    assert tomllib.loads(path.read_text(encoding="utf-8")) == said
    assert rules.statements
    for s in rules.statements:
        assert rules[s.key] == s.value
        assert s.source <= len(rules.sources)
        assert s.meaning
    silent = set(rules) - {s.key for s in rules.statements}
    assert all(rules[key] == sw.ENTRIES[key].default for key in silent)
    assert len(rules) == len(sw.ENTRIES)


def test_values_typed_from_the_sources():
    """Indian Boiler Regulations 1950, Reg. 177: C = 1.875 in double shear. Board of Trade form: F1 is stated there."""
    assert sw.book("indian")["shear.double"] == 1.875
    assert sw.book("metric")["hole.sqrt"] == 6.0  # Unwin's rule
    assert "Reg. 177" in sw.book("indian").statement("shear.double").clause
    assert sw.book("metric").series[5] == sw.Size(rivet=sw.mm(22), hole=sw.mm(23))


def test_deriving(steel):
    mine = sw.book("metric").derive(
        id="mine",
        title="Shop practice",
        sources=["Shop notes of 1931 (invented)"],
        changes={
            "shear.double": {"value": 1.75, "clause": "tests", "source": 6, "label": "READ"},
            "pitch.step": sw.mm(5),
            "pitch.round": "nearest",
            "bearing.checked": False,
            "back.chain": [0.3, 0, 0.7, 0],
            "hole.sqrt": 6.1,
        },
    )
    assert mine["shear.double"] == 1.75
    assert mine.sources[5] == "Shop notes of 1931 (invented)"
    assert mine.statement("shear.double").label is sw.Label.READ
    assert (mine["pitch.step"], mine["pitch.round"], mine["bearing.checked"]) == (5.0, 1.0, 0.0)
    assert mine.statement("pitch.round").meaning == "nearest"
    assert [mine[f"back.chain.{n}"] for n in (1, 2, 3, 4)] == [0.3, 0.0, 0.7, 0.0]
    assert mine.statement("hole.sqrt").label is sw.Label.OWN
    assert sw.book("metric")["hole.sqrt"] == 6.0
    assert mine != sw.book("metric")
    # It is the changed book that is used: pitches in steps of 5 mm, and its clause stands in the working.
    design = sw.size(form=sw.Form.lap(2), plate=sw.mm(13), materials=steel, book=mine)
    assert design.joint.pitch.mm % 5 == 0
    assert "Shop practice" in design.working().text
    assert design.hole.computed.mm == pytest.approx(6.1 * 13**0.5, rel=1e-15)


def test_a_book_from_nothing(steel, joint):
    mine = sw.RuleBook.from_dict({"id": "bare", "title": "Nothing said", "rules": {"bearing.checked": True}})
    assert len(mine.statements) == 1
    assert mine["efficiency.cap"] == 1.0
    assert sw.check(joint=joint, materials=steel, book=mine).efficiency > 0.6
    on_base = sw.RuleBook.from_dict({"id": "b", "title": "t", "base": "indian", "rules": {}})
    assert dict(on_base) == dict(sw.book("indian"))


BAD = {
    "an unknown key": ({"hole.root": 6}, "UNKNOWN_KEY"),
    "too large": ({"shear.double": 2.5}, "TOO_LARGE"),
    "not finite": ({"shear.double": float("nan")}, "NOT_FINITE"),
    "half a choice": ({"pitch.round": 0.5}, "WRONG_CHOICE"),
    "a word that is none": ({"pitch.round": "sideways"}, "WRONG_CHOICE"),
    "a stress for a length": ({"pitch.step": sw.MPa(5)}, "UNREADABLE"),
    "a falling series": ({"series.hole.3": 1.0}, "BOOK_UNSOUND"),
    "too many lines": ({"back.chain": [0.1] * 5}, "WRONG_CHOICE"),
    "no lines": ({"back.chain": []}, "WRONG_CHOICE"),
    "value and values": ({"back.chain": {"value": 1, "values": [1]}}, "MISSING"),
    "an unknown part": ({"shear.double": {"value": 1.5, "page": 3}}, "UNKNOWN_KEY"),
    "a source beyond the list": ({"shear.double": {"value": 1.5, "source": 99}}, "TOO_LARGE"),
    "an unknown label": ({"shear.double": {"value": 1.5, "label": "SEEN"}}, "WRONG_CHOICE"),
    "no number": ({"shear.double": None}, "UNREADABLE"),
}


@pytest.mark.parametrize("name", BAD)
def test_what_a_book_refuses(name):
    changes, kind = BAD[name]
    with pytest.raises(sw.SeamwrightError) as caught:
        sw.book("metric").derive(id="x", changes=changes)
    assert caught.value.kind.name == kind
    assert next(iter(changes)).partition(".")[0] in str(caught.value)


def test_files_that_cannot_be_read(tmp_path):
    for text in (
        "id = ",
        'id = "x"',
        'id = "x"\ntitle = "y"\nrules = 3',
        'id = "x"\ntitle = "y"\nedition = 1\n[rules]\n',
    ):
        with pytest.raises(sw.SeamwrightError):
            sw.RuleBook.from_toml(text)
    path = tmp_path / "latin.toml"
    path.write_bytes(b'id = "\xe9"')
    with pytest.raises(sw.SeamwrightError, match="UTF-8"):
        sw.RuleBook.load(path)
    with pytest.raises(OSError):
        sw.RuleBook.load(tmp_path / "none.toml")


def test_a_book_does_not_change():
    rules = sw.book("metric")
    with pytest.raises(AttributeError):
        rules._values = {}
    with pytest.raises(TypeError):
        rules["shear.double"] = 1.0
    with pytest.raises(sw.SeamwrightError):
        rules["no such key"]
    with pytest.raises(sw.SeamwrightError):
        rules.statement("no such key")
    assert rules.get("shear.double") == 2.0
    assert "no such key" not in rules


def test_assumed_strengths():
    """California, Title 8 s.796 and the early US rules: steel of unknown make 55 000 psi, iron 45 000 psi."""
    old = sw.book("us-existing")
    assert old.assumed_materials(plate="iron", rivets=sw.Metal.IRON).plate.tension.psi == pytest.approx(
        45000, rel=1e-12
    )
    with pytest.raises(sw.SeamwrightError) as caught:
        sw.book("metric").assumed_shear(rivets="iron")
    assert caught.value.kind is sw.ErrorKind.MISSING

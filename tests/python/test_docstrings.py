"""Every example of a docstring is executed, as if everything public had been imported."""

import doctest
import importlib
import pkgutil

import pytest
import seamwright as sw

NAMES = {name: getattr(sw, name) for name in sw.__all__}


class Finder(doctest.DocTestFinder):
    """Finds whatever is the package's, under whichever of its modules it goes."""

    def _from_module(self, module, object):
        owner = getattr(object, "fget", object)
        if (getattr(owner, "__module__", None) or "").startswith("seamwright"):
            return True
        return super()._from_module(module, object)


def examples():
    finder, seen = Finder(exclude_empty=True), set()
    modules = [sw] + [
        importlib.import_module(found.name)
        for found in pkgutil.walk_packages(sw.__path__, "seamwright.")
        if found.name != "seamwright._native"
    ]
    for module in modules:
        for test in finder.find(module, extraglobs=NAMES):
            if test.examples and test.docstring not in seen:
                seen.add(test.docstring)
                yield test


ALL = list(examples())


@pytest.mark.parametrize("test", ALL, ids=[t.name for t in ALL])
def test_example(test):
    said = []
    runner = doctest.DocTestRunner(optionflags=doctest.NORMALIZE_WHITESPACE)
    runner.run(test, out=said.append, clear_globs=False)
    assert not runner.failures, "".join(said)


def test_examples_are_found():
    names = {test.name for test in ALL}
    assert {"seamwright", "seamwright.check", "seamwright.size", "seamwright.RuleBook", "seamwright.formula"} <= names
    assert sum(len(test.examples) for test in ALL) > 55

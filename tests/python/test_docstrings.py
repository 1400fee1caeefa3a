"""Every example of a docstring is executed, as if everything public had been imported."""

import doctest
import importlib
import pkgutil

import pytest
import seamwright as sw

NAMES = {name: getattr(sw, name) for name in sw.__all__}


def examples():
    finder = doctest.DocTestFinder(exclude_empty=True)
    modules = [sw] + [
        importlib.import_module(f"seamwright.{found.name}")
        for found in pkgutil.iter_modules(sw.__path__)
        if found.name != "_native"
    ]
    for module in modules:
        yield from (test for test in finder.find(module, extraglobs=NAMES) if test.examples)


ALL = list(examples())


@pytest.mark.parametrize("test", ALL, ids=[t.name for t in ALL])
def test_example(test):
    said = []
    runner = doctest.DocTestRunner(optionflags=doctest.NORMALIZE_WHITESPACE)
    runner.run(test, out=said.append, clear_globs=False)
    assert not runner.failures, "".join(said)


def test_examples_are_found():
    names = {test.name for test in ALL}
    assert {"seamwright", "seamwright._check.check", "seamwright._size.size", "seamwright._rules.RuleBook"} <= names
    assert sum(len(test.examples) for test in ALL) > 50

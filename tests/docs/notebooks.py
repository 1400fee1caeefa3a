#!/usr/bin/env python3
"""Executes the notebooks of examples/notebooks and keeps them with their outputs, for the site.

    notebooks.py <folder for the executed notebooks>

Each is executed from top to bottom in a fresh process; an error or a warning in any cell is a failure. Each says at its
top and its end what must not be forgotten, that its scenario is invented, and asserts some of what it claims.
"""

import re
import sys
import tempfile
from pathlib import Path

import jupytext
import nbformat
import seamwright as sw
from nbclient import NotebookClient
from nbclient.exceptions import CellExecutionError

ROOT = Path(__file__).resolve().parents[2]
NOTEBOOKS = ROOT / "examples" / "notebooks"
# Plots as drawings, sharp at any size.
KERNEL = ["--InlineBackend.figure_formats={'svg'}", "--IPKernelApp.log_level=40"]
SECONDS = 300
LEAST_ASSERTIONS = 3


def plain(text):
    """A Markdown cell as one line of words."""
    return re.sub(r"\s+", " ", re.sub(r"^\s*>\s?", "", text, flags=re.M))


def faults(name, book):
    """What a notebook lacks, before it is run."""
    words = [plain(cell.source) for cell in book.cells if cell.cell_type == "markdown"]
    code = [cell.source for cell in book.cells if cell.cell_type == "code"]
    for place, cell in (("top", words[0]), ("end", words[-1])):
        if sw.CAUTION not in cell:
            yield f"{name}: the caution is missing at its {place}"
    if "invented" not in words[0]:
        yield f"{name}: does not say at its top that its scenario is invented"
    if sum(len(re.findall(r"^\s*assert ", source, re.M)) for source in code) < LEAST_ASSERTIONS:
        yield f"{name}: fewer than {LEAST_ASSERTIONS} of its claims are asserted"


def execute(book):
    """Runs a notebook; it has its outputs afterwards.

    Raises:
        CellExecutionError: a cell failed.
    """
    with tempfile.TemporaryDirectory() as place:
        NotebookClient(
            book,
            timeout=SECONDS,
            kernel_name="python3",
            extra_arguments=KERNEL,
            resources={"metadata": {"path": place}},
        ).execute()


def said_aside(name, book):
    """Warnings and other words on the error stream."""
    for cell in book.cells:
        for output in cell.get("outputs", []):
            if output.output_type == "stream" and output.name == "stderr":
                yield f"{name}: a cell says on the error stream: {output.text.strip()[:200]}"


def bites(path):
    """A notebook with a false claim in its middle must fail."""
    book = jupytext.read(path)
    asserting = [cell for cell in book.cells if cell.cell_type == "code" and "assert " in cell.source]
    asserting[0].source += "\nassert math.isclose(design.analysis.efficiency, 51601 / 76800, rel_tol=1e-12)"
    try:
        execute(book)
    except CellExecutionError as error:
        return "AssertionError" in str(error)
    return False


def main():
    kept = Path(sys.argv[1])
    kept.mkdir(parents=True, exist_ok=True)
    paths = sorted(NOTEBOOKS.glob("*.py"))
    if len(paths) < 4:
        sys.exit(f"{len(paths)} notebooks in {NOTEBOOKS}; where are they?")
    failures, cells, claims = [], 0, 0
    for path in paths:
        book = jupytext.read(path)
        found = list(faults(path.name, book))
        if not found:
            try:
                execute(book)
                found = list(said_aside(path.name, book))
            except CellExecutionError as error:
                found = [f"{path.name}: {error}"]
        failures += found
        cells += sum(cell.cell_type == "code" for cell in book.cells)
        claims += sum(len(re.findall(r"^\s*assert ", c.source, re.M)) for c in book.cells if c.cell_type == "code")
        nbformat.write(book, kept / path.with_suffix(".ipynb").name)
        print(f"{path.name}: {'FAILED' if found else 'ok'}", flush=True)
    if not bites(paths[0]):
        failures.append(f"{paths[0].name} passes with a false claim in it: the notebooks do not bite")
    for failure in failures:
        print(failure)
    word = "FAILED" if failures else "ok"
    print(f"{cells} cells and {claims} claims in {len(paths)} notebooks")
    print(
        f"test result: {word}. {len(paths) + 1 - len(failures)} passed; {len(failures)} failed; 0 ignored (notebooks)"
    )
    sys.exit(bool(failures))


if __name__ == "__main__":
    main()

#!/usr/bin/env python3
"""Writes the pages that follow from the package itself: functions, classes, formulas, rule books, notebooks.

    generate.py <folder to make> <folder of executed notebooks>

The folder gets a copy of the pages beside this file, and the generated ones. What a page states stands in one place
only: docstrings, the tables of formulas and of quantities, the rule books.
"""

import inspect
import re
import shutil
import sys
from enum import Enum
from pathlib import Path

import nbformat
import seamwright as sw
from seamwright import formula, plot
from symbols import LOCAL
from symbols import WORDS as PLAIN_WORDS

HERE = Path(__file__).resolve().parent


def cell(text):
    """A text inside a table of Markdown."""
    return re.sub(r"([|*_<>`$\\\[\]])", r"\\\1", str(text)).replace("\n", " ")


def table(head, rows):
    """A table of Markdown; cells are ready."""
    lines = [f"| {' | '.join(head)} |", f"|{'---|' * len(head)}", *(f"| {' | '.join(row)} |" for row in rows)]
    return "\n".join(lines) + "\n"


def contents(names, depth=1):
    """A list of pages for the navigation."""
    return "\n".join(["```{toctree}", f":maxdepth: {depth}", "", *names, "```", ""])


def write(path, *parts):
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_text("\n".join(parts) + "\n", encoding="utf-8")


def directive(kind, name, *options):
    """A directive of autodoc, which docstrings in reStructuredText need."""
    return "\n".join(["```{eval-rst}", f".. {kind}:: {name}", *(f"   :{option}:" for option in options), "```", ""])


# --- Functions and classes -------------------------------------------------------------------------------------------


def functions():
    """Public functions by their full name; the makers of quantities have a table of their own."""
    found = {}
    for module, names in ((sw, sw.__all__), (plot, plot.__all__), (formula, formula.__all__)):
        for name in names:
            x = getattr(module, name)
            if inspect.isfunction(x) and not is_unit(x):
                found[f"{module.__name__}.{name}"] = x
    return found


def is_unit(x):
    """Whether a function makes a quantity of a number, as `mm` does."""
    return inspect.getmodule(x) is not None and getattr(x, "__module__", "") == "seamwright" and units_of(x) is not None


def units_of(x):
    return next((q for q in quantities() if getattr(x, "__name__", "") in dir(q) and x.__name__ in unit_names(q)), None)


def quantities():
    # A pressure is a stress by another name.
    return list(dict.fromkeys(getattr(sw, name) for name in sw.__all__ if is_quantity(getattr(sw, name))))


def is_quantity(x):
    return inspect.isclass(x) and issubclass(x, sw.Quantity) and x is not sw.Quantity


def unit_names(quantity):
    return [n for n in dir(quantity) if isinstance(inspect.getattr_static(quantity, n), property) and hasattr(sw, n)]


def write_functions(place):
    found = dict(sorted(functions().items(), key=lambda pair: (pair[0].count("."), pair[0])))
    for name in found:
        short = name.removeprefix("seamwright.")
        write(place / f"{short}.md", f"# {short}\n", directive("autofunction", name))
    rows = []
    for name, x in found.items():
        short = name.removeprefix("seamwright.")
        rows.append([f"[{short}]({short}.md)", first_line(x)])
    names = [name.removeprefix("seamwright.") for name in found]
    write(
        place / "index.md",
        "# Functions\n",
        "Arguments go by name. What is refused raises {py:class}`~seamwright.SeamwrightError`.\n",
        table(["function", "what it does"], rows),
        hidden(names),
    )


def hidden(names):
    """Navigation that is not shown again under a table."""
    return "\n".join(["```{toctree}", ":hidden:", "", *names, "```", ""])


def first_line(x):
    """The first line of a docstring as a cell of a table, names as code."""
    line = (inspect.getdoc(x) or "").partition("\n")[0]
    parts = re.split(r"(?::\w+:`[^`]+`|``[^`]+``)", line)
    names = re.findall(r":\w+:`([^`]+)`|``([^`]+)``", line)
    return cell(parts[0]) + "".join(f"`{a or b}`{cell(rest)}" for (a, b), rest in zip(names, parts[1:], strict=True))


def write_classes(place):
    records, choices = [], []
    for name in sw.__all__:
        x = getattr(sw, name)
        if not inspect.isclass(x) or issubclass(x, sw.Quantity):
            continue
        if issubclass(x, Enum):
            choices.append((name, x))
            continue
        records.append((name, x))
        write(
            place / f"{name}.md",
            f"# {name}\n",
            directive("autoclass", f"seamwright.{name}", "members", "undoc-members", "inherited-members: Enum, dict"),
        )
    parts = ["# Choices\n", "Each argument that takes a choice takes the enum or its word.\n"]
    for name, x in choices:
        parts += [
            f"({name.lower()}-choice)=",
            f"## {name}\n",
            f"{first_line(x)}\n",
            directive("class", f"seamwright.{name}"),
            table(["member", "word"], [[f"`{m.name}`", f"`{m.value!r}`"] for m in x]),
        ]
    write(place / "choices.md", *parts)
    parts = [
        "# Quantities and their units\n",
        "A dimension is a quantity, made by its unit: `mm(12)`, `psi(11000)`. It holds one number or an array; "
        "`.mm`, `.psi` and so on give the bare number in any unit of its kind.\n",
    ]
    for x in quantities():
        units = unit_names(x)
        parts += [
            f"## {x.__name__}\n",
            directive("autoclass", f"seamwright.{x.__name__}", "members"),
            table(
                ["made by", "in the base unit"],
                [[f"`{u}(1)`", cell(f"{x.of(1.0, u).to(x._base):.10g} {x._base}")] for u in units],
            ),
        ]
    parts += ["## All quantities\n", directive("autoclass", "seamwright.Quantity", "members")]
    write(place / "quantities.md", *parts)
    rows = [[f"[{name}]({name}.md)", first_line(x)] for name, x in records]
    write(
        place / "index.md",
        "# Classes\n",
        "Forms, joints and materials go in; results come out and do not change. "
        "[Quantities](quantities.md) have their units, [choices](choices.md) are enums.\n",
        table(["class", "what it is"], rows),
        hidden(["quantities", "choices", *(name for name, _ in records)]),
    )


# --- Formulas --------------------------------------------------------------------------------------------------------

WORDS = re.compile(r"[A-Za-z]+[A-Za-z0-9]*'?%?|\d+(?:\.\d+)?|\S")


def symbols(info):
    """The symbols of an equation in their order: symbol, as mathematics, what it is, its unit."""
    known, local = sw.SYMBOLS, LOCAL.get(info.name, {})
    found = {}
    for word in WORDS.findall(info.equation):
        if not word[0].isalpha() or (word in PLAIN_WORDS and word not in local):
            continue
        if word in local:
            what, unit = local[word]
        elif word in known:
            what, unit = known[word].what, known[word].unit
        else:
            sys.exit(f"formula {info.name}: what is {word!r}? Say it in docs/symbols.py")
        found.setdefault(word, (word, letter(word, known), what, unit or "a number"))
    if unused := set(local) - set(found):
        sys.exit(f"formula {info.name} has no {', '.join(sorted(unused))}: see docs/symbols.py")
    return list(found.values())


def letter(word, known):
    """A symbol as mathematics: the working's own, or a letter with its index."""
    if word in known:
        return known[word].latex
    first, rest = word[0], word[1:]
    return f"{first}_{{{rest}}}" if rest and len(word) < 3 else f"\\mathrm{{{word}}}" if rest else first


def write_formulas(place):
    parts = []
    names = []
    for info in formula.FORMULAS.values():
        names.append(info.name)
        snake = re.sub(r"(?<!^)(?=[A-Z])", "_", info.name).lower()
        body = [f"# {info.name}\n", f"```text\n{info.equation}\n```\n", f"**Source:** {cell(info.source)}.\n"]
        latex = as_latex(info.equation)
        if latex:
            body.insert(1, f"$$\n{latex}\n$$\n")
        rows = [[f"${latex}$", f"`{word}`", cell(what), cell(unit)] for word, latex, what, unit in symbols(info)]
        if rows:
            body.append(table(["symbol", "in texts", "what it is", "unit"], rows))
        if snake in formula.SIGNATURES:
            arguments = ", ".join(f"{a}=.." for a in formula.SIGNATURES[snake])
            body += [
                "In Python, on bare numbers of one coherent set of units:\n",
                f"```python\nformula.evaluate({snake!r}, {arguments})\n```\n",
            ]
        write(place / f"{info.name}.md", *body)
        parts.append([f"[{info.name}]({info.name}.md)", f"`{info.equation}`", cell(info.source)])
    write(
        place / "index.md",
        "# Formulas\n",
        "Each formula of the library has one body, which all routines call; the "
        "working shows it as it stands here. Lengths are in mm, forces in N, stresses and pressures in MPa.\n",
        table(["formula", "equation", "source"], parts),
        hidden(names),
    )


def as_latex(equation):
    """An equation of symbols set as mathematics; None where it has words."""
    known = {symbol: q.latex for symbol, q in sw.SYMBOLS.items()}
    equation = equation.replace("p min", "pmin").replace("g min", "gmin").replace("p max", "pmax")
    out = []
    for word in WORDS.findall(equation.replace("sqrt(", "\\sqrt(")):
        if word in known:
            out.append(known[word])
        elif word == "pi":
            out.append("\\pi")
        elif word == "sqrt":
            out.append("sqrt")
        elif word == "%":
            out.append("\\%")
        elif re.fullmatch(r"[A-Za-z]\d?'?", word):
            out.append(re.sub(r"^([A-Za-z])(\d)", r"\1_\2", word))
        elif re.fullmatch(r"[A-Za-z].*", word):
            return None
        else:
            out.append(word)
    text = " ".join(out).replace("\\ sqrt", "\\sqrt")
    return braced(text)


def braced(text):
    """The parentheses of a root as braces."""
    while (at := text.find("\\sqrt (")) >= 0:
        depth, end = 0, at + 6
        for end in range(at + 6, len(text)):
            depth += {"(": 1, ")": -1}.get(text[end], 0)
            if depth == 0:
                break
        text = f"{text[:at]}\\sqrt{{{text[at + 7 : end]}}}{text[end + 1 :]}"
    return text


# --- Rule books ------------------------------------------------------------------------------------------------------

LABELS = {
    sw.Label.READ: "seen in a text of the source",
    sw.Label.MEMORY: "from memory: compare it with the source before relying on it",
    sw.Label.PRACTICE: "custom of the trade, without a source",
    sw.Label.OWN: "chosen by this library where the source is silent",
}


def write_books(place):
    rows = []
    for book in sw.books():
        counts = {label: sum(s.label is label for s in book.statements) for label in sw.Label}
        rows.append([f"[{book.id}]({book.id}.md)", cell(book.title), *(str(n) for n in counts.values())])
        sources = "\n".join(f"{n}. {cell(source)}" for n, source in enumerate(book.sources, 1))
        lines = [
            [
                f"`{s.key}`",
                cell(sw.ENTRIES[s.key].what),
                cell(s.meaning),
                s.label.value,
                cell(s.clause),
                str(s.source or ""),
            ]
            for s in book.statements
        ]
        warned = counts[sw.Label.MEMORY]
        note = (
            f"```{{warning}}\n{warned} of its {len(book.statements)} statements are from memory (MEM). Compare them "
            "with the source before relying on them.\n```\n"
            if warned
            else ""
        )
        write(
            place / f"{book.id}.md",
            f"# {book.title}\n",
            f"Short name: `{book.id}`.\n",
            note,
            "## Sources\n",
            sources,
            "\n## Statements\n",
            "Entries that are not listed are silent: the book has no such rule.\n",
            table(["entry", "what it says", "value", "label", "clause", "source"], lines),
        )
    said = "\n".join(f"- **{label.value}**: {what}." for label, what in LABELS.items())
    head = ["book", "title", *(label.value for label in sw.Label)]
    write(
        place / "index.md",
        "# Rule books\n",
        "A rule book is plain data: a value, a clause and a label for each "
        "statement; lists have a statement for each line. Counts of statements by label:\n",
        table(head, rows),
        said,
        "\nThe book is chosen by the place where the joint is and by who inspects it, not by its figures.\n",
        "[Entries](entries.md) lists all that a book can say.\n",
        hidden([*(book.id for book in sw.books()), "entries"]),
    )
    entries = [
        [
            f"`{e.key}`",
            cell(e.what),
            cell(", ".join(e.choices) or f"{e.least:g} to {e.greatest:g} {e.unit}".strip()),
            cell(e.choices[int(e.default)] if e.choices else f"{e.default:g}"),
        ]
        for e in sw.ENTRIES.values()
    ]
    write(
        place / "entries.md",
        "# Entries\n",
        "All that a rule book can say; the default is what a silent book means.\n",
        table(["entry", "what it says", "range", "default"], entries),
    )


# --- Notebooks -------------------------------------------------------------------------------------------------------


def write_notebooks(place, executed):
    names = []
    for path in sorted(executed.glob("*.ipynb")):
        book = nbformat.read(path, as_version=4)
        if not any(cell.get("outputs") for cell in book.cells):
            sys.exit(f"{path} has no outputs; run the step python_notebooks first")
        place.mkdir(parents=True, exist_ok=True)
        shutil.copy(path, place / path.name)
        names.append(path.stem)
    if not names:
        sys.exit(f"no notebooks in {executed}; run the step python_notebooks first")
    write(
        place / "index.md",
        "# Notebooks\n",
        "Whole stories, in invented scenarios, run from top to bottom by the "
        "tests. Their sources are in `examples/notebooks`; open them in Jupyter with jupytext.\n",
        contents(names),
    )


def main():
    made, executed = Path(sys.argv[1]), Path(sys.argv[2])
    shutil.rmtree(made, ignore_errors=True)
    shutil.copytree(
        HERE, made, ignore=shutil.ignore_patterns("generate.py", "symbols.py", "requirements.txt", "__pycache__")
    )
    write_functions(made / "functions")
    write_classes(made / "classes")
    write_formulas(made / "formulas")
    write_books(made / "books")
    write_notebooks(made / "notebooks", executed)


if __name__ == "__main__":
    main()

#!/usr/bin/env python3
"""Checks the built site: every page is whole, carries the caution, and fetches nothing from elsewhere.

site.py <folder of the built site>
"""

import inspect
import re
import sys
from html.parser import HTMLParser
from pathlib import Path

import seamwright as sw
from seamwright import formula, plot

# What a page loads by itself; links that a reader may follow are another matter.
LOADING = {"script": "src", "img": "src", "link": "href", "iframe": "src", "source": "src", "object": "data"}
# Pages that Sphinx makes for itself.
OWN = {"search.html", "genindex.html", "py-modindex.html"}
ELSEWHERE = re.compile(r"^(https?:)?//")
STYLES = re.compile(r"""@import|url\(\s*['"]?(https?:)?//""")
SECTIONS = ("Parameters", "Raises", "Example")


class Page(HTMLParser):
    """What a page loads, and its words."""

    def __init__(self, text):
        super().__init__()
        self.loads, self.words, self.math = [], [], 0
        self.feed(text)

    def handle_starttag(self, tag, attrs):
        found = dict(attrs)
        self.math += tag == "math"
        wanted = LOADING.get(tag)
        if wanted and found.get(wanted):
            # A page may say what it is called elsewhere.
            if tag == "link" and found.get("rel") in ("canonical", "search", "next", "prev", "index"):
                return
            self.loads.append(found[wanted])

    def handle_data(self, data):
        self.words.append(data)

    @property
    def text(self):
        return re.sub(r"\s+", " ", " ".join(self.words))


def missing_pages(site):
    """Pages that the package calls for and the site does not have."""
    wanted = [f"functions/{name}.html" for name in ("size", "check", "rate", "search", "front", "plot.pitch")]
    wanted += [f"functions/plot.{name}.html" for name in plot.__all__ if callable(getattr(plot, name))]
    wanted += [f"formulas/{name}.html" for name in formula.FORMULAS]
    wanted += [f"books/{book.id}.html" for book in sw.books()]
    wanted += ["start.html", "guide/size.html", "other.html", "classes/quantities.html", "classes/Analysis.html"]
    return [f"{page} is missing" for page in wanted if not (site / page).is_file()]


def faults_of_page(site, path):
    text = path.read_text(encoding="utf-8")
    page, name = Page(text), path.relative_to(site)
    for loaded in page.loads:
        if ELSEWHERE.match(loaded):
            yield f"{name} loads {loaded[:80]}"
        elif not loaded.startswith("data:") and not (path.parent / loaded.split("?")[0].split("#")[0]).exists():
            yield f"{name} loads {loaded[:80]}, which is not there"
    # Twice: above everything and below it.
    if name.name not in OWN and page.text.count(sw.CAUTION) < 2:
        yield f"{name} does not carry the caution at its top and its end"
    if re.search(r"\$[^$ ]*\\", page.text):
        yield f"{name} shows mathematics as it was typed"


def faults_of_content(site):
    """Formulas with equation and source, books with every clause, functions with units, errors and example."""
    for info in formula.FORMULAS.values():
        text = Page((site / f"formulas/{info.name}.html").read_text(encoding="utf-8")).text
        for wanted in (info.equation, info.source):
            if re.sub(r"\s+", " ", wanted) not in text:
                yield f"formulas/{info.name}: {wanted!r} is not on its page"
    for book in sw.books():
        text = Page((site / f"books/{book.id}.html").read_text(encoding="utf-8")).text
        for s in book.statements:
            if s.key not in text or re.sub(r"\s+", " ", s.clause) not in text:
                yield f"books/{book.id}: {s.key} does not stand there with its clause"
    for path in sorted((site / "functions").glob("*.html")):
        name = path.stem
        if name == "index":
            continue
        text = Page(path.read_text(encoding="utf-8")).text
        owner, _, short = f"seamwright.{name}".rpartition(".")
        taken = inspect.signature(getattr(sys.modules[owner], short)).parameters
        for section in SECTIONS if any(p.kind is not p.POSITIONAL_ONLY for p in taken.values()) else SECTIONS[-1:]:
            if section not in text:
                yield f"functions/{name}: its docstring has no {section}"


def bites(site):
    """A page with a remote script and without the caution is found."""
    page = site / "bite.html"
    page.write_text('<script src="https://example.org/x.js"></script><img src="gone.png"> $\\tau$', encoding="utf-8")
    found = list(faults_of_page(site, page))
    page.unlink()
    return len(found) == 4


def main():
    site = Path(sys.argv[1])
    pages = sorted(site.rglob("*.html"))
    failures = missing_pages(site)
    for path in pages:
        failures += faults_of_page(site, path)
    for style in site.rglob("*.css"):
        if STYLES.search(style.read_text(encoding="utf-8")):
            failures.append(f"{style.relative_to(site)} fetches something from elsewhere")
    if not failures:
        failures += faults_of_content(site)
    if not bites(site):
        failures.append("a page that loads from elsewhere passes: this check does not bite")
    for failure in failures:
        print(failure)
    word = "FAILED" if failures else "ok"
    print(f"{sum(path.stat().st_size for path in site.rglob('*') if path.is_file()) // 2**20} MB in all")
    print(
        f"test result: {word}. {max(0, len(pages) - len(failures))} passed; {len(failures)} failed; 0 ignored (pages)"
    )
    sys.exit(bool(failures))


if __name__ == "__main__":
    main()

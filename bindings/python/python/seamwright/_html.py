"""What a notebook shows of results: tables, self-contained, readable in light and dark."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from html import escape
from typing import TYPE_CHECKING, Any

from . import _native
from ._enums import GroupMode, Verdict
from ._quantity import SYMBOLS, Quantity

if TYPE_CHECKING:
    from ._check import Analysis, Finding, Mode
    from ._group_result import GroupCheck, GroupDesign
    from ._rules import RuleBook
    from ._search import Search
    from ._size import Design

# Marks are words and weight, so that nothing depends on colour.
_STYLE = (
    "<style>.seamwright{overflow-x:auto}.seamwright table{border-collapse:collapse;margin:.4em 0 1em}"
    ".seamwright th,.seamwright td{padding:.15em .7em;text-align:left!important;border-bottom:1px solid #8886}"
    ".seamwright caption{text-align:left;font-weight:bold;padding:.2em 0}"
    ".seamwright td.n{text-align:right!important;font-variant-numeric:tabular-nums;white-space:nowrap}"
    ".seamwright tr.governs td{font-weight:bold;border-top:2px solid;border-bottom:2px solid}"
    ".seamwright .open{font-weight:bold}"
    ".seamwright p.caution{border-left:4px solid #b36b00;padding-left:.7em}</style>"
)
_MOST_MODES = 12


def _cell(x: str, *, number: bool = False) -> str:
    return f'<td class="n">{escape(x)}</td>' if number else f"<td>{escape(x)}</td>"


def _table(caption: str, head: Sequence[str], rows: Iterable[str]) -> str:
    titles = "".join(f'<th scope="col">{escape(h)}</th>' for h in head)
    top = f"<thead><tr>{titles}</tr></thead>" if any(head) else ""
    return f"<table><caption>{escape(caption)}</caption>{top}<tbody>{''.join(rows)}</tbody></table>"


def page(*parts: str) -> str:
    """A page of parts, with the caution."""
    caution = f'<p class="caution"><b>Caution.</b> {escape(_native.caution())}</p>'
    return f'<div class="seamwright">{_STYLE}{"".join(parts)}{caution}</div>'


def table(caption: str, head: Sequence[str], rows: Iterable[Sequence[str]]) -> str:
    """A table of plain texts."""
    return _table(caption, head, (f"<tr>{''.join(map(_cell, row))}</tr>" for row in rows))


def _percent(x: float) -> str:
    return f"{100 * x:.2f} %"


def _bare(x: Quantity[Any]) -> str:
    """A quantity without its unit, which stands in the head of its column."""
    return f"{x.to(x.unit):.6g}"


def _length(x: object) -> str:
    return "" if x is None else str(x)


def _summary(a: Analysis) -> str:
    rows = [
        ("joint", a.joint.form.name),
        ("rule book", a.book.title),
        ("efficiency over all modes", _percent(a.efficiency)),
        ("efficiency by the book", _percent(a.book_efficiency)),
        ("efficiency credited", _percent(a.credited)),
        ("governing mode", f"{a.governing.name}: {a.governing.strength}"),
        ("next mode", f"{a.runner_up.name}: {a.runner_up_ratio:.3f} times as strong"),
        ("solid strip", str(a.solid)),
        ("percentages (plate, rivet, combined)", " / ".join(
            "none" if x is None else f"{x:.2f}"
            for x in (a.percentages.plate, a.percentages.rivet, a.percentages.combined)
        )),
    ]  # fmt: skip
    return _table("Result", ("", ""), (f"<tr>{_cell(k)}{_cell(v)}</tr>" for k, v in rows))


def _dimensions(a: Analysis) -> str:
    joint = a.joint
    rows = [("pitch of the outer row", joint.pitch), ("plate", joint.plate), ("other plate", joint.other_plate)]
    rows += [("single, wide or first strap", joint.wide_strap), ("narrow or second strap", joint.narrow_strap)]
    same = len({(row.hole, row.rivet) for row in joint.rows}) == 1
    for n, row in enumerate(joint.rows[:1] if same else joint.rows, 1):
        rows.append(("hole, rivet" if same else f"hole, rivet of row {n}", f"{row.hole}, {row.rivet}"))  # type: ignore[arg-type]
    rows += [(f"row {n} to row {n + 1}", gap) for n, gap in enumerate(joint.back_pitches, 1)]
    rows += [("margin", joint.margin), ("width of the lap or wide strap", joint.width)]
    rows += [("width of the narrow strap", joint.narrow_width)]
    return _table(
        "Dimensions", ("", ""), (f"<tr>{_cell(k)}{_cell(str(v), number=True)}</tr>" for k, v in rows if v is not None)
    )


def _mode_row(mode: Mode, a: Analysis) -> str:
    governs = mode == a.governing
    mark = "governs" if governs else "next" if mode == a.runner_up else ""
    counted = "yes" if mode.counted else "no"
    cells = (
        _cell(mark) + _cell(mode.name) + _cell(str(mode.strength), number=True)
        + _cell(_percent(mode.efficiency), number=True) + _cell(counted)
    )  # fmt: skip
    return f'<tr class="governs">{cells}</tr>' if governs else f"<tr>{cells}</tr>"


def _modes(a: Analysis) -> str:
    weakest = sorted(a.modes, key=lambda m: m.strength.N)
    # The governing mode first: of equal ones it is the first in the documented order, not the first by the last bit.
    shown = [a.governing, *(m for m in weakest if m.cut != a.governing.cut)][:_MOST_MODES]
    left = len(weakest) - len(shown)
    caption = "Failure modes, weakest first" + (f" ({left} stronger ones not shown)" if left else "")
    head = ("", "mode", "strength of the strip", "efficiency", "counted by the book")
    return _table(caption, head, (_mode_row(mode, a) for mode in shown))


def _finding_row(f: Finding) -> str:
    required = f"{f.sense.value} {f.figure(f.required)}" if f.required is not None else ""
    what = f"{f.what}, {f.place} {f.row}" if f.row else f.what
    advice = "" if f.verdict is Verdict.MET else f.advice
    word = {Verdict.OPEN: "NOT MET"}.get(f.verdict, f.verdict.value)
    verdict = f'<td class="open">{word}</td>' if f.verdict is Verdict.OPEN else _cell(word)
    return (
        f"<tr>{verdict}{_cell(what)}{_cell(f.figure(f.provided), number=True)}{_cell(required)}"
        f"{_cell(f.clause)}{_cell(advice)}</tr>"
    )


def _findings(a: Analysis | GroupCheck) -> str:
    head = ("", "rule", "provided", "required", "clause", "advice")
    met = sum(f.verdict is Verdict.MET for f in a.findings)
    return _table(f"Findings ({met} of {len(a.findings)} met)", head, map(_finding_row, a.findings))


def _group(g: GroupCheck) -> str:
    stressed = g.shear if g.bearing is None or g.governs is GroupMode.SHEAR else g.bearing
    allowed = [str(x) for x in (g.safe_load, g.safe_couple) if x is not None]
    rows = [
        ("rule book", g.book.title),
        ("centroid", f"{g.centroid[0]}, {g.centroid[1]}"),
        ("moment about it", str(g.moment)),
        ("critical rivet", f"no. {g.critical}, {g.governs.value} {stressed.stress}"),
        ("used of what is permitted", _percent(g.used)),
        ("allowed along the same line", " with ".join(allowed)),
    ]
    if g.centre is not None:
        rows.append(("turns about", f"{g.centre[0]}, {g.centre[1]}"))
    return _table("Result", ("", ""), (f"<tr>{_cell(k)}{_cell(v)}</tr>" for k, v in rows))


def _rivets(g: GroupCheck) -> str:
    """Every rivet; units stand in the head, so that the table keeps to the width of a page."""
    first = g.rivets[0]
    length, force, stress = (SYMBOLS.get(x.unit, x.unit) for x in (first.place[0], first.resultant, first.shear))
    rows = []
    for n, r in enumerate(g.rivets, 1):
        figures = [_bare(x) for x in (*r.place, *r.force, r.resultant)]
        stresses = [_bare(r.shear), "" if r.bearing is None else _bare(r.bearing)]
        cells = (*figures, f"{r.direction:.1f}", *stresses)
        governs = ' class="governs"' if n == g.critical else ""
        rows.append(f"<tr{governs}>{_cell(str(n))}{''.join(_cell(x, number=True) for x in cells)}</tr>")
    head = ["no.", f"x, {length}", f"y, {length}", f"Fx, {force}", f"Fy, {force}", f"F, {force}", "degrees"]
    head += [f"shear, {stress}", f"bearing, {stress}"]
    return _table("What each rivet takes", head, rows)


def group(g: GroupCheck) -> str:
    """A group of rivets: summary, every rivet, findings, caution."""
    return page(_group(g), _rivets(g), _findings(g))


def group_design(d: GroupDesign) -> str:
    """A group of rivets with its size: how it was found, then the group."""
    bears = "not known" if d.by_bearing is None else str(d.by_bearing)
    rows = [("shear needs", str(d.by_shear)), ("bearing needs", bears), ("taken", f"hole {d.hole}, rivet {d.rivet}")]
    how = _table("How it was sized", ("", ""), (f"<tr>{_cell(k)}{_cell(v)}</tr>" for k, v in rows))
    return page(_group(d.check), how, _rivets(d.check), _findings(d.check))


def analysis(a: Analysis) -> str:
    """An analysis: summary, dimensions, modes, findings, caution."""
    return page(_summary(a), _dimensions(a), _modes(a), _findings(a))


def design(d: Design) -> str:
    """A design: how its dimensions were found, then its analysis."""
    pitch, hole = d.pitch, d.hole
    basis = "given" if hole.basis is None else f"{hole.basis.value}: {hole.computed}"
    greatest = _length(pitch.greatest.value) or pitch.greatest.state.value
    rows = [
        ("hole", basis, f"{hole.hole}, rivet {hole.rivet}"),
        ("pitch", f"by shear {pitch.by_shear}, by the weaker {pitch.by_weaker}, by all modes {pitch.by_all_modes}; "
                  f"least {pitch.least}, greatest {greatest}", f"{pitch.taken}, decided by: {pitch.decided.value}"),
        *((f"row {n} to row {n + 1}",
           f"least {gap}" + (f"; for the heads {max(needs, key=lambda x: x.mm)}" if needs else ""), _length(taken))
          for n, ((gap, _), room, taken) in enumerate(zip(d.gaps, d.heads, d.joint.back_pitches, strict=True), 1)
          for needs in [[x for x in (room.at_strap, room.of_rows) if x is not None and x.mm > gap.mm]]),
        ("margin", f"least {d.margin_least}", _length(d.joint.margin)),
    ]  # fmt: skip
    straps = zip(("single, wide or first strap", "narrow or second strap"), d.straps_least,
                 (d.joint.wide_strap, d.joint.narrow_strap), strict=True)  # fmt: skip
    rows += [
        (name, f"least {_length(least.value) or least.state.value}", _length(x))
        for name, least, x in straps
        if x is not None
    ]
    how = _table("How it was sized", ("", "found", "taken"), (f"<tr>{''.join(map(_cell, row))}</tr>" for row in rows))
    a = d.analysis
    return page(_summary(a), how, _dimensions(a), _modes(a), _findings(a))


def search(s: Search) -> str:
    """A search: its best joints, and how all candidates are accounted for."""
    weighed = any(c.mass_per_metre is not None for c in s.best)
    head = ["form", "plate", "hole", "pitch", "efficiency", "rivets/m", *(["kg/m"] if weighed else []), "behind"]
    rows = []
    for c in s.best:
        figures = [str(c.plate), str(c.hole), str(c.pitch), _percent(c.efficiency), f"{c.rivets_per_metre:.1f}"]
        figures += [f"{c.mass_per_metre:.2f}"] if c.mass_per_metre is not None else [""] if weighed else []
        cells = "".join(_cell(x, number=True) for x in figures)
        rows.append(f"<tr>{_cell(c.form.name)}{cells}{_cell(c.behind or 'the best')}</tr>")
    t = s.tally
    said = f"{t.grid} candidates, {t.examined} examined, {t.by_bound} excluded by bound, {t.fitting} fit."
    return page(_table(f"The best by {s.book.title}", head, rows), f"<p>{said}</p>")


def rule_book(b: RuleBook) -> str:
    """A rule book: its statements with clauses."""
    from ._rules import ENTRIES

    rows = (
        f"<tr>{_cell(s.key)}{_cell(ENTRIES[s.key].what)}{_cell(s.meaning)}{_cell(s.label.value)}"
        f"{_cell(s.clause)}{_cell(str(s.source or ''))}</tr>"
        for s in b.statements
    )
    sources = "".join(f"<li>{escape(source)}</li>" for source in b.sources)
    head = ("entry", "what it says", "value", "label", "clause", "source")
    return page(
        f"<p><b>{escape(b.title)}</b> ({escape(b.id)})</p>", _table("Statements", head, rows), f"<ol>{sources}</ol>"
    )

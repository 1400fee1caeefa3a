"""
The native part of seamwright.
"""

from _typeshed import Incomplete, SupportsGetItem, SupportsLenAndGetItem
from typing import SupportsFloat, SupportsIndex, final

__all__ = ["Book", "Form", "Joint", "Materials", "Problem", "Sheet", "all_forms", "allowance", "boiler", "boiler_parts", "bounds", "built_in_books", "caution", "check", "check_bound", "check_group", "compare", "conventions", "dxf", "dxf_seam", "edited", "entry_table", "error_kinds", "formula_signatures", "formula_table", "formula_value", "front", "girth_check", "heads", "joint_pressure", "least_plate", "length_rules", "letters", "modes", "parse_length", "parse_stress", "prescribed_gaps", "problem", "problem_sheet", "rate", "reconcile", "refuse", "seam_pressure", "search", "sheet", "sheet_inputs", "shop_sheet", "size", "size_group", "slopes", "strip_masses", "svg", "svg_group", "svg_seam", "sweep", "sweep_joint", "sweep_levels", "sweep_modes", "symbols", "toml_inline", "toml_read", "toml_value", "units", "version", "vessel", "words", "worked", "working_of_check", "working_of_comparison", "working_of_group", "working_of_rating", "working_of_shop", "working_of_size", "working_of_vessel", "worst_case", "write_inch_fraction"]

@final
class Book:
    """
    A rule book: numbers and citations.
    """
    def __new__(cls, /, id: str, title: str, sources: SupportsGetItem[int, str], statements: SupportsGetItem[int, tuple[str, SupportsGetItem[int, SupportsFloat | SupportsIndex], str, SupportsIndex, str]], base: Book | None = None) -> Book:
        """
        A book from statements, upon another one or upon silence.
        """
    def assumed_materials(self, /, plate: str, rivets: str) -> Materials:
        """
        The ultimate strengths that the book assumes of plate and rivets.
        """
    def assumed_shear(self, /, rivets: str) -> float:
        """
        The ultimate shear strength that the book assumes of rivets, MPa.
        """
    def get(self, /, key: str) -> float:
        """
        The value of an entry.
        """
    def head(self, /) -> tuple[str, str, list[str]]:
        """
        Short name, title and sources.
        """
    def series(self, /) -> list[tuple[float, float]]:
        """
        The sizes of the series: cold rivet and hole, mm.
        """
    def statements(self, /) -> list[tuple[str, float, str, int, str]]:
        """
        The entries that the book states, one by one, in the order of the table.
        """
    def values(self, /) -> list[float]:
        """
        The values of all entries, in the order of the table.
        """

@final
class Form:
    """
    A form of the core.
    """
    def chain(self, /) -> Form:
        """
        The form with its rows behind each other.
        """
    def facts(self, /) -> Incomplete:
        """
        What the form says of itself.
        """
    @staticmethod
    def from_rows(kind: str, arrangement: str, rows: SupportsGetItem[int, tuple[SupportsIndex, SupportsIndex]]) -> Form:
        """
        Any form.
        """
    @staticmethod
    def make(name: str, rows: SupportsIndex) -> Form:
        """
        A form by the name of its maker in the core.
        """
    def omit_alternate(self, /) -> Form:
        """
        The form with every other rivet of the outer row left out.
        """
    def zigzag(self, /) -> Form:
        """
        The form with its rows in the gaps of each other.
        """

@final
class Joint:
    """
    A joint of the core.
    """
    def __new__(cls, /, form: Form, pitch: SupportsFloat | SupportsIndex, plate: SupportsFloat | SupportsIndex, holes: SupportsGetItem[int, SupportsFloat | SupportsIndex], rivets: SupportsGetItem[int, SupportsFloat | SupportsIndex], other_plate: SupportsFloat | SupportsIndex | None, strap: SupportsFloat | SupportsIndex | None, wide_strap: SupportsFloat | SupportsIndex | None, narrow_strap: SupportsFloat | SupportsIndex | None, back_pitches: SupportsGetItem[int, SupportsFloat | SupportsIndex | None], margin: SupportsFloat | SupportsIndex | None) -> Joint: ...
    def facts(self, /) -> Incomplete:
        """
        What the joint says of itself.
        """
    def form(self, /) -> Form:
        """
        The form.
        """

@final
class Materials:
    """
    Stresses of the core.
    """
    def __new__(cls, /, plate: tuple[SupportsFloat | SupportsIndex, SupportsFloat | SupportsIndex | None, SupportsFloat | SupportsIndex | None], other: tuple[SupportsFloat | SupportsIndex, SupportsFloat | SupportsIndex | None, SupportsFloat | SupportsIndex | None], rivet_shear: SupportsFloat | SupportsIndex) -> Materials: ...
    def divided_by(self, /, factor: SupportsFloat | SupportsIndex) -> Materials:
        """
        Divided by a factor of safety.
        """
    def facts(self, /) -> tuple[tuple[float, float | None, float | None], tuple[float, float | None, float | None], float]:
        """
        Plate, other plate or straps, rivets in shear; MPa.
        """

@final
class Problem:
    """
    A problem of the core, with the book it was drawn under.
    """
    def facts(self, /) -> Incomplete:
        """
        What the problem is about.
        """
    def mark(self, /, answers: SupportsGetItem[int, tuple[str, SupportsIndex, str | None, tuple[SupportsFloat | SupportsIndex, SupportsFloat | SupportsIndex] | None, SupportsFloat | SupportsIndex]], wishes: tuple[str, str, str, SupportsIndex, str, tuple[SupportsIndex | None, SupportsIndex | None, SupportsIndex | None, SupportsIndex | None]]) -> tuple[list[tuple[str, int, str, int | None, bool]], int, int, str]:
        """
        The marks of answers, answers credited, answers asked for, and the marks as a text.
        """
    def solution(self, /, wishes: tuple[str, str, str, SupportsIndex, str, tuple[SupportsIndex | None, SupportsIndex | None, SupportsIndex | None, SupportsIndex | None]]) -> str:
        """
        The full working.
        """

@final
class Sheet:
    """
    A shop sheet of the core, with the book it was made by.
    """
    def facts(self, /) -> Incomplete:
        """
        Everything on the sheet but its holes.
        """
    def hole_count(self, /) -> int:
        """
        How many holes there are.
        """
    def holes(self, /, first: SupportsIndex, count: SupportsIndex) -> list[tuple[int, str, int, int, float, float, float | None]]:
        """
        `count` holes from number `first` on.
        """
    def text(self, /, markdown: bool, units: str, mark: str, first: SupportsIndex, count: SupportsIndex) -> str:
        """
        The sheet as plain text or Markdown.
        """

def all_forms() -> list[Form]:
    """
    Every form that is searched where none is named.
    """

def allowance(rule: str, rivet: SupportsFloat | SupportsIndex, grip: SupportsFloat | SupportsIndex) -> float:
    """
    The allowance of a length rule beyond the grip, mm.
    """

def boiler(lines: SupportsGetItem[int, tuple[str, str, SupportsFloat | SupportsIndex]], book: Book | None) -> tuple[int | None, float | None]:
    """
    The line of a boiler's table that governs, from 0, and the test pressure, MPa. Lines are part, name, pressure in MPa.
    """

def boiler_parts() -> list[tuple[str, bool]]:
    """
    The parts of a boiler, and whether this library computes them.
    """

def bounds() -> list[Incomplete]:
    """
    Every bounded input.
    """

def built_in_books() -> list[Book]:
    """
    The built-in books.
    """

def caution() -> str:
    """
    The caution that goes with every result.
    """

def check(joint: Joint, materials: Materials, book: Book) -> Incomplete:
    """
    Checks a joint.
    """

def check_bound(key: str, value: SupportsFloat | SupportsIndex) -> float:
    """
    Passes a value that is inside the range of a field.
    """

def check_group(given: Incomplete, book: Book) -> Incomplete:
    """
    Checks a group of rivets.
    """

def compare(columns: SupportsGetItem[int, tuple[Form, Materials, Incomplete, Book, Incomplete | None]], sort: str) -> Incomplete:
    """
    Sizes all columns and compares them.
    """

def conventions() -> list[tuple[str, bool]]:
    """
    Words of every convention of the catalogue, and whether it is a slip.
    """

def dxf(joint: Joint, block: Incomplete) -> str:
    """
    Plan and section at full size as DXF.
    """

def dxf_seam(sheet: Sheet, block: Incomplete) -> str:
    """
    A whole seam at full size as DXF.
    """

def edited(work: tuple[Joint, Materials] | tuple[Form, Materials, Incomplete], symbol: str, row: SupportsIndex, numbers: SupportsGetItem[int, SupportsIndex], book: Book) -> float | None:
    """
    One quantity of the working with one or two conventions of the catalogue; `None` where they mean nothing for it.
    """

def entry_table() -> list[Incomplete]:
    """
    Everything that a rule book can say.
    """

def error_kinds() -> list[tuple[int, str, str]]:
    """
    The kinds of errors: number, text, remedy.
    """

def formula_signatures() -> list[tuple[str, list[str]]]:
    """
    Name and arguments of every formula body.
    """

def formula_table() -> list[tuple[str, str, str]]:
    """
    Name, equation and source of every formula, as the working shows them.
    """

def formula_value(name: str, arguments: SupportsGetItem[int, SupportsFloat | SupportsIndex]) -> float:
    """
    The value of a formula for arguments in the order of its signature.
    """

def front(materials: Materials, given: Incomplete, book: Book) -> list[Incomplete]:
    """
    The front of efficiency against mass.
    """

def girth_check(seam: Joint, materials: Materials, girth: Joint, place: str, pressure: SupportsFloat | SupportsIndex, shell: Incomplete, book: Book) -> Incomplete:
    """
    Checks a girth seam beside the seam along the shell.
    """

def heads() -> list[tuple[str, str, float, float, bool, str, str]]:
    """
    Key, name, width and height in diameters, whether sunk, label and source of every form of head.
    """

def joint_pressure(joint: Joint, materials: Materials, shell: Incomplete, book: Book) -> Incomplete:
    """
    The pressure that a joint along a shell allows.
    """

def least_plate(inside: SupportsFloat | SupportsIndex, book: Book) -> tuple[float, str, str] | None:
    """
    The least shell plate of a book for a diameter, mm, with its entry and clause.
    """

def length_rules() -> list[tuple[str, str, str, str, str, float | None, bool]]:
    """
    Key, name, equation, source, label and greatest grip in diameters of every length rule.
    """

def letters(joint: Joint, materials: Materials, book: Book) -> list[Incomplete]:
    """
    The modes that the early US code letters.
    """

def modes(joint: Joint, materials: Materials, book: Book) -> list[Incomplete]:
    """
    All failure modes, in the documented order.
    """

def parse_length(text: str) -> float:
    """
    A length in mm from a text such as `13/16 in`.
    """

def parse_stress(text: str) -> float:
    """
    A stress in MPa from a text such as `11 ksi`.
    """

def prescribed_gaps(joint: Joint, materials: Materials, book: Book) -> list[tuple[float, str]]:
    """
    The row distances that the book prescribes, mm, with their entries.
    """

def problem(seed: SupportsIndex, form: Form, setting: str, task: str, effect: str, book: Book) -> Problem:
    """
    Draws a problem. Other Python threads run meanwhile.
    """

def problem_sheet(problems: SupportsGetItem[int, Problem], audience: str, book: Book, wishes: tuple[str, str, str, SupportsIndex, str, tuple[SupportsIndex | None, SupportsIndex | None, SupportsIndex | None, SupportsIndex | None]]) -> str:
    """
    A sheet of problems, all of one book, with the answers or without.
    """

def rate(form: Form, given: Incomplete, book: Book) -> Incomplete:
    """
    Rates a joint as found.
    """

def reconcile(work: tuple[Joint, Materials] | tuple[Form, Materials, Incomplete], stated: SupportsGetItem[int, tuple[str, SupportsIndex, str | None, tuple[SupportsFloat | SupportsIndex, SupportsFloat | SupportsIndex] | None, SupportsFloat | SupportsIndex]], book: Book) -> Incomplete:
    """
    Finds the conventions behind stated figures. Other Python threads run meanwhile.
    """

def refuse(kind: SupportsIndex, key: str, about: str) -> None:
    """
    Raises the error of a kind about a field, with a text before it.
    """

def seam_pressure(form: Form, plate: SupportsFloat | SupportsIndex, tension: SupportsFloat | SupportsIndex, efficiency: SupportsFloat | SupportsIndex, shell: Incomplete, girth: bool, book: Book) -> Incomplete:
    """
    The pressure that a seam of a stated efficiency allows, along the shell or round it.
    """

def search(materials: Materials, given: Incomplete, book: Book) -> Incomplete:
    """
    Searches the grid. Other Python threads run meanwhile, and signals are answered.
    """

def sheet(task: tuple[Form, Materials, Incomplete] | tuple[Joint, Materials] | tuple[Form, Incomplete], said: Incomplete, book: Book, wishes: tuple[str, str, str, SupportsIndex, str, tuple[SupportsIndex | None, SupportsIndex | None, SupportsIndex | None, SupportsIndex | None]]) -> str:
    """
    The sheet as a document.
    """

def sheet_inputs(task: tuple[Form, Materials, Incomplete] | tuple[Joint, Materials] | tuple[Form, Incomplete], book: Book) -> tuple[str, int]:
    """
    The inputs as the hash reads them, and the hash.
    """

def shop_sheet(joint: Joint, materials: Materials, book: Book, asked: Incomplete) -> Sheet:
    """
    The shop sheet of a joint along a run.
    """

def size(form: Form, materials: Materials, given: Incomplete, book: Book) -> Incomplete:
    """
    Sizes a joint.
    """

def size_group(given: Incomplete, book: Book) -> Incomplete:
    """
    Finds the size that a group of rivets needs.
    """

def slopes(joint: Joint, materials: Materials, book: Book) -> Incomplete:
    """
    The exact slopes of a joint.
    """

def strip_masses(joint: Joint, materials: Materials, asked: Incomplete) -> Incomplete:
    """
    The masses of one strip of an endless seam, kg.
    """

def svg(joint: Joint, block: Incomplete) -> str:
    """
    The A4 sheet as SVG.
    """

def svg_group(given: Incomplete, book: Book, block: Incomplete) -> str:
    """
    The A4 sheet of a group of rivets under its load as SVG.
    """

def svg_seam(sheet: Sheet, block: Incomplete) -> str:
    """
    The A4 sheet of a shop sheet as SVG, with the length of its seam, the number of pitches and the ends.
    """

def sweep(form: Form, book: Book, columns: Incomplete, rows: SupportsIndex, first: SupportsIndex, count: SupportsIndex, modes: SupportsGetItem[int, SupportsIndex]) -> Incomplete:
    """
    Works out so many rows of a sweep, from one on. Other Python threads run meanwhile.
    """

def sweep_joint(form: Form, book: Book, columns: Incomplete, rows: SupportsIndex, row: SupportsIndex) -> tuple[Joint, Materials]:
    """
    The joint and the stresses of a row, or the error that its status stands for.
    """

def sweep_levels() -> list[str]:
    """
    The levels of the processor that sweeps know here, the one in use first.
    """

def sweep_modes(form: Form, straps: bool) -> list[tuple[tuple[int, int, int], str]]:
    """
    The modes of a form by number: plate, other plate or wide strap, narrow strap (rows that tear), and the name.
    """

def symbols() -> list[tuple[str, str, str, str]]:
    """
    Symbol, LaTeX, unit and words of every quantity of the working; of equal symbols the first counts.
    """

def toml_inline(pairs: SupportsGetItem[int, tuple[str, str | SupportsIndex | SupportsFloat | SupportsGetItem[int, str]]]) -> str:
    """
    Pairs as an inline table of TOML.
    """

def toml_read(text: str) -> dict:
    """
    A TOML text as a dict.
    """

def toml_value(x: str | SupportsIndex | SupportsFloat | SupportsGetItem[int, str]) -> str:
    """
    A value as TOML, on one line.
    """

def units() -> list[tuple[str, list[tuple[str, float]]]]:
    """
    The units of each quantity, with the factor that makes the core's unit of one of them.
    """

def version() -> str:
    """
    Version of the core.
    """

def vessel(form: Form, materials: Materials, given: Incomplete, book: Book) -> tuple[Incomplete | None, Incomplete | None]:
    """
    Designs a shell and its seams: the vessel, or why there is none.
    """

def words() -> list[tuple[str, list[tuple[str, str]]]]:
    """
    Every choice of the core: type, variants and their words.
    """

def worked(work: tuple[Joint, Materials] | tuple[Form, Materials, Incomplete], names: SupportsGetItem[int, tuple[str, SupportsIndex]], book: Book) -> list[float | None]:
    """
    Quantities of the working as the book stands, in the core's units; `None` where the routine has none.
    """

def working_of_check(joint: Joint, materials: Materials, book: Book, wishes: tuple[str, str, str, SupportsIndex, str, tuple[SupportsIndex | None, SupportsIndex | None, SupportsIndex | None, SupportsIndex | None]]) -> str:
    """
    The working of a check.
    """

def working_of_comparison(columns: SupportsGetItem[int, tuple[Form, Materials, Incomplete, Book, Incomplete | None]], sort: str, wishes: tuple[str, str, str, SupportsIndex, str, tuple[SupportsIndex | None, SupportsIndex | None, SupportsIndex | None, SupportsIndex | None]]) -> str:
    """
    The comparison as a document.
    """

def working_of_group(given: Incomplete, book: Book, wishes: tuple[str, str, str, SupportsIndex, str, tuple[SupportsIndex | None, SupportsIndex | None, SupportsIndex | None, SupportsIndex | None]]) -> str:
    """
    The working of a group: its check, or its size where it has no holes.
    """

def working_of_rating(form: Form, given: Incomplete, book: Book, wishes: tuple[str, str, str, SupportsIndex, str, tuple[SupportsIndex | None, SupportsIndex | None, SupportsIndex | None, SupportsIndex | None]]) -> str:
    """
    The working of a rating.
    """

def working_of_shop(joint: Joint, materials: Materials, book: Book, asked: Incomplete, wishes: tuple[str, str, str, SupportsIndex, str, tuple[SupportsIndex | None, SupportsIndex | None, SupportsIndex | None, SupportsIndex | None]]) -> str:
    """
    The working of a shop sheet.
    """

def working_of_size(form: Form, materials: Materials, given: Incomplete, book: Book, wishes: tuple[str, str, str, SupportsIndex, str, tuple[SupportsIndex | None, SupportsIndex | None, SupportsIndex | None, SupportsIndex | None]]) -> str:
    """
    The working of a sizing.
    """

def working_of_vessel(form: Form, materials: Materials, given: Incomplete, book: Book, wishes: tuple[str, str, str, SupportsIndex, str, tuple[SupportsIndex | None, SupportsIndex | None, SupportsIndex | None, SupportsIndex | None]]) -> str:
    """
    The working of a vessel.
    """

def worst_case(joint: Joint, materials: Materials, book: Book, spans: SupportsLenAndGetItem[SupportsFloat | SupportsIndex], target: str) -> Incomplete:
    """
    The worst case over tolerances (plate, straps, hole, pitch; mm, 0 for none).
    """

def write_inch_fraction(inches: SupportsFloat | SupportsIndex, denominator: SupportsIndex) -> str:
    """
    Inches as a fraction with a power of two below it.
    """

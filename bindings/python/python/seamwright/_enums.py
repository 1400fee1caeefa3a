"""The choices of the library as enums. Their values are the words that arguments also take as plain text."""

from enum import Enum

from . import _native


class JointKind(Enum):
    """The main form of a joint."""

    LAP = "lap"
    SINGLE_STRAP = "single strap"
    DOUBLE_STRAP = "double strap"


class Arrangement(Enum):
    """How rivets of neighbouring rows lie to each other."""

    CHAIN = "chain"
    ZIGZAG = "zigzag"


class ModeClass(Enum):
    """What kind of failure a mode is, as rule books distinguish it."""

    PLATE_OUTER = "plate at its outer row"
    PLATE_INNER = "plate at an inner row"
    RIVETS = "all rivets"
    STRAP = "strap"
    BOTH_PLATES = "both plates"


class Fate(Enum):
    """How the rivets of a row fail in a mode."""

    WHOLE = "whole"
    SHEAR = "shear"
    BEARING = "bearing on the plate"
    OTHER_BEARING = "bearing on the other plate or strap"
    MIXED = "shear and bearing on a strap"
    SHEAR_OUT = "shear-out of the plate"
    OTHER_SHEAR_OUT = "shear-out of the other plate or strap"


class Verdict(Enum):
    """Whether a rule is met."""

    OPEN = "open"
    UNKNOWN = "unknown"
    NOTE = "note"
    MET = "met"


class Required(Enum):
    """The sense of a requirement."""

    AT_LEAST = "at least"
    AT_MOST = "at most"


class Decided(Enum):
    """What decided a pitch."""

    GIVEN = "given"
    BALANCE = "balance"
    FLOOR = "floor"
    CAP = "cap"


class Balance(Enum):
    """Which balance set a pitch: shear of all rivets, the weaker of shear and bearing, or all plate modes."""

    SHEAR = "shear"
    WEAKER = "weaker"
    ALL_MODES = "all modes"


class Rounding(Enum):
    """The direction of a rounding."""

    DOWN = "down"
    NEAREST = "nearest"
    UP = "up"


class Label(Enum):
    """How far a figure can be trusted: seen in the source, from memory, custom of the trade, own choice."""

    READ = "READ"
    MEMORY = "MEM"
    PRACTICE = "PRACTICE"
    OWN = "OWN"


class Basis(Enum):
    """How a figure of a rating is known."""

    MEASURED = "measured"
    GIVEN = "given"
    TABULATED = "tabulated"
    ASSUMED = "assumed"


class Riveting(Enum):
    """How rivets were closed."""

    HAND = "hand"
    MACHINE = "machine"


class HoleMaking(Enum):
    """How holes were made."""

    DRILLED = "drilled"
    REAMED = "reamed"
    PUNCHED = "punched"


class Footing(Enum):
    """What the stresses of a shell are: permissible, or strengths at failure that a factor of safety divides."""

    PERMISSIBLE = "permissible"
    ULTIMATE = "ultimate"


class FactorBasis(Enum):
    """Where a factor of safety comes from."""

    GIVEN = "given"
    BOOK = "book"
    CONSTANT = "constant of the formula"
    IN_STRESSES = "in the stresses"


class GirthPlace(Enum):
    """Where a girth seam lies: between two rings, at an end plate, or in a shell whose heads tubes or stays carry."""

    MIDDLE = "middle"
    END = "end"
    STAYED = "stayed"


class GroupMode(Enum):
    """What limits a group of rivets."""

    SHEAR = "shear"
    BEARING = "bearing"


class BoilerPart(Enum):
    """What a line of a boiler's table is. Courses and girth seams are computed here, the others elsewhere."""

    COURSE = "course"
    GIRTH = "girth seam"
    HEAD = "head"
    TUBES = "tubes"
    STAYS = "stays"
    FURNACE = "furnace"
    OTHER = "other limit"

    @property
    def computed_here(self) -> bool:
        """Whether this library computes the pressure of such a part."""
        return dict(_native.boiler_parts())[self.value]


class SortBy(Enum):
    """By what the columns of a comparison are put in order."""

    GIVEN = "given"
    CREDITED = "credited"
    EFFICIENCY = "efficiency"
    PRESSURE = "pressure"
    PITCH = "pitch"
    HOLE = "hole"
    OPEN = "open rules"


class Target(Enum):
    """What is to be at its worst: the efficiency over all modes, that by the book, or the strength of a length."""

    EFFICIENCY = "efficiency"
    BOOK_EFFICIENCY = "book efficiency"
    STRENGTH = "strength"


class Effect(Enum):
    """The effect that a problem is to teach."""

    TEARING = "tearing"
    SHEARING = "shearing"
    BEARING = "bearing"
    COMBINED = "combined"
    CAP = "cap"
    THIN_PLATE = "thin plate"


class Setting(Enum):
    """Where the joint of a problem stands, for its stresses."""

    BOILER = "boiler"
    STRUCTURE = "structure"


class Task(Enum):
    """What the student has to do: check a joint that is given, or size one."""

    CHECK = "check"
    SIZE = "size"


class Audience(Enum):
    """Whom a sheet of problems is for: the class, or the teacher, with the answers."""

    CLASS = "class"
    TEACHER = "teacher"


class MarkKind(Enum):
    """The verdict on an answer: carried over is right after an earlier slip of the student's own."""

    RIGHT = "right"
    CARRIED_OVER = "carried over"
    SLIP = "slip"
    WRONG = "wrong"
    MISSING = "missing"


class Objective(Enum):
    """What makes a joint the better one: see ``search``."""

    EFFICIENCY = "efficiency"
    MASS = "mass"
    RIVETS = "rivets"
    THICKNESS = "thickness"


class Metal(Enum):
    """What a plate or a rivet of unknown make is made of."""

    STEEL = "steel"
    IRON = "iron"


class Extent(Enum):
    """What the strip of a joint is: one pitch of a seam, or the whole width of a tie."""

    SEAM = "seam"
    TIE = "tie"


class Face(Enum):
    """On which side of the plate something lies in a shell: towards the axis, or away from it."""

    INSIDE = "inside"
    OUTSIDE = "outside"


class Measured(Enum):
    """What the diameter of a girth is: the circle of holes, or the inside of a plate."""

    CIRCLE = "circle"
    INSIDE_PLATE = "inside plate"
    INSIDE_OTHER = "inside other plate"


class Fitted(Enum):
    """Why a seam has the number of pitches that it has."""

    TIE = "tie"
    WHOLE = "whole"
    NEARER = "nearer"
    CAP = "cap"
    FLOOR = "floor"


class Side(Enum):
    """The side of a seam on which a hole lies."""

    LAP = "lap"
    LEFT = "left"
    RIGHT = "right"


class Units(Enum):
    """Units of a sheet: mm, MPa and N, or inch, psi and lbf."""

    METRIC = "metric"
    INCH = "inch"


class Forces(Enum):
    """The unit of forces on a metric sheet."""

    NEWTON = "N"
    KILONEWTON = "kN"


class DecimalMark(Enum):
    """What stands before the decimals."""

    POINT = "."
    COMMA = ","


class Subject(Enum):
    """What a finding is about."""

    PLATE_THICKNESS = "plate thickness"
    HOLE_STANDARD = "hole standard"
    HOLE_LEAST = "hole least"
    HOLE_GREATEST = "hole greatest"
    CLEARANCE = "clearance"
    PITCH_LEAST = "pitch least"
    PITCH_GREATEST = "pitch greatest"
    ROW_DISTANCE = "row distance"
    MARGIN_LEAST = "margin least"
    MARGIN_GREATEST = "margin greatest"
    WIDE_STRAP = "wide strap"
    NARROW_STRAP = "narrow strap"
    GRIP = "grip"
    SCALLOP = "scallop"
    HEAD_AT_STRAP = "head at strap"
    HEADS_IN_ROW = "heads in row"
    HEADS_OF_ROWS = "heads of rows"
    NET_SECTION = "net section"
    ALL_MODES = "all modes"
    CREDIT_CAP = "credit cap"
    ROOM = "room"
    BEARING_UNKNOWN = "bearing unknown"
    STRAPS_UNKNOWN = "straps unknown"
    ROWS_UNKNOWN = "rows unknown"
    MARGIN_UNKNOWN = "margin unknown"
    THIN_PLATE_JUMP = "thin plate jump"
    PRESSURE_MARGIN = "pressure margin"
    SAFETY_FACTOR = "safety factor"
    SHELL_PLATE = "shell plate"
    LAP_DIAMETER = "lap diameter"
    LAP_PRESSURE = "lap pressure"
    SECOND_HAND_LAP = "second hand lap"
    WIDE_LAP = "wide lap"
    SOLID_PLATE = "solid plate"
    GIRTH_EFFICIENCY = "girth efficiency"
    GIRTH_RIVETS = "girth rivets"
    GIRTH_ROWS = "girth rows"
    GIRTH_DIVIDES = "girth divides"
    STAGGERED = "staggered"
    LAP_BENDING = "lap bending"
    GROUP_SHEAR = "group shear"
    GROUP_BEARING = "group bearing"
    GROUP_BEARING_UNKNOWN = "group bearing unknown"
    RIVETS_APART = "rivets apart"


class ShopNote(Enum):
    """Something to know about a shop sheet."""

    RULES_OPEN = "rules open"
    PITCH_OUTSIDE = "pitch outside"
    SIDE_MARGIN = "side margin"
    CAP_UNKNOWN = "cap unknown"
    HEAD_AGAINST_RULE = "head against rule"
    GRIP_BEYOND_RULE = "grip beyond rule"
    STOCK_SHORT = "stock short"
    RIVET_LOOSE = "rivet loose"
    RINGS_DIFFER = "rings differ"


class Dialect(Enum):
    """The dialect of a working."""

    PLAIN = "plain"
    NARROW = "narrow"
    MARKDOWN = "markdown"
    LATEX = "latex"
    HTML = "html"


class HeadForm(Enum):
    """The form of a rivet head."""

    BUTTON = "button"
    SMALL_ROUND = "small-round"
    COUNTERSUNK = "countersunk"


class LengthRule(Enum):
    """By which rule a rivet's length follows from its grip."""

    STEEL_BUTTON = "steel-button"
    BOILER_BUTTON = "boiler-button"
    COUNTERSUNK = "countersunk"
    HAND = "hand"
    SMALL_MACHINE = "small-machine"
    BRIDGE_TABLE = "bridge-table"


class HoleBasis(Enum):
    """The rule by which a hole was computed."""

    ROOT = "square root"
    THIN = "thin plate"
    TABLE = "table"


class LimitState(Enum):
    """What a rule book says of a limit: nothing, a table that does not reach this case, or a figure."""

    NONE = "none"
    UNKNOWN = "unknown"
    AT = "at"


class EntryKind(Enum):
    """What kind of value an entry of a rule book holds."""

    NUMBER = "number"
    SWITCH = "switch"
    CHOICE = "choice"

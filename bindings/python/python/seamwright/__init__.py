"""Riveted joints: every failure mode, the rules of the trade as data, sizes, checks, shop sheets and drawings.

Arguments are given by name, dimensions as quantities (``mm(12)``, ``inch(0.5)``, ``MPa(80)``, ``psi(11000)``); a bare
number for a dimension is refused. Results do not change; a notebook shows them as tables. What cannot be computed
raises :class:`SeamwrightError`; a rule that is not met is a finding of the analysis.

Caution: design aid only. Local codes, the inspecting authority and licensed practice govern; old shells need
inspection before any rating.

Example:
    >>> import seamwright as sw
    >>> steel = sw.Materials(tension=sw.MPa(80), rivet_shear=sw.MPa(60), bearing=sw.MPa(120))
    >>> design = sw.size(form=sw.Form.lap(2), plate=sw.mm(13), materials=steel, book="metric")
    >>> design.joint.pitch, design.joint.rows[0].hole
    (mm(70), mm(23))
"""

from . import formula, plot
from ._boiler import Boiler, BoilerLine
from ._check import Analysis, ClassicEfficiencies, Cut, Finding, Letter, Mode, Percentages, check
from ._drawing import Drawing, drawing
from ._enums import (
    Arrangement,
    Audience,
    Balance,
    Basis,
    BoilerPart,
    Decided,
    DecimalMark,
    Dialect,
    Effect,
    EntryKind,
    Extent,
    Face,
    FactorBasis,
    Fate,
    Fitted,
    Footing,
    GirthPlace,
    HeadForm,
    HoleBasis,
    HoleMaking,
    JointKind,
    Label,
    LengthRule,
    LimitState,
    MarkKind,
    Measured,
    Metal,
    ModeClass,
    Objective,
    Required,
    Riveting,
    Rounding,
    Setting,
    ShopNote,
    Side,
    Subject,
    Task,
    Units,
    Verdict,
)
from ._errors import ErrorKind, SeamwrightError
from ._figures import CONVENTIONS, SYMBOLS, Convention, SymbolInfo
from ._joint import Form, Joint, Row
from ._materials import Materials, PlateStress
from ._native import caution as _caution
from ._native import version as _version
from ._quantities import Area, Density, Force, Length, Mass, Pressure, Quantity, Stress
from ._rating import Rating, rate
from ._reconcile import ComesOut, Explanation, Reconciliation, reconcile, worked
from ._rules import ENTRIES, EntryInfo, RuleBook, Size, Statement, book, books
from ._search import Candidate, Search, Tally, all_forms, front, search
from ._shell import (
    Allowed,
    Assumption,
    Girth,
    Shell,
    girth_check,
    joint_pressure,
    least_plate,
    seam_pressure,
)
from ._shop import HEADS, LENGTH_RULES, HeadInfo, LengthRuleInfo, ShopSheet, allowance, shop_sheet
from ._shop_records import (
    Along,
    HeadSize,
    Hole,
    Masses,
    Neighbour,
    Note,
    Order,
    PitchFit,
    PlateCut,
    RivetLine,
    Run,
    StockLine,
)
from ._size import Brief, Design, HoleChoice, Limit, PitchChoice, size
from ._tables import BOUNDS, ERROR_KINDS, Bound
from ._teach import KeyLine, Mark, Marks, Problem, problem, problem_sheet
from ._units import (
    MPa,
    N,
    bar,
    foot,
    inch,
    inch2,
    kg,
    kg_m3,
    kgf,
    kgf_cm2,
    kgf_mm2,
    kN,
    ksi,
    lb,
    lbf,
    long_ton,
    long_ton_in2,
    m,
    m2,
    mm,
    mm2,
    psi,
)
from ._vessel import PlateStock, Vessel, vessel
from ._working import Working

__all__ = [
    "Candidate",
    "Objective",
    "Search",
    "Tally",
    "front",
    "search",
    "BOUNDS",
    "CAUTION",
    "ENTRIES",
    "ERROR_KINDS",
    "HEADS",
    "LENGTH_RULES",
    "Along",
    "Analysis",
    "Area",
    "Arrangement",
    "Balance",
    "Bound",
    "Brief",
    "ClassicEfficiencies",
    "Cut",
    "Decided",
    "DecimalMark",
    "Density",
    "Design",
    "Dialect",
    "Drawing",
    "EntryInfo",
    "EntryKind",
    "ErrorKind",
    "Extent",
    "Face",
    "Fate",
    "Finding",
    "Fitted",
    "Force",
    "Form",
    "HeadForm",
    "HeadInfo",
    "HeadSize",
    "Hole",
    "HoleBasis",
    "HoleChoice",
    "Joint",
    "JointKind",
    "Label",
    "Length",
    "LengthRule",
    "LengthRuleInfo",
    "Letter",
    "Limit",
    "LimitState",
    "MPa",
    "Mass",
    "Masses",
    "Materials",
    "Measured",
    "Metal",
    "Mode",
    "ModeClass",
    "N",
    "Neighbour",
    "Note",
    "Order",
    "Percentages",
    "PitchChoice",
    "PitchFit",
    "PlateCut",
    "PlateStress",
    "Pressure",
    "Quantity",
    "Required",
    "RivetLine",
    "Rounding",
    "Row",
    "RuleBook",
    "Run",
    "SeamwrightError",
    "ShopNote",
    "ShopSheet",
    "Side",
    "Size",
    "Statement",
    "StockLine",
    "Stress",
    "Subject",
    "Units",
    "Verdict",
    "Working",
    "__version__",
    "allowance",
    "bar",
    "book",
    "books",
    "check",
    "drawing",
    "foot",
    "formula",
    "inch",
    "inch2",
    "kN",
    "kg",
    "kg_m3",
    "kgf",
    "kgf_cm2",
    "kgf_mm2",
    "ksi",
    "lb",
    "lbf",
    "long_ton",
    "long_ton_in2",
    "m",
    "m2",
    "mm",
    "mm2",
    "plot",
    "psi",
    "shop_sheet",
    "size",
    "Assumption",
    "Rating",
    "rate",
    "Basis",
    "HoleMaking",
    "Riveting",
    "all_forms",
    "Allowed",
    "Boiler",
    "BoilerLine",
    "BoilerPart",
    "FactorBasis",
    "Footing",
    "Girth",
    "GirthPlace",
    "PlateStock",
    "Shell",
    "Vessel",
    "girth_check",
    "joint_pressure",
    "least_plate",
    "seam_pressure",
    "vessel",
    "CONVENTIONS",
    "SYMBOLS",
    "Audience",
    "ComesOut",
    "Convention",
    "Effect",
    "Explanation",
    "KeyLine",
    "Mark",
    "MarkKind",
    "Marks",
    "Problem",
    "Reconciliation",
    "Setting",
    "SymbolInfo",
    "Task",
    "problem",
    "problem_sheet",
    "reconcile",
    "worked",
]

CAUTION: str = _caution()
"""The caution that goes with every result."""

__version__: str = _version()

# Public names belong to the package: in help, in messages, and in pickles, which then survive a move of files.
for _name in __all__:
    if getattr(globals()[_name], "__module__", "").startswith("seamwright._"):
        globals()[_name].__module__ = "seamwright"
del _name

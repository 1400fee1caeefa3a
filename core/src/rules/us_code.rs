//! The early US boiler code, 1914 and 1918 editions.

use super::{Clause, Entry as E, Item, RuleBook};
use crate::quantities::{Length, Stress};

const CODE: u8 = 0;
const STATES: u8 = 1;
const CALIFORNIA: u8 = 2;

/// An inch fraction in millimetres.
pub(super) const fn inch(x: f64) -> f64 {
    Length::inch(x).to_mm()
}
/// Pounds per square inch in megapascals.
pub(super) const fn psi(x: f64) -> f64 {
    Stress::psi(x).to_mpa()
}

/// Inch series of rivets, 1/2 to 1 3/8 in.
pub(super) const RIVETS: &[f64] = &[
    inch(0.5),
    inch(0.5625),
    inch(0.625),
    inch(0.6875),
    inch(0.75),
    inch(0.8125),
    inch(0.875),
    inch(0.9375),
    inch(1.0),
    inch(1.0625),
    inch(1.125),
    inch(1.1875),
    inch(1.25),
    inch(1.375),
];
/// Their holes: 1/16 in more.
pub(super) const HOLES: &[f64] = &[
    inch(0.5625),
    inch(0.625),
    inch(0.6875),
    inch(0.75),
    inch(0.8125),
    inch(0.875),
    inch(0.9375),
    inch(1.0),
    inch(1.0625),
    inch(1.125),
    inch(1.1875),
    inch(1.25),
    inch(1.3125),
    inch(1.4375),
];
/// Thickness lines of the table of driven rivet sizes.
pub(super) const DRIVEN_PLATE: &[f64] = &[
    inch(0.25),
    inch(0.281_25),
    inch(0.3125),
    inch(0.343_75),
    inch(0.375),
    inch(0.406_25),
    inch(0.4375),
    inch(0.468_75),
    inch(0.5),
    inch(0.5625),
    inch(0.625),
];
/// Driven rivet, which is the hole, for each line.
pub(super) const DRIVEN: &[f64] = &[
    inch(0.6875),
    inch(0.6875),
    inch(0.75),
    inch(0.75),
    inch(0.8125),
    inch(0.8125),
    inch(0.9375),
    inch(0.9375),
    inch(0.9375),
    inch(1.0625),
    inch(1.0625),
];
/// Thickness lines of the strap table.
const STRAP_PLATE: &[f64] = &[
    inch(0.25),
    inch(0.281_25),
    inch(0.3125),
    inch(0.343_75),
    inch(0.375),
    inch(0.406_25),
    inch(0.4375),
    inch(0.468_75),
    inch(0.5),
    inch(0.531_25),
    inch(0.5625),
    inch(0.625),
    inch(0.75),
    inch(0.875),
    inch(1.0),
    inch(1.125),
    inch(1.25),
];
/// Least strap for each line.
const STRAP: &[f64] = &[
    inch(0.25),
    inch(0.25),
    inch(0.25),
    inch(0.25),
    inch(0.3125),
    inch(0.3125),
    inch(0.375),
    inch(0.375),
    inch(0.4375),
    inch(0.4375),
    inch(0.4375),
    inch(0.5),
    inch(0.5),
    inch(0.625),
    inch(0.6875),
    inch(0.75),
    inch(0.875),
];

pub(super) const SIZES: Clause = Clause::read(STATES, "sizes of rivets by thickness of plate");
pub(super) const SHEAR: Clause = Clause::read(STATES, "shearing strength of rivets");
pub(super) const CRUSH: Clause = Clause::read(STATES, "crushing strength of mild steel");
pub(super) const TENSILE: Clause = Clause::read(STATES, "tensile strength when unknown");
const MODES: Clause = Clause::read(CODE, "Appendix, efficiency of joints, Fig. 29");
const HOLES_795: Clause = Clause::read(CALIFORNIA, "s.795(a)(4): hole at most 1/16 in over the rivet");
const PAR_19: Clause = Clause::memory(CODE, "Par. 19, Table 1");
const PAR_182: Clause = Clause::memory(CODE, "Par. 182 (1918)");
const PAR_183: Clause = Clause::memory(CODE, "Par. 183");
const PAR_18: Clause = Clause::memory(CODE, "Par. 18");
const PAR_180: Clause = Clause::memory(CODE, "Par. 180: factor of safety 5");
const PAR_184: Clause = Clause::memory(CODE, "Par. 184, first half: heads not stayed");
pub(super) const MAWP: Clause = Clause::read(STATES, "maximum allowable working pressure TS t E/(R FS)");
const STEP: Clause = Clause::practice("sixteenths of an inch");

/// The early US boiler code: modes letter by letter, ultimate strengths, strap and rivet tables in inches.
pub const US_CODE: RuleBook<'static> = RuleBook::from_items(
    "us-code",
    "Early US boiler code, 1914 and 1918",
    &[
        "ASME Rules for the Construction of Stationary Boilers, 1914 and 1918 editions (partly read in reproductions)",
        "State rules: N. Dakota 33.1-14-05-02, Tennessee 0800-03-03-.13, Michigan R 408.4212 and others",
        "California Code of Regulations, Title 8, s.795",
    ],
    ITEMS,
)
.lettered();

const ITEMS: &[Item<'static>] = &[
    Item::new(E::HOLE_RULE, &[1.0], SIZES),
    Item::new(E::HOLE_TABLE_PLATE, DRIVEN_PLATE, SIZES),
    Item::new(E::HOLE_TABLE_HOLE, DRIVEN, SIZES),
    Item::new(E::HOLE_ROUND, &[0.0], HOLES_795),
    Item::new(E::HOLE_CLEARANCE_GREATEST, &[inch(0.0625)], HOLES_795),
    Item::new(E::SERIES_RIVET, RIVETS, Clause::practice("rivets by sixteenths of an inch")),
    Item::new(E::SERIES_HOLE, HOLES, HOLES_795),
    Item::new(E::TEAR_DIAMETER, &[0.0], MODES),
    Item::new(E::SHEAR_DIAMETER, &[0.0], MODES),
    Item::new(E::BEARING_DIAMETER, &[0.0], MODES),
    Item::new(E::DISTANCE_DIAMETER, &[0.0], PAR_182),
    Item::new(E::DOUBLE_SHEAR, &[2.0], SHEAR),
    Item::new(E::LONE_PLANE, &[0.0], Clause::practice("half of double shear")),
    Item::new(E::BEARING_CHECKED, &[1.0], MODES),
    Item::new(E::COUNT_INNER, &[2.0], MODES),
    Item::new(E::COUNT_STRAP, &[0.0], MODES),
    Item::new(E::STEEL_TENSION, &[psi(55_000.0)], TENSILE),
    Item::new(E::IRON_TENSION, &[psi(45_000.0)], TENSILE),
    Item::new(E::PLATE_BEARING, &[psi(95_000.0)], CRUSH),
    Item::new(E::STEEL_SHEAR, &[psi(44_000.0)], SHEAR),
    Item::new(E::IRON_SHEAR, &[psi(38_000.0)], SHEAR),
    Item::new(E::PITCH_LEAST, &[2.0], Clause::practice("room for the rivet heads")),
    Item::new(E::PITCH_STEP, &[inch(0.0625)], STEP),
    Item::new(E::PITCH_ROUND, &[0.0], Clause::own("down")),
    Item::new(E::PITCH_BALANCE, &[1.0], MODES),
    Item::new(E::BACK_CHAIN, &[0.0, 0.0, 2.0, 0.0], Clause::memory(CODE, "1914: at least 2 d")),
    Item::new(E::BACK_ZIGZAG, &[0.1, 4.0, 1.75, 0.0], PAR_182),
    Item::new(E::BACK_HALF_CHAIN, &[0.1, 4.0, 1.75, 0.0], PAR_182),
    Item::new(E::BACK_HALF_ZIGZAG, &[0.05, 8.0, 1.75, 0.0], PAR_182),
    Item::new(E::BACK_STEP, &[inch(0.0625)], STEP),
    Item::new(E::MARGIN_LEAST, &[1.5], PAR_183),
    Item::new(E::MARGIN_GREATEST, &[1.75], PAR_183),
    Item::new(E::MARGIN_STEP, &[inch(0.0625)], STEP),
    Item::new(E::STRAP_RULE, &[1.0], PAR_19),
    Item::new(E::STRAP_TABLE_PLATE, STRAP_PLATE, PAR_19),
    Item::new(E::STRAP_TABLE_STRAP, STRAP, PAR_19),
    Item::new(E::STRAP_STEP, &[inch(0.031_25)], Clause::practice("thirty-seconds of an inch")),
    Item::new(E::PLATE_LEAST, &[inch(0.25)], Clause::memory(CODE, "Par. 18")),
    Item::new(E::PRESSURE_FORM, &[3.0], MAWP),
    Item::new(E::SAFETY_LAP, &[5.0], PAR_180),
    Item::new(E::SAFETY_SINGLE, &[5.0], PAR_180),
    Item::new(E::SAFETY_DOUBLE, &[5.0], PAR_180),
    Item::new(E::SHELL_DIAMETER, &[inch(36.0), inch(54.0), inch(72.0)], PAR_18),
    Item::new(E::SHELL_PLATE, &[inch(0.25), inch(0.3125), inch(0.375)], PAR_18),
    Item::new(E::SHELL_ABOVE, &[inch(0.5)], PAR_18),
    Item::new(E::LAP_DIAMETER, &[inch(36.0)], Clause::read(CODE, "Par. 187")),
    Item::new(E::LAP_PRESSURE, &[psi(100.0)], Clause::read(CODE, "Par. 188")),
    Item::new(E::GIRTH_SHARE_END, &[0.5], PAR_184),
    Item::new(E::GIRTH_SHARE_MIDDLE, &[0.5], PAR_184),
    Item::new(E::GIRTH_SHARE_STAYED, &[0.35], Clause::read(CODE, "Par. 184")),
    Item::new(E::ROOM, &[1.5], Clause::own("half as strong again")),
];

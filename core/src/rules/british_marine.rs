//! British marine practice of the Board of Trade family.

use super::us_code::inch;
use super::{Clause, Entry as E, Item, RuleBook};
use crate::quantities::Stress;

const LAYING_OUT: u8 = 0;
const LINEHAM: u8 = 1;
const ROSE: u8 = 2;
const TEXTBOOK: u8 = 3;
const RULES: u8 = 4;

const PERCENT: Clause = Clause::read(LAYING_OUT, "p. 33, British Columbia rule");
const HOLE: Clause = Clause::read(TEXTBOOK, "pp. 102-103: hole 1/16 in over the cold rivet, calculations use the hole");
const UNWIN: Clause = Clause::read(LINEHAM, "p. 407: 1.2 sqrt t in inches");
const DIAGONAL: Clause = Clause::read(ROSE, "vol. II, near Fig. 3257: diagonal pitch (6 p + 4 d)/10");
const CHAIN: Clause = Clause::read(ROSE, "vol. II, near Fig. 3257: chain rows at least 2 d");
const EDGE: Clause = Clause::read(ROSE, "vol. II, near Fig. 3257: edge 1.5 d");
const CAP: Clause = Clause::memory(RULES, "greatest pitch C t + 1 5/8 in");
const HALF: Clause = Clause::memory(RULES, "row distances where outer rivets are left out");
const COVERS: Clause = Clause::read(TEXTBOOK, "pp. 102-103: covers 5/8 t");
const STRAP_MEM: Clause = Clause::memory(RULES, "straps");
const PRESSURE: Clause = Clause::memory(RULES, "working pressure (T - 2) S J/(C D)");
const STEP: Clause = Clause::practice("sixteenths of an inch");

/// 1.2 sqrt t with t in inches, as a constant for millimetres: 1.2 sqrt(25.4) = 6.0478...
const UNWIN_INCH: f64 = 1.2 * 5.039_841_267_341_661;

/// British marine practice: rivet percentage with 23 and 28 tons and the seam's factor of safety over 4.
pub const BRITISH_MARINE: RuleBook<'static> = RuleBook::from_items(
    "british-marine",
    "British marine practice (Board of Trade form)",
    &[
        "Laying Out for Boiler Makers and Sheet Metal Workers (public domain), pp. 32-33",
        "W.J. Lineham, A Text-Book of Mechanical Engineering (public domain)",
        "Joshua Rose, Modern Machine-Shop Practice, 1887-88 (public domain)",
        "The strength of materials; a text-book for engineers and architects (Van Nostrand, 1910s)",
        "Board of Trade rules (not seen)",
    ],
    ITEMS,
);

const ITEMS: &[Item<'static>] = &[
    Item::new(E::HOLE_RULE, &[0.0], UNWIN),
    Item::new(E::HOLE_SQRT, &[UNWIN_INCH], UNWIN),
    Item::new(E::HOLE_ROUND, &[0.0], HOLE),
    Item::new(E::HOLE_CLEARANCE_GREATEST, &[inch(0.0625)], HOLE),
    Item::new(E::SERIES_RIVET, super::us_code::RIVETS, Clause::practice("rivets by sixteenths of an inch")),
    Item::new(E::SERIES_HOLE, super::us_code::HOLES, HOLE),
    Item::new(E::TEAR_DIAMETER, &[0.0], HOLE),
    Item::new(E::SHEAR_DIAMETER, &[0.0], PERCENT),
    Item::new(E::BEARING_DIAMETER, &[0.0], HOLE),
    Item::new(E::DISTANCE_DIAMETER, &[1.0], DIAGONAL),
    Item::new(E::DOUBLE_SHEAR, &[1.875], Clause::read(LAYING_OUT, "p. 33, and the Indian Reg. 177 of the same family")),
    Item::new(E::LONE_PLANE, &[0.0], Clause::practice("half of double shear")),
    Item::new(E::BEARING_CHECKED, &[0.0], PERCENT),
    Item::new(E::COUNT_INNER, &[1.0], Clause::memory(RULES, "combined percentage")),
    Item::new(E::SEAM_SAFETY, &[4.2], Clause::own("the factor of the example on p. 33; each seam has its own")),
    Item::new(E::SEAM_DIVISOR, &[4.0], PERCENT),
    Item::new(E::STEEL_TENSION, &[Stress::long_ton_in2(28.0).to_mpa()], PERCENT),
    Item::new(E::STEEL_SHEAR, &[Stress::long_ton_in2(23.0).to_mpa()], PERCENT),
    Item::new(E::PITCH_LEAST, &[2.0], Clause::practice("room for the rivet heads")),
    Item::new(E::PITCH_MAX_LAP, &[1.31, 2.62, 3.47, 4.14], CAP),
    Item::new(E::PITCH_MAX_DOUBLE, &[1.75, 3.50, 4.63, 5.52, 6.00], CAP),
    Item::new(E::PITCH_MAX_ADD, &[inch(1.625)], CAP),
    Item::new(E::PITCH_STEP, &[inch(0.0625)], STEP),
    Item::new(E::PITCH_ROUND, &[0.0], Clause::own("down, so that no cap is passed")),
    Item::new(E::PITCH_BALANCE, &[0.0], PERCENT),
    Item::new(E::BACK_CHAIN, &[0.0, 0.0, 2.0, 0.0], CHAIN),
    Item::new(E::BACK_ZIGZAG_RULE, &[1.0], DIAGONAL),
    Item::new(E::DIAGONAL_PITCH, &[0.6], DIAGONAL),
    Item::new(E::DIAGONAL_DIAMETER, &[0.4], DIAGONAL),
    Item::new(E::BACK_HALF_CHAIN, &[0.33, 0.0, 0.67, 0.0], HALF),
    Item::new(E::BACK_HALF_ZIGZAG, &[0.2, 0.0, 1.15, 0.0], HALF),
    Item::new(E::BACK_STEP, &[inch(0.0625)], STEP),
    Item::new(E::MARGIN_LEAST, &[1.5], EDGE),
    Item::new(E::MARGIN_STEP, &[inch(0.0625)], STEP),
    Item::new(E::STRAP_SINGLE, &[1.125], STRAP_MEM),
    Item::new(E::STRAP_EQUAL, &[0.625], COVERS),
    Item::new(E::STRAP_WIDE, &[0.75], STRAP_MEM),
    Item::new(E::STRAP_NARROW, &[0.625], STRAP_MEM),
    Item::new(E::STRAP_OMITTED, &[1.0], STRAP_MEM),
    Item::new(E::STRAP_STEP, &[inch(0.0625)], STEP),
    Item::new(E::PRESSURE_FORM, &[2.0], PRESSURE),
    Item::new(E::PRESSURE_ALLOWANCE, &[inch(0.0625)], PRESSURE),
    Item::new(E::PRESSURE_ALLOWANCE_GIVEN, &[0.0], Clause::own("the formula's 2/32 in stays")),
    Item::new(E::PRESSURE_LAP, &[3.0, 2.9, 2.83], PRESSURE),
    Item::new(E::PRESSURE_DOUBLE, &[2.75], PRESSURE),
    Item::new(E::ROOM, &[1.5], Clause::own("half as strong again")),
];

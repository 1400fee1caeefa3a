//! The German boiler law of 1908, with the row distances of 1928.

use super::{Clause, Entry as E, Item, RuleBook};
use crate::quantities::Stress;

const LAND: u8 = 0;
const MARINE: u8 = 1;
const RULES_1928: u8 = 2;
const BACH: u8 = 3;
const DIN_124: u8 = 4;

const III_6: Clause = Clause::read(LAND, "III.6: plate tension in no rivet row above K/x");
const K: Clause = Clause::read(LAND, "K of wrought iron, and of mild steel of 34 to 41 kg/mm2");
const SHEAR: Clause = Clause::read(LAND, "I.5, II.3: shear strength 0.8 of the tensile strength");
const NO_CRUSH: Clause = Clause::read(LAND, "II, III: no crushing check");
const III_11: Clause = Clause::read(MARINE, "III.11");
const III_12: Clause = Clause::read(MARINE, "III.12: s <= d <= 2 s");
const III_13: Clause = Clause::read(MARINE, "III.13");
const III_1: Clause = Clause::read(LAND, "III.1");
const III_9: Clause = Clause::read(LAND, "III.9");
const X: Clause = Clause::read(LAND, "III.1, factors x");
const GIRTH: Clause = Clause::read(MARINE, "III.9");
const ROWS: Clause = Clause::read(RULES_1928, "row distances 0.2 e + 1.15 d and 0.165 e + 0.67 d");
const HOLE: Clause = Clause::memory(BACH, "d = sqrt(50 s) - 4 (lap); doubtful until seen");
const EDGE: Clause = Clause::memory(BACH, "edge 1.5 d");

/// The German boiler law of 17 December 1908, land and marine; hole rule and margin after Bach, from memory.
pub const GERMAN_1908: RuleBook<'static> = RuleBook::from_items(
    "german-1908",
    "German boiler law of 17 December 1908",
    &[
        "Reichs-Gesetzblatt 1909, pp. 29-31, Bauvorschriften fuer Landdampfkessel",
        "Reichs-Gesetzblatt 1909, p. 78, Bauvorschriften fuer Schiffsdampfkessel",
        "Deutscher Reichsanzeiger No. 35, 10 February 1928",
        "C. Bach, machine elements (not seen)",
        "DIN 124 and German steel construction practice",
    ],
    ITEMS,
);

const ITEMS: &[Item<'static>] = &[
    Item::new(E::HOLE_RULE, &[0.0], HOLE),
    Item::new(E::HOLE_SQRT, &[7.071_067_811_865_475], HOLE),
    Item::new(E::HOLE_ADD, &[-4.0], HOLE),
    Item::new(E::HOLE_ROUND, &[1.0], Clause::practice("whole millimetres")),
    Item::new(E::HOLE_STEP, &[1.0], Clause::practice("whole millimetres")),
    Item::new(E::HOLE_PER_PLATE_LEAST, &[1.0], III_12),
    Item::new(E::HOLE_PER_PLATE_GREATEST, &[2.0], III_12),
    Item::new(E::HOLE_CLEARANCE_GREATEST, &[1.0], Clause::read(DIN_124, "hole 1 mm over the rivet from 12 mm")),
    Item::new(E::TEAR_DIAMETER, &[0.0], III_6),
    Item::new(E::SHEAR_DIAMETER, &[0.0], SHEAR),
    Item::new(E::BEARING_DIAMETER, &[0.0], Clause::practice("hole diameter")),
    Item::new(E::DISTANCE_DIAMETER, &[0.0], ROWS),
    Item::new(E::DOUBLE_SHEAR, &[2.0], Clause::practice("both sections counted")),
    Item::new(E::LONE_PLANE, &[0.0], Clause::practice("half of double shear")),
    Item::new(E::BEARING_CHECKED, &[0.0], NO_CRUSH),
    Item::new(E::COUNT_INNER, &[2.0], III_6),
    Item::new(E::STEEL_TENSION, &[Stress::kgf_mm2(36.0).to_mpa()], K),
    Item::new(E::IRON_TENSION, &[Stress::kgf_mm2(33.0).to_mpa()], K),
    Item::new(E::STEEL_SHEAR, &[Stress::kgf_mm2(0.8 * 36.0).to_mpa()], SHEAR),
    Item::new(E::IRON_SHEAR, &[Stress::kgf_mm2(0.8 * 33.0).to_mpa()], SHEAR),
    Item::new(E::PITCH_LEAST, &[2.0], Clause::practice("room for the rivet heads")),
    Item::new(E::PITCH_STEP, &[1.0], Clause::practice("whole millimetres")),
    Item::new(E::PITCH_ROUND, &[0.0], Clause::own("down")),
    Item::new(E::PITCH_BALANCE, &[0.0], NO_CRUSH),
    Item::new(E::PITCH_SCALLOP, &[8.0], III_13),
    Item::new(E::BACK_CHAIN, &[0.0, 0.0, 2.0, 0.0], Clause::practice("chain rows 2 d")),
    Item::new(E::BACK_ZIGZAG, &[0.33, 0.0, 0.67, 0.0], ROWS),
    Item::new(E::BACK_HALF_CHAIN, &[0.33, 0.0, 0.67, 0.0], Clause::practice("as for equal zig-zag rows")),
    Item::new(E::BACK_HALF_ZIGZAG, &[0.2, 0.0, 1.15, 0.0], ROWS),
    Item::new(E::BACK_STEP, &[1.0], Clause::practice("whole millimetres")),
    Item::new(E::MARGIN_LEAST, &[1.5], EDGE),
    Item::new(E::MARGIN_STEP, &[1.0], Clause::practice("whole millimetres")),
    Item::new(E::STRAP_SINGLE, &[1.0], III_11),
    Item::new(E::STRAP_SINGLE_ADD, &[3.0], III_11),
    Item::new(E::STRAP_EQUAL, &[0.75], III_11),
    Item::new(E::STRAP_WIDE, &[0.75], III_11),
    Item::new(E::STRAP_NARROW, &[0.75], III_11),
    Item::new(E::STRAP_STEP, &[1.0], Clause::practice("whole millimetres")),
    Item::new(E::PLATE_LEAST, &[7.0], Clause::read(LAND, "III.3: 7 mm, small boilers excepted")),
    Item::new(E::PRESSURE_FORM, &[1.0], III_1),
    Item::new(E::PRESSURE_ALLOWANCE, &[1.0], III_1),
    Item::new(E::PRESSURE_ALLOWANCE_GIVEN, &[0.0], Clause::own("the formula's 1 mm stays")),
    Item::new(E::SAFETY_LAP, &[4.5], X),
    Item::new(E::SAFETY_SINGLE, &[4.5], X),
    Item::new(E::SAFETY_DOUBLE, &[4.0], X),
    Item::new(E::SAFETY_DOUBLE_UNEQUAL, &[4.1], X),
    Item::new(E::SAFETY_HAND_ADD, &[0.25], X),
    Item::new(E::SAFETY_PUNCHED_ADD, &[0.25], III_9),
    Item::new(E::SAFETY_REAMED_ADD, &[0.1], III_9),
    Item::new(E::GIRTH_DOUBLE_END, &[12.5], GIRTH),
    Item::new(E::GIRTH_DOUBLE_MIDDLE, &[12.5], GIRTH),
    Item::new(E::GIRTH_TREBLE_MIDDLE, &[25.0], GIRTH),
    Item::new(E::ROOM, &[1.5], Clause::own("half as strong again")),
];

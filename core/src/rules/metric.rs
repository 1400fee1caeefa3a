//! General metric machine-design practice, as the textbooks teach it.

use super::{Clause, Entry as E, Item, RuleBook};

const KHURMI: u8 = 0;
const BHANDARI: u8 = 1;
const IS_1928: u8 = 2;
const JINDAL: u8 = 3;
const IBR: u8 = 4;

const UNWIN: Clause = Clause::read(KHURMI, "ch. 9, Unwin's rule, Examples 9.4 to 9.11");
const THIN: Clause = Clause::read(KHURMI, "Example 9.5 (plate under 8 mm)");
const CAP: Clause = Clause::read(KHURMI, "Examples 9.4 to 9.9 (Table 9.5 itself not seen)");
const CAP_LAP_1: Clause = Clause::read(BHANDARI, "Example 8.23");
const CAP_LAP_4: Clause = Clause::read(JINDAL, "Example 11-7; doubtful: the Board of Trade value is 4.14");
const CAP_MEM: Clause = Clause::memory(KHURMI, "Table 9.5");
const DOUBLE: Clause = Clause::read(KHURMI, "Example 9.3 (2; others take 1.875 or 1.75)");
const BACK: Clause = Clause::read(KHURMI, "Examples 9.4, 9.7, 9.9");
const STRAP: Clause = Clause::read(KHURMI, "Examples 9.6 to 9.10");
const HALF: Clause = Clause::read(BHANDARI, "Examples 8.21, 8.22");
const HOLE: Clause = Clause::read(KHURMI, "Example 9.4: hole diameter in tearing, shear and bearing");
const HOLE_READ: Clause = Clause::read(KHURMI, "boiler holes used in the examples (Khurmi Table 9.3)");
const HOLE_MEM: Clause = Clause::memory(IS_1928, "boiler holes; this size not seen");
const SHELL: Clause = Clause::read(KHURMI, "Examples 9.8 to 9.10: t = p D/(2 st eta) + 1 mm");
const STEP: Clause = Clause::practice("whole millimetres");

/// Machine-design textbooks, metric: 6 sqrt t, double shear 2, pitch capped by the boiler table.
pub const METRIC: RuleBook<'static> = RuleBook::from_items(
    "metric",
    "General metric machine-design practice (textbooks)",
    &[
        "R.S. Khurmi & J.K. Gupta, A Textbook of Machine Design, ch. 9 (open transcription; printed page not seen)",
        "V.B. Bhandari, Design of Machine Elements, ch. 8 (open transcription; printed page not seen)",
        "IS 1928:1961, Boiler rivets (series; hole sizes partly from memory)",
        "U.C. Jindal, Machine Design, ch. 11 (open transcription; printed page not seen)",
        "Indian Boiler Regulations 1950, which the textbooks follow",
    ],
    ITEMS,
);

const ITEMS: &[Item<'static>] = &[
    Item::new(E::HOLE_RULE, &[0.0], UNWIN),
    Item::new(E::HOLE_SQRT, &[6.0], UNWIN),
    Item::new(E::HOLE_THIN_RULE, &[1.0], THIN),
    Item::new(E::HOLE_THIN_BELOW, &[8.0], THIN),
    Item::new(E::HOLE_THIN_AT, &[0.0], Clause::own("8 mm itself is taken as thick plate")),
    Item::new(E::HOLE_ROUND, &[0.0], UNWIN),
    Item::new(E::SERIES_RIVET, super::indian::RIVETS, Clause::read(IS_1928, "preferred sizes")),
    Item::new(E::SERIES_HOLE, &[13.0, 15.0, 17.0], HOLE_MEM),
    Item::new(E::SERIES_HOLE.at(3), &[19.0, 21.0, 23.0], HOLE_READ),
    Item::new(E::SERIES_HOLE.at(6), &[25.0], HOLE_MEM),
    Item::new(E::SERIES_HOLE.at(7), &[28.5, 31.5, 34.5], HOLE_READ),
    Item::new(E::SERIES_HOLE.at(10), &[37.5, 41.0, 44.0, 50.0], HOLE_MEM),
    Item::new(E::TEAR_DIAMETER, &[0.0], HOLE),
    Item::new(E::SHEAR_DIAMETER, &[0.0], HOLE),
    Item::new(E::BEARING_DIAMETER, &[0.0], HOLE),
    Item::new(E::DISTANCE_DIAMETER, &[0.0], HOLE),
    Item::new(E::DOUBLE_SHEAR, &[2.0], DOUBLE),
    Item::new(E::LONE_PLANE, &[0.0], Clause::practice("half of double shear")),
    Item::new(E::BEARING_CHECKED, &[1.0], HOLE),
    Item::new(E::COUNT_INNER, &[2.0], BACK),
    Item::new(E::PITCH_LEAST, &[2.0], Clause::read(BHANDARI, "Examples 8.21, 8.23")),
    Item::new(E::PITCH_MAX_LAP, &[1.31], CAP_LAP_1),
    Item::new(E::PITCH_MAX_LAP.at(1), &[2.62, 3.47], CAP),
    Item::new(E::PITCH_MAX_LAP.at(3), &[4.17], CAP_LAP_4),
    Item::new(E::PITCH_MAX_SINGLE, &[1.53, 3.06, 4.05], CAP_MEM),
    Item::new(E::PITCH_MAX_DOUBLE, &[1.75, 3.50, 4.63], CAP),
    Item::new(E::PITCH_MAX_DOUBLE.at(3), &[5.52], CAP_MEM),
    Item::new(E::PITCH_MAX_DOUBLE.at(4), &[6.00], CAP),
    Item::new(E::PITCH_MAX_ADD, &[41.28], CAP),
    Item::new(E::PITCH_STEP, &[1.0], STEP),
    Item::new(E::PITCH_ROUND, &[0.0], Clause::own("down, so that no cap is passed")),
    Item::new(E::PITCH_BALANCE, &[1.0], Clause::practice("tearing against the weaker of shear and bearing")),
    Item::new(E::BACK_CHAIN, &[0.0, 0.0, 2.0, 0.0], BACK),
    Item::new(E::BACK_ZIGZAG, &[0.33, 0.0, 0.67, 0.0], BACK),
    Item::new(E::BACK_HALF_CHAIN, &[0.33, 0.0, 0.67, 0.0], Clause::read(IBR, "Reg. 184(b)")),
    Item::new(E::BACK_HALF_ZIGZAG, &[0.2, 0.0, 1.15, 0.0], BACK),
    Item::new(E::BACK_STEP, &[1.0], STEP),
    Item::new(E::MARGIN_LEAST, &[1.5], BACK),
    Item::new(E::MARGIN_STEP, &[1.0], STEP),
    Item::new(E::STRAP_SINGLE, &[1.125], Clause::memory(KHURMI, "straps, single")),
    Item::new(E::STRAP_EQUAL, &[0.625], STRAP),
    Item::new(E::STRAP_WIDE, &[0.75], STRAP),
    Item::new(E::STRAP_NARROW, &[0.625], STRAP),
    Item::new(E::STRAP_OMITTED, &[1.0], HALF),
    Item::new(E::STRAP_STEP, &[1.0], STEP),
    Item::new(E::PRESSURE_FORM, &[1.0], SHELL),
    Item::new(E::PRESSURE_ALLOWANCE, &[1.0], SHELL),
    Item::new(E::PRESSURE_ALLOWANCE_GIVEN, &[1.0], Clause::read(BHANDARI, "Example 8.22: 2 mm given as data")),
    Item::new(E::ROOM, &[1.5], Clause::own("half as strong again")),
];

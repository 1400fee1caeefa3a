//! Indian Boiler Regulations 1950, riveted joints.

use super::us_code::{inch, psi};
use super::{Clause, Entry as E, Item, RuleBook};
use crate::quantities::{Length, Stress};

/// Nominal rivet diameters, mm (IS 1928:1961).
pub(super) const RIVETS: &[f64] = &[12.0, 14.0, 16.0, 18.0, 20.0, 22.0, 24.0, 27.0, 30.0, 33.0, 36.0, 39.0, 42.0, 48.0];

const IBR: u8 = 0;
const BOOKS: u8 = 1;
const IS_1928: u8 = 2;

const EQ_2: Clause = Clause::read(IBR, "Reg. 177 Eq. (2)");
const EQ_3: Clause = Clause::read(IBR, "Reg. 177 Eq. (3)");
const EQ_4: Clause = Clause::read(IBR, "Reg. 177 Eq. (4)");
const REG_177: Clause = Clause::read(IBR, "Reg. 177 (no crushing check)");
const REG_184A: Clause = Clause::read(IBR, "Reg. 184(a) Eq. (12), (13)");
const REG_184B: Clause = Clause::read(IBR, "Reg. 184(b)");
const REG_184C: Clause = Clause::read(IBR, "Reg. 184(c) Eq. (14)");
const REG_184D: Clause = Clause::read(IBR, "Reg. 184(d) Eq. (16)");
const REG_184E: Clause = Clause::read(IBR, "Reg. 184(e)");
const UNWIN: Clause = Clause::read(BOOKS, "Unwin's rule (the Regulations give no hole rule)");
const THIN: Clause = Clause::read(BOOKS, "Khurmi Example 9.5");
const CAP: Clause = Clause::read(BOOKS, "greatest pitch, as used in Khurmi Examples 9.4 to 9.9");
const CAP_LAP_1: Clause = Clause::read(BOOKS, "Bhandari Example 8.23");
const CAP_LAP_4: Clause = Clause::read(BOOKS, "Jindal Example 11-7; doubtful: the Board of Trade value is 4.14");
const CAP_MEM: Clause = Clause::memory(IBR, "greatest pitch (Reg. 178 to 183 not seen)");
const STRAP: Clause = Clause::read(BOOKS, "straps, Khurmi Examples 9.6 to 9.10");
const STRAP_MEM: Clause = Clause::memory(IBR, "straps (Reg. 178 to 183 not seen)");
const HOLE_READ: Clause = Clause::read(BOOKS, "boiler holes used in the examples (Khurmi Table 9.3)");
const HOLE_MEM: Clause = Clause::memory(IS_1928, "boiler holes; this size not seen");
const REG_104: Clause = Clause::read(IBR, "Reg. 104");
const REG_176: Clause = Clause::memory(IBR, "Reg. 176 Eq. (1)");
const REG_365F: Clause = Clause::read(IBR, "Reg. 365F");
const REG_366: Clause = Clause::read(IBR, "Reg. 366");
const STEP: Clause = Clause::practice("whole millimetres");

/// Indian Boiler Regulations 1950: Reg. 177 percentages with 1.875 and hole areas, Reg. 184 row distances.
pub const INDIAN: RuleBook<'static> = RuleBook::from_items(
    "indian",
    "Indian Boiler Regulations 1950",
    &[
        "Indian Boiler Regulations 1950 (official site text; Reg. 178 to 183 not seen)",
        "Machine-design textbooks quoting the Regulations (open transcriptions)",
        "IS 1928:1961, Boiler rivets",
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
    Item::new(E::SERIES_RIVET, RIVETS, Clause::read(IS_1928, "preferred sizes")),
    Item::new(E::SERIES_HOLE, &[13.0, 15.0, 17.0], HOLE_MEM),
    Item::new(E::SERIES_HOLE.at(3), &[19.0, 21.0, 23.0], HOLE_READ),
    Item::new(E::SERIES_HOLE.at(6), &[25.0], HOLE_MEM),
    Item::new(E::SERIES_HOLE.at(7), &[28.5, 31.5, 34.5], HOLE_READ),
    Item::new(E::SERIES_HOLE.at(10), &[37.5, 41.0, 44.0, 50.0], HOLE_MEM),
    Item::new(E::TEAR_DIAMETER, &[0.0], EQ_2),
    Item::new(E::SHEAR_DIAMETER, &[0.0], EQ_3),
    Item::new(E::BEARING_DIAMETER, &[0.0], Clause::practice("hole diameter")),
    Item::new(E::DISTANCE_DIAMETER, &[0.0], REG_184A),
    Item::new(E::DOUBLE_SHEAR, &[1.875], EQ_3),
    Item::new(E::LONE_PLANE, &[0.0], Clause::practice("half of double shear")),
    Item::new(E::BEARING_CHECKED, &[0.0], REG_177),
    Item::new(E::COUNT_INNER, &[1.0], EQ_4),
    Item::new(E::STEEL_SHEAR, &[Stress::long_ton_in2(23.0).to_mpa()], EQ_3),
    Item::new(E::IRON_SHEAR, &[Stress::long_ton_in2(18.0).to_mpa()], EQ_3),
    Item::new(E::PITCH_LEAST, &[2.0], Clause::read(BOOKS, "Bhandari Examples 8.21, 8.23")),
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
    Item::new(E::PITCH_BALANCE, &[0.0], REG_177),
    Item::new(E::BACK_CHAIN, &[0.0, 0.0, 2.0, 0.0], REG_184A),
    Item::new(E::BACK_ZIGZAG, &[0.33, 0.0, 0.67, 0.0], REG_184A),
    Item::new(E::BACK_HALF_CHAIN, &[0.33, 0.0, 0.67, 0.0], REG_184B),
    Item::new(E::BACK_HALF_ZIGZAG, &[0.2, 0.0, 1.15, 0.0], REG_184C),
    Item::new(E::BACK_STEP, &[1.0], STEP),
    Item::new(E::CLOSE_ROWS, &[1.0], REG_184D),
    Item::new(E::MARGIN_LEAST, &[1.5], REG_184E),
    Item::new(E::MARGIN_STEP, &[1.0], STEP),
    Item::new(E::STRAP_SINGLE, &[1.125], STRAP_MEM),
    Item::new(E::STRAP_EQUAL, &[0.625], STRAP),
    Item::new(E::STRAP_WIDE, &[0.75], STRAP),
    Item::new(E::STRAP_NARROW, &[0.625], STRAP),
    Item::new(E::STRAP_OMITTED, &[1.0], Clause::read(BOOKS, "Khurmi 9.8, Bhandari 8.21, 8.22")),
    Item::new(E::STRAP_LEAST, &[10.0], STRAP_MEM),
    Item::new(E::STRAP_STEP, &[1.0], STEP),
    Item::new(
        E::PLATE_LEAST,
        &[Length::inch(0.25).to_mm()],
        Clause::read(IBR, "Reg. 366 (1/4 in up to 24 in diameter)"),
    ),
    Item::new(E::EFFICIENCY_CAP, &[0.85], Clause::memory(IBR, "greatest efficiency credited")),
    Item::new(E::PRESSURE_FORM, &[2.0], REG_176),
    Item::new(E::PRESSURE_ALLOWANCE, &[inch(0.0625)], REG_176),
    Item::new(E::PRESSURE_ALLOWANCE_GIVEN, &[0.0], Clause::own("the formula's 2/32 in stays")),
    Item::new(E::PRESSURE_LAP, &[3.0, 2.9, 2.83], REG_176),
    Item::new(E::PRESSURE_DOUBLE, &[2.75], Clause::memory(IBR, "Reg. 176 (Reg. 107, read, has C 2.75 for J = 100)")),
    Item::new(E::SHELL_DIAMETER, &[inch(24.0), inch(36.0)], REG_366),
    Item::new(E::SHELL_PLATE, &[inch(0.25), inch(0.3125)], REG_366),
    Item::new(E::SHELL_ABOVE, &[inch(0.375)], REG_366),
    Item::new(E::LAP_PRESSURE, &[psi(130.0)], REG_365F),
    Item::new(E::LAP_PRODUCT, &[psi(9500.0) * inch(1.0)], REG_365F),
    Item::new(E::GIRTH_END, &[0.38], REG_104),
    Item::new(E::GIRTH_MIDDLE, &[0.42], REG_104),
    Item::new(E::GIRTH_SHARE_MIDDLE, &[0.5], REG_104),
    Item::new(E::GIRTH_DOUBLE_MIDDLE, &[inch(0.6875)], REG_104),
    Item::new(E::SEAMS_STAGGERED, &[1.0], Clause::read(IBR, "Reg. 103")),
    Item::new(E::ROOM, &[1.5], Clause::own("half as strong again")),
];

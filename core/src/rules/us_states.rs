//! Rating rules of single US states and of the locomotive rules: each says what was read in it, and no more.
//!
//! Default strengths differ (55 000 psi in some states, 50 000 psi on locomotives), so a book without one leaves it to
//! the user.

use super::us_code::{DRIVEN, DRIVEN_PLATE, inch, psi};
use super::{Clause, Entry as E, Item, RuleBook};

const RULES: u8 = 0;
const CFR: u8 = 1;

const EFFICIENCY: Clause = Clause::practice("efficiency by the boiler code");
const FORMULA: Clause = Clause::practice("TS t E/(R FS), as in other states");
const STEP: Clause = Clause::practice("sixteenths of an inch");

/// What all of them leave to the boiler code, then what each says itself.
macro_rules! items {
    ($formula:expr; $($item:expr;)*) => {
        &[
            Item::new(E::TEAR_DIAMETER, &[0.0], EFFICIENCY),
            Item::new(E::SHEAR_DIAMETER, &[0.0], EFFICIENCY),
            Item::new(E::BEARING_DIAMETER, &[0.0], EFFICIENCY),
            Item::new(E::DOUBLE_SHEAR, &[2.0], EFFICIENCY),
            Item::new(E::LONE_PLANE, &[0.0], EFFICIENCY),
            Item::new(E::BEARING_CHECKED, &[1.0], EFFICIENCY),
            Item::new(E::COUNT_INNER, &[2.0], EFFICIENCY),
            Item::new(E::ROOM, &[1.5], Clause::own("half as strong again")),
            Item::new(E::PRESSURE_FORM, &[3.0], $formula),
            $($item,)*
        ]
    };
}

const MICHIGAN: Clause = Clause::read(RULES, "R 408.4207");
const MICHIGAN_SIZES: Clause = Clause::read(RULES, "R 408.4212");

/// Michigan, existing boilers. Its tensile strength of unknown plate was not read: give it.
pub const US_MICHIGAN: RuleBook<'static> = RuleBook::from_items(
    "us-michigan",
    "Michigan rules for existing boilers",
    &["Michigan Administrative Code R 408.4207 and R 408.4212"],
    items! {
        Clause::read(RULES, "maximum allowable working pressure TS t E/(R FS)");
        Item::new(E::HOLE_RULE, &[1.0], MICHIGAN_SIZES);
        Item::new(E::HOLE_TABLE_PLATE, DRIVEN_PLATE, MICHIGAN_SIZES);
        Item::new(E::HOLE_TABLE_HOLE, DRIVEN, MICHIGAN_SIZES);
        Item::new(E::HOLE_ROUND, &[1.0], Clause::own("the driven size itself"));
        Item::new(E::HOLE_STEP, &[inch(0.0625)], STEP);
        Item::new(E::PITCH_STEP, &[inch(0.0625)], STEP);
        Item::new(E::STEEL_SHEAR, &[psi(44_000.0)], MICHIGAN_SIZES);
        Item::new(E::IRON_SHEAR, &[psi(38_000.0)], MICHIGAN_SIZES);
        Item::new(E::SAFETY_EXISTING, &[4.5], MICHIGAN);
        Item::new(E::SAFETY_SECOND_LAP, &[6.0], MICHIGAN);
        Item::new(E::SAFETY_SECOND_BUTT, &[5.0], MICHIGAN);
        Item::new(E::SAFETY_LONG_LAP, &[8.0], MICHIGAN);
        Item::new(E::SAFETY_LONG_LAP_ABOVE, &[inch(144.0)], MICHIGAN);
        Item::new(E::SAFETY_AGE_ADD, &[0.5], MICHIGAN);
        Item::new(E::SAFETY_AGE_TESTED, &[5.5], MICHIGAN);
        Item::new(E::TEST_FACTOR, &[1.5], MICHIGAN);
    },
)
.lettered();

const CAROLINA: Clause = Clause::read(RULES, "13 NCAC 13 .0504");

/// North Carolina, boilers that are not standard. Its strengths of unknown material were not read: give them.
pub const US_NORTH_CAROLINA: RuleBook<'static> = RuleBook::from_items(
    "us-north-carolina",
    "North Carolina rules for nonstandard boilers",
    &["13 NCAC 13 .0504"],
    items! {
        FORMULA;
        Item::new(E::SAFETY_EXISTING, &[4.5], CAROLINA);
        Item::new(E::SAFETY_LAP, &[6.0], CAROLINA);
        Item::new(E::SAFETY_DOUBLE, &[5.0], CAROLINA);
        Item::new(E::SAFETY_LONG_LAP, &[8.0], CAROLINA);
        Item::new(E::SAFETY_LONG_LAP_ABOVE, &[inch(144.0)], CAROLINA);
    },
)
.lettered();

const MONTANA: Clause = Clause::read(RULES, "50-74-218");

/// Montana. Its strengths of unknown material were not read: give them.
pub const US_MONTANA: RuleBook<'static> = RuleBook::from_items(
    "us-montana",
    "Montana rules for existing boilers",
    &["Montana Code 50-74-218"],
    items! {
        FORMULA;
        Item::new(E::SAFETY_LAP, &[4.5], MONTANA);
        Item::new(E::SAFETY_SINGLE, &[4.0], MONTANA);
        Item::new(E::SAFETY_DOUBLE, &[4.0], MONTANA);
        Item::new(E::SAFETY_FIRE_LAP, &[5.0], MONTANA);
        Item::new(E::SAFETY_WEIGHT, &[5.0], MONTANA);
    },
)
.lettered();

const CALIFORNIA: Clause = Clause::read(RULES, "s.776");

/// California, limits on lap seams. Its factors of safety and default strengths were not read: give them.
pub const US_CALIFORNIA: RuleBook<'static> = RuleBook::from_items(
    "us-california",
    "California rules for existing boilers with lap seams",
    &["California Code of Regulations, Title 8, s.776"],
    items! {
        FORMULA;
        Item::new(E::LAP_SECOND_PRESSURE, &[psi(50.0)], CALIFORNIA);
        Item::new(E::LAP_WIDE_ABOVE, &[inch(36.0)], CALIFORNIA);
        Item::new(E::LAP_WIDE_PRESSURE, &[psi(50.0)], CALIFORNIA);
        Item::new(E::TEST_FACTOR, &[1.5], CALIFORNIA);
    },
)
.lettered();

const RULES_4_5: Clause = Clause::read(RULES, "rules 4 and 5");
const STRESS: Clause = Clause::memory(CFR, "s.230.24: stress at most a quarter of the tensile strength");

/// Locomotive boilers under the Interstate Commerce Commission: 50 000 psi, not 55 000, for steel of unknown make.
pub const US_LOCOMOTIVE: RuleBook<'static> = RuleBook::from_items(
    "us-locomotive",
    "US locomotive boiler rules (ICC rules 4 and 5)",
    &["A.J. O'Neil, Locomotive and Boiler Inspector's Handbook, 1929, as quoted in a journal", "49 CFR 230 (not seen)"],
    items! {
        FORMULA;
        Item::new(E::STEEL_TENSION, &[psi(50_000.0)], RULES_4_5);
        Item::new(E::IRON_TENSION, &[psi(45_000.0)], RULES_4_5);
        Item::new(E::STEEL_SHEAR, &[psi(44_000.0)], RULES_4_5);
        Item::new(E::IRON_SHEAR, &[psi(38_000.0)], RULES_4_5);
        Item::new(E::SAFETY_LAP, &[4.0], STRESS);
        Item::new(E::SAFETY_SINGLE, &[4.0], STRESS);
        Item::new(E::SAFETY_DOUBLE, &[4.0], STRESS);
    },
)
.lettered();

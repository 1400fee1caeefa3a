//! US state rules for boilers in service: strengths and sizes to assume, and nothing on how to build.

use super::us_code::{CRUSH, DRIVEN, DRIVEN_PLATE, MAWP, SHEAR, SIZES, TENSILE, psi};
use super::{Clause, Entry as E, Item, RuleBook};

const STATES: u8 = 1;
const EFFICIENCY: Clause = Clause::read(STATES, "efficiency by the boiler code");

/// US state rules for existing boilers: what to assume of old plate and rivets. Silent on proportions: to check, not
/// to design.
pub const US_EXISTING: RuleBook<'static> = RuleBook::from_items(
    "us-existing",
    "US state rules for existing boilers",
    &[
        "49 CFR 230 and ICC rules 4, 5 differ (50 000 psi): not used here, the jurisdiction must be chosen",
        "N. Dakota 33.1-14-05-02; Tennessee 0800-03-03-.13; Michigan R 408.4212; Connecticut 29-232-55; \
         Mississippi 15-10-76; Oklahoma 380:25-5-7; Nevada 455C.242",
    ],
    ITEMS,
)
.lettered();

const ITEMS: &[Item<'static>] = &[
    Item::new(E::HOLE_RULE, &[1.0], SIZES),
    Item::new(E::HOLE_TABLE_PLATE, DRIVEN_PLATE, SIZES),
    Item::new(E::HOLE_TABLE_HOLE, DRIVEN, SIZES),
    Item::new(E::HOLE_ROUND, &[1.0], Clause::own("the driven size itself")),
    Item::new(E::HOLE_STEP, &[super::us_code::inch(0.0625)], Clause::practice("sixteenths of an inch")),
    Item::new(E::TEAR_DIAMETER, &[0.0], EFFICIENCY),
    Item::new(E::SHEAR_DIAMETER, &[0.0], EFFICIENCY),
    Item::new(E::BEARING_DIAMETER, &[0.0], EFFICIENCY),
    Item::new(E::DOUBLE_SHEAR, &[2.0], SHEAR),
    Item::new(E::LONE_PLANE, &[0.0], Clause::practice("half of double shear")),
    Item::new(E::BEARING_CHECKED, &[1.0], CRUSH),
    Item::new(E::COUNT_INNER, &[2.0], EFFICIENCY),
    Item::new(E::STEEL_TENSION, &[psi(55_000.0)], TENSILE),
    Item::new(E::IRON_TENSION, &[psi(45_000.0)], TENSILE),
    Item::new(E::PLATE_BEARING, &[psi(95_000.0)], CRUSH),
    Item::new(E::STEEL_SHEAR, &[psi(44_000.0)], SHEAR),
    Item::new(E::IRON_SHEAR, &[psi(38_000.0)], SHEAR),
    Item::new(E::PITCH_STEP, &[super::us_code::inch(0.0625)], Clause::practice("sixteenths of an inch")),
    Item::new(E::PRESSURE_FORM, &[3.0], MAWP),
    Item::new(
        E::PRESSURE_OUTSIDE,
        &[0.1],
        Clause::read(STATES, "Oklahoma 380:25-5-7: outside radius where t > 10 % of R"),
    ),
    Item::new(E::ROOM, &[1.5], Clause::own("half as strong again")),
];

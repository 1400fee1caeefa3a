//! Structural practice: ties, splices and brackets.

use super::{Clause, Entry as E, Item, RuleBook};
use crate::quantities::Length;

const KHURMI: u8 = 0;
const AISC_360: u8 = 1;
const AISC_D9: u8 = 2;
const HANDBOOK: u8 = 3;
const IS_1929: u8 = 4;

const HOLE_READ: Clause = Clause::read(KHURMI, "general-purpose holes used in the examples (Table 9.7)");
const HOLE_MEM: Clause = Clause::memory(IS_1929, "general-purpose holes; this size not seen");
const TIES: Clause = Clause::read(KHURMI, "Examples 9.11 to 9.13");
const STRAPS: Clause = Clause::read(KHURMI, "Examples 9.11, 9.12: 0.75 t each; single cover 1.25 t");
const SPACING: Clause = Clause::read(AISC_360, "J3.5: 24 t or 12 in");
const EDGE: Clause = Clause::read(AISC_360, "J3.5: 12 t or 6 in");
const STAGGER: Clause = Clause::read(AISC_D9, "Example D.9");

/// Structural practice: double shear 1.75, hole diameter throughout, zig-zag net sections with s^2/4g.
pub const STRUCTURAL: RuleBook<'static> = RuleBook::from_items(
    "structural",
    "Structural practice (ties and splices)",
    &[
        "R.S. Khurmi & J.K. Gupta, A Textbook of Machine Design, ch. 9 (open transcription; printed page not seen)",
        "ANSI/AISC 360-16",
        "AISC Design Examples (companion to the Manual)",
        "Technique for Manual Working of Materials: Riveting, trainees' handbook, ch. 5",
        "IS 1929:1961, General-purpose rivets (holes partly from memory)",
    ],
    ITEMS,
);

const ITEMS: &[Item<'static>] = &[
    Item::new(E::HOLE_RULE, &[0.0], TIES),
    Item::new(E::HOLE_SQRT, &[6.0], TIES),
    Item::new(E::HOLE_ROUND, &[0.0], TIES),
    Item::new(E::SERIES_RIVET, super::indian::RIVETS, Clause::read(IS_1929, "preferred sizes")),
    Item::new(E::SERIES_HOLE, &[13.5], HOLE_READ),
    Item::new(E::SERIES_HOLE.at(1), &[15.5], HOLE_MEM),
    Item::new(E::SERIES_HOLE.at(2), &[17.5, 19.5, 21.5, 23.5, 25.5, 29.0], HOLE_READ),
    Item::new(E::SERIES_HOLE.at(8), &[32.0, 35.0, 38.0, 41.0, 44.0, 50.0], HOLE_MEM),
    Item::new(E::TEAR_DIAMETER, &[0.0], TIES),
    Item::new(E::SHEAR_DIAMETER, &[0.0], TIES),
    Item::new(E::BEARING_DIAMETER, &[0.0], TIES),
    Item::new(E::DISTANCE_DIAMETER, &[0.0], TIES),
    Item::new(E::DOUBLE_SHEAR, &[1.75], TIES),
    Item::new(E::LONE_PLANE, &[0.0], Clause::practice("half of double shear")),
    Item::new(E::BEARING_CHECKED, &[1.0], TIES),
    Item::new(E::COUNT_INNER, &[2.0], TIES),
    Item::new(E::COUNT_STRAP, &[1.0], Clause::practice("splice plates are members")),
    Item::new(E::INNER_SHARE, &[0.0], TIES),
    Item::new(E::PITCH_LEAST, &[3.0], TIES),
    Item::new(E::PITCH_LEAST_ADD, &[5.0], TIES),
    Item::new(E::PITCH_MAX_EVEN, &[24.0], SPACING),
    Item::new(E::PITCH_MAX_LIMIT, &[Length::inch(12.0).to_mm()], SPACING),
    Item::new(E::PITCH_STEP, &[5.0], TIES),
    Item::new(E::PITCH_ROUND, &[0.0], Clause::own("down")),
    Item::new(E::PITCH_BALANCE, &[1.0], TIES),
    Item::new(E::BACK_CHAIN, &[0.0, 0.0, 2.5, 0.0], TIES),
    Item::new(E::BACK_ZIGZAG, &[0.0, 0.0, 2.5, 0.0], TIES),
    Item::new(E::BACK_HALF_CHAIN, &[0.0, 0.0, 2.5, 0.0], TIES),
    Item::new(E::BACK_HALF_ZIGZAG, &[0.0, 0.0, 2.5, 0.0], TIES),
    Item::new(E::BACK_STEP, &[5.0], TIES),
    Item::new(E::CLOSE_ROWS, &[2.0], STAGGER),
    Item::new(E::MARGIN_LEAST, &[1.5], TIES),
    Item::new(E::MARGIN_THICKNESS, &[12.0], EDGE),
    Item::new(E::MARGIN_LIMIT, &[Length::inch(6.0).to_mm()], EDGE),
    Item::new(E::MARGIN_STEP, &[5.0], TIES),
    Item::new(E::STRAP_SINGLE, &[1.25], STRAPS),
    Item::new(E::STRAP_EQUAL, &[0.75], STRAPS),
    Item::new(E::STRAP_WIDE, &[0.75], Clause::practice("as for equal covers")),
    Item::new(E::STRAP_NARROW, &[0.75], Clause::practice("as for equal covers")),
    Item::new(E::STRAP_STEP, &[1.0], Clause::practice("whole millimetres")),
    Item::new(E::GRIP_GREATEST, &[4.0], Clause::read(HANDBOOK, "grip at most 4 D")),
    Item::new(E::ROOM, &[1.5], Clause::own("half as strong again")),
];

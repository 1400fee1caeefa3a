//! The table of entries: everything that a rule book can say, with key, kind, range and neutral default.
//!
//! One table serves reading, changing, bounds, errors, tests and, in the bindings, TOML, dicts and C structs. To add
//! an entry add a row here, read it in the routine that needs it, and give it a vector.

use crate::bounds::Unit;
use crate::error::EntryNo;

/// What kind of value an entry holds. All are kept as `f64`; switches and choices as small whole numbers.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum EntryKind {
    /// A number with a unit.
    Number(Unit),
    /// 0 or 1.
    Switch,
    /// One of several ways, numbered from 0.
    Choice(&'static [&'static str]),
}

/// What the table says of one entry.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct EntryInfo {
    /// The key in files and dicts; entries that are lists add their line number, as in `series.hole.3`.
    pub key: &'static str,
    /// Line of the list, from 1; 0 for a single value.
    pub line: u8,
    /// Kind of value.
    pub kind: EntryKind,
    /// Least value.
    pub lo: f64,
    /// Greatest value.
    pub hi: f64,
    /// The neutral value of a book that is silent on the matter.
    pub default: f64,
    /// What the entry says, in words.
    pub what: &'static str,
}

/// Number of an entry of the rule books.
#[derive(Clone, Copy, PartialEq, Eq, Debug, Hash, PartialOrd, Ord)]
#[repr(transparent)]
pub struct Entry(u16);

impl Entry {
    /// Position in the table.
    #[must_use]
    #[inline(always)]
    pub const fn index(self) -> usize {
        self.0 as usize
    }

    /// The number that errors, findings and steps carry.
    #[must_use]
    #[inline(always)]
    pub const fn no(self) -> EntryNo {
        EntryNo(self.0)
    }

    /// The entry behind a number, if it names one.
    #[must_use]
    pub const fn from_no(no: EntryNo) -> Option<Entry> {
        if (no.0 as usize) < ENTRIES { Some(Entry(no.0)) } else { None }
    }

    /// Line `line` (from 0) of a list entry.
    #[must_use]
    #[inline(always)]
    pub const fn at(self, line: usize) -> Entry {
        let n = (self.0 as usize).saturating_add(line);
        if n < ENTRIES { Entry(n as u16) } else { self }
    }

    /// All entries, in the order of the table.
    pub fn all() -> impl Iterator<Item = Entry> {
        (0..ENTRIES).filter_map(|i| u16::try_from(i).ok().map(Entry))
    }
}

use EntryKind::{Choice, Number, Switch};
use Unit::{Megapascal as Mpa, Millimetre as Mm, One, RootMillimetre as RootMm};

const DIAMETERS: EntryKind = Choice(&["hole", "rivet"]);

macro_rules! entries {
    ($($id:ident $len:literal $key:literal $kind:expr, $lo:literal ..= $hi:literal, $default:literal, $what:literal;)*) => {
        #[allow(non_camel_case_types, clippy::upper_case_acronyms)]
        enum Group { $($id),* }
        static LENGTHS: [u8; [$(Group::$id),*].len()] = LENGTHS_OF_GROUPS;
        const LENGTHS_OF_GROUPS: [u8; [$(Group::$id),*].len()] = [$($len),*];

        impl Entry {
            $(#[doc = $what] pub const $id: Entry = Entry(offset(Group::$id as usize));)*
        }

        /// Number of entries of a rule book.
        pub const ENTRIES: usize = { let mut n = 0; $(n += $len as usize;)* n };

        /// The groups of the table: first entry, number of lines, and the row.
        pub const GROUPS: &[(Entry, u8, EntryInfo)] = &[$((Entry::$id, $len, EntryInfo {
            key: $key, line: if $len > 1 { 1 } else { 0 }, kind: $kind, lo: $lo, hi: $hi, default: $default, what: $what,
        })),*];
    };
}

/// First position of a group: the lengths before it added up, at compile time.
#[expect(clippy::indexing_slicing, clippy::arithmetic_side_effects, reason = "evaluated by the compiler")]
const fn offset(group: usize) -> u16 {
    let mut i = 0;
    let mut n = 0;
    while i < group {
        n += LENGTHS_OF_GROUPS[i] as u16;
        i += 1;
    }
    n
}

entries! {
    HOLE_RULE 1 "hole.rule" Choice(&["square root of the thickness", "table by thickness"]), 0.0..=1.0, 0.0, "how the hole follows from the plate";
    HOLE_SQRT 1 "hole.sqrt" Number(RootMm), 0.5..=15.0, 6.0, "constant a of the square-root rule d = a sqrt t + b";
    HOLE_ADD 1 "hole.add" Number(Mm), -20.0..=20.0, 0.0, "constant b of the square-root rule d = a sqrt t + b";
    HOLE_THIN_RULE 1 "hole.thin.rule" Choice(&["same rule as thick plate", "shear equals bearing"]), 0.0..=1.0, 0.0, "what replaces the square-root rule for thin plate";
    HOLE_THIN_BELOW 1 "hole.thin.below" Number(Mm), 0.0..=50.0, 0.0, "plate thickness below which it is thin";
    HOLE_THIN_AT 1 "hole.thin.at_limit" Choice(&["the limit itself is thick", "the limit itself is thin"]), 0.0..=1.0, 0.0, "on which side the limit of thin plate itself falls";
    HOLE_ROUND 1 "hole.round" Choice(&["next size of the series", "next step"]), 0.0..=1.0, 0.0, "how the computed hole becomes a real one";
    HOLE_STEP 1 "hole.step" Number(Mm), 0.0..=10.0, 1.0, "step to which a hole is rounded up where no series is used";
    HOLE_PER_PLATE_LEAST 1 "hole.per_plate.least" Number(One), 0.0..=10.0, 0.0, "least hole in plate thicknesses (0: no rule)";
    HOLE_PER_PLATE_GREATEST 1 "hole.per_plate.greatest" Number(One), 0.0..=10.0, 0.0, "greatest hole in plate thicknesses (0: no rule)";
    HOLE_CLEARANCE_GREATEST 1 "hole.clearance.greatest" Number(Mm), 0.0..=10.0, 0.0, "greatest hole less rivet (0: no rule)";
    SERIES_RIVET 24 "series.rivet" Number(Mm), 0.0..=150.0, 0.0, "rivet diameter of the series (0 ends it)";
    SERIES_HOLE 24 "series.hole" Number(Mm), 0.0..=150.0, 0.0, "hole diameter for the rivet of the same line";
    HOLE_TABLE_PLATE 12 "hole.table.plate" Number(Mm), 0.0..=200.0, 0.0, "plate thickness of a line of the hole table (0 ends it)";
    HOLE_TABLE_HOLE 12 "hole.table.hole" Number(Mm), 0.0..=150.0, 0.0, "hole for plates up to the thickness of the same line";
    TEAR_DIAMETER 1 "tear.diameter" DIAMETERS, 0.0..=1.0, 0.0, "diameter that counts in tearing";
    TEAR_ALLOWANCE 1 "tear.allowance" Number(Mm), 0.0..=10.0, 0.0, "allowance added to that diameter for damage by the punch";
    SHEAR_DIAMETER 1 "shear.diameter" DIAMETERS, 0.0..=1.0, 0.0, "diameter that counts in shear";
    BEARING_DIAMETER 1 "bearing.diameter" DIAMETERS, 0.0..=1.0, 0.0, "diameter that counts in bearing";
    DISTANCE_DIAMETER 1 "distance.diameter" DIAMETERS, 0.0..=1.0, 0.0, "diameter that counts in pitches, row distances and margins";
    DOUBLE_SHEAR 1 "shear.double" Number(One), 1.0..=2.0, 2.0, "strength of a rivet in double shear over single shear";
    LONE_PLANE 1 "shear.lone_plane" Choice(&["half of double shear", "single shear"]), 0.0..=1.0, 0.0, "strength of one plane of a rivet in double shear when only that plane fails";
    BEARING_CHECKED 1 "bearing.checked" Switch, 0.0..=1.0, 1.0, "whether the book checks bearing";
    COUNT_INNER 1 "count.inner" Choice(&["never", "where the next row has twice the rivets of the outer row", "always"]), 0.0..=2.0, 2.0, "whether the book counts tearing at an inner row with the failure of the rivets outside it";
    COUNT_STRAP 1 "count.strap" Switch, 0.0..=1.0, 0.0, "whether the book counts tearing of straps";
    INNER_SHARE 1 "inner.share" Choice(&["the strength of the rivets outside", "an even share of the load"]), 0.0..=1.0, 0.0, "what the rivets outside an inner row take off its load";
    SEAM_SAFETY 1 "percent.safety" Number(One), 0.5..=20.0, 1.0, "factor of safety F in the book's rivet percentage";
    SEAM_DIVISOR 1 "percent.divisor" Number(One), 0.5..=20.0, 1.0, "factor of safety by which F is divided in the book's rivet percentage";
    STEEL_TENSION 1 "default.steel.tension" Number(Mpa), 0.0..=5000.0, 0.0, "tensile strength of steel plate of unknown make (0: none given)";
    IRON_TENSION 1 "default.iron.tension" Number(Mpa), 0.0..=5000.0, 0.0, "tensile strength of wrought-iron plate of unknown make (0: none given)";
    PLATE_BEARING 1 "default.bearing" Number(Mpa), 0.0..=5000.0, 0.0, "crushing strength of plate (0: none given)";
    STEEL_SHEAR 1 "default.steel.shear" Number(Mpa), 0.0..=5000.0, 0.0, "shear strength of steel rivets (0: none given)";
    IRON_SHEAR 1 "default.iron.shear" Number(Mpa), 0.0..=5000.0, 0.0, "shear strength of iron rivets (0: none given)";
    PITCH_LEAST 1 "pitch.least.factor" Number(One), 0.0..=10.0, 0.0, "least pitch of a row in diameters (0: no rule)";
    PITCH_LEAST_ADD 1 "pitch.least.add" Number(Mm), 0.0..=50.0, 0.0, "what is added to it";
    PITCH_MAX_LAP 5 "pitch.greatest.lap" Number(One), 0.0..=50.0, 0.0, "C of the greatest pitch C t + K, lap, by rivets per pitch (0: not in the table)";
    PITCH_MAX_SINGLE 5 "pitch.greatest.single" Number(One), 0.0..=50.0, 0.0, "C of the greatest pitch, single strap, by rivets per pitch (0: not in the table)";
    PITCH_MAX_DOUBLE 5 "pitch.greatest.double" Number(One), 0.0..=50.0, 0.0, "C of the greatest pitch, double strap, by rivets per pitch (0: not in the table)";
    PITCH_MAX_ADD 1 "pitch.greatest.add" Number(Mm), 0.0..=200.0, 0.0, "K of the greatest pitch C t + K";
    PITCH_MAX_EVEN 1 "pitch.greatest.thickness" Number(One), 0.0..=100.0, 0.0, "greatest pitch of a row in thicknesses of the thinner plate (0: no rule)";
    PITCH_MAX_LIMIT 1 "pitch.greatest.limit" Number(Mm), 0.0..=2000.0, 0.0, "greatest pitch of a row whatever the thickness (0: no rule)";
    PITCH_STEP 1 "pitch.step" Number(Mm), 0.0..=50.0, 1.0, "step of the shop's grid for pitches";
    PITCH_ROUND 1 "pitch.round" Choice(&["down", "nearest", "up"]), 0.0..=2.0, 0.0, "direction in which a pitch is rounded";
    PITCH_BALANCE 1 "pitch.balance" Choice(&["outer row against shear", "outer row against the weaker of shear and bearing", "all plate modes against the rivets"]), 0.0..=2.0, 1.0, "which balance sets the pitch";
    PITCH_SCALLOP 1 "pitch.scallop" Number(One), 0.0..=50.0, 0.0, "pitch in plate or strap thicknesses above which the strap edge is scalloped for caulking (0: no rule)";
    BACK_CHAIN 4 "back.chain" Number(One), 0.0..=40.0, 0.0, "row distance a (p - k d) + b d + c, equal rows, chain: a, k, b, c";
    BACK_ZIGZAG 4 "back.zigzag" Number(One), 0.0..=40.0, 0.0, "row distance a (p - k d) + b d + c, equal rows, zig-zag: a, k, b, c";
    BACK_HALF_CHAIN 4 "back.half.chain" Number(One), 0.0..=40.0, 0.0, "row distance from a row with fewer rivets to the next, chain: a, k, b, c";
    BACK_HALF_ZIGZAG 4 "back.half.zigzag" Number(One), 0.0..=40.0, 0.0, "row distance from a row with fewer rivets to the next, zig-zag: a, k, b, c";
    BACK_ZIGZAG_RULE 1 "back.zigzag.rule" Choice(&["row distance", "diagonal pitch"]), 0.0..=1.0, 0.0, "whether equal zig-zag rows are set by their distance or by the diagonal pitch";
    DIAGONAL_PITCH 1 "diagonal.pitch" Number(One), 0.0..=5.0, 0.0, "share of the pitch in the diagonal pitch";
    DIAGONAL_DIAMETER 1 "diagonal.diameter" Number(One), 0.0..=5.0, 0.0, "share of the diameter in the diagonal pitch";
    BACK_STEP 1 "back.step" Number(Mm), 0.0..=50.0, 1.0, "step to which row distances are rounded up";
    CLOSE_ROWS 1 "back.close" Choice(&["a finding", "the modified plate percentage", "the zig-zag net section with s^2/4g"]), 0.0..=2.0, 0.0, "what follows when rows are closer than prescribed";
    MARGIN_LEAST 1 "margin.least.factor" Number(One), 0.0..=10.0, 0.0, "least margin in diameters (0: no rule)";
    MARGIN_LEAST_ADD 1 "margin.least.add" Number(Mm), 0.0..=50.0, 0.0, "what is added to it";
    MARGIN_GREATEST 1 "margin.greatest.factor" Number(One), 0.0..=20.0, 0.0, "greatest margin in diameters (0: no rule)";
    MARGIN_THICKNESS 1 "margin.greatest.thickness" Number(One), 0.0..=100.0, 0.0, "greatest margin in plate thicknesses (0: no rule)";
    MARGIN_LIMIT 1 "margin.greatest.limit" Number(Mm), 0.0..=1000.0, 0.0, "greatest margin whatever the diameter (0: no rule)";
    MARGIN_STEP 1 "margin.step" Number(Mm), 0.0..=50.0, 1.0, "step to which margins are rounded up";
    STRAP_RULE 1 "strap.rule" Choice(&["share of the plate", "table by thickness"]), 0.0..=1.0, 0.0, "how the least strap follows from the plate";
    STRAP_SINGLE 1 "strap.single" Number(One), 0.0..=3.0, 0.0, "single strap in plate thicknesses";
    STRAP_SINGLE_ADD 1 "strap.single.add" Number(Mm), 0.0..=20.0, 0.0, "what is added to a single strap";
    STRAP_EQUAL 1 "strap.equal" Number(One), 0.0..=3.0, 0.0, "each of two equal straps in plate thicknesses";
    STRAP_WIDE 1 "strap.wide" Number(One), 0.0..=3.0, 0.0, "wide strap of two in plate thicknesses";
    STRAP_NARROW 1 "strap.narrow" Number(One), 0.0..=3.0, 0.0, "narrow strap of two in plate thicknesses";
    STRAP_OMITTED 1 "strap.omitted" Choice(&["never", "single and equal straps", "all straps"]), 0.0..=2.0, 0.0, "whether straps are thickened by (p - k1 d)/(p - kb d) where outer rivets are left out";
    STRAP_LEAST 1 "strap.least" Number(Mm), 0.0..=50.0, 0.0, "least strap whatever the plate (0: no rule)";
    STRAP_STEP 1 "strap.step" Number(Mm), 0.0..=20.0, 1.0, "step of stock thicknesses for straps";
    STRAP_TABLE_PLATE 20 "strap.table.plate" Number(Mm), 0.0..=200.0, 0.0, "plate thickness of a line of the strap table (0 ends it)";
    STRAP_TABLE_STRAP 20 "strap.table.strap" Number(Mm), 0.0..=200.0, 0.0, "least strap for plates of the thickness of the same line";
    PLATE_LEAST 1 "plate.least" Number(Mm), 0.0..=50.0, 0.0, "least plate (0: no rule)";
    PRESSURE_FORM 1 "pressure.form" Choice(&["no formula", "inside diameter", "thirty-seconds and tons", "radius and factor", "mean diameter"]), 0.0..=4.0, 0.0, "formula of the working pressure of a shell";
    PRESSURE_ALLOWANCE 1 "pressure.allowance" Number(Mm), 0.0..=20.0, 0.0, "what the formula of the pressure takes off the plate";
    PRESSURE_ALLOWANCE_GIVEN 1 "pressure.allowance.given" Choice(&["comes on top of it", "takes its place"]), 0.0..=1.0, 0.0, "what a corrosion allowance that is given does to it";
    PRESSURE_OUTSIDE 1 "pressure.outside" Number(One), 0.0..=10.0, 0.0, "plate in inside radii above which the outside radius counts (0: never)";
    PRESSURE_LAP 4 "pressure.constant.lap" Number(One), 0.0..=20.0, 0.0, "C of the formula in thirty-seconds and tons, lap, by rows (0: not in the book)";
    PRESSURE_SINGLE 1 "pressure.constant.single" Number(One), 0.0..=20.0, 0.0, "C of the same, single strap (0: not in the book)";
    PRESSURE_DOUBLE 1 "pressure.constant.double" Number(One), 0.0..=20.0, 0.0, "C of the same, double strap (0: not in the book)";
    SAFETY_LAP 1 "safety.lap" Number(One), 0.0..=20.0, 0.0, "factor of safety, lap (0: none given)";
    SAFETY_SINGLE 1 "safety.single" Number(One), 0.0..=20.0, 0.0, "factor of safety, single strap (0: none given)";
    SAFETY_DOUBLE 1 "safety.double" Number(One), 0.0..=20.0, 0.0, "factor of safety, double strap (0: none given)";
    SAFETY_DOUBLE_UNEQUAL 1 "safety.double.unequal" Number(One), 0.0..=20.0, 0.0, "factor of safety, two rows under double straps of which one takes one row (0: as other double straps)";
    SAFETY_HAND_ADD 1 "safety.hand.add" Number(One), 0.0..=5.0, 0.0, "what riveting by hand adds to the factor";
    SAFETY_PUNCHED_ADD 1 "safety.punched.add" Number(One), 0.0..=5.0, 0.0, "what punched holes add to the factor";
    SAFETY_REAMED_ADD 1 "safety.reamed.add" Number(One), 0.0..=5.0, 0.0, "what punched and reamed holes add to the factor";
    SAFETY_EXISTING 1 "safety.existing" Number(One), 0.0..=20.0, 0.0, "least factor of safety of a boiler in service (0: no rule)";
    SAFETY_SECOND_LAP 1 "safety.second_hand.lap" Number(One), 0.0..=20.0, 0.0, "least factor of safety second-hand, lap (0: no rule)";
    SAFETY_SECOND_BUTT 1 "safety.second_hand.butt" Number(One), 0.0..=20.0, 0.0, "least factor of safety second-hand, butt (0: no rule)";
    SAFETY_LONG_LAP 1 "safety.long_lap" Number(One), 0.0..=20.0, 0.0, "least factor of safety of a horizontal return tubular boiler with a long continuous lap (0: no rule)";
    SAFETY_LONG_LAP_ABOVE 1 "safety.long_lap.above" Number(Mm), 0.0..=20000.0, 0.0, "length above which a continuous lap is long";
    SAFETY_FIRE_LAP 1 "safety.fire_lap" Number(One), 0.0..=20.0, 0.0, "least factor of safety of a lap exposed to fire (0: no rule)";
    SAFETY_WEIGHT 1 "safety.weight" Number(One), 0.0..=20.0, 0.0, "least factor of safety where the boiler's weight pulls on the seam (0: no rule)";
    SAFETY_AGE_ADD 1 "safety.age.add" Number(One), 0.0..=5.0, 0.0, "what passing the age limit adds to the factor";
    SAFETY_AGE_TESTED 1 "safety.age.tested" Number(One), 0.0..=20.0, 0.0, "factor that need not be passed for age after inspection and test (0: no rule)";
    SHELL_DIAMETER 4 "shell.least.diameter" Number(Mm), 0.0..=100000.0, 0.0, "inside diameter of a line of the table of least shell plates (0 ends it)";
    SHELL_PLATE 4 "shell.least.plate" Number(Mm), 0.0..=50.0, 0.0, "least shell plate up to the diameter of the same line";
    SHELL_ABOVE 1 "shell.least.above" Number(Mm), 0.0..=50.0, 0.0, "least shell plate beyond the table (0: no rule)";
    LAP_DIAMETER 1 "lap.diameter" Number(Mm), 0.0..=20000.0, 0.0, "greatest inside diameter with a lap along the shell (0: no rule)";
    LAP_PRESSURE 1 "lap.pressure" Number(Mpa), 0.0..=100.0, 0.0, "greatest working pressure with a lap along the shell (0: no rule)";
    LAP_PRODUCT 1 "lap.product" Number(One), 0.0..=100000.0, 0.0, "greatest working pressure times inside diameter with a lap along the shell, MPa mm (0: no rule)";
    LAP_SECOND_PRESSURE 1 "lap.second_hand.pressure" Number(Mpa), 0.0..=100.0, 0.0, "greatest working pressure of a second-hand tubular boiler with a lap (0: no rule)";
    LAP_WIDE_ABOVE 1 "lap.wide.above" Number(Mm), 0.0..=20000.0, 0.0, "inside diameter above which a tubular boiler with a lap needs inspection stripped down";
    LAP_WIDE_PRESSURE 1 "lap.wide.pressure" Number(Mpa), 0.0..=100.0, 0.0, "greatest working pressure without that inspection (0: no rule)";
    GIRTH_END 1 "girth.end" Number(One), 0.0..=1.0, 0.0, "least efficiency of a girth seam at an end plate (0: no rule)";
    GIRTH_MIDDLE 1 "girth.middle" Number(One), 0.0..=1.0, 0.0, "least efficiency of a girth seam between rings (0: no rule)";
    GIRTH_SHARE_END 1 "girth.share.end" Number(One), 0.0..=1.0, 0.0, "least efficiency of a girth seam at an end plate over that of the longitudinal seam (0: no rule)";
    GIRTH_SHARE_MIDDLE 1 "girth.share.middle" Number(One), 0.0..=1.0, 0.0, "the same between rings (0: no rule)";
    GIRTH_SHARE_STAYED 1 "girth.share.stayed" Number(One), 0.0..=1.0, 0.0, "the same where tubes or through stays carry the heads (0: as without)";
    GIRTH_DOUBLE_END 1 "girth.double.end" Number(Mm), 0.0..=100.0, 0.0, "plate above which a girth seam at an end plate is double riveted (0: no rule)";
    GIRTH_DOUBLE_MIDDLE 1 "girth.double.middle" Number(Mm), 0.0..=100.0, 0.0, "plate above which a girth seam between rings is double riveted (0: no rule)";
    GIRTH_TREBLE_MIDDLE 1 "girth.treble.middle" Number(Mm), 0.0..=100.0, 0.0, "plate from which a girth seam between rings is treble riveted (0: no rule)";
    SEAMS_STAGGERED 1 "seams.staggered" Switch, 0.0..=1.0, 0.0, "whether longitudinal seams of neighbouring rings must not fall in line";
    TEST_FACTOR 1 "test.factor" Number(One), 0.0..=5.0, 0.0, "hydrostatic test over working pressure (0: no rule)";
    EFFICIENCY_CAP 1 "efficiency.cap" Number(One), 0.1..=1.0, 1.0, "greatest efficiency credited";
    GRIP_GREATEST 1 "grip.greatest" Number(One), 0.0..=20.0, 0.0, "greatest grip in rivet diameters (0: no rule)";
    ROOM 1 "room" Number(One), 1.0..=100.0, 1.5, "rivets over plate above which the joint is said to have room";
}

/// The row of the table for an entry, with its line number where it is one of a list.
#[must_use]
pub fn info(entry: Entry) -> EntryInfo {
    let mut found = FIRST;
    for (first, len, row) in GROUPS {
        let from = first.index();
        if entry.index() >= from && entry.index().wrapping_sub(from) < usize::from(*len) {
            found = *row;
            if *len > 1 {
                found.line = u8::try_from(entry.index().wrapping_sub(from)).unwrap_or(0).wrapping_add(1);
            }
        }
    }
    found
}

/// The keys of the groups. A table of its own: firmware that names an entry does not carry its words and its ways.
static KEYS: [&str; GROUPS.len()] = keys();

#[expect(clippy::indexing_slicing, clippy::arithmetic_side_effects, reason = "evaluated by the compiler")]
const fn keys() -> [&'static str; GROUPS.len()] {
    let mut keys = [""; GROUPS.len()];
    let mut g = 0;
    while g < keys.len() {
        keys[g] = GROUPS[g].2.key;
        g += 1;
    }
    keys
}

/// Most neutral values that differ. The compiler stops where there are more.
const MOST_NEUTRAL: usize = 6;

/// The neutral values that differ, and which of them each group has.
static NEUTRAL: ([f64; MOST_NEUTRAL], [u8; GROUPS.len()]) = neutrals();

#[expect(clippy::indexing_slicing, clippy::arithmetic_side_effects, reason = "evaluated by the compiler")]
const fn neutrals() -> ([f64; MOST_NEUTRAL], [u8; GROUPS.len()]) {
    let mut distinct = [0.0; MOST_NEUTRAL];
    let mut which = [0_u8; GROUPS.len()];
    let (mut g, mut n) = (0, 1);
    while g < which.len() {
        let value = GROUPS[g].2.default;
        let mut at = 0;
        while at < n && distinct[at] != value {
            at += 1;
        }
        if at == n {
            distinct[n] = value;
            n += 1;
        }
        which[g] = at as u8;
        g += 1;
    }
    (distinct, which)
}

/// The neutral value of an entry.
pub(crate) fn neutral(entry: Entry) -> f64 {
    let (distinct, which) = &NEUTRAL;
    let at = which.get(place(entry).0).copied().unwrap_or(0);
    distinct.get(usize::from(at)).copied().unwrap_or(0.0)
}

/// The group of an entry, and its line there from 0.
fn place(entry: Entry) -> (usize, usize) {
    let mut before = entry.index();
    for (group, len) in LENGTHS.iter().enumerate() {
        if before < usize::from(*len) {
            return (group, before);
        }
        before = before.wrapping_sub(usize::from(*len));
    }
    (0, 0)
}

/// The key of an entry: that of the list for one of its lines.
///
/// ```
/// use seamwright::rules::{Entry, key};
/// assert_eq!(key(Entry::DOUBLE_SHEAR), "shear.double");
/// ```
#[must_use]
pub fn key(entry: Entry) -> &'static str {
    KEYS.get(place(entry).0).copied().unwrap_or("")
}

/// What a value of an entry is held to.
#[derive(Clone, Copy)]
pub(super) struct Range {
    pub(super) lo: f64,
    pub(super) hi: f64,
    /// A switch or a choice.
    pub(super) whole: bool,
}

impl Range {
    const fn of(row: &EntryInfo) -> Self {
        Range { lo: row.lo, hi: row.hi, whole: !matches!(row.kind, Number(_)) }
    }

    const fn is(&self, other: &Range) -> bool {
        self.lo == other.lo && self.hi == other.hi && self.whole == other.whole
    }
}

/// Most ranges that differ. The compiler stops where there are more.
const MOST_RANGES: usize = 28;

/// The ranges that differ, and which of them each entry has. A table of its own, a tenth of the other one: firmware
/// that holds a book to its ranges does not carry the keys and words of all entries.
#[expect(clippy::indexing_slicing, clippy::arithmetic_side_effects, reason = "evaluated by the compiler")]
const fn ranges() -> ([Range; MOST_RANGES], [u8; ENTRIES]) {
    let mut distinct = [Range { lo: 0.0, hi: 0.0, whole: false }; MOST_RANGES];
    let mut which = [0_u8; ENTRIES];
    let (mut g, mut n) = (0, 0);
    while g < GROUPS.len() {
        let (first, len, row) = &GROUPS[g];
        let range = Range::of(row);
        let mut at = 0;
        while at < n && !distinct[at].is(&range) {
            at += 1;
        }
        if at == n {
            distinct[n] = range;
            n += 1;
        }
        let mut line = 0;
        while line < *len as usize {
            which[first.index() + line] = at as u8;
            line += 1;
        }
        g += 1;
    }
    (distinct, which)
}

static RANGES: ([Range; MOST_RANGES], [u8; ENTRIES]) = ranges();

/// The range of an entry.
#[inline]
pub(super) fn range(entry: Entry) -> &'static Range {
    let (distinct, which) = &RANGES;
    let at = which.get(entry.index()).copied().unwrap_or(0);
    distinct.get(usize::from(at)).unwrap_or(&Range { lo: 0.0, hi: 0.0, whole: false })
}

/// The line of an entry in its list, from 1; 0 for a single value.
pub(super) fn line(entry: Entry) -> u8 {
    let (group, line) = place(entry);
    let single = LENGTHS.get(group).is_none_or(|len| *len == 1);
    if single { 0 } else { u8::try_from(line).unwrap_or(0).wrapping_add(1) }
}

const FIRST: EntryInfo = match GROUPS {
    [(_, _, row), ..] => *row,
    [] => EntryInfo { key: "", line: 0, kind: Switch, lo: 0.0, hi: 0.0, default: 0.0, what: "" },
};

/// Finds an entry by its key, as in `shear.double` or `series.hole.3`.
///
/// ```
/// use seamwright::rules::{find, Entry};
/// assert_eq!(find("shear.double"), Some(Entry::DOUBLE_SHEAR));
/// assert_eq!(find("series.hole.3"), Some(Entry::SERIES_HOLE.at(2)));
/// assert_eq!(find("series.hole.99"), None);
/// ```
#[must_use]
pub fn find(key: &str) -> Option<Entry> {
    for (first, len, row) in GROUPS {
        if let Some(rest) = key.strip_prefix(row.key) {
            if rest.is_empty() {
                if *len == 1 {
                    return Some(*first);
                }
            } else if let Some(line) = rest.strip_prefix('.').and_then(whole)
                && line >= 1
                && line <= usize::from(*len)
                && *len > 1
            {
                return Some(first.at(line.wrapping_sub(1)));
            }
        }
    }
    None
}

/// A whole number of at most two digits.
fn whole(digits: &str) -> Option<usize> {
    if digits.is_empty() || digits.len() > 2 {
        return None;
    }
    digits.bytes().try_fold(0_usize, |n, b| {
        b.is_ascii_digit().then(|| n.wrapping_mul(10).wrapping_add(usize::from(b.wrapping_sub(b'0'))))
    })
}

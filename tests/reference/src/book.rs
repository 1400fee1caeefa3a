//! Three rule books as plain data, mm and MPa. READ, MEM and DER: seen in a text of the source; from memory, not
//! seen; derived.

use crate::model::{Convention, Diameter};

/// One inch, mm.
pub const INCH: f64 = 25.4;

/// One pound per square inch, MPa (lbf 4.4482216152605 N, inch 25.4 mm).
pub const PSI: f64 = 4.448_221_615_260_5 / (25.4 * 25.4);

/// How far apart rows must be.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum BackRule {
    /// Indian Boiler Regulations, Reg. 184 (a), (b), (c), Eq. 12 to 15: READ.
    Reg184,
    /// Early US boiler code, edition of 1918, Par. 182: MEM.
    Us1918,
    /// So many hole diameters, ratio (structural practice, 2.5 d: READ).
    Diameters(f64),
}

/// How thick straps must be.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum StrapRule {
    /// Parts of the plate's thickness.
    Factors {
        /// Single strap over plate, ratio.
        single: f64,
        /// Each of two straps of equal width over plate, ratio.
        equal: f64,
        /// Wide and narrow of two straps of unequal width over plate, ratio.
        unequal: [f64; 2],
        /// Whether (p - k1 d)/(p - kb d) multiplies the single strap and the equal ones.
        omitted: bool,
    },
    /// Pairs of plate thickness and least strap thickness, mm. A plate between two entries takes the upper one.
    Table(&'static [(f64, f64)]),
}

/// A rule book.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Book {
    /// Name.
    pub name: &'static str,
    /// `a` of hole = a sqrt(t) + b, mm^(1/2).
    pub hole_a: f64,
    /// `b` of hole = a sqrt(t) + b, mm.
    pub hole_b: f64,
    /// Strictly below this thickness the hole comes from shear = bearing, mm.
    pub thin_below: f64,
    /// Rivet and hole of the standard series, mm. Empty where holes come from a table.
    pub series: &'static [(f64, f64)],
    /// Plate thickness and driven rivet, mm. Empty where holes come from the formula. A plate between two entries
    /// takes the upper one.
    pub hole_table: &'static [(f64, f64)],
    /// Hole less rivet where holes come from the table, mm.
    pub table_clearance: f64,
    /// Double over single shear, ratio.
    pub double: f64,
    /// One plane of a double-shear rivet alone over single shear, ratio.
    pub one_plane: f64,
    /// `factor` of the least pitch factor d + add in the densest row, ratio.
    pub floor_factor: f64,
    /// `add` of the least pitch, mm.
    pub floor_add: f64,
    /// Whether the book limits the pitch from above.
    pub has_cap: bool,
    /// `K` of the greatest pitch C t + K, mm.
    pub cap_add: f64,
    /// C for 1, 2, ... rivets per pitch in a lap, ratio.
    pub cap_lap: [Option<f64>; 5],
    /// C for 1, 2, ... rivets per pitch with one strap, ratio.
    pub cap_single: [Option<f64>; 5],
    /// C for 1, 2, ... rivets per pitch with two straps, ratio.
    pub cap_double: [Option<f64>; 5],
    /// Row spacing.
    pub back: BackRule,
    /// Margin over hole, ratio.
    pub margin_factor: f64,
    /// Strap thickness.
    pub strap: StrapRule,
    /// No strap thinner than this, mm.
    pub strap_least: f64,
    /// Step of pitches, margins, row distances and strap thicknesses, mm.
    pub step: f64,
}

impl Book {
    /// The book's way of counting strength: the hole everywhere.
    pub fn convention(&self) -> Convention {
        Convention {
            double: self.double,
            one_plane: self.one_plane,
            tear: Diameter::Hole,
            tear_allowance: 0.0,
            shear: Diameter::Hole,
            bearing: Diameter::Hole,
        }
    }
}

/// Boiler rivets and holes, IS 1928:1961, mm. Rivets READ; holes 19 to 23 and 28.5 to 34.5 READ, the rest MEM.
pub const BOILER_HOLES: &[(f64, f64)] = &[
    (12.0, 13.0),
    (14.0, 15.0),
    (16.0, 17.0),
    (18.0, 19.0),
    (20.0, 21.0),
    (22.0, 23.0),
    (24.0, 25.0),
    (27.0, 28.5),
    (30.0, 31.5),
    (33.0, 34.5),
    (36.0, 37.5),
    (39.0, 41.0),
    (42.0, 44.0),
    (48.0, 50.0),
];

/// General rivets and holes, IS 1929:1961, mm. Rivets READ; holes 13.5, 17.5 to 25.5 and 29 READ, the rest MEM.
pub const GENERAL_HOLES: &[(f64, f64)] = &[
    (12.0, 13.5),
    (14.0, 15.5),
    (16.0, 17.5),
    (18.0, 19.5),
    (20.0, 21.5),
    (22.0, 23.5),
    (24.0, 25.5),
    (27.0, 29.0),
    (30.0, 32.0),
    (33.0, 35.0),
    (36.0, 38.0),
    (39.0, 41.0),
    (42.0, 44.0),
    (48.0, 50.0),
];

/// Plate thickness and driven rivet where the hole is unknown, US state rules, mm (inches x 25.4): READ.
pub const US_DRIVEN: &[(f64, f64)] = &[
    (1.0 / 4.0 * INCH, 11.0 / 16.0 * INCH),
    (9.0 / 32.0 * INCH, 11.0 / 16.0 * INCH),
    (5.0 / 16.0 * INCH, 3.0 / 4.0 * INCH),
    (11.0 / 32.0 * INCH, 3.0 / 4.0 * INCH),
    (3.0 / 8.0 * INCH, 13.0 / 16.0 * INCH),
    (13.0 / 32.0 * INCH, 13.0 / 16.0 * INCH),
    (7.0 / 16.0 * INCH, 15.0 / 16.0 * INCH),
    (15.0 / 32.0 * INCH, 15.0 / 16.0 * INCH),
    (1.0 / 2.0 * INCH, 15.0 / 16.0 * INCH),
    (9.0 / 16.0 * INCH, 17.0 / 16.0 * INCH),
    (5.0 / 8.0 * INCH, 17.0 / 16.0 * INCH),
];

/// Plate and least butt strap, Par. 19, Table 1, mm (inches x 25.4): MEM.
pub const US_STRAPS: &[(f64, f64)] = &[
    (1.0 / 4.0 * INCH, 1.0 / 4.0 * INCH),
    (9.0 / 32.0 * INCH, 1.0 / 4.0 * INCH),
    (5.0 / 16.0 * INCH, 1.0 / 4.0 * INCH),
    (11.0 / 32.0 * INCH, 1.0 / 4.0 * INCH),
    (3.0 / 8.0 * INCH, 5.0 / 16.0 * INCH),
    (13.0 / 32.0 * INCH, 5.0 / 16.0 * INCH),
    (7.0 / 16.0 * INCH, 3.0 / 8.0 * INCH),
    (15.0 / 32.0 * INCH, 3.0 / 8.0 * INCH),
    (1.0 / 2.0 * INCH, 7.0 / 16.0 * INCH),
    (17.0 / 32.0 * INCH, 7.0 / 16.0 * INCH),
    (9.0 / 16.0 * INCH, 7.0 / 16.0 * INCH),
    (5.0 / 8.0 * INCH, 1.0 / 2.0 * INCH),
    (3.0 / 4.0 * INCH, 1.0 / 2.0 * INCH),
    (7.0 / 8.0 * INCH, 5.0 / 8.0 * INCH),
    (INCH, 11.0 / 16.0 * INCH),
    (9.0 / 8.0 * INCH, 3.0 / 4.0 * INCH),
    (5.0 / 4.0 * INCH, 7.0 / 8.0 * INCH),
];

/// Ultimate shear of steel rivets in single shear, US state rules, 44,000 psi, MPa: READ.
pub const US_STEEL_SHEAR: f64 = 44_000.0 * PSI;
/// Ultimate shear of iron rivets in single shear, US state rules, 38,000 psi, MPa: READ.
pub const US_IRON_SHEAR: f64 = 38_000.0 * PSI;
/// Crushing of mild steel, US state rules, 95,000 psi, MPa: READ.
pub const US_CRUSHING: f64 = 95_000.0 * PSI;
/// Tensile strength of steel plate where unknown, US state rules, 55,000 psi, MPa: READ.
pub const US_STEEL_TENSION: f64 = 55_000.0 * PSI;
/// Tensile strength of wrought iron plate where unknown, US state rules, 45,000 psi, MPa: READ.
pub const US_IRON_TENSION: f64 = 45_000.0 * PSI;

/// Indian Boiler Regulations 1950, with the textbooks' Unwin rule and standard holes.
pub const INDIAN_BOILER: Book = Book {
    name: "Indian Boiler Regulations 1950",
    // Unwin, d = 6 sqrt t: READ in the worked examples.
    hole_a: 6.0,
    hole_b: 0.0,
    thin_below: 8.0,
    series: BOILER_HOLES,
    hole_table: &[],
    table_clearance: 0.0,
    // Reg. 177, Eq. 3: READ. One plane alone is half of it.
    double: 1.875,
    one_plane: 0.9375,
    // 2 d: READ in worked examples.
    floor_factor: 2.0,
    floor_add: 0.0,
    has_cap: true,
    // C t + 41.28 mm. Lap 1 to 4 and double 1, 2, 3, 5 READ in worked examples; single strap and double 4 MEM.
    // Lap 4 is doubtful (4.14 by proportion).
    cap_add: 41.28,
    cap_lap: [Some(1.31), Some(2.62), Some(3.47), Some(4.17), None],
    cap_single: [Some(1.53), Some(3.06), Some(4.05), None, None],
    cap_double: [Some(1.75), Some(3.50), Some(4.63), Some(5.52), Some(6.00)],
    back: BackRule::Reg184,
    // Reg. 184(e): READ.
    margin_factor: 1.5,
    // Single MEM; double READ in worked examples.
    strap: StrapRule::Factors { single: 1.125, equal: 0.625, unequal: [0.75, 0.625], omitted: true },
    // 10 mm: MEM.
    strap_least: 10.0,
    step: 1.0,
};

/// General metric practice: structural figures of the textbooks, no cap on the pitch.
pub const GENERAL_METRIC: Book = Book {
    name: "general metric practice",
    hole_a: 6.0,
    hole_b: 0.0,
    thin_below: 8.0,
    series: GENERAL_HOLES,
    hole_table: &[],
    table_clearance: 0.0,
    // Double shear 1.75, pitch 3 d + 5, rows 2.5 d, margin 1.5 d, straps 0.75 t each, single cover 1.25 t: READ.
    double: 1.75,
    one_plane: 0.875,
    floor_factor: 3.0,
    floor_add: 5.0,
    has_cap: false,
    cap_add: 0.0,
    cap_lap: [None; 5],
    cap_single: [None; 5],
    cap_double: [None; 5],
    back: BackRule::Diameters(2.5),
    margin_factor: 1.5,
    strap: StrapRule::Factors { single: 1.25, equal: 0.75, unequal: [0.75, 0.75], omitted: false },
    strap_least: 0.0,
    step: 1.0,
};

/// Early US boiler code, edition of 1918. No pitch limits are known for it: floor and cap are absent.
pub const US_BOILER_1918: Book = Book {
    name: "early US boiler code 1918",
    hole_a: 0.0,
    hole_b: 0.0,
    thin_below: 0.0,
    series: &[],
    hole_table: US_DRIVEN,
    // Hole at most rivet + 1/16 in: READ.
    table_clearance: INCH / 16.0,
    // 44,000 and 88,000 psi: READ. One plane of a double-shear rivet is a single shear.
    double: 2.0,
    one_plane: 1.0,
    floor_factor: 0.0,
    floor_add: 0.0,
    has_cap: false,
    cap_add: 0.0,
    cap_lap: [None; 5],
    cap_single: [None; 5],
    cap_double: [None; 5],
    back: BackRule::Us1918,
    // 1.5 d to 1.75 d: MEM; the lower bound stands here.
    margin_factor: 1.5,
    strap: StrapRule::Table(US_STRAPS),
    strap_least: 0.0,
    step: INCH / 16.0,
};

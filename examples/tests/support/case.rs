//! One joint, told twice: to the program as flags, to the independent model as numbers.

use seamwright_reference::book::{BOILER_HOLES, INCH, PSI};
use seamwright_reference::{Arrangement, Book, INDIAN_BOILER, US_BOILER_1918};

/// Textbook practice in the terms of the independent model: the Indian book's figures with double shear 2 and no least
/// strap.
const METRIC: Book =
    Book { name: "metric", series: BOILER_HOLES, double: 2.0, one_plane: 1.0, strap_least: 0.0, ..INDIAN_BOILER };

/// The US code of 1918, whose floor of 2 d is practice.
const US: Book = Book { floor_factor: 2.0, ..US_BOILER_1918 };

#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Shape {
    Lap,
    Single,
    Equal,
    Unequal,
}

#[derive(Clone, Debug)]
pub struct Case {
    pub check: bool,
    pub inch: bool,
    pub id: &'static str,
    pub book: Book,
    pub set: Vec<String>,
    pub shape: Shape,
    /// Rivets and planes, outside first.
    pub rows: Vec<(u32, u32)>,
    /// How the rows are said.
    pub row_flags: Vec<String>,
    pub arrangement: Arrangement,
    /// Lengths in mm.
    pub plate: f64,
    pub other_plate: Option<f64>,
    pub hole: Option<f64>,
    pub rivet: Option<f64>,
    pub pitch: Option<f64>,
    pub wide: Option<f64>,
    pub narrow: Option<f64>,
    pub margin: Option<f64>,
    pub gaps: Vec<f64>,
    /// Stresses in MPa.
    pub tension: f64,
    pub shear: f64,
    pub bearing: Option<f64>,
    pub other_tension: Option<f64>,
    pub other_bearing: Option<f64>,
    pub factor: Option<f64>,
    /// Stresses as the book assumes them: said by this flag instead of one by one.
    pub assume: Option<&'static str>,
}

impl Case {
    fn new(id: &'static str, shape: Shape, rows: u32, plate: f64) -> Case {
        let list = match (shape, rows) {
            (Shape::Unequal, 2) => vec![(1, 1), (2, 2)],
            (Shape::Unequal, 3) => vec![(1, 1), (2, 2), (2, 2)],
            (Shape::Unequal, 4) => vec![(1, 1), (2, 1), (4, 2), (4, 2)],
            (Shape::Equal, n) => vec![(1, 2); n as usize],
            (_, n) => vec![(1, 1); n as usize],
        };
        Case {
            check: false,
            inch: false,
            id,
            book: match id {
                "metric" => METRIC,
                "indian" => INDIAN_BOILER,
                _ => US,
            },
            set: Vec::new(),
            shape,
            rows: list,
            row_flags: vec!["--rows".to_string(), rows.to_string()],
            arrangement: Arrangement::Zigzag,
            plate,
            other_plate: None,
            hole: None,
            rivet: None,
            pitch: None,
            wide: None,
            narrow: None,
            margin: None,
            gaps: Vec::new(),
            tension: 80.0,
            shear: 60.0,
            bearing: Some(120.0),
            other_tension: None,
            other_bearing: None,
            factor: None,
            assume: None,
        }
    }

    /// The same with another number of rows.
    pub fn rows(mut self, rows: u32) -> Case {
        let fresh = Case::new(self.id, self.shape, rows, self.plate);
        self.rows = fresh.rows;
        self.row_flags = fresh.row_flags;
        self
    }

    /// The same as an arbitrary list of rows.
    pub fn row_list(mut self, rows: &[(u32, u32)]) -> Case {
        self.rows = rows.to_vec();
        let list: Vec<String> = rows.iter().map(|(n, z)| format!("{n}x{z}")).collect();
        self.row_flags = vec!["--row-list".to_string(), list.join(",")];
        self
    }

    /// The same with every other rivet of the outer row left out.
    pub fn omit(mut self) -> Case {
        let last = self.rows.len() - 1;
        for (i, row) in self.rows.iter_mut().enumerate() {
            if i > 0 && !(self.shape == Shape::Lap && i == last) {
                row.0 = 2;
            }
        }
        self.row_flags.push("--omit-alternate".to_string());
        self
    }

    /// The same under a changed entry, told to the model by `change`.
    pub fn set(mut self, entry: &str, change: impl FnOnce(&mut Book)) -> Case {
        self.set.push(entry.to_string());
        change(&mut self.book);
        self
    }

    /// The flags. Numbers are written with all their digits.
    pub fn args(&self) -> Vec<String> {
        let mut out = vec![if self.check { "check" } else { "size" }.to_string()];
        let mut say = |flag: &str, value: String| out.extend([flag.to_string(), value]);
        say("--book", self.id.to_string());
        say(
            "--form",
            match self.shape {
                Shape::Lap => "lap",
                Shape::Single => "single-strap",
                Shape::Equal => "double-strap",
                Shape::Unequal => "unequal-straps",
            }
            .to_string(),
        );
        let length = |mm: f64| {
            if self.inch {
                format!("{} in", (mm / INCH * 1e12).round() / 1e12)
            } else {
                format!("{} mm", (mm * 1e10).round() / 1e10)
            }
        };
        let stress = |mpa: f64| {
            if self.inch {
                format!("{} psi", (mpa / PSI * 1e8).round() / 1e8)
            } else {
                format!("{} MPa", (mpa * 1e10).round() / 1e10)
            }
        };
        for (flag, mm) in [
            ("--plate", Some(self.plate)),
            ("--other-plate", self.other_plate),
            ("--hole", self.hole),
            ("--rivet", self.rivet),
            ("--pitch", self.pitch),
            ("--wide-strap", self.wide),
            ("--narrow-strap", self.narrow),
            ("--margin", self.margin),
        ] {
            if let Some(mm) = mm {
                say(flag, length(mm));
            }
        }
        for gap in &self.gaps {
            say("--gap", length(*gap));
        }
        match self.assume {
            Some(metal) => say("--assume", metal.to_string()),
            None => {
                say("--tension", stress(self.tension));
                say("--shear", stress(self.shear));
                if let Some(bearing) = self.bearing {
                    say("--bearing", stress(bearing));
                }
            }
        }
        if let Some(tension) = self.other_tension {
            say("--other-tension", stress(tension));
        }
        if let Some(bearing) = self.other_bearing {
            say("--other-bearing", stress(bearing));
        }
        if let Some(factor) = self.factor {
            say("--safety-factor", factor.to_string());
        }
        for entry in &self.set {
            say("--set", entry.clone());
        }
        if self.inch {
            say("--units", "inch".to_string());
        }
        out.extend(self.row_flags.iter().cloned());
        if self.arrangement == Arrangement::Chain {
            out.push("--chain".to_string());
        }
        out
    }
}

/// The joints that flags are varied on.
pub fn bases() -> Vec<Case> {
    let metric = Case::new("metric", Shape::Lap, 2, 13.0);
    let indian =
        Case { tension: 92.0, shear: 71.0, bearing: Some(136.0), ..Case::new("indian", Shape::Unequal, 3, 16.0) };
    let omitted = Case::new("indian", Shape::Equal, 3, 20.0).omit();
    let single = Case { bearing: None, ..Case::new("indian", Shape::Single, 2, 12.0) };
    let us = |shape, rows, t: f64| Case {
        inch: true,
        tension: 55_000.0 * PSI,
        shear: 44_000.0 * PSI,
        bearing: Some(95_000.0 * PSI),
        assume: Some("steel"),
        ..Case::new("us-code", shape, rows, t * INCH)
    };
    let stated = Case {
        check: true,
        hole: Some(21.0),
        rivet: Some(20.0),
        pitch: Some(80.0),
        wide: Some(10.0),
        narrow: Some(9.0),
        margin: Some(33.0),
        gaps: vec![44.0],
        ..Case::new("metric", Shape::Equal, 2, 12.0)
    };
    vec![metric, indian, omitted, single, us(Shape::Lap, 2, 0.3125), us(Shape::Unequal, 3, 0.375), stated]
}

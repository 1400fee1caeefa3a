//! Comparison: the same brief under several rule books, or several forms under one, side by side; and where and by
//! which clause the results part.
//!
//! A column is a brief and a book. Each is sized as [`size`] does it. Against the first column,
//! every other one is then read step by step, section by section, up to the first step that differs: the entry of the
//! rule book, both values, and both clauses. A routine that is run again takes the same steps, so nothing is stored.

mod trace;
mod write;

pub use trace::{Parting, Stage};

use crate::bounds::Field;
use crate::check::Analysis;
use crate::error::{Error, ErrorKind};
use crate::joint::Joint;
use crate::modes::Mode;
use crate::quantities::Pressure;
use crate::rating::{Shell, joint_pressure};
use crate::rules::RuleBook;
use crate::sizing::{Brief, Design, size};
use crate::step::Section;

/// The most columns of one comparison.
pub const MAX_COLUMNS: usize = 16;

/// One alternative.
#[derive(Clone, Copy, Debug)]
pub struct Column<'a> {
    /// What is sized.
    pub brief: Brief,
    /// By which book.
    pub book: &'a RuleBook<'a>,
    /// The shell whose working pressure is asked for.
    pub shell: Option<Shell>,
}

impl<'a> Column<'a> {
    /// A brief under a book.
    #[must_use]
    pub const fn new(brief: Brief, book: &'a RuleBook<'a>) -> Self {
        Column { brief, book, shell: None }
    }

    /// With a shell, whose working pressure is a result too.
    #[must_use]
    pub const fn shell(mut self, shell: Shell) -> Self {
        self.shell = Some(shell);
        self
    }
}

/// What a column comes to.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Figures {
    /// The joint.
    pub joint: Joint,
    /// Efficiency by the modes that the book counts.
    pub book_efficiency: f64,
    /// Efficiency over all modes.
    pub efficiency: f64,
    /// Efficiency credited.
    pub credited: f64,
    /// The governing mode.
    pub governing: Mode,
    /// Rules that are not met.
    pub open: usize,
    /// The working pressure, where a shell was given, or why there is none.
    pub pressure: Option<Result<Pressure, Error>>,
}

impl Figures {
    fn new(column: &Column<'_>) -> Result<Self, Error> {
        let rules = &column.book.rules;
        let Design { joint, analysis, .. } = size(&column.brief, rules)?;
        let pressure = |shell: &Shell| joint_pressure(&joint, column.brief.materials(), &analysis, shell, rules);
        let pressure = column.shell.as_ref().map(pressure);
        let Analysis { book_efficiency, efficiency, credited, governing, ref findings, .. } = analysis;
        Ok(Figures { joint, book_efficiency, efficiency, credited, governing, open: findings.open(), pressure })
    }
}

/// By what the columns are put in order. Columns without that figure come last, equals stay as given.
#[derive(Clone, Copy, PartialEq, Eq, Debug, Default)]
#[repr(u8)]
pub enum SortBy {
    /// As given.
    #[default]
    Given,
    /// Efficiency credited, the highest first.
    Credited,
    /// Efficiency over all modes, the highest first.
    Efficiency,
    /// Working pressure, the highest first.
    Pressure,
    /// Pitch, the largest first.
    Pitch,
    /// Hole, the smallest first.
    Hole,
    /// Rules that are not met, the fewest first.
    Open,
}

/// Columns side by side.
///
/// ```
/// use seamwright::comparison::{Column, Comparison, SortBy};
/// use seamwright::{joint::Form, materials::Materials, quantities::{Length, Stress}, rules::{INDIAN, METRIC, US_CODE}};
/// use seamwright::{sizing::Brief, step::Section, working::Style};
/// let steel = Materials::new(Stress::mpa(80.0), Stress::mpa(60.0)).bearing(Stress::mpa(120.0));
/// let brief = Brief::new(Form::double_strap(2)?, Length::mm(12.0), steel);
/// let columns = [&METRIC, &INDIAN, &US_CODE].map(|book| Column::new(brief, book));
/// let compared = Comparison::new(&columns)?;
/// // Metric practice takes 2 for double shear, the Indian regulations 1.875 (Reg. 177).
/// let parting = compared.parting(1, Section::Pitch).and_then(|p| p.steps[1]);
/// assert_eq!(parting.map(|step| step.value), Some(1.875));
/// let mut text = String::new();
/// compared.write(&mut text, Style::default(), SortBy::Credited).map_err(|_| columns.len()).unwrap();
/// assert!(text.contains("Reg. 177 Eq. (3)") && text.lines().all(|line| line.chars().count() <= 80));
/// assert!(Comparison::new(&[]).is_err());
/// # Ok::<(), seamwright::Error>(())
/// ```
#[derive(Clone, Debug)]
pub struct Comparison<'a> {
    columns: &'a [Column<'a>],
    figures: heapless::Vec<Result<Figures, Error>, MAX_COLUMNS>,
}

/// Sections in which parting is looked for: those in which sizing decides, and those in which the strength does.
pub const SECTIONS: &[Section] = &[
    Section::Given,
    Section::Hole,
    Section::Pitch,
    Section::Rows,
    Section::Straps,
    Section::Margin,
    Section::Rivets,
    Section::NetSections,
    Section::BookView,
    Section::Modes,
];

impl<'a> Comparison<'a> {
    /// Sizes all columns. One that cannot be sized keeps its error and is part of the comparison.
    ///
    /// # Errors
    /// No columns, or more than [`MAX_COLUMNS`].
    pub fn new(columns: &'a [Column<'a>]) -> Result<Self, Error> {
        let count = u32::try_from(columns.len()).map_or(f64::MAX, f64::from);
        if columns.is_empty() {
            return Err(Error::new(ErrorKind::TooSmall, Field::RuleEntry).value(count).limit(1.0));
        }
        if columns.len() > MAX_COLUMNS {
            return Err(Error::new(ErrorKind::TooLarge, Field::RuleEntry).value(count).limit(MAX_COLUMNS as f64));
        }
        let mut figures = heapless::Vec::new();
        for column in columns {
            // No more than fit, see above. (To collect them would keep a panic path on small processors.)
            let _ = figures.push(Figures::new(column));
        }
        Ok(Comparison { columns, figures })
    }

    /// The columns as given.
    #[must_use]
    pub const fn columns(&self) -> &'a [Column<'a>] {
        self.columns
    }

    /// What each column comes to, in the order given.
    pub fn figures(&self) -> &[Result<Figures, Error>] {
        &self.figures
    }

    /// Where a column (from 0, in the order given) parts from the first one in a section; `None` where it does not.
    #[must_use]
    pub fn parting(&self, column: usize, section: Section) -> Option<Parting> {
        trace::parting(self.columns.first()?, self.columns.get(column)?, section)
    }

    /// The columns in a reader's order, each by its place in the order given.
    #[must_use]
    pub fn sorted(&self, by: SortBy) -> heapless::Vec<usize, MAX_COLUMNS> {
        // The lesser goes first.
        let weight = |figures: &Result<Figures, Error>| -> f64 {
            let Ok(f) = figures else { return f64::INFINITY };
            match by {
                SortBy::Given => 0.0,
                SortBy::Credited => -f.credited,
                SortBy::Efficiency => -f.efficiency,
                SortBy::Pressure => match f.pressure {
                    Some(Ok(p)) => -p.to_mpa(),
                    _ => f64::INFINITY,
                },
                SortBy::Pitch => -f.joint.pitch().to_mm(),
                SortBy::Hole => f.joint.rows().first().map_or(f64::INFINITY, |row| row.hole().to_mm()),
                SortBy::Open => u32::try_from(f.open).map_or(f64::MAX, f64::from),
            }
        };
        let mut order: heapless::Vec<usize, MAX_COLUMNS> = heapless::Vec::new();
        for (at, figures) in self.figures.iter().enumerate() {
            let here = if by == SortBy::Given { 0.0 } else { weight(figures) };
            let mut moving = at;
            let mut placed = false;
            for slot in &mut order {
                placed |= self.figures.get(*slot).is_some_and(|f| by != SortBy::Given && here < weight(f));
                if placed {
                    core::mem::swap(slot, &mut moving);
                }
            }
            let _ = order.push(moving);
        }
        order
    }
}

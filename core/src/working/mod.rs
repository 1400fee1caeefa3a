//! The working: every step of a routine as it was computed, in symbols, in numbers, and its result.
//!
//! The routines of [`check`](mod@crate::check) and [`sizing`](crate::sizing) run in the recording context
//! [`Record`]: the numbers that are shown are the numbers that are computed, bit for bit. The working is complete or it
//! is refused: a buffer that is too small gives the size needed, a sink that fails gives its error.

mod doc;
mod group;
mod line;
mod memory;
mod pad;
mod paper;
mod rated;
mod small;
mod steps;
mod style;
mod table;
mod verdict;
mod wrap;

use core::fmt;

pub(crate) use doc::PLAIN;
pub use doc::{Doc, Piece};
pub use group::{write_group_check, write_group_size};
pub use line::{Reading, write_expression, write_symbol, write_value};
pub use pad::{Node, Noted, Op, Pad, Record, Sink, Step};
pub(crate) use paper::{Keep, Pager};
pub(crate) use rated::write_rating;
pub use rated::{write_rate, write_vessel};
pub use small::{size_as_written, write_check_small, write_size_small};
pub use steps::write_clause;
pub use style::{DIALECTS, Decimals, Dialect, Forces, Style, Units};
pub use table::Columns;
use verdict::Verdicts;
pub(crate) use verdict::{BY_BOOK, NOT_BY_BOOK, weakest_first};

use crate::check::{Analysis, check_with};
use crate::error::{Error, ErrorKind};
use crate::joint::Joint;
use crate::materials::Materials;
use crate::rules::RuleBook;
use crate::shop::{Order, ShopSheet, shop_sheet, shop_sheet_with};
use crate::sizing::{Brief, Design, size_with};
use crate::text::Slice;
use crate::{CAUTION, VERSION, bounds::Field};

/// Why there is no working.
#[derive(Clone, Copy, PartialEq, Debug)]
pub enum WorkingError {
    /// The routine itself could not compute.
    Routine(Error),
    /// The sink refused the text.
    Sink,
    /// A line did not fit the scratch pad: the working would be incomplete and is refused.
    Spoilt,
}

impl From<Error> for WorkingError {
    fn from(error: Error) -> Self {
        WorkingError::Routine(error)
    }
}

impl From<fmt::Error> for WorkingError {
    fn from(_: fmt::Error) -> Self {
        WorkingError::Sink
    }
}

impl fmt::Display for WorkingError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            WorkingError::Routine(error) => error.fmt(f),
            WorkingError::Sink => f.write_str("the working could not be written: the sink refused it"),
            WorkingError::Spoilt => f.write_str("a line of the working outgrew its pad: the working is refused"),
        }
    }
}

impl core::error::Error for WorkingError {}

const CHECK: &str = "Working: check of a riveted joint";
const SIZING: &str = "Working: sizing of a riveted joint";

/// The head of every working.
fn begin(doc: &mut Doc<'_>, book: &RuleBook<'_>, title: &str) -> fmt::Result {
    doc.begin(&|w| w.write_str(title))?;
    doc.paragraph(&|w| write!(w, "Rule book: {}. seamwright {VERSION}.", book.title))?;
    doc.paragraph(&|w| w.write_str(CAUTION))
}

/// Runs a routine in the recording context before a writer of steps.
fn steps<T>(
    doc: &mut Doc<'_>,
    book: &RuleBook<'_>,
    routine: impl FnOnce(Record<'_>) -> Result<T, Error>,
) -> Result<T, WorkingError> {
    let steps = steps::Steps::new(doc, book);
    let pad = Pad::new(&steps);
    let result = routine(Record::new(&pad))?;
    if pad.spoilt() {
        return Err(WorkingError::Spoilt);
    }
    if steps.failed() {
        return Err(WorkingError::Sink);
    }
    Ok(result)
}

/// A whole working: head, steps, verdicts.
fn record<T>(
    out: &mut dyn fmt::Write,
    style: Style,
    book: &RuleBook<'_>,
    title: &str,
    verdicts: impl FnOnce(&mut Doc<'_>, &T) -> fmt::Result,
    routine: impl FnOnce(Record<'_>) -> Result<T, Error>,
) -> Result<T, WorkingError> {
    let mut doc = Doc::new(out, style);
    begin(&mut doc, book, title)?;
    let result = steps(&mut doc, book, routine)?;
    verdicts(&mut doc, &result)?;
    doc.end()?;
    Ok(result)
}

/// Checks a joint and writes the working of it.
///
/// # Errors
/// Those of [`check`](mod@crate::check), and of the sink.
///
/// ```
/// use seamwright::{joint::{Form, JointSpec}, materials::Materials, quantities::{Length, Stress}, rules::METRIC};
/// use seamwright::working::{Style, WorkingError, write_check};
/// let joint = JointSpec::new(Form::lap(1)?, Length::mm(50.0), Length::mm(6.0), Length::mm(20.0)).build()?;
/// let steel = Materials::new(Stress::mpa(120.0), Stress::mpa(90.0)).bearing(Stress::mpa(180.0));
/// let mut sheet = String::new();
/// let analysis = write_check(&mut sheet, Style::default(), &joint, &steel, &METRIC)
///     .map_err(|e| e.to_string()).unwrap();
/// assert!(sheet.contains("Fs.1 = pi/4 d.1 d.1 ss"));
/// let bad = Materials::new(Stress::mpa(-1.0), Stress::mpa(90.0));
/// assert!(matches!(write_check(&mut sheet, Style::default(), &joint, &bad, &METRIC), Err(WorkingError::Routine(_))));
/// # Ok::<(), seamwright::Error>(())
/// ```
#[inline(never)]
pub fn write_check(
    out: &mut dyn fmt::Write,
    style: Style,
    joint: &Joint,
    materials: &Materials,
    book: &RuleBook<'_>,
) -> Result<Analysis, WorkingError> {
    let verdicts = |doc: &mut Doc<'_>, analysis: &Analysis| Verdicts { book, joint, materials, analysis }.write(doc);
    record(out, style, book, CHECK, verdicts, |c| check_with(c, joint, materials, &book.rules).map(Analysis::values))
}

/// Sizes a joint and writes the working of it.
///
/// # Errors
/// Those of [`size`](crate::sizing::size), and of the sink.
///
/// ```
/// use seamwright::{joint::Form, materials::Materials, quantities::{Length, Stress}, rules::INDIAN, sizing::Brief};
/// use seamwright::working::{Style, write_size};
/// let steel = Materials::new(Stress::mpa(80.0), Stress::mpa(60.0)).bearing(Stress::mpa(120.0));
/// let mut sheet = String::new();
/// assert!(write_size(&mut sheet, Style::default(), &Brief::new(Form::lap(2)?, Length::mm(13.0), steel), &INDIAN).is_ok());
/// assert!(write_size(&mut sheet, Style::default(), &Brief::new(Form::lap(2)?, Length::mm(0.0), steel), &INDIAN).is_err());
/// # Ok::<(), seamwright::Error>(())
/// ```
#[inline(never)]
pub fn write_size(
    out: &mut dyn fmt::Write,
    style: Style,
    brief: &Brief,
    book: &RuleBook<'_>,
) -> Result<Design, WorkingError> {
    let verdicts = |doc: &mut Doc<'_>, d: &Design| {
        Verdicts { book, joint: &d.joint, materials: brief.materials(), analysis: &d.analysis }.write(doc)
    };
    record(out, style, book, SIZING, verdicts, |c| size_with(c, brief, &book.rules).map(Design::values))
}

/// Makes a shop sheet and writes the working of it: the run and its pitches, the check with the fitted pitch, rivets,
/// cuts and masses, step by step.
///
/// # Errors
/// Those of [`shop_sheet`], and of the sink.
///
/// ```
/// use seamwright::{joint::{Form, JointSpec}, materials::Materials, quantities::{Length, Stress}, rules::METRIC};
/// use seamwright::shop::{HeadForm, LengthRule, Order, Run, Stock};
/// use seamwright::working::{Style, write_shop};
/// let stated = JointSpec::new(Form::lap(1)?, Length::mm(56.0), Length::mm(12.0), Length::mm(23.0));
/// let joint = stated.rivet(Length::mm(22.0)).margin(Length::mm(35.0)).build()?;
/// let steel = Materials::new(Stress::mpa(80.0), Stress::mpa(60.0)).bearing(Stress::mpa(120.0));
/// let of = |length: f64| {
///     let run = Run::Straight { length: Length::mm(length), first_end: Length::mm(40.0), last_end: Length::mm(40.0) };
///     Order::steel(run, HeadForm::Button, LengthRule::SteelButton, Stock::cut_to_length())
/// };
/// let mut sheet = String::new();
/// let made = write_shop(&mut sheet, Style::default(), &joint, &steel, &METRIC, &of(640.0))
///     .map_err(|e| e.to_string()).unwrap();
/// assert!(sheet.contains("Run of the seam and pitches in it") && made.rivet_count() == 11);
/// assert!(write_shop(&mut sheet, Style::default(), &joint, &steel, &METRIC, &of(85.0)).is_err()); // shorter than a pitch
/// # Ok::<(), seamwright::Error>(())
/// ```
pub fn write_shop(
    out: &mut dyn fmt::Write,
    style: Style,
    joint: &Joint,
    materials: &Materials,
    book: &RuleBook<'_>,
    order: &Order,
) -> Result<ShopSheet, WorkingError> {
    // Bare numbers give the same bits as recorded ones; they outlive the scratch pad.
    let made = shop_sheet(joint, materials, &book.rules, order)?;
    let verdicts = |doc: &mut Doc<'_>, _: &()| {
        Verdicts { book, joint: &made.joint, materials, analysis: &made.analysis }.write(doc)
    };
    record(out, style, book, "Working: shop sheet of a riveted joint", verdicts, |c| {
        shop_sheet_with(c, joint, materials, &book.rules, order).map(|_| ())
    })?;
    Ok(made)
}

/// A text into a buffer: all of it, or the size needed as the limit of an [`ErrorKind::NoSpace`] error.
///
/// # Errors
/// Those of the writer; [`ErrorKind::NoSpace`].
///
/// ```
/// use seamwright::{ErrorKind, working::{WorkingError, into_buffer}};
/// let mut buffer = [0; 8];
/// assert_eq!(into_buffer(&mut buffer, |out| { out.write_str("12 mm")?; Ok(()) }), Ok("12 mm"));
/// let short = into_buffer(&mut buffer[..3], |out| { out.write_str("12 mm")?; Ok(()) });
/// assert!(matches!(short, Err(WorkingError::Routine(e)) if e.kind == ErrorKind::NoSpace && e.limit == 5.0));
/// ```
pub fn into_buffer(
    buffer: &mut [u8],
    write: impl FnOnce(&mut dyn fmt::Write) -> Result<(), WorkingError>,
) -> Result<&str, WorkingError> {
    let mut slice = Slice::new(buffer);
    write(&mut slice)?;
    slice.finish().map_err(|needed| {
        let size = u32::try_from(needed).map_or(f64::MAX, f64::from);
        WorkingError::Routine(Error::new(ErrorKind::NoSpace, Field::Text).limit(size))
    })
}

//! The sheet that someone signs: what was asked, what went in and how it is known, the joint with its sketch, every
//! dimension with its rule, what each rivet bears, all failure modes, the result, the findings, what is from memory,
//! the cautions, and the lines for the names.
//!
//! The figures are those of [`check`](mod@crate::check), [`sizing`](crate::sizing) and [`rating`](crate::rating); the
//! sheet adds none of its own. It is complete or refused, in all dialects of [`working`](crate::working).

mod basis;
mod dimensions;
mod figures;
mod findings;
mod form;
mod hash;
mod memory;
mod page;
mod result;
mod strength;

use core::fmt;

pub use hash::{input_hash, write_inputs};

use crate::bounds::Field;
use crate::check::{Analysis, check_with};
use crate::error::{Error, ErrorKind};
use crate::given::Given;
use crate::joint::Joint;
use crate::materials::Materials;
use crate::modes::{Lens, Strengths};
use crate::rating::{Basis, Existing, Footing, Rating, rate_with};
use crate::rules::RuleBook;
use crate::sizing::{Brief, Design, size_with};
use crate::step::Plain;
use crate::text::Count;
use crate::working::{Dialect, Keep, Pad, Pager, Record, Style, WorkingError};
use memory::Touched;
use page::Page;

/// What the sheet is of.
#[derive(Clone, Copy, Debug)]
pub enum Task<'a> {
    /// A joint to be sized from a brief, and checked.
    Size(&'a Brief),
    /// A stated joint to be checked.
    Check(&'a Joint, &'a Materials),
    /// An existing joint of a shell to be rated.
    Rate(&'a Existing),
}

/// How an input is known, in the user's words.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Known<'a> {
    /// The input.
    pub field: Field,
    /// Its row or gap, from 1; 0 where it belongs to the joint.
    pub row: u8,
    /// How it is known.
    pub basis: Basis,
    /// From where: a drawing, a certificate, the least of so many readings. May be empty.
    pub source: &'a str,
}

/// Stresses at failure, and the factor of safety that made those of the task of them.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Divided {
    /// The stresses at failure.
    pub ultimate: Materials,
    /// The factor of safety.
    pub factor: f64,
}

/// What stands on a sheet besides the figures. An empty text is a line to be filled in by hand; a line
/// end or another control character in a text is printed as a blank.
///
/// ```
/// use seamwright::{joint::{Form, JointSpec}, materials::Materials, quantities::{Length, Stress}, rules::METRIC};
/// use seamwright::{sheet::{Particulars, Task, write_sheet}, working::{Style, into_buffer}};
/// let stated = JointSpec::new(Form::lap(2)?, Length::mm(71.0), Length::mm(13.0), Length::mm(23.0));
/// let (joint, steel) = (stated.build()?, Materials::new(Stress::mpa(80.0), Stress::mpa(60.0)).bearing(Stress::mpa(120.0)));
/// let particulars = Particulars { object: "Drum of an invented boiler", invented: true, ..Particulars::default() };
/// let mut text = String::new();
/// let task = Task::Check(&joint, &steel);
/// write_sheet(&mut text, Style::default(), &task, &particulars, &METRIC).map_err(|e| e.to_string()).unwrap();
/// assert!(text.contains("Khurmi") && text.contains("67.52 %"));
/// let mut small = [0; 100];
/// assert!(into_buffer(&mut small, |out| write_sheet(out, Style::default(), &task, &particulars, &METRIC)).is_err());
/// # Ok::<(), seamwright::Error>(())
/// ```
#[derive(Clone, Copy, PartialEq, Debug, Default)]
pub struct Particulars<'a> {
    /// What the sheet is about, in a line.
    pub title: &'a str,
    /// The object that the joint belongs to.
    pub object: &'a str,
    /// Number of the drawing.
    pub drawing_no: &'a str,
    /// Jurisdiction, or the authority that inspects.
    pub jurisdiction: &'a str,
    /// Who prepared the sheet.
    pub prepared: &'a str,
    /// Who checked it.
    pub checked: &'a str,
    /// Date, as it is to be printed.
    pub date: &'a str,
    /// Whether object and data are made up.
    pub invented: bool,
    /// Whether the stresses are permissible ones or those at failure; `None`: not said. A rating knows.
    pub footing: Option<Footing>,
    /// The stresses at failure behind those of the task, where these were divided by a factor of safety.
    pub divided: Option<Divided>,
    /// Lines of a page of plain text, 30 to 300, its foot included: caution, input hash and page x of y stand at the foot
    /// of each page, a form feed between pages. [`A4_LINES`] print well on A4. Without it the text has no pages; the
    /// other dialects have pages of their own or none.
    pub lines_per_page: Option<u16>,
    /// How inputs are known; what is not listed was given. What is said of all rows holds for each; what is said of an
    /// input that the task does not have is listed as not used. A rating keeps its own list.
    pub known: &'a [Known<'a>],
}

/// Lines on a page of A4, six to the inch: that leaves two centimetres above and below.
pub const A4_LINES: u16 = 60;

/// What every section looks at.
struct Scene<'a> {
    task: &'a Task<'a>,
    book: &'a RuleBook<'a>,
    particulars: &'a Particulars<'a>,
    joint: &'a Joint,
    materials: &'a Materials,
    analysis: &'a Analysis,
    design: Option<&'a Design>,
    rating: Option<&'a Rating>,
    touched: &'a Touched,
    hash: u64,
    given: Given<f64>,
    strengths: Strengths<f64>,
}

/// Works out a task and writes its sheet.
///
/// # Errors
/// Those of the routine; stresses at failure outside their range, and [`ErrorKind::Inconsistent`] where over the factor
/// they are not the stresses of the task; pages of too few or too many lines; those of the sink.
pub fn write_sheet(
    out: &mut dyn fmt::Write,
    style: Style,
    task: &Task<'_>,
    particulars: &Particulars<'_>,
    book: &RuleBook<'_>,
) -> Result<(), WorkingError> {
    let touched = Touched::new();
    let pad = Pad::new(&touched);
    // The routine runs once, in the recording context: its numbers are those of the plain one, bit for bit, and the
    // entries of the book that it looks at are noted on the way.
    let c = Record::new(&pad);
    let (design, rating, checked);
    let (joint, materials, analysis) = match task {
        Task::Size(brief) => {
            design = Some(size_with(c, brief, &book.rules)?.values());
            rating = None;
            let found = design.as_ref().ok_or(WorkingError::Spoilt)?;
            (&found.joint, *brief.materials(), &found.analysis)
        }
        Task::Check(joint, materials) => {
            book.rules.validate()?;
            checked = check_with(c, joint, materials, &book.rules)?.values();
            (design, rating) = (None, None);
            (*joint, **materials, &checked)
        }
        Task::Rate(existing) => {
            rating = Some(rate_with(c, existing, &book.rules)?.values());
            design = None;
            let found = rating.as_ref().ok_or(WorkingError::Spoilt)?;
            (&found.joint, found.materials, &found.analysis)
        }
    };
    if pad.spoilt() {
        return Err(WorkingError::Spoilt);
    }
    if let Some(divided) = &particulars.divided {
        divided.ultimate.validate()?;
        if divided.ultimate.divided_by(divided.factor)? != materials {
            return Err(Error::new(ErrorKind::Inconsistent, Field::SafetyFactor).value(divided.factor).into());
        }
    }
    touched.findings(&analysis.findings);
    rating.iter().for_each(|found| touched.findings(&found.findings));
    let given = Given::new(Plain, joint, &materials);
    let strengths = Strengths::new(Plain, joint, &given, &book.rules, Lens::Real);
    let scene = Scene {
        task,
        book,
        particulars,
        joint,
        materials: &materials,
        analysis,
        design: design.as_ref(),
        rating: rating.as_ref(),
        touched: &touched,
        hash: hash::hash_of(task, rating.as_ref(), book)?,
        given,
        strengths,
    };
    let Some(lines) = particulars.lines_per_page.filter(|_| style.dialect == Dialect::Plain) else {
        return write_scene(out, style, None, &scene);
    };
    Field::LinesPerPage.check(f64::from(lines))?;
    // The first run counts the pages, the second writes them.
    let foot = |w: &mut dyn fmt::Write, page: u16, pages: u16| page::write_foot(w, scene.hash, page, pages);
    let (keep, mut forget, mut pages) = (Keep::default(), Count::new(), 0);
    for out in [&mut forget as &mut dyn fmt::Write, out] {
        let mut pager = Pager::new(out, &keep, lines, &foot, pages)?;
        write_scene(&mut pager, style, Some(&keep), &scene)?;
        pages = pager.finish()?;
    }
    Ok(())
}

/// Section by section.
fn write_scene(
    out: &mut dyn fmt::Write,
    style: Style,
    keep: Option<&Keep>,
    scene: &Scene<'_>,
) -> Result<(), WorkingError> {
    let mut page = Page::new(out, style, keep);
    basis::write_head(&mut page, scene)?;
    basis::write_inputs(&mut page, scene)?;
    form::write(&mut page, scene.joint)?;
    dimensions::write(&mut page, scene)?;
    strength::write_stresses(&mut page, scene)?;
    strength::write_pitch(&mut page, scene)?;
    strength::write_rivets(&mut page, scene)?;
    strength::write_classic(&mut page, scene)?;
    result::write_modes(&mut page, scene)?;
    result::write_result(&mut page, scene)?;
    result::write_load(&mut page, scene)?;
    findings::write(&mut page, scene)?;
    memory::write(&mut page, scene)?;
    findings::write_cautions(&mut page, scene)?;
    page.doc.end()?;
    Ok(())
}

//! Drawings of a joint: section and plan on one sheet, as SVG; hole centres at full size, as DXF. Drawings of a group of
//! rivets under its load.
//!
//! * [`svg`] and [`svg_into`]: an A4 sheet, landscape, with section, plan, dimensions, title block and caution;
//!   [`svg_seam`]: of a shop sheet, with length, number of pitches and end distances.
//! * [`dxf`] and [`dxf_seam`]: the same views at full size (1 drawing unit is 1 mm), of three pitches or over the real
//!   length of a seam with the holes of its shop sheet, on the layers
//!   `OUTLINE`, `HOLES`, `CENTRE`, `DIMENSIONS` and `TEXT`, in the oldest ASCII form that every CAD program reads (R12).
//! * [`svg_group`] and [`svg_group_into`]: a group of rivets on an A4 sheet, with its load and the force on each rivet.
//! * [`sheet`] and [`sheet_group`]: the A4 sheets on a [`Canvas`] of your own.
//!
//! Practice followed: kinds of lines and their weights as in ISO 128, dimensions as in ISO 129, scales as in ISO 5455
//! (and 1:2.5, which shops use), lettering 2.5 mm high, first-angle projection with its symbol. Conventions of this
//! library's drawings, which the sheet states too: driven rivets fill their holes; heads are snap heads 1.6 d wide and
//! 0.7 d high (common practice; d is the cold rivet, as on the shop sheet); the plan leaves them out and shows the holes; the section turns all
//! rows into its plane. The second or narrow strap of a double-strapped joint lies on top, as does a single strap.
//!
//! Nothing is allocated: texts are written as they are found, so that a sink may stop midway.

mod canvas;
mod dimension;
mod dxf_writer;
mod group;
mod layout;
mod plan;
mod section;
mod shape;
mod svg_writer;
mod title;

use core::fmt;

pub use canvas::{Anchor, Canvas, Line, Point, TEXT_SIZE, Text};
pub use group::{sheet_group, svg_group, svg_group_into};

use crate::bounds::Field;
use crate::error::{Error, ErrorKind};
use crate::joint::Joint;
use crate::quantities::Length;
use crate::shop::{Run, ShopSheet};
use crate::text::{Count, Slice, TextError};

/// Units of the dimensions written on a drawing.
#[derive(Clone, Copy, PartialEq, Eq, Debug, Hash, Default)]
pub enum Units {
    /// Millimetres, up to two decimals.
    #[default]
    Millimetre,
    /// Inches: fractions down to 1/64 where they are exact, otherwise four decimals.
    Inch,
}

/// What the strip of the joint is, and so what the plan shows.
#[derive(Clone, Copy, PartialEq, Eq, Debug, Hash, Default)]
pub enum Extent {
    /// One pitch of a seam: the plan shows three.
    #[default]
    Seam,
    /// The whole width of a tie: the plan shows it from edge to edge, its rows centred on the width.
    Tie,
}

/// What stands in the title block, besides what the joint says of itself. An empty text leaves its field blank.
///
/// Texts are wrapped, never shortened: one that needs more lines than its field has is refused. A line holds 23 letters
/// (fewer of a wide script): 3 lines for object and rule book, 2 for the drawing number, 1 for the others.
///
/// ```
/// use seamwright::drawing::{TitleBlock, Units};
/// let title = TitleBlock { date: "1911-04-03", units: Units::Inch, ..TitleBlock::new("Steam drum <2>", "D-104") };
/// assert_eq!(title.rule_book, "");
/// ```
#[derive(Clone, Copy, PartialEq, Eq, Debug, Default)]
pub struct TitleBlock<'a> {
    /// What the joint belongs to.
    pub object: &'a str,
    /// Number of the drawing.
    pub drawing_no: &'a str,
    /// Rule book and edition.
    pub rule_book: &'a str,
    /// Date, as it is to be printed.
    pub date: &'a str,
    /// Who prepared the drawing.
    pub prepared: &'a str,
    /// Who checked it.
    pub checked: &'a str,
    /// Units of the dimensions.
    pub units: Units,
    /// Seam or tie; of a joint only.
    pub extent: Extent,
}

impl<'a> TitleBlock<'a> {
    /// An object and its drawing number; all else blank, millimetres, a seam.
    #[must_use]
    pub const fn new(object: &'a str, drawing_no: &'a str) -> Self {
        TitleBlock {
            object,
            drawing_no,
            rule_book: "",
            date: "",
            prepared: "",
            checked: "",
            units: Units::Millimetre,
            extent: Extent::Seam,
        }
    }
}

/// Why there is no drawing, or only the beginning of one.
#[derive(Clone, Copy, PartialEq, Debug)]
pub enum DrawError {
    /// The joint, the group or a text of the title block cannot be drawn. Nothing was written.
    Input(Error),
    /// The sink refused the text; it may hold a part.
    Sink,
}

impl fmt::Display for DrawError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            DrawError::Input(error) => fmt::Display::fmt(error, f),
            DrawError::Sink => f.write_str(TextError::Sink.text()),
        }
    }
}

impl core::error::Error for DrawError {}

impl From<Error> for DrawError {
    fn from(error: Error) -> Self {
        DrawError::Input(error)
    }
}

impl From<fmt::Error> for DrawError {
    fn from(_: fmt::Error) -> Self {
        DrawError::Sink
    }
}

/// Draws the A4 sheet (297 mm x 210 mm, landscape) on a canvas, in millimetres from its upper left corner.
///
/// # Errors
/// [`DrawError::Input`]: a back pitch, the margin or a strap is not given; rows whose holes overlap as drawn (found
/// here between any two rows, not only neighbours); a text of the title block too long for its field.
/// [`DrawError::Sink`]: the canvas refused.
pub fn sheet(canvas: &mut dyn Canvas, joint: &Joint, title: &TitleBlock<'_>) -> Result<(), DrawError> {
    let shape = shape::Shape::new(joint, title.extent)?;
    let block = title::Block::new(joint, title)?;
    Ok(layout::sheet(canvas, &shape, &block)?)
}

/// Writes the A4 sheet as SVG.
///
/// # Errors
/// As [`sheet`].
///
/// ```
/// use seamwright::drawing::{DrawError, TitleBlock, svg};
/// use seamwright::{bounds::Field, joint::{Form, JointSpec}, quantities::Length};
/// let stated = JointSpec::new(Form::lap(1)?, Length::mm(56.0), Length::mm(12.0), Length::mm(23.0));
/// let title = TitleBlock::new("Feed tank", "T-7");
/// let mut out = String::new();
/// svg(&mut out, &stated.margin(Length::mm(35.0)).build()?, &title).unwrap();
/// assert!(out.ends_with("</svg>\n"));
///
/// let no_margin = svg(&mut out, &stated.build()?, &title);
/// assert!(matches!(no_margin, Err(DrawError::Input(e)) if e.field == Field::Margin));
/// # Ok::<(), seamwright::Error>(())
/// ```
pub fn svg(out: &mut dyn fmt::Write, joint: &Joint, title: &TitleBlock<'_>) -> Result<(), DrawError> {
    let shape = shape::Shape::new(joint, title.extent)?;
    let block = title::Block::new(joint, title)?;
    let mut canvas = svg_writer::Svg::begin(out, title.object)?;
    layout::sheet(&mut canvas, &shape, &block)?;
    Ok(canvas.end()?)
}

/// Writes the A4 sheet of a shop sheet as SVG: the joint with the fitted pitch, and in the notes the length, the number
/// of pitches and the end distances. The run of the sheet says whether it is a seam or a tie.
///
/// # Errors
/// As [`sheet`].
///
/// ```
/// use seamwright::drawing::{TitleBlock, svg_seam};
/// use seamwright::shop::{HeadForm, LengthRule, Order, Run, Stock, shop_sheet};
/// use seamwright::{joint::{Form, JointSpec}, materials::Materials, quantities::{Length, Stress}, rules::METRIC};
/// let stated = JointSpec::new(Form::lap(1)?, Length::mm(56.0), Length::mm(12.0), Length::mm(23.0));
/// let joint = stated.rivet(Length::mm(22.0)).margin(Length::mm(35.0)).build()?;
/// let steel = Materials::new(Stress::mpa(80.0), Stress::mpa(60.0)).bearing(Stress::mpa(120.0));
/// let run = Run::Straight { length: Length::mm(640.0), first_end: Length::mm(40.0), last_end: Length::mm(40.0) };
/// let order = Order::steel(run, HeadForm::Button, LengthRule::SteelButton, Stock::cut_to_length());
/// let sheet = shop_sheet(&joint, &steel, &METRIC.rules, &order)?;
/// let mut out = String::new();
/// svg_seam(&mut out, &sheet, &TitleBlock::new("Feed tank", "T-7")).unwrap();
/// assert!(out.contains("10 pitches of 56"));
/// let long = TitleBlock::new("A name that is far too long for the three lines that an object has in the block", "");
/// assert!(svg_seam(&mut out, &sheet, &long).is_err());
/// # Ok::<(), seamwright::Error>(())
/// ```
pub fn svg_seam(out: &mut dyn fmt::Write, sheet: &ShopSheet, title: &TitleBlock<'_>) -> Result<(), DrawError> {
    let title = made(sheet, title);
    let shape = shape::Shape::new(&sheet.joint, title.extent)?;
    let block = title::Block::new(&sheet.joint, &title)?.with_run(sheet);
    let mut canvas = svg_writer::Svg::begin(out, title.object)?;
    layout::sheet(&mut canvas, &shape, &block)?;
    Ok(canvas.end()?)
}

/// Writes the A4 sheet as SVG into a buffer, all or nothing.
///
/// # Errors
/// As [`sheet`]; [`ErrorKind::NoSpace`] with the number of bytes needed as its limit.
///
/// ```
/// use seamwright::drawing::{TitleBlock, svg_into};
/// use seamwright::{error::ErrorKind, joint::{Form, JointSpec}, quantities::Length};
/// let stated = JointSpec::new(Form::lap(1)?, Length::mm(56.0), Length::mm(12.0), Length::mm(23.0));
/// let (joint, title) = (stated.margin(Length::mm(35.0)).build()?, TitleBlock::new("Feed tank", "T-7"));
/// let error = svg_into(&mut [], &joint, &title).unwrap_err();
/// assert_eq!(error.kind, ErrorKind::NoSpace);
/// let mut buffer = vec![0; error.limit as usize];
/// assert!(svg_into(&mut buffer, &joint, &title)?.starts_with("<svg"));
/// # Ok::<(), seamwright::Error>(())
/// ```
pub fn svg_into<'b>(buffer: &'b mut [u8], joint: &Joint, title: &TitleBlock<'_>) -> Result<&'b str, Error> {
    whole(buffer, &|out| svg(out, joint, title))
}

/// Writes into a buffer, all or nothing.
fn whole<'b>(
    buffer: &'b mut [u8],
    write: &dyn Fn(&mut dyn fmt::Write) -> Result<(), DrawError>,
) -> Result<&'b str, Error> {
    let room = buffer.len();
    let no_space = |needed: usize| {
        let bytes = |n: usize| n as f64;
        Error::new(ErrorKind::NoSpace, Field::Text).value(bytes(room)).limit(bytes(needed))
    };
    let mut count = Count::new();
    write(&mut count).map_err(|e| input(e, no_space(0)))?;
    if count.needed() > room {
        return Err(no_space(count.needed()));
    }
    let mut slice = Slice::new(buffer);
    write(&mut slice).map_err(|e| input(e, no_space(0)))?;
    slice.finish().map_err(no_space)
}

/// The error of the input; the other one for a sink that refused (which counts and slices never do).
fn input(error: DrawError, sink: Error) -> Error {
    match error {
        DrawError::Input(error) => error,
        DrawError::Sink => sink,
    }
}

/// Writes plan and section as DXF (R12, ASCII) at full size: one drawing unit is one millimetre.
///
/// Three pitches are drawn, or the whole width of a tie: a drawing, and no pattern of a seam. For that see
/// [`dxf_seam`]. Every hole is a `CIRCLE` of its true radius on the layer `HOLES`. Letters outside ASCII are written as
/// `\U+XXXX`.
///
/// # Errors
/// As [`sheet`].
///
/// ```
/// use seamwright::drawing::{TitleBlock, dxf};
/// use seamwright::{joint::{Form, JointSpec}, quantities::Length};
/// let stated = JointSpec::new(Form::lap(1)?, Length::mm(56.0), Length::mm(12.0), Length::mm(23.0));
/// let (joint, title) = (stated.margin(Length::mm(35.0)).build()?, TitleBlock::new("Feed tank", "T-7"));
/// let mut out = String::new();
/// dxf(&mut out, &joint, &title).unwrap();
/// assert_eq!(out.matches("CIRCLE\n8\nHOLES\n").count(), 3);
/// assert!(dxf(&mut out, &stated.build()?, &title).is_err()); // no margin
/// # Ok::<(), seamwright::Error>(())
/// ```
pub fn dxf(out: &mut dyn fmt::Write, joint: &Joint, title: &TitleBlock<'_>) -> Result<(), DrawError> {
    full_size(out, joint, title, None)
}

/// Writes a whole seam as DXF, as [`dxf`] does: the joint with the fitted pitch of a shop sheet, every hole where the
/// table of the sheet has it.
///
/// Datum: the sheet's. The seam runs downwards: what lies `x` along it has `-x` for its ordinate; the abscissa runs to
/// the left of it seen along `x`, from the middle of the joint (the butt, or the middle of the lap). A girth is drawn
/// unrolled. The run of the sheet says whether it is a seam or a tie, whatever the title block says.
///
/// # Errors
/// As [`sheet`].
///
/// ```
/// use seamwright::drawing::{TitleBlock, dxf_seam};
/// use seamwright::shop::{HeadForm, LengthRule, Order, Run, Stock, shop_sheet};
/// use seamwright::{joint::{Form, JointSpec}, materials::Materials, quantities::{Length, Stress}, rules::METRIC};
/// let stated = JointSpec::new(Form::lap(1)?, Length::mm(56.0), Length::mm(12.0), Length::mm(23.0));
/// let joint = stated.rivet(Length::mm(22.0)).margin(Length::mm(35.0)).build()?;
/// let steel = Materials::new(Stress::mpa(80.0), Stress::mpa(60.0)).bearing(Stress::mpa(120.0));
/// let run = Run::Straight { length: Length::mm(640.0), first_end: Length::mm(40.0), last_end: Length::mm(40.0) };
/// let order = Order::steel(run, HeadForm::Button, LengthRule::SteelButton, Stock::cut_to_length());
/// let sheet = shop_sheet(&joint, &steel, &METRIC.rules, &order)?;
/// let (mut out, title) = (String::new(), TitleBlock::new("Feed tank", "T-7"));
/// dxf_seam(&mut out, &sheet, &title).unwrap();
/// assert_eq!(out.matches("CIRCLE\n8\nHOLES\n").count(), 11); // ten pitches of 56 mm and the closing hole
/// let long = TitleBlock::new("A name that is far too long for the three lines that an object has in the block", "");
/// assert!(dxf_seam(&mut out, &sheet, &long).is_err());
/// # Ok::<(), seamwright::Error>(())
/// ```
pub fn dxf_seam(out: &mut dyn fmt::Write, sheet: &ShopSheet, title: &TitleBlock<'_>) -> Result<(), DrawError> {
    let title = made(sheet, title);
    full_size(out, &sheet.joint, &title, Some(sheet))
}

/// The title block with the extent of a shop sheet.
fn made<'a>(sheet: &ShopSheet, title: &TitleBlock<'a>) -> TitleBlock<'a> {
    let extent = if matches!(sheet.order.run(), Run::Tie) { Extent::Tie } else { Extent::Seam };
    TitleBlock { extent, ..*title }
}

/// Both drawings at full size.
fn full_size(
    out: &mut dyn fmt::Write,
    joint: &Joint,
    title: &TitleBlock<'_>,
    seam: Option<&ShopSheet>,
) -> Result<(), DrawError> {
    let shape = shape::Shape::new(joint, title.extent)?;
    let mut block = title::Block::new(joint, title)?;
    if let Some(sheet) = seam {
        block = block.with_run(sheet);
    }
    let seam = seam.map(|sheet| (Length::mm(sheet.along.seam), sheet.layout()));
    let scales = layout::Scales::choose(&shape, &block);
    let mut canvas = dxf_writer::Dxf::begin(out, scales.plan.factor)?;
    layout::full_size(&mut canvas, &shape, &block, scales.plan.factor, seam)?;
    Ok(canvas.end()?)
}

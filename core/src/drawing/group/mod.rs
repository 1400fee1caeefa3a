//! A group of rivets under its load, on one sheet: rivets to scale, the force on each, the load, both centres.

mod area;
mod legend;
mod marks;
mod plan;
mod view;
mod words;

use core::fmt;

use super::canvas::{Canvas, at};
use super::layout::{COLUMN, FRAME, NOTES, VIEWS_END, caption, frame, notes_top};
use super::title::Block;
use super::{DrawError, TitleBlock, Units, svg_writer, whole};
use crate::error::Error;
use crate::group::{Group, GroupCheck, GroupLoad, GroupStress, check_group};
use crate::rules::Rules;
use area::Area;
use plan::Plan;

/// What is known of a group.
struct Known<'a> {
    group: &'a Group,
    load: &'a GroupLoad,
    found: &'a GroupCheck,
    units: Units,
}

impl Known<'_> {
    /// The point of the load from the centroid, true, along x and y.
    fn arm(&self) -> [f64; 2] {
        let [x, y] = self.found.centroid;
        [self.load.at_x - x, self.load.at_y - y]
    }

    /// Whether both shares are there: else the force is the only one.
    fn shares(&self) -> bool {
        self.load.has_force() && self.found.centre.is_some()
    }
}

/// A sheet that can be drawn.
struct Sheet<'a> {
    known: Known<'a>,
    block: Block<'a>,
    plan: Plan,
    view: Area,
}

impl<'a> Sheet<'a> {
    fn new(known: Known<'a>, title: &'a TitleBlock<'a>) -> Result<Self, Error> {
        let mut block = Block::of_group(title, words::form(&known), words::governs(&known))?;
        let mut laid = |listed: bool| {
            // Room for all that may have to be said; what was said in the end takes no more.
            block.set_notes(&|out| words::notes(out, &known, None, listed));
            let view = Area { x0: FRAME.0 + 2.0, y0: FRAME.1 + 8.0, x1: VIEWS_END - 2.0, y1: notes_top(&block) - 6.0 };
            let plan = Plan::choose(&known, view, listed);
            block.set_notes(&|out| words::notes(out, &known, Some(&plan), listed));
            (plan, view)
        };
        let (mut plan, mut view) = laid(false);
        if plan.chains.is_none() {
            (plan, view) = laid(true);
        }
        Ok(Sheet { known, block, plan, view })
    }

    fn draw(&self, canvas: &mut dyn Canvas) -> fmt::Result {
        let (left, top, _, bottom) = FRAME;
        let scale = self.plan.scale.name;
        frame(canvas)?;
        self.block.draw(canvas, at(COLUMN, bottom), scale)?;
        self.block.draw_notes(canvas, at(left + 2.0, notes_top(&self.block)), NOTES)?;
        let end = bottom - self.block.height(scale) - 1.5;
        legend::Legend::new(canvas, at(COLUMN + 2.0, top + 5.5)).write(&self.known, &self.plan, end)?;
        caption(canvas, left + 2.0, top + 5.5, "GROUP UNDER LOAD", scale)?;
        view::draw(canvas, &self.known, &self.plan, self.view)
    }
}

/// Checks the group, and hands the sheet of it on.
fn with_sheet(
    (group, load, stress, rules): (&Group, &GroupLoad, &GroupStress, &Rules),
    title: &TitleBlock<'_>,
    draw: &mut dyn FnMut(&Sheet<'_>) -> fmt::Result,
) -> Result<(), DrawError> {
    let found = check_group(group, load, stress, rules)?;
    let known = Known { group, load, found: &found, units: title.units };
    Ok(draw(&Sheet::new(known, title)?)?)
}

/// Draws the A4 sheet of a group of rivets (297 mm x 210 mm, landscape) on a canvas, in millimetres from its upper left
/// corner: the rivets to scale with their numbers, the force on each with its shares, the load, the centroid, the centre
/// of turning where it lies in reach. The check is [`check_group`]'s, so that figures and drawing cannot differ.
///
/// The extent of the title block means nothing here.
///
/// # Errors
/// [`DrawError::Input`]: those of [`check_group`]; a text of the title block too long for its field.
/// [`DrawError::Sink`]: the canvas refused.
pub fn sheet_group(
    canvas: &mut dyn Canvas,
    group: &Group,
    load: &GroupLoad,
    stress: &GroupStress,
    rules: &Rules,
    title: &TitleBlock<'_>,
) -> Result<(), DrawError> {
    with_sheet((group, load, stress, rules), title, &mut |sheet| sheet.draw(canvas))
}

/// Writes the A4 sheet of a group of rivets as SVG, see [`sheet_group`]. Lengths are in the units of the title block;
/// forces in kN with millimetres, in lbf with inches.
///
/// # Errors
/// As [`sheet_group`].
///
/// ```
/// use seamwright::drawing::{TitleBlock, svg_group};
/// use seamwright::{group::{Group, GroupLoad, GroupStress}, rules::STRUCTURAL};
/// use seamwright::quantities::{Force, Length, Stress};
/// let mm = Length::mm;
/// let group = Group::at(&[(mm(0.0), mm(0.0)), (mm(0.0), mm(100.0)), (mm(0.0), mm(200.0))])?.hole(mm(19.0));
/// let load = GroupLoad::force(Force::kn(0.0), Force::kn(-15.0), mm(150.0), mm(100.0));
/// let (stress, title) = (GroupStress::new(Stress::mpa(90.0)), TitleBlock::new("Pump bracket", "P-2"));
/// let mut out = String::new();
/// svg_group(&mut out, &group, &load, &stress, &STRUCTURAL.rules, &title).unwrap();
/// assert!(out.contains("e = 150") && out.contains("P = 15 kN, down") && out.ends_with("</svg>\n"));
/// assert!(svg_group(&mut out, &group.planes(3), &load, &stress, &STRUCTURAL.rules, &title).is_err());
/// # Ok::<(), seamwright::Error>(())
/// ```
pub fn svg_group(
    out: &mut dyn fmt::Write,
    group: &Group,
    load: &GroupLoad,
    stress: &GroupStress,
    rules: &Rules,
    title: &TitleBlock<'_>,
) -> Result<(), DrawError> {
    with_sheet((group, load, stress, rules), title, &mut |sheet| {
        let mut canvas = svg_writer::Svg::begin_group(out, title.object)?;
        sheet.draw(&mut canvas)?;
        canvas.end()
    })
}

/// Writes the A4 sheet of a group of rivets as SVG into a buffer, all or nothing.
///
/// # Errors
/// As [`sheet_group`]; [`ErrorKind::NoSpace`](crate::ErrorKind::NoSpace) with the number of bytes needed as its limit.
///
/// ```
/// use seamwright::drawing::{TitleBlock, svg_group_into};
/// use seamwright::{error::ErrorKind, group::{Group, GroupLoad, GroupStress}, rules::STRUCTURAL};
/// use seamwright::quantities::{Length, Moment, Stress};
/// let mm = Length::mm;
/// let group = Group::at(&[(mm(0.0), mm(0.0)), (mm(0.0), mm(100.0))])?.hole(mm(19.0));
/// let (load, stress) = (GroupLoad::couple(Moment::kn_m(2.0)), GroupStress::new(Stress::mpa(90.0)));
/// let (rules, title) = (STRUCTURAL.rules, TitleBlock::new("Pump bracket", "P-2"));
/// let error = svg_group_into(&mut [], &group, &load, &stress, &rules, &title).unwrap_err();
/// assert_eq!(error.kind, ErrorKind::NoSpace);
/// let mut buffer = vec![0; error.limit as usize];
/// assert!(svg_group_into(&mut buffer, &group, &load, &stress, &rules, &title)?.starts_with("<svg"));
/// # Ok::<(), seamwright::Error>(())
/// ```
pub fn svg_group_into<'b>(
    buffer: &'b mut [u8],
    group: &Group,
    load: &GroupLoad,
    stress: &GroupStress,
    rules: &Rules,
    title: &TitleBlock<'_>,
) -> Result<&'b str, Error> {
    whole(buffer, &|out| svg_group(out, group, load, stress, rules, title))
}

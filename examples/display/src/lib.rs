//! The section of a joint, true to its proportions, on any monochrome display of the crate `embedded-graphics`.
//!
//! `no_std` and without allocation, as a handheld needs it; `src/main.rs` dumps images of 128 x 64 to look at.
#![cfg_attr(not(test), no_std)]
#![allow(clippy::arithmetic_side_effects, reason = "lengths of a sketch, in range by the library's bounds")]

use embedded_graphics::draw_target::DrawTarget;
use embedded_graphics::pixelcolor::BinaryColor;
use embedded_graphics::prelude::*;
use embedded_graphics::primitives::{Ellipse, PrimitiveStyle, PrimitiveStyleBuilder, Rectangle};
use seamwright::joint::{Joint, JointKind};

/// Width and height of a snap head in cold rivets: custom of the trade (PRACTICE), as the library's drawings have it.
const HEAD: (f64, f64) = (1.6, 0.7);
/// How far a plate is drawn beyond the joint, as a share of the joint's half width.
const STUB: f64 = 0.2;
/// Room left around the sketch, pixels.
const BORDER: f64 = 1.0;

/// A plate or a strap in the section, mm: across from the middle of the joint, down from the upper face of all.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Member {
    /// From left to right.
    pub across: (f64, f64),
    /// From the upper to the lower face.
    pub down: (f64, f64),
    /// Whether it is a strap.
    pub strap: bool,
}

/// A rivet in the section, mm.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Rivet {
    /// Its axis, from the middle of the joint.
    pub across: f64,
    /// From under one head to under the other.
    pub down: (f64, f64),
    /// Its hole, which the driven rivet fills.
    pub hole: f64,
    /// The cold rivet.
    pub rivet: f64,
}

/// A section: at most four members and the rivets of sixteen rows, mm.
#[derive(Clone, Copy, Debug)]
pub struct Section {
    members: [Option<Member>; 4],
    rivets: [Option<Rivet>; 16],
    half: f64,
    height: f64,
}

impl Section {
    /// The section of a joint; `None` where a row distance, the margin or a strap is not known.
    #[must_use]
    pub fn new(joint: &Joint) -> Option<Self> {
        let (wide, narrow) = joint.widths()?;
        let half = 0.5 * wide.to_mm();
        let end = half * (1.0 + STUB);
        let kind = joint.form().kind();
        let plate = joint.plate().to_mm();
        let member = |across, top: f64, thick: f64, strap| Some(Member { across, down: (top, top + thick), strap });
        let (members, narrow_thick, height) = match kind {
            JointKind::Lap => {
                let other = joint.other_plate().map_or(plate, |b| b.to_mm());
                let members =
                    [member((-end, half), 0.0, plate, false), member((-half, end), plate, other, false), None, None];
                (members, 0.0, plate + other)
            }
            JointKind::SingleStrap | JointKind::DoubleStrap => {
                let strap = joint.wide_strap()?.to_mm();
                let upper = if kind == JointKind::DoubleStrap { joint.narrow_strap()?.to_mm() } else { 0.0 };
                let half_narrow = narrow.map_or(0.0, |w| 0.5 * w.to_mm());
                let members = [
                    narrow.and_then(|_| member((-half_narrow, half_narrow), 0.0, upper, true)),
                    member((-end, 0.0), upper, plate, false),
                    member((0.0, end), upper, plate, false),
                    member((-half, half), upper + plate, strap, true),
                ];
                (members, upper, upper + plate + strap)
            }
        };
        let mut rivets = [None; 16];
        let mut slots = rivets.iter_mut();
        // Row 1 lies a margin inside the edge of the lap or of the wide strap.
        let mut from_middle = half - joint.margin()?.to_mm();
        for (row, number) in joint.rows().iter().zip(1_usize..) {
            let top = if row.planes > 1 { 0.0 } else { narrow_thick };
            let (hole, rivet) = (row.hole().to_mm(), row.rivet().to_mm());
            let sides: &[f64] = if kind == JointKind::Lap { &[-1.0] } else { &[-1.0, 1.0] };
            for side in sides {
                if let Some(slot) = slots.next() {
                    *slot = Some(Rivet { across: side * from_middle, down: (top, height), hole, rivet });
                }
            }
            from_middle -= joint.back_pitch(number).map_or(0.0, |gap| gap.to_mm());
        }
        Some(Section { members, rivets, half, height })
    }

    /// Plates and straps, from the top.
    pub fn members(&self) -> impl Iterator<Item = &Member> {
        self.members.iter().flatten()
    }

    /// The rivets, from the outside.
    pub fn rivets(&self) -> impl Iterator<Item = &Rivet> {
        self.rivets.iter().flatten()
    }

    /// Where it lies on a display of this size: as large as fits, the same factor across and down.
    #[must_use]
    pub fn view(&self, size: Size) -> View {
        let head = self.rivets().fold(0.0_f64, |most, r| if r.rivet * HEAD.1 > most { r.rivet * HEAD.1 } else { most });
        let (wide, high) = (2.0 * self.half * (1.0 + STUB), self.height + 2.0 * head);
        let room = |pixels: u32| f64::from(pixels) - 1.0 - 2.0 * BORDER;
        let (by_width, by_height) = (room(size.width) / wide, room(size.height) / high);
        let factor = if by_width < by_height { by_width } else { by_height };
        let middle = |pixels: u32| 0.5 * (f64::from(pixels) - 1.0);
        View { factor, x: middle(size.width), y: middle(size.height) - 0.5 * factor * self.height }
    }

    /// Draws the section.
    ///
    /// # Errors
    /// Those of the display.
    pub fn draw<D: DrawTarget<Color = BinaryColor>>(&self, display: &mut D) -> Result<(), D::Error> {
        let view = self.view(display.bounding_box().size);
        let on = PrimitiveStyle::with_stroke(BinaryColor::On, 1);
        for member in self.members() {
            let area = view.area(member.across, member.down);
            hatch(display, &area, member.strap, member.across.0 + member.across.1 < 0.0)?;
            area.into_styled(on).draw(display)?;
        }
        for rivet in self.rivets() {
            draw_rivet(display, &view, rivet)?;
        }
        Ok(())
    }
}

/// From millimetres of a section to pixels.
#[derive(Clone, Copy, Debug)]
pub struct View {
    /// Pixels for a millimetre.
    pub factor: f64,
    /// The middle of the joint, pixels.
    pub x: f64,
    /// The upper face of all, pixels.
    pub y: f64,
}

impl View {
    /// The pixel column of a place across.
    #[must_use]
    pub fn column(&self, across: f64) -> i32 {
        nearest(self.x + self.factor * across)
    }

    /// The pixel line of a place down.
    #[must_use]
    pub fn line(&self, down: f64) -> i32 {
        nearest(self.y + self.factor * down)
    }

    fn area(&self, across: (f64, f64), down: (f64, f64)) -> Rectangle {
        Rectangle::with_corners(
            Point::new(self.column(across.0), self.line(down.0)),
            Point::new(self.column(across.1), self.line(down.1)),
        )
    }
}

/// To the nearest pixel.
fn nearest(x: f64) -> i32 {
    // The cast cuts off towards nothing.
    (x + if x < 0.0 { -0.5 } else { 0.5 }) as i32
}

/// Hatches an area; straps closer, and neighbours in the other direction.
fn hatch<D: DrawTarget<Color = BinaryColor>>(
    display: &mut D,
    area: &Rectangle,
    close: bool,
    rising: bool,
) -> Result<(), D::Error> {
    let apart = if close { 3 } else { 5 };
    display.draw_iter(area.points().map(|p| {
        let diagonal = if rising { p.x + p.y } else { p.x - p.y };
        Pixel(p, BinaryColor::from(diagonal.rem_euclid(apart) == 0))
    }))
}

/// Shank and heads in outline: a rivet is never hatched, and hides what lies behind it.
fn draw_rivet<D: DrawTarget<Color = BinaryColor>>(display: &mut D, view: &View, rivet: &Rivet) -> Result<(), D::Error> {
    let outline =
        PrimitiveStyleBuilder::new().stroke_color(BinaryColor::On).stroke_width(1).fill_color(BinaryColor::Off).build();
    let half = 0.5 * rivet.hole;
    view.area((rivet.across - half, rivet.across + half), rivet.down).into_styled(outline).draw(display)?;
    let (wide, high) = (0.5 * HEAD.0 * rivet.rivet, HEAD.1 * rivet.rivet);
    for (face, away) in [(rivet.down.0, -1.0), (rivet.down.1, 1.0)] {
        let across = (rivet.across - wide, rivet.across + wide);
        let whole = view.area(across, (face - high, face + high));
        let visible = if away < 0.0 { (face - high, face) } else { (face, face + high) };
        let mut part = display.clipped(&view.area(across, visible));
        Ellipse::new(whole.top_left, whole.size).into_styled(outline).draw(&mut part)?;
        // The head's flat side, on the face of the plate.
        let flat = view.area(across, (face, face));
        flat.into_styled(PrimitiveStyle::with_fill(BinaryColor::On)).draw(display)?;
    }
    Ok(())
}

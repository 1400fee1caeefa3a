//! Plates, straps and rivets lie where the dimensions say, in millimetres and in pixels; all figures by hand.
#![allow(
    clippy::unwrap_used,
    clippy::indexing_slicing,
    clippy::arithmetic_side_effects,
    missing_docs,
    reason = "a test"
)]

use embedded_graphics::framebuffer::{Framebuffer, buffer_size};
use embedded_graphics::image::GetPixel;
use embedded_graphics::pixelcolor::{BinaryColor, raw::BigEndian, raw::RawU1};
use embedded_graphics::prelude::{Point, Size};
use seamwright::joint::{Form, Joint, JointSpec};
use seamwright::quantities::Length;
use seamwright_display::Section;

type Display = Framebuffer<BinaryColor, RawU1, BigEndian, 128, 64, { buffer_size::<BinaryColor>(128, 64) }>;

fn mm(x: f64) -> Length {
    Length::mm(x)
}

fn drawn(section: &Section) -> Display {
    let mut display = Display::new();
    section.draw(&mut display).unwrap();
    display
}

fn on(display: &Display, x: i32, y: i32) -> bool {
    display.pixel(Point::new(x, y)) == Some(BinaryColor::On)
}

/// Invented: 14 mm plates, straps of 11 and 10 mm, rows 52 and 40 mm apart, margin 35 mm, holes of 23 mm for rivets of 22.
fn unequal() -> Joint {
    let spec = JointSpec::new(Form::unequal_straps(3).unwrap(), mm(125.0), mm(14.0), mm(23.0)).rivet(mm(22.0));
    let spec = spec.straps(mm(11.0), mm(10.0)).margin(mm(35.0));
    spec.back_pitch(1, mm(52.0)).back_pitch(2, mm(40.0)).build().unwrap()
}

#[test]
fn unequal_straps_in_millimetres() {
    let section = Section::new(&unequal()).unwrap();
    let members: Vec<_> = section.members().map(|m| (m.across, m.down, m.strap)).collect();
    // Half of the wide strap 52 + 40 + 2 x 35 = 162, of the narrow one 40 + 2 x 35 = 110; plates drawn to 1.2 x 162.
    assert_eq!(members[0], ((-110.0, 110.0), (0.0, 10.0), true));
    assert!((members[1].0.0 + 194.4).abs() < 1e-9 && members[1].0.1 == 0.0 && members[1].1 == (10.0, 24.0));
    assert_eq!(members[3], ((-162.0, 162.0), (24.0, 35.0), true));
    // Row 1 lies 162 - 35 = 127 from the butt, through the wide strap alone; then 75 and 35, through both.
    let rivets: Vec<_> = section.rivets().map(|r| (r.across, r.down)).collect();
    let both = (0.0, 35.0);
    let row_1 = (10.0, 35.0);
    let expected = [(-127.0, row_1), (127.0, row_1), (-75.0, both), (75.0, both), (-35.0, both), (35.0, both)];
    assert_eq!(rivets, expected);
}

#[test]
fn unequal_straps_in_pixels() {
    let section = Section::new(&unequal()).unwrap();
    let view = section.view(Size::new(128, 64));
    // 125 pixels for 388.8 mm; the height, 35 + 2 x 0.7 x 22 = 65.8 mm, would allow more.
    assert!((view.factor - 125.0 / 388.8).abs() < 1e-12);
    let display = drawn(&section);
    // The plates are in the middle of the display: 17.5 mm above its middle line is the upper face of all.
    // Row 1 on the left: its shank from 63.5 - 138.5 x 0.3215 = 18.97 to 63.5 - 115.5 x 0.3215 = 26.37.
    let middle = 32;
    assert!(on(&display, 19, middle) && on(&display, 26, middle), "the edges of the shank");
    assert!((20..26).all(|x| !on(&display, x, middle)), "a rivet is not hatched");
    // The wide strap ends at 63.5 +- 162 x 0.3215 = 11.4 and 115.6, from 31.5 + 6.5 x 0.3215 = 33.6 to 37.1.
    assert!((34..=37).all(|y| on(&display, 11, y) && on(&display, 116, y)), "the ends of the wide strap");
    // Line 34 is also the lower face of the plates, which go on.
    assert!((35..=37).all(|y| !on(&display, 10, y) && !on(&display, 117, y)), "nothing beside them");
    // The narrow strap ends at 63.5 +- 110 x 0.3215 = 28.1 and 98.9, from 31.5 - 17.5 x 0.3215 = 25.9 to 29.1.
    assert!((26..=29).all(|y| on(&display, 28, y) && on(&display, 99, y)), "the ends of the narrow strap");
}

#[test]
fn a_lap_has_one_row_of_rivets_for_each_row() {
    let spec = JointSpec::new(Form::lap(2).unwrap(), mm(71.0), mm(13.0), mm(23.0)).rivet(mm(22.0));
    let joint = spec.margin(mm(35.0)).back_pitch(1, mm(40.0)).other_plate(mm(12.0)).build().unwrap();
    let section = Section::new(&joint).unwrap();
    // Overlap 40 + 2 x 35 = 110.
    assert_eq!(section.rivets().map(|r| r.across).collect::<Vec<_>>(), [-20.0, 20.0]);
    let members: Vec<_> = section.members().map(|m| (m.across, m.down)).collect();
    assert_eq!(members, [((-66.0, 55.0), (0.0, 13.0)), ((-55.0, 66.0), (13.0, 25.0))]);
}

#[test]
fn a_single_strap_lies_under_both_plates() {
    let spec = JointSpec::new(Form::single_strap(1).unwrap(), mm(60.0), mm(12.0), mm(21.0)).rivet(mm(20.0));
    let section = Section::new(&spec.strap(mm(14.0)).margin(mm(32.0)).build().unwrap()).unwrap();
    assert_eq!(
        section.rivets().map(|r| (r.across, r.down)).collect::<Vec<_>>(),
        [(-32.0, (0.0, 26.0)), (32.0, (0.0, 26.0))]
    );
    assert_eq!(section.members().last().unwrap().across, (-64.0, 64.0));
    assert_eq!(section.members().count(), 3);
}

#[test]
fn what_is_not_known_is_not_drawn() {
    let joint = JointSpec::new(Form::lap(1).unwrap(), mm(50.0), mm(6.0), mm(20.0)).build().unwrap();
    assert!(Section::new(&joint).is_none());
}

/// Every pixel lies on the display, however thin or thick the joint is.
#[test]
fn the_border_stays_free() {
    let thick = JointSpec::new(Form::lap(1).unwrap(), mm(200.0), mm(150.0), mm(40.0)).margin(mm(60.0)).build().unwrap();
    for joint in [unequal(), thick] {
        let display = drawn(&Section::new(&joint).unwrap());
        assert!((0..128).any(|x| on(&display, x, 32)), "nothing is drawn");
        for x in 0..128 {
            assert!(!on(&display, x, 0) && !on(&display, x, 63));
        }
        for y in 0..64 {
            assert!(!on(&display, 0, y) && !on(&display, 127, y));
        }
    }
}

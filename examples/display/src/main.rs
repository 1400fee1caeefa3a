//! Sections of four invented joints as images of 128 x 64: `cargo run -p seamwright-display -- <folder>`.
//!
//! A design aid: local codes, the inspecting authority and licensed practice govern; old shells need inspection.

use core::error::Error;
use std::{env, fs, path::Path};

use embedded_graphics::framebuffer::{Framebuffer, buffer_size};
use embedded_graphics::pixelcolor::{BinaryColor, raw::BigEndian, raw::RawU1};
use seamwright::joint::Form;
use seamwright::materials::Materials;
use seamwright::quantities::{Length, Stress};
use seamwright::rules::INDIAN;
use seamwright::sizing::{Brief, size};
use seamwright_display::Section;

/// A display of 128 x 64, one bit a pixel.
type Display = Framebuffer<BinaryColor, RawU1, BigEndian, 128, 64, { buffer_size::<BinaryColor>(128, 64) }>;

fn main() -> Result<(), Box<dyn Error>> {
    let folder = env::args().nth(1).unwrap_or_else(|| ".".to_owned());
    let steel = Materials::new(Stress::mpa(90.0), Stress::mpa(56.0)).bearing(Stress::mpa(140.0));
    for (name, form) in [
        ("lap", Form::lap(2)?),
        ("single_strap", Form::single_strap(2)?),
        ("equal_straps", Form::double_strap(2)?),
        ("unequal_straps", Form::unequal_straps(3)?),
    ] {
        let joint = size(&Brief::new(form, Length::mm(14.0), steel), &INDIAN.rules)?.joint;
        let section = Section::new(&joint).ok_or("the joint is not known in full")?;
        let mut display = Display::new();
        // A frame buffer takes every pixel.
        let Ok(()) = section.draw(&mut display);
        let mut image = b"P4\n# Invented joint. Design aid only.\n128 64\n".to_vec();
        image.extend_from_slice(display.data());
        fs::write(Path::new(&folder).join(format!("{name}.pbm")), image)?;
    }
    Ok(())
}

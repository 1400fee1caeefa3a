//! `seamwright bracket`: a group of rivets under a load that does not pass through their centroid.

use seamwright::bounds::Field;
use seamwright::group::{Group, GroupLoad, GroupStress};
use seamwright::quantities::{Force, Length, Moment, Stress};
use seamwright::working::{write_group_check, write_group_size};

use super::flags::BracketFlags;
use super::shell::{signed, style, unwritten};
use crate::failure::Failure;
use crate::flags::Flags;
use crate::task::Book;
use crate::units::{force, length, moment, point, stress};

/// Invented: two columns of three rivets, and a hoist that hangs in front of them.
const PLACES: [(f64, f64); 6] = [(0.0, 0.0), (90.0, 0.0), (0.0, 80.0), (90.0, 80.0), (0.0, 160.0), (90.0, 160.0)];

/// What is asked, from the flags or from the invented scenario.
struct Asked {
    group: Group,
    load: GroupLoad,
    stress: GroupStress,
    sized: bool,
}

/// Runs the study.
pub fn run(flags: &Flags, said: &BracketFlags) -> Result<String, Failure> {
    let invented = said.rivet_at.is_empty() && !flags.describes_a_joint();
    let missing = |name: &str, remedy: &str| Failure::usage(name, "is needed and was not given", remedy);
    let id = match &flags.book {
        Some(id) => id.as_str(),
        None if invented => "structural",
        None => return Err(missing("book", "name the rule book, as in --book structural")),
    };
    let book = Book::new(id, &flags.set, flags.units.into())?;
    let asked = if invented { hoist(&book, flags)? } else { stated(flags, said, &book)? };
    let style = style(flags);
    let (mut text, whole) = (String::new(), book.whole());
    let Asked { group, load, stress, sized } = asked;
    let written = if sized {
        write_group_size(&mut text, style, &group, &load, &stress, &whole).map(|_| ())
    } else {
        write_group_check(&mut text, style, &group, &load, &stress, &whole).map(|_| ())
    };
    written.map_err(|e| unwritten(e, &book, flags))?;
    if !invented {
        return Ok(signed(flags, style, &text));
    }
    let story = |said: &Option<String>, told: &str| Some(said.clone().unwrap_or_else(|| told.to_string()));
    let told = Flags {
        title: story(&flags.title, "Hoist bracket, invented example"),
        object: story(&flags.object, "Loft of Quernby mill (invented; no such mill exists)"),
        drawing: story(&flags.drawing, "QM-3 (invented)"),
        jurisdiction: story(&flags.jurisdiction, "none: invented example"),
        ..Flags::default()
    };
    let text = text.replace("Working: ", "Invented example. Working: ");
    Ok(signed(&told, style, &text))
}

fn hoist(book: &Book, flags: &Flags) -> Result<Asked, Failure> {
    let places = PLACES.map(|(x, y)| (Length::mm(x), Length::mm(y)));
    let group = Group::at(&places).map_err(|e| Failure::refused(&e, book, flags.units.into()))?;
    Ok(Asked {
        group: group.plate(Length::mm(12.0)),
        load: GroupLoad::force(Force::n(0.0), Force::kn(-32.0), Length::mm(345.0), Length::mm(80.0)),
        stress: GroupStress::new(Stress::mpa(90.0)).bearing(Stress::mpa(200.0)),
        sized: true,
    })
}

fn stated(flags: &Flags, said: &BracketFlags, book: &Book) -> Result<Asked, Failure> {
    let missing = |name: &str, remedy: &str| Failure::usage(name, "is needed and was not given", remedy);
    let refused = |e| Failure::refused(&e, book, flags.units.into());
    if said.rivet_at.is_empty() {
        return Err(missing("rivet-at", "write --rivet-at \"0 mm, 80 mm\", once for each rivet"));
    }
    let places: Vec<(Length, Length)> =
        said.rivet_at.iter().map(|text| point("rivet-at", text)).collect::<Result<_, _>>()?;
    let mut group = Group::at(&places).map_err(refused)?.planes(said.shear_planes);
    let hole = flags.hole.as_ref().map(|text| length(Field::Hole, text)).transpose()?;
    if let Some(hole) = hole {
        group = group.hole(hole);
    }
    if let Some(text) = &flags.rivet {
        group = group.rivet(length(Field::Rivet, text)?);
    }
    if let Some(text) = &flags.plate {
        group = group.plate(length(Field::Plate, text)?);
    }
    let part = |name: &str, text: &Option<String>| text.as_ref().map_or(Ok(Force::n(0.0)), |text| force(name, text));
    let (x, y) = (part("load-x", &said.load_x)?, part("load-y", &said.load_y)?);
    let couple = said.couple.as_ref().map_or(Ok(Moment::n_mm(0.0)), |text| moment("couple", text))?;
    let mut load = match &said.load_at {
        Some(text) => {
            let (at_x, at_y) = point("load-at", text)?;
            GroupLoad::force(x, y, at_x, at_y).and_couple(couple)
        }
        None if said.load_x.is_some() || said.load_y.is_some() => {
            return Err(missing("load-at", "write --load-at \"345 mm, 80 mm\", a point of the load's line"));
        }
        None => GroupLoad::couple(couple),
    };
    if let Some(n) = said.row_rivets {
        load = load.effective(n);
    }
    let shear =
        flags.shear.as_ref().ok_or_else(|| missing("shear", "write --shear \"90 MPa\", the stress permitted"))?;
    let mut permitted = GroupStress::new(stress(Field::Shear, shear)?);
    if let Some(text) = &flags.bearing {
        permitted = permitted.bearing(stress(Field::Bearing, text)?);
    }
    Ok(Asked { group, load, stress: permitted, sized: hole.is_none() && flags.rivet.is_none() })
}

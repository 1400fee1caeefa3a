//! Inputs whatsoever: mostly sensible figures, now and then any pattern of bits.

use proptest::prelude::*;
use proptest::sample::select;
use seamwright::joint::{Arrangement, Form, JointKind, JointSpec};
use seamwright::materials::{Materials, PlateStress};
use seamwright::quantities::{Length, Stress};
use seamwright::sizing::Brief;

/// A figure: usual, at odds with reason, or any bits at all.
fn figure(lo: f64, hi: f64, usual: u32) -> impl Strategy<Value = f64> {
    let odd = vec![0.0, -0.0, f64::NAN, f64::INFINITY, f64::MIN_POSITIVE, 5e-324, f64::MAX, -1.0, 1e300, 0.5, 200.0];
    prop_oneof![usual => lo..hi, 1 => select(odd), 1 => any::<u64>().prop_map(f64::from_bits)]
}

fn length(lo: f64, hi: f64) -> impl Strategy<Value = Length> {
    figure(lo, hi, 60).prop_map(Length::mm)
}

fn stress() -> impl Strategy<Value = Stress> {
    figure(20.0, 900.0, 60).prop_map(Stress::mpa)
}

/// Any row list, sound or not.
fn list() -> impl Strategy<Value = Vec<(u8, u8)>> {
    let sound = prop::collection::vec((1..6_u8, Just(1_u8)), 1..=8);
    let double = prop::collection::vec((1..6_u8, Just(2_u8)), 1..=8);
    let any = prop::collection::vec((any::<u8>(), any::<u8>()), 0..12);
    prop_oneof![8 => sound, 8 => double, 2 => any]
}

/// Any form that can be had from any list; with the error where it cannot.
pub fn any_form() -> impl Strategy<Value = Result<Form, seamwright::Error>> {
    let kinds = select(vec![JointKind::Lap, JointKind::SingleStrap, JointKind::DoubleStrap]);
    let arrangements = select(vec![Arrangement::Chain, Arrangement::Zigzag]);
    (kinds, arrangements, list(), any::<u8>()).prop_map(|(kind, arrangement, mut rows, single)| {
        if kind == JointKind::DoubleStrap {
            // Some rows outside through one strap only.
            let outer = usize::from(single) % (rows.len() + 1);
            rows.iter_mut().take(outer).filter(|r| r.1 == 2).for_each(|r| r.1 = 1);
        }
        Form::from_rows(kind, arrangement, &rows)
    })
}

pub fn any_materials() -> impl Strategy<Value = Materials> {
    let plate = || {
        (stress(), prop::option::of(stress()), prop::option::of(stress()))
            .prop_map(|(tension, bearing, shear_out)| PlateStress { tension, bearing, shear_out })
    };
    (plate(), plate(), stress()).prop_map(|(plate, other, rivet_shear)| Materials { plate, other, rivet_shear })
}

/// The figures of any joint of a form: strip, plate, other, narrow, margin; holes; gaps; which of them are stated.
pub fn any_spec(form: Form) -> impl Strategy<Value = JointSpec> {
    let hole = || (length(9.0, 30.0), prop::option::of(length(8.0, 12.0)));
    let thick = || length(3.0, 40.0);
    let rows = prop::collection::vec((any::<u8>(), hole()), 0..9);
    let gaps = prop::collection::vec((0..9_usize, length(15.0, 90.0)), 0..9);
    let margin = prop::option::of(length(16.0, 60.0));
    (length(100.0, 400.0), (thick(), thick(), thick()), hole(), rows, gaps, margin, any::<[bool; 5]>()).prop_map(
        move |(strip, (plate, other, narrow), hole, rows, gaps, margin, on)| {
            let mut spec = JointSpec::new(form, strip, plate, hole.0);
            if let (Some(rivet), true) = (hole.1, on[0]) {
                spec = spec.rivet(rivet);
            }
            let count = form.row_count();
            for (at, (hole, rivet)) in rows {
                // Mostly rows that there are.
                let row = if at > 250 { usize::from(at) } else { usize::from(at) % count + 1 };
                spec = spec.row(row, hole, rivet);
            }
            for (at, gap) in gaps {
                let row = if at > 7 || count < 2 { at } else { at % (count - 1) + 1 };
                spec = if count > 1 || at > 7 { spec.back_pitch(row, gap) } else { spec };
            }
            spec = match (form.kind(), on[1], on[2]) {
                (JointKind::Lap, true, _) => spec.other_plate(other),
                (JointKind::SingleStrap, true, _) => spec.strap(other),
                (JointKind::DoubleStrap, true, true) => spec.straps(other, narrow),
                (JointKind::DoubleStrap, true, false) => spec.strap(other),
                (_, false, true) if on[3] && on[4] => spec.straps(other, narrow),
                _ => spec,
            };
            margin.map_or(spec, |m| spec.margin(m))
        },
    )
}

pub fn any_brief(form: Form) -> impl Strategy<Value = Brief> {
    let option = |lo, hi| prop::option::weighted(0.3, length(lo, hi));
    let lengths = (length(3.0, 40.0), option(3.0, 40.0), option(9.0, 30.0), option(8.0, 29.0), option(60.0, 400.0));
    (any_materials(), lengths, option(3.0, 40.0), option(3.0, 40.0), option(15.0, 60.0), option(20.0, 90.0)).prop_map(
        move |(materials, (plate, other, hole, rivet, pitch), wide, narrow, margin, gap)| {
            let mut brief = Brief::new(form, plate, materials);
            if let Some(other) = other {
                brief = brief.other_plate(other);
            }
            if let Some(hole) = hole {
                brief = brief.hole(hole, rivet);
            }
            if let Some(pitch) = pitch {
                brief = brief.pitch(pitch);
            }
            if let Some(wide) = wide {
                brief = brief.straps(wide, narrow);
            }
            if let Some(gap) = gap {
                brief = brief.back_pitch(1, gap).back_pitch(9, gap);
            }
            margin.map_or(brief, |m| brief.margin(m))
        },
    )
}

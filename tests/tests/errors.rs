//! Errors: every kind raised by a realistic bad input, with field, value, limit, entry and row; every bounded field and
//! every entry of the rule books at its ends, just outside, and not finite.

mod support;

use std::collections::HashSet;

use seamwright::bounds::{FIELDS, Field, Unit};
use seamwright::drawing::{TitleBlock, svg_into};
use seamwright::error::{EntryNo, Error, ErrorKind, KINDS};
use seamwright::materials::{Materials, PlateStress};
use seamwright::quantities::Stress;
use seamwright::rules::{Entry, EntryKind, METRIC, info};
use seamwright::shop::{HeadForm, LengthRule, Order, Run, Stock, Style, Units, shop_sheet};
use seamwright::sizing::{Brief, size};
use support::{bad_inputs, form, joint, materials, mm, near, symbols};

/// Two figures that agree, both possibly not numbers.
fn alike(a: f64, b: f64) -> bool {
    (a.is_nan() && b.is_nan()) || a == b || near(a, b)
}

#[test]
fn every_bad_input_says_what_is_wrong_with_what() {
    for bad in bad_inputs() {
        let e = bad.error;
        assert_eq!((e.kind, e.field), bad.about, "{}", bad.what);
        assert!(alike(e.value, bad.figures.0), "{}: value {}", bad.what, e.value);
        assert!(alike(e.limit, bad.figures.1), "{}: limit {}", bad.what, e.limit);
        assert_eq!((e.entry, e.other), bad.entries, "{}", bad.what);
        assert_eq!(e.index, bad.index, "{}", bad.what);
    }
}

#[test]
fn every_kind_is_raised() {
    let raised: HashSet<ErrorKind> = bad_inputs().iter().map(|b| b.error.kind).collect();
    let missing: Vec<_> = KINDS.iter().filter(|k| !raised.contains(k)).collect();
    assert!(missing.is_empty(), "never raised: {missing:?}");
}

/// Up to six decimals, as a reader would write it.
fn written(x: f64) -> String {
    if x.is_infinite() {
        return if x > 0.0 { "infinity".into() } else { "-infinity".into() };
    }
    format!("{x:.6}").trim_end_matches('0').trim_end_matches('.').to_string()
}

#[test]
fn the_text_names_field_value_limit_and_remedy() {
    for bad in bad_inputs() {
        let (e, text) = (bad.error, bad.error.to_string());
        let bound = e.field.bound();
        let unit = if bound.unit.symbol().is_empty() { String::new() } else { format!(" {}", bound.unit.symbol()) };
        assert!(text.starts_with(bound.key), "{text}");
        assert!(text.contains(e.kind.text()) && text.contains(e.kind.remedy()), "{text}");
        if !e.value.is_nan() {
            assert!(text.contains(&format!(" = {}{unit}", written(e.value))), "{text}");
        }
        let limit = format!("(limit {}{unit})", written(e.limit));
        assert_eq!(text.contains(&limit), !e.limit.is_nan(), "{text}");
        assert_eq!(text.contains(&format!("(no. {})", e.index)), e.index > 0, "{text}");
        assert_eq!(text.contains("would do"), !e.hint.is_nan(), "{text}");
        assert!(text.is_ascii() && !text.contains("NaN") && !text.contains("  "), "{text}");
        // Errors travel as errors do.
        let boxed: Box<dyn core::error::Error> = Box::new(e);
        assert_eq!(boxed.to_string(), text);
    }
}

#[test]
fn one_text_word_for_word() {
    let e = joint(form("lap 1"), &symbols(&[("p", 60.0), ("t", 10.0), ("d", 20.0), ("dr", 21.0)])).unwrap_err();
    let text = "rivet (no. 1) = 21 mm is greater than its hole (limit 20 mm); take a larger hole or a smaller rivet";
    assert_eq!(e.to_string(), text);
}

#[test]
fn kinds_are_numbered_and_worded_apart() {
    let numbers: Vec<u8> = KINDS.iter().map(|k| *k as u8).collect();
    assert_eq!(numbers, (1..=u8::try_from(KINDS.len()).unwrap()).collect::<Vec<_>>());
    for (i, a) in KINDS.iter().enumerate() {
        assert!(!a.text().is_empty() && !a.remedy().is_empty());
        assert!(KINDS.iter().skip(i + 1).all(|b| a.text() != b.text()));
    }
}

/// The next number up and down.
fn outside(lo: f64, hi: f64) -> [f64; 2] {
    [lo.next_down(), hi.next_up()]
}

#[test]
fn every_field_at_its_ends() {
    for field in FIELDS {
        let b = field.bound();
        assert_eq!(field.check(b.lo), Ok(b.lo), "{field:?}");
        assert_eq!(field.check(b.hi), Ok(b.hi), "{field:?}");
        let [below, above] = outside(b.lo, b.hi);
        let small = field.check(below).unwrap_err();
        assert_eq!((small.kind, small.field, small.value, small.limit), (ErrorKind::TooSmall, *field, below, b.lo));
        let large = field.check(above).unwrap_err();
        assert_eq!((large.kind, large.field, large.value, large.limit), (ErrorKind::TooLarge, *field, above, b.hi));
        for x in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY] {
            let e = field.check(x).unwrap_err();
            assert_eq!((e.kind, e.field, e.limit.is_nan()), (ErrorKind::NotFinite, *field, true), "{field:?} {x}");
        }
    }
}

/// Sets one stress of a set that is otherwise sound, and validates.
fn stressed(field: Field, x: f64) -> Option<Error> {
    let s = Stress::mpa(x);
    let mut plate = PlateStress { tension: Stress::mpa(80.0), bearing: None, shear_out: None };
    let mut other = plate;
    let mut rivet_shear = Stress::mpa(60.0);
    match field {
        Field::Tension => plate.tension = s,
        Field::OtherTension => other.tension = s,
        Field::Shear => rivet_shear = s,
        Field::Bearing => plate.bearing = Some(s),
        Field::OtherBearing => other.bearing = Some(s),
        Field::PlateShear => plate.shear_out = Some(s),
        _ => return None,
    }
    Materials { plate, other, rivet_shear }.validate().err()
}

#[test]
fn bounds_hold_at_the_public_door() {
    // Every stress and every length of a joint, by way of the routines that take them.
    let base = [("p", 60.0), ("t", 10.0), ("d", 20.0), ("st", 80.0), ("ss", 60.0), ("sc", 120.0)];
    let built = |name: &str, key: &str, x: f64| {
        let mut s = symbols(&base);
        s.insert(key.into(), x);
        if key == "bw" || key == "bn" {
            s.insert("bw".into(), if key == "bw" { x } else { 8.0 });
            s.insert("bn".into(), if key == "bn" { x } else { 8.0 });
        }
        joint(form(name), &s).err()
    };
    for (field, name, key) in [
        (Field::Plate, "lap 1", "t"),
        (Field::OtherPlate, "lap 1", "t2"),
        (Field::WideStrap, "double 1", "bw"),
        (Field::NarrowStrap, "double 1", "bn"),
        (Field::Pitch, "lap 1", "p"),
        (Field::Hole, "lap 1", "d"),
        (Field::Rivet, "lap 1", "dr"),
        (Field::BackPitch, "lap 2", "g"),
        (Field::Margin, "lap 1", "m"),
    ] {
        let b = field.bound();
        let [below, above] = outside(b.lo, b.hi);
        for (x, kind) in [
            (f64::NAN, ErrorKind::NotFinite),
            (f64::INFINITY, ErrorKind::NotFinite),
            (f64::NEG_INFINITY, ErrorKind::NotFinite),
            (below, ErrorKind::TooSmall),
            (0.0, ErrorKind::TooSmall),
            (-b.hi, ErrorKind::TooSmall),
            (above, ErrorKind::TooLarge),
        ] {
            let e = built(name, key, x).unwrap_or_else(|| panic!("{field:?} = {x} was accepted"));
            assert_eq!((e.kind, e.field), (kind, field), "{field:?} = {x}");
        }
    }
    for field in
        [Field::Tension, Field::OtherTension, Field::Shear, Field::Bearing, Field::OtherBearing, Field::PlateShear]
    {
        let b = field.bound();
        let [below, above] = outside(b.lo, b.hi);
        assert_eq!((stressed(field, b.lo), stressed(field, b.hi)), (None, None), "{field:?}");
        for x in [below, above, 0.0, -80.0, f64::NAN, f64::INFINITY] {
            assert_eq!(stressed(field, x).unwrap().field, field, "{field:?} = {x}");
        }
    }
}

#[test]
fn sizing_refuses_what_building_refuses() {
    let s = symbols(&[("st", 80.0), ("ss", 60.0), ("sc", 120.0)]);
    let lap = |t: f64| Brief::new(form("lap 1"), mm(t), materials(&s));
    let cases = [
        (lap(f64::NAN), Field::Plate),
        (lap(0.0), Field::Plate),
        (lap(10.0).other_plate(mm(-1.0)), Field::OtherPlate),
        (lap(10.0).hole(mm(f64::INFINITY), None), Field::Hole),
        (lap(10.0).hole(mm(20.0), Some(mm(0.0))), Field::Rivet),
        (lap(10.0).hole(mm(20.0), Some(mm(22.0))), Field::Rivet),
        (lap(10.0).pitch(mm(f64::NAN)), Field::Pitch),
        (lap(10.0).margin(mm(-5.0)), Field::Margin),
        (lap(10.0).back_pitch(1, mm(40.0)), Field::Rows),
        (lap(10.0).straps(mm(8.0), None), Field::WideStrap),
    ];
    for (i, (brief, field)) in cases.into_iter().enumerate() {
        assert_eq!(size(&brief, &METRIC.rules).unwrap_err().field, field, "case {i}");
    }
    let mut worst = s.clone();
    worst.insert("ss".into(), -1.0);
    let brief = Brief::new(form("lap 1"), mm(10.0), materials(&worst));
    assert_eq!(size(&brief, &METRIC.rules).unwrap_err().field, Field::Shear);
}

#[test]
fn every_entry_at_its_ends() {
    let rules = METRIC.rules;
    for entry in Entry::all() {
        let row = info(entry);
        let refused = |x: f64| rules.with(entry, x).unwrap_err();
        for x in [row.lo, row.hi] {
            assert_eq!(rules.with(entry, x).map(|r| r.get(entry)), Ok(x), "{}", row.key);
        }
        let [below, above] = outside(row.lo, row.hi);
        for (x, kind, limit) in [(below, ErrorKind::TooSmall, row.lo), (above, ErrorKind::TooLarge, row.hi)] {
            let e = refused(x);
            assert_eq!((e.kind, e.field, e.value, e.limit), (kind, Field::RuleEntry, x, limit), "{}", row.key);
            assert_eq!((e.entry, e.index), (entry.no(), row.line), "{}", row.key);
        }
        for x in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY] {
            assert_eq!(refused(x).kind, ErrorKind::NotFinite, "{}", row.key);
        }
        if !matches!(row.kind, EntryKind::Number(_)) {
            for x in [0.5, 1e-6, 1.0 - 1e-6] {
                let e = refused(x);
                assert_eq!((e.kind, e.limit), (ErrorKind::WrongChoice, row.hi), "{} = {x}", row.key);
            }
        }
    }
}

#[test]
fn units_of_fields_are_those_of_their_bounds() {
    for field in FIELDS {
        let b = field.bound();
        assert!(!b.key.is_empty() && !b.what.is_empty() && b.lo <= b.hi, "{field:?}");
        assert!(b.unit != Unit::Count || (b.lo.fract() == 0.0 && b.hi.fract() == 0.0), "{field:?}");
        assert_eq!(FIELDS.iter().filter(|f| f.bound().key == b.key).count(), 1, "{}", b.key);
    }
    assert!(!EntryNo::NONE.is_some());
}

#[test]
fn a_hint_is_a_hole_that_would_do() {
    let s = symbols(&[("st", 80.0), ("ss", 60.0), ("sc", 120.0)]);
    // Lap: the cap is 1.31 x 5 + 41.28 = 47.83, the step below it 47, and half of that a hole. With alternate rivets
    // left out the floor belongs to the inner row, of two rivets: 4.63 x 5 + 41.28 = 64.43, 64, a quarter of that.
    for (name, least, most, hint) in [("lap 1", 60.0, 47.83, 23.5), ("double 2 omitted", 120.0, 64.43, 16.0)] {
        let brief = Brief::new(form(name), mm(5.0), materials(&s)).hole(mm(30.0), None);
        let e = size(&brief, &METRIC.rules).unwrap_err();
        assert_eq!((e.kind, e.hint_field), (ErrorKind::NoAdmissiblePitch, Field::Hole), "{name}");
        assert!(near(e.value, least) && near(e.limit, most) && near(e.hint, hint), "{name}: {e}");
        assert!(e.to_string().ends_with(&format!("; hole = {hint} mm would do")), "{e}");
        assert!(size(&brief.hole(mm(hint), None), &METRIC.rules).is_ok(), "{name}");
    }
}

/// Writes into a buffer; the bytes written.
type Writer<'a> = dyn Fn(&mut [u8]) -> Result<usize, Error> + 'a;

#[test]
fn a_short_buffer_is_told_the_size_that_will_do() {
    let s = symbols(&[("p", 50.0), ("t", 10.0), ("d", 20.0), ("m", 30.0), ("st", 80.0), ("ss", 60.0), ("sc", 120.0)]);
    let (joint, title) = (joint(form("lap 1"), &s).unwrap(), TitleBlock::new("Feed tank", "T-7"));
    let run = Run::Straight { length: mm(660.0), first_end: mm(30.0), last_end: mm(30.0) };
    let order = Order::steel(run, HeadForm::Button, LengthRule::BoilerButton, Stock::cut_to_length());
    let sheet = shop_sheet(&joint, &materials(&s), &METRIC.rules, &order).unwrap();
    let style = Style::new(Units::Millimetre);
    let writers: [&Writer<'_>; 3] =
        [&|b| svg_into(b, &joint, &title).map(str::len), &|b| sheet.text_in(b, &METRIC, &style).map(str::len), &|b| {
            sheet.markdown_in(b, &METRIC, &style).map(str::len)
        }];
    for write in writers {
        let needed = write(&mut []).unwrap_err().limit;
        let mut room = vec![0; needed as usize - 1];
        let e = write(&mut room).unwrap_err();
        assert_eq!((e.kind, e.field, e.value, e.limit), (ErrorKind::NoSpace, Field::Text, needed - 1.0, needed));
        room.push(0);
        assert_eq!(write(&mut room), Ok(room.len()));
    }
}

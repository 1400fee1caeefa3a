//! What the library and the C functions say of a case, as text, bit for bit; and the case itself as text for a program
//! in C.
#![allow(dead_code, reason = "each test uses its share")]

use core::fmt::Write as _;
use core::ptr::null_mut;
use std::ffi::CString;

use seamwright::Error;
use seamwright::check::{Analysis, Findings, check};
use seamwright::joint::{Form, Joint};
use seamwright::materials::Materials;
use seamwright::proportion::Limit;
use seamwright::quantities::{Length, Stress};
use seamwright::rules::Rules;
use seamwright::sizing::{Brief, size};
use seamwright_c::*;
use seamwright_tests::strengths;

/// The bits of a figure; every "not a number" alike.
pub fn bits(out: &mut String, x: f64) {
    let x = if x.is_nan() { f64::NAN } else { x };
    write!(out, " {:016x}", x.to_bits()).unwrap();
}

pub fn refused(out: &mut String, e: &Error) {
    write!(out, " {} {} {} {}", e.kind as u32, e.field as u32, e.index, e.entry.0).unwrap();
    bits(out, e.value);
    bits(out, e.limit);
}

pub fn analysed(out: &mut String, a: &Analysis) {
    let p = &a.percentages;
    for x in [a.solid, a.tear_outer, a.shear_all, a.bearing_all.unwrap_or(f64::NAN), a.governing.strength] {
        bits(out, x);
    }
    for x in [a.runner_up.strength, a.by_book.strength, a.runner_up_ratio(), a.efficiency, a.book_efficiency] {
        bits(out, x);
    }
    for x in [a.credited, p.plate, p.rivet, p.combined.unwrap_or(f64::NAN)] {
        bits(out, x);
    }
    found(out, &a.findings);
}

pub fn listed(out: &mut String, joint: &Joint, materials: &Materials, rules: &Rules) {
    let all = strengths(joint, materials, rules);
    write!(out, " {}", all.modes().count()).unwrap();
    for mode in all.modes() {
        write!(out, " {} {} {}", mode.cut.plate, mode.cut.other, mode.cut.narrow).unwrap();
        bits(out, mode.strength);
        write!(out, " [{}]", mode.name(joint.form())).unwrap();
    }
}

/// A check by the library.
pub fn checked_by_core(joint: &Joint, materials: &Materials, rules: &Rules) -> String {
    let mut out = String::from("check");
    match check(joint, materials, rules) {
        Err(e) => refused(&mut out, &e),
        Ok(a) => {
            out.push_str(" 0");
            analysed(&mut out, &a);
            listed(&mut out, joint, materials, rules);
        }
    }
    out
}

/// A sizing by the library.
pub fn sized_by_core(brief: &Brief, rules: &Rules) -> String {
    let mut out = String::from("size");
    match size(brief, rules) {
        Err(e) => refused(&mut out, &e),
        Ok(d) => {
            out.push_str(" 0");
            let at = |l: &Limit<f64>| if let Limit::At(x, _) = l { *x } else { f64::NAN };
            let j = &d.joint;
            let mm = |l: Option<Length>| l.map_or(0.0, |l| l.to_mm());
            let wide = mm(j.wide_strap());
            for x in [d.hole.computed.map_or(f64::NAN, |c| c.0), d.hole.hole, d.hole.rivet, d.pitch.by_shear] {
                bits(&mut out, x);
            }
            for x in [d.pitch.by_weaker, d.pitch.by_all_modes, d.pitch.least, at(&d.pitch.greatest), d.pitch.taken] {
                bits(&mut out, x);
            }
            for x in [d.margin, at(&d.straps[0]), at(&d.straps[1]), j.strip().to_mm(), wide, mm(j.narrow_strap())] {
                bits(&mut out, x);
            }
            bits(&mut out, mm(j.margin()));
            for row in 1..=8 {
                bits(&mut out, mm(j.back_pitch(row)));
            }
            for room in d.heads {
                bits(&mut out, room.at_strap.unwrap_or(f64::NAN));
                bits(&mut out, room.of_rows.unwrap_or(f64::NAN));
            }
            analysed(&mut out, &d.analysis);
        }
    }
    out
}

pub fn made<T>(init: extern "C" fn(*mut T)) -> T {
    let mut place = core::mem::MaybeUninit::<T>::zeroed();
    init(place.as_mut_ptr());
    // SAFETY: the init function filled it.
    unsafe { place.assume_init() }
}

pub fn c_refused(out: &mut String, status: u32, e: &sw_error) {
    assert_eq!(status, e.status);
    write!(out, " {} {} {} {}", e.status, e.field, e.index, e.entry).unwrap();
    bits(out, e.value);
    bits(out, e.limit);
}

pub fn c_analysed(out: &mut String, a: &sw_analysis, findings: &[sw_finding]) {
    for x in [a.solid_n, a.tear_outer_n, a.shear_all_n, a.bearing_all_n, a.governing.strength_n] {
        bits(out, x);
    }
    for x in [a.runner_up.strength_n, a.by_book.strength_n, a.runner_up_ratio, a.efficiency, a.book_efficiency] {
        bits(out, x);
    }
    for x in [a.credited_efficiency, a.plate_percentage, a.rivet_percentage, a.combined_percentage] {
        bits(out, x);
    }
    assert_eq!(a.findings as usize, findings.len());
    c_found(out, findings);
}

pub fn text(write: impl Fn(*mut core::ffi::c_char, usize, *mut usize) -> u32) -> String {
    let mut needed = 0;
    assert_eq!(write(null_mut(), 0, &mut needed), SW_OK);
    let mut buffer = vec![0xaa_u8; needed];
    assert_eq!(write(buffer.as_mut_ptr().cast(), needed, &mut needed), SW_OK);
    assert_eq!(buffer.pop(), Some(0));
    String::from_utf8(buffer).unwrap()
}

/// A check by the C functions.
pub fn checked_by_c(joint: &sw_joint, materials: &sw_materials, rules: &sw_rules) -> String {
    let mut out = String::from("check");
    let (mut a, mut e) = (made(sw_analysis_init), made(sw_error_init));
    let mut findings = Vec::with_capacity(SW_MAX_FINDINGS);
    let mut n = 0;
    let status =
        sw_joint_check(joint, materials, rules, &mut a, findings.as_mut_ptr(), SW_MAX_FINDINGS, &mut n, &mut e);
    if status != SW_OK {
        c_refused(&mut out, status, &e);
        return out;
    }
    // SAFETY: as many were written.
    unsafe { findings.set_len(n) };
    out.push_str(" 0");
    c_analysed(&mut out, &a, &findings);
    let mut count = 0;
    assert_eq!(sw_modes_list(joint, materials, rules, null_mut(), 0, &mut count, null_mut()), SW_OK);
    write!(out, " {count}").unwrap();
    let (mut cursor, mut mode) = (0, a.governing);
    while sw_modes_next(joint, materials, rules, &mut cursor, &mut mode, null_mut()) == SW_OK {
        write!(out, " {} {} {}", mode.plate_row, mode.other_row, mode.narrow_row).unwrap();
        bits(&mut out, mode.strength_n);
        write!(out, " [{}]", text(|b, n, s| sw_mode_name(&joint.form, &mode, b, n, s))).unwrap();
    }
    assert_eq!(cursor as usize, count);
    out
}

/// A sizing by the C functions.
pub fn sized_by_c(brief: &sw_brief, rules: &sw_rules) -> String {
    let mut out = String::from("size");
    let (mut j, mut d) = (made(sw_joint_init), made(sw_design_init));
    let (mut a, mut e) = (made(sw_analysis_init), made(sw_error_init));
    let mut findings = Vec::with_capacity(SW_MAX_FINDINGS);
    let mut n = 0;
    let room = findings.as_mut_ptr();
    let status = sw_joint_size(brief, rules, &mut j, &mut d, &mut a, room, SW_MAX_FINDINGS, &mut n, &mut e);
    if status != SW_OK {
        c_refused(&mut out, status, &e);
        return out;
    }
    // SAFETY: as many were written.
    unsafe { findings.set_len(n) };
    out.push_str(" 0");
    for x in [d.hole_computed_mm, d.hole_mm, d.rivet_mm, d.pitch_by_shear_mm, d.pitch_by_weaker_mm] {
        bits(&mut out, x);
    }
    for x in [d.pitch_by_all_modes_mm, d.pitch_least_mm, d.pitch_greatest_mm, d.pitch_mm, d.margin_least_mm] {
        bits(&mut out, x);
    }
    for x in [d.wide_strap_least_mm, d.narrow_strap_least_mm, j.pitch_mm, j.wide_strap_mm, j.narrow_strap_mm] {
        bits(&mut out, x);
    }
    bits(&mut out, j.margin_mm);
    j.back_pitch_mm.iter().for_each(|x| bits(&mut out, *x));
    for (at_strap, of_rows) in d.heads_at_strap_mm.iter().zip(d.heads_of_rows_mm) {
        bits(&mut out, *at_strap);
        bits(&mut out, of_rows);
    }
    c_analysed(&mut out, &a, &findings);
    out
}

pub fn numbers(out: &mut String, list: &[f64]) {
    list.iter().for_each(|x| bits(out, *x));
}

/// The head of a case: what it is, the book with its edits, form and stresses.
pub fn case_head(what: &str, book: &str, edits: &[(String, f64)], f: &sw_form, m: &sw_materials) -> String {
    let mut out = format!("{what} {book} {}", edits.len());
    for (key, value) in edits {
        write!(out, " {key}").unwrap();
        bits(&mut out, *value);
    }
    write!(out, " {} {} {}", f.kind, f.arrangement, f.row_count).unwrap();
    (0..8).for_each(|i| write!(out, " {} {}", f.rivets[i], f.planes[i]).unwrap());
    numbers(&mut out, &[m.tension_mpa, m.rivet_shear_mpa, m.bearing_mpa, m.shear_out_mpa]);
    numbers(&mut out, &[m.other_tension_mpa, m.other_bearing_mpa, m.other_shear_out_mpa]);
    out
}

/// The dimensions of a joint.
pub fn case_joint(out: &mut String, j: &sw_joint) {
    numbers(out, &[j.pitch_mm, j.plate_mm, j.other_plate_mm, j.wide_strap_mm, j.narrow_strap_mm, j.margin_mm]);
    (0..8).for_each(|i| numbers(out, &[j.hole_mm[i], j.rivet_mm[i], j.back_pitch_mm[i]]));
}

/// The dimensions of a brief.
pub fn case_brief(out: &mut String, b: &sw_brief) {
    numbers(out, &[b.plate_mm, b.other_plate_mm, b.hole_mm, b.rivet_mm, b.pitch_mm]);
    numbers(out, &[b.wide_strap_mm, b.narrow_strap_mm, b.margin_mm]);
    numbers(out, &b.back_pitch_mm);
}

/// A book of an id with its edits, through the C functions.
pub fn rules_by_c(book: &str, edits: &[(String, f64)]) -> sw_rules {
    let mut rules = made(sw_rules_init);
    let id = CString::new(book).unwrap();
    assert_eq!(sw_rules_find(id.as_ptr(), &mut rules, null_mut()), SW_OK);
    for (key, value) in edits {
        let key = CString::new(key.as_str()).unwrap();
        assert_eq!(sw_rules_set(&mut rules, key.as_ptr(), *value, null_mut()), SW_OK);
    }
    rules
}

/// Findings, by the library and by C.
pub fn found(out: &mut String, list: &Findings) {
    write!(out, " {}", list.len()).unwrap();
    for f in list.iter() {
        write!(out, " {} {} {} {}", f.subject as u32, f.row, f.entry.0, f.verdict as u32).unwrap();
        bits(out, f.required);
        bits(out, f.provided);
    }
}

/// The same by C.
pub fn c_found(out: &mut String, list: &[sw_finding]) {
    write!(out, " {}", list.len()).unwrap();
    for f in list {
        write!(out, " {} {} {} {}", f.subject, f.row, f.entry, f.verdict).unwrap();
        bits(out, f.required);
        bits(out, f.provided);
    }
}

/// A form in C's terms.
pub fn c_form_of(form: &Form) -> sw_form {
    let (kind, arrangement) = (form.kind() as u32, form.arrangement() as u32);
    let mut c = sw_form { kind, arrangement, row_count: 0, reserved: 0, rivets: [0; 8], planes: [0; 8] };
    for (i, row) in form.rows().enumerate() {
        (c.rivets[i], c.planes[i]) = (u32::from(row.rivets), u32::from(row.planes));
        c.row_count += 1;
    }
    c
}

/// A joint in C's terms, member by member from what the library says of it.
pub fn c_joint_of(joint: &Joint) -> sw_joint {
    let mm = |l: Option<Length>| l.map_or(0.0, Length::to_mm);
    let mut c = made(sw_joint_init);
    c.form = c_form_of(joint.form());
    (c.pitch_mm, c.plate_mm) = (joint.strip().to_mm(), joint.plate().to_mm());
    (c.other_plate_mm, c.margin_mm) = (mm(joint.other_plate()), mm(joint.margin()));
    (c.wide_strap_mm, c.narrow_strap_mm) = (mm(joint.wide_strap()), mm(joint.narrow_strap()));
    for (i, row) in joint.rows().iter().enumerate() {
        (c.hole_mm[i], c.rivet_mm[i]) = (row.hole().to_mm(), row.rivet().to_mm());
        c.back_pitch_mm[i] = mm(joint.back_pitch(i + 1));
    }
    c
}

/// Stresses in C's terms.
pub fn c_materials_of(m: &Materials) -> sw_materials {
    let mpa = |s: Option<Stress>| s.map_or(0.0, Stress::to_mpa);
    let mut c = made(sw_materials_init);
    (c.tension_mpa, c.rivet_shear_mpa) = (m.plate.tension.to_mpa(), m.rivet_shear.to_mpa());
    (c.bearing_mpa, c.shear_out_mpa) = (mpa(m.plate.bearing), mpa(m.plate.shear_out));
    (c.other_tension_mpa, c.other_bearing_mpa) = (m.other.tension.to_mpa(), mpa(m.other.bearing));
    c.other_shear_out_mpa = mpa(m.other.shear_out);
    c
}

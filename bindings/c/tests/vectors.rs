//! All golden vectors through the C functions, bit for bit what the library itself gives.
//!
//! With `SEAMWRIGHT_C_DUMP=<folder>` the cases and the library's answers are written there as text; the program
//! `tests/c/vectors.c` reads the cases and must print the answers.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, missing_docs, reason = "a test")]
#![allow(clippy::indexing_slicing, clippy::arithmetic_side_effects, reason = "a test")]

use core::fmt::Write as _;
use core::ptr::{null, null_mut};
use std::ffi::CString;
use std::fs;
use std::path::PathBuf;

use seamwright::Error;
use seamwright::check::{Analysis, check};
use seamwright::joint::Joint;
use seamwright::materials::Materials;
use seamwright::proportion::Limit;
use seamwright::rules::Rules;
use seamwright::sizing::size;
use seamwright_c::*;
use seamwright_tests::units::{length, stress};
use seamwright_tests::{
    Stated, Vector, brief_of, form_of, joint_of, load, load_file, materials_of, rules_of, strengths, vectors_dir,
};

/// The published vectors and the misprints, each under its own book and then under every built-in book as it stands.
fn vectors() -> Vec<Vector> {
    let mut own = load(&vectors_dir());
    own.extend(load_file(&vectors_dir().join("misprints.toml")));
    let mut all = own.clone();
    for book in seamwright::rules::BOOKS {
        all.extend(own.iter().map(|v| Vector { book: book.id.to_owned(), edits: Default::default(), ..v.clone() }));
    }
    all
}

/// The bits of a figure; every "not a number" alike.
fn bits(out: &mut String, x: f64) {
    let x = if x.is_nan() { f64::NAN } else { x };
    write!(out, " {:016x}", x.to_bits()).unwrap();
}

// --- What the library itself says ------------------------------------------------------------------------------------

fn refused(out: &mut String, e: &Error) {
    write!(out, " {} {} {} {}", e.kind as u32, e.field as u32, e.index, e.entry.0).unwrap();
    bits(out, e.value);
    bits(out, e.limit);
}

fn analysed(out: &mut String, a: &Analysis) {
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
    write!(out, " {}", a.findings.len()).unwrap();
    for f in a.findings.iter() {
        write!(out, " {} {} {} {}", f.subject as u32, f.row, f.entry.0, f.verdict as u32).unwrap();
        bits(out, f.required);
        bits(out, f.provided);
    }
}

fn listed(out: &mut String, joint: &Joint, materials: &Materials, rules: &Rules) {
    let all = strengths(joint, materials, rules);
    write!(out, " {}", all.modes().count()).unwrap();
    for mode in all.modes() {
        write!(out, " {} {} {}", mode.cut.plate, mode.cut.other, mode.cut.narrow).unwrap();
        bits(out, mode.strength);
        write!(out, " [{}]", mode.name(joint.form())).unwrap();
    }
}

fn checked_by_core(stated: &Stated, rules: &Rules) -> String {
    let mut out = String::from("check");
    let (joint, materials) = (joint_of(stated).unwrap(), materials_of(stated).unwrap());
    match check(&joint, &materials, rules) {
        Err(e) => refused(&mut out, &e),
        Ok(a) => {
            out.push_str(" 0");
            analysed(&mut out, &a);
            listed(&mut out, &joint, &materials, rules);
        }
    }
    out
}

fn sized_by_core(stated: &Stated, rules: &Rules) -> String {
    let mut out = String::from("size");
    match size(&brief_of(stated).unwrap(), rules) {
        Err(e) => refused(&mut out, &e),
        Ok(d) => {
            out.push_str(" 0");
            let at = |l: &Limit<f64>| if let Limit::At(x, _) = l { *x } else { f64::NAN };
            let j = &d.joint;
            let mm = |l: Option<seamwright::quantities::Length>| l.map_or(0.0, |l| l.to_mm());
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
            analysed(&mut out, &d.analysis);
        }
    }
    out
}

// --- The same by the C functions -------------------------------------------------------------------------------------

fn c_rules(vector: &Vector) -> sw_rules {
    let mut rules = made(sw_rules_init);
    let id = CString::new(vector.book.as_str()).unwrap();
    assert_eq!(sw_rules_find(id.as_ptr(), &mut rules, null_mut()), SW_OK);
    for (key, value) in &vector.edits {
        let key = CString::new(key.as_str()).unwrap();
        assert_eq!(sw_rules_set(&mut rules, key.as_ptr(), *value, null_mut()), SW_OK);
    }
    rules
}

fn made<T>(init: extern "C" fn(*mut T)) -> T {
    let mut place = core::mem::MaybeUninit::<T>::zeroed();
    init(place.as_mut_ptr());
    // SAFETY: the init function filled it.
    unsafe { place.assume_init() }
}

fn mm(text: Option<&String>) -> f64 {
    text.map_or(0.0, |t| length(t).unwrap().to_mm())
}

fn c_form(stated: &Stated) -> sw_form {
    let form = form_of(stated).unwrap();
    let mut c = sw_form {
        kind: form.kind() as u32,
        arrangement: form.arrangement() as u32,
        row_count: 0,
        reserved: 0,
        rivets: [0; 8],
        planes: [0; 8],
    };
    for (i, row) in stated.rows.iter().enumerate() {
        (c.rivets[i], c.planes[i]) = (u32::from(row[0]), u32::from(row[1]));
        c.row_count += 1;
    }
    c
}

fn c_materials(stated: &Stated) -> sw_materials {
    let mpa = |t: Option<&String>| t.map_or(0.0, |t| stress(t).unwrap().to_mpa());
    let mut c = made(sw_materials_init);
    (c.tension_mpa, c.rivet_shear_mpa) = (mpa(Some(&stated.tension)), mpa(Some(&stated.shear)));
    c.bearing_mpa = mpa(stated.bearing.as_ref());
    if stated.other_tension.is_some() {
        (c.other_tension_mpa, c.other_bearing_mpa) = (mpa(stated.other_tension.as_ref()), c.bearing_mpa);
    }
    c
}

fn c_joint(stated: &Stated) -> sw_joint {
    let mut c = made(sw_joint_init);
    c.form = c_form(stated);
    (c.pitch_mm, c.plate_mm) = (mm(stated.pitch.as_ref()), mm(Some(&stated.plate)));
    (c.other_plate_mm, c.margin_mm) = (mm(stated.other_plate.as_ref()), mm(stated.margin.as_ref()));
    (c.wide_strap_mm, c.narrow_strap_mm) = (mm(stated.wide.as_ref()), mm(stated.narrow.as_ref()));
    c.hole_mm[0] = mm(stated.hole.as_ref());
    c.rivet_mm[0] = mm(stated.rivet.as_ref());
    for (i, hole) in stated.holes.iter().enumerate() {
        (c.hole_mm[i], c.rivet_mm[i]) = (mm(Some(hole)), 0.0);
    }
    for (i, gap) in stated.gaps.iter().enumerate() {
        c.back_pitch_mm[i] = mm(Some(gap));
    }
    c
}

fn c_brief(stated: &Stated) -> sw_brief {
    let mut c = made(sw_brief_init);
    (c.form, c.materials) = (c_form(stated), c_materials(stated));
    (c.plate_mm, c.other_plate_mm) = (mm(Some(&stated.plate)), mm(stated.other_plate.as_ref()));
    (c.hole_mm, c.rivet_mm) = (mm(stated.hole.as_ref()), mm(stated.rivet.as_ref()));
    (c.pitch_mm, c.margin_mm) = (mm(stated.pitch.as_ref()), mm(stated.margin.as_ref()));
    c.wide_strap_mm = mm(stated.wide.as_ref());
    if c.wide_strap_mm != 0.0 {
        c.narrow_strap_mm = mm(stated.narrow.as_ref());
    }
    for (i, gap) in stated.gaps.iter().enumerate() {
        c.back_pitch_mm[i] = mm(Some(gap));
    }
    c
}

fn c_refused(out: &mut String, status: u32, e: &sw_error) {
    assert_eq!(status, e.status);
    write!(out, " {} {} {} {}", e.status, e.field, e.index, e.entry).unwrap();
    bits(out, e.value);
    bits(out, e.limit);
}

fn c_analysed(out: &mut String, a: &sw_analysis, findings: &[sw_finding]) {
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
    write!(out, " {}", findings.len()).unwrap();
    for f in findings {
        write!(out, " {} {} {} {}", f.subject, f.row, f.entry, f.verdict).unwrap();
        bits(out, f.required);
        bits(out, f.provided);
    }
}

fn text(write: impl Fn(*mut core::ffi::c_char, usize, *mut usize) -> u32) -> String {
    let mut needed = 0;
    assert_eq!(write(null_mut(), 0, &mut needed), SW_OK);
    let mut buffer = vec![0xaa_u8; needed];
    assert_eq!(write(buffer.as_mut_ptr().cast(), needed, &mut needed), SW_OK);
    assert_eq!(buffer.pop(), Some(0));
    String::from_utf8(buffer).unwrap()
}

fn checked_by_c(stated: &Stated, rules: &sw_rules) -> String {
    let mut out = String::from("check");
    let (joint, materials) = (c_joint(stated), c_materials(stated));
    let (mut a, mut e) = (made(sw_analysis_init), made(sw_error_init));
    let mut findings = Vec::with_capacity(SW_MAX_FINDINGS);
    let mut n = 0;
    let status =
        sw_joint_check(&joint, &materials, rules, &mut a, findings.as_mut_ptr(), SW_MAX_FINDINGS, &mut n, &mut e);
    if status != SW_OK {
        c_refused(&mut out, status, &e);
        return out;
    }
    // SAFETY: as many were written.
    unsafe { findings.set_len(n) };
    out.push_str(" 0");
    c_analysed(&mut out, &a, &findings);
    let mut count = 0;
    assert_eq!(sw_modes_list(&joint, &materials, rules, null_mut(), 0, &mut count, null_mut()), SW_OK);
    write!(out, " {count}").unwrap();
    let (mut cursor, mut mode) = (0, a.governing);
    while sw_modes_next(&joint, &materials, rules, &mut cursor, &mut mode, null_mut()) == SW_OK {
        write!(out, " {} {} {}", mode.plate_row, mode.other_row, mode.narrow_row).unwrap();
        bits(&mut out, mode.strength_n);
        write!(out, " [{}]", text(|b, n, s| sw_mode_name(&joint.form, &mode, b, n, s))).unwrap();
    }
    assert_eq!(cursor as usize, count);
    out
}

fn sized_by_c(stated: &Stated, rules: &sw_rules) -> String {
    let mut out = String::from("size");
    let brief = c_brief(stated);
    let (mut j, mut d) = (made(sw_joint_init), made(sw_design_init));
    let (mut a, mut e) = (made(sw_analysis_init), made(sw_error_init));
    let mut findings = Vec::with_capacity(SW_MAX_FINDINGS);
    let mut n = 0;
    let room = findings.as_mut_ptr();
    let status = sw_joint_size(&brief, rules, &mut j, &mut d, &mut a, room, SW_MAX_FINDINGS, &mut n, &mut e);
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
    c_analysed(&mut out, &a, &findings);
    out
}

// --- The cases as text, for a program in C ---------------------------------------------------------------------------

fn numbers(out: &mut String, list: &[f64]) {
    list.iter().for_each(|x| bits(out, *x));
}

fn case_of(what: &str, vector: &Vector, stated: &Stated) -> String {
    let mut out = format!("{what} {} {}", vector.book, vector.edits.len());
    for (key, value) in &vector.edits {
        write!(out, " {key}").unwrap();
        bits(&mut out, *value);
    }
    let (f, m) = (c_form(stated), c_materials(stated));
    write!(out, " {} {} {}", f.kind, f.arrangement, f.row_count).unwrap();
    (0..8).for_each(|i| write!(out, " {} {}", f.rivets[i], f.planes[i]).unwrap());
    numbers(&mut out, &[m.tension_mpa, m.rivet_shear_mpa, m.bearing_mpa, m.other_tension_mpa, m.other_bearing_mpa]);
    if what == "check" {
        let j = c_joint(stated);
        let straps = [j.wide_strap_mm, j.narrow_strap_mm, j.margin_mm];
        numbers(&mut out, &[j.pitch_mm, j.plate_mm, j.other_plate_mm]);
        numbers(&mut out, &straps);
        (0..8).for_each(|i| numbers(&mut out, &[j.hole_mm[i], j.rivet_mm[i], j.back_pitch_mm[i]]));
    } else {
        let b = c_brief(stated);
        numbers(&mut out, &[b.plate_mm, b.other_plate_mm, b.hole_mm, b.rivet_mm, b.pitch_mm]);
        numbers(&mut out, &[b.wide_strap_mm, b.narrow_strap_mm, b.margin_mm]);
        numbers(&mut out, &b.back_pitch_mm);
    }
    out
}

#[test]
fn all_vectors_bit_for_bit() {
    let (mut cases, mut answers, mut seen) = (String::new(), String::new(), [0; 2]);
    for vector in vectors() {
        let (rules, c) = (rules_of(&vector), c_rules(&vector));
        for (i, stated) in [&vector.check, &vector.size].into_iter().enumerate() {
            let Some(stated) = stated else { continue };
            let (what, core, via_c) = match i {
                0 => ("check", checked_by_core(stated, &rules), checked_by_c(stated, &c)),
                _ => ("size", sized_by_core(stated, &rules), sized_by_c(stated, &c)),
            };
            assert_eq!(core, via_c, "{}: {what}", vector.id);
            seen[i] += 1;
            writeln!(cases, "{}", case_of(what, &vector, stated)).unwrap();
            writeln!(answers, "{core}").unwrap();
        }
    }
    assert!(seen[0] > 500 && seen[1] > 200, "only {seen:?} checks and sizings");
    if let Some(folder) = std::env::var_os("SEAMWRIGHT_C_DUMP") {
        let folder = PathBuf::from(folder);
        fs::write(folder.join("cases.txt"), cases).unwrap();
        fs::write(folder.join("answers.txt"), answers).unwrap();
    }
}

/// Every book, every entry: what C reads is what the library has.
#[test]
fn books_entry_by_entry() {
    use seamwright::rules::{BOOKS, Entry};
    assert_eq!(sw_book_count() as usize, BOOKS.len());
    for (number, book) in (1..).zip(BOOKS) {
        let id = text(|b, n, s| sw_book_id(number, b, n, s));
        assert_eq!(id, book.id);
        let id = CString::new(id).unwrap();
        let mut rules = made(sw_rules_init);
        assert_eq!(sw_rules_find(id.as_ptr(), &mut rules, null_mut()), SW_OK);
        for entry in Entry::all() {
            let no = u32::from(entry.no().0);
            let key = CString::new(text(|b, n, s| sw_entry_key(no, b, n, s))).unwrap();
            let (mut found, mut value) = (0, 0.0);
            assert_eq!(sw_entry_find(key.as_ptr(), &mut found, null_mut()), SW_OK);
            assert_eq!(found, no);
            assert_eq!(sw_rules_get(&rules, key.as_ptr(), &mut value, null_mut()), SW_OK);
            assert_eq!(value.to_bits(), book.rules.get(entry).to_bits());
            let clause = text(|b, n, s| sw_rules_clause(&rules, no, b, n, s));
            assert_eq!(clause.is_empty(), book.clause(entry.no()).is_none());
        }
    }
}

/// The texts: the same as the library writes them.
#[test]
fn texts_are_the_librarys() {
    use seamwright::drawing::{TitleBlock, dxf, svg};
    use seamwright::rules::{BOOKS, METRIC};
    use seamwright::working::{DIALECTS, Style, write_check, write_size};
    let vector = vectors().into_iter().find(|v| v.id.starts_with("KG-9.4") && v.size.is_some()).unwrap();
    let stated = vector.size.as_ref().unwrap();
    let (rules, brief) = (c_rules(&vector), c_brief(stated));
    let book = **BOOKS.iter().find(|b| b.id == vector.book).unwrap();
    let book = seamwright::rules::RuleBook { rules: rules_of(&vector), ..book };
    for (n, dialect) in (0..).zip(DIALECTS) {
        let mut style = made(sw_style_init);
        style.dialect = n;
        let mut core = String::new();
        let wanted = Style { dialect: *dialect, ..Style::default() };
        write_size(&mut core, wanted, &brief_of(stated).unwrap(), &book).unwrap();
        let c = text(|b, n, s| sw_working_size(&brief, &rules, &style, b, n, s, null_mut()));
        if vector.edits.is_empty() {
            assert_eq!(core, c);
        }
    }
    let design = size(&brief_of(stated).unwrap(), &METRIC.rules).unwrap();
    let mut joint = made(sw_joint_init);
    let mut metric = made(sw_rules_init);
    assert_eq!(sw_rules_find(c"metric".as_ptr(), &mut metric, null_mut()), SW_OK);
    let (nothing, none) = (null_mut(), null_mut());
    let status = sw_joint_size(&brief, &metric, &mut joint, nothing, none, null_mut(), 0, null_mut(), null_mut());
    assert_eq!(status, SW_OK);
    let mut title = made(sw_title_init);
    title.object = c"Feed tank".as_ptr();
    title.drawing_no = c"T-7".as_ptr();
    let block = TitleBlock::new("Feed tank", "T-7");
    let (mut picture, mut pattern, mut sheet) = (String::new(), String::new(), String::new());
    svg(&mut picture, &design.joint, &block).unwrap();
    dxf(&mut pattern, &design.joint, &block).unwrap();
    assert_eq!(text(|b, n, s| sw_drawing_svg(&joint, &title, b, n, s, null_mut())), picture);
    assert_eq!(text(|b, n, s| sw_drawing_dxf(&joint, &title, b, n, s, null_mut())), pattern);
    let steel = c_materials(stated);
    write_check(&mut sheet, Style::default(), &design.joint, &materials_of(stated).unwrap(), &METRIC).unwrap();
    assert_eq!(text(|b, n, s| sw_working_check(&joint, &steel, &metric, null(), b, n, s, null_mut())), sheet);
}

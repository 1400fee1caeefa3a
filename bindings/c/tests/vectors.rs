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

use said::{
    c_form_of, case_brief, case_head, case_joint, checked_by_c, checked_by_core, made, rules_by_c, sized_by_c,
    sized_by_core, text,
};
use seamwright::sizing::size;
use seamwright_c::*;
use seamwright_tests::units::{length, stress};
use seamwright_tests::{
    Stated, Vector, brief_of, form_of, joint_of, load, load_file, materials_of, rules_of, vectors_dir,
};

mod said;

/// The published vectors, the misprints and the tricky joints, each under its own book and then under every built-in
/// book as it stands.
fn vectors() -> Vec<Vector> {
    let mut own = load(&vectors_dir());
    own.extend(load_file(&vectors_dir().join("misprints.toml")));
    own.extend(load_file(&vectors_dir().join("tricky.toml")));
    let mut all = own.clone();
    for book in seamwright::rules::BOOKS {
        all.extend(own.iter().map(|v| Vector { book: book.id.to_owned(), edits: Default::default(), ..v.clone() }));
    }
    all
}

// --- The same by the C functions -------------------------------------------------------------------------------------

fn edits_of(vector: &Vector) -> Vec<(String, f64)> {
    vector.edits.iter().map(|(key, value)| (key.clone(), *value)).collect()
}

fn c_rules(vector: &Vector) -> sw_rules {
    rules_by_c(&vector.book, &edits_of(vector))
}

fn mm(text: Option<&String>) -> f64 {
    text.map_or(0.0, |t| length(t).unwrap().to_mm())
}

fn c_form(stated: &Stated) -> sw_form {
    c_form_of(&form_of(stated).unwrap())
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

// --- The cases as text, for a program in C ---------------------------------------------------------------------------

fn case_of(what: &str, vector: &Vector, stated: &Stated) -> String {
    let mut out = case_head(what, &vector.book, &edits_of(vector), &c_form(stated), &c_materials(stated));
    match what {
        "check" => case_joint(&mut out, &c_joint(stated)),
        _ => case_brief(&mut out, &c_brief(stated)),
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
                0 => {
                    let (joint, steel) = (joint_of(stated).unwrap(), materials_of(stated).unwrap());
                    let by_c = checked_by_c(&c_joint(stated), &c_materials(stated), &c);
                    ("check", checked_by_core(&joint, &steel, &rules), by_c)
                }
                _ => {
                    let brief = brief_of(stated).unwrap();
                    ("size", sized_by_core(&brief, &rules), sized_by_c(&c_brief(stated), &c))
                }
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

//! The sheet that someone signs through C: byte for byte what the library writes, of checks, sizings and ratings, in
//! all dialects and styles.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, missing_docs, reason = "a test")]
#![allow(clippy::indexing_slicing, clippy::arithmetic_side_effects, reason = "a test")]

use core::ptr::null_mut;
use std::ffi::CString;

use said::{c_form_of, c_joint_of, c_materials_of, made, rules_by_c, text};
use seamwright::bounds::Field;
use seamwright::joint::{Form, Joint, JointSpec};
use seamwright::materials::Materials;
use seamwright::quantities::{Length, Pressure, Stress};
use seamwright::rating::{Basis, Existing, Footing, KnownLength};
use seamwright::rules::{BOOKS, Metal, RuleBook, find};
use seamwright::sheet::{Divided, Known, Particulars, Task, input_hash, write_inputs, write_sheet};
use seamwright::sizing::Brief;
use seamwright::text::DecimalMark;
use seamwright::working::{DIALECTS, Decimals, Forces, Style, Units};
use seamwright_c::*;

mod said;

fn mm(x: f64) -> Length {
    Length::mm(x)
}

fn book(id: &str) -> RuleBook<'static> {
    **BOOKS.iter().find(|b| b.id == id).unwrap()
}

/// The number of an input by its key, as a program of C finds it.
fn field(key: &str) -> u32 {
    let (key, mut number) = (CString::new(key).unwrap(), 0);
    assert_eq!(sw_field_find(key.as_ptr(), &mut number, null_mut()), SW_OK);
    number
}

/// Every dialect in three styles, for the library and for C.
fn styles() -> Vec<(Style, sw_style)> {
    let mut all = Vec::new();
    for (number, dialect) in (0..).zip(DIALECTS) {
        let (style, mut c) = (Style { dialect: *dialect, ..Style::default() }, made(sw_style_init));
        c.dialect = number;
        all.push((style, c));
        let inches = sw_style { units: SW_UNITS_INCH, extra_digits: -1, ..c };
        all.push((Style { units: Units::Inch, extra_digits: -1, ..style }, inches));
        let decimals = Decimals { length: Some(1), stress: Some(0), force: Some(3), ratio: Some(5) };
        let wishes = Style { mark: DecimalMark::Comma, forces: Forces::Kilonewton, decimals, ..style };
        c = sw_style { mark: SW_MARK_COMMA, forces: SW_FORCES_KILONEWTON, length_decimals: 1, ..c };
        all.push((wishes, sw_style { stress_decimals: 0, force_decimals: 3, ratio_decimals: 5, ..c }));
    }
    all
}

/// Puts a sheet to both, in all styles; its inputs and their hash too. Returns how many texts were compared.
fn compare(
    task: &Task<'_>,
    particulars: &Particulars<'_>,
    book: &RuleBook<'_>,
    c: &sw_sheet,
    rules: &sw_rules,
) -> usize {
    let mut seen = 0;
    for (style, c_style) in styles() {
        let mut wanted = String::new();
        write_sheet(&mut wanted, style, task, particulars, book).unwrap();
        let got = text(|b, n, s| sw_sheet_text(c, rules, &c_style, b, n, s, null_mut()));
        assert_eq!(got, wanted);
        seen += 1;
    }
    let (mut wanted, mut hash) = (String::new(), 0);
    write_inputs(&mut wanted, task, book).unwrap();
    assert_eq!(text(|b, n, s| sw_sheet_inputs(c, rules, b, n, s, null_mut())), wanted);
    assert_eq!(sw_sheet_hash(c, rules, &mut hash, null_mut()), SW_OK);
    assert_eq!(hash, input_hash(task, book).unwrap());
    seen
}

fn joints() -> Vec<Joint> {
    let spec = |form, pitch, plate, hole| JointSpec::new(form, mm(pitch), mm(plate), mm(hole));
    let straps = |form, pitch| spec(form, pitch, 12.0, 21.0).straps(mm(8.0), mm(8.0)).margin(mm(33.0));
    [
        // Khurmi and Gupta, Example 9.4.
        spec(Form::lap(2).unwrap(), 71.0, 13.0, 23.0),
        spec(Form::lap(3).unwrap().chain(), 80.0, 12.0, 21.0).other_plate(mm(10.0)).margin(mm(32.0)),
        spec(Form::single_strap(2).unwrap(), 70.0, 12.0, 21.0).strap(mm(14.0)).back_pitch(1, mm(45.0)),
        straps(Form::double_strap(3).unwrap(), 110.0),
        straps(Form::double_strap(3).unwrap().omit_alternate().unwrap(), 140.0),
        spec(Form::unequal_straps(4).unwrap(), 300.0, 14.0, 23.0).straps(mm(11.0), mm(9.0)).margin(mm(36.0)),
    ]
    .into_iter()
    .map(|s| s.build().unwrap())
    .collect()
}

#[test]
fn checks_byte_for_byte() {
    let strengths = Materials::new(Stress::mpa(400.0), Stress::mpa(300.0)).bearing(Stress::mpa(600.0));
    let steel = strengths.divided_by(5.0).unwrap();
    let (c_strengths, c_steel) = (c_materials_of(&strengths), c_materials_of(&steel));
    let by_drawing = Known { field: Field::Pitch, row: 0, basis: Basis::Given, source: "drawing D-12" };
    let list = [by_drawing, Known { field: Field::Hole, row: 2, basis: Basis::Measured, source: "least of five" }];
    let known = |key: &str, row, basis, source: &core::ffi::CStr| sw_known {
        field: field(key),
        row,
        basis,
        reserved: 0,
        source: source.as_ptr(),
    };
    let c_list =
        [known("pitch", 0, SW_BASIS_GIVEN, c"drawing D-12"), known("hole", 2, SW_BASIS_MEASURED, c"least of five")];
    let particulars = Particulars {
        title: "Seam 3",
        object: "Stock tank of an invented mill & yard, \"north\" <50 % full>",
        drawing_no: "D-12_b",
        jurisdiction: "none: invented",
        prepared: "A. Müller",
        checked: "",
        date: "2031-02-03",
        invented: true,
        footing: Some(Footing::Permissible),
        divided: Some(Divided { ultimate: strengths, factor: 5.0 }),
        lines_per_page: Some(48),
        known: &list,
    };
    let object = CString::new(particulars.object).unwrap();
    let mut seen = 0;
    for joint in joints() {
        for id in ["metric", "indian", "us-code", "structural"] {
            let (book, rules, c_joint) = (book(id), rules_by_c(id, &[]), c_joint_of(&joint));
            let mut c = made(sw_sheet_init);
            (c.joint, c.materials) = (&raw const c_joint, &raw const c_steel);
            let task = Task::Check(&joint, &steel);
            seen += compare(&task, &Particulars::default(), &book, &c, &rules);
            (c.title, c.object, c.drawing_no) = (c"Seam 3".as_ptr(), object.as_ptr(), c"D-12_b".as_ptr());
            (c.jurisdiction, c.prepared) = (c"none: invented".as_ptr(), c"A. Müller".as_ptr());
            (c.checked, c.date, c.invented) = (c"".as_ptr(), c"2031-02-03".as_ptr(), 1);
            c.lines_per_page = 48;
            (c.footing, c.ultimate, c.safety_factor) = (SW_FOOTING_PERMISSIBLE, &raw const c_strengths, 5.0);
            (c.known, c.known_count) = (c_list.as_ptr(), c_list.len());
            seen += compare(&task, &particulars, &book, &c, &rules);
        }
    }
    assert_eq!(seen, 6 * 4 * 2 * 15);
}

/// With `SEAMWRIGHT_C_DUMP=<folder>` the sheet of the first joint is written there: `tests/firmware/sheet.c` must write
/// the same on a Cortex-M.
#[test]
fn a_sheet_for_the_firmware() {
    let steel = Materials::new(Stress::mpa(80.0), Stress::mpa(60.0)).bearing(Stress::mpa(120.0));
    let particulars = Particulars { object: "Feed tank of an invented mill", invented: true, ..Particulars::default() };
    let mut sheet = String::new();
    write_sheet(&mut sheet, Style::default(), &Task::Check(&joints()[0], &steel), &particulars, &book("metric"))
        .unwrap();
    assert!(sheet.contains("67.52 %"), "the printed 67.5 % of the example");
    if let Some(folder) = std::env::var_os("SEAMWRIGHT_C_DUMP") {
        std::fs::write(std::path::PathBuf::from(folder).join("sheet.txt"), sheet).unwrap();
    }
}

#[test]
fn sizings_byte_for_byte() {
    let steel = Materials::new(Stress::mpa(90.0), Stress::mpa(56.0)).bearing(Stress::mpa(140.0));
    let mut seen = 0;
    for form in [Form::lap(1), Form::lap(3), Form::single_strap(2), Form::double_strap(2), Form::unequal_straps(2)] {
        let form = form.unwrap();
        for id in ["metric", "indian", "us-code", "german-1908"] {
            // A change of the user's, which the sheet counts.
            for edits in [vec![], vec![("margin.least.factor".to_owned(), 1.7)]] {
                let changed = edits
                    .iter()
                    .fold(book(id).rules, |rules, (key, value)| rules.with(find(key).unwrap(), *value).unwrap());
                let own = RuleBook { rules: changed, ..book(id) };
                let brief = Brief::new(form, mm(12.0), steel).hole(mm(21.0), None);
                let mut c_brief = made(sw_brief_init);
                (c_brief.form, c_brief.materials) = (c_form_of(&form), c_materials_of(&steel));
                (c_brief.plate_mm, c_brief.hole_mm) = (12.0, 21.0);
                let mut c = made(sw_sheet_init);
                c.brief = &raw const c_brief;
                c.footing = SW_FOOTING_ULTIMATE;
                let particulars = Particulars { footing: Some(Footing::Ultimate), ..Particulars::default() };
                seen += compare(&Task::Size(&brief), &particulars, &own, &c, &rules_by_c(id, &edits));
            }
        }
    }
    assert_eq!(seen, 5 * 4 * 2 * 15);
}

#[test]
fn ratings_byte_for_byte() {
    let inch = |x: f64| KnownLength::measured(Length::inch(x));
    let lap =
        Existing::new(Form::lap(2).unwrap(), KnownLength::given(Length::inch(3.5)), inch(0.45), Length::inch(48.0))
            .hole(inch(0.9375))
            .metals(Metal::Steel, Metal::Steel)
            .safety(5.0)
            .present(Pressure::psi(125.0))
            .wastage_rate(Length::inch(0.005));
    let mut c_lap = made(sw_existing_init);
    let to_mm = |x: f64| Length::inch(x).to_mm();
    c_lap.form = c_form_of(&Form::lap(2).unwrap());
    (c_lap.pitch_mm, c_lap.plate_mm, c_lap.inside_mm) = (to_mm(3.5), to_mm(0.45), to_mm(48.0));
    (c_lap.hole_mm[0], c_lap.plate_metal, c_lap.safety_factor) = (to_mm(0.9375), SW_METAL_STEEL, 5.0);
    (c_lap.present_mpa, c_lap.wastage_mm_per_year) = (Pressure::psi(125.0).to_mpa(), to_mm(0.005));
    c_lap.measured = SW_BY_MEASURE_PLATE | SW_BY_MEASURE_HOLES;
    let mut seen = 0;
    for id in ["us-existing", "us-michigan", "us-north-carolina", "us-california"] {
        let (book, rules) = (book(id), rules_by_c(id, &[]));
        let (found, mut c_found) = match id {
            // The strengths of the metal are the book's.
            "us-existing" => (lap, c_lap),
            _ => {
                let [tension, shear, bearing] = [55_000.0, 44_000.0, 95_000.0].map(Stress::psi);
                let mut c = c_lap;
                (c.tension_mpa, c.rivet_shear_mpa) = (tension.to_mpa(), shear.to_mpa());
                c.bearing_mpa = bearing.to_mpa();
                (lap.tension(tension).shear(shear).bearing(bearing), c)
            }
        };
        let mut c = made(sw_sheet_init);
        c.existing = &raw const c_found;
        c.object = c"Mill boiler, invented".as_ptr();
        let particulars = Particulars { object: "Mill boiler, invented", ..Particulars::default() };
        seen += compare(&Task::Rate(&found), &particulars, &book, &c, &rules);
        // Something more of it: the shell plate, and a margin.
        let more = found.shell_plate(inch(0.44)).margin(Length::inch(1.5));
        (c_found.shell_plate_mm, c_found.margin_mm) = (to_mm(0.44), to_mm(1.5));
        c_found.measured |= SW_BY_MEASURE_SHELL_PLATE;
        c.existing = &raw const c_found;
        seen += compare(&Task::Rate(&more), &particulars, &book, &c, &rules);
    }
    assert_eq!(seen, 4 * 2 * 15);
}

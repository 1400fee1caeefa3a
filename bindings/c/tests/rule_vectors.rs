//! The vectors of the rule books (`tests/vectors/rules-*.toml`) through the C functions, bit for bit what the library
//! itself gives: checks, sizings, modes, pressures, girth seams, ratings, strengths of unknown metals. The others are
//! parts of a routine, which C does not offer by themselves; the entries behind them are compared one by one in
//! `vectors.rs`.
//!
//! With `SEAMWRIGHT_C_DUMP=<folder>` the cases and the answers are written there for `tests/c/vectors.c`.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, missing_docs, reason = "a test")]
#![allow(clippy::indexing_slicing, clippy::arithmetic_side_effects, reason = "a test")]

use core::fmt::Write as _;
use core::ptr::null_mut;
use std::collections::BTreeMap;
use std::fs;
use std::path::PathBuf;

use said::{
    bits, c_form_of, c_found, c_joint_of, c_materials_of, case_brief, case_head, case_joint, checked_by_c,
    checked_by_core, found, made, numbers, refused, rules_by_c, sized_by_c, sized_by_core,
};
use seamwright::Error;
use seamwright::check::check;
use seamwright::quantities::{Length, Pressure, Stress};
use seamwright::rating::{
    Allowed, Assumptions, Existing, Footing, HoleMaking, KnownLength, Riveting, Seam, Service, Shell,
    joint_pressure_with, pressure_with, rate,
};
use seamwright::rules::{Metal, Rules, book};
use seamwright::sizing::Brief;
use seamwright::step::Plain;
use seamwright::vessel::{GirthPlace, Longitudinal, girth_check};
use seamwright_c::*;
use seamwright_tests::vectors_dir;
use serde::Deserialize;
use support::{Symbols, form, joint, materials, work_out};

mod said;
#[path = "../../../tests/tests/support/mod.rs"]
mod support;

#[derive(Deserialize)]
struct File {
    book: String,
    vector: Vec<Vector>,
}

#[derive(Deserialize)]
struct Vector {
    id: String,
    routine: String,
    #[serde(default)]
    form: String,
    #[serde(default)]
    given: BTreeMap<String, Figure>,
    #[serde(default)]
    set: BTreeMap<String, Figure>,
}

/// A number or hand arithmetic.
#[derive(Deserialize)]
#[serde(untagged)]
enum Figure {
    Number(f64),
    Text(String),
}

impl Figure {
    fn value(&self) -> f64 {
        match self {
            Figure::Number(x) => *x,
            Figure::Text(text) => work_out(text, &Symbols::new()),
        }
    }
}

/// A case as the C program reads it, and the answers of the library and of the C functions.
struct Said {
    case: String,
    core: String,
    by_c: String,
}

/// What a vector gives, in the terms that all routines share.
struct Asked {
    book: String,
    edits: Vec<(String, f64)>,
    rules: Rules,
    c: sw_rules,
    s: Symbols,
    form: String,
}

impl Asked {
    fn new(file: &File, vector: &Vector) -> Self {
        let edits: Vec<_> = vector.set.iter().map(|(key, f)| (key.clone(), f.value())).collect();
        let start = book(&file.book).unwrap().rules;
        let rules = edits.iter().fold(start, |rules, (key, value)| rules.with_key(key, *value).unwrap());
        let s = vector.given.iter().map(|(key, f)| (key.clone(), f.value())).collect();
        let form = if vector.form.is_empty() { "lap 1".to_owned() } else { vector.form.clone() };
        Asked { c: rules_by_c(&file.book, &edits), book: file.book.clone(), edits, rules, s, form }
    }

    fn head(&self, what: &str, m: &sw_materials) -> String {
        case_head(what, &self.book, &self.edits, &c_form_of(&form(&self.form)), m)
    }

    fn no_stresses() -> sw_materials {
        made(sw_materials_init)
    }

    fn checks(&self) -> Said {
        let (j, m) = (joint(form(&self.form), &self.s).unwrap(), materials(&self.s));
        let (c, cm) = (c_joint_of(&j), c_materials_of(&m));
        let mut case = self.head("check", &cm);
        case_joint(&mut case, &c);
        Said { case, core: checked_by_core(&j, &m, &self.rules), by_c: checked_by_c(&c, &cm, &self.c) }
    }

    fn sizes(&self) -> Said {
        let (s, m) = (&self.s, materials(&self.s));
        let mut brief = Brief::new(form(&self.form), Length::mm(s["t"]), m);
        let mut c = made(sw_brief_init);
        (c.form, c.materials, c.plate_mm) = (c_form_of(brief.form()), c_materials_of(&m), s["t"]);
        if let Some(d) = s.get("d") {
            brief = brief.hole(Length::mm(*d), s.get("dr").copied().map(Length::mm));
            (c.hole_mm, c.rivet_mm) = (*d, s.get("dr").copied().unwrap_or(0.0));
        }
        if let Some(p) = s.get("p") {
            (brief, c.pitch_mm) = (brief.pitch(Length::mm(*p)), *p);
        }
        if let Some(m) = s.get("m") {
            (brief, c.margin_mm) = (brief.margin(Length::mm(*m)), *m);
        }
        let mut case = self.head("size", &c.materials);
        case_brief(&mut case, &c);
        Said { case, core: sized_by_core(&brief, &self.rules), by_c: sized_by_c(&c, &self.c) }
    }

    /// Circumstances are no, unless a symbol says 1 for yes or is missing where `unstated` is given.
    fn shell(&self) -> (Shell, sw_shell) {
        let s = &self.s;
        let open = s.contains_key("unstated");
        let stated = |key: &str| s.get(key).map(|x| *x > 0.0).or((!open).then_some(false));
        let said = |key: &str| match stated(key) {
            None => SW_NOT_STATED,
            Some(true) => SW_YES,
            Some(false) => SW_NO,
        };
        let is = |key: &str| s.contains_key(key);
        let footing = if is("permissible") { Footing::Permissible } else { Footing::Ultimate };
        let (holes, c_holes) = match (is("punched"), is("reamed")) {
            (true, _) => (HoleMaking::Punched, SW_HOLES_PUNCHED),
            (_, true) => (HoleMaking::Reamed, SW_HOLES_REAMED),
            _ => (HoleMaking::Drilled, SW_HOLES_DRILLED),
        };
        let service = Service {
            existing: is("existing"),
            second_hand: stated("second"),
            past_age_limit: stated("aged"),
            tested: is("tested"),
            tubular: stated("tubular"),
            lap_length: s.get("laplength").copied().map(Length::mm),
            lap_in_fire: stated("fire"),
            weight_on_seam: stated("weight"),
            riveting: stated("hand").map(|h| if h { Riveting::Hand } else { Riveting::Machine }),
            holes: Some(holes),
            stripped: is("stripped"),
        };
        let mut c = made(sw_shell_init);
        (c.footing, c.inside_mm) = (footing as u32, s["D"]);
        c.service = sw_service {
            existing: u32::from(is("existing")),
            second_hand: said("second"),
            past_age_limit: said("aged"),
            tested: u32::from(is("tested")),
            tubular: said("tubular"),
            lap_in_fire: said("fire"),
            weight_on_seam: said("weight"),
            riveting: said("hand"),
            holes: c_holes,
            stripped: u32::from(is("stripped")),
            reserved: [0; 4],
            lap_length_mm: s.get("laplength").copied().unwrap_or(0.0),
        };
        let mut shell = Shell::new(Length::mm(s["D"]), footing).service(service);
        if let Some(allowance) = s.get("corrosion") {
            shell = shell.corrosion(Length::mm(*allowance));
            (c.corrosion_mm, c.corrosion_stated) = (*allowance, 1);
        }
        if let Some(factor) = s.get("FS") {
            (shell, c.safety_factor) = (shell.safety(*factor), *factor);
        }
        (shell, c)
    }

    fn pressures(&self) -> Said {
        let (s, f, (shell, c)) = (&self.s, form(&self.form), self.shell());
        let (mut core, mut by_c) = (String::from("pressure"), String::from("pressure"));
        let seam = Seam { form: &f, plate: s["t"], tension: s["st"], efficiency: s["J"] };
        match pressure_with(Plain, &self.rules, &shell, &seam, &mut Assumptions::new()) {
            Ok(a) => allowed(&mut core, &a),
            Err(e) => refused(&mut core, &e),
        }
        let seam = sw_seam { form: c_form_of(&f), plate_mm: s["t"], tension_mpa: s["st"], efficiency: s["J"] };
        let (mut found, mut e) = (EMPTY, made(sw_error_init));
        match sw_seam_pressure(&seam, &self.c, &c, &mut found, &mut e) {
            SW_OK => c_allowed(&mut by_c, &found),
            _ => c_refused(&mut by_c, &e),
        }
        let mut case = self.head("pressure", &Self::no_stresses());
        case_shell(&mut case, &c);
        numbers(&mut case, &[s["t"], s["st"], s["J"]]);
        Said { case, core, by_c }
    }

    fn girths(&self) -> Said {
        let (s, (shell, c)) = (&self.s, self.shell());
        let (along, m) = (joint(form(&self.form), s).unwrap(), materials(s));
        let mut lap = made(sw_joint_init);
        lap.form = c_form_of(&form(&format!("lap {}", s.get("rows").copied().unwrap_or(1.0))));
        (lap.pitch_mm, lap.plate_mm, lap.hole_mm[0]) = (s["gp"], s["t"], s["d"]);
        let number = s.get("place").map_or(0, |x| if *x > 1.0 { 2 } else { *x as u32 });
        let place = [GirthPlace::Middle, GirthPlace::End, GirthPlace::Stayed][number as usize];
        let worked = || -> Result<String, Error> {
            let mut out = String::from("girth");
            let girth = form(&format!("lap {}", s.get("rows").copied().unwrap_or(1.0)));
            let [p, t, d] = [s["gp"], s["t"], s["d"]].map(Length::mm);
            let girth = seamwright::joint::JointSpec::new(girth, p, t, d).build()?;
            let a = check(&along, &m, &self.rules)?;
            let notes = &mut Assumptions::new();
            let allowed = joint_pressure_with(Plain, &along, &m, &a, &shell, &self.rules, notes)?;
            let long = Longitudinal { joint: &along, materials: &m, credited: a.credited, allowed };
            let g = girth_check(&self.rules, &shell, &long, &girth, place, Pressure::mpa(s["P"]))?;
            write!(out, " 0 {} {} {}", g.entry.0, g.strips, g.rivets).unwrap();
            numbers(&mut out, &[g.pressure, g.analysis.credited, g.needed, g.end_rivets]);
            found(&mut out, &g.findings);
            Ok(out)
        };
        let core = worked().unwrap();
        let (cj, cm) = (c_joint_of(&along), c_materials_of(&m));
        let (mut g, mut e) = (made(sw_girth_init), made(sw_error_init));
        let mut list = Vec::with_capacity(SW_MAX_FINDINGS);
        let (room, mut n) = (list.as_mut_ptr(), 0);
        let (at, r) = (s["P"], &self.c);
        let status = sw_girth_check(&cj, &cm, r, &c, &lap, number, at, &mut g, room, SW_MAX_FINDINGS, &mut n, &mut e);
        assert_eq!(status, SW_OK);
        // SAFETY: as many were written.
        unsafe { list.set_len(n) };
        let mut by_c = format!("girth 0 {} {} {}", g.entry, g.strips, g.rivets);
        numbers(&mut by_c, &[g.pressure_mpa, g.efficiency, g.needed, g.end_rivets]);
        c_found(&mut by_c, &list);
        let mut case = self.head("girth", &cm);
        case_joint(&mut case, &cj);
        case_shell(&mut case, &c);
        write!(case, " {} {number}", lap.form.row_count).unwrap();
        numbers(&mut case, &[s["gp"], s["t"], s["d"], s["P"]]);
        Said { case, core, by_c }
    }

    fn rates(&self) -> Said {
        let (s, f, (shell, c)) = (&self.s, form(&self.form), self.shell());
        let given = |key: &str| KnownLength::given(Length::mm(s[key]));
        let mut old = Existing::new(f, given("p"), given("t"), shell.inside())
            .hole(given("d"))
            .tension(Stress::mpa(s["st"]))
            .shear(Stress::mpa(s["ss"]))
            .bearing(Stress::mpa(s["sc"]))
            .service(*shell.circumstances());
        let mut e = made(sw_existing_init);
        (e.form, e.pitch_mm, e.plate_mm, e.hole_mm[0]) = (c_form_of(&f), s["p"], s["t"], s["d"]);
        (e.tension_mpa, e.rivet_shear_mpa, e.bearing_mpa) = (s["st"], s["ss"], s["sc"]);
        (e.inside_mm, e.service, e.footing) = (c.inside_mm, c.service, c.footing);
        if let Some(factor) = s.get("FS") {
            (old, e.safety_factor) = (old.safety(*factor), *factor);
        }
        if s.contains_key("permissible") {
            old = old.permissible();
        }
        if let Some(p) = s.get("P") {
            (old, e.present_mpa) = (old.present(Pressure::mpa(*p)), *p);
        }
        let mut core = String::from("rate");
        let r = rate(&old, &self.rules).unwrap();
        core.push_str(" 0");
        numbers(&mut core, &[r.allowed, r.margin.unwrap_or(f64::NAN), r.test.unwrap_or(f64::NAN)]);
        allowed(&mut core, &r.seam);
        numbers(&mut core, &[r.analysis.efficiency]);
        write!(core, " {}", r.assumptions.len()).unwrap();
        for a in r.assumptions.iter() {
            write!(core, " {} {} {} {}", a.about as u32, a.row, a.basis as u32, a.entry.0).unwrap();
            bits(&mut core, a.value);
        }
        found(&mut core, &r.findings);
        let (by_c, nothing) = (rated_by_c(&e, &self.c), Self::no_stresses());
        let mut case = self.head("rate", &nothing);
        case_shell(&mut case, &c);
        numbers(&mut case, &[e.pitch_mm, e.plate_mm, e.hole_mm[0], e.tension_mpa, e.rivet_shear_mpa, e.bearing_mpa]);
        numbers(&mut case, &[e.present_mpa]);
        Said { case, core, by_c }
    }

    fn strengths(&self) -> Said {
        let (mut core, mut by_c) = (String::from("strengths"), String::from("strengths"));
        for (metal, number) in [(Metal::Steel, SW_METAL_STEEL), (Metal::Iron, SW_METAL_IRON)] {
            match self.rules.assumed_materials(metal, metal) {
                Ok(m) => {
                    let bearing = m.plate.bearing.map_or(0.0, Stress::to_mpa);
                    numbers(&mut core, &[m.plate.tension.to_mpa(), m.rivet_shear.to_mpa(), bearing]);
                }
                Err(e) => write!(core, " {}", e.kind as u32).unwrap(),
            }
            let mut m = Self::no_stresses();
            match sw_rules_assume(&self.c, number, number, &mut m, null_mut()) {
                SW_OK => numbers(&mut by_c, &[m.tension_mpa, m.rivet_shear_mpa, m.bearing_mpa]),
                status => write!(by_c, " {status}").unwrap(),
            }
        }
        Said { case: self.head("strengths", &Self::no_stresses()), core, by_c }
    }
}

const EMPTY: sw_allowed = sw_allowed {
    outside: 0,
    reserved: 0,
    pressure_mpa: 0.0,
    efficiency: 0.0,
    allowance_mm: 0.0,
    factor: sw_factor { basis: 0, entry: 0, value: 0.0 },
};

fn allowed(out: &mut String, a: &Allowed) {
    write!(out, " 0 {} {} {}", u32::from(a.outside), a.factor.basis as u32, a.factor.entry.0).unwrap();
    numbers(out, &[a.pressure, a.efficiency, a.allowance, a.factor.value]);
}

fn c_allowed(out: &mut String, a: &sw_allowed) {
    write!(out, " 0 {} {} {}", a.outside, a.factor.basis, a.factor.entry).unwrap();
    numbers(out, &[a.pressure_mpa, a.efficiency, a.allowance_mm, a.factor.value]);
}

fn c_refused(out: &mut String, e: &sw_error) {
    said::c_refused(out, e.status, e);
}

fn rated_by_c(existing: &sw_existing, rules: &sw_rules) -> String {
    let (mut r, mut a) = (made(sw_rating_init), made(sw_analysis_init));
    assert_eq!(sw_existing_rate(existing, rules, &mut r, null_mut(), &mut a, null_mut()), SW_OK);
    let mut out = String::from("rate 0");
    numbers(&mut out, &[r.allowed_mpa, r.margin, r.test_mpa]);
    c_allowed(&mut out, &r.seam);
    numbers(&mut out, &[a.efficiency]);
    let (mut notes, mut n) = (Vec::with_capacity(SW_MAX_ASSUMPTIONS), 0);
    let room = notes.as_mut_ptr();
    assert_eq!(sw_existing_assumptions(existing, rules, room, SW_MAX_ASSUMPTIONS, &mut n, null_mut()), SW_OK);
    // SAFETY: as many were written.
    unsafe { notes.set_len(n) };
    write!(out, " {n}").unwrap();
    for a in &notes {
        write!(out, " {} {} {} {}", a.about, a.row, a.basis, a.entry).unwrap();
        bits(&mut out, a.value);
    }
    let mut list = Vec::with_capacity(2 * SW_MAX_FINDINGS);
    let room = list.as_mut_ptr();
    assert_eq!(sw_existing_findings(existing, rules, room, 2 * SW_MAX_FINDINGS, &mut n, null_mut()), SW_OK);
    // SAFETY: as many were written.
    unsafe { list.set_len(n) };
    assert_eq!(n, (r.findings + a.findings) as usize);
    c_found(&mut out, &list[..r.findings as usize]);
    out
}

fn case_shell(out: &mut String, c: &sw_shell) {
    let s = &c.service;
    write!(out, " {} {}", c.footing, c.corrosion_stated).unwrap();
    for choice in [s.existing, s.second_hand, s.past_age_limit, s.tested, s.tubular, s.lap_in_fire, s.weight_on_seam] {
        write!(out, " {choice}").unwrap();
    }
    write!(out, " {} {} {}", s.riveting, s.holes, s.stripped).unwrap();
    numbers(out, &[s.lap_length_mm, c.inside_mm, c.corrosion_mm, c.safety_factor]);
}

#[test]
fn rule_vectors_bit_for_bit() {
    let (mut cases, mut answers) = (String::new(), String::new());
    let mut seen = BTreeMap::new();
    let mut paths: Vec<_> = fs::read_dir(vectors_dir()).unwrap().map(|e| e.unwrap().path()).collect();
    paths.sort();
    for path in paths.iter().filter(|p| p.file_name().unwrap().to_str().unwrap().starts_with("rules-")) {
        let file: File = toml::from_str(&fs::read_to_string(path).unwrap()).unwrap();
        for vector in &file.vector {
            let asked = Asked::new(&file, vector);
            let said = match vector.routine.as_str() {
                // A mode is one of those that a check lists.
                "check" | "mode" => asked.checks(),
                "size" => asked.sizes(),
                "pressure" => asked.pressures(),
                "girth" => asked.girths(),
                "rate" => asked.rates(),
                "strengths" => asked.strengths(),
                _ => continue,
            };
            assert_eq!(said.core, said.by_c, "{}: {}", path.display(), vector.id);
            *seen.entry(vector.routine.clone()).or_insert(0) += 1;
            writeln!(cases, "{}", said.case).unwrap();
            writeln!(answers, "{}", said.core).unwrap();
        }
    }
    for (routine, least) in
        [("check", 50), ("mode", 20), ("size", 10), ("pressure", 60), ("girth", 10), ("rate", 15), ("strengths", 5)]
    {
        assert!(seen.get(routine).is_some_and(|n| *n >= least), "{routine}: {seen:?}");
    }
    if let Some(folder) = std::env::var_os("SEAMWRIGHT_C_DUMP") {
        let folder = PathBuf::from(folder);
        fs::write(folder.join("rule_cases.txt"), cases).unwrap();
        fs::write(folder.join("rule_answers.txt"), answers).unwrap();
    }
}

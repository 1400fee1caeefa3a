//! Rules on shells under pressure, as the vectors put them to the library.

use seamwright::check::check;
use seamwright::error::ErrorKind;
use seamwright::joint::JointSpec;
use seamwright::quantities::{Pressure, Stress};
use seamwright::rating::{
    Assumptions, Existing, Footing, HoleMaking, KnownLength, Riveting, Seam, Service, Shell, joint_pressure_with,
    pressure_with, rate,
};
use seamwright::rules::Rules;
use seamwright::step::Plain;
use seamwright::vessel::{GirthPlace, Longitudinal, girth_check};

use super::Answer::{Number, Word};
use super::support::{Symbols, form, joint, materials, mm};
use super::{Answers, Vector, findings};

/// The shell of a vector: circumstances are no, unless a symbol says 1 for yes or is missing where `unstated` is given.
fn shell(s: &Symbols) -> Shell {
    let open = s.contains_key("unstated");
    let stated = |key: &str| s.get(key).map(|x| *x > 0.0).or((!open).then_some(false));
    let footing = if s.contains_key("permissible") { Footing::Permissible } else { Footing::Ultimate };
    let service = Service {
        existing: s.contains_key("existing"),
        second_hand: stated("second"),
        past_age_limit: stated("aged"),
        tested: s.contains_key("tested"),
        tubular: stated("tubular"),
        lap_length: s.get("laplength").copied().map(mm),
        lap_in_fire: stated("fire"),
        weight_on_seam: stated("weight"),
        riveting: stated("hand").map(|h| if h { Riveting::Hand } else { Riveting::Machine }),
        holes: Some(if s.contains_key("punched") {
            HoleMaking::Punched
        } else if s.contains_key("reamed") {
            HoleMaking::Reamed
        } else {
            HoleMaking::Drilled
        }),
        stripped: s.contains_key("stripped"),
    };
    let mut shell = Shell::new(mm(s["D"]), footing).service(service);
    if let Some(c) = s.get("corrosion") {
        shell = shell.corrosion(mm(*c));
    }
    if let Some(f) = s.get("FS") {
        shell = shell.safety(*f);
    }
    shell
}

/// Shells under pressure.
pub fn shells(v: &Vector, rules: &Rules, s: &Symbols, out: &mut Answers) -> Result<(), String> {
    let wrong = |e: seamwright::Error| format!("{}: {e}", v.id);
    let (c, f, shell) = (Plain, form(&v.form), shell(s));
    let mut notes = Assumptions::new();
    match v.routine.as_str() {
        "pressure" => {
            let seam = Seam { form: &f, plate: s["t"], tension: s["st"], efficiency: s["J"] };
            match pressure_with(c, rules, &shell, &seam, &mut notes) {
                Ok(p) => {
                    out.insert("p".into(), Number(p.pressure));
                    out.insert("FS".into(), Number(p.factor.value));
                }
                Err(e) if e.kind == ErrorKind::Missing => {
                    out.insert("p".into(), Word("missing"));
                }
                Err(e) => return Err(wrong(e)),
            }
        }
        "girth" => {
            let along = joint(f, s).map_err(wrong)?;
            let m = materials(s);
            let a = check(&along, &m, rules).map_err(wrong)?;
            let mut notes = Assumptions::new();
            let allowed = joint_pressure_with(c, &along, &m, &a, &shell, rules, &mut notes).map_err(wrong)?;
            let made = s.get("rows").copied().unwrap_or(1.0);
            let lap = form(&format!("lap {made}"));
            let girth = JointSpec::new(lap, mm(s["gp"]), mm(s["t"]), mm(s["d"])).build().map_err(wrong)?;
            let place = match s.get("place").copied().unwrap_or(0.0) {
                0.0 => GirthPlace::Middle,
                1.0 => GirthPlace::End,
                _ => GirthPlace::Stayed,
            };
            let credited = a.credited;
            let long = Longitudinal { joint: &along, materials: &m, credited, allowed };
            let found = girth_check(rules, &shell, &long, &girth, place, Pressure::mpa(s["P"])).map_err(wrong)?;
            out.insert("needed".into(), Number(found.needed));
            out.insert("J".into(), Number(credited));
            findings(&found.findings, out);
        }
        _ => {
            let inside = KnownLength::given(mm(s["t"]));
            let mut old = Existing::new(f, KnownLength::given(mm(s["p"])), inside, shell.inside())
                .hole(KnownLength::given(mm(s["d"])))
                .tension(Stress::mpa(s["st"]))
                .shear(Stress::mpa(s["ss"]))
                .bearing(Stress::mpa(s["sc"]))
                .service(*shell.circumstances());
            if let Some(factor) = s.get("FS") {
                old = old.safety(*factor);
            }
            if s.contains_key("permissible") {
                old = old.permissible();
            }
            if let Some(p) = s.get("P") {
                old = old.present(Pressure::mpa(*p));
            }
            let found = rate(&old, rules).map_err(wrong)?;
            out.insert("seam".into(), Number(found.seam.pressure));
            out.insert("allowed".into(), Number(found.allowed));
            out.insert("test".into(), found.test.map_or(Word("none"), Number));
            findings(&found.findings, out);
        }
    }
    Ok(())
}

//! `seamwright sensitivity`: what each input does to the joint, and what tolerances can do at worst.

use seamwright::bounds::Field;
use seamwright::sensitivity::tolerance::worst_case;
use seamwright::sensitivity::{Target, Tolerances, WorstCase, slopes};

use super::{folded, solved, title};
use crate::failure::Failure;
use crate::flags::{Flags, ToleranceFlags};
use crate::task::Task;
use crate::units::{length, percent};

/// Runs the study.
pub fn run(flags: &Flags, tolerances: &ToleranceFlags) -> Result<String, Failure> {
    super::shell::plain_only(flags)?;
    let (task, answer) = solved(flags)?;
    let refused = |e| Failure::refused(&e, &task.book, task.units);
    let found = slopes(&answer.joint, &task.materials, &task.book.rules).map_err(refused)?;
    let mut out = title("WHAT EACH INPUT DOES TO THE JOINT", &task);
    let [eta, j, credited] = found.efficiencies;
    let modes = answer.analysis.governing.name(answer.joint.form());
    out.push_str(&format!("eta {}, J {}, credited {}.\n", percent(eta), percent(j), percent(credited)));
    out.push_str(&format!("Governing: {modes}.\n\n"));
    // A string takes everything.
    let _ = found.write_table(&mut out);
    out.push_str("\nTwo figures: for less and for more of the input; a mode changes just here.\n");
    let asked = [
        (&tolerances.plate_tolerance, "plate"),
        (&tolerances.strap_tolerance, "straps"),
        (&tolerances.hole_tolerance, "hole"),
        (&tolerances.pitch_tolerance, "pitch"),
    ];
    if asked.iter().any(|(said, _)| said.is_some()) {
        let mut t = Tolerances::none();
        for (said, what) in asked {
            let Some(said) = said else { continue };
            let span = length(Field::Tolerance, said)?;
            t = match what {
                "plate" => t.plate(span),
                "straps" => t.straps(span),
                "hole" => t.hole(span),
                _ => t.pitch(span),
            };
        }
        out.push_str("\nWORST CASE OVER THE TOLERANCES\n");
        for (measure, name) in [(Target::Efficiency, "eta"), (Target::BookEfficiency, "J")] {
            let worst = worst_case(&answer.joint, &task.materials, &task.book.rules, &t, measure).map_err(refused)?;
            out.push_str(&lines(&task, &t, name, &worst));
        }
    }
    out.push_str(&format!("\n{}\n", seamwright::CAUTION));
    Ok(folded(&out.replace('\u{a0}', " ")))
}

fn lines(task: &Task, t: &Tolerances, name: &str, worst: &WorstCase) -> String {
    let names = ["plate", "second plate or wide strap", "narrow strap", "hole", "pitch"];
    let mut out = format!("{name:<5}{} as stated, {} at worst", percent(worst.stated), percent(worst.worst.value));
    let at: Vec<String> = names
        .iter()
        .zip(worst.worst.deviation)
        .filter(|(_, d)| *d != 0.0)
        .map(|(what, d)| format!("{what} {}{}", if d > 0.0 { "+" } else { "" }, task.units.length(d)))
        .collect();
    if !at.is_empty() {
        out.push_str(&format!(": {}", at.join(", ")));
    }
    if worst.hole_inside(t) && worst.worst.deviation.get(3).is_some_and(|d| *d != 0.0) {
        out.push_str(" (inside the hole's tolerance)");
    }
    out.push_str(if worst.exact { ".\n" } else { "; found on a grid, not proved.\n" });
    for (what, alone) in names.iter().zip(worst.alone) {
        if alone < worst.stated {
            out.push_str(&format!("       {what} alone: {}\n", percent(alone)));
        }
    }
    out
}

//! `seamwright search`: the best joint of the whole grid.

use seamwright::bounds::Field;
use seamwright::joint::{Form, JointKind};
use seamwright::materials::Materials;
use seamwright::quantities::{Length, Stress};
use seamwright::rating::Service;
use seamwright::rules::Rounding;
use seamwright::search::{Beside, Candidate, Objective, Outcome, SearchBrief, Tally, all_forms, front, search};
use seamwright::shop::{HeadForm, LengthRule, Order, Run, Stock};

use super::flags::{ObjectiveFlag, SearchFlags, ShellFlags};
use super::shell::shell;
use super::{folded, heading};
use crate::failure::Failure;
use crate::flags::{Flags, FormFlag};
use crate::stated::{permissible, ultimate};
use crate::task::Book;
use crate::units::{Units, fixed, length, number, percent, pressure};

/// Candidates that the front may hold on the way.
const FRONT: usize = 512;
/// Lines of the front that are printed.
const LINES: usize = 12;

/// Runs the search.
pub fn run(flags: &Flags, shell_flags: &ShellFlags, said: &SearchFlags) -> Result<String, Failure> {
    super::shell::plain_only(flags)?;
    let missing = |name: &str, remedy: &str| Failure::usage(name, "is needed and was not given", remedy);
    let id = flags.book.as_ref().ok_or_else(|| missing("book", "name the rule book, as in --book metric"))?;
    let units = Units::from(flags.units);
    let book = Book::new(id, &flags.set, units)?;
    let refused = |e| Failure::refused(&e, &book, units);
    let texts = if said.stock_plate.is_empty() { flags.plate.as_slice() } else { said.stock_plate.as_slice() };
    let plates = texts.iter().map(|t| length(Field::Plate, t)).collect::<Result<Vec<Length>, Failure>>()?;
    if plates.is_empty() {
        return Err(missing("plate", "write --plate \"12 mm\", or --stock-plate for each plate of the stock"));
    }
    let shell = match &shell_flags.inside_diameter {
        Some(_) => Some(shell(flags, shell_flags, Service::new_shell())?),
        None => None,
    };
    // The shell divides strengths by its factor; without one they are divided here.
    let materials = if shell.is_some() { ultimate(flags, &book)? } else { permissible(flags, &book)? };
    let objective = match said.objective {
        ObjectiveFlag::Efficiency => Objective::Efficiency,
        ObjectiveFlag::Mass => Objective::Mass,
        ObjectiveFlag::Rivets => Objective::Rivets,
        ObjectiveFlag::Thickness => Objective::Thickness,
    };
    let forms: Vec<Form> = all_forms().iter().copied().filter(|f| wanted(flags, said, f)).collect();
    let mut brief = SearchBrief::new(objective, &plates, materials).forms(&forms).mass(order());
    if let Some(rows) = said.rows_most {
        brief = brief.rows_most(rows);
    }
    if let Some(rivet) = &said.rivet_most {
        brief = brief.rivet_most(length(Field::Rivet, rivet)?);
    }
    if let Some(pitch) = &said.pitch_most {
        brief = brief.pitch_most(length(Field::Pitch, pitch)?);
    }
    if let Some(least) = &said.efficiency_least {
        brief = brief.efficiency(number("efficiency-least", least.trim_end_matches('%').trim())? / 100.0);
    }
    if let (Some(p), Some(shell)) = (&said.pressure, shell) {
        brief = brief.pressure(pressure("pressure", p)?, shell);
    }
    if said.any_finding {
        brief = brief.any_finding();
    }
    let outcome = search(&brief, &book.rules).map_err(refused)?;
    let mut out = heading("THE BEST JOINT OF THE GRID", &book);
    out.push_str(&basis(units, &plates, &materials));
    match &outcome {
        Outcome::Found(found) => {
            for (place, ranked) in (1..).zip(&found.best) {
                out.push_str(&line(units, place, &ranked.candidate));
                let behind = ranked.behind.map_or("the best".to_string(), |m| format!("behind: {}", m.what()));
                let [less, more] = ranked.neighbours.map(neighbour);
                out.push_str(&format!("   {behind}; a step less of the pitch {less}, a step more {more}\n"));
            }
            out.push_str("\nEFFICIENCY AGAINST MASS (no other joint has more of the one without more of the other)\n");
            let mut slots = vec![None; FRONT];
            match front(&brief, &book.rules, &mut slots) {
                Ok((count, _)) => {
                    // A long front is shown in even steps, from the lightest to the strongest.
                    let lines = count.min(LINES);
                    let at = |line: usize| if lines > 1 { line * (count - 1) / (lines - 1) } else { 0 };
                    for place in (0..lines).map(at) {
                        if let Some(Some(candidate)) = slots.get(place) {
                            out.push_str(&line(units, place + 1, candidate));
                        }
                    }
                    out.push_str(&format!("\n   {lines} of the {count} joints of the front.\n"));
                }
                Err(e) => out.push_str(&format!("   not worked out: {e}\n")),
            }
        }
        Outcome::NothingFits(tally) => {
            out.push_str("\nNothing fits.");
            if let Some((constraint, count)) = tally.most() {
                out.push_str(&format!(" Most candidates are excluded by {}: {count}.", constraint.what()));
            }
            out.push('\n');
        }
    }
    out.push_str(&counts(outcome.tally()));
    out.push_str(&format!("\n{}\n", seamwright::CAUTION));
    Ok(folded(&out.replace('\u{a0}', " ")))
}

/// Whether a form is to be searched.
fn wanted(flags: &Flags, said: &SearchFlags, form: &Form) -> bool {
    if !said.only_form {
        return true;
    }
    match flags.form {
        Some(FormFlag::Lap) => form.kind() == JointKind::Lap,
        Some(FormFlag::SingleStrap) => form.kind() == JointKind::SingleStrap,
        Some(FormFlag::DoubleStrap) => form.kind() == JointKind::DoubleStrap && !form.unequal(),
        Some(FormFlag::UnequalStraps) => form.unequal(),
        None => true,
    }
}

/// What was searched with: plates, stresses, and how a metre of seam is weighed.
fn basis(units: Units, plates: &[Length], m: &Materials) -> String {
    let sizes: Vec<String> = plates.iter().map(|t| units.size(t.to_mm())).collect();
    let bearing = m.plate.bearing.map_or("not given".to_string(), |b| units.stress(b));
    let order = order();
    format!(
        "Plates {}; tension {}, shear {}, bearing {bearing}.\nMass of a metre: steel, {}; rivet lengths by the rule {}, \
         to whole millimetres upwards.\n",
        sizes.join(", "),
        units.stress(m.plate.tension),
        units.stress(m.rivet_shear),
        order.head().name(),
        order.length_rule().name()
    )
}

/// How a metre of seam is weighed: button heads of steel, rivets cut to length by the boiler rule.
fn order() -> Order {
    let end = Length::mm(40.0);
    let run = Run::Straight { length: Length::m(1.0), first_end: end, last_end: end };
    Order::steel(run, HeadForm::Button, LengthRule::BoilerButton, Stock::every(Length::mm(1.0), Rounding::Up))
}

/// A candidate on two lines.
fn line(units: Units, place: usize, c: &Candidate) -> String {
    let mut out = format!("\n{place}. {}\n", c.form);
    out.push_str(&format!(
        "   plate {}, hole {}, rivet {}, pitch {}: credited {}",
        units.size(c.plate.to_mm()),
        units.size(c.hole.to_mm()),
        units.size(c.rivet.to_mm()),
        units.size(c.pitch.to_mm()),
        percent(c.efficiency)
    ));
    out.push_str(&format!("; {} rivets in a metre", fixed(c.rivets_per_metre, 1)));
    if let Some(mass) = c.mass_per_metre {
        out.push_str(&format!(", {} kg/m", fixed(mass, 2)));
    }
    if let Some(p) = c.pressure {
        out.push_str(&format!(", allows {}", units.stress(Stress::mpa(p.to_mpa()))));
    }
    out.push('\n');
    out
}

fn neighbour(n: Beside) -> String {
    match n {
        Beside::OffGrid => "is off the grid".to_string(),
        Beside::Excluded(c) => format!("is excluded by {}", c.what()),
        Beside::Worse(m) => format!("has {}", m.what()),
    }
}

fn counts(tally: &Tally) -> String {
    let mut out = format!(
        "\nCERTIFICATE\n{} candidates; {} examined in full, {} excluded because a bound is behind the best; {} fit.\n",
        tally.grid, tally.examined, tally.by_bound, tally.fitting
    );
    for (constraint, count) in tally.excluded() {
        out.push_str(&format!("   {count} excluded by {}\n", constraint.what()));
    }
    out
}

//! The certified search.

use core::ops::ControlFlow;

use pyo3::prelude::*;
use seamwright::bounds::Field;
use seamwright::error::{Error, ErrorKind};
use seamwright::quantities::{Length, Pressure};
use seamwright::rating::Shell;
use seamwright::search::{self as core_search, Beside, Candidate, Objective, Outcome, SearchBrief, Tally};
use seamwright::shop::{Order, Run, Stock};

use crate::book::Book;
use crate::error::wrong_choice;
use crate::joint::{Form, Joint, Materials};
use crate::shell::ShellIn;
use crate::shop::{head, length_rule};
use crate::words;

/// What is searched for: lengths in mm; `None` where nothing is limited.
#[derive(FromPyObject)]
#[pyo3(from_item_all)]
pub struct SearchIn {
    objective: String,
    plates: Vec<f64>,
    forms: Option<Vec<Py<Form>>>,
    holes: Option<Vec<f64>>,
    rows_most: Option<u8>,
    rivet_least: Option<f64>,
    rivet_most: Option<f64>,
    pitch_most: Option<f64>,
    efficiency_least: Option<f64>,
    pressure: Option<f64>,
    shell: Option<ShellIn>,
    weighed: Option<(String, String)>,
    any_finding: bool,
}

/// One joint of the grid.
#[derive(IntoPyObject)]
pub struct CandidateOut {
    form: Form,
    plate: f64,
    hole: f64,
    rivet: f64,
    pitch: f64,
    efficiency: f64,
    rivets_per_metre: f64,
    mass_per_metre: Option<f64>,
    pressure: Option<f64>,
    governing: (u8, u8, u8),
    behind: Option<&'static str>,
    a_step_less: Option<String>,
    a_step_more: Option<String>,
}

/// What became of the candidates.
#[derive(IntoPyObject)]
pub struct TallyOut {
    grid: u64,
    examined: u64,
    fitting: u64,
    by_bound: u64,
    excluded: Vec<(String, u64)>,
}

/// How a search ended.
#[derive(IntoPyObject)]
pub struct SearchOut {
    joint: Option<Joint>,
    best: Vec<CandidateOut>,
    tally: TallyOut,
}

/// A brief that owns its lists.
struct Owned {
    plates: Vec<Length>,
    forms: Option<Vec<seamwright::joint::Form>>,
    holes: Option<Vec<Length>>,
    objective: Objective,
    order: Option<Order>,
    shell: Option<Shell>,
    given: SearchIn,
}

impl Owned {
    fn new(py: Python<'_>, given: SearchIn) -> PyResult<Owned> {
        let lengths = |list: &[f64]| list.iter().map(|mm| Length::mm(*mm)).collect::<Vec<_>>();
        let objective = words::objective::read(&given.objective);
        // The run is of no account for a metre of seam; rivets are cut to length.
        let order = match &given.weighed {
            Some((heads, rule)) => {
                let (heads, rule) = (head(py, heads)?, length_rule(py, rule)?);
                Some(Order::steel(Run::Tie, heads, rule, Stock::cut_to_length()))
            }
            None => None,
        };
        Ok(Owned {
            plates: lengths(&given.plates),
            forms: given.forms.as_ref().map(|forms| forms.iter().map(|form| form.get().0).collect()),
            holes: given.holes.as_deref().map(lengths),
            objective: objective.ok_or_else(|| wrong_choice(py, "objective", &given.objective))?,
            order,
            shell: given.shell.as_ref().map(|shell| shell.shell(py)).transpose()?,
            given,
        })
    }

    fn brief(&self, materials: &Materials) -> SearchBrief<'_> {
        let mut brief = SearchBrief::new(self.objective, &self.plates, materials.0);
        if let Some(forms) = &self.forms {
            brief = brief.forms(forms);
        }
        if let Some(holes) = &self.holes {
            brief = brief.holes(holes);
        }
        if let Some(rows) = self.given.rows_most {
            brief = brief.rows_most(rows);
        }
        if let Some(rivet) = self.given.rivet_least {
            brief = brief.rivet_least(Length::mm(rivet));
        }
        if let Some(rivet) = self.given.rivet_most {
            brief = brief.rivet_most(Length::mm(rivet));
        }
        if let Some(pitch) = self.given.pitch_most {
            brief = brief.pitch_most(Length::mm(pitch));
        }
        if let Some(least) = self.given.efficiency_least {
            brief = brief.efficiency(least);
        }
        if let (Some(least), Some(shell)) = (self.given.pressure, self.shell) {
            brief = brief.pressure(Pressure::mpa(least), shell);
        }
        if let Some(order) = self.order {
            brief = brief.mass(order);
        }
        if self.given.any_finding { brief.any_finding() } else { brief }
    }
}

fn candidate_out(c: &Candidate) -> CandidateOut {
    CandidateOut {
        form: Form(c.form),
        plate: c.plate.to_mm(),
        hole: c.hole.to_mm(),
        rivet: c.rivet.to_mm(),
        pitch: c.pitch.to_mm(),
        efficiency: c.efficiency,
        rivets_per_metre: c.rivets_per_metre,
        mass_per_metre: c.mass_per_metre,
        pressure: c.pressure.map(Pressure::to_mpa),
        governing: (c.governing.plate, c.governing.other, c.governing.narrow),
        behind: None,
        a_step_less: None,
        a_step_more: None,
    }
}

fn neighbour(n: Beside) -> String {
    match n {
        Beside::OffGrid => "off the grid".to_owned(),
        Beside::Excluded(constraint) => format!("excluded by {}", constraint.what()),
        Beside::Worse(measure) => measure.what().to_owned(),
    }
}

fn tally_out(tally: &Tally) -> TallyOut {
    TallyOut {
        grid: tally.grid,
        examined: tally.examined,
        fitting: tally.fitting,
        by_bound: tally.by_bound,
        excluded: tally.excluded().map(|(constraint, count)| (constraint.what().to_owned(), count)).collect(),
    }
}

/// Questions of a search between two looks at signals: a millisecond or so.
const PATIENCE: u32 = 512;

/// Runs a search without the interpreter, which is looked into now and then: a signal's exception ends the search.
fn interruptible<T: Send>(
    py: Python<'_>,
    book: &Book,
    run: impl FnOnce(&mut dyn FnMut() -> ControlFlow<()>) -> Result<ControlFlow<(), T>, Error> + Send,
) -> PyResult<Result<T, Error>> {
    let mut raised: Option<PyErr> = None;
    let mut asked = 0_u32;
    let ended = py.detach(|| {
        run(&mut || {
            asked = asked.wrapping_add(1);
            if !asked.is_multiple_of(PATIENCE) {
                return ControlFlow::Continue(());
            }
            match Python::attach(|py| py.check_signals()) {
                Ok(()) => ControlFlow::Continue(()),
                Err(error) => {
                    raised = Some(error);
                    ControlFlow::Break(())
                }
            }
        })
    });
    match (ended, raised) {
        (_, Some(error)) => Err(error),
        (Ok(ControlFlow::Continue(found)), None) => Ok(Ok(found)),
        (Err(error), None) => Ok(Err(error)),
        // A search ends early only where a signal's exception was kept.
        (Ok(ControlFlow::Break(())), None) => Err(book.raise(py, &Error::new(ErrorKind::Missing, Field::Form))),
    }
}

/// Searches the grid. Other Python threads run meanwhile, and signals are answered.
#[pyfunction]
pub fn search(py: Python<'_>, materials: &Materials, given: SearchIn, book: &Book) -> PyResult<SearchOut> {
    let owned = Owned::new(py, given)?;
    let (brief, rules) = (owned.brief(materials), book.rules());
    let outcome = interruptible(py, book, |go_on| core_search::search_while(&brief, rules, go_on))?;
    let outcome = outcome.map_err(|e| book.raise(py, &e))?;
    Ok(match &outcome {
        Outcome::NothingFits(tally) => SearchOut { joint: None, best: Vec::new(), tally: tally_out(tally) },
        Outcome::Found(found) => SearchOut {
            joint: Some(Joint(found.design.joint)),
            best: found
                .best
                .iter()
                .map(|ranked| {
                    let [less, more] = ranked.neighbours.map(neighbour);
                    CandidateOut {
                        behind: ranked.behind.map(|m| m.what()),
                        a_step_less: Some(less),
                        a_step_more: Some(more),
                        ..candidate_out(&ranked.candidate)
                    }
                })
                .collect(),
            tally: tally_out(&found.tally),
        },
    })
}

/// Every form that is searched where none is named.
#[pyfunction]
pub fn all_forms() -> Vec<Form> {
    core_search::all_forms().into_iter().map(Form).collect()
}

/// Room for the candidates that a front holds on the way, at first and at most.
const ROOM: [usize; 2] = [256, 1 << 18];

/// The front of efficiency against mass.
#[pyfunction]
pub fn front(py: Python<'_>, materials: &Materials, given: SearchIn, book: &Book) -> PyResult<Vec<CandidateOut>> {
    let owned = Owned::new(py, given)?;
    let (brief, rules) = (owned.brief(materials), book.rules());
    let [mut room, most] = ROOM;
    loop {
        let mut slots = vec![None; room];
        match interruptible(py, book, |go_on| core_search::front_while(&brief, rules, &mut slots, go_on))? {
            Ok((count, _)) => return Ok(slots.iter().take(count).flatten().map(candidate_out).collect()),
            Err(e) if e.kind == ErrorKind::NoSpace && room < most => room = room.saturating_mul(4),
            Err(e) => return Err(book.raise(py, &e)),
        }
    }
}

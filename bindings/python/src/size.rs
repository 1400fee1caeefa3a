//! Sizing a joint from a brief.

use pyo3::prelude::*;
use seamwright::error::EntryNo;
use seamwright::proportion::{HoleBasis, Limit, limit_entry};
use seamwright::quantities::Length;
use seamwright::sizing::{self, Brief, Design};

use crate::book::Book;
use crate::check::{AnalysisOut, analysis_out};
use crate::error::{clause_text, entry_key, raise};
use crate::joint::{Form, Joint, Materials, Straps, straps};
use crate::words;

/// A limit: its state (`none`, `unknown`, `at`), its figure in mm, its entry and clause.
#[derive(IntoPyObject)]
pub struct LimitOut {
    state: &'static str,
    value: Option<f64>,
    entry: String,
    clause: String,
}

/// A limit for Python.
pub fn limit_out(limit: &Limit<f64>, book: &Book) -> LimitOut {
    let entry: EntryNo = limit_entry(limit);
    let (state, value) = match limit {
        Limit::None => ("none", None),
        Limit::Unknown(_) => ("unknown", None),
        Limit::At(x, _) => ("at", Some(*x)),
    };
    LimitOut { state, value, entry: entry_key(entry), clause: book.view(|b| clause_text(Some(b), entry)) }
}

/// The hole: computed in mm and by what rule, taken, and its rivet.
#[derive(IntoPyObject)]
pub struct HoleOut {
    computed: Option<f64>,
    basis: Option<&'static str>,
    hole: f64,
    rivet: f64,
}

/// The pitch, mm.
#[derive(IntoPyObject)]
pub struct PitchOut {
    by_shear: f64,
    by_weaker: f64,
    by_all_modes: f64,
    balance: &'static str,
    least: f64,
    greatest: LimitOut,
    taken: f64,
    decided: &'static str,
}

/// A sized joint.
#[derive(IntoPyObject)]
pub struct DesignOut {
    joint: Joint,
    hole: HoleOut,
    pitch: PitchOut,
    gaps: Vec<(f64, String)>,
    heads: Vec<(Option<f64>, Option<f64>)>,
    margin_least: f64,
    straps_least: (LimitOut, LimitOut),
    analysis: AnalysisOut,
}

fn basis(basis: &HoleBasis) -> &'static str {
    match basis {
        HoleBasis::Root => "square root",
        HoleBasis::Thin => "thin plate",
        HoleBasis::Table(_) => "table",
        HoleBasis::BeyondTable => "beyond the table",
        HoleBasis::NoBearing => "no bearing stress",
    }
}

/// A design for Python.
pub fn design_out(d: &Design, book: &Book) -> DesignOut {
    let [wide, narrow] = &d.straps;
    let gaps = d.joint.form().row_count().saturating_sub(1);
    DesignOut {
        joint: Joint(d.joint),
        hole: HoleOut {
            computed: d.hole.computed.map(|(x, _)| x),
            basis: d.hole.computed.map(|(_, b)| basis(&b)),
            hole: d.hole.hole,
            rivet: d.hole.rivet,
        },
        pitch: PitchOut {
            by_shear: d.pitch.by_shear,
            by_weaker: d.pitch.by_weaker,
            by_all_modes: d.pitch.by_all_modes,
            balance: words::balance::word(d.pitch.balance),
            least: d.pitch.least,
            greatest: limit_out(&d.pitch.greatest, book),
            taken: d.pitch.taken,
            decided: words::decided::word(d.pitch.decided),
        },
        gaps: d.gaps.iter().take(gaps).map(|(x, entry)| (*x, entry_key(entry.no()))).collect(),
        heads: d.heads.iter().take(gaps).map(|room| (room.at_strap, room.of_rows)).collect(),
        margin_least: d.margin,
        straps_least: (limit_out(wide, book), limit_out(narrow, book)),
        analysis: analysis_out(&d.analysis, &d.joint, book),
    }
}

/// What a joint is sized for, lengths in mm; what is `None` is found.
#[derive(FromPyObject)]
#[pyo3(from_item_all)]
pub struct BriefIn {
    plate: f64,
    other_plate: Option<f64>,
    hole: Option<f64>,
    rivet: Option<f64>,
    pitch: Option<f64>,
    strap: Option<f64>,
    wide_strap: Option<f64>,
    narrow_strap: Option<f64>,
    back_pitches: Vec<Option<f64>>,
    margin: Option<f64>,
}

/// The core's brief.
pub fn brief(py: Python<'_>, form: &Form, materials: &Materials, given: &BriefIn) -> PyResult<Brief> {
    let mut brief = Brief::new(form.0, Length::mm(given.plate), materials.0);
    if let Some(b) = given.other_plate {
        brief = brief.other_plate(Length::mm(b));
    }
    if let Some(hole) = given.hole {
        brief = brief.hole(Length::mm(hole), given.rivet.map(Length::mm));
    }
    if let Some(pitch) = given.pitch {
        brief = brief.pitch(Length::mm(pitch));
    }
    let stated = straps(given.strap, given.wide_strap, given.narrow_strap).map_err(|e| raise(py, &e, None))?;
    brief = match stated {
        Straps::None => brief,
        Straps::One(s) => brief.straps(s, None),
        Straps::Two(w, n) => brief.straps(w, Some(n)),
    };
    for (row, gap) in (1..).zip(&given.back_pitches) {
        if let Some(gap) = gap {
            brief = brief.back_pitch(row, Length::mm(*gap));
        }
    }
    if let Some(m) = given.margin {
        brief = brief.margin(Length::mm(m));
    }
    Ok(brief)
}

/// Sizes a joint.
#[pyfunction]
pub fn size(py: Python<'_>, form: &Form, materials: &Materials, given: BriefIn, book: &Book) -> PyResult<DesignOut> {
    let brief = brief(py, form, materials, &given)?;
    let design = sizing::size(&brief, book.rules()).map_err(|e| book.raise(py, &e))?;
    Ok(design_out(&design, book))
}

//! The shop sheet.

use pyo3::prelude::*;
use seamwright::bounds::Field;
use seamwright::error::{Error, ErrorKind};
use seamwright::quantities::Length;
use seamwright::shop::{
    self as core_shop, Density, HEAD_FORMS, HeadForm, LENGTH_RULES, LengthRule, Masses, Neighbour, Order, PlateCut,
    RivetLine, Run, ShopSheet, Stock, Style, Units,
};
use seamwright::step::Plain;
use seamwright::working::write_shop;

use crate::book::Book;
use crate::check::{AnalysisOut, analysis_out};
use crate::error::{raise, wrong_choice};
use crate::joint::{Joint, Materials};
use crate::size::{LimitOut, limit_out};
use crate::words;
use crate::working::{Wishes, style, written};

/// A shop sheet of the core, with the book it was made by.
#[pyclass(frozen, module = "seamwright._native")]
pub struct Sheet {
    sheet: Box<ShopSheet>,
    book: Book,
}

/// What a shop is asked for; lengths in mm, density in kg/m3.
#[derive(FromPyObject)]
#[pyo3(from_item_all)]
pub struct OrderIn {
    run: String,
    length: f64,
    first_end: f64,
    last_end: f64,
    diameter: f64,
    measured: String,
    other: String,
    head: String,
    set_head: String,
    length_rule: String,
    stock_step: Option<f64>,
    rounding: String,
    density: Option<f64>,
}

/// The form of head of a word.
pub fn head(py: Python<'_>, word: &str) -> PyResult<HeadForm> {
    HEAD_FORMS.iter().copied().find(|h| h.key() == word).ok_or_else(|| wrong_choice(py, "head", word))
}

/// The length rule of a word.
pub fn length_rule(py: Python<'_>, word: &str) -> PyResult<LengthRule> {
    LENGTH_RULES.iter().copied().find(|r| r.key() == word).ok_or_else(|| wrong_choice(py, "length_rule", word))
}

fn order(py: Python<'_>, o: &OrderIn) -> PyResult<Order> {
    let run = match o.run.as_str() {
        "straight" => Run::Straight {
            length: Length::mm(o.length),
            first_end: Length::mm(o.first_end),
            last_end: Length::mm(o.last_end),
        },
        "girth" => Run::Girth {
            diameter: Length::mm(o.diameter),
            measured: words::measured::read(&o.measured).ok_or_else(|| wrong_choice(py, "measured", &o.measured))?,
            other: words::face::read(&o.other).ok_or_else(|| wrong_choice(py, "other", &o.other))?,
        },
        "tie" => Run::Tie,
        other => return Err(wrong_choice(py, "run", other)),
    };
    let (closing, rule) = (head(py, &o.head)?, length_rule(py, &o.length_rule)?);
    let stock = match o.stock_step {
        // A step of nothing would read as "cut to length", which is said by leaving the step out.
        Some(0.0) => {
            let limit = Field::StockStep.bound().lo;
            return Err(raise(py, &Error::new(ErrorKind::TooSmall, Field::StockStep).value(0.0).limit(limit), None));
        }
        Some(step) => {
            let rounding =
                words::rounding::read(&o.rounding).ok_or_else(|| wrong_choice(py, "rounding", &o.rounding))?;
            Stock::every(Length::mm(step), rounding)
        }
        None => Stock::cut_to_length(),
    };
    let made = match o.density {
        Some(density) => Order::new(run, closing, rule, stock, Density::kg_m3(density)),
        None => Order::steel(run, closing, rule, stock),
    };
    Ok(made.set_head(head(py, &o.set_head)?))
}

#[derive(IntoPyObject)]
struct NeighbourOut {
    strips: u32,
    strip: f64,
    pitch: f64,
    admissible: bool,
}

fn neighbour(n: &Neighbour) -> NeighbourOut {
    NeighbourOut { strips: n.strips, strip: n.strip, pitch: n.pitch, admissible: n.admissible }
}

#[derive(IntoPyObject)]
struct FitOut {
    asked: f64,
    exact: f64,
    fewer: Option<NeighbourOut>,
    more: NeighbourOut,
    taken: NeighbourOut,
    least: f64,
    greatest: LimitOut,
    fitted: &'static str,
}

#[derive(IntoPyObject)]
struct RivetOut {
    row: u8,
    planes: u8,
    count: u32,
    rivet: f64,
    hole: f64,
    grip: f64,
    allowance: f64,
    length: f64,
    stock: f64,
    set_head: (&'static str, f64, f64),
    closing_head: (&'static str, f64, f64),
    mass: f64,
    drilled: f64,
}

fn rivet(line: &RivetLine) -> RivetOut {
    let size = |h: &core_shop::HeadSize| (h.form.key(), h.width, h.height);
    RivetOut {
        row: line.row,
        planes: line.planes,
        count: line.count,
        rivet: line.rivet.to_mm(),
        hole: line.hole.to_mm(),
        grip: line.grip,
        allowance: line.allowance,
        length: line.length,
        stock: line.stock,
        set_head: size(&line.set_head),
        closing_head: size(&line.closing_head),
        mass: line.mass,
        drilled: line.drilled,
    }
}

/// Thickness, width, length in mm and mass in kg.
type CutOut = (f64, f64, f64, f64);

const fn cut(c: &PlateCut) -> CutOut {
    (c.thickness, c.width, c.length, c.mass)
}

/// Masses of a seam, kg.
#[derive(IntoPyObject)]
pub struct MassesOut {
    rivets: f64,
    straps: f64,
    overlap: f64,
    holes: f64,
    total: f64,
    per_metre: f64,
}

const fn masses(m: &Masses) -> MassesOut {
    MassesOut {
        rivets: m.rivets,
        straps: m.straps,
        overlap: m.overlap,
        holes: m.holes,
        total: m.total,
        per_metre: m.per_metre,
    }
}

/// A shop sheet for Python: lengths in mm, masses in kg, angles in degrees.
#[derive(IntoPyObject)]
pub struct SheetOut {
    joint: Joint,
    fit: FitOut,
    analysis: AnalysisOut,
    seam: f64,
    run: Option<f64>,
    circle: Option<f64>,
    other_length: f64,
    narrow_length: f64,
    overlap: Option<CutOut>,
    wide: Option<CutOut>,
    narrow: Option<CutOut>,
    masses: MassesOut,
    rivets: Vec<RivetOut>,
    rivet_count: u32,
    to_order: Vec<(f64, f64, u32)>,
    notes: Vec<(String, &'static str)>,
    density: f64,
}

impl Sheet {
    /// The core's sheet.
    pub const fn inner(&self) -> &ShopSheet {
        &self.sheet
    }
}

/// A hole: number, side, row, number in the row, x, y in mm, angle in degrees.
type HoleOut = (u32, &'static str, u8, u32, f64, f64, Option<f64>);

#[pymethods]
impl Sheet {
    /// Everything on the sheet but its holes.
    fn facts(&self) -> SheetOut {
        let s = &self.sheet;
        let pitch = &s.pitch;
        SheetOut {
            joint: Joint(s.joint),
            fit: FitOut {
                asked: pitch.asked,
                exact: pitch.exact,
                fewer: pitch.fewer.as_ref().map(neighbour),
                more: neighbour(&pitch.more),
                taken: neighbour(&pitch.taken),
                least: pitch.least,
                greatest: limit_out(&pitch.greatest, &self.book),
                fitted: words::fitted::word(pitch.fitted),
            },
            analysis: analysis_out(&s.analysis, &s.joint, &self.book),
            seam: s.along.seam,
            run: s.along.run,
            circle: s.along.circle,
            other_length: s.along.other,
            narrow_length: s.along.narrow,
            overlap: s.cuts.overlap.as_ref().map(cut),
            wide: s.cuts.wide.as_ref().map(cut),
            narrow: s.cuts.narrow.as_ref().map(cut),
            masses: masses(&s.masses),
            rivets: s.rivets().iter().map(rivet).collect(),
            rivet_count: s.rivet_count(),
            to_order: s.to_order().map(|(d, l, n)| (d.to_mm(), l.to_mm(), n)).collect(),
            notes: s.notes().map(|n| (words::spaced(&format!("{n:?}")), n.text())).collect(),
            density: s.order.density().to_kg_m3(),
        }
    }

    /// How many holes there are.
    fn hole_count(&self) -> u32 {
        self.sheet.layout().total()
    }

    /// `count` holes from number `first` on.
    fn holes(&self, first: u32, count: u32) -> Vec<HoleOut> {
        let out = |h: core_shop::Hole| {
            (h.number, words::side::word(h.side), h.row, h.in_row, h.x.to_mm(), h.y.to_mm(), h.angle)
        };
        self.sheet.layout().page(first, count).map(out).collect()
    }

    /// The sheet as plain text or Markdown.
    fn text(
        &self,
        py: Python<'_>,
        markdown: bool,
        units: &str,
        mark: &str,
        first: u32,
        count: u32,
    ) -> PyResult<String> {
        let units = match units {
            "metric" => Units::Millimetre,
            "inch" => Units::Inch,
            other => return Err(wrong_choice(py, "units", other)),
        };
        let mark = words::mark::read(mark).ok_or_else(|| wrong_choice(py, "mark", mark))?;
        let style = Style { units, mark, first, count };
        let mut out = String::new();
        let written = self.book.view(|book| {
            if markdown {
                self.sheet.write_markdown(&mut out, book, &style)
            } else {
                self.sheet.write_text(&mut out, book, &style)
            }
        });
        match written {
            Ok(()) => Ok(out),
            // A string takes every text: only a figure too large to print ends here.
            Err(_) => Err(raise(py, &Error::new(ErrorKind::TooLarge, Field::Text), None)),
        }
    }
}

/// The shop sheet of a joint along a run.
#[pyfunction]
pub fn shop_sheet(
    py: Python<'_>,
    joint: &Joint,
    materials: &Materials,
    book: &Book,
    asked: OrderIn,
) -> PyResult<Sheet> {
    let order = order(py, &asked)?;
    let sheet = core_shop::shop_sheet(&joint.0, &materials.0, book.rules(), &order).map_err(|e| book.raise(py, &e))?;
    Ok(Sheet { sheet: Box::new(sheet), book: book.clone() })
}

/// The working of a shop sheet.
#[pyfunction]
pub fn working_of_shop(
    py: Python<'_>,
    joint: &Joint,
    materials: &Materials,
    book: &Book,
    asked: OrderIn,
    wishes: Wishes,
) -> PyResult<String> {
    let (style, order) = (style(py, &wishes)?, order(py, &asked)?);
    book.view(|view| written(py, book, |out| write_shop(out, style, &joint.0, &materials.0, view, &order)))
}

/// The masses of one strip of an endless seam, kg.
#[pyfunction]
pub fn strip_masses(py: Python<'_>, joint: &Joint, materials: &Materials, asked: OrderIn) -> PyResult<MassesOut> {
    let order = order(py, &asked)?;
    let found = core_shop::strip_masses(Plain, &joint.0, &materials.0, &order).map_err(|e| raise(py, &e, None))?;
    Ok(masses(&found))
}

/// The allowance of a length rule beyond the grip, mm.
#[pyfunction]
pub fn allowance(py: Python<'_>, rule: &str, rivet: f64, grip: f64) -> PyResult<f64> {
    core_shop::allowance(Plain, length_rule(py, rule)?, 0, rivet, grip).map_err(|e| raise(py, &e, None))
}

/// Key, name, equation, source, label and greatest grip in diameters of every length rule.
#[pyfunction]
#[expect(clippy::type_complexity, reason = "a table of plain columns")]
pub fn length_rules() -> Vec<(&'static str, &'static str, &'static str, &'static str, &'static str, Option<f64>, bool)>
{
    let row = |r: &LengthRule| {
        (
            r.key(),
            r.name(),
            r.formula().equation(),
            r.source(),
            words::label::word(r.label()),
            r.greatest_grip(),
            r.sunk(),
        )
    };
    LENGTH_RULES.iter().map(row).collect()
}

/// Key, name, width and height in diameters, whether sunk, label and source of every form of head.
#[pyfunction]
pub fn heads() -> Vec<(&'static str, &'static str, f64, f64, bool, &'static str, &'static str)> {
    let row =
        |h: &HeadForm| (h.key(), h.name(), h.width(), h.height(), h.sunk(), words::label::word(h.label()), h.source());
    HEAD_FORMS.iter().map(row).collect()
}

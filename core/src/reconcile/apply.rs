//! A case with edits: the book, the joint and the arithmetic changed, and the routine run.

use core::marker::PhantomData;

use super::catalogue::{Edit, Loaded, Midway, Pi, Share, WrongLine};
use super::collect::{Alt, Collect, EXACT, Found, Habits, Own, Raw};
use super::figure::{Figure, MAX_FIGURES};
use super::{Case, Work};
use crate::bounds::Field;
use crate::check::{Analysis, check_with};
use crate::error::{Error, ErrorKind};
use crate::joint::{Arrangement, Form, Joint, JointKind, MAX_ROWS};
use crate::materials::Materials;
use crate::math;
use crate::quantities::Stress;
use crate::rules::{Entry, Rules};
use crate::sizing::size_with;
use crate::step::{Name, Quantity as Q};

/// A case after its edits.
#[derive(Clone, Copy)]
pub(super) struct Edited {
    case: Case,
    pi: Option<Pi>,
    habits: Habits,
    share: Option<Share>,
    /// The factor by which figures of the unit of the first open one are too large.
    pub(super) figure_unit: Option<f64>,
    /// Whether figures may be cut off.
    pub(super) cut_off: bool,
    /// Slips of the digits that are allowed for: two digits changed over, one dropped.
    pub(super) digits: (bool, bool),
}

impl Edited {
    pub(super) const fn new(case: Case) -> Self {
        Edited {
            case,
            pi: None,
            habits: Habits::NONE,
            share: None,
            figure_unit: None,
            cut_off: false,
            digits: (false, false),
        }
    }

    /// Whether figures are slipped rather than computed otherwise.
    pub(super) const fn of_figures(&self) -> bool {
        self.figure_unit.is_some() || self.cut_off || self.digits.0 || self.digits.1
    }

    /// With one more edit; `None` where it changes nothing, contradicts an earlier one or means nothing for this case.
    pub(super) fn with(mut self, edit: Edit) -> Option<Self> {
        let kind = self.kind();
        match edit {
            Edit::Rule(entry, value) => self.set(entry, value)?,
            Edit::Root(a, b) => {
                let (first, second) = (self.set(Entry::HOLE_SQRT, a), self.set(Entry::HOLE_ADD, b));
                first.or(second)?;
            }
            Edit::OneDiameter(which) => {
                let of = [Entry::TEAR_DIAMETER, Entry::SHEAR_DIAMETER, Entry::BEARING_DIAMETER];
                // One alone is an edit of its own.
                let changed = of.iter().filter(|e| self.case.rules.get(**e) != which).count();
                if changed < 2 {
                    return None;
                }
                for entry in of {
                    self.case.rules = self.case.rules.with(entry, which).ok()?;
                }
            }
            Edit::Cap(neighbour) => self.cap_of(neighbour)?,
            Edit::NoCap => self.clear(&[Entry::PITCH_MAX_LAP, Entry::PITCH_MAX_SINGLE, Entry::PITCH_MAX_DOUBLE], 5)?,
            Edit::NoFloor => self.clear(&[Entry::PITCH_LEAST, Entry::PITCH_LEAST_ADD], 1)?,
            Edit::Pi(pi) => {
                if self.pi.replace(pi).is_some() {
                    return None;
                }
            }
            Edit::Rounded(figures) => {
                if core::mem::replace(&mut self.habits.rounded, figures) != 0 {
                    return None;
                }
            }
            Edit::Midway(which, digits) => {
                if self.habits.midway.get_mut(which as usize)?.replace(digits).is_some() {
                    return None;
                }
            }
            Edit::InnerPitch => self.strip_by(0.5)?,
            Edit::OuterPitch => self.strip_by(2.0)?,
            Edit::NoStraps => {
                let joint = self.joint()?;
                if kind == JointKind::Lap || (joint.other <= 0.0 && joint.narrow <= 0.0) {
                    return None;
                }
                (joint.other, joint.narrow) = (0.0, 0.0);
            }
            Edit::BearingOn(loaded) => self.bear_on(loaded, kind)?,
            Edit::OuterInDouble => self.outer_in_double(kind)?,
            Edit::Efficiency(share) => {
                if !matches!(self.case.work, Work::Check(..)) || self.share.replace(share).is_some() {
                    return None;
                }
            }
            Edit::ShearUnit(by) => {
                let materials = self.materials();
                materials.rivet_shear = Stress::mpa(materials.rivet_shear.to_mpa() * by);
            }
            Edit::TensionUnit(by) => {
                let materials = self.materials();
                for plate in [&mut materials.plate, &mut materials.other] {
                    plate.tension = Stress::mpa(plate.tension.to_mpa() * by);
                }
            }
            Edit::FigureUnit(by) => {
                if self.figure_unit.replace(by).is_some() {
                    return None;
                }
            }
            Edit::CutOff => {
                if core::mem::replace(&mut self.cut_off, true) {
                    return None;
                }
            }
            Edit::Transposed => {
                if core::mem::replace(&mut self.digits.0, true) || self.digits.1 {
                    return None;
                }
            }
            Edit::Dropped => {
                if core::mem::replace(&mut self.digits.1, true) || self.digits.0 {
                    return None;
                }
            }
        }
        Some(self)
    }

    fn form(&self) -> Form {
        match &self.case.work {
            Work::Check(joint, _) => *joint.form(),
            Work::Size(brief) => *brief.form(),
        }
    }

    fn kind(&self) -> JointKind {
        self.form().kind()
    }

    /// The joint, where there is one to be read otherwise.
    fn joint(&mut self) -> Option<&mut Joint> {
        match &mut self.case.work {
            Work::Check(joint, _) => Some(joint),
            Work::Size(_) => None,
        }
    }

    fn materials(&mut self) -> &mut Materials {
        match &mut self.case.work {
            Work::Check(_, materials) => materials,
            Work::Size(brief) => brief.materials_mut(),
        }
    }

    fn set(&mut self, entry: Entry, value: f64) -> Option<()> {
        if self.case.rules.get(entry) == value {
            return None;
        }
        self.case.rules = self.case.rules.with(entry, value).ok()?;
        Some(())
    }

    fn clear(&mut self, heads: &[Entry], lines: usize) -> Option<()> {
        let mut changed = false;
        for entry in heads.iter().flat_map(|head| (0..lines).map(|i| head.at(i))) {
            changed |= self.set(entry, 0.0).is_some();
        }
        changed.then_some(())
    }

    fn cap_of(&mut self, neighbour: WrongLine) -> Option<()> {
        let (kind, rivets) = (self.kind(), self.form().rivets());
        let (here, right) = self.case.rules.pitch_cap(kind, rivets)?;
        let (column, line) = match neighbour {
            WrongLine::Less => (kind, rivets.checked_sub(1)?),
            WrongLine::More => (kind, rivets.checked_add(1)?),
            WrongLine::Lap => (JointKind::Lap, rivets),
            WrongLine::Single => (JointKind::SingleStrap, rivets),
            WrongLine::Double => (JointKind::DoubleStrap, rivets),
        };
        let (_, wrong) = self.case.rules.pitch_cap(column, line)?;
        if wrong == right { None } else { self.set(here, wrong) }
    }

    /// Another pitch, where the outer row has half the rivets of the next one.
    fn strip_by(&mut self, by: f64) -> Option<()> {
        let joint = self.joint()?;
        let form = *joint.form();
        if !form.inner_doubled() {
            return None;
        }
        joint.strip *= by;
        let fits = joint.rows().iter().all(|row| math::below(f64::from(row.rivets) * row.hole, joint.strip));
        fits.then_some(())
    }

    /// The strength in bearing follows the thickness that was taken.
    fn bear_on(&mut self, loaded: Loaded, kind: JointKind) -> Option<()> {
        let joint = self.joint()?;
        let (plate, other, narrow) = (joint.plate, joint.other, joint.narrow);
        let thickness = match loaded {
            Loaded::Strap if kind != JointKind::Lap && other > 0.0 => other,
            Loaded::BothStraps if narrow > 0.0 => other + narrow,
            Loaded::OtherPlate if kind == JointKind::Lap && other != plate => other,
            _ => return None,
        };
        let bearing = self.materials().plate.bearing?;
        self.materials().plate.bearing = Some(Stress::mpa(bearing.to_mpa() * thickness / plate));
        Some(())
    }

    fn outer_in_double(&mut self, kind: JointKind) -> Option<()> {
        let joint = self.joint()?;
        let form = *joint.form();
        if kind != JointKind::DoubleStrap || form.first_double_row() <= 1 {
            return None;
        }
        let mut rows = [(0_u8, 0_u8); MAX_ROWS];
        for (slot, row) in rows.iter_mut().zip(form.rows()) {
            *slot = (row.rivets, 2);
        }
        let arrangement: Arrangement = form.arrangement();
        joint.form = Form::from_rows(kind, arrangement, rows.get(..form.row_count())?).ok()?;
        for row in joint.rows.iter_mut().take(form.row_count()) {
            row.planes = 2;
        }
        Some(())
    }

    /// What the routine says of the stated quantities.
    pub(super) fn run(&self, figures: &[Figure]) -> Option<[f64; MAX_FIGURES]> {
        match self.pi {
            None if self.habits.to(Midway::RivetArea).is_some() => self.run_as::<Alt<EXACT>>(figures),
            None => self.run_as::<f64>(figures),
            Some(Pi::TwoDecimals) => self.run_as::<Alt<{ Pi::TwoDecimals as u8 }>>(figures),
            Some(Pi::TwentyTwoSevenths) => self.run_as::<Alt<{ Pi::TwentyTwoSevenths as u8 }>>(figures),
            Some(Pi::ThreeDecimals) => self.run_as::<Alt<{ Pi::ThreeDecimals as u8 }>>(figures),
            Some(Pi::FourDecimals) => self.run_as::<Alt<{ Pi::FourDecimals as u8 }>>(figures),
            Some(Pi::QuarterThree) => self.run_as::<Alt<{ Pi::QuarterThree as u8 }>>(figures),
            Some(Pi::QuarterFour) => self.run_as::<Alt<{ Pi::QuarterFour as u8 }>>(figures),
            Some(Pi::QuarterUp) => self.run_as::<Alt<{ Pi::QuarterUp as u8 }>>(figures),
        }
    }

    #[inline(never)]
    fn run_as<N: Raw>(&self, figures: &[Figure]) -> Option<[f64; MAX_FIGURES]> {
        let found = Found::new();
        let form = self.form();
        let lap = (form.kind() == JointKind::Lap).then(|| u8::try_from(form.row_count()).unwrap_or(0));
        let c = Collect::<'_, N> { figures, found: &found, habits: &self.habits, lap, number: PhantomData };
        let rules: &Rules = &self.case.rules;
        let analysis: Result<Analysis, Error> = match &self.case.work {
            Work::Check(joint, materials) => check_with(c, joint, materials, rules).map(Analysis::values),
            Work::Size(brief) => size_with(c, brief, rules).map(|design| design.values().analysis),
        };
        let analysis = analysis.ok()?;
        let mut values = found.values();
        if let Some(share) = self.share {
            let (tearing, shearing, bearing) = analysis.classic_efficiencies();
            let (alone, strength) = match share {
                Share::Tearing => (tearing, analysis.tear_outer),
                Share::Shearing => (shearing, analysis.shear_all),
                Share::Bearing => (bearing?, analysis.bearing_all?),
            };
            for (figure, value) in figures.iter().zip(values.iter_mut()) {
                match figure.name {
                    Name(Q::BookEfficiency | Q::Efficiency | Q::Credited, _) => *value = alone,
                    Name(Q::ModeStrength, _) => *value = strength,
                    _ => {}
                }
            }
        }
        Some(values)
    }
}

/// What is taken by a case as it stands.
pub(super) fn as_it_stands(case: &Case, figures: &[Figure]) -> Result<[f64; MAX_FIGURES], Error> {
    let edited = Edited::new(*case);
    if let Some(values) = edited.run(figures) {
        return Ok(values);
    }
    // The routine refuses the case itself: its reason is the answer.
    match &case.work {
        Work::Check(joint, materials) => crate::check::check(joint, materials, &case.rules).map(|_| ()),
        Work::Size(brief) => crate::sizing::size(brief, &case.rules).map(|_| ()),
    }?;
    Ok([f64::NAN; MAX_FIGURES])
}

/// The quantities of a case as its routine closes them, in the units of the quantities: not a number where the routine
/// does not have them. As in [`Figure`], row 0 of sums and balances is that of the whole joint.
///
/// # Errors
/// More than [`MAX_FIGURES`] names; those of [`check`](crate::check::check) and [`size`](crate::sizing::size).
///
/// ```
/// use seamwright::{joint::{Form, JointSpec}, materials::Materials, quantities::{Length, Stress}, rules::METRIC};
/// use seamwright::{reconcile::{Case, Work, worked}, step::{Name, Quantity}};
/// let joint = JointSpec::new(Form::lap(1)?, Length::mm(50.0), Length::mm(6.0), Length::mm(20.0)).build()?;
/// let steel = Materials::new(Stress::mpa(120.0), Stress::mpa(90.0)).bearing(Stress::mpa(180.0));
/// let case = Case { work: Work::Check(joint, steel), rules: METRIC.rules };
/// assert_eq!(worked(&case, &[Name(Quantity::TearOuter, 0)])?[0], 21_600.0); // Khurmi & Gupta, Example 9.2
/// assert!(worked(&case, &[Name(Quantity::TearOuter, 0); 25]).is_err());
/// # Ok::<(), seamwright::Error>(())
/// ```
pub fn worked(case: &Case, names: &[Name]) -> Result<[f64; MAX_FIGURES], Error> {
    let mut figures = [Figure::nothing(Name(Q::Solid, 0)); MAX_FIGURES];
    for (slot, name) in figures.iter_mut().zip(names) {
        *slot = Figure::nothing(*name);
    }
    match figures.get(..names.len()) {
        Some(figures) => as_it_stands(case, figures),
        None => {
            let count = u32::try_from(names.len()).map_or(f64::MAX, f64::from);
            Err(Error::new(ErrorKind::TooLarge, Field::Figure).value(count).limit(MAX_FIGURES as f64))
        }
    }
}

/// Quantities of a case after edits of the catalogue, worked on from someone's own figures; `None` where the edits mean
/// nothing for it or the routine refuses.
pub(crate) fn worked_on(
    case: &Case,
    edits: [Option<Edit>; 2],
    own: &Own,
    names: &[Name],
) -> Option<[f64; MAX_FIGURES]> {
    let mut edited = Edited::new(*case);
    for edit in edits.into_iter().flatten() {
        edited = edited.with(edit)?;
    }
    edited.habits.own = *own;
    let mut figures = [Figure::nothing(Name(Q::Solid, 0)); MAX_FIGURES];
    for (slot, name) in figures.iter_mut().zip(names) {
        *slot = Figure::nothing(*name);
    }
    edited.run(figures.get(..names.len())?)
}

/// One quantity of a case after edits of the catalogue; `None` where they mean nothing for it or the routine has no
/// such quantity then.
#[must_use]
pub fn edited(case: &Case, edits: [Option<Edit>; 2], name: Name) -> Option<f64> {
    let [value, ..] = worked_on(case, edits, &Own::NONE, &[name])?;
    value.is_finite().then_some(value)
}

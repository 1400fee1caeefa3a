//! The girth seam: the load on the end, whole numbers of pitches, and what the book asks of it.

use super::{GirthBrief, GirthPlace, VesselBrief};
use crate::bounds::Field;
use crate::check::{Analysis, Findings, Required, Subject, check_with};
use crate::error::{EntryNo, Error, ErrorKind};
use crate::formula::{self, Formula};
use crate::joint::{Form, Joint, JointKind};
use crate::materials::Materials;
use crate::math;
use crate::quantities::{Length, Pressure};
use crate::rating::{Allowed, Assumptions, Factor, FactorBasis, Seam, Shell, factor_with, pressure_named, seam_of};
use crate::rules::{Entry, Rules};
use crate::shop::{Face, HeadForm, LengthRule, Measured, Order, Run, Stock, shop_sheet};
use crate::sizing::{Brief, size};
use crate::step::{Ctx, Name, Num, Plain, Quantity as Q, Section, Why};

/// The most rows that are tried.
const MOST_ROWS: u8 = 4;

/// The seam along the shell, as far as the girth seam depends on it.
#[derive(Clone, Copy, Debug)]
pub struct Longitudinal<'a, N = f64> {
    /// The joint.
    pub joint: &'a Joint,
    /// Its stresses, which are those of the girth seam as well.
    pub materials: &'a Materials,
    /// Its credited efficiency.
    pub credited: N,
    /// The pressure that it allows.
    pub allowed: Allowed<N>,
}

/// A girth seam against what is asked of it.
#[derive(Clone, Debug)]
pub struct Girth<N = f64> {
    /// The joint.
    pub joint: Joint,
    /// All modes, efficiencies and findings of it.
    pub analysis: Analysis<N>,
    /// The working pressure that it allows, MPa.
    pub pressure: N,
    /// The efficiency that it needs: by the load on the end and by the book, the greater.
    pub needed: N,
    /// The entry that asks for it; none where the load does.
    pub entry: EntryNo,
    /// Strips in the girth.
    pub strips: u32,
    /// Rivets in the girth.
    pub rivets: u32,
    /// Rivets that the load on the end needs, by shear alone; not a whole number.
    pub end_rivets: N,
    /// The book's rules on the girth seam, open ones first.
    pub findings: Findings,
}

impl<N: Num> Girth<N> {
    /// The same with bare values.
    #[must_use]
    pub fn values(self) -> Girth {
        Girth {
            joint: self.joint,
            analysis: self.analysis.values(),
            pressure: self.pressure.value(),
            needed: self.needed.value(),
            entry: self.entry,
            strips: self.strips,
            rivets: self.rivets,
            end_rivets: self.end_rivets.value(),
            findings: self.findings,
        }
    }
}

/// Checks a girth seam of a shell: the load on the end, the book's least efficiency and rows, and whether its pitch
/// goes into the girth.
///
/// # Errors
/// A figure outside its range; what [`check`](crate::check::check) and the formula of the pressure refuse.
pub fn girth_check(
    rules: &Rules,
    shell: &Shell,
    along: &Longitudinal<'_>,
    girth: &Joint,
    place: GirthPlace,
    pressure: Pressure,
) -> Result<Girth, Error> {
    girth_check_with(Plain, rules, shell, along, girth, place, Field::Pressure.check(pressure.to_mpa())?)
}

/// [`girth_check`] in any context; the pressure in MPa.
///
/// # Errors
/// As [`girth_check`].
#[inline]
pub fn girth_check_with<C: Ctx>(
    c: C,
    rules: &Rules,
    shell: &Shell,
    along: &Longitudinal<'_, C::N>,
    girth: &Joint,
    place: GirthPlace,
    pressure: C::N,
) -> Result<Girth<C::N>, Error> {
    Field::Pressure.check(pressure.value())?;
    let mut notes = Assumptions::new();
    c.section(Section::Girth);
    // Under a name of its own: the girth seam has an efficiency as well.
    let credited = c.formula(Name(Q::AlongEfficiency, 0), Formula::AlongEfficiency.no(), along.credited);
    // Both plates of a lap round the shell are the shell's.
    let materials = girth_materials(along.materials, girth.form());
    let along = &Longitudinal { credited, materials: &materials, ..*along };
    let analysis = check_with(c, girth, along.materials, rules)?;
    let factor = factor_with(c, rules, shell, girth.form(), &mut notes)?;
    let seam = seam_of(c, girth, along.materials, &analysis);
    let hoop = pressure_named(c, rules, shell, &seam, factor, Q::GirthAsHoop)?;
    c.section(Section::Girth);
    let two = C::N::lit(2.0);
    let allows = formula::times(two, hoop.pressure);
    let allows = c.formula(Name(Q::GirthPressure, 0), Formula::GirthPressure.no(), allows);
    let (needed, entry) = needed(c, rules, shell, along, girth, factor, place, pressure)?;
    let mut findings = Findings::new();
    let credited = analysis.credited.value();
    findings.compare(Subject::GirthEfficiency, 0, entry, Required::AtLeast, needed.value(), credited);
    let (strips, fits) = strips_in(shell, girth);
    findings.compare(
        Subject::GirthDivides,
        0,
        Entry::PITCH_STEP.no(),
        Required::AtMost,
        math::larger(0.5 * rules.get(Entry::PITCH_STEP), 1e-6 * girth.pitch().to_mm()),
        fits,
    );
    let rivets = strips.saturating_mul(girth.form().rivets());
    let end_rivets = end_rivets(c, rules, shell, along, &hoop, girth, pressure);
    let count = f64::from(rivets);
    findings.compare(Subject::GirthRivets, 0, EntryNo::NONE, Required::AtLeast, end_rivets.value(), count);
    let rows = f64::from(u8::try_from(girth.form().row_count()).unwrap_or(0));
    for (entry, least) in rows_needed(rules, place, along.joint.thinner()).into_iter().flatten() {
        findings.compare(Subject::GirthRows, 0, entry.no(), Required::AtLeast, least, rows);
    }
    findings.open_first();
    Ok(Girth { joint: *girth, analysis, pressure: allows, needed, entry, strips, rivets, end_rivets, findings })
}

/// The stresses of a girth seam: straps keep their own, the second plate of a lap is the shell's.
fn girth_materials(materials: &Materials, form: &Form) -> Materials {
    if form.kind() == JointKind::Lap { materials.other(materials.plate) } else { *materials }
}

/// The rows that the book asks for on a plate.
fn rows_needed(rules: &Rules, place: GirthPlace, plate: f64) -> [Option<(Entry, f64)>; 2] {
    let above = |entry: Entry, rows: f64| {
        let limit = rules.get(entry);
        (limit > 0.0).then_some((entry, if math::below(limit, plate) { rows } else { 1.0 }))
    };
    let from = |entry: Entry, rows: f64| {
        let limit = rules.get(entry);
        (limit > 0.0 && math::at_least(plate, limit)).then_some((entry, rows))
    };
    match place {
        GirthPlace::Middle => [above(Entry::GIRTH_DOUBLE_MIDDLE, 2.0), from(Entry::GIRTH_TREBLE_MIDDLE, 3.0)],
        GirthPlace::End | GirthPlace::Stayed => [above(Entry::GIRTH_DOUBLE_END, 2.0), None],
    }
}

/// The efficiency that the girth seam needs on the plate there is, and the entry that asks for it.
#[inline]
#[expect(clippy::too_many_arguments, reason = "the shell, its two seams, and what is asked of them")]
fn needed<C: Ctx>(
    c: C,
    rules: &Rules,
    shell: &Shell,
    along: &Longitudinal<'_, C::N>,
    girth: &Joint,
    factor: Factor<C::N>,
    place: GirthPlace,
    pressure: C::N,
) -> Result<(C::N, EntryNo), Error> {
    let name = Name(Q::GirthNeeded, 0);
    let q = c.quiet();
    let t = q.given(Name(Q::Plate, 0), along.joint.plate().to_mm());
    let tension = q.given(Name(Q::Tension, 0), along.materials.plate.tension.to_mpa());
    let one = C::N::lit(1.0);
    let solid = Seam { form: girth.form(), plate: t, tension, efficiency: one };
    let solid = pressure_named(c, rules, shell, &solid, factor, Q::GirthAsHoop)?.pressure;
    c.section(Section::Girth);
    let solid = formula::times(C::N::lit(2.0), solid);
    let solid = c.formula(Name(Q::GirthSolid, 0), Formula::GirthPressure.no(), solid);
    let mut most =
        c.formula(Name(Q::GirthByLoad, 0), Formula::GirthDemand.no(), formula::girth_demand(one, pressure, solid));
    let mut by = EntryNo::NONE;
    let mut take = |entry: Entry, value: C::N| {
        if value.value() > most.value() {
            by = entry.no();
        }
        most = c.greater(name, Why::Greatest(entry.no()), most, value);
    };
    let (percent, share) = match place {
        GirthPlace::Middle => (Entry::GIRTH_MIDDLE, Entry::GIRTH_SHARE_MIDDLE),
        GirthPlace::End => (Entry::GIRTH_END, Entry::GIRTH_SHARE_END),
        GirthPlace::Stayed if rules.get(Entry::GIRTH_SHARE_STAYED) > 0.0 => {
            (Entry::GIRTH_END, Entry::GIRTH_SHARE_STAYED)
        }
        GirthPlace::Stayed => (Entry::GIRTH_END, Entry::GIRTH_SHARE_END),
    };
    if rules.get(percent) > 0.0 {
        // The percentage is one of the thickness that the formula of the pressure asks for, not of the actual one.
        let k = c.table(Name(Q::Coefficient, 0), percent.no(), rules.get(percent));
        let by_formula = formula::plate_for_pressure(along.allowed.allowance, t, pressure, along.allowed.pressure);
        let by_formula = c.formula(Name(Q::PlateByFormula, 0), Formula::PlateForPressure.no(), by_formula);
        let value = formula::share_of_plate(k, by_formula, t);
        take(percent, c.formula(Name(Q::GirthByPercent, 0), Formula::ShareOfPlate.no(), value));
    }
    if rules.get(share) > 0.0 {
        let k = c.table(Name(Q::Coefficient, 0), share.no(), rules.get(share));
        take(
            share,
            c.formula(Name(Q::GirthByShare, 0), Formula::ShareOfEfficiency.no(), formula::times(k, along.credited)),
        );
    }
    Ok((most, by))
}

/// Strips in the girth, and how far the pitch that divides it lies from the joint's own, mm.
fn strips_in(shell: &Shell, girth: &Joint) -> (u32, f64) {
    let circle = formula::middle_circle(shell.inside().to_mm(), girth.plate().to_mm());
    let run = formula::girth(circle);
    let strip = girth.strip().to_mm();
    let exact = formula::strips_in_run(run, strip);
    // Nearest by pitch: of two whole numbers the one whose pitch is nearer.
    let low = math::larger(math::round_down(exact, 1.0), 1.0);
    let high = math::larger(math::round_up(exact, 1.0), 1.0);
    let off = |k: f64| math::abs(run / k - strip) / f64::from(girth.form().outer_rivets());
    let k = if math::at_most(off(low), off(high)) { low } else { high };
    (k as u32, off(k))
}

/// Rivets that the load on the end needs by shear alone.
#[inline]
fn end_rivets<C: Ctx>(
    c: C,
    rules: &Rules,
    shell: &Shell,
    along: &Longitudinal<'_, C::N>,
    hoop: &Allowed<C::N>,
    girth: &Joint,
    pressure: C::N,
) -> C::N {
    let q = c.quiet();
    let inside = q.given(Name(Q::ShellDiameter, 0), shell.inside().to_mm());
    let first = girth.rows().first().copied().unwrap_or_default();
    let d = q.given(Name(Q::Hole, 1), first.hole().to_mm());
    let ss = q.given(Name(Q::Shear, 0), along.materials.rivet_shear.to_mpa());
    let double = girth.form().rows().all(|row| row.planes == 2);
    let z = if double {
        c.table(Name(Q::DoubleShear, 0), Entry::DOUBLE_SHEAR.no(), rules.get(Entry::DOUBLE_SHEAR))
    } else {
        C::N::lit(1.0)
    };
    // The constant C of thirty-seconds and tons stands for a factor of 1.4 C.
    let fs = match hoop.factor.basis {
        FactorBasis::Constant => formula::times(C::N::lit(1.4), hoop.factor.value),
        _ => hoop.factor.value,
    };
    let fs = match hoop.factor.basis {
        FactorBasis::Constant => c.formula(Name(Q::Safety, 0), Formula::SafetyOfConstant.no(), fs),
        _ => fs,
    };
    c.formula(Name(Q::EndRivets, 0), Formula::EndRivets.no(), formula::end_rivets(pressure, inside, fs, d, ss, z))
}

/// The form with a number of rows, of the kind and arrangement asked for.
fn with_rows(form: &Form, rows: u8) -> Result<Form, Error> {
    let made = match form.kind() {
        JointKind::Lap => Form::lap(rows),
        JointKind::SingleStrap => Form::single_strap(rows),
        JointKind::DoubleStrap => Form::double_strap(rows),
    }?;
    Ok(match form.arrangement() {
        crate::joint::Arrangement::Chain => made.chain(),
        crate::joint::Arrangement::Zigzag => made,
    })
}

/// Designs a girth seam: the rivets of the seam along the shell, the least rows that do, and of the two whole numbers
/// of pitches next to the balanced one that which does.
#[inline]
pub(super) fn design<C: Ctx>(
    c: C,
    brief: &VesselBrief<'_>,
    asked: &GirthBrief,
    rules: &Rules,
    along: &Longitudinal<'_, C::N>,
    pressure: C::N,
) -> Result<Girth<C::N>, Error> {
    let plain = Longitudinal {
        joint: along.joint,
        materials: along.materials,
        credited: along.credited.value(),
        allowed: along.allowed.values(),
    };
    let mut refused = Error::new(ErrorKind::NoAdmissiblePitch, Field::RingDiameter).value(brief.shell.inside().to_mm());
    let first = u8::try_from(asked.form.row_count()).unwrap_or(1);
    for rows in first..=first.max(MOST_ROWS) {
        let form = if rows == first { asked.form } else { with_rows(&asked.form, rows)? };
        for joint in candidates(brief, &form, rules, along.joint) {
            let joint = match joint {
                Ok(joint) => joint,
                Err(error) => {
                    refused = error;
                    continue;
                }
            };
            let found = match girth_check(rules, &brief.shell, &plain, &joint, asked.place, brief.pressure) {
                Ok(found) => found,
                // A book that has no constant for more rows does not hide why fewer did not do.
                Err(error) if rows == first => {
                    refused = error;
                    continue;
                }
                Err(_) => continue,
            };
            if found.findings.open() == 0 && math::at_least(found.pressure, pressure.value()) {
                return girth_check_with(c, rules, &brief.shell, along, &joint, asked.place, pressure);
            }
            refused = Error::new(ErrorKind::TooSmall, Field::SeamEfficiency)
                .value(found.analysis.credited)
                .limit(found.needed)
                .entry(found.entry);
        }
    }
    Err(refused)
}

/// The joints of a form that close round the shell: both whole numbers of pitches next to the balanced pitch, the one
/// that the shop would take first.
fn candidates(brief: &VesselBrief<'_>, form: &Form, rules: &Rules, along: &Joint) -> [Result<Joint, Error>; 2] {
    let first = along.rows().first().copied().unwrap_or_default();
    let materials = girth_materials(&brief.materials, form);
    let asked = Brief::new(*form, along.plate(), materials).hole(first.hole(), Some(first.rivet()));
    let none = |e: Error| [Err(e), Err(e)];
    let design = match size(&asked, rules) {
        Ok(design) => design,
        Err(error) => return none(error),
    };
    let run = Run::Girth { diameter: brief.shell.inside(), measured: Measured::InsidePlate, other: Face::Outside };
    // Only the fit of the pitch is wanted: rivets need no stock.
    let order = Order::steel(run, HeadForm::Button, LengthRule::Hand, Stock::cut_to_length());
    let sheet = match shop_sheet(&design.joint, &materials, rules, &order) {
        Ok(sheet) => sheet,
        Err(error) => return none(error),
    };
    let fit = sheet.pitch;
    let other = if fit.taken.strips == fit.more.strips { fit.fewer } else { Some(fit.more) };
    let refused = Error::new(ErrorKind::NoAdmissiblePitch, Field::Pitch).value(design.joint.pitch().to_mm());
    let second = match other.filter(|n| n.admissible && n.strips != fit.taken.strips) {
        Some(n) => size(&asked.pitch(Length::mm(n.strip)), rules).map(|d| d.joint),
        None => Err(refused),
    };
    [Ok(sheet.joint), second]
}

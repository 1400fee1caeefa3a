//! Sizing: from a plate and its stresses to a complete joint, in the trade's order.
//!
//! Hole, standard size, rivet; pitch balanced against the rivets, raised to the floor, lowered to the cap, rounded past
//! neither; row distances, straps, margin; room for the rivet heads between the rows; then [`check`](mod@crate::check) over all of it.

mod design;
mod heads;
mod pitch;

pub use design::{Design, HoleChoice};
pub use heads::HeadRoom;
pub use pitch::{Decided, PitchChoice};

use crate::bounds::Field;
use crate::check::{FindingSink, Findings, check_telling};
use crate::error::{EntryNo, Error, ErrorKind};
use crate::formula::{self, Formula};
use crate::given::{Given, pick};
use crate::joint::{Form, Joint, JointKind, JointSpec, MAX_ROWS};
use crate::materials::Materials;
use crate::math;
use crate::modes::prescribed_gap;
use crate::proportion::{self, Covered, HoleBasis, Limit, Strap};
use crate::quantities::Length;
use crate::rules::{Entry, Rules};
use crate::step::{Ctx, Name, Num, Plain, Quantity as Q, Section, Why};

/// What a joint is to be sized for; what is given is kept, everything else is found.
///
/// ```
/// use seamwright::{joint::Form, materials::Materials, quantities::{Length, Stress}, rules::INDIAN, sizing::{Brief, size}};
/// let steel = Materials::new(Stress::mpa(90.0), Stress::mpa(56.0)).bearing(Stress::mpa(140.0));
/// let design = size(&Brief::new(Form::double_strap(2)?, Length::mm(12.0), steel), &INDIAN.rules)?;
/// assert_eq!(design.joint.rows()[0].hole().to_mm(), 21.0); // Khurmi & Gupta, Example 9.7
/// assert!(size(&Brief::new(Form::lap(1)?, Length::mm(-1.0), steel), &INDIAN.rules).is_err());
/// # Ok::<(), seamwright::Error>(())
/// ```
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Brief {
    form: Form,
    plate: Length,
    other_plate: Option<Length>,
    materials: Materials,
    hole: Option<Length>,
    rivet: Option<Length>,
    strip: Option<Length>,
    straps: Option<(Length, Option<Length>)>,
    back: [Option<Length>; MAX_ROWS],
    margin: Option<Length>,
    stray_row: u8,
}

impl Brief {
    /// A form, a plate and its stresses.
    #[must_use]
    pub const fn new(form: Form, plate: Length, materials: Materials) -> Self {
        Brief {
            form,
            plate,
            other_plate: None,
            materials,
            hole: None,
            rivet: None,
            strip: None,
            straps: None,
            back: [None; MAX_ROWS],
            margin: None,
            stray_row: 0,
        }
    }

    /// With a second plate of another thickness (laps only).
    #[must_use]
    pub const fn other_plate(mut self, plate: Length) -> Self {
        self.other_plate = Some(plate);
        self
    }

    /// With the hole given, and the rivet where it is known.
    #[must_use]
    pub const fn hole(mut self, hole: Length, rivet: Option<Length>) -> Self {
        self.hole = Some(hole);
        self.rivet = rivet;
        self
    }

    /// With the pitch given (the width of the strip where the outer row has several rivets in it).
    #[must_use]
    pub const fn pitch(mut self, pitch: Length) -> Self {
        self.strip = Some(pitch);
        self
    }

    /// With the straps given: the only or wide one, and the second or narrow one.
    #[must_use]
    pub const fn straps(mut self, wide: Length, narrow: Option<Length>) -> Self {
        self.straps = Some((wide, narrow));
        self
    }

    /// With the distance from row `row` (from 1) to the next given. A row that the form does not have is refused when
    /// the joint is sized.
    #[must_use]
    pub fn back_pitch(mut self, row: usize, distance: Length) -> Self {
        let gaps = self.form.row_count().wrapping_sub(1);
        match self.back.get_mut(row.wrapping_sub(1)) {
            Some(slot) if row <= gaps => *slot = Some(distance),
            _ => self.stray_row = u8::try_from(row).unwrap_or(u8::MAX),
        }
        self
    }

    /// With the margin given.
    #[must_use]
    pub const fn margin(mut self, margin: Length) -> Self {
        self.margin = Some(margin);
        self
    }

    /// The form asked for.
    #[must_use]
    pub const fn form(&self) -> &Form {
        &self.form
    }

    /// The plate.
    #[must_use]
    pub const fn plate(&self) -> Length {
        self.plate
    }

    /// The distance from row `row` (from 1) to the next, where it was given.
    #[must_use]
    pub fn stated_back_pitch(&self, row: usize) -> Option<Length> {
        self.back.get(row.wrapping_sub(1)).copied().flatten()
    }

    /// The dimensions that were given besides plate and row distances.
    pub(crate) const fn stated(&self) -> Stated {
        let Brief { other_plate, hole, rivet, strip, straps, margin, .. } = *self;
        Stated { other_plate, hole, rivet, strip, straps, margin }
    }

    /// The stresses, to be read otherwise.
    pub(crate) const fn materials_mut(&mut self) -> &mut Materials {
        &mut self.materials
    }

    /// The stresses.
    #[must_use]
    pub const fn materials(&self) -> &Materials {
        &self.materials
    }
}

/// What a brief gives besides form, plate, stresses and row distances.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Stated {
    pub other_plate: Option<Length>,
    pub hole: Option<Length>,
    pub rivet: Option<Length>,
    pub strip: Option<Length>,
    pub straps: Option<(Length, Option<Length>)>,
    pub margin: Option<Length>,
}

/// Sizes a joint.
///
/// # Errors
/// Inputs outside their range or against the form; a hole that no size or table line reaches; no admissible pitch or
/// margin; a strap that the book is silent on; a bearing stress that is needed and missing.
pub fn size(brief: &Brief, rules: &Rules) -> Result<Design, Error> {
    size_with(Plain, brief, rules)
}

/// [`size`] in any context: bare numbers, a record of steps, or numbers with derivatives.
///
/// # Errors
/// As [`size`].
#[inline]
pub fn size_with<C: Ctx>(c: C, brief: &Brief, rules: &Rules) -> Result<Design<C::N>, Error> {
    let mut findings = Findings::new();
    let mut design = Design::blank();
    size_telling(c, brief, rules, &mut findings, &mut design)?;
    findings.open_first();
    let Design { joint, hole, pitch, gaps, margin, straps, heads, analysis } = design;
    Ok(Design { joint, hole, pitch, gaps, margin, straps, heads, analysis: analysis.with(findings) })
}

/// [`size`] in memory of the caller's: into a design ([`Design::blank`]), its findings told to a sink in the order of
/// the check. A machine with little memory has no room for a second design, nor for the longest list of findings.
/// Whatever stood in the design before leaves no trace.
///
/// # Errors
/// As [`size`]; nothing was told then, and the design is blank.
pub fn size_into(
    brief: &Brief,
    rules: &Rules,
    out: &mut dyn FindingSink,
    design: &mut Design<f64, ()>,
) -> Result<(), Error> {
    // Not every joint has straps, rows enough for all distances, or distances to be found: nothing is to stay of the one
    // that was sized here before.
    design.clear();
    let sized = size_telling(Plain, brief, rules, out, design);
    if sized.is_err() {
        design.clear();
    }
    sized
}

/// [`size_into`] in any context.
#[inline]
pub(crate) fn size_telling<C: Ctx>(
    c: C,
    brief: &Brief,
    rules: &Rules,
    out: &mut dyn FindingSink,
    design: &mut Design<C::N, ()>,
) -> Result<(), Error> {
    brief.validate(rules)?;
    design.hole = choose_hole(c, brief, rules)?;
    let (hole, rivet) = (design.hole.hole, design.hole.rivet);
    // A first joint, wide enough for its holes, carries hole, plates and straps to the balance of the pitch.
    let widest = 4.0 * hole * f64::from(brief.form.densest_rivets());
    brief.probe(hole, rivet, brief.strip.unwrap_or(Length::mm(widest)), &mut design.joint)?;
    let thin = matches!(design.hole.computed, Some((_, HoleBasis::Thin)));
    let strip = Length::mm(pitch::choose(c, brief, &design.joint, rules, thin, &mut design.pitch)?);
    brief.probe(hole, rivet, strip, &mut design.joint)?;
    across(c, brief, rules, strip, design)?;
    check_telling(c, &design.joint, &brief.materials, rules, out, &mut design.analysis)
}

/// Everything after the pitch, and the joint itself. By itself, so that its figures leave the stack before the check.
#[inline(never)]
fn across<C: Ctx>(
    c: C,
    brief: &Brief,
    rules: &Rules,
    strip: Length,
    design: &mut Design<C::N, ()>,
) -> Result<(), Error> {
    let mut given = Given::blank();
    given.take(c.quiet(), c.quiet(), &design.joint, &brief.materials);
    c.section(Section::Rows);
    for (row, slot) in (1..brief.form.row_count()).zip(design.gaps.iter_mut()) {
        *slot = prescribed_gap(c, &design.joint, &given, rules, row);
    }
    let mut back = [Length::mm(0.0); MAX_ROWS];
    let found = (1_u8..).zip(&design.gaps).zip(&brief.back).take(brief.form.row_count().wrapping_sub(1));
    for (((row, (least, _)), stated), slot) in found.zip(back.iter_mut()) {
        let name = Name(Q::RowGap, row);
        *slot = stated.unwrap_or_else(|| {
            let step = rules.get(Entry::BACK_STEP);
            let up = c.up(name, step, *least);
            if up.value() > 0.0 {
                return Length::mm(up.value());
            }
            // A rule that asks for nothing leaves the rows as far apart as their holes need.
            let twice = formula::times(C::N::lit(2.0), pick(&given.hole, 1));
            Length::mm(c.up(name, step, c.formula(name, Formula::Times.no(), twice)).value())
        });
    }
    c.section(Section::Straps);
    let straps = choose_straps(c, brief, &given, rules, &mut design.straps)?;
    c.section(Section::Margin);
    let margin = choose_margin(c, brief, &design.joint, &given, rules, &mut design.margin)?;
    heads::room(c, brief, &given, rules, margin, &mut back, &mut design.heads);
    let spec = brief.spec(design.hole.hole, design.hole.rivet, strip, straps, Some(Length::mm(margin)));
    placed(spec, &back, &mut design.joint)
}

impl Brief {
    /// Whether what is given can be sized at all, by a book that does not contradict itself.
    #[inline(never)]
    fn validate(&self, rules: &Rules) -> Result<(), Error> {
        rules.validate()?;
        if self.stray_row > 0 {
            let error = Error::new(ErrorKind::NotForThisForm, Field::Rows).value(f64::from(self.stray_row));
            return Err(error.limit(f64::from(u8::try_from(self.form.row_count()).unwrap_or(0))));
        }
        self.materials.validate()?;
        Field::Plate.check(self.plate.to_mm())?;
        if let Some(b) = self.other_plate {
            Field::OtherPlate.check(b.to_mm())?;
        }
        Ok(())
    }

    /// The joint as far as its strip is known.
    #[inline(never)]
    fn probe(&self, hole: f64, rivet: f64, strip: Length, joint: &mut Joint) -> Result<(), Error> {
        self.spec(hole, rivet, strip, self.straps, None).build_into(joint)
    }

    /// What is known of the joint so far.
    #[inline(always)]
    fn spec(&self, hole: f64, rivet: f64, strip: Length, straps: StrapsTaken, margin: Option<Length>) -> JointSpec {
        let plates = (self.plate, self.other_plate);
        JointSpec::alike(self.form, strip, plates, (Length::mm(hole), Length::mm(rivet)), straps, margin)
    }
}

/// The joint with its rows at their distances.
#[inline(never)]
fn placed(mut spec: JointSpec, back: &[Length; MAX_ROWS], joint: &mut Joint) -> Result<(), Error> {
    spec.place(back);
    spec.build_into(joint)
}

/// The hole and its rivet.
#[inline(never)]
fn choose_hole<C: Ctx>(c: C, brief: &Brief, rules: &Rules) -> Result<HoleChoice<C::N>, Error> {
    c.section(Section::Given);
    let plate = c.given(Name(Q::Plate, 0), brief.plate.to_mm());
    let t = match brief.other_plate {
        Some(b) if b.to_mm() != brief.plate.to_mm() => {
            let b = c.given(Name(Q::OtherPlate, 0), b.to_mm());
            c.lesser(Name(Q::ThinnerPlate, 0), Why::Least(EntryNo::NONE), plate, b)
        }
        _ => plate,
    };
    c.given(Name(Q::Tension, 0), brief.materials.plate.tension.to_mpa());
    let shear = c.given(Name(Q::Shear, 0), brief.materials.rivet_shear.to_mpa());
    let bearing = brief.materials.plate.bearing.map(|b| c.given(Name(Q::Bearing, 0), b.to_mpa()));
    c.section(Section::Hole);
    if let Some(hole) = brief.hole {
        let hole = Field::Hole.check(hole.to_mm())?;
        let rivet = match brief.rivet {
            Some(rivet) => Field::Rivet.check(rivet.to_mm())?,
            None => rivet_for(c, rules, Name(Q::Rivet, 1), hole),
        };
        return Ok(HoleChoice { computed: None, hole, rivet });
    }
    let planes = proportion::planes(c, rules, &brief.form);
    let (computed, basis) = proportion::hole(c, rules, t, shear, bearing, planes);
    match basis {
        HoleBasis::BeyondTable => {
            let error = Error::new(ErrorKind::BeyondTable, Field::Plate).entry(Entry::HOLE_TABLE_PLATE.no());
            return Err(error.value(t.value()));
        }
        HoleBasis::NoBearing => {
            return Err(Error::new(ErrorKind::Missing, Field::Bearing).entry(Entry::HOLE_THIN_RULE.no()));
        }
        _ => {}
    }
    let name = Name(Q::Hole, 1);
    let (hole, rivet) = if rules.on(Entry::HOLE_ROUND) {
        let hole = c.up(name, rules.get(Entry::HOLE_STEP), computed).value();
        (hole, rivet_for(c, rules, Name(Q::Rivet, 1), hole))
    } else {
        match rules.next_size(computed.value()) {
            Some(size) => {
                c.rounded(name, Why::Series(size.entry.no()), size.hole, computed);
                c.table(Name(Q::Rivet, 1), size.entry.no(), size.rivet);
                (size.hole, size.rivet)
            }
            None => {
                // No longer series helps where the book has none: the hole has to be given.
                let error = match rules.series().last() {
                    Some(s) => Error::new(ErrorKind::NoStandardSize, Field::Hole).value(computed.value()).limit(s.hole),
                    None => Error::new(ErrorKind::Missing, Field::Hole),
                };
                return Err(error.entry(Entry::SERIES_HOLE.no()));
            }
        }
    };
    Field::Hole.check(hole)?;
    Ok(HoleChoice { computed: Some((computed, basis)), hole, rivet })
}

/// The rivet of a hole: by the series, else by the book's clearance, else as large as the hole.
#[inline]
pub(crate) fn rivet_for<C: Ctx>(c: C, rules: &Rules, name: Name, hole: f64) -> f64 {
    let clearance = rules.get(Entry::HOLE_CLEARANCE_GREATEST);
    match rules.size_of_hole(hole) {
        Some(size) => c.table(name, size.entry.no(), size.rivet).value(),
        None if hole > 2.0 * clearance => c.table(name, Entry::HOLE_CLEARANCE_GREATEST.no(), hole - clearance).value(),
        None => hole,
    }
}

/// The margin taken, mm, and the least one `asked` for.
#[inline(never)]
fn choose_margin<C: Ctx>(
    c: C,
    brief: &Brief,
    joint: &Joint,
    given: &Given<C::N>,
    rules: &Rules,
    asked: &mut C::N,
) -> Result<f64, Error> {
    let (largest, smallest) = crate::check::extremes(joint, given, rules);
    let least = proportion::margin_least(c, rules, largest);
    *asked = least;
    if let Some(margin) = brief.margin {
        return Field::Margin.check(margin.to_mm());
    }
    if least.value() <= 0.0 {
        return Err(Error::new(ErrorKind::Missing, Field::Margin).entry(Entry::MARGIN_LEAST.no()));
    }
    let taken = c.up(Name(Q::Margin, 0), rules.get(Entry::MARGIN_STEP), least).value();
    let t = crate::check::thinner(c, joint, given);
    if let Limit::At(most, entry) = proportion::margin_greatest(c, rules, smallest, t)
        && math::below(most.value(), taken)
    {
        let error = Error::new(ErrorKind::NoAdmissibleMargin, Field::Margin).value(taken).limit(most.value());
        return Err(error.entry(entry.no()).other(Entry::MARGIN_LEAST.no()));
    }
    Ok(taken)
}

/// The thicknesses of the straps taken: the single, wide or first; the narrow or second.
type StrapsTaken = Option<(Length, Option<Length>)>;

/// The straps taken, and the least ones `asked` for.
#[inline(never)]
fn choose_straps<C: Ctx>(
    c: C,
    brief: &Brief,
    given: &Given<C::N>,
    rules: &Rules,
    asked: &mut [Limit<C::N>; 2],
) -> Result<StrapsTaken, Error> {
    let kind = brief.form.kind();
    if kind == JointKind::Lap {
        return Ok(None);
    }
    let covered = Covered::new(&brief.form, given, rules);
    let least = |strap: Strap| proportion::strap_least(c, rules, &brief.form, strap, &covered);
    let wide = least(Strap::Wide);
    let narrow = if kind == JointKind::DoubleStrap { least(Strap::Narrow) } else { Limit::None };
    *asked = [wide, narrow];
    if brief.straps.is_some() {
        return Ok(brief.straps);
    }
    let take = |limit: &Limit<C::N>, field: Field, q: Q| match limit {
        Limit::At(b, _) => {
            let stock = c.up(Name(q, 0), rules.get(Entry::STRAP_STEP), *b);
            field.check(stock.value()).map(Length::mm)
        }
        Limit::Unknown(entry) => {
            Err(Error::new(ErrorKind::BeyondTable, Field::Plate).value(given.plate.value()).entry(entry.no()))
        }
        Limit::None => Err(Error::new(ErrorKind::Missing, field).entry(Entry::STRAP_RULE.no())),
    };
    let first = take(&wide, Field::WideStrap, Q::OtherPlate)?;
    let second = match kind {
        JointKind::DoubleStrap => Some(take(&narrow, Field::NarrowStrap, Q::Narrow)?),
        _ => None,
    };
    Ok(Some((first, second)))
}

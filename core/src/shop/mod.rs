//! The shop sheet: rivets, holes, lengths, strap sizes and masses of a seam.
//!
//! From a joint and a run ([`Order`]): a whole number of pitches and the pitch that follows, the joint checked again
//! with it, where every hole is, how long the rivets are by a named rule, what is cut, and what it all weighs.

mod fit;
mod holes;
mod length;
mod notes;
mod order;
mod parts;
pub(crate) mod places;
mod plies;
mod rivets;
mod table;
mod write;

pub use fit::{Fitted, Neighbour, PitchFit};
pub use holes::{Hole, Holes, Layout, Side};
pub use length::{HEAD_FORMS, HeadForm, HeadSize, LENGTH_RULES, LengthRule, allowance};
pub use notes::{Note, SHOP_NOTES};
pub use order::{Density, Face, Measured, Order, Run, STEEL_DENSITY, Stock};
pub use places::SIDE_MARGIN;
pub use plies::{Along, Cuts, PlateCut};
pub use rivets::{Masses, RivetLine};
pub use write::{Style, Units};

use crate::check::{Analysis, check_with};
use crate::error::Error;
use crate::given::Given;
use crate::joint::{Joint, JointKind, JointSpec, MAX_ROWS};
use crate::materials::Materials;
use crate::math;
use crate::quantities::Length;
use crate::rules::Rules;
use crate::step::{Ctx, Name, Num, Plain, Quantity as Q, Section};

/// All that a shop needs to make a seam. Lengths in mm, masses in kg.
#[derive(Clone, Debug)]
pub struct ShopSheet<N = f64> {
    /// What was asked for.
    pub order: Order,
    /// The joint with the fitted pitch.
    pub joint: Joint,
    /// How the pitch was fitted.
    pub pitch: PitchFit<N>,
    /// All modes, efficiencies and findings of the joint with the fitted pitch.
    pub analysis: Analysis<N>,
    /// Lengths along the seam.
    pub along: Along<N>,
    /// What is cut.
    pub cuts: Cuts<N>,
    /// What it weighs.
    pub masses: Masses<N>,
    rivets: [RivetLine<N>; MAX_ROWS],
    layout: Layout,
}

impl<N: Num> ShopSheet<N> {
    /// The rivets, row by row from the outside.
    #[must_use]
    pub fn rivets(&self) -> &[RivetLine<N>] {
        self.rivets.get(..self.joint.form().row_count()).unwrap_or(&[])
    }

    /// How many rivets the seam has.
    #[must_use]
    pub fn rivet_count(&self) -> u32 {
        self.rivets().iter().fold(0, |n, line| n.saturating_add(line.count))
    }

    /// What to take from the stock: cold rivet, length and number. Rows that take the same rivet are one line.
    pub fn to_order(&self) -> impl Iterator<Item = (Length, Length, u32)> + '_ {
        let same = |a: &RivetLine<N>, b: &RivetLine<N>| {
            let (x, y) = (a.stock.value(), b.stock.value());
            a.rivet == b.rivet && math::at_most(x, y) && math::at_least(x, y)
        };
        let lines = self.rivets();
        lines.iter().enumerate().filter_map(move |(i, line)| {
            if lines.iter().take(i).any(|before| same(before, line)) {
                return None;
            }
            let alike = lines.iter().skip(i).filter(|other| same(line, other));
            let count = alike.fold(0_u32, |n, other| n.saturating_add(other.count));
            Some((line.rivet, Length::mm(line.stock.value()), count))
        })
    }

    /// Where the holes are, one by one from the datum.
    #[must_use]
    pub const fn layout(&self) -> &Layout {
        &self.layout
    }
}

/// The shop sheet of a joint along a run.
///
/// The joint's own pitch decides between the two whole numbers of pitches next to it: the nearer one that keeps the
/// least and the greatest pitch of the book. A tie is one strip and keeps its width.
///
/// # Errors
/// An order outside its range; a joint without straps, row distances or margin; no admissible pitch; a hole that cuts
/// the end of the plate; a diameter that the length table does not have; what [`check`](crate::check::check) refuses.
///
/// ```
/// use seamwright::{error::ErrorKind, joint::{Form, JointSpec}, materials::Materials, quantities::{Length, Stress},
///     rules::{METRIC, Rounding}, shop::{HeadForm, LengthRule, Order, Run, Stock, shop_sheet}};
/// let steel = Materials::new(Stress::mpa(80.0), Stress::mpa(60.0)).bearing(Stress::mpa(120.0));
/// let stated = JointSpec::new(Form::lap(2)?, Length::mm(71.0), Length::mm(13.0), Length::mm(23.0));
/// let joint = stated.rivet(Length::mm(22.0)).margin(Length::mm(35.0)).back_pitch(1, Length::mm(40.0)).build()?;
/// let end = Length::mm(40.0);
/// let run = Run::Straight { length: Length::m(3.0), first_end: end, last_end: end };
/// let stock = Stock::every(Length::mm(2.0), Rounding::Up);
/// let order = Order::steel(run, HeadForm::Button, LengthRule::BoilerButton, stock);
/// let sheet = shop_sheet(&joint, &steel, &METRIC.rules, &order)?;
/// assert_eq!(sheet.pitch.taken.strips, 41); // 2920 mm in pitches of 71.22 mm
/// assert_eq!(sheet.rivet_count(), 42 + 41);
///
/// let short = Run::Straight { length: Length::mm(85.0), first_end: end, last_end: end };
/// let order = Order::steel(short, HeadForm::Button, LengthRule::BoilerButton, stock);
/// assert_eq!(shop_sheet(&joint, &steel, &METRIC.rules, &order).unwrap_err().kind, ErrorKind::NoAdmissiblePitch);
/// # Ok::<(), seamwright::Error>(())
/// ```
pub fn shop_sheet(joint: &Joint, materials: &Materials, rules: &Rules, order: &Order) -> Result<ShopSheet, Error> {
    shop_sheet_with(Plain, joint, materials, rules, order)
}

/// [`shop_sheet`] in any context: bare numbers, a record of steps, or numbers with derivatives.
///
/// # Errors
/// As [`shop_sheet`].
#[inline]
pub fn shop_sheet_with<C: Ctx>(
    c: C,
    joint: &Joint,
    materials: &Materials,
    rules: &Rules,
    order: &Order,
) -> Result<ShopSheet<C::N>, Error> {
    rules.validate()?;
    materials.validate()?;
    order.validate(joint)?;
    c.section(Section::Given);
    let given = Given::new(c, joint, materials);
    c.section(Section::Run);
    let along = Along::new(c, joint, &given, order)?;
    let pitch = fit::fit(c, joint, &given, rules, along.run)?;
    let joint = match pitch.fitted {
        Fitted::Tie => *joint,
        _ => with_strip(joint, pitch.taken.strip.value())?,
    };
    let analysis = check_with(c, &joint, materials, rules)?;
    let given = Given::new(c.quiet(), &joint, materials);
    let layout = Layout::new(&joint, order.run(), pitch.taken.strips)?;
    c.section(Section::ShopRivets);
    let rho = c.given(Name(Q::Density, 0), order.density.to_kg_m3());
    let rivets = rivets::rivets(c, &joint, &given, order, &layout, rho)?;
    c.section(Section::Cuts);
    let cuts = Cuts::new(c, &joint, &given, &along, rho);
    let made = rivets.get(..joint.form().row_count()).unwrap_or(&[]);
    c.section(Section::Masses);
    let masses = rivets::masses(c, made, &cuts, &along);
    Ok(ShopSheet { order: *order, joint, pitch, analysis, along, cuts, masses, rivets, layout })
}

/// The masses of one strip of a seam that goes on and on: the shop sheet's own steps, without ends. The run of the order
/// is not used. [`Masses::per_metre`] is then the mass that a metre of seam adds to plates that meet edge to edge.
///
/// # Errors
/// An order outside its range; a joint without straps, row distances or margin; a diameter that the length table does
/// not have.
///
/// ```
/// use seamwright::{joint::{Form, JointSpec}, materials::Materials, quantities::{Length, Stress},
///     shop::{HeadForm, LengthRule, Order, Run, Stock, strip_masses}, step::Plain};
/// let steel = Materials::new(Stress::mpa(80.0), Stress::mpa(60.0));
/// let spec = JointSpec::new(Form::lap(1)?, Length::mm(50.0), Length::mm(10.0), Length::mm(20.0));
/// let order = Order::steel(Run::Tie, HeadForm::Button, LengthRule::Hand, Stock::cut_to_length());
/// let found = strip_masses(Plain, &spec.margin(Length::mm(30.0)).build()?, &steel, &order)?;
/// assert!((found.overlap - 60.0 * 50.0 * 10.0 * 7850e-9).abs() < 1e-12); // width, pitch, thickness, density
/// assert!(strip_masses(Plain, &spec.build()?, &steel, &order).is_err()); // no margin
/// # Ok::<(), seamwright::Error>(())
/// ```
#[inline]
pub fn strip_masses<C: Ctx>(c: C, joint: &Joint, materials: &Materials, order: &Order) -> Result<Masses<C::N>, Error> {
    let order = Order { run: Run::Tie, ..*order };
    order.validate(joint)?;
    let given = Given::new(c, joint, materials);
    let along = Along::new(c, joint, &given, &order)?;
    // As a girth of one strip: a row without ends has no end of a plate to keep clear of.
    let endless = Run::Girth { diameter: joint.strip(), measured: Measured::Circle, other: Face::Outside };
    let layout = Layout::new(joint, &endless, 1)?;
    let rho = c.given(Name(Q::Density, 0), order.density.to_kg_m3());
    let rivets = rivets::rivets(c, joint, &given, &order, &layout, rho)?;
    let cuts = Cuts::new(c, joint, &given, &along, rho);
    let made = rivets.get(..joint.form().row_count()).unwrap_or(&[]);
    Ok(rivets::masses(c, made, &cuts, &along))
}

/// The joint with another strip, built anew so that every check is made again.
fn with_strip(joint: &Joint, strip: f64) -> Result<Joint, Error> {
    let first = joint.rows().first().copied().unwrap_or_default();
    let mut spec =
        JointSpec::new(*joint.form(), Length::mm(strip), joint.plate(), first.hole()).margin(Length::mm(joint.margin));
    for (row, number) in joint.rows().iter().zip(1..) {
        spec = spec.row(number, row.hole(), Some(row.rivet()));
        if let Some(gap) = joint.back_pitch(number) {
            spec = spec.back_pitch(number, gap);
        }
    }
    let other = Length::mm(joint.other);
    match joint.form().kind() {
        JointKind::Lap => spec.other_plate(other),
        JointKind::SingleStrap => spec.strap(other),
        JointKind::DoubleStrap => spec.straps(other, Length::mm(joint.narrow)),
    }
    .build()
}

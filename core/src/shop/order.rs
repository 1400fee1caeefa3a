//! What a shop is asked for: the run of the seam, heads, the length rule, the stock of rivets, the density.

use super::length::{HeadForm, LengthRule};
use crate::bounds::Field;
use crate::error::{Error, ErrorKind};
use crate::joint::{Joint, JointKind};
use crate::quantities::Length;
use crate::rules::{Label, Rounding};

/// Density of steel, kg/m3: common practice of the trade.
pub const STEEL_DENSITY: Density = Density::kg_m3(7850.0);

/// A density, kept in kilograms per cubic metre.
#[derive(Clone, Copy, PartialEq, PartialOrd, Debug)]
#[repr(transparent)]
pub struct Density(f64);

impl Density {
    /// Kilograms per cubic metre.
    #[must_use]
    pub const fn kg_m3(x: f64) -> Self {
        Density(x)
    }

    /// Kilograms per cubic metre.
    #[must_use]
    pub const fn to_kg_m3(self) -> f64 {
        self.0
    }
}

/// On which side of the plate (of plate A in a lap) something lies in a shell.
#[derive(Clone, Copy, PartialEq, Eq, Debug, Hash)]
#[repr(u8)]
pub enum Face {
    /// Towards the axis.
    Inside,
    /// Away from the axis.
    Outside,
}

/// What the diameter of a girth seam is.
#[derive(Clone, Copy, PartialEq, Eq, Debug, Hash)]
#[repr(u8)]
pub enum Measured {
    /// The circle of holes itself: the middle of the plate (of plate A in a lap), on which the pitch is counted.
    Circle,
    /// The inside diameter of the ring of the plate (of plate A in a lap).
    InsidePlate,
    /// The inside diameter of the ring of plate B of a lap.
    InsideOther,
}

/// The run of a seam: what its pitches have to divide.
#[derive(Clone, Copy, PartialEq, Debug)]
pub enum Run {
    /// A straight seam. The first hole of the outer row stands `first_end` from the end of the plate, the last one
    /// `last_end` from the other end.
    Straight {
        /// Length of the plate along the seam.
        length: Length,
        /// End of the plate to the first hole.
        first_end: Length,
        /// Last hole to the end of the plate.
        last_end: Length,
    },
    /// A closed seam round a shell. The pitch is counted at the middle of the plate (of plate A in a lap), where a
    /// flat plate keeps its length when it is rolled.
    Girth {
        /// The diameter given.
        diameter: Length,
        /// What that diameter is.
        measured: Measured,
        /// Where plate B of a lap, the single or the wide strap lies; a narrow or second strap lies on the other side.
        other: Face,
    },
    /// A tie: one strip, as wide as the joint says.
    Tie,
}

/// The lengths of rivets that the shop stocks.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Stock {
    pub(super) step: f64,
    pub(super) rounding: Rounding,
}

impl Stock {
    /// Cut to the computed length: no stock.
    #[must_use]
    pub const fn cut_to_length() -> Self {
        Stock { step: 0.0, rounding: Rounding::Up }
    }

    /// Multiples of a step, taken upwards, downwards or to the nearest.
    #[must_use]
    pub const fn every(step: Length, rounding: Rounding) -> Self {
        Stock { step: step.to_mm(), rounding }
    }

    /// The step; `None` where rivets are cut to length.
    #[must_use]
    pub fn step(&self) -> Option<Length> {
        (self.step != 0.0).then(|| Length::mm(self.step))
    }

    /// How a length becomes one of the stock.
    #[must_use]
    pub const fn rounding(&self) -> Rounding {
        self.rounding
    }
}

/// What a shop is asked for. Nothing in it has a silent default.
///
/// ```
/// use seamwright::{quantities::Length, rules::Rounding, shop::{HeadForm, LengthRule, Order, Run, Stock}};
/// let end = Length::mm(40.0);
/// let run = Run::Straight { length: Length::m(3.0), first_end: end, last_end: end };
/// let stock = Stock::every(Length::mm(2.0), Rounding::Up);
/// let order = Order::steel(run, HeadForm::Button, LengthRule::BoilerButton, stock);
/// assert_eq!(order.density().to_kg_m3(), 7850.0);
/// ```
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Order {
    pub(super) run: Run,
    pub(super) head: HeadForm,
    pub(super) set_head: HeadForm,
    pub(super) rule: LengthRule,
    pub(super) stock: Stock,
    pub(super) density: Density,
    pub(super) density_label: Label,
}

impl Order {
    /// An order in steel of 7850 kg/m3 ([`STEEL_DENSITY`]). `head` is the form of both heads.
    #[must_use]
    pub const fn steel(run: Run, head: HeadForm, rule: LengthRule, stock: Stock) -> Self {
        let mut order = Order::new(run, head, rule, stock, STEEL_DENSITY);
        order.density_label = Label::Practice;
        order
    }

    /// An order in a material of a given density. `head` is the form of both heads.
    #[must_use]
    pub const fn new(run: Run, head: HeadForm, rule: LengthRule, stock: Stock, density: Density) -> Self {
        Order { run, head, set_head: head, rule, stock, density, density_label: Label::Own }
    }

    /// With another form for the set head, which the rivet has when it is bought.
    #[must_use]
    pub const fn set_head(mut self, head: HeadForm) -> Self {
        self.set_head = head;
        self
    }

    /// The run.
    #[must_use]
    pub const fn run(&self) -> &Run {
        &self.run
    }

    /// The form of the closing head.
    #[must_use]
    pub const fn head(&self) -> HeadForm {
        self.head
    }

    /// The length rule.
    #[must_use]
    pub const fn length_rule(&self) -> LengthRule {
        self.rule
    }

    /// The stock.
    #[must_use]
    pub const fn stock(&self) -> &Stock {
        &self.stock
    }

    /// The density.
    #[must_use]
    pub const fn density(&self) -> Density {
        self.density
    }

    /// Checks an order by itself and against the joint: ranges, and what the joint has to have for a shop sheet.
    pub(super) fn validate(&self, joint: &Joint) -> Result<(), Error> {
        Field::Density.check(self.density.to_kg_m3())?;
        if self.stock.step != 0.0 {
            Field::StockStep.check(self.stock.step)?;
        }
        match self.run {
            Run::Tie => {}
            Run::Straight { length, first_end, last_end } => {
                let ends = Field::EndDistance.check(first_end.to_mm())? + Field::EndDistance.check(last_end.to_mm())?;
                let length = Field::RunLength.check(length.to_mm())?;
                if length <= ends {
                    return Err(Error::new(ErrorKind::TooSmall, Field::RunLength).value(length).limit(ends));
                }
            }
            Run::Girth { diameter, measured, .. } => {
                Field::RingDiameter.check(diameter.to_mm())?;
                if measured == Measured::InsideOther && joint.form.kind() != JointKind::Lap {
                    let error = Error::new(ErrorKind::NotForThisForm, Field::OtherPlate);
                    return Err(error.value(diameter.to_mm()));
                }
            }
        }
        complete(joint)
    }
}

/// A ring that has no room for its innermost ply.
pub(super) fn no_room_inside(diameter: f64) -> Error {
    Error::new(ErrorKind::TooSmall, Field::RingDiameter).value(diameter).limit(Field::RingDiameter.bound().lo)
}

/// A shop needs every dimension: straps, row distances, the margin.
fn complete(joint: &Joint) -> Result<(), Error> {
    let missing = |field: Field| Err(Error::new(ErrorKind::Missing, field));
    let kind = joint.form.kind();
    if joint.other <= 0.0 {
        return missing(Field::WideStrap);
    }
    if kind == JointKind::DoubleStrap && joint.narrow <= 0.0 {
        return missing(Field::NarrowStrap);
    }
    let gaps = joint.form.row_count().saturating_sub(1);
    for (gap, number) in joint.back.iter().zip(1_u8..).take(gaps) {
        if *gap <= 0.0 {
            return missing(Field::BackPitch).map_err(|e| e.index(number));
        }
    }
    if joint.margin <= 0.0 {
        return missing(Field::Margin);
    }
    Ok(())
}

//! The catalogue of habits and slips, the commonest first.
//!
//! The order is the library's own judgement of how common a habit is in textbooks and drawing offices; it decides only
//! how deep a short statement is searched.

use crate::rules::Entry;
use crate::step::Quantity;

/// A value of pi that people take.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
#[repr(u8)]
pub enum Pi {
    /// 3.14.
    TwoDecimals,
    /// 22/7.
    TwentyTwoSevenths,
    /// 3.142.
    ThreeDecimals,
    /// 3.1416.
    FourDecimals,
    /// 0.785 for a quarter of it.
    QuarterThree,
    /// 0.7854 for a quarter of it.
    QuarterFour,
    /// 0.7855 for a quarter of it.
    QuarterUp,
}

/// The line of the table of greatest pitches that was read instead of the right one.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
#[repr(u8)]
pub enum WrongLine {
    /// The line with one rivet less.
    Less,
    /// The line with one rivet more.
    More,
    /// The column of laps.
    Lap,
    /// The column of single straps.
    Single,
    /// The column of double straps.
    Double,
}

/// The thickness on which the main plate's rivets were taken to bear.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
#[repr(u8)]
pub enum Loaded {
    /// The single or wide strap.
    Strap,
    /// Both straps together.
    BothStraps,
    /// The second plate.
    OtherPlate,
}

/// The mode that was taken for the one that governs: what it holds is called the joint's strength, and that over the
/// solid strip its efficiency.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
#[repr(u8)]
pub enum Share {
    /// Tearing at the outer row alone.
    Tearing,
    /// Shearing of all rivets alone.
    Shearing,
    /// Bearing of all rivets alone.
    Bearing,
}

/// A quantity that an author rounds on the way, to carry on with the rounded figure.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
#[repr(u8)]
pub enum Midway {
    /// The strength of one rivet, in shear and in bearing.
    OneRivet,
    /// The area of one rivet, as a data book prints it.
    RivetArea,
    /// The net section of a plate or a strap at a row.
    NetSection,
}

impl Midway {
    /// How many there are.
    pub(super) const COUNT: usize = 3;

    /// Which of them a step of the working closes; the area of a rivet has no step of its own.
    pub(super) const fn closed_as(quantity: Quantity) -> Option<Midway> {
        match quantity {
            Quantity::RivetShear
            | Quantity::RivetBearing
            | Quantity::RivetBearingOther
            | Quantity::RivetBearingNarrow => Some(Midway::OneRivet),
            Quantity::PlateTear | Quantity::OtherTear | Quantity::NarrowTear => Some(Midway::NetSection),
            _ => None,
        }
    }
}

/// To what a figure is rounded.
#[derive(Clone, Copy, PartialEq, Debug)]
pub enum Digits {
    /// To so many figures.
    Figures(u8),
    /// To the nearest multiple, in the unit of the quantity: N, or mm2 for an area.
    Step(f64),
}

/// One edit of the rule book, of the arithmetic, of the reading of the joint or of a figure.
#[derive(Clone, Copy, PartialEq, Debug)]
pub enum Edit {
    /// An entry of the book has another value.
    Rule(Entry, f64),
    /// The square-root rule with these constants.
    Root(f64, f64),
    /// One diameter for tearing, shear and bearing: 0 the hole, 1 the rivet.
    OneDiameter(f64),
    /// The greatest pitch read from another line or column.
    Cap(WrongLine),
    /// No greatest pitch.
    NoCap,
    /// No least pitch.
    NoFloor,
    /// Another pi.
    Pi(Pi),
    /// Every result rounded to so many figures before it is used.
    Rounded(u8),
    /// One quantity rounded before it is used.
    Midway(Midway, Digits),
    /// The pitch of the inner row taken for that of the outer row.
    InnerPitch,
    /// The outer pitch taken for the pitch of the inner row.
    OuterPitch,
    /// The straps left out.
    NoStraps,
    /// Bearing on another thickness.
    BearingOn(Loaded),
    /// Outer rivets in single shear counted in double shear.
    OuterInDouble,
    /// One mode alone for the strength and the efficiency of the joint.
    Efficiency(Share),
    /// The rivets' shear stress in another unit.
    ShearUnit(f64),
    /// The plate's tension in another unit.
    TensionUnit(f64),
    /// The figures of one kind in another unit.
    FigureUnit(f64),
    /// Figures cut off instead of rounded.
    CutOff,
    /// Two neighbouring digits of one figure changed places.
    Transposed,
    /// One digit of one figure was lost.
    Dropped,
}

/// A row of the catalogue.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Convention {
    /// The edit.
    pub edit: Edit,
    /// In words, as they follow "reproduced with".
    pub words: &'static str,
    /// Whether it is a slip, which nobody would defend, and no habit.
    pub slip: bool,
}

const fn habit(edit: Edit, words: &'static str) -> Convention {
    Convention { edit, words, slip: false }
}

const fn slip(edit: Edit, words: &'static str) -> Convention {
    Convention { edit, words, slip: true }
}

const fn rule(entry: Entry, value: f64, words: &'static str) -> Convention {
    habit(Edit::Rule(entry, value), words)
}

/// A pound-force, N, and a square inch, mm2.
const POUND: f64 = 4.448_221_615_260_5;
const SQUARE_INCH: f64 = 645.16;

const fn rivet(to: Digits, words: &'static str) -> Convention {
    habit(Edit::Midway(Midway::OneRivet, to), words)
}

const fn area(to: Digits, words: &'static str) -> Convention {
    habit(Edit::Midway(Midway::RivetArea, to), words)
}

const fn net(to: Digits, words: &'static str) -> Convention {
    habit(Edit::Midway(Midway::NetSection, to), words)
}

/// Where the habits stand: double shear of 1.875 Reg. 177, of 2 and 1.75 Khurmi 9.3 and 9.11; 6 sqrt t throughout
/// Khurmi, 1.2 and 1.3 sqrt t in inches Lineham p. 407 (read); 6.05 and 6.3 from memory; sqrt(50 t) - 2 Roloff/Matek,
/// second-hand; 41.28 mm Khurmi, 40 mm Singh (read); 1/16 in of allowance AISC practice, 1/8 in Waddell p. 165 (read).
/// A rivet rounded to whole newtons Khurmi 9.3 (4 times 49 094 N), to 5 N Khurmi 9.5 (3 times 17 015 N).
/// The others are common practice.
///
/// 1.2 and 1.3 of the inch rule `d = 1.2 sqrt t` in roots of millimetres: times the root of 25.4; and
/// the root of 50.
const ROOT_1_2_INCH: f64 = 6.047_809_520_809_992;
const ROOT_50: f64 = 7.071_067_811_865_475_5;
const ROOT_1_3_INCH: f64 = 6.551_793_647_544_16;

/// Every habit and slip that is tried, in the order in which it is tried.
pub const CATALOGUE: &[Convention] = &[
    rule(Entry::DOUBLE_SHEAR, 1.875, "1.875 for double shear"),
    rule(Entry::DOUBLE_SHEAR, 2.0, "2 for double shear"),
    rule(Entry::DOUBLE_SHEAR, 1.75, "1.75 for double shear"),
    habit(Edit::Pi(Pi::QuarterUp), "0.7855 for a quarter of pi"),
    habit(Edit::OneDiameter(1.0), "the rivet's diameter throughout"),
    habit(Edit::OneDiameter(0.0), "the hole's diameter throughout"),
    rule(Entry::SHEAR_DIAMETER, 1.0, "the rivet's diameter in shear"),
    rule(Entry::SHEAR_DIAMETER, 0.0, "the hole's diameter in shear"),
    rule(Entry::BEARING_DIAMETER, 1.0, "the rivet's diameter in bearing"),
    rule(Entry::BEARING_DIAMETER, 0.0, "the hole's diameter in bearing"),
    rule(Entry::TEAR_DIAMETER, 1.0, "the rivet's diameter in tearing"),
    rule(Entry::TEAR_DIAMETER, 0.0, "the hole's diameter in tearing"),
    habit(Edit::Pi(Pi::QuarterThree), "0.785 for a quarter of pi"),
    habit(Edit::Pi(Pi::QuarterFour), "0.7854 for a quarter of pi"),
    habit(Edit::Pi(Pi::TwoDecimals), "3.14 for pi"),
    habit(Edit::Pi(Pi::TwentyTwoSevenths), "22/7 for pi"),
    habit(Edit::Pi(Pi::ThreeDecimals), "3.142 for pi"),
    habit(Edit::Pi(Pi::FourDecimals), "3.1416 for pi"),
    rule(Entry::COUNT_INNER, 0.0, "the combined modes left out"),
    rule(Entry::COUNT_INNER, 2.0, "the combined modes counted"),
    rule(Entry::BEARING_CHECKED, 0.0, "bearing left out"),
    rule(Entry::BEARING_CHECKED, 1.0, "bearing counted"),
    rule(Entry::PITCH_ROUND, 2.0, "the pitch rounded up"),
    rule(Entry::PITCH_ROUND, 1.0, "the pitch rounded to the nearest step"),
    rule(Entry::PITCH_ROUND, 0.0, "the pitch rounded down"),
    rule(Entry::PITCH_STEP, 0.0, "the pitch not rounded"),
    habit(Edit::Rounded(3), "results rounded to three figures on the way"),
    habit(Edit::Rounded(4), "results rounded to four figures on the way"),
    rule(Entry::HOLE_SQRT, 6.0, "6 in the square-root rule"),
    rule(Entry::HOLE_SQRT, 6.05, "6.05 in the square-root rule"),
    rule(Entry::HOLE_SQRT, 6.3, "6.3 in the square-root rule"),
    rule(Entry::HOLE_SQRT, ROOT_1_2_INCH, "1.2 in the square-root rule in inches"),
    rule(Entry::HOLE_SQRT, ROOT_1_3_INCH, "1.3 in the square-root rule in inches"),
    habit(Edit::Root(ROOT_50, -2.0), "sqrt(50 t) - 2 for the hole"),
    rule(Entry::HOLE_ROUND, 1.0, "the hole rounded to a whole step"),
    rule(Entry::HOLE_ROUND, 0.0, "the hole taken from the series"),
    rule(Entry::PITCH_BALANCE, 0.0, "the pitch balanced against shear alone"),
    rule(Entry::PITCH_BALANCE, 1.0, "the pitch balanced against the weaker of shear and bearing"),
    rule(Entry::PITCH_BALANCE, 2.0, "the pitch balanced over all modes"),
    habit(Edit::NoCap, "the greatest pitch not applied"),
    habit(Edit::NoFloor, "the least pitch not applied"),
    slip(Edit::Cap(WrongLine::Less), "the greatest pitch of one rivet less"),
    slip(Edit::Cap(WrongLine::More), "the greatest pitch of one rivet more"),
    slip(Edit::Cap(WrongLine::Lap), "the greatest pitch of a lap"),
    slip(Edit::Cap(WrongLine::Single), "the greatest pitch of a single strap"),
    slip(Edit::Cap(WrongLine::Double), "the greatest pitch of double straps"),
    rule(Entry::PITCH_MAX_ADD, 40.0, "40 mm added in the greatest pitch"),
    rule(Entry::PITCH_MAX_ADD, 41.275, "1 5/8 in added in the greatest pitch"),
    rule(Entry::PITCH_MAX_ADD, 41.28, "41.28 mm added in the greatest pitch"),
    slip(Edit::Rule(Entry::DOUBLE_SHEAR, 1.0), "double shear taken as single shear"),
    slip(Edit::Efficiency(Share::Tearing), "tearing alone for the strength of the joint"),
    slip(Edit::Efficiency(Share::Shearing), "shearing alone for the strength of the joint"),
    slip(Edit::Efficiency(Share::Bearing), "bearing alone for the strength of the joint"),
    rivet(Digits::Step(1.0), "the strength of one rivet rounded to whole newtons"),
    rivet(Digits::Figures(3), "the strength of one rivet rounded to three figures"),
    rivet(Digits::Figures(4), "the strength of one rivet rounded to four figures"),
    rivet(Digits::Step(5.0), "the strength of one rivet rounded to 5 N"),
    rivet(Digits::Step(10.0), "the strength of one rivet rounded to 10 N"),
    rivet(Digits::Step(100.0), "the strength of one rivet rounded to 0.1 kN"),
    rivet(Digits::Step(9.806_65), "the strength of one rivet rounded to whole kilograms force"),
    rivet(Digits::Step(POUND), "the strength of one rivet rounded to whole pounds"),
    rivet(Digits::Step(10.0 * POUND), "the strength of one rivet rounded to 10 lb"),
    area(Digits::Figures(3), "the area of one rivet rounded to three figures"),
    area(Digits::Figures(4), "the area of one rivet rounded to four figures"),
    area(Digits::Step(1.0), "the area of one rivet rounded to whole square millimetres"),
    area(Digits::Step(0.001 * SQUARE_INCH), "the area of one rivet rounded to 0.001 sq in"),
    area(Digits::Step(0.0001 * SQUARE_INCH), "the area of one rivet rounded to 0.0001 sq in"),
    net(Digits::Figures(3), "the net section rounded to three figures"),
    net(Digits::Figures(4), "the net section rounded to four figures"),
    net(Digits::Step(10.0), "the net section rounded to 10 N"),
    net(Digits::Step(100.0), "the net section rounded to 0.1 kN"),
    net(Digits::Step(10.0 * POUND), "the net section rounded to 10 lb"),
    rule(Entry::LONE_PLANE, 1.0, "one plane of a double-shear rivet at full single shear"),
    rule(Entry::LONE_PLANE, 0.0, "one plane of a double-shear rivet at half of double shear"),
    rule(Entry::INNER_SHARE, 1.0, "an even share of the load for the rivets outside"),
    rule(Entry::INNER_SHARE, 0.0, "the strength of the rivets outside"),
    rule(Entry::COUNT_STRAP, 1.0, "tearing of the straps counted"),
    rule(Entry::COUNT_STRAP, 0.0, "tearing of the straps left out"),
    slip(Edit::InnerPitch, "the inner pitch taken for the outer"),
    slip(Edit::OuterPitch, "the outer pitch taken for the inner"),
    slip(Edit::NoStraps, "the straps not counted"),
    slip(Edit::BearingOn(Loaded::Strap), "bearing on the strap's thickness"),
    slip(Edit::BearingOn(Loaded::BothStraps), "bearing on both straps together"),
    slip(Edit::BearingOn(Loaded::OtherPlate), "bearing on the other plate's thickness"),
    slip(Edit::OuterInDouble, "outer rivets counted in double shear"),
    rule(Entry::TEAR_ALLOWANCE, 1.5875, "1/16 in added to the hole in tearing"),
    rule(Entry::TEAR_ALLOWANCE, 3.175, "1/8 in added to the diameter in tearing"),
    rule(Entry::TEAR_ALLOWANCE, 0.0, "nothing added to the hole in tearing"),
    rule(Entry::CLOSE_ROWS, 1.0, "the modified plate percentage for close rows"),
    rule(Entry::CLOSE_ROWS, 0.0, "close rows not allowed for"),
    rule(Entry::MARGIN_LEAST, 1.5, "a margin of 1.5 diameters"),
    rule(Entry::MARGIN_LEAST, 1.75, "a margin of 1.75 diameters"),
    rule(Entry::MARGIN_LEAST, 2.0, "a margin of 2 diameters"),
    rule(Entry::STRAP_EQUAL, 0.625, "straps of 5/8 of the plate"),
    rule(Entry::STRAP_EQUAL, 0.75, "straps of 3/4 of the plate"),
    rule(Entry::STRAP_EQUAL, 0.5, "straps of half the plate"),
    rule(Entry::STRAP_SINGLE, 1.125, "a strap of 1 1/8 of the plate"),
    rule(Entry::STRAP_SINGLE, 1.25, "a strap of 1 1/4 of the plate"),
    rule(Entry::HOLE_THIN_RULE, 0.0, "the square-root rule for thin plate too"),
    rule(Entry::HOLE_THIN_RULE, 1.0, "thin plate by shear and bearing"),
    rule(Entry::DISTANCE_DIAMETER, 1.0, "the rivet's diameter in distances"),
    rule(Entry::DISTANCE_DIAMETER, 0.0, "the hole's diameter in distances"),
    slip(Edit::FigureUnit(1000.0), "a figure a thousand times too large"),
    slip(Edit::FigureUnit(0.001), "a figure a thousand times too small"),
    slip(Edit::FigureUnit(10.0), "a figure ten times too large"),
    slip(Edit::FigureUnit(0.1), "a figure ten times too small"),
    slip(Edit::FigureUnit(25.4), "inches given as millimetres"),
    slip(Edit::FigureUnit(1.0 / 25.4), "millimetres given as inches"),
    slip(Edit::FigureUnit(1.0 / 9.806_65), "kilograms force given as newtons"),
    slip(Edit::FigureUnit(9.806_65), "newtons given as kilograms force"),
    slip(Edit::FigureUnit(1.0 / POUND), "pounds force given as newtons"),
    slip(Edit::ShearUnit(0.098_066_5), "the shear stress in kgf/cm2 taken as MPa, or ten times less"),
    slip(Edit::ShearUnit(9.806_65), "the shear stress in kgf/mm2 taken as MPa"),
    slip(Edit::TensionUnit(0.098_066_5), "the tension in kgf/cm2 taken as MPa, or ten times less"),
    slip(Edit::TensionUnit(9.806_65), "the tension in kgf/mm2 taken as MPa"),
    habit(Edit::CutOff, "figures cut off instead of rounded"),
    slip(Edit::Transposed, "two neighbouring digits of a figure changed over"),
    slip(Edit::Dropped, "a digit of a figure dropped"),
];

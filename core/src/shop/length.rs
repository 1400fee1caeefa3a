//! Rivet lengths by named rules, and the proportions of heads.

use crate::bounds::Field;
use crate::error::{Error, ErrorKind};
use crate::formula::{self, Formula};
use crate::math;
use crate::proportion::{SNAP_HEAD_HEIGHT, SNAP_HEAD_WIDTH};
use crate::rules::Label;
use crate::step::{Ctx, Name, Num, Quantity as Q};

/// The diameter up to which the handbook's lesser factors hold, mm.
const SMALL: f64 = 20.0;
/// The greatest grip of the handbook's rules, in diameters.
const HANDBOOK_GRIP: f64 = 4.0;
/// The bridge table: diameter and allowance at no grip, mm (READ; the straight line through the columns is ours). The
/// 10 mm column is doubtful in the scan and is left out, the 8 mm column with it.
const BRIDGE: [(f64, f64); 9] = [
    (13.0, 13.0),
    (15.0, 16.0),
    (17.0, 19.0),
    (18.0, 20.0),
    (20.0, 21.0),
    (22.0, 23.0),
    (23.0, 25.0),
    (25.0, 27.0),
    (26.0, 28.0),
];

/// The word of a label, as [`Label::word`] has it.
macro_rules! label_word {
    (Read) => {
        "READ"
    };
    (Memory) => {
        "MEM"
    };
    (Practice) => {
        "PRACTICE"
    };
}

macro_rules! length_rules {
    ($($id:ident $key:literal $name:literal $formula:ident $label:ident $source:literal;)*) => {
        /// By which rule the length follows from the grip. The rules differ by up to 9 mm at 40 mm of grip and a 20 mm
        /// rivet, so the user chooses and the sheet says which.
        #[derive(Clone, Copy, PartialEq, Eq, Debug, Hash)]
        #[repr(u8)]
        pub enum LengthRule { $(#[doc = $name] $id),* }

        /// All length rules.
        pub const LENGTH_RULES: &[LengthRule] = &[$(LengthRule::$id),*];

        impl LengthRule {
            /// Short name for flags and files.
            #[must_use]
            pub const fn key(self) -> &'static str { match self { $(LengthRule::$id => $key),* } }
            /// The rule in words.
            #[must_use]
            pub const fn name(self) -> &'static str { match self { $(LengthRule::$id => $name),* } }
            /// Its formula.
            #[must_use]
            pub const fn formula(self) -> Formula { match self { $(LengthRule::$id => Formula::$formula),* } }
            /// Where it stands.
            #[must_use]
            pub const fn source(self) -> &'static str { match self { $(LengthRule::$id => $source),* } }
            /// How far it can be trusted.
            #[must_use]
            pub const fn label(self) -> Label { match self { $(LengthRule::$id => Label::$label),* } }
            /// Name, source and label, for a line of the working.
            const fn words(self) -> &'static str {
                match self { $(LengthRule::$id => concat!($name, "; ", $source, ", ", label_word!($label))),* }
            }
        }
    };
}

length_rules! {
    SteelButton "steel-button" "button head, steel construction" AllowanceSteelButton Read "Technique for Manual Working of Materials: Riveting, trainees' handbook, ch. 5";
    BoilerButton "boiler-button" "button head, boilers" AllowanceBoilerButton Read "Technique for Manual Working of Materials: Riveting, trainees' handbook, ch. 5";
    Countersunk "countersunk" "countersunk head" AllowanceCountersunk Read "Technique for Manual Working of Materials: Riveting, trainees' handbook, ch. 5";
    Hand "hand" "hand riveting" AllowanceHand Read "Roloff/Matek, Maschinenelemente, second-hand: as an open teaching page works it";
    SmallMachine "small-machine" "small rivets set by machine" AllowanceSmallMachine Read "a rivet maker's page";
    BridgeTable "bridge-table" "bridge rivets by table" AllowanceBridgeTable Read "rivet table of Beuchelt & Co., Gruenberg, p. 327 of an iron-bridge handbook; the straight-line fit is this library's";
}

impl LengthRule {
    /// Whether the rule is one for a countersunk closing head.
    #[must_use]
    pub const fn sunk(self) -> bool {
        matches!(self, LengthRule::Countersunk)
    }

    /// The greatest grip that the rule is stated for, in diameters.
    #[must_use]
    pub const fn greatest_grip(self) -> Option<f64> {
        match self {
            LengthRule::SteelButton | LengthRule::BoilerButton | LengthRule::Countersunk => Some(HANDBOOK_GRIP),
            LengthRule::Hand | LengthRule::SmallMachine | LengthRule::BridgeTable => None,
        }
    }
}

/// The allowance beyond the grip, mm: `d` the cold rivet, `g` the grip, `row` from 1 (0 for no row).
///
/// # Errors
/// [`ErrorKind::BeyondTable`] where the bridge table has no column for the diameter.
///
/// ```
/// use seamwright::{error::ErrorKind, shop::{allowance, LengthRule}, step::Plain};
/// assert_eq!(allowance(Plain, LengthRule::BridgeTable, 0, 20.0, 40.0), Ok(25.0));
/// let refused = allowance(Plain, LengthRule::BridgeTable, 0, 21.0, 40.0);
/// assert_eq!(refused.unwrap_err().kind, ErrorKind::BeyondTable);
/// ```
#[inline]
pub fn allowance<C: Ctx>(c: C, rule: LengthRule, row: u8, d: C::N, g: C::N) -> Result<C::N, Error> {
    let small = math::at_most(d.value(), SMALL);
    let diameters = |k: f64| {
        let k = c.stated(Name(Q::LengthShare, 0), rule.words(), k);
        formula::allowance_in_diameters(k, d)
    };
    let z = match rule {
        LengthRule::SteelButton => diameters(if small { 1.5 } else { 1.6 }),
        LengthRule::BoilerButton => diameters(if small { 1.7 } else { 1.8 }),
        LengthRule::Countersunk => diameters(0.5),
        LengthRule::Hand => diameters(1.75),
        LengthRule::SmallMachine => formula::allowance_small_machine(g, d),
        LengthRule::BridgeTable => {
            let same = |a: f64| math::at_most(a, d.value()) && math::at_least(a, d.value());
            match BRIDGE.iter().find(|(at, _)| same(*at)) {
                Some((_, z0)) => {
                    formula::allowance_by_table(c.stated(Name(Q::AllowanceBase, row), rule.words(), *z0), g)
                }
                None => {
                    let error = Error::new(ErrorKind::BeyondTable, Field::Rivet).index(row);
                    return Err(error.value(d.value()));
                }
            }
        }
    };
    Ok(c.formula(Name(Q::LengthAllowance, row), rule.formula().no(), z))
}

macro_rules! heads {
    ($($id:ident $key:literal $name:literal $width:tt $height:tt $sunk:literal $label:ident $source:literal;)*) => {
        /// The form of a rivet head.
        #[derive(Clone, Copy, PartialEq, Eq, Debug, Hash)]
        #[repr(u8)]
        pub enum HeadForm { $(#[doc = $name] $id),* }

        /// All head forms.
        pub const HEAD_FORMS: &[HeadForm] = &[$(HeadForm::$id),*];

        impl HeadForm {
            /// Short name for flags and files.
            #[must_use]
            pub const fn key(self) -> &'static str { match self { $(HeadForm::$id => $key),* } }
            /// The form in words.
            #[must_use]
            pub const fn name(self) -> &'static str { match self { $(HeadForm::$id => $name),* } }
            /// Width in diameters of the rivet.
            #[must_use]
            pub const fn width(self) -> f64 { match self { $(HeadForm::$id => $width),* } }
            /// Height, or depth of a countersunk head, in diameters.
            #[must_use]
            pub const fn height(self) -> f64 { match self { $(HeadForm::$id => $height),* } }
            /// Whether it lies in the plate.
            #[must_use]
            pub const fn sunk(self) -> bool { match self { $(HeadForm::$id => $sunk),* } }
            /// How far the proportions can be trusted.
            #[must_use]
            pub const fn label(self) -> Label { match self { $(HeadForm::$id => Label::$label),* } }
            /// Where they come from.
            #[must_use]
            pub const fn source(self) -> &'static str { match self { $(HeadForm::$id => $source),* } }
            /// Name, source and label, for a line of the working.
            const fn words(self) -> &'static str {
                match self { $(HeadForm::$id => concat!($name, "; ", $source, ", ", label_word!($label))),* }
            }
        }
    };
}

heads! {
    Button "button" "button (snap) head" SNAP_HEAD_WIDTH SNAP_HEAD_HEIGHT false Practice "common practice";
    SmallRound "small-round" "small round head" 1.75 0.6 false Memory "DIN 660 / ISO 1051, second-hand, approximate";
    Countersunk "countersunk" "countersunk head" 1.5 0.5 true Practice "common practice";
}

/// Width and height of a head, mm.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct HeadSize<N = f64> {
    /// The form.
    pub form: HeadForm,
    /// Width across.
    pub width: N,
    /// Height, or depth of a countersunk head.
    pub height: N,
}

/// The names of a head's figures: of the set head, or of a closing head of another form.
#[derive(Clone, Copy)]
pub(super) struct HeadNames {
    width: Q,
    height: Q,
    volume: Q,
}

/// Of the set head, and of both heads where they are alike.
pub(super) const SET: HeadNames = HeadNames { width: Q::SetWidth, height: Q::HeadHeight, volume: Q::HeadVolume };
/// Of a closing head of another form.
pub(super) const CLOSING: HeadNames =
    HeadNames { width: Q::ClosingWidth, height: Q::ClosingHeight, volume: Q::ClosingVolume };

impl<N: Num> HeadSize<N> {
    /// The size for a rivet of diameter `d`.
    #[inline]
    pub(super) fn new<C: Ctx<N = N>>(c: C, names: HeadNames, form: HeadForm, row: u8, d: N) -> Self {
        let of = |q: Q, share: Q, k: f64| {
            let k = c.stated(Name(share, 0), form.words(), k);
            c.formula(Name(q, row), Formula::Times.no(), formula::times(k, d))
        };
        let width = of(names.width, Q::HeadWidthShare, form.width());
        HeadSize { form, width, height: of(names.height, Q::HeadHeightShare, form.height()) }
    }

    /// What the head has more than its shank of diameter `d`, mm3.
    #[inline]
    pub(super) fn volume<C: Ctx<N = N>>(&self, c: C, names: HeadNames, row: u8, d: N) -> N {
        let name = Name(names.volume, row);
        if self.form.sunk() {
            c.formula(name, Formula::SunkHead.no(), formula::sunk_head(self.width, self.height, d))
        } else {
            c.formula(name, Formula::RoundHead.no(), formula::round_head(self.width, self.height))
        }
    }
}

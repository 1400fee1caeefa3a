//! The core's choices as words, both ways. Each list is exhaustive: a new choice of the core does not compile here
//! until it has its word.

use pyo3::prelude::*;
use seamwright::check::{Required, Verdict};
use seamwright::comparison::SortBy;
use seamwright::drawing::Extent;
use seamwright::group::GroupMode;
use seamwright::joint::{Arrangement, JointKind};
use seamwright::modes::{Class, Fate};
use seamwright::rating::{Basis, BoilerPart, FactorBasis, Footing, HoleMaking, Riveting};
use seamwright::rules::{Balance, Label, Metal, Rounding};
use seamwright::search::Objective;
use seamwright::sensitivity::Target;
use seamwright::shop::{Face, Fitted, HEAD_FORMS, LENGTH_RULES, Measured, SHOP_NOTES, Side};
use seamwright::sizing::Decided;
use seamwright::teach::{Audience, Effect, Setting, Task};
use seamwright::text::DecimalMark;
use seamwright::vessel::GirthPlace;
use seamwright::working::{DIALECTS, Forces, Units};
use seamwright::{check::SUBJECTS, error::KINDS};

macro_rules! words {
    ($($name:ident $type:ident { $($variant:ident $word:literal),* $(,)? })*) => {
        $(
            /// Its word, and back.
            #[allow(dead_code, reason = "some choices only go in, some only come out")]
            pub mod $name {
                use super::$type;
                /// The word of a choice.
                pub const fn word(x: $type) -> &'static str { match x { $($type::$variant => $word),* } }
                /// All of them.
                pub const ALL: &[$type] = &[$($type::$variant),*];
                /// The choice of a word.
                pub fn read(word: &str) -> Option<$type> { match word { $($word => Some($type::$variant),)* _ => None } }
            }
        )*

        const LISTED: &[(&str, &[(&str, &str)])] = &[$((stringify!($type), &[$((stringify!($variant), $word)),*])),*];
    };
}

words! {
    kind JointKind { Lap "lap", SingleStrap "single strap", DoubleStrap "double strap" }
    arrangement Arrangement { Chain "chain", Zigzag "zigzag" }
    class Class {
        PlateOuter "plate at its outer row", PlateInner "plate at an inner row", Rivets "all rivets", Strap "strap",
        BothPlates "both plates",
    }
    fate Fate {
        Whole "whole", Shear "shear", Bearing "bearing on the plate", OtherBearing "bearing on the other plate or strap",
        Mixed "shear and bearing on a strap", ShearOut "shear-out of the plate",
        OtherShearOut "shear-out of the other plate or strap",
    }
    verdict Verdict { Open "open", Unknown "unknown", Note "note", Met "met" }
    required Required { AtLeast "at least", AtMost "at most" }
    decided Decided { Given "given", Balance "balance", Floor "floor", Cap "cap" }
    balance Balance { Shear "shear", Weaker "weaker", AllModes "all modes" }
    rounding Rounding { Down "down", Nearest "nearest", Up "up" }
    label Label { Read "READ", Memory "MEM", Practice "PRACTICE", Own "OWN" }
    metal Metal { Steel "steel", Iron "iron" }
    basis Basis { Measured "measured", Given "given", Tabulated "tabulated", Assumed "assumed" }
    riveting Riveting { Hand "hand", Machine "machine" }
    holes_made HoleMaking { Drilled "drilled", Reamed "reamed", Punched "punched" }
    footing Footing { Permissible "permissible", Ultimate "ultimate" }
    factor_basis FactorBasis {
        Given "given", Book "book", Constant "constant of the formula", InStresses "in the stresses",
    }
    girth_place GirthPlace { Middle "middle", End "end", Stayed "stayed" }
    group_mode GroupMode { Shear "shear", Bearing "bearing" }
    boiler_part BoilerPart {
        Course "course", Girth "girth seam", Head "head", Tubes "tubes", Stays "stays", Furnace "furnace",
        Other "other limit",
    }
    sort_by SortBy {
        Given "given", Credited "credited", Efficiency "efficiency", Pressure "pressure", Pitch "pitch", Hole "hole",
        Open "open rules",
    }
    target Target { Efficiency "efficiency", BookEfficiency "book efficiency", Strength "strength" }
    effect Effect {
        Tearing "tearing", Shearing "shearing", Bearing "bearing", Combined "combined", Cap "cap",
        ThinPlate "thin plate",
    }
    setting Setting { Boiler "boiler", Structure "structure" }
    task Task { Check "check", Size "size" }
    audience Audience { Class "class", Teacher "teacher" }
    objective Objective { Efficiency "efficiency", Mass "mass", Rivets "rivets", Thickness "thickness" }
    extent Extent { Seam "seam", Tie "tie" }
    face Face { Inside "inside", Outside "outside" }
    measured Measured { Circle "circle", InsidePlate "inside plate", InsideOther "inside other plate" }
    fitted Fitted { Tie "tie", Whole "whole", Nearer "nearer", Cap "cap", Floor "floor" }
    side Side { Lap "lap", Left "left", Right "right" }
    units Units { Metric "metric", Inch "inch" }
    forces Forces { Newton "N", Kilonewton "kN" }
    mark DecimalMark { Point ".", Comma "," }
}

/// `NoAdmissiblePitch` as `no admissible pitch`.
pub fn spaced(name: &str) -> String {
    let mut out = String::new();
    for c in name.chars() {
        if c.is_ascii_uppercase() && !out.is_empty() {
            out.push(' ');
        }
        out.push(c.to_ascii_lowercase());
    }
    out
}

/// Every choice of the core: type, variants and their words.
#[pyfunction]
pub fn words() -> Vec<(String, Vec<(String, String)>)> {
    let own = |x: &[(&str, &str)]| x.iter().map(|(a, b)| ((*a).to_owned(), (*b).to_owned())).collect();
    let mut all: Vec<(String, Vec<(String, String)>)> =
        LISTED.iter().map(|(name, list)| ((*name).to_owned(), own(list))).collect();
    let said = |name: String| (name.clone(), spaced(&name));
    all.push(("Subject".to_owned(), SUBJECTS.iter().map(|s| said(format!("{s:?}"))).collect()));
    all.push(("ShopNote".to_owned(), SHOP_NOTES.iter().map(|s| said(format!("{s:?}"))).collect()));
    all.push(("ErrorKind".to_owned(), KINDS.iter().map(|s| said(format!("{s:?}"))).collect()));
    all.push(("Dialect".to_owned(), DIALECTS.iter().map(|s| said(format!("{s:?}"))).collect()));
    all.push(("HeadForm".to_owned(), HEAD_FORMS.iter().map(|h| (format!("{h:?}"), h.key().to_owned())).collect()));
    all.push(("LengthRule".to_owned(), LENGTH_RULES.iter().map(|h| (format!("{h:?}"), h.key().to_owned())).collect()));
    all
}

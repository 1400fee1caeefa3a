//! Proportions that a rule book prescribes.

use seamwright::given::Given;
use seamwright::proportion::{self, Covered, Strap};
use seamwright::step::{Ctx, Name, Num, Plain, Quantity};

use crate::context::{By, Hidden};
use crate::input::{Input, keep};

pub fn proportion(i: &mut Input) {
    with(Plain, i);
    with(Hidden, i);
    with(By(Name(Quantity::Plate, 0)), i);
}

fn with<C: Ctx>(c: C, i: &mut Input) {
    let rules = i.rules();
    let Some(form) = i.form() else { return };
    let n = |i: &mut Input| C::N::lit(i.number());
    keep(proportion::hole(c, &rules, n(i), n(i), i.maybe(n), n(i)));
    keep(proportion::planes(c, &rules, &form));
    keep(proportion::rivets_per_pitch(&form));
    keep(proportion::pitch_least(c, &rules, &form, n(i)));
    keep(proportion::limit_entry(&proportion::pitch_greatest(c, &rules, &form, n(i))));
    keep(proportion::row_gap(c, &rules, &form, n(i), i.index(), n(i), n(i)));
    keep(proportion::margin_least(c, &rules, n(i)));
    keep(proportion::limit_entry(&proportion::margin_greatest(c, &rules, n(i), n(i))));
    let Some(joint) = i.joint() else { return };
    let given = Given::new(c, &joint, &i.materials());
    keep(proportion::head_beside_strap(c, &form, &given, n(i), i.index()));
    keep(proportion::heads_apart(c, &form, &given, i.index()));
    let covered = Covered::new(&form, &given, &rules);
    for strap in [Strap::Wide, Strap::Narrow] {
        keep(proportion::strap_least(c, &rules, &form, strap, &covered));
    }
}

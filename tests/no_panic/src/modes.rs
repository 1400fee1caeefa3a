//! Failure modes.

use seamwright::given::Given;
use seamwright::joint::Form;
use seamwright::modes::{self, Cut, Lens, LetterName, Lettered, Mode, ModeName, Strengths};
use seamwright::rules::Entry;
use seamwright::step::{Ctx, Name, Num, Plain, Quantity};

use crate::context::{By, Hidden};
use crate::input::{Input, keep, show};

pub fn given(i: &mut Input) {
    given_with(Plain, i);
    given_with(Hidden, i);
    given_with(By(Name(Quantity::Hole, 1)), i);
}

fn given_with<C: Ctx>(c: C, i: &mut Input) {
    let rules = i.rules();
    let Some(joint) = i.joint() else { return };
    let given = Given::new(c, &joint, &i.materials());
    keep(Given::diameter(&given, &rules, Entry::TEAR_DIAMETER, i.index()));
    keep(Given::rivets_in(&given, i.index()));
    keep(modes::prescribed_gaps(c, &joint, &given, &rules));
    let seam = i.maybe(|i| C::N::lit(i.number()));
    keep(modes::rivet_fates(c, &joint, &given, &rules, i.index(), seam, i.yes()));
}

pub fn modes(i: &mut Input) {
    modes_with(Plain, i);
    modes_with(Hidden, i);
    modes_with(By(Name(Quantity::Pitch, 0)), i);
}

fn modes_with<C: Ctx>(c: C, i: &mut Input) {
    let rules = i.rules();
    let Some(joint) = i.joint() else { return };
    let given = Given::new(c, &joint, &i.materials());
    keep(Lens::alike(&i.materials(), &rules));
    for lens in [Lens::Real, Lens::Book] {
        let strengths = Strengths::new(c, &joint, &given, &rules, lens);
        let cut = i.cut();
        keep(Cut::class(&cut, Form::kind(joint.form()), i.index()));
        named(&Strengths::mode(&strengths, cut), joint.form(), i);
        for mode in Strengths::modes(&strengths) {
            named(&mode, joint.form(), i);
        }
        if let Some((weakest, second)) = Strengths::weakest(&strengths, |cut| i.yes() || cut.plate == 1) {
            keep((weakest, second));
        }
    }
}

fn named<N: Num>(mode: &Mode<N>, form: &Form, i: &mut Input) {
    show::<ModeName<'_>>(&Mode::name(mode, form), i);
}

pub fn letters(i: &mut Input) {
    letters_with(Plain, i);
    letters_with(Hidden, i);
    letters_with(By(Name(Quantity::Shear, 0)), i);
}

fn letters_with<C: Ctx>(c: C, i: &mut Input) {
    let rules = i.rules();
    let Some(joint) = i.joint() else { return };
    let given = Given::new(c, &joint, &i.materials());
    let strengths = Strengths::new(c, &joint, &given, &rules, Lens::Book);
    let list = modes::letters(c, &joint, &given, &rules, &strengths);
    let mut weakest: Option<Lettered<C::N>> = None;
    for lettered in &list {
        if weakest.is_none_or(|w| Lettered::is_weaker_than(lettered, &w)) {
            weakest = Some(*lettered);
        }
        show::<LetterName<'_>>(&Lettered::name(lettered, joint.form()), i);
    }
    keep(weakest);
}

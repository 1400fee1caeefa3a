//! Rating.

use core::hint::black_box;

use seamwright::check::{self, Analysis};
use seamwright::quantities::Pressure;
use seamwright::rating::{
    self, ASSUMED, Allowed, Assumed, Assumptions, Basis, Boiler, BoilerPart, Existing, Footing, HoleMaking,
    KnownLength, Rating, Riveting, Seam, Service, Shell,
};
use seamwright::rules::Metal;
use seamwright::step::{Ctx, Name, Num, Plain, Quantity};

use crate::context::{By, Hidden};
use crate::input::{Input, keep};

fn service(i: &mut Input) -> Service {
    let mut s = if i.yes() { Service::new_shell() } else { Service::in_service() };
    s.second_hand = i.maybe(Input::yes);
    s.past_age_limit = i.maybe(Input::yes);
    s.tested = i.yes();
    s.tubular = i.maybe(Input::yes);
    s.lap_length = i.maybe(Input::length);
    s.lap_in_fire = i.maybe(Input::yes);
    s.weight_on_seam = i.maybe(Input::yes);
    s.riveting = i.maybe(|i| if i.yes() { Riveting::Hand } else { Riveting::Machine });
    s.holes = i.one_of(&[HoleMaking::Drilled, HoleMaking::Reamed, HoleMaking::Punched]);
    s.stripped = i.yes();
    black_box(s)
}

/// Any shell; what it holds is hidden from the compiler.
pub fn shell(i: &mut Input) -> Shell {
    let footing = if i.yes() { Footing::Permissible } else { Footing::Ultimate };
    let mut shell = Shell::service(Shell::new(i.length(), footing), service(i));
    if i.yes() {
        shell = Shell::corrosion(shell, i.length());
    }
    if i.yes() {
        shell = Shell::safety(shell, i.number());
    }
    black_box(shell)
}

pub fn shells(i: &mut Input) {
    let shell = shell(i);
    keep((Shell::inside(&shell), Shell::footing(&shell), Shell::circumstances(&shell), Shell::validate(&shell)));
    let rules = i.rules();
    keep(rating::least_plate(&rules, i.number()));
    keep(rating::test_pressure_with(Plain, &rules, i.number()));
    if let Some(form) = i.form() {
        let mut notes = Assumptions::new();
        keep(rating::factor_with(Plain, &rules, &shell, &form, &mut notes));
        let seam = Seam { form: &form, plate: i.number(), tension: i.number(), efficiency: i.number() };
        if let Ok(found) = rating::pressure_with(Plain, &rules, &shell, &seam, &mut notes) {
            keep(Allowed::values(found));
        }
        keep(rating::girth_pressure_with(Plain, &rules, &shell, &seam, &mut notes));
        listed(&notes, i);
    }
}

pub fn joints(i: &mut Input) {
    let (rules, shell) = (i.rules(), shell(i));
    let Some(joint) = i.joint() else { return };
    let materials = i.materials();
    if let Ok(analysis) = check::check(&joint, &materials, &rules) {
        let analysis: Analysis = black_box(analysis);
        keep(rating::joint_pressure(&joint, &materials, &analysis, &shell, &rules));
        let mut notes = Assumptions::new();
        keep(rating::joint_pressure_with(Hidden, &joint, &materials, &analysis, &shell, &rules, &mut notes));
    }
}

fn listed(notes: &Assumptions, i: &mut Input) {
    for a in Assumptions::iter(notes) {
        keep((Assumed::what(a.about), Assumed::unit(a.about), Assumed::is_circumstance(a.about), Basis::word(a.basis)));
    }
    keep((Assumptions::len(notes), Assumptions::is_empty(notes), Assumptions::lost(notes)));
    if let Some(about) = i.one_of(ASSUMED) {
        keep(Assumptions::find(notes, about, i.small()));
    }
}

fn figure(i: &mut Input) -> KnownLength {
    let figure = if i.yes() { KnownLength::measured(i.length()) } else { KnownLength::given(i.length()) };
    keep((KnownLength::length(&figure), KnownLength::basis(&figure)));
    figure
}

/// Any existing joint; what it holds is hidden from the compiler.
pub fn existing(i: &mut Input) -> Option<Existing> {
    let form = i.form()?;
    let mut old = Existing::new(form, figure(i), figure(i), i.length());
    loop {
        old = match i.small() {
            0 => Existing::other_plate(old, figure(i)),
            1 => Existing::straps(old, figure(i), i.maybe(figure)),
            2 => Existing::shell_plate(old, figure(i)),
            3 => Existing::nominal(old, i.length()),
            4 => Existing::hole(old, figure(i)),
            5 => Existing::row(old, i.index(), figure(i)),
            6 => Existing::back_pitch(old, i.index(), i.length()),
            7 => Existing::margin(old, i.length()),
            8 => {
                let metal = |i: &mut Input| if i.yes() { Metal::Steel } else { Metal::Iron };
                Existing::metals(old, metal(i), metal(i))
            }
            9 => Existing::tension(old, i.stress()),
            10 => Existing::shear(old, i.stress()),
            11 => Existing::bearing(old, i.stress()),
            12 => Existing::permissible(old),
            13 => Existing::safety(old, i.number()),
            14 => Existing::corrosion(old, i.length()),
            15 => Existing::service(old, service(i)),
            16 => Existing::present(old, Pressure::mpa(i.number())),
            17 => Existing::wastage_rate(old, i.length()),
            18 => Existing::earlier(old, i.length(), i.number()),
            _ => {
                keep((Existing::pitch(&old), Existing::present_pressure(&old)));
                keep((Existing::wastage(&old), Existing::earlier_plate(&old)));
                keep(Shell::corrosion_allowance(Existing::shell(&old)));
                return Some(black_box(old));
            }
        };
    }
}

pub fn rate(i: &mut Input) {
    let rules = i.rules();
    let Some(old) = existing(i) else { return };
    if let Ok(found) = rating::rate(&old, &rules) {
        seen(&found, i);
    }
}

pub fn rate_with(i: &mut Input) {
    with(Hidden, i);
    with(By(Name(Quantity::Plate, 0)), i);
}

fn with<C: Ctx>(c: C, i: &mut Input) {
    let rules = i.rules();
    let Some(old) = existing(i) else { return };
    if let Ok(found) = rating::rate_with(c, &old, &rules) {
        seen(&found, i);
        keep(Rating::values(found));
    }
}

fn seen<N: Num>(found: &Rating<N>, i: &mut Input) {
    keep(found);
    crate::check::seen(&found.analysis, i);
    listed(&found.assumptions, i);
}

pub fn boiler(i: &mut Input) {
    let rules = i.rules();
    let mut boiler = Boiler::new();
    let parts = [BoilerPart::Course, BoilerPart::Girth, BoilerPart::Head, BoilerPart::Tubes];
    while let Some(part) = i.one_of(&parts) {
        keep((BoilerPart::what(part), BoilerPart::computed_here(part)));
        keep(Boiler::add(&mut boiler, part, i.text(), Pressure::mpa(i.number())));
    }
    if let Some(old) = existing(i)
        && let Ok(found) = rating::rate(&old, &rules)
    {
        keep(Boiler::course(&mut boiler, i.text(), &found));
    }
    keep((Boiler::lines(&boiler), Boiler::governing(&boiler), Boiler::test_pressure(&boiler, &rules)));
}

//! Units and the arithmetic beneath everything.

use seamwright::math;
use seamwright::quantities::{Area, Force, Length, Moment, Pressure, Ratio, Stress};

use crate::input::{Input, keep};

macro_rules! both_ways {
    ($i:ident: $($make:path, $take:path;)*) => { $(
        let made = core::hint::black_box($make($i.number()));
        keep($take(made));
    )* };
}

pub fn quantities(i: &mut Input) {
    both_ways! { i:
        Length::mm, Length::to_mm;
        Length::inch, Length::to_inch;
        Length::m, Length::to_m;
        Length::foot, Length::to_foot;
        Area::mm2, Area::to_mm2;
        Area::inch2, Area::to_inch2;
        Area::m2, Area::to_m2;
        Force::n, Force::to_n;
        Force::kn, Force::to_kn;
        Force::lbf, Force::to_lbf;
        Force::kgf, Force::to_kgf;
        Force::long_ton, Force::to_long_ton;
        Moment::n_mm, Moment::to_n_mm;
        Moment::n_m, Moment::to_n_m;
        Moment::kn_m, Moment::to_kn_m;
        Moment::lbf_inch, Moment::to_lbf_inch;
        Stress::mpa, Stress::to_mpa;
        Stress::psi, Stress::to_psi;
        Stress::ksi, Stress::to_ksi;
        Stress::kgf_cm2, Stress::to_kgf_cm2;
        Stress::kgf_mm2, Stress::to_kgf_mm2;
        Stress::long_ton_in2, Stress::to_long_ton_in2;
        Pressure::mpa, Pressure::to_mpa;
        Pressure::bar, Pressure::to_bar;
        Pressure::psi, Pressure::to_psi;
        Pressure::kgf_cm2, Pressure::to_kgf_cm2;
        Ratio::new, Ratio::to_f64;
        Ratio::percent, Ratio::to_percent;
    }
}

pub fn math(i: &mut Input) {
    keep(math::sqrt(i.number()));
    keep(math::abs(i.number()));
    for f in [math::larger, math::smaller, math::round_down, math::round_up, math::round_nearest, math::direction] {
        keep(f(i.number(), i.number()));
    }
    for f in [math::at_least, math::at_most, math::below] {
        keep(f(i.number(), i.number()));
    }
}

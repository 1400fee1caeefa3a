//! Quantities: units in and out, and texts with their unit.

use core::ffi::c_char;

use seamwright::quantities::{Area, Force, Length, Moment, Pressure, Stress};

use crate::border::{self, Slot};
use crate::status::{answer, sw_error};

/// Millimetres.
pub const SW_LENGTH_MM: u32 = 0;
/// Inches of exactly 25.4 mm.
pub const SW_LENGTH_INCH: u32 = 1;
/// Metres.
pub const SW_LENGTH_M: u32 = 2;
/// Feet of twelve inches.
pub const SW_LENGTH_FOOT: u32 = 3;
/// Square millimetres.
pub const SW_AREA_MM2: u32 = 0;
/// Square inches.
pub const SW_AREA_INCH2: u32 = 1;
/// Square metres.
pub const SW_AREA_M2: u32 = 2;
/// Newtons.
pub const SW_FORCE_N: u32 = 0;
/// Kilonewtons.
pub const SW_FORCE_KN: u32 = 1;
/// Pounds-force.
pub const SW_FORCE_LBF: u32 = 2;
/// Kilograms-force.
pub const SW_FORCE_KGF: u32 = 3;
/// Long tons-force of 2240 lb.
pub const SW_FORCE_LONG_TON: u32 = 4;
/// Newton-millimetres.
pub const SW_MOMENT_NMM: u32 = 0;
/// Newton-metres.
pub const SW_MOMENT_NM: u32 = 1;
/// Kilonewton-metres.
pub const SW_MOMENT_KNM: u32 = 2;
/// Pound-force-inches.
pub const SW_MOMENT_LBF_INCH: u32 = 3;
/// Megapascals, or newtons per square millimetre.
pub const SW_STRESS_MPA: u32 = 0;
/// Pounds per square inch.
pub const SW_STRESS_PSI: u32 = 1;
/// Thousands of pounds per square inch.
pub const SW_STRESS_KSI: u32 = 2;
/// Kilograms-force per square centimetre.
pub const SW_STRESS_KGF_CM2: u32 = 3;
/// Kilograms-force per square millimetre.
pub const SW_STRESS_KGF_MM2: u32 = 4;
/// Long tons per square inch.
pub const SW_STRESS_LONG_TON_IN2: u32 = 5;
/// Megapascals.
pub const SW_PRESSURE_MPA: u32 = 0;
/// Bars.
pub const SW_PRESSURE_BAR: u32 = 1;
/// Pounds per square inch.
pub const SW_PRESSURE_PSI: u32 = 2;
/// Kilograms-force per square centimetre.
pub const SW_PRESSURE_KGF_CM2: u32 = 3;

/// A length of a unit (`SW_LENGTH_*`) in millimetres; not a number for an unknown unit.
#[unsafe(no_mangle)]
pub extern "C" fn sw_length_to_mm(value: f64, unit: u32) -> f64 {
    match unit {
        SW_LENGTH_MM => Length::mm(value).to_mm(),
        SW_LENGTH_INCH => Length::inch(value).to_mm(),
        SW_LENGTH_M => Length::m(value).to_mm(),
        SW_LENGTH_FOOT => Length::foot(value).to_mm(),
        _ => f64::NAN,
    }
}

/// A length in millimetres in a unit (`SW_LENGTH_*`); not a number for an unknown unit.
#[unsafe(no_mangle)]
pub extern "C" fn sw_length_from_mm(mm: f64, unit: u32) -> f64 {
    match unit {
        SW_LENGTH_MM => mm,
        SW_LENGTH_INCH => Length::mm(mm).to_inch(),
        SW_LENGTH_M => Length::mm(mm).to_m(),
        SW_LENGTH_FOOT => Length::mm(mm).to_foot(),
        _ => f64::NAN,
    }
}

/// A moment of a unit (`SW_MOMENT_*`) in newton-millimetres; not a number for an unknown unit.
#[unsafe(no_mangle)]
pub extern "C" fn sw_moment_to_nmm(value: f64, unit: u32) -> f64 {
    match unit {
        SW_MOMENT_NMM => Moment::n_mm(value).to_n_mm(),
        SW_MOMENT_NM => Moment::n_m(value).to_n_mm(),
        SW_MOMENT_KNM => Moment::kn_m(value).to_n_mm(),
        SW_MOMENT_LBF_INCH => Moment::lbf_inch(value).to_n_mm(),
        _ => f64::NAN,
    }
}

/// A moment in newton-millimetres in a unit (`SW_MOMENT_*`); not a number for an unknown unit.
#[unsafe(no_mangle)]
pub extern "C" fn sw_moment_from_nmm(nmm: f64, unit: u32) -> f64 {
    match unit {
        SW_MOMENT_NMM => nmm,
        SW_MOMENT_NM => Moment::n_mm(nmm).to_n_m(),
        SW_MOMENT_KNM => Moment::n_mm(nmm).to_kn_m(),
        SW_MOMENT_LBF_INCH => Moment::n_mm(nmm).to_lbf_inch(),
        _ => f64::NAN,
    }
}

/// An area of a unit (`SW_AREA_*`) in square millimetres; not a number for an unknown unit.
#[unsafe(no_mangle)]
pub extern "C" fn sw_area_to_mm2(value: f64, unit: u32) -> f64 {
    match unit {
        SW_AREA_MM2 => value,
        SW_AREA_INCH2 => Area::inch2(value).to_mm2(),
        SW_AREA_M2 => Area::m2(value).to_mm2(),
        _ => f64::NAN,
    }
}

/// An area in square millimetres in a unit (`SW_AREA_*`); not a number for an unknown unit.
#[unsafe(no_mangle)]
pub extern "C" fn sw_area_from_mm2(mm2: f64, unit: u32) -> f64 {
    match unit {
        SW_AREA_MM2 => mm2,
        SW_AREA_INCH2 => Area::mm2(mm2).to_inch2(),
        SW_AREA_M2 => Area::mm2(mm2).to_m2(),
        _ => f64::NAN,
    }
}

/// A force of a unit (`SW_FORCE_*`) in newtons; not a number for an unknown unit.
#[unsafe(no_mangle)]
pub extern "C" fn sw_force_to_n(value: f64, unit: u32) -> f64 {
    match unit {
        SW_FORCE_N => value,
        SW_FORCE_KN => Force::kn(value).to_n(),
        SW_FORCE_LBF => Force::lbf(value).to_n(),
        SW_FORCE_KGF => Force::kgf(value).to_n(),
        SW_FORCE_LONG_TON => Force::long_ton(value).to_n(),
        _ => f64::NAN,
    }
}

/// A force in newtons in a unit (`SW_FORCE_*`); not a number for an unknown unit.
#[unsafe(no_mangle)]
pub extern "C" fn sw_force_from_n(n: f64, unit: u32) -> f64 {
    match unit {
        SW_FORCE_N => n,
        SW_FORCE_KN => Force::n(n).to_kn(),
        SW_FORCE_LBF => Force::n(n).to_lbf(),
        SW_FORCE_KGF => Force::n(n).to_kgf(),
        SW_FORCE_LONG_TON => Force::n(n).to_long_ton(),
        _ => f64::NAN,
    }
}

/// A stress of a unit (`SW_STRESS_*`) in megapascals; not a number for an unknown unit.
#[unsafe(no_mangle)]
pub extern "C" fn sw_stress_to_mpa(value: f64, unit: u32) -> f64 {
    match unit {
        SW_STRESS_MPA => value,
        SW_STRESS_PSI => Stress::psi(value).to_mpa(),
        SW_STRESS_KSI => Stress::ksi(value).to_mpa(),
        SW_STRESS_KGF_CM2 => Stress::kgf_cm2(value).to_mpa(),
        SW_STRESS_KGF_MM2 => Stress::kgf_mm2(value).to_mpa(),
        SW_STRESS_LONG_TON_IN2 => Stress::long_ton_in2(value).to_mpa(),
        _ => f64::NAN,
    }
}

/// A stress in megapascals in a unit (`SW_STRESS_*`); not a number for an unknown unit.
#[unsafe(no_mangle)]
pub extern "C" fn sw_stress_from_mpa(mpa: f64, unit: u32) -> f64 {
    match unit {
        SW_STRESS_MPA => mpa,
        SW_STRESS_PSI => Stress::mpa(mpa).to_psi(),
        SW_STRESS_KSI => Stress::mpa(mpa).to_ksi(),
        SW_STRESS_KGF_CM2 => Stress::mpa(mpa).to_kgf_cm2(),
        SW_STRESS_KGF_MM2 => Stress::mpa(mpa).to_kgf_mm2(),
        SW_STRESS_LONG_TON_IN2 => Stress::mpa(mpa).to_long_ton_in2(),
        _ => f64::NAN,
    }
}

/// A gauge pressure of a unit (`SW_PRESSURE_*`) in megapascals; not a number for an unknown unit.
#[unsafe(no_mangle)]
pub extern "C" fn sw_pressure_to_mpa(value: f64, unit: u32) -> f64 {
    match unit {
        SW_PRESSURE_MPA => value,
        SW_PRESSURE_BAR => Pressure::bar(value).to_mpa(),
        SW_PRESSURE_PSI => Pressure::psi(value).to_mpa(),
        SW_PRESSURE_KGF_CM2 => Pressure::kgf_cm2(value).to_mpa(),
        _ => f64::NAN,
    }
}

/// A gauge pressure in megapascals in a unit (`SW_PRESSURE_*`); not a number for an unknown unit.
#[unsafe(no_mangle)]
pub extern "C" fn sw_pressure_from_mpa(mpa: f64, unit: u32) -> f64 {
    match unit {
        SW_PRESSURE_MPA => mpa,
        SW_PRESSURE_BAR => Pressure::mpa(mpa).to_bar(),
        SW_PRESSURE_PSI => Pressure::mpa(mpa).to_psi(),
        SW_PRESSURE_KGF_CM2 => Pressure::mpa(mpa).to_kgf_cm2(),
        _ => f64::NAN,
    }
}

/// Reads a length with its unit, as in `12 mm` or `13/16 in`. A bare number is refused (`SW_UNREADABLE`).
#[unsafe(no_mangle)]
pub extern "C" fn sw_length_parse(text: *const c_char, mm: *mut f64, error: *mut sw_error) -> u32 {
    answer(error, || {
        let out = Slot::needed(mm, 2)?;
        out.put(Length::parse(border::text(text, 1)?)?.to_mm());
        Ok(())
    })
}

/// Reads a stress with its unit, as in `80 MPa`, `11 ksi` or `28 tons/in2`. A bare number is refused (`SW_UNREADABLE`).
#[unsafe(no_mangle)]
pub extern "C" fn sw_stress_parse(text: *const c_char, mpa: *mut f64, error: *mut sw_error) -> u32 {
    answer(error, || {
        let out = Slot::needed(mpa, 2)?;
        out.put(Stress::parse(border::text(text, 1)?)?.to_mpa());
        Ok(())
    })
}

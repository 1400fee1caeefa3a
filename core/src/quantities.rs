//! Quantities with units, from exact definitions: the door through which every dimensioned number enters and leaves.
//!
//! Inside, lengths are millimetres, forces newtons, stresses and pressures newtons per square millimetre. The inch is
//! 25.4 mm (1959 agreement), the pound 0.453 592 37 kg, standard gravity 9.806 65 m/s² (3rd CGPM, 1901), the long ton
//! 2240 lb. Constructors store what they get; ranges are checked where a value is used, so that one table of bounds
//! serves all units.

use crate::bounds::Field;
use crate::error::{Error, ErrorKind};
use crate::text;

/// Standard gravity, m/s².
const GRAVITY: f64 = 9.806_65;
/// The pound in kilograms.
const POUND: f64 = 0.453_592_37;
/// The inch in millimetres.
const INCH: f64 = 25.4;
/// The pound-force in newtons.
const POUND_FORCE: f64 = POUND * GRAVITY;
/// A pound-force per square inch in megapascals.
const PSI: f64 = POUND_FORCE / (INCH * INCH);

macro_rules! quantity {
    ($(#[$doc:meta])* $name:ident { $($(#[$udoc:meta])* $unit:ident $to:ident $factor:expr;)* }) => {
        $(#[$doc])*
        #[derive(Clone, Copy, PartialEq, PartialOrd, Debug, Default)]
        #[repr(transparent)]
        pub struct $name(f64);

        impl $name {
            $(
                $(#[$udoc])*
                #[must_use]
                #[inline(always)]
                pub const fn $unit(x: f64) -> Self { Self(x * $factor) }

                $(#[$udoc])*
                #[must_use]
                #[inline(always)]
                pub const fn $to(self) -> f64 { self.0 / $factor }
            )*
        }
    };
}

quantity! {
    /// A length, kept in millimetres.
    ///
    /// ```
    /// use seamwright::quantities::Length;
    /// assert_eq!(Length::inch(0.5).to_mm(), 12.7);
    /// ```
    Length {
        /// Millimetres.
        mm to_mm 1.0;
        /// Inches of exactly 25.4 mm.
        inch to_inch INCH;
        /// Metres.
        m to_m 1000.0;
        /// Feet of twelve inches.
        foot to_foot (12.0 * INCH);
    }
}

quantity! {
    /// An area, kept in square millimetres.
    Area {
        /// Square millimetres.
        mm2 to_mm2 1.0;
        /// Square inches.
        inch2 to_inch2 (INCH * INCH);
        /// Square metres.
        m2 to_m2 1e6;
    }
}

quantity! {
    /// A force, kept in newtons.
    Force {
        /// Newtons.
        n to_n 1.0;
        /// Kilonewtons.
        kn to_kn 1000.0;
        /// Pounds-force.
        lbf to_lbf POUND_FORCE;
        /// Kilograms-force.
        kgf to_kgf GRAVITY;
        /// Long tons-force of 2240 lb.
        long_ton to_long_ton (2240.0 * POUND_FORCE);
    }
}

quantity! {
    /// A moment, kept in newton-millimetres.
    ///
    /// ```
    /// use seamwright::quantities::Moment;
    /// assert_eq!(Moment::kn_m(20.0).to_n_mm(), 2e7);
    /// ```
    Moment {
        /// Newton-millimetres.
        n_mm to_n_mm 1.0;
        /// Newton-metres.
        n_m to_n_m 1000.0;
        /// Kilonewton-metres.
        kn_m to_kn_m 1e6;
        /// Pound-force-inches.
        lbf_inch to_lbf_inch (POUND_FORCE * INCH);
    }
}

quantity! {
    /// A stress, kept in megapascals (newtons per square millimetre).
    Stress {
        /// Megapascals, or newtons per square millimetre.
        mpa to_mpa 1.0;
        /// Pounds per square inch.
        psi to_psi PSI;
        /// Thousands of pounds per square inch.
        ksi to_ksi (1000.0 * PSI);
        /// Kilograms-force per square centimetre.
        kgf_cm2 to_kgf_cm2 (GRAVITY / 100.0);
        /// Kilograms-force per square millimetre.
        kgf_mm2 to_kgf_mm2 GRAVITY;
        /// Long tons per square inch, the unit of old British and Indian sources.
        long_ton_in2 to_long_ton_in2 (2240.0 * PSI);
    }
}

quantity! {
    /// A gauge pressure, kept in megapascals.
    Pressure {
        /// Megapascals.
        mpa to_mpa 1.0;
        /// Bars.
        bar to_bar 0.1;
        /// Pounds per square inch.
        psi to_psi PSI;
        /// Kilograms-force per square centimetre, the technical atmosphere.
        kgf_cm2 to_kgf_cm2 (GRAVITY / 100.0);
    }
}

quantity! {
    /// A pure number, such as an efficiency.
    Ratio {
        /// A fraction of one.
        new to_f64 1.0;
        /// Hundredths.
        percent to_percent 0.01;
    }
}

/// A number and the unit written after it.
fn split(written: &str) -> Result<(f64, &str), Error> {
    let unreadable = Error::new(ErrorKind::Unreadable, Field::Text);
    let begins = |c: char| c.is_ascii_alphabetic() || c == '"';
    let (number, unit) = match written.find(begins) {
        Some(at) => (written.get(..at).unwrap_or(""), written.get(at..).unwrap_or("")),
        None => (written, ""),
    };
    let value = text::parse_number(number.trim()).map_err(|_| unreadable)?;
    Ok((value, unit.trim()))
}

impl Length {
    /// Reads a length with its unit: `12 mm`, `0.5 in`, `13/16 in`, `1 5/8"`, `1.2 m`, `6 ft`. A bare number is
    /// refused: it could be either.
    ///
    /// # Errors
    /// [`ErrorKind::Unreadable`], with the number where there was one.
    ///
    /// ```
    /// use seamwright::quantities::Length;
    /// assert_eq!(Length::parse("1 5/8 in")?.to_inch(), 1.625);
    /// assert!(Length::parse("12").is_err());
    /// # Ok::<(), seamwright::Error>(())
    /// ```
    pub fn parse(written: &str) -> Result<Self, Error> {
        let (value, unit) = split(written)?;
        Ok(match unit {
            "mm" => Length::mm(value),
            "in" | "inch" | "inches" | "\"" => Length::inch(value),
            "m" => Length::m(value),
            "ft" | "foot" | "feet" => Length::foot(value),
            _ => return Err(Error::new(ErrorKind::Unreadable, Field::Text).value(value)),
        })
    }
}

impl Stress {
    /// Reads a stress with its unit: `80 MPa`, `80 N/mm2`, `11000 psi`, `11 ksi`, `700 kgf/cm2`, `36 kgf/mm2`,
    /// `28 tons/in2` (long tons).
    ///
    /// # Errors
    /// [`ErrorKind::Unreadable`], with the number where there was one.
    ///
    /// ```
    /// use seamwright::quantities::Stress;
    /// assert_eq!(Stress::parse("11 ksi")?, Stress::ksi(11.0));
    /// assert!(Stress::parse("80").is_err());
    /// # Ok::<(), seamwright::Error>(())
    /// ```
    pub fn parse(written: &str) -> Result<Self, Error> {
        let (value, unit) = split(written)?;
        Ok(match unit {
            "MPa" | "N/mm2" => Stress::mpa(value),
            "psi" => Stress::psi(value),
            "ksi" => Stress::ksi(value),
            "kgf/cm2" => Stress::kgf_cm2(value),
            "kgf/mm2" => Stress::kgf_mm2(value),
            "tons/in2" | "ton/in2" => Stress::long_ton_in2(value),
            _ => return Err(Error::new(ErrorKind::Unreadable, Field::Text).value(value)),
        })
    }
}

//! Figures as people print them: a value, and what its digits leave open.

use crate::bounds::{Field, Unit};
use crate::error::{Error, ErrorKind};
use crate::math;
use crate::step::Name;
use crate::text::parse_number;

/// Most figures of one case.
pub const MAX_FIGURES: usize = 24;
/// Up to so many figures the zeros at the end of a whole number are taken as meant.
const MEANT: u32 = 4;
/// From so many figures on a figure may have been cut off instead of rounded.
const CUT_OFF: u32 = 5;

/// One stated figure.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Figure {
    /// What it is about: a quantity of the working and its row. [`Quantity::ShearAll`](crate::step::Quantity) and
    /// [`Quantity::BearingAll`](crate::step::Quantity) of row 0 are those of all rows,
    /// [`Quantity::TearOuter`](crate::step::Quantity) is the plate's weaker outer row.
    pub name: Name,
    /// The value, in the unit of the quantity.
    pub value: f64,
    /// How far a computed value may lie below it.
    pub below: f64,
    /// How far a computed value may lie above it.
    pub above: f64,
    /// The printed digits as a whole number, where it was printed; 0 otherwise.
    pub(super) units: u64,
    /// The size of its last digit.
    pub(super) last: f64,
}

impl Figure {
    /// A figure known within `slack` either way.
    ///
    /// # Errors
    /// A value that is not finite, or a slack that is not above 0.
    pub fn within(name: Name, value: f64, slack: f64) -> Result<Self, Error> {
        let error = |kind, value: f64| Error::new(kind, Field::Figure).value(value);
        if !value.is_finite() {
            return Err(error(ErrorKind::NotFinite, value));
        }
        if !(slack.is_finite() && slack > 0.0) {
            return Err(error(ErrorKind::TooSmall, slack).limit(0.0));
        }
        Ok(Figure { name, value, below: slack, above: slack, units: 0, last: 0.0 })
    }

    /// A name that nothing is stated about.
    pub(super) const fn nothing(name: Name) -> Self {
        Figure { name, value: 0.0, below: 1.0, above: 1.0, units: 0, last: 0.0 }
    }

    /// A figure as it is printed, `scale` being the printed unit in the unit of the quantity: 1 for N and mm, 1000 for
    /// kN, 0.01 for per cent, 25.4 for inches.
    ///
    /// Half a unit of the last digit is left open either way. Zeros at the end of a whole number count as digits up to
    /// the fourth figure: `314160` is open by 5, `32800` by 5, `60` by 0.5. A figure of five digits or more may have
    /// been cut off instead of rounded.
    ///
    /// # Errors
    /// [`ErrorKind::Unreadable`]; a scale that is not above 0.
    ///
    /// ```
    /// use seamwright::{error::ErrorKind, reconcile::Figure, step::{Name, Quantity}};
    /// let eta = Figure::printed(Name(Quantity::BookEfficiency, 0), "67.5", 0.01)?;
    /// assert!((eta.value - 0.675).abs() < 1e-12 && (eta.below - 0.0005).abs() < 1e-12);
    /// let bad = Figure::printed(Name(Quantity::BookEfficiency, 0), "67.5 %", 0.01);
    /// assert_eq!(bad.unwrap_err().kind, ErrorKind::Unreadable);
    /// # Ok::<(), seamwright::Error>(())
    /// ```
    pub fn printed(name: Name, text: &str, scale: f64) -> Result<Self, Error> {
        let bare = parse_number(text).map_err(|_| Error::new(ErrorKind::Unreadable, Field::Figure))?;
        if !(scale.is_finite() && scale > 0.0) {
            return Err(Error::new(ErrorKind::TooSmall, Field::Figure).value(scale).limit(0.0));
        }
        let (digits, last) = last_digit(text);
        let last = last * scale;
        let value = bare * scale;
        let mut figure = Figure::within(name, value, 0.5 * last)?;
        let units = math::round_nearest(math::abs(value) / last, 1.0);
        // Above 2^53 there are no digits left to speak of.
        if (1.0..9e15).contains(&units) {
            figure.units = units as u64;
            figure.last = last;
        }
        if digits >= CUT_OFF {
            // Cut off: what is meant may be up to a whole last digit more than what is printed.
            figure.above = last;
        }
        Ok(figure)
    }

    /// Whether a computed value is this figure.
    #[must_use]
    pub fn is(&self, computed: f64) -> bool {
        let ulp = math::TOLERANCE * math::abs(self.value);
        computed >= self.value - self.below - ulp && computed <= self.value + self.above + ulp
    }

    /// How far a computed value lies away, in widths of what the figure leaves open: 0 when it is met exactly, under 1
    /// when it is met.
    #[must_use]
    pub fn miss(&self, computed: f64) -> f64 {
        let off = computed - self.value;
        if !off.is_finite() {
            return f64::MAX;
        }
        if off < 0.0 { -off / self.below } else { off / self.above }
    }

    /// The chance that a figure drawn anywhere within half to one and a half of this one is met by one given value.
    #[must_use]
    pub fn chance(&self) -> f64 {
        let range = math::abs(self.value);
        let open = self.below + self.above;
        if open < range { open / range } else { 1.0 }
    }

    /// Whether the computed value, its further digits cut off, is this figure.
    pub(super) fn is_cut_off(&self, computed: f64) -> bool {
        let off = math::abs(computed) - math::abs(self.value);
        off >= 0.0 && off < self.last
    }

    /// Whether two neighbouring digits changed over turn this figure into the computed value.
    pub(super) fn is_transposed(&self, computed: f64) -> bool {
        places().any(|low| {
            let (above, low_and_left) = split(self.units, low.wrapping_mul(100));
            let (two, rest) = split(low_and_left, low);
            let (left, right) = split(two, 10);
            let turned = right.wrapping_mul(10).wrapping_add(left);
            let whole = above.wrapping_mul(100).wrapping_add(turned).wrapping_mul(low).wrapping_add(rest);
            // The digit in front of the first is no digit.
            two > 9 && left != right && self.meets(whole, self.last, computed)
        })
    }

    /// Whether one digit put back somewhere turns this figure into the computed value.
    pub(super) fn has_dropped(&self, computed: f64) -> bool {
        places().take_while(|low| *low <= self.units.saturating_mul(10)).any(|low| {
            let (high, rest) = split(self.units, low);
            (0..10).any(|digit| {
                let whole = high.wrapping_mul(10).wrapping_add(digit).wrapping_mul(low).wrapping_add(rest);
                // Lost before the decimal mark, or behind it.
                self.meets(whole, self.last, computed) || self.meets(whole, self.last / 10.0, computed)
            })
        })
    }

    fn meets(&self, units: u64, last: f64, computed: f64) -> bool {
        let value = units as f64 * last;
        units != self.units && math::abs(math::abs(computed) - value) <= 0.5 * last * (1.0 + math::TOLERANCE)
    }

    /// The unit of its quantity.
    #[must_use]
    pub const fn unit(&self) -> Unit {
        self.name.0.unit()
    }
}

/// The values of the decimal places of a whole number, up to the fifteenth.
fn places() -> impl Iterator<Item = u64> {
    (0..15).scan(1_u64, |place, _| {
        let here = *place;
        *place = place.wrapping_mul(10);
        Some(here)
    })
}

/// The digits from a place on, and those below it.
fn split(units: u64, place: u64) -> (u64, u64) {
    (units.checked_div(place).unwrap_or(0), units.checked_rem(place).unwrap_or(0))
}

/// How many figures a printed number has, and the size of its last digit.
fn last_digit(text: &str) -> (u32, f64) {
    let (mut figures, mut zeros, mut decimals) = (0_u32, 0_u32, 0_i32);
    let (mut marked, mut power, mut over) = (false, 0_i32, 0.0_f64);
    let mut bytes = text.bytes();
    while let Some(byte) = bytes.next() {
        match byte {
            b'0'..=b'9' => {
                if figures > 0 || byte != b'0' {
                    figures = figures.saturating_add(1);
                    zeros = if byte == b'0' { zeros.saturating_add(1) } else { 0 };
                }
                decimals = decimals.saturating_add(i32::from(marked));
            }
            b'.' | b',' => marked = true,
            b'e' | b'E' => {
                let (mut minus, mut read) = (false, 0_i32);
                for byte in bytes.by_ref() {
                    match byte {
                        b'-' => minus = true,
                        b'0'..=b'9' => {
                            read = read.saturating_mul(10).saturating_add(i32::from(byte.wrapping_sub(b'0')))
                        }
                        _ => {}
                    }
                }
                power = if minus { read.saturating_neg() } else { read };
            }
            // A fraction is known to the size of its denominator.
            b'/' => {
                for byte in bytes.by_ref() {
                    if byte.is_ascii_digit() {
                        over = over * 10.0 + f64::from(byte.wrapping_sub(b'0'));
                    }
                }
            }
            _ => {}
        }
    }
    if over > 0.0 {
        return (figures, 1.0 / over);
    }
    let loose = if marked { 0 } else { zeros.min(figures.saturating_sub(MEANT)) };
    let place = power.saturating_sub(decimals).saturating_add(i32::try_from(loose).unwrap_or(0));
    (figures.saturating_sub(loose), ten_to(place))
}

/// A power of ten.
pub(super) fn ten_to(power: i32) -> f64 {
    let mut ten = 1.0;
    for _ in 0..power.unsigned_abs().min(40) {
        ten *= 10.0;
    }
    if power < 0 { 1.0 / ten } else { ten }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn digits_say_what_is_left_open() {
        let near = |(n, x): (u32, f64), m: u32, y: f64| n == m && (x - y).abs() <= 1e-12 * y;
        assert!(near(last_digit("67.5"), 3, 0.1));
        assert!(near(last_digit("0.0675"), 3, 0.0001));
        assert!(near(last_digit("314160"), 5, 10.0));
        assert!(near(last_digit("300000"), 4, 100.0));
        assert!(near(last_digit("60"), 2, 1.0));
        assert!(near(last_digit("3.1416e5"), 5, 10.0));
        assert!(near(last_digit("60.0"), 3, 0.1));
        assert!(near(last_digit("1 5/8"), 2, 0.125) || near(last_digit("1 5/8"), 2, 0.125));
    }
}

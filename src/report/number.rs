//! Numbers as people read them: rounded, with a true minus sign, times in fitting units.

use crate::decimal::{exponent, mantissa, push_digits, with_decimals};
use crate::physics::units::{DAYS_PER_YEAR, DEGREES_PER_RADIAN, SECONDS_PER_DAY, SECONDS_PER_HOUR};

/// The minus sign (U+2212), as wide as a plus.
pub const MINUS: char = '−';

/// A thin space that does not break, between groups of three digits.
const GROUP: char = '\u{202f}';

/// `value` with a fixed number of decimals: "−1234.50". A value that rounds to zero carries no sign.
pub fn fixed(value: f64, decimals: usize) -> String {
    let digits = with_decimals(value, decimals);
    let (sign, digits) = digits
        .strip_prefix('-')
        .map_or(("", &*digits), |digits| ("−", digits));
    let (whole, fraction) = digits.split_once('.').unwrap_or((digits, ""));
    let mut text = String::from(sign);
    push_grouped(&mut text, whole);
    if !fraction.is_empty() {
        text.push('.');
        text.push_str(fraction);
    }
    text
}

/// The digits of a whole number in groups of three, where there are more than four.
fn push_grouped(text: &mut String, whole: &str) {
    for (i, digit) in whole.chars().enumerate() {
        let left = whole.len() - i;
        if i > 0 && left.is_multiple_of(3) && whole.len() > 4 {
            text.push(GROUP);
        }
        text.push(digit);
    }
}

/// The text of a number with a plus in front when the number is positive; a text of zeros carries none.
pub(super) fn signed(text: String, value: f64) -> String {
    let is_zero = !text.bytes().any(|byte| matches!(byte, b'1'..=b'9'));
    if is_zero || value < 0.0 {
        text
    } else {
        String::from("+") + &text
    }
}

/// `value` with about `digits` significant digits, whatever its size: "0.0123", "571 936", "3.3 × 10⁻²⁴".
pub fn significant(value: f64, digits: usize) -> String {
    let size = value.abs();
    if size == 0.0 {
        return "0".into();
    }
    if !is_plain(value) {
        return scientific(value, digits);
    }
    // A cast from a negative number to usize gives 0: a large number has no decimals.
    let decimals = (digits as f64 - 1.0 - f64::from(exponent(size))) as usize;
    fixed(value, decimals)
}

/// Whether a number other than 0 is shown without a power of ten.
fn is_plain(value: f64) -> bool {
    (1e-3..1e7).contains(&value.abs())
}

/// `value` as a decimal number times a power of ten, with a raised exponent.
fn scientific(value: f64, digits: usize) -> String {
    const RAISED: [char; 10] = ['⁰', '¹', '²', '³', '⁴', '⁵', '⁶', '⁷', '⁸', '⁹'];
    let (mantissa, exponent) = mantissa(value, digits.max(1));
    let mut text = String::from(if value < 0.0 { "−" } else { "" });
    text.push_str(&mantissa);
    text.push_str(if exponent < 0 { " × 10⁻" } else { " × 10" });
    let mut plain = String::new();
    push_digits(&mut plain, exponent.unsigned_abs().into(), 1);
    text.extend(plain.bytes().map(|digit| RAISED[usize::from(digit - b'0')]));
    text
}

/// An angle given in radians, in degrees with `decimals`: "94.2°".
pub fn degrees(radians: f64, decimals: usize) -> String {
    fixed(radians * DEGREES_PER_RADIAN, decimals) + "°"
}

/// [`significant`] without trailing zeros: "8", "55.7", for numbers that a person chose.
pub fn short(value: f64, digits: usize) -> String {
    let mut text = significant(value, digits);
    if is_plain(value) && text.as_bytes().contains(&b'.') {
        while text.as_bytes().ends_with(b"0") {
            text.truncate(text.len() - 1);
        }
        if text.as_bytes().ends_with(b".") {
            text.truncate(text.len() - 1);
        }
    }
    text
}

/// A length of time, s, in the unit that fits: "12.0 seconds", "3.40 hours", "1.15 days", "2.30 years".
pub fn span(seconds: f64) -> String {
    let (value, unit) = in_fitting_unit(seconds);
    significant(value, 3) + " " + unit
}

/// A round length of time, s: "6 hours".
pub fn short_span(seconds: f64) -> String {
    let (value, unit) = in_fitting_unit(seconds);
    let text = short(value, 3);
    let unit = if text == "1" {
        unit.trim_end_matches('s')
    } else {
        unit
    };
    text + " " + unit
}

fn in_fitting_unit(seconds: f64) -> (f64, &'static str) {
    let size = seconds.abs();
    match size {
        s if s < 60.0 => (size, "seconds"),
        s if s < SECONDS_PER_HOUR => (size / 60.0, "minutes"),
        s if s < SECONDS_PER_DAY => (size / SECONDS_PER_HOUR, "hours"),
        s if s < 2.0 * DAYS_PER_YEAR * SECONDS_PER_DAY => (size / SECONDS_PER_DAY, "days"),
        _ => (size / SECONDS_PER_DAY / DAYS_PER_YEAR, "years"),
    }
}

/// A moment, s after periapsis, in words: "1.15 days after periapsis".
pub fn moment(seconds: f64) -> String {
    match seconds {
        s if s.abs() < 0.5 => "at periapsis".into(),
        s if s < 0.0 => span(s) + " before periapsis",
        s => span(s) + " after periapsis",
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn zero_has_no_sign_however_it_came_about() {
        assert_eq!(fixed(-0.001, 2), "0.00");
        assert_eq!(signed(fixed(0.004, 2), 0.004), "0.00");
        assert_eq!(signed(fixed(10.9, 2), 10.9), "+10.90");
    }

    #[test]
    fn long_numbers_are_grouped_and_small_ones_are_powers_of_ten() {
        assert_eq!(fixed(571_936.0, 0), "571\u{202f}936");
        assert_eq!(fixed(-1234.5, 1), "−1234.5");
        assert_eq!(significant(-3.3e-24, 2), "−3.3 × 10⁻²⁴");
        assert_eq!(significant(0.012_34, 3), "0.0123");
    }

    #[test]
    fn times_take_the_unit_that_fits() {
        assert_eq!(moment(99_360.0), "1.15 days after periapsis");
        assert_eq!(moment(-7_200.0), "2.00 hours before periapsis");
        assert_eq!(moment(0.0), "at periapsis");
    }
}

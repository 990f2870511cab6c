//! Numbers as decimal text, and back: the same text and the same bits natively and in the browser.
//!
//! The standard library's float formatting and parsing would add about 20 kB to the download, and every browser has both
//! already. So this file is the one place outside `web/` that asks the platform: for the shortest decimal that
//! reads back to the same bits, and for the double nearest to a decimal. ECMAScript specifies both as the standard
//! library does (ECMA-262, `Number::toString` and `StringToNumber`); a browser test compares the two sides. Rounding
//! to a number of decimals is plain arithmetic, so that both sides round ties alike.

/// The shortest decimal text that reads back to the same bits: "8", "0.1", "1e-7", "-0". Plain digits from 1e-6 up to
/// 1e21, an exponent beyond. `value` has to be finite.
pub fn shortest(value: f64) -> String {
    if value == 0.0 {
        return if value.is_sign_negative() {
            "-0".into()
        } else {
            "0".into()
        };
    }
    platform::shortest(value)
}

/// The finite number that a decimal text stands for; `None` for anything else, infinities and words included.
pub fn parse(text: &str) -> Option<f64> {
    if is_decimal(text) {
        Some(platform::parse(text)).filter(|value| value.is_finite())
    } else {
        None
    }
}

/// The digits of `value` rounded to a number of decimals (at most 15), without grouping: "-1234.50". A value that
/// rounds to zero has no sign. Beyond 2^53 units of the last place the digits are those of [`shortest`].
pub fn with_decimals(value: f64, decimals: usize) -> String {
    let units = (value.abs() * POWERS[decimals]).round();
    if units >= LARGEST_WHOLE {
        return shortest(value);
    }
    let sign = if value < 0.0 && units > 0.0 { "-" } else { "" };
    let (units, one) = (units as u64, POWERS[decimals] as u64);
    let mut text = String::from(sign);
    push_digits(&mut text, units / one, 1);
    if decimals > 0 {
        text.push('.');
        push_digits(&mut text, units % one, decimals);
    }
    text
}

/// Adds the digits of a whole number, with zeros in front where there are fewer than `least`.
pub fn push_digits(text: &mut String, whole: u64, least: usize) {
    if whole >= 10 || least > 1 {
        push_digits(text, whole / 10, least.saturating_sub(1));
    }
    text.push(char::from(b'0' + (whole % 10) as u8));
}

/// `value` rounded to a number of significant digits: the double nearest to that decimal, without a tail, as long as
/// the decimal's power of ten is within 22 of 0.
pub fn round_significant(value: f64, digits: usize) -> f64 {
    if value == 0.0 || !value.is_finite() {
        return value;
    }
    let places = i32::try_from(digits).unwrap_or(i32::MAX) - 1 - exponent(value);
    if places >= 0 {
        (value * power_of_ten(places)).round() / power_of_ten(places)
    } else {
        (value / power_of_ten(-places)).round() * power_of_ten(-places)
    }
}

/// The power of ten of the first digit of a number other than 0: 2 for 571.9, -2 for 0.0123.
pub fn exponent(value: f64) -> i32 {
    let size = value.abs();
    let binary = (size.to_bits() >> 52) as i32 - 1023;
    let mut power = (f64::from(binary) * std::f64::consts::LOG10_2).floor() as i32;
    // The binary exponent alone may be one short; that of the very smallest numbers says nothing.
    while size >= power_of_ten(power + 1) {
        power += 1;
    }
    while size < power_of_ten(power) {
        power -= 1;
    }
    power
}

/// The first `digits` digits of a number other than 0 with a point after the first, and the power of ten that goes with
/// them: ("3.3", -24). No sign.
pub fn mantissa(value: f64, digits: usize) -> (String, i32) {
    let exponent = exponent(value);
    // In two steps, because ten to the power of -exponent can be out of range where the value is not.
    let half = exponent / 2;
    let scaled = value.abs() / power_of_ten(half) / power_of_ten(exponent - half);
    let text = with_decimals(scaled, digits - 1);
    if text.starts_with("10") {
        (with_decimals(1.0, digits - 1), exponent + 1)
    } else {
        (text, exponent)
    }
}

/// `value` kept from `low` to `high`. `f64::clamp` would panic when they are the wrong way round, and the message of
/// that panic alone would bring the standard library's float formatting along.
#[inline(never)] // It is called from many places, and a call is smaller than what it does.
pub fn within(value: f64, low: f64, high: f64) -> f64 {
    value.max(low).min(high)
}

/// The double nearest to ten to a whole power: 0 or infinity beyond what a double holds.
pub fn power_of_ten(power: i32) -> f64 {
    match usize::try_from(power) {
        Ok(power) if power < POWERS.len() => POWERS[power],
        _ => {
            let mut text = String::from(if power < 0 { "1e-" } else { "1e" });
            push_digits(&mut text, power.unsigned_abs().into(), 1);
            platform::parse(&text)
        }
    }
}

/// Whole numbers below this are exact.
const LARGEST_WHOLE: f64 = 9_007_199_254_740_992.0;

/// The powers of ten that a double holds exactly.
const POWERS: [f64; 23] = [
    1e0, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15, 1e16,
    1e17, 1e18, 1e19, 1e20, 1e21, 1e22,
];

/// Whether a text has nothing in it but what a decimal can have. The platform then refuses what is still none; without
/// this it would read words, hexadecimal digits and spaces.
fn is_decimal(text: &str) -> bool {
    let allowed = |byte| matches!(byte, b'0'..=b'9' | b'+' | b'-' | b'.' | b'e' | b'E');
    !text.is_empty() && text.bytes().all(allowed)
}

#[cfg(not(target_arch = "wasm32"))]
mod platform {
    pub(super) fn shortest(value: f64) -> String {
        let plain = (1e-6..1e21).contains(&value.abs());
        if plain {
            format!("{value}")
        } else {
            format!("{value:e}")
        }
    }

    pub(super) fn parse(text: &str) -> f64 {
        text.parse().unwrap_or(f64::NAN)
    }
}

#[cfg(target_arch = "wasm32")]
mod platform {
    use js_sys::{Number, Object};
    use wasm_bindgen::JsValue;

    pub(super) fn shortest(value: f64) -> String {
        let text = Object::to_string(Number::from(value).as_ref());
        String::from(text).replace('+', "")
    }

    pub(super) fn parse(text: &str) -> f64 {
        JsValue::from_str(text).unchecked_into_f64()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn decimals_are_rounded_and_zero_has_no_sign() {
        let cases = [
            (1234.5, 2, "1234.50"),
            (-0.004, 2, "0.00"),
            (-0.006, 2, "-0.01"),
            (0.05, 3, "0.050"),
            (7.5, 0, "8"),
        ];
        for (value, decimals, text) in cases {
            assert_eq!(with_decimals(value, decimals), text);
        }
        assert_eq!(with_decimals(1e300, 2), "1e300");
    }

    #[test]
    fn rounded_numbers_have_no_tail() {
        for (value, digits, rounded) in [
            (0.300_000_000_000_000_04, 12, 0.3),
            (571_936.4, 3, 572_000.0),
            (1000.0, 3, 1000.0),
        ] {
            assert_eq!(
                round_significant(value, digits).to_bits(),
                f64::to_bits(rounded)
            );
        }
    }

    #[test]
    fn powers_of_ten_know_their_exponent() {
        for power in -300..=300 {
            let value: f64 = format!("1e{power}").parse().expect("a decimal");
            assert_eq!(mantissa(value, 2), ("1.0".to_owned(), power));
        }
        assert_eq!(mantissa(9.99e-7, 2), ("1.0".to_owned(), -6));
        assert_eq!(mantissa(5e-324, 3).1, -324);
    }

    #[test]
    fn only_decimals_are_numbers() {
        for good in ["8", "-8.5", "+.5", "5.", "1e5", "1E-5", "13.31179130307133"] {
            assert_eq!(parse(good), good.parse().ok(), "{good}");
        }
        for bad in [
            "", ".", "e5", "1e", "NaN", "inf", "0x10", " 8", "8 ", "1e999", "1_0", "--1", "1.2.3",
        ] {
            assert_eq!(parse(bad), None, "{bad}");
        }
    }

    #[test]
    fn the_shortest_text_reads_back_to_the_same_bits() {
        let mut random = fastrand::Rng::with_seed(1);
        for _ in 0..100_000 {
            let value = f64::from_bits(random.u64(..));
            if value.is_finite() {
                assert_eq!(
                    parse(&shortest(value)).map(f64::to_bits),
                    Some(value.to_bits())
                );
            }
        }
    }
}

use super::Money;

/// How a country writes amounts of its own currency; those of another keep their code.
///
/// # Example
///
/// ```
/// use foilwork::money::{Currency, Money, MoneyStyle};
///
/// let style = MoneyStyle { currency: "EUR", symbol: "\u{20ac}", before: false, gap: " ", group: ".", point: ',' };
/// assert_eq!(style.write(Money::from_minor(-123_456, Currency::EUR)), "-1.234,56 \u{20ac}");
/// assert_eq!(style.write(Money::from_minor(500, Currency::from_code("USD")?)), "5.00 USD");
/// # Ok::<(), foilwork::money::InvalidCurrency>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct MoneyStyle {
    /// Code of the currency that is written so.
    pub currency: &'static str,
    /// What stands for it.
    pub symbol: &'static str,
    /// Whether that stands before the number.
    pub before: bool,
    /// What stands between the two.
    pub gap: &'static str,
    /// What stands between thousands.
    pub group: &'static str,
    /// What stands before the minor units.
    pub point: char,
}

impl MoneyStyle {
    /// The amount.
    #[must_use]
    pub fn write(self, money: Money) -> String {
        if self.currency != money.currency().code() {
            return money.to_string();
        }
        let text = money.decimal().abs().to_string();
        let (whole, part) = text.split_once('.').map_or((text.as_str(), None), |(whole, part)| (whole, Some(part)));
        let mut grouped = String::new();
        for (i, digit) in whole.chars().enumerate() {
            if i > 0 && (whole.len() - i) % 3 == 0 {
                grouped.push_str(self.group);
            }
            grouped.push(digit);
        }
        let part = part.map(|part| format!("{}{part}", self.point)).unwrap_or_default();
        let sign = if money.is_negative() { "-" } else { "" };
        if self.before {
            format!("{sign}{}{}{grouped}{part}", self.symbol, self.gap)
        } else {
            format!("{sign}{grouped}{part}{}{}", self.gap, self.symbol)
        }
    }
}

use crate::{limits::Jurisdiction, money::Currency};
use rust_decimal::Decimal;

/// The texts of three files to begin with. The service names its shop as `shop.toml`.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Starter {
    /// A service file with remarks, `service.toml`.
    pub service: String,
    /// A shop file with remarks, terms included, `shop.toml`.
    pub shop: String,
    /// A list of services for a costing, `services.csv`.
    pub services: String,
}

/// Files to begin with, for a jurisdiction and a currency. All they say is an example of an invented salon.
///
/// # Example
///
/// ```
/// use foilwork::{
///     limits::Jurisdiction,
///     money::Currency,
///     reader::Format,
///     service::{parse_with_shop, starter},
///     shop,
/// };
///
/// let files = starter(Jurisdiction::EuropeanUnion, Currency::from_code("EUR")?);
/// let shop = shop::parse_shop(&files.shop, Format::Toml)?;
/// let service = parse_with_shop(&files.service, Format::Toml, &shop)?;
/// assert_eq!(service.section[0].name, "top");
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[must_use]
pub fn starter(jurisdiction: Jurisdiction, currency: Currency) -> Starter {
    let fill = |template: &str| {
        let text = template.replace("{jurisdiction}", jurisdiction.code()).replace("{currency}", currency.code());
        amounts(&text, currency)
    };
    Starter {
        service: fill(include_str!("service.toml")),
        shop: fill(include_str!("shop.toml")),
        services: fill(include_str!("services.csv")),
    }
}

/// Every amount, which stands between two `@` in hundredths, with the decimals of the currency.
fn amounts(text: &str, currency: Currency) -> String {
    let amount = |(place, part): (usize, &str)| match part.parse::<i64>() {
        Ok(hundredths) if place % 2 == 1 => {
            // A currency without decimals counts in what is a hundredth elsewhere.
            let scale = if currency.exponent() == 0 { 0 } else { 2 };
            let mut amount = Decimal::new(hundredths, scale);
            amount.rescale(currency.exponent());
            amount.to_string()
        }
        _ => part.to_owned(),
    };
    text.split('@').enumerate().map(amount).collect()
}

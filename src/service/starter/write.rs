use crate::{colour::Naming, limits::Jurisdiction, money::Currency, shop::Country};
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
        amounts(&habits(&text, jurisdiction), currency)
    };
    Starter {
        service: fill(include_str!("service.toml")),
        shop: fill(include_str!("shop.toml")),
        services: fill(include_str!("services.csv")),
    }
}

/// What is usual where this law holds, to be changed like all the rest.
fn habits(text: &str, jurisdiction: Jurisdiction) -> String {
    use Jurisdiction::{Australia, Canada, China, GreatBritain, Japan, NewZealand, Poland, UnitedStates};
    let country = match jurisdiction {
        GreatBritain => Some(Country::UnitedKingdom),
        UnitedStates => Some(Country::UnitedStates),
        Canada => Some(Country::Canada),
        Australia => Some(Country::Australia),
        NewZealand => Some(Country::NewZealand),
        China => Some(Country::China),
        Japan => Some(Country::Japan),
        Poland => Some(Country::Poland),
        _ => None,
    };
    let line = |text: String, remark: &str| format!("{text:<35}# {remark}");
    let codes = Country::ALL.iter().map(|country| country.code()).collect::<Vec<_>>().join(" ");
    let written = "how dates and amounts are written";
    let country = match country {
        Some(country) => line(format!("country = \"{}\"", country.code()), written),
        None => format!("{}: one of\n# {codes}", line("# country = \"DE\"".to_owned(), written)),
    };
    let ounces = matches!(jurisdiction, UnitedStates | GreatBritain);
    let labels = matches!(jurisdiction, UnitedStates | GreatBritain | Canada | Australia | NewZealand);
    let names = if matches!(jurisdiction, UnitedStates | Canada) { Naming::Us } else { Naming::European };
    let lines = [
        country,
        line(format!("ounces = {ounces}"), "ounces of mass beside the grams"),
        line(format!("volume_labels = {labels}"), "the trade's label (10 vol for 3 %) beside the percent"),
        line(format!("level_names = \"{}\"", names.code()), "names beside level numbers: european or us"),
    ];
    text.replace("{habits}", &lines.join("\n"))
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

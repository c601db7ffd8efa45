use super::Currency;
use rust_decimal::Decimal;
use serde::ser::SerializeStruct;
use std::{cmp::Ordering, fmt};

/// An amount of money: a whole number of minor units (cents, pence, yen, fils) and their currency.
///
/// Sums are exact or refused: no two currencies meet, nothing wraps, and a fraction of a minor unit exists only on the
/// way in, where its rounding is named. There is no division; sharing out is [`allocate`](super::allocate()).
///
/// # Example
///
/// ```
/// use foilwork::money::{Currency, Money, Rounding};
///
/// let eur = Currency::from_code("EUR")?;
/// let price = Money::parse("12.50", eur)?;
/// assert_eq!(price.plus(Money::from_minor(75, eur))?.to_string(), "13.25 EUR");
///
/// let third = Money::from_decimal("4.165".parse()?, eur, Rounding::MidpointNearestEven)?;
/// assert_eq!(third.minor(), 416);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Example
///
/// ```
/// use foilwork::money::{Currency, Money};
///
/// let eur = Currency::from_code("EUR")?;
/// let refund = Money::from_minor(-350, eur);
/// assert_eq!((refund.decimal(), refund.currency()), ("-3.50".parse()?, eur));
/// assert!(refund.is_negative() && Money::zero(eur).is_zero());
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct Money {
    minor: i64,
    currency: Currency,
}

impl Money {
    /// Takes a whole number of minor units.
    #[must_use]
    pub const fn from_minor(minor: i64, currency: Currency) -> Self {
        Self { minor, currency }
    }

    /// Zero, in a currency.
    #[must_use]
    pub const fn zero(currency: Currency) -> Self {
        Self { minor: 0, currency }
    }

    /// The whole number of minor units.
    #[must_use]
    pub const fn minor(self) -> i64 {
        self.minor
    }

    /// The currency.
    #[must_use]
    pub const fn currency(self) -> Currency {
        self.currency
    }

    /// The amount in units of the currency, with all its decimals.
    #[must_use]
    pub fn decimal(self) -> Decimal {
        // The scale is at most 4, well within what a decimal holds.
        Decimal::from_i128_with_scale(i128::from(self.minor), self.currency.exponent())
    }

    /// Whether it is less than zero.
    #[must_use]
    pub const fn is_negative(self) -> bool {
        self.minor < 0
    }

    /// Whether it is zero.
    #[must_use]
    pub const fn is_zero(self) -> bool {
        self.minor == 0
    }
}

/// Amounts of one currency are ordered; of two currencies they are not.
impl PartialOrd for Money {
    fn partial_cmp(&self, other: &Self) -> Option<Ordering> {
        (self.currency == other.currency).then(|| self.minor.cmp(&other.minor))
    }
}

impl fmt::Display for Money {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(&format!("{} {}", self.decimal(), self.currency))
    }
}

/// Written as `{"amount": "12.50", "currency": "EUR"}`: a text, so that no reader turns it into a float.
impl serde::Serialize for Money {
    fn serialize<S: serde::Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let mut money = serializer.serialize_struct("Money", 2)?;
        money.serialize_field("amount", &self.decimal().to_string())?;
        money.serialize_field("currency", &self.currency)?;
        money.end()
    }
}

impl schemars::JsonSchema for Money {
    fn schema_name() -> std::borrow::Cow<'static, str> {
        "Money".into()
    }

    fn json_schema(generator: &mut schemars::SchemaGenerator) -> schemars::Schema {
        let currency = generator.subschema_for::<Currency>();
        schemars::json_schema!({
            "type": "object",
            "description": "An amount of money.",
            "properties": {
                "amount": { "type": "string", "pattern": r"^-?\d+(\.\d+)?$", "description": "Units of the currency, as a decimal text." },
                "currency": currency,
            },
            "required": ["amount", "currency"],
        })
    }
}

use std::{fmt, str::FromStr};

/// An ISO 4217 currency with its number of decimals, for example EUR (2), JPY (0) or KWD (3).
///
/// Codes and decimals come from the `iso_currency` crate; the tests compare every one of them with the table that the
/// ISO 4217 maintenance agency publishes. Codes without a minor unit (metals, test codes) are refused: there is
/// nothing to round a price to.
///
/// # Example
///
/// ```
/// use foilwork::money::Currency;
///
/// let yen: Currency = "JPY".parse()?;
/// assert_eq!((yen.code(), yen.exponent()), ("JPY", 0));
/// assert!("XAU".parse::<Currency>().is_err());
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Source
///
/// [ISO 4217](crate::source::citations::money::ISO_4217), as `iso_currency` ships it.
#[derive(Clone, Copy, PartialEq, Eq, Hash)]
pub struct Currency {
    iso: iso_currency::Currency,
    exponent: u8,
}

impl Currency {
    /// The euro.
    pub const EUR: Self = Self { iso: iso_currency::Currency::EUR, exponent: 2 };

    /// Takes a three-letter code in capitals.
    ///
    /// # Errors
    ///
    /// [`InvalidCurrency::Unknown`], or [`InvalidCurrency::NoMinorUnit`] for a code that no price can be rounded to.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::money::Currency;
    ///
    /// let euro = Currency::from_code("EUR")?;
    /// assert_eq!((euro.name(), euro.numeric()), ("Euro", 978));
    /// assert!(Currency::from_code("eur").is_err());
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn from_code(code: &str) -> Result<Self, InvalidCurrency> {
        let iso = iso_currency::Currency::from_code(code)
            .ok_or_else(|| InvalidCurrency::Unknown { code: code.chars().take(12).collect() })?;
        let exponent = iso.exponent().and_then(|digits| u8::try_from(digits).ok());
        match exponent {
            Some(exponent) => Ok(Self { iso, exponent }),
            None => Err(InvalidCurrency::NoMinorUnit { code: iso.code() }),
        }
    }

    /// The three-letter code.
    #[must_use]
    pub fn code(self) -> &'static str {
        self.iso.code()
    }

    /// The English name.
    #[must_use]
    pub fn name(&self) -> &str {
        self.iso.name()
    }

    /// The three-digit number of the standard.
    #[must_use]
    pub fn numeric(self) -> u16 {
        self.iso.numeric()
    }

    /// How many decimals an amount has: the power of ten between the unit and its minor unit.
    #[must_use]
    pub const fn exponent(self) -> u32 {
        self.exponent as u32
    }
}

impl FromStr for Currency {
    type Err = InvalidCurrency;

    fn from_str(code: &str) -> Result<Self, Self::Err> {
        Self::from_code(code)
    }
}

impl fmt::Display for Currency {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(self.code())
    }
}

impl fmt::Debug for Currency {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.code())
    }
}

impl serde::Serialize for Currency {
    fn serialize<S: serde::Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.serialize_str(self.code())
    }
}

impl<'de> serde::Deserialize<'de> for Currency {
    fn deserialize<D: serde::Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        let code = <std::borrow::Cow<'de, str>>::deserialize(deserializer)?;
        Self::from_code(&code).map_err(serde::de::Error::custom)
    }
}

impl schemars::JsonSchema for Currency {
    fn schema_name() -> std::borrow::Cow<'static, str> {
        "Currency".into()
    }

    fn json_schema(_: &mut schemars::SchemaGenerator) -> schemars::Schema {
        schemars::json_schema!({ "type": "string", "pattern": "^[A-Z]{3}$", "description": "ISO 4217 code." })
    }
}

/// A code that is no currency to write prices in.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[non_exhaustive]
pub enum InvalidCurrency {
    /// Not a code of ISO 4217.
    #[error("unknown currency {code:?}: give the three-letter code of ISO 4217 in capitals, for example EUR")]
    Unknown {
        /// What was given.
        code: String,
    },
    /// A metal, a fund or a test code.
    #[error("{code} has no minor unit to round to: give a currency that prices are written in")]
    NoMinorUnit {
        /// The code.
        code: &'static str,
    },
}

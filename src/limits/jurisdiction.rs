use serde::{Serialize, Serializer};
use std::{fmt, str::FromStr};

/// Whose law or advice a table holds.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[non_exhaustive]
pub enum Jurisdiction {
    /// European Union; Northern Ireland follows it.
    EuropeanUnion,
    /// Great Britain: the EU entries of 31 December 2020 and later British amendments.
    GreatBritain,
    /// United States of America.
    UnitedStates,
    /// Canada, with the workplace limits of Ontario.
    Canada,
    /// Australia.
    Australia,
    /// New Zealand.
    NewZealand,
    /// People's Republic of China.
    China,
    /// Japan.
    Japan,
    /// The ASEAN Cosmetic Directive.
    Asean,
    /// Poland: expert proposals for workplace air only.
    Poland,
}

impl Jurisdiction {
    /// Every jurisdiction with a table, however short.
    pub const ALL: [Self; 10] = [
        Self::EuropeanUnion,
        Self::GreatBritain,
        Self::UnitedStates,
        Self::Canada,
        Self::Australia,
        Self::NewZealand,
        Self::China,
        Self::Japan,
        Self::Asean,
        Self::Poland,
    ];

    /// The code used in tables and on the command line, for example `EU` or `GB`.
    #[must_use]
    pub const fn code(self) -> &'static str {
        match self {
            Self::EuropeanUnion => "EU",
            Self::GreatBritain => "GB",
            Self::UnitedStates => "US",
            Self::Canada => "CA",
            Self::Australia => "AU",
            Self::NewZealand => "NZ",
            Self::China => "CN",
            Self::Japan => "JP",
            Self::Asean => "ASEAN",
            Self::Poland => "PL",
        }
    }

    /// The name in words.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::EuropeanUnion => "European Union",
            Self::GreatBritain => "Great Britain",
            Self::UnitedStates => "United States",
            Self::Canada => "Canada",
            Self::Australia => "Australia",
            Self::NewZealand => "New Zealand",
            Self::China => "China",
            Self::Japan => "Japan",
            Self::Asean => "ASEAN",
            Self::Poland => "Poland",
        }
    }
}

impl fmt::Display for Jurisdiction {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(self.name())
    }
}

impl Serialize for Jurisdiction {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.serialize_str(self.code())
    }
}

/// Text that names no jurisdiction with a table.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error(
    "no table for the jurisdiction \"{0}\": must be one of EU, GB (or UK), US (or USA), CA, AU, NZ, CN, JP, ASEAN, PL \
     (or bring your own table)"
)]
pub struct UnknownJurisdiction(String);

impl FromStr for Jurisdiction {
    type Err = UnknownJurisdiction;

    /// Reads a code or a name, in any case; `UK` and `USA` are understood too.
    fn from_str(text: &str) -> Result<Self, UnknownJurisdiction> {
        let is = |word: &str| text.trim().eq_ignore_ascii_case(word);
        if is("UK") {
            return Ok(Self::GreatBritain);
        }
        if is("USA") {
            return Ok(Self::UnitedStates);
        }
        let named = |j: &Self| is(j.code()) || is(j.name());
        Self::ALL.into_iter().find(named).ok_or_else(|| UnknownJurisdiction(text.to_owned()))
    }
}

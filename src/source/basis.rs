use serde::Serialize;

/// Where a number comes from, strongest first.
///
/// Every number a user sees carries one. The order is used when numbers are combined: a result is no better founded
/// than its weakest input.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Basis {
    /// Printed in a source that is cited beside it.
    Published,
    /// Calculated from other numbers by a formula that is exact or cited.
    Derived,
    /// Measured, weighed or counted by the user.
    Measured,
    /// Stated by the user without a measurement: a label, a price, an opinion of the hair.
    Stated,
    /// What the trade does; no published source is known.
    CommonPractice,
    /// Assumed by foilwork; replace it with a measurement as soon as there is one.
    Assumed,
}

impl Basis {
    /// The basis of a result that rests on both.
    #[must_use]
    pub fn weaker(self, other: Self) -> Self {
        self.max(other)
    }

    /// The words printed beside a number.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::Published => "published",
            Self::Derived => "derived",
            Self::Measured => "measured by you",
            Self::Stated => "stated by you",
            Self::CommonPractice => "common practice",
            Self::Assumed => "assumed",
        }
    }
}

impl std::fmt::Display for Basis {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.pad(self.words())
    }
}

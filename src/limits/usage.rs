use super::{Audience, Limit, LimitRule, Purpose};
use serde::Serialize;
use std::fmt;

/// What a mixture is for and who uses it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
pub struct Use {
    /// What it is for.
    pub purpose: Purpose,
    /// Who uses it.
    pub audience: Audience,
}

impl Use {
    /// A use by a professional in a salon.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::limits::{Audience, Purpose, Use};
    ///
    /// assert_eq!(Use::professional(Purpose::Lightening).audience, Audience::Professional);
    /// ```
    #[must_use]
    pub const fn professional(purpose: Purpose) -> Self {
        Self { purpose, audience: Audience::Professional }
    }

    /// A use by anyone at home.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::limits::{Audience, Purpose, Use};
    ///
    /// assert_eq!(Use::general(Purpose::Lightening).audience, Audience::General);
    /// ```
    #[must_use]
    pub const fn general(purpose: Purpose) -> Self {
        Self { purpose, audience: Audience::General }
    }

    /// Whether a row concerns this use, wherever its figure is measured.
    pub(super) fn is_covered_by(self, row: &Limit) -> bool {
        let sale = matches!(row.rule, LimitRule::SupplyLimit | LimitRule::LicenceCeiling);
        row.users.include(self.audience)
            && if sale {
                self.audience == Audience::General
            } else {
                row.applies_to.iter().any(|scope| self.purpose.is_covered_by(*scope))
            }
    }
}

impl fmt::Display for Use {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}, {} use", self.purpose, self.audience)
    }
}

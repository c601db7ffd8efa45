use super::{Audience, Limit, LimitRule, Purpose, Users, fit::Fit};
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

    /// What a row has to do with this use, wherever its figure is measured.
    pub(super) fn fit(self, row: &Limit) -> Fit {
        let sale = matches!(row.rule, LimitRule::SupplyLimit | LimitRule::LicenceCeiling);
        let covered = if sale {
            self.audience == Audience::General
        } else {
            row.applies_to.iter().any(|scope| self.purpose.is_covered_by(*scope, row.rule))
        };
        match (covered, row.users.include(self.audience)) {
            (true, true) => Fit::Applies,
            (true, false) if row.users == Users::Professional => Fit::ProfessionalsOnly,
            _ => Fit::OtherUse,
        }
    }
}

impl fmt::Display for Use {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}, {} use", self.purpose, self.audience)
    }
}

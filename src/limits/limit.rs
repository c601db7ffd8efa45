use super::{AppliesTo, LimitRule, Measured, Obtained, Users};
use crate::{
    mix::{Cas, Form},
    quantity::MassFraction,
    source::Citation,
};
use serde::Serialize;

/// One row of a table: what a law or an authority says about one substance or group in one use.
///
/// The wording of the law is kept beside the codes. "12 % (40 volumes)" there is wording, not a conversion.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Limit {
    /// Key, unique in its table.
    pub id: String,
    /// Who issued it, for example `Canada (Ontario)`.
    pub issued_by: String,
    /// What it says.
    pub rule: LimitRule,
    /// The substances as the entry names them.
    pub substance: String,
    /// Their CAS numbers; none for a group.
    pub cas: Vec<Cas>,
    /// Group names by which an ingredient can be stated to belong to an entry without CAS numbers.
    pub groups: Vec<String>,
    /// What it applies to.
    pub applies_to: Vec<AppliesTo>,
    /// The same in the words of the source.
    pub use_as_worded: String,
    /// Whose use it covers.
    pub users: Users,
    /// The concentration, when the figure is one (percent, read as w/w).
    #[serde(rename = "concentration_ww_percent")]
    pub concentration: Option<MassFraction>,
    /// The figure as printed, with its unit; empty without a figure.
    pub figure: String,
    /// How the unit was read.
    pub unit_reading: String,
    /// Whether the row concerns levels above the figure (`>`) instead of up to it (`<=`).
    pub above: bool,
    /// Below this the row does not apply, when it covers a band of strengths.
    #[serde(rename = "band_from_ww_percent")]
    pub band_from: Option<MassFraction>,
    /// In what the concentration is meant.
    pub measured: Measured,
    /// The same in the words of the source.
    pub basis_as_worded: String,
    /// The form the figure is expressed in; none when it is the substance as stated.
    pub expressed_as: Option<Form>,
    /// Rows that share a ratio sum: the sum of level over own maximum must not exceed 1.
    pub sum_group: Option<String>,
    /// Conditions, warnings and label duties, in short.
    pub conditions: String,
    /// Act and entry.
    pub legal_reference: String,
    /// Date or edition of the list consulted.
    pub list_date: String,
    /// Source keys as written in the table.
    pub sources: String,
    /// Those of them that are in the register.
    pub citations: Vec<&'static Citation>,
    /// How it was obtained.
    pub obtained: Obtained,
    /// What a second source says.
    pub cross_check: String,
    /// Lower-case names of the entry, for ingredients without a CAS number.
    #[serde(skip)]
    pub(super) names: Vec<String>,
}

impl Limit {
    /// Whether the rule bounds a concentration, so that a level can exceed it or lie within it.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::limits::{Jurisdiction, Table};
    ///
    /// let rows = Table::of(Jurisdiction::Australia).rows();
    /// assert!(rows.iter().all(|row| !(row.is_ceiling() && row.is_notice())));
    /// ```
    #[must_use]
    pub const fn is_ceiling(&self) -> bool {
        matches!(self.rule, LimitRule::Maximum | LimitRule::Prohibited | LimitRule::SupplyLimit)
    }

    /// Whether the row says something other than a ceiling about the strength of a product or mixture.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::limits::{Jurisdiction, Table};
    ///
    /// // Australian schedules say how a product is sold and labelled; they forbid no strength.
    /// assert!(Table::of(Jurisdiction::Australia).rows().iter().any(|row| row.is_notice()));
    /// ```
    #[must_use]
    pub const fn is_notice(&self) -> bool {
        matches!(
            self.rule,
            LimitRule::LicenceCeiling
                | LimitRule::LabelThreshold
                | LimitRule::SchedulingThreshold
                | LimitRule::SchedulingExemption
                | LimitRule::Scheduled
                | LimitRule::Label
                | LimitRule::Conclusion
        )
    }
}

impl std::fmt::Display for Limit {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str(&self.legal_reference)?;
        if !self.list_date.is_empty() {
            write!(f, "; list: {}", self.list_date)?;
        }
        if self.obtained.is_verified() { Ok(()) } else { f.write_str(" [from memory, unverified]") }
    }
}

use crate::{choice::choice, finding::Rule, service::shape::Party};

choice! {
    /// Whom or what a finding concerns.
    Concern: "concern" {
        /// The guest: body and word.
        Guest = "guest",
        /// The hair, and what comes of it.
        Hair = "hair",
        /// The law, and the maker's own limits.
        Limits = "limits" => "law and maker's limits",
        /// The work at the bench: grams, minutes, hands. It keeps nobody from beginning.
        Work = "work",
    }
}

impl Concern {
    /// Whom or what a rule concerns. A rule that is not told apart concerns the hair, so that it counts.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{finding::Rule, service::Concern};
    ///
    /// assert_eq!(Concern::of(Rule::SkinTest), Concern::Guest);
    /// assert_eq!(Concern::of(Rule::Scale), Concern::Work);
    /// ```
    #[must_use]
    pub const fn of(rule: Rule) -> Self {
        match rule {
            Rule::History
            | Rule::EarlierReaction
            | Rule::Airways
            | Rule::Age
            | Rule::BlackHenna
            | Rule::Health
            | Rule::Scalp
            | Rule::SkinTest
            | Rule::SkinTestAge
            | Rule::Wish => Self::Guest,
            Rule::Law | Rule::Developer | Rule::Time | Rule::OnScalp | Rule::Alkalinity => Self::Limits,
            Rule::Look
            | Rule::Sequence
            | Rule::Rinse
            | Rule::FinishTogether
            | Rule::LevelSeen
            | Rule::StrandBook
            | Rule::Ratio
            | Rule::Amount
            | Rule::Stock
            | Rule::ListPrice
            | Rule::Scale
            | Rule::Pace
            | Rule::TonerFound => Self::Work,
            _ => Self::Hair,
        }
    }
}

/// Who has to agree before the work goes on with a finding of this rule; none where nobody can agree it away.
pub(super) const fn parties(rule: Rule) -> &'static [Party] {
    match rule {
        Rule::Age => &[Party::Guardian],
        Rule::EarlierReaction | Rule::Airways | Rule::Health | Rule::Scalp => &[Party::Doctor, Party::Guest],
        _ => match Concern::of(rule) {
            Concern::Guest | Concern::Hair => &[Party::Guest],
            Concern::Limits | Concern::Work => &[],
        },
    }
}

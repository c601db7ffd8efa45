use crate::choice::choice;

choice! {
    /// Where a number comes from, strongest first.
    ///
    /// Every number a user sees carries one. The order is used when numbers are combined: a result is no better founded
    /// than its weakest input.
    Basis: "basis" {
        /// Printed in a source that is cited beside it.
        Published = "published",
        /// Calculated from other numbers by a formula that is exact or cited.
        Derived = "derived",
        /// Measured, weighed or counted by the user.
        Measured = "measured" => "measured by you",
        /// Stated by the user without a measurement: a label, a price, an opinion of the hair.
        Stated = "stated" => "stated by you",
        /// What the trade does; no published source is known.
        CommonPractice = "common-practice" => "common practice",
        /// Assumed by foilwork; replace it with a measurement as soon as there is one.
        Assumed = "assumed",
    }
}

impl Basis {
    /// The basis of a result that rests on both.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::source::Basis;
    ///
    /// assert_eq!(Basis::Published.weaker(Basis::Assumed), Basis::Assumed);
    /// ```
    #[must_use]
    pub fn weaker(self, other: Self) -> Self {
        self.max(other)
    }
}

use crate::choice::choice;

choice! {
    /// Whose law or advice a table holds. The codes are those of the country where there is one.
    Jurisdiction: "jurisdiction" {
        /// European Union; Northern Ireland follows it.
        EuropeanUnion = "EU" => "European Union",
        /// Great Britain: the EU entries of 31 December 2020 and later British amendments.
        GreatBritain = "GB" => "Great Britain" | "UK",
        /// United States of America.
        UnitedStates = "US" => "United States" | "USA",
        /// Canada, with the workplace limits of Ontario.
        Canada = "CA" => "Canada",
        /// Australia.
        Australia = "AU" => "Australia",
        /// New Zealand.
        NewZealand = "NZ" => "New Zealand",
        /// People's Republic of China.
        China = "CN" => "China",
        /// Japan.
        Japan = "JP" => "Japan",
        /// The ASEAN Cosmetic Directive.
        Asean = "ASEAN",
        /// Poland: expert proposals for workplace air only.
        Poland = "PL" => "Poland",
    }
}

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
        /// Poland: the entries of the European Union, and proposals for workplace air.
        Poland = "PL" => "Poland",
    }
    hint hint
}

/// The members of the European Union beside Poland, by code and name.
const MEMBERS: [(&str, &str); 26] = [
    ("AT", "Austria"),
    ("BE", "Belgium"),
    ("BG", "Bulgaria"),
    ("HR", "Croatia"),
    ("CY", "Cyprus"),
    ("CZ", "Czechia"),
    ("DK", "Denmark"),
    ("EE", "Estonia"),
    ("FI", "Finland"),
    ("FR", "France"),
    ("DE", "Germany"),
    ("GR", "Greece"),
    ("HU", "Hungary"),
    ("IE", "Ireland"),
    ("IT", "Italy"),
    ("LV", "Latvia"),
    ("LT", "Lithuania"),
    ("LU", "Luxembourg"),
    ("MT", "Malta"),
    ("NL", "Netherlands"),
    ("PT", "Portugal"),
    ("RO", "Romania"),
    ("SK", "Slovakia"),
    ("SI", "Slovenia"),
    ("ES", "Spain"),
    ("SE", "Sweden"),
];

/// Places whose law stands in the table of another name.
fn hint(text: &str) -> Option<&'static str> {
    let is = |word: &str| text.trim().eq_ignore_ascii_case(word);
    if MEMBERS.iter().any(|(code, name)| is(code) || is(name)) {
        Some("a member of the European Union: write EU; the law of the member state may add to it")
    } else if ["Northern Ireland", "NI", "XI", "GB-NIR"].into_iter().any(is) {
        Some("Northern Ireland follows the law of the European Union: write EU")
    } else if ["England", "Scotland", "Wales"].into_iter().any(is) {
        Some("a part of Great Britain: write GB")
    } else {
        None
    }
}

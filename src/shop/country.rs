use crate::choice::choice;

choice! {
    /// A country, for how it writes dates, times and amounts of money.
    Country: "country" {
        /// Austria, in German.
        Austria = "AT" => "Austria",
        /// Australia.
        Australia = "AU" => "Australia",
        /// Belgium, in Dutch.
        Belgium = "BE" => "Belgium",
        /// Canada, in English.
        Canada = "CA" => "Canada",
        /// Switzerland, in German.
        Switzerland = "CH" => "Switzerland",
        /// China.
        China = "CN" => "China",
        /// Czechia.
        Czechia = "CZ" => "Czechia",
        /// Germany.
        Germany = "DE" => "Germany",
        /// Denmark.
        Denmark = "DK" => "Denmark",
        /// Spain.
        Spain = "ES" => "Spain",
        /// Finland.
        Finland = "FI" => "Finland",
        /// France.
        France = "FR" => "France",
        /// United Kingdom.
        UnitedKingdom = "GB" => "United Kingdom" | "UK",
        /// Ireland.
        Ireland = "IE" => "Ireland",
        /// Italy.
        Italy = "IT" => "Italy",
        /// Japan.
        Japan = "JP" => "Japan",
        /// Netherlands.
        Netherlands = "NL" => "Netherlands",
        /// Norway.
        Norway = "NO" => "Norway",
        /// New Zealand.
        NewZealand = "NZ" => "New Zealand",
        /// Poland.
        Poland = "PL" => "Poland",
        /// Portugal.
        Portugal = "PT" => "Portugal",
        /// Sweden.
        Sweden = "SE" => "Sweden",
        /// United States.
        UnitedStates = "US" => "United States" | "USA",
    }
}

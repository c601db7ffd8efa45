use crate::choice::choice;

choice! {
    /// How a strength is known.
    StrengthBasis: "strength basis" {
        /// Titrated or otherwise measured.
        Measured = "measured",
        /// The supplier's data sheet.
        SupplierSheet = "supplier-sheet" => "supplier's data sheet",
        /// What the bottle says.
        Label = "label",
    }
}

impl Default for StrengthBasis {
    /// The weakest of them.
    fn default() -> Self {
        Self::Label
    }
}

choice! {
    /// What kind of colour a shade is.
    ShadeClass: "shade class" {
        /// Lifts and deposits, grows out.
        Permanent = "permanent",
        /// Made to lift natural hair with strong developer.
        HighLift = "high-lift",
        /// Deposits and fades slowly.
        Demi = "demi" => "demi-permanent",
        /// No developer, washes out.
        Semi = "semi" => "semi-permanent",
    }
}

impl Default for ShadeClass {
    /// The one that asks for most care.
    fn default() -> Self {
        Self::Permanent
    }
}

choice! {
    /// What a number of consumables is for.
    Per: "use of a consumable" {
        /// The whole service.
        Service = "service",
        /// Each foil of the sections.
        Foil = "foil",
    }
}

impl Default for Per {
    fn default() -> Self {
        Self::Service
    }
}

choice! {
    /// From when a product's longest time counts.
    CountsFrom: "start of a time limit" {
        /// From the first strand that carries the mix.
        FirstStrand = "first-strand" => "the first strand",
        /// From the end of the application.
        EndOfApplication = "end-of-application" => "the end of the application",
    }
}

impl Default for CountsFrom {
    /// The stricter of the two.
    fn default() -> Self {
        Self::FirstStrand
    }
}

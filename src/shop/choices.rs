use crate::{choice::choice, colour::ProductKind};

choice! {
    /// How a strength is known; by the label, the weakest, where a program does not say.
    #[derive(Default)]
    StrengthBasis: "strength basis" {
        /// Titrated or otherwise measured.
        Measured = "measured",
        /// The supplier's data sheet.
        SupplierSheet = "supplier-sheet" => "supplier's data sheet",
        /// What the bottle says.
        #[default]
        Label = "label",
    }
}

choice! {
    /// What kind of colour a shade is; permanent, which asks for most care, where a program does not say.
    #[derive(Default)]
    ShadeClass: "shade class" {
        /// Lifts and deposits, grows out.
        #[default]
        Permanent = "permanent",
        /// Made to lift natural hair with strong developer.
        HighLift = "high-lift",
        /// Deposits and fades slowly.
        Demi = "demi" => "demi-permanent",
        /// No developer, washes out.
        Semi = "semi" => "semi-permanent",
    }
}

impl ShadeClass {
    /// What it does to hair.
    pub(crate) const fn product(self) -> ProductKind {
        match self {
            Self::HighLift => ProductKind::HighLiftTint,
            Self::Permanent => ProductKind::PermanentColour,
            Self::Demi => ProductKind::QuasiPermanentColour,
            Self::Semi => ProductKind::SemiPermanentColour,
        }
    }
}

choice! {
    /// What a number of consumables is for.
    #[derive(Default)]
    Per: "use of a consumable" {
        /// The whole service.
        #[default]
        Service = "service",
        /// Each foil of the sections.
        Foil = "foil",
    }
}

choice! {
    /// From when a product's longest time counts; the first strand, the stricter, where it is not said.
    #[derive(Default)]
    CountsFrom: "start of a time limit" {
        /// From the first strand that carries the mix.
        #[default]
        FirstStrand = "first-strand" => "the first strand",
        /// From the end of the application.
        EndOfApplication = "end-of-application" => "the end of the application",
    }
}

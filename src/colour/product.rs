use crate::choice::choice;

choice! {
    /// The kinds of product that level arithmetic tells apart.
    ProductKind: "product" {
        /// Oxidative colour that lifts and deposits.
        PermanentColour = "permanent" => "permanent colour",
        /// Permanent colour made to lighten several levels.
        HighLiftTint = "high-lift" => "high-lift tint",
        /// Oxidative colour with weak developer: deposits only.
        QuasiPermanentColour = "quasi-permanent" => "quasi-permanent colour",
        /// Colour without developer: deposits only.
        SemiPermanentColour = "semi-permanent" => "semi-permanent colour",
        /// Oxidises melanin; deposits nothing.
        Lightener = "lightener",
    }
}

choice! {
    /// What the hair already carries.
    Canvas: "canvas" {
        /// Natural pigment only.
        Natural = "natural",
        /// Artificial colour from an earlier service.
        Coloured = "coloured",
    }
}

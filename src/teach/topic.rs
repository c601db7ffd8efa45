use crate::choice::choice;

choice! {
    /// What a problem practises.
    Topic: "topic" {
        /// Vol, percent by mass and by volume, grams of peroxide.
        PeroxideUnits = "peroxide-units" => "peroxide units",
        /// Weakening a developer; blending two (alligation).
        Dilution = "dilution" => "dilution and alligation" | "alligation",
        /// Parts, totals, scaling a recipe.
        Ratio = "ratio" => "ratio and scaling" | "scaling",
        /// What a scale shows, and what rounding does to a bowl.
        Weighing = "weighing" => "weighing and rounding" | "rounding",
        /// The strength on the hair against what the law allows.
        Limits = "limits",
        /// Levels lifted, the formula level, the level of a mix.
        Level = "level" => "level arithmetic" | "levels",
        /// The warmth that shows and the hue that neutralises it.
        Pigment = "pigment" => "pigment and neutralising" | "neutralising",
        /// Foils of a panel, mix for the hair, regrowth.
        Hair = "hair" => "hair and foils" | "foils",
        /// Clock times, the first and the last strand.
        Timing = "timing",
        /// What was used, minutes of work, packs to buy.
        Costing = "costing",
        /// Prices from margin and from mark-up.
        Price = "price" => "margin and mark-up" | "margin",
        /// Tax put in and taken out.
        Tax = "tax",
        /// How many services cover the costs.
        BreakEven = "break-even",
    }
}

choice! {
    /// How much a problem asks for.
    Difficulty: "difficulty" {
        /// One step, numbers for the head.
        Gentle = "gentle",
        /// Two steps, or a part that is easily taken for the whole.
        Steady = "steady",
        /// The unknown stands where it is not expected.
        Stretch = "stretch",
    }
}

use crate::choice::choice;

choice! {
    /// A part of the bench sheet, in the order of the sheet. What says STOP stands above all of them, whichever are chosen.
    SheetPart: "part of the sheet" {
        /// What is needed at the chair: warnings, times, bowls, grams, looks, rinses, reminders. Meant for one page.
        Chair = "chair",
        /// What the checks found, in full.
        Checks = "checks",
        /// What to weigh, with exact masses, strengths and what rests on what.
        Bowls = "bowls",
        /// The running order in minutes from the first brush.
        Order = "order",
        /// Who does what when: hands, looks and basin, in the best order.
        Day = "day",
        /// Level and tone, section by section.
        Colour = "colour",
        /// Strengths that the plan chose; level against time with bounds, look by look.
        Lift = "lift",
        /// Mass of the hair, foils and grams in them, how the head will read.
        Head = "head",
        /// What is taken from the shelf, against what is in hand.
        Stock = "stock",
        /// The hair as stated.
        Hair = "hair",
        /// Cost and price.
        Money = "money",
        /// The cautions in full.
        Cautions = "cautions",
        /// The defaults that were used.
        Defaults = "defaults",
        /// What was not computed, and what was stated and not used.
        Unknowns = "unknowns",
        /// What the checks looked at, and their sources.
        Sources = "sources",
    }
}

impl SheetPart {
    /// The short form: what is needed at the chair.
    pub const SHORT: &'static [Self] = &[Self::Chair];
}

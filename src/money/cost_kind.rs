use crate::choice::choice;

choice! {
    /// What kind of cost a line is, in the order of a cost table.
    CostKind: "kind of cost" {
        /// Colour, lightener, developer, toner.
        Product = "product",
        /// Additives to a bowl.
        Additive = "additive",
        /// Foils, gloves, film, cotton.
        Consumables = "consumables",
        /// Towels and gowns.
        Laundry = "laundry",
        /// Hands-on time.
        Labour = "labour",
        /// Time in the chair.
        Overhead = "overhead",
        /// What the card terminal keeps.
        CardFee = "card-fee" => "card fee",
        /// Anything else.
        Other = "other",
    }
}

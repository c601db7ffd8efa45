use crate::choice::choice;

choice! {
    /// What is odd about a service of a list, and worth a second look.
    Mark: "mark" {
        /// The net price is below the cost: every one that is sold loses money.
        LosesMoney = "loses-money" => "the price is below the cost",
        /// The price does not even pay what one more of it costs, work included: the chair earns less than if it stayed empty.
        LessThanEmptyChair = "less-than-empty-chair" => "an empty chair would cost less",
        /// The price is below the one that meets the target of the terms.
        BelowTarget = "below-target" => "the price misses the target",
        /// More time with hands on the guest than the guest is in the chair.
        HandsOnExceedsChair = "hands-on-exceeds-chair" => "hands-on time exceeds the time in the chair",
        /// The same service and class stands in the list before.
        ListedTwice = "listed-twice" => "listed before",
    }
}

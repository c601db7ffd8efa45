//! The stage after the money: what to book the service as, and what the price list says for it.

use super::{ChairClock, ChairTime, MoneyPlan, PricedBy};
use crate::{
    head::ServiceClass,
    money::{CardFee, Money, SetPrice, take_tax_out},
    quantity::Duration,
    reader::{InField, Problems},
    service::request::Request,
};
use schemars::JsonSchema;
use serde::Serialize;

/// What to book the service as, and what the price list says for it.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct Booking {
    /// The class of the service.
    pub service_class: ServiceClass,
    /// How long to book, in whole quarters of an hour; absent where no day with a finish is laid out.
    #[serde(rename = "book_min")]
    pub book: Option<Duration>,
    /// How long the guest is in the chair: bowls, looks and basin with it where the day could be laid out, else as planned.
    #[serde(rename = "in_chair_min")]
    pub in_chair: Duration,
    /// What the guest pays by the price list, tax included; absent where the list says nothing for the class.
    pub price: Option<Money>,
    /// Of that, what time in the chair beyond the one included costs.
    pub extra: Option<Money>,
    /// The price without tax; absent where no tax is stated.
    pub net: Option<Money>,
    /// Why there is no price.
    pub price_why_not: Option<String>,
    /// What the guest would pay by the costs of this service and the terms of the shop; absent without a price target.
    pub by_cost: Option<Money>,
}

impl Booking {
    /// What the price of the list leaves over the cost, the card fee of it counted as a cost, and that fee; none without such a
    /// price, or without a cost.
    pub(crate) fn leaves(&self, money: &MoneyPlan) -> Option<(SetPrice, Money)> {
        let price = self.price?;
        let cost = money.cost.total();
        let none = Money::zero(cost.currency());
        let of_payment = |by: &PricedBy| {
            let fee = CardFee::new(by.card_percent?, by.card_fixed.unwrap_or(none)).ok()?;
            fee.of(price, money.rounding).ok()
        };
        let fee = money.priced_by.as_ref().and_then(of_payment).unwrap_or(none);
        Some((SetPrice::of(cost.plus(fee).ok()?, self.net.unwrap_or(price)).ok()?, fee))
    }

    pub(super) fn of(
        request: &Request,
        class: ServiceClass,
        chair: &ChairTime,
        money: Option<&MoneyPlan>,
    ) -> Result<Self, Problems> {
        let worked_out = |money: &MoneyPlan| {
            money.taxed.map(|taxed| taxed.gross).or_else(|| money.price.as_ref().map(|set| set.price))
        };
        let mut booking = Self {
            service_class: class,
            book: (chair.clock == ChairClock::Day).then(|| chair.book()),
            in_chair: chair.total,
            price: None,
            extra: None,
            net: None,
            price_why_not: None,
            by_cost: money.and_then(worked_out),
        };
        let Some(listed) = request.shop.class_prices.iter().find(|listed| listed.class == class) else {
            booking.price_why_not = Some(format!("the shop states no `class_price` for {class}"));
            return Ok(booking);
        };
        let (terms, field) = (&request.shop.terms, "shop.class_price");
        let extra = listed.extra(chair.total, terms.rounding).in_field(field)?;
        let price = listed.price.plus(extra).in_field(field)?;
        booking.net = terms
            .tax
            .map(|tax| take_tax_out(price, tax, terms.rounding).map(|taxed| taxed.net))
            .transpose()
            .in_field(field)?;
        (booking.price, booking.extra) = (Some(price), Some(extra));
        Ok(booking)
    }
}

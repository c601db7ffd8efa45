//! The stage after the money: what to book the service as, and what the price list says for it.

use super::{ChairClock, ChairTime, CostRange, MoneyPlan};
use crate::{
    head::ServiceClass,
    money::{Money, SetPrice, TaxRate, take_tax_out},
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
    /// The rate of that tax.
    pub tax_percent: Option<TaxRate>,
    /// What the card terminal keeps of the price; absent where that is nothing.
    pub card_fee: Option<Money>,
    /// Why there is no price.
    pub price_why_not: Option<String>,
    /// What the guest would pay by the costs of this service and the terms of the shop; absent without a price target.
    pub by_cost: Option<Money>,
}

impl Booking {
    /// Whether the price list has a price: the guest pays that one, and one by the costs is for comparison.
    pub(crate) const fn is_listed(&self) -> bool {
        self.price.is_some()
    }

    /// What the shop keeps of the price of the list: without tax, or all of it where none is stated.
    pub(crate) fn kept(&self) -> Option<Money> {
        self.net.or(self.price)
    }

    /// What a service at the price of the list costs: what it is made of, and the card fee.
    pub(crate) fn cost(&self, money: &MoneyPlan) -> Option<Money> {
        self.with_fee(money.cost.total())
    }

    fn with_fee(&self, cost: Money) -> Option<Money> {
        self.card_fee.map_or(Some(cost), |fee| cost.plus(fee).ok())
    }

    /// The same where the hair takes as much as it may; none where what it takes moves no cost.
    pub(crate) fn cost_at_most(&self, money: &MoneyPlan) -> Option<Money> {
        self.with_fee(money.cost_range?.most)
    }

    /// What the price of the list leaves over that; none without such a price, or without a cost.
    pub(crate) fn leaves(&self, money: &MoneyPlan) -> Option<SetPrice> {
        SetPrice::of(self.cost(money)?, self.kept()?).ok()
    }

    /// The same where the hair takes least, and where it takes most; none where that moves nothing.
    pub(crate) fn leaves_between(&self, money: &MoneyPlan) -> Option<[SetPrice; 2]> {
        let CostRange { least, most } = money.cost_range?;
        let kept = self.kept()?;
        let at = |cost: Money| SetPrice::of(self.with_fee(cost)?, kept).ok();
        Some([at(least)?, at(most)?])
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
            tax_percent: None,
            card_fee: None,
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
        let fee = terms.card.map(|card| card.of(price, terms.rounding)).transpose();
        booking.card_fee = fee.in_field("shop.terms.card_percent")?.filter(|fee| !fee.is_zero());
        (booking.price, booking.extra, booking.tax_percent) = (Some(price), Some(extra), terms.tax);
        Ok(booking)
    }
}

//! By what a price is found, and how far it moves with what the hair takes.

use super::{Mix, sections::Work};
use crate::{
    money::{
        CardFee, CardRate, CostTable, Margin, Markup, Money, MoneyError, PriceRule, PriceTarget, ServicePrice, TaxRate,
        Toward,
    },
    quantity::Duration,
};
use schemars::JsonSchema;
use serde::Serialize;

/// By what a price is found: what it must achieve, what is taken from it, and which prices the list allows.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, JsonSchema)]
pub struct PricedBy {
    /// The margin asked for.
    pub margin_percent: Option<Margin>,
    /// The mark-up asked for.
    pub markup_percent: Option<Markup>,
    /// What an hour in the chair has to bring over the cost.
    pub per_chair_h: Option<Money>,
    /// The tax on top.
    pub tax_percent: Option<TaxRate>,
    /// What the card terminal keeps of the payment.
    pub card_percent: Option<CardRate>,
    /// What it keeps of each payment besides.
    pub card_fixed: Option<Money>,
    /// Both together, of this price.
    pub card_fee: Money,
    /// The prices that the list allows lie so far apart.
    pub price_step: Option<Money>,
    /// The least of them.
    pub price_ending: Option<Money>,
    /// Which neighbour is taken.
    pub price_ending_toward: Option<Toward>,
    /// Net price that meets what is asked for, before the list moves it.
    pub target_net: Money,
    /// Whether the list moved the price, with its tax, to one of its own.
    pub moved: bool,
    /// The rule that all this is of; without a tax it reckons with none.
    #[serde(skip)]
    pub(super) rule: PriceRule,
}

impl PricedBy {
    pub(super) fn of(rule: &PriceRule, tax: Option<TaxRate>, found: &ServicePrice) -> Self {
        let (mut margin, mut markup, mut hour) = (None, None, None);
        match rule.target {
            PriceTarget::Margin(percent) => margin = Some(percent),
            PriceTarget::Markup(percent) => markup = Some(percent),
            PriceTarget::PerChairHour(amount) => hour = Some(amount),
        }
        Self {
            margin_percent: margin,
            markup_percent: markup,
            per_chair_h: hour,
            tax_percent: tax,
            card_percent: rule.card.map(CardFee::rate),
            card_fixed: rule.card.map(CardFee::fixed),
            card_fee: found.card_fee,
            price_step: rule.ending.map(|(ending, _)| ending.step()),
            price_ending: rule.ending.map(|(ending, _)| ending.ending()),
            price_ending_toward: rule.ending.map(|(_, toward)| toward),
            target_net: found.target_net,
            moved: found.moved,
            rule: *rule,
        }
    }
}

/// A cost as the hair may take less or more mixture than is planned, whatever is asked for it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, JsonSchema)]
pub struct CostRange {
    /// Where bowls that are not needed are not mixed.
    pub least: Money,
    /// Where the hair takes as much as the estimate goes up to.
    pub most: Money,
}

/// A price as the hair may take less or more mixture than is planned. It covers one visit and the times as planned, and
/// nothing that the cost leaves out.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, JsonSchema)]
pub struct PriceRange {
    /// Where bowls that are not needed are not mixed; a bowl that is begun is paid for.
    pub least: PriceAt,
    /// Where the hair takes as much as the estimate goes up to, all of it mixed fresh.
    pub most: PriceAt,
}

/// Cost and price of one case.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, JsonSchema)]
pub struct PriceAt {
    /// What it costs.
    pub cost: Money,
    /// The price before tax.
    pub net: Money,
    /// The price with its tax; the same where none is stated.
    pub gross: Money,
}

/// Which case.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Takes {
    Least,
    AsPlanned,
    Most,
}

impl Takes {
    /// How much of a mix is made, of what is planned.
    pub(super) fn of_planned(self, mix: &Mix, work: &Work<'_>) -> f64 {
        let Some(bowl) = mix.bowls.first().filter(|bowl| bowl.total.g() > 0.0) else { return 1.0 };
        let bowls = bowl.count as f64;
        match self {
            Self::AsPlanned => 1.0,
            Self::Least => (mix.needed.low().g() / bowl.total.g()).ceil().clamp(1.0, bowls) / bowls,
            Self::Most => {
                // A mass that is stated is what will be mixed first; the hair may still take more.
                let by_hair = work.task.on_head.and_then(|on_head| on_head.demand).map(|demand| demand.mix.high());
                let most = by_hair.map_or(mix.needed.high().g(), |mass| mass.g().max(mix.needed.high().g()));
                (most / (bowl.total.g() * bowls)).max(1.0)
            }
        }
    }
}

/// The range of a price; none where both ends are the price.
pub(super) fn range(
    rule: &PriceRule,
    in_chair: Duration,
    least: &CostTable,
    most: &CostTable,
) -> Result<Option<PriceRange>, MoneyError> {
    let at = |table: &CostTable| -> Result<PriceAt, MoneyError> {
        let found = rule.price(table.total(), Some(in_chair))?;
        Ok(PriceAt { cost: table.total(), net: found.taxed.net, gross: found.taxed.gross })
    };
    let (least, most) = (at(least)?, at(most)?);
    Ok((least != most).then_some(PriceRange { least, most }))
}

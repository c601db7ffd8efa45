//! How an order and a quotation come about.

use super::{Quote, QuotePart, StockLevel};
use crate::{
    money::{COST_FORMULA, Measure, Money, MoneyError, PriceRule, ServicePrice, amount, of},
    quantity::Duration,
    source::{Basis, Interval, TracedInput, TracedResult, citations::money},
    text::traced,
};

const POINT: &str = "use in a day x days to delivery + reserve";
const PACKS: &str = "up ((use in a day x (days to delivery + days to cover) + reserve - on hand - on order) / pack)";
const NONE_DUE: &str = "none while on hand + on order exceed the point at which to order";
const BALANCE: &str = "gross price - in advance";
const DAYS: &str = "on hand / use in a day";

impl StockLevel {
    /// How the point at which to order, the packs and the days that the stock lasts come about.
    ///
    /// # Errors
    ///
    /// [`MoneyError`], as of [`reorder`](Self::reorder).
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{business::StockLevel, money::Measure, quantity::Mass};
    ///
    /// let grams = |g: f64| Mass::from_g(g).map(Measure::Mass);
    /// let stock = StockLevel {
    ///     on_hand: grams(900.0)?, on_order: grams(0.0)?, daily_use: grams(120.0)?, reserve: grams(300.0)?,
    /// };
    /// let trail = stock.trail(5, 14, grams(500.0)?)?;
    /// assert_eq!(trail[0].worked.as_deref(), Some("120 x 5 + 300"));
    /// assert_eq!((trail[1].what.as_str(), trail[1].value.as_str()), ("packs to order", "4"));
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn trail(&self, lead_days: u32, cover_days: u32, pack: Measure) -> Result<Vec<TracedResult>, MoneyError> {
        let found = self.reorder(lead_days, cover_days, pack)?;
        let measured = |what: &str, of: Measure| {
            Ok::<_, MoneyError>(TracedInput::exact(what, of.decimal()?.normalize(), of.unit()).resting(Basis::Stated))
        };
        let days = |what: &str, count: u32| TracedInput::exact(what, count, "days").resting(Basis::Stated);
        let (daily, reserve) = (measured("use in a day", self.daily_use)?, measured("reserve", self.reserve)?);
        let lead = days("days to delivery", lead_days);
        let (on_hand, on_order) = (measured("on hand", self.on_hand)?, measured("on order", self.on_order)?);
        let point =
            TracedResult::exact("point at which to order", found.reorder_point, found.unit, POINT, Basis::Stated)
                .made_of([daily.clone(), lead.clone(), reserve.clone()])
                .resting_on(&[money::STOCK_LEVELS.id]);
        let formula = if found.due { PACKS } else { NONE_DUE };
        let packs = TracedResult::exact("packs to order", found.packs, "packs", formula, Basis::Stated).made_of([
            daily.clone(),
            lead,
            days("days to cover", cover_days),
            reserve,
            on_hand.clone(),
            on_order,
            measured("pack", pack)?,
        ]);
        let lasts = self.days()?.map(|lasts| {
            TracedResult::exact("the stock on hand lasts", lasts.normalize(), "days", DAYS, Basis::Stated)
                .made_of([on_hand, daily])
        });
        Ok([point, packs].into_iter().chain(lasts).collect())
    }
}

impl Quote {
    /// How the expected price comes about: net by the rule, with the cost as expected, and gross, each with the price at the least
    /// and at the most of every part as its bounds; then what is paid in advance.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{business::*, money::*, source::{Basis, Interval}};
    ///
    /// let euros = |text: &str| Money::parse(text, Currency::from_code("EUR")?);
    /// let rule = PriceRule {
    ///     target: PriceTarget::Markup(Markup::from_percent(100.into())?),
    ///     tax: TaxRate::from_percent(0.into())?,
    ///     card: None,
    ///     ending: None,
    ///     rounding: Rounding::MidpointAwayFromZero,
    /// };
    /// let cost = Interval::new(euros("30.00")?, euros("34.00")?, euros("44.00")?)?;
    /// let parts = [QuotePart { what: "hands-on time".into(), cost, basis: Basis::Stated }];
    /// let trail = quote_range(&parts, &rule, None, Deposit::Percent(0.into()))?.trail(&parts, &rule, None);
    /// assert_eq!(trail[0].worked.as_deref(), Some("34.00"));
    /// assert_eq!(trail[1].worked.as_deref(), Some("34.00 x (1 + (100 / 100))"));
    /// assert_eq!(trail[1].bounds, Some(["60.00".to_owned(), "88.00".to_owned()]));
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn trail(
        &self,
        parts: &[QuotePart],
        rule: &PriceRule,
        in_chair: Option<Interval<Duration>>,
    ) -> Vec<TracedResult> {
        let ends = |of: fn(&ServicePrice) -> Money| {
            let [low, high] = [&self.low, &self.high].map(|end| of(end).decimal().to_string());
            (low != high).then_some([low, high])
        };
        let basis = parts.iter().fold(Basis::Derived, |basis, part| basis.weaker(part.basis));
        let part = |one: &QuotePart| {
            let ends =
                (!one.cost.is_exact()).then(|| [one.cost.low(), one.cost.high()].map(|end| end.decimal().to_string()));
            TracedInput { bounds: ends, ..of(&one.what, one.cost.best()).resting(one.basis) }
        };
        let best = &self.best;
        let cost = TracedInput { bounds: ends(before_card), ..of("cost", before_card(best)) };
        let sum = TracedResult {
            bounds: cost.bounds.clone(),
            ..amount("cost", before_card(best), COST_FORMULA, basis).made_of(parts.iter().map(part))
        };
        let minutes = in_chair.map(|time| traced("minutes in the chair", time));
        let [mut net, mut gross] = rule.traced((cost, minutes), best.target_net, (&best.taxed, best.moved), basis);
        net.bounds = ends(|end| end.target_net);
        gross.bounds = ends(|end| end.taxed.gross);
        for input in &mut gross.inputs {
            input.bounds = match input.what.as_str() {
                "net" => ends(|end| end.taxed.net),
                "tax" if input.unit == net.unit => ends(|end| end.taxed.tax),
                what if what == net.what => net.bounds.clone(),
                _ => None,
            };
        }
        let later = (!self.deposit.is_zero()).then(|| {
            let left = [&self.low, &self.high].map(|end| end.taxed.gross.minus(self.deposit));
            let bounds = match left {
                [Ok(low), Ok(high)] if low != high => Some([low, high].map(|end| end.decimal().to_string())),
                _ => None,
            };
            let gross = TracedInput { bounds: gross.bounds.clone(), ..of("gross price", best.taxed.gross) };
            let balance =
                amount("then to pay", self.balance, BALANCE, basis).made_of([gross, of("in advance", self.deposit)]);
            TracedResult { bounds, ..balance }
        });
        [sum, net, gross].into_iter().chain(later).collect()
    }
}

/// What the parts cost: the card fee comes of the price.
fn before_card(price: &ServicePrice) -> Money {
    price.set.cost.minus(price.card_fee).unwrap_or(price.set.cost)
}

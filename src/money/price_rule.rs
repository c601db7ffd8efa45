use super::{
    CardFee, Margin, Markup, Money, MoneyError, PriceEnding, Rounding, SetPrice, TaxRate, TaxedPrice, Toward,
    UnitPrice, exact,
    exact::{HUNDRED, SIXTY},
    price::cost_is_something,
    take_tax_out,
};
use crate::quantity::Duration;
use rust_decimal::Decimal;
use serde::Serialize;

/// What a price must achieve.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum PriceTarget {
    /// Profit as a part of the net price.
    Margin(Margin),
    /// Profit as a part of the cost, card fee included.
    Markup(Markup),
    /// So much over the cost for an hour of the chair. The cost is the variable cost then: what the hour contributes
    /// has to pay for the chair.
    PerChairHour(Money),
}

/// How prices are set in this salon; apply it to the cost of each service.
///
/// # Example
///
/// ```
/// use foilwork::{business::*, money::*};
///
/// let euros = |text: &str| Money::parse(text, Currency::from_code("EUR")?);
/// let rule = PriceRule {
///     target: PriceTarget::Margin(Margin::from_percent(30.into())?),
///     tax: TaxRate::from_percent(19.into())?,
///     card: Some(CardFee::new(CardRate::from_percent("1.5".parse()?)?, euros("0.10")?)?),
///     ending: Some((PriceEnding::new(euros("1.00")?, euros("0.90")?)?, Toward::Up)),
///     rounding: Rounding::MidpointAwayFromZero,
/// };
/// let price = rule.price(euros("61.20")?, None)?;
/// assert_eq!(price.taxed.gross.to_string(), "107.90 EUR");
/// assert_eq!(price.set.margin.to_string(), "30.61 % of the price");
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PriceRule {
    /// What the price must achieve.
    pub target: PriceTarget,
    /// The tax on top; 0 % where there is none.
    pub tax: TaxRate,
    /// The card fee, taken from the gross price; `None` when nobody pays by card.
    pub card: Option<CardFee>,
    /// The prices that are allowed on the list, gross, and which neighbour is taken.
    pub ending: Option<(PriceEnding, Toward)>,
    /// How the price, the tax and the fee become whole minor units.
    pub rounding: Rounding,
}

/// A price, its tax, and what it really leaves after rounding, price ending and card fee.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, schemars::JsonSchema)]
pub struct ServicePrice {
    /// Net, tax and gross.
    pub taxed: TaxedPrice,
    /// What the card terminal keeps.
    pub card_fee: Money,
    /// Net price against full cost (card fee included): profit, margin and mark-up as they come out.
    pub set: SetPrice,
    /// Net price at which the target is met exactly, before tax, rounding of the gross price and price ending.
    pub target_net: Money,
    /// Whether the price ending moved the gross price; then the net price is what is left of it without tax.
    pub moved: bool,
    /// What the price leaves over cost and fee for an hour of the chair, unrounded; `None` when no time was given.
    pub per_chair_hour: Option<UnitPrice>,
}

impl PriceRule {
    /// The price for a cost; the time in the chair is needed for [`PriceTarget::PerChairHour`].
    ///
    /// With cost `C`, fixed fee `F`, fee `f` of the gross price, tax `t` and margin `m`, all of the net price `N` has a
    /// taker: `N = C + F + f·N·(1 + t) + m·N`. A mark-up `k` is the margin `k / (1 + k)`; a target for the hour is an
    /// amount beside `C`.
    ///
    /// # Errors
    ///
    /// [`MoneyError::NothingLeft`] when margin and fee promise away the whole price; [`MoneyError::OutOfRange`] for a
    /// target by the hour without time; [`MoneyError::AmountOutOfRange`] unless cost and price are more than zero;
    /// [`MoneyError::MixedCurrencies`].
    pub fn price(&self, cost: Money, in_chair: Option<Duration>) -> Result<ServicePrice, MoneyError> {
        self.price_over(cost, cost, in_chair)
    }

    /// The price that meets the target over `base`, judged by what it leaves over `cost`.
    pub(crate) fn price_over(
        &self,
        base: Money,
        cost: Money,
        in_chair: Option<Duration>,
    ) -> Result<ServicePrice, MoneyError> {
        cost_is_something(cost)?;
        let target_net = self.target_net(base, in_chair)?;
        let mut taxed = super::add_tax(target_net, self.tax, self.rounding)?;
        let mut moved = false;
        if let Some((ending, toward)) = self.ending {
            let gross = ending.apply(taxed.gross, toward)?;
            moved = gross != taxed.gross;
            if moved {
                taxed = take_tax_out(gross, self.tax, self.rounding)?;
            }
        }
        Ok(ServicePrice { moved, ..self.assess(cost, taxed, target_net, in_chair)? })
    }

    /// What a gross price that is already on the list leaves, by the same tax and card fee.
    ///
    /// # Errors
    ///
    /// As [`price`](Self::price).
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::money::*;
    ///
    /// let euros = |text: &str| Money::parse(text, Currency::from_code("EUR")?);
    /// let rule = PriceRule {
    ///     target: PriceTarget::Margin(Margin::from_percent(30.into())?),
    ///     tax: TaxRate::from_percent(20.into())?,
    ///     card: None,
    ///     ending: None,
    ///     rounding: Rounding::MidpointAwayFromZero,
    /// };
    /// let listed = rule.check(euros("60.00")?, euros("96.00")?, None)?; // 80.00 net
    /// assert_eq!((listed.set.profit, listed.set.margin.percent()), (euros("20.00")?, 25.into()));
    /// assert_eq!(listed.target_net, euros("85.71")?); // 60.00 / 0.7
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn check(&self, cost: Money, gross: Money, in_chair: Option<Duration>) -> Result<ServicePrice, MoneyError> {
        self.check_over(cost, cost, gross, in_chair)
    }

    /// [`check`](Self::check) with the target over `base` and the judgement over `cost`.
    pub(crate) fn check_over(
        &self,
        base: Money,
        cost: Money,
        gross: Money,
        in_chair: Option<Duration>,
    ) -> Result<ServicePrice, MoneyError> {
        cost_is_something(cost)?;
        let target_net = self.target_net(base, in_chair)?;
        self.assess(cost, take_tax_out(gross, self.tax, self.rounding)?, target_net, in_chair)
    }

    fn assess(
        &self,
        cost: Money,
        taxed: TaxedPrice,
        target_net: Money,
        in_chair: Option<Duration>,
    ) -> Result<ServicePrice, MoneyError> {
        let card_fee = match self.card {
            Some(fee) => fee.of(taxed.gross, self.rounding)?,
            None => Money::zero(cost.currency()),
        };
        let set = SetPrice::of(cost.plus(card_fee)?, taxed.net)?;
        let per_chair_hour = match in_chair {
            Some(time) if time.min() > 0.0 => {
                let under = [exact::decimal(time.min(), "chair time")?];
                let per_unit = exact::ratio(&[set.profit.decimal(), SIXTY], &under, "amount per chair hour")?;
                Some(UnitPrice { per_unit, currency: cost.currency(), unit: "h" })
            }
            _ => None,
        };
        Ok(ServicePrice { taxed, card_fee, set, target_net, moved: false, per_chair_hour })
    }

    /// The net price that meets the target exactly, rounded once.
    pub(crate) fn target_net(&self, cost: Money, in_chair: Option<Duration>) -> Result<Money, MoneyError> {
        let too_large = || MoneyError::TooLarge { field: "price" };
        let (fee_percent, fee_fixed) = match self.card {
            Some(fee) => (fee.rate().percent(), fee.fixed()),
            None => (Decimal::ZERO, Money::zero(cost.currency())),
        };
        let mut needed = cost.plus(fee_fixed)?.decimal();
        // All in hundredths of a percent of the net price, so that nothing is divided before the end.
        let fee = fee_percent.checked_mul(HUNDRED + self.tax.percent()).ok_or_else(too_large)?;
        let myriad = Decimal::from(10_000);
        let (kept, scale) = match self.target {
            PriceTarget::Margin(margin) => {
                (HUNDRED.checked_mul(HUNDRED - margin.percent()).and_then(|kept| kept.checked_sub(fee)), myriad)
            }
            PriceTarget::Markup(markup) => {
                let factor = HUNDRED + markup.percent();
                let kept = fee.checked_mul(factor).and_then(|fee| (myriad * HUNDRED).checked_sub(fee));
                (kept, myriad.checked_mul(factor).ok_or_else(too_large)?)
            }
            PriceTarget::PerChairHour(target) => {
                target.same_currency(cost)?;
                let minutes = exact::decimal(in_chair.map_or(0.0, Duration::min), "chair time")?;
                if minutes <= Decimal::ZERO {
                    let allowed = "more than nothing, since the target is set for an hour of the chair";
                    return Err(MoneyError::OutOfRange { field: "chair time", value: minutes, unit: "min", allowed });
                }
                // Sixtyfold, for the same reason.
                let hourly = target.decimal().checked_mul(minutes).ok_or_else(too_large)?;
                needed = needed.checked_mul(SIXTY).and_then(|sum| sum.checked_add(hourly)).ok_or_else(too_large)?;
                ((myriad - fee).checked_mul(SIXTY), myriad)
            }
        };
        let kept = kept.ok_or_else(too_large)?;
        if kept <= Decimal::ZERO {
            let promised = match self.target {
                PriceTarget::Margin(margin) => margin.percent(),
                PriceTarget::Markup(markup) => markup.margin()?.percent(),
                PriceTarget::PerChairHour(_) => Decimal::ZERO,
            } + fee / HUNDRED;
            return Err(MoneyError::NothingLeft { promised, shares: "margin and card fee" });
        }
        Money::rounded(&[needed, scale], &[kept], cost.currency(), self.rounding, "price")
    }
}

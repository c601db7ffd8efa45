//! How the answers about the running of a salon come about.

use super::{
    CommissionRule, Denominator, DiscountBreakEven, Productivity, RentOrWage, SalesMixPlan, SalesNeeded,
    commission_pay, discount_break_even, productivity, share_tips, target_profit,
};
use crate::{
    money::{Money, MoneyError, Rounding, amount, of, percent, share},
    quantity::Duration,
    source::{Basis, TracedInput, TracedResult, citations::money},
    text::traced,
};
use rust_decimal::Decimal;

const SALES: &str = "up ((fixed costs + profit wanted) / (price - variable cost))";
const TAKINGS_FOR_IT: &str = "(fixed costs + profit wanted) x price / (price - variable cost)";
const TAKINGS: &str = "sales x price";
const LEFT_BEFORE: &str = "full price - cost";
const LEFT_AFTER: &str = "discounted price - cost";
const SALES_AFTER: &str = "up (sales before x (full price - cost) / (discounted price - cost))";
const MORE_SALES: &str = "(full price - discounted price) / (discounted price - cost) x 100";
const FLAT: &str = "takings x rate";
const OVER: &str = "largest (0, takings - threshold) x rate";
const SLICES: &str = "sum of each slice of the takings times its rate";
const PAY: &str = "base + commission";
const SHARE: &str = "tips x hours / all hours, to whole minor units that add up";
const RENTING: &str = "takings - takings x variable cost - rent - own costs";
const EMPLOYED: &str = "wage + takings x commission";
const ALIKE: &str = "(rent + own costs + wage) / (1 - variable cost - commission)";
const PRODUCTIVE: &str = "productive time / time to compare with x 100";

fn stated(what: &str, value: Money) -> TracedInput {
    of(what, value).resting(Basis::Stated)
}

fn rate(what: &str, value: Decimal, unit: &str) -> TracedInput {
    percent(what, value, unit).resting(Basis::Stated)
}

/// How many sales cover the fixed costs and leave a profit, and their takings.
///
/// # Errors
///
/// [`MoneyError`], as of [`target_profit`].
///
/// # Example
///
/// ```
/// use foilwork::{business::trace_target_profit, money::{Currency, Money, Rounding}};
///
/// let usd = |text: &str| Money::parse(text, Currency::from_code("USD")?);
/// let half_up = Rounding::MidpointAwayFromZero;
/// let [sales, ..] = trace_target_profit(usd("3000.00")?, usd("35.00")?, usd("20.00")?, usd("0.00")?, half_up)?;
/// assert_eq!(sales.worked.as_deref(), Some("up ((3000.00 + 0.00) / (35.00 - 20.00))"));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn trace_target_profit(
    fixed: Money,
    price: Money,
    variable: Money,
    profit: Money,
    rounding: Rounding,
) -> Result<[TracedResult; 3], MoneyError> {
    let SalesNeeded { count, sales, sales_exact, .. } = target_profit(fixed, price, variable, profit, rounding)?;
    let goal = || {
        [
            stated("fixed costs", fixed),
            stated("profit wanted", profit),
            stated("price", price),
            stated("variable cost", variable),
        ]
    };
    let source = [money::MANAGERIAL_ACCOUNTING.id];
    Ok([
        TracedResult::exact("sales needed", count, "sales", SALES, Basis::Stated).made_of(goal()).resting_on(&source),
        amount("their net takings", sales, TAKINGS, Basis::Stated)
            .made_of([TracedInput::exact("sales", count, "sales"), stated("price", price)]),
        amount("net takings that meet the goal exactly", sales_exact, TAKINGS_FOR_IT, Basis::Stated)
            .made_of(goal())
            .resting_on(&source),
    ])
}

/// How the net takings of a mix of services come about: the sum of those of each.
///
/// # Example
///
/// ```
/// use foilwork::{business::{SalesMixItem, sales_mix_target, trace_sales_mix}, money::{Currency, Money}};
///
/// let eur = |text: &str| Money::parse(text, Currency::from_code("EUR")?);
/// let foils =
///     SalesMixItem { what: "foils".into(), price: eur("100.00")?, variable: eur("40.00")?, weight: 1.into() };
/// let trail = trace_sales_mix(&sales_mix_target(eur("90.00")?, eur("0.00")?, &[foils])?);
/// assert_eq!((trail[0].value.as_str(), trail[1].worked.as_deref()), ("2", Some("200.00")));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[must_use]
pub fn trace_sales_mix(plan: &SalesMixPlan) -> Vec<TracedResult> {
    let source = [money::MANAGERIAL_ACCOUNTING.id];
    let counts = plan.services.iter().map(|line| TracedInput::exact(&line.what, line.count, "sales"));
    let takings = plan.services.iter().map(|line| of(&line.what, line.sales));
    vec![
        TracedResult::exact("sales needed", plan.count, "sales", "sum of the lines, each rounded up", Basis::Stated)
            .made_of(counts)
            .resting_on(&source),
        amount("their net takings", plan.sales, "sum of the lines", Basis::Stated).made_of(takings),
    ]
}

/// How what each sale leaves before and after a discount comes about, and the sales that leave as much as before.
///
/// # Errors
///
/// [`MoneyError`], as of [`discount_break_even`].
///
/// # Example
///
/// ```
/// use foilwork::{business::trace_discount, money::{Currency, Money}};
///
/// let eur = |text: &str| Money::parse(text, Currency::from_code("EUR")?);
/// let [.., sales, more] = trace_discount(eur("100.00")?, eur("80.00")?, eur("50.00")?, 30)?;
/// assert_eq!(sales.worked.as_deref(), Some("up (30 x (100.00 - 50.00) / (80.00 - 50.00))"));
/// assert_eq!((sales.value.as_str(), more.value.as_str()), ("50", "66.666667"));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn trace_discount(
    before: Money,
    after: Money,
    variable: Money,
    count: u32,
) -> Result<[TracedResult; 4], MoneyError> {
    let DiscountBreakEven { contribution_before, contribution_after, count_needed, extra_percent } =
        discount_break_even(before, after, variable, count)?;
    let full = || stated("full price", before);
    let (reduced, cost) = (|| of("discounted price", after), || stated("cost", variable));
    let sold = TracedInput::exact("sales before", count, "sales").resting(Basis::Stated);
    let source = [money::MANAGERIAL_ACCOUNTING.id];
    let left = |what, value, formula| amount(what, value, formula, Basis::Stated).resting_on(&source);
    Ok([
        left("left by each sale", contribution_before, LEFT_BEFORE).made_of([full(), cost()]),
        left("left by each with the discount", contribution_after, LEFT_AFTER).made_of([reduced(), cost()]),
        TracedResult::exact("sales needed", count_needed, "sales", SALES_AFTER, Basis::Stated)
            .made_of([sold, full(), reduced(), cost()])
            .resting_on(&source),
        share("more sales", extra_percent, "% of the sales before", MORE_SALES)
            .made_of([full(), reduced(), cost()])
            .resting_on(&source),
    ])
}

/// How commission and pay come about.
///
/// # Errors
///
/// [`MoneyError`], as of [`commission_pay`].
///
/// # Example
///
/// ```
/// use foilwork::{business::{CommissionRule, trace_commission}, money::{CommissionRate, Currency, Money, Rounding}};
///
/// let eur = |text: &str| Money::parse(text, Currency::from_code("EUR")?);
/// let rule = CommissionRule::OverThreshold { threshold: eur("500.00")?, rate: CommissionRate::from_percent(5.into())? };
/// let [commission, pay] =
///     trace_commission(eur("120.00")?, &rule, eur("1540.00")?, Rounding::MidpointAwayFromZero)?;
/// assert_eq!(commission.worked.as_deref(), Some("largest (0, 1540.00 - 500.00) x (5 / 100)"));
/// assert_eq!((commission.value.as_str(), pay.value.as_str()), ("52.00", "172.00"));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn trace_commission(
    base: Money,
    rule: &CommissionRule,
    takings: Money,
    rounding: Rounding,
) -> Result<[TracedResult; 2], MoneyError> {
    let pay = commission_pay(base, rule, takings, rounding)?;
    let all = stated("takings", takings);
    let of_takings = "% of the takings";
    let found = |formula| amount("commission", pay.commission, formula, Basis::Stated);
    let commission = match rule {
        CommissionRule::Flat(flat) => found(FLAT).made_of([all, rate("rate", flat.percent(), of_takings)]),
        CommissionRule::OverThreshold { threshold, rate: over } => {
            found(OVER).made_of([all, stated("threshold", *threshold), rate("rate", over.percent(), of_takings)])
        }
        CommissionRule::Tiered(tiers) => {
            let (mut inputs, mut parts, mut from) = (vec![all], Vec::new(), Decimal::ZERO);
            for (place, tier) in (1..).zip(tiers) {
                let end = tier.up_to.map_or(takings.decimal(), Money::decimal);
                inputs.extend(tier.up_to.map(|end| stated(&format!("slice {place} ends"), end)));
                inputs.push(rate(&format!("rate of slice {place}"), tier.rate.percent(), of_takings));
                if takings.decimal() > from {
                    let slice = end.min(takings.decimal());
                    parts.push(format!("({slice} - {from}) x {} / 100", tier.rate.percent().normalize()));
                }
                from = end;
            }
            found(SLICES).working(if parts.is_empty() { "0".to_owned() } else { parts.join(" + ") }).made_of(inputs)
        }
    };
    let total = amount("pay", pay.total, PAY, Basis::Stated)
        .made_of([stated("base", pay.base), of("commission", pay.commission)]);
    Ok([commission.resting_on(&[money::COMMISSION.id]), total])
}

/// How each share of pooled tips comes about.
///
/// # Errors
///
/// [`MoneyError`], as of [`share_tips`].
///
/// # Example
///
/// ```
/// use foilwork::{business::trace_tips, money::{Currency, Money}, quantity::Duration};
///
/// let tips = Money::parse("50.00", Currency::from_code("EUR")?)?;
/// let trail = trace_tips(tips, &[Duration::from_h(8.0)?, Duration::from_h(2.0)?])?;
/// assert_eq!((trail[0].value.as_str(), trail[0].worked.as_deref()), ("40.00", Some("50.00 x 8 / (8 + 2)")));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn trace_tips(tips: Money, worked: &[Duration]) -> Result<Vec<TracedResult>, MoneyError> {
    let hours: Vec<String> = worked.iter().map(|time| (time.min() / 60.0).to_string()).collect();
    let all = format!("({})", hours.join(" + "));
    let one = |((share, own), place): ((Money, &String), usize)| {
        amount(&format!("share of person {place}"), share, SHARE, Basis::Stated)
            .working(format!("{} x {own} / {all}", tips.decimal()))
            .made_of([
                stated("tips", tips),
                TracedInput::exact("hours", own, "h").resting(Basis::Stated),
                TracedInput::exact("all hours", worked.iter().map(|time| time.min()).sum::<f64>() / 60.0, "h"),
            ])
    };
    Ok(share_tips(tips, worked)?.into_iter().zip(&hours).zip(1..).map(one).collect())
}

impl RentOrWage {
    /// How both ways at some takings, and the takings at which they are alike, come about.
    ///
    /// # Errors
    ///
    /// [`MoneyError`], as of [`at`](Self::at) and [`break_even_takings`](Self::break_even_takings).
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{business::RentOrWage, money::{CommissionRate, Currency, Money, Rounding}};
    ///
    /// let euros = |text: &str| Money::parse(text, Currency::from_code("EUR")?);
    /// let choice = RentOrWage {
    ///     rent: euros("200.00")?,
    ///     own_costs: euros("50.00")?,
    ///     variable_percent: 12.into(),
    ///     wage: euros("480.00")?,
    ///     commission: CommissionRate::from_percent(15.into())?,
    /// };
    /// let [renting, ..] = choice.trail(euros("1200.00")?, Rounding::MidpointAwayFromZero)?;
    /// assert_eq!(renting.worked.as_deref(), Some("1200.00 - 1200.00 x (12 / 100) - 200.00 - 50.00"));
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn trail(&self, takings: Money, rounding: Rounding) -> Result<[TracedResult; 3], MoneyError> {
        let (at, alike) = (self.at(takings, rounding)?, self.break_even_takings(rounding)?);
        let of_takings = "% of the takings";
        let (all, rent, own) =
            (stated("takings", takings), stated("rent", self.rent), stated("own costs", self.own_costs));
        let variable = rate("variable cost", self.variable_percent, of_takings);
        let (wage, commission) = (stated("wage", self.wage), rate("commission", self.commission.percent(), of_takings));
        Ok([
            amount("left when renting", at.renting, RENTING, Basis::Stated).made_of([
                all.clone(),
                variable.clone(),
                rent.clone(),
                own.clone(),
            ]),
            amount("earned when employed", at.employed, EMPLOYED, Basis::Stated).made_of([
                all,
                wage.clone(),
                commission.clone(),
            ]),
            amount("takings at which both leave the same", alike, ALIKE, Basis::Stated)
                .made_of([rent, own, wage, variable, commission]),
        ])
    }
}

/// How productive time as a percentage of another time comes about.
///
/// # Errors
///
/// [`MoneyError`], as of [`productivity`].
///
/// # Example
///
/// ```
/// use foilwork::{business::{Denominator, trace_productivity}, quantity::Duration};
///
/// let found = trace_productivity(Duration::from_h(30.0)?, Duration::from_h(40.0)?, Denominator::PaidTime)?;
/// assert_eq!((found.value.as_str(), found.unit.as_str()), ("75", "% of paid time"));
/// assert_eq!(found.worked.as_deref(), Some("1800 / 2400 x 100"));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn trace_productivity(
    productive: Duration,
    of_time: Duration,
    denominator: Denominator,
) -> Result<TracedResult, MoneyError> {
    let Productivity { percent, of } = productivity(productive, of_time, denominator)?;
    let unit = format!("% of {}", of.words());
    Ok(TracedResult::exact("productivity", percent.normalize(), &unit, PRODUCTIVE, Basis::Stated).made_of([
        traced("productive time", productive.into()).resting(Basis::Stated),
        traced("time to compare with", of_time.into()).resting(Basis::Stated),
    ]))
}

use super::{Written, field::Fields, place::Place};
use crate::{
    money::{
        CardFee, CardRate, Currency, Labour, Margin, Markup, Money, OnCosts, Overhead, PriceEnding, PriceRule,
        PriceTarget, Rounding, TaxRate, Toward,
    },
    quantity::Duration,
    reader::{InField, Problems},
};
use rust_decimal::Decimal;
use serde::Deserialize;

/// What a salon pays and how it prices: everything that does not belong to one service.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Business {
    /// The currency of every amount.
    pub currency: Currency,
    /// What hands-on time costs.
    pub labour: Labour,
    /// What chair time costs.
    pub overhead: Overhead,
    /// How prices are set, and the one rounding of every line.
    pub rule: PriceRule,
}

/// The terms as they are written in a file: amounts, percentages and hours as texts or numbers.
///
/// # Example
///
/// ```
/// use foilwork::business::list::BusinessTerms;
///
/// let terms: BusinessTerms = serde_json::from_str(
///     r#"{
///         "currency": "EUR", "wage_per_h": "16.00", "on_costs_percent": "21", "paid_h": 1720, "productive_h": 1030,
///         "overhead": "48600.00", "chairs": 4, "productive_h_per_chair": 1150,
///         "margin_percent": 30, "tax_percent": 19
///     }"#,
/// )?;
/// let business = terms.check()?;
/// assert_eq!(business.currency.code(), "EUR");
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, Default, PartialEq, Eq, Deserialize, schemars::JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct BusinessTerms {
    /// Three-letter code of ISO 4217.
    pub currency: String,
    /// Wage for one hour.
    pub wage_per_h: Written,
    /// What the employer pays on top, in percent of the wage; 0 when left out.
    pub on_costs_percent: Option<Written>,
    /// Paid hours of a period, for one person.
    pub paid_h: Written,
    /// Productive hours of the same period: with hands on a guest.
    pub productive_h: Written,
    /// Overhead of a period: rent, energy, insurance, and the rest.
    pub overhead: Written,
    /// How many chairs carry it.
    pub chairs: Written,
    /// Productive hours of one chair in that period.
    pub productive_h_per_chair: Written,
    /// Profit wanted, in percent of the net price. Give one of the three targets.
    pub margin_percent: Option<Written>,
    /// Profit wanted, in percent of the cost.
    pub markup_percent: Option<Written>,
    /// Contribution wanted for an hour of the chair, over all costs but the overhead.
    pub per_chair_hour: Option<Written>,
    /// Tax in percent of the net price; 0 when left out.
    pub tax_percent: Option<Written>,
    /// What the card terminal keeps, in percent of the payment; 0 when left out.
    pub card_percent: Option<Written>,
    /// What the card terminal keeps of each payment; 0 when left out.
    pub card_fixed: Option<Written>,
    /// The step of the price list, for example 1.00.
    pub price_step: Option<Written>,
    /// How prices end within a step, for example 0.90; 0 when left out.
    pub price_ending: Option<Written>,
    /// Which neighbour is taken: `up` (when left out), `down`, `nearest`.
    pub price_toward: Option<Toward>,
    /// How each line becomes whole minor units; `midpoint-away-from-zero` when left out.
    pub rounding: Option<Rounding>,
}

impl BusinessTerms {
    /// The checked terms.
    ///
    /// # Errors
    ///
    /// Everything that is wrong, together, each with its field.
    pub fn check(&self) -> Result<Business, Problems> {
        let currency = Currency::from_code(self.currency.trim()).in_field("currency")?;
        let mut fields = Fields::new(Place::Whole, |name: &str| self.text(name));
        let zero = Money::zero(currency);

        let wage = fields.money("wage_per_h", currency);
        let wage = fields.required("wage_per_h", wage);
        let on_costs = fields.decimal("on_costs_percent", OnCosts::from_percent);
        let paid = hours(&mut fields, "paid_h");
        let productive = hours(&mut fields, "productive_h");
        let overhead = fields.money("overhead", currency);
        let overhead = fields.required("overhead", overhead);
        let chairs = fields.count("chairs");
        let chairs = fields.required("chairs", chairs);
        let per_chair = hours(&mut fields, "productive_h_per_chair");
        let tax = fields.decimal("tax_percent", TaxRate::from_percent);
        let card_rate = fields.decimal("card_percent", CardRate::from_percent);
        let card_fixed = fields.money("card_fixed", currency);
        let step = fields.money("price_step", currency);
        let ending = fields.money("price_ending", currency);
        let margin = fields.decimal("margin_percent", Margin::from_percent).map(PriceTarget::Margin);
        let markup = fields.decimal("markup_percent", Markup::from_percent).map(PriceTarget::Markup);
        let hourly = fields.money("per_chair_hour", currency).map(PriceTarget::PerChairHour);

        let given = [&self.margin_percent, &self.markup_percent, &self.per_chair_hour];
        if given.iter().filter(|target| target.is_some()).count() != 1 {
            fields.problem("margin_percent, markup_percent, per_chair_hour", "give exactly one of these targets");
        }
        let labour = wage.zip(paid.zip(productive)).and_then(|(wage, (paid, productive))| {
            let on_costs = on_costs.or_else(|| OnCosts::from_percent(Decimal::ZERO).ok())?;
            Labour::new(wage, on_costs, paid, productive)
                .map_err(|problem| fields.problem("productive_h", problem))
                .ok()
        });
        let overhead = overhead.zip(chairs.zip(per_chair)).and_then(|(overhead, (chairs, per_chair))| {
            Overhead::new(overhead, chairs, per_chair).map_err(|problem| fields.problem("overhead", problem)).ok()
        });
        let ending = match (step, ending) {
            (Some(step), ending) => PriceEnding::new(step, ending.unwrap_or(zero))
                .map_err(|problem| fields.problem("price_ending", problem))
                .ok()
                .map(|ending| (ending, self.price_toward.unwrap_or(Toward::Up))),
            (None, Some(_)) => {
                fields.problem("price_step", "is missing: price_ending needs the step it repeats in");
                None
            }
            (None, None) => None,
        };
        let rate = card_rate.or_else(|| CardRate::from_percent(Decimal::ZERO).ok());
        let card = rate.and_then(|rate| CardFee::new(rate, card_fixed.unwrap_or(zero)).ok());
        let tax = tax.or_else(|| TaxRate::from_percent(Decimal::ZERO).ok());
        let target = margin.or(markup).or(hourly);
        let rounding = self.rounding.unwrap_or(Rounding::MidpointAwayFromZero);
        match (labour, overhead, target, tax) {
            (Some(labour), Some(overhead), Some(target), Some(tax)) if fields.problems.0.is_empty() => {
                Ok(Business { currency, labour, overhead, rule: PriceRule { target, tax, card, ending, rounding } })
            }
            _ => Err(fields.problems),
        }
    }

    fn text(&self, name: &str) -> Option<&str> {
        let optional = match name {
            "on_costs_percent" => &self.on_costs_percent,
            "margin_percent" => &self.margin_percent,
            "markup_percent" => &self.markup_percent,
            "per_chair_hour" => &self.per_chair_hour,
            "tax_percent" => &self.tax_percent,
            "card_percent" => &self.card_percent,
            "card_fixed" => &self.card_fixed,
            "price_step" => &self.price_step,
            "price_ending" => &self.price_ending,
            _ => return self.always(name),
        };
        optional.as_ref().map(Written::as_str)
    }

    fn always(&self, name: &str) -> Option<&str> {
        let field = match name {
            "wage_per_h" => &self.wage_per_h,
            "paid_h" => &self.paid_h,
            "productive_h" => &self.productive_h,
            "overhead" => &self.overhead,
            "chairs" => &self.chairs,
            "productive_h_per_chair" => &self.productive_h_per_chair,
            _ => return None,
        };
        Some(field.as_str())
    }
}

fn hours<'a, F: Fn(&str) -> Option<&'a str>>(fields: &mut Fields<'a, F>, column: &'static str) -> Option<Duration> {
    let hours = fields.quantity(column, Duration::from_h);
    fields.required(column, hours)
}

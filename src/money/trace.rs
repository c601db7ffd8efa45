use super::{
    CardFee, DiscountedPrice, Margin, Markup, Money, MoneyError, PriceRule, PriceTarget, SetPrice, TaxRate, TaxedPrice,
};
use crate::source::{Basis, TracedInput, TracedResult, citations::money};
use rust_decimal::Decimal;

pub(crate) const COST_FORMULA: &str = "sum of the lines, each rounded once";
const BY_MARGIN: &str = "cost / (1 - margin)";
const BY_MARGIN_AND_CARD: &str = "(cost + fixed card fee) / (1 - margin - card fee x (1 + tax))";
const BY_MARKUP: &str = "cost x (1 + mark-up)";
const BY_MARKUP_AND_CARD: &str = "(cost + fixed card fee) / (1 / (1 + mark-up) - card fee x (1 + tax))";
const BY_THE_HOUR: &str = "cost + amount for an hour x minutes in the chair / 60";
const BY_THE_HOUR_AND_CARD: &str =
    "(cost + fixed card fee + amount for an hour x minutes in the chair / 60) / (1 - card fee x (1 + tax))";
const TO_THE_LIST: &str = "net price that is asked for, with its tax, moved to a price of the list";
const GROSS_FORMULA: &str = "net + tax";
const NET_FORMULA: &str = "gross price / (1 + tax)";
const PROFIT_FORMULA: &str = "net price - cost";
const MARGIN_FORMULA: &str = "profit / net price x 100";
const MARKUP_FORMULA: &str = "profit / cost x 100";
const MARKUP_OF_MARGIN: &str = "margin / (1 - margin) x 100";
const MARGIN_OF_MARKUP: &str = "mark-up / (1 + mark-up) x 100";
const OFF_FORMULA: &str = "full price x discount";
const AFTER_FORMULA: &str = "full price - taken off";
const FULL_FORMULA: &str = "discounted price / (1 - discount)";
const OFF_FOUND_FORMULA: &str = "full price - discounted price";

/// An amount as a result.
pub(crate) fn amount(what: &str, value: Money, formula: &'static str, basis: Basis) -> TracedResult {
    TracedResult::exact(what, value.decimal(), value.currency().code(), formula, basis)
}

/// An amount that goes into one.
pub(crate) fn of(what: &str, value: Money) -> TracedInput {
    TracedInput::exact(what, value.decimal(), value.currency().code())
}

/// So do percent.
pub(crate) fn percent(what: &str, value: Decimal, unit: &str) -> TracedInput {
    TracedInput::exact(what, value.normalize(), unit)
}

/// What is left of a gross price without its tax.
pub(crate) fn net_of(
    (what, gross): (&str, Money),
    tax: TaxRate,
    (name, net): (&str, Money),
    basis: Basis,
) -> TracedResult {
    amount(name, net, NET_FORMULA, basis)
        .made_of([of(what, gross), percent("tax", tax.percent(), "% of the net price")])
        .resting_on(&[money::CALCULATING_VAT.id])
}

impl PriceTarget {
    /// By which formula it makes a net price of a cost; with a card fee of the gross price,
    /// `N = C + F + f N (1 + t) + m N`.
    pub(crate) const fn formula(self, with_card: bool) -> &'static str {
        match (self, with_card) {
            (Self::Margin(_), false) => BY_MARGIN,
            (Self::Margin(_), true) => BY_MARGIN_AND_CARD,
            (Self::Markup(_), false) => BY_MARKUP,
            (Self::Markup(_), true) => BY_MARKUP_AND_CARD,
            (Self::PerChairHour(_), false) => BY_THE_HOUR,
            (Self::PerChairHour(_), true) => BY_THE_HOUR_AND_CARD,
        }
    }

    /// What goes into it.
    pub(crate) fn asked(self) -> TracedInput {
        match self {
            Self::Margin(margin) => percent("margin, as asked for", margin.percent(), "% of the price"),
            Self::Markup(markup) => percent("mark-up, as asked for", markup.percent(), "% of the cost"),
            Self::PerChairHour(hour) => of("amount for an hour", hour),
        }
    }
}

impl PriceRule {
    /// How the net price of a cost and the gross price come about, which the list may move; `minutes` are those in the chair.
    pub(crate) fn traced(
        &self,
        (cost, minutes): (TracedInput, Option<TracedInput>),
        target_net: Money,
        (taxed, moved): (&TaxedPrice, bool),
        basis: Basis,
    ) -> [TracedResult; 2] {
        let tax = percent("tax", self.tax.percent(), "% of the net price");
        let name = if moved { "net price that is asked for" } else { "net price" };
        let minutes = minutes.filter(|_| matches!(self.target, PriceTarget::PerChairHour(_)));
        let card = |fee: CardFee| {
            [
                percent("card fee", fee.rate().percent(), "% of the payment"),
                of("fixed card fee", fee.fixed()),
                tax.clone(),
            ]
        };
        let card = self.card.into_iter().flat_map(card);
        let net = amount(name, target_net, self.target.formula(self.card.is_some()), basis)
            .made_of([cost, self.target.asked()].into_iter().chain(minutes).chain(card))
            .resting_on(&[money::CONTEMPORARY_MATHEMATICS.id]);
        let Some((ending, toward)) = self.ending.filter(|_| moved) else {
            return [net, TracedResult { basis, ..taxed.trail() }];
        };
        let gross = amount("gross price", taxed.gross, TO_THE_LIST, basis).made_of([
            of(name, target_net),
            tax,
            of("lowest price of the list", ending.ending()),
            of("from one price of the list to the next", ending.step()),
            TracedInput::exact("which neighbour is taken", toward, "direction"),
        ]);
        [net, gross]
    }
}

impl SetPrice {
    /// How the price came about, where it was set to reach a margin or a mark-up, and what it leaves.
    ///
    /// A price for an hour of the chair has no line of its own: the minutes it was made from are not kept with it.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::money::{Currency, Margin, Money, PriceTarget, Rounding, price_from_margin};
    ///
    /// let cost = Money::parse("75.00", Currency::from_code("EUR")?)?;
    /// let margin = Margin::from_percent(25.into())?;
    /// let set = price_from_margin(cost, margin, Rounding::MidpointAwayFromZero)?;
    /// let trail = set.trail(Some(PriceTarget::Margin(margin)));
    /// assert_eq!((trail[0].value.as_str(), trail[0].formula.as_ref()), ("100.00", "cost / (1 - margin)"));
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn trail(&self, asked: Option<PriceTarget>) -> Vec<TracedResult> {
        let cost = of("cost", self.cost);
        let asked = asked.filter(|asked| !matches!(asked, PriceTarget::PerChairHour(_)));
        let price = asked.map(|asked| {
            amount("net price", self.price, asked.formula(false), Basis::Stated)
                .made_of([cost.clone(), asked.asked()])
                .resting_on(&[money::CONTEMPORARY_MATHEMATICS.id])
        });
        let profit = amount("profit", self.profit, PROFIT_FORMULA, Basis::Stated)
            .made_of([of("net price", self.price), cost.clone()]);
        let part = |what: &str, value: Decimal, unit, formula, whole: TracedInput| {
            share(what, value, unit, formula).made_of([of("profit", self.profit), whole])
        };
        let margin =
            part("margin", self.margin.percent(), "% of the price", MARGIN_FORMULA, of("net price", self.price));
        let markup = part("mark-up", self.markup.percent(), "% of the cost", MARKUP_FORMULA, cost.clone());
        price.into_iter().chain([profit, margin, markup]).collect()
    }
}

impl TaxedPrice {
    /// How the gross price comes about.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::money::{Currency, Money, Rounding, TaxRate, add_tax};
    ///
    /// let net = Money::parse("100.00", Currency::from_code("EUR")?)?;
    /// let taxed = add_tax(net, TaxRate::from_percent(19.into())?, Rounding::MidpointAwayFromZero)?;
    /// assert_eq!((taxed.trail().value.as_str(), taxed.trail().formula.as_ref()), ("119.00", "net + tax"));
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn trail(&self) -> TracedResult {
        amount("gross price", self.gross, GROSS_FORMULA, Basis::Stated)
            .made_of([of("net", self.net), of("tax", self.tax)])
            .resting_on(&[money::CALCULATING_VAT.id])
    }
}

impl DiscountedPrice {
    /// How what is taken off, and what is left to pay, come about from the full price; of one that was found from what is left to pay
    /// how it was, and what is taken off.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::money::{Currency, Discount, Money, Rounding, apply_discount};
    ///
    /// let full = Money::parse("85.00", Currency::from_code("EUR")?)?;
    /// let offer = apply_discount(full, Discount::from_percent(15.into())?, Rounding::MidpointAwayFromZero)?;
    /// let [off, after] = offer.trail();
    /// assert_eq!(off.worked.as_deref(), Some("85.00 x (15 / 100)"));
    /// assert_eq!((after.value.as_str(), after.worked.as_deref()), ("72.25", Some("85.00 - 12.75")));
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn trail(&self) -> [TracedResult; 2] {
        let (full, after) = (of("full price", self.before), of("discounted price", self.after));
        let discount = percent("discount", self.discount.percent(), "% of the full price");
        if self.full_price_found {
            return [
                amount("full price", self.before, FULL_FORMULA, Basis::Stated)
                    .made_of([after.clone(), discount])
                    .resting_on(&[money::CONTEMPORARY_MATHEMATICS.id, money::PERCENTAGES.id]),
                amount("taken off", self.off, OFF_FOUND_FORMULA, Basis::Stated).made_of([full, after]),
            ];
        }
        [
            amount("taken off", self.off, OFF_FORMULA, Basis::Stated)
                .made_of([full.clone(), discount])
                .resting_on(&[money::CONTEMPORARY_MATHEMATICS.id]),
            amount("discounted price", self.after, AFTER_FORMULA, Basis::Stated)
                .made_of([full, of("taken off", self.off)]),
        ]
    }
}

/// How the mark-up that sets the same price as a margin comes about.
///
/// # Errors
///
/// [`MoneyError::OutOfRange`], as of [`Margin::markup`].
///
/// # Example
///
/// ```
/// use foilwork::money::{Margin, trace_markup};
///
/// let markup = trace_markup(Margin::from_percent(20.into())?)?;
/// assert_eq!((markup.value.as_str(), markup.worked.as_deref()), ("25", Some("(20 / 100) / (1 - (20 / 100)) x 100")));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn trace_markup(margin: Margin) -> Result<TracedResult, MoneyError> {
    let asked = percent("margin, as asked for", margin.percent(), "% of the price");
    Ok(share("mark-up", margin.markup()?.percent(), "% of the cost", MARKUP_OF_MARGIN).made_of([asked]))
}

/// How the margin that sets the same price as a mark-up comes about.
///
/// # Errors
///
/// [`MoneyError::OutOfRange`], as of [`Markup::margin`].
///
/// # Example
///
/// ```
/// use foilwork::money::{Markup, trace_margin};
///
/// let margin = trace_margin(Markup::from_percent(25.into())?)?;
/// assert_eq!((margin.value.as_str(), margin.worked.as_deref()), ("20", Some("(25 / 100) / (1 + (25 / 100)) x 100")));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn trace_margin(markup: Markup) -> Result<TracedResult, MoneyError> {
    let asked = percent("mark-up, as asked for", markup.percent(), "% of the cost");
    Ok(share("margin", markup.margin()?.percent(), "% of the price", MARGIN_OF_MARKUP).made_of([asked]))
}

/// A percentage as a result, to six decimals.
pub(crate) fn share(what: &str, value: Decimal, unit: &str, formula: &'static str) -> TracedResult {
    TracedResult::exact(what, value.round_dp(6).normalize(), unit, formula, Basis::Stated)
        .resting_on(&[money::CONTEMPORARY_MATHEMATICS.id])
}

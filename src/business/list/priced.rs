use super::{Business, PackUse, PricedLine, ServiceLine, marking::marks, place::Place};
use crate::{
    business::{ChairService, contribution_per_chair_hour},
    money::{CostSource, Money, MoneyError, PriceRule, PriceTarget, Rounding, SetPrice, TaxRate, cost_line},
    reader::{InField, Problems},
};
use serde::Serialize;

/// The sums over a table, each amount times the number sold.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Totals {
    /// Services sold.
    pub sold: u64,
    /// Product.
    pub product: Money,
    /// Developer.
    pub developer: Money,
    /// Consumables.
    pub consumables: Money,
    /// Laundry.
    pub laundry: Money,
    /// Labour.
    pub labour: Money,
    /// Overhead.
    pub overhead: Money,
    /// Card fees.
    pub card_fee: Money,
    /// All costs.
    pub cost: Money,
    /// Takings without tax.
    pub net: Money,
    /// Tax.
    pub tax: Money,
    /// Takings with tax.
    pub gross: Money,
    /// Net takings less all costs.
    pub profit: Money,
}

impl PricedLine {
    /// Every amount with its name, in the order of a written table.
    #[must_use]
    pub const fn amounts(&self) -> [(&'static str, Money); 12] {
        [
            ("product", self.product),
            ("developer", self.developer),
            ("consumables", self.consumables),
            ("laundry", self.laundry),
            ("labour", self.labour),
            ("overhead", self.overhead),
            ("card_fee", self.card_fee),
            ("cost", self.cost),
            ("net", self.net),
            ("tax", self.tax),
            ("gross", self.gross),
            ("profit", self.profit),
        ]
    }
}

impl Totals {
    /// Every amount with its name, in the order of a written table.
    #[must_use]
    pub const fn amounts(&self) -> [(&'static str, Money); 12] {
        [
            ("product", self.product),
            ("developer", self.developer),
            ("consumables", self.consumables),
            ("laundry", self.laundry),
            ("labour", self.labour),
            ("overhead", self.overhead),
            ("card_fee", self.card_fee),
            ("cost", self.cost),
            ("net", self.net),
            ("tax", self.tax),
            ("gross", self.gross),
            ("profit", self.profit),
        ]
    }

    /// Whether the sums agree across: parts make the cost, net and tax the gross, net less cost the profit.
    ///
    /// They always do; the check is there for a reader of the table elsewhere.
    #[must_use]
    pub fn reconcile(&self) -> bool {
        let parts =
            [self.product, self.developer, self.consumables, self.laundry, self.labour, self.overhead, self.card_fee];
        Money::total(parts, self.cost.currency()) == Ok(self.cost)
            && self.net.plus(self.tax) == Ok(self.gross)
            && self.net.minus(self.cost) == Ok(self.profit)
    }
}

/// A list of services, costed and priced, with its sums.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct PricedTable {
    /// One line for each service, in the order of the list.
    pub lines: Vec<PricedLine>,
    /// The sums.
    pub totals: Totals,
    /// The tax that every price has in it.
    pub tax_percent: TaxRate,
    /// How each amount became whole minor units.
    pub rounding: Rounding,
    /// How prices that the list does not say were set.
    #[serde(skip)]
    pub rule: PriceRule,
}

/// Costs and prices every service of a list.
///
/// A service with a price on the list keeps it and is judged by it; one without gets a price by the rule. Under
/// [`PriceTarget::PerChairHour`] the target is met over all costs but the overhead, which the hour has to earn.
///
/// # Errors
///
/// Every service that cannot be priced, together; sums that are too large.
///
/// # Example
///
/// ```
/// use foilwork::{business::list::{parse_csv, price_services}, reader::Format, shop};
///
/// let shop = "currency = \"EUR\"\n[terms]\nwage_per_h = \"18.00\"\nproductive_percent = 50\n\
///             overhead_per_h = \"10.00\"\nmargin_percent = 25";
/// let business = shop::Shop::new(&shop::parse_shop(shop, Format::Toml)?)?.business()?;
/// let text = "service,product_pack_price,product_pack_g,product_g,hands_on_min,chair_min,sold\n\
///             half head of foils,26.40,500,40,70,120,3\n";
/// let list = parse_csv(text, business.currency)?;
/// let table = price_services(&list, &business)?;
/// // 26.40 x 40/500 + 18.00 x 2 x 70/60 + 10.00 x 2 = 2.11 + 42.00 + 20.00
/// assert_eq!(table.lines[0].cost.to_string(), "64.11 EUR");
/// assert_eq!(table.lines[0].net.to_string(), "85.48 EUR");
/// assert_eq!(table.totals.profit.to_string(), "64.11 EUR"); // 3 x 21.37
/// let sums = table.totals.amounts();
/// assert!(sums.iter().any(|(name, amount)| *name == "profit" && *amount == table.totals.profit));
/// assert!(table.totals.reconcile());
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn price_services(list: &[ServiceLine], business: &Business) -> Result<PricedTable, Problems> {
    let mut problems = Problems::default();
    let mut lines = Vec::with_capacity(list.len());
    for (place, line) in list.iter().enumerate() {
        match price_line(line, business) {
            Ok(priced) => {
                let marks = marks(line, &priced, list.get(..place).unwrap_or_default());
                lines.push(PricedLine { marks, ..priced });
            }
            Err(problem) => Place::Item(place + 1).say(&mut problems, &line.service, problem),
        }
    }
    let lines = problems.or(lines)?;
    let totals = totals(&lines, Money::zero(business.currency)).in_field("totals")?;
    let rule = business.rule;
    Ok(PricedTable { lines, totals, tax_percent: rule.tax, rounding: rule.rounding, rule })
}

fn price_line(line: &ServiceLine, business: &Business) -> Result<PricedLine, MoneyError> {
    let (rule, rounding) = (&business.rule, business.rule.rounding);
    let zero = Money::zero(business.currency);
    let taken = |pack: Option<PackUse>| pack.map_or(CostSource::Stated(zero), |pack| pack.source());
    let product = cost_line(&taken(line.product), rounding)?;
    let developer = cost_line(&taken(line.developer), rounding)?;
    let labour = cost_line(&CostSource::Labour { labour: business.labour, hands_on: line.hands_on }, rounding)?;
    let overhead = CostSource::Overhead { overhead: business.overhead, in_chair: line.in_chair };
    let overhead = cost_line(&overhead, rounding)?;
    let direct = Money::total([product, developer, line.consumables, line.laundry, labour], business.currency)?;
    let before_fee = direct.plus(overhead)?;
    let base = if matches!(rule.target, PriceTarget::PerChairHour(_)) { direct } else { before_fee };
    let priced = match line.price {
        Some(gross) => rule.check_over(base, before_fee, gross, Some(line.in_chair))?,
        None => rule.price_over(base, before_fee, Some(line.in_chair))?,
    };
    let SetPrice { cost, price: net, profit, margin, markup } = priced.set;
    let per_hour = contribution_per_chair_hour(&ChairService {
        what: String::new(),
        price: net,
        variable: direct.plus(priced.card_fee)?,
        in_chair: line.in_chair,
    })?;
    Ok(PricedLine {
        service: line.service.clone(),
        class: line.class.clone(),
        sold: line.sold,
        product,
        developer,
        consumables: line.consumables,
        laundry: line.laundry,
        labour,
        overhead,
        card_fee: priced.card_fee,
        cost,
        net,
        tax: priced.taxed.tax,
        gross: priced.taxed.gross,
        profit,
        margin_percent: margin,
        markup_percent: markup,
        target_net: priced.target_net,
        contribution_per_chair_hour: per_hour.per_chair_hour,
        marks: Vec::new(),
        is_listed: line.price.is_some(),
        moved: priced.moved,
        in_chair: line.in_chair,
    })
}

fn totals(lines: &[PricedLine], nothing: Money) -> Result<Totals, MoneyError> {
    let sum = |of: fn(&PricedLine) -> Money| {
        lines.iter().try_fold(nothing, |sum, line| sum.plus(of(line).times(line.sold.into())?))
    };
    Ok(Totals {
        sold: lines.iter().map(|line| u64::from(line.sold)).sum(),
        product: sum(|line| line.product)?,
        developer: sum(|line| line.developer)?,
        consumables: sum(|line| line.consumables)?,
        laundry: sum(|line| line.laundry)?,
        labour: sum(|line| line.labour)?,
        overhead: sum(|line| line.overhead)?,
        card_fee: sum(|line| line.card_fee)?,
        cost: sum(|line| line.cost)?,
        net: sum(|line| line.net)?,
        tax: sum(|line| line.tax)?,
        gross: sum(|line| line.gross)?,
        profit: sum(|line| line.profit)?,
    })
}

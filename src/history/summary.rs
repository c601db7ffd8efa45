use super::{KeptPart, KeptRecord, once::counted_once};
use crate::{
    choice::choice,
    money::{Currency, Money},
};
use rust_decimal::Decimal;
use schemars::JsonSchema;
use serde::Serialize;
use std::collections::BTreeMap;

choice! {
    /// What records are put together by.
    GroupBy: "grouping" {
        /// All of them.
        All = "all",
        /// The title of the service.
        Service = "service",
        /// Who worked.
        Colourist = "colourist",
        /// The month.
        Month = "month",
    }
}

/// Many services of one kind, summed up.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct Summary {
    /// Which: a title, a colourist or a month; `all` for all, empty where a record does not say.
    pub of: String,
    /// How many services.
    pub services: usize,
    /// Different guests among those that have a code.
    pub guests: usize,
    /// Services whose record has no code of a guest.
    pub without_guest: usize,
    /// The chair, added up over the services that state it; absent where none does.
    pub chair_min: Option<f64>,
    /// Putting on, added up over the sections where it was noted; absent where it was nowhere.
    pub applying_min: Option<f64>,
    /// What was weighed, added up over the sections where it was noted; absent where it was nowhere.
    pub weighed_g: Option<f64>,
    /// What was left over, likewise.
    pub left_over_g: Option<f64>,
    /// Left over in percent of what was weighed, over the sections that say both; absent where none does.
    pub waste_percent: Option<f64>,
    /// Grams of each product, the most used first: as weighed, and as planned where nobody weighed.
    pub used: Vec<KeptPart>,
    /// Sections whose grams are those of the plan, because nobody noted what was weighed.
    pub as_planned: usize,
    /// Cost and price in each currency, over the services that state both.
    pub money: Vec<Takings>,
    /// Reactions and accidents.
    pub incidents: usize,
    /// Lines of services that were kept already: each counts once.
    pub kept_twice: usize,
}

/// Cost and price of several services in one currency.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, JsonSchema)]
pub struct Takings {
    /// How many services state both.
    pub services: usize,
    /// What they cost.
    pub cost: Money,
    /// Of that, what was left over, in the services that say it; absent where none does.
    pub left_over: Option<Money>,
    /// How many services say it.
    pub left_over_services: usize,
    /// Their net prices.
    pub price: Money,
    /// Price less cost.
    pub profit: Money,
    /// Profit in percent of the price, to two decimals; absent for a price of zero.
    #[schemars(with = "Option<String>")]
    pub margin_percent: Option<Decimal>,
}

/// Sums the records up: use, waste, time, cost, price and margin, in the order of the names.
///
/// A service that was kept twice counts once: of one guest, day and title the line that was read last, with what went wrong by the
/// others; where no guest is named, lines that are equal in all. Amounts are added exactly, each currency for itself. An amount that
/// cannot be read, or a sum too large, leaves its service out of the money, and the count beside it says so.
///
/// # Example
///
/// ```
/// use foilwork::history::{GroupBy, read_records, summarise};
///
/// let line = |price: &str| format!(
///     "{{\"format\":1,\"on\":\"2026-11-25\",\"title\":\"gloss\",\"currency\":\"EUR\",\"cost\":\"40.00\",\"price\":\"{price}\"}}\n"
/// );
/// let records = read_records(&(line("60.00") + &line("70.00"))).records;
/// let all = &summarise(&records, GroupBy::Service)[0];
/// assert_eq!((all.of.as_str(), all.services, all.money[0].profit.to_string()), ("gloss", 2, "50.00 EUR".to_owned()));
/// assert_eq!(all.money[0].margin_percent.map(|percent| percent.to_string()), Some("38.46".to_owned()));
/// ```
#[must_use]
pub fn summarise(records: &[KeptRecord], by: GroupBy) -> Vec<Summary> {
    let once = counted_once(records);
    let mut twice: BTreeMap<&str, usize> = BTreeMap::new();
    for record in once.repeats.iter().filter_map(|repeat| once.records.get(repeat.of)) {
        *twice.entry(group(record, by)).or_default() += 1;
    }
    let of_group = |(of, records): (&str, Vec<&KeptRecord>)| {
        let kept_twice = twice.get(of).copied().unwrap_or_default();
        Summary { kept_twice, ..summary(of, &records) }
    };
    grouped(&once.records, by).into_iter().map(of_group).collect()
}

/// What a record is put together by.
fn group(record: &KeptRecord, by: GroupBy) -> &str {
    match by {
        GroupBy::All => "all",
        GroupBy::Service => record.title.as_str(),
        GroupBy::Colourist => record.colourist.as_deref().unwrap_or_default(),
        GroupBy::Month => record.on.get(..7).unwrap_or_default(),
    }
}

/// The records put together, in the order of the names.
pub(super) fn grouped(records: &[KeptRecord], by: GroupBy) -> BTreeMap<&str, Vec<&KeptRecord>> {
    let mut groups: BTreeMap<&str, Vec<&KeptRecord>> = BTreeMap::new();
    for record in records {
        groups.entry(group(record, by)).or_default().push(record);
    }
    groups
}

/// What was weighed and what was left over, in g, of the sections that say both.
pub(super) fn of_both(records: &[&KeptRecord]) -> (f64, f64) {
    let sections = records.iter().flat_map(|record| &record.section);
    let both = sections.filter_map(|one| Some((one.weighed_g?, one.left_over_g?)));
    both.fold((0.0, 0.0), |(w, l), (weighed, left)| (w + weighed, l + left))
}

pub(super) fn summary(of: &str, records: &[&KeptRecord]) -> Summary {
    let sections = || records.iter().flat_map(|record| &record.section);
    let mut guests: Vec<&str> = records.iter().filter_map(|record| record.guest.as_deref()).collect();
    guests.sort_unstable();
    guests.dedup();
    let (weighed, left) = of_both(records);
    let mut used: BTreeMap<&str, f64> = BTreeMap::new();
    for part in sections().flat_map(|section| &section.part) {
        *used.entry(&part.product).or_default() += part.mass_g;
    }
    let mut used: Vec<KeptPart> =
        used.into_iter().map(|(product, mass_g)| KeptPart { product: product.to_owned(), mass_g }).collect();
    used.sort_by(|a, b| b.mass_g.total_cmp(&a.mass_g));
    Summary {
        of: of.to_owned(),
        services: records.len(),
        guests: guests.len(),
        without_guest: records.iter().filter(|record| record.guest.is_none()).count(),
        chair_min: added(records.iter().filter_map(|record| record.chair_min)),
        applying_min: added(sections().filter_map(|section| section.apply_min)),
        weighed_g: added(sections().filter_map(|section| section.weighed_g)),
        left_over_g: added(sections().filter_map(|section| section.left_over_g)),
        waste_percent: (weighed > 0.0).then(|| 100.0 * left / weighed),
        used,
        as_planned: sections().filter(|section| section.weighed_g.is_none() && !section.part.is_empty()).count(),
        money: money(records),
        incidents: records.iter().map(|record| record.incident.len()).sum(),
        kept_twice: 0,
    }
}

/// The sum of what is known; none where nothing is.
fn added(known: impl Iterator<Item = f64>) -> Option<f64> {
    known.reduce(|a, b| a + b)
}

fn money(records: &[&KeptRecord]) -> Vec<Takings> {
    let mut sums: Vec<Takings> = Vec::new();
    for record in records {
        let Some((cost, price)) = amounts(record) else { continue };
        let currency = price.currency();
        let read = |text: &String| Money::parse(text, currency).ok();
        let left = record.left_over_cost.as_ref().and_then(read);
        let none = || Takings {
            services: 0,
            cost: Money::zero(currency),
            left_over: None,
            left_over_services: 0,
            price: Money::zero(currency),
            profit: Money::zero(currency),
            margin_percent: None,
        };
        if !sums.iter().any(|known| known.price.currency() == currency) {
            sums.push(none());
        }
        let Some(sum) = sums.iter_mut().find(|known| known.price.currency() == currency) else { continue };
        if let (Ok(cost), Ok(price)) = (sum.cost.plus(cost), sum.price.plus(price)) {
            (sum.cost, sum.price, sum.services) = (cost, price, sum.services + 1);
            let all = sum.left_over.map_or(left, |known| left.map_or(Some(known), |left| known.plus(left).ok()));
            sum.left_over_services += usize::from(left.is_some());
            sum.left_over = all;
        }
    }
    let takings = sums.into_iter().filter(|sum| sum.services > 0).filter_map(|sum| {
        let profit = sum.price.minus(sum.cost).ok()?;
        let margin_percent = profit.percent_of(sum.price).ok().map(|percent| percent.round_dp(2));
        Some(Takings { profit, margin_percent, ..sum })
    });
    takings.collect()
}

fn amounts(record: &KeptRecord) -> Option<(Money, Money)> {
    let currency = Currency::from_code(record.currency.as_deref()?).ok()?;
    let read = |text: &str| Money::parse(text, currency).ok();
    Some((read(record.cost.as_deref()?)?, read(record.price.as_deref()?)?))
}

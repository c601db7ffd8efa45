use super::{KeptMixture, KeptPart, KeptRecord, KeptSection, lines::FORMAT};
use crate::{
    colour::Level,
    finding::Verdict,
    lift::Ph,
    money::{CostKind, CostLine, Money, Rounding},
    quantity::{Duration, Mass, MassFraction},
    record::{FoilHeat, SectionSoFar, SoFar, came_to, stopped_for},
    service::{Mix, MoneyPlan, Plan},
    text::{flat, inert},
};
use rust_decimal::Decimal;

/// What is kept of a service: its plan, and what the log says of it.
///
/// Of what was weighed the parts are those of the plan in their ratio. The cost of products is that of the grams weighed, where
/// they were noted; wages and chair are as planned, and the card fee of the price counts as a cost. The price is what the guest
/// pays, without tax: by the price list where it has the class, else by the costs.
///
/// # Example
///
/// ```
/// use foilwork::{history::keep, reader::Format, record::{read_log, replay}, service::plan_text};
///
/// let plan = plan_text(&std::fs::read_to_string("examples/soft-gradient.toml")?, Format::Toml)?;
/// let log = read_log(&std::fs::read_to_string("examples/soft-gradient.jsonl")?);
/// let record = keep(&plan, &replay(&log.entries));
/// assert_eq!((record.on.as_str(), record.guest.as_deref()), ("2026-11-25", Some("J-014")));
/// assert_eq!(record.section[0].result_level, Some(8.5));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[must_use]
pub fn keep(plan: &Plan, so_far: &SoFar) -> KeptRecord {
    let noted = |name: &str| so_far.sections.iter().find(|one| one.name == name);
    let stopped = stopped_for(plan, so_far);
    // Of what was stopped, what never went on was not used; without a word of it, it is taken as planned.
    let any = |mass: Option<Mass>| mass.is_some_and(|mass| mass.g() > 0.0);
    let some = |one: &SectionSoFar| one.was_on() || any(one.weighed) || any(one.left_over);
    let used = |one: Option<&SectionSoFar>| stopped.is_empty() || one.is_some_and(some);
    let unused: Vec<&str> = plan.mixes.iter().map(|mix| mix.name.as_str()).filter(|name| !used(noted(name))).collect();
    let used = plan.mixes.iter().map(|mix| (mix, noted(&mix.name))).filter(|(_, one)| used(*one));
    let section = used.map(|(mix, one)| section((plan, so_far), mix, one)).collect();
    let money = plan.money.as_ref();
    // What is paid for a service that was stopped, nobody knows here.
    let price = money.filter(|_| stopped.is_empty()).and_then(|money| net_price(plan, money));
    let amount = |money: Money| money.decimal().to_string();
    KeptRecord {
        format: FORMAT,
        on: plan.start.earliest().date().to_string(),
        title: plan.title.clone(),
        guest: plan.guest.clone(),
        colourist: plan.colourist.clone(),
        service_class: Some(plan.head.service_class),
        chair_min: Some(tidy(plan.chair.total.min())),
        currency: money.map(|money| money.cost.total().currency().code().to_owned()),
        cost: money
            .and_then(|money| cost(plan, so_far, &unused, price.and_then(|_| card_fee(plan, money))))
            .map(amount),
        left_over_cost: left_over_cost(plan, so_far).map(amount),
        price: price.map(amount),
        section,
        incident: stopped.into_iter().chain(to_remember(plan, so_far)).take(100).map(|text| short(&text)).collect(),
    }
}

/// The most that a record holds.
const MOST_APPLICATIONS: u32 = 100;

/// To the fourth decimal, finer than any scale or clock: such numbers are read back as the very same.
fn tidy(value: f64) -> f64 {
    (value * 1e4).round() / 1e4
}

/// A text as long as a record holds; it shows where it was cut.
fn short(text: &str) -> String {
    let text = flat(&inert(text));
    if text.chars().count() <= LONGEST { text } else { text.chars().take(LONGEST - 1).chain(['…']).collect() }
}

/// Signs in a text of a record.
const LONGEST: usize = 200;

/// What nothing was stopped for and what is minded the next time all the same: foils that were hot, and stops of the plan.
fn to_remember(plan: &Plan, so_far: &SoFar) -> Vec<String> {
    // One that is hot now is stopped for.
    let hot = so_far.sections.iter().filter(|one| one.foil_worst == Some(FoilHeat::Hot) && !one.foil_is_hot());
    let hot = hot.map(|one| format!("{}: a foil was hot", one.name));
    let stops = plan.findings.iter().filter(|one| one.verdict == Verdict::Stop);
    hot.chain(stops.map(|one| format!("the plan said stop: {}", one.text))).collect()
}

fn section((plan, so_far): (&Plan, &SoFar), mix: &Mix, noted: Option<&SectionSoFar>) -> KeptSection {
    let came_to = noted.map(|one| came_to(plan, so_far, one)).unwrap_or_default();
    let level = |read: Option<(Duration, Level)>| read.map(|(_, level)| tidy(level.number()));
    let of_head = plan.head.sections.iter().find(|one| one.section == mix.name);
    let step = plan.order.iter().find(|step| step.name == mix.name);
    let lift = plan.lift.iter().find(|lift| lift.section == mix.name);
    let weighed = noted.and_then(|one| one.weighed);
    let between = |from: Option<Duration>, to: Option<Duration>| Some(tidy((to?.min() - from?.min()).max(0.0)));
    KeptSection {
        name: mix.name.clone(),
        technique: of_head.map(|one| one.technique),
        foils: of_head.and_then(|one| one.foils).map(|foils| foils.best()),
        expected_g: of_head.and_then(|one| one.takes).map(|takes| tidy(takes.best().g())),
        planned_g: Some(tidy(mix.made().g())),
        weighed_g: weighed.map(Mass::g).map(tidy),
        // More than was mixed is a slip of the pen: unknown.
        left_over_g: noted
            .filter(|one| over_mixed(mix, one).is_none())
            .and_then(|one| one.left_over)
            .map(Mass::g)
            .map(tidy),
        planned_apply_min: step.map(|step| tidy(step.applied.min() - step.begin.min())),
        apply_min: noted.and_then(|one| {
            let (begun, applied, _) = one.first();
            between(begun, applied)
        }),
        applications: noted.and_then(|one| {
            one.begun?;
            Some(u32::try_from(one.earlier.len() + 1).unwrap_or(u32::MAX).min(MOST_APPLICATIONS))
        }),
        on_hair_min: noted.and_then(SectionSoFar::carried).map(|carried| tidy(carried.min())),
        from_level: lift.map(|lift| tidy(lift.from_level.best().number())),
        target_level: lift.map(|lift| tidy(lift.target_level.number())),
        result_level: level(came_to.lifted),
        toned_level: level(came_to.toned),
        tone: noted.and_then(|one| one.tone.as_deref()).map(short),
        elasticity: noted.and_then(|one| one.elasticity),
        part: parts(mix, weighed),
        mixture: lift.map(|lift| {
            let [low, best, high] = lift.situation.on_hair.to_array().map(MassFraction::ww_percent).map(tidy);
            KeptMixture {
                on_hair_low_ww_percent: low,
                on_hair_ww_percent: best,
                on_hair_high_ww_percent: high,
                temperature_c: tidy(lift.situation.temperature.celsius()),
                booster: lift.situation.booster,
                ph: lift.situation.ph.map(Ph::value).map(tidy),
                uptake: lift.situation.uptake,
                texture: lift.situation.texture,
                cover: lift.situation.cover,
            }
        }),
    }
}

/// Of what is made, how much was weighed: one where nobody noted it.
fn factor(mix: &Mix, weighed: Option<Mass>) -> f64 {
    let made = mix.made().g();
    weighed.filter(|_| made > 0.0).map_or(1.0, |weighed| weighed.g() / made)
}

fn parts(mix: &Mix, weighed: Option<Mass>) -> Vec<KeptPart> {
    let factor = factor(mix, weighed);
    let part = |(product, g): (&str, f64)| KeptPart { product: product.to_owned(), mass_g: tidy(g * factor) };
    mix.masses_g().into_iter().map(part).collect()
}

/// What the guest pays, without tax: by the price list where it has the class, else by the costs. A list without a tax is net.
fn net_price(plan: &Plan, money: &MoneyPlan) -> Option<Money> {
    plan.booking.kept().or_else(|| money.price.as_ref().map(|set| set.price))
}

/// What the card terminal keeps of that price, tax included.
fn card_fee(plan: &Plan, money: &MoneyPlan) -> Option<Money> {
    let by_cost = || money.priced_by.as_ref().map(|by| by.card_fee);
    if plan.booking.is_listed() { plan.booking.card_fee } else { by_cost() }
}

/// The cost with the products of each section as weighed and without those of the unused, and with the card fee.
fn cost(plan: &Plan, so_far: &SoFar, unused: &[&str], card_fee: Option<Money>) -> Option<Money> {
    let table = &plan.money.as_ref()?.cost;
    let product = |kind: CostKind| matches!(kind, CostKind::Product | CostKind::Additive);
    let of_unused = |line: &&CostLine| {
        product(line.kind) && line.section.as_deref().is_some_and(|section| unused.contains(&section))
    };
    let amounts = table.lines().iter().filter(|line| !of_unused(line)).map(|line| {
        let product = product(line.kind);
        let name = line.section.as_deref().filter(|_| product);
        let mix = name.and_then(|name| plan.mixes.iter().find(|mix| mix.name == name));
        let weighed = name.and_then(|name| so_far.sections.iter().find(|one| one.name == name)?.weighed);
        match mix.zip(weighed) {
            Some((mix, weighed)) => part_of(line.amount, factor(mix, Some(weighed))),
            None => Some(line.amount),
        }
    });
    let amounts = amounts.chain(card_fee.map(Some));
    Money::total(amounts.collect::<Option<Vec<_>>>()?, table.total().currency()).ok()
}

/// What the products cost that were left over, apart from all else: of each section as much of its products as was left over of its
/// mix. None where no left-over is noted, where one cannot be (see [`left_over_wrong`]), or where nothing has a price.
///
/// # Example
///
/// ```
/// use foilwork::{history::left_over_cost, reader::Format, record::{read_log, replay}, service::plan_text};
///
/// let plan = plan_text(&std::fs::read_to_string("examples/soft-gradient.toml")?, Format::Toml)?;
/// let left = "{\"format\":1,\"at_min\":9,\"what\":\"left-over\",\"section\":\"nape\",\"mass_g\":23.2}\n";
/// // Half of 0.95, 0.27 and 0.24.
/// let cost = left_over_cost(&plan, &replay(&read_log(left).entries));
/// assert_eq!(cost.map(|cost| cost.to_string()), Some("0.73 EUR".to_owned()));
/// assert_eq!(left_over_cost(&plan, &replay(&[])), None);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[must_use]
pub fn left_over_cost(plan: &Plan, so_far: &SoFar) -> Option<Money> {
    let table = &plan.money.as_ref()?.cost;
    if !left_over_wrong(plan, so_far).is_empty() {
        return None;
    }
    let currency = table.total().currency();
    let of = |one: &SectionSoFar| {
        let left = one.left_over?.g();
        let mix = plan.mixes.iter().find(|mix| mix.name == one.name)?;
        let product = |kind: CostKind| matches!(kind, CostKind::Product | CostKind::Additive);
        let own = table.lines().iter().filter(|line| product(line.kind) && line.section.as_ref() == Some(&one.name));
        let own: Vec<Money> = own.map(|line| line.amount).collect();
        // The lines are for what the plan makes of it.
        let whole = (!own.is_empty()).then(|| Money::total(own, currency).ok())??;
        part_of(whole, left / mix.made().g())
    };
    let left: Vec<Money> = so_far.sections.iter().filter_map(of).collect();
    (!left.is_empty()).then(|| Money::total(left, currency).ok())?
}

/// Of which sections more is noted as left over than was mixed, in words: by what was weighed, else by the plan.
///
/// # Example
///
/// ```
/// use foilwork::{history::left_over_wrong, reader::Format, record::{read_log, replay}, service::plan_text};
///
/// let plan = plan_text(&std::fs::read_to_string("examples/soft-gradient.toml")?, Format::Toml)?;
/// let left = "{\"format\":1,\"at_min\":9,\"what\":\"left-over\",\"section\":\"nape\",\"mass_g\":900}\n";
/// let wrong = left_over_wrong(&plan, &replay(&read_log(left).entries));
/// assert_eq!(wrong, ["nape: more left over than was mixed (900.0 g of 46.4 g): correct the entry"]);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[must_use]
pub fn left_over_wrong(plan: &Plan, so_far: &SoFar) -> Vec<String> {
    let of = |one: &SectionSoFar| {
        let mix = plan.mixes.iter().find(|mix| mix.name == one.name)?;
        let (left, mixed) = over_mixed(mix, one)?;
        Some(format!("{}: more left over than was mixed ({left:.1} of {mixed:.1}): correct the entry", one.name))
    };
    so_far.sections.iter().filter_map(of).collect()
}

/// What is noted as left over beside what was mixed, where it is more.
fn over_mixed(mix: &Mix, one: &SectionSoFar) -> Option<(Mass, Mass)> {
    let (left, mixed) = (one.left_over?, one.weighed.unwrap_or_else(|| mix.made()));
    // No scale of the trade shows less than a hundredth of a gram.
    (left.g() > mixed.g() + 0.005).then_some((left, mixed))
}

/// A part of an amount, to the nearest minor unit.
fn part_of(amount: Money, factor: f64) -> Option<Money> {
    let percent = Decimal::try_from((factor * 1e6).round() / 1e4).ok()?;
    amount.percent(percent, Rounding::MidpointAwayFromZero).ok()
}

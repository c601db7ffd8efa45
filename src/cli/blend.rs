use super::{
    Outcome, Refusal,
    args::BlendArgs,
    output, read,
    shop::{Pourable, Pourables, pourables},
};
use crate::{
    money::{Money, Rounding},
    peroxide::{
        Objective, Shelf, ShelfBlend, StatedStrength, blend_shelf_to_scale, cautions, resting_on, stronger,
        trace_mixture,
    },
    quantity::{Mass, MassFraction, Temperature},
    source::Interval,
    text::{Sheet, number, range},
};
use rust_decimal::Decimal;
use serde::Serialize;

/// A blend from the shelf, as data.
#[derive(Serialize)]
struct Report {
    objective: Objective,
    target_ww_percent: f64,
    total_g: f64,
    division_g: f64,
    portions: Vec<PortionReport>,
    weighed_g: f64,
    strength_ww_percent: Interval<MassFraction>,
    /// Of what is weighed; missing when no bottle has a price.
    cost: Option<Money>,
    /// Bottles of the blend without a price, which counted as free.
    no_price: Vec<String>,
    leftover_g: f64,
}

#[derive(Serialize)]
struct PortionReport {
    name: String,
    stock_ww_percent: Interval<MassFraction>,
    exact_g: f64,
    weigh_g: f64,
    left_g: Option<f64>,
}

/// `foilwork blend`: what to take from which bottles.
pub(super) fn run(args: &BlendArgs) -> Outcome {
    let objective: Objective = read::option("--objective", &args.objective)?;
    let temperature = Temperature::from_celsius(args.temperature)?;
    let target = read::option::<StatedStrength>("--target", &args.target)?.mass_fraction(temperature)?.best();
    let bottles = pourables(args)?;
    if bottles.all.is_empty() {
        let way_out = "name a shop file, or give each bottle as --stock \"name=12 % w/w\"";
        return Err(Refusal(format!("no bottles to blend: {way_out}")));
    }
    let wanted = Wanted {
        target,
        total: read::grams("--total", &args.total)?,
        division: Mass::from_g(args.division)?,
        objective,
    };
    let shelf = Shelf::new(bottles.all.iter().map(|bottle| bottle.stock.clone()).collect())?;
    let blend = blend_shelf_to_scale(&shelf, target, wanted.total, objective, wanted.division)?;
    let report = weighed(&blend, &bottles, &wanted)?;
    if args.trail.trail {
        let part = |one: &PortionReport| {
            Ok::<_, Refusal>(((one.name.clone(), one.stock_ww_percent), Mass::from_g(one.weigh_g)?))
        };
        let parts = report.portions.iter().map(part).collect::<Result<Vec<_>, _>>()?;
        let parts: Vec<_> = parts.iter().map(|((name, strength), mass)| ((name.as_str(), *strength), *mass)).collect();
        let taken = |bottle: &&Pourable| report.portions.iter().any(|part| part.name == bottle.stock.name);
        let mut trail: Vec<_> = bottles.all.iter().filter(taken).filter_map(|bottle| bottle.by_mass.clone()).collect();
        let mixed = resting_on(trace_mixture(&parts)?, &trail);
        trail.push(mixed);
        let trail = output::trail(&trail, args.report.json)?;
        return output::deliver(trail, 0, &args.report.output);
    }
    output::report(&args.report, &report, || text(&report))
}

/// What was asked for.
struct Wanted {
    target: MassFraction,
    total: Mass,
    division: Mass,
    objective: Objective,
}

fn weighed(blend: &ShelfBlend, bottles: &Pourables, wanted: &Wanted) -> Result<Report, Refusal> {
    let rounded = blend.round_to_scale(wanted.division)?;
    let (mut portions, mut no_price) = (Vec::new(), Vec::new());
    let (mut cost, mut leftover_g) = (Decimal::ZERO, 0.0);
    for (portion, &weigh) in blend.portions.iter().zip(&rounded.masses) {
        let named = |bottle: &&Pourable| bottle.stock.name == portion.stock.name;
        let Some(bottle) = bottles.all.iter().find(named) else { continue };
        match bottle.price_per_kg {
            Some(price) => {
                let part = Decimal::try_from(weigh.g())?.checked_mul(price);
                let sum = part.and_then(|part| cost.checked_add(part / Decimal::ONE_THOUSAND));
                cost =
                    sum.ok_or_else(|| Refusal(format!("the cost of {} is too large to count", bottle.stock.name)))?;
            }
            None => no_price.push(bottle.stock.name.clone()),
        }
        let left_g = bottle.stock.in_hand.map(|in_hand| in_hand.minus_or_zero(weigh).g());
        leftover_g += left_g.unwrap_or(0.0);
        portions.push(PortionReport {
            name: bottle.stock.name.clone(),
            stock_ww_percent: bottle.stock.strength,
            exact_g: portion.mass.g(),
            weigh_g: weigh.g(),
            left_g,
        });
    }
    let money = |currency| Money::from_decimal(cost, currency, Rounding::MidpointAwayFromZero);
    let currency = if no_price.len() == portions.len() { None } else { bottles.currency };
    Ok(Report {
        objective: wanted.objective,
        target_ww_percent: wanted.target.ww_percent(),
        total_g: wanted.total.g(),
        division_g: wanted.division.g(),
        weighed_g: rounded.total.g(),
        strength_ww_percent: rounded.strength,
        cost: currency.map(money).transpose()?,
        no_price,
        leftover_g,
        portions,
    })
}

fn text(report: &Report) -> String {
    let mut sheet = Sheet::default();
    sheet.line(&format!(
        "{} g of {} % w/w, {}",
        number(report.total_g, 3),
        number(report.target_ww_percent, 2),
        report.objective
    ));
    let grams = |mass: f64| format!("{} g", number(mass, 4));
    let row = |portion: &PortionReport| {
        let strength = format!("{} % w/w", range(&portion.stock_ww_percent, 2));
        let left = portion.left_g.map(grams).unwrap_or_default();
        vec![portion.name.clone(), strength, grams(portion.weigh_g), left]
    };
    let names = ["bottle", "strength", "weigh", "then left"];
    sheet.table(&names, &[1, 2, 3], report.portions.iter().map(row).collect());
    let strength = range(&report.strength_ww_percent, 2);
    sheet.line(&format!("gives {} at {strength} % w/w", grams(report.weighed_g)));
    for portion in report.portions.iter().filter(|portion| portion.weigh_g == 0.0) {
        let way_out = "less than the scale can show; use a finer scale or make more";
        sheet.paragraph(&format!("{}: {way_out}", portion.name), 2);
    }
    let off = report.strength_ww_percent.best().ww_percent() - report.target_ww_percent;
    if off.abs() >= 0.005 {
        let division = grams(report.division_g);
        sheet.paragraph(&format!("weighing to {division} moves it by {off:+.2} % w/w"), 2);
    }
    if let Some(cost) = &report.cost {
        sheet.line(&format!("cost {cost}"));
    }
    if !report.no_price.is_empty() && (report.cost.is_some() || report.objective == Objective::LeastCost) {
        sheet.paragraph(&format!("no price stated, counted as free: {}", report.no_price.join(", ")), 2);
    }
    let strongest = report.portions.iter().map(|portion| portion.stock_ww_percent).reduce(stronger);
    for paragraph in strongest.map(cautions).unwrap_or_default() {
        sheet.paragraph(&paragraph, 0);
    }
    sheet.finish()
}

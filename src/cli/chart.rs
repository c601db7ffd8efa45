//! `foilwork chart`: pictures for the wall and for teaching.

use super::{
    Outcome, Refusal,
    args::{
        ChartArgs, CostChartArgs, DilutionChartArgs, MarginChartArgs, OutputArgs, Picture, PigmentChartArgs, WheelArgs,
    },
    output, plan, read,
};
use crate::{
    chart::{
        CostChart, DilutionChart, HueWheel, MarginChart, PigmentChart, cost_chart, dilution_chart, hue_wheel,
        margin_chart, pigment_chart,
    },
    colour::Level,
    money::{Currency, Margin, Money, parse_decimal},
    peroxide::{StatedStrength, dilution_table},
    quantity::{Mass, MassFraction, Temperature},
    shop,
    source::Interval,
    text::number,
};

/// The most lines, and the most columns, of a grid that can be read.
const MOST: usize = 12;

pub(super) fn run(args: &ChartArgs) -> Outcome {
    match &args.picture {
        Picture::Dilution(args) => dilution(args),
        Picture::Pigment(args) => pigment(args),
        Picture::Wheel(args) => wheel(args),
        Picture::Costs(args) => costs(args),
        Picture::Margin(args) => margin(args),
    }
}

fn deliver(svg: String, output: &OutputArgs) -> Outcome {
    output::deliver(svg, 0, output)
}

fn dilution(args: &DilutionChartArgs) -> Outcome {
    let (stocks, targets) = (strengths("--stocks", &args.stocks)?, strengths("--targets", &args.targets)?);
    let none = || Ok((String::from("diluent"), Interval::exact(MassFraction::ZERO)));
    let (weaker, weaker_strength) = args.with.as_deref().map_or_else(none, |text| strength("--with", text))?;
    let of = |list: &[(String, Interval<MassFraction>)]| list.iter().map(|(_, strength)| *strength).collect::<Vec<_>>();
    let names =
        |list: &[(String, Interval<MassFraction>)]| list.iter().map(|(name, _)| name.clone()).collect::<Vec<_>>();
    let (total, division) = (read::grams("--total", &args.total)?, Mass::from_g(args.division)?);
    let table = dilution_table(&of(&stocks), &of(&targets), weaker_strength, total, division)?;
    let (stocks, targets) = (names(&stocks), names(&targets));
    let title = format!("Dilution to {} g", number(total.g(), 3));
    let chart = DilutionChart { title: &title, stocks: &stocks, targets: &targets, weaker: &weaker, table: &table };
    deliver(dilution_chart(&chart), &args.output)
}

fn strength(name: &str, text: &str) -> Result<(String, Interval<MassFraction>), Refusal> {
    let stated = read::option::<StatedStrength>(name, text)?;
    let strength = stated.mass_fraction(Temperature::REFERENCE).map_err(|error| read::about(name, error))?;
    Ok((stated.to_string(), strength))
}

fn strengths(name: &str, text: &str) -> Result<Vec<(String, Interval<MassFraction>)>, Refusal> {
    let items = read::with_units(text);
    if items.len() > MOST {
        return Err(Refusal(format!("{name}: {} strengths: a picture holds at most {MOST}", items.len())));
    }
    items.iter().map(|item| strength(name, item)).collect()
}

fn pigment(args: &PigmentChartArgs) -> Outcome {
    let natural: Level = read::option("--natural", &args.natural)?;
    let title = format!("Lightened from level {}", number(natural.number(), 1));
    let chart = PigmentChart { title: &title, natural, naming: read::option("--names", &args.names)? };
    deliver(pigment_chart(&chart), &args.output)
}

fn wheel(args: &WheelArgs) -> Outcome {
    let mark = |word: &str| shop::hue(word).map_err(|error| read::about("--mark", error));
    let chart = HueWheel { title: "Twelve hues", marked: args.mark.as_deref().map(mark).transpose()? };
    deliver(hue_wheel(&chart), &args.output)
}

fn costs(args: &CostChartArgs) -> Outcome {
    let plan = plan::made(&args.file)?;
    let Some(money) = &plan.money else {
        return Err(Refusal("no costs: the shop states no `currency`".to_owned()));
    };
    deliver(cost_chart(&CostChart { title: &format!("Cost of {}", plan.title), table: &money.cost }), &args.output)
}

fn margin(args: &MarginChartArgs) -> Outcome {
    let currency = Currency::from_code(&args.currency).map_err(|error| read::about("--currency", error))?;
    let cost = Money::parse(&args.cost, currency).map_err(|error| read::about("--cost", error))?;
    if cost.minor() <= 0 {
        return Err(Refusal(format!("--cost: {cost} has no margin (give a cost above zero)")));
    }
    let percent = |text: &str| parse_decimal("margin", text).and_then(Margin::from_percent);
    let marked = args.margin.as_deref().map(percent).transpose().map_err(|error| read::about("--margin", error))?;
    let chart = MarginChart { title: "Net price against margin", cost, marked };
    deliver(margin_chart(&chart), &args.output)
}

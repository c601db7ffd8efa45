//! `foilwork chart`: pictures for the wall and for teaching.

use super::{
    Outcome, Refusal,
    args::{
        ChartArgs, CostChartArgs, DilutionChartArgs, MarginChartArgs, OutputArgs, Picture, PigmentChartArgs, WheelArgs,
    },
    grid::{Grid, Stated},
    output, plan, read,
};
use crate::{
    chart::{
        DilutionChart, HueWheel, MOST_GRID as MOST, MarginChart, PigmentChart, dilution_chart, hue_wheel, margin_chart,
        pigment_chart,
    },
    colour::Level,
    money::{Currency, Margin, Money, parse_decimal},
    sheet::cost_picture,
    shop,
    text::number,
};

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
    let grid = Grid::read(&args.grid, MOST * MOST, MOST)?;
    let names = |list: &[Stated]| list.iter().map(|stated| stated.text.clone()).collect::<Vec<_>>();
    let (stocks, targets) = (names(&grid.stocks), names(&grid.targets));
    let title = format!("Dilution to {} g", number(grid.table.total.g(), 3));
    let chart =
        DilutionChart { title: &title, stocks: &stocks, targets: &targets, weaker: grid.added(), table: &grid.table };
    deliver(dilution_chart(&chart), &args.output)
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
    let picture = cost_picture(&plan, &format!("Cost of {}", plan.title));
    let picture = picture.ok_or_else(|| Refusal("no costs: the shop states no `currency`, or no price".to_owned()))?;
    deliver(picture, &args.output)
}

fn margin(args: &MarginChartArgs) -> Outcome {
    let currency = Currency::from_code(&args.currency).map_err(|error| read::about("--currency", error))?;
    let cost = Money::parse(&args.cost, currency).map_err(|error| read::about("--cost", error))?;
    let percent = |text: &str| parse_decimal("margin", text).and_then(Margin::from_percent);
    let marked = args.margin.as_deref().map(percent).transpose().map_err(|error| read::about("--margin", error))?;
    let chart = MarginChart::new("Net price against margin", cost).map_err(|error| read::about("--cost", error))?;
    let chart = chart.marking(marked).map_err(|error| read::about("--margin", error))?;
    deliver(margin_chart(&chart), &args.output)
}

//! Problems that are read from a picture: the same picture in words makes them complete as text.

use super::{Task, costing::amount};
use crate::{
    colour::{Hue, Level, underlying_pigment},
    head::Template,
    money::{CostKind, Currency, Money},
    quantity::{Duration, Quantity},
    source::{Basis, COMMON_PRACTICE, citations::lift::LIGHTENING_SERIES},
    teach::{
        Mistake, Topic,
        draft::{Draft, count, exact, float, number, words},
        draw::Draw,
        picture::{Drawn, ExercisePicture, GRID_STOCKS, GRID_TARGETS, day, forecast, grid},
    },
    text::list,
};
use rust_decimal::Decimal;

pub(super) const TASKS: &[(Topic, Task)] = &[
    (Topic::Dilution, Task::steady("read-dilution-grid", dilution_grid)),
    (Topic::Pigment, Task::gentle("read-pigment-chart", pigment_chart)),
    (Topic::Level, Task::stretch("read-lift-curve", lift_curve)),
    (Topic::Timing, Task::steady("read-timeline", timeline)),
    (Topic::Hair, Task::gentle("read-head-map", head_map)),
    (Topic::Costing, Task::stretch("read-cost-shares", cost_shares)),
];

fn dilution_grid(draw: &mut Draw, _: Currency) -> Option<Draft> {
    let (total, times) = (draw.between(1, 3) * 120, draw.between(2, 4));
    let (row, column) = (draw.below(3) as usize, draw.below(3) as usize);
    let table = grid(total)?;
    let cell = |row: usize| Some(table.rows.get(row * GRID_TARGETS.len() + column)?.weigh.as_ref()?.stock.g());
    let (stock, target, found) = (GRID_STOCKS.get(row)?, GRID_TARGETS.get(column)?, cell(row)?);
    let cells: Vec<String> = GRID_STOCKS
        .into_iter()
        .enumerate()
        .filter_map(|(i, stock)| Some(format!("{} g of the {stock} % w/w bottle", crate::text::number(cell(i)?, 1))))
        .collect();
    let says = format!("to make {total} g of {target} % w/w the grid has {}", list(cells, "or"));
    let (wanted, many) = (total * times, times as f64);
    Some(
        Draft::new(format!(
            "The grid on the wall of Juniper & Tide is for {total} g. How many grams of the {stock} % w/w bottle make {wanted} g \
             of {target} % w/w?"
        ))
        .picture(ExercisePicture::new(Drawn::DilutionGrid { total_g: total }, says))
        .given("stock_ww_percent", stock)
        .given("target_ww_percent", target)
        .given("grid_g", total)
        .given("wanted_g", wanted)
        .step("from the grid", format!("{stock} % to {target} %"), format!("{} g", crate::text::number(found, 1)))
        .answer("as often as it is wanted", format!("{} g x {wanted} / {total}", crate::text::number(found, 1)), exact(found * many, 1, "g")?)
        .wrong(Mistake::LeftOut, exact(found, 1, "g"))
        .wrong(Mistake::NextRow, cell(row + 1).or_else(|| cell(row.checked_sub(1)?)).and_then(|beside| exact(beside * many, 1, "g")))
        .wrong(Mistake::OtherPart, exact(wanted as f64 - found * many, 1, "g")),
    )
}

fn pigment_chart(draw: &mut Draw, _: Currency) -> Option<Draft> {
    let (natural, level) = (draw.between(2, 4), draw.between(5, 9));
    let row = |level: i64| Some(underlying_pigment(Level::new(level as f64).ok()?).value);
    let neutral = |level: i64| -> Option<Hue> { row(level)?.neutraliser.map(|(hue, _)| hue) };
    let said = (level - 1..=level + 1)
        .map(|level| Some(format!("level {level}: {}, neutralised by {}", row(level)?.shown(), neutral(level)?)))
        .collect::<Option<Vec<_>>>()?;
    Some(
        Draft::new(format!(
            "The chart of Juniper & Tide shows hair lightened from level {natural}. Read it at level {level}: which hue neutralises \
             what shows there?"
        ))
        .picture(ExercisePicture::new(Drawn::Pigment { natural }, said.join("; ")))
        .rests_on(Basis::CommonPractice, &[COMMON_PRACTICE])
        .given("natural_level", natural)
        .given("level", level)
        .step("what shows", format!("level {level}"), row(level)?.shown())
        .answer("what neutralises it, in the same row", format!("level {level}"), words(neutral(level)?)?)
        .wrong(Mistake::NextRow, neutral(level - 1).and_then(words))
        .wrong(Mistake::NextRow, neutral(level + 1).and_then(words))
        .wrong(Mistake::SameHue, words(row(level)?.exposed.0)),
    )
}

/// Minutes of the looks, and the limit of the picture.
const LOOKS: [i64; 4] = [10, 20, 30, 40];
const LIMIT: i64 = 45;

fn lift_curve(draw: &mut Draw, _: Currency) -> Option<Draft> {
    let (from, on_hair_percent) = (draw.between(3, 6), draw.pick(&[3, 4, 6])?);
    let target = Decimal::from(from) + draw.multiple(2, 8, (5, 1));
    let lightening = forecast(from, on_hair_percent)?;
    let levels = LOOKS.map(|at| lightening.level_after(Duration::nearest(at as f64)).best().number());
    // What is read by eye must not be a matter of the eye.
    if levels.iter().any(|level| (level - float(target)).abs() < 0.2) {
        return None;
    }
    let place = levels.iter().position(|level| *level > float(target))?;
    let (at, look) = (*LOOKS.get(place)?, |place: usize| LOOKS.get(place).and_then(|at| count(*at, "min")));
    let shown = levels.map(|level| format!("{level:.1}"));
    let said: Vec<String> =
        LOOKS.iter().zip(&shown).map(|(at, level)| format!("level {level} after {at} min")).collect();
    let says = format!(
        "the line, the best estimate of an invented example, begins at level {from} and stands at {}; the limit is {LIMIT} min",
        list(said, "and")
    );
    let names = ["level_after_10_min", "level_after_20_min", "level_after_30_min", "level_after_40_min"];
    let mut draft = Draft::new(format!(
        "The picture shows the forecast for a bowl of Juniper & Tide, and a colourist looks after 10, 20, 30 and 40 min. At which \
         of these looks does the line stand at level {target} or above it for the first time? (A strand decides, not a line.)"
    ))
    .picture(ExercisePicture::new(Drawn::Lift { from, on_hair_percent, limit_min: LIMIT }, says))
    .rests_on(Basis::Assumed, &[LIGHTENING_SERIES])
    .given("target_level", target.normalize());
    for (name, level) in names.into_iter().zip(&shown) {
        draft = draft.given(name, level);
    }
    Some(
        draft
            .step("the line there", format!("after {at} min"), format!("level {}", shown.get(place)?))
            .answer("first look at which it is enough", format!("level {target} or above"), count(at, "min")?)
            .wrong(Mistake::NextRow, look(place + 1))
            .wrong(Mistake::NextRow, place.checked_sub(1).and_then(look))
            .wrong(Mistake::OtherRule, count(LIMIT, "min")),
    )
}

fn timeline(draw: &mut Draw, _: Currency) -> Option<Draft> {
    let sections = ["nape", "crown"].map(|name| (name, draw.between(2, 5) * 5, draw.between(5, 8) * 5)).to_vec();
    let asked = draw.below(2) as usize;
    let day = day(&sections)?;
    let times = |place: usize| {
        let one = day.sections.iter().find(|one| one.section == place)?;
        let [start, applied, rinse] = [one.start, one.applied, one.rinse].map(|at| at.min().round() as i64);
        Some((one.name.clone(), start, applied, rinse))
    };
    let ((name, start, applied, rinse), (beside, begun, on, off)) = (times(asked)?, times(1 - asked)?);
    let say = |name: &str, start, applied, rinse| {
        format!("{name}: first strand on at minute {start}, all on at minute {applied}, rinse from minute {rinse}")
    };
    let says = [say(&name, start, applied, rinse), say(&beside, begun, on, off)].join("; ");
    Some(
        Draft::new(format!(
            "The picture shows a morning at Juniper & Tide in minutes. How long has the first strand of the {name} carried the \
             lightener when its rinse begins?"
        ))
        .picture(ExercisePicture::new(Drawn::Day { sections }, says))
        .given("start_min", start)
        .given("applied_min", applied)
        .given("rinse_min", rinse)
        .given("other_start_min", begun)
        .given("other_rinse_min", off)
        .answer("from the first strand to the rinse", format!("{rinse} min - {start} min"), count(rinse - start, "min")?)
        .wrong(Mistake::LeftOut, count(rinse - applied, "min"))
        .wrong(Mistake::GivenForAnswer, count(rinse, "min"))
        .wrong(Mistake::NextRow, count(off - begun, "min")),
    )
}

fn head_map(draw: &mut Draw, _: Currency) -> Option<Draft> {
    let template = Template::standard();
    let regions = template.regions();
    let first = draw.below(regions.len() as u64) as usize;
    let sizes = [0; 3].map(|_| draw.between(4, 14));
    let (mut foils, mut next) = (Vec::new(), 1);
    for (place, size) in sizes.into_iter().enumerate() {
        foils.push(((first + place) % regions.len(), next, next + size - 1));
        next += size;
    }
    let (asked, beside) = (foils.get(1 + draw.below(2) as usize).copied()?, foils.first().copied()?);
    let named = |place: usize| regions.get(place).map(|region| region.name.as_str());
    let said = foils
        .iter()
        .map(|(place, from, to)| Some(format!("{}: foils {from} to {to}", named(*place)?)))
        .collect::<Option<Vec<_>>>()?;
    let ((place, from, to), (_, begin, end)) = (asked, beside);
    Some(
        Draft::new(format!(
            "The map of a head at Juniper & Tide numbers the foils in the order of the work. How many foils lie in the region {}?",
            named(place)?
        ))
        .picture(ExercisePicture::new(Drawn::Head { foils }, said.join("; ")))
        .given("first_foil", from)
        .given("last_foil", to)
        .given("other_last_foil", end)
        .answer("both ends count", format!("{to} - {from} + 1"), count(to - from + 1, "foils")?)
        .wrong(Mistake::OneTooFew, count(to - from, "foils"))
        .wrong(Mistake::GivenForAnswer, count(to, "foils"))
        .wrong(Mistake::NextRow, count(end - begin + 1, "foils")),
    )
}

fn cost_shares(draw: &mut Draw, currency: Currency) -> Option<Draft> {
    let [product, labour, overhead] =
        [(10, 30), (20, 60), (8, 30)].map(|(low, high)| amount(draw.between(low, high) * 100, currency));
    let rise = Decimal::from(draw.pick(&[4, 5, 8, 10])?);
    let all = product.plus(labour).ok()?.plus(overhead).ok()?;
    let of_all = |part: Money| float(part.decimal() / all.decimal() * Decimal::ONE_HUNDRED);
    let table = vec![(CostKind::Product, product), (CostKind::Labour, labour), (CostKind::Overhead, overhead)];
    let said: Vec<String> = table.iter().map(|(kind, amount)| format!("{kind} {amount}")).collect();
    let (part, share) = (float(rise) / 100.0, of_all(labour));
    Some(
        Draft::new(format!(
            "The picture shows what a service costs Juniper & Tide. Wages (labour) rise by {rise} %, all else stays. By how many \
             percent does the cost of the service rise?"
        ))
        .picture(ExercisePicture::new(Drawn::Costs { table }, format!("{}; {all} in all", list(said, "and"))))
        .given("product_cost", product.decimal())
        .given("labour_cost", labour.decimal())
        .given("overhead_cost", overhead.decimal())
        .given("rise_percent", rise)
        .step("share of the wages", format!("{} / {} x 100", labour.decimal(), all.decimal()), format!("{share:.1} %"))
        .answer("as much of the whole", format!("{} / {} x {rise}", labour.decimal(), all.decimal()), number(share * part, 1, "%")?)
        .wrong(Mistake::GivenForAnswer, number(float(rise), 1, "%"))
        .wrong(Mistake::PartAndWhole, number(share, 1, "%"))
        .wrong(Mistake::OtherPart, number((100.0 - share) * part, 1, "%")),
    )
}

use super::Task;
use crate::{
    money::{
        Currency, Labour, Measure, Money, OnCosts, Overhead, PackPrice, Rounding, packs_needed, supply_cost, unit_price,
    },
    source::{
        Basis,
        citations::money::{COSTING_A_SERVICE, PREALGEBRA},
    },
    teach::{
        Mistake,
        draft::{Draft, count, mass, minutes, money},
        draw::Draw,
    },
};
use rust_decimal::{Decimal, RoundingStrategy};

pub(super) const TASKS: &[Task] = &[
    Task::gentle("cost-of-grams", cost_of_grams),
    Task::gentle("packs-to-buy", packs_to_buy),
    Task::steady("cost-of-minutes", cost_of_minutes),
    Task::stretch("cost-of-service", cost_of_service),
];

pub(super) const HALF_UP: Rounding = Rounding::MidpointAwayFromZero;

/// So many hundredths of the unit; in a currency without decimals as many units.
pub(super) fn amount(hundredths: i64, currency: Currency) -> Money {
    let finer = 10_i64.pow(currency.exponent().saturating_sub(2).min(4));
    Money::from_minor(hundredths.saturating_mul(finer), currency)
}

fn cost_of_grams(draw: &mut Draw, currency: Currency) -> Option<Draft> {
    let price = amount(draw.between(80, 480) * 10, currency);
    let (contents, used) = (Decimal::from(draw.pick(&[60, 100, 250, 500, 1000])?), draw.multiple(2, 24, (5, 0)));
    if used >= contents {
        return None;
    }
    let pack = PackPrice::new(price, Measure::Mass(mass(contents))).ok()?;
    let (found, each) = (supply_cost(pack, mass(used), HALF_UP).ok()?, unit_price(pack).ok()?);
    let early = each.per_unit.round_dp_with_strategy(currency.exponent(), RoundingStrategy::MidpointAwayFromZero);
    let full = price.decimal() * used / contents;
    money(full, price)?;
    Some(
        Draft::new(format!(
            "A pack of {contents} g costs Juniper & Tide {price}. A bowl takes {used} g of it. What does that cost, rounded once to \
             the smallest coin?"
        ))
        .rests_on(Basis::Published, &[PREALGEBRA])
        .given("pack_price", price.decimal())
        .given("pack_g", contents)
        .given("used_g", used)
        .step("a gram, not rounded", format!("{price} / {contents}"), format!("{each:.6}"))
        .answer("what is used", format!("{} x {used} / {contents}", price.decimal()), money(found.decimal(), price)?)
        .wrong(Mistake::RoundedTooEarly, money(early * used, price))
        .wrong(Mistake::Inverted, money(price.decimal() * contents / used, price))
        .wrong(Mistake::DecimalPoint, money(found.decimal() * Decimal::TEN, price))
        .wrong(Mistake::GivenForAnswer, money(price.decimal(), price)),
    )
}

fn packs_to_buy(draw: &mut Draw, _: Currency) -> Option<Draft> {
    let (need, contents) = (draw.between(120, 1_400), draw.pick(&[60_i64, 90, 100, 250, 500])?);
    if need % contents == 0 || need < contents {
        return None;
    }
    let grams = |value: i64| Measure::Mass(mass(Decimal::from(value)));
    let found = packs_needed(grams(need), grams(contents)).ok()?;
    Some(
        Draft::new(format!(
            "Juniper & Tide will use {need} g of a shade next month and buys it in tubes of {contents} g. How many tubes are \
             ordered so that it is enough?"
        ))
        .rests_on(Basis::Derived, &[])
        .given("need_g", need)
        .given("pack_g", contents)
        .step("tubes, not whole", format!("{need} / {contents}"), (Decimal::from(need) / Decimal::from(contents)).round_dp(2))
        .answer("whole tubes that are enough", "up to the next whole one".to_owned(), count(found, "tubes")?)
        .wrong(Mistake::RoundedDown, count(found - 1, "tubes"))
        .wrong(Mistake::OneTooMany, count(found + 1, "tubes"))
        .wrong(Mistake::GivenForAnswer, count(contents, "tubes")),
    )
}

fn cost_of_minutes(draw: &mut Draw, currency: Currency) -> Option<Draft> {
    let (wage, worked) = (amount(draw.between(24, 60) * 50, currency), draw.between(3, 27) * 5);
    let on_costs = Decimal::from(draw.pick(&[10, 20, 25, 30])?);
    if worked % 60 == 0 {
        return None;
    }
    let labour = Labour::new(wage, OnCosts::from_percent(on_costs).ok()?, minutes(60), minutes(60)).ok()?;
    let found = labour.cost(minutes(worked), HALF_UP).ok()?;
    let full = wage.decimal() * (Decimal::ONE_HUNDRED + on_costs) / Decimal::ONE_HUNDRED * Decimal::from(worked);
    money(full / Decimal::from(60), wage)?;
    let an_hour = wage.decimal() * (Decimal::ONE_HUNDRED + on_costs) / Decimal::ONE_HUNDRED;
    Some(
        Draft::new(format!(
            "A colourist of Juniper & Tide earns {wage} an hour, and {on_costs} % come on top for the salon. A service takes {worked} \
             min of work. What does the work cost, rounded once to the smallest coin?"
        ))
        .rests_on(Basis::Published, &[COSTING_A_SERVICE])
        .given("wage_per_h", wage.decimal())
        .given("on_costs_percent", on_costs)
        .given("worked_min", worked)
        .step("an hour with what comes on top", format!("{} x {} / 100", wage.decimal(), Decimal::ONE_HUNDRED + on_costs), an_hour.normalize())
        .answer("the minutes", format!("{} x {worked} / 60", an_hour.normalize()), money(found.decimal(), wage)?)
        .wrong(Mistake::LeftOut, money(wage.decimal() * Decimal::from(worked) / Decimal::from(60), wage))
        .wrong(Mistake::HundredMinutes, money(full / Decimal::ONE_HUNDRED, wage))
        .wrong(Mistake::Inverted, money(an_hour * Decimal::from(60) / Decimal::from(worked), wage)),
    )
}

fn cost_of_service(draw: &mut Draw, currency: Currency) -> Option<Draft> {
    let (product, wage, chair) = (
        amount(draw.between(40, 160) * 10, currency),
        amount(draw.between(18, 36) * 100, currency),
        amount(draw.between(6, 24) * 100, currency),
    );
    let (worked, seated) = (draw.between(3, 9) * 10, draw.between(10, 16) * 10);
    let labour = Labour::new(wage, OnCosts::from_percent(Decimal::ZERO).ok()?, minutes(60), minutes(60)).ok()?;
    let (work, place) = (
        labour.cost(minutes(worked), HALF_UP).ok()?,
        Overhead::per_hour(chair).ok()?.cost(minutes(seated), HALF_UP).ok()?,
    );
    let found = product.plus(work).ok()?.plus(place).ok()?;
    // Each line rounded once, as the question says; none where a line could be rounded either way.
    let line = |rate: Money, time: i64, hour: i64| {
        money(rate.decimal() * Decimal::from(time) / Decimal::from(hour), rate)?.amount()
    };
    let with = |minutes: i64, hour: i64| {
        money(product.decimal() + line(wage, worked, hour)? + line(chair, minutes, hour)?, product)
    };
    with(seated, 60)?;
    Some(
        Draft::new(format!(
            "A service at Juniper & Tide uses products for {product}, {worked} min of work at {wage} an hour, and keeps the chair for \
             {seated} min; rent and the like come to {chair} for an hour of the chair. What does the service cost, each line \
             rounded once to the smallest coin?"
        ))
        .rests_on(Basis::Published, &[COSTING_A_SERVICE])
        .given("product_cost", product.decimal())
        .given("worked_min", worked)
        .given("wage_per_h", wage.decimal())
        .given("chair_min", seated)
        .given("chair_per_h", chair.decimal())
        .step("the work", format!("{} x {worked} / 60", wage.decimal()), work)
        .step("the chair", format!("{} x {seated} / 60", chair.decimal()), place)
        .answer("all of it", format!("{} + {} + {}", product.decimal(), work.decimal(), place.decimal()), money(found.decimal(), product)?)
        .wrong(Mistake::LeftOut, money(product.decimal() + work.decimal(), product))
        .wrong(Mistake::PartAndWhole, with(worked, 60))
        .wrong(Mistake::HundredMinutes, with(seated, 100)),
    )
}

use super::{
    Task,
    costing::{HALF_UP, amount},
};
use crate::{
    business::{break_even, contribution, discount_break_even, target_profit},
    money::{Currency, Money},
    source::{Basis, citations::money::MANAGERIAL_ACCOUNTING},
    teach::{
        Mistake,
        draft::{Draft, count, money},
        draw::Draw,
    },
};
use rust_decimal::{Decimal, prelude::ToPrimitive};

pub(super) const TASKS: &[Task] = &[
    Task::gentle("contribution", one_service),
    Task::steady("services-to-break-even", services),
    Task::stretch("services-for-profit", with_profit),
    Task::stretch("services-after-discount", after_discount),
];

/// A net price and the variable cost of one service, which leave something.
fn service(draw: &mut Draw, currency: Currency) -> Option<(Money, Money)> {
    let (price, cost) = (draw.between(40, 160), draw.between(10, 90));
    (price >= cost + 10).then(|| (amount(price * 100, currency), amount(cost * 100, currency)))
}

fn up(value: Decimal) -> Option<i64> {
    value.ceil().to_i64()
}

fn one_service(draw: &mut Draw, currency: Currency) -> Option<Draft> {
    let (price, variable) = service(draw, currency)?;
    let found = contribution(price, variable).ok()?;
    Some(
        Draft::new(format!(
            "A service of Juniper & Tide sells for {price} net. Its products and commission cost {variable}. What does one such \
             service leave for rent, wages and profit?"
        ))
        .rests_on(Basis::Published, &[MANAGERIAL_ACCOUNTING])
        .given("price", price.decimal())
        .given("variable_cost", variable.decimal())
        .answer("contribution", format!("{} - {}", price.decimal(), variable.decimal()), money(found.each.decimal(), price)?)
        .wrong(Mistake::GivenForAnswer, money(price.decimal(), price))
        .wrong(Mistake::OtherPart, money(variable.decimal(), price))
        .wrong(Mistake::Added, money(price.decimal() + variable.decimal(), price)),
    )
}

fn services(draw: &mut Draw, currency: Currency) -> Option<Draft> {
    let ((price, variable), fixed) = (service(draw, currency)?, amount(draw.between(18, 90) * 10_000, currency));
    let found = break_even(fixed, price, variable, HALF_UP).ok()?;
    let each = price.decimal() - variable.decimal();
    Some(
        Draft::new(format!(
            "Rent and wages of a month come to {fixed} at Juniper & Tide. A service sells for {price} net and costs {variable} in \
             products and commission. How many whole services cover the month?"
        ))
        .rests_on(Basis::Published, &[MANAGERIAL_ACCOUNTING])
        .given("fixed", fixed.decimal())
        .given("price", price.decimal())
        .given("variable_cost", variable.decimal())
        .step("what one service leaves", format!("{} - {}", price.decimal(), variable.decimal()), each.normalize())
        .step("services, not whole", format!("{} / {}", fixed.decimal(), each.normalize()), found.count_exact.round_dp(2))
        .answer("whole services that are enough", "up to the next whole one".to_owned(), count(found.count, "services")?)
        .wrong(Mistake::LeftOut, count(up(fixed.decimal() / price.decimal())?, "services"))
        .wrong(Mistake::RoundedDown, count(found.count_exact.floor().to_i64()?, "services"))
        .wrong(Mistake::Denominator, count(up(fixed.decimal() / variable.decimal())?, "services")),
    )
}

fn with_profit(draw: &mut Draw, currency: Currency) -> Option<Draft> {
    let ((price, variable), fixed) = (service(draw, currency)?, amount(draw.between(18, 90) * 10_000, currency));
    let profit = amount(draw.between(5, 40) * 10_000, currency);
    let found = target_profit(fixed, price, variable, profit, HALF_UP).ok()?;
    let each = price.decimal() - variable.decimal();
    let goal = fixed.plus(profit).ok()?;
    Some(
        Draft::new(format!(
            "A month at Juniper & Tide has {fixed} of fixed costs and is to leave {profit} before tax. A service sells for {price} \
             net and costs {variable} in products and commission. How many whole services are needed?"
        ))
        .rests_on(Basis::Published, &[MANAGERIAL_ACCOUNTING])
        .given("fixed", fixed.decimal())
        .given("profit", profit.decimal())
        .given("price", price.decimal())
        .given("variable_cost", variable.decimal())
        .step("what has to be earned", format!("{} + {}", fixed.decimal(), profit.decimal()), goal)
        .step("what one service leaves", format!("{} - {}", price.decimal(), variable.decimal()), each.normalize())
        .step("services, not whole", format!("{} / {}", goal.decimal(), each.normalize()), found.count_exact.round_dp(2))
        .answer("whole services that are enough", "up to the next whole one".to_owned(), count(found.count, "services")?)
        .wrong(Mistake::LeftOut, count(up(fixed.decimal() / each)?, "services"))
        .wrong(Mistake::Denominator, count(up(goal.decimal() / price.decimal())?, "services"))
        .wrong(Mistake::RoundedDown, count(found.count_exact.floor().to_i64()?, "services")),
    )
}

fn after_discount(draw: &mut Draw, currency: Currency) -> Option<Draft> {
    let ((price, variable), sold) = (service(draw, currency)?, draw.between(4, 24) * 5);
    let percent = Decimal::from(draw.pick(&[5, 10, 15, 20])?);
    let reduced = price.decimal() * (Decimal::ONE_HUNDRED - percent) / Decimal::ONE_HUNDRED;
    let after = Money::from_decimal_exact(reduced, currency).ok()?;
    let found = discount_break_even(price, after, variable, u32::try_from(sold).ok()?).ok()?;
    let [before, left] = [found.contribution_before, found.contribution_after].map(Money::decimal);
    let number = Decimal::from(sold);
    Some(
        Draft::new(format!(
            "Juniper & Tide sells {sold} services a month at {price} net; each costs {variable} in products and commission. An offer \
             takes {percent} % off the price. How many services must the offer sell to leave as much as before?"
        ))
        .rests_on(Basis::Derived, &[MANAGERIAL_ACCOUNTING])
        .given("sold", sold)
        .given("price", price.decimal())
        .given("variable_cost", variable.decimal())
        .given("discount_percent", percent)
        .step("left by a service before", format!("{} - {}", price.decimal(), variable.decimal()), before.normalize())
        .step("left by a service of the offer", format!("{} - {}", after.decimal(), variable.decimal()), left.normalize())
        .answer(
            "whole services that leave as much",
            format!("{sold} x {} / {}, up to a whole one", before.normalize(), left.normalize()),
            count(found.count_needed, "services")?,
        )
        .wrong(Mistake::LeftOut, count(up(number * price.decimal() / after.decimal())?, "services"))
        .wrong(Mistake::PartAndWhole, count(up(number * (Decimal::ONE_HUNDRED + percent) / Decimal::ONE_HUNDRED)?, "services"))
        .wrong(Mistake::RoundedDown, count((number * before / left).floor().to_i64()?, "services")),
    )
}

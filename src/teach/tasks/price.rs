use super::{
    Task,
    costing::{HALF_UP, amount},
};
use crate::{
    money::{Currency, Margin, Markup, Money, SetPrice, price_from_margin, price_from_markup},
    source::{Basis, citations::money::CONTEMPORARY_MATHEMATICS},
    teach::{
        Mistake,
        draft::{Draft, float, money, number},
        draw::Draw,
        picture::{Drawn, ExercisePicture},
    },
};
use rust_decimal::Decimal;

pub(super) const TASKS: &[Task] = &[
    Task::gentle("price-from-markup", from_markup),
    Task::steady("price-from-margin", from_margin),
    Task::steady("margin-of-price", margin_of_price),
    Task::stretch("markup-to-margin", markup_to_margin),
];

const HUNDRED: Decimal = Decimal::ONE_HUNDRED;

fn from_markup(draw: &mut Draw, currency: Currency) -> Option<Draft> {
    let (cost, percent) = (amount(draw.between(24, 120) * 50, currency), draw.multiple(4, 24, (5, 0)));
    let set = price_from_markup(cost, Markup::from_percent(percent).ok()?, HALF_UP).ok()?;
    money(cost.decimal() * (HUNDRED + percent) / HUNDRED, cost)?;
    Some(
        Draft::new(format!(
            "A service costs Juniper & Tide {cost}. The mark-up is {percent} % of the cost. What is the net price?"
        ))
        .rests_on(Basis::Published, &[CONTEMPORARY_MATHEMATICS])
        .given("cost", cost.decimal())
        .given("markup_percent", percent)
        .step("the mark-up", format!("{} x {percent} / 100", cost.decimal()), set.profit)
        .answer(
            "the price",
            format!("{} x {} / 100", cost.decimal(), HUNDRED + percent),
            money(set.price.decimal(), cost)?,
        )
        .wrong(
            Mistake::MarginForMarkup,
            (percent < HUNDRED).then(|| money(cost.decimal() * HUNDRED / (HUNDRED - percent), cost)).flatten(),
        )
        .wrong(Mistake::LeftOut, money(set.profit.decimal(), cost))
        .wrong(Mistake::PartAndWhole, money(cost.decimal() * HUNDRED / percent, cost)),
    )
}

/// Where the curve begins and how it goes on.
fn curve(cost: Money) -> String {
    format!(
        "net price against margin for a cost of {cost}: at a margin of 0 % the price is the cost, and it rises ever faster"
    )
}

fn from_margin(draw: &mut Draw, currency: Currency) -> Option<Draft> {
    let (cost, percent) = (amount(draw.between(24, 120) * 50, currency), draw.multiple(2, 14, (5, 0)));
    let set = price_from_margin(cost, Margin::from_percent(percent).ok()?, HALF_UP).ok()?;
    money(cost.decimal() * HUNDRED / (HUNDRED - percent), cost)?;
    Some(
        Draft::new(format!(
            "A service costs Juniper & Tide {cost}. {percent} % of the net price are to be profit. What is the net price, rounded \
             once to the smallest coin?"
        ))
        .picture(ExercisePicture::new(Drawn::Margin { cost }, curve(cost)))
        .rests_on(Basis::Derived, &[CONTEMPORARY_MATHEMATICS])
        .given("cost", cost.decimal())
        .given("margin_percent", percent)
        .step("the cost is the rest of the price", format!("100 % - {percent} %"), format!("{} %", HUNDRED - percent))
        .answer("the price", format!("{} x 100 / {}", cost.decimal(), HUNDRED - percent), money(set.price.decimal(), cost)?)
        .wrong(Mistake::MarkupForMargin, money(cost.decimal() * (HUNDRED + percent) / HUNDRED, cost))
        .wrong(Mistake::PartAndWhole, money(cost.decimal() * HUNDRED / percent, cost))
        .wrong(Mistake::LeftOut, money(cost.decimal() * percent / HUNDRED, cost)),
    )
}

fn margin_of_price(draw: &mut Draw, currency: Currency) -> Option<Draft> {
    let (cost, price) = (amount(draw.between(12, 90) * 100, currency), amount(draw.between(40, 180) * 100, currency));
    if price <= cost {
        return None;
    }
    let set = SetPrice::of(cost, price).ok()?;
    Some(
        Draft::new(format!(
            "A service costs Juniper & Tide {cost} and sells for {price} net. What is the margin, in percent?"
        ))
        .rests_on(Basis::Derived, &[CONTEMPORARY_MATHEMATICS])
        .given("cost", cost.decimal())
        .given("price", price.decimal())
        .step("the profit", format!("{} - {}", price.decimal(), cost.decimal()), set.profit)
        .answer(
            "of the price",
            format!("{} / {} x 100", set.profit.decimal(), price.decimal()),
            number(float(set.margin.percent()), 1, "%")?,
        )
        .wrong(Mistake::MarkupForMargin, number(float(set.markup.percent()), 1, "%"))
        .wrong(Mistake::OtherPart, number(float(cost.decimal() / price.decimal() * HUNDRED), 1, "%"))
        .wrong(Mistake::Inverted, number(float(price.decimal() / cost.decimal() * HUNDRED), 1, "%")),
    )
}

fn markup_to_margin(draw: &mut Draw, _: Currency) -> Option<Draft> {
    let percent = draw.multiple(4, 36, (5, 0));
    let margin = Markup::from_percent(percent).ok()?.margin().ok()?;
    Some(
        Draft::new(format!(
            "Juniper & Tide puts {percent} % mark-up on every cost. Which margin is that, in percent of the net price?"
        ))
        .rests_on(Basis::Derived, &[CONTEMPORARY_MATHEMATICS])
        .given("markup_percent", percent)
        .step("the price of a cost of 100", format!("100 + {percent}"), HUNDRED + percent)
        .answer(
            "the profit in it",
            format!("{percent} / {} x 100", HUNDRED + percent),
            number(float(margin.percent()), 1, "%")?,
        )
        .wrong(Mistake::MarginForMarkup, number(float(percent), 1, "%"))
        .wrong(
            Mistake::OtherRule,
            (percent < HUNDRED).then(|| number(float(percent / (HUNDRED - percent) * HUNDRED), 1, "%")).flatten(),
        )
        .wrong(Mistake::OtherPart, number(float(HUNDRED / (HUNDRED + percent) * HUNDRED), 1, "%")),
    )
}

use super::Task;
use crate::{
    money::Currency,
    peroxide::{KnownMass, blend_two, dilute, dilute_known, mix_strengths},
    source::Interval,
    teach::{
        Mistake,
        draft::{Draft, exact, float, grams, mass, number, shown, strength, ww},
        draw::Draw,
    },
};
use rust_decimal::Decimal;

pub(super) const TASKS: &[Task] = &[
    Task::gentle("dilute-to-total", dilute_to_total),
    Task::gentle("water-for-total", water_for_total),
    Task::steady("water-to-add", water_to_add),
    Task::steady("strength-of-blend", strength_of_blend),
    Task::steady("alligation", alligation),
    Task::stretch("add-strong-to-weak", add_strong_to_weak),
    Task::stretch("strength-after-water", strength_after_water),
];

/// A stock and a weaker target, in % w/w.
fn stock_and_target(draw: &mut Draw) -> Option<(Decimal, Decimal)> {
    let stock = Decimal::from(draw.pick(&[6, 9, 12])?);
    let target = draw.multiple(2, 21, (5, 1));
    (target < stock).then_some((stock, target))
}

fn dilute_to_total(draw: &mut Draw, _: Currency) -> Option<Draft> {
    let ((stock, target), total) = (stock_and_target(draw)?, draw.multiple(3, 24, (10, 0)));
    let found = dilute(strength(stock), strength(target), mass(total)).ok()?;
    let (total_g, parts) = (float(total), float(stock) + float(target));
    Some(
        Draft::new(format!(
            "Juniper & Tide needs {total} g of a {target} % w/w developer and has a clear one of {stock} % w/w. How many grams \
             of the {stock} % developer go in? The rest is distilled water."
        ))
        .given("stock_ww_percent", stock)
        .given("target_ww_percent", target)
        .given("total_g", total)
        .step("peroxide that is needed", format!("{total} g x {target} / 100"), format!("{} g", (total * target / Decimal::from(100)).normalize()))
        .answer("grams of stock", format!("{total} g x {target} / {stock}"), exact(found.stock.g(), 1, "g")?)
        .wrong(Mistake::OtherPart, grams(found.diluent, 1))
        .wrong(Mistake::PartAndWhole, number(total_g * float(target) / parts, 1, "g"))
        .wrong(Mistake::Inverted, number(total_g * float(stock) / float(target), 1, "g"))
        .wrong(Mistake::Denominator, number(total_g * float(target) / 100.0, 2, "g")),
    )
}

fn water_for_total(draw: &mut Draw, _: Currency) -> Option<Draft> {
    let ((stock, target), total) = (stock_and_target(draw)?, draw.multiple(3, 24, (10, 0)));
    let found = dilute(strength(stock), strength(target), mass(total)).ok()?;
    Some(
        Draft::new(format!(
            "A clear {stock} % w/w developer is to become {total} g of {target} % w/w at Juniper & Tide. How many grams of \
             distilled water go in?"
        ))
        .given("stock_ww_percent", stock)
        .given("target_ww_percent", target)
        .given("total_g", total)
        .step("grams of stock", format!("{total} g x {target} / {stock}"), format!("{} g", shown(found.stock.g())))
        .answer("grams of water", format!("{total} g - {} g", shown(found.stock.g())), exact(found.diluent.g(), 1, "g")?)
        .wrong(Mistake::OtherPart, grams(found.stock, 1))
        .wrong(Mistake::PartAndWhole, number(float(total) * float(stock - target) / float(stock + target), 1, "g"))
        .wrong(Mistake::Denominator, number(float(total) * float(stock - target) / 100.0, 1, "g")),
    )
}

fn water_to_add(draw: &mut Draw, _: Currency) -> Option<Draft> {
    let ((stock, target), left) = (stock_and_target(draw)?, draw.multiple(2, 20, (10, 0)));
    let found = dilute_known(strength(stock), strength(target), KnownMass::First(mass(left))).ok()?;
    let total = found.total();
    Some(
        Draft::new(format!(
            "{left} g of a clear {stock} % w/w developer are left at Juniper & Tide. How many grams of distilled water make \
             {target} % w/w of all of it?"
        ))
        .given("stock_ww_percent", stock)
        .given("target_ww_percent", target)
        .given("stock_g", left)
        .step("all of it when it is done", format!("{left} g x {stock} / {target}"), format!("{} g", shown(total.g())))
        .answer("grams of water", format!("{} g - {left} g", shown(total.g())), exact(found.diluent.g(), 1, "g")?)
        .wrong(Mistake::PartAndWhole, grams(total, 1))
        .wrong(Mistake::Denominator, number(float(left) * float(stock - target) / float(stock), 1, "g"))
        .wrong(Mistake::OtherRule, number(float(left) * float(target) / float(stock), 1, "g")),
    )
}

fn strength_of_blend(draw: &mut Draw, _: Currency) -> Option<Draft> {
    let (first, second) = (Decimal::from(draw.pick(&[3, 4, 6])?), Decimal::from(draw.pick(&[8, 9, 10, 12])?));
    let (of_first, of_second) = (draw.multiple(1, 9, (10, 0)), draw.multiple(1, 9, (10, 0)));
    let parts = [(strength(first), mass(of_first)), (strength(second), mass(of_second))];
    let found: Interval<_> = mix_strengths(&parts).ok()?.strength;
    let held = (first * of_first + second * of_second) / Decimal::from(100);
    Some(
        Draft::new(format!(
            "At Juniper & Tide {of_first} g of {first} % w/w and {of_second} g of {second} % w/w developer are stirred together. \
             How strong is the blend, in % w/w?"
        ))
        .given("first_ww_percent", first)
        .given("second_ww_percent", second)
        .given("first_g", of_first)
        .given("second_g", of_second)
        .step("peroxide in both", format!("{of_first} x {first} / 100 + {of_second} x {second} / 100"), format!("{} g", held.normalize()))
        .answer("strength of all", format!("{} g / {} g x 100", held.normalize(), of_first + of_second), ww(found.best(), 2)?)
        .wrong(Mistake::PlainMean, exact(float(first + second) / 2.0, 2, "% w/w"))
        .wrong(Mistake::Denominator, number(float(held / of_first) * 100.0, 2, "% w/w"))
        .wrong(Mistake::Added, exact(float(first + second), 2, "% w/w")),
    )
}

fn alligation(draw: &mut Draw, _: Currency) -> Option<Draft> {
    let (weak, strong) = (Decimal::from(draw.pick(&[2, 3, 4, 6])?), Decimal::from(draw.pick(&[9, 10, 12])?));
    let (target, total) = (draw.multiple(5, 23, (5, 1)), draw.multiple(3, 20, (10, 0)));
    let found = blend_two(strength(strong), strength(weak), strength(target), KnownMass::Total(mass(total))).ok()?;
    let (above, below) = (target - weak, strong - target);
    Some(
        Draft::new(format!(
            "Juniper & Tide blends a {weak} % and a {strong} % w/w developer to {total} g of {target} % w/w. How many grams of the \
             {strong} % developer go in?"
        ))
        .given("weak_ww_percent", weak)
        .given("strong_ww_percent", strong)
        .given("target_ww_percent", target)
        .given("total_g", total)
        .step("parts of the strong one: target less weak", format!("{target} - {weak}"), above.normalize())
        .step("parts of the weak one: strong less target", format!("{strong} - {target}"), below.normalize())
        .answer("grams of the strong one", format!("{total} g x {} / {}", above.normalize(), strong - weak), exact(found.first.g(), 1, "g")?)
        .wrong(Mistake::OtherPart, grams(found.second, 1))
        .wrong(Mistake::Denominator, number(float(total) * float(above) / float(strong), 1, "g"))
        .wrong(Mistake::OtherRule, number(float(total) * float(target) / float(strong), 1, "g")),
    )
}

fn add_strong_to_weak(draw: &mut Draw, _: Currency) -> Option<Draft> {
    let (weak, strong) = (Decimal::from(draw.pick(&[2, 3, 4])?), Decimal::from(draw.pick(&[9, 12])?));
    let (target, have) = (draw.multiple(5, 23, (5, 1)), draw.multiple(3, 16, (10, 0)));
    let found = blend_two(strength(weak), strength(strong), strength(target), KnownMass::First(mass(have))).ok()?;
    let (above, below) = (target - weak, strong - target);
    Some(
        Draft::new(format!(
            "{have} g of a {weak} % w/w developer stand in a flask at Juniper & Tide. How many grams of {strong} % w/w have to be \
             added to reach {target} % w/w?"
        ))
        .given("weak_ww_percent", weak)
        .given("strong_ww_percent", strong)
        .given("target_ww_percent", target)
        .given("weak_g", have)
        .step("strong to weak, in parts", format!("({target} - {weak}) : ({strong} - {target})"), format!("{} : {}", above.normalize(), below.normalize()))
        .answer("grams to add", format!("{have} g x {} / {}", above.normalize(), below.normalize()), exact(found.second.g(), 1, "g")?)
        .wrong(Mistake::Inverted, number(float(have) * float(below) / float(above), 1, "g"))
        .wrong(Mistake::Denominator, number(float(have) * float(above) / float(strong - weak), 1, "g"))
        .wrong(Mistake::PartAndWhole, grams(found.total(), 1)),
    )
}

fn strength_after_water(draw: &mut Draw, _: Currency) -> Option<Draft> {
    let stock = Decimal::from(draw.pick(&[6, 9, 12])?);
    let (of_stock, water) = (draw.multiple(2, 12, (10, 0)), draw.multiple(1, 12, (10, 0)));
    let parts = [(strength(stock), mass(of_stock)), (strength(Decimal::ZERO), mass(water))];
    let found: Interval<_> = mix_strengths(&parts).ok()?.strength;
    Some(
        Draft::new(format!(
            "By mistake {water} g of distilled water went into {of_stock} g of a clear {stock} % w/w developer at Juniper & Tide. \
             How strong is it now, in % w/w?"
        ))
        .given("stock_ww_percent", stock)
        .given("stock_g", of_stock)
        .given("water_g", water)
        .step("all of it", format!("{of_stock} g + {water} g"), format!("{} g", of_stock + water))
        .answer("strength", format!("{stock} x {of_stock} / {}", of_stock + water), ww(found.best(), 2)?)
        .wrong(Mistake::PlainMean, exact(float(stock) / 2.0, 2, "% w/w"))
        .wrong(Mistake::Denominator, number(float(stock) * float(of_stock) / float(water), 2, "% w/w"))
        .wrong(Mistake::OtherPart, number(float(stock) * float(water) / float(of_stock + water), 2, "% w/w")),
    )
}

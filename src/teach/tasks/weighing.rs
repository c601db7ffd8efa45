use super::Task;
use crate::{
    mix::minimum_mass,
    money::Currency,
    quantity::Share,
    scale::Division,
    teach::{
        Mistake,
        draft::{Draft, exact, float, mass, number, shown},
        draw::Draw,
    },
};
use rust_decimal::Decimal;

pub(super) const TASKS: &[Task] = &[
    Task::gentle("round-to-scale", round_to_scale),
    Task::gentle("running-total", running_total),
    Task::steady("rounding-error", rounding_error),
    Task::stretch("smallest-mass", smallest_mass),
];

fn division(draw: &mut Draw) -> Option<Decimal> {
    draw.pick(&[Decimal::ONE, Decimal::new(5, 1), Decimal::new(2, 1), Decimal::TWO])
}

fn round_to_scale(draw: &mut Draw, _: Currency) -> Option<Draft> {
    let (step, wanted) = (division(draw)?, draw.multiple(801, 9_399, (1, 2)));
    let whole = (wanted / step).fract();
    // Neither on a step nor in the middle between two.
    if whole.is_zero() || whole == Decimal::new(5, 1) {
        return None;
    }
    let found = Division::new(mass(step)).ok()?.round(mass(wanted));
    let (below, beside) =
        ((wanted / step).floor() * step, if step == Decimal::ONE { Decimal::new(1, 1) } else { Decimal::ONE });
    let other = wanted / beside;
    // In the middle between two of its steps the error would have two answers.
    let other = (other.fract() != Decimal::new(5, 1)).then(|| other.round() * beside);
    Some(
        Draft::new(format!(
            "A recipe of Juniper & Tide works out to {wanted} g. The scale counts in steps of {step} g. Which mass comes nearest?"
        ))
        .given("wanted_g", wanted)
        .given("division_g", step)
        .step("steps", format!("{wanted} / {step}"), (wanted / step).round_dp(3).normalize())
        .answer("the nearest whole number of steps", format!("{} x {step} g", (wanted / step).round()), exact(found.g(), 2, "g")?)
        .wrong(Mistake::CutOff, exact(float(below), 2, "g"))
        .wrong(Mistake::RoundedUp, exact(float(below + step), 2, "g").filter(|_| found.g() < float(wanted)))
        .wrong(Mistake::WrongStep, other.and_then(|other| exact(float(other), 2, "g")))
        .wrong(Mistake::GivenForAnswer, exact(float(wanted), 2, "g")),
    )
}

fn running_total(draw: &mut Draw, _: Currency) -> Option<Draft> {
    let [first, second, third] = [0; 3].map(|_| draw.multiple(20, 120, (5, 1)));
    let total = mass(first) + mass(second) + mass(third);
    Some(
        Draft::new(format!(
            "An empty bowl stands on the scale at Juniper & Tide and the scale shows 0. {first} g of powder, then {second} g of \
             developer, then {third} g of an additive go in, and the scale is not set to zero in between. What does it show in \
             the end?"
        ))
        .given("first_g", first)
        .given("second_g", second)
        .given("third_g", third)
        .step("after the developer", format!("{first} g + {second} g"), format!("{} g", first + second))
        .answer("after the additive", format!("{} g + {third} g", first + second), exact(total.g(), 1, "g")?)
        .wrong(Mistake::GivenForAnswer, exact(float(third), 1, "g"))
        .wrong(Mistake::LeftOut, exact(float(first + second), 1, "g"))
        .wrong(Mistake::LeftOut, exact(float(second + third), 1, "g")),
    )
}

fn rounding_error(draw: &mut Draw, _: Currency) -> Option<Draft> {
    let (step, wanted) = (division(draw)?, draw.multiple(11, 199, (1, 1)));
    let whole = (wanted / step).fract();
    if whole.is_zero() || whole == Decimal::new(5, 1) {
        return None;
    }
    let weighed = Division::new(mass(step)).ok()?.round(mass(wanted));
    let off = (weighed.g() - float(wanted)).abs();
    Some(
        Draft::new(format!(
            "{wanted} g of a corrector are wanted at Juniper & Tide, and the scale counts in steps of {step} g. By how many percent \
             of what is wanted is the weighed mass off?"
        ))
        .given("wanted_g", wanted)
        .given("division_g", step)
        .step("what is weighed", format!("{wanted} g to the nearest {step} g"), format!("{} g", shown(weighed.g())))
        .step("how far off", format!("{} g and {wanted} g", shown(weighed.g())), format!("{} g", shown(off)))
        .answer("percent of what is wanted", format!("{} / {wanted} x 100", shown(off)), number(off / float(wanted) * 100.0, 1, "%")?)
        .wrong(Mistake::Denominator, number(off / weighed.g() * 100.0, 1, "%"))
        .wrong(Mistake::PartAndWhole, number(float(step) / float(wanted) * 100.0, 1, "%"))
        .wrong(Mistake::LeftOut, number(off * 100.0, 1, "%")),
    )
}

fn smallest_mass(draw: &mut Draw, _: Currency) -> Option<Draft> {
    let (step, percent) = (division(draw)?, Decimal::from(draw.pick(&[1, 2, 4, 5, 10])?));
    let found = minimum_mass(mass(step), Share::from_percent(float(percent)).ok()?).ok()?;
    let half = step / Decimal::TWO;
    Some(
        Draft::new(format!(
            "Rounding to a scale of {step} g steps is off by half a step at most. From which mass on is that no more than \
             {percent} %? (Juniper & Tide asks before it weighs a small corrector.)"
        ))
        .given("division_g", step)
        .given("tolerance_percent", percent)
        .step("half a step", format!("{step} g / 2"), format!("{} g", half.normalize()))
        .answer("the mass of which that is the percent", format!("{} g x 100 / {percent}", half.normalize()), exact(found.g(), 2, "g")?)
        .wrong(Mistake::LeftOut, exact(found.g() * 2.0, 2, "g"))
        .wrong(Mistake::Inverted, exact(float(half * percent), 2, "g"))
        .wrong(Mistake::DecimalPoint, exact(found.g() / 10.0, 3, "g")),
    )
}

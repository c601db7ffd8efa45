use super::Task;
use crate::{
    colour::{Canvas, Level, ProductKind, Scale, blended_level, lift_needed, result_level, shade_level},
    money::Currency,
    source::{
        Basis, COMMON_PRACTICE,
        citations::colour::{FORMULA_LEVEL, RESULT_LEVEL},
    },
    teach::{
        Mistake,
        draft::{Draft, exact, float, mass},
        draw::Draw,
    },
};
use rust_decimal::Decimal;

pub(super) const TASKS: &[Task] = &[
    Task::gentle("levels-of-lift", levels_of_lift),
    Task::steady("formula-level", formula_level),
    Task::steady("result-level", result),
    Task::stretch("blended-level", blended),
];

const PERMANENT: ProductKind = ProductKind::PermanentColour;

fn level(number: Decimal) -> Option<Level> {
    Level::new(float(number)).ok()
}

fn levels_of_lift(draw: &mut Draw, _: Currency) -> Option<Draft> {
    let (from, to) = (Decimal::from(draw.between(2, 7)), Decimal::from(draw.between(4, 10)));
    let change = lift_needed(level(from)?, level(to)?);
    if change.levels() < 2.0 {
        return None;
    }
    Some(
        Draft::new(format!(
            "A guest of Juniper & Tide has natural level {from} and wants level {to}. How many levels of lift is that?"
        ))
        .rests_on(Basis::CommonPractice, &[COMMON_PRACTICE])
        .given("natural_level", from)
        .given("target_level", to)
        .answer("levels", format!("{to} - {from}"), exact(change.levels(), 1, "levels")?)
        .wrong(Mistake::BothEnds, exact(change.levels() + 1.0, 1, "levels"))
        .wrong(Mistake::GivenForAnswer, exact(float(to), 1, "levels"))
        .wrong(Mistake::OneTooFew, exact(change.levels() - 1.0, 1, "levels")),
    )
}

fn formula_level(draw: &mut Draw, _: Currency) -> Option<Draft> {
    let (natural, target) = (Decimal::from(draw.between(3, 7)), draw.multiple(8, 18, (5, 1)));
    let lift = target - natural;
    if lift < Decimal::ONE || lift == Decimal::TWO {
        return None;
    }
    let shade = shade_level(level(natural)?, level(target)?, PERMANENT, Canvas::Natural, Scale::European10).ok()?;
    Some(
        Draft::new(format!(
            "Natural hair of level {natural} is to become level {target} with permanent colour at Juniper & Tide. Which level \
             must the shade have by the rule of thumb? (A strand test decides.)"
        ))
        .rests_on(Basis::Published, &[FORMULA_LEVEL])
        .given("natural_level", natural)
        .given("target_level", target)
        .step("twice the target", format!("2 x {target}"), (Decimal::TWO * target).normalize())
        .answer("less the natural level", format!("2 x {target} - {natural}"), exact(shade.value.number(), 2, "level")?)
        .wrong(Mistake::OtherRule, exact(float(natural + target) / 2.0, 2, "level"))
        .wrong(Mistake::LiftAsFactor, exact(float(target * lift - natural), 2, "level"))
        .wrong(Mistake::GivenForAnswer, exact(float(target), 2, "level"))
        .wrong(Mistake::PartAndWhole, exact(float(lift), 2, "level")),
    )
}

fn result(draw: &mut Draw, _: Currency) -> Option<Draft> {
    let (natural, shade) = (Decimal::from(draw.between(2, 7)), Decimal::from(draw.between(5, 10)));
    if shade - natural < Decimal::TWO {
        return None;
    }
    let found = result_level(level(natural)?, level(shade)?, PERMANENT).ok()?.value;
    Some(
        Draft::new(format!(
            "Permanent colour of level {shade} goes on natural hair of level {natural} at Juniper & Tide. Which level comes of it \
             by the rule of thumb? (A strand test decides.)"
        ))
        .rests_on(Basis::Published, &[RESULT_LEVEL])
        .given("natural_level", natural)
        .given("shade_level", shade)
        .answer("the mean of both", format!("({natural} + {shade}) / 2"), exact(found.number(), 2, "level")?)
        .wrong(Mistake::GivenForAnswer, exact(float(shade), 2, "level"))
        .wrong(Mistake::OtherRule, exact(float(Decimal::TWO * shade - natural), 2, "level"))
        .wrong(Mistake::LeftOut, exact(float(shade - natural) / 2.0, 2, "level")),
    )
}

fn blended(draw: &mut Draw, _: Currency) -> Option<Draft> {
    let (first, second) = (Decimal::from(draw.between(4, 7)), Decimal::from(draw.between(7, 10)));
    let (of_first, of_second) = (draw.multiple(1, 8, (5, 0)), draw.multiple(1, 8, (5, 0)));
    if second - first < Decimal::ONE || of_first == of_second {
        return None;
    }
    let total = of_first + of_second;
    let found = blended_level([(level(first)?, mass(of_first)), (level(second)?, mass(of_second))]).ok()?.value;
    let weighted = first * of_first + second * of_second;
    Some(
        Draft::new(format!(
            "{of_first} g of a shade of level {first} and {of_second} g of one of level {second} are mixed at Juniper & Tide. Which \
             level has the mix, weighted by mass?"
        ))
        .rests_on(Basis::CommonPractice, &[COMMON_PRACTICE])
        .given("first_level", first)
        .given("second_level", second)
        .given("first_g", of_first)
        .given("second_g", of_second)
        .step("levels times grams", format!("{first} x {of_first} + {second} x {of_second}"), weighted)
        .answer("over all the grams", format!("{weighted} / {total}"), exact(found.number(), 2, "level")?)
        .wrong(Mistake::PlainMean, exact(float(first + second) / 2.0, 2, "level"))
        .wrong(Mistake::OtherPart, exact(float((first * of_second + second * of_first) / total), 2, "level"))
        .wrong(Mistake::GivenForAnswer, exact(float(second), 2, "level")),
    )
}

use super::Task;
use crate::{
    mix::Ratio,
    money::Currency,
    teach::{
        Mistake,
        draft::{Draft, exact, float, number},
        draw::Draw,
    },
};
use rust_decimal::Decimal;

pub(super) const TASKS: &[Task] = &[
    Task::gentle("developer-for-colour", developer_for_colour),
    Task::gentle("colour-for-developer", colour_for_developer),
    Task::steady("split-total", split_total),
    Task::steady("share-of-bowl", share_of_bowl),
    Task::stretch("three-shades", three_shades),
    Task::stretch("total-from-one-shade", total_from_one_shade),
];

/// One part of colour or powder to so many of developer; not one to one, where parts and whole cannot be told apart.
fn one_to(draw: &mut Draw) -> Option<(Decimal, Ratio)> {
    let developer = draw.pick(&[Decimal::new(15, 1), Decimal::TWO, Decimal::new(25, 1), Decimal::from(3)])?;
    Some((developer, Ratio::new(vec![Decimal::ONE, developer]).ok()?))
}

fn part(of: &[Decimal], place: usize) -> Option<f64> {
    of.get(place).map(|part| float(*part))
}

fn developer_for_colour(draw: &mut Draw, _: Currency) -> Option<Draft> {
    let ((parts, ratio), colour) = (one_to(draw)?, draw.multiple(2, 18, (5, 0)));
    let found = ratio.given_part_decimal(0, colour).ok()?;
    Some(
        Draft::new(format!(
            "At Juniper & Tide a colour is mixed {ratio} with developer. How many grams of developer go to {colour} g of colour?"
        ))
        .given("developer_parts", parts)
        .given("colour_g", colour)
        .answer("grams of developer", format!("{colour} g x {parts}"), exact(part(&found, 1)?, 1, "g")?)
        .wrong(Mistake::PartAndWhole, exact(float(colour * (parts + Decimal::ONE)), 1, "g"))
        .wrong(Mistake::Inverted, number(float(colour) / float(parts), 1, "g"))
        .wrong(Mistake::GivenForAnswer, exact(float(colour), 1, "g")),
    )
}

fn colour_for_developer(draw: &mut Draw, _: Currency) -> Option<Draft> {
    let ((parts, ratio), developer) = (one_to(draw)?, draw.multiple(4, 30, (5, 0)));
    let found = ratio.given_part_decimal(1, developer).ok()?;
    Some(
        Draft::new(format!(
            "{developer} g of developer are in the bowl at Juniper & Tide, for a lightening powder mixed {ratio}. How many grams \
             of powder go in?"
        ))
        .given("developer_parts", parts)
        .given("developer_g", developer)
        .answer("grams of powder", format!("{developer} g / {parts}"), exact(part(&found, 0)?, 1, "g")?)
        .wrong(Mistake::Inverted, exact(float(developer * parts), 1, "g"))
        .wrong(Mistake::Denominator, number(float(developer) / float(parts + Decimal::ONE), 1, "g"))
        .wrong(Mistake::GivenForAnswer, exact(float(developer), 1, "g")),
    )
}

fn split_total(draw: &mut Draw, _: Currency) -> Option<Draft> {
    let ((parts, ratio), total) = (one_to(draw)?, draw.multiple(4, 30, (5, 0)));
    let found = ratio.split_decimal(total).ok()?;
    let sum = parts + Decimal::ONE;
    Some(
        Draft::new(format!(
            "A bowl of {total} g is to be mixed {ratio} at Juniper & Tide, lightener to developer. How many grams of lightener are \
             that?"
        ))
        .given("developer_parts", parts)
        .given("total_g", total)
        .step("parts in all", format!("1 + {parts}"), sum)
        .answer("grams of lightener", format!("{total} g / {sum}"), exact(part(&found, 0)?, 1, "g")?)
        .wrong(Mistake::PartAndWhole, number(float(total) / float(parts), 1, "g"))
        .wrong(Mistake::OtherPart, exact(part(&found, 1)?, 1, "g"))
        .wrong(Mistake::Inverted, exact(float(total * sum), 1, "g")),
    )
}

fn share_of_bowl(draw: &mut Draw, _: Currency) -> Option<Draft> {
    let first = Decimal::from(draw.between(1, 3));
    let second = draw.multiple(2, 12, (5, 1));
    let ratio = Ratio::new(vec![first, second]).ok()?;
    let hundred = Decimal::ONE_HUNDRED;
    let found = ratio.split_decimal(hundred).ok()?;
    Some(
        Draft::new(format!(
            "At Juniper & Tide a lightener is mixed {ratio} with developer. Which percent of the bowl is lightener?"
        ))
        .given("lightener_parts", first)
        .given("developer_parts", second)
        .step("parts in all", format!("{first} + {second}"), (first + second).normalize())
        .answer(
            "percent of the bowl",
            format!("{first} / {} x 100", (first + second).normalize()),
            number(part(&found, 0)?, 1, "%")?,
        )
        .wrong(Mistake::Denominator, number(float(first) / float(second) * 100.0, 1, "%"))
        .wrong(Mistake::OtherPart, number(part(&found, 1)?, 1, "%"))
        .wrong(Mistake::Inverted, number(float(first + second) / float(first) * 100.0, 1, "%")),
    )
}

fn three_shades(draw: &mut Draw, _: Currency) -> Option<Draft> {
    let parts = [draw.between(2, 6), draw.between(1, 4), draw.between(1, 3)].map(Decimal::from);
    let [first, second, third] = parts;
    let total = draw.multiple(4, 24, (5, 0));
    let ratio = Ratio::new(parts.to_vec()).ok()?;
    let (found, sum) = (ratio.split_decimal(total).ok()?, ratio.sum());
    Some(
        Draft::new(format!(
            "Three shades stand {ratio} in a recipe of Juniper & Tide. A bowl takes {total} g of shades. How many grams of the \
             first shade are that?"
        ))
        .given("first_parts", first)
        .given("second_parts", second)
        .given("third_parts", third)
        .given("total_g", total)
        .step("parts in all", format!("{first} + {second} + {third}"), sum)
        .step("one part", format!("{total} g / {sum}"), format!("{} g", crate::text::number(float(total / sum), 4)))
        .answer("grams of the first", format!("{total} g x {first} / {sum}"), exact(part(&found, 0)?, 1, "g")?)
        .wrong(Mistake::LeftOut, exact(float(total * first), 1, "g"))
        .wrong(Mistake::PlainMean, number(float(total) / 3.0, 1, "g"))
        .wrong(Mistake::Denominator, number(float(total * first) / float(second + third), 1, "g"))
        .wrong(Mistake::OtherPart, exact(part(&found, 1)?, 1, "g")),
    )
}

fn total_from_one_shade(draw: &mut Draw, _: Currency) -> Option<Draft> {
    let parts = [draw.between(2, 5), draw.between(1, 3), draw.between(3, 8)].map(Decimal::from);
    let [first, second, developer] = parts;
    let have = draw.multiple(2, 16, (5, 0));
    let ratio = Ratio::new(parts.to_vec()).ok()?;
    let (found, sum) = (ratio.given_part_decimal(1, have).ok()?, ratio.sum());
    let total: Decimal = found.iter().sum();
    Some(
        Draft::new(format!(
            "A recipe of Juniper & Tide says {ratio}: base shade, mist shade, developer. {have} g of the mist shade are left \
             and all of it is used. How heavy does the whole bowl become, in grams?"
        ))
        .given("first_parts", first)
        .given("second_parts", second)
        .given("third_parts", developer)
        .given("second_g", have)
        .step("one part", format!("{have} g / {second}"), format!("{} g", crate::text::number(float(have / second), 4)))
        .step("parts in all", format!("{first} + {second} + {developer}"), sum)
        .answer("grams of all", format!("{have} g / {second} x {sum}"), exact(float(total), 1, "g")?)
        .wrong(Mistake::PartAndWhole, exact(float(have * sum), 1, "g"))
        .wrong(Mistake::LeftOut, exact(float(total - have), 1, "g"))
        .wrong(Mistake::Denominator, number(float(have * sum) / float(first), 1, "g")),
    )
}

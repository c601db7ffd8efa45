use super::Task;
use crate::{
    limits::{Jurisdiction, Purpose, Use, check_peroxide},
    mix::as_applied,
    money::Currency,
    quantity::MassFraction,
    source::{Basis, Citation, Interval},
    teach::{
        Mistake,
        draft::{Draft, exact, float, mass, number, strength, ww},
        draw::Draw,
    },
};
use rust_decimal::Decimal;

pub(super) const TASKS: &[Task] = &[
    Task::gentle("strength-on-hair", strength_on_hair),
    Task::steady("room-to-limit", room_to_limit),
    Task::stretch("strongest-developer", strongest_developer),
];

const UNIT: &str = "% w/w";

/// A bowl: grams of a product without peroxide, grams of developer, its strength, and what is then on the hair.
fn bowl(draw: &mut Draw) -> Option<([Decimal; 3], MassFraction)> {
    let (product, developer) = (draw.multiple(2, 10, (5, 0)), draw.multiple(4, 18, (5, 0)));
    let percent = Decimal::from(draw.pick(&[3, 4, 6, 9, 12])?);
    let parts =
        [(mass(product), Interval::exact(MassFraction::ZERO)), (mass(developer), Interval::exact(strength(percent)))];
    Some(([product, developer, percent], as_applied(&parts).ok()?.best()))
}

/// The ceiling of the European Union for peroxide as applied, as the table of the room has it.
fn ceiling() -> Option<(Decimal, Vec<Citation>)> {
    let none = Interval::exact(MassFraction::ZERO);
    let report = check_peroxide(Jurisdiction::EuropeanUnion, none, Use::professional(Purpose::Lightening));
    let row = report.judgements.first()?.limit?;
    let percent = Decimal::from_f64_retain(row.concentration?.ww_percent())?.round_dp(6).normalize();
    Some((percent, row.citations.iter().map(|citation| **citation).collect()))
}

fn strength_on_hair(draw: &mut Draw, _: Currency) -> Option<Draft> {
    let ([product, developer, percent], found) = bowl(draw)?;
    let total = product + developer;
    Some(
        Draft::new(format!(
            "{product} g of a lightening powder without peroxide and {developer} g of a {percent} % w/w developer are mixed at \
             Juniper & Tide. How strong is the peroxide on the hair, in % w/w?"
        ))
        .given("product_g", product)
        .given("developer_g", developer)
        .given("developer_ww_percent", percent)
        .step("all of it", format!("{product} g + {developer} g"), format!("{total} g"))
        .answer("strength on the hair", format!("{percent} x {developer} / {total}"), ww(found, 2)?)
        .wrong(Mistake::BottleForHair, exact(float(percent), 2, UNIT))
        .wrong(Mistake::OtherPart, number(float(percent * product) / float(total), 2, UNIT))
        .wrong(Mistake::PlainMean, exact(float(percent) / 2.0, 2, UNIT)),
    )
}

fn room_to_limit(draw: &mut Draw, _: Currency) -> Option<Draft> {
    let ([product, developer, percent], found) = bowl(draw)?;
    let (limit, sources) = ceiling()?;
    let total = product + developer;
    let left = float(limit) - found.ww_percent();
    Some(
        Draft::new(format!(
            "The law where Juniper & Tide works allows at most {limit} % w/w of hydrogen peroxide on the hair. A bowl holds \
             {product} g of colour without peroxide and {developer} g of a {percent} % w/w developer. How many percentage points \
             are left to the limit? (What is allowed is not for that reason harmless.)"
        ))
        .rests_on(Basis::Published, &sources)
        .given("limit_ww_percent", limit)
        .given("product_g", product)
        .given("developer_g", developer)
        .given("developer_ww_percent", percent)
        .step("strength on the hair", format!("{percent} x {developer} / {total}"), format!("{found:.4}"))
        .answer("percentage points left", format!("{limit} - {percent} x {developer} / {total}"), number(left, 2, "percentage points")?)
        .wrong(Mistake::BottleForHair, exact(float(limit - percent), 2, "percentage points"))
        .wrong(Mistake::Denominator, number(left / float(limit) * 100.0, 2, "percentage points"))
        .wrong(Mistake::OtherPart, number(found.ww_percent(), 2, "percentage points")),
    )
}

fn strongest_developer(draw: &mut Draw, _: Currency) -> Option<Draft> {
    let ([product, developer, _], _) = bowl(draw)?;
    let (limit, sources) = ceiling()?;
    let total = product + developer;
    let strongest = float(limit) * float(total) / float(developer);
    // What this developer comes to on the hair is the limit again.
    let parts = [
        (mass(product), Interval::exact(MassFraction::ZERO)),
        (mass(developer), Interval::exact(MassFraction::from_ww_percent(strongest).ok()?)),
    ];
    let again = as_applied(&parts).ok()?.best();
    Some(
        Draft::new(format!(
            "At most {limit} % w/w of hydrogen peroxide may be on the hair by the law where Juniper & Tide works. {product} g of \
             a product without peroxide are mixed with {developer} g of developer. At which strength of the developer is that \
             limit reached, in % w/w? (A sum on paper: the product's own instructions name a lower one.)"
        ))
        .rests_on(Basis::Published, &sources)
        .given("limit_ww_percent", limit)
        .given("product_g", product)
        .given("developer_g", developer)
        .step("all of it", format!("{product} g + {developer} g"), format!("{total} g"))
        .step("peroxide in it at the limit", format!("{total} g x {limit} / 100"), format!("{} g", (total * limit / Decimal::ONE_HUNDRED).normalize()))
        .answer("strength of the developer", format!("{limit} x {total} / {developer}"), exact(strongest, 2, UNIT)?)
        .step("the other way round", format!("{} x {developer} / {total}", crate::text::number(strongest, 2)), format!("{again:.2}"))
        .wrong(Mistake::BottleForHair, exact(float(limit), 2, UNIT))
        .wrong(Mistake::Inverted, number(float(limit * developer) / float(total), 2, UNIT))
        .wrong(Mistake::Denominator, number(float(limit * total) / float(product), 2, UNIT)),
    )
}

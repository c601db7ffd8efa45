use super::Task;
use crate::{
    hair::{GrowthRate, Weeks, grown},
    head::{Layout, Panel, Taking},
    money::Currency,
    quantity::{Length, Quantity},
    teach::{
        Mistake,
        draft::{Draft, count, exact, float, mass, number},
        draw::Draw,
    },
};
use rust_decimal::Decimal;

pub(super) const TASKS: &[Task] = &[
    Task::gentle("mix-for-hair", mix_for_hair),
    Task::steady("foils-of-panel", foils_of_panel),
    Task::steady("mix-per-foil", mix_per_foil),
    Task::stretch("share-in-weave", share_in_weave),
    Task::stretch("regrowth", regrowth),
];

fn mix_for_hair(draw: &mut Draw, _: Currency) -> Option<Draft> {
    let (hair, take_up) = (
        draw.multiple(2, 24, (5, 0)),
        draw.pick(&[Decimal::new(12, 1), Decimal::new(15, 1), Decimal::TWO, Decimal::new(25, 1)])?,
    );
    let found = mass(hair).times(float(take_up)).ok()?;
    Some(
        Draft::new(format!(
            "A section at Juniper & Tide holds {hair} g of hair, and a gram of hair takes {take_up} g of mixture. How many grams \
             are mixed, without spare?"
        ))
        .given("hair_g", hair)
        .given("take_up_g_per_g", take_up)
        .answer("grams of mixture", format!("{hair} g x {take_up}"), exact(found.g(), 1, "g")?)
        .wrong(Mistake::Inverted, number(float(hair) / float(take_up), 1, "g"))
        .wrong(Mistake::PartAndWhole, exact(float(hair * (take_up + Decimal::ONE)), 1, "g"))
        .wrong(Mistake::GivenForAnswer, exact(float(hair), 1, "g")),
    )
}

fn mm(value: i64) -> Option<Length> {
    Length::from_mm(value as f64).ok()
}

fn foils_of_panel(draw: &mut Draw, _: Currency) -> Option<Draft> {
    let (subsection, left, height) = (draw.between(3, 8), draw.between(3, 10), draw.between(5, 16) * 10);
    let layout = Layout {
        subsection: mm(subsection)?.into(),
        left_between: mm(left)?.into(),
        taking: Taking::Slice,
        foil_width: None,
    };
    let found = layout.on(Panel { width: Length::nearest(8.0), height: mm(height)? }).ok()?.foils.best();
    let pitch = subsection + left;
    // Where the last strip just fits or just does not, a class would argue.
    if (height + left) % pitch < 2 {
        return None;
    }
    Some(
        Draft::new(format!(
            "A panel at Juniper & Tide is {height} mm high. Slices of {subsection} mm go into foils and {left} mm are left out \
             between two foils. The panel begins and ends with a foil as far as whole slices fit. How many foils are that?"
        ))
        .given("panel_mm", height)
        .given("slice_mm", subsection)
        .given("left_mm", left)
        .step("a slice with what is left out", format!("{subsection} mm + {left} mm"), format!("{pitch} mm"))
        .answer("whole slices, one gap fewer than slices", format!("({height} + {left}) / {pitch}, whole ones"), count(i64::from(found), "foils")?)
        .wrong(Mistake::LeftOut, count(height / subsection, "foils"))
        .wrong(Mistake::BothEnds, count(i64::from(found) + 1, "foils"))
        .wrong(Mistake::OneTooFew, count(i64::from(found) - 1, "foils"))
        .wrong(Mistake::Denominator, count(height / left, "foils")),
    )
}

fn mix_per_foil(draw: &mut Draw, _: Currency) -> Option<Draft> {
    let (total, foils) = (draw.multiple(6, 30, (5, 0)), draw.between(8, 40));
    let spare = Decimal::from(draw.pick(&[5, 10, 20])?);
    let with_spare = total * (Decimal::ONE_HUNDRED + spare) / Decimal::ONE_HUNDRED;
    let each = mass(with_spare).times(1.0 / foils as f64).ok()?;
    let number_of = Decimal::from(foils);
    Some(
        Draft::new(format!(
            "The hair of {foils} foils takes {total} g of mixture at Juniper & Tide, and {spare} % more are mixed as spare. How many \
             grams of what is mixed are there for each foil?"
        ))
        .given("mix_g", total)
        .given("spare_percent", spare)
        .given("foils", foils)
        .step("with the spare", format!("{total} g x {} / 100", Decimal::ONE_HUNDRED + spare), format!("{} g", with_spare.normalize()))
        .answer("for each foil", format!("{} g / {foils}", with_spare.normalize()), number(each.g(), 1, "g")?)
        .wrong(Mistake::LeftOut, number(float(total / number_of), 1, "g"))
        .wrong(Mistake::Inverted, number(float(number_of / with_spare), 1, "g"))
        .wrong(Mistake::Denominator, number(float(total / number_of) / (1.0 - float(spare) / 100.0), 1, "g"))
        .wrong(Mistake::OtherRule, number(float(total + total - with_spare) / foils as f64, 1, "g")),
    )
}

fn share_in_weave(draw: &mut Draw, _: Currency) -> Option<Draft> {
    let (pick, gap, picks) = (draw.between(2, 5), draw.between(2, 7), draw.between(5, 12));
    let width = picks * (pick + gap);
    let layout = Layout {
        subsection: mm(6)?.into(),
        left_between: mm(6)?.into(),
        taking: Taking::Weave { pick: mm(pick)?.into(), gap: mm(gap)?.into(), depth: mm(6)?.into() },
        foil_width: None,
    };
    let found = layout.on(Panel { width: mm(width)?, height: mm(60)? }).ok()?;
    (i64::from(found.picks.best()) == picks).then_some(())?;
    let share = found.share_of_subsection.best().percent();
    let (taken, other) = (pick as f64, gap as f64);
    Some(
        Draft::new(format!(
            "A subsection {width} mm wide is woven at Juniper & Tide: {picks} picks of {pick} mm, and {gap} mm between one pick and \
             the next, through its whole depth. Which percent of its hair is in the foil?"
        ))
        .given("width_mm", width)
        .given("picks", picks)
        .given("pick_mm", pick)
        .given("gap_mm", gap)
        .step("width of all picks", format!("{picks} x {pick} mm"), format!("{} mm", picks * pick))
        .answer("percent of the subsection", format!("{} / {width} x 100", picks * pick), number(share, 1, "%")?)
        .wrong(Mistake::Denominator, number(taken / other * 100.0, 1, "%"))
        .wrong(Mistake::OtherPart, number(100.0 - share, 1, "%"))
        .wrong(Mistake::Inverted, number(100.0 / share * 100.0, 1, "%"))
        .wrong(Mistake::LeftOut, number(taken / width as f64 * 100.0, 1, "%")),
    )
}

fn regrowth(draw: &mut Draw, _: Currency) -> Option<Draft> {
    let (rate, weeks) = (draw.multiple(8, 14, (1, 1)), draw.between(4, 16));
    let found =
        grown(Weeks::from_weeks(weeks as f64).ok()?.into(), GrowthRate::from_cm_per_month(float(rate)).ok()?.into());
    let (cm, unit) = (found.best().cm(), "cm");
    // The question's month is the library's to the digits shown.
    let by_hand = float(rate) * weeks as f64 * 7.0 / 30.44;
    (((by_hand * 10.0).round() - (cm * 10.0).round()).abs() < 0.5).then_some(())?;
    number(by_hand, 1, unit)?;
    Some(
        Draft::new(format!(
            "The hair of a guest of Juniper & Tide grows {rate} cm a month of 30.44 days. How many centimetres of regrowth are there \
             after {weeks} weeks?"
        ))
        .given("rate_cm_per_month", rate)
        .given("weeks", weeks)
        .given("days_per_month", "30.44")
        .step("days", format!("{weeks} x 7"), weeks * 7)
        .answer("centimetres", format!("{rate} x {} / 30.44", weeks * 7), number(cm, 1, unit)?)
        .wrong(Mistake::WeeksForMonths, exact(float(rate) * weeks as f64, 1, unit))
        .wrong(Mistake::Inverted, number(weeks as f64 * 7.0 / 30.44 / float(rate), 1, unit))
        .wrong(Mistake::LeftOut, number(float(rate) * weeks as f64 / 30.44, 1, unit)),
    )
}

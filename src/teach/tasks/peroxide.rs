use super::Task;
use crate::{
    money::Currency,
    peroxide::{Conditions, SolutionDensity, convert_to},
    quantity::{Density, MassConcentration, MassFraction, OxygenVolumes, TradeLabel},
    source::{Basis, COMMON_PRACTICE, citations::peroxide::CODATA},
    teach::{
        Mistake,
        draft::{Draft, exact, float, number},
        draw::Draw,
    },
};
use rust_decimal::Decimal;

pub(super) const TASKS: &[Task] = &[
    Task::gentle("label-to-percent", label_to_percent),
    Task::gentle("peroxide-in-bottle", peroxide_in_bottle),
    Task::steady("ww-to-wv", ww_to_wv),
    Task::steady("part-of-peroxide", part_of_peroxide),
    Task::stretch("wv-to-ww", wv_to_ww),
    Task::stretch("volumes-to-g-per-l", volumes_to_g_per_l),
];

fn label_to_percent(draw: &mut Draw, _: Currency) -> Option<Draft> {
    let vol = draw.multiple(1, 12, (5, 0));
    let label = TradeLabel::from_vol(float(vol)).ok()?;
    let percent = |value: f64| exact(value, 2, "%");
    Some(
        Draft::new(format!(
            "A bottle at Juniper & Tide is labelled {vol} vol. Which percent does the trade pair with that label, \
             counting 10 vol as 3 %?"
        ))
        .rests_on(Basis::CommonPractice, &[COMMON_PRACTICE])
        .given("label_vol", vol)
        .answer("percent by the label", format!("{vol} x 3 / 10"), percent(label.percent())?)
        .wrong(Mistake::VolumesForPercent, percent(float(vol)))
        .wrong(Mistake::Denominator, number(float(vol) / 3.0, 1, "%"))
        .wrong(Mistake::DecimalPoint, percent(label.percent() / 10.0))
        .wrong(Mistake::Inverted, number(float(vol) * 10.0 / 3.0, 1, "%")),
    )
}

fn peroxide_in_bottle(draw: &mut Draw, _: Currency) -> Option<Draft> {
    let mass = draw.multiple(2, 30, (20, 0));
    let ww =
        draw.pick(&[Decimal::from(3), Decimal::from(6), Decimal::from(9), Decimal::from(12), Decimal::new(45, 1)])?;
    let held = MassFraction::from_ww_percent(float(ww)).ok()?.fraction() * float(mass);
    Some(
        Draft::new(format!(
            "A colourist at Juniper & Tide pours out {mass} g of a {ww} % w/w developer. How many grams of hydrogen \
             peroxide are in it?"
        ))
        .given("developer_g", mass)
        .given("strength_ww_percent", ww)
        .answer("grams of peroxide", format!("{mass} g x {ww} / 100"), exact(held, 2, "g")?)
        .wrong(Mistake::DecimalPoint, exact(held * 10.0, 2, "g"))
        .wrong(Mistake::OtherPart, exact(float(mass) - held, 2, "g"))
        .wrong(Mistake::Inverted, number(float(mass) / float(ww), 2, "g"))
        .wrong(Mistake::GivenForAnswer, exact(float(ww), 2, "g")),
    )
}

fn part_of_peroxide(draw: &mut Draw, _: Currency) -> Option<Draft> {
    let held = draw.multiple(4, 60, (3, 1));
    let ww = draw.pick(&[3, 4, 6, 9, 12])?;
    let mass = float(held) / MassFraction::from_ww_percent(f64::from(ww)).ok()?.fraction();
    Some(
        Draft::new(format!(
            "How many grams of a {ww} % w/w developer hold {held} g of hydrogen peroxide? (From the class at Juniper & Tide.)"
        ))
        .given("peroxide_g", held)
        .given("strength_ww_percent", ww)
        .answer("grams of developer", format!("{held} g x 100 / {ww}"), exact(mass, 1, "g")?)
        .wrong(Mistake::Inverted, exact(float(held) * f64::from(ww), 1, "g"))
        .wrong(Mistake::PartAndWhole, number(float(held) * f64::from(ww) / 100.0, 3, "g"))
        .wrong(Mistake::DecimalPoint, exact(mass / 10.0, 2, "g"))
        .wrong(Mistake::OtherPart, exact(mass - float(held), 1, "g")),
    )
}

/// What a density was read as.
fn measured(density: Decimal) -> Option<Conditions> {
    let density = Density::from_g_per_ml(float(density)).ok()?;
    Some(Conditions::default().with_density(SolutionDensity::measured(density)))
}

fn ww_to_wv(draw: &mut Draw, _: Currency) -> Option<Draft> {
    let (ww, density) = (draw.multiple(6, 24, (5, 1)), draw.multiple(101, 106, (1, 2)));
    let found =
        convert_to::<MassConcentration>(MassFraction::from_ww_percent(float(ww)).ok()?, &measured(density)?).ok()?;
    let unit = "% w/v";
    Some(
        Draft::new(format!(
            "Juniper & Tide has measured the density of a {ww} % w/w developer: {density} g/mL. How many % w/v is that, in \
             grams of peroxide in 100 mL?"
        ))
        .given("strength_ww_percent", ww)
        .given("density_g_per_ml", density)
        .step("mass of 100 mL", format!("100 mL x {density} g/mL"), format!("{} g", (Decimal::from(100) * density).normalize()))
        .answer("grams of peroxide in it", format!("{ww} x {density}"), exact(found.wv_percent(), 3, unit)?)
        .wrong(Mistake::WvForWw, exact(float(ww), 3, unit))
        .wrong(Mistake::Inverted, number(float(ww) / float(density), 2, unit))
        .wrong(Mistake::GivenForAnswer, exact(float(density), 3, unit))
        .wrong(Mistake::DecimalPoint, exact(found.wv_percent() * 10.0, 3, unit)),
    )
}

fn wv_to_ww(draw: &mut Draw, _: Currency) -> Option<Draft> {
    let (wv, density) = (draw.multiple(6, 26, (5, 1)), draw.multiple(101, 106, (1, 2)));
    let from = MassConcentration::from_wv_percent(float(wv)).ok()?;
    let found = convert_to::<MassFraction>(from, &measured(density)?).ok()?;
    let unit = "% w/w";
    Some(
        Draft::new(format!(
            "A bottle at Juniper & Tide says {wv} % w/v; 1 mL of it weighs {density} g. How many % w/w is that?"
        ))
        .given("strength_wv_percent", wv)
        .given("density_g_per_ml", density)
        .step(
            "mass of 100 mL",
            format!("100 mL x {density} g/mL"),
            format!("{} g", (Decimal::from(100) * density).normalize()),
        )
        .answer("peroxide in 100 g", format!("{wv} / {density}"), number(found.ww_percent(), 2, unit)?)
        .wrong(Mistake::WvForWw, exact(float(wv), 2, unit))
        .wrong(Mistake::Inverted, number(float(wv) * float(density), 2, unit))
        .wrong(Mistake::DecimalPoint, number(found.ww_percent() / 10.0, 2, unit)),
    )
}

fn volumes_to_g_per_l(draw: &mut Draw, _: Currency) -> Option<Draft> {
    let volumes = draw.multiple(4, 24, (5, 1)) * Decimal::from(5);
    let from = OxygenVolumes::from_volumes(float(volumes)).ok()?;
    let found = convert_to::<MassConcentration>(from, &Conditions::default()).ok()?.g_per_l();
    // The constants that the question states are those of the library, to five digits: both have to agree.
    let by_hand = float(volumes) / 22.414 * 2.0 * 34.015;
    let answer = number(found, 1, "g/L")?;
    number(by_hand, 1, "g/L").filter(|_| (by_hand * 10.0).round() == (found * 10.0).round())?;
    Some(
        Draft::new(format!(
            "One litre of a peroxide solution gives {volumes} L of oxygen at 0 C and 1 atm: it is {volumes} volumes. A mole \
             of gas takes 22.414 L there, and a mole of hydrogen peroxide weighs 34.015 g. How many grams of peroxide \
             are in the litre? (From the class at Juniper & Tide.)"
        ))
        .rests_on(Basis::Published, &[CODATA])
        .given("strength_volumes", volumes)
        .given("molar_volume_l_per_mol", "22.414")
        .given("molar_mass_g_per_mol", "34.015")
        .step("moles of oxygen", format!("{volumes} / 22.414"), format!("{:.4} mol", float(volumes) / 22.414))
        .step("moles of peroxide, two for one of oxygen", format!("2 x {volumes} / 22.414"), format!("{:.4} mol", float(volumes) / 11.207))
        .answer("grams of peroxide", format!("2 x {volumes} / 22.414 x 34.015"), answer)
        .wrong(Mistake::Stoichiometry, number(found / 2.0, 1, "g/L"))
        .wrong(Mistake::VolumesForPercent, exact(float(volumes) * 10.0, 1, "g/L"))
        .wrong(Mistake::Inverted, number(2.0 * float(volumes) * 22.414 / 34.015, 1, "g/L")),
    )
}

use super::{
    Task,
    costing::{HALF_UP, amount},
};
use crate::{
    money::{Currency, TaxRate, add_tax, take_tax_out},
    source::{Basis, citations::money::CALCULATING_VAT},
    teach::{
        Mistake,
        draft::{Draft, money},
        draw::Draw,
    },
};
use rust_decimal::Decimal;

pub(super) const TASKS: &[Task] = &[
    Task::gentle("add-tax", add),
    Task::steady("net-of-gross", net_of_gross),
    Task::stretch("tax-in-gross", tax_in_gross),
];

const HUNDRED: Decimal = Decimal::ONE_HUNDRED;

fn rate(draw: &mut Draw) -> Option<Decimal> {
    draw.pick(&[
        Decimal::from(5),
        Decimal::from(10),
        Decimal::from(19),
        Decimal::from(20),
        Decimal::from(21),
        Decimal::from(25),
    ])
}

fn add(draw: &mut Draw, currency: Currency) -> Option<Draft> {
    let (net, percent) = (amount(draw.between(40, 360) * 50, currency), rate(draw)?);
    let priced = add_tax(net, TaxRate::from_percent(percent).ok()?, HALF_UP).ok()?;
    money(net.decimal() * percent / HUNDRED, net)?;
    Some(
        Draft::new(format!(
            "The net price of a service at Juniper & Tide is {net}. Tax is {percent} %. What does the guest pay, rounded once to the \
             smallest coin?"
        ))
        .rests_on(Basis::Published, &[CALCULATING_VAT])
        .given("net", net.decimal())
        .given("tax_percent", percent)
        .step("the tax", format!("{} x {percent} / 100", net.decimal()), priced.tax)
        .answer("net and tax", format!("{} + {}", net.decimal(), priced.tax.decimal()), money(priced.gross.decimal(), net)?)
        .wrong(Mistake::PartAndWhole, money(priced.tax.decimal(), net))
        .wrong(Mistake::Inverted, money(net.decimal() * HUNDRED / (HUNDRED + percent), net))
        .wrong(Mistake::Denominator, money(net.decimal() * HUNDRED / (HUNDRED - percent), net)),
    )
}

fn net_of_gross(draw: &mut Draw, currency: Currency) -> Option<Draft> {
    let (gross, percent) = (amount(draw.between(40, 360) * 50, currency), rate(draw)?);
    let priced = take_tax_out(gross, TaxRate::from_percent(percent).ok()?, HALF_UP).ok()?;
    money(gross.decimal() * HUNDRED / (HUNDRED + percent), gross)?;
    Some(
        Draft::new(format!(
            "A guest of Juniper & Tide pays {gross}, which holds {percent} % tax on the net price. What is the net price, rounded \
             once to the smallest coin?"
        ))
        .rests_on(Basis::Published, &[CALCULATING_VAT])
        .given("gross", gross.decimal())
        .given("tax_percent", percent)
        .step("gross in percent of net", format!("100 % + {percent} %"), format!("{} %", HUNDRED + percent))
        .answer("net", format!("{} x 100 / {}", gross.decimal(), HUNDRED + percent), money(priced.net.decimal(), gross)?)
        .wrong(Mistake::TaxOffGross, money(gross.decimal() * (HUNDRED - percent) / HUNDRED, gross))
        .wrong(Mistake::OtherPart, money(priced.tax.decimal(), gross))
        .wrong(Mistake::Inverted, money(gross.decimal() * (HUNDRED + percent) / HUNDRED, gross)),
    )
}

fn tax_in_gross(draw: &mut Draw, currency: Currency) -> Option<Draft> {
    let (gross, percent) = (amount(draw.between(40, 360) * 50, currency), rate(draw)?);
    let priced = take_tax_out(gross, TaxRate::from_percent(percent).ok()?, HALF_UP).ok()?;
    money(gross.decimal() * percent / (HUNDRED + percent), gross)?;
    Some(
        Draft::new(format!(
            "The till of Juniper & Tide took {gross} with {percent} % tax in it. How much of that is tax, rounded once to the \
             smallest coin?"
        ))
        .rests_on(Basis::Published, &[CALCULATING_VAT])
        .given("gross", gross.decimal())
        .given("tax_percent", percent)
        .step("gross in percent of net", format!("100 % + {percent} %"), format!("{} %", HUNDRED + percent))
        .answer("the tax in it", format!("{} x {percent} / {}", gross.decimal(), HUNDRED + percent), money(priced.tax.decimal(), gross)?)
        .wrong(Mistake::TaxOffGross, money(gross.decimal() * percent / HUNDRED, gross))
        .wrong(Mistake::OtherPart, money(priced.net.decimal(), gross))
        .wrong(Mistake::Denominator, money(gross.decimal() * percent / (HUNDRED - percent), gross)),
    )
}

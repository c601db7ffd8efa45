//! How countries write dates, times and amounts, against the locale data of Unicode CLDR.

use foilwork::{
    money::{CostKind, CostLine, CostTable, Currency, Money, Rounding},
    reader::Format,
    service::{MoneyPlan, Plan, Start, parse, plan},
    sheet::{SheetPart, bench_sheet_of},
    shop::Country,
    source::Basis,
};
use rstest::rstest;

/// A row of `country_writing.csv`, printed by Babel from CLDR: see `sources.csv` beside it.
#[derive(serde::Deserialize)]
struct Row {
    country: String,
    date: String,
    time: String,
    currency: String,
    amount: String,
}

fn rows() -> Vec<Row> {
    csv::Reader::from_path("tests/data/shop/country_writing.csv").unwrap().deserialize().map(Result::unwrap).collect()
}

fn example() -> Plan {
    plan(&parse(include_str!("../../examples/soft-gradient.toml"), Format::Toml).unwrap()).unwrap()
}

/// 5 March 2026, 14:07, and 1 234 567.50 of the country's own currency.
fn sheet(country: Country, currency: &str) -> String {
    let currency = Currency::from_code(currency).unwrap();
    let amount = if currency.exponent() == 0 { "1234567" } else { "1234567.50" };
    let mut cost = CostTable::new(currency);
    let amount = Money::parse(amount, currency).unwrap();
    cost.push(CostLine::new(CostKind::Overhead, "chair", Basis::Stated, amount)).unwrap();
    let rounding = Rounding::MidpointAwayFromZero;
    let mut plan = example();
    plan.start = Start::At(jiff::civil::date(2026, 3, 5).at(14, 7, 0, 0));
    plan.money = Some(MoneyPlan {
        cost,
        cost_range: None,
        left_out: Vec::new(),
        price: None,
        taxed: None,
        priced_by: None,
        range: None,
        rounding,
    });
    plan.habits.country = Some(country);
    bench_sheet_of(&plan, &[SheetPart::Money])
}

/// Day and month without a zero in front, which some countries leave out; foilwork always writes it.
fn without_zeros(date: &str) -> String {
    let digits = |part: &str| part.trim_start_matches('0').to_owned();
    date.split_inclusive(|c: char| !c.is_ascii_digit()).map(digits).collect()
}

#[test]
fn every_country_writes_as_its_locale() {
    let rows = rows();
    assert_eq!(rows.len(), Country::ALL.len(), "a row for each country");
    for row in rows {
        let sheet = sheet(row.country.parse().unwrap(), &row.currency);
        let start = sheet.split("starts ").nth(1).and_then(|rest| rest.split("   ").next()).unwrap();
        // 12-hour clocks write pm, PM or p.m.
        let time = match row.time.to_lowercase() {
            twelve if twelve.ends_with("m.") => twelve.replace("p.m.", "pm"),
            other => other,
        };
        let date = start.strip_suffix(&time).unwrap_or_else(|| panic!("{}: {start}, {time}", row.country)).trim();
        assert_eq!(without_zeros(date), without_zeros(&row.date), "{}", row.country);
        assert!(sheet.contains(&format!(" {}", row.amount)), "{}: {}\n{sheet}", row.country, row.amount);
    }
}

/// A currency that is not the country's own keeps its code: a dollar is not every dollar.
#[test]
fn another_currency_keeps_its_code() {
    assert!(sheet(Country::Canada, "USD").contains(" 1234567.50 USD"));
}

/// By hand: an ounce is 453.592 37 / 16 = 28.349 523 125 g; 15, 30 and 1.4 g are 0.53, 1.06 and 0.05 oz. The trade's label
/// is percent / 0.3: 6 % is 20, 4.5 % is 15.
#[test]
fn what_stands_beside_grams_and_percent() {
    let mut plan = example();
    plan.habits.ounces = true;
    plan.habits.volume_labels = true;
    plan.habits.level_names = Some(foilwork::colour::Naming::Us);
    let sheet = foilwork::sheet::bench_sheet(&plan).split_whitespace().collect::<Vec<_>>().join(" ");
    for words in [
        "weigh 15 g = 0.53 oz Foam Line powder, 30 g = 1.06 oz developer 6 (45 g), 1.4 g = 0.05 oz bond additive",
        "developer 6 % w/w (20 vol by the label) before mixing",
        "developer 4.5 % w/w (15 vol by the label) before mixing",
        "natural level 6 (light brown) +/- 0.5",
        "Levels by the US list: 6 light brown, 8 light blond, 9 very light blond.",
        "oz are ounces of mass (28.35 g), not of volume",
    ] {
        assert!(sheet.contains(words), "{words}\n{sheet}");
    }
    let cards = foilwork::sheet::card_sheet(&foilwork::service::mixing_cards(&plan), &plan.habits);
    assert!(cards.contains("15 g = 0.53 oz"), "{cards}");
}

/// Nothing is converted: but for the habits themselves, the data of a plan does not know of them.
#[rstest]
fn habits_change_no_number(#[values("US", "DE", "JP")] country: &str) {
    let text = include_str!("../../examples/soft-gradient.toml");
    let habits = format!("[shop.habits]\ncountry = \"{country}\"\nounces = true\nvolume_labels = true\n\n[[section]]");
    let with = parse(&text.replacen("[[section]]", &habits, 1), Format::Toml).unwrap();
    let mut with = plan(&with).unwrap();
    assert!(with.habits.ounces);
    with.habits = example().habits;
    assert_eq!(with, example());
}

//! Files to begin with: they can be read, planned and costed as they are, whatever the law and the currency.

use foilwork::{
    business::list::{parse_csv, price_services},
    finding::{Rule, Verdict},
    limits::Jurisdiction,
    money::Currency,
    reader::Format,
    service::{parse_with_shop, plan, starter},
    shop::{self, Shop},
};
use rstest::rstest;
use std::process::Command;

#[rstest]
fn the_files_to_begin_with_are_whole(#[values("EUR", "GBP", "JPY", "KWD")] currency: &str) {
    let currency = Currency::from_code(currency).unwrap();
    for jurisdiction in Jurisdiction::ALL {
        let files = starter(*jurisdiction, currency);
        let shop = shop::parse_shop(&files.shop, Format::Toml).unwrap();
        let plan = plan(&parse_with_shop(&files.service, Format::Toml, &shop).unwrap()).unwrap();
        assert!(!plan.blocked, "{jurisdiction}: {:?}", plan.findings);
        assert!(plan.money.is_some(), "{jurisdiction}");
        // The price list that it comes with has the class of its own service.
        assert!(plan.booking.price.is_some(), "{:?}", plan.booking.price_why_not);
        // A margin of 25 % on a cost of 81.23 is 108.31, with 20 % tax 129.97, and the list says 130.00; but the hair may take more
        // than is mixed, which the list does not bring in.
        let price = plan.findings.iter().find(|finding| finding.rule == Rule::ListPrice).unwrap();
        assert_eq!(price.verdict, Verdict::Note, "{price}");
        assert!(price.text.ends_with("where the hair takes most"), "{price}");
        let business = Shop::new(&shop).unwrap().business().unwrap();
        let services = parse_csv(&files.services, Shop::new(&shop).unwrap().packs().unwrap()).unwrap();
        assert_eq!(price_services(&services, &business).unwrap().lines.len(), 3);
    }
}

/// Of 99.00 a sixth or 16.50 is tax, and the 82.50 left are more than the 81.23 that it costs as planned. In these are 33 g of powder of
/// 31.50 for 500 g, 2.08, and 67 g of developer of 8.90 for 1000 g, 0.60. Where the hair takes more than 100 g both grow with it, whether
/// a margin is asked for or not. A cent more than that, with the tax on top, pays for it.
#[rstest]
#[case(
    Some("99.00"),
    true,
    Verdict::Note,
    "; up to {most} EUR where the hair takes most; by its costs and the terms of the shop"
)]
#[case(Some("99.00"), false, Verdict::Note, "it costs 81.23 EUR; up to {most} EUR where the hair takes most")]
#[case(None, false, Verdict::Passed, "it costs 81.23 EUR")]
fn a_price_that_the_hair_may_make_a_loss_is_not_fine(
    #[case] price: Option<&str>,
    #[case] margin: bool,
    #[case] want: Verdict,
    #[case] said: &str,
) {
    let files = starter(Jurisdiction::EuropeanUnion, Currency::from_code("EUR").unwrap());
    let planned = |price: &str| {
        let text = files.shop.replace("price = \"130.00\"", &format!("price = \"{price}\""));
        let text = if margin { text } else { text.replace("margin_percent = 25 ", "") };
        let shop = shop::parse_shop(&text, Format::Toml).unwrap();
        plan(&parse_with_shop(&files.service, Format::Toml, &shop).unwrap()).unwrap()
    };
    let taken = planned("99.00").head.sections[0].takes.unwrap().high().g();
    let cents = |amount: f64| (100.0 * amount).round() / 100.0;
    let most = 81.23 - 2.08 - 0.60 + cents(0.33 * taken * 31.50 / 500.0) + cents(0.67 * taken * 8.90 / 1000.0);
    assert!(most > 82.6, "{most}");
    let enough = format!("{:.2}", 1.2 * (most + 0.01));
    let plan = planned(price.unwrap_or(&enough));
    assert_eq!(plan.money.as_ref().unwrap().price.is_some(), margin);
    let found = plan.findings.iter().find(|finding| finding.rule == Rule::ListPrice).unwrap();
    assert_eq!(found.verdict, want, "{found}");
    let said = said.replace("{most}", &format!("{most:.2}"));
    assert!(found.text.contains(&said), "{found}");
    // What it leaves at least is told where the price is.
    let sheet = plan.to_string().split_whitespace().collect::<Vec<_>>().join(" ");
    let kept = if price.is_some() { 82.50 } else { most + 0.01 };
    let told = format!("; down to {:.2} EUR where the hair takes most", kept - most);
    assert!(sheet.contains(&told), "no {told}: {sheet}");
    let trail = plan.trail();
    let margin = trail.iter().find(|step| step.what == "margin that comes out").unwrap();
    let [low, high] = margin.bounds.clone().unwrap().map(|bound| bound.parse::<f64>().unwrap());
    assert!((low - 100.0 * (kept - most) / kept).abs() < 1e-5 && low < high, "{low} {high}");
    let cost = margin.inputs.iter().find(|input| input.what == "cost").unwrap();
    assert_eq!(cost.bounds.as_ref().unwrap()[1], format!("{most:.2}"));
}

/// Of 98.50 a sixth or 16.42 is tax, which leaves 82.08 over a cost of 81.23; a terminal that keeps 2.5 % takes 2.46 of it, and
/// 1.61 are lost, with a margin to ask for and without one.
#[rstest]
fn a_card_fee_can_make_a_loss(#[values("margin_percent = 25 ", "")] margin: &str) {
    let files = starter(Jurisdiction::GreatBritain, Currency::from_code("GBP").unwrap());
    let mut text = files.shop;
    for (old, new) in [("price = \"130.00\"", "price = \"98.50\""), ("margin_percent = 25 ", margin)] {
        assert!(text.contains(old), "{text}");
        text = text.replace(old, new);
    }
    for (card, want) in [("", false), ("card_percent = 2.5\n", true)] {
        let shop = shop::parse_shop(&format!("{text}\n{card}"), Format::Toml).unwrap();
        let plan = plan(&parse_with_shop(&files.service, Format::Toml, &shop).unwrap()).unwrap();
        let price = plan.findings.iter().find(|finding| finding.rule == Rule::ListPrice).unwrap();
        assert_eq!(price.verdict == Verdict::Warning, want, "{price}");
        let said = "less than the 83.69 GBP that it costs with the card fee of 2.46 GBP";
        assert_eq!(price.text.contains(said), want, "{price}");
    }
}

/// 8.40 is 8.400 where a unit has a thousand parts, and 840 where it has none.
#[rstest]
#[case("EUR", "price = \"8.40\"")]
#[case("KWD", "price = \"8.400\"")]
#[case("JPY", "price = \"840\"")]
fn amounts_have_the_decimals_of_the_currency(#[case] currency: &str, #[case] line: &str) {
    let files = starter(Jurisdiction::Japan, Currency::from_code(currency).unwrap());
    assert!(files.shop.contains(line), "{}", files.shop);
    assert!(!files.shop.contains('@') && !files.services.contains('@'));
}

#[test]
fn the_command_writes_three_files_once() {
    let target = tempfile::tempdir().unwrap();
    let start = || {
        let mut command = Command::new(env!("CARGO_BIN_EXE_foilwork"));
        command.current_dir(target.path()).args(["start", "mine", "--jurisdiction", "UK", "--currency", "GBP"]);
        command.output().unwrap()
    };
    let first = start();
    assert_eq!(first.status.code(), Some(0));
    let told = String::from_utf8(first.stdout).unwrap();
    let commands: Vec<&str> = told.lines().filter_map(|line| line.strip_prefix("  foilwork ")).collect();
    assert_eq!(commands, ["plan mine/service.toml", "cost mine/services.csv --shop mine/shop.toml"]);
    // As they are told, from where they are told.
    for words in commands {
        let mut next = Command::new(env!("CARGO_BIN_EXE_foilwork"));
        let out = next.current_dir(target.path()).args(words.split(' ')).output().unwrap();
        assert_eq!(out.status.code(), Some(0), "{}", String::from_utf8_lossy(&out.stderr));
    }
    let again = start();
    let refused = "error: mine/service.toml is there already: name a folder without it\n";
    assert_eq!((again.status.code(), String::from_utf8(again.stderr).unwrap().as_str()), (Some(2), refused));
}

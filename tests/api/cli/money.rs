//! Prices, lists and the questions of a salon's owner, on published worked examples and on numbers worked by hand.

use super::{data, fine, foilwork};
use rstest::rstest;
use serde_json::{Value, json};

const SHOP: [&str; 2] = ["--shop", "juniper_and_tide.toml"];

fn refused(args: &[&str]) -> String {
    let output = foilwork(args);
    assert_eq!((output.status.code(), output.stdout), (Some(2), Vec::new()), "{args:?}");
    String::from_utf8(output.stderr).unwrap()
}

fn words(text: &str) -> Vec<&str> {
    text.split(' ').collect()
}

fn euros(amount: &str) -> Value {
    json!({"amount": amount, "currency": "EUR"})
}

/// Rows W060 and W061 of `tests/data/money/worked_examples.csv`: cost 75 and price 100 are a margin of 25 % and a mark-up
/// of 33.33 %; 40 % of a price is 40/60 of its cost.
#[rstest]
#[case("price --cost 75 --price 100 --currency USD", "margin 25 % of the price\n  mark-up 33.33 % of the cost\n")]
#[case("price --cost 75 --margin 25 --currency USD", "net price 100.00 USD\n")]
#[case("price --price 100 --margin 25 --currency USD", "  cost 75.00 USD, profit 25.00 USD\n")]
#[case("price --price 150 --markup 50 --currency USD", "  cost 100.00 USD, profit 50.00 USD\n")]
#[case("price --margin 40", "margin 40 % of the price\nmark-up 66.67 % of the cost\n")]
#[case("price --markup 100", "margin 50 % of the price\nmark-up 100 % of the cost\n")]
#[case("price --cost 30 --price 20 --currency EUR", "  LOSES MONEY: the price is below the cost\n")]
#[case("price --cost 0.10 --margin 50 --rounding midpoint-nearest-even --currency EUR", "net price 0.20 EUR\n")]
fn margin_and_markup_stand_side_by_side(#[case] args: &str, #[case] want: &str) {
    let text = fine(&words(args));
    assert!(text.contains(want), "{text}");
}

/// By hand: 15 % off 50 is 42.50; of a cost of 20 that leaves 22.50 instead of 30, so 30 become 30 x 30/22.5 = 40.
#[test]
fn a_discount_says_how_many_more_it_must_sell() {
    let args = words("price --cost 20 --price 50 --discount 15 --sold 30 --currency EUR");
    let text = fine(&args);
    assert!(text.contains("with the discount 42.50 EUR, 7.50 EUR off\n"), "{text}");
    assert!(text.contains("  40 must be sold instead of 30 to leave as much: 33.3 % more\n"), "{text}");
    let offer = &data(&args)["offer"];
    assert_eq!((&offer["must_sell"]["count_needed"], &offer["price"]["after"]), (&json!(40), &euros("42.50")));
    let deep = refused(&words("price --cost 20 --price 50 --discount 60 --currency EUR"));
    assert!(deep.starts_with("error: --discount: the contribution before the offer is never reached"), "{deep}");
}

/// By hand: 100 x (1 - 0.25) and 150 / 1.5.
#[rstest]
#[case("price --price 100 --margin 25 --currency USD", "cost = 75.00 USD\n  formula: net price x (1 - margin)\n")]
#[case("price --price 150 --markup 50 --currency USD", "cost = 100.00 USD\n  formula: net price / (1 + mark-up)\n")]
fn the_cost_asked_for_is_followed(#[case] args: &str, #[case] want: &str) {
    let text = fine(&words(&format!("{args} --trail")));
    assert!(text.starts_with(want), "{text}");
}

#[rstest]
#[case("table --stocks 3%w/w --targets 6%w/w --total 60 --trail", "--trail: there is no result to follow")]
#[case("day soft-gradient.toml soft-gradient.toml --trail", "--trail: a trail is of the day of one guest")]
#[case("day soft-gradient.toml --log soft-gradient.jsonl --trail", "'--log <FILE>' cannot be used with '--trail'")]
#[case("day soft-gradient.toml --svg --trail", "'--svg' cannot be used with '--trail'")]
#[case("head soft-gradient.toml --svg --trail", "'--svg' cannot be used with '--trail'")]
#[case("scale 30g+60g --total 120 --xlsx no.xlsx --trail", "'--xlsx <FILE>' cannot be used with '--trail'")]
#[case("cost list.csv --shop shop.toml --xlsx no.xlsx --trail", "'--xlsx <FILE>' cannot be used with '--trail'")]
#[case("cost list.csv --shop shop.toml --csv --trail", "'--csv' cannot be used with '--trail'")]
fn what_a_trail_cannot_follow_is_refused(#[case] args: &str, #[case] want: &str) {
    let said = refused(&words(args));
    assert!(said.contains(want), "{said}");
}

#[rstest]
#[case(
    "price --cost -3 --margin 40 --currency EUR",
    "--cost: invalid cost (got -3.00 EUR): must be more than nothing: without a cost there is no margin to speak of"
)]
#[case(
    "price --cost -3 --price 9 --currency EUR",
    "--cost: invalid cost (got -3.00 EUR): must be more than nothing: without a cost there is no margin to speak of"
)]
#[case("price --cost 3 --price 0 --currency EUR", "--price: invalid price (got 0.00 EUR): must be more than nothing")]
#[case(
    "price --cost 60.000 --margin 40 --currency EUR",
    "--cost: amount \"60.000\" has more decimals than EUR: write 60000 if the point groups thousands, else 60.00"
)]
#[case(
    "price --cost 12,50 --margin 40 --currency EUR",
    "--cost: amount \"12,50\" is not a decimal number: write digits with a point, for example 12.50"
)]
#[case("price --cost 12.50 --currency EUR", "give --margin or --markup: they are not the same")]
#[case(
    "price --cost 12.50 --price 20 --margin 40 --currency EUR",
    "give --price to see the margin of a price, or --margin or --markup to set one, not both"
)]
#[case("price --price 20 --currency EUR", "give --cost beside --price, or --margin or --markup for the cost it allows")]
#[case("price --margin 100", "--margin: invalid margin (got 100 % of the price): must be below 100 % of the price")]
#[case("price", "give --cost and --currency with --margin, --markup or --price; or only --margin or --markup")]
#[case(
    "business commission --takings -1 --percent 5 --currency EUR",
    "invalid takings (got -1.00 EUR): must be nothing or more"
)]
#[case(
    "business productivity --productive 3 --of 8 --time paid",
    "--time: unknown time to compare with \"paid\": give one of recorded-time, paid-time, rostered-time, opening-time, standard-time (did you mean paid-time?)"
)]
#[case(
    "business reorder --on-hand 900 --daily 1 --pack 1 --lead-days 1 --cover-days 1",
    "--on-hand: cannot read \"900\": write a mass, a volume or a count, for example 900 g, 500 mL or 42 pieces"
)]
#[case(
    "cost juniper_and_tide_services.csv --shop juniper_and_tide.toml --sort best",
    "--sort: unknown order \"best\": give one of listed, chair-hour, profit, total-profit, margin, price, sold"
)]
fn what_cannot_be_answered_says_the_way_out(#[case] args: &str, #[case] want: &str) {
    assert_eq!(refused(&words(args)), format!("error: {want}\n"));
}

/// Commission: rows of the unit 80.07.07, examples 1-3. Break-even: the salon of OpenStax, module m68116. The rest by
/// hand: rent 1500 - 12 % - 250 = 1070 against 480 + 15 %; half of the paid hours.
#[rstest]
#[case(
    "business commission --takings 1300 --tier 800=8 --tier 14 --currency USD",
    "commission 134.00 USD on 1300.00 USD\n"
)]
#[case(
    "business commission --takings 1540 --percent 5 --over 500 --base 120 --currency USD",
    "commission 52.00 USD on 1540.00 USD and 120.00 USD base pay: 172.00 USD\n"
)]
#[case(
    "business break-even --fixed 3000 --price 35 --variable 20 --currency USD",
    "200 services, for takings of 7000.00 USD, cover 3000.00 USD\n"
)]
#[case("business tips --tips 50 --hours 8,8,5 --currency EUR", "    5  11.90 EUR\n")]
#[case(
    "business rent --takings 1500 --rent 200 --own-costs 50 --variable 12 --wage 480 --commission 15 --currency EUR",
    "at takings of 1500.00 EUR: renting 1070.00 EUR, employed 705.00 EUR\n"
)]
#[case(
    "business productivity --productive 19 --of 38 --time paid-time",
    "50 % of paid time\n  typical of the trade [cch-productive-hours]\n"
)]
#[case("business productivity --productive 50 --of 40 --time standard-time", "125 % of standard time\n")]
fn the_owner_asks(#[case] args: &str, #[case] want: &str) {
    let text = fine(&words(args));
    assert!(text.contains(want), "{text}");
    for line in text.lines() {
        assert!(line.chars().count() <= 80, "{line}");
    }
    assert!(!data(&words(args)).is_null());
}

/// By hand: 5 days at 120 and 300 are 900, so it is due; 19 days at 120 and 300 are 2580, 1680 short: 4 packs of 500.
#[test]
fn stock_is_ordered_from_the_command_line() {
    let text = fine(&[
        "business",
        "reorder",
        "--on-hand",
        "900 g",
        "--daily",
        "120 g",
        "--pack",
        "500 g",
        "--lead-days",
        "5",
        "--cover-days",
        "14",
        "--reserve",
        "300 g",
    ]);
    assert!(text.starts_with("order now: 4 x 500 g\n  order at 900 g "), "{text}");
    assert!(text.contains("lasts 7.5 days"), "{text}");
}

/// 120 g a day for 5 days is all that is there, and no further day is to be covered: none of a pack of 500 g is short.
#[test]
fn no_pack_is_no_order() {
    let args = words("business reorder --daily 120g --pack 500g --lead-days 5 --cover-days 0 --on-hand 600g");
    let text = fine(&args);
    assert!(text.starts_with("nothing to order yet\n  order at 600 g "), "{text}");
    let packs = &data(&[&args[..], &["--trail"]].concat())[1];
    assert_eq!((&packs["value"], &packs["worked"]), (&json!("0"), &json!("up ((120 x (5 + 0) + 0 - 600 - 0) / 500)")));
}

/// By hand, terms of the shop: N = (C + 0.08) / (1 - 0.22 - 0.014 x 1.19) = (C + 0.08) / 0.76334, with 19 % tax, up to the
/// next .50. The parts cost 112, 148 and 235: N is 146.83, 193.99 and 307.96, with tax 174.73, 230.85 and 366.47.
#[test]
fn a_correction_is_quoted_from_to() {
    let args =
        [&["business", "quote", "juniper_and_tide_quote.csv", "--service", "colour correction"][..], &SHOP].concat();
    let text = fine(&[&args[..], &["--deposit", "25%"]].concat());
    assert!(text.starts_with("colour correction: 175.50 EUR to 366.50 EUR, as expected 231.50 EUR"), "{text}");
    assert!(text.contains("  in advance 57.88 EUR, then 173.62 EUR\n"), "{text}");
    // 25 % of 231.50 in advance, of the ends too.
    let trail = data(&[&args[..], &["--deposit", "25%", "--trail"]].concat());
    let traced = |what: &str| {
        let ends_so = |one: &&serde_json::Value| one["what"].as_str().unwrap().ends_with(what);
        trail.as_array().unwrap().iter().find(ends_so).unwrap()
    };
    assert_eq!(traced("cost")["bounds"], json!(["112.00", "235.00"]));
    assert_eq!(traced("then to pay")["bounds"], json!(["117.62", "308.62"]));
    assert_eq!(traced("then to pay")["inputs"][0]["bounds"], json!(["175.50", "366.50"]));
    let inputs = |what: &str| -> Vec<_> {
        traced(what)["inputs"].as_array().unwrap().iter().map(|one| one["what"].as_str().unwrap()).collect()
    };
    // A margin counts no minutes.
    let of_net = ["cost", "margin, as asked for", "card fee", "fixed card fee", "tax"];
    assert_eq!(inputs("net price that is asked for"), of_net);
    assert_eq!(inputs("gross price").last(), Some(&"which neighbour is taken"));
    let list = data(&[&["business", "quote", "juniper_and_tide_quote.csv"][..], &SHOP].concat());
    assert_eq!((list.as_array().unwrap().len(), &list[0]["usual"]), (3, &euros("231.50")));
    let several = refused(
        &[&["business", "quote", "juniper_and_tide_quote.csv", "--service", "half head of foils"][..], &SHOP].concat(),
    );
    assert!(several.contains("has several classes: add --class, one of short, long"), "{several}");
}

#[test]
fn the_range_of_a_quote_is_checked_line_by_line() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("parts.csv");
    std::fs::write(&path, "service,part,low,best,high,basis\nfoils,product,9,6,7,guess\nfoils,,1,2,3,\n").unwrap();
    let name = path.to_str().unwrap();
    assert_eq!(
        refused(&[&["business", "quote", name][..], &SHOP].concat()),
        format!(
            "error: {name}: line 2: basis: unknown basis \"guess\": give one of published, derived, measured, stated, \
             common-practice, assumed\n\
             error: {name}: line 2: best: the three costs must rise: low, best, high\n\
             error: {name}: line 3: part: is missing: give a value\n"
        )
    );
}

/// The list is sorted, percentages are rounded (half up, one decimal), and every column of the file is in the help.
#[test]
fn a_list_is_sorted_and_readable() {
    let cost = [&["cost", "juniper_and_tide_services.csv"][..], &SHOP].concat();
    let table = data(&[&cost[..], &["--sort", "chair-hour"]].concat());
    let left: Vec<f64> = table["lines"].as_array().unwrap().iter().map(hour).collect();
    assert!(left.windows(2).all(|pair| pair[0] >= pair[1]), "{left:?}");
    let sold = data(&[&cost[..], &["--sort", "sold"]].concat());
    assert_eq!(sold["lines"][0]["sold"], json!(48));
    let text = fine(&cost);
    let line = &table["lines"][0];
    let margin: f64 = line["margin_percent"].as_str().unwrap().parse().unwrap();
    assert!(text.contains(&format!(" {:.1} ", (margin * 10.0).round() / 10.0)), "{margin}: {text}");
    assert!(text.lines().all(|line| line.split_whitespace().all(|word| word.len() < 20)), "{text}");
    let help = fine(&["cost", "--help"]);
    for column in foilwork::business::list::COLUMNS {
        assert!(help.contains(column), "{column} is not in the help");
    }
    let help = fine(&["business", "quote", "--help"]);
    for column in foilwork::business::COST_RANGE_COLUMNS {
        assert!(help.contains(column), "{column} is not in the help");
    }
}

fn hour(line: &Value) -> f64 {
    line["contribution_per_chair_hour"]["per_unit"].as_str().unwrap().parse().unwrap()
}

/// What is odd is marked in the text and in the data: a price below cost, one below even an empty chair, hands busier than
/// the chair, a service that stands there twice.
#[test]
fn odd_lines_are_marked() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("list.csv");
    let list = "service,hands_on_min,chair_min,price\ngloss,20,30,20.50\nfringe,90,30,60.50\ngloss,20,30,35.50\n";
    std::fs::write(&path, list).unwrap();
    let cost = [&["cost", path.to_str().unwrap()][..], &SHOP].concat();
    let marks: Vec<Value> = data(&cost)["lines"].as_array().unwrap().iter().map(|line| line["marks"].clone()).collect();
    // Hands-on time alone costs 16.20 x 1.214 x 1720 / 1085 / 60 = 0.5196 a minute, the chair 11.10 an hour: gloss 10.39 and
    // 5.55 against 20.50 / 1.19 = 17.23 less 0.37; fringe 46.76 and 5.55 against 50.84 less 0.93.
    assert_eq!(marks[0], json!(["below-target"]));
    assert_eq!(marks[1], json!(["loses-money", "hands-on-exceeds-chair"]));
    assert_eq!(marks[2], json!(["listed-twice"]));
    let text = fine(&cost);
    assert!(text.contains("! the price is below the cost: fringe\n"), "{text}");
    assert!(text.contains("! hands-on time exceeds the time in the chair: fringe\n"), "{text}");
    assert!(text.contains("fringe !"), "{text}");
}

#[test]
fn a_whole_list_breaks_even_in_its_mix() {
    let args =
        words("business break-even --list juniper_and_tide_services.csv --shop juniper_and_tide.toml --fixed 14500");
    let plan = data(&args);
    let left: f64 = plan["left_over"]["amount"].as_str().unwrap().parse().unwrap();
    let services = plan["services"].as_array().unwrap();
    let leaves: f64 =
        services.iter().map(|line| line["contribution"]["amount"].as_str().unwrap().parse::<f64>().unwrap()).sum();
    assert!(left >= 0.0 && (leaves - 14500.0 - left).abs() < 0.005, "what they leave covers the fixed costs: {leaves}");
    assert!(fine(&args).contains("root shadow and toner"));
}

/// The examples that the help prints, run where they say: in the folder of the project.
#[test]
fn the_examples_of_the_help_run() {
    let helps = [
        &["price"][..],
        &["cost"],
        &["business", "break-even"],
        &["business", "commission"],
        &["business", "tips"],
        &["business", "productivity"],
        &["business", "reorder"],
        &["business", "quote"],
    ];
    for command in helps {
        let help = fine(&[command, &["--help"]].concat());
        assert!(help.lines().all(|line| line.starts_with("Usage:") || line.chars().count() <= 80), "{help}");
        let mut runs = 0;
        for example in help.split("Example: foilwork ").skip(1) {
            let line = example.split("\n\n").next().unwrap_or_default().replace(['\\', '\n'], " ");
            let mut args: Vec<String> = Vec::new();
            for (i, piece) in line.split('"').enumerate() {
                if i % 2 == 1 {
                    args.push(piece.to_owned())
                } else {
                    args.extend(piece.split_whitespace().map(str::to_owned))
                }
            }
            let output = std::process::Command::new(env!("CARGO_BIN_EXE_foilwork"))
                .current_dir(env!("CARGO_MANIFEST_DIR"))
                .args(&args)
                .output()
                .unwrap();
            assert_eq!(output.status.code(), Some(0), "{args:?}: {}", String::from_utf8_lossy(&output.stderr));
            runs += 1;
        }
        assert!(runs > 0, "{help}");
    }
}

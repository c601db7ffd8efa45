//! Lists of services: problems with their places, CSV and JSON alike.

use crate::api::money::helpers::{currency, euros, number};
use foilwork::{
    business::list::{Business, ListOrder, parse_csv, parse_json, price_services},
    reader::Format,
    shop::{Shop, parse_shop},
};
use rust_decimal::Decimal;

fn of(shop: &str) -> Business {
    Shop::new(&parse_shop(shop, Format::Toml).unwrap()).unwrap().business().unwrap()
}

fn demo() -> Business {
    of(include_str!("../../../examples/juniper_and_tide.toml"))
}

#[test]
fn lists_report_every_problem_with_its_place() {
    let text = "service,product_pack_price,product_pack_g,product_g,hands_on_min,chair_min,price,sold,colour\n\
                foils,26.40,500,,70,120,,2,x\n\
                ,26.4x,0,-3,70,0,12.505,2.5,\n\
                toner,9.80,60,30,15,40\n";
    let problems: Vec<_> = parse_csv(text, currency("EUR")).unwrap_err().0.iter().map(ToString::to_string).collect();
    let known = foilwork::business::list::COLUMNS.join(", ");
    assert_eq!(problems, [
        format!("line 1: colour: unknown column: the columns are {known}"),
        "line 2: product_g: is missing: give a value".into(),
        "line 3: service: is missing: give a value".into(),
        "line 3: product_pack_price: amount \"26.4x\" is not a decimal number: write digits with a point, for example 12.50"
            .into(),
        "line 3: product_pack_g: invalid pack contents (got 0 g): must be more than nothing".into(),
        "line 3: product_g: invalid mass (got -3 g): must be from 0 to 1e9 g".into(),
        "line 3: price: 12.505 EUR has more than 2 decimals: round it first, and name the rounding".into(),
        "line 3: sold: invalid count (got 2.5 services): must be a whole number from 0 to 4294967295".into(),
        "line 3: chair_min: invalid chair time (got 0 min): must be more than nothing".into(),
        "line 4: 6 fields under 9 column names: quote a field that holds the separator".into(),
    ]);
    let json = r#"[{"service": "toner", "hands_on_min": 15, "chair_min": [40]}, {"service": "gloss", "hands_on_min": "x", "chair_min": 30, "price": null}]"#;
    let problems: Vec<_> = parse_json(json, currency("EUR")).unwrap_err().0.iter().map(ToString::to_string).collect();
    assert_eq!(
        problems,
        [
            "service[1].chair_min: must be a text or a number",
            "service[1].chair_min: is missing: give a value",
            "service[2].hands_on_min: number \"x\" is not a decimal number: write digits with a point, for example 12.50",
        ]
    );
    let empty = parse_csv("service,hands_on_min,chair_min\n", currency("EUR")).unwrap_err();
    assert_eq!(empty.to_string(), "the list has no services: give at least one line");
    assert_eq!(parse_json("[]", currency("EUR")).unwrap_err().0.len(), 1);
    assert!(parse_json("{", currency("EUR")).is_err() && parse_csv("", currency("EUR")).is_err());
}

#[test]
fn lists_may_use_other_separators_and_a_byte_order_mark() {
    for separator in [";", "\t"] {
        let text = "\u{feff}service,hands_on_min,chair_min,price\r\nfoils,70,120,140.00\r\n".replace(',', separator);
        let list = parse_csv(&text, currency("EUR")).unwrap();
        assert_eq!((list[0].service.as_str(), list[0].price), ("foils", Some(euros("140.00"))));
    }
    let quoted = parse_csv("service,hands_on_min,chair_min\n\"foils, half head\",70,120\n", currency("EUR")).unwrap();
    assert_eq!(quoted[0].service, "foils, half head");
}

/// Line 3 of a file with CR LF is line 3 in an editor as well.
#[test]
fn lines_count_alike_whatever_ends_them() {
    let text = "service,hands_on_min,chair_min\nfoils,70,120\ntoner,x,40\n";
    for text in [text.to_owned(), text.replace('\n', "\r\n")] {
        let said = parse_csv(&text, currency("EUR")).unwrap_err().to_string();
        assert!(said.starts_with("line 3: hands_on_min: "), "{said}");
    }
}

/// A list written with decimal commas has one habit, not as many mistakes as numbers.
#[test]
fn decimal_commas_are_told_once() {
    let text = "service;product_pack_price;product_pack_g;product_g;hands_on_min;chair_min;price\n\
                foils;26,40;500;42,5;70;120;140,00\n\
                toner;9,80;60;30;15;x;35,00\n";
    assert_eq!(
        parse_csv(text, currency("EUR")).unwrap_err().to_string(),
        "line 2: product_pack_price: \"26,40\" is written with a decimal comma, and so are 4 other numbers: write points, \
         here 26.40\n\
         line 3: chair_min: number \"x\" is not a decimal number: write digits with a point, for example 12.50"
    );
}

/// A comma before three digits may part thousands: both ways are said, also beside one that can be nothing but a decimal comma, for
/// 1200 g are not 1.2 g.
#[rstest::rstest]
#[case(
    "1,200",
    "42,5",
    "product_g: \"42,5\" is written with a decimal comma: write a point, here 42.5\n\
     line 2: product_pack_g: \"1,200\" is written with a comma: write 1.200 or 1200, whichever it is"
)]
#[case("1,200", "42", "product_pack_g: \"1,200\" is written with a comma: write 1.200 or 1200, whichever it is")]
#[case("1200", "42,5", "product_g: \"42,5\" is written with a decimal comma: write a point, here 42.5")]
#[case(
    "1,200",
    "2,000",
    "product_pack_g: \"1,200\" is written with a comma, and so is 1 other number: write 1.200 or 1200, whichever it is"
)]
#[case(
    "0,200",
    "2,000",
    "product_pack_g: \"0,200\" is written with a decimal comma: write a point, here 0.200\n\
     line 2: product_g: \"2,000\" is written with a comma: write 2.000 or 2000, whichever it is"
)]
fn commas_may_part_thousands(#[case] pack_g: &str, #[case] product_g: &str, #[case] want: &str) {
    let names = "service;product_pack_price;product_pack_g;product_g;hands_on_min;chair_min;price";
    let text = format!("{names}\nfoils;26.40;{pack_g};{product_g};70;120;140.00\n");
    assert_eq!(parse_csv(&text, currency("EUR")).unwrap_err().to_string(), format!("line 2: {want}"));
}

/// A comma alone makes no number: there are digits on both sides of it, or it is told as what it is.
#[rstest::rstest]
#[case("12,x")]
#[case("x,5")]
#[case(",5")]
#[case("5,")]
#[case("1,2,3")]
#[case("5 g, 6 g")]
fn a_comma_in_other_words_is_no_decimal_comma(#[case] text: &str) {
    let list = format!("service;hands_on_min;chair_min\nfoils;{text};120\n");
    assert_eq!(
        parse_csv(&list, currency("EUR")).unwrap_err().to_string(),
        format!(
            "line 2: hands_on_min: number \"{text}\" is not a decimal number: write digits with a point, for example 12.50"
        )
    );
}

/// Two hundred characters name a service, one more does not, nor does a line break or a character that acts.
#[test]
fn a_name_is_short_and_does_nothing() {
    let said = |name: &str| {
        let list = format!("service,hands_on_min,chair_min\n\"{name}\",70,120\n");
        parse_csv(&list, currency("EUR")).map(|list| list[0].service.clone()).map_err(|problems| problems.to_string())
    };
    let longest = "\u{e8}".repeat(200);
    assert_eq!(said(&longest), Ok(longest.clone()));
    let (long, acts) = (
        "line 2: service: the text has 201 characters: give at most 200",
        "line 2: service: has a line break or a character that acts instead of being shown: remove it",
    );
    assert_eq!(said(&format!("{longest}x")), Err(long.to_owned()));
    for bad in ["half\nhead", "half\u{202e}head", "half\u{7}head"] {
        assert_eq!(said(bad), Err(acts.to_owned()), "{bad:?}");
    }
}

/// A count is whole and fits; an amount is nothing or more.
#[test]
fn numbers_of_a_list_have_their_edges() {
    let said = |end: &str| {
        let list = format!("service,hands_on_min,chair_min,sold,laundry,price\nfoils,0,0.001,{end}\n");
        parse_csv(&list, currency("EUR")).map(|list| list[0].sold).map_err(|problems| problems.to_string())
    };
    assert_eq!(["0,0,0", "4294967295,,", "2.0,,", ",,"].map(said), [Ok(0), Ok(u32::MAX), Ok(2), Ok(1)]);
    let count = "must be a whole number from 0 to 4294967295";
    for bad in ["-1", "4294967296", "0.5"] {
        assert_eq!(
            said(&format!("{bad},,")),
            Err(format!("line 2: sold: invalid count (got {bad} services): {count}"))
        );
    }
    for (end, field) in [("1,-0.01,", "laundry"), ("1,,-0.01", "price")] {
        let says = format!("line 2: {field}: invalid amount (got -0.01 EUR): must be nothing or more");
        assert_eq!(said(end), Err(says));
    }
}

/// What a list is not, and what stands in it twice.
#[test]
fn a_list_of_another_shape_is_refused() {
    let json = |text: &str| parse_json(text, currency("EUR")).unwrap_err().to_string();
    assert!(json("{}").ends_with("where a list belongs: write the services in [ ]"));
    assert!(json("[5]").starts_with("service[1].service: ") && json("[5]").ends_with("write its fields in { }"));
    assert_eq!(json("[]"), "the list has no services: give at least one item");
    let twice = "service,hands_on_min,chair_min,hands_on_min\nfoils,70,120,70\n";
    assert_eq!(
        parse_csv(twice, currency("EUR")).unwrap_err().to_string(),
        "line 1: hands_on_min: is there twice: keep one of them"
    );
}

/// Where points group thousands, `1.200` is twelve hundred.
#[test]
fn grouped_thousands_are_refused_with_the_way_out() {
    let text = "service,hands_on_min,chair_min,price\nfoils,70,120,1.200\n";
    assert_eq!(
        parse_csv(text, currency("EUR")).unwrap_err().to_string(),
        "line 2: price: amount \"1.200\" has more decimals than EUR: write 1200 if the point groups thousands, else 1.20"
    );
    assert!(parse_csv(text, currency("KWD")).is_ok(), "three decimals are what KWD has");
}

/// The invented price list of Juniper & Tide, read both ways: the same table, the same text.
#[test]
fn the_example_list_reads_alike_from_csv_and_json() {
    let business = demo();
    let csv = parse_csv(include_str!("../../../examples/juniper_and_tide_services.csv"), business.currency).unwrap();
    let json = parse_json(include_str!("../../../examples/juniper_and_tide_services.json"), business.currency).unwrap();
    assert_eq!(csv, json);
    let table = price_services(&csv, &business).unwrap();
    assert!(table.totals.reconcile());
    let text = table.to_csv();
    assert_eq!(text.lines().count(), csv.len() + 2);
    let mut reader = csv::Reader::from_reader(text.as_bytes());
    let rows: Vec<_> = reader.records().map(Result::unwrap).collect();
    let (total, lines) = rows.split_last().unwrap();
    assert_eq!(&total[0], "total");
    for column in 3..15 {
        let down: Decimal = lines.iter().map(|line| number(&line[column]) * number(&line[2])).sum();
        assert_eq!(down, number(&total[column]), "column {column} of the written text");
    }
}

#[test]
fn a_text_that_a_spreadsheet_would_run_is_written_as_text() {
    let text = "service,hands_on_min,chair_min,consumables\n\"=1+1\",70,120,1.00\n";
    let business = demo();
    let table = price_services(&parse_csv(text, business.currency).unwrap(), &business).unwrap();
    assert!(table.to_csv().lines().nth(1).unwrap().starts_with("'=1+1,"));
}

/// By hand: foils leave 100 - 10 = 90, gloss 40 - 5 = 35; sold 1 to 3, four of them leave 195. 4000 needs 82.05 services,
/// and 83 in that mix are 21 and 62: 1890 + 2170 = 4060.
#[test]
fn a_list_says_how_many_of_each_cover_the_month() {
    let terms = "currency = \"EUR\"\n[terms]\nwage_per_h = \"0\"\noverhead_per_h = \"0\"\nmargin_percent = 10";
    let business = of(terms);
    let text = "service,class,consumables,hands_on_min,chair_min,price,sold\n\
                foils,long,10,60,120,100,1\ngloss,,5,20,40,40,3\n";
    let table = price_services(&parse_csv(text, business.currency).unwrap(), &business).unwrap();
    let plan = table.sales_needed(euros("4000"), euros("0")).unwrap();
    let counts: Vec<_> = plan.services.iter().map(|line| (line.what.as_str(), line.count)).collect();
    assert_eq!(counts, [("foils, long", 21), ("gloss", 62)]);
    assert_eq!((plan.count, plan.left_over), (83, euros("60.00")));
    // 90 in two hours, 35 in forty minutes: the gloss earns more for the chair.
    let ranked: Vec<_> =
        table.in_order(ListOrder::ChairHour).iter().map(|line| line.contribution_per_chair_hour.to_string()).collect();
    assert_eq!(ranked, ["52.5 EUR/h", "45 EUR/h"]);
}

/// What the shop prices is named, not priced again; a name that it does not have says what to write.
#[test]
fn a_list_names_the_products_of_the_shop() {
    let shop = Shop::new(&parse_shop(include_str!("../../../examples/juniper_and_tide.toml"), Format::Toml).unwrap());
    let shop = shop.unwrap();
    let text = |product: &str| {
        format!("Service,Product,product g,PRODUCT_WASTE_G,Hands-on min,Chair min\nfoils,{product},45,5,70,120\n")
    };
    let list = parse_csv(&text("Foam Line powder"), shop.packs().unwrap()).unwrap();
    // 31.50 for 500 g: 50 g are 3.15.
    let table = price_services(&list, &shop.business().unwrap()).unwrap();
    assert_eq!(table.lines[0].amounts()[0].1.to_string(), "3.15 EUR");
    let refused = |text: &str| parse_csv(text, shop.packs().unwrap()).unwrap_err().to_string();
    assert_eq!(
        refused(&text("Foam Line pouder")),
        "line 2: product: the shop has no \"Foam Line pouder\" with a price: did you mean \"Foam Line powder\"?"
    );
    assert_eq!(
        refused(&text("xyz")),
        "line 2: product: the shop has no \"xyz\" with a price: add it to the shop with `pack_g` and `price`, or give the \
         price and the mass of its pack here"
    );
    let both =
        "service,product,product_pack_price,product_g,hands_on_min,chair_min\nfoils,Foam Line powder,9.90,45,70,120\n";
    assert_eq!(refused(both), "line 2: product: give the name, or product_pack_price and product_pack_g, not both");
    let misspelt = "service,prodct,product_g,hands_on_min,chair_min\nfoils,,,70,120\n";
    assert_eq!(refused(misspelt), "line 1: prodct: unknown column: did you mean `product`?");
}

/// By hand: 100 for 10 leaves 90, which is 90 % of the price and 900 % of the cost, and 45 an hour in two hours; 40 for 5 leaves 35:
/// 87.5 and 700 %, 52.5 an hour in forty minutes; 30 for 7 leaves 23: 76.667 and 328.571 %, 34.5 an hour in forty.
#[test]
fn margins_of_a_written_list_have_two_decimals() {
    let terms = "currency = \"EUR\"\n[terms]\nwage_per_h = \"0\"\noverhead_per_h = \"0\"\nmargin_percent = 10";
    let business = of(terms);
    let text =
        "service,consumables,hands_on_min,chair_min,price\nfoils,10,60,120,100\ngloss,5,20,40,40\ntoner,7,20,40,30\n";
    let table = price_services(&parse_csv(text, business.currency).unwrap(), &business).unwrap().to_csv();
    let mut reader = csv::Reader::from_reader(table.as_bytes());
    let rows: Vec<_> = reader.records().map(Result::unwrap).collect();
    let told: Vec<[&str; 3]> = rows.iter().take(3).map(|row| [&row[15], &row[16], &row[18]]).collect();
    assert_eq!(told, [["90.00", "900.00", "45.00"], ["87.50", "700.00", "52.50"], ["76.67", "328.57", "34.50"]]);
    // All three leave 148 of 170, for a cost of 22.
    assert_eq!([&rows[3][15], &rows[3][16]], ["87.06", "672.73"]);
}

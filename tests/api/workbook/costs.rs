//! The page of a plan's cost and price, with other amounts typed into it.

use super::{
    book::Book,
    books::{all_near, bench, example},
};

fn named(book: &Book, names: &[&str], want: &[f64]) {
    let came: Vec<f64> = names.iter().map(|name| book.number(name)).collect();
    all_near(&came, want, 5e-5);
}

const BY_COSTS: [&str; 8] =
    ["cost", "net_price", "card_fee", "profit", "margin_percent", "markup_percent", "tax", "gross_price"];
const BY_LIST: [&str; 5] = ["list_price", "list_net_price", "list_card_fee", "list_profit", "list_margin_percent"];

/// The lines are 1.43, 1.43, 0.36, 0.16, 27.13 and 27.50: 58.01. At 60 % on it 92.82, with a fifth of tax 111.38; 34.81 are left,
/// 37.5027 % of the price and 60.0069 of the cost. Of the 118.00 of the list a sixth, 19.67, is tax: 98.33 leave 40.32, 41.0048 %.
#[test]
fn a_price_and_a_list_come_to_the_sums_by_hand() {
    let mut book = Book::of(&bench("grey-blend.toml", &[]));
    named(&book, &BY_COSTS, &[58.01, 92.82, 0.0, 34.81, 37.502_693, 60.006_895, 18.56, 111.38]);
    named(&book, &BY_LIST, &[118.0, 98.33, 0.0, 40.32, 41.004_780]);
    // The 117.25 of the range are with 20 % of tax and 60 % on top of the cost: 61.07, of 98.33.
    named(&book, &["list_cost_at_most", "list_profit_at_least"], &[61.07, 37.26]);
    let shares = |book: &Book| {
        let first = book.row("Cost", "kind") + 1;
        (first..first + 6).map(|row| book.number(&format!("Cost!E{row}"))).collect::<Vec<_>>()
    };
    assert!(
        (shares(&book)[0] - 143.0 / 58.01).abs() < 1e-9 && (shares(&book).iter().sum::<f64>() - 100.0).abs() < 1e-9
    );
    // 3.00 more of labour, a fee of 2.36 at the list and of 2.00 at the price by the costs, and a price of 100.00 at 5 % of tax:
    // 61.01 of cost and 63.01 with the fee.
    book.change(&format!("Cost!D{}", book.row("Cost", "labour")), 30.13);
    for (name, value) in [("list_card_fee", 2.36), ("card_fee", 2.0), ("net_price", 100.0), ("tax_percent", 5.0)] {
        book.change(name, value);
    }
    named(&book, &BY_COSTS, &[61.01, 100.0, 2.0, 36.99, 36.99, 58.704_967, 5.0, 105.0]);
    // 118 x 5 / 105 = 5.619.
    named(&book, &BY_LIST, &[118.0, 112.38, 2.36, 49.01, 43.610_963]);
    // 112.38 - 61.07 - 2.36.
    named(&book, &["list_profit_at_least"], &[48.95]);
    book.change("list_price", 0.0);
    book.change("net_price", 0.0);
    named(&book, &["list_net_price", "list_margin_percent", "margin_percent"], &[0.0, 0.0, 0.0]);
}

/// Without any cost there is no share of it.
#[test]
fn nothing_has_no_shares() {
    let mut book = Book::of(&bench("grey-blend.toml", &[]));
    let (first, last) = (book.row("Cost", "kind") + 1, book.row("Cost", "cost") - 1);
    for row in first..=last {
        book.change(&format!("Cost!D{row}"), 0.0);
    }
    for row in first..=last {
        assert_eq!(book.number(&format!("Cost!E{row}")), 0.0);
    }
    assert_eq!(book.number("markup_percent"), 0.0);
}

#[test]
fn the_page_reads_from_the_top() {
    let lines = ["kind", "product", "product", "product", "consumables", "labour", "overhead", "cost", ""];
    let ends = ["Margin is profit over net price", "Every line of the plan was rounded once"];
    let by_costs = [
        "net price, by its costs",
        "card fee, at this price",
        "profit, by its costs",
        "margin, %, by its costs",
        "mark-up, %, by its costs",
        "tax, %",
        "tax",
        "by its costs, with tax",
        "By its costs from 111.38 GBP to 117.25 GBP",
        "by the price list",
        "without tax",
        "card fee, at the price of the list",
        "profit, by the price list",
        "margin, %, by the price list",
        "cost where the hair takes most",
        "profit, by the price list, where the hair takes most",
    ];
    let top = [
        "Cost and price of the service",
        "",
        "Coloured cells",
        "",
        "Booked as regrowth",
        "Counted are",
        "These amounts",
    ];
    let book = Book::of(&bench("grey-blend.toml", &[]));
    book.reads("Cost", &[&top[..], &lines, &by_costs, &ends].concat());
    assert_eq!(book.first_column("Cost").len(), top.len() + lines.len() + by_costs.len() + ends.len());
    // What is left out stands above the lines, with a row between.
    let less = Book::of(&bench("grey-blend.toml", &[("overhead_per_h = \"16.50\"\n", "")]));
    let row = less.row("Cost", "Not counted: overhead: enter `shop.terms.overhead_per_h`");
    assert_eq!(row, 8);
    less.reads("Cost", &[&top[..], &["Not counted", "", "kind"]].concat());
    // What stops it stands above all.
    let blocked = Book::of(&bench("grey-blend.toml", &[("result = \"clear\"", "result = \"reaction\"")]));
    blocked.reads("Cost", &["Cost and price", "", "*** DO NOT BEGIN", "", "Coloured cells", "", "Booked as regrowth"]);
}

/// Without a list the guest pays the price by the costs; without a target there is none; without tax it says so.
#[test]
fn what_is_not_there_is_told() {
    let plain = Book::of(&bench("soft-gradient.toml", &[]));
    let at = plain.row("Cost", "net price");
    let words = [
        "net price",
        "card fee, at this price",
        "profit",
        "margin, %",
        "mark-up, %",
        "tax, %",
        "tax",
        "THE GUEST PAYS",
        "From ",
    ];
    for (place, want) in words.iter().enumerate() {
        assert!(plain.first_column("Cost")[at - 1 + place].starts_with(want), "{want}");
    }
    let list = example("grey-blend.toml");
    let line = |starts: &str| list.lines().find(|line| line.starts_with(starts)).unwrap().to_owned() + "\n";
    let untaxed = Book::of(&bench("grey-blend.toml", &[(&line("tax_percent"), "")]));
    assert!(untaxed.first_column("Cost").contains(&"Tax is not counted: the shop states none.".to_owned()));
    named(&untaxed, &["list_net_price", "list_profit"], &[118.0, 59.99]);
    let untold = Book::of(&bench("grey-blend.toml", &[(&line("markup_percent"), "")]));
    let told = "Price not computed: enter `margin_percent` or `markup_percent` in `shop.terms`.";
    assert!(untold.first_column("Cost").contains(&told.to_owned()));
    named(&untold, &["list_net_price", "tax_percent"], &[98.33, 20.0]);
}

/// A list that ends in halves moves the price to 133.50, of which 19 in 119 are tax: 21.315, so 21.32, and 112.18 are left. 19 % on top
/// of that would be 21.31. Of 150.00 it is 23.95.
#[test]
fn a_price_that_the_list_moves_holds_its_tax() {
    let mut book = Book::of(&bench("finish-together.toml", &[]));
    book.holds();
    named(&book, &["gross_price", "tax", "net_price"], &[133.50, 21.32, 112.18]);
    book.change("gross_price", 150.0);
    named(&book, &["gross_price", "tax", "net_price", "profit"], &[150.0, 23.95, 126.05, 126.05 - 85.27 - 1.95]);
}

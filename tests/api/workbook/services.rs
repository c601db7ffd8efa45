//! A list of services as a workbook, with other prices, costs and counts typed into it.

use super::{
    book::Book,
    books::{TERMS, all_near, priced, services},
};
use foilwork::workbook::services_workbook;
use rstest::rstest;

const HEADING: &str = "service,class,hands_on_min,chair_min,price,sold\n";

fn book(list: &str, currency: &str, terms: &str) -> Book {
    Book::of(&services_workbook(&priced(&format!("{HEADING}{list}"), currency, terms)).unwrap())
}

/// The numbers of a row of the costs, from `sold` to the mark-up.
fn row(book: &Book, place: usize) -> Vec<f64> {
    let row = book.row("Costs", "service") + place;
    ('C'..='Q').map(|column| book.value(&format!("Costs!{column}{row}")).number().unwrap()).collect()
}

fn near(came: &[f64], want: &[f64]) {
    all_near(came, want, 5e-5);
}

/// Half of 18.00 an hour is earned with hands: a quarter of an hour is 9.00, and 40 minutes of a chair at 10.00 are 6.67. Of 35.00 the
/// terminal keeps 2 %, 0.70, and 21 in 121 is tax: 6.07. So 28.93 over 16.37 leave 12.56, 43.4151 % of the price and 76.7257 of the
/// cost. Of 30 minutes in both: 18.00 and 5.00, 0.80 of 40.00, 6.94 of tax, 33.06 over 23.80, 9.26.
#[test]
fn a_list_comes_to_the_sums_by_hand() {
    let mut book = book("toner,short,15,40,35.00,6\ngloss,,30,30,40.00,2\n", "EUR", TERMS);
    let toner = [6.0, 0.0, 0.0, 0.0, 0.0, 9.0, 6.67, 0.70, 16.37, 35.0, 28.93, 6.07, 12.56, 43.4151, 76.7257];
    near(&row(&book, 1), &toner);
    let gloss = [2.0, 0.0, 0.0, 0.0, 0.0, 18.0, 5.0, 0.80, 23.80, 40.0, 33.06, 6.94, 9.26, 28.0097, 38.9076];
    near(&row(&book, 2), &gloss);
    let sums = |book: &Book| {
        let at = book.row("Costs", "all that were sold");
        let of = |column| book.number(&format!("Costs!{column}{at}"));
        ('C'..='O').map(of).collect::<Vec<_>>()
    };
    // Six of the one and two of the other.
    near(&sums(&book), &[8.0, 0.0, 0.0, 0.0, 0.0, 90.0, 50.02, 5.80, 145.82, 290.0, 239.70, 50.30, 93.88]);
    let price = |book: &Book, place: usize| book.number(&format!("Prices!C{}", book.row("Prices", "service") + place));
    assert_eq!([price(&book, 1), price(&book, 2)], [35.0, 40.0]);
    // 50.00 instead: 8.68 of tax, 41.32 over 16.37.
    let at = book.row("Costs", "toner");
    book.change(&format!("Costs!L{at}"), 50.0);
    near(&row(&book, 1)[8..13], &[16.37, 50.0, 41.32, 8.68, 24.95]);
    assert_eq!(price(&book, 1), 50.0);
    // Without tax, at a product of 3.00 and none sold.
    book.change("tax_percent", 0.0);
    book.change(&format!("Costs!D{at}"), 3.0);
    book.change(&format!("Costs!C{at}"), 0.0);
    near(&row(&book, 1)[8..13], &[19.37, 50.0, 50.0, 0.0, 30.63]);
    near(&sums(&book)[7..], &[1.6, 47.6, 80.0, 80.0, 0.0, 32.4]);
    book.change(&format!("Costs!L{at}"), 0.0);
    assert_eq!(row(&book, 1)[13], 0.0);
}

/// The tax in a price, as each rounding has it: of 35.00 at 21 % it is 6.0743..., of 12.10 exactly 2.10, of 1.00 at 60 % 0.375, and of
/// 1.80 at 50 % 0.60. Of 0.15 at 50 % it is 0.05, and of 0.045 nothing can be paid; 1 in 100 at 100 % is half a unit.
#[rstest]
#[case("midpoint-away-from-zero", [6.07, 2.10, 0.38, 0.63])]
#[case("midpoint-nearest-even", [6.07, 2.10, 0.38, 0.62])]
#[case("midpoint-toward-zero", [6.07, 2.10, 0.37, 0.62])]
#[case("to-zero", [6.07, 2.10, 0.37, 0.62])]
#[case("to-negative-infinity", [6.07, 2.10, 0.37, 0.62])]
#[case("away-from-zero", [6.08, 2.10, 0.38, 0.63])]
#[case("to-positive-infinity", [6.08, 2.10, 0.38, 0.63])]
fn tax_is_rounded_as_the_shop_rounds(#[case] rounding: &str, #[case] want: [f64; 4]) {
    let mut book = book("toner,,15,40,35.00,6\n", "EUR", &format!("{TERMS}rounding = \"{rounding}\"\n"));
    book.holds();
    let at = book.row("Costs", "toner");
    // 1.00 x 60 / 160 = 0.375 and 1.25 x 100 / 200 = 0.625: halves, below an even and above an odd cent.
    for ((price, tax), want) in [(35.0, 21.0), (12.1, 21.0), (1.0, 60.0), (1.25, 100.0)].into_iter().zip(want) {
        book.change(&format!("Costs!L{at}"), price);
        book.change("tax_percent", tax);
        let came = book.number(&format!("Costs!N{at}"));
        assert!((came - want).abs() < 1e-9, "{price} at {tax} %: {came}");
        assert!((book.number(&format!("Costs!M{at}")) - (price - want)).abs() < 1e-9);
    }
}

/// Whole yen and thousandths of a dinar: 700 x 10 / 110 = 63.6; 8.400 x 5 / 105 = 0.400, of 8.405 0.40024.
#[rstest]
#[case("JPY", "700", "10", 64.0)]
#[case("KWD", "8.405", "5", 0.4)]
#[case("KWD", "8.415", "5", 0.401)]
fn amounts_are_whole_units_of_the_currency(
    #[case] currency: &str,
    #[case] price: &str,
    #[case] tax: &str,
    #[case] want: f64,
) {
    let terms = format!(
        "wage_per_h = \"1\"\nproductive_percent = 50\noverhead_per_h = \"1\"\nmargin_percent = 25\ntax_percent = {tax}\n"
    );
    let book = book(&format!("toner,,15,40,{price},1\n"), currency, &terms);
    book.holds();
    assert!((row(&book, 1)[11] - want).abs() < 1e-9);
    assert_eq!(
        book.value(&format!("Prices!C{}", book.row("Prices", "service"))).to_string(),
        format!("price, {currency}")
    );
}

#[test]
fn the_list_reads_from_the_top() {
    let book = Book::of(&services());
    assert_eq!(book.sheets, ["Prices", "Costs", "Sources"]);
    let costs = book.first_column("Costs");
    let want = ["Costs and prices, EUR", "", "Coloured cells", "", "tax, %", "", "service", "face-frame lights"];
    book.reads("Costs", &want);
    let ends = &costs[costs.len() - 5..];
    assert_eq!([ends[1].as_str(), ends[2].as_str()], ["all that were sold", ""]);
    assert!(
        ends[0].starts_with("colour consultation")
            && ends[3].starts_with("Card fee: ")
            && ends[4].starts_with("Margin is")
    );
    let prices = book.first_column("Prices");
    assert_eq!(&prices[..4], ["Price list", "", "service", "face-frame lights"]);
    assert_eq!(prices.len(), 3 + 9 + 2);
    assert!(prices[12].is_empty() && prices[13].starts_with("Prices follow the page Costs."));
}

//! What a priced list says of its lines, in which orders it is shown, what it adds up to and what it takes from the shelf.

use crate::api::money::helpers::{currency, euros, grams};
use foilwork::{
    business::list::{Business, ListOrder, Mark, PricedTable, Totals, parse_csv, price_services, taken},
    money::Money,
    reader::Format,
    shop::{Shop, parse_shop},
};
use rstest::rstest;

fn business(terms: &str) -> Business {
    let shop = format!("currency = \"EUR\"\n[terms]\n{terms}");
    Shop::new(&parse_shop(&shop, Format::Toml).unwrap()).unwrap().business().unwrap()
}

fn priced(terms: &str, list: &str) -> PricedTable {
    let business = business(terms);
    price_services(&parse_csv(list, business.currency).unwrap(), &business).unwrap()
}

const HALF: &str = "wage_per_h = \"12\"\nproductive_percent = 100\noverhead_per_h = \"6\"\nmargin_percent = 50";

/// By hand: 10.00 of consumables, an hour of hands at 12.00 and of the chair at 6.00 cost 28.00, and half of the price is to be left:
/// 56.00. Without the chair it is 22.00.
#[rstest]
#[case::met("60,60,56.00", &[])]
#[case::missed_by_a_cent("60,60,55.99", &[Mark::BelowTarget])]
#[case::nothing_left("60,60,28.00", &[Mark::BelowTarget])]
#[case::a_cent_lost("60,60,27.99", &[Mark::LosesMoney])]
#[case::no_better_than_empty("60,60,22.00", &[Mark::LosesMoney])]
#[case::worse_than_empty("60,60,21.99", &[Mark::LosesMoney, Mark::LessThanEmptyChair])]
#[case::priced_by_the_rule("60,60,", &[])]
#[case::hands_for_longer("60.5,60,", &[Mark::HandsOnExceedsChair])]
fn a_line_is_marked_from_the_first_cent(#[case] end: &str, #[case] want: &[Mark]) {
    let table = priced(HALF, &format!("service,consumables,hands_on_min,chair_min,price\nfoils,10,{end}\n"));
    assert_eq!(table.lines[0].marks, want);
}

#[test]
fn the_same_service_twice_is_one_of_the_same_class() {
    let list = "service,class,hands_on_min,chair_min\nfoils,long,60,60\nfoils,short,60,60\ngloss,long,60,60\nfoils,,60,60\n\
                foils,short,30,30\nfoils,,60,60\n";
    let twice: Vec<bool> = priced(HALF, list).lines.iter().map(|line| line.marks == [Mark::ListedTwice]).collect();
    assert_eq!(twice, [false, false, false, false, true, true]);
}

const FOUR: &str = "service,consumables,hands_on_min,chair_min,price,sold\n\
                    a,10,60,120,100,1\nb,5,20,40,40,3\nc,1,30,60,30,2\nd,60,50,100,130,4\n";
const FREE: &str = "wage_per_h = \"0\"\noverhead_per_h = \"0\"\nmargin_percent = 10";

/// By hand: they leave 90, 35, 29 and 70, of all sold 90, 105, 58 and 280, of the price 90, 87.5, 96.7 and 53.8 %, for an hour of
/// the chair 45, 52.5, 29 and 42.
#[rstest]
#[case(ListOrder::Listed, "abcd")]
#[case(ListOrder::ChairHour, "badc")]
#[case(ListOrder::Profit, "adbc")]
#[case(ListOrder::TotalProfit, "dbac")]
#[case(ListOrder::Margin, "cabd")]
#[case(ListOrder::Price, "dabc")]
#[case(ListOrder::Sold, "dbca")]
fn a_list_is_ordered_by_what_is_asked(#[case] order: ListOrder, #[case] want: &str) {
    let table = priced(FREE, FOUR);
    let names: String = table.in_order(order).iter().map(|line| line.service.as_str()).collect();
    assert_eq!(names, want);
}

/// 10 + 15 + 2 + 240 of consumables, 100 + 120 + 60 + 520 of prices.
#[test]
fn totals_are_of_all_sold_and_reconcile_or_do_not() {
    let totals = priced(FREE, FOUR).totals;
    let told = (totals.sold, totals.consumables, totals.cost, totals.gross, totals.profit);
    assert_eq!(told, (10, euros("267"), euros("267"), euros("800"), euros("533")));
    assert!(totals.reconcile());
    let fields: [fn(&mut Totals) -> &mut Money; 12] = [
        |t| &mut t.product,
        |t| &mut t.developer,
        |t| &mut t.consumables,
        |t| &mut t.laundry,
        |t| &mut t.labour,
        |t| &mut t.overhead,
        |t| &mut t.card_fee,
        |t| &mut t.cost,
        |t| &mut t.net,
        |t| &mut t.tax,
        |t| &mut t.gross,
        |t| &mut t.profit,
    ];
    for (place, field) in fields.into_iter().enumerate() {
        let mut off = totals;
        *field(&mut off) = field(&mut off).plus(euros("0.01")).unwrap();
        assert!(!off.reconcile(), "a cent more in field {place}");
        assert_ne!(off.amounts()[place].1, totals.amounts()[place].1);
    }
}

/// By hand: 50 g of 500 for 20.00 are 2.00, 100 g of 1000 for 6.00 are 0.60; with 1.25 and 0.75, half an hour at 15.00 x 1.2 / 0.5 and
/// an hour of the chair at 12.00 that is 34.60. Twice the cost, with 2 % of 1.2 N and 0.10 for the card:
/// N = 34.70 / (1 / 2 - 0.024) = 72.90; tax 14.58; fee 1.75 + 0.10. Without the chair 24.45 are spent: 48.45 are left for the hour.
#[test]
fn a_written_list_is_the_sum_of_what_was_worked() {
    let terms = "wage_per_h = \"15\"\non_costs_percent = 20\nproductive_percent = 50\noverhead_per_h = \"12\"\n\
                 markup_percent = 100\ntax_percent = 20\ncard_percent = 2\ncard_fixed = \"0.10\"";
    let list = "service,class,product_pack_price,product_pack_g,product_g,product_waste_g,developer_pack_price,developer_pack_g,\
                developer_g,developer_waste_g,consumables,laundry,hands_on_min,chair_min,sold\n\
                highlights,long,20,500,45,5,6,1000,90,10,1.25,0.75,30,60,2\n";
    let table = priced(terms, list);
    let text = table.to_csv();
    let rows: Vec<&str> = text.lines().collect();
    assert_eq!(
        rows[1..],
        [
            "highlights,long,2,2.00,0.60,1.25,0.75,18.00,12.00,1.85,36.45,72.90,14.58,87.48,36.45,50.00,100.00,72.90,48.45",
            "total,,2,4.00,1.20,2.50,1.50,36.00,24.00,3.70,72.90,145.80,29.16,174.96,72.90,50.00,100.00,,",
        ]
    );
    assert_eq!(rows[0].split(',').count(), rows[1].split(',').count());
    let line = &table.lines[0];
    assert_eq!((line.is_listed, line.moved), (false, false));
    // By the hour, overhead is paid out of the amount for the hour: 22.60 and 0.10 and 48.00 over 1 - 0.024.
    let hourly = terms.replace("markup_percent = 100", "per_chair_h = \"48\"");
    assert_eq!(priced(&hourly, list).lines[0].net, euros("72.44"));
    // A cost that is nothing has no margin to speak of.
    let free = business(FREE);
    let nothing = parse_csv("service,hands_on_min,chair_min\nfoils,60,60\n", free.currency).unwrap();
    assert_eq!(
        price_services(&nothing, &free).unwrap_err().to_string(),
        "service[1].foils: invalid cost (got 0.00 EUR): must be more than nothing: without a cost there is no margin to speak of"
    );
}

/// Three of 50 g and two of 30 g are 210 g of the powder; 100 g of cream three times.
#[test]
fn what_a_list_takes_is_summed_by_product() {
    let shop =
        Shop::new(&parse_shop(include_str!("../../../examples/juniper_and_tide.toml"), Format::Toml).unwrap()).unwrap();
    let names: Vec<String> = shop.packs().map(|packs| format!("{packs:?}")).into_iter().collect();
    assert!(names[0].contains("Foam Line powder"));
    let list = "service,product,product_g,product_waste_g,developer_g,developer_pack_price,developer_pack_g,hands_on_min,chair_min,sold\n\
                foils,Foam Line powder,45,5,100,6,1000,70,120,3\nroots,Foam Line powder,30,,60,6,1000,40,60,2\n\
                cut,,,,,,,30,30,9\n";
    let list = parse_csv(list, shop.packs().unwrap()).unwrap();
    let taken = taken(&list).unwrap();
    assert_eq!(taken.len(), 1, "what is not named is not counted");
    assert_eq!((taken[0].product.as_str(), taken[0].mass), ("Foam Line powder", grams(210.0)));
    assert_eq!(list[0].product.unwrap().wasted, grams(5.0));
    assert_eq!((list[2].product, list[2].developer), (None, None));
    assert_eq!(list[0].consumables, Money::zero(currency("EUR")));
}

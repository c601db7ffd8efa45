//! What a service is booked as, and what the price list says for it; every sum by hand.

use super::base::{changed, fine, shop, texts, verdicts};
use foilwork::{
    finding::{
        Rule,
        Verdict::{NotJudged, Note, Passed, Warning},
    },
    head::ServiceClass,
    history::keep,
    money::{CostKind, Rounding},
    reader::Format,
    record::replay,
    service::{ChairClock, Evidence, Plan, ServiceFile, consult, plan},
    sheet::{agreement_page, guest_page},
    shop::{parse_shop, shape::ClassPriceEntry},
    source::Basis,
};
use rstest::rstest;

fn listed(class: ServiceClass, price: &str, included_min: Option<f64>, per_extra_h: Option<&str>) -> ClassPriceEntry {
    ClassPriceEntry { class, price: price.to_owned(), included_min, per_extra_h: per_extra_h.map(str::to_owned) }
}

/// A fifth of the head in foils is a partial one. Minutes by hand, without looks: a bowl to 3, painted to 23, 30 min more to 53,
/// rinsed to 56; then a bowl, a toner, a bowl, the root shadow to 16, the toner due at 3 + 20 = 23, both rinsed to 29. Of these
/// 85 min in the chair 65 are included, and 20 min more at 30.00 an hour are 10.00. Hands: 3 + 20 + 2 to the basin + 3 are 28,
/// and 3 + 5 + 3 + 5 + 2 + 3 + 3 are 24: 52 min.
fn priced_file(price: &str) -> ServiceFile {
    let mut file = fine();
    shop(&mut file).currency = Some("EUR".to_owned());
    shop(&mut file).class_price = vec![
        listed(ServiceClass::Full, "200.00", None, None),
        listed(ServiceClass::Partial, price, Some(65.0), Some("30.00")),
    ];
    file.salon.look_min = Some(0.0);
    let terms = shop(&mut file).terms.get_or_insert_default();
    terms.wage_per_h = Some("30.00".to_owned());
    terms.tax_percent = Some(20.0);
    terms.margin_percent = Some(50.0);
    file
}

fn priced(price: &str) -> Plan {
    plan(&priced_file(price)).unwrap()
}

#[test]
fn the_price_follows_from_the_class() {
    let plan = priced("80.00");
    let booking = &plan.booking;
    assert_eq!(booking.service_class, ServiceClass::Partial);
    assert_eq!((plan.chair.total.min(), plan.chair.hands_on.min()), (85.0, 52.0));
    assert_eq!((plan.chair.clock, plan.chair.basis), (ChairClock::Day, Basis::Stated));
    let said = |money: Option<foilwork::money::Money>| money.unwrap().to_string();
    assert_eq!((said(booking.extra), said(booking.price)), ("10.00 EUR".to_owned(), "90.00 EUR".to_owned()));
    // 90.00 with 20 % in it are 75.00 without.
    assert_eq!(said(booking.net), "75.00 EUR");
    assert_eq!((booking.book.unwrap().min(), booking.in_chair.min()), (90.0, 85.0));
    assert_eq!(plan.day.as_ref().unwrap().finish.unwrap().min(), 85.0);
    let flat: String = plan.to_string().split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(
        flat.contains("Booked as partial for 90 min") && flat.contains("of which 10.00 EUR for the time beyond"),
        "{flat}"
    );
}

/// 52 min of hands at 30.00 an hour are 26.00; at a margin of 50 % they are 52.00 net, 62.40 with 20 % tax. The list says 90.00, and
/// that is what is paid, 75.00 without tax, of which 49.00 or 65.33 % are left: no page has two prices.
#[test]
fn the_guest_pays_what_the_list_says() {
    let flat = |text: String| text.split_whitespace().collect::<Vec<_>>().join(" ");
    let plan = priced("80.00");
    let sheet = flat(plan.to_string());
    assert!(sheet.contains("tax 10.40 EUR, with tax 62.40 EUR by its costs"), "{sheet}");
    assert!(sheet.contains("by its costs: net price 52.00 EUR: margin 50 %"), "{sheet}");
    let left = "75.00 EUR of it without tax; it leaves 49.00 EUR: margin 65.33 % of the price";
    assert!(sheet.contains(&format!("THE GUEST PAYS 90.00 EUR, by the price list {left}")), "{sheet}");
    let page = flat(foilwork::sheet::bench_page(&plan));
    assert!(page.contains("tax 10.40 EUR, with tax 62.40 EUR by its costs"), "{page}");
    assert!(
        page.contains("The guest pays 90.00 EUR, by the price list") && page.contains("Booked as partial for 90 min")
    );
    for page in [sheet, page] {
        assert_eq!(page.to_lowercase().matches("the guest pays").count(), 1);
    }
    // Without a list it is the price of the costs.
    let mut file = priced_file("80.00");
    shop(&mut file).class_price.clear();
    let unlisted = flat(foilwork::service::plan(&file).unwrap().to_string());
    assert!(unlisted.contains("tax 10.40 EUR, THE GUEST PAYS 62.40 EUR"), "{unlisted}");
}

/// 80.00 and 10.00 for 20 min more are 90.00; of these 75.00 are net, and 26.00 of cost leave 49.00, 65.33 % of it. By the costs alone
/// it would be 62.40.
#[test]
fn the_way_to_the_price_ends_at_that_of_the_list() {
    let trail = priced("80.00").trail();
    let value = |what: &str| {
        let found = trail.iter().find(|one| one.what == what);
        found
            .unwrap_or_else(|| panic!("no {what}: {:?}", trail.iter().map(|one| &one.what).collect::<Vec<_>>()))
            .value
            .as_str()
    };
    assert_eq!((value("cost"), value("gross price, by its costs")), ("26.00", "62.40"));
    assert_eq!((value("price by the price list"), value("net price by the price list")), ("90.00", "75.00"));
    assert_eq!(value("margin that comes out"), "65.333333");
    assert_eq!(trail.iter().filter(|one| one.what.starts_with("margin that comes out")).count(), 1);
}

/// 52 min of hands at 30.00 an hour are 26.00, and at a margin of 50 % with 20 % tax 62.40.
#[rstest]
#[case::not_the_whole_cost(
    "80.00",
    NotJudged,
    "26.00 EUR is not the whole cost, it leaves out: no price in the shop, on-costs"
)]
#[case::less_than_the_terms("40.00", Note, "it would be 62.40 EUR")]
#[case::less_than_it_costs("1.00", Warning, "less than the 26.00 EUR that it costs")]
fn the_list_is_held_against_the_cost(
    #[case] price: &str,
    #[case] want: foilwork::finding::Verdict,
    #[case] words: &str,
) {
    let plan = priced(price);
    assert_eq!(verdicts(&plan, "list price"), [want], "{}", texts(&plan, "list price"));
    assert!(texts(&plan, "list price").contains(words), "{}", texts(&plan, "list price"));
}

/// 52 min of hands at 129.44 an hour are 112.18. A tax of 19 % on that is 21.31, with it 133.49; the list says 133.50, of which 21.32
/// are tax and 112.18 the net price again. No step says that 19 % of 112.18 are 21.32.
#[test]
fn a_list_that_moves_the_gross_price_alone_is_told() {
    let mut file = priced_file("80.00");
    let shop = shop(&mut file);
    shop.class_price.clear();
    let terms = shop.terms.get_or_insert_default();
    (terms.wage_per_h, terms.margin_percent) = (Some("129.44".to_owned()), None);
    (terms.markup_percent, terms.tax_percent) = (Some(0.0), Some(19.0));
    (terms.price_ending, terms.price_step) = (Some("0.50".to_owned()), Some("1.00".to_owned()));
    let trail = plan(&file).unwrap().trail();
    let steps = trail.iter().filter(|one| one.what.contains("net price") || one.what == "gross price");
    let steps: Vec<_> = steps.map(|one| (one.what.as_str(), one.value.as_str(), one.formula.as_ref())).collect();
    let to_the_list = "net price that is asked for, with its tax, moved to a price of the list";
    assert_eq!(
        steps,
        [
            ("net price that is asked for", "112.18", "cost x (1 + mark-up)"),
            ("gross price", "133.50", to_the_list),
            ("net price", "112.18", "gross price / (1 + tax)"),
        ]
    );
}

/// With nothing left out the price is held against all of the cost; by hand: 52 min of hands at 30.00 an hour and nothing else.
/// Where no tax is stated nothing is said of one.
#[test]
fn a_whole_cost_is_judged() {
    let whole = |price: &str| {
        let mut file = priced_file(price);
        file.service.other_work_min = Some(0.0);
        let shop = shop(&mut file);
        let free = |pack_g: &mut Option<f64>, price: &mut Option<String>| {
            (*pack_g, *price) = (Some(1000.0), Some("0.00".to_owned()));
        };
        shop.developer.iter_mut().for_each(|one| free(&mut one.pack_g, &mut one.price));
        shop.lightener.iter_mut().for_each(|one| free(&mut one.pack_g, &mut one.price));
        shop.shade.iter_mut().for_each(|one| free(&mut one.pack_g, &mut one.price));
        let terms = shop.terms.as_mut().unwrap();
        (terms.on_costs_percent, terms.productive_percent) = (Some(0.0), Some(100.0));
        terms.overhead_per_h = Some("0.00".to_owned());
        terms.tax_percent = None;
        plan(&file).unwrap()
    };
    let pays = whole("80.00");
    assert_eq!(pays.money.as_ref().unwrap().left_out, []);
    assert_eq!(texts(&pays, "list price").trim(), "partial is 90.00 EUR on the list, and it costs 26.00 EUR");
    assert_eq!(verdicts(&pays, "list price"), [Passed]);
    // 16.00 and 10.00 are the 26.00 that it costs: nothing is lost. 42.00 and 10.00 are the 52.00 that the terms ask for.
    for (price, want) in [("15.99", Warning), ("16.00", Note), ("41.99", Note), ("42.00", Passed)] {
        assert_eq!(verdicts(&whole(price), "list price"), [want], "{price}");
    }
    let lost = whole("20.00");
    assert_eq!(
        texts(&lost, "list price").trim(),
        "partial is 30.00 EUR on the list; by its costs and the terms of the shop it would be 52.00 EUR"
    );
}

/// 22.00 and 10.00 are 32.00, of which a sixth or 5.33 is tax and 2.5 % or 0.80 the terminal's: 26.67 are kept of it, and 26.00 with
/// that fee are 26.80. So 0.13 are lost, 0.487439 % of what is kept, whatever margin the shop asks for, or none; without
/// the fee 0.67 would be left.
#[rstest]
fn the_card_fee_of_the_list_is_a_cost(#[values(Some(50.0), None)] margin_percent: Option<f64>) {
    let mut file = priced_file("22.00");
    shop(&mut file).terms.get_or_insert_default().margin_percent = margin_percent;
    assert!(!verdicts(&plan(&file).unwrap(), "list price").contains(&Warning));
    shop(&mut file).terms.get_or_insert_default().card_percent = Some(2.5);
    let plan = plan(&file).unwrap();
    assert_eq!(plan.booking.card_fee.unwrap().to_string(), "0.80 EUR");
    assert_eq!(
        (verdicts(&plan, "list price"), texts(&plan, "list price").trim()),
        (
            vec![Warning],
            "partial is 32.00 EUR on the list, 26.67 EUR without tax: less than the 26.80 EUR that it costs with the card fee \
             of 0.80 EUR"
        )
    );
    let sheet = plan.to_string().split_whitespace().collect::<Vec<_>>().join(" ");
    let left =
        "26.67 EUR of it without tax; card fee 0.80 EUR, a cost too; it leaves -0.13 EUR: margin -0.49 % of the price";
    assert!(sheet.contains(&format!("THE GUEST PAYS 32.00 EUR, by the price list {left}")), "{sheet}");
    let trail = plan.trail();
    let of = |what: &str| trail.iter().find(|one| one.what == what).unwrap();
    assert_eq!(of("margin that comes out").value, "-0.487439");
    let rate = of("net price by the price list").inputs.iter().find(|input| input.what == "tax");
    assert_eq!(rate.map(|rate| rate.value.as_str()), Some("20"));
    // What is kept of it counts the same.
    let record = keep(&plan, &replay(&[]));
    assert_eq!((record.cost.as_deref(), record.price.as_deref()), (Some("26.80"), Some("26.67")));
}

/// Without a list the fee is that of the price by the costs: 26.00 / (1 - 0.5 - 0.025 x 1.2) are 55.32, with 11.06 of tax 66.38, of
/// which 2.5 % are 1.66.
#[test]
fn a_record_counts_the_card_fee_of_its_own_price() {
    let mut file = priced_file("80.00");
    shop(&mut file).class_price.clear();
    shop(&mut file).terms.get_or_insert_default().card_percent = Some(2.5);
    let record = keep(&plan(&file).unwrap(), &replay(&[]));
    assert_eq!((record.cost.as_deref(), record.price.as_deref()), (Some("27.66"), Some("55.32")));
}

/// 52 min at 31.01 an hour are 26.875 and a third of a hundredth: what is said of rounding holds for the cost too.
#[rstest]
#[case(None, "26.88 EUR")]
#[case(Some(Rounding::ToZero), "26.87 EUR")]
fn the_cost_is_rounded_as_the_shop_rounds(#[case] rounding: Option<Rounding>, #[case] want: &str) {
    let mut file = priced_file("80.00");
    let terms = shop(&mut file).terms.get_or_insert_default();
    (terms.wage_per_h, terms.rounding) = (Some("31.01".to_owned()), rounding);
    assert_eq!(plan(&file).unwrap().money.unwrap().cost.total().to_string(), want);
}

/// Labour, chair, price by the hour and booking count the same minutes: 85 in the chair at 12.00 an hour are 17.00, 52 of hands at
/// 30.00 are 26.00, and 60.00 an hour over these 43.00 are 128.00. Where the day counts what nobody stated, that is assumed.
#[test]
fn one_clock_for_cost_price_and_booking() {
    let mut file = priced_file("80.00");
    let terms = shop(&mut file).terms.get_or_insert_default();
    (terms.margin_percent, terms.per_chair_h) = (None, Some("60.00".to_owned()));
    terms.overhead_per_h = Some("12.00".to_owned());
    let planned = plan(&file).unwrap();
    let money = planned.money.as_ref().unwrap();
    let line = |kind: CostKind| money.cost.lines().iter().find(|line| line.kind == kind).unwrap().amount.to_string();
    assert_eq!([line(CostKind::Labour), line(CostKind::Overhead)], ["26.00 EUR", "17.00 EUR"]);
    assert_eq!(money.price.as_ref().unwrap().price.to_string(), "128.00 EUR");
    let told = "85 min in the chair and 52 min of hands, by the day in its best order";
    for page in [planned.to_string(), foilwork::sheet::bench_page(&planned)] {
        assert!(page.split_whitespace().collect::<Vec<_>>().join(" ").contains(told), "{page}");
    }
    file.salon.mix_bowl_min = None;
    assert_eq!(plan(&file).unwrap().chair.basis, Basis::Assumed);
}

/// A test of the skin moves no minute, so it neither adds nor lifts what the list says of the price.
#[test]
fn other_results_of_a_test_leave_the_price_alone() {
    let found = consult(&priced_file("1.00"), &Evidence::default()).unwrap();
    for effect in &found.tests {
        let of_price = effect.adds.iter().chain(&effect.lifts).any(|finding| finding.rule == Rule::ListPrice);
        assert!(!of_price, "{effect:?}");
    }
}

/// The guest signs one price, whichever page it is on: 150.00 on the list and 10.00 for 20 min beyond at 30.00 an hour, though
/// by the costs it would be 62.40.
#[test]
fn both_pages_to_sign_say_the_price_of_the_list() {
    let file = priced_file("150.00");
    let (plan, found) = (plan(&file).unwrap(), consult(&file, &Evidence::default()).unwrap());
    assert_eq!(plan.money.as_ref().unwrap().taxed.unwrap().gross.to_string(), "62.40 EUR");
    let guest = guest_page(&plan);
    assert!(
        guest.contains("160.00 EUR") && guest.contains("by our price list, for what is planned here, tax included")
    );
    assert!(!guest.contains("62.40") && !guest.contains("as the hair takes"));
    let agreement = agreement_page(&found);
    assert!(agreement.contains("160.00 EUR for this visit"), "{agreement}");
    assert!(agreement.contains(", tax included.") && !agreement.contains("62.40"), "{agreement}");
}

/// A shop that says nothing for the class has no price for it, and none is made up.
#[test]
fn without_a_price_for_the_class_it_is_unknown() {
    for plan in [
        changed(fine(), |_| ()),
        changed(fine(), |file| {
            shop(file).currency = Some("EUR".to_owned());
            shop(file).class_price = vec![listed(ServiceClass::Full, "200.00", None, None)];
        }),
    ] {
        assert_eq!((plan.booking.price, plan.booking.net), (None, None));
        let flat: String = plan.to_string().split_whitespace().collect::<Vec<_>>().join(" ");
        assert!(flat.contains("price unknown, the shop states no `class_price` for partial"), "{flat}");
        assert!(verdicts(&plan, "list price").is_empty());
    }
}

#[rstest]
#[case::twice(
    "[[class_price]]\nclass = \"full\"\nprice = \"1.00\"\n[[class_price]]\nclass = \"full\"\nprice = \"2.00\"",
    "class_price[2].class: \"full\" is already taken"
)]
#[case::no_included(
    "[[class_price]]\nclass = \"full\"\nprice = \"1.00\"\nper_extra_h = \"2.00\"",
    "class_price[1].included_min: missing: say after how many minutes an hour more is paid for"
)]
#[case::decimals("[[class_price]]\nclass = \"full\"\nprice = \"1.005\"", "class_price[1].price: ")]
#[case::class("[[class_price]]\nclass = \"whole\"\nprice = \"1.00\"", "class_price[1].class: ")]
fn a_list_that_cannot_be_is_refused(#[case] list: &str, #[case] want: &str) {
    let refused = parse_shop(&format!("currency = \"EUR\"\n{list}"), Format::Toml).unwrap_err().to_string();
    assert!(refused.contains(want), "{refused}");
    let missing =
        parse_shop("[[class_price]]\nclass = \"full\"\nprice = \"1.00\"", Format::Toml).unwrap_err().to_string();
    assert!(missing.contains("currency: missing: there are prices"), "{missing}");
}

/// The price list is what the guest reads, with tax in it.
#[test]
fn the_guest_reads_the_list() {
    let page = foilwork::sheet::guest_page(&priced("80.00"));
    assert!(page.contains("90.00 EUR") && page.contains("tax included"));
}

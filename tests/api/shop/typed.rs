//! The shop in quantities.

use foilwork::{
    colour::Hue,
    quantity::{Mass, MassFraction, Temperature},
    reader::Format,
    shop::{CountsFrom, Shop, parse_shop},
};
use rust_decimal::Decimal;

fn example() -> Shop {
    let text = include_str!("../../../examples/juniper_and_tide.toml");
    Shop::new(&parse_shop(text, Format::Toml).unwrap()).unwrap()
}

/// The figures of the file, read by eye.
#[test]
fn the_demo_shop_is_read() {
    let shop = example();
    assert_eq!((shop.bottles.len(), shop.lighteners.len(), shop.shades.len()), (4, 2, 12));
    let mist = shop.shade("J9-mist").unwrap();
    assert_eq!((mist.shade.level().number(), mist.shade.tone().main_hue()), (9.0, Some(Hue::Violet)));
    assert_eq!(mist.limits.strongest, MassFraction::from_ww_percent(3.0).ok());
    let pack = mist.facts.pack_price.unwrap();
    assert_eq!(pack.to_string(), "8.40 EUR for 60 g");
    // 8.40 for 60 g are 0.14 for a gram.
    assert_eq!(mist.facts.price_per_kg(), Some(Decimal::from(140)));
    assert_eq!(shop.lighteners[0].limits.counts_from, Some(CountsFrom::FirstStrand));
    assert_eq!(shop.bottles[2].strength(Temperature::REFERENCE).unwrap().best().ww_percent(), 12.0);
    assert_eq!(shop.bottles[2].facts.in_hand, Mass::from_g(900.0).ok());
}

/// A declared composition keeps its bounds and its number.
#[test]
fn a_declared_composition_is_read() {
    let text = "[[lightener]]\nname = \"powder\"\nratio = \"1:2\"\ndeclared_in_full = true\ncomposition = [{ substance = \
                \"Potassium persulfate\", cas = \"7727-21-1\", ww_percent = { low = 40, best = 45, high = 50 } }]";
    let shop = Shop::new(&parse_shop(text, Format::Toml).unwrap()).unwrap();
    let declared = &shop.lighteners[0].facts.declared;
    assert!(declared.fully_declared && declared.name == "powder");
    let persulfate = &declared.ingredients[0];
    assert_eq!(persulfate.cas.map(|cas| cas.to_string()).as_deref(), Some("7727-21-1"));
    let percent = persulfate.level.to_array().map(MassFraction::ww_percent);
    assert_eq!(percent, [40.0, 45.0, 50.0]);
}

/// By hand: 17.50 an hour, 20 % on-costs, half of the hours worked: 17.50 x 1.2 x 2 = 42.00 for an hour of hands.
#[test]
fn the_terms_are_the_same_by_share_and_by_hours() {
    let cost = |terms: &str| {
        let text = format!("currency = \"EUR\"\n[terms]\nwage_per_h = \"17.50\"\non_costs_percent = 20\n{terms}");
        let shop = Shop::new(&parse_shop(&text, Format::Toml).unwrap()).unwrap();
        let hour = foilwork::quantity::Duration::from_h(1.0).unwrap();
        shop.terms.labour.unwrap().cost(hour, shop.terms.rounding).unwrap().to_string()
    };
    assert_eq!(cost("productive_percent = 50"), "42.00 EUR");
    assert_eq!(cost("paid_h = 40\nproductive_h = 20"), "42.00 EUR");
}

#[test]
fn what_a_costing_needs_is_named_all_at_once() {
    let problems = Shop::default().business().unwrap_err();
    let fields: Vec<&str> = problems.0.iter().map(|problem| problem.field.as_str()).collect();
    assert_eq!(fields, ["currency", "terms.wage_per_h", "terms.overhead_per_h", "terms.margin_percent"]);
}

/// A shop put together in code is held to the same rules.
#[test]
fn a_shop_in_code_is_checked_like_a_text() {
    let mut file = parse_shop("[[diluent]]\nname = \"base\"", Format::Toml).unwrap();
    file.diluent[0].pack_g = Some(-3.0);
    file.diluent[0].name = " base".to_owned();
    let problems = Shop::new(&file).unwrap_err().to_string();
    assert_eq!(
        problems,
        "diluent[1].name: \" base\" begins or ends with a blank: leave it out\n\
         diluent[1].pack_g: -3 g is out of range: give 1 to 100000 g"
    );
}

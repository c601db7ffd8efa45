//! A strength that is asked for, out of the bottles of the shelf; and what stands to what in a bowl.

use super::base::{changed, near, only_colour, only_lightener, shop, texts, verdicts};
use foilwork::{
    finding::Verdict::{Stop, Warning},
    service::{Plan, ServiceFile, plan},
    shop::{StrengthBasis, shape::DeveloperEntry},
    source::Basis,
};
use rstest::rstest;

/// 30 g of mix in 1:2: 20 g of developer, from these bottles, priced by the kilogram or not.
fn asked(strength: &str, bottles: &[(f64, Option<&str>)]) -> ServiceFile {
    let mut file = only_lightener();
    (file.section[0].developer, file.section[0].strength) = (None, Some(strength.to_owned()));
    file.section[0].mix_g = Some(30.0);
    let bottle = |(percent, price): &(f64, Option<&str>)| DeveloperEntry {
        name: format!("of {percent}"),
        strength: format!("{percent} % w/w"),
        strength_basis: StrengthBasis::Measured,
        pack_g: price.map(|_| 1000.0),
        price: price.map(str::to_owned),
        ..DeveloperEntry::default()
    };
    shop(&mut file).developer = bottles.iter().map(bottle).collect();
    if bottles.iter().any(|(_, price)| price.is_some()) {
        shop(&mut file).currency = Some("EUR".to_owned());
    }
    file
}

/// The bottles that go in, in their order, with their exact grams.
fn bowl(plan: &Plan) -> Vec<(String, f64)> {
    let parts = plan.mixes[0].bowls[0].parts.iter().filter(|part| part.product.starts_with("of "));
    parts.map(|part| (part.product.clone(), part.exact.g())).collect()
}

/// The two bottles next to 7 % are 6 % and 9 %: two parts and one, so 13.33 g and 6.67 g, the strongest first. A bottle that has it
/// goes in alone. With prices it is the cheapest: 12 % at 3.00 and 3 % at 1.00 make 7 % of 4/9 and 5/9 for 1.89 a kilogram, 6 % and
/// 9 % for 8.00 each are dear.
#[rstest]
#[case::next_above_and_below("7 % w/w", &[(12.0, None), (3.0, None), (9.0, None), (6.0, None)], &[("of 9", 20.0 / 3.0), ("of 6", 40.0 / 3.0)])]
#[case::one_has_it("6 % w/w", &[(12.0, None), (3.0, None), (9.0, None), (6.0, None)], &[("of 6", 20.0)])]
#[case::the_strongest("12 % w/w", &[(12.0, None), (3.0, None)], &[("of 12", 20.0)])]
#[case::the_weakest("3 % w/w", &[(12.0, None), (3.0, None)], &[("of 3", 20.0)])]
#[case::the_cheapest(
    "7 % w/w",
    &[(12.0, Some("3.00")), (3.0, Some("1.00")), (9.0, Some("8.00")), (6.0, Some("8.00"))],
    &[("of 12", 80.0 / 9.0), ("of 3", 100.0 / 9.0)]
)]
#[case::not_all_have_a_price(
    "7 % w/w",
    &[(12.0, Some("3.00")), (3.0, Some("1.00")), (9.0, None), (6.0, Some("8.00"))],
    &[("of 9", 20.0 / 3.0), ("of 6", 40.0 / 3.0)]
)]
fn a_strength_is_blended(
    #[case] strength: &str,
    #[case] bottles: &[(f64, Option<&str>)],
    #[case] want: &[(&str, f64)],
) {
    let plan = plan(&asked(strength, bottles)).unwrap();
    let got = bowl(&plan);
    assert_eq!(
        got.iter().map(|one| one.0.as_str()).collect::<Vec<_>>(),
        want.iter().map(|one| one.0).collect::<Vec<_>>()
    );
    for ((name, got), (_, want)) in got.iter().zip(want) {
        assert!((got - want).abs() < 1e-6, "{name}: {got} where {want} is wanted");
    }
    let whole: f64 = strength.split(' ').next().unwrap().parse().unwrap();
    near(plan.mixes[0].developer.best().ww_percent(), whole, 0.05);
    // Bottles that were measured, and a sum.
    assert_eq!(plan.mixes[0].strength_basis, Basis::Measured);
}

#[rstest]
#[case("7 % w/w", &[6.0], "cannot blend 7 % w/w: the shelf has nothing but 6.00 % w/w; change the strength, or add a developer or a diluent")]
#[case("13 % w/w", &[6.0, 12.0, 3.0], "cannot blend 13 % w/w: the shelf reaches from 3.00 % w/w to 12.00 % w/w; change the strength")]
#[case("2.9 % w/w", &[6.0, 12.0, 3.0], "cannot blend 2.9 % w/w: the shelf reaches from 3.00 % w/w to 12.00 % w/w; change the strength")]
fn what_the_shelf_does_not_reach_is_told(#[case] strength: &str, #[case] bottles: &[f64], #[case] want: &str) {
    let bottles: Vec<(f64, Option<&str>)> = bottles.iter().map(|percent| (*percent, None)).collect();
    let told = plan(&asked(strength, &bottles)).unwrap_err().to_string();
    assert!(told.contains(want), "{told}");
}

/// What is put on the hair is not more than its developer: one to one is.
#[rstest]
#[case("1:1", None)]
#[case("1:0.99", Some("more colour than developer: "))]
fn no_more_colour_than_developer(#[case] ratio: &str, #[case] want: Option<&str>) {
    let plan = changed(only_colour(), |file| file.section[0].ratio = Some(ratio.to_owned()));
    let said = texts(&plan, "ratio");
    match want {
        Some(want) => {
            assert_eq!(verdicts(&plan, "ratio"), [Warning]);
            assert!(said.contains(want) && said.contains("top: "), "{said}");
        }
        None => assert!(!verdicts(&plan, "ratio").contains(&Warning), "{said}"),
    }
}

/// The developer is 6 % w/w, or a label of 20 volumes, which is called 6 % and by no reading more than a sixth above it.
#[rstest]
#[case("6 % w/w", 6.0, false)]
#[case("6 % w/w", 5.99, true)]
#[case("20 vol label", 5.9, true)]
#[case("20 vol label", 7.0, false)]
fn no_stronger_than_the_product_takes(#[case] strength: &str, #[case] most: f64, #[case] stops: bool) {
    let plan = changed(only_lightener(), |file| {
        let shop = shop(file);
        shop.lightener[0].strongest_developer_ww_percent = Some(most);
        shop.developer[0].strength = strength.to_owned();
    });
    let said = texts(&plan, "developer");
    assert_eq!(verdicts(&plan, "developer").contains(&Stop), stops, "{said}");
    assert_eq!(said.contains("at most: use a weaker one"), stops, "{said}");
    assert_eq!(plan.blocked, stops);
}

//! Cards word for word, names, doses, and the edges of what is read. By hand.

use crate::api::common::near;
use foilwork::{
    mix::{
        Addition, BowlRequest, Card, CardRequest, Cas, Composition, Dose, Form, Hazard, Ingredient, Pace, Product,
        Ratio, Recipe, RecipeAmount, Unit, bowls, handling_advice, minimum_bowl,
    },
    quantity::{Duration, Mass, MassFraction, Share},
    scale::{weigh, weigh_in_hand},
    source::Interval,
};
use rstest::rstest;
use rust_decimal::Decimal;

fn g(value: f64) -> Mass {
    Mass::from_g(value).unwrap()
}

fn span([low, best, high]: [f64; 3]) -> Interval<MassFraction> {
    let [low, best, high] = [low, best, high].map(|value| MassFraction::from_ww_percent(value).unwrap());
    Interval::new(low, best, high).unwrap()
}

fn card(recipe: &str, strengths: &[Option<[f64; 3]>], division: f64) -> String {
    let recipe: Recipe = recipe.parse().unwrap();
    let strengths: Vec<_> = strengths.iter().map(|strength| strength.map(span)).collect();
    let request = CardRequest {
        who: "chair 1",
        what: "roots",
        recipe: &recipe,
        strengths: &strengths,
        division: g(division),
        mixed_at: jiff::civil::date(2026, 3, 1).at(9, 5, 0, 0),
        working_life: Duration::from_min(30.5).unwrap(),
    };
    Card::new(&request).unwrap().to_string()
}

/// 30 g and 60 g on a scale of 1 g move nothing; 60.4 g become 60, and 30 g are 0.44 % more of the smaller bowl. A developer from 5.4 to
/// 6.6 % is 3.6 to 4.4 % in two thirds of the bowl; of 6 to 6.006 % nothing would be seen in two decimals, of 6 to 6.015 % it would.
#[rstest]
#[case::exact("30 g J7 + 60 g 6%", &[Some([0.0; 3]), Some([6.0; 3])], 1.0, "
  J7          30 g
  6%          60 g
  total       90 g
peroxide on the hair 4.00 % w/w
")]
#[case::between("30 g J7 + 60 g 6%", &[Some([0.0; 3]), Some([5.4, 6.0, 6.6])], 1.0, "
  J7          30 g
  6%          60 g
  total       90 g
peroxide on the hair 3.60 to 4.40 % w/w
")]
#[case::hardly_between("30 g J7 + 60 g 6%", &[Some([0.0; 3]), Some([6.0, 6.0, 6.006])], 1.0, "
  J7          30 g
  6%          60 g
  total       90 g
peroxide on the hair 4.00 % w/w
")]
#[case::just_between("30 g J7 + 60 g 6%", &[Some([0.0; 3]), Some([6.0, 6.0, 6.015])], 1.0, "
  J7          30 g
  6%          60 g
  total       90 g
peroxide on the hair 4.00 to 4.01 % w/w
")]
#[case::not_stated("30 g J7 + 60.4 g developer", &[Some([0.0; 3])], 1.0, "
  J7              30 g
  developer       60 g
  total           90 g
peroxide on the hair unknown (not stated: developer)
rounding to the scale moves a part by up to 0.4 %
")]
#[case::both_not_stated("30 g J7 + 60 g 6%", &[], 1.0, "
  J7          30 g
  6%          60 g
  total       90 g
peroxide on the hair unknown (not stated: J7, 6%)
")]
fn a_card_says_strength_and_rounding(
    #[case] recipe: &str,
    #[case] strengths: &[Option<[f64; 3]>],
    #[case] division: f64,
    #[case] want: &str,
) {
    assert_eq!(
        card(recipe, strengths, division),
        format!("chair 1: roots{want}mixed 2026-03-01 09:05, use by 2026-03-01 09:35")
    );
}

/// Every point that is about nothing in particular is for every bowl; the others for the bowls that hold what they are about.
#[test]
fn advice_is_for_what_is_in_the_bowl() {
    let of =
        |hazards: &[Hazard]| handling_advice(hazards).iter().filter_map(|point| point.reminder).collect::<Vec<_>>();
    let always = [
        "gloves",
        "no longer than the product allows",
        "burning, swelling, faintness: stop and rinse; trouble breathing: call for medical help",
    ];
    assert_eq!(of(&[]), always);
    let [gloves, longer, burning] = always;
    let (metal, closed, eyes) = ("no bare metal", "never close a mixed bowl", "in the eyes: water at once");
    assert_eq!(of(&[Hazard::Peroxide]), [metal, closed, gloves, eyes, longer, burning]);
    let (low, air, hot) = ("powder low and slow", "moving air", "a foil hot or swelling: open and rinse");
    assert_eq!(of(&[Hazard::Persulfate]), [metal, low, air, closed, gloves, longer, hot, burning]);
    assert_eq!(of(&[Hazard::Ammonia]), [air, gloves, longer, burning]);
    assert_eq!(of(&[Hazard::Resorcinol]), [gloves, eyes, longer, burning]);
    for (hazards, count) in
        [(&[][..], 10), (&[Hazard::OxidativeDye], 14), (&[Hazard::Unknown], 14), (&[Hazard::Resorcinol], 12)]
    {
        assert_eq!(handling_advice(hazards).len(), count, "{hazards:?}");
    }
}

fn named(name: &str, level: f64) -> Ingredient {
    Ingredient::named(name, span([level; 3]))
}

/// A substance is one by its number, or by its name where it has none, in one form; its groups are those that any product states. What
/// two products leave open adds up, and what is in at 0 % is no hazard.
#[test]
fn one_substance_is_one_of_one_form() {
    let dye = || named("dye", 10.0).with_cas("95-70-5".parse().unwrap());
    let bowl = Composition::mix(vec![
        (g(40.0), Product::declared("one", vec![dye().in_group("a"), named("oil", 5.0), named("resorcinol", 0.0)])),
        (
            g(30.0),
            Product::declared(
                "two",
                vec![dye().in_group("b").in_group("a"), dye().stated_as(Form::FreeBase), named("Oil", 10.0)],
            ),
        ),
        (g(10.0), Product::unknown("three")),
        (g(20.0), Product::unknown("four")),
    ])
    .unwrap();
    let seen: Vec<_> = bowl
        .constituents()
        .iter()
        .map(|one| {
            (
                one.name.as_str(),
                one.stated_as,
                one.groups.join(" "),
                (one.level.best().ww_percent() * 1e9).round() / 1e9,
            )
        })
        .collect();
    let free = Some(Form::FreeBase);
    let want =
        [("dye", None, "a b", 7.0), ("oil", None, "", 5.0), ("resorcinol", None, "", 0.0), ("dye", free, "", 3.0)];
    assert_eq!(seen, want.map(|(name, form, groups, level)| (name, form, groups.to_owned(), level)));
    for one in bowl.constituents() {
        near(one.undeclared_at_most.ww_percent(), 30.0, 1e-9);
        assert_eq!(one.undeclared_in, ["three", "four"]);
    }
    near(bowl.undeclared_at_most().ww_percent(), 30.0, 1e-9);
    assert_eq!(bowl.hazards(), [Hazard::OxidativeDye, Hazard::Unknown]);
    let peroxide = Composition::mix(vec![(
        g(1.0),
        Product::declared("6%", vec![named("aqua", 94.0), named("hydrogen peroxide", 0.0)]),
    )]);
    assert!(!peroxide.unwrap().hazards().contains(&Hazard::Peroxide));
}

/// A strength behind a name, a remark, a word for water and the spelling of sulfur tell no other substance; a number in a name does.
#[rstest]
#[case("Hydrogen peroxide 6.5 %", Some("7722-84-1"))]
#[case("hydrogen peroxide 12,5%", Some("7722-84-1"))]
#[case("Hydrogen Peroxide, aqueous solution (stabilised)", Some("7722-84-1"))]
#[case("30% hydrogen peroxide", Some("7722-84-1"))]
#[case("hydrogen-peroxide", Some("7722-84-1"))]
#[case("hydrogen peroxide 6", None)]
#[case("hydrogen", None)]
#[case("(hydrogen peroxide)", Some("7722-84-1"))]
#[case("1,3-dihydroxybenzene", Some("108-46-3"))]
#[case("1,4-dihydroxybenzene 2 %", Some("123-31-9"))]
#[case("Potassium Persulphate", Some("7727-21-1"))]
fn a_name_is_read_past_its_remarks(#[case] name: &str, #[case] cas: Option<&str>) {
    assert_eq!(Cas::of_name(name).map(|cas| cas.to_string()).as_deref(), cas, "{name}");
}

/// As many digits as twelve, wherever the point stands, and a point between digits.
#[rstest]
#[case("1:123456789012", None)]
#[case("1:0.12345678901", None)]
#[case("1:1234567890123", Some((3, "at most 12 digits")))]
#[case("1:0.123456789012", Some((3, "at most 12 digits")))]
#[case("1:.5", Some((3, "a number above 0 such as 1 or 1.5")))]
#[case("1:5.", Some((3, "a number above 0 such as 1 or 1.5")))]
#[case("1:0.0", Some((3, "a number above 0 such as 1 or 1.5")))]
fn a_number_of_a_ratio_is_plain(#[case] text: &str, #[case] refused: Option<(usize, &str)>) {
    let read = text.parse::<Ratio>();
    assert_eq!(read.as_ref().err().map(|error| (error.position(), error.expected())), refused);
    if let Err(error) = read {
        assert_eq!((error.what(), error.text()), ("ratio", text));
    }
}

#[rstest]
#[case("30 g J7-mist +", 15, "a number above 0 such as 1 or 1.5")]
#[case("30 oz J7-mist", 4, "US fl oz or UK fl oz (they differ by 4 %), g or mL")]
#[case("30 ounces J7-mist", 4, "a unit: g, mL, US fl oz or UK fl oz")]
#[case("30 g J7-mist + 15 g", 20, "a blank and a product name after the unit")]
fn a_recipe_says_where_it_breaks_off(#[case] text: &str, #[case] position: usize, #[case] expected: &str) {
    let error = text.parse::<Recipe>().unwrap_err();
    assert_eq!((error.what(), error.position(), error.expected()), ("recipe", position, expected), "{error}");
}

/// Of a long text sixty characters before the place are shown and twenty from it on; of a place before that all that stands before it.
#[test]
fn a_long_text_is_pointed_into() {
    let name = "n".repeat(150);
    let error = format!("1 g {name} + x g {name}").parse::<Recipe>().unwrap_err();
    // Four, the name and three blanks and a sign before it.
    assert_eq!(error.position(), 158);
    let pointed = error.pointer();
    let (line, mark) = pointed.split_once('\n').unwrap();
    assert_eq!((line.chars().count(), line.chars().nth(60), mark.chars().count()), (80, Some('x'), 61));
    assert!(line.starts_with("nnn") && line.ends_with("nnn") && mark.trim() == "^");
    let error = format!("x g {name}").parse::<Recipe>().unwrap_err();
    assert_eq!(error.pointer(), format!("x g {}\n^", "n".repeat(76)));
}

/// The least bowl by trying every one from one division on: those that a scale weighs within the tolerance.
#[test]
fn the_first_bowl_is_the_first_that_fits() {
    for text in ["1:1", "1:1.5", "1:2", "2:3:5", "1:7", "1:1:1:20"] {
        let ratio: Ratio = text.parse().unwrap();
        for tolerance in [1.0, 3.0, 10.0, 30.0, 50.0, 99.0] {
            let found = minimum_bowl(&ratio, g(1.0), Share::from_percent(tolerance).unwrap()).unwrap();
            let first = (1..).map(f64::from).find(|total| {
                let bowl = weigh(&ratio.split_total(g(*total)).unwrap(), g(1.0)).unwrap();
                bowl.worst_ratio_error_percent() <= tolerance
            });
            assert_eq!(
                Some(found.first.g()),
                first.map(|first| first.min(found.always_from.g())),
                "{text} at {tolerance} %"
            );
        }
    }
}

/// 76 g on the hair from each of two bowls of 80 g, a twentieth is left: of 50 g of developer in each 100 g are used and 5 lost.
#[test]
fn leftovers_add_up_over_the_bowls() {
    let request =
        BowlRequest::new(g(152.0), g(80.0), Duration::from_min(60.0).unwrap(), Pace::from_g_per_min(4.0).unwrap());
    let plan = bowls(&request.residue(g(4.0))).unwrap();
    let base: Recipe = "3 g lightener + 5 g 9%".parse().unwrap();
    let left = plan.leftovers(&base, &[]).unwrap();
    let of: Vec<_> = left
        .iter()
        .map(|one| (one.product.as_str(), (one.used.g() * 1e6).round() / 1e6, (one.wasted.g() * 1e6).round() / 1e6))
        .collect();
    assert_eq!(of, [("lightener", 60.0, 3.0), ("9%", 100.0, 5.0)]);
    let bond = [Addition { product: "bond".into(), dose: Dose::PerBowl(g(8.0)) }];
    let dosed = plan.recipes(&base, &bond).unwrap();
    assert_eq!(dosed.iter().map(ToString::to_string).collect::<Vec<_>>(), ["27 g lightener + 45 g 9% + 8 g bond"; 2]);
}

#[test]
fn amounts_that_cannot_be_scaled_say_why() {
    let grams = |value: &str| RecipeAmount { value: value.parse().unwrap(), unit: Unit::Gram };
    let recipe: Recipe = "0.000001 g J7 + 30 g 6%".parse().unwrap();
    let said = |error: foilwork::mix::RecipeError| error.to_string();
    assert_eq!(said(recipe.packs_needed("6%", grams("0")).unwrap_err()), "cannot scale by or to 0: must be above 0");
    assert_eq!(recipe.packs_needed("6%", grams("10")).unwrap(), 3);
    assert_eq!(recipe.packs_needed("6%", grams("10.1")).unwrap(), 3);
    // A millionth of a gram times 10^-28 is less than 28 digits hold.
    let tiny = recipe.times(Decimal::new(1, 28)).unwrap_err();
    assert_eq!(said(tiny), "the numbers are too large or too fine for 28 digits: use fewer digits");
    let poured: Recipe = "1 mL 6%".parse().unwrap();
    let mixed = "the recipe mixes g and mL: convert all parts to one unit first (a density is needed)";
    assert_eq!(said(recipe.combined(&poured).unwrap_err()), mixed);
}

/// A part of nothing stays nothing when the others are moved to make up the total: 4.2 g are 4 on a scale of 1 g, and three times 1.4 are
/// three. A part that is wanted and not there names the next finer scale.
#[test]
fn a_part_of_nothing_is_given_nothing() {
    let bowl = weigh(&[g(0.0), g(1.4), g(1.4), g(1.4)], g(1.0)).unwrap();
    assert_eq!((bowl.parts()[0].weighed, bowl.parts()[0].ratio_error_percent(), bowl.total()), (g(0.0), 0.0, g(4.0)));
    assert!(!bowl.parts()[0].vanishes());
    let short = weigh_in_hand(&[(g(1.0), Some(g(0.3))), (g(20.0), None)], g(0.5)).unwrap();
    let said = short.all_shown().unwrap_err().to_string();
    assert!(said.contains("use a scale of 0.2 g or finer"), "{said}");
}

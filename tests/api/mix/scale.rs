//! Scaling a recipe and putting it on the scale.

use foilwork::quantity::{Density, Mass, MassFraction};
use foilwork::source::{Interval, Sourced};
use foilwork::{
    mix::{Recipe, RecipeAmount, Unit},
    scale::{Division, WeighError, weigh, weigh_in_hand},
};
use rstest::rstest;

type Outcome = Result<(), Box<dyn std::error::Error>>;

fn g(value: f64) -> Mass {
    Mass::from_g(value).unwrap()
}

fn exact(percent: f64) -> Interval<MassFraction> {
    Interval::exact(MassFraction::from_ww_percent(percent).unwrap())
}

fn grams(text: &str) -> Result<RecipeAmount, rust_decimal::Error> {
    Ok(RecipeAmount { value: text.parse()?, unit: Unit::Gram })
}

#[test]
fn a_recipe_scales_by_total_part_packs_and_factor() -> Outcome {
    let recipe: Recipe = "30 g J7-mist + 15 g J8-oat + 67.5 g 6%".parse()?;
    assert_eq!(recipe.total()?.to_string(), "112.5 g");
    assert_eq!(recipe.ratio()?.lowest_terms(), [4, 2, 9]);
    assert_eq!(recipe.to_total(grams("225")?)?.to_string(), "60 g J7-mist + 30 g J8-oat + 135 g 6%");
    assert_eq!(recipe.to_part("J8-oat", grams("20")?)?.to_string(), "40 g J7-mist + 20 g J8-oat + 90 g 6%");
    assert_eq!(recipe.to_packs("J7-mist", grams("60")?, 2)?.to_string(), "120 g J7-mist + 60 g J8-oat + 270 g 6%");
    assert_eq!(recipe.times("0.5".parse()?)?.to_string(), "15 g J7-mist + 7.5 g J8-oat + 33.75 g 6%");
    assert_eq!(recipe.packs_needed("6%", grams("60")?)?, 2);
    let more: Recipe = "10 g 6% + 5 g oil".parse()?;
    assert_eq!(recipe.combined(&more)?.to_string(), "30 g J7-mist + 15 g J8-oat + 77.5 g 6% + 5 g oil");
    let bowls = recipe.split(&"2:1".parse()?)?;
    assert_eq!(bowls[0].to_string(), "20 g J7-mist + 10 g J8-oat + 45 g 6%");
    assert_eq!(bowls[1].to_string(), "10 g J7-mist + 5 g J8-oat + 22.5 g 6%");
    assert_eq!(format!("{:.1}", recipe.times("0.333".parse()?)?), "10.0 g J7-mist + 5.0 g J8-oat + 22.5 g 6%");
    Ok(())
}

#[test]
fn weighing_reports_what_it_costs() -> Outcome {
    let parts = [g(30.0), g(15.0), g(67.5)];
    let bowl = weigh(&parts, g(1.0))?;
    let shown: Vec<f64> = bowl.parts().iter().map(|p| p.weighed.g()).collect();
    // 112.5 rounds to the even 112; 67 of it is 0.3 % under, the others 0.45 % over.
    assert_eq!((shown, bowl.total().g()), (vec![30.0, 15.0, 67.0], 112.0));
    assert!((bowl.worst_ratio_error_percent() - 100.0 * (112.5 / 112.0 - 1.0)).abs() < 1e-9);
    let shift = bowl.strength_shift(&[exact(0.0), exact(0.0), exact(6.0)])?;
    let json = serde_json::to_value(&bowl)?;
    assert_eq!((json["parts"][2]["weighed_g"].as_f64(), json["total_g"].as_f64()), (Some(67.0), Some(112.0)));
    assert!((shift.percentage_points() - (6.0 * 67.0 / 112.0 - 6.0 * 67.5 / 112.5)).abs() < 1e-12);
    Ok(())
}

#[test]
fn a_part_below_one_division_is_reported() -> Outcome {
    let bowl = weigh(&[g(60.0), g(0.3)], g(1.0))?;
    assert_eq!(bowl.vanished().collect::<Vec<_>>(), [1]);
    assert_eq!(bowl.worst_ratio_error_percent(), 100.0);
    Ok(())
}

#[test]
fn tare_order_is_smallest_first_and_developer_last() -> Outcome {
    let bowl = weigh(&[g(40.0), g(10.0), g(30.1)], g(0.1))?;
    let steps: Vec<(usize, f64)> = bowl.tare_order(Some(1)).iter().map(|s| (s.part, s.reading.g())).collect();
    assert_eq!(steps, [(2, 30.1), (0, 70.1), (1, 80.1)]);
    Ok(())
}

#[test]
fn volumes_become_grams_with_the_density_named() -> Outcome {
    let recipe: Recipe = "60 mL 6% + 30 g J7-mist".parse()?;
    let density = Density::from_g_per_ml(1.02)?;
    let weighed = recipe.in_grams(|product| (product == "6%").then_some(Sourced::measured(density)))?;
    assert_eq!(weighed.to_string(), "61.2 g 6% + 30 g J7-mist");
    let shown = RecipeAmount { value: 60.into(), unit: Unit::Millilitre }
        .convert(Unit::Gram, Some(Sourced::measured(density)))?;
    assert_eq!(shown.to_string(), "60 mL = 61.2 g at 1.02 g/mL (measured by you)");
    Ok(())
}

/// A bowl of half a division rounds to the even number of them, nothing; of more than half it is one.
#[test]
fn a_bowl_is_at_least_one_division() {
    assert!(matches!(weigh(&[g(0.5)], g(1.0)), Err(WeighError::Coarse { .. })));
    assert_eq!(weigh(&[g(0.51)], g(1.0)).unwrap().total(), g(1.0));
    assert_eq!(weigh(&[g(1.5)], g(1.0)).unwrap().total(), g(2.0));
    assert!(matches!(weigh(&[g(0.0), g(0.0)], g(1.0)), Err(WeighError::Nothing)));
    // Nine quadrillions of divisions are counted, more are not.
    assert!(weigh(&[g(8e8)], g(1e-7)).is_ok());
    assert!(matches!(weigh(&[g(1e9)], g(1e-7)), Err(WeighError::Fine { .. })));
    // A part of nothing is none that the scale fails to show.
    let bowl = weigh(&[g(0.0), g(5.0)], g(1.0)).unwrap();
    assert_eq!((bowl.vanished().count(), bowl.worst_ratio_error_percent()), (0, 0.0));
    assert!(bowl.all_shown().is_ok());
}

/// A tenth of a microgram is the finest that balances count in.
#[test]
fn a_division_is_one_that_balances_have() {
    assert!(Division::new(g(1e-7)).is_ok());
    assert!(matches!(Division::new(g(9.9e-8)), Err(WeighError::TooFine(_))));
    assert!(matches!(Division::new(g(0.0)), Err(WeighError::Division(_))));
}

/// By hand: 675 tenths are 67.5 g to the last bit, thirds of a gram are no whole number to a gram, and 7 g are 2 threes and a bit.
#[test]
fn masses_are_whole_divisions() {
    for (division, mass, want) in [
        (0.1, 67.46, 67.5),
        (0.3, 1.0, 0.9),
        (3.0, 7.0, 6.0),
        (3.0, 8.0, 9.0),
        (0.25, 1.13, 1.25),
        (2.0, 7.2, 8.0),
        (2.0, 5.0, 4.0),
    ] {
        let got = Division::new(g(division)).unwrap().round(g(mass)).g();
        assert!((got - want).abs() < 1e-12, "{mass} g at {division}: {got}");
    }
    assert_eq!(Division::new(g(0.1)).unwrap().round(g(67.46)).g(), 67.5);
}

/// What is in hand is weighed as far as it goes, to the last division of it: 9.7 g are 97 tenths.
#[rstest]
#[case(9.7, 0.1, 9.7)]
#[case(9.69, 0.1, 9.6)]
#[case(9.7, 1.0, 9.0)]
#[case(20.0, 1.0, 10.0)]
#[case(0.0, 1.0, 0.0)]
fn no_more_is_weighed_than_is_there(#[case] in_hand: f64, #[case] division: f64, #[case] want: f64) {
    let bowl = weigh_in_hand(&[(g(10.0), Some(g(in_hand))), (g(20.0), None)], g(division)).unwrap();
    let shown: Vec<f64> = bowl.parts().iter().map(|part| part.weighed.g()).collect();
    assert!((shown[0] - want).abs() < 1e-9, "{shown:?}");
    // The other makes up for it: 30 g in all.
    assert!((shown[1] - (30.0 - want)).abs() < 1e-9 && (bowl.total().g() - 30.0).abs() < 1e-9, "{shown:?}");
}

/// Where no other part may grow, the bowl is smaller.
#[test]
fn a_bowl_of_what_is_there_is_smaller() {
    let bowl = weigh_in_hand(&[(g(10.0), Some(g(8.0))), (g(20.0), Some(g(20.4)))], g(1.0)).unwrap();
    assert_eq!(bowl.total(), g(28.0));
}

/// The scales that are made, below 1 g: the coarsest that shows the part and is finer than this one.
#[rstest]
#[case(0.3, 59.7, 1.0, Some("0.2 g"))]
#[case(0.2, 59.8, 1.0, Some("0.2 g"))]
#[case(0.5, 599.5, 10.0, Some("0.5 g"))]
#[case(0.001, 59.999, 1.0, Some("0.001 g"))]
#[case(0.0009, 59.9991, 1.0, None)]
fn a_part_that_vanishes_names_its_scale(
    #[case] part: f64,
    #[case] rest: f64,
    #[case] division: f64,
    #[case] finer: Option<&str>,
) {
    let refused = weigh(&[g(part), g(rest)], g(division)).unwrap().all_shown().unwrap_err().to_string();
    let named = refused.split("use a scale of ").nth(1).and_then(|rest| rest.split(" or finer").next());
    assert_eq!(named, finer, "{refused}");
}

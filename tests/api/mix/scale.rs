//! Scaling a recipe and putting it on the scale.

use foilwork::quantity::{Density, Mass, MassFraction};
use foilwork::source::{Interval, Sourced};
use foilwork::{
    mix::{Recipe, RecipeAmount, Unit},
    scale::weigh,
};

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

//! What is in the bowl, and how many bowls.

use foilwork::mix::{
    Addition, BowlRequest, Cas, Composition, Dose, Hazard, Ingredient, Pace, Product, Recipe, as_applied, bowls,
};
use foilwork::quantity::{Duration, Mass, MassFraction, Share};
use foilwork::source::Interval;

type Outcome = Result<(), Box<dyn std::error::Error>>;

fn g(value: f64) -> Mass {
    Mass::from_g(value).unwrap()
}

fn exact(percent: f64) -> Interval<MassFraction> {
    Interval::exact(MassFraction::from_ww_percent(percent).unwrap())
}

#[test]
fn thickener_dilutes_the_strength() -> Outcome {
    let bowl = as_applied(&[(g(60.0), exact(9.0)), (g(30.0), exact(0.0)), (g(10.0), exact(0.0))])?;
    assert!((bowl.best().ww_percent() - 5.4).abs() < 1e-12);
    Ok(())
}

#[test]
fn bowls_are_bounded_by_working_life_and_capacity() -> Outcome {
    let request = BowlRequest::new(g(200.0), g(90.0), Duration::from_min(40.0)?, Pace::from_g_per_min(5.0)?)
        .mixing(Duration::from_min(3.0)?)
        .residue(g(10.0));
    let plan = bowls(&request)?;
    // 80 g of each 90 g bowl reach the hair: three bowls of 66.67 g + 10 g.
    assert_eq!(plan.bowls().len(), 3);
    assert!((plan.leftover().g() - 30.0).abs() < 1e-9);
    let times: Vec<f64> = plan.bowls().iter().map(|b| b.mix_at.min().round()).collect();
    assert_eq!(times, [0.0, 16.0, 33.0]);
    Ok(())
}

#[test]
fn additives_are_dosed_per_bowl_and_leftovers_are_masses() -> Outcome {
    let request =
        BowlRequest::new(g(152.0), g(84.0), Duration::from_min(60.0)?, Pace::from_g_per_min(4.0)?).residue(g(4.0));
    let plan = bowls(&request)?;
    let base: Recipe = "1 g lightener + 2 g 9%".parse()?;
    let additives = [
        Addition { product: "bond builder".into(), dose: Dose::PerBowl(g(2.0)) },
        Addition { product: "thickener".into(), dose: Dose::OfProduct("lightener".into(), Share::from_percent(12.0)?) },
        Addition { product: "oil".into(), dose: Dose::OfBowl(Share::from_percent(0.0)?) },
    ];
    assert!(plan.recipes(&base, &additives).is_err(), "a dose of nothing is a slip");
    let recipes = plan.recipes(&base, &additives[..2])?;
    // 80 g of bowl: 2 g by the bowl, the rest 1 : 2 : 0.12, so 25 g, 50 g and 3 g.
    assert_eq!(recipes[0].to_string(), "25 g lightener + 50 g 9% + 2 g bond builder + 3 g thickener");
    let leftovers = plan.leftovers(&base, &additives[..2])?;
    let wasted: f64 = leftovers.iter().map(|l| l.wasted.g()).sum();
    assert!((wasted - 8.0).abs() < 1e-9 && (plan.leftover().g() - 8.0).abs() < 1e-9);
    assert!((leftovers[1].wasted.g() - 5.0).abs() < 1e-9, "a twentieth of 100 g of developer");
    Ok(())
}

#[test]
fn the_bowl_names_what_it_does_not_know() -> Outcome {
    let peroxide = Ingredient::named("hydrogen peroxide", exact(6.0)).with_cas(Cas::HYDROGEN_PEROXIDE);
    let free = Ingredient::named("Hydrogen Peroxide", exact(0.0)).with_cas(Cas::HYDROGEN_PEROXIDE);
    let bowl = Composition::mix(vec![
        (g(60.0), Product::declared("6%", vec![peroxide])),
        (g(30.0), Product::declared_in_part("J7-mist", vec![free, Ingredient::named("resorcinol", exact(0.5))])),
        (g(10.0), Product::unknown("bond builder")),
    ])?;
    let [peroxide, resorcinol] = bowl.constituents() else { return Err("two substances expected".into()) };
    assert_eq!(peroxide.undeclared_in, ["bond builder"]);
    assert!((peroxide.level.best().ww_percent() - 3.6).abs() < 1e-12);
    assert!((peroxide.undeclared_at_most.ww_percent() - 10.0).abs() < 1e-12);
    // The developer is declared in full, so it holds no resorcinol; shade and developer name their share of it.
    assert_eq!(resorcinol.undeclared_in, ["bond builder"]);
    assert!((resorcinol.level.best().ww_percent() - 0.15).abs() < 1e-12);
    assert_eq!(bowl.undeclared().map(|p| p.product.name.as_str()).collect::<Vec<_>>(), ["J7-mist", "bond builder"]);
    assert_eq!(bowl.hazards(), [Hazard::Peroxide, Hazard::Resorcinol, Hazard::Unknown]);
    let json = serde_json::to_value(&bowl)?;
    assert_eq!(json["constituents"][0]["cas"], "7722-84-1");
    assert_eq!(json["constituents"][0]["level_ww_percent"]["best"], 3.6);
    assert_eq!((&json["portions"][0]["mass_g"], &json["total_g"]), (&60.0.into(), &100.0.into()));
    Ok(())
}

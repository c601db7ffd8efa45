//! The words of the errors and the shape of the answers.

use foilwork::mix::{
    Additive, Amount, BowlRequest, Card, CardRequest, Cas, Composition, Dose, Form, Hazard, Ingredient, Pace, Part,
    Product, Ratio, Recipe, Unit, as_applied, bowls, handling, minimum_bowl, natural_share, weigh,
};
use foilwork::quantity::{Density, Duration, Mass, MassFraction, Share};
use foilwork::source::{Basis, Interval, Sourced, register};
use rstest::rstest;
use rust_decimal::Decimal;

type Outcome = Result<(), Box<dyn std::error::Error>>;

fn g(value: f64) -> Mass {
    Mass::from_g(value).unwrap()
}

fn exact(percent: f64) -> Interval<MassFraction> {
    Interval::exact(MassFraction::from_percent_ww(percent).unwrap())
}

fn grams(text: &str) -> Result<Amount, rust_decimal::Error> {
    Ok(Amount { value: text.parse()?, unit: Unit::Gram })
}

#[rstest]
#[case("1:1")]
#[case("1:1.5")]
#[case("1+2")]
#[case("3:1:6")]
#[case("1:2:0.05:4")]
#[case("1.50:2")]
fn a_ratio_prints_back_as_it_was_written(#[case] text: &str) -> Outcome {
    assert_eq!(text.parse::<Ratio>()?.to_string(), text);
    Ok(())
}

#[rstest]
#[case("", 1, "a number above 0 such as 1 or 1.5")]
#[case("1", 2, "a second part, as in 1:1.5")]
#[case("1:", 3, "a number above 0 such as 1 or 1.5")]
#[case("1:x", 3, "a number above 0 such as 1 or 1.5")]
#[case("1:1,5", 4, "a decimal point, not a comma")]
#[case("1:2+3", 4, "the same sign between all parts")]
#[case("1:0", 3, "a number above 0 such as 1 or 1.5")]
#[case("1:-2", 3, "a number above 0 such as 1 or 1.5")]
#[case("1:1.5.2", 3, "a number above 0 such as 1 or 1.5")]
#[case("1:2 3", 5, "\":\" or \"+\" between the parts")]
#[case("1:1234567890123", 3, "at most 12 digits")]
fn a_bad_ratio_points_at_the_character(#[case] text: &str, #[case] position: usize, #[case] expected: &str) {
    let error = text.parse::<Ratio>().unwrap_err();
    assert_eq!((error.position(), error.expected()), (position, expected), "{error}");
    assert_eq!(error.pointer().lines().last().unwrap_or_default().len(), position);
}

#[rstest]
#[case("", 1, "a number above 0 such as 1 or 1.5")]
#[case("30 7.1", 4, "a unit: g, mL, US fl oz or UK fl oz")]
#[case("30 g", 5, "a blank and a product name after the unit")]
#[case("30 fl oz 7.1", 4, "US fl oz or UK fl oz (they differ by 4 %), g or mL")]
#[case("30 g 7.1+15 g 8.3", 9, "\" + \" between parts, with a blank on both sides")]
#[case("30 g 7.1 +15 g 8.3", 10, "\" + \" between parts, with a blank on both sides")]
#[case("30 g 7.1 + ", 12, "a number above 0 such as 1 or 1.5")]
#[case("30 g 7.1 + 15 q 8.3", 15, "a unit: g, mL, US fl oz or UK fl oz")]
#[case("30 g  + 15 g 8.3", 7, "a product name")]
#[case("30 g 7.1\n15 g 8.3", 9, "a recipe on one line")]
#[case("30 gram 7.1", 4, "a unit: g, mL, US fl oz or UK fl oz")]
fn a_bad_recipe_points_at_the_character(#[case] text: &str, #[case] position: usize, #[case] expected: &str) {
    let error = text.parse::<Recipe>().unwrap_err();
    assert_eq!((error.position(), error.expected()), (position, expected), "{error}");
}

#[test]
fn the_position_counts_characters_not_bytes() {
    let error = "30 g Häsel + 15 x 8.3".parse::<Recipe>().unwrap_err();
    assert_eq!(error.position(), 17, "{}", error.pointer());
    assert_eq!(error.to_string().matches("\"x\" at character 17").count(), 1, "{error}");
}

#[rstest]
#[case::spacing("30g 7.1 + 15 ml 8.3", "30 g 7.1 + 15 mL 8.3")]
#[case::trailing_zero("30.0 g 7.1", "30.0 g 7.1")]
#[case::long_name("2 US fl oz shade 7/1 ash + 1 UK fl oz oil", "2 US fl oz shade 7/1 ash + 1 UK fl oz oil")]
fn a_recipe_is_printed_in_one_way(#[case] written: &str, #[case] printed: &str) -> Outcome {
    assert_eq!(written.parse::<Recipe>()?.to_string(), printed);
    Ok(())
}

#[test]
fn a_recipe_scales_by_total_part_packs_and_factor() -> Outcome {
    let recipe: Recipe = "30 g 7.1 + 15 g 8.3 + 67.5 g 6%".parse()?;
    assert_eq!(recipe.total()?.to_string(), "112.5 g");
    assert_eq!(recipe.ratio()?.lowest_terms(), [4, 2, 9]);
    assert_eq!(recipe.to_total(grams("225")?)?.to_string(), "60 g 7.1 + 30 g 8.3 + 135 g 6%");
    assert_eq!(recipe.to_part("8.3", grams("20")?)?.to_string(), "40 g 7.1 + 20 g 8.3 + 90 g 6%");
    assert_eq!(recipe.to_packs("7.1", grams("60")?, 2)?.to_string(), "120 g 7.1 + 60 g 8.3 + 270 g 6%");
    assert_eq!(recipe.times("0.5".parse()?)?.to_string(), "15 g 7.1 + 7.5 g 8.3 + 33.75 g 6%");
    assert_eq!(recipe.packs_needed("6%", grams("60")?)?, 2);
    let more: Recipe = "10 g 6% + 5 g oil".parse()?;
    assert_eq!(recipe.combined(&more)?.to_string(), "30 g 7.1 + 15 g 8.3 + 77.5 g 6% + 5 g oil");
    let bowls = recipe.split(&"2:1".parse()?)?;
    assert_eq!(bowls[0].to_string(), "20 g 7.1 + 10 g 8.3 + 45 g 6%");
    assert_eq!(bowls[1].to_string(), "10 g 7.1 + 5 g 8.3 + 22.5 g 6%");
    assert_eq!(format!("{:.1}", recipe.times("0.333".parse()?)?), "10.0 g 7.1 + 5.0 g 8.3 + 22.5 g 6%");
    Ok(())
}

/// One table for all the words, so that a change of any is seen.
#[test]
fn errors_say_what_is_wrong_and_the_way_out() -> Outcome {
    let recipe: Recipe = "30 g 7.1 + 60 mL 6%".parse()?;
    let whole: Recipe = "30 g 7.1 + 60 g 6%".parse()?;
    let minutes = Duration::from_min;
    let pace = Pace::from_g_per_min(2.0)?;
    let request = BowlRequest::new(g(100.0), g(50.0), minutes(30.0)?, pace);
    let ratio: Ratio = "1:2".parse()?;
    let name = |product: &str| Recipe::new(vec![Part { amount: grams("1").unwrap(), product: product.to_owned() }]);
    let said: Vec<(String, &str)> = vec![
        (
            recipe.total().unwrap_err().to_string(),
            "the recipe mixes g and mL: convert all parts to one unit first (a density is needed)",
        ),
        (
            recipe.masses().unwrap_err().to_string(),
            "6%: cannot turn 60 mL into g without a density: state it in g/mL, or weigh instead",
        ),
        (whole.part("9%").unwrap_err().to_string(), "there is no \"9%\" in the recipe 30 g 7.1 + 60 g 6%"),
        (whole.times(Decimal::ZERO).unwrap_err().to_string(), "cannot scale by or to 0: must be above 0"),
        (
            whole.times(Decimal::MAX).unwrap_err().to_string(),
            "the numbers are too large or too fine for 28 digits: use fewer digits",
        ),
        (Recipe::new(vec![]).unwrap_err().to_string(), "a recipe needs at least one part, for example 30 g 7.1"),
        (
            name("a + b").unwrap_err().to_string(),
            "invalid product name (got \"a + b\"): must not be empty, and must hold no \"+\" and no line break",
        ),
        (
            Ratio::new(vec![Decimal::ONE]).unwrap_err().to_string(),
            "a ratio needs two parts or more (got 1): write it as 1:1.5",
        ),
        (
            Ratio::new(vec![Decimal::ONE, Decimal::ZERO]).unwrap_err().to_string(),
            "part 2 of the ratio is 0: every part must be above 0 and have at most 12 digits",
        ),
        (
            ratio.from_part(2, g(1.0)).unwrap_err().to_string(),
            "there is no part 2 in a ratio of 2 (parts are counted from 0)",
        ),
        (
            weigh(&[], g(1.0)).unwrap_err().to_string(),
            "there is nothing to weigh (total 0 g): give at least one part above 0 g",
        ),
        (
            weigh(&[g(1.0)], g(0.0)).unwrap_err().to_string(),
            "invalid division of the scale (got 0 g): must be above 0 g, for example 0.1 g or 1 g",
        ),
        (
            weigh(&[g(0.2)], g(5.0)).unwrap_err().to_string(),
            "the bowl of 0.2 g rounds to nothing on a scale of 5 g: use a finer scale or a bigger bowl",
        ),
        (
            as_applied(&[]).unwrap_err().to_string(),
            "the bowl is empty (total 0 g): give at least one part with a mass above 0 g",
        ),
        (
            minimum_bowl(&ratio, g(1.0), Share::NONE).unwrap_err().to_string(),
            "invalid tolerance (got 0 %): must be from 0.01 to 100 %",
        ),
        (
            bowls(&BowlRequest { total: g(0.0), ..request }).unwrap_err().to_string(),
            "there is nothing to apply (total 0 g): give a total above 0 g",
        ),
        (
            bowls(&request.residue(g(50.0))).unwrap_err().to_string(),
            "a bowl of 50 g holds no more than the 50 g that stays behind: use a bigger bowl",
        ),
        (
            bowls(&BowlRequest { working_life: minutes(0.0)?, ..request }).unwrap_err().to_string(),
            "the working life is 0 min: it must be above 0 min (take it from the product's directions)",
        ),
        (
            bowls(&BowlRequest { total: g(50_000.0), ..request }).unwrap_err().to_string(),
            "50000 g would take 1000 bowls of 50 g: check the units (at most 500 bowls)",
        ),
        (
            Pace::from_g_per_min(0.0).unwrap_err().to_string(),
            "invalid pace (got 0 g/min): must be above 0 and at most 1e4 g/min",
        ),
        (
            "7722-84-2".parse::<Cas>().unwrap_err().to_string(),
            "invalid CAS number (got \"7722-84-2\"): its check digit should be 1 (look for a mistyped digit)",
        ),
        (
            "peroxide".parse::<Cas>().unwrap_err().to_string(),
            "invalid CAS number (got \"peroxide\"): must look like 7722-84-1",
        ),
        (
            "salt".parse::<Form>().unwrap_err().to_string(),
            "invalid form (got \"salt\"): must be one of free-base, sulfate, hydrochloride, dihydrochloride, tetrahydrochloride, h2o2, h2o2-released, nh3, so2, strontium, persulfate",
        ),
    ];
    for (got, want) in said {
        assert_eq!(got, want);
    }
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
fn thickener_dilutes_the_strength() -> Outcome {
    let bowl = as_applied(&[(g(60.0), exact(9.0)), (g(30.0), exact(0.0)), (g(10.0), exact(0.0))])?;
    assert!((bowl.best().percent_ww() - 5.4).abs() < 1e-12);
    Ok(())
}

#[test]
fn volumes_become_grams_with_the_density_named() -> Outcome {
    let recipe: Recipe = "60 mL 6% + 30 g 7.1".parse()?;
    let density = Density::from_g_per_ml(1.02)?;
    let weighed = recipe.in_grams(|product| (product == "6%").then_some(Sourced::measured(density)))?;
    assert_eq!(weighed.to_string(), "61.2 g 6% + 30 g 7.1");
    let shown =
        Amount { value: 60.into(), unit: Unit::Millilitre }.convert(Unit::Gram, Some(Sourced::measured(density)))?;
    assert_eq!(shown.to_string(), "60 mL = 61.2 g at 1.02 g/mL (measured by you)");
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
        Additive { product: "bond builder".into(), dose: Dose::PerBowl(g(2.0)) },
        Additive { product: "thickener".into(), dose: Dose::OfProduct("lightener".into(), Share::from_percent(12.0)?) },
        Additive { product: "oil".into(), dose: Dose::OfBowl(Share::from_percent(0.0)?) },
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
        (g(30.0), Product::declared_in_part("7.1", vec![free, Ingredient::named("resorcinol", exact(0.5))])),
        (g(10.0), Product::unknown("bond builder")),
    ])?;
    let [peroxide, resorcinol] = bowl.constituents() else { return Err("two substances expected".into()) };
    assert_eq!(peroxide.undeclared_in, ["bond builder"]);
    assert!((peroxide.level.best().percent_ww() - 3.6).abs() < 1e-12);
    assert!((peroxide.undeclared_at_most.percent_ww() - 10.0).abs() < 1e-12);
    // The developer is declared in full, so it holds no resorcinol; shade and developer name their share of it.
    assert_eq!(resorcinol.undeclared_in, ["bond builder"]);
    assert!((resorcinol.level.best().percent_ww() - 0.15).abs() < 1e-12);
    assert_eq!(bowl.undeclared().map(|(_, p)| p.name.as_str()).collect::<Vec<_>>(), ["7.1", "bond builder"]);
    assert_eq!(bowl.hazards(), [Hazard::Peroxide, Hazard::Unknown]);
    Ok(())
}

#[test]
fn every_handling_point_has_its_sources() {
    let all = [Hazard::Peroxide, Hazard::Persulfate, Hazard::Ammonia, Hazard::OxidativeDye, Hazard::Resorcinol];
    for point in handling(&all) {
        assert_eq!(point.citations().count(), point.sources.len(), "{}: {:?}", point.text, point.sources);
        assert_eq!(point.basis() == Basis::CommonPractice, point.sources.is_empty());
        assert!(!point.text.contains("safe"), "{}", point.text);
    }
    assert!(handling(&all).len() > handling(&[Hazard::Peroxide]).len());
    assert!(handling(&[Hazard::Peroxide]).len() > handling(&[]).len());
    assert!(handling(&[]).len() > 5, "some points hold for every bowl");
}

#[test]
fn the_register_names_no_source_twice() {
    let mut ids: Vec<&str> = register().map(|c| c.id).collect();
    let all = ids.len();
    ids.sort_unstable();
    ids.dedup();
    assert_eq!(ids.len(), all);
}

// Source: the rows of the trade (common practice), and S61 for the half at half.
#[rstest]
#[case(10.0, 0.0, 25.0)]
#[case(40.0, 33.0, 50.0)]
#[case(60.0, 50.0, 67.0)]
#[case(90.0, 67.0, 100.0)]
#[case(100.0, 67.0, 100.0)]
fn grey_follows_the_convention(#[case] white: f64, #[case] low: f64, #[case] high: f64) -> Outcome {
    let natural = natural_share(Share::from_percent(white)?);
    assert_eq!((natural.share.low().percent(), natural.share.high().percent()), (low, high));
    assert_eq!((natural.basis, natural.printed_point.id), (Basis::CommonPractice, "S61"));
    Ok(())
}

#[test]
fn more_white_never_asks_for_less_natural_shade() -> Outcome {
    let mut last = 0.0;
    for white in 0..=1000 {
        let best = natural_share(Share::from_percent(f64::from(white) / 10.0)?).share.best().percent();
        assert!(best >= last, "{white}");
        last = best;
    }
    assert_eq!(natural_share(Share::from_percent(50.0)?).share.best().percent(), 50.0);
    Ok(())
}

#[test]
fn the_card_says_who_what_grams_strength_and_when() -> Outcome {
    let recipe: Recipe = "30 g 7.1 + 15 g 8.3 + 67.5 g 6%".parse()?;
    let request = CardRequest {
        who: "chair 2",
        what: "regrowth",
        recipe: &recipe,
        strengths: &[Some(exact(0.0)), Some(exact(0.0)), Some(exact(6.0))],
        division: g(1.0),
        mixed_at: jiff::civil::date(2026, 11, 25).at(23, 40, 0, 0),
        working_life: Duration::from_min(40.0)?,
    };
    let card = Card::new(&request)?.with_remark("gloves on");
    let want = "\
chair 2: regrowth
  7.1         30 g
  8.3         15 g
  6%          67 g
  total      112 g
peroxide on the hair 3.59 % w/w
mixed 2026-11-25 23:40, use by 2026-11-26 00:20
! gloves on";
    assert_eq!(card.to_string(), want);
    let json = serde_json::to_value(&card)?;
    assert_eq!(json["lines"][2]["mass_g"], 67.0);
    assert_eq!(json["use_by"], "2026-11-26 00:20");
    // A strength that is not stated is not a strength of nothing.
    let unknown = Card::new(&CardRequest { strengths: &[Some(exact(0.0)), None, Some(exact(6.0))], ..request })?;
    assert_eq!(
        (unknown.strength_as_applied_ww_percent, unknown.strength_unknown_in.as_slice()),
        (None, &["8.3".to_owned()][..])
    );
    assert!(unknown.to_string().contains("unknown (not stated: 8.3)"));
    assert!(Card::new(&CardRequest { working_life: Duration::ZERO, ..request }).is_err());
    Ok(())
}

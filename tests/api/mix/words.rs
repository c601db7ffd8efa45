//! Reading and printing, and what is said when it cannot be read.

use foilwork::mix::{
    BowlRequest, Cas, Form, Pace, Part, Ratio, Recipe, RecipeAmount, Unit, as_applied, bowls, minimum_bowl,
};
use foilwork::quantity::{Duration, Mass, Share};
use foilwork::scale::weigh;
use rstest::rstest;
use rust_decimal::Decimal;

type Outcome = Result<(), Box<dyn std::error::Error>>;

fn g(value: f64) -> Mass {
    Mass::from_g(value).unwrap()
}

fn grams(text: &str) -> Result<RecipeAmount, rust_decimal::Error> {
    Ok(RecipeAmount { value: text.parse()?, unit: Unit::Gram })
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
#[case("30 J7-mist", 4, "a unit: g, mL, US fl oz or UK fl oz")]
#[case("30 g", 5, "a blank and a product name after the unit")]
#[case("30 fl oz J7-mist", 4, "US fl oz or UK fl oz (they differ by 4 %), g or mL")]
#[case("30 g J7-mist+15 g J8-oat", 13, "\" + \" between parts, with a blank on both sides")]
#[case("30 g J7-mist +15 g J8-oat", 14, "\" + \" between parts, with a blank on both sides")]
#[case("30 g J7-mist + ", 16, "a number above 0 such as 1 or 1.5")]
#[case("30 g J7-mist + 15 q J8-oat", 19, "a unit: g, mL, US fl oz or UK fl oz")]
#[case("30 g  + 15 g J8-oat", 7, "a product name")]
#[case("30 g J7-mist\n15 g J8-oat", 13, "a recipe on one line, with no character that acts on a terminal")]
#[case("30 gram J7-mist", 4, "a unit: g, mL, US fl oz or UK fl oz")]
fn a_bad_recipe_points_at_the_character(#[case] text: &str, #[case] position: usize, #[case] expected: &str) {
    let error = text.parse::<Recipe>().unwrap_err();
    assert_eq!((error.position(), error.expected()), (position, expected), "{error}");
}

#[test]
fn the_position_counts_characters_not_bytes() {
    let error = "30 g Häsel + 15 x J8-oat".parse::<Recipe>().unwrap_err();
    assert_eq!(error.position(), 17, "{}", error.pointer());
    assert_eq!(error.to_string().matches("\"x\" at character 17").count(), 1, "{error}");
}

#[rstest]
#[case::spacing("30g J7-mist + 15 ml J8-oat", "30 g J7-mist + 15 mL J8-oat")]
#[case::trailing_zero("30.0 g J7-mist", "30.0 g J7-mist")]
#[case::long_name("2 US fl oz shade J7 ash + 1 UK fl oz oil", "2 US fl oz shade J7 ash + 1 UK fl oz oil")]
fn a_recipe_is_printed_in_one_way(#[case] written: &str, #[case] printed: &str) -> Outcome {
    assert_eq!(written.parse::<Recipe>()?.to_string(), printed);
    Ok(())
}

/// One table for all the words, so that a change of any is seen.
#[test]
fn errors_say_what_is_wrong_and_the_way_out() -> Outcome {
    let recipe: Recipe = "30 g J7-mist + 60 mL 6%".parse()?;
    let whole: Recipe = "30 g J7-mist + 60 g 6%".parse()?;
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
        (whole.part("9%").unwrap_err().to_string(), "there is no \"9%\" in the recipe 30 g J7-mist + 60 g 6%"),
        (whole.times(Decimal::ZERO).unwrap_err().to_string(), "cannot scale by or to 0: must be above 0"),
        (
            whole.times(Decimal::MAX).unwrap_err().to_string(),
            "the numbers are too large or too fine for 28 digits: use fewer digits",
        ),
        (Recipe::new(vec![]).unwrap_err().to_string(), "a recipe needs at least one part, for example 30 g J7-mist"),
        (
            name("a + b").unwrap_err().to_string(),
            "invalid product name (got \"a + b\"): must not be empty, and must hold no \"+\", no line \
             break and nothing that acts on a terminal",
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
            ratio.given_part(2, g(1.0)).unwrap_err().to_string(),
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
            "unknown form \"salt\": give one of free-base, sulfate, hydrochloride, dihydrochloride, tetrahydrochloride, h2o2, h2o2-released, nh3, so2, strontium, persulfate",
        ),
    ];
    for (got, want) in said {
        assert_eq!(got, want);
    }
    Ok(())
}

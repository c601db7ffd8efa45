//! Ratios, recipes, units and mixing against printed answers. Sources: `tests/data/mix/sources.csv`.

use foilwork::mix::{Ratio, Recipe, RecipeAmount, Unit, as_applied};
use foilwork::quantity::{Density, Mass, MassFraction};
use foilwork::source::{Interval, Sourced};
use rstest::rstest;
use rust_decimal::{Decimal, prelude::ToPrimitive};

type Outcome = Result<(), Box<dyn std::error::Error>>;

/// The printed answer of a worked example, so that no expected number is typed twice.
fn stated(id: &str) -> Result<String, Box<dyn std::error::Error>> {
    let text = include_str!("../data/mix/worked_examples.csv");
    for row in csv::Reader::from_reader(text.as_bytes()).records() {
        let row = row?;
        if row.get(0) == Some(id) {
            return Ok(row.get(4).ok_or("no answer")?.to_owned());
        }
    }
    Err(format!("no worked example {id}").into())
}

fn number(text: &str) -> Result<Decimal, Box<dyn std::error::Error>> {
    let digits: String = text.chars().take_while(|c| c.is_ascii_digit() || matches!(c, '.' | ',')).collect();
    Ok(digits.replace(',', "").parse()?)
}

fn amount(value: &str, unit: Unit) -> Result<RecipeAmount, Box<dyn std::error::Error>> {
    Ok(RecipeAmount { value: value.parse()?, unit })
}

// Sources: ratio-questions (1:1, 2 oz of colour), nocti-practice-question (3 parts A to 1 part B, 1.5 oz of A).
#[rstest]
#[case::one_to_one("W031", "1:1", 2.0)]
#[case::three_to_one("W033", "3:1", 1.5)]
fn a_known_part_gives_the_other(#[case] id: &str, #[case] ratio: &str, #[case] grams: f64) -> Outcome {
    let parts = ratio.parse::<Ratio>()?.given_part(0, Mass::from_g(grams)?)?;
    assert_eq!(parts.get(1).ok_or("no second part")?.g().to_string(), stated(id)?);
    Ok(())
}

/// Source: dye-ratio-problem, a printed mistake. It multiplies each part by the total, so the parts do not add up to it.
#[test]
fn the_printed_answer_that_does_not_sum_is_not_ours() -> Outcome {
    let parts = "1.125:0.75:0.625".parse::<Ratio>()?.split_decimal(Decimal::from(20))?;
    assert_eq!(parts, [Decimal::from(9), Decimal::from(6), Decimal::from(5)], "the corrected answer of the notes");
    assert_ne!(parts.first(), Some(&number(&stated("W034")?)?));
    assert_eq!(parts.iter().sum::<Decimal>(), Decimal::from(20));
    Ok(())
}

// Source: openstax-elementary-algebra (OpenStax, Elementary Algebra 2e, section on mixture applications); parts taken by mass.
#[rstest]
#[case::w010(&[(80.0, 25.0), (120.0, 50.0)], 40.0)]
#[case::w011(&[(120.0, 25.0), (30.0, 50.0)], 30.0)]
#[case::w012(&[(125.0, 10.0), (125.0, 40.0)], 25.0)]
#[case::w013(&[(42.0, 30.0), (28.0, 80.0)], 50.0)]
#[case::w014(&[(15.0, 25.0), (50.0, 12.0)], 15.0)]
#[case::w015(&[(160.0, 40.0), (80.0, 70.0)], 50.0)]
fn a_blend_has_the_printed_strength(#[case] parts: &[(f64, f64)], #[case] percent: f64) -> Outcome {
    let exact = |(g, p): &(f64, f64)| {
        Ok::<_, foilwork::quantity::InvalidQuantity>((
            Mass::from_g(*g)?,
            Interval::exact(MassFraction::from_ww_percent(*p)?),
        ))
    };
    let parts = parts.iter().map(exact).collect::<Result<Vec<_>, _>>()?;
    assert!((as_applied(&parts)?.best().ww_percent() - percent).abs() < 1e-12);
    Ok(())
}

// Sources: peroxide-mixing-questions, ontario-exam-mixing; volume strengths blend like fractions when the densities are equal. A neutral cream is 0.
#[rstest]
#[case::with_neutral_cream("W001", &[(1.0, 40.0), (1.0, 0.0)])]
#[case::one_to_two("W002", &[(1.0, 50.0), (2.0, 20.0)])]
#[case::half_and_half("W003", &[(1.0, 20.0), (1.0, 30.0)])]
fn developers_blend_as_printed(#[case] id: &str, #[case] parts: &[(f64, f64)]) -> Outcome {
    let part =
        |(g, s): &(f64, f64)| Some((Mass::from_g(*g).ok()?, Interval::exact(MassFraction::from_ww_percent(*s).ok()?)));
    let parts: Vec<_> = parts.iter().filter_map(part).collect();
    let want = number(&stated(id)?)?.to_f64().ok_or("no number")?;
    assert!((as_applied(&parts)?.best().ww_percent() - want).abs() < 1e-12);
    Ok(())
}

// Sources: openstax-contemporary-mathematics (2 1/4 cups for 60, 1 020 wanted), openstax-prealgebra (5 mL per 25 lb, 80 lb): scaling in proportion.
#[rstest]
#[case::by_count("W037", "2.25", "17")]
#[case::by_weight("W038", "5", "3.2")]
fn scaling_in_proportion_is_exact(#[case] id: &str, #[case] each: &str, #[case] times: &str) -> Outcome {
    let recipe: Recipe = format!("{each} g flour").parse()?;
    let scaled = recipe.times(times.parse()?)?;
    assert_eq!(scaled.total()?.value, number(&stated(id)?)?);
    Ok(())
}

/// Source: openstax-contemporary-mathematics, a printed mistake: 17 500 kg at 12 kg per box is printed as 1 458 boxes, which leaves 4 kg over.
#[test]
fn packs_are_rounded_up_where_the_book_rounds_down() -> Outcome {
    let recipe: Recipe = "17500 g rice".parse()?;
    let packs = recipe.packs_needed("rice", amount("12", Unit::Gram)?)?;
    assert_eq!((packs, number(&stated("W049")?)?), (1459, Decimal::from(1458)));
    Ok(())
}

/// Source: openstax-prealgebra, 1 US gallon is 128 fluid ounces; the gallon is 231 cubic inches of 2.54 cm.
#[test]
fn a_gallon_holds_its_fluid_ounces() -> Outcome {
    let inch: Decimal = "2.54".parse()?;
    let gallon = Decimal::from(231) * inch * inch * inch;
    let ounces = RecipeAmount { value: gallon, unit: Unit::Millilitre }.convert(Unit::UsFluidOunce, None)?;
    assert_eq!(ounces.amount.value, number(&stated("W044")?)?);
    // Weights and Measures Act 1985 (from memory): 4.546 09 L to the UK gallon of 160 fluid ounces.
    let ounces = amount("4546.09", Unit::Millilitre)?.convert(Unit::UkFluidOunce, None)?;
    assert_eq!(ounces.amount.value, Decimal::from(160));
    Ok(())
}

/// Source: openstax-prealgebra takes 30 mL for a fluid ounce and prints 16.7; the exact ounce gives 16.9 (notes of the table).
#[test]
fn thirty_millilitres_is_not_a_fluid_ounce() -> Outcome {
    let ounces = amount("500", Unit::Millilitre)?.convert(Unit::UsFluidOunce, None)?.amount.value;
    assert_eq!(ounces.round_dp(1), "16.9".parse::<Decimal>()?);
    assert_ne!(ounces.round_dp(1), number(&stated("W045")?)?);
    Ok(())
}

/// Source: openstax-chemistry, 355 mL of a 70 % v/v solution holds 195 g of a solute of 0.785 g/mL.
#[test]
fn a_share_of_a_volume_weighs_what_its_density_says() -> Outcome {
    let density = Sourced::stated(Density::from_g_per_ml(0.785)?);
    let mass = amount("248.5", Unit::Millilitre)?.mass(Some(density))?;
    assert_eq!(mass.g().round().to_string(), stated("W028")?);
    Ok(())
}

/// Source: openstax-contemporary-mathematics, 40 mg from a stock of 20 mg in 1 mL takes 2 mL: the pattern of an additive's dose.
#[test]
fn a_dose_from_stock_is_a_ratio() -> Outcome {
    let parts = "20:1".parse::<Ratio>()?.given_part_decimal(0, Decimal::from(40))?;
    assert_eq!(parts.get(1), Some(&number(&stated("W030")?)?));
    Ok(())
}

/// Source: openstax-prealgebra, 2 lb at 2 and 8 lb at 6 make 10 lb at 5.20: a mean by mass, whatever is carried.
#[test]
fn a_cost_blends_like_a_strength() -> Outcome {
    let exact = |p| MassFraction::from_ww_percent(p).map(Interval::exact);
    let blend = as_applied(&[(Mass::from_g(2.0)?, exact(2.0)?), (Mass::from_g(8.0)?, exact(6.0)?)])?;
    assert!((blend.best().ww_percent() - 5.2).abs() < 1e-12);
    Ok(())
}

/// Source: openstax-chemistry, 0.500 L of a 37.2 % w/w solution of density 1.19 g/mL holds 221 g of solute.
#[test]
fn a_volume_weighs_what_its_density_says() -> Outcome {
    let density = Sourced::stated(Density::from_g_per_ml(1.19)?);
    let mass = amount("500", Unit::Millilitre)?.mass(Some(density))?;
    let solute = mass.g() * MassFraction::from_ww_percent(37.2)?.fraction();
    assert_eq!(solute.round().to_string(), stated("W027")?);
    Ok(())
}

// Source: openstax-prealgebra (4.1 L), openstax-contemporary-mathematics (24 bottles of 500 mL; 4 batches of 350 g).
#[rstest]
#[case::litres("W046", "4.1", "1000", "1")]
#[case::bottles("W047", "500", "24", "1000")]
#[case::batches("W048", "350", "4", "1000")]
fn metric_multiples(#[case] id: &str, #[case] each: &str, #[case] times: &str, #[case] over: &str) -> Outcome {
    let recipe: Recipe = format!("{each} mL 6%").parse()?;
    let total = recipe.times(times.parse()?)?.total()?.value;
    assert_eq!(total / over.parse::<Decimal>()?, number(&stated(id)?)?);
    Ok(())
}

/// Source: pint 0.25.3, US and imperial fluid ounces, computed in Python's `decimal` with 28 digits.
#[test]
fn fluid_ounces_agree_with_pint() -> Outcome {
    let unit = |symbol: &str| symbol.parse::<Unit>();
    let mut rows = 0;
    for row in csv::Reader::from_reader(include_str!("../data/mix/conversions.csv").as_bytes()).records() {
        let row = row?;
        let field = |at| row.get(at).ok_or("short row");
        let got = amount(field(0)?, unit(field(1)?)?)?.convert(unit(field(2)?)?, None)?.amount.value;
        let want: Decimal =
            Decimal::from_str_exact(field(3)?).or_else(|_| field(3).map_or(Ok(Decimal::ZERO), str::parse))?;
        assert!((got - want).abs() <= want * Decimal::new(1, 26), "{row:?}: got {got}");
        rows += 1;
    }
    assert_eq!(rows, 66);
    Ok(())
}

/// Source: Python 3.11 `fractions.Fraction`, printed with 28 digits by `decimal`.
#[test]
fn ratios_split_like_exact_fractions() -> Outcome {
    let mut rows = 0;
    for row in csv::Reader::from_reader(include_str!("../data/mix/ratio_splits.csv").as_bytes()).records() {
        let row = row?;
        let field = |at| row.get(at).ok_or("short row");
        let ratio: Ratio = field(0)?.parse()?;
        let total: Decimal = field(1)?.parse()?;
        let near = |got: &[Decimal], want: &str| {
            let want: Result<Vec<Decimal>, _> = want.split(' ').map(str::parse::<Decimal>).collect();
            want.map(|want| {
                got.len() == want.len()
                    && got.iter().zip(&want).all(|(g, w)| (*g - *w).abs() <= *w * Decimal::new(1, 24))
            })
        };
        assert!(near(&ratio.split_decimal(total)?, field(2)?)?, "{row:?}");
        assert!(near(&ratio.given_part_decimal(0, total)?, field(4)?)?, "{row:?}");
        let terms: Vec<String> = ratio.lowest_terms().iter().map(u128::to_string).collect();
        assert_eq!(terms.join(":"), field(3)?);
        rows += 1;
    }
    assert_eq!(rows, 69);
    Ok(())
}

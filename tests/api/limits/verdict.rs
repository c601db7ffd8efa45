//! One level against one row.

use foilwork::limits;
use foilwork::limits::{
    Audience, Jurisdiction, LimitRule, Measured, Purpose, Standing, Table, Use, Why, check_peroxide,
};
use foilwork::mix::{Cas, Composition, Form, Ingredient, Product};
use foilwork::quantity::{Mass, MassFraction};
use foilwork::source::Interval;
use rstest::rstest;

type Outcome = Result<(), Box<dyn std::error::Error>>;

const EU: Jurisdiction = Jurisdiction::EuropeanUnion;

fn exact(percent: f64) -> Interval<MassFraction> {
    Interval::exact(MassFraction::from_ww_percent(percent).unwrap())
}

fn substance(cas: &str, percent: f64) -> Ingredient {
    Ingredient::named(cas, exact(percent)).with_cas(cas.parse().unwrap())
}

fn bowl(ingredients: Vec<Ingredient>) -> Composition {
    Composition::mix(vec![(Mass::from_g(100.0).unwrap(), Product::declared("bowl", ingredients))]).unwrap()
}

#[rstest]
#[case("EU", EU)]
#[case("uk", Jurisdiction::GreatBritain)]
#[case("Great Britain", Jurisdiction::GreatBritain)]
#[case("USA", Jurisdiction::UnitedStates)]
#[case("asean", Jurisdiction::Asean)]
fn a_jurisdiction_is_read_by_code_or_name(#[case] text: &str, #[case] want: Jurisdiction) -> Outcome {
    assert_eq!(text.parse::<Jurisdiction>()?, want);
    assert_eq!(want.to_string().parse::<Jurisdiction>()?, want);
    assert_eq!(want.code().parse::<Jurisdiction>()?, want);
    Ok(())
}

#[test]
fn an_unknown_jurisdiction_lists_the_known_ones() {
    let said = "Atlantis".parse::<Jurisdiction>().unwrap_err().to_string();
    assert!(Jurisdiction::ALL.iter().all(|j| said.contains(j.code())), "{said}");
}

fn verdict(code: &str, low: f64, best: f64, high: f64) -> Result<Standing, Box<dyn std::error::Error>> {
    let percent = MassFraction::from_ww_percent;
    let level = Interval::new(percent(low)?, percent(best)?, percent(high)?)?;
    let report = check_peroxide(code.parse()?, level, Use::professional(Purpose::Lightening));
    Ok(report.judgements.first().ok_or("no finding")?.standing)
}

#[rstest]
#[case::at_the_limit("EU", 12.0, 12.0, 12.0, Standing::Within)]
#[case::above("EU", 12.1, 12.1, 12.1, Standing::Exceeded { certain: true })]
#[case::best_above("EU", 11.5, 12.2, 12.9, Standing::Exceeded { certain: false })]
#[case::straddles("EU", 11.0, 11.8, 12.5, Standing::CannotBeJudged { why: Why::Straddles })]
#[case::british("GB", 12.0, 12.0, 12.0, Standing::Within)]
#[case::chinese("CN", 12.5, 12.5, 12.5, Standing::Exceeded { certain: true })]
#[case::from_memory_is_never_green("JP", 3.0, 3.0, 3.0, Standing::CannotBeJudged { why: Why::Unverified })]
#[case::from_memory_can_be_exceeded("JP", 6.5, 6.5, 6.5, Standing::Exceeded { certain: true })]
#[case::asean("ASEAN", 3.0, 3.0, 3.0, Standing::CannotBeJudged { why: Why::Unverified })]
#[case::canada_has_no_figure("CA", 3.0, 3.0, 3.0, Standing::CannotBeJudged { why: Why::NoFigure })]
#[case::no_federal_figure("US", 3.0, 3.0, 3.0, Standing::CannotBeJudged { why: Why::NoCeilingForThisUse })]
#[case::new_zealand("NZ", 3.0, 3.0, 3.0, Standing::CannotBeJudged { why: Why::NotInTable })]
fn peroxide_against_the_law(
    #[case] code: &str,
    #[case] low: f64,
    #[case] best: f64,
    #[case] high: f64,
    #[case] want: Standing,
) -> Outcome {
    assert_eq!(verdict(code, low, best, high)?, want);
    Ok(())
}

/// A bowl of 12 % stock and 12 % stock is 12 %, also in floating point.
#[test]
fn the_last_bit_is_not_a_breach() -> Outcome {
    let strength = foilwork::mix::as_applied(&[(Mass::from_g(0.1)?, exact(12.0)), (Mass::from_g(0.2)?, exact(12.0))])?;
    let report = check_peroxide(EU, strength, Use::professional(Purpose::Lightening));
    assert_eq!(report.judgements[0].standing, Standing::Within);
    Ok(())
}

#[test]
fn prohibited_is_exceeded_by_any_amount_and_not_by_none() {
    let of = Use::professional(Purpose::OxidativeColour);
    for (percent, exceeded) in [(0.001, true), (0.0, false)] {
        let mixed = bowl(vec![substance("123-31-9", percent)]);
        assert_eq!(limits::check(Table::of(EU), &mixed, of).is_exceeded(), exceeded, "{percent} % hydroquinone");
    }
}

#[test]
fn as_supplied_is_judged_on_the_product_and_not_on_the_bowl() {
    let developer = Product::declared("strong developer", vec![substance("7722-84-1", 15.0)]);
    let mixed = Composition::mix(vec![
        (Mass::from_g(50.0).unwrap(), developer),
        (Mass::from_g(50.0).unwrap(), Product::declared("lightener", vec![])),
    ])
    .unwrap();
    let at_home = limits::check(Table::of(EU), &mixed, Use::general(Purpose::Lightening));
    let supply = at_home.judgements.iter().find(|f| f.limit.is_some_and(|l| l.rule == LimitRule::SupplyLimit)).unwrap();
    assert_eq!((supply.product, supply.is_exceeded()), (Some("strong developer"), true));
    // 7.5 % on the hair is within; the supply limit does not bind a professional.
    let in_salon = limits::check(Table::of(EU), &mixed, Use::professional(Purpose::Lightening));
    assert!(!in_salon.is_exceeded(), "{in_salon}");
    assert!(in_salon.is_within_everything_checked());
}

// Source: AU_SUSMP (from memory): unscheduled up to 6 %, Schedule 5 above 6 % to 12 %, Schedule 6 above 12 %.
#[rstest]
#[case(6.0, [true, false, false])]
#[case(9.0, [false, true, false])]
#[case(12.0, [false, true, false])]
#[case(12.5, [false, false, true])]
fn australian_schedules_are_bands(#[case] percent: f64, #[case] want: [bool; 3]) {
    let mixed = bowl(vec![substance("7722-84-1", percent)]);
    let report = limits::check(Table::of(Jurisdiction::Australia), &mixed, Use::professional(Purpose::OxidativeColour));
    let applies: Vec<Option<bool>> = report.notices.iter().map(|n| n.applies).collect();
    assert_eq!(applies, want.map(Some), "{report}");
}

#[test]
fn lashes_have_their_own_ceiling_and_professionals_only() {
    let mixed = bowl(vec![substance("7722-84-1", 3.0)]);
    let lash = limits::check(Table::of(EU), &mixed, Use::professional(Purpose::LashColour));
    assert!(lash.is_exceeded(), "3 % against 2 % on lashes: {lash}");
    let at_home = limits::check(Table::of(EU), &mixed, Use::general(Purpose::LashColour));
    assert!(at_home.judgements.iter().all(|f| f.product.is_some() || f.standing != Standing::Within), "{at_home}");
}

#[test]
fn twelve_percent_has_a_different_basis_each_time() {
    let twelve = |j: Jurisdiction| {
        let rows = Table::of(j).rows().iter();
        let peroxide = rows.filter(|r| r.cas.contains(&Cas::HYDROGEN_PEROXIDE) && r.figure.starts_with("12 %"));
        peroxide.map(|r| r.measured).collect::<Vec<_>>()
    };
    assert_eq!(twelve(EU), [Measured::AsApplied, Measured::AsSupplied]);
    assert_eq!(twelve(Jurisdiction::Australia), [Measured::AsSupplied, Measured::AsSupplied]);
    assert_eq!("professional".parse(), Ok(Audience::Professional));
}

/// By hand: 1 % of the dye in half of the bowl is 0.5 % of it; of the other half, of which nothing is declared, all 50 % may be the
/// same dye. EU, Annex III, entry 9a: at most 2 %, so nobody can say that it is kept.
#[test]
fn what_a_maker_leaves_out_may_be_more_of_the_same_dye() {
    let half = |product| (Mass::from_g(50.0).unwrap(), product);
    let dye = substance("95-70-5", 1.0).stated_as(Form::FreeBase);
    let check = |other| {
        let mixed = Composition::mix(vec![half(Product::declared("shade", vec![dye.clone()])), half(other)]).unwrap();
        let report = limits::check(Table::of(EU), &mixed, Use::professional(Purpose::OxidativeColour));
        let of_dye = report.judgements.iter().find(|one| one.substance == "95-70-5").unwrap();
        (of_dye.level.best().ww_percent(), of_dye.undeclared_at_most.ww_percent(), of_dye.standing)
    };
    let open = Standing::CannotBeJudged { why: Why::Undeclared };
    assert_eq!(check(Product::declared_in_part("other", Vec::new())), (0.5, 50.0, open));
    assert_eq!(check(Product::declared("other", Vec::new())), (0.5, 0.0, Standing::Within));
}

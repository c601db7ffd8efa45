//! Conventions, checklist and card.

use foilwork::mix::{Card, CardRequest, Hazard, Recipe, handling_advice, natural_share};
use foilwork::quantity::{Duration, Mass, MassFraction, Share};
use foilwork::source::{Basis, Interval};
use rstest::rstest;

type Outcome = Result<(), Box<dyn std::error::Error>>;

fn g(value: f64) -> Mass {
    Mass::from_g(value).unwrap()
}

fn exact(percent: f64) -> Interval<MassFraction> {
    Interval::exact(MassFraction::from_ww_percent(percent).unwrap())
}

#[test]
fn every_handling_point_has_its_sources() {
    let all = [Hazard::Peroxide, Hazard::Persulfate, Hazard::Ammonia, Hazard::OxidativeDye, Hazard::Resorcinol];
    for point in handling_advice(&all) {
        assert_eq!(point.citations().count(), point.sources.len(), "{}: {:?}", point.text, point.sources);
        assert_eq!(point.basis() == Basis::CommonPractice, point.sources.is_empty());
        assert!(!point.text.contains("safe"), "{}", point.text);
    }
    assert!(handling_advice(&all).len() > handling_advice(&[Hazard::Peroxide]).len());
    assert!(handling_advice(&[Hazard::Peroxide]).len() > handling_advice(&[]).len());
    assert!(handling_advice(&[]).len() > 5, "some points hold for every bowl");
}

// Source: the rows of the trade (common practice), and a trade article for the half at half.
#[rstest]
#[case(10.0, 0.0, 25.0)]
#[case(40.0, 33.0, 50.0)]
#[case(60.0, 50.0, 67.0)]
// Where two rows meet, both hold.
#[case(50.0, 33.0, 67.0)]
#[case(75.0, 50.0, 100.0)]
#[case(90.0, 67.0, 100.0)]
#[case(100.0, 67.0, 100.0)]
fn grey_follows_the_convention(#[case] white: f64, #[case] low: f64, #[case] high: f64) -> Outcome {
    let natural = natural_share(Share::from_percent(white)?);
    assert_eq!((natural.share.low().percent(), natural.share.high().percent()), (low, high));
    assert_eq!((natural.basis, natural.printed_point.id), (Basis::CommonPractice, "grey-article"));
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
    let recipe: Recipe = "30 g J7-mist + 15 g J8-oat + 67.5 g 6%".parse()?;
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
  J7-mist       30 g
  J8-oat        15 g
  6%            67 g
  total        112 g
peroxide on the hair 3.59 % w/w
rounding to the scale moves a part by up to 0.4 %, the strength by -0.01 percentage points
mixed 2026-11-25 23:40, use by 2026-11-26 00:20
! gloves on";
    assert_eq!(card.to_string(), want);
    let json = serde_json::to_value(&card)?;
    assert_eq!(json["lines"][2]["mass_g"], 67.0);
    assert_eq!(json["use_by"], "2026-11-26 00:20");
    // A strength that is not stated is not a strength of nothing.
    let unknown = Card::new(&CardRequest { strengths: &[Some(exact(0.0)), None, Some(exact(6.0))], ..request })?;
    assert_eq!(
        (unknown.strength_as_applied, unknown.strength_unknown_in.as_slice()),
        (None, &["J8-oat".to_owned()][..])
    );
    assert!(unknown.to_string().contains("unknown (not stated: J8-oat)"));
    assert!(Card::new(&CardRequest { working_life: Duration::ZERO, ..request }).is_err());
    Ok(())
}

//! Quantities read what they print, and say what is wrong with other text.

use foilwork::quantity::{
    ActiveOxygen, AmountConcentration, Area, Density, Duration, Length, LossRate, Mass, MassConcentration,
    MassFraction, Molality, Normality, OxygenVolumes, PricePerKg, Quantity, Share, Temperature, TradeLabel, Volume,
};
use rstest::rstest;
use std::{collections::BTreeSet, fmt::Debug, str::FromStr};

#[rstest]
#[case::no_space("80g", 80.0)]
#[case::spaces_around("  80 g ", 80.0)]
#[case::decimals("7.25 g", 7.25)]
#[case::small("1.5e-3 g", 0.0015)]
#[case::sign("+4 g", 4.0)]
fn a_mass_is_read(#[case] text: &str, #[case] g: f64) {
    assert_eq!(text.parse::<Mass>().unwrap().g(), g);
}

#[rstest]
#[case::no_unit("80", "cannot read the mass \"80\" (write a number with a point and the unit, for example \"12 g\")")]
#[case::other_unit(
    "80 oz",
    "cannot read the mass \"80 oz\" (write a number with a point and the unit, for example \"12 g\")"
)]
#[case::comma(
    "7,5 g",
    "cannot read the mass \"7,5 g\" (write a number with a point and the unit, for example \"12 g\")"
)]
#[case::no_number("g", "cannot read the mass \"g\" (write a number with a point and the unit, for example \"12 g\")")]
#[case::words(
    "inf g",
    "cannot read the mass \"inf g\" (write a number with a point and the unit, for example \"12 g\")"
)]
#[case::empty("", "cannot read the mass \"\" (write a number with a point and the unit, for example \"12 g\")")]
#[case::below_zero("-1 g", "invalid mass (got -1 g): must be from 0 to 1e9 g")]
#[case::beyond_number("1e999 g", "invalid mass (got inf g): must be from 0 to 1e9 g")]
fn bad_text_is_no_mass(#[case] text: &str, #[case] message: &str) {
    assert_eq!(text.parse::<Mass>().unwrap_err().to_string(), message);
}

#[rstest]
#[case::bare_percent(
    "12 %",
    "cannot read the strength \"12 %\" (write a number with a point and the unit, for example \"12 % w/w\")"
)]
#[case::percent_by_volume(
    "12 % w/v",
    "cannot read the strength \"12 % w/v\" (write a number with a point and the unit, for example \"12 % w/w\")"
)]
#[case::too_much("101 % w/w", "invalid strength (got 101 % w/w): must be from 0 to 100 % w/w")]
fn bad_text_is_no_mass_fraction(#[case] text: &str, #[case] message: &str) {
    assert_eq!(text.parse::<MassFraction>().unwrap_err().to_string(), message);
}

/// Bounds, plain data, schema and key of one quantity.
fn keeps_its_word<Q>() -> &'static str
where
    Q: Quantity + Debug + FromStr<Err: Debug> + serde::Serialize + serde::de::DeserializeOwned + schemars::JsonSchema,
{
    let (low, high) = (Q::MIN.in_unit(), Q::MAX.in_unit());
    assert_eq!((Q::from_unit(low).unwrap(), Q::from_unit(high).unwrap()), (Q::MIN, Q::MAX), "{}", Q::WHAT);
    for outside in [low - 1.0, high + 1.0, f64::NAN, f64::INFINITY, f64::NEG_INFINITY] {
        let error = Q::from_unit(outside).unwrap_err();
        assert_eq!((error.quantity, error.unit), (Q::WHAT, Q::UNIT));
        assert!(Q::nearest(outside) >= Q::MIN && Q::nearest(outside) <= Q::MAX, "{}: {outside}", Q::WHAT);
    }
    for bound in [Q::MIN, Q::MAX] {
        assert_eq!(bound.to_string().parse::<Q>().unwrap(), bound, "{} reads what it prints", Q::WHAT);
        let json = serde_json::to_value(bound).unwrap();
        assert_eq!(json.as_f64(), Some(bound.in_unit()), "{} is a bare number as plain data", Q::WHAT);
        assert_eq!(serde_json::from_value::<Q>(json).unwrap(), bound);
    }
    assert!(serde_json::from_value::<Q>((high + 1.0).into()).is_err(), "{} is checked on the way in", Q::WHAT);
    let schema = serde_json::to_value(schemars::schema_for!(Q)).unwrap();
    assert_eq!(schema["x-unit"], Q::UNIT);
    assert_eq!((schema["minimum"].as_f64(), schema["maximum"].as_f64()), (Some(low), Some(high)), "{}", Q::WHAT);
    let snake = |c: char| c.is_ascii_lowercase() || c.is_ascii_digit() || c == '_';
    assert!(!Q::KEY.is_empty() && Q::KEY.chars().all(snake), "{}: {:?} ends a field's name", Q::WHAT, Q::KEY);
    Q::WHAT
}

#[test]
fn every_quantity_keeps_its_word() {
    let names = [
        keeps_its_word::<ActiveOxygen>(),
        keeps_its_word::<AmountConcentration>(),
        keeps_its_word::<Area>(),
        keeps_its_word::<Density>(),
        keeps_its_word::<Duration>(),
        keeps_its_word::<Length>(),
        keeps_its_word::<LossRate>(),
        keeps_its_word::<Mass>(),
        keeps_its_word::<MassConcentration>(),
        keeps_its_word::<MassFraction>(),
        keeps_its_word::<Molality>(),
        keeps_its_word::<Normality>(),
        keeps_its_word::<OxygenVolumes>(),
        keeps_its_word::<PricePerKg>(),
        keeps_its_word::<Share>(),
        keeps_its_word::<Temperature>(),
        keeps_its_word::<TradeLabel>(),
        keeps_its_word::<Volume>(),
    ];
    assert_eq!(names.iter().collect::<BTreeSet<_>>().len(), names.len(), "two quantities of one name: {names:?}");
}

/// A number of three hundred digits is told in powers of ten; one that is none stays what it is.
#[rstest]
#[case(1e300, "invalid mass (got 1e300 g): must be from 0 to 1e9 g")]
#[case(-1e-300, "invalid mass (got -1e-300 g): must be from 0 to 1e9 g")]
#[case(-5.0, "invalid mass (got -5 g): must be from 0 to 1e9 g")]
#[case(f64::NAN, "invalid mass (got NaN g): must be from 0 to 1e9 g")]
#[case(f64::INFINITY, "invalid mass (got inf g): must be from 0 to 1e9 g")]
fn a_refused_number_stays_short(#[case] grams: f64, #[case] want: &str) {
    assert_eq!(Mass::from_g(grams).unwrap_err().to_string(), want);
}

/// By hand: 86 400 seconds and 1440 minutes a day, 10 mm a cm, 273.15 K at 0 C, 10 g/L for each % w/v, 3 % for each 10 vol.
#[test]
fn quantities_are_the_same_in_their_other_units() {
    let pairs = [
        (LossRate::from_per_s(2.0).unwrap().per_day(), 172_800.0),
        (LossRate::from_per_day(172_800.0).unwrap().per_s(), 2.0),
        (
            LossRate::from_half_life(Duration::from_days(10.0).unwrap()).unwrap().per_day(),
            std::f64::consts::LN_2 / 10.0,
        ),
        (LossRate::from_per_day(0.1).unwrap().half_life().unwrap().days(), 10.0 * std::f64::consts::LN_2),
        (Share::from_fraction(0.25).unwrap().percent(), 25.0),
        (Share::from_percent(25.0).unwrap().fraction(), 0.25),
        (MassFraction::from_fraction(0.12).unwrap().ww_percent(), 12.0),
        (MassFraction::from_ww_percent(12.0).unwrap().fraction(), 0.12),
        (MassConcentration::from_wv_percent(6.0).unwrap().g_per_l(), 60.0),
        (MassConcentration::from_g_per_l(60.0).unwrap().wv_percent(), 6.0),
        (Length::from_mm(25.0).unwrap().cm(), 2.5),
        (Length::from_cm(2.5).unwrap().mm(), 25.0),
        (Temperature::from_celsius(20.0).unwrap().kelvin(), 293.15),
        (Duration::from_h(1.5).unwrap().min(), 90.0),
        (Duration::from_min(90.0).unwrap().h(), 1.5),
        (Duration::from_days(2.0).unwrap().min(), 2880.0),
        (Duration::from_min(2880.0).unwrap().days(), 2.0),
        (TradeLabel::from_vol(20.0).unwrap().percent(), 6.0),
        (Mass::from_g(30.0).unwrap().times(2.5).unwrap().g(), 75.0),
    ];
    for (place, (got, want)) in pairs.into_iter().enumerate() {
        assert!((got - want).abs() <= 1e-12 * want, "{place}: {got}, want {want}");
    }
    let (some, more) = (Mass::from_g(30.0).unwrap(), Mass::from_g(45.0).unwrap());
    assert_eq!(((some + more).g(), [some, more].into_iter().sum::<Mass>().g()), (75.0, 75.0));
    assert_eq!((more.minus_or_zero(some).g(), some.minus_or_zero(more).g()), (15.0, 0.0));
    let (short, long) = (Duration::from_min(30.0).unwrap(), Duration::from_min(45.0).unwrap());
    assert_eq!(((short + long).min(), [short, long].into_iter().sum::<Duration>().min()), (75.0, 75.0));
    assert!(MassConcentration::from_wv_percent(200.0).is_ok());
    for outside in [-0.1, 200.1, f64::NAN] {
        assert!(MassConcentration::from_wv_percent(outside).is_err(), "{outside}");
    }
}

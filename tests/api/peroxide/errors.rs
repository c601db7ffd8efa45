use foilwork::{
    peroxide::{
        Conditions, KnownMass, KnownVolume, StatedStrength, Strength, StrengthUnit, blend_two, convert, density,
        dilute, make_up,
    },
    quantity::{Mass, MassConcentration, MassFraction, Quantity, Temperature, TradeLabel, Volume},
};
use rstest::rstest;

fn ww(percent: f64) -> MassFraction {
    MassFraction::from_ww_percent(percent).unwrap()
}

fn g(grams: f64) -> Mass {
    Mass::from_g(grams).unwrap()
}

#[rstest]
#[case(
    "",
    "no strength in \"\": write a number with its unit, for example 6 % w/w, 6 % w/v, 19.8 volumes or 20 vol label"
)]
#[case("6", "the strength 6 has no unit: write 6 % w/w, 6 % w/v, 6 volumes or 6 vol label")]
#[case(
    "6 %",
    "6 % hides its basis: write 6 % w/w (g in 100 g), 6 % w/v (g in 100 mL), or 20 vol for the label of the trade"
)]
#[case("50 percent", "50 % hides its basis: write 50 % w/w (g in 100 g), 50 % w/v (g in 100 mL)")]
#[case(
    "100 vol",
    "invalid trade label (got 100 vol label): must be from 1 to 60 vol (state a stronger solution in % w/w, % w/v or volumes)"
)]
#[case("1 N", "a bottle states its strength in % w/w, % w/v, g/L, volumes or as a vol label (got N): convert it first")]
#[case("-1 % w/w", "invalid strength (got -1 % w/w): must be from 0 to 100 % w/w")]
#[case("101 % w/w", "invalid strength (got 101 % w/w): must be from 0 to 100 % w/w")]
#[case("6,5 % w/w", "cannot read \"6,5 % w/w\": write the number with a point, 6.5 % w/w")]
#[case(
    "6 % w/x",
    "unknown unit of strength \"% w/x\": give one of % w/w, % w/v, g/L, mol/L, mol/kg, N, % active oxygen, volumes (did you mean % w/v?)"
)]
fn texts_that_state_no_strength(#[case] text: &str, #[case] want: &str) {
    assert_eq!(text.parse::<StatedStrength>().unwrap_err().to_string(), want);
}

#[test]
fn no_number_outside_its_range_becomes_a_strength() {
    for &unit in StrengthUnit::ALL {
        for bad in [-1.0, -1e-300, f64::NAN, f64::INFINITY, f64::NEG_INFINITY, 1e9] {
            assert!(Strength::of(bad, unit).is_err(), "{bad} {unit}");
        }
    }
    for bad in [0.0, 0.9, 61.0, f64::NAN, f64::INFINITY] {
        assert!(TradeLabel::from_vol(bad).is_err());
    }
}

#[rstest]
#[case(
    3.0,
    12.0,
    60.0,
    "cannot reach 12 % w/w: the strongest stock is 3 % w/w, so anything from 0 % w/w to 3 % w/w is reachable"
)]
#[case(12.0, 3.0, 0.0, "the total is zero: give a mass above 0 g")]
fn dilutions_that_cannot_be(#[case] stock: f64, #[case] target: f64, #[case] total: f64, #[case] want: &str) {
    assert_eq!(dilute(ww(stock), ww(target), g(total)).unwrap_err().to_string(), want);
}

#[test]
fn blends_that_cannot_be() {
    let below = blend_two(ww(6.0), ww(12.0), ww(3.0), KnownMass::Total(g(60.0))).unwrap_err();
    assert_eq!(
        below.to_string(),
        "cannot reach 3 % w/w: the weakest stock is 6 % w/w, so anything from 6 % w/w to 12 % w/w is reachable (add a \
         diluent to go lower)"
    );
    let unused = blend_two(ww(6.0), ww(12.0), ww(12.0), KnownMass::First(g(60.0))).unwrap_err();
    assert_eq!(
        unused.to_string(),
        "a blend of 12 % w/w holds none of the 6 % w/w part: leave it out, or change the target"
    );
}

#[test]
fn no_density_where_none_is_known() {
    let warm = Temperature::from_celsius(60.0).unwrap();
    assert_eq!(
        density(ww(6.0), warm).unwrap_err().to_string(),
        "no density at 60 C: known from 0 to 50 C (measure the density and give it in g/mL)"
    );
    assert_eq!(
        density(ww(80.0), Temperature::REFERENCE).unwrap_err().to_string(),
        "no density for 80 % w/w: known from 0 to 70 % w/w (measure the density and give it in g/mL)"
    );
    let strong = Strength::of(100.0, StrengthUnit::WvPercent).unwrap();
    assert_eq!(
        convert(strong, StrengthUnit::WwPercent, &Conditions::default()).unwrap_err().to_string(),
        "no density for 100 % w/v: stronger than 70 % w/w (measure the density and give it in g/mL)"
    );
    // Without a density nothing stands in the way.
    assert!(convert(strong, StrengthUnit::Volumes, &Conditions::at(warm)).is_ok());
    let pure = Strength::of(100.0, StrengthUnit::WwPercent).unwrap();
    assert!(convert(pure, StrengthUnit::MolPerKg, &Conditions::default()).is_err(), "no water in it");
}

#[test]
fn nothing_cannot_be_made_up() {
    let g_per_l = |value| MassConcentration::from_g_per_l(value).unwrap();
    let none = Volume::MIN;
    let said = |known| make_up(g_per_l(120.0), g_per_l(60.0), known).unwrap_err().to_string();
    assert_eq!(said(KnownVolume::Stock(none)), "the volume of stock is zero: give more than 0");
    assert_eq!(said(KnownVolume::Total(none)), "the total volume is zero: give more than 0");
    let some = KnownVolume::Stock(Volume::from_ml(30.0).unwrap());
    let said = |stock, target| make_up(g_per_l(stock), g_per_l(target), some).unwrap_err().to_string();
    assert_eq!(said(0.0, 0.0), "the strength of the stock is zero: give more than 0");
    assert_eq!(said(120.0, 0.0), "the target is zero: give more than 0");
}

use foilwork::{
    column,
    peroxide::{Conditions, MolarVolume, SolutionDensity, Strength, StrengthUnit, convert},
    quantity::{Density, Temperature},
};
use proptest::{collection::vec, prelude::*, sample::select};

/// Ordinary numbers, the edges of every unit, and everything that is no strength.
fn value() -> impl Strategy<Value = f64> {
    const EDGES: &[f64] = &[0.0, -0.0, 47.1, 70.0, 70.000_000_1, 100.0, 200.0, 500.0, 2000.0, 1e5, -1.0, 1e300];
    prop_oneof![
        4 => 0.0..120.0_f64,
        2 => 0.0..2100.0_f64,
        2 => select(EDGES),
        1 => select(&[f64::NAN, f64::INFINITY, f64::NEG_INFINITY][..]),
    ]
}

proptest! {
    #[test]
    fn a_column_is_the_scalar_rule_bit_by_bit(
        values in vec(value(), 0..40),
        from in select(StrengthUnit::ALL),
        to in select(StrengthUnit::ALL),
        celsius in 0.0..=50.0_f64,
        molar_volume in select(MolarVolume::ALL),
        measured in proptest::option::of(0.9..1.4_f64),
    ) {
        let mut at = Conditions::at(Temperature::from_celsius(celsius).unwrap()).with_molar_volume(molar_volume);
        if let Some(g_per_ml) = measured {
            at = at.with_density(SolutionDensity::measured(Density::from_g_per_ml(g_per_ml).unwrap()));
        }
        let mut out = vec![1.0; values.len()];
        let outcome = column::convert_strengths(&values, from, to, &at, &mut out).unwrap();
        let mut refused = Vec::new();
        for (row, (&x, &y)) in values.iter().zip(&out).enumerate() {
            match Strength::of(x, from).map_err(Into::into).and_then(|s| convert(s, to, &at)) {
                Ok(want) => prop_assert_eq!(want.number().to_bits(), y.to_bits(), "{} {} -> {}", x, from, to),
                Err(_) => {
                    prop_assert!(y.is_nan(), "{x} {from} -> {to}: got {y}, the scalar rule refuses");
                    if !x.is_nan() {
                        refused.push(row);
                    }
                }
            }
        }
        prop_assert_eq!(outcome.refused, refused.len());
        prop_assert_eq!(outcome.first, refused.first().copied());
    }
}

#[test]
fn columns_of_different_length_are_refused() {
    let ww = StrengthUnit::WwPercent;
    let error = column::convert_strengths(&[1.0, 2.0], ww, ww, &Conditions::default(), &mut [0.0]).unwrap_err();
    assert_eq!(error.to_string(), "columns of different length (got 1 and 2 values): give one value for each row");
    let hot = Conditions::at(Temperature::from_celsius(51.0).unwrap());
    assert!(column::convert_strengths(&[1.0], ww, StrengthUnit::GPerL, &hot, &mut [0.0]).is_err());
}

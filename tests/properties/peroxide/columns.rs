use foilwork::{
    column::{self, Cells, Draw},
    peroxide::{
        BlendError, Conditions, KnownMass, KnownVolume, MolarVolume, SolutionDensity, Strength, StrengthUnit,
        TwoPartBlend, blend_two, convert,
    },
    quantity::{Density, Mass, MassFraction, Temperature},
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

/// Rows that lie apart, as those of a table do.
#[derive(Debug)]
struct EverySecond<'a>(&'a [f64]);

impl Draw for EverySecond<'_> {
    fn rows(&self) -> usize {
        self.0.len().div_ceil(2)
    }

    fn draw(&self, start: usize, block: &mut [f64]) {
        for (slot, value) in block.iter_mut().zip(self.0.iter().skip(2 * start).step_by(2)) {
            *slot = *value;
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    #[test]
    fn blends_are_the_scalar_rule_bit_by_bit_wherever_the_rows_lie(
        rows in vec([value(), value(), value(), value()], 1..700),
        which in 0..3_usize,
    ) {
        let known = [KnownMass::Total, KnownMass::First, KnownMass::Second][which];
        let column = |place: usize| rows.iter().map(|row| row[place]).collect::<Vec<_>>();
        let (first, second, target) = (column(0), column(1), column(2));
        let scattered: Vec<f64> = rows.iter().flat_map(|row| [row[3], -1.0]).collect();
        let (mut one, mut other) = (vec![0.0; rows.len()], vec![0.0; rows.len()]);
        let strengths = [&first, &second, &target].map(Cells::from);
        let masses = EverySecond(&scattered);
        let outcome = column::blends(strengths, known, Cells::Drawn(&masses), [&mut one, &mut other]).unwrap();
        let mut refused = Vec::new();
        for (row, [w1, w2, w, mass]) in rows.iter().enumerate() {
            let [w1, w2, w] = [w1, w2, w].map(|w| MassFraction::from_ww_percent(*w));
            let blend = || -> Result<TwoPartBlend, BlendError> { blend_two(w1?, w2?, w?, known(Mass::from_g(*mass)?)) };
            match blend() {
                Ok(blend) => {
                    let want = [blend.first.g(), blend.second.g()].map(f64::to_bits);
                    prop_assert_eq!([one[row], other[row]].map(f64::to_bits), want, "{:?}", rows[row]);
                }
                Err(_) => {
                    prop_assert!(one[row].is_nan() && other[row].is_nan(), "{:?}", rows[row]);
                    if !rows[row].iter().any(|value| value.is_nan()) {
                        refused.push(row);
                    }
                }
            }
        }
        prop_assert_eq!((outcome.refused, outcome.first), (refused.len(), refused.first().copied()));
    }
}

#[test]
fn what_is_made_up_to_a_mark_counts_by_volume() {
    let [mut stock, mut total] = [[0.0], [0.0]];
    let strengths = [12.0, 6.0].map(Cells::from);
    let out = [&mut stock[..], &mut total[..]];
    let error = column::make_ups(strengths, StrengthUnit::WwPercent, KnownVolume::Total, 1.0.into(), out).unwrap_err();
    assert_eq!(
        error.to_string(),
        "% w/w counts by mass: weigh it (dilute), or convert it to a unit that counts by volume"
    );
}

#[test]
fn columns_of_different_length_are_refused() {
    let ww = StrengthUnit::WwPercent;
    let error = column::convert_strengths(&[1.0, 2.0], ww, ww, &Conditions::default(), &mut [0.0]).unwrap_err();
    assert_eq!(error.to_string(), "columns of different length (got 2 and 1 values): give one value for each row");
    let hot = Conditions::at(Temperature::from_celsius(51.0).unwrap());
    assert!(column::convert_strengths(&[1.0], ww, StrengthUnit::GPerL, &hot, &mut [0.0]).is_err());
}

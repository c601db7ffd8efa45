use foilwork::{
    column::{Cells, loss_rates, strengths_after},
    peroxide::{PreDilution, StrengthUnit, Titration, loss_rate, read_glass, strength_after},
    quantity::{AmountConcentration, Duration, LossRate, MassFraction, Volume},
    source::Interval,
};
use proptest::prelude::*;

fn glass(ml: f64, tolerance: f64) -> Interval<Volume> {
    read_glass(Volume::from_ml(ml).unwrap(), Volume::from_ml(tolerance).unwrap()).unwrap()
}

proptest! {
    #[test]
    fn the_expected_titre_gives_the_strength_back(
        strength in 0.01..15.0_f64, titrant in 0.001..0.2_f64, aliquot in 1.0..50.0_f64, mark in 10.0..1000.0_f64,
    ) {
        let titration = Titration {
            titrant: Interval::exact(AmountConcentration::from_mol_per_l(titrant).unwrap()),
            aliquot: glass(aliquot, 0.01),
            dilution: Some(PreDilution { taken: glass(10.0, 0.02), made_up_to: glass(mark, 0.1) }),
        };
        let bottle = Interval::exact(AmountConcentration::from_mol_per_l(strength).unwrap());
        let titre = titration.expected_titre(bottle).unwrap();
        let back = titration.strength(Interval::exact(titre.best())).unwrap();
        prop_assert!((back.best().mol_per_l() / strength - 1.0).abs() < 1e-12);
        prop_assert!(back.low() < back.best() && back.best() < back.high());
        prop_assert!(titre.low() < titre.best() && titre.best() < titre.high());
    }

    #[test]
    fn ageing_undoes_itself_falls_and_adds_up(
        percent in 0.1..60.0_f64, per_day in 0.0..0.5_f64, first in 0.1..30.0_f64, second in 0.1..30.0_f64,
    ) {
        let fresh = Interval::exact(MassFraction::from_ww_percent(percent).unwrap());
        let rate = Interval::exact(LossRate::from_per_day(per_day).unwrap());
        let days = |d: f64| Duration::from_days(d).unwrap();
        let once = strength_after(fresh, rate, days(first + second)).best();
        let twice = strength_after(strength_after(fresh, rate, days(first)), rate, days(second)).best();
        prop_assert!((once.ww_percent() / twice.ww_percent() - 1.0).abs() < 1e-10);
        prop_assert!(once <= fresh.best());
        let found = loss_rate(fresh, Interval::exact(once), days(first + second)).unwrap().best();
        prop_assert!((found.per_day() - per_day).abs() < 1e-9);
    }

    #[test]
    fn decay_keeps_what_does_not_leave(percent in 1.0..60.0_f64, left in 0.01..=1.0_f64) {
        // 100 g of solution: the peroxide that decays leaves 18.015 of its 34.014 parts behind as water.
        let rate = LossRate::from_per_day(-f64::ln(left)).unwrap();
        let fresh = MassFraction::from_ww_percent(percent).unwrap();
        let day = Duration::from_days(1.0).unwrap();
        let aged = strength_after(Interval::exact(fresh), Interval::exact(rate), day).best();
        let peroxide = percent * left;
        let water = 100.0 - percent + (percent - peroxide) * 18.015 / 34.014;
        prop_assert!((aged.ww_percent() - 100.0 * peroxide / (peroxide + water)).abs() < 1e-9);
    }
}

/// Rounding makes no peroxide: what is not stored at all, or loses less than a last place, is as it was in every unit, what loses a
/// little is never above it, and a rate can be told from the two.
#[test]
fn no_strength_rises_in_storage() {
    for unit in StrengthUnit::ALL {
        let fresh: Vec<f64> = (1..4_000).map(|hundredths| f64::from(hundredths) / 100.0).collect();
        for rate in [0.0, 1e-20, 1e-17, 1e-16, 3e-16, 1e-12] {
            let mut later = vec![0.0; fresh.len()];
            let outcome = strengths_after(Cells::Each(&fresh), *unit, rate.into(), 1.0.into(), &mut later).unwrap();
            assert_eq!(outcome.refused, 0);
            let mut rates = vec![0.0; fresh.len()];
            let told = loss_rates(Cells::Each(&fresh), Cells::Each(&later), *unit, 1.0.into(), &mut rates).unwrap();
            assert_eq!(told.refused, 0, "{unit} at {rate}");
            for (before, after) in fresh.iter().zip(&later) {
                assert!(after <= before && (rate > 1e-17 || after == before), "{before} {unit} at {rate}: {after}");
            }
        }
    }
}

/// A loss that hardly shows is as exact as a large one: of 1 - x there is left so much that the rate of a day is the series
/// x + x^2 / 2 + x^3 / 3 and so on.
#[test]
fn a_loss_that_hardly_shows_is_exact() {
    let molar = |strength: f64| Interval::exact(AmountConcentration::from_mol_per_l(strength).unwrap());
    for halvings in [5, 10, 20, 30, 40, 50] {
        let x = 0.5_f64.powi(halvings);
        let series: f64 = (1..=12).rev().map(|n| x.powi(n) / f64::from(n)).sum();
        let found = loss_rate(molar(4.0), molar(4.0 * (1.0 - x)), Duration::from_days(1.0).unwrap()).unwrap();
        assert!((found.best().per_day() / series - 1.0).abs() < 1e-15, "{halvings}: {}", found.best().per_day());
    }
}

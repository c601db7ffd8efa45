//! No estimate that goes in with bounds comes out without them, and every value within them stays within.

use foilwork::{
    peroxide::{
        Conditions, Objective, PreDilution, Shelf, SolutionDensity, StatedStrength, Stock, StrengthUnit, Titration,
        blend_shelf, convert_interval, convert_interval_to, dilute_volume, loss_rate, mix_strengths, mix_volumes,
        round_to_scale, strength_after, time_until,
    },
    quantity::{
        AmountConcentration, Duration, LossRate, Mass, MassFraction, OxygenVolumes, Quantity, Temperature, Volume,
    },
    source::Interval,
};
use proptest::{prelude::*, sample::select};

/// An estimate with room on both sides, and a share from 0 to 1 to pick a value from between its bounds.
fn estimate<Q: Quantity + std::fmt::Debug>(low: f64, high: f64) -> impl Strategy<Value = Interval<Q>> {
    let width = high - low;
    (0.1..0.9_f64, 0.001..0.05_f64, 0.001..0.05_f64).prop_map(move |(at, below, above)| {
        let at = low + at * width;
        Interval::ordered(Q::nearest(at - below * width), Q::nearest(at), Q::nearest(at + above * width))
    })
}

fn between<Q: Quantity>(estimate: Interval<Q>, share: f64) -> Q {
    Q::nearest(estimate.low().in_unit() + share * (estimate.high().in_unit() - estimate.low().in_unit()))
}

/// Has bounds, and encloses what the middle of the inputs gives up to the last bits.
fn encloses<Q: Quantity>(found: Interval<Q>, inside: Q) -> bool {
    let slack = 1e-9 * inside.in_unit().abs().max(1e-9);
    !found.is_exact()
        && found.low().in_unit() <= inside.in_unit() + slack
        && inside.in_unit() <= found.high().in_unit() + slack
}

fn exact<Q: Quantity>(value: Q) -> Interval<Q> {
    Interval::exact(value)
}

proptest! {
    #[test]
    fn conversions_keep_bounds(
        strength in estimate::<MassFraction>(1.0, 60.0), share in 0.0..=1.0_f64,
        to in select(StrengthUnit::ALL), cream in any::<bool>(),
    ) {
        let density = if cream { SolutionDensity::Emulsion } else { SolutionDensity::Aqueous };
        let at = Conditions::default().with_density(density);
        let found = convert_interval(strength, to, &at).unwrap();
        prop_assert!(found.low() < found.best() && found.best() < found.high());
        let one = convert_interval(between(strength, share), to, &at).unwrap();
        prop_assert!(found.low().number() <= one.best().number() * (1.0 + 1e-9));
        prop_assert!(found.high().number() >= one.best().number() * (1.0 - 1e-9));
        let there: Interval<OxygenVolumes> = convert_interval_to(strength, &at).unwrap();
        let back: Interval<MassFraction> = convert_interval_to(there, &at).unwrap();
        prop_assert!(encloses(back, strength.low()) && encloses(back, strength.high()));
    }

    #[test]
    fn mixtures_keep_bounds(
        one in estimate::<MassFraction>(1.0, 40.0), other in estimate::<MassFraction>(1.0, 40.0),
        amounts in (1.0..200.0_f64, 1.0..200.0_f64), shares in (0.0..=1.0_f64, 0.0..=1.0_f64),
    ) {
        let g = |value| Mass::from_g(value).unwrap();
        let (first, second) = (between(one, shares.0), between(other, shares.1));
        let weighed = [(one, g(amounts.0)), (other, g(amounts.1))];
        let inside = mix_strengths(&[(first, g(amounts.0)), (second, g(amounts.1))]).unwrap().strength;
        prop_assert!(inside.is_exact());
        prop_assert!(encloses(mix_strengths(&weighed).unwrap().strength, inside.best()));
        prop_assert!(!round_to_scale(&weighed, g(0.1)).unwrap().strength.is_exact());
        // One exact part takes no bounds away.
        prop_assert!(!mix_strengths(&[weighed[0], (exact(MassFraction::ZERO), g(50.0))]).unwrap().strength.is_exact());

        let ml = |value| Volume::from_ml(value).unwrap();
        let poured = mix_volumes(&[(one, ml(amounts.0)), (other, ml(amounts.1))], Temperature::REFERENCE).unwrap();
        let inside = mix_volumes(&[(first, ml(amounts.0)), (second, ml(amounts.1))], Temperature::REFERENCE).unwrap();
        prop_assert!(encloses(poured.strength, inside.strength.best()));
        prop_assert!(encloses(poured.total, inside.total.best()) && encloses(poured.volume, inside.volume.best()));
        // Exact strengths have the bounds of the densities.
        prop_assert!(!inside.total.is_exact() && !inside.volume.is_exact());
    }

    #[test]
    fn the_shelf_keeps_bounds(
        strong in estimate::<MassFraction>(8.0, 12.0), weak in estimate::<MassFraction>(2.0, 4.0),
        objective in select(Objective::ALL),
    ) {
        let shelf = Shelf::new(vec![Stock::new("strong", strong), Stock::new("weak", weak)]).unwrap();
        let (target, total) = (MassFraction::from_ww_percent(6.0).unwrap(), Mass::from_g(80.0).unwrap());
        let blend = blend_shelf(&shelf, target, total, objective).unwrap();
        prop_assert!(encloses(blend.strength().unwrap(), target));
        prop_assert!(!blend.round_to_scale(Mass::from_g(1.0).unwrap()).unwrap().strength.is_exact());
    }

    #[test]
    fn volumes_and_labels_keep_bounds(
        stock in 10.0..60.0_f64, target in 0.5..9.0_f64, text in select(vec!["6 % w/v", "60 g/L", "20 volumes", "20 vol label"]),
    ) {
        let ww = |percent| MassFraction::from_ww_percent(percent).unwrap();
        let made = dilute_volume(ww(stock), ww(target), Volume::from_ml(500.0).unwrap(), Temperature::REFERENCE).unwrap();
        prop_assert!(!made.stock.is_exact() && !made.water.is_exact() && !made.contraction().is_exact());
        let stated: StatedStrength = text.parse().unwrap();
        prop_assert!(!stated.mass_fraction(Temperature::REFERENCE).unwrap().is_exact());
    }

    #[test]
    fn assays_keep_bounds(
        titre in estimate::<Volume>(5.0, 25.0), aliquot in estimate::<Volume>(5.0, 25.0),
        taken in estimate::<Volume>(5.0, 25.0), titrant in estimate::<AmountConcentration>(0.01, 0.03),
        share in 0.0..=1.0_f64,
    ) {
        let mark = Volume::from_ml(250.0).unwrap();
        let titration = |titrant, aliquot, taken| Titration {
            titrant, aliquot, dilution: Some(PreDilution { taken, made_up_to: exact(mark) }),
        };
        let wide = titration(titrant, aliquot, taken);
        let narrow =
            titration(exact(between(titrant, share)), exact(between(aliquot, 1.0 - share)), exact(between(taken, share)));
        let found = wide.strength(titre).unwrap();
        prop_assert!(encloses(found, narrow.strength(exact(between(titre, share))).unwrap().best()));
        let one = narrow.strength(titre).unwrap();
        prop_assert!(!one.is_exact(), "the bounds of the titre alone");
        prop_assert!(encloses(wide.expected_titre(found).unwrap(), titre.best()));
    }

    #[test]
    fn ageing_keeps_bounds(
        fresh in estimate::<MassFraction>(6.0, 12.0), rate in estimate::<LossRate>(1e-4, 1e-2),
        days in 1.0..300.0_f64, shares in (0.0..=1.0_f64, 0.0..=1.0_f64),
    ) {
        let elapsed = Duration::from_days(days).unwrap();
        let inside = strength_after(exact(between(fresh, shares.0)), exact(between(rate, shares.1)), elapsed);
        let found = strength_after(fresh, rate, elapsed);
        prop_assert!(inside.is_exact() && encloses(found, inside.best()));
        prop_assert!(!loss_rate(fresh, exact(inside.low()), elapsed).is_ok_and(|rate| rate.is_exact()));
        let wanted = MassFraction::from_ww_percent(3.0).unwrap();
        let wait = time_until(exact(between(fresh, shares.0)), wanted, exact(between(rate, shares.1))).unwrap();
        prop_assert!(encloses(time_until(fresh, wanted, rate).unwrap(), wait.best()));
    }
}

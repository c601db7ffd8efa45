use foilwork::{
    peroxide::{Conditions, MolarVolume, Strength, StrengthUnit, convert, density},
    quantity::{MassFraction, Temperature},
};
use proptest::{prelude::*, sample::select};

fn conditions(celsius: f64, molar_volume: MolarVolume) -> Conditions {
    Conditions::at(Temperature::from_celsius(celsius).unwrap()).with_molar_volume(molar_volume)
}

fn in_unit(ww_percent: f64, unit: StrengthUnit, conditions: &Conditions) -> Strength {
    convert(Strength::of(ww_percent, StrengthUnit::WwPercent).unwrap(), unit, conditions).unwrap()
}

proptest! {
    #[test]
    fn every_pair_of_units_is_a_round_trip(
        ww_percent in 1e-9..=70.0_f64,
        celsius in 0.0..=50.0_f64,
        from in select(StrengthUnit::ALL),
        to in select(StrengthUnit::ALL),
        molar_volume in select(MolarVolume::ALL),
    ) {
        let at = conditions(celsius, molar_volume);
        let start = in_unit(ww_percent, from, &at);
        let there = convert(start, to, &at).unwrap();
        let back = convert(there, from, &at).unwrap();
        prop_assert!((back.number() / start.number() - 1.0).abs() < 1e-12, "{start} -> {there} -> {back}");
    }

    #[test]
    fn every_unit_rises_with_strength(
        weaker in 0.0..69.0_f64,
        step in 1e-6..=1.0_f64,
        celsius in 0.0..=50.0_f64,
        unit in select(StrengthUnit::ALL),
    ) {
        let at = conditions(celsius, MolarVolume::IdealAtm);
        prop_assert!(in_unit(weaker, unit, &at) < in_unit(weaker + step, unit, &at));
    }

    #[test]
    fn density_rises_with_strength_and_falls_with_heat(
        ww_percent in 0.0..69.0_f64,
        step in 0.01..=1.0_f64,
        celsius in 5.0..49.0_f64,
    ) {
        let rho = |w: f64, t: f64| {
            density(MassFraction::from_ww_percent(w).unwrap(), Temperature::from_celsius(t).unwrap()).unwrap()
        };
        prop_assert!(rho(ww_percent, celsius).best() < rho(ww_percent + step, celsius).best());
        prop_assert!(rho(ww_percent, celsius).best() > rho(ww_percent, celsius + step).best());
        prop_assert!(rho(ww_percent, celsius).low() < rho(ww_percent, celsius).best());
    }
}

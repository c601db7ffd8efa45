//! The same of strengths, in every unit: storage, made-up volumes, blends, densities and conversions.

use super::{
    blends, convert_intervals, convert_strengths, convert_strengths_at, densities, density_intervals,
    dilutions_by_volume, half_lives, loss_rates, make_ups, rates_of_half_lives, strengths_after,
    strengths_after_make_up, strengths_of_two, times_until,
    vouched::{about, none, promised},
};
use crate::{
    peroxide::{Conditions, KnownMass, KnownVolume, SolutionDensity, StrengthUnit},
    quantity::{Density, Quantity},
};

/// Below it, what is left of a division in steps might be too small to be exact.
const LEAST: f64 = 1e-200;

/// The largest number of each unit, as its type has it: % w/v is a tenth of g/L.
const UNITS: [(StrengthUnit, f64); 8] = [
    (StrengthUnit::WwPercent, 100.0),
    (StrengthUnit::WvPercent, 200.0),
    (StrengthUnit::GPerL, 2000.0),
    (StrengthUnit::MolPerL, 100.0),
    (StrengthUnit::MolPerKg, 1e5),
    (StrengthUnit::EqPerL, 200.0),
    (StrengthUnit::ActiveOxygenPercent, 47.1),
    (StrengthUnit::Volumes, 500.0),
];

fn strengths(most: f64) -> Vec<f64> {
    [about(0.0, most, &[0.03 * most, 0.4 * most]), vec![1e-190]].concat()
}

/// Up to a million a day, and a thousand million minutes.
fn rates() -> Vec<f64> {
    about(0.0, 1e6, &[0.0005, 0.3])
}

fn days() -> Vec<f64> {
    // What is next to no time at all might not be exact in minutes.
    about(0.0, 1e9 / 1440.0, &[1e-4, 37.0]).into_iter().filter(|days| *days != 0.0_f64.next_up()).collect()
}

/// Zero, which has two signs, and what is next to it are left.
#[test]
fn of_storage_all_but_next_to_nothing_is_vouched_for() {
    for (unit, most) in UNITS {
        let (strengths, rates, days) = (strengths(most), rates(), days());
        let after = |_: [f64; 3], later: f64| later < LEAST;
        promised([&strengths, &rates, &days], |[f, r, d], [out]| strengths_after(f, unit, r, d, out), after);
        let later = |[_, later, _]: [f64; 3], _: f64| later < LEAST;
        promised([&strengths, &strengths, &days], |[f, l, d], [out]| loss_rates(f, l, unit, d, out), later);
        promised([&strengths, &strengths, &rates], |[f, w, r], [out]| times_until(f, w, unit, r, out), later);
    }
    promised([&days()], |[days], [out]| rates_of_half_lives(days, out), none);
    promised([&rates()], |[rates], [out]| half_lives(rates, out), none);
}

#[test]
fn what_is_made_up_to_a_mark_is_vouched_for() {
    let volumes = about(0.0, 1e9, &[1e-3, 60.0, 333.3]);
    for (unit, most) in UNITS {
        if unit.is_by_mass() {
            continue;
        }
        let strengths = strengths(most);
        for known in [KnownVolume::Total, KnownVolume::Stock] {
            promised(
                [&strengths, &strengths, &volumes],
                |[stock, target, ml], out| make_ups([stock, target], unit, known, ml, out),
                // Of water alone there is no stock to measure.
                |[_, target, _], _| target == 0.0,
            );
        }
        promised(
            [&strengths, &volumes, &volumes],
            |[stock, taken, total], [out]| strengths_after_make_up(stock, unit, taken, total, out),
            none,
        );
    }
}

#[test]
fn blends_are_vouched_for() {
    let (strengths, masses) = (about(0.0, 100.0, &[3.0, 12.0]), about(0.0, 1e9, &[1e-3, 30.0, 5e8]));
    for known in [KnownMass::Total, KnownMass::First, KnownMass::Second] {
        promised(
            [&strengths, &strengths, &strengths, &masses],
            |[first, second, target, mass], out| blends([first, second, target], known, mass, out),
            none,
        );
    }
    // A strength that is less than nothing by its sign alone, and a part that weighs nothing.
    let odd =
        |[w1, w2, m1, m2]: [f64; 4], _: f64| w1.is_sign_negative() || w2.is_sign_negative() || m1 == 0.0 || m2 == 0.0;
    promised(
        [&strengths, &strengths, &masses, &masses],
        |[w1, w2, m1, m2], [out]| strengths_of_two([w1, w2], [m1, m2], out),
        odd,
    );
}

/// From 0 to 70 % w/w and from 0 to 50 C.
#[test]
fn densities_are_vouched_for() {
    let (strengths, celsius) = (about(0.0, 70.0, &[3.0, 55.0]), about(0.0, 50.0, &[18.5]));
    promised([&strengths, &celsius], |[percent, celsius], out| density_intervals(percent, celsius, out), none);
    promised([&strengths, &celsius], |[percent, celsius], [out]| densities(percent, celsius, out), none);
    for celsius in [0.0, 31.7, 50.0] {
        promised([&strengths], |[percent], [out]| densities(percent, celsius.into(), out), none);
    }
}

#[test]
fn what_is_poured_is_vouched_for() {
    let strengths = [about(0.0, 70.0, &[3.0, 12.0]), vec![1e-190]].concat();
    let (volumes, celsius) = (about(0.0, 1e9, &[1e-3, 250.0]), about(0.0, 50.0, &[20.0]));
    // A target of nothing is plain water; with a sign it is left, as is what is next to nothing.
    let odd = |stock: f64, target: f64| stock < LEAST || (target < LEAST && target.to_bits() != 0);
    promised(
        [&strengths, &strengths, &volumes, &celsius],
        |[stock, target, total, celsius], out| dilutions_by_volume([stock, target], total, celsius, out),
        |[stock, target, _, _], _| odd(stock, target),
    );
    for celsius in [0.0, 50.0] {
        promised(
            [&strengths, &strengths, &volumes],
            |[stock, target, total], out| dilutions_by_volume([stock, target], total, celsius.into(), out),
            |[stock, target, _], _| odd(stock, target),
        );
    }
}

#[test]
fn conversions_are_vouched_for() {
    let measured = SolutionDensity::measured(Density::from_g_per_ml(1.08).unwrap());
    for product in [Conditions::default(), Conditions::default().with_density(measured)] {
        for ((from, most), to) in UNITS.into_iter().flat_map(|from| UNITS.map(|(to, _)| (from, to))) {
            let ordinary = [0.001 * most, 0.07 * most, 0.5 * most, most, most.next_up(), -1.0, 0.0, f64::NAN];
            promised([&ordinary], |[x], [out]| convert_strengths(x, from, to, &product, out), none);
            // A temperature without a density is left, where none is needed.
            let (values, celsius) = (about(0.0, most, &ordinary[..3]), about(0.0, 50.0, &[20.0]));
            let values: Vec<f64> = values.into_iter().filter(|x| *x != 0.0_f64.next_up()).collect();
            let outside = |celsius: f64| !(0.0..=50.0).contains(&celsius);
            promised(
                [&values, &celsius],
                |[x, celsius], [out]| convert_strengths_at(x, celsius, (from, to), &product, out),
                |[_, celsius], _| outside(celsius),
            );
            // Zero has two signs; which of them a bound has is left to the rule.
            let crosses = from.is_by_mass() != to.is_by_mass();
            promised(
                [&values, &celsius],
                |[x, celsius], out| convert_intervals(x, celsius, (from, to), &product, out),
                |[x, celsius], _| outside(celsius) || (crosses && x == 0.0),
            );
        }
    }
    // A product by one factor is vouched for at every number; a quotient in steps neither next to nothing nor at a zero with a sign.
    let (litre, hundred) = ((StrengthUnit::GPerL, 2000.0), (StrengthUnit::WvPercent, 200.0));
    for ((from, most), (to, _), steps) in [(litre, hundred, true), (hundred, litre, false)] {
        let values = [about(0.0, most, &[3.0]), vec![1e-199, 1e-201]].concat();
        promised(
            [&values],
            |[x], [out]| convert_strengths(x, from, to, &Conditions::default(), out),
            |[x], _| steps && x < LEAST && x.to_bits() != 0,
        );
    }
}

#[test]
fn the_largest_numbers_are_those_of_the_types() {
    for (unit, most) in UNITS {
        assert_eq!(unit.max(), most, "{unit}");
    }
    assert_eq!((Density::MAX.in_unit(), StrengthUnit::ALL.len()), (25.0, UNITS.len()));
}

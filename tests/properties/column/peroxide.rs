//! Storage, made-up volumes, pouring, densities and blends.

use super::{about, combined, hold};
use foilwork::{
    column::{self, Cells},
    peroxide::{
        Conditions, KnownMass, KnownVolume, MolarVolume, SolutionDensity, Strength, StrengthQuantity, StrengthUnit,
        VolumeStrength, blend_two, convert, convert_interval, density, dilute_volume, loss_rate, make_up, mix_two,
        strength_after, strength_after_make_up, time_until,
    },
    quantity::{
        ActiveOxygen, AmountConcentration, Density, Duration, LossRate, Mass, MassConcentration, MassFraction,
        Molality, Normality, OxygenVolumes, Quantity, Temperature, Volume,
    },
    source::Interval,
};
use rstest::rstest;

fn strengths<Q: Quantity>(scale: f64) -> Vec<f64> {
    let most = Q::MAX.in_unit() / scale;
    // The last two are less and more than they were, times ten and back.
    about(0.0, most, &[0.03 * most, 0.125 * most, 0.5 * most, 1.700_000_000_000_000_2, 7.285_714_285_714_286])
}

fn rates() -> Vec<f64> {
    about(0.0, LossRate::MAX.per_day(), &[1e-9, 0.0005, 0.02, 0.3])
}

fn days() -> Vec<f64> {
    about(0.0, Duration::MAX.days(), &[1e-4, 1.0, 0.3, 37.0])
}

fn volumes() -> Vec<f64> {
    about(0.0, Volume::MAX.ml(), &[1e-3, 60.0, 250.0, 333.3])
}

/// % w/v and g/L are one type: a number of the first is ten of the second.
fn storage<Q: StrengthQuantity + Into<Strength>>(unit: StrengthUnit, scale: f64) {
    let strengths = strengths::<Q>(scale);
    hold(
        &combined([&strengths, &rates(), &days()]),
        |[fresh, rates, days], [out]| column::strengths_after(fresh, unit, rates, days, out),
        |[given, rate, days]| {
            let (fresh, rate) = (Q::from_unit(given * scale).ok()?, LossRate::from_per_day(rate).ok()?);
            let left = strength_after(Interval::exact(fresh), Interval::exact(rate), Duration::from_days(days).ok()?);
            // Times ten and back is not always the same.
            Some([if left.best() < fresh { (left.best().in_unit() / scale).min(given) } else { given }])
        },
    );
    hold(
        &combined([&strengths, &strengths, &days()]),
        |[first, later, days], [out]| column::loss_rates(first, later, unit, days, out),
        |[first, later, days]| {
            let [first, later] = [Q::from_unit(first * scale).ok()?, Q::from_unit(later * scale).ok()?];
            let elapsed = Duration::from_days(days).ok()?;
            Some([loss_rate(Interval::exact(first), Interval::exact(later), elapsed).ok()?.best().per_day()])
        },
    );
    hold(
        &combined([&strengths, &strengths, &rates()]),
        |[fresh, wanted, rates], [out]| column::times_until(fresh, wanted, unit, rates, out),
        |[fresh, wanted, rate]| {
            let [fresh, wanted] = [Q::from_unit(fresh * scale).ok()?, Q::from_unit(wanted * scale).ok()?];
            let rate = Interval::exact(LossRate::from_per_day(rate).ok()?);
            Some([time_until(Interval::exact(fresh), wanted, rate).ok()?.best().days()])
        },
    );
}

fn made_up<Q: VolumeStrength>(unit: StrengthUnit, scale: f64) {
    let (strengths, volumes) = (strengths::<Q>(scale), volumes());
    for known in [KnownVolume::Stock, KnownVolume::Total] {
        hold(
            &combined([&strengths, &strengths, &volumes]),
            |[stock, target, volume], out| column::make_ups([stock, target], unit, known, volume, out),
            |[stock, target, volume]| {
                let [stock, target] = [Q::from_unit(stock * scale).ok()?, Q::from_unit(target * scale).ok()?];
                let made = make_up(stock, target, known(Volume::from_ml(volume).ok()?)).ok()?;
                Some([made.stock.ml(), made.total.ml()])
            },
        );
    }
    hold(
        &combined([&strengths, &volumes, &volumes]),
        |[stock, taken, total], [out]| column::strengths_after_make_up(stock, unit, taken, total, out),
        |[stock, taken, total]| {
            let [taken, total] = [Volume::from_ml(taken).ok()?, Volume::from_ml(total).ok()?];
            Some([strength_after_make_up(Q::from_unit(stock * scale).ok()?, taken, total).ok()?.in_unit() / scale])
        },
    );
}

#[rstest]
#[case(storage::<MassFraction>, StrengthUnit::WwPercent, 1.0)]
#[case(storage::<MassConcentration>, StrengthUnit::WvPercent, 10.0)]
#[case(storage::<MassConcentration>, StrengthUnit::GPerL, 1.0)]
#[case(storage::<AmountConcentration>, StrengthUnit::MolPerL, 1.0)]
#[case(storage::<Molality>, StrengthUnit::MolPerKg, 1.0)]
#[case(storage::<Normality>, StrengthUnit::EqPerL, 1.0)]
#[case(storage::<ActiveOxygen>, StrengthUnit::ActiveOxygenPercent, 1.0)]
#[case(storage::<OxygenVolumes>, StrengthUnit::Volumes, 1.0)]
#[case(made_up::<MassConcentration>, StrengthUnit::WvPercent, 10.0)]
#[case(made_up::<MassConcentration>, StrengthUnit::GPerL, 1.0)]
#[case(made_up::<AmountConcentration>, StrengthUnit::MolPerL, 1.0)]
#[case(made_up::<Normality>, StrengthUnit::EqPerL, 1.0)]
#[case(made_up::<OxygenVolumes>, StrengthUnit::Volumes, 1.0)]
fn of_each_unit(#[case] laws: fn(StrengthUnit, f64), #[case] unit: StrengthUnit, #[case] scale: f64) {
    laws(unit, scale);
}

#[test]
fn half_lives_and_rates() {
    hold(
        &combined([&days()]),
        |[days], [out]| column::rates_of_half_lives(days, out),
        |[days]| Some([LossRate::from_half_life(Duration::from_days(days).ok()?).ok()?.per_day()]),
    );
    hold(
        &combined([&rates()]),
        |[rates], [out]| column::half_lives(rates, out),
        |[rate]| Some([LossRate::from_per_day(rate).ok()?.half_life().ok()?.days()]),
    );
}

#[test]
fn densities() {
    let (strengths, celsius) = (about(0.0, 70.0, &[3.0, 12.0, 47.1]), about(0.0, 50.0, &[18.5, 25.0]));
    let found = |[percent, celsius]: [f64; 2]| {
        let temperature = Temperature::from_celsius(celsius).ok()?;
        Some(density(MassFraction::from_ww_percent(percent).ok()?, temperature).ok()?.to_array().map(Density::g_per_ml))
    };
    let rows = combined([&strengths, &celsius]);
    hold(&rows, |[percent, celsius], out| column::density_intervals(percent, celsius, out), found);
    hold(
        &rows,
        |[percent, celsius], [out]| column::densities(percent, celsius, out),
        |row| found(row).map(|[_, best, _]| [best]),
    );
    // One temperature for all rows; a missing one is no refusal.
    for celsius in [0.0, 31.7, 50.0] {
        hold(
            &combined([&strengths]),
            |[percent], [out]| column::densities(percent, celsius.into(), out),
            |[percent]| found([percent, celsius]).map(|[_, best, _]| [best]),
        );
    }
    let mut out = [0.0; 2];
    let outcome = column::densities(Cells::Each(&[3.0, 80.0]), f64::NAN.into(), &mut out).unwrap();
    assert!(outcome.refused == 0 && out.iter().all(|value| value.is_nan()), "{out:?}");
}

#[test]
fn two_that_are_poured_together() {
    let (strengths, masses) =
        (about(0.0, 100.0, &[3.0, 12.0]), about(0.0, Mass::MAX.g(), &[1e-3, 30.0, Mass::MAX.g() / 2.0]));
    let part = |ww, g| Some((MassFraction::from_ww_percent(ww).ok()?, Mass::from_g(g).ok()?));
    hold(
        &combined([&strengths, &strengths, &masses, &masses]),
        |[first, second, one, other], [out]| column::strengths_of_two([first, second], [one, other], out),
        |[first, second, one, other]| Some([mix_two(part(first, one)?, part(second, other)?).ok()?.ww_percent()]),
    );
    for known in [KnownMass::Total, KnownMass::First, KnownMass::Second] {
        hold(
            &combined([&strengths, &strengths, &strengths, &masses]),
            |[first, second, target, mass], out| column::blends([first, second, target], known, mass, out),
            |[first, second, target, mass]| {
                let [first, second, target] = [first, second, target].map(MassFraction::from_ww_percent);
                let known = known(Mass::from_g(mass).ok()?);
                let blend = blend_two(first.ok()?, second.ok()?, target.ok()?, known).ok()?;
                Some([blend.first.g(), blend.second.g()])
            },
        );
    }
}

#[test]
fn dilutions_by_volume() {
    let (strengths, volumes) = (about(0.0, 70.0, &[3.0, 12.0]), about(0.0, Volume::MAX.ml(), &[1e-3, 250.0]));
    let rule = |[stock, target, total, celsius]: [f64; 4]| {
        let [stock, target] = [stock, target].map(MassFraction::from_ww_percent);
        let (total, temperature) = (Volume::from_ml(total).ok()?, Temperature::from_celsius(celsius).ok()?);
        let made = dilute_volume(stock.ok()?, target.ok()?, total, temperature).ok()?;
        let [[a, b, c], [d, e, f], [g, h, i]] =
            [made.stock, made.water, made.contraction()].map(|volume| volume.to_array().map(Volume::ml));
        Some([a, b, c, d, e, f, g, h, i])
    };
    hold(
        &combined([&strengths, &strengths, &volumes, &about(0.0, 50.0, &[20.0])]),
        |[stock, target, total, celsius], out| column::dilutions_by_volume([stock, target], total, celsius, out),
        rule,
    );
    // Divided by a hundred in steps, the least targets would come to another number.
    hold(
        &combined([&[7.4e-322, 1e-200, 12.0], &[7.4e-322, 1e-320, 1e-200, 0.0], &[250.0], &[20.0]]),
        |[stock, target, total, celsius], out| column::dilutions_by_volume([stock, target], total, celsius, out),
        rule,
    );
    // One temperature for all rows.
    for celsius in [0.0, 20.0, 50.0] {
        hold(
            &combined([&strengths, &strengths, &volumes]),
            |[stock, target, total], out| column::dilutions_by_volume([stock, target], total, celsius.into(), out),
            |[stock, target, total]| rule([stock, target, total, celsius]),
        );
    }
}

fn most(unit: StrengthUnit) -> f64 {
    match unit {
        StrengthUnit::WwPercent => MassFraction::MAX.in_unit(),
        StrengthUnit::WvPercent => MassConcentration::MAX.in_unit() / 10.0,
        StrengthUnit::GPerL => MassConcentration::MAX.in_unit(),
        StrengthUnit::MolPerL => AmountConcentration::MAX.in_unit(),
        StrengthUnit::MolPerKg => Molality::MAX.in_unit(),
        StrengthUnit::EqPerL => Normality::MAX.in_unit(),
        StrengthUnit::ActiveOxygenPercent => ActiveOxygen::MAX.in_unit(),
        _ => OxygenVolumes::MAX.in_unit(),
    }
}

/// A temperature that is missing makes every row missing, and refuses none.
#[test]
fn a_missing_temperature_is_no_refusal() {
    let mut columns = [[0.0; 3]; 9];
    let (stock, target): (Cells<'_>, Cells<'_>) = (Cells::Each(&[12.0, 9.0, 80.0]), Cells::Each(&[3.0, 3.0, 3.0]));
    let out = columns.each_mut().map(|column| &mut column[..]);
    let outcome = column::dilutions_by_volume([stock, target], 250.0.into(), f64::NAN.into(), out).unwrap();
    assert_eq!((outcome.refused, outcome.first), (0, None));
    assert!(columns.iter().flatten().all(|value| value.is_nan()), "{columns:?}");
}

/// Every unit into every other, of water and of a product whose density was measured.
#[test]
fn conversions_at_a_temperature_for_each_row() {
    let measured = SolutionDensity::measured(Density::from_g_per_ml(1.08).unwrap());
    for product in
        [Conditions::default().with_molar_volume(MolarVolume::ALL[1]), Conditions::default().with_density(measured)]
    {
        for from in StrengthUnit::ALL.iter().copied() {
            let most = most(from);
            let values = about(0.0, most, &[0.001 * most, 0.07 * most, 0.5 * most]);
            let rows = combined([&values, &about(0.0, 50.0, &[20.0, 31.7])]);
            for to in StrengthUnit::ALL.iter().copied() {
                let at =
                    |celsius| Some(Conditions { temperature: Temperature::from_celsius(celsius).ok()?, ..product });
                hold(
                    &rows,
                    |[values, celsius], [out]| column::convert_strengths_at(values, celsius, (from, to), &product, out),
                    |[x, celsius]| Some([convert(Strength::of(x, from).ok()?, to, &at(celsius)?).ok()?.number()]),
                );
                hold(
                    &rows,
                    |[values, celsius], out| column::convert_intervals(values, celsius, (from, to), &product, out),
                    |[x, celsius]| {
                        let found = convert_interval(Strength::of(x, from).ok()?, to, &at(celsius)?).ok()?;
                        Some([found.low().number(), found.best().number(), found.high().number()])
                    },
                );
            }
        }
    }
}

/// One number for all rows is the same as a column of it.
#[test]
fn one_number_for_all_rows() {
    let strengths = strengths::<MassFraction>(1.0);
    let (mut same, mut each) = (vec![0.0; strengths.len()], vec![0.0; strengths.len()]);
    let halves = vec![0.5; strengths.len()];
    let of = |days: Cells<'_>, out: &mut [f64]| {
        column::strengths_after((&strengths).into(), StrengthUnit::WwPercent, 0.01.into(), days, out).unwrap()
    };
    assert_eq!(of(0.5.into(), &mut same), of((&halves).into(), &mut each));
    assert!(same.iter().zip(&each).all(|(one, other)| one.to_bits() == other.to_bits()), "{same:?} {each:?}");
}

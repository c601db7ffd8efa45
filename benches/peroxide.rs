//! Peroxide: scalar conversions (a budget of 20 ns each), columns, and blends from a shelf.

use criterion::{Criterion, Throughput, criterion_group, criterion_main};
use foilwork::{
    column,
    peroxide::{
        Conditions, KnownMass, Objective, Shelf, Stock, Strength, StrengthUnit, blend_shelf, blend_two, convert,
        convert_to, density, dilute,
    },
    quantity::{AmountConcentration, Mass, MassConcentration, MassFraction, OxygenVolumes, PricePerKg, Temperature},
};
use std::hint::black_box;

type Fallible = Result<(), Box<dyn std::error::Error>>;

fn scalar(c: &mut Criterion) -> Fallible {
    let conditions = Conditions::default();
    let ww = MassFraction::from_ww_percent(6.0)?;
    let wv = MassConcentration::from_wv_percent(6.0)?;
    let mut group = c.benchmark_group("peroxide/scalar");
    group.bench_function("% w/v to volumes", |b| {
        b.iter(|| convert_to::<OxygenVolumes>(black_box(wv), black_box(&conditions)));
    });
    group.bench_function("% w/v to mol/L", |b| {
        b.iter(|| convert_to::<AmountConcentration>(black_box(wv), black_box(&conditions)));
    });
    group.bench_function("% w/w to volumes", |b| {
        b.iter(|| convert_to::<OxygenVolumes>(black_box(ww), black_box(&conditions)));
    });
    group.bench_function("% w/v to % w/w", |b| {
        b.iter(|| convert_to::<MassFraction>(black_box(wv), black_box(&conditions)));
    });
    let strength = Strength::of(6.0, StrengthUnit::WwPercent)?;
    group.bench_function("any unit to any unit", |b| {
        b.iter(|| convert(black_box(strength), black_box(StrengthUnit::Volumes), black_box(&conditions)));
    });
    group.bench_function("density", |b| b.iter(|| density(black_box(ww), black_box(Temperature::REFERENCE))));
    let (stock, total) = (MassFraction::from_ww_percent(12.0)?, Mass::from_g(60.0)?);
    group.bench_function("dilute", |b| b.iter(|| dilute(black_box(stock), black_box(ww), black_box(total))));
    let weak = MassFraction::from_ww_percent(3.0)?;
    group.bench_function("blend of two", |b| {
        b.iter(|| blend_two(black_box(stock), black_box(weak), black_box(ww), KnownMass::Total(black_box(total))));
    });
    group.finish();
    Ok(())
}

fn columns(c: &mut Criterion) -> Fallible {
    let conditions = Conditions::default();
    let values: Vec<f64> = (0..100_000).map(|i| f64::from(i) * 6e-4).collect();
    let mut out = vec![0.0; values.len()];
    let mut group = c.benchmark_group("peroxide/column of 100 000");
    group.throughput(Throughput::Elements(100_000));
    for (name, from, to) in [
        ("% w/v to volumes", StrengthUnit::WvPercent, StrengthUnit::Volumes),
        ("% w/w to volumes", StrengthUnit::WwPercent, StrengthUnit::Volumes),
        ("% w/v to % w/w", StrengthUnit::WvPercent, StrengthUnit::WwPercent),
    ] {
        group.bench_function(name, |b| {
            b.iter(|| column::convert_strengths(black_box(&values), from, to, &conditions, &mut out));
        });
    }
    group.finish();
    Ok(())
}

/// A shelf of invented bottles, prices falling less than strength.
fn shelf(count: u32) -> Result<Shelf, Box<dyn std::error::Error>> {
    let bottle = |i: u32| -> Result<Stock, Box<dyn std::error::Error>> {
        let strength = MassFraction::from_ww_percent(f64::from(i * 7 % 13))?;
        let price = PricePerKg::from_per_kg(4.0 + f64::from(i * 5 % 11))?;
        Ok(Stock::new(format!("bottle {i}"), strength).with_price(price).with_in_hand(Mass::from_g(40.0)?))
    };
    Ok(Shelf::new((0..count).map(bottle).collect::<Result<_, _>>()?)?)
}

fn shelves(c: &mut Criterion) -> Fallible {
    let (target, total) = (MassFraction::from_ww_percent(6.0)?, Mass::from_g(60.0)?);
    let mut group = c.benchmark_group("peroxide/shelf");
    for count in [5, 12, 50] {
        let shelf = shelf(count)?;
        group.bench_function(format!("least cost of {count}"), |b| {
            b.iter(|| blend_shelf(black_box(&shelf), target, total, Objective::LeastCost));
        });
    }
    let shelf = shelf(12)?;
    for objective in [Objective::FewestBottles, Objective::LeastLeftover] {
        group.bench_function(format!("{objective} of 12"), |b| {
            b.iter(|| blend_shelf(black_box(&shelf), target, total, objective));
        });
    }
    group.finish();
    Ok(())
}

fn all(c: &mut Criterion) {
    for run in [scalar, columns, shelves] {
        run(c).expect("the inputs are in range");
    }
}

criterion_group!(benches, all);
criterion_main!(benches);

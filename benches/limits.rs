//! `limits`, one function each.

use criterion::{Criterion, criterion_group, criterion_main};
use foilwork::limits::{Jurisdiction, Purpose, Table, Use, check, check_peroxide};
use foilwork::mix::{Cas, Composition, Ingredient, Product};
use foilwork::quantity::{Mass, MassFraction};
use foilwork::source::Interval;
use std::hint::black_box;

/// Twenty ingredients of oxidative colour, all named by the EU table.
const DYES: [&str; 20] = [
    "7722-84-1",
    "7664-41-7",
    "16245-77-5",
    "615-50-9",
    "108-46-3",
    "608-25-3",
    "591-27-5",
    "2835-95-2",
    "55302-96-0",
    "95-88-5",
    "90-15-3",
    "2835-99-6",
    "16867-03-1",
    "54381-16-7",
    "83-56-7",
    "149330-25-6",
    "89-25-8",
    "111-90-0",
    "111-76-2",
    "131657-78-8",
];

fn benches(c: &mut Criterion) {
    let level = Interval::exact(MassFraction::from_ww_percent(0.1).unwrap_or(MassFraction::ZERO));
    let cas = DYES.iter().filter_map(|text| text.parse::<Cas>().ok());
    let ingredients: Vec<_> = cas.map(|cas| Ingredient::named(cas.to_string(), level).with_cas(cas)).collect();
    assert_eq!(ingredients.len(), 20);
    let gram = Mass::from_g(100.0).unwrap_or(Mass::ZERO);
    let Ok(bowl) = Composition::mix(vec![(gram, Product::declared("bowl", ingredients))]) else { return };
    let of = Use::professional(Purpose::OxidativeColour);
    let eu = Table::of(Jurisdiction::EuropeanUnion);
    assert!(check(eu, &bowl, of).judgements.len() >= 20);
    c.bench_function("limits/check/twenty_ingredients", |b| b.iter(|| check(black_box(eu), black_box(&bowl), of)));
    c.bench_function("limits/check_peroxide", |b| {
        b.iter(|| check_peroxide(black_box(Jurisdiction::EuropeanUnion), black_box(level), of));
    });
    let text = include_str!("../src/limits/data/limits.csv");
    c.bench_function("limits/read_built_in", |b| b.iter(|| Table::from_csv("all", black_box(text))));
}

criterion_group!(group, benches);
criterion_main!(group);

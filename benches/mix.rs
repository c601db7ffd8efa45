//! `mix`, one function each.

use criterion::{Criterion, criterion_group, criterion_main};
use foilwork::mix::{Recipe, as_applied, minimum_bowl};
use foilwork::quantity::{Mass, MassFraction, Share};
use foilwork::scale::weigh;
use foilwork::source::Interval;
use std::hint::black_box;

const RECIPE: &str = "30 g J7-mist + 15 g J8-oat + 4.5 g J9-slate + 67.5 g 6% + 3 g thickener + 2 g bond builder";

fn benches(c: &mut Criterion) {
    let masses = RECIPE.parse::<Recipe>().map(|r| r.masses().unwrap_or_default()).unwrap_or_default();
    let gram = Mass::from_g(1.0).unwrap_or(Mass::ZERO);
    c.bench_function("mix/weigh/six_parts", |b| b.iter(|| weigh(black_box(&masses), black_box(gram))));

    let strength = |percent| Interval::exact(MassFraction::from_ww_percent(percent).unwrap_or(MassFraction::ZERO));
    let parts: Vec<_> = masses.iter().zip([0.0, 0.0, 0.0, 6.0, 0.0, 0.0]).map(|(m, p)| (*m, strength(p))).collect();
    c.bench_function("mix/as_applied/six_parts", |b| b.iter(|| as_applied(black_box(&parts))));

    c.bench_function("mix/recipe/parse_six_parts", |b| b.iter(|| black_box(RECIPE).parse::<Recipe>()));
    if let (Ok(recipe), Ok(five)) = (RECIPE.parse::<Recipe>(), Share::from_percent(5.0)) {
        c.bench_function("mix/recipe/double", |b| b.iter(|| black_box(&recipe).times(2.into())));
        if let Ok(ratio) = recipe.ratio() {
            c.bench_function("mix/ratio/split_total", |b| b.iter(|| ratio.split_total(black_box(gram))));
            c.bench_function("mix/minimum_bowl", |b| b.iter(|| minimum_bowl(black_box(&ratio), gram, five)));
        }
    }
}

criterion_group!(group, benches);
criterion_main!(group);

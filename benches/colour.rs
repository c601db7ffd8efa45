//! `colour` and `toner`, one function each.

use criterion::{Criterion, Throughput, criterion_group, criterion_main};
use foilwork::{
    colour::{Difference, Hue, Lab, Level, Swatch, Tone, White, section_look},
    quantity::{Mass, Share},
    reader::Format,
    shop::{self, Shop},
    toner::{Exposed, Target, TonerRequest, find_toner},
};
use std::hint::black_box;

const SHOP: &str = include_str!("../examples/juniper_and_tide.toml");

fn level(number: f64) -> Level {
    Level::new(number).expect("a level of the bench")
}

/// Spread over the solid without a random generator: multiples of irrational steps.
fn colours(count: usize) -> Vec<(Lab, Lab)> {
    let at = |i: usize, step: f64| (i as f64 * step).fract();
    let lab = |i: usize| {
        Lab::new(100.0 * at(i, 0.618), 120.0 * at(i, 0.414) - 60.0, 120.0 * at(i, 0.732) - 60.0, White::D65TwoDegree)
    };
    (0..count).map(|i| (lab(i).expect("in range"), lab(i + count).expect("in range"))).collect()
}

fn ciede2000(c: &mut Criterion) {
    let pairs = colours(10_000);
    let mut group = c.benchmark_group("colour/ciede2000");
    group.throughput(Throughput::Elements(pairs.len() as u64));
    group.bench_function("pairs", |b| {
        b.iter(|| {
            let apart =
                |(first, second): &(Lab, Lab)| Difference::between(*first, *second).map_or(0.0, |d| d.ciede2000);
            black_box(&pairs).iter().map(apart).sum::<f64>()
        });
    });
    group.finish();
}

fn swatch(c: &mut Criterion) {
    let (natural, lifted) = (level(3.3), level(8.1));
    let tone = Tone::from_hues([Hue::Violet, Hue::Blue]);
    let (rest, foils) = (Swatch::natural(natural), Swatch::lightened(natural, lifted));
    let share = Share::from_percent(40.0).expect("a share");
    let mut group = c.benchmark_group("colour/swatch");
    group.bench_function("natural", |b| b.iter(|| Swatch::natural(black_box(natural))));
    group.bench_function("lightened", |b| b.iter(|| Swatch::lightened(black_box(natural), black_box(lifted))));
    group.bench_function("look", |b| b.iter(|| Swatch::of_look(black_box(lifted), black_box(&tone))));
    group.bench_function("section", |b| b.iter(|| section_look(black_box(&rest), black_box(&foils), share)));
    group.finish();
}

fn shop(c: &mut Criterion) {
    c.bench_function("shop/parse/example", |b| b.iter(|| shop::parse_shop(black_box(SHOP), Format::Toml)));
}

fn toner(c: &mut Criterion) {
    let shop = shop::parse_shop(SHOP, Format::Toml).and_then(|file| Shop::new(&file)).expect("the demo shop");
    let request = TonerRequest {
        exposed: Exposed::lightened(level(5.0), level(9.0)),
        target: Target::Look { level: level(8.0), tone: Tone::from_hues([Hue::Violet, Hue::Blue]) },
        shades: shop.colours().collect(),
        most_shades: 3,
        bowl: Mass::from_g(30.0).expect("a mass"),
        division: Mass::from_g(0.1).expect("a mass"),
    };
    assert_eq!(request.shades.len(), 12);
    c.bench_function("toner/find/12 shades, up to 3, 0.1 g in 30 g", |b| b.iter(|| find_toner(black_box(&request))));
}

criterion_group!(group, ciede2000, swatch, shop, toner);
criterion_main!(group);

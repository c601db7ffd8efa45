//! A head of twelve sections and more: grams, foils and how it reads.

use criterion::{BenchmarkId, Criterion, Throughput, criterion_group, criterion_main};
use foilwork::{
    colour::{Level, Swatch},
    hair::HairFacts,
    head::{Layout, Panel, Placed, Technique, Template, Wish, demand, read_head, take_up},
    quantity::{Length, Quantity, Share},
};
use std::hint::black_box;

/// Grams and foils of `n` sections, and the look of the head.
fn head(n: usize, template: &Template, rest: &Swatch, light: &Swatch) -> f64 {
    let (length, technique) = (Length::nearest(30.0), Technique::Weave);
    let hair = HairFacts::default().head();
    let panel = Panel { width: Length::nearest(8.0), height: Length::nearest(6.0) };
    let part = Share::nearest(100.0 / f64::from(u32::try_from(n).expect("few sections")));
    let mut grams = 0.0;
    let mut placed = Vec::new();
    for i in 0..n {
        let foils = Layout::slice().on(panel).expect("the foils fit");
        let profile = technique.profile(length).value;
        let take_up = take_up(technique, true).value;
        let taken = foils.share_of_panel;
        let needed = demand(&hair.part(part), taken, &profile, length.into(), take_up, None, Some(foils.foils));
        grams += needed.mix.best().g();
        let region = i % template.regions().len();
        placed.push(Placed { section: "one", region, of_region: part, lightened: part, rest: *rest, light: *light });
    }
    grams + read_head(template, &placed, rest, Some(Wish::BrightOutline)).regions.len() as f64
}

fn benches(c: &mut Criterion) {
    let template = Template::standard();
    let level = |number| Level::new(number).expect("on the scale");
    let (rest, light) = (Swatch::natural(level(5.0)), Swatch::lightened(level(5.0), level(9.0)));
    // Twelve are a head and are meant to take less than a millisecond, and more to grow no faster than in a line.
    let mut group = c.benchmark_group("head/sections");
    for n in [12, 24, 48, 96] {
        group.throughput(Throughput::Elements(n as u64));
        group.bench_with_input(BenchmarkId::from_parameter(n), &n, |b, n| {
            b.iter(|| head(black_box(*n), &template, &rest, &light));
        });
    }
    group.finish();
}

criterion_group!(all, benches);
criterion_main!(all);

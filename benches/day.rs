//! `day`, one function each, and how the time grows with the sections.

use criterion::{BenchmarkId, Criterion, criterion_group, criterion_main};
use foilwork::{
    day::{Effort, Floor, SectionWork, arrange, share_floor},
    quantity::Duration,
};
use std::hint::black_box;

fn work(count: u8) -> Vec<SectionWork> {
    let min = |value: f64| Duration::from_min(value).expect("a time of some minutes");
    let one = |i: u8| {
        let (apply, develop) = (6.0 + f64::from(i % 4), 20.0 + f64::from(i * 7 % 13));
        SectionWork::new(&format!("section {i}"), min(apply), min(develop), min(50.0))
    };
    (0..count).map(one).collect()
}

fn benches(c: &mut Criterion) {
    let floor = Floor::default();
    let mut group = c.benchmark_group("day/arrange/quick");
    group.sample_size(20);
    for count in [3, 6, 12, 24] {
        let work = work(count);
        group.bench_with_input(BenchmarkId::from_parameter(count), &work, |b, work| {
            b.iter(|| arrange(black_box(work), &[], &floor, Effort::Quick));
        });
    }
    group.finish();
    let mut group = c.benchmark_group("day/arrange/thorough");
    group.sample_size(10);
    for count in [4, 6, 8, 12] {
        let work = work(count);
        group.bench_with_input(BenchmarkId::from_parameter(count), &work, |b, work| {
            b.iter(|| arrange(black_box(work), &[], &floor, Effort::Thorough));
        });
    }
    group.finish();
    let day = arrange(&work(3), &[], &floor, Effort::Quick).expect("three sections have an order");
    let days = vec![day; 3];
    c.bench_function("day/share_floor/three guests", |b| b.iter(|| share_floor(black_box(&days), &floor)));
}

criterion_group!(group, benches);
criterion_main!(group);

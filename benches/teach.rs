//! Worksheets: a thousand of them meant to take less than two seconds.

use criterion::{Criterion, Throughput, criterion_group, criterion_main};
use foilwork::teach::{SheetHalf, WorksheetRequest, worksheet};
use std::hint::black_box;

fn benches(c: &mut Criterion) {
    let mut group = c.benchmark_group("teach");
    group.throughput(Throughput::Elements(1));
    let mut seed = 0;
    group.bench_function("worksheet", |b| {
        b.iter(|| {
            seed += 1;
            worksheet(black_box(&WorksheetRequest::new(seed))).map(|sheet| sheet.exercises.len())
        });
    });
    let sheet = worksheet(&WorksheetRequest::new(1)).expect("ten problems");
    group.bench_function("page", |b| b.iter(|| sheet.html(black_box(SheetHalf::Both), true).len()));
    group.finish();
}

criterion_group!(all, benches);
criterion_main!(all);

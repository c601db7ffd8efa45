//! `service`, one function each.

use criterion::{Criterion, criterion_group, criterion_main};

fn benches(_c: &mut Criterion) {}

criterion_group!(group, benches);
criterion_main!(group);

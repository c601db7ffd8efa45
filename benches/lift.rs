//! Forecasts, inverse questions, learning, and sections that finish together.

use criterion::{Criterion, criterion_group, criterion_main};
use foilwork::{
    colour::{Level, LevelChange},
    lift::{Belief, Experience, Lightening, Reader, Situation, StrandReading, TimedSection, finish_together},
    quantity::{Duration, MassFraction, Quantity},
    source::Interval,
};
use std::hint::black_box;

fn mix(on_hair_ww_percent: f64) -> Situation {
    Situation::usual(Interval::exact(MassFraction::nearest(on_hair_ww_percent)))
}

fn level(number: f64) -> Level {
    Level::new(number).expect("on the scale")
}

fn forecast(c: &mut Criterion) {
    let lightening = Lightening::new(&Belief::untested(), &mix(4.0), level(4.0));
    let time = Duration::nearest(35.0);
    c.bench_function("lift/level after a time", |b| b.iter(|| black_box(&lightening).level_after(black_box(time))));
    c.bench_function("lift/time to a level", |b| b.iter(|| black_box(&lightening).time_to(black_box(level(8.0)))));
    c.bench_function("lift/make a belief ready", |b| {
        b.iter(|| Lightening::new(black_box(&Belief::untested()), black_box(&mix(4.0)), level(4.0)));
    });
}

fn learning(c: &mut Criterion) {
    let reading = |i: u8| StrandReading {
        situation: mix(4.0),
        time: Duration::nearest(10.0 + f64::from(i) * 2.0),
        before: level(3.0 + f64::from(i % 4)),
        after: level(6.0 + f64::from(i % 5) * 0.5),
        reader: Reader::Eye,
        guest: Some(format!("guest {}", i % 6)),
        product: None,
    };
    let readings: Vec<_> = (0..20).map(reading).collect();
    c.bench_function("lift/learn from 20 readings", |b| b.iter(|| Experience::from_readings(black_box(&readings))));
}

fn together(c: &mut Criterion) {
    let section = |i: u8| TimedSection {
        belief: Belief::untested(),
        situation: mix(4.0),
        on_hair: [1.5, 2.0, 3.0, 4.0, 5.0, 6.0].map(|p| Interval::exact(MassFraction::nearest(p))).to_vec(),
        start: level(4.0 + f64::from(i) * 0.2).into(),
        target: level(7.0),
        tolerance: LevelChange::from_levels(1.0).expect("on the scale"),
        busy_before: Duration::ZERO,
        apply: Duration::nearest(3.0),
        longest: Duration::nearest(50.0),
    };
    let sections: Vec<_> = (0..12).map(section).collect();
    c.bench_function("lift/12 sections finish together", |b| {
        b.iter(|| finish_together(black_box(&sections), Duration::nearest(10.0)));
    });
}

criterion_group!(benches, forecast, learning, together);
criterion_main!(benches);

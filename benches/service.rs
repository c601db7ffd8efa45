//! `service`, one function each.

use criterion::{BenchmarkId, Criterion, Throughput, criterion_group, criterion_main};
use foilwork::{
    reader::Format,
    service::{ServiceFile, parse, plan},
    sheet::{bench_page, bench_sheet},
};
use std::hint::black_box;

const EXAMPLE: &str = include_str!("../examples/soft-gradient.toml");

fn read(text: &str) -> ServiceFile {
    parse(text, Format::Toml).expect("the example is a valid service file")
}

/// The head of the example and then `n` sections alike, none of them more than a thousandth of the hair.
fn many(n: usize) -> String {
    let head = EXAMPLE.split_once("[[section]]").map_or(EXAMPLE, |(head, _)| head);
    let section = |i: usize| {
        format!(
            "[[section]]\nname = \"{i}\"\ntechnique = \"weave\"\nshare_percent = 0.1\nzone = \"lengths\"\n\
             target_level = 9\nproduct = \"Foam Line powder\"\nstrength = \"4.5 % w/w\"\n\
             additives = [\"bond additive\"]\nmix_g = 45\nfoils = 1\napply_min = 10\ndevelop_min = 30\n\n"
        )
    };
    let prices = "[shop.terms]\nmargin_percent = 25\n";
    format!("{head}{}{prices}", (1..=n).map(section).collect::<String>())
}

/// The same with sections that take and develop for differently long.
fn varied(n: usize) -> String {
    let mut text = many(n);
    for i in 0..n {
        let (apply, develop) = (6 + i % 4, 20 + i * 7 % 13);
        text = text.replacen(
            "apply_min = 10\ndevelop_min = 30",
            &format!("apply_min = {apply}\ndevelop_min = {develop}"),
            1,
        );
    }
    text
}

fn benches(c: &mut Criterion) {
    c.bench_function("service/parse/example", |b| b.iter(|| parse(black_box(EXAMPLE), Format::Toml)));
    let file = read(EXAMPLE);
    c.bench_function("service/plan/example", |b| b.iter(|| plan(black_box(&file))));
    let planned = plan(&file).expect("the example can be planned");
    c.bench_function("service/sheet/example", |b| b.iter(|| bench_sheet(black_box(&planned))));

    // Twelve sections are a head; its page is meant to take less than 10 ms.
    let head = plan(&read(&many(12))).expect("twelve sections can be planned");
    c.bench_function("service/page/12 sections", |b| b.iter(|| bench_page(black_box(&head))));

    // No two of them alike, so that the order of the day has to be searched; the whole plan must take less than 5 ms.
    let varied = read(&varied(12));
    c.bench_function("service/plan/12 sections", |b| b.iter(|| plan(black_box(&varied))));

    // Linear: the time for a section must not grow with the number of sections.
    let mut group = c.benchmark_group("service/parse/sections");
    for n in [50, 100, 200] {
        let text = many(n);
        group.throughput(Throughput::Elements(n as u64));
        group.bench_with_input(BenchmarkId::from_parameter(n), &text, |b, text| b.iter(|| parse(text, Format::Toml)));
    }
    group.finish();
    let mut group = c.benchmark_group("service/plan/sections");
    for n in [50, 100, 200] {
        let file = read(&many(n));
        group.throughput(Throughput::Elements(n as u64));
        group.bench_with_input(BenchmarkId::from_parameter(n), &file, |b, file| b.iter(|| plan(file)));
    }
    group.finish();
}

criterion_group!(group, benches);
criterion_main!(group);

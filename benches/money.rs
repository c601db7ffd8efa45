//! `money`: the scalar functions, and the column kernel from 10^4 to 10^7 service lines (it must stay linear).

use criterion::{BenchmarkId, Criterion, Throughput, criterion_group, criterion_main};
use foilwork::business::list;
use foilwork::money::{
    CostColumns, Currency, Labour, Margin, Money, OnCosts, Overhead, PackPrice, Rounding, ServiceColumns, TaxRate,
    add_tax, allocate, cost_columns, price_from_margin, supply_cost,
};
use foilwork::quantity::{Duration, Mass};
use rust_decimal::Decimal;
use std::hint::black_box;

const HALF_UP: Rounding = Rounding::MidpointAwayFromZero;

fn euros(text: &str) -> Money {
    Money::parse(text, Currency::from_code("EUR").unwrap()).unwrap()
}

fn terms() -> (Labour, Overhead) {
    let hours = |h| Duration::from_h(h).unwrap();
    let on_costs = OnCosts::from_percent(Decimal::new(214, 1)).unwrap();
    let labour = Labour::new(euros("17.35"), on_costs, hours(38.0), hours(23.7)).unwrap();
    (labour, Overhead::new(euros("48123.45"), 4, hours(1170.0)).unwrap())
}

/// Whole numbers that repeat at every run, from a small generator (Lehmer, modulus 2^31 - 1).
fn numbers(seed: u64, below: u64) -> impl Iterator<Item = u64> {
    std::iter::successors(Some(seed), |x| Some(x * 48_271 % 2_147_483_647)).skip(1).map(move |x| x % below)
}

struct Columns {
    pack_price_minor: Vec<i64>,
    pack_g: Vec<f64>,
    used_g: Vec<f64>,
    wasted_g: Vec<f64>,
    consumables_minor: Vec<i64>,
    hands_on_min: Vec<f64>,
    chair_min: Vec<f64>,
}

fn columns(rows: usize) -> Columns {
    let whole = |seed, below| numbers(seed, below).take(rows).map(|x| i64::try_from(x).unwrap()).collect::<Vec<_>>();
    let tenths = |seed, below| numbers(seed, below).take(rows).map(|x| x as f64 / 10.0).collect::<Vec<_>>();
    Columns {
        pack_price_minor: whole(1, 5_000),
        pack_g: numbers(2, 5).take(rows).map(|x| [60.0, 100.0, 500.0, 900.0, 1000.0][x as usize]).collect(),
        used_g: tenths(3, 1_500),
        wasted_g: tenths(4, 150),
        consumables_minor: whole(5, 500),
        hands_on_min: numbers(6, 180).take(rows).map(|x| x as f64).collect(),
        chair_min: numbers(7, 300).take(rows).map(|x| x as f64).collect(),
    }
}

fn scalar(c: &mut Criterion) {
    let (pack, used) = (Mass::from_g(500.0).unwrap(), Mass::from_g(42.5).unwrap());
    c.bench_function("money/supply_cost/scalar", |b| {
        b.iter(|| {
            PackPrice::new(black_box(euros("26.40")), black_box(pack))
                .and_then(|pack| supply_cost(pack, black_box(used), HALF_UP))
        });
    });
    let margin = Margin::from_percent(30.into()).unwrap();
    c.bench_function("money/price_from_margin/scalar", |b| {
        b.iter(|| price_from_margin(black_box(euros("64.11")), black_box(margin), HALF_UP));
    });
    let tax = TaxRate::from_percent(20.into()).unwrap();
    c.bench_function("money/add_tax/scalar", |b| {
        b.iter(|| add_tax(black_box(euros("64.11")), black_box(tax), HALF_UP));
    });
    let weights: Vec<_> = (1..=100).map(Decimal::from).collect();
    c.bench_function("money/allocate/100 shares", |b| b.iter(|| allocate(black_box(euros("999.99")), &weights)));
}

fn column(c: &mut Criterion) {
    let (labour, overhead) = terms();
    let mut group = c.benchmark_group("money/cost_columns");
    group.sample_size(10);
    // The largest takes 880 MB; `--test`, which only tries every bench once, does without it.
    let sizes: &[usize] = &[10_000, 100_000, 1_000_000, 10_000_000];
    let trial = std::env::args().any(|argument| argument == "--test");
    for &rows in if trial { &sizes[..2] } else { sizes } {
        let data = columns(rows);
        let services = ServiceColumns {
            pack_price_minor: &data.pack_price_minor,
            pack_g: &data.pack_g,
            used_g: &data.used_g,
            wasted_g: &data.wasted_g,
            consumables_minor: &data.consumables_minor,
            hands_on_min: &data.hands_on_min,
            chair_min: &data.chair_min,
        };
        let mut out = [vec![0; rows], vec![0; rows], vec![0; rows], vec![0; rows]];
        group.throughput(Throughput::Elements(rows as u64));
        group.bench_function(BenchmarkId::from_parameter(rows), |b| {
            b.iter(|| {
                let [product_minor, labour_minor, overhead_minor, cost_minor] = &mut out;
                let out = CostColumns { product_minor, labour_minor, overhead_minor, cost_minor };
                cost_columns(black_box(&services), &labour, &overhead, HALF_UP, out).unwrap()
            });
        });
    }
    group.finish();
}

fn text(c: &mut Criterion) {
    let mut csv = String::from(
        "service,product_pack_price,product_pack_g,product_g,product_waste_g,consumables,hands_on_min,chair_min,sold\n",
    );
    for used in numbers(8, 150).take(1_000) {
        csv.push_str(&format!("half head of foils,26.40,500,{used},5,2.10,70,120,3\n"));
    }
    let eur = Currency::from_code("EUR").unwrap();
    c.bench_function("money/parse_csv/1000 lines", |b| b.iter(|| list::parse_csv(black_box(&csv), eur).unwrap()));
}

criterion_group!(group, scalar, column, text);
criterion_main!(group);

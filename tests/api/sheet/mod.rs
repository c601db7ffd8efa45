//! What the sheets print of plans whose figures are put in by hand: whole texts, with what is optional there, absent and twice.

mod background;
mod cards;
mod chair;
mod colour;
mod consultation;
mod day;
mod drawings;
mod first;
mod hair;
mod head;
mod lift;
mod look;
mod money;
mod pages;
mod services;
mod shelf;
mod weighing;

use super::service::base::fine;
use foilwork::{
    colour::Level,
    finding::{Finding, Reason, Rule, Verdict},
    money::{Currency, Money},
    quantity::Quantity,
    service::{Plan, plan},
    sheet::{SheetPart, bench_sheet_of},
    source::Interval,
    text::WIDTH,
};

/// The base without its findings, so that no sheet tells how many it leaves out.
fn base() -> Plan {
    let mut plan = plan(&fine()).unwrap();
    plan.findings.clear();
    plan
}

fn q<Q: Quantity>(value: f64) -> Q {
    Q::from_unit(value).unwrap()
}

fn exact<Q: Quantity>(value: f64) -> Interval<Q> {
    Interval::exact(q(value))
}

fn about<Q: Quantity>([low, best, high]: [f64; 3]) -> Interval<Q> {
    Interval::new(q(low), q(best), q(high)).unwrap()
}

fn level(number: f64) -> Level {
    Level::new(number).unwrap()
}

fn levels(numbers: [f64; 3]) -> Interval<Level> {
    let [low, best, high] = numbers.map(level);
    Interval::new(low, best, high).unwrap()
}

fn eur(text: &str) -> Money {
    Money::parse(text, Currency::EUR).unwrap()
}

fn finding(rule: Rule, verdict: Verdict, text: &str) -> Finding {
    Finding::new(rule, verdict, text, Reason::assumed())
}

/// Words with one blank between any two: where a line breaks is the business of the room of texts.
fn flat(text: &str) -> String {
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// A part of the bench sheet from its heading on, without the version at the end; lines below headings are `|`.
fn part(plan: &Plan, part: SheetPart) -> String {
    let sheet = bench_sheet_of(plan, &[part]);
    let rule = "-".repeat(WIDTH);
    let lines: Vec<&str> = sheet.lines().collect();
    let below = lines.iter().position(|line| *line == rule).unwrap();
    let (version, told) = lines.split_last().unwrap();
    assert!(version.starts_with("foilwork "), "{version}");
    flat(&told[below - 1..].join("\n")).replace(&rule, "|")
}

//! Charts as they are drawn: what stands where, measured in the picture itself by its own ticks and labels.

use foilwork::{
    chart::{
        CostChart, DayChart, DilutionChart, HeadChart, HueWheel, LevelChart, LookChart, MarginChart, PigmentChart,
        SwatchStrip, cost_chart, day_chart, dilution_chart, head_chart, hue_wheel, level_chart, look_chart,
        margin_chart, pigment_chart, swatch_strip,
    },
    colour::{Hue, Level, Naming, Swatch},
    day::{Effort, Floor, SectionWork, Timeline, arrange},
    head::{Template, read_head},
    lift::{Belief, Lightening, Situation},
    money::{CostKind, CostLine, CostTable, Currency, Margin, Money},
    peroxide::dilution_table,
    quantity::{Duration, Mass, MassFraction, Quantity},
    source::{Basis, Interval},
};
use std::collections::BTreeMap;

mod curves;
mod labels;
mod places;

/// An element with its attributes and the words in it.
#[derive(Debug, Clone)]
struct Drawn {
    kind: String,
    at: BTreeMap<String, String>,
    words: String,
}

impl Drawn {
    fn number(&self, name: &str) -> f64 {
        self.at[name].parse().unwrap()
    }

    fn x(&self) -> f64 {
        self.number("x")
    }

    fn y(&self) -> f64 {
        self.number("y")
    }

    fn width(&self) -> f64 {
        self.number("width")
    }

    fn height(&self) -> f64 {
        self.number("height")
    }

    fn points(&self) -> Vec<(f64, f64)> {
        let pair = |text: &str| text.split_once(',').map(|(x, y)| (x.parse().unwrap(), y.parse().unwrap())).unwrap();
        self.at["points"].split(' ').map(pair).collect()
    }
}

fn elements(svg: &str) -> Vec<Drawn> {
    let body = &svg[svg.find("</desc>").unwrap() + 8..];
    body.lines().filter(|line| !line.starts_with("</svg")).map(element).collect()
}

fn element(line: &str) -> Drawn {
    let (head, rest) = line.split_once('>').unwrap();
    let (kind, attributes) = head[1..].split_once(' ').unwrap();
    let parts: Vec<&str> = attributes.trim_end_matches('/').split('"').collect();
    let at = parts.chunks_exact(2).map(|pair| (pair[0].trim().trim_end_matches('=').to_owned(), pair[1].to_owned()));
    let words = rest.strip_suffix("</text>").unwrap_or_default().replace("&amp;", "&");
    Drawn { kind: kind.to_owned(), at: at.collect(), words }
}

fn of<'a>(all: &'a [Drawn], kind: &str) -> Vec<&'a Drawn> {
    all.iter().filter(|one| one.kind == kind).collect()
}

#[track_caller]
fn said<'a>(all: &'a [Drawn], words: &str) -> &'a Drawn {
    all.iter().find(|one| one.words == words).unwrap_or_else(|| panic!("{words}"))
}

/// The number at an axis: under the one across, beside the one upright.
#[track_caller]
fn tick<'a>(all: &'a [Drawn], number: &str, anchor: &str) -> &'a Drawn {
    let is = |one: &&Drawn| one.words == number && one.at["text-anchor"] == anchor;
    of(all, "text").into_iter().find(is).unwrap_or_else(|| panic!("{number}"))
}

#[track_caller]
fn near(got: f64, want: f64) {
    assert!((got - want).abs() < 0.03, "{got} for {want}");
}

/// The line through two ticks.
fn scale((at, value): (f64, f64), (then, other): (f64, f64)) -> impl Fn(f64) -> f64 {
    move |wanted| at + (wanted - value) / (other - value) * (then - at)
}

fn level(number: f64) -> Level {
    Level::new(number).unwrap()
}

fn minutes(number: f64) -> Duration {
    Duration::nearest(number)
}

fn grid() -> String {
    let of = |percent| Interval::exact(MassFraction::from_ww_percent(percent).unwrap());
    let (total, division) = (Mass::from_g(80.0).unwrap(), Mass::from_g(1.0).unwrap());
    let table = dilution_table(&[of(12.0), of(6.0), of(3.0)], &[of(6.0), of(3.0)], of(0.0), total, division).unwrap();
    let stocks = ["12 %", "6 %", "3 %"].map(str::to_owned);
    let targets = ["to six", "to three"].map(str::to_owned);
    dilution_chart(&DilutionChart { title: "wall", stocks: &stocks, targets: &targets, weaker: "water", table: &table })
}

fn costs() -> String {
    let mut table = CostTable::new(Currency::EUR);
    for (kind, amount) in [(CostKind::Product, "12.50"), (CostKind::Labour, "30.00"), (CostKind::Overhead, "7.50")] {
        let amount = Money::parse(amount, Currency::EUR).unwrap();
        table.push(CostLine::new(kind, "some", Basis::Stated, amount)).unwrap();
    }
    let left_out = ["foils".to_owned()];
    cost_chart(&CostChart { title: "gloss", table: &table, left_out: &left_out, style: None })
}

fn margins() -> String {
    let cost = Money::parse("45.00", Currency::EUR).unwrap();
    let marked = Some(Margin::from_percent(25.into()).unwrap());
    margin_chart(&MarginChart::new("price", cost).unwrap().marking(marked).unwrap())
}

fn looks() -> String {
    let seen = |low, best, high| Interval::new(level(low), level(best), level(high)).unwrap();
    let looks = [(minutes(10.0), seen(4.5, 5.0, 6.0)), (minutes(40.0), seen(5.0, 7.0, 8.0))];
    look_chart(&LookChart { title: "nape", start: level(4.0).into(), target: level(7.5), looks: &looks })
}

fn lightening() -> Lightening {
    let mix = Situation::usual(Interval::exact(MassFraction::nearest(4.0)));
    Lightening::new(&Belief::untested(), &mix, level(4.0))
}

fn levels() -> String {
    let readings = [(minutes(20.0), level(6.5))];
    let (limit, target) = (minutes(45.0), Some(level(7.0)));
    level_chart(&LevelChart { title: "crown", lightening: &lightening(), limit, target, readings: &readings })
}

fn wheel() -> String {
    hue_wheel(&HueWheel { title: "wheel", marked: Some(Hue::Yellow) })
}

fn pigment() -> String {
    pigment_chart(&PigmentChart { title: "class", natural: level(5.0), naming: Naming::European })
}

fn head(draw: fn(&HeadChart<'_>) -> String) -> String {
    let template = Template::standard();
    let look = read_head(&template, &[], &Swatch::natural(level(6.0)), None);
    let written = vec![vec!["foils 1-4".to_owned(), "two grams".to_owned()]];
    draw(&HeadChart { title: "map", template: &template, looks: &look.regions, written: &written })
}

fn strip() -> String {
    let (now, then) = (Swatch::natural(level(5.0)), Swatch::lightened(level(5.0), level(8.0)));
    swatch_strip(&SwatchStrip { title: "nape", swatches: &[("now", &now), ("then", &then)] })
}

fn timeline() -> Timeline {
    let one = |name, apply, develop| SectionWork::new(name, minutes(apply), minutes(develop), minutes(60.0));
    let sections = [one("nape", 15.0, 35.0), one("crown", 20.0, 30.0)];
    arrange(&sections, &[], &Floor::default(), Effort::Quick).unwrap()
}

fn day() -> String {
    day_chart(&DayChart { title: "day", timeline: &timeline() })
}

/// Nothing is cut off, and no word is written over another: a letter is at least four tenths of its height wide.
#[test]
fn all_is_in_the_picture_and_no_word_on_another() {
    for svg in [grid(), costs(), margins(), looks(), levels(), wheel(), pigment(), head(head_chart), strip(), day()] {
        let all = elements(&svg);
        let (width, height) = (all[0].width(), all[0].height());
        assert!(svg.contains(&format!("viewBox=\"0 0 {width} {height}\"")), "the ground is the whole picture");
        for rect in of(&all, "rect") {
            let (right, bottom) = (rect.x() + rect.width(), rect.y() + rect.height());
            assert!(rect.x() >= 0.0 && rect.y() >= 0.0 && right <= width && bottom <= height, "{rect:?}");
        }
        // Nor is it larger than what it holds.
        let edge = |far: fn(&Drawn) -> f64| of(&all[1..], "rect").into_iter().map(far).fold(0.0, f64::max);
        let lowest = of(&all, "text").iter().map(|text| text.y()).fold(edge(|one| one.y() + one.height()), f64::max);
        assert!(lowest > height - 60.0, "{lowest} of {height}: {}", all[1].words);
        let words: Vec<_> = of(&all, "text").into_iter().map(|one| (one, space(one))).collect();
        for (place, (one, [left, top, right, bottom])) in words.iter().enumerate() {
            assert!(*left >= 0.0 && *top >= 0.0 && *right <= width && *bottom <= height, "{one:?}");
            for (other, [from, above, to, below]) in &words[..place] {
                let apart = right <= from || to <= left || bottom <= above || below <= top;
                assert!(apart, "{} on {}", one.words, other.words);
            }
        }
    }
}

/// Left, top, right and bottom of the narrowest that a text can be.
fn space(text: &Drawn) -> [f64; 4] {
    let size = text.number("font-size");
    let long = 0.4 * size * text.words.chars().count() as f64;
    let left = text.x()
        - long
            * match &text.at["text-anchor"][..] {
                "start" => 0.0,
                "middle" => 0.5,
                _ => 1.0,
            };
    [left, text.y() - 0.7 * size, left + long, text.y() + 0.1 * size]
}

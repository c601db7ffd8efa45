//! What to expect at each look, level against time, price against margin.

use super::{area, circle, dashed, elements, level, line, minutes, outlined, rect, said, same, stroke, text};
use foilwork::{
    chart::{LevelChart, LookChart, MarginChart, level_chart, look_chart, margin_chart},
    colour::Level,
    lift::{Belief, Lightening, Situation},
    money::{Currency, Margin, Money},
    quantity::{Duration, MassFraction},
    source::Interval,
};
use rstest::rstest;
use rust_decimal::Decimal;

const WHITE: &str = "fill=\"#fff\"";

fn seen([low, best, high]: [f64; 3]) -> Interval<Level> {
    Interval::new(level(low), level(best), level(high)).unwrap()
}

/// From 3.5 to 8.5 on 152 pixels above 196, a level is 30.4: 4 stands at 180.8, 8 at 59.2. 40 minutes on 365 pixels from 40 on: 10 stand at
/// 131.25.
#[test]
fn looks_in_full() {
    let looks = [(minutes(10.0), seen([4.0, 5.0, 6.0])), (minutes(40.0), seen([6.0, 7.0, 8.0]))];
    let svg = look_chart(&LookChart { title: "nape", start: level(4.0).into(), target: level(8.0), looks: &looks });
    let y = |at: f64| 180.8 - 30.4 * (at - 4.0);
    let note = "level; line: median, area: 80 of 100 cases; a model, a strand decides";
    let mut want = vec![
        rect([0.0, 0.0, 420.0, 240.0], WHITE),
        text((8.0, 20.0), "start", 13.0, "nape"),
        text((8.0, 36.0), "start", 10.0, note),
    ];
    for number in 4..=8 {
        let y = y(f64::from(number));
        want.push(line(&[(40.0, y), (405.0, y)], &stroke("#ddd", 1.0)));
        want.push(text((34.0, y + 4.0), "end", 11.0, &number.to_string()));
    }
    let (ten, all) = (131.25, 405.0);
    let corners = [(40.0, y(4.0)), (ten, y(6.0)), (all, y(8.0)), (all, y(6.0)), (ten, y(4.0)), (40.0, y(4.0))];
    want.push(area(&corners, "fill=\"#e69f00\" opacity=\"0.3\""));
    want.push(line(&[(40.0, y(4.0)), (ten, y(5.0)), (all, y(7.0))], &stroke("#7a4b00", 2.2)));
    for (x, at, minute) in [(ten, 5.0, "10"), (all, 7.0, "40")] {
        want.push(circle((x, y(at)), 3.5, &outlined("#fff", "#7a4b00", 1.8)));
        want.push(text((x, 211.0), "middle", 10.0, minute));
    }
    want.push(line(&[(40.0, 59.2), (405.0, 59.2)], &dashed("#222", 1.2)));
    want.push(text((44.0, 55.2), "start", 11.0, "wanted: 8"));
    want.push(text((222.5, 228.0), "middle", 11.0, "minutes on the first strand"));
    same(&svg, &want);
    let words = "Level of the first strand, a model; a strand decides. From 4: after 10 min 5 (4 to 6); after 40 min 7 (6 to 8). Wanted: 8.";
    assert_eq!(said(&svg), ["nape", words]);
}

/// One pixel a minute: a number takes 16 of them, from the edge of the plot on; what would stand on the one before is left out.
#[test]
fn minutes_do_not_stand_on_each_other() {
    let looks = [7.0, 8.0, 23.0, 24.0, 365.0].map(|at| (minutes(at), level(5.0).into()));
    let svg = look_chart(&LookChart { title: "nape", start: level(4.0).into(), target: level(8.0), looks: &looks });
    let minutes: Vec<String> = [48.0, 64.0, 405.0]
        .into_iter()
        .zip(["8", "24", "365"])
        .map(|(x, minute)| text((x, 211.0), "middle", 10.0, minute))
        .collect();
    let got: Vec<&str> = elements(&svg).into_iter().filter(|one| one.contains("font-size=\"10\"")).skip(1).collect();
    assert_eq!(got, minutes);
    assert_eq!(svg.matches("<circle").count(), 5, "every look has its mark");
}

/// A start between levels, a target below them all: the plot holds it all, half a level beyond.
#[test]
fn the_plot_of_looks_holds_every_level() {
    let looks = [(minutes(30.0), seen([5.2, 6.0, 8.3]))];
    let svg = look_chart(&LookChart { title: "nape", start: level(4.4).into(), target: level(2.5), looks: &looks });
    let levels: Vec<String> = (2..=9).map(|number: u8| number.to_string()).collect();
    // From 2 to 9 with half a level on both sides: 8 levels on 152, so 19 each; 2 stands at 186.5.
    let want: Vec<String> = levels
        .iter()
        .zip(0..)
        .map(|(number, place)| text((34.0, 190.5 - 19.0 * f64::from(place)), "end", 11.0, number))
        .collect();
    let got: Vec<&str> = elements(&svg).into_iter().filter(|one| one.contains("x=\"34\"")).collect();
    assert_eq!(got, want);
    assert!(elements(&svg).contains(&text((44.0, 173.0), "start", 11.0, "wanted: 2.5").as_str()), "{svg}");
}

fn lightening() -> Lightening {
    let mix = Situation::usual(Interval::exact(MassFraction::from_ww_percent(4.0).unwrap()));
    Lightening::new(&Belief::untested(), &mix, level(4.0))
}

/// A hundred minutes: the axis goes to 108, 570 pixels from 52 on. What is read at 12 and wanted at 1 stretches the levels from 0.5 to
/// 12.5: 290 pixels above 330, 24.17 each.
#[test]
fn level_against_time_in_full() {
    let lightening = lightening();
    let readings = [(minutes(54.0), level(12.0))];
    let chart = LevelChart {
        title: "nape",
        lightening: &lightening,
        limit: minutes(100.0),
        target: Some(level(1.0)),
        readings: &readings,
    };
    let svg = level_chart(&chart);
    let x = |at: f64| 52.0 + at / 108.0 * 570.0;
    let y = |at: f64| 330.0 - (at - 0.5) / 12.0 * 290.0;
    let mut want = vec![rect([0.0, 0.0, 640.0, 380.0], WHITE), text((52.0, 24.0), "start", 15.0, "nape")];
    for number in 1..=12 {
        let at = y(f64::from(number));
        want.push(line(&[(52.0, at), (622.0, at)], &stroke("#ddd", 1.0)));
        want.push(text((44.0, at + 4.0), "end", 12.0, &number.to_string()));
    }
    // 108 minutes are 10.8 steps of ten, and more than twelve of five.
    for step in 0..=10 {
        let at = x(10.0 * f64::from(step));
        want.push(line(&[(at, 330.0), (at, 335.0)], &stroke("#222", 1.0)));
        want.push(text((at, 350.0), "middle", 12.0, &(10 * step).to_string()));
    }
    want.push(rect([52.0, 40.0, 570.0, 290.0], &stroke("#222", 1.0)));
    want.push(text((337.0, 370.0), "middle", 12.0, "minutes from the first strand"));
    want.push(text((12.0, 32.0), "start", 12.0, "level"));
    let times: Vec<f64> = (0..=90).map(|step| f64::from(step) / 90.0 * 108.0).collect();
    let expected = |at: f64| lightening.level_after(minutes(at));
    let bound = |bound: fn(Interval<Level>) -> Level| {
        times.iter().map(|time| (x(*time), y(bound(expected(*time)).number()))).collect::<Vec<_>>()
    };
    let mut corners = bound(|levels| levels.high());
    corners.extend(bound(|levels| levels.low()).into_iter().rev());
    want.push(area(&corners, "fill=\"#e69f00\" opacity=\"0.3\""));
    want.push(line(&bound(|levels| levels.best()), &stroke("#7a4b00", 2.5)));
    want.push(line(&[(52.0, y(1.0)), (622.0, y(1.0))], &dashed("#222", 1.2)));
    want.push(text((58.0, y(1.0) - 5.0), "start", 12.0, "wanted: 1"));
    want.push(line(&[(x(100.0), 330.0), (x(100.0), 40.0)], &stroke("#222", 2.0)));
    want.push(text((x(100.0) - 5.0, 322.0), "end", 12.0, "limit: 100 min"));
    want.push(circle((x(54.0), y(12.0)), 5.0, &outlined("#fff", "#0072b2", 2.5)));
    want.push(text((x(54.0) + 8.0, y(12.0) + 14.0), "start", 12.0, "read: 12"));
    want.push(text((622.0, 24.0), "end", 11.0, "line: median; band: 80 of 100 cases; a model; a strand decides"));
    same(&svg, &want);
}

/// The words: a level that is reached by the median, one that is not, none wanted.
#[rstest]
#[case(Some(5.0))]
#[case(Some(12.0))]
#[case(None)]
fn level_against_time_in_words(#[case] target: Option<f64>) {
    let lightening = lightening();
    let readings = [(minutes(20.0), level(6.5)), (minutes(30.0), level(7.0))];
    let target = target.map(level);
    let limit = minutes(45.0);
    let svg = level_chart(&LevelChart { title: "nape", lightening: &lightening, limit, target, readings: &readings });
    let [low, best, high] =
        lightening.level_after(limit).to_array().map(|level| foilwork::text::number(level.number(), 1));
    let mut want = format!(
        "Level against minutes, a model; a strand decides. From level 4 to {best} ({low} to {high}) after 45 min."
    );
    if let Some(target) = target {
        let median = lightening.time_to(target).median;
        assert_eq!(median.is_some(), target == level(5.0), "one level is soon there, seven are not");
        let reached = median.map_or_else(
            || "not reached by the median".to_owned(),
            |time| format!("reached after about {:.0} min (median)", time.min()),
        );
        want += &format!(" Level {} is wanted, {reached}.", target.number());
    }
    want += " Read after 20 min: 6.5. Read after 30 min: 7.";
    assert_eq!(said(&svg), ["nape", want.as_str()]);
    assert_eq!(svg.contains("wanted: "), target.is_some());
}

/// At most twelve steps, of 5, 10, 15, 30 or 60 minutes, and else of two hours; a reading after the limit makes the axis longer. The axis is
/// 1.08 of the longest.
#[rstest]
#[case(50.0, None, 5, 10)]
#[case(60.0, None, 10, 6)]
#[case(150.0, None, 15, 10)]
#[case(300.0, None, 30, 10)]
#[case(600.0, None, 60, 10)]
#[case(800.0, None, 120, 7)]
#[case(50.0, Some(150.0), 15, 10)]
fn ticks_of_time(#[case] limit: f64, #[case] read: Option<f64>, #[case] step: u32, #[case] last: u32) {
    let lightening = lightening();
    let readings: Vec<(Duration, Level)> = read.into_iter().map(|at| (minutes(at), level(6.0))).collect();
    let limit = minutes(limit);
    let svg =
        level_chart(&LevelChart { title: "nape", lightening: &lightening, limit, target: None, readings: &readings });
    let longest = 1.08 * read.unwrap_or(limit.min()).max(limit.min());
    let want: Vec<String> = (0..=last)
        .map(|place| step * place)
        .map(|minute| text((52.0 + f64::from(minute) / longest * 570.0, 350.0), "middle", 12.0, &minute.to_string()))
        .collect();
    let got: Vec<&str> = elements(&svg).into_iter().filter(|one| one.contains("y=\"350\"")).collect();
    assert_eq!(got, want);
}

fn margin(percent: &str) -> Margin {
    Margin::from_percent(percent.parse::<Decimal>().unwrap()).unwrap()
}

fn prices(marked: Option<&str>) -> String {
    let cost = Money::parse("45.00", Currency::EUR).unwrap();
    margin_chart(&MarginChart::new("price", cost).unwrap().marking(marked.map(margin)).unwrap())
}

/// A cost of 45: at 70 % of the price it is sold for 150, the top of the axis, 256 pixels above 340. 70 % are 524 pixels from 96 on.
#[test]
fn price_against_margin_in_full() {
    let (x, y) = (|at: f64| 96.0 + at / 70.0 * 524.0, |at: f64| 340.0 - at / 150.0 * 256.0);
    let explained = "cost 45.00 EUR; margin is part of the price, mark-up of the cost";
    let mut want = vec![
        rect([0.0, 0.0, 640.0, 400.0], WHITE),
        text((12.0, 24.0), "start", 15.0, "price"),
        text((12.0, 44.0), "start", 12.0, explained),
    ];
    for (price, at) in [("0", 340.0), ("37.5", 276.0), ("75", 212.0), ("112.5", 148.0), ("150", 84.0)] {
        want.push(line(&[(96.0, at), (620.0, at)], &stroke("#ddd", 1.0)));
        want.push(text((88.0, at + 4.0), "end", 12.0, price));
    }
    for percent in (0..=70).step_by(10) {
        let at = x(f64::from(percent));
        want.push(line(&[(at, 340.0), (at, 345.0)], &stroke("#222", 1.0)));
        want.push(text((at, 360.0), "middle", 12.0, &percent.to_string()));
    }
    want.push(rect([96.0, 84.0, 524.0, 256.0], &stroke("#222", 1.0)));
    want.push(line(&[(96.0, 263.2), (620.0, 263.2)], &dashed("#222", 1.2)));
    want.push(text((614.0, 277.2), "end", 12.0, "cost"));
    // What is left of the price is the cost, to the cent.
    let curve: Vec<(f64, f64)> = (0..=70)
        .map(f64::from)
        .map(|percent| (x(percent), y((4500.0 / (1.0 - percent / 100.0)).round() / 100.0)))
        .collect();
    want.push(line(&curve, &stroke("#7a4b00", 2.5)));
    want.push(text((358.0, 380.0), "middle", 12.0, "margin in % of the net price"));
    want.push(text((12.0, 70.0), "start", 12.0, "net price, EUR"));
    let svg = prices(None);
    same(&svg, &want);
    let about = "Net price against margin for a cost of 45.00 EUR. no margin is marked.";
    assert_eq!(said(&svg), ["price", about]);
    let told = "margin 25 %: 60.00 EUR, mark-up 33.3 %";
    want.push(circle((x(25.0), y(60.0)), 5.0, &outlined("#fff", "#0072b2", 2.5)));
    want.push(text((106.0, 102.0), "start", 13.0, told));
    let svg = prices(Some("25"));
    same(&svg, &want);
    assert_eq!(said(&svg)[1], format!("Net price against margin for a cost of 45.00 EUR. {told}."));
}

/// A marked margin stretches the axis to five beyond it, whole, and never beyond 95.
#[rstest]
#[case("64.5", 70)]
#[case("65", 70)]
#[case("65.1", 71)]
#[case("80", 85)]
#[case("90", 95)]
#[case("94", 95)]
fn a_marked_margin_stretches_the_axis(#[case] marked: &str, #[case] end: u32) {
    let svg = prices(Some(marked));
    let want: Vec<String> = (0..=end)
        .step_by(10)
        .map(|percent| {
            text((96.0 + f64::from(percent) / f64::from(end) * 524.0, 360.0), "middle", 12.0, &percent.to_string())
        })
        .collect();
    let got: Vec<&str> = elements(&svg).into_iter().filter(|one| one.contains("y=\"360\"")).collect();
    assert_eq!(got, want);
}

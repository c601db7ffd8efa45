//! A word stands at what it names: in its bar, beside its line, under its tick; and where there is no room for it, it is short.

use super::{Drawn, day, elements, level, levels, lightening, looks, margins, minutes, near, of, scale, timeline};
use foilwork::{
    chart::{DayChart, LevelChart, LookChart, MarginChart, day_chart, level_chart, look_chart, margin_chart},
    colour::Level,
    day::{Effort, Floor, SectionWork, Timeline, arrange},
    money::{Currency, Margin, Money},
    quantity::Duration,
};
use rstest::rstest;

/// Every element but the last with what is drawn next.
fn pairs(all: &[Drawn]) -> impl Iterator<Item = (&Drawn, &Drawn)> {
    all.iter().zip(all.iter().skip(1))
}

/// One section of so many minutes of application and of development.
fn one(name: &str, apply: f64, develop: f64) -> Timeline {
    let section = SectionWork::new(name, minutes(apply), minutes(develop), minutes(360.0));
    arrange(&[section], &[], &Floor::default(), Effort::Quick).unwrap()
}

/// In a bar there is its word where a letter is 6.5 wide, else its first letter; a sliver has its letter right above it, in the middle
/// too. A bowl has a line as high as a bar and an m right above it.
#[rstest]
#[case(15.0, 35.0)]
#[case(4.0, 60.0)]
#[case(2.0, 180.0)]
fn bars_carry_their_words(#[case] apply: f64, #[case] develop: f64) {
    let chart = one("nape", apply, develop);
    let all = elements(&day_chart(&DayChart { title: "day", timeline: &chart }));
    let (mut words, mut slivers, mut bowls) = (0, 0, 0);
    for (drawn, text) in pairs(&all).skip(1) {
        if drawn.kind == "rect" && drawn.at.contains_key("stroke") {
            near(text.x(), drawn.x() + drawn.width() / 2.0);
            assert_eq!(text.at["text-anchor"], "middle");
            if drawn.width() >= 7.0 {
                words += 1;
                assert!(text.y() > drawn.y() + 8.0 && text.y() < drawn.y() + drawn.height(), "{text:?} {drawn:?}");
                let whole = match &text.words[..1] {
                    "a" if text.number("font-size") > 7.0 && drawn.at["fill"] == "#e69f00" => ["apply", "a"],
                    "d" => ["develop", "d"],
                    letter => [letter, letter],
                };
                let fits = 6.5 * whole[0].len() as f64 <= drawn.width();
                // On the row of the hands every bar has its letter alone.
                assert!(text.words == whole[usize::from(!fits)] || text.words.len() == 1, "{text:?} {drawn:?}");
                assert!(fits || text.words.len() == 1, "{text:?} {drawn:?}");
            } else {
                slivers += 1;
                assert!((text.y() - drawn.y()).abs() < 2.0 && text.y() < drawn.y(), "{text:?} {drawn:?}");
                assert_eq!(text.words.len(), 1);
            }
        }
        if drawn.kind == "polyline" && drawn.at["stroke-width"] == "2.5" {
            bowls += 1;
            let points = drawn.points();
            near(points[1].1 - points[0].1, 18.0);
            near(text.x(), points[0].0);
            assert_eq!((text.words.as_str(), points[0].0 == points[1].0), ("m", true));
            assert!(text.y() < points[0].1 && text.y() > points[0].1 - 2.0, "{text:?} {points:?}");
        }
    }
    assert!(words > 2 && bowls == chart.sections[0].mix_at.len(), "{words} {slivers} {bowls}");
    assert!(develop < 100.0 || slivers > 0);
}

/// The whole word where there is room for it in the row of a section.
#[test]
fn a_wide_bar_has_the_whole_word() {
    let all = elements(&day());
    for (row, words) in [(0, ["apply", "develop"]), (1, ["apply", "develop"])] {
        let name = all.iter().find(|text| text.words == timeline().sections[row].name).unwrap();
        let beside: Vec<&str> =
            of(&all, "text").iter().filter(|text| text.y() == name.y()).map(|text| text.words.as_str()).collect();
        assert!(words.iter().all(|word| beside.contains(word)), "{beside:?}");
    }
}

/// Every tick is a multiple of the step, has its line from above the bars to below them and its number under it; there are sixteen
/// steps at most, of 5, 10, 15, 30, 60 or 120 min, and no smaller step has as few.
#[rstest]
#[case(10.0, 30.0)]
#[case(20.0, 50.0)]
#[case(40.0, 120.0)]
#[case(60.0, 200.0)]
fn the_ticks_of_a_day_are_few_and_round(#[case] apply: f64, #[case] develop: f64) {
    let chart = one("nape", apply, develop);
    let all = elements(&day_chart(&DayChart { title: "day", timeline: &chart }));
    let grid = pairs(&all).filter(|(line, _)| line.kind == "polyline" && line.at["stroke"] == "#ddd");
    let bars: Vec<f64> = of(&all, "rect")[1..].iter().map(|bar| bar.y()).collect();
    let (top, bottom) = (bars.iter().copied().fold(f64::MAX, f64::min), bars.iter().copied().fold(0.0, f64::max));
    let mut at = Vec::new();
    for (line, text) in grid {
        let points = line.points();
        near(points[0].0, text.x());
        near(points[1].0, text.x());
        assert!(points[0].1 <= top && points[1].1 > bottom + 18.0 && text.y() > points[1].1, "{points:?} {text:?}");
        assert!(text.y() < points[1].1 + 20.0, "{points:?} {text:?}");
        at.push(text.words.parse::<f64>().unwrap());
    }
    let from = chart.pieces.iter().map(|piece| piece.from.min()).fold(f64::MAX, f64::min);
    let span = chart.finish.min() - from;
    let step = at[1] - at[0];
    let steps = [5.0, 10.0, 15.0, 30.0, 60.0, 120.0];
    let place = steps.iter().position(|one| *one == step).unwrap();
    assert!(span / step <= 16.0 && (place == 0 || span / steps[place - 1] > 16.0), "{step} of {span}");
    // From the first multiple to the last: none is missing at either end.
    assert!(at.windows(2).all(|two| two[1] - two[0] == step) && at[0] % step == 0.0, "{at:?}");
    assert!(at[0] >= from && at[0] - step < from, "{at:?} from {from}");
    let last = at[at.len() - 1];
    assert!(last <= chart.finish.min() && last + step > chart.finish.min(), "{at:?} to {}", chart.finish);
}

/// A name has the room of 11.5 heights of its letters. Narrow letters are 0.4 high, wide ones 1, capitals 0.75 and others 0.63: what is
/// longer is cut where there is room for the sign of the cut, 1 wide.
#[rstest]
#[case("m", 11, 10)]
#[case("W", 11, 10)]
#[case("i", 28, 26)]
#[case(".", 28, 26)]
#[case("A", 15, 14)]
#[case("a", 18, 16)]
#[case("7", 18, 16)]
#[case("\u{e9}", 11, 10)]
fn a_long_name_is_cut(#[case] letter: &str, #[case] whole: usize, #[case] cut: usize) {
    let drawn = |count: usize| {
        let name = letter.repeat(count);
        let all = elements(&day_chart(&DayChart { title: "day", timeline: &one(&name, 10.0, 20.0) }));
        let short = format!("{}\u{2026}", letter.repeat(cut));
        let [is_whole, is_cut] = [&name, &short].map(|name| all.iter().any(|text| text.words == *name));
        assert_ne!(is_whole, is_cut, "{name}");
        is_whole
    };
    assert!(drawn(whole) && !drawn(whole + 1) && !drawn(whole + 9), "{letter}");
}

/// What is wanted stands right above its line at the axis, the limit left of its own, a reading right of it; the number of a level beside
/// the axis and of a minute under it.
#[test]
fn words_of_a_lift_stand_at_their_lines() {
    let all = elements(&levels());
    let text = |begins: &str| of(&all, "text").into_iter().find(|one| one.words.starts_with(begins)).unwrap();
    let frame = of(&all, "rect")[1];
    let dashed = of(&all, "polyline").into_iter().find(|one| one.at.contains_key("stroke-dasharray")).unwrap().points();
    let wanted = text("wanted: 7");
    assert!(wanted.y() < dashed[0].1 && wanted.y() > dashed[0].1 - 8.0 && wanted.at["text-anchor"] == "start");
    assert!(wanted.x() > frame.x() && wanted.x() < frame.x() + 12.0, "{wanted:?}");
    let limit = of(&all, "polyline").into_iter().find(|one| one.at["stroke-width"] == "2").unwrap().points();
    let said = text("limit: 45 min");
    assert!(said.x() < limit[0].0 && said.x() > limit[0].0 - 10.0 && said.at["text-anchor"] == "end", "{said:?}");
    assert!(said.y() < frame.y() + frame.height() && said.y() > frame.y() + frame.height() - 14.0, "{said:?}");
    assert!((limit[0].1 - limit[1].1).abs() > frame.height() - 0.1, "from bottom to top");
    let (read, ring) = (text("read: 6.5"), of(&all, "circle")[0]);
    assert!(read.x() > ring.number("cx") + 4.0 && read.x() < ring.number("cx") + 14.0, "{read:?} {ring:?}");
    assert!((read.y() - ring.number("cy")).abs() < 18.0 && read.y() > ring.number("cy"), "{read:?} {ring:?}");
    let (left, bottom) = (frame.x(), frame.y() + frame.height());
    for one in of(&all, "text").into_iter().filter(|one| one.words.parse::<f64>().is_ok()) {
        if one.at["text-anchor"] == "end" {
            assert!(
                one.x() < left && one.x() > left - 14.0 && one.y() > frame.y() && one.y() < bottom + 5.0,
                "{one:?}"
            );
        } else {
            assert!(one.y() > bottom + 10.0 && one.y() < bottom + 26.0, "{one:?}");
        }
    }
}

/// All that is drawn has room: a later reading, a lower one, a higher target widen the axes, by half a level beyond whole ones.
#[rstest]
#[case(45.0, Some(7.0), &[])]
#[case(45.0, Some(11.0), &[(20.0, 6.5)])]
#[case(45.0, Some(2.0), &[])]
#[case(20.0, None, &[(60.0, 9.0)])]
#[case(20.0, None, &[(10.0, 3.2)])]
#[case(150.0, Some(8.0), &[])]
fn the_axes_hold_all_that_is_drawn(#[case] limit: f64, #[case] target: Option<f64>, #[case] readings: &[(f64, f64)]) {
    let readings: Vec<(Duration, Level)> = readings.iter().map(|(at, number)| (minutes(*at), level(*number))).collect();
    let (limit, target) = (minutes(limit), target.map(level));
    let lightening = lightening();
    let all = elements(&level_chart(&LevelChart {
        title: "crown",
        lightening: &lightening,
        limit,
        target,
        readings: &readings,
    }));
    let numbers = |anchor: &str| -> Vec<(f64, f64, f64)> {
        let texts = of(&all, "text").into_iter().filter(|one| one.at["text-anchor"] == anchor);
        texts.filter_map(|one| Some((one.words.parse().ok()?, one.x(), one.y()))).collect()
    };
    let (levels, times) = (numbers("end"), numbers("middle"));
    let end = lightening.level_after(limit).high().number();
    let drawn = readings.iter().map(|(_, level)| level.number()).chain(target.map(Level::number));
    let drawn: Vec<f64> = drawn.chain([4.0, end]).collect();
    let (low, high) = (drawn.iter().copied().fold(f64::MAX, f64::min), drawn.iter().copied().fold(0.0, f64::max));
    let shown: Vec<f64> = levels.iter().map(|(number, ..)| *number).collect();
    let want: Vec<f64> = (1..=12).map(f64::from).filter(|one| *one >= low.floor() && *one <= high.ceil()).collect();
    assert_eq!(shown, want);
    let frame = of(&all, "rect")[1];
    let (first, last) = (levels[0], levels[levels.len() - 1]);
    let y = scale((first.2 - 4.0, first.0), (last.2 - 4.0, last.0));
    near(y(low.floor() - 0.5), frame.y() + frame.height());
    near(y(high.ceil() + 0.5), frame.y());
    // A twelfth of the longest time is left free, about.
    let longest = readings.iter().map(|(at, _)| at.min()).fold(limit.min(), f64::max);
    let (first, last) = (times[0], times[times.len() - 1]);
    let x = scale((first.1, first.0), (last.1, last.0));
    near(x(1.08 * longest), frame.x() + frame.width());
    let step = times[1].0 - times[0].0;
    let steps = [5.0, 10.0, 15.0, 30.0, 60.0];
    let place = steps.iter().position(|one| *one == step).unwrap();
    assert!(1.08 * longest / step <= 12.0 && (place == 0 || 1.08 * longest / steps[place - 1] > 12.0), "{step}");
    let last = times[times.len() - 1].0;
    assert!(times[0].0 == 0.0 && last <= 1.08 * longest && last + step > 1.08 * longest, "{times:?}");
    for (ring, (at, level)) in of(&all, "circle").iter().zip(&readings) {
        near(ring.number("cx"), x(at.min()));
        near(ring.number("cy"), y(level.number()));
    }
}

/// A minute that would stand on the one before has no number: sixteen px are one number wide.
#[rstest]
#[case(&[10.0, 40.0], &["10", "40"])]
#[case(&[10.0, 10.5, 40.0], &["10", "40"])]
#[case(&[10.0, 20.0, 30.0, 40.0], &["10", "20", "30", "40"])]
#[case(&[39.0, 40.0], &["39"])]
fn minutes_of_looks_do_not_stand_on_each_other(#[case] at: &[f64], #[case] want: &[&str]) {
    let looks: Vec<_> = at.iter().map(|at| (minutes(*at), level(5.0).into())).collect();
    let chart = LookChart { title: "nape", start: level(4.0).into(), target: level(7.5), looks: &looks };
    let all = elements(&look_chart(&chart));
    let told = of(&all, "text").into_iter().filter(|one| one.at["text-anchor"] == "middle");
    let told: Vec<&str> = told.map(|one| one.words.as_str()).filter(|words| words.parse::<f64>().is_ok()).collect();
    assert_eq!(told, want);
    assert_eq!(of(&all, "circle").len(), at.len());
}

/// What is wanted stands right above its line, and the levels beside the axis.
#[test]
fn words_of_looks_stand_at_their_lines() {
    let all = elements(&looks());
    let dashed = of(&all, "polyline").into_iter().find(|one| one.at.contains_key("stroke-dasharray")).unwrap().points();
    let wanted = of(&all, "text").into_iter().find(|one| one.words.starts_with("wanted")).unwrap();
    assert!(wanted.y() < dashed[0].1 && wanted.y() > dashed[0].1 - 8.0, "{wanted:?} {dashed:?}");
    assert!(wanted.x() > dashed[0].0 && wanted.x() < dashed[0].0 + 10.0, "{wanted:?} {dashed:?}");
    for one in of(&all, "text").into_iter().filter(|one| one.at["text-anchor"] == "end") {
        assert!(one.x() < dashed[0].0 && one.x() > dashed[0].0 - 12.0, "{one:?}");
    }
    let lowest = of(&all, "polyline").iter().flat_map(|one| one.points()).map(|(_, y)| y).fold(0.0, f64::max);
    let minutes: Vec<_> = of(&all, "text").into_iter().filter(|one| one.words == "10" || one.words == "40").collect();
    assert!(minutes.iter().all(|one| one.y() > lowest && one.at["text-anchor"] == "middle"), "{minutes:?}");
}

/// A marked margin is on the axis with five more behind it, and the axis goes to 70 at least and 95 at most.
#[rstest]
#[case(Some(25), 70)]
#[case(Some(65), 70)]
#[case(Some(66), 71)]
#[case(Some(80), 85)]
#[case(Some(93), 95)]
#[case(None, 70)]
fn the_axis_of_margins_goes_beyond_the_mark(#[case] marked: Option<i64>, #[case] end: usize) {
    let cost = Money::parse("45.00", Currency::EUR).unwrap();
    let marked = marked.map(|percent| Margin::from_percent(percent.into()).unwrap());
    let all = elements(&margin_chart(&MarginChart::new("price", cost).unwrap().marking(marked).unwrap()));
    let curve = of(&all, "polyline").into_iter().max_by_key(|one| one.points().len()).unwrap().points();
    assert_eq!(curve.len(), end + 1);
    assert_eq!(of(&all, "circle").len(), usize::from(marked.is_some()));
    let frame = of(&all, "rect")[1];
    let ticks = of(&all, "text").into_iter().filter(|one| one.at["text-anchor"] == "middle");
    let ticks: Vec<_> = ticks.filter(|one| one.words.parse::<f64>().is_ok()).collect();
    assert_eq!(ticks.len(), end / 10 + 1);
    for tick in ticks {
        let bottom = frame.y() + frame.height();
        assert!(tick.y() > bottom + 8.0 && tick.y() < bottom + 26.0, "{tick:?}");
        let mark = of(&all, "polyline").into_iter().find(|one| {
            let points = one.points();
            points.len() == 2 && points[0].0 == points[1].0 && (points[0].0 - tick.x()).abs() < 0.03
        });
        let points = mark.unwrap().points();
        assert!(
            (points[0].1 - bottom).abs() < 0.03 && points[1].1 > bottom && points[1].1 < bottom + 8.0,
            "{points:?}"
        );
    }
    let all_said = elements(&margins());
    let cost = of(&all_said, "text").into_iter().find(|one| one.words == "cost").unwrap();
    let dashed =
        of(&all_said, "polyline").into_iter().find(|one| one.at.contains_key("stroke-dasharray")).unwrap().points();
    assert!(cost.y() > dashed[0].1 + 6.0 && cost.y() < dashed[0].1 + 20.0, "under its line: {cost:?} {dashed:?}");
    assert!(cost.x() < dashed[1].0 && cost.x() > dashed[1].0 - 12.0, "{cost:?} {dashed:?}");
}

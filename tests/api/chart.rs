//! Pictures: what is in them, in words too, and what is never in them.

use foilwork::{
    chart::{Anchor, LevelChart, Paint, Svg, level_chart},
    colour::Level,
    lift::{Belief, Lightening, Situation},
    quantity::{Duration, MassFraction, Quantity},
    source::Interval,
};
use rstest::rstest;

fn level(number: f64) -> Level {
    Level::new(number).unwrap()
}

fn lightening() -> Lightening {
    let mix = Situation::usual(Interval::exact(MassFraction::nearest(4.0)));
    Lightening::new(&Belief::untested(), &mix, level(4.0))
}

fn chart(title: &str, target: Option<Level>, readings: &[(Duration, Level)]) -> String {
    let limit = Duration::nearest(45.0);
    level_chart(&LevelChart { title, lightening: &lightening(), limit, target, readings })
}

#[test]
fn the_picture_says_in_words_what_it_shows() {
    let svg = chart("nape", Some(level(8.0)), &[(Duration::nearest(20.0), level(6.5))]);
    let words = &svg[svg.find("<desc>").unwrap()..svg.find("</desc>").unwrap()];
    let at_limit = lightening().level_after(Duration::nearest(45.0)).best().number();
    assert!(words.contains(&format!("to {at_limit:.1} (")), "{words}");
    assert!(words.contains("Level 8 is wanted") && words.contains("Read after 20 min: 6.5."), "{words}");
    assert!(svg.contains("<title>nape</title>") && svg.contains("role=\"img\""));
    for shown in ["wanted: 8", "limit: 45 min", "read: 6.5", "80 of 100 cases", "a strand decides"] {
        assert!(svg.contains(shown), "{shown}");
    }
}

#[rstest]
#[case::markup("<script>alert(1)</script>")]
#[case::attribute("\" onload=\"alert(1)")]
#[case::entity("a & b")]
#[case::terminal("\u{1b}[31mred")]
fn a_title_cannot_be_more_than_a_title(#[case] title: &str) {
    let svg = chart(title, None, &[]);
    assert!(
        !svg.contains("<script") && !svg.contains("\" onload") && !svg.contains('\u{1b}') && !svg.contains("a & b")
    );
    assert!(!svg.contains("href"), "nothing is loaded");
}

/// Half a ring from the top to the bottom: angles are clockwise from the top.
#[test]
fn a_sector_goes_clockwise_from_the_top() {
    let mut svg = Svg::new((100.0, 100.0), "half", "a half ring");
    svg.sector((50.0, 50.0), (20.0, 40.0), (0.0, 180.0), &Paint::area("#abc"));
    assert!(svg.finish().contains("d=\"M50 10 A40 40 0 0 1 50 90 L50 70 A20 20 0 0 0 50 30 Z\" fill=\"#abc\""));
}

#[test]
fn what_is_not_finite_does_not_reach_the_picture() {
    let mut svg = Svg::new((10.0, 10.0), "t", "d");
    svg.line([(f64::NAN, 1.0), (f64::INFINITY, 2.0)], &Paint::line("#000", 1.0));
    svg.text((f64::NAN, 1.0), Anchor::End, 3.0, "x");
    let text = svg.finish();
    assert!(!text.contains("NaN") && !text.contains("inf"), "{text}");
}

//! Curves and marks by their axes.

use super::{elements, levels, looks, margins, near, of, scale, tick};

/// A price is the cost over what the margin leaves of it: 45 over 0.75 are 60, over 0.3 are 150.
#[test]
fn the_curve_of_prices_is_cost_over_what_is_left() {
    let all = elements(&margins());
    let frame = of(&all, "rect")[1];
    let (right, bottom) = (frame.x() + frame.width(), frame.y() + frame.height());
    let (x, y) = (scale((frame.x(), 0.0), (right, 70.0)), scale((bottom, 0.0), (frame.y(), 150.0)));
    let curve = of(&all, "polyline").into_iter().max_by_key(|one| one.points().len()).unwrap().points();
    assert_eq!(curve.len(), 71);
    for (percent, (at, price)) in (0..).map(f64::from).zip(curve) {
        near(at, x(percent));
        // The price is in cents.
        assert!((price - y(45.0 / (1.0 - percent / 100.0))).abs() < 0.03, "{percent}");
    }
    for percent in ["0", "10", "40", "70"] {
        near(tick(&all, percent, "middle").x(), x(percent.parse().unwrap()));
    }
    for price in ["37.5", "75", "112.5", "150"] {
        near(tick(&all, price, "end").y() - 4.0, y(price.parse().unwrap()));
    }
    let mark = of(&all, "circle")[0];
    near(mark.number("cx"), x(25.0));
    near(mark.number("cy"), y(60.0));
    let cost = of(&all, "polyline").into_iter().find(|one| one.at.contains_key("stroke-dasharray")).unwrap();
    assert!(cost.points().iter().all(|(_, at)| (at - y(45.0)).abs() < 0.03), "{cost:?}");
}

/// Levels stand where the lines of the levels are, minutes where their number is.
#[test]
fn looks_stand_at_their_minute_and_level() {
    let all = elements(&looks());
    let lines: Vec<_> = of(&all, "polyline").into_iter().filter(|one| one.points().len() == 2).collect();
    let (left, right) = (lines[0].points()[0].0, lines[0].points()[1].0);
    let line = |name: &str| tick(&all, name, "end").y() - 4.0;
    let (x, y) = (scale((left, 0.0), (right, 40.0)), scale((line("4"), 4.0), (line("8"), 8.0)));
    for (at, name) in lines.iter().zip(["4", "5", "6", "7", "8"]) {
        near(at.points()[0].1, y(name.parse().unwrap()));
        near(line(name), at.points()[0].1);
    }
    let expect = |got: Vec<(f64, f64)>, want: &[(f64, f64)]| {
        assert_eq!(got.len(), want.len());
        for ((at, up), (time, level)) in got.into_iter().zip(want) {
            near(at, x(*time));
            near(up, y(*level));
        }
    };
    let median = of(&all, "polyline").into_iter().find(|one| one.points().len() == 3).unwrap();
    expect(median.points(), &[(0.0, 4.0), (10.0, 5.0), (40.0, 7.0)]);
    let band = of(&all, "polygon")[0].points();
    expect(band, &[(0.0, 4.0), (10.0, 6.0), (40.0, 8.0), (40.0, 5.0), (10.0, 4.5), (0.0, 4.0)]);
    let seen = of(&all, "circle").iter().map(|one| (one.number("cx"), one.number("cy"))).collect();
    expect(seen, &[(10.0, 5.0), (40.0, 7.0)]);
    expect(lines.last().unwrap().points(), &[(0.0, 7.5), (40.0, 7.5)]);
    near(tick(&all, "10", "middle").x(), x(10.0));
    near(tick(&all, "40", "middle").x(), x(40.0));
}

/// A reading and the limit stand at their minute and level; the wanted level is a line across.
#[test]
fn a_reading_stands_at_its_minute_and_level() {
    let all = elements(&levels());
    let line = |name: &str| tick(&all, name, "end").y() - 4.0;
    let y = scale((line("4"), 4.0), (line("6"), 6.0));
    let x = scale((tick(&all, "0", "middle").x(), 0.0), (tick(&all, "40", "middle").x(), 40.0));
    near(tick(&all, "10", "middle").x(), x(10.0));
    near(line("5"), y(5.0));
    let reading = of(&all, "circle")[0];
    near(reading.number("cx"), x(20.0));
    near(reading.number("cy"), y(6.5));
    let limit = of(&all, "polyline").into_iter().find(|one| one.at["stroke-width"] == "2").unwrap().points();
    near(limit[0].0, x(45.0));
    near(limit[1].0, x(45.0));
    let wanted = of(&all, "polyline").into_iter().find(|one| one.at.contains_key("stroke-dasharray")).unwrap().points();
    near(wanted[0].1, y(7.0));
    near(wanted[1].1, y(7.0));
    let curve = of(&all, "polyline").into_iter().max_by_key(|one| one.points().len()).unwrap().points();
    near(curve[0].0, x(0.0));
    near(curve[0].1, y(4.0));
    let frame = of(&all, "rect")[1];
    near(curve.last().unwrap().0, frame.x() + frame.width());
    near(frame.x(), x(0.0));
}

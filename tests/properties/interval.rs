//! No step of a calculation may drop the bounds of an estimate, and every value within them has to stay within.

use foilwork::{
    quantity::{Mass, MassFraction},
    source::Interval,
};
use proptest::{prelude::*, sample::select};

const STEPS: u32 = 12;

/// Monotone in each of two positive numbers, as the formulas are.
type Formula = (&'static str, fn(f64, f64) -> f64);
const FORMULAS: [Formula; 6] = [
    ("sum", |a, b| a + b),
    ("difference", |a, b| a - b),
    ("product", |a, b| a * b),
    ("quotient", |a, b| a / b),
    ("share", |a, b| a / (a + b)),
    ("decay", |a, b| a * (-b / 50.0).exp()),
];

prop_compose! {
    fn interval()(low in 0.1..50.0_f64, below in 0.0..20.0_f64, above in 0.0..20.0_f64) -> Interval<f64> {
        Interval::new(low, low + below, low + below + above).unwrap()
    }
}

/// Values all over an interval, the bounds among them.
fn all_over(interval: &Interval<f64>) -> Vec<f64> {
    let (low, width) = (interval.low(), interval.high() - interval.low());
    let mut values: Vec<f64> = (0..=STEPS).map(|i| low + width * f64::from(i) / f64::from(STEPS)).collect();
    values.extend(interval.to_array());
    values
}

fn holds(interval: &Interval<f64>, value: f64) -> bool {
    let slack = 1e-12 * value.abs().max(1.0);
    interval.low() - slack <= value && value <= interval.high() + slack
}

proptest! {
    #[test]
    fn the_order_always_holds(one in -1e3..1e3_f64, best in -1e3..1e3_f64, other in -1e3..1e3_f64) {
        let [low, middle, high] = Interval::ordered(one, best, other).to_array();
        prop_assert!(low <= middle && middle <= high);
        prop_assert_eq!(middle, best);
        prop_assert!(low <= one.min(other) && high >= one.max(other), "both results stay inside");
    }

    #[test]
    fn map_keeps_every_value(interval in interval(), falling in any::<bool>()) {
        let f = |x: f64| if falling { 7.0 / x } else { x.sqrt() };
        let mapped = interval.map(f);
        prop_assert_eq!(mapped.best(), f(interval.best()));
        for value in all_over(&interval) {
            prop_assert!(holds(&mapped, f(value)), "{value} of {interval:?} leaves {mapped:?}");
        }
        prop_assert_eq!(mapped.is_exact(), interval.is_exact());
        prop_assert_eq!(interval.try_map(|x| Ok::<_, ()>(f(x))), Ok(mapped));
    }

    #[test]
    fn combine_keeps_every_pair_and_no_more(a in interval(), b in interval(), (name, f) in select(&FORMULAS[..])) {
        let both = a.combine(b, f);
        prop_assert_eq!(both.best(), f(a.best(), b.best()));
        let (mut lowest, mut highest) = (f64::INFINITY, f64::NEG_INFINITY);
        for one in all_over(&a) {
            for other in all_over(&b) {
                let value = f(one, other);
                prop_assert!(holds(&both, value), "{name}({one}, {other}) = {value} leaves {both:?}");
                (lowest, highest) = (lowest.min(value), highest.max(value));
            }
        }
        // The bounds are reached: they are as wide as the values need, and not wider.
        prop_assert!((both.low() - lowest).abs() <= 1e-12 * lowest.abs().max(1.0), "{name}: {both:?}, {lowest}");
        prop_assert!((both.high() - highest).abs() <= 1e-12 * highest.abs().max(1.0), "{name}: {both:?}, {highest}");
        prop_assert_eq!(a.try_combine(b, |x, y| Ok::<_, ()>(f(x, y))), Ok(both));
    }

    #[test]
    fn no_width_is_lost(a in interval(), exact in 0.1..50.0_f64, (name, f) in select(&FORMULAS[..])) {
        prop_assume!(!a.is_exact() && (a.high() - a.low()) > 1e-6);
        let exact = Interval::exact(exact);
        prop_assert!(!a.combine(exact, f).is_exact(), "{name}");
        prop_assert!(!exact.combine(a, f).is_exact(), "{name}");
    }

    #[test]
    fn widening_keeps_both_and_the_estimate(a in interval(), b in interval()) {
        let wide = a.widened_to(b);
        prop_assert_eq!(wide.best(), a.best());
        for value in a.to_array().into_iter().chain(b.to_array()) {
            prop_assert!(wide.contains(value));
        }
    }

    #[test]
    fn plain_data_round_trips(low in 0.0..50.0_f64, below in 0.0..20.0_f64, above in 0.0..20.0_f64) {
        let ww = |value| MassFraction::from_ww_percent(value).unwrap();
        let strength = Interval::new(ww(low), ww(low + below), ww(low + below + above)).unwrap();
        let json = serde_json::to_value(strength).unwrap();
        prop_assert_eq!(json.as_object().unwrap().keys().collect::<Vec<_>>(), ["best", "high", "low"]);
        prop_assert_eq!(json["best"].as_f64(), Some(strength.best().ww_percent()));
        prop_assert_eq!(serde_json::from_value::<Interval<MassFraction>>(json).unwrap(), strength);
    }
}

#[test]
fn bounds_that_do_not_enclose_the_estimate_are_refused() {
    let message = "invalid interval: the bounds must enclose the best estimate (give low <= best <= high)";
    for (low, best, high) in [(2.0, 1.0, 3.0), (1.0, 4.0, 3.0), (3.0, 2.0, 1.0), (1.0, f64::NAN, 3.0)] {
        assert_eq!(Interval::new(low, best, high).unwrap_err().to_string(), message);
    }
}

#[test]
fn plain_data_with_bounds_the_wrong_way_round_is_refused() {
    for text in [
        r#"{"low": 3, "best": 2, "high": 1}"#,
        r#"{"low": 1, "best": 2}"#,
        r#"{"low": 1, "best": 2, "high": 3, "mean": 2}"#,
        r#"{"low": -1, "best": 2, "high": 3}"#,
        "2",
    ] {
        assert!(serde_json::from_str::<Interval<Mass>>(text).is_err(), "{text}");
    }
}

#[test]
fn the_first_failure_is_reported_the_estimate_before_its_bounds() {
    let numbers = Interval::new(1, 2, 3).unwrap();
    let failing = |bad: i32| move |x: i32| if x == bad { Err(x) } else { Ok(x) };
    assert_eq!(numbers.try_map(failing(2)), Err(2));
    assert_eq!(numbers.try_map(failing(3)), Err(3));
    assert_eq!(numbers.try_combine(numbers, |a, b| if a + b == 4 { Err(()) } else { Ok(a + b) }), Err(()));
}

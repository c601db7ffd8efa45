//! Laws of hair mass that hold for every head.

use foilwork::{
    hair::{
        Age, DensityFact, HairDensity, HairFacts, Ponytail, WhiteCount, calibrated, grown, growth, weeks_to_grow,
        white_share,
    },
    quantity::{Length, Mass, Quantity, Share},
    source::Interval,
};
use proptest::prelude::*;

fn length(cm: f64) -> Interval<Length> {
    Interval::exact(Length::from_cm(cm).unwrap())
}

proptest! {
    #[test]
    fn more_hair_is_more_in_every_way(density in 50.0..300.0, more in 1.0..1.5, share in 1.0..60.0, cm in 1.0..60.0) {
        let tress = |density: f64, share: f64| {
            let counted = Interval::exact(HairDensity::from_hairs_per_cm2(density).unwrap());
            let facts = HairFacts { density: Some(DensityFact::Counted(counted)), ..HairFacts::default() };
            facts.head().part(Share::from_percent(share).unwrap())
        };
        let (less, denser, wider) = (tress(density, share), tress(density * more, share), tress(density, share * more));
        for bigger in [denser, wider] {
            prop_assert!(bigger.hairs.best() >= less.hairs.best());
            prop_assert!(bigger.mass(length(cm)).best() >= less.mass(length(cm)).best());
            prop_assert!(bigger.surface(length(cm)).low() >= less.surface(length(cm)).low());
        }
        prop_assert!(less.mass(length(cm * more)).high() >= less.mass(length(cm)).high());
    }

    #[test]
    fn parts_add_up_to_the_head(share in 0.0..100.0, cm in 1.0..60.0) {
        let head = HairFacts::default().head();
        let of = |percent: f64| head.part(Share::from_percent(percent).unwrap()).mass(length(cm)).best().g();
        let all = of(100.0);
        prop_assert!((of(share) + of(100.0 - share) - all).abs() < 1e-9 * all);
    }

    #[test]
    fn a_measurement_narrows_and_stays_between(girth in 5.0..14.0, used in 20.0..300.0) {
        let tail = Ponytail { girth: length(girth), gathered: Share::ALL };
        let (without, by_tail) = (HairFacts::default().head().mass_per_length.value, tail.mass_per_length());
        let with = HairFacts { ponytail: Some(tail), ..HairFacts::default() }.head().mass_per_length.value;
        let width = |of: Interval<_>| -> f64 { let [low, _, high] = of.to_array().map(Quantity::in_unit); high / low };
        prop_assert!(width(with) < width(without) && width(with) < width(by_tail));
        let (low, high) = if without.best() < by_tail.best() { (without, by_tail) } else { (by_tail, without) };
        prop_assert!(low.best() <= with.best() && with.best() <= high.best());
        let predicted = Interval::ordered(40.0, 80.0, 150.0).map(Mass::nearest);
        let now = calibrated(predicted, Mass::from_g(used).unwrap());
        prop_assert!(now.high().g() / now.low().g() < 150.0 / 40.0);
        prop_assert!((now.best().g() - used).abs() <= (predicted.best().g() - used).abs() + 1e-9);
    }

    #[test]
    fn weeks_and_centimetres_are_inverse(weeks in 1.0..100.0) {
        let rate = Interval::exact(growth(None).value.best());
        let back = weeks_to_grow(grown(Interval::exact(Quantity::nearest(weeks)), rate), rate);
        prop_assert!((back.best().weeks() - weeks).abs() < 1e-9);
    }

    #[test]
    fn density_falls_with_age(young in 16.0..100.0, older in 0.0..10.0) {
        let of = |age: f64| HairFacts { age: Some(Age::from_years(age).unwrap()), ..HairFacts::default() }.head().density.value;
        prop_assert!(of(young + older).best() <= of(young).best());
    }

    #[test]
    fn white_share_lies_between_its_regions(share in 1.0..99.0, first in 0u32..=100, second in 0u32..=100) {
        let count = |share, white| WhiteCount { region: String::new(), share: Share::from_percent(share).unwrap(), white, counted: 100 };
        let found = white_share(&[count(share, first), count(100.0 - share, second)]).unwrap();
        let best = found.white.best().percent();
        prop_assert!(best >= f64::from(first.min(second)) - 1e-9 && best <= f64::from(first.max(second)) + 1e-9);
        // Counting only one region is less sure.
        let one = white_share(&[count(share, first)]).unwrap();
        prop_assert!(one.counted.percent() < 100.0 + 1e-9);
    }
}

//! Strands, refusals and texts of the hair room.

use foilwork::{
    colour::Level,
    hair::{Band, BandedStrand, DensityByEye, DensityFact, HairFacts, Texture, ThreadFact, calibrated, warm_band},
    quantity::{Length, Mass, Share},
    source::Interval,
};
use rstest::rstest;

fn cm(value: f64) -> Length {
    Length::from_cm(value).unwrap()
}

fn band(from: f64, to: f64, level: f64, artificial: bool) -> Band {
    Band { from: cm(from), to: cm(to), level: Level::new(level).unwrap(), tone: None, artificial }
}

/// Nothing that was used up says nothing, and an estimate that may be nothing is left as it is.
#[test]
fn a_use_of_nothing_teaches_nothing() {
    let g = |value| Mass::from_g(value).unwrap();
    let (open, closed) =
        (Interval::new(g(0.0), g(80.0), g(150.0)).unwrap(), Interval::new(g(60.0), g(80.0), g(150.0)).unwrap());
    assert_eq!((calibrated(closed, g(0.0)), calibrated(open, g(70.0))), (closed, open));
    assert_ne!(calibrated(closed, g(70.0)), closed);
}

#[rstest]
#[case::none(&[], "a strand without a band: state at least one, from 0 cm to the length of the hair")]
#[case::backwards(&[(0.0, 0.0)], "band 1: it ends at 0 cm, not behind 0 cm where it begins (swap `from` and `to`)")]
#[case::gap(
    &[(0.0, 4.0), (5.0, 30.0)],
    "band 2 begins at 5 cm, but the one before ends at 4 cm: a gap without a colour (let `from` be 4 cm)"
)]
#[case::overlap(
    &[(0.0, 4.0), (3.0, 30.0)],
    "band 2 begins at 3 cm, but the one before ends at 4 cm: they overlap (let `from` be 4 cm)"
)]
#[case::longer_than_the_hair(
    &[(0.0, 40.0)],
    "the last band ends at 40 cm, but the hair is 30 cm long: let its `to` be 30 cm, or correct the length"
)]
fn what_is_no_strand_says_so(#[case] bands: &[(f64, f64)], #[case] want: &str) {
    let bands = bands.iter().map(|(from, to)| band(*from, *to, 6.0, false)).collect();
    assert_eq!(BandedStrand::new(cm(30.0), bands).unwrap_err().to_string(), want);
}

/// By hand: natural to 3 cm, lightened to 20, coloured to 30. A mix from 2 to 25 cm lies on 17 and 5 cm of it.
#[test]
fn overlap_onto_coloured_hair_in_cm() {
    let bands = vec![band(0.0, 3.0, 5.0, false), band(3.0, 20.0, 9.0, true), band(20.0, 30.0, 7.0, true)];
    let strand = BandedStrand::new(cm(30.0), bands).unwrap();
    assert_eq!(strand.regrowth(), cm(3.0));
    assert_eq!(strand.overlap(cm(2.0), cm(25.0)), cm(22.0));
    assert_eq!(strand.overlap(cm(0.0), cm(3.0)), cm(0.0));
    assert_eq!(strand.level_at(cm(3.0)), Some(Level::new(5.0).unwrap()));
    assert_eq!(strand.level_at(cm(30.1)), None);
    assert!(warm_band().value.contains(cm(1.0)));
}

#[test]
fn what_is_said_by_eye_orders_the_mass() {
    let mass = |density, thread| {
        let facts = HairFacts {
            density: Some(DensityFact::ByEye(density)),
            thread: Some(ThreadFact::ByEye(thread)),
            ..HairFacts::default()
        };
        facts.head().part(Share::ALL).mass(cm(20.0).into())
    };
    let classes = [
        mass(DensityByEye::Low, Texture::Fine),
        mass(DensityByEye::Medium, Texture::Medium),
        mass(DensityByEye::High, Texture::Coarse),
    ];
    assert!(classes.windows(2).all(|pair| pair[0].best() < pair[1].best() && pair[0].high() < pair[1].high()));
}

//! Hair against what others measured; `tests/data/hair/sources.csv` says where each figure is from.

use crate::api::common::near;
use foilwork::{
    hair::{
        CrossSection, Cut, Diameter, DiameterMethod, Group, HairFacts, Ponytail, WhiteCount, fibre_density, growth,
        white_share,
    },
    quantity::{Length, Quantity, Share},
    source::Interval,
};
use serde::Deserialize;

#[derive(Deserialize)]
struct GroupRow {
    group: String,
    density: f64,
    section_um2: f64,
    minor_um: f64,
    major_um: f64,
    linear_density_ug_per_cm: f64,
    growth_um_per_day: f64,
    growth_cm_per_month: f64,
}

fn rows<R: for<'de> Deserialize<'de>>(name: &str) -> Vec<R> {
    let path = format!("tests/data/hair/{name}.csv");
    csv::Reader::from_path(path).unwrap().deserialize().map(Result::unwrap).collect()
}

fn cm(value: f64) -> Length {
    Length::from_cm(value).unwrap()
}

/// Tolerances: half of the last printed digit.
#[test]
fn groups_have_their_published_means() {
    for row in rows::<GroupRow>("groups") {
        let group: Group = row.group.parse().unwrap();
        let head = HairFacts { group: Some(group), ..HairFacts::default() }.head();
        near(head.density.value.best().hairs_per_cm2(), row.density, 0.5);
        near(head.cross_section.value.best().um2(), row.section_um2, 0.5);
        let hair = head.cross_section.value.best().linear_density(fibre_density().value.best());
        near(hair.ug_per_cm(), row.linear_density_ug_per_cm, 0.06);
        let rate = growth(Some(group)).value.best().cm_per_month();
        near(rate, row.growth_cm_per_month, 0.005);
        near(rate, row.growth_um_per_day * 1e-4 * 365.25 / 12.0, 1e-12);
        // The ellipse of the printed axes has the printed area, to their rounding.
        let cut = Cut::new(Diameter::from_um(row.minor_um).unwrap(), Diameter::from_um(row.major_um).unwrap());
        near(cut.area().um2(), row.section_um2, 10.0);
    }
}

/// 80 of 100 people lie within the bounds: of 16 densities and 10 cross-sections that were printed one by one, at least
/// seven of ten do, and not all.
#[test]
fn bounds_hold_most_people() {
    let people: Vec<(String, String, f64, String)> = rows("individuals");
    let head = HairFacts::default().head();
    let within = |kind: &str, holds: &dyn Fn(f64) -> bool| {
        let of: Vec<_> = people.iter().filter(|row| row.0 == kind).collect();
        let inside = of.iter().filter(|row| holds(row.2)).count();
        assert!(inside * 10 >= of.len() * 7 && inside < of.len(), "{kind}: {inside} of {}", of.len());
    };
    within("density", &|value| {
        let bounds = head.density.value;
        bounds.low().hairs_per_cm2() <= value && value <= bounds.high().hairs_per_cm2()
    });
    within("section", &|value| head.cross_section.value.contains(CrossSection::from_um2(value).unwrap()));
}

/// Density and section vary by 0.26 and 0.22 between people: together by 0.34, which as a log-normal puts 80 of 100 within
/// 0.65 and 1.53 of the mean (exp of 1.2816 times the root of ln(1 + 0.34 squared), by hand). The keratin adds a little.
#[test]
fn mass_of_a_measured_scalp_varies_as_published() {
    let scalp = Interval::exact(Quantity::nearest(600.0));
    let head = HairFacts { scalp: Some(scalp), ..HairFacts::default() }.head();
    let [low, best, high] = head.mass_per_length.value.to_array().map(|mass| mass.g_per_cm());
    near(low / best, 0.65, 0.01);
    near(high / best, 1.53, 0.02);
    // 600 cm2 x 211 hairs/cm2 x 4216 um2 x 1.32 g/cm3, by hand: 126 600 hairs of 55.65 ug/cm.
    near(best, 7.045, 0.005);
}

/// hair-density-1977: 100 000 to 120 000 are commonly stated, 164 000 to 175 000 follow from its own figures.
/// hair-weight-article-shoulder: 100 to 130 g; hair-weight-article: 60 to 150 g of any length. Shoulder length is taken
/// as 20 cm on average.
#[test]
fn whole_head_figures_lie_within() {
    let all = HairFacts::default().head().part(Share::ALL);
    for hairs in [100_000.0, 120_000.0, 164_000.0] {
        assert!(all.hairs.contains(Quantity::nearest(hairs)), "{hairs}");
    }
    let shoulder = all.mass(cm(20.0).into());
    for grams in [100.0, 130.0, 150.0] {
        assert!(shoulder.contains(Quantity::nearest(grams)), "{grams} in {shoulder:?}");
    }
    assert!(all.mass(cm(10.0).into()).contains(Quantity::nearest(60.0)));
    // hair-density-1977 measured 211/cm2 on 775 cm2 and says 164 000.
    let scalp = Some(Interval::exact(Quantity::nearest(775.0)));
    let measured = HairFacts { scalp, ..HairFacts::default() }.head().part(Share::ALL);
    near(measured.hairs.best().hairs(), 164_000.0, 500.0);
}

/// caliper-against-camera: 108.78 um by camera is 76.9 um by caliper.
#[test]
fn camera_and_caliper_agree() {
    let read = Diameter::from_um(108.78).unwrap();
    near(DiameterMethod::ScalpCamera.by_caliper(read).um(), 76.9, 0.5);
    let area = |method: DiameterMethod| Cut::round(method.by_caliper(read)).area().um2();
    near(area(DiameterMethod::Caliper) / area(DiameterMethod::ScalpCamera), 1.41 * 1.41, 1e-9);
}

/// A solid bundle of girth c has c squared over 4 pi of area: 0.105 g/cm for each square centimetre of girth squared; hair
/// packs to 0.55 to 0.85 of that. 9 cm: 81 x 0.105 x 0.7 = 5.96 g/cm.
#[test]
fn ponytail_by_hand() {
    let tail = Ponytail { girth: cm(9.0).into(), gathered: Share::ALL };
    near(tail.mass_per_length().best().g_per_cm(), 5.96, 0.01);
}

/// The circumference against the integral of the ellipse by Simpson's rule.
#[test]
fn circumference_is_that_of_the_integral() {
    for (minor, major) in [(70.7_f64, 91.2_f64), (60.7, 85.6), (56.8, 94.3), (50.0, 100.0)] {
        let (a, b, n) = (major / 2.0, minor / 2.0, 2000_u32);
        let speed = |t: f64| ((a * t.sin()).powi(2) + (b * t.cos()).powi(2)).sqrt();
        let step = std::f64::consts::FRAC_PI_2 / f64::from(n);
        let weight = |i: u32| {
            if i == 0 || i == n {
                1.0
            } else if i % 2 == 1 {
                4.0
            } else {
                2.0
            }
        };
        let quarter: f64 = (0..=n).map(|i| weight(i) * speed(f64::from(i) * step)).sum::<f64>() * step / 3.0;
        let cut = Cut::new(Diameter::from_um(minor).unwrap(), Diameter::from_um(major).unwrap());
        near(cut.circumference().mm() * 1000.0 / (4.0 * quarter), 1.0, 1e-7);
    }
}

/// Wilson's score interval for 30 of 100 at z = 1.28155, worked out by hand: 0.24489 to 0.36157.
#[test]
fn one_region_has_wilsons_bounds() {
    let count = WhiteCount { region: "top".into(), share: Share::ALL, white: 30, counted: 100 };
    let white = white_share(&[count]).unwrap().white;
    near(white.low().percent(), 24.489, 0.001);
    near(white.best().percent(), 30.0, 1e-9);
    near(white.high().percent(), 36.157, 0.001);
}

/// hair-growth-1986: 0.37 mm a day; 8 weeks are 56 days: 2.07 cm.
#[test]
fn eight_weeks_of_the_review() {
    let grown = foilwork::hair::grown(Interval::exact(Quantity::nearest(8.0)), growth(None).value);
    near(grown.best().cm(), 2.072, 1e-9);
    // hair-textbook-p197: group means from 0.8 to 1.3 cm a month lie within.
    let rate = growth(None).value;
    assert!(rate.low().cm_per_month() < 0.8 && rate.high().cm_per_month() > 1.3);
}

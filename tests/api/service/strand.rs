//! Colour along the strand in cm, what has grown in, and white hair by counts.

use super::base::{changed, near, only_lightener, texts, verdicts};
use foilwork::{
    finding::Verdict::Warning,
    service::{Plan, ServiceFile, plan, shape::Zone},
};
use rstest::rstest;
use serde_json::{Value, json};

/// 30 cm: natural level 6 to 3 cm, artificial 4 to 18 cm, lightened 9 to 24 cm, natural again.
fn banded(file: &mut ServiceFile, bands: &Value) {
    file.analysis.length_cm = Some(30.0);
    file.analysis.existing = serde_json::from_value(bands.clone()).unwrap();
}

fn bands() -> Value {
    json!([
        { "from_cm": 3, "to_cm": 18, "level": 4, "artificial": true },
        { "from_cm": 18, "to_cm": 24, "level": 9, "artificial": false },
    ])
}

fn worked(zone: Zone, start: Option<f64>) -> Plan {
    changed(only_lightener(), |file| {
        banded(file, &bands());
        file.section[0].zone = zone;
        file.section[0].start_cm = start;
    })
}

/// From 10 cm to the ends: 8 cm of the artificial band and all 6 cm of the lightened one.
#[test]
fn a_mix_meets_bands_by_the_centimetre() {
    let plan = worked(Zone::Lengths, Some(10.0));
    assert!(texts(&plan, "earlier-service").contains("artificial colour (3 to 18 cm, 8 cm of it, level 4)"));
    assert!(texts(&plan, "overlap").contains("(18 to 24 cm, 6 cm of it, level 9)"), "{}", texts(&plan, "overlap"));
    assert_eq!(plan.colour[0].from_level.best().number(), 4.0);
    // Behind the artificial band there is only lightened and natural hair.
    let behind = worked(Zone::Lengths, Some(19.0));
    assert!(verdicts(&behind, "earlier-service").is_empty());
    assert_eq!(behind.colour[0].from_level.best().number(), 6.0);
}

/// What no band covers is natural; the strand has no gap. The regrowth is where the first band begins.
#[test]
fn the_strand_is_filled_with_natural_hair() {
    let plan = worked(Zone::Lengths, None);
    let strand = plan.hair.strand.as_ref().unwrap();
    let ends: Vec<f64> = strand.bands().iter().map(|band| band.to.cm()).collect();
    assert_eq!(ends, [3.0, 18.0, 24.0, 30.0]);
    assert_eq!(plan.head.natural.unwrap().cm(), 3.0);
    assert_eq!(plan.head.regrowth, None);
    // Roots are then the regrowth: nothing of the bands is met.
    assert!(verdicts(&worked(Zone::Roots, None), "earlier-service").is_empty());
}

/// hair-growth-1986: 0.37 mm a day, 8 weeks are 2.07 cm; half a year would be 6.7 cm, and 3 cm do not fit.
#[test]
fn weeks_and_bands_are_held_together() {
    let weeks = changed(only_lightener(), |file| file.analysis.weeks_since_colour = Some(8.0));
    near(weeks.head.regrowth.unwrap().best().cm(), 2.072, 1e-9);
    let doubtful = |weeks| {
        changed(only_lightener(), |file| {
            banded(file, &bands());
            file.analysis.weeks_since_colour = Some(weeks);
        })
    };
    assert_eq!(verdicts(&doubtful(26.0), "regrowth"), [Warning]);
    assert!(verdicts(&doubtful(12.0), "regrowth").is_empty());
    assert!(texts(&doubtful(26.0), "regrowth").contains("3 cm by `existing`"));
}

/// Ends painted from 18 cm are no regrowth of 18 cm: 8 weeks are 2.07 cm, and the colour began further down.
#[test]
fn painted_ends_are_no_regrowth() {
    let plan = changed(only_lightener(), |file| {
        banded(file, &json!([{ "from_cm": 18, "level": 9, "artificial": false }]));
        file.analysis.weeks_since_colour = Some(8.0);
    });
    near(plan.head.regrowth.unwrap().best().cm(), 2.072, 1e-9);
    assert_eq!(plan.head.natural.unwrap().cm(), 18.0);
    assert!(texts(&plan, "regrowth").contains("the colour began further down"), "{}", texts(&plan, "regrowth"));
}

/// Level 6.3 on natural hair of 6 +/- 0.5 may be as it grew; level 6.6 is not.
#[test]
fn hair_within_the_margin_is_as_it_grew() {
    let treated = |level: f64| {
        let plan = changed(only_lightener(), |file| {
            file.analysis.natural_level_plus_minus = Some(0.5);
            banded(file, &json!([{ "from_cm": 3, "level": level, "artificial": false }]));
        });
        plan.hair.strand.unwrap().bands()[1].artificial
    };
    assert!(!treated(6.3) && treated(6.6));
}

/// Who states the share counted nothing.
#[test]
fn a_stated_share_was_not_counted() {
    let plan = changed(only_lightener(), |file| file.analysis.white_percent = Some(30.0));
    assert_eq!((plan.hair.white_counted, plan.hair.white_counted_in.len()), (None, 0));
}

/// By hand: the sides bear 2 x 10 x 0.79 = 15.8 parts of the hair, the back 20.4; 60 and 10 % white: 31.8 % of what was counted.
#[test]
fn white_hair_is_weighed_by_the_hair_of_its_region() {
    let plan = changed(only_lightener(), |file| {
        file.analysis.white_percent = None;
        file.analysis.white_counts = serde_json::from_value(json!([
            { "region": "left side", "white": 60, "counted": 100 },
            { "region": "right side", "white": 60, "counted": 100 },
            { "region": "back", "white": 10, "counted": 100 },
        ]))
        .unwrap();
    });
    let white = plan.hair.white;
    near(white.best().percent(), (15.8 * 60.0 + 20.4 * 10.0) / 36.2, 1e-9);
    assert!(white.low() < white.best() && white.best() < white.high());
    let flat: String = plan.to_string().split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(flat.contains("left side, right side, back"), "{flat}");
}

#[rstest]
#[case::mixed(json!([{ "zone": "ends", "level": 9, "artificial": false }, { "from_cm": 3, "level": 4, "artificial": true }]),
    "analysis.existing: some of it is stated by `zone`, some by `from_cm`: state all of it one way")]
#[case::overlap(json!([{ "from_cm": 3, "to_cm": 18, "level": 4, "artificial": true }, { "from_cm": 12, "level": 9, "artificial": false }]),
    "analysis.existing[2].from_cm: 12 cm lies in the band before, which ends at 18 cm: begin at 18 cm, or end that one at 12 cm")]
#[case::longer_than_the_hair(json!([{ "from_cm": 3, "to_cm": 40, "level": 4, "artificial": true }]),
    "analysis.existing[1].to_cm: 40 cm is beyond the ends, `analysis.length_cm` is 30 cm: correct one of the two")]
#[case::begins_beyond_the_ends(json!([{ "from_cm": 40, "level": 9, "artificial": false }]),
    "analysis.existing[1].from_cm: 40 cm is beyond the ends, `analysis.length_cm` is 30 cm: correct one of the two")]
#[case::backwards(json!([{ "from_cm": 9, "to_cm": 4, "level": 4, "artificial": true }]),
    "analysis.existing[1].to_cm: 4 cm is not behind `from_cm` 9 cm: swap them")]
#[case::to_alone(json!([{ "zone": "ends", "to_cm": 4, "level": 4, "artificial": true }]),
    "analysis.existing[1].to_cm: stands without `from_cm`: give both, or `zone` alone")]
fn bands_that_are_no_strand_name_both_fields(#[case] bands: Value, #[case] want: &str) {
    let mut file = only_lightener();
    banded(&mut file, &bands);
    assert_eq!(plan(&file).unwrap_err().to_string(), want);
}

#[rstest]
#[case::twice(json!([{ "region": "crown", "white": 1, "counted": 9 }, { "region": "crown", "white": 1, "counted": 9 }]),
    "analysis.white_counts[2].region: \"crown\" is counted twice: add the two counts up")]
#[case::more_than_counted(json!([{ "region": "crown", "white": 10, "counted": 9 }]),
    "analysis.white_counts[1].white: 10 white of `counted` 9 cannot be: correct one of the two")]
fn counts_that_cannot_be_name_both_fields(#[case] counts: Value, #[case] want: &str) {
    let mut file = only_lightener();
    file.analysis.white_percent = None;
    file.analysis.white_counts = serde_json::from_value(counts).unwrap();
    assert_eq!(plan(&file).unwrap_err().to_string(), want);
}

#[test]
fn bands_need_the_length_of_the_hair() {
    let mut file = only_lightener();
    banded(&mut file, &bands());
    file.analysis.length_cm = None;
    assert_eq!(
        plan(&file).unwrap_err().to_string(),
        "analysis.length_cm: missing: bands in cm need the length of the hair"
    );
}

/// hair-growth reviews: means fall as curl rises, without a figure for each form. So it is noted and nothing is corrected.
#[test]
fn what_curl_does_is_unknown() {
    use foilwork::service::shape::Curl;
    let with = |curl| changed(only_lightener(), |file| file.analysis.curl = curl);
    let (coily, straight, unsaid) = (with(Some(Curl::Coily)), with(Some(Curl::Straight)), with(None));
    let said = |plan: &Plan| plan.not_computed.iter().any(|one| one.why.contains("curl rises"));
    assert!(said(&coily) && !said(&straight) && !said(&unsaid));
    assert_eq!((coily.head.growth, coily.hair.curl), (unsaid.head.growth, Some(Curl::Coily)));
}

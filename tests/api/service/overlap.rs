//! Zones overlap: what a mix meets on the way, in whatever words the zones are stated. The rules are common practice.

use super::base::{changed, only_colour, only_lightener, texts, verdicts};
use foilwork::{
    finding::Verdict::{self, NotJudged, Passed, Warning},
    head::Technique,
    service::{
        Plan,
        shape::{ExistingColour, HistoryFlag, Zone},
    },
    sheet::bench_sheet,
};
use rstest::rstest;

fn lightened_over(worked: Zone, stated: Zone, level: f64, artificial: bool) -> Plan {
    changed(only_lightener(), |file| {
        file.analysis.existing =
            vec![ExistingColour { zone: Some(stated), level, tone: None, artificial, ..ExistingColour::default() }];
        file.section[0].zone = worked;
    })
}

/// Artificial level 3 in the lengths: the whole strand goes from 3 to 9, six levels, and the colour in it is named.
#[rstest]
#[case::whole(Zone::Whole, true)]
#[case::lengths(Zone::Lengths, true)]
#[case::ends(Zone::Ends, true)]
#[case::roots(Zone::Roots, false)]
fn lightener_over_artificial_colour(#[case] worked: Zone, #[case] meets: bool) {
    let plan = lightened_over(worked, Zone::Lengths, 3.0, true);
    assert_eq!(verdicts(&plan, "earlier-service"), Vec::from_iter(meets.then_some(Warning)));
    let want = if meets { 6.0 } else { 3.0 };
    assert_eq!(plan.colour[0].change_levels.best().levels(), want);
    if meets {
        assert!(texts(&plan, "earlier-service").contains("artificial colour (lengths, level 3)"));
        // One session at 6 % reaches about five.
        assert_eq!(verdicts(&plan, "lift"), [Warning]);
    }
}

/// Ends stated at level 8 on natural 6, worked as ends, as lengths or as the whole strand.
#[rstest]
#[case::whole(Zone::Whole, Some(Warning))]
#[case::lengths(Zone::Lengths, Some(Warning))]
#[case::ends(Zone::Ends, Some(Warning))]
#[case::mid_lengths(Zone::MidLengths, None)]
#[case::roots(Zone::Roots, None)]
fn powder_over_lightened_hair(#[case] worked: Zone, #[case] want: Option<Verdict>) {
    let plan = lightened_over(worked, Zone::Ends, 8.0, false);
    assert_eq!(verdicts(&plan, "overlap"), Vec::from_iter(want), "{}", texts(&plan, "overlap"));
    if want.is_some() {
        assert!(texts(&plan, "overlap").contains("(ends, level 8)"), "{}", texts(&plan, "overlap"));
    }
}

/// A start that is stated lighter than natural says the same, and so does the history where no zone is stated.
#[test]
fn lightened_hair_is_found_by_start_and_history() {
    let start = changed(only_lightener(), |file| file.section[0].starting_level = Some(8.0));
    assert_eq!(verdicts(&start, "overlap"), [Warning]);
    let history = |zone| {
        changed(only_lightener(), |file| {
            file.analysis.history = Some(vec![HistoryFlag::Lightened]);
            file.analysis.existing = vec![ExistingColour {
                zone: Some(zone),
                level: 8.0,
                tone: None,
                artificial: false,
                ..ExistingColour::default()
            }];
        })
    };
    // Once, and with the place.
    assert_eq!(verdicts(&history(Zone::Ends), "overlap"), [Warning]);
    // Stated elsewhere, it is not met.
    assert_eq!(verdicts(&history(Zone::Roots), "overlap"), []);
}

/// Natural 5 at the roots and artificial 6.5 in the lengths, all to 6: colour lifts the one and darkens the other.
#[test]
fn colour_lifts_natural_hair_beside_coloured_hair() {
    let plan = |target| {
        changed(only_colour(), |file| {
            file.analysis.natural_level = 5.0;
            file.analysis.existing = vec![ExistingColour {
                zone: Some(Zone::Lengths),
                level: 6.5,
                tone: None,
                artificial: true,
                ..ExistingColour::default()
            }];
            (file.section[0].zone, file.section[0].target_level) = (Zone::Whole, target);
        })
    };
    assert_eq!(verdicts(&plan(6.0), "lift"), []);
    assert_eq!(verdicts(&plan(7.0), "lift"), [Warning]);
    assert!(texts(&plan(7.0), "lift").contains("0.5 levels with colour"), "{}", texts(&plan(7.0), "lift"));
}

/// Foil at the roots touches the scalp unless a gap is left: open until that is stated.
#[rstest]
#[case::roots(Zone::Roots, None, Some(NotJudged))]
#[case::whole(Zone::Whole, None, Some(NotJudged))]
#[case::lengths(Zone::Lengths, None, None)]
#[case::gap_left(Zone::Roots, Some(false), None)]
fn foil_is_no_proof_of_a_gap(#[case] zone: Zone, #[case] stated: Option<bool>, #[case] want: Option<Verdict>) {
    let plan = changed(only_lightener(), |file| {
        let section = &mut file.section[0];
        (section.technique, section.zone, section.on_scalp) = (Technique::Weave, zone, stated);
    });
    assert_eq!(verdicts(&plan, "on scalp"), Vec::from_iter(want));
    assert!(!bench_sheet(&plan).contains("foil keeps a mix off the scalp"));
}

/// A shadow far lighter than the base leaves no depth; the margin of the reading opens one that may be too dark.
#[rstest]
#[case::as_natural(6.0, 0.0, Passed)]
#[case::a_level_softer(5.0, 0.0, Passed)]
#[case::on_dark_hair(4.0, 0.0, Warning)]
#[case::on_black_hair(1.0, 0.0, Warning)]
#[case::may_be_darker(6.0, 0.5, NotJudged)]
#[case::darker(6.5, 0.0, Warning)]
fn a_root_shadow_of_level_6(#[case] natural: f64, #[case] margin: f64, #[case] want: Verdict) {
    let plan = changed(super::base::fine(), |file| {
        file.analysis.natural_level = natural;
        file.analysis.natural_level_plus_minus = Some(margin);
    });
    assert_eq!(verdicts(&plan, "depth at the root"), [want], "{}", texts(&plan, "depth at the root"));
}

/// A margin of three levels moves start, lift, shade and result by three levels either way.
#[test]
fn a_margin_acts_on_every_level() {
    let plan = changed(only_colour(), |file| {
        file.analysis.natural_level_plus_minus = Some(3.0);
        file.section[0].target_level = 7.0;
        super::base::shop(file).shade[1].level = 8.0;
    });
    let colour = &plan.colour[0];
    assert_eq!(colour.from_level.to_array().map(|level| level.number()), [3.0, 6.0, 9.0]);
    assert_eq!(colour.change_levels.to_array().map(|change| change.levels()), [-2.0, 1.0, 4.0]);
    let rule = colour.level_rule.as_ref().unwrap();
    // 2 x 7 - 3 = 11 is beyond the scale of ten; 2 x 7 - 6 = 8; from level 9 it is deposit at 7.
    assert_eq!(rule.shade_for_target_level.unwrap().to_array().map(|level| level.number()), [7.0, 8.0, 10.0]);
    // Means of 8 with 3 and with 6; on level 9 the shade's own.
    assert_eq!(rule.pigmented_hair_level.to_array().map(|level| level.number()), [5.5, 7.0, 8.0]);
}

/// Ends at level 8 are lighter than natural 6, mid-lengths at 6 are not: only the ends are named.
#[rstest]
#[case::as_natural(6.0, "(ends, level 8)")]
#[case::lighter(6.5, "(mid lengths, level 6.5; ends, level 8)")]
fn only_what_is_lighter_than_natural_is_called_so(#[case] mid: f64, #[case] want: &str) {
    let of = |zone, level| ExistingColour { zone: Some(zone), level, ..ExistingColour::default() };
    let plan = changed(only_lightener(), |file| {
        file.analysis.existing = vec![of(Zone::MidLengths, mid), of(Zone::Ends, 8.0)];
        file.section[0].zone = Zone::Whole;
    });
    assert!(texts(&plan, "overlap").contains(want), "{}", texts(&plan, "overlap"));
}

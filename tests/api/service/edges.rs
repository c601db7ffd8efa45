//! On which side of an edge a rule falls, and which of two it takes, whatever the order they are stated in.

use super::{
    base::{changed, fine, only_colour, only_lightener, shop, texts, verdicts},
    consult::{consulted, with},
};
use foilwork::{
    finding::Verdict::Warning,
    reader::Format,
    service::{Plan, ServiceFile, TestKind, mixing_cards, plan, plan_text, shape::Zone},
    shop::{StrengthBasis, shape::DeveloperEntry},
};
use rstest::rstest;
use serde_json::json;

/// Lighter than the hair a permanent shade leaves the mean of both, at its level and darker its own (`ck12-blond`); the shade for a
/// target is twice the target less the hair, and at or below the hair the target itself. Read half a level off either way, so are
/// both, and the end of the scale is the end.
#[rstest]
#[case::darker(4.0, 5.0, (5.0, 5.0, 5.0), Some((4.0, 4.0, 4.0)))]
#[case::lighter(8.0, 8.0, (6.75, 7.0, 7.25), Some((9.5, 10.0, 10.0)))]
#[case::as_the_hair(7.0, 6.0, (5.75, 6.0, 6.0), Some((7.5, 8.0, 8.5)))]
#[case::out_of_the_scale(9.0, 9.0, (7.25, 7.5, 7.75), None)]
fn levels_of_permanent_colour(
    #[case] target: f64,
    #[case] shade: f64,
    #[case] want: (f64, f64, f64),
    #[case] for_target: Option<(f64, f64, f64)>,
) {
    let plan = changed(only_colour(), |file| {
        file.analysis.natural_level_plus_minus = Some(0.5);
        file.section[0].target_level = target;
        shop(file).shade[1].level = shade;
    });
    let rule = plan.colour[0].level_rule.as_ref().unwrap();
    let three = |of: [foilwork::colour::Level; 3]| (of[0].number(), of[1].number(), of[2].number());
    // At a shade between the bounds of the hair, the darker hair is lifted and the lighter one takes the shade.
    let pigmented = three(rule.pigmented_hair_level.to_array());
    assert_eq!(pigmented, want);
    assert_eq!((rule.white_hair_level.number(), rule.shade_level.number()), (shade, shade));
    assert_eq!(rule.shade_for_target_level.map(|level| three(level.to_array())), for_target);
    assert_eq!(rule.no_shade_for_target.is_some(), for_target.is_none());
    let lifts = shade > 5.5 || target > 5.5;
    assert_eq!(rule.sources.len(), if lifts { 2 } else { 1 });
}

/// Artificial 4 and 5 and lightened 8 and 9 in one stretch: the darkest of the artificial and the lightest of the lightened count.
/// From 9 to 7 are two levels, which want warm pigment first (common practice); from 8 to 7 is one.
#[rstest]
#[case([4.0, 5.0], [8.0, 9.0], 4, true)]
#[case([5.0, 4.0], [9.0, 8.0], 4, true)]
#[case([5.0, 5.0], [8.0, 8.0], 5, false)]
fn of_several_stretches_the_worst_counts(
    #[case] artificial: [f64; 2],
    #[case] lightened: [f64; 2],
    #[case] darkest: u8,
    #[case] warm_first: bool,
) {
    let banded = |file: &mut ServiceFile| {
        file.analysis.length_cm = Some(30.0);
        let mut bands = Vec::new();
        for (place, (levels, made)) in [(artificial, true), (lightened, false)].into_iter().enumerate() {
            for (more, level) in levels.into_iter().enumerate() {
                let from = 3 + 6 * (2 * place + more);
                bands.push(json!({ "from_cm": from, "to_cm": from + 6, "level": level, "artificial": made }));
            }
        }
        file.analysis.existing = serde_json::from_value(json!(bands)).unwrap();
        (file.section[0].zone, file.section[0].target_level) = (Zone::Whole, 7.0);
    };
    let plan = changed(only_colour(), banded);
    let from = plan.colour[0].from_level;
    let most = lightened[0].max(lightened[1]);
    assert_eq!(
        (from.low().number(), from.best().number(), from.high().number()),
        (f64::from(darkest), f64::from(darkest), most)
    );
    assert_eq!(
        verdicts(&plan, "pre-pigmentation").contains(&Warning),
        warm_first,
        "{}",
        texts(&plan, "pre-pigmentation")
    );
    let said = texts(&changed(only_lightener(), banded), "earlier-service");
    assert!(said.contains(&format!(", level {darkest})")), "{said}");
}

/// A band as light as the natural hair is as it grows; a lighter one is not.
#[rstest]
#[case(6.0, false)]
#[case(6.1, true)]
fn a_band_as_light_as_natural_is_natural(#[case] level: f64, #[case] want: bool) {
    let plan = changed(only_lightener(), |file| {
        file.analysis.length_cm = Some(30.0);
        let bands = json!([{ "from_cm": 3, "to_cm": 18, "level": level, "artificial": false }]);
        file.analysis.existing = serde_json::from_value(bands).unwrap();
    });
    let bands: Vec<bool> = plan.hair.strand.unwrap().bands().iter().map(|band| band.artificial).collect();
    assert_eq!(bands, [false, want, false]);
}

/// Ten foils at 2 min are 20 min; half a minute is no contradiction.
#[rstest]
#[case(19.5, true)]
#[case(19.49, false)]
#[case(20.5, true)]
#[case(20.51, false)]
fn half_a_minute_contradicts_no_foils(#[case] apply_min: f64, #[case] fits: bool) {
    let mut file = only_lightener();
    (file.section[0].foil_min, file.section[0].apply_min) = (Some(2.0), Some(apply_min));
    assert_eq!(plan(&file).is_ok(), fits);
}

/// The service starts at ten on 25 November 2026.
#[rstest]
#[case("2026-11-25", true)]
#[case("2026-11-25T10:00", true)]
#[case("2026-11-25T10:01", false)]
#[case("2026-11-26", false)]
fn what_was_said_was_said_before_the_start(#[case] known_since: &str, #[case] fits: bool) {
    let file = with(|entry| entry.known_since = Some(known_since.to_owned()));
    assert_eq!(plan(&file).is_ok(), fits);
}

/// A shadow of level 6 leads into what is lighter, the lightest of all, and into nothing that is not.
#[rstest]
#[case(&[9.0], Some(9.0))]
#[case(&[8.0, 9.0, 7.0], Some(9.0))]
#[case(&[6.0], None)]
#[case(&[6.1], Some(6.1))]
fn a_shadow_leads_into_the_lightest(#[case] targets: &[f64], #[case] want: Option<f64>) {
    let plan = changed(fine(), |file| {
        file.analysis.natural_level = 5.0;
        file.toner.clear();
        let first = file.section.remove(0);
        for (place, target) in targets.iter().enumerate() {
            let mut one = first.clone();
            (one.name, one.target_level) = (format!("part {place}"), *target);
            file.section.push(one);
        }
    });
    assert_eq!(plan.head.root_shadow.unwrap().into_level.map(|level| level.number()), want);
}

/// A substitute for a shade says when its ratio is another one.
#[rstest]
#[case("1:1", false)]
#[case("1:2", true)]
fn a_substitute_says_that_its_ratio_is_its_own(#[case] ratio: &str, #[case] told: bool) {
    let plan = changed(only_colour(), |file| {
        let mut other = shop(file).shade[1].clone();
        (other.code, other.ratio, other.level) = ("J7".to_owned(), Some(ratio.to_owned()), 7.0);
        shop(file).shade[1].in_hand_g = Some(1.0);
        shop(file).shade.push(other);
    });
    let short = plan.stock.products.iter().find(|line| line.product == "J6").unwrap();
    let instead = short.instead.iter().find(|one| one.product == "J7").unwrap();
    assert_eq!(instead.why.ends_with(", with a ratio of its own"), told, "{}", instead.why);
}

/// The same bottles, open strengths: what is weaker than the chosen one does not reach the target in its time, what is stronger is
/// not needed where the chosen one does; and a stronger one comes further.
#[rstest]
#[case(7.5)]
#[case(8.0)]
#[case(9.5)]
fn what_is_rejected_has_its_reason(#[case] target: f64) {
    let plan = changed(only_lightener(), |file| {
        (file.section[0].developer, file.section[0].target_level) = (None, target);
        let bottle = |percent: u8| DeveloperEntry {
            name: format!("developer {percent}"),
            strength: format!("{percent} % w/w"),
            strength_basis: StrengthBasis::Measured,
            ..DeveloperEntry::default()
        };
        shop(file).developer = [2, 3, 4, 6, 9, 12].map(bottle).to_vec();
    });
    let chosen = &plan.strengths[0];
    let at = chosen.developer.best().ww_percent();
    // "7.4 after 40 min, level 8 by then in 30 of 100 cases", whatever stands before it.
    let level = |why: &str| -> f64 {
        let (told, _) = why.split_once(" by then in ").unwrap_or_else(|| panic!("{why}"));
        told.rsplit([';', ':']).next().unwrap().trim().split(' ').next().unwrap().parse().unwrap()
    };
    let reached = chosen.why.starts_with("the weakest");
    assert_eq!(chosen.why.contains(" after about "), reached, "{}", chosen.why);
    let mut levels: Vec<(f64, f64)> = vec![(at, level(&chosen.why))];
    for one in &chosen.rejected {
        let percent = one.developer.ww_percent();
        if !one.why.starts_with("not needed") {
            levels.push((percent, level(&one.why)));
        }
        let begins = if percent > at { "not needed: a weaker one does it" } else { "too weak: " };
        assert!(one.why.starts_with(begins) && (percent < at || reached), "{percent} of {at}: {}", one.why);
    }
    assert!(levels.len() >= 2);
    levels.sort_by(|one, other| one.0.total_cmp(&other.0));
    assert!(
        levels.windows(2).all(|pair| pair[0].1 <= pair[1].1) && levels[0].1 < levels[levels.len() - 1].1,
        "{levels:?}"
    );
}

/// What the card of a step before the colour says of its ratio: how far the worst part is off its share of the bowl.
#[test]
fn a_card_says_how_far_its_ratio_is_off() {
    let text = super::base::example("soft-gradient.toml");
    let text = text.replace("name = \"nape\"", "name = \"nape\"\nfirst = [\"clean-first\"]");
    let found = plan_text(&text, Format::Toml).unwrap();
    let cards = mixing_cards(&found);
    assert!(cards.len() > 6);
    for card in &cards {
        let weighed: f64 = card.parts.iter().map(|part| part.weigh.g()).sum();
        let exact: f64 = card.parts.iter().map(|part| part.exact.g()).sum();
        let off = |weigh: f64, own: f64| {
            if own > 0.0 { 100.0 * ((weigh / weighed) / (own / exact) - 1.0).abs() } else { 0.0 }
        };
        let worst = card.parts.iter().map(|part| off(part.weigh.g(), part.exact.g())).fold(0.0, f64::max);
        assert!((card.worst_ratio_error_percent - worst).abs() < 1e-9, "{}: {worst}", card.name);
        assert!((card.total.g() - weighed).abs() < 1e-9);
        let shows: Vec<f64> = card.parts.iter().map(|part| part.scale_shows.g()).collect();
        let mut sum = 0.0;
        for (part, shown) in card.parts.iter().zip(shows) {
            sum += part.weigh.g();
            assert!((shown - sum).abs() < 1e-9);
        }
    }
}

/// Of several lightened sections the slowest tells how long it takes.
#[rstest]
#[case([7.0, 8.0])]
#[case([8.0, 7.0])]
fn the_slowest_section_tells_the_time(#[case] targets: [f64; 2]) {
    let both = |file: &mut ServiceFile| {
        let mut other = file.section[0].clone();
        other.name = "nape".to_owned();
        file.section.push(other);
        for (section, target) in file.section.iter_mut().zip(targets) {
            section.target_level = target;
        }
    };
    let mut file = only_lightener();
    both(&mut file);
    let medians: Vec<f64> = plan(&file).unwrap().lift.iter().map(|lift| lift.reached.median.unwrap().min()).collect();
    let want = medians.iter().copied().fold(0.0, f64::max);
    assert!(medians[0] != medians[1]);
    let found = consulted(&file);
    let stated = found.tests.iter().find(|one| one.test == TestKind::Skin && one.stated).unwrap();
    assert_eq!(stated.slowest.unwrap().median.unwrap().min(), want);
    assert_eq!(stated.time_factor, Some(1.0));
}

/// Places on a map may touch; they may not lie over each other.
#[rstest]
#[case(50.0, 0.0, true)]
#[case(49.9, 0.0, false)]
#[case(0.0, 40.0, true)]
#[case(0.0, 39.9, false)]
#[case(49.9, 40.0, true)]
fn places_on_a_map_may_touch(#[case] left: f64, #[case] top: f64, #[case] fits: bool) {
    let mut file = only_lightener();
    let place = |name: &str, left: f64, top: f64| {
        let place = json!({ "left_percent": left, "top_percent": top, "width_percent": 50, "height_percent": 40 });
        json!({ "name": name, "area_percent": 50, "place": place })
    };
    file.region = serde_json::from_value(json!([place("front", 0.0, 0.0), place("back", left, top)])).unwrap();
    file.section[0].share_percent = Some(10.0);
    file.section[0].regions = serde_json::from_value(json!([{ "name": "front" }])).unwrap();
    let planned: Result<Plan, _> = plan(&file);
    assert_eq!(planned.is_ok(), fits, "{:?}", planned.err());
}

//! Small choices of a plan, each with all of its cases in a table; what is chosen is common practice or plain reading of the file.

use super::base::{changed, fine, near, only_colour, only_lightener, shop, texts, verdicts};
use foilwork::{
    finding::Verdict::{NotJudged, Passed, Warning},
    head::{ExtraStep, Technique},
    service::{
        Plan, SeenLevel, ServiceFile,
        shape::{HistoryFlag, HouseRule, Zone},
    },
    shop::shape::ShadeEntry,
    source::Basis,
};
use rstest::rstest;
use serde_json::json;

fn existing(file: &mut ServiceFile, there: serde_json::Value) {
    file.analysis.existing = serde_json::from_value(there).unwrap();
}

/// Hair of which it is told that nothing lightened or coloured it has its mid-lengths done first; of hair that was treated, or of which
/// nothing is told, the house does not say so. The lengths are no mid-lengths where they begin at the roots.
#[rstest]
#[case::nothing(Some(&[][..]), false, Zone::MidLengths, true)]
#[case::health(Some(&[HistoryFlag::Medicine, HistoryFlag::Asthma][..]), false, Zone::Lengths, true)]
#[case::not_told(None, false, Zone::MidLengths, false)]
#[case::lightened(Some(&[HistoryFlag::Lightened][..]), false, Zone::MidLengths, false)]
#[case::coloured(Some(&[HistoryFlag::Medicine, HistoryFlag::PermanentColour][..]), false, Zone::MidLengths, false)]
#[case::henna(Some(&[HistoryFlag::Henna][..]), false, Zone::MidLengths, false)]
#[case::salts(Some(&[HistoryFlag::MetallicSalts][..]), false, Zone::MidLengths, false)]
#[case::permed(Some(&[HistoryFlag::StraightenedOrPermed][..]), false, Zone::MidLengths, false)]
#[case::there_is_colour(Some(&[][..]), true, Zone::MidLengths, false)]
#[case::whole(Some(&[][..]), false, Zone::Whole, false)]
#[case::roots(Some(&[][..]), false, Zone::Roots, false)]
fn mid_lengths_come_first_on_untouched_hair(
    #[case] history: Option<&[HistoryFlag]>,
    #[case] coloured: bool,
    #[case] zone: Zone,
    #[case] want: bool,
) {
    let plan = changed(only_lightener(), |file| {
        file.salon.order_rules = Some(vec![HouseRule::MidLengthsFirst]);
        file.analysis.history = history.map(<[_]>::to_vec);
        if coloured {
            existing(file, json!([{ "zone": "ends", "level": 4, "artificial": true }]));
        }
        let mut other = file.section[0].clone();
        (other.name, other.zone, other.on_scalp) = ("other".to_owned(), zone, Some(false));
        (file.section[0].zone, file.section[0].on_scalp) = (Zone::Roots, Some(false));
        file.section.push(other);
    });
    let rules = plan.day.unwrap().rules;
    let told: Vec<(&str, &str, bool)> =
        rules.iter().map(|one| (one.first.as_str(), one.then.as_str(), one.rinsed)).collect();
    assert_eq!(told, if want { vec![("other", "top", false)] } else { Vec::new() });
}

/// A rule of the house that clashes with what the service says is left out and told; the service's own stays.
#[test]
fn a_rule_of_the_house_gives_way_to_the_service() {
    let plan = changed(only_lightener(), |file| {
        file.salon.order_rules = Some(vec![HouseRule::OutlineFirst, HouseRule::DarkestFirst]);
        let mut other = file.section[0].clone();
        (other.name, other.hairline, other.target_level) = ("rim".to_owned(), true, 8.0);
        other.same_foil_as = vec!["top".to_owned()];
        other.after = serde_json::from_value(json!([{ "section": "top", "wait_for": "application" }])).unwrap();
        file.section.push(other);
    });
    let day = plan.day.unwrap();
    let told: Vec<(&str, &str)> = day.rules.iter().map(|one| (one.first.as_str(), one.then.as_str())).collect();
    assert_eq!(told, [("top", "rim")]);
    // Both rules put the rim first: told once.
    assert_eq!(day.left_out.len(), 1, "{:?}", day.left_out);
    assert!(day.left_out.iter().all(|text| text.contains(", for it clashes: ")), "{:?}", day.left_out);
}

#[rstest]
#[case("nape=7.5@40", Some(("nape", 7.5, 40.0)))]
#[case(" back of it = 7 @ 12.5 min ", Some(("back of it", 7.0, 12.5)))]
#[case("a=b=8@0", Some(("a=b", 8.0, 0.0)))]
#[case("=8@30", None)]
#[case("  =8@30", None)]
#[case("nape=8", None)]
#[case("nape 8@30", None)]
#[case("nape=8@soon", None)]
#[case("nape=eight@30", None)]
#[case("nape=8@-1", None)]
fn a_level_that_was_seen_is_written_as_it_is_read(#[case] text: &str, #[case] want: Option<(&str, f64, f64)>) {
    let seen: Option<SeenLevel> = text.parse().ok();
    let told = seen.as_ref().map(|seen| (seen.section.as_str(), seen.level.number(), seen.at.min()));
    assert_eq!(told, want);
    if let Some(seen) = seen {
        let (section, level, at) = want.unwrap();
        assert_eq!(seen.to_string(), format!("{section}={level}@{at}"));
    }
}

/// The more precise of two zones counts on its stretch, whichever is named first; where both are as precise, the first.
#[rstest]
fn the_nearer_word_about_a_stretch_counts(#[values(false, true)] turned: bool) {
    let of = |zone: Zone| {
        let plan = changed(only_colour(), |file| {
            let mut there = vec![
                json!({ "zone": "whole", "level": 3, "artificial": true }),
                json!({ "zone": "lengths", "level": 4, "artificial": true }),
                json!({ "zone": "ends", "level": 8, "artificial": false }),
            ];
            if turned {
                there.reverse();
            }
            existing(file, json!(there));
            file.section[0].zone = zone;
        });
        let [low, best, high] = plan.colour[0].from_level.to_array().map(|level| level.number());
        (low, best, high)
    };
    assert_eq!(of(Zone::Roots), (3.0, 3.0, 3.0));
    assert_eq!(of(Zone::MidLengths), (4.0, 4.0, 4.0));
    assert_eq!(of(Zone::Ends), (8.0, 8.0, 8.0));
    assert_eq!(of(Zone::Lengths), (4.0, 4.0, 8.0));
    assert_eq!(of(Zone::Whole), (3.0, 3.0, 8.0));
}

/// Lightener meets colour on so many cm of a band; what it does not touch is not named.
#[rstest]
#[case(0.0, 20.0, Some("5 to 12 cm, 7 cm of it"))]
#[case(8.0, 20.0, Some("5 to 12 cm, 4 cm of it"))]
#[case(12.0, 20.0, None)]
#[case(11.5, 20.0, Some("5 to 12 cm, 0.5 cm of it"))]
fn a_band_is_named_with_the_cm_that_are_met(#[case] start: f64, #[case] length: f64, #[case] want: Option<&str>) {
    let plan = changed(only_lightener(), |file| {
        file.analysis.length_cm = Some(length);
        existing(file, json!([{ "from_cm": 5, "to_cm": 12, "level": 4, "artificial": true }]));
        let top = &mut file.section[0];
        (top.zone, top.start_cm, top.transition_cm) = (Zone::Whole, Some(start), Some(0.0));
    });
    let said = texts(&plan, "earlier-service");
    let told = want.map(|band| {
        format!(
            "top: lightener over artificial colour ({band}, level 4): it lifts unevenly and may stop at an orange; test a strand, \
             or clean the colour first\n"
        )
    });
    assert_eq!(said, told.unwrap_or_default());
}

/// Several sections over the same colour are one warning with all their names.
#[test]
fn the_same_over_several_sections_is_said_once() {
    let plan = changed(only_lightener(), |file| {
        existing(file, json!([{ "zone": "whole", "level": 8, "artificial": true }]));
        for name in ["nape", "rim"] {
            let mut other = file.section[0].clone();
            other.name = name.to_owned();
            file.section.push(other);
        }
        file.section[2].zone = Zone::Ends;
    });
    let said = texts(&plan, "earlier-service");
    assert!(said.starts_with("top, nape, rim: lightener over artificial colour (whole, level 8): "), "{said}");
    assert_eq!(said.lines().count(), 1, "{said}");
    let over = texts(&plan, "overlap");
    assert!(
        over.starts_with("top, nape, rim: fresh mix on hair that is lighter than the natural level 6 already "),
        "{over}"
    );
}

/// A remover that may lighten is named with what it holds or may hold; where lightener cleans another section, that is told of colour
/// whose place nobody stated.
#[rstest]
#[case(json!({ "name": "out", "persulfate": true, "peroxide": true }), Some("persulfate and peroxide"))]
#[case(json!({ "name": "out", "persulfate": true, "peroxide": false }), Some("persulfate"))]
#[case(json!({ "name": "out", "persulfate": false, "peroxide": true }), Some("peroxide"))]
#[case(json!({ "name": "out", "persulfate": false, "peroxide": false }), None)]
fn a_remover_is_told_by_what_it_holds(#[case] remover: serde_json::Value, #[case] holds: Option<&str>) {
    let plan = |placed: bool, second: Option<&str>| {
        changed(only_colour(), |file| {
            shop(file).remover = vec![serde_json::from_value(remover.clone()).unwrap()];
            if placed {
                existing(file, json!([{ "zone": "whole", "level": 4, "artificial": true }]));
            }
            file.analysis.history = Some(vec![HistoryFlag::PermanentColour]);
            (file.section[0].first, file.section[0].clean_with) = (vec![ExtraStep::CleanFirst], Some("out".to_owned()));
            if let Some(with) = second {
                let mut other = file.section[0].clone();
                (other.name, other.clean_with) = ("nape".to_owned(), Some(with.to_owned()));
                file.section.push(other);
            }
        })
    };
    let told = |colour: &str| {
        holds.map(|holds| {
            format!(
                "out, a remover, over {colour}: it is taken as holding {holds}, for it is declared or nothing says the contrary, and \
                 may then lift the hair too, unevenly; test a strand"
            )
        })
    };
    let placed = texts(&plan(true, None), "earlier-service");
    let want = told("artificial colour (whole, level 4)");
    let of_step = |text: String| format!("top, clean out the artificial pigment first: {text}\n");
    assert_eq!(placed, want.map(of_step).unwrap_or_default());
    let unplaced = texts(&plan(false, None), "earlier-service");
    let say = "; say in `analysis.existing` where it is\n";
    assert_eq!(unplaced, told("permanent colour").map(|text| text + say).unwrap_or_default());
    let worse = texts(&plan(false, Some("powder")), "earlier-service");
    let lightener = "lightener over permanent colour: it lifts unevenly and may stop at an orange; test a strand";
    assert_eq!(worse, format!("{lightener}{say}"));
}

/// A toner goes on all of its sections: the darkest says what still shows, the lightest what turns dark, whichever comes first.
#[rstest]
fn a_toner_is_held_against_its_darkest_and_its_lightest_section(
    #[values([8.0, 9.0, 10.0], [10.0, 9.0, 8.0], [9.0, 8.0, 10.0], [9.0, 10.0, 8.0])] targets: [f64; 3],
    #[values((8.0, true), (8.1, false), (7.9, false))] shade: (f64, bool),
) {
    let (level, fits) = shade;
    let plan = changed(fine(), |file| {
        file.root_shadow = None;
        (shop(file).shade[0].level, shop(file).shade[0].tones) = (level, vec!["violet".to_owned()]);
        for name in ["nape", "rim"] {
            let mut other = file.section[0].clone();
            other.name = name.to_owned();
            file.section.push(other);
        }
        for (section, target) in file.section.iter_mut().zip(targets) {
            section.target_level = target;
        }
    });
    let said = texts(&plan, "toner-level");
    assert_eq!(verdicts(&plan, "toner-level"), [if fits { Passed } else { Warning }], "{said}");
    let words = if fits {
        "on hair at level 8"
    } else if level > 8.0 {
        "level 8"
    } else {
        "level 10"
    };
    assert!(said.contains(words), "{said}");
}

/// Minutes that nobody stated are assumed, and so is the chair; measured or counted minutes of foils weaken it as far as they are.
#[test]
fn the_time_in_the_chair_rests_on_its_weakest_minutes() {
    let basis = |change: fn(&mut ServiceFile)| changed(only_lightener(), change).chair.basis;
    assert_eq!(basis(|_| ()), Basis::Stated);
    assert_eq!(basis(|file| file.salon.look_min = None), Basis::Assumed);
    assert_eq!(basis(|file| file.salon.mix_bowl_min = None), Basis::Assumed);
    assert_eq!(basis(|file| file.salon.rinse_section_min = None), Basis::Assumed);
    assert_eq!(basis(|file| file.salon.basin_walk_min = None), Basis::Assumed);
    // How much longer a section may stay on is no minute of the chair.
    assert_eq!(basis(|file| file.salon.stay_longer_min = None), Basis::Stated);
    assert_eq!(basis(|file| file.section[0].first = vec![ExtraStep::CleanFirst]), Basis::Assumed);
    assert_eq!(basis(|file| file.section[0].apply_min = None), Basis::Assumed);
    let stated = |file: &mut ServiceFile| (file.section[0].apply_min, file.salon.foil_min) = (None, Some(2.0));
    assert_eq!(basis(stated), Basis::Stated);
}

/// Where nobody works a wish is held by what is there: by both of its bounds, or by the estimate alone.
#[rstest]
#[case(6.0, 0.5, 0.5, true, true)]
#[case(6.0, 0.4, 0.5, true, false)]
#[case(6.3, 0.5, 0.2, true, true)]
#[case(6.3, 0.5, 0.3, true, false)]
#[case(5.7, 0.5, 0.3, true, false)]
#[case(6.5, 0.5, 0.0, true, true)]
#[case(6.6, 0.5, 0.0, false, false)]
#[case(5.4, 0.5, 0.0, false, false)]
fn a_wish_where_nobody_works_is_held_by_what_is_there(
    #[case] wished: f64,
    #[case] tolerance: f64,
    #[case] off: f64,
    #[case] held: bool,
    #[case] sure: bool,
) {
    let plan = changed(only_lightener(), |file| {
        file.analysis.natural_level_plus_minus = Some(off);
        (file.section[0].zone, file.section[0].on_scalp) = (Zone::Ends, Some(false));
        let wish = json!({ "wish": [{ "zone": "roots", "level": wished, "tolerance_levels": tolerance }] });
        file.consultation = serde_json::from_value(wish).unwrap();
    });
    let wish = &plan.consulted.as_ref().unwrap().wishes[0];
    assert!(wish.sections.is_empty());
    assert_eq!((wish.why_not.is_none(), wish.is_sure), (held, sure), "{wish:?}");
    let words = match (held, sure) {
        (false, _) => "not held: no section works there, and it is at level 6 now",
        (true, true) => "held",
        (true, false) => "held by the estimate, not by all of its bounds",
    };
    assert_eq!(wish.in_words(), words);
    let said = texts(&plan, "wish");
    let rest = match (held, sure) {
        (false, _) => "no section works there, and it is at level 6 now: change the plan, or agree on what can be had",
        (true, true) => "it is there, and nobody works there",
        (true, false) => "the plan holds to it by the estimate, not by all of its bounds",
    };
    assert_eq!(said, format!("roots: level {wished} within {tolerance} levels is wanted: {rest}\n"));
}

fn of_shades(lives: &[Option<f64>], house: f64) -> Plan {
    changed(only_lightener(), |file| {
        file.salon.working_life_min = Some(house);
        shop(file).lightener[0].working_life_min = lives[0];
        file.section[0].apply_min = Some(70.0);
        shop(file).lightener[0].longest_min = Some(120.0);
    })
}

/// A bowl is used as long as its lightener lasts, or else as the house says.
#[test]
fn a_bowl_lasts_as_long_as_its_product_or_as_the_house_says() {
    let lasts = |plan: &Plan| plan.mixes[0].bowls[0].use_within.min();
    assert_eq!(lasts(&of_shades(&[Some(20.0)], 30.0)), 20.0);
    assert_eq!(lasts(&of_shades(&[Some(45.0)], 30.0)), 45.0);
    assert_eq!(lasts(&of_shades(&[None], 35.0)), 35.0);
    // 70 min of application in bowls of 20 min are four, of 35 two.
    let bowls = |plan: &Plan| plan.mixes[0].bowls[0].count;
    assert_eq!((bowls(&of_shades(&[Some(20.0)], 30.0)), bowls(&of_shades(&[None], 35.0))), (4, 2));
}

/// A neutral shade and one beside it: with a carrier nothing is left out of the search for a look, whose ratio is that of its shades.
#[rstest]
#[case("1:2", 20.0)]
#[case("1:1", 30.0)]
fn a_look_is_mixed_at_the_ratio_of_the_shades_that_come_nearest(#[case] ratio: &str, #[case] grams: f64) {
    let plan = changed(fine(), |file| {
        let nine = shop(file).shade[0].clone();
        let far = if ratio == "1:2" { "1:1" } else { "1:2" };
        let with = |code: &str, tones: &[&str], ratio: &str| ShadeEntry {
            code: code.to_owned(),
            tones: tones.iter().map(|tone| (*tone).to_owned()).collect(),
            ratio: Some(ratio.to_owned()),
            ..nine.clone()
        };
        shop(file).shade[0].ratio = Some(far.to_owned());
        shop(file).shade[0].level = 7.0;
        shop(file).shade.extend([
            with("mist", &["violet"], ratio),
            with("oat", &[], ratio),
            with("ember", &["red"], far),
        ]);
        file.toner[0].mix.clear();
        file.toner[0].target = serde_json::from_value(json!({ "level": 9, "tones": [] })).ok();
    });
    let mix = plan.mixes.iter().find(|mix| mix.name == "veil").unwrap();
    let shades: f64 = mix.products().map(|part| part.weigh.g()).sum();
    near(shades, grams, 0.06);
    assert!(mix.products().all(|part| ["mist", "oat"].contains(&part.product.as_str())), "{mix:?}");
    assert_eq!(mix.ratio.as_ref().unwrap().to_string().replace(' ', ""), ratio);
}

/// Freehand and regrowth lie in no foil: only foils that nobody counted are left out of a price.
#[rstest]
#[case(Technique::Weave, None, 1)]
#[case(Technique::Weave, Some(5), 0)]
#[case(Technique::Freehand, None, 0)]
#[case(Technique::Regrowth, None, 0)]
#[case(Technique::BackComb, None, 1)]
fn only_hair_in_foil_has_foils_to_count(#[case] technique: Technique, #[case] foils: Option<u32>, #[case] want: usize) {
    let plan = changed(only_lightener(), |file| {
        shop(file).currency = Some("EUR".to_owned());
        shop(file).consumable = vec![
            serde_json::from_value(json!({ "name": "foil", "price": "18.00", "pack_pieces": 500, "per": "foil" }))
                .unwrap(),
        ];
        (file.section[0].technique, file.section[0].foils) = (technique, foils);
    });
    let left_out = plan.money.unwrap().left_out;
    assert_eq!(left_out.iter().filter(|one| one.of.as_deref() == Some("top")).count(), want, "{left_out:?}");
}

/// How a test that nobody read bears on the hair: it is open, and stops only what brings peroxide.
#[test]
fn an_unread_incompatibility_test_stops_peroxide_alone() {
    let of = |semi: bool, result: &str, applied: &str| {
        let plan = changed(only_colour(), |file| {
            let test = json!({ "applied": applied, "result": result });
            file.analysis.incompatibility_test = serde_json::from_value(test).ok();
            if semi {
                let top = &mut file.section[0];
                (top.product, top.developer) = (Some("J8-veil".to_owned()), None);
            }
        });
        verdicts(&plan, "metal-salts")
    };
    let (before, after) = ("2026-11-23T10:00", "2026-11-26T10:00");
    assert_eq!(of(true, "pending", before), [NotJudged]);
    assert_eq!(of(false, "pending", before), [foilwork::finding::Verdict::Stop]);
    assert_eq!(of(false, "clear", before), [Passed]);
    // Dated after the start it does not count; a reaction counts whenever it was.
    assert_eq!(of(false, "clear", after), [Warning, Passed]);
    assert_eq!(of(true, "reaction", after), [foilwork::finding::Verdict::Stop]);
}

//! What comes out the same in two ways: two sections as each alone, two looks in either order, minutes at both of their bounds.

use super::base::{changed, example, fine, near, only_colour, only_lightener, shop, texts};
use foilwork::{
    colour::{Swatch, section_look},
    day::{SectionWork, in_this_order},
    head::{ExtraStep, Technique},
    quantity::{Duration, Share},
    reader::Format,
    service::{Evidence, SeenNow, ServiceFile, parse, parse_with_shop, plan, plan_with, shape::Zone},
    shop::{ShadeClass, parse_shop, shape::ShadeEntry},
};
use rstest::rstest;
use serde_json::json;

/// A second section like the first under another name.
fn also(file: &mut ServiceFile, name: &str, change: impl FnOnce(&mut foilwork::service::shape::Section)) {
    let mut other = file.section[0].clone();
    other.name = name.to_owned();
    change(&mut other);
    file.section.push(other);
}

fn percent(percent: f64) -> Share {
    Share::from_percent(percent).unwrap()
}

/// Under one toner each section looks as if it were alone, and the dose against its warmth is its own.
#[test]
fn sections_under_one_toner_look_as_each_of_them_alone() {
    let starts = [(None, 9.0), (Some(5.0), 9.0), (None, 8.0), (None, 9.0)];
    let with = |picked: &[usize]| {
        changed(fine(), |file| {
            file.root_shadow = None;
            let demi = shop(file).shade[0].clone();
            shop(file).shade.push(ShadeEntry {
                code: "mist".to_owned(),
                level: 8.0,
                tones: vec!["violet".to_owned()],
                ..demi
            });
            shop(file).shade[0].level = 8.0;
            let first = file.section.remove(0);
            for place in picked {
                let (starting, target) = starts[*place];
                let mut one = first.clone();
                (one.name, one.starting_level, one.target_level) = (format!("part {place}"), starting, target);
                file.section.push(one);
            }
        })
    };
    let all = with(&[0, 1, 2, 3]);
    for place in 0..4 {
        let alone = with(&[place]);
        let (got, want) = (&all.colour[place], &alone.colour[0]);
        assert_eq!(
            (&got.swatch, &got.natural, &got.exposed_swatch),
            (&want.swatch, &want.natural, &want.exposed_swatch)
        );
        assert_eq!(got.neutralising, want.neutralising, "{place}");
        assert!(got.neutralising.is_some(), "{place}");
    }
    assert!(all.colour[0].swatch == all.colour[3].swatch && all.colour[0].swatch != all.colour[1].swatch);
    assert!(all.colour[0].swatch != all.colour[2].swatch);
}

/// Freehand covers 50 % of what is taken (30 to 70, assumed), of 60 % of the area: from afar it looks as 18, 30 and 42 %.
#[test]
fn a_look_from_afar_has_the_bounds_of_what_is_covered_least_and_most() {
    let plan = changed(only_lightener(), |file| {
        let top = &mut file.section[0];
        (top.technique, top.taken_percent, top.foils) = (Technique::Freehand, Some(60.0), None);
    });
    let colour = &plan.colour[0];
    let look = colour.look.as_ref().unwrap();
    let at = |covered: f64| section_look(&colour.natural, &colour.swatch, percent(covered));
    let [least, best, most] = [at(18.0), at(30.0), at(42.0)];
    near(look.perceived_level.best().number(), best.perceived_level.best().number(), 1e-9);
    let want = best.perceived_level.widened_to(least.perceived_level).widened_to(most.perceived_level);
    assert_eq!(look.perceived_level, want);
    assert!(want.low() < best.perceived_level.low() && want.high() > best.perceived_level.high());
    let wide = |swatch: &Swatch| swatch.lightness().high().lab_l() - swatch.lightness().low().lab_l();
    assert!(wide(&look.mixed) > wide(&best.mixed));
    assert_eq!(look.mixed, best.mixed.widened_to(&[least.mixed, most.mixed]));
    // What is stated is covered as it stands.
    let plan = changed(only_lightener(), |file| {
        let top = &mut file.section[0];
        (top.technique, top.taken_percent, top.covered_percent) = (Technique::Freehand, Some(60.0), Some(50.0));
        top.foils = None;
    });
    assert_eq!(plan.colour[0].look.as_ref().unwrap(), &at(30.0));
}

/// The model of hair that is lifted starts from its natural level, so that the margin of that widens it; what is measured does not.
#[test]
fn a_margin_of_the_natural_level_widens_what_is_modelled_alone() {
    let wide = |margin: f64, measured: Option<&str>| {
        let plan = changed(fine(), |file| {
            file.analysis.natural_level_plus_minus = Some(margin);
            file.analysis.measured = measured.map(str::to_owned);
        });
        let of = |swatch: &Swatch| swatch.redness().high().lab_a() - swatch.redness().low().lab_a();
        (of(plan.colour[0].exposed_swatch.as_ref().unwrap()), of(&plan.colour[0].swatch))
    };
    let (sure, off) = (wide(0.0, None), wide(1.5, None));
    assert!(off.0 > sure.0 + 0.01 && off.1 > sure.1 + 0.01, "{off:?} and {sure:?}");
    assert_eq!(wide(0.0, Some("70, 6, 30")), wide(1.5, Some("70, 6, 30")));
}

/// The first look and the second are each weighed with the other, in whichever order they are told.
#[rstest]
#[case("finish-together.toml", ["nape=6.5@15", "sides=7@30"])]
#[case("soft-gradient.toml", ["nape=7@20", "crown=8@60"])]
#[case("soft-gradient.toml", ["nape=7@20", "nape=8.5@40"])]
fn looks_say_the_same_in_either_order(#[case] name: &str, #[case] looks: [&str; 2]) {
    let text = example(name);
    let shop = parse_shop(&example("juniper_and_tide.toml"), Format::Toml).unwrap();
    let file = if text.contains("shop_file") {
        parse_with_shop(&text, Format::Toml, &shop).unwrap()
    } else {
        parse(&text, Format::Toml).unwrap()
    };
    let seen = |looks: &[&str]| -> Vec<(String, SeenNow)> {
        let seen = looks.iter().map(|look| look.parse().unwrap()).collect();
        let plan = plan_with(&file, &Evidence { seen, ..Evidence::default() }).unwrap();
        let of = |lift: &foilwork::service::SectionLift| {
            lift.seen.iter().map(|seen| (lift.section.clone(), seen.clone())).collect::<Vec<_>>()
        };
        let mut found: Vec<_> = plan.lift.iter().flat_map(of).collect();
        found.sort_by(|a, b| a.1.at.min().total_cmp(&b.1.at.min()));
        found
    };
    let (one, other) = (seen(&looks), seen(&[looks[1], looks[0]]));
    assert_eq!(one, other);
    // On the clock of the sheet each is where it was told, on the section that was named.
    for ((section, seen), look) in one.iter().zip(looks) {
        assert_eq!(format!("{section}={}@{}", seen.level.number(), seen.at.min()), look);
    }
}

/// A section is looked at from its first brush on, not at it.
#[test]
fn no_look_is_before_the_first_brush() {
    let file = parse(&example("soft-gradient.toml"), Format::Toml).unwrap();
    let begin = plan(&file).unwrap().order[1].begin.min();
    let seen = |at: f64| {
        let seen = vec![format!("crown=7@{at}").parse().unwrap()];
        plan_with(&file, &Evidence { seen, ..Evidence::default() }).map_err(|problems| problems.to_string())
    };
    let want = format!("seen: crown is not on the hair at minute {begin}: it begins at {begin}");
    assert_eq!(seen(begin).unwrap_err(), want);
    assert!(seen(begin - 1.0).is_err() && seen(begin + 0.1).is_ok());
    let other = vec!["veil=7@40".parse().unwrap()];
    let told = plan_with(&file, &Evidence { seen: other, ..Evidence::default() }).unwrap_err().to_string();
    assert_eq!(told, "seen: no lightened section is called \"veil\": the plan has nape, crown, hairline");
}

/// A mix at the scalp is as warm as that (30 C, assumed) where the room is no warmer.
#[rstest]
#[case(Some(true), 20.0, 30.0)]
#[case(Some(true), 33.0, 33.0)]
#[case(Some(false), 20.0, 20.0)]
fn a_mix_is_as_warm_as_the_room_or_the_scalp(#[case] on_scalp: Option<bool>, #[case] room: f64, #[case] want: f64) {
    let plan = changed(only_lightener(), |file| {
        (file.section[0].on_scalp, file.salon.room_c) = (on_scalp, Some(room));
    });
    assert_eq!(plan.lift[0].temperature.celsius(), want);
}

/// Two thirds of the developer in a mix of 1:2, and of that as much less as 3 % on top make of it.
#[test]
fn a_strength_that_is_chosen_counts_what_goes_on_top() {
    let plan = changed(only_lightener(), |file| {
        file.section[0].developer = None;
        file.section[0].additives = vec!["bond".to_owned()];
    });
    let chosen = &plan.strengths[0];
    near(chosen.on_hair.best().ww_percent(), chosen.developer.best().ww_percent() * 2.0 / 3.0 / 1.03, 1e-9);
}

/// The day laid out with the minutes of the foils at their least and at their most, in the same order: what takes longer to put on, with
/// the looks meanwhile, may be as much longer on the hair.
#[test]
fn bounds_of_the_day_are_those_of_the_least_and_the_most_minutes() {
    let shop = parse_shop(&example("juniper_and_tide.toml"), Format::Toml).unwrap();
    let mut file = parse_with_shop(&example("staged-lightening.toml"), Format::Toml, &shop).unwrap();
    file.section[0].apply_min = None;
    let plan = plan(&file).unwrap();
    let day = plan.day.as_ref().unwrap();
    let best = day.proposed.as_ref().unwrap();
    let order: Vec<usize> = best.sections.iter().map(|one| one.section).collect();
    // 24 foils at 1.3 min (0.8 to 2.2, assumed).
    let at = |minutes: f64| {
        let work: Vec<SectionWork> = day
            .work
            .iter()
            .map(|work| {
                if work.name != "back" {
                    return work.clone();
                }
                let apply = Duration::from_min(24.0 * minutes).unwrap();
                let busy = |apply: Duration| apply.min() + day.floor.looks_while(apply).min();
                let longest = Duration::from_min(work.longest.min() + busy(apply) - busy(work.apply)).unwrap();
                SectionWork { apply, longest, ..work.clone() }
            })
            .collect();
        in_this_order(&work, &day.before(), &day.floor, &order).unwrap()
    };
    let (least, most) = (at(0.8), at(2.2));
    let trail = plan.trail_of_day();
    assert_eq!(trail.len(), best.sections.len() + 1);
    let mut moved = 0;
    for (place, result) in trail.iter().enumerate() {
        let of = |day: &foilwork::day::Timeline| match best.sections.get(place) {
            Some(one) => day.sections.iter().find(|there| there.section == one.section).unwrap().on_hair.min(),
            None => day.finish.min(),
        };
        let all = [of(&least), result.value.parse().unwrap(), of(&most)];
        let (low, high) = all.into_iter().fold((f64::MAX, f64::MIN), |(low, high), one| (low.min(one), high.max(one)));
        let bounds = result.bounds.as_ref().map(|ends| ends.each_ref().map(|end| end.parse::<f64>().unwrap()));
        assert_eq!(bounds.is_some(), high - low > 1e-9, "{result:?}");
        if let Some([least, most]) = bounds {
            near(least, low, 1e-9);
            near(most, high, 1e-9);
            moved += 1;
        }
        // The estimate is named with what it moves: its own section, and the finish.
        let named = result.inputs.iter().filter(|input| input.what == "back, putting on").count();
        let own = best.sections.get(place).is_none_or(|one| one.name == "back");
        assert_eq!(named, usize::from(own), "{result:?}");
        assert!(result.inputs.iter().all(|input| input.what != "sides, putting on"), "{result:?}");
        assert_eq!(result.basis, plan.chair.basis);
    }
    assert!(moved >= 2);
}

/// Hair at the root of a band meets nothing of it; a start beyond the zone is none.
#[rstest]
#[case::below_the_band(5.0, 10.0, Zone::Roots, None, "")]
#[case::in_it(0.0, 2.0, Zone::Roots, Some(10.0), "0 to 2 cm, 2 cm of it")]
#[case::behind_it(0.0, 2.0, Zone::Lengths, None, "")]
fn a_stretch_meets_the_bands_that_it_lies_on(
    #[case] from: f64,
    #[case] to: f64,
    #[case] zone: Zone,
    #[case] start: Option<f64>,
    #[case] want: &str,
) {
    let plan = changed(only_lightener(), |file| {
        file.analysis.length_cm = Some(20.0);
        let band = json!([{ "from_cm": from, "to_cm": to, "level": 4, "artificial": true }]);
        file.analysis.existing = serde_json::from_value(band).unwrap();
        (file.section[0].zone, file.section[0].start_cm) = (zone, start);
    });
    let said = texts(&plan, "earlier-service");
    assert_eq!(said.contains(&format!("artificial colour ({want}, level 4)")), !want.is_empty(), "{said}");
    assert_eq!(said.is_empty(), want.is_empty(), "{said}");
    assert_eq!(plan.colour[0].from_level.best().number(), if want.is_empty() { 6.0 } else { 4.0 });
}

/// A lightening first is counted in the level rules of its own section; cleaning takes them away there, and nowhere else.
#[test]
fn level_rules_follow_the_step_of_their_own_section() {
    let plan = changed(only_colour(), |file| {
        file.section[0].target_level = 8.0;
        also(file, "lifted", |one| one.first = vec![ExtraStep::PreLighten]);
        also(file, "cleaned", |one| one.first = vec![ExtraStep::CleanFirst]);
        also(file, "both", |one| one.first = vec![ExtraStep::CleanFirst, ExtraStep::PreLighten]);
    });
    let for_target = |name: &str| {
        let colour = plan.colour.iter().find(|one| one.section == name).unwrap();
        let rule = colour.level_rule.as_ref()?;
        Some(rule.shade_for_target_level?.best().number())
    };
    // From 6 to 8 a shade of 10 (twice the target less the hair), on level 8 one of 8.
    assert_eq!(for_target("top"), Some(10.0));
    assert_eq!(for_target("lifted"), Some(8.0));
    assert_eq!(for_target("cleaned"), None);
    assert_eq!(for_target("both"), Some(8.0));
}

/// Shades for a shadow are found for the lightest strands, in whatever order the sections stand; hair that is no lighter than the base
/// has none.
#[test]
fn a_shadow_is_found_for_the_lightest_strands() {
    let with = |targets: &[f64]| {
        let plan = changed(fine(), |file| {
            file.toner.clear();
            for (code, level, tones) in [
                ("deep", 6.0, &[][..]),
                ("seven", 7.0, &[][..]),
                ("ash", 6.0, &["blue"][..]),
                ("mist", 7.0, &["violet"][..]),
            ] {
                let tones = tones.iter().map(|tone| (*tone).to_owned()).collect();
                let demi = shop(file).shade[0].clone();
                shop(file).shade.push(ShadeEntry {
                    code: code.to_owned(),
                    level,
                    tones,
                    class: ShadeClass::Demi,
                    ..demi
                });
            }
            let entry = file.root_shadow.as_mut().unwrap();
            entry.mix.clear();
            entry.target = serde_json::from_value(json!({ "level": 6, "tones": [] })).ok();
            let first = file.section.remove(0);
            for (place, target) in targets.iter().enumerate() {
                let mut one = first.clone();
                (one.name, one.target_level) = (format!("part {place}"), *target);
                file.section.push(one);
            }
        });
        let mix = plan.mixes.iter().find(|mix| mix.stage == foilwork::service::WorkStage::RootShadow).unwrap();
        mix.products().map(|part| (part.product.clone(), part.weigh.g())).collect::<Vec<_>>()
    };
    let nine = with(&[9.0]);
    for order in [[9.0, 7.0, 8.0], [7.0, 9.0, 8.0], [8.0, 7.0, 9.0], [9.0, 9.0, 6.0]] {
        assert_eq!(with(&order), nine, "{order:?}");
    }
    assert_ne!(with(&[6.5]), nine);
}

/// A toner meets the hair of its darkest section, with what was measured there.
#[test]
fn a_toner_is_found_for_what_was_measured_of_its_darkest_section() {
    let with = |light: &str, dark: &str, turned: bool| {
        let plan = changed(fine(), |file| {
            file.root_shadow = None;
            let demi = shop(file).shade[0].clone();
            for (code, tones) in [("mist", &["violet"][..]), ("blue", &["blue"]), ("moss", &["green"])] {
                let tones = tones.iter().map(|tone| (*tone).to_owned()).collect();
                shop(file).shade.push(ShadeEntry { code: code.to_owned(), level: 8.0, tones, ..demi.clone() });
            }
            shop(file).shade[0].level = 8.0;
            file.toner[0].mix.clear();
            file.toner[0].target = serde_json::from_value(json!({ "level": 8, "tones": [] })).ok();
            file.section[0].measured = Some(light.to_owned());
            also(file, "dark", |one| (one.target_level, one.measured) = (8.0, Some(dark.to_owned())));
            if turned {
                file.section.reverse();
            }
        });
        let mix = plan.mixes.iter().find(|mix| mix.name == "veil").unwrap();
        mix.products().map(|part| (part.product.clone(), part.weigh.g())).collect::<Vec<_>>()
    };
    let (yellow, orange) = ("75, 4, 40", "62, 18, 38");
    for turned in [false, true] {
        let found = with(yellow, orange, turned);
        assert_eq!(with("80, 1, 20", orange, turned), found);
        assert_ne!(with(yellow, "66, 2, 30", turned), found);
        assert_eq!(with(yellow, orange, !turned), found);
    }
}

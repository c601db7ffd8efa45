//! What a file asks for, worked a second way: minutes from foils at their edges, places on the map, amounts, the hair as the law of lift takes it.

use super::base::{changed, fine, only_colour, only_lightener, shop, verdicts};
use foilwork::{
    finding::Verdict::Note,
    hair::Texture,
    head::Technique,
    lift::{Belief, Booster, Cover, Lightening, Ph, Situation, Uptake},
    quantity::{Duration, Temperature},
    service::{
        AppliedBy, Evidence, FoilPace, Plan, ServiceFile, plan, plan_with,
        shape::{Porosity, Zone},
    },
    source::Interval,
};
use rstest::rstest;
use serde_json::json;

fn foils(count: u32, apply: Option<f64>, own: Option<f64>) -> ServiceFile {
    let mut file = only_lightener();
    let top = &mut file.section[0];
    (top.foils, top.apply_min, top.foil_min) = (Some(count), apply, own);
    file
}

/// What is printed, in one line.
fn flat(plan: &Plan) -> String {
    plan.to_string().split_whitespace().collect::<Vec<_>>().join(" ")
}

fn of_records() -> Evidence {
    let foil = Interval::ordered(1.0, 1.2, 1.4).map(|min| Duration::from_min(min).unwrap());
    Evidence { foil_pace: Some(FoilPace { foil, sections: 5 }), ..Evidence::default() }
}

/// Ten foils at 1 to 1.4 min of the records are 10 to 14: what is stated within half a minute of that contradicts nothing.
#[rstest]
#[case(9.49, true)]
#[case(9.5, false)]
#[case(12.0, false)]
#[case(14.5, false)]
#[case(14.51, true)]
fn half_a_minute_beside_the_records_is_no_contradiction(#[case] apply: f64, #[case] told: bool) {
    let plan = plan_with(&foils(10, Some(apply), None), &of_records()).unwrap();
    assert_eq!(verdicts(&plan, "pace"), vec![Note; usize::from(told)]);
    let applying = &plan.head.sections[0].applying;
    assert_eq!(applying.by, AppliedBy::Stated);
    let words = flat(&plan);
    assert!(
        words.contains("; by 1.2 min (1 to 1.4) a foil [measured by you] it would be 12 min (10 to 14)"),
        "{words}"
    );
}

/// By hand: 120 foils at 2 min are the 240 of the longest application, one more is beyond; which field says so is that which states the minutes.
#[test]
fn the_longest_application_is_reached_and_not_passed() {
    assert!(plan(&foils(120, None, Some(2.0))).is_ok());
    let told = |file: &ServiceFile| plan(file).unwrap_err().to_string();
    let rest = "its foils would take 242 min, a section takes 240 min at most: split the section";
    assert_eq!(told(&foils(121, None, Some(2.0))), format!("section[1].foil_min: {rest}"));
    let mut salon = foils(121, None, None);
    salon.salon.foil_min = Some(2.0);
    assert_eq!(told(&salon), format!("section[1].apply_min: {rest}"));
    // No foils take no time that could be told.
    assert!(told(&foils(0, None, None)).starts_with("section[1].apply_min: missing: give it, or `foils` or a `panel`"));
    assert!(told(&foils(0, None, Some(2.0))).starts_with("section[1].foil_min: no foils are counted here"));
    let none = plan(&foils(0, Some(5.0), None)).unwrap();
    assert_eq!((none.head.sections[0].applying.foil, none.head.sections[0].applying.by_foils), (None, None));
}

/// Where the minutes are from stands with the default that they make, and in the words of the plan.
#[test]
fn minutes_say_where_they_are_from() {
    let told = |file: &ServiceFile, evidence: &Evidence| {
        let plan = plan_with(file, evidence).unwrap();
        let used = plan.defaults.iter().find(|one| one.field == "section[1].apply_min").unwrap();
        let words = flat(&plan);
        (used.value.to_string(), serde_json::to_string(&used.sources).unwrap(), words)
    };
    let mut salon = foils(10, None, None);
    salon.salon.foil_min = Some(2.0);
    for (file, evidence, value, why, words) in [
        (
            foils(10, None, Some(1.5)),
            Evidence::default(),
            "15 min",
            "its foils times its `foil_min`",
            "put on in 15 min by its own `foil_min` [stated by you], 1.5 min a foil",
        ),
        (
            salon.clone(),
            of_records(),
            "12 min (10 min to 14 min)",
            "its foils times the minutes for one in the records of this colourist",
            "put on in 12 min (10 to 14) by the records of this colourist [measured by you], 1.2 min (1 to 1.4) a foil",
        ),
        (
            salon,
            Evidence::default(),
            "20 min",
            "its foils times `salon.foil_min`",
            "put on in 20 min by `salon.foil_min` [stated by you], 2 min a foil",
        ),
        (
            foils(10, None, None),
            Evidence::default(),
            "13 min (8 min to 22 min)",
            "its foils times the minutes assumed for one; time yours and give `salon.foil_min`",
            "put on in 13 min (8 to 22) by the minutes assumed for a foil [assumed], 1.3 min (0.8 to 2.2) a foil",
        ),
    ] {
        let found = told(&file, &evidence);
        assert_eq!(found.0, value);
        assert!(found.2.contains(words), "{words}: {}", found.2);
        assert!(found.1.contains(why), "{}", found.1);
    }
    let stated = flat(&plan(&foils(10, Some(20.0), None)).unwrap());
    let words = "put on in 20 min by `apply_min` [stated by you]; by 1.3 min (0.8 to 2.2) a foil [assumed] it would be 13 min (8 to 22)";
    assert!(stated.contains(words), "{stated}");
}

fn mapped(places: &[[u32; 4]]) -> ServiceFile {
    let mut file = fine();
    let area = 100.0 / places.len() as f64;
    let region = |(i, [left, top, width, height]): (usize, &[u32; 4])| {
        let place =
            json!({ "left_percent": left, "top_percent": top, "width_percent": width, "height_percent": height });
        json!({ "name": format!("region {i}"), "area_percent": area, "outline": i == 0, "front": true, "place": place })
    };
    let regions: Vec<_> = places.iter().enumerate().map(region).collect();
    file.region = serde_json::from_value(json!(regions)).unwrap();
    (file.section[0].share_percent, file.section[0].taken_percent) = (Some(5.0), Some(50.0));
    file.section[0].regions = serde_json::from_value(json!([{ "name": "region 0" }])).unwrap();
    file
}

/// Two places lie over each other where some square of the map lies in both, counted square by square; beside each other they may touch.
#[test]
fn places_lie_apart_where_no_square_is_in_both() {
    let (mut apart, mut over) = (0, 0);
    let one = [30, 30, 20, 30];
    let lies_in = |[left, top, width, height]: [u32; 4], x: u32, y: u32| {
        x >= left && x < left + width && y >= top && y < top + height
    };
    for left in [5, 10, 20, 30, 45, 50, 55] {
        for top in [0, 10, 35, 60, 65] {
            for (width, height) in [(20, 20), (5, 35), (40, 5)] {
                let other = [left, top, width, height];
                let both = (0..100).any(|x| (0..110).any(|y| lies_in(one, x, y) && lies_in(other, x, y)));
                let told = plan(&mapped(&[one, other]))
                    .map(|plan| plan.head.look.unwrap().template.regions()[1].place.unwrap());
                match told {
                    Ok(place) => {
                        assert!(!both, "{other:?}");
                        // Of a map of 12 by 16.
                        let want = [left, top, width, height].map(f64::from);
                        for (got, want) in
                            place.into_iter().zip([want[0] * 0.12, want[1] * 0.16, want[2] * 0.12, want[3] * 0.16])
                        {
                            assert!((got - want).abs() < 1e-9, "{place:?}");
                        }
                        apart += 1;
                    }
                    Err(problems) => {
                        let want = "region[2].place: \"region 1\" lies over `region[1].place`, \"region 0\", on the map (move one of the two)";
                        assert!(both, "{other:?}: {problems}");
                        assert_eq!(problems.to_string(), want);
                        over += 1;
                    }
                }
            }
        }
    }
    assert!(apart > 20 && over > 10, "{apart} {over}");
    // The third over the second, and not over the first.
    let told = plan(&mapped(&[[0, 0, 20, 20], [40, 40, 20, 20], [50, 50, 20, 20]])).unwrap_err().to_string();
    assert!(told.starts_with("region[3].place: \"region 2\" lies over `region[2].place`, \"region 1\""), "{told}");
    // To the very edges of the map, and one beyond each.
    assert!(plan(&mapped(&[[0, 0, 100, 50], [0, 50, 100, 50]])).is_ok());
    let edge = |place: [u32; 4]| plan(&mapped(&[[0, 0, 10, 10], place])).unwrap_err().to_string();
    assert!(
        edge([60, 50, 41, 50])
            .starts_with("region[2].place: `left_percent` and `width_percent` end at 101 %, beyond the map")
    );
    assert!(
        edge([60, 60, 40, 41])
            .starts_with("region[2].place: `top_percent` and `height_percent` end at 101 %, beyond the map")
    );
}

/// Common practice: a full head takes 120 g (90 to 180) of colour, its regrowth 60 (40 to 90), lightener 180 (120 to 300); of it a quarter.
#[rstest]
#[case(only_colour(), Technique::Weave, Zone::Lengths, [22.5, 30.0, 45.0])]
#[case(only_colour(), Technique::Regrowth, Zone::Roots, [10.0, 15.0, 22.5])]
#[case(only_lightener(), Technique::Regrowth, Zone::Roots, [30.0, 45.0, 75.0])]
fn amounts_of_the_trade_by_their_share(
    #[case] file: ServiceFile,
    #[case] technique: Technique,
    #[case] zone: Zone,
    #[case] want: [f64; 3],
) {
    let plan = changed(file, |file| {
        let top = &mut file.section[0];
        (top.mix_g, top.share_percent, top.technique, top.zone) = (None, Some(25.0), technique, zone);
        (top.foils, top.on_scalp) = (None, Some(false));
    });
    let needed = plan.mixes[0].needed.to_array().map(|mass| mass.g());
    assert!(needed.iter().zip(want).all(|(got, want)| (got - want).abs() < 1e-9), "{needed:?}");
}

/// The forecast of a section is that of the law of lift for the hair and the mix that the file states, fact by fact.
#[test]
fn the_law_of_lift_gets_what_the_file_states() {
    type Change = fn(&mut ServiceFile);
    type Facts = fn(Situation) -> Situation;
    let cases: [(Change, Facts); 10] = [
        (|_| (), |mix| mix),
        (|file| shop(file).lightener[0].persulfate = Some(true), |mix| mix),
        (|file| shop(file).lightener[0].persulfate = Some(false), |mix| Situation { booster: Booster::Mild, ..mix }),
        (|file| shop(file).lightener[0].mixed_ph = Some(9.2), |mix| Situation { ph: Ph::new(9.2).ok(), ..mix }),
        (|file| file.analysis.porosity = Some(Porosity::Low), |mix| Situation { uptake: Uptake::Low, ..mix }),
        (|file| file.analysis.porosity = Some(Porosity::High), |mix| Situation { uptake: Uptake::High, ..mix }),
        (|file| file.analysis.porosity = Some(Porosity::Uneven), |mix| mix),
        (|file| file.analysis.texture = Some(Texture::Coarse), |mix| Situation { texture: Texture::Coarse, ..mix }),
        (|file| file.section[0].cover = Some(Cover::OpenAir), |mix| Situation { cover: Cover::OpenAir, ..mix }),
        (
            |file| file.salon.room_c = Some(24.0),
            |mix| Situation { temperature: Temperature::from_celsius(24.0).unwrap(), ..mix },
        ),
    ];
    let mut levels = Vec::new();
    for (place, (change, facts)) in cases.into_iter().enumerate() {
        let plan = changed(only_lightener(), change);
        let lift = &plan.lift[0];
        // One part of powder and two of 6 %: 4 % on the hair; the room has 20 C.
        let at = Temperature::from_celsius(20.0).unwrap();
        let usual = Situation { temperature: at, ..Situation::usual(lift.on_hair) };
        let forecast = Lightening::new(&Belief::untested(), &facts(usual), plan.hair.natural_level);
        assert!((lift.on_hair.best().ww_percent() - 4.0).abs() < 1e-9, "{:?}", lift.on_hair);
        assert_eq!(lift.first_strand, forecast.level_after(Duration::from_min(50.0).unwrap()), "case {place}");
        levels.push(lift.first_strand.best().number());
    }
    // What is told is told: all but the first, the stated persulfate and the uneven porosity differ from the usual.
    let same: Vec<usize> = (0..levels.len()).filter(|i| levels[*i] == levels[0]).collect();
    assert_eq!(same, [0, 1, 6]);
}

/// What technique and zone say of scalp, cover, comb and brush, for every pair of them: regrowth is worked at the scalp, what begins away from the
/// roots does not touch it, and at the roots foil does not say. Lightener without foil lies open. How much a comb or a brush leaves is taken for granted.
#[test]
fn technique_and_zone_say_what_is_taken_for_granted() {
    for technique in Technique::ALL {
        for zone in Zone::ALL {
            for lightens in [true, false] {
                let mut file = if lightens { only_lightener() } else { only_colour() };
                let top = &mut file.section[0];
                (top.technique, top.zone, top.on_scalp, top.foils) = (*technique, *zone, None, None);
                let Ok(plan) = plan(&file) else { continue };
                let told = |name: &str| {
                    let field = format!("section[1].{name}");
                    plan.defaults.iter().find(|one| one.field == field).map(|one| one.value.to_string())
                };
                let in_foil = matches!(
                    technique,
                    Technique::Weave | Technique::Slice | Technique::BackComb | Technique::FreehandInFoil
                );
                let at_roots = matches!(zone, Zone::Roots | Zone::Whole);
                let scalp = match (technique, at_roots) {
                    (Technique::Regrowth, _) => Some("true"),
                    (_, false) => Some("false"),
                    (_, true) if in_foil => None,
                    _ => Some("true"),
                };
                let case = format!("{technique}, {zone}, {lightens}");
                assert_eq!(told("on_scalp").as_deref(), scalp, "{case}");
                let open = (lightens && !in_foil).then_some("open air");
                assert_eq!(told("cover").as_deref(), open, "{case}");
                let by_hand =
                    matches!(technique, Technique::BackComb | Technique::Freehand | Technique::FreehandInFoil);
                assert_eq!(
                    [told("covered_percent").is_some(), told("transition_cm").is_some()],
                    [by_hand; 2],
                    "{case}"
                );
            }
        }
    }
}

//! How a head reads, from its sections by hand: what is covered on each stretch of the strand, what of the outline is light, which
//! foils lie where. The colours themselves and how light adds up are the head's own (`tests/api/head.rs`).

use super::base::{changed, near, only_lightener};
use foilwork::{
    colour::Swatch,
    head::{
        LightFoils, OutlinePart, PartLine, Placed, Profile, Solidity, Technique, Wish, lowlight_places, read_head,
        read_outline, read_regions,
    },
    quantity::{Length, Share},
    service::{HeadReading, Plan, ServiceFile, shape::Zone},
    source::Interval,
};
use serde_json::json;

fn percent(percent: f64) -> Share {
    Share::from_percent(percent).unwrap()
}

fn cm(cm: f64) -> Length {
    Length::from_cm(cm).unwrap()
}

/// Hair of 20 cm on four regions; the veil is half as dense: of 92.5 parts 10, 7.5, 45 and 30. The edge takes 7 % of all the hair and
/// lies on the rim and on two fifths of the veil; the crown takes 60 % of half of the top and of a fifth of the back.
fn head(change: impl FnOnce(&mut ServiceFile)) -> Plan {
    changed(only_lightener(), |file| {
        file.analysis.length_cm = Some(20.0);
        file.service.reads_as = Some(Wish::BrightOutline);
        file.service.outline = Some(Solidity::Soft);
        file.service.part = Some(PartLine::None);
        file.region = serde_json::from_value(json!([
            { "name": "rim", "area_percent": 10, "outline": true, "front": true },
            { "name": "veil", "area_percent": 15, "outline": true, "density_percent": 50 },
            { "name": "top", "area_percent": 45, "front": true },
            { "name": "back", "area_percent": 30 },
        ]))
        .unwrap();
        let mut crown = file.section[0].clone();
        let edge = &mut file.section[0];
        (edge.name, edge.zone, edge.share_percent) = ("edge".to_owned(), Zone::Whole, Some(7.0));
        (edge.start_cm, edge.transition_cm, edge.foils) = (Some(2.0), Some(1.0), Some(20));
        edge.regions = serde_json::from_value(json!([{ "name": "rim" }, { "name": "veil", "percent": 40 }])).unwrap();
        (crown.name, crown.zone, crown.share_percent) = ("crown".to_owned(), Zone::Lengths, Some(10.0));
        (crown.technique, crown.target_level) = (Technique::BackComb, 8.0);
        (crown.start_cm, crown.transition_cm) = (Some(4.0), Some(4.0));
        (crown.covered_percent, crown.taken_percent, crown.foils) = (Some(80.0), Some(60.0), Some(11));
        crown.regions =
            serde_json::from_value(json!([{ "name": "top", "percent": 50 }, { "name": "back", "percent": 20 }]))
                .unwrap();
        crown.ends_between = serde_json::from_value(json!({ "from_cm": 12, "percent": 50 })).ok();
        file.section.push(crown);
        change(file);
    })
}

/// A section along the strand: what is taken, how it is covered, where it ends, and the ends that are painted on the hair it leaves.
struct Along {
    taken: f64,
    covered: f64,
    start: f64,
    over: f64,
    end: f64,
    ends: Option<(f64, f64)>,
}

impl Along {
    /// The mean share of the hair there that is coloured from one place to another, in small steps.
    fn on(&self, from: f64, to: f64) -> f64 {
        let steps = 20_000;
        let long = (to - from) / f64::from(steps);
        let at = |step: i32| {
            let cm = from + (f64::from(step) + 0.5) * long;
            let risen = ((cm - self.start) / self.over).clamp(0.0, 1.0);
            let own = if cm < self.end { self.taken * self.covered * risen } else { 0.0 };
            let between = self.ends.filter(|(from, _)| cm > *from).map_or(0.0, |(_, part)| (1.0 - self.taken) * part);
            100.0 * (own + between)
        };
        (0..steps).map(at).sum::<f64>() / f64::from(steps)
    }
}

const EDGE_AREA: f64 = 100.0 * (10.0 + 0.4 * 7.5) / 92.5;

fn edge() -> Along {
    Along { taken: 7.0 / EDGE_AREA, covered: 1.0, start: 2.0, over: 1.0, end: 20.0, ends: None }
}

fn crown() -> Along {
    Along { taken: 0.6, covered: 0.8, start: 4.0, over: 4.0, end: 20.0, ends: Some((12.0, 0.5)) }
}

/// Region, share of it, and the section there: 0 the edge, 1 the crown.
const PLACES: [(usize, f64, usize); 4] = [(0, 100.0, 0), (1, 40.0, 0), (2, 50.0, 1), (3, 20.0, 1)];

fn placed<'p>(plan: &'p Plan, rest: Swatch, along: &[Along; 2], (from, to): (f64, f64)) -> Vec<Placed<'p>> {
    let of = |(region, share, section): (usize, f64, usize)| Placed {
        section: &plan.colour[section].section,
        region,
        of_region: percent(share),
        lightened: percent(along[section].on(from, to)),
        rest,
        light: plan.colour[section].swatch,
    };
    PLACES.map(of).to_vec()
}

fn look(plan: &Plan) -> &HeadReading {
    plan.head.look.as_ref().unwrap()
}

/// Roots of 2.5 cm, and the last third of the rest.
const ZONES: [(f64, f64); 3] = [(0.0, 2.5), (2.5, 2.5 + 35.0 / 3.0), (2.5 + 35.0 / 3.0, 20.0)];

fn reads_by_hand(plan: &Plan, along: &[Along; 2]) {
    let found = look(plan);
    let rest = plan.colour[0].natural;
    let want = read_head(&found.template, &placed(plan, rest, along, (0.0, 20.0)), &rest, Some(Wish::BrightOutline));
    assert_eq!(found.look.regions.len(), 4);
    for (got, want) in found.look.regions.iter().zip(&want.regions) {
        assert_eq!(got.region, want.region);
        for (got, want) in got.lab_l.to_array().into_iter().zip(want.lab_l.to_array()) {
            near(got.lab_l(), want.lab_l(), 0.01);
        }
    }
    let over = |look: &foilwork::head::HeadLook| {
        [look.outline_over_interior, look.front_over_behind].map(|over| over.unwrap().to_array())
    };
    for (got, want) in over(&found.look).as_flattened().iter().zip(over(&want).as_flattened()) {
        near(*got, *want, 0.01);
    }
    for (place, stretch) in ZONES.into_iter().enumerate() {
        let want = read_regions(&found.template, &placed(plan, rest, along, stretch), &rest);
        for (got, want) in found.zones.iter().zip(want) {
            let got = [got.roots_lab_l, got.mid_lengths_lab_l, got.ends_lab_l][place];
            for (got, want) in got.to_array().into_iter().zip(want.lab_l.to_array()) {
                near(got.lab_l(), want.lab_l(), 0.01);
            }
        }
    }
}

#[test]
fn a_head_reads_as_what_lies_on_each_stretch_of_its_regions() {
    reads_by_hand(&head(|_| ()), &[edge(), crown()]);
    // Without a length what is covered behind the start is all that is known.
    let plan = head(|file| {
        file.analysis.length_cm = None;
        file.section[1].ends_between = None;
    });
    let (found, rest) = (look(&plan), plan.colour[0].natural);
    let mut flat = placed(&plan, rest, &[edge(), crown()], (0.0, 20.0));
    for (part, (.., section)) in flat.iter_mut().zip(PLACES) {
        part.lightened = percent([100.0 * edge().taken, 48.0][section]);
    }
    let want = read_head(&found.template, &flat, &rest, Some(Wish::BrightOutline));
    for (got, want) in found.look.regions.iter().zip(&want.regions) {
        near(got.lab_l.best().lab_l(), want.lab_l.best().lab_l(), 1e-6);
    }
    assert!(found.zones.is_empty());
}

/// What nobody takes reads as it is: roots of level 6, and ends of level 9 a third of what is not root; beside each other by their cm.
#[test]
fn hair_that_is_left_reads_as_its_zones_beside_each_other() {
    let plan = head(|file| {
        file.analysis.existing =
            serde_json::from_value(json!([{ "zone": "ends", "level": 9, "artificial": false }])).unwrap();
        for section in &mut file.section {
            section.ends_between = None;
            section.regions.pop();
        }
        file.section[0].share_percent = Some(3.0);
    });
    let level = |number: f64| Swatch::natural(foilwork::colour::Level::new(number).unwrap());
    let share = 100.0 * (35.0 / 6.0) / 20.0;
    let want = level(6.0).beside(&level(9.0), percent(share)).lightness();
    let found = look(&plan);
    near(found.look.regions[3].lab_l.best().lab_l(), want.best().lab_l(), 1e-6);
    near(found.zones[3].mid_lengths_lab_l.best().lab_l(), level(6.0).lightness().best().lab_l(), 1e-6);
    near(found.zones[3].ends_lab_l.best().lab_l(), level(9.0).lightness().best().lab_l(), 1e-6);
    // In a region that is worked a part of it is left the same.
    let taken = 0.6 * 0.8 * (16.0 - 2.0) / 20.0;
    let rest = level(6.0).beside(&level(9.0), percent(share));
    let mut placed = placed(&plan, rest, &[edge(), crown()], (0.0, 20.0));
    placed.retain(|part| part.region == 2);
    placed[0].lightened = percent(100.0 * taken);
    let want = read_regions(&found.template, &placed, &rest);
    near(found.look.regions[2].lab_l.best().lab_l(), want[2].lab_l.best().lab_l(), 1e-6);
}

/// The edge has 10 and 3 parts of the outline's 17.5, of which it takes its share; of the veil three fifths are left.
#[test]
fn the_outline_is_light_where_its_sections_are() {
    for wish in [Solidity::Solid, Solidity::Soft] {
        let plan = head(|file| file.service.outline = Some(wish));
        let found = look(&plan).outline.as_ref().unwrap();
        let profile = |start: f64, over: f64, covered: f64| Profile {
            covered: percent(covered).into(),
            start: cm(start).into(),
            transition: cm(over).into(),
        };
        let hair = |parts: f64| percent(100.0 * parts / 92.5);
        let parts = [
            OutlinePart {
                section: "edge",
                hair: hair(13.0),
                taken: Interval::exact(percent(100.0 * edge().taken)),
                profile: profile(2.0, 1.0, 100.0),
            },
            OutlinePart {
                section: "veil",
                hair: hair(4.5),
                taken: percent(0.0).into(),
                profile: profile(0.0, 0.0, 0.0),
            },
        ];
        let want = read_outline(&parts, Some(wish)).unwrap();
        near(found.light.best().percent(), want.light.best().percent(), 1e-9);
        near(found.light.best().percent(), 100.0 * 13.0 / 17.5 * edge().taken, 1e-9);
        assert_eq!((found.reads, found.as_wanted, found.sure), (want.reads, want.as_wanted, want.sure));
        let told = |look: &foilwork::head::OutlineLook| {
            look.changes.iter().map(|one| (one.section.clone(), one.advice())).collect::<Vec<_>>()
        };
        assert_eq!(told(found), told(&want));
    }
}

/// Twenty foils on 10 and 3 parts of hair are 15 and 5 (15.4 and 4.6), eleven on 22.5 and 6 are 9 and 2 (8.7 and 2.3): counted through
/// in the order of the work. One foil is told as one, hair without foil by its name alone.
#[test]
fn foils_are_written_where_they_lie() {
    let written = |plan: &Plan| look(plan).written();
    let line = |words: &[&str]| words.iter().map(|word| (*word).to_owned()).collect::<Vec<_>>();
    let want = [
        line(&["edge", "foils 1-15"]),
        line(&["edge", "foils 16-20"]),
        line(&["crown", "foils 21-29"]),
        line(&["crown", "foils 30-31"]),
    ];
    assert_eq!(written(&head(|_| ())), want);
    let few = head(|file| {
        (file.section[0].foils, file.section[1].foils) = (Some(4), Some(1));
        file.section[1].regions[1].name = "veil".to_owned();
        file.section[1].regions[1].percent = Some(10.0);
    });
    // 3.1 and 0.9 of four are three and one; of one foil on 22.5 and 0.75 parts none falls on the veil.
    let want =
        [line(&["edge", "foils 1-3"]), line(&["edge", "foil 4", "crown"]), line(&["crown", "foil 5"]), line(&[])];
    assert_eq!(written(&few), want);
}

/// Lowlights go between the light foils of each region, by the hair that the section has there and how far inside it lies.
#[test]
fn lowlights_lie_between_the_foils_of_each_region() {
    let plan = head(|file| {
        let lowlights = json!({ "level": 6.2, "reads_as_level": 6.8 });
        file.section[1].lowlights = serde_json::from_value(lowlights).unwrap();
        file.section[1].ends_between = None;
        file.section[1].covered_percent = Some(100.0);
        file.region[3].inward_percent = Some(90.0);
    });
    let crown = plan.head.sections.iter().find(|section| section.section == "crown").unwrap();
    let light = |region, parts: f64, inward: f64, first, last| LightFoils {
        region: Some(region),
        hair: percent(100.0 * parts / 92.5),
        inward: percent(inward),
        first,
        last,
    };
    let foils = crown.lowlights.unwrap().foils.unwrap().best();
    assert!(foils > 3, "{foils}");
    // What is no outline lies half way inward where nothing is stated.
    let want = lowlight_places(foils, &[light("top", 22.5, 50.0, 21, 29), light("back", 6.0, 90.0, 30, 31)]);
    assert_eq!(crown.lowlight_places, want);
}

/// By the gradient's map the foils of a region are those of all its sections; not known where one of them has foils that nobody
/// counted, and hair without foil has none.
#[test]
fn a_region_has_the_foils_of_all_its_sections() {
    let foils = |change: fn(&mut ServiceFile)| {
        let plan = head(|file| {
            file.gradient = serde_json::from_value(json!({
                "start_outline_cm": 1, "start_interior_cm": 4, "share_outline_percent": 60, "share_interior_percent": 20,
            }))
            .ok();
            file.section[1].regions[1].name = "veil".to_owned();
            change(file);
        });
        plan.head.gradient.iter().map(|region| region.foils).collect::<Vec<_>>()
    };
    // Eleven on 22.5 and 1.5 parts: 10.3 and 0.7 are ten and one.
    assert_eq!(foils(|_| ()), [Some(15), Some(5 + 1), Some(10), None]);
    assert_eq!(foils(|file| file.section[1].foils = None), [Some(15), None, None, None]);
    let painted = foils(|file| {
        (file.section[1].technique, file.section[1].foils) = (Technique::Freehand, None);
    });
    assert_eq!(painted, [Some(15), Some(5), None, None]);
    // A section with one foil has none where it has less hair.
    assert_eq!(foils(|file| file.section[1].foils = Some(1)), [Some(15), Some(5), Some(1), None]);
}

/// The length of a shadow is the mean of the regions by their hair, as much of each as the section is: 1 cm at the outline, 2 more
/// inside, by how far inward a region lies (assumed; `head.root_shadow_length`).
#[test]
fn a_shadow_is_as_long_as_the_regions_of_a_section_by_their_area() {
    let plan = changed(super::base::fine(), |file| {
        file.root_shadow.as_mut().unwrap().length_cm = None;
        file.section[0].share_percent = Some(5.0);
        let places = json!([
            { "name": "front hairline", "percent": 100 }, { "name": "top", "percent": 50 }, { "name": "crown", "percent": 25 },
        ]);
        file.section[0].regions = serde_json::from_value(places).unwrap();
    });
    // Areas of the standard template: 5, 13 and 12 %; the top lies 80 % inward, the crown all the way.
    let (hairline, top, crown) = (5.0, 0.5 * 13.0, 0.25 * 12.0);
    let want = (hairline * 1.0 + top * 2.6 + crown * 3.0) / (hairline + top + crown);
    near(plan.head.sections[0].root_shadow.unwrap().best().cm(), want, 1e-9);
}

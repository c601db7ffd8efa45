//! The pictures of a plan: what is in them, and when there is none.

use super::{base, level, levels, money::priced, q};
use foilwork::{
    colour::Swatch,
    head::LowlightPlace,
    money::{CostTable, Currency},
    service::{ExpectedLook, Plan},
    sheet::{bench_page, cost_picture, head_map, head_map_text},
};
use rstest::rstest;

/// Darker strands stand in the region that they are of, and in no other; what is of no region stands nowhere.
#[test]
fn darker_strands_stand_in_their_region() {
    let mut plan = priced();
    let regions: Vec<String> =
        plan.head.look.as_ref().unwrap().look.regions.iter().map(|region| region.region.clone()).collect();
    let place = |region: Option<&str>, behind: &[u32]| LowlightPlace {
        region: region.map(str::to_owned),
        foils: 2,
        behind_foils: behind.to_vec(),
    };
    for section in &mut plan.head.sections {
        section.lowlight_places.clear();
    }
    let without = head_map_text(&plan).unwrap();
    assert!(!without.contains("lowlights"), "{without}");
    plan.head.sections[0].lowlight_places =
        vec![place(Some(&regions[1]), &[3, 6]), place(None, &[9]), place(Some(&regions[2]), &[4])];
    let map = head_map_text(&plan).unwrap();
    for (line, region) in map.lines().filter(|line| line.contains(": L* ")).zip(&regions) {
        let want = match regions.iter().position(|one| one == region) {
            Some(1) => ["lowlights behind 3, 6"].as_slice(),
            Some(2) => &["lowlights behind 4"],
            _ => &[],
        };
        let got = line.matches("lowlights behind").count();
        assert!(got == want.len() && want.iter().all(|told| line.ends_with(told)), "{line}");
    }
    assert!(head_map(&plan).unwrap().contains(">lowlights behind 3, 6</text>"));
    plan.head.look = None;
    assert!(head_map(&plan).is_none() && head_map_text(&plan).is_none());
}

/// How often each word stands under a swatch on the page.
fn words(plan: &Plan) -> [usize; 4] {
    let page = bench_page(plan);
    ["now", "exposed", "toned", "at the end"].map(|word| page.matches(&format!(">{word}</text>")).count())
}

/// Now, exposed and at the end; what is exposed and stays so is shown once.
#[test]
fn swatches_of_a_section() {
    let mut plan = base();
    plan.colour.truncate(1);
    let (natural, light) = (Swatch::natural(level(6.0)), Swatch::lightened(level(6.0), level(9.0)));
    let one = &mut plan.colour[0];
    (one.natural, one.exposed_swatch, one.swatch, one.toner) = (natural, None, natural, None);
    assert_eq!(words(&plan), [1, 0, 0, 1]);
    plan.colour[0].exposed_swatch = Some(light);
    assert_eq!(words(&plan), [1, 1, 0, 1]);
    plan.colour[0].toner = Some("veil".to_owned());
    assert_eq!(words(&plan), [1, 1, 1, 0]);
    plan.colour[0].swatch = light;
    assert_eq!(words(&plan), [1, 1, 0, 0]);
}

/// After the last look comes the rinse, unless that look is at it.
#[rstest]
#[case(&[12.0, 27.0], "after 12 min 7 (6 to 8); after 27 min 7 (6 to 8); after 40 min 9 (8 to 9.5).")]
#[case(&[12.0, 40.0], "after 12 min 7 (6 to 8); after 40 min 7 (6 to 8).")]
#[case(&[], ": after 40 min 9 (8 to 9.5).")]
fn looks_end_with_the_rinse(#[case] looks: &[f64], #[case] want: &str) {
    let mut plan = base();
    let lift = &mut plan.lift[0];
    (lift.limit, lift.first_strand) = (q(40.0), levels([8.0, 9.0, 9.5]));
    let look =
        |on_hair: &f64| ExpectedLook { at: q(on_hair + 3.0), on_hair: q(*on_hair), level: levels([6.0, 7.0, 8.0]) };
    lift.looks = looks.iter().map(look).collect();
    let page = bench_page(&plan);
    assert!(page.contains(want), "{want}: {page}");
}

/// What costs nothing, or is not priced, has no picture of its costs.
#[test]
fn costs_have_a_picture_where_there_are_some() {
    let mut plan = priced();
    let picture = cost_picture(&plan, "Cost").unwrap();
    assert!(picture.contains("<title>Cost</title>") && picture.contains(">product</text>"));
    assert!(picture.contains("counted 40.00 EUR") && picture.contains("not counted: J9: no price in the shop; labour"));
    plan.habits.country = Some("IE".parse().unwrap());
    assert!(cost_picture(&plan, "Cost").unwrap().contains("counted €40.00"));
    assert_eq!(bench_page(&plan).matches("class=\"costs\"").count(), 1);
    let money = plan.money.as_mut().unwrap();
    money.cost = CostTable::new(Currency::EUR);
    assert!(cost_picture(&plan, "Cost").is_none() && !bench_page(&plan).contains("class=\"costs\""));
    plan.money = None;
    assert!(cost_picture(&plan, "Cost").is_none());
}

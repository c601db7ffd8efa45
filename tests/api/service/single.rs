//! Choices that show in one place of a plan, each against what the trade or plain counting says.

use super::base::{changed, example, fine, only_colour, only_lightener, shop, texts, verdicts};
use foilwork::{
    colour::ProductKind,
    finding::Verdict::Warning,
    head::Technique,
    limits::Jurisdiction,
    money::Currency,
    reader::Format,
    service::{
        Evidence, ServiceFile, consult, parse, parse_with_shop, plan,
        shape::{After, ExistingColour, MixPart, Section, WaitFor, Zone},
        starter,
    },
    shop::{ShadeClass, parse_shop, shape::LightenerEntry, shape::ShadeEntry},
    source::Basis,
};
use rstest::rstest;

/// Three that wait for each other, and four: the three are told, whichever stand first in the file.
#[rstest]
fn of_two_circles_the_smaller_is_told(#[values(false, true)] larger_first: bool) {
    let mut file = only_lightener();
    let first = file.section[0].clone();
    let waits = |name: &str, section: &str| Section {
        name: name.to_owned(),
        share_percent: Some(1.0),
        after: vec![After { section: section.to_owned(), wait_for: WaitFor::Application }],
        ..first.clone()
    };
    let three = [waits("u", "w"), waits("v", "u"), waits("w", "v")];
    let four = [waits("k", "n"), waits("l", "k"), waits("m", "l"), waits("n", "m")];
    file.section =
        if larger_first { four.into_iter().chain(three).collect() } else { three.into_iter().chain(four).collect() };
    let text = serde_json::to_string(&file).unwrap();
    let told = parse(&text, Format::Json).unwrap_err().to_string();
    assert!(told.contains("these sections wait for each other: u, v, w:"), "{told}");
}

/// Permanent colour in a bowl makes it permanent, wherever it stands in the mix.
#[rstest]
#[case(&["J6", "J6 demi"], ProductKind::PermanentColour)]
#[case(&["J6 demi", "J6"], ProductKind::PermanentColour)]
#[case(&["J6 demi"], ProductKind::QuasiPermanentColour)]
fn the_strongest_kind_of_a_bowl_decides(#[case] codes: &[&str], #[case] want: ProductKind) {
    let plan = changed(only_colour(), |file| {
        let demi = ShadeEntry { code: "J6 demi".to_owned(), class: ShadeClass::Demi, ..shop(file).shade[1].clone() };
        shop(file).shade.push(demi);
        file.section[0].product = None;
        file.section[0].mix = codes.iter().map(|code| MixPart { shade: (*code).to_owned(), parts: 1.0 }).collect();
    });
    assert_eq!(plan.head.sections[0].planned_class, Some(want));
}

/// What may touch the scalp is replaced only by what may touch it too.
#[rstest]
#[case(true, &["gentle"])]
#[case(false, &["strong", "gentle"])]
fn another_lightener_may_go_where_the_missing_one_may(#[case] on_scalp: bool, #[case] want: &[&str]) {
    let plan = changed(only_lightener(), |file| {
        let powder = shop(file).lightener[0].clone();
        shop(file).lightener[0].on_scalp = on_scalp;
        shop(file).lightener[0].in_hand_g = Some(1.0);
        let named = |name: &str, on_scalp| LightenerEntry { name: name.to_owned(), on_scalp, ..powder.clone() };
        shop(file).lightener.extend([named("strong", false), named("gentle", true)]);
    });
    let line = plan.stock.products.iter().find(|line| line.product == "powder").unwrap();
    assert_eq!(line.instead.iter().map(|one| one.product.as_str()).collect::<Vec<_>>(), want);
}

/// Who is offered another shade reads its level and tone.
#[test]
fn a_shade_that_stands_in_is_told_by_level_and_tone() {
    let plan = changed(fine(), |file| {
        shop(file).shade[0].in_hand_g = Some(5.0);
        let demi = shop(file).shade[0].clone();
        shop(file).shade.push(ShadeEntry { code: "J8.5".to_owned(), level: 8.5, in_hand_g: None, ..demi });
    });
    let line = plan.stock.products.iter().find(|line| line.product == "J9").unwrap();
    assert!(line.instead[0].why.starts_with("level 8.5 "), "{}", line.instead[0].why);
}

/// Colour over what is lightened tones it when the lightener is rinsed, not while it is on.
#[rstest]
#[case(WaitFor::Rinse, false)]
#[case(WaitFor::Application, true)]
#[case(WaitFor::Development, true)]
fn colour_tones_what_was_rinsed_before_it(#[case] wait_for: WaitFor, #[case] untoned: bool) {
    let plan = changed(only_lightener(), |file| {
        file.section[0].target_tone = Some("beige".to_owned());
        let after = vec![After { section: "top".to_owned(), wait_for }];
        let over = Section {
            name: "over".to_owned(),
            product: Some("J6".to_owned()),
            after,
            target_tone: None,
            ..file.section[0].clone()
        };
        file.section.push(over);
    });
    assert_eq!(verdicts(&plan, "untoned"), if untoned { vec![Warning] } else { Vec::new() });
}

/// Permanent colour that lifts leaves its own tone, not the warmth that it exposes.
#[test]
fn colour_that_lifts_looks_like_its_shade() {
    let plan = changed(only_colour(), |file| {
        shop(file).shade[1].level = 8.0;
        shop(file).shade[1].tones = vec!["blue".to_owned()];
        file.section[0].target_level = 8.0;
    });
    let colour = &plan.colour[0];
    let warmth = colour.exposed_swatch.as_ref().unwrap();
    assert!(colour.swatch != *warmth, "{:?}", colour.swatch);
}

/// What has the level that is wanted is not lifted: colour may stay on colour.
#[test]
fn artificial_colour_at_the_target_has_a_shade_for_it() {
    let plan = changed(only_colour(), |file| {
        let there =
            ExistingColour { zone: Some(Zone::Lengths), level: 6.0, artificial: true, ..ExistingColour::default() };
        file.analysis.existing = vec![there];
    });
    let rule = plan.colour[0].level_rule.as_ref().unwrap();
    assert_eq!(rule.no_shade_for_target, None);
}

fn with_the_shop(name: &str) -> ServiceFile {
    let shop = parse_shop(&example("juniper_and_tide.toml"), Format::Toml).unwrap();
    parse_with_shop(&example(name), Format::Toml, &shop).unwrap()
}

/// A forecast on strands of this guest rests on readings, one without on assumptions.
#[rstest]
#[case("finish-together.toml", Basis::Measured)]
#[case("staged-lightening.toml", Basis::Assumed)]
fn a_level_rests_on_strands_where_there_are_any(#[case] name: &str, #[case] want: Basis) {
    let plan = plan(&with_the_shop(name)).unwrap();
    let levels: Vec<_> =
        plan.trail().into_iter().filter(|one| one.what.contains("level of the first strand")).collect();
    assert_eq!(levels.len(), plan.lift.len());
    assert!(levels.iter().all(|one| one.basis == want), "{levels:?}");
}

/// Minutes for a foil are estimates, so that what follows from them has bounds; stated minutes have none.
#[rstest]
#[case(&[0, 1], true)]
#[case(&[1], true)]
#[case(&[], false)]
fn a_finish_by_estimated_minutes_has_bounds(#[case] open: &[usize], #[case] want: bool) {
    let mut file = with_the_shop("staged-lightening.toml");
    for place in open {
        file.section[*place].apply_min = None;
    }
    let plan = plan(&file).unwrap();
    let finish = plan.trail_of_day().into_iter().find(|one| one.what == "finish").unwrap();
    assert_eq!(finish.bounds.is_some(), want, "{finish:?}");
}

/// Another strength that strains the fibre more by a whole class says which; the plans with either say the same class.
#[test]
fn a_stronger_developer_says_which_strain_it_brings() {
    let mut file = with_the_shop("staged-lightening.toml");
    let strain = |file: &ServiceFile| plan(file).unwrap().lift[1].strain;
    let said = consult(&file, &Evidence::default()).unwrap().alternatives;
    let weak = strain(&file);
    file.section[1].developer = Some("developer 6".to_owned());
    let strong = strain(&file);
    assert!(strong > weak, "{strong:?} and {weak:?}");
    let want = format!("with more strain: {strong} instead of {weak}");
    assert!(said.iter().any(|one| format!("{one:?}").contains(&want)), "{want}: {said:#?}");
}

/// Where the law has a country of its own, dates and amounts are written as there; EU files leave it open.
#[test]
fn a_first_file_is_written_as_in_the_country_of_its_law() {
    let euro = Currency::from_code("EUR").unwrap();
    let own = [
        (Jurisdiction::GreatBritain, "GB"),
        (Jurisdiction::UnitedStates, "US"),
        (Jurisdiction::Canada, "CA"),
        (Jurisdiction::Australia, "AU"),
        (Jurisdiction::NewZealand, "NZ"),
        (Jurisdiction::China, "CN"),
        (Jurisdiction::Japan, "JP"),
        (Jurisdiction::Poland, "PL"),
    ];
    for (jurisdiction, code) in own {
        let shop = starter(jurisdiction, euro).shop;
        assert!(shop.contains(&format!("\ncountry = \"{code}\"")), "{code}: {shop}");
    }
    assert!(!starter(Jurisdiction::EuropeanUnion, euro).shop.contains("\ncountry = "));
}

/// A shadow of two shades is as deep as the darker one, whichever is named first.
#[rstest]
fn a_shadow_is_as_deep_as_its_darkest_shade(#[values(false, true)] darkest_first: bool) {
    let plan = changed(fine(), |file| {
        let six = shop(file).shade[1].clone();
        shop(file).shade.push(ShadeEntry { code: "J7".to_owned(), level: 7.0, ..six });
        let mut codes = ["J7", "J6"];
        if darkest_first {
            codes.reverse();
        }
        let shadow = file.root_shadow.as_mut().unwrap();
        shadow.mix = codes.map(|code| MixPart { shade: code.to_owned(), parts: 1.0 }).to_vec();
    });
    let told = texts(&plan, "depth-at-root");
    assert!(told.contains("level 6 on the natural base"), "{told}");
}

/// A line at 10 cm: the base to there, and from there what is on it.
#[test]
fn hair_reads_as_the_base_up_to_where_a_line_begins() {
    let plan = changed(only_lightener(), |file| {
        file.analysis.length_cm = Some(20.0);
        let top = &mut file.section[0];
        (top.zone, top.technique, top.foils) = (Zone::Whole, Technique::Block, None);
        (top.start_cm, top.transition_cm) = (Some(10.0), Some(0.0));
    });
    let found = &plan.head.sections[0].along.as_ref().unwrap().stretches;
    let ends: Vec<f64> = found.iter().map(|one| one.to.cm()).collect();
    assert_eq!(ends, [10.0, 20.0], "{found:?}");
    assert!(found[0].level.best().number() < found[1].level.best().number());
}

/// Bands of another level show as such up to their end where nothing is put on.
#[test]
fn hair_reads_as_each_of_its_bands_where_nothing_is_on_it() {
    let plan = changed(only_lightener(), |file| {
        file.analysis.length_cm = Some(20.0);
        let band = ExistingColour {
            from_cm: Some(0.0),
            to_cm: Some(5.0),
            level: 8.0,
            artificial: false,
            ..ExistingColour::default()
        };
        file.analysis.existing = vec![band];
        let top = &mut file.section[0];
        (top.zone, top.technique, top.foils) = (Zone::Whole, Technique::Block, None);
        (top.start_cm, top.transition_cm) = (Some(10.0), Some(0.0));
    });
    let found = &plan.head.sections[0].along.as_ref().unwrap().stretches;
    let bare: Vec<_> = found.iter().take(2).map(|one| (one.to.cm(), one.level.best().number())).collect();
    assert_eq!(bare, [(5.0, 8.0), (10.0, 6.0)], "{found:?}");
}

/// The past that nobody knows is among what is not promised, and only where there is any.
#[rstest]
#[case("2020-01-01", false)]
#[case("2026-06-01", true)]
fn a_past_that_is_not_known_is_not_promised(#[case] known_since: &str, #[case] open: bool) {
    let mut file = with_the_shop("staged-lightening.toml");
    let told = file.consultation.as_mut().unwrap();
    told.past.clear();
    told.known_since = Some(known_since.to_owned());
    let found = consult(&file, &Evidence::default()).unwrap().agreement.not_promised;
    assert_eq!(found.iter().any(|text| text.contains("whose past nobody knows")), open, "{found:?}");
}

/// Who stated the minutes of a foil is told with what follows from them.
#[test]
fn the_minutes_of_the_salon_are_named_where_they_are_used() {
    let mut file = with_the_shop("staged-lightening.toml");
    file.section[0].apply_min = None;
    file.salon.foil_min = Some(1.5);
    let plan = plan(&file).unwrap();
    let used = plan.defaults.iter().find(|used| used.field == "section[1].apply_min").unwrap();
    assert!(format!("{:?}", used.sources).contains("its foils times `salon.foil_min`"), "{used:?}");
    // 24 foils of 1.5 min.
    assert_eq!(plan.order[0].applied.min(), 36.0);
}

/// A semi-permanent colour brings none of what oxidative colour may hold.
#[test]
fn colour_without_developer_has_cautions_of_its_own() {
    let of = |class: ShadeClass| {
        let plan = changed(only_colour(), |file| {
            let top = &mut file.section[0];
            if class == ShadeClass::Semi {
                top.product = Some("J8-veil".to_owned());
                (top.developer, top.target_level) = (None, 6.0);
            }
        });
        plan.cautions.into_iter().map(|caution| caution.text).collect::<Vec<_>>()
    };
    let (semi, permanent) = (of(ShadeClass::Semi), of(ShadeClass::Permanent));
    let resorcinol = |texts: &[&str]| texts.iter().any(|text| text.to_lowercase().contains("resorcinol"));
    assert!(resorcinol(&permanent) && !resorcinol(&semi), "{semi:#?} and {permanent:#?}");
}

//! Refusals, classes and the look of a head.

use foilwork::{
    colour::{Level, ProductKind, Swatch},
    head::{
        ClassQuestion, ExtraStep, Gradient, Layout, LightFoils, Panel, Placed, Placement, Region, Rest, ServiceClass,
        Softness, StepEnd, Technique, Template, Treated, Wish, lowlight_places, lowlights, partition, product_class,
        read_head, root_shadow_length, service_class, shadow_steps,
    },
    quantity::{Length, Share},
    source::{Basis, Interval},
};
use rstest::rstest;

pub(super) fn cm(value: f64) -> Length {
    Length::from_cm(value).unwrap()
}

pub(super) fn percent(value: f64) -> Share {
    Share::from_percent(value).unwrap()
}

pub(super) fn level(number: f64) -> Level {
    Level::new(number).unwrap()
}

#[test]
fn layouts_that_do_not_fit_name_both_fields() {
    let panel = Panel { width: cm(8.0), height: cm(6.0) };
    let weave = |pick: f64, gap: f64| Layout::weave(cm(pick).into(), cm(gap).into());
    let refused = |layout: Layout, panel| layout.on(panel).unwrap_err().to_string();
    assert_eq!(
        refused(Layout { foil_width: Some(cm(12.0)), ..weave(0.3, 0.3) }, panel),
        "`foil_width` 12 cm is wider than `panel_width` 8 cm: it would lie on its neighbour (fold the foil to 8 cm)"
    );
    assert_eq!(
        refused(Layout::slice().with_subsection(cm(7.0).into()), panel),
        "`subsection` 70 mm is thicker than `panel_height` 6 cm: not one foil fits (take thinner subsections)"
    );
    assert_eq!(
        refused(weave(9.0, 0.3), panel),
        "`pick` 90 mm is wider than `panel_width` 8 cm: that is a slice (take a slice, or narrower strands)"
    );
    let deep = Layout { subsection: cm(0.3).into(), ..weave(0.3, 0.3).with_subsection(cm(0.6).into()) };
    assert_eq!(
        refused(deep, panel),
        "`depth` 6 mm is more than `subsection` 3 mm: the comb would lift the hair behind it (at most 3 mm)"
    );
    assert_eq!(
        refused(weave(0.3, 0.3), Panel { height: cm(0.0), ..panel }),
        "`panel_height` is 0: a foil needs some (leave it out for the usual one)"
    );
}

#[rstest]
#[case::start(
    (4.0, 1.0), (60.0, 20.0),
    "`start_outline` 4 cm is further from the scalp than `start_interior` 1 cm: the outline would be the quieter one (swap \
     them, or give both 1 cm)"
)]
#[case::share(
    (1.0, 4.0), (20.0, 60.0),
    "`share_outline` 20 % is less than `share_interior` 60 %: the crown would be the brighter one (swap them, or give both \
     20 %)"
)]
#[case::beyond(
    (1.0, 31.0), (60.0, 20.0),
    "`start_interior` 31 cm is not within the hair's `length` 30 cm (start at less than 30 cm)"
)]
fn gradients_that_contradict_themselves(#[case] start: (f64, f64), #[case] share: (f64, f64), #[case] want: &str) {
    let refused =
        Gradient::new((cm(start.0), cm(start.1)), (percent(share.0), percent(share.1)), cm(30.0)).unwrap_err();
    assert_eq!(refused.to_string(), want);
}

#[test]
fn sections_that_are_no_partition_name_both() {
    let at = |section: &str, region: &str, share| Placement {
        section: section.into(),
        region: region.into(),
        share: percent(share),
    };
    let template = Template::standard();
    let refused = |placements: &[Placement], rest| partition(&template, placements, rest).unwrap_err().to_string();
    assert_eq!(
        refused(&[at("halo", "crown", 60.0), at("veil", "crown", 50.0)], Rest::Natural),
        "crown: \"halo\" and \"veil\" overlap, together the sections take 110 % of it (give \"veil\" 40 % or less)"
    );
    assert_eq!(
        refused(&[at("halo", "front hairline", 75.0)], Rest::Refused),
        "front hairline: 25 % of it belongs to no section (add them to \"halo\", or say that the rest stays natural)"
    );
    assert!(refused(&[at("halo", "crwn", 60.0)], Rest::Natural).ends_with("(did you mean crown?)"));
}

#[test]
fn templates_that_are_no_head_say_so() {
    let region = |name: &str, area| Region {
        name: name.into(),
        area: percent(area),
        density_percent: Interval::exact(100.0),
        outline: false,
        inward: percent(50.0),
        front: true,
        place: Some([0.0, 0.0, 1.0, 1.0]),
    };
    let refused = |regions| Template::new(regions, Basis::Stated).unwrap_err().to_string();
    assert_eq!(refused(vec![]), "a template without a region: state at least one with `area_percent` 100");
    assert_eq!(
        refused(vec![region("top", 50.0), region("top", 50.0)]),
        "region \"top\" is there twice: give each its own `name`"
    );
    assert_eq!(
        refused(vec![region("top", 30.0), region("back", 60.0)]),
        "the regions' `area_percent` add up to 90 %, not to 100 % (change \"back\" by 10 %)"
    );
}

#[rstest]
#[case::four_up(5.0, 9.0, false, false, 0.0, ProductKind::Lightener, &[])]
#[case::two_up(5.0, 7.0, false, false, 0.0, ProductKind::PermanentColour, &[])]
#[case::four_up_from_light(6.0, 10.0, false, false, 0.0, ProductKind::HighLiftTint, &[])]
#[case::colour_does_not_lift_colour(5.0, 7.0, true, false, 0.0, ProductKind::Lightener, &[ExtraStep::CleanFirst])]
#[case::same_level(7.0, 7.0, false, false, 0.0, ProductKind::QuasiPermanentColour, &[])]
#[case::white(7.0, 7.0, false, false, 60.0, ProductKind::PermanentColour, &[ExtraStep::PreSoften])]
#[case::back_to_dark(9.0, 6.0, true, true, 0.0, ProductKind::QuasiPermanentColour, &[ExtraStep::PrePigment])]
fn class_of_product(
    #[case] from: f64,
    #[case] to: f64,
    #[case] artificial: bool,
    #[case] lightened: bool,
    #[case] white: f64,
    #[case] want: ProductKind,
    #[case] before: &[ExtraStep],
) {
    let wish =
        ClassQuestion { from: level(from), to: level(to), artificial, lightened, white: percent(white), planned: None };
    let found = product_class(&wish);
    assert_eq!((found.product, found.before.as_slice()), (want, before));
    assert_eq!(found.rejected.len(), 4, "every other class has its reason");
    assert!(found.rejected.iter().all(|other| other.product != want && !other.why.is_empty()));
}

#[rstest]
#[case(&[(Technique::Regrowth, 100.0)], ServiceClass::Regrowth)]
#[case(&[(Technique::Weave, 20.0), (Technique::Slice, 10.0)], ServiceClass::Partial)]
#[case(&[(Technique::Weave, 39.9)], ServiceClass::Partial)]
#[case(&[(Technique::Weave, 40.0)], ServiceClass::Half)]
#[case(&[(Technique::Weave, 50.0)], ServiceClass::Half)]
#[case(&[(Technique::Weave, 74.9)], ServiceClass::Half)]
#[case(&[(Technique::Weave, 75.0)], ServiceClass::Full)]
#[case(&[(Technique::Weave, 50.0), (Technique::BackComb, 40.0)], ServiceClass::Full)]
fn class_of_service(#[case] parts: &[(Technique, f64)], #[case] want: ServiceClass) {
    let treated: Vec<_> =
        parts.iter().map(|(technique, area)| Treated { technique: *technique, area: percent(*area) }).collect();
    assert_eq!(service_class(&treated), want);
}

#[rstest]
#[case::darker_than_natural(
    (9.0, 8.0, 5.0, 6.0),
    "`lowlight` level 5 is darker than `natural` level 6: new growth would show lighter (give level 6 or lighter)"
)]
#[case::not_darker(
    (8.0, 9.0, 6.0, 6.0),
    "`wanted` level 9 is not darker than `now`, level 8: lowlights only darken (give less than 8)"
)]
#[case::too_light(
    (9.0, 6.0, 7.0, 5.0),
    "`wanted` level 6 is darker than `lowlight` level 7: no share of them reaches it (take strands of level 6 or darker)"
)]
fn lowlights_that_cannot_be(#[case] levels: (f64, f64, f64, f64), #[case] want: &str) {
    let (now, wanted, lowlight, natural) = levels;
    let refused =
        lowlights(level(now).into(), level(wanted), level(lowlight), level(natural), Some((percent(5.0), 12)))
            .unwrap_err();
    assert_eq!(refused.to_string(), want);
}

/// Every level is rounded, and what is to be given is below what it reads as.
#[test]
fn a_wish_that_is_not_darker_is_told_in_round_levels() {
    let now = Interval::new(level(7.2), level(7.660_529_056_479_696), level(8.0)).unwrap();
    let refused = lowlights(now, level(8.0), level(6.0), level(6.0), None).unwrap_err();
    let want =
        "`wanted` level 8 is not darker than `now`, level 7.7 (7.2 to 8): lowlights only darken (give less than 7.6)";
    assert_eq!(refused.to_string(), want);
}

/// Light adds up: (now - wanted) / (now - lowlight) in luminance, at each bound of what it reads as; none where it may read as dark
/// as is wanted.
#[test]
fn the_share_of_lowlights_has_the_bounds_of_what_it_reads_as() {
    let y = |number: f64| Swatch::natural(level(number)).samples()[0][1];
    let of = |now: f64| 100.0 * (y(now) - y(8.0)) / (y(now) - y(6.0));
    let found = |low: f64| {
        let now = Interval::new(level(low), level(9.0), level(9.5)).unwrap();
        lowlights(now, level(8.0), level(6.0), level(6.0), Some((percent(10.0), 12))).unwrap()
    };
    for (share, want) in found(8.5).share.to_array().into_iter().zip([8.5, 9.0, 9.5].map(of)) {
        assert!((share.percent() - want).abs() < 1e-9, "{share} {want}");
    }
    let open = found(7.5);
    assert_eq!((open.share.low(), open.foils.unwrap().low()), (Share::NONE, 0));
}

/// All of a region at the wanted level needs all of its hair; half of the foils for half of it.
#[test]
fn lowlights_by_share() {
    let all = lowlights(level(9.0).into(), level(6.0), level(6.0), level(6.0), Some((percent(10.0), 20))).unwrap();
    assert!((all.share.best().percent() - 100.0).abs() < 1e-9);
    assert_eq!((all.foils.unwrap().best(), all.light_foils_between), (10, Some(2)));
    // Where no light foil is known, the share is all that is known.
    let painted = lowlights(level(9.0).into(), level(6.0), level(6.0), level(6.0), None).unwrap();
    assert_eq!((painted.share, painted.foils, painted.light_foils_between), (all.share, None, None));
}

/// Who does as told has what was wished: the outline then reads 2 lighter than the inside, which is what shows, or as light.
#[rstest]
#[case::bright(10.0, Wish::BrightOutline, 2.0)]
#[case::too_bright(90.0, Wish::Even, 0.0)]
#[case::too_dark(5.0, Wish::Even, 0.0)]
fn what_to_change_brings_what_was_wished(#[case] outline: f64, #[case] wish: Wish, #[case] want: f64) {
    let (rest, light) = (Swatch::natural(level(5.0)), Swatch::lightened(level(5.0), level(9.0)));
    let template = Template::standard();
    let read = |outline| {
        let place = |(region, of): (usize, &Region)| Placed {
            section: if of.outline { "outline" } else { "inside" },
            region,
            of_region: Share::ALL,
            lightened: if of.outline { outline } else { percent(40.0) },
            rest,
            light,
        };
        let placed: Vec<_> = template.regions().iter().enumerate().map(place).collect();
        read_head(&template, &placed, &rest, Some(wish))
    };
    let change = read(percent(outline)).change.unwrap();
    assert!(change.enough && change.section == "outline");
    let over = read(change.wanted).outline_over_interior.unwrap().best();
    assert!((over - want).abs() < 0.05, "{over} for {want}");
    // A little unevenness is even.
    assert_eq!(read(percent(41.0)).as_wanted, Some(wish == Wish::Even));
}

/// The section that bears more hair is told to change, wherever it stands in the list.
#[rstest]
#[case(90.0, 10.0, "first")]
#[case(10.0, 90.0, "second")]
fn the_larger_section_of_the_outline_is_changed(#[case] first: f64, #[case] second: f64, #[case] want: &str) {
    let (rest, light) = (Swatch::natural(level(5.0)), Swatch::lightened(level(5.0), level(9.0)));
    let template = Template::standard();
    let outline = template.regions().iter().position(|region| region.outline).unwrap();
    let part = |section, of_region, lightened| Placed {
        section,
        region: outline,
        of_region: percent(of_region),
        lightened: percent(lightened),
        rest,
        light,
    };
    let placed = [part("first", first, 5.0), part("second", second, 5.0)];
    let look = read_head(&template, &placed, &rest, Some(Wish::BrightOutline));
    assert_eq!(look.change.unwrap().section, want);
}

/// Common practice: the back before the front, from the nape upward, of what lies level as it is listed; the front outline last.
#[test]
fn regions_are_worked_from_the_nape_upward_and_the_hairline_last() {
    let region = |name: &str, top: f64, front, outline| Region {
        name: name.into(),
        area: percent(20.0),
        density_percent: Interval::exact(100.0),
        outline,
        inward: percent(50.0),
        front,
        place: Some([0.0, top, 1.0, 1.0]),
    };
    let regions = vec![
        region("hairline", 0.0, true, true),
        region("left back", 8.0, false, false),
        region("top", 3.0, true, false),
        region("right back", 8.0, false, false),
        region("nape", 13.0, false, true),
    ];
    let template = Template::new(regions, Basis::Stated).unwrap();
    let blend = Gradient::new((cm(1.0), cm(5.0)), (percent(70.0), percent(20.0)), cm(30.0)).unwrap();
    let order: Vec<u32> = blend.asks(&template).iter().map(|region| region.order).collect();
    assert_eq!(order, [5, 2, 4, 3, 1]);
}

#[test]
fn a_bright_outline_reads_so_and_a_dark_one_is_told_what_to_change() {
    let (rest, light) = (Swatch::natural(level(5.0)), Swatch::lightened(level(5.0), level(9.0)));
    let template = Template::standard();
    let read = |outline, inside| {
        let place = |(region, of): (usize, &Region)| Placed {
            section: if of.outline { "outline" } else { "inside" },
            region,
            of_region: Share::ALL,
            lightened: percent(if of.outline { outline } else { inside }),
            rest,
            light,
        };
        let placed: Vec<_> = template.regions().iter().enumerate().map(place).collect();
        read_head(&template, &placed, &rest, Some(Wish::BrightOutline))
    };
    let bright = read(60.0, 20.0);
    assert!(bright.as_wanted == Some(true) && bright.outline_over_interior.unwrap().low() > 0.0);
    let dark = read(10.0, 40.0);
    let change = dark.change.unwrap();
    assert!(change.enough && change.wanted.percent() > 40.0 && change.lightened == percent(10.0));
}

/// Common practice: deposit lifts nothing, permanent colour three levels of natural hair and no artificial colour; where those
/// are the plan, lightener comes first, unless artificial colour is cleaned out anyway. Less than a level is within a reading.
#[rstest]
#[case::vivid(5.0, 8.0, false, Some(ProductKind::SemiPermanentColour), &[ExtraStep::PreLighten])]
#[case::deposit(6.0, 7.0, false, Some(ProductKind::QuasiPermanentColour), &[ExtraStep::PreLighten])]
#[case::within_a_reading(6.0, 6.8, false, Some(ProductKind::QuasiPermanentColour), &[])]
#[case::darker(6.0, 4.0, false, Some(ProductKind::SemiPermanentColour), &[])]
#[case::permanent_lifts(5.0, 8.0, false, Some(ProductKind::PermanentColour), &[])]
#[case::permanent_too_far(4.0, 8.0, false, Some(ProductKind::PermanentColour), &[ExtraStep::PreLighten])]
#[case::high_lift_on_dark(5.0, 8.0, false, Some(ProductKind::HighLiftTint), &[ExtraStep::PreLighten])]
#[case::cleaned(4.0, 8.0, true, Some(ProductKind::SemiPermanentColour), &[ExtraStep::CleanFirst])]
#[case::lightener(4.0, 9.0, false, Some(ProductKind::Lightener), &[])]
#[case::open(4.0, 9.0, false, None, &[])]
fn what_the_planned_colour_cannot_lift_comes_before_it(
    #[case] from: f64,
    #[case] to: f64,
    #[case] artificial: bool,
    #[case] planned: Option<ProductKind>,
    #[case] before: &[ExtraStep],
) {
    let (from, to) = (level(from), level(to));
    let wish = ClassQuestion { from, to, artificial, lightened: false, white: percent(0.0), planned };
    assert_eq!(product_class(&wish).before, before);
}

/// Common practice: warmth is put back where lightened hair goes two levels darker or more, and colour is said not to lift
/// colour only where something is to be lighter.
#[rstest]
#[case(8.0, 8.0, false)]
#[case(8.0, 9.0, false)]
#[case(8.0, 7.0, false)]
#[case(8.0, 6.0, true)]
#[case(9.0, 5.0, true)]
fn lightened_hair_gets_warmth_back_only_where_it_goes_darker(#[case] from: f64, #[case] to: f64, #[case] first: bool) {
    let (from, to) = (level(from), level(to));
    let wish = ClassQuestion { from, to, artificial: true, lightened: true, white: percent(0.0), planned: None };
    let found = product_class(&wish);
    assert_eq!(found.before.contains(&ExtraStep::PrePigment), first && found.product != ProductKind::Lightener);
    let no_lift = found.rejected.iter().any(|one| one.why == "colour does not lift colour");
    assert!(to > from || !no_lift, "{found:?}");
}

/// By hand: from 4 to 10 are three steps of two levels, so two levels between; two thirds of 3 cm are 2, the rest in halves.
#[test]
fn a_shadow_is_blended_in_even_steps() {
    let cm = |cm| Length::from_cm(cm).unwrap();
    let steps = shadow_steps(level(4.0), level(10.0), cm(3.0));
    let told: Vec<[f64; 3]> = steps.iter().map(|step| [step.from.cm(), step.to.cm(), step.level.number()]).collect();
    assert_eq!(told, [[0.0, 2.0, 4.0], [2.0, 2.5, 6.0], [2.5, 3.0, 8.0]]);
    // Two levels and less need none between.
    assert_eq!(shadow_steps(level(6.0), level(8.0), cm(3.0)).len(), 1);
    assert_eq!(shadow_steps(level(8.0), level(6.0), cm(3.0)).len(), 1);
}

/// By hand: 10 % of the hair fully inside and 5 % half way: 10 to 2.5, of five 4 and 1; at the outline none. Four among eight lie
/// behind the first, third, fifth and seventh; one among three behind the second.
#[test]
fn lowlights_go_inside_and_evenly_between_the_light_foils() {
    let light = [span("crown", 10.0, 100.0, 1, 8), span("back", 5.0, 50.0, 9, 11), span("nape line", 9.0, 0.0, 12, 20)];
    let places = lowlight_places(5, &light);
    let found: Vec<(&str, &[u32])> =
        places.iter().map(|place| (place.region.as_deref().unwrap(), place.behind_foils.as_slice())).collect();
    assert_eq!(found, [("crown", &[1, 3, 5, 7][..]), ("back", &[10][..])]);
    // With nowhere else to go they lie at the outline; more of them than of the light ones share a place.
    let edge = lowlight_places(4, &light[2..]);
    assert_eq!(edge[0].behind_foils, [13, 15, 17, 19]);
    assert_eq!(lowlight_places(4, &[span("crown", 10.0, 100.0, 1, 2)])[0].behind_foils, [1, 1, 2, 2]);
    assert!(lowlight_places(3, &[]).is_empty() && lowlight_places(0, &light).is_empty());
}

#[test]
fn a_root_shadow_is_shortest_at_the_hairline() {
    let template = Template::standard();
    let of = |name: &str| root_shadow_length(&template.regions()[template.position(name).unwrap()]).value.best();
    assert!(of("front hairline") < of("front") && of("front") < of("crown"));
    assert_eq!(Technique::BackComb.profile(cm(30.0)).value.softness(), Softness::Diffuse);
}

/// Common practice: nothing in a step before the colour is stronger than 6 %, and none of them is a matter of an hour; what
/// holds lightener is rinsed, what the colour goes over is not.
#[rstest]
#[case::pre_soften(ExtraStep::PreSoften, Some(6.0), StepEnd::Blot)]
#[case::pre_pigment(ExtraStep::PrePigment, None, StepEnd::Blot)]
#[case::clean_first(ExtraStep::CleanFirst, Some(6.0), StepEnd::Rinse)]
#[case::pre_lighten(ExtraStep::PreLighten, Some(6.0), StepEnd::Rinse)]
fn steps_before_the_colour(#[case] step: ExtraStep, #[case] strongest: Option<f64>, #[case] then: StepEnd) {
    let needs = step.needs();
    assert_eq!((needs.step, needs.then), (step, then));
    assert_eq!(needs.strongest_developer.map(|strength| strength.ww_percent()), strongest);
    // Lightening to a level is a development of its own; the others only open, fill or take out.
    let longest = if step == ExtraStep::PreLighten { 45.0 } else { 20.0 };
    assert!(needs.develop.low().min() >= 5.0 && needs.develop.high().min() <= longest);
    assert!(needs.take_up.low() < needs.take_up.high());
    assert!(
        needs.mind.iter().any(|text| text.contains("strand")) && needs.mind.iter().any(|text| text.contains("gloves"))
    );
}

/// A fifth of a region that holds a tenth of the head's hair is a fiftieth of the head.
#[test]
fn what_a_gradient_takes_is_a_part_of_the_regions_hair() {
    let (cm, percent) = (|cm| Length::from_cm(cm).unwrap(), |percent| Share::from_percent(percent).unwrap());
    let blend = Gradient::new((cm(1.0), cm(5.0)), (percent(70.0), percent(20.0)), cm(30.0)).unwrap();
    let template = Template::standard();
    for (asked, hair) in blend.asks(&template).iter().zip(template.hair()) {
        let want = hair.best().percent() * asked.taken.percent() / 100.0;
        assert!((asked.of_head.percent() - want).abs() < 1e-9, "{}: {}", asked.region, asked.of_head);
    }
}

/// Light foils of a region.
pub(super) fn span(region: &str, hair: f64, inward: f64, first: u32, last: u32) -> LightFoils<'_> {
    LightFoils { region: Some(region), hair: percent(hair), inward: percent(inward), first, last }
}

//! The head at its edges: classes of product by rules said another way, profiles as areas, outlines, shadows and grams by hand.

use super::head::{cm, level, percent};
use foilwork::{
    colour::{ProductKind, Swatch, TRANSITION_LEVELS},
    hair::{GrowthRate, MassPerLength, Tress, weeks_to_grow},
    head::{
        ClassQuestion, Curvature, ExtraStep, FilmMass, HeadLook, InFoils, OutlinePart, OverDirection, PartLine,
        PastUse, Placed, Profile, Region, Softness, Solidity, TakeUp, Technique, Template, Wish, demand, film,
        hair_by_use, line_shows_after, lowlights, product_class, read_head, read_outline, shadow_steps, take_up,
    },
    quantity::{Area, Duration, Length, Mass, Quantity, Share},
    source::Interval,
};
use rstest::rstest;

/// The rules of the guide, said the other way round, over every level: natural hair up to three lighter is permanent colour, up to four
/// from level 6 a tint, all other lightening is lightener; what is not lighter is a deposit up to 30 of 100 white hairs.
#[test]
fn every_class_of_product_by_its_rules() {
    let mut held = 0;
    for from in (2..=20).map(|half| f64::from(half) / 2.0) {
        for up in (-12..=12).map(|quarter| f64::from(quarter) / 2.0).filter(|up| (1.0..=12.0).contains(&(from + up))) {
            for white in [0.0, 30.0, 30.1, 50.0, 50.1, 100.0] {
                for (artificial, lightened) in [(false, false), (true, false), (false, true), (true, true)] {
                    for planned in [None].into_iter().chain(ProductKind::ALL.iter().copied().map(Some)) {
                        is_by_rule(from, up, white, (artificial, lightened), planned);
                        held += 1;
                    }
                }
            }
        }
    }
    assert!(held > 20_000, "{held}");
}

fn is_by_rule(from: f64, up: f64, white: f64, (artificial, lightened): (bool, bool), planned: Option<ProductKind>) {
    let wish = ClassQuestion {
        from: level(from),
        to: level(from + up),
        artificial,
        lightened,
        white: percent(white),
        planned,
    };
    let found = product_class(&wish);
    let (natural, lifts) = (!artificial && !lightened, up > 0.0);
    let want = match (lifts, natural) {
        (true, true) if up <= 3.0 => ProductKind::PermanentColour,
        (true, true) if up <= 4.0 && from >= 6.0 => ProductKind::HighLiftTint,
        (true, _) => ProductKind::Lightener,
        (false, _) if white <= 30.0 => ProductKind::QuasiPermanentColour,
        (false, _) => ProductKind::PermanentColour,
    };
    assert_eq!(found.product, want, "{wish:?}");
    let deposit = |semi: bool| match (lifts, white > 30.0, semi) {
        (true, ..) => "deposits only; it does not lift",
        (_, true, _) => "does not cover more than a third of white hair",
        (_, _, true) => "washes out sooner than the one with developer",
        _ => "a gentler class does it as well",
    };
    let permanent = match (lifts, natural, up > 3.0) {
        (true, false, _) => "colour does not lift colour",
        (true, true, true) => "lifts natural hair three levels at most",
        _ => "a gentler class does it as well",
    };
    let tint = match (lifts, natural, from < 6.0, up > 4.0) {
        (false, ..) => "nothing is to be lighter",
        (_, false, ..) => "colour does not lift colour",
        (_, _, true, _) => "needs a natural base of level 6 or lighter",
        (.., true) => "lifts four levels at most",
        _ => "a gentler class does it as well",
    };
    let lightener = if lifts { "a gentler class does it as well" } else { "nothing is to be lighter" };
    for (product, why) in [
        (ProductKind::SemiPermanentColour, deposit(true)),
        (ProductKind::QuasiPermanentColour, deposit(false)),
        (ProductKind::PermanentColour, permanent),
        (ProductKind::HighLiftTint, tint),
        (ProductKind::Lightener, lightener),
    ] {
        let told = found.rejected.iter().find(|other| other.product == product).map(|other| other.why);
        assert_eq!(told, (product != want).then_some(why), "{product}: {wish:?}");
    }
    let cannot = match planned {
        Some(ProductKind::PermanentColour) => lifts && (!natural || up > 3.0),
        Some(ProductKind::HighLiftTint) => !lifts || !natural || from < 6.0 || up > 4.0,
        Some(ProductKind::QuasiPermanentColour | ProductKind::SemiPermanentColour) => true,
        _ => false,
    };
    let cleans = artificial && !lightened && lifts;
    let mut steps = Vec::new();
    if want != ProductKind::Lightener && white > 50.0 && !artificial {
        steps.push(ExtraStep::PreSoften);
    }
    if want != ProductKind::Lightener && lightened && up <= -2.0 {
        steps.push(ExtraStep::PrePigment);
    }
    if cleans {
        steps.push(ExtraStep::CleanFirst);
    } else if cannot && up >= 1.0 {
        steps.push(ExtraStep::PreLighten);
    }
    assert_eq!(found.before, steps, "{wish:?}");
}

fn profile(covered: f64, start: f64, over: f64) -> Profile {
    Profile { covered: percent(covered).into(), start: cm(start).into(), transition: cm(over).into() }
}

/// What is painted is the area below what is covered, here summed in strips of a fiftieth of a millimetre.
#[rstest]
#[case(100.0, 5.0, 4.0, 30.0)]
#[case(60.0, 5.0, 4.0, 7.0)]
#[case(60.0, 5.0, 4.0, 9.0)]
#[case(60.0, 5.0, 4.0, 5.0)]
#[case(60.0, 5.0, 4.0, 3.0)]
#[case(80.0, 0.0, 10.0, 12.0)]
#[case(80.0, 2.0, 0.0, 12.0)]
fn what_is_painted_is_the_area_of_what_is_covered(
    #[case] covered: f64,
    #[case] start: f64,
    #[case] over: f64,
    #[case] length: f64,
) {
    let profile = profile(covered, start, over);
    let strips = (length / 0.002).round();
    let at = |strip: u32| profile.covered_at(cm((f64::from(strip) + 0.5) * length / strips)).best().fraction();
    let area = (0..strips as u32).map(at).sum::<f64>() * length / strips;
    let painted = profile.painted(cm(length).into()).best().cm();
    assert!((painted - area).abs() < 1e-3, "{painted} for {area}");
    // `covered x clamp((s - start) / transition, 0, 1)`, as documented.
    for at in [0.0, start, start + over / 4.0, start + over, start + over + 1.0] {
        let rise = if over > 0.0 { ((at - start) / over).clamp(0.0, 1.0) } else { f64::from(u8::from(at > start)) };
        assert!((profile.covered_at(cm(at)).best().percent() - covered * rise).abs() < 1e-9, "{at}");
    }
}

/// A line within half a centimetre, soft within three; 1, 2.5 and 6 cm of regrowth show above them.
#[rstest]
#[case(0.0, Softness::Line, [0.5, 1.0, 1.5])]
#[case(0.5, Softness::Line, [0.5, 1.0, 1.5])]
#[case(0.6, Softness::Soft, [1.5, 2.5, 4.0])]
#[case(3.0, Softness::Soft, [1.5, 2.5, 4.0])]
#[case(3.1, Softness::Diffuse, [4.0, 6.0, 9.0])]
fn a_start_looks_by_its_transition(#[case] over: f64, #[case] want: Softness, #[case] shows: [f64; 3]) {
    let profile = profile(100.0, 1.0, over);
    assert_eq!(profile.softness(), want);
    let rate = Interval::exact(GrowthRate::nearest(1.2));
    let [low, best, high] = shows.map(cm);
    let want = weeks_to_grow(Interval::ordered(low, best, high), rate);
    assert_eq!(line_shows_after(&profile, rate).value, want);
}

/// Full depth for two thirds, then even steps: as few as keep each within the levels that no two formulas may differ by.
#[test]
fn a_shadow_has_the_fewest_even_steps() {
    for (shadow, light) in
        [(5.0, 9.0), (3.0, 10.0), (6.0, 8.0), (6.0, 8.1), (4.0, 10.0), (7.0, 7.0), (8.0, 6.0), (1.0, 12.0)]
    {
        let steps = shadow_steps(level(shadow), level(light), cm(3.0));
        assert_eq!((steps[0].from, steps[0].level), (cm(0.0), level(shadow)));
        assert!((steps.last().unwrap().to.cm() - 3.0).abs() < 1e-9);
        assert!(steps.windows(2).all(|pair| pair[0].to == pair[1].from));
        let apart: f64 = light - shadow;
        if apart <= TRANSITION_LEVELS {
            assert_eq!(steps.len(), 1, "{shadow} to {light}");
            continue;
        }
        assert!((steps[0].to.cm() - 2.0).abs() < 1e-9, "{steps:?}");
        let (count, each) =
            (steps.len() as f64, (steps[1].to.cm() - steps[1].from.cm(), steps[1].level.number() - shadow));
        for step in &steps[1..] {
            assert!((step.to.cm() - step.from.cm() - each.0).abs() < 1e-9, "{steps:?}");
        }
        let levels: Vec<f64> = steps.iter().map(|step| step.level.number()).chain([light]).collect();
        assert!(levels.windows(2).all(|pair| (pair[1] - pair[0] - each.1).abs() < 1e-9), "{levels:?}");
        assert!(each.1 <= TRANSITION_LEVELS + 1e-9 && apart / (count - 1.0) > TRANSITION_LEVELS, "{levels:?}");
    }
}

fn part(section: &str, hair: f64, light: f64, start: f64, over: f64) -> OutlinePart<'_> {
    OutlinePart { section, hair: percent(hair), taken: percent(light).into(), profile: profile(100.0, start, over) }
}

/// From 70 of 100 light hairs an outline reads solid, up to 50 soft, unless it begins in a line more than a centimetre from the scalp.
#[rstest]
#[case(70.0, 0.5, 0.0, Some(Solidity::Solid))]
#[case(69.9, 0.5, 0.0, None)]
#[case(50.0, 1.0, 0.5, Some(Solidity::Soft))]
#[case(50.1, 1.0, 0.5, None)]
#[case(50.0, 1.1, 0.5, None)]
#[case(50.0, 1.1, 0.6, Some(Solidity::Soft))]
#[case(80.0, 4.0, 0.0, Some(Solidity::Solid))]
fn an_outline_reads_by_its_light_and_its_start(
    #[case] light: f64,
    #[case] start: f64,
    #[case] over: f64,
    #[case] want: Option<Solidity>,
) {
    let parts = [part("fringe", 20.0, light, start, over)];
    assert_eq!(read_outline(&parts, None).unwrap().reads, want);
    for wish in Solidity::ALL {
        let look = read_outline(&parts, Some(*wish)).unwrap();
        assert_eq!((look.as_wanted, look.sure), (Some(want == Some(*wish)), Some(true)));
        assert_eq!(look.changes.is_empty(), want == Some(*wish), "{look:?}");
    }
    let none = read_outline(&parts, None).unwrap();
    assert_eq!((none.as_wanted, none.sure, none.changes.len()), (None, None, 0));
    assert!(read_outline(&[part("fringe", 0.0, light, start, over)], None).is_none());
}

/// By hand: of 30 parts of hair 20 are 40 % light and 10 are 60 %: 46.7 in all. To read solid the larger goes to 70 first, by a sum of
/// 20, which is not the 23.3 that are missing, then the other. Who does all of it has what was wished.
#[test]
fn an_outline_is_changed_by_the_fewest_sections() {
    let parts = [part("nape", 10.0, 60.0, 0.5, 1.0), part("fringe", 20.0, 40.0, 0.5, 1.0)];
    let look = read_outline(&parts, Some(Solidity::Solid)).unwrap();
    assert!((look.light.best().percent() - (20.0 * 40.0 + 10.0 * 60.0) / 30.0).abs() < 1e-9);
    let told: Vec<(&str, f64, f64, bool)> = look
        .changes
        .iter()
        .map(|one| (one.section.as_str(), one.light.percent(), one.wanted.percent(), one.blend_start))
        .collect();
    assert_eq!(told, [("fringe", 40.0, 70.0, false), ("nape", 60.0, 70.0, false)]);
    assert_eq!(look.changes[0].advice(), "make 70 % of the hair in \"fringe\" light instead of 40 %");
    // 95 % light on the larger: 73.3 % of the two are light, and one change alone brings it to 50 or below.
    let bright = [part("nape", 10.0, 30.0, 0.5, 1.0), part("fringe", 20.0, 95.0, 2.0, 0.2)];
    let look = read_outline(&bright, Some(Solidity::Soft)).unwrap();
    let told: Vec<(&str, f64, bool)> =
        look.changes.iter().map(|one| (one.section.as_str(), one.wanted.percent(), one.blend_start)).collect();
    assert_eq!(told, [("fringe", 50.0, true)]);
    assert!(
        look.changes[0].advice().starts_with("make 50 % of the hair in \"fringe\" light instead of 95 %, and blend")
    );
    // Few enough are light, and it begins in a line: the start alone is blended.
    let lined = [part("fringe", 20.0, 40.0, 2.0, 0.2)];
    let change = &read_outline(&lined, Some(Solidity::Soft)).unwrap().changes[0];
    assert_eq!((change.light, change.wanted, change.blend_start), (percent(40.0), percent(40.0), true));
    assert!(change.advice().starts_with("in \"fringe\", blend its start"), "{}", change.advice());
    // Bounds that read otherwise make it unsure.
    let wide = OutlinePart { taken: Interval::ordered(percent(60.0), percent(75.0), percent(90.0)), ..parts[0] };
    assert_eq!(read_outline(&[wide], Some(Solidity::Solid)).unwrap().sure, Some(false));
    let high = OutlinePart { taken: Interval::ordered(percent(55.0), percent(60.0), percent(71.0)), ..parts[0] };
    assert_eq!(read_outline(&[high], Some(Solidity::Solid)).unwrap().sure, Some(false));
}

fn read(front: f64, behind: f64, wish: Wish) -> HeadLook {
    let (rest, light) = (Swatch::natural(level(5.0)), Swatch::lightened(level(5.0), level(9.0)));
    let template = Template::standard();
    let place = |(region, of): (usize, &Region)| Placed {
        section: if of.front { "front" } else { "behind" },
        region,
        of_region: Share::ALL,
        lightened: percent(if of.front { front } else { behind }),
        rest,
        light,
    };
    let placed: Vec<_> = template.regions().iter().enumerate().map(place).collect();
    read_head(&template, &placed, &rest, Some(wish))
}

/// A bright front is two lighter than behind: the change names the front and brings it; even is less than two either way.
#[test]
fn a_bright_front_is_brought_by_its_change() {
    let look = read(20.0, 40.0, Wish::BrightFront);
    let change = look.change.clone().unwrap();
    assert_eq!((look.as_wanted, change.section.as_str(), change.enough), (Some(false), "front", true));
    let over = read(change.wanted.percent(), 40.0, Wish::BrightFront).front_over_behind.unwrap().best();
    assert!((over - 2.0).abs() < 0.05, "{over}");
    for front in (0..=20).map(|step| f64::from(step) * 5.0) {
        for wish in Wish::ALL {
            let look = read(front, 40.0, *wish);
            let [outline, front] =
                [look.outline_over_interior, look.front_over_behind].map(|over| over.unwrap().to_array());
            let met = [0, 1, 2].map(|bound| match wish {
                Wish::BrightOutline => outline[bound] >= 2.0,
                Wish::BrightFront => front[bound] >= 2.0,
                _ => outline[bound].abs() < 2.0 && front[bound].abs() < 2.0,
            });
            assert_eq!(look.as_wanted, Some(met[1]));
            assert_eq!(look.is_sure_of(*wish), met[0] == met[1] && met[2] == met[1], "{met:?}");
            assert!(look.change.is_none() || !met[1]);
        }
    }
}

/// By hand: 10 g/cm of which half is taken along 20 cm takes twice its 100 g, and 100 cm2 of scalp 0.08 g each: 208 g, 13 g for each of 16
/// foils, at 1.3 min each 20.8 min.
#[test]
fn grams_and_minutes_of_a_section_by_hand() {
    let tress = Tress {
        hairs: Interval::exact(Quantity::nearest(10_000.0)),
        mass_per_length: Interval::exact(MassPerLength::from_g_per_cm(10.0).unwrap()),
        circumference: Interval::exact(Length::nearest(0.02)),
    };
    let (half, two) = (percent(50.0).into(), Interval::exact(TakeUp::from_g_per_g(2.0).unwrap()));
    let of = |scalp: Option<f64>, foils: Option<u32>| {
        let scalp = scalp.map(|cm2| Interval::exact(Area::from_cm2(cm2).unwrap()));
        demand(&tress, half, &profile(100.0, 2.0, 0.0), cm(22.0).into(), two, scalp, foils.map(Interval::exact))
    };
    let near = |got: f64, want: f64| assert!((got - want).abs() < 1e-9, "{got} for {want}");
    let found = of(Some(100.0), Some(16));
    near(found.hair.best().g(), 100.0);
    near(found.mix.best().g(), 208.0);
    near(found.mix_per_foil.unwrap().best().g(), 13.0);
    near(found.apply.unwrap().best().min(), 20.8);
    near(of(None, None).mix.best().g(), 200.0);
    assert_eq!((of(None, None).apply, of(None, Some(0)).mix_per_foil), (None, None));
    near(of(None, Some(0)).apply.unwrap().best().min(), 0.0);
    let _: fn(&InFoils) -> Interval<Duration> = InFoils::apply;
    assert_eq!(film().value.to_array().map(FilmMass::g_per_cm2), [0.05, 0.08, 0.12]);
}

/// In foil hair takes up more than on a brush, lightener more than colour.
#[rstest]
#[case(Technique::Weave, true, [1.2, 2.5, 4.5])]
#[case(Technique::Weave, false, [1.0, 1.5, 2.5])]
#[case(Technique::Freehand, true, [1.0, 1.5, 2.5])]
#[case(Technique::Freehand, false, [0.7, 1.0, 1.5])]
fn hair_takes_up_by_technique(#[case] technique: Technique, #[case] lightens: bool, #[case] want: [f64; 3]) {
    assert_eq!(take_up(technique, lightens).value.to_array().map(TakeUp::g_per_g), want);
}

/// By hand: of 108 g a film of 100 cm2 takes 8, and 100 g are on half of the hair along 20 cm at twice its mass: 5 g/cm. Two uses are
/// their sums, and what the film takes alone says nothing of the hair.
#[test]
fn what_was_used_before_says_how_much_hair_there_is() {
    let (half, two) = (percent(50.0).into(), Interval::exact(TakeUp::from_g_per_g(2.0).unwrap()));
    let of = |g: f64, cm2: Option<f64>| {
        let scalp = cm2.map(|cm2| Interval::exact(Area::from_cm2(cm2).unwrap()));
        PastUse::of(Mass::from_g(g).unwrap(), half, &profile(100.0, 0.0, 0.0), cm(20.0).into(), two, scalp)
    };
    let best = |uses: &[PastUse]| hair_by_use(uses).map(|hair| hair.best().g_per_cm());
    let near = |got: Option<f64>, want: f64| assert!((got.unwrap() - want).abs() < 1e-9, "{got:?} for {want}");
    near(best(&[of(108.0, Some(100.0))]), 5.0);
    near(best(&[of(100.0, None)]), 5.0);
    near(best(&[of(100.0, None), of(50.0, None)]), 150.0 / 40.0);
    // The same grams on more of the hair: a quarter of it as well, along the same length.
    let also = of(120.0, None).also_on(percent(25.0).into(), &profile(100.0, 0.0, 0.0), cm(20.0).into(), two);
    near(best(&[also]), 120.0 / 30.0);
    assert_eq!((best(&[]), best(&[of(8.0, Some(100.0))])), (None, None));
    // Least where least was used and the film was thickest: the bounds of the film are 0.05 and 0.12.
    let bounds = hair_by_use(&[of(108.0, Some(100.0))]).unwrap();
    assert!(bounds.low() < bounds.best() && bounds.best() < bounds.high());
}

/// By hand: all of the hair at 10 % a foil is 10 foils; picked a quarter fuller 8, a quarter thinner 13.3, and no foil is a third of one.
#[test]
fn lowlights_are_counted_a_quarter_either_way() {
    let of = |per_foil: f64, light: u32| {
        lowlights(level(9.0).into(), level(6.0), level(6.0), level(6.0), Some((percent(per_foil), light))).unwrap()
    };
    assert_eq!(of(10.0, 20).foils.unwrap().to_array(), [8, 10, 14]);
    assert_eq!((of(10.0, 5).light_foils_between, of(10.0, 39).light_foils_between), (Some(1), Some(3)));
    assert_eq!((of(10.0, 0).light_foils_between, of(0.0, 20).foils), (None, None));
    assert!(of(10.0, 20).leaves_no_light());
    let half = lowlights(level(9.0).into(), level(8.0), level(6.0), level(6.0), None).unwrap();
    assert!(!half.leaves_no_light());
    // A mean by light: what is taken and what stays have the brightness that is wanted.
    // Brightness by CIE 1976: lightness is 116 times its cube root, less 16.
    let bright = |number: f64| ((Swatch::natural(level(number)).lightness().best().lab_l() + 16.0) / 116.0).powi(3);
    let share = half.share.best().fraction();
    assert!((share * bright(6.0) + (1.0 - share) * bright(9.0) - bright(8.0)).abs() < 1e-9);
    let read = Interval::ordered(level(7.5), level(9.0), level(9.5));
    let unsure = lowlights(read, level(8.0), level(6.0), level(6.0), None).unwrap();
    assert_eq!(unsure.share.low(), Share::NONE, "it may be that none is needed");
}

/// A parting runs through what lies across it at the front: the middle is at 6, left of it 4.8, right 7.2.
#[rstest]
#[case(PartLine::Centre, [6.0, 0.0, 2.0, 2.0], true, true)]
#[case(PartLine::Centre, [4.0, 0.0, 2.0, 2.0], true, true)]
#[case(PartLine::Centre, [6.1, 0.0, 2.0, 2.0], true, false)]
#[case(PartLine::Centre, [3.0, 0.0, 2.9, 2.0], true, false)]
#[case(PartLine::Centre, [5.0, 0.0, 2.0, 2.0], false, false)]
#[case(PartLine::Centre, [5.0, 7.4, 2.0, 2.0], true, true)]
#[case(PartLine::Centre, [5.0, 7.5, 2.0, 2.0], true, false)]
#[case(PartLine::Left, [4.0, 0.0, 1.0, 2.0], true, true)]
#[case(PartLine::Left, [5.0, 0.0, 1.0, 2.0], true, false)]
#[case(PartLine::Right, [7.0, 0.0, 1.0, 2.0], true, true)]
#[case(PartLine::Right, [6.0, 0.0, 1.0, 2.0], true, false)]
#[case(PartLine::None, [0.0, 0.0, 12.0, 2.0], true, false)]
fn a_parting_runs_through_what_it_crosses(
    #[case] part: PartLine,
    #[case] place: [f64; 4],
    #[case] front: bool,
    #[case] want: bool,
) {
    let region = Region { front, place: Some(place), ..Template::standard().regions()[0].clone() };
    assert_eq!(part.runs_through(&region), want);
    assert!(!part.runs_through(&Region { place: None, ..region }));
}

/// By Pythagoras: 3 cm ahead and 4 out are 5 from a root below, and what has no radius is flat.
#[test]
fn a_scalp_without_a_radius_is_flat() {
    for scalp in [Curvature::Flat, Curvature::Round(cm(0.0))] {
        let combed = OverDirection { ahead: cm(3.0), out: cm(4.0), scalp };
        assert!((combed.start(cm(0.0)).cm() - 5.0).abs() < 1e-12);
        assert!((combed.start(cm(5.0)).cm() - 80.0_f64.sqrt()).abs() < 1e-12);
    }
}

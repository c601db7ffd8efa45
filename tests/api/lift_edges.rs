//! Lift at its edges: each lever by hand, the strain in words at its bounds, visits one by one, looks, starts that are read with bounds.

use super::lift::{level, min, mix, section};
use foilwork::{
    colour::{Level, LevelChange},
    hair::Texture,
    lift::{
        Belief, Booster, Cover, Lightening, Look, Next, OFTEN, Ph, Reader, Situation, Strain, StrandReading,
        TimedSection, Uptake, after_look, condition, finish_together, read_strand_book, series, strand_line,
        weeks_between,
    },
    quantity::{Duration, MassFraction, Share, Temperature},
    source::{Basis, Interval},
};
use rstest::rstest;

fn ww([low, best, high]: [f64; 3]) -> Interval<MassFraction> {
    Interval::ordered(low, best, high).map(|percent| MassFraction::from_ww_percent(percent).unwrap())
}

fn untested(situation: &Situation, start: impl Into<Interval<Level>>) -> Lightening {
    Lightening::new(&Belief::untested(), situation, start)
}

/// By hand from the guide to lift: the order in peroxide is 0.5 to 1, 0.75 at best, about 4 %; pH about 10 with pKa 11.6; what dries
/// in open air loses 0.010 (0 to 0.032) a minute beside the 0.030 that a mixture with persulfate loses anyway.
#[rstest]
#[case::half_the_strength(mix(2.0), "strength on the hair", [0.5, 0.5_f64.powf(0.75), 0.5_f64.sqrt()])]
#[case::twice_the_strength(mix(8.0), "strength on the hair", [2.0_f64.sqrt(), 2.0_f64.powf(0.75), 2.0])]
#[case::as_the_reference(mix(4.0), "strength on the hair", [1.0; 3])]
// The bounds of the strength itself, by the middle order, are wider here than those of the order.
#[case::a_strength_with_bounds(
    Situation::usual(ww([1.0, 4.0, 9.0])), "strength on the hair", [0.25_f64.powf(0.75), 1.0, 2.25_f64.powf(0.75)]
)]
#[case::no_booster(Situation { booster: Booster::None, ..mix(4.0) }, "booster", [0.1, 0.22, 0.5])]
#[case::mild(Situation { booster: Booster::Mild, ..mix(4.0) }, "booster", [0.3, 0.55, 1.0])]
#[case::persulfate(mix(4.0), "booster", [1.0; 3])]
#[case::closed(Situation { uptake: Uptake::Low, ..mix(4.0) }, "porosity", [0.5, 0.75, 1.0])]
#[case::open(Situation { uptake: Uptake::High, ..mix(4.0) }, "porosity", [1.0, 1.6, 2.7])]
#[case::neither(mix(4.0), "porosity", [1.0; 3])]
#[case::reference_ph(Situation { ph: Some(Ph::new(10.0).unwrap()), ..mix(4.0) }, "pH", [1.0; 3])]
#[case::keeps_more(Situation { booster: Booster::None, ..mix(4.0) }, "loss of oxidant to persulfate", [0.1, 0.3, 0.8])]
#[case::keeps_some(Situation { booster: Booster::Mild, ..mix(4.0) }, "loss of oxidant to persulfate", [0.3, 0.6, 1.0])]
#[case::moist(mix(4.0), "drying in open air", [1.0; 3])]
#[case::dries(
    Situation { cover: Cover::OpenAir, ..mix(4.0) }, "drying in open air", [1.0, 1.0 + 0.010 / 0.030, 1.0 + 0.032 / 0.030]
)]
// Without persulfate 0.3 of 0.030 are lost beside.
#[case::dries_alone(
    Situation { cover: Cover::OpenAir, booster: Booster::None, ..mix(4.0) }, "drying in open air",
    [1.0, 1.0 + 0.010 / 0.009, 1.0 + 0.032 / 0.009]
)]
fn every_lever_by_hand(#[case] situation: Situation, #[case] lever: &str, #[case] want: [f64; 3]) {
    let (on_pigment, on_oxidant) = (situation.on_pigment(), situation.on_oxidant());
    let found = on_pigment.iter().chain(&on_oxidant).find(|factor| factor.lever == lever).unwrap();
    for (got, want) in found.times.to_array().into_iter().zip(want) {
        assert!((got - want).abs() < 1e-9, "{lever}: {:?}", found.times);
    }
}

/// By hand: at pH 9 the share is 1 / (1 + 10^2.6), at pH 10 it is 1 / (1 + 10^1.6); to the powers 1, 0.75 and 0.5.
#[test]
fn alkali_is_a_lever_where_it_is_stated() {
    let share = |off: f64| 1.0 / (1.0 + 10.0_f64.powf(off));
    let (factors, without) =
        (Situation { ph: Some(Ph::new(9.0).unwrap()), ..mix(4.0) }.on_pigment(), mix(4.0).on_pigment());
    let times = factors.iter().find(|factor| factor.lever == "pH").unwrap().times.to_array();
    let ratio = share(2.6) / share(1.6);
    for (got, order) in times.into_iter().zip([1.0, 0.75, 0.5]) {
        assert!((got - ratio.powf(order)).abs() < 1e-9, "{times:?}");
    }
    assert!(without.iter().all(|factor| factor.lever != "pH") && factors.len() == without.len() + 1);
    for (value, fits) in [(-0.1, false), (0.0, true), (14.0, true), (14.1, false), (f64::NAN, false)] {
        assert_eq!(Ph::new(value).is_ok(), fits, "{value}");
    }
    assert!((Ph::new(8.6).unwrap().perhydroxyl_share() - 1.0 / 1001.0).abs() < 1e-12);
}

/// By hand: to the powers 0, 1 and 2 of the diameters' ratio, for fibres that are thicker or thinner than medium ones.
#[test]
fn a_fibre_slows_by_its_thickness() {
    let across = |texture: Texture| texture.diameter().value.best();
    for texture in Texture::ALL {
        let factors = Situation { texture: *texture, ..mix(4.0) }.on_pigment();
        let times = factors.iter().find(|factor| factor.lever == "thickness of the fibre").unwrap().times;
        let ratio =
            foilwork::hair::Diameter::um(across(Texture::Medium)) / foilwork::hair::Diameter::um(across(*texture));
        let mut want = [1.0, ratio, ratio * ratio];
        want.sort_by(f64::total_cmp);
        assert!(times.to_array().iter().zip(want).all(|(got, want)| (got - want).abs() < 1e-9), "{texture}: {times:?}");
    }
}

/// By hand at 4 %, where every weight is one: the root of minutes over 40. 0.8 is that of 25.6 min, 1.2 that of 57.6, 2 that of 160.
#[rstest]
#[case(25.5, Strain::Slight)]
#[case(25.6, Strain::Usual)]
#[case(57.6, Strain::Usual)]
#[case(57.7, Strain::High)]
#[case(160.0, Strain::High)]
#[case(160.2, Strain::Severe)]
fn strain_in_words_has_its_bounds(#[case] minutes: f64, #[case] want: Strain) {
    let found = condition(&[(mix(4.0), min(minutes))]);
    assert_eq!(found.strain, want);
    for index in found.index.to_array() {
        assert!((index - (minutes / 40.0).sqrt()).abs() < 1e-9, "{:?}", found.index);
    }
    // The sum counts, however it is parted.
    let parted = condition(&[(mix(4.0), min(minutes / 4.0)), (mix(4.0), min(minutes * 0.75))]);
    assert!((parted.index.best() - found.index.best()).abs() < 1e-9);
}

/// By hand: 30 min at 6 % weigh 30 times 1.5 to the power of 1, 1.3 and 2, and hair that was open before has had a half, one and two
/// usual applications of 40 min more; what opened on the way has not.
#[test]
fn strain_weighs_strength_and_what_was_open_before() {
    let open = Situation { uptake: Uptake::High, ..mix(6.0) };
    let is = |of: &[(Situation, Duration)], want: [f64; 3]| {
        let found = condition(of).index;
        assert!(found.to_array().iter().zip(want).all(|(got, want)| (got - want).abs() < 1e-9), "{found:?}");
    };
    let carried = [1.0, 1.3, 2.0].map(|order| 30.0 * 1.5_f64.powf(order));
    let [low, best, high] = carried;
    is(&[(mix(6.0), min(30.0))], carried.map(|minutes| (minutes / 40.0).sqrt()));
    let root = |minutes: f64| (minutes / 40.0).sqrt();
    is(&[(open, min(30.0))], [root(low + 20.0), root(best + 40.0), root(high + 80.0)]);
    is(&[(mix(6.0), min(0.0)), (open, min(30.0))], carried.map(root));
}

/// The weeks of the guide to several visits; beyond a usual application nothing is printed.
#[rstest]
#[case(Strain::Slight, [2.0, 4.0, 6.0], Basis::CommonPractice)]
#[case(Strain::Usual, [2.0, 4.0, 6.0], Basis::CommonPractice)]
#[case(Strain::High, [4.0, 6.0, 8.0], Basis::Assumed)]
#[case(Strain::Severe, [6.0, 8.0, 12.0], Basis::Assumed)]
fn weeks_follow_the_strain(#[case] strain: Strain, #[case] want: [f64; 3], #[case] basis: Basis) {
    let found = weeks_between(strain);
    assert_eq!((found.value.to_array().map(|weeks| weeks.weeks()), found.basis), (want, basis));
    assert_eq!(found.citation.is_some(), basis == Basis::CommonPractice);
}

/// Each visit is one application more on what all before it left; it ends with the first that is sure enough.
#[test]
fn visits_are_applications_one_after_the_other() {
    let mut several = 0;
    for (percent, start, target, each, before) in [
        (3.0, 2.0, 9.0, 30.0, 0.0),
        (4.0, 3.0, 8.5, 25.0, 20.0),
        (6.0, 5.0, 8.0, 45.0, 0.0),
        (2.0, 2.0, 10.0, 20.0, 10.0),
    ] {
        let (situation, each, before) = (mix(percent), min(each), min(before));
        let read = Interval::ordered(level(start - 0.5), level(start), level(start + 0.5));
        let mut on = untested(&situation, read);
        let mut done = Vec::new();
        if before > Duration::ZERO {
            on = on.after(before);
            done.push((situation, before));
        }
        let visits = series(&on, level(target), each, OFTEN, 4);
        let (mut weeks, mut strain) = ([0.0; 3], None);
        for (place, visit) in visits.iter().enumerate() {
            done.push((situation, each));
            let taken = condition(&done);
            assert!((visit.strain_index.best() - taken.index.best()).abs() < 1e-9 && visit.strain == taken.strain);
            assert_eq!(visit.level, on.level_after(each));
            assert_eq!(visit.chance, on.chance_between(level(target), each));
            assert_eq!(visit.chance.best() >= OFTEN && place < 3, place + 1 == visits.len() && place < 3);
            let wait = strain.map(weeks_between);
            assert_eq!((visit.after, visit.after_basis), (wait.map(|wait| wait.value), wait.map(|wait| wait.basis)));
            if let Some(wait) = wait {
                weeks.iter_mut().zip(wait.value.to_array()).for_each(|(sum, more)| *sum += more.weeks());
                // By the first wait: as many times its weeks are as many times its centimetres.
                let (first, grown) = (visits[1].after.unwrap(), visits[1].regrowth.unwrap());
                let want = grown.best().cm() * weeks[1] / first.best().weeks();
                assert!((visit.regrowth.unwrap().best().cm() - want).abs() < 1e-9);
                several += 1;
            } else {
                assert!(visit.regrowth.is_none());
            }
            strain = Some(visit.strain);
            on = on.after(each);
        }
    }
    assert!(several > 4, "{several}");
    assert!(series(&untested(&mix(4.0), level(4.0)), level(8.0), min(30.0), OFTEN, 0).is_empty());
}

/// A start that is read with bounds is a time from each of the three: the earliest of all, the latest of all, and no latest where one
/// of them never gets there. The chance is that from each.
#[test]
fn a_time_holds_for_every_start_that_was_read() {
    let mut never = 0;
    for (target, ww) in [(6.0, 4.0), (7.0, 6.0), (8.0, 3.0), (9.0, 4.0), (5.2, 2.0)] {
        let starts = [4.5, 5.0, 5.5].map(level);
        let of = |start: Interval<Level>| untested(&mix(ww), start);
        let read = of(Interval::ordered(starts[0], starts[1], starts[2]));
        let (found, each) = (read.time_to(level(target)), starts.map(|start| of(start.into()).time_to(level(target))));
        assert_eq!(found.median, each[1].median);
        let early = each.iter().filter_map(|time| time.early).map(Duration::min).reduce(f64::min);
        assert_eq!(found.early.map(Duration::min), early);
        let late = each.iter().map(|time| time.late.map(Duration::min)).reduce(|a, b| Some(a?.max(b?))).flatten();
        assert_eq!(found.late.map(Duration::min), late);
        never += u32::from(late.is_none());
        let chances = read.chance_between(level(target), min(30.0)).to_array();
        let want = starts.map(|start| of(start.into()).chance_by(level(target), min(30.0)));
        assert_eq!(chances, want);
    }
    assert!((1..5).contains(&never), "{never}");
    // Hair that is there already waits for nothing, and is there for certain; without mixture nothing ever is.
    let there = untested(&mix(4.0), level(7.0));
    assert_eq!([there.time_to(level(7.0)).early, there.time_to(level(6.0)).late], [Some(Duration::ZERO); 2]);
    assert_eq!(there.chance_by(level(7.0), Duration::ZERO), Share::ALL);
    assert_eq!(there.chance_by(level(7.1), Duration::ZERO), Share::NONE);
}

fn look(at: f64, seen: f64, target: f64, longest: Option<f64>) -> Look {
    Look {
        longest: longest.map(min),
        situation: mix(4.0),
        start: level(4.0),
        target: level(target),
        at: min(at),
        seen: level(seen),
        reader: Reader::Eye,
        limit: min(45.0),
    }
}

/// Within a quarter of a level is there; at the limit a fresh mix is worth it from 50 of 100 cases; below 20 of 100 by the limit it is
/// said that it will hardly be reached. What follows from the forecast is worked out again from what the look taught.
#[test]
fn a_look_decides_by_what_it_taught() {
    let (mut fresh, mut rest, mut hardly, mut well) = (0, 0, 0, 0);
    for at in [5.0, 15.0, 30.0, 44.9, 45.0, 50.0] {
        for seen in [4.0, 4.5, 5.0, 5.5, 6.0, 6.5, 7.0, 7.5, 7.74, 7.75, 8.0, 8.5] {
            let found = after_look(&Belief::untested(), &look(at, seen, 8.0, None));
            let lightening = Lightening::new(&found.belief, &mix(4.0), level(4.0));
            assert_eq!(found.chance_by_limit, lightening.chance_by(level(8.0), min(45.0)));
            assert_eq!(found.reached, lightening.time_to(level(8.0)));
            if seen >= 7.75 {
                assert_eq!(found.next, Next::Rinse, "{at}: {seen}");
            } else if at >= 45.0 {
                let chance = lightening.after(min(at)).chance_by(level(8.0), min(45.0));
                let worth = chance.percent() >= 50.0;
                assert_eq!(found.next, if worth { Next::FreshMix } else { Next::NextVisit }, "{at}: {seen}");
                assert_eq!(found.why.contains("even a fresh mix"), !worth);
                *(if worth { &mut fresh } else { &mut rest }) += 1;
            } else {
                assert_eq!(found.next, Next::GoOn, "{at}: {seen}");
                let few = found.chance_by_limit.percent() < 20.0;
                assert_eq!(found.why.contains("will hardly be reached"), few, "{}", found.why);
                *(if few { &mut hardly } else { &mut well }) += 1;
            }
            // Every five minutes, and the limit is a look of its own.
            let again = (found.next == Next::GoOn).then(|| (at + 5.0).min(45.0));
            assert_eq!(found.look_again.map(Duration::min), again, "{at}: {seen}");
        }
    }
    assert!(fresh > 2 && rest > 2 && hardly > 2 && well > 2, "{fresh} {rest} {hardly} {well}");
}

/// Two readings by eye differ by 1.96 times the root of two times 0.35, 0.97 levels, in 95 of 100 cases, by an instrument by 0.33: what is
/// darker by more is no reading of lightener.
#[rstest]
#[case(Reader::Eye, 0.97, true)]
#[case(Reader::Eye, 0.98, false)]
#[case(Reader::Instrument, 0.33, true)]
#[case(Reader::Instrument, 0.34, false)]
fn what_became_darker_is_told(#[case] reader: Reader, #[case] darker: f64, #[case] taken: bool) {
    let (guest, product) = (Some("J-014".to_owned()), None);
    let (before, after) = (level(5.0), level(5.0 - darker));
    let reading = StrandReading { situation: mix(4.0), time: min(30.0), before, after, reader, guest, product };
    let book = read_strand_book(&(strand_line(None) + &strand_line(Some(&reading))));
    assert_eq!((book.readings.len(), book.problems.len()), (usize::from(taken), usize::from(!taken)));
}

/// Other work between two applications is waited for, no strand is on for longer than it may be, each reaches its target within the
/// window before the rinse, and what a section reaches is said for its middle strand.
#[test]
fn sections_that_finish_together_keep_their_terms() {
    for busy in [0.0, 7.0, 15.0] {
        let tolerance = LevelChange::from_levels(2.0).unwrap();
        let second = TimedSection { busy_before: min(busy), tolerance, ..section(5.0, 6.5, 8.0, 60.0) };
        let sections = [TimedSection { tolerance, ..section(4.0, 6.0, 12.0, 60.0) }, second];
        let found = finish_together(&sections, min(10.0)).unwrap();
        assert_eq!(found.short.levels(), 0.0);
        let [first, then] = found.sections.as_slice() else { panic!("two") };
        assert_eq!(first.begin, Duration::ZERO);
        assert!(then.begin.min() >= 12.0 + busy - 1e-6, "{busy}: {then:?}");
        for (section, choice) in sections.iter().zip(&found.sections) {
            let strength = Situation { on_hair: section.on_hair[choice.strength], ..section.situation };
            let forecast = Lightening::new(&section.belief, &strength, section.start);
            let median = forecast.time_to(section.target).median.unwrap().min();
            let reaches = choice.begin.min() + section.apply.min() / 2.0 + median;
            assert!((choice.reaches.min() - reaches).abs() < 1e-6, "{choice:?}");
            let early = found.rinse.min() - choice.reaches.min();
            assert!((-1e-6..=found.window.min() + 1e-6).contains(&early), "{early}");
            assert!(found.rinse.min() - choice.begin.min() <= 60.0 + 1e-6);
        }
    }
}

/// What no strength reaches in time is fallen short of by the fewest levels: the middle strand of the strongest mixture, begun as early
/// as the first strand may, which is half an application less than its longest.
#[rstest]
#[case(2.0, 9.0, 10.0, 30.0)]
#[case(3.0, 9.5, 20.0, 45.0)]
#[case(4.0, 9.0, 6.0, 25.0)]
fn a_target_is_fallen_short_of_by_the_fewest_levels(
    #[case] start: f64,
    #[case] target: f64,
    #[case] apply: f64,
    #[case] longest: f64,
) {
    let found = finish_together(&[section(start, target, apply, longest)], min(10.0)).unwrap();
    let best = untested(&mix(6.0), level(start)).level_after(min(longest - apply / 2.0)).best();
    // Halved to within 0.005 levels.
    assert!((found.short.levels() - (target - best.number())).abs() < 0.01, "{:?} for {best}", found.short);
    assert!((found.rinse.min() - longest).abs() < 1.0 && found.sections[0].strength == 2, "{found:?}");
}

/// Mixture at rest in a warm and in a cold room: a temperature below the reference slows by as much as one above it hastens.
#[test]
fn cold_slows_as_warmth_hastens() {
    let heat = |celsius: f64| {
        let situation = Situation { temperature: Temperature::from_celsius(celsius).unwrap(), ..mix(4.0) };
        let factors = situation.on_pigment();
        factors.iter().find(|factor| factor.lever == "temperature").unwrap().times
    };
    // By hand at 15 C: 1 / 298.15 - 1 / 288.15 with 30, 50 and 75 kJ/mol and 8.314 462 618 J/(mol K).
    let times = |kj: f64| (kj * 1000.0 / 8.314_462_618 * (1.0 / 298.15 - 1.0 / 288.15)).exp();
    let (cold, want) = (heat(15.0).to_array(), [times(75.0), times(50.0), times(30.0)]);
    assert!(cold.iter().zip(want).all(|(got, want)| (got - want).abs() < 1e-9), "{cold:?}");
    assert_eq!(heat(25.0).to_array(), [1.0; 3]);
}

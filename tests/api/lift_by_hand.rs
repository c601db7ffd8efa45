//! Lift worked by hand: what its interval is made of, every sentence of a look and of the advice, a book line by line, sections to the minute.

use super::lift::{level, min, mix, section};
use foilwork::{
    colour::{Level, LevelChange},
    lift::{
        Advice, Belief, Experience, FinishTogether, Lightening, Look, Next, Ph, Reader, Situation, StrandReading,
        TimedSection, advice, after_look, condition, finish_together, read_strand_book, series, strand_json_line,
        strand_line,
    },
    quantity::{Duration, MassFraction, Share},
    source::{Basis, Interval},
};
use rstest::rstest;

/// The quantile of the normal distribution that leaves a tenth above it: any table.
const Z80: f64 = 1.281_551_565_544_600_4;

fn untested(percent: f64, start: f64) -> Lightening {
    Lightening::new(&Belief::untested(), &mix(percent), level(start))
}

fn bounds(level: Interval<Level>) -> [f64; 3] {
    level.to_array().map(Level::number)
}

/// Without a reading the interval reaches two levels either way, a fifth of a level more each minute of the first ten; minutes of an
/// application before count. On hair of 9 the spread of the rates is worth less than a third of a level by then, by hand.
#[rstest]
#[case(0.0, 1.0, 0.2)]
#[case(0.0, 2.5, 0.5)]
#[case(0.0, 5.0, 1.0)]
#[case(0.0, 7.0, 1.4)]
#[case(3.0, 0.0, 0.6)]
#[case(3.0, 2.0, 1.0)]
#[case(2.0, 4.0, 1.2)]
fn what_nobody_tested_is_wider_from_minute_to_minute(#[case] before: f64, #[case] now: f64, #[case] want: f64) {
    let lightening = untested(4.0, 9.0).after(min(before));
    let [low, best, high] = bounds(lightening.level_after(min(now)));
    assert!((high - best - want).abs() < 1e-9, "{low} {best} {high}");
    // It gets no darker than it was.
    assert_eq!(low, 9.0);
}

/// By hand from 5 after 30 min: 0.81 of a dose leaves 0.47 of the pigment, and a slow guest's 0.30 leaves 0.75, which is 1.5 levels: two count.
#[test]
fn two_levels_either_way_count_from_an_application_before_on() {
    let [low, best, _] = bounds(untested(4.0, 5.0).after(min(30.0)).level_after(Duration::ZERO));
    let dose = 0.041 / 0.030 * (1.0 - (-0.9_f64).exp());
    let want = 5.0 + 5.2 * (1.0 - 0.91 * (-dose).exp() - 0.09 * (-0.45 * dose).exp());
    assert!((best - want).abs() < 1e-9 && (best - low - 2.0).abs() < 1e-9, "{low} {best} for {want}");
}

/// Nothing gets lighter than what the product reaches on nine of ten heads, 10.2 and 1.28 times 0.4, nor than the scale; hair that is
/// lighter already stays as it is.
#[rstest]
#[case(5.0, [None, None, Some(10.2 + Z80 * 0.4)])]
#[case(11.0, [Some(11.0), Some(11.0), Some(11.0 + Z80 * 0.4)])]
#[case(11.8, [Some(11.8), Some(11.8), Some(12.0)])]
fn no_bound_lies_beyond_the_end(#[case] start: f64, #[case] want: [Option<f64>; 3]) {
    let found = bounds(untested(8.0, start).level_after(min(600.0)));
    for (found, want) in found.into_iter().zip(want) {
        assert!(want.is_none_or(|want| (found - want).abs() < 1e-9), "{found} for {want:?}");
    }
}

/// In the first instant the level rises by the rate times the share of the pigment that is there: 0.91 and 0.45 of 0.09, of 6.2 levels.
#[rstest]
#[case(2e-7)]
#[case(1e-9)]
#[case(1e-4)]
fn the_first_instant_is_straight(#[case] minutes: f64) {
    let rise = untested(4.0, 4.0).level_after(min(minutes)).best().number() - 4.0;
    let want = 6.2 * (0.91 + 0.45 * 0.09) * 0.041 * minutes;
    // The next term of the series is less than the share of a millionth, at 1e-4 min; the numbers about 4 end 16 digits behind.
    assert!((rise - want).abs() < 4e-15 + 4e-6 * want, "{rise} for {want}");
}

/// A level is measured where strands were read, and assumed where none were.
#[rstest]
#[case(0, Basis::Assumed)]
#[case(1, Basis::Measured)]
#[case(2, Basis::Measured)]
fn a_trail_says_what_a_level_rests_on(#[case] readings: usize, #[case] want: Basis) {
    let trail = untested(4.0, 4.0).trail(min(40.0), readings);
    assert_eq!((trail.basis, trail.inputs[4].value.as_str()), (want, readings.to_string().as_str()));
    // Without a pH five levers on the pigment and two on the oxidant, after five facts.
    assert_eq!(
        (trail.inputs.len(), trail.inputs.iter().filter(|one| one.what.starts_with("lever: ")).count()),
        (12, 7)
    );
}

fn reading(time: f64, before: f64, after: f64, reader: Reader) -> StrandReading {
    let (before, after) = (level(before), level(after));
    StrandReading { situation: mix(4.0), time: min(time), before, after, reader, guest: None, product: None }
}

/// What is known has less than four tenths of the variance that it had, by the bounds of rate, loss and end that the belief itself says;
/// each sentence whole.
#[test]
fn advice_says_what_is_known_in_one_of_four_sentences() {
    let untested = Belief::untested();
    let log = |of: Interval<f64>| (of.high() / of.low()).ln();
    let end = |of: &Belief| of.ceiling().high().number() - of.ceiling().low().number();
    let is_known = |now: f64, first: f64| (now / first).powi(2) < 0.4;
    let forecast = |at: f64| Lightening::new(&untested, &mix(4.0), level(4.0)).level_after(min(at)).best().number();
    let mut seen = [0; 5];
    for reader in [Reader::Eye, Reader::Instrument] {
        for times in [
            vec![],
            vec![1.0],
            vec![30.0],
            vec![10.0, 30.0],
            vec![15.0, 600.0],
            vec![600.0],
            vec![30.0, 60.0, 90.0],
            vec![5.0, 15.0, 30.0, 60.0, 120.0, 240.0],
            vec![5.0; 9],
            vec![45.0; 9],
        ] {
            for often in [1, 4, 16] {
                let read = |at: &f64| reading(*at, 4.0, forecast(*at), reader);
                let book: Vec<_> = std::iter::repeat_n(&times, often).flatten().map(read).collect();
                let belief = untested.after_readings(&book);
                let rate = is_known(log(belief.pigment_per_min()), log(untested.pigment_per_min()));
                let loss = is_known(log(belief.oxidant_per_min()), log(untested.oxidant_per_min()));
                let top = is_known(end(&belief), end(&untested));
                let (place, want) = match (book.is_empty(), rate, loss || top) {
                    (true, ..) => {
                        (0, "no strand of this hair is read: rate, life of the mixture and end point are all assumed")
                    }
                    (_, true, true) => (1, "the rate and where it ends are pinned down by the readings"),
                    (_, true, false) => (
                        2,
                        "the rate is pinned down; whether the pigment or the oxidant runs out first is not (read a second strand at another time)",
                    ),
                    _ => (3, "the readings have hardly pinned down the rate yet (read another strand)"),
                };
                seen[place] += 1;
                seen[4] += usize::from(rate && loss != top);
                let Advice { known, width_now, width_then, read_at } =
                    advice(&belief, &mix(4.0), level(4.0), min(40.0));
                assert_eq!(known, want, "{times:?} {often} times");
                assert!(width_then <= width_now + 1e-9 && read_at.min() <= 40.0, "{width_now} {width_then} {read_at}");
            }
        }
    }
    assert!(seen.iter().all(|count| *count > 0), "{seen:?}");
}

fn look(at: f64, seen: f64, longest: Option<f64>) -> Look {
    let (situation, reader) = (mix(4.0), Reader::Eye);
    let (start, target, limit) = (level(4.0), level(8.0), min(45.0));
    Look { situation, start, target, at: min(at), seen: level(seen), reader, limit, longest: longest.map(min) }
}

fn hundred(chance: Share) -> String {
    format!("{:.0}", chance.percent())
}

/// Every sentence of a look whole; its chances are those of the forecast that the look itself changed.
#[test]
fn a_look_tells_why_in_one_sentence() {
    let told = |look: Look| {
        let found = after_look(&Belief::untested(), &look);
        let here = Lightening::new(&found.belief, &look.situation, look.start);
        let fresh = here.after(look.at).chance_by(look.target, look.limit);
        (found.next, found.why, hundred(found.chance_by_limit), hundred(fresh))
    };
    let (next, why, chance, _) = told(look(20.0, 7.0, None));
    assert_eq!((next, why), (Next::GoOn, format!("level 8 is reached by the limit in {chance} of 100 cases")));
    let (next, why, chance, _) = told(look(30.0, 5.0, None));
    let hardly = format!("level 8 will hardly be reached by the limit ({chance} of 100 cases): decide there");
    assert_eq!((next, why.replace("under 1", &chance)), (Next::GoOn, hardly));
    let (next, why, _, fresh) = told(look(45.0, 7.0, None));
    let again = format!(
        "the limit of 45 min is reached at level 7; a fresh mix of the same strength reaches level 8 in {fresh} of 100 cases"
    );
    assert_eq!((next, why), (Next::FreshMix, again));
    let (next, why, _, fresh) = told(look(45.0, 5.0, None));
    let rest = format!(
        "the limit of 45 min is reached at level 5; even a fresh mix reaches level 8 in {fresh} of 100 cases only"
    );
    assert_eq!((next, why), (Next::NextVisit, rest));
    // Five minutes of 60 lie between 55 and the limit, a quarter of an hour between 45 and it.
    for (at, left, again) in [(45.0, 15, 50), (50.0, 10, 55), (57.0, 3, 60)] {
        let (next, why, ..) = told(look(at, 7.0, Some(60.0)));
        let leave = format!(
            "the planned time is up; {left} min are left of the longest that the product allows: look again at minute {again}, and \
             rinse at minute 60 at the latest, whatever the level"
        );
        assert_eq!((next, why), (Next::GoOn, leave));
    }
    let (next, why, ..) = told(look(60.0, 7.0, Some(60.0)));
    assert!(next != Next::GoOn && why.starts_with("the limit of 60 min is reached at level 7; "), "{why}");
}

/// A line of a book as an object: every field that is there by its column, text as text and numbers as numbers, the end left to the brace.
#[test]
fn an_object_of_a_book_has_every_field_but_the_end() {
    let situation = Situation { ph: Some(Ph::new(9.8).unwrap()), ..mix(4.0) };
    let told = StrandReading {
        situation,
        guest: Some("12".to_owned()),
        product: Some("Foam Line powder".to_owned()),
        ..reading(30.0, 4.0, 8.5, Reader::Instrument)
    };
    let rest = "\"before_level\":4,\"after_level\":8.5,\"min\":30,\"on_hair_low_ww_percent\":4,\"on_hair_ww_percent\":4,\
                \"on_hair_high_ww_percent\":4,\"temperature_c\":25,\"booster\":\"persulfate\"";
    let hair = "\"uptake\":\"normal\",\"texture\":\"medium\",\"cover\":\"foil\"";
    let whole = format!(
        "{{\"guest\":\"12\",\"product\":\"Foam Line powder\",{rest},\"ph\":9.8,{hair},\"reader\":\"instrument\"}}\n"
    );
    assert_eq!(strand_json_line(&told), whole);
    assert_eq!(read_strand_book(&whole).readings, std::slice::from_ref(&told));
    let bare = reading(30.0, 4.0, 8.5, Reader::Eye);
    assert_eq!(strand_json_line(&bare), format!("{{{rest},{hair},\"reader\":\"eye\"}}\n"));
    // None of these fields is needed to be said as nothing, and nothing is what they then say.
    let null = strand_json_line(&bare).replacen('{', "{\"guest\":null,\"product\":\" \",\"ph\":null,", 1);
    assert_eq!(read_strand_book(&null).readings, [bare]);
}

const OBJECT: &str = "{\"before_level\":4,\"after_level\":8,\"min\":30,\"on_hair_low_ww_percent\":4,\"on_hair_ww_percent\":4,\
                      \"on_hair_high_ww_percent\":4,\"temperature_c\":25,\"booster\":\"persulfate\",\"uptake\":\"normal\",\
                      \"texture\":\"medium\",\"cover\":\"foil\",\"reader\":\"eye\"}";

/// Each field of a line that cannot be read is named with what is there and the way out; the lines about it count.
#[rstest]
#[case::list("{", "[{", "a list cannot be appended to: write one object in each line")]
#[case::torn(
    "\"eye\"}",
    "\"ey",
    "torn: the line has no end (the program was stopped while it was written; enter it again)"
)]
#[case::field(
    "\"min\"",
    "\"minutes\"",
    "unknown field \"minutes\": the fields are guest, product, before_level, after_level, min, on_hair_low_ww_percent, on_hair_ww_percent, \
     on_hair_high_ww_percent, temperature_c, booster, ph, uptake, texture, cover, reader"
)]
#[case::missing("\"min\":30,", "", "min: \"\" is not a number (write it with a point)")]
#[case::word("\"min\":30", "\"min\":\"30,5\"", "min: \"30,5\" is not a number (write it with a point)")]
#[case::before("level\":4", "level\":true", "before_level: \"true\" is not a number (write it with a point)")]
#[case::ph("{", "{\"ph\":14.5,", "ph: invalid pH (got 14.5): must be from 0 to 14")]
#[case::no_ph("{", "{\"ph\":\"basic\",", "ph: \"basic\" is not a number (write it with a point)")]
#[case::uptake(
    "normal",
    "norml",
    "uptake: unknown uptake \"norml\": give one of low, normal, high (did you mean normal?)"
)]
#[case::texture(
    "medium",
    "mediun",
    "texture: unknown texture \"mediun\": give one of fine, medium, coarse (did you mean medium?)"
)]
#[case::cover("foil", "foli", "cover: unknown cover \"foli\": give one of foil, open-air (did you mean foil?)")]
#[case::reader("eye", "eys", "reader: unknown reader \"eys\": give one of eye, instrument (did you mean eye?)")]
#[case::darker(
    "\"after_level\":8",
    "\"after_level\":2",
    "after_level: level 2 is darker than level 4 before: lightener makes it lighter (swap the two?)"
)]
fn a_line_that_cannot_be_read_says_why(#[case] from: &str, #[case] to: &str, #[case] want: &str) {
    let line = OBJECT.replacen(from, to, 1);
    assert_ne!(line, OBJECT);
    let book = read_strand_book(&format!("\u{feff}{OBJECT}\n\n  {line}\n{OBJECT}\n"));
    let told: Vec<_> = book.problems.iter().map(|one| (one.line, one.message.as_str())).collect();
    assert_eq!(told, [(3, want)]);
    assert_eq!(book.readings, [reading(30.0, 4.0, 8.0, Reader::Eye), reading(30.0, 4.0, 8.0, Reader::Eye)]);
}

/// A line of text that is no object, and strengths in the wrong order.
#[test]
fn what_is_no_object_and_bounds_out_of_order_are_told() {
    let told = |line: &str| read_strand_book(line).problems.iter().map(|one| one.message.clone()).collect::<Vec<_>>();
    let [object] = told("{\"min\" 30}").try_into().unwrap();
    assert!(object.starts_with("not an object of JSON: "), "{object}");
    let [order] = told(&OBJECT.replacen("low_ww_percent\":4", "low_ww_percent\":5", 1)).try_into().unwrap();
    assert!(order.starts_with("on_hair_ww_percent: "), "{order}");
    let [cold] = told(&OBJECT.replacen("\"temperature_c\":25", "\"temperature_c\":-400", 1)).try_into().unwrap();
    assert!(cold.starts_with("temperature_c: "), "{cold}");
    let [long] = told(&OBJECT.replacen("\"min\":30", "\"min\":-1", 1)).try_into().unwrap();
    assert!(long.starts_with("min: "), "{long}");
}

/// Only 300 products are told apart: those that are read most, and of equals the first by name. By hand: of 300 powders with three readings
/// each all stay; with a 301st that has four, though its name is the last, the last of the powders goes.
#[test]
fn of_too_many_products_those_read_most_are_told_apart() {
    let of = |name: String| StrandReading { product: Some(name), ..reading(30.0, 4.0, 7.0, Reader::Eye) };
    let mut book: Vec<_> = (0..900).map(|i| of(format!("powder {:03}", i % 300))).collect();
    let readings = |book: &[StrandReading]| {
        let experience = Experience::from_readings(book);
        // Of a guest without readings those with the product count.
        ["powder 000", "powder 298", "powder 299", "zinc-free"]
            .map(|name| experience.of(Some("J-9"), Some(name)).readings())
    };
    assert_eq!(readings(&book), [3, 3, 3, 0]);
    book.extend((0..4).map(|_| of("zinc-free".to_owned())));
    assert_eq!(readings(&book), [3, 3, 0, 4]);
}

/// One strength for each of two sections. By hand: with no window both would reach their targets at the rinse, so the first begins so many
/// minutes before it as half its application and its median, and the second after it; the window is what that lacks.
#[rstest]
#[case(6.0, 7.0, 4.0, 7.0, 10.0, 0.0)]
#[case(6.0, 6.5, 4.0, 7.0, 6.0, 4.0)]
#[case(5.0, 5.5, 5.0, 7.0, 8.0, 3.0)]
fn a_window_is_widened_by_as_many_minutes_as_it_lacks(
    #[case] first: f64,
    #[case] to_first: f64,
    #[case] then: f64,
    #[case] to_then: f64,
    #[case] apply: f64,
    #[case] busy: f64,
) {
    let tolerance = LevelChange::from_levels(5.0).unwrap();
    let on_hair = vec![Interval::exact(MassFraction::from_ww_percent(4.0).unwrap())];
    let of =
        |start, target| TimedSection { tolerance, on_hair: on_hair.clone(), ..section(start, target, apply, 200.0) };
    let sections = [of(first, to_first), TimedSection { busy_before: min(busy), ..of(then, to_then) }];
    let [one, other] = [(first, to_first), (then, to_then)].map(|(start, target)| minutes_to(start, target));
    let lacks = other - one + apply + busy;
    assert!(lacks > 1.0, "the window matters");
    let found = finish_together(&sections, min(1.0)).unwrap();
    assert!((0.0..0.0101).contains(&(found.window.min() - lacks)), "{} for {lacks}", found.window);
    assert!((found.rinse.min() - (apply + busy + apply / 2.0 + other)).abs() < 0.011, "{found:?}");
    assert_eq!((found.sections[0].begin, found.short.levels()), (Duration::ZERO, 0.0));
    assert!((found.sections[1].begin.min() - apply - busy).abs() < 0.011, "{found:?}");
    // Asked for a window that is just wide enough, and for one that is not.
    let asked = |minutes: f64| finish_together(&sections, min(minutes)).unwrap().window.min();
    assert_eq!(asked(lacks + 0.02), lacks + 0.02);
    assert!(asked(lacks - 0.02) > lacks - 0.001);
}

/// The median time by halving the law as the guide to lift prints it, with 0.041 and 0.030 per minute and 10.2.
fn minutes_to(start: f64, target: f64) -> f64 {
    let (mut low, mut high) = (0.0, 400.0);
    for _ in 0..60 {
        let middle: f64 = f64::midpoint(low, high);
        let dose = 0.041 / 0.030 * (1.0 - (-0.030 * middle).exp());
        let level = start + (10.2 - start) * (1.0 - 0.91 * (-dose).exp() - 0.09 * (-0.45 * dose).exp());
        if level < target { low = middle } else { high = middle }
    }
    high
}

/// A section alone finishes in the very minute that it reaches its target, without a window to wait in; what is there already is rinsed when
/// all of it is on.
#[test]
fn a_section_alone_needs_no_window() {
    let on_hair = vec![Interval::exact(MassFraction::from_ww_percent(4.0).unwrap())];
    let alone = |start: f64, target: f64, tolerance: f64| {
        let tolerance = LevelChange::from_levels(tolerance).unwrap();
        let one = TimedSection { on_hair: on_hair.clone(), tolerance, ..section(start, target, 10.0, 90.0) };
        finish_together(&[one], Duration::ZERO).unwrap()
    };
    let FinishTogether { rinse, window, short, .. } = alone(5.0, 7.0, 5.0);
    assert_eq!((window, short.levels()), (Duration::ZERO, 0.0));
    assert!((rinse.min() - 5.0 - minutes_to(5.0, 7.0)).abs() < 1e-6, "{rinse}");
    // Its middle strand is there after half of the ten minutes, and waits for the other half.
    let there = alone(7.0, 7.0, 5.0);
    assert!((0.0..0.011).contains(&(there.window.min() - 5.0)) && there.short.levels() == 0.0, "{there:?}");
    assert!((there.rinse.min() - 10.0).abs() < 0.011 && there.sections[0].reaches.min() == 5.0, "{there:?}");
}

/// No section is more than its tolerance beyond its target at the rinse, by the median of its middle strand, whatever that costs.
#[test]
fn no_section_is_overdone_by_more_than_its_tolerance() {
    let mut binding = 0;
    for tolerance in [0.05, 0.2, 0.5, 1.0] {
        for (first, then, apply) in [(5.0, 6.0, 4.0), (4.0, 6.5, 12.0), (6.0, 4.0, 10.0), (3.0, 6.5, 20.0)] {
            let tolerance = LevelChange::from_levels(tolerance).unwrap();
            let of = |start: f64| TimedSection { tolerance, ..section(start, 7.0, apply, 60.0) };
            let Ok(found) = finish_together(&[of(first), of(then)], min(15.0)) else { continue };
            for choice in &found.sections {
                let over = choice.level.best().number() - 7.0 - tolerance.levels();
                assert!(over < 1e-6, "{tolerance:?}, {first} and {then}: {over}");
                binding += usize::from(over > -1e-3);
            }
        }
    }
    assert!(binding > 1, "{binding}");
}

/// What was begun with counts from its first minute: by hand the root of the sum over 40, whether or not anything was on before.
#[test]
fn a_series_counts_every_minute_before_it() {
    for (before, each) in [(0.0, 40.0), (0.5, 40.0), (25.0, 15.0)] {
        let start = untested(4.0, 3.0).after(min(before));
        let visit = series(&start, level(12.0), min(each), Share::ALL, 1)[0];
        let want = ((before + each) / 40.0_f64).sqrt();
        assert!((visit.strain_index.best() - want).abs() < 1e-9, "{:?} for {want}", visit.strain_index);
    }
    assert_eq!(condition(&[]).index.to_array(), [0.0; 3]);
    assert!(strand_line(None).starts_with("guest,product,before_level,"));
}

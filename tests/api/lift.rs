//! What the lift room says in words: looks, strand books, questions, condition.

use foilwork::{
    colour::{Level, LevelChange},
    hair::Texture,
    lift::{
        Belief, CannotFinish, Cover, Lightening, Look, Next, Ph, Reader, Situation, Strain, StrandReading,
        TimedSection, Uptake, advice, after_look, chances, condition, finish_together, gentlest, looks,
        read_strand_book, series, strand_line,
    },
    quantity::{Duration, MassFraction, Quantity, Share, Temperature},
    source::Interval,
};
use rstest::rstest;

pub(super) fn min(value: f64) -> Duration {
    Duration::from_min(value).unwrap()
}

pub(super) fn level(number: f64) -> Level {
    Level::new(number).unwrap()
}

pub(super) fn mix(on_hair_ww_percent: f64) -> Situation {
    Situation::usual(Interval::exact(MassFraction::from_ww_percent(on_hair_ww_percent).unwrap()))
}

/// Source: citation `check-interval`: first check after 15 to 20 min, then every 5 to 10; on fine hair 10 min is common
/// practice. The last look is the limit.
#[rstest]
#[case::medium(Texture::Medium, 32.0, &[15.0, 20.0, 25.0, 30.0, 32.0])]
#[case::fine(Texture::Fine, 20.0, &[10.0, 15.0, 20.0])]
#[case::shorter_than_the_first_look(Texture::Coarse, 9.0, &[9.0])]
fn looks_start_early_and_end_at_the_limit(#[case] texture: Texture, #[case] limit: f64, #[case] want: &[f64]) {
    let got: Vec<f64> = looks(texture, min(limit)).iter().map(|at| at.min()).collect();
    assert_eq!(got, want);
}

fn look(at: f64, seen: f64) -> Look {
    Look {
        longest: None,
        situation: mix(4.0),
        start: level(4.0),
        target: level(8.0),
        at: min(at),
        seen: level(seen),
        reader: Reader::Eye,
        limit: min(50.0),
    }
}

#[test]
fn a_look_says_what_follows() {
    let after = |at, seen| after_look(&Belief::untested(), &look(at, seen));
    let reached = after(30.0, 8.0);
    assert_eq!((reached.next, reached.look_again), (Next::Rinse, None));
    assert_eq!(reached.why, "level 8 is seen and level 8 was wanted");
    let on_the_way = after(20.0, 6.5);
    assert_eq!((on_the_way.next, on_the_way.look_again), (Next::GoOn, Some(min(25.0))));
    // Two levels in all the time there is: another 50 min of a fresh mixture do not bring the other two.
    assert_eq!(after(50.0, 5.0).next, Next::NextVisit);
    // Three of four levels: a fresh mixture brings the last one.
    assert_eq!(after(50.0, 7.0).next, Next::FreshMix);
    // A look never puts the next one beyond the limit.
    assert!(after(48.0, 6.5).look_again.unwrap() <= min(50.0));
}

#[test]
fn what_is_seen_moves_the_predicted_finish_and_narrows_it() {
    let untested = Lightening::new(&Belief::untested(), &mix(4.0), level(4.0));
    let slow = after_look(&Belief::untested(), &look(20.0, 5.0));
    let quick = after_look(&Belief::untested(), &look(20.0, 7.0));
    let median = |time: foilwork::lift::TimeTo| time.median.map_or(f64::INFINITY, Duration::min);
    assert!(median(quick.reached) < median(untested.time_to(level(8.0))));
    assert!(median(slow.reached) > median(untested.time_to(level(8.0))));
    let width = |belief: &Belief| {
        let level = Lightening::new(belief, &mix(4.0), level(4.0)).level_after(min(40.0));
        level.high().number() - level.low().number()
    };
    assert!(width(&quick.belief) < width(&Belief::untested()) / 2.0);
}

fn reading() -> StrandReading {
    StrandReading {
        situation: Situation { ph: Some(Ph::new(9.8).unwrap()), ..mix(4.0) },
        time: min(30.0),
        before: level(4.0),
        after: level(8.5),
        reader: Reader::Instrument,
        guest: Some("J, \"014\"".to_owned()),
        product: Some("Foam Line powder".to_owned()),
    }
}

#[test]
fn strand_book_reads_back_what_it_writes() {
    let text = strand_line(None) + &strand_line(Some(&reading())) + &strand_line(Some(&reading()));
    let book = read_strand_book(&text);
    assert_eq!(book.problems, []);
    assert_eq!(book.readings, [reading(), reading()]);
}

/// A book cut anywhere loses at most the line that was being written, and says so.
#[test]
fn torn_book_loses_one_line_at_most() {
    let text = strand_line(None) + &strand_line(Some(&reading())) + &strand_line(Some(&reading()));
    let whole = text.len() - strand_line(Some(&reading())).len();
    for cut in whole..text.len() {
        let book = read_strand_book(&text[..cut]);
        let lost = 2 - book.readings.len();
        assert!(lost <= 1, "cut at {cut}");
        // Only a cut exactly between two lines leaves nothing to report.
        assert!(lost == 0 || cut == whole || !book.problems.is_empty(), "cut at {cut}");
    }
}

#[rstest]
#[case::torn(
    "J,,4,8",
    "line 2: torn: the line has no end (the program was stopped while it was written; enter it again)"
)]
#[case::word(
    "J,,4,8,x,4,4,4,25,persulfate,,normal,medium,foil,eye,.",
    "line 2: min: \"x\" is not a number (write it with a point)"
)]
#[case::level(
    "J,,0,8,30,4,4,4,25,persulfate,,normal,medium,foil,eye,.",
    "line 2: before_level: invalid level (got 0): must be from 1 (black) to 12 (the lightest of the scales that run beyond 10)"
)]
#[case::ph(
    "J,,4,8,30,4,4,4,25,persulfate,15,normal,medium,foil,eye,.",
    "line 2: ph: invalid pH (got 15): must be from 0 to 14"
)]
#[case::choice(
    "J,,4,8,30,4,4,4,25,persulfat,,normal,medium,foil,eye,.",
    "line 2: booster: unknown booster \"persulfat\": give one of persulfate, mild, none (did you mean persulfate?)"
)]
fn bad_line_of_a_book_is_named(#[case] line: &str, #[case] want: &str) {
    let book = read_strand_book(&(strand_line(None) + line));
    assert_eq!(book.problems.iter().map(ToString::to_string).collect::<Vec<_>>(), [want]);
    assert_eq!(book.readings, []);
}

#[test]
fn gentlest_strength_is_the_weakest_that_is_sure_enough() {
    let strengths = [6.0, 2.0, 4.0].map(|p| Interval::exact(MassFraction::from_ww_percent(p).unwrap()));
    let rows = chances(&Belief::untested(), &mix(4.0), &strengths, (level(5.0).into(), level(7.0)), min(45.0));
    let percents: Vec<f64> = rows.iter().map(|row| row.on_hair.best().ww_percent()).collect();
    assert_eq!(percents, [2.0, 4.0, 6.0], "weakest first");
    let sure = |percent: f64| {
        gentlest(&rows, Share::from_percent(percent).unwrap()).map(|row| row.on_hair.best().ww_percent())
    };
    assert_eq!(sure(0.0), Some(2.0));
    assert_eq!(sure(100.0), None, "nothing is certain");
}

#[test]
fn series_ends_when_it_is_sure_enough_and_its_gains_shrink() {
    let start = Lightening::new(&Belief::untested(), &mix(4.0), level(2.0));
    let visits = series(&start, level(9.0), min(45.0), Share::from_percent(80.0).unwrap(), 8);
    assert!(visits.len() > 1 && visits.len() < 8);
    let levels: Vec<f64> = std::iter::once(2.0).chain(visits.iter().map(|v| v.level.best().number())).collect();
    let gains: Vec<f64> = levels.windows(2).map(|pair| pair[1] - pair[0]).collect();
    assert!(gains.windows(2).all(|pair| pair[1] < pair[0]), "{gains:?}");
}

/// 40 min at 4 % on the hair is index 1; twice that is the square root of two, by hand 1.41: "high" above 1.2.
#[test]
fn series_counts_what_the_start_went_through() {
    let fresh = Lightening::new(&Belief::untested(), &mix(4.0), level(2.0));
    let strains = |start: &Lightening| -> Vec<Strain> {
        series(start, level(12.0), min(40.0), Share::ALL, 3).iter().map(|visit| visit.strain).collect()
    };
    assert_eq!(strains(&fresh)[..2], [Strain::Usual, Strain::High]);
    assert_eq!(strains(&fresh.after(min(40.0)))[0], Strain::High);
    assert!(series(&fresh.after(min(40.0)), level(12.0), min(40.0), Share::ALL, 3)[0].strain_index.best() > 1.4);
}

/// Source: citation `damage-at-one-level`: stronger peroxide does more damage than weaker used longer, at one level.
#[test]
fn condition_is_not_read_off_the_level() {
    let strong = condition(&[(mix(8.0), min(20.0))]);
    let weak = condition(&[(mix(4.0), min(40.0))]);
    assert!(strong.index.high() > weak.index.high());
    assert_eq!(weak.strain, Strain::Usual);
    assert_eq!(condition(&[(mix(4.0), min(240.0))]).strain, Strain::Severe);
    assert_eq!(condition(&[]).strain, Strain::Slight);
}

#[test]
fn advice_knows_what_one_reading_leaves_open() {
    let tell = |belief: &Belief| advice(belief, &mix(4.0), level(4.0), min(40.0));
    let none = tell(&Belief::untested());
    assert!(none.known.starts_with("no strand of this hair is read"));
    assert!(none.width_then < none.width_now);
    let one = StrandReading { reader: Reader::Instrument, ..reading() };
    let after = tell(&Belief::untested().after_readings(&[one]));
    assert!(after.known.contains("whether the pigment or the oxidant runs out first is not"), "{}", after.known);
}

pub(super) fn section(start: f64, target: f64, apply: f64, longest: f64) -> TimedSection {
    TimedSection {
        belief: Belief::untested(),
        situation: mix(4.0),
        on_hair: [2.0, 4.0, 6.0].map(|p| Interval::exact(MassFraction::from_ww_percent(p).unwrap())).to_vec(),
        start: level(start).into(),
        target: level(target),
        tolerance: LevelChange::from_levels(0.5).unwrap(),
        busy_before: Duration::ZERO,
        apply: min(apply),
        longest: min(longest),
    }
}

#[test]
fn finish_together_says_what_it_gave_up() {
    // Seven levels in 30 min is more than any of the strengths does.
    let short = finish_together(&[section(2.0, 9.0, 10.0, 30.0)], min(10.0)).unwrap();
    assert!(short.short.levels() > 0.0);
    assert!(short.sections[0].level.best() < level(9.0));
    assert_eq!(short.sections[0].strength, 2, "the strongest, as near as it gets");
    assert!(short.rinse.min() <= 30.0 + 1e-6, "the limit is never given up");
}

#[rstest]
#[case::none(vec![], "no section to time: give at least one")]
#[case::no_strength(vec![TimedSection { on_hair: vec![], ..section(4.0, 6.0, 5.0, 50.0) }], "section 1 has no strength to choose from: give at least one developer")]
#[case::too_long(vec![section(4.0, 6.0, 60.0, 50.0)], "the sections cannot be applied within the longest time of section 1: its first strand would carry the mixture too long (apply it later, split it, or work with a helper)")]
fn what_cannot_be_timed_is_named(#[case] sections: Vec<TimedSection>, #[case] want: &str) {
    assert_eq!(finish_together(&sections, min(10.0)).unwrap_err().to_string(), want);
}

#[test]
fn no_strength_is_an_error_of_its_own() {
    assert!(matches!(finish_together(&[], Duration::nearest(10.0)), Err(CannotFinish::NoSection)));
}

#[test]
fn a_heading_says_where_the_columns_are() {
    let turned = "before_level,guest,after_level,min,on_hair_low_ww_percent,on_hair_ww_percent,on_hair_high_ww_percent,\
                  temperature_c,booster,ph,uptake,texture,cover,reader,product,end\n\
                  4,J-014,8.5,30,4,4,4,25,persulfate,,normal,medium,open-air,eye,,.\n";
    let book = read_strand_book(turned);
    assert_eq!((book.readings.len(), book.problems.len()), (1, 0), "{:?}", book.problems);
    assert_eq!(book.readings[0].guest.as_deref(), Some("J-014"));
    assert_eq!(book.readings[0].situation.cover, Cover::OpenAir);
    let unknown = read_strand_book("guest,before_level,thickness,end\n");
    assert!(
        unknown.problems[0].to_string().starts_with("line 1: unknown column \"thickness\": the columns are guest, ")
    );
}

/// With the columns of another heading, `before` and `after` would be read the wrong way round and learned from.
#[test]
fn lines_under_a_heading_that_cannot_be_read_are_left_out() {
    let heading = "guest,product,after_level,before_level,thickness,end\n";
    let told = strand_line(Some(&reading()));
    let book = read_strand_book(&(heading.to_owned() + &told + &strand_line(None) + &told));
    assert_eq!(book.readings.len(), 1, "only the line under the heading that can be read");
    assert_eq!(book.problems[1].to_string(), "line 2: the heading above cannot be read (mend it first)");
}

/// Arrhenius by hand: ten degrees more, from 298.15 to 308.15 K, with 8.314 462 618 J/(mol K) (SI Brochure) and the activation
/// energies that are assumed, which are lower where the cuticle is open.
#[rstest]
#[case(Uptake::Normal, [30.0, 50.0, 75.0])]
#[case(Uptake::High, [0.0, 25.0, 50.0])]
fn warmth_hastens_open_hair_less(#[case] uptake: Uptake, #[case] kj_per_mol: [f64; 3]) {
    let usual = Situation::usual(Interval::exact(MassFraction::nearest(4.0)));
    let warm = Situation { temperature: Temperature::from_celsius(35.0).unwrap(), uptake, ..usual };
    let factors = warm.on_pigment();
    let heat = factors.iter().find(|factor| factor.lever == "temperature").unwrap();
    let times = kj_per_mol.map(|kj| (kj * 1000.0 / 8.314_462_618 * (1.0 / 298.15 - 1.0 / 308.15)).exp());
    for (got, want) in heat.times.to_array().into_iter().zip(times) {
        assert!((got - want).abs() < 1e-6, "{got} for {want}");
    }
}

/// A heading that a crash tore is the beginning of ours: the lines below are in its order. One that merely begins like ours may stand
/// over another order, and nothing below it is read.
#[test]
fn a_heading_of_another_order_is_not_taken_for_a_torn_one() {
    let heading = strand_line(None);
    let line = "J-014,,4,8.5,30,4,4,4,25,persulfate,,normal,medium,foil,eye,.\n";
    let torn = &heading[..heading.find("before_level").unwrap() + "before_level,afte".len()];
    let book = read_strand_book(&format!("{torn}\n{line}"));
    assert_eq!((book.readings.len(), book.problems.len()), (1, 1));
    let (first, other) = (torn.replace("before_level,afte", "afte,before_level"), torn.replace(",afte", ",level"));
    for heading in [first, other] {
        let book = read_strand_book(&format!("{heading}\n{line}"));
        assert_eq!((book.readings.len(), book.problems.len()), (0, 2), "{heading}");
    }
}

/// What dries in open air at a pace that nobody measured is forecast less surely than what was tested in foil.
#[test]
fn a_cover_that_was_not_tested_widens_the_forecast() {
    let read = StrandReading { situation: mix(4.0), ..reading() };
    let belief = Belief::untested().after_readings(&[read.clone(), read.clone(), read.clone(), read]);
    for minutes in [30.0, 45.0, 60.0] {
        let bounds = |cover| {
            let here = Situation { cover, ..mix(4.0) };
            let level = Lightening::new(&belief, &here, level(4.0)).level_after(min(minutes));
            [level.low(), level.high()].map(Level::number)
        };
        let ([low, high], [dry_low, dry_high]) = (bounds(Cover::Foil), bounds(Cover::OpenAir));
        assert!(dry_high - dry_low > high - low, "{minutes}: {low} to {high}, in open air {dry_low} to {dry_high}");
    }
}

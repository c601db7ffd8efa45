//! Little logs worked out by hand, line by line: what counts as begun, all on and rinsed, what is corrected and what counts for nothing.

use super::noted::{feels, foil, of, seen, strand};
use foilwork::{
    colour::Level,
    record::{Comfort, FoilHeat, LogEntry, Noted, SectionSoFar, SoFar, instructions, replay},
    service::shape::Elasticity,
};

/// A line: `b` begun, `a` all on, `r` rinsed, and the minute.
fn line(word: &str) -> LogEntry {
    let what = match &word[..1] {
        "b" => Noted::Begun,
        "a" => Noted::Applied,
        _ => Noted::Rinsed,
    };
    of(word[1..].parse().unwrap(), what)
}

fn lines(log: &str) -> Vec<LogEntry> {
    log.split_whitespace().map(line).collect()
}

/// Earlier applications in brackets, `n` where their rinse is noted and `u` where it is not, `?` where their begin is not; then the last. What
/// is not known is `-`.
fn told(one: &SectionSoFar) -> String {
    let at = |time: Option<foilwork::quantity::Duration>| time.map_or("-".to_owned(), |time| time.min().to_string());
    let earlier = one.earlier.iter().map(|one| {
        let sign = if one.rinse_noted { 'n' } else { 'u' };
        let unnoted = if one.begin_noted { "" } else { "?" };
        format!("({unnoted}{} {} {}{sign}) ", one.begun.min(), at(one.applied), one.rinsed.min())
    });
    format!("{}{} {} {}", earlier.collect::<String>(), at(one.begun), at(one.applied), at(one.rinsed))
}

fn left_out(so_far: &SoFar) -> Vec<String> {
    let word = |one: &LogEntry| {
        let sign = match one.what {
            Noted::Begun => 'b',
            Noted::Applied => 'a',
            _ => 'r',
        };
        format!("{sign}{}", one.at.min())
    };
    so_far.left_out.iter().map(word).collect()
}

/// By hand. A begin corrects one that is noted just before it and no more than five minutes earlier than it, counted from the first of such a
/// row; else it is a second application, and without a rinse between the two nobody knows that. Nothing is begun while it is on, nothing is
/// all on before it is begun or after it is rinsed; what is noted late is of what was on then. Left out is what counts for nothing, and the
/// hour is the latest minute that counts.
#[test]
fn every_line_counts_for_what_was_on_then() {
    let cases: &[(&str, &str, &[&str], f64)] = &[
        ("b0 a18 r45", "0 18 45", &[], 45.0),
        // Begins in a row.
        ("b0 b5", "5 - -", &[], 5.0),
        ("b0 b6", "(0 - 6u) 6 - -", &[], 6.0),
        ("b0 b5 b6", "(0 - 6u) 6 - -", &[], 6.0),
        ("b0 b3 b40", "(0 - 40u) 40 - -", &[], 40.0),
        ("b3 b0 b5", "5 - -", &[], 5.0),
        ("b3 b0 b6", "(0 - 6u) 6 - -", &[], 6.0),
        ("b4 b40 b41", "(4 - 41u) 41 - -", &[], 41.0),
        ("b4 b40 b38", "(4 - 38u) 38 - -", &[], 38.0),
        ("b4 b40 b2", "(4 - 4u) 2 - -", &[], 4.0),
        ("b50 b46", "46 - -", &[], 46.0),
        // Something else between them says that it was on.
        ("b0 a10 b40", "(0 10 40u) 40 - -", &[], 40.0),
        ("b0 b3 a4 b7", "(0 4 7u) 7 - -", &[], 7.0),
        ("b0 b3 a4 b8", "(0 4 8u) 8 - -", &[], 8.0),
        ("b0 b3 a4 b9", "(3 4 9u) 9 - -", &[], 9.0),
        ("b30 a31 b30", "30 31 -", &[], 31.0),
        ("b10 a12 b8", "8 12 -", &[], 12.0),
        // Begins beside a rinse that is noted before them.
        ("b0 r60 b5", "5 - 60", &[], 60.0),
        ("b0 r60 b6", "0 - 60", &["b6"], 60.0),
        ("b0 r60 b59", "0 - 60", &["b59"], 60.0),
        ("b0 r60 b60", "(0 - 60n) 60 - -", &[], 60.0),
        ("b0 b3 r20 b7", "0 - 20", &["b7"], 20.0),
        ("b0 b3 r7 b7", "(3 - 7n) 7 - -", &[], 7.0),
        ("b0 b3 r6 b7", "(3 - 6n) 7 - -", &[], 7.0),
        ("b10 r40 b13 b16", "10 - 40", &["b16"], 40.0),
        ("b0 r20 b30 a35 b15", "(0 - 20n) 30 35 -", &["b15"], 35.0),
        ("b0 r20 b30 a35 b20", "(0 - 20n) 20 35 -", &[], 35.0),
        ("b0 r20 b30 a35 b15 b33", "(0 - 20n) (30 35 33u) 33 - -", &["b15"], 35.0),
        // What was rinsed before the first begin was something else.
        ("r10 b30", "30 - -", &[], 30.0),
        ("a5 r10 b30", "(?5 5 10n) 30 - -", &[], 30.0),
        ("r30 b30", "30 - 30", &[], 30.0),
        // All on long before it is begun, it had been begun before that.
        ("a5 b30", "(?5 5 30u) 30 - -", &[], 30.0),
        ("a24 b30", "(?24 24 30u) 30 - -", &[], 30.0),
        ("a25 b30", "30 - -", &[], 30.0),
        ("a20 b40 r70 b3", "(3 20 40u) 40 - 70", &[], 70.0),
        ("a20 b40 r70 b20", "(20 20 40u) 40 - 70", &[], 70.0),
        ("a30 b30", "30 30 -", &[], 30.0),
        ("a35 b30", "30 35 -", &[], 35.0),
        // All on, late or early.
        ("b10 a5", "10 - -", &["a5"], 10.0),
        ("b10 a10", "10 10 -", &[], 10.0),
        ("b0 r20 a25", "0 - 20", &["a25"], 20.0),
        ("b0 r20 a20", "0 20 20", &[], 20.0),
        ("b0 r20 b30 a10", "(0 10 20n) 30 - -", &[], 30.0),
        ("b5 r20 b30 a4", "(5 - 20n) 30 - -", &["a4"], 30.0),
        ("b5 r20 b30 a5", "(5 - 20n) 30 - -", &[], 30.0),
        ("b0 r20 b30 a30", "(0 - 20n) 30 30 -", &[], 30.0),
        ("b0 b20 b40 a30", "(0 - 20u) (20 30 40u) 40 - -", &[], 40.0),
        // Rinses.
        ("b30 r30", "30 - 30", &[], 30.0),
        ("b30 r29", "30 - -", &["r29"], 30.0),
        ("b0 b30 r30", "(0 - 30n) 30 - -", &[], 30.0),
        ("b0 b30 r31", "(0 - 30u) 30 - 31", &[], 31.0),
        ("b0 b30 b60 r29", "(0 - 29n) (30 - 60u) 60 - -", &[], 60.0),
        ("b0 b30 b60 r30", "(0 - 30n) (30 - 60u) 60 - -", &[], 60.0),
        ("b0 b30 b60 r31", "(0 - 30u) (30 - 31n) 60 - -", &[], 60.0),
        ("b0 b30 b60 r60", "(0 - 30u) (30 - 60n) 60 - -", &[], 60.0),
        ("b0 b30 b60 r61", "(0 - 30u) (30 - 60u) 60 - 61", &[], 61.0),
        ("b0 r45 r50", "0 - 50", &[], 50.0),
        ("b0 r50 r45", "0 - 45", &[], 45.0),
    ];
    for (log, want, out, now) in cases {
        let so_far = replay(&lines(log));
        assert_eq!(told(&so_far.sections[0]), *want, "{log}");
        assert!(left_out(&so_far).iter().eq(out.iter()), "{log}: {:?}", left_out(&so_far));
        assert_eq!(so_far.now.min(), *now, "{log}");
    }
}

/// Sections are kept apart, and each line is held against its own.
#[test]
fn a_line_is_of_its_own_section() {
    let crown = |entry: LogEntry| LogEntry { section: Some("crown".to_owned()), ..entry };
    let log = [line("b10"), crown(line("b5")), line("a5"), crown(line("a12")), line("r40")];
    let so_far = replay(&log);
    assert_eq!(
        so_far.sections.iter().map(|one| (one.name.as_str(), told(one))).collect::<Vec<_>>(),
        [("nape", "10 - 40".to_owned()), ("crown", "5 12 -".to_owned())]
    );
    assert_eq!((so_far.left_out.as_slice(), so_far.now.min()), (&log[2..3], 40.0));
    // What is no time counts for the hour, whatever it is of.
    assert_eq!(replay(&[line("b10"), seen(70.0, 7.0), line("a5")]).now.min(), 70.0);
    assert_eq!(replay(&[line("b10"), feels(71.0, Comfort::Fine)]).now.min(), 71.0);
    assert_eq!(replay(&[]).now.min(), 0.0);
}

/// By hand: how long and how often it was on, and when it was first begun; what was begun again without a noted rinse is one application.
#[test]
fn time_on_the_hair_is_counted_over_all_applications() {
    let of = |log: &str| {
        let one = replay(&lines(log)).sections.remove(0);
        let (begun, applied, rinsed) = one.first();
        (one.carried().map(|time| time.min()), [begun, applied, rinsed].map(|time| time.map(|time| time.min())))
    };
    assert_eq!(of("b3 a10 r40 b50 r70"), (Some(57.0), [Some(3.0), Some(10.0), Some(40.0)]));
    assert_eq!(of("b3 r40 b50"), (None, [Some(3.0), None, Some(40.0)]));
    assert_eq!(of("b3 b50 r60"), (Some(57.0), [Some(3.0), None, Some(50.0)]));
    assert_eq!((of("b3 r40").0, of("r40").0, of("a3 r40").0, of("b3").0), (Some(37.0), None, None, None));
    assert_eq!(of("b3 a5"), (None, [Some(3.0), Some(5.0), None]));
}

fn result(at: f64, level: f64) -> LogEntry {
    LogEntry { what: Noted::Result, ..seen(at, level) }
}

/// By hand: readings by their minutes, of one minute the last line; what came of an application before the last is a level that was seen.
#[test]
fn readings_take_their_place_by_their_minutes() {
    let readings = |log: &[LogEntry]| {
        let one = replay(log).sections.remove(0);
        let plain = |levels: &[(foilwork::quantity::Duration, Level)]| -> Vec<(f64, f64)> {
            levels.iter().map(|(at, level)| (at.min(), level.number())).collect()
        };
        let last = one.result_at.map(|at| (at.min(), one.result.unwrap().number()));
        (plain(&one.seen), plain(&one.earlier_results), last)
    };
    let (begun, rinsed) = (line("b0"), line("r45"));
    let looks = [seen(30.0, 7.0), seen(20.0, 6.5), seen(30.0, 7.25), seen(25.0, 6.75)];
    assert_eq!(readings(&looks).0, [(20.0, 6.5), (25.0, 6.75), (30.0, 7.0), (30.0, 7.25)]);
    let three = [begun.clone(), rinsed.clone(), result(50.0, 8.0), result(60.0, 8.5), result(55.0, 8.25)];
    assert_eq!(readings(&three), (vec![], vec![(50.0, 8.0), (55.0, 8.25)], Some((60.0, 8.5))));
    let anew = [&three[..], &[result(60.0, 8.75)]].concat();
    assert_eq!(readings(&anew), (vec![], vec![(50.0, 8.0), (55.0, 8.25)], Some((60.0, 8.75))));
    // More lightener goes on at 70: all of these were levels that were seen, and so is one that is noted late.
    let again = [&anew[..], &[line("b70"), result(69.0, 9.0), result(90.0, 9.25)]].concat();
    let before = vec![(50.0, 8.0), (55.0, 8.25), (60.0, 8.75), (69.0, 9.0)];
    assert_eq!(readings(&again), (before, vec![], Some((90.0, 9.25))));
    // At the very begin it is of what is on now.
    assert_eq!(readings(&[&anew[..], &[line("b70"), result(70.0, 9.0)]].concat()).2, Some((70.0, 9.0)));
    let looked = [begun.clone(), seen(40.0, 8.0), rinsed.clone(), line("b60")];
    assert_eq!(readings(&looked), (vec![(40.0, 8.0)], vec![], None), "the look is not noted twice");
    // Before the only begin there is no application that it could be of.
    assert_eq!(readings(&[line("b30"), result(20.0, 8.0)]), (vec![], vec![], Some((20.0, 8.0))));
}

/// By hand: the last foil and the worst one, the worst strand and when one like it was tested last. Of an application before the last a foil
/// is no news of this one, and a good strand none at all.
#[test]
fn foils_and_strands_are_of_the_last_application_and_the_worst_of_the_day() {
    let foils = |log: &[LogEntry]| {
        let one = replay(log).sections.remove(0);
        (one.foil, one.foil_at.map(|at| at.min()), one.foil_worst)
    };
    let (warm, hot, cool) = (Some(FoilHeat::Warm), Some(FoilHeat::Hot), Some(FoilHeat::Cool));
    let begun = line("b0");
    assert_eq!(foils(&[begun.clone(), foil(40.0, FoilHeat::Warm), foil(35.0, FoilHeat::Hot)]), (warm, Some(40.0), hot));
    assert_eq!(foils(&[begun.clone(), foil(40.0, FoilHeat::Hot), foil(40.0, FoilHeat::Cool)]), (cool, Some(40.0), hot));
    let again = [begun.clone(), foil(10.0, FoilHeat::Warm), line("r20"), line("b30")];
    assert_eq!(foils(&again), (None, None, warm));
    let late = |at: f64| foils(&[&again[..], &[foil(at, FoilHeat::Hot)]].concat());
    assert_eq!((late(29.0), late(30.0)), ((None, None, hot), (hot, Some(30.0), hot)));
    assert_eq!(foils(&[line("b30"), foil(25.0, FoilHeat::Hot)]), (hot, Some(25.0), hot));
    let strands = |log: &[LogEntry]| {
        let one = replay(log).sections.remove(0);
        (one.elasticity, one.elasticity_at.map(|at| at.min()))
    };
    let (good, reduced, poor) = (Elasticity::Good, Elasticity::Reduced, Elasticity::Poor);
    assert_eq!(strands(&[strand(40.0, good), strand(35.0, good)]), (Some(good), Some(40.0)));
    assert_eq!(strands(&[strand(40.0, good), strand(45.0, good)]), (Some(good), Some(45.0)));
    assert_eq!(strands(&[strand(40.0, poor), strand(45.0, reduced)]), (Some(poor), Some(40.0)));
    assert_eq!(strands(&[strand(40.0, reduced), strand(35.0, poor), strand(50.0, good)]), (Some(poor), Some(35.0)));
    let first = |of_first: Elasticity| vec![begun.clone(), strand(15.0, of_first), line("r20"), line("b30")];
    assert_eq!((strands(&first(good)), strands(&first(reduced))), ((None, None), (Some(reduced), Some(15.0))));
    let noted_late = |at: f64, what: Elasticity| strands(&[first(good), vec![strand(at, what)]].concat());
    assert_eq!((noted_late(25.0, good), noted_late(25.0, reduced)), ((None, None), (Some(reduced), Some(25.0))));
    assert_eq!(noted_late(30.0, good), (Some(good), Some(30.0)));
    assert_eq!(strands(&[line("b30"), strand(25.0, good)]), (Some(good), Some(25.0)));
}

/// By hand: how it feels is the latest answer, of one minute the last; the worst answer keeps the minute of the first like it.
#[test]
fn the_scalp_feels_as_it_was_answered_last() {
    let felt = |log: &[LogEntry]| {
        let so_far = replay(log);
        [so_far.comfort, so_far.comfort_worst].map(|told| told.map(|(at, comfort)| (at.min(), comfort)))
    };
    let (fine, itching, burning) = (Comfort::Fine, Comfort::Itching, Comfort::Burning);
    assert_eq!(felt(&[feels(30.0, fine), feels(20.0, itching)]), [Some((30.0, fine)), Some((20.0, itching))]);
    assert_eq!(felt(&[feels(30.0, itching), feels(30.0, fine)]), [Some((30.0, fine)), Some((30.0, itching))]);
    assert_eq!(felt(&[feels(20.0, burning), feels(25.0, burning)]), [Some((25.0, burning)), Some((20.0, burning))]);
    assert_eq!(felt(&[feels(20.0, itching), feels(25.0, burning)]), [Some((25.0, burning)), Some((25.0, burning))]);
    let mass =
        |what: Noted, g: f64| LogEntry { mass: Some(foilwork::quantity::Mass::from_g(g).unwrap()), ..of(1.0, what) };
    let one = replay(&[mass(Noted::Weighed, 30.0), mass(Noted::LeftOver, 2.0), mass(Noted::Weighed, 12.5)])
        .sections
        .remove(0);
    assert_eq!((one.weighed.map(|mass| mass.g()), one.left_over.map(|mass| mass.g())), (Some(42.5), Some(2.0)));
}

/// By hand: the guest was asked at 2 or is on since 5, whichever is later; ten minutes are not too long, eleven are.
#[test]
fn a_guest_is_asked_every_ten_minutes() {
    let asked =
        |log: &[LogEntry]| -> Vec<String> { instructions(&replay(log)).into_iter().map(|one| one.text).collect() };
    let told = |minutes: u32| vec![format!("the guest was not asked for {minutes} min: ask how the scalp feels")];
    let on = |last: f64| asked(&[feels(2.0, Comfort::Fine), line("b5"), seen(last, 7.0)]);
    assert_eq!((on(15.0), on(16.0)), (vec![], told(11)));
    let answered = |last: f64| asked(&[line("b5"), feels(12.0, Comfort::Tingling), seen(last, 7.0)]);
    assert_eq!((answered(22.0), answered(23.0)), (vec![], told(11)));
    // The first that is on counts, by its end of application where its begin is not noted; what is rinsed asks for nothing.
    let crown = LogEntry { section: Some("crown".to_owned()), ..line("a3") };
    assert_eq!(asked(&[crown, line("b5"), seen(16.0, 7.0)]), told(13));
    assert_eq!(asked(&[line("b5"), line("r20"), seen(60.0, 7.0)]), Vec::<String>::new());
    assert_eq!(asked(&[seen(60.0, 7.0)]), Vec::<String>::new());
}

/// By hand: of three begins without a rinse each is told, from the first strand of all; a rinse that is noted ends that count.
#[test]
fn a_begin_without_a_rinse_before_it_is_told_from_its_first_strand() {
    let missing = |log: &str| -> Vec<String> {
        let all = instructions(&replay(&lines(log)));
        all.into_iter().map(|one| one.text).filter(|text| text.starts_with("no rinse was noted")).collect()
    };
    let told = |again: u32, first: u32, before: u32| {
        format!(
            "no rinse was noted before minute {again}, when it was begun again: it is counted as on from minute {first}, for the longer time \
             is the safe side, and as put on once (note the rinse if there was one; if minute {again} was to correct minute {before}, take \
             the line of minute {before} out of the log: a begin corrects by itself only one that is no more than 5 min earlier)"
        )
    };
    assert_eq!(missing("b0 b30 b60"), [told(30, 0, 0), told(60, 0, 30)]);
    assert_eq!(missing("b0 b30 b60 r29"), [told(60, 30, 30)]);
    assert_eq!(missing("b0 b30 b60 r50"), [told(30, 0, 0)]);
    assert_eq!(missing("b0 r20 b30 b60 b90"), [told(60, 30, 30), told(90, 30, 60)]);
    assert!(missing("b0 r20 b30").is_empty());
}

/// What a foil says, hot or swollen, on the hair or rinsed; in whole sentences.
#[test]
fn what_a_foil_says_depends_on_whether_it_is_on() {
    let texts =
        |log: &[LogEntry]| -> Vec<String> { instructions(&replay(log)).into_iter().map(|one| one.text).collect() };
    let begun = line("b0");
    let hot = "a foil is hot: open it, let it cool, rinse it if it stays hot";
    let swells = "a foil swells or bubbles: open and rinse it at once; think of metal salts";
    let swelled = "a foil swelled or bubbled: think of metal salts; nothing with peroxide goes on before an incompatibility test of cut hair \
                   is clear";
    let (is_hot, is_swollen) = (foil(8.0, FoilHeat::Hot), foil(9.0, FoilHeat::Swollen));
    assert_eq!(texts(&[begun.clone(), is_hot.clone()]), [hot]);
    assert!(texts(&[begun.clone(), is_hot.clone(), line("r10")]).is_empty());
    assert_eq!(texts(&[begun.clone(), is_swollen.clone()]), [swells]);
    assert_eq!(texts(&[begun.clone(), is_swollen.clone(), line("r10")]), [swelled]);
    // Swollen is worse, whichever was seen last.
    assert_eq!(texts(&[begun.clone(), is_hot.clone(), is_swollen.clone()]), [swells]);
    assert_eq!(texts(&[begun.clone(), is_swollen, foil(10.0, FoilHeat::Hot)]), [swells]);
    assert!(texts(&[begun.clone(), is_hot, foil(9.0, FoilHeat::Warm)]).is_empty());
    let slow = |more: &str| {
        format!("a strand returns slowly: {more}no second application today; tone gently, treat, test again")
    };
    let weak = strand(9.0, Elasticity::Reduced);
    assert_eq!(texts(&[begun.clone(), weak.clone()]), [slow("rinse what lightens now; ")]);
    assert_eq!(texts(&[begun, weak.clone(), line("r10")]), [slow("")]);
    let broken = "a strand stays stretched or breaks: rinse, no more lightener, no heat; treat only";
    assert_eq!(texts(&[weak, strand(9.0, Elasticity::Poor)]), [broken]);
}

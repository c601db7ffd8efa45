//! Lift in the plan: strengths left open, strands read, levels seen, pH stated.

use super::base::{changed, example, fine, only_lightener, shop, texts, verdicts};
use foilwork::{
    finding::Verdict,
    lift::{Next, Reader, read_strand_book},
    reader::Format,
    service::{
        Evidence, Plan, SectionLift, ServiceFile, parse_with_shop, plan, plan_with,
        shape::{After, ExistingColour, Strand, WaitFor, Zone},
    },
    shop::{
        self,
        shape::{DeveloperEntry, DiluentEntry},
    },
};
use rstest::rstest;

fn together() -> ServiceFile {
    let shop = shop::parse_shop(&example("juniper_and_tide.toml"), Format::Toml).unwrap();
    parse_with_shop(&example("finish-together.toml"), Format::Toml, &shop).unwrap()
}

fn evidence(seen: &[&str]) -> Evidence {
    let book = Some(read_strand_book(&example("juniper_and_tide_strands.csv")));
    Evidence { book, seen: seen.iter().map(|text| text.parse().unwrap()).collect(), ..Evidence::default() }
}

fn width(section: &SectionLift) -> f64 {
    section.first_strand.high().number() - section.first_strand.low().number()
}

fn strand(after_level: f64) -> Strand {
    Strand {
        product: "powder".to_owned(),
        developer: Some("developer".to_owned()),
        strength: None,
        ratio: None,
        time_min: 35.0,
        temperature_c: None,
        before_level: 6.0,
        after_level,
        reader: Reader::Eye,
        cover: None,
    }
}

#[test]
fn the_example_finishes_together_with_the_weakest_strengths() {
    let plan = plan_with(&together(), &evidence(&[])).unwrap();
    assert!(!plan.blocked);
    let names: Vec<&str> = plan.strengths.iter().map(|chosen| chosen.section.as_str()).collect();
    assert_eq!(names, ["nape", "sides"], "the hairline has its own developer");
    assert_eq!(verdicts(&plan, "finish-together"), [Verdict::Passed]);
    let group = &plan.together[0];
    assert_eq!((group.why_not.as_deref(), group.short.levels()), (None, 0.0));
    let rinse = group.rinse.unwrap().min();
    for (section, step) in group.sections.iter().zip(&plan.order) {
        assert_eq!(section.section, step.name);
        assert!((step.begin.min() - section.begin.min()).abs() < 1e-9 && (step.rinse_by.min() - rinse).abs() < 1e-9);
        let before = rinse - section.reaches.unwrap().min();
        assert!((-1e-9..=10.0 + 1e-9).contains(&before), "{} is there {before} min before the rinse", section.section);
    }
    for chosen in &plan.strengths {
        // The powder takes 9 % at most, so the 12 % bottle is refused for that reason.
        assert!(chosen.developer.high().ww_percent() <= 9.0);
        let twelve = chosen.rejected.iter().find(|other| other.developer.ww_percent() == 12.0).unwrap();
        assert_eq!(twelve.why, "\"Foam Line powder\" takes 9 % w/w at most");
        let mix = plan.mixes.iter().find(|mix| mix.name == chosen.section).unwrap();
        assert!((mix.developer.best().ww_percent() - chosen.developer.best().ww_percent()).abs() < 0.1);
    }
}

/// Weaker than chosen for either section, and they no longer finish together.
#[rstest]
fn no_weaker_strength_would_do(#[values(0, 1)] which: usize) {
    let chosen = plan_with(&together(), &evidence(&[])).unwrap();
    let mut file = together();
    for (section, chosen) in file.section.iter_mut().zip(&chosen.strengths) {
        section.strength = Some(format!("{} % w/w", chosen.developer.best().ww_percent()));
    }
    let weaker = chosen.strengths[which].developer.best().ww_percent() - 0.5;
    file.section[which].strength = Some(format!("{weaker} % w/w"));
    let plan = plan_with(&file, &evidence(&[])).unwrap();
    // A strength that is stated is timed as it is; its middle strand is not there in time.
    let section = &plan.lift[which];
    let step = &plan.order[which];
    let middle = (step.applied.min() - step.begin.min()) / 2.0;
    let own = section.reached.median.map_or(f64::INFINITY, |at| at.min());
    let others = chosen.together[0].rinse.unwrap().min() - step.begin.min() - middle;
    let limit = section.limit.min() - middle;
    assert!(own > limit - 1e-6 || own > others - 10.0, "{weaker} % would do: {own} of {limit}");
}

#[test]
fn without_a_strand_the_forecast_spans_two_levels_either_way() {
    let plan = plan(&fine()).unwrap();
    let [section] = plan.lift.as_slice() else { panic!("one lightened section") };
    let level = section.first_strand;
    assert_eq!(section.readings, 0);
    assert!(level.best().number() - level.low().number() >= 1.99, "{level:?}");
    assert!(plan.to_string().contains("no strand of this hair is read, so at least two levels either way"));
    // Common practice: 20 vol reaches about five levels, give or take two: 6 + 3, 6 + 5, and the end of the scale.
    assert_eq!(section.rule.to_array().map(|level| level.number()), [9.0, 11.0, 12.0]);
}

#[test]
fn a_strand_of_the_guest_narrows_and_moves_it() {
    let none = plan(&fine()).unwrap();
    let with = |after| changed(fine(), |file| file.strand = vec![strand(after)]);
    let (slow, quick) = (with(7.0), with(9.0));
    assert_eq!(slow.lift[0].readings, 1);
    assert!(width(&slow.lift[0]) < width(&none.lift[0]) && width(&quick.lift[0]) < width(&none.lift[0]));
    assert!(slow.lift[0].first_strand.best() < quick.lift[0].first_strand.best());
}

#[rstest]
#[case::product("products", |strand: &mut Strand| strand.product = "products".into(), "strand[1].product: no lightener is called \"products\": the file has powder")]
#[case::neither("neither", |strand: &mut Strand| strand.developer = None, "strand[1]: neither `developer` nor `strength` is given: give one of them")]
#[case::darker("darker", |strand: &mut Strand| strand.after_level = 5.0, "strand[1].after_level: level 5 is darker than level 6 before: lightener makes it lighter (swap the two?)")]
fn a_strand_is_checked(#[case] _name: &str, #[case] change: fn(&mut Strand), #[case] want: &str) {
    let mut file = fine();
    let mut wrong = strand(8.0);
    change(&mut wrong);
    file.strand = vec![wrong];
    assert_eq!(plan(&file).unwrap_err().to_string(), want);
}

fn open(change: impl FnOnce(&mut ServiceFile)) -> Plan {
    changed(only_lightener(), |file| {
        file.section[0].developer = None;
        let bottle = |name: &str, strength: &str| DeveloperEntry {
            name: name.to_owned(),
            strength: strength.to_owned(),
            strength_basis: shop::StrengthBasis::Measured,
            ..DeveloperEntry::default()
        };
        shop(file).developer = vec![bottle("three", "3 % w/w"), bottle("nine", "9 % w/w")];
        shop(file).diluent = vec![DiluentEntry { name: "base".to_owned(), ..DiluentEntry::default() }];
        change(file);
    })
}

#[test]
fn a_higher_target_takes_a_stronger_developer() {
    let strength = |target| {
        let plan = open(|file| file.section[0].target_level = target);
        assert_eq!(plan.together[0].why_not, None, "{target}");
        plan.strengths[0].developer.best().ww_percent()
    };
    let all = [6.5, 7.0, 7.5, 8.0].map(strength);
    assert!(all.is_sorted() && all[0] < all[3], "{all:?}");
}

#[test]
fn what_no_strength_reaches_is_said_with_the_nearest() {
    let plan = open(|file| (file.section[0].target_level, file.analysis.natural_level) = (10.0, 2.0));
    assert_eq!(verdicts(&plan, "finish-together"), [Verdict::Warning]);
    let group = &plan.together[0];
    assert!(group.short.levels() > 0.0 && group.window_needed.is_none());
    assert!(group.sections.iter().all(|section| section.reaches.is_none()), "none is there, so none says when");
    assert!(texts(&plan, "finish-together").starts_with("no strength of the shelf brings all to their targets"));
    assert_eq!(plan.strengths[0].developer.best().ww_percent(), 9.0, "the strongest");
}

#[test]
fn what_cannot_be_timed_together_is_timed_by_itself() {
    let plan = open(|file| (file.section[0].apply_min, file.section[0].develop_min) = (Some(60.0), 30.0));
    assert!(texts(&plan, "finish-together").contains("(section 1 is top); each is timed by itself"));
    assert_eq!((plan.strengths.len(), plan.together[0].sections.len()), (1, 0));
}

/// One that waits until another is rinsed is not rinsed with it.
#[test]
fn what_waits_for_a_rinse_has_a_finish_of_its_own() {
    let plan = open(|file| {
        let mut second = file.section[0].clone();
        second.name = "second".to_owned();
        second.after = vec![After { section: "top".to_owned(), wait_for: WaitFor::Rinse }];
        file.section.push(second);
    });
    assert_eq!(plan.together.len(), 2);
    assert!(plan.order[1].begin >= plan.order[0].rinse_by);
}

#[test]
fn a_level_seen_moves_the_finish_and_says_what_follows() {
    let before = plan_with(&together(), &evidence(&[])).unwrap();
    let after = plan_with(&together(), &evidence(&["nape=6@30"])).unwrap();
    assert_eq!(before.strengths, after.strengths, "the bowls are on the hair already");
    assert_eq!(before.order, after.order);
    let finish = |plan: &Plan| plan.lift[0].reached_on_clock.median.map_or(f64::INFINITY, |at| at.min());
    assert!(finish(&after) > finish(&before), "slower than expected");
    assert!(width(&after.lift[0]) < width(&before.lift[0]));
    assert!(after.lift[1].first_strand.best() < before.lift[1].first_strand.best(), "it is the same guest");
    let seen = &after.lift[0].seen[0];
    assert_eq!((seen.at.min(), seen.next, seen.look_again.map(|at| at.min())), (30.0, Next::GoOn, Some(35.0)));
    assert_eq!(verdicts(&after, "level-seen"), [Verdict::Note]);
    let there = plan_with(&together(), &evidence(&["sides=7.5@40"])).unwrap();
    assert_eq!(there.lift[1].seen[0].next, Next::Rinse);
    assert!(there.to_string().contains("sides, minute 40: rinse: level 7.5 is seen and level 7.5 was wanted"));
    let spent = plan_with(&together(), &evidence(&["nape=5.5@50"])).unwrap();
    assert!(matches!(spent.lift[0].seen[0].next, Next::FreshMix | Next::NextVisit));
}

#[rstest]
#[case::unknown("crown=7@30", "seen: no lightened section is called \"crown\": the plan has nape, sides, hairline")]
#[case::too_early("sides=7@5", "seen: sides is not on the hair at minute 5: it begins at 12")]
fn a_look_that_cannot_be_is_refused(#[case] seen: &str, #[case] want: &str) {
    assert_eq!(plan_with(&together(), &evidence(&[seen])).unwrap_err().to_string(), want);
}

#[test]
fn a_book_that_is_not_read_or_torn_is_said() {
    let unread = plan(&together()).unwrap();
    assert_eq!(verdicts(&unread, "strand-book"), [Verdict::NotJudged]);
    let text = example("juniper_and_tide_strands.csv");
    let torn = read_strand_book(&text[..text.len() - 20]);
    let read = plan_with(&together(), &Evidence { book: Some(torn), ..Evidence::default() }).unwrap();
    assert!(texts(&read, "strand-book").starts_with("not read from the book: line 5: torn"));
}

/// pH of powder mixes in print: about 10 (citation `mixed-ph`).
#[test]
fn a_stated_ph_is_used_and_warned_of_and_none_is_invented() {
    let with = |ph| changed(only_lightener(), |file| shop(file).lightener[0].mixed_ph = ph);
    let (unknown, usual, high) = (with(None), with(Some(10.0)), with(Some(11.0)));
    assert_eq!((verdicts(&unknown, "alkalinity"), unknown.lift[0].mixed_ph), (vec![], None));
    assert_eq!(verdicts(&usual, "alkalinity"), [Verdict::Passed]);
    assert_eq!(verdicts(&high, "alkalinity"), [Verdict::Warning]);
    assert!(high.lift[0].first_strand.best() > usual.lift[0].first_strand.best());
    let missing = |plan: &Plan| plan.to_string().contains("pH of the mixes");
    assert!(missing(&unknown) && !missing(&usual));
}

#[test]
fn lightener_without_persulfate_is_slower() {
    let with = |persulfate| changed(only_lightener(), |file| shop(file).lightener[0].persulfate = persulfate);
    let (unsaid, without) = (with(None), with(Some(false)));
    assert_eq!(unsaid.lift, with(Some(true)).lift);
    assert!(without.lift[0].first_strand.best() < unsaid.lift[0].first_strand.best());
}

/// A level that may be read half a level wrong starts the forecast half a level off: its bounds hold those of the hair that is
/// really there, at the rinse, at every look and in the trade's rule.
#[test]
fn a_forecast_holds_all_levels_that_the_hair_may_have() {
    let of = |level: f64, margin: Option<f64>| {
        let plan = changed(fine(), |file| {
            (file.analysis.natural_level, file.analysis.natural_level_plus_minus) = (level, margin);
            file.strand = vec![strand(8.0)];
        });
        plan.lift[0].clone()
    };
    let (read, darker, lighter) = (of(6.0, Some(0.5)), of(5.5, None), of(6.5, None));
    assert_eq!(read.from_level.to_array().map(|level| level.number()), [5.5, 6.0, 6.5]);
    for (held, low, high) in [
        (read.first_strand, darker.first_strand, lighter.first_strand),
        (read.last_strand, darker.last_strand, lighter.last_strand),
        (read.rule, darker.rule, lighter.rule),
        (read.looks[0].level, darker.looks[0].level, lighter.looks[0].level),
    ] {
        assert!(held.low() <= low.low() && held.high() >= high.high(), "{held:?} holds not {low:?} and {high:?}");
    }
    assert_eq!((read.chance.low(), read.chance.high()), (darker.chance.best(), lighter.chance.best()));
    let (early, late) = (read.reached.early, read.reached.late);
    assert_eq!(early, lighter.reached.early);
    assert!(late.is_none_or(|late| darker.reached.late.is_some_and(|darker| late >= darker)));
}

/// A lighter stretch beside it is no reading error: the darkest alone is what is lifted.
#[test]
fn lighter_ends_do_not_widen_the_start() {
    let plan = changed(fine(), |file| {
        file.analysis.natural_level_plus_minus = Some(0.5);
        let ends = ExistingColour {
            zone: Some(Zone::Ends),
            from_cm: None,
            to_cm: None,
            level: 9.0,
            tone: None,
            artificial: false,
        };
        file.analysis.existing = vec![ends];
        file.section[0].zone = Zone::Lengths;
    });
    assert_eq!(plan.lift[0].from_level.to_array().map(|level| level.number()), [5.5, 6.0, 6.5]);
    assert_eq!(plan.colour[0].from_level.high().number(), 9.0);
}

/// What is there sooner waits, so that all are rinsed together: it is put on when the answer says, not as soon as hands are free.
#[test]
fn what_lightens_sooner_is_begun_later() {
    let plan = open(|file| {
        shop(file).developer.remove(0);
        shop(file).diluent.clear();
        let slow = &mut file.section[0];
        (slow.target_level, slow.apply_min) = (8.0, Some(5.0));
        let mut quick = slow.clone();
        (quick.name, quick.starting_level) = ("quick".to_owned(), Some(7.6));
        file.section.push(quick);
    });
    let group = &plan.together[0];
    assert_eq!(group.why_not, None);
    for (section, step) in group.sections.iter().zip(&plan.order) {
        assert!((step.begin.min() - section.begin.min()).abs() < 1e-9, "{}: {}", step.name, step.begin);
        assert!((step.rinse_by.min() - group.rinse.unwrap().min()).abs() < 1e-9, "{}: {}", step.name, step.rinse_by);
    }
    assert!(plan.order[1].begin.min() > plan.order[0].applied.min() + 1.0, "{:?}", plan.order);
}

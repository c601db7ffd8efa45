//! From consultation to decision: a fold over the findings, what tests change, the calendar, alternatives, the agreement.

use super::base::{changed, example, fine};
use foilwork::{
    colour::Level,
    finding::{Finding, Reason, Rule, Verdict},
    reader::Format,
    service::{
        AlternativeKind, Concern, ConsultationPlan, Evidence, Go, Plan, ServiceFile, TestKind, consult, dated_visits,
        decide, parse, parse_with_shop, plan,
        shape::{AgreedEntry, ConsultationEntry, HistoryFlag, Party, PastEntry, PastWork, WishEntry, Zone},
    },
    sheet::{agreement_page, consultation_sheet},
    shop::parse_shop,
};
use rstest::rstest;
use std::process::Command;

pub(super) fn consulted(file: &ServiceFile) -> ConsultationPlan {
    consult(file, &Evidence::default()).unwrap()
}

pub(super) fn staged() -> ServiceFile {
    let shop = parse_shop(&example("juniper_and_tide.toml"), Format::Toml).unwrap();
    parse_with_shop(&example("staged-lightening.toml"), Format::Toml, &shop).unwrap()
}

pub(super) fn with(change: impl FnOnce(&mut ConsultationEntry)) -> ServiceFile {
    let mut file = fine();
    let mut entry = ConsultationEntry { known_since: Some("2000-01-01".to_owned()), ..Default::default() };
    change(&mut entry);
    file.consultation = Some(entry);
    file.analysis.length_cm = Some(20.0);
    file
}

fn past(on: Option<&str>, what: PastWork, formula: Option<&str>) -> PastEntry {
    PastEntry { on: on.map(str::to_owned), what, formula: formula.map(str::to_owned), zone: None, place: None }
}

/// Every stop of the plan is a stop of the decision and the other way round, whatever the file says.
#[rstest]
#[case::reaction(HistoryFlag::ReactionToHairColour, Go::Stop, &[Party::Guest, Party::Doctor])]
#[case::young(HistoryFlag::UnderSixteen, Go::Stop, &[Party::Guardian])]
#[case::asthma(HistoryFlag::Asthma, Go::Restrict, &[Party::Guest, Party::Doctor])]
#[case::pregnancy(HistoryFlag::Pregnancy, Go::Restrict, &[Party::Guest, Party::Doctor])]
#[case::medicine(HistoryFlag::Medicine, Go::Restrict, &[Party::Guest, Party::Doctor])]
#[case::skin(HistoryFlag::SkinDisease, Go::Restrict, &[Party::Guest, Party::Doctor])]
#[case::loss(HistoryFlag::HairLoss, Go::Restrict, &[Party::Guest, Party::Doctor])]
#[case::tattoo(HistoryFlag::BlackHennaTattoo, Go::Restrict, &[Party::Guest])]
fn the_decision_is_a_fold(#[case] flag: HistoryFlag, #[case] go: Go, #[case] who: &[Party]) {
    let plan = changed(fine(), |file| file.analysis.history = Some(vec![flag]));
    let decision = decide(&plan);
    assert_eq!(decision.go, go);
    assert_eq!(decision.go == Go::Stop, plan.blocked);
    let asked: Vec<Party> = decision.consents.iter().map(|consent| consent.who).collect();
    assert!(who.iter().all(|party| asked.contains(party)), "{asked:?}");
    let of = |verdict| plan.findings.iter().filter(|found| found.verdict == verdict).count();
    assert_eq!(decision.stops.len(), of(Verdict::Stop));
    let counted = decision.restrictions.len() + decision.open.len() + decision.for_the_bench;
    assert_eq!(counted, of(Verdict::Warning) + of(Verdict::NotJudged), "nothing is lost");
    assert!(!decision.text.contains("safe") || decision.text.contains("does not say"));
}

#[test]
fn work_at_the_bench_keeps_nobody_from_beginning() {
    assert!(Rule::ALL.iter().filter(|rule| Concern::of(**rule) == Concern::Work).count() < 15);
    for rule in [Rule::SkinTest, Rule::Scalp, Rule::MetalSalts, Rule::Law, Rule::Elasticity, Rule::StrandTest] {
        assert_ne!(Concern::of(rule), Concern::Work);
    }
}

/// A warning about the work alone does not keep anybody from beginning, and is counted; one about the guest restricts.
#[rstest]
#[case(Rule::Scale, Go::Proceed, 1)]
#[case(Rule::Stock, Go::Proceed, 1)]
#[case(Rule::ListPrice, Go::Proceed, 1)]
#[case(Rule::SkinTest, Go::Restrict, 0)]
fn a_warning_about_the_work_is_counted_for_the_bench(#[case] rule: Rule, #[case] go: Go, #[case] bench: usize) {
    let mut plan = changed(fine(), |_| ());
    plan.findings.retain(|found| !matches!(found.verdict, Verdict::Stop | Verdict::Warning | Verdict::NotJudged));
    plan.findings.push(Finding::new(rule, Verdict::Warning, "told", Reason::assumed()));
    let decision = decide(&plan);
    assert_eq!((decision.go, decision.for_the_bench), (go, bench));
    assert_eq!(decision.restrictions.len(), 1 - bench);
    let told = consultation_sheet(&ConsultationPlan { decision, ..consulted(&fine()) });
    let line = told.split_whitespace().collect::<Vec<_>>().join(" ").contains("1 more concern the work at the bench");
    assert_eq!(line, bench == 1, "{told}");
}

fn agreed(who: Party, on: &str, rules: &[Rule]) -> AgreedEntry {
    AgreedEntry { who, on: on.to_owned(), to: Some("a gloss".to_owned()), rules: rules.to_vec() }
}

/// An agreement settles the rules that it names and no other; one that names none is only noted.
#[test]
fn an_agreement_settles_what_it_names() {
    let asked = |given: Vec<AgreedEntry>| {
        let mut file = with(|entry| entry.agreed = given);
        file.analysis.history = Some(vec![HistoryFlag::Asthma, HistoryFlag::Medicine]);
        let found = consulted(&file);
        let of_doctor = found.decision.consents.iter().filter(|one| one.who == Party::Doctor);
        let told: Vec<_> = of_doctor.map(|one| (one.agreed_on.map(|on| on.to_string()), one.to.clone())).collect();
        (told, found)
    };
    let both = vec![Rule::Airways, Rule::Health];
    let (told, found) = asked(vec![agreed(Party::Doctor, "2015-03-01", &[])]);
    assert_eq!(told, [(None, both.clone())]);
    assert!(found.decision.text.contains("still to agree: guest and doctor"), "{}", found.decision.text);
    let words = "An agreement of 2015-03-01 (11 years before) to \"a gloss\" is noted: check that it covers this";
    let sheet = consultation_sheet(&found).split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(sheet.contains(words), "{sheet}");
    assert!(!found.agreement.may_be_signed);
    let one = |on, rule| agreed(Party::Doctor, on, &[rule]);
    let (told, _) = asked(vec![one("2026-11-01", Rule::Airways)]);
    assert_eq!(told, [(Some("2026-11-01".to_owned()), vec![Rule::Airways]), (None, vec![Rule::Health])]);
    // The second of a party counts as the first does, and the page then waits for the guest alone.
    let (told, found) = asked(vec![one("2026-11-01", Rule::Airways), one("2026-11-02", Rule::Health)]);
    let days: Vec<_> = told.iter().map(|(on, _)| on.clone().unwrap()).collect();
    assert_eq!(days, ["2026-11-02", "2026-11-01"]);
    assert!(found.agreement.may_be_signed && found.agreement.before.is_empty(), "{:?}", found.agreement.before);
    assert!([Rule::Airways, Rule::Health].iter().all(|rule| found.agreement.warned.contains(rule)));
    // The page to sign says what the checks warn of, and what nobody can judge.
    let page = agreement_page(&found);
    assert!(page.contains("Asthma: dust and spray of lightener can set it off."), "{page}");
    assert!(found.decision.open.is_empty() || page.contains("Not yet settled:"), "{page}");
}

/// The class that the rules propose is taken only where the bowl holds it.
#[test]
fn the_class_that_is_taken_is_that_of_the_bowl() {
    let mut file = fine();
    // From level 6 to 7 natural hair needs no lightener, by the bounds of the trade; the bowl holds one all the same.
    file.section[0].target_level = 7.0;
    let found = consulted(&file);
    let classes = found.alternatives.iter().filter(|one| one.about == AlternativeKind::ProductClass);
    let taken: Vec<&str> = classes.clone().filter(|one| one.taken).map(|one| one.option.as_str()).collect();
    assert_eq!(taken, ["lightener"]);
    let gentler = classes.clone().find(|one| one.option == "permanent colour").unwrap();
    assert!(!gentler.taken && gentler.why.ends_with("the bowl holds lightener"), "{}", gentler.why);
}

/// One visit is promised only where the low end of the estimate reaches it, and never both ways.
#[test]
fn one_visit_is_promised_by_the_low_end() {
    for target in [6.5, 7.0, 7.5, 8.0] {
        let mut file = fine();
        file.section[0].target_level = target;
        let found = consulted(&file);
        let low = changed(file, |_| ()).lift[0].chance.low().percent();
        let said = found.agreement.visits.concat();
        assert!(low >= 80.0 || !said.contains("One visit should do"), "{target}: {low}: {said}");
        let perhaps = found.agreement.not_promised.iter().any(|text| text.contains("perhaps not in one visit"));
        assert!(!(perhaps && said.contains("should do")), "{target}: {said}");
        let series = found.alternatives.iter().find(|one| one.option == "a staged series");
        assert!(low >= 80.0 || series.is_none_or(|one| one.why != "not needed by the forecast"), "{target}: {low}");
    }
}

/// An agreement is told with its day, and lifts no stop.
#[test]
fn an_agreement_lifts_no_stop() {
    let mut file = with(|entry| {
        entry.agreed = vec![agreed(Party::Guardian, "2026-11-20", &[Rule::Age])];
    });
    file.analysis.history = Some(vec![HistoryFlag::UnderSixteen]);
    let found = consulted(&file);
    let guardian = found.decision.consents.iter().find(|one| one.who == Party::Guardian).unwrap();
    assert_eq!(guardian.agreed_on.unwrap().to_string(), "2026-11-20");
    assert!(guardian.stop_stands && found.decision.go == Go::Stop && !found.agreement.may_be_signed);
    let page = agreement_page(&found);
    assert!(page.contains("We cannot begin yet") && !page.contains("Price") && !page.contains("class=\"sign\""));
}

/// What was done counts as if the history said it: metallic colour without a clear test stops peroxide.
#[rstest]
#[case(PastWork::MetallicColour, Rule::MetalSalts, Verdict::Stop)]
#[case(PastWork::Henna, Rule::MetalSalts, Verdict::Stop)]
#[case(PastWork::Permed, Rule::EarlierService, Verdict::Warning)]
fn the_past_counts_as_history(#[case] what: PastWork, #[case] rule: Rule, #[case] verdict: Verdict) {
    let found = consulted(&with(|entry| entry.past = vec![past(Some("2026-01-10"), what, Some("unknown hand"))]));
    let all = [found.decision.stops, found.decision.restrictions].concat();
    assert!(all.iter().any(|one| one.rule == rule && one.verdict == verdict), "{all:?}");
}

/// Two weeks are the shortest of the trade's two to six between services; 13 days are less.
#[rstest]
#[case("2026-11-12", true)]
#[case("2026-11-11", false)]
fn the_gap_between_services_is_kept(#[case] on: &str, #[case] warned: bool) {
    let found = consulted(&with(|entry| entry.past = vec![past(Some(on), PastWork::Lightener, Some("30 g"))]));
    let told = found.decision.restrictions.iter().any(|one| one.text.contains("leave 2 weeks at least"));
    assert_eq!(told, warned);
}

#[test]
fn gaps_are_unknown_and_open() {
    let open = |file: &ServiceFile| {
        let found = consulted(file);
        let texts = found.decision.open.iter().filter(|one| one.rule == Rule::History).map(|one| one.text.clone());
        assert_eq!(texts.clone().count(), found.said.unwrap().gaps.len());
        texts.collect::<Vec<_>>().join("\n")
    };
    assert_eq!(open(&with(|_| ())), "", "20 cm of hair are younger than 26 years");
    assert!(open(&with(|entry| entry.known_since = Some("2026-01-01".to_owned()))).contains("before 2026-01-01"));
    assert!(open(&with(|entry| entry.known_since = None)).contains("`consultation.known_since`"));
    let undated = open(&with(|entry| entry.past = vec![past(None, PastWork::Toner, None)]));
    assert!(undated.contains("toner: when is not known"), "{undated}");
    let unknown = open(&with(|entry| entry.past = vec![past(Some("2026-01-01"), PastWork::Unknown, None)]));
    assert!(unknown.contains("2026-01-01: what was done is not known"), "{unknown}");
}

/// The base aims at level 9 on the lengths, natural level 6.
#[rstest]
#[case::held(Zone::Roots, 6.5, 0.5, None)]
#[case::there_already(Zone::Roots, 7.0, 0.5, Some("no section works there"))]
#[case::another_level(Zone::Ends, 8.0, 0.5, Some("aims at level 9"))]
#[case::wide(Zone::Ends, 8.0, 3.0, None)]
fn a_wish_is_held_or_told(#[case] zone: Zone, #[case] level: f64, #[case] tolerance: f64, #[case] why: Option<&str>) {
    let wish = WishEntry { zone, level, tone: None, tolerance_levels: Some(tolerance), dislikes: None };
    let found = consulted(&with(|entry| entry.wish = vec![wish]));
    let held = found.said.unwrap().wishes.remove(0);
    match why {
        Some(words) => assert!(held.why_not.unwrap().contains(words)),
        None => assert_eq!(held.why_not, None),
    }
}

/// The plan holds to a wish by its last strand, which is on the hair for the shortest time, and by the lower bound of it; what
/// holds by the estimate alone is no more than a note, and a tone in words is not held against anything.
#[test]
fn a_wish_is_passed_by_the_last_strand_and_its_lower_bound_only() {
    let wished = |tolerance: f64, tone: Option<&str>| {
        let tone = tone.map(str::to_owned);
        let wish = WishEntry { zone: Zone::Ends, level: 8.0, tone, tolerance_levels: Some(tolerance), dislikes: None };
        plan(&with(|entry| entry.wish = vec![wish])).unwrap()
    };
    let one = wished(3.0, None);
    let (held, lift) = (&one.consulted.as_ref().unwrap().wishes[0], &one.lift[0]);
    assert_eq!(held.sections[0].forecast_level, Some(lift.last_strand));
    assert!(lift.last_strand.best() < lift.first_strand.best());
    let verdicts = |plan: &Plan| -> Vec<Verdict> {
        plan.findings.iter().filter(|one| one.rule == Rule::Wish).map(|one| one.verdict).collect()
    };
    // Between what the best estimate and what the lower bound fall short; the section aims a level higher.
    let short = |level: Level| 8.0 - level.number();
    let (best, low) = (short(lift.last_strand.best()), short(lift.last_strand.low()));
    let between = (best.max(1.0) + low) / 2.0;
    assert!(best < between && between < low && low < 3.0);
    assert_eq!(verdicts(&wished(low + 0.01, None)), [Verdict::Passed]);
    assert_eq!(verdicts(&wished(between, None)), [Verdict::Note]);
    assert_eq!(verdicts(&wished(low + 0.01, Some("smoky"))), [Verdict::NotJudged, Verdict::Passed]);
    let words = |plan: &Plan| plan.consulted.as_ref().unwrap().wishes[0].in_words();
    assert_eq!(words(&wished(low + 0.01, None)), "held by the low end of the forecast");
    assert_eq!(words(&wished(between, None)), "held by the estimate, not by all of its bounds");
}

/// A wish beyond the forecast is not held, though the section aims at it.
#[test]
fn a_wish_beyond_the_forecast_is_told() {
    let found = consulted(&staged());
    let lengths = &found.said.as_ref().unwrap().wishes[0];
    let forecast = lengths.sections[0].forecast_level.unwrap();
    assert!(forecast.best() < Level::new(7.5).unwrap());
    assert!(lengths.why_not.as_deref().unwrap().contains("is expected at level"));
    assert!(found.agreement.not_promised.iter().any(|text| text.contains("level 8 is wished")));
}

/// Each result is the service planned anew: the stated one changes nothing, and each test can stop it.
#[test]
fn each_test_can_change_the_decision() {
    let file = fine();
    let found = consulted(&file);
    for one in found.tests.iter().filter(|one| one.stated) {
        assert!(one.adds.is_empty() && one.lifts.is_empty() && one.go == found.decision.go);
    }
    let go = |test: TestKind, result: Option<&str>| {
        found.tests.iter().find(|one| one.test == test && one.result.as_deref() == result).unwrap().go
    };
    for test in [TestKind::Skin, TestKind::Strand, TestKind::Incompatibility] {
        assert_eq!(go(test, Some("reaction")), Go::Stop);
    }
    assert_eq!((go(TestKind::Skin, None), go(TestKind::Elasticity, Some("poor"))), (Go::Stop, Go::Stop));
    let mut untested = file.clone();
    untested.analysis.skin_test = None;
    let clear = consulted(&untested);
    let clear =
        clear.tests.iter().find(|one| one.test == TestKind::Skin && one.result.as_deref() == Some("clear")).unwrap();
    assert!(clear.lifts.iter().any(|one| one.rule == Rule::SkinTest) && clear.go != Go::Stop, "{clear:?}");
    // Porosity is a factor of the time as well, where the target is reached at all.
    let mut near = file;
    near.section[0].target_level = 7.5;
    let found = consulted(&near);
    let factor = |word: &str| {
        let of = |one: &&foilwork::service::TestEffect| {
            one.test == TestKind::Porosity && one.result.as_deref() == Some(word)
        };
        found.tests.iter().find(of).unwrap().time_factor.unwrap()
    };
    assert!(factor("high") < 1.0 && factor("low") > 1.0);
}

/// Source: the shortest, usual and longest gap of each visit, added up by hand from the weeks that it states.
#[test]
fn visits_stand_on_the_calendar() {
    let plan = changed(staged(), |_| ());
    let visits = dated_visits(&plan);
    assert_eq!(visits.len(), plan.lift.iter().map(|lift| lift.visits.len()).max().unwrap());
    let told: Vec<String> = visits.iter().map(|visit| visit.earliest.to_string()).collect();
    // 2, 4 and 4 weeks after 2 December 2026.
    assert_eq!(told, ["2026-12-02", "2026-12-16", "2027-01-13", "2027-02-10"]);
    assert_eq!(visits.iter().map(|visit| visit.number).collect::<Vec<_>>(), [1, 2, 3, 4]);
    for visit in &visits {
        assert!(visit.reached.iter().all(|name| visit.sections.contains(name)));
    }
}

#[test]
fn alternatives_have_their_reasons() {
    let found = consulted(&staged());
    assert!(found.alternatives.iter().all(|one| !one.why.is_empty() && !one.option.is_empty()));
    let of = |about, section: &str, option: &str| {
        let same = |one: &&foilwork::service::Alternative| {
            one.about == about && one.section.as_deref() == Some(section) && one.option == option
        };
        found.alternatives.iter().find(same).unwrap_or_else(|| panic!("{section}: {option}"))
    };
    assert!(of(AlternativeKind::Developer, "back", "developer 12").why.starts_with("says STOP, developer"));
    assert!(of(AlternativeKind::Developer, "back", "developer 3").why.starts_with("weaker"));
    assert!(of(AlternativeKind::Developer, "sides", "developer 6").why.contains("with more strain"));
    assert!(of(AlternativeKind::ProductClass, "back", "lightener").taken);
    assert_eq!(found.not_tried, 0);
}

#[test]
fn the_agreement_can_be_read_and_has_a_price_from_to() {
    let found = consulted(&staged());
    let price = found.agreement.price.as_ref().unwrap();
    assert!(price.low <= price.planned && price.planned <= price.high && price.high < price.all_visits_high);
    assert_eq!(price.visits, found.visits.len());
    let visits = &found.agreement.visits;
    assert!(visits[0].contains("4 visits") && visits[1].starts_with("Visit 2: not before 2026-12-16"), "{visits:?}");
    assert_eq!(visits.len(), 4, "{visits:?}");
    let page = agreement_page(&found);
    // Later visits are not priced: neither their number nor their price is promised. Four times 197.50 are 790.00.
    let up_to = "174,50 € to 197,50 € for this visit, 174,50 € as planned; 4 visits like this one would come to up to 790,00 €, and \
                 more may be needed";
    assert!(page.contains(up_to) && !page.contains("together at most"), "{page}");
    assert!(page.contains("Price") && page.contains("Guest") && !page.contains("analysis.") && !page.contains(" g "));
    let text = consultation_sheet(&found);
    assert!(text.lines().all(|line| line.chars().count() <= 80));
}

#[test]
fn a_day_after_the_start_is_refused() {
    let file = with(|entry| entry.past = vec![past(Some("2026-11-26"), PastWork::Toner, None)]);
    let problems = consult(&file, &Evidence::default()).unwrap_err().to_string();
    let want = "consultation.past[1].on: \"2026-11-26\" is after the start of the service: give the day it was";
    assert_eq!(problems, want);
}

#[test]
fn the_command_ends_with_1_where_the_decision_is_stop() {
    let run = |args: &[&str]| Command::new(env!("CARGO_BIN_EXE_foilwork")).args(args).output().unwrap();
    let fine = run(&["consult", "examples/staged-lightening.toml"]);
    assert_eq!(fine.status.code(), Some(0));
    let data = run(&["consult", "examples/staged-lightening.toml", "--json"]);
    let data: serde_json::Value = serde_json::from_slice(&data.stdout).unwrap();
    assert_eq!(data["decision"]["go"], "restrict");
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("young.toml");
    let text = example("soft-gradient.toml").replace("history = [\"lightened\"]", "history = [\"under-sixteen\"]");
    assert!(parse(&text, Format::Toml).is_ok());
    std::fs::write(&path, text).unwrap();
    let stopped = run(&["consult", path.to_str().unwrap(), "--agreement"]);
    assert_eq!(stopped.status.code(), Some(1));
    assert!(String::from_utf8(stopped.stdout).unwrap().contains("We cannot begin yet"));
}

/// A bottle of the same strength under another name changes nothing: as likely, and with no more strain.
#[test]
fn the_same_strength_in_another_bottle_strains_no_more() {
    let mut file = fine();
    let shop = super::base::shop(&mut file);
    let twin = foilwork::shop::shape::DeveloperEntry { name: "twin".to_owned(), ..shop.developer[0].clone() };
    shop.developer.push(twin);
    let found = consulted(&file);
    let twin = found.alternatives.iter().find(|one| one.option == "twin").unwrap();
    assert!(twin.why.contains("with no more strain: worth a strand test"), "{}", twin.why);
}

/// The sentence of the decision names what restricts and what is not known, each only where there is any.
#[rstest]
#[case::restricted(&[Verdict::Warning], true, false)]
#[case::open(&[Verdict::NotJudged], false, true)]
#[case::both(&[Verdict::Warning, Verdict::NotJudged], true, true)]
fn the_decision_says_what_to_keep_to_and_what_to_settle(
    #[case] verdicts: &[Verdict],
    #[case] keep: bool,
    #[case] settle: bool,
) {
    let mut plan = changed(fine(), |_| ());
    plan.findings.retain(|found| !matches!(found.verdict, Verdict::Stop | Verdict::Warning | Verdict::NotJudged));
    let found = verdicts.iter().map(|verdict| Finding::new(Rule::Elasticity, *verdict, "told", Reason::assumed()));
    plan.findings.extend(found);
    let text = decide(&plan).text;
    assert_eq!(text.contains("keep to 1 restriction (elasticity)"), keep, "{text}");
    assert_eq!(text.contains("settle what is not known first (elasticity)"), settle, "{text}");
}

/// What there is none of has no heading, and what was not tried is counted where there is any.
#[test]
fn the_sheet_has_a_heading_for_what_there_is() {
    let mut file = with(|entry| {
        entry.past = vec![past(Some("2025-01-10"), PastWork::Lightener, None)];
        entry.wish =
            vec![WishEntry { zone: Zone::Lengths, level: 8.0, tone: None, tolerance_levels: None, dislikes: None }];
        entry.agreed = ["2026-11-25", "2026-11-24", "2025-11-26", "2025-11-25", "2024-11-26", "2024-11-25"]
            .map(|on| agreed(Party::Doctor, on, &[]))
            .to_vec();
    });
    file.analysis.history = Some(vec![HistoryFlag::Asthma]);
    let mut found = consulted(&file);
    let flat = |found: &ConsultationPlan| consultation_sheet(found).split_whitespace().collect::<Vec<_>>().join(" ");
    let told = flat(&found);
    // By the calendar: years are full on the same day of the year, and days are counted before that.
    for before in ["11-25 (on the day)", "11-24 (1 day before)", "5-11-26 (364 days before)", "5-11-25 (1 year before)"]
    {
        assert!(told.contains(before), "{before}: {told}");
    }
    assert!(told.contains("2024-11-26 (1 year before)") && told.contains("2024-11-25 (2 years before)"), "{told}");
    let headed =
        |found: &ConsultationPlan, heading: &str| consultation_sheet(found).lines().any(|line| line == heading);
    assert!(["VISITS", "WISHES"].iter().all(|heading| headed(&found, heading)), "{told}");
    assert!(!told.contains("None is stated.") && !told.contains("were not tried"), "{told}");
    found.visits.clear();
    found.not_tried = 3;
    let said = found.said.as_mut().unwrap();
    said.past.clear();
    said.wishes.clear();
    assert!(!["VISITS", "WISHES"].iter().any(|heading| headed(&found, heading)));
    let told = flat(&found);
    assert!(told.contains("None is stated.") && told.contains("3 more developers were not tried."), "{told}");
}

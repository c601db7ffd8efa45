//! The pages in full words: what stands above, the chair, lift and foils, what is closed, and what the guest reads.

use super::{
    about, base, exact, finding,
    first::cleaning,
    level, levels,
    money::{between, priced},
    q,
    weighing::three,
};
use foilwork::{
    finding::{Finding, Reason, Rule, Verdict},
    head::{LowlightPlace, Technique, lowlights},
    service::{
        Caution, DefaultUsed, DefaultValue, LevelStretch, LevelsAlong, NotComputed, Plan, Start, StatedNotUsed, Unknown,
    },
    sheet::{bench_page, guest_page},
    source::{Basis, Interval},
};
use jiff::civil::date;
use rstest::rstest;

fn main(page: &str) -> String {
    between(page, "<main>", "</main>")
}

/// From the top of the bench page to the chair.
fn above(plan: &Plan) -> String {
    between(&bench_page(plan), "<main>", "<h2>At the chair")
}

/// Stops before warnings before what is open, each only where there is one; a rule that is open twice is named once.
#[test]
fn what_stands_above_the_chair() {
    let mut plan = base();
    (plan.chair.other_work, plan.booking.book) = (Some(q(35.0)), Some(q(90.0)));
    let opening = "Fine starts 2026-11-25 10:00; finished at 11:30, if all goes as planned: book 90 min, with bowls, looks, walks, rinses \
        and 35 min of other work; the times below count none of these; law of European Union";
    assert_eq!(above(&plan), opening);
    let warn = "Mind before you begin WARN lift: slow WARN pace: quick";
    let open = "OPEN, unknown and never passed: law, scalp OPEN law: one OPEN law: two OPEN scalp: three";
    let stop = "Do not begin: resolve this first STOP age: too young";
    plan.findings = vec![finding(Rule::Lift, Verdict::Warning, "slow"), finding(Rule::Pace, Verdict::Warning, "quick")];
    assert_eq!(above(&plan), format!("{opening} {warn}"));
    let open_ones = [(Rule::Law, "one"), (Rule::Law, "two"), (Rule::Scalp, "three")];
    plan.findings.extend(open_ones.map(|(rule, text)| finding(rule, Verdict::NotJudged, text)));
    plan.findings.push(finding(Rule::Law, Verdict::Passed, "fine"));
    plan.findings.insert(0, finding(Rule::Age, Verdict::Stop, "too young"));
    plan.blocked = true;
    (plan.guest, plan.colourist) = (Some("J-014".to_owned()), Some("Ada".to_owned()));
    (plan.notes, plan.jurisdiction) = (Some("a quiet seat".to_owned()), None);
    let opening = opening.replace("law of European Union", "no jurisdiction stated");
    let who = "guest J-014 colourist Ada notes a quiet seat";
    assert_eq!(above(&plan), format!("{opening} {who} {stop} {warn} {open}"));
    plan.findings.retain(|one| one.verdict == Verdict::NotJudged);
    plan.blocked = false;
    assert_eq!(above(&plan), format!("{opening} {who} {open}"));
}

fn chair(plan: &Plan) -> String {
    between(&bench_page(plan), "<h2>At the chair</h2>", "<h2>Colours on the way")
}

const COLUMNS: &str = "into the tared bowl weigh the scale shows";

fn minded() -> Plan {
    let mut plan = three();
    let caution = |text, reminder| Caution { text, reminder, sources: Vec::new() };
    plan.cautions =
        vec![caution("Wear gloves.", Some("gloves")), caution("Air.", None), caution("Open it.", Some("open it"))];
    plan
}

/// The bowls of the other tests: what is due at one minute is one line, in the order of the clock.
#[test]
fn the_chair_on_the_page() {
    let plan = minded();
    let want = format!(
        "First brush now: count down 1. top 10:02 mix 10:03 begin 10:15 look 10:20 all on 10:30 look 10:50 PLANNED RINSE, LATEST 10:55 10:55 \
         RINSE AT LATEST top: one bowl of 45 g, use within 30 min {COLUMNS} powder 15 g 15 g developer 30 g 45 g 4 (3.94 to 4.06) % w/w on the \
         hair; 45 (40 to 50) g needed 1 strength on the hair: measured by you, as weighed; how much is needed: assumed After rinsing; these \
         times are the earliest, as if rinsing took none: 2. veil 10:50 mix bowl 1 of 2, begin 10:55 all on 11:05 mix bowl 2 of 2, RINSE BY \
         veil: 2 fresh bowls of 10 g each, use each within 20 min {COLUMNS} J9 10 g 10 g 0 % w/w on the hair; 20 g needed 2 strength on the \
         hair: stated by you, as weighed; how much is needed: stated by you 3. root shadow 10:55 mix, begin 10:58 all on 11:02 look 11:05 \
         RINSE BY root shadow: one bowl of 12 g, use within 20 min {COLUMNS} J6 12 g 12 g 1.55 % w/w on the hair; 12 g needed 3 strength on \
         the hair: measured by you, as weighed; how much is needed: stated by you Times are those of the clock, as planned; write down the \
         real ones. Rinse a strand when it is there, not by the clock; at LATEST whatever it shows. Mind: gloves; open it"
    );
    assert_eq!(chair(&plan), want);
    let page = bench_page(&plan);
    for due in [
        "class=\"due\" data-minute=\"2\" data-what=\"mix, top\"",
        "class=\"due\" data-minute=\"30.9\" data-what=\"look, top\"",
        "class=\"rinse\" data-minute=\"50\" data-what=\"PLANNED RINSE, LATEST 10:55, top\"",
        "class=\"rinse paperless\" data-minute=\"55\" data-what=\"RINSE AT LATEST, top\"",
        // What comes after the rinse counts from it, for the countdown too.
        "class=\"rinse\" data-minute=\"65\" data-what=\"mix bowl 2 of 2, RINSE BY, veil\"",
        "class=\"due\" data-minute=\"55\" data-what=\"mix, begin, root shadow\"",
    ] {
        assert!(page.contains(due), "{due}: {page}");
    }
}

/// From the look on at which the last strand is due, that one is looked at too; minutes where no time of day is stated.
#[test]
fn looks_at_the_last_strand_are_named() {
    let mut plan = minded();
    plan.order[0].look_at_last = Some(q(30.9));
    assert!(chair(&plan).contains("10:15 look 10:20 all on 10:30 look, the last strand too 10:50"), "{}", chair(&plan));
    plan.start = Start::Day(date(2026, 11, 25));
    plan.order[0].off_by = q(50.0);
    plan.habits.ounces = true;
    let told = chair(&plan);
    let first = "1. top 2 mix 3 begin 15 look 20 all on 30 look, the last strand too 50 RINSE BY top: one bowl of 45 g = 1.59 oz, use within";
    let after = "After rinsing, counted anew from its end: 2. veil 0 mix bowl 1 of 2, begin 5 all on";
    let end = "Times are minutes from the first brush: the file states no time of day, as planned; write down the real ones. Rinse a strand \
        when it is there, not by the clock. Weigh the grams: oz are ounces of mass (28.35 g), not of volume. Mind: gloves; open it";
    assert!(told.contains(first) && told.contains(after) && told.ends_with(end), "{told}");
}

/// Nothing after the rinse has no words of it.
#[test]
fn without_toners_nothing_follows_the_rinse() {
    let mut plan = minded();
    plan.order.truncate(1);
    plan.mixes.truncate(1);
    assert!(!chair(&plan).contains("After rinsing"), "{}", chair(&plan));
}

/// A planned step before the colour: its estimates with their bounds, its grams, what to mind; one that is only asked for is not.
#[test]
fn a_step_before_the_colour_on_the_page() {
    let mut plan = minded();
    let mut asked = cleaning();
    asked.planned = false;
    plan.first_steps = vec![asked, cleaning()];
    let name = "top, clean out the artificial pigment first";
    let want = format!(
        "First brush now: count down First: {name} 10:00 begin 10:10 all on, by estimate 10:10 (10:05 to 10:20) 10:25 over: rinse, dry, and \
         judge the hair anew, by estimate 10:25 (10:15 to 10:45) {name}: mix just before the first brush {COLUMNS} takes powder 9 g 9 g 9 (8 \
         to 10) g developer 18.2 g 27.2 g 18 g powder and developer; 10 (5 to 15) min on the hair, looked at all the while; 4 % w/w on the \
         hair 1 how much the step takes: assumed Mind: gloves; look often 1. top 10:02 mix"
    );
    let told = chair(&plan);
    assert!(told.starts_with(&want), "{told}");
    let step = &mut plan.first_steps[1];
    (step.why_not, step.applied, step.on_hair) = (Some("no developer is weak enough".to_owned()), None, None);
    let told = chair(&plan);
    let want = "by estimate 10:25 (10:15 to 10:45) no developer is weak enough powder and developer; 10 (5 to 15) min on the hair, looked at \
        all the while 1 how much";
    assert!(told.contains(want) && !told.contains("10:10 all on") && !told.contains("just before"), "{told}");
    plan.first_steps.truncate(1);
    assert!(chair(&plan).starts_with("First brush now: count down 1. top"), "{}", chair(&plan));
}

/// Lift in a table, with its pictures; absent where nothing is lifted.
#[test]
fn lift_on_the_page() {
    let mut plan = base();
    let lift = &mut plan.lift[0];
    (lift.section, lift.target_level) = ("top".to_owned(), level(9.0));
    (lift.first_strand, lift.last_strand) = (levels([8.0, 9.0, 9.5]), level(8.5).into());
    lift.chance = about([40.0, 60.0, 80.0]);
    let page = bench_page(&plan);
    let told = between(&page, "<h2>Lift against time</h2>", "<svg");
    let want = "Levels at the planned rinse section wanted first strand at the rinse last strand reach it, in 100 top 9 9 (8 to 9.5) 8.5 60 (40 \
        to 80)";
    assert!(told.starts_with("At every look: ") && told.ends_with(want), "{told}");
    let when = "+/- in CIEDE2000, if every section reaches its target (top: 60 (40 to 80) of 100)";
    assert!(main(&page).contains(when), "{page}");
    plan.lift.clear();
    assert!(!bench_page(&plan).contains("Lift against time") && !bench_page(&plan).contains("if every section"));
}

fn foils(plan: &Plan) -> String {
    between(&bench_page(plan), "<h2>Head and foils</h2>", "</main>")
}

/// A section is a row where its foils or its grams are known; darker strands and a level along the strand have tables of their own.
#[test]
fn foils_on_the_page() {
    let mut plan = base();
    plan.lift.clear();
    plan.head.look = None;
    plan.head.root_shadow = None;
    plan.head.sections.truncate(1);
    plan.head.basis = Basis::Assumed;
    let one = &mut plan.head.sections[0];
    (one.section, one.technique) = ("top".to_owned(), Technique::Weave);
    (one.foils, one.takes, one.mix_per_foil, one.first_foil, one.last_foil) = (None, None, None, None, None);
    (one.lowlights, one.along) = (None, None);
    let told = foils(&plan);
    for words in ["Foils in the order", "Darker strands", "Level along", "Grams and foils"] {
        assert!(!told.contains(words), "{words}: {told}");
    }
    plan.head.sections[0].takes = Some(about([40.0, 45.0, 50.0]));
    let table = "Foils in the order of the work section taken by foils g a foil takes g top weave";
    let end = "Grams and foils are estimates";
    let told = foils(&plan);
    assert!(told.starts_with(&format!("{table} - - 45 (40 to 50) {end}")), "{told}");
    let one = &mut plan.head.sections[0];
    (one.takes, one.foils, one.mix_per_foil) = (None, Some(Interval::exact(10)), Some(about([4.0, 4.5, 5.0])));
    (one.first_foil, one.last_foil) = (Some(3), Some(12));
    let mut depth = lowlights(level(9.0).into(), level(8.0), level(7.0), level(6.0), None).unwrap();
    (depth.level, depth.share, depth.foils, depth.light_foils_between) = (level(7.0), exact(20.0), None, None);
    one.lowlights = Some(depth);
    let place = |foils, behind: &[u32]| LowlightPlace { region: None, foils, behind_foils: behind.to_vec() };
    one.lowlight_places = vec![place(1, &[4]), place(2, &[5, 7])];
    let stretch = |from: f64, to: f64, at: f64| LevelStretch { from: q(from), to: q(to), level: level(at).into() };
    let stretches = vec![stretch(0.0, 2.0, 6.0), stretch(2.0, 10.0, 8.0)];
    one.along = Some(LevelsAlong { taken: None, stretches: stretches.clone(), basis: Basis::Assumed });
    let told = foils(&plan);
    assert!(told.starts_with(&format!("{table} 3 to 12 4.5 (4 to 5) ? {end}")), "{told}");
    let dark = "Darker strands section of what, and how much where top depth: strands of level 7, 20 % of the hair there behind light foil 4; \
        behind light foils 5, 7";
    let along = "Level along the strand section cm from the scalp: level top 0-2: 6; 2-10: 8 [of the taken hair alone; assumed]";
    assert!(told.contains(&format!("{dark} {along}")), "{told}");
    plan.head.sections[0].along =
        Some(LevelsAlong { taken: None, stretches: stretches[..1].to_vec(), basis: Basis::Assumed });
    assert!(!foils(&plan).contains("Level along the strand"));
    plan.head.sections.clear();
    assert!(!bench_page(&plan).contains("Head and foils"));
}

/// What is closed on the page: notes and what passed, defaults, sources once each.
#[test]
fn what_is_closed_on_the_page() {
    let mut plan = base();
    let reason = |text: &'static str| Reason { id: None, text: text.into(), from_memory: false };
    let of = |rule, verdict, text: &str, source| Finding { sources: vec![source], ..finding(rule, verdict, text) };
    plan.findings = vec![
        of(Rule::Lift, Verdict::Warning, "slow", reason("one")),
        of(Rule::Pace, Verdict::Note, "quick", reason("two")),
        of(Rule::Law, Verdict::Passed, "6 of 12 %", reason("two")),
        of(Rule::Law, Verdict::Passed, "3 of 12 %", reason("two")),
    ];
    let sources = vec![reason("one"), reason("two")];
    let value = DefaultValue::Pieces(3);
    plan.defaults = vec![DefaultUsed { field: "a".to_owned(), value, basis: Basis::Assumed, sources }];
    plan.not_computed = vec![NotComputed { what: Unknown::Toner, why: "none asked for" }];
    plan.stated_not_used = vec![StatedNotUsed { field: "salon.basins", why: "one is enough" }];
    let told = between(&bench_page(&plan), "<summary>Notes", "</main>");
    let want = "and what passed note pace: quick ok law: 6 of 12 % ok law: 3 of 12 % \"ok\" means nothing was found, not that anything is safe. \
        Defaults used, and what was not computed a = 3 [assumed] one; two toner: none asked for stated, not used: salon.basins: one is enough \
        Sources of the checks lift: one pace: two law: two All checks, defaults and sources are on the page, closed, and in `foilwork plan`. \
        foilwork ";
    assert!(told.starts_with(want), "{told}");
}

/// The price in the guest's words: of the list, by the costs, not whole, before tax.
#[rstest]
#[case(true, false, true, "60.00 EUR by our price list, for what is planned here, tax included.")]
#[case(false, false, true, "59.50 EUR for what is planned here, tax included.")]
#[case(
    false,
    true,
    true,
    "59.50 EUR so far, tax included. The price is not complete yet: we tell you the rest before we begin."
)]
#[case(false, false, false, "50.00 EUR for what is planned here, before tax.")]
fn the_price_for_the_guest(#[case] listed: bool, #[case] left_out: bool, #[case] taxed: bool, #[case] want: &str) {
    let mut plan = priced();
    plan.booking.price = listed.then(|| super::eur("60.00"));
    let money = plan.money.as_mut().unwrap();
    if !left_out {
        money.left_out.clear();
    }
    money.taxed = money.taxed.filter(|_| taxed);
    let told = between(&guest_page(&plan), "<h2>Price</h2>", "<h2>At home");
    let range = "From 55.00 EUR to 65.00 EUR, as the hair takes less or more mixture. It covers this visit, with the work and the times planned. ";
    let range = if listed { "" } else { range };
    let more = "Another product, more time or a second application cost more. We ask you before we go on.";
    assert_eq!(told, format!("{want} {range}{more}"));
}

/// Sections by their target, what has none by what it is, steps before the colour first.
#[test]
fn what_the_guest_is_told_is_planned() {
    let mut plan = three();
    (plan.guest, plan.chair.other_work, plan.booking.book) = (Some("J-014".to_owned()), Some(q(10.0)), Some(q(90.0)));
    plan.first_steps = vec![cleaning()];
    plan.colour.truncate(1);
    let colour = &mut plan.colour[0];
    (colour.section, colour.target_level, colour.target_tone) = ("top".to_owned(), level(9.0), Some("ash".to_owned()));
    plan.lift[0].chance = about([79.9, 85.0, 90.0]);
    let plan_told = |plan: &Plan| between(&guest_page(plan), "<main>", "<h2>What you should know");
    let told = plan_told(&plan);
    let opening = "Fine 2026-11-25 10:00, about 90 min in the chair, until about 11:30 for J-014 What we plan top: before the colour,";
    let planned = " top: to level 9, ash veil: toner root shadow: root shadow Levels count from 1";
    assert!(told.starts_with(opening) && told.contains(planned), "{told}");
    assert!(told.ends_with(&format!("Perhaps not in one visit: {}", plan.lift[0].section)), "{told}");
    // From 80 of 100 on, by the low end too, it is as good as promised.
    plan.lift[0].chance = about([80.0, 85.0, 90.0]);
    (plan.start, plan.first_steps) = (Start::Day(date(2026, 11, 25)), Vec::new());
    plan.colour.clear();
    let told = plan_told(&plan);
    let opening = "Fine 2026-11-25, about 90 min in the chair for J-014 What we plan top: lightener veil: toner root shadow: root shadow";
    assert!(told.starts_with(opening) && !told.contains("Perhaps not"), "{told}");
    // What is no lightener is colour; without the other work the end is not known.
    plan.mixes[0].bowls[0].parts.remove(0);
    (plan.chair.other_work, plan.booking.book, plan.chair.total) = (None, None, q(80.0));
    let told = plan_told(&plan);
    let opening = "Fine 2026-11-25, about 80 min in the chair, and consultation, drying for J-014 What we plan top: colour veil: toner";
    assert!(told.starts_with(opening), "{told}");
}

/// The first regrowth of all sections is when to come back.
#[test]
fn the_guest_comes_back_with_the_first_regrowth() {
    let mut plan = three();
    let made = plan.head.sections[0].clone();
    let sections = [8.0, 4.0, 6.0].map(|weeks| {
        let mut one = made.clone();
        one.line_shows_after = about([weeks - 1.0, weeks, weeks + 1.0]);
        one
    });
    plan.head.sections = sections.to_vec();
    let home = |plan: &Plan| between(&guest_page(plan), "<h2>At home</h2>", "</main>");
    let told = home(&plan);
    assert!(told.contains("begins to show after about 4 (3 to 5) weeks, an estimate: come back then."), "{told}");
    plan.head.sections.clear();
    assert!(!home(&plan).contains("regrowth"));
}

/// What stops, what warns and what is open, in the guest's words, each rule once; then there is nothing to sign.
#[test]
fn the_guest_is_told_what_was_found() {
    let mut plan = three();
    let know = |plan: &Plan| between(&guest_page(plan), "<h2>What you should know</h2>", "</main>");
    let clear = know(&plan);
    assert!(
        clear.contains("Agreement I have read") && !clear.contains("Not yet") && !clear.contains("cannot begin"),
        "{clear}"
    );
    plan.findings = vec![
        finding(Rule::Scalp, Verdict::Stop, "broken"),
        finding(Rule::Lift, Verdict::Warning, "slow"),
        finding(Rule::Lift, Verdict::Warning, "slower"),
        finding(Rule::Stock, Verdict::Warning, "short"),
        finding(Rule::Law, Verdict::NotJudged, "whose?"),
        finding(Rule::Age, Verdict::Passed, "of age"),
    ];
    plan.blocked = true;
    let told = know(&plan);
    let want = "We cannot begin yet. Your colourist explains what has to change first. To settle: your scalp. Your scalp is sore or broken: it \
        has to heal first. For some of your hair, the level wanted is not what one visit with these products usually gives. Not yet settled: \
        what the law allows; ask your colourist. Hair colour can cause allergy";
    assert!(told.starts_with(want) && !told.contains("Agreement") && !told.contains("Price"), "{told}");
    // That it cannot begin stands above already.
    assert!(told.contains("Before we begin The doctor has to agree (your scalp). At home"), "{told}");
    assert_eq!(told.matches("We cannot begin yet").count(), 1, "{told}");
}

/// Where a test has to be read first, that stands under its own heading and the page is not signed.
#[test]
fn what_has_to_be_settled_first() {
    let mut plan = three();
    plan.findings = vec![finding(Rule::SkinTestAge, Verdict::Warning, "old")];
    let told = between(&guest_page(&plan), "<h2>What you should know</h2>", "</main>");
    let want = "Not to be signed yet: what stands under \u{201c}Before we begin\u{201d} has to be settled first. Your skin test is too old by our \
        rule: it is done again. Hair colour can cause";
    assert!(
        told.starts_with(want) && told.contains("Before we begin A skin test is made and read first. At home"),
        "{told}"
    );
    assert!(!told.contains("Agreement") && !told.contains("Price"), "{told}");
}

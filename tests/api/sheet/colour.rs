//! Level and tone in full: the table, what it is mixed with, level rules, steps before, contrasts, how it looks on the way.

use super::{about, base, exact, first::cleaning, flat, level, levels, part, q, weighing::three};
use foilwork::{
    colour::{Hue, Instrument, LevelChange, Naming, Swatch, section_look},
    finding::{Finding, Reason, Rule, Verdict},
    service::{Contrast, LevelRule, NaturalShadeDose, PartKind, Plan, SectionColour, SectionNeutralising},
    sheet::{SheetPart, bench_page},
    source::{Basis, Interval},
    toner::{ExposedBasis, NeutralisingDose},
};
use rstest::rstest;

fn change(levels: [f64; 3]) -> Interval<LevelChange> {
    let [low, best, high] = levels.map(|one| LevelChange::from_levels(one).unwrap());
    Interval::new(low, best, high).unwrap()
}

/// A section of which nothing optional is known, in its natural colour from beginning to end.
fn plain(section: &str) -> SectionColour {
    let natural = Swatch::natural(level(6.0));
    SectionColour {
        section: section.to_owned(),
        from_level: level(6.0).into(),
        target_level: level(6.0),
        change_levels: change([0.0; 3]),
        target_tone: None,
        exposed: None,
        level_rule: None,
        natural,
        start: ExposedBasis::Modelled,
        measured_with: None,
        exposed_swatch: None,
        toner: None,
        swatch: natural,
        look: None,
        neutralising: None,
        natural_shade: None,
        pre_pigment: None,
    }
}

/// The mixes of three, whose names are short enough for the table.
fn coloured() -> Plan {
    let mut plan = three();
    plan.lift.clear();
    plan.contrasts.clear();
    plan.mixes[0].bowls[0].parts[0].product = "pow".to_owned();
    plan.mixes[0].bowls[0].parts[1].product = "dev".to_owned();
    plan.colour = vec![plain("top")];
    plan
}

const NAMES: &str = "LEVEL AND TONE, SECTION BY SECTION | section with level levels exposes neutraliser wanted";

/// The table, without what follows it.
fn table(plan: &Plan) -> String {
    let told = part(plan, SheetPart::Colour);
    let after = ["Levels by the ", "Contrast by ", "top: ", "Exposed pigment ", "Colours on the way"];
    let end = after.iter().filter_map(|words| told.find(words)).min().unwrap();
    told[..end].trim_end().to_owned()
}

/// A colour of its own level deposits; lift and exposed pigment, from one word to another or of one word alone.
#[test]
fn a_row_for_each_section() {
    let mut plan = coloured();
    let exposed = base().colour[0].exposed;
    let mut lifted = plain("top");
    (lifted.target_level, lifted.change_levels) = (level(9.0), change([3.0; 3]));
    lifted.exposed = exposed;
    let pigment = &mut lifted.exposed.as_mut().unwrap().value;
    (pigment.words, pigment.neutraliser) = (("red", "gold"), Some((Hue::Red, Hue::Blue)));
    lifted.target_tone = Some("ash".to_owned());
    let mut deposited = plain("veil");
    (deposited.target_level, deposited.change_levels) = (level(4.0), change([-2.0; 3]));
    deposited.exposed = lifted.exposed;
    let pigment = &mut deposited.exposed.as_mut().unwrap().value;
    (pigment.words, pigment.neutraliser) = (("gold", "gold"), None);
    plan.colour = vec![lifted, deposited, plain("none")];
    let want = format!(
        "{NAMES} top pow, dev 6 to 9 lift 3 red to gold {} to {} ash veil J9 6 to 4 deposit 2 gold - - none 6 to 6 lift 0 - - -",
        Hue::Red.words(),
        Hue::Blue.words()
    );
    assert_eq!(table(&plan), want);
}

/// The bottle is named where it is one developer; a blend, or water alone, is told by its strength.
#[rstest]
#[case(&[("dev", PartKind::Developer)], "pow, dev")]
#[case(&[("dev", PartKind::Developer), ("water", PartKind::Diluent)], "pow, 3.25 % w/w blended")]
#[case(&[("water", PartKind::Diluent)], "pow, 3.25 % w/w blended")]
#[case(&[("J9", PartKind::Colour)], "pow + J9")]
#[case(&[], "pow")]
fn what_a_section_is_mixed_with(#[case] others: &[(&str, PartKind)], #[case] want: &str) {
    let mut plan = coloured();
    plan.mixes[0].developer = exact(3.25);
    let parts = &mut plan.mixes[0].bowls[0].parts;
    let made = parts[0].clone();
    parts.truncate(1);
    for (product, kind) in others {
        let mut one = made.clone();
        (one.product, one.kind) = ((*product).to_owned(), *kind);
        parts.push(one);
    }
    assert_eq!(table(&plan), format!("{NAMES} top {want} 6 to 6 lift 0 - - -"));
}

/// Bounds of a deposit are told as positive levels, the least first.
#[test]
fn a_deposit_with_bounds() {
    let mut plan = coloured();
    plan.colour[0].change_levels = change([-3.0, -2.0, -1.5]);
    assert_eq!(table(&plan), format!("{NAMES} top pow, dev 6 to 6 deposit 2 (1.5 to 3) - - -"));
}

/// A planned cleaning decides which shade it needs; one of another section, or one that is only asked for, does not.
#[test]
fn a_section_that_is_cleaned_first() {
    let cleaned = "top: cleaned before the colour: what cleaning leaves decides which shade it needs; judge the level anew and work from \
        that.";
    let mut plan = coloured();
    plan.first_steps = vec![cleaning()];
    assert_eq!(table(&plan), format!("{NAMES} top pow, dev 6 to 6 after cleaning - - -"));
    assert!(part(&plan, SheetPart::Colour).contains(cleaned));
    for other in [false, true] {
        plan.first_steps = vec![cleaning()];
        if other {
            plan.first_steps[0].section = "nape".to_owned();
        } else {
            plan.first_steps[0].planned = false;
        }
        assert_eq!(table(&plan), format!("{NAMES} top pow, dev 6 to 6 lift 0 - - -"));
        assert!(!part(&plan, SheetPart::Colour).contains("cleaned before"));
    }
}

/// What the rules of level say, with and without a shade for the target, after a step before it and without one.
#[rstest]
#[case(false, Some([7.5, 8.0, 8.5]), "", "8 (7.5 to 8.5)")]
#[case(true, None, "after the step before, from level 6, ", "none is light enough")]
fn what_the_level_rules_say(
    #[case] stepped: bool,
    #[case] shade: Option<[f64; 3]>,
    #[case] after: &str,
    #[case] asked: &str,
) {
    let mut plan = coloured();
    plan.colour[0].level_rule = Some(LevelRule {
        shade_level: level(7.0),
        white_hair_level: level(7.5),
        pigmented_hair_level: level(6.5).into(),
        shade_for_target_level: shade.map(levels),
        no_shade_for_target: shade.is_none().then(|| "none is light enough".to_owned()),
        sources: Vec::new(),
    });
    if stepped {
        plan.first_steps = vec![cleaning()];
    }
    let want = format!(
        "top: {after}by the level rules the shade (level 7) leaves white hair at about 7.5 and pigmented hair at about 6.5; for the \
         target the rules ask for: {asked}. Lighter than natural hair the result is the mean of natural and shade, darker the shade's own \
         level. Rules of thumb; the strand decides. Colours on the way"
    );
    let told = part(&plan, SheetPart::Colour);
    assert!(told.contains(&want), "{told}");
}

/// Each level once, from the darkest on, by the words of the list that the shop wants.
#[test]
fn levels_have_names_where_the_shop_wants_them() {
    let mut plan = coloured();
    let made = plan.colour[0].clone();
    let mut other = made.clone();
    (other.section, other.from_level, other.target_level) = ("nape".to_owned(), level(9.0).into(), level(6.0));
    plan.colour[0].target_level = level(9.0);
    plan.colour.push(other);
    assert!(!part(&plan, SheetPart::Colour).contains("Levels by the"));
    plan.habits.level_names = Some(Naming::European);
    let name = |number: f64| level(number).name(Naming::European).unwrap().value.to_string();
    let want = format!("Levels by the European list: 6 {}, 9 {}.", name(6.0), name(9.0));
    let told = part(&plan, SheetPart::Colour);
    assert!(told.contains(&want), "{want}: {told}");
}

/// Sections beside each other: by the swatches where both are there, else by the figure of the plan.
#[test]
fn contrasts_are_told_pair_by_pair() {
    let mut plan = coloured();
    let contrast = |first: &str, second: &str, ciede2000| Contrast {
        first: first.to_owned(),
        second: second.to_owned(),
        ciede2000,
    };
    plan.contrasts = vec![contrast("a", "b", 12.34), contrast("top", "c", 4.0)];
    let told = part(&plan, SheetPart::Colour);
    assert!(told.contains("Contrast by the colour model (CIEDE2000): a / b 12.3; top / c 4. Colours"), "{told}");
    // A measured swatch has no bounds of its own, and is no distance apart from itself.
    let lab = plan.colour[0].natural.lab();
    plan.colour[0].swatch = Swatch::measured(lab);
    plan.contrasts = vec![contrast("top", "top", 4.0)];
    let told = part(&plan, SheetPart::Colour);
    assert!(told.contains("(CIEDE2000): top / top 0"), "{told}");
}

#[test]
fn exposed_pigment_is_explained_where_there_is_some() {
    let mut plan = coloured();
    let words = "Exposed pigment and its neutralising tone: common practice, hue by hue; read the strand.";
    assert!(!part(&plan, SheetPart::Colour).contains(words));
    plan.colour.push(SectionColour { exposed: base().colour[0].exposed, ..plan.colour[0].clone() });
    assert!(part(&plan, SheetPart::Colour).contains(words));
}

fn shown(swatch: &Swatch) -> String {
    format!("L* {:.0} {}", swatch.lab().l(), swatch.hue().map_or("grey", Hue::words))
}

/// What the looks say of the first section, below their own heading.
fn looks(plan: &Plan) -> String {
    let told = part(plan, SheetPart::Colour);
    let heading = "Colours on the way, by the hair model (not a photograph; +/- in CIEDE2000): - ";
    told.split_once(heading).unwrap_or_else(|| panic!("{told}")).1.to_owned()
}

/// Now, exposed and at the end, each once; the least certain of them says how sure they are.
#[test]
fn how_it_looks_on_the_way() {
    let mut plan = coloured();
    let one = &mut plan.colour[0];
    let (natural, light, toned) = (
        Swatch::natural(level(6.0)),
        Swatch::lightened(level(6.0), level(9.0)),
        Swatch::measured(Swatch::white().lab()),
    );
    one.swatch = toned;
    let error = |swatches: &[&Swatch]| swatches.iter().map(|swatch| swatch.uncertainty()).fold(0.0, f64::max);
    let (now, end) = (shown(&natural), shown(&toned));
    let want = format!("top: now {now}; at the end {end} (+/- {:.0})", error(&[&natural, &toned]));
    assert_eq!(looks(&plan), flat(&want));
    let one = &mut plan.colour[0];
    (one.exposed_swatch, one.toner, one.start) = (Some(light), Some("veil".to_owned()), ExposedBasis::Seen);
    let sure = error(&[&natural, &light, &toned]);
    let want = format!("top: now {now}; exposed, as seen, {}; toned {end} (+/- {sure:.0})", shown(&light));
    assert_eq!(looks(&plan), flat(&want));
    let one = &mut plan.colour[0];
    (one.start, one.measured_with) = (ExposedBasis::Measured, Some(Instrument::Photograph));
    // What is exposed is left as it is: it is not shown twice.
    one.swatch = light;
    let sure = error(&[&natural, &light]);
    let want = format!("top: now {now}; exposed, measured (photograph), {} (+/- {sure:.0})", shown(&light));
    assert_eq!(looks(&plan), flat(&want));
}

fn dose(share: f64) -> SectionNeutralising {
    let finding = Finding::new(Rule::CoolDose, Verdict::Note, "dose", Reason::assumed());
    SectionNeutralising {
        neutraliser: "J0-ash".to_owned(),
        carrier: "J9".to_owned(),
        dose: NeutralisingDose {
            share: exact(share),
            mass: about([8.0, 10.0, 12.5]),
            warmth_before: exact(20.0),
            warmth_without: exact(18.0),
            warmth_left: exact(0.0),
            basis: Basis::Assumed,
            finding,
        },
    }
}

/// How much of what the look takes: a share of the bowl, all of it, and a natural shade for white hair.
#[rstest]
#[case(
    25.0,
    None,
    None,
    "neutral takes 10 (8 to 12.5) g of J0-ash in the toner, 25 % of the shades, the rest J9; more over-tones: watch a strand white hair: \
     5 g of a natural shade (the shop has none) in the mix [assumed]"
)]
#[case(
    100.0,
    Some("veil"),
    Some("J6"),
    "even 10 g of J0-ash, all of veil, leaves warmth (8 g where it takes up more): a deeper shade takes more white hair: 5 g of J6 in the \
     mix [assumed]"
)]
fn how_much_a_look_takes(
    #[case] share: f64,
    #[case] toner: Option<&str>,
    #[case] shade: Option<&str>,
    #[case] want: &str,
) {
    let mut plan = coloured();
    let one = &mut plan.colour[0];
    (one.neutralising, one.toner) = (Some(dose(share)), toner.map(str::to_owned));
    let shade = shade.map(str::to_owned);
    one.natural_shade = Some(NaturalShadeDose { shade, share: exact(50.0), mass: exact(5.0), basis: Basis::Assumed });
    let told = looks(&plan);
    assert!(told.ends_with(&format!(") {want}")), "{told}");
}

/// From afar strands and the hair between them are one level; whether strands show is said, and the caveat once.
#[rstest]
#[case(false, "")]
#[case(true, ", strands that do not show")]
fn how_it_looks_from_afar(#[case] as_one: bool, #[case] want: &str) {
    let mut plan = coloured();
    let (natural, light) = (Swatch::natural(level(6.0)), Swatch::lightened(level(6.0), level(9.0)));
    let mut look = section_look(&natural, &light, q(50.0));
    (look.reads_as_one, look.perceived_level) = (as_one, levels([7.0, 7.5, 8.0]));
    plan.colour[0].look = Some(look.clone());
    plan.colour[0].swatch = plan.colour[0].natural;
    let told = looks(&plan);
    // Hair that stays as it is has no contrast to itself.
    let want = format!(
        "from afar it reads as level 7.5 (7 to 8), contrast 0 (CIEDE2000){want} From afar: {}.",
        flat(look.caveat)
    );
    assert!(told.ends_with(&want), "{want}: {told}");
}

/// A plan without colour has no looks, on the sheet and on the page.
#[test]
fn without_colour_there_is_nothing_to_look_at() {
    let mut plan = coloured();
    assert!(bench_page(&plan).contains("Colours on the way"));
    plan.colour.clear();
    assert_eq!(part(&plan, SheetPart::Colour), NAMES);
    assert!(!bench_page(&plan).contains("Colours on the way"));
}

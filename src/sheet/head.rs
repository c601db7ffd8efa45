use crate::{
    head::{LowlightPlace, Lowlights, PartLine, RegionFoils, Rejected, ShadowStep, Softness},
    quantity::{Mass, Quantity},
    service::{
        HeadPlan, HeadReading, LevelStretch, LevelsAlong, Meeting, PartReading, Plan, RootShadowPlan, SectionPlan,
        ZoneHair, if_all_reached, if_it_reaches,
    },
    source::Interval,
    text::{Sheet, number, range, rough, span},
};

/// Hair, foils and the look of the head.
pub(super) fn head(sheet: &mut Sheet, plan: &Plan) {
    let head = &plan.head;
    sheet.heading("Head and foils");
    sheet.paragraph(&hair(head), 0);
    let zone = |one: &ZoneHair| format!("{} {} g, {} cm2", one.zone, range(&one.hair, 0), rough(&one.surface));
    let zones: Vec<String> = head.zones.iter().map(zone).collect();
    if !zones.is_empty() {
        sheet.paragraph(&format!("by zone: {}", zones.join("; ")), 2);
    }
    let natural = head.natural.map(|natural| format!("natural hair for the first {} cm", number(natural.cm(), 1)));
    let grown = head.regrowth.map(|grown| format!("{} cm grown in since the last colour", range(&grown, 1)));
    let known: Vec<String> = natural.into_iter().chain(grown).collect();
    if !known.is_empty() {
        let warm = format!("the scalp warms the first {} cm", range(&head.warm_band, 1));
        sheet.paragraph(&format!("{}; {warm}", known.join("; ")), 0);
    }
    if !head.gradient.is_empty() {
        gradient(sheet, head);
    }
    let rows = head.sections.iter().map(row).collect();
    let names = ["section", "taken by", "hair g", "takes g", "foils", "g a foil", "begins cm"];
    sheet.table(&names, &[2, 3, 4, 5, 6], rows);
    for section in &head.sections {
        sheet.paragraph(&upkeep(section), 2);
        sheet.paragraph(&hairs(section), 4);
        if section.zones.len() > 1 {
            let carries: Vec<String> =
                section.zones.iter().filter(|one| one.hair.high() > Mass::MIN).map(zone).collect();
            sheet.paragraph(&format!("of its hair, mixture lies on: {}", carries.join("; ")), 4);
        }
        if let Some(along) = section.along.as_ref().filter(|along| along.stretches.len() > 1) {
            sheet.paragraph(
                &format!("level along the strand, in cm: {}", levels_along(along, &section.section, plan)),
                4,
            );
        }
        if let Some(planned) = planned(section) {
            sheet.paragraph(&planned, 4);
        }
        sheet.paragraph(&format!("not taken: {}", rejected(section)), 4);
        if let Some(ends) = &section.ends_between {
            let (hair, takes) = (range(&ends.hair, 0), range(&ends.takes, 0));
            let from = number(ends.from.cm(), 1);
            sheet.paragraph(
                &format!("of that, ends between the foils from {from} cm: {hair} g of hair take {takes} g"),
                4,
            );
        }
        if let Some(depth) = &section.lowlights {
            sheet.paragraph(&lowlights(depth), 4);
            let places: Vec<String> = section.lowlight_places.iter().map(lowlight_place).collect();
            if !places.is_empty() {
                sheet.paragraph(&format!("they go {}", places.join("; ")), 4);
            }
        }
    }
    for meeting in &head.meetings {
        sheet.paragraph(&meets(meeting), 2);
    }
    if let Some(shadow) = &head.root_shadow {
        root_shadow(sheet, shadow);
    }
    if let Some(reading) = &head.look {
        look(sheet, reading, if_all_reached(&plan.lift));
    }
}

/// Centimetres and their level; of what, and what it rests on.
pub(super) fn levels_along(along: &LevelsAlong, section: &str, plan: &Plan) -> String {
    let one = |cm: &LevelStretch| {
        let level = span(&cm.level, |level| number(level.number(), 1));
        format!("{}-{}: {level}", number(cm.from.cm(), 1), number(cm.to.cm(), 1))
    };
    let stretches: Vec<String> = along.stretches.iter().map(one).collect();
    let of = if along.taken.is_some() { "with the hair left between" } else { "of the taken hair alone" };
    let shadow = if plan.head.root_shadow.is_some() { ", before the root shadow" } else { "" };
    let when = if_it_reaches(&plan.lift, section).map(|when| format!(", {when}")).unwrap_or_default();
    format!("{} [{of}{shadow}; {}]{when}", stretches.join("; "), along.basis)
}

/// Where two formulas meet in a foil.
fn meets(meeting: &Meeting) -> String {
    let of = meeting.shade.as_ref().map_or_else(
        || "no shade of the shop is near it".to_owned(),
        |shade| {
            format!(
                "{} is nearest to it, CIEDE2000 {} apart",
                shade.code,
                span(&shade.apart_ciede2000, |apart| number(apart, 1))
            )
        },
    );
    format!(
        "- {} goes into the foil before {}; where they meet {}, {} shows: {of}",
        meeting.first, meeting.then, meeting.level, meeting.tone
    )
}

/// What the root shadow is, how long in each region, and how it is blended.
fn root_shadow(sheet: &mut Sheet, shadow: &RootShadowPlan) {
    let found = if shadow.found { "found on the shelf" } else { "as stated" };
    sheet.paragraph(
        &format!("Root shadow of {} ({found}): {}, {}", shadow.shades.join(" + "), shadow.level, shadow.tone),
        0,
    );
    let same = shadow.lengths.windows(2).all(|two| two.first().map(|a| a.length) == two.last().map(|b| b.length));
    let all: Vec<String> = match shadow.lengths.first() {
        Some(first) if same => vec![format!("{} cm everywhere", range(&first.length, 1))],
        _ => shadow.lengths.iter().map(|one| format!("{} {} cm", one.region, range(&one.length, 1))).collect(),
    };
    sheet.paragraph(&format!("length: {}", all.join("; ")), 2);
    if let Some(light) = shadow.into_level.filter(|_| shadow.blend.len() > 1) {
        let step = |step: &ShadowStep| {
            format!("{} from {} to {} cm", step.level, number(step.from.cm(), 1), number(step.to.cm(), 1))
        };
        let steps: Vec<String> = shadow.blend.iter().map(step).collect();
        sheet.paragraph(&format!("blended into {light}, where it is longest: {}", steps.join(", ")), 2);
    }
}

fn hair(head: &HeadPlan) -> String {
    let mass = head.hair.as_ref().map_or_else(
        || format!("{} g for each cm of length", range(&head.mass_per_length, 1)),
        |mass| format!("{} g", range(mass, 0)),
    );
    let all = &head.mass_per_length;
    let by_use = match &head.by_use {
        None => "",
        Some(used) if all.low() <= used.low() && used.high() <= all.high() => {
            ", and what was used before does not fit it"
        }
        Some(_) => ", narrowed by what was used before",
    };
    let hairs = rough(&head.hairs);
    format!("{mass} of hair in all, {hairs} hairs [{}{by_use}]; booked as: {}", head.basis, head.service_class)
}

/// Hairs, surface and minutes of a section.
fn hairs(section: &SectionPlan) -> String {
    let surface = section.surface.as_ref().map(|surface| format!(", {} cm2 of surface", rough(surface)));
    let applied = section.applying.in_words();
    format!("{} hairs{}; {applied}", rough(&section.hairs), surface.unwrap_or_default())
}

fn row(section: &SectionPlan) -> Vec<String> {
    let unknown = || "?".to_owned();
    vec![
        section.section.clone(),
        section.technique.to_string(),
        section.hair.as_ref().map_or_else(unknown, |mass| range(mass, 0)),
        section.takes.as_ref().map_or_else(unknown, |mass| range(mass, 0)),
        section.foils.as_ref().map_or_else(|| "-".to_owned(), |foils| span(foils, |foils| foils.to_string())),
        section.mix_per_foil.as_ref().map_or_else(|| "-".to_owned(), |mass| range(mass, 1)),
        range(&section.start, 1),
    ]
}

/// What the gradient asks of each region, in the order of the work.
fn gradient(sheet: &mut Sheet, head: &HeadPlan) {
    let mut regions: Vec<&RegionFoils> = head.gradient.iter().collect();
    regions.sort_by_key(|region| region.order);
    let row = |region: &RegionFoils| {
        vec![
            region.order.to_string(),
            region.region.clone(),
            format!("{:.0}", region.taken.percent()),
            format!("{:.1}", region.start.cm()),
            region.foils.map_or_else(|| "-".to_owned(), |foils| foils.to_string()),
        ]
    };
    let names = ["order", "gradient in", "% taken", "begins cm", "foils"];
    sheet.table(&names, &[0, 2, 3, 4], regions.into_iter().map(row).collect());
    sheet.blank();
}

/// The classes of product that were considered, but for the one that is planned.
fn rejected(section: &SectionPlan) -> String {
    let one = |other: &Rejected| format!("{} ({})", other.product, other.why);
    let others = section.product_class.rejected.iter().filter(|other| Some(other.product) != section.planned_class);
    others.map(one).collect::<Vec<_>>().join("; ")
}

/// What is planned where another class is the gentlest that does it.
fn planned(section: &SectionPlan) -> Option<String> {
    let (taken, decided) = (section.planned_class?, &section.product_class);
    let against = decided.rejected.iter().find(|other| other.product == taken)?;
    Some(if against.why == Rejected::GENTLER_DOES {
        format!("a gentler class would do: {}; planned is {taken}", decided.product)
    } else {
        format!("planned is {taken}, which {}", against.why)
    })
}

pub(super) fn lowlights(depth: &Lowlights) -> String {
    let after = match depth.light_foils_between.filter(|_| !depth.leaves_no_light()) {
        None => String::new(),
        Some(1) => ", one after every light foil".to_owned(),
        Some(between) => format!(", one after every {between} light foils"),
    };
    let foils = depth
        .foils
        .as_ref()
        .map_or_else(|| "strands".to_owned(), |foils| format!("{} foils", span(foils, |foils| foils.to_string())));
    let none_left = if depth.leaves_no_light() { ": no light hair remains there" } else { "" };
    let share = range(&depth.share, 0);
    format!("depth: {foils} of {}, {share} % of the hair there{after}{none_left}", depth.level)
}

/// How many go there, and behind which of the light foils.
pub(super) fn lowlight_place(place: &LowlightPlace) -> String {
    let numbers: Vec<String> = place.behind_foils.iter().map(u32::to_string).collect();
    let foils = if numbers.len() == 1 { "foil" } else { "foils" };
    let region = place.region.as_ref().map(|region| format!("in {region}, {} of them, ", place.foils));
    format!("{}behind light {foils} {}", region.unwrap_or_default(), numbers.join(", "))
}

fn upkeep(section: &SectionPlan) -> String {
    let start = match section.softness {
        Softness::Line => "a line",
        Softness::Soft => "a soft start",
        _ => "no visible start",
    };
    let decided = &section.product_class;
    let before: Vec<String> = decided.before.iter().map(|step| format!("; before it: {step}")).collect();
    let before = before.concat();
    let shadow = section.root_shadow.as_ref().map(|length| format!("; a root shadow of {} cm", range(length, 1)));
    format!(
        "{}: {start}, regrowth shows after {} weeks{}; the gentlest class is {}, which {}{before}",
        section.section,
        range(&section.line_shows_after, 0),
        shadow.unwrap_or_default(),
        decided.product,
        decided.why
    )
}

fn look(sheet: &mut Sheet, reading: &HeadReading, when: Option<String>) {
    sheet.blank();
    let rows = reading.look.regions.iter().map(|region| {
        vec![
            region.region.clone(),
            format!("{} %", range(&region.hair, 0)),
            range(&region.lab_l, 0),
            bar(region.lab_l.best().lab_l()),
        ]
    });
    sheet.table(&["region", "of the hair", "reads as L*", "dark to light"], &[1, 2], rows.collect());
    let when = when.map(|when| format!(", {when}")).unwrap_or_default();
    if !when.is_empty() {
        sheet.paragraph(&format!("It reads so{when}."), 2);
    }
    let lighter = |over: &Option<Interval<f64>>| over.as_ref().map(|over| span(over, |l| number(l, 1)));
    if let Some(over) = lighter(&reading.look.outline_over_interior) {
        sheet.paragraph(&format!("outline over interior: {over} L*"), 2);
    }
    if let Some(over) = lighter(&reading.look.front_over_behind) {
        sheet.paragraph(&format!("front over back: {over} L*"), 2);
    }
    if let Some(outline) = &reading.outline {
        let reads = outline.reads.map_or_else(|| "neither solid nor soft".to_owned(), |reads| reads.to_string());
        let light = range(&outline.light, 0);
        sheet.paragraph(&format!("outline: {light} % of its hair light, reads {reads} [{}]", outline.basis), 2);
        for change in &outline.changes {
            sheet.paragraph(&format!("- {}", change.advice()), 4);
        }
    }
    for zone in &reading.zones {
        let l = |at: &Interval<crate::colour::Lightness>| range(at, 0);
        let (roots, mid, ends) = (l(&zone.roots_lab_l), l(&zone.mid_lengths_lab_l), l(&zone.ends_lab_l));
        if roots != ends || roots != mid {
            sheet.paragraph(&format!("{}: L* {roots} at the roots, {mid} mid-way, {ends} at the ends", zone.region), 2);
        }
    }
    if let Some(part) = &reading.part {
        sheet.paragraph(&parted(part), 2);
    }
    let Some(wish) = reading.wish else { return };
    match (&reading.look.change, reading.look.as_wanted) {
        (_, Some(true)) => {
            let open = if reading.look.is_sure_of(wish) { "" } else { " (by the estimate, not by all of its bounds)" };
            sheet.paragraph(&format!("Reads as asked: {wish}{open}{when}."), 2);
        }
        (Some(change), _) => {
            sheet.paragraph(&format!("Does not read as asked ({wish}): {}.", change.advice()), 2);
        }
        (None, _) => sheet.paragraph(&format!("Does not read as asked ({wish}): no section lies there."), 2),
    }
}

/// Where the hair is parted, and when regrowth shows there.
fn parted(part: &PartReading) -> String {
    if part.part == PartLine::None {
        return "no part: regrowth shows where the hair falls apart".to_owned();
    }
    if part.regions.is_empty() {
        return format!("parted {}: the template does not say which of its regions lie there", part.part);
    }
    let weeks = part.line_shows_after.as_ref().map_or_else(
        || "no section lies there".to_owned(),
        |weeks| format!("regrowth shows there after {} weeks", range(weeks, 0)),
    );
    format!("parted {}, through {}: {weeks}", part.part, part.regions.join(", "))
}

/// A bar of ten steps from L* 0 to 80, which is lightest blond and lighter.
fn bar(l: f64) -> String {
    let steps = (l / 8.0).clamp(0.0, 10.0);
    (0..10_u8).map(|step| if f64::from(step) + 0.5 <= steps { '#' } else { '.' }).collect()
}

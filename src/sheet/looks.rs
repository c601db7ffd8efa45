use crate::{
    colour::Swatch,
    quantity::{Mass, Share},
    service::{Plan, SectionColour, if_all_reached},
    source::Interval,
    text::{Sheet, amount, number, range, span},
};

/// How every section looks on the way, and how much of what that takes: one short line each.
pub(super) fn looks(sheet: &mut Sheet, plan: &Plan) {
    if plan.colour.is_empty() {
        return;
    }
    sheet.blank();
    let when = if_all_reached(&plan.lift).map(|when| format!(", {when}")).unwrap_or_default();
    let head = format!("Colours on the way, by the hair model (not a photograph; +/- in CIEDE2000){when}:");
    sheet.paragraph(&head, 0);
    for section in &plan.colour {
        sheet.paragraph(&format!("- {}", swatches(section)), 2);
        let lines = [from_afar(section), neutralising(section), natural_shade(section), pigment_first(section)];
        for line in lines.into_iter().flatten() {
            sheet.paragraph(&format!("  {line}"), 4);
        }
    }
    if let Some(look) = plan.colour.iter().find_map(|section| section.look.as_ref()) {
        sheet.paragraph(&format!("From afar: {}.", look.caveat), 0);
    }
}

/// Natural, exposed and finished hair in one line, with the least certain of them.
fn swatches(section: &SectionColour) -> String {
    let mut looks = vec![format!("now {}", shown(&section.natural))];
    let mut error = section.natural.uncertainty();
    let exposed = section.exposed_swatch.as_ref();
    if let Some(exposed) = exposed {
        let with = section.measured_with.map(|with| format!(" ({with})")).unwrap_or_default();
        looks.push(format!("exposed, {}{with}, {}", section.start, shown(exposed)));
        error = error.max(exposed.uncertainty());
    }
    if exposed != Some(&section.swatch) {
        let last = if section.toner.is_some() { "toned" } else { "at the end" };
        looks.push(format!("{last} {}", shown(&section.swatch)));
        error = error.max(section.swatch.uncertainty());
    }
    format!("{}: {} (+/- {error:.0})", section.section, looks.join("; "))
}

fn shown(swatch: &Swatch) -> String {
    format!("L* {:.0} {}", swatch.lab().l(), swatch.hue().map_or("grey", |hue| hue.words()))
}

fn from_afar(section: &SectionColour) -> Option<String> {
    let look = section.look.as_ref()?;
    let levels = span(&look.perceived_level, |level| number(level.number(), 1));
    let strands = if look.reads_as_one { ", strands that do not show" } else { "" };
    let contrast = span(&section.natural.difference_bounds(&section.swatch), |apart| number(apart, 1));
    Some(format!("from afar it reads as level {levels}, contrast {contrast} (CIEDE2000){strands}"))
}

fn neutralising(section: &SectionColour) -> Option<String> {
    let found = section.neutralising.as_ref()?;
    let (shade, dose) = (&found.neutraliser, &found.dose);
    let bowl = section.toner.as_deref().unwrap_or("the toner");
    let grams = grams(&dose.mass);
    Some(if dose.share.best() < Share::ALL {
        format!(
            "neutral takes {grams} of {shade} in {bowl}, {:.0} % of the shades, the rest {}; more over-tones: watch a strand",
            dose.share.best().percent(),
            found.carrier
        )
    } else {
        format!(
            "even {} g of {shade}, all of {bowl}, leaves warmth ({} g where it takes up more): a deeper shade takes more",
            amount(dose.mass.best(), 1),
            amount(dose.mass.low(), 1)
        )
    })
}

fn natural_shade(section: &SectionColour) -> Option<String> {
    let found = section.natural_shade.as_ref()?;
    let shade = found.shade.as_deref().unwrap_or("a natural shade (the shop has none)");
    Some(format!("white hair: {} of {shade} in the mix [{}]", grams(&found.mass), found.basis))
}

fn pigment_first(section: &SectionColour) -> Option<String> {
    let found = section.pre_pigment.as_ref()?;
    Some(format!(
        "pigment first: {} g of {} ({}, {}), without developer unless its leaflet says so",
        number(found.part.mass.g(), 1),
        found.part.code,
        found.wanted.level,
        found.wanted.tone
    ))
}

fn grams(mass: &Interval<Mass>) -> String {
    format!("{} g", range(mass, 1))
}

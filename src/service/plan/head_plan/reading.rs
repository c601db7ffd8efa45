use super::super::{
    Hair,
    canvas::Stretch,
    colours::Colours,
    sections::{Sections, Work},
};
use super::SectionPlan;
use crate::{
    colour::{Lightness, Swatch},
    hair::Weeks,
    head::{
        HeadLook, LightFoils, OutlineLook, OutlinePart, PartLine, Placed, Profile, RegionLook, Solidity, Template,
        Wish, read_head, read_outline, read_regions, share_out,
    },
    quantity::{Length, Quantity, Share},
    service::{
        request::{HeadMap, Request},
        shape::Zone,
    },
    source::Interval,
};
use schemars::JsonSchema;
use serde::Serialize;

/// How the head will read, and whether that is what was asked for.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct HeadReading {
    /// What the file asks for.
    pub wish: Option<Wish>,
    /// How it reads.
    pub look: HeadLook,
    /// What the file asks of its outline.
    pub outline_wish: Option<Solidity>,
    /// Whether the outline reads solid or soft; absent where no section lies there.
    pub outline: Option<OutlineLook>,
    /// The same by zone of the strand; empty where the length of the hair is not stated.
    pub zones: Vec<ZoneLook>,
    /// Where the hair is parted, and when regrowth shows there; absent where the file does not say.
    pub part: Option<PartReading>,
    /// Which section lies in which region, and which of its foils.
    pub places: Vec<InPlace>,
    /// The regions.
    pub template: Template,
}

impl HeadReading {
    /// What to write in each region of the map, in the order of the template: its sections, the numbers of their foils there
    /// in the order of the work, and the part.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{reader::Format, service::plan_text};
    ///
    /// let plan = plan_text(&std::fs::read_to_string("examples/soft-gradient.toml")?, Format::Toml)?;
    /// let written = plan.head.look.map(|look| look.written()).unwrap_or_default();
    /// assert_eq!(written.first().map(Vec::as_slice), Some(["hairline", "foils 27-30"].map(str::to_owned).as_slice()));
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn written(&self) -> Vec<Vec<String>> {
        let of = |look: &RegionLook| {
            let here = self.places.iter().filter(|place| place.region == look.region);
            let foils = |place: &InPlace| match (place.first_foil, place.last_foil) {
                (Some(first), Some(last)) if first == last => Some(format!("foil {first}")),
                (Some(first), Some(last)) => Some(format!("foils {first}-{last}")),
                _ => None,
            };
            let lines = here.flat_map(|place| [Some(place.section.clone()), foils(place)]).flatten();
            let part = self.part.as_ref().filter(|part| part.regions.contains(&look.region));
            lines.chain(part.map(|part| format!("part: {}", part.part))).collect()
        };
        self.look.regions.iter().map(of).collect()
    }

    /// The light foils of a section in each of its regions.
    pub(super) fn light_foils(&self, section: &str) -> Vec<LightFoils<'_>> {
        let hair = self.template.hair();
        let here = self.places.iter().filter(|place| place.section == section);
        let of = |place: &'_ InPlace| {
            let at = self.template.position(&place.region).ok()?;
            let (region, (first, last)) = (self.template.regions().get(at)?, place.first_foil.zip(place.last_foil)?);
            let bears = hair.get(at)?.best().percent() * place.of_region.fraction();
            let name = Some(region.name.as_str());
            Some(LightFoils { region: name, hair: Share::nearest(bears), inward: region.inward, first, last })
        };
        here.filter_map(of).collect()
    }

    /// The foils of the sections that lie in a region; none where nobody counted those of one of them.
    pub(super) fn foils_in(&self, region: &str, plans: &[SectionPlan]) -> Option<u32> {
        let here = self.places.iter().filter(|place| place.region == region);
        let foils = |place: &InPlace| {
            let plan = plans.iter().find(|plan| plan.section == place.section);
            let plan = plan.filter(|plan| plan.technique.is_in_foil())?;
            let own = place.first_foil.zip(place.last_foil).map_or(0, |(first, last)| last + 1 - first);
            Some(plan.foils.map(|_| own))
        };
        // Zero only where a section has foils and none of them falls here.
        here.filter_map(foils).reduce(|sum, own| sum.zip(own).map(|(sum, own)| sum + own)).flatten()
    }
}

/// A section's place.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct InPlace {
    /// The region.
    pub region: String,
    /// The section.
    pub section: String,
    /// How much of the region it is.
    #[serde(rename = "of_region_percent")]
    pub of_region: Share,
    /// Number of its first foil there, in the order of the work.
    pub first_foil: Option<u32>,
    /// Number of its last foil there.
    pub last_foil: Option<u32>,
}

/// How light a region reads along the strand.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct ZoneLook {
    /// The region.
    pub region: String,
    /// L* of the roots.
    pub roots_lab_l: Interval<Lightness>,
    /// L* of the mid-lengths.
    pub mid_lengths_lab_l: Interval<Lightness>,
    /// L* of the ends.
    pub ends_lab_l: Interval<Lightness>,
}

/// Where the hair is parted.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct PartReading {
    /// On which side.
    pub part: PartLine,
    /// The regions that it runs through; none where the template does not say where its regions lie.
    pub regions: Vec<String>,
    /// When regrowth shows in the first of its sections; absent where no section lies there.
    #[serde(rename = "line_shows_after_weeks")]
    pub line_shows_after: Option<Interval<Weeks>>,
}

/// How much of the strands is covered on a stretch, the mean along it.
fn covered(profile: &Profile, (from, to): (Length, Length)) -> f64 {
    let painted = |to: Length| profile.painted(to.into()).best().cm();
    let long = to.cm() - from.cm();
    if long > 0.0 { (painted(to) - painted(from)) / long } else { 0.0 }
}

/// Of the hair of a section's regions, what it takes: as stated, else within how much hair may grow there. The section treats its share
/// of all the hair, and its regions bear that share: evenly over them.
fn taken(request: &Request, work: &Work<'_>, area: Interval<Share>) -> Option<Interval<Share>> {
    let stated = request.file.section.get(work.in_request).and_then(|section| section.taken_percent);
    if let Some(stated) = stated {
        return Some(Share::nearest(stated).into());
    }
    let all = work.task.share?.percent();
    let of = |share: Share| Share::nearest(100.0 * all / share.percent());
    Some(Interval::ordered(of(area.high()), of(area.best()), of(area.low())))
}

/// Of what a section takes, what it makes lighter than what is left there: none where it is so under no assumption of the model, and
/// where it is so under some, by the best of them, with all of it and none as bounds. Both are of the same hair, so that they are
/// compared assumption by assumption: the bounds of one may overlap those of the other and yet be darker throughout.
fn lit(swatch: &Swatch, rest: &Swatch, taken: Interval<Share>) -> Interval<Share> {
    let lighter: Vec<bool> = swatch.samples().iter().zip(rest.samples()).map(|([_, a, _], [_, b, _])| a > b).collect();
    match (lighter.first(), lighter.iter().all(|one| *one), lighter.iter().any(|one| *one)) {
        (_, true, _) => taken,
        (_, _, false) => Share::NONE.into(),
        (Some(true), ..) => Interval::ordered(Share::NONE, taken.best(), taken.high()),
        _ => Interval::ordered(Share::NONE, Share::NONE, taken.high()),
    }
}

/// The hair of the outline on which no section lies, by region: it stays as it is.
fn untouched(map: &HeadMap) -> Vec<OutlinePart<'_>> {
    let regions = map.template.regions().iter().zip(map.template.hair()).filter(|(region, _)| region.outline);
    let left = regions.filter_map(|(region, hair)| {
        let here = map.placements.iter().filter(|placement| placement.region == region.name);
        let free = 1.0 - here.map(|placement| placement.share.fraction()).sum::<f64>();
        let profile =
            Profile { covered: Share::NONE.into(), start: Length::MIN.into(), transition: Length::MIN.into() };
        let hair = Share::nearest(hair.best().percent() * free);
        (free > 1e-9).then_some(OutlinePart { section: &region.name, hair, taken: Share::NONE.into(), profile })
    });
    left.collect()
}

/// None where no section says in which regions it lies.
pub(super) fn of(
    request: &Request,
    hair: &Hair,
    sections: &Sections<'_>,
    colours: &Colours,
    plans: &[SectionPlan],
) -> Option<HeadReading> {
    let map = request.map.as_ref()?;
    let length = request.amounts.length;
    // What no section takes stays as it is there: natural, or what is stated of it, by its level.
    let left = |zone: Zone| Swatch::natural_within(hair.at(Stretch { zone, cm: request.amounts.stretch(zone) }).level);
    let natural = left_along(request, &left).unwrap_or_else(|| left(Zone::Whole));
    let mut placed = Vec::new();
    let (bears, mut outline) = (map.template.hair(), Vec::new());
    // Of the hair there, what is covered on the roots, the mid-lengths and the ends.
    let mut along: Vec<[f64; 3]> = Vec::new();
    let zones = [Zone::Roots, Zone::MidLengths, Zone::Ends];
    for placement in &map.placements {
        let work = sections.iter().find(|work| work.name() == placement.section)?;
        let (region, colour) = (map.template.position(&placement.region).ok()?, colours.at(work.place)?);
        let area = map.bears(&placement.section)?;
        let takes = taken(request, work, area)?;
        let taken = takes.best().fraction();
        let profile = work.task.on_head?.profile;
        let rest = if hair.existing.is_empty() { colour.natural } else { natural };
        if map.template.regions().get(region).is_some_and(|region| region.outline) {
            let hair = bears.get(region).map_or(0.0, |share| share.best().percent());
            let hair = hair * placement.share.fraction();
            match outline.iter_mut().find(|part: &&mut OutlinePart<'_>| part.section == work.name()) {
                Some(part) => part.hair = Share::nearest(part.hair.percent() + hair),
                None => outline.push(OutlinePart {
                    section: work.name(),
                    hair: Share::nearest(hair),
                    taken: lit(&colour.swatch, &rest, takes),
                    profile,
                }),
            }
        }
        let all = match length {
            Some(length) => covered(&profile, (Length::MIN, length)),
            None => profile.covered.best().fraction(),
        };
        // Ends between the foils, on hair that these leave.
        let ends = work.task.on_head?.ends.map(|ends| {
            let painted =
                Profile { covered: Share::ALL.into(), start: ends.from.into(), transition: Length::MIN.into() };
            ((1.0 - taken).max(0.0) * ends.of_left.fraction(), painted)
        });
        let between = |stretch: (Length, Length)| ends.map_or(0.0, |(part, painted)| part * covered(&painted, stretch));
        let all = taken * all + length.map_or(0.0, |length| between((Length::MIN, length)));
        placed.push(Placed {
            section: work.name(),
            region,
            of_region: placement.share,
            lightened: Share::nearest(100.0 * all),
            rest,
            light: colour.swatch,
        });
        let on = |zone: Zone| {
            let here = |stretch| taken * covered(&profile, stretch) + between(stretch);
            request.amounts.stretch(zone).map_or(0.0, here)
        };
        along.push(zones.map(|zone| 100.0 * on(zone)));
    }
    if !outline.is_empty() {
        outline.extend(untouched(map));
    }
    let wish = request.file.service.reads_as;
    let look = read_head(&map.template, &placed, &natural, wish);
    let zones = length.map(|_| by_zone(&map.template, &placed, &along, &zones.map(left))).unwrap_or_default();
    Some(HeadReading {
        wish,
        look,
        outline_wish: request.file.service.outline,
        outline: read_outline(&outline, request.file.service.outline),
        zones,
        part: request.file.service.part.map(|part| parted(part, map, plans)),
        places: places(map, plans),
        template: map.template.clone(),
    })
}

/// The zones beside each other by their lengths, as the strand is seen from afar; none where its length is not stated.
fn left_along(request: &Request, left: &impl Fn(Zone) -> Swatch) -> Option<Swatch> {
    let long = |zone: Zone| request.amounts.stretch(zone).map(|(from, to)| to.cm() - from.cm());
    let (roots, mid, ends) = (long(Zone::Roots)?, long(Zone::MidLengths)?, long(Zone::Ends)?);
    let part = |one: f64, all: f64| Share::nearest(if all > 0.0 { 100.0 * one / all } else { 0.0 });
    let upper = left(Zone::Roots).beside(&left(Zone::MidLengths), part(mid, roots + mid));
    Some(upper.beside(&left(Zone::Ends), part(ends, roots + mid + ends)))
}

fn by_zone(template: &Template, placed: &[Placed<'_>], along: &[[f64; 3]], left: &[Swatch; 3]) -> Vec<ZoneLook> {
    let [at_roots, mid_way, at_ends] = left;
    let look = |of: fn(&[f64; 3]) -> f64, left: &Swatch| {
        let there = placed.iter().zip(along);
        let there: Vec<Placed<'_>> = there
            .map(|(part, along)| Placed { lightened: Share::nearest(of(along)), rest: *left, ..part.clone() })
            .collect();
        read_regions(template, &there, left)
    };
    let roots = look(|[roots, ..]| *roots, at_roots);
    let (mid, ends) = (look(|[_, mid, _]| *mid, mid_way), look(|[.., ends]| *ends, at_ends));
    let rows = roots.into_iter().zip(mid).zip(ends);
    rows.map(|((roots, mid), ends)| ZoneLook {
        region: roots.region,
        roots_lab_l: roots.lab_l,
        mid_lengths_lab_l: mid.lab_l,
        ends_lab_l: ends.lab_l,
    })
    .collect()
}

fn parted(part: PartLine, map: &HeadMap, plans: &[SectionPlan]) -> PartReading {
    let through = map.template.regions().iter().filter(|region| part.runs_through(region));
    let regions: Vec<String> = through.map(|region| region.name.clone()).collect();
    let there = map.placements.iter().filter(|placement| regions.contains(&placement.region));
    let sections = there.filter_map(|placement| plans.iter().find(|plan| plan.section == placement.section));
    let weeks = sections.map(|plan| plan.line_shows_after);
    PartReading { part, line_shows_after: weeks.reduce(|a, b| if b.best() < a.best() { b } else { a }), regions }
}

/// Which section lies in which region; its foils are shared out by the hair that it has there.
fn places(map: &HeadMap, plans: &[SectionPlan]) -> Vec<InPlace> {
    let hair = map.template.hair();
    let mut places: Vec<InPlace> = map
        .placements
        .iter()
        .map(|placement| InPlace {
            region: placement.region.clone(),
            section: placement.section.clone(),
            of_region: placement.share,
            first_foil: None,
            last_foil: None,
        })
        .collect();
    for plan in plans {
        let Some((first, last)) = plan.first_foil.zip(plan.last_foil) else { continue };
        let bears = |place: &InPlace| {
            let region = map.template.position(&place.region).ok().and_then(|i| hair.get(i));
            region.map_or(0.0, |share| share.best().percent() * place.of_region.fraction())
        };
        let mut own: Vec<&mut InPlace> = places.iter_mut().filter(|place| place.section == plan.section).collect();
        let weights: Vec<f64> = own.iter().map(|place| bears(place)).collect();
        let mut next = first;
        for (place, count) in own.iter_mut().zip(share_out(last + 1 - first, &weights)) {
            if count > 0 {
                place.first_foil = Some(next);
                place.last_foil = Some(next + count - 1);
                next += count;
            }
        }
    }
    places
}

#[cfg(test)]
mod tests {
    use super::lit;
    use crate::{
        colour::{Level, Swatch},
        quantity::{Quantity, Share},
        source::{Basis, Interval},
    };

    /// Lighter under every assumption is all that is taken, under none nothing; in between the best assumption, which is the first,
    /// decides, and both stay possible. As light as what is left is not lighter.
    #[test]
    fn light_is_what_is_lighter_under_the_same_assumption() {
        let rest = Swatch::natural(Level::DARKEST);
        let share = Share::nearest;
        let taken = Interval::ordered(share(40.0), share(50.0), share(60.0));
        let found = |factors: &dyn Fn(usize) -> f64| {
            let samples = rest.samples().iter().enumerate();
            let samples: Vec<[f64; 3]> = samples.map(|(i, [x, y, z])| [*x, y * factors(i), *z]).collect();
            let swatch = Swatch::from_samples(&samples, Basis::Assumed).unwrap();
            lit(&swatch, &rest, taken).to_array().map(Share::percent)
        };
        let last = rest.samples().len() - 1;
        assert_eq!(found(&|_| 1.1), [40.0, 50.0, 60.0]);
        assert_eq!(found(&|_| 0.9), [0.0; 3]);
        assert_eq!(found(&|_| 1.0), [0.0; 3]);
        assert_eq!(found(&|i| if i == 0 { 1.1 } else { 0.9 }), [0.0, 50.0, 60.0]);
        assert_eq!(found(&|i| if i == last { 1.0 } else { 1.1 }), [0.0, 50.0, 60.0]);
        assert_eq!(found(&|i| if i == last { 1.1 } else { 0.9 }), [0.0, 0.0, 60.0]);
        assert_eq!(found(&|i| if i == 0 { 1.0 } else { 1.1 }), [0.0, 0.0, 60.0]);
    }
}

//! The fourth stage: levels to move, the pigment that will show, the tone that neutralises it, and the look at the end.

use super::{
    FirstStep, Hair, Mix,
    doses::{self, NaturalShadeDose, SectionNeutralising},
    known,
    level_rule::{self, LevelRule},
    sections::{Sections, Work},
};
use crate::{
    colour::{
        Instrument, Level, LevelChange, SectionLook, Swatch, UnderlyingPigment, contrast_between, section_look, strip,
        underlying_pigment,
    },
    finding::Finding,
    quantity::Share,
    reader::{InField, Problems},
    service::{request::Request, request::WorkStage},
    source::{Interval, Sourced},
    toner::{Exposed, ExposedBasis, KnownStart, PrePigmentMix, StartError, toned},
};
use schemars::JsonSchema;
use serde::Serialize;

/// The colour side of one section.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct SectionColour {
    /// The section; the mix of this name says what is put on it.
    pub section: String,
    /// The levels that it has now; the estimate is the darkest stretch.
    pub from_level: Interval<Level>,
    /// Level wanted.
    pub target_level: Level,
    /// Levels to lift (positive) or to deposit (negative).
    pub change_levels: Interval<LevelChange>,
    /// Tone wanted, in the words of the file.
    pub target_tone: Option<String>,
    /// Warm pigment that shows at the target level and the tone that neutralises it; absent where nothing is lifted.
    pub exposed: Option<Sourced<UnderlyingPigment>>,
    /// What the level rules of permanent colour expect, after a planned lightening first on the target level; absent after a planned
    /// cleaning, for what it leaves decides, and for every other product.
    pub level_rule: Option<LevelRule>,
    /// The hair as it is now, modelled from its level.
    pub natural: Swatch,
    /// How the hair before toning is known: measured, as seen, or modelled.
    pub start: ExposedBasis,
    /// What it was measured with, where it was.
    pub measured_with: Option<Instrument>,
    /// The hair when it is lightened and not toned; absent where nothing is lifted.
    pub exposed_swatch: Option<Swatch>,
    /// The toner that goes on it.
    pub toner: Option<String>,
    /// The hair at the end: under its toner where one goes on it, else at its target.
    pub swatch: Swatch,
    /// How the area reads from a distance; absent where neither `taken_percent` nor a `panel` says how
    /// much of its hair is taken.
    pub look: Option<SectionLook>,
    /// How much of a shade balances the warmth; absent without a toner, or without a shade for it in the shop.
    pub neutralising: Option<SectionNeutralising>,
    /// The natural shade for white hair; absent where no permanent colour goes on white hair.
    pub natural_shade: Option<NaturalShadeDose>,
    /// The pigment to put back before lightened hair goes darker; absent where none is needed.
    pub pre_pigment: Option<PrePigmentMix>,
}

impl SectionColour {
    /// Its swatches beside each other as a piece of HTML: now, exposed, at the end.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{reader::Format, service::plan_text};
    ///
    /// let plan = plan_text(&std::fs::read_to_string("examples/soft-gradient.toml")?, Format::Toml)?;
    /// assert!(plan.colour[0].strip().contains("exposed"));
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn strip(&self) -> String {
        let exposed = self.exposed_swatch.as_ref().map(|swatch| ("exposed", swatch));
        let last = if self.toner.is_some() { "toned" } else { "at the end" };
        strip([("now", &self.natural)].into_iter().chain(exposed).chain([(last, &self.swatch)]))
    }
}

/// Two sections side by side, by the colour model.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct Contrast {
    /// One section.
    pub first: String,
    /// The other.
    pub second: String,
    /// Their colour difference.
    pub ciede2000: f64,
}

/// A contrast with what there is to say about it, and the places of the two sections.
pub(super) struct Pair {
    pub(super) contrast: Contrast,
    pub(super) finding: Option<Finding>,
    pub(super) places: [usize; 2],
}

/// What later stages ask of the colours.
pub(super) struct Colours {
    /// With its place in the working order.
    sections: Vec<(usize, SectionColour)>,
}

impl Colours {
    pub(super) fn of(request: &Request, hair: &Hair, sections: &Sections<'_>, mixes: &[Mix]) -> Result<Self, Problems> {
        let mut stage = Stage { request, hair, sections, mixes, bare: Vec::new(), toned: Vec::new() };
        let mut found = Vec::new();
        for work in sections.iter().filter(|work| work.is_section()) {
            let Some(target) = work.task.target else { continue };
            found.push((work.place, stage.section(work, target)?));
        }
        Ok(Self { sections: found })
    }

    pub(super) fn at(&self, place: usize) -> Option<&SectionColour> {
        self.sections.iter().find(|(at, _)| *at == place).map(|(_, colour)| colour)
    }

    /// The sections that lie beside each other, once for each pair.
    pub(super) fn pairs(&self, sections: &Sections<'_>) -> Vec<Pair> {
        let mut pairs: Vec<Pair> = Vec::new();
        for work in sections.iter() {
            for other in sections.places(&work.task.beside) {
                let known = pairs.iter().any(|pair| pair.places == [other.place, work.place]);
                let looks = (self.at(work.place), self.at(other.place));
                let ((Some(one), Some(two)), false) = (looks, known) else { continue };
                let (difference, finding) = contrast_between(&one.swatch, &two.swatch);
                let contrast = Contrast {
                    first: work.name().to_owned(),
                    second: other.name().to_owned(),
                    ciede2000: difference.ciede2000,
                };
                pairs.push(Pair { contrast, finding, places: [work.place, other.place] });
            }
        }
        pairs
    }

    /// Where a planned step lightens the hair first, the level rules are those of the level that it is lightened to; where one
    /// only cleans it, what cleaning leaves decides, and that is not known.
    pub(super) fn after_lightening(&mut self, sections: &Sections<'_>, first: &[FirstStep]) {
        for (place, colour) in &mut self.sections {
            let mut own = first.iter().filter(|step| step.section == colour.section);
            let lightened = own.clone().any(FirstStep::lightens_first);
            if !lightened && own.any(FirstStep::cleans_first) {
                colour.level_rule = None;
            }
            let work = sections.iter().find(|work| work.place == *place && lightened);
            if let Some(work) = work {
                colour.level_rule = level_rule::of(work, colour.target_level, true);
            }
        }
    }

    pub(super) fn into_sections(self) -> Vec<SectionColour> {
        self.sections.into_iter().map(|(_, colour)| colour).collect()
    }
}

/// The look from afar of hair of which so much is coloured and the rest is as it was, with bounds that hold those of the least and of
/// the most of it.
pub(super) fn seen(rest: &Swatch, coloured: &Swatch, covered: Interval<Share>) -> SectionLook {
    let look = section_look(rest, coloured, covered.best());
    if covered.is_exact() {
        return look;
    }
    let [least, most] = [covered.low(), covered.high()].map(|share| section_look(rest, coloured, share));
    let levels = look.perceived_level.widened_to(least.perceived_level).widened_to(most.perceived_level);
    SectionLook { mixed: look.mixed.widened_to(&[least.mixed, most.mixed]), perceived_level: levels, ..look }
}

/// What the colours of a section are worked out from.
struct Stage<'s, 'r> {
    request: &'s Request,
    hair: &'s Hair,
    sections: &'s Sections<'r>,
    mixes: &'s [Mix],
    /// Sections of the same hair look alike before a toner: worked out once.
    bare: Vec<(Of, Bare)>,
    /// And so they do after the same one.
    toned: Vec<Toned>,
}

/// What the look of hair before a toner follows from.
#[derive(Clone, Copy, PartialEq)]
struct Of {
    from: Level,
    darkest: Interval<Level>,
    /// The target that it is lifted to, where it is lifted at all.
    lifted_to: Option<Level>,
    known: KnownStart,
}

/// The hair of a section before its toner.
#[derive(Clone, Copy)]
struct Bare {
    natural: Swatch,
    exposed: Exposed,
    /// The same from both ends of the reading, where the look hangs on it.
    ends: Option<[Exposed; 2]>,
    /// What shows, with bounds that hold those of both ends.
    look: Swatch,
}

/// The look of one `bare` hair under one mix, and the dose that would balance its warmth.
struct Toned {
    bare: usize,
    place: usize,
    swatch: Swatch,
    dose: Option<SectionNeutralising>,
}

impl Bare {
    /// How it looks after something went on it, with bounds that hold those of both ends.
    fn widened(&self, of: impl Fn(&Exposed) -> Swatch) -> Swatch {
        let best = of(&self.exposed);
        self.ends.map_or(best, |ends| best.widened_to(&ends.each_ref().map(of)))
    }
}

impl Stage<'_, '_> {
    fn section(&mut self, work: &Work<'_>, target: Level) -> Result<SectionColour, Problems> {
        let change = work.from.map(|from| target - from);
        // Only lifting exposes pigment; depositing covers what is there. Where the reading leaves it open, it may show.
        let lifts = change.high().is_lift() && work.can_lift();
        let (known, measured_with) = known::of_section(self.request, work.in_request)?;
        let lifted_to = lifts.then_some(target);
        let of = Of { from: work.from.best(), darkest: work.darkest, lifted_to, known };
        let (which, bare) = self.bare(of).in_field(&work.task.field)?;
        let exposed = bare.exposed;
        let toner = self.sections.iter().find(|other| other.stage() == WorkStage::Toner && other.goes_on(work));
        // Colour that does not lighten lies on what is there.
        let deposits = !change.best().is_lift() && work.shades().next().is_some();
        let (swatch, neutralising) = match toner.or_else(|| (!work.lightens() && deposits).then_some(work)) {
            Some(toned) => self.toned(toned, which, &bare),
            None if work.lightens() => (bare.look, None),
            None => (Swatch::of_look(target, &work.tone), None),
        };
        let own = self.mixes.get(work.place);
        Ok(SectionColour {
            section: work.name().to_owned(),
            from_level: work.from,
            target_level: target,
            change_levels: change,
            target_tone: work.task.target_tone.clone(),
            exposed: lifts.then(|| match known.seen.filter(|_| exposed.start() == ExposedBasis::Seen) {
                Some(seen) => Sourced::stated(seen.listed(target)),
                None => underlying_pigment(target),
            }),
            level_rule: level_rule::of(work, target, false),
            natural: bare.natural,
            start: exposed.start(),
            measured_with,
            exposed_swatch: lifts.then_some(bare.look),
            toner: toner.map(|toner| toner.name().to_owned()),
            swatch,
            look: work.covered(self.request)?.map(|covered| seen(&bare.natural, &swatch, covered)),
            neutralising: neutralising.filter(|_| lifts),
            natural_shade: own
                .and_then(|mix| doses::natural_shade(self.request, self.hair.white.best(), work, target, mix)),
            pre_pigment: own.and_then(|mix| doses::pigment_first(self.request, self.hair, work, mix)),
        })
    }

    /// The hair before a toner, and its place among those that are known.
    fn bare(&mut self, of: Of) -> Result<(usize, Bare), StartError> {
        if let Some((which, (_, known))) = self.bare.iter().enumerate().find(|(_, (known, _))| *known == of) {
            return Ok((which, *known));
        }
        let starts = |from: Level| {
            let lifted = of.lifted_to.filter(|target| *target > from).unwrap_or(from);
            let exposed = of.known.exposed(Some(from), lifted)?;
            Ok::<_, StartError>(exposed.with_porosity(known::porosity(self.hair.porosity)))
        };
        let exposed = starts(of.from)?;
        // What is measured or seen does not hang on the reading of the natural level.
        let misread = exposed.start() == ExposedBasis::Modelled && of.darkest.low() < of.darkest.high();
        let ends = if misread { Some([starts(of.darkest.low())?, starts(of.darkest.high())?]) } else { None };
        let natural = Swatch::natural_within(of.darkest);
        let mut bare = Bare { natural, exposed, ends, look: *exposed.look() };
        bare.look = bare.widened(|exposed| *exposed.look());
        self.bare.push((of, bare));
        Ok((self.bare.len() - 1, bare))
    }

    /// The hair under the shades of a mix, and the dose that would balance its warmth.
    fn toned(&mut self, work: &Work<'_>, which: usize, bare: &Bare) -> (Swatch, Option<SectionNeutralising>) {
        let mut known = self.toned.iter().filter(|toned| toned.bare == which && toned.place == work.place);
        if let Some(known) = known.next() {
            return (known.swatch, known.dose.clone());
        }
        let all: f64 = work.shades().map(|shade| shade.parts).sum();
        let mix = || work.shades().filter_map(|part| Some((part.shade, Share::from_fraction(part.parts / all).ok()?)));
        let swatch = bare.widened(|exposed| toned(exposed, mix()));
        let own = self.mixes.get(work.place).filter(|_| !work.is_section());
        let dose = own.and_then(|mix| doses::neutralising(self.request, &bare.exposed, work, mix));
        self.toned.push(Toned { bare: which, place: work.place, swatch, dose: dose.clone() });
        (swatch, dose)
    }
}

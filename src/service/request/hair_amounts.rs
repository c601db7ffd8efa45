//! The hair of the guest in grams, the foils of a section, and what it takes.

use super::{
    CountedPanels,
    head_map::Asked,
    panel::{layout, over_directed},
};
use crate::{
    hair::{
        Age, DensityFact, Diameter, DiameterMethod, HairCount, HairDensity, HairFacts, HeadOfHair, Ponytail,
        ThreadFact, Weeks, calibrated, grown, growth,
    },
    head::{Demand, InFoils, PastUse, Profile, Technique, demand, film, hair_by_use, take_up},
    quantity::{Area, InvalidQuantity, Length, Mass, Quantity, Share},
    reader::{InField, Problems},
    service::shape::{Analysis, Section, Zone},
    source::Interval,
    text::number,
};

/// What is known of all the hair.
#[derive(Debug, Clone, Copy)]
pub(in crate::service) struct HairAmounts {
    pub(in crate::service) facts: HairFacts,
    pub(in crate::service) head: HeadOfHair,
    /// The same before any past use is counted in: a section's own is held against this.
    unweighed: HeadOfHair,
    /// Length of the hair, where it is stated: without it there are no grams.
    pub(in crate::service) length: Option<Length>,
    /// What has grown in since the last colour, where the weeks are stated.
    pub(in crate::service) grown: Option<Interval<Length>>,
    /// Where the first band of colour begins, where bands are stated.
    first_band: Option<Length>,
}

/// The foils of a section, and how its colour lies along the strand.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(in crate::service) struct SectionFoils {
    /// The foils on its panels.
    pub(in crate::service) layout: Option<InFoils>,
    /// The panels themselves.
    pub(in crate::service) panels: Option<CountedPanels>,
    /// Foils stated, or counted on the panels.
    pub(in crate::service) foils: Option<Interval<u32>>,
    pub(in crate::service) profile: Profile,
    /// What it takes, extra ends too; none where the length of the hair is not stated.
    pub(in crate::service) demand: Option<Demand>,
    /// How many hairs it takes.
    pub(in crate::service) hairs: Interval<HairCount>,
    /// The surface of what is covered; none where the length of the hair is not stated.
    pub(in crate::service) surface: Option<Interval<Area>>,
    /// Of that, the ends between the foils.
    pub(in crate::service) ends: Option<EndsBetween>,
    /// Of that, the film on the scalp, where the mixture touches it.
    pub(in crate::service) film: Option<Interval<Mass>>,
    /// What the same section took before.
    pub(in crate::service) used: Option<Mass>,
    /// The same with where it went; none where the length of the hair is not stated.
    pub(in crate::service) past_use: Option<PastUse>,
}

/// Ends that are painted between the foils of a section.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(in crate::service) struct EndsBetween {
    /// Of all the hair.
    pub(in crate::service) share: Share,
    /// Of the hair that the foils leave.
    pub(in crate::service) of_left: Share,
    /// Where they begin.
    pub(in crate::service) from: Length,
    pub(in crate::service) demand: Demand,
}

/// Hair of this length where none is stated, to lay a technique along the strand, in cm.
const USUAL_LENGTH: f64 = 30.0;

impl HairAmounts {
    pub(super) fn of(analysis: &Analysis) -> Result<Self, Problems> {
        let density = match analysis.hairs_per_cm2 {
            Some(counted) => {
                let counted = HairDensity::from_hairs_per_cm2(counted).in_field("analysis.hairs_per_cm2")?;
                Some(DensityFact::Counted(counted.into()))
            }
            None => analysis.density.map(DensityFact::ByEye),
        };
        let thread = match analysis.diameter_um {
            Some(um) => {
                let read = Diameter::from_um(um).in_field("analysis.diameter_um")?;
                let method = analysis.diameter_method.unwrap_or(DiameterMethod::Caliper);
                Some(ThreadFact::Measured(read.into(), method))
            }
            None => analysis.texture.map(ThreadFact::ByEye),
        };
        let gathered = analysis.ponytail_gathered_percent.map(Share::from_percent).transpose();
        let gathered = gathered.in_field("analysis.ponytail_gathered_percent")?.unwrap_or(Share::ALL);
        let girth =
            analysis.ponytail_girth_cm.map(Length::from_cm).transpose().in_field("analysis.ponytail_girth_cm")?;
        let facts = HairFacts {
            group: analysis.hair_group,
            age: analysis.age_years.map(Age::from_years).transpose().in_field("analysis.age_years")?,
            density,
            thread,
            scalp: analysis.scalp_cm2.map(sure_area).transpose().in_field("analysis.scalp_cm2")?,
            ponytail: girth.map(|girth| Ponytail { girth: girth.into(), gathered }),
            by_use: None,
        };
        let length = analysis.length_cm.map(Length::from_cm).transpose().in_field("analysis.length_cm")?;
        let weeks = analysis.weeks_since_colour.map(Weeks::from_weeks).transpose();
        let weeks = weeks.in_field("analysis.weeks_since_colour")?;
        let grown = weeks.map(|weeks| grown(weeks.into(), growth(facts.group).value));
        let first = analysis
            .existing
            .iter()
            .filter_map(|band| band.from_cm)
            .fold(None, |first: Option<f64>, from| Some(first.map_or(from, |first| first.min(from))));
        let first_band = first.map(Length::from_cm).transpose().in_field("analysis.existing")?;
        let head = facts.head();
        Ok(Self { facts, head, unweighed: head, length, grown, first_band })
    }

    /// The same with what earlier uses say of all the hair.
    #[must_use]
    pub(super) fn with_uses(self, uses: &[PastUse]) -> Self {
        let facts = HairFacts { by_use: hair_by_use(uses), ..self.facts };
        Self { facts, head: facts.head(), ..self }
    }

    /// The length of the hair, or the usual one.
    pub(in crate::service) fn length_or_usual(&self) -> Length {
        self.length.unwrap_or_else(|| Length::nearest(USUAL_LENGTH))
    }

    /// The root ends where the first band of colour begins, else with what has grown in since the last colour; where neither
    /// is known, at 2.5 cm (1.5 to 4), assumed.
    fn root(&self, length: Length) -> Interval<Length> {
        let half = length.cm() / 2.0;
        let usual = || Interval::ordered(1.5, 2.5, 4.0);
        let known = self
            .first_band
            .map(Interval::exact)
            .or(self.grown)
            .filter(|grown| grown.best().cm() > 0.0)
            .map(|grown| grown.map(Length::cm));
        known.unwrap_or_else(usual).map(|cm: f64| Length::nearest(cm.min(half)))
    }

    /// The stretch of the strand that a zone is, by the best estimates; none where the length of the hair is not stated.
    pub(in crate::service) fn stretch(&self, zone: Zone) -> Option<(Length, Length)> {
        let length = self.length?;
        let from = self.begins(zone, length, Interval::exact(Length::MIN)).best();
        Some((from, self.ends(zone, length).best()))
    }

    /// The foils of a section and what it takes.
    pub(super) fn section(
        &self,
        section: &Section,
        field: &str,
        asked: Asked,
        (lightens, on_scalp): (bool, bool),
    ) -> Result<SectionFoils, Problems> {
        let length = self.length_or_usual();
        let layout = section.panel.as_ref().map(|panel| layout(panel, section.technique, &format!("{field}.panel")));
        let (layout, laid) = layout.transpose()?.unzip();
        let panels = section.panel.as_ref().and_then(|panel| panel.count).unwrap_or(1);
        let counted = layout.map(|layout| layout.foils.map(|foils| foils.saturating_mul(panels)));
        let foils = section.foils.or(asked.foils.filter(|_| counted.is_none())).map(Interval::from).or(counted);
        let mut profile = section.technique.profile(length).value;
        if let Some(percent) = section.covered_percent {
            profile.covered = Share::from_percent(percent).in_field(&format!("{field}.covered_percent"))?.into();
        }
        if let Some(cm) = section.transition_cm {
            profile.transition = Length::from_cm(cm).in_field(&format!("{field}.transition_cm"))?.into();
        }
        let within = |start: Length, name: &str| match self.length {
            Some(length) if start >= length => {
                let way_out = format!(
                    "{start} is not within the hair's `analysis.length_cm`, {length}: start nearer to the scalp"
                );
                Err(way_out).in_field(&format!("{field}.{name}"))
            }
            _ => Ok(start),
        };
        if let Some(cm) = section.start_cm {
            let start = Length::from_cm(cm).in_field(&format!("{field}.start_cm"))?;
            profile.start = within(start, "start_cm")?.into();
        } else if let Some(held) = &section.over_directed {
            let starts = over_directed(held, &format!("{field}.over_directed"))?;
            within(starts.high(), "over_directed")?;
            // Strand by strand it begins further down: that is a transition, as far as the whole panel is seen.
            let drop = starts.high().cm() - starts.low().cm();
            profile = Profile {
                start: starts.low().into(),
                transition: profile.transition.map(|over| Length::nearest(over.cm() + drop)),
                ..profile
            };
        } else if let Some(start) = asked.start {
            profile.start = start;
        } else if section.zone != Zone::Whole {
            profile.start = self.begins(section.zone, length, profile.start);
        }
        if let (Some(over), Some(length)) = (section.transition_cm, self.length) {
            let start = profile.start.best();
            if start.cm() + over > length.cm() {
                let way_out = format!(
                    "{over} cm behind the start at {start} goes beyond the hair's `analysis.length_cm`, {length}: at most {}",
                    number((length.cm() - start.cm()).max(0.0), 1)
                );
                return Err(way_out).in_field(&format!("{field}.transition_cm"));
            }
        }
        let ends = self.ends_between(section, field, (asked.share, layout), lightens)?;
        let demand = match self.length {
            Some(length) => Some(self.demand(
                section,
                field,
                (profile, length),
                (asked.share, foils),
                (lightens, on_scalp),
                ends,
            )?),
            None => None,
        };
        let panels = laid.map(|laid| CountedPanels { count: panels, ..laid });
        let tress = self.head.part(asked.share);
        let surface = self.length.map(|length| tress.surface(profile.painted(self.ends(section.zone, length))));
        let film = demand.filter(|_| on_scalp).map(|_| {
            let area = self.scalp(asked.share);
            area.combine(film().value, |area, film| Mass::nearest(area.cm2() * film.g_per_cm2()))
        });
        let used = section.used_g.map(Mass::from_g).transpose().in_field(&format!("{field}.used_g"))?;
        let past_use = used.zip(self.length).filter(|(used, _)| *used > Mass::MIN).map(|(used, length)| {
            let scalp = on_scalp.then(|| self.scalp(asked.share));
            let (to, takes) = (self.ends(section.zone, length), take_up(section.technique, lightens).value);
            let in_foils = PastUse::of(used, asked.share.into(), &profile, to, takes, scalp);
            let Some(ends) = ends else { return in_foils };
            let takes = take_up(Technique::Freehand, lightens).value;
            in_foils.also_on(ends.share.into(), &painted_from(ends.from), length.into(), takes)
        });
        let hairs = tress.hairs;
        Ok(SectionFoils { layout, panels, foils, profile, demand, hairs, surface, ends, film, used, past_use })
    }

    /// Of the hair between the foils some, from a place on to its end.
    fn ends_between(
        &self,
        section: &Section,
        field: &str,
        (share, layout): (Share, Option<InFoils>),
        lightens: bool,
    ) -> Result<Option<EndsBetween>, Problems> {
        let Some(entry) = &section.ends_between else { return Ok(None) };
        let field = format!("{field}.ends_between");
        let length =
            self.length.ok_or("missing: ends in cm need the length of the hair").in_field("analysis.length_cm")?;
        let from = Length::from_cm(entry.from_cm).in_field(&format!("{field}.from_cm"))?;
        if from >= length {
            let way_out =
                format!("{from} is not within the hair's `analysis.length_cm`, {length}: begin nearer to the scalp");
            return Err(way_out).in_field(&format!("{field}.from_cm"));
        }
        let panel = || layout.map(|layout| layout.share_of_panel.best());
        let taken = section.taken_percent.map(Share::nearest).or_else(panel).filter(|taken| *taken > Share::NONE);
        let missing = "how much hair the foils leave is not known: give the section's `taken_percent` or `panel`";
        let taken = taken.ok_or(missing).in_field(&field)?;
        let of_left = Share::from_percent(entry.percent).in_field(&format!("{field}.percent"))?;
        // The foils take `share` of all the hair, which is `taken` of the area; the rest of it is left.
        let left = Share::nearest(share.percent() * (1.0 - taken.fraction()) / taken.fraction());
        let painted = painted_from(from);
        let take_up = take_up(Technique::Freehand, lightens).value;
        let head = self.held_against(section);
        let needed = demand(&head.part(left), of_left.into(), &painted, length.into(), take_up, None, None);
        let share = Share::nearest(left.percent() * of_left.fraction());
        Ok(Some(EndsBetween { share, of_left, from, demand: needed }))
    }

    /// `share_percent` is the hair that is taken; what back-combing pushes away and a brush leaves out carries nothing.
    fn demand(
        &self,
        section: &Section,
        field: &str,
        (profile, length): (Profile, Length),
        (share, foils): (Share, Option<Interval<u32>>),
        (lightens, on_scalp): (bool, bool),
        ends: Option<EndsBetween>,
    ) -> Result<Demand, Problems> {
        let scalp = on_scalp.then(|| self.scalp(share));
        let take_up = take_up(section.technique, lightens).value;
        let to = self.ends(section.zone, length);
        let by = |head: &HeadOfHair| demand(&head.part(share), Share::ALL.into(), &profile, to, take_up, scalp, foils);
        let mut needed = Demand { hair: by(&self.head).hair, ..by(self.held_against(section)) };
        let in_foils = needed.mix.best().g();
        if let Some(ends) = ends {
            let add = |one: Mass, other: Mass| one + other;
            needed.hair = needed.hair.combine(ends.demand.hair, add);
            needed.mix = needed.mix.combine(ends.demand.mix, add);
        }
        let of_foils = if needed.mix.best().g() > 0.0 { in_foils / needed.mix.best().g() } else { 1.0 };
        if let Some(used) = section.used_g.map(Mass::from_g).transpose().in_field(&format!("{field}.used_g"))? {
            needed.mix = calibrated(needed.mix, used);
            let each = foils.filter(|foils| foils.best() > 0).map(|foils| f64::from(foils.best()));
            needed.mix_per_foil = each.map(|foils| needed.mix.map(|mix| Mass::nearest(mix.g() * of_foils / foils)));
        }
        Ok(needed)
    }
}

impl HairAmounts {
    /// The hair that a section's amount is predicted from: its own use must not count twice.
    const fn held_against(&self, section: &Section) -> &HeadOfHair {
        if section.used_g.is_some() { &self.unweighed } else { &self.head }
    }

    /// The scalp under a share of the hair.
    fn scalp(&self, share: Share) -> Interval<Area> {
        self.head.scalp.value.map(|all| Area::nearest(all.cm2() * share.fraction()))
    }

    /// Where a zone begins; the ends are the last third of what is not root.
    fn begins(&self, zone: Zone, length: Length, usual: Interval<Length>) -> Interval<Length> {
        let root = self.root(length);
        match zone {
            Zone::Roots | Zone::Whole => usual,
            Zone::MidLengths | Zone::Lengths => {
                usual.combine(root, |usual, root| if usual > root { usual } else { root })
            }
            Zone::Ends => root.map(|root| last_third(root, length)),
        }
    }

    /// Where a zone ends.
    fn ends(&self, zone: Zone, length: Length) -> Interval<Length> {
        let root = self.root(length);
        match zone {
            Zone::Roots => root,
            Zone::MidLengths => root.map(|root| last_third(root, length)),
            Zone::Ends | Zone::Lengths | Zone::Whole => length.into(),
        }
    }
}

/// Painted through from a place on.
fn painted_from(from: Length) -> Profile {
    Profile { covered: Share::ALL.into(), start: from.into(), transition: Length::MIN.into() }
}

fn last_third(root: Length, length: Length) -> Length {
    Length::nearest(root.cm() + (length.cm() - root.cm()) * 2.0 / 3.0)
}

fn sure_area(cm2: f64) -> Result<Interval<Area>, InvalidQuantity> {
    Area::from_cm2(cm2).map(Interval::from)
}

//! The first stage: the hair as it is, typed, and what lies in each stretch of the strand.

use super::Start;
use crate::{
    colour::{Level, LevelChange},
    hair::{DensityByEye, Texture},
    quantity::{Length, Share},
    service::{
        file::{Moment, Problems},
        request::{InField, Request},
        shape::{self, Elasticity, HistoryFlag, Porosity, Scalp, TestResult, Zone},
    },
    source::Interval,
};
use schemars::JsonSchema;
use serde::Serialize;

/// The hair and the guest as stated.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct Hair {
    /// Natural level, as far as the reading is stated to be off.
    pub natural_level: Interval<Level>,
    /// How far the reading may be off either way, where that is stated.
    pub natural_level_margin_levels: Option<LevelChange>,
    /// Share of white hair.
    #[serde(rename = "white_percent")]
    pub white: Share,
    /// Diameter of a strand.
    pub texture: Option<Texture>,
    /// Hairs per area.
    pub density: Option<DensityByEye>,
    /// How readily the hair takes up liquid.
    pub porosity: Option<Porosity>,
    /// Stretch and return of a damp strand.
    pub elasticity: Option<Elasticity>,
    /// State of the scalp.
    pub scalp: Option<Scalp>,
    /// Length of the lengths to be worked.
    #[serde(rename = "length_cm")]
    pub length: Option<Length>,
    /// Colour already there, zone by zone.
    pub existing: Vec<Existing>,
    /// What has been on this hair or has happened to this guest; an empty list says that nothing has.
    pub history: Option<Vec<HistoryFlag>>,
    /// Skin test with the products of this service.
    pub skin_test: Option<TestDone>,
    /// Strand test with the mixes of this service.
    pub strand_test: Option<TestDone>,
    /// Incompatibility test for metallic salts.
    pub incompatibility_test: Option<TestDone>,
}

/// Colour that is already in a zone.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct Existing {
    /// Where along the strand.
    pub zone: Zone,
    /// Its level now.
    pub level: Level,
    /// Its tone in the words of the file.
    pub tone: Option<String>,
    /// Whether it is artificial colour.
    pub artificial: bool,
}

/// A test: when, and what came of it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, JsonSchema)]
pub struct TestDone {
    /// When it was applied.
    pub applied: Start,
    /// What came of it.
    pub result: TestResult,
}

/// What a mix meets in a zone.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Canvas {
    /// The levels there; the estimate is the darkest stretch, which needs the most lift.
    pub(super) level: Interval<Level>,
    /// That darkest stretch alone, as far as its reading may be off.
    pub(super) darkest: Interval<Level>,
    /// The darkest artificial colour of any stretch.
    pub(super) artificial: Option<Level>,
    /// The lightest stretch that is lighter than the natural level, as far as that is read: pigment was taken from it.
    pub(super) lightened: Option<Level>,
}

impl Hair {
    pub(super) fn of(request: &Request) -> Result<Self, Problems> {
        let analysis = &request.file.analysis;
        let natural = request.natural;
        let margin = analysis.natural_level_plus_minus.filter(|off| *off > 0.0);
        let off = |levels: f64| Level::clamped(natural.number() + levels);
        let field = "analysis.natural_level_plus_minus";
        let existing = analysis.existing.iter().enumerate().map(|(i, existing)| {
            Ok(Existing {
                zone: existing.zone,
                level: Level::new(existing.level).in_field(&format!("analysis.existing[{}].level", i + 1))?,
                tone: existing.tone.clone(),
                artificial: existing.artificial,
            })
        });
        Ok(Self {
            natural_level: margin.map_or(Interval::exact(natural), |m| Interval::ordered(off(-m), natural, off(m))),
            natural_level_margin_levels: margin.map(LevelChange::from_levels).transpose().in_field(field)?,
            white: Share::from_percent(analysis.white_percent).in_field("analysis.white_percent")?,
            texture: analysis.texture,
            density: analysis.density,
            porosity: analysis.porosity,
            elasticity: analysis.elasticity,
            scalp: analysis.scalp,
            length: analysis.length_cm.map(Length::from_cm).transpose().in_field("analysis.length_cm")?,
            existing: existing.collect::<Result<_, Problems>>()?,
            history: analysis.history.clone(),
            skin_test: test(analysis.skin_test.as_ref(), "analysis.skin_test")?,
            strand_test: test(analysis.strand_test.as_ref(), "analysis.strand_test")?,
            incompatibility_test: test(analysis.incompatibility_test.as_ref(), "analysis.incompatibility_test")?,
        })
    }

    /// Whether the history says so; a history that is not stated says nothing.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{reader::Format, service::{parse, plan, shape::HistoryFlag}};
    ///
    /// let plan = plan(&parse(include_str!("../../../examples/soft-gradient.toml"), Format::Toml)?)?;
    /// assert!(!plan.hair.has(HistoryFlag::MetallicSalts));
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn has(&self, flag: HistoryFlag) -> bool {
        self.history.as_ref().is_some_and(|flags| flags.contains(&flag))
    }

    /// What a mix on `zone` meets: the existing colour of every stretch that the zone covers, else the natural level.
    pub(super) fn at(&self, zone: Zone) -> Canvas {
        let mut canvas: Option<Canvas> = None;
        for stretch in STRETCHES.into_iter().filter(|stretch| zone.covers(*stretch)) {
            let here = self.in_stretch(stretch);
            canvas = Some(match canvas {
                None => here,
                Some(known) => Canvas {
                    level: darker_of(known.level, here.level).widened_to(known.level).widened_to(here.level),
                    darkest: darker_of(known.darkest, here.darkest),
                    artificial: either(known.artificial, here.artificial, |one, other| other < one),
                    lightened: either(known.lightened, here.lightened, |one, other| other > one),
                },
            });
        }
        canvas.unwrap_or_else(|| self.natural())
    }

    /// The most precise statement about a stretch counts: `ends` before `lengths` before `whole`.
    fn in_stretch(&self, stretch: Zone) -> Canvas {
        let there = self.existing.iter().filter(|existing| existing.zone.covers(stretch));
        let reach = |zone: Zone| STRETCHES.into_iter().filter(|stretch| zone.covers(*stretch)).count();
        match there.min_by_key(|existing| reach(existing.zone)) {
            Some(existing) => self.of_level(existing.level, existing.artificial),
            None => self.natural(),
        }
    }

    /// Hair whose level is stated.
    pub(super) fn of_level(&self, level: Level, artificial: bool) -> Canvas {
        Canvas {
            level: level.into(),
            darkest: level.into(),
            artificial: artificial.then_some(level),
            lightened: (level > self.natural_level.high()).then_some(level),
        }
    }

    const fn natural(&self) -> Canvas {
        Canvas { level: self.natural_level, darkest: self.natural_level, artificial: None, lightened: None }
    }

    /// The stretches stated that a mix on `zone` meets.
    pub(super) fn met_by(&self, zone: Zone) -> impl Iterator<Item = &Existing> {
        self.existing.iter().filter(move |existing| existing.zone.overlaps(zone))
    }
}

/// The stretches of a strand that no zone divides.
const STRETCHES: [Zone; 3] = [Zone::Roots, Zone::MidLengths, Zone::Ends];

/// Whichever is there; of two the second where it is preferred.
fn either(one: Option<Level>, other: Option<Level>, preferred: impl Fn(Level, Level) -> bool) -> Option<Level> {
    match (one, other) {
        (Some(first), Some(second)) if preferred(first, second) => other,
        (None, _) => other,
        _ => one,
    }
}

/// The darker one, which needs the most lift.
fn darker_of(one: Interval<Level>, other: Interval<Level>) -> Interval<Level> {
    if other.best() < one.best() { other } else { one }
}

fn test(test: Option<&shape::Test>, field: &str) -> Result<Option<TestDone>, Problems> {
    let read = |test: &shape::Test| {
        let applied: Moment = test.applied.parse().in_field(&format!("{field}.applied"))?;
        Ok(TestDone { applied: Start::of(applied), result: test.result })
    };
    test.map(read).transpose()
}

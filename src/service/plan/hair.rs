//! The first stage: the hair as it is, typed.

use super::{
    Start,
    existing::{self, Existing},
};
use crate::{
    colour::{Level, LevelChange},
    hair::{BandedStrand, DensityByEye, Texture},
    quantity::{Length, Share},
    service::{
        file::{Moment, Problems},
        request::{InField, Request},
        shape::{self, Curl, Elasticity, HistoryFlag, Porosity, Scalp, TestResult},
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
    /// Share of white hair, by area; exact where it is stated, with its bounds where it was counted.
    #[serde(rename = "white_percent")]
    pub white: Interval<Share>,
    /// How much of the hair lies in the regions that were counted for it; absent where it is stated.
    #[serde(rename = "white_counted_percent")]
    pub white_counted: Option<Share>,
    /// The regions that were counted, where any were.
    pub white_counted_in: Vec<String>,
    /// Diameter of a strand.
    pub texture: Option<Texture>,
    /// How it falls by itself.
    pub curl: Option<Curl>,
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
    /// Colour already there, as stated.
    pub existing: Vec<Existing>,
    /// The same along the strand without a gap, where it is stated in cm.
    pub strand: Option<BandedStrand>,
    /// What has been on this hair or has happened to this guest; an empty list says that nothing has.
    pub history: Option<Vec<HistoryFlag>>,
    /// What the earlier services of the consultation add to it.
    pub history_told: Vec<HistoryFlag>,
    /// Skin test with the products of this service.
    pub skin_test: Option<TestDone>,
    /// Strand test with the mixes of this service.
    pub strand_test: Option<TestDone>,
    /// Incompatibility test for metallic salts.
    pub incompatibility_test: Option<TestDone>,
}

/// A test: when, and what came of it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, JsonSchema)]
pub struct TestDone {
    /// When it was applied.
    pub applied: Start,
    /// What came of it.
    pub result: TestResult,
}

impl Hair {
    pub(super) fn of(request: &Request) -> Result<Self, Problems> {
        let analysis = &request.file.analysis;
        let natural = request.natural;
        let margin = analysis.natural_level_plus_minus.filter(|off| *off > 0.0);
        let off = |levels: f64| Level::clamped(natural.number() + levels);
        let field = "analysis.natural_level_plus_minus";
        let natural_level = margin.map_or(Interval::exact(natural), |m| Interval::ordered(off(-m), natural, off(m)));
        let existing = existing::read(analysis)?;
        Ok(Self {
            natural_level,
            natural_level_margin_levels: margin.map(LevelChange::from_levels).transpose().in_field(field)?,
            white: request.white,
            white_counted: request.white_counted.as_ref().map(|counted| counted.counted),
            white_counted_in: request.white_counted.as_ref().map(|counted| counted.regions.clone()).unwrap_or_default(),
            texture: analysis.texture,
            curl: analysis.curl,
            density: analysis.density,
            porosity: analysis.porosity,
            elasticity: analysis.elasticity,
            scalp: analysis.scalp,
            length: analysis.length_cm.map(Length::from_cm).transpose().in_field("analysis.length_cm")?,
            strand: existing::strand(&existing, analysis, natural_level)?,
            existing,
            history: analysis.history.clone(),
            history_told: told(request),
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
    /// let plan = plan(&parse(&std::fs::read_to_string("examples/soft-gradient.toml")?, Format::Toml)?)?;
    /// assert!(!plan.hair.has(HistoryFlag::MetallicSalts));
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn has(&self, flag: HistoryFlag) -> bool {
        self.history.as_ref().is_some_and(|flags| flags.contains(&flag)) || self.history_told.contains(&flag)
    }
}

fn told(request: &Request) -> Vec<HistoryFlag> {
    let past = request.asked.iter().flat_map(|asked| &asked.past);
    let mut flags: Vec<HistoryFlag> = past.filter_map(|(_, entry)| entry.what.flag()).collect();
    flags.sort_unstable();
    flags.dedup();
    flags
}

fn test(test: Option<&shape::Test>, field: &str) -> Result<Option<TestDone>, Problems> {
    let read = |test: &shape::Test| {
        let applied: Moment = test.applied.parse().in_field(&format!("{field}.applied"))?;
        Ok(TestDone { applied: Start::of(applied), result: test.result })
    };
    test.map(read).transpose()
}

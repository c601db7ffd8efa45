use super::{Profile, Softness, Technique, line_shows_after};
use crate::{
    choice::choice,
    hair::{GrowthRate, Weeks},
    quantity::{Length, Share},
    source::{Basis, COMMON_PRACTICE, Citation, Interval},
};
use schemars::JsonSchema;
use serde::Serialize;

/// What is wanted of a section.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TechniqueQuestion {
    /// How the start is to look; nothing is sharper than asked for.
    pub start: Softness,
    /// Weeks in which no regrowth is to show.
    pub upkeep: Weeks,
    /// Of the hair there, how much is to be lighter; not judged where it is not known.
    pub taken: Option<Share>,
    /// Of the hair.
    pub length: Length,
    /// How fast it grows.
    pub growth: Interval<GrowthRate>,
    /// The technique that is planned, with the strand as it covers it; all others are judged by what is usual.
    pub planned: Option<(Technique, Profile)>,
}

choice! {
    /// How much practice a technique asks for.
    Practice: "practice" {
        /// Soon learnt.
        Plain = "plain",
        /// With practice.
        Practised = "practised",
        /// For a sure hand and eye.
        Demanding = "demanding",
    }
}

/// A technique that was not chosen.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, JsonSchema)]
pub struct RejectedTechnique {
    /// Which.
    pub technique: Technique,
    /// Why not.
    pub why: String,
    /// Whether it would do all the same, with more practice.
    pub does_it: bool,
}

/// The technique for a section, with its reasons.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct TechniqueDecision {
    /// The plainest that does it; absent where none does.
    pub technique: Option<Technique>,
    /// How much practice it asks for.
    pub practice: Option<Practice>,
    /// When its regrowth shows.
    #[serde(rename = "line_shows_after_weeks")]
    pub line_shows_after: Option<Interval<Weeks>>,
    /// What was considered and not taken.
    pub rejected: Vec<RejectedTechnique>,
    /// What the rules rest on.
    pub basis: Basis,
    /// Where they come from.
    pub citation: &'static Citation,
}

/// What each technique can take of the hair, in percent, and how much practice it asks for; common practice.
const fn reach(technique: Technique) -> (f64, f64, Practice) {
    match technique {
        Technique::Block => (90.0, 100.0, Practice::Plain),
        Technique::Slice => (30.0, 100.0, Practice::Plain),
        Technique::Weave => (5.0, 60.0, Practice::Practised),
        Technique::BackComb => (10.0, 70.0, Practice::Practised),
        Technique::FreehandInFoil => (20.0, 90.0, Practice::Demanding),
        Technique::Freehand => (10.0, 70.0, Practice::Demanding),
        // New growth only: no choice for lengths, and never asked for.
        Technique::Regrowth => (101.0, 101.0, Practice::Plain),
    }
}

const fn sharpness(softness: Softness) -> u8 {
    match softness {
        Softness::Line => 2,
        Softness::Soft => 1,
        Softness::Diffuse => 0,
    }
}

/// Which technique gives a section the start, the upkeep and the share that are wanted, and which do not, each with its
/// reason. Of those that do, the plainest. [`Technique::Regrowth`] is for new growth only and not among them.
///
/// # Example
///
/// ```
/// use foilwork::{
///     hair::{Weeks, growth}, head::{Softness, Technique, TechniqueQuestion, choose_technique}, quantity::{Length, Share},
/// };
///
/// let wish = TechniqueQuestion {
///     start: Softness::Diffuse, upkeep: Weeks::from_weeks(12.0)?, taken: Some(Share::from_percent(50.0)?),
///     length: Length::from_cm(40.0)?, growth: growth(None).value, planned: None,
/// };
/// assert_eq!(choose_technique(&wish).technique, Some(Technique::BackComb));
/// let quick = TechniqueQuestion { start: Softness::Line, upkeep: Weeks::from_weeks(3.0)?, ..wish };
/// assert_eq!(choose_technique(&quick).technique, Some(Technique::Slice));
/// # Ok::<(), foilwork::quantity::InvalidQuantity>(())
/// ```
///
/// # Source
///
/// Common practice for shares and practice; starts as [`Technique::profile`], upkeep as [`line_shows_after`].
#[must_use]
pub fn choose_technique(wish: &TechniqueQuestion) -> TechniqueDecision {
    let mut found: Option<(Technique, Practice, Interval<Weeks>)> = None;
    let mut rejected = Vec::new();
    let plainer =
        |technique| RejectedTechnique { technique, why: "a plainer one does it as well".to_owned(), does_it: true };
    for technique in Technique::ALL.iter().copied().filter(|technique| *technique != Technique::Regrowth) {
        let (least, most, practice) = reach(technique);
        let own = wish.planned.filter(|(planned, _)| *planned == technique).map(|(_, profile)| profile);
        let profile = own.unwrap_or_else(|| technique.profile(wish.length).value);
        let shows = line_shows_after(&profile, wish.growth).value;
        let reached = wish.taken.is_none_or(|taken| (least..=most).contains(&taken.percent()));
        let why = if sharpness(profile.softness()) > sharpness(wish.start) {
            Some(format!("its start is a sharper one, {}", profile.softness()))
        } else if shows.best() < wish.upkeep {
            Some(format!("its regrowth shows after {:.0}", shows.best()))
        } else if !reached {
            Some(format!("it takes {least} to {most} % of the hair"))
        } else {
            None
        };
        match (why, found) {
            (Some(why), _) => rejected.push(RejectedTechnique { technique, why, does_it: false }),
            (None, Some((_, known, _))) if known <= practice => {
                rejected.push(plainer(technique));
            }
            (None, before) => {
                rejected.extend(before.map(|(other, ..)| plainer(other)));
                found = Some((technique, practice, shows));
            }
        }
    }
    TechniqueDecision {
        technique: found.map(|(technique, ..)| technique),
        practice: found.map(|(_, practice, _)| practice),
        line_shows_after: found.map(|(.., shows)| shows),
        rejected,
        basis: Basis::CommonPractice,
        citation: &COMMON_PRACTICE,
    }
}

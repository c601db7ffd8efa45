//! What a reader of the sheet might look for and will not find. Unknown is an answer.

use super::{Mix, sections::Sections};
use crate::{
    choice::choice,
    service::{
        request::{Request, WorkStage},
        shape::Curl,
    },
};
use schemars::JsonSchema;
use serde::Serialize;

choice! {
    /// Something that a reader might look for and a plan does not hold.
    Unknown: "unknown" {
        /// How light the hair is after how long.
        LiftAgainstTime = "lift-against-time" => "lift against time",
        /// Developers chosen so that all foils are done at once.
        FinishTogether = "finish-together" => "strengths that make all sections finish together",
        /// How much hair there is.
        HairMass = "hair-mass" => "mass of the hair and product demand from it",
        /// What curls do.
        Curl = "curl" => "what its curl does to the hair's growth, length and demand",
        /// Where the foils go.
        FoilLayout = "foil-layout" => "foil count and layout",
        /// What the darker foils for depth are coloured with.
        DarkFoils = "dark-foils" => "what the dark foils of `lowlights` take",
        /// What the products hold besides peroxide.
        Compositions = "compositions" => "dye and ammonia limits, peroxide released by lighteners",
        /// How alkaline the mixes are.
        Alkalinity = "ph" => "pH of the mixes",
        /// What it costs.
        Money = "money" => "cost and price",
        /// What to tone with.
        Toner = "toner",
    }
}

/// Something that is not computed, and why not.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, JsonSchema)]
pub struct NotComputed {
    /// What.
    pub what: Unknown,
    /// Why not, and what to do instead.
    pub why: &'static str,
}

impl Unknown {
    const fn why(self) -> &'static str {
        match self {
            Self::LiftAgainstTime => "no section is lightened",
            Self::FinishTogether => {
                "the strengths are yours; leave `developer` and `strength` out of lightened sections to have them chosen"
            }
            Self::HairMass => {
                "the length of the hair is not stated: amounts are yours or the trade's full-head figures"
            }
            Self::Curl => {
                "published means of growth fall as curl rises, from 1.3 to 0.8 cm a month, without a figure for each form, and \
                 of demand there is none: state the length stretched, and enter `used_g`"
            }
            Self::FoilLayout => "the counts are yours; state a section's `panel` to have its foils counted",
            Self::DarkFoils => {
                "the dark foils are in no bowl, time, price, stock or look: give them a section of their own"
            }
            Self::Compositions => {
                "checked for products whose `composition` the shop declares; of all others the developers' peroxide only"
            }
            Self::Alkalinity => "the shop states no `mixed_ph` for some products; nothing is invented",
            Self::Money => "the shop states no `currency`",
            Self::Toner => "the file names none; choose it on the lifted hair",
        }
    }
}

/// The list for one plan.
pub(super) fn not_computed(
    request: &Request,
    sections: &Sections<'_>,
    mixes: &[Mix],
    has_money: bool,
) -> Vec<NotComputed> {
    let toned = sections.iter().any(|work| work.stage() == WorkStage::Toner);
    let missing = |what: &Unknown| match what {
        Unknown::Money => !has_money,
        Unknown::Compositions => mixes.iter().any(|mix| !mix.undeclared.is_empty()),
        Unknown::Toner => !toned && sections.lighten(),
        Unknown::HairMass => request.amounts.length.is_none(),
        Unknown::Curl => request.file.analysis.curl.is_some_and(|curl| curl != Curl::Straight),
        Unknown::FoilLayout => request.file.section.iter().any(|of| of.technique.is_in_foil() && of.panel.is_none()),
        Unknown::DarkFoils => request.file.section.iter().any(|of| of.lowlights.is_some()),
        Unknown::LiftAgainstTime => !sections.lighten(),
        Unknown::FinishTogether => sections.lighten() && !sections.leave_strengths_open(),
        Unknown::Alkalinity => !sections.state_alkalinity(),
    };
    let list = Unknown::ALL.iter().copied().filter(missing);
    list.map(|what| NotComputed { what, why: what.why() }).collect()
}

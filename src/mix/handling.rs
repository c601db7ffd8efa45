use super::{Cas, Composition};
use crate::source::{Basis, Citation, register};
use serde::Serialize;

/// What in a bowl calls for care.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
#[serde(rename_all = "kebab-case")]
#[non_exhaustive]
pub enum Hazard {
    /// Hydrogen peroxide or a compound that releases it.
    Peroxide,
    /// A lightening powder with persulfates.
    Persulfate,
    /// Ammonia.
    Ammonia,
    /// Oxidative dyes, of which the phenylenediamines sensitise most.
    OxidativeDye,
    /// Resorcinol.
    Resorcinol,
    /// A product not declared in full, or an ingredient foilwork does not know: taken for a dye.
    Unknown,
}

impl Hazard {
    /// Every kind.
    pub const ALL: [Self; 6] =
        [Self::Peroxide, Self::Persulfate, Self::Ammonia, Self::OxidativeDye, Self::Resorcinol, Self::Unknown];

    /// The code in data, for example `oxidative-dye`.
    #[must_use]
    pub const fn code(self) -> &'static str {
        match self {
            Self::Peroxide => "peroxide",
            Self::Persulfate => "persulfate",
            Self::Ammonia => "ammonia",
            Self::OxidativeDye => "oxidative-dye",
            Self::Resorcinol => "resorcinol",
            Self::Unknown => "unknown",
        }
    }
}

/// When a point matters.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Stage {
    /// Before anything is mixed.
    Before,
    /// At the mixing table.
    Mixing,
    /// On the head.
    Applying,
    /// When it is done.
    After,
}

/// One point of the handling checklist. It informs; it decides nothing.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
pub struct Advice {
    /// When it matters.
    pub stage: Stage,
    /// What to do and why.
    pub text: &'static str,
    /// For which contents; for every bowl when empty.
    pub about: &'static [Hazard],
    /// Keys of its sources in the register; common practice of the trade when empty.
    pub sources: &'static [&'static str],
}

impl Advice {
    /// Published when a source is named, otherwise common practice.
    #[must_use]
    pub const fn basis(&self) -> Basis {
        if self.sources.is_empty() { Basis::CommonPractice } else { Basis::Published }
    }

    /// The sources in full.
    pub fn citations(&self) -> impl Iterator<Item = &'static Citation> + use<> {
        let ids = self.sources;
        register().filter(move |c| ids.contains(&c.id))
    }
}

const DYES: &[Hazard] = &[Hazard::OxidativeDye, Hazard::Unknown];
const OXIDANTS: &[Hazard] = &[Hazard::Peroxide, Hazard::Persulfate];
const EYES: &[Hazard] = &[Hazard::Peroxide, Hazard::Resorcinol];
const FUMES: &[Hazard] = &[Hazard::Ammonia, Hazard::Persulfate];

const fn advice(
    stage: Stage,
    about: &'static [Hazard],
    text: &'static str,
    sources: &'static [&'static str],
) -> Advice {
    Advice { stage, text, about, sources }
}

use Stage::{After, Applying, Before, Mixing};

/// Every point, in the order of the work.
const POINTS: &[Advice] = &[
    advice(
        Before,
        DYES,
        "ask about earlier reactions to hair dye or to a black henna tattoo; the EU label says not to colour then",
        &["COSING_A3_2025", "JHCIA_LABEL"],
    ),
    advice(
        Before,
        DYES,
        "the EU label for oxidative dye says it is not meant for anyone under 16",
        &["COSING_A3_2025"],
    ),
    advice(
        Before,
        DYES,
        "do the skin test the product and the local rule ask for, and note who read it when; authorities differ on \
         whether and how long",
        &["FDA_QA", "CA_CR_S22"],
    ),
    advice(Before, &[], "look at the scalp: no service on skin that is broken, sore or irritated", &["COSING_A3_2025"]),
    advice(
        Before,
        &[Hazard::Peroxide],
        "ask about colour restorers and compound henna; metal salts in the hair make peroxide boil over, so test cut \
         hair first",
        &["INCOMP_C"],
    ),
    advice(Mixing, &[], "weigh; do not measure by eye or by the mark on a bottle", &[]),
    advice(Mixing, OXIDANTS, "use bowl, brush and clips without bare metal", &[]),
    advice(
        Mixing,
        &[Hazard::Persulfate],
        "pour the powder low and slowly; do not breathe the dust",
        &["HSE_COSHH", "MACAN_2022"],
    ),
    advice(
        Mixing,
        &[Hazard::Persulfate],
        "powder sold as dust-free puts less into the air, not nothing",
        &["NILSSON_2016"],
    ),
    advice(
        Mixing,
        &[Hazard::Persulfate],
        "keep the powder dry, cool and away from anything that burns; ammonium and potassium persulfate are \
         classified as oxidising solids",
        &["CLP_ATP20"],
    ),
    advice(Mixing, FUMES, "open a window or run the extraction", &["HSE_COSHH"]),
    advice(Mixing, &[], "mix for this bowl only: a mixture is for use at once", &["JP_STORAGE"]),
    advice(
        Mixing,
        OXIDANTS,
        "never close a vessel that holds mixed product: it makes gas and can burst",
        &["JP_STORAGE"],
    ),
    advice(
        Applying,
        &[],
        "wear fresh disposable gloves, not latex, with the cuff turned back",
        &["HSE_COSHH", "HSE_GLOVE"],
    ),
    advice(
        Applying,
        &[],
        "keep it off lashes and brows unless the product is made for them",
        &["COSING_A3_2025", "FDA_QA"],
    ),
    advice(Applying, EYES, "in the eyes: rinse at once with plenty of water", &["COSING_A3_2025"]),
    advice(Applying, &[], "no longer than the product's directions say", &["FDA_QA"]),
    advice(Applying, &[Hazard::Persulfate], "no added heat unless the product's directions ask for it", &[]),
    advice(
        Applying,
        &[],
        "burning, swelling or faintness: stop and rinse; trouble breathing: call for medical help",
        &[],
    ),
    advice(After, &[], "rinse hair and scalp well", &["FDA_QA"]),
    advice(
        After,
        &[Hazard::Resorcinol],
        "after a resorcinol dye rinse the hair with particular care",
        &["COSING_A3_2025"],
    ),
    advice(
        After,
        DYES,
        "keep gloves on to cut hair that has just been coloured: traces are still on it",
        &["HUEBER_2007"],
    ),
    advice(After, &[], "rinse leftovers away with plenty of water; keep none", &["JP_STORAGE"]),
    advice(After, &[], "put nothing that was mixed back into its container", &[]),
];

/// The handling points for what is in the bowl, in the order of the work.
///
/// # Example
///
/// ```
/// use foilwork::mix::{Hazard, Stage, handling};
///
/// let points = handling(&[Hazard::Persulfate]);
/// assert!(points.iter().any(|p| p.stage == Stage::Mixing && p.text.contains("dust") && p.citations().count() == 2));
/// ```
///
/// # Source
///
/// Each point carries its own; without one it is common practice.
#[must_use]
pub fn handling(hazards: &[Hazard]) -> Vec<&'static Advice> {
    let concerns = |point: &&Advice| point.about.is_empty() || point.about.iter().any(|h| hazards.contains(h));
    POINTS.iter().filter(concerns).collect()
}

impl Composition {
    /// What in this bowl calls for care. An ingredient foilwork does not know by its CAS number counts as
    /// [`Hazard::Unknown`], so that the checklist is rather too long than too short.
    #[must_use]
    pub fn hazards(&self) -> Vec<Hazard> {
        let present = self.constituents().iter().filter(|c| c.level.high().percent_ww() > 0.0);
        let mut hazards: Vec<Hazard> = present.map(|c| c.cas.and_then(hazard_of).unwrap_or(Hazard::Unknown)).collect();
        if self.undeclared().next().is_some() {
            hazards.push(Hazard::Unknown);
        }
        hazards.sort_unstable();
        hazards.dedup();
        hazards
    }
}

/// By CAS number: peroxide and releasers, the three persulfates, ammonia and its solution, the diamines and their
/// salts, aminophenols, resorcinol.
fn hazard_of(cas: Cas) -> Option<Hazard> {
    match cas.to_string().as_str() {
        "7722-84-1" | "124-43-6" | "1314-22-3" | "1314-18-7" | "1305-79-9" => Some(Hazard::Peroxide),
        "7727-54-0" | "7727-21-1" | "7775-27-1" => Some(Hazard::Persulfate),
        "7664-41-7" | "1336-21-6" => Some(Hazard::Ammonia),
        "106-50-3" | "624-18-0" | "16245-77-5" | "95-70-5" | "615-50-9" | "337906-36-2" | "337906-37-3"
        | "54381-16-7" | "93841-25-9" | "591-27-5" | "150-75-4" | "55-55-0" => Some(Hazard::OxidativeDye),
        "108-46-3" => Some(Hazard::Resorcinol),
        _ => None,
    }
}

use super::Hazard;
use crate::{
    choice::choice,
    source::{Basis, Citation, register},
};
use serde::Serialize;

choice! {
    /// When a point matters.
    Stage: "stage" {
        /// Before anything is mixed.
        Before = "before",
        /// At the mixing table.
        Mixing = "mixing",
        /// On the head.
        Applying = "applying",
        /// When it is done.
        After = "after",
    }
}

/// One point of the handling checklist. It informs; it decides nothing.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
pub struct HandlingAdvice {
    /// When it matters.
    pub stage: Stage,
    /// What to do and why.
    pub text: &'static str,
    /// The same in a few words, for what has to be in mind while working.
    pub reminder: Option<&'static str>,
    /// For which contents; for every bowl when empty.
    pub about: &'static [Hazard],
    /// Keys of its sources in the register; common practice of the trade when empty.
    pub sources: &'static [&'static str],
}

impl HandlingAdvice {
    /// Published when a source is named, otherwise common practice.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{mix::handling_advice, source::Basis};
    ///
    /// let points = handling_advice(&[]);
    /// assert!(points.iter().all(|point| (point.basis() == Basis::CommonPractice) == point.sources.is_empty()));
    /// ```
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
) -> HandlingAdvice {
    HandlingAdvice { stage, text, reminder: None, about, sources }
}

impl HandlingAdvice {
    const fn remind(self, words: &'static str) -> Self {
        Self { reminder: Some(words), ..self }
    }
}

use Stage::{After, Applying, Before, Mixing};

/// Every point, in the order of the work.
const POINTS: &[HandlingAdvice] = &[
    advice(
        Before,
        DYES,
        "ask about earlier reactions to hair dye or to a black henna tattoo; the EU label says not to colour then",
        &["cosing-annex-3-2025", "jhcia-labels"],
    ),
    advice(
        Before,
        DYES,
        "the EU label for oxidative dye says it is not meant for anyone under 16",
        &["cosing-annex-3-2025"],
    ),
    advice(
        Before,
        DYES,
        "do the skin test the product and the local rule ask for, and note who read it when; authorities differ on \
         whether and how long",
        &["fda-hair-dye-questions", "ca-cosmetic-regulations-22"],
    ),
    advice(
        Before,
        &[],
        "look at the scalp: no service on skin that is broken, sore or irritated",
        &["cosing-annex-3-2025"],
    ),
    advice(
        Before,
        &[Hazard::Peroxide],
        "ask about colour restorers and compound henna; metal salts in the hair make peroxide boil over, so test cut \
         hair first",
        &["metal-salt-strand-test"],
    ),
    advice(
        Before,
        &[Hazard::Persulfate],
        "persulfates sensitise airways and skin: ask about asthma and about any earlier reaction to lightener",
        &["hse-coshh-hairdressing", "macan-2022"],
    ),
    advice(
        Before,
        OXIDANTS,
        "the label of oxidative hair colour in the EU says that it is not meant for anyone under sixteen; of lightener the \
         product's own instructions say from which age",
        &["cosing-annex-3-2025"],
    ),
    advice(Mixing, &[], "weigh; do not measure by eye or by the mark on a bottle", &[]),
    advice(Mixing, OXIDANTS, "use bowl, brush and clips without bare metal", &[]).remind("no bare metal"),
    advice(
        Mixing,
        &[Hazard::Persulfate],
        "pour the powder low and slowly; do not breathe the dust",
        &["hse-coshh-hairdressing", "macan-2022"],
    )
    .remind("powder low and slow"),
    advice(
        Mixing,
        &[Hazard::Persulfate],
        "powder sold as dust-free puts less into the air, not nothing",
        &["nilsson-2016"],
    ),
    advice(
        Mixing,
        &[Hazard::Persulfate],
        "keep the powder dry, cool and away from anything that burns; ammonium and potassium persulfate are \
         classified as oxidising solids",
        &["clp-20th-adaptation"],
    ),
    advice(Mixing, FUMES, "open a window or run the extraction", &["hse-coshh-hairdressing"]).remind("moving air"),
    advice(Mixing, &[], "mix for this bowl only: a mixture is for use at once", &["jp-dye-storage"]),
    advice(
        Mixing,
        OXIDANTS,
        "never close a vessel that holds mixed product: it makes gas and can burst",
        &["jp-dye-storage"],
    )
    .remind("never close a mixed bowl"),
    advice(
        Applying,
        &[],
        "wear fresh disposable gloves, not latex, with the cuff turned back",
        &["hse-coshh-hairdressing", "hse-glove-trial-2021"],
    )
    .remind("gloves"),
    advice(
        Applying,
        &[],
        "keep it off lashes and brows unless the product is made for them",
        &["cosing-annex-3-2025", "fda-hair-dye-questions"],
    ),
    advice(Applying, EYES, "in the eyes: rinse at once with plenty of water", &["cosing-annex-3-2025"])
        .remind("in the eyes: water at once"),
    advice(Applying, &[], "no longer than the product's directions say", &["fda-hair-dye-questions"])
        .remind("no longer than the product allows"),
    advice(Applying, &[Hazard::Persulfate], "no added heat unless the product's directions ask for it", &[]),
    advice(Applying, &[Hazard::Persulfate], "a foil that gets hot, swells or bubbles: open it and rinse at once", &[])
        .remind("a foil hot or swelling: open and rinse"),
    advice(
        Applying,
        &[],
        "burning, swelling or faintness: stop and rinse; trouble breathing: call for medical help",
        &[],
    )
    .remind("burning, swelling, faintness: stop and rinse; trouble breathing: call for medical help"),
    advice(After, &[], "rinse hair and scalp well", &["fda-hair-dye-questions"]),
    advice(
        After,
        &[Hazard::Resorcinol],
        "after a resorcinol dye rinse the hair with particular care",
        &["cosing-annex-3-2025"],
    ),
    advice(
        After,
        DYES,
        "keep gloves on to cut hair that has just been coloured: traces are still on it",
        &["hueber-2007"],
    ),
    advice(After, &[], "rinse leftovers away with plenty of water; keep none", &["jp-dye-storage"]),
    advice(After, &[], "put nothing that was mixed back into its container", &[]),
];

/// The handling points for what is in the bowl, in the order of the work.
///
/// # Example
///
/// ```
/// use foilwork::mix::{Hazard, Stage, handling_advice};
///
/// let points = handling_advice(&[Hazard::Persulfate]);
/// assert!(points.iter().any(|p| p.stage == Stage::Mixing && p.text.contains("dust") && p.citations().count() == 2));
/// ```
///
/// # Source
///
/// Each point carries its own; without one it is common practice.
#[must_use]
pub fn handling_advice(hazards: &[Hazard]) -> Vec<&'static HandlingAdvice> {
    let concerns = |point: &&HandlingAdvice| point.about.is_empty() || point.about.iter().any(|h| hazards.contains(h));
    POINTS.iter().filter(concerns).collect()
}

use crate::{
    choice::choice,
    mix::{Composition, Ratio},
    peroxide::{Conditions, StatedStrength},
    quantity::{Duration, Mass, MassFraction},
    service::request::WorkStage,
    source::{Basis, Interval},
};
use schemars::JsonSchema;
use serde::Serialize;

/// What to mix for one section, toner or root shadow.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct Mix {
    /// What it is for.
    pub name: String,
    /// Section, toner or root shadow.
    pub stage: WorkStage,
    /// Parts product to parts developer, additives apart; absent where no developer is used.
    #[serde(serialize_with = "as_text")]
    #[schemars(with = "Option<String>")]
    pub ratio: Option<Ratio>,
    /// How much is needed.
    #[serde(rename = "needed_g")]
    pub needed: Interval<Mass>,
    /// What that amount rests on.
    pub needed_basis: Basis,
    /// Strength of the developer before mixing.
    #[serde(rename = "developer_ww_percent")]
    pub developer: Interval<MassFraction>,
    /// Strength on the hair after mixing, as weighed.
    #[serde(rename = "on_hair_ww_percent")]
    pub on_hair: Interval<MassFraction>,
    /// The same as far as a bottle that nobody measured may be off its label; what is held against the law.
    #[serde(rename = "on_hair_as_labelled_ww_percent")]
    pub on_hair_as_labelled: Interval<MassFraction>,
    /// What both strengths rest on.
    pub strength_basis: Basis,
    /// What the makers declare to be in the mixed bowl, where any of them does. Not part of the plain data.
    #[serde(skip)]
    #[schemars(skip)]
    pub composition: Option<Composition>,
    /// The bottles in it by name, as they state their strength. Not part of the plain data.
    #[serde(skip)]
    #[schemars(skip)]
    pub(crate) stated: Vec<(String, StatedStrength, Conditions)>,
    /// Products in it whose contents nobody declares in full: what they may hold or release is unknown.
    pub undeclared: Vec<String>,
    /// The bowls, in the order in which they are mixed.
    pub bowls: Vec<Bowl>,
    /// Mixed but not expected to be used.
    #[serde(rename = "leftover_g")]
    pub leftover: Mass,
    /// Places in the plan's list of findings, of those that concern this mix.
    pub findings: Vec<usize>,
}

impl Mix {
    /// All that is made of it, every bowl of it.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{reader::Format, service::plan_text};
    ///
    /// let plan = plan_text(&std::fs::read_to_string("examples/soft-gradient.toml")?, Format::Toml)?;
    /// assert_eq!(plan.mixes[0].made().to_string(), "46.4 g");
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn made(&self) -> Mass {
        let bowls = self.bowls.iter().flat_map(|bowl| std::iter::repeat_n(bowl.total, bowl.count));
        bowls.fold(Mass::ZERO, |sum, bowl| sum + bowl)
    }

    /// Grams of each product over all bowls, each product once, in the order of the bowls.
    pub(crate) fn masses_g(&self) -> Vec<(&str, f64)> {
        let mut masses: Vec<(&str, f64)> = Vec::new();
        for (part, count) in self.bowls.iter().flat_map(|bowl| bowl.parts.iter().map(move |part| (part, bowl.count))) {
            let mass_g = part.weigh.g() * count as f64;
            match masses.iter_mut().find(|(known, _)| *known == part.product) {
                Some((_, sum)) => *sum += mass_g,
                None => masses.push((&part.product, mass_g)),
            }
        }
        masses
    }
}

/// One fresh bowl, or several alike.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct Bowl {
    /// How many of these.
    pub count: usize,
    /// When each is mixed, counted from the beginning of this application.
    #[serde(rename = "mixed_after_min")]
    pub mixed_after: Vec<Duration>,
    /// How long each is used after mixing.
    #[serde(rename = "use_within_min")]
    pub use_within: Duration,
    /// What goes in, in the order of weighing.
    pub parts: Vec<WeighedPart>,
    /// What the scale shows in the end.
    #[serde(rename = "total_g")]
    pub total: Mass,
    /// The worst error of a part's share that rounding to the scale causes.
    pub worst_ratio_error_percent: f64,
    /// Strength on the hair of this bowl, as weighed.
    #[serde(rename = "on_hair_ww_percent")]
    pub on_hair: Interval<MassFraction>,
}

/// One thing to weigh.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct WeighedPart {
    /// Product by its name on the shelf.
    pub product: String,
    /// What it is in the bowl.
    pub kind: PartKind,
    /// The exact mass.
    #[serde(rename = "exact_g")]
    pub exact: Mass,
    /// The mass to the scale's division.
    #[serde(rename = "weigh_g")]
    pub weigh: Mass,
    /// What the scale shows once it is in, the bowl tared.
    #[serde(rename = "scale_shows_g")]
    pub scale_shows: Mass,
    /// The peroxide it brings; zero for everything but developers.
    #[serde(rename = "peroxide_ww_percent")]
    pub peroxide: Interval<MassFraction>,
}

choice! {
    /// What a part is in its bowl.
    PartKind: "kind of part" {
        /// It takes pigment away.
        Lightener = "lightener",
        /// A shade.
        Colour = "colour",
        /// It brings the peroxide.
        Developer = "developer",
        /// It weakens the developer.
        Diluent = "diluent",
        /// It takes artificial pigment out.
        Remover = "remover",
        /// It goes on top of the ratio.
        Additive = "additive",
    }
}

impl Mix {
    /// The decimals that its strengths are known to, in % w/w: two where they were measured, one by label or sheet.
    #[must_use]
    pub fn decimals(&self) -> usize {
        strength_decimals(self.strength_basis)
    }

    /// What goes on the hair apart from developer, diluent and additives.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{reader::Format, service::{parse, plan}};
    ///
    /// let plan = plan(&parse(&std::fs::read_to_string("examples/soft-gradient.toml")?, Format::Toml)?)?;
    /// let mix = &plan.mixes[0];
    /// assert!(mix.products().count() > 0 && mix.oxidant().count() > 0);
    /// assert_eq!(mix.decimals(), 1); // its strength is read off a label
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn products(&self) -> impl Iterator<Item = &WeighedPart> {
        let product = |part: &&WeighedPart| matches!(part.kind, PartKind::Lightener | PartKind::Colour);
        self.bowls.iter().take(1).flat_map(|bowl| &bowl.parts).filter(product)
    }

    /// The bottles that bring the peroxide, and what they are weakened with.
    pub fn oxidant(&self) -> impl Iterator<Item = &WeighedPart> {
        let oxidant = |part: &&WeighedPart| matches!(part.kind, PartKind::Developer | PartKind::Diluent);
        self.bowls.iter().take(1).flat_map(|bowl| &bowl.parts).filter(oxidant)
    }
}

/// The decimals, in % w/w, that a strength of this basis is known to.
pub(crate) fn strength_decimals(basis: Basis) -> usize {
    if basis < Basis::Stated { 2 } else { 1 }
}

/// Plain data has the text that a file has.
#[expect(clippy::ref_option, reason = "serde hands over the field")]
fn as_text<T: ToString, S: serde::Serializer>(value: &Option<T>, serializer: S) -> Result<S::Ok, S::Error> {
    match value {
        Some(value) => serializer.serialize_some(&value.to_string()),
        None => serializer.serialize_none(),
    }
}

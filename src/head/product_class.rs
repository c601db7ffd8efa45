use crate::{
    choice::choice,
    colour::{Level, ProductKind, lift_needed},
    quantity::Share,
    source::{Basis, COMMON_PRACTICE, Citation},
};
use schemars::JsonSchema;
use serde::Serialize;

/// What is there, and what is wanted, in one section.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ClassQuestion {
    /// The level now.
    pub from: Level,
    /// The level wanted.
    pub to: Level,
    /// Whether the hair there carries artificial colour.
    pub artificial: bool,
    /// Whether it has been lightened.
    pub lightened: bool,
    /// How much of it is white.
    pub white: Share,
    /// The class of the colour that is planned, where one is: what it cannot lift itself is lifted before it.
    pub planned: Option<ProductKind>,
}

choice! {
    /// A step before the colour itself.
    ExtraStep: "extra step" {
        /// Open resistant white hair first.
        PreSoften = "pre-soften",
        /// Put warm pigment back first.
        PrePigment = "pre-pigment",
        /// Take artificial pigment out first.
        CleanFirst = "clean-first" => "clean out the artificial pigment first",
        /// Lighten to the level that is wanted first, for colour that cannot lift so far.
        PreLighten = "pre-lighten" => "lighten to the level wanted first",
    }
}

/// A class that was not chosen.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, JsonSchema)]
pub struct Rejected {
    /// Which.
    pub product: ProductKind,
    /// Why not.
    pub why: &'static str,
}

impl Rejected {
    /// What is said of a class that would do it, where a gentler one does.
    pub(crate) const GENTLER_DOES: &'static str = "a gentler class does it as well";
}

/// The class of product for a section, with its reasons.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct ClassDecision {
    /// What to use.
    pub product: ProductKind,
    /// Why.
    pub why: &'static str,
    /// What was considered and not taken.
    pub rejected: Vec<Rejected>,
    /// What has to be done before.
    pub before: Vec<ExtraStep>,
    /// What the rules rest on.
    pub basis: Basis,
    /// Where they come from.
    pub citation: &'static Citation,
}

/// Levels that permanent colour lifts on natural hair at most, by common practice.
const PERMANENT_LIFTS: f64 = 3.0;
/// Levels that a high-lift tint lifts at most, and the base it needs.
const HIGH_LIFT: (f64, f64) = (4.0, 6.0);
/// Levels darker from which lightened hair needs warm pigment first.
const PRE_PIGMENT_FROM: f64 = 2.0;
/// Levels lighter from which colour that does not lift so far needs lighter hair; less is within a reading (assumed).
const PRE_LIGHTEN_FROM: f64 = 1.0;
/// Share of white hair that only oxidative colour covers.
const COVERED_BY_DEPOSIT: f64 = 30.0;

/// Which class of product takes hair from one level to another, and which do not, each with its reason.
///
/// # Example
///
/// ```
/// use foilwork::{colour::{Level, ProductKind}, head::{ClassQuestion, ExtraStep, product_class}, quantity::Share};
///
/// let wish = ClassQuestion {
///     from: Level::new(5.0)?, to: Level::new(9.0)?, artificial: false, lightened: false, white: Share::NONE,
///     planned: None,
/// };
/// assert_eq!(product_class(&wish).product, ProductKind::Lightener);
/// assert_eq!(product_class(&ClassQuestion { to: Level::new(7.0)?, ..wish }).product, ProductKind::PermanentColour);
/// // A vivid colour that only deposits does not show on dark hair.
/// let vivid = ClassQuestion { planned: Some(ProductKind::SemiPermanentColour), ..wish };
/// assert_eq!(product_class(&vivid).before, [ExtraStep::PreLighten]);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Source
///
/// Common practice: training units name the classes and the bounds are the trade's.
#[must_use]
pub fn product_class(wish: &ClassQuestion) -> ClassDecision {
    let lift = lift_needed(wish.from, wish.to).levels();
    let (white, coloured) = (wish.white.percent(), wish.artificial || wish.lightened);
    let refusals = [
        (ProductKind::SemiPermanentColour, against_deposit(lift, white, true)),
        (ProductKind::QuasiPermanentColour, against_deposit(lift, white, false)),
        (ProductKind::PermanentColour, against_permanent(lift, coloured)),
        (ProductKind::HighLiftTint, against_high_lift(lift, wish.from, coloured)),
        (ProductKind::Lightener, (lift <= 0.0).then_some("nothing is to be lighter")),
    ];
    // The gentlest that does it; between the two deposits the one that holds longer.
    let order = [1, 2, 3, 4, 0];
    let fits = order.iter().filter_map(|i| refusals.get(*i)).find(|(_, against)| against.is_none());
    let product = fits.map_or(ProductKind::Lightener, |(product, _)| *product);
    let rejected = refusals
        .iter()
        .filter(|(other, _)| *other != product)
        .map(|(other, against)| Rejected { product: *other, why: against.unwrap_or(Rejected::GENTLER_DOES) });
    ClassDecision {
        product,
        why: reason(product),
        rejected: rejected.collect(),
        before: before(wish, lift, product),
        basis: Basis::CommonPractice,
        citation: &COMMON_PRACTICE,
    }
}

const fn reason(product: ProductKind) -> &'static str {
    match product {
        ProductKind::Lightener => "alone lifts so far, or lifts artificial colour",
        ProductKind::HighLiftTint => "lifts four levels from a light base and tones at once",
        ProductKind::PermanentColour => "lifts up to three levels of natural hair, or covers white hair",
        ProductKind::QuasiPermanentColour => "deposits without lifting",
        ProductKind::SemiPermanentColour => "stains without a developer",
    }
}

fn against_deposit(lift: f64, white: f64, semi: bool) -> Option<&'static str> {
    if lift > 0.0 {
        Some("deposits only; it does not lift")
    } else if white > COVERED_BY_DEPOSIT {
        Some("does not cover more than a third of white hair")
    } else {
        semi.then_some("washes out sooner than the one with developer")
    }
}

fn against_permanent(lift: f64, coloured: bool) -> Option<&'static str> {
    if lift > 0.0 && coloured {
        Some("colour does not lift colour")
    } else if lift > PERMANENT_LIFTS {
        Some("lifts natural hair three levels at most")
    } else {
        None
    }
}

fn against_high_lift(lift: f64, from: Level, coloured: bool) -> Option<&'static str> {
    let (lifts, base) = HIGH_LIFT;
    if lift <= 0.0 {
        Some("nothing is to be lighter")
    } else if coloured {
        Some("colour does not lift colour")
    } else if from.number() < base {
        Some("needs a natural base of level 6 or lighter")
    } else if lift > lifts {
        Some("lifts four levels at most")
    } else {
        None
    }
}

fn before(wish: &ClassQuestion, lift: f64, product: ProductKind) -> Vec<ExtraStep> {
    let deposits = product != ProductKind::Lightener;
    let cleans = wish.artificial && !wish.lightened && lift > 0.0;
    let coloured = wish.artificial || wish.lightened;
    let does_not_lift = match wish.planned {
        None | Some(ProductKind::Lightener) => false,
        Some(ProductKind::PermanentColour) => against_permanent(lift, coloured).is_some(),
        Some(ProductKind::HighLiftTint) => against_high_lift(lift, wish.from, coloured).is_some(),
        Some(ProductKind::QuasiPermanentColour | ProductKind::SemiPermanentColour) => true,
    };
    let steps = [
        (deposits && wish.white.percent() > 50.0 && !wish.artificial, ExtraStep::PreSoften),
        (deposits && wish.lightened && lift <= -PRE_PIGMENT_FROM, ExtraStep::PrePigment),
        (cleans, ExtraStep::CleanFirst),
        (does_not_lift && lift >= PRE_LIGHTEN_FROM && !cleans, ExtraStep::PreLighten),
    ];
    steps.into_iter().filter(|(needed, _)| *needed).map(|(_, step)| step).collect()
}

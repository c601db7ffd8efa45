//! What is weighed for a step before the colour, and what it brings to the hair for the law to judge.

use super::{
    PartKind,
    declared::{self, Poured},
    developer::Candidate,
};
use crate::{
    mix::{Composition, as_applied},
    quantity::{Mass, MassFraction},
    service::request::Request,
    source::Interval,
};
use schemars::JsonSchema;
use serde::Serialize;

/// What is weighed for a step.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct FirstPart {
    /// The product.
    pub product: String,
    /// What it is.
    pub kind: PartKind,
    /// How much of it the step takes.
    #[serde(rename = "mass_g")]
    pub mass: Interval<Mass>,
    /// What to weigh, on the scale stated.
    #[serde(rename = "weigh_g")]
    pub weigh: Mass,
}

/// The bowl of a step: its developer, its strength on the hair, and what is declared of it.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct StepBowl {
    /// As it comes from the bottle; absent where none is in it.
    pub(super) developer: Option<Interval<MassFraction>>,
    pub(super) on_hair: Interval<MassFraction>,
    pub(super) on_hair_as_labelled: Interval<MassFraction>,
    pub(super) composition: Option<Composition>,
    pub(super) undeclared: Vec<String>,
}

impl StepBowl {
    /// None where nothing is weighed.
    pub(super) fn of(request: &Request, stocks: &[Candidate<'_>], parts: &[FirstPart]) -> Option<Self> {
        let none = Interval::exact(MassFraction::ZERO);
        // As weighed; a part that is less than the scale shows still goes on, in the same proportion.
        let lost = parts.iter().any(|part| part.weigh == Mass::ZERO);
        let mass = |part: &FirstPart| if lost { part.mass.high() } else { part.weigh };
        let of = |name: &str| stocks.iter().find(|stock| stock.kind == PartKind::Developer && stock.name == name);
        let (mut as_known, mut poured) = (Vec::new(), Vec::new());
        for part in parts {
            let stock = of(&part.product);
            let (product, mass) = (part.product.as_str(), mass(part));
            as_known.push((mass, stock.map_or(none, |stock| stock.strength)));
            poured.push(Poured { product, kind: part.kind, mass, may_bring: stock.map_or(none, Candidate::may_hold) });
        }
        let as_labelled: Vec<_> = poured.iter().map(|part| (part.mass, part.may_bring)).collect();
        Some(Self {
            developer: parts.iter().find_map(|part| of(&part.product)).map(|stock| stock.strength),
            on_hair: as_applied(&as_known).ok()?,
            on_hair_as_labelled: as_applied(&as_labelled).ok()?,
            composition: declared::composition(request, &poured),
            undeclared: declared::undeclared(request, &poured),
        })
    }
}

use super::{
    super::{Mix, PartKind, first_steps::FirstSteps, sections::Sections},
    substitutes::{self, Missing, Substitute},
};
use crate::{
    choice::choice,
    money::{Measure, Money, MoneyError, PackPrice, Rounding, supply_cost},
    quantity::{Mass, Quantity},
    reader::{InField, Problems},
    service::request::Request,
    shop::{Consumable, Per},
    source::Interval,
};
use schemars::JsonSchema;
use serde::Serialize;

/// What the plan takes from the shelf: everything that is weighed, and everything that is counted.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct StockPlan {
    /// What is weighed, in the order of mixing.
    pub products: Vec<StockLine>,
    /// Foils, gloves, film and the like.
    pub consumables: Vec<ConsumableLine>,
}

choice! {
    /// How far what is in hand covers what is wanted.
    StockCover: "stock cover" {
        /// Even the upper bound is there.
        Covered = "covered",
        /// The estimate is there, its upper bound is not.
        MayRunShort = "may-run-short" => "may run short",
        /// Not even the estimate is there.
        Short = "short",
        /// The shop does not say how much there is, or the service not how much it takes.
        NotCounted = "not-counted" => "not counted",
    }
}

/// A product of the shelf.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct StockLine {
    /// Its name in the shop.
    pub product: String,
    /// What it is in the bowls.
    pub kind: PartKind,
    /// What all bowls take: the estimate as weighed, the bounds as far as the mixes may be more or less.
    #[serde(rename = "wanted_g")]
    pub wanted: Interval<Mass>,
    /// What is in hand, where the shop says so.
    #[serde(rename = "in_hand_g")]
    pub in_hand: Option<Mass>,
    /// What is missing at each bound; absent where nobody counted.
    #[serde(rename = "missing_g")]
    pub missing: Option<Interval<Mass>>,
    /// How far it goes.
    pub cover: StockCover,
    /// What could be taken from the shelf instead, nearest first; empty where it is covered.
    pub instead: Vec<Substitute>,
}

/// Something that is counted.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct ConsumableLine {
    /// Its name in the shop.
    pub name: String,
    /// How many are used up; absent where a section in foil does not say how many foils it has.
    pub wanted_pieces: Option<Interval<u32>>,
    /// How many are in hand, where the shop says so.
    pub in_hand_pieces: Option<u32>,
    /// How far they go.
    pub cover: StockCover,
    /// What they cost at least, rounded as the table of costs is; absent where nobody knows how many there are.
    pub cost_low: Option<Money>,
    /// What they cost by the estimate.
    pub cost: Option<Money>,
    /// What they cost at most.
    pub cost_high: Option<Money>,
}

impl StockPlan {
    pub(in crate::service::plan) fn of(
        request: &Request,
        (sections, first): (&Sections<'_>, &FirstSteps),
        mixes: &[Mix],
    ) -> Result<Self, Problems> {
        let mut products: Vec<StockLine> = Vec::new();
        let mut take = |product: &str, kind: PartKind, taken: Interval<Mass>| match products
            .iter_mut()
            .find(|line| line.product == product)
        {
            Some(line) => line.wanted = line.wanted.combine(taken, |one, other| one + other),
            None => products.push(StockLine {
                product: product.to_owned(),
                kind,
                wanted: taken,
                in_hand: request.shop.facts(product).and_then(|facts| facts.in_hand),
                missing: None,
                cover: StockCover::NotCounted,
                instead: Vec::new(),
            }),
        };
        for (mix, bowl) in mixes.iter().flat_map(|mix| mix.bowls.iter().map(move |bowl| (mix, bowl))) {
            for part in &bowl.parts {
                take(&part.product, part.kind, of_mix(mix, part.weigh.g() * bowl.count as f64));
            }
        }
        for part in first.planned().flat_map(|step| &step.parts) {
            take(&part.product, part.kind, part.mass);
        }
        // What this service takes of the other products is not there for a substitute.
        let taken: Vec<(String, Mass)> =
            products.iter().map(|line| (line.product.clone(), line.wanted.high())).collect();
        for line in &mut products {
            let Some(in_hand) = line.in_hand else { continue };
            line.missing = Some(line.wanted.map(|wanted| wanted.minus_or_zero(in_hand)));
            line.cover = cover(&line.wanted, in_hand);
            if line.cover != StockCover::Covered {
                let missing = Missing { product: &line.product, kind: line.kind, wanted: line.wanted };
                line.instead = substitutes::of(request, &missing, &taken);
            }
        }
        let foils = sections.uncounted_foils().next().is_none().then(|| sections.foils());
        let line = |(i, consumable): (usize, &Consumable)| {
            let field = format!("shop.consumable[{}].price", i + 1);
            counted(consumable, foils).map_err(|error| error.to_string()).in_field(&field)
        };
        let consumables = request.shop.consumables.iter().enumerate().map(line).collect::<Result<_, Problems>>()?;
        Ok(Self { products, consumables })
    }
}

/// What a mix takes of a product: the bowls as weighed, or more and less as the estimate of the mix allows.
fn of_mix(mix: &Mix, weighed_g: f64) -> Interval<Mass> {
    let best = mix.needed.best().g();
    let factor = |bound: Mass| if best > 0.0 { bound.g() / best } else { 1.0 };
    Interval::ordered(factor(mix.needed.low()), 1.0, factor(mix.needed.high()))
        .map(|factor| Mass::nearest(weighed_g * factor))
}

fn cover<T: Copy + PartialOrd>(wanted: &Interval<T>, in_hand: T) -> StockCover {
    if wanted.high() <= in_hand {
        StockCover::Covered
    } else if wanted.best() <= in_hand {
        StockCover::MayRunShort
    } else {
        StockCover::Short
    }
}

/// How many a service with so many foils uses up.
pub(in crate::service::plan) fn pieces(consumable: &Consumable, foils: Interval<u32>) -> Interval<u32> {
    let pieces = consumable.pieces.unwrap_or(1);
    match consumable.per {
        Per::Service => Interval::exact(pieces),
        Per::Foil => foils.map(|foils| foils.saturating_mul(pieces)),
    }
}

fn counted(consumable: &Consumable, foils: Option<Interval<u32>>) -> Result<ConsumableLine, MoneyError> {
    let wanted = match (consumable.per, foils) {
        (Per::Foil, None) => None,
        (_, foils) => Some(pieces(consumable, foils.unwrap_or(Interval::exact(0)))),
    };
    let pack = PackPrice::new(consumable.price, Measure::Count(consumable.pack_pieces))?;
    let cost = |bound: fn(&Interval<u32>) -> u32| {
        let pieces = wanted.as_ref().map(bound);
        pieces.map(|pieces| supply_cost(pack, Measure::Count(pieces), Rounding::MidpointAwayFromZero)).transpose()
    };
    Ok(ConsumableLine {
        name: consumable.name.clone(),
        wanted_pieces: wanted,
        in_hand_pieces: consumable.in_hand,
        cover: wanted.zip(consumable.in_hand).map_or(StockCover::NotCounted, |(wanted, there)| cover(&wanted, there)),
        cost_low: cost(Interval::low)?,
        cost: cost(Interval::best)?,
        cost_high: cost(Interval::high)?,
    })
}

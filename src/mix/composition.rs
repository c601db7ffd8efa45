use super::{AsAppliedError, Cas, Form, Ingredient, Product, as_applied};
use crate::{
    quantity::{Mass, MassFraction, Quantity},
    source::Interval,
};
use serde::Serialize;

/// One substance in the mixed bowl.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Constituent {
    /// The name first used for it.
    pub name: String,
    /// The CAS registry number, as stated or as the name tells.
    pub cas: Option<Cas>,
    /// The form the level is stated in, where stated.
    pub stated_as: Option<Form>,
    /// Groups of the law it belongs to.
    pub groups: Vec<String>,
    /// Mass fraction in the bowl, counting only what is declared.
    #[serde(rename = "level_ww_percent")]
    pub level: Interval<MassFraction>,
    /// Products of the bowl that may hold more of it, because their contents are not declared in full.
    pub undeclared_in: Vec<String>,
    /// The most those products could add to the level, if all that is not declared in them were this substance.
    #[serde(rename = "undeclared_at_most_ww_percent")]
    pub undeclared_at_most: MassFraction,
}

impl Constituent {
    /// Whether every product of the bowl states how much of it there is.
    #[must_use]
    pub fn is_fully_declared(&self) -> bool {
        self.undeclared_in.is_empty()
    }

    fn is(&self, ingredient: &Ingredient) -> bool {
        let same_name = || self.name.to_lowercase() == ingredient.name.to_lowercase();
        self.stated_as == ingredient.stated_as
            && match (self.cas, ingredient.cas) {
                (Some(a), Some(b)) => a == b,
                (None, None) => same_name(),
                _ => false,
            }
    }
}

/// How much of one product is in the bowl.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct BowlPortion {
    /// The mass of it.
    #[serde(rename = "mass_g")]
    pub mass: Mass,
    /// The product.
    pub product: Product,
}

impl BowlPortion {
    fn is_in_bowl(&self) -> bool {
        self.mass > Mass::ZERO
    }
}

/// What is in the mixed bowl, and so on the hair: every declared substance with its bounds, and what is not known.
///
/// On damp hair the water in the hair dilutes the mixture further; add it as a part if it is to count.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Composition {
    #[serde(rename = "total_g")]
    total: Mass,
    portions: Vec<BowlPortion>,
    constituents: Vec<Constituent>,
}

impl Composition {
    /// Mixes products by mass.
    ///
    /// # Errors
    ///
    /// [`AsAppliedError::Empty`] when the parts weigh nothing.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{mix::{Cas, Composition, Ingredient, Product}, quantity::{Mass, MassFraction}, source::Interval};
    ///
    /// let exact = |percent| MassFraction::from_ww_percent(percent).map(Interval::exact);
    /// let peroxide = |percent| exact(percent).map(|p| Ingredient::named("Hydrogen peroxide", p).with_cas(Cas::HYDROGEN_PEROXIDE));
    /// let bowl = Composition::mix(vec![
    ///     (Mass::from_g(60.0)?, Product::declared("developer", vec![peroxide(6.0)?])),
    ///     (Mass::from_g(60.0)?, Product::unknown("shade J7-mist")),
    /// ])?;
    /// assert_eq!(bowl.constituents()[0].level.best().ww_percent(), 3.0);
    /// assert_eq!(bowl.constituents()[0].undeclared_in, ["shade J7-mist"]);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn mix(parts: Vec<(Mass, Product)>) -> Result<Self, AsAppliedError> {
        let portions = parts.into_iter().map(|(mass, product)| BowlPortion { mass, product });
        let mut portions: Vec<BowlPortion> = portions.filter(BowlPortion::is_in_bowl).collect();
        let total: Mass = portions.iter().map(|portion| portion.mass).sum();
        if portions.is_empty() {
            return Err(AsAppliedError::Empty);
        }
        // A substance named here by its number and there by its name is one substance.
        for ingredient in portions.iter_mut().flat_map(|portion| &mut portion.product.ingredients) {
            ingredient.cas = ingredient.identity();
        }
        let mut constituents: Vec<Constituent> = Vec::new();
        for ingredient in portions.iter().flat_map(|portion| &portion.product.ingredients) {
            match constituents.iter_mut().find(|c| c.is(ingredient)) {
                Some(known) => {
                    let fresh = ingredient.groups.iter().filter(|g| !known.groups.contains(g)).cloned();
                    let fresh: Vec<String> = fresh.collect();
                    known.groups.extend(fresh);
                }
                None => constituents.push(Constituent {
                    name: ingredient.name.clone(),
                    cas: ingredient.cas,
                    stated_as: ingredient.stated_as,
                    groups: ingredient.groups.clone(),
                    level: Interval::exact(MassFraction::ZERO),
                    undeclared_in: Vec::new(),
                    undeclared_at_most: MassFraction::ZERO,
                }),
            }
        }
        for constituent in &mut constituents {
            // What a product does not name is none of it when the product is declared in full, and open otherwise.
            let mut counted = Vec::with_capacity(portions.len());
            let mut open_g = 0.0;
            for portion in &portions {
                let named = level_in(&portion.product, constituent);
                counted.push((portion.mass, named.unwrap_or(Interval::exact(MassFraction::ZERO))));
                if named.is_none() && !portion.product.fully_declared {
                    constituent.undeclared_in.push(portion.product.name.clone());
                    open_g += portion.mass.g() * portion.product.undeclared_at_most().fraction();
                }
            }
            constituent.level = as_applied(&counted)?;
            constituent.undeclared_at_most = MassFraction::nearest(100.0 * open_g / total.g());
        }
        Ok(Self { total, portions, constituents })
    }

    /// The products and their masses, in the order given; what weighs 0 g is not in the bowl.
    #[must_use]
    pub fn portions(&self) -> &[BowlPortion] {
        &self.portions
    }

    /// Every declared substance, in the order of first mention.
    #[must_use]
    pub fn constituents(&self) -> &[Constituent] {
        &self.constituents
    }

    /// The mass of the bowl.
    #[must_use]
    pub const fn total(&self) -> Mass {
        self.total
    }

    /// The most of any one substance that no product names: what products not declared in full hold beside the least that
    /// their declared ingredients can be.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{mix::{Composition, Product}, quantity::Mass};
    ///
    /// let cream = (Mass::from_g(60.0)?, Product::declared("cream", vec![]));
    /// let bowl = Composition::mix(vec![cream, (Mass::from_g(20.0)?, Product::unknown("powder"))])?;
    /// assert_eq!(bowl.undeclared_at_most().ww_percent(), 25.0);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn undeclared_at_most(&self) -> MassFraction {
        let open_g: f64 =
            self.undeclared().map(|portion| portion.mass.g() * portion.product.undeclared_at_most().fraction()).sum();
        MassFraction::nearest(100.0 * open_g / self.total.g())
    }

    /// What is in the bowl of products whose contents are not declared in full.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{mix::{Composition, Ingredient, Product}, quantity::{Mass, MassFraction}, source::Interval};
    ///
    /// let g = Mass::from_g;
    /// let level = Interval::exact(MassFraction::from_ww_percent(6.0)?);
    /// let developer = Product::declared("developer", vec![Ingredient::named("hydrogen peroxide", level)]);
    /// let bowl = Composition::mix(vec![(g(60.0)?, developer), (g(60.0)?, Product::unknown("powder"))])?;
    /// assert_eq!((bowl.total(), bowl.portions().len()), (g(120.0)?, 2));
    /// assert_eq!(bowl.undeclared().map(|portion| portion.product.name.as_str()).collect::<Vec<_>>(), ["powder"]);
    /// assert!(!bowl.constituents()[0].is_fully_declared()); // the powder may hold peroxide too
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn undeclared(&self) -> impl Iterator<Item = &BowlPortion> {
        self.portions.iter().filter(|portion| !portion.product.fully_declared)
    }
}

/// The level of a substance in one product; none when the product does not name it.
fn level_in(product: &Product, constituent: &Constituent) -> Option<Interval<MassFraction>> {
    let named = product.ingredients.iter().filter(|i| constituent.is(i)).map(|i| i.level);
    // Named twice: the amounts add up, as far as a whole product can hold them.
    let plus = |a: MassFraction, b: MassFraction| MassFraction::nearest(a.ww_percent() + b.ww_percent());
    named.reduce(|sum, more| sum.combine(more, plus))
}

use super::{AsAppliedError, Cas, Form, Ingredient, Product, as_applied};
use crate::{
    quantity::{Mass, MassFraction},
    source::Interval,
};

/// One substance in the mixed bowl.
#[derive(Debug, Clone, PartialEq)]
pub struct Constituent {
    /// The name first used for it.
    pub name: String,
    /// The CAS registry number, where stated.
    pub cas: Option<Cas>,
    /// The form the level is stated in, where stated.
    pub stated_as: Option<Form>,
    /// Groups of the law it belongs to.
    pub groups: Vec<String>,
    /// Mass fraction in the bowl, counting only what is declared.
    pub level: Interval<MassFraction>,
    /// Products of the bowl that may hold more of it, because their contents are not declared in full.
    pub undeclared_in: Vec<String>,
    /// The most those products could add to the level, if all that is not declared in them were this substance.
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

/// What is in the mixed bowl, and so on the hair: every declared substance with its bounds, and what is not known.
///
/// On damp hair the water in the hair dilutes the mixture further; add it as a part if it is to count.
#[derive(Debug, Clone, PartialEq)]
pub struct Composition {
    parts: Vec<(Mass, Product)>,
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
    /// let exact = |percent| MassFraction::from_percent_ww(percent).map(Interval::exact);
    /// let peroxide = |percent| exact(percent).map(|p| Ingredient::named("Hydrogen peroxide", p).with_cas(Cas::HYDROGEN_PEROXIDE));
    /// let bowl = Composition::mix(vec![
    ///     (Mass::from_g(60.0)?, Product::declared("developer", vec![peroxide(6.0)?])),
    ///     (Mass::from_g(60.0)?, Product::unknown("shade 7.1")),
    /// ])?;
    /// assert_eq!(bowl.constituents()[0].level.best().percent_ww(), 3.0);
    /// assert_eq!(bowl.constituents()[0].undeclared_in, ["shade 7.1"]);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn mix(parts: Vec<(Mass, Product)>) -> Result<Self, AsAppliedError> {
        let mut constituents: Vec<Constituent> = Vec::new();
        for ingredient in parts.iter().filter(|(mass, _)| mass.g() > 0.0).flat_map(|(_, p)| &p.ingredients) {
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
            let levels: Vec<_> = parts.iter().map(|(mass, p)| (*mass, level_in(p, constituent))).collect();
            let counted: Vec<_> =
                levels.iter().map(|(mass, l)| (*mass, l.unwrap_or(Interval::exact(MassFraction::ZERO)))).collect();
            constituent.level = as_applied(&counted)?;
            let open = || {
                let silent = parts.iter().zip(&levels).filter(|(_, (_, level))| level.is_none());
                silent.map(|(part, _)| part).filter(|(mass, p)| mass.g() > 0.0 && !p.fully_declared)
            };
            constituent.undeclared_in = open().map(|(_, product)| product.name.clone()).collect();
            let grams: f64 = open().map(|(mass, product)| mass.g() * undeclared_part(product)).sum();
            let total: Mass = parts.iter().map(|(mass, _)| *mass).sum();
            constituent.undeclared_at_most =
                MassFraction::from_fraction((grams / total.g()).min(1.0)).map_err(|_| AsAppliedError::Empty)?;
        }
        if parts.iter().all(|(mass, _)| mass.g() <= 0.0) {
            return Err(AsAppliedError::Empty);
        }
        Ok(Self { parts, constituents })
    }

    /// The products and their masses, as given.
    #[must_use]
    pub fn parts(&self) -> &[(Mass, Product)] {
        &self.parts
    }

    /// Every declared substance, in the order of first mention.
    #[must_use]
    pub fn constituents(&self) -> &[Constituent] {
        &self.constituents
    }

    /// The mass of the bowl.
    #[must_use]
    pub fn total(&self) -> Mass {
        self.parts.iter().map(|(mass, _)| *mass).sum()
    }

    /// Products in the bowl whose contents are not declared in full, with their masses.
    pub fn undeclared(&self) -> impl Iterator<Item = (Mass, &Product)> {
        self.parts.iter().filter(|(mass, p)| mass.g() > 0.0 && !p.fully_declared).map(|(mass, p)| (*mass, p))
    }
}

/// What is left of a product beside the least its declared ingredients can be, as a fraction.
fn undeclared_part(product: &Product) -> f64 {
    let declared: f64 = product.ingredients.iter().map(|i| i.level.low().fraction()).sum();
    (1.0 - declared).max(0.0)
}

/// The level of a substance in one product: nothing when the product does not name it.
fn level_in(product: &Product, constituent: &Constituent) -> Option<Interval<MassFraction>> {
    let mut named = product.ingredients.iter().filter(|i| constituent.is(i)).map(|i| i.level);
    let first = named.next()?;
    // Named twice: the amounts add up, as far as a whole product can hold them.
    Some(named.fold(first, |sum, more| plus(sum, more).unwrap_or(sum)))
}

fn plus(a: Interval<MassFraction>, b: Interval<MassFraction>) -> Option<Interval<MassFraction>> {
    let add = |x: MassFraction, y: MassFraction| {
        MassFraction::from_percent_ww((x.percent_ww() + y.percent_ww()).min(100.0)).ok()
    };
    Interval::new(add(a.low(), b.low())?, add(a.best(), b.best())?, add(a.high(), b.high())?).ok()
}

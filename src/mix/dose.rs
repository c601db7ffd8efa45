use super::{BowlPlan, Part, Recipe, RecipeAmount, RecipeError, Unit, decimal};
use crate::quantity::{Mass, Share};
use rust_decimal::Decimal;
use serde::Serialize;

/// How an additive is dosed; take it from the additive's own leaflet.
#[derive(Debug, Clone, PartialEq)]
pub enum Dose {
    /// A fixed mass in every bowl, whatever its size.
    PerBowl(Mass),
    /// A share of the rest of the bowl: 2 % is 2 g for every 100 g of it.
    OfBowl(Share),
    /// A share of one product in the bowl: 2 % is 2 g for every 100 g of that product.
    OfProduct(String, Share),
}

/// An additive (thickener, bond-building additive, oil) and its dose. It holds no peroxide, so it dilutes the bowl.
#[derive(Debug, Clone, PartialEq)]
pub struct Addition {
    /// The user's own name for it.
    pub product: String,
    /// Its dose.
    pub dose: Dose,
}

impl Recipe {
    /// The recipe with additives on top of it.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{mix::{Addition, Dose, Recipe}, quantity::Share};
    ///
    /// let dose = Dose::OfProduct("lightener".into(), Share::from_percent(12.0)?);
    /// let recipe = "25 g lightener + 50 g 9%".parse::<Recipe>()?;
    /// let recipe = recipe.with_additives(&[Addition { product: "thickener".into(), dose }])?;
    /// assert_eq!(recipe.to_string(), "25 g lightener + 50 g 9% + 3 g thickener");
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    ///
    /// # Errors
    ///
    /// [`RecipeError::MixedUnits`] unless the recipe is in grams, [`RecipeError::NoSuchPart`] when an additive is dosed
    /// by a product that is not in it, [`RecipeError::Amount`] for a dose of nothing.
    pub fn with_additives(&self, additives: &[Addition]) -> Result<Self, RecipeError> {
        let rest = self.grams()?;
        let mut parts = self.parts.clone();
        for additive in additives {
            let value = match &additive.dose {
                Dose::PerBowl(mass) => decimal::from_f64(mass.g()),
                Dose::OfBowl(share) => percent_of(*share, rest),
                Dose::OfProduct(product, share) => percent_of(*share, self.part(product)?.amount.value),
            };
            let amount = RecipeAmount { value: value.ok_or(RecipeError::OutOfRange)?, unit: Unit::Gram };
            parts.push(Part { amount, product: additive.product.clone() });
        }
        Self::new(parts)
    }

    fn grams(&self) -> Result<Decimal, RecipeError> {
        let total = self.total()?;
        if total.unit == Unit::Gram {
            Ok(total.value)
        } else {
            Err(RecipeError::MixedUnits { one: total.unit, other: Unit::Gram })
        }
    }
}

fn percent_of(share: Share, whole: Decimal) -> Option<Decimal> {
    decimal::from_f64(share.percent())?.checked_mul(whole)?.checked_div(Decimal::ONE_HUNDRED).map(|v| v.normalize())
}

/// What is thrown away of one product over all bowls.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Leftover {
    /// The product.
    pub product: String,
    /// How much of it was put into bowls.
    #[serde(rename = "used_g")]
    pub used: Mass,
    /// How much of that never reaches the hair.
    #[serde(rename = "wasted_g")]
    pub wasted: Mass,
}

impl BowlPlan {
    /// The recipe of each bowl: the base scaled so that base and additives together fill the bowl.
    ///
    /// # Errors
    ///
    /// As [`Recipe::with_additives`]; [`RecipeError::Factor`] when the doses per bowl leave no room for anything else.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::mix::{Addition, BowlRequest, Dose, Pace, Recipe, bowls};
    /// use foilwork::quantity::{Duration, Mass};
    ///
    /// let g = Mass::from_g;
    /// let request = BowlRequest::new(g(160.0)?, g(90.0)?, Duration::from_min(45.0)?, Pace::from_g_per_min(4.0)?);
    /// let plan = bowls(&request)?;
    /// let base: Recipe = "30 g lightener + 60 g 6%".parse()?;
    /// let additive = Addition { product: "bond builder".into(), dose: Dose::PerBowl(g(5.0)?) };
    /// let recipes = plan.recipes(&base, &[additive])?;
    /// assert_eq!(recipes[0].to_string(), "25 g lightener + 50 g 6% + 5 g bond builder");
    /// assert_eq!(recipes.len(), 2);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn recipes(&self, base: &Recipe, additives: &[Addition]) -> Result<Vec<Recipe>, RecipeError> {
        let whole = base.grams()?;
        let fixed = |additive: &&Addition| matches!(additive.dose, Dose::PerBowl(_));
        let by_share: Vec<Addition> = additives.iter().filter(|a| !fixed(a)).cloned().collect();
        let dosed = base.with_additives(&by_share)?.grams()?;
        let per_bowl = additives.iter().filter_map(|a| match a.dose {
            Dose::PerBowl(mass) => Some(mass.g()),
            _ => None,
        });
        let per_bowl = decimal::from_f64(per_bowl.sum()).ok_or(RecipeError::OutOfRange)?;
        let recipe = |bowl: &super::FreshBowl| {
            let room = decimal::from_f64(bowl.mixed.g()).and_then(|m| m.checked_sub(per_bowl));
            let room = room.ok_or(RecipeError::OutOfRange)?;
            let value = room.checked_mul(whole).and_then(|v| v.checked_div(dosed)).ok_or(RecipeError::OutOfRange)?;
            base.to_total(RecipeAmount { value, unit: Unit::Gram })?.with_additives(additives)
        };
        self.bowls().iter().map(recipe).collect()
    }

    /// What each product of the bowls loses to residue: the masses a cost calculation needs.
    ///
    /// # Errors
    ///
    /// As [`recipes`](Self::recipes).
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::mix::{BowlRequest, Pace, Recipe, bowls};
    /// use foilwork::quantity::{Duration, Mass};
    ///
    /// // 90 g on the hair and 6 g that stay in the bowl, of one part powder and two of developer.
    /// let g = Mass::from_g;
    /// let request = BowlRequest::new(g(90.0)?, g(120.0)?, Duration::from_min(45.0)?, Pace::from_g_per_min(4.0)?);
    /// let plan = bowls(&request.residue(g(6.0)?))?;
    /// let wasted = plan.leftovers(&"30 g powder + 60 g 6%".parse::<Recipe>()?, &[])?;
    /// assert_eq!((wasted[0].product.as_str(), wasted[0].used, wasted[0].wasted), ("powder", g(32.0)?, g(2.0)?));
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn leftovers(&self, base: &Recipe, additives: &[Addition]) -> Result<Vec<Leftover>, RecipeError> {
        let mut products: Vec<Leftover> = Vec::new();
        for (bowl, recipe) in self.bowls().iter().zip(self.recipes(base, additives)?) {
            let lost = 1.0 - bowl.applied.g() / bowl.mixed.g();
            for (part, mass) in recipe.parts().iter().zip(recipe.masses()?) {
                let waste = Mass::from_g(mass.g() * lost.max(0.0)).unwrap_or(Mass::ZERO);
                match products.iter_mut().find(|known| known.product == part.product) {
                    Some(known) => {
                        known.used = known.used + mass;
                        known.wasted = known.wasted + waste;
                    }
                    None => products.push(Leftover { product: part.product.clone(), used: mass, wasted: waste }),
                }
            }
        }
        Ok(products)
    }
}

use super::{Part, Ratio, Recipe, RecipeAmount, RecipeError};
use rust_decimal::{Decimal, prelude::ToPrimitive};

impl Recipe {
    /// Every amount times a factor.
    ///
    /// # Errors
    ///
    /// [`RecipeError::Factor`] unless the factor is above 0.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::mix::Recipe;
    ///
    /// let more = "30 g J7-mist + 45 g 6%".parse::<Recipe>()?.times("1.2".parse()?)?;
    /// assert_eq!(more.to_string(), "36 g J7-mist + 54 g 6%");
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn times(&self, factor: Decimal) -> Result<Self, RecipeError> {
        self.fraction(factor, Decimal::ONE)
    }

    /// The recipe with another total.
    ///
    /// # Errors
    ///
    /// [`RecipeError::MixedUnits`] unless the parts and the total are in one unit.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::mix::{RecipeAmount, Recipe, Unit};
    ///
    /// let recipe: Recipe = "30 g J7-mist + 15 g J8-oat + 67.5 g 6%".parse()?;
    /// let half = recipe.to_total(RecipeAmount { value: "56.25".parse()?, unit: Unit::Gram })?;
    /// assert_eq!(half.to_string(), "15 g J7-mist + 7.5 g J8-oat + 33.75 g 6%");
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn to_total(&self, total: RecipeAmount) -> Result<Self, RecipeError> {
        let now = self.total()?;
        same_unit(now, total)?;
        self.fraction(total.value, now.value)
    }

    /// The recipe in which one product has a given amount.
    ///
    /// # Errors
    ///
    /// [`RecipeError::NoSuchPart`], or [`RecipeError::MixedUnits`] when that part is in another unit.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::mix::{Recipe, RecipeAmount, Unit};
    ///
    /// let tube = RecipeAmount { value: 60.into(), unit: Unit::Gram };
    /// let recipe = "30 g J7-mist + 45 g 6%".parse::<Recipe>()?.to_part("J7-mist", tube)?;
    /// assert_eq!(recipe.to_string(), "60 g J7-mist + 90 g 6%");
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn to_part(&self, product: &str, amount: RecipeAmount) -> Result<Self, RecipeError> {
        let now = self.part(product)?.amount;
        same_unit(now, amount)?;
        self.fraction(amount.value, now.value)
    }

    /// The recipe that uses up whole packs of one product.
    ///
    /// # Errors
    ///
    /// As [`to_part`](Self::to_part).
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::mix::{Recipe, RecipeAmount, Unit};
    ///
    /// let tube = RecipeAmount { value: 60.into(), unit: Unit::Gram };
    /// let recipe = "30 g J7-mist + 45 g 6%".parse::<Recipe>()?.to_packs("J7-mist", tube, 2)?;
    /// assert_eq!(recipe.to_string(), "120 g J7-mist + 180 g 6%");
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn to_packs(&self, product: &str, pack: RecipeAmount, packs: u32) -> Result<Self, RecipeError> {
        let value = pack.value.checked_mul(packs.into()).ok_or(RecipeError::OutOfRange)?;
        self.to_part(product, RecipeAmount { value, unit: pack.unit })
    }

    /// Whole packs of one product that this recipe needs: always rounded up.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::mix::{RecipeAmount, Recipe, Unit};
    ///
    /// let recipe: Recipe = "61 g J7-mist + 90 g 6%".parse()?;
    /// assert_eq!(recipe.packs_needed("J7-mist", RecipeAmount { value: 60.into(), unit: Unit::Gram })?, 2);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    ///
    /// # Errors
    ///
    /// [`RecipeError::NoSuchPart`], or [`RecipeError::MixedUnits`] when the pack is in another unit.
    pub fn packs_needed(&self, product: &str, pack: RecipeAmount) -> Result<u64, RecipeError> {
        let needed = self.part(product)?.amount;
        same_unit(needed, pack)?;
        if pack.value <= Decimal::ZERO {
            return Err(RecipeError::Factor(pack.value));
        }
        let packs = needed.value.checked_div(pack.value).map(|packs| packs.ceil());
        packs.and_then(|packs| packs.to_u64()).ok_or(RecipeError::OutOfRange)
    }

    /// Both recipes in one bowl; a product of both is named once, with the sum of its amounts.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::mix::Recipe;
    ///
    /// let (one, two): (Recipe, Recipe) = ("30 g J7-mist + 45 g 6%".parse()?, "10 g J8-oat + 15 g 6%".parse()?);
    /// assert_eq!(one.combined(&two)?.to_string(), "30 g J7-mist + 60 g 6% + 10 g J8-oat");
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    ///
    /// # Errors
    ///
    /// [`RecipeError::MixedUnits`] when one product comes in two units.
    pub fn combined(&self, other: &Self) -> Result<Self, RecipeError> {
        let mut parts = self.parts.clone();
        for part in &other.parts {
            match parts.iter_mut().find(|p| p.product == part.product) {
                Some(known) => {
                    same_unit(known.amount, part.amount)?;
                    let sum = known.amount.value.checked_add(part.amount.value);
                    known.amount.value = sum.ok_or(RecipeError::OutOfRange)?;
                }
                None => parts.push(part.clone()),
            }
        }
        Ok(Self { parts })
    }

    /// The recipe divided over bowls in a ratio: `1:1` for two equal bowls.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::mix::Recipe;
    ///
    /// let bowls = "30 g J7-mist + 45 g 6%".parse::<Recipe>()?.split(&"2:1".parse()?)?;
    /// assert_eq!(bowls[1].to_string(), "10 g J7-mist + 15 g 6%");
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    ///
    /// # Errors
    ///
    /// [`RecipeError::OutOfRange`] beyond 28 digits.
    pub fn split(&self, bowls: &Ratio) -> Result<Vec<Self>, RecipeError> {
        bowls.parts().iter().map(|share| self.fraction(*share, bowls.sum())).collect()
    }

    /// The part of that name.
    ///
    /// # Errors
    ///
    /// [`RecipeError::NoSuchPart`].
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::mix::Recipe;
    ///
    /// let recipe: Recipe = "30 g J7-mist + 45 g 6%".parse()?;
    /// assert_eq!(recipe.part("6%")?.amount.to_string(), "45 g");
    /// assert!(recipe.part("9%").is_err());
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn part(&self, product: &str) -> Result<&Part, RecipeError> {
        let missing = || RecipeError::NoSuchPart { asked: product.to_owned(), recipe: Box::new(self.clone()) };
        self.parts.iter().find(|p| p.product == product).ok_or_else(missing)
    }

    /// Every amount times `by`, over `over`: one multiplication and one division, so that a third of 30 is 10.
    fn fraction(&self, by: Decimal, over: Decimal) -> Result<Self, RecipeError> {
        if by <= Decimal::ZERO {
            return Err(RecipeError::Factor(by));
        }
        let scaled = |part: &Part| {
            let value = part.amount.value.checked_mul(by)?.checked_div(over)?.normalize();
            let amount = RecipeAmount { value, unit: part.amount.unit };
            (value > Decimal::ZERO).then(|| Part { amount, product: part.product.clone() })
        };
        let parts = self.parts.iter().map(|part| scaled(part).ok_or(RecipeError::OutOfRange));
        Ok(Self { parts: parts.collect::<Result<_, _>>()? })
    }
}

fn same_unit(one: RecipeAmount, other: RecipeAmount) -> Result<(), RecipeError> {
    if one.unit == other.unit { Ok(()) } else { Err(RecipeError::MixedUnits { one: one.unit, other: other.unit }) }
}

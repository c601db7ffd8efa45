use super::{Recipe, RecipeError};
use crate::source::{Basis, TracedInput, TracedResult};

const SCALE_FORMULA: &str = "amount x new total / total";

impl Recipe {
    /// How the parts of this recipe, scaled to another size, come about.
    ///
    /// # Errors
    ///
    /// [`RecipeError::MixedUnits`] when the parts are not in one unit.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::mix::Recipe;
    ///
    /// let recipe: Recipe = "30 g mist + 45 g 6%".parse()?;
    /// let trail = recipe.trail_to(&recipe.times("2".parse()?)?)?;
    /// assert_eq!((trail[1].what.as_str(), trail[1].value.as_str(), trail[1].unit.as_str()), ("6%, scaled", "90", "g"));
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn trail_to(&self, scaled: &Self) -> Result<Vec<TracedResult>, RecipeError> {
        let (before, after) = (self.total()?, scaled.total()?);
        let (unit, decimal) = (before.unit.words(), |value: rust_decimal::Decimal| value.normalize());
        let one = |(was, is): (&super::Part, &super::Part)| {
            let what = format!("{}, scaled", is.product);
            TracedResult::exact(what, decimal(is.amount.value), is.amount.unit.words(), SCALE_FORMULA, Basis::Derived)
                .made_of([
                    TracedInput::exact("amount", decimal(was.amount.value), unit),
                    TracedInput::exact("new total", decimal(after.value), after.unit.words()),
                    TracedInput::exact("total", decimal(before.value), unit),
                ])
        };
        Ok(self.parts().iter().zip(scaled.parts()).map(one).collect())
    }
}

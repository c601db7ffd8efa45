use super::{
    WorkbookError,
    binding::bound,
    cells::{at, down, fixed},
    limit::unchecked,
    page::{Allowed, Page},
    sources::{Rests, sources},
    weighed::{Parts, vanishes},
};
use crate::{
    mix::{Hazard, Recipe, RecipeError, Unit, handling_advice},
    quantity::Mass,
    scale::{WeighError, weigh},
    source::Basis,
};
use rust_decimal::{Decimal, prelude::ToPrimitive};

const AMOUNT: usize = 2;
const ANYTHING: &[Hazard] = &[Hazard::Unknown, Hazard::Peroxide, Hazard::Persulfate];

/// Why a recipe has no workbook.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum RecipeWorkbookError {
    /// The recipe cannot be added up.
    #[error(transparent)]
    Recipe(#[from] RecipeError),
    /// The scale cannot weigh it.
    #[error(transparent)]
    Weigh(#[from] WeighError),
    /// A sheet cannot hold it.
    #[error(transparent)]
    Workbook(#[from] WorkbookError),
}

/// A recipe and its size as a sheet: amounts and total may be changed; every part follows, in g as the scale can weigh it.
///
/// `total` is in the unit of the recipe.
///
/// # Errors
///
/// [`RecipeWorkbookError`] when the recipe mixes units, or when the scale is coarser than the bowl.
///
/// # Example
///
/// ```
/// use foilwork::{mix::Recipe, quantity::Mass, workbook::recipe_workbook};
///
/// let recipe: Recipe = "30 g lightener + 60 g 6%".parse()?;
/// assert!(recipe_workbook(&recipe, 75.into(), Mass::from_g(1.0)?)?.starts_with(b"PK"));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Source
///
/// The rule of three.
pub fn recipe_workbook(recipe: &Recipe, total: Decimal, division: Mass) -> Result<Vec<u8>, RecipeWorkbookError> {
    let unit = recipe.unit()?;
    let scaled = recipe.to_total(crate::mix::RecipeAmount { value: total, unit })?;
    let float = |decimal: Decimal| decimal.to_f64().unwrap_or(0.0);
    let (sum, wanted) = (float(recipe.total()?.value), float(total));
    let weighing = if unit == Unit::Gram { Some(weigh(&scaled.masses()?, division)?) } else { None };
    let scaled: Vec<f64> = scaled.parts().iter().map(|part| float(part.amount.value)).collect();

    let mut page = Page::new("Recipe", "A recipe at another size", &[36.0, 14.0, 14.0, 14.0, 14.0])?;
    page.how()?;
    unchecked(
        &mut page,
        "The strength on the hair is not worked out here: other amounts of a developer make another strength.",
    )?;
    let amounts = Allowed { low: 0.0, high: 1_000_000.0, unit: "of the unit" };
    page.named_input("wanted_total", &format!("total wanted, {unit}"), wanted, AMOUNT, amounts)?;
    if weighing.is_some() {
        let decimals = super::weighed::decimals(division.g());
        page.named_input("division_g", "the scale counts in, g", division.g(), decimals, Allowed::GRAMS)?;
    }
    let first = page.row + 3;
    let last = first + (scaled.len() as u32).saturating_sub(1);
    let total_of = format!("SUM({})", down(1, first, last));
    let factor = format!("IF({total_of}=0,0,wanted_total/{total_of})");
    page.named_formula("times", "times the recipe", &factor, if sum > 0.0 { wanted / sum } else { 0.0 }, 4)?;
    page.row += 1;
    let (given, now) = (format!("as written, {unit}"), format!("now, {unit}"));
    let mut names = vec!["part", given.as_str(), now.as_str(), "share, %"];
    if weighing.is_some() {
        names.push("WEIGH, g");
    }
    page.heading(&names)?;
    page.repeat_heading()?;
    let parts =
        Parts { first, last, exact: 2, beside: 5, division: "division_g", masses_g: &scaled, division_g: division.g() };
    for (place, part) in recipe.parts().iter().enumerate() {
        let value = scaled.get(place).copied().unwrap_or(0.0);
        page.text(0, &part.product)?;
        page.input(1, float(part.amount.value), AMOUNT, amounts)?;
        page.formula(2, &format!("{}*times", at(page.row, 1)), value, AMOUNT)?;
        let share = format!("IF({total_of}=0,0,100*{}/{total_of})", at(page.row, 1));
        page.formula(3, &share, 100.0 * value / wanted, 1)?;
        if let Some(part) = weighing.as_ref().and_then(|weighing| weighing.parts().get(place)) {
            parts.weigh(&mut page, 4, part.weighed.g())?;
        }
        page.row += 1;
    }
    page.text(0, "total")?;
    page.formula(1, &total_of, sum, AMOUNT)?;
    page.formula(2, &format!("SUM({}:{})", fixed(first, 2), fixed(last, 2)), wanted, AMOUNT)?;
    if let Some(weighing) = &weighing {
        let decimals = super::weighed::decimals(division.g());
        page.formula(4, &format!("SUM({})", down(4, first, last)), weighing.total().g(), decimals)?;
    }
    page.row += 1;
    if let Some(weighing) = &weighing {
        let lost = (wanted > 0.0).then(|| weighing.vanished().next().is_some());
        vanishes(&mut page, &down(2, first, last), &down(4, first, last), lost)?;
    }
    let advice = handling_advice(ANYTHING);
    page.cautions(advice.iter().map(|advice| advice.text))?;
    let mut rests = vec![
        Rests::new("the recipe", Basis::Stated, "as you wrote it; the product's own instructions come first"),
        Rests::new("every part at the new size", Basis::Derived, "the rule of three"),
    ];
    if weighing.is_some() {
        rests.push(Rests::rounding());
    }
    for advice in advice {
        let cited: Vec<String> = advice.citations().map(ToString::to_string).collect();
        let source = if cited.is_empty() { "common practice of the trade".to_owned() } else { cited.join("; ") };
        rests.push(Rests::new(advice.text, advice.basis(), source));
    }
    Ok(bound(vec![page, sources(&rests)?])?)
}

use super::{Answer, Outcome, Refusal, args::ScaleArgs, output, workbook};
use crate::{
    mix::{Recipe, RecipeAmount, Unit},
    quantity::Mass,
    scale::weigh,
    workbook::recipe_workbook,
};
use rust_decimal::Decimal;
use std::fmt::Write;

/// `foilwork scale`: the recipe at its new size, exact and as the scale can weigh it.
pub(super) fn run(args: &ScaleArgs) -> Outcome {
    let recipe: Recipe = args.recipe.parse().map_err(|error: crate::mix::ParseError| {
        Refusal(format!("{error}\n  {}", error.pointer().replace('\n', "\n  ")))
    })?;
    let unit = recipe.unit()?;
    let amount = |name: &str, text: &str| {
        if text.contains(char::is_alphabetic) {
            text.parse().map_err(|error: crate::mix::ParseError| Refusal(format!("{name}: {error}")))
        } else {
            decimal(name, text).map(|value| RecipeAmount { value, unit })
        }
    };
    let scaled = match (&args.total, &args.factor, &args.part) {
        (Some(total), ..) => recipe.to_total(amount("--total", total)?)?,
        (_, Some(factor), _) => recipe.times(decimal("--factor", factor)?)?,
        (.., Some(part)) => {
            let form =
                || Refusal(format!("--part {part}: give the product and its new amount, for example \"J7-mist=60\""));
            let (product, value) = part.rsplit_once('=').ok_or_else(form)?;
            recipe.to_part(product.trim(), amount("--part", value)?)?
        }
        _ => return Err(Refusal("give --total, --factor or --part: to what shall it be scaled?".to_owned())),
    };
    if args.trail.of.trail {
        return Ok(Answer::fine(output::trail(&recipe.trail_to(&scaled)?, args.trail.json)?));
    }
    if let Some(path) = &args.xlsx {
        let made = recipe_workbook(&recipe, scaled.total()?.value, Mass::from_g(args.division)?)?;
        return workbook::deliver(path, &made, 0);
    }
    let mut text = format!("{recipe}\nbecomes {scaled:.2}\n  in parts {}\n", recipe.ratio()?);
    if unit == Unit::Gram {
        weighed(&mut text, &scaled, args.division)?;
    }
    Ok(Answer::fine(text))
}

/// What to put on the scale, and what rounding does to the recipe.
fn weighed(text: &mut String, recipe: &Recipe, division_g: f64) -> Result<(), Refusal> {
    let weighing = weigh(&recipe.masses()?, Mass::from_g(division_g)?)?;
    for (part, weighed) in recipe.parts().iter().zip(weighing.parts()) {
        writeln!(text, "weigh {:>9}  {}", weighed.weighed.to_string(), part.product)?;
        if weighed.vanishes() {
            writeln!(text, "  {}: less than the scale can show; use a finer scale or mix more", part.product)?;
        }
    }
    writeln!(text, "total {:>9}", weighing.total().to_string())?;
    let error = weighing.worst_ratio_error_percent();
    if error >= 0.05 {
        writeln!(text, "rounding to {division_g} g moves a part by up to {error:.1} %")?;
    }
    Ok(())
}

fn decimal(name: &str, text: &str) -> Result<Decimal, Refusal> {
    let wrong = |_| Refusal(format!("{name} \"{text}\": give digits with a point, for example 67.5"));
    Decimal::from_str_exact(text.trim()).map_err(wrong)
}

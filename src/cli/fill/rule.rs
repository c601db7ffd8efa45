//! The rules that fill columns: what they take, what they give, and why they refuse a row.

use crate::{
    cli::{
        Refusal,
        args::{FillRule, TableFileArgs},
        read,
    },
    colour::{self, Level},
    column::{self, Cells, ColumnError, ColumnOutcome},
    peroxide::{self, Conditions, KnownMass, Strength, StrengthUnit},
    quantity::{Mass, MassFraction, Temperature},
};

type Kernel<'a> = Box<dyn Fn(&[Cells<'_>], &mut [Vec<f64>]) -> Result<ColumnOutcome, ColumnError> + 'a>;
type Why<'a> = Box<dyn Fn(&[f64]) -> Result<(), Refusal> + 'a>;

/// A rule with the values it takes.
pub(super) struct Rule<'a> {
    pub(super) file: &'a TableFileArgs,
    /// The option of each value, and what was given.
    pub(super) inputs: Vec<(&'static str, &'a str)>,
    /// The names of the new columns.
    pub(super) results: Vec<String>,
    /// How many of the values, from the first, are strengths in % w/w of what a row tells to pour.
    pub(super) poured: usize,
    /// The rule over a column of each value.
    pub(super) kernel: Kernel<'a>,
    /// The rule over one row, for the words of a refusal.
    pub(super) why: Why<'a>,
}

impl<'a> Rule<'a> {
    pub(super) fn of(args: &'a FillRule) -> Result<Self, Refusal> {
        Ok(match args {
            FillRule::Convert(args) => {
                let (from, to) = (args.from.parse()?, args.to.parse()?);
                let at = read::conditions(&args.conditions)?;
                // Conditions that hold for no row are wrong as a whole: nothing at all has a strength in every unit.
                let _ = peroxide::convert(Strength::of(0.0, from)?, to, &at)?;
                let celsius = Cells::Same(at.temperature.celsius());
                let results = if from.is_by_mass() == to.is_by_mass() {
                    vec![name_in(to).to_owned()]
                } else {
                    bounds_of(name_in(to))
                };
                Self {
                    file: &args.file,
                    inputs: vec![("--value", &args.value)],
                    results,
                    poured: 0,
                    kernel: Box::new(move |cells, out| match (cells, out) {
                        ([values], [out]) => column::convert_strengths(*values, from, to, &at, out),
                        ([values], [low, best, high]) => {
                            column::convert_intervals(*values, celsius, (from, to), &at, [low, best, high])
                        }
                        _ => Ok(ColumnOutcome::default()),
                    }),
                    why: Box::new(move |row| converted(row, from, to, &at)),
                }
            }
            FillRule::Dilute(args) => Self {
                file: &args.file,
                inputs: vec![
                    ("--stock", &args.stock),
                    ("--with", args.with.as_deref().unwrap_or("0")),
                    ("--target", &args.target),
                    ("--total", &args.total),
                ],
                results: if args.with.is_some() { ["first_g", "second_g"] } else { ["stock_g", "diluent_g"] }
                    .map(str::to_owned)
                    .to_vec(),
                poured: 2,
                kernel: Box::new(|cells, out| match (cells, out) {
                    ([stock, with, target, total], [one, other]) => {
                        column::blends([*stock, *with, *target], KnownMass::Total, *total, [one, other])
                    }
                    _ => Ok(ColumnOutcome::default()),
                }),
                why: Box::new(blended),
            },
            FillRule::Density(args) => Self {
                file: &args.file,
                inputs: vec![("--strength", &args.strength), ("--temperature", &args.temperature)],
                results: bounds_of("density_g_per_ml"),
                poured: 0,
                kernel: Box::new(|cells, out| match (cells, out) {
                    ([strengths, temperatures], [low, best, high]) => {
                        column::density_intervals(*strengths, *temperatures, [low, best, high])
                    }
                    _ => Ok(ColumnOutcome::default()),
                }),
                why: Box::new(|row| {
                    let [strength, celsius] = numbers(row);
                    peroxide::density(MassFraction::from_ww_percent(strength)?, Temperature::from_celsius(celsius)?)?;
                    Ok(())
                }),
            },
            FillRule::Lift(args) => Self {
                file: &args.file,
                inputs: vec![("--from", &args.from), ("--target", &args.target)],
                results: vec!["lift_levels".to_owned()],
                poured: 0,
                kernel: Box::new(|cells, out| match (cells, out) {
                    ([from, target], [out]) => column::lifts_needed(*from, *target, out),
                    _ => Ok(ColumnOutcome::default()),
                }),
                why: Box::new(|row| {
                    let [from, target] = numbers(row);
                    let _ = colour::lift_needed(Level::new(from)?, Level::new(target)?);
                    Ok(())
                }),
            },
        })
    }
}

/// The values of a row; one that is not there is no number.
fn numbers<const N: usize>(row: &[f64]) -> [f64; N] {
    row.first_chunk().copied().unwrap_or([f64::NAN; N])
}

fn converted(row: &[f64], from: StrengthUnit, to: StrengthUnit, at: &Conditions) -> Result<(), Refusal> {
    let [value] = numbers(row);
    peroxide::convert(Strength::of(value, from)?, to, at)?;
    Ok(())
}

fn blended(row: &[f64]) -> Result<(), Refusal> {
    let [stock, with, target, total] = numbers(row);
    let [stock, with, target] = [stock, with, target].map(MassFraction::from_ww_percent);
    peroxide::blend_two(stock?, with?, target?, KnownMass::Total(Mass::from_g(total)?))?;
    Ok(())
}

/// The names of an estimate and its bounds.
fn bounds_of(name: &str) -> Vec<String> {
    vec![format!("low_{name}"), name.to_owned(), format!("high_{name}")]
}

/// The name of a column of strengths, with its unit.
const fn name_in(unit: StrengthUnit) -> &'static str {
    match unit {
        StrengthUnit::WwPercent => "strength_ww_percent",
        StrengthUnit::WvPercent => "strength_wv_percent",
        StrengthUnit::GPerL => "strength_g_per_l",
        StrengthUnit::MolPerL => "strength_mol_per_l",
        StrengthUnit::MolPerKg => "strength_mol_per_kg",
        StrengthUnit::EqPerL => "strength_eq_per_l",
        StrengthUnit::ActiveOxygenPercent => "strength_active_oxygen_percent",
        StrengthUnit::Volumes => "strength_volumes",
    }
}

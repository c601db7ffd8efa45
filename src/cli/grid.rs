//! What a dilution grid is asked for: bottles, targets, what is added, how much.

use super::{Refusal, args::GridArgs, read};
use crate::{
    peroxide::{Conditions, DilutionTable, StatedStrength, converted, dilution_table},
    quantity::{Mass, MassFraction},
    source::{Interval, TracedResult},
};

/// A strength as it was written, and what it is.
pub(super) struct Stated {
    pub(super) text: String,
    pub(super) strength: Interval<MassFraction>,
    /// How it gets to % w/w, where it is stated otherwise.
    pub(super) by_mass: Option<TracedResult>,
}

/// A grid, and what was asked for.
pub(super) struct Grid {
    pub(super) stocks: Vec<Stated>,
    pub(super) targets: Vec<Stated>,
    pub(super) weaker: Option<Stated>,
    pub(super) table: DilutionTable,
}

impl Grid {
    /// Reads it; at most so many cells, each list at most so long.
    pub(super) fn read(args: &GridArgs, most_cells: usize, most: usize) -> Result<Self, Refusal> {
        let stocks = strengths("--stocks", &args.stocks)?;
        let targets = strengths("--targets", &args.targets)?;
        let weaker = args.with.as_deref().map(|text| strength("--with", text)).transpose()?;
        for (name, list) in [("--stocks", &stocks), ("--targets", &targets)] {
            if list.len() > most {
                return Err(Refusal(format!("{name}: {} strengths: a picture holds at most {most}", list.len())));
            }
        }
        let cells = stocks.len() * targets.len();
        if cells > most_cells {
            return Err(Refusal(format!(
                "--stocks and --targets make {cells} cells: ask for at most {most_cells}, a wall holds no more"
            )));
        }
        let added = weaker.as_ref().map_or(Interval::exact(MassFraction::ZERO), |weaker| weaker.strength);
        let of = |list: &[Stated]| list.iter().map(|stated| stated.strength).collect::<Vec<_>>();
        let (total, division) = (read::grams("--total", &args.total)?, Mass::from_g(args.division)?);
        let table = dilution_table(&of(&stocks), &of(&targets), added, total, division)?;
        Ok(Self { stocks, targets, weaker, table })
    }

    /// What is added, in words.
    pub(super) fn added(&self) -> &str {
        self.weaker.as_ref().map_or("diluent", |weaker| weaker.text.as_str())
    }
}

fn strength(name: &str, text: &str) -> Result<Stated, Refusal> {
    let stated = read::option::<StatedStrength>(name, text)?;
    let at = Conditions::default();
    let strength = stated.mass_fraction_under(&at).map_err(|error| read::about(name, error))?;
    Ok(Stated { text: stated.to_string(), strength, by_mass: converted(stated, &at)? })
}

fn strengths(name: &str, text: &str) -> Result<Vec<Stated>, Refusal> {
    read::with_units(text).iter().map(|item| strength(name, item)).collect()
}

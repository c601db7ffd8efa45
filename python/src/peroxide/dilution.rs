//! Dilution and two-part blends by mass, mixing, rounding, and the dilution table.

use crate::{
    columns::{Column, OnRefusal, apply},
    error::{FoilworkError, raise},
};
use foilwork::{
    peroxide::{self, BlendError, KnownMass},
    quantity::{InvalidQuantity, Mass, MassFraction},
};
use pyo3::{prelude::*, types::PyDict};

/// Split an amount into stock and diluent, by mass.
///
/// Give exactly one of ``total_g``, ``stock_g`` and ``diluent_g``; the rest is worked out. Weigh it: by volume it would be
/// wrong by the density.
///
/// Args:
///     stock_ww: Strength of the bottle in % w/w, a number or an array.
///     target_ww: Strength wanted in % w/w, a number or an array.
///     total_g: How much is wanted altogether, in g, a number or an array.
///     stock_g: Or how much stock there is, in g.
///     diluent_g: Or how much diluent there is, in g.
///     errors: ``"raise"``, or ``"nan"`` to put NaN where a row cannot be; an ``OutOfRangeWarning`` counts them.
///
/// Returns:
///     ``(stock_g, diluent_g)``: floats for numbers, else float64 arrays. Nothing is rounded.
///
/// Raises:
///     FoilworkError: A target above the stock, a zero amount, or not exactly one amount.
///
/// Source:
///     Conservation of mass and of peroxide.
///
/// >>> from foilwork.peroxide import dilute
/// >>> dilute(12, 3, 60)
/// (15.0, 45.0)
/// >>> dilute(12, 3, stock_g=40)
/// (40.0, 120.0)
#[pyfunction]
#[pyo3(
    signature = (stock_ww, target_ww, total_g = None, *, stock_g = None, diluent_g = None, errors = OnRefusal::Raise),
    text_signature = "(stock_ww, target_ww, total_g=None, *, stock_g=None, diluent_g=None, errors='raise')"
)]
pub fn dilute<'py>(
    py: Python<'py>,
    stock_ww: Column<'py>,
    target_ww: Column<'py>,
    total_g: Option<Column<'py>>,
    stock_g: Option<Column<'py>>,
    diluent_g: Option<Column<'py>>,
    errors: OnRefusal,
) -> PyResult<(Bound<'py, PyAny>, Bound<'py, PyAny>)> {
    let (known, amount) = one_of([("total_g", total_g), ("stock_g", stock_g), ("diluent_g", diluent_g)])?;
    two_parts(py, [&stock_ww, &Column::Number(0.0), &target_ww, &amount], known, errors)
}

/// Blend two strengths to a third (alligation), by mass.
///
/// Give exactly one of ``total_g``, ``first_g`` and ``second_g``; the rest is worked out. The order of the two does not
/// matter.
///
/// Args:
///     first_ww: Strength of the first part in % w/w, a number or an array.
///     second_ww: Strength of the second part in % w/w, a number or an array.
///     target_ww: Strength wanted in % w/w, a number or an array.
///     total_g: How much is wanted altogether, in g, a number or an array.
///     first_g: Or how much of the first part there is, in g.
///     second_g: Or how much of the second part there is, in g.
///     errors: ``"raise"``, or ``"nan"`` to put NaN where a row cannot be; an ``OutOfRangeWarning`` counts them.
///
/// Returns:
///     ``(first_g, second_g)``: floats for numbers, else float64 arrays. Nothing is rounded.
///
/// Raises:
///     FoilworkError: A target outside the two strengths, a zero amount, or not exactly one amount.
///
/// Source:
///     Conservation of mass and of peroxide.
///
/// >>> from foilwork.peroxide import blend_two
/// >>> blend_two(6, 12, 9, 80)
/// (40.0, 40.0)
#[pyfunction]
#[pyo3(
    signature = (first_ww, second_ww, target_ww, total_g = None, *, first_g = None, second_g = None, errors = OnRefusal::Raise),
    text_signature = "(first_ww, second_ww, target_ww, total_g=None, *, first_g=None, second_g=None, errors='raise')"
)]
#[expect(clippy::too_many_arguments, reason = "keywords of one Python function")]
pub fn blend_two<'py>(
    py: Python<'py>,
    first_ww: Column<'py>,
    second_ww: Column<'py>,
    target_ww: Column<'py>,
    total_g: Option<Column<'py>>,
    first_g: Option<Column<'py>>,
    second_g: Option<Column<'py>>,
    errors: OnRefusal,
) -> PyResult<(Bound<'py, PyAny>, Bound<'py, PyAny>)> {
    let (known, amount) = one_of([("total_g", total_g), ("first_g", first_g), ("second_g", second_g)])?;
    two_parts(py, [&first_ww, &second_ww, &target_ww, &amount], known, errors)
}

/// Which amount is given.
type Known = fn(Mass) -> KnownMass;

fn one_of<'py>(amounts: [(&str, Option<Column<'py>>); 3]) -> PyResult<(Known, Column<'py>)> {
    let names = amounts.each_ref().map(|(name, _)| *name).join(", ");
    let kinds: [Known; 3] = [KnownMass::Total, KnownMass::First, KnownMass::Second];
    let given = amounts.into_iter().zip(kinds).filter_map(|((_, amount), kind)| Some((kind, amount?)));
    let mut given: Vec<_> = given.collect();
    match (given.pop(), given.len()) {
        (Some(only), 0) => Ok(only),
        (last, before) => {
            let count = before + usize::from(last.is_some());
            Err(FoilworkError::new_err(format!("give exactly one of {names} (got {count})")))
        }
    }
}

fn two_parts<'py>(
    py: Python<'py>,
    columns: [&Column<'py>; 4],
    known: Known,
    errors: OnRefusal,
) -> PyResult<(Bound<'py, PyAny>, Bound<'py, PyAny>)> {
    let found = apply(py, columns, errors, |[first, second, target, amount]| {
        let first = MassFraction::from_percent_ww(first)?;
        let second = MassFraction::from_percent_ww(second)?;
        let target = MassFraction::from_percent_ww(target)?;
        let blend = peroxide::blend_two(first, second, target, known(Mass::from_g(amount)?))?;
        Ok::<_, BlendError>([blend.first.g(), blend.second.g()])
    })?;
    Ok(found.into())
}

/// Strengths and masses of one blend, side by side.
fn parts(strengths_ww: &Column<'_>, masses_g: &Column<'_>) -> PyResult<Vec<(MassFraction, Mass)>> {
    let (strengths, masses) = (strengths_ww.to_vec(), masses_g.to_vec());
    if strengths.len() != masses.len() {
        let text =
            format!("{} strengths and {} masses: give one mass for each strength", strengths.len(), masses.len());
        return Err(FoilworkError::new_err(text));
    }
    let part = |(strength, mass)| Ok((MassFraction::from_percent_ww(strength)?, Mass::from_g(mass)?));
    strengths.into_iter().zip(masses).map(part).collect::<Result<_, InvalidQuantity>>().map_err(raise)
}

/// Strength and mass of weighed parts stirred together.
///
/// Args:
///     strengths_ww: Strength of each part in % w/w.
///     masses_g: Mass of each part in g.
///
/// Returns:
///     ``(strength_ww, total_g)``.
///
/// Raises:
///     FoilworkError: No mass at all, or not one mass for each strength.
///
/// Source:
///     Conservation of mass and of peroxide.
///
/// >>> from foilwork.peroxide import mix_strengths
/// >>> mix_strengths([12, 6], [30, 30])
/// (9.0, 60.0)
#[pyfunction]
pub fn mix_strengths(strengths_ww: Column<'_>, masses_g: Column<'_>) -> PyResult<(f64, f64)> {
    let mixed = peroxide::mix(&parts(&strengths_ww, &masses_g)?).map_err(raise)?;
    Ok((mixed.strength.best().percent_ww(), mixed.total.g()))
}

/// Round the parts of a blend to the divisions of a scale, and say what strength that really is.
///
/// The total is rounded to the nearest division and the parts share it; no part moves by a whole division.
///
/// Args:
///     strengths_ww: Strength of each part in % w/w.
///     masses_g: Mass of each part in g.
///     division_g: What the last figure of the scale counts, in g.
///
/// Returns:
///     ``(masses_g, total_g, strength_ww)``: the masses to weigh, their sum, and their true strength.
///
/// Raises:
///     FoilworkError: A division of zero or coarser than the blend, or not one mass for each strength.
///
/// Source:
///     Conservation of mass and of peroxide.
///
/// >>> from foilwork.peroxide import round_to_scale
/// >>> round_to_scale([9, 0], [22.22, 27.78], 1)
/// ([22.0, 28.0], 50.0, 3.96)
#[pyfunction]
pub fn round_to_scale(
    strengths_ww: Column<'_>,
    masses_g: Column<'_>,
    division_g: f64,
) -> PyResult<(Vec<f64>, f64, f64)> {
    let division = Mass::from_g(division_g).map_err(raise)?;
    let rounded = peroxide::round_to_scale(&parts(&strengths_ww, &masses_g)?, division).map_err(raise)?;
    let masses = rounded.masses.iter().map(|mass| mass.g()).collect();
    Ok((masses, rounded.total.g(), rounded.strength.best().percent_ww()))
}

/// Build a dilution table, one row for each stock and target: the rows of a wall chart.
///
/// Args:
///     stocks_ww: Strengths of the bottles in % w/w.
///     targets_ww: Strengths wanted in % w/w.
///     total_g: Total of every row in g.
///     division_g: What the last figure of the scale counts, in g.
///
/// Returns:
///     A list of dictionaries with ``stock_ww``, ``target_ww``, ``stock_g``, ``diluent_g``, ``true_strength_ww`` (what the
///     rounded masses give), ``diluent_parts`` (parts to one part of stock) and ``refused``: why a target cannot be had,
///     with None in the masses. A list of such rows is what a data frame is made from.
///
/// Raises:
///     FoilworkError: A strength out of range, or a division of zero or coarser than the total.
///
/// Source:
///     Conservation of mass and of peroxide.
///
/// >>> from foilwork.peroxide import dilution_table
/// >>> row = dilution_table([9], [3, 12], 100, 1)[0]
/// >>> row["stock_g"], row["diluent_g"], row["true_strength_ww"], row["diluent_parts"]
/// (33.0, 67.0, 2.97, 2.0)
#[pyfunction]
pub fn dilution_table<'py>(
    py: Python<'py>,
    stocks_ww: Column<'py>,
    targets_ww: Column<'py>,
    total_g: f64,
    division_g: f64,
) -> PyResult<Vec<Bound<'py, PyDict>>> {
    let strengths = |column: &Column<'_>| {
        column.to_vec().into_iter().map(MassFraction::from_percent_ww).collect::<Result<Vec<_>, _>>().map_err(raise)
    };
    let [total, division] = [total_g, division_g].map(|mass| Mass::from_g(mass).map_err(raise));
    let table = peroxide::dilution_table(&strengths(&stocks_ww)?, &strengths(&targets_ww)?, total?, division?);
    let row = |row: &peroxide::DilutionRow| {
        let dict = PyDict::new(py);
        let weigh = row.weigh.as_ref();
        dict.set_item("stock_ww", row.stock.percent_ww())?;
        dict.set_item("target_ww", row.target.percent_ww())?;
        dict.set_item("stock_g", weigh.map(|w| w.stock.g()))?;
        dict.set_item("diluent_g", weigh.map(|w| w.diluent.g()))?;
        dict.set_item("true_strength_ww", weigh.map(|w| w.strength.percent_ww()))?;
        dict.set_item("diluent_parts", weigh.and_then(|w| w.diluent_parts))?;
        dict.set_item("refused", row.refused.as_deref())?;
        Ok(dict)
    };
    table.map_err(raise)?.rows.iter().map(row).collect()
}

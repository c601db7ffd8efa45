//! Dilution and two-part blends by mass, mixing, rounding, and the dilution table.

use crate::{
    answer::answer,
    bounds::{Estimate, Stated},
    columns::{Column, OnRefusal, apply_kernel},
    error::{FoilworkError, raise},
    figures::Figures,
    sequence::Sequence,
    target::How,
};
use foilwork::{
    column::{self, Cells, WhichMass},
    peroxide::{self, BlendError, KnownMass},
    quantity::{Mass, MassFraction},
    source::Interval,
};
use pyo3::prelude::*;

answer! {
    in "foilwork.peroxide";
    /// Stock and diluent of one strength; made by ``dilute``. Floats for numbers, else float64 arrays; it unpacks.
    Dilution as tuple {
        /// Stock to take, in g.
        stock_g: Figures,
        /// Diluent to add, in g.
        diluent_g: Figures,
    }
}

answer! {
    in "foilwork.peroxide";
    /// Two parts of one strength; made by ``blend_two``. Floats for numbers, else float64 arrays; it unpacks.
    TwoPartBlend as tuple {
        /// The first part, in g.
        first_g: Figures,
        /// The second part, in g.
        second_g: Figures,
    }
}

/// Split an amount into stock and diluent, by mass.
///
/// Give exactly one of ``total_g``, ``stock_g`` and ``diluent_g``; the rest is worked out. Weigh it: by volume it would be
/// wrong by the density.
///
/// Args:
///     stock_ww_percent: strength of the bottle in % w/w, a number or an array.
///     target_ww_percent: strength wanted in % w/w, a number or an array.
///     total_g: how much is wanted altogether, in g, a number or an array.
///     stock_g: or how much stock there is, in g.
///     diluent_g: or how much diluent there is, in g.
///     errors: ``"raise"``, or ``"nan"`` to put NaN where a row cannot be; an ``OutOfRangeWarning`` counts them.
///     out: a tuple of two arrays of float64 to put the results into, of their shape; without it new ones are made.
///     where: an array of booleans that broadcasts with the rest: rows that are False are not worked on, and stay as they
///         are in ``out``, or NaN.
///
/// Returns:
///     Stock and diluent: floats for numbers, else float64 arrays. Nothing is rounded.
///
/// Raises:
///     FoilworkError: a target above the stock, a zero amount, or not exactly one amount.
///
/// Source:
///     Conservation of mass and of peroxide.
///
/// Examples:
///     >>> from foilwork.peroxide import dilute
///     >>> dilute(12, 3, 60)
///     Dilution(stock_g=15.0, diluent_g=45.0)
///     >>> stock_g, diluent_g = dilute(12, 3, stock_g=40)
///     >>> diluent_g
///     120.0
#[pyfunction]
#[pyo3(
    signature = (stock_ww_percent, target_ww_percent, total_g = None, *, stock_g = None, diluent_g = None, errors = OnRefusal::Raise, out = None, r#where = None),
    text_signature = "(stock_ww_percent, target_ww_percent, total_g=None, *, stock_g=None, diluent_g=None, errors='raise', out=None, where=None)"
)]
pub fn dilute<'py>(
    py: Python<'py>,
    stock_ww_percent: Column<'py>,
    target_ww_percent: Column<'py>,
    total_g: Option<Column<'py>>,
    stock_g: Option<Column<'py>>,
    diluent_g: Option<Column<'py>>,
    errors: OnRefusal,
    out: Option<Bound<'py, PyAny>>,
    r#where: Option<Bound<'py, PyAny>>,
) -> PyResult<Dilution> {
    let (known, amount) = one_of([("total_g", total_g), ("stock_g", stock_g), ("diluent_g", diluent_g)])?;
    let columns = [&stock_ww_percent, &Column::Number(0.0), &target_ww_percent, &amount];
    let [stock_g, diluent_g] = two_parts(py, columns, known, How::new(errors, out, r#where)?)?;
    Ok(Dilution { stock_g, diluent_g })
}

/// Blend two strengths to a third (alligation), by mass.
///
/// Give exactly one of ``total_g``, ``first_g`` and ``second_g``; the rest is worked out. The order of the two does not
/// matter.
///
/// Args:
///     first_ww_percent: strength of the first part in % w/w, a number or an array.
///     second_ww_percent: strength of the second part in % w/w, a number or an array.
///     target_ww_percent: strength wanted in % w/w, a number or an array.
///     total_g: how much is wanted altogether, in g, a number or an array.
///     first_g: or how much of the first part there is, in g.
///     second_g: or how much of the second part there is, in g.
///     errors: ``"raise"``, or ``"nan"`` to put NaN where a row cannot be; an ``OutOfRangeWarning`` counts them.
///     out: a tuple of two arrays of float64 to put the results into, of their shape; without it new ones are made.
///     where: an array of booleans that broadcasts with the rest: rows that are False are not worked on, and stay as they
///         are in ``out``, or NaN.
///
/// Returns:
///     The two parts: floats for numbers, else float64 arrays. Nothing is rounded.
///
/// Raises:
///     FoilworkError: a target outside the two strengths, a zero amount, or not exactly one amount.
///
/// Source:
///     Conservation of mass and of peroxide.
///
/// Examples:
///     >>> from foilwork.peroxide import blend_two
///     >>> blend_two(6, 12, 9, 80)
///     TwoPartBlend(first_g=40.0, second_g=40.0)
#[pyfunction]
#[pyo3(
    signature = (first_ww_percent, second_ww_percent, target_ww_percent, total_g = None, *, first_g = None, second_g = None, errors = OnRefusal::Raise, out = None, r#where = None),
    text_signature = "(first_ww_percent, second_ww_percent, target_ww_percent, total_g=None, *, first_g=None, second_g=None, errors='raise', out=None, where=None)"
)]
pub fn blend_two<'py>(
    py: Python<'py>,
    first_ww_percent: Column<'py>,
    second_ww_percent: Column<'py>,
    target_ww_percent: Column<'py>,
    total_g: Option<Column<'py>>,
    first_g: Option<Column<'py>>,
    second_g: Option<Column<'py>>,
    errors: OnRefusal,
    out: Option<Bound<'py, PyAny>>,
    r#where: Option<Bound<'py, PyAny>>,
) -> PyResult<TwoPartBlend> {
    let (known, amount) = one_of([("total_g", total_g), ("first_g", first_g), ("second_g", second_g)])?;
    let columns = [&first_ww_percent, &second_ww_percent, &target_ww_percent, &amount];
    let [first_g, second_g] = two_parts(py, columns, known, How::new(errors, out, r#where)?)?;
    Ok(TwoPartBlend { first_g, second_g })
}

fn one_of<'py>(amounts: [(&str, Option<Column<'py>>); 3]) -> PyResult<(WhichMass, Column<'py>)> {
    let names = amounts.each_ref().map(|(name, _)| *name).join(", ");
    let kinds: [WhichMass; 3] = [KnownMass::Total, KnownMass::First, KnownMass::Second];
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
    known: WhichMass,
    how: How<'py>,
) -> PyResult<[Figures; 2]> {
    let rule = |[first, second, target, amount]: [f64; 4]| {
        let [first, second, target] = [first, second, target].map(MassFraction::from_ww_percent);
        let blend = peroxide::blend_two(first?, second?, target?, known(Mass::from_g(amount)?))?;
        Ok::<_, BlendError>([blend.first.g(), blend.second.g()])
    };
    let kernel = |[first, second, target, amount]: [Cells<'_>; 4], out: [&mut [f64]; 2]| {
        column::blends([first, second, target], known, amount, out)
    };
    Ok(apply_kernel(py, columns, how, rule, kernel)?.map(Figures::from))
}

/// Strengths and masses of one blend, side by side.
pub fn parts(strengths: Strengths, masses_g: &Column<'_>) -> PyResult<Vec<(Interval<MassFraction>, Mass)>> {
    let masses = masses_g.to_vec()?;
    if strengths.0.len() != masses.len() {
        let text =
            format!("{} strengths and {} masses: give one mass for each strength", strengths.0.len(), masses.len());
        return Err(FoilworkError::new_err(text));
    }
    let part = |(strength, mass)| Ok((strength, Mass::from_g(mass).map_err(raise)?));
    strengths.0.into_iter().zip(masses).map(part).collect()
}

/// A strength for each part: a number, or bounds.
pub struct Strengths(pub Vec<Interval<MassFraction>>);

impl<'py> FromPyObject<'_, 'py> for Strengths {
    type Error = PyErr;

    fn extract(obj: Borrowed<'_, 'py, PyAny>) -> PyResult<Self> {
        let Sequence(stated) = obj.extract::<Sequence<Stated<MassFraction>>>()?;
        Ok(Self(stated.into_iter().map(|one| one.0).collect()))
    }
}

answer! {
    in "foilwork.peroxide";
    /// Strength and mass of parts stirred together; made by ``mix_strengths``.
    Mixture {
        /// The strength of the whole in % w/w, with its bounds.
        strength_ww_percent: Estimate<f64>,
        /// The mass of the whole in g.
        total_g: f64,
    }
}

/// Strength and mass of weighed parts stirred together.
///
/// Args:
///     strengths_ww_percent: strength of each part in % w/w, a number or ``Bounds``.
///     masses_g: mass of each part in g.
///
/// Returns:
///     The mixture; its strength has the bounds that the parts bring.
///
/// Raises:
///     FoilworkError: no mass at all, or not one mass for each strength.
///
/// Source:
///     Conservation of mass and of peroxide.
///
/// Examples:
///     >>> from foilwork.peroxide import mix_strengths
///     >>> mixed = mix_strengths([12, (5.88, 6, 6.02)], [30, 30])
///     >>> mixed.strength_ww_percent.best, mixed.total_g
///     (9.0, 60.0)
#[pyfunction]
pub fn mix_strengths(strengths_ww_percent: Strengths, masses_g: Column<'_>) -> PyResult<Mixture> {
    let mixed = peroxide::mix_strengths(&parts(strengths_ww_percent, &masses_g)?).map_err(raise)?;
    Ok(Mixture { strength_ww_percent: mixed.strength.into(), total_g: mixed.total.g() })
}

answer! {
    in "foilwork.peroxide";
    /// A blend as a scale shows it; made by ``round_to_scale``.
    RoundedBlend {
        /// The parts in g, in the order given, each a whole number of divisions.
        masses_g: Vec<f64>,
        /// Their sum in g.
        total_g: f64,
        /// The strength in % w/w that these masses really give, with its bounds.
        strength_ww_percent: Estimate<f64>,
    }
}

impl From<peroxide::RoundedBlend> for RoundedBlend {
    fn from(rounded: peroxide::RoundedBlend) -> Self {
        Self {
            masses_g: rounded.masses.iter().map(|mass| mass.g()).collect(),
            total_g: rounded.total.g(),
            strength_ww_percent: rounded.strength.into(),
        }
    }
}

/// Round the parts of a blend to the divisions of a scale, and say what strength that really is.
///
/// The masses add up to the rounded total, with the least harm to the ratio of the parts.
///
/// Args:
///     strengths_ww_percent: strength of each part in % w/w, a number or ``Bounds``.
///     masses_g: mass of each part in g.
///     division_g: what the last figure of the scale counts, in g.
///
/// Returns:
///     The masses to weigh, their sum, and their true strength.
///
/// Raises:
///     FoilworkError: a division of zero or coarser than the blend, or not one mass for each strength.
///
/// Source:
///     Conservation of mass and of peroxide.
///
/// Examples:
///     >>> from foilwork.peroxide import round_to_scale
///     >>> weighed = round_to_scale([9, 0], [22.22, 27.78], 1)
///     >>> weighed.masses_g, weighed.strength_ww_percent.best
///     ([22.0, 28.0], 3.96)
#[pyfunction]
pub fn round_to_scale(
    strengths_ww_percent: Strengths,
    masses_g: Column<'_>,
    division_g: f64,
) -> PyResult<RoundedBlend> {
    let division = Mass::from_g(division_g).map_err(raise)?;
    Ok(peroxide::round_to_scale(&parts(strengths_ww_percent, &masses_g)?, division).map_err(raise)?.into())
}

answer! {
    in "foilwork.peroxide";
    /// One stock diluted to one target; a row of ``dilution_table``.
    DilutionRow {
        /// Strength of the bottle in % w/w.
        stock_ww_percent: f64,
        /// Strength wanted in % w/w.
        target_ww_percent: f64,
        /// Stock on the scale in g; None when the target cannot be had.
        stock_g: Option<f64>,
        /// Diluent on the scale in g; None when the target cannot be had.
        diluent_g: Option<f64>,
        /// What the rounded masses really give, in % w/w; None when the target cannot be had.
        strength_ww_percent: Option<f64>,
        /// Whole parts of stock and of diluent to mix; None where no small numbers do.
        parts: Option<(u32, u32)>,
        /// Parts of diluent to one part of stock, before rounding; None when it is all diluent.
        diluent_parts: Option<f64>,
        /// Why the target cannot be had.
        refused: Option<String>,
    }
}

/// Build a dilution table, one row for each stock and target: the rows of a wall chart.
///
/// Args:
///     stocks_ww_percent: strengths of the bottles in % w/w.
///     targets_ww_percent: strengths wanted in % w/w.
///     total_g: total of every row in g.
///     division_g: what the last figure of the scale counts, in g.
///
/// Returns:
///     The rows, a target above its stock as one that says so. The ``to_dict()`` of each are what a data frame is made
///     from.
///
/// Raises:
///     FoilworkError: a strength out of range, or a division of zero or coarser than the total.
///
/// Source:
///     Conservation of mass and of peroxide.
///
/// Examples:
///     >>> from foilwork.peroxide import dilution_table
///     >>> row = dilution_table([9], [3, 12], 100, 1)[0]
///     >>> row.stock_g, row.diluent_g, row.strength_ww_percent, row.parts
///     (33.0, 67.0, 2.97, (1, 2))
#[pyfunction]
pub fn dilution_table(
    stocks_ww_percent: Column<'_>,
    targets_ww_percent: Column<'_>,
    total_g: f64,
    division_g: f64,
) -> PyResult<Vec<DilutionRow>> {
    let strengths = |column: &Column<'_>| {
        column.to_vec()?.into_iter().map(MassFraction::from_ww_percent).collect::<Result<Vec<_>, _>>().map_err(raise)
    };
    let [total, division] = [total_g, division_g].map(|mass| Mass::from_g(mass).map_err(raise));
    let (stocks, targets) = (strengths(&stocks_ww_percent)?, strengths(&targets_ww_percent)?);
    let table = peroxide::dilution_table(&stocks, &targets, MassFraction::ZERO, total?, division?).map_err(raise)?;
    let row = |row: peroxide::DilutionRow| DilutionRow {
        stock_ww_percent: row.stock.best().ww_percent(),
        target_ww_percent: row.target.best().ww_percent(),
        stock_g: row.weigh.as_ref().map(|weigh| weigh.stock.g()),
        diluent_g: row.weigh.as_ref().map(|weigh| weigh.diluent.g()),
        strength_ww_percent: row.weigh.as_ref().map(|weigh| weigh.strength.best().ww_percent()),
        parts: row.weigh.as_ref().and_then(|weigh| weigh.parts).map(|[stock, diluent]| (stock, diluent)),
        diluent_parts: row.weigh.as_ref().and_then(|weigh| weigh.diluent_parts),
        refused: row.refused,
    };
    Ok(table.rows.into_iter().map(row).collect())
}

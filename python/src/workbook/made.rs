use crate::{
    business::list::priced, error::raise, exact::Number, mix::Recipe, sequence::Sequence, service::Plan,
    teach::Worksheet,
};
use foilwork::{
    peroxide::dilution_table,
    quantity::{Mass, MassFraction},
    text::number,
    workbook::{self, DilutionNames},
};
use pyo3::{prelude::*, types::PyBytes};

/// The wall chart of a dilution: bottles, targets, total and scale may be changed; grams and strength follow.
///
/// Args:
///     stocks_ww_percent: the bottles, in % w/w.
///     targets_ww_percent: the strengths wanted, in % w/w.
///     total_g: what every mix comes to.
///     division_g: the scale's division.
///     weaker_ww_percent: what is added: 0 for a diluent, or a weaker developer.
///
/// Returns:
///     The workbook; write it into a file that ends in .xlsx.
///
/// Raises:
///     FoilworkError: a value out of range, or more rows than a sheet holds.
///
/// Source:
///     Conservation of mass and of peroxide.
///
/// Examples:
///     >>> from foilwork.workbook import dilution_workbook
///     >>> dilution_workbook([12, 9], [6, 3], 100)[:2]
///     b'PK'
#[pyfunction]
#[pyo3(signature = (stocks_ww_percent, targets_ww_percent, total_g, division_g = 1.0, *, weaker_ww_percent = 0.0))]
pub fn dilution_workbook(
    py: Python<'_>,
    stocks_ww_percent: Sequence<f64>,
    targets_ww_percent: Sequence<f64>,
    total_g: f64,
    division_g: f64,
    weaker_ww_percent: f64,
) -> PyResult<Bound<'_, PyBytes>> {
    let percent = |value: &f64| MassFraction::from_ww_percent(*value).map_err(raise);
    let of = |list: &Sequence<f64>| list.0.iter().map(percent).collect::<PyResult<Vec<_>>>();
    let [total, division] = [total_g, division_g].map(|mass| Mass::from_g(mass).map_err(raise));
    let (stocks, targets) = (of(&stocks_ww_percent)?, of(&targets_ww_percent)?);
    let table = dilution_table(&stocks, &targets, percent(&weaker_ww_percent)?, total?, division?).map_err(raise)?;
    let named = |percent: f64| format!("{} % w/w", number(percent, 2));
    let bottles = table.rows.iter().map(|row| named(row.stock.best().ww_percent())).collect();
    let weaker = if weaker_ww_percent == 0.0 { "diluent".to_owned() } else { named(weaker_ww_percent) };
    let names = DilutionNames { bottles, weaker };
    Ok(PyBytes::new(py, &workbook::dilution_workbook(&table, &names).map_err(raise)?))
}

/// A recipe and its size as a sheet: amounts and total may be changed; every part follows, in g as the scale can weigh it.
///
/// Args:
///     recipe: the recipe.
///     total: its new total, in its own unit.
///     division_g: the scale's division.
///
/// Returns:
///     The workbook; write it into a file that ends in .xlsx.
///
/// Raises:
///     FoilworkError: the recipe mixes units, or the scale is coarser than the bowl.
///
/// Source:
///     The rule of three.
///
/// Examples:
///     >>> from foilwork.mix import Recipe
///     >>> from foilwork.workbook import recipe_workbook
///     >>> recipe_workbook(Recipe("30 g lightener + 60 g 6%"), 75)[:2]
///     b'PK'
#[pyfunction]
#[pyo3(signature = (recipe, total, division_g = 1.0))]
pub fn recipe_workbook<'py>(
    py: Python<'py>,
    recipe: &Recipe,
    total: Number,
    division_g: f64,
) -> PyResult<Bound<'py, PyBytes>> {
    let division = Mass::from_g(division_g).map_err(raise)?;
    Ok(PyBytes::new(py, &workbook::recipe_workbook(&recipe.0, total.0, division).map_err(raise)?))
}

/// The bench sheet of a plan: what to weigh bowl by bowl, at any size of the bowl, and costs and price where there are any.
///
/// Args:
///     plan: the plan.
///
/// Returns:
///     The workbook; write it into a file that ends in .xlsx.
///
/// Raises:
///     FoilworkError: more rows than a sheet holds.
///
/// Examples:
///     >>> from foilwork.service import plan_file
///     >>> from foilwork.workbook import plan_workbook
///     >>> plan_workbook(plan_file("examples/soft-gradient.toml"))[:2]
///     b'PK'
#[pyfunction]
pub fn plan_workbook<'py>(py: Python<'py>, plan: &Plan) -> PyResult<Bound<'py, PyBytes>> {
    Ok(PyBytes::new(py, &workbook::plan_workbook(plan.core()).map_err(raise)?))
}

/// A list of services, costed and priced: the list for the wall, and what each costs and leaves.
///
/// Args:
///     services: the list, as for ``foilwork.business.price_services``.
///     terms: what the salon pays and how it prices, as there.
///
/// Returns:
///     The workbook; write it into a file that ends in .xlsx.
///
/// Raises:
///     FoilworkError: as for ``price_services``.
///
/// Examples:
///     >>> from foilwork.workbook import services_workbook
///     >>> toner = {"service": "toner", "hands_on_min": 15, "chair_min": 40, "price": "35.00"}
///     >>> terms = {
///     ...     "currency": "EUR", "wage_per_h": "18.00", "paid_h": 38, "productive_h": 19, "overhead": "48000",
///     ...     "chairs": 4, "productive_h_per_chair": 1200, "margin_percent": 25,
///     ... }
///     >>> services_workbook([toner], terms)[:2]
///     b'PK'
#[pyfunction]
pub fn services_workbook<'py>(
    py: Python<'py>,
    services: &Bound<'py, PyAny>,
    terms: &Bound<'py, PyAny>,
) -> PyResult<Bound<'py, PyBytes>> {
    Ok(PyBytes::new(py, &workbook::services_workbook(&priced(services, terms)?).map_err(raise)?))
}

/// A worksheet: problems with room for the answers, and the key on a page of its own; answers are marked as they are written.
///
/// Args:
///     sheet: the worksheet.
///     half: ``"both"``, ``"problems"`` or ``"key"``.
///
/// Returns:
///     The workbook; write it into a file that ends in .xlsx.
///
/// Raises:
///     FoilworkError: another half.
///
/// Examples:
///     >>> from foilwork.teach import worksheet
///     >>> from foilwork.workbook import worksheet_workbook
///     >>> worksheet_workbook(worksheet(seed=4))[:2]
///     b'PK'
#[pyfunction]
#[pyo3(signature = (sheet, half = "both"))]
pub fn worksheet_workbook<'py>(py: Python<'py>, sheet: &Worksheet, half: &str) -> PyResult<Bound<'py, PyBytes>> {
    let half = half.parse().map_err(raise)?;
    Ok(PyBytes::new(py, &workbook::worksheet_workbook(sheet.core(), half).map_err(raise)?))
}

/// The first sheet of a workbook as the text of a CSV file, for whatever reads a list from text.
///
/// Args:
///     workbook: the bytes of an .xlsx file.
///
/// Returns:
///     The text, its fields separated by commas.
///
/// Raises:
///     FoilworkError: no workbook, an empty one, or a cell that is neither text nor number: its sheet and cell are named.
///
/// Examples:
///     >>> from foilwork.workbook import dilution_workbook, list_in_workbook
///     >>> list_in_workbook(dilution_workbook([12], [3], 60)).partition(",")[0]
///     'Dilution by mass'
#[pyfunction]
pub fn list_in_workbook(workbook: &[u8]) -> PyResult<String> {
    workbook::list_in_workbook(workbook).map(|list| list.csv).map_err(raise)
}

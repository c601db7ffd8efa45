use super::PyMoney;
use crate::error::FoilworkError;
use foilwork::{
    business::list::{self, Business, BusinessTerms, PricedTable},
    money::Money,
};
use pyo3::{
    prelude::*,
    types::{PyDict, PyFloat, PyList},
};
use serde_json::{Map, Value};

/// A list of services, costed and priced, with totals that add up to the minor unit.
///
/// Made by :func:`price_services`, :func:`price_services_csv` and :func:`price_services_json`.
#[pyclass(frozen, module = "foilwork.money")]
pub struct PricedServices(PricedTable);

#[pymethods]
impl PricedServices {
    /// One dict for each service: its costs part by part, net, tax, gross, profit, margin, mark-up.
    fn lines<'py>(&self, py: Python<'py>) -> PyResult<Vec<Bound<'py, PyDict>>> {
        self.0
            .lines
            .iter()
            .map(|line| {
                let dict = PyDict::new(py);
                dict.set_item("service", &line.service)?;
                dict.set_item("class", &line.class)?;
                dict.set_item("sold", line.sold)?;
                set_amounts(&dict, &line.amounts())?;
                dict.set_item("margin_percent", line.margin_percent.percent())?;
                dict.set_item("markup_percent", line.markup_percent.percent())?;
                dict.set_item("target_net", PyMoney(line.target_net))?;
                dict.set_item("contribution_per_chair_hour", line.contribution_per_chair_hour.per_unit)?;
                Ok(dict)
            })
            .collect()
    }

    /// The sums over all services, each amount times the number sold.
    fn totals<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyDict>> {
        let dict = PyDict::new(py);
        dict.set_item("sold", self.0.totals.sold)?;
        set_amounts(&dict, &self.0.totals.amounts())?;
        Ok(dict)
    }

    /// Whether the totals agree across: parts make the cost, net and tax the gross, net less cost the profit.
    fn reconcile(&self) -> bool {
        self.0.totals.reconcile()
    }

    /// The table as comma-separated text with a header row and a last line ``total``.
    fn to_csv(&self) -> String {
        self.0.to_csv()
    }

    fn __len__(&self) -> usize {
        self.0.lines.len()
    }

    fn __repr__(&self) -> String {
        let totals = &self.0.totals;
        format!("<foilwork.money.PricedServices of {} services, profit {}>", self.0.lines.len(), totals.profit)
    }
}

/// Cost and price a list of services.
///
/// Args:
///     services: a sequence of mappings (one for each service), or a mapping of columns (lists, NumPy arrays, a pandas
///         ``DataFrame``). Keys: ``service``, ``class``, ``product_pack_price``, ``product_pack_g``, ``product_g``,
///         ``product_waste_g``, the same four for ``developer_``, ``consumables``, ``laundry``, ``hands_on_min``,
///         ``chair_min``, ``price`` (gross; left out to have one set), ``sold``, ``note``. Amounts as ``Decimal`` or
///         ``str``; ``None``, an empty text and NaN mean left out.
///     terms: the salon's terms as a mapping: ``currency``, ``wage_per_h``, ``on_costs_percent``, ``paid_h``,
///         ``productive_h``, ``overhead``, ``chairs``, ``productive_h_per_chair``; one of ``margin_percent``,
///         ``markup_percent``, ``per_chair_hour``; and ``tax_percent``, ``card_percent``, ``card_fixed``,
///         ``price_step``, ``price_ending``, ``price_toward``, ``rounding`` where they differ from nothing.
///
/// Raises:
///     FoilworkError: everything that is wrong, one problem to a line of its text, each with its place.
///
/// Examples:
///     >>> from foilwork.money import price_services
///     >>> terms = {
///     ...     "currency": "EUR", "wage_per_h": "18.00", "paid_h": 38, "productive_h": 19, "overhead": "48000",
///     ...     "chairs": 4, "productive_h_per_chair": 1200, "margin_percent": 25,
///     ... }
///     >>> foils = {
///     ...     "service": "half head of foils", "product_pack_price": "26.40", "product_pack_g": 500, "product_g": 40,
///     ...     "hands_on_min": 70, "chair_min": 120, "sold": 3,
///     ... }
///     >>> table = price_services([foils], terms)
///     >>> table.lines()[0]["cost"], table.totals()["profit"]
///     (Money('64.11', 'EUR'), Money('64.11', 'EUR'))
#[pyfunction]
pub fn price_services(services: &Bound<'_, PyAny>, terms: &Bound<'_, PyAny>) -> PyResult<PricedServices> {
    let rows = if services.hasattr("keys")? { rows_of_columns(services)? } else { rows_of_items(services)? };
    let business = business(terms)?;
    let text = Value::Array(rows.into_iter().map(Value::Object).collect()).to_string();
    let list = list::parse_json(&text, business.currency).map_err(raise_all)?;
    list::price_services(&list, &business).map(PricedServices).map_err(raise_all)
}

/// :func:`price_services` from comma-separated text with a header row.
///
/// Args:
///     text: the text; semicolons or tabs are recognised by the header.
///     terms: as in :func:`price_services`.
///
/// Raises:
///     FoilworkError: everything that is wrong, one problem to a line of its text, each with its line and column.
///
/// Examples:
///     >>> from foilwork.money import price_services_csv
///     >>> terms = {
///     ...     "currency": "EUR", "wage_per_h": "18.00", "paid_h": 38, "productive_h": 19, "overhead": "48000",
///     ...     "chairs": 4, "productive_h_per_chair": 1200, "margin_percent": 25,
///     ... }
///     >>> price_services_csv("service,hands_on_min,chair_min\ntoner,15,40\n", terms)
///     <foilwork.money.PricedServices of 1 services, profit 5.22 EUR>
#[pyfunction]
pub fn price_services_csv(text: &str, terms: &Bound<'_, PyAny>) -> PyResult<PricedServices> {
    let business = business(terms)?;
    let list = list::parse_csv(text, business.currency).map_err(raise_all)?;
    list::price_services(&list, &business).map(PricedServices).map_err(raise_all)
}

/// :func:`price_services` from JSON text: an array of objects.
///
/// Args:
///     text: the text.
///     terms: as in :func:`price_services`.
///
/// Raises:
///     FoilworkError: everything that is wrong, one problem to a line of its text, each with its item and key.
///
/// Examples:
///     >>> from foilwork import FoilworkError
///     >>> from foilwork.money import price_services_json
///     >>> terms = {
///     ...     "currency": "EUR", "wage_per_h": "18.00", "paid_h": 38, "productive_h": 19, "overhead": "48000",
///     ...     "chairs": 4, "productive_h_per_chair": 1200, "margin_percent": 25,
///     ... }
///     >>> try:
///     ...     price_services_json('[{"service": "toner", "hands_on_min": 15}]', terms)
///     ... except FoilworkError as error:
///     ...     print(error)
///     service[1].chair_min: is missing: give a value
#[pyfunction]
pub fn price_services_json(text: &str, terms: &Bound<'_, PyAny>) -> PyResult<PricedServices> {
    let business = business(terms)?;
    let list = list::parse_json(text, business.currency).map_err(raise_all)?;
    list::price_services(&list, &business).map(PricedServices).map_err(raise_all)
}

fn set_amounts(dict: &Bound<'_, PyDict>, amounts: &[(&'static str, Money)]) -> PyResult<()> {
    amounts.iter().try_for_each(|(name, amount)| dict.set_item(name, PyMoney(*amount)))
}

pub(super) fn business(terms: &Bound<'_, PyAny>) -> PyResult<Business> {
    let terms = Value::Object(object(terms)?);
    let terms: BusinessTerms =
        serde_json::from_value(terms).map_err(|error| FoilworkError::new_err(format!("business terms: {error}")))?;
    terms.check().map_err(raise_all)
}

fn rows_of_items(services: &Bound<'_, PyAny>) -> PyResult<Vec<Map<String, Value>>> {
    services.try_iter()?.map(|item| object(&item?)).collect()
}

/// Columns as rows; NumPy arrays and pandas columns give plain Python values through `tolist`.
fn rows_of_columns(services: &Bound<'_, PyAny>) -> PyResult<Vec<Map<String, Value>>> {
    let mut rows: Vec<Map<String, Value>> = Vec::new();
    for (place, name) in services.call_method0("keys")?.try_iter()?.enumerate() {
        let name = name?;
        let column = services.get_item(&name)?;
        let column = if column.hasattr("tolist")? { column.call_method0("tolist")? } else { column };
        let values = column.try_iter()?.collect::<PyResult<Vec<_>>>()?;
        if place == 0 {
            rows.resize_with(values.len(), Map::new);
        }
        if values.len() != rows.len() {
            let (got, want) = (values.len(), rows.len());
            let told =
                format!("column {name} has {got} rows and the first has {want}: give every column the same length");
            return Err(FoilworkError::new_err(told));
        }
        for (row, value) in rows.iter_mut().zip(values) {
            row.insert(name.str()?.to_string(), text(&value)?);
        }
    }
    Ok(rows)
}

fn object(mapping: &Bound<'_, PyAny>) -> PyResult<Map<String, Value>> {
    let mut object = Map::new();
    for name in mapping.call_method0("keys")?.try_iter()? {
        let name = name?;
        object.insert(name.str()?.to_string(), text(&mapping.get_item(&name)?)?);
    }
    Ok(object)
}

/// Every value by the digits that `str` prints; nothing and NaN are left out.
fn text(value: &Bound<'_, PyAny>) -> PyResult<Value> {
    if value.is_none() || value.cast::<PyFloat>().is_ok_and(|number| number.value().is_nan()) {
        return Ok(Value::Null);
    }
    if value.is_instance_of::<PyList>() || value.is_instance_of::<PyDict>() {
        return Err(FoilworkError::new_err(format!("expected a text or a number, got {}", value.repr()?)));
    }
    Ok(Value::String(value.str()?.to_string()))
}

fn raise_all(problems: foilwork::reader::Problems) -> PyErr {
    FoilworkError::new_err(problems.to_string())
}

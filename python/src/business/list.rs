use crate::{
    answer::answer,
    error::{FoilworkError, ours, told},
    money::PyMoney,
    plain::data_of,
    sequence::Sequence,
    source::TracedResult,
};
use foilwork::{
    business::list::{self, Business, Packs},
    reader,
    shop::Shop,
};
use pyo3::{
    prelude::*,
    types::{PyDict, PyFloat, PyList},
};
use rust_decimal::Decimal;
use serde_json::{Map, Value};

answer! {
    in "foilwork.business";
    /// One service, costed and priced. Amounts are for one service; ``sold`` counts in the totals only.
    PricedLine {
        /// The service.
        service: String,
        /// The class of guest.
        guest_class: Option<String>,
        /// How many were sold.
        sold: u32,
        /// Colour, lightener or toner, waste included.
        product: PyMoney,
        /// Developer, waste included.
        developer: PyMoney,
        /// Foils, gloves, film.
        consumables: PyMoney,
        /// Towels and gowns.
        laundry: PyMoney,
        /// Hands-on time.
        labour: PyMoney,
        /// Chair time.
        overhead: PyMoney,
        /// What the card terminal keeps.
        card_fee: PyMoney,
        /// The seven together.
        cost: PyMoney,
        /// The price without tax.
        net: PyMoney,
        /// The tax.
        tax: PyMoney,
        /// The price with tax.
        gross: PyMoney,
        /// Net price less cost.
        profit: PyMoney,
        /// Profit in percent of the net price.
        margin_percent: Decimal,
        /// Profit in percent of the cost.
        markup_percent: Decimal,
        /// Net price at which the target of the rule is met exactly.
        target_net: PyMoney,
        /// Net price less all costs but the overhead, for an hour of the chair, unrounded.
        contribution_per_chair_hour: Decimal,
    }
}

answer! {
    in "foilwork.business";
    /// The sums over a list, each amount times the number sold.
    Totals {
        /// Services sold.
        sold: u64,
        /// Product.
        product: PyMoney,
        /// Developer.
        developer: PyMoney,
        /// Consumables.
        consumables: PyMoney,
        /// Laundry.
        laundry: PyMoney,
        /// Labour.
        labour: PyMoney,
        /// Overhead.
        overhead: PyMoney,
        /// Card fees.
        card_fee: PyMoney,
        /// All costs.
        cost: PyMoney,
        /// Takings without tax.
        net: PyMoney,
        /// Tax.
        tax: PyMoney,
        /// Takings with tax.
        gross: PyMoney,
        /// Net takings less all costs.
        profit: PyMoney,
    }
}

answer! {
    in "foilwork.business";
    /// A list of services, costed and priced, with totals that add up to the minor unit.
    ///
    /// Made by :func:`price_services`, :func:`price_services_csv` and :func:`price_services_json`.
    PricedTable {
        /// One line for each service, in the order of the list.
        lines: Vec<PricedLine>,
        /// The sums.
        totals: Totals,
        /// The tax in the prices, in percent of the net price.
        tax_percent: Decimal,
        /// How each amount became whole minor units.
        rounding: String,
        /// The table as comma-separated text with a header row and a last line ``total``.
        csv: String,
    }
}

impl From<list::PricedTable> for PricedTable {
    fn from(table: list::PricedTable) -> Self {
        let csv = table.to_csv();
        Self {
            lines: table.lines.into_iter().map(Into::into).collect(),
            totals: table.totals.into(),
            tax_percent: table.tax_percent.percent(),
            rounding: table.rounding.code().to_owned(),
            csv,
        }
    }
}

impl From<list::PricedLine> for PricedLine {
    fn from(line: list::PricedLine) -> Self {
        Self {
            service: line.service,
            guest_class: line.class,
            sold: line.sold,
            product: PyMoney(line.product),
            developer: PyMoney(line.developer),
            consumables: PyMoney(line.consumables),
            laundry: PyMoney(line.laundry),
            labour: PyMoney(line.labour),
            overhead: PyMoney(line.overhead),
            card_fee: PyMoney(line.card_fee),
            cost: PyMoney(line.cost),
            net: PyMoney(line.net),
            tax: PyMoney(line.tax),
            gross: PyMoney(line.gross),
            profit: PyMoney(line.profit),
            margin_percent: line.margin_percent.percent(),
            markup_percent: line.markup_percent.percent(),
            target_net: PyMoney(line.target_net),
            contribution_per_chair_hour: line.contribution_per_chair_hour.per_unit,
        }
    }
}

impl From<list::Totals> for Totals {
    fn from(totals: list::Totals) -> Self {
        Self {
            sold: totals.sold,
            product: PyMoney(totals.product),
            developer: PyMoney(totals.developer),
            consumables: PyMoney(totals.consumables),
            laundry: PyMoney(totals.laundry),
            labour: PyMoney(totals.labour),
            overhead: PyMoney(totals.overhead),
            card_fee: PyMoney(totals.card_fee),
            cost: PyMoney(totals.cost),
            net: PyMoney(totals.net),
            tax: PyMoney(totals.tax),
            gross: PyMoney(totals.gross),
            profit: PyMoney(totals.profit),
        }
    }
}

/// Cost and price a list of services.
///
/// Args:
///     services: a sequence of mappings (one for each service), or a mapping of columns (lists, NumPy arrays, a pandas
///         ``DataFrame``). Keys: ``service``, ``class``, ``product`` (its name in the shop) or ``product_pack_price`` and
///         ``product_pack_g``, ``product_g``, ``product_waste_g``, the same for ``developer``, ``consumables``,
///         ``laundry``, ``hands_on_min``, ``chair_min``, ``price`` (gross; left out to have one set), ``sold``,
///         ``note``. Amounts as ``Decimal`` or ``str``; ``None``, an empty text and NaN mean left out.
///     terms: the shop as a mapping of the shape of a shop file, or its ``currency`` and the fields of its ``terms`` in
///         one: ``wage_per_h``, ``on_costs_percent``, ``productive_percent`` (or ``paid_h`` and ``productive_h``),
///         ``overhead_per_h`` (or ``overhead``, ``chairs`` and ``productive_h_per_chair``); one of ``margin_percent``,
///         ``markup_percent``, ``per_chair_h``; and ``tax_percent``, ``card_percent``, ``card_fixed``,
///         ``price_step``, ``price_ending``, ``price_toward``, ``rounding``. Amounts are texts, the rest numbers.
///
/// Raises:
///     FoilworkError: everything that is wrong, one problem to a line of its text, each with its place.
///
/// Examples:
///     >>> from foilwork.business import price_services
///     >>> terms = {
///     ...     "currency": "EUR", "wage_per_h": "18.00", "paid_h": 38, "productive_h": 19, "overhead": "48000",
///     ...     "chairs": 4, "productive_h_per_chair": 1200, "margin_percent": 25,
///     ... }
///     >>> foils = {
///     ...     "service": "half head of foils", "product_pack_price": "26.40", "product_pack_g": 500, "product_g": 40,
///     ...     "hands_on_min": 70, "chair_min": 120, "sold": 3,
///     ... }
///     >>> table = price_services([foils], terms)
///     >>> table.lines[0].cost, table.totals.profit
///     (Money('64.11', 'EUR'), Money('64.11', 'EUR'))
///     >>> shop = {
///     ...     "currency": "EUR", "terms": {"wage_per_h": "18.00", "overhead_per_h": "10.00", "margin_percent": 25},
///     ...     "lightener": [{"name": "powder", "ratio": "1:2", "pack_g": 500, "price": "26.40"}],
///     ... }
///     >>> by_name = {"service": "foils", "product": "powder", "product_g": 40, "hands_on_min": 70, "chair_min": 120}
///     >>> price_services([by_name], shop).lines[0].product
///     Money('2.11', 'EUR')
#[pyfunction]
pub fn price_services(services: &Bound<'_, PyAny>, terms: &Bound<'_, PyAny>) -> PyResult<PricedTable> {
    priced(services, terms).map(Into::into)
}

/// The same as the core has it.
pub fn priced(services: &Bound<'_, PyAny>, terms: &Bound<'_, PyAny>) -> PyResult<list::PricedTable> {
    let rows = rows_of(services)?;
    let (business, packs) = business(terms)?;
    let list = list::parse_json(&json_of(rows), packs).map_err(raise_all)?;
    list::price_services(&list, &business).map_err(raise_all)
}

/// How cost, price and what is left of each service come about.
///
/// Args:
///     services: as in :func:`price_services`.
///     terms: as in :func:`price_services`.
///
/// Returns:
///     A :class:`foilwork.source.TracedResult` for each number, service by service.
///
/// Raises:
///     FoilworkError: as :func:`price_services`.
///
/// Examples:
///     >>> from foilwork.business import trace_services
///     >>> terms = {
///     ...     "currency": "EUR", "wage_per_h": "18.00", "paid_h": 38, "productive_h": 19, "overhead": "48000",
///     ...     "chairs": 4, "productive_h_per_chair": 1200, "margin_percent": 25,
///     ... }
///     >>> [one.what for one in trace_services([{"service": "toner", "hands_on_min": 15, "chair_min": 40}], terms)][:2]
///     ['toner: cost', 'toner: net price']
#[pyfunction]
pub fn trace_services(services: &Bound<'_, PyAny>, terms: &Bound<'_, PyAny>) -> PyResult<Vec<TracedResult>> {
    Ok(priced(services, terms)?.trail().into_iter().map(Into::into).collect())
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
///     >>> from foilwork.business import price_services_csv
///     >>> terms = {
///     ...     "currency": "EUR", "wage_per_h": "18.00", "paid_h": 38, "productive_h": 19, "overhead": "48000",
///     ...     "chairs": 4, "productive_h_per_chair": 1200, "margin_percent": 25,
///     ... }
///     >>> price_services_csv("service,hands_on_min,chair_min\ntoner,15,40\n", terms).totals.profit
///     Money('5.22', 'EUR')
#[pyfunction]
pub fn price_services_csv(text: &str, terms: &Bound<'_, PyAny>) -> PyResult<PricedTable> {
    let (business, packs) = business(terms)?;
    let list = list::parse_csv(text, packs).map_err(raise_all)?;
    list::price_services(&list, &business).map(Into::into).map_err(raise_all)
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
///     >>> from foilwork.business import price_services_json
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
pub fn price_services_json(text: &str, terms: &Bound<'_, PyAny>) -> PyResult<PricedTable> {
    let (business, packs) = business(terms)?;
    let list = list::parse_json(text, packs).map_err(raise_all)?;
    list::price_services(&list, &business).map(Into::into).map_err(raise_all)
}

/// The terms of a shop and the packs that a list may name: the whole shop as a mapping, or its currency and terms in one.
pub fn business(terms: &Bound<'_, PyAny>) -> PyResult<(Business, Packs)> {
    let shop = shop_or_terms(terms)?;
    let business = shop.business().map_err(raise_all)?;
    let packs = shop.packs().unwrap_or_else(|| business.currency.into());
    Ok((business, packs))
}

/// The whole shop as a mapping, or its currency and terms in one.
fn shop_or_terms(terms: &Bound<'_, PyAny>) -> PyResult<Shop> {
    let data = match data_of(terms)? {
        Value::Object(mut all) if !all.contains_key("terms") => {
            let currency = all.remove("currency");
            let mut shop = Map::new();
            shop.extend(currency.map(|currency| ("currency".to_owned(), currency)));
            shop.insert("terms".to_owned(), Value::Object(all));
            Value::Object(shop)
        }
        shop => shop,
    };
    shop_of(&data)
}

/// A whole shop.
pub fn shop_of(data: &Value) -> PyResult<Shop> {
    reader::from_value(data).and_then(|file| Shop::new(&file)).map_err(raise_all)
}

/// The services of a sequence of mappings or of a mapping of columns.
pub fn rows_of(services: &Bound<'_, PyAny>) -> PyResult<Vec<Map<String, Value>>> {
    if services.hasattr("keys")? { rows_of_columns(services) } else { rows_of_items(services) }
}

pub fn json_of(rows: Vec<Map<String, Value>>) -> String {
    Value::Array(rows.into_iter().map(Value::Object).collect()).to_string()
}

fn rows_of_items(services: &Bound<'_, PyAny>) -> PyResult<Vec<Map<String, Value>>> {
    let services: Sequence<Bound<'_, PyAny>> = services.extract()?;
    services.0.iter().map(object).collect()
}

/// Columns as rows; NumPy arrays and pandas columns give plain Python values through `tolist`.
fn rows_of_columns(services: &Bound<'_, PyAny>) -> PyResult<Vec<Map<String, Value>>> {
    let mut rows: Vec<Map<String, Value>> = Vec::new();
    for (place, name) in services.call_method0("keys")?.try_iter()?.enumerate() {
        let name = name?;
        let column = services.get_item(&name)?;
        let column = if column.hasattr("tolist")? { column.call_method0("tolist")? } else { column };
        let Sequence(values) = column.extract::<Sequence<Bound<'_, PyAny>>>()?;
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
    if !mapping.hasattr("keys")? {
        let told = format!("a service is a mapping of its fields, not {}", mapping.get_type().name()?);
        return Err(FoilworkError::new_err(told));
    }
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
    // Python itself refuses to print a whole number of more than 4,300 digits.
    Ok(Value::String(value.str().map_err(|error| ours(value.py(), error))?.to_string()))
}

pub fn raise_all(problems: foilwork::reader::Problems) -> PyErr {
    FoilworkError::new_err(told(problems))
}

use super::{HALF_UP, PyMoney, rounding};
use crate::business::list::business;
use crate::columns::numpy_module;
use crate::error::{FoilworkError, ours, raise};
use crate::layout::read;
use foilwork::money::{self, BadRow, Labour, Overhead, ServiceColumns};
use numpy::{PyArray1, PyArrayMethods, PyReadonlyArray1, PyReadwriteArray1, PyUntypedArrayMethods};
use pyo3::{
    exceptions::PyTypeError,
    prelude::*,
    types::{PyDict, PyFloat, PyInt, PyString, PyTuple},
};
use std::sync::Mutex;

/// The costs of a long list of services, and their sums.
#[pyclass(frozen, get_all, module = "foilwork.money")]
pub struct CostColumns {
    /// Product, waste included: whole minor units.
    product_minor: Py<PyArray1<i64>>,
    /// Labour: whole minor units.
    labour_minor: Py<PyArray1<i64>>,
    /// Overhead: whole minor units.
    overhead_minor: Py<PyArray1<i64>>,
    /// The three and the consumables together: whole minor units.
    cost_minor: Py<PyArray1<i64>>,
    /// Sum of the product costs.
    product: PyMoney,
    /// Sum of the consumables.
    consumables: PyMoney,
    /// Sum of the labour costs.
    labour: PyMoney,
    /// Sum of the overheads.
    overhead: PyMoney,
    /// Sum of all costs.
    cost: PyMoney,
    /// The rows that cannot be costed, counted from 0, with what is wrong; they hold 0. None unless ``errors="apart"``.
    refused: Vec<(usize, String)>,
}

/// Cost a long list of services, column by column; needs NumPy.
///
/// Each row is exactly what :func:`supply_cost`, :func:`labour_cost` and :func:`overhead_cost` give.
///
/// Args:
///     pack_price_minor: price of each pack, whole minor units (integers).
///     pack_g: what each pack holds, in g.
///     used_g: product on the head, in g.
///     wasted_g: product thrown away, in g.
///     consumables_minor: foils, gloves and the like, whole minor units (integers).
///     hands_on_min: hands-on time, in min.
///     chair_min: time in the chair, in min.
///     terms: the salon's terms, as in :func:`price_services`.
///     rounding: how each cost becomes whole minor units, once; see :class:`Money`.
///     errors: ``"raise"``, or ``"apart"`` to list in ``refused`` what cannot be costed, with 0 in its row.
///     out: a tuple of four arrays of int64 for product, labour, overhead and cost; without it new ones are made.
///
/// Raises:
///     FoilworkError: columns of different lengths; rows that cannot be costed (the first one is named, all are
///         counted); terms that are wrong; NumPy is missing; ``out`` that cannot be written to or is one of the columns.
///     TypeError: amounts that are no integers, ``out`` of another type.
///
/// Examples:
///     >>> from foilwork.money import cost_columns
///     >>> terms = {
///     ...     "currency": "EUR", "wage_per_h": "15.00", "on_costs_percent": 20, "paid_h": 40, "productive_h": 30,
///     ...     "overhead": "60000", "chairs": 4, "productive_h_per_chair": 1500, "margin_percent": 25,
///     ... }
///     >>> costs = cost_columns([2640, 980], [500, 60], [40, 30], [5, 0], [210, 35], [70, 15], [120, 40], terms)
///     >>> costs.cost_minor.tolist(), costs.cost
///     ([5248, 1792], Money('70.40', 'EUR'))
#[pyfunction]
#[pyo3(signature = (pack_price_minor, pack_g, used_g, wasted_g, consumables_minor, hands_on_min, chair_min, terms, *, rounding = HALF_UP, errors = OnBadRow::Raise, out = None), text_signature = "(pack_price_minor, pack_g, used_g, wasted_g, consumables_minor, hands_on_min, chair_min, terms, *, rounding='midpoint-away-from-zero', errors='raise', out=None)")]
pub fn cost_columns(
    py: Python<'_>,
    pack_price_minor: &Bound<'_, PyAny>,
    pack_g: &Bound<'_, PyAny>,
    used_g: &Bound<'_, PyAny>,
    wasted_g: &Bound<'_, PyAny>,
    consumables_minor: &Bound<'_, PyAny>,
    hands_on_min: &Bound<'_, PyAny>,
    chair_min: &Bound<'_, PyAny>,
    terms: &Bound<'_, PyAny>,
    rounding: &str,
    errors: OnBadRow,
    out: Option<&Bound<'_, PyAny>>,
) -> PyResult<CostColumns> {
    let rounding = self::rounding(rounding)?;
    let terms = rates(terms)?;
    let (pack_price, consumables) = (whole(pack_price_minor)?, whole(consumables_minor)?);
    let (pack, used, wasted) = (floats(pack_g)?, floats(used_g)?, floats(wasted_g)?);
    let (hands_on, chair) = (floats(hands_on_min)?, floats(chair_min)?);
    let services = ServiceColumns {
        pack_price_minor: pack_price.as_slice()?,
        pack_g: pack.as_slice()?,
        used_g: used.as_slice()?,
        wasted_g: wasted.as_slice()?,
        consumables_minor: consumables.as_slice()?,
        hands_on_min: hands_on.as_slice()?,
        chair_min: chair.as_slice()?,
    };
    let columns = targets(py, services.pack_price_minor.len(), out)?;
    let (totals, refused) = {
        let mut writers = Vec::with_capacity(columns.len());
        for column in &columns {
            writers.push(writer(column)?);
        }
        let mut slices = writers.iter_mut().map(|writer| writer.as_slice_mut());
        let mut next = || slices.next().transpose().map(Option::unwrap_or_default).map_err(raise);
        let out = money::CostColumns {
            product_minor: next()?,
            labour_minor: next()?,
            overhead_minor: next()?,
            cost_minor: next()?,
        };
        let (labour, overhead) = &terms;
        py.detach(|| match errors {
            OnBadRow::Apart => money::cost_columns_apart(&services, labour, overhead, rounding, out),
            OnBadRow::Raise => {
                money::cost_columns(&services, labour, overhead, rounding, out).map(|totals| (totals, Vec::new()))
            }
        })
        .map_err(raise)?
    };
    let [product, labour, overhead, cost] = columns.map(Bound::unbind);
    Ok(CostColumns {
        product_minor: product,
        labour_minor: labour,
        overhead_minor: overhead,
        cost_minor: cost,
        product: PyMoney(totals.product),
        consumables: PyMoney(totals.consumables),
        labour: PyMoney(totals.labour),
        overhead: PyMoney(totals.overhead),
        cost: PyMoney(totals.cost),
        refused: refused.into_iter().map(|BadRow { row, problem }| (row, problem.to_string())).collect(),
    })
}

/// What an hour of work and of a chair costs by some terms. Reading terms takes longer than costing a thousand rows, so those of
/// the last call are kept, as long as they are of nothing but texts and numbers.
fn rates(terms: &Bound<'_, PyAny>) -> PyResult<(Labour, Overhead)> {
    static LAST: Mutex<Option<(Py<PyTuple>, Labour, Overhead)>> = Mutex::new(None);
    let said = as_said(terms);
    if let (Some(said), Ok(last)) = (&said, LAST.try_lock())
        && let Some((kept, labour, overhead)) = last.as_ref()
        && said.eq(kept)?
    {
        return Ok((*labour, *overhead));
    }
    let (business, _) = business(terms)?;
    if let (Some(said), Ok(mut last)) = (said, LAST.try_lock()) {
        *last = Some((said.unbind(), business.labour, business.overhead));
    }
    Ok((business.labour, business.overhead))
}

/// All that terms say, in values that cannot change, each with its type.
fn as_said<'py>(terms: &Bound<'py, PyAny>) -> Option<Bound<'py, PyTuple>> {
    let terms = terms.cast_exact::<PyDict>().ok()?;
    let mut said = Vec::with_capacity(3 * terms.len());
    for (name, value) in terms {
        let plain = |value: &Bound<'_, PyAny>| {
            value.is_exact_instance_of::<PyString>()
                || value.is_exact_instance_of::<PyInt>()
                || value.is_exact_instance_of::<PyFloat>()
        };
        if !plain(&name) || !plain(&value) {
            return None;
        }
        let kind = value.get_type().into_any();
        said.extend([name, value, kind]);
    }
    PyTuple::new(terms.py(), said).ok()
}

/// What becomes of a row that cannot be costed.
#[derive(Clone, Copy)]
pub enum OnBadRow {
    Raise,
    Apart,
}

impl<'py> FromPyObject<'_, 'py> for OnBadRow {
    type Error = PyErr;

    fn extract(obj: Borrowed<'_, 'py, PyAny>) -> PyResult<Self> {
        match obj.extract::<&str>() {
            Ok("raise") => Ok(Self::Raise),
            Ok("apart") => Ok(Self::Apart),
            _ => Err(FoilworkError::new_err(format!("errors must be 'raise' or 'apart' (got {})", obj.repr()?))),
        }
    }
}

type Minor<'py> = Bound<'py, PyArray1<i64>>;

/// An array for each result: new ones, or those of the caller.
fn targets<'py>(py: Python<'py>, rows: usize, out: Option<&Bound<'py, PyAny>>) -> PyResult<[Minor<'py>; 4]> {
    let Some(out) = out else {
        let new = || {
            let made = numpy_module(py)?.call_method1("zeros", (rows, "int64"))?;
            Ok::<_, PyErr>(made.cast_into::<PyArray1<i64>>()?)
        };
        return Ok([new()?, new()?, new()?, new()?]);
    };
    let wanted = || PyTypeError::new_err("out must be a tuple of four arrays of int64 of one dimension");
    let given: [Bound<'py, PyAny>; 4] = out.extract().map_err(|_| wanted())?;
    let [product, labour, overhead, cost] = given.map(|array| array.cast_into::<PyArray1<i64>>().map_err(|_| wanted()));
    let given = [product?, labour?, overhead?, cost?];
    if let Some(wrong) = given.iter().map(PyUntypedArrayMethods::len).find(|length| *length != rows) {
        return Err(FoilworkError::new_err(format!(
            "out has {wrong} rows, the columns {rows}: give arrays of that length"
        )));
    }
    Ok(given)
}

/// The array to write into: in one piece, and no other's.
fn writer<'py>(array: &Minor<'py>) -> PyResult<PyReadwriteArray1<'py, i64>> {
    let writer = array.try_readwrite().map_err(|_| {
        FoilworkError::new_err("out cannot be written to, or is one of the columns: give arrays of their own")
    })?;
    if array.is_c_contiguous() {
        return Ok(writer);
    }
    Err(FoilworkError::new_err("out has gaps between its values: give arrays in one piece"))
}

/// A contiguous float64 column from anything NumPy makes one of.
fn floats<'py>(column: &Bound<'py, PyAny>) -> PyResult<PyReadonlyArray1<'py, f64>> {
    if let Some(plain) = plain(column) {
        return Ok(plain);
    }
    let array = as_array(column)?;
    if !matches!(kind(&array)?, 'i' | 'u' | 'f') {
        return Err(PyTypeError::new_err("expected a column of numbers"));
    }
    let numpy = numpy_module(column.py())?;
    if column.is_instance(&numpy.getattr("ma")?.getattr("MaskedArray")?)? {
        let filled = column.call_method1("astype", ("float64",))?.call_method1("filled", (f64::NAN,))?;
        return contiguous(&filled, "float64");
    }
    contiguous(&array, "float64")
}

/// A contiguous int64 column; floats are refused, since an amount is a whole number of minor units.
fn whole<'py>(column: &Bound<'py, PyAny>) -> PyResult<PyReadonlyArray1<'py, i64>> {
    if let Some(plain) = plain(column) {
        return Ok(plain);
    }
    let array = as_array(column)?;
    if numpy_module(column.py())?.getattr("ma")?.call_method1("is_masked", (column,))?.is_truthy()? {
        return Err(FoilworkError::new_err("missing amounts: fill them first"));
    }
    let empty = array.getattr("size")?.eq(0)?;
    let fits: bool =
        array.py().import("numpy")?.call_method1("can_cast", (array.getattr("dtype")?, "int64"))?.extract()?;
    let integers = matches!(kind(&array)?, 'i' | 'u');
    if !(empty || fits && integers) {
        return Err(PyTypeError::new_err("amounts are whole minor units: give a column of integers, int64 or smaller"));
    }
    contiguous(&array, "int64")
}

/// A column that is as it has to be.
fn plain<'py, T: numpy::Element>(column: &Bound<'py, PyAny>) -> Option<PyReadonlyArray1<'py, T>> {
    // What asks whether it is an array panics where there is no NumPy.
    numpy_module(column.py()).ok()?;
    let array = column.cast_exact::<PyArray1<T>>().ok()?.try_readonly().ok()?;
    array.as_slice().is_ok().then_some(array)
}

fn kind(array: &Bound<'_, PyAny>) -> PyResult<char> {
    array.getattr("dtype")?.getattr("kind")?.extract()
}

/// What NumPy makes of a column, whatever a mask hides.
fn as_array<'py>(column: &Bound<'py, PyAny>) -> PyResult<Bound<'py, PyAny>> {
    let py = column.py();
    let numpy = py.import("numpy").map_err(|error| {
        let told = FoilworkError::new_err("columns need numpy (pip install 'foilwork[numpy]')");
        told.set_cause(py, Some(error));
        told
    })?;
    numpy.call_method1("asarray", (column,)).map_err(|error| ours(py, error))
}

fn contiguous<'py, T: numpy::Element>(array: &Bound<'py, PyAny>, dtype: &str) -> PyResult<PyReadonlyArray1<'py, T>> {
    let numpy = array.py().import("numpy")?;
    let array = numpy.call_method1("ascontiguousarray", (array, dtype)).map_err(|error| ours(array.py(), error))?;
    let array = array.cast::<PyArray1<T>>().map_err(|_| PyTypeError::new_err("expected a column of one dimension"))?;
    read(array)
}

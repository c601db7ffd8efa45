use super::rounding;
use crate::error::raise;
use crate::exact::Amount;
use foilwork::money::{Currency, Money};
use pyo3::{
    basic::CompareOp,
    exceptions::PyTypeError,
    prelude::*,
    types::{PyInt, PyString, PyType},
};
use rust_decimal::Decimal;
use std::hash::{DefaultHasher, Hash, Hasher};

/// An amount of money: a whole number of minor units (cents, pence, yen, fils) and an ISO 4217 currency.
///
/// Sums are exact or refused: two currencies never meet, nothing overflows silently, and there is no division
/// (:func:`allocate` shares an amount out without losing a minor unit). Immutable and hashable.
///
/// Args:
///     amount: units of the currency as ``decimal.Decimal``, ``int`` or ``str``. A float is refused.
///     currency: three-letter code in capitals.
///     rounding: how an amount between two minor units is rounded; without it, such an amount is refused. One of
///         ``"midpoint-away-from-zero"`` (half up), ``"midpoint-nearest-even"``, ``"midpoint-toward-zero"``,
///         ``"to-zero"``, ``"away-from-zero"``, ``"to-negative-infinity"``, ``"to-positive-infinity"``.
///
/// Raises:
///     FoilworkError: unknown currency, no decimal number, too many decimals, or beyond 64 bits of minor units.
///
/// Examples:
///     >>> from foilwork.money import Money
///     >>> Money("12.50", "EUR") + Money("0.75", "EUR")
///     Money('13.25', 'EUR')
///     >>> Money("4.165", "EUR", "midpoint-nearest-even").minor
///     416
///     >>> Money("1.200", "EUR")
///     Traceback (most recent call last):
///     foilwork.FoilworkError: amount "1.200" has more decimals than EUR: write 1200 if the point groups thousands, else 1.20
///     >>> Money("12.50", "EUR").amount
///     Decimal('12.50')
#[pyclass(name = "Money", frozen, from_py_object, module = "foilwork.money")]
#[derive(Clone, Copy, PartialEq)]
pub struct PyMoney(pub Money);

#[pymethods]
impl PyMoney {
    #[new]
    #[pyo3(signature = (amount, currency, rounding = None))]
    fn new(amount: &Bound<'_, PyAny>, currency: &str, rounding: Option<&str>) -> PyResult<Self> {
        let currency = Currency::from_code(currency).map_err(raise)?;
        let exact: Amount = amount.extract()?;
        let money = match rounding {
            // In a text the point may group thousands: more decimals than the currency has are refused, zeros too.
            None if amount.is_instance_of::<PyString>() && exact.0.scale() > currency.exponent() => {
                Money::parse(amount.extract()?, currency)
            }
            Some(name) => Money::from_decimal(exact.0, currency, self::rounding(name)?),
            None => Money::from_decimal_exact(exact.0, currency),
        };
        money.map(Self).map_err(raise)
    }

    /// Take a whole number of minor units.
    #[classmethod]
    fn from_minor(_cls: &Bound<'_, PyType>, minor: i64, currency: &str) -> PyResult<Self> {
        Ok(Self(Money::from_minor(minor, Currency::from_code(currency).map_err(raise)?)))
    }

    /// The amount in units of the currency, with all its decimals.
    #[getter]
    fn amount(&self) -> Decimal {
        self.0.decimal()
    }

    /// The whole number of minor units.
    #[getter]
    fn minor(&self) -> i64 {
        self.0.minor()
    }

    /// The three-letter code.
    #[getter]
    fn currency(&self) -> &'static str {
        self.0.currency().code()
    }

    fn __add__(&self, other: &Self) -> PyResult<Self> {
        self.0.plus(other.0).map(Self).map_err(raise)
    }

    /// ``sum()`` starts at 0.
    fn __radd__(&self, start: &Bound<'_, PyAny>) -> PyResult<Self> {
        if start.is_instance_of::<PyInt>() && start.extract::<i64>().is_ok_and(|start| start == 0) {
            Ok(*self)
        } else {
            Err(PyTypeError::new_err("only money adds to money"))
        }
    }

    fn __sub__(&self, other: &Self) -> PyResult<Self> {
        self.0.minus(other.0).map(Self).map_err(raise)
    }

    fn __mul__(&self, count: i64) -> PyResult<Self> {
        self.0.times(count).map(Self).map_err(raise)
    }

    fn __rmul__(&self, count: i64) -> PyResult<Self> {
        self.__mul__(count)
    }

    fn __neg__(&self) -> PyResult<Self> {
        self.__mul__(-1)
    }

    fn __bool__(&self) -> bool {
        !self.0.is_zero()
    }

    fn __richcmp__(&self, other: &Self, op: CompareOp) -> PyResult<bool> {
        match (op, self.0.partial_cmp(&other.0)) {
            (CompareOp::Eq, order) => Ok(order.is_some_and(std::cmp::Ordering::is_eq)),
            (CompareOp::Ne, order) => Ok(!order.is_some_and(std::cmp::Ordering::is_eq)),
            (_, Some(order)) => Ok(op.matches(order)),
            (_, None) => self.0.minus(other.0).map(|_| false).map_err(raise),
        }
    }

    fn __hash__(&self) -> u64 {
        let mut hasher = DefaultHasher::new();
        self.0.hash(&mut hasher);
        hasher.finish()
    }

    fn __str__(&self) -> String {
        self.0.to_string()
    }

    pub fn __repr__(&self) -> String {
        format!("Money('{}', '{}')", self.0.decimal(), self.0.currency())
    }

    fn __format__(&self, spec: &Bound<'_, PyString>) -> PyResult<String> {
        PyString::new(spec.py(), &self.0.to_string()).call_method1("__format__", (spec,))?.extract()
    }

    fn __reduce__<'py>(slf: &Bound<'py, Self>) -> (Bound<'py, PyAny>, (String, &'static str)) {
        let money = slf.get();
        (slf.get_type().into_any(), (money.0.decimal().to_string(), money.currency()))
    }
}

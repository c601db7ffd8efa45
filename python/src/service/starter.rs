use crate::error::raise;
use foilwork::{limits::Jurisdiction, money::Currency, service};
use pyo3::{prelude::*, types::PyDict};

/// Files to begin with, for a jurisdiction and a currency: a service, its shop and a list of services.
///
/// All they say is an example of an invented salon; each has a remark at what is to be written. The command
/// ``foilwork start`` writes the same.
///
/// Args:
///     jurisdiction: whose law is checked: ``"EU"``, ``"GB"``, ``"US"``, ``"CA"``, ``"AU"``, ``"NZ"``, ``"CN"``,
///         ``"JP"``, ``"ASEAN"`` or ``"PL"``.
///     currency: the ISO 4217 code of the prices.
///
/// Returns:
///     The texts by the names of their files: ``service.toml``, ``shop.toml`` and ``services.csv``.
///
/// Raises:
///     FoilworkError: the jurisdiction or the currency is not known.
///
/// Examples:
///     >>> import foilwork
///     >>> files = foilwork.service.starter("EU", "EUR")
///     >>> shop = foilwork.shop.read(files["shop.toml"])
///     >>> foilwork.plan(files["service.toml"], shop=shop).blocked
///     False
#[pyfunction]
pub fn starter<'py>(py: Python<'py>, jurisdiction: &str, currency: &str) -> PyResult<Bound<'py, PyDict>> {
    let jurisdiction: Jurisdiction = jurisdiction.parse().map_err(raise)?;
    let files = service::starter(jurisdiction, Currency::from_code(currency).map_err(raise)?);
    let by_name = PyDict::new(py);
    by_name.set_item("service.toml", files.service)?;
    by_name.set_item("shop.toml", files.shop)?;
    by_name.set_item("services.csv", files.services)?;
    Ok(by_name)
}

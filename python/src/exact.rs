use crate::error::{FoilworkError, ours};
use foilwork::text::{inert, shortened};
use pyo3::{
    prelude::*,
    types::{PyBool, PyFloat, PyInt, PyString},
};
use rust_decimal::Decimal;

/// An amount of money: `decimal.Decimal`, `int` or `str`. A float is refused, since it holds no exact amount.
pub struct Amount(pub Decimal);

/// A percentage, a weight or a count that may have decimals: as [`Amount`], and a float by the digits it prints.
pub struct Number(pub Decimal);

impl FromPyObject<'_, '_> for Amount {
    type Error = PyErr;

    fn extract(obj: Borrowed<'_, '_, PyAny>) -> PyResult<Self> {
        if obj.is_instance_of::<PyFloat>() {
            let told = format!(
                "{} is a float, which holds no exact amount of money: give decimal.Decimal, int or str",
                obj.repr()?
            );
            return Err(FoilworkError::new_err(told));
        }
        read(obj).map(Self)
    }
}

impl FromPyObject<'_, '_> for Number {
    type Error = PyErr;

    fn extract(obj: Borrowed<'_, '_, PyAny>) -> PyResult<Self> {
        read(obj).map(Self)
    }
}

/// By the digits that `str` prints, every one of them; nothing is rounded on the way in.
fn read(obj: Borrowed<'_, '_, PyAny>) -> PyResult<Decimal> {
    let decimal = obj.py().import("decimal")?.getattr("Decimal")?;
    let is_number = obj.is_instance_of::<PyInt>()
        || obj.is_instance_of::<PyFloat>()
        || obj.is_instance_of::<PyString>()
        || obj.is_instance(&decimal)?
        || obj.hasattr("__float__")?;
    // What is no number is not asked for its text, which may have no end.
    if !is_number || obj.is_instance_of::<PyBool>() {
        let told = format!("expected decimal.Decimal, int or str, not {}", obj.get_type().name()?);
        return Err(FoilworkError::new_err(told));
    }
    // Python itself refuses to print a whole number of more than 4,300 digits.
    let text = obj.str().map_err(|error| ours(obj.py(), error))?;
    let text = text.to_str()?;
    let read = Decimal::from_str_exact(text).ok().or_else(|| Decimal::from_scientific(text).ok());
    let Some(read) = read else {
        let told = "is not a decimal number of at most 28 digits: give decimal.Decimal, int or str";
        return Err(FoilworkError::new_err(format!("{} {told}", shortened(&inert(obj.repr()?.to_str()?)))));
    };
    Ok(read)
}

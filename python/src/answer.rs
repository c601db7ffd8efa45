//! The classes of results: values that compare, hash, copy, pickle and turn into plain data.

use pyo3::{
    prelude::*,
    types::{PyDict, PyList, PyTuple, PyType},
};

/// Declares the Python class of a result: frozen, an attribute for each field, equal and of one hash when all fields are,
/// shown with all of them, copied, pickled, matched by position, and `to_dict()` as plain data.
///
/// A field has a type that goes both ways between Rust and Python (`String`, not `&str`). Methods and properties beyond
/// the fields follow in `impl { .. }`. Nothing but foilwork makes one: there is no constructor. One that is declared
/// `as tuple` unpacks as well: `stock_g, diluent_g = dilute(..)`. `in` names the public module, which need not be imported yet
/// when one is made in another room.
macro_rules! answer {
    (
        in $module:literal;
        $(#[$doc:meta])*
        $name:ident as tuple { $($(#[$field_doc:meta])* $field:ident: $kind:ty),+ $(,)? }
        $(impl { $($method:tt)* })?
    ) => {
        $crate::answer::answer! {
            in $module;
            $(#[$doc])*
            $name { $($(#[$field_doc])* $field: $kind),+ }
            impl {
                fn __iter__<'py>(
                    slf: &pyo3::Bound<'py, Self>,
                ) -> pyo3::PyResult<pyo3::Bound<'py, pyo3::types::PyIterator>> {
                    use pyo3::types::PyAnyMethods;
                    $crate::answer::fields(slf, Self::FIELDS)?.try_iter()
                }

                #[doc = concat!("``", stringify!($name), "[float]`` in an annotation.")]
                #[classmethod]
                fn __class_getitem__<'py>(
                    cls: &pyo3::Bound<'py, pyo3::types::PyType>,
                    item: pyo3::Bound<'py, pyo3::PyAny>,
                ) -> pyo3::PyResult<pyo3::Bound<'py, pyo3::PyAny>> {
                    $crate::answer::generic_alias(cls, item)
                }

                $($($method)*)?
            }
        }
    };
    (
        in $module:literal;
        $(#[$doc:meta])*
        $name:ident { $($(#[$field_doc:meta])* $field:ident: $kind:ty),+ $(,)? }
        $(impl { $($method:tt)* })?
    ) => {
        $(#[$doc])*
        #[pyo3::pyclass(frozen, get_all, eq, from_py_object, module = $module)]
        #[derive(Clone, PartialEq)]
        pub struct $name { $($(#[$field_doc])* pub $field: $kind),+ }

        impl $name {
            const FIELDS: &'static [&'static str] = &[$(stringify!($field)),+];
        }

        #[pyo3::pymethods]
        impl $name {
            #[classattr]
            fn __match_args__(py: pyo3::Python<'_>) -> pyo3::PyResult<pyo3::Bound<'_, pyo3::types::PyTuple>> {
                pyo3::types::PyTuple::new(py, Self::FIELDS)
            }

            /// The fields as a dict: results in it become dicts too, bounds a dict of ``low``, ``best`` and ``high``.
            fn to_dict<'py>(slf: &pyo3::Bound<'py, Self>) -> pyo3::PyResult<pyo3::Bound<'py, pyo3::types::PyDict>> {
                $crate::answer::to_dict(slf, Self::FIELDS)
            }

            fn __repr__(slf: &pyo3::Bound<'_, Self>) -> pyo3::PyResult<String> {
                $crate::answer::show(slf, Self::FIELDS)
            }

            fn __hash__(slf: &pyo3::Bound<'_, Self>) -> pyo3::PyResult<isize> {
                $crate::answer::hash(slf, Self::FIELDS)
            }

            fn __reduce__<'py>(slf: &pyo3::Bound<'py, Self>) -> pyo3::PyResult<$crate::answer::Reduced<'py>> {
                use pyo3::types::PyAnyMethods;
                Ok((slf.get_type().getattr("_restore")?, $crate::answer::fields(slf, Self::FIELDS)?))
            }

            #[classmethod]
            #[allow(clippy::too_many_arguments)]
            fn _restore(_cls: &pyo3::Bound<'_, pyo3::types::PyType>, $($field: $kind),+) -> Self {
                Self { $($field),+ }
            }

            $($($method)*)?
        }
    };
}
pub(crate) use answer;

/// What `__reduce__` gives: what to call, with what.
pub type Reduced<'py> = (Bound<'py, PyAny>, Bound<'py, PyTuple>);

/// The values of the fields, in their order.
pub fn fields<'py>(answer: &Bound<'py, PyAny>, names: &[&str]) -> PyResult<Bound<'py, PyTuple>> {
    let values: PyResult<Vec<_>> = names.iter().map(|name| answer.getattr(*name)).collect();
    PyTuple::new(answer.py(), values?)
}

/// The class with the kind of its fields, for those who read annotations.
pub fn generic_alias<'py>(cls: &Bound<'py, PyType>, item: Bound<'py, PyAny>) -> PyResult<Bound<'py, PyAny>> {
    cls.py().import("types")?.getattr("GenericAlias")?.call1((cls, item))
}

/// `Name(field=value, ...)`.
pub fn show(answer: &Bound<'_, PyAny>, names: &[&str]) -> PyResult<String> {
    let values = fields(answer, names)?;
    let shown: PyResult<Vec<_>> =
        names.iter().zip(values).map(|(name, value)| Ok(format!("{name}={}", value.repr()?))).collect();
    Ok(format!("{}({})", answer.get_type().name()?, shown?.join(", ")))
}

/// The hash of all fields; lists count as tuples, since the answer does not change.
pub fn hash(answer: &Bound<'_, PyAny>, names: &[&str]) -> PyResult<isize> {
    let frozen = fields(answer, names)?.into_iter().map(|value| match value.cast::<PyList>() {
        Ok(list) => list.to_tuple().into_any(),
        Err(_) => value,
    });
    PyTuple::new(answer.py(), frozen.collect::<Vec<_>>())?.hash()
}

/// The fields as plain data.
pub fn to_dict<'py>(answer: &Bound<'py, PyAny>, names: &[&str]) -> PyResult<Bound<'py, PyDict>> {
    let data = PyDict::new(answer.py());
    for (name, value) in names.iter().zip(fields(answer, names)?) {
        data.set_item(name, plain(&value)?)?;
    }
    Ok(data)
}

/// A value with the results in it as dicts.
fn plain<'py>(value: &Bound<'py, PyAny>) -> PyResult<Bound<'py, PyAny>> {
    if let Ok(list) = value.cast::<PyList>() {
        let items: PyResult<Vec<_>> = list.iter().map(|item| plain(&item)).collect();
        return Ok(PyList::new(value.py(), items?)?.into_any());
    }
    match value.getattr_opt("to_dict")? {
        Some(method) => method.call0(),
        None => Ok(value.clone()),
    }
}

use crate::{
    colour::Shade,
    error::FoilworkError,
    plain::{data_of, plain, read_text},
    service::raise_problems,
};
use foilwork::{
    reader::{self, Format, Problems},
    shop::{self, shape::ShopFile},
};
use pyo3::{prelude::*, types::PyString};
use std::{
    hash::{DefaultHasher, Hash, Hasher},
    path::{Path, PathBuf},
};

/// What the salon has and what it charges.
///
/// Made by :func:`read` and :func:`read_file`. ``shop.to_dict()`` is the whole shop as plain Python data.
///
/// Examples:
///     >>> from foilwork.shop import read
///     >>> shop = read({"name": "Juniper & Tide", "diluent": [{"name": "thinning base", "in_hand_g": 400}]})
///     >>> shop.name, shop.to_dict()["diluent"][0]["in_hand_g"]
///     ('Juniper & Tide', 400.0)
#[pyclass(frozen, module = "foilwork.shop", eq)]
#[derive(PartialEq)]
pub struct Shop {
    pub file: ShopFile,
    typed: shop::Shop,
}

impl Shop {
    fn new(file: ShopFile) -> Result<Self, Problems> {
        Ok(Self { typed: shop::Shop::new(&file)?, file })
    }

    fn parse(text: &str, format: Format) -> Result<Self, Problems> {
        Self::new(shop::parse_shop(text, format)?)
    }

    /// Reads a file; its problems name it.
    pub fn from_path(py: Python<'_>, path: &Path) -> PyResult<Self> {
        let text = read_text(py, path)?;
        let format = Format::of(&path.to_string_lossy(), &text);
        Self::parse(&text, format).map_err(|problems| raise_problems(py, &problems))
    }
}

#[pymethods]
impl Shop {
    /// What the shop is called.
    #[getter]
    fn name(&self) -> Option<&str> {
        self.file.name.as_deref()
    }

    /// The ISO 4217 code of the currency of every price.
    #[getter]
    fn currency(&self) -> Option<&str> {
        self.file.currency.as_deref()
    }

    /// The shades, as the search for a toner takes them.
    #[getter]
    fn shades(&self) -> Vec<Shade> {
        self.typed.colours().cloned().map(Shade).collect()
    }

    /// The shop as dicts, lists, strings and numbers, in the shape of a shop file.
    fn to_dict<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyAny>> {
        plain(py, &self.file)
    }

    fn __hash__(&self) -> PyResult<u64> {
        let data = serde_json::to_string(&self.file).map_err(|error| FoilworkError::new_err(error.to_string()))?;
        let mut hasher = DefaultHasher::new();
        data.hash(&mut hasher);
        Ok(hasher.finish())
    }

    fn __reduce__<'py>(&self, py: Python<'py>) -> PyResult<(Bound<'py, PyAny>, (Bound<'py, PyAny>,))> {
        Ok((py.import("foilwork.shop")?.getattr("read")?, (self.to_dict(py)?,)))
    }

    fn __repr__(&self) -> String {
        let (bottles, shades) = (self.typed.bottles.len(), self.typed.shades.len());
        format!("<foilwork.shop.Shop {:?}, {bottles} developers, {shades} shades>", self.name().unwrap_or_default())
    }
}

/// Read a shop from the text of a shop file, or from the same as a mapping.
///
/// Args:
///     file: the file's text, or a mapping of its shape.
///     format: ``"toml"`` or ``"json"`` for a text; both have the same shape.
///
/// Returns:
///     The shop.
///
/// Raises:
///     ServiceFileError: everything that is wrong with the file, each with its line; ``.problems`` lists it.
///
/// Examples:
///     >>> from foilwork.shop import read
///     >>> read('name = "Juniper & Tide"')
///     <foilwork.shop.Shop "Juniper & Tide", 0 developers, 0 shades>
#[pyfunction]
#[pyo3(signature = (file, format = "toml"))]
pub fn read(py: Python<'_>, file: &Bound<'_, PyAny>, format: &str) -> PyResult<Shop> {
    let format: Format = match format {
        "toml" => Format::Toml,
        "json" => Format::Json,
        other => return Err(FoilworkError::new_err(format!("unknown format {other:?}: give \"toml\" or \"json\""))),
    };
    let shop = match file.cast::<PyString>() {
        Ok(text) => Shop::parse(&text.to_string(), format),
        Err(_) => reader::from_value(&data_of(file)?).and_then(Shop::new),
    };
    shop.map_err(|problems| raise_problems(py, &problems))
}

/// Read a shop file, TOML or JSON (told by what is in it).
///
/// Args:
///     path: the shop file, UTF-8.
///
/// Returns:
///     The shop.
///
/// Raises:
///     ServiceFileError: everything that is wrong with the file, each with its line.
///     OSError: the file cannot be read.
///
/// Examples:
///     >>> from foilwork.shop import read_file
///     >>> shop = read_file("examples/juniper_and_tide.toml")
///     >>> shop.currency, len(shop.shades)
///     ('EUR', 12)
#[pyfunction]
pub fn read_file(py: Python<'_>, path: PathBuf) -> PyResult<Shop> {
    Shop::from_path(py, &path)
}

/// The JSON Schema of a shop file (draft 2020-12), as plain Python data.
///
/// Returns:
///     The schema.
///
/// Examples:
///     >>> from foilwork.shop import shop_schema
///     >>> shop_schema()["title"]
///     'ShopFile'
#[pyfunction]
pub fn shop_schema(py: Python<'_>) -> PyResult<Bound<'_, PyAny>> {
    plain(py, &shop::shop_schema())
}

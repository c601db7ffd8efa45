//! Where the results go: arrays of their own, or the caller's (`out=`), in all rows or in some of them (`where=`).

use crate::{
    columns::{Column, OnRefusal, common_shape, is_masked, numpy_module, results},
    error::{FoilworkError, raise},
    layout::read,
};
use numpy::{BorrowError, PyArrayDyn, PyArrayMethods, PyReadwriteArrayDyn, PyUntypedArray, PyUntypedArrayMethods};
use pyo3::{
    exceptions::PyTypeError,
    prelude::*,
    types::{PyDict, PyList, PyTuple},
};

/// The keywords that say what becomes of the rows: `errors=`, `out=` and `where=`.
pub struct How<'py> {
    pub errors: OnRefusal,
    out: Option<Bound<'py, PyAny>>,
    mask: Option<Bound<'py, PyAny>>,
}

impl From<OnRefusal> for How<'_> {
    fn from(errors: OnRefusal) -> Self {
        Self { errors, out: None, mask: None }
    }
}

impl<'py> How<'py> {
    /// With an array (or a tuple of them) for the results, and the rows to work on.
    pub fn new(errors: OnRefusal, out: Option<Bound<'py, PyAny>>, mask: Option<Bound<'py, PyAny>>) -> PyResult<Self> {
        if let Some(array) = &out {
            numpy_module(array.py())?;
        }
        let mask = mask.map(|mask| as_mask(&mask)).transpose()?;
        Ok(Self { errors, out, mask })
    }

    /// Whether the results go into arrays of their own, for all rows.
    pub const fn is_plain(&self) -> bool {
        self.out.is_none() && self.mask.is_none()
    }

    /// Whether the caller gives the arrays for the results.
    pub const fn has_out(&self) -> bool {
        self.out.is_some()
    }

    /// The rows to work on, where each row is the last axis of an array.
    pub fn along_last_axis(&self, py: Python<'py>) -> PyResult<Self> {
        let ellipsis = py.import("builtins")?.getattr("Ellipsis")?;
        let mask = self.mask.as_ref().map(|mask| mask.get_item((ellipsis, py.None()))).transpose()?;
        Ok(Self { errors: self.errors, out: self.out.clone(), mask })
    }

    /// The shape of the results; none when all is numbers.
    pub fn shape(&self, columns: &[&Column<'py>]) -> PyResult<Option<Vec<usize>>> {
        let shape = common_shape(columns)?;
        if let Some(mask) = &self.mask {
            let numpy = mask.py().import("numpy")?;
            let of_mask = mask.getattr("shape")?;
            let both =
                numpy.call_method1("broadcast_shapes", (PyTuple::new(mask.py(), shape.unwrap_or_default())?, &of_mask));
            let both = both.map_err(|_| {
                FoilworkError::new_err(format!("where has the shape {of_mask}, which does not broadcast"))
            })?;
            return both.extract().map(Some);
        }
        match (shape, &self.out) {
            (None, Some(out)) => Ok(Some(shape_of_first(out).unwrap_or_default())),
            (shape, _) => Ok(shape),
        }
    }

    /// The shape of the results of arrays.
    pub fn row_shape(&self, columns: &[&Column<'py>]) -> PyResult<Vec<usize>> {
        self.shape(columns).map(Option::unwrap_or_default)
    }

    /// The first column with the rows that are left out as missing: they are not worked on, and not refused.
    pub fn masked(
        &self,
        py: Python<'py>,
        first: Option<&Column<'py>>,
        shape: &[usize],
    ) -> PyResult<Option<Column<'py>>> {
        let (Some(mask), Some(first)) = (&self.mask, first) else { return Ok(None) };
        let numpy = numpy_module(py)?;
        let values = match first {
            Column::Number(number) => numpy.call_method1("float64", (*number,))?,
            Column::Array(array) => array.as_any().clone(),
        };
        let kept = numpy.call_method1("where", (mask, values, f64::NAN))?;
        let kept = numpy.call_method1("broadcast_to", (kept, PyTuple::new(py, shape)?))?;
        read(kept.cast::<PyArrayDyn<f64>>()?).map(|kept| Some(Column::Array(kept)))
    }

    /// An array for each result: the caller's own where the kernel can write into it as it lies.
    pub fn targets<const M: usize>(
        &self,
        py: Python<'py>,
        columns: &[&Column<'py>],
        shape: &[usize],
    ) -> PyResult<Vec<Target<'py>>> {
        let Some(out) = &self.out else {
            return (0..M).map(|_| Ok(Target { work: results(py, shape)?, held: None, given: None })).collect();
        };
        let given: Vec<Bound<'py, PyAny>> = if M == 1 { vec![out.clone()] } else { out.extract().unwrap_or_default() };
        if given.len() != M {
            return Err(FoilworkError::new_err(format!("out must be a tuple of {M} arrays, one for each result")));
        }
        let mut targets: Vec<Target<'py>> = Vec::with_capacity(M);
        for array in given {
            let target = self.target(py, array, columns, shape)?;
            for other in &targets {
                if other.meets(py, &target)? {
                    return Err(FoilworkError::new_err("out has one array for two results: give one for each"));
                }
            }
            targets.push(target);
        }
        Ok(targets)
    }

    fn target(
        &self,
        py: Python<'py>,
        array: Bound<'py, PyAny>,
        columns: &[&Column<'py>],
        shape: &[usize],
    ) -> PyResult<Target<'py>> {
        let given = array.cast::<PyArrayDyn<f64>>().map_err(|_| {
            let it_is = match array.cast::<PyUntypedArray>() {
                Ok(other) => format!("of {}", other.dtype()),
                Err(_) => array.get_type().to_string(),
            };
            PyTypeError::new_err(format!("out must be an array of float64, not {it_is}"))
        })?;
        if is_masked(&array)? {
            let text = "out is a masked array, whose mask would not follow what is written into it (give out.data, and mask \
                        what is NaN in it afterwards)";
            return Err(FoilworkError::new_err(text));
        }
        if given.shape() != shape {
            let text =
                format!("out has the shape {:?}, the result {shape:?}: give an array of that shape", given.shape());
            return Err(FoilworkError::new_err(text));
        }
        let held = match given.try_readwrite() {
            Ok(mut writer) => {
                let fits = self.mask.is_none() && given.is_c_contiguous() && writer.as_slice_mut().is_ok();
                fits.then_some(writer)
            }
            Err(BorrowError::NotWriteable) => {
                return Err(FoilworkError::new_err("out cannot be written to: give an array of your own"));
            }
            Err(_) => None,
        };
        let (from, to) = extent(given);
        let shared = columns.iter().any(|column| match column {
            Column::Number(_) => false,
            Column::Array(input) => {
                let (start, end) = extent(input);
                start < to && from < end
            }
        });
        let held = held.filter(|_| !shared);
        let work = if held.is_some() { given.clone() } else { results(py, shape)? };
        Ok(Target { work, held, given: Some(array) })
    }
}

/// The shape of `out`, or of the first array in it; none where it is neither, which is told where it is written to.
fn shape_of_first(out: &Bound<'_, PyAny>) -> Option<Vec<usize>> {
    let several = out.is_instance_of::<PyTuple>() || out.is_instance_of::<PyList>();
    let first = if several { out.get_item(0).ok()? } else { out.clone() };
    first.getattr("shape").ok()?.extract().ok()
}

/// Between which addresses an array lies; two may share a place without being of one array.
fn extent(array: &Bound<'_, PyArrayDyn<f64>>) -> (usize, usize) {
    let (mut first, mut last) = (array.data().addr(), array.data().addr());
    for (&length, &stride) in array.shape().iter().zip(array.strides()) {
        let reach = stride.unsigned_abs() * length.saturating_sub(1);
        if stride < 0 { first = first.saturating_sub(reach) } else { last += reach }
    }
    (first, last + size_of::<f64>())
}

/// An array of booleans, as NumPy makes one from anything; a masked element is a row to leave out.
fn as_mask<'py>(mask: &Bound<'py, PyAny>) -> PyResult<Bound<'py, PyAny>> {
    let masked = is_masked(mask)?;
    let array = if masked { mask.clone() } else { numpy_module(mask.py())?.call_method1("asarray", (mask,))? };
    if array.getattr("dtype")?.getattr("kind")?.extract::<char>()? == 'b' {
        return if masked { array.call_method1("filled", (false,)) } else { Ok(array) };
    }
    Err(PyTypeError::new_err("where must be an array of booleans: True for the rows to work on"))
}

/// Where one result is written, and the array of the caller that it is for.
pub struct Target<'py> {
    work: Bound<'py, PyArrayDyn<f64>>,
    /// The right to write into it, where it is the caller's own array.
    held: Option<PyReadwriteArrayDyn<'py, f64>>,
    given: Option<Bound<'py, PyAny>>,
}

impl<'py> Target<'py> {
    /// Whether another is written where this one is.
    fn meets(&self, py: Python<'py>, other: &Self) -> PyResult<bool> {
        let own = |target: &Self| target.given.as_ref()?.cast::<PyArrayDyn<f64>>().ok().map(extent);
        let (Some((a, b)), Some((c, d))) = (own(self), own(other)) else { return Ok(false) };
        // Columns of one table lie between the same addresses without a place in common.
        let near = a < d && c < b;
        Ok(near && numpy_module(py)?.call_method1("shares_memory", (&self.given, &other.given))?.is_truthy()?)
    }

    pub fn writer(&mut self) -> PyResult<PyReadwriteArrayDyn<'py, f64>> {
        self.held.take().map_or_else(|| self.work.try_readwrite().map_err(raise), Ok)
    }

    /// Fills it with values from elsewhere.
    pub fn fill(&self, py: Python<'py>, values: &Bound<'py, PyAny>) -> PyResult<()> {
        numpy_module(py)?.call_method1("copyto", (&self.work, values)).map(drop)
    }

    /// The result, in the caller's array where there is one; rows that were left out keep what stands there.
    pub fn handed_back(self, py: Python<'py>, how: &How<'py>) -> PyResult<Bound<'py, PyAny>> {
        let Some(given) = self.given else { return Ok(self.work.into_any()) };
        if !given.is(&self.work) {
            let keywords = PyDict::new(py);
            if let Some(mask) = &how.mask {
                keywords.set_item("where", mask)?;
            }
            numpy_module(py)?.call_method("copyto", (&given, &self.work), Some(&keywords))?;
        }
        Ok(given)
    }
}

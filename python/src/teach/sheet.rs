use super::exercise::Exercise;
use crate::{
    error::{FoilworkError, raise},
    sequence::Sequence,
};
use foilwork::{
    money::Currency,
    teach::{self, Difficulty, Topic, WorksheetRequest},
};
use pyo3::prelude::*;
use std::hash::{DefaultHasher, Hash, Hasher};

/// A sheet of problems with its key; made by :func:`worksheet`. A notebook shows its problems, without the key.
#[pyclass(frozen, eq, module = "foilwork.teach")]
#[derive(Clone, PartialEq)]
pub struct Worksheet {
    request: WorksheetRequest,
    sheet: teach::Worksheet,
}

/// Seed, topics, difficulty, count, currency.
type SheetArguments = (u64, Vec<String>, Option<String>, usize, String);

impl Worksheet {
    pub fn core(&self) -> &teach::Worksheet {
        &self.sheet
    }
}

#[pymethods]
impl Worksheet {
    /// The seed.
    #[getter]
    fn seed(&self) -> u64 {
        self.sheet.seed
    }

    /// What it practises.
    #[getter]
    fn title(&self) -> &str {
        &self.sheet.title
    }

    /// Version of the problems: within one, a seed keeps its sheet.
    #[getter]
    fn format(&self) -> u32 {
        self.sheet.format
    }

    /// The problems.
    #[getter]
    fn exercises(&self) -> Vec<Exercise> {
        self.sheet.exercises.iter().map(Into::into).collect()
    }

    /// The sheet as plain text in 80 columns.
    ///
    /// Args:
    ///     half: ``"both"``, ``"problems"`` or ``"key"``.
    ///     choices: whether each problem shows its answers to choose from.
    ///
    /// Returns:
    ///     The text.
    #[pyo3(signature = (half = "both", choices = false))]
    fn text(&self, half: &str, choices: bool) -> PyResult<String> {
        Ok(self.sheet.text(half.parse().map_err(raise)?, choices))
    }

    /// The sheet as a page without network; the key prints on a sheet of its own.
    ///
    /// Args:
    ///     half: ``"both"``, ``"problems"`` or ``"key"``.
    ///     choices: whether each problem shows its answers to choose from.
    ///
    /// Returns:
    ///     The HTML.
    #[pyo3(signature = (half = "both", choices = false))]
    fn html(&self, half: &str, choices: bool) -> PyResult<String> {
        Ok(self.sheet.html(half.parse().map_err(raise)?, choices))
    }

    /// The sheet as CSV, a line for each problem.
    fn csv(&self) -> String {
        self.sheet.csv()
    }

    /// Problems, answers, steps and mistakes as JSON text.
    fn json(&self) -> PyResult<String> {
        serde_json::to_string(&self.sheet).map_err(|error| FoilworkError::new_err(error.to_string()))
    }

    fn __str__(&self) -> PyResult<String> {
        self.text("both", false)
    }

    fn __repr__(&self) -> String {
        format!("<Worksheet {}: {}, {} problems>", self.sheet.seed, self.sheet.title, self.sheet.exercises.len())
    }

    fn _repr_html_(&self) -> String {
        format!("<pre>{}</pre>", foilwork::text::escaped(&self.sheet.text(teach::SheetHalf::Problems, true)))
    }

    fn __hash__(&self) -> PyResult<u64> {
        let mut hasher = DefaultHasher::new();
        self.json()?.hash(&mut hasher);
        Ok(hasher.finish())
    }

    fn __reduce__<'py>(&self, py: Python<'py>) -> PyResult<(Bound<'py, PyAny>, SheetArguments)> {
        let request = &self.request;
        let topics = request.topics.iter().map(|topic| topic.code().to_owned()).collect();
        let difficulty = request.difficulty.map(|difficulty| difficulty.code().to_owned());
        let arguments = (request.seed, topics, difficulty, request.count, request.currency.code().to_owned());
        Ok((py.import("foilwork.teach")?.getattr("worksheet")?, arguments))
    }
}

/// Make a sheet of problems. The same arguments give the same sheet, on every machine.
///
/// Args:
///     seed: another number, another sheet.
///     topics: what to practise: ``"peroxide-units"``, ``"dilution"``, ``"ratio"``, ``"weighing"``, ``"limits"``,
///         ``"level"``, ``"pigment"``, ``"hair"``, ``"timing"``, ``"costing"``, ``"price"``, ``"tax"``, ``"break-even"``;
///         all of them when left out.
///     difficulty: ``"gentle"``, ``"steady"`` or ``"stretch"``; mixed when left out.
///     count: how many problems, up to 200.
///     currency: the ISO 4217 code of the prices.
///
/// Returns:
///     The sheet.
///
/// Raises:
///     FoilworkError: a topic, a difficulty or a currency that is not known, or a number of problems that no sheet has.
///
/// Examples:
///     >>> from foilwork.teach import worksheet
///     >>> sheet = worksheet(seed=4, topics=["dilution"], difficulty="gentle", count=1)
///     >>> exercise = sheet.exercises[0]
///     >>> right = [option.answer for option in exercise.options if option.mistake is None]
///     >>> right == [exercise.answer]
///     True
///     >>> sheet == worksheet(seed=4, topics=["dilution"], difficulty="gentle", count=1)
///     True
///     >>> picture = worksheet(seed=5, topics=["pigment"], difficulty="gentle", count=1).exercises[0].picture
///     >>> picture.svg[:4], picture.says[:22]
///     ('<svg', 'twelve hues in a ring,')
#[pyfunction]
#[pyo3(signature = (seed = 1, topics = None, difficulty = None, count = 10, currency = "EUR"))]
pub fn worksheet(
    py: Python<'_>,
    seed: u64,
    topics: Option<Sequence<String>>,
    difficulty: Option<String>,
    count: usize,
    currency: &str,
) -> PyResult<Worksheet> {
    let topics = topics.map(|topics| topics.0).unwrap_or_default();
    let request = WorksheetRequest {
        seed,
        topics: topics.iter().map(|word| word.parse::<Topic>()).collect::<Result<_, _>>().map_err(raise)?,
        difficulty: difficulty.map(|word| word.parse::<Difficulty>()).transpose().map_err(raise)?,
        count,
        currency: Currency::from_code(currency).map_err(raise)?,
    };
    let sheet = py.detach(|| teach::worksheet(&request)).map_err(raise)?;
    Ok(Worksheet { request, sheet })
}

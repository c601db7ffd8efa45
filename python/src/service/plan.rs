//! Wrappers of `foilwork::service`: planning a service file.

use super::{error::raise_problems, known::Known};
use crate::{
    error::FoilworkError,
    plain::{data_of, objects, plain, read_grown, read_text},
    sequence::Sequence,
    shop::PyShop,
    source::TracedResult,
};
use foilwork::{
    reader::{self, Format, Problems},
    service::{self, Evidence, shape::ServiceFile},
    sheet,
};
use pyo3::{prelude::*, sync::PyOnceLock, types::PyString};
use std::{
    hash::{DefaultHasher, Hash, Hasher},
    path::{Path, PathBuf},
};

/// A service plan: what to weigh, in which order, what was checked, what it costs.
///
/// Made by :func:`plan`. ``str(plan)`` is the bench sheet; its parts are objects of ``foilwork.planned``. Two plans of one
/// file are equal; a plan pickles as its file and what was known beside it.
///
/// Examples:
///     >>> from foilwork import plan_file
///     >>> nape = plan_file("examples/soft-gradient.toml").mixes[0]
///     >>> nape.name, [part.weigh_g for part in nape.bowls[0].parts]
///     ('nape', [15.0, 30.0, 1.4])
///     >>> low, best, high = nape.on_hair_ww_percent
///     >>> round(best, 2)
///     3.88
#[pyclass(frozen, eq, module = "foilwork.service")]
pub struct Plan {
    file: ServiceFile,
    known: Known,
    plan: service::Plan,
    typed: PyOnceLock<Py<PyAny>>,
}

impl PartialEq for Plan {
    fn eq(&self, other: &Self) -> bool {
        self.file == other.file && self.known == other.known && self.plan == other.plan
    }
}

impl Plan {
    fn of(file: ServiceFile, known: Known, evidence: Evidence) -> Result<Self, Problems> {
        let evidence = known.beside(&file, evidence);
        Ok(Self { plan: service::plan_with(&file, &evidence)?, file, known, typed: PyOnceLock::new() })
    }

    /// The plan of the core.
    pub fn core(&self) -> &service::Plan {
        &self.plan
    }

    /// From consultation to decision, with all that the plan was made of.
    pub(super) fn consultation(&self, py: Python<'_>) -> PyResult<service::ConsultationPlan> {
        let evidence = self.known.evidence().map_err(|error| FoilworkError::new_err(error.to_string()))?;
        let evidence = self.known.beside(&self.file, evidence);
        let found = py.detach(|| service::consult(&self.file, &evidence));
        found.map_err(|problems| raise_problems(py, &problems))
    }

    /// A part of the plan as objects; they are made when the first is asked for.
    fn part<'py>(&self, py: Python<'py>, name: &str) -> PyResult<Bound<'py, PyAny>> {
        let made = || objects(py, "PlanData", &self.plan).map(Bound::unbind);
        self.typed.get_or_try_init(py, made)?.bind(py).getattr(name)
    }
}

/// As [`plan`] takes them.
type PlanArguments<'py> = (Bound<'py, PyAny>, &'static str, Option<()>, Option<String>, Vec<String>, Option<String>);

/// The methods of a plan, with a getter for each of its parts.
macro_rules! parts {
    ($($(#[$doc:meta])* $part:ident),+; $($method:tt)*) => {
        #[pymethods]
        impl Plan {
            $(
                $(#[$doc])*
                #[getter]
                fn $part<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyAny>> {
                    self.part(py, stringify!($part))
                }
            )+

            $($method)*
        }
    };
}

parts! {
    /// Whether any finding says stop: then do not begin.
    blocked,
    /// What to book it as, and what the price list says for it.
    booking,
    /// Cautions for what is in the bowls.
    cautions,
    /// How long the chair is taken.
    chair,
    /// What each section needs of colour.
    colour,
    /// Who works.
    colourist,
    /// What was said before the service, held against the plan; absent where the file has no consultation.
    consulted,
    /// How far sections that lie beside each other are apart.
    contrasts,
    /// Who does what when, in the order of the sheet and in the best order; absent for more than 40 sections.
    day,
    /// Defaults that were used because the file did not say.
    defaults,
    /// Checks, the worst first.
    findings,
    /// Steps before the colour, planned or asked for; the planned ones come before the running order.
    first_steps,
    /// Version of foilwork that made it.
    foilwork,
    /// Version of the form of this data.
    format,
    /// A code for the guest.
    guest,
    /// How the shop writes; it changes sheets and cards, no number.
    habits,
    /// The hair as stated.
    hair,
    /// Hair and foils, section by section, and how the head will read.
    head,
    /// Whose law the limits are from.
    jurisdiction,
    /// How light each lightened section gets, how fast, how sure.
    lift,
    /// What to mix, in the running order.
    mixes,
    /// What it costs and what to charge; absent without prices.
    money,
    /// What a reader might look for and will not find, with the reason.
    not_computed,
    /// Notes of the file.
    notes,
    /// The running order.
    order,
    /// Whose order the running order is.
    order_basis,
    /// When it starts, as the file says.
    start,
    /// Facts of the file that no check or computation reads.
    stated_not_used,
    /// What is taken from the shelf, against what is in hand.
    stock,
    /// The strengths that the plan chose, where sections left theirs out.
    strengths,
    /// What the service is called.
    title,
    /// What makes those sections finish together, or why they do not.
    together;

    /// The bench sheet as plain text, 80 columns wide.
    fn text(&self) -> String {
        sheet::bench_sheet(&self.plan)
    }

    /// The bench sheet as a page: one file without network, for a phone at the chair and for paper.
    fn html(&self) -> String {
        sheet::bench_page(&self.plan)
    }

    /// The page for the guest: what is planned, risks, price, care, agreement.
    fn guest_html(&self) -> String {
        sheet::guest_page(&self.plan)
    }

    /// The map of the head as SVG; none where no section says where it lies.
    fn head_map(&self) -> Option<String> {
        sheet::head_map(&self.plan)
    }

    /// The same map for a terminal: a box for each region with its sections and foils, and under it all of them in words.
    ///
    /// Returns:
    ///     The text, or ``None`` where no section says where it lies.
    ///
    /// Examples:
    ///     >>> from foilwork import plan_file
    ///     >>> "; nape, foils 4-12" in plan_file("examples/soft-gradient.toml").head_map_text()
    ///     True
    fn head_map_text(&self) -> Option<String> {
        sheet::head_map_text(&self.plan)
    }

    /// From consultation to decision: whether to go on and who has to agree, what each result of a test changes, the visits on
    /// the calendar, what else was considered, and what is agreed with the guest.
    ///
    /// Returns:
    ///     A :class:`foilwork.planned.ConsultationPlan`.
    ///
    /// Raises:
    ///     ServiceFileError: never for a plan that was made.
    ///
    /// Examples:
    ///     >>> from foilwork import plan_file
    ///     >>> found = plan_file("examples/staged-lightening.toml").consult()
    ///     >>> found.decision.go, [(consent.who, str(consent.agreed_on)) for consent in found.decision.consents]
    ///     ('restrict', [('guest', 'None'), ('doctor', '2026-11-27')])
    fn consult<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyAny>> {
        objects(py, "ConsultationPlan", &self.consultation(py)?)
    }

    /// The consultation as plain text, 80 columns wide.
    fn consultation_text(&self, py: Python<'_>) -> PyResult<String> {
        Ok(sheet::consultation_sheet(&self.consultation(py)?))
    }

    /// What is agreed, as a page for the guest to read and to sign: one file without network.
    fn agreement_html(&self, py: Python<'_>) -> PyResult<String> {
        Ok(sheet::agreement_page(&self.consultation(py)?))
    }

    /// How each main result came about: strengths on the hair, levels, time in the chair, cost and price.
    ///
    /// Returns:
    ///     The results, each with its inputs, its formula, its basis and its sources.
    ///
    /// Examples:
    ///     >>> from foilwork import plan_file
    ///     >>> first = plan_file("examples/soft-gradient.toml").trail()[0]
    ///     >>> first.what, first.formula
    ///     ('nape: strength on the hair, bowl 1', 'sum of grams times % w/w, over the sum of grams, as weighed')
    fn trail(&self) -> Vec<TracedResult> {
        self.plan.trail().into_iter().map(Into::into).collect()
    }

    /// The plan as JSON text.
    fn json(&self) -> PyResult<String> {
        serde_json::to_string(&self.plan).map_err(|error| FoilworkError::new_err(error.to_string()))
    }

    /// The plan as dicts, lists, strings and numbers; every key carries its unit, every estimate its bounds.
    fn to_dict<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyAny>> {
        plain(py, &self.plan)
    }

    /// The mixing cards, one for each fresh bowl.
    ///
    /// Returns:
    ///     The cards, in the order of mixing.
    fn cards<'py>(&self, py: Python<'py>) -> PyResult<Vec<Bound<'py, PyAny>>> {
        service::mixing_cards(&self.plan).iter().map(|card| objects(py, "BowlCard", card)).collect()
    }

    fn __hash__(&self) -> PyResult<u64> {
        let mut hasher = DefaultHasher::new();
        self.json()?.hash(&mut hasher);
        Ok(hasher.finish())
    }

    fn __reduce__<'py>(&self, py: Python<'py>) -> PyResult<(Bound<'py, PyAny>, PlanArguments<'py>)> {
        let Known { book, seen, records } = self.known.clone();
        Ok((py.import("foilwork.service")?.getattr("plan")?, (plain(py, &self.file)?, "toml", None, book, seen, records)))
    }

    fn __str__(&self) -> String {
        self.text()
    }

    fn __repr__(&self) -> String {
        let state = if self.plan.blocked { ", blocked" } else { "" };
        format!("<foilwork.Plan {:?}, {} mixes{state}>", self.plan.title, self.plan.mixes.len())
    }

    fn _repr_html_(&self) -> String {
        // A notebook has styles of its own: the page stands in a frame, where nothing of either reaches the other.
        let page = foilwork::text::escaped(&self.html());
        format!("<iframe title=\"bench sheet\" sandbox=\"\" width=\"100%\" height=\"600\" srcdoc=\"{page}\"></iframe>")
    }
}

/// Plan a service from the text of a service file, or from the same as a mapping.
///
/// Args:
///     file: the file's text, or a mapping of its shape; there dates may be ``datetime`` objects.
///     format: ``"toml"`` or ``"json"`` for a text; both have the same shape.
///     shop: what the salon has, where the file only names it in ``shop_file``: a :class:`foilwork.shop.Shop`.
///     strand_book: the text of the strand book that the file names in ``strand_book``.
///     seen: levels seen in mid-service, each as section, level and minute from the first brush: ``"nape=7.5@40"``.
///     records: the text of the kept records that the file names in ``records``, for minutes for each foil.
///
/// Returns:
///     The plan. Findings that say stop are part of it; ask ``plan.blocked``.
///
/// Raises:
///     ServiceFileError: everything that is wrong with the file, each with its line; ``.problems`` lists it.
///
/// Examples:
///     >>> import foilwork
///     >>> try:
///     ...     foilwork.plan('format = 2')
///     ... except foilwork.ServiceFileError as error:
///     ...     print([problem for problem in error.problems if problem[1] == "format"])
///     [(1, 'format', '2 is out of range: give 1')]
///     >>> try:
///     ...     foilwork.plan({"format": 2})
///     ... except foilwork.ServiceFileError as error:
///     ...     print(error.problems[0])
///     (None, 'format', '2 is out of range: give 1')
#[pyfunction]
#[pyo3(signature = (file, format = "toml", shop = None, strand_book = None, seen = None, records = None))]
pub fn plan(
    py: Python<'_>,
    file: &Bound<'_, PyAny>,
    format: &str,
    shop: Option<&PyShop>,
    strand_book: Option<String>,
    seen: Option<Sequence<String>>,
    records: Option<String>,
) -> PyResult<Plan> {
    let known = Known { book: strand_book, seen: seen.map(|seen| seen.0).unwrap_or_default(), records };
    let evidence = known.evidence().map_err(|error| FoilworkError::new_err(error.to_string()))?;
    let format: Format = match format {
        "toml" => Format::Toml,
        "json" => Format::Json,
        other => return Err(FoilworkError::new_err(format!("unknown format {other:?}: give \"toml\" or \"json\""))),
    };
    let Ok(text) = file.cast::<PyString>() else {
        let data = data_of(file)?;
        let planned = py.detach(|| {
            let file = match shop {
                Some(shop) => service::from_value_with_shop(&data, &shop.file),
                None => reader::from_value(&data),
            };
            Plan::of(file?, known, evidence)
        });
        return planned.map_err(|problems| raise_problems(py, &problems));
    };
    let text = text.to_string();
    let planned = py.detach(|| {
        let file = match shop {
            Some(shop) => service::parse_with_shop(&text, format, &shop.file),
            None => service::parse(&text, format),
        };
        file.and_then(|file| Plan::of(file, known, evidence)).map_err(|problems| problems.located(&text, format))
    });
    planned.map_err(|problems| raise_problems(py, &problems))
}

/// Plan a service from a file, TOML or JSON (told by what is in it). A shop that the file names in
/// ``shop_file``, a strand book in ``strand_book`` and kept records in ``records`` are read too, from the folder of the file.
///
/// Args:
///     path: the service file, UTF-8.
///     seen: levels seen in mid-service, each as section, level and minute from the first brush: ``"nape=7.5@40"``.
///
/// Returns:
///     The plan; ``print(plan)`` shows the bench sheet.
///
/// Raises:
///     ServiceFileError: everything that is wrong with the file or its shop, each with its line.
///     OSError: a file cannot be read.
///
/// Examples:
///     >>> from foilwork import plan_file
///     >>> plan_file("examples/soft-gradient.toml").blocked
///     False
///     >>> plan = plan_file("examples/finish-together.toml", seen=["nape=7@35"])
///     >>> plan.lift[0].seen[0].next
///     'go-on'
#[pyfunction]
#[pyo3(signature = (path, seen = None))]
pub fn plan_file(py: Python<'_>, path: PathBuf, seen: Option<Sequence<String>>) -> PyResult<Plan> {
    let name = path.to_string_lossy().into_owned();
    let text = read_text(py, &path)?;
    let format = Format::of(&name, &text);
    let folder = path.parent().unwrap_or(Path::new(""));
    let shop = service::shop_file(&text, format).map(|shop| PyShop::from_path(py, &folder.join(shop))).transpose()?;
    let grown = |named: Option<String>| named.map(|named| read_grown(py, &folder.join(named))).transpose();
    let book = grown(service::strand_book(&text, format))?;
    let records = grown(service::records_named(&text, format).map(|(path, _)| path))?;
    let format = if format == Format::Json { "json" } else { "toml" };
    plan(py, PyString::new(py, &text).as_any(), format, shop.as_ref(), book, seen, records)
}

/// The JSON Schema of a service file (draft 2020-12), as plain Python data.
///
/// Returns:
///     The schema.
///
/// Examples:
///     >>> from foilwork import service_schema
///     >>> service_schema()["title"]
///     'ServiceFile'
#[pyfunction]
pub fn service_schema(py: Python<'_>) -> PyResult<Bound<'_, PyAny>> {
    plain(py, &service::service_schema())
}

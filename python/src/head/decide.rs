//! Wrappers of `foilwork::head`: the class of product and of service.

use crate::{answer::answer, colour::AnyLevel, error::raise, sequence::Sequence};
use foilwork::{
    head::{self, ClassQuestion, Treated},
    quantity::Share,
};
use pyo3::prelude::*;

answer! {
    /// A class of product that was not chosen.
    Rejected {
        /// Which.
        product: String,
        /// Why not.
        why: String,
    }
}

answer! {
    /// The class of product for a section, with its reasons; made by ``product_class``.
    ClassDecision {
        /// What to use.
        product: String,
        /// Why.
        why: String,
        /// What was considered and not taken.
        rejected: Vec<Rejected>,
        /// What has to be done before: ``"pre-soften"``, ``"pre-pigment"``, ``"clean-first"``.
        before: Vec<String>,
        /// What the rules rest on.
        basis: String,
    }
}

/// Which class of product takes hair from one level to another, and which do not, each with its reason.
///
/// Args:
///     from_level: the level now.
///     to_level: the level wanted.
///     artificial: whether the hair there carries artificial colour.
///     lightened: whether it has been lightened.
///     white_percent: how much of it is white.
///
/// Returns:
///     A ``ClassDecision``.
///
/// Raises:
///     FoilworkError: a value out of range.
///
/// Source:
///     Common practice.
///
/// Examples:
///     >>> from foilwork.head import product_class
///     >>> found = product_class(5, 9)
///     >>> found.product, len(found.rejected), found.rejected[0].product
///     ('lightener', 4, 'semi-permanent')
///     >>> product_class(5, 7, artificial=True).before
///     ['clean-first']
#[pyfunction]
#[pyo3(signature = (from_level, to_level, *, artificial = false, lightened = false, white_percent = 0.0))]
pub fn product_class(
    from_level: AnyLevel,
    to_level: AnyLevel,
    artificial: bool,
    lightened: bool,
    white_percent: f64,
) -> PyResult<ClassDecision> {
    let white = Share::from_percent(white_percent).map_err(raise)?;
    let found =
        head::product_class(&ClassQuestion { from: from_level.0, to: to_level.0, artificial, lightened, white });
    let rejected =
        |other: &head::Rejected| Rejected { product: other.product.code().to_owned(), why: other.why.to_owned() };
    Ok(ClassDecision {
        product: found.product.code().to_owned(),
        why: found.why.to_owned(),
        rejected: found.rejected.iter().map(rejected).collect(),
        before: found.before.iter().map(|step| step.code().to_owned()).collect(),
        basis: found.basis.code().to_owned(),
    })
}

/// What to call a service when booking and pricing it: ``"regrowth"``, ``"partial"``, ``"half"`` or ``"full"``.
///
/// Args:
///     treated: for each part its technique, and the share of all the hair that lies in the area worked on, in percent.
///
/// Returns:
///     The class. Its bounds, 40 and 75 %, are assumed.
///
/// Raises:
///     FoilworkError: another technique, or a share outside 0 to 100 %.
///
/// Examples:
///     >>> from foilwork.head import service_class
///     >>> service_class([("weave", 55)])
///     'half'
#[pyfunction]
pub fn service_class(treated: Sequence<(String, f64)>) -> PyResult<&'static str> {
    let part = |(technique, percent): (String, f64)| {
        Ok(Treated { technique: technique.parse().map_err(raise)?, area: Share::from_percent(percent).map_err(raise)? })
    };
    let treated = treated.0.into_iter().map(part).collect::<PyResult<Vec<_>>>()?;
    Ok(head::service_class(&treated).code())
}

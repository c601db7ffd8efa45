//! From consultation to decision: what the checks of the plan come to, what each test changes, what else was considered.

mod agreement;
mod alternative;
mod alternatives;
mod classes;
mod concern;
mod decision;
mod make;
mod price;
mod series;
mod trace;
mod what_if;

pub use agreement::Agreement;
pub(crate) use agreement::before_signing;
pub use alternative::{Alternative, AlternativeKind};
pub use concern::Concern;
pub use decision::{Consent, Decision, Go, LapsedAgreement, decide};
pub use make::{ConsultationPlan, consult};
pub use price::AgreedPrice;
pub(crate) use series::later;
pub use series::{DatedVisit, dated_visits};
pub use what_if::{TestEffect, TestKind};

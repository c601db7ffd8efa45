use super::{BowlCard, Plan};
use crate::service::consult::ConsultationPlan;
use serde_json::Value;

/// The JSON Schema (draft 2020-12) of a plan as plain data, derived from [`Plan`].
///
/// `x-unit` names the unit of a number; the field's name ends with it. The definition `BowlCard` is that of a card, as
/// [`mixing_cards`](super::mixing_cards) makes them of a plan; `ConsultationPlan` that of a consultation, as [`consult`](crate::service::consult) makes it.
///
/// # Example
///
/// ```
/// use foilwork::service::plan_schema;
///
/// assert_eq!(plan_schema()["properties"]["blocked"]["type"], "boolean");
/// ```
#[must_use]
pub fn plan_schema() -> Value {
    let settings = schemars::generate::SchemaSettings::draft2020_12().for_serialize();
    let mut generator = settings.into_generator();
    generator.subschema_for::<BowlCard>();
    generator.subschema_for::<ConsultationPlan>();
    generator.into_root_schema_for::<Plan>().to_value()
}

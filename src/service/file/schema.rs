use crate::service::shape::ServiceFile;
use schemars::generate::SchemaSettings;
use serde_json::Value;
use std::sync::LazyLock;

/// The JSON Schema (draft 2020-12) of a service file, derived from its shape.
///
/// `foilwork schema` prints it; editors can use it while a file is written, and [`parse`](super::parse) checks every
/// file against it.
///
/// # Example
///
/// ```
/// let schema = foilwork::service::schema();
/// assert_eq!(schema["title"], "ServiceFile");
/// ```
#[must_use]
pub fn schema() -> Value {
    derived().clone()
}

/// Derived once: it takes longer than reading a file.
pub(super) fn derived() -> &'static Value {
    static SCHEMA: LazyLock<Value> = LazyLock::new(|| {
        SchemaSettings::draft2020_12().into_generator().into_root_schema_for::<ServiceFile>().to_value()
    });
    &SCHEMA
}

use serde_json::Value;

/// A step from one form of a record to the next.
#[derive(Debug, Clone, Copy)]
pub struct Migration {
    /// The form that it takes.
    pub from: u32,
    /// What it makes of a record of that form: one of the next.
    ///
    /// # Errors
    ///
    /// What is missing in the record, in words.
    pub step: fn(Value) -> Result<Value, String>,
}

/// A record that cannot be brought to the form of this release.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[non_exhaustive]
pub enum MigrationError {
    /// It does not say its form.
    #[error("format: missing: give the number of the form, {current} for this release")]
    NoFormat {
        /// The form of this release.
        current: u32,
    },
    /// Its form is newer than this release.
    #[error("format {format}: written by a newer release, this one reads {current} (read it with that release)")]
    Newer {
        /// Its form.
        format: u64,
        /// The form of this release.
        current: u32,
    },
    /// No step leads from its form.
    #[error("format {format}: unknown, this release reads {current} (correct the number)")]
    Unknown {
        /// Its form.
        format: u64,
        /// The form of this release.
        current: u32,
    },
    /// A step refused it.
    #[error("format {format}: cannot be brought to the next: {message}")]
    Step {
        /// Its form.
        format: u64,
        /// Why, in words.
        message: String,
    },
}

/// Brings a record to the form `current`, one step after the other. What is in that form already is given back untouched.
///
/// # Errors
///
/// [`MigrationError`]: no form, one that is newer or that no step leads from, or a step that refuses it.
///
/// # Example
///
/// ```
/// use foilwork::history::{Migration, migrate};
/// use serde_json::json;
///
/// // An invented form 1 that called the grams `grams`.
/// let rename = Migration { from: 1, step: |mut record| {
///     let grams = record.get("grams").cloned().ok_or("grams: missing")?;
///     record = json!({ "mass_g": grams });
///     Ok(record)
/// } };
/// assert_eq!(migrate(json!({ "format": 1, "grams": 40 }), &[rename], 2)?, json!({ "format": 2, "mass_g": 40 }));
/// assert!(migrate(json!({ "format": 9 }), &[rename], 2).is_err());
/// # Ok::<(), foilwork::history::MigrationError>(())
/// ```
pub fn migrate(mut record: Value, steps: &[Migration], current: u32) -> Result<Value, MigrationError> {
    loop {
        let format = record.get("format").and_then(Value::as_u64).ok_or(MigrationError::NoFormat { current })?;
        match format.cmp(&u64::from(current)) {
            std::cmp::Ordering::Equal => return Ok(record),
            std::cmp::Ordering::Greater => return Err(MigrationError::Newer { format, current }),
            std::cmp::Ordering::Less => {}
        }
        let step = steps.iter().find(|step| u64::from(step.from) == format);
        let step = step.ok_or(MigrationError::Unknown { format, current })?;
        record = (step.step)(record).map_err(|message| MigrationError::Step { format, message })?;
        // The step says what it makes; the number is counted here, so that no step can lead in a circle.
        if let Some(fields) = record.as_object_mut() {
            fields.insert("format".to_owned(), Value::from(format + 1));
        }
    }
}

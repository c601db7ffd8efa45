use serde::{Deserialize, Deserializer, de};
use std::{borrow::Cow, fmt};

/// A number as someone wrote it: a text (`"12.50"`) or a number (`12.5`). The text keeps every digit.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Written(String);

impl Written {
    /// The text.
    #[must_use]
    pub fn as_str(&self) -> &str {
        &self.0
    }
}

impl<T: Into<String>> From<T> for Written {
    fn from(text: T) -> Self {
        Self(text.into())
    }
}

impl<'de> Deserialize<'de> for Written {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        struct Reader;

        impl de::Visitor<'_> for Reader {
            type Value = Written;

            fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                f.write_str("a number, or a text that holds one")
            }

            fn visit_str<E: de::Error>(self, text: &str) -> Result<Written, E> {
                Ok(text.into())
            }

            fn visit_i64<E: de::Error>(self, number: i64) -> Result<Written, E> {
                Ok(number.to_string().into())
            }

            fn visit_u64<E: de::Error>(self, number: u64) -> Result<Written, E> {
                Ok(number.to_string().into())
            }

            fn visit_f64<E: de::Error>(self, number: f64) -> Result<Written, E> {
                Ok(number.to_string().into())
            }
        }

        deserializer.deserialize_any(Reader)
    }
}

impl schemars::JsonSchema for Written {
    fn schema_name() -> Cow<'static, str> {
        "Written".into()
    }

    fn json_schema(_: &mut schemars::SchemaGenerator) -> schemars::Schema {
        schemars::json_schema!({ "type": ["string", "number"], "description": "A decimal number; a text keeps every digit." })
    }
}

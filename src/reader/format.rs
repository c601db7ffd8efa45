/// How a file is written; both forms have the same shape.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Format {
    /// TOML 1.1.
    Toml,
    /// JSON (RFC 8259).
    Json,
}

impl Format {
    /// The format of a text, told by how it begins, whatever its name says; a text that could be both, such as an empty
    /// one, is what its name says.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::reader::Format;
    ///
    /// assert_eq!(Format::of("-", "{ \"format\": 1 }"), Format::Json);
    /// assert_eq!(Format::of("-", "format = 1"), Format::Toml);
    /// assert_eq!(Format::of("service.json", "# mine\n[service]"), Format::Toml);
    /// ```
    #[must_use]
    pub fn of(name: &str, text: &str) -> Self {
        let text = text.trim_start_matches('\u{feff}').trim_start();
        let mut begins = text.chars();
        match (begins.next(), begins.next()) {
            (Some('{'), _) => Self::Json,
            // A remark, a field or a table.
            (Some('#'), _) => Self::Toml,
            (Some(first), _) if first.is_ascii_alphabetic() => Self::Toml,
            (Some('['), Some(second)) if second == '[' || second.is_ascii_alphabetic() => Self::Toml,
            _ => Self::of_name(name),
        }
    }

    /// The format a file's name speaks of: `.json` is JSON, everything else TOML.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::reader::Format;
    ///
    /// assert_eq!(Format::of_name("lowlights.JSON"), Format::Json);
    /// assert_eq!(Format::of_name("shop.toml"), Format::Toml);
    /// ```
    #[must_use]
    pub fn of_name(name: &str) -> Self {
        if name.to_ascii_lowercase().ends_with(".json") { Self::Json } else { Self::Toml }
    }
}

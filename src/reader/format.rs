/// How a file is written; both forms have the same shape.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Format {
    /// TOML 1.1.
    Toml,
    /// JSON (RFC 8259).
    Json,
}

impl Format {
    /// The format of a text that may come without a name, as from the standard input: what begins like a JSON object
    /// is JSON, for no TOML begins so.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::reader::Format;
    ///
    /// assert_eq!(Format::of("-", "{ \"format\": 1 }"), Format::Json);
    /// assert_eq!(Format::of("-", "format = 1"), Format::Toml);
    /// ```
    #[must_use]
    pub fn of(name: &str, text: &str) -> Self {
        let text = text.trim_start_matches('\u{feff}').trim_start();
        if text.starts_with('{') { Self::Json } else { Self::of_name(name) }
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

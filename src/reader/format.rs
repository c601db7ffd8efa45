/// How a file is written; both forms have the same shape.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Format {
    /// TOML 1.1.
    Toml,
    /// JSON (RFC 8259).
    Json,
}

impl Format {
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

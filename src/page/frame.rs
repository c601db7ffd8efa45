use super::{Html, html::words};

/// What all pages look like.
const STYLE: &str = include_str!("style.css");
/// What a page does beside standing there: it counts down, says what is due, and keeps ticks for a reload; nothing is kept when
/// its tab closes.
const SCRIPT: &str = include_str!("script.js");
/// The hashes of both in base64, by which the policy knows them; the tests compute them.
const STYLE_SHA256: &str = "j3dxuiZcg/LeP27Dq6UFSqLnqLPKiTdbjVCfBE8JQGk=";
const SCRIPT_SHA256: &str = "R/GG27egdlIz4iEcdv/GKC4K99Ba2nwU6J9sTknYz5Q=";

/// A page that holds everything it needs.
///
/// # Example
///
/// ```
/// use foilwork::page::Page;
///
/// let mut page = Page::new("Juniper & Tide");
/// page.body().element("h1", &[], "Juniper & Tide");
/// let text = page.finish();
/// assert!(text.starts_with("<!doctype html>") && text.contains("default-src 'none'"));
/// assert!(text.contains("<h1>Juniper &amp; Tide</h1>") && !text.contains("<script"));
/// ```
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Page {
    title: String,
    body: Html,
    scripted: bool,
}

impl Page {
    /// An empty page with what its window and its print are called.
    #[must_use]
    pub fn new(title: &str) -> Self {
        Self { title: title.to_owned(), body: Html::default(), scripted: false }
    }

    /// The same with the script that counts down to the times of a bench sheet; without script it reads as paper does.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::page::Page;
    ///
    /// let text = Page::new("Juniper & Tide").with_script().finish();
    /// assert!(text.contains("<script"));
    /// ```
    #[must_use]
    pub fn with_script(self) -> Self {
        Self { scripted: true, ..self }
    }

    /// What is on it.
    pub fn body(&mut self) -> &mut Html {
        &mut self.body
    }

    /// The text of the file.
    #[must_use]
    pub fn finish(self) -> String {
        let (title, body) = (words(&self.title), self.body.finish());
        let (script, allowed) = if self.scripted {
            (format!("<script>{SCRIPT}</script>\n"), format!("; script-src 'sha256-{SCRIPT_SHA256}'"))
        } else {
            (String::new(), String::new())
        };
        format!(
            "<!doctype html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n\
             <meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src 'sha256-{STYLE_SHA256}'\
             {allowed}; base-uri 'none'; form-action 'none'\">\n\
             <meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n\
             <meta name=\"color-scheme\" content=\"light dark\">\n<meta name=\"referrer\" content=\"no-referrer\">\n\
             <title>{title}</title>\n<style>{STYLE}</style>\n</head>\n<body>\n<main>\n{body}</main>\n{script}</body>\n</html>\n"
        )
    }
}

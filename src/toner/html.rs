use super::{TonerAnswer, TonerMix};
use crate::text::{escaped, number};
use std::fmt::Write;

impl TonerMix {
    /// The mix in one line, such as `20 g of J9-mist + 10 g of J9`.
    #[must_use]
    pub fn recipe(&self) -> String {
        let parts: Vec<_> =
            self.parts.iter().map(|part| format!("{} g of {}", number(part.mass.g(), 3), part.code)).collect();
        parts.join(" + ")
    }
}

impl TonerAnswer {
    /// The answer as a piece of HTML: target and prediction as swatches with their text, then mixes and findings.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{
    ///     colour::{Level, Shade, Tone},
    ///     quantity::Mass,
    ///     toner::{Exposed, Target, TonerRequest, find_toner},
    /// };
    ///
    /// let (level, g) = (Level::new(8.0)?, Mass::from_g);
    /// let shade = Shade::new("J8-plain", level, Tone::neutral())?;
    /// let answer = find_toner(&TonerRequest {
    ///     exposed: Exposed::white(),
    ///     target: Target::Look { level, tone: Tone::neutral() },
    ///     shades: vec![&shade],
    ///     most_shades: 1,
    ///     bowl: g(30.0)?,
    ///     division: g(1.0)?,
    /// })?;
    /// assert_eq!(answer.best.recipe(), "30 g of J8-plain");
    /// assert!(answer.html().contains("J8-plain"));
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn html(&self) -> String {
        let mut html = format!("<div><p>{}</p>", escaped(&self.summary()));
        html.push_str(&self.target.html("target"));
        html.push_str(&self.best.predicted.html("predicted"));
        html.push_str("<table><thead><tr><th>mix</th><th>predicted CIEDE2000 to the target</th></tr></thead><tbody>");
        for mix in std::iter::once(&self.best).chain(&self.alternatives) {
            // Writing to a String cannot fail.
            let _ = write!(
                html,
                "<tr><td>{}</td><td>{}</td></tr>",
                escaped(&mix.recipe()),
                escaped(&mix.residual.to_string())
            );
        }
        html.push_str("</tbody></table><ul>");
        for finding in &self.findings {
            let _ = write!(html, "<li>{}</li>", escaped(&finding.to_string()));
        }
        html.push_str("</ul></div>");
        html
    }
}

use super::{Swatch, difference::ciede2000};
use crate::text::escaped;
use std::fmt::Write;

impl Swatch {
    /// The swatch as a piece of HTML: a patch of colour, and beside it everything the patch says, in words.
    ///
    /// The patch is decoration (hidden from screen readers); it is never the only carrier of a fact.
    ///
    /// ```
    /// use foilwork::colour::{Level, Swatch};
    ///
    /// let html = Swatch::natural(Level::new(7.0)?).html("level 7");
    /// assert!(html.contains("level 7") && html.contains("model, not a photograph"));
    /// # Ok::<(), foilwork::colour::InvalidLevel>(())
    /// ```
    #[must_use]
    pub fn html(&self, label: &str) -> String {
        let (lab, srgb) = (self.lab(), self.srgb());
        let hue = self.hue().map_or("no hue to speak of", super::Hue::words);
        let mut html = format!(
            "<div style=\"display:flex;align-items:center;gap:0.8em;margin:0.3em 0\">\
             <span aria-hidden=\"true\" style=\"display:inline-block;width:3em;height:3em;flex:none;\
             border:1px solid currentColor;background:{srgb}\"></span><span><strong>{}</strong>: {srgb}, {hue}, {lab:.0}",
            escaped(label)
        );
        let [l0, _, l1] = self.lightness().to_array().map(super::Lightness::lab_l);
        let [a0, _, a1] = self.redness().to_array().map(super::Redness::lab_a);
        let [b0, _, b1] = self.yellowness().to_array().map(super::Yellowness::lab_b);
        // Writing to a String cannot fail.
        if self.basis() != crate::source::Basis::Measured {
            let _ = write!(html, "; between L* {l0:.0} and {l1:.0}, a* {a0:.0} and {a1:.0}, b* {b0:.0} and {b1:.0}");
        }
        let _ = write!(html, " ({}; {})</span></div>", self.basis(), self.notice());
        html
    }

    /// How far off the model may be: the largest CIEDE2000 from the best estimate to any set of assumptions.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::colour::{Lab, Level, Swatch, White};
    ///
    /// assert!(Swatch::natural(Level::new(7.0)?).uncertainty() > 0.0);
    /// // What was measured does not depend on the model.
    /// assert!(Swatch::measured(Lab::new(57.0, 5.0, 28.0, White::D65TenDegree)?).uncertainty() < 1e-9);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn uncertainty(&self) -> f64 {
        let [best, ..] = self.samples.map(super::lab_of);
        self.samples.iter().map(|sample| ciede2000(best, super::lab_of(*sample))).fold(0.0, f64::max)
    }
}

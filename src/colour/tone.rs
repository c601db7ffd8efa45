use super::Hue;
use crate::quantity::Share;
use schemars::JsonSchema;
use serde::Serialize;
use std::fmt;

/// Which way a colour leans: the hues in it and how much of the tone each makes up.
///
/// A neutral tone has no parts. The shares of a tone that has parts add up to 100 %; how deep the colour is belongs to
/// the [`Level`](super::Level), not to the tone.
#[derive(Debug, Clone, PartialEq, Default, Serialize, JsonSchema)]
#[serde(transparent)]
pub struct Tone {
    parts: Vec<TonePart>,
}

/// One hue of a tone.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, JsonSchema)]
pub struct TonePart {
    /// The hue.
    pub hue: Hue,
    /// Its share of the tone, in percent.
    pub share_percent: f64,
}

impl Tone {
    /// No lean: natural, neutral.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::colour::Tone;
    ///
    /// assert!(Tone::neutral().is_neutral() && Tone::neutral().main_hue().is_none());
    /// ```
    #[must_use]
    pub const fn neutral() -> Self {
        Self { parts: Vec::new() }
    }

    /// A tone of one hue.
    #[must_use]
    pub fn of(hue: Hue) -> Self {
        Self { parts: vec![TonePart { hue, share_percent: 100.0 }] }
    }

    /// A tone from its hues, the main one first: each following hue counts half as much as the one before.
    ///
    /// That halving is assumed: charts print a primary and a secondary tone without saying how much of each there is.
    /// A hue named twice counts twice, so `[violet, violet]` is a plain violet. No hue at all is neutral.
    ///
    /// ```
    /// use foilwork::colour::{Hue, Tone};
    ///
    /// let beige = Tone::from_hues([Hue::Yellow, Hue::Violet]);
    /// assert_eq!(beige.to_string(), "yellow 67 %, violet 33 %");
    /// assert_eq!(Tone::from_hues([]).to_string(), "neutral");
    /// ```
    #[must_use]
    pub fn from_hues(hues: impl IntoIterator<Item = Hue>) -> Self {
        let mut weight = 2.0;
        Self::from_weights(hues.into_iter().map(|hue| {
            weight /= 2.0;
            (hue, weight)
        }))
    }

    /// The tone of a mixture: each tone counts by its share. A neutral tone dilutes nothing here; its effect is on the
    /// strength of the mixture, not on the direction of its lean.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{colour::{Hue, Tone}, quantity::Share};
    ///
    /// let (violet, blue, plain) = (Tone::of(Hue::Violet), Tone::of(Hue::Blue), Tone::neutral());
    /// let (three, one) = (Share::from_percent(75.0)?, Share::from_percent(25.0)?);
    /// let mixed = Tone::blend([(&violet, three), (&blue, one)]);
    /// assert_eq!(mixed.main_hue(), Some(Hue::Violet));
    /// assert_eq!(mixed.complement().main_hue(), Some(Hue::Yellow));
    /// assert_eq!(Tone::blend([(&violet, one), (&plain, three)]), violet); // weaker, no other direction
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn blend<'a>(parts: impl IntoIterator<Item = (&'a Self, Share)>) -> Self {
        Self::from_weights(parts.into_iter().flat_map(|(tone, share)| {
            tone.parts.iter().map(move |part| (part.hue, part.share_percent * share.fraction()))
        }))
    }

    /// The tone of exactly these parts, as [`parts`](Self::parts) gave them; none unless they are 100 % together.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::colour::{Hue, Tone};
    ///
    /// let tone = Tone::from_hues([Hue::Violet, Hue::Blue]);
    /// assert_eq!(Tone::from_parts(tone.parts()), Some(tone.clone()));
    /// assert_eq!(Tone::from_parts(&tone.parts()[..1]), None);
    /// ```
    #[must_use]
    pub fn from_parts(parts: &[TonePart]) -> Option<Self> {
        let total: f64 = parts.iter().map(|part| part.share_percent).sum();
        let whole = parts.is_empty() || (total - 100.0).abs() < 1e-9;
        (whole && parts.iter().all(|part| part.share_percent > 0.0)).then(|| Self { parts: parts.to_vec() })
    }

    fn from_weights(weights: impl IntoIterator<Item = (Hue, f64)>) -> Self {
        let mut parts: Vec<TonePart> = Vec::new();
        for (hue, weight) in weights {
            match parts.iter_mut().find(|part| part.hue == hue) {
                Some(part) => part.share_percent += weight,
                None => parts.push(TonePart { hue, share_percent: weight }),
            }
        }
        parts.retain(|part| part.share_percent > 0.0);
        let total: f64 = parts.iter().map(|part| part.share_percent).sum();
        for part in &mut parts {
            part.share_percent *= 100.0 / total;
        }
        parts.sort_by(|a, b| b.share_percent.total_cmp(&a.share_percent).then(a.hue.cmp(&b.hue)));
        Self { parts }
    }

    /// The hues, largest share first.
    #[must_use]
    pub fn parts(&self) -> &[TonePart] {
        &self.parts
    }

    /// Whether there is no lean.
    #[must_use]
    pub fn is_neutral(&self) -> bool {
        self.parts.is_empty()
    }

    /// The hue with the largest share.
    #[must_use]
    pub fn main_hue(&self) -> Option<Hue> {
        self.parts.first().map(|part| part.hue)
    }

    /// The tone that counteracts this one, hue by hue.
    #[must_use]
    pub fn complement(&self) -> Self {
        Self::from_weights(self.parts.iter().map(|part| (part.hue.complement(), part.share_percent)))
    }
}

impl fmt::Display for Tone {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self.parts.as_slice() {
            [] => f.write_str("neutral"),
            [only] => write!(f, "{}", only.hue),
            parts => {
                for (place, part) in parts.iter().enumerate() {
                    let comma = if place == 0 { "" } else { ", " };
                    write!(f, "{comma}{} {:.0} %", part.hue, part.share_percent)?;
                }
                Ok(())
            }
        }
    }
}

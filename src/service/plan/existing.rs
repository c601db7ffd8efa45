//! Colour that is already there, by zone or in cm along the strand.

use crate::{
    colour::Level,
    hair::{Band, BandedStrand},
    quantity::{Length, Quantity},
    service::{
        file::Problems,
        request::InField,
        shape::{Analysis, ExistingColour, Zone},
    },
    source::Interval,
    text::number,
};
use schemars::JsonSchema;
use serde::Serialize;
use std::fmt;

/// Colour that is already there.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct Existing {
    /// Where along the strand, where it is stated as a zone.
    pub zone: Option<Zone>,
    /// Where it begins, where it is stated in cm.
    #[serde(rename = "from_cm")]
    pub from: Option<Length>,
    /// Where it ends, where it is stated in cm.
    #[serde(rename = "to_cm")]
    pub to: Option<Length>,
    /// Its level now.
    pub level: Level,
    /// Its tone in the words of the file.
    pub tone: Option<String>,
    /// Whether it is artificial colour.
    pub artificial: bool,
}

/// Where it is.
impl fmt::Display for Existing {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match (self.zone, self.from, self.to) {
            (_, Some(from), Some(to)) => write!(f, "{} to {} cm", number(from.cm(), 1), number(to.cm(), 1)),
            (Some(zone), ..) => zone.fmt(f),
            _ => f.write_str("somewhere"),
        }
    }
}

impl Existing {
    pub(super) fn covers(&self, stretch: Zone) -> bool {
        self.zone.is_some_and(|zone| zone.covers(stretch))
    }

    /// How much of a stretch in cm it is.
    pub(super) fn within(&self, (from, to): (Length, Length)) -> Option<Length> {
        let (begin, end) = self.from.zip(self.to)?;
        let cm = end.cm().min(to.cm()) - begin.cm().max(from.cm());
        (cm > 1e-6).then(|| Length::nearest(cm))
    }
}

/// What the file states, every number a quantity.
pub(super) fn read(analysis: &Analysis) -> Result<Vec<Existing>, Problems> {
    let length = analysis.length_cm.map(Length::from_cm).transpose().in_field("analysis.length_cm")?;
    let one = |(i, entry): (usize, &ExistingColour)| {
        let field = |name: &str| format!("analysis.existing[{}].{name}", i + 1);
        let cm = |value: Option<f64>, name: &str| value.map(Length::from_cm).transpose().in_field(&field(name));
        let from = cm(entry.from_cm, "from_cm")?;
        let to = cm(entry.to_cm, "to_cm")?.or(from.and(length));
        if from.is_some() && length.is_none() {
            return Err("missing: bands in cm need the length of the hair").in_field("analysis.length_cm");
        }
        if from.is_none() && to.is_some() {
            let message = "stands without `from_cm`: give both, or `zone` alone";
            return Err(message).in_field(&field("to_cm"));
        }
        Ok(Existing {
            zone: entry.zone,
            from,
            to,
            level: Level::new(entry.level).in_field(&field("level"))?,
            tone: entry.tone.clone(),
            artificial: entry.artificial,
        })
    };
    let all: Vec<Existing> = analysis.existing.iter().enumerate().map(one).collect::<Result<_, Problems>>()?;
    let mixed =
        all.iter().any(|existing| existing.zone.is_some()) && all.iter().any(|existing| existing.from.is_some());
    if mixed {
        let message = "some of it is stated by `zone`, some by `from_cm`: state all of it one way";
        return Err(message).in_field("analysis.existing");
    }
    Ok(all)
}

/// The strand from the scalp to the ends: what no band covers is natural.
pub(super) fn strand(
    existing: &[Existing],
    analysis: &Analysis,
    natural: Interval<Level>,
) -> Result<Option<BandedStrand>, Problems> {
    let stated = existing.iter().enumerate().filter_map(|(i, one)| Some((i, one, one.from?, one.to?)));
    let mut stated: Vec<_> = stated.collect();
    let Some(cm) = analysis.length_cm.filter(|_| !stated.is_empty()) else { return Ok(None) };
    let length = Length::from_cm(cm).in_field("analysis.length_cm")?;
    stated.sort_by(|(.., one, _), (.., other, _)| one.partial_cmp(other).unwrap_or(std::cmp::Ordering::Equal));
    let mut bands: Vec<Band> = Vec::new();
    let mut end = Length::MIN;
    let grown = |from, to| Band { from, to, level: natural.best(), tone: None, artificial: false };
    for (i, one, from, to) in stated {
        let field = format!("analysis.existing[{}]", i + 1);
        if from >= length {
            let message =
                format!("{from} is beyond the ends, `analysis.length_cm` is {length}: correct one of the two");
            return Err(message).in_field(&format!("{field}.from_cm"));
        }
        if to <= from {
            let message = format!("{to} is not behind `from_cm` {from}: swap them");
            return Err(message).in_field(&format!("{field}.to_cm"));
        }
        if to > length {
            let message = format!("{to} is beyond the ends, `analysis.length_cm` is {length}: correct one of the two");
            return Err(message).in_field(&format!("{field}.to_cm"));
        }
        if from < end {
            let message = format!(
                "{from} lies in the band before, which ends at {end}: begin at {end}, or end that one at {from}"
            );
            return Err(message).in_field(&format!("{field}.from_cm"));
        }
        if from > end {
            bands.push(grown(end, from));
        }
        // Lightened hair is not as it grows either.
        let artificial = one.artificial || one.level > natural.high();
        bands.push(Band { from, to, level: one.level, tone: one.tone.clone(), artificial });
        end = to;
    }
    if end < length {
        bands.push(grown(end, length));
    }
    BandedStrand::new(length, bands).map(Some).in_field("analysis.existing")
}

//! What the file says of the hair's colour before toning, section by section.

use crate::{
    colour::{Instrument, Lab, ReadingError, SeenPigment},
    reader::{InField, Problems},
    service::{request::Request, shape::Porosity},
    toner::{KnownStart, ToningPorosity},
};

/// What is known of a section (by its place in the file), and what it was measured with: its own words, else those of the
/// analysis.
pub(super) fn of_section(request: &Request, place: usize) -> Result<(KnownStart, Option<Instrument>), Problems> {
    let analysis = &request.file.analysis;
    if let Some(section) = request.file.section.get(place) {
        let field = format!("section[{}]", place + 1);
        let own = read(section.measured.as_deref(), section.measured_with, section.seen.as_deref(), &field)?;
        if own.0 != KnownStart::default() {
            return Ok(own);
        }
    }
    read(analysis.measured.as_deref(), analysis.measured_with, analysis.seen.as_deref(), "analysis")
}

fn read(
    measured: Option<&str>,
    with: Option<Instrument>,
    seen: Option<&str>,
    field: &str,
) -> Result<(KnownStart, Option<Instrument>), Problems> {
    if measured.is_some() && with == Some(Instrument::Photograph) {
        return Err(ReadingError::Photograph).in_field(&format!("{field}.measured_with"));
    }
    let known = KnownStart {
        measured: measured.map(str::parse::<Lab>).transpose().in_field(&format!("{field}.measured"))?,
        seen: seen.map(str::parse::<SeenPigment>).transpose().in_field(&format!("{field}.seen"))?,
    };
    Ok((known, known.measured.map(|_| with.unwrap_or(Instrument::Spectrophotometer))))
}

/// How readily the hair takes up a toner; hair that differs along the strand counts as porous.
pub(super) const fn porosity(stated: Option<Porosity>) -> ToningPorosity {
    match stated {
        Some(Porosity::High | Porosity::Uneven) => ToningPorosity::Porous,
        _ => ToningPorosity::Normal,
    }
}

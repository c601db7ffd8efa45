use super::level::AnyLevel;
use crate::{
    answer::Reduced,
    error::{FoilworkError, raise},
    sequence::Sequence,
};
use foilwork::{
    colour::{self, Hue, Tone, TonePart},
    quantity::Share,
    reader::Format,
    shop::{self, Shop},
};
use pyo3::prelude::*;
use std::hash::{DefaultHasher, Hash, Hasher};

/// One shade of your own chart.
///
/// Args:
///     code: the code printed on the tube.
///     level: level it gives on white hair, a number, a text or a ``Level``.
///     tones: hue words, the main one first; each following one counts half as much. Empty is neutral.
///     strength_percent: how much it deposits of what its level says; 0 is a clear diluter.
///
/// Raises:
///     FoilworkError: no code, a level off the scale, a word that is not one of the twelve hues.
///
/// Examples:
///     >>> from foilwork.colour import Shade
///     >>> Shade("J9-mist", 9, ["violet"])
///     <Shade J9-mist (level 9, violet)>
#[pyclass(frozen, module = "foilwork.colour", eq)]
#[derive(Clone, PartialEq)]
pub struct Shade(pub colour::Shade);

pub fn tone_of(words: &[String]) -> PyResult<Tone> {
    let hues = words.iter().map(|word| word.parse::<Hue>()).collect::<Result<Vec<_>, _>>().map_err(raise)?;
    Ok(Tone::from_hues(hues))
}

#[pymethods]
impl Shade {
    #[new]
    #[pyo3(signature = (code, level, tones = Sequence(Vec::new()), strength_percent = 100.0), text_signature = "(code, level, tones=(), strength_percent=100.0)")]
    #[expect(clippy::needless_pass_by_value, reason = "extracted from Python")]
    fn new(code: &str, level: AnyLevel, tones: Sequence<String>, strength_percent: f64) -> PyResult<Self> {
        let tones = tones.0;
        let shade = colour::Shade::new(code, level.0, tone_of(&tones)?).map_err(raise)?;
        Ok(Self(shade.with_strength(Share::from_percent(strength_percent).map_err(raise)?)))
    }

    /// The code printed on the tube.
    #[getter]
    fn code(&self) -> &str {
        self.0.code()
    }

    /// The level it gives on white hair.
    #[getter]
    fn level(&self) -> f64 {
        self.0.level().number()
    }

    /// The hues of its tone with their shares in percent, largest first.
    #[getter]
    fn tones(&self) -> Vec<(&'static str, f64)> {
        self.0.tone().parts().iter().map(|part| (part.hue.words(), part.share_percent)).collect()
    }

    /// How much it deposits of what its level says, in percent.
    #[getter]
    fn strength_percent(&self) -> f64 {
        self.0.strength().percent()
    }

    fn __hash__(&self) -> u64 {
        let mut hasher = DefaultHasher::new();
        (self.0.code(), self.0.level().number().to_bits(), self.0.strength().percent().to_bits()).hash(&mut hasher);
        hasher.finish()
    }

    fn __reduce__<'py>(slf: &Bound<'py, Self>) -> PyResult<Reduced<'py>> {
        let shade = slf.get();
        let state = (shade.code(), shade.level(), shade.tones(), shade.strength_percent());
        Ok((slf.get_type().getattr("_restore")?, state.into_pyobject(slf.py())?))
    }

    #[staticmethod]
    fn _restore(code: &str, level: f64, tones: Sequence<(String, f64)>, strength_percent: f64) -> PyResult<Self> {
        let tones = tones.0;
        let part =
            |(hue, share_percent): (String, f64)| Ok(TonePart { hue: hue.parse().map_err(raise)?, share_percent });
        let parts = tones.into_iter().map(part).collect::<PyResult<Vec<_>>>()?;
        let tone = Tone::from_parts(&parts).ok_or_else(|| FoilworkError::new_err("not the tones of a shade"))?;
        let shade = colour::Shade::new(code, colour::Level::new(level).map_err(raise)?, tone).map_err(raise)?;
        Ok(Self(shade.with_strength(Share::from_percent(strength_percent).map_err(raise)?)))
    }

    fn __str__(&self) -> String {
        self.0.to_string()
    }

    fn __repr__(&self) -> String {
        format!("<Shade {}>", self.0)
    }
}

/// Read the shades of a shop file.
///
/// Args:
///     text: the text of a TOML shop file; see ``examples/juniper_and_tide.toml``.
///
/// Returns:
///     The shades in the order of the file.
///
/// Raises:
///     FoilworkError: everything that is wrong with the file, each with its line and the way out.
///
/// Examples:
///     >>> from foilwork.colour import read_shades
///     >>> read_shades('''
///     ... name = "Juniper & Tide"
///     ... [[shade]]
///     ... code = "J9-mist"
///     ... level = 9
///     ... tones = ["violet"]
///     ... class = "demi"
///     ... ratio = "1:2"
///     ... ''')
///     [<Shade J9-mist (level 9, violet)>]
#[pyfunction]
pub fn read_shades(text: &str) -> PyResult<Vec<Shade>> {
    let shop = shop::parse_shop(text, Format::Toml).and_then(|file| Shop::new(&file)).map_err(raise)?;
    Ok(shop.colours().cloned().map(Shade).collect())
}

//! Wrappers of `foilwork::hair`: what colour lies where along a strand.

use crate::{answer::answer, colour::AnyLevel, error::raise, sequence::Sequence};
use foilwork::{colour::Level, hair, quantity::Length};
use pyo3::prelude::*;

answer! {
    in "foilwork.hair";
    /// One colour on a stretch of the strand.
    ///
    /// Args:
    ///     from_cm: where it begins, from the scalp.
    ///     to_cm: where it ends.
    ///     level: its level.
    ///     artificial: whether it was lightened or coloured.
    ///     tone: its tone in words.
    ///
    /// Raises:
    ///     FoilworkError: a value out of range.
    ///
    /// Examples:
    ///     >>> from foilwork.hair import Band
    ///     >>> Band(0, 4, 5).artificial
    ///     False
    Band {
        /// Where it begins, from the scalp, in cm.
        from_cm: f64,
        /// Where it ends, in cm.
        to_cm: f64,
        /// Its level.
        level: f64,
        /// Whether it was lightened or coloured.
        artificial: bool,
        /// Its tone in words.
        tone: Option<String>,
    }
    impl {
        #[new]
        #[pyo3(signature = (from_cm, to_cm, level, artificial = false, tone = None))]
        fn new(from_cm: f64, to_cm: f64, level: AnyLevel, artificial: bool, tone: Option<String>) -> PyResult<Self> {
            let made = Self { from_cm, to_cm, level: level.0.number(), artificial, tone };
            made.core()?;
            Ok(made)
        }
    }
}

impl Band {
    fn core(&self) -> PyResult<hair::Band> {
        Ok(hair::Band {
            from: Length::from_cm(self.from_cm).map_err(raise)?,
            to: Length::from_cm(self.to_cm).map_err(raise)?,
            level: Level::new(self.level).map_err(raise)?,
            tone: self.tone.clone(),
            artificial: self.artificial,
        })
    }
}

answer! {
    in "foilwork.hair";
    /// What lies along a strand, from the scalp to the ends, without a gap.
    ///
    /// Args:
    ///     length_cm: how long the hair is.
    ///     bands: the bands in order from the scalp.
    ///
    /// Raises:
    ///     FoilworkError: bands that overlap, leave a gap, or do not end where the hair ends.
    ///
    /// Examples:
    ///     >>> from foilwork.hair import Band, BandedStrand
    ///     >>> strand = BandedStrand(30, [Band(0, 4, 5), Band(4, 30, 8, artificial=True)])
    ///     >>> strand.level_at(10), strand.overlap_cm(0, 6), strand.regrowth_cm
    ///     (8.0, 2.0, 4.0)
    BandedStrand {
        /// How long the hair is, in cm.
        length_cm: f64,
        /// The bands from the scalp on.
        bands: Vec<Band>,
    }
    impl {
        #[new]
        fn new(length_cm: f64, bands: Sequence<Band>) -> PyResult<Self> {
            let made = Self { length_cm, bands: bands.0 };
            made.core()?;
            Ok(made)
        }

        /// The level at a place; ``None`` beyond the ends.
        ///
        /// Args:
        ///     at_cm: from the scalp.
        fn level_at(&self, at_cm: f64) -> PyResult<Option<f64>> {
            Ok(self.core()?.level_at(Length::from_cm(at_cm).map_err(raise)?).map(Level::number))
        }

        /// How much of a stretch is lightened or coloured already, in cm.
        ///
        /// Args:
        ///     from_cm: where the stretch begins.
        ///     to_cm: where it ends.
        fn overlap_cm(&self, from_cm: f64, to_cm: f64) -> PyResult<f64> {
            let cm = |cm: f64| Length::from_cm(cm).map_err(raise);
            Ok(self.core()?.overlap(cm(from_cm)?, cm(to_cm)?).cm())
        }

        /// Natural hair from the scalp on, in cm.
        #[getter]
        fn regrowth_cm(&self) -> PyResult<f64> {
            Ok(self.core()?.regrowth().cm())
        }
    }
}

impl BandedStrand {
    fn core(&self) -> PyResult<hair::BandedStrand> {
        let bands = self.bands.iter().map(Band::core).collect::<PyResult<_>>()?;
        hair::BandedStrand::new(Length::from_cm(self.length_cm).map_err(raise)?, bands).map_err(raise)
    }
}

use super::Exposed;
use crate::colour::{Lab, Level, SeenPigment};

/// What the user knows of the hair before toning, beside its levels: measured, or named as seen, or neither.
///
/// The most trusted counts: a measurement before a name, a name before the model.
///
/// # Example
///
/// ```
/// use foilwork::{colour::Level, toner::{KnownStart, ExposedBasis}};
///
/// let (natural, lifted) = (Some(Level::new(5.0)?), Level::new(9.0)?);
/// let seen = KnownStart { measured: None, seen: Some("pale yellow".parse()?) };
/// assert_eq!(seen.exposed(natural, lifted)?.start(), ExposedBasis::Seen);
/// assert_eq!(KnownStart::default().exposed(natural, lifted)?.start(), ExposedBasis::Modelled);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct KnownStart {
    /// Read from an instrument on the lightened hair.
    pub measured: Option<Lab>,
    /// Named by eye.
    pub seen: Option<SeenPigment>,
}

/// Nothing says how the hair looks, or the levels contradict each other.
#[derive(Debug, Clone, Copy, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum StartError {
    /// No natural level, no name and no measurement.
    #[error(
        "nothing says how the lightened hair looks: give its natural level, or the exposed pigment as seen (for example \
         \"pale yellow\"), or L*, a*, b* measured on it"
    )]
    Unknown,
    /// Lightener does not darken.
    #[error("the lifted {lifted} is darker than the natural {natural}: lifting makes it lighter (swap the two?)")]
    Darker {
        /// The natural level.
        natural: Level,
        /// The level it is said to be lifted to.
        lifted: Level,
    },
}

impl KnownStart {
    /// The hair, from what is known best.
    ///
    /// # Errors
    ///
    /// [`StartError::Unknown`] when there is neither a natural level nor a name nor a measurement, [`StartError::Darker`]
    /// when the lifted level is darker than the natural one.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{colour::Level, toner::KnownStart};
    ///
    /// assert!(KnownStart::default().exposed(None, Level::new(9.0)?).is_err());
    /// # Ok::<(), foilwork::colour::InvalidLevel>(())
    /// ```
    pub fn exposed(&self, natural: Option<Level>, lifted: Level) -> Result<Exposed, StartError> {
        if let Some(natural) = natural.filter(|natural| lifted < *natural) {
            return Err(StartError::Darker { natural, lifted });
        }
        match (self.measured, self.seen, natural) {
            (Some(lab), _, _) => Ok(Exposed::measured(lab, lifted)),
            (None, Some(seen), _) => Ok(Exposed::seen(seen, lifted)),
            (None, None, Some(natural)) => Ok(Exposed::lightened(natural, lifted)),
            (None, None, None) => Err(StartError::Unknown),
        }
    }
}

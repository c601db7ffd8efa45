use crate::{
    choice::choice,
    colour::{
        Bands, Fibre, Lab, Level, MODELS, Melanin, SeenPigment, Swatch, UnderlyingPigment, spectrum_of,
        underlying_pigment,
    },
    quantity::Share,
    source::Interval,
};

/// The hair a toner is put on: how it looks, how light it is, and how that is known.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Exposed {
    look: Swatch,
    level: Level,
    porosity: ToningPorosity,
    start: ExposedBasis,
    natural: Option<Level>,
    seen: Option<SeenPigment>,
}

choice! {
    /// How the hair before toning is known, most trusted first.
    ExposedBasis: "start" {
        /// Measured on the hair.
        Measured = "measured",
        /// Named by eye: a hue and how strong it looks.
        Seen = "seen" => "as seen",
        /// Modelled from the natural level and the level it was lifted to.
        Modelled = "modelled",
        /// White hair, without pigment.
        White = "white" => "white hair",
    }
}

choice! {
    /// How readily hair takes up liquid.
    #[derive(Default)]
    ToningPorosity: "porosity" {
        /// Not known or not remarkable.
        #[default]
        Normal = "normal",
        /// Takes up more and faster, as lightened hair usually does.
        Porous = "porous",
    }
}

/// How much more porous hair takes up in the same time (assumed; published diffusion of dye is 2.7 to 12.6 times as fast
/// in bleached hair, and uptake goes with its square root).
pub(super) const POROUS_UPTAKE: f64 = 1.5;
/// The most that it may take up: the square root of 12.6.
pub(super) const MOST_UPTAKE: f64 = 3.5;

impl ToningPorosity {
    /// The time that leaves the same deposit as on unremarkable hair, as a share of its time. Uptake goes with the square
    /// root of time.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::toner::ToningPorosity;
    ///
    /// let time = ToningPorosity::Porous.time();
    /// assert!(time.low().percent() < 45.0 && 44.0 < time.best().percent() && time.high().percent() == 100.0);
    /// ```
    ///
    /// # Source
    ///
    /// [`DYE_DIFFUSION`](crate::source::citations::colour::DYE_DIFFUSION); which porosity a head has is assumed.
    #[must_use]
    pub fn time(self) -> Interval<Share> {
        let share = |uptake: f64| Share::from_fraction(1.0 / (uptake * uptake)).unwrap_or(Share::ALL);
        match self {
            Self::Porous => Interval::ordered(share(MOST_UPTAKE), share(POROUS_UPTAKE), Share::ALL),
            Self::Normal => Interval::exact(Share::ALL),
        }
    }

    /// Share of a shade's full depth that is taken up.
    const fn of(self, uptake: f64) -> f64 {
        match self {
            Self::Normal => uptake,
            Self::Porous => (uptake * POROUS_UPTAKE).min(1.0),
        }
    }
}

impl Exposed {
    /// Hair of a natural level, lightened to another: modelled.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{colour::Level, toner::{Exposed, ExposedBasis}};
    ///
    /// let hair = Exposed::lightened(Level::new(4.0)?, Level::new(8.0)?);
    /// assert_eq!(hair.start(), ExposedBasis::Modelled);
    /// # Ok::<(), foilwork::colour::InvalidLevel>(())
    /// ```
    #[must_use]
    pub fn lightened(natural: Level, lifted: Level) -> Self {
        let look = Swatch::lightened(natural, lifted);
        Self {
            look,
            level: lifted,
            porosity: ToningPorosity::Normal,
            start: ExposedBasis::Modelled,
            natural: Some(natural),
            seen: None,
        }
    }

    /// Hair that was measured, and the level it was read as.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{colour::{Lab, Level, White}, toner::Exposed};
    ///
    /// let hair = Exposed::measured(Lab::new(57.0, 5.0, 28.0, White::D65TenDegree)?, Level::new(9.0)?);
    /// assert_eq!(hair.look().lab().l(), 57.0);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn measured(lab: Lab, level: Level) -> Self {
        let look = Swatch::measured(lab);
        Self { look, level, porosity: ToningPorosity::Normal, start: ExposedBasis::Measured, natural: None, seen: None }
    }

    /// Hair whose exposed pigment was named by eye, and the level it was read as.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{colour::Level, toner::Exposed};
    ///
    /// let hair = Exposed::seen("pale yellow".parse()?, Level::new(9.0)?);
    /// assert!(hair.look().lab().b() > 15.0);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn seen(pigment: SeenPigment, level: Level) -> Self {
        let look = pigment.look(level);
        Self {
            look,
            level,
            porosity: ToningPorosity::Normal,
            start: ExposedBasis::Seen,
            natural: None,
            seen: Some(pigment),
        }
    }

    /// White hair: a shade gives its own level there.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::toner::{Exposed, ExposedBasis};
    ///
    /// assert_eq!(Exposed::white().start(), ExposedBasis::White);
    /// ```
    #[must_use]
    pub fn white() -> Self {
        let look = Swatch::white();
        Self {
            look,
            level: Level::LIGHTEST,
            porosity: ToningPorosity::Normal,
            start: ExposedBasis::White,
            natural: None,
            seen: None,
        }
    }

    /// The same hair, known to be porous or not.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::toner::{Exposed, ToningPorosity};
    ///
    /// assert_eq!(Exposed::white().with_porosity(ToningPorosity::Porous).porosity(), ToningPorosity::Porous);
    /// ```
    #[must_use]
    pub const fn with_porosity(self, porosity: ToningPorosity) -> Self {
        Self { porosity, ..self }
    }

    /// How it looks before toning.
    #[must_use]
    pub const fn look(&self) -> &Swatch {
        &self.look
    }

    /// The level it was lifted to.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{colour::Level, toner::Exposed};
    ///
    /// let lifted = Level::new(8.0)?;
    /// assert_eq!(Exposed::lightened(Level::new(4.0)?, lifted).level(), lifted);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub const fn level(&self) -> Level {
        self.level
    }

    /// How readily it takes up liquid.
    #[must_use]
    pub const fn porosity(&self) -> ToningPorosity {
        self.porosity
    }

    /// How it is known.
    #[must_use]
    pub const fn start(&self) -> ExposedBasis {
        self.start
    }

    /// The warmth that somebody saw in it, or that the trade's list names when nobody looked; none where it was measured.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{colour::{Hue, Level}, toner::Exposed};
    ///
    /// let hair = Exposed::lightened(Level::new(3.0)?, Level::new(6.0)?);
    /// assert_eq!(hair.listed_warmth().map(|warmth| warmth.exposed.0), Some(Hue::Orange));
    /// assert_eq!(Exposed::white().listed_warmth(), None);
    /// # Ok::<(), foilwork::colour::InvalidLevel>(())
    /// ```
    #[must_use]
    pub fn listed_warmth(&self) -> Option<UnderlyingPigment> {
        match (self.start, self.seen) {
            (ExposedBasis::Seen, Some(seen)) => Some(seen.listed(self.level)),
            (ExposedBasis::Modelled, _) if self.natural.is_none_or(|natural| natural < self.level) => {
                Some(underlying_pigment(self.level).value).filter(|pigment| pigment.neutraliser.is_some())
            }
            _ => None,
        }
    }

    /// The pigment in it and the fibre around it under a set of assumptions, and how much of a shade it takes up.
    pub(super) fn behind(&self, set: usize) -> Option<(Bands, Fibre, f64)> {
        let model = MODELS.get(set)?;
        let uptake = match self.start {
            // On white hair and left to its full time a shade gives its own level; less is left to chance.
            ExposedBasis::White => (0.6 + 0.8 * model.with.uptake).min(1.0),
            _ => self.porosity.of(model.with.uptake),
        };
        let (hair, fibre) = match (self.start, self.natural) {
            (ExposedBasis::Modelled, Some(natural)) => {
                (Melanin::lightened(natural, self.level, model).absorption(model), model.fibre)
            }
            (ExposedBasis::White, _) => (Bands::ZERO, model.fibre),
            _ => model.fibre.behind(&spectrum_of(*self.look.samples.get(set)?, &model.fibre)),
        };
        Some((hair, fibre, uptake))
    }
}

use crate::{
    choice::choice,
    colour::{Lab, Level, Swatch},
};

/// The hair a toner is put on: how it looks and how light it is.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Exposed {
    look: Swatch,
    level: Level,
    porosity: Porosity,
}

choice! {
    /// How readily hair takes up liquid.
    #[derive(Default)]
    Porosity: "porosity" {
        /// Not known or not remarkable.
        #[default]
        Normal = "normal",
        /// Takes up more and faster, as lightened hair usually does.
        Porous = "porous",
    }
}

impl Exposed {
    /// Hair of a natural level, lightened to another: modelled.
    #[must_use]
    pub fn lightened(natural: Level, lifted: Level) -> Self {
        Self { look: Swatch::lightened(natural, lifted), level: lifted, porosity: Porosity::Normal }
    }

    /// Hair that was measured, and the level it was read as.
    #[must_use]
    pub fn measured(lab: Lab, level: Level) -> Self {
        Self { look: Swatch::measured(lab), level, porosity: Porosity::Normal }
    }

    /// The same hair, known to be porous or not.
    #[must_use]
    pub const fn with_porosity(self, porosity: Porosity) -> Self {
        Self { porosity, ..self }
    }

    /// How it looks before toning.
    #[must_use]
    pub const fn look(&self) -> &Swatch {
        &self.look
    }

    /// The level it was lifted to.
    #[must_use]
    pub const fn level(&self) -> Level {
        self.level
    }

    /// How readily it takes up liquid.
    #[must_use]
    pub const fn porosity(&self) -> Porosity {
        self.porosity
    }
}

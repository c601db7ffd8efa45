use crate::{
    choice::choice,
    source::{Sourced, citations::colour::EXAM_GUIDE},
};

choice! {
    /// One of the twelve hues of the colour wheel, named after the primaries it is mixed from.
    ///
    /// ```
    /// use foilwork::colour::Hue;
    ///
    /// assert_eq!(Hue::Orange.complement(), Hue::Blue);
    /// assert_eq!("blue violet".parse::<Hue>()?, Hue::YellowOrange.complement());
    /// # Ok::<(), foilwork::choice::UnknownChoice>(())
    /// ```
    Hue: "hue" {
        /// A primary.
        Red = "red",
        /// Between red and orange.
        RedOrange = "red-orange",
        /// Red and yellow.
        Orange = "orange",
        /// Between yellow and orange.
        YellowOrange = "yellow-orange",
        /// A primary, the lightest.
        Yellow = "yellow",
        /// Between yellow and green.
        YellowGreen = "yellow-green",
        /// Yellow and blue.
        Green = "green",
        /// Between blue and green.
        BlueGreen = "blue-green",
        /// A primary, the darkest and the only cool one.
        Blue = "blue",
        /// Between blue and violet.
        BlueViolet = "blue-violet",
        /// Blue and red.
        Violet = "violet",
        /// Between red and violet.
        RedViolet = "red-violet",
    }
}

choice! {
    /// The two halves of the wheel.
    Temper: "temper" {
        /// From red through orange and yellow to yellow-green.
        Warm = "warm",
        /// From green through blue and violet to red-violet.
        Cool = "cool",
    }
}

impl Hue {
    /// The place on the wheel, from 0 (red) to 11 (red-violet).
    #[must_use]
    pub const fn position(self) -> usize {
        self as usize
    }

    /// How many steps of the wheel lie between two hues, from 0 to 6.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::colour::Hue;
    ///
    /// assert_eq!(Hue::Red.steps_to(Hue::Violet), 2);
    /// ```
    #[must_use]
    pub const fn steps_to(self, other: Self) -> usize {
        let apart = self.position().abs_diff(other.position());
        if apart > 6 { 12 - apart } else { apart }
    }

    /// The hue opposite on the wheel, which mixes with this one to neutral.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{colour::Hue, source::Basis};
    ///
    /// assert_eq!(Hue::Orange.complement(), Hue::Blue);
    /// assert_eq!(Hue::Orange.complement_sourced().basis, Basis::Published);
    /// assert_eq!((Hue::Red.position(), Hue::RedViolet.position()), (0, 11));
    /// ```
    #[must_use]
    pub const fn complement(self) -> Self {
        match self {
            Self::Red => Self::Green,
            Self::RedOrange => Self::BlueGreen,
            Self::Orange => Self::Blue,
            Self::YellowOrange => Self::BlueViolet,
            Self::Yellow => Self::Violet,
            Self::YellowGreen => Self::RedViolet,
            Self::Green => Self::Red,
            Self::BlueGreen => Self::RedOrange,
            Self::Blue => Self::Orange,
            Self::BlueViolet => Self::YellowOrange,
            Self::Violet => Self::Yellow,
            Self::RedViolet => Self::YellowGreen,
        }
    }

    /// The complement with its basis: the pairs of primaries and secondaries are published, the pairs
    /// between them are common practice.
    #[must_use]
    pub const fn complement_sourced(self) -> Sourced<Self> {
        match self {
            Self::Red | Self::Green | Self::Orange | Self::Blue | Self::Yellow | Self::Violet => {
                Sourced::published(self.complement(), &EXAM_GUIDE)
            }
            _ => Sourced::common_practice(self.complement()),
        }
    }

    /// Warm or cool: the wheel is cut between yellow-green and green, and between red-violet and red.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::colour::{Hue, Temper};
    ///
    /// assert_eq!((Hue::Orange.temper(), Hue::Violet.temper()), (Temper::Warm, Temper::Cool));
    /// ```
    ///
    /// # Source
    ///
    /// [`COLOUR_TEXTBOOK`](crate::source::citations::colour::COLOUR_TEXTBOOK), which draws the halves so.
    #[must_use]
    pub const fn temper(self) -> Temper {
        match self {
            Self::Red | Self::RedOrange | Self::Orange | Self::YellowOrange | Self::Yellow | Self::YellowGreen => {
                Temper::Warm
            }
            _ => Temper::Cool,
        }
    }
}

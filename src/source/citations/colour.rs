//! Sources cited by the `colour` rules.

use crate::source::{Citation, Consulted};

/// In the order of the register.
pub const CITATIONS: &[Citation] = &[FORMULA_LEVEL, RESULT_LEVEL, EXAM_GUIDE, LEVEL_NAMES_US];

/// A worked example of the formula level.
pub const FORMULA_LEVEL: Citation = Citation {
    id: "ck12-blond",
    text: "CK-12 Foundation, Ratios: The Perfect Blond (real-world application), n.d.: natural 6, target 8, formula 10",
    consulted: Consulted::Retrieved,
};

/// The mean rule of permanent colour.
pub const RESULT_LEVEL: Citation = Citation {
    id: "colour-educator-2022",
    text: "Assuring final color level with accuracy, and companion posts (a colour educator's teaching blog, 2022): \
           result = (natural + applied) / 2 for permanent colour, white hair takes the shade level",
    consulted: Consulted::Retrieved,
};

/// Colour wheel, complements and the order of lightening stages.
pub const EXAM_GUIDE: Citation = Citation {
    id: "nc-cosmetology-7-2",
    text: "North Carolina cosmetology examination study guide, section 7.2, key takeaways",
    consulted: Consulted::Retrieved,
};

/// US names of levels.
pub const LEVEL_NAMES_US: Citation = Citation {
    id: "hair-pigment-2009",
    text: "Hair pigment (student blog, 2009): US names of levels 1 to 10",
    consulted: Consulted::Retrieved,
};

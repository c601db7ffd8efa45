//! Sources cited by the `colour` rules.

use crate::source::{Citation, Consulted};

/// In the order of the register.
pub const CITATIONS: &[Citation] =
    &[FORMULA_LEVEL, RESULT_LEVEL, EXAM_GUIDE, LEVEL_NAMES_US, CIEDE2000_PAPER, D65_WHITES, TRESS_COLOUR];

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

/// The colour-difference formula, with the test pairs.
pub const CIEDE2000_PAPER: Citation = Citation {
    id: "sharma-wu-dalal-2005",
    text: "Sharma, Wu, Dalal, The CIEDE2000 color-difference formula: implementation notes, supplementary test data, \
           and mathematical observations, Color Res. Appl. 30(1):21-30, 2005, Table 1 (as carried by the tests of \
           colour-science 0.4.7)",
    consulted: Consulted::Library,
};

/// Tristimulus values of the white D65 for both observers.
pub const D65_WHITES: Citation = Citation {
    id: "astm-e308-d65",
    text: "ASTM E308, tristimulus values of D65: 95.047 100 108.883 (2 degrees), 94.811 100 107.304 (10 degrees), as \
           carried by colour-science 0.4.7",
    consulted: Consulted::Library,
};

/// CIELAB of natural tresses.
pub const TRESS_COLOUR: Citation = Citation {
    id: "hair-luster-2000",
    text: "Measurement of hair luster, J. Cosmet. Sci. 51(5):293, 2000, Tables III and IV",
    consulted: Consulted::Retrieved,
};

/// Absorption of the two melanins in red, green and blue.
pub const MELANIN_ABSORPTION: Citation = Citation {
    id: "pbrt-v3-hair",
    text: "Pharr, Jakob, Humphreys, pbrt version 3, src/materials/hair.cpp, SigmaAFromConcentration, 2016 (implements \
           d'Eon et al. 2011 and Chiang et al. 2016)",
    consulted: Consulted::Retrieved,
};

/// Melanin concentrations of black, brown and blond hair.
pub const MELANIN_EXAMPLES: Citation = Citation {
    id: "pbr-4-fig-9-47",
    text: "Pharr, Jakob, Humphreys, Physically Based Rendering, 4th ed., Fig. 9.47 caption: eumelanin concentration 8.0 \
           (black), 2.0 (brown), 0.143 (blond)",
    consulted: Consulted::Retrieved,
};

/// The form of the reflectance, fitted to tresses.
pub const TRESS_MODEL: Citation = Citation {
    id: "open-hair-albedo",
    text: "hair albedo source file of an open 3D-figure project: exp(-2.7 sigma^0.7), exponents 0.5 to 0.7 fitted \
           equally well (secondary; its own sources were not seen)",
    consulted: Consulted::Retrieved,
};

/// Shares of the two melanins, low bound.
pub const MELANIN_SHARES_2001: Citation = Citation {
    id: "borges-2001",
    text: "Borges, Roberts, Wilkins, Rollins, Relationship of melanin degradation products to actual melanin content: \
           application to human hair, Anal. Biochem. 290:116-125, 2001, abstract",
    consulted: Consulted::Retrieved,
};

/// Shares of the two melanins, high bound.
pub const MELANIN_SHARES_2018: Citation = Citation {
    id: "pheomelanin-2018",
    text: "Acid hydrolysis reveals a low but constant level of pheomelanin in human black to brown hair, Pigment Cell \
           Melanoma Res., doi 10.1111/pcmr.12673, abstract: 11 to 17 %",
    consulted: Consulted::Retrieved,
};

/// Red hair resists lightening more than brown.
pub const PHEOMELANIN_RESISTS: Citation = Citation {
    id: "hair-cosmetics-review",
    text: "review of hair cosmetics, excerpt on bleaches: red hair is harder to decolorise than brown; order of stages \
           black, brown, red, orange, yellow, pale yellow, white",
    consulted: Consulted::Retrieved,
};

/// Hue angles of colour names.
pub const MUNSELL: Citation = Citation {
    id: "munsell-renotation",
    text: "Newhall, Nickerson, Judd, Final report of the O.S.A. subcommittee on the spacing of the Munsell colors, \
           J. Opt. Soc. Am. 33:385, 1943, renotation data as carried by colour-science 0.4.7",
    consulted: Consulted::Library,
};

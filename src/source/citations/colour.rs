//! Sources cited by the `colour` and `toner` rules.

use crate::source::cite;

cite! {
    /// A worked example of the formula level.
    FORMULA_LEVEL = "ck12-blond", Retrieved,
        "CK-12 Foundation, Ratios: The Perfect Blond (real-world application), n.d.: natural 6, target 8, formula 10";
    /// The mean rule of permanent colour.
    RESULT_LEVEL = "colour-educator-2022", Retrieved,
        "Assuring final color level with accuracy, and companion posts (a colour educator's teaching blog, 2022): \
           result = (natural + applied) / 2 for permanent colour, white hair takes the shade level";
    /// Colour wheel, complements and the order of lightening stages.
    EXAM_GUIDE = "nc-cosmetology-7-2", Retrieved,
        "North Carolina cosmetology examination study guide, section 7.2, key takeaways";
    /// US names of levels.
    LEVEL_NAMES_US = "hair-pigment-2009", Retrieved,
        "Hair pigment (student blog, 2009): US names of levels 1 to 10";
    /// The colour-difference formula, with the test pairs.
    CIEDE2000_PAPER = "sharma-wu-dalal-2005", Library,
        "Sharma, Wu, Dalal, The CIEDE2000 color-difference formula: implementation notes, supplementary test data, \
           and mathematical observations, Color Res. Appl. 30(1):21-30, 2005, Table 1 (as carried by the tests of \
           colour-science 0.4.7)";
    /// Tristimulus values of the white D65 for both observers.
    D65_WHITES = "astm-e308-d65", Library,
        "ASTM E308, tristimulus values of D65: 95.047 100 108.883 (2 degrees), 94.811 100 107.304 (10 degrees), as \
           carried by colour-science 0.4.7";
    /// CIELAB of natural tresses.
    TRESS_COLOUR = "hair-luster-2000", Retrieved,
        "Measurement of hair luster, J. Cosmet. Sci. 51(5):293, 2000, Tables III and IV";
    /// Absorption of eumelanin over the wavelength.
    MELANIN_SPECTRUM = "jacques-melanin-absorption", Retrieved,
        "S. L. Jacques, Optical absorption of melanin (web page of the Oregon Medical Laser Center): 1.70e12 nm^-3.48 per cm \
         in the melanosome, ten-fold variation of concentration expected";
    /// Absorption of pheomelanin over the wavelength.
    PHEOMELANIN_SPECTRUM = "pheomelanin-power-law", FromMemory,
        "power law of pheomelanin absorption, wavelength to the power -4.75";
    /// A yellow chromophore and two steps in bleaching, on which oxidised melanin rests; its spectrum is assumed.
    BLEACHING_STEPS = "prem-bleaching-2003", Retrieved,
        "Prem et al., New insights into the physicochemical effects of ammonia/peroxide bleaching of hair and Sepia melanins, \
         J. Cosmet. Sci. 54:395, 2003, p. 399";
    /// Relative power of daylight.
    D65_SPECTRUM = "iso-cie-11664-2", Library,
        "ISO/CIE 11664-2 (CIE standard illuminants), D65 from 400 to 700 nm, as carried by colour-science 0.4.7";
    /// Colour matching functions of both observers.
    OBSERVERS = "iso-cie-11664-1", Library,
        "ISO/CIE 11664-1 (CIE standard colorimetric observers): 1931 (2 degrees) and 1964 (10 degrees), 400 to 700 nm, as \
         carried by colour-science 0.4.7";
    /// How much faster dye diffuses into bleached hair.
    DYE_DIFFUSION = "dye-diffusion-bleached", Retrieved,
        "Evaluation of hair damage, J. Soc. Cosmet. Chem. 44(6), 1993: diffusion of a dye into the cortex 2.7 times as fast after \
         an hour in 6 % peroxide, 12.6 times after half an hour of bleach cream";
    /// What a photograph reads against an instrument.
    PHOTOGRAPHS = "photograph-hair-colour", Retrieved,
        "Vaughn, van Oorschot, Baindur-Hudson, hair colour by reflective spectrophotometry against digital image analysis, \
         Forensic Sci. Int. 183:97-101, 2009, abstract: L* of photographs 33 too light, r 0.6";
    /// The form of the reflectance, fitted to tresses.
    TRESS_MODEL = "open-hair-albedo", Retrieved,
        "hair albedo source file of an open 3D-figure project: exp(-2.7 sigma^0.7), exponents 0.5 to 0.7 fitted \
           equally well (secondary; its own sources were not seen)";
    /// Shares of the two melanins, low bound.
    MELANIN_SHARES_2001 = "borges-2001", Retrieved,
        "Borges, Roberts, Wilkins, Rollins, Relationship of melanin degradation products to actual melanin content: \
           application to human hair, Anal. Biochem. 290:116-125, 2001, abstract";
    /// Shares of the two melanins, high bound.
    MELANIN_SHARES_2018 = "pheomelanin-2018", Retrieved,
        "Acid hydrolysis reveals a low but constant level of pheomelanin in human black to brown hair, Pigment Cell \
           Melanoma Res., doi 10.1111/pcmr.12673, abstract: 11 to 17 %";
    /// Red hair resists lightening more than brown.
    PHEOMELANIN_RESISTS = "hair-cosmetics-review", Retrieved,
        "review of hair cosmetics, excerpt on bleaches: red hair is harder to decolorise than brown; order of stages \
           black, brown, red, orange, yellow, pale yellow, white";
    /// Hue angles of colour names.
    MUNSELL = "munsell-renotation", Library,
        "Newhall, Nickerson, Judd, Final report of the O.S.A. subcommittee on the spacing of the Munsell colors, \
           J. Opt. Soc. Am. 33:385, 1943, renotation data as carried by colour-science 0.4.7";
    /// Which half of the wheel is warm and which cool.
    COLOUR_TEXTBOOK = "open-textbook-hair-colour-2021", Retrieved,
        "Hair Colour for Hairstylists: Level 2 (open textbook, CC BY 4.0), BCcampus, 2021, section 1.1: cool colours run \
         from green to red-violet, warm ones from red to yellow-green";
}

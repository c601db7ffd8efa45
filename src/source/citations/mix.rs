//! Sources cited by the `mix` rules.

use crate::source::{
    Citation,
    Consulted::{self, FromMemory, Retrieved},
};

const fn cited(id: &'static str, text: &'static str, consulted: Consulted) -> Citation {
    Citation { id, text, consulted }
}

/// Half natural shade at half white.
pub const GREY_ARTICLE: Citation =
    cited("S61", "trade magazine web article on covering grey (excerpt of a stored copy seen)", Retrieved);

/// In the order of the register.
pub const CITATIONS: &[Citation] = &[
    GREY_ARTICLE,
    cited(
        "IBARAKI_KATOH_1988",
        "T. Ibaraki, N. Katoh, Resource Allocation Problems: Algorithmic Approaches, MIT Press, 1988 (greedy solution \
         of separable convex allocation)",
        FromMemory,
    ),
    cited(
        "NIST_HB44_C",
        "NIST Handbook 44, Appendix C, General Tables of Units of Measurement (US fluid ounce)",
        FromMemory,
    ),
    cited("CAS_CHECK_DIGIT", "CAS, Check Digit Verification of CAS Registry Numbers", FromMemory),
    cited("UK_WMA_1985", "Weights and Measures Act 1985 (United Kingdom), Schedule 1 (gallon)", FromMemory),
    cited("JP_STORAGE", "Japanese consumer page on storing and discarding hair dye mixtures", Retrieved),
    cited("HSE_COSHH", "Health and Safety Executive, COSHH and hairdressers: key messages", Retrieved),
    cited("HSE_GLOVE", "Health and Safety Executive, Glove trial (page updated 31 August 2021)", Retrieved),
    cited("JHCIA_LABEL", "Japan Hair Color Industry Association, checking labels before purchase", Retrieved),
    cited(
        "MACAN_2022",
        "Macan J and others, Respiratory toxicity of persulphate salts and their adverse effects on airways in \
         hairdressers: a systematic review, Int Arch Occup Environ Health 2022",
        Retrieved,
    ),
    cited(
        "NILSSON_2016",
        "Airborne persulfate during hair bleaching, Ann Occup Hyg 2016;60(1):90-100 (abstract)",
        Retrieved,
    ),
    cited(
        "HUEBER_2007",
        "Hueber-Becker F and others, Occupational exposure of hairdressers to [14C]-para-phenylenediamine-containing \
         oxidative hair dyes: a mass balance study, Food Chem Toxicol 2007;45(1):160-169 (abstract)",
        Retrieved,
    ),
    cited(
        "INCOMP_C",
        "web page on the metallic-salt strand test: hydrogen peroxide with drops of ammonia on cut hair",
        Retrieved,
    ),
];

//! Sources cited by the `mix` rules.

use crate::source::cite;

cite! {
    /// Half natural shade at half white.
    GREY_ARTICLE = "grey-article", Retrieved,
        "trade magazine web article on covering grey (excerpt of a stored copy seen)";
    /// Greedy allocation of whole units.
    IBARAKI_KATOH_1988 = "ibaraki-katoh-1988", FromMemory,
        "T. Ibaraki, N. Katoh, Resource Allocation Problems: Algorithmic Approaches, MIT Press, 1988 (greedy \
         solution of separable convex allocation)";
    /// The US fluid ounce.
    NIST_HANDBOOK_44_C = "nist-handbook-44-c", FromMemory,
        "NIST Handbook 44, Appendix C, General Tables of Units of Measurement (US fluid ounce; ounce of mass)";
    /// The check digit of a CAS number.
    CAS_CHECK_DIGIT = "cas-check-digit", FromMemory,
        "CAS, Check Digit Verification of CAS Registry Numbers";
    /// The UK gallon.
    UK_WEIGHTS_AND_MEASURES_ACT_1985 = "uk-weights-and-measures-act-1985", FromMemory,
        "Weights and Measures Act 1985 (United Kingdom), Schedule 1 (gallon)";
    /// Mixed dye is not kept.
    JP_DYE_STORAGE = "jp-dye-storage", Retrieved,
        "Japanese consumer page on storing and discarding hair dye mixtures";
    /// Gloves, dust and ventilation.
    HSE_COSHH_HAIRDRESSING = "hse-coshh-hairdressing", Retrieved,
        "Health and Safety Executive, COSHH and hairdressers: key messages";
    /// Which gloves, and how to wear them.
    HSE_GLOVE_TRIAL_2021 = "hse-glove-trial-2021", Retrieved,
        "Health and Safety Executive, Glove trial (page updated 31 August 2021)";
    /// What to look for on a label.
    JHCIA_LABELS = "jhcia-labels", Retrieved,
        "Japan Hair Color Industry Association, checking labels before purchase";
    /// Persulfates and the airways.
    MACAN_2022 = "macan-2022", Retrieved,
        "Macan J and others, Respiratory toxicity of persulphate salts and their adverse effects on airways in \
         hairdressers: a systematic review, Int Arch Occup Environ Health 2022";
    /// Persulfate in the air while lightening.
    NILSSON_2016 = "nilsson-2016", Retrieved,
        "Airborne persulfate during hair bleaching, Ann Occup Hyg 2016;60(1):90-100 (abstract)";
    /// Dye on gloves and on cut hair.
    HUEBER_2007 = "hueber-2007", Retrieved,
        "Hueber-Becker F and others, Occupational exposure of hairdressers to \
         [14C]-para-phenylenediamine-containing oxidative hair dyes: a mass balance study, Food Chem Toxicol \
         2007;45(1):160-169 (abstract)";
    /// Ingredients that set no peroxide free, as labels name them.
    LABEL_NAMES = "label-names", FromMemory,
        "common ingredients of hair colour, lightener and developer as labels name them; none sets peroxide free";
    /// Metal salts in the hair.
    METAL_SALT_STRAND_TEST = "metal-salt-strand-test", Retrieved,
        "web page on the metallic-salt strand test: hydrogen peroxide with drops of ammonia on cut hair";
}

//! Sources cited by the `lift` rules.

use crate::source::cite;

cite! {
    /// Levels of one tress against minutes, the only series found.
    LIGHTENING_SERIES = "lightening-series", Retrieved,
        "hairdresser's web page with a test on tresses: powder lightener 1 : 6 % developer 2, dry hair, no heat, levels of \
         a 20-step scale read by eye after 0, 10, 30, 50, 240 and 600 min";
    /// Peroxide and ammonia left in a bath with hair.
    PEROXIDE_IN_BATH = "peroxide-in-bath", Retrieved,
        "patent example: peroxide and ammonia left in 6 % H2O2 with 0.5 % NH4OH and dark brown hair, 32.2 C, with and \
         without EDTA";
    /// Order of bleaching in perhydroxyl.
    PERHYDROXYL_ORDER = "perhydroxyl-order", Retrieved,
        "kinetics of peroxide bleaching of cotton, 60 and 90 C: first order in perhydroxyl; order in total peroxide on \
         hair not found, 0.5 to 1 taken";
    /// Temperature and bleaching.
    BLEACHING_ACTIVATION = "bleaching-activation-energy", Retrieved,
        "no activation energy measured on hair; 71 kJ/mol on cotton, about 27 for dye into intact hair, about 0 into permed \
         hair: 50 (30 to 75) kJ/mol taken";
    /// Perhydroxyl and persulfate destroy each other.
    PERHYDROXYL_PERSULFATE = "perhydroxyl-persulfate", Retrieved,
        "base-activated persulfate in water: perhydroxyl and persulfate destroy each other one to one; persulfate alone is \
         stable for days";
    /// Diffusion of probes into hair.
    PROBE_DIFFUSION = "probe-diffusion-in-hair", Computed,
        "diffusion of two probes into hair; if transport rules, time grows with the square of the radius: 25, 35, 45 um as \
         0.5, 1, 1.65";
    /// Dye diffusion after bleaching.
    DIFFUSION_AFTER_BLEACHING = "diffusion-after-bleaching", Retrieved,
        "dye diffusion into the cortex: 2.7 times untreated after 60 min of 6 % H2O2, 12.6 times after 30 min of a bleach \
         cream";
    /// Water that a layer in open air loses.
    DRYING_IN_OPEN_AIR = "drying-in-open-air", FromMemory,
        "a wet surface in still air of 22 C and half saturated loses about 0.22 kg/m2 h of water (evaporation formula of \
         building services, (25 + 19 v)(xs - x)); of a layer of 0.25 to 2 kg/m2, two thirds water, half goes in 22 min to 3 h. \
         That dry lightener lifts no further is common practice; no measurement on hair found";
    /// Dissociation of hydrogen peroxide.
    PERHYDROXYL_PKA = "perhydroxyl-pka", Retrieved,
        "active species of peroxide bleaching is perhydroxyl, pKa 11.6";
    /// pH of mixes in print.
    MIXED_PH = "mixed-ph", Retrieved,
        "final pH of permanent colour 9.8 to 10.3, of mixed persulfate powder about 10, in reviews of hair colouring";
    /// Swelling of hair against pH.
    SWELLING_AGAINST_PH = "swelling-against-ph", Retrieved,
        "hair-science textbook, chapter 10: swelling of hair is constant from pH 2 to 9 and rises above 9";
    /// Cysteic acid against time.
    CYSTEIC_ACID = "cysteic-acid-square-root", Retrieved,
        "cysteic acid of bleached hair grows with the square root of time, even across the cortex (summary of the paper)";
    /// Denaturation and tensile data of bleached hair.
    TENSILE = "tensile-after-bleaching", Retrieved,
        "tensile figures of hair after 4 h in 6 % H2O2: yield stress 0.73, work to 20 % 0.61, modulus 0.89, breaking stress \
         0.85 of untreated; crystalline part untouched to 60 min, falls after 120";
    /// Damage at one level by weak and strong peroxide.
    DAMAGE_AT_ONE_LEVEL = "damage-at-one-level", Retrieved,
        "tresses bleached with 3 and 6 % to the same level: more damage to the cuticle at 6 %, which needs fewer sessions";
}

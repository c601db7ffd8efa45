//! Sources cited by the `peroxide` rules.

use crate::source::{Citation, Consulted};

/// In the order of the register.
pub const CITATIONS: &[Citation] = &[
    ATOMIC_WEIGHTS,
    CODATA,
    OXYGEN_GAS,
    WATER,
    MIXTURE_DENSITY,
    EASTON,
    BP_SIX,
    CLP,
    TRANSPORT,
    PRECURSORS_EU,
    PRECURSORS_UK,
];

/// Atomic weights of H and O.
pub const ATOMIC_WEIGHTS: Citation = Citation {
    id: "iupac-atomic-weights",
    text: "IUPAC abridged standard atomic weights, H 1.0080 and O 15.999, as shipped in periodictable 2.1.0",
    consulted: Consulted::Library,
};

/// The gas constant and the pressures behind the ideal molar volume.
pub const CODATA: Citation = Citation {
    id: "codata-2022",
    text: "CODATA recommended values 2022: molar gas constant 8.314 462 618 J/(mol K), exact; standard atmosphere 101 325 Pa",
    consulted: Consulted::Library,
};

/// The real molar volume of oxygen.
pub const OXYGEN_GAS: Citation = Citation {
    id: "schmidt-wagner-oxygen",
    text: "Schmidt & Wagner, equation of state for oxygen, evaluated with CoolProp 8.0.0 at 0 C",
    consulted: Consulted::Library,
};

/// The density of water.
pub const WATER: Citation = Citation {
    id: "kell-1975",
    text: "Kell, density of liquid water from 0 to 150 C, J. Chem. Eng. Data 20 (1975) 97; checked against IAPWS-95 to 4e-6 g/mL",
    consulted: Consulted::FromMemory,
};

/// The density polynomial of peroxide in water.
pub const MIXTURE_DENSITY: Citation = Citation {
    id: "peroxide-density-coefficients",
    text: "density of aqueous hydrogen peroxide, cubic in mass fraction and in temperature: coefficients printed without \
           a literature source in a public property library; checked against independent handbook points",
    consulted: Consulted::Retrieved,
};

/// The measurements such a fit rests on.
pub const EASTON: Citation = Citation {
    id: "easton-1952",
    text: "Easton, Mitchell & Wynne-Jones, Trans. Faraday Soc. 48 (1952) 796, abstract: density measured at 0, 10, 25, 50 \
           and 96 C, fitted within 1 part in 5000",
    consulted: Consulted::Retrieved,
};

/// The assay figures that fix what a volume means.
pub const BP_SIX: Citation = Citation {
    id: "bp-peroxide-6",
    text: "British Pharmacopoeia, Hydrogen Peroxide Solution (6 per cent): 1 mL of 0.02 M potassium permanganate is \
           1.701 mg of peroxide or 0.56 mL of oxygen",
    consulted: Consulted::Retrieved,
};

/// Harmonised classification in the European Union.
pub const CLP: Citation = Citation {
    id: "clp-annex-vi-atp20",
    text: "ECHA, unofficial table of harmonised classifications up to the 20th adaptation, Delegated Regulation (EU) \
           2023/1435",
    consulted: Consulted::Retrieved,
};

/// Transport of dangerous goods.
pub const TRANSPORT: Citation = Citation {
    id: "adr-imdg-code-tables",
    text: "two public code tables that cite ADR Table A and the IMDG code for UN 2984, 2014 and 2015",
    consulted: Consulted::Retrieved,
};

/// Explosives precursors in the European Union.
pub const PRECURSORS_EU: Citation = Citation {
    id: "eu-2019-1148",
    text: "Regulation (EU) 2019/1148 on the marketing and use of explosives precursors, consolidated text of 11 July 2019",
    consulted: Consulted::Retrieved,
};

/// Explosives precursors in the United Kingdom.
pub const PRECURSORS_UK: Citation = Citation {
    id: "uk-poisons-act-guidance",
    text: "Home Office, Supplying explosives precursors and poisons, updated 27 March 2024; notice of the Control of \
           Explosives Precursors Regulations 2014",
    consulted: Consulted::Retrieved,
};

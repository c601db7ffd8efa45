//! Sources cited by the `peroxide` rules.

use crate::source::cite;

cite! {
    /// Atomic weights of H and O.
    ATOMIC_WEIGHTS = "iupac-atomic-weights", Library,
        "IUPAC abridged standard atomic weights, H 1.0080 and O 15.999, as shipped in periodictable 2.1.0";
    /// The gas constant and the pressures behind the ideal molar volume.
    CODATA = "codata-2022", Library,
        "CODATA recommended values 2022: molar gas constant 8.314 462 618 J/(mol K), exact; standard atmosphere \
         101 325 Pa";
    /// The real molar volume of oxygen.
    OXYGEN_GAS = "schmidt-wagner-oxygen", Library,
        "Schmidt & Wagner, equation of state for oxygen, evaluated with CoolProp 8.0.0 at 0 C";
    /// The density of water.
    WATER = "kell-1975", FromMemory,
        "Kell, density of liquid water from 0 to 150 C, J. Chem. Eng. Data 20 (1975) 97; checked against IAPWS-95 \
         to 4e-6 g/mL";
    /// The density polynomial of peroxide in water.
    MIXTURE_DENSITY = "peroxide-density-coefficients", Retrieved,
        "density of aqueous hydrogen peroxide, cubic in mass fraction and in temperature: coefficients printed \
         without a literature source in a public property library; checked against independent handbook points";
    /// The measurements such a fit rests on.
    EASTON = "easton-1952", Retrieved,
        "Easton, Mitchell & Wynne-Jones, Trans. Faraday Soc. 48 (1952) 796, abstract: density measured at 0, 10, \
         25, 50 and 96 C, fitted within 1 part in 5000";
    /// The assay figures that fix what a volume means.
    BP_SIX = "bp-peroxide-6", Retrieved,
        "British Pharmacopoeia, Hydrogen Peroxide Solution (6 per cent): 1 mL of 0.02 M potassium permanganate is \
         1.701 mg of peroxide or 0.56 mL of oxygen";
    /// How far a pharmacopoeial solution of 6 % may be off.
    BP_LIMITS = "bp-peroxide-6-limits", Retrieved,
        "British Pharmacopoeia, Hydrogen Peroxide Solution (6 per cent), as reproduced on a web page: 5.0 to 7.0 % w/v";
    /// The same for the solution that is named by its volumes.
    IP_LIMITS = "ip-peroxide-20-vol-limits", Retrieved,
        "Indian Pharmacopoeia, Hydrogen Peroxide Solution (20 Vol), summary on a teaching page: 5.0 to 7.0 % w/v";
    /// Harmonised classification in the European Union.
    CLP = "clp-annex-vi-atp20", Retrieved,
        "ECHA, unofficial table of harmonised classifications up to the 20th adaptation, Delegated Regulation \
         (EU) 2023/1435";
    /// Transport of dangerous goods.
    TRANSPORT = "adr-imdg-code-tables", Retrieved,
        "two public code tables that cite ADR Table A and the IMDG code for UN 2984, 2014 and 2015";
    /// Explosives precursors in the European Union.
    PRECURSORS_EU = "eu-2019-1148", Retrieved,
        "Regulation (EU) 2019/1148 on the marketing and use of explosives precursors, consolidated text of 11 \
         July 2019";
    /// Explosives precursors in the United Kingdom.
    PRECURSORS_UK = "uk-poisons-act-guidance", Retrieved,
        "Home Office, Supplying explosives precursors and poisons, updated 27 March 2024; notice of the Control \
         of Explosives Precursors Regulations 2014";
}

//! Sources cited by the `limits` rules.

use crate::source::{
    Citation,
    Consulted::{self, FromMemory, Library, Retrieved},
};

const fn cited(id: &'static str, text: &'static str, consulted: Consulted) -> Citation {
    Citation { id, text, consulted }
}

/// In the order of the register; the ids are those of the limit table.
pub const CITATIONS: &[Citation] = &[
    cited(
        "ECHA_A3_2024",
        "European Chemicals Agency, export \"Cosmetic Products Regulation, Annex III - Restricted Substances\", \
         export date 16 May 2024 (list as amended by Reg (EU) 2024/996)",
        Retrieved,
    ),
    cited(
        "COSING_A3_2025",
        "European Commission, CosIng, \"Annex III, last update 08/12/2025\", file created 25 December 2025",
        Retrieved,
    ),
    cited(
        "LEGUK_2019_831",
        "Commission Regulation (EU) 2019/831, Annex, as published on legislation.gov.uk",
        Retrieved,
    ),
    cited(
        "ECHA_PPD_PAGE",
        "ECHA, Cosmetic Products Regulation Annex III page for p-Phenylenediamine HCl (as amended by Reg (EU) \
         2024/996)",
        Retrieved,
    ),
    cited(
        "COSING_A2_2025",
        "European Commission, CosIng, \"Annex II, last update 08/12/2025\", file created 24 December 2025",
        Retrieved,
    ),
    cited(
        "CLP_ATP20",
        "ECHA, unofficial table of harmonised classifications up to the 20th adaptation (Delegated Reg (EU) \
         2023/1435)",
        Retrieved,
    ),
    cited("UK_1223_RET", "Regulation (EC) No 1223/2009 as assimilated UK law, Annex III", FromMemory),
    cited(
        "AU_SUSMP",
        "Therapeutic Goods (Poisons Standard) Instrument / Standard for the Uniform Scheduling of Medicines and \
         Poisons, hydrogen peroxide entries",
        FromMemory,
    ),
    cited(
        "TGA_2017_01",
        "Therapeutic Goods Administration, Scheduling delegate's final decisions, January 2017 (16 January 2017)",
        Retrieved,
    ),
    cited(
        "TGA_2014_12",
        "Therapeutic Goods Administration, Scheduling delegate's final decisions, ACCS part 2, 23 December 2014",
        Retrieved,
    ),
    cited(
        "NZ_NEWS_2012",
        "News report on a New Zealand Ministry of Health hair-dye survey and the Cosmetic Products Group \
         Standard, 23 January 2012",
        Retrieved,
    ),
    cited(
        "CN_NEWS_2025",
        "News report on the NIFDC draft technical guidance for hair-colouring cosmetics, quoting the Safety and \
         Technical Standards for Cosmetics, 13-14 August 2025",
        Retrieved,
    ),
    cited(
        "ASEAN_ACD_III",
        "ASEAN Cosmetic Directive, Annex III Part 1 (edition of 2 December 2009 reached by title)",
        FromMemory,
    ),
    cited(
        "JP_STD",
        "Ministry of Health, Labour and Welfare (Japan), Standards for marketing approval of hair colouring \
         agents, 25 March 2015, replaced 28 June 2021",
        FromMemory,
    ),
    cited("CA_HOTLIST", "Health Canada, Cosmetic Ingredient Hotlist (top of page only)", Retrieved),
    cited("CA_CR_S22", "Cosmetic Regulations, C.R.C., c. 869, section 22 (Canada)", Retrieved),
    cited("USC_21_361", "21 U.S.C. 361, Adulterated cosmetics", Retrieved),
    cited("FDA_QA", "US Food and Drug Administration, Cosmetics Safety Q&A: Hair Dyes", Retrieved),
    cited(
        "CIR_PERSULF_2001",
        "Pang S, Fiume MZ, Final report on the safety assessment of ammonium, potassium, and sodium persulfate, \
         Int J Toxicol 2001;20 Suppl 3:7-21 (abstract)",
        Retrieved,
    ),
    cited(
        "CIR_PERSULF_AMD",
        "Cosmetic Ingredient Review, Amended safety assessment of persulfates as used in cosmetics (draft 2016; \
         conclusion as summarised)",
        Retrieved,
    ),
    cited(
        "EU_2019_1148",
        "Regulation (EU) 2019/1148 on the marketing and use of explosives precursors, consolidated text 11 July \
         2019",
        Retrieved,
    ),
    cited(
        "GH_2019_1148",
        "Public code file quoting Annex I of Regulation (EU) 2019/1148 for hydrogen peroxide (secondary)",
        Retrieved,
    ),
    cited(
        "UK_PRECURSOR_2014",
        "Industry notice on the Control of Explosives Precursors Regulations 2014 with the concentration table \
         (pool trade newsletter)",
        Retrieved,
    ),
    cited("UK_GOV_PREC", "Home Office, Supplying explosives precursors and poisons, updated 27 March 2024", Retrieved),
    cited("LIB_CHEMICALS", "chemicals 1.5.2 (Python package), data table Ontario Exposure Limits", Library),
    cited("ACGIH_TLV", "ACGIH, TLVs and BEIs, persulfates as persulfate", FromMemory),
    cited(
        "SDS_H2O2_OEL",
        "Safety data sheet of a cleaning product, section 8, quoting OSHA Table Z-1, ACGIH and Canadian limits \
         for hydrogen peroxide",
        Retrieved,
    ),
    cited(
        "SOCKO_2013",
        "Socko R, Hydrogen peroxide. Documentation, Podstawy i Metody Oceny Srodowiska Pracy 2013;29(1) \
         (abstract)",
        Retrieved,
    ),
    cited(
        "LIB_CHEMICALS_ID",
        "chemicals 1.5.2 (Python package), identifier table: CAS number and molecular formula",
        Library,
    ),
    cited(
        "LIB_PERIODICTABLE",
        "periodictable 2.1.0 (Python package), standard atomic weights; molar masses calculated from the formula",
        Library,
    ),
];

//! Sources cited by the `limits` rules; the ids are those of the limit table.

use crate::source::cite;

cite! {
    /// EU Annex III as exported in 2024.
    ECHA_ANNEX_3_2024 = "echa-annex-3-2024", Retrieved,
        "European Chemicals Agency, export \"Cosmetic Products Regulation, Annex III - Restricted Substances\", \
         export date 16 May 2024 (list as amended by Reg (EU) 2024/996)";
    /// EU Annex III of December 2025.
    COSING_ANNEX_3_2025 = "cosing-annex-3-2025", Retrieved,
        "European Commission, CosIng, \"Annex III, last update 08/12/2025\", file created 25 December 2025";
    /// The act that set the peroxide entry as it stands.
    EU_2019_831 = "eu-2019-831", Retrieved,
        "Commission Regulation (EU) 2019/831, Annex, as published on legislation.gov.uk";
    /// The p-phenylenediamine entry.
    ECHA_PPD_PAGE = "echa-ppd-page", Retrieved,
        "ECHA, Cosmetic Products Regulation Annex III page for p-Phenylenediamine HCl (as amended by Reg (EU) \
         2024/996)";
    /// EU Annex II, prohibited substances.
    COSING_ANNEX_2_2025 = "cosing-annex-2-2025", Retrieved,
        "European Commission, CosIng, \"Annex II, last update 08/12/2025\", file created 24 December 2025";
    /// Harmonised classifications.
    CLP_20TH_ADAPTATION = "clp-20th-adaptation", Retrieved,
        "ECHA, unofficial table of harmonised classifications up to the 20th adaptation (Delegated Reg (EU) \
         2023/1435)";
    /// Annex III in Great Britain.
    UK_COSMETICS_REGULATION = "uk-cosmetics-regulation", FromMemory,
        "Regulation (EC) No 1223/2009 as assimilated UK law, Annex III";
    /// Peroxide schedules of Australia.
    AU_POISONS_STANDARD = "au-poisons-standard", FromMemory,
        "Therapeutic Goods (Poisons Standard) Instrument / Standard for the Uniform Scheduling of Medicines and \
         Poisons, hydrogen peroxide entries";
    /// Australian scheduling decisions, 2017.
    TGA_DECISIONS_2017_01 = "tga-decisions-2017-01", Retrieved,
        "Therapeutic Goods Administration, Scheduling delegate's final decisions, January 2017 (16 January 2017)";
    /// Australian scheduling decisions, 2014.
    TGA_DECISIONS_2014_12 = "tga-decisions-2014-12", Retrieved,
        "Therapeutic Goods Administration, Scheduling delegate's final decisions, ACCS part 2, 23 December 2014";
    /// New Zealand, as reported.
    NZ_HAIR_DYE_NEWS_2012 = "nz-hair-dye-news-2012", Retrieved,
        "News report on a New Zealand Ministry of Health hair-dye survey and the Cosmetic Products Group Standard, \
         23 January 2012";
    /// China, as reported.
    CN_HAIR_DYE_NEWS_2025 = "cn-hair-dye-news-2025", Retrieved,
        "News report on the NIFDC draft technical guidance for hair-colouring cosmetics, quoting the Safety and \
         Technical Standards for Cosmetics, 13-14 August 2025";
    /// ASEAN Annex III.
    ASEAN_ANNEX_3 = "asean-annex-3", FromMemory,
        "ASEAN Cosmetic Directive, Annex III Part 1 (edition of 2 December 2009 reached by title)";
    /// Japanese standards for hair colour.
    JP_HAIR_COLOUR_STANDARD = "jp-hair-colour-standard", FromMemory,
        "Ministry of Health, Labour and Welfare (Japan), Standards for marketing approval of hair colouring agents, \
         25 March 2015, replaced 28 June 2021";
    /// Canadian hotlist.
    CA_HOTLIST = "ca-hotlist", Retrieved,
        "Health Canada, Cosmetic Ingredient Hotlist (top of page only)";
    /// Canadian duty to warn and test.
    CA_COSMETIC_REGULATIONS_22 = "ca-cosmetic-regulations-22", Retrieved,
        "Cosmetic Regulations, C.R.C., c. 869, section 22 (Canada)";
    /// The United States proviso for coal-tar hair dye.
    US_CODE_21_361 = "us-code-21-361", Retrieved,
        "21 U.S.C. 361, Adulterated cosmetics";
    /// Advice on hair dye, United States.
    FDA_HAIR_DYE_QUESTIONS = "fda-hair-dye-questions", Retrieved,
        "US Food and Drug Administration, Cosmetics Safety Q&A: Hair Dyes";
    /// Expert panel on persulfates, 2001.
    CIR_PERSULFATES_2001 = "cir-persulfates-2001", Retrieved,
        "Pang S, Fiume MZ, Final report on the safety assessment of ammonium, potassium, and sodium persulfate, Int \
         J Toxicol 2001;20 Suppl 3:7-21 (abstract)";
    /// Expert panel on persulfates, 2016.
    CIR_PERSULFATES_2016 = "cir-persulfates-2016", Retrieved,
        "Cosmetic Ingredient Review, Amended safety assessment of persulfates as used in cosmetics (draft 2016; \
         conclusion as summarised)";
    /// The peroxide line of the precursors act, quoted.
    EU_2019_1148_QUOTED = "eu-2019-1148-quoted", Retrieved,
        "Public code file quoting Annex I of Regulation (EU) 2019/1148 for hydrogen peroxide (secondary)";
    /// Explosives precursors, Great Britain, as first made.
    UK_PRECURSORS_2014 = "uk-precursors-2014", Retrieved,
        "Industry notice on the Control of Explosives Precursors Regulations 2014 with the concentration table \
         (pool trade newsletter)";
    /// Explosives precursors, Great Britain, guidance.
    UK_PRECURSORS_2024 = "uk-precursors-2024", Retrieved,
        "Home Office, Supplying explosives precursors and poisons, updated 27 March 2024";
    /// Workplace limits of Ontario.
    CHEMICALS_ONTARIO = "chemicals-ontario", Library,
        "chemicals 1.5.2 (Python package), data table Ontario Exposure Limits";
    /// Workplace guide value for persulfates.
    ACGIH_TLV = "acgih-tlv", FromMemory,
        "ACGIH, TLVs and BEIs, persulfates as persulfate";
    /// Workplace limits for peroxide, quoted.
    SDS_PEROXIDE_AIR = "sds-peroxide-air", Retrieved,
        "Safety data sheet of a cleaning product, section 8, quoting OSHA Table Z-1, ACGIH and Canadian limits for \
         hydrogen peroxide";
    /// Polish workplace proposal for peroxide.
    SOCKO_2013 = "socko-2013", Retrieved,
        "Socko R, Hydrogen peroxide. Documentation, Podstawy i Metody Oceny Srodowiska Pracy 2013;29(1) (abstract)";
    /// Molecular formulas by CAS number.
    CHEMICALS_FORMULAS = "chemicals-formulas", Library,
        "chemicals 1.5.2 (Python package), identifier table: CAS number, molecular formula and names";
    /// Compounds that set hydrogen peroxide free, where no library has them.
    PEROXIDE_RELEASERS = "peroxide-releasers", FromMemory,
        "the formula of the compound (hydrate, or complex without a fixed content) as general chemistry has it";
    /// Atomic weights used for molar masses.
    PERIODICTABLE_WEIGHTS = "periodictable-weights", Library,
        "periodictable 2.1.0 (Python package), standard atomic weights; molar masses calculated from the formula";
}

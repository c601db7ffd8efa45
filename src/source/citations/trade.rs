//! Sources cited by the trade rules of the service plan.

use crate::source::cite;

cite! {
    /// When a lightener is looked at.
    CHECK_INTERVAL = "check-interval", Retrieved,
        "\"How long should bleach be left in hair\", web articles: first check after 15-20 min, then every 5-10 min";
    /// How long a mixed powder lightener stays active.
    LIGHTENER_ACTIVITY = "lightener-activity", Retrieved,
        "\"Hair bleaching, part 1\", web article: powder most active in the first 10-15 min, spent after 50 min";
    /// The label of oxidative hair dye in the EU.
    EU_DYE_LABEL = "eu-dye-label", Retrieved,
        "Regulation (EC) No 1223/2009, Annex III, label wording of the oxidative hair dye entries";
    /// Skin test before each use, North America.
    SKIN_TEST_US_CA = "skin-test-us-ca", Retrieved,
        "US FDA hair dye advice (2 days, every time); Canada, Cosmetic Regulations s. 22 (24 h, every time)";
    /// Metal salts and peroxide.
    INCOMPATIBILITY = "incompatibility", Retrieved,
        "three training pages on the incompatibility test: heat, bubbles, colour change or breaking mean stop";
    /// What the record of a colour service holds.
    CONSULTATION = "consultation", Retrieved,
        "SHBHCLS002 Colour and lighten hair (Commonwealth of Australia, 2016), elements 1-2; UK NOS SKAHDBR6 (2021)";
    /// Developer strength and lift of permanent colour.
    DEVELOPER_LIFT = "developer-lift", Retrieved,
        "North Carolina cosmetology examination study guide, section 7.2: lift of permanent colour by developer";
    /// How countries write dates, times and amounts of money.
    UNICODE_CLDR = "unicode-cldr", Library,
        "Unicode CLDR, locale data of numeric dates, times and currencies, as Babel 2.18.0 (Python package) ships it";
    /// Colour and lighten hair, Australia.
    UNIT_SHBHCLS002 = "au-shbhcls002", Retrieved,
        "SHBHCLS002 Colour and lighten hair, SkillsIQ for the Commonwealth of Australia, 2016: elements 1 and 2, skills list";
    /// Neutralise unwanted colours and tones, Australia.
    UNIT_SHBHCLS004 = "au-shbhcls004", Retrieved,
        "SHBHCLS004 Neutralise unwanted colours and tones, SkillsIQ for the Commonwealth of Australia, 2016: element 1, headings, \
         list of what is recorded";
    /// Solve complex colour problems, Australia.
    UNIT_SHBHCLS006 = "au-shbhcls006", Retrieved,
        "SHBHCLS006 Solve complex colour problems, SkillsIQ for the Commonwealth of Australia, 2016: headings of elements 1 to 7";
    /// Creatively colour and lighten, United Kingdom.
    UNIT_SKAHDBR6 = "uk-skahdbr6", Retrieved,
        "SKAHDBR6 Creatively colour and lighten the hair using advanced techniques, National Occupational Standard, 2021: \
         criteria 1 to 4.7";
    /// Corrective services, United Kingdom.
    UNIT_SKAHDBR7 = "uk-skahdbr7", Retrieved,
        "SKAHDBR7 Provide hair colour corrective services, National Occupational Standard: criteria 1 to 5.1";
    /// Colour correction, England.
    UNIT_D6001010 = "uk-d6001010", Retrieved,
        "D/600/1010 Provide colour correction services, Ofqual register, c. 2010: guidance range, 1.1 to 1.11, 2.1 to 2.4";
    /// Colour and lighten hair, England.
    UNIT_A6008630 = "uk-a6008630", Retrieved,
        "A/600/8630 Colour and lighten hair, unit sheet, c. 2010: criteria 1.1 to 1.17, 2.1 to 2.4";
    /// Full-head highlighting, New Zealand.
    UNIT_NZ12313 = "nz-12313", Retrieved,
        "Unit standard 12313 version 5, Perform a full-head highlighting service, NZQA, 2016: notes 3 and 4, 1.2";
    /// Bleach and tone, New Zealand.
    UNIT_NZ2889 = "nz-2889", Retrieved,
        "Unit standard 2889 version 5, Bleach and tone hair, NZQA, c. 2016: purpose, note 2";
    /// Permanent colour, New Zealand.
    UNIT_NZ19792 = "nz-19792", Retrieved,
        "Unit standard 19792, Select and apply permanent hair colour, NZQA, c. 2015: purpose, range, 1.1 to 1.3";
    /// Fundamentals of colour, New Zealand.
    UNIT_NZ28835 = "nz-28835", Retrieved,
        "Unit standard 28835 version 1, Fundamentals of colour and non-oxidative colour, NZQA, 2016: 1.1 to 1.5";
    /// Alters hair colour, Canada.
    UNIT_RED_SEAL_F = "ca-red-seal-f", Retrieved,
        "Hairstylist, Red Seal Occupational Standard, 2019: F-13.01 (01P to 10P, 01L, range of variables)";
}

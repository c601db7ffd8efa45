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
}

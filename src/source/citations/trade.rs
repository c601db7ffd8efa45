//! Sources cited by the trade rules of the service plan.

use crate::source::{Citation, Consulted::Retrieved};

/// When a lightener is looked at.
pub const CHECK_INTERVAL: Citation = Citation {
    id: "check-interval",
    text: "\"How long should bleach be left in hair\", web articles: first check after 15-20 min, then every 5-10 min",
    consulted: Retrieved,
};

/// How long a mixed powder lightener stays active.
pub const LIGHTENER_ACTIVITY: Citation = Citation {
    id: "lightener-activity",
    text: "\"Hair bleaching, part 1\", web article: powder most active in the first 10-15 min, spent after 50 min",
    consulted: Retrieved,
};

/// The label of oxidative hair dye in the EU.
pub const EU_DYE_LABEL: Citation = Citation {
    id: "eu-dye-label",
    text: "Regulation (EC) No 1223/2009, Annex III, label wording of the oxidative hair dye entries",
    consulted: Retrieved,
};

/// Skin test before each use, North America.
pub const SKIN_TEST_US_CA: Citation = Citation {
    id: "skin-test-us-ca",
    text: "US FDA hair dye advice (2 days, every time); Canada, Cosmetic Regulations s. 22 (24 h, every time)",
    consulted: Retrieved,
};

/// Metal salts and peroxide.
pub const INCOMPATIBILITY: Citation = Citation {
    id: "incompatibility",
    text: "three training pages on the incompatibility test: heat, bubbles, colour change or breaking mean stop",
    consulted: Retrieved,
};

/// What the record of a colour service holds.
pub const CONSULTATION: Citation = Citation {
    id: "consultation",
    text: "SHBHCLS002 Colour and lighten hair (Commonwealth of Australia, 2016), elements 1-2; UK NOS SKAHDBR6 (2021)",
    consulted: Retrieved,
};

/// Developer strength and lift of permanent colour.
pub const DEVELOPER_LIFT: Citation = Citation {
    id: "developer-lift",
    text: "North Carolina cosmetology examination study guide, section 7.2: lift of permanent colour by developer",
    consulted: Retrieved,
};

/// In the order of the register.
pub const CITATIONS: &[Citation] =
    &[CHECK_INTERVAL, LIGHTENER_ACTIVITY, EU_DYE_LABEL, SKIN_TEST_US_CA, INCOMPATIBILITY, CONSULTATION, DEVELOPER_LIFT];

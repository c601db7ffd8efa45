//! The service: what the user states, and the plan foilwork makes of it.
//!
//! # Read a request
//!
//! [`parse`] reads a service file (TOML or JSON of the same shape) and reports everything that is wrong with it;
//! [`parse_with_shop`] and [`from_value_with_shop`] lay a shop beside it that is a file of its own, which [`shop_file`] names.
//! The shape is [`ServiceFile`], in [`mod@shape`]; [`service_schema`] is for editors, [`starter`] writes a first file.
//!
//! # Make the plan
//!
//! [`plan`] turns a file into a [`Plan`], [`plan_text`] reads and plans at once; [`plan_with`] takes what strands have taught too,
//! from the book that [`strand_book`] names.
//!
//! # Read the plan
//!
//! Hair as it is ([`Hair`]), sections ([`SectionPlan`], with [`SectionLift`] and [`SectionColour`]), [`Mix`]es in [`Bowl`]s, [`Step`]s,
//! [`ChairTime`] and [`MoneyPlan`], each made from those before it; how it all will read ([`HeadPlan`]); what was checked
//! ([`Finding`](crate::finding::Finding)), taken by default ([`DefaultUsed`]) and left unused ([`StatedNotUsed`]). As plain data it has the shape
//! of [`plan_schema`].
//!
//! # Decide
//!
//! [`consult`] gives the [`ConsultationPlan`]: whether to go on and who has to agree ([`decide`] is a fold over the findings), what each
//! result of a test changes, the visits on the calendar ([`dated_visits`]), what else was considered, and what is agreed.
//!
//! # Lay it beside the bowl
//!
//! [`mixing_cards`] makes a [`BowlCard`] for each bowl. How a plan is drawn is the business of [`sheet`](crate::sheet).

mod consult;
mod file;
pub(crate) mod guest_words;
mod plan;
mod request;
pub mod shape;
mod starter;

pub use consult::{
    AgreedPrice, Agreement, Alternative, AlternativeKind, Concern, Consent, ConsultationPlan, DatedVisit, Decision, Go,
    LapsedAgreement, TestEffect, TestKind, consult, dated_visits, decide,
};
pub(crate) use consult::{before_signing, later};
pub use file::{from_value_with_shop, parse, parse_with_shop, records_named, service_schema, shop_file, strand_book};
pub use plan::{
    Agreed, Booking, Bowl, BowlCard, CardClock, CardMinutes, Caution, ChairClock, ChairTime, ChosenStrength,
    ConsumableLine, Contrast, CostRange, DayPlan, EndsPlan, Evidence, Existing, ExpectedLook, FirstPart, FirstStep,
    Hair, HeadPlan, HeadReading, HistoryGap, InPlace, InvalidSeenLevel, Lapsed, LeftOut, LeftOutCost, LevelRule,
    LevelStretch, LevelsAlong, Meeting, MeetingShade, Mix, MoneyPlan, NaturalShadeDose, NotComputed, OrderBasis,
    OrderedBy, PartKind, PartReading, PastService, Plan, PriceAt, PriceRange, PricedBy, RejectedStrength,
    RootShadowPlan, SaidBefore, SectionColour, SectionLift, SectionNeutralising, SectionPlan, SeenLevel, SeenNow,
    ShadowLength, Start, StatedNotUsed, Step, StockCover, StockLine, StockPlan, Substitute, TestDone, TogetherPlan,
    TogetherSection, Unknown, WeighedPart, WishHeld, WishSection, ZoneHair, ZoneLook, mixing_cards, plan, plan_schema,
    plan_text, plan_with,
};
pub(crate) use plan::{NOT_YET, if_all_reached, if_it_reaches, strength_decimals};
pub use request::{AppliedBy, Applying, CountedPanels, DefaultUsed, DefaultValue, FoilPace, WorkStage};
pub use shape::ServiceFile;
pub use starter::{Starter, starter};

//! The head as an area to work on: foils and what is in them, regions, gradient, and how it all will read.
//!
//! Plane geometry with stated sizes; what is done by hand is an estimate. Light adds up in reflectance, not in levels.
//!
//! # Take the hair
//!
//! A [`Layout`] of subsections on a [`Panel`] gives picks, share and foils; a [`Technique`] has a [`Profile`] along the strand.
//!
//! # Weigh it
//!
//! [`take_up`], [`film`] and [`demand`] give grams for a section and for a foil, and minutes; [`hair_by_use`] turns a [`PastUse`]
//! back into the mass of the hair.
//!
//! # Place it
//!
//! A [`Template`] of [`Region`]s; [`partition`] checks [`Placement`]s for overlap and gaps; a [`Gradient`] rises from the
//! outline inward and shares out the foils; a [`PartLine`]; [`OverDirection`] drops one line of colour to many heights.
//!
//! # Read it
//!
//! [`read_head`] for outline, interior and crown, [`Change`] for what to alter; [`read_outline`] for solid or soft; [`lowlights`], [`line_shows_after`],
//! [`root_shadow_length`], [`shadow_steps`].
//!
//! # Decide
//!
//! [`choose_technique`], [`product_class`] with what an [`ExtraStep`] before it [needs](StepNeeds), and [`service_class`].

mod choose;
mod classes;
mod demand;
mod extra_step;
mod foil_density;
mod gradient;
mod layout;
mod lowlight_places;
mod lowlights;
mod outline;
mod over_direction;
mod part_line;
mod partition;
mod past_use;
mod product_class;
mod profile;
mod read;
mod regrowth;
mod standard;
mod technique;
mod template;
mod trace;
mod trace_choice;

pub use choose::{Practice, RejectedTechnique, TechniqueDecision, TechniqueQuestion, choose_technique};
#[cfg(feature = "cli")]
pub(crate) use classes::{HALF_BELOW_PERCENT, PARTIAL_BELOW_PERCENT};
pub use classes::{ServiceClass, Treated, service_class};
pub use demand::{Demand, FilmMass, TakeUp, demand, film, minutes_per_foil, take_up};
pub use extra_step::{StepEnd, StepNeeds};
pub(crate) use foil_density::share_out;
pub use foil_density::{RegionFoils, SectionGradient};
pub use gradient::{Gradient, GradientError, level_along};
pub use layout::{InFoils, Layout, LayoutError, Panel, Taking, by_hand};
pub use lowlight_places::{LightFoils, LowlightPlace, lowlight_places};
pub use lowlights::{Lowlights, LowlightsError, lowlights};
pub use outline::{OutlineChange, OutlineLook, OutlinePart, Solidity, read_outline};
pub use over_direction::{Curvature, OverDirection};
pub use part_line::PartLine;
pub use partition::{PartitionError, Placement, Rest, partition};
pub use past_use::{PastUse, hair_by_use};
pub use product_class::{ClassDecision, ClassQuestion, ExtraStep, Rejected, product_class};
pub use profile::{Profile, Softness};
pub use read::{Change, HeadLook, Placed, RegionLook, Wish, read_head, read_regions};
pub use regrowth::{ShadowStep, line_shows_after, root_shadow_length, shadow_steps};
pub use technique::Technique;
pub use template::{Region, Template, TemplateError};
pub(crate) use trace::FOILS_FORMULA;
pub use trace_choice::{trace_product_class, trace_service_class, trace_technique};

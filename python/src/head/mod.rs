//! Wrappers of `foilwork::head`.

mod decide;
mod demand;
mod gradient;
mod layout;
mod look;
mod lowlights;
mod outline;
mod strand;
mod template;

crate::room::room! {
    /// The head as an area to work on: foils and what is in them, regions, gradient, and how it all will read.
    head {
        decide {
            ClassDecision, Rejected, RejectedTechnique, StepNeeds, TechniqueDecision, choose_technique, product_class,
            service_class, step_needs, trace_product_class, trace_service_class, trace_technique,
        }
        demand { Demand, demand, film, hair_by_use, minutes_per_foil, take_up }
        gradient { Gradient, OverDirection, RegionFoils, ShadowStep, level_along, root_shadow_length, shadow_steps }
        layout { InFoils, Layout, by_hand }
        look { Change, HeadLook, Placed, RegionLook, read_head }
        lowlights { LightFoils, LowlightPlace, Lowlights, lowlight_places, lowlights }
        outline { OutlineChange, OutlineLook, OutlinePart, read_outline }
        strand { Profile, line_shows_after, profile }
        template { Region, Template, partition }
    }
}

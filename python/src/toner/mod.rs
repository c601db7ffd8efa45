//! Wrappers of `foilwork::toner`.

mod find;

crate::room::room! {
    /// Toners: which deposit reaches a target from the exposed pigment.
    toner {
        find { Finding, TonerPart, NeutralisingDose, TonerAnswer, TonerMix, find_toner, neutralising_dose }
    }
}

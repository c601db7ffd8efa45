//! Wrappers of `foilwork::toner`.

mod dose;
mod find;
mod predict;

crate::room::room! {
    /// Toners: which deposit reaches a target from the exposed pigment.
    toner {
        dose { NeutralisingDose, PrePigmentMix, check_toner, neutralising_dose, pre_pigment }
        find { PorousToning, TonerAnswer, TonerMix, TonerPart, find_toner }
        predict { toned }
    }
}

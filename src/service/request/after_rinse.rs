//! Toners and the root shadow: what goes on after the rinse.

use super::{
    defaults::{self, Defaults},
    task::{Look, Oxidant, Shelf, Task, WorkStage},
};
use crate::{
    lift::Cover,
    mix::Ratio,
    quantity::{Duration, Mass},
    reader::{InField, Problems},
    service::shape::{RootShadow, Toner, Zone},
    source::{Interval, Sourced},
};

/// A toner of the file.
pub(super) fn toner(
    i: usize,
    toner: &Toner,
    sections: &[Task],
    shelf: &Shelf<'_>,
    defaults: &mut Defaults,
) -> Result<Task, Problems> {
    let field = format!("toner[{}]", i + 1);
    let named = |task: &Task| toner.sections.contains(&task.name) || (toner.sections.is_empty() && task.lightens);
    let goes_on: Vec<usize> = sections.iter().enumerate().filter(|(_, task)| named(task)).map(|(i, _)| i).collect();
    if goes_on.is_empty() {
        return Err("goes on no lightened section: name its `sections`").in_field(&field);
    }
    let products = shelf.mix(&toner.mix, &field)?;
    let after_rinse = AfterRinse {
        name: toner.name.clone(),
        stage: WorkStage::Toner,
        zone: Zone::Lengths,
        on_scalp: false,
        goes_on,
        wanted: toner.target.as_ref().map(|target| Look::read(target, &field)).transpose()?,
        mix_g: toner.mix_g,
        apply_min: toner.apply_min,
        develop_min: toner.develop_min,
    };
    let oxidant = shelf.oxidant(&products, toner.developer.as_deref(), toner.strength.as_deref(), &field)?;
    let ratio = shelf.ratio(toner.ratio.as_deref(), &products, oxidant, &field)?;
    after_rinse.task(field, products, oxidant, ratio, shelf, defaults)
}

/// The root shadow of the file.
pub(super) fn root_shadow(shadow: &RootShadow, shelf: &Shelf<'_>, defaults: &mut Defaults) -> Result<Task, Problems> {
    let field = "root_shadow".to_owned();
    let products = shelf.mix(&shadow.mix, &field)?;
    let after_rinse = AfterRinse {
        name: match shadow.length_cm {
            Some(cm) => format!("root shadow, {cm} cm"),
            None => "root shadow".to_owned(),
        },
        stage: WorkStage::RootShadow,
        zone: Zone::Roots,
        on_scalp: true,
        goes_on: Vec::new(),
        wanted: shadow.target.as_ref().map(|target| Look::read(target, &field)).transpose()?,
        mix_g: shadow.mix_g,
        apply_min: shadow.apply_min,
        develop_min: shadow.develop_min,
    };
    let oxidant = shelf.oxidant(&products, shadow.developer.as_deref(), shadow.strength.as_deref(), &field)?;
    let ratio = shelf.ratio(shadow.ratio.as_deref(), &products, oxidant, &field)?;
    after_rinse.task(field, products, oxidant, ratio, shelf, defaults)
}

/// What toner and root shadow have in common.
struct AfterRinse {
    name: String,
    stage: WorkStage,
    zone: Zone,
    on_scalp: bool,
    goes_on: Vec<usize>,
    wanted: Option<Look>,
    mix_g: f64,
    apply_min: Option<f64>,
    develop_min: f64,
}

impl AfterRinse {
    fn task(
        self,
        field: String,
        products: Vec<(usize, f64)>,
        oxidant: Oxidant,
        ratio: Option<Ratio>,
        shelf: &Shelf<'_>,
        defaults: &mut Defaults,
    ) -> Result<Task, Problems> {
        let stated = self.apply_min.map(Duration::from_min).transpose().in_field(&format!("{field}.apply_min"))?;
        let apply = defaults.stated_or(
            stated,
            &format!("{field}.apply_min"),
            defaults::toner_application().in_field(&field)?,
            "a toner is applied at the basin in a few minutes",
        );
        let amount = Mass::from_g(self.mix_g).in_field(&format!("{field}.mix_g"))?;
        Ok(Task {
            name: self.name,
            stage: self.stage,
            lightens: false,
            technique: None,
            zone: self.zone,
            share: None,
            on_scalp: Some(self.on_scalp),
            cover: Cover::OpenAir,
            starting_level: None,
            goes_on: self.goes_on,
            target: None,
            target_tone: None,
            wanted: self.wanted,
            working_life: shelf.working_life(&products),
            products,
            oxidant,
            ratio,
            amount: Sourced::stated(Interval::exact(amount)),
            additives: Vec::new(),
            foils: None,
            on_head: None,
            apply: apply.value,
            applying: None,
            develop: Duration::from_min(self.develop_min).in_field(&format!("{field}.develop_min"))?,
            after: Vec::new(),
            hairline: false,
            beside: Vec::new(),
            same_foil_as: Vec::new(),
            field,
        })
    }
}

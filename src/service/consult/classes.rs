use super::alternative::{Alternative, AlternativeKind};
use crate::{
    colour::ProductKind,
    service::{Mix, PartKind, Plan, SectionPlan, ServiceFile},
    text::list,
};

/// The classes of product for a section: the one that the rules propose, the others, and which of them its bowl holds.
pub(super) fn classes(file: &ServiceFile, plan: &Plan, section: &SectionPlan) -> Vec<Alternative> {
    let class = &section.product_class;
    let mix = plan.mixes.iter().find(|mix| mix.name == section.section);
    let mixed = mix.map(|mix| mixed(file, mix)).unwrap_or_default();
    let words: Vec<String> = mixed.iter().map(ToString::to_string).collect();
    let others = class.rejected.iter().map(|other| (other.product, other.why));
    let all = std::iter::once((class.product, class.why)).chain(others);
    let one = |(product, why): (ProductKind, &str)| {
        let taken = mixed.contains(&product);
        let why = match (product == class.product, taken) {
            (true, false) if words.is_empty() => format!("it {why}: the gentlest that does it"),
            (true, false) => format!("it {why}: the gentlest that does it; the bowl holds {}", list(&words, "and")),
            (true, true) => format!("it {why}"),
            (false, true) => format!("the bowl holds it, though: {why}"),
            (false, false) => why.to_owned(),
        };
        Alternative {
            about: AlternativeKind::ProductClass,
            section: Some(section.section.clone()),
            option: product.to_string(),
            taken,
            why,
            basis: class.basis,
        }
    };
    all.map(one).collect()
}

/// What a mix holds, each class once.
fn mixed(file: &ServiceFile, mix: &Mix) -> Vec<ProductKind> {
    let shades = || file.shop.iter().flat_map(|shop| &shop.shade);
    let mut found = Vec::new();
    for part in mix.products() {
        let kind = match part.kind {
            PartKind::Lightener => Some(ProductKind::Lightener),
            _ => shades().find(|shade| shade.code == part.product).map(|shade| shade.class.product()),
        };
        found.extend(kind.filter(|kind| !found.contains(kind)));
    }
    found
}

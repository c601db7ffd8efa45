//! What the makers declare of what is in one bowl.

use super::PartKind;
use crate::{
    mix::{Cas, Composition, Ingredient, Product},
    quantity::{Mass, MassFraction},
    service::request::Request,
    source::Interval,
};

/// A product in the bowl, as weighed, and the peroxide that it may bring as labelled.
#[derive(Clone, Copy)]
pub(super) struct Poured<'p> {
    pub(super) product: &'p str,
    pub(super) kind: PartKind,
    pub(super) mass: Mass,
    pub(super) may_bring: Interval<MassFraction>,
}

/// The mixed bowl with what its makers declare, where any of them does; the developer's own peroxide is always in it.
pub(super) fn composition(request: &Request, bowl: &[Poured<'_>]) -> Option<Composition> {
    let known = |part: &Poured<'_>| request.shop.facts(part.product).map(|facts| facts.declared.clone());
    let parts: Vec<_> = bowl.iter().map(|part| (part, known(part))).collect();
    if parts.iter().all(|(_, known)| known.as_ref().is_none_or(|known| known.ingredients.is_empty())) {
        return None;
    }
    let product = |(part, known): (&Poured<'_>, Option<Product>)| {
        let mut product = known.unwrap_or_else(|| Product::declared_in_part(part.product, Vec::new()));
        let is_peroxide = |ingredient: &Ingredient| ingredient.cas == Some(Cas::HYDROGEN_PEROXIDE);
        if part.kind == PartKind::Developer && !product.ingredients.iter().any(is_peroxide) {
            let peroxide = Ingredient::named("hydrogen peroxide", part.may_bring).with_cas(Cas::HYDROGEN_PEROXIDE);
            product.ingredients.push(peroxide);
        }
        (part.mass, product)
    };
    Composition::mix(parts.into_iter().map(product).collect()).ok()
}

/// The products of a bowl, beside its developers, that are not declared in full.
pub(super) fn undeclared(request: &Request, bowl: &[Poured<'_>]) -> Vec<String> {
    let declared =
        |part: &Poured<'_>| request.shop.facts(part.product).is_some_and(|facts| facts.declared.fully_declared);
    let unknown = bowl.iter().filter(|part| part.kind != PartKind::Developer && !declared(part));
    unknown.map(|part| part.product.to_owned()).collect()
}

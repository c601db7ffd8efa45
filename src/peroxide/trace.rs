use super::{
    BlendError, Conditions, ConversionError, KnownMass, StatedStrength, Strength, StrengthUnit,
    blend::shares,
    blend_two, convert_interval,
    formula::{to_g_per_l, to_ww_percent},
    mix_strengths,
    molar::{OXYGEN_G_PER_MOL, PEROXIDE_G_PER_MOL},
    read_label,
};
use crate::{
    quantity::{Density, Mass, MassFraction, OxygenVolumes, Quantity},
    source::{Basis, Interval, TracedInput, TracedResult, citations::peroxide},
    text::traced,
};

/// Conservation of mass and of peroxide.
pub(crate) const STRENGTH_FORMULA: &str = "sum of grams times % w/w, over the sum of grams, as weighed";
const PART_FORMULA: &str = "total x (target - other) / (this - other)";
const DENSITY_TO_VOLUME: &str = "g/L = 10 x % w/w x density";
const DENSITY_TO_MASS: &str = "% w/w = g/L / (10 x density)";
/// The reading that the trade pairs with the label, within the bounds of all three.
const LABEL_FORMULA: &str =
    "% w/w = 0.3 x label; bounds: the least and the most of this, of % w/v and of measured volumes";

/// How a strength in another unit comes about: each step between the two units, with the constants and the density in it.
///
/// # Errors
///
/// [`ConversionError`], as of [`convert_interval`].
///
/// # Example
///
/// ```
/// use foilwork::peroxide::{Conditions, Strength, StrengthUnit, trace_conversion};
///
/// let bottle = Strength::of(6.0, StrengthUnit::WwPercent)?;
/// let found = trace_conversion(bottle, StrengthUnit::Volumes, &Conditions::default())?;
/// assert_eq!(found.formula, "g/L = 10 x % w/w x density; volumes = g/L x molar volume / (2 x M)");
/// assert!(found.inputs.iter().any(|input| input.what == "density"));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn trace_conversion(
    strength: impl Into<Interval<Strength>>,
    to: StrengthUnit,
    conditions: &Conditions,
) -> Result<TracedResult, ConversionError> {
    let strength = strength.into();
    let found = convert_interval(strength, to, conditions)?;
    let from = strength.best().unit();
    let crosses = from.is_by_mass() != to.is_by_mass();
    let mut steps: Vec<&str> = Vec::new();
    if from != to {
        steps.extend(to_base(from));
        steps.extend(crosses.then_some(if to.is_by_mass() { DENSITY_TO_MASS } else { DENSITY_TO_VOLUME }));
        steps.extend(from_base(to));
    }
    let formula = if steps.is_empty() { "as stated".to_owned() } else { steps.join("; ") };
    let numbers = |strength: Interval<Strength>| strength.map(Strength::number);
    let mut inputs = vec![TracedInput::new("strength as stated", numbers(strength), from.code())];
    let mut sources = Vec::new();
    if formula.contains(" M") {
        inputs.push(TracedInput::exact("M, molar mass of hydrogen peroxide", PEROXIDE_G_PER_MOL, "g/mol"));
        sources.push(peroxide::ATOMIC_WEIGHTS.id);
    }
    if formula.contains("molar mass of oxygen") {
        inputs.push(TracedInput::exact("molar mass of oxygen, O", OXYGEN_G_PER_MOL, "g/mol"));
    }
    if formula.contains("molar volume") {
        inputs.push(TracedInput::exact("molar volume, of oxygen", conditions.molar_volume.l_per_mol(), "L/mol"));
        sources.push(peroxide::CODATA.id);
    }
    // Nothing is worked out where it is already in that unit.
    let mut basis = if from == to { Basis::Stated } else { Basis::Derived };
    if crosses {
        inputs.push(traced("density", density_at(strength.best(), conditions)?));
        basis = basis.weaker(conditions.density.basis());
        sources.push(peroxide::MIXTURE_DENSITY.id);
    }
    let what = format!("strength in {}", to.code());
    Ok(TracedResult::new(what, numbers(found), to.code(), formula, basis).made_of(inputs).resting_on(&sources))
}

/// The density that the conversion uses, with its bounds.
fn density_at(strength: Strength, conditions: &Conditions) -> Result<Interval<Density>, ConversionError> {
    let cubic = conditions.cubic()?;
    let percent = if strength.unit().is_by_mass() {
        to_ww_percent(strength.number(), strength.unit())
    } else {
        super::formula::ww_percent(to_g_per_l(strength.number(), strength.unit(), conditions.molar_volume), &cubic)
    };
    let at = cubic.at(percent / 100.0);
    let (low, high) = conditions.relative_bounds(percent, at);
    Ok(Interval::ordered(at * low, at, at * high).map(Density::nearest))
}

/// To % w/w where the unit counts by mass, to g/L where it counts by volume.
const fn to_base(unit: StrengthUnit) -> Option<&'static str> {
    match unit {
        StrengthUnit::WwPercent | StrengthUnit::GPerL => None,
        StrengthUnit::MolPerKg => Some("% w/w = 100 x mol/kg x M / (1000 + mol/kg x M)"),
        StrengthUnit::ActiveOxygenPercent => Some("% w/w = % active oxygen x M / molar mass of oxygen"),
        StrengthUnit::WvPercent => Some("g/L = 10 x % w/v"),
        StrengthUnit::MolPerL => Some("g/L = mol/L x M"),
        StrengthUnit::EqPerL => Some("g/L = N x M / 2"),
        StrengthUnit::Volumes => Some("g/L = volumes x 2 x M / molar volume"),
    }
}

/// From there.
const fn from_base(unit: StrengthUnit) -> Option<&'static str> {
    match unit {
        StrengthUnit::WwPercent | StrengthUnit::GPerL => None,
        StrengthUnit::MolPerKg => Some("mol/kg = 1000 x % w/w / ((100 - % w/w) x M)"),
        StrengthUnit::ActiveOxygenPercent => Some("% active oxygen = % w/w x molar mass of oxygen / M"),
        StrengthUnit::WvPercent => Some("% w/v = g/L / 10"),
        StrengthUnit::MolPerL => Some("mol/L = g/L / M"),
        StrengthUnit::EqPerL => Some("N = 2 x g/L / M"),
        StrengthUnit::Volumes => Some("volumes = g/L x molar volume / (2 x M)"),
    }
}

/// How a strength that is not stated in % w/w gets there; none where it is.
pub(crate) fn converted(
    stated: StatedStrength,
    conditions: &Conditions,
) -> Result<Option<TracedResult>, ConversionError> {
    let by_mass = |strength: Strength| trace_conversion(strength, StrengthUnit::WwPercent, conditions);
    let found = match stated {
        StatedStrength::Ww(_) => return Ok(None),
        StatedStrength::Wv(strength) => by_mass(strength.into())?,
        StatedStrength::OxygenVolumes(strength) => by_mass(strength.into())?,
        StatedStrength::TradeLabel(label) => {
            let as_volumes = by_mass(OxygenVolumes::from_volumes(label.vol())?.into())?;
            let value = read_label(label, conditions)?.spread().map(MassFraction::ww_percent);
            TracedResult::new("strength in % w/w", value, "% w/w", LABEL_FORMULA, Basis::CommonPractice)
                .working(format!("0.3 x {}", label.vol()))
                .made_of([TracedInput::exact("label", label.vol(), "vol")].into_iter().chain(as_volumes.inputs))
                .resting_on(&as_volumes.sources)
        }
    };
    Ok(Some(TracedResult { what: format!("{stated}: {}", found.what), ..found }))
}

/// The same of a bottle, under its name: two bottles may have one label, and another density.
pub(crate) fn bottle_converted(
    name: &str,
    stated: StatedStrength,
    conditions: &Conditions,
) -> Result<Option<TracedResult>, ConversionError> {
    let step = converted(stated, conditions)?;
    Ok(step.map(|step| TracedResult { what: format!("{name}, {}", step.what), ..step }))
}

/// No better founded than the steps before it, and resting on their sources too.
pub(crate) fn resting_on<'s>(result: TracedResult, steps: impl IntoIterator<Item = &'s TracedResult>) -> TracedResult {
    steps.into_iter().fold(result, |mut result, step| {
        result.basis = result.basis.weaker(step.basis);
        for id in &step.sources {
            if !result.sources.contains(id) {
                result.sources.push(id);
            }
        }
        result
    })
}

/// A bottle of a blend: what it is called and how strong it is.
pub type NamedStrength<'a> = (&'a str, Interval<MassFraction>);

/// How the grams of a blend of two come about, before rounding: a stock and a diluent of 0 % w/w, or two stocks. Their bounds are
/// the least and the most at the bounds of the three strengths, at most the total; the estimate is of the best strengths.
///
/// # Errors
///
/// [`BlendError`], as of [`blend_two`].
///
/// # Example
///
/// ```
/// use foilwork::{peroxide::trace_blend, quantity::{Mass, MassFraction}, source::Interval};
///
/// let [strong, water, target] = [12.0, 0.0, 3.0].map(|percent| Interval::exact(MassFraction::nearest(percent)));
/// use foilwork::quantity::Quantity;
/// let [stock, diluent] = trace_blend(("12 %", strong), ("water", water), target, Mass::from_g(60.0)?)?;
/// assert_eq!((stock.value.as_str(), diluent.value.as_str()), ("15", "45"));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn trace_blend(
    first: NamedStrength<'_>,
    second: NamedStrength<'_>,
    target: Interval<MassFraction>,
    total: Mass,
) -> Result<[TracedResult; 2], BlendError> {
    let blend = blend_two(first.1.best(), second.1.best(), target.best(), KnownMass::Total(total))?;
    let taken = grams_of_first([first.1, second.1, target], total.g(), blend.first.g());
    let rest = Interval::ordered(total.g() - taken.high(), blend.second.g(), total.g() - taken.low());
    let part = |this: NamedStrength<'_>, other: NamedStrength<'_>, grams: Interval<f64>| {
        TracedResult::new(format!("{}, to weigh", this.0), grams, "g", PART_FORMULA, Basis::Derived).made_of([
            traced("total", Interval::exact(total)),
            traced("target", target),
            traced(format!("this, {}", this.0), this.1),
            traced(format!("other, {}", other.0), other.1),
        ])
    };
    Ok([part(first, second, taken), part(second, first, rest)])
}

/// The grams of the first part at the bounds of the three strengths: they rise or fall all the way with each of them, so that
/// the least and the most lie at bounds. A target beyond both takes all of the nearer one.
fn grams_of_first([first, second, target]: [Interval<MassFraction>; 3], total: f64, best: f64) -> Interval<f64> {
    let ends = |strength: Interval<MassFraction>| [strength.low(), strength.high()].map(MassFraction::ww_percent);
    let mut grams = Interval::exact(best);
    for first in ends(first) {
        for second in ends(second) {
            for target in ends(target) {
                let (share, rest) = shares(first, second, target.clamp(first.min(second), first.max(second)));
                grams = grams.widened_to(Interval::exact(total * (share / (share + rest))));
            }
        }
    }
    grams
}

/// How the strength of what was weighed comes about.
///
/// # Errors
///
/// [`BlendError::Nothing`] when there is no mass at all.
///
/// # Example
///
/// ```
/// use foilwork::{peroxide::trace_mixture, quantity::{Mass, MassFraction}, source::Interval};
///
/// let twelve = Interval::exact(MassFraction::from_ww_percent(12.0)?);
/// let mixed = trace_mixture(&[(("12 %", twelve), Mass::from_g(15.0)?), (("water", Interval::exact(MassFraction::ZERO)), Mass::from_g(45.0)?)])?;
/// assert_eq!((mixed.value.as_str(), mixed.unit.as_str()), ("3", "% w/w"));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn trace_mixture(parts: &[(NamedStrength<'_>, Mass)]) -> Result<TracedResult, BlendError> {
    let masses: Vec<_> = parts.iter().map(|((_, strength), mass)| (*strength, *mass)).collect();
    let mixed = mix_strengths(&masses)?;
    let inputs = parts.iter().flat_map(|((name, strength), mass)| {
        [traced(format!("{name}, weighed"), Interval::exact(*mass)), traced(format!("{name}, peroxide"), *strength)]
    });
    let value = mixed.strength.map(MassFraction::ww_percent);
    Ok(TracedResult::new("strength of the blend", value, "% w/w", STRENGTH_FORMULA, Basis::Derived).made_of(inputs))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// What a bottle says in % w/w is as stated; of the rest the steps are told, and of a label the three that it can mean.
    #[test]
    fn a_bottle_tells_how_its_strength_was_read() {
        let told = |text: &str| bottle_converted("weak", text.parse().unwrap(), &Conditions::default()).unwrap();
        assert_eq!(told("6 % w/w"), None);
        for (text, formula) in [
            ("6 % w/v", "% w/w = g/L / (10 x density)"),
            ("20 volumes", "g/L = volumes x 2 x M / molar volume; % w/w = g/L / (10 x density)"),
            ("20 vol label", LABEL_FORMULA),
        ] {
            let told = told(text).unwrap();
            assert_eq!((told.what, &*told.formula), (format!("weak, {text}: strength in % w/w"), formula));
        }
        let label = told("20 vol label").unwrap();
        assert_eq!((label.value.as_str(), label.worked.as_deref()), ("6", Some("0.3 x 20")));
        assert_eq!((label.basis, label.inputs[0].what.as_str()), (Basis::CommonPractice, "label"));
        assert_eq!(label.inputs[0].value, "20");
    }

    /// Each source once, in the order in which they are met; the weakest basis of all.
    #[test]
    fn a_result_rests_on_what_its_steps_rest_on() {
        let step = |basis, sources: &[&'static str]| TracedResult::exact("a", "1", "g", "b", basis).resting_on(sources);
        let steps = [step(Basis::Assumed, &["one", "two"]), step(Basis::Derived, &["two", "three"])];
        let found = resting_on(step(Basis::Derived, &["one"]), &steps);
        assert_eq!((found.basis, found.sources), (Basis::Assumed, vec!["one", "two", "three"]));
        let none = resting_on(step(Basis::Derived, &["one"]), []);
        assert_eq!((none.basis, none.sources), (Basis::Derived, vec!["one"]));
    }
}

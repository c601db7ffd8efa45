use super::{Answer, Outcome, Refusal, args::DiluteArgs, output, read};
use crate::{
    mix::as_applied,
    peroxide::{
        Conditions, KnownMass, NamedStrength, StatedStrength, blend_two, cautions, converted, resting_on, stronger,
        trace_blend, trace_mixture,
    },
    quantity::{Mass, MassFraction, Temperature},
    scale::weigh,
    source::Interval,
    text::wrapped,
};
use std::fmt::Write;

/// `foilwork dilute`: two things to weigh, and the strength they then give.
pub(super) fn run(args: &DiluteArgs) -> Outcome {
    let temperature = Temperature::from_celsius(args.temperature)?;
    let mut steps = Vec::new();
    let mut read = |name: &str, text: &str| -> Result<Interval<MassFraction>, Refusal> {
        let stated = read::option::<StatedStrength>(name, text)?;
        steps.extend(converted(stated, &Conditions::at(temperature))?);
        Ok(stated.mass_fraction(temperature)?)
    };
    let (stock, target) = (read("--stock", &args.stock)?, read("--target", &args.target)?);
    let (second, second_name) = match &args.with {
        Some(with) => (read("--with", with)?, with.as_str()),
        None => (Interval::exact(MassFraction::ZERO), "diluent without peroxide"),
    };
    let total = read::grams("--total", &args.total)?;
    let blend = blend_two(stock.best(), second.best(), target.best(), KnownMass::Total(total))?;
    let weighing = weigh(&[blend.first, blend.second], Mass::from_g(args.division)?)?.all_shown()?;
    let [first, other] = weighing.parts() else { return Err(Refusal("nothing to weigh".to_owned())) };
    let strength = as_applied(&[(first.weighed, stock), (other.weighed, second)])?;

    if args.trail.of.trail {
        let named = |name, strength| -> NamedStrength<'_> { (name, strength) };
        let (one, two) = (named(args.stock.as_str(), stock), named(second_name, second));
        let [first_part, second_part] = trace_blend(one, two, target, total)?;
        let mixed = trace_mixture(&[(one, first.weighed), (two, other.weighed)])?;
        let found = [first_part, second_part, mixed].map(|result| resting_on(result, &steps));
        let trail: Vec<_> = steps.iter().cloned().chain(found).collect();
        return Ok(Answer::fine(output::trail(&trail, args.trail.json)?));
    }
    let mut text = String::new();
    writeln!(text, "weigh {:>9}  of {}", first.weighed.to_string(), args.stock)?;
    writeln!(text, "and   {:>9}  of {second_name}", other.weighed.to_string())?;
    writeln!(text, "gives {:>9}  at {:.2}", weighing.total().to_string(), strength.best())?;
    if !strength.is_exact() {
        writeln!(text, "bounds: {:.2} to {:.2}", strength.low(), strength.high())?;
    }
    let off = strength.best().ww_percent() - target.best().ww_percent();
    if off.abs() >= 0.005 {
        writeln!(text, "weighing to {} g moves it by {off:+.2} from {:.2}", args.division, target.best())?;
    }
    for paragraph in cautions(stronger(stock, second)) {
        for line in wrapped(&paragraph) {
            writeln!(text, "{line}")?;
        }
    }
    Ok(Answer::fine(text))
}

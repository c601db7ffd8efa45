//! A mixture on a hair, from its options.

use super::{Refusal, args::SituationArgs, read};
use crate::{
    lift::{Ph, Situation},
    mix::{Ratio, as_applied},
    peroxide::StatedStrength,
    quantity::{Mass, MassFraction, Temperature},
    source::Interval,
};

/// The situation that the options describe.
pub(super) fn situation(args: &SituationArgs) -> Result<Situation, Refusal> {
    Ok(Situation {
        on_hair: on_hair(args)?,
        temperature: Temperature::from_celsius(args.temperature).map_err(|e| read::about("--temperature", e))?,
        booster: read::option("--booster", &args.booster)?,
        ph: args.ph.map(Ph::new).transpose().map_err(|e| read::about("--ph", e))?,
        uptake: read::option("--uptake", &args.uptake)?,
        texture: read::option("--texture", &args.texture)?,
        cover: read::option("--cover", &args.cover)?,
    })
}

/// The strength on the hair: stated, or that of the developer in the mixed bowl.
fn on_hair(args: &SituationArgs) -> Result<Interval<MassFraction>, Refusal> {
    let strength = |name: &str, text: &str| {
        let stated: StatedStrength = read::option(name, text)?;
        stated.mass_fraction(Temperature::REFERENCE).map_err(|error| read::about(name, error))
    };
    match (&args.on_hair, &args.developer, &args.ratio) {
        (Some(text), ..) => strength("--on-hair", text),
        (None, Some(developer), Some(ratio)) => {
            let developer = strength("--developer", developer)?;
            let ratio: Ratio = read::option("--ratio", ratio)?;
            let bowl = Mass::from_g(100.0)?;
            match ratio.split_total(bowl)?.as_slice() {
                [product, liquid] => {
                    Ok(as_applied(&[(*product, Interval::exact(MassFraction::ZERO)), (*liquid, developer)])?)
                }
                _ => Err(Refusal(format!(
                    "--ratio: {ratio} has not two parts (write product to developer, such as 1:2)"
                ))),
            }
        }
        _ => Err(Refusal("give --on-hair, or --developer with --ratio".to_owned())),
    }
}

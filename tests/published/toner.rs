//! Rules of toning as printed.

use foilwork::{
    colour::{Hue, Level, Shade, Tone, underlying_pigment},
    quantity::Mass,
    toner::{Exposed, neutralising_dose},
};

// Source: the list of underlying pigment (common practice): level 10 takes a very dilute violet, level 9 a violet. The
// dose that balances falls with the warmth that is exposed.
#[test]
fn the_named_neutraliser_balances_what_each_level_exposes() -> Result<(), Box<dyn std::error::Error>> {
    let bowl = Mass::from_g(30.0)?;
    for number in [6.0, 7.0, 8.0, 9.0, 10.0] {
        let level = Level::new(number)?;
        let (_, hue) = underlying_pigment(level).value.neutraliser.ok_or("no neutraliser")?;
        let exposed = Exposed::lightened(Level::new(3.0)?, level);
        let shade = |tone| Shade::new("shade", level, tone);
        let named = neutralising_dose(&exposed, &shade(Tone::of(hue))?, &shade(Tone::neutral())?, bowl);
        let warm = neutralising_dose(&exposed, &shade(Tone::of(Hue::YellowOrange))?, &shade(Tone::neutral())?, bowl);
        assert!(named.warmth_left.best() < named.warmth_before.best(), "{level}");
        assert!(named.warmth_left.best() < warm.warmth_left.best(), "{level}: a warm shade must not do better");
    }
    Ok(())
}

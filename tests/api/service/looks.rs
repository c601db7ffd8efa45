//! How each section looks on the way: what the file knows of it, what a toner leaves of it, and what that takes in grams.

use super::base::{changed, fine, only_colour, only_lightener, shop};
use foilwork::{
    colour::{Hue, Instrument, Level},
    quantity::{Mass, Share},
    service::{ServiceFile, plan, shape::HistoryFlag},
    shop::{ShadeClass, shape::ShadeEntry},
    toner::ExposedBasis,
};
use rstest::rstest;

fn text(text: &str) -> Option<String> {
    Some(text.to_owned())
}

/// Adds a shade like the first of the shop.
fn shade(file: &mut ServiceFile, code: &str, level: f64, tone: &str, class: ShadeClass) {
    let tones = if tone.is_empty() { Vec::new() } else { vec![tone.to_owned()] };
    let entry = ShadeEntry { code: code.to_owned(), level, tones, class, ..shop(file).shade[0].clone() };
    shop(file).shade.push(entry);
}

#[rstest]
#[case::nothing_said(None, None, None, None, ExposedBasis::Modelled)]
#[case::seen(None, text("orange"), None, None, ExposedBasis::Seen)]
#[case::measured_before_seen(text("57, 5, 28"), text("orange"), None, None, ExposedBasis::Measured)]
#[case::from_the_analysis(None, None, text("57, 5, 28"), text("orange"), ExposedBasis::Measured)]
#[case::own_words_before_the_analysis(None, text("orange"), text("57, 5, 28"), None, ExposedBasis::Seen)]
fn the_most_trusted_counts(
    #[case] measured: Option<String>,
    #[case] seen: Option<String>,
    #[case] measured_before: Option<String>,
    #[case] seen_before: Option<String>,
    #[case] want: ExposedBasis,
) {
    let plan = changed(fine(), |file| {
        (file.section[0].measured, file.section[0].seen) = (measured, seen);
        (file.analysis.measured, file.analysis.seen) = (measured_before, seen_before);
    });
    let section = &plan.colour[0];
    assert_eq!(section.start, want);
    let exposed = section.exposed_swatch.expect("it is lightened");
    match want {
        ExposedBasis::Measured => assert_eq!((exposed.lab().l(), exposed.lab().b()), (57.0, 28.0)),
        ExposedBasis::Seen => {
            assert_eq!(exposed.hue(), Some(Hue::Orange));
            let listed = section.exposed.as_ref().expect("named").value;
            assert_eq!((listed.exposed.0, listed.neutraliser), (Hue::Orange, Some((Hue::Blue, Hue::Blue))));
        }
        _ => assert!(exposed.uncertainty() > 0.0),
    }
}

#[rstest]
#[case::photograph(
    text("57, 5, 28"),
    Some(Instrument::Photograph),
    None,
    "section[1].measured_with: a photograph cannot be read"
)]
#[case::two_numbers(text("57, 5"), None, None, "section[1].measured: invalid colour \"57, 5\"")]
#[case::no_hue(None, None, text("brassy"), "section[1].seen: ")]
fn what_cannot_be_read_is_refused(
    #[case] measured: Option<String>,
    #[case] with: Option<Instrument>,
    #[case] seen: Option<String>,
    #[case] message: &str,
) {
    let mut file = fine();
    (file.section[0].measured, file.section[0].measured_with, file.section[0].seen) = (measured, with, seen);
    let problems = plan(&file).expect_err("refused").to_string();
    assert!(problems.contains(message), "{problems}");
}

#[test]
fn a_calibrated_photograph_counts() {
    let plan = changed(fine(), |file| {
        file.section[0].measured = text("57, 5, 28");
        file.section[0].measured_with = Some(Instrument::CalibratedPhotograph);
    });
    assert_eq!(plan.colour[0].start, ExposedBasis::Measured);
}

#[test]
fn a_toner_leaves_the_hair_darker_than_it_found_it() {
    let plan = changed(fine(), |_| {});
    let section = &plan.colour[0];
    assert_eq!(section.toner.as_deref(), Some("veil"));
    let exposed = section.exposed_swatch.expect("it is lightened");
    assert!(section.swatch.lab().l() < exposed.lab().l());
    assert!(section.natural.lab().l() < exposed.lab().l());
    for word in ["now", "exposed", "toned", "model, not a photograph"] {
        assert!(section.strip().contains(word), "{word}");
    }
    let untoned = &changed(only_lightener(), |_| {}).colour[0];
    assert_eq!(untoned.exposed_swatch, Some(untoned.swatch));
    assert_eq!(untoned.neutralising, None);
}

// Common practice: violet against the yellow of levels 9 and 10. 20 g of the 60 g are shades at 1:2.
#[test]
fn the_dose_is_in_grams_of_the_chart() {
    let plan = changed(fine(), |file| {
        shade(file, "J9-violet", 9.0, "violet", ShadeClass::Demi);
        shade(file, "J9-gold", 9.0, "yellow", ShadeClass::Demi);
    });
    let found = plan.colour[0].neutralising.as_ref().expect("a violet for pale yellow");
    assert_eq!((found.neutraliser.as_str(), found.carrier.as_str()), ("J9-violet", "J9"));
    let mass = found.dose.mass;
    assert!(mass.low() <= mass.best() && mass.high() <= Mass::from_g(20.0).expect("a mass"), "{mass:?}");
    assert!(plan.to_string().contains("J9-violet"), "{plan}");
    // Without a shade against the warmth there is no dose.
    assert_eq!(changed(fine(), |_| {}).colour[0].neutralising, None);
}

#[test]
fn a_section_reads_between_its_two_colours() {
    let plan = changed(only_lightener(), |file| file.section[0].taken_percent = Some(40.0));
    let section = &plan.colour[0];
    let look = section.look.as_ref().expect("the share is stated");
    let level = |number| Level::new(number).expect("a level");
    assert!(level(6.0) < look.perceived_level.low() && look.perceived_level.high() < level(9.0));
    assert!(look.contrast.ciede2000 > 2.0 && !look.reads_as_one);
    let sheet = plan.to_string();
    assert!(sheet.contains("from afar it reads as level") && sheet.contains("seen from too far"), "{sheet}");
    assert_eq!(changed(only_lightener(), |_| {}).colour[0].look, None);
}

// Source of the shares: the printed table of `mix::natural_share`; half white, half natural shade. 22.5 of 45 g are colour.
#[test]
fn white_hair_gets_natural_shade_in_grams() {
    let plan = changed(only_colour(), |file| file.analysis.white_percent = Some(50.0));
    let found = plan.colour[0].natural_shade.as_ref().expect("half the hair is white");
    assert_eq!(found.shade.as_deref(), Some("J6"));
    assert_eq!(found.share.best(), Share::from_percent(50.0).expect("a share"));
    assert!((found.mass.best().g() - 11.25).abs() < 0.051, "{:?}", found.mass);
    assert_eq!(changed(only_colour(), |_| {}).colour[0].natural_shade, None);
}

// Common practice: 9 to 6 on lightened hair wants yellow-orange at level 7 first.
#[test]
fn pigment_to_put_back_first_comes_from_the_chart() {
    let darker = |tone: &str| {
        changed(only_colour(), |file| {
            file.analysis.history = Some(vec![HistoryFlag::Lightened]);
            file.section[0].starting_level = Some(9.0);
            shop(file).shade[1].tones = vec![tone.to_owned()];
            shade(file, "J7-amber", 7.0, "yellow-orange", ShadeClass::Demi);
            shade(file, "J7-moss", 7.0, "green", ShadeClass::Demi);
        })
    };
    let plan = darker("blue");
    let found = plan.colour[0].pre_pigment.as_ref().expect("three levels darker on lightened hair");
    assert_eq!(found.part.code, "J7-amber");
    assert!((found.part.mass.g() - 22.5).abs() < 0.051, "{:?}", found.part);
    assert!(plan.to_string().contains("pigment first: 22.5 g of J7-amber"), "{plan}");
    // A warm shade is itself that pigment.
    assert_eq!(darker("orange").colour[0].pre_pigment, None);
}

/// A reading of 6 +/- 1 may be hair of level 5 or of 7: what those show when they are lifted lies in the bounds, before the
/// toner and under it; the estimate is that of the reading.
#[test]
fn a_margin_of_the_reading_widens_what_is_exposed() {
    let plan = |margin: Option<f64>, natural: f64| {
        changed(fine(), |file| {
            file.analysis.natural_level = natural;
            file.analysis.natural_level_plus_minus = margin;
        })
    };
    let (wide, narrow) = (plan(Some(1.0), 6.0), plan(None, 6.0));
    let (wide, narrow) = (&wide.colour[0], &narrow.colour[0]);
    for (off, at) in [(5.0, plan(None, 5.0)), (7.0, plan(None, 7.0))] {
        let pairs =
            [(wide.exposed_swatch.unwrap(), at.colour[0].exposed_swatch.unwrap()), (wide.swatch, at.colour[0].swatch)];
        for (bounds, end) in pairs {
            assert!(bounds.redness().contains(end.redness().best()), "a* from level {off}");
            assert!(bounds.yellowness().contains(end.yellowness().best()), "b* from level {off}");
        }
    }
    let (wide, narrow) = (wide.exposed_swatch.unwrap(), narrow.exposed_swatch.unwrap());
    assert_eq!(wide.lab(), narrow.lab());
    let width = |swatch: &foilwork::colour::Swatch| swatch.redness().high().lab_a() - swatch.redness().low().lab_a();
    assert!(width(&wide) > width(&narrow), "{} against {}", width(&wide), width(&narrow));
}

/// How a section looks does not hang on which others there are, nor on their order: of three under one toner each is as it is alone.
#[test]
fn a_section_looks_the_same_beside_others() {
    let targets = [9.0, 8.0, 8.0, 7.0, 9.0];
    let of = |targets: &[f64]| {
        changed(fine(), |file| {
            file.root_shadow = None;
            let of = |(place, target): (usize, &f64)| {
                let mut section = file.section[0].clone();
                (section.name, section.target_level, section.share_percent) = (format!("{place}"), *target, Some(5.0));
                section
            };
            file.section = targets.iter().enumerate().map(of).collect();
        })
    };
    let together = of(&targets).colour;
    assert_ne!(together[0].swatch, together[1].swatch);
    for (colour, target) in together.iter().zip(targets) {
        let alone = &of(&[target]).colour[0];
        assert_eq!((colour.swatch, colour.exposed_swatch), (alone.swatch, alone.exposed_swatch), "{}", colour.section);
    }
}

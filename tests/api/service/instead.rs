//! What the shelf has instead of what runs short, kind by kind: what is enough to the gram, what fits, which comes first.

use super::base::{changed, only_lightener, shop};
use foilwork::{
    service::{Plan, ServiceFile, shape::Section},
    shop::StrengthBasis,
    shop::shape::{DeveloperEntry, DiluentEntry, LightenerEntry},
};

/// What is offered instead of a product, with its why.
fn instead(plan: &Plan, product: &str) -> Vec<String> {
    let line = plan.stock.products.iter().find(|line| line.product == product).unwrap();
    line.instead.iter().map(|one| format!("{}: {}", one.product, one.why)).collect()
}

fn bottle(name: &str, strength: &str, in_hand_g: Option<f64>) -> DeveloperEntry {
    DeveloperEntry {
        name: name.to_owned(),
        strength: strength.to_owned(),
        strength_basis: StrengthBasis::Measured,
        in_hand_g,
        ..DeveloperEntry::default()
    }
}

/// By hand: 45 g of 1:2 take 30 g of the developer, of which 1 g is there. Another of 6 % has to hold all 30 g, else 12 % and 3 % are
/// blended, one part to two; what another bowl takes of a bottle is no longer there.
#[test]
fn a_developer_is_replaced_by_one_bottle_or_by_a_blend() {
    let offered = |bottles: &[DeveloperEntry], change: &dyn Fn(&mut ServiceFile)| {
        let plan = changed(only_lightener(), |file| {
            shop(file).developer[0].in_hand_g = Some(1.0);
            shop(file).developer.extend(bottles.to_vec());
            change(file);
        });
        instead(&plan, "developer")
    };
    let same = |_: &mut ServiceFile| ();
    let twin = |in_hand| bottle("twin", "6 % w/w", in_hand);
    let pair = [bottle("strong", "12 % w/w", None), bottle("weak", "3 % w/w", None)];
    let with = |twin: DeveloperEntry| [&pair[..], &[twin]].concat();
    let (one, blend) = ("twin: the same strength", "strong + weak: blended to the same strength, 10 g + 20 g");
    assert_eq!(offered(&[], &same), [""; 0]);
    assert_eq!(offered(&pair, &same), [blend]);
    assert_eq!(offered(&with(twin(None)), &same), [one]);
    assert_eq!(offered(&with(twin(Some(30.1))), &same), [one]);
    assert_eq!(offered(&[twin(Some(30.1))], &same), [one]);
    assert_eq!(offered(&[twin(Some(29.9))], &same), [""; 0]);
    assert_eq!(offered(&pair[..1], &same), [""; 0], "12 % alone is not 6 %");
    // Another section takes 30 g of the twin: of 30 g nothing is left, of 59.9 g not enough, of 60.1 g it is.
    let also = |file: &mut ServiceFile| {
        let developer = Some("twin".to_owned());
        let side = Section { name: "side".to_owned(), developer, ..file.section[0].clone() };
        file.section.push(side);
    };
    for (in_hand, want) in [(30.0, blend), (60.1, one)] {
        assert_eq!(offered(&with(twin(Some(in_hand))), &also), [want], "{in_hand}");
    }
    assert_eq!(offered(&[twin(Some(30.0))], &also), [""; 0]);
    assert_eq!(offered(&[twin(Some(59.9))], &also), [""; 0]);
    // Water of the shop blends as well: 12 % to 6 % in halves.
    let water = |file: &mut ServiceFile| {
        shop(file).diluent = vec![DiluentEntry { name: "base".to_owned(), ..DiluentEntry::default() }];
    };
    let halves = "strong + base: blended to the same strength, 15 g + 15 g";
    assert_eq!(offered(&pair[..1], &water), [halves]);
}

/// Lightener that may touch the scalp is replaced by such, any by any else; two at most, the first of the shop first. Of 45 g of 1:2 a
/// third is powder: 15 g.
#[test]
fn a_lightener_is_replaced_by_what_may_go_where_it_goes() {
    let entry = |name: &str, on_scalp: bool, in_hand_g: Option<f64>| LightenerEntry {
        name: name.to_owned(),
        ratio: "1:1.5".to_owned(),
        on_scalp,
        in_hand_g,
        ..LightenerEntry::default()
    };
    let offered = |on_scalp: bool, others: &[LightenerEntry]| -> Vec<String> {
        let plan = changed(only_lightener(), |file| {
            (shop(file).lightener[0].in_hand_g, shop(file).lightener[0].on_scalp) = (Some(10.0), on_scalp);
            shop(file).lightener.extend(others.to_vec());
        });
        let line = plan.stock.products.iter().find(|line| line.product == "powder").unwrap();
        let said = "1:1.5 to developer: weigh it anew, and test a strand";
        assert!(line.instead.iter().all(|one| one.why == said && one.apart_ciede2000.is_none()), "{:?}", line.instead);
        assert!(line.instead.iter().all(|one| one.to_string() == format!("{} ({said})", one.product)));
        line.instead.iter().map(|one| one.product.clone()).collect()
    };
    let (off, on) = (entry("off", false, None), entry("on", true, None));
    assert_eq!(offered(false, &[off.clone(), on.clone()]), ["off", "on"]);
    assert_eq!(offered(true, &[off.clone(), on.clone()]), ["on"]);
    assert_eq!(offered(true, std::slice::from_ref(&off)), [""; 0]);
    assert_eq!(offered(false, &[on.clone(), off.clone(), entry("third", true, None)]), ["on", "off"]);
    assert_eq!(offered(false, &[entry("little", false, Some(14.9)), off, on]), ["off", "on"]);
    assert_eq!(offered(false, &[entry("enough", false, Some(15.0))]), ["enough"]);
}

/// 3 % of a bottle of 6 % are half of it and half of the diluent: of 30 g 15 g, which another diluent has or has not.
#[test]
fn a_diluent_is_replaced_by_another() {
    let offered = |others: &[(&str, Option<f64>)]| -> Vec<String> {
        let plan = changed(only_lightener(), |file| {
            let of = |name: &str, in_hand_g: Option<f64>| DiluentEntry {
                name: name.to_owned(),
                in_hand_g,
                ..DiluentEntry::default()
            };
            shop(file).diluent = vec![of("base", Some(20.0))];
            shop(file).diluent.extend(others.iter().map(|(name, in_hand)| of(name, *in_hand)));
            (file.section[0].developer, file.section[0].strength) = (None, Some("3 % w/w".to_owned()));
            // A second bowl takes another 15 g of it: 30 g are wanted of the 20 g that are there.
            let side = Section { name: "side".to_owned(), ..file.section[0].clone() };
            file.section.push(side);
        });
        let line = plan.stock.products.iter().find(|line| line.product == "base");
        let Some(line) = line else { return vec!["base is not taken".to_owned()] };
        assert_eq!(line.wanted.best().g().round(), 30.0);
        instead(&plan, "base")
    };
    let why = |name: &str| format!("{name}: weakens the developer as well");
    assert_eq!(offered(&[]), [""; 0]);
    assert_eq!(offered(&[("little", Some(1.0))]), [""; 0]);
    assert_eq!(offered(&[("more", Some(31.0)), ("less", Some(2.0))]), [why("more")]);
}

//! Steps before the colour: their grams, minutes, place in the order, on the shelf and in the cautions. What is done is
//! common practice; every amount is worked out by hand from what the test states.

use super::base::{changed, fine, near, only_colour, only_lightener, shop, texts, verdicts};
use foilwork::{
    finding::Verdict::{NotJudged, Note, Stop, Warning},
    head::{ExtraStep, StepEnd},
    quantity::Duration,
    service::{FirstStep, Plan, ServiceFile, mixing_cards, shape::HistoryFlag},
    source::Interval,
};
use serde_json::json;

/// Level 6 on level 6 with 60 % white: resistant white hair, under 40 g of colour put on in 20 min.
fn on_white(first: &[ExtraStep]) -> Plan {
    changed(only_colour(), |file| {
        file.analysis.white_percent = Some(60.0);
        file.section[0].mix_g = Some(40.0);
        file.section[0].first = first.to_vec();
    })
}

fn minutes(time: Option<Interval<Duration>>) -> [f64; 3] {
    time.unwrap().to_array().map(Duration::min)
}

fn only(plan: &Plan) -> &FirstStep {
    let [step] = plan.first_steps.as_slice() else { panic!("{:#?}", plan.first_steps) };
    step
}

/// 40 g of colour in foil are on 26.7 g of hair, at 1.5 g on a gram; 0.8 g of developer on a gram of the 60 % that are white
/// are 12.8 g. A weave is painted in 20 min, a liquid in half of that: on from 0 to 10, over after 10 min more.
#[test]
fn pre_softening_in_grams_and_minutes() {
    let plan = on_white(&[ExtraStep::PreSoften]);
    let step = only(&plan);
    assert_eq!(
        (step.section.as_str(), step.step, step.planned, step.asked_for),
        ("top", ExtraStep::PreSoften, true, true)
    );
    near(step.mix.best().g(), 40.0 / 1.5 * 0.8 * 0.6, 1e-9);
    assert!(step.mix.low() < step.mix.best() && step.mix.best() < step.mix.high());
    assert_eq!((step.parts[0].product.as_str(), step.parts[0].weigh.g()), ("developer", 12.8));
    assert_eq!(minutes(step.begin), [0.0; 3]);
    // From 5 min of brushing and 5 on the hair to 20 and 20.
    assert_eq!((minutes(step.over), step.then), ([10.0, 20.0, 40.0], StepEnd::Blot));
    // A bowl in 3 min, 10 of brushing, a look after 5 of 10 min and one at the end; with less and more of both 3 + 5 + 1 and
    // 3 + 20 + 3 + 1.
    assert_eq!(minutes(Some(step.hands)), [9.0, 15.0, 27.0]);
    near(plan.chair.hands_on.min() - on_white(&[]).chair.hands_on.min(), 15.0, 1e-9);
    // The colour follows it, and the chair is taken that much longer.
    let without = on_white(&[]);
    near(plan.order[0].begin.min(), 20.0, 1e-9);
    // By the day, which counts from the first work, its bowl of 3 min is before that.
    near(plan.chair.total.min() - without.chair.total.min(), 23.0, 1e-9);
    near(plan.chair.first_steps.min(), 23.0, 1e-9);
    // On the shelf: 20 g of developer for the colour at 1:1, and 12.8 g.
    let taken =
        |plan: &Plan| plan.stock.products.iter().find(|line| line.product == "developer").unwrap().wanted.best().g();
    near(taken(&plan) - taken(&without), 12.8, 1e-6);
    let flat: String = plan.to_string().split_whitespace().collect::<Vec<_>>().join(" ");
    let order = order_of(&plan);
    let said =
        "First on top, pre-soften: 0 to 20 (10 to 40); 10 (5 to 20) min on the hair, then blot it dry, do not rinse.";
    assert!(order.contains(said), "{order}");
    assert!(flat.contains("developer as it is, on the white hair only"), "{flat}");
    assert!(flat.contains("First. top, pre-soften: 12.8 ("), "{flat}");
    assert!(verdicts(&plan, "step before").is_empty());
}

/// Two sections: nobody mixes the second bowl while the first is brushed on. 10 min of brushing, 3 of mixing, 10 of brushing, and the
/// second is over 10 min later.
#[test]
fn a_second_step_has_its_bowl_on_the_clock() {
    let plan = changed(only_colour(), |file| {
        file.analysis.white_percent = Some(60.0);
        let mut other = file.section[0].clone();
        other.name = "sides".to_owned();
        file.section.push(other);
        for section in &mut file.section {
            (section.first, section.mix_g, section.share_percent) =
                (vec![ExtraStep::PreSoften], Some(40.0), Some(20.0));
        }
    });
    let [first, second] = plan.first_steps.as_slice() else { panic!("{:#?}", plan.first_steps) };
    let brushed = first.apply.best().min();
    near(second.begin.unwrap().best().min(), brushed + 3.0, 1e-9);
    near(second.over.unwrap().best().min(), 2.0 * brushed + 3.0 + 10.0, 1e-9);
}

/// The running order on the sheet, in one line.
fn order_of(plan: &Plan) -> String {
    let sheet = foilwork::sheet::bench_sheet_of(plan, &[foilwork::sheet::SheetPart::Order]);
    sheet.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// What to weigh and what to mind stands with the bowls, once; what is planned comes before what is not (common practice).
#[test]
fn the_order_names_a_step_and_its_minutes() {
    let order = order_of(&on_white(&[ExtraStep::CleanFirst]));
    let at = |words: &str| order.find(words).unwrap_or_else(|| panic!("{words}: {order}"));
    assert!(
        at("First on top, clean out the artificial pigment first: 0 to")
            < at("Not planned, top, pre-soften: 10 (5 to 20) min")
    );
    assert!(!order.contains("weigh") && !order.contains("Mind:") && !order.contains(" g "), "{order}");
}

/// What is asked for and not planned is a note with grams and minutes, and moves nothing.
#[test]
fn a_step_that_is_asked_for_is_named() {
    let plan = on_white(&[]);
    let step = only(&plan);
    assert_eq!((step.planned, step.asked_for, step.begin), (false, true, None));
    assert_eq!(verdicts(&plan, "step before"), [Note]);
    assert!(texts(&plan, "step before").contains("would come before the colour; plan it in `first`"));
    near(plan.order[0].begin.min(), 0.0, 1e-9);
    let unasked = changed(only_colour(), |file| file.section[0].first = vec![ExtraStep::PreSoften]);
    assert_eq!(verdicts(&unasked, "step before"), [Note]);
    assert!(texts(&unasked, "step before").contains("nothing stated asks for it"));
    assert!(changed(fine(), |_| ()).first_steps.is_empty());
}

/// Artificial level 4 to 9: cleaned first with powder at 1:2, of which a third is powder; 45 g of lightener in foil are on
/// 18 g of hair, which take 1.5 g each: 9 and 18 g. It is rinsed: 10 min of brushing, 10 on the hair, 2 to the basin, 3 there.
#[test]
fn cleaning_first_is_rinsed_and_brings_its_cautions() {
    let artificial = |file: &mut ServiceFile| {
        file.analysis.existing =
            serde_json::from_value(json!([{ "zone": "whole", "level": 4, "artificial": true }])).unwrap();
        file.section[0].first = vec![ExtraStep::CleanFirst];
    };
    let plan = changed(only_lightener(), artificial);
    let step = only(&plan);
    assert_eq!((step.step, step.asked_for, step.then), (ExtraStep::CleanFirst, true, StepEnd::Rinse));
    near(step.mix.best().g(), 27.0, 1e-9);
    let parts: Vec<(&str, f64)> = step.parts.iter().map(|part| (part.product.as_str(), part.weigh.g())).collect();
    assert_eq!(parts, [("powder", 9.0), ("developer", 18.0)]);
    // At the least 5 + 5 min, at the most 20 + 20, and the basin; hands: 3 + 10 + 2 looks + 2 + 3.
    assert_eq!(minutes(step.over), [15.0, 25.0, 45.0]);
    near(step.hands.best().min(), 20.0, 1e-9);
    near(plan.order[0].begin.min(), 25.0, 1e-9);
    // Peroxide and metallic salts react.
    let salts = changed(only_lightener(), |file| {
        artificial(file);
        file.analysis.history = Some(vec![HistoryFlag::MetallicSalts]);
    });
    assert!(verdicts(&salts, "step before").contains(&Stop));
    // With nothing weak enough on the shelf that is said, and nothing is weighed.
    let strong = changed(only_lightener(), |file| {
        artificial(file);
        shop(file).developer[0].strength = "9 % w/w".to_owned();
    });
    assert!(only(&strong).parts.is_empty());
    assert_eq!(verdicts(&strong, "step before"), [Warning]);
    assert!(texts(&strong, "step before").contains("no developer of 6 % w/w or weaker"));
    // Who works from the cards does not begin with the colour.
    let cards = mixing_cards(&strong);
    assert_eq!((cards.len(), cards[0].parts.len(), cards[1].name.as_str()), (2, 0, "top"));
    let text = foilwork::sheet::card_sheet(&cards[..1], &strong.habits);
    let text = text.split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(text.starts_with("guest: top, clean out the artificial pigment first NOTHING TO WEIGH"), "{text}");
    assert!(text.contains("no developer of 6 % w/w or weaker") && !text.contains("total"), "{text}");
}

/// A step of a colour service with lightener in it brings the lightener's cautions, which the colour alone does not.
#[test]
fn the_cautions_are_those_of_the_step_too() {
    let dust = |first: &[ExtraStep]| {
        changed(only_colour(), |file| file.section[0].first = first.to_vec())
            .cautions
            .iter()
            .any(|caution| caution.text.contains("dust"))
    };
    assert!(!dust(&[]) && dust(&[ExtraStep::CleanFirst]));
}

/// Level 9 that was lightened to level 6: as much warm shade as of the colour, 20 of 40 g at 1:1.
#[test]
fn warmth_goes_back_first() {
    let plan = changed(only_colour(), |file| {
        file.analysis.existing =
            serde_json::from_value(json!([{ "zone": "whole", "level": 9, "artificial": false }])).unwrap();
        file.section[0].mix_g = Some(40.0);
        file.section[0].first = vec![ExtraStep::PrePigment];
    });
    let step = only(&plan);
    assert_eq!((step.step, step.asked_for), (ExtraStep::PrePigment, true));
    near(step.mix.best().g(), 20.0, 1e-9);
    let pigment = &plan.colour[0].pre_pigment.as_ref().unwrap().part;
    assert_eq!((&step.parts[0].product, step.parts[0].weigh), (&pigment.code, pigment.mass));
}

/// Source: Regulation (EC) No 1223/2009, Annex III: entry 22, resorcinol 1.25 % in an oxidative hair dye; entry 12(a), 12 % of
/// H2O2 on hair. What softens goes on as it is, 40 % and 6 %; powder 1:2 with 6 % leaves two thirds of it, 4 %.
#[test]
fn the_law_holds_for_a_step_as_for_a_bowl() {
    let plan = changed(only_colour(), |file| {
        file.section[0].developer = Some("other".to_owned());
        let mut other = shop(file).developer[0].clone();
        other.name = "other".to_owned();
        other.strength = "9 % w/w".to_owned();
        shop(file).developer.push(other);
        let resorcinol = json!({ "substance": "resorcinol", "cas": "108-46-3", "ww_percent": 40.0 });
        shop(file).developer[0].composition = vec![serde_json::from_value(resorcinol).unwrap()];
        file.section[0].first = vec![ExtraStep::PreSoften];
    });
    assert!(plan.blocked, "{}", texts(&plan, "law"));
    let stop = plan.findings.iter().find(|one| one.verdict == Stop).unwrap();
    assert!(stop.text.starts_with("top, pre-soften: resorcinol") && stop.text.contains("40"), "{}", stop.text);

    let soft = on_white(&[ExtraStep::PreSoften]);
    assert!(texts(&soft, "law").contains("top, pre-soften 6 % w/w of 12 %"), "{}", texts(&soft, "law"));
    let cleaned = changed(only_lightener(), |file| file.section[0].first = vec![ExtraStep::CleanFirst]);
    assert!(
        texts(&cleaned, "law").contains("top, clean out the artificial pigment first 4 % w/w of 12 %"),
        "{}",
        texts(&cleaned, "law")
    );
    // A powder that nobody declares may release any amount.
    let open = changed(only_lightener(), |file| {
        shop(file).lightener[0].declared_in_full = false;
        file.section[0].first = vec![ExtraStep::CleanFirst];
    });
    assert_eq!(verdicts(&open, "law"), [NotJudged, NotJudged], "{}", texts(&open, "law"));
    // What the shop has nothing for is held against nothing.
    let nothing = changed(only_colour(), |file| {
        shop(file).developer[0].strength = "9 % w/w".to_owned();
        file.section[0].first = vec![ExtraStep::PreSoften];
    });
    assert!(verdicts(&nothing, "law").contains(&NotJudged), "{}", texts(&nothing, "law"));
}

/// By hand: the powder takes 3 % at most by its entry, and 6 % is the only bottle.
#[test]
fn the_makers_strongest_developer_holds_for_a_step_too() {
    let plan = changed(only_colour(), |file| {
        shop(file).lightener[0].strongest_developer_ww_percent = Some(3.0);
        file.section[0].first = vec![ExtraStep::CleanFirst];
    });
    let said = texts(&plan, "developer");
    assert!(verdicts(&plan, "developer").contains(&Stop), "{said}");
    assert!(said.contains("artificial pigment first: developer 6.00 % w/w with \"powder\", which takes 3 %"), "{said}");
}

/// The weaker bottle is for the toner; a head of hair is not cleaned with it where there is another.
#[test]
fn cleaning_leaves_the_developer_of_the_toner() {
    let plan = changed(fine(), |file| {
        let mut weak = shop(file).developer[0].clone();
        weak.name = "weak".to_owned();
        weak.strength = "2 % w/w".to_owned();
        shop(file).developer.push(weak);
        file.toner[0].developer = Some("weak".to_owned());
        file.section[0].first = vec![ExtraStep::CleanFirst];
    });
    assert_eq!(only(&plan).parts[1].product, "developer");
}

/// Source: none in print mixes above pH 10.3 (citation `mixed-ph`); common practice: the step is held to what the bowl is.
#[test]
fn the_ph_of_a_step_is_judged_too() {
    let plan = changed(only_colour(), |file| {
        shop(file).lightener[0].mixed_ph = Some(11.0);
        file.section[0].first = vec![ExtraStep::CleanFirst];
    });
    assert_eq!(verdicts(&plan, "alkalinity"), [Warning]);
    let said = texts(&plan, "alkalinity");
    assert!(said.starts_with("top, clean out the artificial pigment first: \"powder\" mixes to pH 11"), "{said}");
    let card = &mixing_cards(&plan)[0];
    assert!(card.findings.iter().any(|one| one.verdict == Warning && one.text.contains("pH 11")), "{card:#?}");
}

/// By hand, as in `cleaning_first_is_rinsed_and_brings_its_cautions`: from 10:00, 9 g of powder and 18 g of developer, on by
/// 10:10, over by 10:25, and only then the first bowl; of a third and two thirds of 6 % two thirds, 4 %.
#[test]
fn a_planned_step_is_first_at_the_chair_on_the_page_and_on_a_card() {
    let plan = changed(only_lightener(), |file| file.section[0].first = vec![ExtraStep::CleanFirst]);
    let flat = |text: &str| text.split_whitespace().collect::<Vec<_>>().join(" ");
    let sheet = flat(&plan.to_string());
    let (_, chair) = sheet.split_once("AT THE CHAIR").unwrap();
    let (step, bowl) = chair.split_once("10:25 1. top").unwrap();
    assert!(step.contains("10:00 top, clean out the artificial pigment first"), "{step}");
    assert!(step.contains("weigh 9 g powder, 18 g developer (27 g); 4 % w/w on the hair"), "{step}");
    assert!(
        step.contains("all on by 10:10 (10:05 to 10:20)")
            && step.contains("over by 10:25 (10:15 to 10:45)")
            && step.contains("judge the hair anew")
    );
    let (_, weighed) = bowl.split_once("WHAT TO WEIGH").unwrap();
    assert!(weighed.split_once("1. top").unwrap().0.contains("developer 18 g 27 g"), "{weighed}");
    let page = foilwork::sheet::bench_page(&plan);
    let (before, _) = page.split_once("<h3 dir=\"auto\">1. top</h3>").unwrap();
    assert!(
        before.contains("First: top, clean out") && before.contains("10:25") && before.contains("judge the hair anew")
    );

    let cards = mixing_cards(&plan);
    let card = &cards[0];
    assert_eq!((card.then, card.total.g(), card.minutes.mixed_at.min()), (Some(StepEnd::Rinse), 27.0, 0.0));
    near(card.on_hair.unwrap().best().ww_percent(), 4.0, 1e-9);
    assert_eq!((card.parts[1].product.as_str(), card.parts[1].scale_shows.g()), ("developer", 27.0));
    assert_eq!((cards[1].name.as_str(), cards[1].then), ("top", None));
    let text = flat(&foilwork::sheet::card_sheet(&cards, &plan.habits));
    // Common practice: it is looked at until it is off, so that no minute stands for a look.
    assert!(card.minutes.look_at.is_empty());
    let words = "look at the hair all the while; rinse, dry, and judge the hair anew at about 10:20 (10:10 to 10:40)";
    assert!(text.contains(words) && text.contains("mind: look every few minutes"), "{text}");
    // What is only asked for is on no card.
    assert_eq!(mixing_cards(&on_white(&[])).len(), 1);
}

/// Artificial colour under a shade, cleaned first with a remover that its maker says this of. Persulfates sensitise (HSE, COSHH
/// essentials for hairdressing); peroxide and metallic salts react (common practice). What nobody says is taken for held.
#[test]
fn a_remover_is_judged_by_what_it_holds() {
    let cleaned = |remover: serde_json::Value, flag: HistoryFlag| {
        changed(only_colour(), |file| {
            file.analysis.history = Some(vec![flag]);
            shop(file).remover = vec![serde_json::from_value(remover).unwrap()];
            file.section[0].first = vec![ExtraStep::CleanFirst];
            file.section[0].clean_with = Some("remover".to_owned());
        })
    };
    let free = || json!({ "name": "remover", "persulfate": false, "peroxide": false });
    let plan = cleaned(free(), HistoryFlag::ReactionToLightener);
    assert_eq!(verdicts(&plan, "earlier reaction"), [Warning], "{}", texts(&plan, "earlier reaction"));
    let step = only(&plan);
    assert_eq!((step.parts.len(), step.parts[0].product.as_str(), step.on_hair), (1, "remover", None));
    near(step.parts[0].mass.best().g(), step.mix.best().g(), 1e-9);
    assert!(!plan.cautions.iter().any(|caution| caution.text.contains("dust")));
    let silent = cleaned(json!({ "name": "remover" }), HistoryFlag::ReactionToLightener);
    assert_eq!(verdicts(&silent, "earlier reaction"), [Stop]);
    // How long it may stay on stands on its leaflet, not on the shelf: that is open, and not fine.
    let times = texts(&plan, "time");
    assert!(times.contains("the longest time of \"remover\" is not on the shelf"), "{times}");
    // Nor is the card of what nobody says of its peroxide any zero, nor its lightening kept from the guest.
    let card = |plan: &Plan| foilwork::sheet::card_sheet(&mixing_cards(plan)[..1], &plan.habits);
    assert!(card(&silent).contains("peroxide on the hair: not known (by its maker)"), "{}", card(&silent));
    assert!(card(&plan).contains("peroxide on the hair 0"), "{}", card(&plan));
    let lightens = |plan: &Plan| foilwork::sheet::guest_page(plan).contains("Lightening weakens hair");
    assert!(lightens(&silent) && !lightens(&plan));
    // Free of both it is no lightener on coloured hair.
    let coloured = |remover: serde_json::Value| {
        let plan = changed(only_colour(), |file| {
            let artificial = json!([{ "zone": "whole", "level": 4, "artificial": true }]);
            file.analysis.existing = serde_json::from_value(artificial).unwrap();
            shop(file).remover = vec![serde_json::from_value(remover).unwrap()];
            file.section[0].first = vec![ExtraStep::CleanFirst];
            file.section[0].clean_with = Some("remover".to_owned());
        });
        (texts(&plan, "earlier service"), plan)
    };
    // A remover is no lightener, and one that says nothing of peroxide is taken as holding it: each is named as what it is.
    let (said, silent) = coloured(json!({ "name": "remover" }));
    assert!(
        said.contains("remover, a remover, over artificial colour (whole, level 4): it is taken as holding"),
        "{said}"
    );
    assert!(!said.contains("lightener over") && !coloured(free()).0.contains("over artificial colour"), "{said}");
    assert_eq!(only(&silent).what, "remover, a remover, by its own instructions, on the artificial colour only");
    let told = foilwork::sheet::guest_page(&silent);
    assert!(told.contains("colour that is in the hair is taken out, with a remover (remover)"), "{told}");
    // Declared in full without any of it says the same as a word for it.
    let sulfite = json!([{ "substance": "sodium sulfite", "cas": "7757-83-7", "ww_percent": 5.0 }]);
    let declared = json!({ "name": "remover", "declared_in_full": true, "composition": sulfite });
    assert_eq!(verdicts(&cleaned(declared, HistoryFlag::ReactionToLightener), "earlier reaction"), [Warning]);
    // No peroxide, nothing for the salts to react with in this step; the colour over it has its own stop.
    let salts = |remover| verdicts(&cleaned(remover, HistoryFlag::MetallicSalts), "step before");
    assert!(!salts(free()).contains(&Stop) && salts(json!({ "name": "remover", "persulfate": false })).contains(&Stop));
    // A word against the declaration is refused.
    let mut file = only_colour();
    let persulfate = json!([{ "substance": "ammonium persulfate", "cas": "7727-54-0", "ww_percent": 30.0 }]);
    let both = json!({ "name": "remover", "persulfate": false, "composition": persulfate });
    shop(&mut file).remover = vec![serde_json::from_value(both).unwrap()];
    let told = foilwork::service::plan(&file).unwrap_err().to_string();
    assert!(told.contains("shop.remover[1].persulfate: false, and `composition` declares it"), "{told}");
    // Without a name it is lightener, as far as the shop has any.
    let lightener = changed(only_colour(), |file| {
        shop(file).remover = vec![serde_json::from_value(free()).unwrap()];
        file.section[0].first = vec![ExtraStep::CleanFirst];
    });
    assert_eq!(only(&lightener).parts[0].product, "powder");
    let mut file = only_colour();
    file.section[0].clean_with = Some("soap".to_owned());
    let told = foilwork::service::plan(&file).unwrap_err().to_string();
    assert!(told.contains("section[1].clean_with") && told.contains("soap"), "{told}");
}

#[test]
fn another_step_is_refused_with_those_there_are() {
    let text = serde_json::to_value(only_colour()).map(|mut file| {
        file["section"][0]["first"] = json!(["soak"]);
        file.to_string()
    });
    let refused = foilwork::service::parse(&text.unwrap(), foilwork::reader::Format::Json).unwrap_err().to_string();
    assert!(refused.contains("section[1].first[1]") && refused.contains("pre-soften"), "{refused}");
}

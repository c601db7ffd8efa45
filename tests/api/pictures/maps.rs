//! The map of the head, as a picture and for a terminal, of templates with few regions.

use super::{level, outlined, rect, said, same, text};
use foilwork::{
    chart::{HeadChart, head_chart, head_text},
    colour::{Lightness, Swatch},
    head::{Region, RegionLook, Template},
    quantity::Share,
    source::{Basis, Interval},
};

fn template(regions: &[(&str, f64, Option<[f64; 4]>)]) -> Template {
    let region = |(name, area, place): &(&str, f64, Option<[f64; 4]>)| Region {
        name: (*name).to_owned(),
        area: Share::from_percent(*area).unwrap(),
        density_percent: Interval::exact(100.0),
        outline: false,
        inward: Share::NONE,
        front: false,
        place: *place,
    };
    Template::new(regions.iter().map(region).collect(), Basis::Stated).unwrap()
}

fn look(region: &str, [low, best, high]: [f64; 3]) -> RegionLook {
    let l = |value| Lightness::from_lab_l(value).unwrap();
    RegionLook {
        region: region.to_owned(),
        hair: Interval::exact(Share::ALL),
        lab_l: Interval::new(l(low), l(best), l(high)).unwrap(),
        colour: Swatch::natural(level(6.0)),
    }
}

fn written(lines: &[&[&str]]) -> Vec<Vec<String>> {
    lines.iter().map(|lines| lines.iter().map(|line| (*line).to_owned()).collect()).collect()
}

/// Two regions: 2 by 2 units at the upper left, 3 by 1.5 below and to the right; the map is 5 by 3.5 units of 56 and 64 above. White is 6
/// a letter and 8 more, but 6 narrower than the region, and 13 a line and 4 more.
#[test]
fn a_map_in_full() {
    let template = template(&[("top", 60.0, Some([0.0, 0.0, 2.0, 2.0])), ("crown", 40.0, Some([2.0, 2.0, 3.0, 1.5]))]);
    let looks = [look("top", [40.0; 3]), look("crown", [20.0, 30.4, 40.0])];
    let written = written(&[&["a line of more than the room", "2"]]);
    let svg = head_chart(&HeadChart { title: "map", template: &template, looks: &looks, written: &written });
    let colour = outlined(&looks[0].colour.srgb().to_string(), "#222", 1.5);
    let white = "fill=\"#fff\" opacity=\"0.85\"";
    let want = [
        rect([0.0, 0.0, 280.0, 260.0], "fill=\"#fff\""),
        text((8.0, 24.0), "start", 15.0, "map"),
        text((8.0, 44.0), "start", 11.0, "face at the top; colours are a model, not a photograph"),
        rect([0.0, 64.0, 112.0, 112.0], &colour),
        rect([3.0, 67.0, 106.0, 56.0], white),
        text((6.0, 80.0), "start", 10.5, "top"),
        text((6.0, 93.0), "start", 10.5, "L* 40"),
        text((6.0, 106.0), "start", 10.5, "a line of more than the room"),
        text((6.0, 119.0), "start", 10.5, "2"),
        rect([112.0, 176.0, 168.0, 84.0], &colour),
        rect([115.0, 179.0, 38.0, 30.0], white),
        text((118.0, 192.0), "start", 10.5, "crown"),
        text((118.0, 205.0), "start", 10.5, "L* 30"),
    ];
    same(&svg, &want);
    assert_eq!(said(&svg), ["map", "top L* 40 (a line of more than the room, 2) and crown L* 30"]);
}

/// Six columns and two rows a unit. Where a box has room for one row, all of it stands there; where it has more, a row for each; what there
/// is no room for is left to the lines below.
#[test]
fn a_map_for_a_terminal_in_full() {
    let template = template(&[
        ("top", 40.0, Some([0.0, 0.0, 2.0, 2.0])),
        ("crown", 40.0, Some([2.0, 2.0, 3.0, 1.0])),
        ("nape", 20.0, Some([3.0, 0.5, 1.0, 1.0])),
    ]);
    let looks = [look("top", [40.0; 3]), look("crown", [20.0, 30.4, 40.0]), look("nape", [50.0; 3])];
    let written = written(&[&["one", "two and more", "three", "four"], &["foils 1-4", "part"], &[]]);
    let map = head_text(&HeadChart { title: "map", template: &template, looks: &looks, written: &written });
    let want = "map\n\n\
        +-----------+\n\
        |A 40       |     +-----+\n\
        |one        |     |C 50 |\n\
        |two and mor|     +-----+\n\
        +-----------+-----------------+\n\
        \x20           |B 30 foils 1-4 pa|\n\
        \x20           +-----------------+\n\n\
        A top: L* 40; one, two and more, three, four\n\
        B crown: L* 30 (20 to 40); foils 1-4, part\n\
        C nape: L* 50\n\
        Letter and best L* of each region, face at the top; a model of the colour.\n";
    assert_eq!(map, want);
}

/// Without places regions stand in a list, each two rows high; after Z the letters begin anew with a number.
#[test]
fn a_list_of_many_regions() {
    let names: Vec<String> = (0..28).map(|place| format!("region {place}")).collect();
    let regions: Vec<(&str, f64, Option<[f64; 4]>)> =
        names.iter().map(|name| (name.as_str(), if name == "region 0" { 73.0 } else { 1.0 }, None)).collect();
    let template = template(&regions);
    let looks: Vec<RegionLook> = names.iter().map(|name| look(name, [40.0; 3])).collect();
    let map = head_text(&HeadChart { title: "list", template: &template, looks: &looks, written: &[] });
    let lines: Vec<&str> = map.lines().collect();
    let side = format!("+{}+", "-".repeat(71));
    assert_eq!(lines[2], side);
    for (place, letter) in [(0, "A"), (1, "B"), (25, "Z"), (26, "A1"), (27, "B1")] {
        let row = lines[3 + 2 * place];
        assert_eq!(row, format!("|{:<71}|", format!("{letter} 40")), "{map}");
        let told = format!("{letter} region {place}: L* 40");
        assert!(lines.contains(&told.as_str()), "{told}: {map}");
    }
}

//! Cells, bars, rows and regions where they belong.

use super::{Drawn, costs, day, elements, grid, head, level, near, of, pigment, said, scale, strip, timeline, wheel};
use foilwork::{
    chart::{CostChart, HeadChart, cost_chart, head_chart, head_text},
    colour::{Hue, Swatch},
    head::{Template, read_head},
    money::{CostKind, CostLine, CostTable, Currency, Money},
    quantity::Duration,
    source::Basis,
};

/// 80 g at 6 % from 12 % are half of it, at 3 % from 12 % a quarter; what is there already is all of it.
#[test]
fn the_dark_part_of_a_cell_is_the_share_from_the_bottle() {
    let all = elements(&grid());
    let cells: Vec<_> = of(&all, "rect").into_iter().filter(|one| one.height() > 30.0).skip(1).collect();
    let bars: Vec<_> = of(&all, "rect").into_iter().filter(|one| one.height() < 30.0).collect();
    let shares: Vec<f64> = bars.chunks(2).map(|pair| pair[1].width() / pair[0].width()).collect();
    assert_eq!(shares, [0.5, 0.25, 1.0, 0.5, 1.0]);
    assert_eq!(cells.len(), 6);
    for (place, cell) in cells.iter().enumerate() {
        let (column, row) = ((place % 2) as f64, (place / 2) as f64);
        near(cell.x(), cells[0].x() + column * cells[0].width());
        near(cell.y(), cells[0].y() + row * cells[0].height());
        let centre = cell.x() + cell.width() / 2.0;
        near(said(&all, ["to six", "to three"][place % 2]).x(), centre);
        let within = |one: &&Drawn| one.kind == "text" && one.at["text-anchor"] == "middle" && one.x() == centre;
        let inside = |one: &&Drawn| one.y() > cell.y() && one.y() < cell.y() + cell.height();
        assert!(all.iter().filter(within).filter(inside).count() >= 1, "{cell:?}");
        let name = said(&all, ["12 %", "6 %", "3 %"][place / 2]);
        assert!(inside(&name), "{name:?}");
    }
    for pair in bars.chunks(2) {
        let on = |cell: &&&Drawn| {
            let beside = pair[0].x() - cell.x();
            (beside - (cell.x() + cell.width() - pair[0].x() - pair[0].width())).abs() < 0.03 && beside > 0.0
        };
        let held = cells.iter().filter(on).any(|cell| pair[0].y() + pair[0].height() < cell.y() + cell.height());
        assert!(held && (pair[0].x(), pair[0].y()) == (pair[1].x(), pair[1].y()), "{pair:?}");
    }
    let below = all.iter().find(|one| one.words.starts_with("dark: from the bottle")).unwrap();
    assert!(below.y() > cells[5].y() + cells[5].height() + 10.0);
}

/// Bars of 12.50, 30.00 and 7.50 are as 5, 12 and 3.
#[test]
fn bars_of_cost_are_as_long_as_the_amounts() {
    let all = elements(&costs());
    let bars = &of(&all, "rect")[1..];
    for (bar, share) in bars.iter().zip([5.0, 12.0, 3.0]) {
        near(bar.width(), bars[1].width() * share / 12.0);
        let beside =
            all.iter().filter(|one| one.kind == "text" && one.y() > bar.y() && one.y() < bar.y() + bar.height());
        let beside: Vec<_> = beside.collect();
        assert_eq!(beside.len(), 2, "{bar:?}");
        assert!(beside[0].x() < bar.x() && beside[1].x() > bar.x() + bar.width(), "{beside:?}");
    }
}

/// Twelve hues in a ring, a twelfth of a turn each, clockwise from the top; yellow lies opposite violet.
#[test]
fn hues_stand_in_a_ring() {
    let all = elements(&wheel());
    let place = |hue: &Hue| (said(&all, hue.words()).x(), said(&all, hue.words()).y() - 4.0);
    let (top, bottom) = (place(&Hue::ALL[0]), place(&Hue::ALL[6]));
    let (centre, radius) = (((top.0 + bottom.0) / 2.0, (top.1 + bottom.1) / 2.0), (bottom.1 - top.1) / 2.0);
    for (step, hue) in Hue::ALL.iter().enumerate() {
        let angle = std::f64::consts::TAU * step as f64 / 12.0;
        near(place(hue).0, centre.0 + radius * angle.sin());
        near(place(hue).1, centre.1 - radius * angle.cos());
        let side = place(hue).0 - centre.0;
        let anchor = if side > 20.0 {
            "start"
        } else if side < -20.0 {
            "end"
        } else {
            "middle"
        };
        assert_eq!(said(&all, hue.words()).at["text-anchor"], anchor);
    }
    let pair = of(&all, "polyline")[0].points();
    near((pair[0].0 + pair[1].0) / 2.0, centre.0);
    near((pair[0].1 + pair[1].1) / 2.0, centre.1);
    // The line points from one name to the other.
    let (from, to) = (place(&Hue::Yellow), place(&Hue::Violet));
    near(((to.0 - from.0) / (pair[1].0 - pair[0].0)) / ((to.1 - from.1) / (pair[1].1 - pair[0].1)), 1.0);
    // A sector begins half a twelfth before its name; those of the pair are drawn last.
    let sectors = of(&all, "path");
    let begins = |path: &Drawn| -> (f64, f64) {
        let mut numbers = path.at["d"][1..].split(' ').map(|text| text.parse().unwrap());
        (numbers.next().unwrap(), numbers.next().unwrap())
    };
    let turn = |(x, y): (f64, f64)| (x - centre.0).atan2(centre.1 - y).to_degrees().rem_euclid(360.0);
    let turns: Vec<f64> = sectors.iter().map(|path| (turn(begins(path)) + 15.0).round() % 360.0).collect();
    assert_eq!(turns, [0.0, 30.0, 60.0, 90.0, 150.0, 180.0, 210.0, 240.0, 270.0, 330.0, 120.0, 300.0]);
    let (warm, cool) = (said(&all, "warm"), said(&all, "cool"));
    near((warm.x() + cool.x()) / 2.0, centre.0);
    near((warm.y() + cool.y()) / 2.0 - 4.0, centre.1);
}

/// Each level in a row of its own between two lines, with what it shows in the same row.
#[test]
fn levels_of_pigment_stand_in_rows() {
    let all = elements(&pigment());
    let lines: Vec<f64> = of(&all, "polyline").iter().map(|one| one.points()[0].1).collect();
    assert_eq!(lines.len(), 10);
    let row = lines[1] - lines[0];
    for (place, line) in lines.iter().enumerate() {
        near(*line, lines[0] + row * place as f64);
        let inside = |y: f64| y > *line && y < line + row;
        assert!(inside(said(&all, &(place + 1).to_string()).y()));
        let swatches = of(&all, "rect")[1..].iter().filter(|one| inside(one.y())).count();
        assert_eq!(swatches, if place >= 5 { 2 } else { 1 });
    }
    assert!(said(&all, "level").y() < lines[0]);
    let row = |words: &str| said(&all, words).y();
    assert_eq!((row("orange"), row("yellow-orange")), (row("6"), row("7")));
    assert!(
        said(&all, "read the strand: porous and coloured hair shows other warmth").y() > lines[9] + lines[1] - lines[0]
    );
}

/// Swatches side by side, each with its words under it.
#[test]
fn swatches_stand_side_by_side() {
    let all = elements(&strip());
    let swatches = &of(&all, "rect")[1..];
    assert_eq!(swatches.len(), 2);
    near(swatches[0].y(), swatches[1].y());
    assert!(swatches[1].x() > swatches[0].x() + swatches[0].width());
    for (swatch, what) in swatches.iter().zip(["now", "then"]) {
        let name = said(&all, what);
        near(name.x(), swatch.x());
        let under: Vec<_> = of(&all, "text").into_iter().filter(|one| one.x() == name.x()).collect();
        assert!(under.len() == 2 && under[1].words.starts_with("L* "), "{under:?}");
        let bottom = swatch.y() + swatch.height();
        assert!(bottom < under[0].y() && under[0].y() < under[1].y() && under[1].y() < bottom + 40.0, "{under:?}");
    }
    let ground = all[0].width();
    assert!(swatches[1].x() + swatches[1].width() > ground - 20.0, "{ground}");
}

/// Regions as the template lays them, the face at the top; white under the words, and not beyond the region.
#[test]
fn regions_stand_as_the_template_lays_them() {
    let (all, template) = (elements(&head(head_chart)), Template::standard());
    let regions: Vec<_> = of(&all, "rect").into_iter().filter(|one| one.at.contains_key("stroke")).collect();
    let white: Vec<_> = of(&all, "rect").into_iter().filter(|one| one.at.contains_key("opacity")).collect();
    assert_eq!((regions.len(), white.len()), (template.regions().len(), template.regions().len()));
    let unit = regions[0].width() / template.drawn()[0][2];
    let above = regions[0].y() - unit * template.drawn()[0][1];
    for ((rect, place), (under, region)) in
        regions.iter().zip(template.drawn()).zip(white.iter().zip(template.regions()))
    {
        let [x, y, width, height] = place.map(|number| number * unit);
        for (got, want) in [(rect.x(), x), (rect.y(), y + above), (rect.width(), width), (rect.height(), height)] {
            near(got, want);
        }
        assert!(under.x() > rect.x() && under.x() + under.width() < rect.x() + rect.width(), "{under:?} {rect:?}");
        let name = said(&all, &region.name);
        assert!(name.x() > under.x() && name.y() > under.y() && name.y() < under.y() + under.height(), "{name:?}");
    }
    let last = said(&all, "two grams");
    assert!(last.y() > white[0].y() && last.y() < white[0].y() + white[0].height(), "{last:?}");
    assert!(white[0].height() > white[1].height() + 20.0, "two lines more");
}

/// The map in words: each region with how light it is.
#[test]
fn the_map_says_what_it_shows() {
    let picture = head(head_chart);
    for region in Template::standard().regions() {
        assert!(picture.contains(&format!("{} L* ", region.name)), "{}", region.name);
    }
}

/// Lines of what is not counted stand under the sum, one below the other, within the picture.
#[test]
fn what_is_not_counted_stands_below() {
    let mut table = CostTable::new(Currency::EUR);
    let amount = Money::parse("12.50", Currency::EUR).unwrap();
    table.push(CostLine::new(CostKind::Product, "powder", Basis::Stated, amount)).unwrap();
    let left_out: Vec<String> = (1..30).map(|place| format!("what is not known of foil {place}")).collect();
    let chart = CostChart { title: "gloss", table: &table, left_out: &left_out, style: None };
    let all = elements(&cost_chart(&chart));
    let lines: Vec<f64> =
        of(&all, "text").iter().filter(|text| text.number("font-size") == 12.0).map(|text| text.y()).collect();
    let counted = of(&all, "text").iter().find(|text| text.words.starts_with("counted")).unwrap().y();
    assert!(lines.len() > 3 && lines[0] > counted + 10.0, "{lines:?} {counted}");
    let gap = lines[1] - lines[0];
    assert!(gap > 12.0 && lines.windows(2).all(|pair| (pair[1] - pair[0] - gap).abs() < 1e-9), "{lines:?}");
    assert!(lines.last().unwrap() + 4.0 < all[0].height(), "{lines:?} {:?}", all[0]);
}

/// A box for each region at its place, six columns and two rows a unit, with the letters in their order.
#[test]
fn the_map_in_text_has_the_same_places() {
    let text = head(head_text);
    let rows: Vec<Vec<char>> = text.lines().skip(2).map(|line| line.chars().collect()).collect();
    assert!(text.starts_with("map\n\n"));
    let sign = |x: f64, y: f64| rows[y as usize].get(x as usize).copied();
    for (place, letter) in Template::standard().drawn().iter().zip('A'..) {
        let [left, top, width, height] = place;
        let [left, right, top, bottom] = [left * 6.0, (left + width) * 6.0, top * 2.0, (top + height) * 2.0];
        for (x, y) in [(left, top), (right, top), (left, bottom), (right, bottom)] {
            // Where two boxes meet, a side of the later one may cover the corner.
            assert!(matches!(sign(x, y), Some('+' | '|' | '-')), "{letter} {x} {y}\n{text}");
        }
        assert_eq!(sign(left + 1.0, top + 1.0), Some(letter), "{text}");
        assert!(matches!(sign(left, top + 1.0), Some('|' | '+')), "{text}");
    }
    assert!(rows[2].iter().collect::<String>().contains("foils 1-4") || text.contains("foils 1-4"), "{text}");
}

/// Bars from minute to minute as the ticks have it, one row for each section and each pair of hands.
#[test]
fn work_stands_at_its_minutes() {
    let (all, day) = (elements(&day()), timeline());
    let x = scale((said(&all, "0").x(), 0.0), (said(&all, "30").x(), 30.0));
    near(said(&all, "15").x(), x(15.0));
    let rects = &of(&all, "rect")[1..];
    for (row, section) in day.sections.iter().enumerate() {
        let name = said(&all, &section.name);
        let bars: Vec<_> = rects.iter().filter(|bar| bar.y() < name.y() && bar.y() + bar.height() > name.y()).collect();
        let times = [section.start, section.applied, section.rinse, section.rinsed].map(Duration::min);
        assert_eq!(bars.len(), 3, "{row}");
        for (bar, time) in bars.iter().zip(times.windows(2)) {
            near(bar.x(), x(time[0]));
            near(bar.x() + bar.width(), x(time[1]));
        }
        near(name.y() - said(&all, &day.sections[0].name).y(), 26.0 * row as f64);
        let mixed = of(&all, "polyline").iter().filter(|one| one.at["stroke-width"] == "2.5").count();
        assert!(mixed >= day.sections.len(), "{mixed}");
    }
    let hands = said(&all, "hands 1");
    let bars: Vec<_> = rects.iter().filter(|bar| bar.y() < hands.y() && bar.y() + bar.height() > hands.y()).collect();
    let mut work: Vec<_> = day.pieces.iter().filter(|piece| piece.person == 0 && piece.to > piece.from).collect();
    work.sort_by(|one, other| one.from.min().total_cmp(&other.from.min()));
    let mut seen: Vec<f64> = bars.iter().map(|bar| bar.x()).collect();
    seen.sort_by(f64::total_cmp);
    assert_eq!(seen.len(), work.len());
    for (seen, piece) in seen.into_iter().zip(work) {
        near(seen, x(piece.from.min()));
    }
}

/// A box with room for one row holds letter, lightness and what is written side by side; in a taller one it stands in the next row.
#[test]
fn what_is_written_stands_in_its_box() {
    let mut regions = Template::standard().regions().to_vec();
    // The last of them, half a unit lower than the nape line of the standard: two rows of a box, one inside.
    let place = regions.last_mut().and_then(|nape| nape.place.as_mut()).unwrap();
    place[3] = 1.0;
    let template = Template::new(regions, Basis::Stated).unwrap();
    let look = read_head(&template, &[], &Swatch::natural(level(6.0)), None);
    let written: Vec<Vec<String>> = (0..look.regions.len()).map(|place| vec![format!("w{place}")]).collect();
    let text = head_text(&HeadChart { title: "map", template: &template, looks: &look.regions, written: &written });
    let rows: Vec<Vec<char>> = text.lines().skip(2).map(|line| line.chars().collect()).collect();
    let (mut in_one_row, mut in_more) = (0, 0);
    for (place, [left, top, width, height]) in template.drawn().iter().enumerate() {
        let cell = |at: f64, scale: f64| (at * scale).round() as usize;
        let (from, to, top) = (cell(*left, 6.0) + 1, cell(left + width, 6.0), cell(*top, 2.0));
        let one_row = cell(top as f64 / 2.0 + height, 2.0) == top + 2;
        let row = &rows[if one_row { top + 1 } else { top + 2 }];
        let inside: String = row.iter().take(to).skip(from).collect();
        if to - from < "A 41 w10".len() {
            continue;
        }
        assert!(inside.contains(&written[place][0]), "{place}: {inside:?}\n{text}");
        *(if one_row { &mut in_one_row } else { &mut in_more }) += 1;
    }
    assert!(in_one_row > 0 && in_more > 0, "{in_one_row} {in_more}\n{text}");
}

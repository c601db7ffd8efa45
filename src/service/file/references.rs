//! What a schema cannot say: names that must exist, names given twice, and either-or fields.
//!
//! Works on whatever could be read, so that one broken table does not hide what is wrong with the next.

use super::{circle::smallest_circle, names::Names};
use crate::{
    mix::Ratio,
    reader::{Kind, Node, Problems},
    shop,
    text::Position,
};
use std::collections::{HashMap, HashSet};

/// Everything wrong with the names and the choices of a file.
pub(super) fn check(root: &Node, problems: &mut Problems) {
    let found = &mut References(problems);
    if !found.shop(root) {
        return;
    }
    let (sections, toners) = (items(root, "section"), items(root, "toner"));
    shop::unique("section", sections, "name", found.0);
    shop::unique("toner", toners, "name", found.0);
    let known = Known::of(root);
    let is_table = |(_, node): &(usize, &Node)| matches!(node.kind, Kind::Table(_));
    for (i, section) in sections.iter().enumerate().filter(is_table) {
        found.section(section, &format!("section[{}]", i + 1), &known);
    }
    found.circle(sections);
    for (i, strand) in items(root, "strand").iter().enumerate().filter(is_table) {
        found.strand(strand, &format!("strand[{}]", i + 1), &known);
    }
    for (i, toner) in toners.iter().enumerate().filter(is_table) {
        found.toner(toner, &format!("toner[{}]", i + 1), &known);
    }
    if let Some(shadow) = root.get("root_shadow").filter(|shadow| matches!(shadow.kind, Kind::Table(_))) {
        found.after_rinse(shadow, "root_shadow", &known);
    }
    found.shares(sections);
}

fn items<'n>(table: &'n Node, key: &str) -> &'n [Node] {
    table.get(key).map(Node::items).unwrap_or_default()
}

/// What the file may name.
struct Known<'n> {
    developers: Names<'n>,
    lighteners: Names<'n>,
    shades: Names<'n>,
    additives: Names<'n>,
    /// Lighteners and shades.
    products: Names<'n>,
    /// Lighteners and removers.
    cleaners: Names<'n>,
    sections: Names<'n>,
    /// The shades that take no developer.
    semi: HashSet<&'n str>,
    /// What each shade is mixed with.
    ratios: HashMap<&'n str, Ratio>,
    /// Whether any section is lightened.
    some_lightened: bool,
}

impl<'n> Known<'n> {
    fn of(root: &'n Node) -> Self {
        let of_shop = |kind: &str| root.get("shop").map(|shop| items(shop, kind)).unwrap_or_default();
        let (lighteners, shades) = (Names::of(of_shop("lightener"), "name"), Names::of(of_shop("shade"), "code"));
        let semi = of_shop("shade").iter().filter(|shade| shade.get("class").and_then(Node::text) == Some("semi"));
        let ratio = |shade: &'n Node| Some((shade.get("code")?.text()?, shade.get("ratio")?.text()?.parse().ok()?));
        let sections = items(root, "section");
        Self {
            developers: Names::of(of_shop("developer"), "name"),
            additives: Names::of(of_shop("additive"), "name"),
            products: lighteners.and(&shades),
            cleaners: lighteners.and(&Names::of(of_shop("remover"), "name")),
            sections: Names::of(sections, "name"),
            semi: semi.filter_map(|shade| shade.get("code")?.text()).collect(),
            ratios: of_shop("shade").iter().filter_map(ratio).collect(),
            some_lightened: sections.iter().any(|section| lightens(section, &lighteners)),
            lighteners,
            shades,
        }
    }
}

fn lightens(section: &Node, lighteners: &Names<'_>) -> bool {
    section.get("product").and_then(Node::text).is_some_and(|name| lighteners.has(name))
}

struct References<'p>(&'p mut Problems);

impl References<'_> {
    /// Whether there is a shop to look names up in.
    fn shop(&mut self, root: &Node) -> bool {
        match (root.get("shop"), root.get("shop_file")) {
            (Some(shop), None) => {
                shop::check_table(shop, "shop.", self.0);
                return true;
            }
            (Some(_), Some(path)) => {
                self.say(path.at, "shop_file", "both `shop` and `shop_file` are given: keep one of them".to_owned());
            }
            (None, Some(path)) => {
                let message = "names a file, and this reader was not given what it holds: put the shop under `shop`, \
                               or hand it over beside this file";
                self.say(path.at, "shop_file", message.to_owned());
            }
            // What is no table at all has been said already.
            (None, None) if !matches!(root.kind, Kind::Table(_)) => {}
            (None, None) => {
                let message =
                    "missing: add it (what the salon has and what it charges), or name its file in `shop_file`";
                self.say(root.at, "shop", message.to_owned());
            }
        }
        false
    }

    fn section(&mut self, section: &Node, field: &str, known: &Known<'_>) {
        self.work(section, field);
        self.exists(section.get("product"), &format!("{field}.product"), &known.products, "lightener or shade");
        self.exists(section.get("clean_with"), &format!("{field}.clean_with"), &known.cleaners, "lightener or remover");
        self.mix(section, field, &known.shades);
        self.ratio(section, field, &known.ratios);
        // The plan chooses the strength of a lightener that has none.
        let open = section.get("developer").or(section.get("strength")).is_none();
        if !(open && lightens(section, &known.lighteners)) {
            self.developer(section, field, &known.developers, &known.semi);
        }
        if let Some(depth) = section.get("lowlights").filter(|depth| matches!(depth.kind, Kind::Table(_))) {
            self.either(depth, &format!("{field}.lowlights"), "level", "contrast_levels");
        }
        let mut dosed = HashSet::new();
        for (j, name) in items(section, "additives").iter().enumerate() {
            let at = format!("{field}.additives[{}]", j + 1);
            self.exists(Some(name), &at, &known.additives, "additive");
            if let Some(text) = name.text().filter(|text| !dosed.insert(*text)) {
                self.say(name.at, &at, format!("\"{text}\" is named twice and would be dosed twice: remove one"));
            }
        }
        for (key, itself) in [
            ("after", "a section cannot come after itself: remove it"),
            ("beside", "a section cannot lie beside itself: remove it"),
            ("same_foil_as", "a section shares its own foils anyway: remove it"),
        ] {
            for (j, entry) in items(section, key).iter().enumerate() {
                let at = format!("{field}.{key}[{}]", j + 1);
                let (name, at) = match entry.get("section") {
                    Some(name) => (name, format!("{at}.section")),
                    None => (entry, at),
                };
                if name.text().is_some() && name.text() == section.get("name").and_then(Node::text) {
                    self.say(name.at, &at, itself.to_owned());
                } else {
                    self.exists(Some(name), &at, &known.sections, "section");
                }
            }
        }
    }

    fn strand(&mut self, strand: &Node, field: &str, known: &Known<'_>) {
        self.exists(strand.get("product"), &format!("{field}.product"), &known.lighteners, "lightener");
        self.either(strand, field, "developer", "strength");
        self.exists(strand.get("developer"), &format!("{field}.developer"), &known.developers, "developer");
    }

    fn toner(&mut self, toner: &Node, field: &str, known: &Known<'_>) {
        if items(toner, "sections").is_empty() && !known.some_lightened {
            let message = "no section is lightened: say in `sections` which ones this toner goes on".to_owned();
            self.say(toner.at, field, message);
        }
        self.after_rinse(toner, field, known);
        for (j, name) in items(toner, "sections").iter().enumerate() {
            self.exists(Some(name), &format!("{field}.sections[{}]", j + 1), &known.sections, "section");
        }
    }

    /// What a toner and a root shadow have in common.
    fn after_rinse(&mut self, table: &Node, field: &str, known: &Known<'_>) {
        self.either(table, field, "mix", "target");
        self.mix(table, field, &known.shades);
        self.ratio(table, field, &known.ratios);
        self.developer(table, field, &known.developers, &known.semi);
    }

    fn say(&mut self, at: Option<Position>, field: &str, message: String) {
        self.0.say(at, field, message);
    }

    fn exists(&mut self, name: Option<&Node>, field: &str, known: &Names<'_>, what: &str) {
        let Some((node, name)) = name.and_then(|node| node.text().map(|text| (node, text))) else { return };
        if !known.has(name) {
            let there = known.instead_of(name, what);
            self.say(node.at, field, format!("no {what} is called \"{name}\": {there}"));
        }
    }

    fn either(&mut self, table: &Node, field: &str, one: &str, other: &str) {
        // An empty list names nothing.
        let given = |key: &str| table.get(key).filter(|node| node.kind != Kind::List(Vec::new()));
        match (given(one), given(other)) {
            (Some(_), Some(second)) => {
                self.say(second.at, field, format!("both `{one}` and `{other}` are given: keep one of them"));
            }
            (None, None) => {
                self.say(table.at, field, format!("neither `{one}` nor `{other}` is given: give one of them"));
            }
            _ => {}
        }
    }

    /// A section names a product, a mix of shades, or the look that is wanted.
    fn work(&mut self, section: &Node, field: &str) {
        let Some(target) = section.get("target") else { return self.either(section, field, "product", "mix") };
        let product = section.get("product").map(|_| "product");
        let mix = section.get("mix").filter(|mix| !mix.items().is_empty()).map(|_| "mix");
        if let Some(other) = product.or(mix) {
            let message = format!("both `{other}` and `target` are given: keep one of them");
            self.say(target.at, field, message);
        }
    }

    fn mix(&mut self, table: &Node, field: &str, shades: &Names<'_>) {
        for (i, part) in table.get("mix").map(Node::items).unwrap_or_default().iter().enumerate() {
            self.exists(part.get("shade"), &format!("{field}.mix[{}].shade", i + 1), shades, "shade");
        }
    }

    /// Shades that are mixed with different ratios need a word on which one holds.
    fn ratio(&mut self, table: &Node, field: &str, of_shades: &HashMap<&str, Ratio>) {
        if table.get("ratio").is_some() {
            return;
        }
        let own = |part: &Node| of_shades.get(part.get("shade")?.text()?).cloned();
        let mix = table.get("mix");
        let ratios: Vec<Ratio> = mix.map(Node::items).unwrap_or_default().iter().filter_map(own).collect();
        if let (Some(mix), [first, rest @ ..]) = (mix, ratios.as_slice())
            && let Some(other) = rest.iter().find(|ratio| *ratio != first)
        {
            let message =
                format!("its shades have different ratios, {first} and {other}: say in `ratio` which one holds");
            self.say(mix.at, &format!("{field}.mix"), message);
        }
    }

    /// One way to name the peroxide; semi-permanent colour takes none.
    fn developer(&mut self, table: &Node, field: &str, developers: &Names<'_>, semi: &HashSet<&str>) {
        let shades = table.get("mix").map(Node::items).unwrap_or_default().iter().map(|part| part.get("shade"));
        let mut products = shades.chain([table.get("product")]).flatten().filter_map(Node::text).peekable();
        let without = products.peek().is_some() && products.all(|name| semi.contains(name));
        let given = table.get("developer").or(table.get("strength"));
        match given {
            Some(given) if without => {
                self.say(given.at, field, "semi-permanent colour takes no developer: remove it".to_owned());
            }
            None if without => {}
            _ => self.either(table, field, "developer", "strength"),
        }
        self.exists(table.get("developer"), &format!("{field}.developer"), developers, "developer");
    }

    /// `after` must not lead back to where it began.
    fn circle(&mut self, sections: &[Node]) {
        // Sections whose turn has come are taken out one by one; what is left waits in a circle.
        let name_of = |section: &Node| section.get("name").and_then(Node::text).map(str::to_owned);
        let mut followers: HashMap<&str, Vec<usize>> = HashMap::new();
        let known = Names::of(sections, "name");
        let mut waits: Vec<usize> = Vec::with_capacity(sections.len());
        for (i, section) in sections.iter().enumerate() {
            let own = section.get("name").and_then(Node::text);
            let after = section.get("after").map(Node::items).unwrap_or_default();
            let others: HashSet<&str> = after
                .iter()
                .filter_map(|entry| entry.get("section")?.text())
                .filter(|name| known.has(name) && Some(*name) != own)
                .collect();
            waits.push(others.len());
            for name in others {
                followers.entry(name).or_default().push(i);
            }
        }
        let mut free: Vec<usize> = waits.iter().enumerate().filter(|(_, count)| **count == 0).map(|(i, _)| i).collect();
        let mut done = HashSet::new();
        while let Some(i) = free.pop() {
            let Some(name) = sections.get(i).and_then(|one| one.get("name")?.text()).filter(|name| done.insert(*name))
            else {
                continue;
            };
            for follower in followers.get(name).into_iter().flatten() {
                if let Some(count) = waits.get_mut(*follower) {
                    *count = count.saturating_sub(1);
                    if *count == 0 {
                        free.push(*follower);
                    }
                }
            }
        }
        // What follows a circle waits too, but is none of it: the smallest circle is named.
        let follow = |i: usize| {
            let name = sections.get(i).and_then(|one| one.get("name")?.text());
            let all = name.and_then(|name| followers.get(name)).into_iter().flatten().copied();
            all.filter(|follower| waits.get(*follower).is_some_and(|count| *count > 0)).collect()
        };
        let waiting: Vec<usize> = waits.iter().enumerate().filter(|(_, count)| **count > 0).map(|(i, _)| i).collect();
        let circle = smallest_circle(&waiting, follow);
        if let Some(first) = circle.first().and_then(|i| sections.get(*i)) {
            let names: Vec<String> = circle.iter().filter_map(|i| name_of(sections.get(*i)?)).collect();
            let message = format!("these sections wait for each other: {}: remove one `after`", names.join(", "));
            self.say(first.at, "section", message);
        }
    }

    /// Sections of the same zone cannot treat more than all the hair.
    fn shares(&mut self, sections: &[Node]) {
        let mut zones: Vec<(&str, f64, Option<Position>)> = Vec::new();
        let mut places: HashMap<&str, usize> = HashMap::new();
        for section in sections {
            let zone = section.get("zone").and_then(Node::text);
            // A share that is out of range by itself has been reported already.
            let share = section.get("share_percent").and_then(Node::number).filter(|x| (0.0..=100.0).contains(x));
            let (Some(zone), Some(share)) = (zone, share) else { continue };
            match places.get(zone).and_then(|place| zones.get_mut(*place)) {
                Some((_, sum, at)) => (*sum, *at) = (*sum + share, section.at),
                None => {
                    places.insert(zone, zones.len());
                    zones.push((zone, share, section.at));
                }
            }
        }
        for (zone, sum, at) in zones.into_iter().filter(|(_, sum, _)| *sum > 100.0 + 1e-9) {
            let message = format!("the shares of zone \"{zone}\" add up to {sum} %: lower them to 100 % or less");
            self.say(at, "section", message);
        }
    }
}

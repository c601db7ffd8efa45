//! What a schema cannot say: names that must exist, names given twice, and either-or fields.
//!
//! Works on whatever could be read, so that one broken table does not hide what is wrong with the next.

use super::{Node, Position, Problem};

/// Everything wrong with the names and the choices of a file.
pub(super) fn check(root: &Node) -> Vec<Problem> {
    let mut found = Findings(Vec::new());
    let shelf = |kind: &str| root.get("shelf").and_then(|shelf| shelf.get(kind)).map(Node::items).unwrap_or_default();
    let names = |kind: &str, key: &str| -> Vec<String> {
        shelf(kind).iter().filter_map(|item| item.get(key)?.text().map(str::to_owned)).collect()
    };
    let (developers, lighteners) = (names("developer", "name"), names("lightener", "name"));
    let (shades, additives) = (names("shade", "code"), names("additive", "name"));

    let semi: Vec<String> = shelf("shade")
        .iter()
        .filter(|shade| shade.get("class").and_then(Node::text) == Some("semi"))
        .filter_map(|shade| shade.get("code")?.text().map(str::to_owned))
        .collect();
    for (i, shade) in shelf("shade").iter().enumerate() {
        let class = shade.get("class").and_then(Node::text);
        if class.is_some_and(|class| class != "semi") && shade.get("ratio").is_none() {
            let message = "missing: say how many parts colour to developer, for example 1:1.5".to_owned();
            found.say(Some(shade.at), &format!("shelf.shade[{}].ratio", i + 1), message);
        }
    }

    found.unique("shelf.developer", shelf("developer"), "name");
    found.unique("shelf.lightener", shelf("lightener"), "name");
    found.unique("shelf.shade", shelf("shade"), "code");
    found.unique("shelf.additive", shelf("additive"), "name");
    found.unique("shelf.diluent", shelf("diluent"), "name");
    for clash in shades.iter().filter(|code| lighteners.contains(code)) {
        found.say(None, "shelf", format!("\"{clash}\" is both a lightener and a shade: rename one"));
    }

    let sections = root.get("section").map(Node::items).unwrap_or_default();
    let toners = root.get("toner").map(Node::items).unwrap_or_default();
    let section_names: Vec<String> = sections.iter().filter_map(|s| s.get("name")?.text().map(str::to_owned)).collect();
    found.unique("section", sections, "name");
    found.unique("toner", toners, "name");

    let products: Vec<String> = lighteners.iter().chain(&shades).cloned().collect();
    for (i, section) in sections.iter().enumerate() {
        let field = format!("section[{}]", i + 1);
        found.either(section, &field, "product", "mix", "what the section is coloured with");
        found.exists(section.get("product"), &format!("{field}.product"), &products, "lightener or shade");
        found.mix(section, &field, &shades);
        found.developer(section, &field, &developers, &semi);
        for (j, name) in section.get("additives").map(Node::items).unwrap_or_default().iter().enumerate() {
            found.exists(Some(name), &format!("{field}.additives[{}]", j + 1), &additives, "additive");
        }
        for (j, name) in section.get("after").map(Node::items).unwrap_or_default().iter().enumerate() {
            let at = format!("{field}.after[{}]", j + 1);
            if name.text().is_some() && name.text() == section.get("name").and_then(Node::text) {
                found.say(Some(name.at), &at, "a section cannot come after itself: remove it".to_owned());
            } else {
                found.exists(Some(name), &at, &section_names, "section");
            }
        }
    }
    found.circle(sections);
    for (i, toner) in toners.iter().enumerate() {
        let field = format!("toner[{}]", i + 1);
        found.mix(toner, &field, &shades);
        found.developer(toner, &field, &developers, &semi);
        for (j, name) in toner.get("sections").map(Node::items).unwrap_or_default().iter().enumerate() {
            found.exists(Some(name), &format!("{field}.sections[{}]", j + 1), &section_names, "section");
        }
    }
    if let Some(shadow) = root.get("root_shadow") {
        found.mix(shadow, "root_shadow", &shades);
        found.developer(shadow, "root_shadow", &developers, &semi);
    }
    found.shares(sections);
    found.prices(root, shelf);
    found.0
}

struct Findings(Vec<Problem>);

impl Findings {
    fn say(&mut self, at: Option<Position>, field: &str, message: String) {
        self.0.push(Problem { at, field: field.to_owned(), message });
    }

    fn unique(&mut self, field: &str, items: &[Node], key: &str) {
        for (i, item) in items.iter().enumerate() {
            let Some(name) = item.get(key).filter(|n| n.text().is_some()) else { continue };
            if let Some(first) = items.iter().take(i).filter_map(|n| n.get(key)).find(|n| n.text() == name.text()) {
                let message = format!(
                    "\"{}\" is already the {key} of line {}: give each its own",
                    name.text().unwrap_or_default(),
                    first.at.line
                );
                self.say(Some(name.at), &format!("{field}[{}].{key}", i + 1), message);
            }
        }
    }

    fn exists(&mut self, name: Option<&Node>, field: &str, known: &[String], what: &str) {
        let Some((node, name)) = name.and_then(|node| node.text().map(|text| (node, text))) else { return };
        if !known.iter().any(|k| k == name) {
            let there = if known.is_empty() {
                format!("there is no {what} in this file")
            } else {
                format!("the file has {}", known.join(", "))
            };
            self.say(Some(node.at), field, format!("no {what} is called \"{name}\": {there}"));
        }
    }

    fn either(&mut self, table: &Node, field: &str, one: &str, other: &str, what: &str) {
        match (table.get(one), table.get(other)) {
            (Some(_), Some(second)) => {
                self.say(Some(second.at), field, format!("both `{one}` and `{other}` are given: keep one of them"));
            }
            (None, None) => {
                self.say(Some(table.at), field, format!("neither `{one}` nor `{other}` is given: say {what} with one"));
            }
            _ => {}
        }
    }

    fn mix(&mut self, table: &Node, field: &str, shades: &[String]) {
        for (i, part) in table.get("mix").map(Node::items).unwrap_or_default().iter().enumerate() {
            self.exists(part.get("shade"), &format!("{field}.mix[{}].shade", i + 1), shades, "shade");
        }
    }

    /// One way to name the peroxide; semi-permanent colour takes none.
    fn developer(&mut self, table: &Node, field: &str, developers: &[String], semi: &[String]) {
        let shades = table.get("mix").map(Node::items).unwrap_or_default().iter().map(|part| part.get("shade"));
        let mut products = shades.chain([table.get("product")]).flatten().filter_map(Node::text).peekable();
        let without = products.peek().is_some() && products.all(|name| semi.iter().any(|code| code == name));
        let given = table.get("developer").or(table.get("strength"));
        match given {
            Some(given) if without => {
                self.say(Some(given.at), field, "semi-permanent colour takes no developer: remove it".to_owned());
            }
            None if without => {}
            _ => self.either(table, field, "developer", "strength", "which peroxide is used"),
        }
        self.exists(table.get("developer"), &format!("{field}.developer"), developers, "developer");
    }

    /// `after` must not lead back to where it began.
    fn circle(&mut self, sections: &[Node]) {
        let name_of = |section: &Node| section.get("name").and_then(Node::text).map(str::to_owned);
        let mut done: Vec<String> = Vec::new();
        let mut waiting: Vec<&Node> = sections.iter().collect();
        loop {
            let before = waiting.len();
            waiting.retain(|section| {
                let free = section.get("after").map(Node::items).unwrap_or_default().iter().all(|name| {
                    let known = sections.iter().any(|s| name_of(s).as_deref() == name.text());
                    !known
                        || name.text() == name_of(section).as_deref()
                        || done.iter().any(|d| Some(d.as_str()) == name.text())
                });
                if free {
                    done.extend(name_of(section));
                }
                !free
            });
            if waiting.len() == before {
                break;
            }
        }
        if let Some(first) = waiting.first() {
            let names: Vec<String> = waiting.iter().filter_map(|s| name_of(s)).collect();
            let message = format!("these sections wait for each other: {}: remove one `after`", names.join(", "));
            self.say(Some(first.at), "section", message);
        }
    }

    /// Sections of the same zone cannot treat more than all the hair.
    fn shares(&mut self, sections: &[Node]) {
        let mut zones: Vec<(&str, f64, Position)> = Vec::new();
        for section in sections {
            let zone = section.get("zone").and_then(Node::text);
            let share = section.get("share_percent").and_then(Node::number).filter(|x| x.is_finite());
            let (Some(zone), Some(share)) = (zone, share) else { continue };
            match zones.iter_mut().find(|(known, ..)| *known == zone) {
                Some((_, sum, at)) => (*sum, *at) = (*sum + share, section.at),
                None => zones.push((zone, share, section.at)),
            }
        }
        for (zone, sum, at) in zones.into_iter().filter(|(_, sum, _)| *sum > 100.0 + 1e-9) {
            let message = format!("the shares of zone \"{zone}\" add up to {sum} %: lower them to 100 % or less");
            self.say(Some(at), "section", message);
        }
    }

    /// A price means nothing without the mass of the pack and a currency.
    fn prices<'n>(&mut self, root: &Node, shelf: impl Fn(&str) -> &'n [Node]) {
        let mut priced = None;
        for kind in ["developer", "lightener", "shade", "additive", "diluent"] {
            for (i, item) in shelf(kind).iter().enumerate() {
                let Some(price) = item.get("price") else { continue };
                priced = priced.or(Some(price.at));
                if item.get("pack_g").is_none() {
                    let field = format!("shelf.{kind}[{}].pack_g", i + 1);
                    self.say(Some(item.at), &field, "missing: a price needs the mass of the pack it buys".to_owned());
                }
            }
        }
        let prices = root.get("prices");
        if let (Some(at), None) = (priced, prices) {
            let message = "missing: products have prices, so say in which currency".to_owned();
            self.say(Some(at), "prices.currency", message);
        }
        if let Some(prices) = prices
            && let (Some(_), Some(second)) = (prices.get("margin_percent"), prices.get("markup_percent"))
        {
            let message = "both `margin_percent` and `markup_percent` are given: keep one of them".to_owned();
            self.say(Some(second.at), "prices", message);
        }
    }
}

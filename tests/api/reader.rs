//! Every message of the reader, on a little file of the test's own; each is worked out from the shape below.

use foilwork::reader::{Document, Format, Kind, Node, Problem, Problems, from_value, parse_document};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};
use serde_json::{Value, json};
use std::sync::LazyLock;

/// A file of which the shape is written by hand.
#[derive(Debug, JsonSchema, Serialize, Deserialize)]
#[serde(transparent)]
struct Plain(Value);

static SCHEMA: LazyLock<Value> = LazyLock::new(|| {
    json!({
        "type": "object",
        "required": ["title", "grams"],
        "properties": {
            "title": { "type": "string", "minLength": 1, "maxLength": 10, "description": "The name\nof it. More words." },
            "grams": { "type": "number", "minimum": 1, "maximum": 120, "x-unit": "g", "description": "What it weighs.\n\nMore." },
            "count": { "type": ["integer", "null"], "minimum": 2 },
            "most": { "type": "number", "maximum": 5, "x-unit": "min" },
            "one": { "type": "integer", "minimum": 1, "maximum": 1 },
            "free": { "type": "number" },
            "flag": { "type": "boolean" },
            "kind": { "oneOf": [{ "const": "wide" }, { "const": "narrow" }] },
            "list": { "type": "array", "minItems": 1, "maxItems": 3, "items": { "$ref": "#/$defs/Part" } },
            "words": { "type": "array", "items": { "type": "string" } },
            "note": { "type": "string", "x-lines": true },
            "when": { "type": "string", "x-parse": "even" },
            "table": { "anyOf": [{ "type": "null" }, { "$ref": "#/$defs/Inner" }] },
            "other": { "type": "object", "properties": { "glow": { "type": "string" } } },
            "own": { "type": "object", "additionalProperties": { "type": "number" } },
            "about": {
                "type": ["number", "object"], "x-unit": "%", "required": ["low"],
                "properties": { "low": { "type": "number" } }
            }
        },
        "$defs": {
            "Part": {
                "type": "object", "required": ["shade", "parts"],
                "properties": { "shade": { "type": "string" }, "parts": { "type": "number" } }
            },
            "Inner": {
                "type": "object",
                "properties": {
                    "depth": { "type": "number" }, "names": { "type": "array", "items": { "type": "string" } },
                    "shiny": { "type": "boolean" }, "glow": { "type": "string" }, "below": { "type": "object" }
                }
            }
        }
    })
});

impl Document for Plain {
    fn schema() -> &'static Value {
        &SCHEMA
    }

    fn text_field(reader: &str, text: &str) -> Result<(), String> {
        assert_eq!(reader, "even");
        if text.len().is_multiple_of(2) { Ok(()) } else { Err(format!("\"{text}\" is odd: give an even one")) }
    }

    fn check_whole(root: &Node, problems: &mut Problems) {
        if root.get("title").and_then(Node::text) == Some("whole") {
            problems.0.push(Problem {
                at: None,
                field: "title".to_owned(),
                message: "looked at as a whole".to_owned(),
            });
        }
    }
}

/// What is wrong with a file that has these fields beside a title and its grams.
fn says(fields: Value) -> Vec<String> {
    let mut file = json!({ "title": "nape", "grams": 10 });
    file.as_object_mut().unwrap().extend(fields.as_object().unwrap().clone());
    whole(&file)
}

fn whole(file: &Value) -> Vec<String> {
    from_value::<Plain>(file)
        .err()
        .map(|problems| problems.0.iter().map(ToString::to_string).collect())
        .unwrap_or_default()
}

#[test]
fn what_is_right_is_taken() {
    let none: [String; 0] = [];
    for fields in [
        json!({}),
        json!({ "grams": 1 }),
        json!({ "grams": 120 }),
        json!({ "title": "0123456789" }),
        json!({ "count": null }),
        json!({ "count": 2, "most": 5, "one": 1, "free": -3.5, "flag": false }),
        json!({ "kind": "narrow" }),
        json!({ "list": [{ "shade": "a", "parts": 1 }, { "shade": "b", "parts": 2 }, { "shade": "c", "parts": 0.5 }] }),
        json!({ "words": [], "note": "one\ntwo", "when": "even" }),
        json!({ "words": ["é".repeat(200)] }),
        json!({ "table": null, "own": { "a": 1, "any": 2.5 } }),
        json!({ "table": { "depth": 1, "names": ["x"], "shiny": true } }),
        json!({ "about": 7 }),
        json!({ "about": { "low": 7 } }),
    ] {
        assert_eq!(says(fields.clone()), none, "{fields}");
    }
}

#[test]
fn what_is_missing_or_not_known_is_told() {
    assert_eq!(
        whole(&json!({})),
        ["title: missing: add it (The name of it)", "grams: missing: add it (What it weighs)"]
    );
    // A misspelt field is one mistake.
    assert_eq!(whole(&json!({ "titel": "nape", "grams": 1 })), ["titel: unknown field: did you mean `title`?"]);
    assert_eq!(
        says(json!({ "list": [{ "shade": "a", "parts": 1 }, { "shade": "b" }] })),
        ["list[2].parts: missing: add it"]
    );
    // A field that stands beside its table; of two tables that have it, neither.
    let belongs = |key: &str| vec![format!("{key}: unknown field: it belongs into `table`: write `table.{key}`")];
    assert_eq!(says(json!({ "depth": 3 })), belongs("depth"));
    assert_eq!(says(json!({ "names": ["a"] })), belongs("names"));
    assert_eq!(says(json!({ "shiny": true })), belongs("shiny"));
    assert_eq!(says(json!({ "below": {} })), belongs("below"));
    for elsewhere in [
        json!({ "glow": "x" }),
        json!({ "depth": "x" }),
        json!({ "shiny": 1 }),
        json!({ "names": 1 }),
        json!({ "zzz": 1 }),
    ] {
        let told = says(elsewhere.clone());
        assert!(told.len() == 1 && told[0].contains(": unknown field: the fields here are "), "{elsewhere}: {told:?}");
    }
    let inner = says(json!({ "table": { "dept": 1 } }));
    assert_eq!(inner, ["table.dept: unknown field: did you mean `depth`?"]);
}

/// A table or a list under a name that is not known may hold what the whole is asked for; a plain value cannot.
#[test]
fn the_whole_is_looked_at_unless_some_of_it_is_hidden() {
    let told = |fields: Value| {
        let mut file = json!({ "title": "whole", "grams": 10 });
        file.as_object_mut().unwrap().extend(fields.as_object().unwrap().clone());
        let told = whole(&file);
        (told.len(), told.contains(&"title: looked at as a whole".to_owned()))
    };
    assert_eq!((told(json!({})), told(json!({ "zzz": 1 }))), ((1, true), (2, true)));
    assert_eq!((told(json!({ "zzz": {} })), told(json!({ "zzz": [] }))), ((1, false), (1, false)));
    assert_eq!(told(json!({ "grams": 0 })), (2, true));
}

#[test]
fn each_kind_of_value_has_its_way_out() {
    for (fields, want) in [
        (json!({ "grams": "ten" }), "grams: \"ten\" where a number in g belongs: give 1 to 120 g"),
        (json!({ "grams": " 10 " }), "grams: \" 10 \" where a number in g belongs: write it without quotes"),
        (json!({ "grams": true }), "grams: true where a number in g belongs: give 1 to 120 g"),
        (json!({ "grams": null }), "grams: null where a number in g belongs: give 1 to 120 g"),
        (json!({ "count": "two" }), "count: \"two\" where a whole number belongs: give 2 or more"),
        (json!({ "count": "2" }), "count: \"2\" where a whole number belongs: write it without quotes"),
        (json!({ "flag": 1 }), "flag: 1 where true or false belongs: write true or false, without quotes"),
        (json!({ "title": 5 }), "title: 5 where text belongs: write it in quotes"),
        (json!({ "title": false }), "title: false where text belongs: write it in quotes"),
        (json!({ "title": ["a"] }), "title: a list where text belongs: give that"),
        (json!({ "title": {} }), "title: a table where text belongs: give that"),
        (json!({ "words": "a" }), "words: \"a\" where a list belongs: write it in [ ]"),
        (
            json!({ "words": {} }),
            "words: a table where a list belongs: write [[ ]] around its name, or in JSON a list of tables",
        ),
        (json!({ "own": 5 }), "own: 5 where a table belongs: write its fields, each with its name"),
        (
            json!({ "table": [{ "depth": 1 }] }),
            "table: a list where a table belongs: there is only one: write [ ] around its name, or in JSON { }",
        ),
        (json!({ "table": [] }), "table: a list where a table belongs: write its fields, each with its name"),
        (
            json!({ "list": ["J9"] }),
            "list[1]: \"J9\" where a table belongs: write its fields, each with its name, for example { shade = \"J9\", parts = 1 }",
        ),
        (json!({ "own": { "a": 1, "b": "x" } }), "own.b: \"x\" where a number belongs: give a finite number"),
        (
            json!({ "about": "x" }),
            "about: \"x\" where a number in %, or { low, best, high } belongs: give a finite number",
        ),
        (json!({ "about": {} }), "about.low: missing: add it"),
    ] {
        assert_eq!(says(fields.clone()), [want], "{fields}");
    }
    // The file itself is no field of a table.
    assert_eq!(
        whole(&json!([{ "title": "a" }])),
        ["a list where a table belongs: write its fields, each with its name"]
    );
}

#[test]
fn each_bound_of_a_value_is_told() {
    for (fields, want) in [
        (json!({ "grams": 0.99 }), "grams: 0.99 g is out of range: give 1 to 120 g"),
        (json!({ "grams": 121 }), "grams: 121 g is out of range: give 1 to 120 g"),
        (json!({ "count": 1 }), "count: 1 is out of range: give 2 or more"),
        (json!({ "count": 2.5 }), "count: 2.5 is not a whole number: give 2 or more"),
        (json!({ "most": 5.5 }), "most: 5.5 min is out of range: give 5 min or less"),
        (json!({ "one": 2 }), "one: 2 is out of range: give 1"),
        (json!({ "title": "" }), "title: empty text: write something, or leave the field out if it is optional"),
        (json!({ "title": "éééééééééé+" }), "title: the text has 11 characters: give at most 10"),
        (json!({ "words": ["x", "y".repeat(201)] }), "words[2]: the text has 201 characters: give at most 200"),
        (
            json!({ "title": "a\nb" }),
            "title: character 2 is a line break, which would act instead of being shown: remove it",
        ),
        (
            json!({ "note": "one\n\u{202e}two" }),
            "note: character 5 is U+202E, which would act instead of being shown: remove it",
        ),
        (json!({ "when": "odd" }), "when: \"odd\" is odd: give an even one"),
        (json!({ "list": [] }), "list: the list has 0 entries: give at least 1"),
        // What is too long is not looked into.
        (json!({ "list": [1, 2, 3, 4] }), "list: the list has 4 entries: give at most 3"),
        (json!({ "kind": "wid" }), "kind: \"wid\" is not one of the choices: did you mean \"wide\"? give wide, narrow"),
        (json!({ "kind": "x" }), "kind: \"x\" is not one of the choices: give wide, narrow"),
        (json!({ "kind": 5 }), "kind: 5 is not one of the choices: give wide, narrow"),
    ] {
        assert_eq!(says(fields.clone()), [want], "{fields}");
    }
    let words = |count: usize| says(json!({ "words": vec!["x"; count] }));
    assert_eq!(
        (words(10_000).len(), words(10_001)),
        (0, vec!["words: the list has 10001 entries: give at most 10000".to_owned()])
    );
    let toml = |text: &str| parse_document::<Plain>(text, Format::Toml).unwrap_err().to_string();
    let told = toml("title = \"nape\"\ngrams = 10\nfree = nan\n");
    assert_eq!(told, "line 3: free: nan is not a finite number: give a finite number");
    // In the order of the lines, what is missing at the place of its table.
    assert_eq!(
        toml("count = 1\n\n[[list]]\nshade = 1\n"),
        "line 1: count: 1 is out of range: give 2 or more\n\
         line 1: title: missing: add it (The name of it)\n\
         line 1: grams: missing: add it (What it weighs)\n\
         line 3: list[1].parts: missing: add it\n\
         line 4: list[1].shade: 1 where text belongs: write it in quotes"
    );
}

#[test]
fn mistakes_of_the_text_itself_are_told_first() {
    let told = |text: &str, format| parse_document::<Plain>(text, format).unwrap_err().to_string();
    let toml = |text: &str| told(text, Format::Toml);
    assert_eq!(
        toml("title = \"a\"\ntitle = \"b\"\n"),
        "line 2: not valid TOML: `title` is given twice in one table: keep one"
    );
    assert_eq!(toml("grams = 1\ntitle = \"a\n"), "line 2: not valid TOML: text without its closing quote: add it");
    let bare =
        "line 1: not valid TOML: a value without quotes is neither a number nor true nor false: write text in quotes";
    assert_eq!(toml("title = treat\n"), bare);
    assert_eq!(
        toml("title = \"a\"\ngrams = 30 g # weighed\n").lines().next(),
        Some("line 2: not valid TOML: 30 g is more than a number: write 30, the name of the field says the unit")
    );
    let json = |text: &str| told(text, Format::Json);
    assert_eq!(json("{\"title\":\"a\",\n\"title\":\"b\"}"), "line 2: title: given twice in one table: keep one");
    let nested = "{\"list\":[{\"shade\":\"a\",\"parts\":1},{\"shade\":\"b\",\"shade\":\"c\"}]}";
    assert_eq!(json(nested), "line 1: list[2].shade: given twice in one table: keep one");
    assert!(json("{\"title\":\"a\",}").starts_with("line 1: not valid JSON: "), "{}", json("{\"title\":\"a\",}"));
    // As large as a file may be, and a byte more.
    let large = |bytes: usize| {
        parse_document::<Plain>(&format!("#{}", "x".repeat(bytes - 1)), Format::Toml).unwrap_err().to_string()
    };
    assert_eq!(large(8_388_609), "the file has 8388609 bytes: give at most 8388608, and split what is longer");
    assert!(large(8_388_608).starts_with("line 1: title: missing"), "{}", large(8_388_608));
}

#[test]
fn a_problem_finds_its_place_later() {
    let text = "title = \"a\"\n[[toner]]\nmix_g = 1\n[[toner]]\nmix_g = 2\n[table]\ndepth = 1\n";
    let line = |field: &str| {
        let problem = Problem { at: None, field: field.to_owned(), message: "too little".to_owned() };
        Problems(vec![problem]).located(text, Format::Toml).0[0].at.map(|at| at.line)
    };
    assert_eq!(
        [line("toner[1].mix_g"), line("toner[2].mix_g"), line("table.depth"), line("title")].map(Option::unwrap),
        [3, 5, 7, 1]
    );
    // What is not there stands where its table does, or the whole.
    assert_eq!((line("table.width"), line("nowhere.at.all"), line("")), (line("table"), Some(1), None));
    assert_eq!((line("toner[2].shade"), line("toner[3].mix_g")), (line("toner[2]"), line("toner[0].mix_g")));
    assert_eq!(line("toner[2]"), Some(4));
}

#[test]
fn a_tree_is_plain_data_again() {
    let number = |value: f64| Node { at: None, kind: Kind::Number(value, None) }.to_json();
    assert_eq!([number(8.0), number(-3.0), number(8.5)], [json!(8), json!(-3), json!(8.5)]);
    assert!(
        number(8.0).is_i64()
            && number(9e15).is_f64()
            && number(-9e15).is_f64()
            && number(8_999_999_999_999_999.0).is_i64()
    );
    assert_eq!([number(f64::NAN), number(f64::INFINITY)], [Value::Null, Value::Null]);
    let entry = |key: &str, kind: Kind| (key.to_owned(), None, Node { at: None, kind });
    let table =
        Kind::Table(vec![entry("a", Kind::Null), entry("b", Kind::Flag(true)), entry("c", Kind::Text("x".to_owned()))]);
    let table = Node { at: None, kind: table };
    assert_eq!(table.to_json(), json!({ "b": true, "c": "x" }));
    assert_eq!((table.get("a"), table.get("b").map(Node::kind_name), table.get("d")), (None, Some("true/false"), None));
    let names =
        [Kind::Null, Kind::Flag(false), Kind::Number(1.0, None), Kind::Text(String::new()), Kind::List(Vec::new())];
    let names = names.map(|kind| Node { at: None, kind }.kind_name());
    assert_eq!((names, table.kind_name()), (["nothing", "true/false", "a number", "text", "a list"], "a table"));
}

#[test]
fn a_text_tells_its_format_by_how_it_begins() {
    for (name, text, want) in [
        ("a.toml", " \n{ }", Format::Json),
        ("a.json", "# mine", Format::Toml),
        ("a.json", "format = 1", Format::Toml),
        ("a.json", "[[section]]", Format::Toml),
        ("a.json", "[service]", Format::Toml),
        ("a.json", "[1, 2]", Format::Json),
        ("a.toml", "[1, 2]", Format::Toml),
        ("a.JSON", "", Format::Json),
        ("a.toml", "", Format::Toml),
        ("a.json", "\u{feff}format = 1", Format::Toml),
        ("json", "1", Format::Toml),
    ] {
        assert_eq!(Format::of(name, text), want, "{name}: {text:?}");
    }
}

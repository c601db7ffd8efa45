use super::{references, text_fields};
use crate::{
    reader::{self, Document, Format, Node, Problems},
    service::shape::ServiceFile,
    shop::shape::ShopFile,
};
use serde_json::Value;
use std::sync::LazyLock;

impl Document for ServiceFile {
    fn schema() -> &'static Value {
        static SCHEMA: LazyLock<Value> = LazyLock::new(|| reader::derive::<ServiceFile>(text_fields::form));
        &SCHEMA
    }

    fn text_field(reader: &str, text: &str) -> Result<(), String> {
        text_fields::check(reader, text)
    }

    fn check_whole(root: &Node, problems: &mut Problems) {
        references::check(root, problems);
    }
}

/// Reads a service file.
///
/// # Errors
///
/// [`Problems`] holds everything that is wrong, in the order of the lines: each with its line, its field, the value,
/// the allowed range and the way out.
///
/// # Example
///
/// ```
/// use foilwork::{reader::Format, service};
///
/// let problems = service::parse("format = 2\n[service]\ntitle = \"\"", Format::Toml).unwrap_err();
/// assert!(problems.to_string().contains("line 1: format: 2 is out of range: give 1"));
/// assert!(problems.to_string().contains("line 3: service.title: empty text"));
/// ```
pub fn parse(text: &str, format: Format) -> Result<ServiceFile, Problems> {
    reader::parse_document(text, format)
}

/// The path of the shop file that a service file names, as it is written there; `None` where it has a shop of its own.
///
/// foilwork's core reads no files: the caller does, and hands the shop to [`parse_with_shop`].
///
/// # Example
///
/// ```
/// use foilwork::{reader::Format, service::shop_file};
///
/// let text = "format = 1\nshop_file = \"juniper_and_tide.toml\"";
/// assert_eq!(shop_file(text, Format::Toml).as_deref(), Some("juniper_and_tide.toml"));
/// assert_eq!(shop_file("format = 1", Format::Toml), None);
/// ```
#[must_use]
pub fn shop_file(text: &str, format: Format) -> Option<String> {
    reader::field(text, format, "shop_file", "shop")
}

/// The path of the strand book that a service file names, as it is written there.
///
/// foilwork's core reads no files: the caller does, and hands the book over in [`Evidence`](crate::service::Evidence).
///
/// # Example
///
/// ```
/// use foilwork::{reader::Format, service::strand_book};
///
/// let text = "format = 1\nstrand_book = \"strands.csv\"";
/// assert_eq!(strand_book(text, Format::Toml).as_deref(), Some("strands.csv"));
/// ```
#[must_use]
pub fn strand_book(text: &str, format: Format) -> Option<String> {
    reader::field(text, format, "strand_book", "")
}

/// The path of the kept records that a service file names, and who works, as they are written there.
///
/// foilwork's core reads no files: the caller does, and hands over in [`Evidence`](crate::service::Evidence) what
/// [`foil_pace`](crate::history::foil_pace) finds in them.
///
/// # Example
///
/// ```
/// use foilwork::{reader::Format, service::records_named};
///
/// let text = "format = 1\nrecords = \"kept.jsonl\"\n[service]\ncolourist = \"W.\"";
/// assert_eq!(records_named(text, Format::Toml), Some(("kept.jsonl".to_owned(), Some("W.".to_owned()))));
/// ```
#[must_use]
pub fn records_named(text: &str, format: Format) -> Option<(String, Option<String>)> {
    let (root, _) = reader::tree(text, format);
    let text = |node: &Node, key: &str| node.get(key)?.text().map(str::to_owned);
    let colourist = root.get("service").and_then(|service| text(service, "colourist"));
    text(&root, "records").map(|path| (path, colourist))
}

/// Reads a service file that names its shop by a path; the shop takes the place of the path.
///
/// # Errors
///
/// [`Problems`], as for [`parse`]; a service file that has a shop of its own as well is one of them.
///
/// # Example
///
/// ```
/// use foilwork::{reader::Format, service::parse_with_shop, shop};
///
/// let shop = shop::parse_shop(&std::fs::read_to_string("examples/juniper_and_tide.toml")?, Format::Toml)?;
/// let file = parse_with_shop(&std::fs::read_to_string("examples/gloss-refresh.toml")?, Format::Toml, &shop)?;
/// assert_eq!(file.shop, Some(shop));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn parse_with_shop(text: &str, format: Format, shop: &ShopFile) -> Result<ServiceFile, Problems> {
    reader::parse_replacing(text, format, "shop_file", "shop", shop)
}

/// The same of a service file that has been taken apart already, for example by another program.
///
/// # Errors
///
/// [`Problems`], as for [`parse_with_shop`]; none names a line.
///
/// # Example
///
/// ```
/// use foilwork::{service::from_value_with_shop, shop::shape::ShopFile};
///
/// let file = serde_json::json!({ "format": 1, "shop": { "currency": "EUR" } });
/// let problems = from_value_with_shop(&file, &ShopFile::default()).unwrap_err();
/// assert!(problems.to_string().starts_with("shop: a shop is given beside the file, and the file has one inside"));
/// ```
pub fn from_value_with_shop(file: &Value, shop: &ShopFile) -> Result<ServiceFile, Problems> {
    reader::from_value_replacing(file, "shop_file", "shop", shop)
}

/// The JSON Schema (draft 2020-12) of a service file, derived from its shape.
///
/// `foilwork schema` prints it; editors can use it while a file is written, and [`parse`] checks every file against it.
///
/// # Example
///
/// ```
/// let schema = foilwork::service::service_schema();
/// assert_eq!(schema["title"], "ServiceFile");
/// ```
#[must_use]
pub fn service_schema() -> Value {
    ServiceFile::schema().clone()
}

use super::{Shop, amounts, names, shape::ShopFile, text_fields};
use crate::reader::{self, Document, Format, Node, Problems};
use serde_json::Value;
use std::sync::LazyLock;

impl Document for ShopFile {
    fn schema() -> &'static Value {
        static SCHEMA: LazyLock<Value> = LazyLock::new(|| reader::derive::<ShopFile>(text_fields::form));
        &SCHEMA
    }

    fn text_field(reader: &str, text: &str) -> Result<(), String> {
        text_fields::check(reader, text)
    }

    fn check_whole(root: &Node, problems: &mut Problems) {
        check_table(root, "", problems);
    }
}

/// What a schema cannot say of a shop; `prefix` is the path of its table, `shop.` inside a service file.
pub(crate) fn check_table(shop: &Node, prefix: &str, problems: &mut Problems) {
    names::check(shop, prefix, problems);
    amounts::check(shop, prefix, problems);
}

/// Reads a shop file.
///
/// # Errors
///
/// [`Problems`] holds everything that is wrong, each with its line, its field and the way out.
///
/// # Example
///
/// ```
/// use foilwork::{reader::Format, shop};
///
/// let file = shop::parse_shop("[[diluent]]\nname = \"thinning base\"\nin_hand_g = 400", Format::Toml)?;
/// assert_eq!(file.diluent[0].in_hand_g, Some(400.0));
///
/// let problems = shop::parse_shop("[[diluent]]\nnam = \"thinning base\"", Format::Toml).unwrap_err();
/// assert_eq!(problems.to_string(), "line 2: diluent[1].nam: unknown field: did you mean `name`?");
/// # Ok::<(), foilwork::reader::Problems>(())
/// ```
pub fn parse_shop(text: &str, format: Format) -> Result<ShopFile, Problems> {
    let file = reader::parse_document(text, format)?;
    // What shows only in the quantities, such as a range the wrong way round, is found now too.
    Shop::of_checked(&file, "").map_err(|problems| problems.located(text, format))?;
    Ok(file)
}

/// The JSON Schema (draft 2020-12) of a shop file, derived from its shape.
///
/// # Example
///
/// ```
/// let schema = foilwork::shop::shop_schema();
/// assert_eq!(schema["title"], "ShopFile");
/// ```
#[must_use]
pub fn shop_schema() -> Value {
    ShopFile::schema().clone()
}

//! The rules of a service file that its schema cannot say.

mod circle;
mod document;
mod names;
mod references;
mod text_fields;

pub(in crate::service) use crate::reader::{Problem, Problems};
pub use document::{
    from_value_with_shop, parse, parse_with_shop, records_named, service_schema, shop_file, strand_book,
};
pub(in crate::service) use text_fields::Moment;

//! Pages in HTML: one file that holds everything it needs, loads nothing and obeys nobody's text.
//!
//! [`Html`] writes elements and escapes what is in them; [`Page`] puts style, script and a content-security policy around
//! it: without the hash of exactly this style and this script a browser runs neither.

mod frame;
mod html;

pub use frame::Page;
pub use html::Html;

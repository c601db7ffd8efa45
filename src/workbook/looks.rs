//! How cells look: what may be changed is coloured, nothing else is.

use rust_xlsxwriter::{Color, Format, FormatAlign, FormatBorder};

/// The colour of a cell that may be changed; explained on every page.
const INPUT: u32 = 0x00FF_F2CC;
/// Behind the names of columns.
const NAMES: u32 = 0x00DD_DDDD;

pub(super) fn title() -> Format {
    Format::new().set_bold().set_font_size(14).set_quote_prefix()
}

pub(super) fn plain() -> Format {
    Format::new().set_text_wrap().set_align(FormatAlign::Top).set_quote_prefix()
}

pub(super) fn names() -> Format {
    plain().set_bold().set_background_color(Color::RGB(NAMES)).set_border(FormatBorder::Thin)
}

pub(super) fn text() -> Format {
    plain().set_border(FormatBorder::Thin)
}

/// What stops a service.
pub(super) fn stop() -> Format {
    plain().set_bold().set_font_color(Color::White).set_background_color(Color::RGB(0x00C0_0000))
}

/// What is above a ceiling.
pub(super) fn alarm() -> Format {
    Format::new().set_bold().set_font_color(Color::White).set_background_color(Color::RGB(0x00C0_0000))
}

/// A number with so many decimals at most.
pub(super) fn number(decimals: usize) -> Format {
    let shown = if decimals == 0 { "0".to_owned() } else { format!("0.{}", "0".repeat(decimals)) };
    Format::new().set_align(FormatAlign::Top).set_border(FormatBorder::Thin).set_num_format(shown)
}

/// The same where it may be changed.
pub(super) fn input(decimals: usize) -> Format {
    number(decimals).set_background_color(Color::RGB(INPUT)).set_unlocked()
}

/// A text that may be changed.
pub(super) fn answer() -> Format {
    Format::new()
        .set_align(FormatAlign::Top)
        .set_border(FormatBorder::Thin)
        .set_background_color(Color::RGB(INPUT))
        .set_unlocked()
}

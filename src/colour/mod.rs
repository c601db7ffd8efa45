//! Levels, tones, underlying pigment, CIELAB and the melanin model of a swatch.

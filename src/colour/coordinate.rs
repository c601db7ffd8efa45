use crate::quantity::quantity;

quantity! {
    /// CIELAB lightness of hair.
    Lightness: "lightness" in "L*", key "lab_l", from_lab_l / lab_l,
    0.0..=100.0, "from 0 (black) to 100 L* (white)"
}

quantity! {
    /// CIELAB a\*: red when positive, green when negative.
    Redness: "redness" in "a*", key "lab_a", from_lab_a / lab_a,
    -200.0..=200.0, "from -200 to 200 a*"
}

quantity! {
    /// CIELAB b\*: yellow when positive, blue when negative.
    Yellowness: "yellowness" in "b*", key "lab_b", from_lab_b / lab_b,
    -200.0..=200.0, "from -200 to 200 b*"
}

quantity! {
    /// CIELAB chroma: the distance from the grey axis.
    Chroma: "chroma" in "C*", key "chroma", from_chroma / chroma,
    0.0..=300.0, "from 0 to 300 C*"
}

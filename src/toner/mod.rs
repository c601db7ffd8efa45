//! Which mix of shades brings exposed pigment to a target.

//! `colour`: see the room's own page in `src/colour`.

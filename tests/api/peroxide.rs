//! `peroxide`: see the room's own page in `src/peroxide`.

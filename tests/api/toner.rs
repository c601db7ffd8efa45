//! `toner`: see the room's own page in `src/toner`.

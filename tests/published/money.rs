//! `money`: see the room's own page in `src/money`.

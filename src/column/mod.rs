//! The same rules over whole columns: `&[f64]` in, `&mut [f64]` out, no formula of their own.

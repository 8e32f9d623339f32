//! Pictures as inline SVG: to scale, labelled, each with its facts as text.
//!
//! Imports `measure`, `model` and how the words hold a tool: what is drawn, what
//! its labels say and what is told beside it comes from whoever asks for a
//! picture.

pub(in crate::report) mod freeboard;
pub(in crate::report) mod reach;
mod sketches;
mod svg;
pub(in crate::report) mod time;

pub(in crate::report) use sketches::sketch;

//! Where an encoder of the published rules goes wrong: a test (at least) for
//! each such place, through the real command, from both sides.
//!
//! `Trap n` is the number of such a place; `(read)` after a citation means that
//! the text of the clause was read.

mod counting;
mod figures;
mod mouth_gags;
mod nets_and_supports;
mod papers;
mod reach;

/// Gulf of Mexico reef fish, Appendix F as in force since the 2019 rules.
const GULF: &str = "us-gulf-reef-fish-2019";
/// The same fishery before: 635.21 items (A) to (L) with changes.
const OLD_GULF: &str = "us-gulf-reef-fish-before-2019";
/// South Atlantic snapper-grouper, Appendix F.
const SOUTH: &str = "us-south-atlantic-snapper-grouper-2019";
/// Pelagic and bottom longline, 635.21 until 28 November 2024.
const ATLANTIC: &str = "us-atlantic-longline-2009";
/// Dolphin-wahoo with a pelagic longline, by reference to 635.21.
const DOLPHIN: &str = "us-dolphin-wahoo-longline-2009";

/// A day on which Appendix F is in force in its present form.
const TODAY: &str = "2026-03-02";
/// A day on which items (A) to (M) of 635.21 were in force.
const IN_2024: &str = "2024-09-02";
/// A day on which the old Gulf edition was in force.
const IN_2018: &str = "2018-12-10";

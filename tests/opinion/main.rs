//! A second opinion on the shipped profiles, and on one that is made up.
//!
//! The profiles and the vessels are read as plain YAML, translated into a
//! policy in Rego with its data, and judged by an interpreter that is not
//! ours. Which tool serves where is tried out exhaustively. Only the verdict
//! that is compared comes from the program's library.
//!
//! `KITMUSTER_OPINION_VESSELS` (2000, or 10000 where `KITMUSTER_WHOLE` is set),
//! `KITMUSTER_OPINION_SEED` (2026), and `KITMUSTER_OPINION_ONLY` for the number
//! of a single vessel.
//!
//! `draw.rs` draws kits that would just pass and moves figures to a limit and one
//! step to either side, leaves facts out, breaks, lends and dates tools. The
//! shipped profiles hardly compete for tools; `rivals.yaml` does, and its run fails
//! unless first come, first served would have given 500 of its vessels another
//! outcome. A disagreement prints seed and number, the inventory, the program's
//! reasons and the policy's answer. A phrase that the translator does not know is
//! added in `rules.rs` and `policy.rego`.
//!
//! Not covered: parts and `parts may be shared`, `changes`, `acquired: before`,
//! `aboard:` conditions, certificates held by a number of people, inspection
//! records, `--trust`, `--profile`, the inverses, the reasons shown, and a tape's
//! error on a range of freeboards. Copied from the program, not from a rule: how
//! readings of a freeboard that differ are brought together.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::disallowed_methods,
    clippy::print_stdout
)]

mod assign;
mod compare;
mod draw;
mod figures;
mod judge;
mod kit;
mod policy;
mod rules;
mod seeded;
#[path = "../it/whole.rs"]
mod whole;

/// Runs the share (in hundredths) of all vessels that is drawn for a profile
/// and tells every disagreement.
fn compared(profile: &str, share: u64) -> compare::Tally {
    let tally = compare::run(profile, share);
    let some: Vec<_> = tally.disagreements.iter().take(3).map(String::as_str).collect();
    assert!(
        some.is_empty(),
        "{} vessels are judged otherwise: {:#?}\nthe first:\n{}",
        tally.disagreements.len(),
        tally.kinds,
        some.join("\n")
    );
    let unseen = &tally.unseen;
    assert!(!tally.whole || unseen.is_empty(), "never drawn for {profile}: {unseen:#?}");
    tally
}

#[test]
fn the_gulf_rule_of_2019_is_judged_alike() {
    compared("us-gulf-reef-fish-2019", 18);
}

#[test]
fn the_gulf_rule_before_2019_is_judged_alike() {
    compared("us-gulf-reef-fish-before-2019", 16);
}

#[test]
fn the_snapper_grouper_rule_is_judged_alike() {
    compared("us-south-atlantic-snapper-grouper-2019", 11);
}

#[test]
fn the_atlantic_longline_rule_is_judged_alike() {
    compared("us-atlantic-longline-2009", 13);
}

#[test]
fn the_dolphin_wahoo_rule_is_judged_alike() {
    compared("us-dolphin-wahoo-longline-2009", 10);
}

#[test]
fn good_practice_is_judged_alike() {
    compared("good-practice-longline", 17);
}

/// The shipped profiles hardly compete for tools; this one does, and a run is
/// no test of that where serving the first comer first does as well.
#[test]
fn requirements_that_compete_for_tools_are_judged_alike() {
    let tally = compared("rivals", 15);
    let (contested, vessels) = (tally.contested, tally.vessels);
    assert!(!tally.whole || vessels >= 1_500, "only {vessels} vessels");
    assert!(!tally.whole || contested >= 500, "only {contested} of {vessels} are contested");
}

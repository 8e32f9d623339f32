//! Mouth openers and gags: at least two of seven different types, some of
//! which are sets.

use super::{ATLANTIC, GULF, IN_2024, TODAY};
use crate::outfit::gear::{appendix_f as f, section_635 as s};
use crate::outfit::{Judged, but, just_over, just_under, vessel};

fn gulf(kit: &[&str]) -> Judged {
    vessel("3 ft").with(kit).under(GULF, TODAY)
}

/// Trap 12: 50 CFR part 622 Appendix F, A.12 and 635.21(c)(5)(i)(L) (read).
///
/// Pins: us-gulf-reef-fish-2019/mouth-gags: 2 different types
/// Pins: us-atlantic-longline-2009/mouth-gags: 2 different types
#[test]
fn two_of_one_type_are_one_type() {
    let second = but(f::BLOCK, "mark", "WB-2");
    let two = gulf(&[f::BLOCK, &second]);
    assert_eq!(two.outcome("mouth-gags"), "not-met");
    assert_eq!(two.codes("mouth-gags"), ["too-few-types"]);
    assert_eq!(gulf(&[f::BLOCK, f::HANK]).outcome("mouth-gags"), "met");
    let two =
        vessel("3 ft").with(&[s::BLOCK, &but(s::BLOCK, "mark", "WB-2")]).under(ATLANTIC, IN_2024);
    assert_eq!(two.outcome("mouth-gags"), "not-met");
}

/// Trap 12: 50 CFR part 622 Appendix F, A.12(a) (read): the brush without bristles
/// is another form of the block, no type of its own.
#[test]
fn a_block_and_a_brush_are_one_type() {
    let brush =
        but(&but(f::BLOCK, "mark", "BR-1"), "kind", "wooden-handled brush without bristles");
    assert_eq!(gulf(&[f::BLOCK, &brush]).outcome("mouth-gags"), "not-met");
    assert_eq!(gulf(&[f::HANK, &brush]).outcome("mouth-gags"), "met");
}

/// Trap 12: 50 CFR part 622 Appendix F, A.12(b), (c), (f) (read): three gags, two
/// bones, four couplings.
///
/// Pins: us-gulf-reef-fish-2019/mouth-gags: 3 canine-gag; 2 chew-bone; 4 pvc-coupling
#[test]
fn an_incomplete_set_is_no_type() {
    for set in [&f::GAGS[..], &f::BONES, &f::COUPLINGS] {
        let mut kit = vec![f::BLOCK];
        kit.extend(set);
        assert_eq!(gulf(&kit).outcome("mouth-gags"), "met", "{set:?}");
        for missing in 1..kit.len() {
            let mut fewer = kit.clone();
            fewer.remove(missing);
            let judged = gulf(&fewer);
            assert_eq!(judged.outcome("mouth-gags"), "not-met", "{fewer:?}");
            assert_eq!(judged.codes("mouth-gags")[0], "too-few-types", "{fewer:?}");
        }
    }
}

/// Trap 12: 50 CFR part 622 Appendix F, A.12(b) (read): one each of 5, 6 and 7 in.
#[test]
fn three_gags_of_one_size_are_no_set() {
    let same = f::GAGS.map(|gag| but(gag, "nominal-size", "6 in"));
    let kit = [f::BLOCK, &same[0], &same[1], &same[2]];
    assert_eq!(gulf(&kit).outcome("mouth-gags"), "not-met");
}

/// Trap 13: 50 CFR part 622 Appendix F, A.12(c) and 635.21(c)(5)(i)(L)(3) (read):
/// a large one within 5 1/2 to 8 in, a small one within 3 1/2 to 4 1/2 in
/// (fractions of Appendix F rebuilt from the metric brackets).
///
/// Pins: us-gulf-reef-fish-2019/mouth-gags: chew-bone length 5 1/2 in
/// Pins: us-gulf-reef-fish-2019/mouth-gags: chew-bone length 8 in
/// Pins: us-gulf-reef-fish-2019/mouth-gags: chew-bone length 3 1/2 in
/// Pins: us-gulf-reef-fish-2019/mouth-gags: chew-bone length 4 1/2 in
#[test]
fn chew_bones_have_a_range_each_not_a_size_each() {
    let cases = [
        ("5 1/2 in", "3 1/2 in", "met"),
        ("8 in", "4 1/2 in", "met"),
        ("6 3/8 in", "4 1/16 in", "met"),
        ("7 in", "6 in", "not-met"),
        ("4 in", "4 1/4 in", "not-met"),
        ("7 in", "5 in", "not-met"),
    ];
    let bones = |large: &str, small: &str| {
        [but(f::BONES[0], "length", large), but(f::BONES[1], "length", small)]
    };
    for (large, small, expected) in cases {
        let pair = bones(large, small);
        assert_eq!(
            gulf(&[f::BLOCK, &pair[0], &pair[1]]).outcome("mouth-gags"),
            expected,
            "{large} {small}"
        );
        let old = vessel("3 ft").with(&[s::BLOCK, &pair[0], &pair[1]]).under(ATLANTIC, IN_2024);
        assert_eq!(old.outcome("mouth-gags"), expected, "{large} {small}");
    }
    for (large, small) in [
        (just_over("8 in"), "4 in".to_owned()),
        (just_under("5 1/2 in"), "4 in".to_owned()),
        ("7 in".to_owned(), just_over("4 1/2 in")),
        ("7 in".to_owned(), just_under("3 1/2 in")),
    ] {
        let pair = bones(&large, &small);
        assert_eq!(
            gulf(&[f::BLOCK, &pair[0], &pair[1]]).outcome("mouth-gags"),
            "not-met",
            "{large} {small}"
        );
    }
}

/// Trap 14: 50 CFR part 622 Appendix F, A.9 and A.12(f) (read): the couplings are
/// held with the pliers, and nothing bars the pliers from counting as pliers.
#[test]
fn the_pliers_that_hold_the_couplings_still_count_as_pliers() {
    let mut kit = vec![f::BLOCK];
    kit.extend(f::COUPLINGS);
    kit.push(f::PLIERS);
    let one_pair = gulf(&kit);
    assert_eq!((one_pair.outcome("pliers"), one_pair.outcome("mouth-gags")), ("met", "met"));
    kit.pop();
    let none = gulf(&kit);
    assert_eq!((none.outcome("pliers"), none.outcome("mouth-gags")), ("not-met", "met"));
}

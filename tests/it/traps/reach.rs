//! Reach: which percentage of freeboard, on which side of 4 ft, and what a
//! metric bracket is worth.

use super::{ATLANTIC, DOLPHIN, GULF, IN_2024, SOUTH, TODAY};
use crate::outfit::gear::{appendix_f as f, equipped_for_part_622, section_635 as s};
use crate::outfit::{but, just_over, just_under, outcome, vessel};

/// One tool at one freeboard: the least handle does, a nanometre less does not.
fn turns_at(
    profile: &str,
    day: &str,
    freeboard: &str,
    requirement: &str,
    tool: &str,
    key: &str,
    least: &str,
) {
    let at =
        |length: &str| outcome(profile, day, freeboard, &[but(tool, key, length)], requirement);
    let case = format!("{profile} {requirement} {key} at {freeboard}");
    assert_eq!(at(least), "met", "{case}, {least}");
    assert_eq!(at(&just_under(least)), "not-met", "{case}, just under {least}");
}

/// Trap 1: 50 CFR part 622 Appendix F, A.3 and A.4 (read): 100 % of freeboard.
#[test]
fn external_dehooker_and_inverted_v_reach_freeboard_once_under_appendix_f() {
    for profile in [GULF, SOUTH] {
        turns_at(
            profile,
            TODAY,
            "6 ft 1 in",
            "long-dehooker-external",
            f::EXTERNAL,
            "handle",
            "6 ft 1 in",
        );
        turns_at(
            profile,
            TODAY,
            "6 ft 1 in",
            "inverted-v-device",
            f::BOAT_HOOK,
            "handle",
            "6 ft 1 in",
        );
        turns_at(profile, TODAY, "5 ft", "long-dehooker-external", f::EXTERNAL, "handle", "6 ft");
        turns_at(profile, TODAY, "5 ft", "inverted-v-device", f::BOAT_HOOK, "handle", "6 ft");
    }
}

/// Trap 1: 50 CFR part 622 Appendix F, A.1, A.2, A.5 (read): 150 % of freeboard.
#[test]
fn cutter_internal_dehooker_and_nets_reach_freeboard_half_as_far_again_under_appendix_f() {
    for profile in [GULF, SOUTH] {
        for (requirement, tool, key) in [
            ("long-line-cutter", f::CUTTER, "handle"),
            ("long-dehooker-internal", f::INTERNAL, "handle"),
            ("net", f::DIP_NET, "handle"),
            ("net", f::HOOP_NET, "rope-length"),
            ("net", f::HOIST, "rope-length"),
        ] {
            turns_at(profile, TODAY, "6 ft 1 in", requirement, tool, key, "9 ft 1 1/2 in");
        }
    }
}

/// Trap 1: 50 CFR 635.21(c)(5)(i)(A) to (E), (M) until 28 November 2024 (read).
#[test]
fn the_same_two_percentages_stand_in_section_635_21() {
    for profile in [ATLANTIC, DOLPHIN] {
        for (requirement, tool, key) in [
            ("long-line-cutter", s::CUTTER, "handle"),
            ("long-dehooker-internal", s::INTERNAL, "handle"),
            ("net", s::DIP_NET, "handle"),
            ("control-device", s::TETHER, "pole"),
        ] {
            turns_at(profile, IN_2024, "6 ft 1 in", requirement, tool, key, "9 ft 1 1/2 in");
        }
        turns_at(
            profile,
            IN_2024,
            "6 ft 1 in",
            "long-dehooker-external",
            s::EXTERNAL,
            "handle",
            "6 ft 1 in",
        );
        turns_at(
            profile,
            IN_2024,
            "6 ft 1 in",
            "inverted-v-device",
            s::BOAT_HOOK,
            "handle",
            "6 ft 1 in",
        );
    }
}

const FULL_LIST_ONLY: [&str; 5] = [
    "long-line-cutter",
    "replacement-blades",
    "long-dehooker-internal",
    "long-dehooker-external",
    "inverted-v-device",
];

/// Trap 2: 50 CFR 622.29(a)(1)(iii), (iv) and 622.179(a)(1)(iii), (iv) (read):
/// `4 ft (1.2 m) or less` and `more than 4 ft (1.2 m)`.
///
/// Pins: us-gulf-reef-fish-2019/long-line-cutter: when freeboard more than 4 ft
/// Pins: us-gulf-reef-fish-2019/replacement-blades: when freeboard more than 4 ft
/// Pins: us-gulf-reef-fish-2019/long-dehooker-internal: when freeboard more than 4 ft
/// Pins: us-gulf-reef-fish-2019/long-dehooker-external: when freeboard more than 4 ft
/// Pins: us-gulf-reef-fish-2019/inverted-v-device: when freeboard more than 4 ft
/// Pins: us-south-atlantic-snapper-grouper-2019/long-line-cutter: when freeboard more than 4 ft
/// Pins: us-south-atlantic-snapper-grouper-2019/replacement-blades: when freeboard more than 4 ft
/// Pins: us-south-atlantic-snapper-grouper-2019/long-dehooker-internal: when freeboard more than 4 ft
/// Pins: us-south-atlantic-snapper-grouper-2019/long-dehooker-external: when freeboard more than 4 ft
/// Pins: us-south-atlantic-snapper-grouper-2019/inverted-v-device: when freeboard more than 4 ft
#[test]
fn exactly_4_ft_of_freeboard_has_the_light_list() {
    for profile in [GULF, SOUTH] {
        let light = equipped_for_part_622("4 ft").under(profile, TODAY);
        let full = equipped_for_part_622(&just_over("4 ft")).under(profile, TODAY);
        assert_eq!((light.verdict(), full.verdict()), ("ready", "ready"));
        for requirement in FULL_LIST_ONLY {
            assert_eq!(light.outcome(requirement), "unbound", "{profile} {requirement}");
            assert_eq!(full.outcome(requirement), "met", "{profile} {requirement}");
        }
        assert_eq!(light.outcome("net"), "met");
    }
}

/// Trap 2: 50 CFR 635.21(c)(5) and 622.273(a) (read): no threshold of freeboard.
#[test]
fn section_635_21_and_dolphin_wahoo_know_no_4_ft() {
    for profile in [ATLANTIC, DOLPHIN] {
        for freeboard in ["3 ft", "4 ft"] {
            let bare = vessel(freeboard).under(profile, IN_2024);
            for requirement in FULL_LIST_ONLY {
                assert_eq!(
                    bare.outcome(requirement),
                    "not-met",
                    "{profile} {freeboard} {requirement}"
                );
            }
        }
    }
}

/// Trap 3: 50 CFR part 622 Appendix F, A.5(a) (read) prints `6 ft (1.8 m)`, and
/// 635.21(c)(5)(i)(E) (read) `6 ft (1.83 m)`; 6 ft is 1.8288 m exactly.
#[test]
fn a_metric_bracket_never_shortens_6_ft() {
    for (profile, day, net) in [(GULF, TODAY, f::DIP_NET), (ATLANTIC, IN_2024, s::DIP_NET)] {
        for (handle, expected) in [
            ("1.80 m", "not-met"),
            ("1.82 m", "not-met"),
            ("1.8288 m", "met"),
            ("6 ft", "met"),
            ("1.83 m", "met"),
        ] {
            assert_eq!(
                outcome(profile, day, "3 ft", &[but(net, "handle", handle)], "net"),
                expected,
                "{profile} {handle}"
            );
        }
    }
}

/// Trap 3: 50 CFR 622.29(a)(1) (read) prints `4 ft (1.2 m)`; 4 ft is 1.2192 m.
#[test]
fn the_bracket_of_4_ft_moves_no_vessel_to_the_full_list() {
    for (freeboard, expected) in [
        ("1.2 m", "unbound"),
        ("1.21 m", "unbound"),
        ("1.2192 m", "unbound"),
        ("1.22 m", "not-met"),
    ] {
        assert_eq!(
            vessel(freeboard).under(GULF, TODAY).outcome("long-line-cutter"),
            expected,
            "{freeboard}"
        );
    }
}

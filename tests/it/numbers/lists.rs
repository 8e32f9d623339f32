//! Which requirements bind at which freeboard, for each shipped profile,
//! written by hand from the rules' texts.

use super::{ATLANTIC, DOLPHIN, GULF, IN_2024, SOUTH, TODAY};
use crate::outfit::vessel;

/// 50 CFR 622.29(a)(1)(iii), 622.179(a)(1)(iii) (read) with Appendix F, A.5
/// to A.12: at 4 ft or less, and above it too; documents of 622.29(a)(1).
const LIGHT: [&str; 10] = [
    "bolt-cutters",
    "careful-release-document",
    "handling-placard",
    "line-cutters",
    "mouth-gags",
    "net",
    "pliers",
    "short-dehooker-external",
    "short-dehooker-internal",
    "support",
];

/// 50 CFR 622.29(a)(1)(iv), 622.179(a)(1)(iv) (read) with Appendix F, A.1 to
/// A.4: above 4 ft only. A.1 names the blades beside the line cutter.
pub(crate) const FULL_ONLY: [&str; 5] = [
    "inverted-v-device",
    "long-dehooker-external",
    "long-dehooker-internal",
    "long-line-cutter",
    "replacement-blades",
];

/// 50 CFR 622.29(a)(1)(iii) before the 2019 rule (read): one short-handled
/// dehooker, a dipnet with a handle of any length.
const OLD_LIGHT: [&str; 9] = [
    "bolt-cutters",
    "careful-release-document",
    "handling-placard",
    "line-cutters",
    "mouth-gags",
    "net-low-rail",
    "pliers",
    "short-dehooker",
    "support",
];

/// 50 CFR 622.29(a)(1)(iv) before the 2019 rule (read): items (A) to (L), one
/// long-handled and one short-handled dehooker.
const OLD_FULL: [&str; 12] = [
    "bolt-cutters",
    "careful-release-document",
    "handling-placard",
    "inverted-v-device",
    "line-cutters",
    "long-dehooker",
    "long-line-cutter",
    "mouth-gags",
    "net",
    "pliers",
    "replacement-blades",
    "short-dehooker",
];

/// 50 CFR 635.21(c)(5)(i)(A) to (M) until 28 November 2024 (read).
const A_TO_M: [&str; 14] = [
    "bolt-cutters",
    "control-device",
    "inverted-v-device",
    "line-cutters",
    "long-dehooker-external",
    "long-dehooker-internal",
    "long-line-cutter",
    "mouth-gags",
    "net",
    "pliers",
    "replacement-blades",
    "short-dehooker-external",
    "short-dehooker-internal",
    "support",
];

/// The house's own list: common practice in the trade, no published source.
const HOUSE: [&str; 12] = [
    "bolt-cutters",
    "control-device",
    "inverted-v-device",
    "line-cutters",
    "long-dehooker",
    "long-line-cutter",
    "mouth-gag",
    "net",
    "pliers",
    "second-dehooker-style",
    "second-mouth-gag",
    "support",
];

const LOW: [&str; 4] = ["3 ft 11 in", "4 ft", "1.21 m", "1.2192 m"];
const HIGH: [&str; 2] = ["4 ft 1 in", "1.22 m"];

/// Asserts which requirements bind at the freeboards.
fn bind(profile: &str, day: &str, freeboards: &[&str], lists: &[&[&str]]) {
    let mut expected: Vec<&str> = lists.iter().flat_map(|list| list.iter().copied()).collect();
    expected.sort_unstable();
    for freeboard in freeboards {
        let judged = vessel(freeboard).set("areas", "[atlantic]").under(profile, day);
        let mut bound = judged.requirements();
        bound.sort_unstable();
        assert_eq!(bound, expected, "{profile} at {freeboard}");
    }
}

fn everywhere() -> Vec<&'static str> {
    LOW.iter().chain(&HIGH).copied().collect()
}

/// 50 CFR 622.29(a)(1), Appendix F (read).
#[test]
fn the_gulf_edition_of_2019_has_a_light_and_a_full_list() {
    bind(GULF, TODAY, &LOW, &[&LIGHT]);
    bind(GULF, TODAY, &HIGH, &[&LIGHT, &FULL_ONLY]);
}

/// 50 CFR part 622 Appendix F (read): the gear without the documents and
/// without the threshold of freeboard, which the fisheries' own sections set
/// (622.29(a)(1)(iii) and (iv), 622.179(a)(1)(iii) and (iv)).
#[test]
fn the_gear_of_appendix_f_alone_has_no_threshold() {
    let papers = ["careful-release-document", "handling-placard"];
    let gear: Vec<&str> = LIGHT.into_iter().filter(|id| !papers.contains(id)).collect();
    bind("us-622-appendix-f", TODAY, &everywhere(), &[&gear, &FULL_ONLY]);
}

/// 50 CFR 622.179(a)(1), Appendix F (read).
#[test]
fn the_south_atlantic_edition_of_2019_has_a_light_and_a_full_list() {
    bind(SOUTH, TODAY, &LOW, &[&LIGHT]);
    bind(SOUTH, TODAY, &HIGH, &[&LIGHT, &FULL_ONLY]);
}

/// 50 CFR 622.29(a)(1)(iii), (iv) before the 2019 rule (read).
#[test]
fn the_old_gulf_edition_has_a_light_and_a_full_list() {
    let profile = "us-gulf-reef-fish-before-2019";
    bind(profile, "2018-12-10", &LOW, &[&OLD_LIGHT]);
    bind(profile, "2018-12-10", &HIGH, &[&OLD_FULL, &["support"]]);
}

/// 50 CFR 635.21(c)(5)(i), (b)(1), (b)(4), (c)(5)(iii)(C), 635.8(c) (read).
#[test]
fn the_longline_edition_of_2009_is_the_same_at_every_freeboard() {
    let beyond_gear = [
        "careful-release-document",
        "circle-hooks",
        "corrodible-hooks",
        "handling-placard",
        "workshop-certificates",
    ];
    bind(ATLANTIC, IN_2024, &everywhere(), &[&A_TO_M, &beyond_gear]);
}

/// 50 CFR 622.273(a) (read): gear of 635.21(c)(5)(i), guidelines only.
#[test]
fn the_dolphin_wahoo_edition_of_2009_is_the_same_at_every_freeboard() {
    bind(DOLPHIN, IN_2024, &everywhere(), &[&A_TO_M, &["handling-placard"]]);
}

/// Common practice, no published source: no threshold of freeboard.
#[test]
fn good_practice_is_the_same_at_every_freeboard() {
    bind("good-practice-longline", TODAY, &everywhere(), &[&HOUSE, &["short-dehookers"]]);
}

/// Common practice, no published source: what is required and what is advice.
#[test]
fn good_practice_requires_six_things_and_recommends_the_rest() {
    let judged = vessel("5 ft").under("good-practice-longline", TODAY);
    let required =
        ["bolt-cutters", "long-dehooker", "long-line-cutter", "mouth-gag", "net", "support"];
    for requirement in judged.requirements() {
        let level = if required.contains(&requirement) { "required" } else { "recommended" };
        assert_eq!(judged.finding(requirement)["level"], level, "{requirement}");
    }
}

/// 50 CFR 635.21(c)(5)(iii)(C)(3) (read): hook wire in the Gulf of Mexico,
/// January to June only; (c)(2)(iv) (read): the Northeast Distant area.
///
/// Pins: us-atlantic-longline-2009/gulf-hook-wire: when months 1 to 6; when area gulf-of-mexico
/// Pins: us-atlantic-longline-2009/northeast-distant-hooks: when area northeast-distant
#[test]
fn hook_rules_of_section_635_21_bind_by_area_and_month() {
    let bound = |area: &str, gear: &str, day: &str| -> Vec<String> {
        let vessel =
            vessel("5 ft").set("areas", &format!("[{area}]")).set("gear", &format!("[{gear}]"));
        let judged = vessel.under(ATLANTIC, day);
        judged
            .requirements()
            .iter()
            .filter(|id| id.contains("hook") && !id.contains("dehooker"))
            .map(|id| (*id).to_owned())
            .collect()
    };
    let gulf = "gulf-of-mexico";
    assert_eq!(
        bound(gulf, "pelagic-longline", "2024-06-30"),
        ["corrodible-hooks", "circle-hooks", "gulf-hook-wire"]
    );
    assert_eq!(bound(gulf, "pelagic-longline", "2024-07-01"), ["corrodible-hooks", "circle-hooks"]);
    assert_eq!(
        bound(gulf, "pelagic-longline", "2019-07-01"),
        ["corrodible-hooks", "circle-hooks", "gulf-hook-wire-all-year"]
    );
    assert_eq!(
        bound("northeast-distant", "pelagic-longline", IN_2024),
        ["corrodible-hooks", "northeast-distant-hooks"]
    );
    assert_eq!(bound("atlantic", "bottom-longline", IN_2024), ["corrodible-hooks"]);
}

/// 89 FR 85879 (excerpt) and its follower in 622.273(a) (inferred), and the
/// South Atlantic edition before 8 January 2020 (figures from memory only):
/// known, not encoded, so nobody can tell.
#[test]
fn an_edition_that_is_not_encoded_has_no_list() {
    for (profile, day) in [
        ("us-atlantic-longline-2024", "2025-01-10"),
        ("us-dolphin-wahoo-longline-2024", "2025-01-10"),
        ("us-south-atlantic-snapper-grouper-before-2020", "2018-12-10"),
    ] {
        for freeboard in everywhere() {
            let judged = vessel(freeboard).under(profile, day);
            assert_eq!(judged.requirements(), Vec::<&str>::new(), "{profile} at {freeboard}");
            assert_eq!(judged.verdict(), "cannot-tell", "{profile} at {freeboard}");
            assert_eq!(judged.only()["encoded"], false, "{profile}");
        }
    }
}

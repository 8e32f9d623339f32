//! Numbers to check against: conversions, boundaries of the reach rules, and
//! cases worked by hand from the rules' texts, each with its source.

pub(crate) mod lists;

use crate::outfit::gear::{appendix_f as f, section_635 as s};
use crate::outfit::{but, just_under, outcome, vessel};
use kitmuster::measure::Length;

const GULF: &str = "us-gulf-reef-fish-2019";
const SOUTH: &str = "us-south-atlantic-snapper-grouper-2019";
const ATLANTIC: &str = "us-atlantic-longline-2009";
const DOLPHIN: &str = "us-dolphin-wahoo-longline-2009";
const TODAY: &str = "2026-03-02";
const IN_2024: &str = "2024-09-02";

fn nanometres(text: &str) -> i64 {
    Length::parse(text).unwrap().0.nanometres()
}

/// International yard and pound agreement of 1959; NIST SP 811 Appendix B;
/// NIST Handbook 44 Appendix C.
#[test]
fn customary_units_are_exact_in_metric_ones() {
    assert_eq!(nanometres("1 in"), 25_400_000);
    assert_eq!(nanometres("1 ft"), 304_800_000);
    assert_eq!(nanometres("1 fathom"), nanometres("6 ft"));
    assert_eq!(nanometres("1 fathom"), nanometres("1.8288 m"));
    assert_eq!(nanometres("1/64 in"), 396_875);
    assert_eq!(nanometres("4 ft"), nanometres("1.2192 m"));
    assert_ne!(nanometres("6 ft"), nanometres("1.83 m"));
}

/// One tool at one freeboard: this handle is the least that does.
fn least(profile: &str, day: &str, freeboard: &str, requirement: &str, tool: &str, length: &str) {
    let with = |length: &str| {
        outcome(profile, day, freeboard, &[but(tool, "handle", length)], requirement)
    };
    assert_eq!(with(length), "met", "{profile} {requirement} at {freeboard}: {length}");
    assert_eq!(
        with(&just_under(length)),
        "not-met",
        "{profile} {requirement} at {freeboard}: under {length}"
    );
}

/// `150 % of freeboard or 6 ft, the greater`: 50 CFR part 622 Appendix F,
/// A.1, A.2, A.5 (read); 635.21(c)(5)(i)(A), (B), (E) (read). The figures
/// were worked by hand.
const ONE_AND_A_HALF: [(&str, &str); 8] = [
    ("3 ft", "6 ft"),
    ("4 ft", "6 ft"),
    ("4 ft 1 in", "6 ft 1 1/2 in"),
    ("4 ft 3 in", "6 ft 4 1/2 in"),
    ("5 ft", "7 ft 6 in"),
    ("1.20 m", "1.8288 m"),
    ("1.22 m", "1.83 m"),
    ("2.00 m", "3.00 m"),
];

/// 50 CFR part 622 Appendix F, A.5(a) (read), at every freeboard.
#[test]
fn the_dipnet_of_appendix_f_reaches_150_percent_or_6_ft() {
    for (freeboard, handle) in ONE_AND_A_HALF {
        for profile in [GULF, SOUTH] {
            least(profile, TODAY, freeboard, "net", f::DIP_NET, handle);
        }
    }
}

/// 50 CFR 635.21(c)(5)(i)(A), (B), (E) until 28 November 2024 (read).
#[test]
fn the_long_tools_of_section_635_21_reach_150_percent_or_6_ft() {
    for (freeboard, handle) in ONE_AND_A_HALF {
        least(ATLANTIC, IN_2024, freeboard, "long-line-cutter", s::CUTTER, handle);
        least(ATLANTIC, IN_2024, freeboard, "long-dehooker-internal", s::INTERNAL, handle);
        least(DOLPHIN, IN_2024, freeboard, "net", s::DIP_NET, handle);
    }
}

/// `freeboard or 6 ft, the greater`: 635.21(c)(5)(i)(C), (D) (read); 50 CFR
/// part 622 Appendix F, A.3, A.4 (read). The figures were worked by hand.
#[test]
fn external_dehooker_and_inverted_v_reach_freeboard_or_6_ft() {
    for (freeboard, handle) in [("5 ft", "6 ft"), ("6 ft", "6 ft"), ("6 ft 1 in", "6 ft 1 in")] {
        least(ATLANTIC, IN_2024, freeboard, "long-dehooker-external", s::EXTERNAL, handle);
        least(DOLPHIN, IN_2024, freeboard, "inverted-v-device", s::BOAT_HOOK, handle);
        least(GULF, TODAY, freeboard, "long-dehooker-external", f::EXTERNAL, handle);
        least(SOUTH, TODAY, freeboard, "inverted-v-device", f::BOAT_HOOK, handle);
    }
}

/// 6 ft is 1.8288 m by definition (agreement of 1959); the bracket `1.83 m`
/// of 635.21(c)(5)(i)(A) (read) rounds it.
#[test]
fn a_pole_sold_as_1_83_m_passes_6_ft_and_one_of_1_82_m_does_not() {
    for (handle, expected) in [("1.83 m", "met"), ("1.82 m", "not-met")] {
        let cutter = but(s::CUTTER, "handle", handle);
        assert_eq!(
            outcome(ATLANTIC, IN_2024, "3 ft", &[cutter], "long-line-cutter"),
            expected,
            "{handle}"
        );
    }
}

/// 50 CFR 622.29(a)(1)(iii), (iv) (read): 4 ft or less, more than 4 ft.
#[test]
fn a_freeboard_in_metres_falls_on_the_right_side_of_4_ft() {
    for (freeboard, list) in [
        ("1.21 m", "unbound"),
        ("1.2192 m", "unbound"),
        ("1.2193 m", "not-met"),
        ("1.22 m", "not-met"),
    ] {
        assert_eq!(
            vessel(freeboard).under(GULF, TODAY).outcome("inverted-v-device"),
            list,
            "{freeboard}"
        );
    }
}

/// Cases for part 622 worked by hand from Appendix F, A.1 to A.5, and
/// 622.29(a)(1)(iii), (iv), 622.179(a)(1)(iii), (iv) (all read): freeboard,
/// least handle at 150 %, least handle at 100 % (none on the light list).
const WORKED: [(&str, &str, Option<&str>); 10] = [
    ("3 ft", "6 ft", None),
    ("4 ft", "6 ft", None),
    ("4 ft 0 1/16 in", "6 ft 0 3/32 in", Some("6 ft")),
    ("4 ft 1 in", "6 ft 1 1/2 in", Some("6 ft")),
    ("5 ft", "7 ft 6 in", Some("6 ft")),
    ("6 ft", "9 ft", Some("6 ft")),
    ("6 ft 1 in", "9 ft 1 1/2 in", Some("6 ft 1 in")),
    ("1.21 m", "1.8288 m", None),
    ("1.22 m", "1.83 m", Some("1.8288 m")),
    ("2.00 m", "3.00 m", Some("2.00 m")),
];

/// The worked cases, part 622 Appendix F (read).
#[test]
fn the_worked_cases_of_part_622_come_out() {
    for (freeboard, full, single) in WORKED {
        for profile in [GULF, SOUTH] {
            least(profile, TODAY, freeboard, "net", f::DIP_NET, full);
            let bare = vessel(freeboard).under(profile, TODAY);
            let Some(single) = single else {
                for requirement in lists::FULL_ONLY {
                    assert_eq!(
                        bare.outcome(requirement),
                        "unbound",
                        "{profile} {requirement} at {freeboard}"
                    );
                }
                continue;
            };
            for requirement in lists::FULL_ONLY {
                assert_eq!(
                    bare.outcome(requirement),
                    "not-met",
                    "{profile} {requirement} at {freeboard}"
                );
            }
            least(profile, TODAY, freeboard, "long-line-cutter", f::CUTTER, full);
            least(profile, TODAY, freeboard, "long-dehooker-internal", f::INTERNAL, full);
            least(profile, TODAY, freeboard, "long-dehooker-external", f::EXTERNAL, single);
            least(profile, TODAY, freeboard, "inverted-v-device", f::BOAT_HOOK, single);
        }
    }
}

/// The same figures under 635.21(c)(5)(i) (read), which has no light list.
#[test]
fn the_worked_cases_of_section_635_21_come_out() {
    for (freeboard, full, single) in WORKED {
        let single = single.unwrap_or("6 ft");
        least(ATLANTIC, IN_2024, freeboard, "long-line-cutter", s::CUTTER, full);
        least(ATLANTIC, IN_2024, freeboard, "net", s::DIP_NET, full);
        least(ATLANTIC, IN_2024, freeboard, "long-dehooker-external", s::EXTERNAL, single);
        least(ATLANTIC, IN_2024, freeboard, "inverted-v-device", s::BOAT_HOOK, single);
    }
}

/// A deck tool under 635.21 until 28 November 2024 and under Appendix F.
fn deck_tool(requirement: &str, tool: &str) -> (String, String) {
    let under = |profile, day| outcome(profile, day, "5 ft", &[tool], requirement);
    (under(ATLANTIC, IN_2024), under(GULF, TODAY))
}

fn pair(a: &str, b: &str) -> (String, String) {
    (a.to_owned(), b.to_owned())
}

/// 635.21(c)(5)(i)(I) (read): generally approximately 12 in; Appendix F, A.9
/// (read): at least 11 in.
#[test]
fn pliers_of_11_in_are_arguable_in_one_rule_and_pass_the_other() {
    let of = |overall: &str| deck_tool("pliers", &but(s::PLIERS, "overall", overall));
    assert_eq!(of("11 in"), pair("cannot-tell", "met"));
    assert_eq!(of("10 15/16 in"), pair("cannot-tell", "not-met"));
    assert_eq!(of("12 in"), pair("met", "met"));
}

/// 635.21(c)(5)(i)(J) (read): generally approximately 17 in; Appendix F, A.10
/// (read): at least 14 in, blades 4 in by 2 1/4 in, cutting hooks up to
/// 1/4 in and those used on the vessel.
#[test]
fn bolt_cutters_of_14_in_are_arguable_in_one_rule_and_pass_the_other() {
    let of = |key: &str, size: &str| deck_tool("bolt-cutters", &but(s::BOLT_CUTTERS, key, size));
    let small = but(s::BOLT_CUTTERS, "overall", "14 in");
    assert_eq!(deck_tool("bolt-cutters", &small), pair("cannot-tell", "met"));
    assert_eq!(of("overall", &just_under("14 in")), pair("cannot-tell", "not-met"));
    assert_eq!(of("blade-length", &just_under("4 in")).1, "not-met");
    assert_eq!(of("blade-width", &just_under("2 1/4 in")).1, "not-met");
    assert_eq!(of("cuts-hook", &just_under("1/4 in")), pair("not-met", "not-met"));
}

/// Appendix F, A.10 (read): the hooks used on the vessel too, if heavier
/// than 1/4 in; 635.21(c)(5)(i)(J) (read) stops at 1/4 in.
///
/// Pins: us-gulf-reef-fish-2019/bolt-cutters: bolt-cutters cuts-hook 100% of the heaviest hook aboard
#[test]
fn bolt_cutters_cut_the_vessels_own_hooks_under_appendix_f() {
    let heavy = "[{ name: heavy hooks, type: circle, size: 20/0, wire: 8 mm }]";
    for (cuts, expected) in [("1/4 in", "not-met"), ("7.999999 mm", "not-met"), ("8 mm", "met")] {
        let vessel =
            vessel("5 ft").set("hooks", heavy).with(&[but(s::BOLT_CUTTERS, "cuts-hook", cuts)]);
        assert_eq!(vessel.under(GULF, TODAY).outcome("bolt-cutters"), expected, "{cuts}");
        assert_eq!(vessel.under(ATLANTIC, IN_2024).outcome("bolt-cutters"), "met", "{cuts}");
    }
    let unmeasured = vessel("5 ft").unsaid("hooks").with(&[f::BOLT_CUTTERS]).under(GULF, TODAY);
    assert_eq!(unmeasured.outcome("bolt-cutters"), "cannot-tell");
}

/// 635.21(c)(5)(i)(K) (read): blades must be 1 3/4 in (rebuilt from 4.45 cm);
/// Appendix F, A.11 (read): at least 6 in, blades 1 in by 5/8 in.
#[test]
fn line_cutters_of_6_in_fail_one_rule_and_pass_the_other() {
    assert_eq!(deck_tool("line-cutters", f::LINE_CUTTERS), pair("not-met", "met"));
    for (key, size) in [("overall", "6 in"), ("blade-length", "1 in"), ("blade-width", "5/8 in")] {
        let smaller = but(f::LINE_CUTTERS, key, &just_under(size));
        assert_eq!(deck_tool("line-cutters", &smaller).1, "not-met", "{key}");
    }
}

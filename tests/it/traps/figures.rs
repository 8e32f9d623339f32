//! Figures that differ between the two lists, slips of the texts, and words
//! like `approximately` and `should`.

use super::{ATLANTIC, GULF, IN_2018, IN_2024, OLD_GULF, TODAY};
use crate::outfit::gear::{appendix_f as f, section_635 as s};
use crate::outfit::{but, just_over, just_under, outcome, vessel};

fn gulf(tool: &str, requirement: &str) -> String {
    outcome(GULF, TODAY, "5 ft", &[tool], requirement)
}

fn atlantic(tool: &str, requirement: &str) -> String {
    outcome(ATLANTIC, IN_2024, "5 ft", &[tool], requirement)
}

/// Trap 4: 50 CFR 635.21(c)(5)(i)(E) (read) prints 34.1 kg for 100 lb; Appendix F,
/// A.5 (read) prints 45.4 kg, which is right.
///
/// Pins: us-gulf-reef-fish-2019/net: dip-net carries 100 lb
/// Pins: us-atlantic-longline-2009/net: dip-net carries 100 lb
#[test]
fn a_net_that_carries_the_misprinted_34_1_kg_does_not_carry_100_lb() {
    for (carries, expected) in [
        ("34.1 kg", "not-met"),
        ("45 kg", "not-met"),
        ("99.9 lb", "not-met"),
        ("100 lb", "met"),
        ("45.4 kg", "met"),
    ] {
        assert_eq!(
            atlantic(&but(s::DIP_NET, "carries", carries), "net"),
            expected,
            "635.21 {carries}"
        );
        assert_eq!(
            gulf(&but(f::DIP_NET, "carries", carries), "net"),
            expected,
            "Appendix F {carries}"
        );
    }
}

/// Trap 4: 50 CFR part 622 Appendix F, A.7, A.8(a) (read) print 60.7 cm for 24 in.
#[test]
fn a_shaft_of_24_in_is_not_cut_to_the_misprinted_60_7_cm() {
    for (requirement, tool) in [
        ("short-dehooker-internal", f::SHORT_INTERNAL),
        ("short-dehooker-external", f::SHORT_EXTERNAL),
    ] {
        for (shaft, expected) in [
            ("60.7 cm", "met"),
            ("24 in", "met"),
            (&just_over("24 in"), "not-met"),
            ("16 in", "met"),
            (&just_under("16 in"), "not-met"),
        ] {
            assert_eq!(
                gulf(&but(tool, "shaft", shaft), requirement),
                expected,
                "{requirement} {shaft}"
            );
        }
    }
}

/// Trap 4: 50 CFR 635.21(c)(5)(i)(H) (read) prints 7.94 cm for a rod of 5/16 in.
#[test]
fn nobody_needs_a_rod_of_the_misprinted_7_94_cm() {
    let rod =
        |size: &str| atlantic(&but(s::SHORT_EXTERNAL, "rod", size), "short-dehooker-external");
    assert_eq!(rod("5/16 in"), "met");
    assert_eq!(rod(&just_under("5/16 in")), "not-met");
    assert_ne!(rod("7.94 cm"), "met");
}

/// Trap 4: 50 CFR part 622 Appendix F, A.9 (read), though B.1(c) sends to A.8.
#[test]
fn the_pliers_are_cited_where_they_stand() {
    let judged = vessel("3 ft").under(GULF, TODAY);
    assert_eq!(judged.finding("pliers")["citation"]["clause"], "Appendix F, A.9");
}

/// Trap 5: 50 CFR 635.21(c)(5)(i)(I), (J), (K) until 28 November 2024 (read):
/// `generally approximately`; Appendix F, A.9 to A.11 (read): `at least`.
#[test]
fn approximately_is_arguable_where_at_least_is_hard() {
    let cases = [
        ("pliers", f::PLIERS, s::PLIERS, "11 in", "12 in", "3 in"),
        ("bolt-cutters", f::BOLT_CUTTERS, s::BOLT_CUTTERS, "14 in", "17 in", "5 in"),
        ("line-cutters", f::LINE_CUTTERS, s::LINE_CUTTERS, "6 in", "7 1/2 in", "3 in"),
    ];
    for (requirement, hard, soft, least, about, tiny) in cases {
        let hard = |overall: &str| gulf(&but(hard, "overall", overall), requirement);
        let soft = |overall: &str| atlantic(&but(soft, "overall", overall), requirement);
        assert_eq!(
            (hard(least).as_str(), soft(least).as_str()),
            ("met", "cannot-tell"),
            "{requirement} {least}"
        );
        assert_eq!(hard(&just_under(least)), "not-met", "{requirement}");
        assert_eq!(
            (hard(about).as_str(), soft(about).as_str()),
            ("met", "met"),
            "{requirement} {about}"
        );
        assert_eq!(
            (hard(tiny).as_str(), soft(tiny).as_str()),
            ("not-met", "cannot-tell"),
            "{requirement} {tiny}"
        );
    }
    let arguable =
        vessel("5 ft").with(&[but(s::PLIERS, "overall", "11 in")]).under(ATLANTIC, IN_2024);
    assert_eq!(arguable.codes("pliers"), ["outside-approximate"]);
}

/// Trap 5: 50 CFR 635.21(c)(5)(i)(G), (H) (read): the handle should be
/// approximately 16 to 24 in; Appendix F, A.7, A.8 (read): the shaft must be.
#[test]
fn a_short_handle_should_be_and_a_short_shaft_must_be() {
    for (requirement, must, should) in [
        ("short-dehooker-internal", f::SHORT_INTERNAL, s::SHORT_INTERNAL),
        ("short-dehooker-external", f::SHORT_EXTERNAL, s::SHORT_EXTERNAL),
    ] {
        for length in ["12 in", "30 in"] {
            assert_eq!(
                gulf(&but(must, "shaft", length), requirement),
                "not-met",
                "{requirement} {length}"
            );
            assert_eq!(
                atlantic(&but(should, "handle", length), requirement),
                "cannot-tell",
                "{requirement} {length}"
            );
        }
        assert_eq!(gulf(must, requirement), "met", "{requirement}");
        assert_eq!(atlantic(should, requirement), "met", "{requirement}");
    }
    let block = but(s::SHORT_INTERNAL, "bite-block-length", "8 in");
    assert_eq!(atlantic(&block, "short-dehooker-internal"), "cannot-tell");
}

/// Trap 6: 50 CFR part 622 Appendix F, A.11 (read): blades at least 1 in by
/// 5/8 in; 635.21(c)(5)(i)(K) (read): must be 1 3/4 in by 5/8 in.
#[test]
fn blades_of_1_in_pass_appendix_f_and_fail_section_635_21() {
    let cases = [
        ("blade-length", "1 in", "met", "not-met"),
        ("blade-length", "15/16 in", "not-met", "not-met"),
        ("blade-length", "1 3/4 in", "met", "met"),
        ("blade-length", "2 in", "met", "cannot-tell"),
        ("blade-width", "1/2 in", "not-met", "not-met"),
        ("blade-width", "5/8 in", "met", "met"),
        ("blade-width", "3/4 in", "met", "cannot-tell"),
    ];
    for (key, size, in_f, in_635) in cases {
        let tool = but(s::LINE_CUTTERS, key, size);
        assert_eq!(gulf(&tool, "line-cutters"), in_f, "Appendix F {key} {size}");
        assert_eq!(atlantic(&tool, "line-cutters"), in_635, "635.21 {key} {size}");
    }
    let wide = but(s::LINE_CUTTERS, "blade-width", "3/4 in");
    assert_eq!(
        vessel("5 ft").with(&[wide]).under(ATLANTIC, IN_2024).codes("line-cutters"),
        ["wording-disputed"]
    );
}

/// Trap 7: 50 CFR 635.21(c)(5)(i)(G) (read) and part 622 Appendix F, A.7 (read).
#[test]
fn a_short_internal_dehooker_built_to_one_list_fails_the_other() {
    let requirement = "short-dehooker-internal";
    // Both lengths of each tool are given, so that nothing is unmeasured.
    let built_to_f = but(&but(f::SHORT_INTERNAL, "end-diameter", "1 7/8 in"), "rod", "3/16 in");
    let built_to_f = format!(
        "{}, t-handle-thickness: 1 in, approved-model: yes }}",
        built_to_f.strip_suffix(" }").unwrap()
    );
    assert_eq!(gulf(&built_to_f, requirement), "met");
    assert_eq!(atlantic(&built_to_f, requirement), "not-met");
    assert_eq!(atlantic(s::SHORT_INTERNAL, requirement), "met");
    assert_eq!(gulf(s::SHORT_INTERNAL, requirement), "not-met");
    // What fails is the bite block of 10 in alone.
    assert_eq!(gulf(&but(s::SHORT_INTERNAL, "bite-block-length", "6 in"), requirement), "met");
    assert_eq!(
        gulf(&but(s::SHORT_INTERNAL, "bite-block-length", &just_over("6 in")), requirement),
        "not-met"
    );
}

/// Trap 7: 50 CFR 635.21(c)(5)(i)(G) (read): the end at most 1 5/16 in (the inch
/// figure rebuilt from 3.33 cm); Appendix F, A.7 (read): at most 1 7/8 in
/// (rebuilt from 4.8 cm).
///
/// Pins: us-gulf-reef-fish-2019/short-dehooker-internal: short-dehooker-internal end-diameter 1 7/8 in
/// Pins: us-atlantic-longline-2009/short-dehooker-internal: short-dehooker-internal end-diameter 1 5/16 in
#[test]
fn the_two_lists_set_different_ends_for_the_short_internal_dehooker() {
    for (end, in_f, in_635) in [
        ("1 5/16 in", "met", "met"),
        (&just_over("1 5/16 in"), "met", "not-met"),
        ("1 7/8 in", "met", "not-met"),
        (&just_over("1 7/8 in"), "not-met", "not-met"),
    ] {
        assert_eq!(
            gulf(&but(f::SHORT_INTERNAL, "end-diameter", end), "short-dehooker-internal"),
            in_f,
            "{end}"
        );
        assert_eq!(
            atlantic(&but(s::SHORT_INTERNAL, "end-diameter", end), "short-dehooker-internal"),
            in_635,
            "{end}"
        );
    }
}

/// Trap 8: 50 CFR part 622 Appendix F, A.2, A.3, A.7, A.8 (read): 316L or 304L;
/// 635.21(c)(5)(i)(B), (C), (G), (H) until 28 November 2024 (read): 316L.
///
/// Pins: us-gulf-reef-fish-2019/long-dehooker-internal: long-dehooker-internal material 316l or 304l
/// Pins: us-gulf-reef-fish-2019/long-dehooker-external: long-dehooker-external material 316l or 304l
/// Pins: us-gulf-reef-fish-2019/short-dehooker-internal: short-dehooker-internal material 316l or 304l
/// Pins: us-gulf-reef-fish-2019/short-dehooker-external: short-dehooker-external material 316l or 304l
/// Pins: us-atlantic-longline-2009/long-dehooker-internal: long-dehooker-internal material 316l
/// Pins: us-atlantic-longline-2009/long-dehooker-external: long-dehooker-external material 316l
/// Pins: us-atlantic-longline-2009/short-dehooker-internal: short-dehooker-internal material 316l
/// Pins: us-atlantic-longline-2009/short-dehooker-external: short-dehooker-external material 316l
#[test]
fn steel_304l_counts_only_in_appendix_f() {
    for (requirement, in_f, in_635) in [
        ("long-dehooker-internal", f::INTERNAL, s::INTERNAL),
        ("long-dehooker-external", f::EXTERNAL, s::EXTERNAL),
        ("short-dehooker-internal", f::SHORT_INTERNAL, s::SHORT_INTERNAL),
        ("short-dehooker-external", f::SHORT_EXTERNAL, s::SHORT_EXTERNAL),
    ] {
        for (steel, allowed) in
            [("316L", "met"), ("304L", "met"), ("\"304\"", "not-met"), ("carbon steel", "not-met")]
        {
            assert_eq!(
                gulf(&but(in_f, "material", steel), requirement),
                allowed,
                "{requirement} {steel}"
            );
        }
        assert_eq!(
            atlantic(&but(in_635, "material", "304L"), requirement),
            "not-met",
            "{requirement}"
        );
        assert_eq!(atlantic(in_635, requirement), "met", "{requirement}");
        let one_of_each = requirement.trim_end_matches("-internal").trim_end_matches("-external");
        let old = |tool: &str| outcome(OLD_GULF, IN_2018, "5 ft", &[tool], one_of_each);
        assert_eq!(old(&but(in_635, "material", "304L")), "not-met", "{one_of_each}");
        assert_eq!(old(in_635), "met", "{one_of_each}");
    }
}

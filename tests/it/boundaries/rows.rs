//! The figures of the rules, row by row, written from their texts.

use super::Rule::{About, Exactly, Least, LeastOrExactly, Most, MostOrHalf, OpenBelow, Range};
use super::{APPENDIX_F, ATLANTIC, DOLPHIN, GULF, HOUSE, OLD_GULF, Row, SOUTH, member, row};

/// The reach rules, at freeboards where each limb binds, with the figures of
/// the worked cases (150 % of freeboard or 6 ft; freeboard or 6 ft).
pub(super) fn reach_rows() -> Vec<Row> {
    let mut rows = Vec::new();
    // Appendix F itself has no threshold of freeboard: on a low rail its 6 ft
    // governs.
    for of in ["long-line-cutter", "long-dehooker-internal"] {
        rows.push(row(APPENDIX_F, "F A.1, A.2", of, of, "handle", "3 ft", Least("6 ft")));
    }
    for profile in [GULF, SOUTH] {
        for (freeboard, full, single) in [
            ("4 ft 0 1/16 in", "6 ft 0 3/32 in", "6 ft"),
            ("4 ft 1 in", "6 ft 1 1/2 in", "6 ft"),
            ("4 ft 3 in", "6 ft 4 1/2 in", "6 ft"),
            ("5 ft", "7 ft 6 in", "6 ft"),
            ("6 ft 1 in", "9 ft 1 1/2 in", "6 ft 1 in"),
            ("1.22 m", "1.83 m", "1.8288 m"),
            ("2 m", "3 m", "2 m"),
        ] {
            rows.push(row(
                profile,
                "F A.1",
                "long-line-cutter",
                "long-line-cutter",
                "handle",
                freeboard,
                Least(full),
            ));
            rows.push(row(
                profile,
                "F A.2",
                "long-dehooker-internal",
                "long-dehooker-internal",
                "handle",
                freeboard,
                Least(full),
            ));
            rows.push(row(
                profile,
                "F A.3",
                "long-dehooker-external",
                "long-dehooker-external",
                "handle",
                freeboard,
                Least(single),
            ));
            rows.push(row(
                profile,
                "F A.4",
                "inverted-v-device",
                "inverted-v-device",
                "handle",
                freeboard,
                Least(single),
            ));
        }
        for (freeboard, full) in
            [("3 ft", "6 ft"), ("4 ft", "6 ft"), ("1.21 m", "1.8288 m"), ("5 ft", "7 ft 6 in")]
        {
            rows.push(row(profile, "F A.5(a)", "net", "dip-net", "handle", freeboard, Least(full)));
            rows.push(row(
                profile,
                "F A.5(b)",
                "net",
                "hoop-net",
                "rope-length",
                freeboard,
                Least(full),
            ));
            rows.push(row(
                profile,
                "F A.5(c)",
                "net",
                "hoist",
                "rope-length",
                freeboard,
                Least(full),
            ));
        }
    }
    for profile in [ATLANTIC, DOLPHIN] {
        // 635.21 has no threshold of freeboard.
        for (freeboard, full, single) in [
            ("3 ft", "6 ft", "6 ft"),
            ("4 ft", "6 ft", "6 ft"),
            ("4 ft 1 in", "6 ft 1 1/2 in", "6 ft"),
            ("6 ft 1 in", "9 ft 1 1/2 in", "6 ft 1 in"),
        ] {
            rows.push(row(
                profile,
                "(A)",
                "long-line-cutter",
                "long-line-cutter",
                "handle",
                freeboard,
                Least(full),
            ));
            rows.push(row(
                profile,
                "(B)",
                "long-dehooker-internal",
                "long-dehooker-internal",
                "handle",
                freeboard,
                Least(full),
            ));
            rows.push(row(
                profile,
                "(C)",
                "long-dehooker-external",
                "long-dehooker-external",
                "handle",
                freeboard,
                Least(single),
            ));
            rows.push(row(
                profile,
                "(D)",
                "inverted-v-device",
                "inverted-v-device",
                "handle",
                freeboard,
                Least(single),
            ));
            rows.push(row(profile, "(E)", "net", "dip-net", "handle", freeboard, Least(full)));
            rows.push(row(
                profile,
                "(M)(1)",
                "control-device",
                "control-tether",
                "pole",
                freeboard,
                Least(full),
            ));
            rows.push(row(
                profile,
                "(M)(2)",
                "control-device",
                "control-poles",
                "pole",
                freeboard,
                Least(full),
            ));
        }
    }
    // The old Gulf edition: long tools above 4 ft only, the net's handle too.
    rows.push(row(
        OLD_GULF,
        "(A)",
        "long-line-cutter",
        "long-line-cutter",
        "handle",
        "5 ft",
        Least("7 ft 6 in"),
    ));
    rows.push(row(
        OLD_GULF,
        "(D)",
        "inverted-v-device",
        "inverted-v-device",
        "handle",
        "6 ft 1 in",
        Least("6 ft 1 in"),
    ));
    // The house borrows A.1 for every long tool; common practice.
    for freeboard in [("3 ft", "6 ft"), ("5 ft", "7 ft 6 in")] {
        for (requirement, kind, attribute) in [
            ("net", "dip-net", "handle"),
            ("net", "hoop-net", "rope-length"),
            ("net", "hoist", "rope-length"),
            ("long-line-cutter", "long-line-cutter", "handle"),
            ("long-dehooker", "long-dehooker-external", "handle"),
            ("long-dehooker", "long-dehooker-internal", "handle"),
            ("inverted-v-device", "inverted-v-device", "handle"),
            ("control-device", "control-tether", "pole"),
        ] {
            rows.push(row(
                HOUSE,
                "A.1 borrowed",
                requirement,
                kind,
                attribute,
                freeboard.0,
                Least(freeboard.1),
            ));
        }
    }
    rows
}

/// The fixed figures of Appendix F.
pub(super) fn appendix_f_rows() -> Vec<Row> {
    let mut rows = Vec::new();
    for (clause, requirement, kind, attribute, rule) in [
        (
            "F A.2",
            "long-dehooker-internal",
            "long-dehooker-internal",
            "rod",
            Range("3/16 in", "5/16 in"),
        ),
        (
            "F A.2",
            "long-dehooker-internal",
            "long-dehooker-internal",
            "end-diameter",
            Most("1 7/8 in"),
        ),
        (
            "F A.3",
            "long-dehooker-external",
            "long-dehooker-external",
            "rod",
            Range("3/16 in", "5/16 in"),
        ),
        (
            "F A.3",
            "long-dehooker-external",
            "long-dehooker-external",
            "end-diameter",
            Most("1 7/8 in"),
        ),
        ("F A.5(a)", "net", "dip-net", "hoop-inside", Least("31 in")),
        ("F A.5(a)", "net", "dip-net", "bag-depth", Least("38 in")),
        ("F A.5(a)", "net", "dip-net", "mesh", Most("3 in")),
        ("F A.5(b)", "net", "hoop-net", "hoop-inside", Least("31 in")),
        ("F A.5(b)", "net", "hoop-net", "bag-depth", Least("38 in")),
        ("F A.5(b)", "net", "hoop-net", "mesh", Most("3 in")),
        ("F A.5(c)", "net", "hoist", "hoop-inside", Least("31 in")),
        ("F A.5(c)", "net", "hoist", "mesh", Most("3 in")),
        (
            "F A.7",
            "short-dehooker-internal",
            "short-dehooker-internal",
            "shaft",
            Range("16 in", "24 in"),
        ),
        (
            "F A.7",
            "short-dehooker-internal",
            "short-dehooker-internal",
            "rod",
            Range("3/16 in", "5/16 in"),
        ),
        (
            "F A.7",
            "short-dehooker-internal",
            "short-dehooker-internal",
            "end-diameter",
            Most("1 7/8 in"),
        ),
        (
            "F A.7",
            "short-dehooker-internal",
            "short-dehooker-internal",
            "bite-block-inside",
            Range("3/4 in", "1 in"),
        ),
        (
            "F A.7",
            "short-dehooker-internal",
            "short-dehooker-internal",
            "bite-block-length",
            Range("4 in", "6 in"),
        ),
        (
            "F A.7",
            "short-dehooker-internal",
            "short-dehooker-internal",
            "bite-block-slide",
            Least("5 in"),
        ),
        (
            "F A.7",
            "short-dehooker-internal",
            "short-dehooker-internal",
            "t-handle",
            About("4 in", "6 in", "1/2 in"),
        ),
        (
            "F A.8(a)",
            "short-dehooker-external",
            "short-dehooker-external",
            "shaft",
            Range("16 in", "24 in"),
        ),
        (
            "F A.8(a)",
            "short-dehooker-external",
            "short-dehooker-external",
            "rod",
            Range("3/16 in", "5/16 in"),
        ),
        ("F A.8(b)", "short-dehooker-external", "squeeze-dehooker", "overall", Least("11 in")),
        ("F A.9", "pliers", "pliers", "overall", Least("11 in")),
        ("F A.10", "bolt-cutters", "bolt-cutters", "overall", Least("14 in")),
        ("F A.10", "bolt-cutters", "bolt-cutters", "blade-length", Least("4 in")),
        ("F A.10", "bolt-cutters", "bolt-cutters", "blade-width", Least("2 1/4 in")),
        ("F A.10", "bolt-cutters", "bolt-cutters", "cuts-hook", Least("1/4 in")),
        ("F A.11", "line-cutters", "line-cutters", "overall", Least("6 in")),
        ("F A.11", "line-cutters", "line-cutters", "blade-length", Least("1 in")),
        ("F A.11", "line-cutters", "line-cutters", "blade-width", Least("5/8 in")),
        ("F A.12(a)", "mouth-gags", "hardwood-block", "length", Least("10 in")),
        ("F A.12(a)", "mouth-gags", "hardwood-block", "width", Least("3/4 in")),
        ("F A.12(a)", "mouth-gags", "hardwood-block", "thickness", Least("3/4 in")),
        ("F A.12(b)", "mouth-gags", "canine-gag", "nominal-size", Exactly("5 in")),
        ("F A.12(c)", "mouth-gags", "chew-bone", "length", Range("5 1/2 in", "8 in")),
        ("F A.12(d)", "mouth-gags", "covered-rope-loop", "loop-rope", LeastOrExactly("3 ft")),
        ("F A.12(e)", "mouth-gags", "rope-hank", "hank-thickness", Range("2 in", "4 in")),
        ("F A.12(e)", "mouth-gags", "rope-hank", "rope-diameter", Least("3/16 in")),
        ("F A.12(f)", "mouth-gags", "pvc-coupling", "nominal-size", Exactly("1 in")),
        ("F A.12(g)", "mouth-gags", "oral-speculum", "length", LeastOrExactly("9 in")),
    ] {
        rows.push(row(GULF, clause, requirement, kind, attribute, "5 ft", rule));
    }
    rows.push(member(
        1,
        row(
            GULF,
            "F A.12(c)",
            "mouth-gags",
            "chew-bone",
            "length",
            "5 ft",
            Range("3 1/2 in", "4 1/2 in"),
        ),
    ));
    rows.push(member(
        3,
        row(
            GULF,
            "F A.12(f)",
            "mouth-gags",
            "pvc-coupling",
            "nominal-size",
            "5 ft",
            Exactly("2 in"),
        ),
    ));
    rows
}

/// The fixed figures of 635.21(c)(5)(i), until 28 November 2024.
pub(super) fn section_635_rows() -> Vec<Row> {
    let mut rows = Vec::new();
    for (clause, requirement, kind, attribute, rule) in [
        (
            "(B)",
            "long-dehooker-internal",
            "long-dehooker-internal",
            "end-diameter",
            Most("1 7/8 in"),
        ),
        (
            "(B)",
            "long-dehooker-internal",
            "long-dehooker-internal",
            "rod",
            LeastOrExactly("5/16 in"),
        ),
        (
            "(C)",
            "long-dehooker-external",
            "long-dehooker-external",
            "rod",
            LeastOrExactly("5/16 in"),
        ),
        ("(E)", "net", "dip-net", "hoop-inside", Least("31 in")),
        ("(E)", "net", "dip-net", "bag-depth", Least("38 in")),
        (
            "(G)",
            "short-dehooker-internal",
            "short-dehooker-internal",
            "end-diameter",
            Most("1 5/16 in"),
        ),
        (
            "(G)",
            "short-dehooker-internal",
            "short-dehooker-internal",
            "rod",
            LeastOrExactly("1/4 in"),
        ),
        (
            "(G)",
            "short-dehooker-internal",
            "short-dehooker-internal",
            "handle",
            About("16 in", "24 in", "1 in"),
        ),
        (
            "(H)",
            "short-dehooker-external",
            "short-dehooker-external",
            "handle",
            About("16 in", "24 in", "1 in"),
        ),
        ("(I)", "pliers", "pliers", "overall", About("12 in", "12 in", "1/2 in")),
        ("(J)", "bolt-cutters", "bolt-cutters", "overall", About("17 in", "17 in", "1 in")),
        ("(J)", "bolt-cutters", "bolt-cutters", "cuts-hook", Least("1/4 in")),
        ("(K)", "line-cutters", "line-cutters", "overall", About("7 1/2 in", "7 1/2 in", "1/2 in")),
        ("(K)", "line-cutters", "line-cutters", "blade-length", LeastOrExactly("1 3/4 in")),
        ("(K)", "line-cutters", "line-cutters", "blade-width", LeastOrExactly("5/8 in")),
        ("(L)(2)", "mouth-gags", "canine-gag", "nominal-size", Exactly("5 in")),
        ("(L)(3)", "mouth-gags", "chew-bone", "length", Range("5 1/2 in", "8 in")),
        ("(L)(5)", "mouth-gags", "rope-hank", "hank-thickness", About("2 in", "4 in", "1/4 in")),
        (
            "(M)(1)",
            "control-device",
            "control-tether",
            "line-length",
            About("15 ft", "20 ft", "1 ft"),
        ),
        ("(M)(2)", "control-device", "control-poles", "line-diameter", Range("1/2 in", "5/8 in")),
    ] {
        rows.push(row(ATLANTIC, clause, requirement, kind, attribute, "5 ft", rule));
    }
    rows
}

/// The finer figures of Appendix F, and what the house borrows of it.
#[rustfmt::skip]
pub(super) fn finer_appendix_f_rows() -> Vec<Row> {
    [
        // Member of a set, profile, clause, requirement, kind, attribute,
        // freeboard, rule.
        (0, HOUSE, "own hooks", "bolt-cutters", "bolt-cutters", "cuts-hook", "5 ft", Least("3 mm")),
        (0, GULF, "F A.1", "long-line-cutter", "long-line-cutter", "cuts-monofilament", "5 ft", OpenBelow("2.1 mm")),
        (0, GULF, "F A.8(a)", "short-dehooker-external", "short-dehooker-external", "t-handle", "5 ft", About("4 in", "6 in", "1/2 in")),
        (0, GULF, "F A.12(a)", "mouth-gags", "wooden-brush-without-bristles", "length", "5 ft", Least("10 in")),
        (0, GULF, "F A.12(a)", "mouth-gags", "wooden-brush-without-bristles", "width", "5 ft", Least("3/4 in")),
        (0, GULF, "F A.12(a)", "mouth-gags", "wooden-brush-without-bristles", "thickness", "5 ft", Least("3/4 in")),
        (0, GULF, "F A.12(d)", "mouth-gags", "covered-rope-loop", "tubing-length", "5 ft", LeastOrExactly("8 in")),
        (0, GULF, "F A.12(d)", "mouth-gags", "covered-rope-loop", "tubing-size", "5 ft", Range("1/2 in", "3/4 in")),
        (0, GULF, "F A.12(g)", "mouth-gags", "oral-speculum", "wire", "5 ft", LeastOrExactly("3/16 in")),
        (0, GULF, "F A.12(g)", "mouth-gags", "oral-speculum", "padded-length", "5 ft", LeastOrExactly("8 in")),
        (0, GULF, "F A.12(g)", "mouth-gags", "oral-speculum", "tubing-outside", "5 ft", LeastOrExactly("5/16 in")),
        (0, GULF, "F A.12(g)", "mouth-gags", "oral-speculum", "tubing-inside", "5 ft", LeastOrExactly("3/16 in")),
        (1, GULF, "F A.12(b)", "mouth-gags", "canine-gag", "nominal-size", "5 ft", Exactly("6 in")),
        (2, GULF, "F A.12(b)", "mouth-gags", "canine-gag", "nominal-size", "5 ft", Exactly("7 in")),
        (1, GULF, "F A.12(f)", "mouth-gags", "pvc-coupling", "nominal-size", "5 ft", Exactly("1 1/4 in")),
        (2, GULF, "F A.12(f)", "mouth-gags", "pvc-coupling", "nominal-size", "5 ft", Exactly("1 1/2 in")),
        (0, HOUSE, "A.1 borrowed", "second-dehooker-style", "long-dehooker-external", "handle", "3 ft", Least("6 ft")),
        (0, HOUSE, "A.1 borrowed", "second-dehooker-style", "long-dehooker-internal", "handle", "3 ft", Least("6 ft")),
        (0, HOUSE, "A.1 borrowed", "inverted-v-device", "long-dehooker-external", "handle", "3 ft", Least("6 ft")),
        (0, HOUSE, "A.1 borrowed", "control-device", "control-poles", "pole", "3 ft", Least("6 ft")),
        (0, HOUSE, "A.1 borrowed", "second-dehooker-style", "long-dehooker-external", "handle", "5 ft", Least("7 ft 6 in")),
        (0, HOUSE, "A.1 borrowed", "second-dehooker-style", "long-dehooker-internal", "handle", "5 ft", Least("7 ft 6 in")),
        (0, HOUSE, "A.1 borrowed", "inverted-v-device", "long-dehooker-external", "handle", "5 ft", Least("7 ft 6 in")),
        (0, HOUSE, "A.1 borrowed", "control-device", "control-poles", "pole", "5 ft", Least("7 ft 6 in")),
    ]
    .into_iter()
    .map(|(set, profile, clause, requirement, kind, attribute, freeboard, rule)| {
        member(set, row(profile, clause, requirement, kind, attribute, freeboard, rule))
    })
    .collect()
}

/// The finer figures of 635.21(c)(5)(i), until 28 November 2024.
#[rustfmt::skip]
pub(super) fn finer_section_635_rows() -> Vec<Row> {
    [
        // Member of a set, profile, clause, requirement, kind, attribute,
        // freeboard, rule.
        (0, ATLANTIC, "(A)", "long-line-cutter", "long-line-cutter", "cuts-monofilament", "5 ft", OpenBelow("2.1 mm")),
        (0, ATLANTIC, "(E)", "net", "dip-net", "mesh", "5 ft", MostOrHalf("3 in", "1 1/2 in")),
        (0, ATLANTIC, "(G)", "short-dehooker-internal", "short-dehooker-internal", "bite-block-inside", "5 ft", About("3/4 in", "3/4 in", "1/8 in")),
        (0, ATLANTIC, "(G)", "short-dehooker-internal", "short-dehooker-internal", "bite-block-length", "5 ft", About("10 in", "10 in", "1/2 in")),
        (0, ATLANTIC, "(G)", "short-dehooker-internal", "short-dehooker-internal", "bite-block-slide", "5 ft", About("5 in", "5 in", "1/2 in")),
        (0, ATLANTIC, "(G)", "short-dehooker-internal", "short-dehooker-internal", "t-handle", "5 ft", About("5 in", "5 in", "1/2 in")),
        (0, ATLANTIC, "(G)", "short-dehooker-internal", "short-dehooker-internal", "t-handle-thickness", "5 ft", About("1 in", "1 in", "1/8 in")),
        (0, ATLANTIC, "(H)", "short-dehooker-external", "short-dehooker-external", "rod", "5 ft", LeastOrExactly("5/16 in")),
        (0, ATLANTIC, "(H)", "short-dehooker-external", "short-dehooker-external", "t-handle", "5 ft", About("5 in", "5 in", "1/2 in")),
        (0, ATLANTIC, "(H)", "short-dehooker-external", "short-dehooker-external", "t-handle-thickness", "5 ft", About("1 in", "1 in", "1/8 in")),
        (0, ATLANTIC, "(J)", "bolt-cutters", "bolt-cutters", "blade-length", "5 ft", About("4 in", "4 in", "1/4 in")),
        (0, ATLANTIC, "(J)", "bolt-cutters", "bolt-cutters", "blade-width", "5 ft", About("2 1/4 in", "2 1/4 in", "1/4 in")),
        (0, ATLANTIC, "(J)", "bolt-cutters", "bolt-cutters", "handle", "5 ft", About("13 in", "13 in", "1 in")),
        (0, ATLANTIC, "(L)(1)", "mouth-gags", "hardwood-block", "length", "5 ft", About("11 in", "11 in", "1/2 in")),
        (0, ATLANTIC, "(L)(1)", "mouth-gags", "hardwood-block", "width", "5 ft", About("1 in", "1 in", "1/8 in")),
        (0, ATLANTIC, "(L)(1)", "mouth-gags", "hardwood-block", "thickness", "5 ft", About("1 in", "1 in", "1/8 in")),
        (0, ATLANTIC, "(L)(2)", "mouth-gags", "canine-gag", "end-covering", "5 ft", LeastOrExactly("1 3/4 in")),
        (0, ATLANTIC, "(L)(2)", "mouth-gags", "canine-gag", "tubing-outside", "5 ft", LeastOrExactly("3/4 in")),
        (0, ATLANTIC, "(L)(2)", "mouth-gags", "canine-gag", "tubing-inside", "5 ft", LeastOrExactly("5/8 in")),
        (0, ATLANTIC, "(L)(4)", "mouth-gags", "covered-rope-loop", "loop-rope", "5 ft", LeastOrExactly("3 ft")),
        (0, ATLANTIC, "(L)(4)", "mouth-gags", "covered-rope-loop", "tubing-length", "5 ft", LeastOrExactly("8 in")),
        (0, ATLANTIC, "(L)(4)", "mouth-gags", "covered-rope-loop", "tubing-size", "5 ft", Exactly("1/2 in")),
        (0, ATLANTIC, "(L)(4)", "mouth-gags", "covered-rope-loop", "tubing-size", "5 ft", Exactly("3/4 in")),
        (0, ATLANTIC, "(L)(6)", "mouth-gags", "pvc-coupling", "nominal-size", "5 ft", Exactly("1 in")),
        (0, ATLANTIC, "(L)(7)", "mouth-gags", "oral-speculum", "length", "5 ft", LeastOrExactly("9 in")),
        (0, ATLANTIC, "(L)(7)", "mouth-gags", "oral-speculum", "wire", "5 ft", LeastOrExactly("3/16 in")),
        (0, ATLANTIC, "(L)(7)", "mouth-gags", "oral-speculum", "padded-length", "5 ft", LeastOrExactly("8 in")),
        (0, ATLANTIC, "(L)(7)", "mouth-gags", "oral-speculum", "tubing-outside", "5 ft", LeastOrExactly("5/16 in")),
        (0, ATLANTIC, "(L)(7)", "mouth-gags", "oral-speculum", "tubing-inside", "5 ft", LeastOrExactly("3/16 in")),
        (0, ATLANTIC, "(M)(1)", "control-device", "control-tether", "loop-size", "5 ft", About("30 in", "30 in", "2 in")),
        (0, ATLANTIC, "(M)(1)", "control-device", "control-tether", "line-diameter", "5 ft", LeastOrExactly("1/2 in")),
        (0, ATLANTIC, "(M)(1)", "control-device", "control-tether", "eyes", "5 ft", LeastOrExactly("3/4 in")),
        (0, ATLANTIC, "(M)(1)", "control-device", "control-tether", "cleat", "5 ft", LeastOrExactly("1/2 in")),
        (0, ATLANTIC, "(M)(1)", "control-device", "control-tether", "last-eye", "5 ft", LeastOrExactly("3/4 in")),
        (0, ATLANTIC, "(M)(1)", "control-device", "control-tether", "eye-behind-cleat", "5 ft", About("7 in", "7 in", "1 in")),
        (0, ATLANTIC, "(M)(2)", "control-device", "control-poles", "line-length", "5 ft", About("30 ft", "35 ft", "1 ft")),
        (0, ATLANTIC, "(M)(2)", "control-device", "control-poles", "rope-exposed", "5 ft", About("18 in", "24 in", "2 in")),
        (0, ATLANTIC, "(M)(2)", "control-device", "control-poles", "pole-size", "5 ft", Exactly("3/4 in")),
        (1, ATLANTIC, "(L)(2)", "mouth-gags", "canine-gag", "nominal-size", "5 ft", Exactly("6 in")),
        (1, ATLANTIC, "(L)(3)", "mouth-gags", "chew-bone", "length", "5 ft", Range("3 1/2 in", "4 1/2 in")),
        (2, ATLANTIC, "(L)(2)", "mouth-gags", "canine-gag", "nominal-size", "5 ft", Exactly("7 in")),
        (1, ATLANTIC, "(L)(6)", "mouth-gags", "pvc-coupling", "nominal-size", "5 ft", Exactly("1 1/4 in")),
        (2, ATLANTIC, "(L)(6)", "mouth-gags", "pvc-coupling", "nominal-size", "5 ft", Exactly("1 1/2 in")),
        (3, ATLANTIC, "(L)(6)", "mouth-gags", "pvc-coupling", "nominal-size", "5 ft", Exactly("2 in")),
    ]
    .into_iter()
    .map(|(set, profile, clause, requirement, kind, attribute, freeboard, rule)| {
        member(set, row(profile, clause, requirement, kind, attribute, freeboard, rule))
    })
    .collect()
}

/// What the old Gulf edition took over from 635.21, one dehooker of each length.
#[rustfmt::skip]
pub(super) fn old_gulf_rows() -> Vec<Row> {
    [
        // Member of a set, profile, clause, requirement, kind, attribute,
        // freeboard, rule.
        (0, OLD_GULF, "(B)", "long-dehooker", "long-dehooker-internal", "handle", "5 ft", Least("7 ft 6 in")),
        (0, OLD_GULF, "(B)", "long-dehooker", "long-dehooker-internal", "rod", "5 ft", LeastOrExactly("5/16 in")),
        (0, OLD_GULF, "(B)", "long-dehooker", "long-dehooker-internal", "end-diameter", "5 ft", Most("1 7/8 in")),
        (0, OLD_GULF, "(C)", "long-dehooker", "long-dehooker-external", "handle", "6 ft 1 in", Least("6 ft 1 in")),
        (0, OLD_GULF, "(C)", "long-dehooker", "long-dehooker-external", "rod", "5 ft", LeastOrExactly("5/16 in")),
        (0, OLD_GULF, "(C), (D)", "inverted-v-device", "long-dehooker-external", "handle", "6 ft 1 in", Least("6 ft 1 in")),
        (0, OLD_GULF, "(C), (D)", "inverted-v-device", "long-dehooker-external", "rod", "5 ft", LeastOrExactly("5/16 in")),
        (0, OLD_GULF, "(C)", "long-dehooker", "long-dehooker-external", "handle", "5 ft", Least("6 ft")),
        (0, OLD_GULF, "(C), (D)", "inverted-v-device", "long-dehooker-external", "handle", "5 ft", Least("6 ft")),
        (0, OLD_GULF, "(E)", "net", "dip-net", "handle", "5 ft", Least("7 ft 6 in")),
        (0, OLD_GULF, "(E)", "net-low-rail", "dip-net", "hoop-inside", "3 ft", Least("31 in")),
        (0, OLD_GULF, "(E)", "net-low-rail", "dip-net", "bag-depth", "3 ft", Least("38 in")),
        (0, OLD_GULF, "(E)", "net-low-rail", "dip-net", "mesh", "3 ft", MostOrHalf("3 in", "1 1/2 in")),
        (0, OLD_GULF, "(G)", "short-dehooker", "short-dehooker-internal", "handle", "3 ft", About("16 in", "24 in", "1 in")),
        (0, OLD_GULF, "(G)", "short-dehooker", "short-dehooker-internal", "rod", "3 ft", LeastOrExactly("1/4 in")),
        (0, OLD_GULF, "(G)", "short-dehooker", "short-dehooker-internal", "end-diameter", "3 ft", Most("1 5/16 in")),
        (0, OLD_GULF, "(G)", "short-dehooker", "short-dehooker-internal", "bite-block-inside", "3 ft", About("3/4 in", "3/4 in", "1/8 in")),
        (0, OLD_GULF, "(G)", "short-dehooker", "short-dehooker-internal", "bite-block-length", "3 ft", About("10 in", "10 in", "1/2 in")),
        (0, OLD_GULF, "(G)", "short-dehooker", "short-dehooker-internal", "bite-block-slide", "3 ft", About("5 in", "5 in", "1/2 in")),
        (0, OLD_GULF, "(G)", "short-dehooker", "short-dehooker-internal", "t-handle", "3 ft", About("5 in", "5 in", "1/2 in")),
        (0, OLD_GULF, "(G)", "short-dehooker", "short-dehooker-internal", "t-handle-thickness", "3 ft", About("1 in", "1 in", "1/8 in")),
        (0, OLD_GULF, "(H)", "short-dehooker", "short-dehooker-external", "handle", "3 ft", About("16 in", "24 in", "1 in")),
        (0, OLD_GULF, "(H)", "short-dehooker", "short-dehooker-external", "rod", "3 ft", LeastOrExactly("5/16 in")),
        (0, OLD_GULF, "(H)", "short-dehooker", "short-dehooker-external", "t-handle", "3 ft", About("5 in", "5 in", "1/2 in")),
        (0, OLD_GULF, "(H)", "short-dehooker", "short-dehooker-external", "t-handle-thickness", "3 ft", About("1 in", "1 in", "1/8 in")),
    ]
    .into_iter()
    .map(|(set, profile, clause, requirement, kind, attribute, freeboard, rule)| {
        member(set, row(profile, clause, requirement, kind, attribute, freeboard, rule))
    })
    .collect()
}

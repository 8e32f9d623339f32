//! What a ready vessel of each fishery carries: the tools of the shipped
//! sample vessels, with the figures of the rules they stand under.
//!
//! A value is written as the file has it. `reach` stands for 150 % of the
//! freeboard and at least 6 ft, `drop` for 100 % and at least 6 ft; a value
//! in inches may be written in metric units instead.

/// One tool: the letters of its mark, its kind, its clause for a statement of
/// conformity, and its lines.
pub(crate) struct Template {
    pub(crate) letters: &'static str,
    pub(crate) kind: &'static str,
    pub(crate) clause: Option<&'static str>,
    pub(crate) lines: &'static [(&'static str, &'static str)],
}

const fn tool(
    letters: &'static str,
    kind: &'static str,
    clause: Option<&'static str>,
    lines: &'static [(&'static str, &'static str)],
) -> Template {
    Template { letters, kind, clause, lines }
}

/// Appendix F to 50 CFR part 622 (reef fish, snapper-grouper).
pub(crate) const APPENDIX_F: &[Template] = &[
    tool(
        "LC",
        "long-handled line cutter",
        None,
        &[
            ("handle", "reach"),
            ("cuts-monofilament", "2.1 mm"),
            ("protected-blade", "yes"),
            ("blades-replaceable", "yes"),
        ],
    ),
    tool("BL", "set of replacement blades", None, &[("fits", "[LC-1]")]),
    tool(
        "DI",
        "long-handled dehooker for internal hooks",
        Some("Appendix F, A.2"),
        &[
            ("handle", "reach"),
            ("rod", "1/4 in"),
            ("end-diameter", "1 3/4 in"),
            ("end", "pigtail"),
            ("shields-point", "yes"),
            ("controls-leader", "yes"),
            ("no-unprotected-points", "yes"),
            ("sized-for-hooks", "yes"),
        ],
    ),
    tool(
        "DE",
        "long-handled dehooker for external hooks",
        Some("Appendix F, A.3"),
        &[
            ("handle", "drop"),
            ("rod", "1/4 in"),
            ("end-diameter", "1 3/4 in"),
            ("end", "j"),
            ("blunt-end", "yes"),
        ],
    ),
    tool(
        "BH",
        "boat hook",
        None,
        &[
            ("handle", "drop"),
            ("end", "boat hook"),
            ("securely-attached", "yes"),
            ("material", "aluminium"),
        ],
    ),
    tool(
        "DN",
        "dip net",
        Some("Appendix F, A.5(a)"),
        &[("handle", "reach"), ("hoop-inside", "32 in"), ("bag-depth", "40 in"), ("mesh", "2 in")],
    ),
    tool("TI", "tire", None, &[("no-steel-belts", "yes"), ("sized-for-turtles", "yes")]),
    tool(
        "SI",
        "short-handled dehooker for internal hooks",
        Some("Appendix F, A.7"),
        &[
            ("shaft", "18 in"),
            ("rod", "1/4 in"),
            ("end-diameter", "1 1/2 in"),
            ("t-handle", "5 in"),
            ("bite-block-length", "5 in"),
            ("bite-block-inside", "3/4 in"),
            ("bite-block-slide", "5 1/2 in"),
            ("bite-block-installed", "yes"),
            ("no-unprotected-points", "yes"),
        ],
    ),
    tool(
        "SQ",
        "squeeze-handle dehooker",
        Some("Appendix F, A.8(b)"),
        &[("overall", "11 1/2 in"), ("one-hand", "yes"), ("blunt-end", "yes")],
    ),
    tool("PL", "needle-nose pliers", None, &[("overall", "11 1/2 in")]),
    tool(
        "BC",
        "bolt cutters",
        None,
        &[
            ("overall", "18 in"),
            ("blade-length", "4 1/4 in"),
            ("blade-width", "2 1/4 in"),
            ("cuts-hook", "5/16 in"),
        ],
    ),
    tool(
        "MC",
        "monofilament line cutters",
        None,
        &[("overall", "7 1/2 in"), ("blade-length", "1 3/4 in"), ("blade-width", "5/8 in")],
    ),
    tool(
        "WB",
        "block of hard wood",
        Some("Appendix F, A.12"),
        &[("length", "10 in"), ("width", "1 in"), ("thickness", "3/4 in"), ("smooth-edges", "yes")],
    ),
    tool("CB", "dog chew bone", None, &[("length", "6 1/2 in"), ("material", "nylon")]),
    tool("CB", "dog chew bone", None, &[("length", "4 in"), ("material", "nylon")]),
];

/// 50 CFR 635.21(c)(5)(i) as it stood until 28 November 2024.
pub(crate) const LONGLINE: &[Template] = &[
    tool(
        "LC",
        "long-handled line clipper",
        Some("635.21(c)(5)(i)(A)"),
        &[
            ("handle", "reach"),
            ("cuts-monofilament", "2.1 mm"),
            ("protected-blade", "yes"),
            ("blades-replaceable", "yes"),
        ],
    ),
    tool(
        "BL",
        "set of replacement blades",
        None,
        &[("fits", "[LC-1]"), ("all-cutting-surfaces", "yes")],
    ),
    tool(
        "DI",
        "long-handled dehooker for ingested hooks",
        Some("635.21(c)(5)(i)(B)"),
        &[
            ("handle", "reach"),
            ("rod", "5/16 in"),
            ("end-diameter", "1 3/4 in"),
            ("shields-point", "yes"),
            ("controls-leader", "yes"),
            ("no-unprotected-points", "yes"),
            ("sized-for-hooks", "yes"),
        ],
    ),
    tool(
        "DE",
        "long-handled J-style dehooker",
        Some("635.21(c)(5)(i)(C)"),
        &[("handle", "drop"), ("rod", "5/16 in"), ("end", "j"), ("blunt-end", "yes")],
    ),
    tool(
        "DN",
        "dip net",
        Some("635.21(c)(5)(i)(E)"),
        &[
            ("handle", "reach"),
            ("hoop-inside", "32 in"),
            ("bag-depth", "40 in"),
            ("mesh", "1 1/2 in"),
            ("rigid-handle", "yes"),
        ],
    ),
    tool("TI", "tire", None, &[("no-steel-belts", "yes")]),
    tool(
        "SI",
        "short-handled dehooker for ingested hooks",
        Some("635.21(c)(5)(i)(G)"),
        &[
            ("handle", "20 in"),
            ("rod", "1/4 in"),
            ("end-diameter", "1 1/4 in"),
            ("shields-point", "yes"),
            ("no-unprotected-points", "yes"),
            ("bite-block-installed", "yes"),
            ("bite-block-inside", "3/4 in"),
            ("bite-block-length", "10 in"),
            ("bite-block-slide", "5 in"),
            ("t-handle", "5 in"),
            ("t-handle-thickness", "1 in"),
        ],
    ),
    tool("PL", "long-nose pliers", Some("635.21(c)(5)(i)(I)"), &[("overall", "12 in")]),
    tool(
        "BC",
        "bolt cutters",
        Some("635.21(c)(5)(i)(J)"),
        &[
            ("overall", "17 in"),
            ("blade-length", "4 in"),
            ("blade-width", "2 1/4 in"),
            ("handle", "13 in"),
            ("cuts-hook", "1/4 in"),
        ],
    ),
    tool(
        "MC",
        "monofilament line cutters",
        Some("635.21(c)(5)(i)(K)"),
        &[("overall", "7 1/2 in"), ("blade-length", "1 3/4 in"), ("blade-width", "5/8 in")],
    ),
    tool(
        "WB",
        "block of hard wood",
        Some("635.21(c)(5)(i)(L)"),
        &[("length", "11 in"), ("width", "1 in"), ("thickness", "1 in"), ("smooth-edges", "yes")],
    ),
    tool("CB", "dog chew bone", Some("635.21(c)(5)(i)(L)"), &[("length", "7 in")]),
    tool("CB", "dog chew bone", Some("635.21(c)(5)(i)(L)"), &[("length", "4 in")]),
    tool(
        "CT",
        "control tether on a pole",
        None,
        &[
            ("pole", "reach"),
            ("line-length", "18 ft"),
            ("line-diameter", "1/2 in"),
            ("line-lay", "hard"),
            ("sinks", "yes"),
            ("loop-size", "30 in"),
            ("eyes", "3/4 in"),
            ("cleat", "1/2 in"),
            ("eye-behind-cleat", "7 in"),
            ("last-eye", "3/4 in"),
            ("tag-line", "yes"),
        ],
    ),
];

/// Good practice on a longline deck; the dates of inspection are added.
pub(crate) const HOUSE: &[Template] = &[
    tool(
        "DN",
        "dip net",
        None,
        &[("handle", "reach"), ("hoop-inside", "32 in"), ("bag-depth", "40 in"), ("mesh", "2 in")],
    ),
    tool("TI", "tyre", None, &[("no-steel-belts", "yes")]),
    tool(
        "LC",
        "long-handled line cutter",
        None,
        &[("handle", "reach"), ("protected-blade", "yes")],
    ),
    tool("DE", "long J-style dehooker", None, &[("handle", "reach"), ("end", "j")]),
    tool("DI", "long twist dehooker", None, &[("handle", "reach"), ("end", "twist")]),
    tool("SE", "short J-style dehooker", None, &[("handle", "18 in"), ("end", "j")]),
    tool("SI", "short twist dehooker", None, &[("handle", "18 in"), ("end", "twist")]),
    tool("BC", "bolt cutters", None, &[("overall", "18 in"), ("cuts-hook", "5/16 in")]),
    tool("PL", "needle-nose pliers", None, &[("overall", "11 in")]),
    tool("MC", "deck line cutters", None, &[("overall", "7 in")]),
    tool("WB", "block of hard wood", None, &[("length", "10 in"), ("width", "1 in")]),
    tool("HR", "hank of rope", None, &[("material", "nylon")]),
    tool("CG", "canine mouth gag", None, &[("count", "3")]),
    tool("BH", "boat hook", None, &[("handle", "drop")]),
];

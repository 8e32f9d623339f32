//! What the invented suppliers sell: for every kind that the Gulf reef fish
//! rule and the house of good practice ask for, a tool with the figures that
//! it may have.
//!
//! A value is a list of figures, with `!` before one that few have and that
//! misses the mark. `reach` stands for a length of pole, `rope` for one of
//! rope. Sums are in cents and invented.

/// A sort of tool.
pub(crate) struct Sort {
    /// The letters of its number.
    pub(crate) letters: &'static str,
    pub(crate) kind: &'static str,
    /// What one piece costs, about.
    pub(crate) about: i64,
    /// The clause to which it conforms.
    pub(crate) clause: Option<&'static str>,
    pub(crate) lines: &'static [(&'static str, &'static str)],
}

const fn sort(
    letters: &'static str,
    kind: &'static str,
    about: i64,
    clause: Option<&'static str>,
    lines: &'static [(&'static str, &'static str)],
) -> Sort {
    Sort { letters, kind, about, clause, lines }
}

/// Single tools.
pub(crate) const SORTS: &[Sort] = &[
    sort(
        "LC",
        "long-handled line cutter",
        18_000,
        Some("Appendix F, A.1"),
        &[
            ("handle", "reach"),
            ("cuts-monofilament", "2.1 mm|2.5 mm|!2.05 mm"),
            ("protected-blade", "yes|!no"),
            ("blades-replaceable", "yes"),
        ],
    ),
    sort("BL", "set of replacement blades", 2_600, None, &[]),
    sort(
        "DI",
        "long-handled dehooker for internal hooks",
        21_000,
        Some("Appendix F, A.2"),
        &[
            ("handle", "reach"),
            ("rod", "1/4 in|5/16 in|3/16 in|!3/8 in"),
            ("material", "316L|304L|!304"),
            ("end-diameter", "1 3/4 in|1 7/8 in|!2 in"),
            ("end", "pigtail|twist|j"),
            ("shields-point", "yes"),
            ("controls-leader", "yes"),
            ("no-unprotected-points", "yes"),
            ("sized-for-hooks", "yes"),
        ],
    ),
    sort(
        "DE",
        "long-handled dehooker for external hooks",
        14_000,
        Some("Appendix F, A.3"),
        &[
            ("handle", "reach"),
            ("rod", "1/4 in|5/16 in|!3/8 in"),
            ("material", "316L|304L"),
            ("end-diameter", "1 3/4 in|1 7/8 in"),
            ("end", "j|j|!twist"),
            ("blunt-end", "yes"),
        ],
    ),
    sort(
        "BH",
        "boat hook",
        4_500,
        None,
        &[
            ("handle", "reach"),
            ("end", "boat hook"),
            ("securely-attached", "yes"),
            ("material", "aluminium|stainless|!wood"),
        ],
    ),
    sort(
        "DN",
        "dip net",
        31_000,
        Some("Appendix F, A.5(a)"),
        &[
            ("handle", "reach"),
            ("hoop-inside", "31 in|32 in|34 in|!30 1/2 in"),
            ("bag-depth", "38 in|40 in|!37 in"),
            ("mesh", "2 in|3 in|!3 1/2 in"),
            ("carries", "100 lb|150 lb|!99 lb"),
            ("no-sharp-edges", "yes"),
        ],
    ),
    sort(
        "HN",
        "collapsible hoop net",
        17_000,
        Some("Appendix F, A.5(b)"),
        &[
            ("rope-length", "rope"),
            ("hoop-inside", "31 in|34 in|!30 in"),
            ("bag-depth", "38 in|40 in"),
            ("mesh", "2 in|3 in|!4 in"),
            ("carries", "120 lb|100 lb|!90 lb"),
        ],
    ),
    sort(
        "TI",
        "tire",
        2_200,
        None,
        &[("no-steel-belts", "yes|!no"), ("sized-for-turtles", "yes|!no")],
    ),
    sort(
        "BU",
        "boat cushion",
        3_400,
        None,
        &[("sized-for-turtles", "yes"), ("life-saving", "no|!yes")],
    ),
    sort("CR", "coil of rope", 4_100, None, &[]),
    sort(
        "SI",
        "short-handled dehooker for internal hooks",
        9_600,
        Some("Appendix F, A.7"),
        &[
            ("shaft", "16 in|18 in|24 in|!15 1/2 in"),
            ("rod", "1/4 in|5/16 in"),
            ("material", "316L"),
            ("end", "twist|j"),
            ("end-diameter", "1 1/2 in|1 7/8 in|!2 in"),
            ("t-handle", "5 in|4 in|6 in|!6 1/4 in"),
            ("bite-block-length", "5 in|4 in|!7 in"),
            ("bite-block-inside", "3/4 in|1 in"),
            ("bite-block-slide", "5 1/2 in|5 in|!4 1/2 in"),
            ("bite-block-installed", "yes"),
            ("bite-block-plastic", "yes"),
            ("no-unprotected-points", "yes"),
        ],
    ),
    sort(
        "SE",
        "short-handled dehooker for external hooks",
        5_800,
        Some("Appendix F, A.8(a)"),
        &[
            ("shaft", "16 in|18 in|!15 in"),
            ("rod", "1/4 in|5/16 in"),
            ("material", "316L|304L"),
            ("end", "j|twist"),
            ("t-handle", "5 in|!8 in"),
            ("blunt-end", "yes"),
        ],
    ),
    sort(
        "SQ",
        "squeeze-handle dehooker",
        4_700,
        Some("Appendix F, A.8(b)"),
        &[
            ("overall", "11 in|12 in|!10 3/4 in"),
            ("material", "316L|304L"),
            ("blunt-end", "yes"),
            ("one-hand", "yes|!no"),
        ],
    ),
    sort("PL", "needle-nose pliers", 2_450, None, &[("overall", "11 in|12 in|!10 1/2 in")]),
    sort(
        "BC",
        "bolt cutters",
        6_000,
        None,
        &[
            ("overall", "14 in|17 in|18 in|!13 in"),
            ("blade-length", "4 in|4 1/4 in|!3 3/4 in"),
            ("blade-width", "2 1/4 in|2 1/2 in"),
            ("cuts-hook", "1/4 in|5/16 in|!4 mm"),
        ],
    ),
    sort(
        "MC",
        "monofilament line cutters",
        2_100,
        None,
        &[
            ("overall", "6 in|7 1/2 in|!5 1/2 in"),
            ("blade-length", "1 in|1 3/4 in|!3/4 in"),
            ("blade-width", "5/8 in|3/4 in"),
        ],
    ),
    sort(
        "WB",
        "block of hard wood",
        750,
        Some("Appendix F, A.12"),
        &[
            ("length", "10 in|11 in|!9 1/2 in"),
            ("width", "1 in|3/4 in"),
            ("thickness", "3/4 in|1 in|!1/2 in"),
            ("no-splinters", "yes"),
            ("smooth-edges", "yes"),
        ],
    ),
    sort(
        "CB",
        "dog chew bone",
        700,
        None,
        &[("length", "7 in|4 in|5 1/2 in|4 1/2 in|!5 in"), ("material", "nylon")],
    ),
    sort(
        "RL",
        "rope loop covered with tubing",
        820,
        None,
        &[
            ("loop-rope", "3 ft|!2 ft"),
            ("tubing-length", "8 in|!7 in"),
            ("tubing-size", "1/2 in|3/4 in"),
            ("poly-braid", "yes"),
        ],
    ),
    sort(
        "HR",
        "hank of rope",
        1_100,
        None,
        &[
            ("material", "nylon|!polypropylene"),
            ("rope-make", "soft braided|soft twisted"),
            ("rope-diameter", "3/16 in|1/4 in|!1/8 in"),
            ("hank-thickness", "2 in|3 in|4 in|!5 in"),
        ],
    ),
    sort(
        "CG",
        "canine mouth gag",
        2_300,
        None,
        &[("nominal-size", "5 in|6 in|7 in|!8 in"), ("material", "stainless|316L")],
    ),
    sort(
        "PC",
        "PVC splice coupling",
        380,
        None,
        &[("nominal-size", "1 in|1 1/4 in|1 1/2 in|2 in"), ("schedule", "40|!80")],
    ),
    sort(
        "CD",
        "careful-release document",
        700,
        None,
        &[("edition", "\"2019\"|!\"2015\""), ("form", "electronic")],
    ),
    sort(
        "HP",
        "handling placard",
        800,
        None,
        &[("state", "posted"), ("kept", "wheelhouse|!plain view")],
    ),
    sort("CT", "control tether on a pole", 13_400, None, &[("pole", "reach")]),
];

/// A set sold as one: its name, what it costs, about, and each tool's kind
/// and lines.
pub(crate) type Set =
    (&'static str, i64, &'static [(&'static str, &'static [(&'static str, &'static str)])]);

/// Sets.
pub(crate) const SETS: &[Set] = &[
    (
        "canine mouth gags of three sizes",
        6_200,
        &[
            ("canine mouth gag", &[("nominal-size", "5 in"), ("material", "stainless")]),
            ("canine mouth gag", &[("nominal-size", "6 in"), ("material", "stainless")]),
            ("canine mouth gag", &[("nominal-size", "7 in|!8 in"), ("material", "stainless")]),
        ],
    ),
    (
        "two chew bones",
        1_300,
        &[
            ("dog chew bone", &[("length", "7 in|8 in|!8 1/2 in"), ("material", "nylon")]),
            ("dog chew bone", &[("length", "4 in|3 1/2 in"), ("material", "nylon")]),
        ],
    ),
    (
        "four couplings",
        1_250,
        &[
            ("PVC splice coupling", &[("nominal-size", "1 in"), ("schedule", "40")]),
            ("PVC splice coupling", &[("nominal-size", "1 1/4 in"), ("schedule", "40")]),
            ("PVC splice coupling", &[("nominal-size", "1 1/2 in"), ("schedule", "40")]),
            ("PVC splice coupling", &[("nominal-size", "2 in"), ("schedule", "40|!80")]),
        ],
    ),
    (
        "pliers and line cutters",
        4_200,
        &[
            ("needle-nose pliers", &[("overall", "11 in|12 in|!10 in")]),
            (
                "monofilament line cutters",
                &[("overall", "7 in"), ("blade-length", "1 in"), ("blade-width", "5/8 in")],
            ),
        ],
    ),
    (
        "a line cutter, a boat hook and a net for a low rail",
        47_000,
        &[
            (
                "long-handled line cutter",
                &[
                    ("handle", "reach"),
                    ("cuts-monofilament", "2.1 mm"),
                    ("protected-blade", "yes"),
                    ("blades-replaceable", "yes"),
                ],
            ),
            (
                "boat hook",
                &[
                    ("handle", "reach"),
                    ("end", "boat hook"),
                    ("securely-attached", "yes"),
                    ("material", "aluminium"),
                ],
            ),
            (
                "dip net",
                &[
                    ("handle", "reach"),
                    ("hoop-inside", "32 in"),
                    ("bag-depth", "38 in"),
                    ("mesh", "2 in"),
                    ("carries", "100 lb"),
                    ("no-sharp-edges", "yes"),
                ],
            ),
        ],
    ),
];

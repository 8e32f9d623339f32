//! The words of the rules, row by row, written from their texts.

/// What a rule asks of something that is no figure.
#[derive(Debug, Clone, Copy)]
pub(crate) enum Says {
    /// It must be so.
    Yes,
    /// One of the first will do, none of the second.
    Words(&'static [&'static str], &'static [&'static str]),
}
use Says::{Words, Yes};

#[derive(Debug, Clone, Copy)]
pub(crate) struct Row {
    pub(crate) profile: &'static str,
    pub(crate) clause: &'static str,
    pub(crate) requirement: &'static str,
    pub(crate) kind: &'static str,
    pub(crate) attribute: &'static str,
    pub(crate) freeboard: &'static str,
    pub(crate) says: Says,
}

const GULF: &str = "us-gulf-reef-fish-2019";
const OLD_GULF: &str = "us-gulf-reef-fish-before-2019";
const ATLANTIC: &str = "us-atlantic-longline-2009";

/// Appendix F, A.2, A.3, A.7, A.8 (read).
const EITHER_STEEL: Says = Words(&["316l", "304l"], &["304", "carbon steel", "aluminium"]);
/// 635.21(c)(5)(i)(B), (C), (G), (H) (read).
const STEEL_316L: Says = Words(&["316l"], &["304l", "304", "carbon steel"]);
/// 635.21(c)(5)(i)(D), Appendix F, A.4 (read): stainless steel or aluminium.
const STAINLESS_OR_ALUMINIUM: Says =
    Words(&["stainless", "316l", "304l", "304", "aluminium"], &["carbon steel", "wood"]);
/// 635.21(c)(5)(i)(L)(2), Appendix F, A.12(b) (read): stainless steel.
const STAINLESS: Says =
    Words(&["stainless", "316l", "304l", "304"], &["aluminium", "carbon steel"]);

type Line = (&'static str, &'static str, &'static str, &'static str, Says);

fn rows(profile: &'static str, freeboard: &'static str, lines: &[Line]) -> Vec<Row> {
    let row = |&(clause, requirement, kind, attribute, says): &Line| Row {
        profile,
        clause,
        requirement,
        kind,
        attribute,
        freeboard,
        says,
    };
    lines.iter().map(row).collect()
}

/// Appendix F, part A, since the 2019 rules (read).
#[rustfmt::skip]
pub(crate) fn appendix_f() -> Vec<Row> {
    rows(GULF, "5 ft", &[
        // Clause, requirement, kind, attribute, what it asks.
        ("F A.1", "long-line-cutter", "long-line-cutter", "protected-blade", Yes),
        ("F A.1", "long-line-cutter", "long-line-cutter", "blades-replaceable", Yes),
        ("F A.2", "long-dehooker-internal", "long-dehooker-internal", "material", EITHER_STEEL),
        ("F A.2", "long-dehooker-internal", "long-dehooker-internal", "shields-point", Yes),
        ("F A.2", "long-dehooker-internal", "long-dehooker-internal", "controls-leader", Yes),
        ("F A.2", "long-dehooker-internal", "long-dehooker-internal", "no-unprotected-points", Yes),
        ("F A.2", "long-dehooker-internal", "long-dehooker-internal", "sized-for-hooks", Yes),
        ("F A.3", "long-dehooker-external", "long-dehooker-external", "material", EITHER_STEEL),
        ("F A.3", "long-dehooker-external", "long-dehooker-external", "blunt-end", Yes),
        ("F A.4", "inverted-v-device", "inverted-v-device", "material", STAINLESS_OR_ALUMINIUM),
        ("F A.4", "inverted-v-device", "inverted-v-device", "end", Words(&["semicircular", "j", "boat hook"], &["gaff", "twist", "pigtail", "other"])),
        ("F A.4", "inverted-v-device", "inverted-v-device", "securely-attached", Yes),
        ("F A.5(a)", "net", "dip-net", "no-sharp-edges", Yes),
        ("F A.6", "support", "tire", "no-steel-belts", Yes),
        ("F A.6", "support", "tire", "sized-for-turtles", Yes),
        ("F A.6", "support", "boat-cushion", "sized-for-turtles", Yes),
        ("F A.6", "support", "cushioned-surface", "sized-for-turtles", Yes),
        ("F A.6", "support", "cushioned-surface", "elevated", Yes),
        ("F A.6", "support", "life-saving-device", "surplus-to-safety", Yes),
        ("F A.6", "support", "life-saving-device", "elevated", Yes),
        ("F A.6", "support", "life-saving-device", "sized-for-turtles", Yes),
        ("F A.7", "short-dehooker-internal", "short-dehooker-internal", "material", EITHER_STEEL),
        ("F A.7", "short-dehooker-internal", "short-dehooker-internal", "bite-block-installed", Yes),
        ("F A.7", "short-dehooker-internal", "short-dehooker-internal", "bite-block-plastic", Yes),
        ("F A.7", "short-dehooker-internal", "short-dehooker-internal", "no-unprotected-points", Yes),
        ("F A.8(a)", "short-dehooker-external", "short-dehooker-external", "material", EITHER_STEEL),
        ("F A.8(a)", "short-dehooker-external", "short-dehooker-external", "blunt-end", Yes),
        ("F A.8(b)", "short-dehooker-external", "squeeze-dehooker", "material", EITHER_STEEL),
        ("F A.8(b)", "short-dehooker-external", "squeeze-dehooker", "blunt-end", Yes),
        ("F A.8(b)", "short-dehooker-external", "squeeze-dehooker", "one-hand", Yes),
        ("F A.12(a)", "mouth-gags", "hardwood-block", "no-splinters", Yes),
        ("F A.12(a)", "mouth-gags", "hardwood-block", "smooth-edges", Yes),
        ("F A.12(a)", "mouth-gags", "wooden-brush-without-bristles", "no-splinters", Yes),
        ("F A.12(a)", "mouth-gags", "wooden-brush-without-bristles", "smooth-edges", Yes),
        ("F A.12(b)", "mouth-gags", "canine-gag", "material", STAINLESS),
        ("F A.12(c)", "mouth-gags", "chew-bone", "material", Words(&["nylon", "thermoplastic"], &["zylene", "wood"])),
        ("F A.12(d)", "mouth-gags", "covered-rope-loop", "poly-braid", Yes),
        ("F A.12(e)", "mouth-gags", "rope-hank", "material", Words(&["nylon"], &["polypropylene"])),
        ("F A.12(e)", "mouth-gags", "rope-hank", "rope-make", Words(&["soft braided", "soft twisted"], &["hard"])),
        ("F A.12(g)", "mouth-gags", "oral-speculum", "material", Words(&["304"], &["316l", "304l", "carbon steel"])),
    ])
}

/// 635.21(c)(5)(i)(A) to (M) until 28 November 2024 (read), with the list of
/// approved models of (c)(5)(iv) (read).
#[rustfmt::skip]
pub(crate) fn section_635() -> Vec<Row> {
    rows(ATLANTIC, "5 ft", &[
        // Clause, requirement, kind, attribute, what it asks.
        ("(A)", "long-line-cutter", "long-line-cutter", "protected-blade", Yes),
        ("(A)", "long-line-cutter", "long-line-cutter", "blades-replaceable", Yes),
        ("(iv)", "long-line-cutter", "long-line-cutter", "approved-model", Yes),
        ("(B)", "long-dehooker-internal", "long-dehooker-internal", "material", STEEL_316L),
        ("(B)", "long-dehooker-internal", "long-dehooker-internal", "shields-point", Yes),
        ("(B)", "long-dehooker-internal", "long-dehooker-internal", "controls-leader", Yes),
        ("(B)", "long-dehooker-internal", "long-dehooker-internal", "no-unprotected-points", Yes),
        ("(B)", "long-dehooker-internal", "long-dehooker-internal", "sized-for-hooks", Yes),
        ("(iv)", "long-dehooker-internal", "long-dehooker-internal", "approved-model", Yes),
        ("(C)", "long-dehooker-external", "long-dehooker-external", "material", STEEL_316L),
        ("(C)", "long-dehooker-external", "long-dehooker-external", "blunt-end", Yes),
        ("(iv)", "long-dehooker-external", "long-dehooker-external", "approved-model", Yes),
        ("(D)", "inverted-v-device", "inverted-v-device", "end", Words(&["boat hook", "gaff"], &["twist", "pigtail", "other"])),
        ("(D)", "inverted-v-device", "inverted-v-device", "material", STAINLESS_OR_ALUMINIUM),
        ("(E)", "net", "dip-net", "rigid-handle", Yes),
        ("(E)", "net", "dip-net", "no-sharp-edges", Yes),
        ("(F)", "support", "tire", "no-steel-belts", Yes),
        ("(G)", "short-dehooker-internal", "short-dehooker-internal", "material", STEEL_316L),
        ("(G)", "short-dehooker-internal", "short-dehooker-internal", "shields-point", Yes),
        ("(G)", "short-dehooker-internal", "short-dehooker-internal", "no-unprotected-points", Yes),
        ("(G)", "short-dehooker-internal", "short-dehooker-internal", "bite-block-installed", Yes),
        ("(iv)", "short-dehooker-internal", "short-dehooker-internal", "approved-model", Yes),
        ("(H)", "short-dehooker-external", "short-dehooker-external", "material", STEEL_316L),
        ("(H)", "short-dehooker-external", "short-dehooker-external", "blunt-end", Yes),
        ("(iv)", "short-dehooker-external", "short-dehooker-external", "approved-model", Yes),
        ("(iv)", "pliers", "pliers", "approved-model", Yes),
        ("(iv)", "bolt-cutters", "bolt-cutters", "approved-model", Yes),
        ("(iv)", "line-cutters", "line-cutters", "approved-model", Yes),
        ("(L)(1)", "mouth-gags", "hardwood-block", "no-splinters", Yes),
        ("(L)(1)", "mouth-gags", "hardwood-block", "smooth-edges", Yes),
        ("(L)(2)", "mouth-gags", "canine-gag", "material", STAINLESS),
        ("(L)(3)", "mouth-gags", "chew-bone", "material", Words(&["nylon", "zylene", "thermoplastic"], &["wood"])),
        ("(L)(4)", "mouth-gags", "covered-rope-loop", "poly-braid", Yes),
        ("(L)(5)", "mouth-gags", "rope-hank", "material", Words(&["nylon"], &["polypropylene"])),
        ("(L)(5)", "mouth-gags", "rope-hank", "rope-make", Words(&["soft braided"], &["soft twisted", "hard"])),
        ("(L)(7)", "mouth-gags", "oral-speculum", "material", Words(&["304"], &["316l", "304l", "carbon steel"])),
        ("(L)(7)", "mouth-gags", "oral-speculum", "padding", Words(&["vinyl tubing"], &["friction tape", "similar", "none"])),
        ("(M)(1)", "control-device", "control-tether", "line-lay", Words(&["hard"], &["soft"])),
        ("(M)(1)", "control-device", "control-tether", "sinks", Yes),
        ("(M)(1)", "control-device", "control-tether", "tag-line", Yes),
        ("(M)(2)", "control-device", "control-poles", "line-lay", Words(&["soft"], &["hard"])),
        ("(M)(2)", "control-device", "control-poles", "line-material", Words(&["polypropylene", "nylon"], &["polyester", "other"])),
        ("(M)(2)", "control-device", "control-poles", "tag-line", Yes),
    ])
}

/// What 622.29(a)(1)(iii) and (iv) before the 2019 rule changed in the list of
/// 635.21(c)(5)(i) (read): one dehooker of each length, a dipnet on a low rail,
/// other supports.
#[rustfmt::skip]
pub(crate) fn old_gulf() -> Vec<Row> {
    rows(OLD_GULF, "5 ft", &[
        // Clause, requirement, kind, attribute, what it asks.
        ("(B)", "long-dehooker", "long-dehooker-internal", "material", STEEL_316L),
        ("(B)", "long-dehooker", "long-dehooker-internal", "shields-point", Yes),
        ("(B)", "long-dehooker", "long-dehooker-internal", "controls-leader", Yes),
        ("(B)", "long-dehooker", "long-dehooker-internal", "no-unprotected-points", Yes),
        ("(B)", "long-dehooker", "long-dehooker-internal", "sized-for-hooks", Yes),
        ("(C)", "long-dehooker", "long-dehooker-external", "material", STEEL_316L),
        ("(C)", "long-dehooker", "long-dehooker-external", "blunt-end", Yes),
        ("(C), (D)", "inverted-v-device", "long-dehooker-external", "material", STEEL_316L),
        ("(C), (D)", "inverted-v-device", "long-dehooker-external", "blunt-end", Yes),
        ("(C), (D)", "inverted-v-device", "long-dehooker-external", "end", Words(&["j"], &["twist", "pigtail", "other"])),
        ("(F)", "support", "tire", "no-steel-belts", Yes),
        ("622.29(a)(1)", "support", "cushioned-surface", "elevated", Yes),
        ("(G)", "short-dehooker", "short-dehooker-internal", "material", STEEL_316L),
        ("(G)", "short-dehooker", "short-dehooker-internal", "shields-point", Yes),
        ("(G)", "short-dehooker", "short-dehooker-internal", "no-unprotected-points", Yes),
        ("(G)", "short-dehooker", "short-dehooker-internal", "bite-block-installed", Yes),
        ("(H)", "short-dehooker", "short-dehooker-external", "material", STEEL_316L),
        ("(H)", "short-dehooker", "short-dehooker-external", "blunt-end", Yes),
    ])
    .into_iter()
    .chain(rows(OLD_GULF, "3 ft", &[
        ("(E)", "net-low-rail", "dip-net", "rigid-handle", Yes),
        ("(E)", "net-low-rail", "dip-net", "no-sharp-edges", Yes),
    ]))
    .collect()
}

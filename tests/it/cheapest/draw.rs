//! Small cases drawn at random: a profile of a few requirements, vessels with
//! a few tools, catalogues with a few items. All of it is invented.

use std::fmt::Write as _;

/// A small generator of numbers: the same seed, the same case.
pub(super) struct Draw(u64);

impl Draw {
    pub(super) fn new(seed: u64) -> Self {
        Self(seed.wrapping_mul(0x9e37_79b9_7f4a_7c15) | 1)
    }

    /// A number below `below`.
    pub(super) fn below(&mut self, below: usize) -> usize {
        self.0 ^= self.0 << 13;
        self.0 ^= self.0 >> 7;
        self.0 ^= self.0 << 17;
        (self.0 >> 11) as usize % below
    }

    /// True once in so many times.
    fn once_in(&mut self, times: usize) -> bool {
        self.below(times) == 0
    }

    fn one<'a>(&mut self, of: &[&'a str]) -> &'a str {
        of[self.below(of.len())]
    }
}

/// A case as it is written in files.
#[derive(Debug)]
pub(super) struct Written {
    pub(super) profile: String,
    pub(super) vessels: Vec<String>,
    pub(super) catalogues: Vec<String>,
    pub(super) with_recommended: bool,
}

pub(super) const ORDERED: &str = "2026-03-01";
pub(super) const DEPARTS: [&str; 2] = ["2026-03-05", "2026-03-12"];
pub(super) const RETURNS: &str = "2026-03-20";

const PROFILE: &str = "format: profile/1
id: drawn
rule: drawn
edition: invented for tests
title: Drawn
standing: good practice
requirements:
";

/// Requirements that may be asked, each with those it leans on before it.
const ASKS: [&str; 12] = [
    "  - { id: cutter, title: Cutter, verified: common practice, inspection due: every 12 months, carry: 1 long-handled line cutter, with: { handle: at least 150% of freeboard } }
  - { id: blades, title: Blades, verified: common practice, carry: 1 set of replacement blades, spare for: cutter }
",
    "  - { id: cutters, title: Cutters, verified: common practice, carry: 2 long-handled line cutter, with: { handle: at least 5 ft } }
",
    "  - { id: inner, title: Inner dehooker, verified: common practice, carry: 1 long internal dehooker, with: { handle: at least 150% of freeboard } }
  - { id: outer, title: Outer dehooker, verified: common practice, carry: 1 long external dehooker, with: { handle: at least 5 ft }, met by the tool of: inner }
",
    "  - { id: gags, title: Gags, verified: common practice, carry: 2 different types, types: [{ type: block, carry: 1 hardwood block }, { type: hank, carry: 1 rope hank }, { type: loops, carry: 2 canine gag }] }
",
    "  - { id: pliers, title: Pliers, verified: common practice, carry: 2 pliers, with: { overall: at least 11 in } }
  - { id: pliers-short, title: Short pliers, verified: common practice, carry: 1 pliers, with: { overall: at most 12 in } }
",
    "  - { id: net, title: Net, verified: common practice, carry: 1 dip net, with: { handle: at least 6 ft } }
  - { id: net-low, title: Low net, verified: common practice, carry: 1 dip net, with: { handle: at most 150% of freeboard }, may share the tool of: [net] }
",
    "  - { id: support, title: Support, verified: common practice, carry: 1, one of: [{ kind: tire }, { kind: boat cushion }] }
",
    "  - { id: tires, title: Tires, level: recommended, verified: common practice, carry: 2 tire }
",
    "  - { id: hoist, title: Hoist, verified: common practice, unless: { aboard: dip net }, carry: 1 hoist }
",
    "  - { id: gaff, title: Gaff, verified: common practice, when: { aboard: tire }, carry: 1 gaff }
",
    "  - { id: high, title: High, verified: common practice, when: { freeboard: more than 4 ft }, carry: 1 dip net, with: { handle: at least 7 ft } }
",
    "  - { id: bolts, title: Bolts, level: recommended, verified: common practice, carry: 1 bolt cutters, with: { overall: at least 14 in } }
  - { id: bolts-or, title: Bolts or pliers, verified: common practice, carry: 1, one of: [{ kind: pliers }, { kind: bolt cutters }], met by the tool of: bolts }
",
];

pub(super) fn written(seed: u64) -> Written {
    let mut draw = Draw::new(seed);
    let mut profile = PROFILE.to_owned();
    let count = 1 + draw.below(3);
    let mut taken = Vec::new();
    while taken.len() < count {
        let at = draw.below(ASKS.len());
        if !taken.contains(&at) {
            taken.push(at);
            profile.push_str(ASKS[at]);
        }
    }
    let kinds: Vec<&str> = KINDS.into_iter().filter(|kind| profile.contains(kind)).collect();
    let kinds = if profile.contains("gaff") { [&kinds[..], &["tire"]].concat() } else { kinds };
    let vessels = 1 + usize::from(draw.once_in(3));
    let catalogues = 1 + usize::from(draw.once_in(3));
    Written {
        profile,
        vessels: (0..vessels).map(|at| vessel(&mut draw, at, &kinds)).collect(),
        catalogues: (0..catalogues).map(|at| catalogue(&mut draw, at, &kinds)).collect(),
        with_recommended: draw.once_in(4),
    }
}

const KINDS: [&str; 13] = [
    "long-handled line cutter",
    "set of replacement blades",
    "long internal dehooker",
    "long external dehooker",
    "hardwood block",
    "rope hank",
    "canine gag",
    "pliers",
    "dip net",
    "tire",
    "boat cushion",
    "bolt cutters",
    "hoist",
];

/// The attribute that is measured on a kind, with figures to choose from.
fn figure(draw: &mut Draw, kind: &str) -> String {
    let long = ["4 ft", "5 ft", "6 ft", "6 ft 9 in", "8 ft"];
    match kind {
        "long-handled line cutter"
        | "long internal dehooker"
        | "long external dehooker"
        | "dip net" => format!(", handle: {}", draw.one(&long)),
        "pliers" => format!(", overall: {}", draw.one(&["10 in", "11 in", "12 in", "13 in"])),
        "bolt cutters" => format!(", overall: {}", draw.one(&["12 in", "14 in"])),
        _ => String::new(),
    }
}

fn vessel(draw: &mut Draw, at: usize, kinds: &[&str]) -> String {
    let freeboard = draw.one(&["3 ft", "4 ft", "3 ft to 4 ft 6 in", "4 ft 6 in"]);
    let mut text = format!(
        "format: vessel/1\nname: Drawn {at}\nfreeboard: {freeboard}\npermits: []\n\
         gear: [pelagic-longline]\nareas: []\nkit:\n"
    );
    let tools = draw.below(4);
    for tool in 0..tools {
        let kind = kinds[draw.below(kinds.len())];
        let figure = if draw.once_in(6) { String::new() } else { figure(draw, kind) };
        let condition =
            draw.one(&["serviceable", "serviceable", "serviceable", "broken", "unknown"]);
        let inspected = draw.one(&["", ", inspected: 2025-10-01", ", inspected: 2024-10-01"]);
        let count = draw.one(&["", "", ", count: 2"]);
        let parts = draw.one(&["", "", "", ", parts: [H-1]"]);
        let fits = if kind.contains("blades") && draw.once_in(2) && tool > 0 {
            ", fits: [T-0]"
        } else {
            ""
        };
        let _ = writeln!(
            text,
            "  - {{ mark: T-{tool}, kind: {kind}{figure}, condition: {condition}{inspected}{count}{parts}{fits} }}"
        );
    }
    if tools == 0 { text.replace("kit:\n", "kit: []\n") } else { text }
}

fn catalogue(draw: &mut Draw, at: usize, kinds: &[&str]) -> String {
    let tax = draw.one(&["0%", "7.25%", "5%"]);
    let delivery = draw.one(&[
        "0",
        "{ charge: 7.00 }",
        "{ charge: 9.50, free from: 40.00 }",
        "{ charge: 6.25, free from: 25.00 }",
    ]);
    // What lapses at sea and decides what else is asked is never offered; and
    // where two requirements want the same tools and one of them cannot be
    // met on all days, a day's best assignment may starve the other.
    let lapses = ["hoist", "tire", "pliers"].iter().all(|kind| !kinds.contains(kind));
    let mut text = format!(
        "format: catalogue/1\nsupplier: Drawn supplier {at}\ncurrency: USD\ntax: {tax}\n\
         delivery: {delivery}\nlead: 2 days\nitems:\n"
    );
    let goods = 1 + draw.below(3);
    for item in 0..goods {
        let what = goods_of(draw, at, item, kinds);
        let what = if lapses { what } else { what.replace(", lasts: 10 days", "") };
        line(draw, &mut text, at, item, &what);
    }
    if draw.once_in(2) {
        let all = "[long-handled line cutter, long internal dehooker, dip net]";
        let what = match draw.below(3) {
            0 => format!("lengthens: {{ kinds: {all}, by: 2 ft }}"),
            1 => format!("service: {{ kinds: {all}, does: [inspection] }}"),
            _ => "service: { kinds: [long-handled line cutter, pliers, dip net, tire], does: [repair] }"
                .to_owned(),
        };
        line(draw, &mut text, at, goods, &what);
    }
    text
}

fn goods_of(draw: &mut Draw, at: usize, item: usize, kinds: &[&str]) -> String {
    let tool = |draw: &mut Draw| {
        let kind = kinds[draw.below(kinds.len())];
        let fits = match kind.contains("blades") {
            true if item > 0 && draw.once_in(2) => format!(", fits: [\"I{at}-0\"]"),
            true => ", fits: [long-handled line cutter]".to_owned(),
            false => String::new(),
        };
        let figure = figure(draw, kind);
        let inspected = draw.one(&["", ", inspected: yes", ", inspected: yes"]);
        let lasts = draw.one(&["", "", "", "", ", lasts: 10 days"]);
        let count = draw.one(&["", "", "", ", count: 2"]);
        format!("{{ kind: {kind}{figure}{inspected}{lasts}{count}{fits} }}")
    };
    match draw.below(5) {
        0 => format!("tools: [{}, {}]", tool(draw), tool(draw)),
        _ => format!("tool: {}", tool(draw)),
    }
}

fn line(draw: &mut Draw, text: &mut String, at: usize, item: usize, what: &str) {
    let price = format!("{}.{:02}", 4 + draw.below(14), draw.below(100));
    let pack = draw.one(&["", "", "", "\n    pack: 2", "\n    pack: 4"]);
    let least = draw.one(&["", "", "", "", "\n    least order: 2"]);
    let stock = draw.one(&["", "", "", "", "\n    stock: 1", "\n    stock: 2", "\n    stock: 0"]);
    let lead = draw.one(&["", "", "", "", "\n    lead: 8 days", "\n    lead: 30 days"]);
    let holds = draw.one(&[
        "",
        "",
        "",
        "",
        "",
        "\n    price holds until: 2026-02-27",
        "\n    price holds until: 2026-03-01",
    ]);
    let _ = writeln!(
        text,
        "  - number: I{at}-{item}\n    description: drawn\n    {what}\n    price: {price}{pack}{least}{stock}{lead}{holds}"
    );
}

//! What is told of a finding: which tools serve, which reasons are given, of
//! which tool, and in which order.

use super::{Made, by, kit, made_with};
use crate::outfit::{DAY, Judged, vessel};

/// A profile of these requirements, under which tools are inspected.
fn rule(requirements: &[&str]) -> Made {
    made_with("inspection due: every 12 months\n", requirements)
}

impl Made {
    fn judges_kit(&self, tools: &[&str]) -> Judged {
        self.judges(&vessel("5 ft").with(tools))
    }
}

/// The reasons of a finding, each with the mark of its tool.
fn reasons(judged: &Judged, requirement: &str) -> Vec<String> {
    let reasons = judged.finding(requirement)["reasons"].as_array().unwrap();
    let told = |reason: &serde_json::Value| {
        let tool = reason["tool"].as_str().map(|tool| format!(" {tool}")).unwrap_or_default();
        format!("{}{tool}", reason["code"].as_str().unwrap())
    };
    reasons.iter().map(told).collect()
}

const SEEN: &str = "inspected: 2026-02-01";

fn pliers(mark: &str, more: &str) -> String {
    format!("{{ mark: {mark}, kind: pliers, {more} }}")
}

/// Two or three requirements for two pairs of pliers, of one of which nobody
/// knows whether it works: what is not met for certain tells faults, what is open
/// tells first what is not known.
#[test]
fn a_finding_that_is_not_met_tells_faults_and_one_that_is_open_what_is_not_known() {
    let rule = rule(&[
        "id: a, title: A, carry: 1 pliers",
        "id: b, title: B, carry: 1 pliers",
        "id: c, title: C, carry: 1 pliers, with: { overall: at least 11 in }",
    ]);
    let good = pliers("PL-1", &format!("overall: 11 in, {SEEN}"));
    let open = pliers("PL-2", &format!("overall: 12 in, condition: unknown, {SEEN}"));
    let judged = rule.judges_kit(&[&good, &open]);
    let taken = "serves-another-requirement PL-1";
    for id in ["a", "b", "c"] {
        assert_eq!(judged.outcome(id), "not-met");
        let told = ["one-of-these PL-1", "one-of-these PL-2", "condition-unknown PL-2"];
        assert_eq!(reasons(&judged, id), told);
    }
    let two = self::rule(&["id: a, title: A, carry: 1 pliers", "id: b, title: B, carry: 1 pliers"]);
    let judged_by_two = two.judges_kit(&[&good, &open]);
    assert_eq!(["a", "b"].map(|id| judged_by_two.outcome(id)), ["cannot-tell", "cannot-tell"]);
    assert_eq!(reasons(&judged_by_two, "b"), ["condition-unknown PL-2", taken]);
    let short = pliers("PL-3", &format!("overall: 9 in, condition: unknown, {SEEN}"));
    let broken = pliers("PL-4", &format!("overall: 9 in, condition: broken, {SEEN}"));
    let unmeasured = pliers("PL-2", &format!("condition: unknown, {SEEN}"));
    let judged = rule.judges_kit(&[&good, &unmeasured, &short, &broken]);
    let told = [
        "condition-unknown PL-2",
        "unmeasured PL-2",
        "condition-unknown PL-3",
        "out-of-specification PL-3",
        taken,
        "not-serviceable PL-4",
        "out-of-specification PL-4",
    ];
    assert_eq!(reasons(&judged, "c"), told);
}

#[test]
fn a_number_that_is_short_is_told_with_what_is_wrong_with_the_rest() {
    let gags = |tools: &[&str]| {
        let judged = kit("alternatives.yaml", tools);
        (judged.outcome("three-gags").to_owned(), reasons(&judged, "three-gags"))
    };
    let broken = "{ mark: A, kind: canine mouth gags, condition: broken }";
    let told = |outcome: &str, reasons: &[&str]| {
        (outcome.to_owned(), reasons.iter().map(|one| (*one).to_owned()).collect::<Vec<_>>())
    };
    assert_eq!(gags(&[broken]), told("not-met", &["too-few", "not-serviceable A"]));
    let open = "{ mark: B, kind: canine mouth gags, condition: unknown, count: 2 }";
    let good = "{ mark: C, kind: canine mouth gags }";
    assert_eq!(
        gags(&[broken, open, good]),
        told("cannot-tell", &["condition-unknown B", "too-few", "not-serviceable A"])
    );
    assert_eq!(gags(&[]), told("not-met", &["nothing-aboard"]));
}

#[test]
fn a_lot_that_serves_is_one_tool_with_its_number() {
    let judged = kit("alternatives.yaml", &["{ mark: A, kind: canine mouth gags, count: 4 }"]);
    let tools = judged.finding("three-gags")["tools"].as_array().unwrap();
    assert_eq!(tools.len(), 1, "{tools:?}");
    assert_eq!((&tools[0]["mark"], &tools[0]["count"]), (&"A".into(), &3.into()));
}

/// A tool that fits none of several alternatives of its kind is told once, by
/// the one that it comes nearest to.
#[test]
fn a_tool_is_told_once_for_all_alternatives_of_its_kind() {
    let rule = rule(&["id: d, title: D, carry: 1, one of: [\
        { kind: pliers, with: { overall: at least 11 in, material: stainless } }, \
        { kind: pliers, with: { overall: at least 12 in } }]"]);
    let judged =
        rule.judges_kit(&[&pliers("T", &format!("overall: 9 in, material: other, {SEEN}"))]);
    assert_eq!(reasons(&judged, "d"), ["out-of-specification T"]);
    assert_eq!(judged.finding("d")["reasons"][0]["demand"]["least"]["nanometres"], 12 * 25_400_000);
}

#[test]
fn the_part_that_is_in_use_is_named() {
    let tools = [
        "{ mark: LC-1, kind: long-handled line cutter, parts: [POLE-1] }",
        "{ mark: BH-1, kind: boat hook, parts: [HEAD-2, POLE-1] }",
    ];
    let judged = kit("parts-shared-no.yaml", &tools);
    let told = &judged.finding("hook")["reasons"][0]["text"];
    assert_eq!(told, "its part POLE-1 is needed for another tool");
}

/// What is named as missing is every kind that would do, each once.
#[test]
fn the_kinds_that_would_do_are_named_once() {
    for wheelhouse in ["yes", "no"] {
        let features = format!("{{ wheelhouse: {wheelhouse} }}");
        let judged = by("alternatives.yaml", &vessel("5 ft").set("features", &features));
        let kinds = |requirement: &str| judged.finding(requirement)["reasons"][0]["kinds"].clone();
        assert_eq!(kinds("document"), serde_json::json!(["careful-release-document"]));
        assert_eq!(kinds("support"), serde_json::json!(["tire", "boat-cushion", "rope-coil"]));
    }
}

/// Of tools that do as well, those serve that lapse last, whatever else is
/// asked: a requirement that is not met, one that another's tool meets, a
/// choice of types.
#[test]
fn the_tools_that_lapse_last_are_named() {
    let (early, late) = ("inspected: 2025-05-01", "inspected: 2026-02-01");
    let both = |kind: &str| {
        [("1", early), ("2", late)].map(|(n, day)| {
            let mark = kind.chars().next().unwrap().to_uppercase();
            format!("{{ mark: {mark}-{n}, kind: {kind}, {day} }}")
        })
    };
    let served = |requirements: &[&str], tools: &[String], requirement: &str| {
        let tools: Vec<&str> = tools.iter().map(String::as_str).collect();
        let judged = rule(requirements).judges_kit(&tools);
        judged.tools(requirement).iter().map(|mark| (*mark).to_owned()).collect::<Vec<_>>()
    };
    let (pliers, tires) = (both("pliers"), both("tire"));
    let plain = ["id: a, title: A, carry: 1 pliers", "id: b, title: B, carry: 1 tire"];
    assert_eq!(served(&plain, &pliers, "a"), ["P-2"]);
    assert_eq!(served(&plain, &[pliers.clone(), tires.clone()].concat(), "b"), ["T-2"]);
    let internal = "long-handled dehooker for internal hooks";
    let deemed = [
        &*format!("id: i, title: I, carry: 1 {internal}"),
        "id: e, title: E, carry: 1 long-handled dehooker for external hooks, met by the tool of: i",
    ];
    for requirement in ["i", "e"] {
        assert_eq!(served(&deemed, &both(internal), requirement), ["L-2"], "{requirement}");
    }
    let types = ["id: v, title: V, carry: 2 different types, types: [\
        { type: a, carry: 1 pliers }, { type: b, carry: 1 tire }, { type: c, carry: 1 dip net }]"];
    assert_eq!(served(&types, &[pliers, tires].concat(), "v"), ["P-2", "T-2"]);
}

/// Two readings of a rule's wording: where one is kept and the other is not,
/// the wording is disputed, and of what; where one fails and of the other a
/// fact is missing, that fact is.
#[test]
fn what_is_told_of_rival_readings() {
    let rule = rule(&["id: r, title: R, carry: 1 dip net, with: { read as: [\
        { mesh: at most 3 in, handle: at least 5 ft }, { mesh: at most 2 in }] }"]);
    let net = |figures: &str| {
        rule.judges_kit(&[&format!("{{ mark: T, kind: dip net, {figures}, {SEEN} }}")])
    };
    let disputed = net("mesh: 2 1/2 in, handle: 5 ft");
    let reason = &disputed.finding("r")["reasons"][0];
    assert_eq!(reason["code"], "wording-disputed", "{reason}");
    assert_eq!(reason["attributes"], serde_json::json!(["mesh", "handle"]), "{reason}");
    let open = net("mesh: 2 1/2 in");
    assert_eq!(reasons(&open, "r"), ["unmeasured T"]);
    assert_eq!(open.finding("r")["reasons"][0]["attributes"], serde_json::json!(["handle"]));
    assert_eq!(reasons(&net("mesh: 4 in, handle: 5 ft"), "r"), ["out-of-specification T"]);
}

/// A finding that hangs on the freeboard says at which, and every one on
/// which day: the first on which it is as bad.
#[test]
fn a_finding_has_its_freeboard_and_its_day() {
    let rule = rule(&[
        "id: cutter, title: C, carry: 1 long-handled line cutter, with: { handle: at least 150% of freeboard }",
        "id: low, title: L, carry: 1 tire, when: { freeboard: 6 ft or less }",
        "id: any, title: A, carry: 1 pliers, with: { overall: at least 11 in }",
        "id: choice, title: H, carry: 1, one of: [{ kind: boat hook }, \
         { kind: dip net, with: { handle: at least freeboard } }]",
    ]);
    let trip = ["--profile", &rule.path, "--on", DAY, "--return", "2026-03-20"];
    let judged = vessel("5 ft").check(&trip);
    for (requirement, minds) in [("cutter", true), ("low", true), ("any", false), ("choice", true)]
    {
        let finding = judged.finding(requirement);
        assert_eq!(!finding["freeboard"].is_null(), minds, "{requirement}");
        assert_eq!(finding["day"], DAY, "{requirement}");
    }
}

/// Outside the margin of an approximate limit nobody can tell, and it is said
/// that the limit is approximate; readings that differ are disputed there too.
#[test]
fn what_is_told_outside_an_approximate_limit() {
    let cutters = |overall: &str| {
        let tool = format!("{{ mark: T, kind: monofilament line cutters, overall: {overall} }}");
        let judged = kit("bounds.yaml", &[tool]);
        (judged.outcome("about").to_owned(), reasons(&judged, "about"))
    };
    let open = |code: &str| ("cannot-tell".to_owned(), vec![format!("{code} T")]);
    assert_eq!(cutters("8 in"), ("met".to_owned(), vec![]));
    assert_eq!(cutters("8 1/2 in"), open("outside-approximate"));
    assert_eq!(cutters("[{ value: 8 1/2 in }, { value: 9 in }]"), open("disputed"));
    assert_eq!(cutters("[{ value: 8 in }, { value: 9 in }]"), open("disputed"));
}

/// Of several alternatives for the vessel's own hooks the nearest is told: a
/// wrong measure is nearer than a wrong type, and of two as near the first.
#[test]
fn of_the_alternatives_for_a_hook_the_nearest_is_told() {
    let told = |alternatives: &str| {
        let rule = rule(&[&format!("id: hooks, title: H, every: hook, one of: [{alternatives}]")]);
        let hook = "[{ name: a, type: j, size: 14/0, wire: 4 mm, gap: 30 mm }]";
        let judged = rule.judges(&vessel("5 ft").set("hooks", hook));
        judged.finding("hooks")["reasons"][0]["text"].as_str().unwrap().to_owned()
    };
    let circle = "{ with: { type: circle } }";
    let thin = "{ with: { type: j, wire: at most 3 mm, gap: at most 20 mm } }";
    for alternatives in [format!("{circle}, {thin}"), format!("{thin}, {circle}")] {
        let text = told(&alternatives);
        assert!(text.contains("3 mm"), "{text}");
    }
    let text = told("{ with: { wire: at most 3 mm } }, { with: { wire: at most 2 mm } }");
    assert!(text.contains("3 mm"), "{text}");
    // Sizes have an order and no distance.
    let text = told("{ with: { size: at least 16/0 } }");
    assert_eq!(text, "a: hook size 14/0, must be at least 16/0");
}

/// A paper needs no word of its condition.
#[test]
fn a_paper_is_good_without_a_word_of_its_condition() {
    let document = "{ kind: careful-release document, state: posted, form: paper }";
    let vessel = vessel("5 ft").unsaid("declared").carrying(&[document]);
    assert_eq!(by("plain.yaml", &vessel).outcome("document"), "met");
}

/// Two readings of a word of which one would do and the other not dispute it.
#[test]
fn words_that_differ_are_disputed() {
    let bone = |material: &str| {
        let tool = format!("{{ mark: T, kind: dog chew bone, material: {material} }}");
        reasons(&kit("features.yaml", &[tool]), "choice")
    };
    assert_eq!(bone("[{ value: nylon }, { value: wood }]"), ["disputed T"]);
    assert_eq!(bone("unknown"), ["unmeasured T"]);
    assert_eq!(bone("wood"), ["out-of-specification T"]);
}

/// A statement names the clause, with the rule's source before it or without.
#[test]
fn a_statement_may_name_the_source_before_the_clause() {
    let rule = made_with(
        "source: Harbour notice 9\n",
        &[
            "id: one, title: One, clause: clause 7, carry: 1 dog chew bone, with: { material: nylon }",
        ],
    );
    let outcome = |to: &str| {
        let statement = format!("[{{ to: {to}, on: 2026-01-05, by: Port Ansel Chandlery }}]");
        let tool = format!("{{ mark: T, kind: dog chew bone, conforms: {statement} }}");
        rule.judges_kit(&[&tool]).outcome("one").to_owned()
    };
    for to in ["clause 7", "Clause7", "Harbour notice 9 clause 7", "\"Harbour notice 9, clause 7\""]
    {
        assert_eq!(outcome(to), "met", "{to}");
    }
    for to in ["Harbour notice 8 clause 7", "Harbour notice 9", "Harbour notice 9 clause 8"] {
        assert_eq!(outcome(to), "cannot-tell", "{to}");
    }
}

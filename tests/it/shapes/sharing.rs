//! Tools that count twice, spares, and parts of several tools:
//! `counting.yaml`, `spares.yaml`, `parts-shared-no.yaml` and `-yes.yaml`.

use super::{kit, made};
use crate::outfit::{Judged, Outfit, vessel};

const COUNTING: &str = "counting.yaml";
const INTERNAL: &str =
    "{ mark: DI-1, kind: long-handled dehooker for internal hooks, handle: 6 ft, end: j }";
const EXTERNAL: &str = "{ mark: DE-1, kind: long-handled dehooker for external hooks, handle: 8 ft, blunt-end: yes, end: j }";
const TWIST: &str = "{ mark: DE-1, kind: long-handled dehooker for external hooks, handle: 8 ft, blunt-end: yes, end: twist }";

#[test]
fn a_deemed_tool_serves_whatever_the_other_asks() {
    let judged = kit(COUNTING, &[INTERNAL]);
    assert_eq!((judged.outcome("internal"), judged.outcome("external")), ("met", "met"));
    assert_eq!(judged.through("external"), ["internal"]);
    let reverse = kit(COUNTING, &[EXTERNAL]);
    assert_eq!((reverse.outcome("internal"), reverse.outcome("external")), ("not-met", "met"));
}

#[test]
fn a_deemed_tool_may_have_to_be_of_a_style() {
    assert_eq!(kit(COUNTING, &[EXTERNAL]).outcome("inverted-v"), "met");
    assert_eq!(kit(COUNTING, &[TWIST]).outcome("inverted-v"), "not-met");
    let unsaid = "{ mark: DE-1, kind: long-handled dehooker for external hooks, handle: 8 ft, blunt-end: yes }";
    assert_eq!(kit(COUNTING, &[unsaid]).outcome("inverted-v"), "cannot-tell");
}

/// Where nobody knows whether the other's tool counts here too, nobody knows
/// whether the vessel is ready.
#[test]
fn a_vessel_is_not_ready_by_a_tool_that_may_not_count() {
    let rule = made(&[
        "id: hook, title: H, carry: 1 long-handled dehooker for external hooks",
        "id: device, title: D, carry: 1 boat hook, \
         met by the tool of: [{ requirement: hook, with: { end: j } }]",
    ]);
    let verdict = |end: &str| {
        let tool = format!("{{ mark: DE-1, kind: long-handled dehooker for external hooks{end} }}");
        rule.judges(&vessel("5 ft").with(&[tool])).verdict().to_owned()
    };
    assert_eq!(verdict(", end: j"), "ready");
    assert_eq!(verdict(""), "cannot-tell");
    assert_eq!(verdict(", end: twist"), "not-ready");
}

#[test]
fn a_deemed_tool_goes_no_further() {
    let judged = kit(COUNTING, &[INTERNAL]);
    assert_eq!((judged.outcome("external"), judged.outcome("inverted-v")), ("met", "not-met"));
    let both = kit(COUNTING, &[INTERNAL, EXTERNAL]);
    assert_eq!((both.outcome("external"), both.outcome("inverted-v")), ("met", "met"));
}

#[test]
fn a_tool_counts_once_where_nothing_else_is_written() {
    let one = kit(COUNTING, &["{ mark: PL-1, kind: pliers, overall: 11 in }"]);
    for id in ["plain-a", "plain-b"] {
        assert_eq!((one.outcome(id), one.codes(id)), ("not-met", vec!["one-of-these"]));
    }
    assert_eq!(one.verdict(), "not-ready");
    let clash = &one.only()["clashes"].as_array().unwrap();
    let plain = serde_json::json!(["plain-a", "plain-b"]);
    assert!(clash.iter().any(|clash| clash["requirements"] == plain), "{clash:?}");
}

#[test]
fn an_open_tool_for_two_requirements_makes_a_vessel_that_is_plainly_not_ready() {
    let gear = "{ mark: BC-1, kind: bolt cutters, overall: 14 in, cuts-hook: 1/4 in, count: 3 }";
    let long = [INTERNAL, EXTERNAL, gear];
    let unmeasured = "{ mark: PL-1, kind: pliers, condition: unknown }";
    let one = kit(COUNTING, &[&long[..], &[unmeasured]].concat());
    let clash = serde_json::json!(["plain-a", "plain-b"]);
    // Where it works and is short, the first has it; where it is long, both
    // compete for it.
    assert_eq!((one.verdict(), one.outcome("plain-a")), ("not-ready", "cannot-tell"));
    assert_eq!(one.outcome("plain-b"), "not-met");
    assert_eq!(one.only()["clashes"][0]["requirements"], clash);
    assert_eq!(one.only()["clashes"][0]["tools"], serde_json::json!(["PL-1"]));
    let two = kit(
        COUNTING,
        &[&long[..], &["{ mark: PL-1, kind: pliers, condition: unknown, count: 2 }"]].concat(),
    );
    assert_eq!(
        (two.verdict(), two.only()["clashes"].as_array().unwrap().len()),
        ("cannot-tell", 0)
    );
}

#[test]
fn the_best_assignment_is_found_and_not_the_first() {
    // In file order the long pair would serve `plain-a`, which any pair does.
    let pair = [
        "{ mark: PL-1, kind: pliers, overall: 11 in }",
        "{ mark: PL-2, kind: pliers, overall: 6 in }",
    ];
    for kit_in_order in [[pair[0], pair[1]], [pair[1], pair[0]]] {
        let judged = kit(COUNTING, &kit_in_order);
        assert_eq!(judged.tools("plain-a"), ["PL-2"]);
        assert_eq!(judged.tools("plain-b"), ["PL-1"]);
    }
}

fn bolt_cutters(mark: &str, overall: &str, cuts: &str) -> String {
    format!("{{ mark: {mark}, kind: bolt cutters, overall: {overall}, cuts-hook: {cuts} }}")
}

#[test]
fn a_shared_tool_must_fit_both() {
    let fits_both = kit(COUNTING, &[bolt_cutters("BC-1", "14 in", "1/4 in")]);
    assert_eq!(fits_both.outcome("share-b"), "met");
    let two = made(&[
        "id: share-a, title: A, carry: 1 bolt cutters, with: { overall: at least 14 in }",
        "id: share-b, title: B, carry: 1 bolt cutters, with: { cuts-hook: at least 1/4 in }, \
         may share the tool of: [share-a]",
    ]);
    let both = two.judges(&vessel("5 ft").with(&[bolt_cutters("BC-1", "14 in", "1/4 in")]));
    assert_eq!((both.outcome("share-a"), both.outcome("share-b")), ("met", "met"));
    let too_weak = kit(COUNTING, &[bolt_cutters("BC-1", "14 in", "1/8 in")]);
    assert_eq!(too_weak.outcome("share-b"), "not-met");
    let too_short = kit(COUNTING, &[bolt_cutters("BC-1", "12 in", "1/4 in")]);
    assert_eq!(too_short.outcome("share-a"), "not-met");
}

#[test]
fn sharing_does_not_chain() {
    let one = kit(COUNTING, &[bolt_cutters("BC-1", "14 in", "1/4 in")]);
    let ids = ["share-a", "share-b", "share-c"];
    // It serves the second and, through that, the first or the third.
    assert_eq!(ids.map(|id| one.outcome(id)), ["not-met", "met", "not-met"]);
    assert_eq!(one.codes("share-a"), ["one-of-these"]);
    let two = kit(
        COUNTING,
        &[bolt_cutters("BC-1", "14 in", "1/4 in"), bolt_cutters("BC-2", "6 in", "1/8 in")],
    );
    assert!(ids.iter().all(|id| two.outcome(id) == "met"), "{}", two.ran.page());
}

const SPARES: &str = "spares.yaml";

fn cutter(mark: &str, handle: &str) -> String {
    format!("{{ mark: {mark}, kind: long-handled line cutter, handle: {handle} }}")
}

fn blades(fits: &str) -> String {
    format!("{{ mark: BL-1, kind: set of replacement blades{fits} }}")
}

#[test]
fn spares_must_fit_the_tool_that_serves() {
    let good = kit(SPARES, &[cutter("LC-1", "6 ft"), blades(", fits: [LC-1]")]);
    assert_eq!((good.outcome("blades"), good.verdict()), ("met", "ready"));
    let other =
        kit(SPARES, &[cutter("LC-1", "6 ft"), cutter("LC-2", "5 ft"), blades(", fits: [LC-2]")]);
    assert_eq!((other.outcome("cutter"), other.outcome("blades")), ("met", "not-met"));
    assert_eq!(other.codes("blades"), ["fits-no-tool-in-use"]);
    assert_eq!(kit(SPARES, &[cutter("LC-1", "6 ft")]).outcome("blades"), "not-met");
}

#[test]
fn spares_that_name_no_tool_are_an_unknown_fit() {
    let judged = kit(SPARES, &[cutter("LC-1", "6 ft"), blades("")]);
    assert_eq!(
        (judged.outcome("blades"), judged.codes("blades")),
        ("cannot-tell", vec!["spare-fit-unknown"])
    );
}

#[test]
fn what_spares_fit_is_to_be_written_down() {
    let judged = kit(SPARES, &[cutter("LC-1", "6 ft"), blades("")]);
    let steps = judged.only()["way_to_ready"]["steps"].as_array().unwrap();
    assert_eq!(steps.len(), 1, "{steps:?}");
    assert_eq!(steps[0]["text"], "write down which tool BL-1 fits");
}

/// Blades that are mended fit no other cutter than before.
#[test]
fn mended_spares_fit_what_they_did() {
    let broken = blades(", fits: [LC-1], condition: broken");
    let way = |first: &str| {
        let judged = kit(SPARES, &[cutter("LC-1", first), cutter("LC-2", "8 ft"), broken.clone()]);
        let steps = judged.only()["way_to_ready"]["steps"].as_array().unwrap().clone();
        steps.iter().map(|step| step["text"].as_str().unwrap().to_owned()).collect::<Vec<_>>()
    };
    assert_eq!(way("6 ft"), ["repair BL-1"]);
    assert_eq!(way("5 ft"), ["bring a set of replacement blades"]);
}

#[test]
fn of_two_good_tools_the_one_with_spares_is_used() {
    let judged =
        kit(SPARES, &[cutter("LC-1", "6 ft"), cutter("LC-2", "7 ft"), blades(", fits: [LC-2]")]);
    assert_eq!(judged.verdict(), "ready");
    assert_eq!(judged.tools("cutter"), ["LC-2"]);
}

/// What is only recommended, or does not bind, leaves a tool to what does.
#[test]
fn a_tool_goes_to_what_is_required() {
    let judged_on = |vessel: &Outfit, first: &str| {
        let first = format!("id: first, title: F, carry: 1 pliers, {first}");
        let rule = made(&[first.as_str(), "id: second, title: S, carry: 1 pliers"]);
        let judged = rule.judges(vessel);
        let outcomes = ["first", "second"].map(|id| judged.outcome(id).to_owned());
        (outcomes, judged.verdict().to_owned())
    };
    let vessel = vessel("5 ft").with(&["{ mark: PL-1, kind: pliers }"]);
    let judged = |first: &str| judged_on(&vessel, first);
    let both = |first: &str, second: &str, verdict: &str| {
        ([first.to_owned(), second.to_owned()], verdict.to_owned())
    };
    assert_eq!(judged("level: recommended"), both("not-met", "met", "ready"));
    assert_eq!(judged("when: { wheelhouse: no }"), both("unbound", "met", "ready"));
    assert_eq!(judged("when: { wheelhouse: yes }"), both("not-met", "not-met", "not-ready"));
    // Where nobody knows whether the first binds, the second may have it all.
    let unsaid = vessel.clone().unsaid("features");
    assert_eq!(judged_on(&unsaid, "when: { wheelhouse: yes }").1, "cannot-tell");
}

/// Two pairs of requirements compete, each for one tool: both are told.
#[test]
fn every_clash_is_told_once() {
    let both = kit(COUNTING, &["{ mark: PL-1, kind: pliers, overall: 11 in }"]);
    let clashes = |judged: &Judged| {
        let clashes = judged.only()["clashes"].as_array().unwrap().clone();
        clashes.iter().map(|clash| clash["requirements"].to_string()).collect::<Vec<_>>()
    };
    assert_eq!(clashes(&both), [r#"["plain-a","plain-b"]"#]);
    let pairs = made(&[
        "id: one, title: One, carry: 1 pliers",
        "id: two, title: Two, carry: 1 pliers",
        "id: three, title: Three, carry: 1 tire",
        "id: four, title: Four, carry: 1 tire",
    ]);
    let tools = ["{ mark: PL-1, kind: pliers }", "{ mark: TI-1, kind: tire }"];
    let pairs = pairs.judges(&vessel("3 ft to 5 ft").with(&tools));
    assert_eq!(clashes(&pairs), [r#"["three","four"]"#, r#"["one","two"]"#]);
}

/// Three requirements for two tools: each two of them could be met.
#[test]
fn a_clash_may_be_of_three() {
    let three = ["one", "two", "three"].map(|id| format!("id: {id}, title: {id}, carry: 1 pliers"));
    let pliers = ["{ mark: PL-1, kind: pliers }", "{ mark: PL-2, kind: pliers }"];
    let judged = made(&three).judges(&vessel("5 ft").with(&pliers));
    let clashes = &judged.only()["clashes"];
    assert_eq!(clashes[0]["requirements"], serde_json::json!(["one", "two", "three"]), "{clashes}");
    assert_eq!(clashes[0]["tools"].as_array().unwrap().len(), 2, "{clashes}");
}

/// Of a range of freeboards the clash is looked for where something fails.
#[test]
fn a_clash_is_found_at_the_freeboards_where_it_is() {
    let rule = made(&[
        "id: always, title: Always, carry: 1 pliers",
        "id: low, title: Low, carry: 1 pliers, when: { freeboard: 4 ft or less }",
    ]);
    let judged = rule.judges(&vessel("3 ft to 6 ft").with(&["{ mark: PL-1, kind: pliers }"]));
    assert_eq!((judged.outcome("always"), judged.outcome("low")), ("not-met", "not-met"));
    let clashes = &judged.only()["clashes"];
    assert_eq!(clashes[0]["requirements"], serde_json::json!(["always", "low"]), "{clashes}");
}

/// Of a lot and a single cutter, both too short, that one is lengthened which
/// the blades fit: then nothing has to be brought.
#[test]
fn spares_fit_a_lot_that_is_mended() {
    let rule = made(&[
        "id: pliers, title: P, carry: 1 pliers",
        "id: cutter, title: C, carry: 1 long-handled line cutter, with: { handle: at least 6 ft }",
        "id: blades, title: B, carry: 1 set of replacement blades, spare for: cutter",
    ]);
    let lot = "{ mark: LC-1, kind: long-handled line cutter, count: 2, handle: 5 ft }".to_owned();
    let single = cutter("LC-2", "5 ft");
    let way = |cutters: [&String; 2], fits: &str| {
        let blades = blades(&format!(", fits: [{fits}]"));
        let kit = [cutters[0], cutters[1], &blades];
        let judged = rule.judges(&vessel("5 ft").with(&kit));
        let steps = judged.only()["way_to_ready"]["steps"].as_array().unwrap().clone();
        steps.iter().map(|step| step["text"].as_str().unwrap().to_owned()).collect::<Vec<_>>()
    };
    for cutters in [[&lot, &single], [&single, &lot]] {
        for mark in ["LC-1", "LC-2"] {
            let lengthen = format!("lengthen {mark} to a handle of at least 6 ft (1.829 m)");
            let bring = "bring long-nose or needle-nose pliers".to_owned();
            assert_eq!(way(cutters, mark), [bring, lengthen], "{cutters:?}");
        }
    }
}

#[test]
fn two_heads_on_one_handle_count_once_unless_the_profile_allows_it() {
    let heads = |parts: [&str; 2]| {
        [
            format!("{{ mark: LC-1, kind: long-handled line cutter, parts: [{}] }}", parts[0]),
            format!("{{ mark: BH-1, kind: boat hook, parts: [{}] }}", parts[1]),
        ]
    };
    let one_handle = heads(["POLE-1", "POLE-1"]);
    let strict = kit("parts-shared-no.yaml", &one_handle);
    assert_eq!(strict.verdict(), "not-ready");
    let codes = [strict.codes("cutter"), strict.codes("hook")].concat();
    assert_eq!(codes, ["part-in-use", "part-in-use"]);
    assert_eq!(kit("parts-shared-yes.yaml", &one_handle).verdict(), "ready");
    assert_eq!(kit("parts-shared-no.yaml", &heads(["POLE-1", "POLE-2"])).verdict(), "ready");
}

/// Of two boat hooks one is the line cutter's pole; the other serves by
/// itself. One alone cannot do both, nor can two with two poles in use.
#[test]
fn of_a_lot_one_may_be_a_part_while_another_serves() {
    let hooks = |count: u32| format!("{{ mark: BH-1, kind: boat hook, count: {count} }}");
    let cutter =
        |mark: &str| format!("{{ mark: {mark}, kind: long-handled line cutter, parts: [BH-1] }}");
    let one = |count| kit("parts-shared-no.yaml", &[hooks(count), cutter("LC-1")]);
    assert_eq!(one(2).verdict(), "ready");
    assert_eq!(one(1).verdict(), "not-ready");
    let alone = one(1);
    let codes = [alone.codes("cutter"), alone.codes("hook")].concat();
    assert_eq!(codes, ["one-of-these", "one-of-these"]);

    let rule = made(&[
        "id: cutter, title: Cutters, carry: 2 long-handled line cutters",
        "id: hook, title: Boat hook, carry: 1 boat hook",
    ]);
    let both = |count| {
        rule.judges(&vessel("5 ft").with(&[&hooks(count), &cutter("LC-1"), &cutter("LC-2")]))
    };
    assert_eq!(both(3).verdict(), "ready");
    for count in [1, 2] {
        let judged = both(count);
        assert_eq!(judged.verdict(), "not-ready");
        // With two either can be met; with one the cutters cannot.
        let wanted = if count == 2 { ["not-met", "not-met"] } else { ["not-met", "met"] };
        assert_eq!(["cutter", "hook"].map(|id| judged.outcome(id)), wanted);
        assert!(!judged.codes("cutter").is_empty());
    }
}

/// Conditions under which a requirement is not asked of a bare vessel.
const NOT_ASKED: [&str; 3] =
    ["when: { wheelhouse: no }", "unless: { wheelhouse: yes }", "until: 2026-03-01"];

/// What another requirement's tool may serve is met by a tool of its own
/// where that other one is not asked, wherever it stands in the file.
#[test]
fn a_requirement_that_is_not_asked_lends_nothing_and_takes_nothing() {
    let leaning = ["met by the tool of: head", "may share the tool of: [head]"];
    let tool = "{ mark: PL-1, kind: pliers }";
    for condition in NOT_ASKED {
        let head = format!("id: head, title: H, carry: 1 pliers, {condition}");
        for leans in leaning {
            let leaner = format!("id: leaner, title: L, carry: 1 pliers, {leans}");
            for order in [[&head, &leaner], [&leaner, &head]] {
                let rule = made(&order);
                let outcome = |kit: &[&str]| {
                    let judged = rule.judges(&vessel("5 ft").with(kit));
                    assert_eq!(judged.outcome("head"), "unbound", "{condition}");
                    let reasons = judged.codes("leaner").iter().map(|c| (*c).to_owned()).collect();
                    (judged.outcome("leaner").to_owned(), reasons)
                };
                let none: Vec<String> = Vec::new();
                assert_eq!(outcome(&[tool]), ("met".to_owned(), none), "{condition}, {leans}");
                let missing = vec!["nothing-aboard".to_owned()];
                assert_eq!(outcome(&[]), ("not-met".to_owned(), missing), "{condition}, {leans}");
            }
        }
    }
}

/// Spares are asked where what they are for is, wherever it stands in the
/// file.
#[test]
fn spares_for_what_is_not_asked_are_not_asked() {
    for condition in NOT_ASKED {
        let head = format!("id: head, title: H, carry: 1 long-handled line cutter, {condition}");
        let spares = "id: spares, title: S, carry: 1 set of replacement blades, spare for: head";
        let other = "id: other, title: O, carry: 1 pliers";
        for order in [[head.as_str(), spares, other], [spares, other, head.as_str()]] {
            let judged =
                made(&order).judges(&vessel("5 ft").with(&["{ mark: PL-1, kind: pliers }"]));
            assert_eq!((judged.requirements(), judged.verdict()), (vec!["other"], "ready"));
        }
    }
    // Where nobody knows whether it is asked, nobody knows it of the spares.
    let rule = made(&[
        "id: head, title: H, carry: 1 long-handled line cutter, when: { wheelhouse: yes }",
        "id: spares, title: S, carry: 1 set of replacement blades, spare for: head",
    ]);
    let unsaid = rule.judges(&vessel("5 ft").unsaid("features"));
    assert_eq!((unsaid.outcome("spares"), unsaid.verdict()), ("cannot-tell", "cannot-tell"));
}

//! The shortest way to ready: which deed puts a thing right, for which
//! requirement, and what is no step at all.

use super::{by, made};
use crate::outfit::{Judged, Outfit, vessel};

/// The steps, each with its deed, its requirement and its words.
fn steps(judged: &Judged) -> Vec<String> {
    let way = &judged.only()["way_to_ready"];
    let told = |step: &serde_json::Value| {
        let text = |key: &str| step[key].as_str().unwrap_or_default().to_owned();
        format!("{} {}: {}", text("deed"), text("requirement"), text("text"))
    };
    way["steps"].as_array().unwrap().iter().map(told).collect()
}

/// The steps under a profile of these requirements.
fn under<S: AsRef<str>>(vessel: &Outfit, requirements: &[S]) -> Vec<String> {
    steps(&made(requirements).judges(vessel))
}

const PLIERS: &str =
    "id: pliers, title: Pliers, carry: 1 pliers, with: { overall: at least 11 in }";

/// The steps for pliers of 11 in, with this tool aboard.
fn for_pliers(tool: &str) -> Vec<String> {
    under(&vessel("5 ft").with(&[tool]), &[PLIERS])
}

#[test]
fn what_lies_ashore_is_brought_aboard() {
    let bring = ["bring-aboard pliers: bring PL-1 aboard"];
    let pliers = "{ mark: PL-1, kind: pliers, overall: 11 in";
    assert_eq!(for_pliers(&format!("{pliers}, acquired: 2026-03-03 }}")), bring);
    assert_eq!(for_pliers(&format!("{pliers}, acquired: 2026-03-02 }}")), [""; 0]);
    assert_eq!(
        for_pliers(&format!("{pliers}, condition: broken }}")),
        ["repair pliers: repair PL-1"]
    );
}

/// A step is for what is required; what is recommended, or does not bind,
/// asks for no fact either.
#[test]
fn nothing_is_asked_for_what_is_recommended_only() {
    let tire = |level: &str| {
        let tire = "title: Tire, carry: 1 tire, when: { wheelhouse: no }";
        [PLIERS.to_owned(), format!("id: tire, {tire}, level: {level}")]
    };
    let unsaid = vessel("5 ft").unsaid("features");
    let bring = "acquire pliers: bring long-nose or needle-nose pliers: overall length at least \
                 11 in (280 mm)";
    assert_eq!(under(&unsaid, &tire("recommended")), [bring]);
    let required = under(&unsaid, &tire("required"));
    assert_eq!(required[0], "measure tire: write down whether the vessel has a wheelhouse");
    assert_eq!(under(&vessel("5 ft"), &tire("required")), [bring]);
}

#[test]
fn a_disputed_freeboard_is_measured_again() {
    let readings = "[{ value: 4 ft, by: A. Holder, on: 2026-01-05 }, { value: 4 ft 6 in, by: B. Mate, on: 2026-01-06 }]";
    let cutter = "{ mark: LC-1, kind: long-handled line cutter, handle: 6 ft 6 in }";
    let told = steps(&by("plain.yaml", &vessel(readings).with(&[cutter])));
    assert_eq!(
        told[0],
        "measure cutter: measure the freeboard again from the top of the rail to the water, and \
         strike out the wrong reading"
    );
    assert!(told.iter().all(|step| !step.contains("LC-1")), "{told:?}");
}

#[test]
fn a_hook_that_nobody_measured_is_measured() {
    let tools = [
        "{ mark: T-1, kind: bolt cutters, cuts-hook: 6 mm }",
        "{ mark: T-2, kind: long-handled line cutter, cuts-monofilament: 2.1 mm }",
        "{ mark: T-3, kind: monofilament line cutters, cuts-monofilament: 2.1 mm }",
    ];
    let hooks = "[{ name: a, type: circle, size: 16/0, offset: 0 degrees }]";
    let told = steps(&by("own-gear.yaml", &vessel("5 ft").set("hooks", hooks).with(&tools)));
    let write = "write down every kind of hook aboard, with type and wire of each";
    assert_eq!(told, [format!("measure cuts-hook: {write}")]);
}

/// What is to be looked up of one tool is one step, with all of it.
#[test]
fn all_that_is_not_known_of_a_tool_is_told_at_once() {
    let rule = "id: one, title: One, carry: 1 dip net, with: { handle: at least 6 ft, hoop-inside: at least 31 in }";
    let net = vessel("5 ft").with(&["{ mark: DN-1, kind: dip net }"]);
    let told = under(&net, &[rule]);
    assert_eq!(told.len(), 1, "{told:?}");
    assert!(told[0].contains("at least 6 ft") && told[0].contains("at least 31 in"), "{told:?}");
}

/// A hoop is no handle: it is not made longer.
#[test]
fn only_what_can_be_lengthened_is() {
    let of = |tool: &str, kind: &str, attribute: &str| {
        let limit = format!("{{ {attribute}: at least 50% of freeboard }}");
        let requirement = format!("id: one, title: One, carry: 1 {kind}, with: {limit}");
        under(&vessel("5 ft").with(&[tool]), &[requirement])
    };
    let net = of("{ mark: DN-1, kind: dip net, hoop-inside: 20 in }", "dip net", "hoop-inside");
    assert_eq!(net, ["acquire one: bring a dip net: hoop at least 2 ft 6 in (762 mm)"]);
    let handle = of("{ mark: DN-1, kind: dip net, handle: 20 in }", "dip net", "handle");
    assert_eq!(handle, ["lengthen one: lengthen DN-1 to a handle of at least 2 ft 6 in (762 mm)"]);
}

/// What nobody measured is to be held against what the highest rail asks.
#[test]
fn what_is_to_be_measured_is_told_for_the_worst_of_a_range() {
    let cutter = "{ mark: LC-1, kind: long-handled line cutter }";
    let told = steps(&by("plain.yaml", &vessel("3 ft to 5 ft").with(&[cutter])));
    assert_eq!(
        told[0],
        "measure cutter: measure the handle of LC-1; it must be at least 7 ft 6 in (2.286 m)"
    );
}

#[test]
fn a_paper_that_is_missing_is_carried_or_posted() {
    let told = steps(&by("alternatives.yaml", &vessel("5 ft")));
    let document = "carry or post a careful-release document: place wheelhouse";
    assert!(told.contains(&format!("document document: {document}")), "{told:?}");
    assert!(told.iter().any(|step| step.starts_with("acquire three-gags: bring 3")), "{told:?}");
}

#[test]
fn papers_aboard_are_seen_to_and_not_carried_twice() {
    let papers = [
        "{ kind: handling placard, state: aboard }",
        "{ kind: careful-release document, form: paper }",
    ];
    let told = steps(&by("plain.yaml", &vessel("5 ft").carrying(&papers)));
    let of = |requirement: &str| {
        told.iter()
            .filter(|step| step.contains(requirement))
            .map(String::as_str)
            .collect::<Vec<_>>()
    };
    assert_eq!(of("placard"), ["document placard: see to DOC-1: state posted"]);
    assert_eq!(
        of(" document:"),
        ["measure document: look at DOC-2 and write down: state aboard or posted"]
    );
}

/// What one tool that is brought serves besides stands with its step.
#[test]
fn a_tool_that_is_brought_for_two_requirements_is_one_step() {
    let judged = by("counting.yaml", &vessel("5 ft"));
    let way = judged.only()["way_to_ready"]["steps"].as_array().unwrap();
    let also: Vec<_> =
        way.iter().map(|step| (&step["requirement"], step["also"].clone())).collect();
    assert_eq!(also[0], (&"internal".into(), serde_json::json!(["external"])), "{also:?}");
    assert!(also.iter().all(|(requirement, _)| **requirement != "external"), "{also:?}");
    let one = "bring a long-handled dehooker for internal hooks: handle at least 6 ft (1.829 m)";
    assert_eq!(way[0]["text"], one);
}

/// An alternative that is not open to the vessel is neither brought nor named.
#[test]
fn what_is_brought_is_an_alternative_that_is_open() {
    let one = "id: one, title: One, carry: 1, one of: [\
               { kind: tire, when: { wheelhouse: no } }, { kind: pliers }, { kind: boat hook }]";
    let bring = "acquire one: bring long-nose or needle-nose pliers - or a long-handled device to \
                 pull an inverted V";
    assert_eq!(under(&vessel("5 ft"), &[one]), [bring]);
}

fn two_lengths(tools: &[&str]) -> Vec<String> {
    let requirements = [
        "id: two, title: Two, carry: 2 long-handled line cutters, with: { handle: at least 6 ft }",
        "id: long, title: Long, carry: 1 long-handled line cutter, with: { handle: at least 7 ft }",
    ];
    under(&vessel("5 ft").with(tools), &requirements)
}

/// A lot is made into one length: what it cannot be at once is another's.
#[test]
fn a_lot_is_mended_for_one_requirement() {
    let three = "{ mark: LC-1, kind: long-handled line cutter, count: 3, handle: 5 ft }";
    let lengthen = "lengthen two: lengthen LC-1 to a handle of at least 6 ft (1.829 m)";
    assert_eq!(
        two_lengths(&[three]),
        [
            lengthen,
            "acquire long: bring a long-handled line cutter: handle at least 7 ft (2.134 m)"
        ]
    );
    let two = "{ mark: LC-2, kind: long-handled line cutter, count: 2, handle: 5 ft }";
    assert_eq!(
        two_lengths(&[three, two]),
        [lengthen, "lengthen long: lengthen LC-2 to a handle of at least 7 ft (2.134 m)"]
    );
    let doubtful = "{ mark: LC-2, kind: long-handled line cutter, count: 2, handle: 8 ft, condition: unknown }";
    assert_eq!(
        two_lengths(&[three, doubtful]),
        [lengthen, "measure long: try out whether LC-2 works, and write it down"]
    );
}

/// Two that are brought for one requirement are one change, so that mending
/// two others is no shorter way.
#[test]
fn the_fewest_changes_go_before_the_cheapest() {
    let two = PLIERS.replace("carry: 1", "carry: 2");
    let requirements = [two.as_str(), "id: b, title: B, carry: 1 pliers"];
    let tools = [
        "{ mark: P1, kind: pliers, overall: 9 in }",
        "{ mark: P2, kind: pliers, overall: 11 in, condition: broken }",
        "{ mark: P3, kind: pliers, overall: 12 in, condition: unknown }",
    ];
    let told = under(&vessel("5 ft").with(&tools), &requirements);
    assert_eq!(
        told,
        [
            "acquire pliers: bring 2 of: long-nose or needle-nose pliers: overall length at least 11 in (280 mm)"
        ]
    );
}

/// Whether the way is the fewest is told by whether one freeboard alone asks
/// as much.
#[test]
fn the_way_for_a_range_says_whether_it_is_the_fewest() {
    let way = |low: &str, high: &str| {
        let requirements = [
            format!("id: low, title: L, carry: 1 pliers, {low}when: {{ freeboard: 4 ft or less }}"),
            format!(
                "id: high, title: H, carry: 1 pliers, {high}when: {{ freeboard: more than 4 ft }}"
            ),
        ];
        let judged = made(&requirements).judges(&vessel("3 ft to 6 ft"));
        let way = &judged.only()["way_to_ready"];
        (way["steps"].as_array().unwrap().len(), way["fewest"].clone())
    };
    assert_eq!(way("", ""), (1, true.into()));
    let apart = way("with: { overall: at least 11 in }, ", "with: { overall: at most 9 in }, ");
    assert_eq!(apart, (2, false.into()));
}

/// A step is for what binds at the vessel's own freeboard, not a hair below.
#[test]
fn a_step_is_for_a_requirement_that_binds() {
    let told = under(
        &vessel("4 ft"),
        &[
            "id: below, title: B, carry: 1 pliers, when: { freeboard: less than 4 ft }",
            "id: from, title: F, carry: 1 pliers, when: { freeboard: 4 ft or more }",
        ],
    );
    assert_eq!(told, ["acquire from: bring long-nose or needle-nose pliers"]);
}

/// A tool that is brought for one requirement and counts for another is as
/// the other asks it to be.
#[test]
fn a_tool_that_counts_elsewhere_too_is_brought_as_that_asks() {
    let rule = made(&[
        "id: hook, title: H, carry: 1 long-handled dehooker for external hooks",
        "id: device, title: D, carry: 1 boat hook, \
         met by the tool of: [{ requirement: hook, with: { end: j } }]",
    ]);
    let judged = rule.judges(&vessel("5 ft"));
    let way = &judged.only()["way_to_ready"];
    assert_eq!(way["steps"].as_array().unwrap().len(), 1, "{way}");
    let step = &way["steps"][0];
    assert_eq!(
        (&step["requirement"], &step["also"]),
        (&"hook".into(), &serde_json::json!(["device"]))
    );
    assert_eq!(
        step["text"],
        "bring a long-handled dehooker for external hooks - end J, to count for `D` too"
    );
}

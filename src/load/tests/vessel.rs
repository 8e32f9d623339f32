//! Tests of the path from a vessel's file to the model, on small texts of
//! their own.

use crate::load::library::Library;
use crate::load::read::problem::{Problem, Refusal};
use crate::load::{MOST_TOOLS, read_vessel};
use crate::measure::Day;
use crate::model::profile::FreeboardFrom;
use crate::model::vessel::{Datum, How, State, Tool, Vessel, Whereabouts};
use crate::model::vocabulary::Vocabulary;

pub(crate) const WORDS: &str = "\
format: vocabulary/1
attributes:
  handle: { quantity: length, lengthens: yes }
  overall: { quantity: length }
  material: { quantity: choice, words: [316L, 304L] }
  protected-blade: { quantity: feature }
  edition: { quantity: name }
  state: { quantity: choice, words: [aboard, posted, copy, lost] }
  type: { quantity: choice, words: [circle, j] }
  size: { quantity: hook size }
  wire: { quantity: length }
  diameter: { quantity: length }
kinds:
  long-line-cutter: { name: long-handled line cutter, also: [line clipper], attributes: [handle, protected-blade, material] }
  pliers: { attributes: [overall, material] }
  replacement-blades: { class: spare }
  careful-release-document: { class: document, attributes: [edition, state] }
  hook: { class: gear, attributes: [type, size, wire] }
  fishing-line: { class: gear, attributes: [diameter] }
  workshop-certificate: { class: certificate }
permits: { reef-fish: reef fish }
gear:
  pelagic-longline: { name: pelagic longline, counts as: [longline] }
  longline: { name: longline, counts as: [line-gear] }
  line-gear: lines
areas: { gulf: the Gulf, atlantic: the Atlantic }
vessel features: { wheelhouse: a wheelhouse }
changes: { lengthened: [handle], repaired: [], head replaced: all }
";

pub(crate) const VESSEL: &str = "\
format: vessel/1
name: Example
register: PA-001
declared: { by: A. Person, on: 2026-02-01, figures: measured, condition: serviceable }
freeboard: 4 ft 3 in
permits: [reef-fish]
gear: [pelagic-longline]
areas: [gulf]
features: { wheelhouse: yes }
trip: { depart: 2026-03-02, return: 2026-03-09 }
kit:
  - mark: LC-1
    kind: long-handled line cutter
    handle: 6 ft 4 1/2 in
    protected-blade: yes
    material: 316L
    stowed: port rail rack
  - mark: PL-1
    kind: pliers
    count: 3
    broken: 1
    overall: 11 in
  - mark: RB-1
    kind: replacement blades
    fits: [LC-1]
documents:
  - kind: careful-release document
    edition: \"2019\"
    state: posted
hooks:
  - { name: circle hooks, type: circle, size: 16/0, wire: 5 mm, count: 400 }
lines:
  - { name: mainline, diameter: 2.1 mm }
people:
  - name: A. Person
    roles: [owner, Operator]
    certificates: [{ kind: workshop certificate, issued: 2025-01-10, expires: 2028-01-10, number: 007 }]
";

pub(crate) fn words() -> Vocabulary {
    let library = Library::from_texts(&[("vocabulary.yaml", WORDS)]).unwrap();
    (*library.vocabulary).clone()
}

fn vessel(text: &str) -> Result<Vessel, Refusal> {
    read_vessel("v.yaml", text, &words()).map(|(vessel, _)| vessel)
}

/// The example with one piece replaced.
fn with(from: &str, to: &str) -> Result<Vessel, Refusal> {
    assert!(VESSEL.contains(from), "{from}");
    vessel(&VESSEL.replacen(from, to, 1))
}

pub(crate) fn day(text: &str) -> Option<Day> {
    Some(Day::parse(text).unwrap())
}

fn reading<'t>(tool: &'t Tool, key: &str) -> &'t [crate::model::vessel::Reading] {
    tool.readings(words().find_attribute(key).unwrap())
}

#[test]
fn a_vessel_is_read() {
    let vessel = vessel(VESSEL).unwrap();
    let marks: Vec<_> = vessel.kit.iter().map(|tool| tool.mark.as_str()).collect();
    assert_eq!(marks, ["LC-1", "PL-1", "PL-1 (broken)", "RB-1", "DOC-1"]);
    assert_eq!(vessel.kit.iter().map(|t| t.count).collect::<Vec<_>>(), [1, 2, 1, 1, 1]);
    assert_eq!(vessel.kit[2].state, State::Broken);
    assert_eq!(vessel.gears.as_deref().unwrap(), ["pelagic-longline", "longline", "line-gear"]);
    let handle = &reading(&vessel.kit[0], "handle")[0];
    assert_eq!((handle.by.as_deref(), handle.on), (Some("A. Person"), day("2026-02-01")));
    assert_eq!(handle.how, How::Measured);
    let Datum::Figure(figure) = &handle.datum else { panic!("no figure") };
    assert_eq!(figure.written, "6 ft 4 1/2 in");
    assert_eq!(reading(&vessel.kit[0], "material")[0].datum, Datum::Word("316L".into()));
    assert_eq!(reading(&vessel.kit[4], "edition")[0].datum, Datum::Word("2019".into()));
    assert_eq!(vessel.kit[4].state, State::Serviceable);
    assert!(vessel.features["wheelhouse"]);
    assert_eq!(vessel.hooks.as_ref().unwrap()[0].tool.count, 400);
    assert_eq!(vessel.lines.as_ref().unwrap()[0].name, "mainline");
    let person = &vessel.people.as_ref().unwrap()[0];
    assert_eq!(person.roles, ["owner", "operator"]);
    assert_eq!(person.certificates[0].number.as_deref(), Some("007"));
    assert!(vessel.coverage.everything);
    assert_eq!(vessel.freeboard.stations.len(), 1);
}

#[test]
fn everything_that_is_wrong_is_told_where_it_stands() {
    let cases = [
        (
            "handle: 6 ft 4 1/2 in",
            "handle: 6",
            "v.yaml:14:13: kit[0].handle: `6`: a figure without its unit; expected a length with its unit, like `6 ft 4 1/2 in` or `1.83 m`; write `6 ft` or `6 m`, whichever was measured",
        ),
        ("handle: 6 ft 4 1/2 in", "handle: 0x10", "`0x10`: `x` is not a unit"),
        ("handle: 6 ft 4 1/2 in", "handle: 1.830", "`1.830`: a figure without its unit"),
        (
            "handle: 6 ft 4 1/2 in",
            "hnadle: 6 ft",
            "v.yaml:14:5: kit[0].hnadle: `hnadle`: no such key or attribute is known here; did you mean `handle`?",
        ),
        ("stowed: port", "stoewd: port", "did you mean `stowed`"),
        (
            "handle: 6 ft 4 1/2 in",
            "overall: 6 ft",
            "`long-handled line cutter` has no such attribute",
        ),
        (
            "    protected-blade: yes",
            "    handle: 7 ft",
            "v.yaml:15:5: kit[0].handle: `handle`: this key is written twice (first in line 14)",
        ),
        ("    protected-blade: yes", "    Handle: 7 ft", "this attribute is written twice"),
        ("protected-blade: yes", "protected-blade: perhaps", "neither yes nor no"),
        ("material: 316L", "material: 306L", "did you mean `316L`"),
        ("kind: pliers", "kind: plyers", "did you mean `pliers`"),
        ("kind: pliers", "kind: workshop certificate", "write a certificate under the person"),
        ("broken: 1", "broken: 4", "a whole number from 0 to 3"),
        ("count: 3", "count: 3.5", "`3.5`: this is not a whole number"),
        ("mark: PL-1", "mark: LC-1", "another tool has this mark too"),
        ("  - mark: PL-1\n    kind", "  - kind", "`mark` is missing"),
        ("fits: [LC-1]", "fits: [LC-7]", "no tool of the vessel has this mark"),
        (
            "fits: [LC-1]",
            "fits: LC-1",
            "kit[2].fits: `LC-1`: plain text stands here; expected a list; write it in brackets, like `[LC-1]`",
        ),
        ("return: 2026-03-09", "return: 2026-03-01", "the return lies before the departure"),
        ("freeboard: 4 ft 3 in", "freeboard: 0 ft", "a freeboard of zero"),
        ("freeboard: 4 ft 3 in", "freeboard: 5 ft to 4 ft", "the range ends below its beginning"),
        ("freeboard: 4 ft 3 in", "freeboard: 4", "write `4 ft` or `4 m`"),
        ("[reef-fish]", "[reef-fihs]", "did you mean `reef-fish`"),
        ("wheelhouse: yes", "weelhouse: yes", "did you mean `wheelhouse`"),
        ("size: 16/0", "size: 16-0", "a trade hook size"),
        ("roles: [owner", "roles: [owmer", "did you mean `owner`"),
        ("expires: 2028-01-10", "expires: 2024-01-10", "it expires before it was issued"),
        ("on: 2026-02-01", "on: 2026-02-30", "no such day in the calendar"),
        ("figures: measured", "figures: measuerd", "did you mean `measured`"),
        ("name: Example\n", "", "`name` is missing"),
        (
            "register:",
            "registre:",
            "v.yaml:3:1: registre: `registre`: no such key is known here; did you mean `register`?",
        ),
        ("kit:\n", "kitt:\n", "did you mean `kit`"),
        (
            "features: { wheelhouse: yes }",
            "features: [wheelhouse]",
            "a list stands here; expected a group",
        ),
    ];
    for (from, to, told) in cases {
        let refusal = with(from, to).map(|_| panic!("{to}")).unwrap_err();
        assert!(refusal.to_string().contains(told), "{to}:\n{refusal}");
        assert_eq!(refusal.problems.len(), 1, "{to}:\n{refusal}");
        assert!(refusal.problems[0].position.is_some(), "{to}:\n{refusal}");
    }
}

#[test]
fn all_problems_of_a_file_are_told_at_once_and_in_order() {
    let text = VESSEL
        .replace("handle: 6 ft 4 1/2 in", "handle: 6")
        .replace("count: 3", "cuont: 3")
        .replace("register: PA-001", "register: [1]")
        .replace("2026-03-09", "soon")
        .replace("  - { name: mainline, diameter: 2.1 mm }", "  - mainline");
    let refusal = vessel(&text).unwrap_err();
    let told = |p: &Problem| (p.position.unwrap().line, p.wording().what);
    let lines: Vec<_> = refusal.problems.iter().map(told).collect();
    let expected = [
        (3, "a list stands here"),
        (10, "this is not a day"),
        (14, "a figure without its unit"),
        (20, "no such key or attribute is known here"),
        (33, "plain text stands here"),
    ];
    assert_eq!(lines, expected.map(|(line, what)| (line, what.to_owned())));
}

#[test]
fn what_is_not_known_is_no_reading() {
    let vessel = with(
        "    handle: 6 ft 4 1/2 in\n    protected-blade: yes\n    material: 316L\n",
        "    handle:\n    protected-blade: unknown\n    material: { value: }\n",
    )
    .unwrap();
    assert!(vessel.kit[0].attributes.is_empty());
    let vessel = with("features: { wheelhouse: yes }", "features: { wheelhouse: }").unwrap();
    assert!(vessel.features.is_empty());
    for text in ["freeboard: unknown", "freeboard:", "# none"] {
        assert!(with("freeboard: 4 ft 3 in", text).unwrap().freeboard.stations.is_empty());
    }
}

#[test]
fn longer_forms_of_a_figure_are_read() {
    let vessel = with(
        "handle: 6 ft 4 1/2 in",
        "handle:\n      - { value: 6 ft 4 in, by: B. Other, on: 2026-02-03, how: label, error: 1/8 in }\n      - 6 ft 5 in\n      - { value: 6 ft 6 in, by: B. Other }\n      - { value: 6 ft 7 in, error: 1 mm }\n      - { value: 6 ft 8 in, by: A. Person }",
    )
    .unwrap();
    let readings = reading(&vessel.kit[0], "handle");
    let told: Vec<_> = readings.iter().map(|r| (r.by.as_deref(), r.on, r.how)).collect();
    assert_eq!(
        told,
        [
            (Some("B. Other"), day("2026-02-03"), How::Label),
            (Some("A. Person"), day("2026-02-01"), How::Measured),
            (Some("B. Other"), None, How::Measured),
            (Some("A. Person"), day("2026-02-01"), How::Measured),
            (Some("A. Person"), day("2026-02-01"), How::Measured),
        ]
    );
    assert_eq!(readings[0].error.as_ref().unwrap().written, "1/8 in");
}

#[test]
fn a_change_retires_the_readings_before_it() {
    let changed = |what: &str, on: &str| {
        let to = format!("stowed: rack\n    changes: [{{ what: {what}, on: {on} }}]");
        with("stowed: port rail rack", &to).unwrap().kit.swap_remove(0)
    };
    assert_eq!(changed("lengthened", "2026-02-01").attributes.len(), 2);
    assert_eq!(changed("lengthened", "2026-01-31").attributes.len(), 3);
    assert_eq!(changed("repaired", "2026-02-01").attributes.len(), 3);
    assert_eq!(changed("head replaced", "2026-02-02").attributes.len(), 0);
    let undated = VESSEL
        .replace("on: 2026-02-01, figures", "figures")
        .replace("stowed: port rail rack", "changes: [{ what: lengthened, on: 2020-01-01 }]");
    assert_eq!(vessel(&undated).unwrap().kit[0].attributes.len(), 2);
    let refusal = with("stowed: port rail rack", "changes: [{ what: lengthend, on: 2026-01-01 }]");
    assert!(refusal.unwrap_err().to_string().contains("did you mean `lengthened`"));
}

#[test]
fn a_new_head_voids_the_statements_up_to_its_day() {
    let left = |stated: &str, changes: &[(&str, &str)]| {
        let changes: Vec<_> =
            changes.iter().map(|(what, on)| format!("{{ what: {what}, on: {on} }}")).collect();
        let to = format!(
            "conforms: [{{ to: clause 7, on: {stated} }}]\n    changes: [{}]",
            changes.join(", ")
        );
        with("stowed: port rail rack", &to).unwrap().kit[0].conforms.len()
    };
    let (first, second) = (("head replaced", "2026-01-10"), ("head replaced", "2026-01-20"));
    assert_eq!(left("2026-01-11", &[first]), 1);
    assert_eq!(left("2026-01-10", &[first]), 0, "it may be of the old one");
    assert_eq!(left("2026-01-11", &[first, second]), 0);
    assert_eq!(left("2026-01-11", &[second, first]), 0);
    for other in ["lengthened", "repaired"] {
        assert_eq!(left("2026-01-09", &[(other, "2026-01-10")]), 1, "{other}");
    }
}

#[test]
fn freeboards_are_read_in_every_form() {
    let freeboard = |text: &str| with("freeboard: 4 ft 3 in", text).unwrap().freeboard;
    let range = freeboard("freeboard: 3 ft 10 in to 4 ft 2 in from the working deck");
    assert_eq!(range.from, FreeboardFrom::Deck);
    let reading = &range.stations[0].readings[0];
    assert_eq!(
        (reading.low.written.as_str(), reading.high.written.as_str()),
        ("3 ft 10 in", "4 ft 2 in")
    );
    let stations = freeboard(
        "freeboard:\n  from: top of the rail\n  stations:\n    - { name: starboard, freeboard: 4 ft }\n    - name: stern\n      freeboard: [{ value: 5 ft, load: light, on: 2026-01-01 }, 4 ft 6 in]",
    );
    assert_eq!(stations.from, FreeboardFrom::Rail);
    assert_eq!(stations.stations[1].readings.len(), 2);
    assert_eq!(stations.stations[1].readings[0].load.as_deref(), Some("light"));
    let two = freeboard("freeboard: [4 ft, { value: 4 ft 2 in, how: label }]");
    assert_eq!(two.stations[0].readings.len(), 2);
    for (text, told) in [
        (
            "freeboard: [4 ft, 4 ft from the working deck, 4 ft from the top of the rail]",
            "are mixed",
        ),
        ("freeboard: { from: bridge, value: 4 ft }", "this word is not known here"),
        ("freeboard: { stations: [{ name: stern }] }", "a station without its freeboard"),
        ("freeboard: { value: 3 ft, stations: [{ freeboard: 3 ft }] }", "cannot stand beside"),
        ("freeboard: [{ from: working deck, value: 3 ft }]", "`from` cannot stand here"),
    ] {
        let refusal = with("freeboard: 4 ft 3 in", text).unwrap_err();
        assert!(refusal.to_string().contains(told), "{text}: {refusal}");
    }
}

#[test]
fn a_trip_has_its_own_gear_and_areas() {
    let vessel =
        with("return: 2026-03-09", "return: 2026-03-09, areas: [atlantic], gear: [longline]")
            .unwrap();
    assert_eq!(vessel.areas.unwrap(), ["atlantic"]);
    assert_eq!(vessel.gears.unwrap(), ["longline", "line-gear"]);
    let vessel = with("gear: [pelagic-longline]\n", "").unwrap();
    assert_eq!(vessel.gears, None);
    let vessel = with("permits: [reef-fish]", "permits: [lagoon-shrimp]").unwrap();
    assert_eq!(vessel.permits.unwrap(), ["lagoon-shrimp"]);
}

#[test]
fn where_a_tool_is_and_what_state_it_is_in() {
    let tool = |text: &str| with("stowed: port rail rack", text).unwrap().kit.swap_remove(0);
    assert_eq!(tool("where: ashore").whereabouts, Whereabouts::Ashore);
    assert_eq!(tool("where: lost").whereabouts, Whereabouts::Missing);
    let Whereabouts::Lent { to, span } =
        tool("where: { lent to: Other, from: 2026-01-01 }").whereabouts
    else {
        panic!("not lent")
    };
    assert_eq!((to.as_str(), span.from, span.until), ("Other", day("2026-01-01"), None));
    assert_eq!(tool("condition: broken").state, State::Broken);
    let lost = with("state: posted", "state: lost").unwrap();
    assert_eq!(lost.kit[4].whereabouts, Whereabouts::Missing);
    let unsaid = with(", condition: serviceable", "").unwrap();
    assert_eq!(unsaid.kit[0].state, State::Unknown);
    assert_eq!(unsaid.kit[4].state, State::Serviceable);
    let all_broken = with("broken: 1", "broken: 3").unwrap();
    assert_eq!((all_broken.kit[1].count, all_broken.kit[1].state), (3, State::Broken));
}

#[test]
fn a_partial_list_says_what_it_speaks_for() {
    let vessel = with(
        "register: PA-001",
        "covers: listed things only\nall seen: [pliers]\nsought and not found: [line clipper]",
    )
    .unwrap();
    assert!(!vessel.coverage.everything);
    assert_eq!(vessel.coverage.all_seen.len(), 2);
}

#[test]
fn a_kit_of_more_than_the_cap_is_refused_by_name() {
    let mut text = "format: vessel/1\nname: A\nkit:\n".to_owned();
    for i in 0..=MOST_TOOLS {
        text.push_str(&format!("  - {{ mark: P-{i}, kind: pliers }}\n"));
    }
    let refusal = vessel(&text).unwrap_err();
    assert_eq!(refusal.problems.len(), 1);
    assert!(refusal.to_string().contains("at most 200 on a vessel"), "{refusal}");
    let missing = vessel("format: vessel/1\nname: A\n").unwrap_err();
    assert!(missing.to_string().contains("write `kit: []`"), "{missing}");
    assert!(vessel("format: vessel/1\nname: A\nkit: []\n").unwrap().kit.is_empty());
}

//! What is asked of the engine for a quote: why a tool that is offered does
//! not serve, and at which freeboards anything can change.

use crate::kit::library;
use kitmuster::engine::{Depth, Terms, demand};
use kitmuster::load::{self, Library};
use kitmuster::measure::{Day, Length};
use kitmuster::model::profile::Profile;
use kitmuster::model::reason::Reason;
use kitmuster::model::vessel::{Trust, Vessel};
use std::sync::Arc;

fn profile(library: &Library, requirement: &str) -> [Arc<Profile>; 1] {
    let text = format!(
        "format: profile/1\nid: test-wants\nrule: test-wants\nedition: one\ntitle: Wants\n\
         standing: good practice\nrequirements:\n  - id: one\n    title: One\n    \
         verified: common practice\n{requirement}"
    );
    [library.draft_text("wants.yaml", &text).unwrap_or_else(|refusal| panic!("{refusal:#?}"))]
}

fn vessel(library: &Library, freeboard: &str, kit: &str) -> Vessel {
    let text = crate::outfit::vessel(freeboard).with(&[kit]).yaml();
    let read = load::read_vessel("vessel.yaml", &text, &library.vocabulary);
    read.unwrap_or_else(|refusal| panic!("{refusal:#?}")).0
}

fn terms<'a>(library: &'a Library, asked: &'a [Arc<Profile>]) -> Terms<'a> {
    Terms {
        vocabulary: &library.vocabulary,
        profiles: &[],
        asked,
        departure: Day::parse(crate::outfit::DAY).unwrap(),
        back: None,
        trust: Trust::All,
        depth: Depth::Findings,
    }
}

/// Why the only tool of the kit does not serve the requirement.
fn lacks(requirement: &str, freeboard: &str, tool: &str) -> Option<Vec<Reason>> {
    let library = library();
    let asked = profile(&library, requirement);
    let vessel = vessel(&library, freeboard, tool);
    demand::shortcomings(&terms(&library, &asked), &vessel, 0, 0, &[0]).remove(0)
}

fn codes(reasons: &Option<Vec<Reason>>) -> Vec<&'static str> {
    reasons.iter().flatten().map(Reason::code).collect()
}

const NETS: &str = "    carry: 1
    one of:
      - { kind: dip net, with: { handle: at least 6 ft, hoop-inside: at least 31 in } }
      - { kind: dip net, with: { handle: at least 6 ft } }
      - { kind: dip net, with: { handle: at least 6 ft, hoop-inside: at least 40 in } }
";

#[test]
fn of_several_alternatives_the_one_that_a_tool_comes_nearest_to_is_told() {
    let short =
        lacks(NETS, "5 ft", "{ mark: T-1, kind: dip net, handle: 5 ft, hoop-inside: 30 in }");
    assert_eq!(codes(&short), ["out-of-specification"], "{short:?}");
    let good =
        lacks(NETS, "5 ft", "{ mark: T-1, kind: dip net, handle: 6 ft, hoop-inside: 30 in }");
    assert_eq!(codes(&good), [""; 0]);
    assert_eq!(lacks(NETS, "5 ft", "{ mark: T-1, kind: tire }"), None);
    // Of two that are as near, the first in the rule.
    let boards = "    carry: 1\n    one of:\n      \
                  - { kind: dip net, with: { handle: at least 6 ft } }\n      \
                  - { kind: dip net, with: { hoop-inside: at least 31 in } }\n";
    let first = "{ mark: T-1, kind: dip net, handle: 5 ft, hoop-inside: 30 in }";
    let told = lacks(boards, "5 ft", first).unwrap();
    let [Reason::OutOfSpecification { by: Some(by), .. }] = told.as_slice() else {
        panic!("{told:?}")
    };
    assert_eq!(by.steps(), Length::parse("1 ft").unwrap().0.nanometres());
}

/// What is no alternative on this vessel is not told, however near it is.
#[test]
fn an_alternative_that_is_not_open_to_the_vessel_is_passed_over() {
    let requirement = |freeboard: &str| {
        format!(
            "    carry: 1\n    one of:\n      \
             - {{ kind: dip net, with: {{ handle: at least 6 ft, hoop-inside: at least 31 in }} }}\n      \
             - {{ kind: tire, when: {{ freeboard: {freeboard} }}, with: {{ no-steel-belts: yes }} }}\n"
        )
    };
    let tire = "{ mark: T-1, kind: tire, no-steel-belts: no }";
    assert_eq!(codes(&lacks(&requirement("4 ft or more"), "5 ft", tire)).len(), 1);
    assert_eq!(codes(&lacks(&requirement("less than 4 ft"), "5 ft", tire)), [""; 0]);
    let net = "{ mark: T-1, kind: dip net, handle: 5 ft, hoop-inside: 30 in }";
    assert_eq!(codes(&lacks(&requirement("less than 4 ft"), "5 ft", net)).len(), 2);
}

/// A rope between one and two freeboards: at 5 ft one of 1 ft misses by more
/// than at 3 ft.
#[test]
fn of_several_freeboards_the_one_at_which_a_tool_misses_most_is_told() {
    let requirement = "    carry: 1 collapsible hoop net\n    \
                       with: { rope-length: from freeboard to 200% of freeboard }\n";
    let tool = |length: &str| {
        let tool = format!("{{ mark: T-1, kind: collapsible hoop net, rope-length: {length} }}");
        let lacks = lacks(requirement, "3 ft to 5 ft", &tool).unwrap();
        let [Reason::OutOfSpecification { by: Some(by), .. }] = lacks.as_slice() else {
            panic!("{lacks:?}")
        };
        by.steps()
    };
    let foot = Length::parse("1 ft").unwrap().0.nanometres();
    assert_eq!(tool("1 ft"), 4 * foot);
    assert_eq!(tool("12 ft"), 6 * foot);
}

#[test]
fn everything_changes_where_the_rule_or_the_tool_gives_out() {
    let library = library();
    let asked = profile(
        &library,
        "    when: { freeboard: more than 4 ft }\n    carry: 1 long-handled line cutter\n    \
         with: { handle: at least 150% of freeboard }\n",
    );
    let cutter = "{ mark: T-1, kind: long-handled line cutter, handle: 9 ft }";
    let vessel = vessel(&library, "5 ft", cutter);
    let points = demand::breakpoints(&terms(&library, &asked), &vessel);
    // The first freeboard of each stretch: above 4 ft it binds, above 6 ft
    // the handle is too short.
    for last in ["4 ft", "6 ft"] {
        let next = Length::parse(&crate::outfit::just_over(last)).unwrap().0;
        assert!(points.contains(&next), "{last}: {points:?}");
    }
}

/// Of two cutters both do at 3 ft and none at 5 ft; that one of them does in
/// between is known only where it is looked.
#[test]
fn a_further_freeboard_counts_where_the_vessel_may_have_it() {
    let library = library();
    let asked = profile(
        &library,
        "    carry: 1 long-handled line cutter\n    with: { handle: at least 150% of freeboard }\n",
    );
    let cutter = "{ mark: T-1, kind: long-handled line cutter, handle: 5 ft }";
    let longer = cutter.replace("T-1", "T-2").replace("5 ft", "6 ft 8 in");
    let vessel = vessel(&library, "3 ft to 5 ft", &format!("{cutter}\n  - {longer}"));
    let points = |further: &[&str]| {
        let further: Vec<_> = further.iter().map(|text| Length::parse(text).unwrap().0).collect();
        let wanted = demand::demands(&terms(&library, &asked), &vessel, &further);
        format!("{:?}", wanted[0].points)
    };
    let plain = points(&[]);
    assert_eq!(points(&["2 ft", "6 ft"]), plain);
    assert_ne!(points(&["4 ft 1 in"]), plain);
}

/// What is aboard can decide what is asked, also inside a list of
/// alternatives.
#[test]
fn kinds_that_decide_are_found_wherever_they_are_named() {
    let library = library();
    let asked = profile(
        &library,
        "    when: { any of: [{ aboard: tire }, { not aboard: dip net }] }\n    \
         unless: [{ aboard: boat hook }]\n    carry: 1\n    one of:\n      \
         - { kind: pliers }\n      - { kind: bolt cutters, when: { aboard: boat cushion } }\n",
    );
    let vessel = vessel(&library, "5 ft", "{ mark: T-1, kind: pliers }");
    let kinds = demand::deciding_kinds(&terms(&library, &asked), &vessel);
    let mut ids: Vec<_> =
        kinds.iter().map(|kind| library.vocabulary.kind(*kind).id.clone()).collect();
    ids.sort();
    assert_eq!(ids, ["boat-cushion", "dip-net", "inverted-v-device", "tire"]);
}

/// A requirement that another's tool meets is lent it, and lends none back.
#[test]
fn what_one_requirement_lends_another_is_known() {
    let library = library();
    let asked = profile(
        &library,
        "    carry: 1 long-handled dehooker for internal hooks\n  - id: two\n    title: Two\n    \
         verified: common practice\n    carry: 1 long-handled dehooker for external hooks\n    \
         met by the tool of: one\n",
    );
    let tool = "{ mark: T-1, kind: long-handled dehooker for internal hooks }";
    let vessel = vessel(&library, "5 ft", tool);
    let wanted = demand::demands(&terms(&library, &asked), &vessel, &[]);
    let lent: Vec<Vec<usize>> = wanted[0].points[0]
        .by_requirement
        .iter()
        .map(|demand| demand.iter().flat_map(|demand| &demand.lent).map(|lent| lent.from).collect())
        .collect();
    assert_eq!(lent, [vec![], vec![0]]);
}

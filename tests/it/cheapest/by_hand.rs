//! Small cases made by hand: what a search for the cheapest basket trips over
//! that draws of chance seldom hold. All of it is invented.

use super::agree_on;
use super::draw::Written;
use crate::kit;

/// A requirement by its id, in words for all that is the same of each.
fn asks(id: &str, what: &str) -> String {
    format!("  - {{ id: {id}, title: {id}, verified: common practice, {what} }}\n")
}

/// Vessels, each with its freeboard and the tools of its kit.
type Vessels<'a> = &'a [(&'a str, &'a [&'a str])];

/// The quote for what is asked of these vessels out of a catalogue of these
/// items is as good as the best of all baskets, and buys something.
fn buys_the_best(asked: &[String], vessels: Vessels<'_>, items: &[&str]) {
    buys_the_best_of(asked, vessels, &[("0", items)]);
}

/// The same out of several catalogues, each with its delivery and its items.
fn buys_the_best_of(asked: &[String], vessels: Vessels<'_>, suppliers: &[(&str, &[&str])]) {
    let vessel = |(freeboard, kit): &(&str, &[&str])| {
        let tools = kit.iter().enumerate();
        let works =
            |tool: &str| if tool.contains("condition") { "" } else { ", condition: serviceable" };
        let tools: Vec<_> =
            tools.map(|(at, tool)| format!("{{ mark: T-{at}, {tool}{} }}", works(tool))).collect();
        format!(
            "format: vessel/1\nname: By Hand\nfreeboard: {freeboard}\npermits: []\n\
             gear: [pelagic-longline]\nareas: []\nkit: [{}]\n",
            tools.join(", ")
        )
    };
    let item = |(at, item): (usize, &&str)| {
        format!("  - {{ number: I-{at}, description: by hand, {item} }}\n")
    };
    let catalogue = |(at, (delivery, items)): (usize, &(&str, &[&str]))| {
        let items: String = items.iter().enumerate().map(item).collect();
        format!(
            "format: catalogue/1\nsupplier: By hand {at}\ncurrency: USD\ntax: 0%\n\
             delivery: {delivery}\nlead: 2 days\nitems:\n{items}"
        )
    };
    let written = Written {
        profile: format!(
            "format: profile/1\nid: by-hand\nrule: by-hand\nedition: invented for tests\n\
             title: By hand\nstanding: good practice\nrequirements:\n{}",
            asked.concat()
        ),
        vessels: vessels.iter().map(vessel).collect(),
        catalogues: suppliers.iter().enumerate().map(catalogue).collect(),
        with_recommended: true,
    };
    assert_eq!(agree_on(&kit::library(), 0, written), Some(true));
}

/// What is left of a pack costs nothing, so that its pieces are no dearer
/// than singles that cost less apiece.
#[test]
fn the_second_piece_of_a_pack_is_for_another_tool() {
    let handle = |kind: &str| format!("carry: 1 {kind}, with: {{ handle: at least 6 ft }}");
    let piece = |by: &str, rest: &str| {
        format!("lengthens: {{ kinds: [long-handled line cutter, dip net], by: {by} }}, {rest}")
    };
    buys_the_best(
        &[asks("cutter", &handle("long-handled line cutter")), asks("net", &handle("dip net"))],
        &[(
            "4 ft",
            &["kind: long-handled line cutter, handle: 5 ft 6 in", "kind: dip net, handle: 5 ft"],
        )],
        &[
            &piece("3 ft", "price: 25.28"),
            &piece("6 in", "price: 22.72"),
            &piece("1 ft", "price: 47.04, pack: 2"),
        ],
    );
}

#[test]
fn of_two_pieces_that_lengthen_enough_the_cheaper_is_bought() {
    let asked = [asks("nets", "carry: 2 dip net, with: { handle: at least 6 ft }")];
    let vessels: Vessels<'_> = &[("4 ft", &["kind: dip net, handle: 5 ft, count: 2"])];
    let [cheap, dear, scarce] = [("1 ft", "8"), ("2 ft", "9"), ("2 ft", "7, stock: 1")]
        .map(|(by, price)| format!("lengthens: {{ kinds: [dip net], by: {by} }}, price: {price}"));
    buys_the_best(&asked, vessels, &[&cheap, &dear]);
    buys_the_best(&asked, vessels, &[&dear, &cheap]);
    buys_the_best(&asked, vessels, &[&scarce, &cheap]);
    // What is saved on the pieces is paid for their delivery.
    buys_the_best_of(&asked, vessels, &[("5", &[&cheap]), ("0", &[&dear])]);
}

/// With a rope of 3 ft aboard one of 10 ft serves at the high end: at both
/// ends one of the nets does, but at 4 ft none. One of 6 ft does everywhere.
#[test]
fn tools_that_do_at_both_ends_of_the_freeboard_have_to_do_in_between() {
    let net =
        "carry: 1 collapsible hoop net, with: { rope-length: from freeboard to 200% of freeboard }";
    buys_the_best(
        &[asks("net", net)],
        &[("3 ft to 5 ft", &["kind: collapsible hoop net, rope-length: 3 ft"])],
        &[
            "tool: { kind: collapsible hoop net, rope-length: 10 ft }, price: 10",
            "tool: { kind: collapsible hoop net, rope-length: 6 ft }, price: 20",
        ],
    );
}

/// Of two tires either a low vessel has both, for one finding, or a high one
/// has one for each of two.
fn two_tires(more: &[(&str, &str)], vessels: &[&str], items: &[&str]) {
    let mut asked = vec![asks("pair", "when: { freeboard: at most 4 ft }, carry: 2 tire")];
    let high = "when: { freeboard: more than 6 ft }, carry: 1 tire";
    asked.extend(
        [("one", high), ("other", high)].iter().chain(more).map(|(id, what)| asks(id, what)),
    );
    let vessels: Vec<(&str, &[&str])> = vessels.iter().map(|at| (*at, &[][..])).collect();
    let items = [&["tool: { kind: tire }, price: 5, stock: 2"], items].concat();
    buys_the_best(&asked, &vessels, &items);
}

/// The high vessel can never be ready. What is only recommended keeps no
/// vessel from being so.
#[test]
fn scarce_goods_go_where_they_make_a_vessel_ready() {
    let never = [
        ("hoist", "when: { freeboard: more than 6 ft }, carry: 1 hoist"),
        ("gaff", "level: recommended, when: { freeboard: at most 4 ft }, carry: 1 gaff"),
    ];
    for vessels in [["3 ft", "7 ft"], ["7 ft", "3 ft"]] {
        two_tires(&never, &vessels, &[]);
    }
}

/// The low vessel can never be ready; of the others one can, with the hoist.
#[test]
fn a_vessel_that_lacks_what_nobody_sells_does_not_count_as_ready() {
    let more = [
        ("gaff", "when: { freeboard: at most 4 ft }, carry: 1 gaff"),
        ("hoist", "when: { freeboard: more than 4 ft }, carry: 1 hoist"),
    ];
    for vessels in [["3 ft", "5 ft", "7 ft"], ["7 ft", "5 ft", "3 ft"]] {
        two_tires(&more, &vessels, &["tool: { kind: hoist }, price: 5, stock: 1"]);
    }
}

const HOIST: &str = "unless: { aboard: dip net }, carry: 1 hoist";

/// Without a dip net aboard a hoist is asked for, which is dearer.
fn net_or_hoist(kit: &[&str], items: &[&str]) {
    let asked = [asks("hoist", HOIST), asks("block", "carry: 1 hardwood block")];
    let items = [items, &["tool: { kind: hoist }, price: 20"]].concat();
    buys_the_best(&asked, &[("3 ft", &[&["kind: hardwood block"], kit].concat())], &items);
}

/// As without a dip net a hoist, so without a tire a gaff is asked for.
#[test]
fn of_two_kinds_that_decide_what_is_asked_the_one_that_spares_more_comes_aboard() {
    let asked = [asks("hoist", HOIST), asks("gaff", "unless: { aboard: tire }, carry: 1 gaff")];
    for (net, tire) in [(8, 30), (30, 8)] {
        let item = |kind: &str, price: u32| format!("tool: {{ kind: {kind} }}, price: {price}");
        let items = [item("dip net", net), item("tire", tire), item("hoist", 20), item("gaff", 20)];
        buys_the_best(&asked, &[("3 ft", &[])], &items.each_ref().map(String::as_str));
    }
}

#[test]
fn what_nobody_sells_keeps_nothing_else_from_being_bought() {
    buys_the_best(
        &[asks("hoist", HOIST), asks("gaff", "carry: 1 gaff"), asks("tire", "carry: 1 tire")],
        &[("3 ft", &[])],
        &["tool: { kind: dip net, handle: 5 ft }, price: 8", "tool: { kind: tire }, price: 5"],
    );
}

#[test]
fn what_is_not_aboard_all_the_time_does_not_decide_what_is_asked() {
    for net in ["condition: broken", "where: ashore", "expires: 2026-03-14", "acquired: 2026-03-14"]
    {
        let net = format!("kind: dip net, handle: 5 ft, {net}");
        net_or_hoist(&[&net], &["tool: { kind: dip net, handle: 5 ft }, price: 8"]);
    }
    net_or_hoist(
        &[],
        &[
            "tool: { kind: dip net, handle: 5 ft, lasts: 10 days }, price: 5",
            "tool: { kind: dip net, handle: 5 ft }, price: 8",
        ],
    );
}

#[test]
fn mending_brings_a_net_aboard_and_lengthening_does_not() {
    let longer = "lengthens: { kinds: [dip net], by: 1 ft }, price: 4";
    let mended = "service: { kinds: [dip net], does: [repair] }, price: 8";
    net_or_hoist(&["kind: dip net, handle: 5 ft, condition: broken"], &[longer, mended]);
    let new = "tool: { kind: dip net, handle: 5 ft }, price: 8";
    net_or_hoist(&["kind: dip net, handle: 5 ft, expires: 2026-03-14"], &[longer, new]);
}

#[test]
fn what_lapses_at_sea_serves_until_a_later_tool_is_aboard() {
    buys_the_best(
        &[asks("pliers", "carry: 1 pliers")],
        &[("3 ft", &["kind: pliers, acquired: 2026-03-10"])],
        &["tool: { kind: pliers, lasts: 10 days }, price: 5", "tool: { kind: pliers }, price: 9"],
    );
}

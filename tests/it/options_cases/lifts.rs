//! The single tool that lifts most: it claims what it opens and no more, and
//! it is priced by what can be bought and lasts.

use super::{FULL, practice, request, shipped, vessel};
use kitmuster::freeing::{self, Lift, Request, Terms};
use kitmuster::load;
use kitmuster::measure::{Currency, Money};
use kitmuster::model::catalogue::Catalogue;
use kitmuster::model::finding::{Action, Target};
use kitmuster::model::vessel::Vessel;
use std::collections::BTreeSet;

/// The text of the full vessel without the tools of these marks.
fn without(marks: &[&str]) -> String {
    let names = |line: &str, mark: &str| line.contains(&format!("mark: {mark},"));
    let kept = |line: &&str| !marks.iter().any(|mark| names(line, mark));
    let text: Vec<&str> = FULL.lines().filter(kept).collect();
    assert_eq!(text.len() + marks.len(), FULL.lines().count(), "{marks:?}");
    text.join("\n")
}

/// The text with pieces replaced, each of which stands there once.
fn edited(text: &str, edits: &[(&str, &str)]) -> String {
    edits.iter().fold(text.to_owned(), |text, (from, to)| {
        assert_eq!(text.matches(from).count(), 1, "{from}");
        text.replacen(from, to, 1)
    })
}

/// A catalogue of these items; invented, as are their prices.
fn catalogue(items: &[&str]) -> Catalogue {
    let mut text = "format: catalogue/1\nsupplier: Holm Slip\ncurrency: USD\ntax: 0%\n\
                    delivery: 0\nlead: 0 days\nitems:\n"
        .to_owned();
    for item in items {
        text.push_str(&format!("  - {{ {item} }}\n"));
    }
    load::read_catalogue("catalogue.yaml", &text, &shipped().library.vocabulary)
        .unwrap_or_else(|refusal| panic!("{refusal:#?}"))
        .0
}

fn lift_with(vessel: &Vessel, catalogues: &[Catalogue]) -> Option<Lift> {
    let request = request(vessel);
    let terms = Terms { catalogues, ..request.terms };
    freeing::options(&Request { terms, ..request }).lift
}

fn lift(text: &str) -> Lift {
    lift_with(&vessel(text), &[]).unwrap()
}

/// The number of the item that is offered, and its price.
fn offer(text: &str, items: &[&str]) -> Option<(String, Money)> {
    let catalogues = [catalogue(items)];
    let priced = lift_with(&vessel(text), &catalogues).unwrap().price?;
    assert_eq!(priced.catalogue, 0);
    Some((catalogues[0].items[priced.item].number.clone(), priced.price))
}

fn is_offered(text: &str, item: &str) -> bool {
    offer(text, &[item]).is_some()
}

fn for_money(number: &str, amount: &str) -> Option<(String, Money)> {
    Some((number.to_owned(), Money::parse(amount, Currency::find("USD").unwrap()).unwrap()))
}

/// The ids of the situations that are lifted.
fn lifted(lift: &Lift) -> BTreeSet<&'static str> {
    let practice = practice();
    let of = |along: bool| if along { &practice.along } else { &practice.situations };
    lift.lifted.iter().map(|one| of(one.along)[one.situation].id.as_str()).collect()
}

/// The mark of the tool that the step is done to.
fn mark(lift: &Lift, text: &str) -> String {
    let Target::Tool(tool) = lift.step.target else { panic!("{:?}", lift.step) };
    vessel(text).kit[tool].mark.clone()
}

/// The kind of the tool that is to be acquired.
fn acquired(lift: &Lift) -> &'static str {
    assert_eq!(lift.step.action, Action::Acquire);
    let requirement = &lift.judgement.profile.requirements[lift.step.requirement];
    shipped().library.vocabulary.kind(requirement.kinds()[0]).id.as_str()
}

/// What bolt cutters open on deck, for hooks of one type.
fn of_hook(of_type: &str) -> BTreeSet<&'static str> {
    let ids = practice().situations.iter().map(|situation| situation.id.as_str());
    let end = format!("-{of_type}-aboard");
    let cut = |id: &&str| id.ends_with(&end) && (id.contains("outside") || id.contains("mouth"));
    ids.filter(cut).collect()
}

/// The cutters are broken and cut up to that wire; the wires of the hooks.
fn broken_cutters(cuts: &str, circle: &str, j: &str) -> String {
    edited(
        FULL,
        &[
            ("BC, kind: bolt cutters, cuts-hook: 5 mm", &format!("BC, {BROKEN}{cuts}")),
            ("type: circle, wire: 4 mm", &format!("type: circle{circle}")),
            ("type: j, wire: 5 mm", &format!("type: j{j}")),
        ],
    )
}

const BROKEN: &str = "condition: broken, kind: bolt cutters, cuts-hook: ";

#[test]
fn a_repair_lifts_only_what_the_cutters_cut_when_mended() {
    // Of the other hooks nobody measured the wire, so that no tool is known
    // to open what hangs on it.
    let circle = broken_cutters("4 mm", ", wire: 4 mm", "");
    let found = lift(&circle);
    assert_eq!((found.step.action, mark(&found, &circle).as_str()), (Action::Repair, "BC"));
    assert_eq!(lifted(&found), of_hook("circle"));
    let j = broken_cutters("4 mm", "", ", wire: 4 mm");
    let found = lift(&j);
    assert_eq!((found.step.action, mark(&found, &j).as_str()), (Action::Repair, "BC"));
    assert_eq!(lifted(&found), of_hook("j"));
    assert_eq!(of_hook("j").len(), 4);
}

#[test]
fn a_cutter_for_both_types_of_hook_goes_before_a_repair_for_one() {
    let both: BTreeSet<&str> = of_hook("j").union(&of_hook("circle")).copied().collect();
    for (circle, j) in [("4 mm", "5 mm"), ("5 mm", "4 mm")] {
        let text = |cuts: &str| {
            broken_cutters(cuts, &format!(", wire: {circle}"), &format!(", wire: {j}"))
        };
        // Mended, 4 mm cuts the one; a new one for 5 mm cuts both.
        let found = lift(&text("4 mm"));
        assert_eq!((acquired(&found), lifted(&found)), ("bolt-cutters", both.clone()));
        // Mended, 5 mm cuts both.
        let found = lift(&text("5 mm"));
        assert_eq!((found.step.action, lifted(&found)), (Action::Repair, both.clone()));
    }
}

/// Nothing is promised of what a measurement has yet to show.
#[test]
fn a_repair_of_cutters_that_nobody_tried_out_promises_nothing() {
    let untried = broken_cutters("unknown", ", wire: 4 mm", ", wire: 5 mm");
    let found = lift_with(&vessel(&untried), &[]);
    let repairs = found.as_ref().is_some_and(|lift| lift.step.action == Action::Repair);
    assert!(!repairs, "{:?}", found.map(|lift| (lift.step, lift.lifted)));
}

const CUTTERS: &str = "tool: { kind: bolt cutters, cuts-hook: 5 mm }";

#[test]
fn what_is_not_in_stock_for_the_least_order_is_no_offer() {
    let text = without(&["BC"]);
    let sold = |rest: &str| {
        offer(&text, &[&format!("number: A, description: cutters, {CUTTERS}, price: 90.00{rest}")])
    };
    assert_eq!(sold(""), for_money("A", "90.00"));
    assert_eq!(sold(", stock: 1"), for_money("A", "90.00"));
    assert_eq!(sold(", stock: 0"), None);
    // Packs are counted, and the least order is paid.
    assert_eq!(sold(", least order: 2"), for_money("A", "180.00"));
    assert_eq!(sold(", least order: 2, stock: 2"), for_money("A", "180.00"));
    assert_eq!(sold(", least order: 2, stock: 1"), None);
}

#[test]
fn the_cheapest_order_that_does_it_is_offered() {
    let text = without(&["BC"]);
    let dear = format!("number: A, description: cutters, {CUTTERS}, price: 90.00");
    let cheap = format!("number: B, description: cutters, {CUTTERS}, price: 50.00");
    let weak = "number: C, description: small cutters, \
                tool: { kind: bolt cutters, cuts-hook: 4 mm }, price: 10.00";
    assert_eq!(offer(&text, &[&dear, weak, &cheap]), for_money("B", "50.00"));
    // By the order, not by the pack.
    let two = format!("{cheap}, least order: 2");
    assert_eq!(offer(&text, &[&two, &dear]), for_money("A", "90.00"));
    assert_eq!(offer(&text, &[weak]), None);
}

/// Three canine gags are one type of mouth gag: 50 CFR part 622 Appendix F,
/// A.12 (read).
#[test]
fn a_pack_of_three_gags_opens_a_set_of_three() {
    let text = without(&["HR"]);
    let gags = |count: u32, pack: u32| {
        is_offered(
            &text,
            &format!(
                "number: A, description: gags, price: 21.00, pack: {pack}, \
                 tool: {{ kind: canine mouth gag, count: {count} }}"
            ),
        )
    };
    assert!(gags(1, 3));
    assert!(gags(3, 1));
    assert!(!gags(1, 2));
    assert!(!gags(2, 1));
}

/// The trip ends on the eighth day. Delivery counts, and what is good for
/// seven days from there is so through the day before the last.
#[test]
fn what_expires_before_the_end_of_the_trip_is_no_offer() {
    let text = without(&["MC"]);
    let lasts = |lasts: &str| {
        is_offered(
            &text,
            &format!(
                "number: A, description: cutters, price: 12.00, tool: {{ \
                 kind: monofilament line cutters, cuts-monofilament: 3 mm, lasts: {lasts} }}"
            ),
        )
    };
    assert!(lasts("12 months"));
    assert!(lasts("8 days"));
    assert!(!lasts("7 days"));
}

/// 150 % of freeboard and at least 6 ft: 50 CFR part 622 Appendix F, A.1
/// (read), borrowed for every technique.
#[test]
fn where_a_pole_is_to_be_lengthened_an_extension_is_offered() {
    let text = edited(FULL, &[("line cutter, handle: 6 ft", "line cutter, handle: 4 ft")]);
    let found = lift(&text);
    assert_eq!((found.step.action, mark(&found, &text).as_str()), (Action::Lengthen, "LC"));
    let extension = |kinds: &str, rest: &str| {
        format!(
            "number: X, description: extension, price: 30.00, \
             lengthens: {{ kinds: [{kinds}], {rest} }}"
        )
    };
    let cutter = "long-handled line cutter";
    let offered = |extension: &str| offer(&text, &[extension]);
    assert_eq!(offered(&extension(cutter, "by: 2 ft")), for_money("X", "30.00"));
    assert_eq!(offered(&extension(cutter, "by: 23 in")), None);
    assert_eq!(offered(&extension("dip net", "by: 2 ft")), None);
    // Two of it reach where they may be put on one pole.
    assert_eq!(offered(&extension(cutter, "by: 1 ft, per tool: 2")), for_money("X", "60.00"));
    assert_eq!(offered(&extension(cutter, "by: 1 ft, per tool: 1")), None);
    // A whole cutter does it too; the cheaper of the two is offered.
    let whole = |price: &str| {
        format!(
            "number: W, description: cutter, price: {price}, tool: \
             {{ kind: long-handled line cutter, handle: 6 ft, cuts-monofilament: 3 mm }}"
        )
    };
    let longer = extension(cutter, "by: 2 ft");
    assert_eq!(offer(&text, &[&whole("128.00"), &longer]), for_money("X", "30.00"));
    assert_eq!(offer(&text, &[&longer, &whole("25.00")]), for_money("W", "25.00"));
}

#[test]
fn a_tool_out_of_a_set_is_offered_at_the_price_of_the_set() {
    let text = without(&["BC"]);
    let set = "number: S, description: deck set, price: 120.00, \
               tools: [{ kind: tire }, { kind: bolt cutters, cuts-hook: 5 mm }]";
    let single = format!("number: A, description: cutters, {CUTTERS}, price: 90.00");
    assert_eq!(offer(&text, &[set]), for_money("S", "120.00"));
    assert_eq!(offer(&text, &[set, &single]), for_money("A", "90.00"));
}

#[test]
fn of_two_that_lift_as_many_the_one_with_more_first_choices_is_taken() {
    // Nobody measured the dipnet, the rail is too high for hands, and neither
    // J nor circle hooks are aboard.
    let edits = [
        ("freeboard: 2 ft", "freeboard: 4 ft"),
        ("kind: dip net, handle: 6 ft", "kind: dip net, handle: unknown"),
        ("type: circle, wire: 4 mm", "type: other, wire: 4 mm"),
        ("type: j, wire: 5 mm", "type: other, wire: 5 mm"),
    ];
    let outcome = |marks: &[&str]| {
        let found = lift(&edited(&without(marks), &edits));
        let firsts = found.lifted.iter().filter(|one| one.to == 0).count();
        (acquired(&found), lifted(&found), firsts)
    };
    // Another net brings three kinds of case aboard, none of them as well as
    // the dipnet would. It comes first in the file.
    let boarded =
        BTreeSet::from(["inside-boardable", "outside-showing-boardable", "tangled-limp-boardable"]);
    assert_eq!(outcome(&["HN"]), ("hoop-net", boarded, 0));
    // A deck cutter is the first choice in three others.
    let cut = BTreeSet::from(["deep-buried-aboard", "swallowed-aboard", "tangled-aboard"]);
    assert_eq!(outcome(&["HN", "MC"]), ("line-cutters", cut, 3));
}

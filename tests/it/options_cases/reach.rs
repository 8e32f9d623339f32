//! The reach test of a technique, the vessel's own hooks and line, and what
//! nobody can tell.

use super::{FULL, answer, answered, options_of, vessel};
use kitmuster::freeing::Options;
use kitmuster::measure::Answer;
use kitmuster::model::options::{OwnHooks, Standing};

/// The full vessel with one text of its file put in place of another.
fn with(old: &str, new: &str) -> Options {
    assert!(FULL.contains(old), "{old}");
    options_of(&vessel(&FULL.replacen(old, new, 1)))
}

/// 150 % of freeboard, at least 6 ft: 50 CFR part 622 Appendix F, A.1 (read),
/// borrowed for every technique.
#[test]
fn a_pole_of_exactly_the_figure_reaches_and_a_hair_less_does_not() {
    let at = |freeboard: &str, handle: &str| {
        let text = FULL
            .replace("freeboard: 2 ft", &format!("freeboard: {freeboard}"))
            .replace("line cutter, handle: 6 ft,", &format!("line cutter, handle: {handle},"));
        answer(&options_of(&vessel(&text)), "outside-showing-stays", "cut-short")
    };
    assert_eq!(at("4 ft 3 in", "6 ft 4 1/2 in"), Answer::Yes);
    assert_eq!(at("4 ft 3 in", "1943.099999 mm"), Answer::No);
    assert_eq!(at("2 ft", "6 ft"), Answer::Yes);
    assert_eq!(at("2 ft", "1828.799999 mm"), Answer::No);
    assert_eq!(at("2 ft to 5 ft", "7 ft 6 in"), Answer::Yes);
    assert_eq!(at("2 ft to 5 ft", "7 ft 5 in"), Answer::No);
    assert_eq!(at("4 ft 3 in", "unknown"), Answer::Unknown);
}

/// 2 ft, the house's own figure (common practice, no source).
#[test]
fn a_rail_of_two_feet_is_reached_by_hand_and_a_hair_more_is_not() {
    let at = |freeboard: &str| {
        let options = with("freeboard: 2 ft", &format!("freeboard: {freeboard}"));
        answer(&options, "inside-boardable", "by-hand")
    };
    assert_eq!(at("2 ft"), Answer::Yes);
    assert_eq!(at("609.600001 mm"), Answer::No);
    assert_eq!(at("1 ft to 2 ft 1 in"), Answer::No);
    assert_eq!(at("unknown"), Answer::Unknown);
}

#[test]
fn bolt_cutters_are_tried_on_the_hooks_of_the_case() {
    let options = with("cuts-hook: 5 mm", "cuts-hook: 4 mm");
    // 4 mm cuts the circle hooks, not the J hooks of 5 mm.
    let (circle, j) = ("outside-buried-circle-aboard", "outside-buried-j-aboard");
    assert_eq!(answer(&options, circle, "push-through"), Answer::Yes);
    assert_eq!(answer(&options, j, "push-through"), Answer::No);
    assert_eq!(answer(&options, "outside-showing-circle-aboard", "cut-hook"), Answer::Yes);
    assert_eq!(answer(&options, "outside-showing-j-aboard", "cut-hook"), Answer::No);
}

#[test]
fn where_no_j_hook_is_aboard_a_j_hook_does_not_arise() {
    let options = with("  - { name: J hooks, type: j, wire: 5 mm }\n", "");
    let (j, _) = answered(&options, "outside-buried-j-aboard");
    assert_eq!(j.hooks, OwnHooks::NoneAboard);
    assert_eq!(options.outlook.worth().left_out, 6);
    // Nothing is known of the wire of a hook from elsewhere.
    assert_eq!(answer(&options, "outside-buried-j-aboard", "push-through"), Answer::Unknown);
    let unsaid = with("type: j, wire: 5 mm", "wire: 5 mm");
    let (circle, _) = answered(&unsaid, "outside-buried-circle-aboard");
    assert_eq!(circle.hooks, OwnHooks::Arises);
    let (j, _) = answered(&unsaid, "outside-buried-j-aboard");
    assert_eq!(j.hooks, OwnHooks::NotSaid);
}

/// A hook of which nobody wrote the type may be a circle hook or not.
#[test]
fn a_hook_of_unknown_type_leaves_open_what_hangs_on_it() {
    let text = FULL.replace("type: j, wire: 5 mm", "wire: 5 mm");
    let weak = options_of(&vessel(&text.replace("cuts-hook: 5 mm", "cuts-hook: 4 mm")));
    let strong = options_of(&vessel(&text));
    let circle = "outside-buried-circle-aboard";
    assert_eq!(answer(&weak, circle, "push-through"), Answer::Unknown);
    assert_eq!(answer(&strong, circle, "push-through"), Answer::Yes);
    // What cuts every hook aboard cuts this one, whatever its type.
    assert_eq!(answer(&strong, "outside-buried-j-aboard", "push-through"), Answer::Yes);
    assert_eq!(answer(&weak, "outside-buried-j-aboard", "push-through"), Answer::Unknown);
}

#[test]
fn a_cutter_for_leaders_cuts_short_and_does_not_cut_free_from_a_thicker_mainline() {
    let options =
        with("handle: 6 ft, cuts-monofilament: 3 mm", "handle: 6 ft, cuts-monofilament: 2 mm");
    assert_eq!(answer(&options, "inside-stays", "cut-short"), Answer::Yes);
    assert_eq!(answer(&options, "tangled-stays", "cut-free"), Answer::No);
    // A line of which nobody wrote what it is for may be a leader.
    let unsaid = options_of(&vessel(&FULL.replace("part: mainline, ", "").replace(
        "handle: 6 ft, cuts-monofilament: 3 mm",
        "handle: 6 ft, cuts-monofilament: 2 mm",
    )));
    assert_eq!(answer(&unsaid, "inside-stays", "cut-short"), Answer::Unknown);
}

/// Where no line is called a leader the hooks hang on one of those there are.
#[test]
fn without_a_leader_on_the_list_any_line_may_be_one() {
    let with = |lines: &str, cuts: &str| {
        let (head, _) = FULL.split_once("lines:\n").unwrap();
        let text = format!("{head}{lines}").replace("cuts-monofilament: 3 mm", cuts);
        answer(&options_of(&vessel(&text)), "inside-stays", "cut-short")
    };
    let mainline = "lines:\n  - { name: mainline, part: mainline, diameter: 3 mm }\n";
    assert_eq!(with(mainline, "cuts-monofilament: 3 mm"), Answer::Yes);
    assert_eq!(with(mainline, "cuts-monofilament: 2 mm"), Answer::No);
    let two = format!("{mainline}  - {{ name: float line, part: other, diameter: 1 mm }}\n");
    assert_eq!(with(&two, "cuts-monofilament: 2 mm"), Answer::Unknown);
    assert_eq!(with(&two, "cuts-monofilament: 3 mm"), Answer::Yes);
    assert_eq!(with("", "cuts-monofilament: 3 mm"), Answer::Unknown);
    assert_eq!(with("lines: []\n", "cuts-monofilament: 3 mm"), Answer::Unknown);
}

/// A life-saving device serves only beyond what the crew's own safety asks
/// (50 CFR part 622 Appendix F, A.6, read).
#[test]
fn a_life_ring_that_the_crew_needs_is_no_support() {
    let with = |tool: &str| {
        let options = with("{ mark: TI, kind: tire }", tool);
        answer(&options, "outside-showing-j-aboard", "cut-hook")
    };
    assert_eq!(with("{ mark: LR, kind: life ring, surplus-to-safety: yes }"), Answer::Yes);
    assert_eq!(with("{ mark: LR, kind: life ring, surplus-to-safety: no }"), Answer::No);
    assert_eq!(with("{ mark: LR, kind: life ring }"), Answer::Unknown);
}

#[test]
fn one_dehooker_cannot_pull_the_line_and_be_the_control_device_too() {
    // Without a boat hook the J-style dehooker pulls the V, as the rule lets it.
    let options = with("  - { mark: BH, kind: boat hook, handle: 6 ft, end: boat hook }\n", "");
    assert_eq!(answer(&options, "outside-buried-circle-stays", "inverted-v"), Answer::Yes);
}

/// Couplings are held with pliers, which are then not free for the barb.
#[test]
fn couplings_held_with_the_only_pliers_leave_none_for_the_barb() {
    let couplings = "{ mark: CO, kind: PVC splice coupling, count: 4 }";
    let one = with("{ mark: HR, kind: hank of rope }", couplings);
    let showing = "mouth-showing-j-aboard";
    assert_eq!(answer(&one, showing, "gag, then cut-hook"), Answer::Yes);
    assert_eq!(answer(&one, showing, "gag, then flatten-barb"), Answer::No);
    let two = with(
        "{ mark: HR, kind: hank of rope }",
        &format!("{couplings}\n  - {{ mark: PL2, kind: long-nose pliers }}"),
    );
    assert_eq!(answer(&two, showing, "gag, then flatten-barb"), Answer::Yes);
}

#[test]
fn a_broken_or_outdated_tool_opens_nothing() {
    let broken = with(
        "{ mark: MC, kind: monofilament line cutters,",
        "{ mark: MC, condition: broken, kind: monofilament line cutters,",
    );
    assert_eq!(answer(&broken, "inside-stays", "cut-short-by-hand"), Answer::No);
    let lapses = with(
        "{ mark: MC, kind: monofilament line cutters,",
        "{ mark: MC, expires: 2026-12-08, kind: monofilament line cutters,",
    );
    assert_eq!(answer(&lapses, "inside-stays", "cut-short-by-hand"), Answer::No);
    let holds = with(
        "{ mark: MC, kind: monofilament line cutters,",
        "{ mark: MC, expires: 2026-12-09, kind: monofilament line cutters,",
    );
    assert_eq!(answer(&holds, "inside-stays", "cut-short-by-hand"), Answer::Yes);
}

#[test]
fn on_a_rail_that_nothing_reaches_there_is_no_way_at_all() {
    let options = with("freeboard: 2 ft", "freeboard: 9 ft");
    let nothing = |id: &str| answered(&options, id).0.standing() == Standing::Nothing;
    for id in ["inside-stays", "tangled-stays", "outside-showing-stays", "inside-boardable"] {
        assert!(nothing(id), "{id}");
    }
    // On deck everything works as before.
    assert!(!nothing("outside-showing-j-aboard"));
    let lift = options.lift.unwrap();
    assert!(lift.lifted.len() > 3, "{:?}", lift.lifted);
}

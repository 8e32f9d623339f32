//! Nets, hoists and what a turtle is laid on.

use super::{ATLANTIC, GULF, IN_2018, IN_2024, OLD_GULF, TODAY};
use crate::outfit::gear::{
    appendix_f as f, equipped_for_part_622, equipped_for_part_635, section_635 as s,
};
use crate::outfit::{but, just_over, just_under, outcome, plus, vessel, without};

fn gulf(tool: &str, requirement: &str) -> String {
    outcome(GULF, TODAY, "5 ft", &[tool], requirement)
}

fn atlantic(tool: &str, requirement: &str) -> String {
    outcome(ATLANTIC, IN_2024, "5 ft", &[tool], requirement)
}

/// Trap 15: 50 CFR part 622 Appendix F, A.5 (read): 3 in bar measure, so a net
/// sold by a stretched mesh of 6 in is 3 in bar.
#[test]
fn a_stretched_mesh_of_6_in_is_3_in_bar_measure_under_appendix_f() {
    for net in [f::DIP_NET, f::HOOP_NET, f::HOIST] {
        assert_eq!(gulf(&but(net, "mesh", "3 in"), "net"), "met");
        assert_eq!(gulf(&but(net, "mesh", &just_over("3 in")), "net"), "not-met");
        assert_eq!(gulf(&but(net, "mesh", "6 in"), "net"), "not-met");
    }
}

/// Trap 15: 50 CFR 635.21(c)(5)(i)(E) (read): openings of at most 3 in, and not a
/// word on how they are measured.
#[test]
fn a_mesh_that_only_one_way_of_measuring_allows_is_no_pass_under_section_635_21() {
    for (bar, expected) in [
        ("1 1/2 in", "met"),
        (&just_over("1 1/2 in"), "cannot-tell"),
        ("3 in", "cannot-tell"),
        (&just_over("3 in"), "not-met"),
    ] {
        assert_eq!(atlantic(&but(s::DIP_NET, "mesh", bar), "net"), expected, "{bar}");
    }
    let judged = vessel("5 ft").with(&[but(s::DIP_NET, "mesh", "3 in")]).under(ATLANTIC, IN_2024);
    assert_eq!(judged.codes("net"), ["wording-disputed"]);
}

/// Trap 16: 50 CFR part 622 Appendix F, A.5(b), (c) (read): the length is that of
/// the ropes, and rope and net carry 100 lb.
#[test]
fn hoop_net_and_hoist_are_measured_by_their_ropes() {
    for net in [f::HOOP_NET, f::HOIST] {
        assert_eq!(gulf(&but(net, "rope-length", "7 ft 6 in"), "net"), "met");
        assert_eq!(gulf(&but(net, "rope-length", &just_under("7 ft 6 in")), "net"), "not-met");
        assert_eq!(gulf(&without(net, "rope-length"), "net"), "cannot-tell");
        assert_eq!(gulf(&but(net, "carries", "99 lb"), "net"), "not-met");
    }
}

/// Trap 16: 50 CFR part 622 Appendix F, A.5(c) (read): no bag depth for the hoist.
#[test]
fn the_hoist_has_no_bag_depth_and_the_nets_have() {
    assert!(!f::HOIST.contains("bag-depth"));
    assert_eq!(gulf(f::HOIST, "net"), "met");
    for net in [f::DIP_NET, f::HOOP_NET] {
        assert_eq!(gulf(net, "net"), "met");
        assert_eq!(gulf(&without(net, "bag-depth"), "net"), "cannot-tell");
        assert_eq!(gulf(&but(net, "bag-depth", &just_under("38 in")), "net"), "not-met");
    }
}

/// Trap 16: 50 CFR part 622 Appendix F, A.5(c) (read): a frame of PVC pipe is
/// glued and of at least Schedule 40.
#[test]
fn a_hoist_of_pvc_pipe_is_glued_and_of_schedule_40() {
    let pvc = |glued: &str, schedule: &str| {
        let frame = but(f::HOIST, "frame-of-pvc", "yes");
        gulf(&plus(&plus(&frame, "glued-joints", glued), "schedule", schedule), "net")
    };
    assert_eq!(pvc("yes", "40"), "met");
    assert_eq!(pvc("yes", "80"), "met");
    assert_eq!(pvc("yes", "20"), "not-met");
    assert_eq!(pvc("no", "40"), "not-met");
}

/// Trap 16: 50 CFR 635.21(c)(5)(i)(E) until 28 November 2024 (read): a dipnet.
#[test]
fn hoop_net_and_hoist_did_not_serve_section_635_21() {
    for net in [f::HOOP_NET, f::HOIST] {
        let judged = vessel("5 ft").with(&[net]).under(ATLANTIC, IN_2024);
        assert_eq!(
            (judged.outcome("net"), judged.codes("net")),
            ("not-met", vec!["nothing-aboard"])
        );
    }
    assert_eq!(atlantic(s::DIP_NET, "net"), "met");
}

const CUSHION: &str = "{ mark: BC-9, kind: boat cushion, sized-for-turtles: yes, life-saving: no }";
const SURFACE: &str = "{ mark: CS-1, kind: cushioned and elevated surface, elevated: yes, sized-for-turtles: yes, life-saving: no }";
const JACKET: &str = "{ mark: LJ-1, kind: life jacket, elevated: yes, sized-for-turtles: yes, surplus-to-safety: yes }";

/// Trap 17: 50 CFR 635.21(c)(5)(i)(F) (read): a tire; part 622 Appendix F, A.6
/// (read): a tire, a boat cushion or any cushioned and elevated surface.
#[test]
fn section_635_21_wants_a_tire_and_appendix_f_any_cushion() {
    assert_eq!(atlantic(s::TIRE, "support"), "met");
    assert_eq!(gulf(f::TIRE, "support"), "met");
    for support in [CUSHION, SURFACE, JACKET] {
        assert_eq!(gulf(support, "support"), "met", "{support}");
        assert_eq!(atlantic(support, "support"), "not-met", "{support}");
    }
    for (profile, day) in [(GULF, TODAY), (ATLANTIC, IN_2024)] {
        let belts = but(f::TIRE, "no-steel-belts", "no");
        assert_eq!(outcome(profile, day, "5 ft", &[belts], "support"), "not-met", "{profile}");
    }
}

/// Trap 17: 50 CFR part 622 Appendix F, A.6 (read): a life-saving device only in
/// addition to everything that the safety rules ask for; 622.29(a)(1) before
/// the 2019 rule (read) took life jackets without that condition.
///
/// Pins: us-gulf-reef-fish-2019/support: life-saving-device surplus-to-safety yes
#[test]
fn a_life_jacket_serves_only_if_it_is_surplus_except_in_the_old_gulf_edition() {
    let needed = but(JACKET, "surplus-to-safety", "no");
    let unsaid = without(JACKET, "surplus-to-safety");
    assert_eq!(gulf(JACKET, "support"), "met");
    assert_eq!(gulf(&needed, "support"), "not-met");
    assert_eq!(gulf(&unsaid, "support"), "cannot-tell");
    for jacket in [JACKET, &needed, &unsaid] {
        assert_eq!(outcome(OLD_GULF, IN_2018, "5 ft", &[jacket], "support"), "met", "{jacket}");
    }
}

/// Trap 18: 50 CFR 635.21(c)(5)(ii)(B) (read): turtles less than 3 ft should be
/// boated; part 622 Appendix F, B.1 (read): all up to 3 ft must be. Neither
/// the limit nor the `should` loosens the net.
#[test]
fn should_be_boated_does_not_make_the_net_a_recommendation() {
    let cases = [
        (GULF, TODAY, equipped_for_part_622("5 ft")),
        (ATLANTIC, IN_2024, equipped_for_part_635("5 ft")),
    ];
    for (profile, day, whole) in cases {
        let whole_kit = whole.under(profile, day);
        assert_eq!(whole_kit.verdict(), "ready", "{}", whole_kit.ran.page());
        let netless = whole.lacking("DN-1").under(profile, day);
        assert_eq!(netless.finding("net")["level"], "required", "{profile}");
        assert_eq!(
            (netless.outcome("net"), netless.verdict()),
            ("not-met", "not-ready"),
            "{profile}"
        );
    }
}

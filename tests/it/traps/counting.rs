//! Which tool counts twice, how few long tools will do, and what an older
//! edition was content with.

use super::{ATLANTIC, GULF, IN_2018, IN_2024, OLD_GULF, SOUTH, TODAY};
use crate::outfit::gear::{appendix_f as f, equipped_for_part_635, section_635 as s};
use crate::outfit::{Judged, but, vessel};

fn gulf(kit: &[&str]) -> Judged {
    vessel("5 ft").with(kit).under(GULF, TODAY)
}

fn atlantic(kit: &[&str]) -> Judged {
    vessel("5 ft").with(kit).under(ATLANTIC, IN_2024)
}

/// The outcomes of internal, external and inverted V.
fn long_tools(judged: &Judged) -> [&str; 3] {
    ["long-dehooker-internal", "long-dehooker-external", "inverted-v-device"]
        .map(|id| judged.outcome(id))
}

/// Trap 9: 50 CFR part 622 Appendix F, A.3 and A.8 (read); 635.21(c)(5)(i)(C) and
/// (H) (read): the internal dehooker may be used for external hooks.
///
/// Pins: us-gulf-reef-fish-2019/long-dehooker-external: met by the tool of long-dehooker-internal
/// Pins: us-gulf-reef-fish-2019/short-dehooker-external: met by the tool of short-dehooker-internal
/// Pins: us-atlantic-longline-2009/long-dehooker-external: met by the tool of long-dehooker-internal
/// Pins: us-atlantic-longline-2009/short-dehooker-external: met by the tool of short-dehooker-internal
#[test]
fn an_internal_dehooker_meets_the_external_one_and_never_the_reverse() {
    for (judge, long, short) in [
        (
            gulf as fn(&[&str]) -> Judged,
            [f::INTERNAL, f::EXTERNAL],
            [f::SHORT_INTERNAL, f::SHORT_EXTERNAL],
        ),
        (atlantic, [s::INTERNAL, s::EXTERNAL], [s::SHORT_INTERNAL, s::SHORT_EXTERNAL]),
    ] {
        for (size, [internal, external]) in [("long", long), ("short", short)] {
            let (inner, outer) =
                (format!("{size}-dehooker-internal"), format!("{size}-dehooker-external"));
            let alone = judge(&[internal]);
            assert_eq!((alone.outcome(&inner), alone.outcome(&outer)), ("met", "met"), "{size}");
            assert_eq!(alone.through(&outer), [inner.as_str()], "{size}");
            let reverse = judge(&[external]);
            assert_eq!(
                (reverse.outcome(&inner), reverse.outcome(&outer)),
                ("not-met", "met"),
                "{size}"
            );
            assert_eq!(reverse.codes(&inner), ["nothing-aboard"], "{size}");
        }
    }
}

/// Trap 9: 50 CFR part 622 Appendix F, A.3 (read): the tool of A.2 is deemed to
/// do, whatever A.3 asks (here `blunt, rounded`, which nobody looked at).
#[test]
fn a_deemed_tool_is_not_asked_for_what_the_other_clause_wants() {
    let internal = f::INTERNAL;
    assert!(!internal.contains("blunt-end"));
    assert_eq!(gulf(&[internal]).outcome("long-dehooker-external"), "met");
    // An internal dehooker that fails its own clause serves neither.
    let short = but(internal, "handle", "7 ft");
    let judged = gulf(&[&short]);
    assert_eq!(long_tools(&judged)[..2], ["not-met", "not-met"]);
}

/// Trap 9: 50 CFR part 622 Appendix F, A.4 (read): a long-handled J-style dehooker
/// as in A.3; 635.21(c)(5)(i)(D) (read): a 6-ft J-style dehooker used for (C).
///
/// Pins: us-gulf-reef-fish-2019/inverted-v-device: met by the tool of long-dehooker-external; tool of long-dehooker-external end j
/// Pins: us-atlantic-longline-2009/inverted-v-device: met by the tool of long-dehooker-external; tool of long-dehooker-external end j
#[test]
fn a_j_style_external_dehooker_pulls_the_inverted_v_too() {
    for (judge, external) in [(gulf as fn(&[&str]) -> Judged, f::EXTERNAL), (atlantic, s::EXTERNAL)]
    {
        let j = judge(&[external]);
        assert_eq!(j.outcome("inverted-v-device"), "met");
        assert_eq!(j.through("inverted-v-device"), ["long-dehooker-external"]);
        for end in ["twist", "pigtail", "other"] {
            let twisted = judge(&[&but(external, "end", end)]);
            assert_eq!(long_tools(&twisted), ["not-met", "met", "not-met"], "{end}");
        }
    }
}

/// Trap 9: 50 CFR part 622 Appendix F, A.2 to A.4 and 635.21(c)(5)(i)(B) to (D)
/// (read): the V is met by the tool used for the external one, not by one
/// that is only deemed to be it.
#[test]
fn an_internal_dehooker_that_stands_for_both_does_not_pull_the_inverted_v() {
    for (judge, internal) in [(gulf as fn(&[&str]) -> Judged, f::INTERNAL), (atlantic, s::INTERNAL)]
    {
        for end in ["twist", "pigtail", "j"] {
            let judged = judge(&[&but(internal, "end", end)]);
            assert_eq!(long_tools(&judged), ["met", "met", "not-met"], "{end}");
        }
    }
}

/// Trap 10: 50 CFR part 622 Appendix F, A.2 to A.4 (read).
#[test]
fn two_long_tools_cover_three_requirements_above_4_ft() {
    let covers = |kit: &[&str]| long_tools(&gulf(kit)) == ["met"; 3];
    assert!(covers(&[f::INTERNAL, f::BOAT_HOOK]));
    assert!(covers(&[f::INTERNAL, f::EXTERNAL]));
    assert!(!covers(&[f::INTERNAL]));
    assert!(!covers(&[f::EXTERNAL, f::BOAT_HOOK]));
    assert!(!covers(&[f::INTERNAL, &but(f::EXTERNAL, "end", "twist")]));
    assert!(!covers(&[f::BOAT_HOOK]));
}

/// The kit of a Gulf vessel in 2018: one long and one short dehooker, both
/// for external hooks, and no control device.
fn gulf_in_2018(freeboard: &str) -> crate::outfit::Outfit {
    equipped_for_part_635(freeboard)
        .lacking("DI-1")
        .lacking("SI-1")
        .lacking("CT-1")
        .set("people", "[]")
}

/// Trap 11: 50 CFR 622.29(a)(1)(iv) before the 2019 rule (read): one long-handled
/// dehooker, (B) or (C), and one short-handled, (G) or (H).
#[test]
fn the_old_gulf_edition_was_content_with_one_dehooker_of_each_length() {
    let old = gulf_in_2018("5 ft").under(OLD_GULF, IN_2018);
    assert_eq!(old.verdict(), "ready", "{}", old.ran.page());
    for requirement in ["control-device", "long-dehooker-internal", "short-dehooker-internal"] {
        assert_eq!(old.outcome(requirement), "unbound", "{requirement}");
    }
    let without = gulf_in_2018("5 ft").lacking("DE-1").under(OLD_GULF, IN_2018);
    assert_eq!((without.verdict(), without.outcome("long-dehooker")), ("not-ready", "not-met"));
    let internal = gulf_in_2018("5 ft").instead("DE-1", s::INTERNAL).under(OLD_GULF, IN_2018);
    assert_eq!((internal.verdict(), internal.outcome("long-dehooker")), ("ready", "met"));
}

/// Trap 11: The same kit under the 2019 edition, Appendix F, A.2 and A.7 (read).
#[test]
fn a_kit_ready_under_the_old_gulf_edition_can_fail_the_2019_edition() {
    let new = gulf_in_2018("5 ft").under(GULF, "2019-08-01");
    assert_eq!(new.verdict(), "not-ready");
    assert_eq!(new.outcome("long-dehooker-internal"), "not-met");
    assert_eq!(new.outcome("short-dehooker-internal"), "not-met");
    assert_eq!(new.outcome("long-dehooker-external"), "cannot-tell"); // its end was not measured
}

/// Trap 11: 50 CFR 622.29(a)(1)(iii) before the 2019 rule (read): at 4 ft or less
/// a dipnet handle of variable length; (iv): above it that of (E). Appendix
/// F, A.5(a) (read) has no such exception.
#[test]
fn a_short_dipnet_handle_was_enough_on_a_low_rail_until_2019() {
    let net = but(s::DIP_NET, "handle", "1 ft");
    let low = vessel("4 ft").with(&[&net]).under(OLD_GULF, IN_2018);
    assert_eq!((low.outcome("net-low-rail"), low.outcome("net")), ("met", "unbound"));
    let high = vessel("4 ft 1 in").with(&[&net]).under(OLD_GULF, IN_2018);
    assert_eq!((high.outcome("net-low-rail"), high.outcome("net")), ("unbound", "not-met"));
    for profile in [GULF, SOUTH] {
        assert_eq!(
            vessel("4 ft").with(&[&net]).under(profile, TODAY).outcome("net"),
            "not-met",
            "{profile}"
        );
    }
}

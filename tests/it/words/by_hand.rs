//! What no row of words can say: alternatives within one tool, weights,
//! schedules of pipe, papers, whose tool counts twice.

use crate::outfit::gear::{appendix_f as f, section_635 as s};
use crate::outfit::{but, just_under, outcome, plus, vessel, without};

const GULF: &str = "us-gulf-reef-fish-2019";
const OLD_GULF: &str = "us-gulf-reef-fish-before-2019";
const SOUTH: &str = "us-south-atlantic-snapper-grouper-2019";
const ATLANTIC: &str = "us-atlantic-longline-2009";
const HOUSE: &str = "good-practice-longline";
const TODAY: &str = "2026-03-02";
const IN_2024: &str = "2024-09-02";
const IN_2018: &str = "2018-12-10";

fn gulf(kit: &[&str], requirement: &str) -> String {
    outcome(GULF, TODAY, "5 ft", kit, requirement)
}

fn atlantic(kit: &[&str], requirement: &str) -> String {
    outcome(ATLANTIC, IN_2024, "5 ft", kit, requirement)
}

/// 50 CFR part 622 Appendix F, A.1 and 635.21(c)(5)(i)(A) (read): monofilament
/// of 2.0 to 2.1 mm, or braided or tarred polypropylene mainline.
///
/// Pins: us-gulf-reef-fish-2019/long-line-cutter: long-line-cutter cuts-monofilament 2.0 mm
/// Pins: us-gulf-reef-fish-2019/long-line-cutter: long-line-cutter cuts-poly-mainline yes
/// Pins: us-atlantic-longline-2009/long-line-cutter: long-line-cutter cuts-monofilament 2.0 mm
/// Pins: us-atlantic-longline-2009/long-line-cutter: long-line-cutter cuts-poly-mainline yes
#[test]
fn a_line_cutter_cuts_2_mm_or_polypropylene() {
    for (judge, cutter) in [(gulf as fn(&[&str], &str) -> String, f::CUTTER), (atlantic, s::CUTTER)]
    {
        let with = |thick: &str, poly: &str| {
            let tool = plus(&but(cutter, "cuts-monofilament", thick), "cuts-poly-mainline", poly);
            judge(&[&tool], "long-line-cutter")
        };
        assert_eq!(with("2.1 mm", "no"), "met");
        assert_eq!(with(&just_under("2.1 mm"), "no"), "cannot-tell");
        assert_eq!(with("2.0 mm", "no"), "cannot-tell");
        assert_eq!(with(&just_under("2.0 mm"), "no"), "not-met");
        assert_eq!(with("1 mm", "yes"), "met");
    }
}

/// 50 CFR part 622 Appendix F, A.5 and 635.21(c)(5)(i)(E) (read): at least
/// 100 lb, which is 45.359237 kg exactly (agreement of 1959).
///
/// Pins: us-gulf-reef-fish-2019/net: dip-net carries 100 lb
/// Pins: us-gulf-reef-fish-2019/net: hoop-net carries 100 lb
/// Pins: us-gulf-reef-fish-2019/net: hoist carries 100 lb
/// Pins: us-atlantic-longline-2009/net: dip-net carries 100 lb
/// Pins: us-gulf-reef-fish-before-2019/net-low-rail: dip-net carries 100 lb
#[test]
fn a_net_carries_100_lb_to_the_milligram() {
    for (carries, expected) in
        [("100 lb", "met"), ("45.359237 kg", "met"), ("45.359236 kg", "not-met")]
    {
        for net in [f::DIP_NET, f::HOOP_NET, f::HOIST] {
            assert_eq!(gulf(&[&but(net, "carries", carries)], "net"), expected, "{net} {carries}");
        }
        let net = but(s::DIP_NET, "carries", carries);
        assert_eq!(atlantic(&[&net], "net"), expected, "{carries}");
        assert_eq!(outcome(OLD_GULF, IN_2018, "4 ft", &[net], "net-low-rail"), expected);
    }
}

/// 50 CFR part 622 Appendix F, A.5(c) (read): a frame of PVC pipe is glued and
/// of at least Schedule 40.
///
/// Pins: us-gulf-reef-fish-2019/net: hoist frame-of-pvc no; hoist frame-of-pvc yes
/// Pins: us-gulf-reef-fish-2019/net: hoist glued-joints yes; hoist schedule 40
#[test]
fn the_pipe_of_a_hoist_is_glued_and_of_schedule_40_at_least() {
    let pvc = |glued: &str, schedule: &str| {
        let frame = but(f::HOIST, "frame-of-pvc", "yes");
        gulf(&[&plus(&plus(&frame, "glued-joints", glued), "schedule", schedule)], "net")
    };
    assert_eq!(pvc("yes", "40"), "met");
    assert_eq!(pvc("yes", "41"), "met");
    assert_eq!(pvc("yes", "39"), "not-met");
    assert_eq!(pvc("no", "40"), "not-met");
    assert_eq!(gulf(&[f::HOIST], "net"), "met");
    assert_eq!(gulf(&[&without(f::HOIST, "frame-of-pvc")], "net"), "cannot-tell");
}

/// 50 CFR part 622 Appendix F, A.6 (read): a life-saving device only beyond
/// what the safety rules ask; so too a cushion that is itself one.
///
/// Pins: us-gulf-reef-fish-2019/support: boat-cushion life-saving no; boat-cushion surplus-to-safety yes
/// Pins: us-gulf-reef-fish-2019/support: cushioned-surface life-saving no; cushioned-surface surplus-to-safety yes
#[test]
fn a_cushion_that_saves_lives_serves_only_if_it_is_surplus() {
    for kind in ["boat cushion", "cushioned and elevated surface"] {
        let with = |more: &str| {
            let elevated = if kind == "boat cushion" { "" } else { ", elevated: yes" };
            let tool =
                format!("{{ mark: CU-1, kind: {kind}{elevated}, sized-for-turtles: yes{more} }}");
            gulf(&[&tool], "support")
        };
        assert_eq!(with(", life-saving: no"), "met", "{kind}");
        assert_eq!(with(", life-saving: no, surplus-to-safety: no"), "met", "{kind}");
        assert_eq!(with(", life-saving: yes, surplus-to-safety: yes"), "met", "{kind}");
        assert_eq!(with(", life-saving: yes, surplus-to-safety: no"), "not-met", "{kind}");
        assert_eq!(with(", life-saving: yes"), "cannot-tell", "{kind}");
    }
}

/// 50 CFR part 622 Appendix F, A.12(f) and 635.21(c)(5)(i)(L)(6) (read):
/// Schedule 40.
///
/// Pins: us-gulf-reef-fish-2019/mouth-gags: pvc-coupling schedule 40
/// Pins: us-atlantic-longline-2009/mouth-gags: pvc-coupling schedule 40
#[test]
fn couplings_are_of_schedule_40_and_no_other() {
    for (judge, block) in [(gulf as fn(&[&str], &str) -> String, f::BLOCK), (atlantic, s::BLOCK)] {
        for (schedule, expected) in [("39", "not-met"), ("40", "met"), ("41", "not-met")] {
            for changed in 0..f::COUPLINGS.len() {
                let mut kit = vec![block.to_owned()];
                kit.extend(f::COUPLINGS.map(str::to_owned));
                kit[changed + 1] = but(&kit[changed + 1], "schedule", schedule);
                let kit: Vec<&str> = kit.iter().map(String::as_str).collect();
                assert_eq!(judge(&kit, "mouth-gags"), expected, "{schedule}");
            }
        }
    }
}

const SPECULUM: &str = "{ mark: SP-1, kind: avian oral speculum, material: \"304\", length: 9 in, wire: 3/16 in, padded-length: 8 in, padding: vinyl tubing, tubing-outside: 5/16 in, tubing-inside: 3/16 in }";

/// 50 CFR part 622 Appendix F, A.12(g) (read): vinyl tubing of 5/16 in by 3/16
/// in, friction tape or similar (fractions rebuilt from the metric brackets).
///
/// Pins: us-gulf-reef-fish-2019/mouth-gags: oral-speculum padding vinyl tubing
/// Pins: us-gulf-reef-fish-2019/mouth-gags: oral-speculum padding friction tape or similar
#[test]
fn a_speculum_is_padded_with_tubing_or_tape() {
    let with = |tool: &str| gulf(&[f::BLOCK, tool], "mouth-gags");
    assert_eq!(with(SPECULUM), "met");
    assert_eq!(with(&but(SPECULUM, "tubing-outside", &just_under("5/16 in"))), "not-met");
    let bare = without(&without(SPECULUM, "tubing-outside"), "tubing-inside");
    assert_eq!(with(&bare), "cannot-tell");
    for (padding, expected) in [("friction tape", "met"), ("similar", "met"), ("none", "not-met")] {
        assert_eq!(with(&but(&bare, "padding", padding)), expected, "{padding}");
    }
}

const POLES: &str = "{ mark: CP-1, kind: pair of control poles, pole: 12 ft, line-length: 32 ft, line-diameter: 1/2 in, line-lay: soft, line-material: nylon, rope-exposed: 20 in, pole-material: conduit, pole-size: 3/4 in, schedule: 40, tag-line: yes }";

/// 635.21(c)(5)(i)(M)(2) until 28 November 2024 (read): 3/4 in conduit of
/// Schedule 40, fibreglass, aluminium or similar.
///
/// Pins: us-atlantic-longline-2009/control-device: control-poles pole-material conduit; control-poles schedule 40
/// Pins: us-atlantic-longline-2009/control-device: control-poles pole-material fibreglass or aluminium or similar
#[test]
fn control_poles_are_of_conduit_or_of_something_like_fibreglass() {
    let with = |tool: &str| atlantic(&[tool], "control-device");
    for (schedule, expected) in [("39", "not-met"), ("40", "met"), ("41", "not-met")] {
        assert_eq!(with(&but(POLES, "schedule", schedule)), expected, "{schedule}");
    }
    let other = without(&without(POLES, "schedule"), "pole-size");
    for (material, expected) in [
        ("conduit", "cannot-tell"),
        ("fibreglass", "met"),
        ("aluminium", "met"),
        ("similar", "met"),
        ("other", "not-met"),
    ] {
        assert_eq!(with(&but(&other, "pole-material", material)), expected, "{material}");
    }
}

/// 50 CFR part 622 Appendix F, A.1 (read), 635.21(c)(5)(i)(A) (read): a set of
/// blades for the cutter; 635.21 says enough for all cutting surfaces.
///
/// Pins: us-622-appendix-f/replacement-blades: asked for; spare for long-line-cutter
/// Pins: us-gulf-reef-fish-2019/replacement-blades: asked for
/// Pins: us-south-atlantic-snapper-grouper-2019/replacement-blades: asked for
/// Pins: us-atlantic-longline-2009/replacement-blades: asked for; spare for long-line-cutter
/// Pins: us-atlantic-longline-2009/replacement-blades: replacement-blades all-cutting-surfaces yes
/// Pins: us-dolphin-wahoo-longline-2009/replacement-blades: asked for
/// Pins: us-gulf-reef-fish-before-2019/replacement-blades: asked for
#[test]
fn spare_blades_fit_the_cutter_that_serves() {
    for (profile, day, cutter, blades) in [
        ("us-622-appendix-f", TODAY, f::CUTTER, f::BLADES),
        (GULF, TODAY, f::CUTTER, f::BLADES),
        (SOUTH, TODAY, f::CUTTER, f::BLADES),
        (ATLANTIC, IN_2024, s::CUTTER, s::BLADES),
        ("us-dolphin-wahoo-longline-2009", IN_2024, s::CUTTER, s::BLADES),
        (OLD_GULF, IN_2018, s::CUTTER, s::BLADES),
    ] {
        let with = |kit: &[&str]| outcome(profile, day, "5 ft", kit, "replacement-blades");
        assert_eq!(with(&[cutter, blades]), "met", "{profile}");
        assert_eq!(with(&[cutter]), "not-met", "{profile}");
        let spare_of_another = but(blades, "fits", "[LC-9]");
        let another = but(&but(cutter, "mark", "LC-9"), "handle", "1 ft");
        assert_eq!(with(&[cutter, &another, &spare_of_another]), "not-met", "{profile}");
    }
    for (all, expected) in [("yes", "met"), ("no", "not-met")] {
        let blades = but(s::BLADES, "all-cutting-surfaces", all);
        assert_eq!(atlantic(&[s::CUTTER, &blades], "replacement-blades"), expected);
    }
}

/// 622.29(a)(1)(iv) before the 2019 rule, with 635.21(c)(5)(i)(C), (D) (read):
/// the one long-handled dehooker, if it is that of (C) and J-style, pulls the
/// inverted V too.
///
/// Pins: us-gulf-reef-fish-before-2019/inverted-v-device: shares the tool of long-dehooker
#[test]
fn the_one_dehooker_of_the_old_gulf_edition_pulls_the_inverted_v_if_it_is_j_style() {
    let with = |tool: &str| {
        let judged = vessel("5 ft").with(&[tool]).under(OLD_GULF, IN_2018);
        ["long-dehooker", "inverted-v-device"].map(|id| judged.outcome(id).to_owned())
    };
    assert_eq!(with(s::EXTERNAL), ["met", "met"]);
    assert_eq!(with(&but(s::EXTERNAL, "end", "twist")), ["met", "not-met"]);
    assert_eq!(with(&but(s::INTERNAL, "end", "j")), ["met", "not-met"]);
}

/// The house's own list (common practice, no source): one tool may serve the
/// first and the further dehooker, the first and the second gag.
///
/// Pins: good-practice-longline/second-dehooker-style: 2 different types; shares the tool of long-dehooker
/// Pins: good-practice-longline/second-dehooker-style: long-dehooker-external end j; long-dehooker-internal end j
/// Pins: good-practice-longline/second-dehooker-style: long-dehooker-external end twist or pigtail
/// Pins: good-practice-longline/second-dehooker-style: long-dehooker-internal end twist or pigtail
/// Pins: good-practice-longline/short-dehookers: 2 different types
/// Pins: good-practice-longline/short-dehookers: short-dehooker-external end j; short-dehooker-internal end j
/// Pins: good-practice-longline/short-dehookers: short-dehooker-external end twist or pigtail
/// Pins: good-practice-longline/short-dehookers: short-dehooker-internal end twist or pigtail
/// Pins: good-practice-longline/inverted-v-device: long-dehooker-external end j
/// Pins: good-practice-longline/inverted-v-device: shares the tool of long-dehooker
/// Pins: good-practice-longline/inverted-v-device: shares the tool of second-dehooker-style
#[test]
fn the_house_wants_both_styles_of_dehooker_and_lets_one_serve_twice() {
    let tool = |length: &str, hooks: &str, mark: &str, end: &str| {
        format!(
            "{{ mark: {mark}, kind: {length}-handled dehooker for {hooks} hooks, handle: 12 ft, end: {end}, inspected: 2026-01-05 }}"
        )
    };
    let with = |kit: &[String]| {
        let judged = vessel("5 ft").with(kit).under(HOUSE, TODAY);
        ["long-dehooker", "second-dehooker-style", "inverted-v-device", "short-dehookers"]
            .map(|id| judged.outcome(id).to_owned())
    };
    let [met, not] = ["met", "not-met"];
    for hooks in ["external", "internal"] {
        let of = |end: &str| tool("long", hooks, "D-1", end);
        let inverted = if hooks == "external" { met } else { not };
        for turned in ["twist", "pigtail"] {
            let twisted = tool("long", hooks, "D-2", turned);
            assert_eq!(with(&[of("j"), twisted.clone()]), [met, met, inverted, not]);
            assert_eq!(with(&[twisted]), [met, not, not, not], "{turned}");
            let short = [tool("short", hooks, "S-1", "j"), tool("short", hooks, "S-2", turned)];
            assert_eq!(with(&short)[3], met);
            assert_eq!(with(&short[..1])[3], not);
            assert_eq!(with(&short[1..])[3], not);
        }
        assert_eq!(with(&[of("j"), tool("long", hooks, "D-2", "j")]), [met, not, inverted, not]);
        assert_eq!(with(&[of("j"), tool("long", hooks, "D-2", "other")])[1], not);
        let short = [tool("short", hooks, "S-1", "other"), tool("short", hooks, "S-2", "twist")];
        assert_eq!(with(&short)[3], not);
    }
}

/// The house's own list (common practice, no source): one type of gag is
/// asked, a second one recommended, and the first counts for both.
///
/// Pins: good-practice-longline/mouth-gag: 1 different types
/// Pins: good-practice-longline/second-mouth-gag: 2 different types; shares the tool of mouth-gag
#[test]
fn the_house_wants_one_type_of_gag_and_would_like_two() {
    let with = |kit: &[&str]| {
        let kit: Vec<_> = kit.iter().map(|tool| plus(tool, "inspected", "2026-01-05")).collect();
        let judged = vessel("5 ft").with(&kit).under(HOUSE, TODAY);
        ["mouth-gag", "second-mouth-gag"].map(|id| judged.outcome(id).to_owned())
    };
    assert_eq!(with(&[]), ["not-met", "not-met"]);
    assert_eq!(with(&[f::BLOCK]), ["met", "not-met"]);
    assert_eq!(with(&[f::BLOCK, &but(f::BLOCK, "mark", "WB-2")]), ["met", "not-met"]);
    assert_eq!(with(&[f::BLOCK, f::HANK]), ["met", "met"]);
}

/// The house's own figure (common practice, no source): 12 months, good
/// through the day before the anniversary.
///
/// Pins: good-practice-longline/edition: inspection due every 12 months
#[test]
fn an_inspection_is_good_for_12_months() {
    for (inspected, expected) in [("2025-03-02", "not-met"), ("2025-03-03", "met")] {
        let pliers = plus(f::PLIERS, "inspected", inspected);
        assert_eq!(outcome(HOUSE, TODAY, "5 ft", &[pliers], "pliers"), expected, "{inspected}");
    }
}

/// 50 CFR 635.2 (read): freeboard is the distance from the top rail of the
/// gunwale to the water; the agency's page for part 622 says the same. From the
/// working deck it is another figure.
///
/// Pins: us-622-appendix-f/edition: freeboard from the top of the rail
/// Pins: us-gulf-reef-fish-2019/edition: freeboard from the top of the rail
/// Pins: us-gulf-reef-fish-before-2019/edition: freeboard from the top of the rail
/// Pins: us-south-atlantic-snapper-grouper-2019/edition: freeboard from the top of the rail
/// Pins: us-atlantic-longline-2009/edition: freeboard from the top of the rail
/// Pins: us-dolphin-wahoo-longline-2009/edition: freeboard from the top of the rail
/// Pins: good-practice-longline/edition: freeboard from the top of the rail
#[test]
fn freeboard_is_taken_from_the_top_of_the_rail_and_not_from_the_deck() {
    let inspected = plus(f::DIP_NET, "inspected", "2026-01-05");
    for (profile, day, net) in [
        ("us-622-appendix-f", TODAY, f::DIP_NET),
        (GULF, TODAY, f::DIP_NET),
        (SOUTH, TODAY, f::DIP_NET),
        (HOUSE, TODAY, &inspected),
        (ATLANTIC, IN_2024, s::DIP_NET),
        ("us-dolphin-wahoo-longline-2009", IN_2024, s::DIP_NET),
        (OLD_GULF, IN_2018, s::DIP_NET),
    ] {
        let from = |place: &str| {
            let freeboard = format!("{{ from: {place}, value: 5 ft }}");
            let vessel = vessel("5 ft").set("freeboard", &freeboard).with(&[net]);
            vessel.under(profile, day).outcome("net").to_owned()
        };
        assert_eq!(from("top of the rail"), "met", "{profile}");
        assert_eq!(from("working deck"), "cannot-tell", "{profile}");
    }
}

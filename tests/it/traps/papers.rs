//! Documents, training, whom a rule binds, its numbering, approved models.

use super::{ATLANTIC, DOLPHIN, GULF, IN_2018, IN_2024, OLD_GULF, SOUTH, TODAY};
use crate::outfit::gear::{appendix_f as f, equipped_for_part_635, section_635 as s};
use crate::outfit::{Judged, Outfit, but, plus, vessel, without};
use crate::run;

fn carrying(document: &str, profile: &str, day: &str) -> Judged {
    vessel("5 ft").carrying(&[document]).under(profile, day)
}

/// Trap 19: 50 CFR 622.29(a)(1), 622.179(a)(1) (read): the 2019 edition,
/// electronic or paper; 635.21(b)(1) (read): inside the wheelhouse, no word
/// of an electronic copy; 622.29(a)(1) before 2019 (read): printed.
#[test]
fn an_electronic_document_counts_only_in_the_2019_editions_of_part_622() {
    let paper = plus(s::DOCUMENT, "edition", "\"2019\"");
    let electronic = but(&paper, "form", "electronic");
    for (profile, day, expected) in [
        (GULF, TODAY, "met"),
        (SOUTH, TODAY, "met"),
        (ATLANTIC, IN_2024, "cannot-tell"),
        (OLD_GULF, IN_2018, "not-met"),
    ] {
        let id = "careful-release-document";
        assert_eq!(carrying(&electronic, profile, day).outcome(id), expected, "{profile}");
        assert_eq!(carrying(&paper, profile, day).outcome(id), "met", "{profile}");
        assert_eq!(vessel("5 ft").under(profile, day).outcome(id), "not-met", "{profile}");
    }
}

/// Trap 19: 50 CFR 622.29(a)(1), 622.179(a)(1) (read) name the 2019 edition.
///
/// Pins: us-gulf-reef-fish-2019/careful-release-document: careful-release-document edition 2019
/// Pins: us-south-atlantic-snapper-grouper-2019/careful-release-document: careful-release-document edition 2019
#[test]
fn an_older_document_does_not_serve_the_2019_editions() {
    for profile in [GULF, SOUTH] {
        for edition in ["\"2008\"", "\"2010\""] {
            let older = but(f::DOCUMENT, "edition", edition);
            assert_eq!(
                carrying(&older, profile, TODAY).outcome("careful-release-document"),
                "not-met",
                "{profile}"
            );
        }
        let unsaid =
            "{ kind: careful-release document, form: paper, kept: wheelhouse, state: aboard }";
        assert_eq!(
            carrying(unsaid, profile, TODAY).outcome("careful-release-document"),
            "cannot-tell",
            "{profile}"
        );
    }
}

/// Trap 19: 50 CFR 622.29(a)(1), 622.179(a)(1) (read): a waterproof case where
/// there is no wheelhouse.
///
/// Pins: us-gulf-reef-fish-2019/careful-release-document: careful-release-document kept waterproof case; careful-release-document when wheelhouse no
#[test]
fn a_waterproof_case_does_only_without_a_wheelhouse() {
    let cased = but(f::DOCUMENT, "kept", "waterproof case");
    for (wheelhouse, expected) in [("no", "met"), ("yes", "not-met")] {
        let vessel = vessel("5 ft")
            .set("features", &format!("{{ wheelhouse: {wheelhouse} }}"))
            .carrying(&[&cased]);
        assert_eq!(
            vessel.under(GULF, TODAY).outcome("careful-release-document"),
            expected,
            "{wheelhouse}"
        );
    }
    let unsaid = vessel("5 ft").unsaid("features").carrying(&[&cased]);
    assert_eq!(unsaid.under(GULF, TODAY).outcome("careful-release-document"), "cannot-tell");
}

/// Trap 19: 50 CFR 622.273(a) (read) names the handling guidelines only.
#[test]
fn dolphin_wahoo_asks_for_the_guidelines_and_no_document() {
    let bare = vessel("5 ft").under(DOLPHIN, IN_2024);
    assert_eq!(bare.outcome("careful-release-document"), "unbound");
    assert_eq!(bare.outcome("handling-placard"), "not-met");
    assert_eq!(carrying(s::PLACARD, DOLPHIN, IN_2024).outcome("handling-placard"), "met");
    assert_eq!(
        carrying(&but(s::PLACARD, "state", "aboard"), DOLPHIN, IN_2024).outcome("handling-placard"),
        "not-met"
    );
}

/// Trap 20: 50 CFR 635.8(c) (read): valid three calendar years, owner and
/// operator each; part 622 asks for no training.
///
/// Pins: us-atlantic-longline-2009/workshop-certificates: asked for; held by owner and operator; valid 3 years
#[test]
fn a_workshop_certificate_lapses_after_three_years() {
    let held = |roles: &str, issued: &str| {
        format!(
            "[{{ name: A. Holder, roles: {roles}, certificates: [{{ kind: workshop certificate, issued: {issued} }}] }}]"
        )
    };
    let on = |people: &str, day: &str| {
        vessel("5 ft")
            .set("people", people)
            .under(ATLANTIC, day)
            .outcome("workshop-certificates")
            .to_owned()
    };
    let both = held("[owner, operator]", "2021-06-15");
    assert_eq!(on(&both, "2024-06-14"), "met");
    assert_eq!(on(&both, "2024-06-15"), "not-met");
    assert_eq!(on(&both, "2021-06-14"), "not-met");
    let owner_only = "[{ name: A. Holder, roles: [owner], certificates: [{ kind: workshop certificate, issued: 2023-01-10 }] }, \
                      { name: B. Mate, roles: [operator], certificates: [] }]";
    assert_eq!(on(owner_only, IN_2024), "not-met");
}

/// Trap 20: 50 CFR 622.29, 622.179, 622.273 (read): no training.
#[test]
fn no_fishery_of_part_622_asks_for_a_workshop_certificate() {
    for (profile, day) in [(GULF, TODAY), (OLD_GULF, IN_2018), (SOUTH, TODAY), (DOLPHIN, IN_2024)] {
        assert_eq!(
            vessel("5 ft").under(profile, day).outcome("workshop-certificates"),
            "unbound",
            "{profile}"
        );
    }
    let judged = |vessel: Outfit| {
        vessel.under(ATLANTIC, IN_2024).outcome("workshop-certificates").to_owned()
    };
    assert_eq!(judged(vessel("5 ft").unsaid("people")), "cannot-tell");
    assert_eq!(judged(vessel("5 ft").set("people", "[]")), "not-met");
}

fn judging(permit: &str, gear: &str) -> Judged {
    vessel("5 ft")
        .set("permits", &format!("[{permit}]"))
        .set("gear", &format!("[{gear}]"))
        .check(&["--on", TODAY])
}

/// Trap 21: 50 CFR 622.179(a)(1) (read): with hook-and-line gear on board;
/// 622.29(a)(1) (read): whatever the gear.
#[test]
fn the_south_atlantic_rule_needs_hook_and_line_gear_and_the_gulf_rule_does_not() {
    for kind in ["commercial", "charter-headboat"] {
        let south = format!("south-atlantic-snapper-grouper-{kind}");
        let gulf = format!("gulf-reef-fish-{kind}");
        for gear in ["hook-and-line", "bandit-gear", "bottom-longline"] {
            assert_eq!(judging(&south, gear).profiles(), [SOUTH], "{gear}");
        }
        assert!(!judging(&south, "trap").profiles().contains(&SOUTH));
        for gear in ["trap", "bandit-gear"] {
            assert_eq!(judging(&gulf, gear).profiles(), [GULF], "{gear}");
        }
    }
    let unknown = vessel("5 ft")
        .set("permits", "[south-atlantic-snapper-grouper-commercial]")
        .unsaid("gear")
        .check(&["--on", TODAY]);
    assert_eq!(unknown.only()["why"]["code"], "may-bind");
    assert_eq!(unknown.verdict(), "cannot-tell");
}

/// Trap 22: 50 CFR 635.21(b)(1), once (a)(3), and (c)(2)(iv), before 2020
/// (c)(2)(vii) (read).
#[test]
fn clauses_are_cited_by_their_present_numbers() {
    let judged = vessel("5 ft").set("areas", "[northeast-distant]").under(ATLANTIC, IN_2024);
    let clause = |id: &str| judged.finding(id)["citation"]["clause"].as_str().unwrap_or("none");
    assert_eq!(clause("careful-release-document"), "635.21(b)(1)");
    assert_eq!(clause("handling-placard"), "635.21(b)(1)");
    assert_eq!(clause("northeast-distant-hooks"), "635.21(c)(2)(iv)");
    let note = judged.finding("northeast-distant-hooks")["note"].as_str().unwrap();
    assert!(note.contains("(c)(2)(vii)"), "{note}");
    let notes = run::kitmuster(&["profiles", ATLANTIC]);
    let text = notes.stdout.split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(text.contains("number it (a)(3)"), "{}", notes.page());
}

/// Trap 23: 50 CFR 635.21(c)(5)(iv) (read): models on the agency's list for (A) to
/// (C), (G), (H) to (K); Appendix F judges by the standard.
///
/// Pins: us-atlantic-longline-2009/long-line-cutter: long-line-cutter approved-model yes
/// Pins: us-atlantic-longline-2009/long-dehooker-internal: long-dehooker-internal approved-model yes
/// Pins: us-atlantic-longline-2009/long-dehooker-external: long-dehooker-external approved-model yes
/// Pins: us-atlantic-longline-2009/short-dehooker-internal: short-dehooker-internal approved-model yes
/// Pins: us-atlantic-longline-2009/short-dehooker-external: short-dehooker-external approved-model yes
/// Pins: us-atlantic-longline-2009/pliers: pliers approved-model yes
/// Pins: us-atlantic-longline-2009/bolt-cutters: bolt-cutters approved-model yes
/// Pins: us-atlantic-longline-2009/line-cutters: line-cutters approved-model yes
#[test]
fn approved_models_are_asked_for_by_section_635_21_only() {
    let cases = [
        ("long-line-cutter", "LC-1", s::CUTTER),
        ("long-dehooker-internal", "DI-1", s::INTERNAL),
        ("long-dehooker-external", "DE-1", s::EXTERNAL),
        ("short-dehooker-internal", "SI-1", s::SHORT_INTERNAL),
        ("short-dehooker-external", "SE-1", s::SHORT_EXTERNAL),
        ("pliers", "PL-1", s::PLIERS),
        ("bolt-cutters", "BC-1", s::BOLT_CUTTERS),
        ("line-cutters", "MC-1", s::LINE_CUTTERS),
    ];
    for (id, _, tool) in cases {
        let with = |tool: &str| {
            vessel("5 ft").with(&[tool]).under(ATLANTIC, IN_2024).outcome(id).to_owned()
        };
        assert_eq!(with(tool), "met", "{id}");
        assert_eq!(with(&without(tool, "approved-model")), "cannot-tell", "{id}");
        assert_eq!(with(&but(tool, "approved-model", "no")), "not-met", "{id}");
    }
    for (id, tool) in [
        ("pliers", s::PLIERS),
        ("bolt-cutters", s::BOLT_CUTTERS),
        ("line-cutters", s::LINE_CUTTERS),
    ] {
        let model = but(tool, "approved-model", "no");
        assert_eq!(vessel("5 ft").with(&[model]).under(GULF, TODAY).outcome(id), "met", "{id}");
    }
}

/// Trap 23: 50 CFR 635.21(c)(5)(iv) (read): not for (D), (E), (F), (L), which pass
/// without a word on the model.
#[test]
fn no_approved_model_is_asked_for_where_the_list_does_not_reach() {
    let judged = equipped_for_part_635("5 ft").under(ATLANTIC, IN_2024);
    for id in ["inverted-v-device", "net", "support", "mouth-gags"] {
        assert_eq!(judged.outcome(id), "met", "{id}");
    }
}

/// Trap 23: 50 CFR 635.21(c)(5)(iv) (read): a dated statement of conformity to the
/// item's clause settles the model, one to another clause does not.
#[test]
fn a_dated_statement_settles_the_approved_model() {
    let pliers = without(s::PLIERS, "approved-model");
    let stated = |clause: &str| {
        let tool = plus(
            &pliers,
            "conforms",
            &format!("[{{ to: \"{clause}\", on: 2024-01-09, by: Port Ansel Chandlery }}]"),
        );
        vessel("5 ft").with(&[tool]).under(ATLANTIC, IN_2024).outcome("pliers").to_owned()
    };
    assert_eq!(stated("635.21(c)(5)(i)(I)"), "met");
    assert_eq!(stated("50 CFR part 635, 635.21(c)(5)(i)(I)"), "met");
    assert_eq!(stated("635.21(c)(5)(i)(J)"), "cannot-tell");
}

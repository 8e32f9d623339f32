//! Editions in `editions/`: whom they bind, one built on another, a trip
//! across a change, a day without an edition, and a stub.

use crate::outfit::{Judged, Outfit, vessel};

/// A vessel of the invented harbour with everything that its old edition asks.
fn harbour() -> Outfit {
    vessel("5 ft")
        .set("permits", "[test-permit]")
        .set("gear", "[test-gear]")
        .set("areas", "[test-area]")
        .with(&["{ mark: PL-1, kind: pliers, overall: 12 in, material: stainless, inspected: 2026-02-01 }"])
        .with(&["{ mark: TI-1, kind: tire, inspected: 2026-02-01 }", "{ mark: DN-1, kind: dip net, inspected: 2026-02-01 }"])
}

const BOLT_CUTTERS: &str = "{ mark: BC-1, kind: bolt cutters }";

fn on(vessel: &Outfit, depart: &str, back: &str) -> Judged {
    vessel.check(&[
        "--requirements",
        &crate::run::requirements("shapes/editions"),
        "--on",
        depart,
        "--return",
        back,
    ])
}

fn day(vessel: &Outfit, day: &str) -> Judged {
    on(vessel, day, day)
}

#[test]
fn the_edition_of_the_day_judges() {
    let first = day(&harbour(), "2026-06-30");
    assert_eq!((first.profiles(), first.verdict()), (vec!["test-harbour-old"], "ready"));
    let second = day(&harbour(), "2026-07-01");
    assert_eq!((second.profiles(), second.verdict()), (vec!["test-harbour-new"], "not-ready"));
    assert_eq!(second.outcome("bolt-cutters"), "not-met");
}

#[test]
fn an_edition_is_the_same_minus_plus_changed() {
    let old = day(&harbour(), "2026-06-30");
    assert_eq!(old.requirements(), ["pliers", "tire", "net"]);
    let new = day(&harbour(), "2026-07-01");
    assert_eq!(new.requirements(), ["pliers", "bolt-cutters", "net"]);
    let shorter = harbour().instead(
        "PL-1",
        "{ mark: PL-1, kind: pliers, overall: 11 in, material: stainless, inspected: 2026-02-01 }",
    );
    assert_eq!(day(&shorter, "2026-06-30").outcome("pliers"), "met");
    assert_eq!(day(&shorter, "2026-07-01").outcome("pliers"), "not-met");
    let other_steel = harbour().instead(
        "PL-1",
        "{ mark: PL-1, kind: pliers, overall: 12 in, material: other, inspected: 2026-02-01 }",
    );
    assert_eq!(day(&other_steel, "2026-06-30").outcome("pliers"), "not-met");
    assert_eq!(day(&other_steel, "2026-07-01").outcome("pliers"), "met");
}

#[test]
fn the_interval_of_the_list_is_taken_over_and_can_be_set_aside() {
    let undated = harbour().instead("DN-1", "{ mark: DN-1, kind: dip net }").with(&[BOLT_CUTTERS]);
    let judged = day(&undated, "2026-07-01");
    assert_eq!(
        (judged.outcome("net"), judged.codes("net")),
        ("cannot-tell", vec!["inspection-undated"])
    );
    assert_eq!(judged.outcome("bolt-cutters"), "met");
    assert_eq!(judged.finding("net")["citation"]["source"], "Harbour notice 40");
}

#[test]
fn a_trip_across_a_change_is_judged_under_both_editions() {
    let crossing = on(&harbour(), "2026-06-28", "2026-07-03");
    assert_eq!(crossing.profiles(), ["test-harbour-old", "test-harbour-new"]);
    assert_eq!(crossing.verdict(), "not-ready");
    let days = |index: usize| crossing.json["profiles"][index]["days"].clone();
    assert_eq!(days(0), serde_json::json!({ "from": "2026-06-28", "until": "2026-06-30" }));
    assert_eq!(days(1), serde_json::json!({ "from": "2026-07-01", "until": "2026-07-03" }));
    let both = on(&harbour().with(&[BOLT_CUTTERS]), "2026-06-28", "2026-07-03");
    assert_eq!(both.verdict(), "ready", "{}", both.ran.page());
    let home_in_time = on(&harbour(), "2026-06-28", "2026-06-30");
    assert_eq!(home_in_time.verdict(), "ready");
}

#[test]
fn ready_until_looks_into_the_next_edition() {
    let until = |vessel: &Outfit| day(vessel, "2026-03-02").only()["ready_until"].clone();
    assert_eq!(until(&harbour()), serde_json::json!({ "state": "day", "day": "2026-06-30" }));
    // With bolt cutters it is ready to the end of the last known edition.
    assert_eq!(
        until(&harbour().with(&[BOLT_CUTTERS])),
        serde_json::json!({ "state": "day", "day": "2026-12-31" })
    );
}

#[test]
fn a_day_without_an_edition_is_no_day_without_a_rule() {
    for (depart, back) in [("2027-01-05", "2027-01-05"), ("2026-12-30", "2027-01-02")] {
        let judged = on(&harbour().with(&[BOLT_CUTTERS]), depart, back);
        assert_eq!(judged.notices(), ["no-edition"], "{depart}");
        assert_eq!(judged.verdict(), "cannot-tell", "{depart}");
        assert!(!judged.profiles().contains(&"good-practice-longline"), "{depart}");
    }
    assert_eq!(on(&harbour().with(&[BOLT_CUTTERS]), "2026-12-30", "2026-12-31").verdict(), "ready");
}

/// A rule that is asked for by name with all its editions is told once to
/// have none for a day, however many editions it has.
#[test]
fn editions_that_are_asked_for_are_told_once_to_leave_a_day_out() {
    let folder = tempfile::tempdir().unwrap();
    let edition = |name: &str, days: &str| {
        let text = format!(
            "format: profile/1\nid: {name}\nrule: test-tides\nedition: {name}\ntitle: Tides\n\
             standing: good practice\nin force: {days}\nrequirements:\n  \
             - {{ id: pliers, title: Pliers, verified: common practice, carry: 1 pliers }}\n"
        );
        crate::run::write(folder.path(), &format!("{name}.yaml"), &text)
    };
    let first = edition("first", "{ from: 2026-01-01, until: 2026-01-31 }");
    let second = edition("second", "{ from: 2026-02-01, until: 2026-02-28 }");
    let third = edition("third", "{ from: 2026-03-02, until: 2026-12-31 }");
    let asked = ["--profile", &first, "--profile", &second, "--profile", &third];
    let judged = |from: &str, until: &str| {
        let trip = ["--on", from, "--return", until];
        let judged = vessel("5 ft").check(&[&asked[..], &trip].concat());
        judged.notices().iter().map(|code| (*code).to_owned()).collect::<Vec<_>>()
    };
    assert_eq!(judged("2026-02-27", "2026-03-03"), ["no-edition"]);
    assert_eq!(judged("2026-01-30", "2026-02-03"), [""; 0]);
}

/// A rule that is asked for by name judges on all days, and it is said where
/// it is not in force on one of them, or does not bind.
#[test]
fn what_is_asked_for_by_name_judges_and_is_told_where_it_would_not() {
    let notices = |vessel: &Outfit, from: &str, until: &str| {
        let asked = [
            "--requirements",
            &crate::run::requirements("shapes/editions"),
            "--profile",
            "test-harbour-old",
        ];
        let judged = vessel.check(&[&asked[..], &["--on", from, "--return", until]].concat());
        assert_eq!(judged.profiles(), ["test-harbour-old"], "{from}");
        let notices = judged.notices().iter().map(|code| (*code).to_owned()).collect::<Vec<_>>();
        (notices, judged.verdict().to_owned())
    };
    let ready = |notices: &[&str]| {
        (notices.iter().map(|one| (*one).to_owned()).collect::<Vec<_>>(), "ready".to_owned())
    };
    assert_eq!(notices(&harbour(), "2026-06-20", "2026-06-30"), ready(&[]));
    assert_eq!(notices(&harbour(), "2026-06-20", "2026-07-01"), ready(&["not-in-force"]));
    assert_eq!(notices(&harbour(), "2019-12-31", "2020-01-01").0, ["not-in-force"]);
    assert_eq!(notices(&harbour(), "2026-07-02", "2026-07-03"), ready(&["not-in-force"]));
    // It is asked for on all days: what ends is an inspection, not the rule.
    let asked = [
        "--requirements",
        &crate::run::requirements("shapes/editions"),
        "--profile",
        "test-harbour-old",
    ];
    let until = harbour().check(&[&asked[..], &["--on", "2026-03-02"]].concat());
    assert_eq!(until.only()["ready_until"]["day"], "2027-01-31");
    let elsewhere = harbour().set("permits", "[]");
    assert_eq!(notices(&elsewhere, "2026-06-20", "2026-06-30"), ready(&["does-not-bind"]));
    let unsaid = harbour().unsaid("permits");
    assert_eq!(notices(&unsaid, "2026-06-20", "2026-06-30"), ready(&[]));
}

/// A rule that binds in one month alone binds a trip that goes into it, and
/// none that is over before.
#[test]
fn a_rule_of_one_month_binds_the_trips_that_go_into_it() {
    let folder = tempfile::tempdir().unwrap();
    let text = "format: profile/1\nid: test-may\nrule: test-may\nedition: one\ntitle: May\n\
                source: Harbour notice 42\nin force: { from: 2020-01-01 }\nbinds:\n  \
                permits: [test-permit]\n  when: { months: May }\nrequirements:\n  \
                - { id: pliers, title: Pliers, clause: notice 1, verified: read, carry: 1 pliers }\n";
    crate::run::with_words(folder.path());
    crate::run::write(folder.path(), "may.yaml", text);
    let profiles = |from: &str, until: &str| {
        let vessel = vessel("5 ft").set("permits", "[test-permit]");
        let folder = folder.path().to_string_lossy().to_string();
        let judged = vessel.check(&["--requirements", &folder, "--on", from, "--return", until]);
        judged.profiles().iter().map(|id| (*id).to_owned()).collect::<Vec<_>>()
    };
    assert_eq!(profiles("2026-04-28", "2026-05-01"), ["test-may"]);
    assert_eq!(profiles("2026-05-31", "2026-06-03"), ["test-may"]);
    assert_eq!(profiles("2026-04-28", "2026-04-30"), ["good-practice-longline"]);
}

/// The rule binds in a band of freeboards that lies within the vessel's range.
#[test]
fn a_rule_binds_a_vessel_whose_range_holds_its_band() {
    let folder = tempfile::tempdir().unwrap();
    let text = "format: profile/1\nid: test-narrow\nrule: test-narrow\nedition: one\ntitle: Narrow\n\
                source: Harbour notice 41\nin force: { from: 2020-01-01 }\nbinds:\n  \
                permits: [test-permit]\n  when: { freeboard: 4 ft or more, any of: [{ freeboard: less than 4 ft 2 in }] }\n\
                requirements:\n  \
                - { id: pliers, title: Pliers, clause: notice 1, verified: read, carry: 1 pliers }\n";
    crate::run::with_words(folder.path());
    crate::run::write(folder.path(), "narrow.yaml", text);
    let profiles = |freeboard: &str| {
        let vessel = vessel(freeboard).set("permits", "[test-permit]");
        let folder = folder.path().to_string_lossy().to_string();
        let judged = vessel.check(&[
            "--requirements",
            &folder,
            "--on",
            "2026-03-02",
            "--return",
            "2026-03-02",
        ]);
        judged.profiles().iter().map(|id| (*id).to_owned()).collect::<Vec<_>>()
    };
    assert_eq!(profiles("3 ft to 5 ft"), ["test-narrow"]);
    assert_eq!(profiles("4 ft"), ["test-narrow"]);
    for outside in ["3 ft to 3 ft 11 in", "4 ft 2 in to 5 ft"] {
        assert_eq!(profiles(outside), ["good-practice-longline"], "{outside}");
    }
}

#[test]
fn a_profile_binds_only_where_all_its_lines_match() {
    for (key, other) in [
        ("permits", "[atlantic-hms]"),
        ("gear", "[trap]"),
        ("areas", "[elsewhere]"),
        ("freeboard", "2 ft"),
    ] {
        let judged = day(&harbour().set(key, other), "2026-03-02");
        assert!(!judged.profiles().contains(&"test-harbour-old"), "{key}: {:?}", judged.profiles());
    }
    let above = day(&harbour().set("freeboard", "2 ft 0 1/64 in"), "2026-03-02");
    assert_eq!(above.profiles(), ["test-harbour-old"]);
}

#[test]
fn a_profile_that_may_bind_is_said_to_and_leaves_it_open() {
    for (key, fact) in
        [("permits", "permits"), ("gear", "gear"), ("areas", "areas"), ("freeboard", "freeboard")]
    {
        let judged = day(&harbour().unsaid(key), "2026-03-02");
        let profile = judged.only();
        assert_eq!(
            (&profile["why"]["code"], &profile["why"]["fact"]),
            (&"may-bind".into(), &fact.into()),
            "{key}"
        );
        let lacking = day(&harbour().lacking("TI-1").unsaid(key), "2026-03-02");
        assert_eq!(lacking.verdict(), "cannot-tell", "{key}");
    }
}

#[test]
fn a_rule_that_is_known_and_not_encoded_is_no_free_pass() {
    let stub = day(&harbour().set("permits", "[test-strait-permit]"), "2026-03-02");
    assert_eq!((stub.profiles(), stub.verdict()), (vec!["test-strait-stub"], "cannot-tell"));
    assert_eq!(stub.only()["encoded"], false);
    let both = day(&harbour().set("permits", "[test-permit, test-strait-permit]"), "2026-03-02");
    assert_eq!(both.profiles(), ["test-harbour-old", "test-strait-stub"]);
    assert_eq!(both.verdict(), "cannot-tell");
    let worst = day(
        &harbour().lacking("TI-1").set("permits", "[test-permit, test-strait-permit]"),
        "2026-03-02",
    );
    assert_eq!(worst.verdict(), "not-ready");
}

#[test]
fn where_no_rule_names_a_vessel_the_house_is_used_and_said_so() {
    let judged = day(&vessel("5 ft"), "2026-03-02");
    assert_eq!(judged.profiles(), ["good-practice-longline"]);
    assert_eq!(judged.notices(), ["no-rule-names-vessel"]);
    assert_eq!(judged.only()["why"]["code"], "fallback");
}

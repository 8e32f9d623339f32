//! What is not said, not known here, or lies ahead never makes a vessel
//! ready.

use crate::outfit::gear::appendix_f::{EXTERNAL, INTERNAL, PLIERS};
use crate::outfit::{Judged, vessel};
use crate::run::{kitmuster, write};

const GULF: &str = "us-gulf-reef-fish-2019";
const ON: &str = "2026-03-02";

fn notices(judged: &Judged) -> Vec<&str> {
    judged.json["notices"].as_array().unwrap().iter().map(|n| n["code"].as_str().unwrap()).collect()
}

fn verdict(judged: &Judged) -> &str {
    judged.json["verdict"].as_str().unwrap()
}

#[test]
fn permits_that_nobody_wrote_down_leave_open_which_rule_binds() {
    let unsaid = vessel("3 ft").set("gear", "[rod-and-reel]").unsaid("permits");
    let judged = unsaid.check(&["--on", ON]);
    assert_eq!(verdict(&judged), "cannot-tell");
    assert!(notices(&judged).contains(&"may-bind"), "{:?}", notices(&judged));
    let none = unsaid.set("permits", "[]").set("areas", "[elsewhere]").check(&["--on", ON]);
    assert!(!notices(&none).contains(&"may-bind"), "{:?}", notices(&none));
    assert!(notices(&none).contains(&"no-rule-names-vessel"));
}

#[test]
fn a_permit_that_no_vocabulary_knows_is_told() {
    let judged = vessel("3 ft").set("permits", "[moonfish licence]").check(&["--on", ON]);
    assert!(notices(&judged).contains(&"unknown-words"), "{:?}", notices(&judged));
    let known = vessel("3 ft").set("permits", "[gulf-reef-fish-commercial]").check(&["--on", ON]);
    assert!(!notices(&known).contains(&"unknown-words"));
}

#[test]
fn a_permit_may_be_written_by_its_name() {
    let library = crate::kit::library();
    let name = &library.vocabulary.permits["gulf-reef-fish-commercial"].name;
    let judged = vessel("3 ft").set("permits", &format!("[\"{name}\"]")).check(&["--on", ON]);
    assert_eq!(judged.only()["id"], GULF);
}

#[test]
fn stainless_steel_may_be_316l_until_somebody_says() {
    let with = |material: &str| {
        let tool = INTERNAL.replace("material: 316L", material);
        assert_ne!(tool, *INTERNAL.replace("316L", "none"));
        let judged = vessel("5 ft").with(&[tool]).under(GULF, ON);
        judged.outcome("long-dehooker-internal").to_owned()
    };
    assert_eq!(with("material: 316L"), "met");
    assert_eq!(with("material: stainless"), "cannot-tell");
    assert_eq!(with("material: aluminium"), "not-met");
    let vouched = "material: stainless, conforms: [{ to: \"Appendix F, A.2\", on: 2026-01-01 }]";
    assert_eq!(with(vouched), "met");
    let later = "material: stainless, conforms: [{ to: \"Appendix F, A.2\", on: 2026-06-01 }]";
    assert_eq!(with(later), "cannot-tell");
}

#[test]
fn an_inspection_that_lies_ahead_is_none_yet() {
    let with = |inspected: &str| {
        let tool = format!(
            "{{ mark: DI-1, kind: long-handled dehooker for internal hooks, handle: 12 ft, inspected: {inspected} }}"
        );
        let judged = vessel("5 ft").with(&[tool]).under("good-practice-longline", ON);
        judged.outcome("long-dehooker").to_owned()
    };
    assert_eq!(with("2026-03-02"), "met");
    assert_eq!(with("2026-03-03"), "cannot-tell");
    assert_eq!(with("2025-03-02"), "not-met");
}

#[test]
fn a_record_made_after_departure_is_not_laid_over() {
    let folder = tempfile::tempdir().unwrap();
    let outfit = vessel("5 ft").with(&["{ mark: PL-1, kind: pliers, overall: 10 in }"]);
    let file = write(folder.path(), "vessel.yaml", &outfit.yaml());
    let record = |on: &str| {
        let text = format!(
            "format: inspection/1\nvessel: Test Kittiwake\non: {on}\nfound:\n  - mark: PL-1\n    mended: [{{ what: head replaced, overall: 11 in }}]\n"
        );
        write(folder.path(), "record.yaml", &text)
    };
    let pliers = |on: &str| {
        let record = record(on);
        let ran = kitmuster(&[
            "check",
            &file,
            "--profile",
            GULF,
            "--on",
            ON,
            "--inspection",
            &record,
            "--format",
            "json",
        ]);
        let json = ran.json();
        let findings = json["profiles"][0]["findings"].as_array().unwrap().clone();
        let finding = findings.into_iter().find(|f| f["requirement"] == "pliers").unwrap();
        (finding["outcome"].as_str().unwrap().to_owned(), json["notices"].to_string())
    };
    assert_eq!(pliers("2026-03-02").0, "met");
    let (outcome, notices) = pliers("2026-03-03");
    assert_eq!(outcome, "not-met");
    assert!(notices.contains("record-after-departure"), "{notices}");
}

#[test]
fn a_record_of_another_vessel_is_refused() {
    let folder = tempfile::tempdir().unwrap();
    let file = write(folder.path(), "vessel.yaml", &vessel("5 ft").with(&[PLIERS]).yaml());
    let text = "format: inspection/1\nvessel: Somebody Else\non: 2026-03-01\nfound:\n  - mark: PL-1\n    missing: yes\n";
    let record = write(folder.path(), "record.yaml", text);
    let ran = kitmuster(&["check", &file, "--on", ON, "--inspection", &record]);
    assert_eq!(ran.status, 2, "{}", ran.page());
    assert!(
        ran.stderr.contains("Somebody Else") && ran.stderr.contains("Test Kittiwake"),
        "{}",
        ran.stderr
    );
}

#[test]
fn a_report_never_replaces_what_it_was_made_from() {
    let folder = tempfile::tempdir().unwrap();
    let text = vessel("5 ft").yaml();
    let file = write(folder.path(), "vessel.yaml", &text);
    let ran = kitmuster(&["check", &file, "--on", ON, "--output", &file]);
    assert_eq!(ran.status, 2, "{}", ran.page());
    assert_eq!(std::fs::read_to_string(&file).unwrap(), text);
}

#[test]
fn what_only_waits_for_another_requirement_says_so() {
    let unmeasured = INTERNAL.replace("handle: 12 ft, ", "");
    let open = vessel("5 ft").with(&[unmeasured.as_str()]).under(GULF, ON);
    assert_eq!(open.outcome("long-dehooker-external"), "cannot-tell");
    assert_eq!(open.codes("long-dehooker-external"), ["hangs-on"]);
    let own = vessel("5 ft").with(&[unmeasured.as_str(), EXTERNAL]).under(GULF, ON);
    assert_eq!(own.outcome("long-dehooker-external"), "met");
}

#[test]
fn by_good_practice_alone_the_first_line_says_so() {
    let ran = kitmuster(&["check", "vessels/amber-shearwater.yaml"]);
    let first = ran.stdout.lines().next().unwrap();
    assert!(first.starts_with("READY") && first.contains("good practice"), "{first}");
    let ran = kitmuster(&["check", "vessels/brindle-skua.yaml"]);
    assert!(!ran.stdout.lines().next().unwrap().contains("good practice"));
}

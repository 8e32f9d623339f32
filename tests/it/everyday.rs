//! Everyday words: the same as a word of the vocabulary, wider than one, or one
//! that nobody knows.

use crate::outfit::gear::appendix_f::{EXTERNAL, INTERNAL};
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

/// A word that is wider than what rules name finds every rule that it may
/// mean, and settles nothing where they differ.
#[test]
fn everyday_words_that_may_be_several_are_open_where_it_matters() {
    let with = |permits: &str, gear: &str, areas: &str| {
        let vessel = vessel("3 ft").set("permits", permits).set("gear", gear);
        vessel.set("areas", areas).check(&["--on", ON])
    };
    let why = |judged: &Judged, rule: &str| -> Option<String> {
        let judgements = judged.json["profiles"].as_array().unwrap();
        let one = judgements.iter().find(|j| j["rule"] == rule)?;
        Some(one["why"]["code"].as_str().unwrap().to_owned())
    };
    let (gulf, dolphin) = ("us-gulf-reef-fish", "us-dolphin-wahoo-longline");
    // Both reef fish permits are bound, whatever the gear and the area.
    let judged = with("[reef fish]", "[longline]", "[gulf]");
    assert_eq!(why(&judged, gulf).as_deref(), Some("binds"), "{}", judged.ran.page());
    assert_ne!(verdict(&judged), "ready");
    // Of the longlines one alone is bound.
    for (gear, bound) in [
        ("[longline]", Some("may-bind")),
        ("[trap, longline]", Some("may-bind")),
        ("[longline, pelagic-longline]", Some("binds")),
        ("[bottom-longline]", None),
    ] {
        let judged = with("[dolphin-wahoo-commercial]", gear, "[gulf]");
        assert_eq!(why(&judged, dolphin).as_deref(), bound, "{gear}: {}", judged.ran.page());
    }
    // Both are hook-and-line gear.
    let judged = with("[snapper grouper]", "[longline]", "[south-atlantic]");
    let bound = why(&judged, "us-south-atlantic-snapper-grouper");
    assert_eq!(bound.as_deref(), Some("binds"), "{}", judged.ran.page());
    // What nobody would look for in a rule leaves nothing open.
    let judged = with("[]", "[longline]", "[gulf]");
    assert!(!notices(&judged).contains(&"unknown-words"), "{:?}", notices(&judged));
    let told = with("[dolphin-wahoo-commercial]", "[longline]", "[gulf]").ran.page();
    assert!(told.contains("`longline` may be `bottom-longline` or `pelagic-longline`"), "{told}");
}

/// An everyday word for the same is the word itself.
#[test]
fn everyday_words_for_the_same_are_read_as_it() {
    let tool = |written: &str| {
        let kit = [format!("{{ mark: A-1, {written} }}")];
        let judged = vessel("3 ft").with(&kit).under(GULF, ON);
        let findings = judged.only()["findings"].as_array().unwrap().clone();
        let codes =
            |f: &serde_json::Value| judged.codes(f["requirement"].as_str().unwrap()).join(" ");
        findings.iter().map(|f| format!("{} {}", f["outcome"], codes(f))).collect::<Vec<_>>()
    };
    for (everyday, word) in [
        ("kind: needle nose", "kind: pliers"),
        ("kind: Needle-nose pliers", "kind: pliers"),
        ("kind: old tire", "kind: tire"),
        ("kind: line cutter pole", "kind: long-line-cutter"),
        ("kind: pliers, material: aluminum", "kind: pliers, material: aluminium"),
        ("kind: pliers, material: stainless steel", "kind: pliers, material: stainless"),
    ] {
        assert_eq!(tool(everyday), tool(word), "{everyday}");
    }
    let person = |roles: &str| {
        let people = format!(
            "[{{ name: A, roles: [{roles}], certificates: [{{ kind: workshop certificate, issued: 2023-06-01 }}] }}]"
        );
        let judged = vessel("3 ft").set("people", &people);
        judged
            .under("us-atlantic-longline-2009", "2024-09-02")
            .outcome("workshop-certificates")
            .to_owned()
    };
    assert_eq!(person("owner, captain"), person("owner, operator"));
    // A role that nobody knows may be the one that is asked; a known one not.
    assert_eq!(person("owner, steersman"), "cannot-tell");
    assert_eq!(person("owner, crew"), "not-met");
}

/// A dehooker of which the word does not say for which hooks, good as either.
fn wide(kind: &str) -> String {
    let kind = format!("kind: {kind}, blunt-end: yes,");
    INTERNAL.replace("kind: long-handled dehooker for internal hooks,", &kind)
}

/// A kind that may be several is can't tell wherever it matters which, and
/// serves where each of them would.
#[test]
fn a_kind_that_may_be_several_is_open_where_it_matters() {
    let outcomes = |kit: &[&str]| {
        let judged = vessel("5 ft").with(kit).under(GULF, ON);
        ["long-dehooker-internal", "long-dehooker-external"].map(|id| judged.outcome(id).to_owned())
    };
    let (long, any) = (wide("long dehooker"), wide("Dehookers"));
    assert_eq!(outcomes(&[&long]), ["cannot-tell", "met"]);
    assert_eq!(outcomes(&[&any]), ["cannot-tell", "cannot-tell"]);
    assert_eq!(outcomes(&[&long, EXTERNAL]), ["cannot-tell", "met"]);
    assert_eq!(outcomes(&[&long, INTERNAL.replace("DI-1", "DI-2").as_str()]), ["met", "met"]);
    let short = long.replace("handle: 12 ft", "handle: 2 ft");
    assert_eq!(outcomes(&[&short]), ["not-met", "not-met"]);
    // Each is said once, and what settles it.
    let judged = vessel("5 ft").with(&[&long]).under(GULF, ON);
    assert_eq!(judged.codes("long-dehooker-internal"), ["kind-disputed"]);
    let told = judged.json.to_string();
    for text in [
        "by its name it may be a long-handled dehooker for internal hooks or long-handled dehooker \
         for external hooks",
        "look at DI-1 again, and write down its kind",
        "by its name DI-1 may be a",
    ] {
        assert!(told.contains(text), "{text}: {told}");
    }
}

/// A record that says which of the kinds it is settles it; one that says
/// another disputes it.
#[test]
fn a_record_says_which_of_its_kinds_a_tool_is() {
    let folder = tempfile::tempdir().unwrap();
    let listed = vessel("5 ft").with(&[&wide("long dehooker")]);
    let under = |kind: &str| {
        let record = format!(
            "format: inspection/1\nvessel: Test Kittiwake\non: 2026-02-01\nfound:\n  \
             - {{ mark: DI-1, kind: {kind} }}\n"
        );
        let record = write(folder.path(), "record.yaml", &record);
        let judged = listed.check(&["--profile", GULF, "--on", ON, "--inspection", &record]);
        let told = notices(&judged).contains(&"kind-disputed");
        (judged.outcome("long-dehooker-internal").to_owned(), told)
    };
    assert_eq!(under("long-dehooker-internal"), ("met".to_owned(), false));
    assert_eq!(under("long-dehooker-external"), ("not-met".to_owned(), false));
    assert_eq!(under("pliers"), ("cannot-tell".to_owned(), true));
}

/// Where one kind is wanted, a word that may be several is refused with all
/// that it may be.
#[test]
fn no_rule_and_no_record_names_a_kind_that_may_be_several() {
    let folder = tempfile::tempdir().unwrap();
    let boat = write(folder.path(), "vessel.yaml", &vessel("3 ft").yaml());
    let rule = "format: profile/1\nid: own\nrule: own\nedition: one\ntitle: Own\n\
                standing: good practice\nrequirements:\n  \
                - { id: d, title: D, verified: common practice, carry: 1 long dehooker }\n";
    let record = "format: inspection/1\nvessel: Test Kittiwake\non: 2026-02-01\nfound:\n  \
                  - { mark: X-1, kind: long dehooker }\n";
    let rule = write(folder.path(), "own.yaml", rule);
    let record = write(folder.path(), "record.yaml", record);
    for (flag, file) in [("--profile", &rule), ("--inspection", &record)] {
        let ran = kitmuster(&["check", &boat, flag, file, "--on", ON]);
        assert_eq!(ran.status, 2, "{}", ran.page());
        let told = ran.stderr.split_whitespace().collect::<Vec<_>>().join(" ");
        assert!(told.contains("this word may be any of several kinds"), "{told}");
        assert!(told.contains("long-handled dehooker for external hooks"), "{told}");
    }
    let words = kitmuster(&["words", "long dehooker"]);
    assert!(words.stderr.contains("long-dehooker-external"), "{}", words.page());
}

/// A feature has other words too; one that nobody knows is refused, with the
/// one that may be meant.
#[test]
fn a_feature_is_known_by_other_words_too() {
    let folder = tempfile::tempdir().unwrap();
    let ran = |features: &str| {
        let text = vessel("3 ft").set("features", features).yaml();
        let path = write(folder.path(), "vessel.yaml", &text);
        kitmuster(&["check", &path, "--on", ON, "--profile", GULF])
    };
    assert_eq!(ran("{ Pilot house: yes }").stdout, ran("{ wheelhouse: yes }").stdout);
    for (features, told) in [
        ("{ weelhouse: yes }", "did you mean `wheelhouse`"),
        ("{ pilot house: yes, wheelhouse: no }", "written twice"),
    ] {
        let ran = ran(features);
        assert_eq!(ran.status, 2, "{}", ran.page());
        assert!(ran.stderr.contains(told), "{}", ran.page());
    }
}

/// Of a profile that was asked for by name, no verdict hangs on a word that
/// nobody knows in a list on which none of its conditions looks.
#[test]
fn a_rule_asked_by_name_hangs_on_no_list_that_it_does_not_look_at() {
    let folder = tempfile::tempdir().unwrap();
    let rule = |when: &str| {
        let text = format!(
            "format: profile/1\nid: own\nrule: own\nedition: one\ntitle: Own\n\
             standing: good practice\nbinds: {{ permits: [gulf-reef-fish-commercial] }}\nrequirements:\n  \
             - {{ id: pliers, title: P, verified: common practice, carry: 1 pliers }}\n  \
             - {{ id: tire, title: T, verified: common practice, carry: 1 tire, when: {when} }}\n"
        );
        write(folder.path(), "own.yaml", &text)
    };
    let strange = vessel("3 ft").set("permits", "[crab]").set("gear", "[pots]");
    let strange = strange.set("areas", "[the shoals]").with(&["{ mark: PL-1, kind: pliers }"]);
    for (when, wanted) in [
        ("{ wheelhouse: no }", "ready"),
        ("{ gear: trap }", "cannot-tell"),
        ("{ permit: gulf-reef-fish-commercial }", "cannot-tell"),
        ("{ area: gulf-of-mexico, wheelhouse: no }", "ready"),
    ] {
        let judged = strange.under(&rule(when), ON);
        assert_eq!(verdict(&judged), wanted, "{when}: {}", judged.ran.page());
        assert!(!notices(&judged).contains(&"does-not-bind"), "{:?}", notices(&judged));
    }
}

/// A slip in a profile of one's own is told beside the verdict and changes
/// nothing.
#[test]
fn a_slip_in_a_rule_is_told_where_it_is_loaded() {
    let folder = tempfile::tempdir().unwrap();
    let boat = write(folder.path(), "vessel.yaml", &vessel("4 ft").yaml());
    let own = folder.path().join("rules");
    std::fs::create_dir(&own).unwrap();
    let text = "format: profile/1\nid: own\nrule: own\nedition: one\ntitle: Own\n\
                standing: good practice\nrequirements:\n  \
                - { id: low, title: L, verified: common practice, carry: 1 pliers, when: { freeboard: less than 4 ft } }\n  \
                - { id: high, title: H, verified: common practice, carry: 2 pliers, when: { freeboard: more than 4 ft } }\n";
    let rule = write(&own, "own.yaml", text);
    let rules = own.to_str().unwrap();
    for arguments in [&["--profile", &rule][..], &["--requirements", rules, "--profile", "own"]] {
        let ran = kitmuster(&[&["check", &boat, "--on", ON][..], arguments].concat());
        assert_eq!(ran.status, 0, "{}", ran.page());
        let told = ran.stderr.split_whitespace().collect::<Vec<_>>().join(" ");
        assert!(told.contains("own.yaml:9:"), "{told}");
        assert!(told.contains("at exactly 4 ft neither this nor `low` holds"), "{told}");
        assert!(told.ends_with("1 problem; the rules are used as they are written"), "{told}");
    }
    let listed = kitmuster(&["profiles", "--requirements", rules]);
    assert!(listed.stderr.contains("neither this nor `low`"), "{}", listed.page());
}

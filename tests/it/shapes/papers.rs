//! Documents, inspection intervals, certificates, levels and languages.

use super::{by, kit, made};
use crate::outfit::{DAY, Judged, vessel};
use crate::run;

fn carrying(document: &str) -> Judged {
    by("plain.yaml", &vessel("5 ft").carrying(&[document]))
}

#[test]
fn a_document_is_posted_aboard_a_copy_or_lost() {
    for (state, placard) in
        [("posted", "met"), ("aboard", "not-met"), ("copy", "not-met"), ("lost", "not-met")]
    {
        let judged = carrying(&format!("{{ kind: handling placard, state: {state} }}"));
        assert_eq!(judged.outcome("placard"), placard, "{state}");
    }
    assert_eq!(carrying("{ kind: handling placard }").outcome("placard"), "cannot-tell");
    for (state, document) in
        [("posted", "met"), ("aboard", "met"), ("copy", "not-met"), ("lost", "not-met")]
    {
        for form in ["paper", "electronic"] {
            let judged = carrying(&format!(
                "{{ kind: careful-release document, form: {form}, state: {state} }}"
            ));
            assert_eq!(judged.outcome("document"), document, "{form} {state}");
        }
    }
    let lost = carrying("{ kind: handling placard, state: lost }");
    assert_eq!(lost.codes("placard")[0], "missing");
}

#[test]
fn an_inspection_is_good_through_the_day_before_its_anniversary() {
    let pliers = |inspected: &str| {
        kit("inspections.yaml", &[format!("{{ mark: PL-1, kind: pliers{inspected} }}")])
    };
    assert_eq!(pliers(", inspected: 2025-03-03").outcome("yearly"), "met");
    let lapsed = pliers(", inspected: 2025-03-02");
    assert_eq!(
        (lapsed.outcome("yearly"), lapsed.codes("yearly")),
        ("not-met", vec!["inspection-lapsed"])
    );
    assert_eq!(lapsed.finding("yearly")["reasons"][0]["since"], "2026-03-02");
    let undated = pliers("");
    assert_eq!(
        (undated.outcome("yearly"), undated.codes("yearly")),
        ("cannot-tell", vec!["inspection-undated"])
    );
}

#[test]
fn a_requirement_may_have_an_interval_of_its_own_or_none() {
    let cutters = |inspected: &str| {
        kit(
            "inspections.yaml",
            &[format!("{{ mark: BC-1, kind: bolt cutters, inspected: {inspected} }}")],
        )
        .outcome("half-yearly")
        .to_owned()
    };
    assert_eq!(cutters("2025-09-03"), "met");
    assert_eq!(cutters("2025-09-02"), "not-met");
    assert_eq!(kit("inspections.yaml", &["{ mark: TI-1, kind: tire }"]).outcome("never"), "met");
}

fn people(list: &str) -> Judged {
    by("certificates.yaml", &vessel("5 ft").set("people", &format!("[{list}]")))
}

fn person(name: &str, roles: &str, certificate: &str) -> String {
    format!(
        "{{ name: {name}, roles: {roles}, certificates: [{{ kind: workshop certificate{certificate} }}] }}"
    )
}

#[test]
fn every_role_needs_a_holder_and_one_person_may_fill_several() {
    let issued = ", issued: 2025-01-10";
    assert_eq!(people(&person("A", "[owner, operator]", issued)).outcome("roles"), "met");
    let two = format!("{}, {}", person("A", "[owner]", issued), person("B", "[operator]", issued));
    assert_eq!(people(&two).outcome("roles"), "met");
    let uncertified =
        format!("{}, {{ name: B, roles: [operator] }}", person("A", "[owner]", issued));
    let judged = people(&uncertified);
    assert_eq!(
        (judged.outcome("roles"), judged.codes("roles")),
        ("not-met", vec!["no-valid-certificate"])
    );
    assert_eq!(judged.finding("roles")["reasons"][0]["role"], "operator");
    for nobody_in_the_role in [person("A", "[owner]", issued), String::new()] {
        let judged = people(&nobody_in_the_role);
        assert_eq!(judged.outcome("roles"), "not-met", "{nobody_in_the_role}");
        assert!(judged.codes("roles").iter().all(|code| *code == "no-valid-certificate"));
    }
    assert_eq!(
        by("certificates.yaml", &vessel("5 ft").unsaid("people")).outcome("roles"),
        "cannot-tell"
    );
}

#[test]
fn a_certificate_has_its_span_and_its_own_last_day() {
    let on = |certificate: &str| {
        people(&person("A", "[owner, operator]", certificate)).outcome("roles").to_owned()
    };
    assert_eq!(on(", issued: 2023-03-03"), "met");
    assert_eq!(on(", issued: 2023-03-02"), "not-met");
    assert_eq!(on(", issued: 2025-01-10, expires: 2026-03-02"), "met");
    assert_eq!(on(", issued: 2025-01-10, expires: 2026-03-01"), "not-met");
    assert_eq!(on(", issued: 2026-03-03"), "not-met");
    // Without its day of issue the rule's span is not known, but it has ended
    // where its own last day is past.
    assert_eq!(on(", expires: 2026-03-02"), "cannot-tell");
    assert_eq!(on(", expires: 2026-03-01"), "not-met");
    assert_eq!(on(""), "cannot-tell");
}

/// A certificate ends what a kit is good for: by the rule's span, or by its
/// own last day where that is earlier.
#[test]
fn a_kit_is_good_until_a_certificate_ends() {
    let rule = made(&["id: one, title: One, certificate: workshop certificate, \
                       held by: 1 person, valid: 3 years"]);
    let until = |certificate: &str| {
        let crew = person("A", "[crew]", certificate);
        let judged = rule.judges(&vessel("5 ft").set("people", &format!("[{crew}]")));
        judged.only()["ready_until"].clone()
    };
    let day = |day: &str| serde_json::json!({ "state": "day", "day": day });
    assert_eq!(until(", issued: 2023-04-10"), day("2026-04-09"));
    assert_eq!(until(", issued: 2023-04-10, expires: 2026-03-20"), day("2026-03-20"));
    assert_eq!(until(", issued: 2023-04-10, expires: 2027-03-20"), day("2026-04-09"));
}

/// The way to ready has one step for each person who is missing.
#[test]
fn every_person_who_is_missing_is_to_be_certified() {
    let rule = made(&["id: three, title: Three people, certificate: workshop certificate, \
                       held by: 3 people, valid: 3 years"]);
    let steps = |certified: usize| {
        let crew: Vec<_> = (0..certified)
            .map(|n| person(&format!("P{n}"), "[crew]", ", issued: 2025-01-10"))
            .collect();
        let vessel = vessel("5 ft").set("people", &format!("[{}]", crew.join(", ")));
        let judged = rule.judges(&vessel);
        let steps = judged.only()["way_to_ready"]["steps"].as_array().unwrap().clone();
        steps.iter().map(|step| step["deed"].as_str().unwrap().to_owned()).collect::<Vec<_>>()
    };
    assert_eq!(steps(0), ["certify"; 3]);
    assert_eq!(steps(1), ["certify"; 2]);
    assert_eq!(steps(2), ["certify"]);
    assert_eq!(steps(3), [""; 0]);
}

/// Where one rule names roles and another a number, the way says who: "one
/// more person" alone might be anybody.
#[test]
fn a_role_is_not_left_to_whoever_is_certified_for_a_number() {
    let steps = |list: &str| {
        let judged = people(list);
        let steps = judged.only()["way_to_ready"]["steps"].as_array().unwrap().clone();
        let told = |step: &serde_json::Value| {
            format!("{}: {}", step["requirement"].as_str().unwrap(), step["text"].as_str().unwrap())
        };
        steps.iter().map(told).collect::<Vec<_>>()
    };
    let owner = "roles: have the owner certified, or sail with one who is";
    let operator = "roles: have the operator certified, or sail with one who is";
    let another = "no-span: have one more person certified";
    assert_eq!(steps("{ name: A, roles: [owner, operator] }"), [owner, another]);
    let two = "{ name: A, roles: [owner] }, { name: B, roles: [operator] }";
    assert_eq!(steps(two), [owner, operator]);
}

#[test]
fn a_number_of_people_may_have_to_be_certified() {
    let issued = ", issued: 2025-01-10";
    let one = person("A", "[owner, operator]", issued);
    let short = people(&one);
    assert_eq!(short.outcome("number"), "not-met");
    assert_eq!(
        (
            &short.finding("number")["reasons"][0]["have"],
            &short.finding("number")["reasons"][0]["need"]
        ),
        (&1.into(), &2.into())
    );
    assert_eq!(
        people(&format!("{one}, {}", person("B", "[crew]", issued))).outcome("number"),
        "met"
    );
    assert_eq!(
        people(&format!("{one}, {}", person("B", "[crew]", ""))).outcome("number"),
        "cannot-tell"
    );
    assert_eq!(
        people(&format!("{one}, {}", person("B", "[crew]", ", issued: 2022-01-10")))
            .outcome("number"),
        "not-met"
    );
}

/// Who is named under a certificate that is met is who counts for it: nobody
/// without a day, with a day that is still to come, in another role, or out
/// of date before the trip ends.
#[test]
fn those_who_count_are_named_and_nobody_else() {
    let folder = tempfile::tempdir().unwrap();
    let rule = made(&["id: one, title: Workshop, certificate: workshop certificate, \
                       held by: [operator], valid: 3 years"]);
    let crew = [
        person("Adela", "[operator]", ", issued: 2025-01-10"),
        person("Benno", "[operator]", ""),
        person("Cirilo", "[operator]", ", issued: 2026-03-05"),
        person("Dagny", "[crew]", ", issued: 2025-01-10"),
        person("Eskil", "[operator]", ", issued: 2025-01-10, expires: 2026-03-04"),
    ];
    let vessel = vessel("5 ft").set("people", &format!("[{}]", crew.join(", ")));
    let path = run::write(folder.path(), "vessel.yaml", &vessel.yaml());
    let named = |arguments: &[&str]| {
        let page = run::kitmuster(arguments).stdout;
        let page = page.split_whitespace().collect::<Vec<_>>().join(" ");
        let crew = ["Adela", "Benno", "Cirilo", "Dagny", "Eskil"];
        crew.into_iter().filter(|name| page.contains(&format!("{name} ("))).collect::<Vec<_>>()
    };
    for (back, who) in [("2026-03-04", vec!["Adela", "Eskil"]), ("2026-03-05", vec!["Adela"])] {
        let trip = [path.as_str(), "--profile", &rule.path, "--on", DAY, "--return", back];
        assert_eq!(named(&[&["check"], &trip[..]].concat()), who);
        assert_eq!(named(&[&["sheet"], &trip[..], &["--for", "skipper"]].concat()), who);
    }
}

#[test]
fn without_a_span_in_the_rule_an_undated_certificate_does_not_lapse() {
    assert_eq!(people(&person("A", "[crew]", "")).outcome("no-span"), "met");
    assert_eq!(
        people(&person("A", "[crew]", ", expires: 2026-03-01")).outcome("no-span"),
        "not-met"
    );
}

#[test]
fn a_recommendation_never_changes_the_verdict() {
    let one = kit("levels.yaml", &["{ mark: PL-1, kind: pliers }"]);
    assert_eq!(
        (one.outcome("pliers"), one.outcome("gloves"), one.verdict()),
        ("met", "not-met", "ready")
    );
    assert_eq!(one.ran.status, 0);
    let none = kit("levels.yaml", &[] as &[&str]);
    assert_eq!((none.verdict(), none.ran.status), ("not-ready", 1));
    let two = kit("levels.yaml", &["{ mark: PL-1, kind: pliers, count: 2 }"]);
    assert_eq!((two.outcome("gloves"), two.verdict()), ("met", "ready"));
}

#[test]
fn a_finding_says_its_clause_and_how_it_was_verified() {
    let judged = kit("levels.yaml", &[] as &[&str]);
    let (pliers, gloves) = (judged.finding("pliers"), judged.finding("gloves"));
    assert_eq!((&pliers["level"], &gloves["level"]), (&"required".into(), &"recommended".into()));
    assert_eq!(pliers["citation"]["verified"], "read");
    assert_eq!(gloves["citation"]["verified"], "memory");
    assert_eq!(pliers["citation"]["source"], "Harbour notice 12");
    assert_eq!(pliers["citation"]["clause"], "notice 1");
    assert_eq!(pliers["note"], "Flatten the barb first.");
}

#[test]
fn the_edition_of_a_rule_and_the_revision_of_its_file_are_told_apart() {
    let judged = kit("levels.yaml", &[] as &[&str]);
    assert_eq!(
        (&judged.only()["edition"], &judged.only()["encoding"]),
        (&"invented for tests".into(), &3.into())
    );
    let other = kit("languages.yaml", &[] as &[&str]);
    assert_eq!(
        (&other.only()["edition"], &other.only()["encoding"]),
        (&"inventada para pruebas".into(), &1.into())
    );
}

#[test]
fn text_for_people_may_be_written_in_several_languages() {
    let judged = kit("languages.yaml", &["{ mark: PL-1, kind: pliers }"]);
    assert_eq!(judged.only()["title"], "Aviso del puerto");
    assert_eq!(judged.finding("pliers")["title"], "Alicates");
    assert_eq!(judged.finding("pliers")["note"], "Aplane la barba");
    assert_eq!(judged.verdict(), "ready");
    assert_eq!(kit("languages.yaml", &[] as &[&str]).verdict(), "not-ready");
}

#[test]
fn text_without_the_governing_language_is_refused() {
    let folder = tempfile::tempdir().unwrap();
    let text = std::fs::read_to_string(super::profile("languages.yaml")).unwrap();
    let text = text.replace("title: { en: Pliers, es: Alicates }", "title: { en: Pliers }");
    let profile = run::write(folder.path(), "languages.yaml", &text);
    let vessel = run::write(folder.path(), "vessel.yaml", &vessel("5 ft").yaml());
    let ran = run::kitmuster(&["check", &vessel, "--profile", &profile, "--on", DAY]);
    assert_eq!(ran.status, 2, "{}", ran.page());
    assert!(ran.stderr.contains("governing language"), "{}", ran.page());
}

#[test]
fn a_requirement_keeps_the_ids_that_it_had() {
    let mut library = crate::kit::library();
    let profile =
        library.add_file(std::path::Path::new(&super::profile("languages.yaml"))).unwrap();
    assert_eq!(profile.requirements[0].formerly, ["alicates", "tongs"]);
    assert_eq!(
        library.find("us-gulf-reef-fish-2019").unwrap().requirements[0].formerly,
        Vec::<String>::new()
    );
}

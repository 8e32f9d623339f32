//! Two audits compared: each pattern on a vessel of its own.

use super::{AUGUST, JUNE, audit, changed, flat, june, place, value};
use crate::run;
use serde_json::{Value, json};
use std::path::Path;

/// The audit of August compared with the record, as JSON.
fn against(record: &str, rules: &str, flags: &[&str]) -> Value {
    let flags = [&["--against", record, "--format", "json"], flags].concat();
    audit("fleet-now", rules, AUGUST, &flags).json()["against"].clone()
}

fn vessel<'v>(against: &'v Value, name: &str) -> &'v Value {
    let vessels = against["vessels"].as_array().unwrap();
    vessels.iter().find(|v| v["name"] == name).unwrap_or_else(|| panic!("{name}: {against}"))
}

/// What is said of a vessel's findings: requirement, fate, cause.
fn said(against: &Value, name: &str) -> Vec<(String, String, String)> {
    let text = |value: &Value| value.as_str().unwrap_or("-").to_owned();
    let findings = vessel(against, name)["findings"].as_array().unwrap();
    findings
        .iter()
        .map(|f| (text(&f["requirement"]), text(&f["fate"]), text(&f["cause"])))
        .collect()
}

fn row(requirement: &str, fate: &str, cause: &str) -> (String, String, String) {
    (requirement.to_owned(), fate.to_owned(), cause.to_owned())
}

#[test]
fn each_change_is_laid_to_what_made_it() {
    let folder = tempfile::tempdir().unwrap();
    let against = against(&june(folder.path()), "rules-mended", &[]);
    let said = |name| said(&against, name);
    assert_eq!(said("Anvil Petrel"), [row("line-cutter", "closed", "vessel")]);
    assert_eq!(
        said("Briar Tern"),
        [row("pliers", "opened", "vessel"), row("line-cutter", "still-open", "-")]
    );
    assert_eq!(
        said("Ember Knot"),
        [row("bolt-cutters", "opened", "edition"), row("placard", "closed", "edition")]
    );
    // Her net is another and too short as well: the rule's it stays.
    assert_eq!(said("Flint Dunlin"), [row("net", "opened", "encoding")]);
    assert_eq!(said("Gorse Heron"), [row("pliers", "opened", "calendar")]);
    assert_eq!(said("Heath Skua"), [row("bolt-cutters", "passing", "vessel")]);
    assert_eq!(against["gone"][0]["name"], "Cinder Gull");
    assert_eq!(against["gone"][0]["why"], "not-there");
    assert_eq!(against["newcomers"][0]["name"], "Drift Plover");
    let totals = &against["totals"];
    for (key, number) in [
        ("compared", 6),
        ("gone", 1),
        ("newcomers", 1),
        ("mended", 1),
        ("new", 1),
        ("lapsed", 1),
        ("opened_otherwise", 2),
        ("closed_otherwise", 1),
        ("passing", 1),
        ("still_open", 1),
    ] {
        assert_eq!(totals[key], number, "{key}: {totals}");
    }
}

#[test]
fn without_the_mended_encoding_the_vessel_did_it() {
    let folder = tempfile::tempdir().unwrap();
    let against = against(&june(folder.path()), "rules", &[]);
    // 6 ft 1 in does by the figure of the slip.
    assert_eq!(said(&against, "Flint Dunlin"), []);
}

#[test]
fn other_files_of_the_rules_are_no_correction_unless_they_say_so() {
    let folder = tempfile::tempdir().unwrap();
    let rules = folder.path().join("rules");
    std::fs::create_dir(&rules).unwrap();
    run::with_words(&rules);
    for name in ["pier-2025", "pier-2026", "mole-2020"] {
        let text = std::fs::read_to_string(place(&format!("rules-mended/{name}.yaml"))).unwrap();
        let text = text.replace("encoding: 2", "encoding: 1");
        std::fs::write(rules.join(format!("{name}.yaml")), text).unwrap();
    }
    let record = june(folder.path());
    let fleet = place("fleet-now");
    let typed = ["audit", &fleet, "--date", AUGUST, "--format", "json", "--requirements"];
    let typed = [&typed[..], &[rules.to_str().unwrap(), "--against", &record]].concat();
    let against = run::kitmuster(&typed).json()["against"].clone();
    assert_eq!(said(&against, "Flint Dunlin"), [row("net", "opened", "rule-file")]);
}

#[test]
fn what_was_asked_is_told_apart_from_the_vessel() {
    let folder = tempfile::tempdir().unwrap();
    let record = june(folder.path());
    let flags = ["--against", &*record, "--format", "json", "--profile", "mole-2020"];
    // The fleet of June again, asked for the mole rule alone.
    let against = audit("fleet-then", "rules", JUNE, &flags).json()["against"].clone();
    let said = said(&against, "Ember Knot");
    assert_eq!(
        said,
        [
            row("net", "opened", "asked"),
            row("pliers", "opened", "asked"),
            row("placard", "closed", "asked")
        ]
    );
}

#[test]
fn another_program_is_told_apart_from_everything_else() {
    let folder = tempfile::tempdir().unwrap();
    let mut record = value(&june(folder.path()));
    // As if an older program had let her cutter pass.
    record["program"]["version"] = json!("0.0.1");
    let finding = &mut record["vessels"][0]["profiles"][0]["findings"][0];
    finding["outcome"] = json!("met");
    finding["open_since"] = Value::Null;
    let path = changed(folder.path(), &record);
    let flags = ["--against", path.to_str().unwrap(), "--format", "json"];
    let against = audit("fleet-then", "rules", JUNE, &flags).json()["against"].clone();
    assert_eq!(said(&against, "Anvil Petrel"), [row("long-cutter", "opened", "program")]);
}

#[test]
fn a_record_compared_with_itself_has_no_change() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("record.json");
    let path = path.to_str().unwrap();
    let days: [&[&str]; 4] = [
        &[],
        &["--on", "2019-05-25", "--return", "2019-07-05"],
        &["--on", "2024-11-20", "--return", "2024-12-05", "--trust", "measured"],
        &["--profile", "us-gulf-reef-fish", "--profile", "good-practice-longline"],
    ];
    for flags in days {
        let typed = [&["audit", "vessels", "--date", "2026-11-25"], flags].concat();
        run::kitmuster(&[&typed[..], &["--record", path]].concat());
        let flags = ["--against", path, "--format", "json"];
        let document = run::kitmuster(&[&typed[..], &flags].concat()).json();
        let totals = document["against"]["totals"].as_object().unwrap();
        for (key, number) in totals.iter().filter(|(key, _)| *key != "still_open") {
            let expected = if key == "compared" { 18 } else { 0 };
            assert_eq!(*number, expected, "{key}");
        }
        for vessel in document["against"]["vessels"].as_array().unwrap() {
            assert_eq!(vessel["verdict_then"], vessel["verdict_now"]);
            for finding in vessel["findings"].as_array().unwrap() {
                assert_eq!(finding["flips"], json!([]), "{finding}");
            }
        }
    }
}

#[test]
fn who_has_nothing_to_tell_is_not_named() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("record.json");
    let path = path.to_str().unwrap();
    let typed = ["audit", "vessels", "--date", "2026-11-25"];
    run::kitmuster(&[&typed[..], &["--record", path]].concat());
    let page = run::kitmuster(&[&typed[..], &["--against", path]].concat()).stdout;
    let section = page.split("\n\n").find(|part| part.contains("Compared with")).unwrap();
    // Open then and now; ready then and now.
    assert!(section.contains("Marlow Tern (PA-104): not ready, as before"), "{section}");
    assert!(!section.contains("Brindle Skua"), "{section}");
}

#[test]
fn since_when_something_is_open_goes_from_record_to_record() {
    let folder = tempfile::tempdir().unwrap();
    let june = june(folder.path());
    let at = |name: &str| folder.path().join(name).to_str().unwrap().to_owned();
    let (august, october) = (at("august.json"), at("october.json"));
    audit("fleet-now", "rules", AUGUST, &["--against", &june, "--record", &august]);
    audit("fleet-now", "rules", "2026-10-01", &["--against", &august, "--record", &october]);
    assert_eq!(run::kitmuster(&["verify", &october]).status, 0);
    let since = |path: &str, vessel: &str, requirement: &str| {
        let record = value(path);
        let vessels = record["vessels"].as_array().unwrap();
        let vessel = vessels.iter().find(|v| v["name"] == vessel).unwrap();
        let findings = vessel["profiles"][0]["findings"].as_array().unwrap();
        let finding = findings.iter().find(|f| f["requirement"] == requirement).unwrap();
        finding["open_since"].as_str().map(str::to_owned)
    };
    let day = |text: &str| Some(text.to_owned());
    // Open in June under another id, in August and in October.
    assert_eq!(since(&august, "Briar Tern", "line-cutter"), day(JUNE));
    assert_eq!(since(&october, "Briar Tern", "line-cutter"), day(JUNE));
    assert_eq!(since(&october, "Briar Tern", "pliers"), day(AUGUST));
    assert_eq!(since(&october, "Anvil Petrel", "line-cutter"), None);
    // What has a finding is not said a second time.
    let vessels = value(&october)["vessels"].as_array().unwrap().clone();
    assert!(vessels.iter().all(|vessel| vessel.get("since").is_none()), "{vessels:?}");
    let told = audit("fleet-now", "rules", "2026-10-01", &["--against", &august]).stdout;
    assert!(flat(&told).contains("- still open since 2026-06-01: Line cutter on a pole"), "{told}");
}

#[test]
fn who_is_not_compared_is_told_why() {
    let folder = tempfile::tempdir().unwrap();
    let record = june(folder.path());
    let fleet = folder.path().join("fleet");
    std::fs::create_dir(&fleet).unwrap();
    run::write(&fleet, "anvil.yaml", "format: vessel/1\nname: [\n");
    let own =
        |name: &str| std::fs::read_to_string(place(&format!("fleet-now/{name}.yaml"))).unwrap();
    let nameless = own("ember").replace("register: A-5\n", "");
    run::write(&fleet, "ember-1.yaml", &nameless);
    run::write(&fleet, "ember-2.yaml", &nameless);
    run::write(&fleet, "gorse.yaml", &own("gorse").replace("Port Ansel", "Port Brisk"));
    let (rules, fleet) = (super::rules("rules"), fleet.to_str().unwrap().to_owned());
    let typed =
        ["audit", &fleet, "--requirements", &rules, "--date", AUGUST, "--port", "Port Ansel"];
    let flags = ["--against", &record, "--format", "json"];
    let against = run::kitmuster(&[&typed[..], &flags].concat()).json()["against"].clone();
    let unclear = &against["unclear"][0];
    assert_eq!(
        (&unclear["why"], &unclear["then"][0]["name"]),
        (&json!("name"), &json!("Ember Knot"))
    );
    assert_eq!(unclear["now"].as_array().map(Vec::len), Some(2), "{unclear}");
    assert_eq!(against["other_selection"], true);
    assert_eq!(against["newcomers"], json!([]));
    let why = |name: &str| {
        let gone = against["gone"].as_array().unwrap();
        gone.iter().find(|g| g["name"] == name).map(|g| g["why"].as_str().unwrap().to_owned())
    };
    assert_eq!(why("Gorse Heron").as_deref(), Some("outside-selection"));
    assert_eq!(why("Heath Skua").as_deref(), Some("not-there"));
    assert_eq!(why("Ember Knot"), None, "nobody can tell which is which");
    let page = flat(&run::kitmuster(&[&typed[..], &["--against", &record]].concat()).stdout);
    assert!(page.contains("3 not compared"), "{page}");
}

#[test]
fn a_file_that_is_refused_now_is_not_a_vessel_that_is_gone() {
    let folder = tempfile::tempdir().unwrap();
    let fleet = folder.path().join("fleet");
    std::fs::create_dir(&fleet).unwrap();
    let text = std::fs::read_to_string(place("fleet-then/anvil.yaml")).unwrap();
    let path = run::write(&fleet, "anvil.yaml", &text);
    let record = folder.path().join("record.json");
    let record = record.to_str().unwrap();
    let rules = super::rules("rules");
    let typed = ["audit", &path, "--requirements", &rules, "--date", JUNE];
    assert_eq!(run::kitmuster(&[&typed[..], &["--record", record]].concat()).status, 1);
    std::fs::write(&path, "format: vessel/1\nname: [\n").unwrap();
    let ran = run::kitmuster(&[&typed[..], &["--against", record]].concat());
    assert_eq!(ran.status, 2);
    let told = flat(&ran.stdout);
    assert!(
        told.contains("gone Anvil Petrel (A-1): its file is refused now; not ready then"),
        "{told}"
    );
}

#[test]
fn where_the_old_rules_or_files_are_refused_no_cause_is_made_up() {
    let folder = tempfile::tempdir().unwrap();
    let mut record = value(&june(folder.path()));
    // As if a newer program no longer read the rules on record.
    let texts = record["inputs"]["profiles"].as_array_mut().unwrap();
    let mole = texts.iter_mut().find(|t| t["text"].as_str().unwrap().contains("id: mole-2020"));
    let mole = mole.unwrap();
    let text = mole["text"].as_str().unwrap().replace("format: profile/1", "format: profile/0");
    mole["sha256"] = json!(super::digest(&text));
    mole["text"] = json!(text);
    let path = changed(folder.path(), &record);
    let path = path.to_str().unwrap();
    let against = against(path, "rules-mended", &[]);
    assert!(against["rules_refused"].as_str().unwrap().contains("profile/0"), "{against}");
    assert_eq!(said(&against, "Flint Dunlin"), [row("net", "opened", "untold")]);
    // What lies behind the hole is told as ever.
    assert_eq!(said(&against, "Gorse Heron"), [row("pliers", "opened", "calendar")]);
    let ran = run::kitmuster(&["verify", path]);
    assert_eq!((ran.status, ran.stdout.as_str()), (2, ""), "{}", ran.stderr);
}

#[test]
fn an_edition_of_the_gulf_rule_is_no_fault_of_a_vessel() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("record.json");
    let path = path.to_str().unwrap();
    // The edition before 84 FR 22383 governs in May 2019, that of 2019 in July.
    let typed = ["audit", "vessels", "--date", "2026-11-25"];
    let old = ["--on", "2019-05-01", "--return", "2019-05-05", "--record", path];
    run::kitmuster(&[&typed[..], &old].concat());
    let new = ["--on", "2019-07-01", "--return", "2019-07-05", "--format", "json"];
    let against = run::kitmuster(&[&typed[..], &new, &["--against", path]].concat()).json();
    let (mut by_edition, mut elsewhere) = (0, 0);
    for vessel in against["against"]["vessels"].as_array().unwrap() {
        for finding in vessel["findings"].as_array().unwrap() {
            for flip in finding["flips"].as_array().unwrap() {
                let cause = flip["cause"].as_str().unwrap();
                assert!(["edition", "calendar"].contains(&cause), "{finding}");
                assert!(cause == "calendar" || finding["rule"] == "us-gulf-reef-fish", "{finding}");
                *if cause == "edition" { &mut by_edition } else { &mut elsewhere } += 1;
            }
        }
    }
    assert!(by_edition > 40 && elsewhere < by_edition, "{by_edition}, {elsewhere}");
    // What the new edition no longer asks was not mended by anybody.
    assert_eq!(against["against"]["totals"]["mended"], 0);
    assert_eq!(against["against"]["totals"]["new"], 0);
}

#[test]
fn the_section_of_the_page() {
    let folder = tempfile::tempdir().unwrap();
    let record = june(folder.path());
    let ran = audit("fleet-now", "rules-mended", AUGUST, &["--against", &record]);
    assert_eq!(ran.status, 1, "the exit code is that of the audit");
    assert!(ran.stdout.lines().all(|line| line.chars().count() <= 80));
    let section = ran.stdout.split("\n\n").nth(1).unwrap();
    insta::assert_snapshot!(section);
}

#[test]
fn the_key_of_the_document() {
    let folder = tempfile::tempdir().unwrap();
    let mut against = against(&june(folder.path()), "rules-mended", &[]);
    against["then"]["version"] = json!("[version]");
    insta::assert_snapshot!(serde_json::to_string_pretty(&against).unwrap());
}

#[test]
fn a_spreadsheet_stays_as_it_is_and_the_rest_is_told_beside_it() {
    let folder = tempfile::tempdir().unwrap();
    let record = june(folder.path());
    let with = audit("fleet-now", "rules", AUGUST, &["--format", "csv", "--against", &record]);
    let without = audit("fleet-now", "rules", AUGUST, &["--format", "csv"]);
    assert!(with.stdout == without.stdout);
    let expected = "compared with the audit of 2026-06-01: findings: 1 mended, 1 newly open,";
    assert!(with.stderr.starts_with(expected), "{}", with.stderr);
    assert_eq!(with.stderr.lines().count(), 1);
}

#[test]
fn the_page_of_html_says_the_same() {
    let folder = tempfile::tempdir().unwrap();
    let record = june(folder.path());
    let flags = ["--format", "html", "--against", &record];
    let html = audit("fleet-now", "rules-mended", AUGUST, &flags).stdout;
    let page = scraper::Html::parse_document(&html);
    let text = flat(&page.root_element().text().collect::<String>()).replace('\u{a0}', " ");
    for expected in [
        "Compared with the audit of 2026-06-01 by O. Ferrant",
        "mended: Line cutter on a pole (notice 1)",
        "open through a corrected encoding: Net (notice 1)",
        "no file of it here",
    ] {
        assert!(text.contains(expected), "{expected}");
    }
}

#[test]
fn hostile_names_in_a_record_stay_dead() {
    let folder = tempfile::tempdir().unwrap();
    let mut record = value(&june(folder.path()));
    record["auditor"] = json!("<script>alert(1)</script>\u{1b}[31m\u{202e}");
    record["vessels"][2]["name"] = json!("<b>Gull\u{1b}[31m\u{202e}");
    let path = changed(folder.path(), &record);
    for format in ["table", "json", "html", "csv"] {
        let flags = ["--format", format, "--against", path.to_str().unwrap()];
        let ran = audit("fleet-now", "rules", AUGUST, &flags);
        for text in [ran.stdout, ran.stderr] {
            assert!(!text.contains(['\u{1b}', '\u{202e}']), "{format}: {text}");
            assert!(format != "html" || !text.contains("<script") && !text.contains("<b>Gull"));
        }
    }
    let ran = run::kitmuster(&["verify", path.to_str().unwrap()]);
    assert!(!ran.stdout.contains(['\u{1b}', '\u{202e}']), "{}", ran.stdout);
}

#[test]
fn a_missing_record_stops_before_anything_is_judged() {
    let ran = audit("fleet-now", "rules", AUGUST, &["--against", "nowhere.json"]);
    assert_eq!((ran.status, ran.stdout.as_str()), (2, ""));
    assert!(ran.stderr.contains("nowhere.json"), "{}", ran.stderr);
    assert!(!Path::new("nowhere.json").exists());
}

#[test]
fn a_later_audit_is_no_earlier_one() {
    let folder = tempfile::tempdir().unwrap();
    let record = june(folder.path());
    let ran = audit("fleet-now", "rules", "2026-05-31", &["--against", &record]);
    assert_eq!((ran.status, ran.stdout.as_str()), (2, ""));
    assert!(flat(&ran.stderr).contains("the record is of 2026-06-01, later than this audit"));
}

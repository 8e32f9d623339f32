//! What goes on record, and that it is written whole or not at all.

use super::{JUNE, audit, june, place, value};
use crate::run;

#[test]
fn a_record_holds_what_was_asked_found_and_read() {
    let folder = tempfile::tempdir().unwrap();
    let record = value(&june(folder.path()));
    assert_eq!(record["schema"], "kitmuster/record/1");
    assert_eq!(record["date"], JUNE);
    assert_eq!(record["auditor"], "O. Ferrant");
    assert_eq!(record["program"]["name"], "kitmuster");
    assert_eq!(record["asked"]["trust"], "all");
    let editions: Vec<_> = record["editions"].as_array().unwrap().iter().collect();
    assert_eq!(editions.len(), 2);
    assert_eq!(editions[0]["id"], "mole-2020");
    assert_eq!(editions[0]["encoding"], 1);
    assert_eq!(editions[1]["edition"], "first");
    // Every profile is kept, used or not: the shipped ones too.
    let profiles = record["inputs"]["profiles"].as_array().unwrap();
    let shipped = std::fs::read_dir(run::home().join("requirements")).unwrap();
    let shipped = shipped.filter(|e| {
        let name = e.as_ref().unwrap().file_name();
        let is_profile = name != "vocabulary.yaml" && name != "techniques.yaml";
        name.to_string_lossy().ends_with(".yaml") && is_profile
    });
    assert_eq!(profiles.len(), shipped.count() + 3);
    let anvil = &record["vessels"][0];
    assert_eq!(anvil["name"], "Anvil Petrel");
    assert_eq!(anvil["verdict"], "not-ready");
    let cutter = &anvil["profiles"][0]["findings"][0];
    assert_eq!(cutter["requirement"], "long-cutter");
    assert_eq!(cutter["outcome"], "not-met");
    assert_eq!(cutter["open_since"], JUNE);
    assert_eq!(cutter["reasons"][0]["code"], "too-short-for-rail");
    // 2 in short of 6 ft.
    assert_eq!(cutter["reasons"][0]["by_nanometres"], 50_800_000);
    let pliers = &anvil["profiles"][0]["findings"][1];
    assert_eq!(pliers["outcome"], "met");
    assert_eq!(pliers.get("open_since"), None);
    let text = std::fs::read_to_string(place("fleet-then/anvil.yaml")).unwrap();
    assert_eq!(record["inputs"]["vessels"][0]["text"], text);
    let digest = record["inputs"]["vessels"][0]["sha256"].as_str().unwrap();
    assert_eq!(digest, super::digest(&text), "that of the file's own bytes");
}

#[test]
fn the_report_beside_a_record_is_the_report_without_one() {
    let folder = tempfile::tempdir().unwrap();
    for format in ["table", "json", "csv", "html"] {
        let path = folder.path().join(format);
        let with = ["--format", format, "--record", path.to_str().unwrap()];
        let with = audit("fleet-then", "rules", JUNE, &with);
        let without = audit("fleet-then", "rules", JUNE, &["--format", format]);
        assert_eq!(with.status, without.status);
        assert!(with.stdout == without.stdout, "{format}");
        assert_eq!(with.stderr, "");
    }
    let records: Vec<_> = ["table", "json", "csv", "html"]
        .map(|format| std::fs::read(folder.path().join(format)).unwrap())
        .into();
    assert!(records.windows(2).all(|pair| pair[0] == pair[1]), "a format changed the record");
}

#[test]
fn one_thread_and_many_keep_the_same_bytes() {
    let folder = tempfile::tempdir().unwrap();
    let with = |threads: &str| {
        let path = folder.path().join(threads);
        let typed = ["vessels", "--date", JUNE, "--threads", threads, "--record"];
        let typed = [&["audit"], &typed[..], &[path.to_str().unwrap()]].concat();
        assert_eq!(run::kitmuster(&typed).status, 1);
        std::fs::read(path).unwrap()
    };
    let one = with("1");
    assert!(one.len() > 100_000);
    assert!(one == with("2") && one == with("7"));
}

#[test]
fn order_and_what_is_shown_change_nothing_on_record() {
    let folder = tempfile::tempdir().unwrap();
    let keep = |name: &str, flags: &[&str]| {
        let path = folder.path().join(name);
        audit(
            "fleet-then",
            "rules",
            JUNE,
            &[flags, &["--record", path.to_str().unwrap()]].concat(),
        );
        std::fs::read(path).unwrap()
    };
    let plain = keep("a", &[]);
    assert!(plain == keep("b", &["--order", "verdict", "--units", "metric"]));
    assert!(plain == keep("c", &["--verdict", "ready", "--requirement", "pliers"]));
    assert!(plain != keep("d", &["--port", "nowhere"]), "a selection is part of what was asked");
}

#[test]
fn a_file_that_was_refused_is_on_record_by_name_and_message() {
    let folder = tempfile::tempdir().unwrap();
    std::fs::copy(place("fleet-then/anvil.yaml"), folder.path().join("anvil.yaml")).unwrap();
    run::write(folder.path(), "broken.yaml", "format: vessel/1\nname: [\n");
    let path = folder.path().join("record.json");
    let typed = ["audit", folder.path().to_str().unwrap(), "--date", JUNE, "--record"];
    let ran = run::kitmuster(&[&typed[..], &[path.to_str().unwrap()]].concat());
    assert_eq!(ran.status, 2, "{}", ran.stderr);
    let record = value(path.to_str().unwrap());
    assert_eq!(record["vessels"].as_array().unwrap().len(), 1);
    let refused = &record["refused"][0];
    assert!(refused["file"].as_str().unwrap().ends_with("broken.yaml"));
    assert!(refused["message"].as_str().unwrap().contains("broken.yaml:"), "{refused}");
    let ran = run::kitmuster(&["verify", path.to_str().unwrap()]);
    assert_eq!(ran.status, 0, "{}", ran.stdout);
    assert!(ran.stdout.contains("1 file refused then"), "{}", ran.stdout);
}

#[test]
fn no_record_is_written_over_what_is_read_or_over_the_report() {
    let folder = tempfile::tempdir().unwrap();
    let old = june(folder.path());
    let before = std::fs::read(&old).unwrap();
    let vessel = place("fleet-then/anvil.yaml");
    let text = std::fs::read(&vessel).unwrap();
    for (flags, flag) in [
        (vec!["--record", &*vessel], "--record"),
        (vec!["--against", &*old, "--record", &*old], "--record"),
        (vec!["--against", &*old, "--output", &*old], "--output"),
    ] {
        let ran = audit("fleet-then", "rules", JUNE, &flags);
        assert_eq!(ran.status, 2, "{flags:?}");
        let told = flat(&ran.stderr);
        assert!(told.contains("would be written over"), "{told}");
        assert!(told.contains(&format!("give `{flag}` a file of its own")), "{told}");
        assert_eq!(ran.stdout, "");
    }
    let both = folder.path().join("both");
    let both = both.to_str().unwrap();
    let ran = audit("fleet-then", "rules", JUNE, &["--record", both, "--output", both]);
    assert_eq!(ran.status, 2);
    assert!(ran.stderr.contains("both name"), "{}", ran.stderr);
    assert_eq!(std::fs::read(&vessel).unwrap(), text);
    assert_eq!(std::fs::read(&old).unwrap(), before);
    assert_eq!(std::fs::read_dir(folder.path()).unwrap().count(), 1);
}

use super::flat;

#[test]
fn a_record_that_cannot_be_written_leaves_no_report_either() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("none/record.json");
    let ran = audit("fleet-then", "rules", JUNE, &["--record", path.to_str().unwrap()]);
    assert_eq!((ran.status, ran.stdout.as_str()), (2, ""));
    assert!(flat(&ran.stderr).contains("could not be written: there is no folder"));
    assert_eq!(std::fs::read_dir(folder.path()).unwrap().count(), 0);
}

#[test]
fn lines_hold_too_few_vessels_at_a_time_for_any_of_it() {
    for flag in ["--record", "--against", "--draft"] {
        let ran = audit("fleet-then", "rules", JUNE, &["--format", "lines", flag, "x.yaml"]);
        assert_eq!((ran.status, ran.stdout.as_str()), (2, ""));
        assert!(ran.stderr.contains(&format!("`{flag}` needs all vessels at once")));
    }
    let ran = audit("fleet-then", "rules", JUNE, &["--auditor", "X"]);
    assert_eq!(ran.status, 2, "an auditor of no record");
}

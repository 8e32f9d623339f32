//! A record judged again: the same, different, changed, or no record at all.

use super::{JUNE, audit, changed, flat, june, place, value};
use crate::run::{self, Ran};
use serde_json::{Value, json};
use std::path::Path;

fn verify(path: &Path) -> Ran {
    run::kitmuster(&["verify", path.to_str().unwrap()])
}

/// What was written into a file, verified.
fn verify_text(text: &[u8]) -> Ran {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("record.json");
    std::fs::write(&path, text).unwrap();
    verify(&path)
}

#[test]
fn every_shipped_vessel_verifies_on_every_kind_of_day() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("record.json");
    let path = path.to_str().unwrap();
    let days: [&[&str]; 9] = [
        &[],
        &["--on", "2018-03-01", "--return", "2018-03-20"],
        // Across the change of the Gulf rule, and across that of the Atlantic.
        &["--on", "2019-05-25", "--return", "2019-07-05"],
        &["--on", "2024-11-20", "--return", "2024-12-05"],
        &["--on", "2026-12-01"],
        &["--on", "2031-02-27", "--return", "2031-03-02", "--trust", "measured"],
        &["--profile", "us-622-appendix-f", "--profile", "us-gulf-reef-fish"],
        &["--profile", "requirements/good-practice-longline.yaml"],
        &["--bound-by", "us-gulf-reef-fish", "--trust", "measured"],
    ];
    for flags in days {
        let typed = ["audit", "vessels", "--date", "2026-11-25", "--record", path];
        let ran = run::kitmuster(&[&typed[..], flags].concat());
        assert!(ran.status < 2, "{flags:?}: {}", ran.stderr);
        let ran = verify(Path::new(path));
        assert_eq!(ran.status, 0, "{flags:?}: {}", ran.stdout);
        assert!(ran.stdout.starts_with("THE SAME"), "{}", ran.stdout);
    }
}

#[test]
fn rules_of_ones_own_go_with_the_record() {
    let folder = tempfile::tempdir().unwrap();
    let ran = verify(Path::new(&june(folder.path())));
    assert_eq!(ran.status, 0, "{}", ran.stdout);
    // That they are not shipped is told, and is no fault.
    let told = flat(&ran.stdout);
    assert!(told.contains("`mole-2020`: edition 2020, encoding 1; not shipped"), "{told}");
    assert!(!told.contains("pier-2026"), "it judged nobody: {told}");
}

#[test]
fn what_this_program_holds_otherwise_is_told_apart_from_a_difference() {
    let folder = tempfile::tempdir().unwrap();
    let rules = folder.path().join("rules");
    std::fs::create_dir(&rules).unwrap();
    let shipped = std::fs::read_to_string("requirements/us-gulf-reef-fish-2019.yaml").unwrap();
    let old = shipped.replace("encoding: 1", "encoding: 7");
    std::fs::write(rules.join("us-gulf-reef-fish-2019.yaml"), old).unwrap();
    let path = folder.path().join("record.json");
    let typed = ["audit", "vessels/marlow-tern.yaml", "--date", JUNE, "--requirements"];
    let typed = [&typed[..], &[rules.to_str().unwrap(), "--record", path.to_str().unwrap()]];
    assert_eq!(run::kitmuster(&typed.concat()).status, 1);
    let ran = verify(&path);
    assert_eq!(ran.status, 0, "{}", ran.stdout);
    let told = flat(&ran.stdout);
    let expected = "`us-gulf-reef-fish-2019`: edition 2019 (84 FR 22383), encoding 7; now edition \
                    2019 (84 FR 22383), encoding 1";
    assert!(told.contains(expected), "{told}");
}

/// Every text among the inputs of a record.
fn inputs(record: &mut Value) -> Vec<&mut Value> {
    let mut all = Vec::new();
    for (name, part) in record["inputs"].as_object_mut().unwrap() {
        match part {
            Value::Array(list) => all.extend(list),
            one if name == "vocabulary" => all.push(one),
            _ => {}
        }
    }
    all
}

#[test]
fn one_byte_of_any_input_is_found() {
    let folder = tempfile::tempdir().unwrap();
    let whole = value(&june(folder.path()));
    let count = inputs(&mut whole.clone()).len();
    assert!(count > 20);
    for index in 0..count {
        let mut record = whole.clone();
        let input = &mut *inputs(&mut record)[index];
        let (name, digest) = (input["file"].clone(), input["sha256"].clone());
        let text = input["text"].as_str().unwrap();
        let at = text.len() * (index + 1) / (count + 1);
        let at = (at..).find(|at| text.is_char_boundary(*at)).unwrap();
        input["text"] = json!(format!("{} {}", &text[..at], &text[at..]));
        let ran = verify(&changed(folder.path(), &record));
        assert_eq!(ran.status, 2, "{name}");
        let told = flat(&ran.stderr);
        let expected = format!("the input `{}` was changed", name.as_str().unwrap());
        assert!(told.contains(&expected), "{told}");
        assert!(told.contains(&format!("expected {}", digest.as_str().unwrap())), "{told}");
        assert_eq!(ran.stdout, "");
    }
}

/// Who audited, when, with which program: what no verdict hangs on is covered
/// by the digest of the whole. Blanks and the order of keys are not.
#[test]
fn a_change_that_no_verdict_hangs_on_is_told() {
    let folder = tempfile::tempdir().unwrap();
    let whole = value(&june(folder.path()));
    let verified = |change: &dyn Fn(&mut Value)| {
        let mut record = whole.clone();
        change(&mut record);
        let ran = verify(&changed(folder.path(), &record));
        (ran.status, flat(&ran.stdout))
    };
    let (status, page) = verified(&|_| ());
    assert_eq!(status, 0, "{page}");
    let digest = whole["sha256"].as_str().unwrap();
    assert!(page.contains(&format!("has the digest {digest}, as it was made")), "{page}");
    let (status, page) = verified(&|r| {
        let keys = std::mem::take(r.as_object_mut().unwrap());
        r.as_object_mut().unwrap().extend(keys.into_iter().rev());
    });
    assert_eq!(status, 0, "the order of keys: {page}");
    let changes: [&dyn Fn(&mut Value); 5] = [
        &|r| r["auditor"] = json!("Somebody Else"),
        &|r| r["date"] = json!("2026-06-29"),
        &|r| r["program"]["version"] = json!("0.0.9"),
        &|r| r["sha256"] = json!("0".repeat(64)),
        &|r| r["a key of a later version"] = json!(1),
    ];
    for (index, change) in changes.iter().enumerate() {
        let (status, page) = verified(change);
        assert_eq!(status, 1, "{index}: {page}");
        assert!(page.starts_with("DIFFERENT"), "{index}: {page}");
        assert!(page.contains("the record was changed since it was made"), "{index}: {page}");
    }
    // A record from before there was such a digest.
    let (status, page) = verified(&|r| drop(r.as_object_mut().unwrap().remove("sha256")));
    assert_eq!(status, 0, "{page}");
    assert!(page.contains("the record has no digest of the whole"), "{page}");
}

#[test]
fn every_finding_that_is_not_so_is_told() {
    let folder = tempfile::tempdir().unwrap();
    let whole = value(&june(folder.path()));
    let told = |change: &dyn Fn(&mut Value)| {
        let mut record = whole.clone();
        change(&mut record);
        let ran = verify(&changed(folder.path(), &record));
        assert_eq!(ran.status, 1, "{}", ran.stderr);
        assert!(ran.stdout.starts_with("DIFFERENT"), "{}", ran.stdout);
        flat(&ran.stdout)
    };
    let of = |record: &mut Value, key: &str, value: Value| {
        record["vessels"][0]["profiles"][0]["findings"][0][key] = value;
    };
    let page = told(&|r| of(r, "outcome", json!("met")));
    assert!(page.contains("Anvil Petrel (tests/it/record/fleet-then/anvil.yaml)"), "{page}");
    assert!(page.contains("`pier-2025` long-cutter: met → not met"), "{page}");
    let page = told(&|r| of(r, "tools", json!(["LC-9"])));
    assert!(page.contains("not met; by LC-9; too-short-for-rail LC-1 by 50800000 nm"), "{page}");
    let page = told(&|r| of(r, "reasons", json!([])));
    assert!(page.contains("`pier-2025` long-cutter:"), "{page}");
    let page = told(&|r| of(r, "open_since", Value::Null));
    assert!(page.contains("`pier-2025` long-cutter:"), "{page}");
    let page = told(&|r| r["vessels"][0]["verdict"] = json!("ready"));
    assert!(page.contains("verdict: ready → not ready"), "{page}");
    for key in ["name", "register", "port"] {
        let page = told(&|r| r["vessels"][1][key] = json!("Port Brisk"));
        assert!(page.contains("its name, register, port or trip is another"), "{key}: {page}");
    }
    let page = told(&|r| r["vessels"][1]["profiles"] = json!([]));
    assert!(page.contains("`pier-2025` judges it now, not then"), "{page}");
    let page = told(&|r| r["vessels"][1]["profiles"][0]["encoding"] = json!(3));
    assert!(page.contains("its edition, encoding or standing is another"), "{page}");
    let page =
        told(&|r| r["vessels"][2]["profiles"][0]["ready_until"] = json!({"state": "no-end"}));
    assert!(page.contains("ready until no end → 2026-06-30"), "{page}");
    let page = told(&|r| {
        drop(r["vessels"][2]["profiles"][0]["findings"].as_array_mut().unwrap().remove(1))
    });
    assert!(page.contains("`pier-2025` pliers: not asked → met"), "{page}");
    // What was asked belongs to what was found.
    let page = told(&|r| r["asked"]["on"] = json!("2026-07-02"));
    assert!(page.contains("its name, register, port or trip is another"), "{page}");
}

#[test]
fn of_more_than_two_hundred_differences_the_rest_is_counted() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("record.json");
    let typed = ["audit", "vessels", "--date", "2026-11-25", "--record", path.to_str().unwrap()];
    run::kitmuster(&typed);
    let whole = value(path.to_str().unwrap());
    for (changes, more) in [(200, None), (203, Some("and 3 more"))] {
        let mut record = whole.clone();
        let vessels = record["vessels"].as_array_mut().unwrap().iter_mut();
        let profiles = vessels.flat_map(|v| v["profiles"].as_array_mut().unwrap());
        let findings = profiles.flat_map(|p| p["findings"].as_array_mut().unwrap());
        let changed_findings = findings.take(changes).map(|f| f["tools"] = json!(["X-9"])).count();
        assert_eq!(changed_findings, changes);
        let page = flat(&verify(&changed(folder.path(), &record)).stdout);
        assert!(page.contains(&format!("{changes} differences")), "{page}");
        assert_eq!(page.matches("by X-9").count(), 200);
        assert_eq!(page.contains(" more"), more.is_some(), "{page}");
        assert!(page.contains(more.unwrap_or_default()), "{page}");
    }
}

#[test]
fn a_record_that_contradicts_itself_is_no_record() {
    let folder = tempfile::tempdir().unwrap();
    let whole = value(&june(folder.path()));
    let told = |change: &dyn Fn(&mut Value)| {
        let mut record = whole.clone();
        change(&mut record);
        let ran = verify(&changed(folder.path(), &record));
        assert_eq!((ran.status, ran.stdout.as_str()), (2, ""), "{}", ran.stderr);
        flat(&ran.stderr)
    };
    let page = told(&|r| drop(r["vessels"].as_array_mut().unwrap().remove(0)));
    assert!(page.contains("6 findings of vessels and 7 vessels' files"), "{page}");
    let page = told(&|r| r["vessels"].as_array_mut().unwrap().swap(0, 1));
    assert!(page.contains("stands where the text of"), "{page}");
    let page = told(&|r| r["vessels"][0]["inspections"] = json!(["x.yaml"]));
    assert!(page.contains("the inspection record `x.yaml` is not in it"), "{page}");
    let page = told(&|r| r["asked"]["profiles"] = json!(["no-such"]));
    assert!(page.contains("asks for the profile `no-such`"), "{page}");
    let page = told(&|r| {
        r["vessels"][0]["profiles"][0]["findings"][0]["open_since"] = json!("2027-01-01")
    });
    assert!(page.contains("open since 2027-01-01, after the audit"), "{page}");
    let page = told(&|r| r["editions"] = json!([]));
    assert!(page.contains("judged a vessel and is not in its list of editions"), "{page}");
    let page = told(&|r| r["editions"][0]["encoding"] = json!(9));
    assert!(page.contains("than the profile's own text"), "{page}");
    let page = told(&|r| {
        let mut other = r["editions"][0].clone();
        other["id"] = json!("pier-2026");
        r["editions"].as_array_mut().unwrap().push(other);
    });
    assert!(page.contains("names `pier-2026`, which judged no vessel"), "{page}");
    let again = |list: &mut Value| {
        let first = list[0].clone();
        list.as_array_mut().unwrap().push(first);
    };
    let page = told(&|r| again(&mut r["editions"]));
    assert!(page.contains("its list of editions names"), "{page}");
    let page = told(&|r| {
        again(&mut r["vessels"]);
        again(&mut r["inputs"]["vessels"]);
    });
    assert!(page.contains("it holds the vessel `tests/it/record/fleet-then/anvil.yaml` twice"));
    let page = told(&|r| again(&mut r["vessels"][0]["profiles"]));
    assert!(page.contains("`pier-2025` judges"), "{page}");
    let page = told(&|r| again(&mut r["vessels"][0]["profiles"][0]["findings"]));
    assert!(page.contains("`long-cutter` of `pier-2025` is found on"), "{page}");
}

#[test]
fn a_record_laid_over_twice_is_no_record() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("record.json");
    let path = path.to_str().unwrap();
    audit("fleet-now", "rules", "2026-08-01", &["--record", path]);
    let mut record = value(path);
    let laid = &mut record["vessels"][0]["inspections"];
    let first = laid[0].clone();
    laid.as_array_mut().unwrap().push(first);
    let changed = changed(folder.path(), &record);
    let ran = verify(&changed);
    assert_eq!((ran.status, ran.stdout.as_str()), (2, ""));
    assert!(flat(&ran.stderr).contains("twice"), "{}", ran.stderr);
}

#[test]
fn what_contradicts_itself_is_not_compared_with() {
    let folder = tempfile::tempdir().unwrap();
    let whole = value(&june(folder.path()));
    for (key, value) in [("editions", json!([])), ("asked", Value::Null)] {
        let mut record = whole.clone();
        match value {
            Value::Null => record[key]["profiles"] = json!(["no-such"]),
            list => record[key] = list,
        }
        let path = changed(folder.path(), &record);
        let ran = audit("fleet-now", "rules", JUNE, &["--against", path.to_str().unwrap()]);
        assert_eq!((ran.status, ran.stdout.as_str()), (2, ""), "{key}");
    }
}

#[test]
fn a_byte_order_mark_is_no_part_of_a_record() {
    let folder = tempfile::tempdir().unwrap();
    let text = std::fs::read_to_string(june(folder.path())).unwrap();
    let ran = verify_text(format!("\u{feff}{text}").as_bytes());
    assert_eq!(ran.status, 0, "{}", ran.stderr);
}

#[test]
fn what_is_no_record_is_one_clear_message() {
    let cases: [(&[u8], &str); 9] = [
        (b"", "line 1, column 0: EOF while parsing a value"),
        (b"{\n  \"schema\": ", "line 2, column 12: EOF while parsing a value"),
        (b"not json", "line 1, column 2: expected ident"),
        (b"{}", "line 1, column 2: missing field `schema`"),
        (b"[1, 2]", "line 1, column"),
        (
            b"{\"schema\": \"kitmuster/record/2\", \"new\": true}",
            "its schema is `kitmuster/record/2`",
        ),
        (b"{\"schema\": \"kitmuster/audit/1\"}", "its schema is `kitmuster/audit/1`"),
        (b"{\"schema\": \"a\", \"schema\": \"b\"}", "duplicate field `schema`"),
        (b"\xff\xfe{}", "not text in UTF-8"),
    ];
    for (text, expected) in cases {
        let ran = verify_text(text);
        assert_eq!((ran.status, ran.stdout.as_str()), (2, ""));
        let told = flat(&ran.stderr);
        assert!(told.contains(expected), "{told}");
    }
    let deep = [b"[".repeat(100_000), b"]".repeat(100_000)].concat();
    let nested =
        [b"{\"schema\": \"kitmuster/record/1\", \"x\": ".to_vec(), deep.clone(), b"}".to_vec()];
    for text in [deep, nested.concat()] {
        let ran = verify_text(&text);
        assert_eq!(ran.status, 2);
        assert!(ran.stderr.len() < 1000 && ran.stderr.contains("line 1, column"), "{}", ran.stderr);
    }
    let ran =
        verify_text("{\"schema\": \"\u{1b}[31m\u{202e}\"}".replace('\u{1b}', "\\u001b").as_bytes());
    assert_eq!(ran.status, 2);
    assert!(!ran.stderr.contains(['\u{1b}', '\u{202e}']), "{}", ran.stderr);
}

#[test]
fn a_day_or_word_that_there_is_not_is_told_with_its_place() {
    let folder = tempfile::tempdir().unwrap();
    let path = june(folder.path());
    let text = std::fs::read_to_string(&path).unwrap();
    for (old, new, expected) in [
        ("\"date\": \"2026-06-01\"", "\"date\": \"2026-06-31\"", "line 7, column 22: `2026-06-31`"),
        ("\"trust\": \"all\"", "\"trust\": \"none\"", "unknown variant `none`"),
        ("\"encoding\": 1,", "\"encoding\": -1,", "invalid value: integer `-1`"),
    ] {
        assert!(text.contains(old), "{old}");
        let ran = verify_text(text.replacen(old, new, 1).as_bytes());
        assert_eq!(ran.status, 2);
        assert!(flat(&ran.stderr).contains(expected), "{}", ran.stderr);
    }
}

#[test]
fn what_is_no_file_or_too_large_is_not_read() {
    let folder = tempfile::tempdir().unwrap();
    let huge = folder.path().join("huge.json");
    std::fs::File::create(&huge).unwrap().set_len(257 * 1024 * 1024).unwrap();
    for (path, expected) in [
        (huge.as_path(), "at most 256 MiB"),
        (folder.path(), "this is a folder"),
        (Path::new("nowhere.json"), "there is no such file"),
    ] {
        let ran = verify(path);
        assert_eq!((ran.status, ran.stdout.as_str()), (2, ""));
        assert!(ran.stderr.contains(expected), "{}", ran.stderr);
    }
}

#[test]
fn a_record_to_compare_with_is_read_with_the_same_care() {
    let folder = tempfile::tempdir().unwrap();
    let mut record = value(&june(folder.path()));
    let text = record["inputs"]["vessels"][0]["text"].as_str().unwrap();
    record["inputs"]["vessels"][0]["text"] = json!(text.replace("5 ft 10 in", "6 ft 10 in"));
    let path = changed(folder.path(), &record);
    let ran = audit("fleet-now", "rules", JUNE, &["--against", path.to_str().unwrap()]);
    assert_eq!((ran.status, ran.stdout.as_str()), (2, ""));
    let expected = format!("the input `{}` was changed", place("fleet-then/anvil.yaml"));
    assert!(flat(&ran.stderr).contains(&expected), "{}", ran.stderr);
}

//! The command `schema`.

use super::schema;
use crate::run;
use kitmuster::report::wire::schema::FORMATS;

#[test]
fn the_list_has_a_line_for_each_format_in_eighty_columns() {
    let ran = run::kitmuster(&["schema"]);
    assert_eq!((ran.status, ran.stderr.as_str()), (0, ""));
    for format in FORMATS {
        let line = format!("  {:<12}{}", format.name, format.says());
        assert!(ran.stdout.lines().any(|one| one == line), "{line}\n{}", ran.stdout);
    }
    assert!(ran.stdout.lines().all(|line| line.chars().count() <= 80), "{}", ran.stdout);
}

#[test]
fn a_schema_is_printed_and_written_alike_each_time() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("vessel.json");
    let printed = run::kitmuster(&["schema", "vessel"]);
    assert_eq!((printed.status, printed.stderr.as_str()), (0, ""));
    assert_eq!(printed.json(), schema("vessel"));
    let written = run::kitmuster(&["schema", "vessel/1", "--output", path.to_str().unwrap()]);
    assert_eq!((written.status, written.stdout.as_str()), (0, ""));
    assert_eq!(std::fs::read_to_string(&path).unwrap(), printed.stdout);
    let check = run::kitmuster(&["schema", "kitmuster/check/1"]);
    assert_eq!(check.json(), schema("check"));
}

#[test]
fn a_name_that_is_not_known_is_told_with_the_nearest() {
    let ran = run::kitmuster(&["schema", "vesel"]);
    assert_eq!((ran.status, ran.stdout.as_str()), (2, ""));
    assert!(ran.stderr.contains("there is no schema of `vesel`"), "{}", ran.stderr);
    assert!(ran.stderr.contains("did you mean `vessel`?"), "{}", ran.stderr);
    let ran = run::kitmuster(&["schema", "boat"]);
    assert_eq!(ran.status, 2);
    assert!(ran.stderr.contains("`kitmuster schema` lists them"), "{}", ran.stderr);
}

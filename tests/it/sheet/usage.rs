//! What cannot be asked of the command, and what it never does.

use crate::run::{home, kitmuster, write};

#[test]
fn what_does_not_go_together_is_refused_with_what_to_leave_out() {
    let vessel = "vessels/marlow-tern.yaml";
    let profile = "us-gulf-reef-fish-2019";
    for (arguments, told) in [
        (vec!["--blank-vessel", profile, "--record-form"], "`--record-form` and `--blank-vessel`"),
        (
            vec!["--blank-vessel", profile, "--inspection", "r.yaml"],
            "`--inspection` and `--blank-vessel`",
        ),
        (vec!["--blank-vessel", profile, "--for", "skipper"], "`--for` and `--blank-vessel`"),
        (vec!["--blank-vessel", profile, vessel], "a vessel's file and `--blank-vessel`"),
        (vec!["--blank-vessel", profile, "--profile", profile], "`--profile` and `--blank-vessel`"),
        (vec![vessel, "--record-form", "--for", "skipper"], "`--record-form` and `--for skipper`"),
        (vec![vessel, "--inspection", "vessels/none.yaml"], "there is no such file"),
        (vec![], "no vessel was named"),
        (vec!["--blank-vessel", "us-gulf-reef-fsh"], "did you mean `us-gulf-reef-fish-2019`?"),
        (vec!["--blank-vessel", "us-atlantic-longline-2024"], "known, not encoded"),
        (vec![vessel, "--profile", "us-gulf"], "no profile `us-gulf`"),
        (vec!["vessels/none.yaml"], "there is no such file"),
        (vec![vessel, "--on", "2026-12-02", "--return", "2026-12-01"], "lies before the departure"),
    ] {
        let ran = kitmuster(&[vec!["sheet"], arguments.clone()].concat());
        assert_eq!((ran.status, ran.stdout.as_str()), (2, ""), "{arguments:?}");
        let error = ran.stderr.split_whitespace().collect::<Vec<_>>().join(" ");
        assert!(error.contains(told), "{arguments:?}: {error}");
    }
}

#[test]
fn a_rule_with_several_editions_on_those_days_is_asked_back() {
    let ran = kitmuster(&[
        "sheet",
        "--blank-vessel",
        "us-gulf-reef-fish",
        "--on",
        "2019-05-01",
        "--return",
        "2019-08-01",
    ]);
    assert_eq!(ran.status, 2);
    for part in ["us-gulf-reef-fish-2019", "us-gulf-reef-fish-before-2019", "`--on`"] {
        assert!(ran.stderr.contains(part), "{part}: {}", ran.stderr);
    }
    let one = ["sheet", "--blank-vessel", "us-gulf-reef-fish", "--on", "2026-01-01"];
    assert_eq!(kitmuster(&one).status, 0);
}

#[test]
fn no_paper_is_written_over_a_file_that_is_read() {
    let folder = tempfile::tempdir().unwrap();
    let text = std::fs::read_to_string(home().join("vessels/marlow-tern.yaml")).unwrap();
    let vessel = write(folder.path(), "vessel.yaml", &text);
    let profile = std::fs::read_to_string(home().join("requirements/good-practice-longline.yaml"));
    let profile = write(folder.path(), "good-practice-longline.yaml", &profile.unwrap());
    let record = write(folder.path(), "record.yaml", "format: inspection/1\n");
    for arguments in [
        vec!["sheet", &vessel, "--output", &vessel],
        vec!["sheet", &vessel, "--record-form", "--output", &vessel],
        vec!["sheet", &vessel, "--profile", &profile, "--output", &profile],
        vec!["sheet", "--blank-vessel", &profile, "--output", &profile],
        vec!["sheet", &vessel, "--inspection", &record, "--output", &record],
    ] {
        let ran = kitmuster(&arguments);
        assert_eq!(ran.status, 2, "{arguments:?}");
        let error = ran.stderr.split_whitespace().collect::<Vec<_>>().join(" ");
        assert!(error.contains("which is read here"), "{error}");
    }
    assert_eq!(std::fs::read_to_string(&vessel).unwrap(), text);
}

/// What a person filled in is not lost to a command typed once more.
#[test]
fn no_form_takes_the_place_of_a_file_unless_that_is_insisted_on() {
    let folder = tempfile::tempdir().unwrap();
    let filled = "filled in by hand";
    let path = write(folder.path(), "mine.yaml", filled);
    let there = || std::fs::read_to_string(&path).unwrap();
    for form in [
        &["sheet", "vessels/marlow-tern.yaml", "--record-form"][..],
        &["sheet", "--blank-vessel", "us-gulf-reef-fish-2019"],
        &["schema", "vessel"],
    ] {
        let refused = kitmuster(&[form, &["--output", &path]].concat());
        assert_eq!((refused.status, refused.stdout.as_str()), (2, ""), "{form:?}");
        assert!(refused.stderr.contains("--force"), "{}", refused.stderr);
        assert_eq!(there(), filled);
        let insisted = kitmuster(&[form, &["--output", &path, "--force"]].concat());
        assert_eq!((insisted.status, insisted.stderr.as_str()), (0, ""), "{form:?}");
        assert_ne!(there(), filled);
        write(folder.path(), "mine.yaml", filled);
    }
    // A paper is printed anew.
    let paper = kitmuster(&["sheet", "vessels/marlow-tern.yaml", "--output", &path]);
    assert_eq!(paper.status, 0, "{}", paper.stderr);
    assert_ne!(there(), filled);
}

#[test]
fn a_paper_goes_to_its_file_and_the_exit_code_says_only_that() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("sheet.html").to_string_lossy().into_owned();
    // The vessel is not ready; the paper is written all the same.
    let ran = kitmuster(&["sheet", "vessels/marlow-tern.yaml", "--output", &path]);
    assert_eq!((ran.status, ran.stdout.as_str(), ran.stderr.as_str()), (0, "", ""));
    let printed = kitmuster(&["sheet", "vessels/marlow-tern.yaml"]);
    assert_eq!(std::fs::read_to_string(&path).unwrap(), printed.stdout);
}

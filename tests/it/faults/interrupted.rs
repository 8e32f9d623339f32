//! Runs that are killed in the middle, and runs that write one file at once.

use super::{DAY, is_stray, names, program};
use crate::whole::cases;
use std::path::Path;
use std::process::{Child, Command, Stdio};
use std::time::{Duration, Instant};

const OLD: &str = "the old report\n";

fn spawn(typed: &[&str]) -> Child {
    program(typed).stdout(Stdio::null()).stderr(Stdio::null()).spawn().unwrap()
}

fn report(path: &Path, format: &'static str) -> Vec<String> {
    let typed =
        ["audit", "vessels", "--date", DAY, "--threads", "1", "--format", format, "--output"];
    typed.iter().map(|one| (*one).to_owned()).chain([path.to_str().unwrap().to_owned()]).collect()
}

fn borrowed(typed: &[String]) -> Vec<&str> {
    typed.iter().map(String::as_str).collect()
}

/// Numbers without order, the same every time.
fn drawn(seed: &mut u64) -> u64 {
    *seed ^= *seed << 13;
    *seed ^= *seed >> 7;
    *seed ^= *seed << 17;
    *seed
}

fn send(signal: &str, child: &Child) {
    let line = format!("kill -{signal} {}", child.id());
    let _ = Command::new("/bin/sh").args(["-c", &line]).stderr(Stdio::null()).status();
}

/// Runs stopped by three signals: after a delay that is drawn from half as
/// much again as a run takes, or as soon as the file in the making is seen.
/// What stands under the report's name is whole each time; nothing else is left
/// where the program was asked to end, and where it was killed outright a file
/// of a name that no command reads.
#[test]
fn a_run_that_is_killed_leaves_the_old_report_or_the_new_one() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("report.html");
    let start = Instant::now();
    let typed = report(&path, "lines");
    let typed = borrowed(&typed);
    spawn(&typed).wait().unwrap();
    let takes = start.elapsed();
    let new = std::fs::read_to_string(&path).unwrap();
    let (mut seed, mut old, mut strays) = (20_260_302, 0, 0);
    let signals = ["KILL", "TERM", "INT"];
    let rounds = cases(12, 40);
    for round in 0..rounds {
        std::fs::write(&path, OLD).unwrap();
        let before = names(folder.path()).len();
        let mut child = spawn(&typed);
        if round % 2 == 0 {
            let share = u32::try_from(drawn(&mut seed) % 1500).unwrap();
            std::thread::sleep(takes * share / 1000);
        } else {
            while names(folder.path()).len() == before && child.try_wait().unwrap().is_none() {
                std::thread::sleep(Duration::from_millis(1));
            }
        }
        send(signals[round % 3], &child);
        child.wait().unwrap();
        let found = std::fs::read_to_string(&path).unwrap();
        assert!(found == OLD || found == new, "round {round}: torn\n{found:.300}");
        old += usize::from(found == OLD);
        let left = names(folder.path());
        assert!(left.iter().all(|name| name == "report.html" || is_stray(name)), "{left:?}");
        let more = left.len() - 1 - strays;
        let most = usize::from(signals[round % 3] == "KILL");
        assert!(more <= most, "{} left {more} files: {left:?}", signals[round % 3]);
        strays += more;
    }
    eprintln!(
        "killed {rounds} times: {old} times the old report, {strays} files in the making left"
    );
    assert!(old > 0, "no run was killed before its end");
    no_command_reads_what_is_left(folder.path(), strays);
}

/// A stray is neither a vessel nor a record, a profile or a report.
fn no_command_reads_what_is_left(folder: &Path, strays: usize) {
    std::fs::write(folder.join(".kitmuster-aB3dE9"), "format: vessel/1\nname: [\n").unwrap();
    std::fs::copy(crate::run::home().join("vessels/marlow-tern.yaml"), folder.join("a.yaml"))
        .unwrap();
    let here = folder.to_str().unwrap();
    let ran = program(&["audit", here, "--date", DAY, "--format", "json"]).output().unwrap();
    let page: serde_json::Value = serde_json::from_slice(&ran.stdout).unwrap();
    assert_eq!(page["totals"]["refused"], 0, "{strays} strays");
    assert_eq!(page["vessels"].as_array().unwrap().len(), 1);
    std::fs::remove_file(folder.join("a.yaml")).unwrap();
    let rules = program(&["profiles", "--requirements", here]).output().unwrap();
    let shipped = program(&["profiles"]).output().unwrap();
    assert_eq!(rules.stdout, shipped.stdout);
}

/// Rounds of two runs with one name: the file is one of the two, whole, and
/// both runs end as if they were alone.
#[test]
fn two_runs_that_write_one_file_leave_one_of_the_two() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("report");
    let with = |typed: &[&'static str]| {
        let all = typed.iter().copied().chain(["--on", DAY, "--output", path.to_str().unwrap()]);
        all.map(str::to_owned).collect::<Vec<_>>()
    };
    let one = with(&["check", "vessels/marlow-tern.yaml", "--format", "html"]);
    let other = with(&["sheet", "vessels/marlow-tern.yaml", "--record-form"]);
    let whole = |typed: &[String]| {
        let status = spawn(&borrowed(typed)).wait().unwrap();
        (status.code(), std::fs::read_to_string(&path).unwrap())
    };
    let (first, second) = (whole(&one), whole(&other));
    for round in 0..cases(6, 20) {
        let (mut a, mut b) = (spawn(&borrowed(&one)), spawn(&borrowed(&other)));
        assert_eq!(a.wait().unwrap().code(), first.0, "round {round}");
        assert_eq!(b.wait().unwrap().code(), second.0, "round {round}");
        let found = std::fs::read_to_string(&path).unwrap();
        assert!(found == first.1 || found == second.1, "round {round}: {found:.300}");
        assert_eq!(names(folder.path()), ["report"], "round {round}");
    }
}

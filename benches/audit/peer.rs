//! The straightforward checker in Python on the same files: its time and its
//! verdicts beside ours.

use crate::{Row, milliseconds};
use serde_json::Value;
use std::collections::BTreeMap;
use std::path::{Path, PathBuf};
use std::process::Command;
use std::time::{Duration, Instant};

/// The rule that the peer knows.
const PROFILE: &str = "us-gulf-reef-fish-2019";
/// Beyond so many files its time is known well enough.
const MOST: usize = 10_000;
/// How many disagreements are shown.
const SHOWN: usize = 10;

/// Runs the peer and prints how it compares.
pub(crate) fn compare(folder: &Path, size: usize, row: &Row) {
    if size > MOST {
        println!("  the Python peer is left out above {MOST} files");
        return;
    }
    let Some(python) = python() else {
        println!("  no Python with PyYAML and its C loader: the peer is left out");
        return;
    };
    let script = Path::new(env!("CARGO_MANIFEST_DIR")).join("benches/peer/audit.py");
    let run = |arguments: &[&Path]| {
        let start = Instant::now();
        let mut command = Command::new(&python);
        command.arg("-B").arg(&script).args(arguments).env_remove("PYTHONPATH");
        let output = command.output().unwrap();
        assert!(output.status.success(), "{}", String::from_utf8_lossy(&output.stderr));
        (start.elapsed(), String::from_utf8(output.stdout).unwrap())
    };
    let requirements = Path::new(env!("CARGO_MANIFEST_DIR")).join("requirements");
    let (parsing, _) = run(&[Path::new("--parse"), folder]);
    let (whole, said) = run(&[&requirements, folder]);
    let ours = row.steps.last().unwrap().1;
    let times = |time: Duration| time.as_secs_f64() / ours.as_secs_f64();
    println!("  Python, parsing alone, one process{:>10}", milliseconds(parsing));
    println!("  Python, the Gulf rule alone       {:>10}", milliseconds(whole));
    println!(
        "  the command audits every rule in {:.0} times less (in {:.0} times less than its parsing)",
        times(whole),
        times(parsing)
    );
    verdicts(&folder.with_extension("lines"), &said);
}

fn verdicts(lines: &Path, said: &str) {
    let ours = ours(lines);
    let (mut bound, mut apart) = (BTreeMap::<String, usize>::new(), Vec::new());
    for line in said.lines() {
        let (file, theirs) = line.split_once('\t').unwrap();
        let own = ours.get(file).map_or("missing", String::as_str);
        if own == "not-bound" && theirs == "not-bound" {
            continue;
        }
        *bound.entry(own.to_owned()).or_default() += 1;
        if own != theirs {
            apart.push(format!("    {file}: ours {own}, peer {theirs}"));
        }
    }
    let total: usize = bound.values().sum();
    println!("  verdicts compared: {total} {bound:?}; they differ on {}", apart.len());
    apart.iter().take(SHOWN).for_each(|line| println!("{line}"));
}

/// Our verdict under the rule, by file.
fn ours(lines: &Path) -> BTreeMap<String, String> {
    let text = std::fs::read_to_string(lines).unwrap();
    let one = |line: &str| {
        let line: Value = serde_json::from_str(line).unwrap();
        let profiles = line["profiles"].as_array();
        let verdict = match profiles {
            None => "refused",
            Some(list) => list
                .iter()
                .find(|profile| profile["id"] == PROFILE)
                .map_or("not-bound", |profile| profile["verdict"].as_str().unwrap()),
        };
        (line["file"].as_str().unwrap().to_owned(), verdict.to_owned())
    };
    text.lines().map(one).collect()
}

/// A Python with PyYAML: the one named in `KITMUSTER_PYTHON`, else one of our
/// own below `target/`.
fn python() -> Option<PathBuf> {
    let has_yaml = |python: &PathBuf| {
        let mut command = Command::new(python);
        command.args(["-c", "import yaml; yaml.CSafeLoader"]);
        command.status().is_ok_and(|status| status.success())
    };
    if let Some(named) = std::env::var_os("KITMUSTER_PYTHON") {
        return Some(named.into()).filter(has_yaml);
    }
    let home = Path::new(env!("CARGO_TARGET_TMPDIR")).join("python");
    let python = home.join("bin/python");
    if !python.exists() {
        Command::new("python3").args(["-m", "venv"]).arg(&home).status().ok()?;
        let pip = ["-m", "pip", "install", "--quiet", "pyyaml"];
        Command::new(&python).args(pip).status().ok()?;
    }
    Some(python).filter(has_yaml)
}

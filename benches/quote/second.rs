//! The same small orders by the command and by a program of its own in
//! Python: their least totals beside each other.

use crate::catalogues::{self, ORDERED};
use crate::fleet::draw::Draw;
use crate::vessels::{self, Which};
use serde_json::Value;
use std::collections::BTreeMap;
use std::path::{Path, PathBuf};
use std::process::Command;
use std::time::{Duration, Instant};

/// The rule that the peer knows.
const PROFILE: &str = "us-gulf-reef-fish-2019";
/// How long the command may search, in seconds.
const TIME_LIMIT: &str = "60";
/// Every so manieth case has many vessels.
const LARGE: u64 = 25;

/// What the command says of a case.
struct Ours {
    total: i64,
    least: i64,
    ready: i64,
    open: usize,
    proved: bool,
    took: Duration,
    /// What there is in the order, by name.
    seen: Vec<&'static str>,
}

/// Compares so many cases, from this seed on.
pub(crate) fn compare(cases: u64, seed: u64) {
    let Some(python) = python() else {
        println!("no Python with PyYAML and SciPy: nothing is compared");
        return;
    };
    let root = crate::folder(&format!("quote-peer-{seed}"));
    let (mut agree, mut apart, mut unproved) = (0, Vec::new(), 0);
    let mut occurs: BTreeMap<&str, u32> = BTreeMap::new();
    for number in seed..seed + cases {
        let case = write(&root, number);
        let theirs = peer(&python, &case);
        let ours = command(&case);
        let same_findings = ours.ready == theirs["ready"].as_i64().unwrap()
            && ours.open == theirs["open"].as_array().unwrap().len();
        let total = theirs["total"].as_i64().unwrap();
        let fine = match ours.proved {
            true => ours.total == total,
            false => ours.least <= total && total <= ours.total,
        };
        unproved += u32::from(!ours.proved);
        ours.seen.iter().for_each(|what| *occurs.entry(what).or_default() += 1);
        let line = format!(
            "{number}: ours {} ({} ready, {} open, proved {}, {:.2} s), peer {total} ({} ready, \
             {} open, proved {}, {} s)",
            ours.total,
            ours.ready,
            ours.open,
            ours.proved,
            ours.took.as_secs_f64(),
            theirs["ready"],
            theirs["open"].as_array().unwrap().len(),
            theirs["proved"],
            theirs["seconds"],
        );
        if fine && same_findings {
            agree += 1;
            println!("  {line}");
        } else {
            println!("! {line}");
            apart.push(number);
        }
    }
    println!("{agree} of {cases} agree, {unproved} of them not proved; they differ on {apart:?}");
    println!("orders with {occurs:?}");
}

/// Writes a case: 1 to 6 vessels and 20 to 60 items; now and then 12 and 60, or
/// 20 and 600.
fn write(root: &Path, number: u64) -> PathBuf {
    let mut draw = Draw::of(number, 4_000_037);
    let case = root.join(format!("{number:05}"));
    let (mut count, mut items) = (draw.between(1, 6), draw.between(20, 60));
    match number % (2 * LARGE) {
        0 => (count, items) = (20, 600),
        LARGE => (count, items) = (12, 60),
        _ => {}
    }
    let (count, items) = (usize::try_from(count).unwrap(), usize::try_from(items).unwrap());
    catalogues::write(&case.join("suppliers"), number, items);
    vessels::write(&case.join("vessels"), number, Which::Gulf, count);
    case
}

fn peer(python: &Path, case: &Path) -> Value {
    let home = Path::new(env!("CARGO_MANIFEST_DIR"));
    let mut command = Command::new(python);
    command.arg("-B").arg(home.join("benches/peer/cheapest.py")).env_remove("PYTHONPATH");
    let output = command.arg(home.join("requirements")).arg(ORDERED).arg(case).output().unwrap();
    assert!(output.status.success(), "{}", String::from_utf8_lossy(&output.stderr));
    serde_json::from_slice(&output.stdout).unwrap()
}

fn command(case: &Path) -> Ours {
    let mut command = Command::new(env!("CARGO_BIN_EXE_kitmuster"));
    command.arg("quote").arg(case.join("vessels")).args(["--profile", PROFILE]);
    command.args(["--ordered", ORDERED, "--time-limit", TIME_LIMIT, "--format", "json"]);
    let mut suppliers: Vec<PathBuf> = std::fs::read_dir(case.join("suppliers"))
        .unwrap()
        .map(|entry| entry.unwrap().path())
        .collect();
    suppliers.sort();
    for path in &suppliers {
        command.arg("--catalogue").arg(path);
    }
    let start = Instant::now();
    let output = command.output().unwrap();
    let took = start.elapsed();
    let said = String::from_utf8_lossy(&output.stderr);
    let quote: Value = serde_json::from_slice(&output.stdout)
        .unwrap_or_else(|_| panic!("no quote for {}: {said}", case.display()));
    let cents = |money: &Value| {
        let text = money["amount"].as_str().unwrap_or("0.00").replace(',', "");
        text.replace('.', "").parse().unwrap()
    };
    let vessels = quote["vessels"].as_array().unwrap();
    let ready = quote["totals"]["after"]["ready"].as_i64().unwrap();
    Ours {
        total: cents(&quote["cost"]["total"]),
        least: cents(&quote["bound"]["least"]),
        ready,
        open: vessels.iter().map(|vessel| vessel["open"].as_array().unwrap().len()).sum(),
        proved: quote["bound"]["least"].is_null(),
        took,
        seen: seen(&quote),
    }
}

/// What there is in the order, so that it is seen that all of it occurs.
fn seen(quote: &Value) -> Vec<&'static str> {
    let orders = || quote["orders"].as_array().unwrap().iter();
    let lines = || orders().flat_map(|order| order["lines"].as_array().unwrap());
    let sold = |letters: &str| lines().any(|l| l["number"].as_str().unwrap().starts_with(letters));
    let count = |line: &Value, key: &str| line[key].as_u64().unwrap();
    let open = |vessel: &Value| !vessel["open"].as_array().unwrap().is_empty();
    let delivery =
        |free: bool| orders().any(|order| (order["delivery"]["amount"] == "0.00") == free);
    let all = [
        ("several suppliers", orders().count() > 1),
        ("packs", lines().any(|line| count(line, "pack") > 1)),
        ("pieces left over", lines().any(|line| count(line, "left_over") > 0)),
        ("packs for nothing", lines().any(|line| count(line, "used") == 0)),
        ("longer poles", sold("EX-")),
        ("work", sold("SV-")),
        ("sets", sold("SET-")),
        ("delivery paid", delivery(false)),
        ("delivery free", delivery(true)),
        ("tax", orders().any(|order| order["tax"]["amount"] != "0.00")),
        ("findings open", quote["vessels"].as_array().unwrap().iter().any(open)),
    ];
    all.into_iter().filter(|(_, there)| *there).map(|(name, _)| name).collect()
}

/// A Python with PyYAML and SciPy: the one named in `KITMUSTER_PYTHON`, else
/// one of our own below `target/`.
fn python() -> Option<PathBuf> {
    let has_all = |python: &PathBuf| {
        let mut command = Command::new(python);
        command.args(["-c", "import scipy.optimize, yaml; yaml.CSafeLoader, scipy.optimize.milp"]);
        command.status().is_ok_and(|status| status.success())
    };
    if let Some(named) = std::env::var_os("KITMUSTER_PYTHON") {
        return Some(PathBuf::from(named)).filter(has_all);
    }
    let home = Path::new(env!("CARGO_TARGET_TMPDIR")).join("python-with-scipy");
    let python = home.join("bin/python");
    if !python.exists() {
        Command::new("python3").args(["-m", "venv"]).arg(&home).status().ok()?;
        let pip = ["-m", "pip", "install", "--quiet", "pyyaml", "scipy"];
        Command::new(&python).args(pip).status().ok()?;
    }
    Some(python).filter(has_all)
}

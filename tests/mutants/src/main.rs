//! Tries every change of the sources that `cargo mutants --list --json` names
//! in one build, each switched on by itself. `run.sh` says how.

mod mutant;
mod tests;
mod trials;
mod weave;
mod weed;

use std::collections::BTreeSet;
use std::error::Error;
use std::path::{Path, PathBuf};
use std::process::ExitCode;
use std::{env, fs};

fn main() -> ExitCode {
    let words: Vec<String> = env::args().skip(1).collect();
    let words: Vec<&str> = words.iter().map(String::as_str).collect();
    let done = match words.as_slice() {
        ["weave", place] => weave(Path::new(place)),
        ["try", place, programs @ ..] if !programs.is_empty() => {
            try_all(Path::new(place), programs.iter().map(PathBuf::from).collect())
        }
        _ => Err("weave PLACE, or try PLACE PROGRAM…".into()),
    };
    if let Err(error) = done {
        eprintln!("{error}");
        return ExitCode::FAILURE;
    }
    ExitCode::SUCCESS
}

/// Weaves the changes of `PLACE/list.json` into a copy of `PLACE/plain`, and
/// once more without those that the compiler refuses, until it refuses none.
fn weave(place: &Path) -> Result<(), Box<dyn Error>> {
    let mutants = mutant::list(&place.join("list.json"))?;
    let tree = place.join("tree");
    let (mut without, mut why) = (BTreeSet::new(), String::new());
    loop {
        for mutant in &mutants {
            fs::copy(place.join("plain").join(&mutant.file), tree.join(&mutant.file))?;
        }
        fs::copy(place.join("plain/src/lib.rs"), tree.join("src/lib.rs"))?;
        let woven = weave::weave(&tree, &mutants, &without)?;
        let refused = weed::refused(&tree, &mutants, &mut why)?;
        if refused.is_empty() {
            let number = |n: &u32| n.to_string();
            let woven: Vec<String> = woven.iter().map(number).collect();
            fs::write(place.join("woven.txt"), woven.join("\n"))?;
            fs::write(place.join("refused.txt"), why)?;
            println!("{} of {} changes are woven in", woven.len(), mutants.len());
            return Ok(());
        }
        if refused.is_subset(&without) {
            return Err("the compiler refuses what was left out already".into());
        }
        without.extend(refused);
    }
}

fn try_all(place: &Path, programs: Vec<PathBuf>) -> Result<(), Box<dyn Error>> {
    let mutants = mutant::list(&place.join("list.json"))?;
    let woven = fs::read_to_string(place.join("woven.txt"))?;
    let woven: BTreeSet<u32> = woven.lines().map(str::parse).collect::<Result<_, _>>()?;
    let tree = place.join("tree");
    let (tests, reached) = tests::look(&tree, &programs, &place.join("notes"))?;
    println!("{} tests come by {} changes", tests.len(), reached.len());
    let results = place.join("results.jsonl");
    let trials = trials::Trials {
        tree: &tree,
        mutants: &mutants,
        tests: &tests,
        reached: &reached,
        results,
    };
    Ok(trials.all(&woven)?)
}

//! Tries every change of the sources that `cargo mutants --list --json` names
//! in one build, each switched on by itself. `run.sh` says how.
//!
//! To build the package anew for each of some 2,000 changes takes days on two
//! cores; so all are woven into one copy, each behind a switch, built once. What
//! could not be woven in (constants, functions that return `impl Trait`, what does
//! not compile, in `refused.txt`) is for `cargo mutants -F NAME -- --lib --test it`.
//!
//! What no test notices, and why that is right; anything else is a test that is
//! missing:
//!
//! | change | why it makes no difference |
//! | --- | --- |
//! | what only spares work: `is_enough`, `all_met`, `hopeless`, `can_be_met`, `is_settled`, `is_crowded`, bounds in `next_demand` and `next_type`, the order in which `fill_through` and `fill_directly` try, `Groups` made larger, the arms for no record and for no error, `between` at one freeboard | all is worked out instead, to the same end |
//! | a breakpoint, a month or a point more: `Later::add`, `has_months`, `month_starts`, `over_range`, `points` | nothing turns there, or it is looked at twice |
//! | which of two equals: `worse_of`, `worse_day`, `add` in `mend.rs`, `amount`, `in_order` of one | at one freeboard or with one figure they say the same |
//! | a step, a demand or a price more in `repair/mod.rs` and `tools.rs`, `merge_same_tool`, `mend_tool` at the day itself, `example` of any length, `fit_spares` | needless steps are dropped by trial, and what was assumed of a mended tool is tried by the engine |
//! | a guard in front of what cannot be: `clash::tools`, `serving`, `spare_fits`, a demand that does not bind, `lapsed` on the last day, `missed_by` nothing, hooks of a set that cuts none, a part counted twice in `take` and given back, `holds` from above, an inch in `print_step`, a requirement before itself in `point_demands` | the reader, or the line before, has settled it |

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
        ["sample", place, seed, of_each] => sample(Path::new(place), seed, of_each),
        ["weave", place] => weave(Path::new(place)),
        ["try", place, programs @ ..] if !programs.is_empty() => {
            try_all(Path::new(place), programs.iter().map(PathBuf::from).collect())
        }
        _ => Err("sample PLACE SEED COUNT, weave PLACE, or try PLACE PROGRAM…".into()),
    };
    if let Err(error) = done {
        eprintln!("{error}");
        return ExitCode::FAILURE;
    }
    ExitCode::SUCCESS
}

fn sample(place: &Path, seed: &str, of_each: &str) -> Result<(), Box<dyn Error>> {
    Ok(mutant::sample(&place.join("list.json"), seed.parse()?, of_each.parse()?)?)
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

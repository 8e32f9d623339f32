//! Switches the changes on, one after the other, and asks the tests that come
//! by each whether they notice.

use crate::mutant::Mutant;
use crate::tests::{End, Reached, Test, run};
use serde_json::{Value, json};
use std::collections::{BTreeMap, BTreeSet};
use std::fs::{self, File, OpenOptions};
use std::io::{self, Write};
use std::path::{Path, PathBuf};
use std::sync::Mutex;
use std::sync::atomic::{AtomicUsize, Ordering};
use std::time::Duration;

/// What is needed to try a change.
pub struct Trials<'a> {
    pub tree: &'a Path,
    pub mutants: &'a [Mutant],
    pub tests: &'a [Test],
    pub reached: &'a Reached,
    /// One line of JSON for each change that was tried; a run that was
    /// broken off goes on behind it.
    pub results: PathBuf,
}

/// What is known so far.
#[derive(Default)]
struct Known {
    /// By number: `caught`, `too-long`, `missed` or `unreached`.
    how: BTreeMap<u32, String>,
    /// How often a test caught a change of a file.
    catches: BTreeMap<(String, String), u32>,
}

impl Trials<'_> {
    /// Tries every change of `numbers` that was not tried before, and prints
    /// how many were noticed and which were not.
    ///
    /// # Errors
    /// Where a test cannot be run or the results not be written.
    pub fn all(&self, numbers: &BTreeSet<u32>) -> io::Result<()> {
        let known = Mutex::new(self.known()?);
        let results = OpenOptions::new().append(true).create(true).open(&self.results)?;
        let results = Mutex::new(results);
        // First what little testing tells, then the rest.
        for most in [Duration::from_secs(10), Duration::MAX] {
            let left: Vec<u32> = {
                let known = known.lock().expect("not poisoned");
                numbers.iter().copied().filter(|n| !known.how.contains_key(n)).collect()
            };
            println!("{} to be tried", left.len());
            let next = AtomicUsize::new(0);
            let workers = std::thread::available_parallelism()?.get();
            std::thread::scope(|scope| {
                let work = || -> io::Result<()> {
                    while let Some(number) = left.get(next.fetch_add(1, Ordering::Relaxed)) {
                        self.one(*number, most, &known, &results)?;
                    }
                    Ok(())
                };
                let all: Vec<_> = (0..workers).map(|_| scope.spawn(work)).collect();
                all.into_iter().try_for_each(|one| one.join().expect("no panic"))
            })?;
        }
        self.tell(&known.into_inner().expect("not poisoned"), numbers);
        Ok(())
    }

    /// Tries one change with tests that take about `most` together; leaves it
    /// open where they are not all and none notices.
    fn one(
        &self,
        number: u32,
        most: Duration,
        known: &Mutex<Known>,
        results: &Mutex<File>,
    ) -> io::Result<()> {
        let mutant = &self.mutants[number as usize];
        let tests = self.in_order(mutant, &known.lock().expect("not poisoned"));
        let mut how = if tests.is_empty() { ("unreached", None) } else { ("missed", None) };
        let mut rest = tests.as_slice();
        // Little by little, so that what is noticed soon costs little.
        let (mut span, mut spent) = (Duration::from_secs(1), Duration::ZERO);
        'all: while !rest.is_empty() {
            if spent > most {
                return Ok(());
            }
            let mut takes = Duration::ZERO;
            let within = |test: &&&Test| {
                takes += test.takes;
                takes <= span
            };
            let many = rest.iter().take_while(within).count().max(1);
            let (now, later) = rest.split_at(many);
            let mut programs: BTreeMap<&Path, Vec<&Test>> = BTreeMap::new();
            for test in now {
                spent += test.takes;
                programs.entry(&test.program).or_default().push(test);
            }
            for (program, tests) in programs {
                let takes: Duration = tests.iter().map(|test| test.takes).sum();
                let names: Vec<&str> = tests.iter().map(|test| test.name.as_str()).collect();
                let switched = [("MUTANT", number.to_string())];
                let at_most = Duration::from_secs(30) + takes * 10;
                match run(self.tree, program, &names, &switched, at_most)? {
                    End::Passed => {}
                    End::Failed(by) => {
                        how = ("caught", by);
                        break 'all;
                    }
                    End::TooLong => {
                        how = ("too-long", None);
                        break 'all;
                    }
                }
            }
            (rest, span) = (later, span * 2);
        }
        let (how, by) = how;
        let mut known = known.lock().expect("not poisoned");
        known.add(mutant, how, by.as_deref());
        let line = json!({ "name": mutant.name, "file": mutant.file, "how": how, "by": by });
        writeln!(results.lock().expect("not poisoned"), "{line}")
    }

    /// The tests that come by the change, those first that are quick and have
    /// caught others of its file.
    fn in_order(&self, mutant: &Mutant, known: &Known) -> Vec<&Test> {
        let mut tests: Vec<&Test> = self
            .reached
            .get(&mutant.number)
            .into_iter()
            .flatten()
            .map(|&index| &self.tests[index])
            .collect();
        let worth = |test: &Test| {
            let caught = known.catches.get(&(mutant.file.clone(), test.name.clone()));
            (0.1 + f64::from(*caught.unwrap_or(&0))) / (0.03 + test.takes.as_secs_f64())
        };
        tests.sort_by(|a, b| worth(b).total_cmp(&worth(a)));
        tests
    }

    fn known(&self) -> io::Result<Known> {
        let mut known = Known::default();
        if !self.results.exists() {
            return Ok(known);
        }
        let by_name: BTreeMap<&str, &Mutant> =
            self.mutants.iter().map(|mutant| (mutant.name.as_str(), mutant)).collect();
        for line in fs::read_to_string(&self.results)?.lines() {
            let line: Value = serde_json::from_str(line)?;
            let Some(mutant) = line["name"].as_str().and_then(|name| by_name.get(name)) else {
                continue;
            };
            known.add(mutant, line["how"].as_str().unwrap_or_default(), line["by"].as_str());
        }
        Ok(known)
    }

    fn tell(&self, known: &Known, numbers: &BTreeSet<u32>) {
        let of = |wanted: &str| -> Vec<&Mutant> {
            let these = known.how.iter().filter(|(n, how)| *how == wanted && numbers.contains(n));
            these.map(|(number, _)| &self.mutants[*number as usize]).collect()
        };
        println!("of {} changes, {} were woven in", self.mutants.len(), numbers.len());
        for how in ["caught", "too-long", "missed", "unreached"] {
            println!("{how}: {}", of(how).len());
        }
        for mutant in of("missed").into_iter().chain(of("unreached")) {
            println!("not noticed: {}", mutant.name);
        }
    }
}

impl Known {
    fn add(&mut self, mutant: &Mutant, how: &str, by: Option<&str>) {
        self.how.insert(mutant.number, how.to_owned());
        if let Some(by) = by {
            *self.catches.entry((mutant.file.clone(), by.to_owned())).or_default() += 1;
        }
    }
}

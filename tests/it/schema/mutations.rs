//! Shipped files with one thing in them changed: what the loader takes, the
//! schema of its kind lets pass, but for what is listed here; and what only
//! the loader refuses falls in a class of `classes`.

use super::changes::{Step, at, changed, changes, places};
use super::classes::{CLASSES, Class, class_of};
use super::files::{seen, shipped};
use super::{misfits, validator};
use jsonschema::Validator;
use kitmuster::load::{self, Library, Problem, Refusal};
use proptest::prelude::*;
use proptest::strategy::ValueTree;
use proptest::test_runner::{RngAlgorithm, TestRng, TestRunner};
use serde_json::{Value, json};
use std::collections::{BTreeMap, BTreeSet};
use std::sync::{LazyLock, OnceLock};

/// A shipped file as an editor sees it, with the name of its schema.
struct Sample {
    path: String,
    name: String,
    value: Value,
}

static SAMPLES: LazyLock<Vec<Sample>> = LazyLock::new(|| {
    let samples = shipped().into_iter();
    samples.map(|(path, name, text)| Sample { path, name, value: seen(&text) }).collect()
});

static LIBRARY: LazyLock<Library> = LazyLock::new(|| Library::shipped().unwrap());

static VALIDATORS: LazyLock<BTreeMap<&str, Validator>> = LazyLock::new(|| {
    let names = SAMPLES.iter().map(|sample| sample.name.as_str());
    names.map(|name| (name, validator(name))).collect()
});

/// What the loader says of a text of this kind.
pub(super) fn read(name: &str, text: &str) -> Result<(), Refusal> {
    let words = &LIBRARY.vocabulary;
    match name {
        "vessel" => load::read_vessel("v.yaml", text, words).map(drop),
        "inspection" => load::read_inspection("i.yaml", text, words).map(drop),
        "catalogue" => load::read_catalogue("c.yaml", text, words).map(drop),
        "profile" => LIBRARY.draft_text("p.yaml", text).map(drop),
        "vocabulary" => load::read_vocabulary("w.yaml", text).map(drop),
        "techniques" => load::read_techniques("t.yaml", text, words).map(drop),
        other => panic!("{other}"),
    }
}

/// Why a schema may refuse what the loader takes: the loader passes over
/// capitals and blanks where one of several words, a `dropped` or a `format`
/// is to stand, and over such a place left empty. True if the value fits
/// without that.
fn is_excused(value: &Value, path: &[Step], validator: &Validator) -> bool {
    let mut plain = value.clone();
    let Some(here) = at(&mut plain, path) else { return false };
    *here = match &*here {
        Value::String(text) if text.trim().is_empty() => Value::Null,
        Value::String(text) => json!(text.trim().to_lowercase()),
        _ => return false,
    };
    validator.is_valid(&plain)
}

/// What came of the changed files of one kind.
#[derive(Default)]
struct Tally {
    changed: usize,
    loader_alone: usize,
    classes: BTreeSet<&'static str>,
    failures: Vec<String>,
}

impl Tally {
    /// Compares what the loader and the schema say of a changed file.
    fn judge(&mut self, sample: &Sample, path: &[Step], value: &Value) {
        let text = serde_yaml::to_string(value).unwrap();
        let value = seen(&text);
        let validator = &VALIDATORS[sample.name.as_str()];
        self.changed += 1;
        match (read(&sample.name, &text), validator.is_valid(&value)) {
            (Ok(()), false) if !is_excused(&value, path, validator) => {
                let told = misfits(validator, &value).join("\n");
                self.failures.push(format!("{}: only the schema refuses it: {told}", sample.path));
            }
            (Err(refusal), true) => {
                self.loader_alone += 1;
                refusal.problems.iter().for_each(|problem| self.sort(problem, sample));
            }
            _ => {}
        }
    }

    /// Sorts a problem that only the loader tells into its class.
    fn sort(&mut self, problem: &Problem, sample: &Sample) {
        if problem.wording().what.starts_with("only the first ") {
            return; // The rest is no problem of its own.
        }
        match class_of(&problem.wording().what) {
            Some(class) => drop(self.classes.insert(class.name)),
            None => self.failures.push(format!(
                "{}: the schema takes it, and in no class is {problem}",
                sample.path
            )),
        }
    }
}

/// How often each kind of file is changed; the big ones take long to read.
const OFTEN: [(&str, usize); 6] = [
    ("vessel", 700),
    ("inspection", 400),
    ("catalogue", 150),
    ("profile", 250),
    ("vocabulary", 120),
    ("techniques", 120),
];

/// Changes files of one kind, many times, in each run the same ones.
fn change_often(name: &str, often: usize) -> Tally {
    let samples: Vec<_> = SAMPLES.iter().filter(|sample| sample.name == name).collect();
    let rng = TestRng::deterministic_rng(RngAlgorithm::ChaCha);
    let mut runner = TestRunner::new_with_rng(ProptestConfig::default(), rng);
    let inputs = (any::<prop::sample::Index>(), any::<prop::sample::Index>(), changes());
    let mut tally = Tally::default();
    while tally.changed < often {
        let (file, place, change) = inputs.new_tree(&mut runner).unwrap().current();
        let sample = samples[file.index(samples.len())];
        let mut found = Vec::new();
        places(&sample.value, &mut Vec::new(), &mut found);
        found.retain(|(_, value)| change.suits(value));
        if found.is_empty() {
            continue;
        }
        let (path, _) = &found[place.index(found.len())];
        let Some(value) = changed(&sample.value, path, &change) else { continue };
        let before = tally.failures.len();
        tally.judge(sample, path, &value);
        for failure in &mut tally.failures[before..] {
            let change = format!("{change:?}").chars().take(200).collect::<String>();
            failure.push_str(&format!("\n  after {change} at {path:?}"));
        }
    }
    tally
}

/// The tallies by kind, each reckoned once for all tests.
static TALLIES: [OnceLock<Tally>; OFTEN.len()] = [const { OnceLock::new() }; OFTEN.len()];

fn tally(name: &str) -> &'static Tally {
    let index = OFTEN.iter().position(|(known, _)| *known == name).unwrap();
    TALLIES[index].get_or_init(|| change_often(name, OFTEN[index].1))
}

#[track_caller]
fn assert_agreed(name: &str) {
    let tally = tally(name);
    assert!(tally.failures.is_empty(), "{}", tally.failures.join("\n\n"));
    assert!(tally.loader_alone > 0, "{name}");
}

#[test]
fn loader_and_schema_agree_on_a_changed_vessel_but_for_what_is_listed() {
    assert_agreed("vessel");
}

#[test]
fn loader_and_schema_agree_on_a_changed_inspection_record_but_for_what_is_listed() {
    assert_agreed("inspection");
}

#[test]
fn loader_and_schema_agree_on_a_changed_catalogue_but_for_what_is_listed() {
    assert_agreed("catalogue");
}

#[test]
fn loader_and_schema_agree_on_a_changed_profile_but_for_what_is_listed() {
    assert_agreed("profile");
}

#[test]
fn loader_and_schema_agree_on_a_changed_vocabulary_but_for_what_is_listed() {
    assert_agreed("vocabulary");
}

#[test]
fn loader_and_schema_agree_on_a_changed_file_of_techniques_but_for_what_is_listed() {
    assert_agreed("techniques");
}

/// A row that nothing reaches says nothing.
#[test]
fn every_class_is_reached_by_some_changed_file() {
    let reached =
        |class: &&Class| OFTEN.iter().any(|(name, _)| tally(name).classes.contains(class.name));
    let dead: Vec<_> = CLASSES
        .iter()
        .filter(|class| !reached(class))
        .map(|class| (class.name, class.why))
        .collect();
    assert_eq!(dead, Vec::<(&str, &str)>::new());
}

//! Shipped files with one thing in them changed: what the loader takes, the
//! schema of its kind lets pass, but for what is listed. The other way round
//! nothing is compared here: much of what the loader refuses no schema says.

use super::files::{seen, shipped};
use super::{misfits, validator};
use jsonschema::Validator;
use kitmuster::load::{self, Library, Refusal};
use proptest::prelude::*;
use serde_json::{Value, json};
use std::collections::BTreeMap;
use std::sync::LazyLock;

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

/// A step down into a file.
#[derive(Debug, Clone, PartialEq)]
enum Step {
    Key(String),
    Entry(usize),
}

/// What is done to one place of a file.
#[derive(Debug, Clone)]
enum Change {
    /// The key or entry goes.
    Drop,
    /// The key gets a slip of the pen.
    Misspell,
    /// Something else takes the place of the value.
    Put(Value),
    /// A key is added beside the others of a group.
    Add(Value),
    /// The value is wrapped into a list or a group.
    List,
    Group,
    /// An entry, or a list, stands there twice.
    Twice,
    /// A text in capitals, between blanks, or so often that it is long.
    Capitals,
    Blanks,
    Long(usize),
    /// A text from elsewhere in the file.
    Other(usize),
}

fn changes() -> impl Strategy<Value = Change> {
    let values = prop_oneof![
        Just(json!(null)),
        Just(json!("")),
        Just(json!("  ")),
        Just(json!("xyzzy")),
        Just(json!("unknown")),
        Just(json!("dropped")),
        Just(json!("2026-03-09")),
        Just(json!("2026-02-30")),
        Just(json!("yes")),
        Just(json!("4 ft")),
        Just(json!(0)),
        Just(json!(7)),
        Just(json!(2.5)),
        Just(json!(-3)),
        Just(json!(5_000_000)),
        Just(json!(true)),
        Just(json!([])),
        Just(json!([null])),
        Just(json!([[]])),
        Just(json!({})),
        Just(json!({ "xyzzy": null })),
    ];
    prop_oneof![
        3 => Just(Change::Drop),
        1 => Just(Change::Misspell),
        6 => values.clone().prop_map(Change::Put),
        2 => values.prop_map(Change::Add),
        1 => Just(Change::List),
        1 => Just(Change::Group),
        1 => Just(Change::Twice),
        1 => Just(Change::Capitals),
        1 => Just(Change::Blanks),
        1 => prop_oneof![Just(290_usize), Just(301), Just(1900), Just(4001), Just(9000)]
            .prop_map(Change::Long),
        2 => any::<usize>().prop_map(Change::Other),
    ]
}

/// Every place in a value.
fn places(value: &Value, here: &mut Vec<Step>, found: &mut Vec<Vec<Step>>) {
    let mut below = |step, value: &Value, found: &mut Vec<_>| {
        here.push(step);
        found.push(here.clone());
        places(value, here, found);
        here.pop();
    };
    match value {
        Value::Object(keys) => {
            keys.iter().for_each(|(key, value)| below(Step::Key(key.clone()), value, found));
        }
        Value::Array(entries) => {
            entries.iter().enumerate().for_each(|(i, one)| below(Step::Entry(i), one, found));
        }
        _ => {}
    }
}

fn at<'v>(value: &'v mut Value, path: &[Step]) -> Option<&'v mut Value> {
    path.iter().try_fold(value, |value, step| match step {
        Step::Key(key) => value.get_mut(key),
        Step::Entry(index) => value.get_mut(index),
    })
}

/// The texts of a file.
fn texts(value: &Value, found: &mut Vec<String>) {
    match value {
        Value::Object(keys) => keys.values().for_each(|value| texts(value, found)),
        Value::Array(entries) => entries.iter().for_each(|value| texts(value, found)),
        Value::String(text) => found.push(text.clone()),
        _ => {}
    }
}

/// Carries a change out; none where it cannot be done to what stands there.
fn changed(sample: &Value, path: &[Step], change: &Change) -> Option<Value> {
    let mut value = sample.clone();
    let (last, above) = path.split_last()?;
    match (change, last) {
        (Change::Drop, Step::Key(key)) => {
            at(&mut value, above)?.as_object_mut()?.shift_remove(key)?;
        }
        (Change::Drop, Step::Entry(index)) => {
            at(&mut value, above)?.as_array_mut()?.remove(*index);
        }
        (Change::Misspell, Step::Key(key)) => {
            let group = at(&mut value, above)?.as_object_mut()?;
            let kept = group.shift_remove(key)?;
            group.insert(format!("{key}x"), kept);
        }
        (Change::Twice, Step::Entry(index)) => {
            let list = at(&mut value, above)?.as_array_mut()?;
            list.push(list[*index].clone());
        }
        (Change::Misspell | Change::Twice, _) => return None,
        (change, _) => {
            let mut all = Vec::new();
            texts(sample, &mut all);
            let here = at(&mut value, path)?;
            let new = instead(here, change, &all)?;
            *here = new;
        }
    }
    (value != *sample).then_some(value)
}

/// What a change makes of a value.
fn instead(old: &Value, change: &Change, all: &[String]) -> Option<Value> {
    let text = || old.as_str().map(str::to_owned);
    Some(match change {
        Change::Put(new) => new.clone(),
        Change::List => json!([old]),
        Change::Group => json!({ "value": old }),
        Change::Capitals => json!(text()?.to_uppercase()),
        Change::Blanks => json!(format!(" {} ", text()?)),
        Change::Long(length) => json!("long ".repeat(length / 5 + 1)[..*length]),
        Change::Other(index) => json!(all.get(index % all.len().max(1))?),
        Change::Add(new) => {
            let mut group = old.as_object()?.clone();
            group.insert("xyzzy".to_owned(), new.clone());
            Value::Object(group)
        }
        Change::Drop | Change::Misspell | Change::Twice => return None,
    })
}

/// What the loader says of a text of this kind.
fn read(name: &str, text: &str) -> Result<(), Refusal> {
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
/// is to stand, and over such a place left empty; and it reads an empty entry
/// of a list of texts as a text. True if the value fits without that.
fn is_excused(value: &Value, path: &[Step], validator: &Validator) -> bool {
    let mut plain = value.clone();
    let Some(here) = at(&mut plain, path) else { return false };
    let in_list = matches!(path.last(), Some(Step::Entry(_)));
    *here = match &*here {
        Value::Null if in_list => json!("text"),
        Value::Array(only) if only.as_slice() == [Value::Null] => json!(["text"]),
        Value::String(text) if text.trim().is_empty() => Value::Null,
        Value::String(text) => json!(text.trim().to_lowercase()),
        _ => return false,
    };
    validator.is_valid(&plain)
}

/// What only the schema refuses of a changed file.
fn disagreement(sample: &Sample, path: &[Step], value: &Value) -> Option<String> {
    let text = serde_yaml::to_string(value).unwrap();
    let value = seen(&text);
    let validator = &VALIDATORS[sample.name.as_str()];
    let refused = !validator.is_valid(&value) && read(&sample.name, &text).is_ok();
    let excused = || is_excused(&value, path, validator);
    (refused && !excused()).then(|| misfits(validator, &value).join("\n"))
}

/// How often each kind of file is changed; the big ones take long to read.
const OFTEN: [(&str, u32); 6] = [
    ("vessel", 150),
    ("inspection", 80),
    ("catalogue", 50),
    ("profile", 80),
    ("vocabulary", 40),
    ("techniques", 15),
];

/// Changes files of one kind, many times.
fn change_often(name: &str) {
    let samples: Vec<_> = SAMPLES.iter().filter(|sample| sample.name == name).collect();
    let (_, often) = OFTEN.iter().find(|(known, _)| *known == name).unwrap();
    let config =
        ProptestConfig { cases: *often, failure_persistence: None, ..ProptestConfig::default() };
    let inputs = (any::<prop::sample::Index>(), any::<prop::sample::Index>(), changes());
    proptest!(config, |((file, place, change) in inputs)| {
        let sample = samples[file.index(samples.len())];
        let mut found = Vec::new();
        places(&sample.value, &mut Vec::new(), &mut found);
        let path = &found[place.index(found.len())];
        if let Some(value) = changed(&sample.value, path, &change)
            && let Some(told) = disagreement(sample, path, &value)
        {
            prop_assert!(false, "{} {path:?} {change:?}: only the schema refuses it: {told}", sample.path);
        }
    });
}

#[test]
fn what_the_loader_takes_of_a_changed_vessel_the_schema_takes() {
    change_often("vessel");
}

#[test]
fn what_the_loader_takes_of_a_changed_inspection_record_the_schema_takes() {
    change_often("inspection");
}

#[test]
fn what_the_loader_takes_of_a_changed_catalogue_the_schema_takes() {
    change_often("catalogue");
}

#[test]
fn what_the_loader_takes_of_a_changed_profile_the_schema_takes() {
    change_often("profile");
}

#[test]
fn what_the_loader_takes_of_a_changed_vocabulary_the_schema_takes() {
    change_often("vocabulary");
}

#[test]
fn what_the_loader_takes_of_a_changed_file_of_techniques_the_schema_takes() {
    change_often("techniques");
}

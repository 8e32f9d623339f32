//! Small changes to a shipped file, each at one place in it: slips of the pen,
//! words and figures that do not belong there, parts that stand twice, are
//! exchanged, or are taken from elsewhere in the file.

use proptest::prelude::*;
use serde_json::{Value, json};

/// A step down into a file.
#[derive(Debug, Clone, PartialEq)]
pub(super) enum Step {
    Key(String),
    Entry(usize),
}

/// What is done to one place of a file.
#[derive(Debug, Clone)]
pub(super) enum Change {
    /// The key or entry goes.
    Drop,
    /// The key gets a slip of the pen.
    Misspell,
    /// Something else takes the place of the value.
    Put(Value),
    /// A key is added beside the others of a group.
    Add(&'static str, Value),
    /// The value is wrapped into a list or a group.
    List,
    Group,
    /// An entry stands there twice, or so often.
    Twice,
    Many(usize),
    /// A list, a group or a text with nothing in it.
    Empty,
    /// Another day takes the place of a day.
    Day(&'static str),
    /// A text in capitals, between blanks, or so long, in one line or many.
    Capitals,
    Blanks,
    Long(usize, char),
    /// A text from elsewhere in the file.
    Other(usize),
    /// What stands after the same key elsewhere in the file.
    Same(usize),
    /// A line from elsewhere in the file is added to a group.
    Copy(usize),
    /// The value is exchanged for that of a neighbour.
    Swap(usize),
}

/// Values of which each kind of place takes some and refuses others.
fn values() -> impl Strategy<Value = Value> {
    let texts = [
        "",
        "  ",
        "xyzzy",
        "unknown",
        "dropped",
        "yes",
        "all",
        "none",
        "a\u{7}b",
        "pliers",
        "handle",
        "Cutter 7",
        "hook",
        "2026-03-09",
        "2026-02-30",
        "5 ft to 4 ft",
        "4 ft",
        "4 kg",
        "4",
        "-4 ft",
        "0 ft",
        "4 furlongs",
        "1,234 ft",
        "3 in 4 ft",
        "9999999 ft",
        "0.00000001 mm",
        "at least 4 ft",
        "at most 4 ft",
        "5000000",
        "12 months",
        "2 people",
        "900 pliers",
        "2 different types",
        "7%",
        "184.505",
        "-1.00",
        "January to June",
        "dipnet, then dipnet",
    ];
    let others = [
        json!(null),
        json!(0),
        json!(7),
        json!(2.5),
        json!(-3),
        json!(5_000_000),
        json!(true),
        json!([]),
        json!([null]),
        json!([""]),
        json!([[]]),
        json!(["xyzzy"]),
        json!(["xyzzy", "xyzzy"]),
        json!({}),
        json!({ "xyzzy": null }),
        json!({ "xyzzy": "xyzzy" }),
        json!({ "de": "xyzzy" }),
    ];
    let texts = texts.into_iter().map(|text| json!(text));
    prop::sample::select(texts.chain(others).collect::<Vec<_>>())
}

pub(super) fn changes() -> impl Strategy<Value = Change> {
    let long = prop::sample::select(vec![41_usize, 290, 301, 1900, 4001, 9000]);
    let any = any::<usize>;
    prop_oneof![
        4 => Just(Change::Drop),
        1 => Just(Change::Misspell),
        12 => values().prop_map(Change::Put),
        1 => values().prop_map(|value| Change::Add("xyzzy", value)),
        1 => Just(Change::List),
        1 => Just(Change::Group),
        2 => Just(Change::Twice),
        1 => prop::sample::select(vec![27_usize, 101, 201, 2001]).prop_map(Change::Many),
        2 => Just(Change::Empty),
        4 => prop::sample::select(vec!["1950-01-01", "2950-01-01", "2026-02-30"])
            .prop_map(Change::Day),
        1 => Just(Change::Capitals),
        1 => Just(Change::Blanks),
        2 => (long, prop::sample::select(vec![' ', '\n'])).prop_map(|(l, c)| Change::Long(l, c)),
        3 => any().prop_map(Change::Other),
        4 => any().prop_map(Change::Same),
        3 => any().prop_map(Change::Copy),
        2 => any().prop_map(Change::Swap),
    ]
}

/// Every place in a value, with what stands there.
pub(super) fn places<'v>(
    value: &'v Value,
    here: &mut Vec<Step>,
    found: &mut Vec<(Vec<Step>, &'v Value)>,
) {
    let mut below = |step, value: &'v Value| {
        here.push(step);
        found.push((here.clone(), value));
        places(value, here, found);
        here.pop();
    };
    match value {
        Value::Object(keys) => {
            keys.iter().for_each(|(key, value)| below(Step::Key(key.clone()), value));
        }
        Value::Array(entries) => {
            entries.iter().enumerate().for_each(|(i, one)| below(Step::Entry(i), one));
        }
        _ => {}
    }
}

impl Change {
    /// Whether it can be done to such a value at all.
    pub(super) fn suits(&self, value: &Value) -> bool {
        let is_day = |text: &str| text.len() == 10 && text.starts_with("20");
        match self {
            Self::Day(_) => value.as_str().is_some_and(is_day),
            Self::Many(_) => value.is_array(),
            Self::Add(..) | Self::Copy(_) => value.is_object(),
            Self::Capitals | Self::Blanks => value.is_string(),
            _ => true,
        }
    }
}

pub(super) fn at<'v>(value: &'v mut Value, path: &[Step]) -> Option<&'v mut Value> {
    path.iter().try_fold(value, |value, step| match step {
        Step::Key(key) => value.get_mut(key),
        Step::Entry(index) => value.get_mut(index),
    })
}

/// Every line of a file: a key, with what stands after it.
fn lines<'v>(value: &'v Value, found: &mut Vec<(&'v str, &'v Value)>) {
    match value {
        Value::Object(keys) => keys.iter().for_each(|(key, value)| {
            found.push((key, value));
            lines(value, found);
        }),
        Value::Array(entries) => entries.iter().for_each(|value| lines(value, found)),
        _ => {}
    }
}

/// The texts of a file.
fn texts<'v>(value: &'v Value, found: &mut Vec<&'v str>) {
    match value {
        Value::Object(keys) => keys.values().for_each(|value| texts(value, found)),
        Value::Array(entries) => entries.iter().for_each(|value| texts(value, found)),
        Value::String(text) => found.push(text),
        _ => {}
    }
}

/// One of several, whatever the index.
fn one<T: Copy>(of: &[T], index: usize) -> Option<T> {
    of.get(index.checked_rem(of.len())?).copied()
}

/// Carries a change out; none where it cannot be done to what stands there.
pub(super) fn changed(sample: &Value, path: &[Step], change: &Change) -> Option<Value> {
    let mut value = sample.clone();
    let (last, above) = path.split_last()?;
    match (change, last) {
        (Change::Drop | Change::Misspell, Step::Key(key)) => {
            let group = at(&mut value, above)?.as_object_mut()?;
            let kept = group.shift_remove(key)?;
            if matches!(change, Change::Misspell) {
                group.insert(format!("{key}x"), kept);
            }
        }
        (Change::Drop, Step::Entry(index)) => {
            at(&mut value, above)?.as_array_mut()?.remove(*index);
        }
        (Change::Twice, Step::Entry(index)) => {
            let list = at(&mut value, above)?.as_array_mut()?;
            list.push(list[*index].clone());
        }
        (Change::Misspell | Change::Twice, _) => return None,
        (Change::Swap(index), last) => {
            let group = at(&mut value, above)?;
            let kept = at(group, std::slice::from_ref(last))?.clone();
            let mut others: Vec<&mut Value> = match group {
                Value::Object(keys) => keys.values_mut().collect(),
                Value::Array(entries) => entries.iter_mut().collect(),
                _ => return None,
            };
            let other = index % others.len();
            let other = std::mem::replace(&mut *others[other], kept);
            *at(group, std::slice::from_ref(last))? = other;
        }
        (change, last) => {
            let here = at(&mut value, path)?;
            *here = instead(here, last, change, sample)?;
        }
    }
    (value != *sample).then_some(value)
}

/// What a change makes of a value.
fn instead(old: &Value, last: &Step, change: &Change, whole: &Value) -> Option<Value> {
    let text = || old.as_str().map(str::to_owned);
    let add = |key: &str, new: &Value| {
        let mut group = old.as_object()?.clone();
        group.entry(key).or_insert(new.clone());
        Some(Value::Object(group))
    };
    let mut all = Vec::new();
    lines(whole, &mut all);
    Some(match change {
        Change::Put(new) => new.clone(),
        Change::Empty => match old {
            Value::Array(_) => json!([]),
            Value::Object(_) => json!({}),
            _ => json!("  "),
        },
        Change::Day(day) => json!(day),
        Change::List => json!([old]),
        Change::Group => json!({ "value": old }),
        Change::Capitals => json!(text()?.to_uppercase()),
        Change::Blanks => json!(format!(" {} ", text()?)),
        Change::Long(length, blank) => {
            json!(format!("long{blank}").repeat(length / 5 + 1)[..*length].trim_end())
        }
        Change::Many(often) => {
            let first = old.as_array()?.first()?;
            Value::Array(vec![first.clone(); *often])
        }
        Change::Other(index) => {
            let mut all = Vec::new();
            texts(whole, &mut all);
            json!(one(&all, *index)?)
        }
        Change::Same(index) => {
            let Step::Key(key) = last else { return None };
            all.retain(|(other, _)| other == key);
            one(&all, *index)?.1.clone()
        }
        Change::Copy(index) => {
            let (key, new) = one(&all, *index)?;
            add(key, new)?
        }
        Change::Add(key, new) => add(key, new)?,
        Change::Drop | Change::Misspell | Change::Twice | Change::Swap(_) => return None,
    })
}

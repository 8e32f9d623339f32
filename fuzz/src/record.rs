//! An audit on record: read as it is, and once more with its digests put
//! right, which no chance would ever hit. What reads writes back equal, is
//! judged again, or is compared with an audit of today (one of the three, by
//! the length of the text).
//!
//! So that an input stays small, a text that is `@` and the name of a shipped
//! file stands for that file.

use crate::{aboard, told};
use kitmuster::engine::Depth;
use kitmuster::fleet::compare::compare;
use kitmuster::fleet::record::{self, AuditRecord, Broken};
use kitmuster::fleet::{Records, Row, Selection};
use kitmuster::load;
use kitmuster::report::audit::record as pages;
use kitmuster::report::{self, Locale};
use serde_json::Value;
use sha2::{Digest as _, Sha256};

/// The most vessels of a record that is judged again here.
const MOST_VESSELS: usize = 3;

pub fn run(text: &str) {
    read(text);
    if let Some(text) = put_right(text)
        && let Some(record) = read(&text)
        && record.vessels.len() <= MOST_VESSELS
    {
        // Each of them reads the rules on record again, which takes longest.
        match text.len() % 3 {
            0 => written(&record),
            1 => judged(&record),
            _ => compared(&record),
        }
    }
}

fn read(text: &str) -> Option<AuditRecord> {
    match record::read(text) {
        Ok(record) => Some(record),
        Err(broken) => {
            assert!(!broken.is_empty());
            let last = text.strip_prefix('\u{feff}').unwrap_or(text).matches('\n').count() + 1;
            for one in &broken {
                assert!(!one.to_string().trim().is_empty());
                if let Broken::Shape { line, what, .. } = one {
                    assert!(*line <= last && !what.is_empty(), "line {line} of {last}: {what}");
                }
            }
            told::page(&report::usage(&pages::broken(&broken), "take another", told::WIDTH));
            None
        }
    }
}

fn written(record: &AuditRecord) {
    let text = kitmuster::report::wire::record(record).expect("a record has a JSON form");
    told::steers_nothing(&text);
    let again = record::read(&text).expect("what was written is read");
    assert!(again == *record, "written otherwise than read");
}

fn judged(record: &AuditRecord) {
    let text = kitmuster::report::wire::record(record).expect("a record has a JSON form");
    let whole = record::whole(&text);
    let Ok(again) = record::again(record) else { return };
    assert_eq!(again.vessels, record.vessels.len());
    let newer = record::newer(record, aboard::library());
    let locale = Locale::default();
    let verified = pages::Verified { record, whole: &whole, again: &again, newer: &newer, locale };
    told::page(&pages::verified(&verified, told::WIDTH));
}

/// The record's own vessels as an audit of today, compared with the record.
fn compared(record: &AuditRecord) {
    let orders = aboard::orders(&[], Depth::Findings);
    let rows = record.inputs.vessels.iter().filter_map(|input| {
        let words = &orders.library.vocabulary;
        let (vessel, source) = load::read_vessel(&input.file, &input.text, words).ok()?;
        let small = vessel.kit.len() <= aboard::MOST_TOOLS;
        small.then(|| Row::Vessel(Box::new(orders.judged(vessel, source, &Records::default()))))
    });
    let rows: Vec<Row> = rows.collect();
    let comparison = compare(record, &orders, &Selection::default(), &rows);
    let known = comparison.vessels.len() + comparison.newcomers.len() + comparison.unclear.len();
    assert!(known <= rows.len() + record.vessels.len());
}

/// The record with the shipped files put in and every digest right.
fn put_right(text: &str) -> Option<String> {
    let mut record: Value = serde_json::from_str(text).ok()?;
    let inputs = record.get_mut("inputs")?.as_object_mut()?;
    for input in inputs.values_mut() {
        match input {
            Value::Array(list) => list.iter_mut().for_each(put_right_input),
            one => put_right_input(one),
        }
    }
    Some(record.to_string())
}

fn put_right_input(input: &mut Value) {
    let Some(text) = input.get("text").and_then(Value::as_str) else { return };
    let shipped = text.strip_prefix('@').and_then(|name| {
        let sources = aboard::library().texts().chain([aboard::library().words()]);
        sources.into_iter().find(|source| source.file.ends_with(name)).map(|s| s.text.to_string())
    });
    let text = shipped.unwrap_or_else(|| text.to_owned());
    let digest = Sha256::digest(text.as_bytes());
    input["sha256"] = digest.iter().map(|byte| format!("{byte:02x}")).collect::<String>().into();
    input["text"] = text.into();
}

//! Readings and changes of one tool. A change retires what it touched up to and
//! on its day, whoever read it, but for what was read after it in the same entry.

use super::entries::Entry;
use crate::model::vessel::{Change, Reading, Readings, Tool};
use crate::model::vocabulary::{AttributeId, Vocabulary};

/// Lays the readings and changes of the entries over what is listed. What the
/// list's own changes retire of the list is left out of it already.
pub(super) fn lay(tool: &mut Tool, entries: &[Entry<'_>], vocabulary: &Vocabulary) {
    let seen = || entries.iter().map(|entry| entry.found).filter(|found| !found.missing);
    let mut made: Vec<Change> = Vec::new();
    for (change, _) in seen().flat_map(|found| &found.mended) {
        if !tool.changes.contains(change) && !made.contains(change) {
            made.push(change.clone());
        }
    }
    made.sort_by(|a, b| (a.on, &a.what).cmp(&(b.on, &b.what)));
    for (id, readings) in &mut tool.attributes {
        readings.retain(|reading| !made.iter().any(|made| retires(made, *id, reading, vocabulary)));
    }
    if let Some(last) =
        made.iter().filter(|made| renews(made, vocabulary)).map(|made| made.on).max()
    {
        tool.conforms.retain(|statement| statement.on > last);
    }
    tool.changes.extend(made);
    let mut read: Vec<(AttributeId, &Reading)> = Vec::new();
    for found in seen() {
        let own: Vec<&Change> = found.mended.iter().map(|(change, _)| change).collect();
        // Read after so many of the entry's own changes, those after it retire it.
        let stands = |id, reading: &Reading, after: usize| {
            let others = tool.changes.iter().filter(|change| !own[..after].contains(change));
            let mut others = others.chain(own[after..].iter().copied());
            !others.any(|change| retires(change, id, reading, vocabulary))
        };
        let after = (1..).zip(&found.mended).map(|(after, (_, readings))| (after, readings));
        for (after, readings) in [(0, &found.attributes)].into_iter().chain(after) {
            read.extend(each(readings).filter(|(id, reading)| stands(*id, reading, after)));
        }
    }
    read.sort_by(|(_, a), (_, b)| (a.on, &a.by).cmp(&(b.on, &b.by)));
    read.into_iter().for_each(|(id, reading)| add(tool, id, reading));
    tool.attributes.retain(|(_, readings)| !readings.is_empty());
}

/// Whether a change makes a broken tool work: one of a length alone repairs
/// nothing.
pub(super) fn makes_it_work(change: &Change, vocabulary: &Vocabulary) -> bool {
    let touched = vocabulary.changes.get(&change.what);
    !matches!(touched, Some(Some(attributes)) if !attributes.is_empty())
}

/// Whether a change makes another tool of it.
fn renews(change: &Change, vocabulary: &Vocabulary) -> bool {
    vocabulary.changes.get(&change.what) == Some(&None)
}

/// Whether a change retires a reading; one without a day is older than any.
fn retires(change: &Change, id: AttributeId, reading: &Reading, vocabulary: &Vocabulary) -> bool {
    let touched = match vocabulary.changes.get(&change.what) {
        Some(Some(attributes)) => attributes.contains(&id),
        Some(None) => true,
        None => false,
    };
    touched && reading.on.is_none_or(|day| day <= change.on)
}

fn each(readings: &Readings) -> impl Iterator<Item = (AttributeId, &Reading)> {
    readings.iter().flat_map(|(id, readings)| readings.iter().map(|reading| (*id, reading)))
}

/// Adds a reading, unless the very same is there.
fn add(tool: &mut Tool, id: AttributeId, reading: &Reading) {
    match tool.attributes.iter_mut().find(|(known, _)| *known == id) {
        Some((_, readings)) if readings.contains(reading) => {}
        Some((_, readings)) => readings.push(reading.clone()),
        None => tool.attributes.push((id, vec![reading.clone()])),
    }
}

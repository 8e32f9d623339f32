//! The entries of all records, by the thing that they speak of: a tool or a lot
//! by its mark, and the tools that have none.
//!
//! Tools without a mark of one record are as many tools. Those of two records
//! may be the same again, so that only one walk's are there for certain: the
//! latest. Entries of one walk that say the very same are one.

use crate::measure::Day;
use crate::model::inspection::{Found, Inspection};
use crate::model::vessel::Vessel;
use crate::model::vocabulary::{KindId, Vocabulary};
use std::collections::{BTreeMap, BTreeSet};

/// An entry, and the record that it stands in.
#[derive(Debug, Clone, Copy)]
pub(super) struct Entry<'a> {
    pub(super) found: &'a Found,
    pub(super) record: &'a Inspection,
}

/// A tool that is not on the list.
pub(super) struct Extra<'a> {
    /// By which it goes: its mark, or a name of its own.
    pub(super) mark: String,
    pub(super) entries: Vec<Entry<'a>>,
    /// Whether it may be another one seen again.
    pub(super) again: bool,
}

/// All that the records say of tools.
pub(super) struct Entries<'a> {
    pub(super) records: &'a [Inspection],
    by_mark: BTreeMap<&'a str, Vec<Entry<'a>>>,
    /// What nobody listed.
    pub(super) extras: Vec<Extra<'a>>,
}

impl<'a> Entries<'a> {
    pub(super) fn of(vessel: &Vessel, records: &'a [Inspection], vocabulary: &Vocabulary) -> Self {
        let mut by_mark: BTreeMap<&str, Vec<Entry<'_>>> = BTreeMap::new();
        let mut unmarked: BTreeMap<KindId, Vec<Entry<'_>>> = BTreeMap::new();
        for record in records {
            for found in &record.found {
                let entry = Entry { found, record };
                match (&found.mark, found.kind) {
                    (Some(mark), _) => by_mark.entry(mark).or_default().push(entry),
                    (None, Some(kind)) => unmarked.entry(kind).or_default().push(entry),
                    (None, None) => {}
                }
            }
        }
        let listed: BTreeSet<&str> = vessel.kit.iter().map(|tool| tool.mark.as_str()).collect();
        let unlisted = by_mark.iter().filter(|(mark, _)| !listed.contains(*mark));
        let mut extras: Vec<Extra<'_>> = unlisted
            .map(|(mark, entries)| Extra {
                mark: (*mark).to_owned(),
                entries: entries.clone(),
                again: false,
            })
            .collect();
        let mut taken: BTreeSet<String> =
            listed.iter().chain(by_mark.keys()).map(|mark| (*mark).to_owned()).collect();
        for (kind, entries) in unmarked {
            extras.extend(without_marks(entries, &vocabulary.kind(kind).name, &mut taken));
        }
        Self { records, by_mark, extras }
    }

    /// What is said of the tool or lot of that mark.
    pub(super) fn of_mark(&self, mark: &str) -> &[Entry<'a>] {
        self.by_mark.get(mark).map_or(&[], Vec::as_slice)
    }
}

/// One round of one person on one day.
type Walk<'a> = (Day, Option<&'a str>);

/// The tools of one kind that have no mark, each with a name of its own: the
/// kind and the row of the sheet, or the next number that is free.
fn without_marks<'a>(
    entries: Vec<Entry<'a>>,
    kind: &str,
    taken: &mut BTreeSet<String>,
) -> Vec<Extra<'a>> {
    let mut walks: BTreeMap<Walk<'a>, Vec<(Found, Vec<Entry<'a>>)>> = BTreeMap::new();
    for entry in entries {
        let tools = walks.entry((entry.record.on, entry.record.by.as_deref())).or_default();
        let said = entry.found.said();
        match tools.iter_mut().find(|(other, _)| *other == said) {
            Some((_, same)) => same.push(entry),
            None => tools.push((said, vec![entry])),
        }
    }
    let mut extras = Vec::new();
    for (walk, (_, mut tools)) in walks.into_iter().rev().enumerate() {
        tools.sort_by_cached_key(|(said, _)| (said.row, format!("{said:?}")));
        for (said, entries) in tools {
            let mut numbers =
                said.row.into_iter().chain(1..).map(|number| format!("{kind} #{number}"));
            let Some(mark) = numbers.find(|name| !taken.contains(name)) else { continue };
            taken.insert(mark.clone());
            extras.push(Extra { mark, entries, again: walk > 0 });
        }
    }
    extras
}

//! The inspection records that belong to an audit, by the vessel they name.

use crate::load::{self, Refusal, Source};
use crate::model::inspection::Inspection;
use crate::model::vocabulary::Vocabulary;
use std::collections::BTreeMap;
use std::path::Path;
use std::sync::Arc;

/// A record that was read.
#[derive(Debug, Clone)]
pub struct Record {
    /// What it says.
    pub inspection: Inspection,
    /// Its text.
    pub source: Source,
}

/// A record that is laid over no vessel of the audit.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct LeftOut {
    /// The record's file.
    pub file: Arc<str>,
    /// The vessel that it names.
    pub vessel: String,
    /// How many vessels of the audit are called so: none, or several.
    pub called_so: usize,
    /// The vessel of the audit whose name is a slip or two away, where none
    /// is called so.
    pub near: Option<String>,
}

impl LeftOut {
    /// Whether the record may well be of a vessel of this audit, whose verdict
    /// is then without it.
    pub fn is_doubtful(&self) -> bool {
        self.called_so > 0 || self.near.is_some()
    }
}

/// How many strokes a slip in a name may take.
const SLIP: usize = 2;

/// All records of an audit, by the bare name of their vessel.
#[derive(Debug, Clone, Default)]
pub struct Records {
    by_name: BTreeMap<String, Vec<Record>>,
}

/// A vessel's name without blanks and capitals, which make no other name.
pub fn bare(name: &str) -> String {
    name.split_whitespace().collect::<String>().to_lowercase()
}

impl Records {
    /// Reads the records; what is refused is returned beside them.
    pub fn read<'p>(
        paths: impl IntoIterator<Item = &'p Path>,
        vocabulary: &Vocabulary,
    ) -> (Self, Vec<Refusal>) {
        let (mut records, mut refused) = (Self::default(), Vec::new());
        for path in paths {
            match load::load_inspection(path, vocabulary) {
                Ok((inspection, source)) => records.add(Record { inspection, source }),
                Err(refusal) => refused.push(refusal),
            }
        }
        (records, refused)
    }

    /// Adds one record.
    pub fn add(&mut self, record: Record) {
        self.by_name.entry(bare(&record.inspection.vessel)).or_default().push(record);
    }

    /// Whether there is none.
    pub fn is_empty(&self) -> bool {
        self.by_name.is_empty()
    }

    /// Every record, by the name of its vessel, then in the order added.
    pub fn all(&self) -> impl Iterator<Item = &Record> {
        self.by_name.values().flatten()
    }

    /// The records of the vessel of that name.
    pub fn of(&self, vessel: &str) -> &[Record] {
        // Most fleets have few records, most vessels none.
        if self.by_name.is_empty() {
            return &[];
        }
        self.by_name.get(&bare(vessel)).map_or(&[], Vec::as_slice)
    }

    /// Takes out the records whose name no vessel has, or more than one:
    /// over which of two a record is laid cannot be told.
    pub fn settle<'v>(&mut self, names: impl IntoIterator<Item = &'v str>) -> Vec<LeftOut> {
        let mut called: BTreeMap<String, (usize, &str)> = BTreeMap::new();
        for name in names {
            called.entry(bare(name)).or_insert((0, name)).0 += 1;
        }
        let count = |name: &str| called.get(name).map_or(0, |(count, _)| *count);
        let near = |name: &str| {
            let slip = |known: &&String| strsim::osa_distance(name, known) <= SLIP;
            called.keys().find(slip).map(|known| called[known].1.to_owned())
        };
        let mut left_out = Vec::new();
        for (name, records) in &self.by_name {
            if count(name) != 1 {
                left_out.extend(records.iter().map(|record| LeftOut {
                    file: Arc::clone(&record.source.file),
                    vessel: record.inspection.vessel.clone(),
                    called_so: count(name),
                    near: near(name).filter(|_| count(name) == 0),
                }));
            }
        }
        self.by_name.retain(|name, _| count(name) == 1);
        left_out
    }
}

//! The inspection records that were laid over a vessel then and are not laid
//! over her now, and the vessel as if they still were.
//!
//! Imports `load` and `model`. A record that is lost, broken, left out or not
//! given puts nothing right: what it found is still so until somebody looks
//! again.

use crate::fleet::Judged;
use crate::fleet::record::InputFile;
use crate::fleet::record::replay::Aboard;
use crate::load::{self, Refusal};
use crate::model::inspection::Inspection;
use crate::model::vocabulary::Vocabulary;

/// A record that was laid over a vessel then and is not now.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Lost {
    /// Its file then.
    pub file: String,
    /// The digest of its text then.
    pub sha256: String,
    /// Whether a record of the same file name is laid over now, with another
    /// text.
    pub changed: bool,
}

/// The last component of a file's name, which survives a folder that was
/// moved or is spelled otherwise.
pub(super) fn last(file: &str) -> &str {
    file.rsplit(['/', '\\']).next().unwrap_or(file)
}

/// Which of the records that were laid over then are not laid over now, text
/// for text.
pub(super) fn lost<'a>(
    then: impl Iterator<Item = &'a InputFile>,
    now: &Judged,
) -> Vec<(&'a InputFile, Lost)> {
    let laid = || now.sources.iter().skip(1);
    let gone = then.filter(|input| laid().all(|source| *source.text != *input.text));
    gone.map(|input| {
        let changed = laid().any(|source| last(&source.file) == last(&input.file));
        (input, Lost { file: input.file.clone(), sha256: input.sha256.clone(), changed })
    })
    .collect()
}

/// The vessel of today with the lost records laid over as well. One of the
/// same file name and day is the lost one with another text, and is not laid
/// over beside it.
///
/// # Errors
/// A lost record is refused by today's vocabulary, or the vessel's file is.
pub(super) fn with_lost(
    lost: &[(&InputFile, Lost)],
    now: &Judged,
    vocabulary: &Vocabulary,
) -> Result<Aboard, Refusal> {
    let mut sources = now.sources.iter();
    let (file, text) = sources.next().map_or(("", ""), |own| (&*own.file, &*own.text));
    let (vessel, _) = load::read_vessel(file, text, vocabulary)?;
    let read = |file: &str, text: &str| load::read_inspection(file, text, vocabulary);
    let mut inspections: Vec<(&str, Inspection)> = Vec::new();
    for (input, _) in lost {
        inspections.push((&input.file, read(&input.file, &input.text)?.0));
    }
    let old = inspections.len();
    for source in sources {
        let inspection = read(&source.file, &source.text)?.0;
        let replaced = inspections[..old]
            .iter()
            .any(|(file, other)| last(file) == last(&source.file) && other.on == inspection.on);
        if !replaced {
            inspections.push((&source.file, inspection));
        }
    }
    Ok(Aboard { vessel, inspections: inspections.into_iter().map(|(_, i)| i).collect() })
}

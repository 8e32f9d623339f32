//! Files to model: YAML, positions, diagnostics and limits.
//!
//! Imports `measure` and `model`. Knows nothing of the engine and decides
//! nothing about a kit; it refuses what cannot be understood, with every
//! problem of a file at once.

mod check;
mod form;
mod library;
mod read;
#[cfg(test)]
mod tests;

use crate::model::catalogue::Catalogue;
use crate::model::inspection::Inspection;
use crate::model::technique::Practice;
use crate::model::vessel::Vessel;
use crate::model::vocabulary::Vocabulary;
use check::catalogue::check_catalogue;
use check::inspection::check_inspection;
use check::vessel::check_vessel;
use form::catalogue::CatalogueFile;
use form::inspection::InspectionFile;
use form::vessel::VesselFile;
use read::spot::Spot;
use read::{guard, parse};
use std::path::Path;
use std::sync::Arc;

pub use form::catalogue::MOST_ITEMS;
pub use form::profile::MOST_REQUIREMENTS;
pub(crate) use form::schema::polish;
pub use form::schema::schema;
pub use form::vessel::MOST_TOOLS;
pub use library::Library;
pub use library::folder::{FoundFile, RECORDS, find_files};
pub use read::fault::{Fault, Form, Part, Wanted};
pub use read::guard::{LARGEST_FILE, read_long};

pub use read::fault::FileKind;
pub use read::problem::{MOST_PROBLEMS, Position, Problem, Refusal};
pub use read::spot::{Positions, Source};

/// Reads a vessel's inventory from a file.
///
/// # Errors
/// The file cannot be read, or everything that is wrong in it.
pub fn load_vessel(path: &Path, vocabulary: &Vocabulary) -> Result<(Vessel, Source), Refusal> {
    vessel_of(guard::read_source(path)?, vocabulary)
}

/// Reads a vessel's inventory from memory; `name` stands for the file's.
///
/// # Errors
/// Everything that is wrong in it.
pub fn read_vessel(
    name: &str,
    text: &str,
    vocabulary: &Vocabulary,
) -> Result<(Vessel, Source), Refusal> {
    vessel_of(guard::source_of(&name.into(), text)?, vocabulary)
}

/// Whether a text has the shape of a vessel's inventory to a plain parser, by
/// which what parsing alone costs is measured: nothing is judged, and no
/// position is kept.
#[doc(hidden)]
pub fn has_shape_of_vessel(text: &str) -> bool {
    serde_yaml::from_str::<VesselFile>(text).is_ok()
}

/// Reads an inspection record from a file.
///
/// # Errors
/// The file cannot be read, or everything that is wrong in it.
pub fn load_inspection(
    path: &Path,
    vocabulary: &Vocabulary,
) -> Result<(Inspection, Source), Refusal> {
    inspection_of(guard::read_source(path)?, vocabulary)
}

/// Reads an inspection record from memory; `name` stands for the file's.
///
/// # Errors
/// Everything that is wrong in it.
pub fn read_inspection(
    name: &str,
    text: &str,
    vocabulary: &Vocabulary,
) -> Result<(Inspection, Source), Refusal> {
    inspection_of(guard::source_of(&name.into(), text)?, vocabulary)
}

/// Reads a supplier's catalogue from a file.
///
/// # Errors
/// The file cannot be read, or everything that is wrong in it.
pub fn load_catalogue(
    path: &Path,
    vocabulary: &Vocabulary,
) -> Result<(Catalogue, Source), Refusal> {
    catalogue_of(guard::read_source(path)?, vocabulary)
}

/// Reads a supplier's catalogue from memory; `name` stands for the file's.
///
/// # Errors
/// Everything that is wrong in it.
pub fn read_catalogue(
    name: &str,
    text: &str,
    vocabulary: &Vocabulary,
) -> Result<(Catalogue, Source), Refusal> {
    catalogue_of(guard::source_of(&name.into(), text)?, vocabulary)
}

/// Reads a vocabulary from memory; `name` stands for the file's.
///
/// # Errors
/// Everything that is wrong in it.
pub fn read_vocabulary(name: &str, text: &str) -> Result<Arc<Vocabulary>, Refusal> {
    library::read_vocabulary(&guard::source_of(&name.into(), text)?)
}

/// Reads a file of techniques from memory; `name` stands for the file's.
///
/// # Errors
/// Everything that is wrong in it.
pub fn read_techniques(
    name: &str,
    text: &str,
    vocabulary: &Vocabulary,
) -> Result<Practice, Refusal> {
    library::read_techniques(&guard::source_of(&name.into(), text)?, vocabulary)
}

fn vessel_of(source: Source, words: &Vocabulary) -> Result<(Vessel, Source), Refusal> {
    let vessel = parse::read(&source, |file: VesselFile, top| check_vessel(file, words, top))?;
    Ok((vessel, source))
}

fn inspection_of(source: Source, words: &Vocabulary) -> Result<(Inspection, Source), Refusal> {
    let check = |file: InspectionFile, top: &Spot<'_>| check_inspection(file, words, top);
    let inspection = parse::read(&source, check)?;
    Ok((inspection, source))
}

fn catalogue_of(source: Source, words: &Vocabulary) -> Result<(Catalogue, Source), Refusal> {
    let check = |file: CatalogueFile, top: &Spot<'_>| check_catalogue(file, words, top);
    let catalogue = parse::read(&source, check)?;
    Ok((catalogue, source))
}

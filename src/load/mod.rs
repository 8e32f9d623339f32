//! Files to model: YAML, positions, diagnostics and limits.
//!
//! Imports `measure` and `model`. Knows nothing of the engine and decides
//! nothing about a kit; it refuses what cannot be understood, with every
//! problem of a file at once.

mod amount;
mod bounds;
#[cfg(test)]
mod catalogue_refusal_tests;
#[cfg(test)]
mod catalogue_tests;
mod check_capability;
mod check_catalogue;
mod check_facts;
mod check_fits;
mod check_freeboard;
mod check_goods;
mod check_inspection;
mod check_lines;
mod check_need;
mod check_people;
mod check_profile;
mod check_requirement;
mod check_situations;
mod check_techniques;
mod check_tool;
mod check_vessel;
mod check_vocabulary;
mod check_work;
mod condition;
mod drafts;
mod folder;
mod guard;
#[cfg(test)]
mod hostile_tests;
#[cfg(test)]
mod inspection_tests;
mod judge_forbidden;
mod judge_practice;
mod judge_tags;
mod library;
#[cfg(test)]
mod library_tests;
mod long;
mod manual;
#[cfg(test)]
mod manual_tests;
mod merge;
mod parse;
mod phrase;
mod problem;
mod reading;
mod schema;
mod shape;
#[cfg(test)]
mod situation_refusal_tests;
mod source;
mod spot;
mod suggest;
mod syntax;
#[cfg(test)]
mod technique_refusal_tests;
#[cfg(test)]
mod techniques_tests;
mod tighten;
mod tree;
mod tree_de;
mod usual;
mod value;
#[cfg(test)]
mod vessel_tests;
mod written;

use crate::model::catalogue::Catalogue;
use crate::model::technique::Practice;
use crate::model::vessel::{Inspection, Vessel};
use crate::model::vocabulary::Vocabulary;
use check_catalogue::check_catalogue;
use check_inspection::check_inspection;
use check_vessel::check_vessel;
use spot::Spot;
use std::path::Path;
use std::sync::Arc;
use written::catalogue::CatalogueFile;
use written::inspection::InspectionFile;
use written::vessel::VesselFile;

pub use check_catalogue::MOST_ITEMS;
pub use check_profile::MOST_REQUIREMENTS;
pub use check_vessel::MOST_TOOLS;
pub use folder::{FoundFile, RECORDS, find_files};
pub use guard::LARGEST_FILE;
pub use library::Library;
pub use long::read_long;
pub use problem::{MOST_PROBLEMS, Position, Problem, Refusal};
pub(crate) use schema::polish;
pub use schema::{FileKind, schema};
pub use source::{Positions, Source};

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

/// Whether a text has the shape of a vessel's inventory: the YAML is read
/// into the type of the file as it is written, and nothing is judged. For
/// measuring what reading alone costs.
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
    manual::read_techniques(&guard::source_of(&name.into(), text)?, vocabulary)
}

fn catalogue_of(source: Source, vocabulary: &Vocabulary) -> Result<(Catalogue, Source), Refusal> {
    let catalogue = parse::read(&source, |written: CatalogueFile, problems| {
        check_catalogue(written, vocabulary, &Spot::top(&source.file), problems)
    })?;
    Ok((catalogue, source))
}

fn vessel_of(source: Source, vocabulary: &Vocabulary) -> Result<(Vessel, Source), Refusal> {
    let vessel = parse::read(&source, |written: VesselFile, problems| {
        check_vessel(written, vocabulary, &Spot::top(&source.file), problems)
    })?;
    Ok((vessel, source))
}

fn inspection_of(source: Source, vocabulary: &Vocabulary) -> Result<(Inspection, Source), Refusal> {
    let inspection = parse::read(&source, |written: InspectionFile, problems| {
        check_inspection(written, vocabulary, &Spot::top(&source.file), problems)
    })?;
    Ok((inspection, source))
}

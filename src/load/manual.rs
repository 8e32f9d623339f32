//! The file of techniques of a library: the shipped one, or the one that was
//! given, checked against the vocabulary in use.
//!
//! Imports `model`. A library without a fitting file of techniques has none;
//! a file that was given is refused where it is wrong.

use super::bounds::judge_bounds;
use super::check_techniques::check_techniques;
use super::guard::source_of;
use super::library::SHIPPED;
use super::parse::{parse_quickly, read};
use super::problem::{Problems, Refusal};
use super::source::Source;
use super::spot::Spot;
use super::written::techniques::TechniquesFile;
use crate::model::technique::Practice;
use crate::model::vocabulary::Vocabulary;
use std::path::Path;
use std::sync::Arc;

/// The name of the file of techniques.
const TECHNIQUES: &str = "techniques.yaml";

/// A file of techniques and what it says.
#[derive(Debug, Clone)]
pub(super) struct Manual {
    /// Its text.
    pub(super) source: Source,
    /// What it says; none where a text that nobody gave does not fit the
    /// vocabulary.
    pub(super) practice: Option<Arc<Practice>>,
}

/// Whether that is the name of a file of techniques.
pub(super) fn is_techniques(path: &Path) -> bool {
    path.file_name().is_some_and(|name| name == TECHNIQUES)
}

impl Manual {
    /// The one that was given.
    ///
    /// # Errors
    /// Everything that is wrong in it.
    pub(super) fn given(source: Source, vocabulary: &Vocabulary) -> Result<Self, Refusal> {
        let practice = read_techniques(&source, vocabulary)?;
        Ok(Self { source, practice: Some(Arc::new(practice)) })
    }

    /// The shipped one, which need not fit a vocabulary of another day or
    /// another house.
    ///
    /// # Errors
    /// It is no text, which the tests of this crate rule out.
    pub(super) fn shipped(vocabulary: &Vocabulary) -> Result<Self, Refusal> {
        let text = SHIPPED.get_file(TECHNIQUES).and_then(include_dir::File::contents_utf8);
        let name = format!("requirements/{TECHNIQUES}").into();
        Ok(Self::refitted(source_of(&name, text.unwrap_or_default())?, vocabulary))
    }

    /// The text of another library, for this vocabulary.
    pub(super) fn refitted(source: Source, vocabulary: &Vocabulary) -> Self {
        // Nobody is told what is wrong, so it need not be looked up where.
        let practice = match parse_quickly::<TechniquesFile>(&source) {
            Some(written) => {
                let mut problems = Problems::default();
                judge_bounds(&written, &source.file, &mut problems);
                let top = Spot::top(&source.file);
                let practice = check_techniques(&written, vocabulary, &top, &mut problems);
                practice.filter(|_| problems.count() == 0)
            }
            None => read_techniques(&source, vocabulary).ok(),
        };
        Self { source, practice: practice.map(Arc::new) }
    }
}

/// Reads a file of techniques.
///
/// # Errors
/// Everything that is wrong in it.
pub(super) fn read_techniques(
    source: &Source,
    vocabulary: &Vocabulary,
) -> Result<Practice, Refusal> {
    read(source, |written: TechniquesFile, problems| {
        check_techniques(&written, vocabulary, &Spot::top(&source.file), problems)
    })
}

//! The file of techniques of a library: the shipped one, or the one that was
//! given, checked against the vocabulary in use.
//!
//! Imports `model`. A library without a fitting file of techniques has none;
//! a file that was given is refused where it is wrong.

use crate::load::check::techniques::check_techniques;
use crate::load::form::techniques::TechniquesFile;
use crate::load::read::guard::source_of;
use crate::load::read::parse::read;
use crate::load::read::problem::Refusal;
use crate::load::read::spot::Source;
use crate::model::technique::Practice;
use crate::model::vocabulary::Vocabulary;
use include_dir::{Dir, include_dir};
use std::path::Path;
use std::sync::Arc;

/// The folder of requirements as it was when the program was built.
pub(crate) static SHIPPED: Dir<'_> = include_dir!("$CARGO_MANIFEST_DIR/requirements");

/// The name of the file of techniques.
const TECHNIQUES: &str = "techniques.yaml";

/// A file of techniques and what it says.
#[derive(Debug, Clone)]
pub(crate) struct Manual {
    /// Its text.
    pub(crate) source: Source,
    /// What it says; none where a text that nobody gave does not fit the
    /// vocabulary.
    pub(crate) practice: Option<Arc<Practice>>,
}

/// Whether that is the name of a file of techniques.
pub(crate) fn is_techniques(path: &Path) -> bool {
    path.file_name().is_some_and(|name| name == TECHNIQUES)
}

impl Manual {
    /// The one that was given.
    ///
    /// # Errors
    /// Everything that is wrong in it.
    pub(crate) fn given(source: Source, vocabulary: &Vocabulary) -> Result<Self, Refusal> {
        let practice = read_techniques(&source, vocabulary)?;
        Ok(Self { source, practice: Some(Arc::new(practice)) })
    }

    /// The shipped one, which need not fit a vocabulary of another day or
    /// another house.
    ///
    /// # Errors
    /// It is no text, which the tests of this crate rule out.
    pub(crate) fn shipped(vocabulary: &Vocabulary) -> Result<Self, Refusal> {
        let text = SHIPPED.get_file(TECHNIQUES).and_then(include_dir::File::contents_utf8);
        let name = format!("requirements/{TECHNIQUES}").into();
        Ok(Self::refitted(source_of(&name, text.unwrap_or_default())?, vocabulary))
    }

    /// The text of another library, for this vocabulary.
    pub(crate) fn refitted(source: Source, vocabulary: &Vocabulary) -> Self {
        let practice = read_techniques(&source, vocabulary).ok().map(Arc::new);
        Self { source, practice }
    }
}

/// Reads a file of techniques.
///
/// # Errors
/// Everything that is wrong in it.
pub(crate) fn read_techniques(
    source: &Source,
    vocabulary: &Vocabulary,
) -> Result<Practice, Refusal> {
    read(source, |written: TechniquesFile, top| check_techniques(&written, vocabulary, top))
}

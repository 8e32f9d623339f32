//! Tests of which file of techniques a library has.
#![allow(clippy::disallowed_methods)] // the tests write the files that are read

use crate::load::library::shelf::Library;
use crate::load::tests::technique_refusal::SMALL;

const VOCABULARY: &str = include_str!("../../../requirements/vocabulary.yaml");

fn id(library: &Library) -> Option<&str> {
    library.practice.as_ref().map(|practice| practice.id.as_str())
}

/// The shipped library with a folder of these files laid over it.
fn laid_over(files: &[(&str, &str)]) -> Result<Library, String> {
    let folder = tempfile::tempdir().unwrap();
    for (name, text) in files {
        std::fs::write(folder.path().join(name), text).unwrap();
    }
    let shipped = Library::shipped().unwrap();
    shipped.with_folder(folder.path()).map_err(|refusal| refusal.to_string())
}

/// The vocabulary as it was before the file of techniques asked what a deck
/// cutter cuts.
fn earlier_vocabulary() -> String {
    let text = VOCABULARY.replace("blade-width, cuts-monofilament,", "blade-width,");
    assert_ne!(text, VOCABULARY);
    text
}

#[test]
fn the_shipped_library_has_the_shipped_file_and_its_text() {
    let library = Library::shipped().unwrap();
    assert_eq!(id(&library), Some("longline-release"));
    let place = library.practice.as_ref().unwrap().situations[0].place.clone();
    let source = library.source(&place.file).unwrap();
    assert_eq!(source, library.techniques());
    assert!(source.positions().locate(&place.key).is_some_and(|at| at.line > 1));
    assert!(library.find("longline-release").is_none());
    assert!(library.texts().all(|text| !text.file.contains("techniques")));
}

#[test]
fn a_folder_replaces_the_file_or_leaves_it() {
    let shipped = Library::shipped().unwrap().profiles.len();
    let own = laid_over(&[("techniques.yaml", SMALL)]).unwrap();
    assert_eq!((id(&own), own.profiles.len()), (Some("small"), shipped));
    assert!(own.techniques().file.ends_with("techniques.yaml"));
    assert_eq!(&*own.techniques().text, SMALL);
    assert_eq!(id(&laid_over(&[]).unwrap()), Some("longline-release"));
    let told = laid_over(&[("techniques.yaml", &SMALL.replacen("aboard }", "abord }", 1))]);
    assert!(told.unwrap_err().contains("did you mean `aboard`?"));
}

#[test]
fn the_file_is_read_by_the_vocabulary_of_the_folder() {
    let same = laid_over(&[("vocabulary.yaml", VOCABULARY)]).unwrap();
    assert_eq!(id(&same), Some("longline-release"));
    // Nobody wrote the file for this vocabulary, so nobody is refused.
    let words = earlier_vocabulary();
    let other = laid_over(&[("vocabulary.yaml", &words)]).unwrap();
    assert_eq!(id(&other), None);
    assert_eq!(other.techniques(), Library::shipped().unwrap().techniques());
    let given = other.techniques().text.to_string();
    let told = laid_over(&[("vocabulary.yaml", &words), ("techniques.yaml", &given)]).unwrap_err();
    assert!(told.contains("`monofilament line cutters` has no such attribute"), "{told}");
}

#[test]
fn a_library_from_memory_has_the_shipped_file_if_it_fits() {
    let rebuilt = |text: &str| Library::rebuilt(("words", text), &[]).unwrap();
    assert_eq!(id(&rebuilt(VOCABULARY)), Some("longline-release"));
    assert_eq!(id(&rebuilt(&earlier_vocabulary())), None);
    assert_eq!(id(&rebuilt("format: vocabulary/1\n")), None);
    let texts = [("vocabulary.yaml", VOCABULARY), ("in/techniques.yaml", SMALL)];
    assert_eq!(id(&Library::from_texts(&texts).unwrap()), Some("small"));
}

#[test]
fn a_profile_that_is_added_leaves_the_file() {
    let mut library = Library::shipped().unwrap();
    let profile = "format: profile/1\nid: stub\nrule: stub\nedition: first\ntitle: Stub\n\
                   source: 50 CFR part 0\nencoded: no\nbinds: { gear: [pelagic-longline] }\n";
    library.add_text("stub.yaml", profile).unwrap();
    assert_eq!(id(&library), Some("longline-release"));
    assert!(library.source("requirements/techniques.yaml").is_some());
}

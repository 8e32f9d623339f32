//! The vocabulary and the profiles: those shipped in the binary, those of a
//! folder, and single files.

use super::bounds::judge_bounds;
use super::check_profile::check_profile;
use super::check_vocabulary::check_vocabulary;
use super::guard::{read_source, source_of};
use super::merge::Draft;
use super::parse::{is_pruned, parse_quickly, parse_slowly, place, positions_of, read};
use super::problem::{Problem, Problems, Refusal, Told};
use super::source::{Positions, Source};
use super::spot::Spot;
use super::suggest::nearest;
use super::written::profile::ProfileFile;
use super::written::vocabulary::VocabularyFile;
use crate::model::place::Place;
use crate::model::profile::Profile;
use crate::model::vocabulary::Vocabulary;
use include_dir::{Dir, include_dir};
use std::collections::BTreeMap;
use std::path::{Path, PathBuf};
use std::sync::Arc;

/// The folder of requirements as it was when the program was built.
static SHIPPED: Dir<'_> = include_dir!("$CARGO_MANIFEST_DIR/requirements");

/// The name of the vocabulary's file.
const VOCABULARY: &str = "vocabulary.yaml";

/// The most profiles that a folder may hold.
const MOST_PROFILES: usize = 500;

/// The vocabulary and every profile that is known.
#[derive(Debug, Clone)]
pub struct Library {
    /// The trade's words.
    pub vocabulary: Arc<Vocabulary>,
    /// The profiles, by rule and then by the first day in force.
    pub profiles: Vec<Arc<Profile>>,
    words: Source,
    drafts: Vec<Draft>,
}

impl Library {
    /// The vocabulary and the profiles that are shipped in the binary.
    ///
    /// # Errors
    /// They are faulty, which the tests of this crate rule out.
    pub fn shipped() -> Result<Self, Refusal> {
        let mut files: Vec<_> = SHIPPED
            .files()
            .filter(|file| file.path().extension().is_some_and(|ext| ext == "yaml"))
            .collect();
        files.sort_by_key(|file| file.path());
        let mut sources = Vec::new();
        for file in files {
            let name: Arc<str> = format!("requirements/{}", file.path().display()).into();
            let text = file.contents_utf8().unwrap_or_default();
            sources.push((file.path().to_path_buf(), source_of(&name, text)?));
        }
        Self::from_sources(sources)
    }

    /// A vocabulary and profiles that are already in memory, by file name.
    ///
    /// # Errors
    /// Everything that is wrong in any of them.
    pub fn from_texts(texts: &[(&str, &str)]) -> Result<Self, Refusal> {
        let sources = texts.iter().map(|(name, text)| {
            source_of(&(*name).into(), text).map(|source| (PathBuf::from(name), source))
        });
        Self::from_sources(sources.collect::<Result<_, _>>()?)
    }

    fn from_sources(sources: Vec<(PathBuf, Source)>) -> Result<Self, Refusal> {
        let is_words = |path: &Path| path.file_name().is_some_and(|name| name == VOCABULARY);
        let words = sources.iter().find(|(path, _)| is_words(path)).map(|(_, source)| source);
        let Some(words) = words.cloned() else {
            let file: Arc<str> = VOCABULARY.into();
            let problem = Problem::new(Place::new(&file, ""), "there is no vocabulary");
            return Err(Refusal::new(VOCABULARY, vec![problem]));
        };
        let vocabulary = read_vocabulary(&words)?;
        let drafts = drafts(
            sources.into_iter().filter(|(path, _)| !is_words(path)).map(|(_, source)| source),
        )?;
        Self::build(vocabulary, words, drafts)
    }

    /// A vocabulary and profiles that are already in memory, each told apart
    /// by the place it is given in, whatever its file was called.
    ///
    /// # Errors
    /// Everything that is wrong in any of them.
    pub fn rebuilt(words: (&str, &str), profiles: &[(&str, &str)]) -> Result<Self, Refusal> {
        let source = |(name, text): (&str, &str)| source_of(&name.into(), text);
        let words = source(words)?;
        let sources = profiles.iter().map(|of| source(*of)).collect::<Result<Vec<_>, _>>()?;
        Self::build(read_vocabulary(&words)?, words, drafts(sources.into_iter())?)
    }

    /// Lays a folder's files over this library: a profile takes the place of
    /// the one with the same id, `vocabulary.yaml` that of the vocabulary.
    ///
    /// # Errors
    /// The folder cannot be read, or something in it is wrong.
    pub fn with_folder(self, folder: &Path) -> Result<Self, Refusal> {
        let (mut words, mut vocabulary) = (self.words, self.vocabulary);
        let mut sources = Vec::new();
        for path in yaml_files(folder)? {
            let source = read_source(&path)?;
            if path.file_name().is_some_and(|name| name == VOCABULARY) {
                vocabulary = read_vocabulary(&source)?;
                words = source;
            } else {
                sources.push(source);
            }
        }
        let own = drafts(sources.into_iter())?;
        let mut all: Vec<Draft> = self
            .drafts
            .into_iter()
            .filter(|old| !own.iter().any(|new| new.id() == old.id()))
            .collect();
        all.extend(own);
        Self::build(vocabulary, words, all)
    }

    /// Adds one profile file; it takes the place of a profile with the same
    /// id.
    ///
    /// # Errors
    /// The file cannot be read, or something in it is wrong.
    pub fn add_file(&mut self, path: &Path) -> Result<Arc<Profile>, Refusal> {
        self.add_source(read_source(path)?)
    }

    /// Adds one profile from memory, like [`Library::add_file`].
    ///
    /// # Errors
    /// Something in it is wrong.
    pub fn add_text(&mut self, name: &str, text: &str) -> Result<Arc<Profile>, Refusal> {
        self.add_source(source_of(&name.into(), text)?)
    }

    fn add_source(&mut self, source: Source) -> Result<Arc<Profile>, Refusal> {
        let own = drafts(std::iter::once(source))?;
        let id = own.first().map(|draft| draft.id().to_owned()).unwrap_or_default();
        let mut all: Vec<Draft> =
            self.drafts.iter().filter(|old| old.id() != id).cloned().collect();
        all.extend(own);
        let built = Self::build(Arc::clone(&self.vocabulary), self.words.clone(), all)?;
        *self = built;
        self.find(&id).cloned().ok_or_else(|| nowhere(&id))
    }

    /// A profile from a file that is not to join the library: the draft of an
    /// edition, which may be in force on days of the one that it is to
    /// replace, and may be built on profiles of this library.
    ///
    /// # Errors
    /// The file cannot be read, or something else in it is wrong.
    pub fn draft(&self, path: &Path) -> Result<Arc<Profile>, Refusal> {
        self.draft_source(read_source(path)?)
    }

    /// A draft from memory, like [`Library::draft`].
    ///
    /// # Errors
    /// Something in it is wrong.
    pub fn draft_text(&self, name: &str, text: &str) -> Result<Arc<Profile>, Refusal> {
        self.draft_source(source_of(&name.into(), text)?)
    }

    fn draft_source(&self, source: Source) -> Result<Arc<Profile>, Refusal> {
        let own = drafts(std::iter::once(source))?;
        let id = own.first().map(|draft| draft.id().to_owned()).unwrap_or_default();
        let mut all: Vec<Draft> =
            self.drafts.iter().filter(|old| old.id() != id).cloned().collect();
        all.extend(own);
        // Whether it overlaps another edition is not asked.
        let (profiles, problems) = checked(&all, &self.vocabulary);
        if problems.count() > 0 {
            return Err(refusal(problems, &all));
        }
        profiles.into_iter().find(|profile| profile.id == id).ok_or_else(|| nowhere(&id))
    }

    /// The profile of that id.
    pub fn find(&self, id: &str) -> Option<&Arc<Profile>> {
        self.profiles.iter().find(|profile| profile.id == id)
    }

    /// Every edition of a rule, the earliest first.
    pub fn editions(&self, rule: &str) -> Vec<&Arc<Profile>> {
        self.profiles.iter().filter(|profile| profile.rule == rule).collect()
    }

    /// The known id nearest to one that is not known.
    pub fn suggest(&self, id: &str) -> Option<String> {
        nearest(id, self.profiles.iter().map(|profile| profile.id.as_str())).map(str::to_owned)
    }

    /// The text of a file of this library, to look up lines in.
    pub fn source(&self, file: &str) -> Option<&Source> {
        // What was laid over comes last and is looked up first.
        let drafts = self.drafts.iter().rev().map(|draft| &draft.source);
        drafts.chain([&self.words]).find(|source| &*source.file == file)
    }

    /// The text of the vocabulary.
    pub fn words(&self) -> &Source {
        &self.words
    }

    /// The texts of the profiles' files, in the order in which they came.
    pub fn texts(&self) -> impl Iterator<Item = &Source> {
        self.drafts.iter().map(|draft| &draft.source)
    }

    fn build(
        vocabulary: Arc<Vocabulary>,
        words: Source,
        drafts: Vec<Draft>,
    ) -> Result<Self, Refusal> {
        let (mut profiles, mut problems) = checked(&drafts, &vocabulary);
        judge_editions(&profiles, &mut problems);
        if problems.count() > 0 {
            return Err(refusal(problems, &drafts));
        }
        profiles.sort_by(|a, b| {
            (&a.rule, a.in_force.from, &a.id).cmp(&(&b.rule, b.in_force.from, &b.id))
        });
        Ok(Self { vocabulary, profiles, words, drafts })
    }
}

/// Every profile that can be made of what is written, and what is wrong with
/// each by itself.
fn checked(drafts: &[Draft], vocabulary: &Arc<Vocabulary>) -> (Vec<Arc<Profile>>, Problems) {
    let mut problems = Problems::default();
    for draft in drafts {
        draft.problems.iter().cloned().for_each(|problem| problems.add(problem));
        judge_bounds(&draft.file, &draft.source.file, &mut problems);
    }
    judge_ids(drafts, &mut problems);
    let profiles = (0..drafts.len())
        .filter_map(|index| check_profile(drafts, index, vocabulary, &mut problems))
        .map(Arc::new);
    (profiles.collect(), problems)
}

fn nowhere(id: &str) -> Refusal {
    let file: Arc<str> = id.into();
    Refusal::new(id, vec![Problem::new(Place::new(&file, ""), "there is no such profile")])
}

/// Reads a vocabulary.
fn read_vocabulary(source: &Source) -> Result<Arc<Vocabulary>, Refusal> {
    read(source, |written: VocabularyFile, problems| {
        Some(Arc::new(check_vocabulary(written, &Spot::top(&source.file), problems)))
    })
}

/// Reads profiles as they are written; what is wrong with their shape is
/// kept, to be told with what the checks find.
fn drafts(sources: impl Iterator<Item = Source>) -> Result<Vec<Draft>, Refusal> {
    let mut drafts = Vec::new();
    let mut problems = Vec::new();
    let mut first: Option<Arc<str>> = None;
    for source in sources {
        let file = Arc::clone(&source.file);
        match draft(source) {
            Ok(draft) => drafts.push(draft),
            Err(refusal) => {
                problems.extend(refusal.problems);
                first.get_or_insert(file);
            }
        }
    }
    match first {
        Some(file) => Err(Refusal::new(&file, problems)),
        None => Ok(drafts),
    }
}

fn draft(source: Source) -> Result<Draft, Refusal> {
    if let Some(file) = parse_quickly::<ProfileFile>(&source) {
        return Ok(Draft { source, file, problems: Vec::new(), pruned: Vec::new() });
    }
    let parsed = parse_slowly::<ProfileFile>(&source)?;
    let (file, problems, pruned) = (parsed.written, parsed.problems, parsed.pruned);
    Ok(Draft { source, file, problems, pruned })
}

/// Judges that no two files have one id.
fn judge_ids(drafts: &[Draft], problems: &mut Problems) {
    for (index, draft) in drafts.iter().enumerate() {
        let twin = drafts[..index].iter().find(|other| other.id() == draft.id());
        if let Some(twin) = twin.filter(|_| !draft.id().is_empty()) {
            let place = Place::new(&draft.source.file, "id");
            problems.add(
                Problem::new(place, format!("`{}` has this id too", twin.source.file))
                    .offending(draft.id())
                    .mend("give each edition an id of its own"),
            );
        }
    }
}

/// Judges that on no day two editions of one rule are in force.
fn judge_editions(profiles: &[Arc<Profile>], problems: &mut Problems) {
    for (index, profile) in profiles.iter().enumerate().filter(|(_, p)| !p.base) {
        let rival = profiles[..index].iter().find(|other| {
            !other.base && other.rule == profile.rule && other.in_force.meets(profile.in_force)
        });
        if let Some(rival) = rival.filter(|_| !profile.rule.is_empty()) {
            problems.add(
                Problem::new(
                    profile.place.below("in force"),
                    format!("`{}` is in force on some of these days too", rival.id),
                )
                .offending(&profile.id)
                .expected("one edition of a rule on any day")
                .mend("end the one on the day before the other begins"),
            );
        }
    }
}

/// The refusal of a set of profiles, every problem placed in its file.
fn refusal(problems: Problems, drafts: &[Draft]) -> Refusal {
    let mut known: BTreeMap<Arc<str>, Told<Positions>> = BTreeMap::new();
    // What a check misses in a part that was cut out was told with the cut.
    let is_told = |problem: &Problem| {
        problem.position.is_none()
            && drafts.iter().any(|draft| {
                draft.source.file == problem.place.file
                    && is_pruned(&problem.place.key, &draft.pruned)
            })
    };
    let placed: Vec<Problem> = problems
        .into_found()
        .into_iter()
        .filter(|(problem, _)| !is_told(problem))
        .map(|(problem, aim)| {
            let file = Arc::clone(&problem.place.file);
            let positions = known.entry(file).or_insert_with_key(|file| {
                let draft = drafts.iter().rev().find(|draft| draft.source.file == *file);
                draft.map_or_else(|| Ok(Positions::default()), |draft| positions_of(&draft.source))
            });
            // What the quick parser lets pass may still be no good YAML; then
            // that is what is wrong.
            match positions {
                Ok(positions) => place(problem, aim, positions),
                Err(wrong) => (**wrong).clone(),
            }
        })
        .collect();
    let file = placed.first().map(|problem| Arc::clone(&problem.place.file)).unwrap_or_default();
    Refusal::new(&file, placed)
}

/// The YAML files of a folder, by name.
#[allow(clippy::disallowed_methods)] // this is where folders are read
fn yaml_files(folder: &Path) -> Result<Vec<PathBuf>, Refusal> {
    let name: Arc<str> = folder.display().to_string().into();
    let refuse = |what: &str| Refusal::new(&name, vec![Problem::new(Place::new(&name, ""), what)]);
    let entries = std::fs::read_dir(folder).map_err(|error| match error.kind() {
        std::io::ErrorKind::NotFound => refuse("there is no such folder"),
        std::io::ErrorKind::NotADirectory => refuse("this is not a folder"),
        _ => refuse("this folder cannot be read"),
    })?;
    let is_yaml =
        |path: &PathBuf| path.extension().is_some_and(|ext| ext == "yaml" || ext == "yml");
    let mut paths: Vec<PathBuf> =
        entries.filter_map(Result::ok).map(|entry| entry.path()).filter(is_yaml).collect();
    paths.sort();
    if paths.len() > MOST_PROFILES {
        return Err(refuse(&format!("more than {MOST_PROFILES} profiles in one folder")));
    }
    Ok(paths)
}

//! The vocabulary and the profiles: those shipped in the binary, those of a
//! folder, and single files.

pub(crate) mod folder;
pub(crate) mod manual;
mod merge;

pub(crate) use self::manual::read_techniques;
use self::manual::{Manual, SHIPPED, is_techniques};
use self::merge::{Draft, drafts, merged, refusal};
use crate::load::check::profile::{check_profile, judge_tags};
use crate::load::check::slips::slips;
use crate::load::check::vocabulary::check_vocabulary;
use crate::load::form::vocabulary::VocabularyFile;
use crate::load::read::fault::Fault;
use crate::load::read::guard::{read_source, source_of};
use crate::load::read::parse::{judge_bounds, read};
use crate::load::read::problem::{Problems, Refusal, nearest};
use crate::load::read::spot::{Source, Spot};
use crate::model::place::Place;
use crate::model::profile::Profile;
use crate::model::technique::Practice;
use crate::model::vocabulary::Vocabulary;
use std::path::{Path, PathBuf};
use std::sync::Arc;

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
    /// How a turtle is freed; none where no file of techniques was given and
    /// the shipped one does not fit the vocabulary.
    pub practice: Option<Arc<Practice>>,
    words: Source,
    techniques: Source,
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
        let (mut words, mut techniques, mut profiles) = (None, None, Vec::new());
        for (path, source) in sources {
            if is_words(&path) {
                words.get_or_insert(source);
            } else if is_techniques(&path) {
                techniques.get_or_insert(source);
            } else {
                profiles.push(source);
            }
        }
        let Some(words) = words else {
            return Err(Refusal::whole(VOCABULARY, Fault::NoVocabulary));
        };
        let vocabulary = read_vocabulary(&words)?;
        let drafts = drafts(profiles.into_iter())?;
        let manual = match techniques {
            Some(source) => Manual::given(source, &vocabulary)?,
            None => Manual::shipped(&vocabulary)?,
        };
        Self::build(vocabulary, words, manual, drafts)
    }

    /// A vocabulary and profiles that are already in memory, each told apart
    /// by the place it is given in, whatever its file was called. They were
    /// judged by once, maybe by a program that took tags of a profile's own:
    /// these stay as they were.
    ///
    /// # Errors
    /// Everything that is wrong in any of them.
    pub fn rebuilt(words: (&str, &str), profiles: &[(&str, &str)]) -> Result<Self, Refusal> {
        let source = |(name, text): (&str, &str)| source_of(&name.into(), text);
        let words = source(words)?;
        let sources = profiles.iter().map(|of| source(*of)).collect::<Result<Vec<_>, _>>()?;
        let vocabulary = read_vocabulary(&words)?;
        let manual = Manual::shipped(&vocabulary)?;
        let drafts = drafts(sources.into_iter())?;
        let checked = checked(&drafts, &vocabulary);
        Self::of_checked(vocabulary, words, manual, drafts, checked)
    }

    /// Lays a folder's files over this library: a profile takes the place of
    /// the one with the same id, `vocabulary.yaml` that of the vocabulary,
    /// `techniques.yaml` that of the file of techniques.
    ///
    /// # Errors
    /// The folder cannot be read, or something in it is wrong.
    pub fn with_folder(self, folder: &Path) -> Result<Self, Refusal> {
        let mut manual = self.manual();
        let (mut words, mut vocabulary) = (self.words, self.vocabulary);
        let (mut sources, mut techniques, mut is_old) = (Vec::new(), None, true);
        for path in yaml_files(folder)? {
            let source = read_source(&path)?;
            if is_words(&path) {
                vocabulary = read_vocabulary(&source)?;
                words = source;
                is_old = false;
            } else if is_techniques(&path) {
                techniques = Some(source);
            } else {
                sources.push(source);
            }
        }
        match techniques {
            Some(source) => manual = Manual::given(source, &vocabulary)?,
            None if is_old => {}
            None => manual = Manual::refitted(manual.source, &vocabulary),
        }
        let own = drafts(sources.into_iter())?;
        let mut all: Vec<Draft> = self
            .drafts
            .into_iter()
            .filter(|old| !own.iter().any(|new| new.id() == old.id()))
            .collect();
        all.extend(own);
        Self::build(vocabulary, words, manual, all)
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
        let (id, all) = self.with(source)?;
        let (vocabulary, words) = (Arc::clone(&self.vocabulary), self.words.clone());
        *self = Self::build(vocabulary, words, self.manual(), all)?;
        self.find(&id).cloned().ok_or_else(|| nowhere(&id))
    }

    /// The id of a profile, and all drafts with it in the place of its like.
    fn with(&self, source: Source) -> Result<(String, Vec<Draft>), Refusal> {
        let own = drafts(std::iter::once(source))?;
        let id = own.first().map(|draft| draft.id().to_owned()).unwrap_or_default();
        let mut all: Vec<Draft> =
            self.drafts.iter().filter(|old| old.id() != id).cloned().collect();
        all.extend(own);
        Ok((id, all))
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
        let (id, all) = self.with(source)?;
        // Whether it overlaps another edition is not asked.
        let (profiles, problems) = checked(&all, &self.vocabulary);
        judge_tags(&profiles, &self.vocabulary, &problems);
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

    /// What in these profiles reads well and still is a slip: conditions that
    /// can never hold, and a gap or an overlap at exactly a freeboard. None where
    /// there is nothing of the kind.
    pub fn slips(&self, profiles: &[Arc<Profile>]) -> Option<Refusal> {
        let problems = Problems::default();
        profiles.iter().flat_map(|of| slips(of)).for_each(|slip| problems.add(slip));
        (problems.count() > 0).then(|| refusal(problems, &self.drafts))
    }

    /// The known id nearest to one that is not known.
    pub fn suggest(&self, id: &str) -> Option<String> {
        nearest(id, self.profiles.iter().map(|profile| profile.id.as_str())).map(str::to_owned)
    }

    /// The text of a file of this library, to look up lines in.
    pub fn source(&self, file: &str) -> Option<&Source> {
        // What was laid over comes last and is looked up first.
        let drafts = self.drafts.iter().rev().map(|draft| &draft.source);
        drafts.chain([&self.words, &self.techniques]).find(|source| &*source.file == file)
    }

    /// The text of the vocabulary.
    pub fn words(&self) -> &Source {
        &self.words
    }

    /// The text of the file of techniques.
    pub fn techniques(&self) -> &Source {
        &self.techniques
    }

    fn manual(&self) -> Manual {
        Manual { source: self.techniques.clone(), practice: self.practice.clone() }
    }

    /// The texts of the profiles' files, in the order in which they came.
    pub fn texts(&self) -> impl Iterator<Item = &Source> {
        self.drafts.iter().map(|draft| &draft.source)
    }

    fn build(
        vocabulary: Arc<Vocabulary>,
        words: Source,
        manual: Manual,
        drafts: Vec<Draft>,
    ) -> Result<Self, Refusal> {
        let (profiles, problems) = checked(&drafts, &vocabulary);
        judge_tags(&profiles, &vocabulary, &problems);
        Self::of_checked(vocabulary, words, manual, drafts, (profiles, problems))
    }

    fn of_checked(
        vocabulary: Arc<Vocabulary>,
        words: Source,
        manual: Manual,
        drafts: Vec<Draft>,
        (mut profiles, problems): (Vec<Arc<Profile>>, Problems),
    ) -> Result<Self, Refusal> {
        judge_editions(&profiles, &problems);
        if problems.count() > 0 {
            return Err(refusal(problems, &drafts));
        }
        profiles.sort_by(|a, b| {
            (&a.rule, a.in_force.from, &a.id).cmp(&(&b.rule, b.in_force.from, &b.id))
        });
        let Manual { source: techniques, practice } = manual;
        Ok(Self { vocabulary, profiles, practice, words, techniques, drafts })
    }
}

fn is_words(path: &Path) -> bool {
    path.file_name().is_some_and(|name| name == VOCABULARY)
}

/// Every profile that can be made of what is written, and what is wrong with
/// each by itself.
fn checked(drafts: &[Draft], vocabulary: &Arc<Vocabulary>) -> (Vec<Arc<Profile>>, Problems) {
    let problems = Problems::default();
    for draft in drafts {
        draft.problems.iter().cloned().for_each(|problem| problems.add(problem));
        judge_bounds(&draft.file, &draft.source.file, &problems);
    }
    judge_ids(drafts, &problems);
    let profiles = drafts.iter().enumerate().filter_map(|(index, draft)| {
        let top = Spot::top(&draft.source.file, &problems);
        check_profile(&merged(drafts, index, &problems), vocabulary, &top).map(Arc::new)
    });
    (profiles.collect(), problems)
}

fn nowhere(id: &str) -> Refusal {
    Refusal::whole(id, Fault::NoSuchProfile)
}

/// Reads a vocabulary.
///
/// # Errors
/// Everything that is wrong in it.
pub(crate) fn read_vocabulary(source: &Source) -> Result<Arc<Vocabulary>, Refusal> {
    read(source, |written: VocabularyFile, top| Some(Arc::new(check_vocabulary(written, top))))
}

/// Judges that no two files have one id.
fn judge_ids(drafts: &[Draft], problems: &Problems) {
    for (index, draft) in drafts.iter().enumerate() {
        let twin = drafts[..index].iter().find(|other| other.id() == draft.id());
        if let Some(twin) = twin.filter(|_| !draft.id().is_empty()) {
            let fault = Fault::ProfileTwin(twin.source.file.to_string());
            problems.wrong(Place::new(&draft.source.file, "id"), fault).of(draft.id()).tell();
        }
    }
}

/// Judges that on no day two editions of one rule are in force.
fn judge_editions(profiles: &[Arc<Profile>], problems: &Problems) {
    for (index, profile) in profiles.iter().enumerate().filter(|(_, p)| !p.base) {
        let rival = profiles[..index].iter().find(|other| {
            !other.base && other.rule == profile.rule && other.in_force.meets(profile.in_force)
        });
        if let Some(rival) = rival.filter(|_| !profile.rule.is_empty()) {
            let fault = Fault::EditionsOverlap(rival.id.clone());
            problems.wrong(profile.place.below("in force"), fault).of(&profile.id).tell();
        }
    }
}

/// The YAML files of a folder, by name.
#[allow(clippy::disallowed_methods)] // this is where folders are read
fn yaml_files(folder: &Path) -> Result<Vec<PathBuf>, Refusal> {
    let refuse = |fault| Refusal::whole(&folder.display().to_string(), fault);
    let entries = std::fs::read_dir(folder).map_err(|error| match error.kind() {
        std::io::ErrorKind::NotFound => refuse(Fault::NoSuchFolder),
        std::io::ErrorKind::NotADirectory => refuse(Fault::NoFolder),
        _ => refuse(Fault::FolderCannotBeRead),
    })?;
    let is_yaml =
        |path: &PathBuf| path.extension().is_some_and(|ext| ext == "yaml" || ext == "yml");
    let mut paths: Vec<PathBuf> =
        entries.filter_map(Result::ok).map(|entry| entry.path()).filter(is_yaml).collect();
    paths.sort();
    if paths.len() > MOST_PROFILES {
        return Err(refuse(Fault::TooManyProfiles(MOST_PROFILES)));
    }
    Ok(paths)
}

//! Runs the real command with a scrubbed environment.

use std::path::{Path, PathBuf};
use std::process::{Command, Output};
use std::sync::Mutex;

/// The folder of the package.
pub(crate) fn home() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR"))
}

/// What a run gave.
pub(crate) struct Ran {
    pub(crate) status: i32,
    pub(crate) stdout: String,
    pub(crate) stderr: String,
}

impl Ran {
    /// The run as one text for a snapshot.
    pub(crate) fn page(&self) -> String {
        format!("status {}\n--- stdout\n{}--- stderr\n{}", self.status, self.stdout, self.stderr)
    }

    /// The JSON that was printed.
    pub(crate) fn json(&self) -> serde_json::Value {
        serde_json::from_str(&self.stdout)
            .unwrap_or_else(|e| panic!("no JSON: {e}\n{}\n{}", self.stdout, self.stderr))
    }
}

/// Runs `kitmuster` with the arguments, from the package's folder.
pub(crate) fn kitmuster<S: AsRef<std::ffi::OsStr>>(arguments: &[S]) -> Ran {
    kitmuster_in(&home(), arguments)
}

/// The day of a check that names none: no page of a planned trip changes with
/// the calendar.
const DAY: &str = "2026-12-01";

/// What the arguments lack for that.
fn day_of(arguments: &[impl AsRef<std::ffi::OsStr>]) -> &'static [&'static str] {
    let says = |word: &str| arguments.iter().any(|one| one.as_ref() == word);
    let is_check = arguments.first().is_some_and(|first| first.as_ref() == "check");
    if is_check && !says("--on") && !says("--date") { &["--date", DAY] } else { &[] }
}

/// Runs `kitmuster` with the arguments from another folder.
pub(crate) fn kitmuster_in<S: AsRef<std::ffi::OsStr>>(folder: &Path, arguments: &[S]) -> Ran {
    let Output { status, stdout, stderr } = Command::new(env!("CARGO_BIN_EXE_kitmuster"))
        .args(arguments)
        .args(day_of(arguments))
        .current_dir(folder)
        .env_clear()
        .env("COLUMNS", "80")
        .output()
        .unwrap();
    Ran {
        status: status.code().unwrap_or(-1),
        stdout: String::from_utf8(stdout).unwrap(),
        stderr: String::from_utf8(stderr).unwrap(),
    }
}

/// The shipped vocabulary with permits, a gear and an area that are invented
/// for tests.
fn words() -> String {
    let mut text = std::fs::read_to_string(home().join("requirements/vocabulary.yaml")).unwrap();
    for (list, tags) in [
        (
            "permits:",
            &["pier-permit", "mole-permit", "quay-permit", "test-permit", "test-strait-permit"][..],
        ),
        ("gear:", &["test-gear"]),
        ("areas:", &["test-area"]),
    ] {
        let head = format!("\n{list}\n");
        let lines: String =
            tags.iter().map(|tag| format!("  {tag}: invented for tests\n")).collect();
        assert_eq!(text.matches(&head).count(), 1, "{list}");
        text = text.replace(&head, &format!("{head}{lines}"));
    }
    text
}

/// A folder of requirements under `tests/it` as it is given to the program:
/// with the invented tags in its vocabulary. Its path is from the package's
/// folder.
pub(crate) fn requirements(of: &str) -> String {
    static LAID: Mutex<()> = Mutex::new(());
    let _one_at_a_time = LAID.lock();
    let folder = Path::new(env!("CARGO_TARGET_TMPDIR")).join(of);
    std::fs::create_dir_all(&folder).unwrap();
    let files = std::fs::read_dir(home().join("tests/it").join(of)).unwrap();
    let texts = files.map(|file| {
        let path = file.unwrap().path();
        let name = path.file_name().unwrap().to_string_lossy().to_string();
        (name, std::fs::read_to_string(path).unwrap())
    });
    let texts: Vec<_> = texts.chain([("vocabulary.yaml".to_owned(), words())]).collect();
    for there in std::fs::read_dir(&folder).unwrap() {
        let there = there.unwrap();
        if !texts.iter().any(|(name, _)| there.file_name() == name.as_str()) {
            std::fs::remove_file(there.path()).unwrap();
        }
    }
    texts.iter().for_each(|(name, text)| lay(&folder, name, text));
    folder.to_string_lossy().to_string()
}

/// Lays a file there whole, and only where it is not there yet: other tests
/// may be reading it.
fn lay(folder: &Path, name: &str, text: &str) {
    let path = folder.join(name);
    if std::fs::read_to_string(&path).is_ok_and(|there| there == text) {
        return;
    }
    let file = tempfile::NamedTempFile::new_in(folder).unwrap();
    std::fs::write(file.path(), text).unwrap();
    file.persist(path).unwrap();
}

/// Writes the vocabulary with the invented tags into a folder of requirements.
pub(crate) fn with_words(folder: &Path) {
    lay(folder, "vocabulary.yaml", &words());
}

/// Writes a file into a folder and gives its path.
pub(crate) fn write(folder: &Path, name: &str, text: &str) -> String {
    let path = folder.join(name);
    std::fs::write(&path, text).unwrap();
    path.to_string_lossy().to_string()
}

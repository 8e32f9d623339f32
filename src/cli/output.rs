//! Where results go: a locked terminal stream, or a file that is written
//! whole or not at all.
//!
//! Imports nothing of this crate but `Stop`, its messages and `passing`. A broken
//! pipe is no error.

use super::passing;
use super::stop::Stop;
use crate::report::desk;
use std::io::{self, ErrorKind, IsTerminal, Write};
use std::path::Path;

/// How wide a page may be, in columns.
const WIDEST: usize = 80;

/// Wider than any line of an answer.
const UNBROKEN: usize = 100_000;

/// What there is to know of the terminal.
#[derive(Debug, Clone, Copy)]
pub(super) struct Terminal {
    /// Columns for results.
    pub(super) width: usize,
    /// Columns for an answer of a few lines, which is broken for a window only:
    /// whoever reads it from a pipe or a file counts on its lines.
    pub(super) width_of_lines: usize,
    /// Columns for complaints.
    pub(super) width_of_errors: usize,
}

impl Terminal {
    /// The terminal of this process: no wider than a page, narrower where
    /// the window is.
    pub(super) fn of_this_process() -> Self {
        let width =
            |terminal: bool, size: Option<(terminal_size::Width, terminal_size::Height)>| {
                let columns = size.filter(|_| terminal).map(|(width, _)| usize::from(width.0));
                columns.filter(|columns| *columns > 0).map_or(WIDEST, |columns| columns.min(WIDEST))
            };
        let on_screen = io::stdout().is_terminal();
        let own = width(on_screen, terminal_size::terminal_size_of(io::stdout()));
        Self {
            width: own,
            width_of_lines: if on_screen { own } else { UNBROKEN },
            width_of_errors: width(
                io::stderr().is_terminal(),
                terminal_size::terminal_size_of(io::stderr()),
            ),
        }
    }

    /// A page in a file is as wide as a page can be.
    pub(super) fn of_a_file() -> Self {
        Self { width: WIDEST, width_of_lines: UNBROKEN, width_of_errors: WIDEST }
    }
}

/// Prints a result to standard output, without colour where it is no
/// terminal or `NO_COLOR` is set.
pub(super) fn print(text: &str) -> Result<(), Stop> {
    let mut out = anstream::stdout().lock();
    match out.write_all(text.as_bytes()).and_then(|()| out.flush()) {
        Err(error) if error.kind() != ErrorKind::BrokenPipe => Err(not_printed(&error)),
        _ => Ok(()),
    }
}

/// That standard output took nothing more.
pub(super) fn not_printed(error: &io::Error) -> Stop {
    let why = of_disk(error).unwrap_or(desk::command_refused_by_system());
    Stop::usage(desk::command_not_printed(&why), desk::command_look_at_output())
}

/// Prints a complaint to standard error; there is nobody to tell if that
/// fails.
pub(super) fn complain(text: &str) {
    let mut out = anstream::stderr().lock();
    let _ = out.write_all(text.as_bytes()).and_then(|()| out.flush());
}

/// Writes a result to a file, whole or not at all: to a new file in the same
/// folder first, which then takes the name.
pub(super) fn write_whole(path: &Path, text: &str) -> Result<(), Stop> {
    Whole::of(path, text)?.finish()
}

/// Writes what people fill in or keep beside their files, whole or not at all:
/// over a file that is there only where that was insisted on.
pub(super) fn write_form(path: &Path, text: &str, insist: bool) -> Result<(), Stop> {
    let mut whole = Whole::of(path, text)?;
    if let Whole::File(file) = &mut whole {
        file.replaces = insist;
    }
    whole.finish()
}

/// Whether a place is standard output by another name.
fn is_standard_output(path: &Path) -> bool {
    ["-", "/dev/stdout", "/dev/fd/1"].iter().any(|name| path == Path::new(name))
}

/// A file that is written bit by bit and takes its name only once it is
/// whole; dropped before, it leaves no trace. Under the name of standard
/// output it is printed.
pub(super) enum Whole {
    /// Standard output.
    Printed,
    /// A file.
    File(Box<InTheMaking>),
}

/// A file under its passing name.
pub(super) struct InTheMaking {
    path: std::path::PathBuf,
    target: std::path::PathBuf,
    folder: std::path::PathBuf,
    file: io::BufWriter<tempfile::NamedTempFile>,
    /// Whether it may take the place of a file that is there.
    replaces: bool,
}

impl Whole {
    /// Begins a file at this place.
    pub(super) fn begin(path: &Path) -> Result<Self, Stop> {
        if is_standard_output(path) {
            return Ok(Self::Printed);
        }
        InTheMaking::begin(path).map(|file| Self::File(Box::new(file)))
    }

    /// A file of which all is known, without colour.
    pub(super) fn of(path: &Path, text: &str) -> Result<Self, Stop> {
        let mut whole = Self::begin(path)?;
        whole.write(&anstream::adapter::strip_str(text).to_string())?;
        Ok(whole)
    }

    /// Writes a part.
    pub(super) fn write(&mut self, text: &str) -> Result<(), Stop> {
        match self {
            Self::Printed => print(text),
            Self::File(file) => file.write(text),
        }
    }

    /// Whole, and safely on the disk under its passing name: where several
    /// files belong together, none takes its name before all have come so far.
    pub(super) fn settle(&mut self) -> Result<(), Stop> {
        match self {
            Self::Printed => Ok(()),
            Self::File(file) => file.settle(),
        }
    }

    /// Gives it its name.
    pub(super) fn finish(self) -> Result<(), Stop> {
        match self {
            Self::Printed => Ok(()),
            Self::File(file) => file.finish(),
        }
    }
}

impl InTheMaking {
    fn begin(path: &Path) -> Result<Self, Stop> {
        let refuse = |why: String| not_written(path, &why);
        let (target, folder) = place(path).map_err(refuse)?;
        let file =
            passing::make(&target, as_usual).map_err(|error| refuse(why_not(&error, &folder)))?;
        let file = io::BufWriter::new(file);
        Ok(Self { path: path.to_path_buf(), target, folder, file, replaces: true })
    }

    fn write(&mut self, text: &str) -> Result<(), Stop> {
        let (path, folder) = (&self.path, &self.folder);
        let told = |error: io::Error| not_written(path, &why_not(&error, folder));
        self.file.write_all(text.as_bytes()).map_err(told)
    }

    fn settle(&mut self) -> Result<(), Stop> {
        let settled = self.file.flush().and_then(|()| self.file.get_ref().as_file().sync_all());
        settled.map_err(|error| not_written(&self.path, &why_not(&error, &self.folder)))
    }

    fn finish(mut self) -> Result<(), Stop> {
        self.settle()?;
        let Self { path, target, folder, file, replaces } = self;
        let passing_name = file.get_ref().path().to_path_buf();
        let file = file.into_inner().map_err(|error| error.into_error());
        let kept = file.and_then(|file| keep(file, &target, replaces));
        passing::forget(&passing_name);
        kept.map_err(|error| match error.kind() {
            ErrorKind::AlreadyExists => {
                Stop::usage(desk::command_there_already(&path.display()), desk::command_insist())
            }
            _ => not_written(&path, &why_not(&error, &folder)),
        })
    }
}

fn not_written(path: &Path, why: &str) -> Stop {
    Stop::usage(desk::command_not_written(&path.display(), &why), desk::command_name_writable())
}

/// Where a file is really written, and the folder that it lies in.
fn place(path: &Path) -> Result<(std::path::PathBuf, std::path::PathBuf), String> {
    // A link keeps being a link: what it points at is replaced. Where there is
    // nothing, it is not known what was meant.
    let found = path.canonicalize();
    if found.is_err() && path.is_symlink() {
        return Err(desk::command_dangling_link().to_owned());
    }
    let target = found.unwrap_or_else(|_| path.to_path_buf());
    if target.is_dir() {
        return Err(desk::command_is_folder().to_owned());
    }
    if path.as_os_str().as_encoded_bytes().last().is_some_and(|last| is_slash(*last)) {
        return Err(desk::command_folder_name().to_owned());
    }
    if target.exists() && !target.is_file() {
        return Err(desk::command_no_plain_file().to_owned());
    }
    // Whoever took the right to write away meant to keep what is in it.
    if target.metadata().is_ok_and(|meta| meta.permissions().readonly()) {
        return Err(desk::command_read_only_file().to_owned());
    }
    let folder = match target.parent() {
        Some(folder) if !folder.as_os_str().is_empty() => folder,
        _ => Path::new("."),
    };
    match folder.metadata() {
        Ok(meta) if meta.is_dir() => {}
        Ok(_) => return Err(desk::command_no_folder(&folder.display())),
        Err(error) => return Err(why_not(&error, folder)),
    }
    let folder = folder.to_path_buf();
    Ok((target, folder))
}

fn is_slash(byte: u8) -> bool {
    std::path::is_separator(char::from(byte))
}

/// Gives the file its name; without leave to replace, only if nobody has it.
fn keep(file: tempfile::NamedTempFile, target: &Path, replaces: bool) -> io::Result<()> {
    match replaces {
        true => file.persist(target),
        false => file.persist_noclobber(target),
    }
    .map_err(|error| error.error)?;
    Ok(())
}

/// What went wrong, in words: the system's own speak of numbers and of the
/// name that the file has while it is written.
fn why_not(error: &io::Error, folder: &Path) -> String {
    let there = folder.is_dir();
    let folder = folder.display();
    match error.kind() {
        ErrorKind::NotFound if !there => desk::command_folder_missing(&folder),
        ErrorKind::NotADirectory => desk::command_part_no_folder(&folder),
        ErrorKind::PermissionDenied => desk::command_folder_forbidden(&folder),
        ErrorKind::ReadOnlyFilesystem => desk::command_folder_read_only(&folder),
        _ if of_disk(error).is_some() => of_disk(error).unwrap_or_default().to_owned(),
        ErrorKind::InvalidFilename => desk::command_bad_name().to_owned(),
        _ => desk::command_refused_in_folder(&folder),
    }
}

/// What a disk says, in words.
fn of_disk(error: &io::Error) -> Option<&'static str> {
    match error.kind() {
        ErrorKind::StorageFull | ErrorKind::QuotaExceeded => Some(desk::command_no_room()),
        ErrorKind::FileTooLarge => Some(desk::command_too_large()),
        _ => None,
    }
}

/// New files get the permissions that any program's files get here, not the
/// private ones of a temporary file; a file that is replaced keeps its own.
#[cfg(unix)]
fn as_usual(builder: &mut tempfile::Builder<'_, '_>, target: &Path) {
    use std::os::unix::fs::PermissionsExt;
    let own = target.metadata().map(|meta| meta.permissions());
    builder.permissions(own.unwrap_or_else(|_| std::fs::Permissions::from_mode(0o666)));
}

#[cfg(not(unix))]
fn as_usual(_builder: &mut tempfile::Builder<'_, '_>, _target: &Path) {}

#[cfg(test)]
#[allow(clippy::disallowed_methods, reason = "the tests read back what was written")]
mod tests {
    use super::*;

    #[test]
    fn a_report_replaces_the_old_one_whole_and_without_colour() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("report.txt");
        write_whole(&path, "old and long").unwrap();
        write_whole(&path, "\u{1b}[1mnew\u{1b}[0m\n").unwrap();
        assert_eq!(std::fs::read_to_string(&path).unwrap(), "new\n");
        assert_eq!(std::fs::read_dir(folder.path()).unwrap().count(), 1);
    }

    #[test]
    fn a_folder_is_refused_and_nothing_is_left_behind() {
        let folder = tempfile::tempdir().unwrap();
        let inner = folder.path().join("inner");
        std::fs::create_dir(&inner).unwrap();
        assert!(write_whole(&inner, "x").is_err());
        assert!(write_whole(&folder.path().join("none/report.txt"), "x").is_err());
        assert_eq!(std::fs::read_dir(folder.path()).unwrap().count(), 1);
        assert_eq!(std::fs::read_dir(&inner).unwrap().count(), 0);
    }

    #[test]
    fn a_form_replaces_a_file_only_where_that_is_insisted_on() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("form.yaml");
        write_form(&path, "empty", false).unwrap();
        std::fs::write(&path, "filled in").unwrap();
        let refused = write_form(&path, "empty", false);
        assert!(matches!(refused, Err(Stop::Usage { mend, .. }) if mend.contains("--force")));
        assert_eq!(std::fs::read_to_string(&path).unwrap(), "filled in");
        write_form(&path, "empty", true).unwrap();
        assert_eq!(std::fs::read_to_string(&path).unwrap(), "empty");
        assert_eq!(std::fs::read_dir(folder.path()).unwrap().count(), 1);
    }

    #[cfg(unix)]
    #[test]
    fn a_link_stays_a_link_and_one_that_leads_nowhere_is_left_alone() {
        use std::os::unix::fs::symlink;
        let folder = tempfile::tempdir().unwrap();
        let at = |name: &str| folder.path().join(name);
        std::fs::write(at("report"), "old").unwrap();
        symlink(at("report"), at("link")).unwrap();
        symlink(at("nowhere"), at("dangling")).unwrap();
        write_whole(&at("link"), "new").unwrap();
        assert!(at("link").is_symlink());
        assert_eq!(std::fs::read_to_string(at("report")).unwrap(), "new");
        assert!(write_whole(&at("dangling"), "new").is_err());
        assert!(at("dangling").is_symlink() && !at("nowhere").exists());
    }

    #[test]
    fn a_file_that_may_only_be_read_is_kept() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("report");
        std::fs::write(&path, "old").unwrap();
        let mut rights = path.metadata().unwrap().permissions();
        rights.set_readonly(true);
        std::fs::set_permissions(&path, rights).unwrap();
        assert!(write_whole(&path, "new").is_err());
        assert_eq!(std::fs::read_to_string(&path).unwrap(), "old");
    }

    #[test]
    fn two_files_that_belong_together_are_written_both_or_neither() {
        let folder = tempfile::tempdir().unwrap();
        let mut first = Whole::of(&folder.path().join("first"), "x").unwrap();
        first.settle().unwrap();
        assert!(Whole::of(&folder.path().join("none/second"), "x").is_err());
        drop(first);
        assert_eq!(std::fs::read_dir(folder.path()).unwrap().count(), 0);
    }

    #[test]
    fn a_failure_names_the_folder_and_neither_numbers_nor_passing_names() {
        let folder = tempfile::tempdir().unwrap();
        let said = |path: &Path| match write_whole(path, "x") {
            Err(Stop::Usage { what, .. }) => what,
            other => panic!("{other:?}"),
        };
        let none = folder.path().join("none");
        let text = said(&none.join("report.txt"));
        assert!(text.ends_with(&format!("there is no folder `{}`", none.display())), "{text}");
        let file = folder.path().join("plain.txt");
        std::fs::write(&file, "x").unwrap();
        let long = folder.path().join("n".repeat(300));
        for text in [text, said(&file.join("report.txt")), said(&file.join("a/b")), said(&long)] {
            assert!(!text.contains("os error") && !text.contains(".kitmuster-"), "{text}");
        }
    }
}

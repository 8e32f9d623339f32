//! The tests of the woven package: which there are, how long each takes, and
//! which changes it comes by.

use std::collections::BTreeMap;
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};
use std::time::{Duration, Instant};
use std::{fs, io};

/// One test, as it went with no change switched on.
#[derive(Clone, Debug)]
pub struct Test {
    pub program: PathBuf,
    pub name: String,
    /// By the clock.
    pub takes: Duration,
}

/// For each change the tests that come by it, by their place in a list.
pub type Reached = BTreeMap<u32, Vec<usize>>;

/// How a run of tests ended.
#[derive(Debug, PartialEq)]
pub enum End {
    Passed,
    /// The first test that failed; none where the program itself ended badly.
    Failed(Option<String>),
    TooLong,
}

/// Runs tests of one program, one after the other, for at most so long.
///
/// # Errors
/// Where the program cannot be run.
pub fn run(
    tree: &Path,
    program: &Path,
    names: &[&str],
    environment: &[(&str, String)],
    at_most: Duration,
) -> io::Result<End> {
    let heard = program.with_extension(format!("heard-{:?}", std::thread::current().id()));
    // A session of its own, so that all that it starts can be ended with it.
    let mut child = Command::new("setsid")
        .arg(program)
        .args(["--exact", "--test-threads", "1"])
        .args(names)
        .current_dir(tree)
        .env("INSTA_UPDATE", "no")
        .env("INSTA_WORKSPACE_ROOT", tree)
        .env("PROPTEST_DISABLE_FAILURE_PERSISTENCE", "1")
        .envs(environment.iter().map(|(name, value)| (*name, value)))
        .stdin(Stdio::null())
        .stdout(fs::File::create(&heard)?)
        .stderr(Stdio::null())
        .spawn()?;
    let begun = Instant::now();
    let status = loop {
        match child.try_wait()? {
            Some(status) => break Some(status),
            None if begun.elapsed() > at_most => break None,
            None => std::thread::sleep(Duration::from_millis(5)),
        }
    };
    // What the test itself started, and left behind.
    let session = child.id().to_string();
    let _ = Command::new("pkill").args(["-9", "-s", &session]).status();
    let Some(status) = status else {
        child.wait()?;
        return Ok(End::TooLong);
    };
    if status.success() {
        return Ok(End::Passed);
    }
    let heard = String::from_utf8_lossy(&fs::read(&heard)?).into_owned();
    let failed =
        heard.lines().find_map(|line| line.strip_prefix("test ")?.strip_suffix(" ... FAILED"));
    Ok(End::Failed(failed.map(str::to_owned)))
}

/// Every test that passes with no change switched on, and for each change the
/// tests that come by it. Prints the tests that do not pass. What an earlier
/// run noted of these very programs is not looked for again.
///
/// # Errors
/// Where a program cannot be run or a note not be read.
pub fn look(tree: &Path, programs: &[PathBuf], notes: &Path) -> io::Result<(Vec<Test>, Reached)> {
    let (mut tests, mut reached) = (Vec::new(), Reached::new());
    for program in programs {
        let said = Command::new(program).args(["--list", "--format", "terse"]).output()?;
        let said = String::from_utf8_lossy(&said.stdout).into_owned();
        for name in said.lines().filter_map(|line| line.strip_suffix(": test")) {
            let folder = notes.join(name.replace("::", "."));
            let Some(takes) = noted(tree, program, name, &folder)? else {
                println!("does not pass with no change, so left out: {name}");
                continue;
            };
            for note in fs::read_dir(&folder)? {
                for line in fs::read_to_string(note?.path())?.lines() {
                    // A test may kill what it starts in the middle of a line.
                    let Ok(number) = line.parse() else { continue };
                    reached.entry(number).or_default().push(tests.len());
                }
            }
            tests.push(Test { program: program.clone(), name: name.to_owned(), takes });
        }
    }
    for by in reached.values_mut() {
        by.sort_unstable();
        by.dedup();
    }
    Ok((tests, reached))
}

/// How long a test takes that passes, with the changes that it comes by noted
/// in the folder.
fn noted(tree: &Path, program: &Path, name: &str, folder: &Path) -> io::Result<Option<Duration>> {
    let passed = folder.join("passed");
    if passed.exists() && passed.metadata()?.modified()? > program.metadata()?.modified()? {
        let milliseconds = fs::read_to_string(&passed)?;
        let milliseconds = milliseconds.strip_prefix("ms ").and_then(|number| number.parse().ok());
        return Ok(milliseconds.map(Duration::from_millis));
    }
    let _ = fs::remove_dir_all(folder);
    fs::create_dir_all(folder)?;
    let notes = [("MUTANT_NOTES", folder.display().to_string())];
    let begun = Instant::now();
    let end = run(tree, program, &[name], &notes, Duration::from_secs(600))?;
    let takes = begun.elapsed();
    if end != End::Passed {
        return Ok(None);
    }
    fs::write(&passed, format!("ms {}", takes.as_millis()))?;
    Ok(Some(takes))
}

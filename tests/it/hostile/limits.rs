//! Runs the real program under limits that the system itself enforces, so
//! that a busy machine changes nothing: processor time instead of the clock,
//! and the memory that a process may write to.

use crate::run::Ran;
use std::ffi::OsStr;
use std::io::{Read as _, Seek as _};
use std::path::Path;
use std::process::{Child, Command, Stdio};
use std::time::{Duration, Instant};

/// The most processor time of one run, in seconds.
const SECONDS: u32 = 2;
/// The most memory of one run, in KiB: 200 MB.
const MEMORY: u32 = 200 * 1000 * 1000 / 1024;
/// After this a run is taken to wait for something that never comes.
const PATIENCE: Duration = Duration::from_secs(120);

/// What a run gave, and what it took.
pub(crate) struct Held {
    pub(crate) ran: Ran,
    pub(crate) wall: Duration,
    /// The most memory that was seen in use, in KiB; 0 where it cannot be told.
    pub(crate) peak: u64,
}

impl Held {
    /// Everything that was said, with every gap as one blank.
    pub(crate) fn said(&self) -> String {
        let all = format!("{}\n{}", self.ran.stdout, self.ran.stderr);
        all.split_whitespace().collect::<Vec<_>>().join(" ")
    }
}

/// Runs `kitmuster` from a folder under the limits.
pub(crate) fn held<S: AsRef<OsStr>>(folder: &Path, arguments: &[S]) -> Held {
    held_to(folder, arguments, MEMORY)
}

/// The same with another limit of memory, in KiB.
pub(crate) fn held_to<S: AsRef<OsStr>>(folder: &Path, arguments: &[S], memory: u32) -> Held {
    let limits = format!("ulimit -t {SECONDS} && ulimit -d {memory} && exec \"$0\" \"$@\"");
    let (mut out, mut err) = (tempfile::tempfile().unwrap(), tempfile::tempfile().unwrap());
    let start = Instant::now();
    let mut child = Command::new("/bin/sh")
        .args(["-c", &limits, env!("CARGO_BIN_EXE_kitmuster")])
        .args(arguments)
        .current_dir(folder)
        .env_clear()
        .env("COLUMNS", "80")
        .stdin(Stdio::null())
        .stdout(out.try_clone().unwrap())
        .stderr(err.try_clone().unwrap())
        .spawn()
        .unwrap();
    let (status, peak) = wait(&mut child, start);
    let read = |file: &mut std::fs::File| {
        let mut bytes = Vec::new();
        file.rewind().unwrap();
        file.read_to_end(&mut bytes).unwrap();
        String::from_utf8(bytes).expect("what is printed is text in UTF-8")
    };
    let ran = Ran { status, stdout: read(&mut out), stderr: read(&mut err) };
    Held { ran, wall: start.elapsed(), peak }
}

fn wait(child: &mut Child, start: Instant) -> (i32, u64) {
    let status_file = format!("/proc/{}/status", child.id());
    let (mut peak, mut pause) = (0, Duration::from_millis(1));
    loop {
        peak = peak.max(high_water(&status_file));
        if let Some(status) = child.try_wait().unwrap() {
            return (status.code().unwrap_or(-1), peak);
        }
        if start.elapsed() > PATIENCE {
            child.kill().unwrap();
            panic!("it waits for something that never comes");
        }
        std::thread::sleep(pause);
        pause = (pause * 2).min(Duration::from_millis(16));
    }
}

/// The most memory that the process has had resident so far, in KiB.
fn high_water(status_file: &str) -> u64 {
    let text = std::fs::read_to_string(status_file).unwrap_or_default();
    let line = text.lines().find_map(|line| line.strip_prefix("VmHWM:"));
    let figure = line.and_then(|line| line.split_whitespace().next()?.parse().ok());
    figure.unwrap_or(0)
}

/// What a table of runs took, in one line for whoever reads the output.
#[derive(Default)]
pub(crate) struct Tally {
    runs: usize,
    slowest: (Duration, String),
    largest: (u64, String),
}

impl Tally {
    pub(crate) fn add(&mut self, what: &str, held: &Held) {
        self.runs += 1;
        if held.wall > self.slowest.0 {
            self.slowest = (held.wall, what.to_owned());
        }
        if held.peak > self.largest.0 {
            self.largest = (held.peak, what.to_owned());
        }
    }

    pub(crate) fn print(&self, table: &str) {
        let Self { runs, slowest, largest } = self;
        eprintln!(
            "{table}: {runs} runs; slowest {:.2} s by the clock ({}); largest {} MB ({})",
            slowest.0.as_secs_f64(),
            slowest.1,
            largest.0 * 1024 / 1_000_000,
            largest.1
        );
    }
}

#[test]
fn the_limits_are_enforced() {
    let shell = |limits: &str, then: &str| {
        let line = format!("{limits}; {then}");
        Command::new("/bin/sh").args(["-c", &line]).stderr(Stdio::null()).status().unwrap()
    };
    // A file without end is a hundred times more than fits.
    let grow = "x=$(head -c 1000000000 /dev/zero | tr '\\0' x)";
    assert!(!shell("ulimit -d 20000", grow).success(), "memory");
    assert!(!shell("ulimit -t 1", "while :; do :; done").success(), "time");
}

//! The real command, timed, with the most memory that it held.

use crate::DATE;
use std::path::Path;
use std::process::{Child, Command, Stdio};
use std::time::{Duration, Instant};

/// One run.
pub(crate) struct Run {
    pub(crate) wall: Duration,
    pub(crate) lines: String,
}

/// Audits the folder so often; the shortest run, and the most memory of all
/// in KiB (`None` where the system does not tell).
pub(crate) fn audit(folder: &Path, rounds: usize) -> (Run, Option<u64>) {
    let out = folder.with_extension("lines");
    let mut best: Option<Duration> = None;
    let mut peak = None;
    for _ in 0..rounds {
        let _ = std::fs::remove_file(&out);
        let start = Instant::now();
        let mut child = Command::new(env!("CARGO_BIN_EXE_kitmuster"))
            .args(["audit", "--format", "lines", "--date", DATE, "--output"])
            .arg(&out)
            .arg(folder)
            .stdin(Stdio::null())
            .stderr(Stdio::null())
            .spawn()
            .unwrap();
        peak = peak.max(watched(&mut child));
        let wall = start.elapsed();
        best = Some(best.map_or(wall, |best| best.min(wall)));
    }
    let lines = std::fs::read_to_string(&out).unwrap();
    (Run { wall: best.unwrap(), lines }, peak)
}

/// Waits for the end and looks at the memory meanwhile.
fn watched(child: &mut Child) -> Option<u64> {
    let status = format!("/proc/{}/status", child.id());
    let mut peak = None;
    while child.try_wait().unwrap().is_none() {
        let text = std::fs::read_to_string(&status).unwrap_or_default();
        let held = text.lines().find_map(|line| line.strip_prefix("VmHWM:"));
        let held = held.and_then(|held| held.trim().strip_suffix(" kB")?.parse().ok());
        peak = peak.max(held);
        std::thread::sleep(Duration::from_millis(2));
    }
    peak
}

//! Which ways of freeing a turtle a kit leaves open: the page, the short
//! answer to one case, and how the command ends.

mod ends;
mod formats;
mod pages;
mod short;

use crate::run::{self, Ran, home};

/// Runs `options` for a file with these flags.
fn options(vessel: &str, flags: &[&str]) -> Ran {
    let mut typed = vec!["options", vessel];
    typed.extend(flags);
    run::kitmuster(&typed)
}

/// A vessel with a full kit and a rail of 2 ft 10 in, for changing one thing
/// at a time; its trip is dated, so no clock is asked.
const FULL: &str = "format: vessel/1
name: Plain Grebe
declared: { by: A. Ferrow, on: 2026-11-20, figures: measured, condition: serviceable }
freeboard: 2 ft 10 in
trip: { depart: 2026-12-02, return: 2026-12-09 }
kit:
  - { mark: LC-1, kind: long-handled line cutter, handle: 7 ft, cuts-monofilament: 3.5 mm }
  - { mark: DE-1, kind: long-handled dehooker for external hooks, handle: 7 ft, end: j }
  - { mark: DI-1, kind: long-handled dehooker for internal hooks, handle: 7 ft, end: pigtail }
  - { mark: DN-1, kind: dip net, handle: 7 ft }
  - { mark: TI-1, kind: tire }
  - { mark: SE-1, kind: short-handled dehooker for external hooks, end: j }
  - { mark: PL-1, kind: pliers }
  - { mark: BC-1, kind: bolt cutters, cuts-hook: 8 mm }
  - { mark: MC-1, kind: monofilament line cutters, cuts-monofilament: 3.5 mm }
  - { mark: HR-1, kind: hank of rope }
hooks:
  - { name: circle hooks, type: circle, wire: 4.5 mm }
lines:
  - { name: mainline, part: mainline, diameter: 3.2 mm }
  - { name: leaders, part: leader, diameter: 1.8 mm }
";

/// The full kit without the tools of these marks.
fn without(marks: &[&str]) -> String {
    let of = |line: &&str| !marks.iter().any(|mark| line.contains(&format!("mark: {mark},")));
    FULL.lines().filter(of).map(|line| format!("{line}\n")).collect()
}

/// A vessel's file of its own for the time of a test.
struct File {
    _folder: tempfile::TempDir,
    path: String,
}

fn file(text: &str) -> File {
    let folder = tempfile::tempdir().unwrap();
    let path = run::write(folder.path(), "vessel.yaml", text);
    File { _folder: folder, path }
}

/// Every sample vessel.
fn samples() -> Vec<String> {
    let entries = std::fs::read_dir(home().join("vessels")).unwrap();
    let paths = entries.map(|entry| entry.unwrap().path());
    let yaml = paths.filter(|path| path.extension().is_some_and(|e| e == "yaml"));
    let mut names: Vec<_> =
        yaml.map(|path| format!("vessels/{}", path.file_name().unwrap().display())).collect();
    names.sort();
    assert!(names.len() >= 12);
    names
}

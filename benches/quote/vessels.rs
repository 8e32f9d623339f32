//! Invented vessels that lack things: those of `benches/fleet`, with a part
//! of the kit and of the documents gone.

use crate::fleet;
use crate::fleet::draw::Draw;
use std::path::{Path, PathBuf};

/// Which vessels.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(crate) enum Which {
    /// Those that the Gulf reef fish rule binds, with a freeboard that is known.
    Gulf,
    /// These and those that the house of good practice judges.
    GulfAndHouse,
}

impl Which {
    fn takes(self, text: &str) -> bool {
        let known = !text.contains("freeboard: unknown") && !text.contains("working deck");
        let gulf = text.contains("permits: [gulf-");
        match self {
            Self::Gulf => gulf && known,
            Self::GulfAndHouse => gulf || text.contains("permits: []"),
        }
    }
}

/// Writes so many vessels into the folder and gives their paths.
pub(crate) fn write(folder: &Path, seed: u64, which: Which, count: usize) -> Vec<PathBuf> {
    std::fs::create_dir_all(folder).unwrap();
    let all = (1..).map(|number| (number, fleet::written(seed, number, 0)));
    let taken = all.filter(|(_, (_, text))| which.takes(text)).take(count);
    let written = taken.map(|(number, (name, text))| {
        let path = folder.join(format!("{number:06}-{name}.yaml"));
        std::fs::write(&path, thinned(&text, &mut Draw::of(seed, 3_000_017 + number))).unwrap();
        path
    });
    written.collect()
}

/// The file with some tools and documents gone.
fn thinned(text: &str, draw: &mut Draw) -> String {
    // Some lack much, some a thing or two.
    let gone = if draw.percent(30) { 75 } else { 25 };
    let mut out = String::new();
    let mut list = "";
    let mut dropped = false;
    let mut kept = 0;
    let mut cutter = false;
    for line in text.lines() {
        if !line.starts_with(' ') {
            if matches!(list, "kit:" | "documents:") && kept == 0 && !line.is_empty() {
                let before = out.trim_end().strip_suffix(list).unwrap().to_owned();
                out = before + if list == "kit:" { "kit: []\n\n" } else { "\n" };
            }
            if !line.is_empty() {
                (list, dropped, kept) = (line, false, 0);
            }
        } else if matches!(list, "kit:" | "documents:") && line.starts_with("  - ") {
            dropped = draw.percent(gone);
            kept += usize::from(!dropped);
            cutter |= !dropped && line.ends_with("mark: LC-1");
        }
        let orphan = line.contains("fits: [LC-1]") && !cutter;
        let blank = line.is_empty();
        if blank || !line.starts_with(' ') || !(dropped || orphan) {
            out.push_str(line);
            out.push('\n');
        }
    }
    out
}

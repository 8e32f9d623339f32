//! The house keeps its floors: an import never points up.

use std::fs;
use std::path::{Path, PathBuf};

/// Rooms from the ground up; rooms of one number do not know each other.
const ROOMS: [(&str, u8); 9] = [
    ("measure", 1),
    ("model", 2),
    ("load", 3),
    ("engine", 3),
    ("fleet", 4),
    ("quote", 4),
    ("freeing", 4),
    ("report", 5),
    ("cli", 6),
];

fn floor(room: &str) -> Option<u8> {
    ROOMS.iter().find(|(name, _)| *name == room).map(|(_, floor)| *floor)
}

fn sources(folder: &Path, into: &mut Vec<PathBuf>) {
    for entry in fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        if path.is_dir() {
            sources(&path, into);
        } else if path.extension().is_some_and(|e| e == "rs") {
            into.push(path);
        }
    }
}

/// The rooms that a source text names after `crate::` or `kitmuster::`.
fn named(text: &str) -> Vec<String> {
    let mut rooms = Vec::new();
    for marker in ["crate::", "kitmuster::"] {
        for (at, _) in text.match_indices(marker) {
            let rest = &text[at + marker.len()..];
            let list = match rest.strip_prefix('{') {
                Some(inside) => inside.split('}').next().unwrap_or("").split(',').collect(),
                None => vec![rest],
            };
            for item in list {
                let word: String =
                    item.trim().chars().take_while(|c| c.is_alphanumeric() || *c == '_').collect();
                rooms.push(word);
            }
        }
    }
    rooms
}

#[test]
fn no_import_points_up() {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("src");
    let mut files = Vec::new();
    sources(&root, &mut files);
    let mut wrong = Vec::new();
    let mut looked = 0;
    for file in files {
        let inside = file.strip_prefix(&root).unwrap().to_owned();
        let own = inside.components().next().unwrap().as_os_str().to_string_lossy().to_string();
        let Some(own_floor) = floor(&own) else { continue };
        for room in named(&fs::read_to_string(&file).unwrap()) {
            let Some(other) = floor(&room) else { continue };
            looked += 1;
            if room != own && other >= own_floor {
                wrong.push(format!("{} imports {room}", inside.display()));
            }
        }
    }
    assert!(looked > 50, "the imports were not found");
    assert_eq!(wrong, Vec::<String>::new());
}

#[test]
fn the_search_for_imports_finds_each_form() {
    assert_eq!(named("use crate::engine::fit;"), ["engine"]);
    assert_eq!(named("use crate::{load, report::x};"), ["load", "report"]);
    assert_eq!(named("let x = crate::cli::y();"), ["cli"]);
}

#[test]
fn every_folder_of_the_house_is_a_room_with_a_floor() {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("src");
    for entry in fs::read_dir(root).unwrap() {
        let entry = entry.unwrap();
        if entry.file_type().unwrap().is_dir() {
            let name = entry.file_name().to_string_lossy().to_string();
            assert!(floor(&name).is_some(), "{name} has no floor");
        }
    }
}

#[test]
fn every_source_file_says_what_lives_there() {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("src");
    let mut files = Vec::new();
    sources(&root, &mut files);
    for file in files {
        let text = fs::read_to_string(&file).unwrap();
        assert!(text.starts_with("//!"), "{} has no opening line", file.display());
    }
}

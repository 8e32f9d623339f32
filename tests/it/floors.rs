//! The house keeps its floors: an import never points up, and none leads round.

mod house;
mod text;

use house::{House, circles};
use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::path::{Path, PathBuf};
use text::Tests;

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

/// The text of every source file, by its path below `src/`.
fn texts() -> BTreeMap<String, String> {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("src");
    let mut files = Vec::new();
    sources(&root, &mut files);
    let text = |file: PathBuf| {
        let inside = file.strip_prefix(&root).unwrap().to_string_lossy().replace('\\', "/");
        (inside, fs::read_to_string(&file).unwrap())
    };
    files.into_iter().map(text).collect()
}

fn room(file: &str) -> &str {
    file.split('/').next().unwrap()
}

/// The rooms that a source text names, in its tests too.
fn named(text: &str) -> BTreeSet<String> {
    let said = text::read(&[], text, Tests::Read).into_values();
    let paths = said.flat_map(|said| {
        said.paths.into_iter().chain(said.imports.into_iter().map(|import| import.path))
    });
    let paths = paths.filter(|path| ["crate", "kitmuster"].contains(&path[0].as_str()));
    paths.filter_map(|path| path.into_iter().nth(1)).collect()
}

#[test]
fn no_import_points_up() {
    let mut wrong = Vec::new();
    let mut looked = 0;
    for (file, text) in texts() {
        let own = room(&file);
        let Some(own_floor) = floor(own) else { continue };
        for room in named(&text) {
            let Some(other) = floor(&room) else { continue };
            looked += 1;
            if room != own && other >= own_floor {
                wrong.push(format!("{file} imports {room}"));
            }
        }
    }
    assert!(looked > 500, "the imports were not found");
    assert_eq!(wrong, Vec::<String>::new());
}

#[test]
fn no_file_imports_itself_by_way_of_others() {
    let imports = House::new(&texts()).imports();
    let round: Vec<_> = circles(&imports).iter().map(|circle| circle.join(" → ")).collect();
    assert_eq!(round, Vec::<String>::new());
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
    for (file, text) in texts() {
        assert!(text.starts_with("//!"), "{file} has no opening line");
    }
}

/// What the files import that are written as `(path, text)`.
fn imports(files: &[(&str, &str)]) -> Vec<String> {
    let own = |(path, text): &(&str, &str)| ((*path).to_owned(), (*text).to_owned());
    let imports = House::new(&files.iter().map(own).collect()).imports();
    let lines = imports.iter().filter(|(_, others)| !others.is_empty());
    let line = |(file, others): (&String, &BTreeSet<String>)| {
        format!("{file}: {}", others.iter().cloned().collect::<Vec<_>>().join(" "))
    };
    lines.map(line).collect()
}

#[test]
fn each_way_to_name_another_file_is_seen() {
    let of = |a| {
        let b = "pub struct T; pub enum E { One } pub fn g() {}";
        let files = [("lib.rs", "mod a; mod b; mod c;"), ("a.rs", a), ("b.rs", b), ("c.rs", "")];
        imports(&files)
    };
    for text in [
        "use crate::b::T;",
        "use super::b::T as Other;",
        "pub(crate) use crate::b::T; fn f(t: T) {}",
        "use crate::{\n    c::{self},\n    b::{self, E::{self, One}},\n};",
        "use crate::b::*;",
        "use super::b; fn f() -> b::T {}",
        "use super::b as other; fn f() { let x = other::E::One; }",
        "use crate::{b::{self as other}}; fn f() { other::g() }",
        "fn f() { use super::b::E; }",
        "fn f() { crate::b::g() }",
        "fn f(x: &[super::b::T]) {}",
        "fn f() { told!(\"{}\", crate::b::g()) }",
        "impl Iterator for crate::b::T { type Item = u8; }",
        "mod inside { use super::super::b::T; }",
        "mod inside { use super::*; fn f() -> b::T {} } use crate::b;",
    ] {
        assert_eq!(of(text), ["a.rs: b.rs"], "{text}");
    }
    for text in [
        "use crate::b;",
        "pub use crate::b::T;",
        "use ::b::T; use b::T;",
        "// use crate::b::T;\n/* crate::b::g() */\n/// See [`crate::b::T`].\nfn f() {}",
        "const TOLD: &str = \"use crate::b::T;\"; const RAW: &str = r#\"\"crate::b::g()\"#;",
        "pub(in crate::b) fn f<'b>(x: &'b str) -> impl Fn() + use<'b> {}",
        "#[cfg(test)]\n#[allow(dead_code)]\nmod tests { use crate::b::T; }",
        "#[cfg(test)]\nfn f() { crate::b::g() }",
    ] {
        assert_eq!(of(text), [""; 0], "{text}");
    }
}

#[test]
fn rooms_are_named_in_tests_too() {
    let text =
        "use crate::{load, report::x}; #[cfg(test)] mod tests { fn f() { crate::cli::y() } }";
    assert_eq!(named(text), ["cli", "load", "report"].map(str::to_owned).into());
}

#[test]
fn a_name_handed_on_is_imported_from_where_it_is_written() {
    let found = imports(&[
        ("lib.rs", "mod m; mod user;"),
        (
            "m/mod.rs",
            "mod one; mod two; mod csv; pub use one::One; pub use two::*; pub use csv::csv;",
        ),
        ("m/one.rs", "use super::Two; pub struct One(Two);"),
        ("m/two.rs", "pub struct Two;"),
        ("m/csv.rs", "pub fn csv() {} pub fn cell() {}"),
        (
            "user.rs",
            "use crate::m::{One, Two, csv}; use crate::m::Lost; fn f() { crate::m::csv::cell() }",
        ),
    ]);
    assert_eq!(found, ["m/one.rs: m/two.rs", "user.rs: m/csv.rs m/mod.rs m/one.rs m/two.rs"]);
}

#[test]
fn files_that_import_each_other_are_one_circle() {
    let of = |file: &str, others: &[&str]| {
        (file.to_owned(), others.iter().map(|other| (*other).to_owned()).collect())
    };
    let straight = [of("a", &["b", "c"]), of("b", &["c"]), of("c", &[])].into();
    assert_eq!(circles(&straight), Vec::<Vec<&str>>::new());
    let round = [of("a", &["b"]), of("b", &["c"]), of("c", &["d"]), of("d", &["b", "c"])];
    assert_eq!(circles(&round.into()), [["b", "c", "d", "b"]]);
}

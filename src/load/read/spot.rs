//! Where a thing stands: a check in a file, as a path that is only spelled out
//! where something has to be placed, and the key paths of a text, as positions.

use super::problem::{Problems, Told, Wrong};
use crate::load::read::fault::Fault;
use crate::load::read::problem::Position;
use crate::load::read::tree::{Content, Node, read_tree};
use crate::model::place::Place;
use std::collections::BTreeMap;
use std::sync::Arc;

/// A key path in the making.
#[derive(Clone, Copy)]
pub(crate) struct Spot<'a> {
    root: Root<'a>,
    problems: &'a Problems,
    above: Option<&'a Spot<'a>>,
    part: Part<'a>,
}

#[derive(Clone, Copy)]
enum Root<'a> {
    File(&'a Arc<str>),
    Origin(&'a Origin),
}

#[derive(Clone, Copy)]
enum Part<'a> {
    Top,
    Key(&'a str),
    Entry(usize),
}

/// Where an inherited requirement stands, and where some of its keys were
/// changed.
#[derive(Debug, Clone)]
pub(crate) struct Origin {
    /// Where the requirement stands.
    pub(crate) place: Place,
    /// Keys that came from elsewhere, and from where.
    pub(crate) changed: Vec<(String, Place)>,
}

impl Origin {
    /// The place of a key path below the requirement.
    fn resolve(&self, key: &str) -> Place {
        let covers = |changed: &str| {
            key.strip_prefix(changed)
                .is_some_and(|rest| rest.is_empty() || rest.starts_with(['.', '[']))
        };
        let nearest = self
            .changed
            .iter()
            .filter(|(changed, _)| covers(changed))
            .max_by_key(|(changed, _)| changed.len());
        match nearest {
            Some((changed, place)) => append(place, &key[changed.len()..]),
            None => append(&self.place, key),
        }
    }
}

fn append(place: &Place, rest: &str) -> Place {
    let dot = !rest.is_empty() && !rest.starts_with(['.', '[']) && !place.key.is_empty();
    let key = format!("{}{}{rest}", place.key, if dot { "." } else { "" });
    Place { file: Arc::clone(&place.file), key }
}

impl<'a> Spot<'a> {
    /// The top of a file.
    pub(crate) fn top(file: &'a Arc<str>, problems: &'a Problems) -> Self {
        Self { root: Root::File(file), problems, above: None, part: Part::Top }
    }

    /// The top of a requirement.
    pub(crate) fn requirement(origin: &'a Origin, problems: &'a Problems) -> Self {
        Self { root: Root::Origin(origin), problems, above: None, part: Part::Top }
    }

    /// Where the problems of this file go.
    pub(crate) fn problems(&self) -> &'a Problems {
        self.problems
    }

    /// Begins a problem here.
    pub(crate) fn wrong(&self, fault: Fault) -> Wrong<'a> {
        self.problems.wrong(self.place(), fault)
    }

    /// Begins one at the key below this spot.
    pub(crate) fn wrong_key(&self, key: &str, fault: Fault) -> Wrong<'a> {
        self.problems.wrong(self.key(key).place(), fault).at_key()
    }

    /// Tells that a key is missing.
    pub(crate) fn missing(&self, key: &str, fault: Fault) {
        self.wrong_key(key, fault).tell();
    }

    /// What must be there, told if it is missing.
    pub(crate) fn must<T>(&self, key: &str, value: Option<T>, fault: Fault) -> Option<T> {
        if value.is_none() {
            self.missing(key, fault);
        }
        value
    }

    /// What was read, or none with its problem told.
    pub(crate) fn take<T>(&self, read: Told<T>) -> Option<T> {
        read.map_err(|problem| self.problems.add(*problem)).ok()
    }

    /// Reads what stands after a key, if anything does.
    pub(crate) fn read<T>(
        &self,
        key: &str,
        text: &Option<String>,
        by: impl FnOnce(&Spot<'_>, &str) -> Option<T>,
    ) -> Option<T> {
        by(&self.key(key), filled(text)?)
    }

    /// Reads every entry of the list after a key, as long as looking on is
    /// not idle.
    pub(crate) fn each<T, R>(
        &self,
        key: &str,
        entries: impl IntoIterator<Item = T>,
        mut by: impl FnMut(&Spot<'_>, T) -> Option<R>,
    ) -> Vec<R> {
        let list = self.key(key);
        let entries = entries.into_iter().enumerate();
        let entries = entries.take_while(|_| !self.problems.is_full());
        entries.filter_map(|(index, entry)| by(&list.entry(index), entry)).collect()
    }

    /// The spot of a key below this one.
    pub(crate) fn key(&'a self, key: &'a str) -> Spot<'a> {
        Spot { root: self.root, problems: self.problems, above: Some(self), part: Part::Key(key) }
    }

    /// The spot of an entry of the list here.
    pub(crate) fn entry(&'a self, index: usize) -> Spot<'a> {
        Spot {
            root: self.root,
            problems: self.problems,
            above: Some(self),
            part: Part::Entry(index),
        }
    }

    /// Spelled out.
    pub(crate) fn place(&self) -> Place {
        let mut key = String::with_capacity(24);
        self.spell(&mut key);
        match self.root {
            Root::File(file) => Place { file: Arc::clone(file), key },
            Root::Origin(origin) => origin.resolve(&key),
        }
    }

    fn spell(&self, out: &mut String) {
        if let Some(above) = self.above {
            above.spell(out);
        }
        match self.part {
            Part::Top => {}
            Part::Key(key) => push_key(out, key),
            Part::Entry(index) => push_entry(out, index),
        }
    }
}

/// The text without the space around it; none where nothing is left.
pub(crate) fn filled(text: &Option<String>) -> Option<&str> {
    said(text.as_deref()?)
}

/// The same of a text that is there.
pub(crate) fn said(text: &str) -> Option<&str> {
    Some(text.trim()).filter(|text| !text.is_empty())
}

/// Adds a key to a path.
pub(crate) fn push_key(path: &mut String, key: &str) {
    if !path.is_empty() {
        path.push('.');
    }
    path.push_str(key);
}

/// Adds the index of an entry to a path.
pub(crate) fn push_entry(path: &mut String, index: usize) {
    path.push('[');
    path.push_str(&index.to_string());
    path.push(']');
}

/// The longest key path that is placed by itself, in bytes; what lies deeper
/// is placed where the nearest key above it stands. No key path that a file
/// may have is half as long.
const LONGEST_PATH: usize = 256;

/// A file's name and text.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Source {
    /// The name as it was given.
    pub file: Arc<str>,
    /// The text.
    pub text: Arc<str>,
}

/// Where the keys of one file stand.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Positions {
    /// By key path: the key (or the entry's dash) and the value.
    spots: BTreeMap<String, (Position, Position)>,
}

impl Source {
    /// Where each key stands; empty if the text is no YAML.
    pub fn positions(&self) -> Positions {
        read_tree(&self.text)
            .map_or_else(|_| Positions::default(), |tree| Positions::of(&tree.root))
    }
}

impl Positions {
    /// The positions of a tree.
    pub(crate) fn of(root: &Node<'_>) -> Self {
        let mut positions = Self::default();
        positions.add(&mut String::new(), root.at, root);
        positions
    }

    fn add(&mut self, path: &mut String, key_at: Position, node: &Node<'_>) {
        if path.len() > LONGEST_PATH {
            return;
        }
        self.spots.entry(path.clone()).or_insert((key_at, node.at));
        let length = path.len();
        match &node.content {
            Content::Text { .. } | Content::Pruned => {}
            Content::List(entries) => {
                for (index, entry) in entries.iter().enumerate() {
                    push_entry(path, index);
                    self.add(path, entry.at, entry);
                    path.truncate(length);
                }
            }
            Content::Map(pairs) => {
                for pair in pairs {
                    push_key(path, &pair.key);
                    self.add(path, pair.key_at, &pair.value);
                    path.truncate(length);
                }
            }
        }
    }

    /// Where the value of a key path stands: the value if it begins on the
    /// key's line, else the key. If there is no such key, the nearest one
    /// above it.
    pub fn locate(&self, key: &str) -> Option<Position> {
        self.nearest(key).map(
            |((key_at, value_at), _)| {
                if key_at.line == value_at.line { *value_at } else { *key_at }
            },
        )
    }

    /// Where the key itself stands, or the nearest one above it.
    pub(crate) fn locate_key(&self, key: &str) -> Option<Position> {
        self.nearest(key).map(|((key_at, _), _)| *key_at)
    }

    fn nearest(&self, key: &str) -> Option<(&(Position, Position), usize)> {
        let mut path = key;
        loop {
            if let Some(found) = self.spots.get(path) {
                return Some((found, path.len()));
            }
            if path.is_empty() {
                return None;
            }
            path = &path[..path.rfind(['.', '[']).unwrap_or(0)];
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_spot_is_spelled_like_a_place() {
        let file: Arc<str> = "a.yaml".into();
        let problems = Problems::default();
        let top = Spot::top(&file, &problems);
        let (kit, third) = (top.key("kit"), 3);
        let (tool, key) = (kit.entry(third), "handle");
        assert_eq!(tool.key(key).place(), Place::new(&file, "kit[3].handle"));
    }

    #[test]
    fn a_changed_line_is_placed_where_the_change_stands() {
        let (base, derived): (Arc<str>, Arc<str>) = ("base.yaml".into(), "new.yaml".into());
        let origin = Origin {
            place: Place::new(&base, "requirements[1]"),
            changed: vec![("with.handle".into(), Place::new(&derived, "change[0].with.handle"))],
        };
        let problems = Problems::default();
        let top = Spot::requirement(&origin, &problems);
        let with = top.key("with");
        assert_eq!(with.key("handle").place().to_owned().key, "change[0].with.handle");
        assert_eq!(&*with.key("handle").place().file, "new.yaml");
        assert_eq!(with.key("handles").place().key, "requirements[1].with.handles");
    }
}

#[cfg(test)]
mod source_tests {
    use super::*;

    #[test]
    fn a_key_path_is_located_or_the_nearest_above_it() {
        let text = "name: A\nkit:\n  - mark: LC-1\n    handle: 6 ft\n  - { mark: B }\n";
        let source = Source { file: "a.yaml".into(), text: text.into() };
        let positions = source.positions();
        let at = |key: &str| positions.locate(key).map(|p| (p.line, p.column));
        assert_eq!(at("kit[0].handle"), Some((4, 13)));
        assert_eq!(at("kit[0].reach"), Some((3, 5)));
        assert_eq!(at("kit[1].mark"), Some((5, 13)));
        assert_eq!(at("kit"), Some((2, 1)));
        assert_eq!(at("kit[7]"), Some((2, 1)));
        assert_eq!(at("people[0].name"), Some((1, 1)));
    }

    #[test]
    fn what_lies_below_an_endless_key_is_placed_above_it() {
        let text = format!("a:\n  {}:\n    - [1, 2]\n", "k".repeat(900));
        let source = Source { file: "a.yaml".into(), text: text.into() };
        let positions = source.positions();
        assert_eq!(positions.spots.len(), 2);
        let key = format!("a.{}[0][1]", "k".repeat(900));
        assert_eq!(positions.locate(&key), Some(Position { line: 1, column: 1 }));
    }

    #[test]
    fn a_text_that_is_no_yaml_has_no_positions() {
        let source = Source { file: "a.yaml".into(), text: "a: [".into() };
        assert_eq!(source.positions().locate("a"), None);
    }
}

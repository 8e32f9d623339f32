//! The text of a file, and where in it each key path stands.
//!
//! Imports nothing above this folder; lines are looked up only when something
//! has to be placed.

use crate::load::read::problem::Position;
use crate::load::read::spot::{push_entry, push_key};
use crate::load::read::tree::{Content, Node, read_tree};
use std::collections::BTreeMap;
use std::sync::Arc;

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

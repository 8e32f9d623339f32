//! Where in the files something was written.

use std::sync::Arc;

/// A file and the key path in it, like `kit[3].handle`. Line and column are
/// looked up where the place is printed.
#[derive(Debug, Clone, PartialEq, Eq, Hash, Default)]
pub struct Place {
    /// The file's name as it was given; empty for what is built in memory.
    pub file: Arc<str>,
    /// The key path, empty for the whole file.
    pub key: String,
}

impl Place {
    /// The place of `key` in `file`.
    pub fn new(file: &Arc<str>, key: impl Into<String>) -> Self {
        Self { file: Arc::clone(file), key: key.into() }
    }

    /// The place of `part` below this one.
    pub fn below(&self, part: &str) -> Self {
        Self { file: Arc::clone(&self.file), key: join(&self.key, part) }
    }

    /// The place of the entry with that index.
    pub fn entry(&self, index: usize) -> Self {
        Self { file: Arc::clone(&self.file), key: format!("{}[{index}]", self.key) }
    }
}

fn join(head: &str, part: &str) -> String {
    if head.is_empty() { part.to_owned() } else { format!("{head}.{part}") }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn key_paths_grow_as_they_are_read_aloud() {
        let top = Place::new(&"a.yaml".into(), "");
        assert_eq!(top.below("kit").entry(3).below("handle").key, "kit[3].handle");
    }
}

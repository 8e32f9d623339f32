//! Invented fleets of any size, for measuring and for tests: the same seed
//! and number always give the same vessel, so that a small fleet is the
//! beginning of a larger one. Nothing in them is real but the figures of the
//! rules; not part of the program.

// Not everybody who borrows this module uses all of it.
#![allow(dead_code, clippy::disallowed_methods, clippy::unwrap_used)]

pub(crate) mod draw;
mod kits;
mod vessel;
mod words;

use std::path::{Path, PathBuf};

pub(crate) use vessel::written;

/// How many files lie in one folder.
const IN_A_FOLDER: usize = 1000;

/// A fleet that can be written.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Fleet {
    /// The same seed gives the same fleet.
    pub(crate) seed: u64,
    /// How many vessels.
    pub(crate) size: usize,
    /// How many of a thousand files are broken.
    pub(crate) broken: u64,
}

impl Fleet {
    /// Writes the files below the folder as `000/000001-name.yaml` and gives
    /// their paths, in order.
    pub(crate) fn write(self, folder: &Path) -> Vec<PathBuf> {
        let mut paths = Vec::with_capacity(self.size);
        for number in 1..=self.size {
            let (name, text) = written(self.seed, number as u64, self.broken);
            let within = folder.join(format!("{:03}", (number - 1) / IN_A_FOLDER));
            if (number - 1) % IN_A_FOLDER == 0 {
                std::fs::create_dir_all(&within).unwrap();
            }
            let path = within.join(format!("{number:06}-{name}.yaml"));
            std::fs::write(&path, text).unwrap();
            paths.push(path);
        }
        paths
    }
}

//! Runs the real command with a scrubbed environment.

use std::path::{Path, PathBuf};
use std::process::{Command, Output};

/// The folder of the package.
pub(crate) fn home() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR"))
}

/// What a run gave.
pub(crate) struct Ran {
    pub(crate) status: i32,
    pub(crate) stdout: String,
    pub(crate) stderr: String,
}

impl Ran {
    /// The run as one text for a snapshot.
    pub(crate) fn page(&self) -> String {
        format!("status {}\n--- stdout\n{}--- stderr\n{}", self.status, self.stdout, self.stderr)
    }

    /// The JSON that was printed.
    pub(crate) fn json(&self) -> serde_json::Value {
        serde_json::from_str(&self.stdout)
            .unwrap_or_else(|e| panic!("no JSON: {e}\n{}\n{}", self.stdout, self.stderr))
    }
}

/// Runs `kitmuster` with the arguments, from the package's folder.
pub(crate) fn kitmuster<S: AsRef<std::ffi::OsStr>>(arguments: &[S]) -> Ran {
    kitmuster_in(&home(), arguments)
}

/// Runs `kitmuster` with the arguments from another folder.
pub(crate) fn kitmuster_in<S: AsRef<std::ffi::OsStr>>(folder: &Path, arguments: &[S]) -> Ran {
    let Output { status, stdout, stderr } = Command::new(env!("CARGO_BIN_EXE_kitmuster"))
        .args(arguments)
        .current_dir(folder)
        .env_clear()
        .env("COLUMNS", "80")
        .output()
        .unwrap();
    Ran {
        status: status.code().unwrap_or(-1),
        stdout: String::from_utf8(stdout).unwrap(),
        stderr: String::from_utf8(stderr).unwrap(),
    }
}

/// Writes a file into a folder and gives its path.
pub(crate) fn write(folder: &Path, name: &str, text: &str) -> String {
    let path = folder.join(name);
    std::fs::write(&path, text).unwrap();
    path.to_string_lossy().to_string()
}

//! Every shape that a profile or a vessel's file can have, each with a small
//! profile in `shapes/`, invented for these tests, with a vessel that meets
//! it and one that does not, or of which nobody can tell.

mod aboard;
mod choices;
mod conditions;
mod editions;
mod freeboards;
mod laid;
mod limits;
mod papers;
mod readings;
mod records;
mod sharing;
mod stated;
mod told;
mod ways;

use crate::outfit::{DAY, Judged, Outfit, vessel};

/// The path of a test profile.
fn profile(name: &str) -> String {
    let path = crate::run::home().join("tests/it/shapes").join(name);
    path.to_string_lossy().to_string()
}

/// A profile that is written for one test.
struct Made {
    path: String,
    _folder: tempfile::TempDir,
}

/// A profile of these requirements, each as it stands between braces.
fn made<S: AsRef<str>>(requirements: &[S]) -> Made {
    made_with("", requirements)
}

/// The same with further lines above the requirements.
fn made_with<S: AsRef<str>>(head: &str, requirements: &[S]) -> Made {
    let folder = tempfile::tempdir().unwrap();
    let lines: String = requirements
        .iter()
        .map(|line| format!("  - {{ {}, verified: common practice }}\n", line.as_ref()))
        .collect();
    let text = format!(
        "format: profile/1\nid: test-made\nrule: test-made\nedition: one\ntitle: Made\n\
         standing: good practice\n{head}requirements:\n{lines}"
    );
    let path = crate::run::write(folder.path(), "made.yaml", &text);
    Made { path, _folder: folder }
}

impl Made {
    /// Judges the vessel on the day of the tests.
    fn judges(&self, vessel: &Outfit) -> Judged {
        vessel.under(&self.path, DAY)
    }
}

/// Judges the vessel by a test profile.
fn by(name: &str, vessel: &Outfit) -> Judged {
    vessel.under(&profile(name), DAY)
}

/// Judges a kit at 5 ft of freeboard by a test profile.
fn kit<S: AsRef<str>>(name: &str, kit: &[S]) -> Judged {
    by(name, &vessel("5 ft").with(kit))
}

/// The outcome of one requirement with one tool aboard.
fn with(name: &str, tool: &str, requirement: &str) -> String {
    kit(name, &[tool]).outcome(requirement).to_owned()
}

/// Asserts the outcome of a requirement for each of several tools.
fn outcomes(name: &str, requirement: &str, cases: &[(&str, &str)]) {
    for (tool, expected) in cases {
        assert_eq!(with(name, tool, requirement), *expected, "{requirement}: {tool}");
    }
}

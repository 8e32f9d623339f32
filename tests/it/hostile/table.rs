//! A case of the corpus: a file, which kind of file it is meant to be, and
//! what must come of it; and the commands that each kind of file is given to.

use super::limits::{Held, Tally, held};
use super::refuse_live;
use std::path::Path;

/// What must come of a file.
pub(super) enum Outcome {
    /// Exit code 2, and each of these is said (where, what, how to mend).
    Refused(&'static [&'static str]),
    /// Another exit code, and each of these is said.
    Read(i32, &'static [&'static str]),
}

/// A hostile file.
pub(super) struct Case {
    /// What it is.
    pub(super) name: &'static str,
    /// What is in it.
    pub(super) bytes: Vec<u8>,
    /// What must come of it.
    pub(super) outcome: Outcome,
}

pub(super) fn refused(
    name: &'static str,
    made: impl Into<Vec<u8>>,
    said: &'static [&'static str],
) -> Case {
    Case { name, bytes: made.into(), outcome: Outcome::Refused(said) }
}

pub(super) fn read(
    name: &'static str,
    made: impl Into<Vec<u8>>,
    status: i32,
    said: &'static [&'static str],
) -> Case {
    Case { name, bytes: made.into(), outcome: Outcome::Read(status, said) }
}

/// A vessel without fault that lacks most of its kit.
pub(super) const GOOD: &str = "format: vessel/1
name: Test Kittiwake
freeboard: 3 ft
permits: [gulf-reef-fish-commercial]
features: { wheelhouse: yes }
kit:
  - mark: PL-1
    kind: pliers
    overall: 12 in
    condition: serviceable
";

/// The good vessel with one thing changed.
pub(super) fn with(from: &str, to: &str) -> String {
    assert!(GOOD.contains(from), "{from}");
    GOOD.replacen(from, to, 1)
}

/// The good vessel with lines after it.
pub(super) fn and(more: &str) -> String {
    format!("{GOOD}{more}")
}

/// The day of every run.
pub(super) const DAY: &str = "2026-03-02";

/// Which file a case stands for.
#[derive(Clone, Copy)]
pub(super) enum Kind {
    Vessel,
    Inspection,
    Catalogue,
    Profile,
    Vocabulary,
    Techniques,
    Record,
}

impl Kind {
    /// Where the file is put.
    pub(super) fn file(self) -> &'static str {
        match self {
            Self::Vessel => "vessel.yaml",
            Self::Inspection => "inspection.yaml",
            Self::Catalogue => "shop.yaml",
            Self::Profile => "rules/rule.yaml",
            Self::Vocabulary => "rules/vocabulary.yaml",
            Self::Techniques => "rules/techniques.yaml",
            Self::Record => "record.json",
        }
    }

    /// The commands that read it. The first is held to the outcome; one of
    /// the others, for some cases, to its exit code and to being dead.
    fn commands(self) -> Vec<Vec<&'static str>> {
        let file = self.file();
        let rules = ["--requirements", "rules"];
        match self {
            Self::Vessel => vec![
                vec!["check", file, "--on", DAY],
                vec!["audit", file, "--date", DAY, "--format", "html"],
                vec!["options", file, "--on", DAY, "--format", "html"],
                vec!["audit", file, "--date", DAY, "--format", "csv"],
                vec!["sheet", file, "--on", DAY],
                vec!["audit", file, "--date", DAY, "--format", "lines"],
                vec!["check", file, "--on", DAY, "--format", "html"],
                vec!["sheet", file, "--on", DAY, "--for", "skipper"],
                vec!["check", file, "--on", DAY, "--format", "json"],
            ],
            Self::Inspection => vec![
                vec!["check", "good.yaml", "--on", DAY, "--inspection", file],
                vec!["sheet", "good.yaml", "--on", DAY, "--inspection", file],
                vec!["options", "good.yaml", "--on", DAY, "--inspection", file],
            ],
            Self::Catalogue => vec![
                vec!["quote", "good.yaml", "--ordered", DAY, "--catalogue", file],
                vec!["check", "good.yaml", "--on", DAY, "--catalogue", file],
                vec!["options", "good.yaml", "--on", DAY, "--catalogue", file],
            ],
            Self::Profile => vec![
                vec!["check", "good.yaml", "--on", DAY, "--profile", file],
                [&["audit", "good.yaml", "--date", DAY][..], &rules].concat(),
                vec!["sheet", "--blank-vessel", file],
                vec!["audit", "good.yaml", "--date", DAY, "--draft", file],
            ],
            Self::Vocabulary => vec![
                [&["words"][..], &rules].concat(),
                [&["check", "good.yaml", "--on", DAY][..], &rules].concat(),
            ],
            Self::Techniques => vec![
                [&["options", "good.yaml", "--on", DAY][..], &rules].concat(),
                [&["profiles"][..], &rules].concat(),
            ],
            Self::Record => vec![
                vec!["verify", file],
                vec!["audit", "good.yaml", "--date", DAY, "--against", file],
            ],
        }
    }
}

/// Every how manieth case is given to another command too: they share their
/// loader, and processor time is dear.
const OTHERS: usize = 5;

/// Puts each file in its place and gives it to its commands; everything that
/// is otherwise than written is told together.
pub(super) fn hold(table: &str, kind: Kind, cases: impl IntoIterator<Item = Case>) {
    let folder = tempfile::tempdir().unwrap();
    let here = folder.path();
    std::fs::create_dir(here.join("rules")).unwrap();
    std::fs::write(here.join("good.yaml"), GOOD).unwrap();
    let commands = kind.commands();
    let (mut tally, mut wrong) = (Tally::default(), Vec::new());
    for (index, case) in cases.into_iter().enumerate() {
        std::fs::write(here.join(kind.file()), &case.bytes).unwrap();
        let first = held(here, &commands[0]);
        tally.add(case.name, &first);
        wrong.extend(judge(here, &case, &first));
        if index % OTHERS == 0 {
            let second = &commands[1 + index / OTHERS % (commands.len() - 1)];
            let other = held(here, second);
            tally.add(case.name, &other);
            wrong.extend(judge_other(&case, second, &other));
        }
    }
    tally.print(table);
    assert!(wrong.is_empty(), "\n{}", wrong.join("\n\n"));
}

fn judge(folder: &Path, case: &Case, held: &Held) -> Option<String> {
    let (status, expected) = match case.outcome {
        Outcome::Refused(said) => (2, said),
        Outcome::Read(status, said) => (status, said),
    };
    let said = held.said();
    let missing: Vec<_> = expected.iter().filter(|part| !said.contains(**part)).collect();
    let loud = status == 2 && !held.ran.stdout.is_empty();
    let live = refuse_live(case.name, &held.ran).err();
    let path = said.contains(&*folder.to_string_lossy());
    if held.ran.status == status && missing.is_empty() && !loud && live.is_none() && !path {
        return None;
    }
    let (name, got) = (case.name, held.ran.status);
    Some(format!("{name}: status {got}; missing {missing:?}; {live:?}\n    {said:.600}"))
}

fn judge_other(case: &Case, typed: &[&str], held: &Held) -> Option<String> {
    let refused = matches!(case.outcome, Outcome::Refused(_));
    let status = held.ran.status;
    let right = if refused { status == 2 } else { (0..=1).contains(&status) };
    let live = refuse_live(case.name, &held.ran).err();
    (!right || live.is_some()).then(|| {
        format!("{} by {typed:?}: status {status}; {live:?}\n    {:.600}", case.name, held.said())
    })
}

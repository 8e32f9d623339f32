//! Which test pins what: read from the tables whose rows drive the tests, and
//! from lines `/// Pins: PROFILE/REQUIREMENT: part; part` beside a test that
//! is written out. A line without a part speaks of `asked for`.

use super::parts::{Part, Size};
use super::shipped::Shipped;
use crate::boundaries::{self, Rule};
use crate::{asked, run, words};
use kitmuster::measure::{Length, Percent};
use std::path::Path;

/// The wire of the hooks that vessels made to measure carry.
const WIRE_OF_HOOKS: &str = "3 mm";

/// What a pin holds of a requirement.
pub(super) enum Holds {
    /// The part of these words.
    Words(String),
    /// What a row of lengths says of one dimension.
    Length { kind: String, attribute: String, freeboard: i64, rule: Rule },
}

/// One thing that one test holds.
pub(super) struct Pin {
    /// `module::test`.
    pub(super) test: String,
    pub(super) profile: String,
    pub(super) requirement: String,
    pub(super) holds: Holds,
    /// Where it is said, for messages.
    pub(super) place: String,
}

impl Pin {
    /// Whether it speaks for a part of a requirement of the same id.
    fn speaks_for(&self, part: &Part) -> bool {
        match &self.holds {
            Holds::Words(says) => *says == part.says,
            Holds::Length { kind, attribute, freeboard, rule } => {
                (kind, attribute) == (&part.of.0, &part.of.1) && sizes(rule, *freeboard, part.size)
            }
        }
    }

    /// Whether it pins this part of this requirement of this edition; what is
    /// taken over from another edition is pinned with that one.
    pub(super) fn covers(
        &self,
        shipped: &Shipped,
        profile: &str,
        requirement: &str,
        part: &Part,
    ) -> bool {
        let same = self.profile == profile
            || part.shared && shipped.root(&self.profile) == shipped.root(profile);
        same && self.requirement == requirement && self.speaks_for(part)
    }
}

fn nanometres(text: &str) -> i64 {
    Length::parse(text).unwrap().0.nanometres()
}

/// Whether a row's rule turns at the size, at that freeboard.
fn sizes(rule: &Rule, freeboard: i64, size: Size) -> bool {
    let figures: Vec<i64> = match rule {
        Rule::Least(one)
        | Rule::Most(one)
        | Rule::Exactly(one)
        | Rule::OpenBelow(one)
        | Rule::LeastOrExactly(one) => vec![nanometres(one)],
        Rule::Range(one, other) | Rule::MostOrHalf(one, other) => {
            vec![nanometres(one), nanometres(other)]
        }
        Rule::About(..) => Vec::new(),
    };
    let share = |percent: Percent, of: i64| {
        Length::from_nanometres(of).unwrap().percent_up(percent).nanometres()
    };
    match size {
        Size::None => false,
        Size::Fixed(figure) => figures.contains(&figure),
        Size::OfFreeboard(percent) => figures.contains(&share(percent, freeboard)),
        Size::OfHook(percent) => figures.contains(&share(percent, nanometres(WIRE_OF_HOOKS))),
        Size::About(low, high, margin) => matches!(rule, Rule::About(a, b, c)
            if [a, b, c].map(|text| nanometres(text)) == [low, high, margin]),
    }
}

fn of_row(test: String, profile: &str, requirement: &str, holds: Holds) -> Pin {
    let place = format!("a row of {test}");
    Pin { test, profile: profile.into(), requirement: requirement.into(), holds, place }
}

/// Every pin of every test.
pub(super) fn all() -> Vec<Pin> {
    let mut pins = of_lengths();
    pins.extend(of_words());
    pins.extend(of_what_is_asked());
    pins.extend(written());
    pins
}

fn of_lengths() -> Vec<Pin> {
    let mut pins = Vec::new();
    for (test, rows) in boundaries::tables() {
        for row in rows {
            let holds = Holds::Length {
                kind: row.kind.into(),
                attribute: row.attribute.into(),
                freeboard: nanometres(row.freeboard),
                rule: row.rule,
            };
            let test = format!("boundaries::{test}");
            pins.push(of_row(test, row.profile, row.requirement, holds));
        }
    }
    for row in boundaries::hook_rows() {
        let holds = Holds::Length {
            kind: "hook".into(),
            attribute: row.attribute.into(),
            freeboard: 0,
            rule: row.rule,
        };
        let test = "boundaries::every_figure_of_the_hooks_turns_at_its_own_nanometre".to_owned();
        pins.push(of_row(test, asked::rows::ATLANTIC, row.requirement, holds));
    }
    pins
}

fn of_words() -> Vec<Pin> {
    let mut pins = Vec::new();
    for (test, rows) in words::tables() {
        for row in rows {
            let says = format!("{} {} {}", row.kind, row.attribute, row.says.text());
            let test = format!("words::{test}");
            pins.push(of_row(test, row.profile, row.requirement, Holds::Words(says)));
        }
    }
    pins
}

fn of_what_is_asked() -> Vec<Pin> {
    let mut pins = Vec::new();
    let mut push = |test: &str, profile: &str, requirement: &str, says: String| {
        pins.push(of_row(format!("asked::{test}"), profile, requirement, Holds::Words(says)));
    };
    for (profile, row) in asked::rows::pieces() {
        let test = asked::ONE_PIECE_LESS;
        let kind = row.kind;
        push(test, profile, row.requirement, "asked for".into());
        push(test, profile, row.requirement, format!("{kind} serves"));
        push(test, profile, row.requirement, format!("{} {kind}", row.pieces));
    }
    for (profile, requirement, above) in asked::rows::thresholds() {
        let side = if above { "more than" } else { "at most" };
        let says = format!("when freeboard {side} 4 ft");
        push(asked::ABOVE_4_FT, profile, requirement, says);
    }
    for row in asked::rows::bindings() {
        let mut edition =
            |says: String| push(asked::BINDS, row.profile, super::parts::EDITION, says);
        row.permits.iter().for_each(|permit| edition(format!("permit {permit}")));
        row.gears.iter().for_each(|gear| edition(format!("gear {gear}")));
        for pair in row.days.windows(2) {
            match pair {
                [(_, false), (first, true)] => edition(format!("in force from {first}")),
                [(last, true), (_, false)] => edition(format!("in force until {last}")),
                _ => {}
            }
        }
    }
    pins
}

/// The Rust files of the tests: module and text.
pub(super) fn sources() -> Vec<(String, String)> {
    let root = run::home().join("tests/it");
    let mut sources = Vec::new();
    for entry in walkdir::WalkDir::new(&root).sort_by_file_name() {
        let path = entry.unwrap().into_path();
        if path.extension().is_some_and(|extension| extension == "rs") {
            sources.push((module(path.strip_prefix(&root).unwrap()), file(&path)));
        }
    }
    sources
}

fn module(path: &Path) -> String {
    let parts = path.with_extension("");
    let parts = parts.iter().map(|part| part.to_string_lossy().into_owned());
    parts.collect::<Vec<_>>().join("::")
}

fn file(path: &Path) -> String {
    std::fs::read_to_string(path).unwrap()
}

/// The names of all tests, `module::test`.
pub(super) fn tests(sources: &[(String, String)]) -> Vec<String> {
    let mut names = Vec::new();
    for (module, text) in sources {
        let lines: Vec<&str> = text.lines().map(str::trim).collect();
        for (at, _) in lines.iter().enumerate().filter(|(_, line)| **line == "#[test]") {
            names.extend(name_after(&lines[at..]).map(|name| format!("{module}::{name}")));
        }
    }
    names
}

/// The function that follows, with nothing but attributes and comments before.
fn name_after<'a>(lines: &[&'a str]) -> Option<&'a str> {
    let line = lines.iter().find(|line| !line.starts_with('#') && !line.starts_with("//"))?;
    let name = line.strip_prefix("fn ")?;
    name.split('(').next()
}

/// The lines `Pins:` beside the tests that are written out.
fn written() -> Vec<Pin> {
    let mut pins = Vec::new();
    for (module, text) in sources() {
        let lines: Vec<&str> = text.lines().map(str::trim).collect();
        for (at, line) in lines.iter().enumerate() {
            let Some(pinned) = line.strip_prefix("/// Pins: ") else { continue };
            let place = format!("tests/it/{}.rs:{}", module.replace("::", "/"), at + 1);
            let rest = &lines[at..];
            let end = rest.iter().position(|line| line.starts_with("fn ")).unwrap_or(0);
            assert!(
                rest[..end].contains(&"#[test]")
                    && rest[..end].iter().all(|l| l.starts_with("///") || l.starts_with('#')),
                "{place}: no #[test] follows the line `Pins:`"
            );
            let test = format!("{module}::{}", name_after(rest).unwrap());
            let (whose, parts) = pinned.split_once(": ").unwrap_or((pinned, "asked for"));
            let (profile, requirement) = whose
                .split_once('/')
                .unwrap_or_else(|| panic!("{place}: write it `Pins: PROFILE/REQUIREMENT: part`"));
            for part in parts.split("; ") {
                pins.push(Pin {
                    test: test.clone(),
                    profile: profile.into(),
                    requirement: requirement.into(),
                    holds: Holds::Words(part.trim().into()),
                    place: place.clone(),
                });
            }
        }
    }
    pins
}

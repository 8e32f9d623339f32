//! The page of coverage as text: a summary, a table for each rule, the tests.
//! It prints what the other files of this folder found and decides nothing.

use super::clauses::{Clause, Fate, Rule, verified};
use super::parts::{EDITION, Part};
use super::pins::Pin;
use super::shipped::Shipped;
use kitmuster::model::profile::{Profile, Requirement};
use std::collections::BTreeSet;
use std::fmt::Write as _;

const INTRODUCTION: &str = "\
# Which clause is encoded, and which test pins it

Every clause of every rule that Kitmuster knows, in the rule's own order: what
encodes it, which tests turn at its boundary, and whether its text was read.
What is not encoded stands here too, with the reason. It lists what was seen of
each rule, in a few words of our own, and is no copy of the law: check the
current text. Local rules, permits and the officer on the spot come first.

This page is generated from the profiles beside it, the list of clauses in
`tests/it/coverage/clauses.yaml` and the tests; a test compares it. To renew it:
`UPDATE_COVERAGE=1 cargo test --test it coverage::`, then read what changed.

- *encoded*: a requirement asks it, or the edition's own lines on whom it binds
  and when. *told*: no requirement, but a note of the profile or the techniques
  tell the reader. *not encoded*: neither, for the reason given below the table.
- *not read*: a number that must exist, of which no text was seen, or none under
  that number. Nothing is encoded from it.
- *verified*: how the clause was seen. `read` in the full text, `excerpt` in the
  opening of an agency's page, `inferred` from something read, `memory` not seen.
- `T1` and so on are the tests at the end. Each of them runs the real command on
  either side of what the clause asks.
- A clause with words behind its number (`635.21(c)(2)(iv), bait`) is a part of
  the text of that number.
- `edition` stands for the profile's own lines: whom it binds, on which days,
  from where freeboard is taken.
- Where a list begins above 4 ft of freeboard, the 6 ft beside 150 % of freeboard
  can never be the greater. No test can turn there, so it is not counted.
";

/// The page.
pub(super) fn page(shipped: &Shipped, rules: &[Rule], pins: &[Pin]) -> String {
    let tests: BTreeSet<&str> = pins.iter().map(|pin| pin.test.as_str()).collect();
    let writer = Writer { shipped, rules, pins, tests: tests.into_iter().collect() };
    let mut text = INTRODUCTION.to_owned();
    writer.summary(&mut text);
    rules.iter().for_each(|rule| writer.rule(rule, &mut text));
    writer.legend(&mut text);
    text
}

struct Writer<'a> {
    shipped: &'a Shipped,
    rules: &'a [Rule],
    pins: &'a [Pin],
    tests: Vec<&'a str>,
}

/// A table with its columns aligned, so that it reads as plain text too.
fn table(rows: &[Vec<String>], text: &mut String) {
    let columns = rows[0].len();
    let width = |of: usize| rows.iter().map(|row| row[of].chars().count()).max().unwrap_or(0);
    let widths: Vec<usize> = (0..columns).map(|of| width(of).max(3)).collect();
    text.push('\n');
    for (at, row) in rows.iter().enumerate() {
        for (cell, width) in row.iter().zip(&widths) {
            write!(text, "| {}{} ", cell, " ".repeat(width - cell.chars().count())).unwrap();
        }
        text.push_str("|\n");
        if at == 0 {
            widths.iter().for_each(|width| write!(text, "| {} ", "-".repeat(*width)).unwrap());
            text.push_str("|\n");
        }
    }
}

fn cells<const N: usize>(cells: [&str; N]) -> Vec<String> {
    cells.iter().map(|cell| (*cell).to_owned()).collect()
}

/// Words in lines of at most 80 columns; names with hyphens stay whole.
fn wrapped(words: &str, indent: &str) -> String {
    let options = textwrap::Options::new(80)
        .word_separator(textwrap::WordSeparator::AsciiSpace)
        .word_splitter(textwrap::WordSplitter::NoHyphenation)
        .subsequent_indent(indent);
    textwrap::fill(words, options)
}

/// A paragraph in lines of at most 80 columns.
fn paragraph(words: &str, text: &mut String) {
    writeln!(text, "\n{}", wrapped(words, "")).unwrap();
}

impl Writer<'_> {
    fn summary(&self, text: &mut String) {
        let mut rows = vec![cells([
            "profile",
            "clauses",
            "encoded",
            "told",
            "not encoded",
            "not read",
            "asked",
            "pinned",
        ])];
        let mut sums = [0; 7];
        for rule in self.rules {
            let parts = rule.parts(self.shipped);
            let count = |fate: Fate| rule.clauses.iter().filter(|c| c.fate(&parts) == fate).count();
            let pinned = parts.iter().filter(|(id, part)| {
                let profile = rule.profile.as_deref().unwrap_or_default();
                self.pins.iter().any(|pin| pin.covers(self.shipped, profile, id, part))
            });
            let counts = [
                rule.clauses.len(),
                count(Fate::Encoded),
                count(Fate::Told),
                count(Fate::NotEncoded),
                count(Fate::NotRead),
                parts.len(),
                pinned.count(),
            ];
            sums.iter_mut().zip(counts).for_each(|(sum, count)| *sum += count);
            let name = rule.profile.clone().unwrap_or_else(|| "no profile: 223.206(d)(1)".into());
            rows.push([name].into_iter().chain(counts.map(|count| count.to_string())).collect());
        }
        let all = ["all".to_owned()];
        rows.push(all.into_iter().chain(sums.map(|sum| sum.to_string())).collect());
        text.push_str("\n## In numbers\n");
        paragraph(
            "An edition that takes over the list of another counts its own clauses only. \
             *Asked* is every figure, word, number, condition and day that its requirements and \
             its own lines ask, *pinned* how many of them a test pins.",
            text,
        );
        table(&rows, text);
    }

    /// The tests of these parts, as their short names.
    fn tests_of(&self, profile: &str, parts: &[&(String, Part)]) -> String {
        let mut found = BTreeSet::new();
        for (requirement, part) in parts {
            let covers = |pin: &&Pin| pin.covers(self.shipped, profile, requirement, part);
            found.extend(self.pins.iter().filter(covers).map(|pin| pin.test.as_str()));
        }
        let short = |test: &&str| self.tests.iter().position(|one| one == test).unwrap() + 1;
        let found: Vec<String> = found.iter().map(|test| format!("T{}", short(test))).collect();
        if found.is_empty() { "-".into() } else { found.join(" ") }
    }

    fn rule(&self, rule: &Rule, text: &mut String) {
        writeln!(text, "\n## {}", rule.heading).unwrap();
        let profile = rule.profile(self.shipped);
        if let Some(profile) = profile {
            paragraph(&edition(profile), text);
        }
        let parts = rule.parts(self.shipped);
        let mut rows =
            vec![cells(["clause", "what it asks", "encoded by", "pinned by", "verified"])];
        let mut reasons: Vec<String> = Vec::new();
        for clause in &rule.clauses {
            rows.push(self.clause(rule, clause, &parts, &mut reasons));
        }
        table(&rows, text);
        for (at, reason) in reasons.iter().enumerate() {
            let line = format!("{}. {reason}", at + 1);
            let wrapped = wrapped(&line, "    ");
            writeln!(text, "{}{wrapped}", if at == 0 { "\n" } else { "" }).unwrap();
        }
        if let (Some(profile), Some(base)) = (profile, &rule.as_in) {
            self.taken_over(profile, self.shipped.profile(base), text);
        }
    }

    fn clause(
        &self,
        rule: &Rule,
        clause: &Clause,
        parts: &[(String, Part)],
        reasons: &mut Vec<String>,
    ) -> Vec<String> {
        let own = clause.parts(parts);
        let profile = rule.profile.as_deref().unwrap_or_default();
        let mut by: Vec<&str> = Vec::new();
        for (requirement, _) in &own {
            if !by.contains(&requirement.as_str()) {
                by.push(requirement);
            }
        }
        let many = by.join(", ").chars().count() > 38;
        let encoded = match clause.fate(parts) {
            Fate::NotRead => {
                return cells([&clause.clause, "-", "not read", "-", "-"]);
            }
            Fate::Encoded if many => {
                reasons.push(format!("`{}`: {}.", clause.clause, by.join(", ")));
                format!("{} requirements ({})", by.len(), reasons.len())
            }
            Fate::Encoded => by.join(", "),
            fate => {
                let told = clause.told(self.shipped);
                let reason = clause.not_encoded.clone().unwrap_or_default();
                let told = if told.is_empty() { told } else { format!("; {told}") };
                reasons.push(format!("`{}`: {reason}{told}.", clause.clause));
                let name = if fate == Fate::Told { "told" } else { "not encoded" };
                format!("{name} ({})", reasons.len())
            }
        };
        let tests = self.tests_of(profile, &own);
        vec![clause.clause.clone(), clause.asks.clone(), encoded, tests, clause.verified.clone()]
    }

    /// In what a requirement differs from the one that it was made of.
    fn differs(
        &self,
        (profile, one): (&Profile, &Requirement),
        (base, other): (&Profile, &Requirement),
    ) -> String {
        let new = self.shipped.words_of(profile, one);
        let old = self.shipped.words_of(base, other);
        let added = new.iter().filter(|part| !old.contains(part)).map(|part| format!("+ {part}"));
        let gone = old.iter().filter(|part| !new.contains(part)).map(|part| format!("- {part}"));
        let differs: Vec<String> = added.chain(gone).collect();
        match differs.len() {
            0 if one.clause != other.clause => "its clause".into(),
            0 if one.verified != other.verified => "how it was verified".into(),
            0..=2 => differs.join("; "),
            _ => "written anew".into(),
        }
    }

    /// What an edition takes over from the one that it is built on, and how it
    /// differs.
    fn taken_over(&self, profile: &Profile, base: &Profile, text: &mut String) {
        let find = |id: &str| base.requirements.iter().find(|one| one.id == id);
        let mut same = Vec::new();
        let mut rows =
            vec![cells(["requirement", "clause", "differs in", "pinned by", "verified"])];
        for requirement in &profile.requirements {
            let differs = match find(&requirement.id) {
                None => "added here".to_owned(),
                Some(of_base) => self.differs((profile, requirement), (base, of_base)),
            };
            if differs.is_empty() {
                same.push(requirement.id.as_str());
                continue;
            }
            let parts: Vec<(String, Part)> = self
                .shipped
                .parts_of(profile, requirement)
                .into_iter()
                .map(|part| (requirement.id.clone(), part))
                .collect();
            rows.push(vec![
                requirement.id.clone(),
                requirement.clause.clone(),
                differs,
                self.tests_of(&profile.id, &parts.iter().collect::<Vec<_>>()),
                verified(requirement.verified).into(),
            ]);
        }
        let kept = |id: &str| profile.requirements.iter().any(|one| one.id == id);
        let gone: Vec<&str> =
            base.requirements.iter().map(|one| one.id.as_str()).filter(|id| !kept(id)).collect();
        let mut words =
            format!("As in `{}`, with its clauses and tests: {}.", base.id, same.join(", "));
        if !gone.is_empty() {
            write!(words, " Not asked here: {}.", gone.join(", ")).unwrap();
        }
        paragraph(&words, text);
        if rows.len() > 1 {
            table(&rows, text);
        }
    }

    /// Whether the pin's own edition asks what it holds.
    fn holds(&self, pin: &Pin) -> bool {
        let profile = self.shipped.profile(&pin.profile);
        let mut parts = self.shipped.parts(profile).into_iter();
        parts.any(|(id, part)| pin.covers(self.shipped, &pin.profile, &id, &part))
    }

    fn legend(&self, text: &mut String) {
        text.push_str("\n## The tests\n");
        paragraph(
            "Under `tests/it/`. `cargo test --test it NAME` runs one of them. *Pins* is how many \
             rows of its table, or lines beside it, say what it pins.",
            text,
        );
        let mut rows = vec![cells(["", "pins", "test"])];
        for (at, test) in self.tests.iter().enumerate() {
            let pins = self.pins.iter().filter(|pin| pin.test == *test && self.holds(pin)).count();
            rows.push(vec![format!("T{}", at + 1), pins.to_string(), (*test).to_owned()]);
        }
        table(&rows, text);
    }
}

/// An edition in a sentence.
fn edition(profile: &Profile) -> String {
    let days = match (profile.in_force.from, profile.in_force.until) {
        (Some(from), Some(until)) => format!("in force from {from} to {until}"),
        (Some(from), None) => format!("in force from {from}"),
        (None, Some(until)) => format!("in force until {until}"),
        (None, None) => "without days in force".into(),
    };
    let mut words =
        format!("`{}`, encoding {}: {}; {days}.", profile.id, profile.encoding, profile.edition);
    if !profile.encoded {
        words.push_str(" Known, not encoded: a vessel that it binds is *can't tell*.");
    }
    if profile.base {
        words.push_str(" A list that others build on; it binds nobody by itself.");
    }
    let of_edition = super::parts::of_edition(profile);
    if of_edition.is_empty() {
        return words;
    }
    let says: Vec<String> = of_edition.into_iter().map(|part| part.says).collect();
    write!(words, " Under `{EDITION}`: {}.", says.join(", ")).unwrap();
    words
}

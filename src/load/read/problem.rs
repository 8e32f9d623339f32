//! What is wrong in a file: where, what, what was expected, how to mend it.
//!
//! Imports `model` only. Nothing here is printed; the command line does that.

use crate::load::read::fault::Fault;
use crate::model::place::Place;
use crate::model::text::visible;
use std::cell::RefCell;
use std::sync::Arc;

/// A line and a column, both counted from one.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Position {
    /// The line.
    pub line: usize,
    /// The column, in characters.
    pub column: usize,
}

/// One thing that is wrong in a file.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Problem {
    /// The file and the key path in it.
    pub place: Place,
    /// The line and column, where they are known.
    pub position: Option<Position>,
    /// The offending text.
    pub offending: Option<String>,
    /// What is wrong.
    pub fault: Fault,
    /// All that could stand there, where these are few.
    pub known: Vec<String>,
    /// What may be meant.
    pub meant: Option<String>,
}

/// A file, or a set of files, that is refused, with everything that is wrong.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("{}", self.told())]
pub struct Refusal {
    /// The file's name as it was given.
    pub file: String,
    /// Everything that is wrong, by file and position; at least one.
    pub problems: Vec<Problem>,
}

/// What was read, or what is wrong with it.
pub(crate) type Told<T> = Result<T, Box<Problem>>;

/// The most problems that are told of one file or set of files. Whoever
/// mends so many finds the rest on the next run.
pub const MOST_PROBLEMS: usize = 200;

/// The longest offending text that is shown, in characters.
const LONGEST_SHOWN: usize = 60;

impl Problem {
    /// A problem at a place; the rest is added below.
    pub(crate) fn new(place: Place, fault: Fault) -> Self {
        Self { place, position: None, offending: None, fault, known: Vec::new(), meant: None }
    }

    /// With the text that offends, cut to a line's length.
    pub(crate) fn offending(mut self, text: &str) -> Self {
        let mut shown: String = text.chars().take(LONGEST_SHOWN).collect();
        if text.chars().count() > LONGEST_SHOWN {
            shown.push('…');
        }
        self.offending = Some(visible(&shown));
        self
    }

    /// With what may be meant.
    pub(crate) fn meant(mut self, word: Option<&str>) -> Self {
        self.meant = word.map(str::to_owned);
        self
    }

    /// As the outcome of a reading that failed.
    pub(crate) fn refused<T>(self) -> Told<T> {
        Err(Box::new(self))
    }

    /// With a line and column.
    pub(crate) fn at(mut self, position: Position) -> Self {
        self.position = Some(position);
        self
    }
}

impl Refusal {
    /// A refusal of `file` for these reasons, sorted and each told once.
    pub(crate) fn new(file: &str, mut problems: Vec<Problem>) -> Self {
        let rank = |p: &Problem| (&*p.place.file != file, Arc::clone(&p.place.file));
        problems.sort_by(|a, b| {
            (rank(a), a.position, &a.place.key)
                .cmp(&(rank(b), b.position, &b.place.key))
                // What is found with each of several profiles stands together.
                .then_with(|| format!("{:?}", a.fault).cmp(&format!("{:?}", b.fault)))
        });
        problems.dedup();
        if problems.len() > MOST_PROBLEMS {
            problems.truncate(MOST_PROBLEMS);
            let place = Place::new(&file.into(), "");
            problems.push(Problem::new(place, Fault::MoreProblems(MOST_PROBLEMS)));
        }
        Self { file: file.to_owned(), problems }
    }

    /// A refusal of a file for what is wrong with all of it.
    pub(crate) fn whole(file: &str, fault: Fault) -> Self {
        Self::new(file, vec![Problem::new(Place::new(&file.into(), ""), fault)])
    }

    /// A refusal of a file over which the program itself failed.
    pub fn of_program(file: &str) -> Self {
        Self::whole(file, Fault::ProgramFailed)
    }

    fn told(&self) -> String {
        let lines: Vec<String> = self.problems.iter().map(Problem::to_string).collect();
        lines.join("\n")
    }
}

/// Problems as a check finds them, before they are placed.
#[derive(Debug, Default)]
pub(crate) struct Problems {
    found: RefCell<Vec<(Problem, Aim)>>,
}

/// What of a line a problem points at.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Aim {
    /// What stands after the key.
    Value,
    /// The key itself.
    Key,
    /// A group that lacks one of these keys; not told where one of them was
    /// written and cut out.
    OneOf(&'static [&'static str]),
}

impl Problems {
    /// Adds one that points at the value.
    pub(crate) fn add(&self, problem: Problem) {
        self.found.borrow_mut().push((problem, Aim::Value));
    }

    /// Begins one at a place; it is added when it is told.
    pub(crate) fn wrong(&self, place: Place, fault: Fault) -> Wrong<'_> {
        Wrong { problem: Problem::new(place, fault), aim: Aim::Value, problems: self }
    }

    /// How many there are.
    pub(crate) fn count(&self) -> usize {
        self.found.borrow().len()
    }

    /// Whether there are more than are told, so that looking on is idle.
    pub(crate) fn is_full(&self) -> bool {
        self.count() > MOST_PROBLEMS
    }

    /// Everything that was found.
    pub(crate) fn into_found(self) -> Vec<(Problem, Aim)> {
        self.found.into_inner()
    }
}

/// A problem in the making, of one file's check.
#[must_use]
pub(crate) struct Wrong<'a> {
    problem: Problem,
    aim: Aim,
    problems: &'a Problems,
}

impl Wrong<'_> {
    /// With the text that offends.
    pub(crate) fn of(mut self, text: &str) -> Self {
        self.problem = self.problem.offending(text);
        self
    }

    /// With what may be meant.
    pub(crate) fn meant(mut self, word: Option<&str>) -> Self {
        self.problem = self.problem.meant(word);
        self
    }

    /// Of a text that is none of these, with the one that may be meant.
    pub(crate) fn unlike<'t>(self, text: &str, known: impl IntoIterator<Item = &'t str>) -> Self {
        self.of(text).meant(nearest(text, known))
    }

    /// With all that could stand here.
    pub(crate) fn one_of(mut self, known: &[&str]) -> Self {
        self.problem.known = known.iter().map(|word| (*word).to_owned()).collect();
        self
    }

    /// Of a text that is none of these, which are all told.
    pub(crate) fn none_of<'t>(self, text: &str, known: impl IntoIterator<Item = &'t str>) -> Self {
        let known: Vec<&str> = known.into_iter().collect();
        self.one_of(&known).unlike(text, known)
    }

    /// Pointing at the key, not at what stands after it.
    pub(crate) fn at_key(mut self) -> Self {
        self.aim = Aim::Key;
        self
    }

    /// Of a group that lacks one of these keys.
    pub(crate) fn lacking(mut self, keys: &'static [&'static str]) -> Self {
        self.aim = Aim::OneOf(keys);
        self
    }

    /// Adds it.
    pub(crate) fn tell(self) {
        self.problems.found.borrow_mut().push((self.problem, self.aim));
    }

    /// Adds it, where nothing could be read.
    pub(crate) fn none<T>(self) -> Option<T> {
        self.tell();
        None
    }

    /// The problem itself, not added.
    pub(crate) fn refused<T>(self) -> Told<T> {
        Err(self.into())
    }
}

impl From<Wrong<'_>> for Box<Problem> {
    fn from(wrong: Wrong<'_>) -> Self {
        Self::new(wrong.problem)
    }
}

/// The nearest of the candidates, if it is near enough to be meant: by its
/// spelling, else by the words that it shares.
pub(crate) fn nearest<'a>(
    given: &str,
    candidates: impl IntoIterator<Item = &'a str>,
) -> Option<&'a str> {
    // Where a word is refused in spite of how it is spelled, it is no answer.
    let candidates: Vec<&str> =
        candidates.into_iter().filter(|candidate| *candidate != given.trim()).collect();
    let given = given.trim().to_lowercase();
    let limit = (given.chars().count() / 3).clamp(1, 3);
    let by_spelling = nearest_within(&given, candidates.iter().copied(), limit);
    by_spelling.or_else(|| nearest_by_words(&given, &candidates))
}

/// The candidate that shares the most words of several, at least half of
/// them; among equals the one with the fewest others.
fn nearest_by_words<'a>(given: &str, candidates: &[&'a str]) -> Option<&'a str> {
    let wanted = words(given);
    if wanted.len() < 2 {
        return None;
    }
    let shared = |candidate: &&str| {
        let own = words(candidate);
        let both = wanted.iter().filter(|word| own.contains(word)).count();
        (both, std::cmp::Reverse(own.len()))
    };
    let best = candidates.iter().rev().copied().max_by_key(shared)?;
    (shared(&best).0 * 2 >= wanted.len()).then_some(best)
}

/// The words that say something, in lower case and the singular.
fn words(text: &str) -> Vec<String> {
    let parts = text.split(|c: char| !c.is_alphanumeric()).map(str::to_lowercase);
    let parts = parts.map(|word| word.strip_suffix('s').unwrap_or(&word).to_owned());
    parts.filter(|word| word.len() > 2 && !["the", "and", "for"].contains(&word.as_str())).collect()
}

/// The nearest of the candidates within `limit` strokes of the pen.
pub(crate) fn nearest_within<'a>(
    given: &str,
    candidates: impl IntoIterator<Item = &'a str>,
    limit: usize,
) -> Option<&'a str> {
    let mut best: Option<(usize, &str)> = None;
    let length = given.chars().count();
    // Lengths that differ by more are further apart than that, and comparing
    // words takes as long as both are.
    let near = |word: &&str| word.chars().count().abs_diff(length) <= limit;
    for candidate in candidates.into_iter().filter(near) {
        let distance = strsim::osa_distance(given, &candidate.to_lowercase());
        if distance <= limit && best.is_none_or(|(least, _)| distance < least) {
            best = Some((distance, candidate));
        }
    }
    best.map(|(_, candidate)| candidate)
}

/// How far a tag may be from a known one and still be taken for a slip: two
/// strokes, or one in a word of up to four letters.
pub(crate) fn slip_of<'a>(
    given: &str,
    candidates: impl IntoIterator<Item = &'a str>,
) -> Option<&'a str> {
    let limit = if given.chars().count() <= 4 { 1 } else { 2 };
    nearest_within(&given.to_lowercase(), candidates, limit)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::measure::{QuantityError, QuantityKind};

    #[test]
    fn a_problem_tells_where_what_and_how_to_mend_it() {
        let place = Place::new(&"a.yaml".into(), "kit[0].handle");
        let (error, meant) = (QuantityError::NoUnit, vec!["6 degrees".to_owned()]);
        let fault = Fault::NoFigure { error, kind: QuantityKind::Angle, meant };
        let problem =
            Problem::new(place, fault).offending("6\u{1b}[31m").at(Position { line: 3, column: 9 });
        assert_eq!(
            problem.to_string(),
            "a.yaml:3:9: kit[0].handle: `6\\u{1b}[31m`: a figure without its unit; \
             expected an angle with its unit, like `10 degrees`; write `6 degrees`"
        );
    }

    #[test]
    fn problems_are_told_in_the_order_of_the_file_and_once() {
        let at = |line, key: &str| {
            Problem::new(Place::new(&"a.yaml".into(), key), Fault::Empty)
                .at(Position { line, column: 1 })
        };
        let refusal = Refusal::new("a.yaml", vec![at(9, "z"), at(2, "a"), at(9, "z")]);
        let lines: Vec<_> =
            refusal.problems.iter().filter_map(|p| p.position).map(|p| p.line).collect();
        assert_eq!(lines, [2, 9]);
    }
}

#[cfg(test)]
mod suggest_tests {
    use super::*;

    #[test]
    fn a_slip_finds_its_word_and_a_stranger_finds_none() {
        let words = ["handle", "overall", "reach"];
        assert_eq!(nearest("hadnle", words), Some("handle"));
        assert_eq!(nearest("Handel", words), Some("handle"));
        assert_eq!(nearest("colour", words), None);
        let kinds = ["bolt-cutters", "line-cutters", "dip-net", "long-line-cutter"];
        assert_eq!(nearest("heavy duty bolt cutter", kinds), Some("bolt-cutters"));
        assert_eq!(nearest("long pole line cutter", kinds), Some("long-line-cutter"));
        assert_eq!(nearest("landing net", kinds), Some("dip-net"));
        assert_eq!(nearest("spare fuel can", kinds), None);
        assert_eq!(nearest("net", kinds), None);
        // What was written is no answer to itself, and hides none that is.
        assert_eq!(nearest(" handle ", ["handle", "handles"]), Some("handles"));
        assert_eq!(nearest("dip-net", ["dip-net"]), None);
        assert_eq!(slip_of("gulf", ["golf"]), Some("golf"));
        assert_eq!(slip_of("gulf", ["gilt"]), None);
    }
}

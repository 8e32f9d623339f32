//! A refused file in print: where, what, what was expected, how to mend it.
//!
//! Imports `load` for the refusal alone. Opens no file.

use super::content::{Block, Item, Lead, Tone};
use super::render::lines::Page;
use super::words::locale::desk;
use super::words::problems::Wording;
use crate::load::{Problem, Refusal};

/// How far what follows a problem's first line stands in.
const INDENT: usize = 4;

/// Everything that is wrong in all of the files, no wider than `width`.
pub fn refusals(refusals: &[Refusal], width: usize) -> String {
    all(refusals, desk::problems_nothing_checked(), width)
}

/// The slips of profiles, which are used all the same.
pub fn slips(slips: &Refusal, width: usize) -> String {
    all(std::slice::from_ref(slips), desk::problems_used_as_written(), width)
}

/// The same, with what came of it.
pub(super) fn all(refusals: &[Refusal], so: &str, width: usize) -> String {
    let mut page = Page::new(width);
    let mut count = 0usize;
    for refusal in refusals {
        for problem in &refusal.problems {
            write(&mut page, refusal, problem);
            count += 1;
        }
    }
    page.gap();
    page.prose(0, Tone::Plain, &desk::problems(count, &so));
    page.finish()
}

/// One line about how the program was called, with the way to mend it.
pub fn usage(what: &str, mend: &str, width: usize) -> String {
    let mut page = Page::new(width);
    page.prose(0, Tone::Bad, what);
    if !mend.is_empty() {
        page.prose(INDENT, Tone::Plain, mend);
    }
    page.finish()
}

/// The first thing that is wrong in a file, and how many more there are, for
/// a list in which other things matter too.
pub(super) fn first(refusal: &Refusal) -> Option<Block> {
    let first = refusal.problems.first()?;
    let below = match (refusal.problems.len() - 1, first.wording().mend) {
        (0, None) => None,
        (0, Some(mend)) => Some(desk::problem_mend(&mend)),
        (more, _) => Some(desk::problem_more(more)),
    };
    let below = below.map(|text| Block::Paragraph(text.into())).into_iter().collect();
    let headline = headline(refusal, first);
    Some(Item::new(Lead::Bullet(Tone::Bad), headline).with(below).into())
}

/// Everything that is wrong in a file, problem by problem.
pub(super) fn each(refusal: &Refusal) -> Vec<Block> {
    let item = |problem: &Problem| {
        let below = told(problem).into_iter().map(|text| Block::Paragraph(text.into()));
        Item::new(Lead::Bullet(Tone::Bad), headline(refusal, problem)).with(below.collect()).into()
    };
    refusal.problems.iter().map(item).collect()
}

fn write(page: &mut Page, refusal: &Refusal, problem: &Problem) {
    page.prose(0, Tone::Bad, &headline(refusal, problem));
    for text in told(problem) {
        page.prose(INDENT, Tone::Plain, &text);
    }
}

/// What was expected, and how to mend it.
fn told(problem: &Problem) -> Vec<String> {
    let Wording { expected, mend, .. } = problem.wording();
    let expected = expected.map(|what| desk::problem_expected(&what));
    expected.into_iter().chain(mend.map(|how| desk::problem_mend(&how))).collect()
}

/// Where and what.
fn headline(refusal: &Refusal, problem: &Problem) -> String {
    let file: &str =
        if problem.place.file.is_empty() { &refusal.file } else { &problem.place.file };
    let place = match (problem.position, problem.place.key.as_str()) {
        (Some(position), _) => format!("{file}:{}:{}:", position.line, position.column),
        (None, "") => format!("{file}:"),
        (None, key) => format!("{file}: {key}:"),
    };
    let what = match &problem.offending {
        Some(offending) => format!("{}: `{offending}`", problem.wording().what),
        None => problem.wording().what,
    };
    format!("{place} {what}")
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::load::{Fault, Position};
    use crate::measure::{QuantityError, QuantityKind};
    use crate::model::place::Place;

    fn plain(text: &str) -> String {
        anstream::adapter::strip_str(text).to_string()
    }

    fn problem(file: &str, offending: &str) -> Problem {
        Problem {
            place: Place::new(&file.into(), "kit[0].handle"),
            position: Some(Position { line: 12, column: 13 }),
            offending: Some(offending.to_owned()),
            fault: Fault::NoFigure {
                error: QuantityError::NoUnit,
                kind: QuantityKind::Angle,
                meant: vec!["6 degrees".to_owned()],
            },
            known: Vec::new(),
            meant: None,
        }
    }

    #[test]
    fn a_problem_tells_where_what_and_how_to_mend_it() {
        let refusal = Refusal { file: "a.yaml".into(), problems: vec![problem("a.yaml", "6")] };
        assert_eq!(
            plain(&refusals(&[refusal], 80)),
            "a.yaml:12:13: a figure without its unit: `6`\n    \
             expected an angle with its unit, like `10 degrees`\n    \
             mend: write `6 degrees`\n\n1 problem; nothing was checked\n"
        );
    }

    #[test]
    fn of_a_unit_that_is_unknown_the_known_ones_are_told() {
        for (kind, told) in [
            (QuantityKind::Length, "mend: write it in ft and in, fathoms, m, cm or mm"),
            (QuantityKind::Mass, "mend: write it in lb, kg or g"),
        ] {
            let error = QuantityError::UnknownUnit("stone".into());
            let fault = Fault::NoFigure { error, kind, meant: Vec::new() };
            let problems = vec![Problem { fault, ..problem("a.yaml", "6 stone") }];
            let text = plain(&refusals(&[Refusal { file: "a.yaml".into(), problems }], 80));
            assert!(text.contains(told), "{told}: {text}");
        }
    }

    #[test]
    fn a_hostile_file_cannot_steer_the_terminal_or_widen_the_page() {
        let name = "\u{1b}]0;x\u{7}.yaml";
        let offending = format!("\u{9b}2J{}", "y".repeat(200));
        let refusal = Refusal { file: name.into(), problems: vec![problem(name, &offending)] };
        let text = plain(&refusals(&[refusal], 60));
        assert!(!text.contains(['\u{1b}', '\u{7}', '\u{9b}']), "{text:?}");
        assert!(text.lines().all(|line| line.chars().count() <= 60), "{text}");
    }

    #[test]
    fn a_place_without_a_line_names_its_key() {
        let mut without = problem("a.yaml", "6");
        without.position = None;
        let refusal = Refusal { file: "a.yaml".into(), problems: vec![without.clone(), without] };
        let text = plain(&refusals(&[refusal], 80));
        assert!(text.starts_with("a.yaml: kit[0].handle: a figure"), "{text}");
        assert!(text.ends_with("2 problems; nothing was checked\n"), "{text}");
    }
}

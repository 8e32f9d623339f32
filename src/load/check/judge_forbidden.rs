//! Whether a choice leads to what is never done: a prohibition of the file
//! that names one of its acts, or one of the technique's own.
//!
//! Imports `model`. Judges by the cases that a situation really answers: one
//! that gives way to another does not lead anywhere in the cases of both.

use crate::load::check::judge_practice::{choice_text, in_words};
use crate::load::read::problem::{Problem, Problems};
use crate::model::technique::{Case, Pattern, Practice, Situation};
use crate::model::text::visible;

/// What must not be: a line of the file's `nevers` (by index), or one of a
/// technique's `never with` (both by index).
#[derive(Clone, Copy, PartialEq, Eq)]
enum Forbidden {
    /// By the file.
    Act(usize),
    /// By the technique.
    With(usize, usize),
}

/// Judges every choice. `answered` are the cases (by index) that each
/// situation answers.
pub(crate) fn judge_forbidden(
    practice: &Practice,
    cases: &[Case],
    answered: &[Vec<usize>],
    problems: &mut Problems,
) {
    let forbidden = (0..practice.techniques.len()).map(|one| forbidden(practice, one)).collect();
    let mut judge = Judge { practice, forbidden, problems };
    for (situation, answered) in practice.situations.iter().zip(answered) {
        let cases: Vec<&Case> = answered.iter().map(|case| &cases[*case]).collect();
        judge.situation(situation, &cases);
    }
    for situation in &practice.along {
        let fitting = cases.iter().filter(|case| situation.when.fits(case));
        judge.situation(situation, &fitting.collect::<Vec<_>>());
    }
}

struct Judge<'a> {
    practice: &'a Practice,
    /// What forbids something of each technique, and where.
    forbidden: Vec<Vec<(Forbidden, &'a Pattern)>>,
    problems: &'a mut Problems,
}

impl<'a> Judge<'a> {
    fn situation(&mut self, situation: &Situation, cases: &[&Case]) {
        for (index, choice) in situation.choices.iter().enumerate() {
            let mut told = Vec::new();
            for technique in choice {
                // Looking on is idle where more is wrong than is told.
                if self.problems.is_full() {
                    return;
                }
                for (forbidden, pattern) in self.forbidden[*technique].clone() {
                    let found = cases.iter().find(|case| pattern.fits(case));
                    if let Some(case) = found.filter(|_| !told.contains(&forbidden)) {
                        told.push(forbidden);
                        let place = situation.place.below("choices").entry(index);
                        let what = self.what(*technique, forbidden, case);
                        self.problems.add(
                            Problem::new(place, what)
                                .offending(&choice_text(self.practice, choice))
                                .expected("a choice that leads to nothing that is never done")
                                .mend("take the choice away, or narrow `when` of the situation"),
                        );
                    }
                }
            }
        }
    }

    /// What is wrong, in words.
    fn what(&self, technique: usize, forbidden: Forbidden, case: &Case) -> String {
        let one = &self.practice.techniques[technique];
        let case = in_words(self.practice, case);
        match forbidden {
            Forbidden::Act(never) => {
                let never = &self.practice.nevers[never];
                let act = never.acts.iter().find(|act| one.acts.contains(act));
                let act = act.map(|act| self.practice.acts[*act].id.as_str()).unwrap_or_default();
                let says = visible(never.says.main.trim_end_matches('.'));
                format!("`{}` is forbidden by its act `{act}` in the case {case}: {says}", one.id)
            }
            Forbidden::With(_, index) => {
                let pattern = self.pattern_text(&one.never_with[index]);
                format!("`{}` is never used with `{pattern}`, as in the case {case}", one.id)
            }
        }
    }

    /// A pattern as it is written, each fact with its words.
    fn pattern_text(&self, pattern: &Pattern) -> String {
        let parts = pattern.0.iter().map(|(fact, words)| {
            let fact = &self.practice.facts[*fact];
            let words = words.iter().map(|word| fact.words[*word].word.as_str());
            format!("{}: {}", fact.id, words.collect::<Vec<_>>().join(" or "))
        });
        parts.collect::<Vec<_>>().join(", ")
    }
}

/// What forbids something of a technique, and where.
fn forbidden(practice: &Practice, technique: usize) -> Vec<(Forbidden, &Pattern)> {
    let one = &practice.techniques[technique];
    let nevers = practice.nevers.iter().enumerate();
    let by_file = nevers
        .filter(|(_, never)| never.acts.iter().any(|act| one.acts.contains(act)))
        .map(|(index, never)| (Forbidden::Act(index), &never.when));
    let own = one.never_with.iter().enumerate();
    let by_itself = own.map(|(index, when)| (Forbidden::With(technique, index), when));
    by_file.chain(by_itself).collect()
}

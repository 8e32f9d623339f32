//! Whether the parts of a file of techniques fit together: every case has
//! one answer, nothing stands there in vain, and the last choice always ends
//! in the line cut.
//!
//! Imports `model`. What is never done is judged by the cases that a situation
//! really answers: one that gives way to another leads nowhere in the cases of
//! both.

use crate::load::read::fault::Fault;
use crate::load::read::problem::Problems;
use crate::load::read::spot::Spot;
use crate::model::technique::{Case, GivenBy, Pattern, Practice, Situation};
use crate::model::text::visible;

/// The most cases that the words of the facts may make together.
const MOST_CASES: usize = 20_000;

/// The most choices of all situations together: every one is judged for every
/// vessel.
const MOST_CHOICES: usize = 500;

/// Judges a practice whose parts could all be read.
pub(crate) fn judge_practice(practice: &Practice, top: &Spot<'_>) {
    let problems = top.problems();
    judge_uses(practice, top);
    judge_last_choices(practice, problems);
    judge_order(practice, problems);
    let choices = practice.situations.iter().chain(&practice.along);
    let choices: usize = choices.map(|situation| situation.choices.len()).sum();
    if choices > MOST_CHOICES {
        let fault = Fault::TooManyChoices { choices, most: MOST_CHOICES };
        return top.key("situations").wrong(fault).tell();
    }
    let number = practice.facts.iter().map(|fact| fact.words.len());
    let number = number.fold(1_usize, usize::saturating_mul);
    if number > MOST_CASES {
        let fault = Fault::TooManyCases { cases: number, most: MOST_CASES };
        return top.key("facts").wrong(fault).tell();
    }
    let cases = practice.cases();
    let answered = judge_answers(practice, &cases, top);
    judge_forbidden(practice, &cases, &answered, problems);
}

/// A case in the words in which one is put.
fn in_words(practice: &Practice, case: &[usize]) -> String {
    let words = practice.facts.iter().zip(case).map(|(fact, word)| fact.words[*word].word.as_str());
    words.collect::<Vec<_>>().join(", ")
}

/// A choice as it is written.
fn choice_text(practice: &Practice, choice: &[usize]) -> String {
    let ids = choice.iter().map(|one| practice.techniques[*one].id.as_str());
    ids.collect::<Vec<_>>().join(", then ")
}

/// Judges that every technique is a choice and every capability is needed.
fn judge_uses(practice: &Practice, top: &Spot<'_>) {
    let problems = top.problems();
    let choices = practice.situations.iter().chain(&practice.along).flat_map(|s| &s.choices);
    let chosen: Vec<usize> = choices.flatten().copied().collect();
    for (index, one) in practice.techniques.iter().enumerate() {
        if !chosen.contains(&index) {
            problems.wrong(one.place.below("id"), Fault::IdleTechnique).of(&one.id).tell();
        }
    }
    let rails = top.key("low rails");
    let is_tools = |given: &GivenBy| matches!(given, GivenBy::Tools(_));
    let tools = practice.capabilities.iter().filter(|one| is_tools(&one.given_by)).count();
    for (index, one) in practice.capabilities.iter().enumerate() {
        if practice.techniques.iter().any(|technique| technique.needs.contains(&index)) {
            continue;
        }
        let place = match &one.given_by {
            GivenBy::Tools(requirement) => requirement.place.clone(),
            GivenBy::LowRail { .. } => rails.entry(index - tools).place(),
        };
        problems.wrong(place.below("id"), Fault::IdleCapability).of(&one.id).tell();
    }
}

/// Judges that each situation ends in the line cut, which is the last resort.
fn judge_last_choices(practice: &Practice, problems: &Problems) {
    for situation in &practice.situations {
        let Some((last, before)) = situation.choices.split_last() else { continue };
        if last.last().is_some_and(|technique| practice.techniques[*technique].cuts_line) {
            continue;
        }
        let place = situation.place.below("choices").entry(before.len());
        problems.wrong(place, Fault::NoLineCut).of(&choice_text(practice, last)).tell();
    }
}

/// Judges that of each two situations that fit one case, one goes before the
/// other, and that nothing else is put in an order.
fn judge_order(practice: &Practice, problems: &Problems) {
    let all = &practice.situations;
    for (index, one) in all.iter().enumerate() {
        for (line, other) in one.goes_before.iter().enumerate() {
            let fault = if *other == index {
                Fault::BeforeItself
            } else if one.when.meets(&all[*other].when) {
                continue;
            } else {
                Fault::NothingToDecide
            };
            let place = one.place.below("goes before").entry(line);
            problems.wrong(place, fault).of(&all[*other].id).tell();
        }
        for (earlier, other) in all[..index].iter().enumerate() {
            if one.when.meets(&other.when) {
                judge_pair(practice, (index, one), (earlier, other), problems);
            }
        }
    }
}

/// Judges the order of two situations that fit some of the same cases.
fn judge_pair(
    practice: &Practice,
    (index, one): (usize, &Situation),
    (earlier, other): (usize, &Situation),
    problems: &Problems,
) {
    let case = in_words(practice, &common_case(practice, one, other));
    let twin = other.id.clone();
    let (key, fault) =
        match (one.goes_before.contains(&earlier), other.goes_before.contains(&index)) {
            (true, false) | (false, true) => return,
            (false, false) => ("when", Fault::NoOrder { one: one.id.clone(), other: twin, case }),
            (true, true) => ("goes before", Fault::OrderInTurn { other: twin, case }),
        };
    problems.wrong(one.place.below(key), fault).of(&one.id).tell();
}

/// A case that both fit: of each fact the first word that both allow.
fn common_case(practice: &Practice, one: &Situation, other: &Situation) -> Case {
    let open = |situation: &Situation, fact: usize, word: usize| {
        situation.when.words(fact).is_none_or(|words| words.contains(&word))
    };
    let facts = practice.facts.iter().enumerate().map(|(index, fact)| {
        let both = |word: &usize| open(one, index, *word) && open(other, index, *word);
        (0..fact.words.len()).find(both).unwrap_or_default()
    });
    facts.collect()
}

/// The cases (by index) that each situation answers. Judges that every case
/// is answered.
fn judge_answers(practice: &Practice, cases: &[Case], top: &Spot<'_>) -> Vec<Vec<usize>> {
    let mut answered = vec![Vec::new(); practice.situations.len()];
    let (mut open, mut unled) = (Vec::new(), None);
    for (index, case) in cases.iter().enumerate() {
        match practice.situation_of(case) {
            Some(situation) => answered[situation].push(index),
            None if practice.situations.iter().any(|one| one.when.fits(case)) => {
                unled.get_or_insert(case);
            }
            None => open.push(case),
        }
    }
    if let Some(first) = open.first() {
        let first = in_words(practice, first);
        top.wrong_key("situations", Fault::Unanswered { cases: open.len(), first }).tell();
    }
    // Two by two they are in order, all together they are not.
    if let Some(case) = unled.filter(|case| is_circle(practice, case)) {
        let fit = practice.situations.iter().filter(|one| one.when.fits(case));
        let situations = fit.map(|one| one.id.clone()).collect();
        let fault = Fault::OrderInCircle { situations, case: in_words(practice, case) };
        top.wrong_key("situations", fault).tell();
    }
    answered
}

/// Whether the order of each two situations that fit the case is decided.
fn is_circle(practice: &Practice, case: &[usize]) -> bool {
    let all = &practice.situations;
    let fit: Vec<usize> = (0..all.len()).filter(|one| all[*one].when.fits(case)).collect();
    let decided = |one: usize, other: usize| {
        all[one].goes_before.contains(&other) != all[other].goes_before.contains(&one)
    };
    fit.iter().all(|one| fit.iter().all(|other| one == other || decided(*one, *other)))
}

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
fn judge_forbidden(
    practice: &Practice,
    cases: &[Case],
    answered: &[Vec<usize>],
    problems: &Problems,
) {
    let forbidden = (0..practice.techniques.len()).map(|one| forbidden(practice, one)).collect();
    let judge = Judge { practice, forbidden, problems };
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
    problems: &'a Problems,
}

impl<'a> Judge<'a> {
    fn situation(&self, situation: &Situation, cases: &[&Case]) {
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
                        let fault = self.fault(*technique, forbidden, case);
                        let choice = choice_text(self.practice, choice);
                        self.problems.wrong(place, fault).of(&choice).tell();
                    }
                }
            }
        }
    }

    /// What is wrong.
    fn fault(&self, technique: usize, forbidden: Forbidden, case: &Case) -> Fault {
        let one = &self.practice.techniques[technique];
        let case = in_words(self.practice, case);
        match forbidden {
            Forbidden::Act(never) => {
                let never = &self.practice.nevers[never];
                let act = never.acts.iter().find(|act| one.acts.contains(act));
                let act = act.map(|act| self.practice.acts[*act].id.clone()).unwrap_or_default();
                let says = visible(never.says.main.trim_end_matches('.'));
                Fault::ForbiddenAct { technique: one.id.clone(), act, case, says }
            }
            Forbidden::With(_, index) => {
                let pattern = self.pattern_text(&one.never_with[index]);
                Fault::ForbiddenWith { technique: one.id.clone(), pattern, case }
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

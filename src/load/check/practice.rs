//! Whether the parts of a file of techniques fit together: every case has
//! one answer, nothing stands there in vain, and the last choice always ends
//! in the line cut.
//!
//! Imports `model`. What is never done is judged by the cases that a situation
//! really answers: one that gives way to another leads nowhere in the cases of
//! both.

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
        let what = format!("the situations have {choices} choices, which are too many");
        let wrong = top.key("situations").wrong(what);
        return wrong.expected(format!("at most {MOST_CHOICES} in all")).tell();
    }
    let number = practice.facts.iter().map(|fact| fact.words.len());
    let number = number.fold(1_usize, usize::saturating_mul);
    if number > MOST_CASES {
        return top
            .key("facts")
            .wrong(format!("these words make {number} cases, which are too many"))
            .expected(format!("at most {MOST_CASES}: the numbers of words multiplied"))
            .mend("take facts or words away")
            .tell();
    }
    let cases = practice.cases();
    let answered = judge_answers(practice, &cases, top);
    judge_forbidden(practice, &cases, &answered, problems);
}

/// A case in the words in which one is put.
fn in_words(practice: &Practice, case: &[usize]) -> String {
    let words = practice.facts.iter().zip(case).map(|(fact, word)| fact.words[*word].word.as_str());
    format!("`{}`", words.collect::<Vec<_>>().join(", "))
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
            problems
                .wrong(one.place.below("id"), "no situation leads to it")
                .of(&one.id)
                .expected("a choice of some situation")
                .mend("write it among the choices, or take the technique away")
                .tell();
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
        problems
            .wrong(place.below("id"), "no technique needs it")
            .of(&one.id)
            .expected("a technique with it under `needs`")
            .mend("write it there, or take the capability away")
            .tell();
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
        problems
            .wrong(place, "the last choice does not end in the line cut")
            .of(&choice_text(practice, last))
            .expected("a technique with `cuts line: yes` at the end, for when nothing else goes")
            .mend("add a choice that leaves the hook and cuts the line")
            .tell();
    }
}

/// Judges that of each two situations that fit one case, one goes before the
/// other, and that nothing else is put in an order.
fn judge_order(practice: &Practice, problems: &Problems) {
    let all = &practice.situations;
    for (index, one) in all.iter().enumerate() {
        for (line, other) in one.goes_before.iter().enumerate() {
            let what = if *other == index {
                "a situation cannot go before itself"
            } else if one.when.meets(&all[*other].when) {
                continue;
            } else {
                "no case fits both, so there is nothing to decide"
            };
            problems
                .wrong(one.place.below("goes before").entry(line), what)
                .of(&all[*other].id)
                .expected("a situation that fits some of the same cases")
                .mend("take the name away, or correct `when` of one of them")
                .tell();
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
    let problem = match (one.goes_before.contains(&earlier), other.goes_before.contains(&index)) {
        (true, false) | (false, true) => return,
        (false, false) => problems
            .wrong(
                one.place.below("when"),
                format!(
                    "`{}` fits the case {case} too, and neither goes before the other",
                    other.id
                ),
            )
            .mend(format!("write `goes before: [{}]` in `{}`, or the other way", one.id, other.id)),
        (true, true) => problems
            .wrong(
                one.place.below("goes before"),
                format!("`{}` goes before this one in turn, as in the case {case}", other.id),
            )
            .mend("take one of the two names away"),
    };
    problem.of(&one.id).expected("one situation that answers each case").tell();
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
        let what = match open.len() {
            1 => format!("no situation answers the case {first}"),
            number => format!("no situation answers {number} cases, the first of them {first}"),
        };
        top.wrong_key("situations", what)
            .expected("one situation that answers each case")
            .mend("write a situation for it, or widen `when` of another")
            .tell();
    }
    // Two by two they are in order, all together they are not.
    if let Some(case) = unled.filter(|case| is_circle(practice, case)) {
        let fit = practice.situations.iter().filter(|one| one.when.fits(case));
        let ids: Vec<String> = fit.map(|one| format!("`{}`", one.id)).collect();
        let (ids, case) = (ids.join(", "), in_words(practice, case));
        let what = format!("{ids} go before each other in a circle in the case {case}");
        top.wrong_key("situations", what)
            .expected("one situation that goes before all others that fit")
            .mend("let one of them go before all the others")
            .tell();
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
                        let what = self.what(*technique, forbidden, case);
                        self.problems
                            .wrong(place, what)
                            .of(&choice_text(self.practice, choice))
                            .expected("a choice that leads to nothing that is never done")
                            .mend("take the choice away, or narrow `when` of the situation")
                            .tell();
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

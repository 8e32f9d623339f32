//! From the facts as written to the facts that decide, and from a pattern as
//! written to the cases that it fits.
//!
//! Imports `model`. A word must be unique over all facts, since a case is put
//! in words alone.

use crate::load::check::lines::Desk;
use crate::load::check::value::{filled, flag, same_word};
use crate::load::form::loose::Words;
use crate::load::form::techniques::{FactForm, FactWordForm, PatternForm};
use crate::load::read::problem::Problem;
use crate::load::read::spot::Spot;
use crate::load::read::suggest::{did_you_mean, nearest, or_list};
use crate::model::technique::{Fact, FactWord, Pattern};
use crate::model::vocabulary::{AttributeShape, Vocabulary, fold};

/// A word in the form in which words are compared, and who has it.
type Taken = Vec<(String, String)>;

/// Reads the facts; an entry that cannot be read is kept as far as it goes,
/// so that the indices of the others hold.
pub(crate) fn facts(
    written: Option<&[FactForm]>,
    vocabulary: &Vocabulary,
    spot: &Spot<'_>,
    desk: &mut Desk<'_>,
) -> Vec<Fact> {
    let mut taken = Taken::new();
    let mut ids = Vec::new();
    let mut facts = Vec::new();
    for (index, form) in desk.entries(written, spot).iter().enumerate() {
        let here = spot.entry(index);
        let id = desk.id(form.id.as_deref(), &here, "id");
        ids.push(id.clone());
        desk.refuse_twin(&ids, "facts", &here.key("id"));
        let asks = desk.title(form.asks.as_ref(), &here, "asks", "write the question");
        let list = here.key("words");
        let mut words = Vec::new();
        for (index, word) in desk.entries(form.words.as_deref(), &list).iter().enumerate() {
            words.push(fact_word(word, vocabulary, &mut taken, &list.entry(index), desk));
        }
        if words.len() < 2 {
            let what = "a fact with fewer than two words decides nothing";
            desk.add(
                Problem::new(list.place(), what)
                    .offending(&id)
                    .expected("two words or more")
                    .mend("write the other answers, or take the fact away"),
            );
        }
        let unsaid = filled(form.unless_said.as_deref())
            .and_then(|word| word_of(word, &words, &here.key("unless said"), desk));
        facts.push(Fact { id, asks: asks.unwrap_or_default(), words, unsaid });
    }
    if facts.is_empty() {
        let mend = "write what decides: questions, each with its words";
        desk.problems.add_at_key(Problem::new(spot.place(), "no fact is written").mend(mend));
    }
    facts
}

fn fact_word(
    form: &FactWordForm,
    vocabulary: &Vocabulary,
    taken: &mut Taken,
    spot: &Spot<'_>,
    desk: &mut Desk<'_>,
) -> FactWord {
    let word = desk.id(form.word.as_deref(), spot, "word");
    let says = desk.title(form.says.as_ref(), spot, "says", "write it as in a sentence");
    take(&word, &word, taken, &spot.key("word"), desk);
    let list = spot.key("also");
    let mut also = Vec::new();
    for (index, other) in desk.entries(form.also.as_deref(), &list).iter().enumerate() {
        let here = list.entry(index);
        match filled(Some(other)) {
            Some(other) => {
                take(other, &word, taken, &here, desk);
                also.push(other.to_owned());
            }
            None => desk.add(Problem::new(here.place(), "nothing is said here")),
        }
    }
    let hook_type = filled(form.hook_type.as_deref())
        .and_then(|text| hook_type(text, vocabulary, &spot.key("hook type"), desk));
    let cited = desk.cited_if(form.clause.as_deref(), form.verified.as_deref(), spot);
    let only_if_said = filled(form.only_if_said.as_deref())
        .and_then(|text| flag(text, &spot.key("only if said"), desk.problems))
        .unwrap_or(false);
    FactWord { word, also, says: says.unwrap_or_default(), cited, hook_type, only_if_said }
}

/// Enters a word; one that is taken is told.
fn take(text: &str, word: &str, taken: &mut Taken, spot: &Spot<'_>, desk: &mut Desk<'_>) {
    let folded = fold(text);
    if folded.is_empty() {
        return;
    }
    if text.contains(',') {
        desk.add(
            Problem::new(spot.place(), "a case is put in words with commas between them")
                .offending(text)
                .expected("a word without a comma"),
        );
    }
    if let Some((_, owner)) = taken.iter().find(|(known, _)| *known == folded) {
        desk.add(
            Problem::new(spot.place(), format!("the word `{owner}` is called this too"))
                .offending(text)
                .expected("a word that means one answer to one fact only")
                .mend("write another word, or take it away"),
        );
    }
    taken.push((folded, word.to_owned()));
}

/// A type of hook of the vocabulary, in lower case.
fn hook_type(
    text: &str,
    vocabulary: &Vocabulary,
    spot: &Spot<'_>,
    desk: &mut Desk<'_>,
) -> Option<String> {
    let known = hook_types(vocabulary);
    if let Some(found) = known.iter().find(|known| same_word(known, text)) {
        return Some(found.to_lowercase());
    }
    let names: Vec<&str> = known.iter().map(String::as_str).collect();
    let expected = if names.is_empty() {
        "a vocabulary in which the kind `hook` has the attribute `type`".to_owned()
    } else {
        or_list(&names)
    };
    desk.add(
        Problem::new(spot.place(), "the vocabulary has no such hook type")
            .offending(text)
            .expected(expected)
            .mend_if(did_you_mean(nearest(text, names.iter().copied()))),
    );
    None
}

/// The words of the attribute `type` of hooks.
fn hook_types(vocabulary: &Vocabulary) -> &[String] {
    let hook = vocabulary.find_kind("hook");
    let attribute = vocabulary.find_attribute("type");
    let (Some(hook), Some(attribute)) = (hook, attribute) else { return &[] };
    match &vocabulary.attribute(attribute).shape {
        AttributeShape::Choice(words) if vocabulary.kind(hook).attributes.contains(&attribute) => {
            words
        }
        _ => &[],
    }
}

/// The index of a word of a fact; what is no word of it is told, and what
/// was meant, if that can be told.
fn word_of(text: &str, words: &[FactWord], spot: &Spot<'_>, desk: &mut Desk<'_>) -> Option<usize> {
    let text = text.trim();
    let found = words.iter().position(|known| known.word == text && !text.is_empty());
    if found.is_none() {
        let names: Vec<&str> = words.iter().map(|known| known.word.as_str()).collect();
        let also = |known: &&FactWord| known.also.iter().any(|also| fold(also) == fold(text));
        let meant = words.iter().find(also).map(|known| known.word.as_str());
        desk.add(
            Problem::new(spot.place(), "this is no word of the fact")
                .offending(text)
                .expected(or_list(&names))
                .mend_if(did_you_mean(meant.or_else(|| nearest(text, names.iter().copied())))),
        );
    }
    found
}

/// Reads a pattern.
pub(crate) fn pattern(
    written: &PatternForm,
    facts: &[Fact],
    spot: &Spot<'_>,
    desk: &mut Desk<'_>,
) -> Pattern {
    let ids: Vec<String> = facts.iter().map(|fact| fact.id.clone()).collect();
    let mut parts = Vec::new();
    // Without facts, which is told, no name of one could be right.
    if facts.is_empty() {
        return Pattern(parts);
    }
    for (id, words) in &written.0 {
        let here = spot.key(id);
        let Some(fact) = desk.named(id, &ids, "fact", &here) else { continue };
        let known = &facts[fact].words;
        let mut found = Vec::new();
        match words {
            Some(Words::One(word)) => found.extend(word_of(word, known, &here, desk)),
            Some(Words::Many(words)) => {
                for (index, word) in words.iter().enumerate() {
                    let here = here.entry(index);
                    match word_of(word, known, &here, desk) {
                        Some(one) if found.contains(&one) => desk.add(
                            Problem::new(here.place(), "this word stands here twice")
                                .offending(word)
                                .mend("take one of them away"),
                        ),
                        one => found.extend(one),
                    }
                }
            }
            None => {}
        }
        if matches!(words, None | Some(Words::Many(_))) && found.is_empty() {
            let names: Vec<&str> = known.iter().map(|known| known.word.as_str()).collect();
            desk.add(
                Problem::new(here.place(), "no word stands here")
                    .offending(id)
                    .expected(or_list(&names))
                    .mend("take the line away if any answer will do"),
            );
        }
        parts.push((fact, found));
    }
    Pattern(parts)
}

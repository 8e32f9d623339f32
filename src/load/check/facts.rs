//! From the facts as written to the facts that decide, and from a pattern as
//! written to the cases that it fits.
//!
//! Imports `model`. A word must be unique over all facts, since a case is put
//! in words alone.

use crate::load::check::value::same_word;
use crate::load::form::loose::Words;
use crate::load::form::techniques::{FactForm, FactWordForm, PatternForm};
use crate::load::read::spot::{Spot, said};
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
    language: &str,
    top: &Spot<'_>,
) -> Vec<Fact> {
    let (mut taken, mut ids) = (Taken::new(), Vec::new());
    let facts = top.listed("facts", written, |at, form| {
        let id = at.own_id(&form.id, &mut ids, "facts");
        let asks = at.title("asks", &form.asks, language, "write the question");
        let words = at.listed("words", form.words.as_deref(), |at, word| {
            Some(fact_word(word, vocabulary, &mut taken, language, at))
        });
        if words.len() < 2 {
            at.key("words")
                .wrong("a fact with fewer than two words decides nothing")
                .of(&id)
                .expected("two words or more")
                .mend("write the other answers, or take the fact away")
                .tell();
        }
        let unsaid =
            at.read("unless said", &form.unless_said, |at, word| word_of(word, &words, at));
        Some(Fact { id, asks: asks.unwrap_or_default(), words, unsaid })
    });
    if facts.is_empty() {
        let wrong = top.wrong_key("facts", "no fact is written");
        wrong.mend("write what decides: questions, each with its words").tell();
    }
    facts
}

fn fact_word(
    form: &FactWordForm,
    vocabulary: &Vocabulary,
    taken: &mut Taken,
    language: &str,
    spot: &Spot<'_>,
) -> FactWord {
    let word = spot.id("word", &form.word);
    let says = spot.title("says", &form.says, language, "write it as in a sentence");
    take(&word, &word, taken, &spot.key("word"));
    let also = spot.listed("also", form.also.as_deref(), |at, other| {
        let other = said(other).or_else(|| at.wrong("nothing is said here").none())?;
        take(other, &word, taken, at);
        Some(other.to_owned())
    });
    let hook_type =
        spot.read("hook type", &form.hook_type, |at, text| hook_type(text, vocabulary, at));
    let cited = spot.cited_if(&form.clause, &form.verified);
    let only_if_said = spot.flag("only if said", &form.only_if_said).unwrap_or(false);
    FactWord { word, also, says: says.unwrap_or_default(), cited, hook_type, only_if_said }
}

/// Enters a word; one that is taken is told.
fn take(text: &str, word: &str, taken: &mut Taken, spot: &Spot<'_>) {
    let folded = fold(text);
    if folded.is_empty() {
        return;
    }
    if text.contains(',') {
        let wrong = spot.wrong("a case is put in words with commas between them").of(text);
        wrong.expected("a word without a comma").tell();
    }
    if let Some((_, owner)) = taken.iter().find(|(known, _)| *known == folded) {
        spot.wrong(format!("the word `{owner}` is called this too"))
            .of(text)
            .expected("a word that means one answer to one fact only")
            .mend("write another word, or take it away")
            .tell();
    }
    taken.push((folded, word.to_owned()));
}

/// A type of hook of the vocabulary, in lower case.
fn hook_type(text: &str, vocabulary: &Vocabulary, spot: &Spot<'_>) -> Option<String> {
    let known = hook_types(vocabulary);
    if let Some(found) = known.iter().find(|known| same_word(known, text)) {
        return Some(found.to_lowercase());
    }
    let wrong = spot
        .wrong("the vocabulary has no such hook type")
        .none_of(text, known.iter().map(String::as_str));
    if known.is_empty() {
        let hooks = "a vocabulary in which the kind `hook` has the attribute `type`";
        return wrong.expected(hooks).none();
    }
    wrong.none()
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
fn word_of(text: &str, words: &[FactWord], spot: &Spot<'_>) -> Option<usize> {
    let text = text.trim();
    let found = words.iter().position(|known| known.word == text && !text.is_empty());
    found.or_else(|| {
        let names = names(words);
        let also = |known: &&FactWord| known.also.iter().any(|also| fold(also) == fold(text));
        let meant = words.iter().find(also).map(|known| known.word.as_str());
        spot.wrong("this is no word of the fact")
            .of(text)
            .expected(or_list(&names))
            .mend_if(did_you_mean(meant.or_else(|| nearest(text, names.iter().copied()))))
            .none()
    })
}

fn names(words: &[FactWord]) -> Vec<&str> {
    words.iter().map(|known| known.word.as_str()).collect()
}

/// A pattern that must stand after `when`.
pub(crate) fn when(
    written: &Option<PatternForm>,
    facts: &[Fact],
    spot: &Spot<'_>,
    mend: &str,
) -> Option<Pattern> {
    let written = spot.must("when", written.as_ref(), mend)?;
    Some(pattern(written, facts, &spot.key("when")))
}

/// Reads a pattern.
pub(crate) fn pattern(written: &PatternForm, facts: &[Fact], spot: &Spot<'_>) -> Pattern {
    let ids: Vec<String> = facts.iter().map(|fact| fact.id.clone()).collect();
    let mut parts = Vec::new();
    // Without facts, which is told, no name of one could be right.
    if facts.is_empty() {
        return Pattern(parts);
    }
    for (id, words) in &written.0 {
        let here = spot.key(id);
        let Some(fact) = here.named(id, &ids, "fact") else { continue };
        let known = &facts[fact].words;
        let mut found = Vec::new();
        if let Some(words) = words {
            here.each_of(words, |at, word| {
                let one = word_of(word, known, at)?;
                if found.contains(&one) {
                    let wrong = at.wrong("this word stands here twice").of(word);
                    return wrong.mend("take one of them away").none::<()>();
                }
                found.push(one);
                None
            });
        }
        if matches!(words, None | Some(Words::Many(_))) && found.is_empty() {
            here.wrong("no word stands here")
                .of(id)
                .expected(or_list(&names(known)))
                .mend("take the line away if any answer will do")
                .tell();
        }
        parts.push((fact, found));
    }
    Pattern(parts)
}

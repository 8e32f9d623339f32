//! From facts and situations as written to those that are used, in which words
//! and techniques are named by index.
//!
//! Imports `model`. A word must be unique over all facts, since a case is put
//! in words alone. Whether the situations fit together is judged in `practice`.

use crate::load::check::lines::ids_of;
use crate::load::check::value::same_word;
use crate::load::form::loose::Words;
use crate::load::form::techniques::{
    FactForm, FactWordForm, PatternForm, SituationForm, TechniquesFile,
};
use crate::load::read::fault::{Fault, Part};
use crate::load::read::problem::nearest;
use crate::load::read::spot::{Spot, said};
use crate::model::technique::{Fact, FactWord, Pattern, Situation};
use crate::model::vocabulary::{AttributeShape, Vocabulary, fold};

/// What stands between two techniques of one choice.
const THEN: &str = ", then ";

/// What situations name.
pub(crate) struct Known<'a> {
    /// The facts.
    pub(crate) facts: &'a [Fact],
    /// The ids of the techniques.
    pub(crate) techniques: &'a [String],
    /// The governing language.
    pub(crate) language: &'a str,
}

/// The situations, and what goes along with them.
pub(crate) fn situations(
    file: &TechniquesFile,
    known: &Known<'_>,
    top: &Spot<'_>,
) -> (Vec<Situation>, Vec<Situation>) {
    let ids = ids_of(file.situations.iter().flatten().map(|form| &form.id));
    let mut seen = Vec::new();
    let own = top.listed("situations", file.situations.as_deref(), |at, form| {
        let mut read = situation(form, known, &mut seen, at);
        let before = form.goes_before.as_deref();
        read.goes_before = at.all_named("goes before", before, &ids, Part::Situation);
        Some(read)
    });
    if own.is_empty() {
        top.wrong_key("situations", Fault::NoSituations).tell();
    }
    let along = top.listed("goes along", file.goes_along.as_deref(), |at, form| {
        if form.goes_before.is_some() {
            at.wrong_key("goes before", Fault::OrderOfAlong).tell();
        }
        Some(situation(form, known, &mut seen, at))
    });
    (own, along)
}

/// A situation, without what it goes before.
fn situation(
    form: &SituationForm,
    known: &Known<'_>,
    seen: &mut Vec<String>,
    spot: &Spot<'_>,
) -> Situation {
    let id = spot.own_id(&form.id, seen, Part::Situation);
    let title = spot.title("title", &form.title, known.language, Fault::NoSituationTitle);
    let when = when(&form.when, known.facts, spot, Fault::NoSituationCases);
    Situation {
        id,
        title: title.unwrap_or_default(),
        when: when.unwrap_or_default(),
        choices: choices(form, known, spot),
        goes_before: Vec::new(),
        reading: spot.remark("reading", &form.reading, known.language),
        place: spot.place(),
    }
}

fn choices(form: &SituationForm, known: &Known<'_>, spot: &Spot<'_>) -> Vec<Vec<usize>> {
    let written = form.choices.as_deref();
    if written.is_none_or(<[String]>::is_empty) {
        spot.missing("choices", Fault::NoChoices);
    }
    let mut choices = Vec::new();
    spot.listed("choices", written, |at, text| {
        let choice = choice(text, known.techniques, at)?;
        if choices.contains(&choice) {
            at.wrong(Fault::ChoiceTwice).of(text).tell();
        }
        choices.push(choice);
        Some(())
    });
    choices
}

/// `dipnet, then cut-free-on-deck`.
fn choice(text: &str, techniques: &[String], spot: &Spot<'_>) -> Option<Vec<usize>> {
    // In a list in brackets the comma would end the entry.
    if text.trim_start().starts_with("then ") {
        return spot.wrong(Fault::ChoiceBeginsThen).of(text).none();
    }
    let mut choice = Vec::new();
    for name in text.split(THEN) {
        if said(name).is_none() {
            return spot.wrong(Fault::ChoiceGap).of(text).none();
        }
        let found = spot.named(name, techniques, Part::Technique)?;
        if choice.contains(&found) {
            return spot.wrong(Fault::TechniqueTwice).of(text).none();
        }
        choice.push(found);
    }
    Some(choice)
}

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
        let id = at.own_id(&form.id, &mut ids, Part::Fact);
        let asks = at.title("asks", &form.asks, language, Fault::NoQuestion);
        let words = at.listed("words", form.words.as_deref(), |at, word| {
            Some(fact_word(word, vocabulary, &mut taken, language, at))
        });
        if words.len() < 2 {
            at.key("words").wrong(Fault::TooFewWords).of(&id).tell();
        }
        let unsaid =
            at.read("unless said", &form.unless_said, |at, word| word_of(word, &words, at));
        Some(Fact { id, asks: asks.unwrap_or_default(), words, unsaid })
    });
    if facts.is_empty() {
        top.wrong_key("facts", Fault::NoFacts).tell();
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
    let says = spot.title("says", &form.says, language, Fault::NoWordText);
    take(&word, &word, taken, &spot.key("word"));
    let also = spot.listed("also", form.also.as_deref(), |at, other| {
        let other = said(other).or_else(|| at.wrong(Fault::NothingSaid).none())?;
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
        spot.wrong(Fault::CommaInWord).of(text).tell();
    }
    if let Some((_, owner)) = taken.iter().find(|(known, _)| *known == folded) {
        spot.wrong(Fault::WordTwin(owner.clone())).of(text).tell();
    }
    taken.push((folded, word.to_owned()));
}

/// A type of hook of the vocabulary, in lower case.
fn hook_type(text: &str, vocabulary: &Vocabulary, spot: &Spot<'_>) -> Option<String> {
    let known = hook_types(vocabulary);
    if let Some(found) = known.iter().find(|known| same_word(known, text)) {
        return Some(found.to_lowercase());
    }
    spot.wrong(Fault::UnknownHookType).none_of(text, known.iter().map(String::as_str)).none()
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
        let meant = meant.or_else(|| nearest(text, names.iter().copied()));
        spot.wrong(Fault::UnknownFactWord).of(text).one_of(&names).meant(meant).none()
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
    fault: Fault,
) -> Option<Pattern> {
    let written = spot.must("when", written.as_ref(), fault)?;
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
        let Some(fact) = here.named(id, &ids, Part::Fact) else { continue };
        let known = &facts[fact].words;
        let mut found = Vec::new();
        if let Some(words) = words {
            here.each_of(words, |at, word| {
                let one = word_of(word, known, at)?;
                if found.contains(&one) {
                    return at.wrong(Fault::WordTwice).of(word).none::<()>();
                }
                found.push(one);
                None
            });
        }
        if matches!(words, None | Some(Words::Many(_))) && found.is_empty() {
            here.wrong(Fault::NoWord).of(id).one_of(&names(known)).tell();
        }
        parts.push((fact, found));
    }
    Pattern(parts)
}

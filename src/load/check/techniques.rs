//! From a file of techniques as written to the practice that is used.
//!
//! Imports `model`; facts, capabilities and situations are read in files of
//! their own, and whether all of it fits together is judged last, in
//! `judge_practice`.

use crate::load::check::capability::capabilities;
use crate::load::check::facts::{facts, pattern};
use crate::load::check::judge_practice::judge_practice;
use crate::load::check::lines::{Desk, ids_of};
use crate::load::check::situations::{Known, situations};
use crate::load::check::value::{choice, count, filled, flag};
use crate::load::check::vocabulary::check_id;
use crate::load::form::open::Open;
use crate::load::form::profile::FREEBOARD_FROM;
use crate::load::form::profile::Worded;
use crate::load::form::techniques::{CardForm, NeverForm, TechniqueForm, TechniquesFile};
use crate::load::read::limits::LONGEST_REMARK;
use crate::load::read::problem::Problems;
use crate::load::read::spot::Spot;
use crate::model::profile::FreeboardFrom;
use crate::model::technique::{Act, Card, Fact, Never, Practice, Technique};
use crate::model::vocabulary::Vocabulary;

/// Checks a file of techniques.
pub(crate) fn check_techniques(
    file: &TechniquesFile,
    vocabulary: &Vocabulary,
    top: &Spot<'_>,
    problems: &mut Problems,
) -> Option<Practice> {
    let before = problems.count();
    let language = filled(file.language.as_deref()).unwrap_or("en");
    let mut desk = Desk { language, problems };
    let source = filled(file.source.as_deref()).map(str::to_owned);
    if source.is_none() {
        desk.missing(top, "source", "write what it stands on, like `common practice`");
    }
    let facts = facts(file.facts.as_deref(), vocabulary, &top.key("facts"), &mut desk);
    let acts = acts(file.acts.as_ref(), &top.key("acts"), &mut desk);
    let capabilities = capabilities(file, vocabulary, top, &mut desk);
    let names = Names {
        facts: &facts,
        acts: acts.iter().map(|act| act.id.clone()).collect(),
        capabilities: capability_ids(file),
    };
    let techniques = techniques(file, &names, &top.key("techniques"), &mut desk);
    let ids = ids_of(file.techniques.iter().flatten().map(|form| form.id.as_deref()));
    let known = Known { facts: &facts, techniques: &ids };
    let (situations, along) = situations(file, &known, top, &mut desk);
    let nevers = nevers(file, &names, &top.key("nevers"), &mut desk);
    let cards = cards(file.cards.as_deref(), &top.key("cards"), &mut desk);
    let line = |text: Option<&Worded>, key: &str, desk: &mut Desk<'_>| {
        text.and_then(|text| desk.text_of(text, LONGEST_REMARK, &top.key(key)))
    };
    let practice = Practice {
        id: desk.id(file.id.as_deref(), top, "id"),
        encoding: encoding(file.encoding.as_deref(), top, &mut desk),
        title: desk.title(file.title.as_ref(), top, "title", "write what it is called")?,
        source: source?,
        language: language.to_owned(),
        freeboard_from: freeboard_from(file.freeboard_from.as_deref(), top, &mut desk),
        cautions: desk.texts(file.cautions.as_deref(), &top.key("cautions")),
        cautions_in_short: line(file.cautions_in_short.as_ref(), "cautions in short", &mut desk),
        even_so: line(file.even_so.as_ref(), "even so", &mut desk),
        notes: desk.texts(file.notes.as_deref(), &top.key("notes")),
        facts,
        acts,
        capabilities: capabilities?,
        techniques: techniques?,
        situations,
        along,
        nevers: nevers?,
        cards: cards?,
        place: top.place(),
    };
    // Where something could not be read, the rest would not fit together
    // either, and that would only hide what is wrong.
    if problems.count() > before {
        return None;
    }
    judge_practice(&practice, top, problems);
    Some(practice)
}

/// What techniques and prohibitions name.
struct Names<'a> {
    facts: &'a [Fact],
    acts: Vec<String>,
    capabilities: Vec<String>,
}

/// The ids of the capabilities, the low rails after the others.
fn capability_ids(file: &TechniquesFile) -> Vec<String> {
    let tools = file.capabilities.iter().flatten().map(|form| form.id.as_deref());
    let rails = file.low_rails.iter().flatten().map(|form| form.id.as_deref());
    ids_of(tools.chain(rails))
}

fn encoding(written: Option<&str>, top: &Spot<'_>, desk: &mut Desk<'_>) -> u32 {
    filled(written)
        .and_then(|text| count(text, 1, 9999, &top.key("encoding"), desk.problems))
        .unwrap_or(1)
}

fn freeboard_from(written: Option<&str>, top: &Spot<'_>, desk: &mut Desk<'_>) -> FreeboardFrom {
    filled(written)
        .and_then(|text| choice(text, &FREEBOARD_FROM, &top.key("freeboard from"), desk.problems))
        .unwrap_or(FreeboardFrom::Rail)
}

fn acts(written: Option<&Open<Worded>>, spot: &Spot<'_>, desk: &mut Desk<'_>) -> Vec<Act> {
    let mut acts = Vec::new();
    for (id, says) in written.iter().flat_map(|acts| &acts.0) {
        check_id(id, &spot.key(id), desk.problems);
        let says = desk.title(says.as_ref(), spot, id, "write it in words");
        acts.push(Act { id: id.clone(), says: says.unwrap_or_default() });
    }
    acts
}

/// The techniques; none where one could not be read, since the indices of
/// the others would be off.
fn techniques(
    file: &TechniquesFile,
    names: &Names<'_>,
    spot: &Spot<'_>,
    desk: &mut Desk<'_>,
) -> Option<Vec<Technique>> {
    let mut ids = Vec::new();
    let mut read = Vec::new();
    for (index, form) in desk.entries(file.techniques.as_deref(), spot).iter().enumerate() {
        let here = spot.entry(index);
        let id = desk.id(form.id.as_deref(), &here, "id");
        ids.push(id.clone());
        desk.refuse_twin(&ids, "techniques", &here.key("id"));
        read.push(technique(id, form, names, &here, desk));
    }
    read.into_iter().collect()
}

fn technique(
    id: String,
    form: &TechniqueForm,
    names: &Names<'_>,
    spot: &Spot<'_>,
    desk: &mut Desk<'_>,
) -> Option<Technique> {
    let title = desk.title(form.title.as_ref(), spot, "title", "write what it is called");
    let cited = desk.cited(form.clause.as_deref(), form.verified.as_deref(), spot);
    let steps = desk.lines(form.steps.as_deref(), &spot.key("steps"));
    if steps.is_empty() {
        desk.missing(spot, "steps", "write what to do, a short line for each step");
    }
    let list = spot.key("never with");
    let mut never_with = Vec::new();
    for (index, one) in desk.entries(form.never_with.as_deref(), &list).iter().enumerate() {
        never_with.push(pattern(one, names.facts, &list.entry(index), desk));
    }
    let needs = spot.key("needs");
    let acts = spot.key("acts");
    Some(Technique {
        id,
        steps,
        needs: desk.all_named(form.needs.as_deref(), &names.capabilities, "capability", &needs),
        acts: desk.all_named(form.acts.as_deref(), &names.acts, "act", &acts),
        never_with,
        stop: desk.texts(form.stop.as_deref(), &spot.key("stop")),
        cautions: desk.lines(form.cautions.as_deref(), &spot.key("cautions")),
        cuts_line: filled(form.cuts_line.as_deref())
            .and_then(|text| flag(text, &spot.key("cuts line"), desk.problems))
            .unwrap_or(false),
        drawing: desk.drawing(form.drawing.as_deref(), spot),
        place: spot.place(),
        title: title?,
        cited: cited?,
    })
}

fn nevers(
    file: &TechniquesFile,
    names: &Names<'_>,
    spot: &Spot<'_>,
    desk: &mut Desk<'_>,
) -> Option<Vec<Never>> {
    let mut read = Vec::new();
    for (index, form) in desk.entries(file.nevers.as_deref(), spot).iter().enumerate() {
        read.push(never(form, names, &spot.entry(index), desk));
    }
    read.into_iter().collect()
}

fn never(
    form: &NeverForm,
    names: &Names<'_>,
    spot: &Spot<'_>,
    desk: &mut Desk<'_>,
) -> Option<Never> {
    let says = desk.title(form.says.as_ref(), spot, "says", "write what is never done");
    let when = form.when.as_ref();
    let when = when.map(|when| pattern(when, names.facts, &spot.key("when"), desk));
    if when.is_none() {
        desk.missing(spot, "when", "write in which cases, or `when: {}` for all of them");
    }
    let acts = desk.all_named(form.acts.as_deref(), &names.acts, "act", &spot.key("acts"));
    let cited = desk.cited(form.clause.as_deref(), form.verified.as_deref(), spot);
    Some(Never { says: says?, when: when?, acts, cited: cited?, place: spot.place() })
}

fn cards(written: Option<&[CardForm]>, spot: &Spot<'_>, desk: &mut Desk<'_>) -> Option<Vec<Card>> {
    let mut ids = Vec::new();
    let mut read = Vec::new();
    for (index, form) in desk.entries(written, spot).iter().enumerate() {
        let here = spot.entry(index);
        let id = desk.id(form.id.as_deref(), &here, "id");
        ids.push(id.clone());
        desk.refuse_twin(&ids, "cards", &here.key("id"));
        read.push(card(id, form, &here, desk));
    }
    read.into_iter().collect()
}

fn card(id: String, form: &CardForm, spot: &Spot<'_>, desk: &mut Desk<'_>) -> Option<Card> {
    let title = desk.title(form.title.as_ref(), spot, "title", "write what it is called");
    let cited = desk.cited(form.clause.as_deref(), form.verified.as_deref(), spot);
    let steps = desk.lines(form.steps.as_deref(), &spot.key("steps"));
    if steps.is_empty() {
        desk.missing(spot, "steps", "write what to do, a short line for each step");
    }
    Some(Card {
        id,
        title: title?,
        steps,
        nevers: desk.lines(form.nevers.as_deref(), &spot.key("nevers")),
        cautions: desk.lines(form.cautions.as_deref(), &spot.key("cautions")),
        drawing: desk.drawing(form.drawing.as_deref(), spot),
        cited: cited?,
    })
}

//! From a file of techniques as written to the practice that is used.
//!
//! Imports `model`; facts, capabilities and situations are read in files of
//! their own, and whether all of it fits together is judged last, in
//! `practice`.

use crate::load::check::capability::capabilities;
use crate::load::check::facts::{facts, pattern, when};
use crate::load::check::lines::ids_of;
use crate::load::check::practice::judge_practice;
use crate::load::check::situations::{Known, situations};
use crate::load::check::value::copied;
use crate::load::check::vocabulary::check_id;
use crate::load::form::profile::FREEBOARD_FROM;
use crate::load::form::techniques::{CardForm, NeverForm, TechniqueForm, TechniquesFile};
use crate::load::read::spot::{Spot, filled};
use crate::model::profile::FreeboardFrom;
use crate::model::technique::{Act, Card, Fact, Never, Practice, Technique};
use crate::model::vocabulary::Vocabulary;

/// Checks a file of techniques.
pub(crate) fn check_techniques(
    file: &TechniquesFile,
    words: &Vocabulary,
    top: &Spot<'_>,
) -> Option<Practice> {
    let before = top.problems().count();
    let language = filled(&file.language).unwrap_or("en");
    let mend = "write what it stands on, like `common practice`";
    let source = top.must("source", copied(&file.source), mend);
    let facts = facts(file.facts.as_deref(), words, language, top);
    let acts = acts(file, language, &top.key("acts"));
    let capabilities = capabilities(file, words, language, top);
    let names = Names {
        facts: &facts,
        acts: acts.iter().map(|act| act.id.clone()).collect(),
        capabilities: capability_ids(file),
        language,
    };
    let mut ids = Vec::new();
    let techniques = top.listed("techniques", file.techniques.as_deref(), |at, form| {
        let id = at.own_id(&form.id, &mut ids, "techniques");
        Some(technique(id, form, &names, at))
    });
    let ids = ids_of(file.techniques.iter().flatten().map(|form| &form.id));
    let known = Known { facts: &facts, techniques: &ids, language };
    let (situations, along) = situations(file, &known, top);
    let nevers = file.nevers.as_deref();
    let nevers = top.listed("nevers", nevers, |at, form| Some(never(form, &names, at)));
    let mut ids = Vec::new();
    let cards = top.listed("cards", file.cards.as_deref(), |at, form| {
        let id = at.own_id(&form.id, &mut ids, "cards");
        Some(card(id, form, language, at))
    });
    let freeboard_from = top.word("freeboard from", &file.freeboard_from, &FREEBOARD_FROM);
    let practice = Practice {
        id: top.id("id", &file.id),
        encoding: top.count("encoding", &file.encoding, 1, 9999).unwrap_or(1),
        title: top.title("title", &file.title, language, "write what it is called")?,
        source: source?,
        language: language.to_owned(),
        freeboard_from: freeboard_from.unwrap_or(FreeboardFrom::Rail),
        cautions: top.texts("cautions", &file.cautions, language),
        cautions_in_short: top.remark("cautions in short", &file.cautions_in_short, language),
        even_so: top.remark("even so", &file.even_so, language),
        notes: top.texts("notes", &file.notes, language),
        facts,
        acts,
        // None where one of a list could not be read, since the indices of
        // the others would be off.
        capabilities: capabilities?,
        techniques: techniques.into_iter().collect::<Option<_>>()?,
        situations,
        along,
        nevers: nevers.into_iter().collect::<Option<_>>()?,
        cards: cards.into_iter().collect::<Option<_>>()?,
        place: top.place(),
    };
    // Where something could not be read, the rest would not fit together
    // either, and that would only hide what is wrong.
    if top.problems().count() > before {
        return None;
    }
    judge_practice(&practice, top);
    Some(practice)
}

/// What techniques and prohibitions name.
struct Names<'a> {
    facts: &'a [Fact],
    acts: Vec<String>,
    capabilities: Vec<String>,
    language: &'a str,
}

/// The ids of the capabilities, the low rails after the others.
fn capability_ids(file: &TechniquesFile) -> Vec<String> {
    let tools = file.capabilities.iter().flatten().map(|form| &form.id);
    ids_of(tools.chain(file.low_rails.iter().flatten().map(|form| &form.id)))
}

fn acts(file: &TechniquesFile, language: &str, spot: &Spot<'_>) -> Vec<Act> {
    let act = |(id, says): &(String, _)| {
        check_id(id, &spot.key(id));
        let says = spot.title(id, says, language, "write it in words");
        Act { id: id.clone(), says: says.unwrap_or_default() }
    };
    file.acts.iter().flat_map(|acts| &acts.0).map(act).collect()
}

fn technique(
    id: String,
    form: &TechniqueForm,
    names: &Names<'_>,
    spot: &Spot<'_>,
) -> Option<Technique> {
    let language = names.language;
    let title = spot.title("title", &form.title, language, "write what it is called");
    let cited = spot.cited(&form.clause, &form.verified);
    let steps = spot.steps(&form.steps, language);
    let never_with = spot.listed("never with", form.never_with.as_deref(), |at, one| {
        Some(pattern(one, names.facts, at))
    });
    let needs = form.needs.as_deref();
    let needs = spot.all_named("needs", needs, &names.capabilities, "capability");
    Some(Technique {
        id,
        steps,
        needs,
        acts: spot.all_named("acts", form.acts.as_deref(), &names.acts, "act"),
        never_with,
        stop: spot.texts("stop", &form.stop, language),
        cautions: spot.lines("cautions", &form.cautions, language),
        cuts_line: spot.flag("cuts line", &form.cuts_line).unwrap_or(false),
        drawing: spot.drawing(&form.drawing),
        place: spot.place(),
        title: title?,
        cited: cited?,
    })
}

fn never(form: &NeverForm, names: &Names<'_>, spot: &Spot<'_>) -> Option<Never> {
    let says = spot.title("says", &form.says, names.language, "write what is never done");
    let mend = "write in which cases, or `when: {}` for all of them";
    let when = when(&form.when, names.facts, spot, mend);
    let acts = spot.all_named("acts", form.acts.as_deref(), &names.acts, "act");
    let cited = spot.cited(&form.clause, &form.verified);
    Some(Never { says: says?, when: when?, acts, cited: cited?, place: spot.place() })
}

fn card(id: String, form: &CardForm, language: &str, spot: &Spot<'_>) -> Option<Card> {
    let title = spot.title("title", &form.title, language, "write what it is called");
    let cited = spot.cited(&form.clause, &form.verified);
    Some(Card {
        id,
        steps: spot.steps(&form.steps, language),
        nevers: spot.lines("nevers", &form.nevers, language),
        cautions: spot.lines("cautions", &form.cautions, language),
        drawing: spot.drawing(&form.drawing),
        title: title?,
        cited: cited?,
    })
}

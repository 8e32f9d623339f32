//! From a file of techniques as written to the practice that is used.
//!
//! Imports `model`; facts and situations are read in a file of their own, and
//! whether all of it fits together is judged last, in `practice`.

use crate::load::check::lines::ids_of;
use crate::load::check::phrase::limit;
use crate::load::check::practice::judge_practice;
use crate::load::check::requirement::{Around, Drafted, check_requirement};
use crate::load::check::situations::{Known, facts, pattern, situations, when};
use crate::load::check::value::copied;
use crate::load::check::vocabulary::check_id;
use crate::load::form::profile::{FREEBOARD_FROM, RequirementForm};
use crate::load::form::techniques::{
    CardForm, LowRailForm, NeverForm, TechniqueForm, TechniquesFile,
};
use crate::load::read::fault::{Fault, Part};
use crate::load::read::spot::{Origin, Spot, filled};
use crate::measure::{Figure, Length, LengthUnit, QuantityKind};
use crate::model::profile::FreeboardFrom;
use crate::model::rule::{Bound, Limit};
use crate::model::technique::{
    Act, Capability, Card, Cited, Fact, GivenBy, Never, Practice, Technique,
};
use crate::model::vocabulary::Vocabulary;

/// Checks a file of techniques.
pub(crate) fn check_techniques(
    file: &TechniquesFile,
    words: &Vocabulary,
    top: &Spot<'_>,
) -> Option<Practice> {
    let before = top.problems().count();
    let language = filled(&file.language).unwrap_or("en");
    let source = top.must("source", copied(&file.source), Fault::NoPracticeSource);
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
        let id = at.own_id(&form.id, &mut ids, Part::Technique);
        Some(technique(id, form, &names, at))
    });
    let ids = ids_of(file.techniques.iter().flatten().map(|form| &form.id));
    let known = Known { facts: &facts, techniques: &ids, language };
    let (situations, along) = situations(file, &known, top);
    let nevers = file.nevers.as_deref();
    let nevers = top.listed("nevers", nevers, |at, form| Some(never(form, &names, at)));
    let mut ids = Vec::new();
    let cards = top.listed("cards", file.cards.as_deref(), |at, form| {
        let id = at.own_id(&form.id, &mut ids, Part::Card);
        Some(card(id, form, language, at))
    });
    let freeboard_from = top.word("freeboard from", &file.freeboard_from, &FREEBOARD_FROM);
    let practice = Practice {
        id: top.id("id", &file.id),
        encoding: top.count("encoding", &file.encoding, 1, 9999).unwrap_or(1),
        title: top.title("title", &file.title, language, Fault::NoPartTitle)?,
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
        let says = spot.title(id, says, language, Fault::NoActText(id.clone()));
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
    let title = spot.title("title", &form.title, language, Fault::NoPartTitle);
    let cited = spot.cited(&form.clause, &form.verified);
    let steps = spot.steps(&form.steps, language);
    let never_with = spot.listed("never with", form.never_with.as_deref(), |at, one| {
        Some(pattern(one, names.facts, at))
    });
    let needs = form.needs.as_deref();
    let needs = spot.all_named("needs", needs, &names.capabilities, Part::Capability);
    Some(Technique {
        id,
        steps,
        needs,
        acts: spot.all_named("acts", form.acts.as_deref(), &names.acts, Part::Act),
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
    let says = spot.title("says", &form.says, names.language, Fault::NoNeverText);
    let when = when(&form.when, names.facts, spot, Fault::NoNeverCases);
    let acts = spot.all_named("acts", form.acts.as_deref(), &names.acts, Part::Act);
    let cited = spot.cited(&form.clause, &form.verified);
    Some(Never { says: says?, when: when?, acts, cited: cited?, place: spot.place() })
}

fn card(id: String, form: &CardForm, language: &str, spot: &Spot<'_>) -> Option<Card> {
    let title = spot.title("title", &form.title, language, Fault::NoPartTitle);
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

/// Reads the capabilities, then the low rails; none where one of them could
/// not be read, since the indices of the others would be off.
pub(crate) fn capabilities(
    file: &TechniquesFile,
    words: &Vocabulary,
    language: &str,
    top: &Spot<'_>,
) -> Option<Vec<Capability>> {
    let mut ids: Vec<String> = Vec::new();
    let mut twin = |at: &Spot<'_>, id: &Option<String>| {
        at.refuse_twin(filled(id).unwrap_or_default(), &mut ids, Part::Capability);
    };
    let mut read = top.listed("capabilities", file.capabilities.as_deref(), |at, form| {
        twin(at, &form.id);
        Some(by_tools(form, words, language, at))
    });
    read.extend(top.listed("low rails", file.low_rails.as_deref(), |at, form| {
        twin(at, &form.id);
        Some(by_low_rail(form, language, at))
    }));
    read.into_iter().collect()
}

/// A capability that tools of the kit give.
fn by_tools(
    form: &RequirementForm,
    words: &Vocabulary,
    language: &str,
    spot: &Spot<'_>,
) -> Option<Capability> {
    if refuse_strays(form, spot) {
        return None;
    }
    let origin = Origin { place: spot.place(), changed: Vec::new() };
    let drafted = Drafted { form: form.clone(), origin };
    let around = Around { words, ids: &[], inspection: None, language };
    let requirement = check_requirement(&drafted, &around, spot.problems())?;
    spot.cap_requirement(&requirement);
    Some(Capability {
        id: requirement.id.clone(),
        title: requirement.title.clone(),
        cited: Cited { clause: requirement.clause.clone(), verified: requirement.verified },
        note: requirement.note.clone(),
        given_by: GivenBy::Tools(Box::new(requirement)),
    })
}

/// A key, whether it is written, and what is wrong with that.
type Stray = (&'static str, bool, fn(&'static str) -> Fault);

/// Refuses the keys of a requirement that mean nothing in a capability, each
/// with the reason; true if there are any.
fn refuse_strays(form: &RequirementForm, spot: &Spot<'_>) -> bool {
    let strays: [Stray; 15] = [
        ("level", form.level.is_some(), Fault::CapabilityLevel),
        ("formerly", form.formerly.is_some(), Fault::CapabilityFormerly),
        ("from", form.from.is_some(), Fault::CapabilityByDay),
        ("until", form.until.is_some(), Fault::CapabilityByDay),
        ("when", form.when.is_some(), Fault::CapabilityByVessel),
        ("unless", form.unless.is_some(), Fault::CapabilityByVessel),
        ("inspection due", form.inspection_due.is_some(), Fault::CapabilityInspected),
        ("spare for", form.spare_for.is_some(), Fault::CapabilityOfSpares),
        ("certificate", form.certificate.is_some(), Fault::CapabilityWithoutTools),
        ("held by", form.held_by.is_some(), Fault::CapabilityWithoutTools),
        ("valid", form.valid.is_some(), Fault::CapabilityWithoutTools),
        ("every", form.every.is_some(), Fault::CapabilityWithoutTools),
        ("met by the tool of", form.met_by.is_some(), Fault::CapabilityByOtherTool),
        ("may share the tool of", form.may_share.is_some(), Fault::CapabilityByOtherTool),
        ("after", form.after.is_some(), Fault::CapabilityPlaced),
    ];
    let strays = strays.into_iter().filter(|(_, is_there, _)| *is_there);
    strays.map(|(key, _, fault)| spot.wrong_key(key, fault(key)).tell()).count() > 0
}

/// A capability that a low rail gives.
fn by_low_rail(form: &LowRailForm, language: &str, spot: &Spot<'_>) -> Option<Capability> {
    let id = spot.id("id", &form.id);
    let title = spot.title("title", &form.title, language, Fault::NoPartTitle);
    let cited = spot.cited(&form.clause, &form.verified);
    let note = spot.remark("note", &form.note, language);
    let text = spot.must("freeboard", filled(&form.freeboard), Fault::NoLowRail);
    let given_by = text.and_then(|text| low_rail(text, &spot.key("freeboard")));
    Some(Capability { id, title: title?, cited: cited?, note, given_by: given_by? })
}

/// `at most 2 ft`.
fn low_rail(text: &str, spot: &Spot<'_>) -> Option<GivenBy> {
    let figure = match limit(text, QuantityKind::Length, LengthUnit::Feet, spot) {
        Ok(Limit::AtMost(Bound::Fixed { figure, .. })) => figure,
        Ok(_) => {
            return spot.wrong(Fault::LowRailOtherLimit).of(text).none();
        }
        Err(mut problem) => {
            let is_bare = Figure::parse(text, QuantityKind::Length).is_ok();
            let bare = is_bare.then(|| text.to_owned());
            problem.fault = Fault::LowRailNoLimit { why: Box::new(problem.fault), bare };
            return spot.take(Err(problem));
        }
    };
    let at_most = figure.length()?;
    if at_most == Length::ZERO {
        return spot.wrong(Fault::LowRailOfZero).of(text).none();
    }
    Some(GivenBy::LowRail { at_most, figure })
}

//! From a requirement as written to the requirement that is used.
//!
//! Imports `model`; what the requirement wants is read in `need`, its lines in
//! `condition`.

use crate::load::check::condition::{conditions, tests};
use crate::load::check::need::NeedReader;
use crate::load::check::value::copied;
use crate::load::check::vocabulary::check_id;
use crate::load::form::loose::{Single, Slot, Words};
use crate::load::form::open::Open;
use crate::load::form::profile::{DeemedForm, LEVELS, RequirementForm, VERIFIED, Worded};
use crate::load::read::fault::Fault;
use crate::load::read::problem::Problems;
use crate::load::read::spot::{Origin, Spot, filled, said};
use crate::measure::Interval;
use crate::model::profile::{Deemed, Level, Requirement, Verified};
use crate::model::rule::{Condition, Need};
use crate::model::text::Text;
use crate::model::vocabulary::{Class, KindId, Vocabulary};
use std::collections::BTreeMap;

/// The clause of what has no published source.
pub(crate) const NO_SOURCE: &str = "common practice, no source";

/// A requirement as it is written, all changes made.
#[derive(Debug, Clone)]
pub(crate) struct Drafted {
    /// What is written.
    pub(crate) form: RequirementForm,
    /// Where.
    pub(crate) origin: Origin,
}

impl Drafted {
    /// The id as written; empty if there is none.
    pub(crate) fn id(&self) -> &str {
        filled(&self.form.id).unwrap_or("")
    }

    /// Where it is checked.
    pub(crate) fn spot<'a>(&'a self, problems: &'a Problems) -> Spot<'a> {
        Spot::requirement(&self.origin, problems)
    }
}

/// What a requirement needs to know of its profile.
pub(crate) struct Around<'a> {
    /// The words.
    pub(crate) words: &'a Vocabulary,
    /// The ids of all requirements, in order.
    pub(crate) ids: &'a [String],
    /// How often every tool must be inspected.
    pub(crate) inspection: Option<Interval>,
    /// The governing language.
    pub(crate) language: &'a str,
}

/// Checks one requirement; tools deemed to serve it are linked afterwards.
pub(crate) fn check_requirement(
    drafted: &Drafted,
    around: &Around<'_>,
    problems: &Problems,
) -> Option<Requirement> {
    let (form, spot) = (&drafted.form, drafted.spot(problems));
    let id = drafted.id().to_owned();
    if id.is_empty() {
        spot.missing("id", Fault::NoRequirementId);
    } else {
        check_id(&id, &spot.key("id"));
    }
    let text = |key, text: &Option<Worded>| {
        text.as_ref().and_then(|text| worded(text, around.language, &spot.key(key)))
    };
    let title = spot.must("title", text("title", &form.title), Fault::NoRequirementTitle);
    let verified = verified(&form.verified, &spot);
    let clause = clause(&form.clause, verified).map(str::to_owned);
    let clause = spot.must("clause", clause, Fault::NoClause);
    let level = spot.word("level", &form.level, &LEVELS).unwrap_or(Level::Required);
    let note = text("note", &form.note);
    let span = spot.span(&form.from, &form.until);
    let (when, unless) = binding(form, around.words, &spot);
    let spare_for = spot.read("spare for", &form.spare_for, |at, id| reference(id, around, at));
    let need = NeedReader { words: around.words }.need(form, spare_for, &spot)?;
    Some(Requirement {
        inspection: inspection(&form.inspection_due, &need, around, &spot),
        id,
        formerly: match &form.formerly {
            None => Vec::new(),
            Some(Words::One(word)) => vec![word.trim().to_owned()],
            Some(Words::Many(words)) => words.iter().map(|word| word.trim().to_owned()).collect(),
        },
        title: title?,
        level,
        clause: clause?,
        verified: verified?,
        note,
        span,
        when,
        unless,
        need,
        deemed: Vec::new(),
        shares: Vec::new(),
        place: drafted.origin.place.clone(),
    })
}

/// How something was verified, which must be said.
pub(crate) fn verified(text: &Option<String>, spot: &Spot<'_>) -> Option<Verified> {
    spot.must("verified", filled(text), Fault::NoVerified)?;
    spot.word("verified", text, &VERIFIED)
}

/// The clause as written, or that there is none.
pub(crate) fn clause(text: &Option<String>, verified: Option<Verified>) -> Option<&str> {
    filled(text).or((verified == Some(Verified::CommonPractice)).then_some(NO_SOURCE))
}

/// Text for people, with its translations.
pub(crate) fn worded(written: &Worded, language: &str, spot: &Spot<'_>) -> Option<Text> {
    let Open(lines) = match written {
        Single::Plain(text) => return said(text).map(Text::plain),
        Single::Form(lines) => &**lines,
    };
    let line = |(tag, text): &(String, Option<String>)| Some((tag.clone(), copied(text)?));
    let mut others: BTreeMap<String, String> = lines.iter().filter_map(line).collect();
    let Some(main) = others.remove(language) else {
        return spot.wrong(Fault::NoGoverningText(language.to_owned())).none();
    };
    Some(Text { main, others })
}

fn binding(
    form: &RequirementForm,
    words: &Vocabulary,
    spot: &Spot<'_>,
) -> (Vec<Condition>, Vec<Vec<Condition>>) {
    let when = form.when.as_ref().and_then(Slot::value);
    let when = when.map(|group| conditions(group, words, &spot.key("when"))).unwrap_or_default();
    let here = spot.key("unless");
    let unless = match form.unless.as_ref().and_then(Slot::value) {
        Some(groups) => here.each_of(groups, |at, group| Some(conditions(group, words, at))),
        None => Vec::new(),
    };
    // An empty group would hold always and take the requirement away.
    if unless.iter().any(Vec::is_empty) {
        here.wrong(Fault::EmptyGroup).tell();
    }
    (when, unless)
}

/// The requirement's own interval, or the profile's for tools.
fn inspection(
    written: &Option<String>,
    need: &Need,
    around: &Around<'_>,
    spot: &Spot<'_>,
) -> Option<Interval> {
    match (filled(written), need) {
        (Some("none" | "no"), _) => None,
        (Some(_), _) => spot.interval("inspection due", written),
        (None, Need::Tools { types, .. }) => {
            let mut specs = types.iter().flat_map(|t| t.members.iter().flat_map(|m| &m.choices));
            let of_tools = specs.any(|spec| around.words.kind(spec.kind).class == Class::Tool);
            around.inspection.filter(|_| of_tools)
        }
        (None, Need::Certificates { .. } | Need::Gear { .. }) => None,
    }
}

/// The index of the requirement of that id.
fn reference(id: &str, around: &Around<'_>, spot: &Spot<'_>) -> Option<usize> {
    around.ids.iter().position(|known| known == id.trim()).or_else(|| {
        spot.wrong(Fault::UnknownRequirement)
            .unlike(id, around.ids.iter().map(String::as_str))
            .none()
    })
}

/// Looks up the requirements that one names: those whose tools are deemed to
/// serve it, and those whose tools it may share. `kinds` are the kinds that
/// can serve each requirement.
pub(crate) fn links(
    drafted: &Drafted,
    around: &Around<'_>,
    kinds: &[Vec<KindId>],
    problems: &Problems,
) -> (Vec<Deemed>, Vec<usize>) {
    let spot = drafted.spot(problems);
    let met_by = drafted.form.met_by.as_ref().map(|written| {
        spot.key("met by the tool of").each_of(written, |at, one| deemed(one, around, kinds, at))
    });
    let may_share = drafted.form.may_share.as_ref().map(|written| {
        let find = |at: &Spot<'_>, id: &String| reference(id, around, at);
        spot.key("may share the tool of").each_of(written, find)
    });
    (met_by.unwrap_or_default(), may_share.unwrap_or_default())
}

fn deemed(
    written: &Single<DeemedForm>,
    around: &Around<'_>,
    kinds: &[Vec<KindId>],
    spot: &Spot<'_>,
) -> Option<Deemed> {
    let form = match written {
        Single::Plain(id) => {
            let requirement = reference(id, around, spot)?;
            return Some(Deemed { requirement, tests: Vec::new() });
        }
        Single::Form(form) => form,
    };
    let id = filled(&form.requirement);
    let id = spot.must("requirement", id, Fault::NoDeemed)?;
    let requirement = reference(id, around, &spot.key("requirement"))?;
    let read = |group| tests(group, &kinds[requirement], around.words, &spot.key("with"));
    Some(Deemed { requirement, tests: form.with.as_ref().map(read).unwrap_or_default() })
}

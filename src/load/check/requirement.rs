//! From a requirement as written to the requirement that is used.
//!
//! Imports `model`; what the requirement wants is read in `check_need`, its
//! lines in `condition`.

use crate::load::check::condition::LineReader;
use crate::load::check::need::NeedReader;
use crate::load::check::value::{choice, filled, interval, missing, span};
use crate::load::check::vocabulary::check_id;
use crate::load::form::loose::{Loose, Single, Slot, Words};
use crate::load::form::open::Open;
use crate::load::form::profile::LEVELS;
use crate::load::form::profile::VERIFIED;
use crate::load::form::profile::{DeemedForm, Unless, Worded};
use crate::load::library::merge::Drafted;
use crate::load::read::problem::{Problem, Problems};
use crate::load::read::spot::Spot;
use crate::load::read::suggest::{did_you_mean, nearest};
use crate::measure::Interval;
use crate::model::profile::{Deemed, Level, Requirement, Verified};
use crate::model::rule::{Condition, Need, Test};
use crate::model::text::Text;
use crate::model::vocabulary::{Class, KindId, Vocabulary};

/// The clause of what has no published source.
pub(crate) const NO_SOURCE: &str = "common practice, no source";

/// What a requirement needs to know of its profile.
pub(crate) struct Around<'a> {
    /// The words.
    pub(crate) vocabulary: &'a Vocabulary,
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
    problems: &mut Problems,
) -> Option<Requirement> {
    let form = &drafted.form;
    let spot = Spot::requirement(&drafted.origin);
    let id = drafted.id().to_owned();
    if id.is_empty() {
        missing(&spot, "id", problems, "write an id, unique in the profile");
    } else {
        check_id(&id, &spot.key("id"), problems);
    }
    let title = form
        .title
        .as_ref()
        .and_then(|title| worded(title, around.language, &spot.key("title"), problems));
    if title.is_none() {
        missing(&spot, "title", problems, "write what the rule calls it");
    }
    let verified = match filled(form.verified.as_deref()) {
        Some(text) => choice(text, &VERIFIED, &spot.key("verified"), problems),
        None => {
            let mend = "write `read`, `excerpt`, `inferred`, `memory` or `common practice`";
            missing(&spot, "verified", problems, mend);
            None
        }
    };
    let clause = filled(form.clause.as_deref())
        .map(str::to_owned)
        .or_else(|| (verified == Some(Verified::CommonPractice)).then(|| NO_SOURCE.to_owned()));
    if clause.is_none() {
        missing(&spot, "clause", problems, "write the clause of the source");
    }
    let level = filled(form.level.as_deref())
        .and_then(|text| choice(text, &LEVELS, &spot.key("level"), problems))
        .unwrap_or(Level::Required);
    let note = form
        .note
        .as_ref()
        .and_then(|note| worded(note, around.language, &spot.key("note"), problems));
    let span = span(form.from.as_deref(), form.until.as_deref(), &spot, problems);
    let (when, unless) = binding(drafted, around, problems);
    let spare_for = filled(form.spare_for.as_deref())
        .and_then(|id| reference(id, around.ids, &spot.key("spare for"), problems));
    let need = NeedReader { vocabulary: around.vocabulary, problems }.need(form, spare_for, &spot);
    let need = need?;
    Some(Requirement {
        inspection: inspection(drafted, &need, around, problems),
        id,
        formerly: listed(form.formerly.as_ref()),
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

/// Text for people, with its translations.
pub(crate) fn worded(
    written: &Worded,
    language: &str,
    spot: &Spot<'_>,
    problems: &mut Problems,
) -> Option<Text> {
    let Open(lines) = match written {
        Single::Plain(text) => return filled(Some(text)).map(Text::plain),
        Single::Form(lines) => &**lines,
    };
    let said = |(tag, text): &(String, Option<String>)| {
        filled(text.as_deref()).map(|text| (tag.clone(), text.to_owned()))
    };
    let mut others: std::collections::BTreeMap<String, String> =
        lines.iter().filter_map(said).collect();
    let main = others.remove(language);
    if main.is_none() {
        problems.add(
            Problem::new(spot.place(), "the text in the governing language is missing")
                .expected(format!("a line that begins with `{language}:`")),
        );
    }
    main.map(|main| Text { main, others })
}

fn listed(words: Option<&Words>) -> Vec<String> {
    match words {
        None => Vec::new(),
        Some(Words::One(word)) => vec![word.trim().to_owned()],
        Some(Words::Many(words)) => words.iter().map(|word| word.trim().to_owned()).collect(),
    }
}

fn binding(
    drafted: &Drafted,
    around: &Around<'_>,
    problems: &mut Problems,
) -> (Vec<Condition>, Vec<Vec<Condition>>) {
    let spot = Spot::requirement(&drafted.origin);
    let mut reader = LineReader { vocabulary: around.vocabulary, problems };
    let when = drafted.form.when.as_ref().and_then(Slot::value);
    let when = when.map(|group| reader.conditions(group, &spot.key("when"))).unwrap_or_default();
    let here = spot.key("unless");
    let unless = match drafted.form.unless.as_ref().and_then(Slot::value) {
        None => Vec::new(),
        Some(Unless::One(group)) => vec![reader.conditions(group, &here)],
        Some(Unless::Many(groups)) => groups
            .iter()
            .enumerate()
            .map(|(index, group)| reader.conditions(group, &here.entry(index)))
            .collect(),
    };
    // An empty group would hold always and take the requirement away.
    if unless.iter().any(Vec::is_empty) {
        reader.problems.add(Problem::new(here.place(), "an empty group always holds"));
    }
    (when, unless)
}

/// The requirement's own interval, or the profile's for tools.
fn inspection(
    drafted: &Drafted,
    need: &Need,
    around: &Around<'_>,
    problems: &mut Problems,
) -> Option<Interval> {
    if let Some(text) = filled(drafted.form.inspection_due.as_deref()) {
        let spot = Spot::requirement(&drafted.origin);
        if matches!(text, "none" | "no") {
            return None;
        }
        return interval(text, &spot.key("inspection due"), problems);
    }
    let mut specs = match need {
        Need::Tools { types, .. } => {
            types.iter().flat_map(|t| t.members.iter().flat_map(|member| member.choices.iter()))
        }
        Need::Certificates { .. } | Need::Gear { .. } => return None,
    };
    let of_tools = specs.any(|spec| around.vocabulary.kind(spec.kind).class == Class::Tool);
    around.inspection.filter(|_| of_tools)
}

/// The index of the requirement of that id.
pub(crate) fn reference(
    id: &str,
    ids: &[String],
    spot: &Spot<'_>,
    problems: &mut Problems,
) -> Option<usize> {
    let found = ids.iter().position(|known| known == id.trim());
    if found.is_none() {
        problems.add(
            Problem::new(spot.place(), "no requirement of this id is in the profile")
                .offending(id)
                .mend_if(did_you_mean(nearest(id, ids.iter().map(String::as_str)))),
        );
    }
    found
}

/// Links to other requirements, as indices.
#[derive(Default)]
pub(crate) struct Links {
    /// Whose tools are deemed to serve.
    pub(crate) deemed: Vec<Deemed>,
    /// Whose tools may be shared.
    pub(crate) shares: Vec<usize>,
}

/// Looks up the requirements that one names. `kinds` are the kinds that can
/// serve each requirement.
pub(crate) fn links(
    drafted: &Drafted,
    around: &Around<'_>,
    kinds: &[Vec<KindId>],
    problems: &mut Problems,
) -> Links {
    let spot = Spot::requirement(&drafted.origin);
    let mut links = Links::default();
    let here = spot.key("met by the tool of");
    match &drafted.form.met_by {
        None => {}
        Some(Loose::One(one)) => {
            links.deemed.extend(deemed(one, &here, around, kinds, problems));
        }
        Some(Loose::Many(many)) => {
            for (index, one) in many.iter().enumerate() {
                links.deemed.extend(deemed(one, &here.entry(index), around, kinds, problems));
            }
        }
    }
    let here = spot.key("may share the tool of");
    match &drafted.form.may_share {
        None => {}
        Some(Words::One(id)) => links.shares.extend(reference(id, around.ids, &here, problems)),
        Some(Words::Many(ids)) => {
            for (index, id) in ids.iter().enumerate() {
                links.shares.extend(reference(id, around.ids, &here.entry(index), problems));
            }
        }
    }
    links
}

fn deemed(
    written: &Single<DeemedForm>,
    spot: &Spot<'_>,
    around: &Around<'_>,
    kinds: &[Vec<KindId>],
    problems: &mut Problems,
) -> Option<Deemed> {
    let form = match written {
        Single::Plain(id) => {
            let requirement = reference(id, around.ids, spot, problems)?;
            return Some(Deemed { requirement, tests: Vec::new() });
        }
        Single::Form(form) => form,
    };
    let Some(id) = filled(form.requirement.as_deref()) else {
        missing(spot, "requirement", problems, "write the id of the requirement");
        return None;
    };
    let requirement = reference(id, around.ids, &spot.key("requirement"), problems)?;
    let mut reader = LineReader { vocabulary: around.vocabulary, problems };
    let tests: Vec<Test> = form
        .with
        .as_ref()
        .map(|group| reader.tests(group, &kinds[requirement], &spot.key("with")))
        .unwrap_or_default();
    Some(Deemed { requirement, tests })
}

//! From capabilities and low rails as written to what a technique can need.
//!
//! Imports `model`; the tools that give a capability are read like a
//! requirement of a profile, in `requirement`.

use crate::load::check::phrase::limit;
use crate::load::check::requirement::{Around, Drafted, check_requirement};
use crate::load::form::profile::RequirementForm;
use crate::load::form::techniques::{LowRailForm, TechniquesFile};
use crate::load::read::spot::{Origin, Spot, filled};
use crate::measure::{Figure, Length, QuantityKind};
use crate::model::rule::{Bound, Limit};
use crate::model::technique::{Capability, Cited, GivenBy};
use crate::model::vocabulary::Vocabulary;

/// How the freeboard of a low rail is written.
const LOW: &str = "`at most` and a length, like `at most 2 ft`";

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
        at.refuse_twin(filled(id).unwrap_or_default(), &mut ids, "capabilities");
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

/// Refuses the keys of a requirement that mean nothing in a capability, each
/// with the reason; true if there are any.
fn refuse_strays(form: &RequirementForm, spot: &Spot<'_>) -> bool {
    let by_day = "a capability is tried on one kit, whatever the day";
    let anywhere = "a capability is the same on every vessel; situations say when it is needed";
    let own_tool = "a technique uses each tool once, and each tool by what it is like";
    let tools = "a capability is given by tools of the kit";
    let strays = [
        ("level", form.level.is_some(), "a capability binds nobody, so it has no level"),
        ("formerly", form.formerly.is_some(), "no record names a capability by an earlier id"),
        ("from", form.from.is_some(), by_day),
        ("until", form.until.is_some(), by_day),
        ("when", form.when.is_some(), anywhere),
        ("unless", form.unless.is_some(), anywhere),
        (
            "inspection due",
            form.inspection_due.is_some(),
            "when a tool was last inspected is the rule's business",
        ),
        ("spare for", form.spare_for.is_some(), "spares free no turtle"),
        ("certificate", form.certificate.is_some(), tools),
        ("held by", form.held_by.is_some(), tools),
        ("valid", form.valid.is_some(), tools),
        ("every", form.every.is_some(), tools),
        ("met by the tool of", form.met_by.is_some(), own_tool),
        ("may share the tool of", form.may_share.is_some(), own_tool),
        ("after", form.after.is_some(), "a capability stands where it is written"),
    ];
    let strays = strays.into_iter().filter(|(_, is_there, _)| *is_there);
    let tell = |(key, _, why)| {
        spot.wrong_key(key, format!("`{key}` has no place in a capability"))
            .expected(format!("tools alone, since {why}"))
            .mend("take the line away")
            .tell();
    };
    strays.map(tell).count() > 0
}

/// A capability that a low rail gives.
fn by_low_rail(form: &LowRailForm, language: &str, spot: &Spot<'_>) -> Option<Capability> {
    let id = spot.id("id", &form.id);
    let title = spot.title("title", &form.title, language, "write what it is called");
    let cited = spot.cited(&form.clause, &form.verified);
    let note = spot.remark("note", &form.note, language);
    let text = spot.must("freeboard", filled(&form.freeboard), &format!("write {LOW}"));
    let given_by = text.and_then(|text| low_rail(text, &spot.key("freeboard")));
    Some(Capability { id, title: title?, cited: cited?, note, given_by: given_by? })
}

/// `at most 2 ft`.
fn low_rail(text: &str, spot: &Spot<'_>) -> Option<GivenBy> {
    let figure = match limit(text, QuantityKind::Length, spot) {
        Ok(Limit::AtMost(Bound::Fixed { figure, .. })) => figure,
        Ok(_) => {
            let wrong = spot.wrong("a low rail is told by its greatest freeboard alone").of(text);
            return wrong.expected(LOW).none();
        }
        Err(problem) => {
            let is_bare = Figure::parse(text, QuantityKind::Length).is_ok();
            let problem = problem.expected(LOW);
            let problem =
                if is_bare { problem.mend(format!("write `at most {text}`")) } else { problem };
            return spot.take(problem.refused());
        }
    };
    let at_most = figure.length()?;
    if at_most == Length::ZERO {
        return spot.wrong("no rail lies on the water").of(text).expected(LOW).none();
    }
    Some(GivenBy::LowRail { at_most, figure })
}

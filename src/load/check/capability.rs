//! From capabilities and low rails as written to what a technique can need.
//!
//! Imports `model`; the tools that give a capability are read like a
//! requirement of a profile, in `check_requirement`.

use crate::load::check::lines::Desk;
use crate::load::check::phrase::limit;
use crate::load::check::requirement::{Around, check_requirement};
use crate::load::check::value::filled;
use crate::load::form::profile::RequirementForm;
use crate::load::form::techniques::{LowRailForm, TechniquesFile};
use crate::load::library::merge::Drafted;
use crate::load::read::problem::Problem;
use crate::load::read::spot::{Origin, Spot};
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
    vocabulary: &Vocabulary,
    top: &Spot<'_>,
    desk: &mut Desk<'_>,
) -> Option<Vec<Capability>> {
    let mut ids: Vec<String> = Vec::new();
    let mut read = Vec::new();
    let list = top.key("capabilities");
    for (index, form) in desk.entries(file.capabilities.as_deref(), &list).iter().enumerate() {
        let spot = list.entry(index);
        ids.push(filled(form.id.as_deref()).unwrap_or_default().to_owned());
        desk.refuse_twin(&ids, "capabilities", &spot.key("id"));
        read.push(by_tools(form, vocabulary, &spot, desk));
    }
    let list = top.key("low rails");
    for (index, form) in desk.entries(file.low_rails.as_deref(), &list).iter().enumerate() {
        let spot = list.entry(index);
        ids.push(filled(form.id.as_deref()).unwrap_or_default().to_owned());
        desk.refuse_twin(&ids, "capabilities", &spot.key("id"));
        read.push(by_low_rail(form, &spot, desk));
    }
    read.into_iter().collect()
}

/// A capability that tools of the kit give.
fn by_tools(
    form: &RequirementForm,
    vocabulary: &Vocabulary,
    spot: &Spot<'_>,
    desk: &mut Desk<'_>,
) -> Option<Capability> {
    let before = desk.problems.count();
    refuse_strays(form, spot, desk);
    if desk.problems.count() > before {
        return None;
    }
    let origin = Origin { place: spot.place(), changed: Vec::new() };
    let drafted = Drafted { form: form.clone(), origin };
    let around = Around { vocabulary, ids: &[], inspection: None, language: desk.language };
    let requirement = check_requirement(&drafted, &around, desk.problems)?;
    desk.cap_requirement(&requirement, spot);
    Some(Capability {
        id: requirement.id.clone(),
        title: requirement.title.clone(),
        cited: Cited { clause: requirement.clause.clone(), verified: requirement.verified },
        note: requirement.note.clone(),
        given_by: GivenBy::Tools(Box::new(requirement)),
    })
}

/// Refuses the keys of a requirement that mean nothing in a capability, each
/// with the reason.
fn refuse_strays(form: &RequirementForm, spot: &Spot<'_>, desk: &mut Desk<'_>) {
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
    for (key, _, why) in strays.into_iter().filter(|(_, is_there, _)| *is_there) {
        desk.problems.add_at_key(
            Problem::new(spot.key(key).place(), format!("`{key}` has no place in a capability"))
                .expected(format!("tools alone, since {why}"))
                .mend("take the line away"),
        );
    }
}

/// A capability that a low rail gives.
fn by_low_rail(form: &LowRailForm, spot: &Spot<'_>, desk: &mut Desk<'_>) -> Option<Capability> {
    let id = desk.id(form.id.as_deref(), spot, "id");
    let title = desk.title(form.title.as_ref(), spot, "title", "write what it is called");
    let cited = desk.cited(form.clause.as_deref(), form.verified.as_deref(), spot);
    let note = desk.remark(form.note.as_ref(), &spot.key("note"));
    let given_by = low_rail(form.freeboard.as_deref(), spot, desk);
    Some(Capability { id, title: title?, cited: cited?, note, given_by: given_by? })
}

/// `at most 2 ft`.
fn low_rail(written: Option<&str>, above: &Spot<'_>, desk: &mut Desk<'_>) -> Option<GivenBy> {
    let Some(text) = filled(written) else {
        desk.missing(above, "freeboard", &format!("write {LOW}"));
        return None;
    };
    let spot = above.key("freeboard");
    let figure = match limit(text, QuantityKind::Length, &spot) {
        Ok(Limit::AtMost(Bound::Fixed { figure, .. })) => figure,
        Ok(_) => {
            let what = "a low rail is told by its greatest freeboard alone";
            desk.add(Problem::new(spot.place(), what).offending(text).expected(LOW));
            return None;
        }
        Err(problem) => {
            let problem = problem.expected(LOW);
            let is_bare = Figure::parse(text, QuantityKind::Length).is_ok();
            let mend = format!("write `at most {text}`");
            desk.add(if is_bare { problem.mend(mend) } else { problem });
            return None;
        }
    };
    let at_most = figure.length()?;
    if at_most == Length::ZERO {
        let what = "no rail lies on the water";
        desk.add(Problem::new(spot.place(), what).offending(text).expected(LOW));
        return None;
    }
    Some(GivenBy::LowRail { at_most, figure })
}

//! What is known of each requirement at a point: whether it binds, and how
//! every tool of the kit fits what it asks.

use super::condition::Known;
use super::notes::{self, Notes, Sum};
use super::point::Point;
use super::{fit, holders};
use crate::measure::Answer;
use crate::model::profile::Requirement;
use crate::model::reason::Reason;
use crate::model::rule::{Member, Need, Spec};
use crate::model::vessel::Tool;
use crate::model::vocabulary::KindId;

/// The fit of one tool to one choice of a member.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Fitted {
    pub(crate) of_type: usize,
    pub(crate) place: usize,
    pub(crate) tool: usize,
    pub(crate) choice: usize,
    pub(crate) answer: Answer,
}

/// Everything that is known of one requirement at one point.
#[derive(Debug)]
pub(crate) struct View<'a> {
    pub(crate) requirement: &'a Requirement,
    pub(crate) binds: Known,
    /// Whether it is met, for one that wants no tool.
    pub(crate) own: Option<Answer>,
    /// For tools: by type, by member, the fits of the tools of its kinds.
    fits: Vec<Fitted>,
}

impl<'a> View<'a> {
    /// The fits to one member of a type.
    pub(crate) fn fits_of(&self, of_type: usize, place: usize) -> &[Fitted] {
        let start = self.fits.partition_point(|f| (f.of_type, f.place) < (of_type, place));
        let end = self.fits.partition_point(|f| (f.of_type, f.place) <= (of_type, place));
        &self.fits[start..end]
    }

    /// The fits to every member of every type.
    pub(crate) fn all_fits(&self) -> &[Fitted] {
        &self.fits
    }

    /// Whether it binds at that point as it does here, and if it wants no tool
    /// is as surely met.
    pub(crate) fn stands_at(&self, point: &Point<'_>) -> bool {
        let own = || holders::reasons(self.requirement, point).map(|own| notes::answer(&own));
        point.binds(self.requirement) == self.binds
            && (self.binds == Ok(false) || self.own.is_none() || own() == self.own)
    }

    /// Whether the tool fits a member of a type for certain at that point.
    pub(crate) fn fits_at(
        &self,
        (of_type, place): (usize, usize),
        tool: &Tool,
        point: &Point<'_>,
    ) -> bool {
        let Need::Tools { types, .. } = &self.requirement.need else { return false };
        let clause = types[of_type].clause.as_deref();
        let choices = types[of_type].members[place].choices.iter();
        choices.filter(|spec| spec.kind == tool.kind).any(|spec| {
            let sum: Sum = fit::noted(tool, spec, clause, self.requirement, point);
            point.holds_all(&spec.when) == Ok(true) && sum.answer() == Answer::Yes
        })
    }

    /// Every reason why the tool does not serve.
    pub(crate) fn reasons(&self, fitted: &Fitted, point: &Point<'a>) -> Vec<Reason> {
        let Need::Tools { types, .. } = &self.requirement.need else {
            return Vec::new();
        };
        let the_type = &types[fitted.of_type];
        let spec = &the_type.members[fitted.place].choices[fitted.choice];
        let tool = &point.vessel.kit[fitted.tool];
        let clause = the_type.clause.as_deref();
        let mut reasons = fit::fit(tool, spec, clause, self.requirement, point);
        let open = point.holds_all(&spec.when).err();
        reasons.extend(open.map(|fact| Reason::VesselFactUnknown { fact }));
        debug_assert_eq!(notes::answer(&reasons), fitted.answer, "{reasons:?}");
        reasons
    }
}

/// The views of all requirements of the point's profile.
pub(crate) fn views<'a>(point: &Point<'a>) -> Vec<View<'a>> {
    let kinds: Vec<KindId> = point.vessel.kit.iter().map(|tool| tool.kind).collect();
    let profile = point.profile_governs();
    let view = |(index, requirement)| {
        // What is not looked at is as if it were not asked.
        let profile = if point.looks_at(index) { &profile } else { &Ok(false) };
        view(requirement, profile, &kinds, point)
    };
    point.profile.requirements.iter().enumerate().map(view).collect()
}

fn view<'a>(
    requirement: &'a Requirement,
    profile: &Known,
    kinds: &[KindId],
    point: &Point<'a>,
) -> View<'a> {
    let binds = point.binds_under(profile, requirement);
    let mut view = View { requirement, binds, own: None, fits: Vec::new() };
    if view.binds == Ok(false) {
        view.own = (!requirement.wants_tools()).then_some(Answer::No);
        return view;
    }
    match &requirement.need {
        Need::Tools { types, .. } => {
            for (of_type, the_type) in types.iter().enumerate() {
                for (place, member) in the_type.members.iter().enumerate() {
                    let at = (of_type, place);
                    let clause = the_type.clause.as_deref();
                    fit_member(member, at, clause, requirement, kinds, point, &mut view.fits);
                }
            }
        }
        _ => view.own = holders::reasons(requirement, point).map(|own| notes::answer(&own)),
    }
    view
}

fn fit_member(
    member: &Member,
    (of_type, place): (usize, usize),
    type_clause: Option<&str>,
    requirement: &Requirement,
    kinds: &[KindId],
    point: &Point<'_>,
    fits: &mut Vec<Fitted>,
) {
    let choices = member.choices.iter().enumerate();
    let open: Vec<(usize, &Spec, bool)> = choices
        .map(|(choice, spec)| (choice, spec, point.holds_all(&spec.when)))
        .filter(|(.., holds)| *holds != Ok(false))
        .map(|(choice, spec, holds)| (choice, spec, holds.is_ok()))
        .collect();
    for (tool, kind) in kinds.iter().enumerate() {
        for (choice, spec, holds) in open.iter().filter(|(_, spec, _)| spec.kind == *kind) {
            let listed = &point.vessel.kit[tool];
            let sum: Sum = fit::noted(listed, spec, type_clause, requirement, point);
            let answer = if *holds { sum.answer() } else { sum.answer().and(Answer::Unknown) };
            fits.push(Fitted { of_type, place, tool, choice: *choice, answer });
        }
    }
}

/// Tools of these kinds may be aboard that nobody listed.
pub(crate) fn may_be_unlisted(member: &Member, point: &Point<'_>) -> Vec<KindId> {
    if point.vessel.coverage.everything {
        return Vec::new();
    }
    let mut kinds: Vec<_> = member
        .choices
        .iter()
        .filter(|spec| point.holds_all(&spec.when) != Ok(false))
        .map(|spec| spec.kind)
        .filter(|kind| !point.vessel.coverage.is_whole(*kind))
        .collect();
    kinds.dedup();
    kinds
}

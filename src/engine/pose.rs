//! From a scene to the seats of the assignment.

use super::fit;
use super::holders;
use super::notes::{self, Notes, Sum};
use super::readings;
use super::scene::{self, Known, Scene};
use super::seats::{Candidate, Link, Places, Pose, Seat, SpareFit, Tools, Worth};
use crate::measure::Answer;
use crate::model::finding::Outcome;
use crate::model::profile::{Level, Requirement};
use crate::model::reason::Reason;
use crate::model::rule::{Member, Need};
use crate::model::vessel::Tool;
use crate::model::vocabulary::KindId;

/// How unknown facts are taken.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Pass {
    /// As no.
    Strict,
    /// As yes.
    Generous,
}

/// The fit of one tool to one choice of a member.
#[derive(Debug, Clone, Copy)]
pub(super) struct Fitted {
    pub(super) of_type: usize,
    pub(super) place: usize,
    pub(super) tool: usize,
    pub(super) choice: usize,
    pub(super) answer: Answer,
}

/// Everything that is known of one requirement in one scene.
#[derive(Debug)]
pub(super) struct View<'a> {
    pub(super) requirement: &'a Requirement,
    pub(super) binds: Known,
    /// Whether it is met, for one that wants no tool.
    pub(super) own: Option<Answer>,
    /// For tools: by type, by member, the fits of the tools of its kinds.
    fits: Vec<Fitted>,
}

impl<'a> View<'a> {
    /// The fits to one member of a type.
    pub(super) fn fits_of(&self, of_type: usize, place: usize) -> &[Fitted] {
        let start = self.fits.partition_point(|f| (f.of_type, f.place) < (of_type, place));
        let end = self.fits.partition_point(|f| (f.of_type, f.place) <= (of_type, place));
        &self.fits[start..end]
    }

    /// The fits to every member of every type.
    pub(super) fn all_fits(&self) -> &[Fitted] {
        &self.fits
    }

    /// Every reason why the tool does not serve.
    pub(super) fn reasons(&self, fitted: &Fitted, scene: &Scene<'a>) -> Vec<Reason> {
        let Need::Tools { types, .. } = &self.requirement.need else {
            return Vec::new();
        };
        let the_type = &types[fitted.of_type];
        let spec = &the_type.members[fitted.place].choices[fitted.choice];
        let tool = &scene.vessel.kit[fitted.tool];
        let clause = the_type.clause.as_deref();
        let mut reasons = fit::fit(tool, spec, clause, self.requirement, scene);
        let open = scene.holds_all(&spec.when).err();
        reasons.extend(open.map(|fact| Reason::VesselFactUnknown { fact }));
        debug_assert_eq!(notes::answer(&reasons), fitted.answer, "{reasons:?}");
        reasons
    }
}

/// The views of all requirements of the scene's profile.
pub(super) fn views<'a>(scene: &Scene<'a>) -> Vec<View<'a>> {
    let kinds: Vec<KindId> = scene.vessel.kit.iter().map(|tool| tool.kind).collect();
    let profile = scene.profile_governs();
    let view = |requirement| view(requirement, &profile, &kinds, scene);
    scene.profile.requirements.iter().map(view).collect()
}

fn view<'a>(
    requirement: &'a Requirement,
    profile: &Known,
    kinds: &[KindId],
    scene: &Scene<'a>,
) -> View<'a> {
    let binds = scene.binds_under(profile, requirement);
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
                    fit_member(member, at, clause, requirement, kinds, scene, &mut view.fits);
                }
            }
        }
        _ => view.own = holders::reasons(requirement, scene).map(|own| notes::answer(&own)),
    }
    view
}

fn fit_member(
    member: &Member,
    (of_type, place): (usize, usize),
    type_clause: Option<&str>,
    requirement: &Requirement,
    kinds: &[KindId],
    scene: &Scene<'_>,
    fits: &mut Vec<Fitted>,
) {
    for (tool, kind) in kinds.iter().enumerate() {
        for (choice, spec) in member.choices.iter().enumerate() {
            if spec.kind != *kind {
                continue;
            }
            let open = scene.holds_all(&spec.when);
            if open == Ok(false) {
                continue;
            }
            let listed = &scene.vessel.kit[tool];
            let sum: Sum = fit::noted(listed, spec, type_clause, requirement, scene);
            let answer =
                if open.is_err() { sum.answer().and(Answer::Unknown) } else { sum.answer() };
            fits.push(Fitted { of_type, place, tool, choice, answer });
        }
    }
}

/// Tools of these kinds may be aboard that nobody listed.
pub(super) fn may_be_unlisted(member: &Member, scene: &Scene<'_>) -> Vec<KindId> {
    if scene.vessel.coverage.everything {
        return Vec::new();
    }
    let mut kinds: Vec<_> = member
        .choices
        .iter()
        .filter(|spec| scene.holds_all(&spec.when) != Ok(false))
        .map(|spec| spec.kind)
        .filter(|kind| !scene.vessel.coverage.is_whole(*kind))
        .collect();
    kinds.dedup();
    kinds
}

/// Fills the seats for one pass.
pub(super) fn pose(views: &[View<'_>], scene: &Scene<'_>, pass: Pass) -> Pose {
    let kit = &scene.vessel.kit;
    let mut pose = Pose {
        capacity: kit.iter().map(|tool| tool.count).collect(),
        listed: kit.len(),
        ..Pose::default()
    };
    seat_parts(&mut pose, scene);
    for view in views {
        let seat = seat(view, views, scene, pass, &mut pose);
        pose.seats.push(seat);
    }
    pose
}

/// A part serves one tool at a time; a part that the kit lists as a tool of
/// its own cannot serve by itself beside it.
fn seat_parts(pose: &mut Pose, scene: &Scene<'_>) {
    let kit = &scene.vessel.kit;
    let mut names: Vec<&str> = Vec::new();
    for part in kit.iter().flat_map(|tool| &tool.parts) {
        if !scene.profile.parts_shared && !names.contains(&part.as_str()) {
            names.push(part);
        }
    }
    let index = |name: &str| names.iter().position(|known| *known == name);
    for tool in kit {
        let own = tool.parts.iter().map(String::as_str).chain([tool.mark.as_str()]);
        pose.parts.push(own.filter_map(index).collect());
    }
    pose.part_count = names.len();
}

fn worth(view: &View<'_>, pass: Pass) -> Worth {
    match (&view.binds, pass, view.requirement.level) {
        (Ok(false), _, _) => Worth::LeftOut,
        // Where it may not bind it asks nothing in the best case, but lends
        // its tool to what leans on it.
        (Err(_), Pass::Generous, _) => Worth::Nothing,
        (_, _, Level::Required) => Worth::Required,
        (_, _, Level::Recommended) => Worth::Recommended,
    }
}

fn seat(
    view: &View<'_>,
    views: &[View<'_>],
    scene: &Scene<'_>,
    pass: Pass,
    pose: &mut Pose,
) -> Seat {
    let Need::Tools { least, types, spare_for } = &view.requirement.need else {
        return Seat { worth: Worth::LeftOut, ..Seat::default() };
    };
    let mut seat = Seat {
        worth: worth(view, pass),
        least: usize::try_from(*least).unwrap_or(usize::MAX),
        ..Seat::default()
    };
    if seat.worth == Worth::LeftOut {
        return seat;
    }
    for (of_type, the_type) in types.iter().enumerate() {
        let members = the_type.members.iter().enumerate();
        let places = members
            .map(|(at, member)| place(member, view.fits_of(of_type, at), scene, pass, pose))
            .collect();
        seat.types.push(places);
    }
    seat.links = links(view.requirement, scene, pass);
    seat.fits = spare_for.map(|served| (served, spare_fits(&seat, scene, pass)));
    if pass == Pass::Strict {
        // What may not bind has no tool to lend for certain.
        let may_not_bind = |index: usize| views[index].binds.is_err();
        seat.links.retain(|link| !may_not_bind(link.from));
        if let Some((_, fits)) = seat.fits.as_mut().filter(|(served, _)| may_not_bind(*served)) {
            fits.clear();
        }
    }
    seat
}

fn place(
    member: &Member,
    fits: &[Fitted],
    scene: &Scene<'_>,
    pass: Pass,
    pose: &mut Pose,
) -> Places {
    let mut candidates: Vec<Candidate> = Vec::with_capacity(fits.len());
    for fitted in fits {
        let serves = match pass {
            Pass::Strict => fitted.answer == Answer::Yes,
            Pass::Generous => fitted.answer != Answer::No,
        };
        if !serves || candidates.iter().any(|c| c.tool == fitted.tool) {
            continue;
        }
        let tests = &member.choices[fitted.choice].tests;
        let spare = readings::to_spare(&scene.vessel.kit[fitted.tool], tests, scene);
        let price = u128::try_from(spare.nanometres()).unwrap_or(0);
        candidates.push(Candidate { tool: fitted.tool, price, once: None });
    }
    if pass == Pass::Generous && !may_be_unlisted(member, scene).is_empty() {
        let tool = unlisted(pose, member.count);
        candidates.push(Candidate { tool, price: 0, once: None });
    }
    Places { count: member.count, candidates }
}

/// Adds a tool that nobody listed, as many as are asked.
pub(super) fn unlisted(pose: &mut Pose, count: u32) -> usize {
    pose.capacity.push(count);
    pose.parts.push(Vec::new());
    pose.capacity.len() - 1
}

fn links(requirement: &Requirement, scene: &Scene<'_>, pass: Pass) -> Vec<Link> {
    let deemed = requirement.deemed.iter().map(|deemed| {
        let counts = |tool: &Tool| match fit::keeps(&deemed.tests, tool, scene) {
            Answer::Yes => true,
            Answer::Unknown => pass == Pass::Generous,
            Answer::No => false,
        };
        let kit = scene.vessel.kit.iter().enumerate();
        let tools = kit.filter(|(_, tool)| counts(tool)).map(|(index, _)| index).collect();
        Link { from: deemed.requirement, tools: Tools::These(tools) }
    });
    let shared = requirement.shares.iter().map(|from| Link { from: *from, tools: Tools::Fitting });
    deemed.chain(shared).collect()
}

fn spare_fits(seat: &Seat, scene: &Scene<'_>, pass: Pass) -> Vec<SpareFit> {
    let kit = &scene.vessel.kit;
    let mut fits = Vec::new();
    for candidate in seat.types.iter().flatten().flat_map(|places| &places.candidates) {
        let Some(spare) = kit.get(candidate.tool) else {
            fits.push((candidate.tool, None));
            continue;
        };
        if spare.fits.is_empty() {
            if pass == Pass::Generous {
                fits.push((candidate.tool, None));
            }
            continue;
        }
        let named = |mark: &String| kit.iter().any(|tool| tool.mark == *mark);
        if pass == Pass::Generous && !spare.fits.iter().all(named) {
            // The tool that they name may be one that nobody listed.
            fits.push((candidate.tool, None));
            continue;
        }
        let tools = (0..kit.len()).filter(|index| spare.fits.contains(&kit[*index].mark)).collect();
        fits.push((candidate.tool, Some(tools)));
    }
    fits
}

/// The outcome that a requirement without tools has, from its own answer.
pub(super) fn outcome_of(answer: Answer, binds: &Known) -> Option<Outcome> {
    match (scene::answer(binds), answer) {
        (Answer::No, _) => None,
        (_, Answer::Yes) => Some(Outcome::Met),
        (Answer::Yes, Answer::No) => Some(Outcome::NotMet),
        _ => Some(Outcome::CannotTell),
    }
}

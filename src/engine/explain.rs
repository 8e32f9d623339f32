//! The finding of one requirement in the scene where it is worst: which
//! tools serve it, or every reason why none does.

use super::assign;
use super::edges;
use super::evaluate::{self, Worked};
use super::fit;
use super::holders;
use super::pose::{self, Fitted, Pass, View};
use super::scene::Scene;
use super::seats::{Places, Pose, Solution};
use crate::measure::{Answer, Day};
use crate::model::finding::{Because, Finding, Outcome, Serving};
use crate::model::reason::Reason;
use crate::model::rule::{Member, Need, ToolType};
use crate::model::vocabulary::KindId;

/// A scene with its best assignment.
pub(super) struct Explained<'a> {
    scene: Scene<'a>,
    worked: Worked<'a>,
    /// The strict assignment that lapses latest.
    best: Solution,
}

impl<'a> Explained<'a> {
    pub(super) fn new(scene: Scene<'a>) -> Self {
        Self::of((scene, evaluate::work(&scene)))
    }

    /// Of a scene that is worked out already.
    pub(super) fn of((scene, worked): (Scene<'a>, Worked<'a>)) -> Self {
        let best = latest_lapse(&worked, &scene);
        Self { scene, worked, best }
    }

    pub(super) fn scene(&self) -> &Scene<'a> {
        &self.scene
    }

    /// The finding of the requirement with that index, of a trip that is
    /// judged through that day.
    pub(super) fn finding(&self, index: usize, outcome: Outcome, through: Day) -> Finding {
        let view = &self.worked.views[index];
        let serving = self.serving(index);
        let reasons =
            if outcome == Outcome::Met { Vec::new() } else { self.reasons(index, view, outcome) };
        Finding {
            requirement: index,
            outcome,
            serving: if outcome == Outcome::Met { serving } else { Vec::new() },
            certified: match outcome {
                Outcome::Met => holders::certified(view.requirement, &self.scene, through),
                _ => Vec::new(),
            },
            reasons,
            freeboard: self
                .scene
                .freeboard
                .ok()
                .filter(|_| edges::minds_freeboard(view.requirement)),
            day: self.scene.day,
        }
    }

    fn serving(&self, index: usize) -> Vec<Serving> {
        let mut serving: Vec<Serving> = Vec::new();
        for used in self.best.uses[index].iter().flatten() {
            let same = |s: &&mut Serving| s.tool == used.tool && s.through == used.through;
            match serving.iter_mut().find(same) {
                Some(serving) => serving.count += 1,
                None => serving.push(Serving { tool: used.tool, count: 1, through: used.through }),
            }
        }
        serving.retain(|serving| serving.tool < self.scene.vessel.kit.len());
        serving
    }

    fn reasons(&self, index: usize, view: &View<'_>, outcome: Outcome) -> Vec<Because> {
        let mut reasons = Vec::new();
        if let Err(fact) = &view.binds {
            let reason = Reason::BindingUnknown { fact: fact.clone() };
            reasons.push(Because { tool: None, reason });
        }
        match &view.requirement.need {
            Need::Tools { least, types, spare_for } => {
                if self.worked.generous.stopped {
                    reasons.push(Because { tool: None, reason: Reason::TooManyWays });
                }
                if types.len() > 1 {
                    self.types_reasons(index, view, *least, types, &mut reasons);
                } else if let Some(of_type) = types.first() {
                    self.type_reasons(index, view, 0, of_type, &mut reasons);
                }
                if let Some(served) = spare_for {
                    self.spare_reasons(*served, view, &mut reasons);
                }
                if outcome == Outcome::CannotTell {
                    reasons.extend(self.hangs_on(index, *spare_for));
                }
            }
            _ => {
                let own = holders::reasons(view.requirement, &self.scene).unwrap_or_default();
                reasons.extend(own.into_iter().map(|reason| Because { tool: None, reason }));
            }
        }
        self.select(reasons, outcome)
    }

    /// What is open here only because another requirement is: it would be met
    /// by that one's tool, or is a spare for it.
    fn hangs_on(&self, index: usize, spare_for: Option<usize>) -> Option<Because> {
        let through = self.worked.generous.uses[index].iter().flatten().find_map(|u| u.through);
        let spare = spare_for.filter(|served| self.worked.strict.uses[*served].is_none());
        let requirement = through.or(spare)?;
        Some(Because { tool: None, reason: Reason::HangsOn { requirement } })
    }

    /// A finding that is not met shows faults; one that is open shows what
    /// is missing (and why the rest does not do).
    fn select(&self, mut reasons: Vec<Because>, outcome: Outcome) -> Vec<Because> {
        let any_open = reasons.iter().any(|because| because.reason.is_open());
        match outcome {
            Outcome::NotMet => {
                let failed: Vec<_> = reasons
                    .iter()
                    .filter(|because| !because.reason.is_open())
                    .map(|because| because.tool)
                    .collect();
                reasons.retain(|b| {
                    !b.reason.is_open() || (b.tool.is_some() && failed.contains(&b.tool))
                });
            }
            Outcome::CannotTell
                if reasons.iter().any(|b| matches!(b.reason, Reason::HangsOn { .. })) =>
            {
                reasons.retain(|because| because.reason.is_open());
            }
            Outcome::CannotTell if any_open => {
                let open: Vec<_> = reasons
                    .iter()
                    .filter(|because| because.reason.is_open())
                    .map(|because| because.tool)
                    .collect();
                reasons.sort_by_key(|because| !open.contains(&because.tool));
            }
            _ => {}
        }
        let mut seen = Vec::new();
        reasons.retain(|because| {
            let new = !seen.contains(because);
            if new {
                seen.push(because.clone());
            }
            new
        });
        reasons
    }

    /// One type: what is wrong with each tool of its kinds, nearest first.
    fn type_reasons(
        &self,
        index: usize,
        view: &View<'_>,
        of_type: usize,
        the_type: &ToolType,
        into: &mut Vec<Because>,
    ) {
        for (place, member) in the_type.members.iter().enumerate() {
            self.member_reasons(index, view, view.fits_of(of_type, place), member, into);
        }
    }

    fn member_reasons(
        &self,
        index: usize,
        view: &View<'_>,
        fits: &[Fitted],
        member: &Member,
        into: &mut Vec<Because>,
    ) {
        let kit = &self.scene.vessel.kit;
        let good: Vec<_> = fits.iter().filter(|f| f.answer == Answer::Yes).collect();
        let have: u32 = good.iter().map(|f| kit[f.tool].count).sum();
        let unlisted = pose::may_be_unlisted(member, &self.scene);
        if fits.is_empty() {
            let kinds = self.open_kinds(member);
            let reason = if unlisted.is_empty() {
                Reason::NothingAboard { kinds }
            } else {
                Reason::NotListed { kinds: unlisted }
            };
            into.push(Because { tool: None, reason });
            return;
        }
        // Of one that is missing it is said what is wrong with those there are.
        if have < member.count && member.count > 1 {
            let kind = member.choices.first().map_or(KindId(0), |spec| spec.kind);
            let reason = Reason::TooFew { kind, have, need: member.count };
            into.push(Because { tool: None, reason });
        }
        for fitted in &good {
            into.extend(self.why_not_counted(index, fitted.tool));
        }
        let failing = fits.iter().filter(|f| f.answer != Answer::Yes);
        let mut failing: Vec<_> = failing.map(|f| (f.tool, view.reasons(f, &self.scene))).collect();
        failing.sort_by_key(|(_, reasons)| {
            let faults = reasons.iter().filter(|reason| !reason.is_open()).count();
            (faults, reasons.len())
        });
        let mut named = Vec::new();
        for (tool, reasons) in failing {
            if named.contains(&tool) || good.iter().any(|g| g.tool == tool) {
                continue;
            }
            named.push(tool);
            into.extend(reasons.into_iter().map(|reason| Because { tool: Some(tool), reason }));
        }
        if !unlisted.is_empty() {
            into.push(Because { tool: None, reason: Reason::NotListed { kinds: unlisted } });
        }
    }

    fn open_kinds(&self, member: &Member) -> Vec<KindId> {
        let mut kinds = Vec::new();
        for spec in &member.choices {
            if self.scene.holds_all(&spec.when) != Ok(false) && !kinds.contains(&spec.kind) {
                kinds.push(spec.kind);
            }
        }
        kinds
    }

    /// Why a tool that fits does not count here: it serves another
    /// requirement, or its part is in use.
    fn why_not_counted(&self, index: usize, tool: usize) -> Option<Because> {
        let serves = |other: &usize| {
            *other != index
                && self.best.uses[*other]
                    .iter()
                    .flatten()
                    .any(|used| used.tool == tool && used.through.is_none())
        };
        if let Some(requirement) = (0..self.best.uses.len()).find(serves) {
            return Some(Because { tool: Some(tool), reason: Reason::Taken { requirement } });
        }
        let kit = &self.scene.vessel.kit;
        let part = kit[tool].parts.iter().find(|part| {
            self.best.uses.iter().flatten().flatten().any(|used| {
                used.tool != tool && kit.get(used.tool).is_some_and(|t| t.parts.contains(part))
            })
        })?;
        Some(Because { tool: Some(tool), reason: Reason::PartTaken { part: part.clone() } })
    }

    /// Several types: how many are complete, and what the begun ones lack.
    fn types_reasons(
        &self,
        index: usize,
        view: &View<'_>,
        least: u32,
        types: &[ToolType],
        into: &mut Vec<Because>,
    ) {
        let (mut complete, mut incomplete, mut details) = (Vec::new(), Vec::new(), Vec::new());
        for (of_type, the_type) in types.iter().enumerate() {
            // Where there are several types, the reader asks for their names.
            let name = the_type.name.clone().unwrap_or_default();
            let whole = the_type.members.iter().enumerate().all(|(place, member)| {
                let good = view.fits_of(of_type, place).iter().filter(|f| f.answer == Answer::Yes);
                good.map(|f| self.scene.vessel.kit[f.tool].count).sum::<u32>() >= member.count
            });
            let begun = view.all_fits().iter().any(|fitted| fitted.of_type == of_type);
            if whole {
                complete.push(name);
            } else if begun {
                incomplete.push(name);
                self.type_reasons(index, view, of_type, the_type, &mut details);
            }
        }
        let unlisted: Vec<KindId> = types
            .iter()
            .flat_map(|t| &t.members)
            .flat_map(|member| pose::may_be_unlisted(member, &self.scene))
            .collect();
        let have = u32::try_from(complete.len()).unwrap_or(u32::MAX);
        let short = Reason::TooFewTypes { have, need: least, complete, incomplete };
        let reason =
            if unlisted.is_empty() { short } else { Reason::NotListed { kinds: unlisted } };
        into.push(Because { tool: None, reason });
        into.extend(details);
    }

    fn spare_reasons(&self, served: usize, view: &View<'_>, into: &mut Vec<Because>) {
        for fitted in view.all_fits().iter().filter(|f| f.answer != Answer::No) {
            let spare = &self.scene.vessel.kit[fitted.tool];
            let reason = if spare.fits.is_empty() {
                Reason::SpareFitUnknown
            } else {
                Reason::FitsNothing { requirement: served }
            };
            into.push(Because { tool: Some(fitted.tool), reason });
        }
    }
}

/// The strict assignment that, among those that meet as much, keeps its
/// first lapse latest: tools that lapse early are left out as far as they
/// can be.
fn latest_lapse(worked: &Worked<'_>, scene: &Scene<'_>) -> Solution {
    let first = worked.strict.clone();
    let lapses: Vec<Option<Day>> = scene
        .vessel
        .kit
        .iter()
        .map(|tool| {
            let intervals = scene.profile.requirements.iter().filter_map(|r| r.inspection);
            fit::serves_through(
                tool,
                intervals.min_by_key(|i| tool.inspected.map(|d| d.through(*i))),
                scene,
            )
        })
        .collect();
    let mut days: Vec<Day> = lapses.iter().flatten().copied().collect();
    days.sort_unstable();
    days.dedup();
    if days.is_empty() {
        return first;
    }
    let pose = pose::pose(&worked.views, scene, Pass::Strict);
    let as_good = |solution: &Solution| {
        solution.uses.iter().map(Option::is_some).eq(first.uses.iter().map(Option::is_some))
    };
    let enough = |day: &Day| is_enough(&pose, &first, &without(&pose, &lapses, *day));
    let (mut low, mut high, mut best) = (0, days.partition_point(enough), first.clone());
    while low < high {
        let middle = low.midpoint(high);
        let solution = assign::assign_from(&pose, &without(&pose, &lapses, days[middle]));
        if as_good(&solution) {
            best = solution;
            low = middle + 1;
        } else {
            high = middle;
        }
    }
    best
}

/// Whether each seat that is met has enough of so many tools, whatever the
/// others take; where it has not, the assignment cannot be as good.
fn is_enough(pose: &Pose, solution: &Solution, capacity: &[u32]) -> bool {
    let left = |places: &Places| {
        let tools = places.candidates.iter().map(|c| u64::from(capacity[c.tool]));
        tools.sum::<u64>() >= u64::from(places.count)
    };
    pose.seats.iter().zip(&solution.uses).all(|(seat, uses)| {
        let wants_all = seat.links.is_empty() && seat.least == seat.types.len();
        uses.is_none() || !wants_all || seat.types.iter().flatten().all(left)
    })
}

/// How many of each tool there are without those that serve no longer than
/// the day.
fn without(pose: &Pose, lapses: &[Option<Day>], day: Day) -> Vec<u32> {
    let mut capacity = pose.capacity.clone();
    for (left, lapse) in capacity.iter_mut().zip(lapses) {
        if lapse.is_some_and(|lapse| lapse <= day) {
            *left = 0;
        }
    }
    capacity
}

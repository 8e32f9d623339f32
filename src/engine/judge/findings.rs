//! The finding of one requirement at the point where it is worst: which
//! tools serve it, or every reason why none does.

use super::breakpoints::Subject;
use super::clash;
use super::evaluation::{Evaluation, evaluate};
use super::lasting::latest_lapse;
use super::verdict::Combined;
use crate::engine::assign::candidates::{self, Pass};
use crate::engine::assign::groups::Groups;
use crate::engine::assign::slots::Assignment;
use crate::engine::evaluate::holders;
use crate::engine::evaluate::point::Point;
use crate::engine::evaluate::requirement::{Fitted, View, may_be_unlisted};
use crate::engine::work::Work;
use crate::measure::{Answer, Day};
use crate::model::finding::{Because, Finding, Outcome, Serving};
use crate::model::reason::{Reason, VesselFact};
use crate::model::rule::{Member, Need, ToolType};
use crate::model::vocabulary::KindId;
use std::cell::OnceCell;

/// The findings of a trip that is judged through that day, each explained at
/// the point where it is worst; points that are evaluated already are used.
pub(crate) fn findings<'a>(
    subject: &Subject<'a>,
    worst: &Combined,
    through: Option<Day>,
    mut evaluations: Vec<Evaluation<'a>>,
    work: &Work,
) -> Vec<Finding> {
    let mut explained: Vec<Explained<'_, 'a>> = Vec::new();
    let mut findings = Vec::with_capacity(worst.outcomes.len());
    for (index, at) in worst.outcomes.iter().enumerate() {
        let Some(at) = at else { continue };
        let is_there = |point: &Point<'_>| point.freeboard == at.freeboard && point.day == at.day;
        let known = explained.iter().position(|explained| is_there(&explained.at.point));
        let position = known.unwrap_or_else(|| {
            let evaluated = evaluations.iter().position(|of| is_there(&of.point));
            let point = || Point { freeboard: at.freeboard, day: at.day, ..subject.point };
            let at = match evaluated {
                Some(evaluated) => evaluations.swap_remove(evaluated),
                None => evaluate(&point(), work),
            };
            explained.push(Explained::of(at, work));
            explained.len() - 1
        });
        let mut finding = explained[position].finding(index, at.outcome, through.unwrap_or(at.day));
        if at.left_open {
            finding.reasons.push(Because { tool: None, reason: Reason::TooManyFacts });
        }
        if at.disputed {
            let reason = Reason::VesselFactUnknown { fact: VesselFact::FreeboardDisputed };
            finding.reasons.insert(0, Because { tool: None, reason });
        }
        findings.push(finding);
    }
    findings
}

/// An evaluated point with its best assignment.
struct Explained<'w, 'a> {
    work: &'w Work,
    at: Evaluation<'a>,
    /// The strict assignment that lapses latest.
    best: Assignment,
    /// Of each group of rivals, which clash even in the best case, once they are
    /// asked for.
    clashes: OnceCell<Vec<Vec<Vec<usize>>>>,
}

impl<'w, 'a> Explained<'w, 'a> {
    fn of(at: Evaluation<'a>, work: &'w Work) -> Self {
        let best = latest_lapse(&at, work);
        Self { work, at, best, clashes: OnceCell::new() }
    }

    /// The finding of the requirement with that index, of a trip that is
    /// judged through that day.
    fn finding(&self, index: usize, outcome: Outcome, through: Day) -> Finding {
        let view = &self.at.views[index];
        let freeboard = self.at.point.freeboard.ok();
        let serving = self.serving(index);
        let reasons =
            if outcome == Outcome::Met { Vec::new() } else { self.reasons(index, view, outcome) };
        Finding {
            requirement: index,
            outcome,
            serving: if outcome == Outcome::Met { serving } else { Vec::new() },
            certified: match outcome {
                Outcome::Met => holders::certified(view.requirement, &self.at.point, through),
                _ => Vec::new(),
            },
            reasons,
            freeboard: freeboard.filter(|_| view.requirement.hangs_on_freeboard()),
            day: self.at.point.day,
        }
    }

    fn serving(&self, index: usize) -> Vec<Serving> {
        let mut serving: Vec<Serving> = Vec::new();
        // Met whatever the facts turn out to be, though by no tool for certain.
        let uses = self.best.uses[index].as_ref().or(self.at.generous.uses[index].as_ref());
        for used in uses.into_iter().flatten() {
            let same = |s: &&mut Serving| s.tool == used.tool && s.through == used.through;
            match serving.iter_mut().find(same) {
                Some(serving) => serving.count += 1,
                None => serving.push(Serving { tool: used.tool, count: 1, through: used.through }),
            }
        }
        serving.retain(|serving| serving.tool < self.at.point.vessel.kit.len());
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
                if self.at.generous.stopped {
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
                let own = holders::reasons(view.requirement, &self.at.point).unwrap_or_default();
                reasons.extend(own.into_iter().map(|reason| Because { tool: None, reason }));
            }
        }
        match outcome {
            Outcome::NotMet => self.not_met(index, view, reasons),
            _ => {
                let mut reasons = self.select(reasons, outcome);
                if !reasons.iter().any(|because| because.reason.is_open()) {
                    reasons.splice(..0, self.hangs_on_rivals(index));
                }
                // Of a point that nobody looked at nothing else is known.
                if reasons.is_empty() && self.work.ran_out() {
                    reasons.push(Because { tool: None, reason: Reason::TooManyWays });
                }
                reasons
            }
        }
    }

    /// What is open here only because it is for others that want the same
    /// tools.
    fn hangs_on_rivals(&self, index: usize) -> Vec<Because> {
        let problem = candidates::problem(&self.at.views, &self.at.point, Pass::Generous);
        let rivals = Groups::of(&problem).together().find(|group| group.contains(&index));
        let is_open = |other: &usize| {
            *other != index && self.at.outcomes[*other] == Some(Outcome::CannotTell)
        };
        let open = rivals.into_iter().flatten().filter(is_open);
        let hangs = |requirement| Because { tool: None, reason: Reason::HangsOn { requirement } };
        open.map(hangs).collect()
    }

    /// Faults: with what tools there are for several requirements that stand
    /// alike, or that there is no way, whatever is not known.
    fn not_met(&self, index: usize, view: &View<'_>, mut reasons: Vec<Because>) -> Vec<Because> {
        let possible: Vec<usize> =
            view.all_fits().iter().filter(|f| f.answer != Answer::No).map(|f| f.tool).collect();
        if let Some(requirements) = self.rivals(index).filter(|rivals| rivals.len() > 1) {
            reasons.retain(|because| {
                !matches!(because.reason, Reason::Taken { .. } | Reason::PartTaken { .. })
            });
            let one = |tool| {
                let part = self.shared_part(tool, &requirements);
                let reason = match part {
                    Some(part) => Reason::PartTaken { part },
                    None => Reason::OneOfThese { requirements: requirements.clone() },
                };
                Because { tool: Some(tool), reason }
            };
            reasons.splice(..0, possible.into_iter().map(one));
        }
        let faults = self.select(reasons.clone(), Outcome::NotMet);
        if !faults.is_empty() {
            return faults;
        }
        reasons.insert(0, Because { tool: None, reason: Reason::InEveryCase });
        self.select(reasons, Outcome::CannotTell)
    }

    /// A part of the tool that another tool needs which may serve any of those.
    fn shared_part(&self, tool: usize, requirements: &[usize]) -> Option<String> {
        let kit = &self.at.point.vessel.kit;
        let fits = requirements.iter().flat_map(|one| self.at.views[*one].all_fits());
        let others = fits.filter(|fit| fit.answer != Answer::No && fit.tool != tool);
        let mut parts = others.flat_map(|fit| &kit[fit.tool].parts);
        parts.find(|part| kit[tool].parts.contains(part)).cloned()
    }

    /// The requirements, that one among them, that compete for too few tools
    /// and stand alike; where facts are missing, those that clash even so.
    fn rivals(&self, index: usize) -> Option<Vec<usize>> {
        let tied = self.at.ties.iter().find(|tied| tied.contains(&index));
        tied.cloned().or_else(|| {
            let group = self.at.rivals.iter().position(|group| group.contains(&index))?;
            let clashes = || {
                let problem = candidates::problem(&self.at.views, &self.at.point, Pass::Generous);
                let among = |group: &Vec<usize>| clash::among(&problem, group, self.work);
                self.at.rivals.iter().map(among).collect()
            };
            let clashes: &Vec<Vec<Vec<usize>>> = self.clashes.get_or_init(clashes);
            let mut rivals: Vec<usize> = clashes[group]
                .iter()
                .filter(|clash| clash.contains(&index))
                .flatten()
                .copied()
                .collect();
            rivals.sort_unstable();
            rivals.dedup();
            Some(rivals)
        })
    }

    /// What is open here only because another requirement is: it would be met
    /// by that one's tool, or is a spare for it.
    fn hangs_on(&self, index: usize, spare_for: Option<usize>) -> Option<Because> {
        let through = self.at.generous.uses[index].iter().flatten().find_map(|u| u.through);
        let spare = spare_for.filter(|served| self.at.strict.uses[*served].is_none());
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
        let kit = &self.at.point.vessel.kit;
        let good: Vec<_> = fits.iter().filter(|f| f.answer == Answer::Yes).collect();
        let have: u32 = good.iter().map(|f| kit[f.tool].count).sum();
        let unlisted = may_be_unlisted(member, &self.at.point);
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
        let mut failing: Vec<_> =
            failing.map(|f| (f.tool, view.reasons(f, &self.at.point))).collect();
        failing.sort_by_key(|(_, reasons)| {
            let faults = reasons.iter().filter(|reason| !reason.is_open()).count();
            (faults, reasons.len())
        });
        // Of a tool that may be of several kinds the same is told once.
        let same = |one: usize, other: usize| {
            !kit[one].disputes.kinds.is_empty() && kit[one].lot() == kit[other].lot()
        };
        let mut named: Vec<(usize, Vec<Reason>)> = Vec::new();
        for (tool, reasons) in failing {
            let is_named = |(other, of): &(usize, Vec<Reason>)| {
                *other == tool || same(*other, tool) && *of == reasons
            };
            if named.iter().any(is_named) || good.iter().any(|g| g.tool == tool) {
                continue;
            }
            named.push((tool, reasons.clone()));
            into.extend(reasons.into_iter().map(|reason| Because { tool: Some(tool), reason }));
        }
        if !unlisted.is_empty() {
            into.push(Because { tool: None, reason: Reason::NotListed { kinds: unlisted } });
        }
    }

    fn open_kinds(&self, member: &Member) -> Vec<KindId> {
        let mut kinds = Vec::new();
        for spec in &member.choices {
            if self.at.point.holds_all(&spec.when) != Ok(false) && !kinds.contains(&spec.kind) {
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
        let kit = &self.at.point.vessel.kit;
        // Either a part of it is in use, or it is itself one that is.
        let part = kit[tool].parts.iter().chain([&kit[tool].mark]).find(|part| {
            self.best.uses.iter().flatten().flatten().any(|used| {
                let other = kit.get(used.tool).filter(|_| used.tool != tool);
                other.is_some_and(|other| other.parts.contains(part) || other.mark == **part)
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
                good.map(|f| self.at.point.vessel.kit[f.tool].count).sum::<u32>() >= member.count
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
            .flat_map(|member| may_be_unlisted(member, &self.at.point))
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
            let spare = &self.at.point.vessel.kit[fitted.tool];
            let reason = if spare.fits.is_empty() {
                Reason::SpareFitUnknown
            } else {
                Reason::FitsNothing { requirement: served }
            };
            into.push(Because { tool: Some(fitted.tool), reason });
        }
    }
}

//! The exact search behind the assignment: demand by demand, slot by slot,
//! over a group of demands that want the same tools.
//!
//! Requirements that cannot disturb each other's tools collapse through the
//! memory of states already reached at a lower price.

use super::bound::Payers;
use super::groups::leans_on;
use super::slots::{Assignment, Candidate, Problem, Score, Slot, ToolDemand, Tools, Use, Worth};
use crate::engine::work::Work;
use rustc_hash::FxHashMap;

/// Up to so many demands, with so few tools that may serve them, are gone
/// through without remembering states.
const FEW_SEATS: usize = 3;
/// See [`FEW_SEATS`].
const FEW_TOOLS: usize = 6;

/// The state of the search.
pub(crate) struct Search<'p> {
    problem: &'p Problem,
    capacity: &'p [u32],
    payers: Payers,
    /// Demands of the group in an order in which each comes after those that it
    /// leans on.
    order: Vec<usize>,
    /// Tools, parts and demands that matter from a depth on; none where states
    /// are not remembered.
    matters: Vec<Matters>,
    /// Required and recommended demands from a depth on, with what they cost at
    /// least.
    ahead: Vec<Score>,
    left: Vec<u32>,
    /// The tool that used each part last, and how often it is in use.
    part_used: Vec<Option<(usize, u32)>>,
    group_used: Vec<u32>,
    uses: Vec<Vec<Use>>,
    met: Vec<bool>,
    score: Score,
    best: Option<Best>,
    seen: FxHashMap<Box<[u32]>, Score>,
    /// Where the next state is written down.
    key: Vec<u32>,
    steps: u64,
    /// The step at which it is stopped.
    most: u64,
    work: &'p Work,
    forced: Forced,
}

/// The search was stopped before it was complete.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) struct Stopped;

/// What is laid down beforehand of one demand of the group.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Forced {
    Nothing,
    Met(usize),
    NotMet(usize),
    /// Every required one is met.
    All,
}

/// The best found for the group: the uses of each of its demands, in order.
struct Best {
    uses: Vec<Option<Vec<Use>>>,
    score: Score,
}

#[derive(Default)]
struct Matters {
    tools: Vec<usize>,
    parts: Vec<usize>,
    groups: Vec<usize>,
    demands: Vec<usize>,
}

impl<'p> Search<'p> {
    /// A search with so many of each tool; `left` are those worth trying.
    pub(crate) fn new(
        problem: &'p Problem,
        capacity: &'p [u32],
        left: Vec<u32>,
        work: &'p Work,
    ) -> Self {
        Self {
            problem,
            capacity,
            payers: Payers::of(problem),
            order: Vec::new(),
            matters: Vec::new(),
            ahead: Vec::new(),
            left,
            part_used: vec![None; problem.parts_there.len()],
            group_used: vec![0; problem.groups],
            uses: vec![Vec::new(); problem.demands.len()],
            met: vec![false; problem.demands.len()],
            score: Score::default(),
            best: None,
            seen: FxHashMap::default(),
            key: Vec::new(),
            steps: 0,
            most: work.of_search(),
            work,
            forced: Forced::Nothing,
        }
    }

    /// Adds the best assignment of the group to the assignment.
    pub(crate) fn solve(&mut self, group: &[usize], assignment: &mut Assignment) {
        self.search(group);
        if let Some(best) = self.best.take() {
            for (demand, uses) in group.iter().zip(best.uses) {
                assignment.uses[*demand] = uses;
            }
            assignment.score.add(best.score);
        }
        assignment.stopped |= self.steps >= self.most;
    }

    /// The best score of the group with that laid down; none where no
    /// assignment keeps to it. A search that was stopped has no answer.
    pub(crate) fn score_with(
        &mut self,
        group: &[usize],
        forced: Forced,
    ) -> Result<Option<Score>, Stopped> {
        self.forced = forced;
        self.search(group);
        self.forced = Forced::Nothing;
        let best = self.best.take().map(|best| best.score);
        if self.steps < self.most { Ok(best) } else { Err(Stopped) }
    }

    fn search(&mut self, group: &[usize]) {
        self.order.clear();
        self.order.extend(group);
        let depths = 0..=group.len();
        self.ahead = depths.clone().map(|depth| self.ahead(&group[depth..])).collect();
        self.matters.clear();
        self.seen.clear();
        if !is_small(self.problem, group) {
            self.matters.extend(depths.map(|depth| matters(self.problem, group, depth)));
        }
        let before = self.steps;
        self.next_demand(0);
        self.work.take(self.steps - before);
        if self.steps >= self.most {
            self.work.cut_short();
        }
    }

    fn stopped(&mut self) -> bool {
        self.steps += 1;
        self.steps >= self.most
    }

    fn next_demand(&mut self, depth: usize) {
        let Some(&demand) = self.order.get(depth) else {
            self.keep_if_best();
            return;
        };
        if self.stopped() || self.hopeless(depth) || self.seen_better(depth) {
            return;
        }
        if self.forced != Forced::NotMet(demand) {
            self.next_type(depth, demand, 0, self.problem.demands[demand].least);
        }
        let skips = match self.forced {
            Forced::Met(forced) => forced != demand,
            Forced::All => self.problem.demands[demand].worth != Worth::Required,
            Forced::Nothing | Forced::NotMet(_) => true,
        };
        if self.steps < self.most && skips {
            self.next_demand(depth + 1);
        }
    }

    fn hopeless(&self, depth: usize) -> bool {
        let Some(best) = &self.best else { return false };
        let ahead = self.ahead[depth];
        let hoped = Score {
            required: self.score.required + ahead.required,
            recommended: self.score.recommended + ahead.recommended,
            // To be as good all that is ahead must be met.
            price: self.score.price + ahead.price,
        };
        !hoped.beats(best.score)
    }

    /// Whether the same state was reached before at least as well.
    fn seen_better(&mut self, depth: usize) -> bool {
        if self.matters.is_empty() {
            return false;
        }
        self.write_key(depth);
        match self.seen.get_mut(self.key.as_slice()) {
            Some(seen) if !self.score.beats(*seen) => return true,
            Some(seen) => *seen = self.score,
            None => {
                self.seen.insert(self.key.as_slice().into(), self.score);
            }
        }
        false
    }

    fn write_key(&mut self, depth: usize) {
        let matters = &self.matters[depth];
        let number = |n: usize| u32::try_from(n).unwrap_or(u32::MAX);
        let mut key = std::mem::take(&mut self.key);
        key.clear();
        key.push(number(depth));
        key.extend(matters.tools.iter().map(|tool| self.left[*tool]));
        let used = |part: &usize| match self.part_used[*part] {
            None => 0,
            Some((owner, _)) if self.is_of_a_lot(*part) => 1 + number(owner),
            Some((_, times)) => times,
        };
        key.extend(matters.parts.iter().map(used));
        key.extend(matters.groups.iter().map(|group| self.group_used[*group].min(1)));
        for demand in &matters.demands {
            key.push(u32::MAX);
            let uses = self.uses[*demand].iter();
            key.extend(uses.map(|u| number(u.tool) * 2 + u32::from(u.through.is_some())));
        }
        self.key = key;
    }

    fn keep_if_best(&mut self) {
        if self.best.as_ref().is_some_and(|best| !self.score.beats(best.score)) {
            return;
        }
        let uses = |demand: &usize| self.met[*demand].then(|| self.uses[*demand].clone());
        self.best = Some(Best { uses: self.order.iter().map(uses).collect(), score: self.score });
    }

    /// What the demands could add at best.
    fn ahead(&self, demands: &[usize]) -> Score {
        let mut score = Score::default();
        for demand in demands.iter().map(|demand| &self.problem.demands[*demand]) {
            if self.can_be_met(demand) {
                let least = match demand.worth.is_wanted() {
                    true => self.payers.least(demand, self.capacity),
                    false => 0,
                };
                score.add(Score::of(demand.worth, least));
            }
        }
        score
    }

    /// Whether a demand could be met if it had the whole kit for itself.
    fn can_be_met(&self, demand: &ToolDemand) -> bool {
        let fillable = |slot: &Slot| {
            let tools = slot.candidates.iter().map(|c| u64::from(self.capacity[c.tool]));
            tools.sum::<u64>() >= u64::from(slot.count) || !demand.links.is_empty()
        };
        demand.types.iter().filter(|slots| slots.iter().all(fillable)).count() >= demand.least
    }

    fn next_type(&mut self, depth: usize, demand: usize, first: usize, left: usize) {
        if left == 0 {
            self.demand_met(depth, demand);
            return;
        }
        let types = self.problem.demands[demand].types.len();
        for of_type in first..types {
            if types - of_type < left || self.stopped() {
                return;
            }
            self.fill(At {
                depth,
                demand,
                of_type,
                slot: 0,
                types_left: left,
                link: 0,
                candidate: 0,
                missing: None,
            });
        }
    }

    fn demand_met(&mut self, depth: usize, demand: usize) {
        let before = self.score;
        self.score.add(Score::of(self.problem.demands[demand].worth, 0));
        self.met[demand] = true;
        self.next_demand(depth + 1);
        self.met[demand] = false;
        self.score = before;
    }

    /// Fills one slot after another of one type.
    fn fill(&mut self, at: At) {
        let problem = self.problem;
        let Some(slot) = problem.demands[at.demand].types[at.of_type].get(at.slot) else {
            self.next_type(at.depth, at.demand, at.of_type + 1, at.types_left - 1);
            return;
        };
        let missing = at.missing.unwrap_or(slot.count);
        if missing == 0 {
            self.fill(At { slot: at.slot + 1, link: 0, candidate: 0, missing: None, ..at });
            return;
        }
        if self.stopped() {
            return;
        }
        self.fill_through(at, missing);
        self.fill_directly(at, missing);
    }

    /// Lets a tool of another demand count here too.
    fn fill_through(&mut self, at: At, missing: u32) {
        let problem = self.problem;
        let demand = &problem.demands[at.demand];
        for index in at.link..demand.links.len() {
            let link = &demand.links[index];
            for position in 0..self.uses[link.from].len() {
                let lent = &self.uses[link.from];
                let tool = lent[position].tool;
                let direct = |used: &&Use| used.tool == tool && used.through.is_none();
                let earlier = lent[..position].iter().any(|used| direct(&used));
                if lent[position].through.is_some() || earlier {
                    continue;
                }
                let price = match &link.tools {
                    Tools::These(tools) => {
                        (tool >= problem.listed || tools.contains(&tool)).then_some(0)
                    }
                    Tools::Fitting => demand.types[at.of_type][at.slot]
                        .candidates
                        .iter()
                        .find(|c| c.tool == tool)
                        .map(|c| c.price),
                };
                let there = lent.iter().filter(direct).count();
                let through = |used: &&Use| used.tool == tool && used.through == Some(link.from);
                let here = self.uses[at.demand].iter().filter(through).count();
                let Some(price) = price.filter(|_| here < there) else {
                    continue;
                };
                let before = self.score.price;
                self.score.price += price;
                self.uses[at.demand].push(Use {
                    tool,
                    of_type: at.of_type,
                    slot: at.slot,
                    through: Some(link.from),
                });
                self.fill(At { link: index, missing: Some(missing - 1), ..at });
                self.uses[at.demand].pop();
                self.score.price = before;
            }
        }
    }

    fn fill_directly(&mut self, at: At, missing: u32) {
        let problem = self.problem;
        let slot = &problem.demands[at.demand].types[at.of_type][at.slot];
        for (index, candidate) in slot.candidates.iter().enumerate().skip(at.candidate) {
            if self.left[candidate.tool] == 0
                || !self.parts_free(candidate.tool)
                || !self.spare_fits(at.demand, candidate.tool)
            {
                continue;
            }
            let before = self.score.price;
            self.take(at, candidate);
            let links = problem.demands[at.demand].links.len();
            self.fill(At { link: links, candidate: index, missing: Some(missing - 1), ..at });
            self.give_back(at, candidate);
            self.score.price = before;
        }
    }

    fn take(&mut self, at: At, candidate: &Candidate) {
        self.left[candidate.tool] -= 1;
        for part in &self.problem.parts[candidate.tool] {
            let times = self.part_used[*part].map_or(0, |(_, times)| times);
            self.part_used[*part] = Some((candidate.tool, times + 1));
        }
        self.score.price += candidate.price;
        if let Some((group, price)) = candidate.once {
            if self.group_used[group] == 0 {
                self.score.price += price;
            }
            self.group_used[group] += 1;
        }
        self.uses[at.demand].push(Use {
            tool: candidate.tool,
            of_type: at.of_type,
            slot: at.slot,
            through: None,
        });
    }

    fn give_back(&mut self, at: At, candidate: &Candidate) {
        self.uses[at.demand].pop();
        if let Some((group, _)) = candidate.once {
            self.group_used[group] -= 1;
        }
        for part in &self.problem.parts[candidate.tool] {
            let left = self.part_used[*part].map_or(0, |(_, times)| times.saturating_sub(1));
            self.part_used[*part] = (left > 0).then_some((candidate.tool, left));
        }
        self.left[candidate.tool] += 1;
    }

    fn parts_free(&self, tool: usize) -> bool {
        self.problem.parts[tool].iter().all(|part| match self.part_used[*part] {
            None => true,
            Some((owner, _)) if self.is_of_a_lot(*part) => owner == tool,
            Some((_, times)) => times < self.problem.parts_there[*part],
        })
    }

    fn is_of_a_lot(&self, part: usize) -> bool {
        self.problem.lot_parts.is_some_and(|first| part >= first)
    }

    /// Whether spares fit a tool that serves the demand they are for.
    fn spare_fits(&self, demand: usize, tool: usize) -> bool {
        let Some((served, fits)) = &self.problem.demands[demand].fits else {
            return true;
        };
        if !self.met[*served] {
            return false;
        }
        match fits.iter().find(|(spare, _)| *spare == tool) {
            Some((_, None)) => true,
            Some((_, Some(tools))) => {
                self.uses[*served].iter().any(|used| tools.contains(&used.tool))
            }
            None => false,
        }
    }
}

#[derive(Debug, Clone, Copy)]
struct At {
    depth: usize,
    demand: usize,
    of_type: usize,
    slot: usize,
    types_left: usize,
    link: usize,
    candidate: usize,
    missing: Option<u32>,
}

/// Whether so few demands want so few tools that remembering states costs more
/// than going through them all.
fn is_small(problem: &Problem, group: &[usize]) -> bool {
    let slots = || group.iter().flat_map(|demand| problem.demands[*demand].types.iter().flatten());
    group.len() <= FEW_SEATS
        && slots().all(|slot| slot.count == 1)
        && slots().map(|slot| slot.candidates.len()).sum::<usize>() <= FEW_TOOLS
}

fn matters(problem: &Problem, order: &[usize], depth: usize) -> Matters {
    let mut matters = Matters::default();
    let done = &order[..depth];
    for demand in &order[depth..] {
        let demand = &problem.demands[*demand];
        for candidate in demand.types.iter().flatten().flat_map(|slot| &slot.candidates) {
            matters.tools.push(candidate.tool);
            matters.parts.extend(&problem.parts[candidate.tool]);
            matters.groups.extend(candidate.once.map(|(group, _)| group));
        }
        matters.demands.extend(leans_on(demand).filter(|demand| done.contains(demand)));
    }
    for list in [&mut matters.tools, &mut matters.parts, &mut matters.groups, &mut matters.demands]
    {
        list.sort_unstable();
        list.dedup();
    }
    matters
}

#[cfg(test)]
#[path = "search_tests.rs"]
mod tests;

//! Which tool serves which requirement, by trying every way. One tool serves
//! one place, unless the profile says that it may serve another too. No
//! cleverness: every set of requirements that can be met together is found,
//! and the best of them are kept.

use crate::rules::{Place, Wanted};
use std::collections::{BTreeMap, BTreeSet};

/// No, can't tell, yes, as the policy has them.
pub(crate) type Answer = u8;

/// A requirement in one scene.
pub(crate) struct Asked<'a> {
    pub(crate) wanted: &'a Wanted,
    pub(crate) binds: Answer,
    pub(crate) required: bool,
    pub(crate) id: &'a str,
}

/// Tools that are the same to every requirement.
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
pub(crate) struct Lot {
    pub(crate) count: usize,
    /// What the policy says of each spec.
    pub(crate) fits: BTreeMap<String, Answer>,
    pub(crate) marks: Vec<String>,
    /// For spares: the marks that they fit.
    pub(crate) names: Vec<String>,
    /// Stands for tools that an incomplete list may not name.
    pub(crate) unlisted: bool,
}

/// Which answers count as yes.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Pass {
    Strict,
    Generous,
}

/// Requirements that compete with each other, and the best that can be met of
/// them: each set is one that some best assignment meets.
#[derive(Debug, Clone)]
pub(crate) struct Part {
    pub(crate) requirements: Vec<usize>,
    pub(crate) best: BTreeSet<u64>,
}

/// So many tools, each out of these lots.
struct Filled {
    count: usize,
    out_of: Vec<usize>,
}

/// What a requirement wants, told in requirements and lots by index.
struct Need {
    least: usize,
    types: Vec<Vec<Filled>>,
    /// The lots that it can use at all.
    uses: Vec<bool>,
    /// Whose tool is deemed to serve, and which lots do.
    deemed: Vec<(usize, Vec<bool>)>,
    shared: Vec<usize>,
    /// For spares: the item, if it binds.
    spare_for: Option<Option<usize>>,
    /// All requirements that it looks at.
    others: Vec<usize>,
}

struct Search<'a> {
    asked: &'a [Asked<'a>],
    needs: Vec<Need>,
    lots: &'a [Lot],
    pass: Pass,
}

#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
struct State {
    met: u64,
    left: Vec<usize>,
    /// By requirement, the lots of its own tools.
    serving: Vec<Vec<usize>>,
}

/// One way to fill the places: own tools, and tools borrowed.
#[derive(Clone)]
struct Way {
    left: Vec<usize>,
    own: Vec<usize>,
    borrowable: Vec<usize>,
}

/// The best assignments in a pass, part by part.
pub(crate) fn best(asked: &[Asked<'_>], lots: &[Lot], pass: Pass) -> Vec<Part> {
    let needs = asked.iter().map(|one| need(one, asked, lots, pass)).collect();
    let search = Search { asked, needs, lots, pass };
    search.parts().into_iter().map(|requirements| search.part(requirements)).collect()
}

/// A way to say which tool serves where.
pub(crate) type Assign = fn(&[Asked<'_>], &[Lot], Pass) -> Vec<Part>;

/// What comes of it where each requirement, as the file has them, takes the
/// first tools that fit, whoever else needs them. Wrong wherever requirements
/// compete; it is there to show how often they do.
pub(crate) fn first_come(asked: &[Asked<'_>], lots: &[Lot], pass: Pass) -> Vec<Part> {
    let needs = asked.iter().map(|one| need(one, asked, lots, pass)).collect();
    let search = Search { asked, needs, lots, pass };
    let requirements: Vec<usize> = (0..asked.len()).filter(|r| asked[*r].binds > 0).collect();
    let mut state = search.start();
    for r in &requirements {
        let mut outcomes = search.outcomes(*r, &state);
        state = outcomes.swap_remove(1.min(outcomes.len() - 1));
    }
    vec![Part { requirements, best: BTreeSet::from([state.met]) }]
}

fn need(one: &Asked<'_>, asked: &[Asked<'_>], lots: &[Lot], pass: Pass) -> Need {
    let enough = if pass == Pass::Strict { 2 } else { 1 };
    let fits = |lot: &Lot, spec: &String| lot.fits.get(spec).is_some_and(|a| *a >= enough);
    let index = |id: &String| asked.iter().position(|other| other.id == *id && other.binds > 0);
    let wanted = one.wanted;
    let filled = |place: &Place| {
        let does = |lot: &usize| place.specs.iter().any(|spec| fits(&lots[*lot], spec));
        Filled { count: place.count, out_of: (0..lots.len()).filter(does).collect() }
    };
    let types: Vec<Vec<Filled>> =
        wanted.types.iter().map(|of_type| of_type.iter().map(filled).collect()).collect();
    let mut uses = vec![false; lots.len()];
    types.iter().flatten().flat_map(|place| &place.out_of).for_each(|lot| uses[*lot] = true);
    let deemed: Vec<(usize, Vec<bool>)> = wanted
        .deemed
        .iter()
        .filter_map(|(id, spec)| {
            let keeps = |lot| spec.as_ref().is_none_or(|spec| fits(lot, spec));
            Some((index(id)?, lots.iter().map(keeps).collect()))
        })
        .collect();
    let shared: Vec<usize> = wanted.shared.iter().filter_map(index).collect();
    let spare_for = wanted.spare_for.as_ref().map(index);
    let lenders = deemed.iter().map(|(other, _)| *other);
    let others = lenders.chain(shared.iter().copied()).chain(spare_for.flatten()).collect();
    Need { least: wanted.least, types, uses, deemed, shared, spare_for, others }
}

impl Search<'_> {
    /// Requirements that no tool and no line of the profile links are told
    /// apart.
    fn parts(&self) -> Vec<Vec<usize>> {
        let count = self.asked.len();
        let mut part: Vec<usize> = (0..count).collect();
        let mut join = |a: usize, b: usize| {
            let (from, to) = (part[a], part[b]);
            part.iter_mut().filter(|p| **p == from).for_each(|p| *p = to);
        };
        let binding: Vec<usize> = (0..count).filter(|r| self.asked[*r].binds > 0).collect();
        for r in &binding {
            for other in &self.needs[*r].others {
                join(*r, *other);
            }
        }
        for lot in 0..self.lots.len() {
            let users: Vec<_> = binding.iter().filter(|r| self.needs[**r].uses[lot]).collect();
            users.windows(2).for_each(|pair| join(*pair[0], *pair[1]));
        }
        let mut parts: BTreeMap<usize, Vec<usize>> = BTreeMap::new();
        for r in binding {
            parts.entry(part[r]).or_default().push(r);
        }
        parts.into_values().map(|members| self.lenders_first(members)).collect()
    }

    fn lenders_first(&self, mut waiting: Vec<usize>) -> Vec<usize> {
        let mut ordered = Vec::new();
        while !waiting.is_empty() {
            let waits = |r: &usize| self.needs[*r].others.iter().any(|o| waiting.contains(o));
            let ready = waiting.iter().position(|r| !waits(r));
            ordered.push(waiting.remove(ready.expect("two requirements lend to each other")));
        }
        ordered
    }

    /// Nothing serves yet.
    fn start(&self) -> State {
        State {
            met: 0,
            left: self.lots.iter().map(|lot| lot.count).collect(),
            serving: vec![Vec::new(); self.asked.len()],
        }
    }

    fn part(&self, requirements: Vec<usize>) -> Part {
        let mut states = BTreeSet::from([self.start()]);
        for (position, r) in requirements.iter().enumerate() {
            let later = &requirements[position + 1..];
            let mut next = BTreeSet::new();
            for state in &states {
                for mut outcome in self.outcomes(*r, state) {
                    self.forget(&mut outcome, later);
                    next.insert(outcome);
                }
            }
            assert!(next.len() < 2_000_000, "too many ways to try");
            states = next;
        }
        let counted = |met: u64, required: bool| {
            let counts = |r: &&usize| {
                let asked = &self.asked[**r];
                let asks = self.pass == Pass::Strict || asked.binds == 2;
                asks && asked.required == required && met >> **r & 1 == 1
            };
            requirements.iter().filter(counts).count()
        };
        let worth = |state: &State| (counted(state.met, true), counted(state.met, false));
        let most = states.iter().map(worth).max().unwrap_or_default();
        let best =
            states.iter().filter(|state| worth(state) == most).map(|state| state.met).collect();
        Part { requirements, best }
    }

    /// What no later requirement can ask for makes no difference any more.
    fn forget(&self, state: &mut State, later: &[usize]) {
        for (lot, left) in state.left.iter_mut().enumerate() {
            if *left > 0 && !later.iter().any(|r| self.needs[*r].uses[lot]) {
                *left = 0;
            }
        }
        for (r, serving) in state.serving.iter_mut().enumerate() {
            if !serving.is_empty() && !later.iter().any(|l| self.needs[*l].others.contains(&r)) {
                serving.clear();
            }
        }
    }

    fn outcomes(&self, r: usize, state: &State) -> Vec<State> {
        let mut outcomes = vec![state.clone()];
        if self.deemed(r, state) {
            let mut met = state.clone();
            met.met |= 1 << r;
            outcomes.push(met);
        }
        for way in self.ways(r, state) {
            let mut met =
                State { met: state.met | 1 << r, left: way.left, serving: state.serving.clone() };
            // Where it may not bind, its tool is lent to nobody on the strict side.
            if self.pass == Pass::Generous || self.asked[r].binds == 2 {
                met.serving[r] = way.own;
                met.serving[r].sort_unstable();
            }
            outcomes.push(met);
        }
        outcomes
    }

    /// Whether the tool of another requirement is deemed to serve.
    fn deemed(&self, r: usize, state: &State) -> bool {
        let deemed = &self.needs[r].deemed;
        deemed.iter().any(|(lender, keeps)| state.serving[*lender].iter().any(|lot| keeps[*lot]))
    }

    /// Every way to fill the places of a requirement with tools.
    fn ways(&self, r: usize, state: &State) -> Vec<Way> {
        let need = &self.needs[r];
        let lenders = need.shared.iter();
        let borrowable = lenders.flat_map(|lender| state.serving[*lender].clone()).collect();
        let start = Way { left: state.left.clone(), own: Vec::new(), borrowable };
        let mut all = Vec::new();
        let count = need.types.len();
        for chosen in 0_u32..1 << count {
            if chosen.count_ones() as usize != need.least {
                continue;
            }
            let types = (0..count).filter(|t| chosen >> t & 1 == 1);
            let mut ways = vec![start.clone()];
            for place in types.flat_map(|t| &need.types[t]) {
                let each = |way| self.filled(r, &place.out_of, place.count, way, state);
                ways = ways.iter().flat_map(each).collect();
            }
            all.extend(ways);
        }
        all
    }

    fn filled(
        &self,
        r: usize,
        out_of: &[usize],
        count: usize,
        way: &Way,
        state: &State,
    ) -> Vec<Way> {
        if count == 0 {
            return vec![way.clone()];
        }
        let mut ways = Vec::new();
        for (position, lot) in out_of.iter().enumerate() {
            if !self.suits(r, *lot, state) {
                continue;
            }
            let rest = &out_of[position..];
            if way.left[*lot] > 0 {
                let mut own = way.clone();
                own.left[*lot] -= 1;
                own.own.push(*lot);
                ways.extend(self.filled(r, rest, count - 1, &own, state));
            }
            if let Some(position) = way.borrowable.iter().position(|b| b == lot) {
                let mut borrowed = way.clone();
                borrowed.borrowable.remove(position);
                ways.extend(self.filled(r, rest, count - 1, &borrowed, state));
            }
        }
        ways
    }

    /// A spare counts only for the tool that serves; one that names none may
    /// fit or not.
    fn suits(&self, r: usize, lot: usize, state: &State) -> bool {
        let Some(item) = self.needs[r].spare_for else { return true };
        let Some(item) = item else { return false };
        let names = &self.lots[lot].names;
        let named = |tool: &usize| {
            if names.is_empty() || self.lots[lot].unlisted {
                self.pass == Pass::Generous
            } else {
                self.lots[*tool].marks.iter().any(|mark| names.contains(mark))
            }
        };
        state.serving[item].iter().any(named)
    }
}

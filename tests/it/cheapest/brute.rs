//! The cheapest basket by trying every one, each vessel judged by the engine.
//! Nothing of the quote's own search, delivery or sums is used.

use kitmuster::engine::{self, Depth, Request};
use kitmuster::measure::{Day, Figure, Length, Quantity, QuantityKind, Rounding};
use kitmuster::model::catalogue::{Catalogue, Fits, Gives, Item};
use kitmuster::model::check::Check;
use kitmuster::model::finding::{Outcome, Verdict};
use kitmuster::model::profile::{Level, Profile};
use kitmuster::model::vessel::{Datum, State, Statement, Tool, Trust, Vessel};
use kitmuster::model::vocabulary::Vocabulary;
use std::collections::BTreeMap;
use std::sync::Arc;

pub(super) struct Case<'a> {
    pub(super) words: &'a Vocabulary,
    pub(super) profiles: &'a [Arc<Profile>],
    pub(super) asked: &'a [Arc<Profile>],
    pub(super) catalogues: &'a [Catalogue],
    pub(super) vessels: Vec<(Vessel, Day, Day)>,
    pub(super) ordered: Day,
    pub(super) with_recommended: bool,
}

/// What a basket achieves: vessels ready, required findings left open,
/// recommended ones left open, and the total in coins, all as the quote ranks them.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Achieved {
    pub(super) ready: usize,
    pub(super) required: usize,
    pub(super) recommended: usize,
    pub(super) total: u64,
}

type At = (usize, usize);
/// Pieces of each item.
type Pieces = BTreeMap<At, u32>;

/// The most pieces of one item that a vessel is given.
const MOST: u32 = 4;

impl Case<'_> {
    pub(super) fn judge(&self, vessel: &Vessel, departure: Day, back: Day) -> Check {
        engine::check(&Request {
            vocabulary: self.words,
            profiles: self.profiles,
            asked: self.asked,
            vessel,
            inspections: &[],
            departure,
            back: Some(back),
            trust: Trust::All,
            depth: Depth::Findings,
        })
    }

    /// Vessels ready, required and recommended findings left open.
    pub(super) fn score(&self, check: &Check) -> (usize, usize, usize) {
        let open = |level| {
            let of = check.judgements.iter().flat_map(|judgement| {
                let requirements = &judgement.profile.requirements;
                judgement.findings.iter().map(|f| (requirements[f.requirement].level, f.outcome))
            });
            of.filter(|(l, outcome)| *l == level && *outcome != Outcome::Met).count()
        };
        let recommended = if self.with_recommended { open(Level::Recommended) } else { 0 };
        let ready = usize::from(check.verdict == Verdict::Ready);
        (ready, open(Level::Required), recommended)
    }

    /// How many baskets there are for the vessel with the most, and for all
    /// of them together.
    pub(super) fn baskets(&self) -> (u64, u64) {
        let of = |(vessel, departure, _): &(Vessel, Day, Day)| {
            let goods = self.items().filter(|(_, item)| {
                matches!(item.gives, Gives::Tools(_)) && self.can_be_had(item, *departure)
            });
            let goods = u64::from(MOST + 1).saturating_pow(goods.count() as u32);
            let options = |tool: &Tool| self.options(tool, *departure).len() as u64;
            vessel.kit.iter().map(options).fold(goods, u64::saturating_mul)
        };
        let all: Vec<u64> = self.vessels.iter().map(of).collect();
        (all.iter().copied().max().unwrap_or(0), all.into_iter().fold(1, u64::saturating_mul))
    }

    /// The best that any basket achieves.
    pub(super) fn best(&self) -> Achieved {
        let mut sums: Vec<((usize, usize, usize), Pieces)> = vec![((0, 0, 0), Pieces::new())];
        for (vessel, departure, back) in &self.vessels {
            let ways = self.ways(vessel, *departure, *back);
            let mut next = Vec::new();
            for (score, pieces) in &sums {
                for (more, own) in &ways {
                    let mut all = pieces.clone();
                    own.iter().for_each(|(at, count)| *all.entry(*at).or_default() += count);
                    let score = (score.0 + more.0, score.1 + more.1, score.2 + more.2);
                    next.push((score, all));
                }
            }
            sums = next;
        }
        let achieved = sums.iter().filter_map(|((ready, required, recommended), pieces)| {
            let total = self.total(pieces)?;
            let (ready, required, recommended) = (*ready, *required, *recommended);
            Some(Achieved { ready, required, recommended, total })
        });
        let rank = |a: &Achieved| (usize::MAX - a.ready, a.required, a.recommended, a.total);
        achieved.min_by_key(rank).expect("nothing can always be bought")
    }

    /// What each way to provide one vessel achieves, with the pieces it takes:
    /// of those that achieve as much with the same pieces one.
    fn ways(
        &self,
        vessel: &Vessel,
        departure: Day,
        back: Day,
    ) -> Vec<((usize, usize, usize), Pieces)> {
        let mut ways: BTreeMap<(Pieces, (usize, usize, usize)), ()> = BTreeMap::new();
        let mut changed: Vec<(Vec<Tool>, Pieces)> = vec![(Vec::new(), Pieces::new())];
        for tool in &vessel.kit {
            let options = self.options(tool, departure);
            let mut next = Vec::new();
            for (kit, pieces) in &changed {
                for (tools, taken) in &options {
                    let mut all = pieces.clone();
                    taken.iter().for_each(|(at, count)| *all.entry(*at).or_default() += count);
                    next.push(([&kit[..], &tools[..]].concat(), all));
                }
            }
            changed = next;
        }
        let goods: Vec<At> = self
            .items()
            .filter(|(_, item)| matches!(item.gives, Gives::Tools(_)))
            .filter(|(_, item)| self.can_be_had(item, departure))
            .map(|(at, _)| at)
            .collect();
        for (kit, pieces) in &changed {
            let mut counts = vec![0; goods.len()];
            loop {
                let mut all = pieces.clone();
                for (at, count) in goods.iter().zip(&counts) {
                    if *count > 0 {
                        *all.entry(*at).or_default() += count;
                    }
                }
                let there = Vessel { kit: self.with_goods(kit, &goods, &counts), ..vessel.clone() };
                let score = self.score(&self.judge(&there, departure, back));
                ways.insert((all, score), ());
                let Some(at) = counts.iter().position(|count| *count < MOST) else { break };
                counts[at] += 1;
                counts[..at].fill(0);
            }
        }
        ways.into_keys().map(|(pieces, score)| (score, pieces)).collect()
    }

    fn items(&self) -> impl Iterator<Item = (At, &Item)> {
        let of = |at: usize| {
            self.catalogues[at].items.iter().enumerate().map(move |(item, i)| ((at, item), i))
        };
        (0..self.catalogues.len()).flat_map(of)
    }

    fn item(&self, at: At) -> &Item {
        &self.catalogues[at.0].items[at.1]
    }

    fn arrives(&self, item: &Item) -> Day {
        let mut day = self.ordered;
        (0..item.lead).for_each(|_| day = day.next());
        day
    }

    fn can_be_had(&self, item: &Item, departure: Day) -> bool {
        item.holds.is_none_or(|last| self.ordered <= last)
            && self.arrives(item) <= departure
            && item.stock.is_none_or(|stock| stock >= item.least && stock > 0)
    }

    /// A lot with any of its tools lengthened, mended or inspected, by at
    /// most one item of each sort.
    fn options(&self, tool: &Tool, departure: Day) -> Vec<(Vec<Tool>, Pieces)> {
        let works: Vec<(At, &Item)> = self
            .items()
            .filter(|(_, item)| self.can_be_had(item, departure))
            .filter(|(_, item)| match &item.gives {
                Gives::Tools(_) => false,
                Gives::Extension { kinds, .. } | Gives::Service { kinds, .. } => {
                    kinds.contains(&tool.kind)
                }
            })
            .collect();
        // Every set of works on one tool of the lot.
        let sets: Vec<(Tool, Vec<At>)> = (0..1_usize << works.len())
            .map(|set| {
                let mut changed = tool.clone();
                let mut by = Vec::new();
                for (index, (at, item)) in works.iter().enumerate() {
                    if set >> index & 1 == 1 {
                        self.work(&mut changed, item);
                        by.push(*at);
                    }
                }
                (changed, by)
            })
            .collect();
        let mut options: Vec<(Vec<Tool>, Pieces)> = vec![(Vec::new(), Pieces::new())];
        for one in 0..tool.count {
            let mut next = Vec::new();
            for (tools, pieces) in &options {
                for (changed, by) in &sets {
                    let mut all = pieces.clone();
                    by.iter().for_each(|at| *all.entry(*at).or_default() += 1);
                    let mark = match one {
                        0 => tool.mark.clone(),
                        _ => format!("{}+{one}", tool.mark),
                    };
                    let made = Tool { count: 1, mark, ..changed.clone() };
                    next.push(([&tools[..], &[made]].concat(), all));
                }
            }
            options = next;
        }
        options
    }

    fn work(&self, tool: &mut Tool, item: &Item) {
        match &item.gives {
            Gives::Service { mends, inspects, .. } => {
                if *mends {
                    tool.state = State::Serviceable;
                }
                if *inspects {
                    tool.inspected = Some(self.arrives(item));
                }
            }
            Gives::Extension { by, .. } => {
                let Some(handle) = self.words.find_attribute("handle") else { return };
                let mut readings = tool.readings(handle).to_vec();
                for reading in &mut readings {
                    if let Datum::Figure(figure) = &mut reading.datum {
                        let length: Length = figure.length().expect("a handle is a length");
                        let sum = Quantity::Length(length.plus(*by));
                        *figure = Figure::reckoned(sum, figure.system, Rounding::Down);
                        assert_eq!(
                            Figure::parse(&figure.written, QuantityKind::Length).unwrap().quantity,
                            sum
                        );
                    }
                }
                tool.set(handle, readings);
            }
            Gives::Tools(_) => {}
        }
    }

    fn with_goods(&self, kit: &[Tool], goods: &[At], counts: &[u32]) -> Vec<Tool> {
        let mut all = kit.to_vec();
        let mut bought: Vec<(At, usize, Vec<Fits>)> = Vec::new();
        // Spares that fit the first of a lot fit the others of it.
        for tool in &mut all {
            let more: Vec<String> = kit
                .iter()
                .filter(|other| {
                    tool.fits.iter().any(|mark| other.mark.split('+').next() == Some(mark))
                })
                .map(|other| other.mark.clone())
                .collect();
            tool.fits.extend(more);
        }
        for (at, count) in goods.iter().zip(counts).filter(|(_, count)| **count > 0) {
            let item = self.item(*at);
            let Gives::Tools(given) = &item.gives else { continue };
            for (number, given) in given.iter().enumerate() {
                let arrives = self.arrives(item);
                let mut tool = given.tool.clone();
                tool.mark = format!("new {}.{}.{number}", at.0, at.1);
                tool.count *= count;
                tool.acquired = Some(arrives);
                tool.inspected = given.inspected.then_some(arrives);
                tool.expires = given.lasts.map(|lasts| arrives.through(lasts));
                let by = Some(self.catalogues[at.0].supplier.clone());
                tool.conforms = given
                    .conforms
                    .iter()
                    .map(|to| Statement { to: to.clone(), on: self.ordered, by: by.clone() })
                    .collect();
                bought.push((*at, all.len(), given.fits.clone()));
                all.push(tool);
            }
        }
        for (at, spare, fits) in bought.clone() {
            let fitting = (0..all.len()).filter(|tool| {
                *tool != spare
                    && fits.iter().any(|fits| match fits {
                        Fits::Kind(kind) => all[*tool].kind == *kind,
                        Fits::Item(number) => bought.iter().any(|(of, index, _)| {
                            index == tool && of.0 == at.0 && self.item(*of).number == *number
                        }),
                    })
            });
            let marks = fitting.map(|tool| all[tool].mark.clone()).collect();
            all[spare].fits = marks;
        }
        all
    }

    /// The least total with these pieces, in coins: packs, least orders,
    /// more of anything to reach free delivery. None if stock does not do.
    fn total(&self, pieces: &Pieces) -> Option<u64> {
        let mut total = 0;
        for (number, catalogue) in self.catalogues.iter().enumerate() {
            let coins = |money: kitmuster::measure::Money| money.coins(catalogue.currency);
            let mut sum = 0;
            let mut left: Vec<(u64, u32, u32)> = Vec::new();
            for (index, item) in catalogue.items.iter().enumerate() {
                let wanted = pieces.get(&(number, index)).copied().unwrap_or(0);
                let mut packs = wanted.div_ceil(item.pack);
                if packs > 0 {
                    packs = packs.max(item.least);
                }
                let stock = item.stock.unwrap_or(u32::MAX);
                if packs > stock {
                    return None;
                }
                sum += coins(item.price) * u64::from(packs);
                let once = if packs == 0 { item.least } else { 1 };
                let held = item.holds.is_none_or(|last| self.ordered <= last);
                let served =
                    self.vessels.iter().any(|(_, departure, _)| self.arrives(item) <= *departure);
                let goods = matches!(item.gives, Gives::Tools(_));
                if goods && held && served && stock - packs >= once {
                    left.push((coins(item.price), once, stock - packs));
                }
            }
            let (goods, charge) = (sum, coins(catalogue.delivery.charge));
            let Some(from) = catalogue.delivery.free_from.map(coins) else {
                total += if goods > 0 { taxed(goods + charge, catalogue) } else { 0 };
                continue;
            };
            let plain = match goods {
                0 => 0,
                _ if goods >= from => taxed(goods, catalogue),
                _ => taxed(goods + charge, catalogue),
            };
            let filled = (goods > 0 && goods < from)
                .then(|| fill(&left, goods, from, goods + charge))
                .flatten();
            let filled = filled.map_or(plain, |goods| taxed(goods, catalogue));
            total += plain.min(filled);
        }
        Some(total)
    }
}

/// The least sum of goods from `from` on and below `below`, with more packs.
fn fill(left: &[(u64, u32, u32)], goods: u64, from: u64, below: u64) -> Option<u64> {
    if goods >= below {
        return None;
    }
    let Some(((price, once, stock), rest)) = left.split_first() else {
        return (goods >= from).then_some(goods);
    };
    let mut best: Option<u64> = fill(rest, goods, from, below);
    let mut packs = *once;
    while packs <= *stock && goods + price * u64::from(packs) < below {
        let more = fill(rest, goods + price * u64::from(packs), from, below);
        best = match (best, more) {
            (Some(a), Some(b)) => Some(a.min(b)),
            (a, b) => a.or(b),
        };
        packs += 1;
    }
    best
}

/// With the tax, half a coin rounded up, in whole numbers.
fn taxed(coins: u64, catalogue: &Catalogue) -> u64 {
    let rate = u64::try_from(catalogue.tax.thousandths()).unwrap();
    coins + (2 * coins * rate + 100_000) / 200_000
}

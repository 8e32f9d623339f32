//! The kit: each tool or lot by all that the list and the records say of it.

use super::decide::{Decided, Statement, Weight, decide};
use super::entries::{Entries, Entry};
use super::readings::{self, makes_it_work};
use crate::measure::Day;
use crate::model::inspection::Inspection;
use crate::model::vessel::{Split, State, Tool, Vessel, Whereabouts};
use crate::model::vocabulary::{KindId, Vocabulary};

/// The kit of the list, and behind it what nobody listed, by mark.
pub(super) fn kit(vessel: &Vessel, entries: &Entries<'_>, vocabulary: &Vocabulary) -> Vec<Tool> {
    let lot = |list, entries, known| Lot { vessel, entries, known, vocabulary, list };
    let mut kit = Vec::with_capacity(vessel.kit.len());
    for tool in vessel.kit.iter().filter(|tool| tool.broken_part_of().is_none()) {
        let rest = vessel.kit.iter().find(|rest| rest.broken_part_of() == Some(&tool.mark));
        let list = Some(Listed { tool, rest });
        kit.extend(lot(list, entries.of_mark(&tool.mark), entries).tools(tool.clone()));
    }
    for extra in &entries.extras {
        let lot = lot(None, &extra.entries, entries);
        let Some(kind) = lot.kinds().0.first().copied() else { continue };
        let place = extra.entries.iter().map(|entry| &entry.found.place).max_by_key(|p| &p.file);
        let tool = Tool::bare(extra.mark.clone(), kind, 1, place.cloned().unwrap_or_default());
        let mut tools = lot.tools(tool);
        for tool in
            tools.iter_mut().filter(|tool| extra.again && tool.whereabouts == Whereabouts::Aboard)
        {
            tool.whereabouts = Whereabouts::Unknown;
        }
        kit.extend(tools);
    }
    by_every_kind(kit)
}

/// Each tool that may be of several kinds once for each of them: it serves as
/// none of them for certain. What was taken apart before stays as it is.
pub(super) fn by_every_kind(kit: Vec<Tool>) -> Vec<Tool> {
    if kit.iter().all(|tool| tool.disputes.kinds.len() < 2) {
        return kit;
    }
    let of_kind = |tool: &Tool| {
        let part = tool.part_of.as_ref().filter(|part| part.split == Split::KindDisputed);
        part.map(|part| part.lot.clone())
    };
    let apart: Vec<String> = kit.iter().filter_map(of_kind).collect();
    kit.into_iter()
        .flat_map(|tool| {
            let is_apart = of_kind(&tool).is_some() || apart.contains(&tool.mark);
            let kinds = if is_apart { Vec::new() } else { tool.disputes.kinds.clone() };
            let others = kinds.iter().skip(1).map(|kind| {
                let other = tool.part(Split::KindDisputed, tool.count);
                Tool { kind: *kind, ..other }
            });
            let others: Vec<Tool> = others.collect();
            [tool].into_iter().chain(others)
        })
        .collect()
}

/// A tool or lot as it is listed.
struct Listed<'a> {
    tool: &'a Tool,
    /// What of the lot is listed as broken.
    rest: Option<&'a Tool>,
}

impl Listed<'_> {
    fn count(&self) -> u32 {
        self.tool.count + self.rest.map_or(0, |rest| rest.count)
    }
}

/// One tool or lot, and all that is said of it.
struct Lot<'a> {
    vessel: &'a Vessel,
    list: Option<Listed<'a>>,
    entries: &'a [Entry<'a>],
    known: &'a Entries<'a>,
    vocabulary: &'a Vocabulary,
}

impl Lot<'_> {
    /// The tool as it is by every word on it, with what of the lot is not like
    /// the rest; none where a later list of all of its kind leaves it out.
    fn tools(&self, mut tool: Tool) -> Vec<Tool> {
        let rest = self.list.as_ref().and_then(|list| list.rest);
        if self.entries.is_empty() && !self.is_sought(&tool) {
            return [Some(tool), rest.cloned()].into_iter().flatten().collect();
        }
        let Some(place) = self.place(&tool) else { return Vec::new() };
        let (state, count) = (self.state(None), self.count());
        self.lay_readings(&mut tool, place.clone());
        tool.state = state.as_ref().map_or(State::Unknown, |state| state.or(State::Unknown));
        let listed = self.list.as_ref().map_or(0, Listed::count);
        let recount = count.filter(|count| self.is_recount(count, listed));
        let mut tools = match recount {
            // It is of the whole lot, its broken part included.
            Some(count) => {
                let broken = rest.is_some_and(|rest| rest.state == State::Broken);
                if broken && state.is_none_or(|state| state.weight < count.weight) {
                    tool.state = State::Unknown;
                }
                counted(tool, &count.says)
            }
            None => {
                let rest = rest.map_or_else(Vec::new, |rest| self.rest(rest.clone(), place));
                [tool].into_iter().chain(rest).collect()
            }
        };
        let (kinds, by_name) = self.kinds();
        for tool in &mut tools {
            tool.kind = kinds.first().copied().unwrap_or(tool.kind);
            tool.disputes.by_name = by_name;
            tool.disputes.kinds.clone_from(&kinds);
            tool.disputes.kinds.retain(|_| kinds.len() > 1);
        }
        tools
    }

    fn lay_readings(&self, tool: &mut Tool, place: Whereabouts) {
        tool.whereabouts = place;
        readings::lay(tool, self.entries, self.vocabulary);
        self.lay_days_and_words(tool);
    }

    /// The broken part of the lot: what is said of the lot, and what is said of
    /// that part alone.
    fn rest(&self, mut rest: Tool, place: Whereabouts) -> Vec<Tool> {
        self.lay_readings(&mut rest, place.clone());
        let entries = self.known.of_mark(&rest.mark);
        if entries.is_empty() {
            return vec![rest];
        }
        let list = Some(Listed { tool: &rest, rest: None });
        let mut parts = Lot { list, entries, ..*self }.tools(rest.clone());
        if entries.iter().all(|entry| !entry.found.missing) {
            parts.iter_mut().for_each(|part| part.whereabouts = place.clone());
        }
        parts
    }

    fn listed(&self) -> Weight {
        Weight::listed(self.vessel.declared)
    }

    /// What was found where the tool was.
    fn seen(&self) -> impl Iterator<Item = (&Entry<'_>, Weight)> {
        let seen = self.entries.iter().filter(|entry| !entry.found.missing);
        seen.map(|entry| (entry, Weight::seen(entry.record.on)))
    }

    /// Whether a record speaks for the tool without naming it.
    fn is_sought(&self, tool: &Tool) -> bool {
        self.known.records.iter().any(|record| covers(record, tool))
    }

    /// Where it is; none where the list rules it out.
    fn place(&self, tool: &Tool) -> Option<Whereabouts> {
        let mut said: Vec<Statement<Whereabouts>> = Vec::new();
        match &self.list {
            Some(list) => said.push((list.tool.whereabouts.clone(), self.listed())),
            None if self.vessel.coverage.is_whole(tool.kind) => {
                said.push((Whereabouts::Missing, self.listed()));
            }
            None => {}
        }
        let away_on = |day: Day| matches!(&tool.whereabouts, Whereabouts::Lent { span, .. } if span.holds(day));
        let lent = matches!(tool.whereabouts, Whereabouts::Lent { .. });
        for entry in self.entries {
            let weight = Weight::seen(entry.record.on);
            if entry.found.missing {
                said.push((Whereabouts::Missing, weight));
            } else if !lent || away_on(entry.record.on) {
                said.push((Whereabouts::Aboard, weight));
            }
        }
        // Without naming it a record says that it was not there; of what came
        // later or was away that day it says nothing.
        for record in self.known.records {
            let named = self.entries.iter().any(|entry| std::ptr::eq(entry.record, record));
            let later = tool.acquired.is_some_and(|day| record.on < day);
            if covers(record, tool) && !named && !later && !away_on(record.on) {
                said.push((Whereabouts::Missing, Weight::seen(record.on)));
            }
        }
        let decided = decide(said)?;
        let left_out = self.list.is_none() && !decided.weight.seen;
        (!left_out).then(|| decided.or(Whereabouts::Unknown))
    }

    /// The kinds that it is, the listed one first: several where a record no
    /// older than the list says another, or where the list's own word is wider
    /// than a kind and no record says which of them it is. Whether it is that
    /// word alone that leaves it open.
    fn kinds(&self) -> (Vec<KindId>, bool) {
        let said = self
            .entries
            .iter()
            .filter_map(|entry| Some((entry.found.kind?, Weight::seen(entry.record.on))));
        let listed = self.list.as_ref().map_or(&[][..], |list| list.tool.kinds());
        let wide = listed.len() > 1;
        let seen = decide(said).filter(|seen| listed.is_empty() || seen.weight >= self.listed());
        let mut seen = seen.map(|seen| seen.says).unwrap_or_default();
        seen.sort_unstable();
        if wide && !seen.is_empty() && seen.iter().all(|kind| listed.contains(kind)) {
            return (seen, false);
        }
        let by_name = wide && seen.is_empty();
        seen.retain(|kind| !listed.contains(kind));
        (listed.iter().copied().chain(seen).collect(), by_name)
    }

    /// Whether it works, by what was said up to a day. What makes it work
    /// retires every word up to its day.
    fn state(&self, until: Option<Day>) -> Option<Decided<State>> {
        let made = || {
            let made = self.seen().flat_map(|(entry, _)| &entry.found.mended);
            made.map(|(change, _)| change).filter(|change| makes_it_work(change, self.vocabulary))
        };
        let own = self.list.as_ref().map_or(&[][..], |list| &list.tool.changes);
        let own = own.iter().filter(|change| makes_it_work(change, self.vocabulary));
        let by_entries = made().map(|change| change.on).max();
        let by_any = own.map(|change| change.on).chain(by_entries).max();
        let stands = |weight: &Weight, last: Option<Day>| last.is_none() || weight.on > last;
        let listed = self.list.as_ref().map(|list| (list.tool.state, self.listed()));
        let listed =
            listed.filter(|(state, weight)| *state != State::Unknown && stands(weight, by_entries));
        let seen = self.seen().filter_map(|(entry, weight)| Some((entry.found.state?, weight)));
        let seen = seen.filter(|(_, weight)| stands(weight, by_any));
        let mended = made().map(|change| (State::Serviceable, Weight::seen(change.on)));
        let all = listed.into_iter().chain(seen).chain(mended);
        decide(all.filter(|(_, weight)| until.is_none() || weight.on <= until))
    }

    /// How many there are, the broken ones included.
    fn count(&self) -> Option<Decided<u32>> {
        let listed = self.list.as_ref().map(|list| (list.count(), self.listed()));
        let seen = self.seen().filter_map(|(entry, weight)| Some((entry.found.count?, weight)));
        decide(listed.into_iter().chain(seen))
    }

    /// Whether somebody counted the lot anew: the number is another than listed,
    /// or its condition was told with it.
    fn is_recount(&self, count: &Decided<u32>, listed: u32) -> bool {
        let told = || self.state(count.weight.on).is_some_and(|state| state.weight == count.weight);
        count.weight.seen && (count.says != [listed] || told())
    }

    /// Expiry, place in the boat, remark and inspection.
    fn lay_days_and_words(&self, tool: &mut Tool) {
        let seen = self.seen().filter_map(|(entry, weight)| Some((entry.found.expires?, weight)));
        let listed = tool.expires.map(|day| (day, self.listed()));
        if let Some(expiry) = decide(listed.into_iter().chain(seen)) {
            tool.expires = expiry.says.iter().max().copied();
            let sure = expiry.says.iter().min().copied();
            tool.disputes.expiry = sure.filter(|_| expiry.says.len() > 1);
        }
        let stowed = self.seen().filter_map(|(entry, w)| Some((entry.found.stowed.clone()?, w)));
        tool.stowed = words(tool.stowed.take().map(|said| (said, self.listed())), stowed);
        let remarks = self.seen().filter_map(|(entry, w)| Some((entry.found.remark.clone()?, w)));
        tool.remark = words(tool.remark.take().map(|said| (said, self.listed())), remarks);
        for entry in self.entries.iter().filter(|entry| self.is_inspection(entry)) {
            tool.inspected = tool.inspected.max(Some(entry.record.on));
        }
    }

    /// Whether an entry counts as the tool's inspection: it found it good, and
    /// nobody found it otherwise that day.
    fn is_inspection(&self, entry: &Entry<'_>) -> bool {
        let Entry { found, record } = entry;
        let changes = found.mended.iter().map(|(change, _)| change);
        let mended = changes.filter(|change| makes_it_work(change, self.vocabulary));
        let until = mended.map(|change| change.on).max();
        let good = found.state == Some(State::Serviceable) || until.is_some();
        let recent = self.list.is_none() || self.vessel.declared.is_none_or(|day| record.on >= day);
        let works = || self.state(Some(record.on).max(until)).map(|state| state.says);
        record.renews
            && !found.missing
            && good
            && recent
            && works() == Some(vec![State::Serviceable])
    }
}

/// The lot by these counts: the least is there for certain, more may be.
fn counted(mut tool: Tool, counts: &[u32]) -> Vec<Tool> {
    tool.count = counts.iter().min().copied().unwrap_or(tool.count);
    let more = counts.iter().max().map_or(0, |most| most - tool.count);
    let disputed = tool.part(Split::CountDisputed, more);
    let disputed = Tool { whereabouts: Whereabouts::Unknown, ..disputed };
    [tool].into_iter().chain((more > 0).then_some(disputed)).collect()
}

/// The text that decides; the first of those that differ.
fn words(
    listed: Option<Statement<String>>,
    seen: impl Iterator<Item = Statement<String>>,
) -> Option<String> {
    decide(listed.into_iter().chain(seen))?.says.into_iter().min()
}

/// Whether a record speaks of every tool of all the kinds that this may be.
fn covers(record: &Inspection, tool: &Tool) -> bool {
    tool.kinds().iter().all(|kind| record.coverage.is_whole(*kind))
}

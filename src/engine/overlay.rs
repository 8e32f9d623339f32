//! Inspection records laid over a vessel's declaration, and which figures
//! are believed.
//!
//! Records of one day speak together: what they say differently is disputed,
//! whatever their files are called. What lies ahead of the day judged counts for
//! nothing: an inspection, a statement of conformity, a purchase, a record.

use crate::measure::Day;
use crate::model::profile::FreeboardFrom;
use crate::model::vessel::{
    Change, Datum, Found, Freeboard, How, Inspection, Reading, Readings, Split, State, Tool, Trust,
    Vessel, Whereabouts,
};
use crate::model::vocabulary::{AttributeId, Class, KindId, Vocabulary};
use std::collections::BTreeSet;

/// The vessel with the records laid over its declaration, the earliest
/// first, in whatever order they are given. Nothing declared is edited:
/// readings stand side by side. A later look at the condition, the place or
/// the expiry replaces the earlier one, so that a record older than the
/// declaration adds its readings only. Of one day all records speak together:
/// what they say differently is disputed.
pub fn lay_over(vessel: &Vessel, inspections: &[Inspection], vocabulary: &Vocabulary) -> Vessel {
    let mut vessel = vessel.clone();
    let mut records: Vec<_> = inspections.iter().collect();
    records.sort_by(|a, b| (a.on, &a.place.file).cmp(&(b.on, &b.place.file)));
    let mut looked = BTreeSet::new();
    for records in records.chunk_by(|a, b| a.on == b.on) {
        lay_day(&mut vessel, &OfDay { on: records[0].on, records }, &mut looked, vocabulary);
    }
    vessel
}

/// The vessel as a check of that departure judges it: with the records laid
/// over that are not dated after it, and what is not believed left out.
pub fn judged_vessel(
    vessel: Vessel,
    inspections: &[Inspection],
    vocabulary: &Vocabulary,
    (departure, trust): (Day, Trust),
) -> Vessel {
    let known: Vec<_> = inspections.iter().filter(|r| r.on <= departure).cloned().collect();
    judged(vessel, &known, vocabulary, trust)
}

/// The vessel with the records laid over and what is not believed left out.
pub(super) fn judged(
    vessel: Vessel,
    records: &[Inspection],
    vocabulary: &Vocabulary,
    trust: Trust,
) -> Vessel {
    let mut vessel = match records {
        [] => vessel,
        _ => lay_over(&vessel, records, vocabulary),
    };
    if trust != Trust::All {
        leave_out_unmeasured(&mut vessel);
    }
    vessel
}

/// The records of one day.
#[derive(Clone, Copy)]
struct OfDay<'a> {
    on: Day,
    records: &'a [&'a Inspection],
}

impl<'a> OfDay<'a> {
    /// What was found under a mark, with the record that says it.
    fn found(self, mark: &str) -> impl Iterator<Item = (&'a Found, &'a Inspection)> {
        let all = self.records.iter().flat_map(|record| record.found.iter().map(|f| (f, *record)));
        all.filter(move |(found, _)| found.mark == mark)
    }

    /// The same, of what was there.
    fn seen(self, mark: &str) -> impl Iterator<Item = (&'a Found, &'a Inspection)> {
        self.found(mark).filter(|(found, _)| !found.missing)
    }
}

/// Marks of tools that a record looked for.
type Looked = BTreeSet<String>;

fn lay_day(vessel: &mut Vessel, day: &OfDay<'_>, looked: &mut Looked, vocabulary: &Vocabulary) {
    for found in day.records.iter().flat_map(|record| &record.found) {
        let listed = vessel.kit.iter().any(|tool| tool.mark == found.mark);
        let unlisted = found.kind.filter(|_| !listed).map(|kind| unlisted(found, kind));
        vessel.kit.extend(unlisted);
    }
    let older = vessel.declared.is_some_and(|declared| day.on < declared);
    if !older {
        recount(vessel, day);
    }
    let undated = vessel.declared.is_none();
    for tool in &mut vessel.kit {
        lay_readings(tool, day, vocabulary);
        if older {
            continue;
        }
        let conditions = conditions(tool, day, vocabulary);
        if let Some(state) = agreed(&conditions) {
            // A good word against a bad one of a list without a day, which may
            // be the younger of the two, leaves it open.
            let doubted = undated && tool.state == State::Broken && !looked.contains(&tool.mark);
            let mended = day.seen(&tool.mark).any(|(found, _)| is_repaired(found, vocabulary));
            tool.state = match state {
                Some(State::Serviceable) if doubted && !mended => State::Unknown,
                state => state.unwrap_or(State::Unknown),
            };
        }
        lay_the_rest(tool, day, vocabulary);
        place_after(tool, day);
        if !conditions.is_empty() || day.found(&tool.mark).any(|(found, _)| found.missing) {
            looked.insert(tool.mark.clone());
        }
    }
    if !older {
        split_disputed(vessel, day);
        day.records.iter().for_each(|record| cover(vessel, record, vocabulary));
    }
    lay_freeboards(vessel, day);
}

/// What all of these say; nothing where none says anything, and nothing known
/// where they differ.
fn agreed<T: PartialEq + Copy>(said: &[T]) -> Option<Option<T>> {
    let first = said.first()?;
    Some(Some(*first).filter(|first| said.iter().all(|other| other == first)))
}

/// What a record covers. A record of the whole kit says nothing of what it
/// cannot name, like hooks.
fn cover(vessel: &mut Vessel, record: &Inspection, vocabulary: &Vocabulary) {
    vessel.coverage.all_seen.extend(&record.coverage.all_seen);
    if record.coverage.everything {
        let carried = |kind: &&KindId| Class::CARRIED.contains(&vocabulary.kind(**kind).class);
        vessel.coverage.all_seen.extend(vocabulary.kind_names.values().filter(carried));
    }
}

fn lay_freeboards(vessel: &mut Vessel, day: &OfDay<'_>) {
    let mut taken: Vec<&Freeboard> =
        day.records.iter().filter_map(|record| record.freeboard.as_ref()).collect();
    // Where nothing is declared, the rail goes before the deck.
    taken.sort_by_key(|freeboard| freeboard.from != FreeboardFrom::Rail);
    for freeboard in taken {
        if vessel.freeboard.stations.is_empty() {
            vessel.freeboard = freeboard.clone();
        } else if vessel.freeboard.from == freeboard.from {
            lay_freeboard(vessel, freeboard);
        }
    }
}

fn lay_freeboard(vessel: &mut Vessel, taken: &Freeboard) {
    for station in &taken.stations {
        match vessel.freeboard.stations.iter_mut().find(|s| s.name == station.name) {
            Some(declared) => declared.readings.extend(station.readings.iter().cloned()),
            None => vessel.freeboard.stations.push(station.clone()),
        }
    }
}

/// Whether a record speaks for the tool without naming it, so that it was not
/// there: the record covers the whole kit, or all of the kind. What came later
/// or was away that day is no matter of the record.
fn was_not_there(tool: &Tool, record: &Inspection) -> bool {
    let away = tool.acquired.is_some_and(|day| record.on < day)
        || matches!(&tool.whereabouts, Whereabouts::Lent { span, .. } if span.holds(record.on));
    let named = |mark: &str| record.found.iter().any(|found| found.mark == mark);
    // What is left of a lot goes by the lot's own mark in a record.
    let named_as_lot = || tool.part_of.as_ref().is_some_and(|part| named(&part.lot));
    record.coverage.is_whole(tool.kind) && !named(&tool.mark) && !away && !named_as_lot()
}

/// Where the tool is after the records of the day.
fn place_after(tool: &mut Tool, day: &OfDay<'_>) {
    let missing = day.found(&tool.mark).any(|(found, _)| found.missing)
        || day.records.iter().any(|record| was_not_there(tool, record));
    let seen = day.seen(&tool.mark).next().is_some();
    let lent_on_other_days =
        matches!(&tool.whereabouts, Whereabouts::Lent { span, .. } if !span.holds(day.on));
    match (seen, missing) {
        (true, true) => tool.whereabouts = Whereabouts::Unknown,
        (false, true) => tool.whereabouts = Whereabouts::Missing,
        (true, false) if !lent_on_other_days => tool.whereabouts = Whereabouts::Aboard,
        _ => {}
    }
}

/// Lays readings and changes over a tool. All of the day is read before
/// anything was changed, but for what an entry says was read after a change.
fn lay_readings(tool: &mut Tool, day: &OfDay<'_>, vocabulary: &Vocabulary) {
    let seen: Vec<&Found> = day.seen(&tool.mark).map(|(found, _)| found).collect();
    if seen.is_empty() {
        return;
    }
    for found in &seen {
        add_readings(tool, &found.attributes);
    }
    let own = tool.changes.clone();
    let mended = || seen.iter().flat_map(|found| &found.mended);
    for (change, _) in mended() {
        retire(tool, change, vocabulary);
    }
    for found in &seen {
        add_readings(tool, &read_after_changes(found, tool.kind, vocabulary));
    }
    // What the vessel's own list says was changed since the record.
    for change in own.iter().filter(|change| change.on >= day.on) {
        if !mended().any(|(mended, _)| mended == change) {
            retire(tool, change, vocabulary);
        }
    }
}

/// What an entry says was read after the changes that it names, each change
/// taking away what it touched.
fn read_after_changes(found: &Found, kind: KindId, vocabulary: &Vocabulary) -> Readings {
    let mut scratch = Tool::bare(found.mark.clone(), kind, 1, found.place.clone());
    for (change, after) in &found.mended {
        retire(&mut scratch, change, vocabulary);
        add_readings(&mut scratch, after);
    }
    scratch.attributes
}

/// What the records of the day say of the condition.
fn conditions(tool: &Tool, day: &OfDay<'_>, vocabulary: &Vocabulary) -> Vec<State> {
    let said = |found: &Found| match is_repaired(found, vocabulary) {
        true => Some(State::Serviceable),
        false => found.state,
    };
    day.seen(&tool.mark).filter_map(|(found, _)| said(found)).collect()
}

fn is_repaired(found: &Found, vocabulary: &Vocabulary) -> bool {
    found.mended.iter().any(|(change, _)| makes_it_work(change, vocabulary))
}

/// Expiry, place in the boat, remark and inspection.
fn lay_the_rest(tool: &mut Tool, day: &OfDay<'_>, vocabulary: &Vocabulary) {
    let expiries: Vec<Day> = day.seen(&tool.mark).filter_map(|(found, _)| found.expires).collect();
    tool.expires = expiries.iter().max().copied().or(tool.expires);
    if agreed(&expiries) == Some(None) && tool.state == State::Serviceable {
        // Two days were read off one label: whether it is good is open.
        tool.state = State::Unknown;
    }
    for (found, record) in day.seen(&tool.mark) {
        tool.stowed = found.stowed.clone().or(tool.stowed.take());
        tool.remark = found.remark.clone().or(tool.remark.take());
        let good = is_repaired(found, vocabulary) || found.state == Some(State::Serviceable);
        if record.renews && good && tool.state == State::Serviceable {
            tool.inspected = tool.inspected.max(Some(record.on));
        }
    }
}

/// A recount of a lot stands for all of it, its broken rest included: how
/// many of them work is then open unless the record says.
fn recount(vessel: &mut Vessel, day: &OfDay<'_>) {
    let marks: BTreeSet<String> = vessel.kit.iter().map(|tool| tool.mark.clone()).collect();
    for mark in marks {
        let counts: Vec<u32> = day.seen(&mark).filter_map(|(found, _)| found.count).collect();
        let Some(least) = counts.iter().min() else { continue };
        let is_rest = |tool: &Tool| tool.part_of.as_ref().is_some_and(|part| part.lot == mark);
        let broken = vessel.kit.iter().any(|tool| is_rest(tool) && tool.state == State::Broken);
        vessel.kit.retain(|tool| !is_rest(tool));
        let Some(tool) = vessel.kit.iter_mut().find(|tool| tool.mark == mark) else { continue };
        tool.count = *least;
        if broken {
            tool.state = State::Unknown;
        }
    }
}

/// Of two counts of a day the lesser is there for certain, the rest may be.
fn split_disputed(vessel: &mut Vessel, day: &OfDay<'_>) {
    let rest = |tool: &Tool| {
        let most = day.seen(&tool.mark).filter_map(|(found, _)| found.count).max()?;
        let more = most.checked_sub(tool.count).filter(|more| *more > 0)?;
        let rest = tool.part(Split::CountDisputed, more);
        Some(Tool { whereabouts: Whereabouts::Unknown, ..rest })
    };
    let rests: Vec<Tool> = vessel.kit.iter().filter_map(rest).collect();
    vessel.kit.extend(rests);
}

fn unlisted(found: &Found, kind: KindId) -> Tool {
    let count = found.count.unwrap_or(1);
    let mut tool = Tool::bare(found.mark.clone(), kind, count, found.place.clone());
    if found.missing {
        tool.whereabouts = Whereabouts::Missing;
    }
    tool
}

fn add_readings(tool: &mut Tool, readings: &[(AttributeId, Vec<Reading>)]) {
    for (attribute, new) in readings {
        match tool.attributes.iter_mut().find(|(id, _)| id == attribute) {
            Some((_, old)) => old.extend(new.iter().cloned()),
            None => tool.attributes.push((*attribute, new.clone())),
        }
    }
}

/// A recorded change retires the readings before it, and those of its own
/// day; a reading without a day counts as one before.
fn retire(tool: &mut Tool, change: &Change, vocabulary: &Vocabulary) {
    let retired = vocabulary.changes.get(&change.what);
    for (id, readings) in &mut tool.attributes {
        let concerned = match retired {
            Some(Some(attributes)) => attributes.contains(id),
            Some(None) => true,
            None => false,
        };
        if concerned {
            readings.retain(|reading| reading.on.is_some_and(|day| day > change.on));
        }
    }
    tool.attributes.retain(|(_, readings)| !readings.is_empty());
    if retired.is_some_and(Option::is_none) {
        tool.conforms.retain(|statement| statement.on > change.on);
    }
    tool.changes.push(change.clone());
}

/// A change of a length alone repairs nothing.
fn makes_it_work(change: &Change, vocabulary: &Vocabulary) -> bool {
    let retired = vocabulary.changes.get(&change.what);
    !matches!(retired, Some(Some(attributes)) if !attributes.is_empty())
}

/// Leaves out the figures that nobody measured.
fn leave_out_unmeasured(vessel: &mut Vessel) {
    let pieces = vessel.hooks.iter_mut().chain(&mut vessel.lines).flatten();
    let tools = vessel.kit.iter_mut().chain(pieces.map(|piece| &mut piece.tool));
    for tool in tools {
        for (_, readings) in &mut tool.attributes {
            readings.retain(|reading| {
                reading.how == How::Measured || !matches!(reading.datum, Datum::Figure(_))
            });
        }
        tool.attributes.retain(|(_, readings)| !readings.is_empty());
    }
    for station in &mut vessel.freeboard.stations {
        station.readings.retain(|reading| reading.how == How::Measured);
    }
}

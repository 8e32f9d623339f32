//! Inspection records laid over a vessel's list, and which figures are
//! believed.
//!
//! The list and every record are statements: of which thing, which property,
//! what it says, of which day, and whether the thing was seen for it or only
//! listed. Each property is decided from its statements by `decide`, which looks
//! at no order of files, records or entries. Nothing listed is edited: readings
//! stand side by side. What lies ahead of the day judged counts for nothing.

mod decide;
mod entries;
mod lot;
mod people;
mod rail;
mod readings;
pub(super) mod tell;

use crate::measure::Day;
use crate::model::inspection::Inspection;
use crate::model::vessel::{Datum, How, Trust, Vessel};
use crate::model::vocabulary::{Class, KindId, Vocabulary};
use entries::Entries;

/// The vessel with the records laid over its list.
pub fn lay_over(vessel: &Vessel, inspections: &[Inspection], vocabulary: &Vocabulary) -> Vessel {
    let mut laid = vessel.clone();
    laid.kit = lot::kit(vessel, &Entries::of(vessel, inspections, vocabulary), vocabulary);
    people::lay(&mut laid, inspections);
    cover(&mut laid, inspections, vocabulary);
    rail::lay(&mut laid, inspections);
    laid
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
        [] => Vessel { kit: lot::by_every_kind(vessel.kit), ..vessel },
        _ => lay_over(&vessel, records, vocabulary),
    };
    rail::overrule(&mut vessel.freeboard);
    if trust != Trust::All {
        leave_out_unmeasured(&mut vessel);
    }
    vessel
}

/// What the records cover that are no older than the list. A record of the
/// whole kit says nothing of what it cannot name, like hooks.
fn cover(vessel: &mut Vessel, records: &[Inspection], vocabulary: &Vocabulary) {
    let declared = vessel.declared;
    for record in records.iter().filter(|record| declared.is_none_or(|day| record.on >= day)) {
        vessel.coverage.all_seen.extend(&record.coverage.all_seen);
        if record.coverage.everything {
            let carried = |kind: &&KindId| Class::CARRIED.contains(&vocabulary.kind(**kind).class);
            vessel.coverage.all_seen.extend(vocabulary.kind_names.values().filter(carried));
        }
    }
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
    let freeboard = &mut vessel.freeboard;
    for station in freeboard.stations.iter_mut().chain(&mut freeboard.other) {
        station.readings.retain(|reading| reading.how == How::Measured);
        station.overruled.clear();
    }
}

//! What is told beside the verdict, since no finding may speak of it: what an
//! inspector wrote, and figures that do not agree with what was measured.

use super::entries::{Entries, Entry};
use crate::model::check::Notice;
use crate::model::inspection::Inspection;
use crate::model::reason::DisputedReading;
use crate::model::vessel::{Reading, Tool, Vessel};
use crate::model::vocabulary::{AttributeId, Class, Vocabulary};

/// What the records say of a vessel as it is listed: by tool, then by day.
pub(in crate::engine) fn of_records(
    listed: &Vessel,
    records: &[Inspection],
    vocabulary: &Vocabulary,
) -> Vec<Notice> {
    let entries = Entries::of(listed, records, vocabulary);
    let tools = listed.kit.iter().map(|tool| (&tool.mark, entries.of_mark(&tool.mark), true));
    let extras = entries.extras.iter().map(|extra| (&extra.mark, &extra.entries[..], false));
    let mut told: Vec<Notice> = Vec::new();
    for (mark, entries, is_listed) in tools.chain(extras) {
        let mut entries: Vec<&Entry<'_>> = entries.iter().collect();
        entries.sort_by_key(|entry| (entry.record.on, &entry.found.remark, &entry.found.read_as));
        let kind_known = is_listed || entries.iter().any(|entry| entry.found.kind.is_some());
        for notice in entries.into_iter().flat_map(|entry| of_entry(entry, mark, kind_known)) {
            if !told.contains(&notice) {
                told.push(notice);
            }
        }
    }
    told
}

fn of_entry(entry: &Entry<'_>, mark: &str, kind_known: bool) -> Vec<Notice> {
    let Entry { found, record } = entry;
    let (on, mark) = (record.on, || mark.to_owned());
    let unmarked = found.mark.is_none().then(|| Notice::Unmarked { mark: mark(), on });
    let unlisted = (!kind_known).then(|| Notice::UnlistedMark { mark: mark(), on });
    let read = found.read_as.clone().map(|read| Notice::MarkReadAs { mark: mark(), on, read });
    let remark = found.remark.clone().map(|remark| Notice::Remark { mark: mark(), on, remark });
    [unmarked, unlisted, read, remark].into_iter().flatten().collect()
}

/// What does not agree on a vessel with the records laid over.
pub(in crate::engine) fn of_vessel(laid: &Vessel, vocabulary: &Vocabulary) -> Vec<Notice> {
    let pieces = laid.hooks.iter().chain(&laid.lines).flatten().map(|piece| &piece.tool);
    let mut told = Vec::new();
    for tool in laid.kit.iter().filter(|tool| tool.part_of.is_none()).chain(pieces) {
        if !tool.disputes.kinds.is_empty() {
            let name = |kind: &_| vocabulary.kind(*kind).name.clone();
            let kinds = tool.disputes.kinds.iter().map(name).collect();
            let by_name = tool.disputes.by_name;
            told.push(Notice::KindDisputed { mark: tool.mark.clone(), kinds, by_name });
        }
        // Of papers the last word counts, whoever measured.
        if vocabulary.kind(tool.kind).class != Class::Document {
            let of = |(id, readings): &(_, Vec<_>)| differ(tool, *id, readings, vocabulary);
            told.extend(tool.attributes.iter().filter_map(of));
        }
    }
    told
}

fn differ(
    tool: &Tool,
    id: AttributeId,
    readings: &[Reading],
    vocabulary: &Vocabulary,
) -> Option<Notice> {
    let counted = Reading::counted(readings);
    let otherwise = readings.iter().filter(|one| counted.clone().all(|c| c.datum != one.datum));
    let overruled: Vec<_> = otherwise.map(DisputedReading::of).collect();
    (!overruled.is_empty()).then(|| Notice::ReadingsDiffer {
        mark: tool.mark.clone(),
        attribute: vocabulary.attribute(id).name.clone(),
        counted: counted.map(DisputedReading::of).collect(),
        overruled,
    })
}

//! One and the same tool on two vessels at once, as far as the files show.

use super::judge::{Judged, Row};
use crate::measure::{Day, DaySpan};
use crate::model::vessel::{Datum, Tool, Whereabouts};
use crate::model::vocabulary::{AttributeId, Class, KindId, Vocabulary};
use std::collections::BTreeMap;

/// A mark that stands on tools of several vessels which are at sea on the
/// same days, with nothing written that would tell the tools apart.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SameMark {
    /// The mark.
    pub mark: String,
    /// The kind of tool.
    pub kind: KindId,
    /// The vessels' files and names, in the order of the rows.
    pub vessels: Vec<(String, String)>,
}

struct Listed<'a> {
    judged: &'a Judged,
    tool: &'a Tool,
    days: DaySpan,
}

/// The marks that stand on several vessels at sea together, by mark.
///
/// Vessels mark their own tools from one upward, so an equal mark alone says
/// little. A mark that stands on tools which are evidently two (of another
/// kind, or with another length or date written) is taken for such a
/// numbering and left out; so are documents, of which there are copies.
pub fn same_marks(rows: &[Row], vocabulary: &Vocabulary) -> Vec<SameMark> {
    let mut by_mark: BTreeMap<&str, Vec<Listed<'_>>> = BTreeMap::new();
    for row in rows {
        let Row::Vessel(judged) = row else { continue };
        let asked = judged.check.asked;
        let days = DaySpan { from: Some(asked.departure), until: Some(asked.back) };
        let tools = judged.check.vessel.kit.iter();
        for tool in tools.filter(|t| vocabulary.kind(t.kind).class != Class::Document) {
            by_mark.entry(&tool.mark).or_default().push(Listed { judged, tool, days });
        }
    }
    by_mark
        .into_iter()
        .filter(|(_, listed)| listed.len() > 1 && may_be_one(listed))
        .filter_map(|(mark, listed)| {
            let kind = listed.first()?.tool.kind;
            let vessels = together(&listed);
            (!vessels.is_empty()).then(|| SameMark { mark: mark.to_owned(), kind, vessels })
        })
        .collect()
}

/// The days of the trip on which the tool may be aboard: those before it is
/// lent and those after.
fn days_with(tool: &Tool, trip: DaySpan) -> Vec<DaySpan> {
    match &tool.whereabouts {
        Whereabouts::Aboard | Whereabouts::Unknown => vec![trip],
        Whereabouts::Lent { span, .. } => {
            let before =
                DaySpan { until: earlier(trip.until, span.from.map(Day::previous)), ..trip };
            let after = DaySpan { from: trip.from.max(span.until.map(Day::next)), ..trip };
            let some = |days: &DaySpan| days.from.zip(days.until).is_none_or(|(a, b)| a <= b);
            let parts = [(span.from.is_some(), before), (span.until.is_some(), after)];
            parts.into_iter().filter(|(is, days)| *is && some(days)).map(|(_, days)| days).collect()
        }
        Whereabouts::Ashore | Whereabouts::Missing => Vec::new(),
    }
}

fn earlier(a: Option<Day>, b: Option<Day>) -> Option<Day> {
    match (a, b) {
        (Some(a), Some(b)) => Some(a.min(b)),
        (a, b) => a.or(b),
    }
}

/// The vessels that are at sea with the tool while another has it too.
fn together(listed: &[Listed<'_>]) -> Vec<(String, String)> {
    let aboard: Vec<_> = listed.iter().map(|l| (l.judged, days_with(l.tool, l.days))).collect();
    let mut vessels: Vec<(String, String)> = Vec::new();
    for (judged, days) in &aboard {
        let meets = |(other, others): &(&Judged, Vec<DaySpan>)| {
            judged.file != other.file && days.iter().any(|a| others.iter().any(|b| a.meets(*b)))
        };
        let vessel = (judged.file.to_string(), judged.check.vessel.name.clone());
        if aboard.iter().any(meets) && !vessels.contains(&vessel) {
            vessels.push(vessel);
        }
    }
    vessels
}

/// Whether no two of the tools are evidently two: nothing that is written of
/// one and of another differs.
fn may_be_one(listed: &[Listed<'_>]) -> bool {
    fn agree<'t, T: PartialEq + 't>(told: impl Iterator<Item = &'t T>) -> bool {
        let mut told = told;
        told.next().is_none_or(|first| told.all(|other| other == first))
    }
    let tools = || listed.iter().map(|listed| listed.tool);
    let mut known: BTreeMap<AttributeId, &Datum> = BTreeMap::new();
    let data = tools().flat_map(|tool| &tool.attributes);
    let firsts = data.filter_map(|(id, readings)| Some((*id, &readings.first()?.datum)));
    for (id, datum) in firsts {
        if !same(known.entry(id).or_insert(datum), datum) {
            return false;
        }
    }
    agree(tools().map(|tool| &tool.kind))
        && agree(tools().map(|tool| &tool.count))
        && agree(tools().filter_map(|tool| tool.acquired.as_ref()))
        && agree(tools().filter_map(|tool| tool.inspected.as_ref()))
        && agree(tools().filter_map(|tool| tool.expires.as_ref()))
        && agree(tools().filter_map(|tool| tool.evidence.as_ref()))
        && agree(tools().filter_map(|tool| tool.name.as_ref()))
}

/// The same figure in whatever units it is written.
fn same(a: &Datum, b: &Datum) -> bool {
    match (a, b) {
        (Datum::Figure(a), Datum::Figure(b)) => a.quantity == b.quantity,
        (a, b) => a == b,
    }
}

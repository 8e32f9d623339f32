//! One and the same tool on two vessels at once, as far as the files show.

use super::judge::{Judged, Row};
use crate::measure::DaySpan;
use crate::model::vessel::{Datum, Tool, Whereabouts};
use crate::model::vocabulary::{Class, KindId, Vocabulary};
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
    let one_tool = |listed: &[Listed<'_>]| {
        let first = listed.first().map(|listed| listed.tool);
        first.is_some_and(|first| listed.iter().all(|other| alike(first, other.tool)))
    };
    by_mark
        .into_iter()
        .filter(|(_, listed)| listed.len() > 1 && one_tool(listed))
        .filter_map(|(mark, listed)| {
            let kind = listed.first()?.tool.kind;
            let vessels = together(&listed);
            (!vessels.is_empty()).then(|| SameMark { mark: mark.to_owned(), kind, vessels })
        })
        .collect()
}

fn may_be_aboard(tool: &Tool, days: DaySpan) -> bool {
    match &tool.whereabouts {
        Whereabouts::Aboard | Whereabouts::Unknown => true,
        // Lent for a part of the trip, it is aboard for the rest.
        Whereabouts::Lent { span, .. } => {
            !days.from.is_some_and(|day| span.holds(day))
                || !days.until.is_some_and(|day| span.holds(day))
        }
        Whereabouts::Ashore | Whereabouts::Missing => false,
    }
}

/// The vessels that are at sea with the tool while another has it too.
fn together(listed: &[Listed<'_>]) -> Vec<(String, String)> {
    let aboard: Vec<_> = listed.iter().filter(|l| may_be_aboard(l.tool, l.days)).collect();
    let mut vessels: Vec<(String, String)> = Vec::new();
    for one in &aboard {
        let meets = |other: &&Listed<'_>| {
            one.judged.file != other.judged.file && one.days.meets(other.days)
        };
        let vessel = (one.judged.file.to_string(), one.judged.check.vessel.name.clone());
        if aboard.iter().any(meets) && !vessels.contains(&vessel) {
            vessels.push(vessel);
        }
    }
    vessels
}

/// Whether nothing that is written of both differs.
fn alike(a: &Tool, b: &Tool) -> bool {
    fn agree<T: PartialEq>(a: Option<&T>, b: Option<&T>) -> bool {
        a.zip(b).is_none_or(|(a, b)| a == b)
    }
    let data = |tool: &Tool| -> Vec<_> {
        let firsts = tool
            .attributes
            .iter()
            .filter_map(|(id, readings)| Some((*id, readings.first()?.datum.clone())));
        firsts.collect()
    };
    let differs = |(id, datum): &(_, Datum)| {
        let other = data(b).into_iter().find(|(known, _)| known == id);
        other.is_some_and(|(_, other)| !same(datum, &other))
    };
    a.kind == b.kind
        && a.count == b.count
        && agree(a.acquired.as_ref(), b.acquired.as_ref())
        && agree(a.inspected.as_ref(), b.inspected.as_ref())
        && agree(a.expires.as_ref(), b.expires.as_ref())
        && agree(a.evidence.as_ref(), b.evidence.as_ref())
        && agree(a.name.as_ref(), b.name.as_ref())
        && !data(a).iter().any(differs)
}

/// The same figure in whatever units it is written.
fn same(a: &Datum, b: &Datum) -> bool {
    match (a, b) {
        (Datum::Figure(a), Datum::Figure(b)) => a.quantity == b.quantity,
        (a, b) => a == b,
    }
}

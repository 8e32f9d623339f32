//! The page for a glance on a dark deck: the verdict first, then what is
//! wrong and what to do about it, then the rest.
//!
//! Imports `model` and the page and words beside it. Decides nothing and
//! leaves out nothing without saying so.

mod section;
pub(crate) mod shared;
mod way;

use super::Subject;
use super::page::{Page, Tone};
use super::words::{self, figures};
use crate::load::Source;
use crate::measure::DaySpan;
use crate::model::check::{Check, Judgement, Notice};
use crate::model::finding::{Asked, Verdict};
use crate::model::profile::{Standing, Verified};
use crate::model::vessel::{Trust, Vessel};
use crate::report::Locale;
use section::Section;

/// The check as a page no wider than `width` columns, with colour codes.
pub fn table(subject: &Subject<'_>, width: usize) -> String {
    let check = subject.check;
    let mut page = Page::new(width);
    headline(&mut page, subject);
    notices(&mut page, &check.notices);
    let several = check.judgements.len() > 1;
    if several {
        summary(&mut page, check);
    }
    for judgement in &check.judgements {
        page.gap();
        let words = subject.words(judgement);
        Section { words, judgement, asked: check.asked, several }.write(&mut page);
    }
    if let Some(freeing) = &subject.freeing {
        freeing.write_summary(&mut page);
    }
    foot(&mut page, check);
    page.finish()
}

fn headline(page: &mut Page, subject: &Subject<'_>) {
    let check = subject.check;
    let vessel = &check.vessel;
    let label = (words::verdict(check.verdict), tone(check.verdict));
    let name = named(vessel);
    let indent = label.0.len() + 2;
    let first = format!("{} ", label.0);
    if check.standing() == Standing::GoodPractice {
        page.hang(0, (&first, label.1), (words::ONLY_PRACTICE, Tone::Strong));
        page.prose(indent, Tone::Strong, &name);
    } else {
        page.hang(0, (&first, label.1), (&name, Tone::Strong));
    }
    trip(page, indent, vessel, check.asked, &check.notices);
    page.prose(indent, Tone::Plain, &freeboard(vessel, subject.locale));
    records(page, indent, vessel, subject.sources, &check.notices);
    if check.asked.trust == Trust::Measured {
        page.prose(indent, Tone::Plain, ONLY_MEASURED);
    }
}

/// What stands where stated figures are not believed.
pub(super) const ONLY_MEASURED: &str = "only figures that were measured are believed";

/// The vessel's name with its register number and its port.
pub(super) fn named(vessel: &Vessel) -> String {
    let mut name = vessel.name.clone();
    if let Some(register) = &vessel.register {
        name.push_str(&format!(" ({register})"));
    }
    if let Some(port) = &vessel.port {
        name.push_str(&format!(", {port}"));
    }
    name
}

/// The inspection records that were read, among the files.
pub(super) fn records(
    page: &mut Page,
    indent: usize,
    vessel: &Vessel,
    sources: &[Source],
    notices: &[Notice],
) {
    let left_out = |notice: &Notice| matches!(notice, Notice::RecordAfterDeparture { .. });
    // Which record was left out, its notice tells by its day.
    let records = if notices.iter().any(left_out) { "inspection record" } else { "laid over it" };
    for record in sources.iter().filter(|source| source.file != vessel.place.file) {
        page.prose(indent, Tone::Plain, &format!("{records}: {}", record.file));
    }
}

/// The days of the trip, whether the vessel's file plans them so, and whether
/// a day of return is wanting.
pub(super) fn trip(
    page: &mut Page,
    indent: usize,
    vessel: &Vessel,
    asked: Asked,
    notices: &[Notice],
) {
    let planned = &vessel.trip;
    let days = words::span(DaySpan { from: Some(asked.departure), until: Some(asked.back) });
    let no_return = notices.contains(&Notice::NoReturn);
    let as_planned = planned.departure == Some(asked.departure)
        && (no_return || planned.back == Some(asked.back));
    let planned = if as_planned { " (as planned in its file)" } else { "" };
    page.prose(indent, Tone::Plain, &format!("trip {days}{planned}"));
    if no_return {
        page.prose(indent, Tone::Plain, &format!("note: {}", words::notice(&Notice::NoReturn)));
    }
}

/// The freeboard as the vessel states it, station by station.
pub(super) fn freeboard(vessel: &Vessel, locale: Locale) -> String {
    let stations: Vec<_> = vessel
        .freeboard
        .stations
        .iter()
        .map(|station| {
            let readings = words::sheet::listed_freeboard(station, locale);
            match &station.name {
                Some(name) => format!("{readings} at {name}"),
                None => readings,
            }
        })
        .collect();
    if stations.is_empty() {
        return "freeboard not measured".to_owned();
    }
    let from = words::taken_from(vessel.freeboard.from);
    if let [only] = stations.as_slice()
        && vessel.freeboard.stations.iter().all(|station| station.name.is_none())
    {
        return format!("freeboard {only} from {from}");
    }
    format!("freeboard from {from}: {}", stations.join("; "))
}

/// What bears on the meaning of the verdict stands above everything else. That
/// the day of return is wanting stands beside the trip.
pub(super) fn notices(page: &mut Page, notices: &[Notice]) {
    page.gap();
    for notice in notices.iter().filter(|notice| **notice != Notice::NoReturn) {
        page.hang(0, ("note:", Tone::Strong), (&words::notice(notice), Tone::Plain));
        if let Some(remedy) = words::notice_remedy(notice) {
            page.hang(6, ("do:", Tone::Strong), (&remedy, Tone::Strong));
        }
    }
}

/// One line for each profile, before the sections.
fn summary(page: &mut Page, check: &Check) {
    page.gap();
    let rows: Vec<_> = check
        .judgements
        .iter()
        .map(|judgement| {
            let cells = vec![
                words::verdict(judgement.verdict).to_owned(),
                format!("{} (`{}`)", judgement.profile.title, judgement.profile.id),
            ];
            (tone(judgement.verdict), cells)
        })
        .collect();
    page.columns(2, &[10, usize::MAX], &rows);
}

fn foot(page: &mut Page, check: &Check) {
    page.gap();
    for text in [memory(&check.judgements), practice(&check.judgements)].into_iter().flatten() {
        page.prose(0, Tone::Plain, &text);
    }
    page.prose(0, Tone::Plain, words::CAUTION);
    page.prose(0, Tone::Plain, words::FOOT);
}

/// What the findings rest on, so that memory is never taken for a text.
pub(super) fn memory(judgements: &[Judgement]) -> Option<String> {
    let how: Vec<Verified> = judgements
        .iter()
        .filter(|judgement| judgement.profile.standing == Standing::Rule)
        .flat_map(|judgement| {
            let requirements = &judgement.profile.requirements;
            judgement.findings.iter().filter_map(|f| requirements.get(f.requirement))
        })
        .map(|requirement| requirement.verified)
        .collect();
    let count = |wanted: Verified| how.iter().filter(|verified| **verified == wanted).count();
    let parts: Vec<_> = [
        ("clauses that were read", count(Verified::Read)),
        ("an excerpt", count(Verified::Excerpt)),
        ("a conclusion from what was read", count(Verified::Inferred)),
        ("memory", count(Verified::Memory)),
        ("common practice", count(Verified::CommonPractice)),
    ]
    .into_iter()
    .filter(|(_, number)| *number > 0)
    .map(|(what, number)| format!("{number} on {what}"))
    .collect();
    let noun = if how.len() == 1 { "finding" } else { "findings" };
    let told = format!("{} {noun}: {}.", how.len(), figures::all_of(&parts));
    (!parts.is_empty()).then_some(told)
}

pub(super) fn practice(judgements: &[Judgement]) -> Option<String> {
    let any = judgements.iter().any(|j| j.profile.standing == Standing::GoodPractice);
    any.then(|| {
        "What good practice asks is common practice in the trade, no published rule.".to_owned()
    })
}

/// The tone of a verdict.
fn tone(verdict: Verdict) -> Tone {
    match verdict {
        Verdict::Ready => Tone::Good,
        Verdict::CannotTell => Tone::Open,
        Verdict::NotReady => Tone::Bad,
    }
}

#[cfg(test)]
mod tests;

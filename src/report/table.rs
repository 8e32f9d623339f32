//! The page for a glance on a dark deck: the verdict first, then what is
//! wrong and what to do about it, then the rest.
//!
//! Imports `model` and the page and words beside it. Decides nothing and
//! leaves out nothing without saying so.

mod section;
mod shared;

use super::Subject;
use super::page::{Page, Tone};
use super::words::{self, Words, figures};
use crate::measure::{DaySpan, Figure, Rounding, Units};
use crate::model::check::{Check, Judgement, Notice};
use crate::model::finding::Verdict;
use crate::model::profile::{Standing, Verified};
use crate::model::vessel::{Trust, Vessel};
use section::Section;

/// The check as a page no wider than `width` columns, with colour codes.
pub fn table(subject: &Subject<'_>, width: usize) -> String {
    let check = subject.check;
    let mut page = Page::new(width);
    headline(&mut page, subject);
    let (leading, trailing): (Vec<_>, Vec<_>) =
        check.notices.iter().partition(|notice| decides(notice));
    notices(&mut page, &leading);
    let several = check.judgements.len() > 1;
    if several {
        summary(&mut page, check);
    }
    for judgement in &check.judgements {
        page.gap();
        let words = Words {
            vocabulary: subject.vocabulary,
            vessel: &check.vessel,
            profile: &judgement.profile,
            units: subject.units,
        };
        Section { words, judgement, asked: check.asked, several }.write(&mut page);
    }
    notices(&mut page, &trailing);
    foot(&mut page, check);
    page.finish()
}

/// Whether the notice bears on what the verdict means, so that it stands
/// above.
fn decides(notice: &Notice) -> bool {
    !matches!(notice, Notice::NoReturn)
}

fn headline(page: &mut Page, subject: &Subject<'_>) {
    let check = subject.check;
    let vessel = &check.vessel;
    let label = (words::verdict(check.verdict), tone(check.verdict));
    let mut name = vessel.name.clone();
    if let Some(register) = &vessel.register {
        name.push_str(&format!(" ({register})"));
    }
    if let Some(port) = &vessel.port {
        name.push_str(&format!(", {port}"));
    }
    let indent = label.0.len() + 2;
    page.hang(0, (&format!("{} ", label.0), label.1), (&name, Tone::Strong));
    let trip = span(DaySpan { from: Some(check.asked.departure), until: Some(check.asked.back) });
    page.prose(indent, Tone::Plain, &format!("trip {trip}"));
    page.prose(indent, Tone::Plain, &freeboard(vessel, subject.units));
    for record in subject.sources.iter().filter(|source| source.file != vessel.place.file) {
        let text = format!("laid over it: {}", record.file);
        page.prose(indent, Tone::Plain, &text);
    }
    if check.asked.trust == Trust::Measured {
        page.prose(indent, Tone::Plain, "only figures that were measured are believed");
    }
}

/// The days of a trip or of a part of it.
fn span(days: DaySpan) -> String {
    match (days.from, days.until) {
        (Some(from), Some(until)) if from == until => format!("of one day, {from}"),
        (Some(from), Some(until)) => format!("{from} to {until}"),
        (Some(from), None) => format!("from {from} on"),
        (None, Some(until)) => format!("until {until}"),
        (None, None) => "on any day".to_owned(),
    }
}

/// The freeboard as the vessel states it, station by station.
fn freeboard(vessel: &Vessel, units: Units) -> String {
    let stations: Vec<_> = vessel
        .freeboard
        .stations
        .iter()
        .map(|station| {
            let figure = |figure: &Figure| figure.show(units, Rounding::Down);
            let readings = station.readings.iter().map(|reading| {
                if reading.low == reading.high {
                    figure(&reading.high)
                } else {
                    format!("{} to {}", figure(&reading.low), figure(&reading.high))
                }
            });
            let readings = readings.collect::<Vec<_>>().join(" or ");
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

fn notices(page: &mut Page, notices: &[&Notice]) {
    if notices.is_empty() {
        return;
    }
    page.gap();
    for notice in notices {
        page.hang(0, ("note:", Tone::Strong), (&words::notice(notice), Tone::Plain));
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
fn memory(judgements: &[Judgement]) -> Option<String> {
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
    let kinds: Vec<_> = [
        ("the rule's text as read", count(Verified::Read)),
        ("memory", count(Verified::Memory)),
        ("an excerpt", count(Verified::Excerpt)),
        ("a conclusion", count(Verified::Inferred)),
        ("common practice", count(Verified::CommonPractice)),
    ]
    .into_iter()
    .filter(|(_, number)| *number > 0)
    .collect();
    let noun = if how.len() == 1 { "finding" } else { "findings" };
    match kinds.as_slice() {
        [] => None,
        [(what, number)] => Some(format!("{number} {noun}, all on {what}.")),
        several => {
            let parts: Vec<_> =
                several.iter().map(|(what, number)| format!("{number} on {what}")).collect();
            Some(format!("{} {noun}: {}.", how.len(), figures::all_of(&parts)))
        }
    }
}

fn practice(judgements: &[Judgement]) -> Option<String> {
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

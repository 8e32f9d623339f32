//! What is told of one vessel's check: the verdict first, then what is wrong
//! and what to do about it, then the rest.
//!
//! Decides nothing and leaves out nothing without saying so.

use super::profile::Told;
use super::{Block, Document, Fact, Headline, Inline, Item, Lead, Line, Role, Row, Section, Table};
use super::{Column, Tone, freeing};
use crate::load::Source;
use crate::measure::{Day, DaySpan, Figure};
use crate::model::check::{Check, Judgement, Notice};
use crate::model::finding::Asked;
use crate::model::profile::{FreeboardFrom, Standing, Verified};
use crate::model::vessel::{Freeboard, FreeboardReading, Station, Trust, Vessel};
use crate::report::Subject;
use crate::report::words::locale::Locale;
use crate::report::words::{self, Words, figures};
use std::fmt::Display;

/// Where the account of a vessel stands.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Setting<'a> {
    /// The day of the audit that it is part of.
    pub(crate) audit: Option<Day>,
    /// The id from which all others within it are made.
    pub(crate) id: &'a str,
}

/// The check as a page of its own.
pub(crate) fn document(subject: &Subject<'_>) -> Document {
    let body = account(subject, Setting { audit: None, id: "vessel" });
    let id = Some("vessel".to_owned());
    let account = Section { role: Role::Vessel, id, verdict: None, heading: None, body };
    Document { title: subject.check.vessel.name.clone(), blocks: vec![Block::Section(account)] }
}

/// All that is told of a vessel.
pub(crate) fn account(subject: &Subject<'_>, setting: Setting<'_>) -> Vec<Block> {
    let check = subject.check;
    let mut blocks = vec![headline(subject, setting)];
    blocks.extend(notices(&check.notices, subject.locale));
    let several = check.judgements.len() > 1;
    if several {
        blocks.push(summary(check, setting, subject.locale));
    }
    for (index, judgement) in check.judgements.iter().enumerate() {
        let id = format!("{}-p{index}", setting.id);
        let words = Words {
            vocabulary: subject.vocabulary,
            vessel: &check.vessel,
            profile: &judgement.profile,
            findings: &judgement.findings,
            locale: subject.locale,
        };
        blocks.push(Told { words, judgement, asked: check.asked, several, id }.section());
    }
    blocks.extend(subject.freeing.as_ref().map(freeing::summary));
    blocks.push(foot(check, subject.locale));
    blocks
}

fn headline(subject: &Subject<'_>, setting: Setting<'_>) -> Block {
    let check = subject.check;
    let vessel = &check.vessel;
    let by_practice = check.standing() == Standing::GoodPractice;
    let locale = subject.locale;
    let audit = setting.audit.into_iter().flat_map(|date| {
        let file = vessel.place.file.to_string();
        [Fact::new(locale.fact_audit_of(), date.to_string()), Fact::new(locale.fact_file(), file)]
    });
    let told = (subject.sources, check.notices.as_slice());
    let below = particulars(vessel, check.asked, told, audit.collect(), locale);
    Block::Headline(Headline {
        lead: Lead::Verdict(check.verdict),
        beside: by_practice.then(|| subject.locale.only_practice().into()),
        text: vessel.name.clone().into(),
        more: more_than_name(vessel),
        below,
    })
}

/// Where and when: the trip, what else frames it, the freeboard, the records
/// that were read, and which figures are believed.
pub(super) fn particulars(
    vessel: &Vessel,
    asked: Asked,
    (sources, notices): (&[Source], &[Notice]),
    more: Vec<Fact>,
    locale: Locale,
) -> Vec<Block> {
    let mut facts = trip(vessel, asked, notices, locale);
    facts.extend(more);
    facts.push(Fact::new(locale.fact_freeboard(), stated_freeboard(vessel, locale)));
    facts.extend(records(vessel, sources, notices, locale));
    let measured =
        (asked.trust == Trust::Measured).then(|| Block::Paragraph(locale.only_measured().into()));
    std::iter::once(Block::Facts(Role::Particulars, facts)).chain(measured).collect()
}

/// The vessel's name with its register number and its port.
pub(in crate::report) fn named(vessel: &Vessel) -> String {
    format!("{}{}", vessel.name, more_than_name(vessel).unwrap_or_default())
}

/// The register number and the port, to stand behind the name.
fn more_than_name(vessel: &Vessel) -> Option<String> {
    match (&vessel.register, &vessel.port) {
        (None, None) => None,
        (Some(register), None) => Some(format!(" ({register})")),
        (None, Some(port)) => Some(format!(", {port}")),
        (Some(register), Some(port)) => Some(format!(" ({register}), {port}")),
    }
}

/// The inspection records that were read, among the files.
fn records(vessel: &Vessel, sources: &[Source], notices: &[Notice], locale: Locale) -> Vec<Fact> {
    let left_out = |notice: &Notice| matches!(notice, Notice::RecordAfterDeparture { .. });
    // Which record was left out, its notice tells by its day.
    let label = match notices.iter().any(left_out) {
        true => locale.fact_inspection_record(),
        false => locale.fact_laid_over(),
    };
    let records = sources.iter().filter(|source| source.file != vessel.place.file);
    records.map(|record| Fact::new(label, record.file.to_string())).collect()
}

/// The days of the trip, whether the vessel's file plans them so, and whether
/// a day of return is wanting.
fn trip(vessel: &Vessel, asked: Asked, notices: &[Notice], locale: Locale) -> Vec<Fact> {
    let planned = &vessel.trip;
    let days =
        words::span(DaySpan { from: Some(asked.departure), until: Some(asked.back) }, locale);
    let no_return = notices.contains(&Notice::NoReturn);
    let as_planned = planned.departure == Some(asked.departure)
        && (no_return || planned.back == Some(asked.back));
    let days = if as_planned { locale.trip_as_planned(&days) } else { days };
    let mut facts = vec![Fact::new(locale.fact_trip(), days)];
    if no_return {
        facts.push(Fact::new(locale.fact_note(), words::notice(&Notice::NoReturn, locale)));
    }
    facts
}

/// The freeboard as the vessel states it, station by station, from the rail or
/// the deck, or from both.
pub(in crate::report) fn stated_freeboard(vessel: &Vessel, locale: Locale) -> String {
    let Freeboard { from, stations, other } = &vessel.freeboard;
    if stations.is_empty() {
        return locale.freeboard_not_measured().to_owned();
    }
    let own = stated_from(*from, stations, locale);
    match other.as_slice() {
        [] => own,
        other => format!("{own}; {}", stated_from(from.other(), other, locale)),
    }
}

fn stated_from(from: FreeboardFrom, stations: &[Station], locale: Locale) -> String {
    let figure = |figure: &Figure| figure.show_nearest(locale.units);
    let of_station = |station: &Station| {
        let told = |reading: &FreeboardReading| match reading.low == reading.high {
            true => figure(&reading.high),
            false => locale.freeboard_between(&figure(&reading.low), &figure(&reading.high)),
        };
        let readings = station.readings.iter().map(told);
        let readings = readings.reduce(|one, next| locale.freeboard_or(&one, &next));
        let readings = readings.unwrap_or_default();
        let stated: Vec<_> = otherwise(station).map(told).collect();
        let readings = match stated.as_slice() {
            [] => readings,
            all => locale.freeboard_overruled(&readings, &figures::any_of(all, locale)),
        };
        match &station.name {
            Some(name) => locale.freeboard_at_station(&readings, name),
            None => readings,
        }
    };
    let told: Vec<_> = stations.iter().map(of_station).collect();
    let from = words::taken_from(from, locale);
    let unnamed = stations.iter().all(|station| station.name.is_none());
    match told.as_slice() {
        [only] if unnamed => locale.freeboard_from(only, &from),
        all => locale.freeboard_from_stations(&from, &all.join("; ")),
    }
}

/// What was stated of a freeboard and says otherwise than what was measured.
fn otherwise(station: &Station) -> impl Iterator<Item = &FreeboardReading> {
    let span = |reading: &FreeboardReading| (reading.lowest(), reading.highest());
    let measured = move |one: &&FreeboardReading| {
        station.readings.iter().all(|reading| span(reading) != span(one))
    };
    station.overruled.iter().filter(measured)
}

/// What bears on the meaning of the verdict stands above everything else. That
/// the day of return is wanting stands beside the trip.
pub(in crate::report) fn notices(notices: &[Notice], locale: Locale) -> Vec<Block> {
    let told = notices.iter().filter(|notice| **notice != Notice::NoReturn);
    let items: Vec<Block> = told
        .map(|notice| {
            let remedy = words::notice_remedy(notice, locale);
            let remedy = remedy.map(|remedy| Item::new(Lead::Do, remedy).into());
            let item = Item::new(Lead::Note(Tone::Strong), words::notice(notice, locale));
            item.with(remedy.into_iter().collect()).into()
        })
        .collect();
    match items.is_empty() {
        true => items,
        false => vec![Block::Section(Section {
            role: Role::Part,
            id: None,
            verdict: None,
            heading: None,
            body: items,
        })],
    }
}

/// One line for each profile, before the sections.
fn summary(check: &Check, setting: Setting<'_>, locale: Locale) -> Block {
    let rows = check.judgements.iter().enumerate().map(|(index, judgement)| {
        let to = format!("{}-p{index}", setting.id);
        let title = Inline::Link { to, text: judgement.profile.title.to_string() };
        let title = Line::from(title).and(format!(" (`{}`)", judgement.profile.id));
        Row::new(Some(Lead::Verdict(judgement.verdict)), vec![title])
    });
    let (caption, columns) = (locale.check_rules().to_owned(), vec![Column::default()]);
    let rows = rows.collect();
    let table = Table { role: Role::List, caption, columns, rows, sums: Vec::new() };
    Block::Section(Section {
        role: Role::List,
        id: None,
        verdict: None,
        heading: None,
        body: vec![Block::Within(vec![Block::Table(table)])],
    })
}

fn foot(check: &Check, locale: Locale) -> Block {
    let rests = [memory(&check.judgements, locale), practice(&check.judgements, locale)];
    let texts = rests.into_iter().flatten().map(Line::from);
    let always = [locale.caution(), locale.foot()].map(Line::from);
    let body = texts.chain(always).map(Block::Paragraph).collect();
    Block::Section(Section { role: Role::Foot, id: None, verdict: None, heading: None, body })
}

/// What the findings rest on, so that memory is never taken for a text.
pub(in crate::report) fn memory(judgements: &[Judgement], locale: Locale) -> Option<String> {
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
        (count(Verified::Read), Locale::rests_on_read as fn(_, &dyn Display) -> _),
        (count(Verified::Excerpt), Locale::rests_on_excerpt),
        (count(Verified::Inferred), Locale::rests_on_inferred),
        (count(Verified::Memory), Locale::rests_on_memory),
        (count(Verified::CommonPractice), Locale::rests_on_common_practice),
    ]
    .into_iter()
    .filter(|(number, _)| *number > 0)
    .map(|(number, told)| told(locale, &number))
    .collect();
    let told = || locale.rests_on(how.len(), &figures::all_of(&parts, locale));
    (!parts.is_empty()).then(told)
}

fn practice(judgements: &[Judgement], locale: Locale) -> Option<String> {
    let any = judgements.iter().any(|j| j.profile.standing == Standing::GoodPractice);
    any.then(|| locale.rests_on_good_practice().to_owned())
}

#[cfg(test)]
mod tests;

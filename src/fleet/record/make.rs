//! From rows that were judged to a record.
//!
//! Imports `load`, `model` and `measure`. Works on one row at a time, so that
//! rows can be put on record where they were judged.

use super::{
    AskedOnRecord, AuditRecord, EditionOnRecord, FindingOnRecord, InputFile, Inputs,
    JudgementOnRecord, NoticeOnRecord, Program, ReasonOnRecord, RefusedOnRecord, SCHEMA,
    UntilOnRecord, VesselOnRecord,
};
use crate::fleet::{Judged, Orders, Selection};
use crate::load::{Library, Refusal, Source};
use crate::measure::{Day, Quantity};
use crate::model::check::{Check, Judgement, Notice};
use crate::model::finding::{Because, Finding, Outcome, ReadyUntil};
use crate::model::profile::Level;
use crate::model::reason::Reason;
use sha2::{Digest as _, Sha256};
use std::collections::{BTreeMap, BTreeSet};
use std::fmt::Write as _;

/// One vessel with what it was judged from.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Entry {
    /// What was found.
    pub vessel: VesselOnRecord,
    /// The vessel's file.
    pub input: InputFile,
    /// The inspection records laid over it.
    pub inspections: Vec<InputFile>,
    /// The editions that judged it.
    editions: Vec<EditionOnRecord>,
}

/// What a record says beside the vessels.
#[derive(Debug, Clone, Copy)]
pub struct Making<'a> {
    /// What the audit was asked.
    pub orders: &'a Orders<'a>,
    /// Which vessels it is about.
    pub selection: &'a Selection,
    /// Who audited, as given.
    pub auditor: Option<&'a str>,
}

impl InputFile {
    /// An input as it was read.
    pub fn new(source: &Source) -> Self {
        Self {
            file: source.file.to_string(),
            sha256: digest(&source.text),
            text: source.text.to_string(),
        }
    }
}

/// The SHA-256 digest of a text, in hexadecimal digits.
pub(super) fn digest(text: &str) -> String {
    let mut hex = String::with_capacity(64);
    for byte in Sha256::digest(text.as_bytes()) {
        let _ = write!(hex, "{byte:02x}");
    }
    hex
}

/// The digest of a record of which the place for it is empty.
pub(super) fn digest_of(mut record: serde_json::Value) -> String {
    record.sort_all_objects();
    digest(&record.to_string())
}

impl Entry {
    /// A vessel that was judged on this day.
    pub fn new(judged: &Judged, date: Day) -> Self {
        let inputs: Vec<_> = judged.sources.iter().map(InputFile::new).collect();
        let mut inputs = inputs.into_iter();
        let none =
            || InputFile { file: judged.file.to_string(), sha256: digest(""), text: String::new() };
        let input = inputs.next().unwrap_or_else(none);
        let inspections: Vec<_> = inputs.collect();
        let laid = inspections.iter().map(|input| input.file.clone()).collect();
        let check = &judged.check;
        Self {
            vessel: vessel(check, &judged.file, laid, date),
            input,
            inspections,
            editions: check.judgements.iter().map(edition).collect(),
        }
    }
}

impl Making<'_> {
    /// The record of these vessels and refusals.
    pub fn record(&self, entries: Vec<Entry>, refused: &[&Refusal]) -> AuditRecord {
        let library = self.orders.library;
        let (mut vessels, mut inputs) = (Vec::new(), inputs(library));
        let mut editions = BTreeSet::new();
        let mut inspections = BTreeMap::new();
        for entry in entries {
            vessels.push(entry.vessel);
            inputs.vessels.push(entry.input);
            editions.extend(entry.editions);
            inspections.extend(entry.inspections.into_iter().map(|i| (i.file.clone(), i)));
        }
        inputs.inspections = inspections.into_values().collect();
        let mut record = AuditRecord {
            schema: SCHEMA.to_owned(),
            program: Program::this(),
            date: self.orders.date,
            auditor: self.auditor.map(str::to_owned),
            asked: self.asked(),
            editions: editions.into_iter().collect(),
            vessels,
            refused: refused.iter().map(|refusal| refused_file(refusal)).collect(),
            inputs,
            sha256: None,
        };
        record.sha256 = serde_json::to_value(&record).ok().map(digest_of);
        record
    }

    fn asked(&self) -> AskedOnRecord {
        AskedOnRecord {
            on: self.orders.on,
            back: self.orders.back,
            trust: self.orders.trust,
            profiles: self.orders.asked.iter().map(|profile| profile.id.clone()).collect(),
            gear: self.selection.gears.clone(),
            port: self.selection.ports.clone(),
            bound_by: self.selection.bound_by.clone(),
        }
    }
}

impl Program {
    /// This program.
    pub fn this() -> Self {
        Self { name: env!("CARGO_PKG_NAME").into(), version: env!("CARGO_PKG_VERSION").into() }
    }
}

fn inputs(library: &Library) -> Inputs {
    Inputs {
        vocabulary: InputFile::new(library.words()),
        profiles: library.texts().map(InputFile::new).collect(),
        vessels: Vec::new(),
        inspections: Vec::new(),
    }
}

fn refused_file(refusal: &Refusal) -> RefusedOnRecord {
    let message = refusal.problems.first().map(ToString::to_string).unwrap_or_default();
    RefusedOnRecord { file: refusal.file.clone(), message }
}

fn edition(judgement: &Judgement) -> EditionOnRecord {
    let profile = &judgement.profile;
    EditionOnRecord {
        rule: profile.rule.clone(),
        id: profile.id.clone(),
        edition: profile.edition.clone(),
        encoding: profile.encoding,
        file: profile.place.file.to_string(),
    }
}

/// What was found on a vessel: the same whether it is put on record or
/// compared with one.
pub(super) fn vessel(
    check: &Check,
    file: &str,
    inspections: Vec<String>,
    date: Day,
) -> VesselOnRecord {
    VesselOnRecord {
        file: file.to_owned(),
        inspections,
        name: check.vessel.name.clone(),
        register: check.vessel.register.clone(),
        port: check.vessel.port.clone(),
        departure: check.asked.departure,
        back: check.asked.back,
        verdict: check.verdict,
        notices: check.notices.iter().map(notice).collect(),
        profiles: check.judgements.iter().map(|one| judgement(check, one, date)).collect(),
        since: Vec::new(),
    }
}

fn notice(notice: &Notice) -> NoticeOnRecord {
    let (mut rule, mut profile, mut day, mut words) = (None, None, None, Vec::new());
    match notice {
        Notice::NotInForce { profile: id } | Notice::DoesNotBind { profile: id } => {
            profile = Some(id.clone());
        }
        Notice::NoEdition { rule: id, day: first } => {
            (rule, day) = (Some(id.clone()), Some(*first));
        }
        Notice::MayBind { rule: id, .. } => rule = Some(id.clone()),
        Notice::UnknownWords { words: unknown, .. } => words.clone_from(unknown),
        Notice::RecordAfterDeparture { on }
        | Notice::SheetOutOfDate { on, .. }
        | Notice::TripOver { back: on }
        | Notice::ListOld { declared: on } => day = Some(*on),
        Notice::Remark { mark, on, .. }
        | Notice::MarkReadAs { mark, on, .. }
        | Notice::Unmarked { mark, on }
        | Notice::UnlistedMark { mark, on } => {
            day = Some(*on);
            words.push(mark.clone());
        }
        Notice::KindDisputed { mark, .. } | Notice::ReadingsDiffer { mark, .. } => {
            words.push(mark.clone());
        }
        Notice::NoRuleNamesVessel | Notice::TooManyFacts | Notice::NoReturn => {}
    }
    NoticeOnRecord { code: notice.code().to_owned(), rule, profile, day, words }
}

fn judgement(check: &Check, judgement: &Judgement, date: Day) -> JudgementOnRecord {
    let profile = &judgement.profile;
    let findings = judgement.findings.iter();
    JudgementOnRecord {
        rule: profile.rule.clone(),
        id: profile.id.clone(),
        edition: profile.edition.clone(),
        encoding: profile.encoding,
        encoded: profile.encoded,
        why: judgement.why.code().to_owned(),
        verdict: judgement.verdict,
        ready_until: match judgement.ready_until {
            ReadyUntil::None => UntilOnRecord::None,
            ReadyUntil::Day(day) => UntilOnRecord::Day { day },
            ReadyUntil::NoEnd => UntilOnRecord::NoEnd,
        },
        findings: findings.filter_map(|one| finding(check, judgement, one, date)).collect(),
    }
}

fn finding(
    check: &Check,
    judgement: &Judgement,
    finding: &Finding,
    date: Day,
) -> Option<FindingOnRecord> {
    let requirement = judgement.profile.requirements.get(finding.requirement)?;
    let open = requirement.level == Level::Required && finding.outcome != Outcome::Met;
    let mark = |tool: usize| check.vessel.kit.get(tool).map(|tool| tool.mark.clone());
    Some(FindingOnRecord {
        requirement: requirement.id.clone(),
        level: requirement.level,
        outcome: finding.outcome,
        open_since: open.then_some(date),
        tools: finding.serving.iter().filter_map(|serving| mark(serving.tool)).collect(),
        reasons: finding.reasons.iter().map(|because| reason(because, &mark)).collect(),
        freeboard_nanometres: finding.freeboard.map(|length| length.nanometres()),
        day: finding.day,
    })
}

fn reason(because: &Because, mark: &dyn Fn(usize) -> Option<String>) -> ReasonOnRecord {
    let (mut by_nanometres, mut have, mut need, mut day) = (None, None, None, None);
    match &because.reason {
        Reason::TooShortForRail { short, .. } => by_nanometres = Some(short.nanometres()),
        Reason::OutOfSpecification { by: Some(Quantity::Length(by)), .. } => {
            by_nanometres = Some(by.nanometres());
        }
        Reason::TooFew { have: has, need: asked, .. }
        | Reason::TooFewTypes { have: has, need: asked, .. } => {
            (have, need) = (Some(*has), Some(*asked));
        }
        Reason::NoCertificate { have: has, need: asked, lapsed, .. } => {
            (have, need, day) = (Some(*has), Some(*asked), *lapsed);
        }
        Reason::InspectionLapsed { since } | Reason::Expired { since } => day = Some(*since),
        Reason::LapsesDuringTrip { on, .. } => day = Some(*on),
        Reason::ExpiryDisputed { sure, .. } => day = Some(sure.next()),
        Reason::NoEdition { day: first } => day = Some(*first),
        _ => {}
    }
    let code = because.reason.code().to_owned();
    ReasonOnRecord { code, tool: because.tool.and_then(mark), by_nanometres, have, need, day }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::measure::Length;
    use crate::model::reason::{Demand, Has, VesselFact};
    use crate::model::vocabulary::{AttributeId, KindId};

    fn day(text: &str) -> Day {
        Day::parse(text).unwrap()
    }

    #[test]
    fn a_reason_goes_on_record_with_its_figures() {
        let (april, may) = (day("2026-04-30"), day("2026-05-01"));
        let none = (None, None, None, None);
        let outside = |by| Reason::OutOfSpecification {
            attribute: AttributeId(0),
            has: Has::Feature(false),
            demand: Demand::Is(true),
            by,
            overruled: Vec::new(),
        };
        let few = (None, Some(1), Some(2), None);
        let since = (None, None, None, Some(may));
        let certificate = |lapsed| Reason::NoCertificate { role: None, have: 1, need: 2, lapsed };
        let length = Quantity::Length(Length::from_millimetres(3));
        for (told, wanted) in [
            (outside(Some(length)), (Some(3_000_000), None, None, None)),
            (outside(Some(Quantity::Count(3))), none),
            (outside(None), none),
            (Reason::TooFew { kind: KindId(0), have: 1, need: 2 }, few),
            (Reason::TooFewTypes { have: 1, need: 2, complete: vec![], incomplete: vec![] }, few),
            (certificate(None), few),
            (certificate(Some(may)), (None, Some(1), Some(2), Some(may))),
            (Reason::InspectionLapsed { since: may }, since),
            (Reason::Expired { since: may }, since),
            (Reason::LapsesDuringTrip { on: may, inspection: true }, since),
            // The first day on which it is not sure to be good.
            (Reason::ExpiryDisputed { sure: april, last: day("2026-06-30") }, since),
            (Reason::NoEdition { day: may }, since),
            (Reason::Missing, none),
        ] {
            let kept = reason(&Because { tool: Some(7), reason: told.clone() }, &|tool| {
                Some(format!("T-{tool}"))
            });
            assert_eq!((&*kept.code, kept.tool.as_deref()), (told.code(), Some("T-7")));
            let figures = (kept.by_nanometres, kept.have, kept.need, kept.day);
            assert_eq!(figures, wanted, "{told:?}");
        }
    }

    #[test]
    fn a_notice_goes_on_record_with_what_it_speaks_of() {
        let (on, mark, id) = (day("2026-05-01"), "T-1".to_owned(), "x".to_owned());
        let words = || vec![mark.clone()];
        let none = || (None, None, None, Vec::new());
        let fact = VesselFact::Permits;
        for (told, wanted) in [
            (Notice::NotInForce { profile: id.clone() }, (None, Some("x"), None, vec![])),
            (Notice::DoesNotBind { profile: id.clone() }, (None, Some("x"), None, vec![])),
            (Notice::NoEdition { rule: id.clone(), day: on }, (Some("x"), None, Some(on), vec![])),
            (
                Notice::MayBind { rule: id.clone(), fact: fact.clone() },
                (Some("x"), None, None, vec![]),
            ),
            (Notice::UnknownWords { what: fact, words: words() }, (None, None, None, words())),
            (Notice::RecordAfterDeparture { on }, (None, None, Some(on), vec![])),
            (
                Notice::SheetOutOfDate { on, vessel: true, rules: false },
                (None, None, Some(on), vec![]),
            ),
            (Notice::Unmarked { mark: mark.clone(), on }, (None, None, Some(on), words())),
            (Notice::UnlistedMark { mark: mark.clone(), on }, (None, None, Some(on), words())),
            (
                Notice::KindDisputed { mark: mark.clone(), kinds: vec![], by_name: false },
                (None, None, None, words()),
            ),
            (Notice::NoReturn, none()),
        ] {
            let kept = notice(&told);
            assert_eq!(kept.code, told.code());
            let kept = (kept.rule.as_deref(), kept.profile.as_deref(), kept.day, kept.words);
            assert_eq!(kept, wanted, "{told:?}");
        }
    }
}

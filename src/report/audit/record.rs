//! An audit on record: the page that tells what came of judging it again.
//!
//! Imports `fleet` and below. Decides nothing: what differs was found there.

use crate::fleet::record::{
    Again, AuditRecord, Broken, Difference, Differs, Newer, Program, UntilOnRecord, Whole,
};
use crate::model::finding::Verdict;
use crate::report::Locale;
use crate::report::content::Tone;
use crate::report::render::lines::Page;
use crate::report::words::compare;
use crate::report::words::locale::desk;

/// A record that was judged again.
#[derive(Debug, Clone, Copy)]
pub struct Verified<'a> {
    /// The record.
    pub record: &'a AuditRecord,
    /// Whether it is as it was made.
    pub whole: &'a Whole,
    /// What came of it.
    pub again: &'a Again,
    /// What this program ships otherwise.
    pub newer: &'a [Newer],
    /// The language and the units of the page.
    pub locale: Locale,
}

impl Verified<'_> {
    /// Whether nothing differs, neither in the record nor in what it finds.
    pub fn is_the_same(&self) -> bool {
        self.again.differences.is_empty() && !matches!(self.whole, Whole::Changed { .. })
    }
}

/// The most differences and editions that are listed.
const MOST_LISTED: usize = 200;

/// Why a text is no record, in one line a reason.
pub fn broken(broken: &[Broken]) -> String {
    let told: Vec<_> = broken.iter().map(compare::broken).collect();
    told.join("; ")
}

/// What came of judging a record again, with colour codes.
pub fn verified(of: &Verified<'_>, width: usize) -> String {
    let mut page = Page::new(width);
    headline(&mut page, of);
    differences(&mut page, of);
    newer(&mut page, of);
    page.gap();
    page.prose(0, Tone::Plain, of.locale.caution());
    page.prose(0, Tone::Plain, of.locale.foot());
    page.finish()
}

fn headline(page: &mut Page, of: &Verified<'_>) {
    let record = of.record;
    let (vessels, differences) = (of.again.vessels, of.again.differences.len());
    let lead = match of.is_the_same() {
        true => (desk::record_the_same(), Tone::Good),
        false => (desk::record_different(), Tone::Bad),
    };
    let text = match differences {
        0 => desk::record_again(vessels),
        some => desk::record_differences(some, vessels),
    };
    page.hang(0, lead, (&text, Tone::Strong));
    match of.whole {
        Whole::Kept(digest) => page.prose(2, Tone::Plain, &desk::record_whole(digest)),
        Whole::Changed { said, found } => {
            page.prose(2, Tone::Bad, &desk::record_not_whole(found, said));
        }
        Whole::Unsaid => page.prose(2, Tone::Plain, desk::record_no_digest()),
    }
    let audit = match &record.auditor {
        Some(auditor) => desk::record_audit_of_by(&record.date, auditor),
        None => desk::record_audit_of(&record.date),
    };
    page.prose(2, Tone::Plain, &audit);
    let named = |program: &Program| format!("{} {}", program.name, program.version);
    let programs = desk::record_programs(&named(&record.program), &named(&Program::this()));
    page.prose(2, Tone::Plain, &programs);
    let files = 1 + record.inputs.profiles.len() + record.inputs.inspections.len();
    let files = files + record.inputs.vessels.len();
    page.prose(2, Tone::Plain, &desk::record_inputs(files));
    if !record.refused.is_empty() {
        page.prose(2, Tone::Plain, &desk::record_refused_then(record.refused.len()));
    }
    page.prose(2, Tone::Plain, desk::record_no_seal());
}

fn differences(page: &mut Page, of: &Verified<'_>) {
    let all = &of.again.differences;
    if all.is_empty() {
        return;
    }
    page.gap();
    page.prose(0, Tone::Strong, desk::record_what_differs());
    let mut last = None;
    for difference in all.iter().take(MOST_LISTED) {
        if last != Some(&difference.file) {
            let text = format!("{} ({})", difference.vessel, difference.file);
            page.prose(2, Tone::Strong, &text);
            last = Some(&difference.file);
        }
        page.hang(4, ("-", Tone::Bad), (&differs(difference, of.locale), Tone::Plain));
    }
    if all.len() > MOST_LISTED {
        page.prose(2, Tone::Plain, &desk::record_more(&(all.len() - MOST_LISTED)));
    }
}

fn differs(difference: &Difference, locale: Locale) -> String {
    let verdict = |verdict: &Verdict| locale.verdict(*verdict);
    match &difference.what {
        Differs::Refused(refusal) => {
            let first = refusal.problems.first().map(ToString::to_string).unwrap_or_default();
            desk::record_refused_now(&first)
        }
        Differs::Vessel => desk::record_other_vessel().to_owned(),
        Differs::Notices(then, now) => {
            desk::record_notes(&compare::codes(then), &compare::codes(now))
        }
        Differs::Verdict(then, now) => desk::record_verdict(&verdict(then), &verdict(now)),
        Differs::Profile(id, true) => desk::record_judged_then(id),
        Differs::Profile(id, false) => desk::record_judges_now(id),
        Differs::Edition(id) => desk::record_other_edition(id),
        Differs::VerdictUnder(id, then, now) => {
            desk::record_verdict_under(id, &verdict(then), &verdict(now))
        }
        Differs::Until(id, then, now) => desk::record_until(id, &until(*then), &until(*now)),
        Differs::Finding(id, then, now) => {
            let either = then.as_ref().or(now.as_ref());
            let requirement = either.map(|f| f.requirement.clone()).unwrap_or_default();
            let (then, now) = compare::findings(then.as_ref(), now.as_ref());
            desk::record_finding(id, &requirement, &then, &now)
        }
    }
}

fn until(until: UntilOnRecord) -> String {
    match until {
        UntilOnRecord::None => desk::record_never().to_owned(),
        UntilOnRecord::Day { day } => day.to_string(),
        UntilOnRecord::NoEnd => desk::record_no_end().to_owned(),
    }
}

fn newer(page: &mut Page, of: &Verified<'_>) {
    if of.newer.is_empty() {
        return;
    }
    page.gap();
    page.prose(0, Tone::Strong, desk::record_newer());
    page.prose(2, Tone::Plain, desk::record_newer_no_fault());
    for newer in of.newer.iter().take(MOST_LISTED) {
        let (edition, encoding) = &newer.then;
        let now = match &newer.now {
            None => desk::record_newer_not_shipped().to_owned(),
            Some(now) if *now == newer.then => desk::record_newer_same_name().to_owned(),
            Some((edition, encoding)) => desk::record_newer_now(edition, encoding),
        };
        let text = desk::record_newer_rule(&newer.id, edition, encoding, &now);
        page.hang(2, ("-", Tone::Open), (&text, Tone::Plain));
    }
}

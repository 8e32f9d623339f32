//! An audit on record: the page that tells what came of judging it again.
//!
//! Imports `fleet` and below. Decides nothing: what differs was found there.

use crate::fleet::record::{
    Again, AuditRecord, Broken, Difference, Differs, Newer, Program, UntilOnRecord,
};
use crate::model::finding::Verdict;
use crate::report::Locale;
use crate::report::content::Tone;
use crate::report::render::lines::Page;
use crate::report::words::locale::desk;
use crate::report::words::{compare, fleet};

/// A record that was judged again.
#[derive(Debug, Clone, Copy)]
pub struct Verified<'a> {
    /// The record.
    pub record: &'a AuditRecord,
    /// What came of it.
    pub again: &'a Again,
    /// What this program ships otherwise.
    pub newer: &'a [Newer],
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
    page.prose(0, Tone::Plain, Locale::default().caution());
    page.prose(0, Tone::Plain, Locale::default().foot());
    page.finish()
}

fn headline(page: &mut Page, of: &Verified<'_>) {
    let record = of.record;
    let vessels = fleet::count(of.again.vessels, "vessel");
    if of.again.differences.is_empty() {
        let text = format!("{vessels} judged again from the record's own inputs");
        page.hang(0, ("THE SAME", Tone::Good), (&text, Tone::Strong));
    } else {
        let what = fleet::count(of.again.differences.len(), "difference");
        let text = format!("{what} on {vessels} judged again from the record's own inputs");
        page.hang(0, ("DIFFERENT", Tone::Bad), (&text, Tone::Strong));
    }
    let by = record.auditor.as_ref().map(|name| format!(" by {name}")).unwrap_or_default();
    page.prose(2, Tone::Plain, &format!("audit of {}{by}", record.date));
    let then = &record.program;
    let now = Program::this();
    let told =
        format!("made by {} {}, verified by {} {}", then.name, then.version, now.name, now.version);
    page.prose(2, Tone::Plain, &told);
    let files = 1 + record.inputs.profiles.len() + record.inputs.inspections.len();
    let files = files + record.inputs.vessels.len();
    page.prose(2, Tone::Plain, &format!("{} as they were: every digest agrees", inputs(files)));
    if !record.refused.is_empty() {
        let refused = fleet::count(record.refused.len(), "file");
        let text =
            format!("{refused} refused then; their text is not on record, only what was said");
        page.prose(2, Tone::Plain, &text);
    }
    page.prose(2, Tone::Plain, desk::record_no_seal());
}

fn inputs(files: usize) -> String {
    fleet::count(files, "input")
}

fn differences(page: &mut Page, of: &Verified<'_>) {
    let all = &of.again.differences;
    if all.is_empty() {
        return;
    }
    page.gap();
    page.prose(0, Tone::Strong, "What differs: on record, then now");
    let mut last = None;
    for difference in all.iter().take(MOST_LISTED) {
        if last != Some(&difference.file) {
            let text = format!("{} ({})", difference.vessel, difference.file);
            page.prose(2, Tone::Strong, &text);
            last = Some(&difference.file);
        }
        page.hang(4, ("-", Tone::Bad), (&differs(difference), Tone::Plain));
    }
    if all.len() > MOST_LISTED {
        page.prose(2, Tone::Plain, &format!("and {} more", all.len() - MOST_LISTED));
    }
}

fn differs(difference: &Difference) -> String {
    let verdict = |verdict: Verdict| Locale::default().verdict(verdict);
    match &difference.what {
        Differs::Refused(refusal) => {
            let first = refusal.problems.first().map(ToString::to_string).unwrap_or_default();
            format!("its text is refused now: {first}")
        }
        Differs::Vessel => "its name, register, port or trip is another".to_owned(),
        Differs::Notices(then, now) => {
            format!("notes: {} → {}", compare::codes(then), compare::codes(now))
        }
        Differs::Verdict(then, now) => format!("verdict: {} → {}", verdict(*then), verdict(*now)),
        Differs::Profile(id, true) => format!("`{id}` judged it then, not now"),
        Differs::Profile(id, false) => format!("`{id}` judges it now, not then"),
        Differs::Edition(id) => format!("`{id}`: its edition, encoding or standing is another"),
        Differs::VerdictUnder(id, then, now) => {
            format!("`{id}`: {} → {}", verdict(*then), verdict(*now))
        }
        Differs::Until(id, then, now) => {
            format!("`{id}`: ready until {} → {}", until(*then), until(*now))
        }
        Differs::Finding(id, then, now) => {
            let either = then.as_ref().or(now.as_ref());
            let requirement = either.map(|f| f.requirement.clone()).unwrap_or_default();
            let (then, now) = compare::findings(then.as_ref(), now.as_ref());
            format!("`{id}` {requirement}: {then} → {now}")
        }
    }
}

fn until(until: UntilOnRecord) -> String {
    match until {
        UntilOnRecord::None => "never".to_owned(),
        UntilOnRecord::Day { day } => day.to_string(),
        UntilOnRecord::NoEnd => "no end".to_owned(),
    }
}

fn newer(page: &mut Page, of: &Verified<'_>) {
    if of.newer.is_empty() {
        return;
    }
    page.gap();
    page.prose(0, Tone::Strong, "Rules on record that this program holds otherwise now");
    page.prose(2, Tone::Plain, "This is no fault of the record; it was judged by its own rules.");
    for newer in of.newer.iter().take(MOST_LISTED) {
        let (edition, encoding) = &newer.then;
        let then = format!("edition {edition}, encoding {encoding}");
        let now = match &newer.now {
            None => "not shipped with this program".to_owned(),
            Some(now) if *now == newer.then => "the same by name, another text".to_owned(),
            Some((edition, encoding)) => format!("now edition {edition}, encoding {encoding}"),
        };
        let text = format!("`{}`: {then}; {now}", newer.id);
        page.hang(2, ("-", Tone::Open), (&text, Tone::Plain));
    }
}

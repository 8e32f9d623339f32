//! A fleet's audit as a page for the terminal: what it adds up to, then the
//! vessels, the worst of each told in one line a finding.

use super::{Fleet, compare, draft, freeing};
use crate::fleet::{After, HORIZONS, Judged, Row};
use crate::measure::DaySpan;
use crate::model::check::Judgement;
use crate::model::finding::{Finding, Outcome, ReadyUntil, Verdict};
use crate::model::profile::{Level, Standing};
use crate::report::page::{Page, Tone};
use crate::report::problems;
use crate::report::words::{self, Words, fleet};

/// Where a vessel's name begins, behind its verdict.
const NAME: usize = 2;
/// Where the findings of a vessel begin.
const BODY: usize = 13;
/// The most rows of a list that is also found in the JSON, whole.
const MOST_LISTED: usize = 12;

/// The audit as a page no wider than `width` columns, with colour codes.
pub fn table(of: &Fleet<'_>, width: usize) -> String {
    let mut page = Page::new(width);
    headline(&mut page, of);
    if let Some(comparison) = of.against {
        compare::write(&mut page, of, comparison);
    }
    if let Some(drafted) = of.draft {
        draft::write(&mut page, of, drafted);
    }
    not_read(&mut page, of);
    vessels(&mut page, of);
    missed(&mut page, of);
    lapses(&mut page, of);
    marks(&mut page, of);
    freeing::write(&mut page, of);
    page.gap();
    page.prose(0, Tone::Plain, of.locale.caution());
    page.prose(0, Tone::Plain, of.locale.foot());
    page.finish()
}

fn headline(page: &mut Page, of: &Fleet<'_>) {
    let audit = of.audit;
    let counts = &audit.counts;
    let read = fleet::count(counts.vessels(), "vessel");
    let text = format!("{read}: {}", fleet::counts(counts, of.locale));
    page.hang(0, ("AUDIT ", tone(audit.verdict())), (&text, Tone::Strong));
    page.prose(7, Tone::Plain, &format!("on {}", audit.date));
    if counts.refused > 0 {
        let files = fleet::count(counts.refused, "file");
        page.prose(7, Tone::Bad, &format!("{files} could not be read; the rest is complete"));
    }
    if audit.outside > 0 {
        let vessels = fleet::count(audit.outside, "vessel");
        page.prose(7, Tone::Plain, &format!("{vessels} outside the selection, not counted"));
    }
    let shown = audit.rows.iter().filter(|row| matches!(row, Row::Vessel(_))).count();
    if shown < counts.vessels() {
        let text = format!("{shown} of {} shown", fleet::count(counts.vessels(), "vessel"));
        page.prose(7, Tone::Plain, &text);
    }
    for doubt in &audit.doubts {
        page.hang(7, ("note:", Tone::Open), (&fleet::doubt(doubt, of.locale), Tone::Plain));
    }
    for left_out in &audit.left_out {
        let text = format!("{}: {}", left_out.file, fleet::left_out(left_out, of.locale));
        page.hang(7, ("record not laid over:", Tone::Open), (&text, Tone::Plain));
    }
}

fn not_read(page: &mut Page, of: &Fleet<'_>) {
    let refused = of.audit.rows.iter().filter_map(|row| match row {
        Row::Refused(refusal) => Some(refusal),
        Row::Vessel(_) => None,
    });
    let refused: Vec<_> = refused.collect();
    if refused.is_empty() {
        return;
    }
    page.gap();
    page.prose(0, Tone::Strong, &format!("Not read ({})", refused.len()));
    for refusal in refused {
        problems::write_first(page, NAME, refusal);
    }
}

fn vessels(page: &mut Page, of: &Fleet<'_>) {
    page.gap();
    page.prose(0, Tone::Strong, "Vessels");
    let mut none = true;
    for row in &of.audit.rows {
        if let Row::Vessel(judged) = row {
            vessel(page, of, judged);
            none = false;
        }
    }
    if none {
        page.prose(NAME, Tone::Plain, "none");
    }
}

fn vessel(page: &mut Page, of: &Fleet<'_>, judged: &Judged) {
    let check = &judged.check;
    let word = format!("{:<10}", words::verdict(check.verdict, of.locale));
    let mut name = check.vessel.name.clone();
    if let Some(register) = &check.vessel.register {
        name.push_str(&format!(" ({register})"));
    }
    if let Some(port) = &check.vessel.port {
        name.push_str(&format!(", {port}"));
    }
    page.hang(NAME, (&word, tone(check.verdict)), (&name, Tone::Strong));
    let days = DaySpan { from: Some(check.asked.departure), until: Some(check.asked.back) };
    let trip = format!("trip {}; {}", words::span(days, of.locale), judged.file);
    page.prose(BODY, Tone::Plain, &trip);
    if check.standing() == Standing::GoodPractice {
        page.prose(BODY, Tone::Open, of.locale.only_practice());
    }
    for record in judged.sources.iter().skip(1) {
        page.prose(BODY, Tone::Plain, &format!("laid over it: {}", record.file));
    }
    for notice in &check.notices {
        page.hang(BODY, ("note:", Tone::Open), (&words::notice(notice, of.locale), Tone::Plain));
    }
    for judgement in &check.judgements {
        let words = Words {
            vocabulary: of.vocabulary,
            vessel: &check.vessel,
            profile: &judgement.profile,
            locale: of.locale,
        };
        profile(page, &words, judgement, check.judgements.len() > 1);
    }
}

fn profile(page: &mut Page, words: &Words<'_>, judgement: &Judgement, several: bool) {
    let profile = &judgement.profile;
    let verdict = words::verdict(judgement.verdict, words.locale).to_lowercase();
    let mut text = format!("`{}`: {}", profile.id, met_of(judgement));
    if several {
        text.push_str(&format!(", {verdict}"));
    }
    if !profile.encoded {
        text = format!("`{}`: known, not encoded; can't tell", profile.id);
    }
    page.prose(BODY, Tone::Plain, &text);
    for finding in &judgement.findings {
        let required = words.profile.requirements.get(finding.requirement);
        let required = required.is_some_and(|r| r.level == Level::Required);
        if required && finding.outcome != Outcome::Met {
            open_finding(page, words, finding);
        }
    }
    if judgement.verdict == Verdict::Ready {
        page.prose(BODY, Tone::Plain, &format!("ready until {}", until(judgement)));
    }
}

/// `5 of 6 met`, what is recommended counted apart.
fn met_of(judgement: &Judgement) -> String {
    let count = |level: Level| {
        let own = judgement.findings.iter().filter(|finding| {
            let requirement = judgement.profile.requirements.get(finding.requirement);
            requirement.is_some_and(|requirement| requirement.level == level)
        });
        let own: Vec<_> = own.map(|finding| finding.outcome == Outcome::Met).collect();
        (own.iter().filter(|met| **met).count(), own.len())
    };
    let (met, all) = count(Level::Required);
    match count(Level::Recommended) {
        (_, 0) => format!("{met} of {all} met"),
        (advised, of) => format!("{met} of {all} met, of what is recommended {advised} of {of}"),
    }
}

/// The last day, without what ends on it: the check of the vessel tells that.
fn until(judgement: &Judgement) -> String {
    match judgement.ready_until {
        ReadyUntil::None => "never".to_owned(),
        ReadyUntil::Day(day) => day.to_string(),
        ReadyUntil::NoEnd => "no end".to_owned(),
    }
}

/// A finding that is not met or cannot be told: what, by which clause, and
/// why in one sentence.
fn open_finding(page: &mut Page, words: &Words<'_>, finding: &Finding) {
    let clause = words.profile.requirements.get(finding.requirement).map(|r| r.clause.as_str());
    let why = words.first_reason(finding);
    let title = words.title(finding.requirement);
    let text = format!("{title} ({}): {why}", clause.unwrap_or_default());
    let tone = if finding.outcome == Outcome::NotMet { Tone::Bad } else { Tone::Open };
    page.hang(BODY, (words::sign(finding.outcome), tone), (&text, Tone::Plain));
}

fn missed(page: &mut Page, of: &Fleet<'_>) {
    if of.audit.missed.is_empty() {
        return;
    }
    page.gap();
    page.prose(0, Tone::Strong, "Most often missed");
    for missed in of.audit.missed.iter().take(MOST_LISTED) {
        let Some(requirement) = missed.requirement() else { continue };
        let title = format!("{} ({})", requirement.title, requirement.clause);
        page.hang(NAME, ("-", Tone::Bad), (&title, Tone::Strong));
        let mut text = fleet::missed_on(missed, of.locale);
        if let Some(shortfalls) = fleet::shortfalls(missed, of.locale) {
            text.push_str(&format!("; {shortfalls}"));
        }
        text.push_str(&format!(" [{}]", missed.profile.id));
        page.prose(NAME + 2, Tone::Plain, &text);
    }
    more(page, of.audit.missed.len());
}

fn lapses(page: &mut Page, of: &Fleet<'_>) {
    for (index, days) in HORIZONS.into_iter().enumerate() {
        let within: Vec<_> = of.audit.lapses.iter().filter(|l| l.within == days).collect();
        let after = if index == 0 { 0 } else { HORIZONS[index - 1] };
        if within.is_empty() {
            continue;
        }
        page.gap();
        let heading = if after == 0 {
            format!("Lapses within {days} days ({})", within.len())
        } else {
            format!("Lapses after {after} and within {days} days ({})", within.len())
        };
        page.prose(0, Tone::Strong, &heading);
        for lapse in within.iter().take(MOST_LISTED) {
            let tone = if lapse.after == After::Decides { Tone::Bad } else { Tone::Plain };
            let text = format!(
                "{}: {}; {}",
                lapse.vessel,
                fleet::lapse(lapse, of.locale),
                fleet::after_lapse(lapse, of.locale)
            );
            page.hang(NAME, ("-", tone), (&text, Tone::Plain));
        }
        more(page, within.len());
    }
}

fn marks(page: &mut Page, of: &Fleet<'_>) {
    if of.audit.marks.is_empty() {
        return;
    }
    page.gap();
    let heading = format!("Marks on several vessels at sea together ({})", of.audit.marks.len());
    page.prose(0, Tone::Strong, &heading);
    page.prose(NAME, Tone::Plain, of.locale.same_mark());
    for mark in of.audit.marks.iter().take(MOST_LISTED) {
        let kind = &of.vocabulary.kind(mark.kind).name;
        let text = format!("{} ({kind}): {}", mark.mark, fleet::names(&mark.vessels, of.locale));
        page.hang(NAME, ("-", Tone::Open), (&text, Tone::Plain));
    }
    more(page, of.audit.marks.len());
}

/// That a list goes on, and where it is whole.
fn more(page: &mut Page, all: usize) {
    if all > MOST_LISTED {
        let text = format!("and {} more; `--format json` has them all", all - MOST_LISTED);
        page.prose(NAME, Tone::Plain, &text);
    }
}

fn tone(verdict: Verdict) -> Tone {
    match verdict {
        Verdict::Ready => Tone::Good,
        Verdict::CannotTell => Tone::Open,
        Verdict::NotReady => Tone::Bad,
    }
}

//! A fleet's audit as CSV (RFC 4180): one row a finding, one for each file
//! that was refused. No cell can be taken for a formula by a spreadsheet.

use super::Fleet;
use crate::fleet::{Judged, LeftOut, Row};
use crate::load::Refusal;
use crate::model::check::Judgement;
use crate::model::finding::{Finding, Outcome, ReadyUntil, Verdict};
use crate::model::profile::Level;
use crate::model::stable::stable_words;
use crate::model::text::visible;
use crate::report::Locale;
use crate::report::json::{outcome, standing, verdict};
use crate::report::words::{Words, fleet};

const HEAD: [&str; 25] = [
    "file",
    "vessel",
    "register",
    "port",
    "departure",
    "return",
    "vessel verdict",
    "profile",
    "edition",
    "encoding",
    "profile verdict",
    "ready until",
    "requirement",
    "title",
    "level",
    "source",
    "clause",
    "outcome",
    "tools",
    "reasons",
    "remedy",
    "freeboard",
    "day",
    "records laid over",
    "standing",
];

/// The cells of a vessel at the end of each of its rows.
const LAST: usize = 2;

/// The audit as CSV, lines ending as the standard says.
///
/// # Errors
/// None in practice: it is written to memory.
pub fn csv(of: &Fleet<'_>) -> Result<String, csv::Error> {
    let mut writer =
        csv::WriterBuilder::new().terminator(csv::Terminator::CRLF).from_writer(Vec::new());
    writer.write_record(HEAD)?;
    for row in &of.audit.rows {
        match row {
            Row::Refused(refusal) => writer.write_record(refused(refusal))?,
            Row::Vessel(judged) => {
                for cells in of_vessel(of, judged) {
                    writer.write_record(cells)?;
                }
            }
        }
    }
    for left_out in &of.audit.left_out {
        writer.write_record(record_left_out(left_out, of.locale))?;
    }
    written(writer)
}

/// The text that was written.
pub(in crate::report) fn written(writer: csv::Writer<Vec<u8>>) -> Result<String, csv::Error> {
    let bytes = writer.into_inner().map_err(|error| csv::Error::from(error.into_error()))?;
    Ok(String::from_utf8_lossy(&bytes).into_owned())
}

/// A cell that shows what it says and computes nothing: what a spreadsheet
/// would take for a formula begins with an apostrophe.
pub(in crate::report) fn cell(text: &str) -> String {
    let shown = visible(text);
    let live = |c: char| matches!(c, '=' | '+' | '-' | '@' | '＝' | '＋' | '－' | '＠' | '|' | '%');
    if shown.trim_start().starts_with(live) { format!("'{shown}") } else { shown }
}

fn refused(refusal: &Refusal) -> Vec<String> {
    let mut cells = vec![String::new(); HEAD.len()];
    cells[0] = cell(&refusal.file);
    cells[6] = "not read".to_owned();
    cells[19] = cell(&problems(refusal));
    cells
}

/// Everything that is wrong in a file, in one cell.
pub(in crate::report) fn problems(refusal: &Refusal) -> String {
    let problems: Vec<_> = refusal.problems.iter().map(ToString::to_string).collect();
    problems.join("; ")
}

/// A record that was laid over no vessel has a row of its own too.
fn record_left_out(left_out: &LeftOut, locale: Locale) -> Vec<String> {
    let mut cells = vec![String::new(); HEAD.len()];
    cells[0] = cell(&left_out.file);
    cells[1] = cell(&left_out.vessel);
    cells[6] = "record not laid over".to_owned();
    cells[19] = cell(&fleet::left_out(left_out, locale));
    cells
}

fn of_vessel(of: &Fleet<'_>, judged: &Judged) -> Vec<Vec<String>> {
    let check = &judged.check;
    let vessel = &check.vessel;
    let head = [
        cell(&judged.file),
        cell(&vessel.name),
        cell(vessel.register.as_deref().unwrap_or_default()),
        cell(vessel.port.as_deref().unwrap_or_default()),
        check.asked.departure.to_string(),
        check.asked.back.to_string(),
        verdict(check.verdict).to_owned(),
    ];
    let mut rows = Vec::new();
    for judgement in &check.judgements {
        let words = Words {
            vocabulary: of.vocabulary,
            vessel,
            profile: &judgement.profile,
            locale: of.locale,
        };
        let profile = profile_cells(judgement);
        let whole = |finding: Option<&Finding>| {
            let own = finding.map_or_else(
                || vec![String::new(); HEAD.len() - head.len() - profile.len() - LAST],
                |finding| finding_cells(finding, &words),
            );
            head.iter().chain(&profile).cloned().chain(own).collect::<Vec<_>>()
        };
        if judgement.findings.is_empty() {
            rows.push(whole(None));
        }
        rows.extend(judgement.findings.iter().map(|finding| whole(Some(finding))));
    }
    if rows.is_empty() {
        let empty = vec![String::new(); HEAD.len() - head.len() - LAST];
        rows.push(head.iter().cloned().chain(empty).collect());
    }
    let records: Vec<_> = judged.sources.iter().skip(1).map(|source| &*source.file).collect();
    let last: [String; LAST] = [cell(&records.join(", ")), standing(check.standing()).to_owned()];
    rows.iter_mut().for_each(|row| row.extend(last.iter().cloned()));
    rows
}

fn profile_cells(judgement: &Judgement) -> [String; 5] {
    let profile = &judgement.profile;
    [
        cell(&profile.id),
        cell(&profile.edition),
        profile.encoding.to_string(),
        verdict(judgement.verdict).to_owned(),
        match judgement.ready_until {
            ReadyUntil::None if judgement.verdict == Verdict::CannotTell => "can't tell".to_owned(),
            ReadyUntil::None => "not ready".to_owned(),
            ReadyUntil::Day(day) => day.to_string(),
            ReadyUntil::NoEnd => "no end".to_owned(),
        },
    ]
}

fn finding_cells(finding: &Finding, words: &Words<'_>) -> Vec<String> {
    let requirement = words.profile.requirements.get(finding.requirement);
    let tools: Vec<_> =
        finding.serving.iter().map(|serving| words.mark(serving.tool).to_owned()).collect();
    let reasons: Vec<_> = match finding.outcome {
        Outcome::Met => Vec::new(),
        Outcome::CannotTell | Outcome::NotMet => {
            finding.reasons.iter().map(|because| words.told(because)).collect()
        }
    };
    vec![
        cell(&words.id(finding.requirement)),
        cell(&words.title(finding.requirement)),
        requirement.map_or("", |r| level(r.level)).to_owned(),
        cell(&words.profile.source),
        cell(requirement.map_or("", |r| &r.clause)),
        outcome(finding.outcome).to_owned(),
        cell(&tools.join(", ")),
        cell(&reasons.join("; ")),
        cell(&words.remedy(finding, &[]).unwrap_or_default()),
        finding.freeboard.map(|at| cell(&words.freeboard(at))).unwrap_or_default(),
        finding.day.to_string(),
    ]
}

stable_words! {
    pub(in crate::report) fn level(Level) in LEVELS {
            Level::Required => "required",
            Level::Recommended => "recommended",
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn no_cell_is_a_live_formula() {
        for text in ["=cmd()", "+1", "-1", "@x", " =1", "\u{ff1d}1"] {
            assert!(cell(text).starts_with('\''), "{text}");
        }
        assert_eq!(cell("\t=1"), "\\u{9}=1");
        assert_eq!(cell("LC-1"), "LC-1");
    }
}

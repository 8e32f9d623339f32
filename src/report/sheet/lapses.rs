//! What of the kit and of the people's papers ends before the return,
//! whatever it serves and whichever edition judges it.
//!
//! Imports `model`, the engine's days and the words beside it. The days were
//! found by the engine.

use super::skipper::List;
use crate::engine::validity::{End, Holding, Validity, of_tool, validities};
use crate::measure::Day;
use crate::model::finding::Finding;
use crate::model::profile::Requirement;
use crate::model::reason::Reason;
use crate::model::vessel::{Tool, Whereabouts};
use crate::report::Locale;
use crate::report::words::{Words, sheet as said};

/// One thing that ends.
struct Ending {
    last: Day,
    end: End,
    /// What it serves.
    titles: Vec<String>,
}

impl Ending {
    /// An earlier day takes the place of a later one; on the same day both
    /// are told.
    fn take(all: &mut Option<Self>, last: Day, end: End, title: Option<String>) {
        match all {
            Some(known) if known.last < last => {}
            Some(known) if known.last == last => {
                known.titles.extend(title.filter(|title| !known.titles.contains(title)));
            }
            other => *other = Some(Self { last, end, titles: title.into_iter().collect() }),
        }
    }

    fn why(&self, locale: Locale) -> String {
        match self.titles.as_slice() {
            [] => String::new(),
            titles => locale.sheet_for_titles(&titles.join("; ")),
        }
    }
}

impl List<'_> {
    /// Every tool, document and certificate whose last day lies before the
    /// return, and until when the whole was met.
    pub(super) fn lapses(&self) -> Vec<(String, String)> {
        let mut jobs: Vec<(String, String)> = Vec::new();
        let check = self.subject.check;
        for (index, tool) in check.vessel.kit.iter().enumerate() {
            jobs.extend(self.tool_ends(index, tool));
        }
        for (p, person) in check.vessel.people.iter().flatten().enumerate() {
            for c in 0..person.certificates.len() {
                jobs.extend(self.certificate_ends(p, c));
            }
        }
        let back = check.asked.back;
        for (judgement, _) in self.encoded() {
            if let Some(day) = judgement.ready_until.day().filter(|day| *day < back) {
                let why = judgement.profile.title.to_string();
                jobs.push((self.subject.locale.sheet_met_until(&day, &back), why));
            }
        }
        jobs
    }

    /// What ends before the return, on its own day or on the last that a
    /// requirement takes it for good; the earlier of them.
    fn ending(
        &self,
        expires: Option<Day>,
        found: impl Fn(&Requirement, &Finding) -> Option<(Day, End)>,
    ) -> Option<Ending> {
        let mut ending = None;
        if let Some(day) = expires {
            Ending::take(&mut ending, day, End::Expiry, None);
        }
        for (judgement, words) in self.encoded() {
            for finding in &judgement.findings {
                let Some(requirement) = words.requirement(finding.requirement) else { continue };
                if let Some((last, end)) = found(requirement, finding) {
                    let title = words.title(finding.requirement);
                    Ending::take(&mut ending, last, end, Some(title));
                }
            }
        }
        ending.filter(|ending| ending.last < self.subject.check.asked.back)
    }

    fn tool_ends(&self, index: usize, tool: &Tool) -> Option<(String, String)> {
        let (check, vocabulary) = (self.subject.check, self.subject.vocabulary);
        let words = self.words_of_any()?;
        if tool.whereabouts == Whereabouts::Missing || words.broken_of(index).is_some() {
            return None;
        }
        let ending = self.ending(tool.expires, |requirement, _| {
            let asked = requirement.kinds().contains(&tool.kind);
            let found = asked.then(|| of_tool(vocabulary, &check.vessel, requirement, index));
            let Validity { span, end, .. } = found.flatten()?;
            Some((span.until?, end?))
        })?;
        let inspection = ending.end == End::Inspection;
        let on = ending.last.next();
        let told = if ending.last < check.asked.departure {
            said::ended(inspection, ending.last, self.subject.locale)
        } else {
            words.reason(&Reason::LapsesDuringTrip { on, inspection })
        };
        Some((format!("{}: {told}", words.lot(index)), ending.why(self.subject.locale)))
    }

    fn certificate_ends(&self, p: usize, c: usize) -> Option<(String, String)> {
        let (check, vocabulary) = (self.subject.check, self.subject.vocabulary);
        let person = check.vessel.people.as_ref()?.get(p)?;
        let certificate = person.certificates.get(c)?;
        let ending = self.ending(certificate.expires, |requirement, finding| {
            let all = validities(vocabulary, &check.vessel, requirement, finding);
            let own = all.iter().find(|v| v.holding == Holding::Certificate(p, c))?;
            Some((own.span.until?, End::Expiry))
        })?;
        let kind = &vocabulary.kind(certificate.kind).name;
        let (locale, name, last) = (self.subject.locale, &person.name, ending.last);
        let told = match last < check.asked.departure {
            true => locale.sheet_certificate_ran_out(kind, name, &last),
            false => locale.sheet_certificate_runs_out(kind, name, &last),
        };
        Some((told, ending.why(locale)))
    }

    /// Words of the vessel's kit, which are the same under every profile.
    fn words_of_any(&self) -> Option<Words<'_>> {
        let judgement = self.subject.check.judgements.first()?;
        Some(self.subject.words(judgement))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_earliest_day_is_told_with_all_that_ends_on_it() {
        let day = |text| Day::parse(text).unwrap();
        let mut all = None;
        for (last, end, title) in [
            ("2026-03-05", End::Expiry, None),
            ("2026-03-06", End::Expiry, Some("later")),
            ("2026-03-02", End::Inspection, Some("pliers")),
            ("2026-03-02", End::Inspection, Some("pliers")),
            ("2026-03-02", End::Inspection, Some("cutter")),
            ("2026-03-04", End::Expiry, Some("later")),
        ] {
            Ending::take(&mut all, day(last), end, title.map(str::to_owned));
        }
        let ending = all.unwrap();
        assert_eq!((ending.last, ending.end), (day("2026-03-02"), End::Inspection));
        assert_eq!(ending.why(Locale::default()), "for pliers; cutter");
    }
}

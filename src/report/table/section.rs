//! What one profile says: a section of the page.
//!
//! Imports `model` and the page and words beside it.

use super::shared::{self, Shared};
use super::tone;
use crate::measure::DaySpan;
use crate::model::check::{Judgement, Why};
use crate::model::finding::{Asked, Because, Finding, Outcome};
use crate::model::profile::{Level, Standing};
use crate::model::reason::{Reason, VesselFact};
use crate::report::page::{Page, Tone};
use crate::report::words::{self, Words};

/// How many tools that will not do are told apart for one finding.
const TOOLS_TOLD: usize = 3;

/// How far the signs of findings stand in, and how far what follows them.
pub(super) const INDENT: usize = 2;
const BODY: usize = INDENT + 3;

/// One profile's section.
pub(super) struct Section<'a> {
    pub(super) words: Words<'a>,
    pub(super) judgement: &'a Judgement,
    pub(super) asked: Asked,
    /// Whether the page has more than this one section.
    pub(super) several: bool,
}

impl Section<'_> {
    /// Writes the section.
    pub(super) fn write(&self, page: &mut Page) {
        self.heading(page);
        if !self.judgement.profile.encoded {
            return self.stub(page);
        }
        self.clashes(page);
        self.troubles(page, Outcome::NotMet, "To put right");
        self.troubles(page, Outcome::CannotTell, "Not known: find out");
        self.in_order(page);
        self.advice(page);
        self.limits(page);
        self.way(page);
        self.remarks(page);
    }

    fn heading(&self, page: &mut Page) {
        let profile = &self.judgement.profile;
        let title = profile.title.to_string();
        if self.several {
            let verdict = words::verdict(self.judgement.verdict, self.words.locale);
            let label = format!("{verdict} ");
            page.hang(0, (&label, tone(self.judgement.verdict)), (&title, Tone::Strong));
        } else {
            page.prose(0, Tone::Strong, &title);
        }
        if profile.standing == Standing::GoodPractice || self.judgement.why == Why::Fallback {
            let text = format!("Good practice, no rule's verdict (`{}`).", profile.id);
            page.prose(INDENT, Tone::Open, &text);
            return self.part_of_trip(page);
        }
        if profile.base {
            let text = format!(
                "note: `{}` is a list that others build on; it binds no vessel by itself.",
                profile.id
            );
            page.prose(INDENT, Tone::Open, &text);
        }
        let known = format!(
            "{}, edition {}, `{}`; {}",
            profile.source,
            profile.edition,
            profile.id,
            self.words.why(&self.judgement.why)
        );
        page.prose(INDENT, Tone::Plain, &known);
        self.part_of_trip(page);
    }

    fn part_of_trip(&self, page: &mut Page) {
        let trip = DaySpan { from: Some(self.asked.departure), until: Some(self.asked.back) };
        if self.judgement.days != trip {
            let days = format!(
                "judged for part of the trip: {}",
                words::span(self.judgement.days, self.words.locale)
            );
            page.prose(INDENT, Tone::Plain, &days);
        }
    }

    fn stub(&self, page: &mut Page) {
        page.gap();
        let text = "known, not encoded: this rule exists, but what it asks is not in this \
            program, so nobody can tell here whether the kit keeps it";
        page.hang(INDENT, ("? ", Tone::Open), (text, Tone::Plain));
        page.hang(BODY, ("do:", Tone::Strong), (&self.words.by_hand(), Tone::Strong));
        self.remarks(page);
    }

    /// A clash is why a kit with enough good tools is not ready, so it comes
    /// before the finding that happened to lose.
    fn clashes(&self, page: &mut Page) {
        let inverses = self.judgement.inverses.iter();
        let clashes: Vec<_> = inverses.flat_map(|inverses| &inverses.clashes).collect();
        if clashes.is_empty() {
            return;
        }
        page.gap();
        page.prose(INDENT, Tone::Strong, "Too few tools to go round");
        for clash in clashes {
            let text = self.words.clash(clash);
            page.hang(INDENT, ("- ", Tone::Bad), (&text, Tone::Plain));
        }
    }

    fn of_level(&self, level: Level, outcome: Outcome) -> Vec<&Finding> {
        let requirements = &self.judgement.profile.requirements;
        let level_of = |f: &Finding| requirements.get(f.requirement).map(|r| r.level);
        let findings = self.judgement.findings.iter();
        findings.filter(|f| f.outcome == outcome && level_of(f) == Some(level)).collect()
    }

    fn troubles(&self, page: &mut Page, outcome: Outcome, heading: &str) {
        let findings = self.of_level(Level::Required, outcome);
        if findings.is_empty() {
            return;
        }
        let shared = shared::shared(&findings);
        let told: Vec<&VesselFact> = shared.iter().map(|shared| shared.fact).collect();
        let news = |f: &&Finding| f.reasons.is_empty() || !shared::news(f, &told).is_empty();
        let fresh: Vec<&Finding> = findings.iter().copied().filter(news).collect();
        let (followers, leaders) = shared::followers(&fresh);
        page.gap();
        let count = findings.len() - followers.len();
        page.prose(INDENT, Tone::Strong, &format!("{heading} ({count})"));
        for shared in &shared {
            self.shared(page, shared);
        }
        for finding in leaders {
            self.trouble(page, finding, &told);
            let after = followers.iter().filter(|(leader, _)| *leader == finding.requirement);
            after.for_each(|(_, follower)| self.follows(page, follower));
        }
    }

    /// A finding that is open or not met only as long as the one above it.
    fn follows(&self, page: &mut Page, finding: &Finding) {
        let requirement = self.judgement.profile.requirements.get(finding.requirement);
        let clause = requirement.map_or("", |requirement| requirement.clause.as_str());
        let reasons = self.reasons(finding, &[]).join("; ");
        let text = format!("{} ({clause}): {reasons}", self.words.title(finding.requirement));
        page.hang(BODY, ("follows:", Tone::Strong), (&text, Tone::Plain));
    }

    /// A missing fact of the vessel that leaves several findings open.
    fn shared(&self, page: &mut Page, shared: &Shared<'_>) {
        let unknown = self.words.unknown(shared.fact);
        page.hang(INDENT, ("? ", Tone::Open), (&unknown, Tone::Strong));
        let titles: Vec<_> =
            shared.requirements.iter().map(|index| self.words.title(*index)).collect();
        page.prose(BODY, Tone::Plain, &format!("open because of it: {}", titles.join("; ")));
        let remedy = self.words.find_out(shared.fact);
        page.hang(BODY, ("do:", Tone::Strong), (&remedy, Tone::Strong));
    }

    /// A finding that is not met or not known: what is asked and where it is
    /// written, why, and what to do.
    fn trouble(&self, page: &mut Page, finding: &Finding, told: &[&VesselFact]) {
        let sign = format!("{} ", words::sign(finding.outcome));
        let label = (sign.as_str(), tone_of(finding.outcome));
        let requirement = self.judgement.profile.requirements.get(finding.requirement);
        let clause = requirement.map_or("", |requirement| requirement.clause.as_str());
        page.ends(INDENT, label, &self.words.title(finding.requirement), clause);
        for text in self.reasons(finding, told) {
            page.prose(BODY, Tone::Plain, &text);
        }
        if let Some(freeboard) = finding.freeboard.filter(|_| self.tells_freeboard(finding)) {
            let text = format!("at a freeboard of {}", self.words.freeboard(freeboard));
            page.prose(BODY, Tone::Plain, &text);
        }
        if let Some(remedy) = self.words.remedy(finding, told) {
            page.hang(BODY, ("do:", Tone::Strong), (&remedy, Tone::Strong));
        }
    }

    /// Of a vessel with several freeboards a finding says at which it is
    /// worst, if it hangs on the freeboard and no reason says so already.
    fn tells_freeboard(&self, finding: &Finding) -> bool {
        let said = |because: &Because| matches!(because.reason, Reason::TooShortForRail { .. });
        self.words.has_several_freeboards()
            && self.words.hangs_on_freeboard(finding.requirement)
            && !finding.reasons.iter().any(said)
    }

    /// The reasons, one line for each tool.
    fn reasons(&self, finding: &Finding, told: &[&VesselFact]) -> Vec<String> {
        let mut groups: Vec<(Option<usize>, Vec<String>)> = Vec::new();
        for because in shared::news(finding, told) {
            let text = self.words.reason_of(because);
            let same = |tool: Option<usize>| tool.is_some() && tool == because.tool;
            match groups.iter_mut().find(|(tool, _)| same(*tool)) {
                Some((_, texts)) => texts.push(text),
                None => groups.push((because.tool, vec![text])),
            }
        }
        let more = groups.iter().filter(|(tool, _)| tool.is_some()).count();
        let mut lines = Vec::new();
        let mut told = 0;
        for (tool, texts) in groups {
            let text = texts.join("; ");
            match tool {
                None => lines.push(text),
                Some(tool) if told < TOOLS_TOLD => {
                    told += 1;
                    lines.push(format!("{}: {text}", self.words.lot(tool)));
                }
                Some(_) => {}
            }
        }
        if more > TOOLS_TOLD {
            let left = more - TOOLS_TOLD;
            lines.push(format!("{left} more will not do either; `--format json` lists them"));
        }
        lines
    }

    fn in_order(&self, page: &mut Page) {
        let findings = self.of_level(Level::Required, Outcome::Met);
        if findings.is_empty() {
            return;
        }
        page.gap();
        page.prose(INDENT, Tone::Strong, &format!("In order ({})", findings.len()));
        self.met(page, &findings);
    }

    fn met(&self, page: &mut Page, findings: &[&Finding]) {
        let rows: Vec<_> = findings
            .iter()
            .map(|finding| {
                let title = self.words.title(finding.requirement);
                let serving = self.words.all_that_serve(finding);
                (Tone::Good, vec!["+".to_owned(), title, serving])
            })
            .collect();
        page.columns(INDENT, &[1, 44, usize::MAX], &rows);
    }

    fn advice(&self, page: &mut Page) {
        let met = self.of_level(Level::Recommended, Outcome::Met);
        let mut open = self.of_level(Level::Recommended, Outcome::NotMet);
        open.extend(self.of_level(Level::Recommended, Outcome::CannotTell));
        if met.is_empty() && open.is_empty() {
            return;
        }
        page.gap();
        page.prose(INDENT, Tone::Strong, "Recommended (no part of the verdict)");
        for finding in open {
            self.trouble(page, finding, &[]);
        }
        self.met(page, &met);
    }

    /// A stub's notes are all there is to tell of it; those of a profile that
    /// judged are for whoever wants to know more than a glance tells.
    fn remarks(&self, page: &mut Page) {
        let profile = &self.judgement.profile;
        if profile.notes.is_empty() {
            return;
        }
        page.gap();
        if profile.encoded {
            let text = format!("notes on this profile: `kitmuster profiles {}`", profile.id);
            return page.prose(INDENT, Tone::Plain, &text);
        }
        for note in &profile.notes {
            page.hang(INDENT, ("note:", Tone::Strong), (&note.to_string(), Tone::Plain));
        }
    }
}

/// The tone of an outcome.
fn tone_of(outcome: Outcome) -> Tone {
    match outcome {
        Outcome::Met => Tone::Good,
        Outcome::CannotTell => Tone::Open,
        Outcome::NotMet => Tone::Bad,
    }
}

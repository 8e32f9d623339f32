//! The page of one vessel: verdict, findings, what to do, pictures.
//!
//! Imports `model`, the words and the pictures. Decides nothing and leaves
//! out nothing without saying so.

use super::finding;
use crate::measure::{Day, DaySpan};
use crate::model::check::{Check, Judgement, Notice, Why};
use crate::model::finding::{Action, Finding, Outcome, Step, Target, WayToReady};
use crate::model::profile::{Level, Profile, Standing};
use crate::model::vessel::Trust;
use crate::report::Subject;
use crate::report::html::{self as base, shown};
use crate::report::picture;
use crate::report::table;
use crate::report::table::shared::{self, Shared};
use crate::report::words::{self, Words, pages};
use maud::{Markup, html};

/// Where a page stands: in an audit of that day, with the way back, or alone.
#[derive(Debug, Clone, Copy)]
pub(in crate::report) struct Setting<'a> {
    /// The day of the audit, if it is one.
    pub(in crate::report) date: Option<Day>,
    /// The page's own id, from which all others on it are made.
    pub(in crate::report) id: &'a str,
    /// The address of the fleet's table, if there is one.
    pub(in crate::report) back: Option<&'a str>,
}

/// The page of a vessel.
pub(in crate::report) fn page(subject: &Subject<'_>, setting: Setting<'_>) -> Markup {
    let check = subject.check;
    let name = format!("{}-name", setting.id);
    let level = if setting.back.is_some() { 3 } else { 2 };
    html! {
        article class="vessel" id=(setting.id) aria-labelledby=(name) {
            header class="rail" {
                @if setting.back.is_some() {
                    h2 id=(name) { (shown(&check.vessel.name)) }
                } @else {
                    h1 id=(name) { (shown(&check.vessel.name)) }
                }
                p.headline {
                    (base::verdict(check.verdict))
                    @if check.standing() == Standing::GoodPractice {
                        " " (words::ONLY_PRACTICE)
                    }
                }
            }
            (particulars(subject, setting))
            (notices(&check.notices))
            @if check.judgements.len() > 1 { (summary(check, setting)) }
            @for (index, judgement) in check.judgements.iter().enumerate() {
                (Section::new(subject, judgement, format!("{}-p{index}", setting.id), level).markup())
            }
            @if let Some(freeing) = &subject.freeing {
                (freeing.summary(&format!("{}-freeing", setting.id), level))
            }
            (foot(check))
            @if let Some(back) = setting.back {
                p.back { a href=(back) { "Back to the fleet" } }
            }
        }
    }
}

/// Who, where, when.
fn particulars(subject: &Subject<'_>, setting: Setting<'_>) -> Markup {
    let check = subject.check;
    let vessel = &check.vessel;
    let trip = DaySpan { from: Some(check.asked.departure), until: Some(check.asked.back) };
    let records = subject.sources.iter().filter(|source| source.file != vessel.place.file);
    let records: Vec<_> = records.map(|source| source.file.to_string()).collect();
    html! {
        dl.facts {
            @if let Some(register) = &vessel.register { div { dt { "Register" } dd { (shown(register)) } } }
            @if let Some(port) = &vessel.port { div { dt { "Port" } dd { (shown(port)) } } }
            div { dt { "Trip" } dd { (base::prose(&words::span(trip))) } }
            @if let Some(date) = setting.date { div { dt { "Audit of" } dd { (base::prose(&date.to_string())) } } }
            div { dt { "Freeboard" } dd { (base::prose(&freeboard(subject))) } }
            div { dt { "File" } dd { (shown(&vessel.place.file)) } }
            @if !records.is_empty() {
                div { dt { "Inspection record" } dd { (shown(&records.join(", "))) } }
            }
            @if check.asked.trust == Trust::Measured {
                div { dt { "Figures" } dd { "only those that were measured are believed" } }
            }
            @for judgement in &check.judgements {
                div.whole { dt { "Judged by" } dd { (edition(&judgement.profile)) } }
            }
        }
    }
}

fn freeboard(subject: &Subject<'_>) -> String {
    let text = table::freeboard(&subject.check.vessel, subject.units);
    text.strip_prefix("freeboard ").map_or(text.clone(), str::to_owned)
}

/// The edition and the encoding of a profile, and its id.
fn edition(profile: &Profile) -> Markup {
    html! {
        (shown(&profile.source)) ", edition " (shown(&profile.edition))
        "; encoding " (profile.encoding) " of " code { (shown(&profile.id)) }
    }
}

/// What bears on the meaning of the verdict stands above everything else.
fn notices(notices: &[Notice]) -> Markup {
    html! {
        @for notice in notices {
            div.caution {
                p { b { "Note: " } (base::prose(&words::notice(notice))) }
                @if let Some(remedy) = words::notice_remedy(notice) {
                    p { b { "Do: " } (base::prose(&remedy)) }
                }
            }
        }
    }
}

/// One line for each profile, before the sections.
fn summary(check: &Check, setting: Setting<'_>) -> Markup {
    html! {
        ul.plain {
            @for (index, judgement) in check.judgements.iter().enumerate() {
                li {
                    (base::verdict(judgement.verdict)) " "
                    a href={ "#" (setting.id) "-p" (index) } {
                        (shown(&judgement.profile.title.to_string()))
                    }
                }
            }
        }
    }
}

/// What stands at the foot of every page of a vessel.
fn foot(check: &Check) -> Markup {
    let rests = [table::memory(&check.judgements), table::practice(&check.judgements)];
    html! {
        footer {
            @for text in rests.into_iter().flatten() { p { (base::prose(&text)) } }
            p { (words::CAUTION) }
            p { (words::FOOT) }
        }
    }
}

/// What one profile says of the vessel.
struct Section<'a> {
    words: Words<'a>,
    judgement: &'a Judgement,
    subject: &'a Subject<'a>,
    id: String,
    /// The level of its heading.
    level: u8,
}

impl<'a> Section<'a> {
    fn new(subject: &'a Subject<'a>, judgement: &'a Judgement, id: String, level: u8) -> Self {
        let words = Words {
            vocabulary: subject.vocabulary,
            vessel: &subject.check.vessel,
            profile: &judgement.profile,
            units: subject.units,
        };
        Self { words, judgement, subject, id, level }
    }

    fn markup(&self) -> Markup {
        let profile = &self.judgement.profile;
        html! {
            section class="profile" id=(self.id) {
                (base::heading(self.level, &html! {
                    (shown(&profile.title.to_string()))
                    @if self.subject.check.judgements.len() > 1 {
                        " " (base::verdict(self.judgement.verdict))
                    }
                }))
                (self.standing())
                @if profile.encoded { (self.findings()) } @else { (self.stub()) }
            }
        }
    }

    fn standing(&self) -> Markup {
        let profile = &self.judgement.profile;
        let asked = self.subject.check.asked;
        let trip = DaySpan { from: Some(asked.departure), until: Some(asked.back) };
        let practice =
            profile.standing == Standing::GoodPractice || self.judgement.why == Why::Fallback;
        html! {
            p.soft {
                @if practice { b { "Good practice, no rule's verdict. " } }
                code { (shown(&profile.id)) } ": " (shown(&self.words.why(&self.judgement.why))) "."
                @if self.judgement.days != trip {
                    " Judged for part of the trip: " (words::span(self.judgement.days)) "."
                }
                @if profile.base {
                    " This is a list that others build on; it binds no vessel by itself."
                }
            }
        }
    }

    fn stub(&self) -> Markup {
        html! {
            div.caution {
                p { (base::outcome(Outcome::CannotTell)) " " (pages::STUB) }
                p { b { "Do: " } (shown(&self.words.by_hand())) }
            }
            @for note in &self.judgement.profile.notes {
                p.soft { b { "Note: " } (shown(&note.to_string())) }
            }
        }
    }

    fn findings(&self) -> Markup {
        html! {
            (self.clashes())
            (self.troubles(Outcome::NotMet, "To put right"))
            (self.troubles(Outcome::CannotTell, "Not known: find out"))
            (self.answers())
            (self.way())
            (self.in_order())
            (self.advice())
            (self.pictures())
        }
    }

    /// A heading within the section.
    fn part(&self, content: &Markup) -> Markup {
        base::heading(self.level + 1, content)
    }

    fn pictures(&self) -> Markup {
        let (words, judgement) = (&self.words, self.judgement);
        let asked = self.subject.check.asked;
        let id = |of: &str| format!("{}-{of}", self.id);
        let pictures = [
            ("Reach at the rail", picture::reach::figures(words, judgement, &id("reach"))),
            ("Freeboard", picture::freeboard::figure(words, judgement, &id("board"))),
            ("Time", picture::time::figure(words, judgement, asked, &id("time"))),
        ];
        html! {
            @for (heading, picture) in pictures {
                @if let Some(picture) = picture {
                    section.picture { (self.part(&html! { (heading) })) (picture) }
                }
            }
        }
    }

    /// A clash is why a kit with enough good tools is not ready, so it comes
    /// before the finding that happened to lose.
    fn clashes(&self) -> Markup {
        let clashes: Vec<_> =
            self.judgement.inverses.iter().flat_map(|inverses| &inverses.clashes).collect();
        html! {
            @if !clashes.is_empty() {
                (self.part(&html! { "Too few tools to go round" }))
                ul { @for clash in clashes { li { (base::prose(&self.words.clash(clash))) } } }
            }
        }
    }

    fn of(&self, level: Level, outcome: Outcome) -> Vec<&'a Finding> {
        let level_of = |f: &Finding| self.words.requirement(f.requirement).map(|r| r.level);
        let findings = self.judgement.findings.iter();
        findings.filter(|f| f.outcome == outcome && level_of(f) == Some(level)).collect()
    }

    /// Findings that are not met or not known, after the facts that several
    /// of them lack.
    fn troubles(&self, outcome: Outcome, heading: &str) -> Markup {
        let findings = self.of(Level::Required, outcome);
        let shared = shared::shared(&findings);
        let told: Vec<_> = shared.iter().map(|shared| shared.fact).collect();
        html! {
            @if !findings.is_empty() {
                (self.part(&html! { (heading) " (" (findings.len()) ")" }))
                @for shared in &shared { (self.shared(shared)) }
                @for finding in findings {
                    (finding::trouble(&self.words, finding, &told, &self.id))
                }
            }
        }
    }

    fn shared(&self, shared: &Shared<'_>) -> Markup {
        html! {
            div.caution {
                p { b { (base::prose(&self.words.unknown(shared.fact))) } ": "
                    (shared.requirements.len()) " requirements are open because of it." }
                p { b { "Do: " } (base::prose(&self.words.find_out(shared.fact))) }
            }
        }
    }

    fn in_order(&self) -> Markup {
        let findings = self.of(Level::Required, Outcome::Met);
        html! {
            @if !findings.is_empty() {
                (self.part(&html! { "In order (" (findings.len()) ")" }))
                (self.met(&findings))
            }
        }
    }

    fn met(&self, findings: &[&Finding]) -> Markup {
        finding::met(&self.words, findings, &self.id)
    }

    fn advice(&self) -> Markup {
        let met = self.of(Level::Recommended, Outcome::Met);
        let mut open = self.of(Level::Recommended, Outcome::NotMet);
        open.extend(self.of(Level::Recommended, Outcome::CannotTell));
        html! {
            @if !met.is_empty() || !open.is_empty() {
                (self.part(&html! { "Recommended, no part of the verdict" }))
                @for finding in open { (finding::trouble(&self.words, finding, &[], &self.id)) }
                @if !met.is_empty() { (self.met(&met)) }
            }
        }
    }

    fn answers(&self) -> Markup {
        html! {
            dl.facts.answers {
                div { dt { "Ready until" } dd { (base::prose(&self.words.ready_until(self.judgement))) } }
                @if let Some(up_to) = self.words.good_up_to(self.judgement) {
                    div { dt { "Good up to" } dd { (base::prose(&up_to)) } }
                }
            }
        }
    }

    fn way(&self) -> Markup {
        match self.judgement.inverses.as_ref().map(|inverses| &inverses.way) {
            None | Some(WayToReady::Already) => html! {},
            Some(WayToReady::None) => html! {
                (self.part(&html! { "Shortest way to ready" }))
                p { "No set of changes was found that makes it ready." }
            },
            Some(WayToReady::Steps { steps, fewest }) => self.steps(steps, *fewest),
        }
    }

    fn steps(&self, steps: &[Step], fewest: bool) -> Markup {
        let noun = if steps.len() == 1 { "step" } else { "steps" };
        let measures = steps.iter().any(|step| step.action == Action::Measure);
        let open = self.judgement.verdict == crate::model::finding::Verdict::CannotTell;
        html! {
            (self.part(&html! {
                "Shortest way to ready (" (steps.len()) " " (noun)
                @if !fewest { "; there may be a shorter way" }
                ")"
            }))
            ol {
                @for step in steps {
                    @let freeboard = self.words.freeboard_for(self.judgement, step.requirement);
                    li {
                        (base::prose(&self.words.step(step, freeboard)))
                        @if step.target != Target::Vessel {
                            " " span.soft { "for: " (shown(&self.words.step_for(step))) }
                        }
                    }
                }
            }
            @if open || measures { p.soft { (pages::TURNS_OUT_WELL) } }
        }
    }
}

//! The skipper's checklist: what to do before leaving, what lapses at sea,
//! what to look at by eye, and what is met by what the list says.
//!
//! Imports `model` and the words beside it. What is to be done was found by
//! the engine.

use super::digest::Digest;
use super::rows::{self, Thing};
use super::shared::{
    STYLE, editions, foot, has_stubs, laid_over, notices, of_rules, rule_of, stubs, take_in,
};
use crate::measure::DaySpan;
use crate::model::check::{Check, Inverse, Judgement};
use crate::model::finding::{Action, Outcome, Step, Target, Verdict, WayToReady};
use crate::model::profile::Level;
use crate::model::vessel::{Tool, Whereabouts};
use crate::report::content::check::stated_freeboard;
use crate::report::render::base::{document, shown, verdict};
use crate::report::words::{self, Words, sheet as said};
use crate::report::{Locale, Subject};
use maud::{Markup, html};

/// The checklist as one document of HTML.
pub(super) fn page(subject: &Subject<'_>, measured: &Check, digest: &Digest) -> String {
    let check = subject.check;
    let (vessel, locale) = (&check.vessel, subject.locale);
    let list = List { subject };
    let ready = check.verdict == Verdict::Ready;
    let none = if ready { locale.sheet_nothing_to_do() } else { locale.sheet_not_settled() };
    let advice = list.advice();
    let body = html! {
        main.sheet.large {
            h1.rail {
                (shown(&locale.sheet_skipper(&vessel.name))) " " (verdict(check.verdict, locale))
            }
            p {
                (shown(&said::vessel_line(vessel))) "; "
                (locale.sheet_trip(&check.asked.departure, &check.asked.back)) "; "
                "freeboard " (shown(&stated_freeboard(vessel, locale))) "; "
                (locale.sheet_digest()) " " b.digest { (digest) }
            }
            @if let Some(laid) = laid_over(subject) { p.laid { b { (shown(&laid)) } } }
            (editions(subject))
            (notices(subject))
            (stubs(subject))
            (list.clashes())
            (section(locale.sheet_do_before(), "jobs", &list.deeds(), none))
            @if list.measures() { p { (locale.sheet_turns_out_well()) } }
            @for text in list.good_up_to() { p { (shown(&text)) } }
            @if !advice.is_empty() {
                (section(locale.sheet_advice(), "jobs recommended", &advice, ""))
                p { (locale.sheet_advice_only()) }
            }
            (section(
                locale.sheet_runs_out(),
                "jobs lapses",
                &list.lapses(),
                locale.sheet_nothing_lapses(),
            ))
            (list.by_eye())
            (list.met(measured))
            (foot(subject.locale))
        }
    };
    document(&locale.sheet_skipper_title(&vessel.name), STYLE, &body)
}

/// Things to do, each with a box; or that there are none.
fn section(heading: &str, class: &str, jobs: &[(String, String)], none: &str) -> Markup {
    html! {
        section {
            h2 { (heading) }
            @if jobs.is_empty() { p { (none) } } @else {
                ul class=(class) {
                    @for (job, why) in jobs {
                        li {
                            span.square {}
                            span { b { (shown(job)) } @if !why.is_empty() { " - " (shown(why)) } }
                        }
                    }
                }
            }
        }
    }
}

/// The checklist of one vessel.
pub(super) struct List<'a> {
    pub(super) subject: &'a Subject<'a>,
}

impl<'a> List<'a> {
    fn check(&self) -> &'a Check {
        self.subject.check
    }

    pub(super) fn encoded(&self) -> impl Iterator<Item = (&'a Judgement, Words<'a>)> {
        let encoded = self.check().judgements.iter().filter(|j| j.profile.encoded);
        encoded.map(|judgement| (judgement, self.subject.words(judgement)))
    }

    /// Why a kit with enough good tools is not ready, told before the steps.
    fn clashes(&self) -> Markup {
        let told = self.encoded().flat_map(|(judgement, words)| {
            let clashes = judgement.inverses.iter().flat_map(|inverses| &inverses.clashes);
            clashes.map(|clash| words.clash(clash)).collect::<Vec<_>>()
        });
        let told: Vec<_> = told.collect();
        html! {
            @if !told.is_empty() {
                section {
                    h2 { (self.subject.locale.sheet_clashes()) }
                    ul { @for text in &told { li { (shown(text)) } } }
                }
            }
        }
    }

    /// The steps of the shortest way under each profile, each once; the whole
    /// kit by hand under a rule that is not in this program.
    fn deeds(&self) -> Vec<(String, String)> {
        let mut jobs: Vec<Job> = Vec::new();
        for judgement in &self.check().judgements {
            let words = self.subject.words(judgement);
            if !judgement.profile.encoded {
                let note = self.title_and_days(judgement);
                add(&mut jobs, words.by_hand(), note, Vec::new());
                continue;
            }
            let way = judgement.inverses.as_ref().map(|inverses| &inverses.way);
            if way == Some(&WayToReady::None) {
                let note = judgement.profile.title.to_string();
                let say = self.subject.locale;
                let text = match judgement.leaves_open(Inverse::Way) {
                    true => say.way_left_open(),
                    false => say.sheet_no_way(),
                };
                add(&mut jobs, text.to_owned(), note, Vec::new());
            }
            for step in judgement.steps() {
                let job = words.step_of(judgement, step);
                add(&mut jobs, job, String::new(), self.whys(judgement, &words, step));
            }
        }
        jobs.into_iter().map(|job| job.told(self.subject.locale)).collect()
    }

    /// What a step is for. What is written down of the vessel serves every
    /// requirement.
    fn whys(&self, judgement: &Judgement, words: &Words<'_>, step: &Step) -> Vec<Why> {
        if step.target == Target::Vessel {
            return Vec::new();
        }
        let rules: Vec<_> = rule_of(self.check(), judgement).into_iter().collect();
        let wanted = std::iter::once(&step.requirement).chain(&step.also);
        let wanted = wanted.filter_map(|index| words.requirement(*index)).map(|requirement| Why {
            title: requirement.title.to_string(),
            clause: requirement.clause.clone(),
            rules: rules.clone(),
        });
        wanted.collect()
    }

    /// A rule by its title, with the days that it judges where those are a
    /// part of the trip.
    fn title_and_days(&self, judgement: &Judgement) -> String {
        let asked = self.check().asked;
        let trip = DaySpan { from: Some(asked.departure), until: Some(asked.back) };
        if judgement.days == trip {
            return judgement.profile.title.to_string();
        }
        let days = words::span(judgement.days, self.subject.locale);
        self.subject.locale.sheet_part_of_trip(&judgement.profile.title, &days)
    }

    /// Whether a step is to measure or to look something up.
    fn measures(&self) -> bool {
        let mut steps = self.encoded().flat_map(|(judgement, _)| judgement.steps());
        steps.any(|step| step.action == Action::Measure)
    }

    /// Up to which freeboard the kit is ready; once where every rule says the
    /// same, else rule by rule.
    fn good_up_to(&self) -> Vec<String> {
        let told = self.encoded().filter_map(|(judgement, words)| {
            let good = words.good_up_to(judgement)?;
            Some((judgement, self.subject.locale.sheet_good_up_to(&good)))
        });
        let told: Vec<_> = told.collect();
        match told.as_slice() {
            [(_, first), ..]
                if told.len() == self.check().judgements.len()
                    && told.iter().all(|(_, text)| text == first) =>
            {
                vec![first.clone()]
            }
            all => all.iter().map(|(j, text)| format!("{}: {text}", j.profile.title)).collect(),
        }
    }

    /// What is recommended and not met, with what would put it right.
    fn advice(&self) -> Vec<(String, String)> {
        let mut jobs: Vec<(String, String)> = Vec::new();
        for (judgement, words) in self.encoded() {
            for finding in judgement.findings.iter().filter(|f| f.outcome != Outcome::Met) {
                let Some(requirement) = words.requirement(finding.requirement) else { continue };
                if requirement.level != Level::Recommended {
                    continue;
                }
                let rules: Vec<_> = rule_of(self.check(), judgement).into_iter().collect();
                let why = words.remedy(finding, &[]).unwrap_or_default();
                let clause = of_rules(&rules, &requirement.clause, self.subject.locale);
                let job = (format!("{} ({clause})", requirement.title), why);
                if !jobs.contains(&job) {
                    jobs.push(job);
                }
            }
        }
        jobs
    }

    /// Every tool that a rule asks for, where it is stowed; where a rule is
    /// not in this program, everything aboard.
    fn by_eye(&self) -> Markup {
        let groups = rows::groups(self.subject, None);
        let (unencoded, locale) = (has_stubs(self.check()), self.subject.locale);
        let tools = |group: &rows::Group<'a>| -> Vec<(&'a Tool, bool)> {
            let asked = group.rows.iter().filter(|row| unencoded || !row.serves.is_empty());
            let tools = asked.filter_map(|row| match row.thing {
                Thing::Tool(tool) => Some((tool, row.several)),
                _ => None,
            });
            tools.filter(|(tool, _)| to_be_seen(tool)).collect()
        };
        html! {
            section {
                h2 { (locale.sheet_by_eye()) }
                p { (locale.sheet_by_eye_how()) }
                @for group in &groups {
                    @let tools = tools(group);
                    @if !tools.is_empty() {
                        div.byeye {
                            i { (shown(&group.place)) ":" }
                            @for (tool, several) in tools {
                                span.yesno.eyed {
                                    span.square {} b { (shown(&tool.mark)) } " "
                                    (shown(&self.subject.vocabulary.kind(tool.kind).name))
                                    @if several { (locale.sheet_eyed_how_many()) " " span.box {} }
                                }
                            }
                        }
                    }
                }
            }
        }
    }
}

/// What is ashore or lost is not to be looked at; bringing it is a step.
fn to_be_seen(tool: &Tool) -> bool {
    !matches!(tool.whereabouts, Whereabouts::Ashore | Whereabouts::Missing)
}

/// A requirement that something to do is for.
struct Why {
    title: String,
    clause: String,
    rules: Vec<String>,
}

/// Something to do, with a note or with what it is for.
struct Job {
    what: String,
    notes: Vec<String>,
    whys: Vec<Why>,
}

impl Job {
    fn told(self, locale: Locale) -> (String, String) {
        let cited =
            |why: &Why| format!("{} ({})", why.title, of_rules(&why.rules, &why.clause, locale));
        let whys: Vec<_> = self.whys.iter().map(cited).collect();
        let mut told = self.notes;
        if !whys.is_empty() {
            told.push(locale.sheet_for_titles(&whys.join("; ")));
        }
        (self.what, told.join("; "))
    }
}

/// Adds something to do; the same thing for another reason is one thing, and
/// the same clause of another rule is one reason.
fn add(jobs: &mut Vec<Job>, what: String, note: String, whys: Vec<Why>) {
    let at = jobs.iter().position(|known| known.what == what).unwrap_or_else(|| {
        jobs.push(Job { what, notes: Vec::new(), whys: Vec::new() });
        jobs.len() - 1
    });
    let job = &mut jobs[at];
    if !note.is_empty() && !job.notes.contains(&note) {
        job.notes.push(note);
    }
    for why in whys {
        let same = |known: &&mut Why| known.title == why.title && known.clause == why.clause;
        match job.whys.iter_mut().find(same) {
            Some(known) => take_in(&mut known.rules, why.rules),
            None => job.whys.push(why),
        }
    }
}

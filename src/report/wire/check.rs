//! A check as JSON for programs: the format `kitmuster/check/1`.
//!
//! Keys stand in a fixed order, and `kitmuster schema check` tells what each
//! means. A key that is absent in one result may be there in another; readers
//! must let pass keys that they do not know.
//!
//! Requirements are named by their ids, tools by their marks. A quantity is
//! exact in its count (`nanometres`, `micrograms`, …) and for people in its
//! `text`. Every `text` and `remedy` may change its wording; every `code` is
//! stable.

use super::form::{Day, Word, day, objects, word};
use super::parts::{
    Edition, Freeing, Notice, Program, Quantity, ServingTool, Trip, Vessel, fact_code, ids,
};
use super::reason::Reason;
use super::text::document;
use crate::measure::{DaySpan, Length};
use crate::model::check::{self, Judgement};
use crate::model::finding::{self, Action, Outcome, Verdict, WayToReady};
use crate::model::profile::{self, Level, Standing, Verified};
use crate::model::reason::{self, VesselFact};
use crate::model::vessel::Trust;
use crate::model::vocabulary::Vocabulary;
use crate::report::Locale;
use crate::report::places::Places;
use crate::report::subject::Subject;
use crate::report::words::Words;
use schemars::JsonSchema;
use serde::Serialize;

/// The name and version of the format.
const SCHEMA: &str = "kitmuster/check/1";

/// The check as pretty-printed JSON, ending in a line feed.
///
/// # Errors
/// None in practice: the types of the format all have a JSON form.
pub fn check(subject: &Subject<'_>) -> Result<String, serde_json::Error> {
    document(&Check::new(subject))
}

objects! {
    /// One vessel, judged for one trip.
    pub(super) Check(subject: &Subject<'_>) {
        let check = subject.check;
        let places = Places::new(subject.sources);
        let profile = |judged| Profile::new(judged, &subject.words(judged), &places);
        /// The name and version of the format.
        #[schemars(extend("const" = SCHEMA))]
        schema: &'static str = SCHEMA,
        /// The program that wrote it.
        program: Program = Program::new(),
        /// The vessel.
        vessel: Vessel = Vessel::new(&check.vessel, subject.locale),
        /// The trip that was judged.
        trip: Trip = Trip::new(&check.asked),
        /// Which figures were believed.
        trust: Word<Trust> = word(&check.asked.trust),
        /// The verdict.
        verdict: Word<Verdict> = word(&check.verdict),
        /// What it stands on: a rule, or good practice where no rule was checked.
        standing: Word<Standing> = word(&check.standing()),
        /// What is told of the check as a whole.
        notices: Vec<Notice> = notices(&check.notices, subject.vocabulary, subject.locale),
        /// One for each profile that judged the vessel.
        profiles: Vec<Profile> = check.judgements.iter().map(profile).collect(),
        /// What the kit is worth in outcomes, where that was asked.
        #[serde(skip_serializing_if = "Option::is_none")]
        freeing: Option<Freeing> = subject.freeing.as_ref().map(Freeing::new),
    }

    /// What one profile says.
    Profile(judgement: &Judgement, words: &Words<'_>, places: &Places<'_>) {
        let profile = &judgement.profile;
        let inverses = judgement.inverses.as_ref();
        let stretches = inverses.iter().flat_map(|inverses| &inverses.stretches);
        let clashes = inverses.iter().flat_map(|inverses| &inverses.clashes);
        let finding = |finding| Finding::new(finding, words, places);
        #[serde(flatten)]
        edition: Edition = Edition::new(profile),
        /// What the rule is called.
        title: String = profile.title.to_string(),
        /// The publication.
        source: String = profile.source.clone(),
        /// A rule, or good practice.
        standing: Word<Standing> = word(&profile.standing),
        /// Why it judged the vessel.
        why: Why = Why::new(&judgement.why, words),
        /// The days of the trip on which it judged.
        days: Days = Days::new(judgement.days),
        /// The verdict.
        verdict: Word<Verdict> = word(&judgement.verdict),
        /// Until when the kit stays ready.
        ready_until: ReadyUntil = ReadyUntil::new(judgement.ready_until),
        /// How much freeboard the kit could stand; null in an audit.
        good_up_to: Option<GoodUpTo> = inverses.map(|i| GoodUpTo::new(&i.good_up_to, words)),
        /// Freeboards with one verdict, in order.
        stretches: Vec<Stretch> = stretches.map(|one| Stretch::new(one, words)).collect(),
        /// What was found, requirement by requirement.
        findings: Vec<Finding> = judgement.findings.iter().map(finding).collect(),
        /// Requirements that compete for too few tools.
        clashes: Vec<Clash> = clashes.map(|clash| Clash::new(clash, words)).collect(),
        /// The fewest changes that make the kit ready; null in an audit.
        way_to_ready: Option<Way> = inverses.map(|i| Way::of(judgement, &i.way, words)),
        /// Which answers are not whole, since they would take more steps than a check may.
        left_open: Vec<Word<check::Inverse>> = judgement.left_open.iter().map(word).collect(),
    }

    /// Why a profile was used.
    Why(why: &check::Why, words: &Words<'_>) {
        let fact = match why {
            check::Why::MayBind(fact) => Some(fact_code(fact, words.vocabulary)),
            check::Why::Binds | check::Why::Asked | check::Why::Fallback => None,
        };
        /// The stable code.
        code: Word<check::Why> = word(why),
        /// The fact of the vessel that is not known.
        #[serde(skip_serializing_if = "Option::is_none")]
        fact: Option<String> = fact,
        /// For people; its wording may change.
        text: String = words.why(why),
    }

    /// The first and the last day; null where there is no end.
    Days(days: DaySpan) {
        /// The first day.
        from: Option<Day> = days.from.map(day),
        /// The last day.
        until: Option<Day> = days.until.map(day),
    }

    /// Until when a kit stays ready.
    ReadyUntil(until: finding::ReadyUntil) {
        /// `none`: not ready at departure.
        state: Word<finding::ReadyUntil> = word(&until),
        /// The last such day.
        day: Option<Day> = until.day().map(day),
    }

    /// How much freeboard a kit could stand.
    GoodUpTo(up_to: &finding::GoodUpTo, words: &Words<'_>) {
        let limit = limit(up_to);
        /// Whether there is a limit.
        state: Word<finding::GoodUpTo> = word(up_to),
        /// The limit, rounded down in its text.
        length: Option<Quantity> = limit.map(|(length, _)| Quantity::of_length(length, words)),
        /// The requirements that give out there.
        gives_out: Vec<String> = limit.map(|(_, out)| ids(words, out)).unwrap_or_default(),
    }

    /// Freeboards with one verdict.
    Stretch(stretch: &finding::Stretch, words: &Words<'_>) {
        /// The lowest.
        from: Quantity = Quantity::of_freeboard(stretch.from, words),
        /// The highest.
        to: Quantity = Quantity::of_stretch_end(stretch.to, words),
        /// The verdict.
        verdict: Word<Verdict> = word(&stretch.verdict),
        /// The requirements that fail there.
        fails: Vec<String> = ids(words, &stretch.fails),
    }

    /// A finding.
    Finding(finding: &finding::Finding, words: &Words<'_>, places: &Places<'_>) {
        let asked = words.requirement(finding.requirement);
        let tools = finding.serving.iter();
        let at = finding.freeboard;
        /// The id of the requirement.
        requirement: String = words.id(finding.requirement),
        /// What the rule calls it.
        title: String = words.title(finding.requirement),
        /// Whether it counts towards the verdict.
        level: Option<Word<Level>> = asked.map(|asked| word(&asked.level)),
        /// The outcome.
        outcome: Word<Outcome> = word(&finding.outcome),
        /// The tools that serve it.
        tools: Vec<ServingTool> = tools.map(|tool| ServingTool::new(tool, words, places)).collect(),
        /// Why it is not met, or what is missing.
        reasons: Vec<Reason> = reasons(Some(finding), words, places),
        /// Where it is written.
        citation: Option<Citation> = asked.map(|asked| Citation::new(words.profile, asked)),
        /// A note for the reader.
        note: Option<String> = asked.and_then(|asked| asked.note.as_ref()).map(ToString::to_string),
        /// The freeboard at which it is worst.
        freeboard: Option<Quantity> = at.map(|length| Quantity::of_freeboard(length, words)),
        /// The day on which it is worst.
        day: Day = day(finding.day),
        /// What to do about it, for people.
        remedy: Option<String> = words.remedy(finding, &[]),
    }

    /// Where a requirement is written.
    Citation(profile: &profile::Profile, requirement: &profile::Requirement) {
        /// The publication.
        source: String = profile.source.clone(),
        /// The clause.
        clause: String = requirement.clause.clone(),
        /// The law's edition, in words.
        edition: String = profile.edition.clone(),
        /// How it was verified.
        verified: Word<Verified> = word(&requirement.verified),
    }

    /// Requirements that cannot be met together.
    Clash(clash: &finding::Clash, words: &Words<'_>) {
        /// Their ids.
        requirements: Vec<String> = ids(words, &clash.requirements),
        /// The marks of the tools that they compete for.
        tools: Vec<String> = clash.tools.iter().map(|tool| words.mark(*tool).to_owned()).collect(),
        /// For people; its wording may change.
        text: String = words.clash(clash),
    }

    /// The fewest changes that make the kit ready, or open a choice.
    pub(super) Way(state: Word<WayToReady>, fewest: Option<bool>, steps: Vec<Step>) {
        /// Whether changes are needed, or none would do.
        state: Word<WayToReady> = state,
        /// Whether nothing shorter does the same; false: the search was stopped.
        fewest: Option<bool> = fewest,
        /// What to do.
        steps: Vec<Step> = steps,
    }

    /// One change.
    pub(super) Step(
        deed: Action,
        target: Target,
        requirement: String,
        also: Vec<String>,
        why: &[reason::Reason],
        text: String
    ) {
        /// What is to be done.
        deed: Word<Action> = word(&deed),
        /// To what.
        target: Target = target,
        /// The requirement that it meets.
        requirement: String = requirement,
        /// Others that it meets too.
        also: Vec<String> = also,
        /// The codes of the reasons that it takes away.
        reasons: Vec<Word<reason::Reason>> = why.iter().map(word).collect(),
        /// For people; its wording may change.
        text: String = text,
    }

    /// One of several different types.
    pub(super) OfType(index: usize, name: Option<String>) {
        /// Its place in the requirement, from 0.
        index: usize = index,
        /// Its name.
        name: Option<String> = name,
    }
}

/// What a change is made to.
#[derive(JsonSchema, Serialize)]
#[serde(rename_all = "kebab-case")]
pub(super) enum Target {
    Tool(String),
    Type(OfType),
    Role(Option<String>),
    Gear(String),
    Vessel(String),
}

/// What is told of a check as a whole.
pub(super) fn notices(
    notices: &[check::Notice],
    vocabulary: &Vocabulary,
    locale: Locale,
) -> Vec<Notice> {
    notices.iter().map(|notice| Notice::new(notice, vocabulary, locale)).collect()
}

/// Why a finding is not met, or what is missing.
pub(super) fn reasons(
    finding: Option<&finding::Finding>,
    words: &Words<'_>,
    places: &Places<'_>,
) -> Vec<Reason> {
    let reasons = finding.into_iter().flat_map(|finding| &finding.reasons);
    reasons.map(|because| Reason::of(because, words, places)).collect()
}

/// A freeboard that is the limit, and what gives out there.
fn limit(up_to: &finding::GoodUpTo) -> Option<(Length, &[usize])> {
    match up_to {
        finding::GoodUpTo::Freeboard { length, gives_out }
        | finding::GoodUpTo::OnlyBelow { length, gives_out } => Some((*length, gives_out)),
        finding::GoodUpTo::None | finding::GoodUpTo::NoLimit => None,
    }
}

impl Way {
    /// The shortest way to ready.
    pub(super) fn of(judgement: &Judgement, way: &WayToReady, words: &Words<'_>) -> Self {
        let fewest = match way {
            WayToReady::Already | WayToReady::None => None,
            WayToReady::Steps { fewest, .. } => Some(*fewest),
        };
        let steps = way.steps().iter().map(|step| Step::of(judgement, step, words));
        Self::new(word(way), fewest, steps.collect())
    }

    /// The same with the freeboard measured first, for a capability.
    pub(super) fn once_measured(self, vessel: &str, capability: String, text: &str) -> Self {
        let why = [reason::Reason::VesselFactUnknown { fact: VesselFact::Freeboard }];
        let target = Target::Vessel(vessel.to_owned());
        let first =
            Step::new(Action::Measure, target, capability, Vec::new(), &why, text.to_owned());
        let steps = std::iter::once(first).chain(self.steps).collect();
        let way = WayToReady::Steps { steps: Vec::new(), fewest: true };
        Self::new(word(&way), self.fewest.or(Some(true)), steps)
    }
}

impl Step {
    fn of(judgement: &Judgement, step: &finding::Step, words: &Words<'_>) -> Self {
        let requirement = step.requirement;
        let text = words.step_of(judgement, step);
        let target = match &step.target {
            finding::Target::Tool(tool) => Target::Tool(words.mark(*tool).to_owned()),
            finding::Target::Type(index) => {
                Target::Type(OfType::new(*index, words.type_name(requirement, *index)))
            }
            finding::Target::Role(role) => Target::Role(role.clone()),
            finding::Target::Gear(piece) => Target::Gear(piece.clone()),
            finding::Target::Vessel => Target::Vessel(words.vessel.name.clone()),
        };
        let also = ids(words, &step.also);
        Self::new(step.action, target, words.id(requirement), also, &step.reasons, text)
    }
}

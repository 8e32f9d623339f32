//! What a kit leaves open, in the trade's words.
//!
//! Imports `options`, `model` and `measure` only. The reasons and steps are
//! those of every check.

mod told;

pub(crate) use told::{
    CANNOT_TELL, HOOKS_NOT_SAID, MEASURE_RAIL, NO_LIFT, NO_OFFER, NOT_AT_EVERY_RAIL, NOTHING_OPENS,
    NOTHING_OPENS_ANY, RAIL_IS_HIGH, STEPS_ON_CARD, at_stations, brief, case, cautions_of,
    condition, cuts_line, even_so, foreign_hook, get_first, if_it_fails, minded, no_way,
    nothing_opens, without_never,
};

use super::figures;
use super::pages::{capital, sentence};
use crate::measure::{Answer, Rounding, System};
use crate::model::check::Judgement;
use crate::model::finding::{Because, Finding, Outcome, Step, Target, WayToReady};
use crate::model::options::{Answered, Choice, OwnHooks, Rail, Standing, Worth};
use crate::model::reason::Reason;
use crate::model::technique::{GivenBy, Practice, Situation};
use crate::report::subject::OptionsShown as Shown;
use crate::report::words::{Words, taken_from};

/// Where a card and a page say what they are.
pub(crate) const FOOT: &str = "An aid for trained crews, no legal advice and no advice on a \
    single animal: training, permit, local law and a veterinarian's word come first. No \
    technique is without danger for crew and animal.";

/// What stands behind tools that reach the water and no more.
const SHORT: &str = "short of the published length";

/// What stands behind tools that cut the leaders and not every line.
const LEADERS_ONLY: &str = "cuts no line as thick as the thickest";

/// What stands behind tools that reach the water, of which a figure is not
/// known for certain.
const UNSURE: &str = "reaches the water, the rest is not known";

/// Why a situation says that nothing is open.
pub(crate) const NO_WAY: &str = "NO WAY AT ALL with this kit";

/// Something that a choice wants and does not have, or not for certain.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct Wanting {
    /// The requirement among those of the choice's tools; none for a rail.
    pub(crate) requirement: Option<usize>,
    /// The capability: `A dipnet that reaches the water`.
    pub(crate) what: String,
    /// Whether nobody can tell.
    pub(crate) open: bool,
    /// Why, in one sentence part: `LC-1: 1/2 in too short for the rail`.
    pub(crate) why: String,
}

/// How a choice is called: its techniques in a row.
pub(crate) fn choice(practice: &Practice, techniques: &[usize]) -> String {
    let mut titles = techniques.iter().map(|t| practice.techniques[*t].title.to_string());
    let first = titles.next().unwrap_or_default();
    titles.fold(first, |so_far, next| format!("{so_far}, then {}", small(&next)))
}

/// The text with a small letter at its start, unless more capitals follow.
pub(crate) fn small(text: &str) -> String {
    let mut letters = text.chars();
    match letters.next() {
        Some(first) if !letters.clone().next().is_some_and(char::is_uppercase) => {
            first.to_lowercase().chain(letters).collect()
        }
        _ => text.to_owned(),
    }
}

/// How a situation stands, in a word or two.
pub(crate) fn standing(standing: Standing) -> &'static str {
    match standing {
        Standing::First => "first choice",
        Standing::Fallback => "fallback",
        Standing::Unclear => "can't tell",
        Standing::Nothing => "nothing",
    }
}

/// What a kit is worth, in one sentence; every number stands by itself.
pub(crate) fn worth(worth: &Worth) -> String {
    let all = worth.first + worth.fallback + worth.unclear + worth.nothing;
    let mut parts = vec![format!("first choice open in {} of {all} situations", worth.first)];
    let rest = [
        (worth.fallback, "only a fallback in"),
        (worth.unclear, "can't tell in"),
        (worth.nothing, "nothing in"),
    ];
    let told = rest.iter().filter(|(number, _)| *number > 0);
    parts.extend(told.map(|(number, what)| format!("{what} {number}")));
    let left_out = match worth.left_out {
        0 => String::new(),
        1 => " (1 left out: no such hook aboard)".to_owned(),
        many => format!(" ({many} left out: no such hook aboard)"),
    };
    format!("{}{left_out}", parts.join(", "))
}

impl<'a> Shown<'a> {
    /// The title of a situation with where the animal is, if it lies on deck.
    pub(crate) fn placed(&self, situation: &Situation) -> String {
        let facts = self.practice.facts.iter().position(|fact| fact.id == "where");
        let words = facts.and_then(|fact| Some((fact, situation.when.words(fact)?)));
        let deck = words.is_some_and(|(fact, words)| {
            words.iter().all(|word| self.practice.facts[fact].words[*word].word == "aboard")
        });
        let title = small(&situation.title.to_string());
        if deck { format!("on deck, {title}") } else { title }
    }

    /// The marks of the tools that an open choice uses: `DN-1, MC-1`. Empty
    /// where it needs none.
    pub(crate) fn uses(&self, choice: &'a Choice) -> String {
        let Some(judgement) = choice.used() else { return String::new() };
        let words = self.words(judgement);
        let texts = judgement.findings.iter().map(|f| words.all_that_serve(f));
        let short = choice.is_short().then(|| short(choice).to_owned());
        let texts: Vec<String> = texts.filter(|text| !text.is_empty()).chain(short).collect();
        texts.join(", ")
    }

    /// What a choice that is not open wants.
    pub(crate) fn wanting(&self, choice: &'a Choice) -> Vec<Wanting> {
        let rails = choice.rails.iter().filter(|rail| rail.answer != Answer::Yes);
        let mut all: Vec<Wanting> = rails.map(|rail| self.of_rail(rail)).collect();
        let Some(judgement) = &choice.tools else { return all };
        let words = self.words(judgement);
        for finding in judgement.findings.iter().filter(|f| f.outcome != Outcome::Met) {
            all.push(Wanting {
                requirement: Some(finding.requirement),
                what: words.title(finding.requirement),
                open: finding.outcome == Outcome::CannotTell,
                why: reason(&words, judgement, finding),
            });
        }
        all
    }

    fn of_rail(&self, rail: &Rail) -> Wanting {
        let capability = &self.practice.capabilities[rail.capability];
        let why = match (&capability.given_by, rail.freeboard) {
            (GivenBy::LowRail { figure, .. }, Some(highest)) => {
                let units = self.units;
                let own = figures::freeboard(highest, self.system(), units);
                let most = figure.show(units, Rounding::Down);
                match rail.answer {
                    Answer::Unknown => format!("readings of {own} dispute {most}"),
                    _ => format!("freeboard {own}, more than {most}"),
                }
            }
            _ if self.options.vessel.freeboard.from != self.practice.freeboard_from => {
                let from = taken_from(self.options.vessel.freeboard.from);
                let asked = taken_from(self.practice.freeboard_from);
                format!("the freeboard is taken from {from}, not from {asked}")
            }
            _ => "the freeboard of a hauling station is not known".to_owned(),
        };
        let what = capability.title.to_string();
        Wanting { requirement: None, what, open: rail.answer == Answer::Unknown, why }
    }

    /// What opens a choice that is not open, step by step; empty where
    /// nothing aboard or bought would.
    pub(crate) fn opens(&self, choice: &'a Choice) -> Vec<String> {
        if choice.rails.iter().any(|rail| rail.answer == Answer::No) {
            return Vec::new();
        }
        let unknown_rail = choice.rails.iter().any(|rail| rail.answer == Answer::Unknown);
        let mut steps = Vec::new();
        if unknown_rail {
            steps.push(MEASURE_RAIL.to_owned());
        }
        let Some(judgement) = &choice.tools else { return steps };
        let way = judgement.inverses.as_ref().map(|inverses| &inverses.way);
        let Some(WayToReady::Steps { steps: own, .. }) = way else { return steps };
        let words = self.words(judgement);
        steps.extend(
            own.iter()
                .map(|step| words.step(step, words.freeboard_for(judgement, step.requirement))),
        );
        steps
    }

    /// The single tool that would lift most situations: what to do, in the
    /// imperative; none where no single tool lifts any.
    pub(crate) fn lift(&self) -> Option<String> {
        let lift = self.options.lift.as_ref()?;
        let words = self.words(&lift.judgement);
        let step: &Step = &lift.step;
        Some(words.step(step, words.freeboard_for(&lift.judgement, step.requirement)))
    }

    /// What that lifts: `5 situations, 3 of them to their first choice`.
    pub(crate) fn lifts(&self) -> Option<String> {
        let lift = self.options.lift.as_ref()?;
        let first = lift.lifted.iter().filter(|l| l.to == 0).count();
        let all = super::fleet::count(lift.lifted.len(), "situation");
        Some(match first {
            0 => all,
            _ if first == lift.lifted.len() => format!("{all} to the first choice"),
            _ => format!("{all}, {first} of them to the first choice"),
        })
    }

    /// What it costs: item, supplier, price; none without a catalogue that
    /// has it.
    pub(crate) fn price(&self) -> Option<String> {
        let priced = self.options.lift.as_ref()?.price.as_ref()?;
        let catalogue = self.catalogues.get(priced.catalogue)?;
        let item = catalogue.items.get(priced.item)?;
        let packs = match (priced.packs, item.pack) {
            (1, 1) => String::new(),
            (1, pack) => format!(" for a pack of {pack}"),
            (pieces, 1) => format!(" for {pieces} of it"),
            (packs, pack) => format!(" for {packs} packs of {pack}"),
        };
        let lead = match item.lead {
            0 => String::new(),
            1 => ", delivered in 1 day".to_owned(),
            days => format!(", delivered in {days} days"),
        };
        let holds = item.holds.map(|day| format!(", price through {day}")).unwrap_or_default();
        Some(format!(
            "{}, {} of {}, {} {}{packs}, without delivery and tax{lead}{holds}",
            item.description,
            item.number,
            catalogue.supplier,
            priced.price.show(catalogue.currency),
            catalogue.currency
        ))
    }

    /// A word where the vessel's own hooks cannot make a situation arise.
    pub(crate) fn hooks(&self, answered: &Answered) -> Option<&'static str> {
        match answered.hooks {
            OwnHooks::Arises => None,
            OwnHooks::NoneAboard => Some("no such hook aboard"),
            OwnHooks::NotSaid => Some("hooks aboard not known"),
        }
    }

    fn system(&self) -> System {
        let readings = self.options.vessel.freeboard.stations.iter().flat_map(|s| &s.readings);
        readings.map(|reading| reading.high.system).next().unwrap_or(System::Customary)
    }
}

/// In what the tools of a choice are short.
fn short(choice: &Choice) -> &'static str {
    let findings = choice.tools.iter().flat_map(|judgement| &judgement.findings);
    let mut reasons = findings.flat_map(|finding| &finding.reasons);
    let too_short = |because: &Because| matches!(because.reason, Reason::TooShortForRail { .. });
    match (choice.answer, reasons.any(too_short)) {
        (_, true) => SHORT,
        (Answer::Unknown, false) => UNSURE,
        _ => LEADERS_ONLY,
    }
}

/// Why a finding is not met: of the tool that the shortest way sees to, if it
/// sees to one, else of the nearest.
fn reason(words: &Words<'_>, judgement: &Judgement, finding: &Finding) -> String {
    let way = judgement.inverses.as_ref().map(|inverses| &inverses.way);
    let steps = match way {
        Some(WayToReady::Steps { steps, .. }) => steps.as_slice(),
        _ => &[],
    };
    let for_it = |step: &&Step| {
        step.requirement == finding.requirement || step.also.contains(&finding.requirement)
    };
    let mut tools = steps.iter().filter(for_it).filter_map(|step| match step.target {
        Target::Tool(tool) => Some(tool),
        _ => None,
    });
    let tells = |tool: &usize| finding.reasons.iter().any(|because| because.tool == Some(*tool));
    let first = || finding.reasons.first().and_then(|because| because.tool);
    let Some(tool) = tools.find(tells).or_else(first) else {
        return words.first_reason(finding);
    };
    // Everything that is wrong with it: mending one thing alone may not do.
    let of_it = finding.reasons.iter().filter(|because| because.tool == Some(tool));
    let texts: Vec<String> = of_it.map(|because| words.reason_of(because)).collect();
    format!("{}: {}", words.lot(tool), texts.join("; "))
}

/// A list of steps as one sentence.
pub(crate) fn steps(steps: &[String]) -> String {
    sentence(&capital(&steps.join("; ")))
}

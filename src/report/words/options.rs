//! What a kit leaves open, in the trade's words.
//!
//! Imports `options`, `model` and `measure` only. The reasons and steps are
//! those of every check.

mod told;

pub(crate) use told::{
    at_stations, brief, case, cautions_of, condition, even_so, if_it_fails, minded, no_way,
    nothing_opens, without_never,
};

use super::pages::{capital, sentence};
use super::{Words, figures, system_of, taken_from};
use crate::measure::{Answer, Rounding};
use crate::model::check::Judgement;
use crate::model::finding::Finding;
use crate::model::options::{Answered, Choice, Lack, Opening, OwnHooks, Rail, Worth};
use crate::model::technique::{GivenBy, Situation};
use crate::report::Locale;
use crate::report::subject::OptionsShown as Shown;
use std::fmt::Display;

/// Something that a choice wants and does not have, or not for certain.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct Wanting {
    /// The capability: `A dipnet that reaches the water`.
    pub(crate) what: String,
    /// Whether nobody can tell.
    pub(crate) open: bool,
    /// Why, in one sentence part: `LC-1: 1/2 in too short for the rail`.
    pub(crate) why: String,
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

/// What a kit is worth, in one sentence; every number stands by itself.
pub(crate) fn worth(worth: &Worth, locale: Locale) -> String {
    let some = |number: usize, told: fn(Locale, &dyn Display) -> String| {
        (number > 0).then(|| told(locale, &number))
    };
    let rest = [
        some(worth.fallback, Locale::options_only_a_fallback),
        some(worth.unclear, Locale::options_cannot_tell_in),
        some(worth.nothing, Locale::options_nothing_in),
    ];
    let first = locale.options_worth(&worth.first, &worth.counted());
    let told = std::iter::once(first).chain(rest.into_iter().flatten());
    let told = told.collect::<Vec<_>>().join(", ");
    match worth.left_out {
        0 => told,
        left_out => locale.options_worth_left_out(&told, &left_out),
    }
}

impl<'a> Shown<'a> {
    /// How a choice is called: its techniques in a row.
    pub(crate) fn choice(&self, techniques: &[usize]) -> String {
        let titles = techniques.iter().map(|t| self.practice.techniques[*t].title.to_string());
        titles
            .reduce(|so_far, next| self.locale.options_then(&so_far, &small(&next)))
            .unwrap_or_default()
    }

    /// The title of a situation with where the animal is, if it lies on deck.
    pub(crate) fn placed(&self, situation: &Situation) -> String {
        let facts = self.practice.facts.iter().position(|fact| fact.id == "where");
        let words = facts.and_then(|fact| Some((fact, situation.when.words(fact)?)));
        let deck = words.is_some_and(|(fact, words)| {
            words.iter().all(|word| self.practice.facts[fact].words[*word].word == "aboard")
        });
        let title = small(&situation.title.to_string());
        if deck { self.locale.options_on_deck_with(&title) } else { title }
    }

    /// The marks of the tools that an open choice uses: `DN-1, MC-1`. Empty
    /// where it needs none.
    pub(crate) fn uses(&self, choice: &'a Choice) -> String {
        let Some(judgement) = choice.used() else { return String::new() };
        let words = self.words(judgement);
        let texts = judgement.findings.iter().map(|f| words.all_that_serve(f));
        let short = choice.is_short().then(|| self.short(choice).to_owned());
        let texts: Vec<String> = texts.filter(|text| !text.is_empty()).chain(short).collect();
        texts.join(", ")
    }

    /// A way with the tools that it uses, if any.
    pub(crate) fn with_tools(&self, way: String, choice: &'a Choice) -> String {
        match self.uses(choice).as_str() {
            "" => way,
            uses => format!("{way} ({uses})"),
        }
    }

    /// In what the tools of a choice are short.
    fn short(&self, choice: &Choice) -> &'static str {
        match choice.answer {
            _ if choice.is_too_short() => self.locale.options_too_short(),
            Answer::Unknown => self.locale.options_unsure(),
            _ => self.locale.options_leaders_only(),
        }
    }

    /// What a choice that is not open wants.
    pub(crate) fn wanting(&self, choice: &'a Choice) -> Vec<Wanting> {
        choice.lacks().map(|lack| self.lack(choice, lack)).collect()
    }

    /// One thing that a choice wants.
    pub(crate) fn lack(&self, choice: &'a Choice, lack: Lack<'_>) -> Wanting {
        let (what, why) = match (lack, &choice.tools) {
            (Lack::Rail(rail), _) => {
                (self.practice.capabilities[rail.capability].title.to_string(), self.of_rail(rail))
            }
            (Lack::Tool(finding), Some(judgement)) => {
                let words = self.words(judgement);
                (words.title(finding.requirement), reason(&words, judgement, finding))
            }
            (Lack::Tool(_), None) => Default::default(),
        };
        Wanting { what, open: lack.is_open(), why }
    }

    fn of_rail(&self, rail: &Rail) -> String {
        let capability = &self.practice.capabilities[rail.capability];
        let locale = self.locale;
        match (&capability.given_by, rail.freeboard) {
            (GivenBy::LowRail { figure, .. }, Some(highest)) => {
                let own = figures::freeboard(highest, system_of(&self.options.vessel), locale);
                let most = figure.show(locale.units, Rounding::Down);
                match rail.answer {
                    Answer::Unknown => locale.options_rail_disputed(&own, &most),
                    _ => locale.options_rail_higher(&own, &most),
                }
            }
            _ if self.options.vessel.freeboard.from != self.practice.freeboard_from => {
                let from = taken_from(self.options.vessel.freeboard.from, locale);
                let asked = taken_from(self.practice.freeboard_from, locale);
                locale.options_rail_from_elsewhere(&from, &asked)
            }
            _ => locale.options_rail_unknown().to_owned(),
        }
    }

    /// What opens a choice that is not open, step by step; empty where
    /// nothing aboard or bought would.
    pub(crate) fn opens(&self, choice: &'a Choice) -> Vec<String> {
        choice.steps().into_iter().filter_map(|step| self.opening(choice, step)).collect()
    }

    /// One step that opens a choice, in the imperative.
    pub(crate) fn opening(&self, choice: &'a Choice, step: Opening<'_>) -> Option<String> {
        match step {
            Opening::Measure(_) => Some(self.locale.options_measure_rail().to_owned()),
            Opening::Step(step) => {
                let judgement = choice.tools.as_ref()?;
                Some(self.words(judgement).step_of(judgement, step))
            }
        }
    }

    /// The single tool that would lift most situations: what to do, in the
    /// imperative; none where no single tool lifts any.
    pub(crate) fn lift(&self) -> Option<String> {
        let lift = self.options.lift.as_ref()?;
        Some(self.words(&lift.judgement).step_of(&lift.judgement, &lift.step))
    }

    /// What that lifts: `5 situations, 3 of them to their first choice`.
    pub(crate) fn lifts(&self) -> Option<String> {
        let lift = self.options.lift.as_ref()?;
        let all = lift.lifted.len();
        Some(match lift.to_first() {
            0 => self.locale.options_lifts(all),
            first if first == all => self.locale.options_lifts_to_first(all),
            first => self.locale.options_lifts_some_to_first(all, &first),
        })
    }

    /// What it costs: item, supplier, price; none without a catalogue that
    /// has it.
    pub(crate) fn price(&self) -> Option<String> {
        let priced = self.options.lift.as_ref()?.price.as_ref()?;
        let catalogue = self.catalogues.get(priced.catalogue)?;
        let item = catalogue.items.get(priced.item)?;
        let (locale, currency) = (self.locale, catalogue.currency);
        let price = format!("{} {currency}", priced.price.show(currency));
        let price = match (priced.packs, item.pack) {
            (1, 1) => price,
            (1, pack) => locale.options_price_of_pack(&price, &pack),
            (pieces, 1) => locale.options_price_of_pieces(&price, &pieces),
            (packs, pack) => locale.options_price_of_packs(&price, &packs, &pack),
        };
        let mut parts = vec![
            locale.options_offer(&item.description, &item.number, &catalogue.supplier),
            price,
            locale.options_without_delivery().to_owned(),
        ];
        parts.extend((item.lead > 0).then(|| locale.options_delivered_in(item.lead)));
        parts.extend(item.holds.map(|day| locale.options_price_through(&day)));
        Some(parts.join(", "))
    }

    /// A word where the vessel's own hooks cannot make a situation arise.
    pub(crate) fn hooks(&self, answered: &Answered) -> Option<&'static str> {
        match answered.hooks {
            OwnHooks::Arises => None,
            OwnHooks::NoneAboard => Some(self.locale.options_no_such_hook()),
            OwnHooks::NotSaid => Some(self.locale.options_hooks_not_known()),
        }
    }
}

/// Why a finding is not met: everything that is wrong with the tool by which
/// it is told, since mending one thing alone may not do.
fn reason(words: &Words<'_>, judgement: &Judgement, finding: &Finding) -> String {
    let Some(tool) = judgement.tool_told(finding) else { return words.first_reason(finding) };
    let of_it = finding.reasons.iter().filter(|because| because.tool == Some(tool));
    let texts: Vec<String> = of_it.map(|because| words.reason_of(because)).collect();
    format!("{}: {}", words.lot(tool), texts.join("; "))
}

/// A list of steps as one sentence.
pub(crate) fn steps(steps: &[String]) -> String {
    sentence(&capital(&steps.join("; ")))
}

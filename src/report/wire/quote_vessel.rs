//! One vessel's part in the JSON of a quote.
//!
//! Imports `quote`, what lies below, and words. Marks before the order are
//! those of the vessel's own list, marks after it those of the kit that was
//! judged.

use super::check::{notices, reasons};
use super::entries;
use super::form::{Day, Word, day, objects, sparse, word};
use super::parts::{Edition, Item, Money, Notice, Trip, Vessel};
use super::reason::Reason;
use crate::model::catalogue::Gives;
use crate::model::check::{Check, Judgement};
use crate::model::finding::{Outcome, Verdict};
use crate::model::profile::Level;
use crate::quote::{self, Cured, Offer, Unmet, VesselQuote};
use crate::report::Locale;
use crate::report::places::Places;
use crate::report::subject::{QuoteShown, finding, requirement};
use crate::report::words::Words;
use crate::report::words::quote as said;
use serde_json::Value;

impl Item {
    /// The item of an offer.
    pub(super) fn of(shown: &QuoteShown<'_>, offer: Offer) -> Self {
        Self::new(shown.catalogue(offer), shown.item(offer))
    }
}

/// An amount in the currency of a quote.
pub(super) fn money(shown: &QuoteShown<'_>, amount: crate::measure::Money) -> Money {
    Money::new(amount, shown.quote.currency)
}

objects! {
    /// One vessel's part.
    pub(super) VesselOfQuote(shown: &QuoteShown<'_>, index: usize) {
        let vessel = &shown.quote.vessels[index];
        let (before, after) = (&vessel.before, &vessel.after);
        let profile = |judged| ProfileOfQuote::new(before, judged);
        let lines = 0..vessel.lines.len();
        let unmet = vessel.unmet.iter();
        /// The file, as it was given.
        file: String = vessel.file.to_string(),
        /// The name.
        name: String = before.vessel.name.clone(),
        /// The vessel.
        vessel: Vessel = Vessel::new(&before.vessel, shown.locale),
        /// The trip that was judged.
        trip: TripOfQuote = TripOfQuote::new(shown, index),
        /// Before the order.
        verdict_before: Word<Verdict> = word(&before.verdict),
        /// After it, by the engine.
        verdict_after: Word<Verdict> = word(&after.verdict),
        /// What each profile said.
        profiles: Vec<ProfileOfQuote> = after.judgements.iter().map(profile).collect(),
        /// What is told of the check after the order.
        notices: Vec<Notice> = notices(&after.notices, shown.vocabulary, shown.locale),
        /// What it gets.
        lines: Vec<LineOfQuote> = lines.map(|line| LineOfQuote::new(shown, vessel, line)).collect(),
        /// What stays open.
        open: Vec<Open> = unmet.map(|unmet| Open::new(shown, vessel, unmet)).collect(),
    }

    /// The days of a trip.
    TripOfQuote(shown: &QuoteShown<'_>, index: usize) {
        let vessel = &shown.quote.vessels[index];
        #[serde(flatten)]
        days: Trip = Trip::new(&vessel.before.asked),
        /// False: taken to be the day of the order.
        departure_known: bool = !shown.undated.contains(&index),
        /// Whether the vessel left before the order.
        before_order: bool = shown.left_before(vessel),
    }

    /// What one profile said.
    ProfileOfQuote(before: &Check, judgement: &Judgement) {
        let profile = &judgement.profile;
        let was = before.judgements.iter().find(|was| was.profile.id == profile.id);
        #[serde(flatten)]
        edition: Edition = Edition::new(profile),
        /// The publication.
        source: String = profile.source.clone(),
        /// Before the order.
        verdict_before: Option<Word<Verdict>> = was.map(|was| word(&was.verdict)),
        /// After it.
        verdict_after: Word<Verdict> = word(&judgement.verdict),
    }

    /// A requirement, as it is cited.
    pub(super) RequirementOfQuote(check: &Check, cured: Cured) {
        let asked = requirement(check, cured);
        /// The id of the profile.
        profile: String = check.judgements[cured.judgement].profile.id.clone(),
        /// The id of the requirement.
        requirement: String = asked.id.clone(),
        /// What the rule calls it.
        title: String = asked.title.to_string(),
        /// The clause.
        clause: String = asked.clause.clone(),
        /// Whether it counts towards the verdict.
        level: Word<Level> = word(&asked.level),
    }

    /// Something that a vessel gets.
    LineOfQuote(shown: &QuoteShown<'_>, vessel: &VesselQuote, line: usize) {
        let bought = &vessel.lines[line];
        let (before, after) = (&vessel.before, &vessel.after);
        let tools = bought.tools.iter().filter_map(|tool| after.vessel.kit.get(*tool));
        let on = bought.on.and_then(|tool| before.vessel.kit.get(tool));
        let cited = |cured: &Cured| RequirementOfQuote::new(after, *cured);
        #[serde(flatten)]
        item: Item = Item::of(shown, bought.offer),
        /// What it gives.
        gives: Word<Gives> = word(&shown.item(bought.offer).gives),
        /// How many pieces.
        pieces: u32 = bought.pieces,
        /// The mark of the tool worked on.
        on: Option<String> = on.map(|tool| tool.mark.clone()),
        /// Of the tools that come of it.
        marks: Vec<String> = tools.map(|tool| tool.mark.clone()).collect(),
        /// What it meets.
        cures: Vec<RequirementOfQuote> = bought.cures.iter().map(cited).collect(),
        /// The day of delivery.
        arrives: Day = day(bought.arrives),
        /// The day of departure.
        departure: Day = day(after.asked.departure),
        /// These pieces' part of the packs' price, rounded: to compare by, not to add up.
        share: Money = money(shown, bought.share),
        /// What to write into the vessel's `kit:`.
        #[schemars(schema_with = "entries::schema")]
        entries: Vec<Value> = entries::entries(shown.vocabulary, vessel, line),
    }

    /// What stays open.
    Open(shown: &QuoteShown<'_>, vessel: &VesselQuote, unmet: &Unmet) {
        let (after, cured) = (&vessel.after, unmet.finding);
        let words = shown.words(after, cured.judgement);
        let found = finding(after, cured).filter(|finding| finding.outcome != Outcome::Met);
        let nearest = unmet.nearest.as_ref();
        #[serde(flatten)]
        requirement: RequirementOfQuote = RequirementOfQuote::new(after, cured),
        /// The outcome after the order.
        outcome: Option<Word<Outcome>> = found.map(|finding| word(&finding.outcome)),
        /// Why it is not met, or what is missing.
        reasons: Vec<Reason> = reasons(found, &words, &Places::new(&[])),
        /// What to do about it, for people.
        remedy: Option<String> = found.and_then(|finding| words.remedy(finding, &[])),
        /// The offer that comes nearest.
        nearest: Option<Nearest> = nearest.map(|nearest| Nearest::new(shown, nearest, &words)),
    }

    /// The offer that comes nearest.
    Nearest(shown: &QuoteShown<'_>, nearest: &quote::Nearest, words: &Words<'_>) {
        let lacks = nearest.lacks.iter();
        #[serde(flatten)]
        item: Item = Item::of(shown, nearest.offer),
        /// What it lacks.
        lacks: Vec<Reason> = lacks.map(|reason| Reason::new(reason, None, words)).collect(),
        /// What else stands in the way.
        hindrances: Vec<Hindrance> = nearest.hindrances.iter().map(|one| Hindrance::new(one, shown.locale)).collect(),
    }

    /// Something that stands in the way of an offer.
    Hindrance(hindrance: &quote::Hindrance, locale: Locale) {
        /// The stable code.
        code: Word<quote::Hindrance> = word(hindrance),
        #[serde(flatten)]
        facts: HindranceFacts = hindrance_facts(*hindrance),
        /// For people; its wording may change.
        text: String = said::hindrance(*hindrance, locale),
    }
}

sparse! {
    // What a hindrance speaks of.
    HindranceFacts {
        /// So many are left.
        packs: u32,
        /// The day of delivery.
        arrives: Day,
        /// So many too late.
        days: u32,
        /// The last day on which the price held.
        held: Day,
    }
}

fn hindrance_facts(hindrance: quote::Hindrance) -> HindranceFacts {
    let none = HindranceFacts::default();
    match hindrance {
        quote::Hindrance::OutOfStock { packs } => HindranceFacts { packs: Some(packs), ..none },
        quote::Hindrance::Late { arrives, days } => {
            HindranceFacts { arrives: Some(day(arrives)), days: Some(days), ..none }
        }
        quote::Hindrance::PriceLapsed { held } => HindranceFacts { held: Some(day(held)), ..none },
    }
}

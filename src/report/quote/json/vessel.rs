//! One vessel's part in the JSON of a quote.
//!
//! Imports `quote` and `model`. Marks before the order are those of the
//! vessel's own list, marks after it those of the kit that was judged.

use super::super::{Shown, entries, finding, requirement};
use super::MoneyJson;
use super::basket::ItemJson;
use crate::model::catalogue::Gives;
use crate::model::check::{Check, Notice};
use crate::model::finding::Outcome;
use crate::quote::{Bought, Cured, Hindrance, Nearest, Unmet, VesselQuote};
use crate::report::Subject;
use crate::report::audit::csv::level;
use crate::report::json::{NoticeJson, ReasonJson, VesselJson, outcome, verdict};
use crate::report::places::Places;
use crate::report::words;
use serde::Serialize;
use serde_json::Value;

#[derive(Serialize)]
pub(super) struct VesselQuoteJson {
    file: String,
    name: String,
    vessel: VesselJson,
    trip: TripJson,
    verdict_before: &'static str,
    verdict_after: &'static str,
    profiles: Vec<ProfileJson>,
    notices: Vec<NoticeJson>,
    lines: Vec<LineJson>,
    open: Vec<OpenJson>,
}

#[derive(Serialize)]
struct TripJson {
    departure: String,
    r#return: String,
    departure_known: bool,
    before_order: bool,
}

#[derive(Serialize)]
struct ProfileJson {
    id: String,
    rule: String,
    edition: String,
    encoding: u32,
    encoded: bool,
    source: String,
    verdict_before: Option<&'static str>,
    verdict_after: &'static str,
}

/// A requirement, as it is cited.
#[derive(Serialize)]
pub(super) struct RequirementJson {
    profile: String,
    requirement: String,
    title: String,
    clause: String,
    level: &'static str,
}

#[derive(Serialize)]
struct LineJson {
    #[serde(flatten)]
    item: ItemJson,
    gives: &'static str,
    pieces: u32,
    on: Option<String>,
    marks: Vec<String>,
    cures: Vec<RequirementJson>,
    arrives: String,
    departure: String,
    share: MoneyJson,
    entries: Vec<Value>,
}

#[derive(Serialize)]
struct OpenJson {
    #[serde(flatten)]
    requirement: RequirementJson,
    outcome: Option<&'static str>,
    reasons: Vec<ReasonJson>,
    remedy: Option<String>,
    nearest: Option<NearestJson>,
}

#[derive(Serialize)]
struct NearestJson {
    #[serde(flatten)]
    item: ItemJson,
    lacks: Vec<ReasonJson>,
    hindrances: Vec<HindranceJson>,
}

#[derive(Default, Serialize)]
struct HindranceJson {
    code: &'static str,
    #[serde(skip_serializing_if = "Option::is_none")]
    packs: Option<u32>,
    #[serde(skip_serializing_if = "Option::is_none")]
    arrives: Option<String>,
    #[serde(skip_serializing_if = "Option::is_none")]
    days: Option<u32>,
    #[serde(skip_serializing_if = "Option::is_none")]
    held: Option<String>,
    text: String,
}

impl VesselQuoteJson {
    pub(super) fn new(shown: &Shown<'_>, index: usize, vessel: &VesselQuote) -> Self {
        let (before, after) = (&vessel.before, &vessel.after);
        let (vocabulary, units) = (shown.vocabulary, shown.units);
        let notice = |notice: &Notice| NoticeJson::new(notice, vocabulary);
        Self {
            file: vessel.file.to_string(),
            name: before.vessel.name.clone(),
            vessel: VesselJson::new(&Subject {
                check: before,
                vocabulary,
                sources: &[],
                units,
                freeing: None,
            }),
            trip: TripJson {
                departure: before.asked.departure.to_string(),
                r#return: before.asked.back.to_string(),
                departure_known: !shown.undated.contains(&index),
                before_order: shown.left_before(vessel),
            },
            verdict_before: verdict(before.verdict),
            verdict_after: verdict(after.verdict),
            profiles: profiles(before, after),
            notices: after.notices.iter().map(notice).collect(),
            lines: (0..vessel.lines.len()).map(|line| LineJson::new(shown, vessel, line)).collect(),
            open: vessel.unmet.iter().map(|unmet| OpenJson::new(shown, vessel, unmet)).collect(),
        }
    }
}

fn profiles(before: &Check, after: &Check) -> Vec<ProfileJson> {
    let was = |id: &str| before.judgements.iter().find(|judged| judged.profile.id == id);
    let judgements = after.judgements.iter().map(|judgement| {
        let profile = &judgement.profile;
        ProfileJson {
            id: profile.id.clone(),
            rule: profile.rule.clone(),
            edition: profile.edition.clone(),
            encoding: profile.encoding,
            encoded: profile.encoded,
            source: profile.source.clone(),
            verdict_before: was(&profile.id).map(|judgement| verdict(judgement.verdict)),
            verdict_after: verdict(judgement.verdict),
        }
    });
    judgements.collect()
}

impl RequirementJson {
    pub(super) fn new(shown: &Shown<'_>, check: &Check, cured: Cured) -> Self {
        let words = shown.words(check, cured.judgement);
        let asked = requirement(check, cured);
        Self {
            profile: words.profile.id.clone(),
            requirement: asked.id.clone(),
            title: asked.title.to_string(),
            clause: asked.clause.clone(),
            level: level(asked.level),
        }
    }
}

impl LineJson {
    fn new(shown: &Shown<'_>, vessel: &VesselQuote, line: usize) -> Self {
        let bought: &Bought = &vessel.lines[line];
        let kit = &vessel.after.vessel.kit;
        let marks = bought.tools.iter().filter_map(|tool| Some(kit.get(*tool)?.mark.clone()));
        let on = bought.on.and_then(|tool| vessel.before.vessel.kit.get(tool));
        let cures = bought.cures.iter();
        Self {
            item: ItemJson::new(shown, bought.offer),
            gives: match shown.item(bought.offer).gives {
                Gives::Tools(_) => "tools",
                Gives::Extension { .. } => "extension",
                Gives::Service { .. } => "service",
            },
            pieces: bought.pieces,
            on: on.map(|tool| tool.mark.clone()),
            marks: marks.collect(),
            cures: cures.map(|cured| RequirementJson::new(shown, &vessel.after, *cured)).collect(),
            arrives: bought.arrives.to_string(),
            departure: vessel.after.asked.departure.to_string(),
            share: MoneyJson::of(shown.quote, bought.share),
            entries: entries::entries(shown.vocabulary, vessel, line),
        }
    }
}

impl OpenJson {
    fn new(shown: &Shown<'_>, vessel: &VesselQuote, unmet: &Unmet) -> Self {
        let (after, cured) = (&vessel.after, unmet.finding);
        let words = shown.words(after, cured.judgement);
        let places = Places::new(&[]);
        let finding = finding(after, cured).filter(|finding| finding.outcome != Outcome::Met);
        let reasons = finding.into_iter().flat_map(|finding| &finding.reasons);
        Self {
            requirement: RequirementJson::new(shown, after, cured),
            outcome: finding.map(|finding| outcome(finding.outcome)),
            reasons: reasons.map(|because| ReasonJson::new(because, &words, &places)).collect(),
            remedy: finding.and_then(|finding| words.remedy(finding, &[])),
            nearest: unmet.nearest.as_ref().map(|near| NearestJson::new(shown, near, &words)),
        }
    }
}

impl NearestJson {
    fn new(shown: &Shown<'_>, nearest: &Nearest, words: &words::Words<'_>) -> Self {
        Self {
            item: ItemJson::new(shown, nearest.offer),
            lacks: nearest.lacks.iter().map(|reason| ReasonJson::bare(reason, words)).collect(),
            hindrances: nearest.hindrances.iter().map(|one| HindranceJson::new(*one)).collect(),
        }
    }
}

impl HindranceJson {
    fn new(hindrance: Hindrance) -> Self {
        let told = Self { text: words::quote::hindrance(hindrance), ..Self::default() };
        match hindrance {
            Hindrance::OutOfStock { packs } => {
                Self { code: "out-of-stock", packs: Some(packs), ..told }
            }
            Hindrance::Late { arrives, days } => {
                Self { code: "late", arrives: Some(arrives.to_string()), days: Some(days), ..told }
            }
            Hindrance::PriceLapsed { held } => {
                Self { code: "price-lapsed", held: Some(held.to_string()), ..told }
            }
        }
    }
}

//! One vessel's part in the JSON of a quote.
//!
//! Imports `quote` and `model`. Marks before the order are those of the
//! vessel's own list, marks after it those of the kit that was judged.

use super::super::{Shown, entries, finding, requirement};
use super::basket::ItemJson;
use super::money;
use crate::model::catalogue::Gives;
use crate::model::check::{Check, Notice};
use crate::model::finding::Outcome;
use crate::model::stable::stable_words;
use crate::quote::{Bought, Cured, Hindrance, Nearest, Unmet, VesselQuote};
use crate::report::Subject;
use crate::report::audit::csv::{LEVELS, level};
use crate::report::json::{
    MoneyJson, NoticeJson, OUTCOMES, ReasonJson, VERDICTS, VesselJson, outcome, verdict,
};
use crate::report::places::Places;
use crate::report::words;
use schemars::JsonSchema;
use serde::Serialize;
use serde_json::Value;

/// One vessel's part.
#[derive(JsonSchema, Serialize)]
#[schemars(rename = "VesselOfQuote")]
pub(super) struct VesselQuoteJson {
    /// The file, as it was given.
    file: String,
    /// The name.
    name: String,
    /// The vessel.
    vessel: VesselJson,
    /// The trip that was judged.
    trip: TripJson,
    /// Before the order.
    #[schemars(extend("enum" = VERDICTS))]
    verdict_before: &'static str,
    /// After it, by the engine.
    #[schemars(extend("enum" = VERDICTS))]
    verdict_after: &'static str,
    /// What each profile said.
    profiles: Vec<ProfileJson>,
    /// What is told of the check after the order.
    notices: Vec<NoticeJson>,
    /// What it gets.
    lines: Vec<LineJson>,
    /// What stays open.
    open: Vec<OpenJson>,
}

/// The days of a trip.
#[derive(JsonSchema, Serialize)]
#[schemars(rename = "TripOfQuote")]
struct TripJson {
    /// The day of departure.
    #[schemars(extend("format" = "date"))]
    departure: String,
    /// The day of return.
    #[schemars(extend("format" = "date"))]
    r#return: String,
    /// False: taken to be the day of the order.
    departure_known: bool,
    /// Whether the vessel left before the order.
    before_order: bool,
}

/// What one profile said.
#[derive(JsonSchema, Serialize)]
#[schemars(rename = "ProfileOfQuote")]
struct ProfileJson {
    /// The id of the edition.
    id: String,
    /// The id of the rule.
    rule: String,
    /// The law's edition, in words.
    edition: String,
    /// The revision of the program's encoding.
    encoding: u32,
    /// False for a rule that is known, not encoded.
    encoded: bool,
    /// The publication.
    source: String,
    /// Before the order.
    #[schemars(extend("enum" = VERDICTS))]
    verdict_before: Option<&'static str>,
    /// After it.
    #[schemars(extend("enum" = VERDICTS))]
    verdict_after: &'static str,
}

/// A requirement, as it is cited.
#[derive(JsonSchema, Serialize)]
#[schemars(rename = "RequirementOfQuote")]
pub(super) struct RequirementJson {
    /// The id of the profile.
    profile: String,
    /// The id of the requirement.
    requirement: String,
    /// What the rule calls it.
    title: String,
    /// The clause.
    clause: String,
    /// Whether it counts towards the verdict.
    #[schemars(extend("enum" = LEVELS))]
    level: &'static str,
}

/// Something that a vessel gets.
#[derive(JsonSchema, Serialize)]
#[schemars(rename = "LineOfQuote")]
struct LineJson {
    #[serde(flatten)]
    item: ItemJson,
    /// What it gives.
    #[schemars(extend("enum" = GIFTS))]
    gives: &'static str,
    /// How many pieces.
    pieces: u32,
    /// The mark of the tool worked on.
    on: Option<String>,
    /// Of the tools that come of it.
    marks: Vec<String>,
    /// What it meets.
    cures: Vec<RequirementJson>,
    /// The day of delivery.
    #[schemars(extend("format" = "date"))]
    arrives: String,
    /// The day of departure.
    #[schemars(extend("format" = "date"))]
    departure: String,
    /// These pieces' part of the packs' price, rounded: to compare by, not to add up.
    share: MoneyJson,
    /// What to write into the vessel's `kit:`.
    #[schemars(schema_with = "entries::schema")]
    entries: Vec<Value>,
}

/// What stays open.
#[derive(JsonSchema, Serialize)]
#[schemars(rename = "Open")]
struct OpenJson {
    #[serde(flatten)]
    requirement: RequirementJson,
    /// The outcome after the order.
    #[schemars(extend("enum" = OUTCOMES))]
    outcome: Option<&'static str>,
    /// Why it is not met, or what is missing.
    reasons: Vec<ReasonJson>,
    /// What to do about it, for people.
    remedy: Option<String>,
    /// The offer that comes nearest.
    nearest: Option<NearestJson>,
}

/// The offer that comes nearest.
#[derive(JsonSchema, Serialize)]
#[schemars(rename = "Nearest")]
struct NearestJson {
    #[serde(flatten)]
    item: ItemJson,
    /// What it lacks.
    lacks: Vec<ReasonJson>,
    /// What else stands in the way.
    hindrances: Vec<HindranceJson>,
}

/// Something that stands in the way of an offer.
#[derive(Default, JsonSchema, Serialize)]
#[schemars(rename = "Hindrance")]
struct HindranceJson {
    /// The stable code.
    #[schemars(extend("enum" = HINDRANCES))]
    code: &'static str,
    /// So many are left.
    #[serde(skip_serializing_if = "Option::is_none")]
    packs: Option<u32>,
    /// The day of delivery.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schemars(extend("format" = "date"))]
    arrives: Option<String>,
    /// So many too late.
    #[serde(skip_serializing_if = "Option::is_none")]
    days: Option<u32>,
    /// The last day on which the price held.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schemars(extend("format" = "date"))]
    held: Option<String>,
    /// For people; its wording may change.
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
            gives: gives(&shown.item(bought.offer).gives),
            pieces: bought.pieces,
            on: on.map(|tool| tool.mark.clone()),
            marks: marks.collect(),
            cures: cures.map(|cured| RequirementJson::new(shown, &vessel.after, *cured)).collect(),
            arrives: bought.arrives.to_string(),
            departure: vessel.after.asked.departure.to_string(),
            share: money(shown.quote, bought.share),
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
        let told = Self {
            code: hindrance_code(hindrance),
            text: words::quote::hindrance(hindrance),
            ..Self::default()
        };
        match hindrance {
            Hindrance::OutOfStock { packs } => Self { packs: Some(packs), ..told },
            Hindrance::Late { arrives, days } => {
                Self { arrives: Some(arrives.to_string()), days: Some(days), ..told }
            }
            Hindrance::PriceLapsed { held } => Self { held: Some(held.to_string()), ..told },
        }
    }
}

stable_words! {
    fn gives(&Gives) in GIFTS {
        Gives::Tools(_) => "tools",
        Gives::Extension { .. } => "extension",
        Gives::Service { .. } => "service",
    }
}

stable_words! {
    fn hindrance_code(Hindrance) in HINDRANCES {
        Hindrance::OutOfStock { .. } => "out-of-stock",
        Hindrance::Late { .. } => "late",
        Hindrance::PriceLapsed { .. } => "price-lapsed",
    }
}

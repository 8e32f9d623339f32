//! What one profile says, in the JSON format.
//!
//! Imports `model` and `measure`.

use super::finding::FindingJson;
use super::quantity::QuantityJson;
use super::reason::fact_code;
use super::way::{ClashJson, WayJson};
use super::{VERDICTS, verdict};
use crate::measure::{DaySpan, Rounding};
use crate::model::check::{Check, Judgement, Why};
use crate::model::finding::{GoodUpTo, ReadyUntil};
use crate::model::profile::Standing;
use crate::model::stable::stable_words;
use crate::report::Subject;
use crate::report::places::Places;
use crate::report::words::Words;
use schemars::JsonSchema;
use serde::Serialize;

/// What one profile says.
#[derive(Debug, JsonSchema, Serialize)]
#[schemars(rename = "Profile")]
pub(super) struct ProfileJson {
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
    /// What the rule is called.
    title: String,
    /// The publication.
    source: String,
    /// A rule, or good practice.
    #[schemars(extend("enum" = STANDINGS))]
    standing: &'static str,
    /// Why it judged the vessel.
    why: WhyJson,
    /// The days of the trip on which it judged.
    days: DaysJson,
    /// The verdict.
    #[schemars(extend("enum" = VERDICTS))]
    verdict: &'static str,
    /// Until when the kit stays ready.
    ready_until: ReadyUntilJson,
    /// How much freeboard the kit could stand; null in an audit.
    good_up_to: Option<GoodUpToJson>,
    /// Freeboards with one verdict, in order.
    stretches: Vec<StretchJson>,
    /// What was found, requirement by requirement.
    findings: Vec<FindingJson>,
    /// Requirements that compete for too few tools.
    clashes: Vec<ClashJson>,
    /// The fewest changes that make the kit ready; null in an audit.
    way_to_ready: Option<WayJson>,
}

/// Why a profile was used.
#[derive(Debug, JsonSchema, Serialize)]
#[schemars(rename = "Why")]
pub(super) struct WhyJson {
    /// The stable code.
    #[schemars(extend("enum" = Why::CODES))]
    code: &'static str,
    /// The fact of the vessel that is not known.
    #[serde(skip_serializing_if = "Option::is_none")]
    fact: Option<String>,
    /// For people; its wording may change.
    text: String,
}

/// The first and the last day; null where there is no end.
#[derive(Debug, JsonSchema, Serialize)]
#[schemars(rename = "Days")]
pub(super) struct DaysJson {
    /// The first day.
    #[schemars(extend("format" = "date"))]
    from: Option<String>,
    /// The last day.
    #[schemars(extend("format" = "date"))]
    until: Option<String>,
}

/// Until when a kit stays ready.
#[derive(Debug, JsonSchema, Serialize)]
#[schemars(rename = "ReadyUntil")]
pub(super) struct ReadyUntilJson {
    /// `none`: not ready at departure.
    #[schemars(extend("enum" = UNTILS))]
    state: &'static str,
    /// The last such day.
    #[schemars(extend("format" = "date"))]
    day: Option<String>,
}

/// How much freeboard a kit could stand.
#[derive(Debug, JsonSchema, Serialize)]
#[schemars(rename = "GoodUpTo")]
pub(super) struct GoodUpToJson {
    /// Whether there is a limit.
    #[schemars(extend("enum" = UPTOS))]
    state: &'static str,
    /// The limit, rounded down in its text.
    length: Option<QuantityJson>,
    /// The requirements that give out there.
    gives_out: Vec<String>,
}

/// Freeboards with one verdict.
#[derive(Debug, JsonSchema, Serialize)]
#[schemars(rename = "Stretch")]
pub(super) struct StretchJson {
    /// The lowest.
    from: QuantityJson,
    /// The highest.
    to: QuantityJson,
    /// The verdict.
    #[schemars(extend("enum" = VERDICTS))]
    verdict: &'static str,
    /// The requirements that fail there.
    fails: Vec<String>,
}

impl ProfileJson {
    pub(super) fn new(
        subject: &Subject<'_>,
        check: &Check,
        judgement: &Judgement,
        places: &Places<'_>,
    ) -> Self {
        let profile = &judgement.profile;
        let words = Words {
            vocabulary: subject.vocabulary,
            vessel: &check.vessel,
            profile,
            locale: subject.locale,
        };
        let inverses = judgement.inverses.as_ref();
        Self {
            id: profile.id.clone(),
            rule: profile.rule.clone(),
            edition: profile.edition.clone(),
            encoding: profile.encoding,
            encoded: profile.encoded,
            title: profile.title.to_string(),
            source: profile.source.clone(),
            standing: standing(profile.standing),
            why: why(&judgement.why, &words),
            days: days(judgement.days),
            verdict: verdict(judgement.verdict),
            ready_until: ready_until(judgement.ready_until),
            good_up_to: inverses.map(|inverses| good_up_to(&inverses.good_up_to, &words)),
            stretches: inverses
                .iter()
                .flat_map(|inverses| &inverses.stretches)
                .map(|stretch| StretchJson {
                    from: QuantityJson::of_freeboard(stretch.from, &words),
                    to: QuantityJson::of_stretch_end(stretch.to, &words),
                    verdict: verdict(stretch.verdict),
                    fails: ids(&words, &stretch.fails),
                })
                .collect(),
            findings: judgement
                .findings
                .iter()
                .map(|finding| FindingJson::new(finding, &words, places))
                .collect(),
            clashes: inverses
                .iter()
                .flat_map(|inverses| &inverses.clashes)
                .map(|clash| ClashJson::new(clash, &words))
                .collect(),
            way_to_ready: inverses.map(|inverses| WayJson::new(judgement, &inverses.way, &words)),
        }
    }
}

/// The ids of requirements.
pub(super) fn ids(words: &Words<'_>, indices: &[usize]) -> Vec<String> {
    indices.iter().map(|index| words.id(*index)).collect()
}

fn why(why: &Why, words: &Words<'_>) -> WhyJson {
    let fact = match why {
        Why::MayBind(fact) => Some(fact_code(fact, words.vocabulary)),
        Why::Binds | Why::Asked | Why::Fallback => None,
    };
    WhyJson { code: why.code(), fact, text: words.why(why) }
}

stable_words! {
    pub(in crate::report) fn standing(Standing) in STANDINGS {
        Standing::Rule => "rule",
        Standing::GoodPractice => "good-practice",
    }
}

stable_words! {
    fn until_state(ReadyUntil) in UNTILS {
        ReadyUntil::None => "none",
        ReadyUntil::Day(_) => "day",
        ReadyUntil::NoEnd => "no-end",
    }
}

stable_words! {
    fn up_to_state(&GoodUpTo) in UPTOS {
        GoodUpTo::None => "none",
        GoodUpTo::Freeboard { .. } => "freeboard",
        GoodUpTo::OnlyBelow { .. } => "only-below",
        GoodUpTo::NoLimit => "no-limit",
    }
}

fn days(days: DaySpan) -> DaysJson {
    DaysJson {
        from: days.from.map(|day| day.to_string()),
        until: days.until.map(|day| day.to_string()),
    }
}

fn ready_until(until: ReadyUntil) -> ReadyUntilJson {
    let day = match until {
        ReadyUntil::Day(day) => Some(day.to_string()),
        ReadyUntil::None | ReadyUntil::NoEnd => None,
    };
    ReadyUntilJson { state: until_state(until), day }
}

fn good_up_to(up_to: &GoodUpTo, words: &Words<'_>) -> GoodUpToJson {
    let (length, gives_out) = match up_to {
        GoodUpTo::Freeboard { length, gives_out } | GoodUpTo::OnlyBelow { length, gives_out } => {
            (Some(*length), ids(words, gives_out))
        }
        GoodUpTo::None | GoodUpTo::NoLimit => (None, Vec::new()),
    };
    let length = length.map(|length| QuantityJson::of_length(length, words, Rounding::Down));
    GoodUpToJson { state: up_to_state(up_to), length, gives_out }
}

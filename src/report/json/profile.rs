//! What one profile says, in the JSON format.
//!
//! Imports `model` and `measure`.

use super::finding::FindingJson;
use super::quantity::QuantityJson;
use super::reason::fact_code;
use super::verdict;
use super::way::{ClashJson, WayJson};
use crate::measure::{DaySpan, Rounding};
use crate::model::check::{Check, Judgement, Why};
use crate::model::finding::{GoodUpTo, ReadyUntil};
use crate::model::profile::Standing;
use crate::report::Subject;
use crate::report::places::Places;
use crate::report::words::Words;
use serde::Serialize;

#[derive(Debug, Serialize)]
pub(super) struct ProfileJson {
    id: String,
    rule: String,
    edition: String,
    encoding: u32,
    encoded: bool,
    title: String,
    source: String,
    standing: &'static str,
    why: WhyJson,
    days: DaysJson,
    verdict: &'static str,
    ready_until: ReadyUntilJson,
    good_up_to: Option<GoodUpToJson>,
    stretches: Vec<StretchJson>,
    findings: Vec<FindingJson>,
    clashes: Vec<ClashJson>,
    way_to_ready: Option<WayJson>,
}

#[derive(Debug, Serialize)]
pub(super) struct WhyJson {
    code: &'static str,
    #[serde(skip_serializing_if = "Option::is_none")]
    fact: Option<String>,
    text: String,
}

#[derive(Debug, Serialize)]
pub(super) struct DaysJson {
    from: Option<String>,
    until: Option<String>,
}

#[derive(Debug, Serialize)]
pub(super) struct ReadyUntilJson {
    state: &'static str,
    day: Option<String>,
}

#[derive(Debug, Serialize)]
pub(super) struct GoodUpToJson {
    state: &'static str,
    length: Option<QuantityJson>,
    gives_out: Vec<String>,
}

#[derive(Debug, Serialize)]
pub(super) struct StretchJson {
    from: QuantityJson,
    to: QuantityJson,
    verdict: &'static str,
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
            units: subject.units,
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
            standing: match profile.standing {
                Standing::Rule => "rule",
                Standing::GoodPractice => "good-practice",
            },
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
    let (code, fact) = match why {
        Why::Binds => ("binds", None),
        Why::MayBind(fact) => ("may-bind", Some(fact_code(fact, words.vocabulary))),
        Why::Asked => ("asked", None),
        Why::Fallback => ("fallback", None),
    };
    WhyJson { code, fact, text: words.why(why) }
}

fn days(days: DaySpan) -> DaysJson {
    DaysJson {
        from: days.from.map(|day| day.to_string()),
        until: days.until.map(|day| day.to_string()),
    }
}

fn ready_until(until: ReadyUntil) -> ReadyUntilJson {
    match until {
        ReadyUntil::None => ReadyUntilJson { state: "none", day: None },
        ReadyUntil::Day(day) => ReadyUntilJson { state: "day", day: Some(day.to_string()) },
        ReadyUntil::NoEnd => ReadyUntilJson { state: "no-end", day: None },
    }
}

fn good_up_to(up_to: &GoodUpTo, words: &Words<'_>) -> GoodUpToJson {
    let (state, length, gives_out) = match up_to {
        GoodUpTo::None => ("none", None, Vec::new()),
        GoodUpTo::Freeboard { length, gives_out } => {
            ("freeboard", Some(*length), ids(words, gives_out))
        }
        GoodUpTo::OnlyBelow { length, gives_out } => {
            ("only-below", Some(*length), ids(words, gives_out))
        }
        GoodUpTo::NoLimit => ("no-limit", None, Vec::new()),
    };
    let length = length.map(|length| QuantityJson::of_length(length, words, Rounding::Down));
    GoodUpToJson { state, length, gives_out }
}

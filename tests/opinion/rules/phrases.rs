//! The phrases of a profile: limits and their figures, conditions, clauses,
//! spans of months.

use super::yaml::{pairs, text};
use crate::figures::figure;
use serde_json::{Value as Json, json};
use serde_yaml::Value as Yaml;

pub(super) fn months(phrase: &str) -> i64 {
    figure(phrase.trim_start_matches("every "))
}

/// The clause with and without the publication before it, without spaces,
/// commas and case.
pub(super) fn add_clause(clauses: &mut Vec<String>, written: &Yaml, source: &str) {
    if let Some(clause) = written.get("clause") {
        clauses.push(plain_clause(&text(clause)));
        clauses.push(plain_clause(&format!("{source} {}", text(clause))));
    }
}

/// A clause as two ways of writing it are compared.
pub(crate) fn plain_clause(clause: &str) -> String {
    clause.to_lowercase().chars().filter(|c| !c.is_whitespace() && *c != ',').collect()
}

pub(super) fn limit(phrase: &str) -> Json {
    let after = |start: &str| phrase.strip_prefix(start);
    if phrase == "any" {
        return json!({ "is": "any" });
    }
    if let Some(rest) = after("about ") {
        let (figures, margin) = rest.split_once(", within ").unwrap();
        let (low, high) = figures.split_once(" to ").unwrap_or((figures, figures));
        return json!({ "is": "about", "low": figure(low), "high": figure(high), "margin": figure(margin) });
    }
    if let Some(rest) = after("from ") {
        let (low, high) = rest.split_once(" to ").unwrap();
        return json!({ "is": "from to", "low": bound(low), "high": bound(high) });
    }
    if let Some(rest) = after("exactly ") {
        return json!({ "is": "from to", "low": bound(rest), "high": bound(rest) });
    }
    for is in ["at least", "at most", "more than", "less than"] {
        if let Some(rest) = after(&format!("{is} ")) {
            return json!({ "is": is, "bound": bound(rest) });
        }
    }
    panic!("not translated, a limit: `{phrase}`")
}

fn bound(phrase: &str) -> Json {
    for (start, is) in [("the greater of ", "greater"), ("the lesser of ", "lesser")] {
        if let Some(rest) = phrase.strip_prefix(start) {
            let parts: Vec<_> = rest.split(" and ").map(bound).collect();
            return json!({ "is": is, "parts": parts });
        }
    }
    let bases = [
        ("freeboard", "freeboard"),
        ("the heaviest hook aboard", "hook"),
        ("the thickest line aboard", "line"),
        ("the thickest leader aboard", "leader"),
    ];
    let (percent, base) = match phrase.split_once("% of ") {
        Some((percent, base)) => (percent.parse::<i64>().unwrap(), base),
        None => (100, phrase),
    };
    match bases.iter().find(|(name, _)| *name == base) {
        Some((_, of)) => json!({ "is": "share", "percent": percent, "of": of }),
        None => json!({ "is": "figure", "figure": figure(phrase) }),
    }
}

const MONTHS: [&str; 12] = [
    "January",
    "February",
    "March",
    "April",
    "May",
    "June",
    "July",
    "August",
    "September",
    "October",
    "November",
    "December",
];

pub(super) fn conditions(when: &Yaml) -> Vec<Json> {
    pairs(when).iter().map(|(key, value)| condition(key, &text(value))).collect()
}

fn condition(key: &str, phrase: &str) -> Json {
    match key {
        "gear" | "area" | "permit" | "area other than" => json!({ "is": key, "tag": phrase }),
        "months" => {
            let (first, last) = phrase.split_once(" to ").unwrap();
            let number = |name: &str| MONTHS.iter().position(|m| *m == name).unwrap() + 1;
            assert!(number(first) <= number(last), "not translated: months over the year's end");
            json!({ "is": "months", "first": number(first), "last": number(last) })
        }
        "freeboard" => {
            for side in ["more than", "less than"] {
                if let Some(rest) = phrase.strip_prefix(&format!("{side} ")) {
                    return json!({ "is": "freeboard", "side": side, "figure": figure(rest) });
                }
            }
            for side in ["or less", "or more"] {
                if let Some(rest) = phrase.strip_suffix(&format!(" {side}")) {
                    return json!({ "is": "freeboard", "side": side, "figure": figure(rest) });
                }
            }
            panic!("not translated, a freeboard: `{phrase}`")
        }
        "wheelhouse" => json!({ "is": "feature", "feature": key, "wanted": phrase == "yes" }),
        other => panic!("not translated, a condition: `{other}`"),
    }
}

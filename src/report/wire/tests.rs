//! The JSON of hand-made checks.

use super::check as json;
use crate::measure::{Figure, QuantityKind, Rounding, Units};
use crate::model::check::{Check, Notice};
use crate::model::finding::{Because, Outcome};
use crate::model::reason::{Demand, Reason, VesselFact};
use crate::model::vocabulary::Vocabulary;
use crate::report::Locale;
use crate::report::sample;
use crate::report::subject::Subject;
use crate::report::words::Words;
use serde_json::{Value, json};

fn text(check: &Check) -> String {
    let vocabulary = sample::vocabulary();
    let subject = Subject {
        check,
        vocabulary: &vocabulary,
        sources: &[],
        locale: Locale::from(Units::Both),
        freeing: None,
    };
    json(&subject).unwrap()
}

fn value(check: &Check) -> Value {
    serde_json::from_str(&text(check)).unwrap()
}

fn keys(value: &Value) -> Vec<&str> {
    value.as_object().unwrap().keys().map(String::as_str).collect()
}

#[test]
fn the_keys_stand_in_the_documented_order() {
    let value = value(&sample::not_ready());
    assert_eq!(
        keys(&value),
        [
            "schema", "program", "vessel", "trip", "trust", "verdict", "standing", "notices",
            "profiles"
        ]
    );
    assert_eq!(
        keys(&value["profiles"][0]),
        [
            "id",
            "rule",
            "edition",
            "encoding",
            "encoded",
            "title",
            "source",
            "standing",
            "why",
            "days",
            "verdict",
            "ready_until",
            "good_up_to",
            "stretches",
            "findings",
            "clashes",
            "way_to_ready",
            "left_open",
        ]
    );
    assert_eq!(
        keys(&value["profiles"][0]["findings"][0]),
        [
            "requirement",
            "title",
            "level",
            "outcome",
            "tools",
            "reasons",
            "citation",
            "note",
            "freeboard",
            "day",
            "remedy",
        ]
    );
    assert_eq!(value["schema"], "kitmuster/check/1");
    assert_eq!(value["verdict"], "not-ready");
}

#[test]
fn a_reason_carries_its_code_its_numbers_and_its_text() {
    let value = value(&sample::not_ready());
    let reason = &value["profiles"][0]["findings"][0]["reasons"][0];
    assert_eq!(reason["code"], "too-short-for-rail");
    assert_eq!(reason["tool"], "LC-1");
    assert_eq!(reason["place"]["key"], "kit[0]");
    assert_eq!(reason["attributes"][0], "handle");
    assert_eq!(reason["has"]["nanometres"], 1_930_400_000);
    assert_eq!(reason["demand"]["least"]["nanometres"], 1_943_100_000);
    assert_eq!(reason["demand"]["least"]["text"], "6 ft 4 1/2 in (1.944 m)");
    assert_eq!(reason["by"]["nanometres"], 12_700_000);
    assert_eq!(reason["freeboard"]["nanometres"], 1_295_400_000);
    assert!(reason["text"].as_str().unwrap().contains("too short for the rail"));
}

#[test]
fn a_finding_that_is_met_names_its_tools_and_no_remedy() {
    let value = value(&sample::not_ready());
    let finding = &value["profiles"][0]["findings"][1];
    assert_eq!(finding["outcome"], "met");
    assert_eq!(finding["tools"][0]["mark"], "PL-1");
    assert_eq!(finding["tools"][0]["place"]["file"], "vessel.yaml");
    assert_eq!(finding["citation"]["verified"], "memory");
    assert_eq!(finding["remedy"], Value::Null);
}

#[test]
fn what_steers_a_terminal_is_escaped_and_keeps_its_value() {
    let mut check = sample::not_ready();
    check.vessel.name = "A\u{1b}[2J\u{9b}\u{202e}\u{7f}".into();
    let text = text(&check);
    assert!(!text.contains(['\u{1b}', '\u{9b}', '\u{202e}', '\u{7f}']), "{text}");
    assert_eq!(value(&check)["vessel"]["name"], check.vessel.name);
    assert!(text.ends_with("}\n"));
}

#[test]
fn notices_say_what_they_speak_of() {
    let mut check = sample::not_ready();
    check.notices =
        vec![Notice::NoEdition { rule: "example".into(), day: sample::day("2026-03-02") }];
    let value = value(&check);
    assert_eq!(value["notices"][0]["code"], "no-edition");
    assert_eq!(value["notices"][0]["rule"], "example");
    assert_eq!(value["notices"][0]["day"], "2026-03-02");
    let remedy = value["notices"][0]["remedy"].as_str().unwrap();
    assert!(remedy.contains("port office"), "{remedy}");
}

#[test]
fn a_finding_that_hangs_on_another_names_it() {
    let mut check = sample::not_ready();
    check.judgements[0].findings[0].reasons =
        vec![Because { tool: None, reason: Reason::HangsOn { requirement: 1 } }];
    let value = value(&check);
    let reason = &value["profiles"][0]["findings"][0]["reasons"][0];
    assert_eq!(reason["code"], "hangs-on");
    assert_eq!(reason["requirement"], "pliers");
    assert_eq!(reason["text"], "met once `Long-nose pliers` is settled");
    let unknown = Because { tool: Some(1), reason: Reason::StateUnknown };
    check.judgements[0].findings[0].outcome = Outcome::CannotTell;
    check.judgements[0].findings[1] = sample::finding(1, Outcome::CannotTell, vec![unknown]);
    let value = self::value(&check);
    let settles = &value["profiles"][0]["findings"][0]["remedy"];
    assert_eq!(
        settles,
        "first, for `Long-nose pliers`: try out whether PL-1 works, and write it down"
    );
}

#[test]
fn a_freeboard_as_it_was_measured_rounds_to_the_nearest_millimetre() {
    let mut check = sample::not_ready();
    check.vessel.freeboard.stations[0].readings[0].high = sample::figure("4 ft 6 in");
    let value = value(&check);
    let high = &value["vessel"]["freeboard"]["stations"][0]["readings"][0]["high"];
    assert_eq!(high["text"], "4 ft 6 in (1.372 m)");
}

/// What there is beside code and text, in one line: a value as it is, of an
/// object its keys.
fn in_short(told: &Value) -> String {
    fn short(value: &Value) -> String {
        match value {
            Value::Object(_) => format!("{{{}}}", keys(value).join(" ")),
            Value::Array(all) => {
                format!("[{}]", all.iter().map(short).collect::<Vec<_>>().join(" "))
            }
            other => other.to_string().replace('"', ""),
        }
    }
    let facts = told.as_object().unwrap().iter();
    let facts = facts.filter(|(key, value)| {
        !value.is_null() && !["code", "text", "remedy"].contains(&key.as_str())
    });
    facts.map(|(key, value)| format!(" {key}={}", short(value))).collect()
}

fn words<'a>(vocabulary: &'a Vocabulary, check: &'a Check) -> Words<'a> {
    let (vessel, profile) = (&check.vessel, &*check.judgements[0].profile);
    Words { vocabulary, vessel, profile, findings: &[], locale: Locale::from(Units::Both) }
}

#[test]
fn every_reason_tells_its_facts() {
    let (vocabulary, check) = (sample::vocabulary(), sample::not_ready());
    let told = sample::every_reason().into_iter().map(|reason| {
        let told = super::reason::Reason::new(&reason, None, &words(&vocabulary, &check));
        let told = serde_json::to_value(told).unwrap();
        format!("{}{}", told["code"].as_str().unwrap(), in_short(&told))
    });
    let told: Vec<_> = told.collect();
    let expected = "\
nothing-aboard kinds=[long-line-cutter pliers]
too-few kinds=[pliers] have=1 need=2
too-few-types have=1 need=2 complete=[hank of rope] incomplete=[set of gags]
too-short-for-rail attributes=[handle] has={nanometres text} demand={least text} \
by={nanometres text} freeboard={nanometres text}
out-of-specification attributes=[overall] has={nanometres text} readings=[{has by on how}] \
demand={least text} by={nanometres text}
no-alternative-holds attributes=[handle guard]
acquired-too-late acquired=2026-03-06 before=2026-03-05
not-serviceable
not-aboard lent_to=Berberecho
not-aboard
missing
inspection-lapsed since=2026-03-05
expired since=2026-03-05
lapses-during-trip day=2026-03-05 inspection=true
lapses-during-trip day=2026-03-05 inspection=false
serves-another-requirement requirement=pliers
one-of-these requirements=[line-cutter pliers]
in-every-case
part-in-use part=H-1
fits-no-tool-in-use requirement=line-cutter
no-valid-certificate have=0 need=1 since=2026-03-05 role=owner
no-valid-certificate have=1 need=2
gear-outside-rule piece=big hooks why={code tool text}
unmeasured attributes=[handle] demand={least text}
disputed attributes=[handle] readings=[{has by on how} {has by on how}] demand={least text}
outside-approximate attributes=[overall] has={nanometres text} demand={text}
wording-disputed attributes=[handle]
condition-unknown
whereabouts-unknown
expiry-disputed since=2026-03-06 day=2026-03-07
kind-disputed kinds=[long-line-cutter pliers]
kind-disputed kinds=[long-line-cutter pliers]
certificate-disputed person=A. Person
person-disputed person=A. Person
inspection-undated
acquired-unknown before=2026-03-05
not-listed kinds=[long-line-cutter]
spare-fit-unknown
certificate-undated person=A. Person
binding-unknown fact=permits
vessel-fact-unknown fact=freeboard
hangs-on requirement=pliers
too-many-ways
too-many-facts
not-encoded
no-edition day=2026-03-05";
    assert_eq!(told, expected.lines().collect::<Vec<_>>());
}

#[test]
fn every_notice_tells_its_facts() {
    let vocabulary = sample::vocabulary();
    let on = sample::day("2026-03-02");
    let (id, words) = (|| "example".to_owned(), || vec!["reef".to_owned(), "crab".to_owned()]);
    let unread = VesselFact::Feature("wheelhouse".into());
    for (notice, facts) in [
        (Notice::NoRuleNamesVessel, ""),
        (Notice::NotInForce { profile: id() }, " profile=example"),
        (Notice::DoesNotBind { profile: id() }, " profile=example"),
        (Notice::NoEdition { rule: id(), day: on }, " rule=example day=2026-03-02"),
        (
            Notice::UnknownWords { what: VesselFact::Gear, words: words() },
            " fact=gear words=[reef crab]",
        ),
        (Notice::MayBind { rule: id(), fact: unread }, " rule=example fact=feature:wheelhouse"),
        (Notice::RecordAfterDeparture { on }, " day=2026-03-02"),
        (Notice::SheetOutOfDate { on, vessel: true, rules: false }, " day=2026-03-02"),
        (Notice::TooManyFacts, ""),
        (
            Notice::Remark { mark: id(), on, remark: "bent".into() },
            " day=2026-03-02 tool=example remark=bent",
        ),
        (
            Notice::MarkReadAs { mark: id(), on, read: "LC-7".into() },
            " day=2026-03-02 words=[LC-7] tool=example",
        ),
        (Notice::Unmarked { mark: id(), on }, " day=2026-03-02 tool=example"),
        (Notice::UnlistedMark { mark: id(), on }, " day=2026-03-02 tool=example"),
        (
            Notice::KindDisputed { mark: id(), kinds: words(), by_name: true },
            " words=[reef crab] tool=example",
        ),
        (
            Notice::ReadingsDiffer {
                mark: id(),
                attribute: "handle".into(),
                counted: Vec::new(),
                overruled: Vec::new(),
            },
            " words=[handle] tool=example",
        ),
        (Notice::NoReturn, ""),
        (Notice::TripOver { back: on }, " day=2026-03-02"),
        (Notice::ListOld { declared: on }, " day=2026-03-02"),
    ] {
        let told = super::parts::Notice::new(&notice, &vocabulary, Locale::default());
        let told = serde_json::to_value(told).unwrap();
        assert_eq!((told["code"].as_str(), in_short(&told).as_str()), (Some(notice.code()), facts));
    }
}

#[test]
fn every_demand_tells_its_sides_and_every_quantity_its_steps() {
    let figure = |text, kind| Figure::parse(text, kind).unwrap();
    let length = |text| figure(text, QuantityKind::Length);
    let (vocabulary, check) = (sample::vocabulary(), sample::not_ready());
    for (demand, sides) in [
        (Demand::Least(length("6 ft")), json!({"least": "6 ft (1.829 m)"})),
        (Demand::Above(length("6 ft")), json!({"above": "6 ft (1.829 m)"})),
        (Demand::Most(length("6 ft")), json!({"most": "6 ft (1.828 m)"})),
        (Demand::Below(length("6 ft")), json!({"below": "6 ft (1.828 m)"})),
        (
            Demand::Between(length("6 ft"), length("7 ft")),
            json!({"least": "6 ft (1.829 m)", "most": "7 ft (2.133 m)"}),
        ),
        (Demand::OneOf(vec!["316L".into()]), json!({"one_of": ["316L"]})),
        (Demand::Is(false), json!({"is": false})),
        (Demand::Open, json!({})),
    ] {
        let reason = Reason::Unmeasured { attribute: sample::HANDLE, has: None, demand };
        let told = super::reason::Reason::new(&reason, None, &words(&vocabulary, &check));
        let mut told = serde_json::to_value(told).unwrap()["demand"].take();
        told.as_object_mut().unwrap().remove("text");
        for side in told.as_object_mut().unwrap().values_mut() {
            if let Some(text) = side.get_mut("text") {
                *side = text.take();
            }
        }
        assert_eq!(told, sides);
    }
    for (text, kind, key, steps) in [
        ("1 mm", QuantityKind::Length, "nanometres", 1_000_000),
        ("1 g", QuantityKind::Mass, "micrograms", 1_000_000),
        ("10 degrees", QuantityKind::Angle, "millidegrees", 10_000),
        ("18/0", QuantityKind::HookSize, "hook_size_rank", 18),
        ("2", QuantityKind::Count, "count", 2),
    ] {
        let figure = figure(text, kind);
        let told = super::parts::Quantity::of_figure(&figure, Locale::default(), Rounding::Up);
        assert_eq!(serde_json::to_value(told).unwrap()[key], steps, "{text}");
    }
}

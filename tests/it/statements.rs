//! A list and records drawn at random, read from their texts: no order and no
//! name of a file changes an answer; nor does a record that says what the list
//! says, one record written as two, or one record given twice.

use crate::kit;
use crate::properties::config;
use kitmuster::engine::{self, Depth, Request};
use kitmuster::load::{self, Library};
use kitmuster::measure::Day;
use kitmuster::model::finding::{Outcome, Verdict};
use kitmuster::model::inspection::Inspection;
use kitmuster::model::profile::Profile;
use kitmuster::model::vessel::Trust;
use proptest::prelude::*;
use std::sync::{Arc, OnceLock};

const RULE: &str = "format: profile/1
id: test-statements
rule: test-statements
edition: one
title: Statements
standing: good practice
requirements:
  - { id: pliers, title: P, carry: 2 pliers, with: { overall: at least 10 in }, verified: common practice }
  - { id: cutters, title: C, carry: 1 bolt cutters, with: { overall: at most 12 in }, verified: common practice }
  - { id: paper, title: D, carry: 1 careful-release document, with: { edition: \"2019\" }, verified: common practice }
  - { id: workshop, title: W, certificate: workshop certificate, held by: [owner], valid: 3 years, verified: common practice }
";

const KINDS: [&str; 2] = ["pliers", "bolt cutters"];
const STATES: [&str; 2] = ["serviceable", "broken"];
/// The day of the list; records are of the days around it.
const LISTED: u8 = 12;

struct Rule {
    library: Library,
    profile: Arc<Profile>,
}

fn rule() -> &'static Rule {
    static RULES: OnceLock<Rule> = OnceLock::new();
    RULES.get_or_init(|| {
        let library = kit::library();
        let profile = library.draft_text("statements.yaml", RULE);
        let profile = profile.unwrap_or_else(|refusal| panic!("{refusal:#?}"));
        Rule { library, profile }
    })
}

/// A tool as it is listed.
#[derive(Debug, Clone)]
struct Listed {
    kind: usize,
    count: u8,
    broken: u8,
    state: Option<usize>,
    overall: Option<u8>,
    expires: Option<u8>,
    lost: bool,
}

/// An entry of a record: which tool (five marks, of which the list has three at
/// most; `None` has no mark), and each thing that can be said of it.
#[derive(Debug, Clone, Default)]
struct Entry {
    mark: Option<u8>,
    missing: bool,
    parts: Vec<String>,
}

#[derive(Debug, Clone)]
struct Record {
    day: u8,
    whole: bool,
    entries: Vec<Entry>,
    people: Vec<String>,
}

/// A vessel's list, and the records laid over it.
#[derive(Debug, Clone)]
struct World {
    dated: bool,
    partial: bool,
    tools: Vec<Listed>,
    paper: Option<String>,
    records: Vec<Record>,
}

fn day(day: u8) -> String {
    format!("2026-02-{day:02}")
}

fn listed() -> impl Strategy<Value = Listed> {
    let few = (0..2_usize, 1..4_u8, 0..2_u8, prop::option::of(0..2_usize));
    let read = prop::option::of(8..14_u8);
    let days = (prop::option::weighted(0.3, 0..3_u8), prop::bool::weighted(0.1));
    (few, read, days).prop_map(|((kind, count, broken, state), overall, (expires, lost))| Listed {
        kind,
        count,
        broken: broken.min(count - 1),
        state,
        overall,
        expires,
        lost,
    })
}

/// An expiry before, on or after the day that is judged.
fn expiry(at: u8) -> &'static str {
    ["2026-03-01", "2026-03-02", "2026-04-01"][usize::from(at)]
}

fn part() -> impl Strategy<Value = String> {
    prop_oneof![
        3 => (0..2_usize).prop_map(|at| format!("condition: {}", STATES[at])),
        2 => (1..4_u8).prop_map(|count| format!("count: {count}")),
        1 => (0..3_u8).prop_map(|at| format!("expires: {}", expiry(at))),
        2 => (8..14_u8).prop_map(|inches| format!("overall: {inches} in")),
        1 => (8..14_u8).prop_map(|inches| format!("overall: {{ value: {inches} in, how: label }}")),
        1 => (0..2_usize).prop_map(|at| format!("kind: {}", KINDS[at])),
        1 => (8..14_u8).prop_map(|i| format!("mended: [{{ what: lengthened, overall: {i} in }}]")),
        1 => Just("mended: [{ what: repaired }]".to_owned()),
        1 => Just("remark: seen".to_owned()),
    ]
}

fn key(part: &str) -> &str {
    part.split(':').next().unwrap()
}

fn entry() -> impl Strategy<Value = Entry> {
    let mark = prop::option::weighted(0.9, 0..5_u8);
    let missing = prop::bool::weighted(0.15);
    (mark, missing, prop::collection::vec(part(), 0..4)).prop_map(|(mark, missing, mut parts)| {
        let mut seen = Vec::new();
        parts.retain(|part| {
            let new = !seen.contains(&key(part).to_owned());
            seen.push(key(part).to_owned());
            new
        });
        let missing = missing && mark.is_some();
        if missing {
            parts.retain(|part| key(part) == "kind");
        }
        if mark.is_none() && !seen.iter().any(|key| key == "kind") {
            parts.push(format!("kind: {}", KINDS[0]));
        }
        parts.sort();
        Entry { mark, missing, parts }
    })
}

fn person() -> impl Strategy<Value = String> {
    let issued = prop::option::of(0..2_usize);
    (prop::option::of(any::<bool>()), issued).prop_map(|(aboard, issued)| {
        let aboard = aboard.map_or(String::new(), |is| format!(", aboard: {}", yes(is)));
        let certificate = issued.map_or(String::new(), |at| {
            let issued = ["2022-01-10", "2025-01-10"][at];
            format!(", certificates: [{{ kind: workshop certificate, issued: {issued} }}]")
        });
        format!("{{ name: A. Holder{aboard}{certificate} }}")
    })
}

fn yes(is: bool) -> &'static str {
    if is { "yes" } else { "no" }
}

fn record() -> impl Strategy<Value = Record> {
    let entries = prop::collection::vec(entry(), 0..5);
    let people = prop::collection::vec(person(), 0..2);
    (10..15_u8, prop::bool::weighted(0.3), entries, people).prop_map(
        |(day, whole, mut entries, people)| {
            // A mark stands once in a record, and two tools without one differ.
            let mut seen: Vec<String> = Vec::new();
            entries.retain(|entry| {
                let name = match entry.mark {
                    Some(mark) => mark.to_string(),
                    None => entry.line(),
                };
                let new = !seen.contains(&name);
                seen.push(name);
                new
            });
            Record { day, whole, entries, people }
        },
    )
}

fn world() -> impl Strategy<Value = World> {
    let list = (prop::bool::weighted(0.8), prop::bool::weighted(0.3));
    let tools = prop::collection::vec(listed(), 0..4);
    let paper = prop::option::of((any::<bool>(), any::<bool>()));
    let records = prop::collection::vec(record(), 0..4);
    (list, tools, paper, records).prop_map(|((dated, partial), mut tools, paper, records)| {
        tools.truncate(3);
        let paper = paper.map(|(good, there)| {
            let edition = if good { "2019" } else { "2013" };
            format!("edition: \"{edition}\", state: {}", if there { "aboard" } else { "lost" })
        });
        World { dated, partial, tools, paper, records }
    })
}

impl Entry {
    fn line(&self) -> String {
        let mark = self.mark.map(|mark| format!("mark: T-{mark}"));
        let missing = self.missing.then(|| "missing: yes".to_owned());
        let parts = mark.into_iter().chain(missing).chain(self.parts.iter().cloned());
        format!("{{ {} }}", parts.collect::<Vec<_>>().join(", "))
    }
}

impl Record {
    fn yaml(&self) -> String {
        let lines = |lines: Vec<String>| lines.join(", ");
        let entries = lines(self.entries.iter().map(Entry::line).collect());
        let people = lines(self.people.clone());
        let covers = if self.whole { "whole kit" } else { "listed things only" };
        format!(
            "format: inspection/1\nvessel: Test Kittiwake\non: {}\nby: C. Inspector\n\
             covers: {covers}\nfound: [{entries}]\npeople: [{people}]\n",
            day(self.day)
        )
    }
}

impl Listed {
    fn line(&self, mark: usize) -> String {
        let mut line = format!("mark: T-{mark}, kind: {}, count: {}", KINDS[self.kind], self.count);
        if self.broken > 0 {
            line += &format!(", broken: {}", self.broken);
        }
        let state = self.state.map_or("unknown", |at| STATES[at]);
        line += &format!(", condition: {state}");
        line += &self.overall.map_or(String::new(), |inches| format!(", overall: {inches} in"));
        line += &self.expires.map_or(String::new(), |at| format!(", expires: {}", expiry(at)));
        line += if self.lost { ", where: lost" } else { "" };
        format!("{{ {line} }}")
    }

    /// What a record says that repeats it.
    fn repeated(&self, mark: u8) -> Entry {
        let mut parts = vec![format!("kind: {}", KINDS[self.kind])];
        if !self.lost {
            parts.push(format!("count: {}", self.count));
            // Of a lot that is broken in part it cannot say what works.
            let state = self.state.filter(|_| self.broken == 0);
            parts.extend(state.map(|at| format!("condition: {}", STATES[at])));
            parts.extend(self.overall.map(|inches| format!("overall: {inches} in")));
            parts.extend(self.expires.map(|at| format!("expires: {}", expiry(at))));
        }
        Entry { mark: Some(mark), missing: self.lost, parts }
    }
}

/// What came out: the verdict, and each finding by its requirement.
type Answers = (Verdict, Vec<(usize, Outcome)>);

/// The answers with the tools of the list and the records in that order.
fn answers(world: &World, tools: &[usize], records: &[&Record]) -> Answers {
    let kit: Vec<_> = tools.iter().map(|at| world.tools[*at].line(*at)).collect();
    let documents = world
        .paper
        .iter()
        .map(|paper| format!("{{ mark: T-4, kind: careful-release document, {paper} }}"));
    let on = if world.dated { format!(", on: {}", day(LISTED)) } else { String::new() };
    let covers = if world.partial { "listed things only" } else { "whole kit" };
    let vessel = format!(
        "format: vessel/1\nname: Test Kittiwake\ndeclared: {{ by: A. Holder, figures: measured{on} }}\n\
         covers: {covers}\nfreeboard: 4 ft\nkit: [{}]\ndocuments: [{}]\n\
         people: [{{ name: A. Holder, roles: [owner], certificates: \
         [{{ kind: workshop certificate, issued: 2024-05-05 }}] }}]\n",
        kit.join(", "),
        documents.collect::<Vec<_>>().join(", ")
    );
    let Rule { library, profile } = rule();
    let words = &library.vocabulary;
    let vessel = load::read_vessel("v.yaml", &vessel, words);
    let vessel = vessel.unwrap_or_else(|refusal| panic!("{refusal:#?}\n{world:?}")).0;
    let inspections: Vec<Inspection> = (records.iter().enumerate())
        .map(|(at, record)| {
            let read = load::read_inspection(&format!("{at}.yaml"), &record.yaml(), words);
            read.unwrap_or_else(|refusal| panic!("{refusal:#?}\n{}", record.yaml())).0
        })
        .collect();
    let check = engine::check(&Request {
        vocabulary: words,
        profiles: &[],
        asked: std::slice::from_ref(profile),
        vessel: &vessel,
        inspections: &inspections,
        departure: Day::parse("2026-03-02").unwrap(),
        back: None,
        trust: Trust::All,
        depth: Depth::Findings,
    });
    let findings = check.judgements.iter().flat_map(|judgement| &judgement.findings);
    let mut outcomes: Vec<_> = findings.map(|one| (one.requirement, one.outcome)).collect();
    outcomes.sort_by_key(|(requirement, _)| *requirement);
    (check.verdict, outcomes)
}

impl World {
    fn as_written(&self) -> Answers {
        self.with(&[])
    }

    /// The answers with further records.
    fn with(&self, more: &[Record]) -> Answers {
        let tools: Vec<usize> = (0..self.tools.len()).collect();
        answers(self, &tools, &self.records.iter().chain(more).collect::<Vec<_>>())
    }
}

/// Puts a list into an order that a number stands for.
fn shuffled<T>(mut list: Vec<T>, mut by: u64) -> Vec<T> {
    let mut order = Vec::new();
    while !list.is_empty() {
        let many = list.len() as u64;
        order.push(list.remove(usize::try_from(by % many).unwrap()));
        by /= many;
    }
    order
}

/// The record as two of its day: what each bit stands for goes to the second.
/// The first covers what the whole covered, so it names every tool.
fn split(record: &Record, mut bits: u64) -> [Record; 2] {
    let mut draw = || {
        bits = bits.rotate_right(1);
        bits & 1 == 1
    };
    let mut first = Record { entries: Vec::new(), people: Vec::new(), ..record.clone() };
    let mut second = Record { whole: false, ..first.clone() };
    for entry in &record.entries {
        if entry.mark.is_none() || entry.missing {
            let second_half = draw() && !record.whole;
            let half = if second_half { &mut second } else { &mut first };
            half.entries.push(entry.clone());
            continue;
        }
        let (to_second, to_first): (Vec<_>, Vec<_>) =
            entry.parts.iter().cloned().partition(|_| draw());
        let part = |parts| Entry { parts, ..entry.clone() };
        if !to_second.is_empty() {
            second.entries.push(part(to_second));
        }
        first.entries.push(part(to_first));
    }
    for person in &record.people {
        let half = if draw() { &mut second } else { &mut first };
        half.people.push(person.clone());
    }
    [first, second]
}

proptest! {
    #![proptest_config(config(256, 4096))]

    #[test]
    fn no_order_changes_an_answer(world in world(), by in any::<u64>()) {
        let tools = shuffled((0..world.tools.len()).collect(), by);
        let turned = world.records.iter().map(|record| {
            let entries = shuffled(record.entries.clone(), by.rotate_left(7));
            let people = shuffled(record.people.clone(), by);
            Record { entries, people, ..record.clone() }
        });
        let turned = shuffled(turned.collect(), by.rotate_left(23));
        let turned = answers(&world, &tools, &turned.iter().collect::<Vec<_>>());
        prop_assert_eq!(world.as_written(), turned);
    }

    #[test]
    fn a_record_given_twice_changes_nothing(world in world(), at in any::<prop::sample::Index>()) {
        let again = (!world.records.is_empty()).then(|| at.get(&world.records).clone());
        let again: Vec<Record> = again.into_iter().collect();
        prop_assert_eq!(world.as_written(), world.with(&again));
    }

    #[test]
    fn a_record_written_as_two_of_its_day_changes_nothing(world in world(), bits in any::<u64>()) {
        let halves = world.records.iter().flat_map(|record| split(record, bits));
        let halved = World { records: halves.collect(), ..world.clone() };
        prop_assert_eq!(world.as_written(), halved.as_written(), "{:?}", halved.records);
    }

    /// Of the day of the list: what it says is then seen, and no longer only
    /// listed, so that no other record of that day is there to dispute it.
    #[test]
    fn a_record_that_says_what_the_list_says_changes_nothing(mut world in world()) {
        world.dated = true;
        world.records.retain(|record| record.day != LISTED);
        let entries = (0..).zip(&world.tools).map(|(mark, tool)| tool.repeated(mark));
        let mut entries: Vec<_> = entries.collect();
        if let Some(paper) = &world.paper {
            let missing = paper.contains("lost");
            let parts = paper.split(", ").filter(|_| !missing).map(str::to_owned).collect();
            entries.push(Entry { mark: Some(4), missing, parts });
        }
        let certificate = "certificates: [{ kind: workshop certificate, issued: 2024-05-05 }]";
        let people = vec![format!("{{ name: A. Holder, aboard: yes, {certificate} }}")];
        let again = Record { day: LISTED, whole: false, entries, people };
        prop_assert_eq!(world.as_written(), world.with(&[again]));
    }
}

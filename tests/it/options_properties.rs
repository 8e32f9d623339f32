//! What more, less or better may do to what a kit leaves open, and whether the
//! single tool that lifts most keeps its promise, on shipped vessels changed at
//! random.

mod changes;

use crate::kit;
use crate::properties::config;
use changes::{Change, apply, case, hiding, measured, rail};
use kitmuster::engine::{self, Depth};
use kitmuster::freeing::Prepared;
use kitmuster::freeing::{self, Lift, Lifted, Options, Request, Terms};
use kitmuster::load::{self, Library};
use kitmuster::measure::{Answer, Day};
use kitmuster::model::finding::{Action, Target};
use kitmuster::model::inspection::Inspection;
use kitmuster::model::options::{Answered, JudgedSet, Outlook, OwnHooks};
use kitmuster::model::reason::{Demand, Reason};
use kitmuster::model::vessel::{Datum, State, Tool, Trust, Vessel, Whereabouts};
use kitmuster::model::vocabulary::AttributeId;
use proptest::prelude::*;
use std::sync::OnceLock;

struct Shipped {
    library: Library,
    prepared: Prepared,
    /// Those that are shipped, and one that has one of everything.
    vessels: Vec<Vessel>,
}

fn shipped() -> &'static Shipped {
    static SHIPPED: OnceLock<Shipped> = OnceLock::new();
    SHIPPED.get_or_init(|| {
        let library = kit::library();
        let prepared = Prepared::new(library.practice.as_ref().unwrap());
        let full = include_str!("options_cases/full.yaml");
        let mut vessels = kit::vessels(&library);
        vessels.push(load::read_vessel("vessel.yaml", full, &library.vocabulary).unwrap().0);
        Shipped { library, prepared, vessels }
    })
}

fn day(text: &str) -> Day {
    Day::parse(text).unwrap()
}

fn later(mut day: Day, days: u32) -> Day {
    for _ in 0..days {
        day = day.next();
    }
    day
}

fn attribute(key: &str) -> AttributeId {
    shipped().library.vocabulary.find_attribute(key).unwrap()
}

/// What is open, without the ways to what is closed.
fn outlook(vessel: &Vessel, days: (Day, Day)) -> Outlook {
    let shipped = shipped();
    shipped.prepared.outlook(&shipped.library.vocabulary, vessel, days, Depth::Findings)
}

fn request<'a>(vessel: &'a Vessel, days: (Day, Day), trust: Trust) -> Request<'a> {
    Request {
        terms: Terms {
            vocabulary: &shipped().library.vocabulary,
            prepared: &shipped().prepared,
            catalogues: &[],
        },
        vessel,
        inspections: &[],
        departure: days.0,
        back: Some(days.1),
        trust,
    }
}

/// The answer to one choice, and where it stands.
#[derive(Debug, Clone, PartialEq, Eq)]
struct Told {
    choice: String,
    hooks: OwnHooks,
    answer: Answer,
}

fn told(outlook: &Outlook) -> Vec<Told> {
    let practice = shipped().prepared.practice();
    let mut all = Vec::new();
    for (answered, situation) in
        outlook.all().zip(practice.situations.iter().chain(&practice.along))
    {
        for (index, choice) in answered.choices.iter().enumerate() {
            let choice_id = format!("{}, choice {}", situation.id, index + 1);
            all.push(Told { choice: choice_id, hooks: answered.hooks, answer: choice.answer });
        }
    }
    all
}

/// How good an answer is.
fn rank(answer: Answer) -> u8 {
    match answer {
        Answer::No => 0,
        Answer::Unknown => 1,
        Answer::Yes => 2,
    }
}

fn nothing_is_worse(before: &Outlook, after: &Outlook) -> Result<(), TestCaseError> {
    for (was, is) in told(before).iter().zip(told(after)) {
        prop_assert!(rank(is.answer) >= rank(was.answer), "{was:?} became {is:?}");
    }
    Ok(())
}

/// A tool of some vessel, aboard and in order.
fn in_order(vessel: usize, tool: usize) -> Option<Tool> {
    let donor = &shipped().vessels[vessel % shipped().vessels.len()];
    let mut tool = donor.kit.get(tool % donor.kit.len().max(1))?.clone();
    tool.mark = format!("{} of another", tool.mark);
    tool.parts.clear();
    tool.state = State::Serviceable;
    tool.whereabouts = Whereabouts::Aboard;
    Some(tool)
}

/// The vessel after what the step tells its reader to do, and no more.
fn carried_out(options: &Options, lift: &Lift) -> Vessel {
    let shipped = shipped();
    let words = &shipped.library.vocabulary;
    let (vessel, outlook) = (&options.vessel, &options.outlook);
    let mut by_hand = vessel.clone();
    match (lift.step.action, &lift.step.target) {
        (Action::Repair, Target::Tool(tool)) => by_hand.kit[*tool].state = State::Serviceable,
        (Action::Lengthen, Target::Tool(tool)) => {
            lift.step.reasons.iter().for_each(|reason| lengthen(&mut by_hand.kit[*tool], reason));
        }
        _ => {
            let (prepared, departure) = (&shipped.prepared, options.asked.departure);
            return prepared.performed(words, vessel, outlook, &lift.judgement, departure);
        }
    }
    by_hand
}

/// Lengthens to the figure of the step; a step that lengthens may tell to
/// repair too.
fn lengthen(tool: &mut Tool, reason: &Reason) {
    match reason {
        Reason::TooShortForRail { attribute, least, .. }
        | Reason::OutOfSpecification { attribute, demand: Demand::Least(least), .. } => {
            tool.set(*attribute, vec![measured(Datum::Figure(least.clone()))]);
        }
        Reason::NotServiceable => tool.state = State::Serviceable,
        _ => {}
    }
}

/// The situations that stand better, in which the vessel's own hooks count.
fn better(before: &Outlook, after: &Outlook) -> Vec<Lifted> {
    let of = |along: bool, before: &[Answered], after: &[Answered]| {
        let pairs = before.iter().zip(after).enumerate();
        let counting = pairs.filter(|(_, (was, _))| was.hooks != OwnHooks::NoneAboard);
        let one = |(situation, (was, is)): (usize, (&Answered, &Answered))| {
            let (from, to) = (was.best(), is.best()?);
            // Open with tools that are short is worse than any other way.
            let at = |of: &Answered, best: usize| (of.choices[best].answer != Answer::Yes, best);
            let better = from.is_none_or(|from| at(is, to) < at(was, from));
            better.then_some(Lifted { situation, along, from, to })
        };
        counting.filter_map(one).collect::<Vec<_>>()
    };
    let own = of(false, &before.situations, &after.situations);
    let along = of(true, &before.along, &after.along);
    [own, along].concat()
}

/// Records of two inspections: one to be laid over, and one that comes later
/// than any departure.
fn records() -> Vec<Inspection> {
    let read = |on: &str, freeboard: &str| {
        let text = format!(
            "format: inspection/1\nvessel: Any\non: {on}\nfreeboard: {freeboard}\nfound: []\n"
        );
        load::read_inspection("record.yaml", &text, &shipped().library.vocabulary).unwrap().0
    };
    vec![read("2026-11-30", "3 ft"), read("2026-12-24", "9 ft")]
}

/// What there is to compare in options; of what is judged, the findings and
/// ways.
fn said(options: &Options) -> impl PartialEq + std::fmt::Debug {
    let judged = options.outlook.judged.iter().map(|JudgedSet { answer, judgement, .. }| {
        let way = judgement.inverses.as_ref().map(|inverses| inverses.way.clone());
        (*answer, judgement.findings.clone(), way)
    });
    let stations = options.stations.iter().map(|at| (at.name.clone(), told(&at.outlook)));
    let lift = options.lift.as_ref().map(|lift| (lift.step.clone(), lift.lifted.clone()));
    (
        options.asked,
        options.vessel.clone(),
        told(&options.outlook),
        judged.collect::<Vec<_>>(),
        lift,
        stations.collect::<Vec<_>>(),
    )
}

/// A check of the vessel and what is told after it, and the same asked alone.
fn after_a_check(
    (vessel, days): &(Vessel, (Day, Day)),
    back: Option<Day>,
    records: &[Inspection],
    trust: Trust,
) -> (Options, Options) {
    let shipped = shipped();
    let check = engine::check(&engine::Request {
        vocabulary: &shipped.library.vocabulary,
        profiles: &shipped.library.profiles,
        asked: &[],
        vessel,
        inspections: records,
        departure: days.0,
        back,
        trust,
        depth: Depth::Findings,
    });
    let (vocabulary, prepared) = (&*shipped.library.vocabulary, &shipped.prepared);
    let of_check = freeing::of_check(&Terms { vocabulary, prepared, catalogues: &[] }, &check);
    let asked = Request { inspections: records, back, ..request(vessel, *days, trust) };
    (of_check, freeing::options(&asked))
}

proptest! {
    #![proptest_config(config(16, 48))]

    #[test]
    fn one_more_serviceable_tool_closes_nothing(
        case in case(), from in 0_usize..100, tool in 0_usize..40,
    ) {
        let (vessel, days) = case.parts();
        let mut richer = vessel.clone();
        richer.kit.extend(in_order(from, tool));
        nothing_is_worse(&outlook(&vessel, days), &outlook(&richer, days))?;
    }

    #[test]
    fn a_lower_rail_closes_nothing(
        case in case(), low in 200_u32..2200, range in 0_u32..300, down in (0_u32..1500, 0_u32..1500),
    ) {
        let (mut vessel, days) = case.parts();
        let mut lower = vessel.clone();
        rail(&mut vessel, low, low + range);
        let lowest = low.saturating_sub(down.0).max(100);
        rail(&mut lower, lowest, (low + range).saturating_sub(down.1).max(lowest));
        nothing_is_worse(&outlook(&vessel, days), &outlook(&lower, days))?;
    }

    #[test]
    fn a_shorter_trip_closes_nothing(case in case(), days_away in 0_u32..20) {
        let (vessel, (out, back)) = case.parts();
        let sooner = later(out, days_away.min(case.days));
        nothing_is_worse(&outlook(&vessel, (out, back)), &outlook(&vessel, (out, sooner)))?;
    }

    #[test]
    fn what_is_certain_while_a_fact_is_missing_stays_so_once_it_is_known(
        case in case(), hidden in hiding(),
    ) {
        let (known, days) = case.parts();
        let mut unknown = known.clone();
        apply(&mut unknown, &hidden);
        let (sooner, then) = (told(&outlook(&unknown, days)), told(&outlook(&known, days)));
        for (sooner, then) in sooner.iter().zip(&then) {
            // With its type filled in, a hook may turn out to be of another
            // one than asked. Where none of that type is aboard any more, the
            // question is about a hook from elsewhere, of unknown wire.
            let elsewhere = then.hooks == OwnHooks::NoneAboard && sooner.hooks != then.hooks;
            if matches!(hidden, Change::HookUntyped(_)) && elsewhere {
                continue;
            }
            let stands = sooner.answer == Answer::Unknown || sooner.answer == then.answer;
            prop_assert!(stands, "{sooner:?} became {then:?}");
        }
    }

    #[test]
    fn believing_only_what_was_measured_contradicts_nothing(case in case()) {
        let (vessel, days) = case.parts();
        let of = |trust| told(&freeing::options(&request(&vessel, days, trust)).outlook);
        for (measured, all) in of(Trust::Measured).iter().zip(of(Trust::All)) {
            let agrees = [measured.answer, all.answer].contains(&Answer::Unknown);
            prop_assert!(agrees || measured.answer == all.answer, "{measured:?} but {all:?}");
        }
    }

    #[test]
    fn a_lift_carried_out_lifts_exactly_what_is_claimed(case in case()) {
        let (vessel, days) = case.parts();
        let options = freeing::options(&request(&vessel, days, Trust::All));
        let Some(lift) = &options.lift else { return Ok(()) };
        let after = outlook(&carried_out(&options, lift), days);
        nothing_is_worse(&options.outlook, &after)?;
        prop_assert_eq!(better(&options.outlook, &after), lift.lifted.clone(), "{:?}", lift.step);
    }

    #[test]
    fn what_is_told_after_a_check_is_what_is_told_alone(
        case in case(), is_back_known: bool, is_recorded: bool, is_strict: bool,
    ) {
        let parts = case.parts();
        let back = is_back_known.then_some(parts.1.1);
        let records = if is_recorded { records() } else { Vec::new() };
        let trust = if is_strict { Trust::Measured } else { Trust::All };
        let (of_check, alone) = after_a_check(&parts, back, &records, trust);
        prop_assert_eq!(said(&of_check), said(&alone));
    }
}

//! Each inverse against the forward check, and what more or less knowledge
//! may do to a verdict, on shipped vessels changed at random.

use crate::kit;
use crate::whole::{cases, is_whole};
use kitmuster::engine::{self, Request};
use kitmuster::load::Library;
use kitmuster::measure::{Day, Figure, Length, Quantity, Rounding, System};
use kitmuster::model::check::{Check, Inverses, Judgement};
use kitmuster::model::finding::{GoodUpTo, ReadyUntil, Verdict, WayToReady};
use kitmuster::model::place::Place;
use kitmuster::model::profile::Profile;
use kitmuster::model::vessel::{
    Datum, Freeboard, FreeboardReading, How, State, Station, Trust, Vessel, Whereabouts,
};
use proptest::prelude::*;
use proptest::test_runner::RngSeed;
use std::sync::{Arc, OnceLock};

struct Shipped {
    library: Library,
    vessels: Vec<Vessel>,
    profiles: Vec<Arc<Profile>>,
}

fn shipped() -> &'static Shipped {
    static SHIPPED: OnceLock<Shipped> = OnceLock::new();
    SHIPPED.get_or_init(|| {
        let library = kit::library();
        let vessels = kit::vessels(&library);
        let profiles = library.profiles.iter().filter(|p| p.encoded && !p.base).cloned().collect();
        Shipped { library, vessels, profiles }
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

fn check(vessel: &Vessel, profile: &Arc<Profile>, departure: Day, back: Day) -> Check {
    let shipped = shipped();
    engine::check(&Request {
        vocabulary: &shipped.library.vocabulary,
        profiles: &shipped.library.profiles,
        asked: std::slice::from_ref(profile),
        vessel,
        inspections: &[],
        departure,
        back: Some(back),
        trust: Trust::All,
        depth: engine::Depth::Whole,
    })
}

fn inverses(judgement: &Judgement) -> &Inverses {
    judgement.inverses.as_ref().unwrap_or_else(|| panic!("a whole check"))
}

/// One change to a vessel.
#[derive(Debug, Clone)]
enum Twist {
    Scale(usize, usize, u8),
    Blank(usize, usize),
    Break(usize),
    Ashore(usize),
    Remove(usize),
    Inspect(usize, u32),
    Expire(usize, u32),
    Unstated(usize),
    Partial,
    Freeboard(u32, u32),
}

fn twist() -> impl Strategy<Value = Twist> {
    let (tool, attribute) = (0_usize..40, 0_usize..8);
    prop_oneof![
        4 => (tool.clone(), attribute.clone(), 80_u8..121).prop_map(|(t, a, p)| Twist::Scale(t, a, p)),
        2 => (tool.clone(), attribute).prop_map(|(t, a)| Twist::Blank(t, a)),
        1 => tool.clone().prop_map(Twist::Break),
        1 => tool.clone().prop_map(Twist::Ashore),
        2 => tool.clone().prop_map(Twist::Remove),
        2 => (tool.clone(), 0_u32..60).prop_map(|(t, d)| Twist::Inspect(t, d)),
        2 => (tool.clone(), 0_u32..30).prop_map(|(t, d)| Twist::Expire(t, d)),
        1 => tool.prop_map(Twist::Unstated),
        1 => Just(Twist::Partial),
        3 => (500_u32..2200, 0_u32..400).prop_map(|(low, more)| Twist::Freeboard(low, low + more)),
    ]
}

fn departure() -> Day {
    day("2026-12-02")
}

fn apply(vessel: &mut Vessel, twist: &Twist) {
    let count = vessel.kit.len().max(1);
    let at = |tool: &usize| tool % count;
    if vessel.kit.is_empty() {
        return;
    }
    match twist {
        Twist::Scale(tool, attribute, percent) => scale(vessel, at(tool), *attribute, *percent),
        Twist::Blank(tool, attribute) => {
            let tool = &mut vessel.kit[at(tool)];
            if !tool.attributes.is_empty() {
                let index = attribute % tool.attributes.len();
                tool.attributes.remove(index);
            }
        }
        Twist::Break(tool) => vessel.kit[at(tool)].state = State::Broken,
        Twist::Ashore(tool) => vessel.kit[at(tool)].whereabouts = Whereabouts::Ashore,
        Twist::Remove(tool) => drop(vessel.kit.remove(at(tool))),
        Twist::Inspect(tool, days) => {
            vessel.kit[at(tool)].inspected = Some(later(day("2025-11-10"), *days));
        }
        Twist::Expire(tool, days) => {
            vessel.kit[at(tool)].expires = Some(later(day("2026-11-25"), *days));
        }
        Twist::Unstated(tool) => vessel.kit[at(tool)].state = State::Unknown,
        Twist::Partial => vessel.coverage.everything = false,
        Twist::Freeboard(low, high) => {
            set_freeboard(vessel, Length::from_millimetres(*low), Length::from_millimetres(*high));
        }
    }
}

fn scale(vessel: &mut Vessel, tool: usize, attribute: usize, percent: u8) {
    let tool = &mut vessel.kit[tool];
    if tool.attributes.is_empty() {
        return;
    }
    let index = attribute % tool.attributes.len();
    for reading in &mut tool.attributes[index].1 {
        if let Datum::Figure(figure) = &mut reading.datum
            && let Quantity::Length(length) = figure.quantity
        {
            let scaled = length.nanometres() / 100 * i64::from(percent);
            *figure = metric(Length::from_nanometres(scaled).unwrap());
        }
    }
}

fn metric(length: Length) -> Figure {
    Figure::reckoned(Quantity::Length(length), System::Metric, Rounding::Up)
}

fn set_freeboard(vessel: &mut Vessel, low: Length, high: Length) {
    let reading = FreeboardReading {
        low: metric(low),
        high: metric(high),
        load: None,
        by: None,
        on: None,
        how: How::Measured,
        error: None,
        place: Place::default(),
    };
    let stations = vec![Station::of(vec![reading])];
    vessel.freeboard = Freeboard { stations, ..vessel.freeboard.clone() };
}

/// A shipped vessel, how it was changed, the profile and the trip.
#[derive(Debug, Clone)]
struct Case {
    vessel: usize,
    profile: usize,
    twists: Vec<Twist>,
    days: u32,
}

fn case() -> impl Strategy<Value = Case> {
    let twists = prop::collection::vec(twist(), 0..5);
    (0_usize..100, 0_usize..100, twists, 0_u32..20)
        .prop_map(|(vessel, profile, twists, days)| Case { vessel, profile, twists, days })
}

impl Case {
    fn parts(&self) -> (Vessel, Arc<Profile>, Day, Day) {
        let shipped = shipped();
        let mut vessel = shipped.vessels[self.vessel % shipped.vessels.len()].clone();
        self.twists.iter().for_each(|twist| apply(&mut vessel, twist));
        let profile = Arc::clone(&shipped.profiles[self.profile % shipped.profiles.len()]);
        (vessel, profile, departure(), later(departure(), self.days))
    }
}

fn only(check: &Check) -> &Judgement {
    &check.judgements[0]
}

/// So many cases as `cases` says, or as the environment asks for. The small
/// share is the same each time, a whole run draws others.
pub(crate) fn config(small: u32, whole: u32) -> ProptestConfig {
    let config = ProptestConfig { failure_persistence: None, ..ProptestConfig::default() };
    if std::env::var_os("PROPTEST_CASES").is_some() {
        return config;
    }
    let rng_seed = if is_whole() { RngSeed::Random } else { RngSeed::Fixed(2026) };
    ProptestConfig { cases: cases(small, whole), rng_seed, ..config }
}

proptest! {
    #![proptest_config(config(64, 256))]

    #[test]
    fn one_day_after_ready_until_it_is_not_ready(case in case()) {
        let (vessel, profile, out, _) = case.parts();
        let verdict = |back| check(&vessel, &profile, out, back).verdict;
        match only(&check(&vessel, &profile, out, out)).ready_until {
            ReadyUntil::None => prop_assert_ne!(verdict(out), Verdict::Ready),
            ReadyUntil::Day(last) => {
                prop_assert_eq!(verdict(last), Verdict::Ready);
                prop_assert_ne!(verdict(last.next()), Verdict::Ready);
            }
            ReadyUntil::NoEnd => prop_assert_eq!(verdict(later(out, 4000)), Verdict::Ready),
        }
    }

    #[test]
    fn one_nanometre_above_good_up_to_it_is_not_ready(case in case()) {
        let (vessel, profile, out, back) = case.parts();
        let at = |length: Length| {
            let mut vessel = vessel.clone();
            set_freeboard(&mut vessel, length, length);
            check(&vessel, &profile, out, back)
        };
        let own = vessel.freeboard.stations.iter().flat_map(|s| &s.readings).map(|r| r.highest()).max().unwrap();
        match &inverses(only(&check(&vessel, &profile, out, back))).good_up_to {
            GoodUpTo::Freeboard { length, gives_out } => {
                prop_assert!(*length >= own);
                prop_assert_eq!(at(*length).verdict, Verdict::Ready);
                let above = at(length.just_above());
                prop_assert_ne!(above.verdict, Verdict::Ready);
                prop_assert!(!gives_out.is_empty());
                for index in gives_out {
                    let finding = only(&above).findings.iter().find(|f| f.requirement == *index).unwrap();
                    prop_assert_ne!(finding.outcome, kitmuster::model::finding::Outcome::Met);
                }
            }
            GoodUpTo::OnlyBelow { length, .. } => {
                prop_assert!(*length < own);
                prop_assert_eq!(at(*length).verdict, Verdict::Ready);
                prop_assert_ne!(at(length.just_above()).verdict, Verdict::Ready);
                prop_assert_ne!(check(&vessel, &profile, out, back).verdict, Verdict::Ready);
            }
            GoodUpTo::None => {
                let low = vessel.freeboard.stations.iter().flat_map(|s| &s.readings).map(|r| r.lowest()).min().unwrap();
                for millimetres in [1, 500, 1219, 1220, 1300, 1600, 2000] {
                    let length = Length::from_millimetres(millimetres);
                    prop_assert!(length > low || at(length).verdict != Verdict::Ready);
                }
                prop_assert_ne!(check(&vessel, &profile, out, back).verdict, Verdict::Ready);
            }
            GoodUpTo::NoLimit => {
                prop_assert_eq!(at(own).verdict, Verdict::Ready);
                prop_assert_eq!(at(Length::from_millimetres(100_000)).verdict, Verdict::Ready);
            }
        }
    }

    #[test]
    fn the_stretches_say_what_a_check_says(case in case()) {
        let (vessel, profile, out, back) = case.parts();
        for stretch in &inverses(only(&check(&vessel, &profile, out, back))).stretches {
            for length in [stretch.from, stretch.to] {
                let mut vessel = vessel.clone();
                set_freeboard(&mut vessel, length, length);
                prop_assert_eq!(check(&vessel, &profile, out, back).verdict, stretch.verdict, "at {:?}", length);
            }
        }
    }

    #[test]
    fn after_every_step_of_the_shortest_way_it_is_ready(case in case()) {
        let (vessel, profile, out, back) = case.parts();
        let first = check(&vessel, &profile, out, back);
        let judgement = only(&first);
        match &inverses(judgement).way {
            WayToReady::Already => prop_assert_eq!(first.verdict, Verdict::Ready),
            WayToReady::None => prop_assert!(false, "no way for {} under {}", vessel.name, profile.id),
            WayToReady::Steps { steps, .. } => {
                prop_assert!(!steps.is_empty());
                let mended = engine::repaired(&shipped().library.vocabulary, &vessel, judgement, out);
                let again = check(&mended, &profile, out, back);
                prop_assert_eq!(again.verdict, Verdict::Ready, "{:?}", only(&again).findings);
            }
        }
    }

    #[test]
    fn blanking_a_measurement_only_ever_leads_to_cannot_tell(
        case in case(), tool in 0_usize..40, attribute in 0_usize..8,
    ) {
        let (vessel, profile, out, back) = case.parts();
        let before = check(&vessel, &profile, out, back).verdict;
        let mut blanked = vessel;
        apply(&mut blanked, &Twist::Blank(tool, attribute));
        let after = check(&blanked, &profile, out, back).verdict;
        prop_assert!(after == before || after == Verdict::CannotTell, "{:?} became {:?}", before, after);
    }

    #[test]
    fn another_tool_never_makes_it_worse(
        case in case(), from in 0_usize..100, tool in 0_usize..40,
    ) {
        let (vessel, profile, out, back) = case.parts();
        let before = check(&vessel, &profile, out, back).verdict;
        let donor = &shipped().vessels[from % shipped().vessels.len()];
        let mut richer = vessel;
        if let Some(tool) = donor.kit.get(tool % donor.kit.len().max(1)) {
            let mut tool = tool.clone();
            tool.mark = format!("{} of another", tool.mark);
            tool.parts.clear();
            richer.kit.push(tool);
        }
        prop_assert!(check(&richer, &profile, out, back).verdict <= before);
    }
}

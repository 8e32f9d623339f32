//! The second opinion on a whole vessel: which rules judge it, every day of
//! the trip, every freeboard at which an answer can change, and the worst of
//! it. What a tool, a condition or a certificate says is the policy's word;
//! which tool serves where is tried out in `assign`.

use crate::assign::{self, Answer, Asked, Lot, Part, Pass};
use crate::figures::next;
use crate::kit::{ENDLESS, Reading, Vessel};
use crate::policy::Policy;
use crate::rules::{Requirement, Rules, Words};
use serde_json::{Value as Json, json};
use std::collections::{BTreeMap, BTreeSet, HashMap};
use std::rc::Rc;

/// What can be said of a requirement, from best to worst.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) enum Outcome {
    NotApplicable,
    Met,
    CannotTell,
    NotMet,
}

/// The verdict, from best to worst.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) enum Verdict {
    Ready,
    CannotTell,
    NotReady,
}

/// What best assignments say of one requirement: more than one outcome where
/// they differ.
pub(crate) type Said = BTreeSet<Outcome>;

/// One profile's opinion.
#[derive(Debug, Clone)]
pub(crate) struct Opinion {
    pub(crate) verdict: Verdict,
    pub(crate) said: Vec<Said>,
    /// Where all is one scene: the outcomes that some pair of best
    /// assignments gives together, part by part.
    pub(crate) together: Option<Rc<Scene>>,
}

/// The opinion in one scene.
#[derive(Debug)]
pub(crate) struct Scene {
    verdict: Verdict,
    said: Vec<Said>,
    binds: Vec<Answer>,
    strict: Vec<Part>,
    generous: Vec<Part>,
    /// Positions of the requirements that want tools.
    wanting: Vec<usize>,
}

/// The opinion on a vessel.
pub(crate) struct Whole {
    pub(crate) verdict: Verdict,
    /// By profile, for those that judge.
    pub(crate) profiles: BTreeMap<String, Opinion>,
}

/// Judges with the policy.
pub(crate) struct Judge<'a> {
    pub(crate) words: &'a Words,
    pub(crate) profiles: &'a [Rules],
    pub(crate) policy: Policy,
}

fn answers(said: &Json) -> BTreeMap<String, Answer> {
    let object = said.as_object().unwrap();
    object
        .iter()
        .map(|(key, value)| (key.clone(), u8::try_from(value.as_u64().unwrap()).unwrap()))
        .collect()
}

fn worst(a: &Said, b: &Said) -> Said {
    a.iter().flat_map(|a| b.iter().map(move |b| *a.max(b))).collect()
}

/// What two readings of one freeboard agree on.
fn agreed(a: &Said, b: &Said) -> Said {
    use Outcome::{CannotTell, Met, NotApplicable};
    let agree = |a: Outcome, b: Outcome| match (a, b) {
        (a, b) if a == b => a,
        (NotApplicable, Met) | (Met, NotApplicable) => Met,
        _ => CannotTell,
    };
    a.iter().flat_map(|a| b.iter().map(move |b| agree(*a, *b))).collect()
}

fn is_open(open: &BTreeMap<String, Answer>, spec: &str) -> Answer {
    open.get(spec).copied().unwrap_or(2)
}

type Over = (Verdict, Vec<Said>);

fn over(
    scenes: Vec<Over>,
    verdict: fn(Verdict, Verdict) -> Verdict,
    said: fn(&Said, &Said) -> Said,
) -> Over {
    let both = |a: Over, b: Over| {
        (verdict(a.0, b.0), a.1.iter().zip(&b.1).map(|(a, b)| said(a, b)).collect())
    };
    scenes.into_iter().reduce(both).unwrap()
}

fn agreed_verdict(a: Verdict, b: Verdict) -> Verdict {
    if a == b { a } else { Verdict::CannotTell }
}

impl Judge<'_> {
    /// The opinion on the vessel for its planned trip.
    pub(crate) fn vessel(&mut self, vessel: &Vessel) -> Whole {
        let days = days(vessel.depart, vessel.back);
        let (mut judging, mut open, mut gap) = (Vec::new(), false, false);
        let profiles = self.profiles;
        let mut seen = BTreeSet::new();
        for first in profiles.iter().filter(|p| !p.base && !p.fallback) {
            if !seen.insert(&first.rule) {
                continue;
            }
            let editions: Vec<&Rules> =
                profiles.iter().filter(|p| !p.base && p.rule == first.rule).collect();
            let (mut concerned, mut unnamed) = (Vec::new(), false);
            let mut covered = BTreeSet::new();
            for edition in &editions {
                let within = self.in_force(edition, &days);
                covered.extend(within.iter().copied());
                match self.names(edition, vessel) {
                    0 => {}
                    1 if !self.pointed_to(edition, vessel) => unnamed = true,
                    _ => concerned.push((*edition, within)),
                }
            }
            if concerned.is_empty() {
                open |= unnamed;
                continue;
            }
            gap |= days.iter().any(|day| !covered.contains(day));
            judging.extend(concerned.into_iter().filter(|(_, within)| !within.is_empty()));
        }
        if judging.is_empty() && !gap {
            judging.extend(profiles.iter().filter(|p| p.fallback).map(|p| (p, days.clone())));
        }
        let floor =
            if open || gap || judging.is_empty() { Verdict::CannotTell } else { Verdict::Ready };
        let mut whole = Whole { verdict: floor, profiles: BTreeMap::new() };
        for (rules, days) in judging {
            let opinion = self.profile(rules, vessel, &days);
            whole.verdict = whole.verdict.max(opinion.verdict);
            whole.profiles.insert(rules.id.clone(), opinion);
        }
        whole
    }

    /// Whether the rule names the vessel.
    fn names(&mut self, rules: &Rules, vessel: &Vessel) -> Answer {
        let said = self.policy.ask("names", &facts(rules, vessel, None, "names"));
        u8::try_from(said.as_u64().unwrap()).unwrap()
    }

    fn pointed_to(&mut self, rules: &Rules, vessel: &Vessel) -> bool {
        let facts = facts(rules, vessel, None, "names");
        self.policy.ask("pointed_to", &facts).as_bool().unwrap()
    }

    /// The days of the trip on which the edition is in force.
    fn in_force(&mut self, rules: &Rules, days: &[i64]) -> Vec<i64> {
        let mut holds = |day: &&i64| {
            let said = self.policy.ask("in_force", &json!({ "profile": rules.id, "day": day }));
            *said == json!(2)
        };
        days.iter().filter(|day| holds(day)).copied().collect()
    }

    fn profile(&mut self, rules: &Rules, vessel: &Vessel, days: &[i64]) -> Opinion {
        if !rules.encoded {
            return Opinion { verdict: Verdict::CannotTell, said: Vec::new(), together: None };
        }
        let governs = if rules.fallback { 2 } else { self.names(rules, vessel) };
        let mut bench = Bench {
            judge: self,
            rules,
            vessel,
            governs,
            days,
            scenes: HashMap::new(),
            fitted: HashMap::new(),
            dated: HashMap::new(),
        };
        let by_day = days.iter().map(|day| bench.on(*day)).collect();
        let (verdict, said) = over(by_day, Verdict::max, worst);
        let together =
            if bench.scenes.len() == 1 { bench.scenes.into_values().next() } else { None };
        Opinion { verdict, said, together }
    }
}

fn days(depart: i64, back: i64) -> Vec<i64> {
    let mut days = vec![depart];
    while days[days.len() - 1] < back {
        days.push(next(days[days.len() - 1]));
    }
    days
}

/// The facts of a scene that can matter to a question.
fn facts(rules: &Rules, vessel: &Vessel, scene: Option<((i64, i64), i64)>, question: &str) -> Json {
    let mut facts = json!({ "profile": rules.id });
    for fact in &rules.matters[question] {
        facts[*fact] = match (*fact, scene) {
            ("permits", _) => json!(vessel.permits),
            ("gear", _) => json!(vessel.gear),
            ("areas", _) => json!(vessel.areas),
            ("features", _) => vessel.features.clone(),
            ("day", Some((_, day))) => json!(day),
            ("bases", Some((freeboard, _))) => bases(vessel, freeboard),
            (other, _) => panic!("no rule binds by it: {other}"),
        };
    }
    facts
}

fn bases(vessel: &Vessel, freeboard: (i64, i64)) -> Json {
    let (least, most) = vessel.hook_wire;
    json!({
        "freeboard": { "least": freeboard.0, "most": freeboard.1 },
        "hook": { "least": least, "most": most },
    })
}

/// A tool, the ends of a freeboard, a day.
type Asking = (usize, (i64, i64), i64);

struct Bench<'b, 'a> {
    judge: &'b mut Judge<'a>,
    rules: &'b Rules,
    vessel: &'b Vessel,
    governs: Answer,
    days: &'b [i64],
    scenes: HashMap<Known, Rc<Scene>>,
    /// What was said of a tool already: of its lines, and of its days.
    fitted: HashMap<Asking, Rc<BTreeMap<String, Answer>>>,
    dated: HashMap<usize, (Rc<Json>, Rc<Json>)>,
}

/// Everything that a scene is decided by.
type Known = (BTreeMap<String, Answer>, BTreeMap<String, Answer>, Vec<Lot>);

impl Bench<'_, '_> {
    fn on(&mut self, day: i64) -> Over {
        let vessel = self.vessel;
        let measured = !vessel.stations.is_empty() && vessel.stations.iter().all(|s| !s.is_empty());
        if !measured || vessel.rail != self.rules.rail {
            return self.scene((0, ENDLESS), day);
        }
        let by_station =
            vessel.stations.iter().map(|readings| self.station(readings, day)).collect();
        over(by_station, Verdict::max, worst)
    }

    /// Readings of one freeboard must agree, each within the tape's error.
    fn station(&mut self, readings: &[Reading], day: i64) -> Over {
        let thresholds = thresholds(self.rules);
        let mut ranges = BTreeSet::new();
        for Reading { low, high, error } in readings {
            ranges.insert((*low, *high));
            if *error > 0 {
                let least = (low - error).max(0);
                ranges.insert((least, (high - error).max(least)));
                ranges.insert((low + error, high + error));
                if low == high {
                    let near = thresholds.iter().flat_map(|t| [*t, t + 1]);
                    ranges.extend(near.filter(|f| *f > least && *f < high + error).map(|f| (f, f)));
                }
            }
        }
        let over_range = |(low, high)| self.range(low, high, day, &thresholds);
        let rivals = ranges.into_iter().map(over_range).collect();
        over(rivals, agreed_verdict, agreed)
    }

    /// The worst over a range: at both ends and on both sides of each threshold.
    fn range(&mut self, low: i64, high: i64, day: i64, thresholds: &[i64]) -> Over {
        let mut points = BTreeSet::from([low, high]);
        points
            .extend(thresholds.iter().flat_map(|t| [*t, t + 1]).filter(|f| low < *f && *f < high));
        let scenes = points.into_iter().map(|f| self.scene((f, f), day)).collect();
        over(scenes, Verdict::max, worst)
    }

    fn scene(&mut self, freeboard: (i64, i64), day: i64) -> Over {
        let (rules, vessel) = (self.rules, self.vessel);
        let policy = &mut self.judge.policy;
        let told = |question: &str| facts(rules, vessel, Some((freeboard, day)), question);
        let mut asked = told("binds");
        asked["governs"] = json!(self.governs);
        let binds = answers(&policy.ask("binds", &asked));
        let open = answers(&policy.ask("open", &told("open")));
        let own = if rules.requirements.iter().any(|r| r.wanted.is_none()) {
            let mut asked = told("own");
            asked["people"] = vessel.people.clone();
            let ask = |hook: &Json| {
                let asked = json!({ "profile": rules.id, "kind": "hook", "tool": hook });
                (*policy.ask("fits", &asked)).clone()
            };
            let hooks: Option<Vec<Json>> =
                vessel.hooks.as_array().map(|hooks| hooks.iter().map(ask).collect());
            asked["hooks"] = json!(hooks);
            asked["hooks_all_listed"] = json!(if vessel.all_listed("hook") { 2 } else { 1 });
            answers(&policy.ask("own", &asked))
        } else {
            BTreeMap::new()
        };
        let lots = self.lots(freeboard, day, &open);
        let key = (binds.clone(), own.clone(), lots.clone());
        if let Some(scene) = self.scenes.get(&key) {
            return (scene.verdict, scene.said.clone());
        }
        let scene = decide(&self.rules.requirements, &binds, &own, &lots);
        let over = (scene.verdict, scene.said.clone());
        self.scenes.insert(key, Rc::new(scene));
        over
    }

    /// The tools, with what the policy says of each, equal ones together.
    fn lots(
        &mut self,
        freeboard: (i64, i64),
        day: i64,
        open: &BTreeMap<String, Answer>,
    ) -> Vec<Lot> {
        let vessel = self.vessel;
        let named: BTreeSet<&String> = vessel.tools.iter().flat_map(|tool| &tool.fits).collect();
        let mut lots: Vec<Lot> = Vec::new();
        for (index, tool) in vessel.tools.iter().enumerate() {
            let fits = self.fits(index, freeboard, day, open);
            if tool.whole == 0 || fits.values().all(|answer| *answer == 0) {
                continue;
            }
            let marks =
                if named.contains(&tool.mark) { vec![tool.mark.clone()] } else { Vec::new() };
            let lot =
                Lot { count: tool.whole, fits, marks, names: tool.fits.clone(), unlisted: false };
            let same = |other: &&mut Lot| Lot { count: lot.count, ..(**other).clone() } == lot;
            match lots.iter_mut().find(same) {
                Some(other) => other.count += lot.count,
                None => lots.push(lot),
            }
        }
        for kind in self.rules.kinds.values().flatten().collect::<BTreeSet<_>>() {
            if vessel.all_listed(kind) {
                continue;
            }
            let specs = self.rules.kinds.iter().filter(|(_, kinds)| kinds.contains(kind));
            let fits = specs.map(|(spec, _)| (spec.clone(), 1.min(is_open(open, spec)))).collect();
            lots.push(Lot { count: 8, fits, marks: Vec::new(), names: Vec::new(), unlisted: true });
        }
        lots
    }

    /// What is left of a specification once condition, place, days and
    /// inspection have had their say.
    fn fits(
        &mut self,
        index: usize,
        freeboard: (i64, i64),
        day: i64,
        open: &BTreeMap<String, Answer>,
    ) -> BTreeMap<String, Answer> {
        let tool = &self.vessel.tools[index];
        let rules = self.rules;
        let fits = self.fitted(index, freeboard, day);
        let (serves, inspected) = self.dated(index);
        let day = day.to_string();
        let answer = |json: &Json| u8::try_from(json.as_u64().unwrap()).unwrap();
        let serves = answer(&serves[&day]);
        let inspection = |spec: &str| {
            let requirement =
                rules.requirements.iter().find(|r| spec.split('/').next() == Some(&r.id));
            let months = requirement.and_then(|r| r.months)?;
            Some(answer(&inspected[months.to_string()][&day]))
        };
        let due = self.judge.words.class(&tool.kind) == "tool";
        let all = |(spec, fit): (String, Answer)| {
            let inspected = inspection(&spec).filter(|_| due).unwrap_or(2);
            let fit = fit.min(is_open(open, &spec)).min(serves).min(inspected);
            (spec, fit)
        };
        fits.iter().map(|(spec, fit)| (spec.clone(), *fit)).map(all).collect()
    }

    /// What the policy says of a tool's lines.
    fn fitted(
        &mut self,
        index: usize,
        freeboard: (i64, i64),
        day: i64,
    ) -> Rc<BTreeMap<String, Answer>> {
        let tool = &self.vessel.tools[index];
        let hangs = self.rules.bases.get(&tool.kind).is_some_and(|b| b.contains(&"freeboard"));
        let freeboard = if hangs { freeboard } else { (0, 0) };
        let day = if tool.told["conforms"] == json!([]) { 0 } else { day };
        if let Some(said) = self.fitted.get(&(index, freeboard, day)) {
            return Rc::clone(said);
        }
        let question = question(self.rules, self.vessel, index, freeboard, day);
        let said = Rc::new(answers(&self.judge.policy.ask("fits", &question)));
        self.fitted.insert((index, freeboard, day), Rc::clone(&said));
        said
    }

    /// What it says of a tool's condition, place and days, and inspections.
    fn dated(&mut self, index: usize) -> (Rc<Json>, Rc<Json>) {
        if let Some(said) = self.dated.get(&index) {
            return said.clone();
        }
        let mut service = self.vessel.tools[index].service.clone();
        service["days"] = json!(self.days);
        let serves = self.judge.policy.ask("serves", &service);
        service["profile"] = json!(self.rules.id);
        let due = self.rules.data["intervals"] != json!([]);
        let inspected =
            if due { self.judge.policy.ask("inspected", &service) } else { Rc::default() };
        self.dated.insert(index, (Rc::clone(&serves), Rc::clone(&inspected)));
        (serves, inspected)
    }
}

/// What the policy is asked of a tool: the freeboard, the hooks and the day
/// only where they can matter.
pub(crate) fn question(
    rules: &Rules,
    vessel: &Vessel,
    index: usize,
    freeboard: (i64, i64),
    day: i64,
) -> Json {
    let tool = &vessel.tools[index];
    let mut question =
        json!({ "profile": rules.id, "kind": tool.kind, "tool": tool.told, "bases": {} });
    for base in rules.bases.get(&tool.kind).into_iter().flatten() {
        question["bases"][*base] = bases(vessel, freeboard)[*base].clone();
    }
    if tool.told["conforms"] != json!([]) {
        question["day"] = json!(day);
    }
    question
}

/// The freeboards at which the profile asks for something else.
pub(crate) fn thresholds(rules: &Rules) -> Vec<i64> {
    let requirements = rules.data["requirements"].as_array().unwrap();
    let conditions = requirements.iter().flat_map(|r| r["when"].as_array().unwrap());
    let figures: BTreeSet<i64> = conditions
        .filter(|c| c["is"] == "freeboard")
        .map(|c| c["figure"].as_i64().unwrap())
        .collect();
    figures.into_iter().collect()
}

fn decide(
    requirements: &[Requirement],
    binds: &BTreeMap<String, Answer>,
    own: &BTreeMap<String, Answer>,
    lots: &[Lot],
) -> Scene {
    let binds: Vec<Answer> = requirements.iter().map(|r| binds[&r.id]).collect();
    let wanting: Vec<usize> =
        (0..requirements.len()).filter(|r| requirements[*r].wanted.is_some()).collect();
    let asked: Vec<Asked<'_>> = wanting
        .iter()
        .map(|r| {
            let Requirement { id, required, wanted, .. } = &requirements[*r];
            Asked { wanted: wanted.as_ref().unwrap(), binds: binds[*r], required: *required, id }
        })
        .collect();
    let strict = assign::best(&asked, lots, Pass::Strict);
    let generous = assign::best(&asked, lots, Pass::Generous);
    let mut scene =
        Scene { verdict: Verdict::Ready, said: Vec::new(), binds, strict, generous, wanting };
    for (r, requirement) in requirements.iter().enumerate() {
        let bind = scene.binds[r];
        let (sure, possible) = match own.get(&requirement.id) {
            Some(answer) => (BTreeSet::from([*answer == 2]), BTreeSet::from([*answer > 0])),
            None => (scene.met(&scene.strict, r), scene.met(&scene.generous, r)),
        };
        let pairs = sure.iter().flat_map(|s| possible.iter().map(move |p| (*s, *p)));
        scene.said.push(if bind == 0 {
            [Outcome::NotApplicable].into()
        } else {
            pairs.map(|(s, p)| outcome(bind, s, p)).collect()
        });
        if let (Some(answer), true, true) =
            (own.get(&requirement.id), requirement.required, bind > 0)
        {
            scene.verdict = scene.verdict.max(match answer {
                2 => Verdict::Ready,
                0 if bind == 2 => Verdict::NotReady,
                _ => Verdict::CannotTell,
            });
        }
    }
    // Every best assignment meets as many required ones, so that any of them
    // tells whether all are met.
    for (parts, needed, verdict) in
        [(&scene.strict, 1, Verdict::CannotTell), (&scene.generous, 2, Verdict::NotReady)]
    {
        let unmet = |part: &Part| {
            let met = part.best.first().copied().unwrap_or(0);
            part.requirements.iter().any(|r| {
                let requirement = scene.wanting[*r];
                requirements[requirement].required
                    && scene.binds[requirement] >= needed
                    && met >> r & 1 == 0
            })
        };
        if parts.iter().any(unmet) {
            scene.verdict = scene.verdict.max(verdict);
        }
    }
    scene
}

fn outcome(binds: Answer, sure: bool, possible: bool) -> Outcome {
    match (binds, sure, possible) {
        (0, ..) => Outcome::NotApplicable,
        (1, true, _) | (2, true, true) => Outcome::Met,
        (2, false, false) => Outcome::NotMet,
        _ => Outcome::CannotTell,
    }
}

impl Scene {
    fn met(&self, parts: &[Part], requirement: usize) -> BTreeSet<bool> {
        let Some(r) = self.wanting.iter().position(|w| *w == requirement) else {
            return BTreeSet::new();
        };
        let of = parts.iter().filter(|part| part.requirements.contains(&r));
        let met: BTreeSet<bool> =
            of.flat_map(|part| part.best.iter().map(move |met| met >> r & 1 == 1)).collect();
        if met.is_empty() { BTreeSet::from([false]) } else { met }
    }

    /// Whether one strict and one generous best assignment give these outcomes
    /// together.
    pub(crate) fn allows(&self, outcomes: &[Outcome]) -> bool {
        let fits = |strict: &[u64], generous: &[u64]| {
            self.wanting.iter().enumerate().all(|(r, requirement)| {
                let met = |masks: &[u64]| masks.iter().any(|m| m >> r & 1 == 1);
                outcome(self.binds[*requirement], met(strict), met(generous))
                    == outcomes[*requirement]
            })
        };
        // Part by part, the strict choices that no outcome contradicts; few.
        let choices = |parts: &[Part]| -> Vec<Vec<u64>> {
            let mut all: Vec<Vec<u64>> = vec![Vec::new()];
            for part in parts {
                all = all
                    .iter()
                    .flat_map(|chosen| {
                        part.best.iter().map(|one| {
                            let mut more = chosen.clone();
                            more.push(*one);
                            more
                        })
                    })
                    .collect();
            }
            all
        };
        let (strict, generous) = (choices(&self.strict), choices(&self.generous));
        strict.iter().any(|s| generous.iter().any(|g| fits(s, g)))
    }
}

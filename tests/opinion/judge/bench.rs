//! One profile on one vessel: day by day, at every freeboard at which an
//! answer can change, what the policy says of each tool and each condition.

use super::scene::{Scene, decide};
use super::{Judge, Over, Verdict, agreed, agreed_verdict, answers, is_open, over, worst};
use crate::assign::{Answer, Lot};
use crate::kit::{ENDLESS, Reading, Vessel};
use crate::rules::Rules;
use serde_json::{Value as Json, json};
use std::collections::{BTreeMap, BTreeSet, HashMap};
use std::rc::Rc;

/// The facts of a scene that can matter to a question.
pub(super) fn facts(
    rules: &Rules,
    vessel: &Vessel,
    scene: Option<((i64, i64), i64)>,
    question: &str,
) -> Json {
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

pub(super) struct Bench<'b, 'a> {
    pub(super) judge: &'b mut Judge<'a>,
    pub(super) rules: &'b Rules,
    pub(super) vessel: &'b Vessel,
    pub(super) governs: Answer,
    pub(super) days: &'b [i64],
    pub(super) scenes: HashMap<Known, Rc<Scene>>,
    /// What was said of a tool already: of its lines, and of its days.
    pub(super) fitted: HashMap<Asking, Rc<BTreeMap<String, Answer>>>,
    pub(super) dated: HashMap<usize, (Rc<Json>, Rc<Json>)>,
}

/// Everything that a scene is decided by.
type Known = (BTreeMap<String, Answer>, BTreeMap<String, Answer>, Vec<Lot>);

impl Bench<'_, '_> {
    pub(super) fn on(&mut self, day: i64) -> Over {
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
        let thresholds = self.thresholds();
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

    /// The freeboards at which an answer can change: those at which the profile
    /// asks for something else, and, where tools are competed for, those at
    /// which a share comes to a length that is aboard. In the shipped profiles
    /// every share is a least length and hardly a tool serves two, so that both
    /// ends of a range tell enough.
    fn thresholds(&self) -> Vec<i64> {
        let mut freeboards: BTreeSet<i64> = thresholds(self.rules).into_iter().collect();
        if self.rules.made_up {
            for tool in &self.vessel.tools {
                let specs = self.rules.data["by_kind"][&tool.kind].as_array();
                for spec in specs.into_iter().flatten() {
                    turns(&spec["lines"], &tool.told["attributes"], &mut freeboards);
                }
            }
        }
        freeboards.into_iter().collect()
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
        let scene = decide(&self.rules.requirements, &binds, &own, &lots, self.judge.assign);
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

/// The freeboards beside which a length aboard turns from enough to too little
/// of a share, or from little enough to too much.
fn turns(lines: &Json, attributes: &Json, into: &mut BTreeSet<i64>) {
    let mut shares: Vec<(&Json, i64)> = Vec::new();
    for line in lines.as_array().unwrap() {
        for key in ["bound", "low", "high"] {
            let bound = &line["limit"][key];
            let limbs = bound["parts"].as_array().into_iter().flatten().chain([bound]);
            let of_freeboard = limbs.filter(|limb| limb["of"] == "freeboard");
            shares.extend(of_freeboard.map(|l| {
                let readings = &attributes[line["attribute"].as_str().unwrap()];
                (readings, l["percent"].as_i64().unwrap())
            }));
        }
    }
    for (readings, percent) in shares {
        for reading in readings.as_array().into_iter().flatten() {
            let (value, error) =
                (reading["value"].as_i64().unwrap(), reading["error"].as_i64().unwrap());
            let lengths = [value - error, value, value + error];
            into.extend(lengths.map(|length| length * 100 / percent));
        }
    }
}

/// The freeboards at which the profile asks for something else.
fn thresholds(rules: &Rules) -> Vec<i64> {
    let requirements = rules.data["requirements"].as_array().unwrap();
    let conditions = requirements.iter().flat_map(|r| r["when"].as_array().unwrap());
    let figures: BTreeSet<i64> = conditions
        .filter(|c| c["is"] == "freeboard")
        .map(|c| c["figure"].as_i64().unwrap())
        .collect();
    figures.into_iter().collect()
}

//! Draws vessels, asks both and compares, requirement by requirement. Where the
//! opinion cannot tell, it takes each missing fact as free wherever it is asked;
//! the program may settle more, by what can be true together, which is proved by
//! trying every completion (`tests/it/completions.rs`). How often it does is
//! counted.

use crate::assign;
use crate::draw::Draw;
use crate::judge::{Judge, Opinion, Outcome, Verdict, Whole, question};
use crate::kit::Vessel;
use crate::policy::Policy;
use crate::rules::{self, Rules, Words};
use crate::whole::cases;
use kitmuster::engine::{self, Depth, Request};
use kitmuster::load::{self, Library};
use kitmuster::model::check::{Check, Judgement, Notice};
use kitmuster::model::finding;
use kitmuster::model::reason::Reason;
use kitmuster::model::vessel::Trust;
use std::collections::BTreeMap;
use std::fmt::Write as _;

/// How often each outcome of each requirement was compared, by profile.
type Counts = BTreeMap<(String, String), [usize; 4]>;

/// What a run counted.
#[derive(Default)]
pub(crate) struct Tally {
    pub(crate) vessels: usize,
    /// Whether enough were drawn to ask what was never seen.
    pub(crate) whole: bool,
    pub(crate) compared: usize,
    /// Requirements on which best assignments differ.
    pub(crate) undecided: usize,
    /// Where the program settles what the opinion leaves open.
    pub(crate) settled: usize,
    /// Where it says that it has not gone through everything, or where one of
    /// several that compete goes short between the two passes.
    pub(crate) left_open: usize,
    /// Vessels on which first come, first served gives a requirement an
    /// outcome that the program does not give it; counted for what is made up.
    pub(crate) contested: usize,
    pub(crate) outcomes: Counts,
    pub(crate) verdicts: BTreeMap<String, [usize; 3]>,
    pub(crate) asked: usize,
    pub(crate) disagreements: Vec<String>,
    /// What a run of this length should have seen and has not.
    pub(crate) unseen: Vec<String>,
    /// The disagreements, by what they differ on.
    pub(crate) kinds: BTreeMap<String, usize>,
}

fn outcome(outcome: finding::Outcome) -> Outcome {
    match outcome {
        finding::Outcome::Met => Outcome::Met,
        finding::Outcome::CannotTell => Outcome::CannotTell,
        finding::Outcome::NotMet => Outcome::NotMet,
    }
}

fn verdict(verdict: finding::Verdict) -> Verdict {
    match verdict {
        finding::Verdict::Ready => Verdict::Ready,
        finding::Verdict::CannotTell => Verdict::CannotTell,
        finding::Verdict::NotReady => Verdict::NotReady,
    }
}

fn number(name: &str, or: u64) -> u64 {
    std::env::var(name).map_or(or, |text| text.parse().expect("a whole number"))
}

/// Profiles that no rule asks for.
const MADE_UP: [(&str, &str); 1] = [("rivals", include_str!("rivals.yaml"))];

/// Compares so many vessels drawn for the profile.
pub(crate) fn run(profile: &str, share: u64) -> Tally {
    let words = Words::read();
    let mut profiles = rules::all(&words);
    let mut library = Library::shipped().unwrap();
    for (id, written) in MADE_UP.iter().filter(|(id, _)| *id == profile) {
        profiles.push(rules::made_up(id, written, &words));
        library.add_text("made-up.yaml", written).unwrap();
    }
    let policy = Policy::new(&words, &profiles);
    let mut judge = Judge { words: &words, profiles: &profiles, policy, assign: assign::best };
    let (seed, all) = (
        number("KITMUSTER_OPINION_SEED", 2_026),
        number("KITMUSTER_OPINION_VESSELS", cases(2_000, 10_000)),
    );
    let only = std::env::var("KITMUSTER_OPINION_ONLY").ok().map(|n| n.parse::<u64>().unwrap());
    let rules = profiles.iter().find(|p| p.id == profile).unwrap();
    let mut tally = Tally { whole: only.is_none() && all >= 10_000, ..Tally::default() };
    let numbers = match only {
        Some(one) => one..one + 1,
        None => 0..(all * share).div_ceil(100),
    };
    let (mut theirs, mut ours) = (std::time::Duration::ZERO, std::time::Duration::ZERO);
    for number in numbers {
        let text = Draw::vessel(&words, rules, seed, number);
        let start = std::time::Instant::now();
        let check = checked(&library, &text);
        theirs += start.elapsed();
        let start = std::time::Instant::now();
        let vessel = Vessel::read(&text, &words);
        let whole = judge.vessel(&vessel);
        ours += start.elapsed();
        if rules.made_up {
            judge.assign = assign::first_come;
            tally.contested += usize::from(contested(&check, &judge.vessel(&vessel), profile));
            judge.assign = assign::best;
        }
        let differences = tally.compare(&check, &whole, &profiles);
        if !differences.is_empty() {
            let mut page = format!("--- seed {seed}, {profile} number {number}\n{text}");
            for (rules, requirement, line) in differences {
                *tally.kinds.entry(line.clone()).or_default() += 1;
                let _ = writeln!(page, "{line}");
                page += &explained(&mut judge, &check, &vessel, &rules, requirement);
            }
            tally.disagreements.push(page);
        }
    }
    tally.asked = judge.policy.asked;
    for ((profile, requirement), seen) in &tally.outcomes {
        println!("{profile} / {requirement}: not applicable, met, can't tell, not met {seen:?}");
    }
    println!(
        "{profile}, seed {seed}: {} vessels, {} comparisons, {} undecided, {} settled, {} left open, {} contested, the policy was asked {} times",
        tally.vessels,
        tally.compared,
        tally.undecided,
        tally.settled,
        tally.left_open,
        tally.contested,
        tally.asked
    );
    println!("verdicts (ready, can't tell, not ready): {:?}", tally.verdicts);
    println!("the program took {theirs:?}, the opinion {ours:?}");
    tally.unseen = tally.unseen(rules);
    tally
}

/// Outcomes that a profile's own words rule out: where one of two readings is
/// `wire: any`, the other can never make it not met.
const NEVER: [(&str, Outcome); 1] = [("gulf-hook-wire-2020", Outcome::NotMet)];

impl Tally {
    /// What a run of this length should have seen and has not: each
    /// requirement of the profile met, can't tell and not met, and not
    /// applicable where a condition or a day can take it away.
    fn unseen(&self, rules: &Rules) -> Vec<String> {
        let profile = &rules.id;
        let mut unseen = Vec::new();
        for data in rules.data["requirements"].as_array().unwrap() {
            let id = data["id"].as_str().unwrap();
            let goes = data["when"] != serde_json::json!([]) || data["always"] == false;
            let seen = self.outcomes.get(&(profile.to_owned(), id.to_owned()));
            for outcome in
                [Outcome::NotApplicable, Outcome::Met, Outcome::CannotTell, Outcome::NotMet]
            {
                let can =
                    (outcome != Outcome::NotApplicable || goes) && !NEVER.contains(&(id, outcome));
                if can && seen.is_none_or(|seen| seen[outcome as usize] == 0) {
                    unseen.push(format!("{id}: {outcome:?}"));
                }
            }
        }
        let verdicts = self.verdicts.get(profile).copied().unwrap_or_default();
        if verdicts.contains(&0) {
            unseen.push(format!("a verdict (ready, can't tell, not ready): {verdicts:?}"));
        }
        unseen
    }
}

/// Whether first come, first served gives a requirement of the profile an
/// outcome that the program does not give it.
fn contested(check: &Check, first_come: &Whole, profile: &str) -> bool {
    let Some(judgement) = check.judgements.iter().find(|j| j.profile.id == profile) else {
        return false;
    };
    let said = &first_come.profiles[profile].said;
    outcomes(judgement).iter().zip(said).any(|(outcome, said)| !said.contains(outcome))
}

/// The program's outcome of every requirement.
fn outcomes(judgement: &Judgement) -> Vec<Outcome> {
    let mut outcomes = vec![Outcome::NotApplicable; judgement.profile.requirements.len()];
    for finding in &judgement.findings {
        outcomes[finding.requirement] = outcome(finding.outcome);
    }
    outcomes
}

/// The program's verdict, from its library.
fn checked(library: &Library, text: &str) -> Check {
    let (vessel, _) = load::read_vessel("drawn.yaml", text, &library.vocabulary)
        .unwrap_or_else(|refusal| panic!("{refusal:#?}\n{text}"));
    let trip = &vessel.trip;
    engine::check(&Request {
        vocabulary: &library.vocabulary,
        profiles: &library.profiles,
        asked: &[],
        vessel: &vessel,
        inspections: &[],
        departure: trip.departure.unwrap(),
        back: trip.back,
        trust: Trust::All,
        depth: Depth::Findings,
    })
}

type Difference = (String, Option<usize>, String);

impl Tally {
    fn compare(&mut self, check: &Check, whole: &Whole, profiles: &[Rules]) -> Vec<Difference> {
        let mut differences = Vec::new();
        self.vessels += 1;
        let theirs: Vec<&str> = check.judgements.iter().map(|j| j.profile.id.as_str()).collect();
        let mut sorted = theirs.clone();
        sorted.sort_unstable();
        let ours: Vec<&str> = whole.profiles.keys().map(String::as_str).collect();
        if sorted != ours {
            let line = format!("judged under: program {theirs:?}, opinion {ours:?}");
            return vec![(String::new(), None, line)];
        }
        for judgement in &check.judgements {
            let id = &judgement.profile.id;
            let rules = profiles.iter().find(|p| p.id == *id).unwrap();
            let reasons = judgement.findings.iter().flat_map(|finding| &finding.reasons);
            let left_open = check.notices.contains(&Notice::TooManyFacts)
                || reasons.map(|because| &because.reason).any(|one| *one == Reason::TooManyFacts);
            differences.extend(self.profile(judgement, &whole.profiles[id], rules, left_open));
        }
        if !self.agree(verdict(check.verdict), whole.verdict) {
            let line = format!("verdict: program {:?}, opinion {:?}", check.verdict, whole.verdict);
            differences.push((String::new(), None, line));
        }
        self.compared += 1;
        differences
    }

    /// Whether both say the same; the program may settle what the opinion
    /// leaves open.
    fn agree(&mut self, theirs: Verdict, ours: Verdict) -> bool {
        self.settled += usize::from(theirs != ours && ours == Verdict::CannotTell);
        theirs == ours || ours == Verdict::CannotTell
    }

    fn profile(
        &mut self,
        judgement: &Judgement,
        opinion: &Opinion,
        rules: &Rules,
        left_open: bool,
    ) -> Vec<Difference> {
        let mut differences = Vec::new();
        let theirs = verdict(judgement.verdict);
        self.verdicts.entry(rules.id.clone()).or_default()[theirs as usize] += 1;
        self.compared += 1;
        if !self.agree(theirs, opinion.verdict) {
            let line =
                format!("{}: verdict: program {theirs:?}, opinion {:?}", rules.id, opinion.verdict);
            differences.push((rules.id.clone(), None, line));
        }
        if !rules.encoded {
            return differences;
        }
        let ids: Vec<&str> = judgement.profile.requirements.iter().map(|r| r.id.as_str()).collect();
        let own: Vec<&str> = rules.requirements.iter().map(|r| r.id.as_str()).collect();
        assert_eq!(ids, own, "the requirements of {}", rules.id);
        let outcomes = outcomes(judgement);
        for (index, said) in opinion.said.iter().enumerate() {
            let theirs = outcomes[index];
            self.compared += 1;
            self.outcomes.entry((rules.id.clone(), ids[index].to_owned())).or_default()
                [theirs as usize] += 1;
            self.undecided += usize::from(said.len() > 1);
            let refined = said.contains(&Outcome::CannotTell);
            self.settled += usize::from(refined && !said.contains(&theirs));
            let given_up =
                (left_open || opinion.competing.contains(&index)) && theirs == Outcome::CannotTell;
            self.left_open += usize::from(given_up && !said.contains(&theirs));
            if !said.contains(&theirs) && !refined && !given_up {
                let line =
                    format!("{} / {}: program {theirs:?}, opinion {said:?}", rules.id, ids[index]);
                differences.push((rules.id.clone(), Some(index), line));
            }
        }
        if let Some(scene) = &opinion.together
            && differences.is_empty()
            && !scene.allows(&outcomes)
        {
            let line = format!(
                "{}: no best assignment gives these outcomes together: {outcomes:?}",
                rules.id
            );
            differences.push((rules.id.clone(), None, line));
        }
        differences
    }
}

/// Both sides of a disagreement: the program's reasons, and what the policy
/// says of each tool that could serve.
fn explained(
    judge: &mut Judge<'_>,
    check: &Check,
    vessel: &Vessel,
    id: &str,
    requirement: Option<usize>,
) -> String {
    let mut page = String::new();
    let Some(requirement) = requirement else { return page };
    let judgement = check.judgements.iter().find(|j| j.profile.id == id).unwrap();
    for finding in judgement.findings.iter().filter(|f| f.requirement == requirement) {
        let _ = writeln!(page, "  program, on {:?} at {:?}:", finding.day, finding.freeboard);
        for because in &finding.reasons {
            let mark = because.tool.map(|tool| check.vessel.kit[tool].mark.as_str());
            let _ = writeln!(page, "    {mark:?} {:?}", because.reason);
        }
        let serving: Vec<_> =
            finding.serving.iter().map(|s| check.vessel.kit[s.tool].mark.as_str()).collect();
        let _ = writeln!(page, "    served by {serving:?}");
    }
    let rules = judge.profiles.iter().find(|p| p.id == id).unwrap();
    let name = &rules.requirements[requirement].id;
    let freeboard = vessel.stations.iter().flatten().map(|r| r.high).max().unwrap_or(0);
    for index in 0..vessel.tools.len() {
        let mut asked = question(rules, vessel, index, (freeboard, freeboard), vessel.depart);
        asked["days"] = serde_json::json!([vessel.depart, vessel.back]);
        let lines = judge.policy.ask("because", &asked);
        let of = lines
            .as_object()
            .unwrap()
            .iter()
            .filter(|(spec, _)| spec.split('/').next() == Some(name));
        for (spec, lines) in of {
            let _ = writeln!(
                page,
                "  policy, at {freeboard} nm: {} for {spec}: {lines}",
                vessel.tools[index].mark
            );
        }
    }
    page
}

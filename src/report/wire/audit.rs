//! A fleet's audit as one JSON document: the format `kitmuster/audit/1`.
//!
//! The vessels are those of `kitmuster/check/1`, with the answers that an
//! audit does not work out set to null. Imports `fleet`, what lies below, and
//! words.

use super::against::{Against, Draft};
use super::check::Check;
use super::form::{Day, Word, day, objects, word};
use super::parts::{Program, RecordLeftOut};
use super::rows::Refused;
use super::text::document;
use crate::engine::validity::End;
use crate::fleet::{self, After, Row, What};
use crate::load::Refusal;
use crate::measure::{Length, Rounding, System};
use crate::model::finding::Verdict;
use crate::model::vessel::Trust;
use crate::report::Locale;
use crate::report::subject::{Fleet, Subject};
use crate::report::words::{self, figures};

/// The name and version of the format.
const SCHEMA: &str = "kitmuster/audit/1";

/// The audit as pretty-printed JSON, ending in a line feed.
///
/// # Errors
/// None in practice: the types of the format all have a JSON form.
pub fn audit(of: &Fleet<'_>) -> Result<String, serde_json::Error> {
    document(&Audit::new(of))
}

objects! {
    /// A fleet, judged.
    pub(super) Audit(of: &Fleet<'_>) {
        let audit = of.audit;
        let missed = audit.missed.iter();
        let marks = audit.marks.iter();
        let left_out = audit.left_out.iter();
        let vessels = vessels(of);
        /// The name and version of the format.
        #[schemars(extend("const" = SCHEMA))]
        schema: &'static str = SCHEMA,
        /// The program that wrote it.
        program: Program = Program::new(),
        /// The day of the audit.
        date: Day = day(audit.date),
        /// Which figures were believed.
        trust: Word<Trust> = word(&audit.trust),
        /// The worst of all vessels.
        verdict: Word<Verdict> = word(&audit.verdict()),
        /// What it adds up to.
        totals: Totals = Totals::new(audit, vessels.len()),
        /// What changed since an audit on record, with `--against`.
        #[serde(skip_serializing_if = "Option::is_none")]
        against: Option<Against> = of.against.map(Against::new),
        /// The fleet under the draft of an edition, with `--draft`.
        #[serde(skip_serializing_if = "Option::is_none")]
        draft: Option<Draft> = of.draft.map(|drafted| Draft::new(of, drafted)),
        /// Requirements, the one most often missed first.
        most_missed: Vec<Missed> = missed.map(|missed| Missed::new(missed, of.locale)).collect(),
        /// What lapses within 90 days of the audit.
        lapses: Vec<Lapse> = audit.lapses.iter().map(Lapse::new).collect(),
        /// Marks that stand on tools of two vessels at sea on the same days.
        same_marks: Vec<SameMark> = marks.map(|mark| SameMark::new(mark, of)).collect(),
        /// What cannot be right about the files together.
        doubts: Vec<Doubt> = audit.doubts.iter().map(|doubt| Doubt::new(doubt, of.locale)).collect(),
        /// Inspection records that were laid over no vessel.
        records_left_out: Vec<RecordLeftOut> = left_out.map(|one| RecordLeftOut::new(one, of.locale)).collect(),
        /// Files that were refused.
        refused: Vec<Refused> = refused(audit).map(Refused::new).collect(),
        /// Each as a check gives it, the answers left null that an audit does not work out.
        vessels: Vec<Check> = vessels,
    }

    /// Counts of vessels.
    Totals(audit: &fleet::Audit, shown: usize) {
        let counts = &audit.counts;
        /// How many were judged.
        vessels: usize = counts.vessels(),
        /// How many are ready.
        ready: usize = counts.ready,
        /// How many are not ready.
        not_ready: usize = counts.not_ready,
        /// Of how many nobody can tell.
        cannot_tell: usize = counts.cannot_tell,
        /// How many of the ready ones are so by good practice only.
        ready_by_good_practice: usize = counts.ready_by_practice,
        /// How many files were refused.
        refused: usize = counts.refused,
        /// How many were left out by the selection.
        outside_selection: usize = audit.outside,
        /// How many are listed.
        shown: usize = shown,
    }

    /// How often a requirement is missed.
    Missed(missed: &fleet::Missed, locale: Locale) {
        let asked = missed.requirement();
        let worst = missed.worst.as_ref();
        let system = worst.map_or(System::Customary, |worst| worst.system);
        let short = |short, vessel: Option<&str>| Shortfall::new(short, vessel, system, locale);
        /// The id of the profile.
        profile: String = missed.profile.id.clone(),
        /// The id of the requirement.
        requirement: String = asked.map(|asked| asked.id.clone()).unwrap_or_default(),
        /// What the rule calls it.
        title: String = asked.map(|asked| asked.title.to_string()).unwrap_or_default(),
        /// The clause.
        clause: String = asked.map(|asked| asked.clause.clone()).unwrap_or_default(),
        /// On how many vessels it is not met.
        not_met: usize = missed.not_met,
        /// On how many nobody can tell.
        cannot_tell: usize = missed.cannot_tell,
        /// On how many something is too short.
        short_on: usize = missed.short_on,
        /// The middle shortfall of these.
        median_shortfall: Option<Shortfall> = missed.median.map(|length| short(length, None)),
        /// The worst shortfall.
        worst_shortfall: Option<Shortfall> = worst.map(|at| short(at.short, Some(&*at.vessel))),
    }

    /// By how much something is too short.
    Shortfall(length: Length, vessel: Option<&str>, system: System, locale: Locale) {
        /// Exactly.
        nanometres: i64 = length.nanometres(),
        /// For people; its wording may change.
        text: String = figures::length(length, system, locale, Rounding::Up),
        /// On which vessel.
        #[serde(skip_serializing_if = "Option::is_none")]
        vessel: Option<String> = vessel.map(str::to_owned),
    }

    /// Something that is good no longer soon.
    Lapse(lapse: &fleet::Lapse) {
        let (tool, certificate_of) = match &lapse.what {
            What::Tool(mark) => (Some(mark.clone()), None),
            What::Certificate(person) => (None, Some(person.clone())),
        };
        /// The file, as it was given.
        file: String = lapse.file.clone(),
        /// The vessel's name.
        vessel: String = lapse.vessel.clone(),
        /// The mark of the tool.
        #[serde(skip_serializing_if = "Option::is_none")]
        tool: Option<String> = tool,
        /// Or whose certificate it is.
        #[serde(skip_serializing_if = "Option::is_none")]
        certificate_of: Option<String> = certificate_of,
        /// What lapses.
        end: Word<End> = word(&lapse.end),
        /// The last day on which it is good.
        through: Day = day(lapse.through),
        /// From the audit to that day.
        within_days: i64 = lapse.within,
        /// What comes of it.
        after: Word<After> = word(&lapse.after),
        /// Whether a required finding hangs on it.
        decides: bool = lapse.after == After::Decides,
        /// What it serves.
        serves: Vec<Serves> = lapse.serves.iter().map(Serves::new).collect(),
    }

    /// A requirement of a profile.
    Serves(served: &(String, String)) {
        /// The id of the profile.
        profile: String = served.0.clone(),
        /// The id of the requirement.
        requirement: String = served.1.clone(),
    }

    /// A mark that stands on tools of several vessels.
    SameMark(mark: &fleet::SameMark, of: &Fleet<'_>) {
        /// The mark.
        mark: String = mark.mark.clone(),
        /// The kind, by its id.
        kind: String = of.vocabulary.kind(mark.kind).id.clone(),
        /// The vessels.
        vessels: Vec<NamedVessel> = mark.vessels.iter().map(NamedVessel::new).collect(),
    }

    /// A vessel by its file and name.
    NamedVessel(vessel: &(String, String)) {
        /// The file, as it was given.
        file: String = vessel.0.clone(),
        /// The name.
        name: String = vessel.1.clone(),
    }

    /// Files that cannot all be right.
    Doubt(doubt: &fleet::Doubt, locale: Locale) {
        /// The stable code.
        code: Word<fleet::Doubt> = word(doubt),
        /// The register number.
        #[serde(skip_serializing_if = "Option::is_none")]
        register: Option<String> = match doubt {
            fleet::Doubt::SameRegister { register, .. } => Some(register.clone()),
            fleet::Doubt::TripsOver { .. } | fleet::Doubt::ListsOld { .. } => None,
        },
        /// The vessels.
        vessels: Vec<NamedVessel> = doubt.vessels().iter().map(NamedVessel::new).collect(),
        /// For people; its wording may change.
        text: String = words::fleet::doubt(doubt, locale),
    }
}

fn refused(audit: &fleet::Audit) -> impl Iterator<Item = &Refusal> {
    audit.rows.iter().filter_map(|row| match row {
        Row::Refused(refusal) => Some(refusal),
        Row::Vessel(_) => None,
    })
}

/// The vessels that are shown, each as a check gives it.
fn vessels(of: &Fleet<'_>) -> Vec<Check> {
    let judged = of.audit.rows.iter().filter_map(|row| match row {
        Row::Vessel(judged) => Some(&**judged),
        Row::Refused(_) => None,
    });
    let vessel = |(index, judged)| {
        let judged: &fleet::Judged = judged;
        Check::new(&Subject {
            check: &judged.check,
            vocabulary: of.vocabulary,
            sources: &judged.sources,
            locale: of.locale,
            freeing: of.freeing(index, judged),
        })
    };
    judged.enumerate().map(vessel).collect()
}

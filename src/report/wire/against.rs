//! An audit beside another, as the keys `against` (what changed since an
//! audit on record) and `draft` (what a draft would do) of `kitmuster/audit/1`.
//!
//! Imports `fleet`, what lies below, and words.

use super::form::{Day, Word, day, objects, word};
use crate::fleet::compare::{self, Cause, Fate, Shared, WhyGone};
use crate::fleet::draft::{self, DraftFate};
use crate::fleet::record::SinceOnRecord;
use crate::load::Refusal;
use crate::measure::DaySpan;
use crate::model::finding::{Outcome, Verdict};
use crate::model::reason::Reason;
use crate::report::subject::Fleet;
use crate::report::words::compare as said;

objects! {
    /// The key `against`.
    pub(super) Against(comparison: &compare::Comparison) {
        /// The audit on record.
        then: Then = Then::new(comparison),
        /// What it adds up to.
        totals: AgainstTotals = AgainstTotals::new(comparison),
        /// Whether other vessels were selected then.
        other_selection: bool = comparison.other_selection,
        /// Why the rules on record cannot be read.
        rules_refused: Option<String> = first_problem(&comparison.rules_refused),
        /// Vessels that are in both.
        vessels: Vec<Compared> = comparison.vessels.iter().map(Compared::new).collect(),
        /// Vessels that are not there any more.
        gone: Vec<Gone> = comparison.gone.iter().map(Gone::new).collect(),
        /// Vessels that were not there then.
        newcomers: Vec<Newcomer> = comparison.newcomers.iter().map(Newcomer::new).collect(),
        /// Vessels that cannot be told apart.
        unclear: Vec<Unclear> = comparison.unclear.iter().map(Unclear::new).collect(),
    }

    /// The audit on record.
    Then(comparison: &compare::Comparison) {
        /// Its day.
        date: Day = day(comparison.then),
        /// Who audited, as given.
        auditor: Option<String> = comparison.auditor.clone(),
        /// The program that made it.
        program: String = comparison.program.name.clone(),
        /// Its version.
        version: String = comparison.program.version.clone(),
    }

    /// Counts of vessels and of findings.
    AgainstTotals(comparison: &compare::Comparison) {
        let tally = comparison.tally();
        /// Vessels that are in both.
        compared: usize = comparison.vessels.len(),
        /// Vessels that are gone.
        gone: usize = comparison.gone.len(),
        /// Vessels that are new.
        newcomers: usize = comparison.newcomers.len(),
        /// Vessels that cannot be told apart.
        unclear: usize = comparison.unclear.len(),
        /// Findings mended.
        mended: usize = tally.mended,
        /// Findings of which nobody could tell, met now.
        settled: usize = tally.settled,
        /// Findings closed since a record is not laid over any more.
        record_gone: usize = tally.record_gone,
        /// Findings newly open.
        new: usize = tally.new,
        /// Findings that the calendar opened.
        lapsed: usize = tally.lapsed,
        /// Findings opened by neither vessel nor calendar.
        opened_otherwise: usize = tally.opened_otherwise,
        /// Findings closed by something else than the vessel.
        closed_otherwise: usize = tally.closed_otherwise,
        /// Findings that opened and closed in between.
        passing: usize = tally.passing,
        /// Findings that are still open.
        still_open: usize = tally.still_open,
    }

    /// One vessel, then and now.
    Compared(compared: &compare::Compared) {
        let missing = compared.missing.iter();
        /// The file, as it was given.
        file: String = compared.file.clone(),
        /// The name.
        name: String = compared.name.clone(),
        /// The register number.
        register: Option<String> = compared.register.clone(),
        /// The verdict on record.
        verdict_then: Word<Verdict> = word(&compared.verdict_then),
        /// The verdict now.
        verdict_now: Word<Verdict> = word(&compared.verdict_now),
        /// Why the old file is refused by today's rules.
        refused: Option<String> = first_problem(&compared.refused),
        /// Inspection records laid over then and not now.
        records_gone: Vec<LostRecord> = compared.lost.iter().map(LostRecord::new).collect(),
        /// What records had found that were missing then already.
        missing_before: Vec<MissingBefore> = missing.map(MissingBefore::new).collect(),
        /// Required findings that were open at one of the steps.
        findings: Vec<Followed> = compared.findings.iter().map(Followed::new).collect(),
    }

    /// An inspection record that is not laid over any more.
    LostRecord(lost: &compare::Lost) {
        /// The file, as it was given.
        file: String = lost.file.clone(),
        /// Its digest.
        sha256: String = lost.sha256.clone(),
        /// Whether a record of that file name is laid over with another text.
        changed: bool = lost.changed,
    }

    /// What a record had found that was missing then already.
    MissingBefore(kept: &SinceOnRecord) {
        /// The id of the rule.
        rule: String = kept.rule.clone(),
        /// The id of the requirement.
        requirement: Option<String> = kept.requirement.clone(),
        /// Since when.
        open_since: Day = day(kept.open_since),
        /// The digests of the records.
        without: Vec<String> = kept.without.clone(),
    }

    /// Vessels that cannot be told apart.
    Unclear(unclear: &compare::Unclear) {
        /// What they share.
        why: Word<Shared> = word(&unclear.by),
        /// The candidates then.
        then: Vec<Candidate> = unclear.then.iter().map(Candidate::new).collect(),
        /// The candidates now.
        now: Vec<Candidate> = unclear.now.iter().map(Candidate::new).collect(),
        /// For people; its wording may change.
        text: String = said::unclear(unclear),
    }

    /// A vessel that may be meant.
    Candidate(candidate: &compare::Candidate) {
        /// The name.
        name: String = candidate.name.clone(),
        /// The register number.
        register: Option<String> = candidate.register.clone(),
        /// The file, as it was given.
        file: String = candidate.file.clone(),
        /// The verdict.
        verdict: Word<Verdict> = word(&candidate.verdict),
    }

    /// A rule and a requirement, followed.
    Followed(followed: &compare::Followed) {
        let stands = followed.stands.as_ref();
        let asked = stands.and_then(|(profile, at)| profile.requirements.get(*at));
        let open = followed.open.as_ref().and_then(|finding| finding.reasons.first());
        /// The id of the rule.
        rule: String = followed.rule.clone(),
        /// The id of the requirement; null for the rule as a whole.
        requirement: Option<String> = followed.requirement.clone(),
        /// What the rule calls it.
        title: Option<String> = asked.map(|asked| asked.title.to_string()),
        /// The clause.
        clause: Option<String> = asked.map(|asked| asked.clause.clone()),
        /// The outcome then; null where it was not asked.
        then: Option<Word<Outcome>> = followed.then.as_ref().map(word),
        /// The outcome now; null where it is not asked.
        now: Option<Word<Outcome>> = followed.now.as_ref().map(word),
        /// What became of it.
        fate: Word<Fate> = word(&followed.fate),
        /// Through what; null for what is still open.
        cause: Option<Word<Cause>> = followed.cause.as_ref().map(word),
        /// Not met, then met through the vessel.
        mended: bool = followed.is_mended(),
        /// The mark of a tool that is gone without a word, where another came that may be the same.
        mark_then: Option<String> = followed.renamed.as_ref().map(|marks| marks.then.clone()),
        /// The mark of that other.
        mark_now: Option<String> = followed.renamed.as_ref().map(|marks| marks.now.clone()),
        /// Nobody could tell, then met through the vessel.
        settled: bool = followed.is_settled(),
        /// The first code of what is open now.
        reason: Option<Word<Reason>> = open.map(|because| word(&because.reason)),
        /// The first code then, where it is still open for another reason or another tool.
        reason_then: Option<String> = followed.reason_then.clone(),
        /// Since which audit it is open.
        open_since: Option<Day> = followed.since.map(day),
        /// The steps at which its outcome changed.
        flips: Vec<Flip> = followed.flips.iter().map(Flip::new).collect(),
        /// For people; its wording may change.
        text: String = said::called(followed),
    }

    /// A step at which an outcome changed.
    Flip(flip: &compare::Flip) {
        /// Through what.
        cause: Word<Cause> = word(&flip.cause),
        /// The outcome before.
        from: Option<Word<Outcome>> = flip.from.as_ref().map(word),
        /// The outcome after.
        to: Option<Word<Outcome>> = flip.to.as_ref().map(word),
    }

    /// A vessel that is not there any more.
    Gone(gone: &compare::Gone) {
        /// The name.
        name: String = gone.name.clone(),
        /// The register number.
        register: Option<String> = gone.register.clone(),
        /// The file, as it was given.
        file: String = gone.file.clone(),
        /// The verdict then.
        verdict: Word<Verdict> = word(&gone.verdict),
        /// Why it is not.
        why: Word<WhyGone> = word(&gone.why),
        /// A file of the same name elsewhere that could not be read.
        may_be: Option<String> = match &gone.why {
            WhyGone::MayBe(file) => Some(file.clone()),
            _ => None,
        },
    }

    /// A vessel that was not there then.
    Newcomer(newcomer: &compare::Newcomer) {
        /// The name.
        name: String = newcomer.name.clone(),
        /// The register number.
        register: Option<String> = newcomer.register.clone(),
        /// The file, as it was given.
        file: String = newcomer.file.clone(),
        /// The verdict.
        verdict: Word<Verdict> = word(&newcomer.verdict),
        /// Whether its file was refused then.
        refused_then: bool = newcomer.refused_then,
        /// A vessel on record that it may be.
        may_be: Option<String> = newcomer.may_be.clone(),
    }

    /// The key `draft`.
    pub(super) Draft(of: &Fleet<'_>, drafted: &draft::Drafted) {
        let profile = &drafted.profile;
        let vessels = drafted.vessels.iter();
        /// The id of the draft.
        profile: String = profile.id.clone(),
        /// The id of the rule.
        rule: String = profile.rule.clone(),
        /// The law's edition, in words.
        edition: String = profile.edition.clone(),
        /// The revision of the program's encoding.
        encoding: u32 = profile.encoding,
        /// When it is in force.
        in_force: Span = Span::new(profile.in_force),
        /// Ids of the editions that judged.
        beside: Vec<String> = drafted.in_force.clone(),
        /// What it adds up to.
        totals: DraftTotals = DraftTotals::new(&drafted.tally()),
        /// What becomes of each.
        vessels: Vec<UnderDraft> = vessels.map(|under| UnderDraft::new(of, under)).collect(),
    }

    /// The first and the last day; null where there is no end.
    Span(days: DaySpan) {
        /// The first day.
        from: Option<Day> = days.from.map(day),
        /// The last day.
        until: Option<Day> = days.until.map(day),
    }

    /// Counts of vessels.
    DraftTotals(tally: &draft::DraftTally) {
        /// Vessels that fall.
        falls: usize = tally.falls,
        /// Vessels that rise.
        rises: usize = tally.rises,
        /// Vessels of which nobody can tell under it.
        cannot_tell: usize = tally.cannot_tell,
        /// Vessels that it binds no longer.
        released: usize = tally.released,
        /// Vessels with the same verdict and other findings.
        stays_otherwise: usize = tally.stays_otherwise,
        /// Vessels of which nothing changes.
        unaffected: usize = tally.unaffected,
        /// Vessels that neither binds.
        not_bound: usize = tally.not_bound,
    }

    /// One vessel under the draft.
    UnderDraft(of: &Fleet<'_>, under: &draft::UnderDraft) {
        let changes = under.changes.iter();
        /// The file, as it was given.
        file: String = under.file.clone(),
        /// The name.
        name: String = under.vessel.name.clone(),
        /// The register number.
        register: Option<String> = under.vessel.register.clone(),
        /// What becomes of it.
        fate: Word<DraftFate> = word(&under.fate),
        /// Under this rule alone; null where it does not bind.
        verdict_in_force: Option<Word<Verdict>> = under.then.as_ref().map(word),
        /// Null where it does not bind.
        verdict_under_draft: Option<Word<Verdict>> = under.now.as_ref().map(word),
        /// Whether the draft binds it.
        bound: Word<draft::Bound> = word(&under.bound),
        /// Findings that change.
        changes: Vec<Change> = changes.map(|one| Change::new(of, under, one)).collect(),
    }

    /// A finding that changes.
    Change(of: &Fleet<'_>, under: &draft::UnderDraft, one: &draft::Change) {
        let open = one.open.as_ref().and_then(|(_, finding)| finding.reasons.first());
        /// The id of the requirement.
        requirement: String = one.requirement.clone(),
        /// The outcome in force; null where it is not asked.
        in_force: Option<Word<Outcome>> = one.then.as_ref().map(word),
        /// The outcome under the draft; null where it is not asked.
        under_draft: Option<Word<Outcome>> = one.now.as_ref().map(word),
        /// The first code of what is open.
        reason: Option<Word<Reason>> = open.map(|because| word(&because.reason)),
        /// Marks of the tools that meet it.
        met_by: Vec<String> = one.met_by.clone(),
        /// For people; its wording may change.
        text: String = said::draft_change(of, under, one),
    }
}

/// The first thing that is wrong in a file that was refused.
fn first_problem(refusal: &Option<Refusal>) -> Option<String> {
    let problems = refusal.as_ref().map(|refusal| &refusal.problems);
    problems.map(|all| all.first().map(ToString::to_string).unwrap_or_default())
}

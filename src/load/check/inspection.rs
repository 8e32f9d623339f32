//! From an inspection record as written to the record that is laid over a
//! vessel.
//!
//! An empty row adds nothing: one that carries a sheet's `row` alone is left out,
//! since a named tool is otherwise taken as seen. In a record of the whole kit it
//! is refused. A record without a day is refused too, so that an untouched form is
//! not misdated.

use crate::load::check::reading::{AttributeReader, Attributes, Unsaid, freeboard};
use crate::load::check::tool::{change_word, refuse_lost, take_lost};
use crate::load::check::value::kept;
use crate::load::check::vessel::{Covers, certificate, coverage};
use crate::load::form::inspection::{
    FoundForm, InspectionFile, MOST_ROWS, MendedForm, PersonFoundForm,
};
use crate::load::form::open::{Attributed, HOW};
use crate::load::form::vessel::{CONDITIONS, LARGEST_LOT, MOST_TOOLS};
use crate::load::read::fault::Fault;
use crate::load::read::problem::Problems;
use crate::load::read::spot::{Spot, filled};
use crate::model::inspection::{Found, Inspection, PersonFound};
use crate::model::vessel::{Change, Coverage, How, Whereabouts};
use crate::model::vocabulary::{Class, KindId, Vocabulary};
use std::sync::Arc;

/// Checks an inspection record.
pub(crate) fn check_inspection(
    written: InspectionFile,
    words: &Vocabulary,
    top: &Spot<'_>,
) -> Option<Inspection> {
    let vessel = top.must("vessel", kept(written.vessel), Fault::NoRecordVessel);
    top.must("on", filled(&written.on), Fault::NoRecordDay);
    let on = top.day("on", &written.on);
    let by = kept(written.by);
    let how = top.word("figures", &written.figures, &HOW).unwrap_or(How::Measured);
    let unsaid = Unsaid { by: by.as_deref().map(Arc::from), on, how, same_day: true };
    let covers = Covers {
        covers: &written.covers,
        all_seen: &written.all_seen,
        sought: &written.sought,
        everything: false,
    };
    let coverage = coverage(&covers, words, top);
    let renews = top.flag("counts as inspection due", &written.renews).unwrap_or(false);
    let freeboard = written
        .freeboard
        .map(|written| freeboard(written, &unsaid, &top.key("freeboard")))
        .filter(|freeboard| !freeboard.stations.is_empty());
    let reader = FoundReader { words, unsaid: &unsaid };
    let mut found = reader.list(written.found.unwrap_or_default(), top);
    leave_out_empty(&mut found, &coverage, top.problems());
    let people = written.people.into_iter().flatten();
    let people = top.each("people", people, |at, form| person(form, words, at));
    Some(Inspection {
        vessel: vessel?,
        on: on?,
        by,
        sheet: kept(written.sheet),
        renews,
        coverage,
        found,
        people,
        freeboard,
        place: top.place(),
    })
}

/// Leaves out the rows of a sheet that were left empty: nobody looked there,
/// so they say nothing. In a record that speaks for the tool's whole kind, or
/// for everything, that would say that it is not there, so it is refused.
fn leave_out_empty(found: &mut Vec<Found>, coverage: &Coverage, problems: &Problems) {
    found.retain(|one| {
        if one.row.is_none() || says_something(one) {
            return true;
        }
        if coverage.everything || one.kind.is_some_and(|kind| coverage.is_whole(kind)) {
            let named = one.mark.as_deref().unwrap_or_default();
            problems.wrong(one.place.clone(), Fault::EmptyRow).of(named).tell();
        }
        false
    });
}

/// Whether two entries of a record speak of one tool: by its mark, or, of tools
/// that have none, by saying the very same.
fn is_twin(one: &Found, other: &Found) -> bool {
    match &one.mark {
        Some(_) => one.mark == other.mark,
        None => one.said() == other.said(),
    }
}

/// A person that was asked for.
fn person(form: PersonFoundForm, words: &Vocabulary, spot: &Spot<'_>) -> Option<PersonFound> {
    let name = spot.must("name", kept(form.name), Fault::NoPersonName);
    let aboard = spot.flag("aboard", &form.aboard);
    let certificates = form.certificates.into_iter().flatten();
    let certificates =
        spot.each("certificates", certificates, |at, form| certificate(form, words, at));
    Some(PersonFound { name: name?, aboard, certificates, place: spot.place() })
}

fn says_something(found: &Found) -> bool {
    found.missing
        || found.read_as.is_some()
        || found.state.is_some()
        || found.count.is_some()
        || found.expires.is_some()
        || found.stowed.is_some()
        || found.remark.is_some()
        || !found.attributes.is_empty()
        || !found.mended.is_empty()
}

struct FoundReader<'a> {
    words: &'a Vocabulary,
    unsaid: &'a Unsaid,
}

impl FoundReader<'_> {
    fn list(&self, forms: Vec<Attributed<FoundForm>>, top: &Spot<'_>) -> Vec<Found> {
        if forms.len() > MOST_TOOLS {
            let fault = Fault::TooManyFound { tools: forms.len(), most: MOST_TOOLS };
            top.wrong_key("found", fault).tell();
            return Vec::new();
        }
        let mut found: Vec<Found> = Vec::with_capacity(forms.len());
        top.each("found", forms, |at, form| {
            let one = self.found(form, at)?;
            if let Some(twin) = found.iter().find(|twin| is_twin(twin, &one)) {
                let fault = Fault::FoundTwice(twin.place.key.clone());
                match &one.mark {
                    Some(mark) => at.key("mark").wrong(fault).of(mark).tell(),
                    None => at.wrong(fault).tell(),
                }
            }
            found.push(one);
            Some(())
        });
        found
    }

    fn found(&self, written: Attributed<FoundForm>, spot: &Spot<'_>) -> Option<Found> {
        let Attributed { form, keys, attributes } = written;
        let mark = kept(form.mark);
        let kind = spot.kind("kind", &form.kind, &Class::CARRIED, self.words);
        let reader = AttributeReader { words: self.words, unsaid: self.unsaid, keys };
        let mut attributes = reader.attributes(attributes, kind.as_slice(), spot);
        let lost = take_lost(&mut attributes, self.words);
        if lost == Some(Whereabouts::Unknown) {
            spot.key("state").wrong(Fault::LostAndThere).tell();
        }
        let state = spot.word("condition", &form.condition, &CONDITIONS);
        let missing = spot.flag("missing", &form.missing).unwrap_or(false);
        let lot = spot.count("count", &form.count, 0, LARGEST_LOT);
        // A paper that is lost and none of a lot were looked for in vain too.
        let missing = missing || lot == Some(0) || lost == Some(Whereabouts::Missing);
        let expires = spot.day("expires", &form.expires);
        let mended = form.mended.into_iter().flatten();
        let mended = spot.each("mended", mended, |at, form| self.mended(form, kind, at));
        // What has no mark is known by being there.
        if mark.is_none() && (kind.is_none() || missing) {
            spot.missing("mark", Fault::NoFoundMark);
        }
        if missing && (!attributes.is_empty() || !mended.is_empty()) {
            spot.key("missing").wrong(Fault::MissingYetRead).tell();
        }
        let row = spot.count("row", &form.row, 1, MOST_ROWS);
        Some(Found {
            row,
            mark,
            read_as: kept(form.read_as),
            kind,
            attributes,
            state,
            count: lot,
            expires,
            missing,
            mended,
            stowed: kept(form.stowed),
            remark: kept(form.remark),
            place: spot.place(),
        })
    }

    fn mended(
        &self,
        written: Attributed<MendedForm>,
        kind: Option<KindId>,
        spot: &Spot<'_>,
    ) -> Option<(Change, Attributes)> {
        let Attributed { form, keys, attributes } = written;
        let what = change_word(&form.what, self.words, spot).map(|(what, _)| what.to_owned());
        let on = spot.day("on", &form.on).or(self.unsaid.on);
        let unsaid = Unsaid { on, ..self.unsaid.clone() };
        let reader = AttributeReader { words: self.words, unsaid: &unsaid, keys };
        let mut attributes = reader.attributes(attributes, kind.as_slice(), spot);
        refuse_lost(&mut attributes, self.words, spot);
        Some((Change { what: what?, on: on? }, attributes))
    }
}

//! From an inspection record as written to the record that is laid over a
//! vessel.

use crate::load::check::freeboard::FreeboardReader;
use crate::load::check::reading::{AttributeReader, Attributes, Unsaid, WrittenAttributes};
use crate::load::check::tool::{change_word, refuse_lost, take_lost};
use crate::load::check::value::{choice, count, day, filled, flag, kept, kind, missing};
use crate::load::check::vessel::{Covers, coverage};
use crate::load::form::inspection::MOST_ROWS;
use crate::load::form::inspection::{FoundForm, InspectionFile, MendedForm};
use crate::load::form::vessel::HOW;
use crate::load::form::vessel::MOST_TOOLS;
use crate::load::form::vessel::{CONDITIONS, LARGEST_LOT};
use crate::load::read::problem::{Problem, Problems};
use crate::load::read::spot::Spot;
use crate::measure::Day;
use crate::model::vessel::{Change, Coverage, Found, How, Inspection, Whereabouts};
use crate::model::vocabulary::{Class, KindId, Vocabulary};
use std::sync::Arc;

const FOUND_KEYS: [&str; 10] = [
    "row",
    "mark",
    "kind",
    "condition",
    "count",
    "expires",
    "missing",
    "mended",
    "stowed",
    "remark",
];

const MENDED_KEYS: [&str; 2] = ["what", "on"];

/// Checks an inspection record.
pub(crate) fn check_inspection(
    written: InspectionFile,
    vocabulary: &Vocabulary,
    top: &Spot<'_>,
    problems: &mut Problems,
) -> Option<Inspection> {
    let vessel = kept(written.vessel);
    if vessel.is_none() {
        missing(top, "vessel", problems, "write the name of the vessel");
    }
    if filled(written.on.as_deref()).is_none() {
        missing(top, "on", problems, "write the day of the walk");
    }
    let on = day(written.on.as_deref(), &top.key("on"), problems);
    let by = kept(written.by);
    let how = filled(written.figures.as_deref())
        .and_then(|text| choice(text, &HOW, &top.key("figures"), problems))
        .unwrap_or(How::Measured);
    let unsaid = Unsaid { by: by.as_deref().map(Arc::from), on, how, same_day: true };
    let covers = Covers {
        covers: written.covers.as_deref(),
        all_seen: written.all_seen.as_deref().unwrap_or_default(),
        sought: written.sought.as_deref().unwrap_or_default(),
        everything: false,
    };
    let coverage = coverage(&covers, vocabulary, top, problems);
    let renews = filled(written.renews.as_deref())
        .and_then(|text| flag(text, &top.key("counts as inspection due"), problems))
        .unwrap_or(false);
    let freeboard = written.freeboard.map(|freeboard| {
        FreeboardReader::new(&unsaid, problems).freeboard(freeboard, &top.key("freeboard"))
    });
    let freeboard = freeboard.filter(|freeboard| !freeboard.stations.is_empty());
    let mut found =
        found_list(written.found.unwrap_or_default(), vocabulary, &unsaid, top, problems);
    leave_out_empty(&mut found, &coverage, problems);
    Some(Inspection {
        vessel: vessel?,
        on: on?,
        by,
        sheet: kept(written.sheet),
        renews,
        coverage,
        found,
        freeboard,
        place: top.place(),
    })
}

fn found_list(
    forms: Vec<FoundForm>,
    vocabulary: &Vocabulary,
    unsaid: &Unsaid,
    top: &Spot<'_>,
    problems: &mut Problems,
) -> Vec<Found> {
    let list = top.key("found");
    if forms.len() > MOST_TOOLS {
        problems.add_at_key(
            Problem::new(list.place(), format!("{} tools are too many", forms.len()))
                .expected(format!("at most {MOST_TOOLS} in a record")),
        );
        return Vec::new();
    }
    let mut found: Vec<Found> = Vec::with_capacity(forms.len());
    for (index, form) in forms.into_iter().enumerate() {
        if problems.is_full() {
            break;
        }
        let spot = list.entry(index);
        let mut reader = FoundReader { vocabulary, unsaid, problems };
        let Some(one) = reader.found(form, &spot) else { continue };
        if let Some(twin) = found.iter().find(|twin| twin.mark == one.mark) {
            problems.add(
                Problem::new(spot.key("mark").place(), "this tool is written twice in the record")
                    .offending(&one.mark)
                    .expected(format!("a mark other than that of {}", twin.place.key))
                    .mend("write what was put right under `mended` of the first"),
            );
        }
        found.push(one);
    }
    found
}

/// Leaves out the rows of a sheet that were left empty: nobody looked there,
/// so they say nothing. In a record that speaks for the tool's whole kind, or
/// for everything, that would say that it is not there, so it is refused.
fn leave_out_empty(found: &mut Vec<Found>, coverage: &Coverage, problems: &mut Problems) {
    found.retain(|one| {
        if one.row.is_none() || says_something(one) {
            return true;
        }
        if coverage.everything || one.kind.is_some_and(|kind| coverage.is_whole(kind)) {
            problems.add(
                Problem::new(one.place.clone(), "this row was left empty")
                    .offending(&one.mark)
                    .expected("what was found, since the record covers everything of the kind")
                    .mend("write `missing: yes`, or its `condition`, or a figure"),
            );
        }
        false
    });
}

fn says_something(found: &Found) -> bool {
    found.missing
        || found.state.is_some()
        || found.count.is_some()
        || found.expires.is_some()
        || found.stowed.is_some()
        || found.remark.is_some()
        || !found.attributes.is_empty()
        || !found.mended.is_empty()
}

struct FoundReader<'a> {
    vocabulary: &'a Vocabulary,
    unsaid: &'a Unsaid,
    problems: &'a mut Problems,
}

impl FoundReader<'_> {
    fn found(&mut self, form: FoundForm, spot: &Spot<'_>) -> Option<Found> {
        let mark = kept(form.mark);
        if mark.is_none() {
            let mend = "write the tool's mark; a tool that the vessel does not list needs one too";
            missing(spot, "mark", self.problems, mend);
        }
        let kind = filled(form.kind.as_deref()).and_then(|text| {
            kind(text, &Class::CARRIED, self.vocabulary, &spot.key("kind"), self.problems)
        });
        let mut attributes = self.attributes(form.attributes, kind, &FOUND_KEYS, spot);
        let lost = take_lost(&mut attributes, self.vocabulary);
        if lost == Some(Whereabouts::Unknown) {
            let what = "one entry says that it is lost and that it is there";
            let problem = Problem::new(spot.key("state").place(), what);
            self.problems.add(problem.mend("write what was found that day"));
        }
        let state = filled(form.condition.as_deref())
            .and_then(|text| choice(text, &CONDITIONS, &spot.key("condition"), self.problems));
        let missing = filled(form.missing.as_deref())
            .and_then(|text| flag(text, &spot.key("missing"), self.problems))
            .unwrap_or(false);
        let lot = filled(form.count.as_deref())
            .and_then(|text| count(text, 0, LARGEST_LOT, &spot.key("count"), self.problems));
        // A paper that is lost and none of a lot were looked for in vain too.
        let missing = missing || lot == Some(0) || lost == Some(Whereabouts::Missing);
        let expires = day(form.expires.as_deref(), &spot.key("expires"), self.problems);
        let list = spot.key("mended");
        let mut mended = Vec::new();
        for (index, form) in form.mended.into_iter().flatten().enumerate() {
            mended.extend(self.mended(form, kind, &list.entry(index)));
        }
        if missing && (!attributes.is_empty() || !mended.is_empty()) {
            self.problems.add(
                Problem::new(spot.key("missing").place(), "a missing tool was measured or mended")
                    .mend("take away what says that it is missing, or the readings"),
            );
        }
        let row = filled(form.row.as_deref())
            .and_then(|text| count(text, 1, MOST_ROWS, &spot.key("row"), self.problems));
        Some(Found {
            row,
            mark: mark?,
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

    fn attributes(
        &mut self,
        written: WrittenAttributes,
        kind: Option<KindId>,
        fixed: &'static [&'static str],
        spot: &Spot<'_>,
    ) -> Attributes {
        AttributeReader { vocabulary: self.vocabulary, unsaid: self.unsaid, fixed }.attributes(
            written,
            kind,
            spot,
            self.problems,
        )
    }

    fn mended(
        &mut self,
        form: MendedForm,
        kind: Option<KindId>,
        spot: &Spot<'_>,
    ) -> Option<(Change, Attributes)> {
        let what = change_word(form.what.as_deref(), self.vocabulary, spot, self.problems)
            .map(|(what, _)| what.to_owned());
        let on: Option<Day> =
            day(form.on.as_deref(), &spot.key("on"), self.problems).or(self.unsaid.on);
        let unsaid = Unsaid { on, ..self.unsaid.clone() };
        let mut attributes =
            AttributeReader { vocabulary: self.vocabulary, unsaid: &unsaid, fixed: &MENDED_KEYS }
                .attributes(form.attributes, kind, spot, self.problems);
        refuse_lost(&mut attributes, self.vocabulary, spot, self.problems);
        Some((Change { what: what?, on: on? }, attributes))
    }
}

//! From a vessel's inventory as written to the vessel.
//!
//! Imports `model`; the parts are read in the other checks. Goes on after a
//! problem, so that all of them are found at once.

use crate::load::check::condition::tag;
use crate::load::check::freeboard::FreeboardReader;
use crate::load::check::people::{FISHING_LINE, HOOK, gear, people};
use crate::load::check::reading::Unsaid;
use crate::load::check::tool::{List, ToolReader};
use crate::load::check::value::{choice, day, filled, flag, is_unknown, kept, kind, missing};
use crate::load::form::loose::Texts;
use crate::load::form::open::Open;
use crate::load::form::vessel::CONDITIONS;
use crate::load::form::vessel::COVERS;
use crate::load::form::vessel::HOW;
use crate::load::form::vessel::MOST_TOOLS;
use crate::load::form::vessel::{DeclaredForm, GearForm, ToolForm, TripForm, VesselFile};
use crate::load::read::problem::{Problem, Problems};
use crate::load::read::spot::Spot;
use crate::load::read::suggest::{did_you_mean, nearest};
use crate::model::profile::FreeboardFrom;
use crate::model::vessel::{Coverage, Freeboard, GearPiece, How, PlannedTrip, State, Tool, Vessel};
use crate::model::vocabulary::{Class, Tag, Vocabulary};
use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

/// Checks a vessel.
pub(crate) fn check_vessel(
    mut written: VesselFile,
    vocabulary: &Vocabulary,
    top: &Spot<'_>,
    problems: &mut Problems,
) -> Option<Vessel> {
    let mut desk = Desk { vocabulary, top, problems };
    let name = kept(written.name.take());
    if name.is_none() {
        desk.missing("name", "write the vessel's name");
    }
    let (unsaid, condition) = desk.declared(written.declared.take());
    let coverage = coverage(
        &Covers {
            covers: written.covers.as_deref(),
            all_seen: written.all_seen.as_deref().unwrap_or_default(),
            sought: written.sought.as_deref().unwrap_or_default(),
            everything: true,
        },
        vocabulary,
        top,
        desk.problems,
    );
    let freeboard = written.freeboard.take().map(|freeboard| {
        FreeboardReader::new(&unsaid, desk.problems).freeboard(freeboard, &top.key("freeboard"))
    });
    let trip = written.trip.take().unwrap_or_default();
    let kit = desk.kit(written.kit.take(), written.documents.take(), &unsaid, condition, &coverage);
    let (permits, gears, areas) = desk.tag_lists(&written, &trip);
    let pieces = |written: Option<Vec<GearForm>>, kind, key, problems: &mut Problems| {
        written.map(|forms| gear(forms, kind, vocabulary, &unsaid, &top.key(key), problems))
    };
    let hooks: Option<Vec<GearPiece>> = pieces(written.hooks, HOOK, "hooks", desk.problems);
    let lines = pieces(written.lines, FISHING_LINE, "lines", desk.problems);
    let people =
        written.people.map(|forms| people(forms, vocabulary, &top.key("people"), desk.problems));
    Some(Vessel {
        name: name?,
        register: kept(written.register),
        port: kept(written.port),
        declared: unsaid.on,
        freeboard: freeboard
            .unwrap_or(Freeboard { from: FreeboardFrom::Rail, stations: Vec::new() }),
        permits,
        gears,
        areas,
        features: desk.features(written.features.unwrap_or_default()),
        kit,
        hooks,
        lines,
        people,
        trip: desk.trip(&trip),
        coverage,
        place: top.place(),
    })
}

/// What the readers of single keys share.
struct Desk<'a> {
    vocabulary: &'a Vocabulary,
    top: &'a Spot<'a>,
    problems: &'a mut Problems,
}

impl Desk<'_> {
    fn missing(&mut self, key: &str, mend: &str) {
        missing(self.top, key, self.problems, mend);
    }

    /// What plain figures leave unsaid, and the condition of tools that do
    /// not say.
    fn declared(&mut self, form: Option<DeclaredForm>) -> (Unsaid, Option<State>) {
        let spot = self.top.key("declared");
        let form = form.unwrap_or_default();
        let how = filled(form.figures.as_deref())
            .and_then(|text| choice(text, &HOW, &spot.key("figures"), self.problems))
            .unwrap_or(How::Stated);
        let condition = filled(form.condition.as_deref())
            .and_then(|text| choice(text, &CONDITIONS, &spot.key("condition"), self.problems));
        let on = day(form.on.as_deref(), &spot.key("on"), self.problems);
        (Unsaid { by: kept(form.by).map(Arc::from), on, how, same_day: false }, condition)
    }

    fn kit(
        &mut self,
        kit: Option<Vec<ToolForm>>,
        documents: Option<Vec<ToolForm>>,
        unsaid: &Unsaid,
        condition: Option<State>,
        coverage: &Coverage,
    ) -> Vec<Tool> {
        if kit.is_none() && coverage.everything {
            let mend = "list the tools, or write `kit: []` if there is none aboard";
            self.missing("kit", mend);
        }
        let (kit, documents) = (kit.unwrap_or_default(), documents.unwrap_or_default());
        let total = kit.len() + documents.len();
        if total > MOST_TOOLS {
            self.too_many(total);
            return Vec::new();
        }
        let marks = kit.iter().chain(&documents).filter_map(|form| form.mark.as_deref());
        let taken: BTreeSet<String> = marks
            .map(str::trim)
            .filter(|mark| mark.starts_with("DOC-"))
            .map(str::to_owned)
            .collect();
        let mut tools = Vec::with_capacity(total);
        let mut number = 0;
        for (list, key, forms) in
            [(List::Kit, "kit", kit), (List::Documents, "documents", documents)]
        {
            let spot = self.top.key(key);
            for (index, form) in forms.into_iter().enumerate() {
                if self.problems.is_full() {
                    return tools;
                }
                let spare = (list == List::Documents && filled(form.mark.as_deref()).is_none())
                    .then(|| next_mark(&mut number, &taken));
                let mut reader = ToolReader {
                    vocabulary: self.vocabulary,
                    unsaid,
                    condition,
                    problems: self.problems,
                };
                if let Some((tool, broken)) = reader.tools(form, list, spare, &spot.entry(index)) {
                    tools.push(tool);
                    tools.extend(broken);
                }
            }
        }
        if tools.len() > MOST_TOOLS {
            self.too_many(tools.len());
        }
        self.judge_marks(&tools, coverage.everything);
        tools
    }

    fn too_many(&mut self, total: usize) {
        self.problems.add_at_key(
            Problem::new(
                self.top.key("kit").place(),
                format!("{total} tools and documents are too many"),
            )
            .expected(format!("at most {MOST_TOOLS} on a vessel"))
            .mend("write equal tools as one line with a `count`"),
        );
    }

    /// Marks are unique, and spares name marks that are there.
    fn judge_marks(&mut self, tools: &[Tool], everything: bool) {
        let mut first: BTreeMap<&str, &Tool> = BTreeMap::new();
        for tool in tools {
            match first.get(tool.mark.as_str()) {
                Some(twin) => self.problems.add(
                    Problem::new(tool.place.below("mark"), "another tool has this mark too")
                        .offending(&tool.mark)
                        .expected(format!("a mark other than that of {}", twin.place.key))
                        .mend(
                            "give each tool a mark of its own, or write equal ones with a `count`",
                        ),
                ),
                None => drop(first.insert(&tool.mark, tool)),
            }
        }
        for tool in tools.iter().filter(|_| everything) {
            for (index, mark) in tool.fits.iter().enumerate() {
                if !first.contains_key(mark.as_str()) {
                    self.problems.add(
                        Problem::new(
                            tool.place.below("fits").entry(index),
                            "no tool of the vessel has this mark",
                        )
                        .offending(mark)
                        .mend_if(did_you_mean(nearest(mark, first.keys().copied()))),
                    );
                }
            }
        }
    }

    /// Permits, gear and areas; the trip's take the place of the vessel's.
    fn tag_lists(&mut self, written: &VesselFile, trip: &TripForm) -> (Tags, Tags, Tags) {
        let planned = self.top.key("trip");
        let words = self.vocabulary;
        let mut list = |trip: Option<&Texts>, own: Option<&Texts>, known, key| {
            let own = own.map(|tags| self.tags(tags, known, &self.top.key(key)));
            trip.map(|tags| self.tags(tags, known, &planned.key(key))).or(own)
        };
        (
            list(None, written.permits.as_ref(), &words.permits, "permits"),
            list(trip.gear.as_ref(), written.gear.as_ref(), &words.gears, "gear"),
            list(trip.areas.as_ref(), written.areas.as_ref(), &words.areas, "areas"),
        )
    }

    /// Tags as written, then the wider ones that they count as.
    fn tags(
        &mut self,
        written: &[String],
        known: &BTreeMap<String, Tag>,
        spot: &Spot<'_>,
    ) -> Vec<String> {
        let mut tags: Vec<String> = Vec::with_capacity(written.len());
        for (index, text) in written.iter().enumerate() {
            if self.problems.is_full() {
                return tags;
            }
            let tag = tag(text, known, &spot.entry(index), self.problems);
            tags.extend(tag.filter(|tag| !tags.contains(tag)));
        }
        let mut next = 0;
        while let Some(tag) = tags.get(next).and_then(|tag| known.get(tag)) {
            for wider in &tag.counts_as {
                if !tags.contains(wider) {
                    tags.push(wider.clone());
                }
            }
            next += 1;
        }
        tags
    }

    fn features(&mut self, written: Open<String>) -> BTreeMap<String, bool> {
        let list = self.top.key("features");
        let known = &self.vocabulary.vessel_features;
        let mut features = BTreeMap::new();
        for (key, value) in written.0 {
            let spot = list.key(&key);
            if !known.contains_key(&key) {
                self.problems.add_at_key(
                    Problem::new(spot.place(), "no feature of a vessel has this name")
                        .offending(&key)
                        .mend_if(did_you_mean(nearest(&key, known.keys().map(String::as_str)))),
                );
                continue;
            }
            let value = value.filter(|text| !is_unknown(text));
            let value = value.and_then(|text| flag(&text, &spot, self.problems));
            if let Some(value) = value {
                features.insert(key, value);
            }
        }
        features
    }

    fn trip(&mut self, form: &TripForm) -> PlannedTrip {
        let spot = self.top.key("trip");
        let departure = day(form.depart.as_deref(), &spot.key("depart"), self.problems);
        let back = day(form.back.as_deref(), &spot.key("return"), self.problems);
        if let (Some(departure), Some(back)) = (departure, back)
            && back < departure
        {
            self.problems.add(
                Problem::new(spot.key("return").place(), "the return lies before the departure")
                    .offending(&back.to_string())
                    .expected(format!("a day on or after {departure}")),
            );
        }
        PlannedTrip { departure, back }
    }
}

/// Tags of one sort; none where nobody said.
type Tags = Option<Vec<String>>;

/// The next free mark for a document without one.
fn next_mark(number: &mut u32, taken: &BTreeSet<String>) -> String {
    loop {
        *number += 1;
        let mark = format!("DOC-{number}");
        if !taken.contains(&mark) {
            return mark;
        }
    }
}

/// What a file writes about what it speaks for.
pub(crate) struct Covers<'a> {
    /// The text after `covers`.
    pub(crate) covers: Option<&'a str>,
    /// The kinds after `all seen`.
    pub(crate) all_seen: &'a [String],
    /// The kinds after `sought and not found`.
    pub(crate) sought: &'a [String],
    /// Whether the whole kit is meant where nothing is said.
    pub(crate) everything: bool,
}

/// What a file speaks for.
pub(crate) fn coverage(
    written: &Covers<'_>,
    vocabulary: &Vocabulary,
    top: &Spot<'_>,
    problems: &mut Problems,
) -> Coverage {
    let everything = filled(written.covers)
        .and_then(|text| choice(text, &COVERS, &top.key("covers"), problems))
        .unwrap_or(written.everything);
    let mut all_seen = BTreeSet::new();
    for (key, kinds) in [("all seen", written.all_seen), ("sought and not found", written.sought)] {
        let list = top.key(key);
        for (index, text) in kinds.iter().enumerate() {
            all_seen.extend(kind(text, &Class::CARRIED, vocabulary, &list.entry(index), problems));
        }
    }
    Coverage { everything, all_seen }
}

//! From a vessel's inventory as written to the vessel.
//!
//! Imports `model`; the parts are read in the other checks. Goes on after a
//! problem, so that all of them are found at once.

use crate::load::check::condition::tag;
use crate::load::check::reading::{AttributeReader, Unsaid, freeboard};
use crate::load::check::tool::{List, ToolReader};
use crate::load::check::value::{is_unknown, kept};
use crate::load::form::loose::Texts;
use crate::load::form::open::{Attributed, HOW, Open};
use crate::load::form::vessel::{
    CONDITIONS, COVERS, CertificateForm, DeclaredForm, GearForm, MOST_PIECES, MOST_TOOLS,
    PersonForm, ToolForm, TripForm, VesselFile,
};
use crate::load::read::fault::Fault;
use crate::load::read::problem::slip_of;
use crate::load::read::spot::{Spot, filled};
use crate::model::profile::FreeboardFrom;
use crate::model::vessel::{
    Certificate, Coverage, Freeboard, GearPiece, How, Person, PlannedTrip, State, Tool, Vessel,
};
use crate::model::vocabulary::{Class, Tags, Vocabulary, fold};
use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

/// Checks a vessel.
pub(crate) fn check_vessel(
    mut written: VesselFile,
    words: &Vocabulary,
    top: &Spot<'_>,
) -> Option<Vessel> {
    let name = top.must("name", kept(written.name.take()), Fault::NoVesselName);
    let (unsaid, condition) = declared(written.declared.take(), top);
    let coverage = coverage(
        &Covers {
            covers: &written.covers,
            all_seen: &written.all_seen,
            sought: &written.sought,
            everything: true,
        },
        words,
        top,
    );
    let written_freeboard = written.freeboard.take();
    let freeboard =
        written_freeboard.map(|written| freeboard(written, &unsaid, &top.key("freeboard")));
    let trip = written.trip.take().unwrap_or_default();
    if written.kit.is_none() && coverage.everything {
        top.missing("kit", Fault::NoKit);
    }
    let (kit, documents) = (written.kit.take(), written.documents.take());
    let reader = ToolReader { words, unsaid: &unsaid, condition };
    let kit = kit_of([kit.unwrap_or_default(), documents.unwrap_or_default()], &reader, top);
    judge_marks(&kit, coverage.everything, top);
    let (permits, gears, areas) = tag_lists(&written, &trip, words, top);
    let pieces = |written: Option<_>, key, kind| {
        written.map(|forms| gear(forms, (key, kind), words, &unsaid, top))
    };
    let hooks = pieces(written.hooks, "hooks", HOOK);
    let lines = pieces(written.lines, "lines", FISHING_LINE);
    let person = |at: &Spot<'_>, form| person(form, words, at);
    let people = written.people.map(|forms| top.each("people", forms, person));
    Some(Vessel {
        name: name?,
        register: kept(written.register),
        port: kept(written.port),
        declared: unsaid.on,
        freeboard: freeboard.unwrap_or(Freeboard {
            from: FreeboardFrom::Rail,
            stations: Vec::new(),
            other: Vec::new(),
        }),
        permits,
        gears,
        areas,
        features: features(written.features.unwrap_or_default(), words, &top.key("features")),
        kit,
        hooks,
        lines,
        people,
        trip: planned(&trip, &top.key("trip")),
        coverage,
        place: top.place(),
    })
}

/// What plain figures leave unsaid, and the condition of tools that do not
/// say.
fn declared(form: Option<DeclaredForm>, top: &Spot<'_>) -> (Unsaid, Option<State>) {
    let (spot, form) = (top.key("declared"), form.unwrap_or_default());
    let how = spot.word("figures", &form.figures, &HOW).unwrap_or(How::Stated);
    let condition = spot.word("condition", &form.condition, &CONDITIONS);
    let (by, on) = (kept(form.by).map(Arc::from), spot.day("on", &form.on));
    (Unsaid { by, on, how, same_day: false }, condition)
}

/// The tools and the documents.
fn kit_of(
    forms: [Vec<Attributed<ToolForm>>; 2],
    reader: &ToolReader<'_>,
    top: &Spot<'_>,
) -> Vec<Tool> {
    let too_many = |total: usize| {
        top.wrong_key("kit", Fault::TooManyTools { tools: total, most: MOST_TOOLS }).tell();
    };
    let total = forms.iter().map(Vec::len).sum();
    if total > MOST_TOOLS {
        too_many(total);
        return Vec::new();
    }
    let marks = forms.iter().flatten().filter_map(|tool| filled(&tool.form.mark));
    let taken: BTreeSet<String> =
        marks.filter(|mark| mark.starts_with("DOC-")).map(str::to_owned).collect();
    let mut free = (1..).map(|number| format!("DOC-{number}")).filter(|mark| !taken.contains(mark));
    let mut tools = Vec::with_capacity(total);
    for (forms, (list, key)) in
        forms.into_iter().zip([(List::Kit, "kit"), (List::Documents, "documents")])
    {
        let read = top.each(key, forms, |at, tool| {
            let unmarked = list == List::Documents && filled(&tool.form.mark).is_none();
            let spare = if unmarked { free.next() } else { None };
            reader.tools(tool, list, spare, at)
        });
        for (tool, broken) in read {
            tools.push(tool);
            tools.extend(broken);
        }
    }
    if tools.len() > MOST_TOOLS {
        too_many(tools.len());
    }
    tools
}

/// Marks are unique, and spares name marks that are there.
fn judge_marks(tools: &[Tool], everything: bool, top: &Spot<'_>) {
    let mut first: BTreeMap<&str, &Tool> = BTreeMap::new();
    for tool in tools {
        if let Some(twin) = first.get(tool.mark.as_str()) {
            let fault = Fault::MarkTwin(twin.place.key.clone());
            top.problems().wrong(tool.place.below("mark"), fault).of(&tool.mark).tell();
        } else {
            first.insert(&tool.mark, tool);
        }
    }
    for tool in tools.iter().filter(|_| everything) {
        for (index, mark) in tool.fits.iter().enumerate() {
            if !first.contains_key(mark.as_str()) {
                let place = tool.place.below("fits").entry(index);
                let wrong = top.problems().wrong(place, Fault::UnknownMark);
                wrong.unlike(mark, first.keys().copied()).tell();
            }
        }
    }
}

/// Tags that a vessel has; none where nobody said.
type Stated = Option<Vec<String>>;

/// Permits, gear and areas; the trip's take the place of the vessel's.
fn tag_lists(
    written: &VesselFile,
    trip: &TripForm,
    words: &Vocabulary,
    top: &Spot<'_>,
) -> (Stated, Stated, Stated) {
    let planned = top.key("trip");
    let list = |trip: &Option<Texts>, own: &Option<Texts>, known, key| {
        let own = own.as_ref().map(|written| tags(written, known, key, top));
        trip.as_ref().map(|written| tags(written, known, key, &planned)).or(own)
    };
    (
        list(&None, &written.permits, &words.permits, "permits"),
        list(&trip.gear, &written.gear, &words.gears, "gear"),
        list(&trip.areas, &written.areas, &words.areas, "areas"),
    )
}

/// Tags as written, then the wider ones that they count as.
fn tags(written: &Texts, known: &Tags, key: &str, spot: &Spot<'_>) -> Vec<String> {
    let own = spot.each(key, written, |at, text| tag(text, known, at));
    let wider = own.iter().flat_map(|tag| known.with_wider(tag).split_off(1));
    let mut tags: Vec<String> = Vec::with_capacity(own.len());
    for tag in own.iter().map(String::as_str).chain(wider) {
        if !tags.iter().any(|known| known == tag) {
            tags.push(tag.to_owned());
        }
    }
    tags
}

fn features(written: Open<String>, words: &Vocabulary, spot: &Spot<'_>) -> BTreeMap<String, bool> {
    let known = &words.vessel_features;
    let mut features = BTreeMap::new();
    for (key, value) in written.0 {
        let Some(feature) = known.find(&key) else {
            let also = known.values().flat_map(|feature| &feature.also);
            let names = known.keys().chain(also).map(String::as_str);
            spot.wrong_key(&key, Fault::UnknownFeature).unlike(&key, names).tell();
            continue;
        };
        let value = value.filter(|text| !is_unknown(text));
        let value = spot.flag(&key, &value);
        if value.is_some_and(|value| features.insert(feature.to_owned(), value).is_some()) {
            spot.wrong_key(&key, Fault::FeatureTwice).of(&key).tell();
        }
    }
    features
}

fn planned(form: &TripForm, spot: &Spot<'_>) -> PlannedTrip {
    let departure = spot.day("depart", &form.depart);
    let back = spot.day("return", &form.back);
    spot.in_order("return", departure, back, Fault::ReturnBeforeDeparture);
    PlannedTrip { departure, back }
}

/// What a file writes about what it speaks for.
pub(crate) struct Covers<'a> {
    /// The text after `covers`.
    pub(crate) covers: &'a Option<String>,
    /// The kinds after `all seen`.
    pub(crate) all_seen: &'a Option<Texts>,
    /// The kinds after `sought and not found`.
    pub(crate) sought: &'a Option<Texts>,
    /// Whether the whole kit is meant where nothing is said.
    pub(crate) everything: bool,
}

/// What a file speaks for.
pub(crate) fn coverage(written: &Covers<'_>, words: &Vocabulary, top: &Spot<'_>) -> Coverage {
    let everything = top.word("covers", written.covers, &COVERS).unwrap_or(written.everything);
    let mut all_seen = BTreeSet::new();
    for (key, kinds) in [("all seen", written.all_seen), ("sought and not found", written.sought)] {
        all_seen.extend(top.each(key, kinds.iter().flatten(), |at, text| {
            at.kind_of(text, &Class::CARRIED, words)
        }));
    }
    Coverage { everything, all_seen }
}

/// The kinds of the vocabulary under which gear is kept.
pub(crate) const HOOK: &str = "hook";
/// See [`HOOK`].
pub(crate) const FISHING_LINE: &str = "fishing-line";

/// A person, if it has a name.
pub(crate) fn person(form: PersonForm, words: &Vocabulary, spot: &Spot<'_>) -> Option<Person> {
    let name = spot.must("name", kept(form.name), Fault::NoPersonName);
    let roles = roles(form.roles, words, spot);
    let certificates = form.certificates.into_iter().flatten();
    let certificates =
        spot.each("certificates", certificates, |at, form| certificate(form, words, at));
    Some(Person { name: name?, roles, certificates, in_doubt: false, place: spot.place() })
}

/// Roles in the form in which profiles name them.
fn roles(written: Option<Texts>, words: &Vocabulary, spot: &Spot<'_>) -> Vec<String> {
    let mut roles = Vec::new();
    for role in spot.each("roles", written.into_iter().flatten(), |at, text| {
        if let Some(known) = words.roles.find(&text) {
            return Some(known.to_owned());
        }
        let role = fold(&text);
        if let Some(meant) = slip_of(&role, words.roles.keys().map(String::as_str)) {
            at.wrong(Fault::RoleSlip).of(&text).meant(Some(meant)).tell();
        }
        Some(role).filter(|role| !role.is_empty())
    }) {
        if !roles.contains(&role) {
            roles.push(role);
        }
    }
    roles
}

/// A certificate, if it has a kind.
pub(crate) fn certificate(
    form: CertificateForm,
    words: &Vocabulary,
    spot: &Spot<'_>,
) -> Option<Certificate> {
    let (issued, expires) = (spot.day("issued", &form.issued), spot.day("expires", &form.expires));
    spot.in_order("expires", issued, expires, Fault::ExpiresBeforeIssue);
    spot.must("kind", filled(&form.kind), Fault::NoCertificateKind)?;
    let kind = spot.kind("kind", &form.kind, &[Class::Certificate], words)?;
    let (number, place) = (kept(form.number), spot.place());
    Some(Certificate { kind, issued, expires, number, rivals: Vec::new(), place })
}

/// The hooks or lines of a vessel, which stand after a key.
pub(crate) fn gear(
    written: Vec<Attributed<GearForm>>,
    (key, kind): (&str, &str),
    words: &Vocabulary,
    unsaid: &Unsaid,
    spot: &Spot<'_>,
) -> Vec<GearPiece> {
    let Some(kind) = words.find_kind(kind) else {
        spot.key(key).wrong(Fault::NoKindOfGear(kind.to_owned())).tell();
        return Vec::new();
    };
    let mut number = 0;
    spot.each(key, written, |at, Attributed { form, keys, attributes }| {
        number += 1;
        if form.name.is_none() && attributes.is_empty() {
            at.wrong(Fault::EmptyGear).tell();
        }
        let lot = at.count("count", &form.count, 1, MOST_PIECES);
        let name = kept(form.name).unwrap_or_else(|| format!("{} {number}", words.kind(kind).name));
        let reader = AttributeReader { words, unsaid, keys };
        let mut tool = Tool::bare(name.clone(), kind, lot.unwrap_or(1), at.place());
        tool.attributes = reader.attributes(attributes, &[kind], at);
        tool.state = State::Serviceable;
        Some(GearPiece { name, tool })
    })
}

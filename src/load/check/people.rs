//! From people and fishing gear as written to those of a vessel.
//!
//! Imports `model`; hooks and lines are kept as tools of the kinds `hook` and
//! `fishing-line`.

use crate::load::check::reading::{AttributeReader, Unsaid};
use crate::load::check::value::{count, day, filled, kept, kind, missing};
use crate::load::form::loose::Texts;
use crate::load::form::vessel::MOST_PIECES;
use crate::load::form::vessel::{CertificateForm, GearForm, PersonForm};
use crate::load::read::problem::{Problem, Problems};
use crate::load::read::spot::Spot;
use crate::load::read::suggest::{did_you_mean, slip_of};
use crate::model::vessel::{Certificate, GearPiece, Person, State, Tool};
use crate::model::vocabulary::{Class, Vocabulary, fold};

/// The roles to which rules bind certificates; others may be written too.
const ROLES: [&str; 3] = ["owner", "operator", "crew"];

/// The kinds of the vocabulary under which gear is kept.
pub(crate) const HOOK: &str = "hook";
/// See [`HOOK`].
pub(crate) const FISHING_LINE: &str = "fishing-line";

/// The people of a vessel.
pub(crate) fn people(
    written: Vec<PersonForm>,
    vocabulary: &Vocabulary,
    spot: &Spot<'_>,
    problems: &mut Problems,
) -> Vec<Person> {
    let mut people = Vec::with_capacity(written.len());
    for (index, form) in written.into_iter().enumerate() {
        if problems.is_full() {
            break;
        }
        let spot = spot.entry(index);
        let name = kept(form.name);
        if name.is_none() {
            missing(&spot, "name", problems, "write the person's name");
        }
        let roles = roles(form.roles, &spot.key("roles"), problems);
        let list = spot.key("certificates");
        let certificates = form
            .certificates
            .into_iter()
            .flatten()
            .enumerate()
            .filter_map(|(i, form)| certificate(form, vocabulary, &list.entry(i), problems))
            .collect();
        people.extend(name.map(|name| Person { name, roles, certificates, place: spot.place() }));
    }
    people
}

/// Roles in the form in which profiles name them.
fn roles(written: Option<Texts>, spot: &Spot<'_>, problems: &mut Problems) -> Vec<String> {
    let mut roles = Vec::new();
    for (index, text) in written.into_iter().flatten().enumerate() {
        let role = fold(&text);
        let slip = slip_of(&role, ROLES).filter(|known| *known != role);
        if let Some(meant) = slip {
            problems.add(
                Problem::new(spot.entry(index).place(), "this role is very near to a known one")
                    .offending(&text)
                    .mend_if(did_you_mean(Some(meant))),
            );
        }
        if !role.is_empty() && !roles.contains(&role) {
            roles.push(role);
        }
    }
    roles
}

fn certificate(
    form: CertificateForm,
    vocabulary: &Vocabulary,
    spot: &Spot<'_>,
    problems: &mut Problems,
) -> Option<Certificate> {
    let issued = day(form.issued.as_deref(), &spot.key("issued"), problems);
    let expires = day(form.expires.as_deref(), &spot.key("expires"), problems);
    if let (Some(issued), Some(expires)) = (issued, expires)
        && expires < issued
    {
        problems.add(
            Problem::new(spot.key("expires").place(), "it expires before it was issued")
                .offending(&expires.to_string())
                .expected(format!("a day on or after {issued}")),
        );
    }
    let Some(text) = filled(form.kind.as_deref()) else {
        missing(spot, "kind", problems, "write the kind of certificate");
        return None;
    };
    let kind = kind(text, &[Class::Certificate], vocabulary, &spot.key("kind"), problems)?;
    Some(Certificate { kind, issued, expires, number: kept(form.number), place: spot.place() })
}

/// The hooks or lines of a vessel.
pub(crate) fn gear(
    written: Vec<GearForm>,
    kind: &str,
    vocabulary: &Vocabulary,
    unsaid: &Unsaid,
    spot: &Spot<'_>,
    problems: &mut Problems,
) -> Vec<GearPiece> {
    let Some(kind) = vocabulary.find_kind(kind) else {
        let what = format!("the vocabulary has no kind `{kind}` to keep these under");
        problems.add(Problem::new(spot.place(), what));
        return Vec::new();
    };
    let reader = AttributeReader { vocabulary, unsaid, fixed: &["name", "count"] };
    let mut pieces = Vec::with_capacity(written.len());
    for (index, form) in written.into_iter().enumerate() {
        if problems.is_full() {
            break;
        }
        let spot = spot.entry(index);
        if form.name.is_none() && form.attributes.is_empty() {
            problems.add(
                Problem::new(spot.place(), "nothing is said of this piece of gear")
                    .mend("fill it in, or take the entry away"),
            );
        }
        let lot = filled(form.count.as_deref())
            .and_then(|text| count(text, 1, MOST_PIECES, &spot.key("count"), problems));
        let name = kept(form.name)
            .unwrap_or_else(|| format!("{} {}", vocabulary.kind(kind).name, index + 1));
        let attributes = reader.attributes(form.attributes, Some(kind), &spot, problems);
        let tool = Tool {
            attributes,
            state: State::Serviceable,
            ..Tool::bare(name.clone(), kind, lot.unwrap_or(1), spot.place())
        };
        pieces.push(GearPiece { name, tool });
    }
    pieces
}

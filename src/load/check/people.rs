//! From people and fishing gear as written to those of a vessel.
//!
//! Imports `model`; hooks and lines are kept as tools of the kinds `hook` and
//! `fishing-line`.

use crate::load::check::reading::{AttributeReader, Unsaid};
use crate::load::check::value::kept;
use crate::load::form::loose::Texts;
use crate::load::form::open::Attributed;
use crate::load::form::vessel::{CertificateForm, GearForm, MOST_PIECES, PersonForm};
use crate::load::read::spot::{Spot, filled};
use crate::load::read::suggest::{did_you_mean, slip_of};
use crate::model::vessel::{Certificate, GearPiece, Person, State, Tool};
use crate::model::vocabulary::{Class, Vocabulary, fold};

/// The roles to which rules bind certificates; others may be written too.
const ROLES: [&str; 3] = ["owner", "operator", "crew"];

/// The kinds of the vocabulary under which gear is kept.
pub(crate) const HOOK: &str = "hook";
/// See [`HOOK`].
pub(crate) const FISHING_LINE: &str = "fishing-line";

/// A person, if it has a name.
pub(crate) fn person(form: PersonForm, words: &Vocabulary, spot: &Spot<'_>) -> Option<Person> {
    let name = spot.must("name", kept(form.name), "write the person's name");
    let roles = roles(form.roles, spot);
    let certificates = form.certificates.into_iter().flatten();
    let certificates =
        spot.each("certificates", certificates, |at, form| certificate(form, words, at));
    Some(Person { name: name?, roles, certificates, place: spot.place() })
}

/// Roles in the form in which profiles name them.
fn roles(written: Option<Texts>, spot: &Spot<'_>) -> Vec<String> {
    let mut roles = Vec::new();
    for role in spot.each("roles", written.into_iter().flatten(), |at, text| {
        let role = fold(&text);
        if let Some(meant) = slip_of(&role, ROLES).filter(|known| *known != role) {
            at.wrong("this role is very near to a known one")
                .of(&text)
                .mend_if(did_you_mean(Some(meant)))
                .tell();
        }
        Some(role).filter(|role| !role.is_empty())
    }) {
        if !roles.contains(&role) {
            roles.push(role);
        }
    }
    roles
}

fn certificate(form: CertificateForm, words: &Vocabulary, spot: &Spot<'_>) -> Option<Certificate> {
    let (issued, expires) = (spot.day("issued", &form.issued), spot.day("expires", &form.expires));
    spot.in_order("expires", issued, expires, "it expires before it was issued");
    spot.must("kind", filled(&form.kind), "write the kind of certificate")?;
    let kind = spot.kind("kind", &form.kind, &[Class::Certificate], words)?;
    Some(Certificate { kind, issued, expires, number: kept(form.number), place: spot.place() })
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
        let what = format!("the vocabulary has no kind `{kind}` to keep these under");
        spot.key(key).wrong(what).tell();
        return Vec::new();
    };
    let mut number = 0;
    spot.each(key, written, |at, Attributed { form, keys, attributes }| {
        number += 1;
        if form.name.is_none() && attributes.is_empty() {
            at.wrong("nothing is said of this piece of gear")
                .mend("fill it in, or take the entry away")
                .tell();
        }
        let lot = at.count("count", &form.count, 1, MOST_PIECES);
        let name = kept(form.name).unwrap_or_else(|| format!("{} {number}", words.kind(kind).name));
        let reader = AttributeReader { words, unsaid, keys };
        let mut tool = Tool::bare(name.clone(), kind, lot.unwrap_or(1), at.place());
        tool.attributes = reader.attributes(attributes, Some(kind), at);
        tool.state = State::Serviceable;
        Some(GearPiece { name, tool })
    })
}

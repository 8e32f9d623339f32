//! Who is aboard and what their certificates say, from the list and from what
//! inspectors saw.

use super::decide::{Statement, Weight, decide};
use crate::model::inspection::{Inspection, PersonFound};
use crate::model::vessel::{Certificate, Person, Vessel};
use crate::model::vocabulary::KindId;
use std::collections::BTreeMap;

/// What one record says of a person.
type Seen<'a> = (&'a PersonFound, Weight);

/// Lays what the records say of people over the list of them. Whoever is not
/// listed is added; where the vessel has no list, nothing is known of others, so
/// that none is made.
pub(super) fn lay(vessel: &mut Vessel, records: &[Inspection]) {
    let mut seen: BTreeMap<String, Vec<Seen<'_>>> = BTreeMap::new();
    for record in records {
        for found in &record.people {
            seen.entry(name(&found.name)).or_default().push((found, Weight::seen(record.on)));
        }
    }
    let listed = Weight::listed(vessel.declared);
    let Some(people) = &mut vessel.people else { return };
    people.retain_mut(|person| match seen.remove(&name(&person.name)) {
        Some(seen) => lay_person(person, &seen, Some(listed)),
        None => true,
    });
    for seen in seen.into_values() {
        let first = seen[0].0;
        let mut person = Person {
            name: first.name.clone(),
            roles: Vec::new(),
            certificates: Vec::new(),
            in_doubt: false,
            place: first.place.clone(),
        };
        if lay_person(&mut person, &seen, None) {
            people.push(person);
        }
    }
}

/// A name without case and blanks, which make no other person.
fn name(written: &str) -> String {
    written.split_whitespace().map(str::to_lowercase).collect::<Vec<_>>().join(" ")
}

/// Lays what was seen over the person; false if he or she is not aboard.
fn lay_person(person: &mut Person, seen: &[Seen<'_>], listed: Option<Weight>) -> bool {
    let said = seen.iter().filter_map(|(found, weight)| Some((found.aboard?, *weight)));
    let aboard = decide(said.chain(listed.map(|weight| (true, weight))));
    lay_certificates(&mut person.certificates, seen, listed);
    match aboard {
        Some(aboard) => {
            person.in_doubt = aboard.says.len() > 1;
            aboard.says.contains(&true)
        }
        // Who is named in passing was there.
        None => true,
    }
}

/// Lays the certificates that were seen over those listed, kind by kind. Those
/// of one kind are told apart by their numbers, where all that were seen have
/// one.
fn lay_certificates(
    certificates: &mut Vec<Certificate>,
    seen: &[Seen<'_>],
    listed: Option<Weight>,
) {
    let mut kinds: BTreeMap<KindId, Vec<Statement<&Certificate>>> = BTreeMap::new();
    for (found, weight) in seen {
        for certificate in &found.certificates {
            kinds.entry(certificate.kind).or_default().push((certificate, *weight));
        }
    }
    for (kind, seen) in kinds {
        if listed > seen.iter().map(|(_, weight)| *weight).max()
            && certificates.iter().any(|c| c.kind == kind)
        {
            continue;
        }
        let numbered = seen.iter().all(|(one, _)| one.number.is_some());
        let number = |one: &Certificate| one.number.clone().filter(|_| numbered);
        let mut groups: BTreeMap<Option<String>, Vec<Statement<&Certificate>>> = BTreeMap::new();
        for (one, weight) in seen {
            groups.entry(number(one)).or_default().push((one, weight));
        }
        certificates.retain(|own| {
            let another = numbered && own.number.is_some() && !groups.contains_key(&own.number);
            own.kind != kind || another
        });
        certificates.extend(groups.into_values().filter_map(decided));
    }
}

/// One certificate by all that was seen of it.
fn decided(seen: Vec<Statement<&Certificate>>) -> Option<Certificate> {
    let (first, _) = *seen.first()?;
    let days = seen.iter().map(|(one, weight)| ((one.issued, one.expires), *weight));
    let mut days = decide(days)?.says;
    days.sort();
    let (issued, expires) = days.remove(0);
    Some(Certificate { issued, expires, rivals: days, ..first.clone() })
}

//! What a requirement wants: tools, types, spares, certificates or the
//! vessel's own gear.

use crate::load::check::condition::{conditions, tests};
use crate::load::form::loose::{Slot, Words};
use crate::load::form::open::{Group, When, With};
use crate::load::form::profile::{AlternativeForm, MemberForm, RequirementForm, TypeForm};
use crate::load::read::fault::Fault;
use crate::load::read::spot::{Spot, filled};
use crate::model::rule::{Condition, Holders, Member, Need, Spec, Test, ToolType};
use crate::model::vocabulary::{Class, KindId, Vocabulary, fold};

/// The most of anything that a requirement may ask for.
const MOST_ASKED: u32 = 500;

/// Reads what a requirement wants.
pub(crate) struct NeedReader<'a> {
    /// The words.
    pub(crate) words: &'a Vocabulary,
}

/// The parts of `carry: 2 pliers`.
struct Carry<'t> {
    count: u32,
    rest: &'t str,
}

/// Tells of keys that are written and cannot stand beside another.
pub(crate) fn clash(spot: &Spot<'_>, beside: &'static str, keys: &[(&'static str, bool)]) {
    for (key, _) in keys.iter().filter(|(_, written)| *written) {
        spot.wrong_key(key, Fault::KeysClash { key, beside }).tell();
    }
}

impl NeedReader<'_> {
    /// What the requirement wants; `spare_for` is already looked up.
    pub(crate) fn need(
        &self,
        form: &RequirementForm,
        spare_for: Option<usize>,
        spot: &Spot<'_>,
    ) -> Option<Need> {
        let carried = form.carry.is_some() || form.spare_for.is_some();
        let ways = [carried, form.certificate.is_some(), form.every.is_some()];
        if ways.iter().filter(|way| **way).count() != 1 {
            return spot.wrong(Fault::UnclearNeed).none();
        }
        if let Some(text) = &form.certificate {
            return self.certificates(text, form, spot);
        }
        let strays = [("held by", form.held_by.is_some()), ("valid", form.valid.is_some())];
        clash(spot, if carried { "carry" } else { "every" }, &strays);
        match &form.every {
            Some(text) => self.gear(text, form, spot),
            None => self.tools(form, spare_for, spot),
        }
    }

    fn tools(
        &self,
        form: &RequirementForm,
        spare_for: Option<usize>,
        spot: &Spot<'_>,
    ) -> Option<Need> {
        let with = form.with.as_ref().and_then(Slot::value);
        let one_of = form.one_of.as_ref().and_then(Slot::value);
        if let Some(types) = form.types.as_ref().and_then(Slot::value) {
            clash(spot, "types", &[("with", with.is_some()), ("one of", one_of.is_some())]);
            return self.types(types, &form.carry, spot);
        }
        let member = self.member(&form.carry, with, one_of.map(Vec::as_slice), spot)?;
        let is_spare = |spec: &Spec| self.words.kind(spec.kind).class == Class::Spare;
        match (member.choices.iter().any(is_spare), form.spare_for.is_some()) {
            (true, false) => spot.key("carry").wrong(Fault::SparesForNothing).tell(),
            (false, true) => spot.key("spare for").wrong(Fault::NoSpare).tell(),
            _ => {}
        }
        let only = ToolType { name: None, clause: None, members: vec![member] };
        Some(Need::Tools { least: 1, types: vec![only], spare_for })
    }

    /// `carry: 2 different types` with `types:`.
    fn types(&self, forms: &[TypeForm], written: &Option<String>, spot: &Spot<'_>) -> Option<Need> {
        let at = spot.key("carry");
        let carry = carry(written, spot)?;
        let written = written.as_deref().unwrap_or_default();
        if !carry.rest.is_empty() && !matches!(carry.rest, "different types" | "different type") {
            at.wrong(Fault::NoNumberOfTypes).of(written).tell();
        }
        let types = spot.each("types", forms, |at, form| self.tool_type(form, at));
        let known = u32::try_from(forms.len()).unwrap_or(u32::MAX);
        if carry.count > known {
            at.wrong(Fault::TooFewTypes(known)).of(written).tell();
        }
        Some(Need::Tools { least: carry.count, types, spare_for: None })
    }

    fn tool_type(&self, form: &TypeForm, spot: &Spot<'_>) -> Option<ToolType> {
        let name = spot.must("type", filled(&form.name), Fault::NoTypeName);
        let members = match &form.set_of {
            Some(members) => {
                let strays = [
                    ("carry", form.carry.is_some()),
                    ("with", form.with.is_some()),
                    ("one of", form.one_of.is_some()),
                ];
                clash(spot, "set of", &strays);
                self.members(members, spot)
            }
            None => {
                let (with, one_of) = (form.with.as_ref(), form.one_of.as_deref());
                Vec::from_iter(self.member(&form.carry, with, one_of, spot))
            }
        };
        let clause = filled(&form.clause).map(str::to_owned);
        let name = name.map(str::to_owned);
        (!members.is_empty()).then_some(ToolType { name, clause, members })
    }

    fn members(&self, forms: &[MemberForm], spot: &Spot<'_>) -> Vec<Member> {
        if forms.is_empty() {
            spot.key("set of").wrong(Fault::EmptySetOf).tell();
        }
        spot.each("set of", forms, |at, form| {
            self.member(&form.carry, form.with.as_ref(), form.one_of.as_deref(), at)
        })
    }

    /// A number of one kind, or of one of several alternatives.
    fn member(
        &self,
        written: &Option<String>,
        with: Option<&Group<With>>,
        one_of: Option<&[AlternativeForm]>,
        spot: &Spot<'_>,
    ) -> Option<Member> {
        let Carry { count, rest } = carry(written, spot)?;
        let (at, written) = (spot.key("carry"), written.as_deref().unwrap_or_default());
        if let Some(forms) = one_of {
            if !rest.is_empty() {
                at.wrong(Fault::KindBesideOneOf).of(written).tell();
            }
            clash(spot, "one of", &[("with", with.is_some())]);
            let choices = self.alternatives(forms, None, spot);
            return (!choices.is_empty()).then_some(Member { count, choices });
        }
        if rest.is_empty() || rest.starts_with("different type") {
            return at.wrong(Fault::NoKindCarried).of(written).none();
        }
        let kind = at.kind_of(rest, &Class::CARRIED, self.words)?;
        let tests = self.with(with, kind, spot);
        let spec = Spec { kind, clause: None, when: Vec::new(), tests };
        Some(Member { count, choices: vec![spec] })
    }

    fn with(&self, with: Option<&Group<With>>, kind: KindId, spot: &Spot<'_>) -> Vec<Test> {
        let read = |group| tests(group, &[kind], self.words, &spot.key("with"));
        with.map(read).unwrap_or_default()
    }

    /// The entries under `one of:`; of the given kind if there is one.
    fn alternatives(
        &self,
        forms: &[AlternativeForm],
        of: Option<KindId>,
        spot: &Spot<'_>,
    ) -> Vec<Spec> {
        if forms.is_empty() {
            spot.key("one of").wrong(Fault::NoAlternative).tell();
        }
        spot.each("one of", forms, |at, form| self.alternative(form, of, at))
    }

    fn alternative(
        &self,
        form: &AlternativeForm,
        of: Option<KindId>,
        spot: &Spot<'_>,
    ) -> Option<Spec> {
        let text = filled(&form.kind);
        let kind = match of {
            None => {
                spot.must("kind", text, Fault::NoAlternativeKind)?;
                spot.kind("kind", &form.kind, &Class::CARRIED, self.words)?
            }
            Some(of) => {
                if text.is_none() {
                    spot.must("with", form.with.as_ref(), Fault::NoTestsOfPiece);
                }
                if let Some(text) = text.filter(|text| self.words.find_kind(text) != Some(of)) {
                    spot.key("kind").wrong(Fault::KindBesideEvery).of(text).tell();
                }
                of
            }
        };
        Some(Spec {
            kind,
            clause: filled(&form.clause).map(str::to_owned),
            when: self.when(form.when.as_ref(), spot),
            tests: self.with(form.with.as_ref(), kind, spot),
        })
    }

    fn when(&self, group: Option<&Group<When>>, spot: &Spot<'_>) -> Vec<Condition> {
        let read = |group| conditions(group, self.words, &spot.key("when"));
        group.map(read).unwrap_or_default()
    }

    /// `every: hook`.
    fn gear(&self, text: &str, form: &RequirementForm, spot: &Spot<'_>) -> Option<Need> {
        let types = form.types.as_ref().and_then(Slot::value);
        clash(spot, "every", &[("types", types.is_some())]);
        let kind = spot.key("every").kind_of(text, &[Class::Gear], self.words)?;
        let with = form.with.as_ref().and_then(Slot::value);
        let choices = match form.one_of.as_ref().and_then(Slot::value) {
            Some(forms) => {
                clash(spot, "one of", &[("with", with.is_some())]);
                self.alternatives(forms, Some(kind), spot)
            }
            None => {
                spot.must("with", with, Fault::NoTestsOfEvery);
                let tests = self.with(with, kind, spot);
                vec![Spec { kind, clause: None, when: Vec::new(), tests }]
            }
        };
        Some(Need::Gear { kind, choices })
    }

    /// `certificate: workshop certificate`.
    fn certificates(&self, text: &str, form: &RequirementForm, spot: &Spot<'_>) -> Option<Need> {
        let strays = [
            ("types", form.types.as_ref().and_then(Slot::value).is_some()),
            ("with", form.with.is_some()),
            ("one of", form.one_of.is_some()),
        ];
        clash(spot, "certificate", &strays);
        let kind = spot.key("certificate").kind_of(text, &[Class::Certificate], self.words);
        let holders = match spot.must("held by", form.held_by.as_ref(), Fault::NoHolders) {
            None => None,
            Some(Words::Many(names)) => roles(names, self.words, &spot.key("held by")),
            Some(Words::One(text)) => people(text, self.words, &spot.key("held by")),
        };
        let valid = spot.interval("valid", &form.valid);
        Some(Need::Certificates { kind: kind?, holders: holders?, valid })
    }
}

/// The number after `carry`, and what follows it.
fn carry<'t>(text: &'t Option<String>, spot: &Spot<'_>) -> Option<Carry<'t>> {
    let text = spot.must("carry", filled(text), Fault::NoCarry)?;
    let (number, rest) = text.split_once(' ').unwrap_or((text, ""));
    let spot = spot.key("carry");
    if !number.bytes().all(|b| b.is_ascii_digit()) {
        return spot.wrong(Fault::NoNumberCarried(text.to_owned())).of(text).none();
    }
    Some(Carry { count: spot.count_of(number, 1, MOST_ASKED)?, rest: rest.trim() })
}

fn roles(names: &[String], words: &Vocabulary, spot: &Spot<'_>) -> Option<Holders> {
    let known = |role: &String| words.roles.find(role).map_or_else(|| fold(role), str::to_owned);
    let roles = names.iter().map(known).filter(|role| !role.is_empty());
    let roles: Vec<String> = roles.collect();
    if roles.is_empty() {
        return spot.wrong(Fault::NoRole).none();
    }
    Some(Holders::EachRole(roles))
}

/// `2 people`, or a single role.
fn people(text: &str, words: &Vocabulary, spot: &Spot<'_>) -> Option<Holders> {
    let text = text.trim();
    match text.strip_suffix("people").or_else(|| text.strip_suffix("person")) {
        Some(number) => spot.count_of(number, 1, MOST_ASKED).map(Holders::People),
        None => roles(&[text.to_owned()], words, spot),
    }
}

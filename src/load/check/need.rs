//! What a requirement wants: tools, types, spares, certificates or the
//! vessel's own gear.

use crate::load::check::condition::LineReader;
use crate::load::check::value::{count, filled, interval, kind, missing};
use crate::load::form::group::{Group, When, With};
use crate::load::form::loose::{Slot, Words};
use crate::load::form::profile::{AlternativeForm, MemberForm, RequirementForm, TypeForm};
use crate::load::read::problem::{Problem, Problems};
use crate::load::read::spot::Spot;
use crate::model::rule::{Holders, Member, Need, Spec, ToolType};
use crate::model::vocabulary::{Class, KindId, Vocabulary, fold};

/// The most of anything that a requirement may ask for.
const MOST_ASKED: u32 = 500;

/// The keys that say what is wanted, and which of them can stand together.
const SHAPES: &str = "`carry` with `with`, `one of` or `types`; `certificate` with `held by`; \
                      or `every` with `with` or `one of`";

/// Reads what a requirement wants.
pub(crate) struct NeedReader<'a> {
    /// The words.
    pub(crate) vocabulary: &'a Vocabulary,
    /// Where problems go.
    pub(crate) problems: &'a mut Problems,
}

/// The parts of `carry: 2 pliers`.
struct Carry<'t> {
    count: u32,
    rest: &'t str,
}

impl NeedReader<'_> {
    fn lines(&mut self) -> LineReader<'_> {
        LineReader { vocabulary: self.vocabulary, problems: self.problems }
    }

    fn clash(&mut self, spot: &Spot<'_>, key: &str, with: &str) {
        let place = spot.key(key).place();
        self.problems.add_at_key(
            Problem::new(place, format!("`{key}` cannot stand beside `{with}`")).expected(SHAPES),
        );
    }

    /// What the requirement wants; `spare_for` is already looked up.
    pub(crate) fn need(
        &mut self,
        form: &RequirementForm,
        spare_for: Option<usize>,
        spot: &Spot<'_>,
    ) -> Option<Need> {
        let carried = form.carry.is_some() || form.spare_for.is_some();
        let ways = [carried, form.certificate.is_some(), form.every.is_some()];
        if ways.iter().filter(|way| **way).count() != 1 {
            self.problems.add(
                Problem::new(spot.place(), "it is not clear what this requirement wants")
                    .expected(SHAPES),
            );
            return None;
        }
        if let Some(text) = &form.certificate {
            return self.certificates(text, form, spot);
        }
        for (key, stray) in [("held by", form.held_by.is_some()), ("valid", form.valid.is_some())] {
            if stray {
                self.clash(spot, key, if carried { "carry" } else { "every" });
            }
        }
        if let Some(text) = &form.every {
            return self.gear(text, form, spot);
        }
        self.tools(form, spare_for, spot)
    }

    fn tools(
        &mut self,
        form: &RequirementForm,
        spare_for: Option<usize>,
        spot: &Spot<'_>,
    ) -> Option<Need> {
        let types = form.types.as_ref().and_then(Slot::value);
        let with = form.with.as_ref().and_then(Slot::value);
        let one_of = form.one_of.as_ref().and_then(Slot::value);
        if let Some(types) = types {
            for (key, stray) in [("with", with.is_some()), ("one of", one_of.is_some())] {
                if stray {
                    self.clash(spot, key, "types");
                }
            }
            return self.types(types, form, spot);
        }
        let member = self.member(form.carry.as_deref(), with, one_of.map(Vec::as_slice), spot)?;
        let is_spare =
            member.choices.iter().any(|spec| self.vocabulary.kind(spec.kind).class == Class::Spare);
        if is_spare != form.spare_for.is_some() {
            self.spare_mismatch(is_spare, spot);
        }
        let only = ToolType { name: None, clause: None, members: vec![member] };
        Some(Need::Tools { least: 1, types: vec![only], spare_for })
    }

    fn spare_mismatch(&mut self, is_spare: bool, spot: &Spot<'_>) {
        let problem = if is_spare {
            Problem::new(spot.key("carry").place(), "spares for what is not said")
                .mend("write `spare for:` and the requirement whose tool they are for")
        } else {
            Problem::new(spot.key("spare for").place(), "what is carried here is no spare")
                .expected("a kind of the class `spare`")
        };
        self.problems.add(problem);
    }

    /// `carry: 2 different types` with `types:`.
    fn types(
        &mut self,
        forms: &[TypeForm],
        form: &RequirementForm,
        spot: &Spot<'_>,
    ) -> Option<Need> {
        let place = spot.key("carry");
        let carry = self.carry(form.carry.as_deref(), spot)?;
        if !carry.rest.is_empty() && !matches!(carry.rest, "different types" | "different type") {
            self.problems.add(
                Problem::new(place.place(), "`types` is written, but not how many of them")
                    .offending(form.carry.as_deref().unwrap_or_default())
                    .expected("a number of different types, like `2 different types`"),
            );
        }
        let list = spot.key("types");
        let mut types = Vec::new();
        for (index, form) in forms.iter().enumerate() {
            types.extend(self.tool_type(form, &list.entry(index)));
        }
        let known = u32::try_from(forms.len()).unwrap_or(u32::MAX);
        if carry.count > known {
            self.problems.add(
                Problem::new(place.place(), "more types are asked for than there are")
                    .offending(form.carry.as_deref().unwrap_or_default())
                    .expected(format!("at most {known}")),
            );
        }
        Some(Need::Tools { least: carry.count, types, spare_for: None })
    }

    fn tool_type(&mut self, form: &TypeForm, spot: &Spot<'_>) -> Option<ToolType> {
        let name = filled(form.name.as_deref());
        if name.is_none() {
            missing(spot, "type", self.problems, "write the name of the type");
        }
        let members = match &form.set_of {
            Some(members) => {
                for (key, stray) in [
                    ("carry", form.carry.is_some()),
                    ("with", form.with.is_some()),
                    ("one of", form.one_of.is_some()),
                ] {
                    if stray {
                        self.clash(spot, key, "set of");
                    }
                }
                self.members(members, &spot.key("set of"))
            }
            None => self
                .member(form.carry.as_deref(), form.with.as_ref(), form.one_of.as_deref(), spot)
                .into_iter()
                .collect(),
        };
        if members.is_empty() {
            return None;
        }
        let clause = filled(form.clause.as_deref()).map(str::to_owned);
        Some(ToolType { name: name.map(str::to_owned), clause, members })
    }

    fn members(&mut self, forms: &[MemberForm], spot: &Spot<'_>) -> Vec<Member> {
        if forms.is_empty() {
            self.problems.add(Problem::new(spot.place(), "an empty set"));
        }
        let mut members = Vec::new();
        for (index, form) in forms.iter().enumerate() {
            let spot = spot.entry(index);
            let (with, one_of) = (form.with.as_ref(), form.one_of.as_deref());
            members.extend(self.member(form.carry.as_deref(), with, one_of, &spot));
        }
        members
    }

    /// A number of one kind, or of one of several alternatives.
    fn member(
        &mut self,
        carry: Option<&str>,
        with: Option<&Group<With>>,
        one_of: Option<&[AlternativeForm]>,
        spot: &Spot<'_>,
    ) -> Option<Member> {
        let written = self.carry(carry, spot)?;
        let place = spot.key("carry");
        if let Some(forms) = one_of {
            if !written.rest.is_empty() {
                self.problems.add(
                    Problem::new(place.place(), "a kind beside `one of`")
                        .offending(carry.unwrap_or_default())
                        .expected("only a number, like `1`; the kinds stand under `one of`"),
                );
            }
            if with.is_some() {
                self.clash(spot, "with", "one of");
            }
            let choices = self.alternatives(forms, None, &spot.key("one of"));
            return (!choices.is_empty()).then_some(Member { count: written.count, choices });
        }
        if written.rest.is_empty() || written.rest.starts_with("different type") {
            self.problems.add(
                Problem::new(place.place(), "of which kind is not said")
                    .offending(carry.unwrap_or_default())
                    .expected("a number and a kind, like `2 pliers`")
                    .mend("write the kind after the number, or list alternatives under `one of`"),
            );
            return None;
        }
        let kind = kind(written.rest, &Class::CARRIED, self.vocabulary, &place, self.problems)?;
        let tests = self.with(with, kind, spot);
        let spec = Spec { kind, clause: None, when: Vec::new(), tests };
        Some(Member { count: written.count, choices: vec![spec] })
    }

    fn with(
        &mut self,
        with: Option<&Group<With>>,
        kind: KindId,
        spot: &Spot<'_>,
    ) -> Vec<crate::model::rule::Test> {
        with.map(|group| self.lines().tests(group, &[kind], &spot.key("with"))).unwrap_or_default()
    }

    /// The number and what follows it.
    fn carry<'t>(&mut self, text: Option<&'t str>, spot: &Spot<'_>) -> Option<Carry<'t>> {
        let Some(text) = filled(text) else {
            missing(spot, "carry", self.problems, "write a number and a kind, like `1 pliers`");
            return None;
        };
        let (number, rest) = text.split_once(' ').unwrap_or((text, ""));
        let place = spot.key("carry");
        if !number.bytes().all(|b| b.is_ascii_digit()) {
            self.problems.add(
                Problem::new(place.place(), "how many is not said")
                    .offending(text)
                    .expected("a number and a kind")
                    .mend(format!("write it like `1 {text}`")),
            );
            return None;
        }
        let count = count(number, 1, MOST_ASKED, &place, self.problems)?;
        Some(Carry { count, rest: rest.trim() })
    }

    /// The entries under `one of:`; of the given kind if there is one.
    fn alternatives(
        &mut self,
        forms: &[AlternativeForm],
        of: Option<KindId>,
        spot: &Spot<'_>,
    ) -> Vec<Spec> {
        if forms.is_empty() {
            self.problems.add(Problem::new(spot.place(), "no alternative is listed"));
        }
        let mut choices = Vec::new();
        for (index, form) in forms.iter().enumerate() {
            choices.extend(self.alternative(form, of, &spot.entry(index)));
        }
        choices
    }

    fn alternative(
        &mut self,
        form: &AlternativeForm,
        of: Option<KindId>,
        spot: &Spot<'_>,
    ) -> Option<Spec> {
        let place = spot.key("kind");
        let kind = match (filled(form.kind.as_deref()), of) {
            (Some(text), None) => {
                kind(text, &Class::CARRIED, self.vocabulary, &place, self.problems)?
            }
            (None, Some(of)) => {
                if form.with.is_none() {
                    missing(spot, "with", self.problems, "write what such a piece must be like");
                }
                of
            }
            (Some(text), Some(of)) => {
                if self.vocabulary.find_kind(text) != Some(of) {
                    self.problems.add(
                        Problem::new(place.place(), "another kind than after `every`")
                            .offending(text)
                            .mend("take the line away"),
                    );
                }
                of
            }
            (None, None) => {
                missing(spot, "kind", self.problems, "write the kind of this alternative");
                return None;
            }
        };
        Some(Spec {
            kind,
            clause: filled(form.clause.as_deref()).map(str::to_owned),
            when: self.when(form.when.as_ref(), spot),
            tests: self.with(form.with.as_ref(), kind, spot),
        })
    }

    fn when(
        &mut self,
        group: Option<&Group<When>>,
        spot: &Spot<'_>,
    ) -> Vec<crate::model::rule::Condition> {
        group.map(|group| self.lines().conditions(group, &spot.key("when"))).unwrap_or_default()
    }

    fn refuse_types(&mut self, form: &RequirementForm, beside: &str, spot: &Spot<'_>) {
        if form.types.as_ref().and_then(Slot::value).is_some() {
            self.clash(spot, "types", beside);
        }
    }

    /// `every: hook`.
    fn gear(&mut self, text: &str, form: &RequirementForm, spot: &Spot<'_>) -> Option<Need> {
        self.refuse_types(form, "every", spot);
        let place = spot.key("every");
        let kind = kind(text, &[Class::Gear], self.vocabulary, &place, self.problems)?;
        let with = form.with.as_ref().and_then(Slot::value);
        let choices = match form.one_of.as_ref().and_then(Slot::value) {
            Some(forms) => {
                if with.is_some() {
                    self.clash(spot, "with", "one of");
                }
                self.alternatives(forms, Some(kind), &spot.key("one of"))
            }
            None => {
                if with.is_none() {
                    missing(spot, "with", self.problems, "write what every piece must be like");
                }
                let tests = self.with(with, kind, spot);
                vec![Spec { kind, clause: None, when: Vec::new(), tests }]
            }
        };
        Some(Need::Gear { kind, choices })
    }

    /// `certificate: workshop certificate`.
    fn certificates(
        &mut self,
        text: &str,
        form: &RequirementForm,
        spot: &Spot<'_>,
    ) -> Option<Need> {
        self.refuse_types(form, "certificate", spot);
        for (key, stray) in [("with", form.with.is_some()), ("one of", form.one_of.is_some())] {
            if stray {
                self.clash(spot, key, "certificate");
            }
        }
        let place = spot.key("certificate");
        let kind = kind(text, &[Class::Certificate], self.vocabulary, &place, self.problems);
        let held_by = spot.key("held by");
        let holders = match &form.held_by {
            None => {
                let mend = "write roles like `[owner, operator]`, or `2 people`";
                missing(spot, "held by", self.problems, mend);
                None
            }
            Some(Words::Many(roles)) => self.roles(roles, &held_by),
            Some(Words::One(text)) => self.people(text, &held_by),
        };
        let valid = filled(form.valid.as_deref())
            .and_then(|text| interval(text, &spot.key("valid"), self.problems));
        Some(Need::Certificates { kind: kind?, holders: holders?, valid })
    }

    fn roles(&mut self, roles: &[String], spot: &Spot<'_>) -> Option<Holders> {
        let roles: Vec<String> =
            roles.iter().map(|role| fold(role)).filter(|role| !role.is_empty()).collect();
        if roles.is_empty() {
            self.problems.add(Problem::new(spot.place(), "no role is listed"));
            return None;
        }
        Some(Holders::EachRole(roles))
    }

    /// `2 people`, or a single role.
    fn people(&mut self, text: &str, spot: &Spot<'_>) -> Option<Holders> {
        let text = text.trim();
        let number = text.strip_suffix("people").or_else(|| text.strip_suffix("person"));
        match number {
            Some(number) => count(number, 1, MOST_ASKED, spot, self.problems).map(Holders::People),
            None => self.roles(&[text.to_owned()], spot),
        }
    }
}

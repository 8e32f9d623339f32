//! An inventory to fill in for one profile, as YAML: every requirement as an
//! empty tool, with what is asked of it and how it is measured.
//!
//! Imports `model` and the words beside it. As it is printed it loads, and
//! proves nothing: what is empty is not known.

use super::asks::{Ask, Asks, Placed, for_a_file};
use super::yaml::{File, scalar};
use crate::model::place::Place;
use crate::model::profile::{FreeboardFrom, Level, Profile, Requirement};
use crate::model::rule::{Holders, Member, Need, ToolType};
use crate::model::vessel::{Coverage, Freeboard, PlannedTrip, Vessel};
use crate::model::vocabulary::{AttributeId, Class, Kind, Tag, Vocabulary};
use crate::report::Locale;
use crate::report::words::{Words, figures, sheet as said};
use std::collections::BTreeMap;

/// The inventory to fill in for a profile that is encoded.
pub fn blank_vessel(profile: &Profile, vocabulary: &Vocabulary, locale: Locale) -> String {
    let vessel = nobody(profile.freeboard_from);
    let words = Words { vocabulary, vessel: &vessel, profile, findings: &[], locale };
    let mut blank =
        Blank { words, file: File::default(), told: Vec::new(), marks: Vec::new(), number: 0 };
    blank.head();
    blank.tags();
    blank.section("kit", Class::Document, false);
    blank.section("documents", Class::Document, true);
    blank.gear();
    blank.people();
    blank.file.finish()
}

/// A vessel of which nothing is known.
fn nobody(from: FreeboardFrom) -> Vessel {
    Vessel {
        name: String::new(),
        register: None,
        port: None,
        declared: None,
        freeboard: Freeboard { from, stations: Vec::new(), other: Vec::new() },
        permits: None,
        gears: None,
        areas: None,
        features: BTreeMap::new(),
        kit: Vec::new(),
        hooks: None,
        lines: None,
        people: None,
        trip: PlannedTrip::default(),
        coverage: Coverage::default(),
        place: Place::new(&"".into(), ""),
    }
}

struct Blank<'a> {
    words: Words<'a>,
    file: File,
    /// Attributes of which it was told how to measure them.
    told: Vec<AttributeId>,
    /// The mark of the first tool of each requirement, by index.
    marks: Vec<(usize, String)>,
    number: usize,
}

impl<'a> Blank<'a> {
    fn profile(&self) -> &'a Profile {
        self.words.profile
    }

    fn head(&mut self) {
        let (profile, locale) = (self.profile(), self.words.locale);
        let file = &mut self.file;
        file.comment(0, &locale.sheet_inventory(&said::edition(profile, locale), &profile.id));
        file.comment(0, locale.sheet_fill_in());
        file.comment(0, locale.caution());
        file.comment(0, locale.foot());
        file.line("format: vessel/1");
        file.key(0, "name", locale.sheet_to_be_named(), locale.sheet_vessel_name());
        file.key(0, "register", "", locale.sheet_register_number());
        file.key(0, "port", "", "");
        file.line("declared:");
        file.key(2, "by", "", locale.sheet_who_fills_in());
        file.key(2, "on", "", locale.sheet_day_like());
        file.key(2, "figures", "", locale.sheet_how_figures());
        file.key(2, "condition", "", locale.sheet_serviceable_if());
        file.key(0, "covers", "listed things only", locale.sheet_covers());
        let like = match profile.freeboard_from {
            FreeboardFrom::Rail => locale.sheet_like_rail(),
            FreeboardFrom::Deck => locale.sheet_like_deck(),
        };
        let how = locale
            .sheet_freeboard_like(&said::freeboard_box(profile.freeboard_from, locale), &like);
        file.key(0, "freeboard", "", &how);
    }

    fn tags(&mut self) {
        let (binds, words) = (&self.profile().binds, self.words.vocabulary);
        let locale = self.words.locale;
        let lists: [(&str, &[String], &BTreeMap<String, Tag>); 3] = [
            ("permits", &binds.permits, &words.permits),
            ("gear", &binds.gears, &words.gears),
            ("areas", &binds.areas, &words.areas),
        ];
        for (key, named, known) in lists {
            let like: Vec<&str> = if named.is_empty() {
                known.keys().take(2).map(String::as_str).collect()
            } else {
                named.iter().map(String::as_str).collect()
            };
            self.file.key(0, key, "", &locale.sheet_like_tags(&like.join(", ")));
        }
        self.file.line("features:");
        for (id, feature) in words.vessel_features.iter() {
            self.file.key(2, id, "", &locale.sheet_feature(&feature.name));
        }
        self.file.line("trip:");
        self.file.key(2, "depart", "", locale.sheet_like_day());
        self.file.key(2, "return", "", "");
    }

    /// The tools, or the documents, of every requirement.
    fn section(&mut self, key: &str, class: Class, wanted: bool) {
        let (profile, locale) = (self.profile(), self.words.locale);
        self.file.gap();
        self.file.line(&format!("{key}:"));
        self.file.comment(2, if wanted { locale.sheet_documents() } else { locale.sheet_kit() });
        for (index, requirement) in profile.requirements.iter().enumerate() {
            let Need::Tools { least, types, spare_for } = &requirement.need else { continue };
            let kinds = requirement.kinds();
            let first = kinds.first().map(|kind| self.words.vocabulary.kind(*kind).class);
            if (first == Some(class)) != wanted {
                continue;
            }
            self.heading(requirement);
            let counts = requirement.deemed.iter().filter_map(|deemed| {
                Some(self.words.requirement(deemed.requirement)?.clause.clone())
            });
            for clause in counts.collect::<Vec<_>>() {
                self.file.comment(2, &locale.sheet_may_count(&clause));
            }
            let fits = spare_for.and_then(|of| {
                self.marks.iter().find(|(known, _)| *known == of).map(|(_, mark)| mark.clone())
            });
            self.types(index, requirement, *least, types, fits.as_deref());
        }
    }

    fn heading(&mut self, requirement: &Requirement) {
        let locale = self.words.locale;
        let only = self.words.only_where(&requirement.when);
        let mut told = vec![format!("{} ({})", requirement.title, requirement.clause)];
        told.extend(only.map(|only| locale.sheet_asked(&only)));
        if requirement.level == Level::Recommended {
            told.push(locale.sheet_no_part_of_verdict().to_owned());
        }
        self.file.gap();
        self.file.comment(2, &told.join("; "));
    }

    fn types(
        &mut self,
        index: usize,
        requirement: &Requirement,
        least: u32,
        types: &[ToolType],
        fits: Option<&str>,
    ) {
        let locale = self.words.locale;
        if types.len() > 1 {
            let names = types.iter().filter_map(|of_type| of_type.name.clone());
            let names: Vec<_> = names.collect();
            self.file.comment(2, &locale.sheet_at_least_of(&least, &names.join("; ")));
        }
        for (place, of_type) in types.iter().enumerate() {
            let live = place < usize::try_from(least).unwrap_or(usize::MAX);
            if let Some(name) = of_type.name.as_ref().filter(|_| types.len() > 1) {
                let text = if live { format!("{name}:") } else { locale.sheet_or_instead(name) };
                self.file.comment(2, &text);
            }
            for member in &of_type.members {
                self.member(index, requirement, of_type, member, live, fits);
            }
        }
    }

    /// One member of a type: its first alternative to fill in, the others to
    /// put in its place.
    fn member(
        &mut self,
        index: usize,
        requirement: &Requirement,
        of_type: &ToolType,
        member: &Member,
        live: bool,
        fits: Option<&str>,
    ) {
        let mut kinds = Vec::new();
        for spec in &member.choices {
            if !kinds.contains(&spec.kind) {
                kinds.push(spec.kind);
            }
        }
        for (place, kind) in kinds.iter().enumerate() {
            let mut asks = Asks::default();
            let own = member.choices.iter().filter(|spec| spec.kind == *kind);
            for spec in own {
                let placed = Placed { of_type: Some(of_type), member: Some(member), spec };
                asks.add(&self.words, requirement, placed);
            }
            if place > 0 {
                self.file.comment(2, self.words.locale.sheet_or_instead_of_it());
            }
            let kind = self.words.vocabulary.kind(*kind);
            let mark = self.entry(kind, &asks, member.count, live && place == 0, fits);
            if !self.marks.iter().any(|(known, _)| *known == index) {
                self.marks.push((index, mark));
            }
        }
    }

    /// One tool, with nothing known of it; behind a # where it is one of
    /// several to choose from.
    fn entry(
        &mut self,
        kind: &Kind,
        asks: &Asks,
        count: u32,
        live: bool,
        fits: Option<&str>,
    ) -> String {
        self.number += 1;
        let mark = format!("T{}", self.number);
        let document = kind.class == Class::Document;
        let (dash, inner, indent) = if live { ("", "", 4) } else { ("# ", "#   ", 2) };
        let (file, locale) = (&mut self.file, self.words.locale);
        file.key_in(2, dash, "- mark", &mark, "");
        file.key_in(indent, inner, "kind", &scalar(&kind.name), "");
        for note in &asks.notes {
            file.note(indent, inner, note);
        }
        if let Some(fits) = fits {
            let text = locale.sheet_marks_it_fits();
            file.key_in(indent, inner, "fits", &format!("[{fits}]"), text);
        }
        if count > 1 {
            file.key_in(indent, inner, "count", "", &locale.sheet_count_asked(&count));
        }
        if document && asks.list.is_empty() {
            file.key_in(indent, inner, "where", "unknown", locale.sheet_aboard_once());
        }
        for ask in &asks.list {
            self.ask(indent, inner, ask);
        }
        if !document {
            self.file.key_in(indent, inner, "condition", "", "");
            self.file.key_in(indent, inner, "stowed", "", "");
        }
        mark
    }

    /// An attribute to fill in: what is asked, and once in the file how it is
    /// measured.
    fn ask(&mut self, indent: usize, inner: &str, ask: &Ask) {
        let attribute = self.words.vocabulary.attribute(ask.attribute);
        let locale = self.words.locale;
        let mut told = vec![for_a_file(ask, self.words.vocabulary, locale)];
        if let Some(measure) = &attribute.measure
            && !self.told.contains(&ask.attribute)
        {
            self.told.push(ask.attribute);
            told.push(measure.clone());
        }
        if !attribute.shown {
            told.push(locale.sheet_by_statement().to_owned());
        }
        self.file.key_in(indent, inner, &attribute.id, "", &told.join("; "));
    }

    /// Hooks and lines: nothing is said of them until somebody does.
    fn gear(&mut self) {
        let profile = self.profile();
        let (vocabulary, locale) = (self.words.vocabulary, self.words.locale);
        for (key, kind, like, least) in [
            ("hooks", "hook", locale.sheet_hooks_like(), "wire"),
            ("lines", "fishing-line", locale.sheet_lines_like(), "diameter"),
        ] {
            self.file.gap();
            let kind = vocabulary.find_kind(kind);
            let mut keys: Vec<String> = vec![least.to_owned()];
            for requirement in &profile.requirements {
                let Need::Gear { kind: asked, choices } = &requirement.need else { continue };
                if Some(*asked) != kind {
                    continue;
                }
                self.heading(requirement);
                let mut asks = Asks::default();
                for spec in choices {
                    asks.add(
                        &self.words,
                        requirement,
                        Placed { of_type: None, member: None, spec },
                    );
                }
                self.file.comment(2, &asks.in_words(vocabulary, locale));
                for ask in &asks.list {
                    let id = vocabulary.attribute(ask.attribute).id.clone();
                    if !keys.contains(&id) {
                        keys.push(id);
                    }
                }
            }
            let keys: Vec<_> = keys.iter().map(|key| format!("{key}: ")).collect();
            self.file.key(0, key, "", locale.sheet_none_or_each_kind());
            self.file.comment(2, &format!("- {{ name: {like}, {} }}", keys.join(", ").trim_end()));
        }
    }

    fn people(&mut self) {
        let profile = self.profile();
        let (vocabulary, locale) = (self.words.vocabulary, self.words.locale);
        self.file.gap();
        let mut roles: Vec<String> = vec!["owner".to_owned()];
        let mut certificate = "workshop certificate".to_owned();
        for requirement in &profile.requirements {
            let Need::Certificates { kind, holders, .. } = &requirement.need else { continue };
            self.heading(requirement);
            certificate.clone_from(&vocabulary.kind(*kind).name);
            if let Holders::EachRole(asked) = holders {
                roles.clone_from(asked);
            }
        }
        self.file.key(0, "people", "", locale.sheet_each_person());
        self.file.comment(2, "- name: ");
        self.file
            .comment(2, &format!("  roles: []  # {}", figures::any_of(&roles, self.words.locale)));
        self.file.comment(2, "  certificates:");
        self.file
            .comment(2, &format!("    - {{ kind: {certificate}, issued: , expires: , number: }}"));
        self.file.gap();
        self.file.comment(0, locale.sheet_statements());
        self.file.comment(0, "  conforms: [{ to: \"CLAUSE\", on: 2026-01-31, by: WHO }]");
    }
}

//! Tests of the path from profile files to a library, on small texts of
//! their own.

use crate::load::library::Library;
use crate::load::read::problem::Refusal;
use crate::model::profile::{FreeboardFrom, Verified};
use crate::model::rule::{Condition, Holders, Need, Side, Test};
use std::path::Path;

const WORDS: &str = "\
format: vocabulary/1
attributes:
  handle: { quantity: length, lengthens: yes, measure: from the grip end to the head }
  material: { quantity: choice, words: [316L, 304L], shown: no }
  protected-blade: { quantity: feature }
  edition: { quantity: name }
  wire: { quantity: length }
  weight: { quantity: mass }
kinds:
  long-line-cutter: { name: long-handled line cutter, also: [line clipper], attributes: [handle, protected-blade, material, weight] }
  pliers: { attributes: [material] }
  gag: { attributes: [handle] }
  replacement-blades: { class: spare }
  careful-release-document: { class: document, attributes: [edition] }
  hook: { class: gear, attributes: [wire] }
  workshop-certificate: { class: certificate }
permits: { reef-fish: reef fish }
gear:
  pelagic-longline: { name: pelagic longline, counts as: [longline] }
  longline: longline
areas: { gulf: the Gulf }
vessel features: { wheelhouse: a wheelhouse }
changes: { lengthened: [handle], repaired: [], head replaced: all }
";

const PROFILE: &str = "\
format: profile/1
id: example-2024
rule: example
edition: '2024'
title: { en: Example, es: Ejemplo }
source: 50 CFR part 0
in force: { from: 2024-01-01, until: 2024-12-31 }
binds: { permits: [reef-fish], when: { freeboard: more than 4 ft (1.2 m) } }
inspection due: every 12 months
requirements:
  - id: cutter
    title: Line cutter
    clause: A.1
    verified: read
    carry: 1 long-handled line cutter
    with:
      handle: at least the greater of 150% of freeboard and 6 ft (1.8 m)
      protected-blade: yes
      material: 316L or 304L
  - id: blades
    title: Blades
    clause: A.1
    verified: read
    carry: 1 replacement blades
    spare for: cutter
  - id: gags
    title: Gags
    clause: A.12
    verified: read
    carry: 2 different types
    types:
      - { type: one, carry: 1 gag }
      - { type: two, set of: [{ carry: 2 gag, with: { handle: exactly 5 in } }, { carry: 1 pliers }] }
      - { type: three, carry: 1, one of: [{ kind: pliers }, { kind: gag }] }
  - id: shop
    title: Workshop
    clause: A.13
    verified: memory
    certificate: workshop certificate
    held by: [owner, Operator]
    valid: 3 years
  - id: hooks
    title: Hooks
    clause: A.14
    verified: inferred
    every: hook
    with: { wire: at most 5 mm }
  - id: short
    title: Short cutter
    clause: A.2
    verified: read
    unless: { aboard: careful-release document, wheelhouse: no }
    carry: 1
    one of: [{ kind: pliers }, { kind: line clipper, when: { months: Nov to Feb } }]
    met by the tool of: [{ requirement: cutter, with: { material: 316L } }]
    may share the tool of: cutter
";

fn library(texts: &[(&str, &str)]) -> Result<Library, Refusal> {
    let mut all = vec![("vocabulary.yaml", WORDS)];
    all.extend_from_slice(texts);
    Library::from_texts(&all)
}

/// The problems of the example with one piece replaced.
fn problems_with(from: &str, to: &str) -> Vec<String> {
    assert!(PROFILE.contains(from), "{from}");
    let text = PROFILE.replacen(from, to, 1);
    match library(&[("a.yaml", &text)]) {
        Ok(_) => Vec::new(),
        Err(refusal) => refusal.problems.iter().map(ToString::to_string).collect(),
    }
}

#[test]
fn every_shape_of_a_requirement_is_read() {
    let library = library(&[("a.yaml", PROFILE)]).unwrap();
    let profile = library.find("example-2024").unwrap();
    assert_eq!(profile.title.others["es"], "Ejemplo");
    assert!(matches!(
        profile.binds.when.as_slice(),
        [Condition::Freeboard { side: Side::MoreThan, .. }]
    ));
    let by_id = |id: &str| profile.requirements.iter().find(|r| r.id == id).unwrap();
    assert!(by_id("cutter").inspection.is_some());
    assert!(by_id("blades").inspection.is_none());
    assert!(matches!(by_id("blades").need, Need::Tools { spare_for: Some(0), .. }));
    let Need::Tools { least: 2, types, .. } = &by_id("gags").need else { panic!("no types") };
    assert_eq!(types.iter().map(|t| t.members.len()).collect::<Vec<_>>(), [1, 2, 1]);
    let Need::Certificates { holders: Holders::EachRole(roles), .. } = &by_id("shop").need else {
        panic!("no certificate")
    };
    assert_eq!(roles, &["owner", "operator"]);
    assert!(matches!(by_id("hooks").need, Need::Gear { .. }));
    let short = by_id("short");
    assert_eq!(short.unless.len(), 1);
    assert_eq!(short.unless[0].len(), 2);
    assert_eq!(short.shares, [0]);
    assert!(matches!(short.deemed[0].tests.as_slice(), [Test::Choice { .. }]));
    assert_eq!(short.place.key, "requirements[5]");
    assert_eq!(by_id("shop").verified, Verified::Memory);
}

#[test]
fn what_is_wrong_in_a_requirement_is_told_where_it_stands() {
    let cases = [
        (
            "handle: at least the",
            "hadnle: at least the",
            "a.yaml:17:7: requirements[0].with.hadnle",
        ),
        ("316L or 304L", "316L or 305L", "`305l`: `material` knows no such word"),
        (
            "at least the greater of 150% of freeboard and 6 ft (1.8 m)",
            "6 ft",
            "write `at least 6 ft`",
        ),
        ("protected-blade: yes", "protected-blade: sure", "neither yes nor no"),
        ("protected-blade: yes", "weight: at least 150% of freeboard", "`freeboard` is a length"),
        (
            "1 long-handled line cutter",
            "1 long handled line cuter",
            "did you mean `long-handled line cutter`",
        ),
        ("1 long-handled line cutter", "long-handled line cutter", "how many is not said"),
        ("spare for: cutter", "spare for: cuter", "did you mean `cutter`"),
        ("    spare for: cutter\n", "", "spares for what is not said"),
        ("carry: 2 different types", "carry: 4 different types", "more types are asked for"),
        (
            "certificate: workshop certificate",
            "certificate: pliers",
            "this is a tool; expected a certificate",
        ),
        ("requirement: cutter", "requirement: short", "met by this one in turn"),
        ("requirement: cutter", "requirement: gags", "no single tool that could serve"),
        ("- id: blades", "- id: cutter", "two requirements have this id"),
        ("verified: memory", "verified: seen", "this word is not known here"),
        ("    verified: memory\n", "", "`verified` is missing"),
        ("more than 4 ft (1.2 m)", "over 4 ft", "not a freeboard threshold"),
        ("wheelhouse: no", "weelhouse: no", "did you mean `wheelhouse`"),
        ("[reef-fish]", "[reef-fsh]", "did you mean `reef-fish`"),
        ("months: Nov to Feb", "months: Nov to Fob", "these are not months"),
        ("until: 2024-12-31", "until: 2023-12-31", "the last day lies before the first"),
        ("with: { wire: at most 5 mm }", "with: { wire: at most 5 }", "write `5 in` or `5 cm`"),
        ("valid: 3 years", "valid: 3", "this is not an interval"),
        ("edition: '2024'", "editon: '2024'", "did you mean `edition`"),
        ("title: { en: Example, es: Ejemplo }", "title: { es: Ejemplo }", "governing language"),
        ("    carry: 1 long-handled line cutter\n", "", "not clear what this requirement wants"),
    ];
    for (from, to, told) in cases {
        let problems = problems_with(from, to);
        assert!(problems.iter().any(|p| p.contains(told)), "{to}: {problems:#?}");
        assert!(problems.iter().all(|p| p.starts_with("a.yaml:")), "{to}: {problems:#?}");
    }
}

#[test]
fn a_slip_in_a_key_and_a_slip_in_a_value_are_told_together_and_once() {
    let text = PROFILE.replace("verified: memory", "verifid: memory").replace("3 years", "soon");
    let refusal = library(&[("a.yaml", &text)]).unwrap_err();
    let told: Vec<_> = refusal.problems.iter().map(|p| p.wording().what).collect();
    assert_eq!(told, ["no such key is known here", "this is not an interval"]);
}

const BUILT: &str = "\
format: profile/1
id: example-2025
rule: example
edition: '2025'
title: Example
in force: { from: 2025-01-01 }
built on: example-2024
drop: [gags]
change:
  - id: cutter
    clause: B.1
    with: { handle: at least 7 ft, material: dropped }
  - id: short
    unless: dropped
requirements:
  - { id: late, title: Late, clause: B.2, verified: read, carry: 1 pliers, after: cutter }
  - { id: later, title: Later, clause: B.3, verified: read, carry: 1 pliers, after: cutter }
";

#[test]
fn a_profile_is_built_on_another() {
    let library = library(&[("a.yaml", PROFILE), ("b.yaml", BUILT)]).unwrap();
    let profile = library.find("example-2025").unwrap();
    let ids: Vec<_> = profile.requirements.iter().map(|r| r.id.as_str()).collect();
    assert_eq!(ids, ["cutter", "late", "later", "blades", "shop", "hooks", "short"]);
    assert_eq!(profile.source, "50 CFR part 0");
    let cutter = &profile.requirements[0];
    assert_eq!((&*cutter.place.file, cutter.clause.as_str()), ("a.yaml", "B.1"));
    assert!(cutter.inspection.is_some());
    let Need::Tools { types, .. } = &cutter.need else { panic!("no tools") };
    let tests = &types[0].members[0].choices[0].tests;
    assert!(matches!(&tests[0], Test::Limit { written, .. } if written == "at least 7 ft"));
    assert_eq!(tests.len(), 2);
    assert!(profile.requirements[6].unless.is_empty());
    assert_eq!(library.editions("example").len(), 2);
    assert_eq!(library.suggest("exmaple-2025").as_deref(), Some("example-2025"));
    // The base is untouched.
    assert_eq!(library.find("example-2024").unwrap().requirements.len(), 6);
}

#[test]
fn what_follows_one_requirement_keeps_its_order_and_goes_before_what_was_taken_over() {
    let next = "\
format: profile/1
id: example-2026
rule: example
edition: '2026'
title: Example
in force: { from: 2026-01-01 }
built on: example-2025
requirements:
  - { id: one, title: One, clause: C.1, verified: read, carry: 1 pliers, after: cutter }
  - { id: its-own, title: Own, clause: C.2, verified: read, carry: 1 pliers, after: one }
  - { id: two, title: Two, clause: C.3, verified: read, carry: 1 pliers, after: cutter }
";
    let built = BUILT.replace("{ from: 2025-01-01 }", "{ from: 2025-01-01, until: 2025-12-31 }");
    let library = library(&[("a.yaml", PROFILE), ("b.yaml", &built), ("c.yaml", next)]).unwrap();
    let profile = library.find("example-2026").unwrap();
    let ids: Vec<_> = profile.requirements.iter().map(|r| r.id.as_str()).take(6).collect();
    assert_eq!(ids, ["cutter", "one", "two", "its-own", "late", "later"]);
}

#[test]
fn a_faulty_change_is_told_in_the_file_that_makes_it() {
    let text = BUILT.replace("at least 7 ft", "at least 7");
    let refusal = library(&[("a.yaml", PROFILE), ("b.yaml", &text)]).unwrap_err();
    let told: Vec<_> = refusal.problems.iter().map(ToString::to_string).collect();
    assert!(told[0].starts_with("b.yaml:12:21: change[0].with.handle: `7`: "), "{told:#?}");
    assert_eq!(told.len(), 1, "{told:#?}");
    for (from, to, word) in [
        ("drop: [gags]", "drop: [gag]", "did you mean `gags`"),
        ("built on: example-2024", "built on: example-2025", "in a circle"),
        ("built on: example-2024", "built on: exmple-2024", "did you mean `example-2024`"),
        ("from: 2025-01-01", "from: 2024-12-31", "is in force on some of these days too"),
        ("id: example-2025", "id: example-2024", "has this id too"),
    ] {
        let text = BUILT.replace(from, to);
        let refusal = library(&[("a.yaml", PROFILE), ("b.yaml", &text)]).unwrap_err();
        assert!(refusal.to_string().contains(word), "{to}: {refusal}");
    }
}

#[test]
fn a_stub_binds_somebody_and_has_no_requirements() {
    let stub = "format: profile/1\nid: stub\nrule: stub\nedition: now\ntitle: S\nsource: S\n\
                encoded: no\nbinds: { permits: [reef-fish] }\nfreeboard from: working deck\n";
    let library = library(&[("s.yaml", stub)]).unwrap();
    let profile = library.find("stub").unwrap();
    assert!(!profile.encoded && profile.requirements.is_empty());
    assert_eq!(profile.freeboard_from, FreeboardFrom::Deck);
    let nobody = stub.replace("binds: { permits: [reef-fish] }\n", "");
    assert!(
        self::library(&[("s.yaml", &nobody)]).unwrap_err().to_string().contains("binds nobody")
    );
    let encoded = stub.replace("encoded: no\n", "");
    let refusal = self::library(&[("s.yaml", &encoded)]).unwrap_err();
    assert!(refusal.to_string().contains("without requirements"));
}

#[test]
#[allow(clippy::disallowed_methods)] // the test writes the files that it reads
fn a_folder_and_a_file_take_the_place_of_what_is_shipped() {
    let folder = tempfile::tempdir().unwrap();
    let own = PROFILE.replace("edition: '2024'", "edition: own");
    std::fs::write(folder.path().join("own.yaml"), own).unwrap();
    std::fs::write(folder.path().join("notes.txt"), "not a profile").unwrap();
    let mut library = library(&[("a.yaml", PROFILE)]).unwrap().with_folder(folder.path()).unwrap();
    assert_eq!(library.profiles.len(), 1);
    assert_eq!(library.profiles[0].edition, "own");
    let path = folder.path().join("new.yml");
    std::fs::write(&path, BUILT).unwrap();
    let added = library.add_file(&path).unwrap();
    assert_eq!((added.id.as_str(), library.profiles.len()), ("example-2025", 2));
    assert!(library.source(&path.display().to_string()).is_some());
    let missing = library.with_folder(Path::new("/no/such/folder")).unwrap_err();
    assert_eq!(missing.problems[0].wording().what, "there is no such folder");
}

#[test]
fn a_draft_may_overlap_an_edition_and_never_joins_the_library() {
    let mut shipped = Library::shipped().unwrap();
    let known = shipped.profiles.len();
    let text = "format: profile/1\nid: draft\nrule: us-gulf-reef-fish\nedition: draft\ntitle: Draft\n\
                built on: us-gulf-reef-fish-2019\nin force: { from: 2028-01-01 }\n\
                binds: { permits: [gulf-reef-fish-commercial] }\ndrop: [handling-placard]\n";
    let draft = shipped.draft_text("draft.yaml", text).unwrap();
    let base = shipped.find("us-gulf-reef-fish-2019").unwrap();
    assert_eq!(draft.requirements.len(), base.requirements.len() - 1);
    assert!(draft.in_force.meets(base.in_force));
    assert_eq!(shipped.profiles.len(), known);
    let refusal = shipped.add_text("draft.yaml", text).unwrap_err();
    assert!(
        refusal.problems[0].wording().what.contains("in force on some of these days too"),
        "{refusal}"
    );
    // What else is wrong with it is told.
    let wrong = text.replace("[handling-placard]", "[handling-plackard]");
    let refusal = shipped.draft_text("draft.yaml", &wrong).unwrap_err();
    assert_eq!(refusal.problems[0].offending.as_deref(), Some("handling-plackard"));
}

#[test]
fn a_library_is_rebuilt_from_its_own_texts_whatever_the_files_are_called() {
    let shipped = Library::shipped().unwrap();
    let texts: Vec<_> = shipped.texts().map(|source| ("vocabulary.yaml", &*source.text)).collect();
    let words = ("words", &*shipped.words().text);
    let again = Library::rebuilt(words, &texts).unwrap();
    let ids = |library: &Library| -> Vec<String> {
        library.profiles.iter().map(|profile| profile.id.clone()).collect()
    };
    assert_eq!(ids(&again), ids(&shipped));
}

#[test]
fn a_faulty_vocabulary_is_refused() {
    for (from, to, word) in [
        ("handle: { quantity: length", "handle: { quantity: lenght", "did you mean `length`"),
        ("[handle, protected-blade", "[handel, protected-blade", "did you mean `handle`"),
        ("also: [line clipper]", "also: [pliers]", "has this name too"),
        ("counts as: [longline]", "counts as: [longlines]", "did you mean `longline`"),
        ("lengthened: [handle]", "lengthened: handle", "not a list of attributes"),
        ("  weight:", "  Weight:", "this is not an id"),
        ("words: [316L, 304L], ", "", "`words` is missing"),
        ("  pliers: {", "  gag: { }\n  pliers: {", "written twice"),
    ] {
        assert!(WORDS.contains(from), "{from}");
        let text = WORDS.replacen(from, to, 1);
        let refusal = Library::from_texts(&[("vocabulary.yaml", &text)]).unwrap_err();
        assert!(refusal.to_string().contains(word), "{to}: {refusal}");
    }
}

#[test]
fn the_shipped_profiles_load() {
    let library = Library::shipped().unwrap_or_else(|refusal| panic!("{refusal}"));
    assert!(!library.profiles.is_empty());
    let known = |tags: &[String], all: &std::collections::BTreeMap<String, _>| {
        tags.iter().all(|tag| all.contains_key(tag))
    };
    for profile in &library.profiles {
        let words = &library.vocabulary;
        assert!(known(&profile.binds.permits, &words.permits), "{}", profile.id);
        assert!(known(&profile.binds.gears, &words.gears), "{}", profile.id);
        assert!(known(&profile.binds.areas, &words.areas), "{}", profile.id);
        assert!(library.source(&profile.place.file).is_some());
    }
}

/// As the one above, but read now, not when the tests were built.
#[test]
fn the_folder_of_requirements_loads() {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("requirements");
    let library = library(&[]).unwrap().with_folder(&folder);
    let library = library.unwrap_or_else(|refusal| panic!("\n{refusal}\n"));
    assert!(!library.profiles.is_empty());
}

mod properties {
    use super::*;
    use crate::load::tests::hostile::damaged;
    use proptest::prelude::*;

    proptest! {
        #![proptest_config(ProptestConfig {
            cases: 128,
            failure_persistence: None,
            ..ProptestConfig::default()
        })]

        /// A profile with any piece overwritten by anything is read or
        /// refused with reasons that have their line.
        #[test]
        fn a_damaged_profile_is_read_or_refused_with_a_reason(
            at in 0..PROFILE.len(),
            length in 0usize..12,
            damage in "[ \\n\\t:\\[\\]{}\"'&*!|>%@#,a-z0-9~-]{0,6}",
        ) {
            let text = damaged(PROFILE, at, length, &damage);
            if let Err(refusal) = library(&[("a.yaml", &text), ("b.yaml", BUILT)]) {
                prop_assert!(!refusal.problems.is_empty());
                let placed = refusal.problems.iter().all(|problem| problem.position.is_some());
                prop_assert!(placed, "{}", refusal);
            }
        }
    }
}

//! Tests of what is refused in the parts of a file of techniques, each on a
//! small text with one piece replaced: what is told, and where.

use crate::load::library::Library;
use crate::load::library::manual::Manual;
use crate::load::read::guard::source_of;
use crate::load::read::problem::Problem;
use crate::model::vocabulary::Vocabulary;
use std::sync::{Arc, LazyLock};

const VOCABULARY: &str = include_str!("../../../requirements/vocabulary.yaml");

/// A file that is read as it stands.
pub(crate) const SMALL: &str = "\
format: techniques/1
id: small
title: Small
source: common practice, no published source
cautions: [Keep hands clear of the beak.]
facts:
  - id: where
    asks: Where is it?
    words:
      - { word: alongside, says: in the water, also: [water] }
      - { word: aboard, says: on deck, also: [on deck] }
  - id: hook
    asks: Which hook?
    unless said: j
    words:
      - { word: j, says: J hook, also: [j hook], hook type: j }
      - { word: circle, says: circle hook, hook type: Circle }
acts:
  pulls: pulls the hook out
  lays: lays it down
  drops: drops it
capabilities:
  - id: cutter
    title: A cutter
    clause: A.1
    verified: memory
    carry: 1 line cutters
  - id: dehooker
    title: A dehooker
    verified: common practice
    carry: 1 short-handled dehooker for external hooks
low rails:
  - id: low
    title: A low rail
    freeboard: at most 2 ft
    verified: common practice
techniques:
  - id: cut
    title: Cut the line
    verified: common practice
    needs: [cutter, low]
    cuts line: yes
    steps: [Cut.]
    stop: [It moves.]
  - id: pull
    title: Pull the hook
    verified: common practice
    needs: [dehooker]
    acts: [pulls]
    never with: [{ where: alongside }]
    steps: [Pull., { says: Stop., clause: A.2, verified: read }]
    drawing: pull
  - id: lay
    title: Lay it down
    verified: common practice
    acts: [lays]
    steps: [Lay it down.]
situations:
  - id: water
    title: In the water
    when: { where: alongside }
    choices: [cut]
  - id: deck-j
    title: On deck with a J hook
    when: { where: aboard, hook: [j] }
    goes before: [deck]
    choices:
      - lay, then pull
      - cut
  - id: deck
    title: On deck
    when: { where: aboard }
    choices: [cut]
goes along:
  - id: any
    title: Any
    when: {}
    choices: [lay]
nevers:
  - { says: Never pull a circle hook., when: { hook: circle }, acts: [pulls], verified: common practice }
  - { says: Never drop it., when: {}, acts: [drops], verified: common practice }
cards:
  - id: release
    title: Release
    verified: common practice
    steps: [Let it go.]
";

/// The shipped words, read once.
static WORDS: LazyLock<Arc<Vocabulary>> =
    LazyLock::new(|| Library::rebuilt(("vocabulary.yaml", VOCABULARY), &[]).unwrap().vocabulary);

/// What is wrong with a text.
pub(crate) fn problems(text: &str) -> Vec<Problem> {
    let source = source_of(&"techniques.yaml".into(), text);
    match source.and_then(|source| Manual::given(source, &WORDS)) {
        Ok(_) => Vec::new(),
        Err(refusal) => refusal.problems,
    }
}

/// Each case, apart by an empty line: the lines that are replaced, after `- `,
/// what takes their place, after `+ `, and what is told, without the file.
pub(crate) fn assert_told(cases: &str) {
    for case in cases.trim_matches('\n').split("\n\n") {
        let after = |mark| case.lines().filter_map(move |line: &str| line.strip_prefix(mark));
        let mut from = after("- ").collect::<Vec<_>>().join("\n");
        let to = after("+ ").collect::<Vec<_>>().join("\n");
        from.push_str(if to.is_empty() { "\n" } else { "" });
        let told = case.lines().filter(|line| !line.starts_with(['-', '+']));
        let expected = told.collect::<Vec<_>>().join("\n").replace("\n    ", " ");
        assert_eq!(SMALL.matches(&from).count(), 1, "`{from}` stands there not just once");
        let told = problems(&SMALL.replacen(&from, &to, 1));
        assert!(!told.is_empty(), "`{to}` was let pass");
        for one in &told {
            assert!(one.position.is_some(), "without its line: {one}");
            assert!(
                one.wording().expected.is_some() || one.wording().mend.is_some(),
                "without a way out: {one}"
            );
        }
        let told: Vec<String> = told.iter().map(ToString::to_string).collect();
        assert_eq!(told.join("\n").replace("techniques.yaml:", ""), expected, "`{to}`");
    }
}

#[test]
fn the_small_file_is_read_as_it_stands() {
    assert_eq!(problems(SMALL), []);
}

#[test]
fn facts_that_decide_nothing_or_share_a_word_are_refused() {
    assert_told(
        "
-   - id: hook
+   - id: where
12:9: facts[1].id: `where`: two facts have this id; expected an id that stands for one of them
    only; give one of them another id
65:34: situations[1].when.hook: `hook`: no fact of this id is in the file; expected the id of a
    fact
80:54: nevers[0].when.hook: `hook`: no fact of this id is in the file; expected the id of a fact

- word: circle,
+ word: j,
17:17: facts[1].words[1].word: `j`: the word `j` is called this too; expected a word that means
    one answer to one fact only; write another word, or take it away
80:54: nevers[0].when.hook: `circle`: this is no word of the fact; expected `j` or `j`

- also: [j hook]
+ also: [On  Deck]
16:41: facts[1].words[0].also[0]: `On  Deck`: the word `aboard` is called this too; expected a
    word that means one answer to one fact only; write another word, or take it away

-       - { word: circle, says: circle hook, hook type: Circle }
15:5: facts[1].words: `hook`: a fact with fewer than two words decides nothing; expected two
    words or more; write the other answers, or take the fact away
79:54: nevers[0].when.hook: `circle`: this is no word of the fact; expected `j`

- unless said: j
+ unless said: j hook
14:18: facts[1].unless said: `j hook`: this is no word of the fact; expected `j` or `circle`;
    did you mean `j`?

- hook type: Circle
+ hook type: cirkle
17:55: facts[1].words[1].hook type: `cirkle`: the vocabulary has no such hook type; expected
    `circle`, `J` or `other`; did you mean `circle`?

- facts:
+ factz:
6:1: factz: `factz`: no such key is known here; did you mean `facts`?
",
    );
}

#[test]
fn lines_that_are_missing_or_unreadable_are_refused() {
    assert_told(
        "
- acts: [lays]
+ acts: [lay]
56:12: techniques[2].acts[0]: `lay`: no act of this id is in the file; expected the id of an
    act; did you mean `lays`?

- acts: [lays]
+ acts: [lays, lays]
56:18: techniques[2].acts[1]: `lays`: this is named twice; expected each act once; take one of
    them away

-   lays: lays it down
+   pulls: lays it down
20:3: acts.pulls: `pulls`: this key is written twice (first in line 19); take one of the two
    away
56:12: techniques[2].acts[0]: `lays`: no act of this id is in the file; expected the id of an
    act

- cuts line: yes
+ cuts line: maybe
42:16: techniques[0].cuts line: `maybe`: neither yes nor no; expected `yes` or `no`

-     steps: [Cut.]
38:5: techniques[0].steps: `steps` is missing; write what to do, a short line for each step

- clause: A.2, verified: read
+ clause: A.2
51:20: techniques[1].steps[1].verified: `verified` is missing; write `read`, `excerpt`,
    `inferred`, `memory` or `common practice`

- id: release
+ id: The Release
83:5: cards[0].id: `The Release`: this is not an id; expected lower-case letters, digits and
    hyphens

- drawing: pull
+ drawing: The Pull
52:5: techniques[1].drawing: `The Pull`: this is not an id; expected lower-case letters, digits
    and hyphens

- source: common practice, no published source
1:1: source: `source` is missing; write what it stands on, like `common practice`
",
    );
}

#[test]
fn capabilities_that_say_too_little_or_are_not_needed_are_refused() {
    assert_told(
        "
-   - id: low
+   - id: cutter
33:9: low rails[0].id: `cutter`: two capabilities have this id; expected an id that stands for
    one of them only; give one of them another id
41:21: techniques[0].needs[1]: `low`: no capability of this id is in the file; expected the id
    of a capability

- needs: [dehooker]
+ needs: [dehoker]
48:13: techniques[1].needs[0]: `dehoker`: no capability of this id is in the file; expected the
    id of a capability; did you mean `dehooker`?

- freeboard: at most 2 ft
+ freeboard: 2 ft
35:16: low rails[0].freeboard: `2 ft`: this is not a limit; expected `at most` and a length,
    like `at most 2 ft`; write `at most 2 ft`

- freeboard: at most 2 ft
+ freeboard: less than 2 ft
35:16: low rails[0].freeboard: `less than 2 ft`: a low rail is told by its greatest freeboard
    alone; expected `at most` and a length, like `at most 2 ft`

- freeboard: at most 2 ft
+ freeboard: at most 2
35:16: low rails[0].freeboard: `2`: a figure without its unit; expected `at most` and a length,
    like `at most 2 ft`; write `2 ft` or `2 m`, whichever was measured

- freeboard: at most 2 ft
+ freeboard: at most 0 ft
35:16: low rails[0].freeboard: `at most 0 ft`: no rail lies on the water; expected `at most` and
    a length, like `at most 2 ft`

- freeboard: at most 2 ft
+ freeboard: at most freeboard
35:16: low rails[0].freeboard: `at most freeboard`: a low rail is told by its greatest freeboard
    alone; expected `at most` and a length, like `at most 2 ft`

-     freeboard: at most 2 ft
33:5: low rails[0].freeboard: `freeboard` is missing; write `at most` and a length, like `at
    most 2 ft`

- needs: [cutter, low]
+ needs: [low]
23:9: capabilities[0].id: `cutter`: no technique needs it; expected a technique with it under
    `needs`; write it there, or take the capability away

- needs: [cutter, low]
+ needs: [cutter]
33:9: low rails[0].id: `low`: no technique needs it; expected a technique with it under `needs`;
    write it there, or take the capability away

-     clause: A.1
23:5: capabilities[0].clause: `clause` is missing; write the clause of the source
",
    );
}

#[test]
fn keys_of_a_requirement_that_mean_nothing_in_a_capability_are_refused() {
    let strays = [
        "level: recommended",
        "formerly: knife",
        "from: 2024-01-01",
        "until: 2024-12-31",
        "when: { gear: longline }",
        "unless: { gear: longline }",
        "inspection due: every 6 months",
        "spare for: dehooker",
        "certificate: workshop certificate",
        "held by: 1 people",
        "valid: 3 years",
        "every: hook",
        "met by the tool of: dehooker",
        "may share the tool of: dehooker",
        "after: dehooker",
    ];
    for stray in strays {
        let key = stray.split(':').next().unwrap();
        let line = format!("    clause: A.1\n    {stray}\n");
        let told = problems(&SMALL.replacen("    clause: A.1\n", &line, 1));
        let told: Vec<String> = told.iter().map(ToString::to_string).collect();
        let start = format!(
            "techniques.yaml:26:5: capabilities[0].{key}: `{key}` has no place in a capability; \
             expected tools alone, since "
        );
        assert!(told.len() == 1 && told[0].starts_with(&start), "{stray}: {told:#?}");
        assert!(told[0].ends_with("; take the line away"), "{}", told[0]);
    }
}

#[test]
fn a_text_that_is_too_long_is_refused_wherever_it_stands() {
    let long = |from: &str, length: usize| {
        let (key, value) = from.split_once(": ").unwrap();
        let lines = format!("{key}: >-\n{}", format!("      {}\n", "x".repeat(500)).repeat(9));
        let text = if length == 300 {
            format!("{key}: {}", value.repeat(301))
        } else {
            lines.trim_end().to_owned()
        };
        let told = problems(&SMALL.replacen(from, &text, 1));
        assert!(!told.is_empty(), "{from}");
        for one in told {
            assert_eq!(one.wording().what, "this text is too long", "{from}: {one}");
            assert_eq!(one.wording().expected.unwrap(), format!("at most {length} characters"));
        }
    };
    for from in [
        "title: Small",
        "id: release",
        "title: Any",
        "asks: Which hook?",
        "says: circle hook",
        "clause: A.1",
    ] {
        long(from, 300);
    }
    long("says: Stop.", 4000);
}

#[test]
fn another_kind_of_file_is_told_apart() {
    let told = problems(&SMALL.replacen("techniques/1", "profile/1", 1));
    let told: Vec<String> = told.iter().map(ToString::to_string).collect();
    assert_eq!(
        told,
        [
            "techniques.yaml:1:9: format: `profile/1`: this is a profile; expected a file of techniques"
        ]
    );
}

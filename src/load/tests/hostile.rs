//! Tests of files that mean no good, or are badly broken: each ends in one
//! clear refusal, and quickly.

use crate::load::form::profile::ProfileFile;
use crate::load::library::Library;
use crate::load::read::fault::Fault;
use crate::load::read::parse::is_read_alike;
use crate::load::read::problem::{MOST_PROBLEMS, Problem, Refusal};
use crate::load::read::tree::{LONGEST_REMARK, MOST_LINES, MOST_LISTED, read_tree};
use crate::load::tests::technique_refusal::{SMALL, problems as technique_problems};
use crate::load::tests::vessel::{VESSEL, words};
use crate::load::{LARGEST_FILE, read_vessel};

fn refused(text: &str) -> Refusal {
    read_vessel("v.yaml", text, &words()).map(|_| panic!("{text:.80}")).unwrap_err()
}

#[test]
fn steering_characters_are_refused_however_they_are_written() {
    for name in ["\"a\\e[31m\"", "a\u{202e}b", "\"a\\u202Eb\"", "\"a\\rb\""] {
        let refusal = refused(&VESSEL.replacen("Example", name, 1));
        assert!(refusal.to_string().contains("steers the screen"), "{name:?}: {refusal}");
        assert!(!refusal.to_string().contains(['\u{1b}', '\u{202e}', '\r']), "{name:?}");
        assert_eq!(refusal.problems.len(), 1, "{refusal}");
    }
    let key = refused(&VESSEL.replacen("register", "\"reg\\e[0mister\"", 1));
    assert!(key.to_string().contains("steers the screen"));
    assert!(!key.to_string().contains('\u{1b}'));
}

#[test]
fn harmless_oddities_are_read() {
    let windows = VESSEL.replace('\n', "\r\n");
    let marked = format!("\u{feff}{VESSEL}");
    let commented = format!("# 50 % \\ done\n---\n{VESSEL}...\n");
    let quoted = VESSEL.replacen("handle: 6 ft 4 1/2 in", "handle: \"6 ft 4 1/2\\\"\"", 1);
    let aliased = VESSEL.replacen("[owner, Operator]", "&r [owner]", 1);
    for text in [windows, marked, commented, quoted, aliased] {
        let read = read_vessel("v.yaml", &text, &words());
        assert!(read.is_ok(), "{}", read.unwrap_err());
    }
}

#[test]
fn a_number_keeps_the_wording_of_its_author() {
    let text = VESSEL.replacen("edition: \"2019\"", "edition: 2.10", 1);
    let (vessel, _) = read_vessel("v.yaml", &text, &words()).unwrap();
    let edition = words().find_attribute("edition").unwrap();
    let said = &vessel.kit[4].readings(edition)[0].datum;
    assert_eq!(*said, crate::model::vessel::Datum::Word("2.10".into()));
}

#[test]
fn bombs_and_giants_are_refused() {
    let mut bomb = String::from("format: vessel/1\nname: &a0 [x,x,x,x,x,x,x,x,x,x]\n");
    for i in 1..20 {
        let list = vec![format!("*a{}", i - 1); 10].join(",");
        bomb.push_str(&format!("k{i}: &a{i} [{list}]\n"));
    }
    let giant = "a: b\n".repeat(usize::try_from(LARGEST_FILE).unwrap() / 5 - 1);
    let wide = format!("format: vessel/1\nkit: [{}]", "{},".repeat(300_000));
    let long = format!("format: vessel/1\nname: {}", "x".repeat(100_000));
    let cases = [
        ("[".repeat(500_000), "nested"),
        ("{a: ".repeat(100_000), "nested"),
        ("- ".repeat(100_000), "nested"),
        ("? ".repeat(100_000), ""),
        (bomb, "more than 200000 values"),
        (giant, ""),
        (wide, "more than 200000 values"),
        (long, "too long"),
        ("!".repeat(1000), ""),
        ("%YAML 9.9\n---\na: 1".to_owned(), ""),
        ("&a a: *a".to_owned(), ""),
        ("a: &a\n  b: *a\n".to_owned(), "alias inside"),
        ("\"".to_owned(), "quotation mark"),
        ("- a\n- b\n".to_owned(), "this is not a vessel's inventory"),
        ("just a word".to_owned(), "this is not a vessel's inventory"),
        ("~".to_owned(), "this is not a vessel's inventory"),
        ("? [a]\n: b\n".to_owned(), "where a key should"),
        ("<<: { a: b }\n".to_owned(), "no such key"),
        ("name: !!binary aGk=\n".to_owned(), "YAML tag"),
        ("kit:\n  -\n".to_owned(), "nothing stands here"),
    ];
    for (text, told) in cases {
        let refusal = refused(&text);
        assert!(refusal.to_string().contains(told), "{text:.40}: {refusal:.300}");
        assert!(
            refusal.problems.iter().all(|p| !p.wording().what.contains("scalar")),
            "{refusal:.300}"
        );
    }
}

#[test]
fn what_is_as_long_as_may_be_is_read_and_no_longer() {
    // In a file with another problem too, which is read part by part.
    let problems = |from: &str, to: &str, other: &str| {
        let text = VESSEL.replacen(from, to, 1).replacen("register", other, 1);
        read_vessel("v.yaml", &text, &words()).map_or_else(|refusal| refusal.problems.len(), |_| 0)
    };
    let longest = usize::try_from(LONGEST_REMARK).unwrap();
    for more in [0, 1] {
        let remark = format!("remark: {}", "x".repeat(longest + more));
        let permits = format!("permits: [{}]", ["x"].repeat(MOST_LISTED + more).join(","));
        for (from, to) in [("stowed: port rail rack", remark), ("permits: [reef-fish]", permits)] {
            assert_eq!(problems(from, &to, "register"), more, "{from}");
            assert_eq!(problems(from, &to, "registre"), more + 1, "{from}");
        }
        let lines: String = (0..MOST_LINES + more).map(|line| format!("  c{line}: []\n")).collect();
        for other in ["", "chnges: {}\n"] {
            let text = format!("format: vocabulary/1\n{other}changes:\n{lines}");
            let read = Library::from_texts(&[("vocabulary.yaml", &text)]);
            let found = read.map_or_else(|refusal| refusal.problems.len(), |_| 0);
            assert_eq!(found, more + usize::from(!other.is_empty()), "{other}");
        }
    }
}

#[test]
fn of_very_many_problems_the_first_are_told_and_that_there_are_more() {
    let told = |wrong: usize| {
        let permits = format!("permits: [{}]", ["[x]"].repeat(wrong).join(","));
        refused(&VESSEL.replacen("permits: [reef-fish]", &permits, 1)).problems
    };
    let all = told(MOST_PROBLEMS);
    assert_eq!(all.len(), MOST_PROBLEMS);
    assert!(all.iter().all(|problem| problem.fault == all[0].fault), "{all:?}");
    let many = told(MOST_PROBLEMS + 1);
    assert_eq!(many.len(), MOST_PROBLEMS + 1);
    assert_eq!(many[MOST_PROBLEMS].fault, Fault::MoreProblems(MOST_PROBLEMS));
}

/// A profile whose note is written so; `N` stands for the long text.
fn problems_of_note(note: &str, text: &str) -> Vec<String> {
    let profile = format!(
        "format: profile/1\nid: t\nrule: t\nedition: one\ntitle: T\nstanding: good practice\n\
         requirements:\n  - id: one\n    title: One\n    verified: common practice\n    \
         carry: 1 pliers\n    note: {}\n",
        note.replace('N', text)
    );
    match Library::shipped().unwrap().draft_text("t.yaml", &profile) {
        Ok(_) => Vec::new(),
        Err(refusal) => refusal.problems.iter().map(|problem| problem.wording().what).collect(),
    }
}

const STYLES: [&str; 11] = [
    "|\n      N",
    "|-\n      N",
    ">2-\n      N",
    "> # folded\n      N",
    "\n      |\n       N",
    "\"N\"",
    "'it''s N'",
    "\n      \"N\"",
    "N",
    "a\n      - N",
    "{ en: a,\n      es: N }",
];

/// Words over many lines, none of them long.
fn lines(words: usize) -> String {
    let line = "of the longest line aboard".to_owned();
    vec![line; words / 5].join("\n       ")
}

#[test]
fn a_text_that_is_too_long_is_refused_however_it_is_written() {
    for style in STYLES {
        let told = problems_of_note(style, &lines(1000));
        assert_eq!(told, ["this text is too long"], "{style:?}");
        assert_eq!(problems_of_note(style, &lines(100)), [""; 0], "{style:?}");
    }
}

/// Every shipped text is read at once, and alike part by part.
#[test]
fn what_is_shipped_is_read_at_once() {
    for source in Library::shipped().unwrap().texts() {
        let is_odd = read_tree(&source.text).unwrap().is_odd;
        assert!(!is_odd && is_read_alike::<ProfileFile>(source), "{}", source.file);
    }
}

/// A text with a piece of it overwritten.
pub(crate) fn damaged(text: &str, at: usize, length: usize, damage: &str) -> String {
    format!("{}{damage}{}", &text[..at], &text[(at + length).min(text.len())..])
}

/// Every problem has its words and its line, and none says only that a file
/// cannot be read as what it is.
pub(crate) fn assert_reasons(problems: &[Problem], what: &str) {
    let lost = format!("this cannot be read as {what}");
    for problem in problems {
        assert!(!problem.wording().what.is_empty() && problem.position.is_some(), "{problem}");
        assert!(!problem.wording().what.starts_with(&lost), "{problem}");
    }
}

mod properties {
    use super::*;
    use crate::load::form::vessel::VesselFile;
    use proptest::prelude::*;

    proptest! {
        #![proptest_config(ProptestConfig {
            cases: 256,
            failure_persistence: None,
            ..ProptestConfig::default()
        })]

        /// A file with any piece overwritten by anything is read or refused
        /// with a reason; what is read at once is read alike part by part.
        #[test]
        fn a_damaged_file_is_read_or_refused_with_a_reason(
            at in 0..VESSEL.len(),
            length in 0usize..12,
            damage in "[ \\n\\t:\\[\\]{}\"'&*!|>%@#,a-z0-9~-]{0,6}",
        ) {
            match read_vessel("v.yaml", &damaged(VESSEL, at, length, &damage), &words()) {
                Ok((_, source)) => prop_assert!(is_read_alike::<VesselFile>(&source)),
                Err(refusal) => {
                    prop_assert!(!refusal.problems.is_empty());
                    assert_reasons(&refusal.problems, "a vessel");
                }
            }
        }

        /// The same of a file of techniques, whose parts hang together: what
        /// is damaged in one is told, however much of the rest hangs on it.
        #[test]
        fn a_damaged_file_of_techniques_is_read_or_refused_with_a_reason(
            at in 0..SMALL.len(),
            length in 0usize..40,
            damage in "[ \\n:\\[\\]{}\",a-z0-9-]{0,6}",
        ) {
            let problems = technique_problems(&damaged(SMALL, at, length, &damage));
            assert_reasons(&problems, "a file of techniques");
        }
    }
}

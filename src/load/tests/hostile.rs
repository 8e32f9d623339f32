//! Tests of files that mean no good, or are badly broken: each ends in one
//! clear refusal, and quickly.

use crate::load::read::problem::Refusal;
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
        assert!(refusal.problems.iter().all(|p| !p.what.contains("scalar")), "{refusal:.300}");
    }
}

mod properties {
    use super::*;
    use proptest::prelude::*;

    proptest! {
        #![proptest_config(ProptestConfig {
            cases: 256,
            failure_persistence: None,
            ..ProptestConfig::default()
        })]

        /// A file with any piece overwritten by anything is read or refused
        /// with a reason; what the quick way reads, the slow one reads alike.
        #[test]
        fn a_damaged_file_is_read_or_refused_with_a_reason(
            at in 0..VESSEL.len(),
            length in 0usize..12,
            damage in "[ \\n\\t:\\[\\]{}\"'&*!|>%@#,a-z0-9~-]{0,6}",
        ) {
            let end = (at + length).min(VESSEL.len());
            let text = format!("{}{}{}", &VESSEL[..at], damage, &VESSEL[end..]);
            match read_vessel("v.yaml", &text, &words()) {
                Ok((vessel, _)) => {
                    // The backslash makes the loader take the slow way, which
                    // is stricter about the YAML itself.
                    match read_vessel("v.yaml", &format!("# \\\n{text}"), &words()) {
                        Ok((slow, _)) => prop_assert_eq!(vessel, slow),
                        Err(refusal) => prop_assert!(
                            refusal.to_string().contains("YAML"), "{}", refusal
                        ),
                    }
                }
                Err(refusal) => {
                    prop_assert!(!refusal.problems.is_empty());
                    for problem in &refusal.problems {
                        prop_assert!(!problem.what.is_empty());
                        prop_assert!(problem.position.is_some(), "{}", problem);
                        let lost = "this cannot be read as a vessel";
                        prop_assert!(!problem.what.starts_with(lost), "{}", problem);
                    }
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
            let end = (at + length).min(SMALL.len());
            let text = format!("{}{}{}", &SMALL[..at], damage, &SMALL[end..]);
            for one in technique_problems(&text) {
                prop_assert!(!one.what.is_empty());
                prop_assert!(one.position.is_some(), "{}", one);
                let lost = "this cannot be read as a file of techniques";
                prop_assert!(!one.what.starts_with(lost), "{}", one);
            }
        }
    }
}

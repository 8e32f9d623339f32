//! YAML that is broken, or that means something else than it looks like.

use super::table::{Case, GOOD, Kind, and, hold, read, refused, with};

const KITTIWAKE: &str = "name: Test Kittiwake";

fn keys() -> Vec<Case> {
    const TWICE: &[&str] = &[
        "vessel.yaml:4:1: this key is written twice (first in line 3): `freeboard`",
        "mend: take one of the two away",
    ];
    let doubled = |key: &str| with("3 ft\n", &format!("3 ft\n{key}: 4 ft\n"));
    vec![
        refused("a key twice at the top", doubled("freeboard"), TWICE),
        refused("a key twice, once in quotes", doubled("\"freeboard\""), TWICE),
        refused("a key twice, once in other quotes", doubled("'freeboard'"), TWICE),
        refused("a key twice, once spelled by a code", doubled("\"free\\x62oard\""), TWICE),
        refused(
            "a key twice, once marked as a key",
            with("3 ft\n", "3 ft\n? freeboard\n: 4 ft\n"),
            &["this key is written twice"],
        ),
        refused(
            "a key twice in a tool",
            with("    overall: 12 in", "    overall: 12 in\n    overall: 14 in"),
            &["vessel.yaml:10:5: this key is written twice (first in line 9): `overall`"],
        ),
        refused(
            "a key twice in braces",
            with("{ wheelhouse: yes }", "{ wheelhouse: yes, wheelhouse: no }"),
            &["vessel.yaml:5:30: this key is written twice", "`wheelhouse`"],
        ),
        refused(
            "a merge key",
            with("    overall", "    <<: { overall: 14 in }\n    overall"),
            &["vessel.yaml:9:5: no such key or attribute is known here: `<<`"],
        ),
        refused(
            "a list as a key",
            and("? [a, b]\n: c\n"),
            &[
                "vessel.yaml:11:3: a list or a group stands where a key should",
                "mend: write a plain word before the colon",
            ],
        ),
        refused(
            "a group as a key",
            and("? { a: b }\n: c\n"),
            &["vessel.yaml:11:3: a list or a group stands where a key should"],
        ),
        refused("nothing as a key", and(": c\n"), &["vessel.yaml:11:1: no such key is known here"]),
        refused(
            "another alphabet's look-alike as a key",
            with("freeboard", "freebоard"),
            &[
                "vessel.yaml:3:1: no such key is known here: `freebоard`",
                "did you mean `freeboard`?",
            ],
        ),
    ]
}

fn syntax() -> Vec<Case> {
    vec![
        refused(
            "a tab before a key of a tool",
            with("    kind: pliers", "\tkind: pliers"),
            &[
                "vessel.yaml:8:1:",
                "a tab stands where only spaces may",
                "mend: indent with spaces, never with tabs",
            ],
        ),
        refused(
            "tabs before every key of a tool",
            GOOD.replace("    ", "\t"),
            &["vessel.yaml:8:1:", "a tab stands"],
        ),
        refused(
            "a tab before a key at the top",
            with("freeboard", "\tfreeboard"),
            &["vessel.yaml:3:1:", "tab", "mend: indent with spaces"],
        ),
        read(
            "tabs between a key and its value",
            with("kind: pliers", "kind:\t\tpliers"),
            1,
            &["NOT READY"],
        ),
        refused(
            "a tag of another language",
            with("Test Kittiwake", "!!python/object/apply:os.system [rm]"),
            &["vessel.yaml:2:7:", "a YAML tag (`!…`) is not read here", "mend: take the tag away"],
        ),
        refused(
            "a tag of bytes",
            with("Test Kittiwake", "!!binary aGVsbG8="),
            &["a YAML tag (`!…`) is not read here"],
        ),
        refused(
            "a tag of a number",
            with("12 in", "!!int 12"),
            &["vessel.yaml:9:14:", "a YAML tag"],
        ),
        refused(
            "a tag of our own",
            with("pliers", "!tool pliers"),
            &["vessel.yaml:8:11:", "a YAML tag"],
        ),
        refused(
            "a second document",
            and("---\nname: another\n"),
            &[
                "vessel.yaml:11:1: a second document in one file",
                "mend: write it into a file of its own",
            ],
        ),
        refused("an empty second document", and("---\n"), &["a second document in one file"]),
        read("a document with both its marks", format!("---\n{GOOD}...\n"), 1, &["NOT READY"]),
        read("a directive of YAML 1.2", format!("%YAML 1.2\n---\n{GOOD}"), 1, &["NOT READY"]),
        read(
            "a directive of a version to come",
            format!("%YAML 9.9\n---\n{GOOD}"),
            1,
            &["NOT READY"],
        ),
        refused("an empty file", "", &["vessel.yaml: this file is empty"]),
        refused("blanks alone", " \n\t\n", &["vessel.yaml: this file is empty"]),
        refused(
            "comments alone",
            "# a\n# b\n",
            &["vessel.yaml:1:1: nothing is written in this file"],
        ),
        refused(
            "a mark alone",
            "---\n",
            &[
                "this is not a vessel's inventory",
                "mend: write `format: vessel/1` as the first line",
            ],
        ),
        refused(
            "an end mark alone",
            "...\n",
            &["vessel.yaml:1:1: nothing is written in this file"],
        ),
        refused(
            "a word alone",
            "hello\n",
            &[
                "vessel.yaml:1:1: this is not a vessel's inventory",
                "expected a group of `key: value` lines",
            ],
        ),
        refused(
            "JSON of another kind",
            "{\"schema\": \"kitmuster/audit/1\"}",
            &["vessel.yaml:1:1: `format` is missing"],
        ),
        read(
            "a vessel in JSON",
            r#"{"format": "vessel/1", "name": "Test Kittiwake", "freeboard": "3 ft", "permits": ["gulf-reef-fish-commercial"], "kit": []}"#,
            1,
            &["NOT READY", "Test Kittiwake"],
        ),
        refused(
            "a quotation mark never closed",
            with("Test Kittiwake", "\"Test Kittiwake"),
            &["vessel.yaml:2:7:", "quotation mark", "mend:"],
        ),
        refused(
            "a code that is none",
            with("Test Kittiwake", "\"a\\q\""),
            &["vessel.yaml:2:", "cannot be read as YAML"],
        ),
        refused(
            "a code of half a character",
            with("Test Kittiwake", "\"\\uD800\""),
            &["vessel.yaml:2:", "cannot be read as YAML"],
        ),
    ]
}

fn words() -> Vec<Case> {
    // What YAML 1.1 makes a truth or nothing, as a name.
    const NOTHING: &[&str] =
        &["vessel.yaml:2:1: `name` is missing", "mend: write the vessel's name"];
    let name = |text: &str| with("name: Test Kittiwake", &format!("name: {text}"));
    vec![
        read("a vessel called yes", name("yes"), 1, &["NOT READY yes"]),
        read("a vessel called no", name("no"), 1, &["NOT READY no"]),
        read("a vessel called on", name("on"), 1, &["NOT READY on"]),
        read("a vessel called off", name("off"), 1, &["NOT READY off"]),
        read("a vessel called true", name("true"), 1, &["NOT READY true"]),
        read("a vessel called 0x10", name("0x10"), 1, &["NOT READY 0x10"]),
        read("a vessel called 1e400", name("1e400"), 1, &["NOT READY 1e400"]),
        read("a vessel called .inf", name(".inf"), 1, &["NOT READY .inf"]),
        read("a vessel called 012", name("012"), 1, &["NOT READY 012"]),
        read("a vessel called 2026-03-02", name("2026-03-02"), 1, &["NOT READY 2026-03-02"]),
        read("a vessel called null, in quotes", name("\"null\""), 1, &["NOT READY null"]),
        refused("a vessel called null", name("null"), NOTHING),
        refused("a vessel called ~", name("~"), NOTHING),
        refused("a vessel called nothing", name(""), NOTHING),
        refused("a vessel called a blank", name("\" \""), &["vessel.yaml:", "name"]),
        refused(
            "a vessel that is a list",
            name("[a, b]"),
            &["vessel.yaml:2:7: a list stands here", "expected plain text"],
        ),
        refused("a tool of the kind null", with("kind: pliers", "kind: null"), &["vessel.yaml:8:"]),
        refused(
            "a tool of the kind yes",
            with("kind: pliers", "kind: yes"),
            &["vessel.yaml:8:11:", "`yes`"],
        ),
        refused(
            "a kit that is nothing",
            GOOD.split("  - mark").next().unwrap(),
            &["vessel.yaml:6:1: `kit` is missing", "mend: list the tools, or write `kit: []`"],
        ),
        refused(
            "a feature that is perhaps",
            with("wheelhouse: yes", "wheelhouse: perhaps"),
            &["vessel.yaml:5:25:", "`perhaps`", "expected `yes` or `no`"],
        ),
    ]
}

#[test]
fn doubled_and_misshapen_keys_are_refused() {
    hold("keys", Kind::Vessel, keys());
}

#[test]
fn broken_yaml_is_refused_and_unusual_yaml_is_read() {
    assert!(GOOD.contains(KITTIWAKE));
    hold("syntax", Kind::Vessel, syntax());
}

#[test]
fn words_that_yaml_turns_into_something_else_keep_their_wording() {
    hold("words", Kind::Vessel, words());
}

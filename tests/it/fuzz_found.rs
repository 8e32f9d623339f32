//! What `fuzz/` found, each on its smallest case.

use kitmuster::load::{Library, Refusal, read_inspection, read_techniques, read_vessel};
use std::sync::LazyLock;

static LIBRARY: LazyLock<Library> = LazyLock::new(|| Library::shipped().unwrap());

/// A question mark that touches a key within braces is part of the key, not
/// YAML's mark of one.
#[test]
fn a_question_mark_before_a_key_is_refused() {
    for piece in
        ["{ mark: A, ?kind: pliers }", "{?kind: pliers}", "{ kind: pliers,\n    ?mark: A }"]
    {
        let text = format!("format: vessel/1\nname: A\nfreeboard: 3 ft\nkit:\n  - {piece}\n");
        let read = read_vessel("v.yaml", &text, &LIBRARY.vocabulary);
        assert!(read.is_err(), "{piece}: {read:?}");
    }
}

/// A text over several lines where a list was wanted: the advice repeated it
/// whole, line feeds and all, as an entry that nobody meant.
#[test]
fn a_problem_is_told_on_one_line_whatever_was_written() {
    let texts = [
        "kit: |\n  mark\n  kind: pliers\n",
        "kit: \"a\\nb\"\n",
        "kit: [{ mark: A, kind: pliers, overall: \"6 #\\nft\" }]\n",
        "kit: [{ mark: A, kind: \"a\\tb\" }]\n",
    ];
    for text in texts.map(|kit| format!("format: vessel/1\nname: A\nfreeboard: 3 ft\n{kit}")) {
        let refusal = read_vessel("v.yaml", &text, &LIBRARY.vocabulary).unwrap_err();
        assert_eq!(refusal.problems.len(), 1, "{refusal}");
        assert!(!refusal.to_string().contains(['\n', '\t']), "{refusal:?}");
        let mend = refusal.problems[0].wording().mend.unwrap_or_default();
        assert!(!mend.contains("mark"), "{mend}");
    }
    let long = format!("format: vessel/1\nname: A\nfreeboard: 3 ft\nkit: {}\n", "x ".repeat(900));
    let refusal = read_vessel("v.yaml", &long, &LIBRARY.vocabulary).unwrap_err();
    assert!(refusal.to_string().chars().count() < 300, "{refusal}");
}

/// Nothing at all as an entry of a list whose entries are a text or a group:
/// the file was refused with no more than that it cannot be read, without a
/// line and without a way out.
#[test]
fn an_empty_entry_is_told_where_it_stands() {
    let words = &LIBRARY.vocabulary;
    let vessel = "format: vessel/1\nname: A\nfreeboard: 3 ft\nkit:\n  \
                  - { mark: A, kind: pliers, overall: [11 in, ~] }\n  - { mark: A, kind: plyers }\n";
    let inspection = "format: inspection/1\nvessel: A\non: 2026-11-24\nby: B\nfound:\n  \
                      - { tool: A,\n     overall: [null] }\n";
    let techniques = "format: techniques/1\nid: a\ntitle: A\nsource: none\ncautions:\n  -\n";
    let profile = "format: profile/1\nid: a\nrule: a\ntitle: A\nnotes:\n  - a\n  -\n";
    let refused: [(usize, Refusal); 4] = [
        (5, read_vessel("f", vessel, words).unwrap_err()),
        (7, read_inspection("f", inspection, words).unwrap_err()),
        (6, read_techniques("f", techniques, words).unwrap_err()),
        (7, LIBRARY.draft_text("f", profile).unwrap_err()),
    ];
    for (line, refusal) in refused {
        let here = refusal.problems.iter().find(|one| one.wording().what == "nothing stands here");
        let at = here.and_then(|one| one.position).map(|at| at.line);
        assert_eq!(at, Some(line), "{refusal}");
        assert!(refusal.problems.iter().all(|one| one.position.is_some()), "{refusal}");
    }
    // What else is wrong is told with it.
    let vessel = read_vessel("f", vessel, words).unwrap_err();
    assert!(vessel.to_string().contains("`plyers`"), "{vessel}");
}
